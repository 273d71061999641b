//! Sheets saved as text by a spreadsheet program: their encoding, cells, numbers and days.

pub(super) mod cells;
mod encoding;
mod marked;
mod office_open;
mod open_document;
mod table;
mod workbook;

pub use cells::DayOrder;
pub(super) use cells::{read_day, read_number};
pub use encoding::Encoding;
pub(crate) use marked::with_remarks;
pub(crate) use table::sheet_text;
pub use table::{Row, Table, decode_sheet, read_table};
