//! What can happen, in the grower's words: entries, species profiles, and their own rules.

pub(crate) mod cause;
pub mod caution;
pub mod entry;
pub mod envelope;
pub(crate) mod herbicide;
pub(crate) mod pest;
pub(crate) mod set_against;
pub mod species;
