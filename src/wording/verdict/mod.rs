//! Verdicts in words: what is needed and known, why not, and what cannot be believed.

mod doubt;
mod facts;
mod gap;
mod measure;
mod names;
mod reason;
mod source;
mod told;
mod unknown;

pub use reason::About;

#[cfg(test)]
pub(super) use {
    doubt::KEYS as DOUBT_KEYS, gap::KEYS as GAP_KEYS, measure::KEYS as MEASURE_KEYS, names::KEYS as NAME_KEYS,
    reason::KEYS as REASON_KEYS, source::KEYS as SOURCE_KEYS, unknown::KEYS as UNKNOWN_KEYS,
};
