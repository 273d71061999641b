//! Days as a person types them.

use crate::base::Day;
use crate::desk::day_asked;

/// A day as a person types it: `2026-03-14`, `14/3`, `yesterday`, `ayer`, `tomorrow`, `+7`,
/// `-1`, `24 nov`.
pub(crate) fn read_day(written: &str, today: Day) -> Option<Day> {
    day_asked(written, today).or_else(|_| day_asked(&written.trim().replace(' ', "/"), today)).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_are_read_as_people_type_them() {
        let today: Day = "2026-03-14".parse().unwrap();
        let read = |written| read_day(written, today).map(|day| day.to_string());
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
            assert_eq!(read_day(bad, today), None, "{bad}");
        }
    }
}
