//! How much of the open sky's light reaches a place between and under crowns.
//!
//! Crowns are ellipsoids full of leaves that hold light back as Beer's law says (Monsi & Saeki 1953), each by its own
//! leaves along the ray; overlapping crowns add up. No stems, no light thrown back by the ground, leaves that hold back
//! alike at every height of the sun: the model's limits.
//!
//! `plain.rs` reckons it straight on, in double precision; `map.rs` reckons whole beds for many months, fast; a property
//! holds the two together.

pub(crate) mod banana;
pub(crate) mod crown;
pub(crate) mod cuts;
pub(crate) mod map;
pub(crate) mod plain;
pub(crate) mod positions;
pub(crate) mod reading;
mod shadow;
pub(crate) mod sky;

pub use crown::Crown;
pub use map::{LightMap, Month, maps};
pub use positions::Positions;
pub use sky::{Direction, even_sky, sun_through};
