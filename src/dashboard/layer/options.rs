//! What can be switched: language, contrast, plain characters, reading only, the mouse, the handbook alone.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use crate::dashboard::act::{Act, Switch};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::Key;
use crate::dashboard::look::{Ink, Inks};
use crate::dashboard::parts::Sheet;
use crate::reckon::forecast::ForecastBasis;

/// The options.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Options {
    /// Whether the mouse is on.
    pub(crate) mouse: bool,
    /// Whether a person switched writing off.
    pub(crate) read_only: bool,
}

/// Each option with its key.
const OPTIONS: [(char, Switch); 6] = [
    ('l', Switch::Lang),
    ('c', Switch::Contrast),
    ('a', Switch::Ascii),
    ('r', Switch::ReadOnly),
    ('m', Switch::Mouse),
    ('h', Switch::Handbook),
];

impl Options {
    /// Takes a key.
    pub(crate) fn press(&mut self, key: Key) -> Vec<Act> {
        if key.goes_back() || matches!(key, Key::Enter | Key::Char('z')) {
            return vec![Act::Close];
        }
        let Key::Char(letter) = key else { return Vec::new() };
        let Some((_, switch)) = OPTIONS.iter().find(|(key, _)| *key == letter) else { return Vec::new() };
        match switch {
            Switch::Mouse => self.mouse = !self.mouse,
            Switch::ReadOnly => self.read_only = !self.read_only,
            Switch::Lang | Switch::Contrast | Switch::Ascii | Switch::Handbook => {}
        }
        vec![Act::Switch(*switch)]
    }

    /// Draws them.
    pub(crate) fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        let wording = cx.wording;
        let mut page = Sheet::new(area.width);
        page.heading(&wording.options_title());
        page.gap();
        let on_off = |is: bool| if is { wording.option_on() } else { wording.option_off() };
        for (key, switch) in OPTIONS {
            let (name, now) = match switch {
                Switch::Lang => (wording.option_lang(), wording.lang().code().to_string()),
                Switch::Contrast => (wording.option_contrast(), on_off(cx.look.inks == Inks::HighContrast)),
                Switch::Ascii => (wording.option_ascii(), on_off(cx.look.ascii)),
                Switch::ReadOnly => (wording.option_read_only(), on_off(self.read_only)),
                Switch::Mouse => (wording.option_mouse(), on_off(self.mouse)),
                Switch::Handbook => {
                    (wording.option_handbook(), on_off(cx.book.forecast_basis == ForecastBasis::Handbook))
                }
            };
            page.hanging(&format!("{}  ", wording.letter_of(key)), Ink::Strong, &format!("{name}: {now}"), Ink::Plain);
        }
        page.draw(0, area, buffer);
    }
}
