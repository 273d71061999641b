//! Species profiles: what the handbooks say of each species, with the source of every figure.
//!
//! The built-in profiles are the TOML files in the folders beside this one. Days of emergence in them hold at 22-30 C; in a cool
//! highland nursery 30-60 % more is common practice.

mod built_in;
pub(crate) mod catalogue;
pub(crate) mod figure;
mod found;
mod limits;
#[cfg(test)]
mod names_tests;
mod near;
mod overrides;
pub(crate) mod profile;
mod profile_fault;
mod spanish;
mod trust;

pub use catalogue::Catalogue;
pub use figure::{Figure, Flag};
pub use found::Found;
pub use limits::fault;
pub(crate) use profile::FIGURES;
pub use profile::{
    Danger, Group, GrowthPoint, HardeningStep, LooksAlive, Names, Profile, Role, Stem, Storage, Template,
};
pub use profile_fault::ProfileFault;
pub use spanish::{NURSE_STANDS_ANY_LIGHT, in_spanish};
pub use trust::Trust;
