//! Sheets saved as text by a spreadsheet program: their encoding, cells, numbers and days, and rows as entries.

pub mod cells;
pub mod encoding;
pub mod rows;
pub mod table;

pub use cells::{DayOrder, ReadDay, read_day, read_number};
pub use encoding::{Encoding, decode};
pub use rows::{DayUnderstood, RowDrafts, row_drafts};
pub use table::{Column, Row, Table, decode_sheet, read_table};
