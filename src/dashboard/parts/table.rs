//! A table that never wraps: columns drop in a stated order where there is no room, the first column last of all.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use ratatui::style::{Color, Modifier, Style};

use crate::base::columns::{first_words, shortened, width_of};
use crate::base::text::cleaned;
use crate::dashboard::look::Ink;

/// On which side a column's text stands.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Align {
    /// Words.
    Left,
    /// Figures.
    Right,
    /// Words that are a sentence: where they do not fit, the first of them stand, none cut.
    Sentence,
}

/// A column.
#[derive(Clone, Debug)]
pub(crate) struct Column {
    /// Its heading.
    pub(crate) title: String,
    /// Where its text stands.
    pub(crate) align: Align,
    /// The order in which columns drop: the greatest first. Nought never drops.
    pub(crate) drops: u8,
    /// The most columns it takes.
    pub(crate) most: usize,
}

impl Column {
    /// A column of words.
    pub(crate) fn words(title: impl Into<String>, drops: u8, most: usize) -> Column {
        Column { title: title.into(), align: Align::Left, drops, most }
    }

    /// A column of sentences.
    pub(crate) fn sentences(title: impl Into<String>, drops: u8, most: usize) -> Column {
        Column { title: title.into(), align: Align::Sentence, drops, most }
    }

    /// A column of figures.
    pub(crate) fn figures(title: impl Into<String>, drops: u8, most: usize) -> Column {
        Column { title: title.into(), align: Align::Right, drops, most }
    }
}

/// A row: a text and an ink for each column; or a heading over the whole width.
#[derive(Clone, Debug)]
pub(crate) enum Row {
    /// Cells in the order of the columns.
    Cells(Vec<(String, Ink)>),
    /// A heading, which cannot be chosen.
    Heading(String),
}

/// A table.
#[derive(Clone, Debug)]
pub(crate) struct Table {
    /// The columns.
    pub(crate) columns: Vec<Column>,
    /// The rows.
    pub(crate) rows: Vec<Row>,
    /// The row that is chosen, where one is.
    pub(crate) chosen: Option<usize>,
}

/// Blanks between columns.
const GAP: usize = 2;

impl Table {
    /// Draws headings and rows so that the chosen row is in view; the answer is the first row shown.
    pub(crate) fn draw(&self, area: Rect, buffer: &mut Buffer) -> usize {
        if area.height == 0 || area.width == 0 {
            return 0;
        }
        let headed = area.height > 3 && self.columns.iter().any(|column| !column.title.is_empty());
        let rows = usize::from(area.height - u16::from(headed));
        // What is scrolled keeps a column for the marks that say so.
        let whole = area;
        let scrolled = self.rows.len() > rows;
        let kept = if scrolled && area.width >= MARKS_FROM { MARK_COLUMNS } else { 0 };
        let area = Rect { width: area.width - kept, ..area };
        let widths = self.widths(usize::from(area.width));
        if headed {
            let cells: Vec<(String, Ink)> =
                self.columns.iter().map(|column| (column.title.clone(), Ink::Quiet)).collect();
            self.draw_cells(&cells, &widths, area.x, area.y, buffer);
            let line = Rect { height: 1, ..area };
            buffer.set_style(line, Style::new().add_modifier(Modifier::UNDERLINED));
        }
        let top = u16::from(headed);
        let first = self.first_row(rows);
        for (line, (i, row)) in self.rows.iter().enumerate().skip(first).take(rows).enumerate() {
            let y = area.y + top + line as u16;
            match row {
                Row::Heading(text) => {
                    let shown = shortened(&cleaned(text), usize::from(area.width));
                    buffer.set_string(area.x, y, shown, Ink::Strong.style());
                }
                Row::Cells(cells) => {
                    self.draw_cells(cells, &widths, area.x, y, buffer);
                    if self.chosen == Some(i) {
                        let row = Rect { y, height: 1, ..area };
                        buffer.set_style(row, Ink::Chosen.style());
                        keep_marks(row, buffer);
                    }
                }
            }
        }
        if scrolled {
            let rows_area = Rect { y: whole.y + top, height: whole.height - top, ..whole };
            scroll_marks(first > 0, first + rows < self.rows.len(), rows_area, buffer);
        }
        first
    }

