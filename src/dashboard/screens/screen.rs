//! What every screen can do.

use std::sync::Arc;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::named::named_in;
use crate::dashboard::act::{Act, AtStop, WhyOf};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::form::Form;
use crate::dashboard::keys::{Key, KeyLine};
use crate::nursery::entry::Entry;
use crate::nursery::entry::subject::Subject;

/// What every screen can do.
pub(crate) trait Screen {
    /// Its keys, beside those that mean the same everywhere.
    fn keys(&self, cx: &ScreenContext<'_>) -> Vec<KeyLine>;

    /// What it answers, for its first line.
    fn answers(&self, cx: &ScreenContext<'_>) -> String;

    /// Signs that stand in it without a word beside them, each with what it means.
    fn signs(&self, _cx: &ScreenContext<'_>) -> Vec<(String, String)> {
        Vec::new()
    }

    /// Takes a key; none where the key means nothing here.
    fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Option<Vec<Act>>;

    /// Whether `q` goes back within the screen; otherwise it asks whether to leave.
    fn goes_back(&self, _cx: &ScreenContext<'_>) -> bool {
        false
    }

    /// Whether letters that are pressed are text, and no keys.
    fn types_text(&self) -> bool {
        false
    }

    /// Takes text that came at once; none where there is no field for it, and the text is then looked for.
    fn text(&mut self, _text: &str, _cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        None
    }

    /// Draws it.
    fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer);

    /// What is chosen: forms begin with it.
    fn chosen(&self, cx: &ScreenContext<'_>) -> Option<Subject>;

    /// What `y` gives the reasons of.
    fn why(&self, cx: &ScreenContext<'_>) -> Option<WhyOf> {
        self.chosen(cx).map(WhyOf::About)
    }

    /// Chooses what is shown of a subject; false where it is not shown here.
    fn go_to(&mut self, _subject: &Subject, _cx: &ScreenContext<'_>) -> bool {
        false
    }

    /// A line was tapped: what it names is chosen; false where it names nothing that is shown here.
    fn tap(&mut self, line: &str, cx: &ScreenContext<'_>) -> bool {
        named_in(line, cx).is_some_and(|subject| self.go_to(&subject, cx))
    }

    /// What is chosen, so exactly that a second tap on it is known.
    fn choice(&self, cx: &ScreenContext<'_>) -> Option<String> {
        self.chosen(cx).map(|subject| format!("{subject:?}"))
    }

    /// Something was written from a form that the screen opened; `stop` is what it gave the form.
    fn written(&mut self, _stop: &AtStop, _cx: &ScreenContext<'_>) -> Vec<Act> {
        Vec::new()
    }

    /// A form of a kind that the screen opened is handed to the clerk; `said` is what it says in a few words.
    fn handed_in(&mut self, _stop: &AtStop, _kind: &str, _said: &str, _cx: &ScreenContext<'_>) -> Vec<Act> {
        Vec::new()
    }

    /// What was handed in was refused, and the form came back.
    fn came_back(&mut self, _stop: &AtStop, _cx: &ScreenContext<'_>) -> Vec<Act> {
        Vec::new()
    }

    /// Entries were taken back.
    fn taken_back(&mut self, _entries: &[Arc<Entry>], _cx: &ScreenContext<'_>) -> Vec<Act> {
        Vec::new()
    }

    /// Draws a form that the screen opened in its own way; false where it is drawn as any form.
    fn draw_form(&self, _form: &Form, _cx: &ScreenContext<'_>, _area: Rect, _buffer: &mut Buffer) -> bool {
        false
    }

    /// The book was drawn again, or the screen is shown: what is gone is no longer chosen, what is missing is asked for.
    fn refresh(&mut self, cx: &ScreenContext<'_>) -> Vec<Act>;

    /// Takes back what it had kept on disk.
    fn resume(&mut self, _kept: &str, _cx: &ScreenContext<'_>) {}
}
