//! Numbers, days and words as a person writes them by hand.

pub(super) mod amounts;
pub(super) mod hand_day;
pub(super) mod vocabulary;
