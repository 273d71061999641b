//! What the desk says: faults of a line, refusals, and what was done.

mod errors;
mod fault;
mod notes;
mod profile_fault;
mod refusal;
mod sheet;
mod written;

pub use sheet::encoding_name;

#[cfg(test)]
pub(super) use {
    errors::KEYS as ERROR_KEYS, fault::KEYS as FAULT_KEYS, notes::KEYS as DESK_KEYS,
    profile_fault::KEYS as PROFILE_FAULT_KEYS, refusal::KEYS as REFUSAL_KEYS, sheet::KEYS as SHEET_KEYS,
    written::KEYS as WRITTEN_KEYS,
};
