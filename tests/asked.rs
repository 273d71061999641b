//! What is asked about before it is written, and what is told with it: slips that could be true, and what is unwise.

use std::path::Path;
use std::time::Duration;

use crate::support::program::Home;
use crate::support::screen::Screen;

const SOON: Duration = Duration::from_secs(60);

/// A tray of 24 and a bed with a row of bananas.
fn nursery() -> Home {
    let home = Home::default().begun();
    let came =
        ["tray=cof-1", "species=coffee", "count=48", "from=bought", "form=bag", "age_days=100", "happened=2026-03-01"];
    home.write("plants_received", &came);
    let plan = r#"plan=[{"species":"coffee","pattern":"square","row_m":2,"in_row_m":2}]"#;
    home.write("bed_set", &["bed=Upper 1", "field=Upper", "length_m=20", "width_m=6", plan, "happened=2026-03-01"]);
    let row = ["bed=Upper 1", "nurse=banana", "count=8", "row_m=5", "in_row_m=5", "happened=2026-03-02"];
    home.write("nurse_planted", &row);
    home
}

fn lines_of_the_book(home: &Home) -> usize {
    home.done(&["export"]).lines().count()
}

#[test]
fn more_alive_and_dead_than_were_planted_are_refused_with_both_numbers() {
    let home = nursery();
    home.write("outplanted", &["tray=cof-1", "bed=Upper 1", "count=24", "happened=2026-03-03"]);
    let of = |alive: &str, dead: &str| {
        let pairs = [format!("alive={alive}"), format!("dead={dead}")];
        home.run(&["write", "survival_counted", "bed=Upper 1", "species=coffee", &pairs[0], &pairs[1]])
    };
    let wrong = of("22", "5");
    assert_eq!(wrong.code, 1, "{}", wrong.out);
    for part in ["22 alive and 5 dead, 27 in all", "24 were planted", "nothing was written"] {
        assert!(wrong.err.contains(part), "{part}: {}", wrong.err);
    }
    assert!(of("25", "0").err.contains("25 alive"), "the living alone can be too many");
    assert_eq!(of("22", "2").code, 0);
    let said = home.refused(&["write", "nurse_counted", "bed=Upper 1", "nurse=banana", "alive=9"]);
    assert!(said.contains("9 alive") && said.contains("8 were planted"), "{said}");
    let spanish = home.refused(&["write", "nurse_counted", "bed=Upper 1", "nurse=banana", "alive=9", "--lang", "es"]);
    assert!(spanish.contains("9 vivas") && spanish.contains("8"), "{spanish}");
}

#[test]
fn nurse_plants_that_were_cut_are_not_cut_a_second_time() {
    let home = nursery();
    let felled = |how: &str| home.run(&["write", "nurse_cut", "bed=Upper 1", "nurse=banana", "what=felled", how]);
    assert!(felled("count=9").err.contains("9 banana"), "more than stand");
    assert_eq!(felled("count=8").code, 0);
    let again = felled("count=8");
    assert!(again.code == 1 && again.err.contains("0 stood there"), "{}", again.err);
    assert!(felled("share=0.5").err.contains("no banana"), "a share of none");
    // A mat has several stems.
    let other = nursery();
    other.write("nurse_cut", &["bed=Upper 1", "nurse=banana", "what=stem", "count=12"]);
}

#[test]
fn the_same_again_within_a_day_is_asked_at_a_terminal_and_refused_without_one_unless_it_is_meant() {
    let home = nursery();
    let loss = ["write", "lost", "tray=cof-1", "count=3", "cause=rats"];
    assert_eq!(home.run(&loss).err, "");
    let before = lines_of_the_book(&home);
    let again = home.refused(&loss);
    assert!(again.contains("the same was written already at") && again.contains("--yes"), "{again}");
    assert_eq!(lines_of_the_book(&home), before);
    assert_eq!(
        home.run(&["write", "lost", "tray=cof-1", "count=2", "cause=rats"]).err,
        "",
        "another number is another loss"
    );
    let json = home.json(&[&loss[..], &["--yes"]].concat());
    assert!(json["cautions"][0].as_str().unwrap().contains("written already"), "{json}");
    let before = lines_of_the_book(&home);
    for (answer, code, more) in [("n\r", 1, 0), ("y\r", 0, 1)] {
        let nursery = home.file("nursery.outplant");
        let variables = [
            ("OUTPLANT_NURSERY", nursery.to_str().unwrap()),
            ("OUTPLANT_TODAY", home.today.as_str()),
            ("LANG", "es_CR.UTF-8"),
            ("USER", "mara"),
        ];
        let program = Path::new(env!("CARGO_BIN_EXE_outplant"));
        let mut screen = Screen::run(program, &loss, home.path(), &variables, (100, 24));
        screen.wait_for("de todos modos?");
        assert!(screen.text().contains("lo mismo ya se anotó a las"), "{}", screen.text());
        screen.keys(answer);
        assert_eq!(screen.end(SOON).exit_code(), code, "{}", screen.text());
        assert_eq!(lines_of_the_book(&home), before + more, "{answer:?}");
    }
}