    /// The first row shown, so that the chosen one is in view with a line around it, and a heading above it too.
    fn first_row(&self, rows: usize) -> usize {
        let chosen = self.chosen.unwrap_or(0);
        let last_start = self.rows.len().saturating_sub(rows);
        if chosen < rows.saturating_sub(1) { 0 } else { (chosen + 2).saturating_sub(rows).min(last_start) }
    }

    fn draw_cells(&self, cells: &[(String, Ink)], widths: &[usize], x: u16, y: u16, buffer: &mut Buffer) {
        let mut at = x;
        for ((column, width), (text, ink)) in self.columns.iter().zip(widths).zip(cells) {
            if *width == 0 {
                continue;
            }
            let text = cleaned(text);
            let (shown, indent) = match column.align {
                Align::Left => (shortened(&text, *width), 0),
                Align::Sentence => (first_words(&text, *width), 0),
                Align::Right => {
                    let shown = shortened(&text, *width);
                    let indent = width - width_of(&shown);
                    (shown, indent)
                }
            };
            buffer.set_string(at + indent as u16, y, &shown, ink.style());
            at += (width + GAP) as u16;
        }
    }

    /// Columns' widths: as wide as their widest text, columns dropped until the row fits, the first one shortened last.
    fn widths(&self, room: usize) -> Vec<usize> {
        let mut widths: Vec<usize> = self.columns.iter().enumerate().map(|(i, _)| self.wanted(i)).collect();
        let total = |widths: &[usize]| {
            let shown = widths.iter().filter(|width| **width > 0).count();
            widths.iter().sum::<usize>() + GAP * shown.saturating_sub(1)
        };
        while total(&widths) > room {
            let droppable = (0..widths.len()).filter(|i| widths[*i] > 0 && self.columns[*i].drops > 0);
            match droppable.max_by_key(|i| self.columns[*i].drops) {
                Some(i) => widths[i] = 0,
                None => break,
            }
        }
        // A narrower one of those that were dropped may have room after all.
        let mut dropped: Vec<usize> = (0..widths.len())
            .filter(|i| widths[*i] == 0 && self.wanted(*i) > 0 && self.columns[*i].drops > 0)
            .collect();
        dropped.sort_by_key(|i| self.columns[*i].drops);
        for i in dropped {
            let mut wider = widths.clone();
            wider[i] = self.wanted(i);
            if total(&wider) <= room {
                widths = wider;
            }
        }
        let over = total(&widths).saturating_sub(room);
        if over > 0 {
            let widest = (0..widths.len()).max_by_key(|i| widths[*i]);
            if let Some(i) = widest {
                widths[i] = widths[i].saturating_sub(over).max(1);
            }
        }
        widths
    }

    fn wanted(&self, column: usize) -> usize {
        let of_rows = self.rows.iter().filter_map(|row| match row {
            Row::Cells(cells) => cells.get(column).map(|(text, _)| width_of(text)),
            Row::Heading(_) => None,
        });
        let widest = of_rows.max().unwrap_or(0);
        if widest == 0 {
            return 0;
        }
        widest.max(width_of(&self.columns[column].title)).min(self.columns[column].most)
    }
}

