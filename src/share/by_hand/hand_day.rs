//! Days as a person writes them by hand: "marzo 2026", "24 nov", "10.3.26", "3 months ago", "ayer", and the numbers that
//! spreadsheet programs keep days in.

use super::amounts::{span_days, without_about};
use super::vocabulary::{is, vocabulary};
use crate::base::{Day, text};
use crate::share::draft::short;
use crate::share::fault::Reason;
use crate::share::sheet::cells::{DayOrder, read_number};

/// The day a month stands for where only the month is written: its middle.
const MIDDLE_OF_MONTH: u32 = 15;
/// The longest time ago that is read, days: 500 years.
const LONGEST_AGO_DAYS: f64 = 182_621.0;
/// A day without its year is read back so far, days: half a year; in January people write of December (ours).
const YEARLESS_BACK_DAYS: i32 = 183;
/// A leap year.
const DAYS_OF_A_YEAR: i32 = 366;
/// The first number of a spreadsheet program that is taken for a day, 1 January 2000 (ours: smaller ones are counts).
const FIRST_SERIAL: i32 = 36_526;
/// Years in which a day of two-figure parts with the year first would be believed too (ours).
const YEAR_FIRST_YEARS: i32 = 5;

/// A day written by hand, and what a person is to be told about how it was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::share) struct HandDay {
    pub day: Day,
    /// Only about then: a month, or so long ago.
    pub about: bool,
    /// The other order of day and month would give another day.
    pub ambiguous: bool,
    /// The year, or the form, is not plain.
    pub guessed: bool,
}

impl HandDay {
    fn plain(day: Day) -> HandDay {
        HandDay { day, about: false, ambiguous: false, guessed: false }
    }
}

/// What a written day shows of the order of day and month.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::share) enum Shows {
    /// Nothing: it is no such day, or the same in both orders.
    Nothing,
    /// It is a day in both orders, and another one in each.
    Either,
    /// It is a day only in this order.
    Only(DayOrder),
}

/// What a written day shows of the order of day and month.
pub(in crate::share) fn order_shown(written: &str, today: Day) -> Shows {
    let bare = without_time(without_about(written).0);
    let [day_first, month_first] = [DayOrder::DayFirst, DayOrder::MonthFirst]
        .map(|order| DayInFigures::of(bare, today).and_then(|f| f.day(order)));
    match (day_first, month_first) {
        (Some(a), Some(b)) if a != b => Shows::Either,
        (Some(_), Some(_)) | (None, None) => Shows::Nothing,
        (Some(_), None) => Shows::Only(DayOrder::DayFirst),
        (None, Some(_)) => Shows::Only(DayOrder::MonthFirst),
    }
}

/// Reads a day, a month or a span ago; what lies ahead of `today` is a fault.
pub(in crate::share) fn read_hand_day(written: &str, order: DayOrder, today: Day) -> Result<HandDay, Reason> {
    let (bare, about) = without_about(written);
    let bare = without_time(bare);
    let guessed = |day: Day| HandDay { guessed: true, ..HandDay::plain(day) };
    let read = if let Some(day) = span_ago(bare, today) {
        HandDay { about: true, ..HandDay::plain(day) }
    } else if let Some(day) = named_today(bare, today) {
        guessed(day)
    } else if let Some(day) = serial(bare) {
        guessed(day)
    } else if let Some(day) = about_a_month_or_year(bare, today) {
        HandDay { about: true, ..HandDay::plain(day) }
    } else if let Some((year, month)) = month_only(bare) {
        HandDay { about: true, ..HandDay::plain(middle_of(year, month, today).ok_or_else(|| not_a_day(bare))?) }
    } else {
        match named_day(bare, today) {
            NamedDay::Day(day) => HandDay::plain(day),
            NamedDay::Guessed(day) => guessed(day),
            NamedDay::DayOrYear => return Err(Reason::DayOrYear(short(bare))),
            NamedDay::Not => in_figures(bare, order, today)?,
        }
    };
    if read.day > today {
        return Err(Reason::ComingDay(read.day));
    }
    Ok(HandDay { about: read.about || about, ..read })
}

