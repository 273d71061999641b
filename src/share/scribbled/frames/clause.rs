//! One statement of a line: what of it has been used for a reading, and what is left over.

use crate::share::scribbled::lexicon::Role;
use crate::share::scribbled::typed::days::SaidDay;
use crate::share::scribbled::typed::marks::{Mark, What};
use crate::share::scribbled::typed::named::{Known, NameOf};
use crate::share::scribbled::why::Why;
use serde_json::{Map, Value};
use std::collections::HashSet;
use std::rc::Rc;

/// How far apart in weight two readings are before one is clear.
pub(crate) const CLEAR_BY: i32 = 3;

/// Words that say how plants are: beside them stands how many.
const HOW_THEY_ARE: [Role; 8] = ["alive", "survive", "die", "left", "count", "kill", "fell", "steal"];

/// The fields of an entry.
pub(crate) type Fields = Map<String, Value>;

/// A statement as one frame reads it.
#[derive(Clone)]
pub(crate) struct Clause<'a> {
    pub marks: &'a [Mark],
    pub known: &'a Known<'a>,
    used: Vec<bool>,
    /// The roles that stand in the statement: most frames ask for others.
    present: Rc<HashSet<Role>>,
    /// Evidence for the reading.
    pub weight: i32,
    /// What is missing or cannot be.
    pub lacks: Vec<Why>,
}

/// A whole number is kept as one in JSON.
pub(crate) fn number_value(value: f64) -> Value {
    if value.fract() == 0.0 && value.abs() < 1e15 {
        Value::from(value as i64)
    } else {
        Value::from((value * 1e6).round() / 1e6)
    }
}

/// Fields from pairs; what is not there is left out.
pub(crate) fn fields<const N: usize>(pairs: [(&str, Option<Value>); N]) -> Fields {
    pairs.into_iter().filter_map(|(key, value)| value.map(|value| (key.to_string(), value))).collect()
}

