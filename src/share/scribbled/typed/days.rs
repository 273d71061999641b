//! Days as people say them: the last one that has been, unless the line says until when.

use super::lexicon::lexicon;
use super::numbers::in_figures;
use super::words::Word;
use crate::base::Day;

/// A date without a year that was longer ago than this is not taken for the last one (ours).
const MOST_DAYS_BACK: i32 = 270;

/// The greatest number of two figures.
const MOST_TWO_FIGURES: u32 = 99;

/// A day that stands in a line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum SaidDay {
    /// This day.
    On(Day),
    /// Left open: "last night" belongs to today's reading.
    Open,
    /// "the other day": nobody knows which.
    Unknown,
    /// No day of the calendar.
    Impossible,
    /// The weekday of today: this one or that of a week ago.
    TodayOrWeekAgo,
    /// Until or by a day to come.
    Coming(Day),
}

fn joined(words: &[Word], i: usize, length: usize) -> Option<String> {
    let words = words.get(i..i + length)?;
    Some(words.iter().map(|word| word.folded.as_str()).collect::<Vec<_>>().join(" "))
}

fn role_at(words: &[Word], i: usize, role: &str) -> Option<usize> {
    let longest = lexicon().longest(&words.get(i)?.folded);
    (1..=longest).rev().find(|length| joined(words, i, *length).is_some_and(|phrase| lexicon().is(&phrase, role)))
}

/// The day that begins at `i` and the words it takes.
pub(crate) fn day_at(words: &[Word], i: usize, today: Day) -> Option<(SaidDay, usize)> {
    for role in ["small.until", "small.by_day"] {
        if let Some(lead) = role_at(words, i, role) {
            let article = role_at(words, i + lead, "days.lead").unwrap_or(0);
            let at = i + lead + article;
            let led = article > 0 || words.get(i + lead - 1).is_some_and(|word| word.folded == "el");
            let found = date_at(words, at, today, true).or_else(|| coming_day_of_month(words, at, led, today));
            if let Some((day, taken)) = found {
                return Some((day, lead + article + taken));
            }
        }
    }
    let named = [("days.day_before", -2), ("days.yesterday", -1), ("days.today", 0)];
    for (role, days) in named {
        if let Some(taken) = role_at(words, i, role) {
            return Some((SaidDay::On(today.plus(days)), taken));
        }
    }
    if let Some(taken) = role_at(words, i, "days.open_day") {
        return Some((SaidDay::Open, taken));
    }
    if let Some(taken) = role_at(words, i, "days.far_open") {
        return Some((SaidDay::Unknown, taken));
    }
    if let Some(found) = days_ago(words, i, today) {
        return Some(found);
    }
    let lead = role_at(words, i, "days.lead").unwrap_or(0);
    let (day, taken) = date_at(words, i + lead, today, false).or_else(|| bare_day_of_month(words, i, lead, today))?;
    let trail = role_at(words, i + lead + taken, "days.trail").unwrap_or(0);
    let says_last = trail > 0 || words.get(i).is_some_and(|word| word.folded == "last");
    let day = if day == SaidDay::TodayOrWeekAgo && says_last { SaidDay::On(today.plus(-7)) } else { day };
    Some((day, lead + taken + trail))
}

/// "until the 30th", "hasta el 30": the next such day.
fn coming_day_of_month(words: &[Word], at: usize, is_led: bool, today: Day) -> Option<(SaidDay, usize)> {
    let word = words.get(at)?.folded.as_str();
    let bare = without_ordinal(word);
    let is_day = bare != word || is_led && words.get(at + 1).is_none_or(|next| next.is_sign());
    let day: u32 = bare.parse().ok().filter(|day| is_day && (1..=31).contains(day))?;
    let (year, month, _) = today.ymd();
    let (next_year, next_month) = if month == 12 { (year + 1, 1) } else { (year, month + 1) };
    let this = Day::from_ymd(year, month, day).filter(|this| *this > today);
    let found = this.or_else(|| Day::from_ymd(next_year, next_month, day))?;
    Some((SaidDay::Coming(found), 1))
}