/// The day somebody means in speaking of work: `yesterday`, `ayer`, `lunes`, `12/11`, `24 nov`, `Nov 24`, `2026-11-20`. Day
/// and month in figures have the day first; without a year it is the last such day. Where the coming one is as near, or the
/// last one was years ago, both are named.
pub fn read_said_day(written: &str, today: Day) -> Result<Day, Reason> {
    let bare = written.trim();
    if let Some(read) = weekday_said(bare, today) {
        return read;
    }
    let named = || match (named_day(bare, today), &parts(bare)[..]) {
        (NamedDay::Day(day), _) => Some(Ok(day)),
        (NamedDay::Guessed(_) | NamedDay::DayOrYear, [first, second]) => {
            month_and_day(first, second).map(|(month, of_month)| without_its_year(bare, month, of_month, today))
        }
        (NamedDay::Guessed(day), _) => Some(Ok(day)),
        (NamedDay::DayOrYear | NamedDay::Not, _) => None,
    };
    let read = named_today(bare, today).or_else(|| span_ago(bare, today)).map(Ok).or_else(named);
    let day = match read.or_else(|| without_year(bare, today)) {
        Some(day) => day?,
        None => in_figures(bare, DayOrder::DayFirst, today)?.day,
    };
    if day > today { Err(Reason::ComingDay(day)) } else { Ok(day) }
}

/// The day of what was done, where a day alone is typed: as [`read_said_day`], and a word for a day to come (`tomorrow`, `+3`) is
/// a day that has not come.
pub fn read_done_day(written: &str, today: Day) -> Result<Day, Reason> {
    let coming = days_from_today(written.trim(), today).filter(|day| *day > today);
    read_said_day(written, today).map_err(|reason| coming.map_or(reason, Reason::ComingDay))
}

/// A day of which only month and day are written.
fn without_its_year(written: &str, month: u32, of_month: u32, today: Day) -> Result<Day, Reason> {
    /// A day that comes within so many days may be meant as well as that of a year ago: eight weeks (ours).
    const NEAR_DAYS: i32 = 56;
    /// 29 February comes again within so many years, also over the turn of a century.
    const YEARS: i32 = 8;
    let year = today.ymd().0;
    let such = || (year - YEARS..=year + YEARS).filter_map(|year| Day::from_ymd(year, month, of_month));
    let (last, next) = (such().rfind(|day| *day <= today), such().find(|day| *day > today));
    let (Some(last), Some(next)) = (last, next) else { return Err(not_a_day(written)) };
    let (back, ahead) = (today.days_since(last), next.days_since(today));
    if back > DAYS_OF_A_YEAR || ahead <= NEAR_DAYS && ahead < back {
        return Err(Reason::WhichDay { written: short(written), first: last, second: next });
    }
    Ok(last)
}

/// The place of a weekday in the week, Monday 0.
pub(in crate::share) fn weekday_named(word: &str) -> Option<i32> {
    let at = vocabulary().weekdays.names.iter().position(|names| names.iter().any(|name| name == word))?;
    i32::try_from(at).ok()
}

/// Whether a text is the name of a weekday, with or without its day of the month: the heading of a sheet.
pub(in crate::share) fn begins_with_weekday(written: &str) -> bool {
    let mut words = written.split_whitespace().map(|word| text::folded(word.trim_end_matches([':', ',', '.'])));
    words.find(|word| !is(word, &vocabulary().small.before_a_day)).is_some_and(|word| weekday_named(&word).is_some())
}

