//! Units and names as types. This room knows no other.

pub mod code;
pub mod columns;
pub mod cores;
pub mod day;
pub mod moment;
pub mod name_search;
pub mod range;
pub mod text;
pub mod word;

pub use code::{
    BedName, CodeError, ContainerName, DeviceId, EntryId, FieldName, LotCode, PlaceName, SpeciesKey, TrayCode,
};
pub use day::{Clock, Day, DayError};
pub use moment::Moment;
pub use range::Range;
