//! Days as a person types them.

use crate::base::Day;
use crate::desk::{Reason, day_asked};
use crate::wording::Wording;

/// A day as a person types it: `2026-03-14`, `14/3`, `yesterday`, `ayer`, `tomorrow`, `+7`,
/// `-1`, `24 nov`. The error is why it is none, or which two it may be.
pub(crate) fn read_day(written: &str, today: Day) -> Result<Day, Reason> {
    match day_asked(written, today) {
        Err(Reason::WhichDay { written, first, second }) => Err(Reason::WhichDay { written, first, second }),
        Err(_) => day_asked(&written.trim().replace(' ', "/"), today),
        read => read,
    }
}

/// What to tell a person whose day was not read.
pub(crate) fn day_fault(written: &str, reason: &Reason, wording: &Wording) -> String {
    match reason {
        Reason::WhichDay { first, second, .. } => wording.one_of_two_days(written, *first, *second),
        _ => wording.day_not_read(written),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_are_read_as_people_type_them() {
        let today: Day = "2026-03-14".parse().unwrap();
        let read = |written| read_day(written, today).ok().map(|day| day.to_string());
        assert_eq!(read("2026-02-01").as_deref(), Some("2026-02-01"));
        assert_eq!(read("-1").as_deref(), Some("2026-03-13"));
        assert_eq!(read("+7").as_deref(), Some("2026-03-21"));
        assert_eq!(read("14/3").as_deref(), Some("2026-03-14"));
        // Tomorrow, and not a day of a year ago.
        assert_eq!(read("15/3").as_deref(), Some("2026-03-15"));
        assert_eq!(read("24/12").as_deref(), Some("2025-12-24"));
        assert_eq!(read("1.12.2025").as_deref(), Some("2025-12-01"));
        assert_eq!(read("14 3").as_deref(), Some("2026-03-14"));
        assert_eq!(read("ayer").as_deref(), Some("2026-03-13"));
        assert_eq!(read("Tomorrow").as_deref(), Some("2026-03-15"));
        assert_eq!(read("24 nov").as_deref(), Some("2025-11-24"));
        assert_eq!(read("2026-12-24").as_deref(), Some("2026-12-24"));
        for bad in ["", "x", "31/2", "+99999999999", "1/2/3/4", "--1"] {
            assert_eq!(read(bad), None, "{bad}");
        }
        // What may be one of two days is asked.
        let asked = read_day("saturday", today);
        assert!(matches!(asked, Err(Reason::WhichDay { .. })), "{asked:?}");
        let said = day_fault("saturday", &asked.unwrap_err(), &Wording::new(crate::wording::Lang::En));
        assert!(said.contains("2026-03-07") && said.contains("2026-03-14"), "{said}");
    }
}
