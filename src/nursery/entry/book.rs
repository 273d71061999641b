//! The book itself: weather, notes, withdrawals.

use super::facts::{KindFacts, LOOK};
use super::rules::BodyRule::{NotEmpty, OneOf};
use super::subject::AboutFields;
use super::types::{Alarm, Celsius, DayRain, Text};
use crate::base::EntryId;
use crate::kinds;

kinds! {
    /// What is written in the book besides.
    BookEntry;
    /// The gauge; a later one for the same day replaces it.
    Weather "weather", KindFacts { about: AboutFields::Site, rules: &[OneOf("rain_mm / tmin_c / tmax_c")], ..LOOK } => {
        /// Rain, mm.
        rain_mm: Option<DayRain>,
        /// Lowest temperature, C.
        tmin_c: Option<Celsius>,
        /// Highest temperature, C.
        tmax_c: Option<Celsius>,
    }
    /// Anything.
    Noted "noted", LOOK => {
        /// What it is about.
        about: Option<Text>,
        /// The note.
        text: Text,
    }
    /// A person's word that an alarm of the file is understood.
    Settled "settled", LOOK => {
        /// Which alarm.
        what: Alarm,
        /// What it is about: entries that are gone, or the entry of a wrong clock.
        of: Option<Text>,
    }
    /// Takes entries back; they stay readable.
    Withdrawn "withdrawn", KindFacts { rules: &[NotEmpty("entries")], ..LOOK } => {
        /// The entries.
        entries: Vec<EntryId>,
        /// Why.
        why: Text,
    }
}
