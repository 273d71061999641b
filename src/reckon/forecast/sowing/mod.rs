//! One tray's seed: what was seen of it, what is believed beforehand, what both say together, and how that is drawn.

mod band;
mod prior;
mod seen;
mod several;

pub use band::{Band, band};
pub use prior::{UNKNOWN_GERMINATION, as_test, handbook_seeds, hoped_of_lot, prior_of, prior_of_lot};
pub use seen::{Seen, SownOn, Unseen, looks_at_all, looks_of, looks_until};
pub use several::Posterior;
