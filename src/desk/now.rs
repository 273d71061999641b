//! The clock of a command.

use crate::base::{Clock, Day, Moment};

/// What the clock says, read once by the caller.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Now {
    /// Today, as the person means it.
    pub today: Day,
    /// The time of day; none where today was set by hand.
    pub clock: Option<Clock>,
    /// The instant.
    pub moment: Moment,
}
