//! What is expected, for programs.

mod json;

pub(super) use json::{experience_json, stock_to_come_json, tray_forecast_json, worth_json};
