//! The ground of a bed: how hard it is, what water it has, and what a fence keeps out of it.

mod eaters;
mod fence;
mod soil;
mod water;
