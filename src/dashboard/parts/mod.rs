//! Pieces that every screen is built of: a sheet of wrapped text, a table that never wraps, a line to type in, a chart.

mod chart;
pub mod days;
mod of_page;
mod sheet;
mod table;
mod typed;

pub use crate::base::columns::width_of;
pub use chart::{Chart, Curve};
pub use sheet::Sheet;
pub use table::{Column, Row, Table};
pub use typed::Typed;
