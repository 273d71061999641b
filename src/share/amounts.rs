//! Numbers, ages and days as a person writes them by hand: "about 40", "unas 40", "3 months", "marzo 2026".

use super::draft::short;
use super::fault::Reason;
use super::sheet::cells::{DayOrder, read_day, read_number};
use crate::base::{Day, text};
use crate::nursery::entry::fault::Problem;

/// Days in a month and in a year, on the mean of the Gregorian calendar.
const DAYS_PER_MONTH: f64 = 30.436_875;
const DAYS_PER_YEAR: f64 = 365.2425;
/// The day a month stands for where only the month is written: its middle.
const MIDDLE_OF_MONTH: u32 = 15;
/// The most plants one amount may name; as the largest count of an entry.
const LARGEST: f64 = 1e9;
/// The oldest age that is read, days: 500 years.
const OLDEST_DAYS: f64 = 182_621.0;

/// Words before a number that make it an estimate, folded.
const ABOUT: [&str; 19] = [
    "about",
    "around",
    "approx.",
    "approx",
    "approximately",
    "ca.",
    "ca",
    "circa",
    "some",
    "roughly",
    "unas",
    "unos",
    "aprox.",
    "aprox",
    "aproximadamente",
    "como",
    "alrededor-de",
    "cerca-de",
    "mas-o-menos",
];

/// A number and whether it is only about so much.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Amount<T> {
    pub value: T,
    pub about: bool,
}

/// Takes a word or sign for "about" from the front of a text.
pub(super) fn without_about(written: &str) -> (&str, bool) {
    let trimmed = written.trim();
    if let Some(rest) = trimmed.strip_prefix(['~', '\u{2248}', '\u{00b1}']) {
        return (rest.trim_start(), true);
    }
    let mut ends: Vec<usize> = trimmed.char_indices().filter(|(_, c)| c.is_whitespace()).map(|(i, _)| i).collect();
    ends.truncate(3);
    for end in ends.into_iter().rev() {
        if ABOUT.contains(&text::folded(&trimmed[..end]).as_str()) {
            return (trimmed[end..].trim_start(), true);
        }
    }
    (trimmed, false)
}

fn entry_reason(problem: Problem) -> Reason {
    Reason::Envelope(problem)
}

/// A whole number of plants. A single comma or point before three digits parts thousands here: plants are whole.
pub(super) fn read_count(written: &str) -> Result<Amount<u32>, Reason> {
    let (bare, about) = without_about(written);
    let bare = without_unit(bare, &["plants", "plant", "seedlings", "plantas", "planta", "plantulas"]);
    let not_a_number = || entry_reason(Problem::NotANumber(short(written.trim())));
    let plain = read_number(&thousands_joined(bare)).ok_or_else(not_a_number)?;
    let number: f64 = plain.parse().map_err(|_| not_a_number())?;
    if plain.starts_with('-') {
        return Err(entry_reason(Problem::BelowZero(short(written.trim()))));
    }
    if number.fract() != 0.0 {
        return Err(entry_reason(Problem::NotWhole(short(written.trim()))));
    }
    if number > LARGEST {
        return Err(entry_reason(Problem::OutsideEnds { least: 0.0, most: LARGEST }));
    }
    Ok(Amount { value: number as u32, about })
}

/// Whether a count was written with a sign that could be a decimal one and was taken for thousands.
pub(super) fn parts_thousands(written: &str) -> bool {
    let (bare, _) = without_about(written);
    thousands_joined(bare) != bare
}

fn thousands_joined(bare: &str) -> String {
    let parts: Vec<&str> = bare.split([',', '.']).collect();
    let digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
    match parts[..] {
        [whole, rest]
            if digits(whole) && digits(rest) && whole.len() <= 3 && rest.len() == 3 && !whole.starts_with('0') =>
        {
            format!("{whole}{rest}")
        }
        _ => bare.to_string(),
    }
}

fn without_unit<'a>(bare: &'a str, units: &[&str]) -> &'a str {
    for (i, letter) in bare.char_indices().rev() {
        if !(letter.is_alphabetic() || letter == '%' || letter == '.') {
            let (number, unit) = bare.split_at(i + letter.len_utf8());
            let known = units.contains(&text::folded(unit).as_str());
            return if known { number.trim_end() } else { bare };
        }
    }
    bare
}

