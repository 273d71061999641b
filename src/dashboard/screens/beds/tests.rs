//! Keys and frames of the screen Beds, over the sample nursery.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::{detail, list};
use crate::dashboard::keys::Key;
use crate::dashboard::look::{Look, standing_mark};
use crate::dashboard::message::{Answer, Message};
use crate::dashboard::tests::Stage;
use crate::nursery::entry::subject::Subject;
use crate::reckon::picture::Standing;
use crate::wording::Lang;

const SIZES: [(u16, u16); 6] = [(120, 40), (100, 30), (80, 24), (60, 20), (48, 18), (40, 12)];

fn beds(lang: Lang) -> Stage {
    let mut stage = Stage::sample(lang);
    stage.keys("3");
    stage
}

/// Goes to a bed as a person does who types its name.
fn at(stage: &mut Stage, bed: &str) {
    stage.keys("f");
    stage.text(bed);
    stage.keys("\n");
}

/// The words of a frame in one line, so that a sentence can be looked for although it is wrapped.
fn words(frame: &str) -> String {
    frame.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn wide_in_english() {
    let mut stage = beds(Lang::En);
    at(&mut stage, "School 1");
    insta::assert_snapshot!(stage.frame());
}

#[test]
fn narrow_in_spanish() {
    let stage = beds(Lang::Es).sized(48, 18);
    insta::assert_snapshot!("narrow_list_in_spanish", stage.frame());
    let mut stage = stage;
    at(&mut stage, "School 1");
    insta::assert_snapshot!("narrow_detail_in_spanish", stage.frame());
}

/// The light of a bed by position and month.
fn light_of(bed: &str, lang: Lang, (columns, rows): (u16, u16)) -> Stage {
    let mut stage = beds(lang).sized(columns, rows);
    at(&mut stage, bed);
    stage.keys("m");
    stage
}

#[test]
fn light_by_month_wide_in_english() {
    let mut stage = light_of("School 1", Lang::En, (120, 40));
    stage.keys("++");
    insta::assert_snapshot!(stage.frame());
}

#[test]
fn light_by_month_in_spanish() {
    insta::assert_snapshot!(light_of("School 1", Lang::Es, (80, 24)).frame());
}

#[test]
fn light_by_month_in_a_small_terminal_of_plain_letters() {
    let mut stage = light_of("School 1", Lang::En, (48, 18));
    stage.model.look = Look::new(false, true);
    insta::assert_snapshot!(stage.frame());
}

/// A bed of 40 bananas of ten months, of which a count saw all bunches.
fn with_bunches(lang: Lang, size: (u16, u16)) -> Stage {
    let mut stage = beds(lang).sized(size.0, size.1);
    let plan = "plan=[{\"species\":\"cof\",\"pattern\":\"square\",\"row_m\":3,\"in_row_m\":3}]";
    let bed = ["bed=Slope 9", "field=Ridge", "length_m=30", "width_m=12", "edges=half", "row_bearing_deg=90", plan];
    stage.write("bed_set", &bed);
    let planted = ["bed=Slope 9", "nurse=banana", "count=40", "row_m=3", "in_row_m=3", "happened=2025-06-01"];
    stage.write("nurse_planted", &planted);
    stage.write("nurse_counted", &["bed=Slope 9", "nurse=banana", "alive=40", "bunches_showing=40"]);
    at(&mut stage, "Slope 9");
    stage.keys("m");
    stage
}

/// The line of months: their letters, percents and marks.
fn line_of_months(frame: &str) -> [Vec<String>; 3] {
    let lines: Vec<&str> = frame.lines().collect();
    let first = lines.iter().position(|line| line.replace(' ', "").starts_with("AMJJASOND")).unwrap();
    let cells = |line: &str| {
        let letters: Vec<char> = format!("{line:72}").chars().collect();
        letters.chunks(3).map(|cell| cell.iter().collect::<String>().trim().to_string()).collect()
    };
    [0, 1, 2].map(|below| cells(lines[first + below]))
}

#[test]
fn the_shade_that_goes_with_the_bunches_is_seen_before_it_goes() {
    let mut stage = with_bunches(Lang::En, (80, 24));
    let [_, light, ends] = line_of_months(&stage.frame());
    // Counted on 15 April, cut about 9 July.
    let percents: Vec<u32> = light.iter().filter_map(|percent| percent.parse().ok()).collect();
    assert_eq!((percents.len(), ends[3].as_str()), (24, "!"), "{}", stage.frame());
    assert!(percents[3] > percents[2] + 5 && percents[12] < percents[3] - 20, "{percents:?}");
    // On the plan too, a month at a time.
    let mean = |stage: &Stage| {
        let plan = stage.frame().lines().filter(|line| line.starts_with(" 2 ")).collect::<String>();
        let digits: Vec<u32> = plan.chars().skip(3).filter_map(|digit| digit.to_digit(10)).collect();
        assert!(digits.len() >= 10, "{}", stage.frame());
        f64::from(digits.iter().sum::<u32>()) / digits.len() as f64
    };
    stage.keys("++");
    let before = mean(&stage);
    stage.keys("+");
    assert!(stage.frame().contains("light in Jul 2026") && mean(&stage) > before + 0.3, "{}", stage.frame());
    stage.keys("-");
    assert!((mean(&stage) - before).abs() < 1e-9, "{}", stage.frame());
}

#[test]
fn a_month_is_moved_no_further_than_two_years_and_m_comes_back_to_the_bed() {
    let mut stage = light_of("School 3", Lang::En, (120, 40));
    stage.keys("-");
    assert!(stage.frame().contains("light in Apr 2026"));
    stage.keys(&"+".repeat(40));
    assert!(stage.frame().contains("light in Mar 2028"), "{}", stage.frame());
    stage.key(Key::Home);
    assert!(stage.frame().contains("light in Apr 2026"));
    stage.keys("m");
    assert!(stage.frame().contains("Missing next") && !stage.frame().contains("light in Apr"));
    stage.keys("+q");
    assert!(stage.frame().contains("Missing next") && !stage.left);
}

#[test]
fn the_light_of_every_bed_is_drawn_at_every_size_down_to_its_last_line() {
    for lang in Lang::ALL {
        for (columns, rows) in [(120, 40), (80, 24), (48, 18), (40, 12)] {
            let mut stage = with_bunches(lang, (columns, rows));
            stage.keys(&".".repeat(20));
            let frame = words(&stage.frame());
            let ends = if lang == Lang::En { "in time" } else { "tiempo" };
            assert!(frame.contains(ends), "{columns} x {rows}: {}", stage.frame());
            assert!(frame.contains("Slope 9"), "{columns} x {rows}: {}", stage.frame());
        }
    }
}

#[test]
fn light_that_is_not_reckoned_says_why() {
    let mut stage = beds(Lang::En);
    let plan = "plan=[{\"species\":\"cof\",\"pattern\":\"square\",\"row_m\":3,\"in_row_m\":3}]";
    stage.write("bed_set", &["bed=Slope 9", "field=Ridge", "length_m=30", "width_m=12", plan]);
    at(&mut stage, "Slope 9");
    stage.keys("m");
    assert!(words(&stage.frame()).contains("there is no shade to reckon"), "{}", stage.frame());
    stage.write("nurse_planted", &["bed=Slope 9", "nurse=gliricidia", "count=40", "row_m=3", "in_row_m=3"]);
    assert!(words(&stage.frame()).contains("nothing tells of the crowns of gliricidia"), "{}", stage.frame());
}

#[test]
fn light_of_an_older_drawing_is_not_shown() {
    let mut stage = with_bunches(Lang::En, (80, 24));
    let (asked, months) = stage.model.book.light.clone().unwrap();
    stage.write("nurse_cut", &["bed=Slope 9", "nurse=banana", "what=felled", "count=40"]);
    let [_, light, _] = line_of_months(&stage.frame());
    assert_eq!(light[0], "99", "{}", stage.frame());
    let old = Answer::LightMonth(asked, 0, Box::new(months[&0].clone()));
    stage.send(Message::Answer(Box::new(old)));
    assert_eq!(line_of_months(&stage.frame())[1], light);
}

#[test]
fn north_lies_on_the_plan_where_the_rows_say() {
    // Rows run to the right of the plan: rows to the east have north up, rows to the south have it at the left.
    for (bearing, north) in
        [(90, "up on"), (0, "to the right"), (180, "to the left"), (270, "down on"), (40, "up and to the right")]
    {
        let mut stage = beds(Lang::En).sized(120, 60);
        let plan = "plan=[{\"species\":\"cof\",\"pattern\":\"square\",\"row_m\":3,\"in_row_m\":3}]";
        let rows = format!("row_bearing_deg={bearing}");
        stage.write("bed_set", &["bed=Slope 9", "field=Ridge", "length_m=30", "width_m=12", &rows, plan]);
        at(&mut stage, "Slope 9");
        assert!(words(&stage.frame()).contains(&format!("North is {north}")), "{bearing}: {}", stage.frame());
    }
}

#[test]
fn enter_opens_a_bed_and_q_comes_back_without_leaving() {
    let mut stage = beds(Lang::En).sized(80, 24);
    assert!(stage.frame().contains("Missing next"), "{}", stage.frame());
    stage.keys("\n");
    assert!(stage.frame().contains("m long"), "{}", stage.frame());
    stage.keys("q");
    assert!(stage.frame().contains("Missing next") && !stage.left);
    stage.keys("q\n");
    assert!(stage.left);
}

#[test]
fn the_last_line_of_a_bed_is_reached_at_every_size() {
    for (columns, rows) in SIZES {
        let mut stage = beds(Lang::En).sized(columns, rows);
        at(&mut stage, "School 3");
        stage.keys("\n");
        stage.key(Key::End);
        let frame = words(&stage.frame());
        assert!(frame.contains("6 mo: 39 alive, 71 %") && !frame.contains("more line"), "{columns} x {rows}: {frame}");
    }
}

#[test]
fn each_key_opens_the_form_of_its_work_about_the_bed() {
    let kinds = [
        ('s', "light_read"),
        ('g', "soil_checked"),
        ('p', "prepared"),
        ('c', "survival_counted"),
        ('k', "nurse_counted"),
        ('l', "plants_lost"),
        ('a', "noted"),
    ];
    for (key, kind) in kinds {
        let mut stage = beds(Lang::En);
        at(&mut stage, "School 3");
        stage.key(Key::Char(key));
        let (frame, name) = (stage.frame(), stage.model.wording.kind_name(kind));
        assert!(frame.contains(&name) && frame.contains("School 3"), "{key}: {frame}");
        assert!(!["survival_counted", "plants_lost"].contains(&kind) || frame.contains("arabica coffee"), "{frame}");
    }
}

#[test]
fn ground_work_begins_with_what_the_bed_waits_for() {
    for (bed, work) in [("Ridge 2", "‹ weeded ›"), ("Spring 1", "‹ holes dug ›")] {
        let mut stage = beds(Lang::En);
        at(&mut stage, bed);
        stage.keys("p");
        assert!(stage.frame().contains(work), "{bed}: {}", stage.frame());
    }
}

#[test]
fn y_gives_the_reasons_of_the_species_that_is_chosen() {
    let mut stage = beds(Lang::En);
    at(&mut stage, "School 2");
    stage.key(Key::Down);
    stage.keys("y");
    let frame = stage.frame();
    assert!(frame.contains("School 2, for grevillea") && !frame.contains("School 2, for arabica coffee"), "{frame}");
}

#[test]
fn every_standing_has_its_word_and_its_mark_at_every_size() {
    for lang in Lang::ALL {
        for (columns, rows) in SIZES {
            let mut stage = beds(lang).sized(columns, rows);
            let all = list::choices(&stage.model.context());
            assert!(all.len() > 14);
            for _ in &all {
                let Some(Subject::Bed(name)) = stage.model.screens.at(stage.model.at).chosen(&stage.model.context())
                else {
                    panic!("nothing is chosen");
                };
                let frame = stage.frame();
                let bed = &stage.model.book.picture.beds[&name];
                let message = |standing: Standing| {
                    format!("{} {}", standing_mark(standing).0, stage.model.wording.standing_name(standing))
                };
                let shown = bed.species.iter().any(|line| frame.contains(&message(line.standing)));
                assert!(shown, "{name} at {columns} x {rows}: {frame}");
                stage.key(Key::Down);
            }
        }
    }
}

#[test]
fn every_reason_is_said_whole_and_no_line_is_too_wide() {
    for lang in Lang::ALL {
        let mut stage = beds(lang);
        for choice in list::choices(&stage.model.context()) {
            for width in [20, 36, 40, 48, 60, 80, 116] {
                let cx = stage.model.context();
                let bed = &cx.book.picture.beds[&choice.bed];
                let page = detail::page(bed, choice.species.as_ref(), 0, &cx, width);
                let area = Rect::new(0, 0, 200, page.height() as u16);
                let mut buffer = Buffer::empty(area);
                page.draw(0, area, &mut buffer);
                let mut text = String::new();
                for row in 0..area.height {
                    for column in 0..200 {
                        let symbol = buffer.cell((column, row)).unwrap().symbol();
                        assert!(column < width || symbol == " ", "{} at {width}: {symbol}", choice.bed);
                        text.push_str(symbol);
                    }
                }
                let text = words(&text);
                // Where nothing is open, what else would be missing is left out.
                for line in bed.species.iter().filter(|line| line.standing != Standing::Full) {
                    for criterion in line.criteria.iter().filter(|criterion| criterion.blocks && width >= 36) {
                        let reason = cx.wording.reason(criterion, crate::wording::verdict::About::Bed);
                        assert!(text.contains(&words(&reason)), "{} at {width}: {reason}\n{text}", choice.bed);
                    }
                }
            }
        }
        stage.key(Key::Down);
    }
}

#[test]
fn a_plan_shows_what_is_known_of_each_row() {
    let mut stage = beds(Lang::En);
    at(&mut stage, "School 1");
    stage.keys("\n");
    let frame = stage.frame();
    // Rows 5 and 6 were never planted: 17 places each; the rock lies in row 3, place 9.
    let row = |number: &str| frame.lines().find(|line| line.trim_start().starts_with(number)).unwrap().to_string();
    for open in ["5 ○", "6 ○"] {
        assert_eq!(row(open).matches('○').count(), 17, "{frame}");
    }
    assert_eq!(row("3 ?").matches('■').count(), 1, "{frame}");
    assert!(words(&frame).contains("in rows 1-2, 29 live in 34 places"), "{frame}");
    assert!(frame.contains("a letter is 0.5 m along, a line 1 m across"), "{frame}");
}

#[test]
fn a_long_bed_is_moved_along_and_says_so() {
    let mut stage = beds(Lang::En);
    let plan = "plan=[{\"species\":\"cof\",\"pattern\":\"rectangle\",\"row_m\":2,\"in_row_m\":1}]";
    stage.write("bed_set", &["bed=Long", "field=Ridge", "length_m=400", "width_m=4", plan]);
    at(&mut stage, "Long");
    let frame = words(&stage.frame());
    assert!(frame.contains("of 400 m. Left and right move along."), "{frame}");
    stage.key(Key::Right);
    assert_ne!(words(&stage.frame()), frame);
    for _ in 0..100 {
        stage.key(Key::Right);
    }
    assert!(stage.frame().contains("400 m"), "{}", stage.frame());
}

#[test]
fn light_that_was_read_by_rows_is_a_map_and_no_dark_looks_like_bright_in_plain_letters() {
    let mut stage = beds(Lang::En);
    stage.write("light_read", &["bed=School 1", "light_share=0.2", "rows=1"]);
    stage.write("light_read", &["bed=School 1", "light_share=0.4", "rows=2"]);
    stage.write("light_read", &["bed=School 1", "light_share=0.6", "rows=3-4"]);
    stage.write("light_read", &["bed=School 1", "light_share=0.9", "rows=5"]);
    at(&mut stage, "School 1");
    stage.model.look = Look::new(false, true);
    let frame = stage.frame();
    for bar in ["1 ############ 20 %", "2 ++++++++++++ 40 %", "4 ............ 60 %", "5 ------------ 90 %"] {
        assert!(frame.contains(bar), "{bar}: {frame}");
    }
}

#[test]
fn an_empty_nursery_teaches_how_to_lay_out_a_bed() {
    let mut stage = Stage::empty(Lang::En);
    stage.keys("3");
    assert!(stage.frame().contains("No beds yet"), "{}", stage.frame());
    // No key does harm there.
    stage.keys("sgpckla.,\n");
    stage.key(Key::Up);
    assert!(stage.frame().contains("No beds yet"), "{}", stage.frame());
}

#[test]
fn what_is_gone_is_no_longer_chosen() {
    let mut stage = beds(Lang::En);
    stage.write("bed_set", &["bed=Aaa", "field=Aaa", "length_m=4", "width_m=4", "plan=[]"]);
    at(&mut stage, "Aaa");
    assert!(stage.frame().contains("nothing"), "{}", stage.frame());
    stage.keys("d");
    stage.keys("-100\n");
    let chosen = stage.model.screens.at(stage.model.at).chosen(&stage.model.context());
    let known = |name| stage.model.book.picture.beds.contains_key(name);
    assert!(matches!(&chosen, Some(Subject::Bed(name)) if known(name)), "{chosen:?}");
}
