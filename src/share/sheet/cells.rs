//! Numbers and days as people and spreadsheet programs write them in cells.

use crate::base::Day;
use crate::nursery::entry::fault::Problem;
use crate::share::draft::short;
use crate::share::fault::Reason;

/// Which number stands first in a day written with strokes or points.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DayOrder {
    /// 14/3/2026.
    DayFirst,
    /// 3/14/2026.
    MonthFirst,
}

/// A day that was read from a cell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ReadDay {
    /// The day.
    pub day: Day,
    /// Whether the other order would give another day: the person is to be told how it was understood.
    pub ambiguous: bool,
}

/// Reads 2026-03-14 (or with strokes or points, the year first), else day and month in the given order and the year in
/// four digits. A day that only the other order gives is a fault: the days beside it would be read wrong in silence.
pub fn read_day(cell: &str, order: DayOrder) -> Result<ReadDay, Reason> {
    let not_a_day = || Reason::Envelope(Problem::NotADay(short(cell.trim())));
    let parts: Vec<&str> = cell.trim().split(['-', '/', '.']).collect();
    let [first, second, third] = parts[..] else { return Err(not_a_day()) };
    let number = |part: &str| {
        let plain = (1..=4).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit());
        plain.then(|| part.parse::<u32>().ok()).flatten().ok_or_else(not_a_day)
    };
    let (a, b, c) = (number(first)?, number(second)?, number(third)?);
    let of = |year: u32, month: u32, day: u32| Day::from_ymd(i32::try_from(year).ok()?, month, day);
    if first.len() == 4 {
        return of(a, b, c).map(|day| ReadDay { day, ambiguous: false }).ok_or_else(not_a_day);
    }
    if third.len() != 4 {
        return Err(not_a_day());
    }
    let (day_first, month_first) = (of(c, b, a), of(c, a, b));
    let (meant, other) = match order {
        DayOrder::DayFirst => (day_first, month_first),
        DayOrder::MonthFirst => (month_first, day_first),
    };
    match (meant, other) {
        (Some(day), other) => Ok(ReadDay { day, ambiguous: other.is_some_and(|other| other != day) }),
        (None, Some(_)) => Err(Reason::DayInOtherOrder(short(cell.trim()))),
        (None, None) => Err(not_a_day()),
    }
}

/// A number in the plain form `-1234.5`, from one with a decimal comma or point and with groups of three digits parted
/// by the other sign, a blank or an apostrophe. A single comma or point is always the decimal one. `None` where it is no
/// such number.
pub fn read_number(cell: &str) -> Option<String> {
    let trimmed = cell.trim();
    let (sign, unsigned) = match trimmed.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => ("-", rest),
        None => ("", trimmed.strip_prefix('+').unwrap_or(trimmed)),
    };
    let is_group_blank = |letter: char| matches!(letter, ' ' | '\u{a0}' | '\u{202f}' | '\'' | '\u{2019}');
    let marks: Vec<char> = unsigned.chars().filter(|letter| matches!(letter, ',' | '.')).collect();
    let decimal = match marks[..] {
        [] => None,
        [only] => Some(only),
        [.., last] if marks.iter().filter(|mark| **mark == last).count() == 1 => Some(last),
        _ => None,
    };
    let (whole, part) = match decimal.and_then(|mark| unsigned.rsplit_once(mark)) {
        Some((whole, part)) => (whole, Some(part)),
        None => (unsigned, None),
    };
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    let groups: Vec<&str> = whole.split(|letter| matches!(letter, ',' | '.') || is_group_blank(letter)).collect();
    let mut parting = whole.chars().filter(|letter| !letter.is_ascii_digit());
    let one_sign = parting.next().is_none_or(|sign| parting.all(|other| other == sign));
    let grouped =
        groups.len() == 1 || (one_sign && groups[0].len() <= 3 && groups[1..].iter().all(|group| group.len() == 3));
    if !grouped || !groups.iter().all(|group| digits(group)) || !part.is_none_or(digits) {
        return None;
    }
    let joined = groups.concat();
    Some(part.map_or_else(|| format!("{sign}{joined}"), |part| format!("{sign}{joined}.{part}")))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn days_are_read_in_three_orders() {
        let read = |cell: &str, order| read_day(cell, order).map(|read| (read.day.to_string(), read.ambiguous));
        let day = |written: &str, ambiguous| Ok((written.to_string(), ambiguous));
        assert_eq!(read(" 2026-03-04 ", DayOrder::MonthFirst), day("2026-03-04", false));
        assert_eq!(read("4/3/2026", DayOrder::DayFirst), day("2026-03-04", true));
        assert_eq!(read("4/3/2026", DayOrder::MonthFirst), day("2026-04-03", true));
        assert_eq!(read("14.03.2026", DayOrder::DayFirst), day("2026-03-14", false));
        assert_eq!(read("3/3/2026", DayOrder::DayFirst), day("2026-03-03", false));
        assert_eq!(read("14/3/2026", DayOrder::MonthFirst), Err(Reason::DayInOtherOrder("14/3/2026".into())));
        for wrong in ["14/3/26", "31/2/2026", "2026-02-30", "14 March 2026", "", "1/2/3/2026", "+1/2/2026"] {
            assert!(
                matches!(read_day(wrong, DayOrder::DayFirst), Err(Reason::Envelope(Problem::NotADay(_)))),
                "{wrong}"
            );
        }
    }

    #[test]
    fn numbers_are_read_with_comma_or_point() {
        for (written, plain) in [
            ("1,5", "1.5"),
            ("1.5", "1.5"),
            ("1.234,5", "1234.5"),
            ("1,234.5", "1234.5"),
            ("1 234 567,25", "1234567.25"),
            ("1.234.567", "1234567"),
            ("1,234", "1.234"),
            (" -0,5 ", "-0.5"),
            ("41", "41"),
        ] {
            assert_eq!(read_number(written).as_deref(), Some(plain), "{written}");
        }
        for wrong in ["", "-", "1,", ",5", "1.2.3", "12.34,5", "1,234,56.7", "1.234 567,8", "4l", "1e3", "--1"] {
            assert_eq!(read_number(wrong), None, "{wrong}");
        }
    }

    proptest! {
        #[test]
        fn no_text_makes_them_panic(text in any::<String>(), near in "[-+0-9,. '/é]{0,14}") {
            for cell in [text, near] {
                let _ = read_day(&cell, DayOrder::DayFirst);
                if let Some(plain) = read_number(&cell) {
                    prop_assert!(plain.parse::<f64>().is_ok());
                }
            }
        }
    }
}
