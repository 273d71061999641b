//! A day as a person means it, and a time of day. No clock is read here.

use chrono::{Datelike, NaiveDate};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;
use std::ops::{Add, Sub};
use std::str::FromStr;

/// Days of a week.
pub(crate) const WEEK_DAYS: i32 = 7;

/// A civil day (no time zone), kept as the number of days since 1 January of year 1 (day 1).
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Day(i32);

/// Why a text is not a day.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("'{0}' is not a day written YYYY-MM-DD")]
pub struct DayError(pub String);

impl Day {
    /// The day of a year, month (1-12) and day of the month; `None` where the calendar has no such day
    /// or the year is outside 1..=9999.
    pub fn from_ymd(year: i32, month: u32, day: u32) -> Option<Day> {
        if !(1..=9999).contains(&year) {
            return None;
        }
        NaiveDate::from_ymd_opt(year, month, day).map(|date| Day(date.num_days_from_ce()))
    }

    /// From a chrono date, clamped to the years 1..=9999.
    pub fn from_date(date: NaiveDate) -> Day {
        Day(date.num_days_from_ce()).clamped()
    }

    /// Days since 1 January of year 1 (that day is 1).
    pub fn number(self) -> i32 {
        self.0
    }

    /// From days since 1 January of year 1 (that day is 1), clamped to the years 1..=9999.
    pub fn from_number(number: i32) -> Day {
        Day(number).clamped()
    }

    /// Year, month (1-12), day of the month.
    pub fn ymd(self) -> (i32, u32, u32) {
        let date = self.date();
        (date.year(), date.month(), date.day())
    }

    /// The day as a chrono date.
    pub fn date(self) -> NaiveDate {
        NaiveDate::from_num_days_from_ce_opt(self.0).unwrap_or_default()
    }

    /// Whole days from `earlier` to this day; negative when `earlier` is later.
    pub fn days_since(self, earlier: Day) -> i32 {
        self.0.saturating_sub(earlier.0)
    }

    /// This day moved by whole days, clamped to the years 1..=9999.
    pub fn plus(self, days: i32) -> Day {
        Day(self.0.saturating_add(days)).clamped()
    }

    fn clamped(self) -> Day {
        const FIRST: i32 = 1; // 0001-01-01
        const LAST: i32 = 3_652_059; // 9999-12-31
        Day(self.0.clamp(FIRST, LAST))
    }
}

impl Add<i32> for Day {
    type Output = Day;
    fn add(self, days: i32) -> Day {
        self.plus(days)
    }
}

impl Sub<i32> for Day {
    type Output = Day;
    fn sub(self, days: i32) -> Day {
        self.plus(days.saturating_neg())
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (year, month, day) = self.ymd();
        write!(f, "{year:04}-{month:02}-{day:02}")
    }
}

impl fmt::Debug for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl FromStr for Day {
    type Err = DayError;
    /// Reads `YYYY-MM-DD` and nothing else.
    fn from_str(text: &str) -> Result<Day, DayError> {
        let fault = || DayError(text.chars().take(40).collect());
        let bytes = text.as_bytes();
        if bytes.len() != 10 || bytes[4] != b'-' || bytes[7] != b'-' {
            return Err(fault());
        }
        let number = |from: usize, to: usize| -> Result<u32, DayError> {
            let part = text.get(from..to).ok_or_else(fault)?;
            if !part.bytes().all(|byte| byte.is_ascii_digit()) {
                return Err(fault());
            }
            part.parse().map_err(|_| fault())
        };
        let (year, month, day) = (number(0, 4)?, number(5, 7)?, number(8, 10)?);
        Day::from_ymd(year as i32, month, day).ok_or_else(fault)
    }
}

/// Text where a person may read it, else the number of the day.
impl Serialize for Day {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        if !serializer.is_human_readable() {
            return self.number().serialize(serializer);
        }
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Day {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Day, D::Error> {
        if !deserializer.is_human_readable() {
            return i32::deserialize(deserializer).map(Day::from_number);
        }
        let text = std::borrow::Cow::<'de, str>::deserialize(deserializer)?;
        text.parse().map_err(serde::de::Error::custom)
    }
}

/// A time of day in minutes since midnight, 0..=1439, written `HH:MM`.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Clock(u16);

impl Clock {
    /// From hours (0-23) and minutes (0-59).
    pub fn from_hm(hour: u32, minute: u32) -> Option<Clock> {
        (hour < 24 && minute < 60).then(|| Clock((hour * 60 + minute) as u16))
    }

    /// Minutes since midnight.
    pub fn minutes(self) -> u16 {
        self.0
    }
}

impl fmt::Display for Clock {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:02}:{:02}", self.0 / 60, self.0 % 60)
    }
}

impl FromStr for Clock {
    type Err = DayError;
    fn from_str(text: &str) -> Result<Clock, DayError> {
        let fault = || DayError(text.chars().take(40).collect());
        let (hour, minute) = text.split_once(':').ok_or_else(fault)?;
        let plain = |part: &str| (1..=2).contains(&part.len()) && part.bytes().all(|b| b.is_ascii_digit());
        if !plain(hour) || !plain(minute) || minute.len() != 2 {
            return Err(fault());
        }
        Clock::from_hm(hour.parse().map_err(|_| fault())?, minute.parse().map_err(|_| fault())?).ok_or_else(fault)
    }
}

impl Serialize for Clock {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Clock {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Clock, D::Error> {
        let text = std::borrow::Cow::<'de, str>::deserialize(deserializer)?;
        text.parse().map_err(|_| serde::de::Error::custom(format!("'{text}' is not a time of day written HH:MM")))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_are_read_and_written_in_iso_8601() {
        let day: Day = "2026-03-14".parse().unwrap();
        assert_eq!(day.to_string(), "2026-03-14");
        assert_eq!(day.ymd(), (2026, 3, 14));
        for wrong in ["2026-3-14", "2026-02-30", "14-03-2026", "2026-03-14T10:00", "", "２026-03-14", "0000-01-01"] {
            assert!(wrong.parse::<Day>().is_err(), "{wrong} was read as a day");
        }
    }

    #[test]
    fn moving_a_day_crosses_months_and_stays_in_the_calendar() {
        let day: Day = "2028-02-28".parse().unwrap();
        assert_eq!((day + 2).to_string(), "2028-03-01");
        assert_eq!((day + 2).days_since(day), 2);
        assert_eq!(day.plus(i32::MAX).to_string(), "9999-12-31");
    }

    #[test]
    fn a_clock_is_hours_and_minutes() {
        assert_eq!("07:40".parse::<Clock>().unwrap().minutes(), 460);
        assert!("24:00".parse::<Clock>().is_err());
        assert!("7:4".parse::<Clock>().is_err());
    }
}
