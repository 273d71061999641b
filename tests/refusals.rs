//! What cannot be true is refused at the desk with its numbers and what to do; from another copy it is kept and doubted.
//! What is true is never refused: not for the order of a file, not for the spelling of a code.

use crate::support::program::Home;
use crate::support::{Book, small_nursery, tray};
use outplant::base::Moment;
use outplant::desk::{Desk, DeskError, Now};
use outplant::reckon::picture::DoubtKind;
use outplant::wording::{Lang, Wording};
use serde_json::{Value, json};

/// Two bought trays and a bed of 4 rows of 11.
fn nursery() -> Home {
    let home = Home::default().begun();
    let lines = [
        json!({"happened":"2025-11-01","kind":"plants_received","tray":"avo-1","species":"avocado","count":30,"from":"bought","form":"bag","container":"bag","place":"Bench 1"}),
        json!({"happened":"2025-11-01","kind":"plants_received","tray":"cof-1","species":"coffee","count":60,"from":"bought","form":"bag","container":"bag","place":"Bench 1"}),
        json!({"happened":"2025-11-01","kind":"bed_set","bed":"Upper 1","field":"Upper","length_m":20,"width_m":6,"plan":[{"species":"coffee","pattern":"square","row_m":2,"in_row_m":2}]}),
        json!({"happened":"2025-11-02","kind":"nurse_planted","bed":"Upper 1","nurse":"banana","count":8,"row_m":5,"in_row_m":5}),
        json!({"happened":"2025-11-02","kind":"lot_received","lot":"cof-L1","species":"coffee","source":"school row","collected":"2025-10-20","seeds":500,"kept":"in_parchment"}),
    ];
    imported(&home, &lines);
    home
}

fn file_of(lines: &[Value]) -> String {
    lines.iter().map(|line| format!("{line}\n")).collect()
}

fn imported(home: &Home, lines: &[Value]) {
    let file = home.with("lines.jsonl", file_of(lines));
    home.done(&["import", file.to_str().unwrap()]);
}

fn standing(home: &Home, code: &str) -> Value {
    let ready = home.json(&["ready"]);
    let trays = ready["trays"].as_array().unwrap();
    trays.iter().find(|tray| tray["tray"] == code).map_or(Value::Null, |tray| tray["standing"].clone())
}

#[test]
fn the_order_of_a_file_leads_within_its_day() {
    let home = nursery();
    // By the nominal hours the label would change first, and nothing would stand under the old code.
    imported(
        &home,
        &[
            json!({"happened":"2025-11-03","kind":"given_out","tray":"avo-1","count":4,"to":"school"}),
            json!({"happened":"2025-11-03","kind":"relabelled","tray":"avo-2","was":"avo-1"}),
            json!({"happened":"2025-11-04","kind":"given_out","tray":"cof-1","count":20,"to":"village"}),
            json!({"happened":"2025-11-04","kind":"counted","tray":"cof-1","standing":40}),
        ],
    );
    assert_eq!((standing(&home, "avo-2"), standing(&home, "cof-1")), (json!(26), json!(40)));
    assert_eq!(home.json(&["ready"])["doubts"], json!([]));
    assert_eq!(home.json(&["check"])["replay_same"], json!(true));
    // The same lines as two commands: the nominal hours lead, the count comes before the giving.
    let apart = nursery();
    apart.write("given_out", &["tray=cof-1", "count=20", "to=village", "happened=2025-11-04"]);
    apart.write("counted", &["tray=cof-1", "standing=60", "happened=2025-11-04"]);
    assert_eq!(standing(&apart, "cof-1"), json!(40));
}