/// "lunes", "last Monday", "lunes 23", "Mon 23 Nov": the last one that has been.
fn weekday_said(bare: &str, today: Day) -> Option<Result<Day, Reason>> {
    let folded: Vec<String> =
        bare.split_whitespace().map(|word| text::folded(word.trim_end_matches([':', ',', '.']))).collect();
    let words: Vec<&str> = folded.iter().map(String::as_str).filter(|word| !word.is_empty()).collect();
    let says_last = |word: &&str| matches!(*word, "last" | "pasado");
    let mut rest = words.iter().filter(|word| !says_last(word)).copied().collect::<Vec<&str>>();
    while rest.first().is_some_and(|word| is(word, &vocabulary().small.before_a_day)) {
        rest.remove(0);
    }
    let (first, rest) = rest.split_first()?;
    let weekday = weekday_named(first)?;
    // Day 1 was a Monday.
    let of = |day: Day| (day.number() - 1).rem_euclid(7);
    let back = (of(today) - weekday).rem_euclid(7);
    if rest.is_empty() {
        let is_open = back == 0 && !words.iter().any(says_last);
        let open = || Reason::WhichDay { written: short(bare), first: today - 7, second: today };
        return Some(if is_open { Err(open()) } else { Ok(today - if back == 0 { 7 } else { back }) });
    }
    let date = rest.join(" ");
    let read = match small_number(&date) {
        Some(of_month) => last_of_month(of_month, today).ok_or_else(|| not_a_day(bare)),
        None => read_said_day(&date, today),
    };
    Some(read.and_then(|day| if of(day) == weekday { Ok(day) } else { Err(not_a_day(bare)) }))
}

/// The last day of this number that has been.
fn last_of_month(of_month: u32, today: Day) -> Option<Day> {
    let (year, month, _) = today.ymd();
    let before = if month == 1 { (year - 1, 12) } else { (year, month - 1) };
    let this = Day::from_ymd(year, month, of_month).filter(|day| *day <= today);
    this.or_else(|| Day::from_ymd(before.0, before.1, of_month))
}

/// The day somebody means to look at or to wait for: as [`read_said_day`], and days to come: `tomorrow`, `mañana`,
/// `2026-12-24`; `-1` and `+7` are days from today.
pub fn read_any_day(written: &str, today: Day) -> Result<Day, Reason> {
    let bare = written.trim();
    if let Some(day) = days_from_today(bare, today) {
        return Ok(day);
    }
    match read_said_day(bare, today) {
        Err(Reason::ComingDay(day)) => Ok(day),
        read => read,
    }
}

/// The day until which something holds: as [`read_any_day`], and of a day without its year or a weekday the coming one.
pub(in crate::share) fn read_coming_day(written: &str, today: Day) -> Result<Day, Reason> {
    match read_any_day(written, today) {
        Err(Reason::WhichDay { second, .. }) => Ok(second),
        read => read,
    }
}

/// The day so many days before or after today, or of a word for a day to come.
fn days_from_today(bare: &str, today: Day) -> Option<Day> {
    /// Further on nothing is looked at: a century (ours).
    const FARTHEST_DAYS: i32 = 36_525;
    let (word, words) = (text::folded(bare), &vocabulary().time);
    if is(&word, &words.tomorrow) {
        return Some(today + 1);
    }
    if is(&word, &words.day_after_tomorrow) {
        return Some(today + 2);
    }
    let sign = if bare.starts_with('-') { -1 } else { 1 };
    let digits = bare.strip_prefix(['+', '-'])?;
    let plain = !digits.is_empty() && digits.bytes().all(|byte| byte.is_ascii_digit());
    let days: i32 = digits.parse().ok().filter(|days| plain && *days <= FARTHEST_DAYS)?;
    Some(today + sign * days)
}

/// Whether a word is meant as a day in figures, right or wrong.
pub(in crate::share) fn is_like_a_day(word: &str) -> bool {
    word.matches(['-', '/', '.']).count() == 2
        && word.starts_with(|letter: char| letter.is_ascii_digit())
        && word.chars().all(|letter| letter.is_ascii_digit() || matches!(letter, '-' | '/' | '.'))
}

fn not_a_day(bare: &str) -> Reason {
    Reason::NotAHandDay(short(bare))
}

fn named_today(bare: &str, today: Day) -> Option<Day> {
    let (word, words) = (text::folded(bare), &vocabulary().time);
    let back = [&words.today, &words.yesterday, &words.day_before_yesterday];
    (0..).zip(back).find(|(_, spellings)| is(&word, spellings)).map(|(days, _)| today - days)
}

/// Spreadsheet programs write midnight behind a day.
fn without_time(bare: &str) -> &str {
    ["T00:00:00", " 00:00:00", " 0:00:00", " 00:00", " 0:00"]
        .iter()
        .find_map(|tail| bare.strip_suffix(tail))
        .unwrap_or(bare)
}