fn days_ago(words: &[Word], i: usize, today: Day) -> Option<(SaidDay, usize)> {
    let lexicon = lexicon();
    let before = usize::from(words.get(i)?.folded == "hace");
    let article = matches!(words.get(i + before)?.folded.as_str(), "a" | "an" | "one" | "una" | "un");
    let (value, taken) = match super::numbers::number_at(words, i + before) {
        Some(figure) => (figure.value, figure.words),
        None if article => (1.0, 1),
        None => return None,
    };
    let unit = i + before + taken;
    let length = match words.get(unit)?.folded.as_str() {
        word if lexicon.is(word, "units.day") => 1.0,
        word if lexicon.is(word, "units.week") => 7.0,
        _ => return None,
    };
    let behind = usize::from(before == 0);
    if behind == 1 && words.get(unit + 1).is_none_or(|word| word.folded != "ago") {
        return None;
    }
    let days = value * length;
    (days.fract() == 0.0 && days < 400.0)
        .then_some((SaidDay::On(today.plus(-(days as i32))), before + taken + 1 + behind))
}

/// "the 12th", "el 12" behind a word that leads a day.
fn bare_day_of_month(words: &[Word], i: usize, lead: usize, today: Day) -> Option<(SaidDay, usize)> {
    let word = words.get(i + lead)?.folded.as_str();
    let ordinal = Some(without_ordinal(word)).filter(|bare| *bare != word);
    // "each 3rd day" is a step.
    if words.get(i + lead + 1).is_some_and(|word| lexicon().is(&word.folded, "units.day")) {
        return None;
    }
    let is_led = lead == 1 && words.get(i).is_some_and(|word| word.folded == "el");
    let bare = ordinal.or((is_led && (i == 0 || i + lead + 1 == words.len())).then_some(word))?;
    let day: u32 = bare.parse().ok().filter(|day| (1..=31).contains(day))?;
    let (year, month, _) = today.ymd();
    let this = Day::from_ymd(year, month, day).filter(|this| *this <= today);
    let (past_year, past_month) = if month == 1 { (year - 1, 12) } else { (year, month - 1) };
    let found = this.or_else(|| Day::from_ymd(past_year, past_month, day));
    Some((found.map_or(SaidDay::Impossible, SaidDay::On), 1))
}

/// A weekday, a date with a month, or both of them.
fn date_at(words: &[Word], i: usize, today: Day, coming: bool) -> Option<(SaidDay, usize)> {
    let weekday = words.get(i).and_then(|word| lexicon().weekday(&word.folded));
    if let Some(weekday) = weekday {
        let gap = usize::from(words.get(i + 1).is_some_and(|word| word.is(",")));
        if let Some((day, taken)) = month_date_at(words, i + 1 + gap, today, coming) {
            return Some((day, 1 + gap + taken));
        }
        // Day 1 was a Monday.
        let back = (today.number() - 1 - weekday).rem_euclid(7);
        return Some((weekday_said(back, today, coming), 1));
    }
    let (day, taken) = month_date_at(words, i, today, coming)?;
    Some((day, taken))
}

fn weekday_said(back: i32, today: Day, coming: bool) -> SaidDay {
    match (coming, back) {
        (true, back) => SaidDay::Coming(today.plus(7 - back)),
        (false, 0) => SaidDay::TodayOrWeekAgo,
        (false, back) => SaidDay::On(today.plus(-back)),
    }
}

