//! Commands: what was typed becomes a command of the desk or a page made from a Picture; data to stdout, notes to
//! stderr.

mod answer;
mod args;
mod begin;
mod calc;
mod criterion_json;
mod dispatch;
mod exchange;
mod first_day;
mod first_day_rows;
mod forecast;
mod input;
mod json;
mod log;
mod machine;
mod matching;
mod named;
mod open_desk;
mod page_rows;
mod page_text;
mod progress;
mod proof;
mod ready;
pub(crate) mod ready_json;
mod run;
mod sample;
mod sheet;
mod since;
pub mod species;
#[cfg(test)]
mod test_picture;
mod undo;
pub(crate) mod walk;
mod why;
pub(crate) mod why_json;
pub(crate) mod why_more;
mod why_place;
mod write;

pub use answer::Ending;
pub use args::Cli;
pub use dispatch::{OpenDashboard, Outcome, run};
pub use machine::surroundings::Surroundings;
