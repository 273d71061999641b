//! The books: what each tray, lot and bed holds and how it came to that. Every entry moves numbers between accounts;
//! nothing appears or vanishes.

mod bed;
mod bed_books;
mod bed_cuts;
mod bed_fold;
#[cfg(test)]
mod bed_fold_tests;
mod lineage;
mod lot;
mod place;
mod tray;
mod tray_fold;
mod treatment;

pub use bed::{
    BedStory, BlockedSpot, CohortStory, GroundLook, LightLook, NurseStory, PartOfBed, SoilLook, SurvivalLook, Watering,
    WorkDone,
};
pub(crate) use bed::{Brought, CameFrom, Death};
pub(crate) use bed_cuts::{LEAVES_BACK_DAYS, ends_reading, ends_with_harvest, lifts_tubers};
pub(crate) use bed_fold::fold_bed;
pub(crate) use lineage::still_seen;
pub(crate) use lot::fold_lot;
pub use lot::{LotStory, LotTest, StoreWritten};
pub(crate) use place::fold_places;
pub use place::{Holds, LightChange, PlaceStory, Places};
pub(crate) use place::{is_named, longest_on};
pub use tray::{Accounts, CountLook, Graft, Origin, PartLook, PestLook, SampleLook, Since, Sowing, Stay, TrayStory};
pub(crate) use tray::{Gone, Hold};
pub(crate) use tray_fold::{fold_tray, missed_of};
pub(crate) use treatment::BURNS_ROOTS_DAYS;
pub(crate) use treatment::holding;
pub use treatment::{Treatment, Treatments};
