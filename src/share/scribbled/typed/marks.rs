//! What the words of a line may be: known names, numbers with their units, days, words with roles.

use super::days::{SaidDay, day_at};
use super::lexicon::{Role, fold, lexicon, vocabulary};
use super::named::{Known, NameOf};
use super::numbers::{Figure, in_figures, number_at};
use super::words::Word;
use crate::base::Day;

/// What a stretch of a line is.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum What {
    /// A known name; it may be that of several things.
    Name(Vec<(NameOf, String)>),
    /// A species, by its keys.
    Species(Vec<String>),
    /// A code that nobody knows yet.
    New(String),
    /// A bare number.
    Number { value: f64, is_weak: bool, is_minus: bool },
    /// Half, a third.
    Part(f64),
    /// A number with its unit.
    Amount(f64, Role),
    /// 41/50: a part and the whole.
    Share(f64, f64),
    /// Two numbers where one was to be.
    Range(f64, f64),
    /// 3 x 3.
    Spacing(f64, f64),
    /// A day.
    Day(SaidDay),
    /// A time of day.
    Clock(String),
    /// A sign between words.
    Sign(char),
    /// A word with roles.
    Word,
    /// A word without any.
    Unknown,
}

/// A stretch of the line with what it is.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Mark {
    pub what: What,
    /// As it is read.
    pub typed: String,
    /// As it stands in the line.
    pub written: String,
    pub folded: String,
    pub roles: Vec<Role>,
    /// Read through a slip of the pen.
    pub is_slip: bool,
}

impl Mark {
    pub fn has(&self, role: &str) -> bool {
        self.roles.contains(&role)
    }

    pub fn is_sign(&self, sign: char) -> bool {
        self.what == What::Sign(sign)
    }

    pub fn is_name_of(&self, name_of: NameOf) -> bool {
        matches!(&self.what, What::Name(all) if all.iter().any(|(of, _)| *of == name_of))
    }

    pub fn number(&self) -> Option<f64> {
        match self.what {
            What::Number { value, .. } => Some(value),
            _ => None,
        }
    }
}

fn in_one(words: &[Word], of: impl Fn(&Word) -> &str) -> String {
    let mut text = String::new();
    for (n, word) in words.iter().enumerate() {
        if n > 0 && word.apart {
            text.push(' ');
        }
        text.push_str(of(word));
    }
    text
}

/// Marks a line; signs that stand for words become those words.
pub(crate) fn marks(words: &[Word], known: &Known, today: Day) -> Vec<Mark> {
    let mut marks: Vec<Mark> = Vec::new();
    let mut i = 0;
    while i < words.len() {
        let (what, taken) = mark_at(words, i, known, today, &marks);
        let taken = taken.max(1);
        let these = &words[i..(i + taken).min(words.len())];
        let (text, written) = (in_one(these, |word| &word.typed), in_one(these, |word| &word.written));
        let folded = fold(&text);
        let mut mark = Mark { what, folded, typed: text, written, roles: Vec::new(), is_slip: false };
        if matches!(mark.what, What::Word | What::Unknown) {
            mark.roles = lexicon().roles(&mark.folded);
            let is_named =
                mark.typed.chars().next().is_some_and(char::is_uppercase) || known.begins_a_name(&mark.typed);
            if mark.roles.is_empty() && !is_named && !vocabulary().is_everyday(&mark.folded) {
                mark.roles = lexicon().nearly(&mark.folded);
                mark.is_slip = !mark.roles.is_empty();
            }
            mark.what = if mark.roles.is_empty() { What::Unknown } else { What::Word };
        }
        marks.push(mark);
        i += taken;
    }
    settled(with_the_same_name(marks, known))
}

/// "line 1 and 2": the second number is that of a second name.
fn with_the_same_name(mut marks: Vec<Mark>, known: &Known) -> Vec<Mark> {
    for at in 2..marks.len() {
        let (What::Name(names), true) = (&marks[at - 2].what, is_joined(&marks, at)) else { continue };
        let number = marks[at].typed.clone();
        let head = |name: &str| name.rsplit_once(' ').map(|(head, _)| head.to_lowercase());
        let same = |(of, name): &&(NameOf, String)| {
            let is_of = |(other_of, other): &&(NameOf, String)| other_of == of && head(other) == head(name);
            names.iter().any(|one| is_of(&one)) && name.rsplit_once(' ').is_some_and(|(_, end)| end == number)
        };
        let found: Vec<(NameOf, String)> = known.all.iter().filter(same).cloned().collect();
        if !found.is_empty() {
            marks[at].what = What::Name(found);
        }
    }
    marks
}

