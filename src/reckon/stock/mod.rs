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
    BedStory, BlockedSpot, CohortStory, GroundLook, LightLook, NurseStory, PartOfBed, SoilLook, SurvivalLook, WorkDone,
};
pub use bed_fold::fold_bed;
pub use lineage::{Lineage, lineage_of};
pub use lot::{LotStory, LotTest, StoreWritten, fold_lot};
pub use place::{LightChange, PlaceStory, Places, fold_places, share_read};
pub use tray::{Accounts, CountLook, Origin, PartLook, SampleLook, Since, Sowing, Stay, TrayStory};
pub use tray_fold::{FOUND_DEAD, fold_tray};
pub use treatment::{Treatment, Treatments, holding};