/// A mark alone keeps its colour in what is chosen: reversed it would be a hole. A figure or an arrow one blank behind a word is a
/// part of what is said, and no mark.
pub(crate) fn keep_marks(row: Rect, buffer: &mut Buffer) {
    let is_blank = |x: u16, buffer: &Buffer| buffer.cell((x, row.y)).is_none_or(|cell| cell.symbol().trim().is_empty());
    let colour = |x: u16, buffer: &Buffer| buffer.cell((x, row.y)).map(|cell| cell.fg).unwrap_or(Color::Reset);
    for x in row.left()..row.right() {
        let alone = [x.checked_sub(1), x.checked_add(1)]
            .into_iter()
            .flatten()
            .all(|beside| is_blank(beside, buffer) || colour(beside, buffer) == Color::Reset);
        let begins = (row.left()..x).rev().take(GAP).all(|before| is_blank(before, buffer));
        if alone
            && begins
            && colour(x, buffer) != Color::Reset
            && let Some(cell) = buffer.cell_mut((x, row.y)).filter(|cell| !cell.symbol().trim().is_empty())
        {
            cell.modifier.remove(Modifier::REVERSED);
        }
    }
}

/// Columns kept at the right of what is scrolled, from this width on; below it a mark stands where nothing else does.
const MARK_COLUMNS: u16 = 2;
const MARKS_FROM: u16 = 60;

/// Marks at the right edge: more stands above, more stands below.
pub(crate) fn scroll_marks(above: bool, below: bool, area: Rect, buffer: &mut Buffer) {
    let marks = [(above, area.y, "▲"), (below, area.bottom().saturating_sub(1), "▼")];
    for (_, y, mark) in marks.into_iter().filter(|(is, ..)| *is) {
        let cell = buffer.cell_mut((area.right().saturating_sub(1), y));
        if let Some(cell) = cell.filter(|cell| cell.symbol() == " ") {
            cell.set_symbol(mark);
        }
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn in_a_chosen_row_only_its_mark_keeps_its_colour() {
        let row = Rect::new(0, 0, 24, 1);
        let mut buffer = Buffer::empty(row);
        buffer.set_string(0, 0, "● gli-008  63 → Ridge 1", Ink::Good.style());
        buffer.set_style(row, Ink::Chosen.style());
        keep_marks(row, &mut buffer);
        let whole: Vec<bool> = buffer.content.iter().map(|cell| cell.modifier.contains(Modifier::REVERSED)).collect();
        assert!(!whole[0] && whole[1..].iter().all(|reversed| *reversed), "{whole:?}");
    }

    #[test]
    fn a_list_that_goes_on_says_so_at_its_edge() {
        let mut long = table();
        long.rows = (0..9).flat_map(|_| table().rows).collect();
        let text = |chosen: usize, long: &Table| {
            let area = Rect::new(0, 0, 40, 5);
            let mut buffer = Buffer::empty(area);
            Table { chosen: Some(chosen), ..long.clone() }.draw(area, &mut buffer);
            buffer.content.iter().map(|cell| cell.symbol()).collect::<String>()
        };
        assert!(text(0, &long).contains('▼') && !text(0, &long).contains('▲'));
        assert!(text(5, &long).contains('▼') && text(5, &long).contains('▲'));
        assert!(!text(8, &long).contains('▼') && text(8, &long).contains('▲'));
        assert!(!text(0, &table()).contains(['▲', '▼']));
    }

    use super::*;

    fn table() -> Table {
        Table {
            columns: vec![Column::words("Tray", 0, 10), Column::figures("Plants", 1, 6), Column::words("Place", 2, 20)],
            rows: vec![Row::Cells(vec![
                ("cof-031".into(), Ink::Plain),
                ("41".into(), Ink::Plain),
                ("Frame by the spring".into(), Ink::Plain),
            ])],
            chosen: Some(0),
        }
    }

    fn drawn(width: u16) -> String {
        let area = Rect::new(0, 0, width, 5);
        let mut buffer = Buffer::empty(area);
        table().draw(area, &mut buffer);
        (0..width).map(|x| buffer.cell((x, 1)).unwrap().symbol().to_string()).collect()
    }

    #[test]
    fn columns_drop_in_the_stated_order_and_the_first_stays() {
        assert_eq!(drawn(40).trim_end(), "cof-031      41  Frame by the spring");
        assert_eq!(drawn(20).trim_end(), "cof-031      41");
        assert_eq!(drawn(8).trim_end(), "cof-031");
        assert_eq!(drawn(5), "cof-…");
    }
}
