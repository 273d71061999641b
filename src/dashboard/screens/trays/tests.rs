//! Keys on the Trays, and what they show.

use super::rows::{Grouping, Line, Order, Sort, lines, shown};
use super::{Trays, charts, detail};
use crate::base::TrayCode;
use crate::dashboard::act::ScreenName;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::Key;
use crate::dashboard::layer::Layer;
use crate::dashboard::look::Inks;
use crate::dashboard::parts::width_of;
use crate::dashboard::tests::Stage;
use crate::nursery::entry::subject::Subject;
use crate::reckon::picture::{Stage as TrayStage, TrayPicture};
use crate::reckon::seed::emerged;
use crate::wording::Lang;

fn trays(lang: Lang) -> Stage {
    let mut stage = Stage::sample(lang);
    stage.keys("2");
    stage
}

fn screen(stage: &Stage) -> &Trays {
    &stage.model.screens.trays
}

fn chosen(stage: &Stage) -> String {
    screen(stage).place.chosen.as_ref().unwrap().to_string()
}

fn listed(stage: &Stage) -> Vec<String> {
    screen(stage).listed(&stage.model.context()).iter().map(|tray| tray.code.to_string()).collect()
}

fn go(stage: &mut Stage, tray: &str) {
    stage.keys("f");
    stage.keys(tray);
    stage.keys("\n");
    assert_eq!(chosen(stage), tray);
}

fn tray<'a>(stage: &'a Stage, code: &str) -> &'a TrayPicture {
    &stage.model.book.picture.trays[&TrayCode::new(code).unwrap()]
}

/// A text in one line with single blanks, however it was wrapped.
fn in_one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The whole detail of a tray as text, on a wide terminal.
fn detail_of(stage: &Stage, code: &str) -> String {
    let page = detail::page(tray(stage, code), &stage.model.context(), 60);
    let area = ratatui::layout::Rect::new(0, 0, 60, page.height() as u16);
    let mut buffer = ratatui::buffer::Buffer::empty(area);
    assert_eq!(page.draw(0, area, &mut buffer), 0);
    let rows = buffer.content.chunks(60);
    rows.map(|row| row.iter().map(|cell| cell.symbol()).collect::<String>()).collect::<Vec<_>>().join("\n")
}

#[test]
fn empty_trays_are_hidden_until_they_are_asked_for() {
    let mut stage = trays(Lang::En);
    let all = stage.model.book.picture.trays.len();
    let living = listed(&stage);
    assert!(living.len() < all && !living.is_empty());
    assert!(living.iter().all(|code| tray(&stage, code).stage != TrayStage::Spent));
    assert!(stage.frame().contains(&format!("{} empty ones hidden (v)", all - living.len())), "{}", stage.frame());
    stage.keys("v");
    assert_eq!(listed(&stage).len(), all);
    assert!(!stage.frame().contains("hidden (v)"));
    stage.keys("v");
    assert_eq!(listed(&stage), living);
}

#[test]
fn the_filter_takes_every_letter_and_knows_no_accents() {
    let mut stage = trays(Lang::Es);
    stage.keys("i");
    stage.keys("ARABICA u");
    assert_eq!(stage.entries(), trays(Lang::Es).entries(), "u in a filter takes nothing back");
    for _ in 0..2 {
        stage.key(Key::Backspace);
    }
    let coffee = listed(&stage);
    assert!(!coffee.is_empty() && coffee.iter().all(|code| code.starts_with("cof-")), "{coffee:?}");
    assert!(coffee.contains(&chosen(&stage)));
    // Words in any order, each somewhere: code, species, stage, place, lot.
    stage.keys(" lista");
    assert!(listed(&stage).len() < coffee.len() && !listed(&stage).is_empty());
    assert!(listed(&stage).iter().all(|code| tray(&stage, code).stage == TrayStage::Ready));
}

#[test]
fn what_is_typed_in_the_filter_stays_until_q_takes_it_away() {
    for closes in ["\n", "\u{1b}"] {
        let mut stage = trays(Lang::En);
        let all = listed(&stage);
        stage.keys("i");
        stage.keys("grevillea");
        stage.keys(closes);
        let some = listed(&stage);
        assert!(some.len() < all.len());
        // The keys mean again what they mean in the list.
        stage.key(Key::Down);
        assert_eq!(chosen(&stage), some[1]);
        stage.keys("i");
        assert!(stage.frame().contains("grevillea"), "{}", stage.frame());
        stage.keys(" ready\n");
        assert!(listed(&stage).len() < some.len());
        stage.keys("q");
        assert_eq!(listed(&stage), all);
        assert!(!stage.left);
        stage.keys("q\n");
        assert!(stage.left);
    }
}

