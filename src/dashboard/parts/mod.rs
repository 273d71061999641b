//! Pieces that every screen is built of: a page of wrapped text, a table that never wraps, a line to type in, a chart.

mod chart;
pub mod days;
mod page;
mod table;
mod typed;

pub use crate::base::columns::width_of;
pub use chart::{Chart, Curve};
pub use page::Page;
pub use table::{Column, Row, Table};
pub use typed::Typed;
