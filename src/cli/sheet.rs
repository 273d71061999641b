//! A sheet of lines of one width, in which each line fits.

use crate::base::columns::{left_aligned, width_of, wrapped};

/// The narrowest page, columns: a phone held upright.
pub(crate) const LEAST_WIDTH: usize = 40;
/// The widest page, columns: longer lines are hard to read.
pub(crate) const MOST_WIDTH: usize = 200;

/// A colour of the terminal's own palette of 16; each also has a mark or a word.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Ink {
    /// The terminal's own.
    Plain,
    /// Headings.
    Bold,
    /// It can go (blue).
    Ready,
    /// It waits (yellow).
    Waits,
    /// Loss and danger (red).
    Danger,
}

impl Ink {
    fn code(self) -> Option<&'static str> {
        match self {
            Ink::Plain => None,
            Ink::Bold => Some("1"),
            Ink::Ready => Some("34"),
            Ink::Waits => Some("33"),
            Ink::Danger => Some("31"),
        }
    }
}

/// Lines of at most a width.
pub(super) struct Sheet {
    width: usize,
    colour: bool,
    text: String,
}

impl Sheet {
    /// An empty sheet; the width is kept between [`LEAST_WIDTH`] and [`MOST_WIDTH`].
    pub(crate) fn new(width: usize, colour: bool) -> Sheet {
        Sheet { width: width.clamp(LEAST_WIDTH, MOST_WIDTH), colour, text: String::new() }
    }

    /// Columns of a line.
    pub(crate) fn width(&self) -> usize {
        self.width
    }

    /// An empty line, unless the sheet is empty or one is there.
    pub(crate) fn gap(&mut self) {
        if !self.text.is_empty() && !self.text.ends_with("\n\n") {
            self.text.push('\n');
        }
    }

    /// A paragraph in one ink.
    pub(crate) fn paragraph(&mut self, text: &str, ink: Ink) {
        for line in wrapped(text, self.width) {
            self.write(&[(&line, ink)]);
        }
    }

    /// A paragraph in an ink behind some blanks.
    pub(crate) fn indented(&mut self, blanks: usize, text: &str, ink: Ink) {
        self.hanging(&" ".repeat(blanks), Ink::Plain, text, ink);
    }

    /// A heading: an empty line above, bold.
    pub(crate) fn heading(&mut self, text: &str) {
        self.gap();
        self.paragraph(text, Ink::Bold);
    }

    /// A beginning in an ink, and a text behind it that folds under itself. Where the beginning leaves the text too
    /// little room, the text starts on the next line, four columns in.
    pub(crate) fn hanging(&mut self, beginning: &str, beginning_ink: Ink, text: &str, ink: Ink) {
        /// Columns a folding text needs to be read with ease (ours).
        const LEAST_ROOM: usize = 24;
        let taken = width_of(beginning);
        if taken + LEAST_ROOM.min(width_of(text)) > self.width {
            for (number, line) in wrapped(beginning.trim_end(), self.width).iter().enumerate() {
                let kept = if number == 0 { beginning.len() - beginning.trim_start().len() } else { 0 };
                let blanks = " ".repeat(kept.min(self.width.saturating_sub(width_of(line))));
                self.begun(&format!("{blanks}{line}"), if number == 0 { beginning_ink } else { Ink::Plain }, "", ink);
            }
            for line in wrapped(text, self.width - 4) {
                self.write(&[("    ", Ink::Plain), (&line, ink)]);
            }
            return;
        }
        // A text that fits is kept as it is: its blanks are columns.
        let fits = taken + width_of(text) <= self.width;
        let lines = if fits { vec![text.to_string()] } else { wrapped(text, self.width - taken) };
        for (number, line) in lines.iter().enumerate() {
            let before = if number == 0 { beginning.to_string() } else { left_aligned("", taken) };
            self.begun(&before, beginning_ink, line, ink);
        }
    }

    /// A line with its beginning: of a beginning that is not bold only the mark is inked, so that names stay readable on
    /// any background.
    fn begun(&mut self, beginning: &str, beginning_ink: Ink, text: &str, ink: Ink) {
        let blanks = beginning.len() - beginning.trim_start().len();
        let mark_end = beginning[blanks..].find(' ').map_or(beginning.len(), |end| blanks + end);
        let inked = if beginning_ink == Ink::Bold { beginning.len() } else { mark_end };
        let (mark, rest) = beginning.split_at(inked);
        self.write(&[(mark, beginning_ink), (rest, Ink::Plain), (text, ink)]);
    }

    /// One line of pieces, each in its ink.
    fn write(&mut self, pieces: &[(&str, Ink)]) {
        let mut line = String::new();
        for (piece, ink) in pieces {
            let shown = piece.trim();
            match ink.code().filter(|_| self.colour && !shown.is_empty()) {
                Some(code) => {
                    let (before, after) = (piece.len() - piece.trim_start().len(), piece.trim_end().len());
                    line.push_str(&piece[..before]);
                    line.push_str(&format!("\u{1b}[{code}m{shown}\u{1b}[0m"));
                    line.push_str(&piece[after..]);
                }
                None => line.push_str(piece),
            }
        }
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }

    /// The text, each line ended.
    pub(crate) fn finish(self) -> String {
        self.text
    }
}
