//! What lies over a screen: forms, reasons, help, finding, and what is asked before something is done.

mod confirm;
mod day;
mod find;
mod heading;
mod help;
mod kinds;
mod leaving;
mod news;
mod options;
mod why;

pub(crate) use confirm::Confirm;
pub(crate) use day::{AskDay, DayFor};
pub(crate) use find::Find;
pub(crate) use help::Help;
pub(crate) use kinds::Kinds;
pub(crate) use leaving::Leaving;
pub(crate) use news::{News, news_words};
pub(crate) use options::Options;
pub(crate) use why::Why;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::act::Act;
use super::context::ScreenContext;
use super::form::Form;
use super::keys::Key;

/// What lies over a screen.
pub(crate) enum Layer {
    /// A form.
    Form(Box<Form>),
    /// What can be written down.
    Kinds(Kinds),
    /// Finding.
    Find(Find),
    /// Keys.
    Help(Help),
    /// Reasons.
    Why(Why),
    /// A day to look at, or of what is written.
    Day(AskDay),
    /// What changed.
    News(News),
    /// What can be switched.
    Options(Options),
    /// Before taking back.
    Confirm(Confirm),
    /// Before the program is left.
    Leaving(Leaving),
}

/// Whether what is pressed is text.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Typing {
    /// It is a command.
    Not,
    /// It begins a line, which the key that goes back leaves while it is empty.
    NothingYet,
    /// It is text.
    Text,
}

impl Layer {
    /// Whether what is pressed is text.
    pub(crate) fn typing(&self) -> Typing {
        match self {
            // Codes and words begin with any letter.
            Layer::Form(_) | Layer::Kinds(_) | Layer::Find(_) => Typing::Text,
            // No day begins with the key that goes back.
            Layer::Day(day) if day.is_empty() => Typing::NothingYet,
            Layer::Day(_) => Typing::Text,
            Layer::Help(help) if help.searches() => Typing::Text,
            Layer::Help(_)
            | Layer::Why(_)
            | Layer::News(_)
            | Layer::Options(_)
            | Layer::Confirm(_)
            | Layer::Leaving(_) => Typing::Not,
        }
    }

    /// Takes a key. A layer takes every key while it is open.
    pub(crate) fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Vec<Act> {
        match self {
            Layer::Form(form) => form.press(key, cx),
            Layer::Kinds(kinds) => kinds.press(key, cx),
            Layer::Find(find) => find.press(key, cx),
            Layer::Help(help) => help.press(key, cx),
            Layer::Why(why) => why.press(key, cx),
            Layer::Day(day) => day.press(key, cx),
            Layer::News(news) => news.press(key, cx),
            Layer::Options(options) => options.press(key),
            Layer::Confirm(confirm) => confirm.press(key),
            Layer::Leaving(_) => Leaving::press(key),
        }
    }

    /// Takes text that came at once; a layer without a field for it leaves it out.
    pub(crate) fn text(&mut self, text: &str, cx: &ScreenContext<'_>) -> Vec<Act> {
        match self {
            Layer::Form(form) => form.text(text),
            Layer::Kinds(kinds) => kinds.text(text),
            Layer::Find(find) => find.text(text, cx),
            Layer::Help(help) => help.text(text),
            Layer::Day(day) => day.text(text),
            Layer::Why(_) | Layer::News(_) | Layer::Options(_) | Layer::Confirm(_) | Layer::Leaving(_) => Vec::new(),
        }
    }

    /// Draws it.
    pub(crate) fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        match self {
            Layer::Form(form) => form.draw(cx, area, buffer),
            Layer::Kinds(kinds) => kinds.draw(cx, area, buffer),
            Layer::Find(find) => find.draw(cx, area, buffer),
            Layer::Help(help) => help.draw(cx, area, buffer),
            Layer::Why(why) => why.draw(cx, area, buffer),
            Layer::Day(day) => day.draw(cx, area, buffer),
            Layer::News(news) => news.draw(cx, area, buffer),
            Layer::Options(options) => options.draw(cx, area, buffer),
            Layer::Confirm(confirm) => confirm.draw(cx, area, buffer),
            Layer::Leaving(_) => Leaving::draw(cx, area, buffer),
        }
    }
}