#[test]
fn a_code_that_was_given_up_leads_to_the_new_one() {
    let home = nursery();
    home.write("relabelled", &["tray=avo-2", "was=avo-1", "happened=2025-11-03"]);
    for words in [
        &["write", "counted", "tray=avo-1", "standing=20"][..],
        &["write", "lost", "tray=AVO-1", "count=2", "cause=rats"],
    ] {
        let said = home.refused(words);
        assert!(said.contains("avo-1 is called avo-2 since 3 Nov 2025"), "{words:?}: {said}");
    }
    // What happened before, or on the day itself, was rightly written under the old code.
    home.write("lost", &["tray=avo-1", "count=2", "cause=rats", "happened=2025-11-02"]);
    assert_eq!(standing(&home, "avo-2"), json!(28));
    // In one file: behind the change the old code stands for nothing.
    let lines = [
        json!({"happened":"2025-12-01","kind":"relabelled","tray":"avo-3","was":"avo-2"}),
        json!({"happened":"2025-12-02","kind":"given_out","tray":"avo-2","count":1,"to":"school"}),
    ];
    let file = home.with("lines.jsonl", file_of(&lines));
    let said = home.refused(&["import", file.to_str().unwrap()]);
    assert!(said.contains("line 2") && said.contains("avo-2 is called avo-3 since 1 Dec 2025"), "{said}");
}