/// A number of a thing with its unit, which may be left out: `units` are its spellings, folded, with what each is worth.
pub(super) fn read_amount(written: &str, units: &[(&str, f64)]) -> Result<Amount<f64>, Reason> {
    let (bare, about) = without_about(written);
    for (unit, worth) in units {
        let number = without_unit(bare, &[*unit]);
        if number.len() < bare.len() {
            return plain_number(number, written).map(|value| Amount { value: value * worth, about });
        }
    }
    plain_number(bare, written).map(|value| Amount { value, about })
}

fn plain_number(bare: &str, written: &str) -> Result<f64, Reason> {
    let fault = || entry_reason(Problem::NotANumber(short(written.trim())));
    let number: f64 = read_number(bare).ok_or_else(fault)?.parse().map_err(|_| fault())?;
    if number < 0.0 { Err(entry_reason(Problem::BelowZero(short(written.trim())))) } else { Ok(number) }
}

/// Heights and the like in centimetres.
pub(super) const CENTIMETRES: [(&str, f64); 3] = [("cm", 1.0), ("cm.", 1.0), ("m", 100.0)];
/// Lengths in metres.
pub(super) const METRES: [(&str, f64); 6] =
    [("m", 1.0), ("m.", 1.0), ("mt", 1.0), ("mts", 1.0), ("metros", 1.0), ("cm", 0.01)];
/// Percent.
pub(super) const PERCENT: [(&str, f64); 1] = [("%", 1.0)];

/// What a word for a span of time is worth in days.
fn span_days(word: &str) -> Option<f64> {
    match text::folded(word).trim_end_matches('.') {
        "d" | "day" | "days" | "dia" | "dias" => Some(1.0),
        "w" | "wk" | "week" | "weeks" | "semana" | "semanas" | "sem" => Some(7.0),
        "mo" | "month" | "months" | "mes" | "meses" => Some(DAYS_PER_MONTH),
        "y" | "yr" | "year" | "years" | "ano" | "anos" => Some(DAYS_PER_YEAR),
        _ => None,
    }
}

/// An age in days: a bare number in `bare_unit_days`, or one with days, weeks, months or years in either language.
pub(super) fn read_age(written: &str, bare_unit: &str) -> Result<Amount<u32>, Reason> {
    let fault = || Reason::NotAnAge(short(written.trim()));
    let (bare, about) = without_about(written);
    let letters = bare.find(char::is_alphabetic);
    let (number, unit) = letters.map_or((bare, bare_unit), |at| bare.split_at(at));
    let worth = span_days(unit).ok_or_else(fault)?;
    let number: f64 = read_number(number).and_then(|plain| plain.parse().ok()).ok_or_else(fault)?;
    let days = (number * worth).round();
    if (0.0..=OLDEST_DAYS).contains(&days) && number >= 0.0 {
        Ok(Amount { value: days as u32, about: about || (worth > 1.0 && letters.is_some()) })
    } else {
        Err(fault())
    }
}

/// A day written by hand, and what a person is to be told about how it was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct HandDay {
    pub day: Day,
    /// Only about then: a month, or so long ago.
    pub about: bool,
    /// The other order of day and month would give another day.
    pub ambiguous: bool,
}

/// Reads a day, a month or a span ago; what lies ahead of `today` is a fault.
pub(super) fn read_hand_day(written: &str, order: DayOrder, today: Day) -> Result<HandDay, Reason> {
    let (bare, about) = without_about(written);
    let bare = without_time(bare);
    let exact = |day: Day| HandDay { day, about: false, ambiguous: false };
    let read = if let Some(day) = span_ago(bare, today) {
        HandDay { day, about: true, ambiguous: false }
    } else if let Some((year, month)) = month_only(bare) {
        HandDay { day: middle_of(year, month, today)?, about: true, ambiguous: false }
    } else if let Some(day) = named_day(bare) {
        exact(day)
    } else {
        read_day(bare, order).map(|read| HandDay { ambiguous: read.ambiguous, ..exact(read.day) })?
    };
    if read.day > today {
        return Err(Reason::ComingDay(read.day));
    }
    Ok(HandDay { about: read.about || about, ..read })
}

/// Spreadsheet programs write midnight behind a day.
fn without_time(bare: &str) -> &str {
    ["T00:00:00", " 00:00:00", " 0:00:00", " 00:00", " 0:00"]
        .iter()
        .find_map(|tail| bare.strip_suffix(tail))
        .unwrap_or(bare)
}