#[test]
fn where_nothing_fits_the_page_says_so_and_how_to_go_on() {
    let mut stage = trays(Lang::En);
    stage.keys("i");
    stage.keys("zzz");
    assert!(screen(&stage).place.chosen.is_none());
    assert!(in_one_line(&stage.frame()).contains("No tray has \"zzz\" in its code"), "{}", stage.frame());
    stage.keys("\nq");
    assert_eq!(chosen(&stage), listed(&stage)[0]);
}

#[test]
fn pasted_text_goes_to_the_filter_that_is_open() {
    let mut stage = trays(Lang::En);
    stage.keys("i");
    stage.text("avo-011\n");
    assert_eq!(listed(&stage), ["avo-011"]);
    assert!(stage.model.layers.is_empty());
}

#[test]
fn r_sorts_by_each_column_in_turn() {
    let mut stage = trays(Lang::En);
    for sort in Sort::ALL.into_iter().skip(1).chain([Sort::Tray]) {
        stage.keys("r");
        assert_eq!(screen(&stage).order.sort, sort);
        assert!(stage.frame().contains(" · by "), "{}", stage.frame());
    }
    let cx = stage.model.context();
    let by = |sort: Sort| shown(&Order { sort, ..Order::default() }, "", &cx);
    let pairs = |sort: Sort| -> Vec<_> { by(sort).windows(2).map(|pair| (pair[0], pair[1])).collect() };
    assert!(pairs(Sort::Standing).iter().all(|(a, b)| a.standing >= b.standing));
    assert!(pairs(Sort::Age).iter().all(|(a, b)| a.age_days >= b.age_days));
    assert!(pairs(Sort::Plantable).iter().all(|(a, b)| a.plantable.likely >= b.plantable.likely));
    let late = |a: &TrayPicture, b: &TrayPicture| a.best_before.is_some() && a.best_before > b.best_before;
    assert!(pairs(Sort::BestBefore).iter().all(|(a, b)| b.best_before.is_none() || !late(a, b)));
    let ready = by(Sort::ReadyFrom).iter().position(|tray| !tray.ready).unwrap();
    assert!(by(Sort::ReadyFrom)[ready..].iter().all(|tray| !tray.ready), "what is ready comes first");
    assert_eq!(by(Sort::Stage)[0].stage, TrayStage::Overdue);
}

#[test]
fn j_groups_and_every_plant_stands_under_one_heading() {
    let mut stage = trays(Lang::En);
    let living = listed(&stage).len();
    for grouping in [Grouping::Species, Grouping::Stage, Grouping::Place] {
        stage.keys("j");
        assert_eq!(screen(&stage).order.grouping, grouping);
        let cx = stage.model.context();
        let all = lines(&screen(&stage).order, "", &cx);
        let mut headings = std::collections::BTreeSet::new();
        let mut counted = 0;
        for line in &all {
            match line {
                Line::Heading(text) => assert!(headings.insert(text.clone()), "{text} stands twice"),
                Line::Tray(_) => counted += 1,
            }
        }
        assert!(matches!(all[0], Line::Heading(_)));
        assert_eq!(counted, living);
        assert!(headings.len() > 2 && headings.len() < living);
    }
    let coffee: Vec<&TrayPicture> =
        stage.model.book.picture.trays.values().map(|tray| &**tray).filter(|tray| coffee_stands(tray)).collect();
    let plants: u32 = coffee.iter().map(|tray| tray.standing).sum();
    let heading = format!("arabica coffee · {} trays, {plants} plants", coffee.len());
    stage.keys("jj");
    assert!(stage.frame().contains(&heading), "{heading}\n{}", stage.frame());
}

fn coffee_stands(tray: &TrayPicture) -> bool {
    tray.code.as_str().starts_with("cof-") && tray.stage != TrayStage::Spent
}

#[test]
fn the_choice_is_by_code_and_stays_when_the_order_or_the_book_changes() {
    let mut stage = trays(Lang::En);
    go(&mut stage, "gre-015");
    stage.keys("rrrj");
    assert_eq!(chosen(&stage), "gre-015");
    let before = stage.entries();
    stage.keys("a");
    stage.text("the third row is drier than the rest");
    stage.keys("\n\n");
    assert_eq!(stage.entries(), before + 1, "{}", stage.frame());
    assert_eq!(chosen(&stage), "gre-015");
    assert!(in_one_line(&detail_of(&stage, "gre-015")).contains("the third row is drier than the rest"));
}