#[test]
fn what_cannot_be_true_is_refused_with_its_numbers_and_what_to_do() {
    let home = nursery();
    home.write("container_set", &["container=tray", "volume_ml=90"]);
    home.write("sown", &["tray=cof-5", "lot=cof-L1", "seeds=60", "container=tray", "cells=60", "happened=2026-01-01"]);
    let before = home.done(&["export"]);
    let plants = format!("plants=[{}]", vec![r#"{"height_cm":20}"#; 41].join(","));
    let cases: [(&[&str], &[&str]); 20] = [
        (&["outplanted", "tray=cof-1", "bed=Upper 1", "count=12", "at=9.3"], &["4 rows", "11 places", "9.3", "plan"]),
        (&["outplanted", "tray=cof-1", "bed=Upper 1", "count=12", "rows=3-7"], &["4 rows", "3-7"]),
        (&["light_read", "bed=Upper 1", "light_share=0.5", "at=1.12"], &["11 places", "1.12"]),
        (&["nurse_counted", "bed=Upper 1", "nurse=banana", "alive=7", "at=3.1"], &["2 rows", "3.1"]),
        (&["positions_blocked", "bed=Upper 1", r#"at=["5.1"]"#, "why=rock"], &["4 rows", "5.1"]),
        (&["outplanted", "tray=cof-1", "bed=Upper 1", "count=45"], &["45", "44 positions open", "plan of the bed"]),
        (&["weather", "tmin_c=24", "tmax_c=12.5"], &["24", "12.5", "mend"]),
        (
            &[
                "lot_received",
                "lot=L2",
                "species=coffee",
                "source=x",
                "collected=2025-12-02",
                "seeds=9",
                "kept=cold",
                "happened=2025-12-01",
            ],
            &["2 Dec 2025", "1 Dec 2025"],
        ),
        (&["plants_found", "bed=Upper 1", "species=coffee", "alive=3", "planted_about=2026-05-01"], &["1 May 2026"]),
        (
            &["survival_counted", "bed=Upper 1", "species=coffee", "alive=3", "dead=0", "outplanted_on=2026-05-01"],
            &["outplanted_on", "1 May 2026"],
        ),
        (&["measured", "tray=avo-1", &plants], &["41", "30", "count"]),
        (&["counted", "tray=cof-5", "standing=20", "cells_seen=70"], &["70", "60"]),
        (&["counted", "tray=cof-5", "standing=20", "cells_seen=30", "cells_filled=31"], &["31", "30"]),
        (&["counted", "tray=cof-5", "standing=20", "cells_filled=21"], &["21", "20"]),
        (&["nurse_counted", "bed=Upper 1", "nurse=banana", "alive=7", "bunches_showing=8"], &["8", "7"]),
        (&["moved_on", "from=avo-1", "to=AVO-1", "count=3", "how=potted_on"], &["avo-1", "itself"]),
        (
            &[
                "nursery_set",
                "name=x",
                "latitude_deg=0",
                "longitude_deg=36",
                "altitude_m=1",
                "utc_offset_h=3",
                "planting_days_per_week=8",
            ],
            &["7"],
        ),
        (
            &["plants_received", "tray=z", "species=coffee", "count=4", "from=bought", "form=bag", "age_days=-3"],
            &["age_days", "-3"],
        ),
        (&["bed_set", "bed=Z", "field=F", "length_m=0", "width_m=6", "plan=[]"], &["length_m"]),
        (&["nurse_cut", "bed=Upper 1", "nurse=banana", "what=leaves", "share=1.2"], &["share", "1"]),
    ];
    for (words, expected) in cases {
        let mut all = vec!["write"];
        all.extend(words);
        let said = home.refused(&all);
        for part in expected {
            assert!(said.contains(part), "{words:?} should say {part}: {said}");
        }
        all.extend(["--lang", "es"]);
        assert_ne!(home.refused(&all), said, "{words:?} is said in Spanish too");
    }
    assert_eq!(home.done(&["export"]), before);
}

#[test]
fn lines_that_only_together_cannot_be_true_are_refused_and_what_is_true_goes_in() {
    let home = nursery();
    // The second line of a day is read with the first.
    home.write("weather", &["tmax_c=20"]);
    for (words, expected) in [
        (&["held", "tray=cof-1", "why=promised", "until=2026-04-01"][..], ["1 Apr 2026", "15 Apr 2026"]),
        (&["let_go", "task=gauge", "until=2026-04-01"], ["1 Apr 2026", "15 Apr 2026"]),
        (&["resown", "tray=avo-1", "lot=cof-L1", "seeds=5"], ["avocado", "coffee"]),
        (&["moved_on", "from=avo-1", "to=cof-1", "count=5", "how=merged"], ["coffee", "avocado"]),
        (&["sown_in_bed", "bed=Upper 1", "species=coffee", "seeds_per_hole=2", "holes=45"], ["45", "44"]),
        (&["treated", "tray=avo-1", "with=x", "safe_after_days=1000000"], ["safe_after_days", "3653"]),
    ] {
        let said = home.refused(&[&["write"], words].concat());
        assert!(expected.iter().all(|part| said.contains(part)), "{words:?}: {said}");
    }
    let said = home.refused(&["write", "weather", "tmin_c=21"]);
    assert!(said.contains("21") && said.contains("20"), "{said}");
    // What is true goes in: all 44 positions, a sample of what stands, a bed whose plan does not name the species.
    home.write("outplanted", &["tray=cof-1", "bed=Upper 1", "count=44", "rows=1-4"]);
    home.write("outplanted", &["tray=avo-1", "bed=Upper 1", "count=20"]);
    home.write("nurse_counted", &["bed=Upper 1", "nurse=banana", "alive=7", "at=2.4"]);
}

#[test]
fn from_another_copy_it_is_kept_and_doubted_and_a_survival_count_settles_the_room() {
    let mut book = small_nursery();
    book.write("2025-01-01", "bed_set", json!({"bed":"Upper 1","field":"U","length_m":20,"width_m":6,"plan":[{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]}));
    book.write(
        "2025-02-01",
        "plants_received",
        json!({"tray":"cof-1","species":"COA","count":90,"from":"bought","form":"bag"}),
    );
    book.write("2025-02-02", "outplanted", json!({"tray":"cof-1","bed":"Upper 1","count":50,"at":["9.1"]}));
    book.write("2025-02-02", "measured", json!({"tray":"cof-1","plants":vec![json!({"height_cm":20}); 50]}));
    book.write("2025-02-03", "measured", json!({"tray":"cof-1","plants":vec![json!({"height_cm":20}); 50]}));
    book.write("2025-02-03", "weather", json!({"tmin_c":20,"tmax_c":10}));
    book.write(
        "2025-02-03",
        "lot_received",
        json!({"lot":"L9","species":"COA","source":"x","collected":"2025-02-04","seeds":9,"kept":"cold"}),
    );
    book.write(
        "2025-02-03",
        "plants_found",
        json!({"bed":"Upper 1","species":"COA","alive":1,"planted_about":"2025-02-04"}),
    );
    let doubts = |book: &Book| book.on("2025-02-10").doubts;
    let count = |book: &Book, is: fn(&DoubtKind) -> bool| doubts(book).iter().filter(|doubt| is(&doubt.kind)).count();
    assert_eq!(count(&book, |kind| matches!(kind, DoubtKind::CannotBe(_))), 3);
    assert_eq!(count(&book, |kind| matches!(kind, DoubtKind::SampleLarger { sample: 50, stood: 40, .. })), 1);
    assert_eq!(count(&book, |kind| matches!(kind, DoubtKind::NoSuchPosition { rows: 4, places: 11, .. })), 1);
    let room = |kind: &DoubtKind| matches!(kind, DoubtKind::MoreOutThanPositions { out: 50, open: 44, .. });
    assert_eq!(count(&book, room), 1);
    assert_eq!(tray(&book.on("2025-02-10"), "cof-1").standing, 40, "what was written is booked all the same");
    for lang in Lang::ALL {
        let wording = Wording::new(lang);
        let said: Vec<String> =
            doubts(&book).iter().map(|doubt| wording.doubt(doubt, &book.on("2025-02-10").site.species)).collect();
        assert!(said.iter().any(|sentence| sentence.contains("50") && sentence.contains("44")), "{said:?}");
    }
    book.write("2025-02-05", "survival_counted", json!({"bed":"Upper 1","species":"COA","alive":44,"dead":7}));
    assert_eq!(count(&book, room), 0);
}

#[test]
fn a_code_written_with_other_letters_is_the_same_tray() {
    let home = nursery();
    home.write("counted", &["tray=COF-1", "standing=58", "happened=2025-11-05"]);
    home.write("carried", &["tray=cof-1", "place=bench 1", "happened=2025-11-06"]);
    assert_eq!(standing(&home, "cof-1"), json!(58));
    let said = home.refused(&["write", "sown", "tray=Cof_1", "lot=COF-l1", "seeds=9", "container=bag"]);
    assert!(said.contains("cof-1 is the code of another tray"), "{said}");
    let exported = home.done(&["export"]);
    assert!(!exported.contains("COF-1") && !exported.contains("bench 1"), "one spelling each: {exported}");
    // Within one file too, and a label may still be written again with other letters.
    let lines = [
        json!({"kind":"plants_received","tray":"Gre-7","species":"grevillea","count":9,"from":"gift","form":"bag","happened":"2026-01-01"}),
        json!({"kind":"counted","tray":"gre-7","standing":8,"happened":"2026-01-02"}),
        json!({"kind":"relabelled","tray":"gre-7","was":"Gre-7","happened":"2026-01-03"}),
    ];
    imported(&home, &lines);
    assert_eq!(standing(&home, "gre-7"), json!(8));
}

#[test]
fn what_is_missing_is_named() {
    let home = nursery();
    let said = home.refused(&["write", "shade_set", "tray=cof-1", "place=Bench 1", "shade_pct=30"]);
    assert!(said.contains("one of these, and more are written: tray / place"), "{said}");
    let said = home.refused(&["write", "shade_set", "shade_pct=30"]);
    assert!(said.contains("one of these is needed: tray / place"), "{said}");
    let line =
        home.with("lines.jsonl", r#"{"id":"abcdefgh:3","kind":"flushed","tray":"cof-1","happened":"2026-01-01"}"#);
    let said = home.refused(&["import", line.to_str().unwrap()]);
    assert!(said.contains("recorded, command, hash") && said.contains("leave the id out"), "{said}");
    let said = home.refused(&["import", "nowhere.jsonl"]);
    assert!(said.contains("nowhere.jsonl") && !said.contains("begin"), "{said}");
    let folder = home.file("no such folder");
    let said = home.refused(&["backup", folder.join("x.outplant").to_str().unwrap()]);
    assert!(said.contains(folder.to_str().unwrap()) && !said.contains("x.outplant"), "{said}");
    assert!(!folder.exists(), "no folder is made");
}

#[test]
fn a_copied_file_with_a_copied_identity_is_refused_as_a_fork() {
    let home = nursery();
    let twin = Home::default();
    copied(home.path(), twin.path());
    // A whole disk was cloned: there the file lies at the same place, which has to be said here.
    let place = |home: &Home| home.path().canonicalize().unwrap().display().to_string();
    for note in std::fs::read_dir(twin.file(".config/outplant/devices")).unwrap().map(|note| note.unwrap().path()) {
        let text = std::fs::read_to_string(&note).unwrap().replace(&place(&home), &place(&twin));
        std::fs::write(&note, text).unwrap();
    }
    home.write("lost", &["tray=cof-1", "count=3", "cause=rats"]);
    twin.write("lost", &["tray=cof-1", "count=5", "cause=drought"]);
    let last = |home: &Home| {
        let line: Value = serde_json::from_str(home.done(&["export"]).lines().last().unwrap()).unwrap();
        line["id"].as_str().unwrap().to_string()
    };
    assert_eq!(last(&home), last(&twin), "both wrote the same number as the same device");
    let before = home.done(&["export"]);
    let theirs = home.with("theirs.jsonl", twin.done(&["export"]));
    for words in [&["import", theirs.to_str().unwrap()][..], &["import", theirs.to_str().unwrap(), "--dry-run"]] {
        let said = home.refused(words);
        assert!(said.contains(&last(&home)) && said.contains("another text"), "{words:?}: {said}");
    }
    assert_eq!(home.done(&["export"]), before);
    assert_eq!(standing(&home, "cof-1"), json!(57));
    assert_eq!(home.json(&["check"])["sound"], json!(true));
}

fn copied(from: &std::path::Path, to: &std::path::Path) {
    std::fs::create_dir_all(to).unwrap();
    for entry in std::fs::read_dir(from).unwrap() {
        let (entry, path) = entry.map(|entry| (entry.path(), to.join(entry.file_name()))).unwrap();
        if entry.is_dir() { copied(&entry, &path) } else { std::fs::copy(&entry, &path).map(drop).unwrap() }
    }
}

#[test]
fn gaps_whose_dead_nobody_wrote_are_refilled_with_a_doubt_that_a_survival_count_settles() {
    let home = nursery();
    home.write("outplanted", &["tray=cof-1", "bed=Upper 1", "count=44", "happened=2026-02-01"]);
    for (lang, entry, doubt) in [
        ("en", "from tray cof-1 planted out in bed Upper 1", "0 positions open"),
        ("es", "de bandeja cof-1 plantadas en parcela Upper 1", "0 hoyos libres"),
    ] {
        let words = ["write", "outplanted", "tray=cof-1", "bed=Upper 1", "count=10", "--lang", lang, "--dry-run"];
        let said = home.done(&words);
        assert!(said.contains(entry) && said.contains(doubt), "{said}");
    }
    assert_eq!(standing(&home, "cof-1"), json!(16), "nothing was written");
    let said = home.done(&["write", "outplanted", "tray=cof-1", "bed=Upper 1", "count=10"]);
    assert!(said.contains("10 arabica coffee") && said.contains("0 positions open"), "{said}");
    assert_eq!(standing(&home, "cof-1"), json!(6), "what was done is in the book");
    let ready = home.json(&["ready"]);
    assert_eq!(ready["doubts"][0]["kind"], json!("more_out_than_positions"), "{:#}", ready["doubts"]);
    home.write("survival_counted", &["bed=Upper 1", "species=coffee", "alive=43", "dead=11"]);
    assert_eq!(home.json(&["ready"])["doubts"], json!([]));
}

#[test]
fn what_happened_on_the_day_a_tray_came_in_is_never_before_its_coming() {
    let mut home = nursery();
    let sheet = home.with("trays.csv", "Tray,Species,How many\ngre-1,grevillea,30\n");
    home.done(&["import", sheet.to_str().unwrap(), "--as", "trays"]);
    let bought = json!({"happened":"2026-04-15","clock":"17:30","kind":"plants_received","tray":"jac-1","species":"jackfruit","count":20,"from":"bought","form":"bag"});
    let sown = json!({"happened":"2026-04-15","clock":"17:40","kind":"sown","tray":"cof-7","lot":"cof-L1","seeds":20,"container":"bag"});
    imported(&home, &[bought, sown]);
    // The next morning, yesterday's paper: no line has a time of day.
    home.today = "2026-04-16".into();
    let paper = home.with("paper.txt", "gre-1 -3 rats\njac-1 -2 rats\njac-1 > Bench 1\n");
    home.done(&["write", "--batch", paper.to_str().unwrap(), "happened=yesterday"]);
    home.write("given_out", &["tray=jac-1", "count=4", "to=school", "happened=2026-04-15"]);
    assert_eq!((standing(&home, "gre-1"), standing(&home, "jac-1")), (json!(27), json!(14)));
    assert_eq!(home.json(&["ready"])["doubts"], json!([]));
    // More than came in is still too many, and the numbers are those of that evening.
    let said = home.refused(&["write", "lost", "tray=jac-1", "count=15", "cause=rats", "happened=2026-04-15"]);
    assert!(said.contains("15") && said.contains("14"), "{said}");
    assert_eq!(home.json(&["check"])["replay_same"], json!(true));
}

#[test]
fn what_a_clock_that_ran_ahead_wrote_can_be_taken_back() {
    let mut home = nursery();
    home.today = "2027-03-01".into();
    home.write("lost", &["tray=cof-1", "count=5", "cause=rats"]);
    home.today = "2026-04-15".into();
    assert_eq!(standing(&home, "cof-1"), json!(60));
    let said = home.done(&["undo"]);
    assert!(said.contains("cof-1") && said.contains("rats"), "{said}");
    // With it the doubt about the clock is gone, though no entry can be recorded earlier than the one before.
    home.write("lost", &["tray=cof-1", "count=1", "cause=frost"]);
    let ended = home.run(&["ready"]);
    assert_eq!((ended.code, ended.err.as_str()), (0, ""));
    home.done(&["undo"]);
    home.today = "2027-03-02".into();
    assert_eq!(standing(&home, "cof-1"), json!(60));
}

#[test]
fn a_nursery_that_could_not_be_begun_is_not_left_lying_about() {
    let folder = tempfile::tempdir().unwrap();
    let (file, shelf) = (folder.path().join("nursery/book.outplant"), folder.path().join("shelf"));
    let today = crate::support::day("2026-04-15");
    let now = Now { today, clock: None, moment: Moment::end_of(today, 3.0) };
    let write = |kind: &str, pairs: &[&str]| {
        let pairs: Vec<String> = pairs.iter().map(|pair| pair.to_string()).collect();
        outplant::desk::read_typed(kind, &pairs, today, "tabu").unwrap()
    };
    let place = ["name=Kilima", "latitude_deg=-1.2", "longitude_deg=36", "altitude_m=1650", "utc_offset_h=3"];
    let first = || write("nursery_set", &place);
    let unknown = write("lost", &["tray=cof-9", "count=2", "cause=rats"]);
    let refused = Desk::begin(&file, &shelf, now, vec![first(), unknown]).map(|_| ());
    assert!(matches!(&refused, Err(DeskError::Refused(_))), "{refused:?}");
    assert_eq!(std::fs::read_dir(folder.path().join("nursery")).unwrap().count(), 0, "something is left");
    let (desk, begun) = Desk::begin(&file, &shelf, now, vec![first()]).unwrap();
    assert_eq!((desk.count(), begun.entries.len()), (1, 1));
    // A book that holds something is never taken away, whatever is refused.
    drop(desk);
    assert!(Desk::begin(&file, &shelf, now, vec![first()]).is_err());
    assert_eq!(Desk::open(&file, &shelf, now).unwrap().count(), 1);
}

#[test]
fn a_new_name_of_letters_that_only_look_like_others_is_refused() {
    let home = nursery();
    // A Cyrillic o stands for the Latin one.
    let plan = r#"plan=[{"species":"coffee","pattern":"square","row_m":2,"in_row_m":2}]"#;
    for words in [
        vec!["write", "place_set", "place=Bеnch 1", "order=1", "shade_pct=50"],
        vec!["write", "bed_set", "bed=Uppеr 1", "field=Upper", "length_m=20", "width_m=6", plan],
        vec!["write", "sown", "tray=cоf-2", "lot=cof-L1", "seeds=10", "container=bag"],
    ] {
        let ended = home.run(&words);
        assert_eq!(ended.code, 1, "{words:?} {}{}", ended.out, ended.err);
        assert!(ended.err.contains("two alphabets"), "{}", ended.err);
    }
    // Names all in one alphabet, accents among them, are names.
    for place in ["Ñandú", "Сад", "Φ 2"] {
        home.write("place_set", &[&format!("place={place}"), "order=9", "shade_pct=50"]);
    }
}

#[test]
fn an_entry_named_twice_is_taken_back_once() {
    let home = nursery();
    let written = home.json(&["write", "counted", "tray=cof-1", "standing=50"]);
    let id = written["entries"][0]["entry"].as_str().or(written["entries"][0].as_str()).unwrap().to_string();
    home.write("withdrawn", &[&format!(r#"entries=["{id}","{id}"]"#), "why=slip"]);
    let last = home.json(&["log", "--most", "1"]);
    assert_eq!(home.done(&["export"]).matches(&format!("[\"{id}\"]")).count(), 1, "{last}");
}

#[test]
fn what_describes_and_is_rarely_meant_is_asked_about() {
    let home = nursery();
    let plan = r#"plan=[{"species":"coffee","pattern":"square","row_m":2,"in_row_m":2}]"#;
    let dense = r#"plan=[{"species":"coffee","pattern":"square","row_m":0.001,"in_row_m":0.001}]"#;
    let usual = ["write", "bed_set", "bed=Upper 2", "field=Upper", "length_m=100", "width_m=100", plan];
    assert_eq!(home.run(&usual).err, "");
    for (words, said) in [
        (vec!["bed_set", "bed=Wide", "field=Upper", "length_m=100000", "width_m=100000", plan], "in metres"),
        (vec!["bed_set", "bed=Dense", "field=Upper", "length_m=20", "width_m=6", dense], "no position"),
        (vec!["let_go", "task=measure cof-1", "until=2026-05-01", "never=true", "why=no"], "which is meant"),
        (vec!["settled", "what=restored"], "nothing is missing"),
        (vec!["settled", "what=clock", "of=zzz"], "no entry called \"zzz\""),
    ] {
        // Without a terminal one entry is told of, as every remark is; at one it is asked about.
        let words: Vec<&str> = ["write"].into_iter().chain(words).collect();
        let ended = home.run(&words);
        assert!(ended.err.contains(said), "{words:?} {}{}", ended.out, ended.err);
        let meant: Vec<&str> = words.iter().copied().chain(["--yes", "--dry-run"]).collect();
        assert!(home.done(&meant).contains(said), "{meant:?}");
    }
}

#[test]
fn where_the_nursery_lies_is_not_taken_back_without_a_yes() {
    let home = nursery();
    let export = home.done(&["export"]);
    let set = export.lines().find(|line| line.contains("nursery_set")).unwrap();
    let set: serde_json::Value = serde_json::from_str(set).unwrap();
    let id = set["id"].as_str().unwrap();
    let said = home.refused(&["undo", id, "--only"]);
    assert!(said.contains("where the nursery lies"), "{said}");
    assert_eq!(home.done(&["export"]), export);
    assert_eq!(home.run(&["undo", id, "--only", "--yes"]).code, 0);
}

#[test]
fn a_clock_set_right_is_told_which_entry_keeps_it_in_doubt_and_what_to_type() {
    let mut home = nursery();
    home.today = "2099-01-01".into();
    home.write("weather", &["rain_mm=3"]);
    home.today = "2026-04-15".into();
    let export = home.done(&["export"]);
    let of_2099 = export.lines().find(|line| line.contains("2099-01-01")).unwrap();
    let of_2099: Value = serde_json::from_str(of_2099).unwrap();
    let id = of_2099["id"].as_str().unwrap();
    for lang in ["en", "es"] {
        let warned = home.run(&["ready", "--lang", lang]).err;
        assert!(warned.contains(&format!("outplant undo {id}")) && warned.contains("settled what=clock"), "{warned}");
    }
    let early = home.run(&["write", "settled", "what=clock"]).err;
    assert!(early.contains("still to come") && early.contains(id), "{early}");
    home.done(&["undo", id]);
    home.write("settled", &["what=clock"]);
    assert_eq!(home.run(&["ready"]).err, "");
}
