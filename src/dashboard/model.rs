//! Everything the screen knows.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::act::{KeptForm, ScreenName};
use super::context::{Book, Notice, ScreenContext};
use super::form::Form;
use super::keys::Key;
use super::layer::{Layer, Typing};
use super::look::{Ink, Look};
use super::screens::Screens;
use crate::base::Day;
use crate::wording::Wording;

/// What is meant by a key that is pressed.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Meant {
    /// This key of the key table.
    Key(Key),
    /// A letter as text.
    Text(char),
}

/// Everything the screen knows.
pub(crate) struct Model {
    /// The book.
    pub(crate) book: Book,
    /// The sentences.
    pub(crate) wording: Arc<Wording>,
    /// The look.
    pub(crate) look: Look,
    /// Columns and rows.
    pub(crate) size: (u16, u16),
    /// The screen that is shown.
    pub(crate) at: ScreenName,
    /// The screens.
    pub(crate) screens: Screens,
    /// What lies over the screen, the uppermost last.
    pub(crate) layers: Vec<Layer>,
    /// The line of messages.
    pub(crate) notice: Option<Notice>,
    /// The day for what is written, where it is not today.
    pub(crate) writing_day: Option<Day>,
    /// Whether a person switched writing off.
    pub(crate) read_only: bool,
    /// Whether the mouse is on.
    pub(crate) mouse: bool,
    /// Forms handed to the clerk and not answered yet.
    pub(crate) pending: BTreeMap<u64, Form>,
    /// Forms that were left half-filled, by the name they are kept under.
    pub(crate) kept: BTreeMap<String, KeptForm>,
    /// The number of the next request.
    pub(crate) next_ticket: u64,
    /// Who writes.
    pub(crate) who: String,
    /// The file of the nursery, as it is named where there is trouble with it.
    pub(crate) file: String,
}

impl Model {
    /// What screens and layers are handed.
    pub(crate) fn context(&self) -> ScreenContext<'_> {
        ScreenContext {
            book: &self.book,
            wording: &self.wording,
            look: self.look,
            writing_day: self.writing_day,
            read_only: self.cannot_write(),
            size: self.size,
            who: &self.who,
        }
    }

    /// What is meant by a key that is pressed: where text is typed a letter is that letter, elsewhere the one whose work
    /// it does since a person moved it.
    pub(crate) fn meant(&self, key: Key) -> Meant {
        let Key::Char(pressed) = key else { return Meant::Key(key) };
        let meant = self.wording.letters().meant_by(pressed);
        let typing = match self.layers.last() {
            Some(layer) => layer.typing(),
            None if self.screens.at(self.at).types_text() => Typing::Text,
            None => Typing::Not,
        };
        match typing {
            Typing::Not => Meant::Key(Key::Char(meant)),
            Typing::Text => Meant::Key(key),
            // An empty line is left by the key that goes back; every other letter begins it.
            Typing::NothingYet if Key::Char(meant).goes_back() => Meant::Key(Key::Char(meant)),
            Typing::NothingYet if key.goes_back() => Meant::Text(pressed),
            Typing::NothingYet => Meant::Key(key),
        }
    }

    /// Whether nothing can be written: the file, or a person, says so.
    pub(crate) fn cannot_write(&self) -> bool {
        self.read_only || self.book.read_only_file
    }

    /// A number for the next request.
    pub(crate) fn ticket(&mut self) -> u64 {
        self.next_ticket += 1;
        self.next_ticket
    }

    /// Says something in the line of messages.
    pub(crate) fn say(&mut self, text: impl Into<String>, ink: Ink) {
        self.notice = Some(Notice { text: text.into(), ink });
    }
}
