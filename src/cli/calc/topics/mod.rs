//! Formulas of seed and seedlings: each reads what it is given, asks `science`, and says what that means.

pub(crate) mod emergence;
pub(crate) mod germination;
pub(crate) mod growth;
pub(crate) mod interval;
pub(crate) mod matching;
pub(crate) mod quality;
pub(crate) mod replicates;
pub(crate) mod sample_size;
pub(crate) mod sowing;
pub(crate) mod viability;