fn month_date_at(words: &[Word], i: usize, today: Day, coming: bool) -> Option<(SaidDay, usize)> {
    if let Some(found) = in_one_word(&words.get(i)?.folded, today, coming) {
        return Some((found, 1));
    }
    let first = words.get(i)?.folded.replace(' ', "-");
    let parts: Vec<u32> =
        first.split(['/', '-']).map(|part| part.parse().ok()).collect::<Option<_>>().unwrap_or_default();
    if let [year, month, day] = parts[..]
        && year > 999
    {
        return Some((settled(Day::from_ymd(year as i32, month, day), today, coming), 1));
    }
    if let [day, month] = parts[..]
        && first.contains('/')
    {
        return Some((nearest_year(day, month, today, coming), 1));
    }
    if let [day, month, year] = parts[..]
        && first.contains('/')
    {
        let year = if year < 100 { 2000 + year } else { year };
        return Some((settled(Day::from_ymd(year as i32, month, day), today, coming), 1));
    }
    let lexicon = lexicon();
    let number = |j: usize| {
        words
            .get(j)
            .and_then(|word| in_figures(without_ordinal(&word.folded)))
            .filter(|n| n.fract() == 0.0)
            .map(|n| n as u32)
    };
    let (day, month, mut taken) = match number(i) {
        Some(day) => {
            let gap = usize::from(words.get(i + 1).is_some_and(|word| matches!(word.folded.as_str(), "de" | "of")));
            (day, lexicon.month(&words.get(i + 1 + gap)?.folded)?, 2 + gap)
        }
        None => {
            let month = lexicon
                .month(&words.get(i)?.folded)
                .filter(|_| words[i].folded.len() > 2 && words[i].folded != "ago")?;
            // "Nov 35" is a day that does not exist; "may 40" need be none.
            let is_named = words[i].typed.starts_with(char::is_uppercase) && words[i].folded != "may";
            let most = if is_named { MOST_TWO_FIGURES } else { 31 };
            (number(i + 1).filter(|day| (1..=most).contains(day))?, month, 2)
        }
    };
    let gap = usize::from(words.get(i + taken).is_some_and(|word| matches!(word.folded.as_str(), "de" | "del")));
    let year = number(i + taken + gap).filter(|year| (1990..2200).contains(year));
    if let Some(year) = year {
        taken += gap + 1;
        return Some((settled(Day::from_ymd(year as i32, month, day), today, coming), taken));
    }
    Some((nearest_year(day, month, today, coming), taken))
}

fn without_ordinal(word: &str) -> &str {
    ["th", "st", "nd", "rd"].iter().find_map(|ending| word.strip_suffix(ending)).unwrap_or(word)
}

/// "15-jun", "15jun", "jun-15", "15-jun-26", "16.vi", "17.06.26".
fn in_one_word(folded: &str, today: Day, coming: bool) -> Option<SaidDay> {
    const ROMAN: [&str; 12] = ["i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi", "xii"];
    let is_letters = |text: &str| text.chars().all(char::is_alphabetic);
    let parted: Vec<&str> = folded.split([' ', '.', '/']).collect();
    let glued = folded.find(char::is_alphabetic).map(|at| folded.split_at(at));
    let pieces: Vec<&str> = match (&parted[..], glued) {
        ([_], Some((day, month))) if !day.is_empty() && month.len() > 2 => vec![day, month],
        _ => parted,
    };
    let has_dot = folded.contains('.');
    let month = |text: &str| match has_dot {
        true => ROMAN.iter().position(|roman| *roman == text).map(|at| at as u32 + 1).or_else(|| text.parse().ok()),
        false => None,
    };
    let named = |text: &str| lexicon().month(text).filter(|_| is_letters(text) && text.len() > 2);
    let (day, month, year) = match pieces[..] {
        [day, of] if named(of).is_some() => (day.parse().ok()?, named(of)?, None),
        [of, day] if named(of).is_some() => (day.parse().ok()?, named(of)?, None),
        [day, of, year] if named(of).is_some() => (day.parse().ok()?, named(of)?, Some(year)),
        [day, roman] if is_letters(roman) => (day.parse().ok()?, month(roman)?, None),
        [day, of, year] => (day.parse().ok()?, month(of)?, Some(year)),
        _ => return None,
    };
    let year: Option<i32> = match year {
        Some(year) => Some(year.parse().ok()?),
        None => None,
    };
    Some(match year {
        Some(year) => settled(Day::from_ymd(if year < 100 { 2000 + year } else { year }, month, day), today, coming),
        None => nearest_year(day, month, today, coming),
    })
}

fn settled(day: Option<Day>, today: Day, coming: bool) -> SaidDay {
    match day {
        None => SaidDay::Impossible,
        Some(day) if coming || day > today => SaidDay::Coming(day),
        Some(day) => SaidDay::On(day),
    }
}

fn nearest_year(day: u32, month: u32, today: Day, coming: bool) -> SaidDay {
    let (year, ..) = today.ymd();
    let this = Day::from_ymd(year, month, day);
    let other = Day::from_ymd(if coming { year + 1 } else { year - 1 }, month, day);
    let fits = |found: &Day| if coming { *found >= today } else { *found <= today };
    let found = this.filter(fits).or(other);
    // A day nearly a year back is rather one to come.
    match found {
        Some(day) if !coming && today.number() - day.number() > MOST_DAYS_BACK => SaidDay::Coming(this.unwrap_or(day)),
        found => settled(found, today, coming),
    }
}
