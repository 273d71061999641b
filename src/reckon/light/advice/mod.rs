//! What can be done about the light of a bed: nurse plants to cut or to set, and what a cut does beneath.

pub(crate) mod after_cut;
pub(crate) mod fewest_cuts;
pub(crate) mod new_nurses;
