//! The book itself: weather, notes, withdrawals.

use super::types::{Celsius, DayRain, Text};
use crate::base::EntryId;
use crate::kinds;

kinds! {
    /// What is written in the book besides.
    BookEntry;
    /// The gauge; a later one for the same day replaces it.
    Weather "weather" {
        /// Rain, mm.
        rain_mm: Option<DayRain>,
        /// Lowest temperature, C.
        tmin_c: Option<Celsius>,
        /// Highest temperature, C.
        tmax_c: Option<Celsius>,
    }
    /// Anything.
    Noted "noted" {
        /// What it is about.
        about: Option<Text>,
        /// The note.
        text: Text,
    }
    /// Takes entries back; they stay readable.
    Withdrawn "withdrawn" {
        /// The entries.
        entries: Vec<EntryId>,
        /// Why.
        why: Text,
    }
}
