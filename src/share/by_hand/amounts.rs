//! Numbers and ages as a person writes them by hand: "about 40", "unas 40", "3 months", "2 L".

use super::vocabulary::{is, vocabulary};
use crate::base::text;
use crate::nursery::entry::fault::Problem;
use crate::share::draft::short;
use crate::share::fault::Reason;
use crate::share::sheet::cells::read_number;

/// Days in a month and in a year, on the mean of the Gregorian calendar.
const DAYS_PER_MONTH: f64 = 30.436_875;
const DAYS_PER_YEAR: f64 = 365.2425;
/// The most plants one amount may name; as the largest count of an entry.
const LARGEST: f64 = 1e9;
/// The oldest age that is read, days: 500 years.
const OLDEST_DAYS: f64 = 182_621.0;

/// A number and whether it is only about so much.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::share) struct Amount<T> {
    pub value: T,
    pub about: bool,
}

/// Takes a word or sign for "about" from the front of a text.
pub(in crate::share) fn without_about(written: &str) -> (&str, bool) {
    let trimmed = written.trim();
    if let Some(rest) = trimmed.strip_prefix(['~', '\u{2248}', '\u{00b1}']) {
        return (rest.trim_start(), true);
    }
    let mut ends: Vec<usize> = trimmed.char_indices().filter(|(_, c)| c.is_whitespace()).map(|(i, _)| i).collect();
    ends.truncate(3);
    for end in ends.into_iter().rev() {
        if is(&text::folded(&trimmed[..end]), &vocabulary().amount.about) {
            return (trimmed[end..].trim_start(), true);
        }
    }
    (trimmed, false)
}

fn entry_reason(problem: Problem) -> Reason {
    Reason::Envelope(problem)
}

/// A whole number of plants. A single comma or point before three digits parts thousands here: plants are whole.
pub(in crate::share) fn read_count(written: &str) -> Result<Amount<u32>, Reason> {
    /// Plants in a dozen.
    const DOZEN: f64 = 12.0;
    let (bare, about) = without_about(written);
    let known = &vocabulary().amount;
    if is(&text::folded(bare), &known.half_dozen) {
        return Ok(Amount { value: (DOZEN / 2.0) as u32, about });
    }
    let is_dozen = |unit: &str| is(unit.trim_end_matches('.'), &known.dozen);
    // "docena", "una docena", "dos docenas".
    let folded = text::folded(bare);
    let of_dozens = folded.rsplit_once('-').filter(|(_, unit)| is_dozen(unit)).map(|(number, _)| number);
    let figures = |word: &str| vocabulary().numbers.figures.iter().position(|words| is(word, words));
    let times = if is_dozen(&folded) {
        Some(1)
    } else {
        of_dozens.and_then(|word| figures(word).or(is(word, &vocabulary().time.one).then_some(1)))
    };
    if let Some(times) = times {
        return Ok(Amount { value: times as u32 * DOZEN as u32, about });
    }
    let dozens = without_unit(bare, is_dozen);
    let times = if dozens.len() < bare.len() { DOZEN } else { 1.0 };
    let bare = without_unit(dozens, |unit| is(unit, &known.plants));
    let not_a_number = || entry_reason(Problem::NotANumber(short(written.trim())));
    let plain = read_number(&thousands_joined(bare)).ok_or_else(|| in_words(written).unwrap_or_else(not_a_number))?;
    let number: f64 = plain.parse::<f64>().map_err(|_| not_a_number())? * times;
    if plain.starts_with('-') {
        return Err(entry_reason(Problem::BelowZero(short(written.trim()))));
    }
    if number.fract() != 0.0 {
        return Err(entry_reason(Problem::NotWhole(short(written.trim()))));
    }
    if number > LARGEST {
        return Err(entry_reason(Problem::TooMany { most: LARGEST }));
    }
    Ok(Amount { value: number as u32, about })
}

