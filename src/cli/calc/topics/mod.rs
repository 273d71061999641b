//! Formulas of seed and seedlings: each reads what it is given, asks `science`, and says what that means.

pub mod emergence;
pub mod germination;
pub mod growth;
pub mod interval;
pub mod quality;
pub mod replicates;
pub mod sample_size;
pub mod sowing;
pub mod viability;
