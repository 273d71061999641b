//! Signs and figures drawn so large that they are read without reading: a block for each dot of a small pattern.

use ratatui::buffer::Buffer;

use crate::dashboard::look::Ink;

/// Rows of every pattern.
pub(crate) const ROWS: u16 = 5;
/// Columns of a sign's shape, as many as make it about as high as wide in a terminal's cells.
pub(crate) const SHAPE_COLUMNS: u16 = 9;

/// The pattern of a sign's shape by the letter it is drawn with in a line; a frame for one that is not known.
pub(crate) fn shape(letter: &str) -> [&'static str; 5] {
    match letter {
        "▲" => ["    #    ", "   ###   ", "  #####  ", " ####### ", "#########"],
        "●" => ["  #####  ", " ####### ", "#########", " ####### ", "  #####  "],
        "■" => ["#########"; 5],
        "◆" => ["    #    ", "  #####  ", "#########", "  #####  ", "    #    "],
        "★" => ["    #    ", "#########", " ####### ", "  #####  ", " ##   ## "],
        "✚" => ["   ###   ", "   ###   ", "#########", "   ###   ", "   ###   "],
        _ => ["#########", "#       #", "#       #", "#       #", "#########"],
    }
}

/// The pattern of a digit or sign of a number; none for another letter.
fn figure(letter: char) -> Option<[&'static str; 5]> {
    Some(match letter {
        '0' => ["###", "# #", "# #", "# #", "###"],
        '1' => [" # ", "## ", " # ", " # ", "###"],
        '2' => ["###", "  #", "###", "#  ", "###"],
        '3' => ["###", "  #", "###", "  #", "###"],
        '4' => ["# #", "# #", "###", "  #", "  #"],
        '5' => ["###", "#  ", "###", "  #", "###"],
        '6' => ["###", "#  ", "###", "# #", "###"],
        '7' => ["###", "  #", "  #", "  #", "  #"],
        '8' => ["###", "# #", "###", "# #", "###"],
        '9' => ["###", "# #", "###", "  #", "###"],
        '.' | ',' => [" ", " ", " ", " ", "#"],
        '-' => ["   ", "   ", "###", "   ", "   "],
        _ => return None,
    })
}

/// Whether all of a text can be drawn in large figures.
pub(crate) fn all_figures(text: &str) -> bool {
    text.chars().all(|letter| figure(letter).is_some())
}

/// Columns that a number takes at a scale.
pub(crate) fn figures_width(text: &str, scale: u16) -> u16 {
    text.chars().filter_map(figure).map(|rows| rows[0].len() as u16 * scale + scale).sum::<u16>().saturating_sub(scale)
}

/// Draws a pattern; every dot of it is so many columns wide.
pub(crate) fn draw_pattern(rows: [&str; 5], at: (u16, u16), scale: u16, block: &str, ink: Ink, buffer: &mut Buffer) {
    let area = buffer.area;
    for (y, row) in rows.iter().enumerate() {
        for (x, dot) in row.chars().enumerate() {
            if dot == ' ' {
                continue;
            }
            for part in 0..scale {
                let (column, line) = (at.0 + x as u16 * scale + part, at.1 + y as u16);
                if column < area.right() && line < area.bottom() {
                    buffer.set_string(column, line, block, ink.style());
                }
            }
        }
    }
}

/// Draws a number in large figures; the answer is the column behind it.
pub(crate) fn draw_figures(text: &str, at: (u16, u16), scale: u16, block: &str, ink: Ink, buffer: &mut Buffer) -> u16 {
    let mut x = at.0;
    for rows in text.chars().filter_map(figure) {
        draw_pattern(rows, (x, at.1), scale, block, ink, buffer);
        x += rows[0].len() as u16 * scale + scale;
    }
    x
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_digit_and_every_shape_differs_from_every_other() {
        let digits: std::collections::BTreeSet<_> = ('0'..='9').map(|digit| figure(digit).unwrap()).collect();
        assert_eq!(digits.len(), 10);
        let shapes: std::collections::BTreeSet<_> = ["▲", "●", "■", "◆", "★", "✚", "?"].map(shape).into();
        assert_eq!(shapes.len(), 7);
        assert!(shapes.iter().flatten().all(|row| row.chars().count() == usize::from(SHAPE_COLUMNS)));
    }
}
