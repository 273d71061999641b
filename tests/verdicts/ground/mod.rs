//! The ground of a bed: how hard it is, what water it has, and what a fence keeps out of it.

mod eaters;
mod fence;
mod ground_kills;
mod soil;
mod water;