/// What to say of a number that is written in words, or below zero in words or in brackets, as in account books.
fn in_words(written: &str) -> Option<Reason> {
    let folded = text::folded(written);
    let below = vocabulary().amount.below_zero.iter().find_map(|word| folded.strip_prefix(word.as_str()));
    let below = below.or_else(|| folded.strip_prefix('(').and_then(|rest| rest.strip_suffix(')')));
    let number = below.unwrap_or(&folded);
    let figures = vocabulary().numbers.figures.iter().position(|words| is(number, words));
    match (below, figures) {
        (Some(rest), figures) if figures.is_some() || read_number(rest).is_some() => {
            Some(entry_reason(Problem::BelowZero(short(written.trim()))))
        }
        (None, Some(figures)) => {
            Some(Reason::NumberInWords { written: short(written.trim()), figures: figures as u32 })
        }
        (_, _) => None,
    }
}

/// Whether the name of a bag or cell tells a volume of nothing or less: "0 l bag", "-2 l".
pub(in crate::share) fn has_no_volume(name: &str) -> bool {
    let known = &vocabulary().amount;
    let folded = name.trim().to_lowercase();
    let words: Vec<&str> = folded.split([' ', '(', ')']).filter(|word| !word.is_empty()).collect();
    let is_volume = |unit: &str| {
        let unit = unit.trim_end_matches(['.', ',', ';']);
        is(unit, &known.litre) || is(unit, &known.millilitre)
    };
    let is_nothing = |number: &str| {
        read_number(number).and_then(|plain| plain.parse::<f64>().ok()).is_some_and(|number| number <= 0.0)
    };
    words.iter().enumerate().any(|(i, word)| {
        let begin = word.find(char::is_alphabetic).filter(|begin| *begin > 0);
        let glued = begin.is_some_and(|begin| is_volume(&word[begin..]) && is_nothing(&word[..begin]));
        glued || is_nothing(word) && words.get(i + 1).is_some_and(|unit| is_volume(unit))
    })
}

/// The volume that the name of a bag or cell tells, ml: "bolsa 2 L", "2 l bag", "1.5L", "500 cc".
pub(in crate::share) fn volume_ml(name: &str) -> Option<f64> {
    const ML_PER_LITRE: f64 = 1000.0;
    /// The largest container a nursery fills (ours): a number above is no volume.
    const MOST_ML: f64 = 100_000.0;
    let folded = text::folded(name);
    let known = &vocabulary().amount;
    let words: Vec<&str> = folded.split(['-', '(', ')']).filter(|word| !word.is_empty()).collect();
    let of = |number: &str, unit: &str| {
        let unit = unit.trim_end_matches(['.', ',', ';']);
        let worth = if is(unit, &known.litre) { ML_PER_LITRE } else { is(unit, &known.millilitre).then_some(1.0)? };
        let number = match number.split_once('/') {
            Some((a, b)) => read_number(a)?.parse::<f64>().ok()? / read_number(b)?.parse::<f64>().ok()?,
            None if is(number, &known.half) => 0.5,
            None => read_number(number)?.parse().ok()?,
        };
        Some(number * worth).filter(|ml| ml.is_finite() && *ml > 0.0 && *ml <= MOST_ML)
    };
    if let Some(ml) = flat_bag_ml(name) {
        return Some(ml);
    }
    let mut found = words.iter().enumerate().filter_map(|(i, word)| {
        let begin = word.find(char::is_alphabetic).filter(|begin| *begin > 0);
        let glued = begin.and_then(|begin| of(&word[..begin], &word[begin..]));
        glued.or_else(|| of(word, words.get(i + 1)?))
    });
    // Of two volumes nobody knows which is meant.
    let first = found.next()?;
    found.next().is_none().then_some(first)
}

