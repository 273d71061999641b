//! How things look: the terminal's own sixteen colours, marks beside every word, and what becomes of both without
//! colour or without more than ASCII. The last step before a frame is shown, [`Look::finish`], sees every cell.

use ratatui::buffer::Buffer;
use ratatui::style::{Color, Modifier, Style};

use crate::base::text::{cleaned, has_unseen, in_ascii};
use crate::reckon::picture::answered::Answered;
use crate::reckon::picture::{Stage, Standing};

/// How the screen is coloured.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Inks {
    /// The terminal's own sixteen colours.
    Sixteen,
    /// None; bold, reverse and underline stay.
    Mono,
    /// None, and whatever is stressed is bold: for sunlight.
    HighContrast,
}

/// How the screen is drawn.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Look {
    /// Colours.
    pub(crate) inks: Inks,
    /// Whether colours were allowed at the start, so that high contrast can be left again.
    pub(crate) colour_allowed: bool,
    /// Only ASCII.
    pub(crate) ascii: bool,
}

/// What a piece of text is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Ink {
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
    /// Its style while a frame is drawn. The colour says what is meant; [`Look::finish`] makes of it what can be read on a
    /// dark, a light and a Solarized ground.
    pub(crate) fn style(self) -> Style {
        let meant = |colour| Style::new().fg(colour).add_modifier(Modifier::BOLD);
        match self {
            Ink::Plain | Ink::Quiet => Style::new(),
            Ink::Strong => Style::new().add_modifier(Modifier::BOLD),
            Ink::Good => meant(GOOD),
            Ink::Waits => meant(WAITS),
            Ink::Danger => meant(DANGER),
            Ink::Chosen => Style::new().add_modifier(Modifier::REVERSED),
        }
    }
}

impl Ink {
    /// The style of a mark that stands among others without blanks between: a tile of its colour where it has one.
    pub(crate) fn tile(self) -> Style {
        let tile = tile_of(self.style().fg.unwrap_or(Color::Reset));
        tile.map_or_else(|| self.style(), |(sign, ground)| Style::new().fg(sign).bg(ground))
    }
}

/// The sign and the ground of a tile for a colour of meaning.
fn tile_of(meant: Color) -> Option<(Color, Color)> {
    match meant {
        GOOD => Some((Color::Black, GOOD)),
        WAITS => Some((Color::Black, WAITS)),
        DANGER => Some((Color::White, DANGER)),
        _ => None,
    }
}

/// What can be done or can go.
const GOOD: Color = Color::Green;
/// What waits, or asks for care.
const WAITS: Color = Color::Yellow;
/// Loss and danger.
const DANGER: Color = Color::Red;
/// Letters that are marks; every other sign that stands alone is one.
const LETTER_MARKS: &str = "HndxiI";

/// Marks become small tiles of their colour with a sign that is read on it; words keep the terminal's own foreground, bold,
/// and only those of danger are red, which is read on every ground. Of text in the other colours none is: yellow and
/// green fade on white, blue on black, and bold greens, yellows and blues are greys in Solarized.
fn on_any_ground(buffer: &mut Buffer) {
    let width = usize::from(buffer.area.width).max(1);
    for row in buffer.content.chunks_mut(width) {
        let mut before = Color::Reset;
        for at in 0..row.len() {
            let alone = row.get(at + 1).is_none_or(|next| next.symbol().trim().is_empty());
            let Some(cell) = row.get_mut(at) else { continue };
            let meant = cell.fg;
            let begins = meant != before;
            before = meant;
            let Some((sign, ground)) = tile_of(meant) else { continue };
            if begins && alone && is_mark(cell.symbol()) {
                (cell.fg, cell.bg) = (sign, ground);
                // A bold black would be grey.
                cell.modifier.remove(Modifier::BOLD);
            } else if meant != DANGER {
                cell.fg = Color::Reset;
            }
        }
    }
}

fn is_mark(symbol: &str) -> bool {
    let mut letters = symbol.chars();
    let one = letters.next().filter(|letter| !letter.is_whitespace() && letters.next().is_none());
    one.is_some_and(|letter| !letter.is_alphanumeric() || LETTER_MARKS.contains(letter))
}