/// Whether a bare number stands behind a joining word or a comma, and nothing behind it says what it is of.
fn is_joined(marks: &[Mark], at: usize) -> bool {
    let joins = marks[at - 1].has("small.and") || marks[at - 1].is_sign(',');
    let is_of_nothing = marks.get(at + 1).is_none_or(|mark| {
        matches!(mark.what, What::Sign(_) | What::Day(_)) || mark.has("small.and") || mark.has("small.to")
    });
    joins && is_of_nothing && matches!(marks[at].what, What::Number { is_minus: false, .. })
}

fn mark_at(words: &[Word], i: usize, known: &Known, today: Day, before: &[Mark]) -> (What, usize) {
    if let Some((names, taken)) = known.name_at(words, i) {
        return (What::Name(names), taken);
    }
    if let Some((names, taken)) = known.containers_at(words, i) {
        return (What::Name(names.into_iter().map(|name| (NameOf::Container, name)).collect()), taken);
    }
    if let Some((names, taken)) = known.container_in_other_words(words, i) {
        return (What::Name(names), taken);
    }
    if let Some(hours) = hours_and_minutes(&words[i].typed) {
        return (What::Amount(hours, "units.hour"), 1);
    }
    if let Some(found) = clock_at(words, i)
        .or_else(|| range_at(words, i))
        .or_else(|| spacing_at(words, i))
        .or_else(|| share_at(words, i))
    {
        return found;
    }
    if let Some(figure) = number_at(words, i).filter(|_| words[i].typed.contains('/')) {
        return number_mark(words, i, figure);
    }
    if let Some((day, taken)) = day_at(words, i, today)
        && !is_the_sun(words, i, before)
        && !ends_in_the_sun(&words[i..(i + taken).min(words.len())])
    {
        return (What::Day(day), taken);
    }
    let phrase = phrase_at(words, i, known);
    if let Some(figure) = number_at(words, i)
        && phrase.is_none_or(|length| length <= figure.words)
    {
        return number_mark(words, i, figure);
    }
    if words[i].is_sign() {
        return (What::Sign(words[i].typed.chars().next().unwrap_or(',')), 1);
    }
    if let Some((keys, taken)) = known.species_at(words, i, phrase.unwrap_or(0)) {
        return (What::Species(keys), taken);
    }
    if let Some(length) = phrase {
        return (What::Word, length);
    }
    let code = &words[i].typed;
    let is_code = code.chars().any(|c| c.is_ascii_digit()) && code.chars().any(char::is_alphabetic);
    if is_code && code.chars().count() <= 24 {
        return (What::New(code.clone()), 1);
    }
    (What::Unknown, 1)
}

/// The longest phrase of the lexicon that begins here.
fn phrase_at(words: &[Word], i: usize, known: &Known) -> Option<usize> {
    let longest = lexicon().longest(&words.get(i)?.folded);
    // "en La Loma": a name is not cut in two by a phrase before it.
    let cuts = |length: &usize| {
        (1..*length).any(|at| known.name_at(words, i + at).is_some_and(|(_, taken)| at + taken > *length))
    };
    (1..=longest).rev().filter(|length| *length == 1 || !cuts(length)).find(|length| {
        words.get(i..i + length).is_some_and(|words| {
            let phrase = words.iter().map(|word| word.folded.as_str()).collect::<Vec<_>>().join(" ");
            !lexicon().roles(&phrase).is_empty()
        })
    })
}

/// "Sun" is a day first or last, not behind an article and not where it does something.
fn is_the_sun(words: &[Word], i: usize, before: &[Mark]) -> bool {
    if words[i].folded != "sun" {
        return false;
    }
    const LEADS: [&str; 8] = ["the", "this", "gets", "get", "more", "much", "full", "in"];
    let led = before.last().is_some_and(|mark| {
        mark.has("small.by") || mark.folded.rsplit(' ').next().is_some_and(|word| LEADS.contains(&word))
    });
    let does = words.get(i + 1).is_some_and(|next| {
        let roles = lexicon().roles(&next.folded);
        roles.contains(&"kill") || roles.contains(&"die")
    });
    let is_at_the_end = i == 0 || i + 1 == words.len();
    led || does || !is_at_the_end
}

/// "by the sun", "before the sun": no Sunday.
fn ends_in_the_sun(words: &[Word]) -> bool {
    matches!(words, [.., article, sun] if article.folded == "the" && sun.typed == "sun")
}

/// "2h30": two hours and a half.
fn hours_and_minutes(typed: &str) -> Option<f64> {
    let (hours, minutes) = typed.split_once(['h', 'H'])?;
    let (hours, minutes): (f64, f64) = (hours.parse().ok()?, minutes.parse().ok()?);
    (hours < 24.0 && minutes < 60.0).then_some(hours + minutes / 60.0)
}

fn clock_at(words: &[Word], i: usize) -> Option<(What, usize)> {
    let (hour, minute) = words[i].typed.split_once(':')?;
    let (hour, minute): (u32, u32) = (hour.parse().ok()?, minute.parse().ok()?);
    (hour < 24 && minute < 60).then(|| (What::Clock(format!("{hour:02}:{minute:02}")), 1))
}

