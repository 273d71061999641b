//! From entries to a Picture. Pure and total: no clock, no file, no panic. What cannot be believed becomes a Doubt.

pub mod bed;
pub mod ledger;
pub mod picture;
pub mod site;
pub mod stock;
pub mod tray;
#[cfg(test)]
pub(crate) mod written;

pub use ledger::Ledger;
pub use picture::Picture;
