//! Published formulas and nothing else: plain numbers with units in, plain numbers out. Each file names its sources.
//! No nursery, no clock, no file. Wrong input is a [`WrongInput`], never a panic.

pub mod chance;
mod climb;
pub mod container;
mod distribution;
pub mod emergence;
pub mod germination;
pub(crate) mod ground;
pub mod growth;
pub mod interval;
pub(crate) mod life_table;
pub mod light;
pub mod matching;
mod matrix;
pub mod overdispersion;
pub mod quality;
pub mod sampling;
pub mod seeds;
pub mod shade;
pub(crate) mod soil;
pub mod sowing;
pub mod spacing;
pub mod storage;
pub mod sun;
pub mod viability;
pub mod viability_constants;
pub(crate) mod water;
pub(crate) mod wrong_input;

pub use wrong_input::WrongInput;