impl<'a> Clause<'a> {
    pub fn new(marks: &'a [Mark], known: &'a Known<'a>) -> Clause<'a> {
        let used =
            marks.iter().map(|mark| matches!(mark.what, What::Sign(_) | What::Day(_) | What::Clock(_))).collect();
        let present = Rc::new(marks.iter().flat_map(|mark| mark.roles.iter().copied()).collect());
        let mut clause = Clause { marks, known, used, present, weight: 0, lacks: Vec::new() };
        for (i, mark) in marks.iter().enumerate() {
            // Days to come belong to the frames that take them.
            if matches!(mark.what, What::Day(SaidDay::Coming(_))) {
                clause.used[i] = false;
            }
        }
        clause
    }

    pub fn is_free(&self, i: usize) -> bool {
        self.used.get(i) == Some(&false)
    }

    pub fn use_mark(&mut self, i: usize) {
        if let Some(used) = self.used.get_mut(i) {
            *used = true;
        }
    }

    /// Whether a word of this role stands in the statement.
    pub fn has(&self, role: Role) -> bool {
        self.present.contains(role)
    }

    /// Whether the mark just before this one has a role.
    pub fn is_behind(&self, i: usize, role: Role) -> bool {
        i.checked_sub(1).and_then(|before| self.marks.get(before)).is_some_and(|mark| mark.has(role))
    }

    /// Uses every word of these roles; where the first of them stands.
    pub fn take(&mut self, roles: &[Role]) -> Option<usize> {
        if !roles.iter().any(|role| self.present.contains(role)) {
            return None;
        }
        let mut first = None;
        for i in 0..self.marks.len() {
            if self.is_free(i) && roles.iter().any(|role| self.marks[i].has(role)) {
                self.use_mark(i);
                first = first.or(Some(i));
            }
        }
        first
    }

    /// Uses words that make the reading what it is; they weigh.
    pub fn head(&mut self, roles: &[Role]) -> Option<usize> {
        let found = self.take(roles)?;
        self.weight += 10;
        Some(found)
    }

    /// Where the next unused name of a sort stands.
    pub fn find_name(&self, name_of: NameOf) -> Option<usize> {
        (0..self.marks.len()).find(|i| self.is_free(*i) && self.marks[*i].is_name_of(name_of))
    }

    fn name_of(&self, i: usize, name_of: NameOf) -> Option<String> {
        match &self.marks.get(i)?.what {
            What::Name(all) => all.iter().find(|(of, _)| *of == name_of).map(|(_, name)| name.clone()),
            _ => None,
        }
    }

    /// Uses the next name of a sort.
    pub fn name(&mut self, name_of: NameOf) -> Option<String> {
        let at = self.find_name(name_of)?;
        self.use_mark(at);
        self.weight += 3;
        self.name_of(at, name_of)
    }

    /// Uses the name at a place of the statement.
    pub fn name_here(&mut self, i: usize, name_of: NameOf) -> Option<String> {
        let name = self.name_of(i, name_of)?;
        self.use_mark(i);
        self.weight += 3;
        Some(name)
    }

    /// Whether every name of this sort in the statement is the name of nothing else.
    pub fn is_surely(&self, name_of: NameOf) -> bool {
        self.marks.iter().all(|mark| match &mark.what {
            What::Name(all) => {
                let other = all.iter().find(|(of, _)| *of != name_of && !is_lot_for_tray(name_of, *of, mark, all));
                !mark.is_name_of(name_of) || other.is_none()
            }
            _ => true,
        })
    }

    /// Uses the container that is named, by its name or its volume. Where several are meant it is asked which; a volume that
    /// no container has is not passed over.
    pub fn container(&mut self) -> Option<String> {
        let Some(at) = self.find_name(NameOf::Container) else { return self.container_of_litres() };
        let What::Name(all) = &self.marks[at].what else { return None };
        let named: Vec<String> =
            all.iter().filter(|(of, _)| *of == NameOf::Container).map(|(_, name)| name.clone()).collect();
        self.use_mark(at);
        self.weight += 3;
        self.one_of(named)
    }

    fn container_of_litres(&mut self) -> Option<String> {
        let litres = self.amount("units.l")?;
        let Some(fitting) = self.known.of_volume(litres, "") else {
            let written = format!("{litres} l");
            let near = self.known.nearest(&written, Some(NameOf::Container));
            self.lacks.push(Why::UnknownName(written, near));
            return None;
        };
        self.one_of(fitting)
    }

    fn one_of(&mut self, containers: Vec<String>) -> Option<String> {
        let first = containers.first().cloned();
        if containers.len() > 1 {
            self.lacks.push(Why::WhichContainer(containers));
        }
        first
    }

    /// Uses a new code.
    pub fn new_code(&mut self) -> Option<String> {
        let at =
            (0..self.marks.len()).rev().find(|i| self.is_free(*i) && matches!(self.marks[*i].what, What::New(_)))?;
        self.use_mark(at);
        match &self.marks[at].what {
            What::New(code) => Some(code.clone()),
            _ => None,
        }
    }

    /// Uses the next bare number: strong ones first.
    pub fn number(&mut self) -> Option<f64> {
        let at = self.find_number()?;
        self.use_mark(at);
        self.weight += 2;
        self.marks[at].number()
    }

    /// Where the next bare number stands.
    pub fn find_number(&self) -> Option<usize> {
        let free = |weak: bool| {
            (0..self.marks.len()).find(|i| {
                self.is_free(*i) && matches!(self.marks[*i].what, What::Number { is_weak, .. } if is_weak == weak)
            })
        };
        free(false).or_else(|| free(true))
    }

    /// Uses the number that stands at a word of these roles, with nothing but a word for plants between them. Where the
    /// word leads the numbers of the statement it is the one behind it, else the one before it.
    pub fn number_beside(&mut self, roles: &[Role]) -> Option<f64> {
        let is_number = |i: usize| matches!(self.marks[i].what, What::Number { is_weak: false, .. });
        let at = (0..self.marks.len()).find(|i| roles.iter().any(|role| self.marks[*i].has(role)))?;
        let says_how = |i: &usize| HOW_THEY_ARE.iter().any(|role| self.marks[*i].has(role));
        let first = (0..self.marks.len()).find(says_how).unwrap_or(at).min(at);
        let leads = !(0..first).any(is_number);
        let passes = |i: usize| self.marks[i].has("small.thing") || matches!(self.marks[i].what, What::Species(_));
        let reach = |mut all: Box<dyn Iterator<Item = usize>>| {
            let found =
                all.find(|i| !passes(*i) && !self.marks[*i].has("small.from") && !self.marks[*i].has("small.by"));
            found.filter(|i| is_number(*i) && self.is_free(*i))
        };
        let (before, behind) = (reach(Box::new((0..at).rev())), reach(Box::new(at + 1..self.marks.len())));
        let number = if leads { behind.or(before) } else { before.or(behind) }?;
        self.use_mark(at);
        self.use_mark(number);
        self.weight += 2;
        self.marks[number].number()
    }

    /// Uses "17 of 20": the part and the whole.
    pub fn part_of_all(&mut self) -> Option<(f64, f64)> {
        let share = (0..self.marks.len()).find(|i| self.is_free(*i) && matches!(self.marks[*i].what, What::Share(..)));
        if let Some(at) = share {
            self.use_mark(at);
            self.weight += 4;
            return match self.marks[at].what {
                What::Share(part, all) => Some((part, all)),
                _ => None,
            };
        }
        if let Some(found) = self.all_before_the_part() {
            return Some(found);
        }
        let is_number = |i: usize| {
            let mark = self.marks.get(i);
            mark.is_some_and(|mark| matches!(mark.what, What::Number { is_weak: false, .. })) && self.is_free(i)
        };
        let (at, behind) = (0..self.marks.len()).filter(|at| is_number(*at)).find_map(|at| {
            let mut next = at + 1;
            // "9 caobas de 12", "34 matas de plátano de 40".
            while let Some(mark) = self.marks.get(next) {
                if mark.has("small.from") && is_number(next + 1) {
                    return Some((at, next + 1));
                }
                let passes = ["small.thing", "small.from", "alive", "survive"].iter().any(|role| mark.has(role))
                    || matches!(mark.what, What::Species(_));
                if !passes {
                    return None;
                }
                next += 1;
            }
            None
        })?;
        let (part, all) = (self.marks[at].number()?, self.marks[behind].number()?);
        [at, behind - 1, behind].into_iter().for_each(|i| self.use_mark(i));
        self.weight += 4;
        Some((part, all))
    }

    /// Uses "of the 55 coffee 41 are alive": the whole stands first.
    fn all_before_the_part(&mut self) -> Option<(f64, f64)> {
        let is_number =
            |at: &usize| matches!(self.marks[*at].what, What::Number { is_weak: false, is_minus: false, .. });
        let numbers: Vec<usize> = (0..self.marks.len()).filter(is_number).collect();
        let [all_at, part_at] = numbers[..] else { return None };
        let (all, part) = (self.marks[all_at].number()?, self.marks[part_at].number()?);
        let of = |at: usize| matches!(self.marks[at].folded.as_str(), "of" | "de" | "out of");
        let leads = (0..all_at).rev().take(2).any(of) && self.marks[..all_at].iter().all(is_small);
        let says_alive = ["alive", "survive", "count", "left"].iter().any(|role| self.has(role));
        if !leads || !says_alive || self.has("die") || part > all || !self.is_free(all_at) || !self.is_free(part_at) {
            return None;
        }
        self.use_mark(all_at);
        self.use_mark(part_at);
        self.weight += 4;
        Some((part, all))
    }

    /// A part of a tray that is named, in plants as the books have them.
    fn part_of_tray(&mut self) -> Option<f64> {
        let standing = self.marks.iter().find_map(|mark| match &mark.what {
            What::Name(all) => all.iter().find(|(of, _)| *of == NameOf::Tray).map(|(_, name)| name),
            _ => None,
        });
        let standing = standing.and_then(|tray| self.known.names.standing(tray)).filter(|standing| *standing > 0)?;
        self.part().map(|part| (part * f64::from(standing)).round())
    }

    /// Uses a number of plants: whole, above zero where `least` says so. What is wrong with it is noted. Half of a tray is
    /// asked about, with the number that it is by the books.
    pub fn count(&mut self) -> Option<f64> {
        if let Some(Why::Range(low, high)) = self.range() {
            self.lacks.push(Why::Range(low, high));
            return None;
        }
        if self.find_number().is_none() && self.one_of_it() {
            return Some(1.0);
        }
        let Some(value) = self.number() else {
            self.lacks.push(Why::NoNumber);
            // "more than half": no number is offered for it.
            let is_open = (1..self.marks.len())
                .any(|at| matches!(self.marks[at].what, What::Part(_)) && self.is_behind(at, "asides.more_than"));
            if is_open {
                self.take(&["asides.more_than"]);
                self.part();
                return None;
            }
            return self.part_of_tray();
        };
        if value.fract() != 0.0 {
            self.lacks.push(Why::NotWhole(value));
        }
        Some(value)
    }

    /// Whether "a c1", "una c1" says that it was one; in Spanish "a" says where to.
    fn one_of_it(&self) -> bool {
        const SAID_OF_ONE: [&str; 14] = [
            "lost", "sold", "gave", "culled", "pulled", "binned", "tossed", "threw", "dropped", "broke", "killed",
            "ate", "took", "planted",
        ];
        (1..self.marks.len()).filter(|at| self.marks[*at].is_name_of(NameOf::Tray)).any(|at| {
            let before = self.marks[at - 1].folded.as_str();
            let is_said = at > 1 && SAID_OF_ONE.contains(&self.marks[at - 2].folded.as_str());
            matches!(before, "an" | "one" | "una" | "un") || before == "a" && is_said
        }) || self.another_died()
    }

    /// "k1 otra muerta", "another dead in k1".
    fn another_died(&self) -> bool {
        let another = |mark: &Mark| matches!(mark.folded.as_str(), "otra" | "otro" | "another");
        self.marks.windows(2).any(|two| another(&two[0]) && two[1].has("die"))
    }

    /// Whether "a jackfruit", "una yaca" says that it was one of a species.
    pub fn one_of_a_species(&self) -> bool {
        let is_article = |mark: &Mark| matches!(mark.folded.as_str(), "a" | "an" | "one" | "un" | "una");
        self.marks.windows(2).any(|two| is_article(&two[0]) && matches!(two[1].what, What::Species(_)))
    }

    fn range(&mut self) -> Option<Why> {
        let at = (0..self.marks.len()).find(|i| self.is_free(*i) && matches!(self.marks[*i].what, What::Range(..)))?;
        self.use_mark(at);
        match self.marks[at].what {
            What::Range(low, high) => Some(Why::Range(low, high)),
            _ => None,
        }
    }

    /// Uses the next amount in a unit.
    pub fn amount(&mut self, unit: Role) -> Option<f64> {
        let at = (0..self.marks.len())
            .find(|i| self.is_free(*i) && matches!(self.marks[*i].what, What::Amount(_, of) if of == unit))?;
        self.use_mark(at);
        self.weight += 4;
        match self.marks[at].what {
            What::Amount(value, _) => Some(value),
            _ => None,
        }
    }

    /// Uses a weight in grams, or in kilograms.
    pub fn grams(&mut self) -> Option<f64> {
        self.amount("units.g").or_else(|| self.amount("units.kg").map(|kilograms| kilograms * 1000.0))
    }

    /// Uses a half, a third.
    pub fn part(&mut self) -> Option<f64> {
        let at = (0..self.marks.len()).find(|i| self.is_free(*i) && matches!(self.marks[*i].what, What::Part(_)))?;
        self.use_mark(at);
        match self.marks[at].what {
            What::Part(value) => Some(value),
            _ => None,
        }
    }

    /// Uses two numbers of a spacing.
    pub fn spacing(&mut self) -> Option<(f64, f64)> {
        let at =
            (0..self.marks.len()).find(|i| self.is_free(*i) && matches!(self.marks[*i].what, What::Spacing(..)))?;
        self.use_mark(at);
        self.weight += 6;
        match self.marks[at].what {
            What::Spacing(row, in_row) => Some((row, in_row)),
            _ => None,
        }
    }

    /// Uses a species: its keys.
    pub fn species(&mut self) -> Option<Vec<String>> {
        let at = (0..self.marks.len()).find(|i| self.is_free(*i) && matches!(self.marks[*i].what, What::Species(_)))?;
        self.use_mark(at);
        self.weight += 3;
        match &self.marks[at].what {
            What::Species(keys) => Some(keys.clone()),
            _ => None,
        }
    }

    /// Uses a name of a plant that is written as that of a person: María is a tree as well.
    pub fn species_as_a_name(&mut self) -> Option<String> {
        let is_name = |mark: &Mark| {
            matches!(mark.what, What::Species(_)) && mark.typed.chars().next().is_some_and(char::is_uppercase)
        };
        let at = (0..self.marks.len()).find(|i| self.is_free(*i) && is_name(&self.marks[*i]))?;
        self.use_mark(at);
        Some(self.marks[at].typed.clone())
    }

    /// Uses a day to come.
    pub fn coming(&mut self) -> Option<Value> {
        let at = (0..self.marks.len())
            .find(|i| self.is_free(*i) && matches!(self.marks[*i].what, What::Day(SaidDay::Coming(_))))?;
        self.use_mark(at);
        match self.marks[at].what {
            What::Day(SaidDay::Coming(day)) => Some(Value::from(crate::share::scribbled::written(day))),
            _ => None,
        }
    }

    /// Uses the running text from `i`: unknown words, words of these roles and small words between them.
    pub fn text_from(&mut self, i: usize, roles: &[Role]) -> Option<String> {
        let is_content = |mark: &Mark| {
            let named = roles.contains(&"small.title") && matches!(mark.what, What::Species(_));
            let is_name = named && mark.typed.chars().next().is_some_and(char::is_uppercase);
            matches!(mark.what, What::Unknown)
                || is_name
                || roles.iter().any(|role| mark.has(role)) && mark.what == What::Word
        };
        let mut end = i;
        let mut j = i;
        while j < self.marks.len() && self.is_free(j) {
            let mark = &self.marks[j];
            if is_content(mark) {
                end = j + 1;
            } else if mark.what != What::Word || !is_small(mark) {
                break;
            }
            j += 1;
        }
        let mut start = i;
        while start < end && !is_content(&self.marks[start]) {
            self.use_mark(start);
            start += 1;
        }
        if start >= end {
            return None;
        }
        (start..end).for_each(|j| self.use_mark(j));
        let words: Vec<&str> = self.marks[start..end].iter().map(|mark| mark.typed.as_str()).collect();
        Some(words.join(" "))
    }

    /// Uses the first running text anywhere that holds a word of these roles, or (where allowed) an unknown one.
    pub fn text(&mut self, roles: &[Role], unknown: bool) -> Option<String> {
        let starts = |mark: &Mark| {
            mark.what == What::Word && roles.iter().any(|role| mark.has(role)) || unknown && mark.what == What::Unknown
        };
        let at = (0..self.marks.len()).find(|i| self.is_free(*i) && starts(&self.marks[*i]))?;
        self.text_from(at, roles)
    }

    /// Uses the first words of these roles that stand together, and no unknown ones beside them.
    pub fn known_text(&mut self, roles: &[Role]) -> Option<String> {
        let is_said = |mark: &Mark| mark.what == What::Word && roles.iter().any(|role| mark.has(role));
        let at = (0..self.marks.len()).find(|i| self.is_free(*i) && is_said(&self.marks[*i]))?;
        let is_more = |i: usize| self.is_free(i) && is_said(&self.marks[i]) && self.marks[i].what != What::Unknown;
        let end = (at + 1..self.marks.len()).find(|i| !is_more(*i)).unwrap_or(self.marks.len());
        (at..end).for_each(|i| self.use_mark(i));
        Some(self.marks[at..end].iter().map(|mark| mark.typed.as_str()).collect::<Vec<_>>().join(" "))
    }

    /// Whether a text names somebody: by a title, a word for people, a capital letter that does not just begin the line.
    pub fn names_a_person(&self, text: &str) -> bool {
        let folded = crate::share::scribbled::lexicon::fold(text);
        let first = folded.split(' ').next().unwrap_or_default().trim_end_matches('.');
        let lexicon = crate::share::scribbled::lexicon::lexicon();
        let by_word =
            folded.split(' ').any(|word| lexicon.is(word, "small.person")) || lexicon.is(first, "small.title");
        let begins = self.marks.first().is_some_and(|mark| text.starts_with(&mark.typed));
        by_word || !begins && text.chars().next().is_some_and(char::is_uppercase)
    }

    /// Uses unknown words where a reason may stand: first in the statement, behind a sign, a number or a word as "by".
    /// Elsewhere they are used too, and asked about.
    pub fn unknown_reason(&mut self, roles: &[Role]) -> Option<String> {
        let at = (0..self.marks.len()).find(|i| self.is_free(*i) && self.marks[*i].what == What::Unknown)?;
        let behind = |mark: &Mark| {
            matches!(mark.what, What::Sign(_) | What::Number { is_minus: true, .. })
                || mark.has("small.by")
                || mark.has("small.filler") && mark.has("small.from")
        };
        let first = self.marks[..at]
            .iter()
            .all(|mark| mark.has("small.filler") || matches!(mark.what, What::Day(_) | What::Sign(_)));
        let before = self.marks[..at]
            .iter()
            .rev()
            .find(|mark| !matches!(mark.folded.as_str(), "the" | "el" | "la" | "los" | "las"));
        if !first && !before.is_some_and(behind) {
            self.lacks.push(Why::Several);
        }
        self.text_from(at, roles)
    }

    /// What is left over that is more than a small word: unread words count.
    pub fn leftover(&self) -> Vec<usize> {
        let free = (0..self.marks.len()).filter(|i| self.is_free(*i));
        free.filter(|i| {
            let mark = &self.marks[*i];
            let weak = matches!(mark.what, What::Number { is_weak: true, .. });
            !(weak || mark.what == What::Word && is_small(mark))
        })
        .collect()
    }
}

/// Whether a word only joins others: nothing is lost where it is passed over.
pub(crate) fn is_small(mark: &Mark) -> bool {
    const SAYS_MORE: [&str; 3] = ["small.about", "small.person", "small.title"];
    let only_joins = mark.roles.iter().all(|role| {
        let leads = matches!(
            *role,
            "asides.against"
                | "asides.before"
                | "asides.before_or_after"
                | "asides.when_it_was"
                | "asides.money_lead"
                | "asides.dose_per"
                | "asides.because"
        );
        leads || role.starts_with("days.") || role.starts_with("small.") && !SAYS_MORE.contains(role)
    });
    mark.has("small.filler") || mark.has("small.and") || only_joins
}

/// A lot that is called like a tray but for its capitals is not meant where a tray is spoken of.
fn is_lot_for_tray(wanted: NameOf, other: NameOf, mark: &Mark, all: &[(NameOf, String)]) -> bool {
    let exact = all.iter().any(|(of, name)| *of == wanted && *name == mark.typed);
    exact && matches!((wanted, other), (NameOf::Tray, NameOf::Lot) | (NameOf::Lot, NameOf::Tray))
}
