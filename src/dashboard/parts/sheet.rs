//! A page of text wrapped to a width: headings, sentences, labelled facts. No sentence is ever cut.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use ratatui::text::{Line, Span};

use crate::base::columns::{left_aligned, shortened, width_of, wrapped};
use crate::base::text::cleaned;
use crate::dashboard::look::Ink;

/// Text is wrapped to so many columns at the least.
const LEAST_COLUMNS: usize = 4;

/// Lines of text, wrapped as they are added.
#[derive(Clone, Debug, Default)]
pub(crate) struct Sheet {
    width: usize,
    label_room: usize,
    lines: Vec<Line<'static>>,
}

impl Sheet {
    /// An empty page of so many columns.
    pub(crate) fn new(width: u16) -> Sheet {
        Sheet { width: usize::from(width).max(8), label_room: 0, lines: Vec::new() }
    }

    /// The labels that [`Sheet::labelled`] will get, so that what stands behind them is aligned.
    pub(crate) fn labels<'a>(&mut self, labels: impl IntoIterator<Item = &'a str>) {
        let widest = labels.into_iter().map(width_of).max().unwrap_or(0);
        self.label_room = widest.min(self.width / 3);
    }

    /// A text of at most so many columns, with `…` where it is cut; for names only, never for sentences.
    pub(crate) fn shortened(text: &str, width: usize) -> String {
        shortened(text, width)
    }

    /// Columns.
    pub(crate) fn width(&self) -> usize {
        self.width
    }

    /// How many lines it has.
    pub(crate) fn height(&self) -> usize {
        self.lines.len()
    }

    /// An empty line, unless the page begins here or one is there.
    pub(crate) fn gap(&mut self) {
        if self.lines.last().is_some_and(|line| line.width() > 0) {
            self.lines.push(Line::default());
        }
    }

    /// A heading with space before it.
    pub(crate) fn heading(&mut self, text: &str) {
        self.gap();
        self.paragraph(text, Ink::Strong);
    }

    /// A sentence.
    pub(crate) fn paragraph(&mut self, text: &str, ink: Ink) {
        self.hanging("", Ink::Plain, text, ink);
    }

    /// A sentence behind a mark; its further lines begin under the first.
    pub(crate) fn hanging(&mut self, mark: &str, mark_ink: Ink, text: &str, ink: Ink) {
        let mark = cleaned(mark);
        let indent = width_of(&mark).min(self.width / 2);
        for (i, part) in wrapped(&cleaned(text), (self.width - indent).max(LEAST_COLUMNS)).into_iter().enumerate() {
            let before =
                if i == 0 { Span::styled(mark.clone(), mark_ink.style()) } else { Span::raw(" ".repeat(indent)) };
            self.lines.push(Line::from(vec![before, Span::styled(part, ink.style())]));
        }
    }

    /// A fact behind its label; under it where the page is narrow.
    pub(crate) fn labelled(&mut self, label: &str, text: &str) {
        self.labelled_in(label, text, Ink::Plain);
    }

    /// The same in another ink.
    pub(crate) fn labelled_in(&mut self, label: &str, text: &str, ink: Ink) {
        let label = cleaned(label);
        let room = self.label_room.max(width_of(&label));
        let mark = format!("{}  ", left_aligned(&label, room));
        if width_of(&mark) > self.width / 2 {
            self.paragraph(&label, Ink::Quiet);
            self.hanging("  ", Ink::Plain, text, ink);
        } else {
            self.hanging(&mark, Ink::Quiet, text, ink);
        }
    }

    /// Another page under this one, after a gap.
    pub(crate) fn append(&mut self, other: Sheet) {
        if other.height() > 0 {
            self.gap();
            self.lines.extend(other.lines);
        }
    }

    /// A line as it is; cut at the width of the page, for drawings only.
    pub(crate) fn line(&mut self, line: Line<'static>) {
        self.lines.push(line);
    }

    /// A drawing of so many lines that goes with the text, as wide as the page and at most so many columns.
    pub(crate) fn drawing(&mut self, height: u16, most_columns: u16, draw: impl FnOnce(Rect, &mut Buffer)) {
        let area = Rect::new(0, 0, (self.width.min(usize::from(u16::MAX)) as u16).min(most_columns), height);
        let mut buffer = Buffer::empty(area);
        draw(area, &mut buffer);
        for row in buffer.content.chunks(usize::from(area.width).max(1)) {
            let spans: Vec<Span<'static>> =
                row.iter().map(|cell| Span::styled(cell.symbol().to_string(), cell.style())).collect();
            self.lines.push(Line::from(spans));
        }
    }

    /// Draws the page from a line on; the answer is how many lines stand below the area.
    pub(crate) fn draw(&self, from: usize, area: Rect, buffer: &mut Buffer) -> usize {
        let rows = usize::from(area.height);
        let from = from.min(self.lines.len().saturating_sub(rows));
        for (row, line) in self.lines.iter().skip(from).take(rows).enumerate() {
            buffer.set_line(area.x, area.y + row as u16, line, area.width);
        }
        self.lines.len().saturating_sub(from + rows)
    }

    /// The same with marks at the edge that say whether more stands above and below.
    pub(crate) fn draw_marked(&self, from: usize, area: Rect, buffer: &mut Buffer) {
        let below = self.draw(from, area, buffer);
        super::scroll_marks(from.min(self.last_start(area.height)) > 0, below > 0, area, buffer);
    }

    /// Draws lines from exactly one on, as many as the area has.
    pub(crate) fn draw_from(&self, from: usize, area: Rect, buffer: &mut Buffer) {
        for (row, line) in self.lines.iter().skip(from).take(usize::from(area.height)).enumerate() {
            buffer.set_line(area.x, area.y + row as u16, line, area.width);
        }
    }

    /// The first line that stands otherwise in another page.
    pub(crate) fn first_apart(&self, other: &Sheet) -> usize {
        self.lines.iter().zip(&other.lines).take_while(|(one, two)| one == two).count()
    }

    /// The last line from which a whole area is still filled.
    pub(crate) fn last_start(&self, height: u16) -> usize {
        self.lines.len().saturating_sub(usize::from(height))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_word_of_a_sentence_is_lost_and_no_line_too_wide() {
        let text = "the tray stood in 30 % light and this bed has 60 %: twice as bright";
        for width in 4..60 {
            let lines = wrapped(text, width);
            assert!(lines.iter().all(|line| width_of(line) <= width));
            assert_eq!(lines.concat().replace(' ', ""), text.replace(' ', ""));
        }
    }

    #[test]
    fn an_empty_page_draws_nothing() {
        let mut buffer = Buffer::empty(Rect::new(0, 0, 4, 2));
        assert_eq!(Sheet::new(4).draw(9, Rect::new(0, 0, 4, 2), &mut buffer), 0);
    }
}