/// The mark and ink of a stage; the mark stands beside its word.
pub(crate) fn stage_mark(stage: Stage) -> (&'static str, Ink) {
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
pub(crate) fn standing_mark(standing: Standing) -> (&'static str, Ink) {
    match standing {
        Standing::Bare => ("_", Ink::Plain),
        Standing::Nursing => ("n", Ink::Waits),
        Standing::Open => ("○", Ink::Good),
        Standing::Dry => ("d", Ink::Waits),
        Standing::Soaked => ("w", Ink::Waits),
        Standing::Full => ("■", Ink::Plain),
        Standing::Refill => ("+", Ink::Good),
    }
}

/// The mark and ink of a question; the mark stands beside its words.
pub(crate) fn answered_mark(answered: Answered) -> (&'static str, Ink) {
    let ink = match answered {
        Answered::HoldsBack | Answered::UnknownHoldsBack => Ink::Danger,
        Answered::Warns => Ink::Waits,
        // What is as it should be is most of it, and no colour calls for it.
        Answered::Met | Answered::Unmet | Answered::Unknown => Ink::Plain,
    };
    (answered.mark(), ink)
}

impl Look {
    /// What the terminal gave at the start.
    pub(crate) fn new(colour_allowed: bool, ascii: bool) -> Look {
        Look { inks: if colour_allowed { Inks::Sixteen } else { Inks::Mono }, colour_allowed, ascii }
    }

    /// To high contrast, and back.
    pub(crate) fn toggle_contrast(&mut self) {
        self.inks = match self.inks {
            Inks::HighContrast if self.colour_allowed => Inks::Sixteen,
            Inks::HighContrast => Inks::Mono,
            Inks::Sixteen | Inks::Mono => Inks::HighContrast,
        };
    }

    /// The last step before a frame is shown: nothing unseen reaches the terminal, colours and letters are those allowed.
    pub(crate) fn finish(self, buffer: &mut Buffer) {
        if self.inks == Inks::Sixteen {
            on_any_ground(buffer);
        }
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

    /// The sixteen colours of a terminal, its grounds, and whether bold text takes the brighter eight (from memory: the
    /// programs' own defaults; Schoonover's Solarized).
    struct Palette {
        name: &'static str,
        colours: [u32; 16],
        grounds: &'static [u32],
        bold_is_bright: bool,
    }

    const PALETTES: [Palette; 6] = [
        Palette {
            name: "xterm",
            colours: [
                0x000000, 0xcd0000, 0x00cd00, 0xcdcd00, 0x0000ee, 0xcd00cd, 0x00cdcd, 0xe5e5e5, 0x7f7f7f, 0xff0000,
                0x00ff00, 0xffff00, 0x5c5cff, 0xff00ff, 0x00ffff, 0xffffff,
            ],
            grounds: &[0x000000, 0xffffff],
            bold_is_bright: false,
        },
        Palette {
            name: "the bare console",
            colours: [
                0x000000, 0xaa0000, 0x00aa00, 0xaa5500, 0x0000aa, 0xaa00aa, 0x00aaaa, 0xaaaaaa, 0x555555, 0xff5555,
                0x55ff55, 0xffff55, 0x5555ff, 0xff55ff, 0x55ffff, 0xffffff,
            ],
            grounds: &[0x000000],
            bold_is_bright: true,
        },
        Palette {
            name: "Tango",
            colours: [
                0x2e3436, 0xcc0000, 0x4e9a06, 0xc4a000, 0x3465a4, 0x75507b, 0x06989a, 0xd3d7cf, 0x555753, 0xef2929,
                0x8ae234, 0xfce94f, 0x729fcf, 0xad7fa8, 0x34e2e2, 0xeeeeec,
            ],
            grounds: &[0x000000, 0xffffff],
            bold_is_bright: false,
        },
        Palette {
            name: "Campbell",
            colours: [
                0x0c0c0c, 0xc50f1f, 0x13a10e, 0xc19c00, 0x0037da, 0x881798, 0x3a96dd, 0xcccccc, 0x767676, 0xe74856,
                0x16c60c, 0xf9f1a5, 0x3b78ff, 0xb4009e, 0x61d6d6, 0xf2f2f2,
            ],
            grounds: &[0x0c0c0c, 0xffffff],
            bold_is_bright: false,
        },
        Palette { name: "Solarized", colours: SOLARIZED, grounds: &[0x002b36, 0xfdf6e3], bold_is_bright: false },
        Palette {
            name: "Solarized, bold is bright",
            colours: SOLARIZED,
            grounds: &[0x002b36, 0xfdf6e3],
            bold_is_bright: true,
        },
    ];

    const SOLARIZED: [u32; 16] = [
        0x073642, 0xdc322f, 0x859900, 0xb58900, 0x268bd2, 0xd33682, 0x2aa198, 0xeee8d5, 0x002b36, 0xcb4b16, 0x586e75,
        0x657b83, 0x839496, 0x6c71c4, 0x93a1a1, 0xfdf6e3,
    ];

    fn number_of(colour: Color) -> Option<usize> {
        match colour {
            Color::Reset => None,
            Color::Black => Some(0),
            Color::Red => Some(1),
            Color::Green => Some(2),
            Color::Yellow => Some(3),
            Color::White => Some(15),
            other => panic!("{other:?} is no colour of ours"),
        }
    }

    /// The ratio of two luminances as WCAG 2.2 has it; 3 is the least for signs and bold words.
    fn contrast(a: u32, b: u32) -> f64 {
        let light = |colour: u32| {
            let part = |shift: u32| {
                let share = f64::from((colour >> shift) & 0xff) / 255.0;
                if share <= 0.04045 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
            };
            0.2126 * part(16) + 0.7152 * part(8) + 0.0722 * part(0)
        };
        let (a, b) = (light(a), light(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    #[test]
    fn every_ink_is_read_on_dark_light_and_solarized_grounds() {
        for ink in [Ink::Plain, Ink::Strong, Ink::Good, Ink::Waits, Ink::Danger, Ink::Chosen, Ink::Quiet] {
            let mut buffer = one_line("! late", ink.style());
            Look::new(true, false).finish(&mut buffer);
            for cell in buffer.content.iter().filter(|cell| !cell.symbol().trim().is_empty()) {
                for palette in &PALETTES {
                    let bright = palette.bold_is_bright && cell.modifier.contains(Modifier::BOLD);
                    let Some(sign) = number_of(cell.fg) else {
                        assert_eq!(cell.bg, Color::Reset, "the terminal's own foreground needs its own ground");
                        continue;
                    };
                    let sign = palette.colours[if bright && sign < 8 { sign + 8 } else { sign }];
                    let grounds =
                        number_of(cell.bg).map_or_else(|| palette.grounds.to_vec(), |n| vec![palette.colours[n]]);
                    for ground in grounds {
                        let contrast = contrast(sign, ground);
                        assert!(
                            contrast >= 3.0,
                            "{ink:?} in {}: {contrast:.1} of {sign:06x} on {ground:06x}",
                            palette.name
                        );
                    }
                }
            }
        }
    }

    #[test]
    fn a_mark_is_a_tile_of_its_colour_and_words_are_not() {
        let grounds = |text: &str, ink: Ink| {
            let mut buffer = one_line(text, ink.style());
            Look::new(true, false).finish(&mut buffer);
            (buffer.content[0].bg, buffer.content[2].bg, buffer.content[2].fg)
        };
        assert_eq!(grounds("● ready", Ink::Good), (Color::Green, Color::Reset, Color::Reset));
        assert_eq!(grounds("H hardening", Ink::Waits), (Color::Yellow, Color::Reset, Color::Reset));
        assert_eq!(grounds("x late", Ink::Danger), (Color::Red, Color::Reset, Color::Red));
        assert_eq!(grounds("A count", Ink::Danger).0, Color::Reset, "a word of one letter is no mark");
        assert_eq!(grounds("- unmet", Ink::Plain).0, Color::Reset);
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
