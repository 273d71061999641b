//! Formulas of sun, water and shade: each reads what it is given, asks `science`, and says what that means.

pub(crate) mod args;
pub(crate) mod et0;
pub(crate) mod leaves;
pub(crate) mod light;
mod light_of_bed;
pub(crate) mod radiation;
pub(crate) mod rains;
pub(crate) mod sun;
pub(crate) mod water;
