//! A field of a form: what is typed in it, and for lists the rows that are there already.

use serde_json::Value;

use super::rows;
use crate::base::Day;
use crate::dashboard::keys::Key;
use crate::dashboard::parts::Typed;
use crate::dashboard::parts::days::read_day;
use crate::nursery::entry::shape::{Field, Shape};
use crate::reckon::field::rows_named;
use crate::wording::entry::is_not_said;

/// A field of a form.
#[derive(Clone, Debug)]
pub(crate) struct FieldLine {
    /// The field.
    pub(crate) field: Field,
    /// What is typed; the row being typed where the field is a list of records.
    pub(crate) typed: Typed,
    /// The rows of a list of records.
    pub(crate) rows: Vec<String>,
    began_with: String,
    fresh: bool,
}

impl FieldLine {
    /// A field that begins with a text.
    pub(crate) fn new(field: Field, preset: &str) -> FieldLine {
        let mut line = FieldLine {
            field,
            typed: Typed::default(),
            rows: Vec::new(),
            began_with: preset.to_string(),
            fresh: false,
        };
        if line.has_rows() {
            line.rows = preset.split(rows::BETWEEN).filter(|row| !row.trim().is_empty()).map(str::to_string).collect();
        } else {
            line.typed = Typed::of(preset);
            line.fresh = !preset.is_empty() && line.is_figure_or_code();
        }
        line
    }

