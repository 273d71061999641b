//! The pictures of the dashboard in docs/, drawn from the program's own frames. `OUTPLANT_DRAW=1 cargo test --lib
//! picture` draws them again; without it they are compared.

use ratatui::buffer::{Buffer, Cell};
use ratatui::style::{Color, Modifier};
use std::fmt::Write;
use std::path::PathBuf;
use unicode_width::UnicodeWidthStr;

use super::Stage;
use crate::wording::Lang;

/// Size of a cell, in the picture's own units.
const CELL: (usize, usize) = (9, 18);

/// A frame as a picture: a dark ground, each run of equal cells one text.
fn svg_of(buffer: &Buffer, title: &str) -> String {
    let (columns, rows) = (usize::from(buffer.area.width), usize::from(buffer.area.height));
    let (width, height) = (columns * CELL.0 + 20, rows * CELL.1 + 20);
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {width} {height}\" \
         role=\"img\">\n<title>{title}</title>\n<rect width=\"100%\" height=\"100%\" rx=\"6\" fill=\"#1c1f1a\"/>\n\
         <g font-family=\"DejaVu Sans Mono, Menlo, Consolas, monospace\" font-size=\"15\" xml:space=\"preserve\">\n"
    );
    for (row, cells) in buffer.content.chunks(columns).enumerate() {
        let mut from = 0;
        while from < columns {
            let mut until = from + 1;
            while until < columns && same_ink(&cells[from], &cells[until]) {
                until += 1;
            }
            draw_run(&mut svg, cells, (from, until), row);
            from = until;
        }
    }
    svg.push_str("</g>\n</svg>\n");
    svg
}

fn same_ink(a: &Cell, b: &Cell) -> bool {
    (a.fg, a.bg, a.modifier) == (b.fg, b.bg, b.modifier)
}

fn draw_run(svg: &mut String, cells: &[Cell], (from, until): (usize, usize), row: usize) {
    let mut text = String::new();
    let mut skip = 0;
    for cell in &cells[from..until] {
        if skip > 0 {
            skip -= 1;
            continue;
        }
        text.push_str(cell.symbol());
        skip = cell.symbol().width().saturating_sub(1);
    }
    let reversed = cells[from].modifier.contains(Modifier::REVERSED);
    let (x, y) = (from * CELL.0 + 10, row * CELL.1 + 10);
    let ink = colour(cells[from].fg);
    let ground = if reversed { Some(ink) } else { Some(cells[from].bg).filter(|bg| *bg != Color::Reset).map(colour) };
    if let Some(ground) = ground {
        let width = (until - from) * CELL.0;
        writeln!(svg, "<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{}\" fill=\"{ground}\"/>", CELL.1).unwrap();
    }
    let shown = text.trim_end();
    if shown.is_empty() {
        return;
    }
    let own_ground = Some(cells[from].bg).filter(|bg| *bg != Color::Reset).map_or("#1c1f1a", colour);
    let ink = if reversed { own_ground } else { ink };
    let bold = if cells[from].modifier.contains(Modifier::BOLD) { " font-weight=\"bold\"" } else { "" };
    let line = if cells[from].modifier.contains(Modifier::UNDERLINED) { " text-decoration=\"underline\"" } else { "" };
    let length = shown.width() * CELL.0;
    let escaped = shown.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
    let base = y + CELL.1 - 4;
    writeln!(
        svg,
        "<text x=\"{x}\" y=\"{base}\" fill=\"{ink}\" textLength=\"{length}\" lengthAdjust=\"spacingAndGlyphs\"{bold}{line}>{escaped}</text>"
    )
    .unwrap();
}

fn colour(colour: Color) -> &'static str {
    match colour {
        Color::Green => "#8fae5d",
        Color::Yellow => "#e0a84a",
        Color::Red => "#d4584c",
        Color::Black => "#1c1f1a",
        Color::White => "#ffffff",
        _ => "#e6e6dc",
    }
}

fn compare(name: &str, keys: &str, title: &str, lang: Lang) {
    let mut stage = Stage::sample(lang).sized(110, 34);
    stage.keys(keys);
    let drawn = svg_of(&stage.buffer(), title);
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("docs").join(name);
    if std::env::var_os("OUTPLANT_DRAW").is_some() {
        std::fs::write(&path, &drawn).unwrap();
    }
    let there = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(there == drawn, "docs/{name} is not what the program draws: OUTPLANT_DRAW=1 cargo test --lib picture");
}

#[test]
fn the_pictures_in_the_docs_are_what_the_program_draws() {
    compare("dashboard.svg", "4", "Going out: which tray goes to which bed", Lang::En);
    compare("dashboard-walk.svg", "1", "Walk: the round of the day", Lang::En);
    compare("panel-ronda.svg", "1", "Ronda: la ronda del día", Lang::Es);
}
