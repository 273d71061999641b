//! What holds on every screen, at every size, in both languages.

use super::Stage;
use crate::base::word::Word;
use crate::dashboard::act::{FormFor, WhyOf};
use crate::dashboard::keys::Key;
use crate::dashboard::layer::{Layer, Why};
use crate::dashboard::look::{Inks, stage_mark};
use crate::nursery::entry::all_kinds;
use crate::nursery::entry::subject::Subject;
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
fn q_closes_what_is_open_and_asks_once_where_nothing_is_and_esc_never_leaves() {
    let mut stage = Stage::sample(Lang::En);
    stage.keys("hq");
    assert!(!stage.left);
    (0..5).for_each(|_| stage.key(Key::Esc));
    assert!(!stage.left && stage.model.layers.is_empty());
    stage.keys("q");
    assert!(!stage.left && stage.frame().contains("Leave?"), "{}", stage.frame());
    stage.keys("q");
    assert!(!stage.left && stage.model.layers.is_empty());
    stage.keys("q\n");
    assert!(stage.left);
}

/// Sizes from 1x1 to 300x100: the ends, what lies around every limit, and some at random.
fn sizes_of_all_sorts() -> Vec<(u16, u16)> {
    let columns = [1, 2, 3, 9, 17, 23, 38, 47, 48, 59, 60, 79, 80, 99, 100, 161, 300];
    let rows = [1, 2, 3, 4, 6, 9, 11, 12, 15, 16, 18, 24, 37, 100];
    let mut sizes: Vec<(u16, u16)> =
        columns.into_iter().enumerate().map(|(i, width)| (width, rows[i * 5 % rows.len()])).collect();
    sizes.extend([(1, 1), (1, 100), (300, 1), (300, 100)]);
    let mut at = 20_261_129_u32;
    for _ in 0..6 {
        at = at.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        sizes.push(((at >> 8) as u16 % 300 + 1, (at >> 20) as u16 % 100 + 1));
    }
    sizes
}

#[test]
fn no_screen_and_no_layer_panics_at_any_size() {
    for lang in [Lang::En, Lang::Es] {
        let mut stage = Stage::sample(lang);
        // A line that is not taken and a form that was refused are drawn too.
        for (i, (width, height)) in sizes_of_all_sorts().into_iter().enumerate() {
            println!("{width}x{height}");
            stage = stage.sized(width, height);
            for digit in '1'..='7' {
                stage.key(Key::Char(digit));
                stage.frame();
            }
            let screen = char::from(b'1' + (i % 7) as u8);
            let layers = [
                "h",
                "n",
                "y",
                "ya",
                "f",
                "z",
                "d",
                "b",
                "e",
                "u",
                "q",
                "c",
                "l",
                "r",
                "v",
                "n3 lost x9\n",
                "1l99999\n\n",
            ];
            for over in layers.into_iter().skip(i % 2).step_by(2) {
                stage.key(Key::Char(screen));
                stage.keys(over);
                stage.frame();
                (0..4).for_each(|_| stage.key(Key::Esc));
            }
        }
        assert!(!stage.left);
    }
}

#[test]
fn no_form_panics_at_any_size() {
    for lang in [Lang::En, Lang::Es] {
        let mut stage = Stage::sample(lang);
        for known in all_kinds() {
            // From the round too, where a form may fill the screen with figures.
            for screen in ["1", "7"] {
                stage.keys(screen);
                stage.open(&FormFor::about(known.kind, Some(&Subject::Tray("cof-022".parse().unwrap()))));
                stage.keys("x\n");
                for (width, height) in sizes_of_all_sorts().into_iter().step_by(2) {
                    stage = stage.sized(width, height);
                    stage.frame();
                }
                (0..4).for_each(|_| stage.key(Key::Esc));
            }
        }
    }
}

#[test]
fn the_keys_of_the_screen_are_named_before_those_that_mean_the_same_everywhere() {
    let mut stage = Stage::sample(Lang::En).sized(48, 18);
    for (digit, own) in [('1', "Space"), ('2', "i "), ('4', "o ")] {
        stage.key(Key::Char(digit));
        let frame = stage.frame();
        let last = frame.lines().last().unwrap_or_default();
        // Where there is no room for their words, those that mean the same everywhere stand as letters.
        let (first, leave) = (last.find(own), last.find("  q"));
        assert!(first.is_some() && first < leave && !last.contains("n write"), "{frame}");
    }
}

