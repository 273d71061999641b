//! outplant: which trays are ready to go out to which prepared bed, and why.
//!
//! DEVELOPERS.md shows the rooms and which may look at which.

pub mod base;
pub mod cli;
pub mod nursery;
pub mod reckon;
pub mod science;
pub mod wording;