/// The middle of a month; of the present month today, where its middle is still to come.
fn middle_of(year: i32, month: u32, today: Day) -> Result<Day, Reason> {
    let not_a_day = || entry_reason(Problem::NotADay(format!("{year}-{month}")));
    let first = Day::from_ymd(year, month, 1).ok_or_else(not_a_day)?;
    let middle = Day::from_ymd(year, month, MIDDLE_OF_MONTH).ok_or_else(not_a_day)?;
    Ok(if first <= today { middle.min(today) } else { middle })
}

/// "3 months ago", "hace 3 meses", "a month ago", "hace un mes".
fn span_ago(bare: &str, today: Day) -> Option<Day> {
    let folded = text::folded(bare);
    let span = folded.strip_suffix("-ago").or_else(|| folded.strip_prefix("hace-"))?.replace('-', " ");
    let (span, _) = without_about(&span);
    let mut words = span.split_whitespace();
    let (number, unit, rest) = (words.next()?, words.next()?, words.next());
    let number: f64 = match number {
        "a" | "an" | "one" | "un" | "una" => 1.0,
        digits => read_number(digits)?.parse().ok()?,
    };
    let days = (number * span_days(unit)?).round();
    (rest.is_none() && (0.0..=OLDEST_DAYS).contains(&days)).then(|| today - days as i32)
}

/// Year and month of "March 2026", "marzo de 2026", "3/2026", "2026-03".
fn month_only(bare: &str) -> Option<(i32, u32)> {
    let words = parts(bare);
    let [first, second] = &words[..] else { return None };
    let (month, year) =
        if first.len() == 4 && month_named(first).is_none() { (second, first) } else { (first, second) };
    Some((year_of(year)?, month_of(month)?))
}

/// "14 March 2026", "14 de marzo de 2026", "March 14, 2026".
fn named_day(bare: &str) -> Option<Day> {
    let words = parts(bare);
    let [first, second, year] = &words[..] else { return None };
    let (day, month) = match (month_named(first), month_named(second)) {
        (None, Some(month)) => (first, month),
        (Some(month), None) => (second, month),
        (None, None) | (Some(_), Some(_)) => return None,
    };
    let day = day.trim_end_matches(|letter: char| letter.is_alphabetic());
    Day::from_ymd(year_of(year)?, month, small_number(day)?)
}

fn parts(bare: &str) -> Vec<String> {
    let folded = text::folded(bare);
    let words = folded.split(['-', '/', '.', ',']).filter(|word| !word.is_empty());
    words
        .filter(|word| !["de", "del", "of", "in", "en", "the", "el", "on"].contains(word))
        .map(str::to_string)
        .collect()
}

fn year_of(word: &str) -> Option<i32> {
    (word.len() == 4 && word.bytes().all(|byte| byte.is_ascii_digit())).then(|| word.parse().ok()).flatten()
}

fn small_number(word: &str) -> Option<u32> {
    ((1..=2).contains(&word.len()) && word.bytes().all(|byte| byte.is_ascii_digit()))
        .then(|| word.parse().ok())
        .flatten()
}

fn month_of(word: &str) -> Option<u32> {
    month_named(word).or_else(|| small_number(word).filter(|month| (1..=12).contains(month)))
}

