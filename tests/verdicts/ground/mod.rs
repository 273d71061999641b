//! The ground of a bed: how hard it is, and what water it has.

mod soil;
mod water;
