//! The screen `journal`.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::Screen;
use crate::dashboard::keys::{Key, KeyLine};
use crate::dashboard::message::Act;
use crate::dashboard::model::On;
use crate::nursery::entry::subject::Subject;

/// The screen.
#[derive(Debug, Default)]
pub struct Journal {}

impl Screen for Journal {
    fn keys(&self, _on: &On<'_>) -> Vec<KeyLine> {
        Vec::new()
    }

    fn answers(&self, on: &On<'_>) -> String {
        on.wording.answers_journal()
    }

    fn press(&mut self, _key: Key, _on: &On<'_>) -> Option<Vec<Act>> {
        None
    }

    fn draw(&self, _on: &On<'_>, _area: Rect, _buffer: &mut Buffer) {}

    fn chosen(&self, _on: &On<'_>) -> Option<Subject> {
        None
    }

    fn refresh(&mut self, _on: &On<'_>) -> Vec<Act> {
        Vec::new()
    }
}