/// The month by its name or the first letters of it, in either language.
fn month_named(word: &str) -> Option<u32> {
    const MONTHS: [[&str; 2]; 12] = [
        ["january", "enero"],
        ["february", "febrero"],
        ["march", "marzo"],
        ["april", "abril"],
        ["may", "mayo"],
        ["june", "junio"],
        ["july", "julio"],
        ["august", "agosto"],
        ["september", "septiembre"],
        ["october", "octubre"],
        ["november", "noviembre"],
        ["december", "diciembre"],
    ];
    let known = |name: &str| word.len() >= 3 && name.starts_with(word);
    let at = MONTHS.iter().position(|names| names.iter().any(|name| known(name)));
    at.or_else(|| ["setiembre", "set", "sept"].contains(&word).then_some(8)).map(|at| at as u32 + 1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn today() -> Day {
        Day::from_ymd(2026, 3, 14).unwrap()
    }

    fn count(written: &str) -> Result<(u32, bool), Reason> {
        read_count(written).map(|amount| (amount.value, amount.about))
    }

    #[test]
    fn counts_are_whole_and_may_be_about() {
        for (written, expected) in [
            ("41", (41, false)),
            (" 1 234 ", (1234, false)),
            ("1,234", (1234, false)),
            ("1.234", (1234, false)),
            ("40,0", (40, false)),
            ("about 40", (40, true)),
            ("~40", (40, true)),
            ("unas 40", (40, true)),
            ("Más o menos 40", (40, true)),
            ("aprox. 40 plantas", (40, true)),
            ("40 plants", (40, false)),
        ] {
            assert_eq!(count(written), Ok(expected), "{written}");
        }
        assert!(parts_thousands("1,234") && !parts_thousands("1 234"));
        for wrong in ["minus two", "dos", "", "4o", "40 trees", "1e3", "about"] {
            assert!(matches!(count(wrong), Err(Reason::Envelope(Problem::NotANumber(_)))), "{wrong}");
        }
        assert_eq!(count("-2"), Err(Reason::Envelope(Problem::BelowZero("-2".into()))));
        assert_eq!(count("2,5"), Err(Reason::Envelope(Problem::NotWhole("2,5".into()))));
        assert!(matches!(count("9999999999"), Err(Reason::Envelope(Problem::OutsideEnds { .. }))));
    }

    #[test]
    fn amounts_may_have_their_unit() {
        let height = |written: &str| read_amount(written, &CENTIMETRES).map(|amount| amount.value);
        assert_eq!(height("24,5"), Ok(24.5));
        assert_eq!(height("24 cm"), Ok(24.0));
        assert_eq!(height("0.5m"), Ok(50.0));
        assert_eq!(read_amount("60 %", &PERCENT).map(|amount| amount.value), Ok(60.0));
        assert!(height("24 mm").is_err() && height("-3").is_err());
    }

    #[test]
    fn ages_are_days_or_have_their_unit() {
        let age = |written: &str| read_age(written, "days").map(|amount| amount.value);
        assert_eq!(age("120"), Ok(120));
        assert_eq!(age("3 months"), Ok(91));
        assert_eq!(age("3 meses"), Ok(91));
        assert_eq!(age("1,5 años"), Ok(548));
        assert_eq!(age("~8 semanas"), Ok(56));
        assert_eq!(read_age("4", "months").map(|amount| amount.value), Ok(122));
        for wrong in ["old", "-3", "3 moons", "9999999 years", ""] {
            assert!(matches!(age(wrong), Err(Reason::NotAnAge(_))), "{wrong}");
        }
    }

    #[test]
    fn days_are_read_as_people_say_them() {
        let read = |written: &str| {
            read_hand_day(written, DayOrder::DayFirst, today()).map(|read| (read.day.to_string(), read.about))
        };
        let day = |written: &str, about| Ok((written.to_string(), about));
        assert_eq!(read("2025-11-03"), day("2025-11-03", false));
        assert_eq!(read("2025-11-03 00:00:00"), day("2025-11-03", false));
        assert_eq!(read("3/11/2025"), day("2025-11-03", false));
        assert_eq!(read("November 2025"), day("2025-11-15", true));
        assert_eq!(read("marzo de 2025"), day("2025-03-15", true));
        assert_eq!(read("11/2025"), day("2025-11-15", true));
        assert_eq!(read("2025-11"), day("2025-11-15", true));
        assert_eq!(read("March 2026"), day("2026-03-14", true));
        assert_eq!(read("3 months ago"), day("2025-12-13", true));
        assert_eq!(read("hace 3 meses"), day("2025-12-13", true));
        assert_eq!(read("hace un mes"), day("2026-02-12", true));
        assert_eq!(read("14 de noviembre de 2025"), day("2025-11-14", false));
        assert_eq!(read("Nov 14th, 2025"), day("2025-11-14", false));
        assert_eq!(read("about 3/11/2025"), day("2025-11-03", true));
        assert_eq!(read("abril 2026"), Err(Reason::ComingDay(Day::from_ymd(2026, 4, 15).unwrap())));
        for wrong in ["Mar-26", "14/3/26", "spring", "13/2025", "hace mucho", "32 March 2025", ""] {
            assert!(matches!(read(wrong), Err(Reason::Envelope(Problem::NotADay(_)))), "{wrong}");
        }
    }

    proptest! {
        #[test]
        fn no_text_makes_them_panic(any in any::<String>(), near in "(~|about |hace |unas )?[-0-9/.,ñ ]{0,9}( ?(m|cm|meses|ago|%|de marzo|é))?") {
            for written in [any, near] {
                let _ = (read_count(&written), read_amount(&written, &METRES), read_age(&written, "days"));
                if let Ok(read) = read_hand_day(&written, DayOrder::MonthFirst, today()) {
                    prop_assert!(read.day <= today());
                }
            }
        }
    }
}