    /// The fields of a row, where the field is a list of records.
    pub(crate) fn row_fields(&self) -> Option<&'static [Field]> {
        match self.field.shape {
            Shape::List(Shape::Record(fields)) => Some(fields),
            _ => None,
        }
    }

    fn has_rows(&self) -> bool {
        self.row_fields().is_some()
    }

    /// Whether the first letter takes the place of what the field began with: a proposed figure, code or day.
    fn is_figure_or_code(&self) -> bool {
        let is_whole = matches!(
            self.field.shape,
            Shape::Count | Shape::Number { .. } | Shape::Code(_) | Shape::Day | Shape::MonthDay | Shape::Clock
        );
        is_whole || self.field.name == "about"
    }

    /// Gives way to another field of which only one is written: what it only began with is taken out.
    pub(crate) fn give_way(&mut self) {
        if !self.is_touched() {
            self.typed.clear();
            self.rows.clear();
        }
    }

    /// What it began with stands in it again, where nothing else does.
    pub(crate) fn come_back(&mut self) {
        if self.value().is_empty() {
            *self = FieldLine::new(self.field, &self.began_with.clone());
        }
    }

    /// What stands in it was typed by a person, and the next letter goes behind it; that nothing was said gives way.
    pub(crate) fn keep_typed(&mut self) {
        self.fresh = self.is_not_said();
    }

    /// Whether it only says that nothing was said.
    pub(crate) fn is_not_said(&self) -> bool {
        self.field.shape == Shape::Text && is_not_said(&self.typed.text())
    }

    /// Whether nothing stands in it that a person said.
    pub(crate) fn is_open(&self) -> bool {
        self.typed.is_empty() || self.is_not_said()
    }

    /// Another text in it, as typed at once.
    pub(crate) fn fill(&mut self, text: &str) {
        self.fresh = false;
        self.rows.clear();
        self.typed = Typed::default();
        self.insert(text);
    }

    /// What stands in it; rows and the row being typed parted by `;`.
    pub(crate) fn value(&self) -> String {
        let typed = self.typed.text().trim().to_string();
        if !self.has_rows() {
            return typed;
        }
        let all: Vec<&str> = self.rows.iter().map(String::as_str).chain([typed.as_str()]).collect();
        all.into_iter().filter(|row| !row.is_empty()).collect::<Vec<_>>().join("; ")
    }

    /// What the reader of typed pairs is given.
    pub(crate) fn for_reader(&self, today: Day) -> String {
        let value = self.value();
        match self.field.shape {
            Shape::List(Shape::Record(fields)) => rows::json_of(fields, &value),
            Shape::List(_) => rows::list_of(&value),
            Shape::Open => rows::open_of(&value),
            Shape::Day => read_day(&value, today).map_or(value, |day| day.to_string()),
            Shape::Number { .. } if self.is_share() => share_of(&value).map_or(value, |share| share.to_string()),
            _ => value,
        }
    }

    /// The choices, where the field is a word of a closed list or yes and no; in the spelling of files.
    pub(crate) fn choices(&self) -> Vec<&'static str> {
        match self.field.shape {
            Shape::Word(words) => words.iter().filter_map(|spellings| spellings.first().copied()).collect(),
            Shape::Flag => vec!["true", "false"],
            _ => Vec::new(),
        }
    }

    /// Whether it holds something else than it began with.
    pub(crate) fn is_touched(&self) -> bool {
        self.value() != self.began_with.trim()
    }

    /// Takes text that came at once; in a list each line of it is a row.
    pub(crate) fn insert(&mut self, text: &str) {
        if std::mem::take(&mut self.fresh) {
            self.typed.clear();
        }
        if self.has_rows() && text.contains('\n') {
            self.rows.extend(text.lines().map(crate::base::text::cleaned).filter(|row| !row.trim().is_empty()));
        } else {
            self.typed.insert(text);
        }
    }

    /// Takes a key; `picks` are the names shown beside the field.
    pub(crate) fn press(&mut self, key: Key, picks: &[String]) {
        let choices = self.choices();
        if !choices.is_empty() {
            self.choose(key, &choices);
            return;
        }
        let fresh = std::mem::take(&mut self.fresh);
        if fresh && matches!(key, Key::Char(_) | Key::Backspace) {
            self.typed.clear();
        }
        match key {
            // A digit in an empty field of words picks from the list beside it.
            Key::Char(digit @ '1'..='9') if self.typed.is_empty() && self.takes_picks_by_digit() => {
                match digit.to_digit(10).and_then(|digit| picks.get(digit as usize - 1)) {
                    Some(pick) => self.typed = Typed::of(pick),
                    None => self.typed.insert(digit.encode_utf8(&mut [0; 4])),
                }
            }
            Key::Right => {
                let before = self.typed.clone();
                self.typed.press(Key::Right);
                // At the end of what is typed, right takes the first name.
                if self.typed == before
                    && !self.typed.is_empty()
                    && let Some(pick) = picks.first()
                {
                    self.typed = Typed::of(pick);
                }
            }
            Key::Backspace if self.typed.is_empty() && self.has_rows() => {
                if let Some(row) = self.rows.pop() {
                    self.typed = Typed::of(&row);
                }
            }
            other => {
                self.typed.press(other);
            }
        }
    }

    /// Whether a digit picks from the list beside the field: only where a text or a code is not a number itself.
    pub(crate) fn takes_picks_by_digit(&self) -> bool {
        matches!(self.field.shape, Shape::Text | Shape::Species)
    }

    fn choose(&mut self, key: Key, choices: &[&'static str]) {
        let now = choices.iter().position(|choice| *choice == self.typed.text());
        let next = match key {
            Key::Right | Key::Char(' ' | '+') => Some(now.map_or(0, |at| (at + 1) % choices.len())),
            Key::Left | Key::Char('-') => {
                Some(now.map_or(choices.len() - 1, |at| (at + choices.len() - 1) % choices.len()))
            }
            Key::Char(digit @ '1'..='9') => digit.to_digit(10).map(|digit| digit as usize - 1),
            Key::Backspace | Key::Delete => {
                self.typed.clear();
                None
            }
            _ => None,
        };
        if let Some(choice) = next.and_then(|at| choices.get(at)) {
            self.typed = Typed::of(choice);
        }
    }

    /// Enter in a list: the row that is typed is added. False where there is no row to add.
    pub(crate) fn take_row(&mut self) -> bool {
        if !self.has_rows() || self.typed.text().trim().is_empty() {
            return false;
        }
        self.rows.push(self.typed.text().trim().to_string());
        self.typed.clear();
        true
    }

    /// Takes the only name that fits what is typed; whether there was one.
    pub(crate) fn settle(&mut self, picks: &[String]) -> bool {
        let is_name = matches!(self.field.shape, Shape::Code(_) | Shape::Species | Shape::Text);
        let ([only], true, false, false) = (picks, is_name, self.typed.is_empty(), self.fresh) else { return false };
        self.typed = Typed::of(only);
        true
    }

    /// Whether it is to name rows of a bed and names something else.
    pub(crate) fn names_no_rows(&self) -> bool {
        self.field.name == "rows" && rows_named(&self.value()).is_none()
    }

    /// Whether it is a part of one, which people say in percent.
    pub(crate) fn is_share(&self) -> bool {
        matches!(self.field.shape, Shape::Number { least, most, .. } if least == 0.0 && most == 1.0)
    }

    /// The heights of a sample that is typed, cm: the first figure of each row.
    pub(crate) fn first_figures(&self) -> Vec<f64> {
        let value = self.value();
        let rows = value.split(rows::BETWEEN).filter_map(|row| row.split_whitespace().next());
        rows.filter_map(|first| match rows::value_of(first) {
            Value::Number(number) => number.as_f64(),
            _ => None,
        })
        .collect()
    }
}

/// A part of one as people say it: `60`, `60 %`, `0.6`, `0,6`; what is above one is percent.
pub(crate) fn share_of(typed: &str) -> Option<f64> {
    let typed = typed.trim().replace(',', ".");
    let (figure, is_percent) = match typed.strip_suffix('%') {
        Some(figure) => (figure.trim_end(), true),
        None => (typed.as_str(), false),
    };
    let number: f64 = figure.parse().ok()?;
    Some(if is_percent || number > 1.0 { number / 100.0 } else { number })
}

#[cfg(test)]
mod tests {
    use super::share_of;

    #[test]
    fn a_share_is_read_as_people_say_it() {
        for said in ["60", "60 %", "60%", "0.6", "0,6", "60,0"] {
            assert_eq!(share_of(said), Some(0.6), "{said}");
        }
        assert_eq!(share_of("1"), Some(1.0));
        assert_eq!(share_of("0.5 %"), Some(0.005));
        assert_eq!(share_of("bright"), None);
    }
}
