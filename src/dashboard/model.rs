//! Everything the screen knows.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::act::{KeptForm, ScreenName};
use super::context::{Book, Notice, ScreenContext};
use super::form::Form;
use super::layer::Layer;
use super::look::{Ink, Look};
use super::screens::Screens;
use crate::base::Day;
use crate::wording::Wording;

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