#[test]
fn the_keys_of_a_page_are_named_in_the_order_of_their_words() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    for over in ["h", "y"] {
        stage.keys(over);
        assert!(stage.frame().contains(", . page up and down"), "{}", stage.frame());
        stage.key(Key::Esc);
    }
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

/// All screens and what can lie over each, at a size, as keys from the start.
const OVER: [&str; 8] = ["", "h", "n", "f", "d", "e", "z", "y"];

/// The words of a frame in one line, so that a sentence can be looked for although it is wrapped.
fn words(frame: &str) -> String {
    frame.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Every screen, with nothing or something over it, in both languages, at the small sizes; with colours and without, in
/// ASCII too.
fn each_small_frame(look_at: impl Fn(&Stage, &str)) {
    for lang in Lang::ALL {
        for ascii in [false, true] {
            let mut stage = Stage::sample(lang);
            stage.model.look.ascii = ascii;
            stage.model.look.inks = if ascii { Inks::Mono } else { Inks::Sixteen };
            for size in [(60, 20), (40, 12)] {
                stage = stage.sized(size.0, size.1);
                for digit in '1'..='7' {
                    stage.key(Key::Char(digit));
                    for over in OVER {
                        stage.keys(over);
                        look_at(&stage, &format!("{lang:?} {size:?} screen {digit}, then {over:?}"));
                        if !stage.model.layers.is_empty() {
                            stage.key(Key::Esc);
                        }
                    }
                }
            }
        }
    }
}

#[test]
fn nothing_is_cut_in_the_middle_of_a_sentence_on_a_small_screen() {
    each_small_frame(|stage, at| {
        let frame = stage.frame();
        let mark = if stage.model.look.ascii { '~' } else { '…' };
        for line in frame.lines() {
            // Only whole words of an entry are left out, in the list of them, which has it whole beside or behind Enter.
            let cut = line.matches(mark).count();
            let between_words = line.matches(&format!(" {mark}")).count();
            assert_eq!(cut, between_words, "{at}: {line}\n{frame}");
        }
        if stage.model.layers.is_empty() && stage.model.size.1 >= 14 {
            let message = stage.model.screens.at(stage.model.at).answers(&stage.model.context());
            let message = if stage.model.look.ascii { crate::base::text::in_ascii(&message) } else { message };
            assert!(words(&frame).contains(&words(&message)), "{at}: {message}\n{frame}");
        }
    });
}

#[test]
fn the_text_of_every_key_that_is_named_is_whole_on_a_small_screen() {
    each_small_frame(|stage, at| {
        let frame = stage.frame();
        let last = frame.lines().last().unwrap_or_default().to_string();
        let ascii =
            |message: String| if stage.model.look.ascii { crate::base::text::in_ascii(&message) } else { message };
        if stage.model.layers.is_empty() {
            let (cx, wording) = (stage.model.context(), &stage.model.wording);
            let own = stage.model.screens.at(stage.model.at).keys(&cx);
            let back = crate::dashboard::keys::known("q", crate::dashboard::keys::KeyAction::Back);
            let all = own.iter().chain(crate::dashboard::keys::EVERYWHERE).chain([&back]);
            let known: Vec<String> = all
                .map(|line| {
                    let does = wording.key_does(&line.does.to_string());
                    ascii(format!("{} {does}", wording.keys_named(line.keys)))
                })
                .collect();
            // Those that mean the same everywhere stand as letters where their words have no room; how to leave and help never go.
            let letters = ["q", "h", "y", "n"];
            let is_own_letter = |one: &str| own.iter().any(|line| ascii(wording.keys_named(line.keys)) == one);
            for named in last.split("  ") {
                let whole = known.iter().any(|key| key == named);
                let only_letters =
                    is_own_letter(named) || named.split(' ').all(|one| letters.contains(&one) || is_own_letter(one));
                assert!(whole || only_letters, "{at}: {named:?} in {last:?}");
            }
            let there = |letter: &str| {
                let is_it = |named: &str| named == letter || named.starts_with(&format!("{letter} "));
                last.split("  ").any(|named| is_it(named) || named.split(' ').any(|one| one == letter))
            };
            assert!(letters.into_iter().take(2).all(there), "{at}: {last}");
        }
    });
}

#[test]
fn what_each_key_does_has_a_sentence_and_no_sentence_is_left_over() {
    let does: std::collections::BTreeSet<&str> =
        crate::dashboard::keys::KeyAction::WORDS.iter().map(|(_, spelled)| spelled[0]).collect();
    assert_eq!(crate::wording::words_of("does_"), does);
}

#[test]
fn every_state_has_its_mark_beside_its_word_without_colour_too() {
    each_small_frame(|stage, at| {
        if !stage.model.layers.is_empty() {
            return;
        }
        let (frame, wording, ascii) = (stage.frame(), &stage.model.wording, stage.model.look.ascii);
        let plain = |message: String| if ascii { crate::base::text::in_ascii(&message) } else { message };
        let rows_of = |code: &str| frame.lines().filter(|line| line.starts_with(code)).map(str::to_string).next();
        let picture = &stage.model.book.picture;
        if at.contains("screen 2") {
            for tray in picture.trays.values() {
                let state = plain(format!("{} {}", stage_mark(tray.stage).0, wording.stage_name(tray.stage)));
                let row = rows_of(&format!("{} ", tray.code));
                assert!(row.is_none_or(|row| row.contains(state.trim())), "{at}: {state}\n{frame}");
            }
        }
        if at.contains("screen 4") {
            // What fits, what is ready without a bed and what comes: each line of a pair begins with its mark.
            for pair in picture.pairs.iter().filter(|pair| pair.fits) {
                let begins = plain(format!("● {}", pair.tray));
                let named =
                    frame.lines().find(|line| line.contains(&format!("{} →", pair.tray)) && line.contains("● "));
                assert!(named.is_none_or(|line| line.contains(&begins)), "{at}: {begins}\n{frame}");
            }
        }
        if at.contains("screen 6") {
            let ready = plain(format!("● {}", wording.stage_name(crate::reckon::picture::Stage::Ready)));
            assert!(words(&frame).contains(&ready) || stage.model.size.1 < 24, "{at}: {ready}\n{frame}");
        }
    });
}

#[test]
fn colours_say_what_the_words_say() {
    use ratatui::style::{Color, Modifier};
    let mut stage = Stage::sample(Lang::En);
    // The mark's ground by the sign at which a row of a screen has it.
    let ground = |stage: &Stage, row: &str, mark: &str| {
        let (frame, buffer) = (stage.frame(), stage.buffer());
        let y = frame.lines().position(|line| line.contains(row)).unwrap_or_else(|| panic!("{row}:\n{frame}"));
        let cells = buffer.content.chunks(usize::from(buffer.area.width)).nth(y).unwrap();
        cells.iter().find(|cell| cell.symbol() == mark).unwrap_or_else(|| panic!("{mark} in {row}:\n{frame}")).bg
    };
    assert_eq!(ground(&stage, "Send out gli-008", "!"), Color::Red);
    stage.keys("2");
    assert_eq!(ground(&stage, "cod-012  cordia", "●"), Color::Green);
    assert_eq!(ground(&stage, "cod-010  cordia", "H"), Color::Yellow);
    stage.keys("3");
    assert_eq!(ground(&stage, "grevillea       + refill", "+"), Color::Green);
    stage.keys("4");
    assert_eq!(ground(&stage, "● gli-008", "●"), Color::Green);
    stage.keys("5");
    assert_eq!(ground(&stage, "life over", "▲"), Color::Red);
    // What is chosen is reversed and what stands over all screens too.
    stage.keys("d-30\n");
    let buffer = stage.buffer();
    let banner = stage.frame().lines().position(|line| line.contains("Looking back")).unwrap();
    let cell = &buffer.content[banner * usize::from(buffer.area.width)];
    assert!(cell.modifier.contains(Modifier::REVERSED | Modifier::BOLD));
    assert_eq!(cell.fg, Color::Reset, "a banner is read on every ground");
}

#[test]
fn the_handbook_alone_is_said_all_the_time_and_switched_by_a_key() {
    for lang in Lang::ALL {
        let mut stage = Stage::sample(lang).sized(60, 20);
        let message = words(&stage.model.wording.banner_handbook());
        assert!(!words(&stage.frame()).contains(&message));
        stage.keys("zhq");
        for digit in '1'..='7' {
            stage.key(Key::Char(digit));
            assert!(words(&stage.frame()).contains(&message), "{}", stage.frame());
        }
        stage.keys("zhq");
        assert!(!words(&stage.frame()).contains(&message));
    }
}

#[test]
fn what_changed_is_told_cause_by_cause() {
    let mut stage = Stage::sample(Lang::En);
    stage.write("held", &["tray=gli-008", "why=the road is cut"]);
    stage.keys("e");
    let frame = words(&stage.frame());
    let cause = frame.find("the road is cut").unwrap_or_else(|| panic!("{frame}"));
    let turned = frame.find("gli-008, gliricidia").or_else(|| frame[cause..].find("gli-008").map(|at| at + cause));
    assert!(turned.is_some_and(|turned| turned > cause), "the cause comes first: {frame}");
    assert!(frame.contains("(held"), "the question that turned is named: {frame}");
}

#[test]
fn the_reasons_of_a_stop_at_a_bed_are_short_and_begin_with_what_holds_it_back() {
    for lang in Lang::ALL {
        let mut stage = Stage::sample(lang);
        let beds: Vec<(String, crate::base::BedName)> = stage
            .model
            .book
            .round
            .stops
            .iter()
            .filter_map(|stop| Some((stop.id.clone(), stop.bed()?.clone())))
            .collect();
        assert!(beds.len() > 3);
        for (id, name) in beds {
            stage.model.layers.push(Layer::Why(Why::new(WhyOf::Stop(id.clone()))));
            let frame = stage.frame();
            assert!(
                frame.lines().count() <= 40 && !frame.contains(&stage.model.wording.why_more(2)[2..]),
                "{id}\n{frame}"
            );
            let told = words(&frame);
            let bed = &stage.model.book.picture.beds[&name];
            let (wording, about) = (&stage.model.wording, crate::wording::verdict::About::Bed);
            let all = || bed.species.iter().flat_map(|line| &line.criteria);
            let met = format!("+ {}:", wording.answered_words(crate::reckon::picture::answered::Answered::Met));
            for criterion in all().filter(|criterion| criterion.blocks) {
                let reason = words(&wording.reason(criterion, about));
                let at = told.find(&reason).unwrap_or_else(|| panic!("{id}: {reason}\n{frame}"));
                assert!(told.find(&met).is_none_or(|met| met > at), "what holds back comes first: {frame}");
            }
            stage.model.layers.pop();
        }
    }
}

#[test]
fn why_shows_what_holds_first_and_a_key_unfolds_what_is_met_and_folds_it_again() {
    use crate::reckon::picture::answered::Answered;
    for lang in Lang::ALL {
        let mut stage = Stage::sample(lang).sized(100, 200);
        let picture = stage.model.book.picture.clone();
        let held = |tray: &&std::sync::Arc<crate::reckon::picture::TrayPicture>| {
            let met = tray.criteria.iter().filter(|one| one.answered() == Answered::Met).count();
            !tray.ready && met > 1 && tray.criteria.iter().any(|one| one.blocks)
        };
        let tray = picture.trays.values().find(held).expect("a tray that waits, and of which something is met");
        let subject = crate::nursery::entry::subject::Subject::Tray(tray.code.clone());
        stage.model.layers.push(Layer::Why(Why::new(WhyOf::About(subject))));
        let about = crate::wording::verdict::About::Tray;
        let reasons = |met: bool| -> Vec<String> {
            let these = tray.criteria.iter().filter(|one| (one.answered() == Answered::Met) == met);
            these.map(|one| words(&stage.model.wording.reason(one, about))).collect()
        };
        let (met, open) = (reasons(true), reasons(false));
        let folded = stage.frame();
        assert!(open.iter().all(|reason| words(&folded).contains(reason)), "{folded}");
        assert!(!met.iter().any(|reason| words(&folded).contains(reason)), "{folded}");
        stage.keys("a");
        let whole = words(&stage.frame());
        assert!(met.iter().chain(&open).all(|reason| whole.contains(reason)), "{whole}");
        stage.keys("a");
        assert_eq!(stage.frame(), folded);
    }
}
