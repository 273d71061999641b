//! Pieces that every screen is built of: a sheet of wrapped text, a table that never wraps, a line to type in, a chart.

mod chart;
pub(crate) mod days;
mod of_page;
mod sheet;
mod table;
mod typed;

pub(crate) use crate::base::columns::width_of;
pub(crate) use chart::{Chart, Curve};
pub(crate) use sheet::Sheet;
pub(crate) use table::{Column, Row, Table, keep_marks, scroll_marks};
pub(crate) use typed::Typed;
