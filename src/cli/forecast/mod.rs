//! What is expected, for programs.

mod json;

pub(super) use json::{experience_json, pipeline_json, tray_forecast_json, worth_json};
