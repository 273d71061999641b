//! What a person sees who stands before a bed: which position holds what, how bright each row is, what became of what was
//! planted, what a species still waits for. Shown, never used in a verdict.

mod light_rows;
mod nurse_grid;
mod plan;
mod rows;
mod survival;
#[cfg(test)]
mod tests;
mod waits;

pub use light_rows::{RowLight, light_rows};
pub use nurse_grid::{NurseGrid, nurse_grids};
pub use plan::{SpeciesPlan, Spot, SpotState, Unsaid, species_plan};
pub use rows::{rows_named, rows_written};
pub use survival::{Outplanting, SurvivalCount, outplantings};
pub use waits::{lasts_until, waits_for};
