//! Keys and frames of the screen Going out, over the sample nursery.

use super::{Chosen, Part, items};
use crate::dashboard::keys::Key;
use crate::dashboard::tests::Stage;
use crate::nursery::entry::subject::Subject;
use crate::wording::Lang;

const SIZES: [(u16, u16); 6] = [(120, 40), (100, 30), (80, 24), (60, 20), (48, 18), (40, 12)];

fn going_out(lang: Lang) -> Stage {
    let mut stage = Stage::sample(lang);
    stage.keys("4");
    stage
}

/// Goes to a tray or bed as a person does who types its name.
fn at(stage: &mut Stage, name: &str) {
    stage.keys("f");
    stage.text(name);
    stage.keys("\n");
}

fn words(frame: &str) -> String {
    frame.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn wide_in_english() {
    let mut stage = going_out(Lang::En);
    at(&mut stage, "gre-014");
    stage.keys("o");
    insta::assert_snapshot!(stage.frame());
}

#[test]
fn narrow_in_spanish() {
    let mut stage = going_out(Lang::Es).sized(48, 18);
    insta::assert_snapshot!("narrow_pairs_in_spanish", stage.frame());
    stage.keys("ov");
    insta::assert_snapshot!("narrow_list_in_spanish", stage.frame());
    stage.keys("v");
    insta::assert_snapshot!("narrow_coming_in_spanish", stage.frame());
}

#[test]
fn asked_in_words_before_anything_is_written() {
    let mut stage = going_out(Lang::En).sized(80, 24);
    at(&mut stage, "avo-011");
    stage.keys("o");
    at(&mut stage, "jac-006");
    stage.keys("o");
    let before = stage.entries();
    // The key that asks, held down, writes nothing.
    stage.keys("cccc");
    insta::assert_snapshot!("asked", stage.frame());
    assert_eq!(stage.entries(), before);
    stage.keys("q");
    assert!(!stage.left && stage.entries() == before);
    stage.keys("cw");
    assert_eq!(stage.entries(), before + 2);
    let frame = stage.frame();
    assert!(frame.contains("Saved: 2 entries"), "{frame}");
    stage.keys("v");
    assert!(words(&stage.frame()).contains("Nothing is on the loading list"), "{}", stage.frame());
    // Both are in the book, of today.
    for (tray, bed, plants) in [("avo-011", "Spring 2", 8), ("jac-006", "Valley 1", 6)] {
        let bed = stage.model.book.picture.beds.values().find(|one| one.name.as_str() == bed).unwrap();
        let out =
            bed.story.cohorts.iter().find(|cohort| cohort.tray.as_ref().is_some_and(|code| code.as_str() == tray));
        assert_eq!(out.map(|out| (out.planted, out.day)), Some((plants, stage.model.book.now.today)), "{tray}");
    }
}

#[test]
fn the_list_is_there_again_after_a_power_cut() {
    let mut stage = going_out(Lang::En);
    at(&mut stage, "avo-011");
    stage.keys("o--");
    let mut stage = stage.again(Lang::En);
    stage.keys("4");
    assert!(words(&stage.frame()).contains("6 avocado from avo-011"), "{}", stage.frame());
    at(&mut stage, "avo-011");
    stage.keys("r");
    let mut stage = stage.again(Lang::En);
    stage.keys("4");
    assert!(words(&stage.frame()).contains("Nothing is on the loading list"), "{}", stage.frame());
}

#[test]
fn a_number_is_stepped_or_typed_and_digits_switch_no_screen_while_it_is_typed() {
    let mut stage = going_out(Lang::En);
    at(&mut stage, "avo-011");
    assert!(stage.frame().contains("avo-011 → Spring 2: 8"), "{}", stage.frame());
    stage.keys("--+");
    assert!(stage.frame().contains("avo-011 → Spring 2: 7"), "{}", stage.frame());
    stage.keys(" 5\n");
    assert!(stage.frame().contains("avo-011 → Spring 2: 5, on the list"), "{}", stage.frame());
    stage.keys(" q");
    assert!(!stage.left && stage.frame().contains("5, on the list"), "{}", stage.frame());
    stage.keys(" 0\n");
    assert!(words(&stage.frame()).contains("Nothing is on the loading list"), "{}", stage.frame());
}

#[test]
fn what_is_promised_twice_is_said_with_its_sums() {
    let mut stage = going_out(Lang::En);
    // Both coffee trays could fill School 1: what the first takes is not offered again.
    at(&mut stage, "cof-021");
    stage.keys("o");
    choose_pair(&mut stage, "cof-022", "School 1");
    stage.keys("o");
    assert!(words(&stage.frame()).contains("Nothing is left to load"), "{}", stage.frame());
    stage.keys(" 10\n");
    at(&mut stage, "avo-011");
    stage.keys(" 40\n");
    let frame = stage.frame();
    assert!(frame.to_lowercase().contains("two people or fewer bags"), "{frame}");
    // In one column no sentence stands beside another.
    let mut stage = stage.sized(80, 24);
    stage.keys("v");
    let frame = words(&stage.frame());
    for message in [
        "! School 1, arabica coffee: 52 promised, 42 places open",
        "! avo-011: 40 promised",
        "! Spring 2, avocado: 40 promised, 8 places open",
        "two people or fewer bags",
    ] {
        assert!(frame.contains(message), "{message}: {frame}");
    }
}

#[test]
fn what_is_refused_stays_on_the_list() {
    let mut stage = going_out(Lang::En);
    at(&mut stage, "avo-011");
    stage.keys(" 900\n");
    let before = stage.entries();
    stage.keys("cw");
    assert_eq!(stage.entries(), before);
    let frame = stage.frame();
    assert!(frame.contains("Not written"), "{frame}");
    assert!(frame.contains("900, on the list"), "{frame}");
}

#[test]
fn reading_only_writes_nothing_and_says_so() {
    let mut stage = going_out(Lang::En);
    at(&mut stage, "avo-011");
    stage.keys("o");
    stage.model.read_only = true;
    let before = stage.entries();
    stage.keys("cw");
    assert_eq!(stage.entries(), before);
    assert!(stage.frame().contains("reading only"), "{}", stage.frame());
}

#[test]
fn going_to_a_tray_or_bed_chooses_its_pair_and_y_gives_every_reason() {
    let mut stage = going_out(Lang::En);
    at(&mut stage, "cof-028");
    let chosen = stage.model.screens.at(stage.model.at).chosen(&stage.model.context());
    assert!(matches!(chosen, Some(Subject::Tray(code)) if code.as_str() == "cof-028"));
    stage.keys("y");
    assert!(stage.frame().contains("Tray cof-028 for bed"), "{}", stage.frame());
    stage.keys("q");
    at(&mut stage, "Valley 1");
    stage.keys("y");
    assert!(stage.frame().contains("for bed Valley 1"), "{}", stage.frame());
}

#[test]
fn every_tray_with_plants_is_offered_or_has_its_reason() {
    let stage = going_out(Lang::En);
    let cx = stage.model.context();
    let offered = items::Offered::now(&cx);
    let items = items::pairs(&offered, &[], &cx, 120).all();
    let named: std::collections::BTreeSet<String> = items
        .iter()
        .filter_map(|item| item.chosen.as_ref().and_then(|chosen| chosen.tray()).map(ToString::to_string))
        .collect();
    let standing = cx.book.picture.trays.values().filter(|tray| tray.standing > 0);
    for tray in standing {
        assert!(named.contains(tray.code.as_str()), "{}", tray.code);
    }
    assert_eq!(named.len(), 31);
}

#[test]
fn what_can_be_chosen_is_what_is_drawn_in_the_same_order() {
    let mut stage = going_out(Lang::En);
    for tray in ["jac-006", "avo-011", "cod-009"] {
        at(&mut stage, tray);
        stage.keys(" 3\n");
    }
    let kept = "{\"lines\":[{\"tray\":\"jac-006\",\"bed\":\"Valley 1\",\"plants\":3},\
        {\"tray\":\"avo-011\",\"bed\":\"Spring 2\",\"plants\":3},{\"tray\":\"cod-009\",\"bed\":\"Spring 2\",\"plants\":3}]}";
    let lines = super::loading::of_text(kept);
    assert_eq!(super::loading::to_text(&lines), kept);
    let cx = stage.model.context();
    let offered = items::Offered::now(&cx);
    for part in [Part::Pairs, Part::Loading, Part::Coming] {
        let drawn = match part {
            Part::Pairs => items::pairs(&offered, &lines, &cx, 80).all(),
            Part::Loading => items::loading(&lines, &cx, 80).all(),
            Part::Coming => items::coming(&cx, 80).all(),
        };
        let drawn: Vec<Chosen> = drawn.into_iter().filter_map(|item| item.chosen).collect();
        assert!(drawn.len() >= 3);
        assert_eq!(drawn, items::choices(part, &lines, &cx), "{part:?}");
    }
}

#[test]
fn another_day_is_named_and_nothing_is_written_for_it() {
    let mut stage = going_out(Lang::En);
    at(&mut stage, "avo-011");
    stage.keys("od");
    stage.keys("+7\n");
    let before = stage.entries();
    assert!(stage.frame().contains("Fits on 22 Apr 2026"), "{}", stage.frame());
    stage.keys("cw");
    assert_eq!(stage.entries(), before);
    assert!(words(&stage.frame()).contains("Nothing is written while looking at another day"), "{}", stage.frame());
}

#[test]
fn at_every_size_the_chosen_pair_is_in_view_whole() {
    for lang in Lang::ALL {
        for (columns, rows) in SIZES {
            let mut stage = going_out(lang).sized(columns, rows);
            for _ in 0..40 {
                let Some(Subject::Tray(code)) = stage.model.screens.at(stage.model.at).chosen(&stage.model.context())
                else {
                    panic!("no tray is chosen");
                };
                let buffer = stage.buffer();
                let chosen: String = buffer
                    .content
                    .iter()
                    .enumerate()
                    // The screens' own line is reversed too.
                    .filter(|(i, cell)| {
                        *i >= usize::from(columns) && cell.modifier.contains(ratatui::style::Modifier::REVERSED)
                    })
                    .map(|(_, cell)| cell.symbol())
                    .collect();
                assert!(chosen.contains(code.as_str()), "{code} at {columns} x {rows}: {}", stage.frame());
                stage.key(Key::Down);
            }
        }
    }
}

#[test]
fn the_coming_weeks_say_what_is_still_to_be_done() {
    let mut stage = going_out(Lang::En);
    let mut frame = words(&stage.frame());
    for _ in 0..5 {
        if frame.contains("What becomes ready") {
            break;
        }
        stage.keys("v");
        frame = words(&stage.frame());
    }
    assert!(frame.contains("What becomes ready in the next 8 weeks"), "{frame}");
    // 190 days of 210: in 20 days.
    assert!(frame.contains("cof-028, arabica coffee, 105 standing: from"), "{frame}");
    assert!(frame.contains("190 days old, 20 short of 210"), "{frame}");
    stage.keys("q");
    assert!(!stage.left && stage.frame().contains("Which tray goes to which bed"), "{}", stage.frame());
}

#[test]
fn an_empty_nursery_teaches_and_takes_no_harm() {
    for lang in Lang::ALL {
        let mut stage = Stage::empty(lang);
        stage.keys("4");
        let cx = stage.model.context();
        let frame = words(&stage.frame());
        assert!(frame.contains(&words(&cx.wording.no_trays())), "{frame}");
        assert!(frame.contains(&words(&cx.wording.no_beds())), "{frame}");
        stage.keys("o+- rcwvo+-vq\n");
        assert_eq!(stage.entries(), 0);
    }
}

#[test]
fn beside_and_below_the_list_no_sentence_is_cut() {
    for lang in Lang::ALL {
        for (columns, rows) in SIZES {
            let mut stage = going_out(lang).sized(columns, rows);
            for tray in ["avo-011", "cof-021", "cof-022", "gre-014"] {
                at(&mut stage, tray);
                stage.keys(" 60\n");
            }
            for _ in 0..2 {
                stage.model.notice = None;
                let frame = words(&stage.frame());
                let cx = stage.model.context();
                let cautions = [cx.wording.load_caution(), cx.wording.load_caution_short()];
                // A caution that begins is said to its end.
                for caution in &cautions {
                    let first: String = caution.split_inclusive(' ').take(2).collect();
                    if columns < 100 && frame.contains(first.trim()) {
                        assert!(frame.contains(&words(caution)), "{columns} x {rows}: {}", stage.frame());
                    }
                }
                stage.keys("v");
            }
            // Before it is written, everything that is wrong can be read, whatever the height.
            stage.keys("c");
            let mut read = String::new();
            for _ in 0..60 {
                read.push_str(&words(&stage.frame()));
                stage.key(Key::Down);
            }
            let cx = stage.model.context();
            let last = words(&cx.wording.load_ask_keys());
            assert!(words(&stage.frame()).contains(&last), "{columns} x {rows}: {}", stage.frame());
            for promised in ["avo-011:", "School 1, ", "Ridge 1, ", "Spring 2, "] {
                let start: String = read.chars().take(900).collect();
                assert!(read.contains(&format!("! {promised}")), "{promised} at {columns} x {rows}: {start}");
            }
        }
    }
}

#[test]
fn a_tray_of_the_coming_weeks_goes_on_the_list_or_is_told_why_not_today() {
    for (lang, not_today) in [(Lang::En, "does not fit"), (Lang::Es, "hoy no cabe")] {
        let mut stage = going_out(lang);
        stage.keys("vv");
        let (mut told, mut loaded) = (0, 0);
        for _ in 0..40 {
            let of = stage.model.screens.going_out.chosen.clone();
            if let Some(Chosen::Tray(tray)) = of {
                stage.keys("o");
                let pairs = stage.model.book.picture.pairs.of(&tray);
                let fits = pairs.iter().any(|pair| pair.fits);
                let said = stage.frame();
                let planned = !pairs.is_empty();
                let right = if fits { said.contains(tray.as_str()) } else { !planned || said.contains(not_today) };
                assert!(right, "{tray}\n{said}");
                told += usize::from(planned && !fits);
                loaded += usize::from(fits);
                if fits {
                    stage.keys("vv");
                }
            }
            stage.key(Key::Down);
        }
        assert!(told > 0, "{told} {loaded}");
    }
}

/// The line of the list in which something stands; the number of lines where it does not.
fn line_of(frame: &str, named: &[&str]) -> usize {
    let here = |line: &str| named.iter().all(|name| line.contains(name));
    frame.lines().position(here).unwrap_or_else(|| frame.lines().count())
}

/// Chooses a tray for a bed by the arrows, as it stands in the list.
fn choose_pair(stage: &mut Stage, tray: &str, bed: &str) {
    stage.key(Key::Home);
    for _ in 0..60 {
        if matches!(&stage.model.screens.going_out.chosen, Some(Chosen::Pair(t, b)) if t.as_str() == tray && b.as_str() == bed)
        {
            return;
        }
        stage.key(Key::Down);
    }
    panic!("{tray} is not offered to {bed}");
}

#[test]
fn more_than_a_bed_has_holes_for_is_said_first_and_put_on_by_a_second_press() {
    for (lang, said) in [(Lang::En, "43 promised, 42 places open"), (Lang::Es, "43 prometidas, 42 hoyos libres")] {
        let mut stage = going_out(lang);
        at(&mut stage, "cof-021");
        stage.keys("o");
        assert!(stage.frame().contains("cof-021 → School 1: 42"), "{}", stage.frame());
        stage.keys("+");
        assert!(stage.frame().contains("cof-021 → School 1: 42"), "it stops at the holes: {}", stage.frame());
        assert!(words(&stage.frame()).contains(said), "{}", stage.frame());
        stage.keys("+");
        assert!(stage.frame().contains("cof-021 → School 1: 43"), "{}", stage.frame());
        assert!(words(&stage.frame()).contains(said), "and says it again: {}", stage.frame());
        // Chosen anew, it is said anew; a number that is typed is taken, and doubted aloud.
        stage.keys("--");
        stage.key(Key::Up);
        stage.key(Key::Down);
        stage.keys("++");
        assert!(stage.frame().contains("cof-021 → School 1: 42"), "{}", stage.frame());
        stage.keys(" 43\n");
        assert!(stage.frame().contains("cof-021 → School 1: 43"), "{}", stage.frame());
        let last: Vec<String> = stage.frame().lines().rev().take(4).map(str::to_string).collect();
        assert!(words(&last.into_iter().rev().collect::<Vec<_>>().join(" ")).contains(said), "{}", stage.frame());
    }
}

#[test]
fn before_anything_is_on_the_list_a_number_stops_at_the_holes_too() {
    let mut stage = going_out(Lang::En);
    at(&mut stage, "cof-021");
    stage.keys("-+");
    assert!(stage.frame().contains("cof-021 → School 1: 42"), "{}", stage.frame());
    stage.keys("+");
    assert!(stage.frame().contains("cof-021 → School 1: 42"), "{}", stage.frame());
    stage.keys("+");
    assert!(stage.frame().contains("cof-021 → School 1: 43"), "{}", stage.frame());
}

#[test]
fn what_the_list_has_filled_stands_no_longer_among_what_fits() {
    for lang in Lang::ALL {
        let mut stage = going_out(lang);
        at(&mut stage, "cof-022");
        let (fits, full, misses) = {
            let wording = &stage.model.wording;
            (wording.fits_heading(), wording.full_heading(), wording.misses_heading())
        };
        let frame = stage.frame();
        let row = line_of(&frame, &["● cof-022", "→ School 1"]);
        assert!(line_of(&frame, &[&fits]) < row && row < line_of(&frame, &[&misses]), "{frame}");
        assert!(!frame.contains(&full), "{frame}");
        at(&mut stage, "cof-021");
        stage.keys("o");
        let frame = stage.frame();
        let row = line_of(&frame, &["- cof-022 → School 1"]);
        assert!(line_of(&frame, &[&full]) < row && row < line_of(&frame, &[&misses]), "{frame}");
        assert!(!frame.contains(" 0 → School 1"), "{frame}");
        // It can be chosen there, by the arrows too, and comes back with the places.
        choose_pair(&mut stage, "cof-022", "School 1");
        assert!(line_of(&stage.frame(), &["- cof-022 → School 1"]) > line_of(&stage.frame(), &[&full]));
        choose_pair(&mut stage, "cof-021", "School 1");
        stage.keys("r");
        assert!(!stage.frame().contains(&full), "{}", stage.frame());
    }
}

#[test]
fn places_that_are_offered_to_two_trays_are_said_at_both() {
    for lang in Lang::ALL {
        let stage = going_out(lang).sized(99, 60);
        let frame = words(&stage.frame());
        for other in ["cof-021", "cof-022"] {
            let said = words(&stage.model.wording.load_same_places(other));
            assert!(frame.contains(&said), "{said}: {}", stage.frame());
        }
    }
}
