//! Where the sun stands, and what it would send without an atmosphere.

pub(crate) mod place;
pub(crate) mod position;
pub(crate) mod radiation;

pub use place::Place;
pub use radiation::Slope;