/// "41/50", which is no day of a month.
fn share_at(words: &[Word], i: usize) -> Option<(What, usize)> {
    /// A greater second number is no month.
    const MONTHS: f64 = 12.0;
    let (part, all) = words[i].typed.split_once('/')?;
    let (part, all) = (in_figures(part)?, in_figures(all)?);
    (all > MONTHS && part <= all && part.fract() == 0.0 && all.fract() == 0.0).then_some((What::Share(part, all), 1))
}

fn range_at(words: &[Word], i: usize) -> Option<(What, usize)> {
    if let Some((low, high)) = words[i].typed.split_once('-')
        && let (Some(low), Some(high)) = (in_figures(low), in_figures(high))
    {
        return Some((What::Range(low, high), 1));
    }
    None
}

fn unit_at(words: &[Word], i: usize) -> Option<(Role, usize)> {
    (1..=2).rev().find_map(|length| {
        let words = words.get(i..i + length)?;
        let phrase = words.iter().map(|word| word.folded.as_str()).collect::<Vec<_>>().join(" ");
        let phrase = if length == 1 && words[0].typed == "%" { "%".to_string() } else { phrase };
        lexicon().roles(&phrase).into_iter().find(|role| role.starts_with("units.")).map(|role| (role, length))
    })
}

/// "3 x 3", "3m x 3m", "3 by 3", "4 por 4".
fn spacing_at(words: &[Word], i: usize) -> Option<(What, usize)> {
    let metre = |j: usize| usize::from(matches!(unit_at(words, j), Some(("units.m", _))));
    let first = number_at(words, i)?;
    let mut j = i + first.words;
    j += metre(j);
    if !matches!(words.get(j)?.folded.as_str(), "x" | "by" | "por" | "×" | "*") {
        return None;
    }
    let second = number_at(words, j + 1)?;
    let end = j + 1 + second.words;
    let taken = end + metre(end) - i;
    let small = first.value <= 30.0 && second.value <= 30.0 && !first.is_minus && !second.is_minus;
    small.then_some((What::Spacing(first.value, second.value), taken))
}

fn number_mark(words: &[Word], i: usize, figure: Figure) -> (What, usize) {
    let lexicon = lexicon();
    let after = i + figure.words;
    let article =
        usize::from(figure.is_part && words.get(after).is_some_and(|word| matches!(word.folded.as_str(), "a" | "an")));
    // "una pulgada" is a measure, "un l" may be anything.
    let is_whole_word = words.get(after).is_some_and(|word| word.folded.len() > 2);
    if let Some((unit, taken)) = unit_at(words, after + article)
        && (!figure.is_weak || is_whole_word)
    {
        return (What::Amount(figure.value, unit), figure.words + article + taken);
    }
    // "0.8 in" at an end, "1 in of rain".
    let in_inches = words.get(after).is_some_and(|word| word.folded == "in")
        && words.get(after + 1).is_none_or(|next| next.is_sign() || matches!(next.folded.as_str(), "of" | "rain"));
    if in_inches && !figure.is_minus {
        return (What::Amount(figure.value, "units.inch"), figure.words + 1);
    }
    if figure.is_part {
        return (What::Part(figure.value), figure.words);
    }
    // "5 to 6", "5 a 6": two numbers; "from 60 to 40": the last one is so now.
    let joins = words.get(after).map_or("", |word| word.folded.as_str());
    let is_alternative = joins == "or" || joins == "o";
    if (is_alternative || joins == "to" || joins == "a")
        && let Some(next) = number_at(words, after + 1)
        && !next.is_weak
        && !next.is_part
    {
        let is_change = i > 0 && lexicon.is(&words[i - 1].folded, "small.old") && !is_alternative;
        let taken = figure.words + 1 + next.words;
        if !is_change {
            return (What::Range(figure.value, next.value), taken);
        }
        return match unit_at(words, i + taken) {
            Some((unit, length)) => (What::Amount(next.value, unit), taken + length),
            None => (What::Number { value: next.value, is_weak: false, is_minus: false }, taken),
        };
    }
    (What::Number { value: figure.value, is_weak: figure.is_weak, is_minus: figure.is_minus }, figure.words)
}

/// "52 -> 49", "52 down to 49": the first is the old number.
fn settled(mut marks: Vec<Mark>) -> Vec<Mark> {
    let mut i = 0;
    while i + 2 < marks.len() {
        let is_new = marks[i + 2].number().is_some() || matches!(marks[i + 2].what, What::Amount(..));
        let old = marks[i].number().is_some() && is_new;
        if old && (matches!(marks[i + 1].folded.as_str(), ">" | "down to" | "=>") || marks[i + 1].typed == "->") {
            marks.drain(i..i + 2);
        }
        i += 1;
    }
    marks
}