#[test]
fn what_is_asked_is_not_written_without_a_terminal_until_it_is_meant() {
    let home = nursery();
    home.write("place_set", &["place=line 1", "order=1", "shade_pct=50"]);
    let lot = ["lot=cod-L1", "species=Cordia alliodora", "source=own", "mass_g=100", "collected=2026-02-20"];
    home.write("lot_received", &[&lot[..], &["kept=cold", "initial_pct=80"]].concat());
    let with_lot = |code: &'static str, pct: &'static str| -> Vec<&'static str> {
        [&[code][..], &lot[1..], &["kept=cold", pct]].concat()
    };
    let asked: [(&str, Vec<&str>, &str, &str); 7] = [
        ("shade_set", vec!["tray=cof-1", "shade_pct=0.4"], "40", "40 %"),
        ("lot_kept", vec!["lot=cod-L1", "kept=cold", "moisture_pct=0.09"], "9", "9 %"),
        ("pest_seen", vec!["tray=cof-1", "what=ants", "share_pct=0.4"], "40", "40 %"),
        ("lot_received", with_lot("lot=cod-L2", "initial_pct=1"), "100", "100 %"),
        (
            "plants_received",
            vec![
                "tray=cod-9",
                "species=Cordia alliodora",
                "count=20",
                "from=bought",
                "form=bare_root",
                "good_until=2026-12-01",
            ],
            "rarely last",
            "rara vez",
        ),
        ("lost", vec!["tray=cof-1", "count=40", "cause=rats"], "40 of 48", "40 de 48"),
        ("counted", vec!["tray=cof-1", "standing=10"], "38 of 48", "38 de 48"),
    ];
    for (kind, fields, en, es) in &asked {
        let before = lines_of_the_book(&home);
        for (lang, said) in [("en", en), ("es", es)] {
            let words = [&["write", kind][..], fields, &["--lang", lang]].concat();
            let refused = home.refused(&words);
            assert!(refused.to_lowercase().contains(said) && refused.contains("--yes"), "{kind}: {refused}");
            let program = home.run(&[&words[..], &["--json"]].concat());
            assert!(program.code == 1 && program.out.is_empty(), "{kind}: {}", program.out);
        }
        assert_eq!(lines_of_the_book(&home), before, "{kind}");
    }
    // It can be true: with a yes each is written.
    for (kind, fields, ..) in asked.iter().take(5) {
        home.write(kind, &[&fields[..], &["--yes"]].concat());
    }
}

#[test]
fn nothing_is_planted_at_once_where_weeds_were_killed_without_a_yes() {
    let home = nursery();
    let treated = |with: &str, days: &str, more: &[&str]| {
        let with = format!("with={with}");
        let days = format!("plant_after_days={days}");
        home.run(&[&["write", "treated", "bed=Upper 1", "safe_after_days=1", &with, &days][..], more].concat())
    };
    let asked = treated("glyphosate", "0", &[]);
    assert!(asked.code == 1 && asked.err.contains("kills weeds and what is planted into it"), "{}", asked.err);
    assert!(treated("glifosato", "0", &["--lang", "es"]).err.contains("mata las malezas"));
    for (with, days, more) in [("glyphosate", "0", &["--yes"][..]), ("glyphosate", "1", &[]), ("mancozeb", "0", &[])] {
        assert_eq!(treated(with, days, more).code, 0, "{with} {days}");
    }
}