/// Day, month and year in figures, the year four of them at either end or two at the end.
struct DayInFigures {
    first: u32,
    second: u32,
    third: u32,
    year_first: bool,
}

impl DayInFigures {
    fn of(bare: &str, today: Day) -> Option<DayInFigures> {
        let parts: Vec<&str> = bare.trim().split(['-', '/', '.']).collect();
        let [first, second, third] = parts[..] else { return None };
        let number = |part: &str, most: usize| {
            let plain = (1..=most).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit());
            plain.then(|| part.parse::<u32>().ok()).flatten()
        };
        if first.len() == 4 {
            let (first, second, third) = (number(first, 4)?, number(second, 2)?, number(third, 2)?);
            return Some(DayInFigures { first, second, third, year_first: true });
        }
        let (day, month) = (number(first, 2)?, number(second, 2)?);
        let year = match third.len() {
            4 => number(third, 4)?,
            2 => {
                let year = 2000 + number(third, 2)?;
                // 24-03-25 is written of 2024 as well as of 2025.
                let other = Day::from_ymd(2000 + day as i32, month, year - 2000).filter(|other| *other <= today);
                let believed = |other: Day| today.ymd().0 - other.ymd().0 <= YEAR_FIRST_YEARS;
                if bare.contains('-') && other.is_some_and(believed) {
                    return None;
                }
                year
            }
            _ => return None,
        };
        Some(DayInFigures { first: day, second: month, third: year, year_first: false })
    }

    fn day(&self, order: DayOrder) -> Option<Day> {
        let of = |year: u32, month: u32, day: u32| Day::from_ymd(i32::try_from(year).ok()?, month, day);
        match (self.year_first, order) {
            (true, _) => of(self.first, self.second, self.third),
            (false, DayOrder::DayFirst) => of(self.third, self.second, self.first),
            (false, DayOrder::MonthFirst) => of(self.third, self.first, self.second),
        }
    }
}

fn in_figures(bare: &str, order: DayOrder, today: Day) -> Result<HandDay, Reason> {
    let figures = DayInFigures::of(bare, today).ok_or_else(|| not_a_day(bare))?;
    let other = match order {
        DayOrder::DayFirst => DayOrder::MonthFirst,
        DayOrder::MonthFirst => DayOrder::DayFirst,
    };
    match (figures.day(order), figures.day(other)) {
        (Some(day), other) => Ok(HandDay {
            ambiguous: other.is_some_and(|other| other != day),
            guessed: !figures.year_first && bare.trim().rsplit(['-', '/', '.']).next().is_some_and(|y| y.len() == 2),
            ..HandDay::plain(day)
        }),
        (None, Some(_)) => Err(Reason::DayInOtherOrder(short(bare))),
        (None, None) => Err(not_a_day(bare)),
    }
}

/// The day behind a number in which spreadsheet programs keep days: days since 30 December 1899 (ECMA-376 part 1,
/// 18.17.4.1, the 1900 date base from 1 March 1900 on). Eight figures are year, month and day.
fn serial(bare: &str) -> Option<Day> {
    let whole = bare
        .split_once(['.', ','])
        .map_or(bare, |(whole, part)| if part.bytes().all(|byte| byte.is_ascii_digit()) { whole } else { bare });
    if !whole.bytes().all(|byte| byte.is_ascii_digit()) {
        return None;
    }
    match whole.len() {
        5 => whole.parse().ok().filter(|number| *number >= FIRST_SERIAL).map(|number: i32| serial_begin() + number),
        8 if whole == bare => {
            Day::from_ymd(whole[..4].parse().ok()?, whole[4..6].parse().ok()?, whole[6..].parse().ok()?)
        }
        _ => None,
    }
}

fn serial_begin() -> Day {
    /// 30 December 1899 as days since 1 January of year 1.
    const NUMBER: i32 = 693_594;
    Day::from_number(NUMBER)
}

