//! The words of the dashboard, a file for each screen.

mod beds;
mod form;
mod frame;
mod going_out;
mod journal;
mod names;
mod season;
mod seed;
mod trays;
mod walk;

#[cfg(test)]
pub(in crate::wording) use self::{
    beds::KEYS as BEDS_KEYS, form::KEYS as FORM_KEYS, frame::KEYS as FRAME_KEYS, going_out::KEYS as GOING_OUT_KEYS,
    journal::KEYS as JOURNAL_KEYS, names::KEYS as NAME_KEYS, season::KEYS as SEASON_KEYS, seed::KEYS as SEED_KEYS,
    trays::KEYS as TRAYS_KEYS, walk::KEYS as WALK_KEYS,
};