#[test]
fn more_measured_than_stand_and_can_come_up_is_refused_and_less_is_asked_about() {
    let home = nursery();
    home.write("container_set", &["container=bag", "volume_ml=1000", "depth_cm=23"]);
    let sown = ["tray=cof-2", "lot=unknown", "species=coffee", "seeds=64", "container=bag", "cells=64"];
    home.write("sown", &[&sown[..], &["happened=2026-02-10"]].concat());
    // Until somebody counted there is no number to ask about, but never more than the seed can give.
    let measured = |plants: usize, more: &[&str]| {
        let heights = vec![r#"{"height_cm":6}"#; plants].join(",");
        let plants = format!("plants=[{heights}]");
        home.run(&[&["write", "measured", "tray=cof-2", "--dry-run", &plants][..], more].concat())
    };
    assert_eq!(measured(300, &[]).code, 1);
    home.write("counted", &["tray=cof-2", "standing=52", "happened=2026-04-13"]);
    for (plants, said) in [(300, "300 plants measured, but by the books 52 stood"), (69, "69 plants measured")] {
        let refused = measured(plants, &["--yes"]);
        assert!(refused.code == 1 && refused.err.contains(said), "{plants}: {}", refused.err);
    }
    // 52 and the 5 % that a hand count misses are 55; 64 seeds and their 5 % are 68.
    for (plants, asks) in [(55, false), (56, true), (64, true)] {
        let told = measured(plants, &[]);
        let asked = told.out.contains("stood at the last count, and seed is still due");
        assert_eq!((told.code, asked), (0, asks), "{plants}: {}{}", told.out, told.err);
    }
}

#[test]
fn a_batch_of_which_a_line_would_be_asked_about_is_refused_whole_unless_it_is_meant() {
    let home = nursery();
    let sheet = home.with("walk.txt", "cof-1 -3 rats\ncof-1 46\ncof-1 -3 rats\n");
    let sheet = sheet.to_str().unwrap();
    let before = lines_of_the_book(&home);
    let said = home.refused(&["write", "--batch", sheet]);
    assert!(said.contains("line 3: the same as line 1") && said.contains("--yes"), "{said}");
    assert_eq!(lines_of_the_book(&home), before);
    home.done(&["write", "--batch", sheet, "--yes"]);
    assert_eq!(lines_of_the_book(&home), before + 3);
    let again = home.refused(&["write", "--batch", sheet, "--lang", "es"]);
    assert!(again.contains("lo mismo ya se anotó") && again.contains("--yes"), "{again}");
}

#[test]
fn own_words_that_would_be_asked_about_are_not_written_where_nobody_can_answer() {
    let home = nursery();
    let before = lines_of_the_book(&home);
    for (lang, words) in [("en", "44 of 48 plants gone"), ("es", "44 de 48")] {
        let said = home.refused(&["write", "cof-1 4 left", "--lang", lang]);
        assert!(said.contains(words) && said.contains("--yes"), "{said}");
    }
    assert_eq!(lines_of_the_book(&home), before);
    home.done(&["write", "cof-1 4 left", "--yes"]);
    assert_eq!(lines_of_the_book(&home), before + 1);
    home.done(&["write", "cof-1 lost 1 rats"]);
}

#[test]
fn a_loss_of_more_than_half_a_tray_is_asked_about_once() {
    let home = nursery();
    let slip = home.refused(&["write", "counted", "tray=cof-1", "standing=4"]);
    assert!(slip.contains("44 of 48 plants gone"), "{slip}");
    home.write("counted", &["tray=cof-1", "standing=4", "--yes"]);
    // What killed them fills the gap of that count and is no second loss.
    let cause = home.run(&["write", "lost", "tray=cof-1", "count=44", "cause=damping-off"]);
    assert!(cause.code == 0 && cause.err.is_empty(), "{}", cause.err);
    let half = nursery();
    assert_eq!(
        half.run(&["write", "lost", "tray=cof-1", "count=24", "cause=rats"]).err,
        "",
        "half is not more than half"
    );
}

#[test]
fn what_is_not_ready_is_written_with_one_line_of_caution_and_its_reason() {
    let home = nursery();
    let out = home.done(&["write", "outplanted", "tray=cof-1", "bed=Upper 1", "count=10"]);
    let cautions: Vec<&str> = out.lines().filter(|line| line.starts_with("take care: ")).collect();
    assert!(cautions.len() == 1 && cautions[0].contains("cof-1 was not ready to go out to Upper 1: "), "{out}");
    assert!(
        cautions[0].len() > "take care: cof-1 was not ready to go out to Upper 1: ".len() + 5,
        "with its reason: {out}"
    );
    assert!(home.done(&["export"]).contains("\"kind\":\"outplanted\""));
    let sheet = home.with("walk.txt", "cof-1 @ Upper 1 5\n");
    let said = home.done(&["write", "--batch", sheet.to_str().unwrap(), "--lang", "es"]);
    assert!(said.contains("cuidado: cof-1 no estaba lista para salir a Upper 1: "), "{said}");
}

#[test]
fn a_short_line_sets_a_row_of_nurse_plants_as_far_apart_as_planned_or_usual() {
    let home = nursery();
    let came = ["tray=p1", "species=plantain", "count=40", "from=gift", "form=bag", "happened=2026-04-01"];
    home.write("plants_received", &came);
    let plan = r#"plan=[{"species":"plantain","pattern":"rectangle","row_m":4,"in_row_m":2.5}]"#;
    home.write("bed_set", &["bed=A3", "field=Upper", "length_m=40", "width_m=20", plan, "happened=2026-03-01"]);
    let sheet = home.with("walk.txt", "p1 @ A3 30\np1 @ Upper 1 5\n");
    let said = home.done(&["write", "--batch", sheet.to_str().unwrap()]);
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(said.contains("as nurse plants, 4 × 2.5 m"), "as planned: {said}");
    assert!(said.contains("as nurse plants, 3 × 2 m"), "as usual where no plan says so: {said}");
    let why = home.json(&["why", "bed", "A3"]);
    assert!(why.to_string().contains("PLA"), "{why}");
    let half = home.refused(&["write", "outplanted", "tray=p1", "bed=A3", "count=1", "row_m=3"]);
    assert!(half.contains("in_row_m"), "{half}");
}

#[test]
fn bare_roots_that_are_to_keep_for_weeks_are_asked_about() {
    let home = nursery();
    let came = |tray: &str, until: &str, form: &str| {
        let (tray, until, form) = (format!("tray={tray}"), format!("good_until={until}"), format!("form={form}"));
        let fields = ["happened=2026-04-01", &tray, "species=coffee", "count=20", "from=gift", &form, &until];
        let mut words = vec!["write", "plants_received"];
        words.extend(fields);
        home.run(&words).err
    };
    let long = came("cof-7", "2026-04-26", "bare_root");
    assert!(long.contains("cof-7: without soil good for 25 days? They rarely last more than 7"), "{long}");
    assert!(!came("cof-8", "2026-04-08", "bare_root").contains("without soil good for"));
    // Stumps keep longer: of a species of which nobody knows it a week, and as long again with a look.
    assert!(!came("cof-9", "2026-04-15", "stump").contains("without soil good for"));
    let stump = came("cof-10", "2026-04-26", "stump");
    assert!(stump.contains("They rarely last more than 14"), "{stump}");
}

#[test]
fn more_alive_than_lived_by_the_last_count_is_asked_about_once() {
    let home = nursery();
    home.write("outplanted", &["tray=cof-1", "bed=Upper 1", "count=24", "happened=2026-03-03"]);
    let counted = |alive: &str, dead: &str, on: &str, yes: &[&str]| {
        let pairs = [format!("alive={alive}"), format!("dead={dead}"), format!("happened={on}")];
        let words = ["write", "survival_counted", "bed=Upper 1", "species=coffee", &pairs[0], &pairs[1], &pairs[2]];
        home.run(&[&words[..], yes].concat())
    };
    let count = |alive: &str, dead: &str, on: &str| counted(alive, dead, on, &[]);
    assert_eq!(count("10", "14", "2026-03-20").err, "");
    let few = count("12", "12", "2026-03-25");
    assert!(few.code == 0 && few.err.is_empty(), "two are a miscount: {}", few.err);
    let back = count("20", "2", "2026-04-01");
    assert!(back.code == 1 && back.err.contains("20 alive, but 12 lived there by the last count"), "{}", back.err);
    assert_eq!(counted("20", "2", "2026-04-01", &["--yes"]).code, 0);
    let doubts = || home.json(&["ready"])["doubts"].as_array().unwrap().clone();
    assert_eq!(doubts().iter().filter(|doubt| doubt["kind"] == "alive_again").count(), 1);
    let again = count("20", "4", "2026-04-05");
    assert!(!again.err.contains("the dead do not come back"), "{}", again.err);
    assert!(doubts().iter().all(|doubt| doubt["kind"] != "alive_again"), "a second count agrees");
    // Planted since, it is no wonder.
    home.write("outplanted", &["tray=cof-1", "bed=Upper 1", "count=4", "happened=2026-04-06"]);
    assert!(!count("24", "0", "2026-04-07").err.contains("do not come back"));
    let spanish = nursery();
    spanish.write("outplanted", &["tray=cof-1", "bed=Upper 1", "count=24", "happened=2026-03-03"]);
    spanish.write("survival_counted", &["bed=Upper 1", "species=coffee", "alive=10", "dead=14"]);
    let said = spanish.run(&[
        "write",
        "survival_counted",
        "bed=Upper 1",
        "species=coffee",
        "alive=24",
        "dead=0",
        "--lang",
        "es",
    ]);
    assert!((said.out + &said.err).contains("las muertas no vuelven"));
}

#[test]
fn a_list_in_a_batch_may_stand_in_the_quotes_of_a_shell() {
    let home = Home::default().begun();
    let line = r#"bed_set bed="Upper 1" field=Upper length_m=20 width_m=6 plan='[{"species":"coffee","pattern":"square","row_m":2,"in_row_m":2}]'"#;
    let sheet = home.with("beds.txt", format!("{line}\n"));
    home.done(&["write", "--batch", sheet.to_str().unwrap()]);
    assert!(home.done(&["why", "bed", "Upper 1"]).contains("Upper 1"));
}

#[test]
fn a_count_of_so_many_that_are_not_what_stands_is_asked_whether_it_is_whole() {
    let home = nursery();
    let before = lines_of_the_book(&home);
    let flat = |text: String| text.split_whitespace().collect::<Vec<_>>().join(" ");
    for (lang, line, words) in
        [("en", "cof-1 40 of 41", "are 40 all that stand"), ("es", "cof-1 40 de 41", "¿esa es la cuenta entera")]
    {
        let said = flat(home.refused(&["write", line, "--lang", lang]));
        assert!(said.contains(words) && said.contains("cof-1 40") && said.contains("=41"), "{said}");
        assert!(!said.contains("cof-1 -40"), "no loss: {said}");
        let sheet = home.with("walk.txt", format!("{line}\n"));
        let said = flat(home.refused(&["write", "--batch", sheet.to_str().unwrap(), "--lang", lang]));
        assert!(said.contains(words), "{said}");
    }
    let none = flat(home.refused(&["write", "cof-1 0 of 20"]));
    assert!(none.contains("cells_seen=20") && none.contains("cof-1 0"), "{none}");
    assert!(home.refused(&["write", "cof-1 45 of 40"]).contains("more than all"));
    assert_eq!(lines_of_the_book(&home), before);
    // Of all that stand it is the whole count.
    home.done(&["write", "cof-1 47 of 48"]);
    let last = home.done(&["export"]).lines().last().unwrap().to_string();
    assert!(last.contains("\"standing\":47") && !last.contains("cells_seen"), "{last}");
}

#[test]
fn plants_of_a_species_that_is_a_nurse_in_a_bed_join_its_row() {
    let home = nursery();
    let came = ["tray=gl2", "species=gliricidia", "count=40", "from=gift", "form=bag", "happened=2026-03-01"];
    home.write("plants_received", &came);
    let row = ["bed=Upper 1", "nurse=gliricidia", "count=8", "row_m=6", "in_row_m=1.5", "happened=2026-03-02"];
    home.write("nurse_planted", &row);
    let said = home.run(&["write", "gl2 @ Upper 1 10", "--yes"]);
    let flat = said.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("as nurse plants, 6 × 1.5 m"), "{}\n{}", said.out, said.err);
    assert!(!flat.contains("does not name"), "{flat}");
    // A bed without such a row gets none of a tree that is more than a nurse plant.
    let bare = home.run(&["write", "cof-1 @ Upper 1 5", "--yes"]);
    assert!(!bare.out.contains("as nurse plants"), "{}", bare.out);
}

