//! The Season by keys, and as it looks.

use crate::base::Day;
use crate::dashboard::keys::Key;
use crate::dashboard::tests::{Stage, TODAY};
use crate::reckon::picture::Stage as StageOfTray;
use crate::wording::Lang;

fn season(lang: Lang, size: (u16, u16)) -> Stage {
    let mut stage = Stage::sample(lang).sized(size.0, size.1);
    stage.keys("6");
    stage
}

#[test]
fn each_day_drawn_is_that_days_picture() {
    let stage = season(Lang::En, (120, 40));
    let (_, days) = stage.model.book.year.as_ref().unwrap();
    assert!(days.len() > 40, "{}", days.len());
    let today: Day = TODAY.parse().unwrap();
    let drawn = days.get(&today).unwrap();
    for tray in stage.model.book.picture.trays.values() {
        assert_eq!(drawn.trays.get(&tray.code), Some(&tray.stage), "{}", tray.code);
    }
    let (first, last) = (days.values().next().unwrap(), days.values().last().unwrap());
    assert_ne!(first.trays, last.trays);
    assert!(
        days.values().any(|day| day.in_rains == Some(true)) && days.values().any(|day| day.in_rains == Some(false))
    );
}

#[test]
fn the_cursor_says_the_day_and_the_state_in_words_and_enter_looks_at_it() {
    let mut stage = season(Lang::En, (120, 40));
    stage.keys("-");
    assert!(stage.frame().contains("18 Mar 2026"), "{}", stage.frame());
    stage.key(Key::Right);
    assert!(stage.frame().contains("25 Mar 2026"), "{}", stage.frame());
    stage.keys("\n");
    assert!(stage.frame().contains("Looking back: 25 Mar 2026"), "{}", stage.frame());
    // And back to today.
    stage.keys("d\n");
    assert!(!stage.frame().contains("Looking back"), "{}", stage.frame());
}

#[test]
fn a_line_is_chosen_by_its_name_and_stays_chosen() {
    let mut stage = season(Lang::En, (80, 24));
    stage.keys("f");
    "gli-008".chars().for_each(|letter| stage.key(Key::Char(letter)));
    stage.keys("\n");
    assert!(stage.frame().contains("gli-008"), "{}", stage.frame());
    let tray = stage.model.book.picture.trays.values().find(|tray| tray.code.as_str() == "gli-008").unwrap();
    assert_eq!(tray.stage, StageOfTray::Ready);
    stage.keys("6");
    assert!(stage.frame().contains("gli-008 gliricidia: ready"), "{}", stage.frame());
}

#[test]
fn the_year_fills_the_width_and_empty_trays_are_shown_only_where_asked() {
    for columns in [80, 120, 200] {
        let mut stage = season(Lang::En, (columns, 40));
        let frame = stage.frame();
        let widest =
            frame.lines().filter(|line| line.contains("coffee")).map(|line| line.chars().count()).max().unwrap();
        assert!(widest > usize::from(columns) * 9 / 10, "{widest}: {frame}");
        let spent = stage.model.book.picture.trays.values().find(|tray| tray.stage == StageOfTray::Spent).unwrap();
        let code = spent.code.to_string();
        assert!(!frame.contains(&code), "{code}: {frame}");
        stage.keys("v");
        assert!(stage.frame().contains("avo-010"), "{}", stage.frame());
    }
}

#[test]
fn a_day_that_is_not_drawn_yet_is_no_empty_day() {
    let mut stage = season(Lang::Es, (80, 24));
    let (_, days) = stage.model.book.year.as_mut().unwrap();
    let oldest: Vec<Day> = days.keys().take(5).copied().collect();
    oldest.iter().for_each(|day| {
        days.remove(day);
    });
    let frame = stage.frame();
    assert!(frame.contains("Aún se dibujan 5 días: ·") && frame.contains("·····"), "{frame}");
}

#[test]
fn an_empty_book_teaches() {
    let mut stage = Stage::empty(Lang::Es);
    stage.keys("6");
    assert!(stage.frame().contains("Aún no hay bandejas"), "{}", stage.frame());
}

#[test]
fn as_it_looks() {
    insta::assert_snapshot!("season_120x40_en", season(Lang::En, (120, 40)).frame());
    insta::assert_snapshot!("season_48x18_es", season(Lang::Es, (48, 18)).frame());
}

#[test]
fn every_whole_month_of_the_year_has_its_letters_on_every_width() {
    for lang in [Lang::En, Lang::Es] {
        for width in [40, 48, 60, 80, 100, 120, 200] {
            let stage = season(lang, (width, 24));
            let frame = stage.frame();
            let rains =
                frame.lines().position(|line| line.starts_with("rains") || line.starts_with("lluvias")).unwrap();
            let head = frame.lines().nth(rains - 1).unwrap();
            let named = head.split_whitespace().count();
            assert!((11..=13).contains(&named), "{width}: {named} in '{head}'\n{frame}");
        }
    }
}

#[test]
fn on_a_small_screen_lines_of_trays_go_before_what_the_marks_mean_and_help_has_them() {
    for lang in Lang::ALL {
        let mut stage = season(lang, (48, 18));
        let frame = stage.frame();
        let shown = stage.model.book.picture.trays.keys().filter(|code| frame.contains(&format!("\n{code} "))).count();
        assert!(shown >= 8, "{frame}");
        let means = stage.model.wording.season_ahead();
        let begins = means.split_whitespace().take(4).collect::<Vec<_>>().join(" ");
        assert!(!frame.contains(&begins), "{frame}");
        stage.keys("h");
        let mut told = String::new();
        for _ in 0..12 {
            told.push_str(&stage.frame());
            stage.keys(".");
        }
        assert!(told.split_whitespace().collect::<Vec<_>>().join(" ").contains(&begins), "{told}");
        // Where there is room both stand there.
        let stage = season(lang, (120, 40));
        let frame = stage.frame().split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(frame.contains(&begins), "{frame}");
    }
}
