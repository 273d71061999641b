//! What holds on every screen, at every size, in both languages.

use super::Stage;
use crate::dashboard::keys::Key;
use crate::dashboard::look::Inks;
use crate::wording::Lang;

const SIZES: [(u16, u16); 8] = [(120, 40), (80, 24), (60, 20), (48, 18), (40, 12), (220, 60), (20, 8), (1, 1)];

#[test]
fn every_screen_is_drawn_at_every_size_in_both_languages() {
    for lang in Lang::ALL {
        let mut stage = Stage::sample(lang);
        for (columns, rows) in SIZES {
            stage = stage.sized(columns, rows);
            for digit in '1'..='7' {
                stage.key(Key::Char(digit));
                let frame = stage.frame();
                if columns >= 40 {
                    assert!(frame.lines().any(|line| line.contains(" q ") || line.starts_with("q ")), "{frame}");
                }
            }
        }
    }
}

#[test]
fn without_colour_no_cell_has_one_and_in_ascii_none_is_more() {
    let mut stage = Stage::sample(Lang::Es);
    stage.model.look.inks = Inks::Mono;
    stage.model.look.ascii = true;
    for digit in '1'..='7' {
        stage.key(Key::Char(digit));
        for cell in &stage.buffer().content {
            assert!(cell.symbol().is_ascii(), "{:?}", cell.symbol());
            assert_eq!((cell.fg, cell.bg), (ratatui::style::Color::Reset, ratatui::style::Color::Reset));
        }
    }
}

#[test]
fn q_leaves_where_nothing_is_open_and_closes_what_is() {
    let mut stage = Stage::sample(Lang::En);
    stage.keys("hq");
    assert!(!stage.left);
    stage.keys("q");
    assert!(stage.left);
}

#[test]
fn pasted_text_is_never_a_command() {
    let mut stage = Stage::sample(Lang::En);
    let before = stage.entries();
    stage.text(&"uwwyq7n\n".repeat(100));
    assert_eq!(stage.entries(), before);
    assert!(!stage.left);
}

#[test]
fn a_form_left_half_filled_is_there_again_after_a_power_cut() {
    let mut stage = Stage::sample(Lang::En);
    stage.keys("n");
    stage.text("note");
    stage.keys("\n");
    stage.text("the south wall of the frame is loose");
    let mut stage = stage.again(Lang::En);
    stage.keys("n\n");
    assert!(stage.frame().contains("the south wall of the frame is loose"), "{}", stage.frame());
}

#[test]
fn looking_at_a_past_day_writes_nothing_and_says_so() {
    let mut stage = Stage::sample(Lang::En);
    stage.keys("d");
    stage.keys("-30\n");
    assert!(stage.frame().contains("Looking back"), "{}", stage.frame());
    let before = stage.entries();
    stage.keys("n");
    assert!(stage.model.layers.is_empty());
    assert_eq!(stage.entries(), before);
}