#[test]
fn going_to_a_tray_clears_what_hides_it() {
    let mut stage = trays(Lang::En);
    stage.keys("i");
    stage.keys("grevillea\n");
    go(&mut stage, "avo-011");
    assert!(screen(&stage).filter.is_empty());
    // A filter that shows it stays.
    stage.keys("i");
    stage.keys("avo\n");
    go(&mut stage, "avo-012");
    assert_eq!(screen(&stage).filter.text(), "avo");
    let empty = stage.model.book.picture.trays.values().find(|tray| tray.stage == TrayStage::Spent).unwrap();
    let code = empty.code.to_string();
    go(&mut stage, &code);
    assert!(stage.frame().contains("Empty: nothing stands here"), "{}", stage.frame());
}

#[test]
fn going_to_a_place_groups_by_place_and_chooses_a_tray_there() {
    let mut stage = trays(Lang::En);
    let place = tray(&stage, "avo-013").place.clone().unwrap();
    stage.keys("1f");
    stage.keys(place.as_str());
    stage.keys("\n");
    assert_eq!(stage.model.at, ScreenName::Trays);
    assert_eq!(tray(&stage, &chosen(&stage)).place.as_ref(), Some(&place));
    assert!(stage.frame().contains(&format!("{place} · ")), "{}", stage.frame());
}

#[test]
fn letters_write_about_the_tray_that_is_chosen() {
    for letter in ["c", "l", "k", "m", "s", "w", "g", "p", "t", "o", "a"] {
        let mut stage = trays(Lang::En);
        go(&mut stage, "cof-023");
        stage.keys(letter);
        let Some(Layer::Form(form)) = stage.model.layers.last() else { panic!("{letter} opens no form") };
        assert!(form.heading(&stage.model.context()).contains("cof-023") || letter == "a", "{letter}");
    }
}

#[test]
fn y_gives_the_reasons_of_the_tray() {
    let mut stage = trays(Lang::En);
    go(&mut stage, "gli-006");
    stage.keys("y");
    let frame = stage.frame();
    assert!(frame.contains("Tray gli-006, gliricidia") && !frame.contains("source"), "{frame}");
    stage.keys("a");
    assert!(stage.frame().contains("source"), "{}", stage.frame());
}

#[test]
fn where_there_is_no_room_for_both_enter_opens_the_detail_and_q_closes_it() {
    let mut stage = trays(Lang::En).sized(48, 18);
    let codes = listed(&stage);
    stage.key(Key::Down);
    assert_eq!(chosen(&stage), codes[1]);
    stage.keys("\n");
    assert!(stage.frame().contains(&format!("Tray {}", codes[1])), "{}", stage.frame());
    assert!(!stage.frame().contains(&codes[4]), "the list is behind: {}", stage.frame());
    stage.key(Key::Right);
    assert!(stage.frame().contains(&format!("Tray {}", codes[2])), "{}", stage.frame());
    stage.keys(".");
    assert!(!stage.frame().contains(&format!("Tray {}", codes[2])), "a page on: {}", stage.frame());
    stage.keys("q");
    assert!(!stage.left && stage.frame().contains(&codes[4]), "{}", stage.frame());
    stage.keys("q\n");
    assert!(stage.left);
}

#[test]
fn the_detail_pages_to_its_end_and_back() {
    for (columns, rows) in [(120, 40), (100, 24), (80, 24), (40, 12)] {
        let mut stage = trays(Lang::En).sized(columns, rows);
        go(&mut stage, "avo-011");
        for _ in 0..60 {
            stage.keys(".");
        }
        let end = in_one_line(&stage.frame());
        assert!(end.contains("again (,)"), "{end}");
        for _ in 0..60 {
            stage.keys(",");
        }
        assert!(stage.frame().contains("Tray avo-011"), "{}", stage.frame());
    }
}

