//! Everything that can be written down, found by its word.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::heading::heading_and_line;
use crate::base::text::folded;
use crate::dashboard::act::{Act, FormFor, KeptForm};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::form::begun;
use crate::dashboard::keys::Key;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Column, Row, Sheet, Table, Typed};
use crate::nursery::entry::all_kinds;
use crate::nursery::entry::subject::Subject;
use crate::wording::Wording;

/// Kinds that no form writes: an entry is taken back on the Journal, which says in words what that undoes.
const NOT_BY_FORM: [&str; 1] = ["withdrawn"];

/// The picker.
#[derive(Clone, Debug)]
pub(crate) struct Kinds {
    typed: Typed,
    at: usize,
    about: Option<Subject>,
    kept: Option<KeptForm>,
    /// Why a line was not taken, and the lines that may be meant.
    not_taken: Option<(String, Vec<MeantLine>)>,
    /// Whether the line that is typed was handed in to be read, and no answer came yet.
    reading: bool,
}

/// A line that may be meant, and its form where something of it is missing.
type MeantLine = (String, Option<KeptForm>);

/// A line of the picker.
enum Choice<'a> {
    GoOn(&'a KeptForm),
    Kind(&'static str),
}

/// What a new book is begun with, in this order. Ours.
const FIRST_IN_A_BOOK: [&str; 6] = ["plants_received", "sown", "lot_received", "bed_set", "place_set", "container_set"];

/// What stands for a field that a person has to fill in.
const LEFT_OPEN: &str = "=...";
/// Lines of a page of the list.
const PAGE: isize = 8;
/// So many letters an ending may have.
const ENDING: usize = 3;
/// So many letters of a word are enough to know it by, whatever its ending.
const STEM: usize = 4;

/// Whether what is typed begins with a whole everyday word.
fn is_begun_by(word: &str, wanted: &str) -> bool {
    word.chars().count() >= STEM && wanted.starts_with(word)
}

/// Whether two words are one with another ending: "deshijamos" and "deshije", "weeding" and "weeded".
fn has_another_ending(word: &str, wanted: &str) -> bool {
    let alike = word.chars().zip(wanted.chars()).take_while(|(one, other)| one == other).count();
    alike > STEM && word.chars().count() <= alike + ENDING && wanted.chars().count() <= alike + ENDING
}

impl Kinds {
    /// Opens the picker; forms begin with what is chosen, and a half-filled one is offered first.
    pub(crate) fn new(about: Option<Subject>, kept: Option<KeptForm>) -> Kinds {
        Kinds { typed: Typed::default(), at: 0, about, kept, not_taken: None, reading: false }
    }

    /// A line that was typed is not taken as it is: why, and the lines that may be meant.
    pub(crate) fn not_taken(&mut self, sentence: String, meant: Vec<MeantLine>) {
        if std::mem::take(&mut self.reading) {
            self.at = 0;
            self.not_taken = Some((sentence, meant));
        }
    }

    /// Whether a line was handed in to be read, and no answer came yet.
    pub(crate) fn reads(&self) -> bool {
        self.reading
    }

    /// Whether what is typed is a line in a person's own words: words with a number among them, with a name of the book, or
    /// that say it of everything.
    fn is_line(&self, cx: &ScreenContext<'_>) -> bool {
        const EVERYTHING: [&str; 8] = ["todo", "toda", "todos", "todas", "all", "everything", "nada", "nothing"];
        let text = self.typed.text();
        let said = folded(&text).replace('-', " ");
        let says = |name: &str| format!(" {said} ").contains(&format!(" {} ", folded(name).replace('-', " ")));
        let picture = &cx.book.picture;
        let is_named = || {
            picture.trays.keys().any(|code| says(code.as_str()))
                || picture.beds.keys().any(|bed| says(bed.as_str()))
                || picture.site.places.keys().any(|place| says(place.as_str()))
        };
        let has_number = text.contains(|letter: char| letter.is_ascii_digit());
        text.trim().contains(' ') && (has_number || EVERYTHING.iter().any(|word| says(word)) || is_named())
    }

    /// What Enter does with a line: it is read, or the chosen one of those that may be meant, or taken to be filled in.
    fn read_line(&mut self) -> Vec<Act> {
        let chosen = self.not_taken.take().and_then(|(_, meant)| meant.into_iter().nth(self.at));
        if let Some((chosen, form)) = chosen {
            self.at = 0;
            // What is still missing is asked for in the form, field by field.
            if let Some(form) = form {
                return vec![Act::Close, Act::Fill(form)];
            }
            self.typed = Typed::of(&chosen);
            if chosen.contains(LEFT_OPEN) {
                return Vec::new();
            }
        }
        // A second Enter before the answer reads nothing twice.
        if std::mem::replace(&mut self.reading, true) { Vec::new() } else { vec![Act::Line(self.typed.text())] }
    }

    fn choices(&self, cx: &ScreenContext<'_>) -> Vec<Choice<'_>> {
        if self.is_line(cx) {
            return Vec::new();
        }
        let wanted = folded(&self.typed.text());
        let fitting = |wording: &Wording| -> Vec<(u8, usize, &'static str)> {
            let kinds = all_kinds().enumerate().filter(|(_, known)| !NOT_BY_FORM.contains(&known.kind));
            kinds.filter_map(|(i, known)| Some((self.rank(known.kind, &wanted, wording, cx)?, i, known.kind))).collect()
        };
        let mut fits = fitting(cx.wording);
        // Helpers of two languages share a screen: what one does not know the other may.
        if fits.is_empty() && !wanted.is_empty() {
            fits = fitting(&Wording::new(cx.wording.lang().other()));
        }
        fits.sort();
        let kept = self.kept.as_ref().filter(|_| wanted.is_empty()).map(Choice::GoOn);
        kept.into_iter().chain(fits.into_iter().map(|(_, _, kind)| Choice::Kind(kind))).collect()
    }

    /// How well a kind fits what is typed: its word begins so, holds it, or a field of it does; what is chosen comes first
    /// while nothing is typed.
    fn rank(&self, kind: &'static str, wanted: &str, wording: &Wording, cx: &ScreenContext<'_>) -> Option<u8> {
        let name = folded(&wording.kind_name(kind));
        if wanted.is_empty() && cx.book.picture.trays.is_empty() {
            // A book begins with what stands there already, then seed, then where it is.
            let place = FIRST_IN_A_BOOK.iter().position(|first| *first == kind).unwrap_or(FIRST_IN_A_BOOK.len());
            return u8::try_from(place).ok();
        }
        if wanted.is_empty() {
            let about = FormFor::about(kind, self.about.as_ref());
            return Some(if about.preset.is_empty() { 1 } else { 0 });
        }
        let begins = name.split('-').any(|word| word.starts_with(wanted)) || name.starts_with(wanted);
        if begins {
            Some(0)
        } else if name.contains(wanted) || folded(kind).contains(wanted) {
            Some(1)
        } else {
            let also = folded(&wording.kind_also(kind));
            let words = || also.split(['-', ' ']).chain(name.split('-'));
            let rank = |word: &str| match word {
                _ if word.starts_with(wanted) => Some(2),
                _ if is_begun_by(word, wanted) => Some(3),
                _ if has_another_ending(word, wanted) => Some(4),
                _ => None,
            };
            words().filter_map(rank).min()
        }
    }

    /// Takes a key.
    pub(crate) fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Vec<Act> {
        match key {
            Key::Esc => return vec![Act::Close],
            Key::Up => self.step(-1, cx),
            Key::Down | Key::Tab => self.step(1, cx),
            Key::PageUp => self.step(-PAGE, cx),
            Key::PageDown => self.step(PAGE, cx),
            Key::Char(',') if self.typed.is_empty() => self.step(-PAGE, cx),
            Key::Char('.') if self.typed.is_empty() => self.step(PAGE, cx),
            Key::Enter if self.is_line(cx) => return self.read_line(),
            Key::Enter => {
                let chosen = match self.choices(cx).into_iter().nth(self.at) {
                    Some(Choice::GoOn(kept)) => Some(Act::TakeUp(kept.clone())),
                    Some(Choice::Kind(kind)) => Some(Act::Form(begun(kind, self.about.as_ref(), cx))),
                    None => None,
                };
                return chosen.map_or_else(Vec::new, |act| vec![Act::Close, act]);
            }
            other => {
                self.typed.press(other);
                self.changed();
            }
        }
        Vec::new()
    }

    fn step(&mut self, by: isize, cx: &ScreenContext<'_>) {
        let meant = self.not_taken.as_ref().map_or(0, |(_, meant)| meant.len());
        let last = self.choices(cx).len().max(meant).saturating_sub(1);
        self.at = self.at.saturating_add_signed(by).min(last);
    }

    fn changed(&mut self) {
        self.at = 0;
        self.not_taken = None;
        self.reading = false;
    }

    /// Takes text that came at once.
    pub(crate) fn text(&mut self, text: &str) -> Vec<Act> {
        self.typed.insert(text);
        self.changed();
        Vec::new()
    }

    /// Draws it.
    pub(crate) fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        let rest = heading_and_line(&cx.wording.kinds_title(), &self.typed, area, buffer);
        let choices = self.choices(cx);
        if self.is_line(cx) {
            self.draw_line(cx, rest, buffer);
            return;
        }
        if choices.is_empty() {
            let mut page = Sheet::new(rest.width);
            page.paragraph(&cx.wording.kinds_none(), Ink::Plain);
            page.draw(0, rest, buffer);
            return;
        }
        let rows = choices
            .iter()
            .map(|choice| {
                let name = match choice {
                    Choice::GoOn(kept) => cx.wording.kinds_go_on(cx.wording.kind_name(&kept.kind)),
                    Choice::Kind(kind) => cx.wording.kind_name(kind),
                };
                Row::Cells(vec![(name, Ink::Plain)])
            })
            .collect();
        Table { columns: vec![Column::words("", 0, 60)], rows, chosen: Some(self.at) }.draw(rest, buffer);
    }

    fn draw_line(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        let mut page = Sheet::new(area.width);
        let Some((sentence, meant)) = &self.not_taken else {
            page.paragraph(&cx.wording.kinds_line(), Ink::Plain);
            page.draw(0, area, buffer);
            return;
        };
        page.paragraph(sentence, Ink::Waits);
        for (at, (line, _)) in meant.iter().enumerate() {
            let mark = if at == self.at { "> " } else { "  " };
            page.paragraph(&format!("{mark}{line}"), if at == self.at { Ink::Strong } else { Ink::Plain });
        }
        page.draw(0, area, buffer);
    }
}
