//! What the command line prints: pages for people and objects for programs, made from a Picture.

pub mod columns;
mod criterion_json;
pub mod ready_json;
pub mod ready_text;
mod sheet;
pub mod species_json;
pub mod species_text;
#[cfg(test)]
mod test_picture;
pub mod why_json;
pub mod why_text;

pub use sheet::{LEAST_WIDTH, MOST_WIDTH};
