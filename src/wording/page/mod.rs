//! The words of the pages: what is ready, why, and the species.

mod calc;
mod command;
mod expected;
mod growth;
mod help;
mod lots;
mod ready;
mod sowing;
mod species;
mod usage;

pub use expected::Labelled;
pub use growth::GrowthOf;

#[cfg(test)]
pub(super) use {
    calc::KEYS as CALC_KEYS, command::KEYS as COMMAND_KEYS, expected::KEYS as EXPECTED_KEYS,
    growth::KEYS as GROWTH_KEYS, help::KEYS as HELP_KEYS, lots::KEYS as LOTS_KEYS, ready::KEYS as READY_KEYS,
    sowing::KEYS as SOWING_KEYS, species::KEYS as SPECIES_KEYS, usage::KEYS as USAGE_KEYS,
};