/// The middle of a month; of the present month today, where its middle is still to come.
fn middle_of(year: i32, month: u32, today: Day) -> Option<Day> {
    let first = Day::from_ymd(year, month, 1)?;
    let middle = Day::from_ymd(year, month, MIDDLE_OF_MONTH)?;
    Some(if first <= today { middle.min(today) } else { middle })
}

/// "3 months ago", "hace 3 meses", "a month ago", "hace un mes".
fn span_ago(bare: &str, today: Day) -> Option<Day> {
    let folded = text::folded(bare);
    let known = &vocabulary().time;
    let behind = known.ago_behind.iter().find_map(|word| folded.strip_suffix(word.as_str()));
    let before = || known.ago_before.iter().find_map(|word| folded.strip_prefix(word.as_str()));
    let span = behind.or_else(before)?.replace('-', " ");
    let (span, _) = without_about(&span);
    let mut words = span.split_whitespace();
    let (number, unit, rest) = (words.next()?, words.next()?, words.next());
    let number: f64 = match number {
        one if is(one, &known.one) => 1.0,
        digits => read_number(digits)?.parse().ok()?,
    };
    let days = (number * span_days(unit)?).round();
    (rest.is_none() && (0.0..=LONGEST_AGO_DAYS).contains(&days)).then(|| today - days as i32)
}

/// "mid March", "a fines de enero 2026", "January", "last month", "2024": a day that it was about.
fn about_a_month_or_year(bare: &str, today: Day) -> Option<Day> {
    /// Days of a month that its beginning and its end stand for (ours).
    const BEGINNING: u32 = 5;
    const ENDING: u32 = 25;
    /// The middle of a year.
    const MIDDLE_OF_YEAR: (u32, u32) = (7, 1);
    /// Years back to which a bare number of four figures is read as a year (ours).
    const MOST_YEARS_BACK: i32 = 60;
    let (folded, known) = (text::folded(bare), &vocabulary().sheet);
    let (year, month, _) = today.ymd();
    if is(&folded, &known.last_month) {
        let (year, month) = if month == 1 { (year - 1, 12) } else { (year, month - 1) };
        return Day::from_ymd(year, month, MIDDLE_OF_MONTH);
    }
    let middle = |year: i32| Day::from_ymd(year, MIDDLE_OF_YEAR.0, MIDDLE_OF_YEAR.1).map(|day| day.min(today));
    if is(&folded, &known.last_year) {
        return middle(year - 1);
    }
    if let Some(of) = year_of(&folded).filter(|of| (year - MOST_YEARS_BACK..=year).contains(of)) {
        return middle(of);
    }
    let parts = [(&known.middle, MIDDLE_OF_MONTH), (&known.beginning, BEGINNING), (&known.ending, ENDING)];
    let led = parts.iter().find_map(|(words, of_month)| {
        let rest = words.iter().filter_map(|word| folded.strip_prefix(word.as_str())).min_by_key(|rest| rest.len())?;
        Some((rest.trim_start_matches('-').to_string(), *of_month))
    });
    let (name, of_month, is_led) =
        led.map_or((folded.clone(), MIDDLE_OF_MONTH, false), |(rest, day)| (rest, day, true));
    let words: Vec<&str> = name.split('-').filter(|word| !is(word, &vocabulary().small.in_a_day)).collect();
    let (of_year, of_name) = match words[..] {
        [one] => (None, month_named(one)?),
        [one, of] if is_led => (Some(year_of(of)?), month_named(one)?),
        _ => return None,
    };
    let in_year = |year: i32| Day::from_ymd(year, of_name, of_month);
    match of_year {
        Some(of) => in_year(of).filter(|day| *day <= today),
        // The last such month; the present one up to today.
        None => in_year(year)
            .filter(|day| *day <= today || of_name == month)
            .map(|day| day.min(today))
            .or(in_year(year - 1)),
    }
}