#[test]
fn ready_of_a_place_says_what_stands_there() {
    let home = Home { today: "2026-11-30".into(), ..Home::default() };
    home.done(&["sample", "--into", home.file("nursery.outplant").to_str().unwrap()]);
    for lang in ["en", "es"] {
        let ready = home.done(&["ready", "line 1", "--lang", lang]);
        assert_eq!(ready, home.done(&["why", "place", "line 1", "--lang", lang]));
    }
    assert!(home.json(&["ready", "line 1"])["place"]["trays"].as_array().is_some_and(|trays| !trays.is_empty()));
    assert!(home.refused(&["ready", "lime 1"]).contains("line 1"));
}

#[test]
fn seed_of_which_one_in_a_hundred_is_alive_is_asked_about() {
    let home = nursery();
    let lot = |code: &str, alive: &str| {
        let pairs = [format!("lot={code}"), format!("initial_pct={alive}")];
        let whole = [
            "write",
            "lot_received",
            &pairs[0],
            &pairs[1],
            "species=coffee",
            "source=own",
            "seeds=40",
            "collected=2026-03-01",
            "kept=dry_open",
        ];
        home.run(&whole).err
    };
    assert!(lot("cof-L1", "1").contains("1 %: is that 100 %?"));
    assert!(!lot("cof-L2", "2").contains("is that"), "two in a hundred is a number");
}

