//! From entries to a Picture. Pure and total: no clock, no file, no panic. What cannot be believed becomes a Doubt.

pub mod archived;
pub mod bed;
pub mod changes;
mod day_order;
pub mod effect;
pub mod field;
pub mod fold;
pub mod forecast;
pub mod growth;
pub mod impossible;
pub mod ledger;
pub(crate) mod light;
pub mod loading;
pub mod lots;
pub mod matching;
mod ordered;
mod pair;
pub mod picture;
pub mod round;
pub mod sample_progress;
pub mod season;
pub mod seed;
pub mod site;
pub mod sowing;
pub mod stock;
#[cfg(test)]
pub(crate) mod test_book;
pub mod tray;

pub use changes::{Change, changes};
pub use fold::{FOLD_MARK, Fold, FromThen, Stories, Wanted, draw_picture};
pub use ledger::{Ledger, View};
pub use pair::{SharedOffer, shared_offers};
pub use picture::Picture;
pub use round::{Round, round};