/// Year and month of "March 2026", "marzo de 2026", "3/2026", "2026-03", "Apr-26", "abr '26".
fn month_only(bare: &str) -> Option<(i32, u32)> {
    let words = parts(bare);
    let [first, second] = &words[..] else { return None };
    if let Some(year) = second.strip_prefix(['\'', '\u{2019}']).and_then(two_figures) {
        return Some((year, month_named(first)?));
    }
    // What spreadsheet programs make of a month and its year; a day is written by them with the day first.
    if let (Some(month), Some(year), true) = (month_named(first), two_figures(second), bare.contains('-')) {
        return Some((year, month));
    }
    let (month, year) =
        if first.len() == 4 && month_named(first).is_none() { (second, first) } else { (first, second) };
    Some((year_of(year)?, month_of(month)?))
}

/// What a day with the name of its month is.
enum NamedDay {
    /// No such day.
    Not,
    /// Plain.
    Day(Day),
    /// With its year in two figures, or left out.
    Guessed(Day),
    /// `Nov 24`: the 24th, or the year.
    DayOrYear,
}

/// "14 March 2026", "14 de marzo de 2026", "March 14, 2026", "24-nov-25", "24 nov".
fn named_day(bare: &str, today: Day) -> NamedDay {
    match &parts(bare)[..] {
        [first, second, year] => {
            let Some((month, of_month)) = month_and_day(first, second) else { return NamedDay::Not };
            let (plain, short_year) = (year_of(year), two_figures(year));
            match (plain.and_then(|year| Day::from_ymd(year, month, of_month)), short_year) {
                (Some(day), _) => NamedDay::Day(day),
                (None, Some(year)) => Day::from_ymd(year, month, of_month).map_or(NamedDay::Not, NamedDay::Guessed),
                (None, None) => NamedDay::Not,
            }
        }
        [first, second] => match month_and_day(first, second) {
            Some((month, of_month)) if month_named(first).is_none() => {
                last_such(month, of_month, today, i32::MAX).map_or(NamedDay::Not, NamedDay::Guessed)
            }
            Some(_) => NamedDay::DayOrYear,
            None => NamedDay::Not,
        },
        _ => NamedDay::Not,
    }
}

/// `12/11`: the day first, the last such day.
fn without_year(bare: &str, today: Day) -> Option<Result<Day, Reason>> {
    let (first, second) = bare.split_once('/')?;
    let (month, of_month) = (small_number(second)?, small_number(first)?);
    let last = last_such(month, of_month, today, YEARLESS_BACK_DAYS)?;
    // 29 February of years ago.
    let is_old = today.days_since(last) > DAYS_OF_A_YEAR;
    Some(if is_old { without_its_year(bare, month, of_month, today) } else { Ok(last) })
}

/// The last such day of the year, at most so many days back; else the one of this year, which has not come.
fn last_such(month: u32, of_month: u32, today: Day, most_back_days: i32) -> Option<Day> {
    let year = today.ymd().0;
    // 29 February is a day of few years.
    let all: Vec<Day> = (year - 4..=year).filter_map(|year| Day::from_ymd(year, month, of_month)).collect();
    let last = all.iter().rev().find(|day| **day <= today)?;
    let this_year = Day::from_ymd(year, month, of_month);
    match this_year.filter(|day| *day > today) {
        Some(coming) if today.days_since(*last) > most_back_days => Some(coming),
        Some(_) | None => Some(*last),
    }
}

fn month_and_day(first: &str, second: &str) -> Option<(u32, u32)> {
    let (day, month) = match (month_named(first), month_named(second)) {
        (None, Some(month)) => (first, month),
        (Some(month), None) => (second, month),
        (None, None) | (Some(_), Some(_)) => return None,
    };
    let figures = day.trim_end_matches(|letter: char| letter.is_alphabetic());
    let ending = day.get(figures.len()..)?;
    let is_ordinal = ["", "st", "nd", "rd", "th", "o", "a", "ro"].contains(&ending);
    // 29 February is a day of few years; 2024 was one.
    let day = small_number(figures).filter(|day| Day::from_ymd(2024, month, *day).is_some())?;
    is_ordinal.then_some((month, day))
}

fn parts(bare: &str) -> Vec<String> {
    let folded = text::folded(bare);
    let words = folded.split(['-', '/', '.', ',']).filter(|word| !word.is_empty());
    words.filter(|word| !is(word, &vocabulary().small.in_a_day)).map(str::to_string).collect()
}

