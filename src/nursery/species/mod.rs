//! Species profiles: what the handbooks say of each species, with the source of every figure.
//!
//! The built-in profiles are the TOML files beside this one. Days of emergence in them hold at 22-30 C; in a cool
//! highland nursery 30-60 % more is common practice.

mod built_in;
pub(crate) mod catalogue;
pub(crate) mod figure;
mod limits;
mod overrides;
pub(crate) mod profile;
mod profile_fault;
mod spanish;
mod trust;

pub use catalogue::Catalogue;
pub use figure::{Figure, Flag};
pub use limits::fault;
pub use profile::{GrowthPoint, HardeningStep, Names, Profile, Role, Stem, Storage, Template};
pub use profile_fault::ProfileFault;
pub use spanish::in_spanish;
pub use trust::Trust;