#[test]
fn a_count_of_a_part_that_changes_what_can_be_planted_says_so() {
    let home = nursery();
    home.write("container_set", &["container=bag", "volume_ml=1000", "depth_cm=23"]);
    let stood =
        ["tray=cof-2", "species=coffee", "count=73", "from=opening", "form=bag", "container=bag", "age_days=250"];
    home.write("plants_received", &[&stood[..], &["happened=2026-01-10"]].concat());
    let plants = format!("plants=[{}]", vec![r#"{"height_cm":28,"collar_mm":5}"#; 20].join(","));
    home.write("measured", &["tray=cof-2", &plants, "happened=2026-04-14"]);
    let part = ["write", "counted", "tray=cof-2", "standing=10", "cells_seen=20"];
    let told = home.done(&[&part[..], &["--lang", "es"]].concat());
    assert!(told.contains("cof-2: se pueden plantar") && !told.contains("no cambia ningún número"), "{told}");
}

#[test]
fn a_place_or_a_container_nobody_knows_is_told_as_new_and_a_batch_wants_yes() {
    let home = nursery();
    home.write("place_set", &["place=Bench 1", "order=1", "shade_pct=50"]);
    home.write("container_set", &["container=bag 2 l", "volume_ml=2000"]);
    let carried = ["write", "carried", "tray=cof-1", "place=Bench 11"];
    let said = home.done(&carried);
    assert!(said.contains("\"Bench 11\" would be a new place") && said.contains("nearest: Bench 1"), "{said}");
    // Now it is known, and so is what a line beside it describes.
    assert!(!home.done(&["write", "carried", "tray=cof-1", "place=bench 11", "--yes"]).contains("new place"));
    let moved = [
        "write",
        "moved_on",
        "from=cof-1",
        "to=cof-2",
        "count=2",
        "how=potted_on",
        "container=bag 7 l",
        "--lang",
        "es",
    ];
    let said = home.done(&moved);
    assert!(said.contains("«bag 7 l» sería un envase nuevo") && said.contains("bag 2 l"), "{said}");
    let json = home.json(&["write", "carried", "tray=cof-1", "place=Bench 12"]);
    assert!(json["cautions"][0].as_str().unwrap().contains("new place"), "{json}");
    let before = lines_of_the_book(&home);
    let sheet = home.with("walk.txt", "carried tray=cof-1 place=\"Bench 13\"\n");
    let said = home.refused(&["write", "--batch", sheet.to_str().unwrap()]);
    assert!(said.contains("new place") && said.contains("--yes"), "{said}");
    assert_eq!(lines_of_the_book(&home), before);
    home.done(&["write", "--batch", sheet.to_str().unwrap(), "--yes"]);
}

#[test]
fn a_misspelt_place_in_a_sheet_is_refused_with_the_nearest_and_another_number_is_another_bench() {
    let home = nursery();
    home.write("place_set", &["place=Bench 1", "order=1", "shade_pct=50"]);
    let rows = |place: &str| format!("Tray,Species,How many,Bench\navo-{},avocado,20,{place}\n", place.len());
    let sheet = home.with("trays.csv", rows("Bnech 1"));
    let import = ["import", sheet.to_str().unwrap(), "--as", "trays"];
    let said = home.refused(&import);
    assert!(said.contains("'Bnech 1' is not known here") && said.contains("nearest: Bench 1"), "{said}");
    assert!(home.refused(&[&import[..], &["--lang", "es"]].concat()).contains("no se conoce aquí"));
    home.done(&[&import[..], &["--yes"]].concat());
    let other = home.with("other.csv", rows("Bench 22"));
    home.done(&["import", other.to_str().unwrap(), "--as", "trays"]);
}

#[test]
fn a_variety_or_a_graft_beside_the_name_of_a_species_is_kept_and_shown_before_it_is_written() {
    let home = Home::default().begun();
    let sheet = home.with(
        "trays.csv",
        "Tray,Species,How many\ncac-1,cacao (criollo),20\navo-1,avocado Hass grafted,10\ncof-1,café caturra,30\n",
    );
    let import = ["import", sheet.to_str().unwrap(), "--as", "trays"];
    for kept in ["criollo", "Hass grafted", "caturra"] {
        assert!(home.done(&[&import[..], &["--dry-run"]].concat()).contains(kept), "{kept}");
    }
    home.done(&import);
    home.write(
        "plants_received",
        &["tray=avo-2", "species=aguacate (hass injertado)", "count=4", "from=bought", "form=bag"],
    );
    let exported = home.done(&["export"]);
    for kept in ["criollo", "Hass grafted", "caturra", "hass injertado"] {
        assert!(exported.contains(&format!("\"variety\":\"{kept}\"")), "{kept}: {exported}");
    }
    assert!(home.done(&["log", "avo-1"]).contains("Hass grafted"));
}

#[test]
fn plants_moved_on_without_a_container_are_written_with_a_caution() {
    let home = nursery();
    let said = home.done(&["write", "moved_on", "from=cof-1", "to=cof-2", "count=5", "how=potted_on"]);
    assert!(said.contains("cof-2: in what they stand there is not written"), "{said}");
    let said = home.done(&["write", "moved_on", "from=cof-1", "to=cof-3", "count=5", "how=potted_on", "--lang", "es"]);
    assert!(said.contains("cof-3: no se anotó en qué quedan"), "{said}");
    // Into a tray that stands there already nothing is to be said.
    let said = home.done(&["write", "moved_on", "from=cof-1", "to=cof-3", "count=2", "how=potted_on"]);
    assert!(!said.contains("in what they stand"), "{said}");
}

#[test]
fn a_day_that_has_not_come_is_said_so_in_whatever_words() {
    let home = nursery();
    for (day, lang, says) in [
        ("happened=tomorrow", "en", "has not come yet"),
        ("happened=+3", "en", "has not come yet"),
        ("dia=mañana", "es", "todavía no llega"),
        ("happened=2099-12-05", "en", "has not come yet"),
    ] {
        let said = home.refused(&["write", "counted", "tray=cof-1", "standing=40", day, "--lang", lang]);
        assert!(said.contains(says), "{day}: {said}");
    }
    let said = home.refused(&["write", "counted", "tray=cof-1", "standing=40", "--happened", "tomorrow"]);
    assert!(said.contains("has not come yet"), "{said}");
}

#[test]
fn a_day_before_the_tray_came_is_asked_about() {
    let home = nursery();
    let said = home.refused(&["write", "counted", "tray=cof-1", "standing=40", "happened=2026-01-05"]);
    assert!(said.contains("cof-1: 5 Jan 2026 is before the first day written of it, 1 Mar 2026"), "{said}");
    let said = home.refused(&["write", "6 ene 2026 cof-1 40", "--lang", "es"]);
    assert!(said.contains("antes del primer día anotado") && said.contains("--yes"), "{said}");
}

#[test]
fn who_is_not_named_is_told_in_the_language_asked_for() {
    let home = nursery();
    for lang in ["en", "es"] {
        home.done(&["write", "noted", "text=wind", "--who", if lang == "en" { "someone" } else { "alguien" }]);
    }
    let (english, spanish) = (home.done(&["log", "wind"]), home.done(&["log", "wind", "--lang", "es"]));
    assert!(english.contains("someone") && !english.contains("alguien"), "{english}");
    assert!(spanish.contains("alguien") && !spanish.contains("someone"), "{spanish}");
}

#[test]
fn no_nurse_plants_are_none_and_lines_are_told_as_many_as_they_are() {
    let home = Home::default().begun();
    let sheet = "Parcela;Largo;Ancho;Especie;Distancia;Nodrizas;Paradas\nAlta 1;20;6;café;2x2;ninguna;10\n";
    let beds = home.with("beds.csv", sheet);
    home.done(&["import", beds.to_str().unwrap(), "--as", "beds", "--lang", "es"]);
    assert!(home.done(&["export"]).contains("\"alive\":10"));
    let sheet = "Bandeja;Especie;Cuántas;Sembrada hacia\ncof-1;café;40;mitad de enero\ncof-2;café;40;mitad de enero\n";
    let trays = home.with("trays.csv", sheet);
    let import = ["import", trays.to_str().unwrap(), "--as", "trays", "--dry-run"];
    let said = home.done(&[&import[..], &["--lang", "es"]].concat());
    assert!(said.contains("(líneas 2, 3)"), "{said}");
    let said = home.done(&import);
    assert!(said.contains("(lines 2, 3)") && said.contains("the place of 2 trays"), "{said}");
}

#[test]
fn own_figures_by_which_young_plants_wait_no_more_are_asked_about_and_others_are_not() {
    let home = nursery();
    let own = |species: &str, profile: &str| {
        home.run(&["write", "species_set", &format!("species={species}"), &format!("profile={profile}")])
    };
    for (profile, says) in [
        (r#"{"hardening_days":0}"#, "hardening, length"),
        (r#"{"role":"nurse"}"#, "role"),
        (r#"{"stem":"soft"}"#, "stem"),
        (r#"{"height_least_cm":null}"#, "height"),
    ] {
        let asked = own("coffee", profile);
        assert!(asked.code == 1 && asked.err.contains(says) && asked.err.contains("--yes"), "{profile}: {}", asked.err);
    }
    for profile in [r#"{"hardening_days":10}"#, r#"{"height_least_cm":15}"#, r#"{"row_m":2.5}"#] {
        assert_eq!(own("coffee", profile).code, 0, "{profile}");
    }
    let meant = ["write", "species_set", "species=coffee", r#"profile={"hardening_days":0}"#, "--yes"];
    assert_eq!(home.run(&meant).code, 0);
    assert_eq!(own("coffee", r#"{"hardening_days":0}"#).err, "", "it asked nothing before");
}

#[test]
fn a_point_that_slipped_in_a_sample_or_a_depth_is_asked_about() {
    let home = nursery();
    let measured = |height: f64, collar: f64, on: &str| {
        let plants = format!(
            "plants={}",
            serde_json::json!(vec![serde_json::json!({"height_cm":height,"collar_mm":collar}); 10])
        );
        home.run(&["write", "measured", "tray=cof-1", &plants, &format!("happened={on}")])
    };
    assert_eq!(measured(27.0, 3.1, "2026-03-02").code, 0);
    for (height, collar, says) in [(27.0, 31.0, "31 mm thick"), (280.0, 3.5, "280 cm tall"), (2.8, 0.3, "2.8 cm tall")]
    {
        let asked = measured(height, collar, "2026-03-09");
        assert!(asked.code == 1 && asked.err.contains(says) && asked.err.contains("point"), "{says}: {}", asked.err);
    }
    assert_eq!(measured(30.0, 3.5, "2026-03-09").code, 0);
    let holes =
        |depth: &str| home.run(&["write", "prepared", "bed=Upper 1", "task=holes", &format!("depth_cm={depth}")]);
    assert!(holes("400").err.contains("is it centimetres"), "{}", holes("400").err);
    assert_eq!(holes("45").code, 0);
}

#[test]
fn counts_of_many_more_than_can_stand_and_releases_of_several_holds_are_asked_about() {
    let home = nursery();
    let count = |standing: &str| home.run(&["write", "counted", "tray=cof-1", &format!("standing={standing}")]);
    for standing in ["1000000000", "97"] {
        let asked = count(standing);
        assert!(
            asked.code == 1
                && asked.err.contains("more than 48, the most to be expected")
                && asked.err.contains("--yes"),
            "{}",
            asked.err
        );
    }
    assert_eq!(count("60").code, 0, "few more were miscounted before");
    let came =
        ["write", "plants_received", "tray=cof-9", "species=coffee", "from=bought", "form=bag", "count=1000000000"];
    assert!(home.refused(&came).contains("--yes"));
    home.write("held", &["tray=cof-1", "why=sick, keep apart"]);
    home.write("held", &["tray=cof-1", "why=promised"]);
    let all = home.refused(&["write", "released", "tray=cof-1", "why=fine again"]);
    assert!(all.contains("sick, keep apart · promised") && all.contains("--yes"), "{all}");
    assert_eq!(home.run(&["write", "released", "tray=cof-1", "why=promised"]).code, 0);
    let sold = home.refused(&["write", "released", "tray=cof-1", "why=sold to the school"]);
    assert!(sold.contains("sick, keep apart"), "a sick one is not let go of by the word for something else: {sold}");
    assert_eq!(home.run(&["write", "released", "tray=cof-1", "why=healthy"]).code, 0, "one is left");
    let recount = ["write", "stocktaken", "tray=cof-1", "standing=500"];
    assert!(home.refused(&recount).contains("--yes"));
}

#[test]
fn rows_that_a_bed_does_not_have_are_refused_however_they_are_written() {
    let home = nursery();
    for rows in ["99", "[99]", "0", "[0]", "2-99", "[]", "none", "{}"] {
        let said = home.refused(&["write", "prepared", "bed=Upper 1", "task=holes", &format!("rows={rows}")]);
        assert!(said.contains("row"), "{rows}: {said}");
    }
    home.write("prepared", &["bed=Upper 1", "task=holes", "rows=[1]"]);
}

#[test]
fn what_was_seen_of_plants_a_year_before_they_came_is_asked_about() {
    let home = nursery();
    for kind in [&["plug_checked", "roots=crumbles"][..], &["flushed"], &["measured", r#"plants=[{"height_cm":12}]"#]] {
        let mut words = vec!["write", kind[0], "tray=cof-1", "happened=2025-03-29"];
        words.extend(&kind[1..]);
        let said = home.refused(&words);
        assert!(said.contains("cof-1") && said.contains("--yes"), "{said}");
    }
}