fn year_of(word: &str) -> Option<i32> {
    (word.len() == 4 && word.bytes().all(|byte| byte.is_ascii_digit())).then(|| word.parse().ok()).flatten()
}

/// A year of this century in two figures.
fn two_figures(word: &str) -> Option<i32> {
    (word.len() == 2).then(|| small_number(word)).flatten().map(|year| 2000 + year as i32)
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
    let known = |name: &String| word.len() >= 3 && name.starts_with(word);
    let at = vocabulary().months.names.iter().position(|names| names.iter().any(known))?;
    u32::try_from(at + 1).ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn today() -> Day {
        Day::from_ymd(2026, 3, 14).unwrap()
    }

    fn read(written: &str) -> Result<(String, bool), Reason> {
        read_hand_day(written, DayOrder::DayFirst, today()).map(|read| (read.day.to_string(), read.about))
    }

    fn day(written: &str, about: bool) -> Result<(String, bool), Reason> {
        Ok((written.to_string(), about))
    }

    #[test]
    fn days_are_read_as_people_say_them() {
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
        for (written, expected) in [
            ("mid March", "2026-03-14"),
            ("mid-February", "2026-02-15"),
            ("a mediados de enero", "2026-01-15"),
            ("mitad de enero", "2026-01-15"),
            ("fines de enero 2025", "2025-01-25"),
            ("early April", "2025-04-05"),
            ("January", "2026-01-15"),
            ("noviembre", "2025-11-15"),
            ("last month", "2026-02-15"),
            ("el mes pasado", "2026-02-15"),
            ("2024", "2024-07-01"),
            ("2026", "2026-03-14"),
        ] {
            assert_eq!(read(written), day(expected, true), "{written}");
        }
        assert_eq!(read("14 de noviembre de 2025"), day("2025-11-14", false));
        assert_eq!(read("Nov 14th, 2025"), day("2025-11-14", false));
        assert_eq!(read("about 3/11/2025"), day("2025-11-03", true));
        assert_eq!(read("abril 2026"), Err(Reason::ComingDay(Day::from_ymd(2026, 4, 15).unwrap())));
        for wrong in
            ["spring", "13/2025", "hace mucho", "32 March 2025", "", "Nov 45", "12/11", "2027", "1899", "30 feb", "mid"]
        {
            assert_eq!(read(wrong), Err(Reason::NotAHandDay(wrong.into())), "{wrong}");
        }
    }

    #[test]
    fn years_of_two_figures_and_what_spreadsheet_programs_make_of_days() {
        assert_eq!(read("10.3.26"), day("2026-03-10", false));
        assert_eq!(read("14/2/26"), day("2026-02-14", false));
        assert_eq!(read("24-Nov-25"), day("2025-11-24", false));
        assert_eq!(read("Apr-25"), day("2025-04-15", true));
        assert_eq!(read("abr-25"), day("2025-04-15", true));
        assert_eq!(read("Mar-26"), day("2026-03-14", true));
        assert_eq!(read("Nov '25"), day("2025-11-15", true));
        assert_eq!(read("24 nov"), day("2025-11-24", false));
        assert_eq!(read("24-Feb"), day("2026-02-24", false));
        assert_eq!(read("29 feb"), day("2024-02-29", false));
        assert_eq!(read("Nov 24"), Err(Reason::DayOrYear("Nov 24".into())));
        assert_eq!(read("45975"), day("2025-11-14", false));
        assert_eq!(read("45975.0"), day("2025-11-14", false));
        assert_eq!(read("36525"), Err(Reason::NotAHandDay("36525".into())));
        assert!(matches!(read("99999"), Err(Reason::ComingDay(_))));
        assert_eq!(read("20251114"), day("2025-11-14", false));
        // Of 2024 or of 2025: nobody can say.
        assert_eq!(read("24-03-25"), Err(Reason::NotAHandDay("24-03-25".into())));
        assert_eq!(read("10-3-26"), day("2026-03-10", false));
        for told in ["10.3.26", "24 nov", "45975", "24-Nov-25", "ayer"] {
            assert!(read_hand_day(told, DayOrder::DayFirst, today()).unwrap().guessed, "{told}");
        }
        assert!(!read_hand_day("14/2/2026", DayOrder::DayFirst, today()).unwrap().guessed);
    }

    #[test]
    fn a_day_of_work_may_lack_its_year() {
        let said = |written: &str| read_said_day(written, today()).map(|day| day.to_string());
        for (written, expected) in [
            ("yesterday", "2026-03-13"),
            ("Ayer", "2026-03-13"),
            ("anteayer", "2026-03-12"),
            ("hoy", "2026-03-14"),
            ("12/3", "2026-03-12"),
            ("12/11", "2025-11-12"),
            ("24 nov", "2025-11-24"),
            ("Nov 24", "2025-11-24"),
            ("24 de noviembre", "2025-11-24"),
            ("10.3.26", "2026-03-10"),
            ("2 days ago", "2026-03-12"),
            ("2026-03-01", "2026-03-01"),
        ] {
            assert_eq!(said(written).as_deref(), Ok(expected), "{written}");
        }
        let which = |written: &str, first: &str, second: &str| {
            let (first, second) = (first.parse().unwrap(), second.parse().unwrap());
            Err(Reason::WhichDay { written: written.into(), first, second })
        };
        // Within the next weeks, or years ago: which is meant?
        assert_eq!(said("15 abr"), which("15 abr", "2025-04-15", "2026-04-15"));
        assert_eq!(said("29 feb"), which("29 feb", "2024-02-29", "2028-02-29"));
        assert_eq!(said("29/2"), which("29/2", "2024-02-29", "2028-02-29"));
        assert_eq!(said("15 jun").as_deref(), Ok("2025-06-15"));
        // 14 March 2026 is a Saturday.
        for (written, expected) in [
            ("lunes", "2026-03-09"),
            ("el viernes:", "2026-03-13"),
            ("Sun", "2026-03-08"),
            ("sábado pasado", "2026-03-07"),
            ("lunes 9", "2026-03-09"),
            ("Friday 27", "2026-02-27"),
            ("vie 13 mar", "2026-03-13"),
        ] {
            assert_eq!(said(written).as_deref(), Ok(expected), "{written}");
        }
        assert_eq!(said("sábado"), which("sábado", "2026-03-07", "2026-03-14"));
        assert_eq!(said("lunes 10"), Err(Reason::NotAHandDay("lunes 10".into())));
        assert_eq!(said("15/4"), Err(Reason::ComingDay(Day::from_ymd(2026, 4, 15).unwrap())));
        assert_eq!(said("3/14/2026"), Err(Reason::DayInOtherOrder("3/14/2026".into())));
        for wrong in ["soon", "32/1", "March 2026", "41", "3/14"] {
            assert_eq!(said(wrong), Err(Reason::NotAHandDay(wrong.into())), "{wrong}");
        }
    }

    #[test]
    fn a_day_shows_the_order_of_day_and_month() {
        let shows = |written: &str| order_shown(written, today());
        assert_eq!(shows("13/2/2026"), Shows::Only(DayOrder::DayFirst));
        assert_eq!(shows("2/13/26"), Shows::Only(DayOrder::MonthFirst));
        assert_eq!(shows("about 2/3/2026"), Shows::Either);
        for nothing in ["3/3/2026", "2026-02-03", "March 2026", "31/31/2026", "45975", ""] {
            assert_eq!(shows(nothing), Shows::Nothing, "{nothing}");
        }
    }

    proptest! {
        #[test]
        fn no_text_makes_them_panic(
            any in any::<String>(),
            near in "(~|about |hace |on )?[-0-9/.,'ñ ]{0,10}( ?(nov|Mar|meses|ago|de marzo|é|ayer))?[-0-9/ ]{0,5}",
        ) {
            for written in [any, near] {
                for order in [DayOrder::DayFirst, DayOrder::MonthFirst] {
                    if let Ok(read) = read_hand_day(&written, order, today()) {
                        prop_assert!(read.day <= today());
                    }
                }
                let _ = order_shown(&written, today());
                if let Ok(day) = read_said_day(&written, today()) {
                    prop_assert!(day <= today());
                }
            }
        }
    }
}