#[test]
fn the_verdict_names_what_holds_a_tray_back_and_until_when() {
    let stage = trays(Lang::En);
    let cx = stage.model.context();
    let message = |code: &str| detail::verdict(tray(&stage, code), &cx);
    assert!(message("avo-011").starts_with("Ready to go out, best before "), "{}", message("avo-011"));
    assert!(message("gli-006").starts_with("Overdue: the roots circle"), "{}", message("gli-006"));
    assert!(message("gre-015").contains("promised to the dispensary"), "{}", message("gre-015"));
    assert!(message("cof-028").starts_with("Not ready before "), "{}", message("cof-028"));
    for tray in stage.model.book.picture.trays.values() {
        let message = detail::verdict(tray, &cx);
        let spent = tray.stage == TrayStage::Spent;
        assert_eq!(message.starts_with("Ready"), tray.ready && !spent, "{}: {message}", tray.code);
        assert!(!message.contains("nothing is known that holds it back"), "{}", tray.code);
    }
}

#[test]
fn what_holds_a_tray_back_stands_before_what_is_met() {
    let stage = trays(Lang::En);
    let text = detail_of(&stage, "cof-028");
    let begin = text.lines().position(|line| line.starts_with("What is asked of it")).unwrap();
    let marks: String = text
        .lines()
        .skip(begin + 1)
        .take_while(|line| !line.trim().is_empty())
        .filter_map(|line| line.chars().next().filter(|mark| *mark != ' '))
        .collect();
    assert!(marks.starts_with('x') && marks.ends_with('+'), "{marks}");
    assert_eq!(marks.trim_start_matches('x').find('x'), None, "{marks}");
}

#[test]
fn a_ready_tray_says_how_many_fit_where_and_a_waiting_one_what_the_nearest_bed_misses() {
    let stage = trays(Lang::En);
    let picture = &stage.model.book.picture;
    let mut fitting = 0;
    for pair in picture.pairs.iter().filter(|pair| pair.fits) {
        let text = in_one_line(&detail_of(&stage, pair.tray.as_str()));
        let message = format!("+ {}: {} can go today", pair.bed, stage.model.wording.plants(pair.plants));
        assert!(text.contains(&message), "{message}\n{text}");
        fitting += 1;
    }
    assert!(fitting > 3);
    let text = in_one_line(&detail_of(&stage, "avo-011"));
    assert!(text.contains("x Ridge 2: weeding is not written down"), "{text}");
    assert!(in_one_line(&detail_of(&stage, "mor-004")).contains("no bed plans moringa"));
}

#[test]
fn a_bed_that_only_waits_for_the_tray_says_so() {
    let stage = trays(Lang::En);
    // Held back; the bed is open for it.
    assert!(
        in_one_line(&detail_of(&stage, "gre-015")).contains("○ Ridge 1 only waits for the tray: 16 open positions")
    );
    // Still under shade: the step in light is for the tray to take, and no fault of the bed.
    let young = in_one_line(&detail_of(&stage, "cof-031"));
    assert!(young.contains("○ School 1 only waits for the tray"), "{young}");
    let (_, beds) = young.split_once("Where it could go").unwrap();
    assert!(!beds.contains("times as bright"), "{beds}");
}

#[test]
fn a_day_is_said_once_and_a_day_that_is_only_the_earliest_as_such() {
    let stage = trays(Lang::En);
    let cx = stage.model.context();
    assert!(detail::verdict(tray(&stage, "gre-015"), &cx).starts_with("Not ready: held back until "));
    assert!(in_one_line(&detail_of(&stage, "cof-031")).contains("ready from not before 25 Aug;"));
    assert!(!in_one_line(&detail_of(&stage, "cof-028")).contains("not before 5 May;"), "all of it has a day");
}