/// The volume of a bag that is sold by its flat size, ml: "bolsa 15x23", "6x9 in". Filled, a flat tube of width W is a round
/// one of circumference 2 W: of its height H it holds W^2 H / pi (geometry). The first number is the width; bare numbers are
/// centimetres where a bag can be so wide, and of smaller ones nobody knows whether they are inches.
fn flat_bag_ml(name: &str) -> Option<f64> {
    const CM_PER_INCH: f64 = 2.54;
    /// What stays empty under the rim, cm (ours: so that water stands there).
    const HEAD_SPACE_CM: f64 = 2.0;
    /// Bare numbers from here on are centimetres: no nursery bag is so many inches wide (ours).
    const LEAST_WIDTH_CM: f64 = 10.0;
    /// No nursery bag is larger, cm (ours).
    const MOST_CM: f64 = 100.0;
    let lower = name.trim().to_lowercase();
    let (begin, sign) = lower.char_indices().find(|(at, letter)| {
        let before = lower[..*at].trim_end().trim_end_matches('"');
        matches!(letter, 'x' | '×' | '*') && before.ends_with(|before: char| before.is_ascii_digit())
    })?;
    let number_of = |text: &str| -> Option<f64> { read_number(text.trim_matches(['"', ' ']))?.parse().ok() };
    let width = lower[..begin].trim_end().trim_end_matches('"');
    let at =
        width.rfind(|letter: char| !(letter.is_ascii_digit() || matches!(letter, '.' | ','))).map_or(0, |at| at + 1);
    let width = number_of(width.get(at..)?)?;
    let behind = lower[begin + sign.len_utf8()..].trim_start();
    let end =
        behind.find(|letter: char| !(letter.is_ascii_digit() || matches!(letter, '.' | ','))).unwrap_or(behind.len());
    let height = number_of(&behind[..end])?;
    let unit = behind[end..].split_whitespace().next().unwrap_or_default().trim_matches(['.', ',', ')']);
    let known = &vocabulary().amount;
    let cm = match () {
        () if is(unit, &known.inch) => CM_PER_INCH,
        () if is(unit, &known.centimetre) => 1.0,
        // "15x23 bag": what it is says no unit.
        () if (unit.is_empty() || names_a_bag(unit)) && width >= LEAST_WIDTH_CM => 1.0,
        () => return None,
    };
    let (width, height) = (width * cm, height * cm);
    let ml = width * width * (height - HEAD_SPACE_CM) / std::f64::consts::PI;
    (width <= MOST_CM && height <= MOST_CM && height > HEAD_SPACE_CM && ml > 0.0).then(|| ml.round())
}

/// Whether a word only says what plants stand in.
fn names_a_bag(word: &str) -> bool {
    let folded = text::folded(word);
    let one = folded.strip_suffix('s').unwrap_or(&folded);
    ["bag", "polybag", "bolsa", "funda", "bolsita"].contains(&one)
}

