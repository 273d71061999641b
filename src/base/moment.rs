//! An instant of recording, in UTC.

use chrono::{DateTime, SecondsFormat, Utc};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;
use std::str::FromStr;

use super::{Clock, Day};

/// Milliseconds since 1970-01-01T00:00:00Z. Written as RFC 3339 with milliseconds in UTC.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Moment(i64);

impl Moment {
    /// From milliseconds since 1970-01-01T00:00:00Z, clamped to the years 1..=9999.
    pub fn from_millis(millis: i64) -> Moment {
        const FIRST: i64 = -62_135_596_800_000; // 0001-01-01T00:00:00Z
        const LAST: i64 = 253_402_300_799_999; // 9999-12-31T23:59:59.999Z
        Moment(millis.clamp(FIRST, LAST))
    }

    /// Milliseconds since 1970-01-01T00:00:00Z.
    pub fn millis(self) -> i64 {
        self.0
    }

    /// The civil day at a place whose clocks are `utc_offset_h` hours ahead of UTC.
    pub fn day(self, utc_offset_h: f64) -> Day {
        let shifted = self.0.saturating_add((utc_offset_h.clamp(-24.0, 24.0) * 3_600_000.0) as i64);
        Day::from_date(as_utc(Moment::from_millis(shifted)).date_naive())
    }

    /// The time of day at a place whose clocks are `utc_offset_h` hours ahead of UTC.
    pub fn clock(self, utc_offset_h: f64) -> Option<Clock> {
        let minutes = (self.0 / 60_000).saturating_add((utc_offset_h.clamp(-24.0, 24.0) * 60.0) as i64);
        let of_day = u32::try_from(minutes.rem_euclid(24 * 60)).ok()?;
        Clock::from_hm(of_day / 60, of_day % 60)
    }

    /// The last moment of a civil day at a place whose clocks are `utc_offset_h` hours ahead of UTC.
    pub fn end_of(day: Day, utc_offset_h: f64) -> Moment {
        let midnight = day.plus(1).date().and_hms_opt(0, 0, 0).unwrap_or_default().and_utc().timestamp_millis();
        Moment::from_millis(midnight - 1 - (utc_offset_h.clamp(-24.0, 24.0) * 3_600_000.0) as i64)
    }
}

fn as_utc(moment: Moment) -> DateTime<Utc> {
    DateTime::<Utc>::from_timestamp_millis(moment.0).unwrap_or_default()
}

impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&as_utc(*self).to_rfc3339_opts(SecondsFormat::Millis, true))
    }
}

impl fmt::Debug for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl FromStr for Moment {
    type Err = String;
    fn from_str(text: &str) -> Result<Moment, String> {
        DateTime::parse_from_rfc3339(text)
            .map(|moment| Moment::from_millis(moment.timestamp_millis()))
            .map_err(|_| format!("'{}' is not a moment written as RFC 3339", text.chars().take(40).collect::<String>()))
    }
}

impl Serialize for Moment {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Moment {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Moment, D::Error> {
        let text = std::borrow::Cow::<'de, str>::deserialize(deserializer)?;
        text.parse().map_err(serde::de::Error::custom)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_moment_falls_on_the_day_of_the_place() {
        let moment: Moment = "2026-03-14T22:30:00Z".parse().unwrap();
        assert_eq!(moment.to_string(), "2026-03-14T22:30:00.000Z");
        assert_eq!(moment.day(3.0).to_string(), "2026-03-15");
        assert_eq!(moment.day(-5.0).to_string(), "2026-03-14");
    }

    #[test]
    fn the_end_of_a_day_is_its_last_millisecond() {
        let day: Day = "2026-03-14".parse().unwrap();
        let end = Moment::end_of(day, 3.0);
        assert_eq!(end.to_string(), "2026-03-14T20:59:59.999Z");
        assert_eq!(end.day(3.0), day);
    }
}