#[test]
fn the_drawing_of_what_came_up_ends_at_what_the_books_say_and_foretells_what_the_forecast_does() {
    let stage = trays(Lang::En);
    let cx = stage.model.context();
    let mut ahead = 0;
    for tray in stage.model.book.picture.trays.values() {
        let Some(drawing) = charts::emergence(tray, &cx) else { continue };
        let curves = &drawing.chart.curves;
        let seen = curves.last().unwrap();
        let most = seen.points.iter().map(|(_, up)| *up).fold(0.0, f64::max);
        let up = f64::from(emerged(&tray.story));
        // Twins and corrections are no emergence of a look, and what stands was counted.
        assert!(most <= up + 1e-9 && drawing.chart.y.1 >= most, "{}: drawn {most}, came up {up}", tray.code);
        let Some(told) = cx.book.outlook.trays.get(&tray.code) else { continue };
        let dots: Vec<_> = curves.iter().filter(|curve| curve.mark == "·").collect();
        let [low, high] = dots[..] else { panic!("{}: no range", tray.code) };
        assert!(low.points.iter().zip(&high.points).all(|(low, high)| low.1 <= high.1 + 1e-9), "{}", tray.code);
        let due = told.days_to(told.last_due);
        let due_line = curves.iter().find(|curve| curve.mark == "│").unwrap();
        assert!(due_line.points.iter().all(|(days, _)| (days - due).abs() < 1e-9), "{}", tray.code);
        // The range on the last day due is the forecast's.
        let near = |points: &[(f64, f64)], end: f64| {
            let (before, after) = points.iter().partition::<Vec<_>, _>(|(days, _)| *days <= due);
            let ends = before.last().into_iter().chain(after.first()).map(|(_, up)| *up);
            let (least, most) = ends.fold((f64::MAX, 0.0_f64), |(least, most), up| (least.min(up), most.max(up)));
            least - 1.5 <= end && end <= most + 1.5
        };
        if due > told.last_look.map_or(0.0, |look| told.days_to(look)) {
            assert!(near(&low.points, told.at_last_due.low), "{}: {told:?} {:?}", tray.code, low.points);
            assert!(near(&high.points, told.at_last_due.high), "{}: {told:?} {:?}", tray.code, high.points);
            ahead += 1;
        }
    }
    assert!(ahead > 1, "no tray of the sample has seed to come");
}

#[test]
fn a_sowing_says_what_is_to_come_of_it_first_and_y_how_that_is_reckoned() {
    for lang in Lang::ALL {
        let mut stage = trays(lang);
        go(&mut stage, "cof-031");
        let (text, wording) = (in_one_line(&detail_of(&stage, "cof-031")), &stage.model.wording);
        let told = &stage.model.book.outlook.trays[&TrayCode::new("cof-031").unwrap()];
        let message = [
            wording.judgement_name(told.judgement),
            wording.in_the_end_words(told),
            wording.waiting_words(told, stage.model.context().day()),
        ];
        for one in message {
            assert!(text.contains(&in_one_line(&one)), "{one}: {text}");
        }
        let at = |heading: String| text.find(&heading).unwrap();
        assert!(at(wording.trays_expected()) < at(wording.trays_reasons()), "{text}");
        let source = wording.forecast_source();
        // How it is reckoned comes last, where all is asked for.
        stage.keys("ya");
        stage.key(Key::Home);
        let mut all = String::new();
        for _ in 0..24 {
            all.push_str(&stage.frame());
            stage.keys(".");
        }
        let all = in_one_line(&all);
        assert!(all.contains(source.split(" (").next().unwrap()), "{all}");
        assert!(all.contains("exp(-b (ln t - ln t50))"), "{all}");
    }
}

#[test]
fn heights_are_drawn_with_the_band_of_the_species() {
    let stage = trays(Lang::En);
    let drawing = charts::heights(tray(&stage, "avo-011"), &stage.model.context()).unwrap();
    assert_eq!(drawing.chart.band, Some((30.0, 60.0)));
    let samples = tray(&stage, "avo-011").story.samples.len();
    assert_eq!(drawing.chart.curves.last().unwrap().points.len(), samples);
    // Its own curve goes through what was measured.
    let curve = drawing.chart.curves.iter().find(|curve| curve.mark == "─");
    if let Some(curve) = curve {
        let means = &drawing.chart.curves.last().unwrap().points;
        let (first, last) = (curve.points[0], curve.points[curve.points.len() - 1]);
        assert!((first.1 - means[0].1).abs() < 5.0 && last.1 >= first.1, "{curve:?} {means:?}");
    }
    assert!(in_one_line(&detail_of(&stage, "avo-011")).contains("30 to 60 cm"));
}

#[test]
fn the_history_begins_with_what_is_newest() {
    let mut stage = trays(Lang::En);
    go(&mut stage, "avo-011");
    let story = stage.model.book.story_of(&Subject::Tray(TrayCode::new("avo-011").unwrap())).unwrap();
    let cx = stage.model.context();
    let message = |entry| stage.model.wording.entry_sentence_beside(entry, cx.day(), &cx.book.picture.site.species);
    let text = in_one_line(&detail_of(&stage, "avo-011"));
    let (newest, oldest) = (message(story.last().unwrap()), message(&story[0]));
    let at = |sentence: &str| text.find(&format!("- {}", in_one_line(sentence))).unwrap();
    assert!(at(&newest) < at(&oldest));
}

