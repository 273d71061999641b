//! Species profiles: what the handbooks say of each species, with the source of every figure.

pub mod figure;
mod overrides;
pub mod profile;

pub use figure::{Figure, Flag};
pub use profile::{GrowthPoint, HardeningStep, Names, Profile, Role, Stem, Storage, Template};
