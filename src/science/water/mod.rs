//! Water that leaves the ground and what is left of it for roots.

pub(crate) mod evaporation;
pub(crate) mod onset;
pub(crate) mod root_zone;
