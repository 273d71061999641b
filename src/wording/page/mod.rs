//! The words of the pages: what is ready, why, and the species.

mod ready;
mod species;

#[cfg(test)]
pub(super) use {ready::KEYS as READY_KEYS, species::KEYS as SPECIES_KEYS};
