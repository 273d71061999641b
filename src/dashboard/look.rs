//! How things look: the terminal's own sixteen colours, marks beside every word, and what becomes of both without
//! colour or without more than ASCII. The last step before a frame is shown, [`Look::finish`], sees every cell.

use ratatui::buffer::Buffer;
use ratatui::style::{Color, Modifier, Style};

use crate::base::text::{cleaned, has_unseen, in_ascii};
use crate::reckon::picture::answered::Answered;
use crate::reckon::picture::{Stage, Standing};

/// How the screen is coloured.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Inks {
    /// The terminal's own sixteen colours.
    Sixteen,
    /// None; bold, reverse and underline stay.
    Mono,
    /// None, and whatever is stressed is bold: for sunlight.
    HighContrast,
}

/// How the screen is drawn.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Look {
    /// Colours.
    pub inks: Inks,
    /// Whether colours were allowed at the start, so that high contrast can be left again.
    pub colour_allowed: bool,
    /// Only ASCII.
    pub ascii: bool,
}

/// What a piece of text is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Ink {
    /// Plain text.
    Plain,
    /// A heading, or the figure that counts.
    Strong,
    /// What can be done or can go: the accent.
    Good,
    /// What waits, or asks for care.
    Waits,
    /// Loss and danger.
    Danger,
    /// What is chosen.
    Chosen,
    /// What stands in the background but must be read all the same: never dimmed.
    Quiet,
}

impl Ink {
    /// Its style in the terminal's own colours. Text that matters keeps the terminal's own foreground; colour is for
    /// marks and a few words.
    pub fn style(self) -> Style {
        match self {
            Ink::Plain | Ink::Quiet => Style::new(),
            Ink::Strong => Style::new().add_modifier(Modifier::BOLD),
            Ink::Good => Style::new().fg(Color::Blue).add_modifier(Modifier::BOLD),
            Ink::Waits => Style::new().fg(Color::Yellow).add_modifier(Modifier::BOLD),
            Ink::Danger => Style::new().fg(Color::Red).add_modifier(Modifier::BOLD),
            Ink::Chosen => Style::new().add_modifier(Modifier::REVERSED),
        }
    }
}

/// The mark and ink of a stage; the mark stands beside its word.
pub fn stage_mark(stage: Stage) -> (&'static str, Ink) {
    match stage {
        Stage::Sown => (".", Ink::Plain),
        Stage::Emerging => (",", Ink::Plain),
        Stage::PrickedOut => ("i", Ink::Plain),
        Stage::GrowingOn => ("I", Ink::Plain),
        Stage::Hardening => ("H", Ink::Waits),
        Stage::Ready => ("●", Ink::Good),
        Stage::Overdue => ("▲", Ink::Danger),
        Stage::Spent => (" ", Ink::Plain),
    }
}

/// The mark and ink of a bed's standing; the mark stands beside its word.
pub fn standing_mark(standing: Standing) -> (&'static str, Ink) {
    match standing {
        Standing::Bare => ("_", Ink::Plain),
        Standing::Nursing => ("n", Ink::Waits),
        Standing::Open => ("○", Ink::Good),
        Standing::Dry => ("d", Ink::Waits),
        Standing::Full => ("■", Ink::Plain),
        Standing::Refill => ("+", Ink::Good),
    }
}

/// The mark and ink of a question; the mark stands beside its words.
pub fn answered_mark(answered: Answered) -> (&'static str, Ink) {
    let ink = match answered {
        Answered::HoldsBack | Answered::UnknownHoldsBack => Ink::Danger,
        Answered::Warns => Ink::Waits,
        Answered::Met => Ink::Good,
        Answered::Unmet | Answered::Unknown => Ink::Plain,
    };
    (answered.mark(), ink)
}

impl Look {
    /// What the terminal gave at the start.
    pub fn new(colour_allowed: bool, ascii: bool) -> Look {
        Look { inks: if colour_allowed { Inks::Sixteen } else { Inks::Mono }, colour_allowed, ascii }
    }

    /// To high contrast, and back.
    pub fn toggle_contrast(&mut self) {
        self.inks = match self.inks {
            Inks::HighContrast if self.colour_allowed => Inks::Sixteen,
            Inks::HighContrast => Inks::Mono,
            Inks::Sixteen | Inks::Mono => Inks::HighContrast,
        };
    }

    /// The last step before a frame is shown: nothing unseen reaches the terminal, colours and letters are those allowed.
    pub fn finish(self, buffer: &mut Buffer) {
        for cell in &mut buffer.content {
            if has_unseen(cell.symbol()) {
                let shown = cleaned(cell.symbol());
                cell.set_symbol(if shown.is_empty() { " " } else { &shown });
            }
            if self.ascii && !cell.symbol().is_ascii() {
                let plain = in_ascii(cell.symbol());
                cell.set_symbol(&plain);
            }
            match self.inks {
                Inks::Sixteen => {}
                Inks::Mono | Inks::HighContrast => {
                    if self.inks == Inks::HighContrast && cell.fg != Color::Reset {
                        cell.modifier.insert(Modifier::BOLD);
                    }
                    cell.fg = Color::Reset;
                    cell.bg = Color::Reset;
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use ratatui::layout::Rect;

    fn one_line(text: &str, style: Style) -> Buffer {
        let mut buffer = Buffer::empty(Rect::new(0, 0, 12, 1));
        buffer.set_string(0, 0, text, style);
        buffer
    }

    #[test]
    fn nothing_unseen_reaches_the_terminal() {
        let mut buffer = Buffer::empty(Rect::new(0, 0, 3, 1));
        buffer.content[0].set_symbol("\u{1b}]52;c;x\u{7}");
        buffer.content[1].set_symbol("a\u{202e}");
        buffer.content[2].set_symbol("\u{e0041}");
        Look::new(true, false).finish(&mut buffer);
        let shown: Vec<&str> = buffer.content.iter().map(|cell| cell.symbol()).collect();
        assert_eq!(shown, ["]52;c;x", "a", " "]);
    }

    #[test]
    fn without_colour_bold_and_reverse_stay() {
        let mut buffer = one_line("due", Ink::Danger.style());
        Look::new(false, false).finish(&mut buffer);
        assert_eq!(buffer.content[0].fg, Color::Reset);
        assert!(buffer.content[0].modifier.contains(Modifier::BOLD));
    }

    #[test]
    fn in_ascii_every_cell_is_ascii() {
        let mut buffer = one_line("ñandú ● ▲ –", Style::new());
        Look::new(true, true).finish(&mut buffer);
        assert!(buffer.content.iter().all(|cell| cell.symbol().is_ascii() && cell.symbol().len() == 1));
    }

    #[test]
    fn every_stage_and_standing_has_a_mark_of_its_own() {
        let stages =
            [Stage::Sown, Stage::Emerging, Stage::PrickedOut, Stage::GrowingOn, Stage::Hardening, Stage::Ready];
        let marks: std::collections::BTreeSet<_> = stages.iter().map(|stage| stage_mark(*stage).0).collect();
        assert_eq!(marks.len(), stages.len());
    }
}