#[test]
fn an_empty_nursery_teaches_how_to_begin() {
    for lang in Lang::ALL {
        for (columns, rows) in [(120, 40), (48, 18), (40, 12)] {
            let mut stage = Stage::empty(lang).sized(columns, rows);
            stage.keys("2");
            assert!(in_one_line(&stage.frame()).contains(&stage.model.wording.no_trays()), "{}", stage.frame());
            stage.keys("rjv.,\n");
            assert!(stage.model.layers.is_empty() && !stage.left);
        }
    }
}

/// Every row of the list shows the code and the stage's mark and word whole; every line is as wide as the terminal at most.
#[test]
fn at_every_size_a_row_has_its_code_its_mark_and_its_word() {
    for lang in Lang::ALL {
        for (columns, rows) in [(120, 40), (80, 24), (60, 20), (48, 18), (40, 12)] {
            for plain in [false, true] {
                let mut stage = trays(lang).sized(columns, rows);
                if plain {
                    stage.model.look.inks = Inks::Mono;
                }
                let frame = stage.frame();
                assert!(frame.lines().all(|line| width_of(line) <= usize::from(columns)));
                let shown: Vec<&str> = frame.lines().filter(|line| line.get(3..4) == Some("-")).collect();
                assert!(shown.len() >= 5, "{frame}");
                for line in shown {
                    let code = line.split_whitespace().next().unwrap();
                    let tray = tray(&stage, code);
                    let (mark, _) = crate::dashboard::look::stage_mark(tray.stage);
                    let message = format!("{mark} {}", stage.model.wording.stage_name(tray.stage));
                    assert!(line.contains(&message), "{message} is missing in {line}");
                }
            }
        }
    }
}

#[test]
fn at_every_size_the_detail_says_its_verdict_whole() {
    for lang in Lang::ALL {
        for (columns, rows) in [(120, 40), (80, 24), (60, 20), (48, 18), (40, 12)] {
            let mut stage = trays(lang).sized(columns, rows);
            for code in ["avo-011", "gli-006", "gre-015", "cof-030"] {
                go(&mut stage, code);
                let verdict = detail::verdict(tray(&stage, code), &stage.model.context());
                let page = detail_text(&stage);
                assert!(page.contains(&in_one_line(&verdict)), "{verdict}\n{}", stage.frame());
                stage.key(Key::Esc);
                assert!(!stage.left);
            }
        }
    }
}

/// The text of the detail pane in one line, without the list beside it.
fn detail_text(stage: &Stage) -> String {
    let width = crate::dashboard::screens::list_detail::detail_columns(&stage.model.context());
    let from = usize::from(stage.model.size.0 - width);
    let lines: Vec<String> = stage.frame().lines().map(|line| line.chars().skip(from).collect()).collect();
    in_one_line(&lines.join(" "))
}

#[test]
fn in_ascii_the_marks_are_still_told_apart() {
    let mut stage = trays(Lang::En);
    stage.model.look.ascii = true;
    let frame = stage.frame();
    assert!(frame.is_ascii());
    for message in ["* ready", "^ overdue", "H hardening", "I growing on", ", emerging"] {
        assert!(frame.contains(message), "{message}\n{frame}");
    }
}

#[test]
fn wide_in_english() {
    let mut stage = trays(Lang::En);
    go(&mut stage, "gre-015");
    insta::assert_snapshot!(stage.frame());
}

#[test]
fn wide_grouped_with_a_late_tray_and_its_drawings() {
    let mut stage = trays(Lang::En);
    stage.keys("jj");
    go(&mut stage, "cof-031");
    stage.keys(".");
    insta::assert_snapshot!(stage.frame());
}

#[test]
fn narrow_in_spanish() {
    let stage = trays(Lang::Es).sized(48, 18);
    insta::assert_snapshot!(stage.frame());
}

#[test]
fn narrow_detail_in_spanish() {
    let mut stage = trays(Lang::Es).sized(48, 18);
    go(&mut stage, "avo-011");
    insta::assert_snapshot!(stage.frame());
}

/// What every screen hands over: nothing here is about to be chosen that is not in the book.
#[test]
fn what_is_chosen_is_in_the_book_whatever_day_is_looked_at() {
    let mut stage = trays(Lang::En);
    go(&mut stage, "cof-031");
    stage.keys("d");
    stage.keys("-200\n");
    let cx: ScreenContext<'_> = stage.model.context();
    assert!(cx.book.picture.trays.contains_key(screen(&stage).place.chosen.as_ref().unwrap()));
    assert_ne!(chosen(&stage), "cof-031", "it was not sown yet");
}
