//! Pieces that every screen is built of: a page of wrapped text, a table that never wraps, a line to type in, a chart.

mod chart;
pub(crate) mod days;
mod page;
mod table;
mod typed;

pub(crate) use crate::base::columns::width_of;
pub(crate) use chart::{Chart, Curve};
pub(crate) use page::Page;
pub(crate) use table::{Column, Row, Table};
pub(crate) use typed::Typed;