/// Whether a count was written with a sign that could be a decimal one and was taken for thousands.
pub(in crate::share) fn parts_thousands(written: &str) -> bool {
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

fn without_unit(bare: &str, is_unit: impl Fn(&str) -> bool) -> &str {
    for (i, letter) in bare.char_indices().rev() {
        if !(letter.is_alphabetic() || letter == '%' || letter == '.') {
            let (number, unit) = bare.split_at(i + letter.len_utf8());
            return if is_unit(&text::folded(unit)) { number.trim_end() } else { bare };
        }
    }
    bare
}

/// A number of a thing with its unit, which may be left out: `units` are its spellings, folded, with what each is worth.
pub(in crate::share) fn read_amount(written: &str, units: &[(&str, f64)]) -> Result<Amount<f64>, Reason> {
    let (bare, about) = without_about(written);
    for (unit, worth) in units {
        let number = without_unit(bare, |behind| behind == *unit);
        if number.len() < bare.len() {
            return plain_number(number, written).map(|value| Amount { value: value * worth, about });
        }
    }
    plain_number(bare, written).map(|value| Amount { value, about })
}

fn plain_number(bare: &str, written: &str) -> Result<f64, Reason> {
    let fault = || entry_reason(Problem::NotANumber(short(written.trim())));
    let number: f64 =
        read_number(bare).ok_or_else(|| in_words(written).unwrap_or_else(fault))?.parse().map_err(|_| fault())?;
    if number < 0.0 { Err(entry_reason(Problem::BelowZero(short(written.trim())))) } else { Ok(number) }
}

/// Heights and the like in centimetres.
pub(in crate::share) const CENTIMETRES: [(&str, f64); 3] = [("cm", 1.0), ("cm.", 1.0), ("m", 100.0)];
/// Lengths in metres.
pub(in crate::share) const METRES: [(&str, f64); 6] =
    [("m", 1.0), ("m.", 1.0), ("mt", 1.0), ("mts", 1.0), ("metros", 1.0), ("cm", 0.01)];
/// Percent.
pub(in crate::share) const PERCENT: [(&str, f64); 1] = [("%", 1.0)];

/// What a word for a span of time is worth in days.
pub(in crate::share) fn span_days(word: &str) -> Option<f64> {
    let (folded, known) = (text::folded(word), &vocabulary().time);
    let spans = [(&known.day, 1.0), (&known.week, 7.0), (&known.month, DAYS_PER_MONTH), (&known.year, DAYS_PER_YEAR)];
    spans.iter().find(|(words, _)| is(folded.trim_end_matches('.'), words)).map(|(_, days)| *days)
}

/// An age in days: a bare number in `bare_unit_days`, or one with days, weeks, months or years in either language.
pub(in crate::share) fn read_age(written: &str, bare_unit: &str) -> Result<Amount<u32>, Reason> {
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

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

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
        for below in ["minus two", "menos dos", "minus 2", "(2)", "Menos 3"] {
            assert_eq!(count(below), Err(Reason::Envelope(Problem::BelowZero(below.into()))), "{below}");
        }
        assert_eq!(count("dos"), Err(Reason::NumberInWords { written: "dos".into(), figures: 2 }));
        for wrong in ["minus some", "menos mal", "", "4o", "40 trees", "1e3", "about"] {
            assert!(matches!(count(wrong), Err(Reason::Envelope(Problem::NotANumber(_)))), "{wrong}");
        }
        assert_eq!(count("-2"), Err(Reason::Envelope(Problem::BelowZero("-2".into()))));
        assert_eq!(count("2,5"), Err(Reason::Envelope(Problem::NotWhole("2,5".into()))));
        assert!(matches!(count("9999999999"), Err(Reason::Envelope(Problem::TooMany { .. }))));
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
    fn the_name_of_a_bag_tells_its_volume() {
        for (name, ml) in [
            ("bolsa 2 L", 2000.0),
            ("2 l bag", 2000.0),
            ("1.5L", 1500.0),
            ("bolsa 1,5 litros", 1500.0),
            ("tubete 50 cc", 50.0),
            ("Bag (500ml)", 500.0),
            ("1/2 litre pot", 500.0),
            ("medio litro", 500.0),
            // 15 x 15 x (23 - 2) / pi; 6 in is 15.24 cm, 9 in 22.86 cm.
            ("bolsa 15x23", 1504.0),
            ("15x23 bag", 1504.0),
            ("15x23 bolsas", 1504.0),
            ("15 x 23 cm bag", 1504.0),
            ("6x9 in", 1542.0),
            ("6\" x 9\"", 1542.0),
        ] {
            assert_eq!(volume_ml(name), Some(ml), "{name}");
        }
        for none in [
            "bag",
            "bag 2",
            "large L",
            "0 l",
            "2 kg bag",
            "1 l or 2 l",
            "500 l drum",
            "1/0 l",
            "l",
            "",
            "6x9",
            "bag 3x3 m",
        ] {
            assert_eq!(volume_ml(none), None, "{none}");
        }
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

    proptest! {
        #[test]
        fn no_text_makes_them_panic(any in any::<String>(), near in "(~|about |hace |unas )?[-0-9/.,ñ ]{0,9}( ?(m|cm|meses|ago|%|de marzo|é))?") {
            for written in [any, near] {
                let _ = (read_count(&written), read_amount(&written, &METRES), read_age(&written, "days"));
                if let Some(ml) = volume_ml(&written) {
                    prop_assert!(ml > 0.0 && ml.is_finite());
                }
            }
        }
    }
}
