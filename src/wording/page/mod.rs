//! The words of the pages: what is ready, why, and the species.

mod calc;
mod command;
mod expected;
mod growth;
mod help;
mod in_short;
mod lots;
mod sowing;
mod species;

pub(crate) use calc::InputName;
pub use expected::Labelled;
pub use growth::GrowthOf;
