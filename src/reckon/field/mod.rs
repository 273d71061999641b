//! What a person sees who stands before a bed: which position holds what, how bright each row is, what became of what was
//! planted, what a species still waits for. Shown, never used in a verdict.

mod food;
mod light_rows;
mod nurse_grid;
mod plan;
mod rows;
mod survival;
#[cfg(test)]
mod tests;
mod waits;

pub(crate) use food::{Crop, FOOD_MONTHS, FoodAhead, FoodTaken, food_ahead, food_by_month, food_taken, gives_now_kg};
pub(crate) use light_rows::light_rows;
pub(crate) use nurse_grid::{NurseGrid, grid_of, nurse_grids};
pub(crate) use plan::{SpeciesPlan, species_plan};
pub use plan::{Spot, SpotState, Unsaid};
pub(crate) use rows::{rows_asked, rows_named, rows_recorded, rows_written, unbracketed};
pub(crate) use survival::{Outplanting, SurvivalCount, outplantings};
pub(crate) use waits::{lasts_until, longest_first, takes_days, waits_for};
