//! Units and names as types. This room knows no other.

pub(crate) mod code;
pub mod columns;
pub(crate) mod cores;
pub(crate) mod day;
pub(crate) mod left_behind;
pub(crate) mod letters;
pub(crate) mod moment;
pub(crate) mod name_search;
pub(crate) mod range;
pub mod text;
pub mod word;

pub use code::{
    BedName, CodeError, ContainerName, DeviceId, EntryId, FieldName, LotCode, PlaceName, SpeciesKey, TrayCode,
};
pub use day::{Clock, Day, DayError};
pub use moment::Moment;
pub use range::Range;
