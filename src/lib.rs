//! outplant: which trays are ready to go out to which prepared bed, and why.
//!
//! DEVELOPERS.md shows the rooms and which may look at which.

pub mod base;
pub mod cli;
pub mod dashboard;
pub mod desk;
pub mod journal;
pub mod nursery;
mod page;
pub mod reckon;
pub mod science;
pub mod settings;
pub mod share;
pub mod wording;
