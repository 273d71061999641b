//! The only room that reads what comes from outside: lines of entries, typed pairs, the sample's day lines and sheets.
//! And what goes out: exports, and files written whole. Faults are facts here; `wording` makes sentences of them.

mod by_hand;
pub(crate) mod csv;
pub(crate) mod day_lines;
mod draft;
pub(crate) mod export;
pub(crate) mod fault;
pub(crate) mod files;
pub(crate) mod first_day;
pub(crate) mod json;
pub(crate) mod lines;
mod meant;
pub(crate) mod pairs;
pub(crate) mod paper_lines;
mod scribbled;
pub(crate) mod sheet;

use by_hand::{amounts, hand_day, vocabulary};

pub use csv::{TableFor, write_csv, write_table};
pub use day_lines::read_day_lines;
pub use export::{write_line, write_lines};
pub use fault::{ChainFault, LineFault, LineFaults, PairFault, ReadFault, Reason, WorkbookFault};
pub use files::{Existing, FileFault, write_whole};
pub use first_day::{FirstDay, SheetKind, SheetNames, Unknown, UnknownWhat, read_beds, read_trays, read_weather};
pub use hand_day::{read_any_day, read_done_day};
pub use lines::{Line, Written, each_line, read_lines, read_what_can_be_read};
pub use meant::Meant;
pub use pairs::{read_pairs, split_pairs};
pub use paper_lines::{FORMS, FORMS_IN_SPANISH, InBed, KnownNames, PaperRead, read_paper};
pub use scribbled::Why;
pub use sheet::decode_sheet;
pub(crate) use sheet::with_remarks;
