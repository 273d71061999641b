//! The frames: for every kind of entry how a statement of it is said.

mod clause;
mod entries;
mod of_care;
mod of_field;
mod of_heights;
mod of_holding;
mod of_moving;
mod of_nurse;
mod of_person;
mod of_seed;
mod of_tray;

pub(crate) use clause::{CLEAR_BY, Clause, Fields, number_value};
pub(crate) use entries::Drafts;
pub(crate) use of_care::SAFE_FROM;
pub(crate) use of_holding::HELD_FOR_DAYS;
pub(crate) use of_tray::does_something;

/// Reads a statement as one kind.
pub(crate) type Frame = fn(&mut Clause) -> Option<Drafts>;

/// All frames; which reads best is decided by what of the statement they explain.
pub(crate) const FRAMES: &[Frame] = &[
    of_tray::counted,
    of_tray::stocktaken,
    of_tray::lost,
    of_tray::culled,
    of_moving::carried,
    of_moving::moved_on,
    of_moving::outplanted,
    of_person::given_out,
    of_person::promised,
    of_tray::lost_of_species,
    of_tray::counted_each,
    of_seed::sown,
    of_seed::resown,
    of_seed::sown_in_bed,
    of_seed::lot_received,
    of_seed::lot_counted,
    of_seed::lot_kept,
    of_seed::lot_tested,
    of_seed::plants_received,
    of_care::shade_set,
    of_care::watering_set,
    of_care::watered,
    of_care::under_water,
    of_care::pest_seen,
    of_care::treated,
    of_care::flushed,
    of_care::plug_checked,
    of_care::roots_cut,
    of_care::hardening_begun,
    of_holding::held,
    of_holding::sick_ones,
    of_holding::set_apart,
    of_holding::released,
    of_care::grafted,
    of_heights::measured,
    of_person::worked,
    of_person::tended,
    of_field::weather,
    of_field::light_read,
    of_field::light_under_shade,
    of_field::soil_checked,
    of_field::prepared,
    of_field::prepared_otherwise,
    of_field::holes_dug,
    of_nurse::nurse_planted,
    of_nurse::nurse_counted,
    of_nurse::nurse_measured,
    of_nurse::nurse_cut,
    of_nurse::shade_cut,
    of_field::survival_counted,
    of_field::plants_lost,
];
