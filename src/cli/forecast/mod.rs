//! What is expected, for programs and for people.

mod json;
mod text;

pub(super) use json::{experience_json, pipeline_json, tray_forecast_json, worth_json};
pub(super) use text::{forecast_lines, species_lines};
