//! The words of the pages: what is ready, why, and the species.

mod calc;
mod command;
mod help;
mod ready;
mod species;
mod usage;

#[cfg(test)]
pub(super) use {
    calc::KEYS as CALC_KEYS, command::KEYS as COMMAND_KEYS, help::KEYS as HELP_KEYS, ready::KEYS as READY_KEYS,
    species::KEYS as SPECIES_KEYS, usage::KEYS as USAGE_KEYS,
};
