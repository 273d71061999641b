use super::*;
use crate::nursery::entry::fault::Problem;
use crate::nursery::species::Catalogue;
use crate::share::scribbled::Why;
use proptest::prelude::*;
use serde_json::json;

fn today() -> Day {
    Day::from_ymd(2026, 3, 14).unwrap()
}

fn read(text: &str) -> Result<Vec<(usize, Draft)>, LineFaults> {
    let read = read_all(text);
    read.faults.or(read.lines)
}

fn read_all(text: &str) -> PaperRead {
    let species = Catalogue::built_in();
    let key = |name: &str| species.find(name).unwrap();
    let names = |names: &[&str]| names.iter().map(|name| name.to_string()).collect::<Vec<_>>();
    let known = KnownNames {
        trays: names(&["cof-031", "cof-032", "avo 1", "sb-1"]),
        beds: names(&["Upper", "Upper 1", "Lower terrace"]),
        places: names(&["Bench 4", "Nave de sombra"]),
        lots: names(&["cof-L1", "avo-L2"]),
        containers: names(&["bag", "bag 1 l"]),
        species_of: &|_, name| if name.starts_with("avo") { species.find("avocado") } else { species.find("coffee") },
        standing: &|_| Some(60),
        seeds: &|_| Some(500),
        is_seedbed: &|tray| tray == "sb-1",
        called: &|written| species.named_just(written),
        near: &|_| Vec::new(),
        find: &|written| species.find(written),
        several: &|written| species.resolve(written).several(),
        in_bed: &|bed| match bed {
            "Upper 1" => InBed { plants: vec![key("coffee")], nurses: vec![key("pigeon pea")], ..InBed::default() },
            _ => InBed { plants: vec![key("coffee"), key("avocado")], ..InBed::default() },
        },
        task: &|task| {
            let known = ["count cof-031", "contar cof-031"].iter().any(|known| task.eq_ignore_ascii_case(known));
            if known { Ok("count cof-031".to_string()) } else { Err(vec!["count cof-031".to_string()]) }
        },
    };
    read_paper(text, &known, today() - 1, today(), "mara")
}

fn one(text: &str) -> (String, Value) {
    let drafts = read(text).unwrap_or_else(|faults| panic!("{text}: {faults:?}"));
    assert_eq!(drafts.len(), 1, "{text}");
    let (line, draft) = &drafts[0];
    assert_eq!((*line, draft.happened, draft.who.as_str()), (1, today() - 1, "mara"));
    (draft.kind.clone(), Value::Object(draft.body.clone()))
}

fn fault(text: &str) -> (Option<usize>, Reason) {
    let faults = read(text).expect_err(text);
    assert_eq!((faults.count, faults.listed[0].line), (1, 1), "{text}");
    let reason = match faults.listed[0].reason.clone() {
        // A name nobody knows is told alike by both readers; the one of words offers lines besides.
        Reason::Words { why, .. } if matches!(&why[..], [Why::UnknownName(..)]) => {
            let Why::UnknownName(written, nearest) = why[0].clone() else { unreachable!() };
            Reason::UnknownName { written, nearest }
        }
        reason => reason,
    };
    (faults.listed[0].column, reason)
}

fn said(what: &str, problem: Problem) -> Reason {
    Reason::Said { what: what.into(), problem: Box::new(problem) }
}

fn says(text: &str, kind: &str, body: Value) {
    assert_eq!(one(text), (kind.to_string(), body), "{text}");
}

#[test]
fn counts_losses_and_culls() {
    let tray = "cof-031";
    says("cof-031 41", "counted", json!({"tray": tray, "standing": 41}));
    says("COF-031: 41  # all of them", "counted", json!({"tray": tray, "standing": 41}));
    says("avo 1 7", "counted", json!({"tray": "avo 1", "standing": 7}));
    for about in ["cof-031 ~41", "cof-031 ~ 41", "cof-031 about 41", "cof-031 unas 41"] {
        says(about, "counted", json!({"tray": tray, "standing": 41, "about": true}));
    }
    for dead in ["cof-031 41 dead 2", "cof-031 41 2 muertas"] {
        says(dead, "counted", json!({"tray": tray, "standing": 41, "dead": 2}));
    }
    for lost in ["cof-031 -3 rats", "cof-031 - 3 rats", "\tcof-031\t−3 rats"] {
        says(lost, "lost", json!({"tray": tray, "count": 3, "cause": "rats"}));
    }
    says("cof-031 -3", "lost", json!({"tray": tray, "count": 3, "cause": "not said"}));
    for culled in ["cof-031 x 5 weak ones", "cof-031 x5 weak ones"] {
        says(culled, "culled", json!({"tray": tray, "count": 5, "why": "weak ones"}));
    }
    says("cof-031 recuento 41", "stocktaken", json!({"tray": tray, "standing": 41}));
    says("cof-031 given 5 to the school", "given_out", json!({"tray": tray, "count": 5, "to": "the school"}));
}

#[test]
fn trays_and_seedlings_go_elsewhere() {
    says("cof-031 > bench 4", "carried", json!({"tray": "cof-031", "place": "Bench 4"}));
    says("cof-031>nave de sombra", "carried", json!({"tray": "cof-031", "place": "Nave de sombra"}));
    let moved = json!({"from": "cof-031", "to": "cof-040", "count": 30, "how": "potted_on"});
    says("cof-031 >cof-040 30", "moved_on", moved);
    says(
        "sb-1 > cof-032 30 bag 1 l",
        "moved_on",
        json!({"from": "sb-1", "to": "cof-032", "count": 30, "how": "pricked_out", "container": "bag 1 l"}),
    );
    for planted in ["cof-031 @ Upper 1 30", "cof-031 >> upper 1 30", "cof-031 @Upper 1 30"] {
        says(planted, "outplanted", json!({"tray": "cof-031", "bed": "Upper 1", "count": 30}));
    }
    says("cof-031 @ Upper 30", "outplanted", json!({"tray": "cof-031", "bed": "Upper", "count": 30}));
    let two = read("sb-1 > cof-050 30\ncof-050 29\n").unwrap();
    assert_eq!((two[1].0, &two[1].1.body["tray"]), (2, &json!("cof-050")));
    let typed = read("moved_on from=sb-1 to=new count=3 how=pricked_out\nnew 3\n").unwrap();
    assert_eq!(typed[1].1.body["tray"], json!("new"));
}

#[test]
fn looks_and_steps() {
    let tray = "cof-031";
    says("cof-031 shade 30", "shade_set", json!({"tray": tray, "shade_pct": 30}));
    says("Bench 4 sombra a 30 %", "shade_set", json!({"place": "Bench 4", "shade_pct": 30}));
    for water in ["cof-031 water 2", "cof-031 riego cada 2 días"] {
        says(water, "watering_set", json!({"tray": tray, "every_days": 2}));
    }
    says("cof-031 plug holds", "plug_checked", json!({"tray": tray, "roots": "holds"}));
    says("cof-031 cepellón se desmorona", "plug_checked", json!({"tray": tray, "roots": "crumbles"}));
    says("cof-031 brotes", "flushed", json!({"tray": tray}));
    says("cof-031 hardening", "hardening_begun", json!({"tray": tray}));
    let heights = json!([{"height_cm": 24}, {"height_cm": 26.5}, {"height_cm": 31}]);
    says("cof-031 h 24 26,5 31 cm", "measured", json!({"tray": tray, "plants": heights}));
    let pairs = json!([{"height_cm": 24, "collar_mm": 4.5}, {"height_cm": 26, "collar_mm": 5}]);
    says("cof-031 24/4.5 26/5", "measured", json!({"tray": tray, "plants": pairs}));
    says("cof-031 held promised to the school", "held", json!({"tray": tray, "why": "promised to the school"}));
    says("cof-031 liberada", "released", json!({"tray": tray}));
    says("Bench 4 plaga pulgones", "pest_seen", json!({"place": "Bench 4", "what": "pulgones"}));
    says("cof-031 treated with soap", "treated", json!({"tray": tray, "with": "soap"}));
}

#[test]
fn a_time_behind_what_was_used_is_its_waiting_time() {
    let tray = "cof-031";
    let lines = [
        ("treated copper 7 days", "copper", 7.0),
        ("treated copper, safe 7", "copper", 7.0),
        ("treated XK-42 safe after 2 weeks", "XK-42", 14.0),
        ("treated copper 7d", "copper", 7.0),
        ("treated mancozeb 80 7 days", "mancozeb 80", 7.0),
        ("tratada con cobre 7 días", "cobre", 7.0),
        ("tratada cobre, espera 7", "cobre", 7.0),
        ("tratada cobre 7 días de espera", "cobre", 7.0),
        ("sprayed copper 7 days", "copper", 7.0),
        ("fumigada con cobre 2 semanas", "cobre", 14.0),
    ];
    for (said, with, days) in lines {
        let (kind, body) = one(&format!("{tray} {said}"));
        assert_eq!((kind.as_str(), body["with"].as_str()), ("treated", Some(with)), "{said}: {body}");
        assert_eq!(body["safe_after_days"].as_f64(), Some(days), "{said}: {body}");
    }
    // How often, since when, how much: no waiting time.
    for said in ["treated copper every 7 days", "treated copper 2", "tratada con cobre cada 7 días"] {
        let (_, body) = one(&format!("{tray} {said}"));
        assert!(body["safe_after_days"].is_null(), "{said}: {body}");
    }
}

#[test]
fn beds_weather_and_notes() {
    says("Upper 1 light 60%", "light_read", json!({"bed": "Upper 1", "light_share": 0.6}));
    says("Bench 4 luz 45 %", "light_read", json!({"place": "Bench 4", "light_share": 0.45}));
    for (written, task) in [("weeded", "weeded"), ("hoyos", "holes"), ("Chapeado", "cleared"), ("cercado", "fenced")] {
        says(&format!("lower terrace {written}"), "prepared", json!({"bed": "Lower terrace", "task": task}));
    }
    says("rain 12,5 mm", "weather", json!({"rain_mm": 12.5}));
    says("lluvia 0 min -1 max 27", "weather", json!({"rain_mm": 0, "tmin_c": -1, "tmax_c": 27}));
    says("note the tank @ the gate leaks", "noted", json!({"text": "the tank @ the gate leaks"}));
    says("cof-031 nota hojas  pálidas", "noted", json!({"about": "cof-031", "text": "hojas  pálidas"}));
    says("counted tray=cof-031 standing=41", "counted", json!({"tray": "cof-031", "standing": 41}));
    says("noted text=\"two words\" # why", "noted", json!({"text": "two words"}));
}

#[test]
fn a_day_alone_sets_the_day_of_the_lines_after_it() {
    let drafts =
        read("cof-031 41\n\n# the week before\non 2026-03-05\nrain 3\n6/3/2026\nrain 4\nayer\nrain 5\ncounted tray=avo\\ 1 standing=3").unwrap_err();
    assert_eq!((drafts.count, drafts.listed[0].line), (1, 10));
    let text = "\u{feff}cof-031 41\r\n\r\n# the week before\non 2026-03-05\nrain 3\n6/3/2026\nrain 4\nhoy\nrain 5\nweather rain_mm=2 happened=2026-03-01";
    let days: Vec<(usize, String)> =
        read(text).unwrap().into_iter().map(|(line, draft)| (line, draft.happened.to_string())).collect();
    let expected = [(1, "2026-03-13"), (5, "2026-03-05"), (7, "2026-03-06"), (9, "2026-03-14"), (10, "2026-03-01")];
    assert_eq!(days, expected.map(|(line, day)| (line, day.to_string())));
}

#[test]
fn every_example_of_the_help_is_read_as_its_kind() {
    for (example, kind) in FORMS.iter().chain(FORMS_IN_SPANISH) {
        let read = read(example).unwrap_or_else(|faults| panic!("{example}: {faults:?}"));
        assert_eq!((read.len(), read[0].1.kind.as_str()), (1, *kind), "{example}");
    }
    let kinds = |forms: &[(&str, &'static str)]| forms.iter().map(|(_, kind)| *kind).collect::<Vec<_>>();
    assert_eq!(kinds(FORMS), kinds(FORMS_IN_SPANISH));
}

/// Whatever the number is: sign forms are no counts.
#[test]
fn a_sign_keeps_its_meaning_whatever_the_number() {
    for (line, kind) in [
        ("cof-031 x 40", "culled"),
        ("cof-031 x 55 runts", "culled"),
        ("cof-031 -40 rats", "lost"),
        ("cof-031 - 40", "lost"),
        ("cof-031 ~40", "counted"),
        ("cof-031 > cof-040 40 bag", "moved_on"),
        ("cof-031 @ Upper 1 40", "outplanted"),
        ("cof-031 > Bench 4", "carried"),
    ] {
        assert_eq!(one(line).0, kind, "{line}");
    }
}

/// What a line says of itself leads, whatever kind a short form makes of it.
#[test]
fn what_was_not_done_is_not_written_whatever_its_kind() {
    for line in [
        "cof-031 -3 not rats",
        "cof-031 3 dead maybe",
        "cof-031 x 5 tomorrow",
        "cof-031 given 5 tomorrow",
        "cof-031 treated nothing",
        "cof-031 pest none",
        "cof-031 tratada mañana con jabón",
        "cof-031 grafted 40 not done",
        "cof-031 not held",
        "cof-031 released not yet",
        "Upper 1 coffee 70 alive 5 dead perhaps",
        "must shade Bench 4 30",
        "do not move cof-031 to Bench 4",
        "hay que regar cof-031",
        "cof-031 will be watered every 2 days",
    ] {
        let reason = fault(line).1;
        let is_so = matches!(&reason, Reason::Words { why, .. } if why.iter().any(Why::is_no_fact));
        assert!(is_so || matches!(reason, Reason::ComingDay(_)), "{line}: {reason:?}");
    }
    says("cof-031 held not for sale", "held", json!({"tray": "cof-031", "why": "not for sale"}));
    says("cof-031 note do not water", "noted", json!({"about": "cof-031", "text": "do not water"}));
}

#[test]
fn every_fault_names_its_line_and_column() {
    let unknown = |written: &str, nearest: &[&str]| Reason::UnknownName {
        written: written.into(),
        nearest: nearest.iter().map(|name| name.to_string()).collect(),
    };
    assert_eq!(fault("cof-013 41"), (Some(1), unknown("cof-013", &["cof-031", "cof-032", "cof-L1"])));
    assert_eq!(fault("Ubber 1 weeded").1, unknown("Ubber 1", &["Upper 1", "Upper"]));
    assert_eq!(fault("raim 12"), (Some(1), unknown("raim", &["rain"])));
    assert_eq!(fault("cof-031 > Bench 5").0, Some(11));
    assert!(matches!(fault("cof-031 > Bench 5").1, Reason::UnknownName { .. }));
    assert!(matches!(fault("cof-031 @ Ubber 1 30").1, Reason::UnknownName { .. }));
    let unread = |words: &[&str]| vec![Why::NoReading(words.iter().map(ToString::to_string).collect())];
    assert!(
        matches!(fault("cof-031 41 +2").1, Reason::Words { why, meant } if why == unread(&["+", "2"]) && meant.len() == 1)
    );
    assert_eq!(fault("cof-031"), (Some(8), Reason::NotUnderstood(String::new())));
    assert!(
        matches!(fault("cof-031 fortyish").1, Reason::Words { why, meant } if why == unread(&["fortyish"]) && meant[0][0].kind == "noted")
    );
    assert!(
        matches!(fault("cof-031 shade 30 maybe").1, Reason::Words { why, .. } if why == [Why::Unsure("maybe".into())])
    );
    assert_eq!(fault("cof-031 41.5"), (Some(9), said("standing", Problem::NotWhole("41.5".into()))));
    says("cof-031 two", "counted", json!({"tray": "cof-031", "standing": 2}));
    says("cof-031 menos dos", "lost", json!({"tray": "cof-031", "count": 2, "cause": "not said"}));
    assert_eq!(fault("cof-031 @ Upper 1"), (Some(18), said("count", Problem::Missing)));
    assert_eq!(fault("cof-031 > cof-032"), (Some(18), said("count", Problem::Missing)));
    let is_said = |text: &str, field: &str| matches!(fault(text).1, Reason::Said { what, .. } if what == field);
    assert!(is_said("cof-031 plug soft", "roots"));
    assert!(is_said("cof-031 shade 130", "shade_pct"));
    assert!(is_said("Upper 1 light 160%", "light_share"));
    assert_eq!(fault("on 2026-03-15"), (Some(4), Reason::ComingDay(today() + 1)));
    assert_eq!(fault("31/2/26"), (Some(1), Reason::NotAHandDay("31/2/26".into())));
    assert_eq!(fault("3/13/2026"), (Some(1), Reason::DayInOtherOrder("3/13/2026".into())));
    assert!(matches!(fault("cof-031 4\u{200b}1"), (Some(10), Reason::Unseen { place: 10, .. })));
    assert_eq!(fault("counted tray=cof-031 standin=41").0, Some(22));
    assert_eq!(
        fault(&"x".repeat(LONGEST_PAPER_LINE_BYTES + 1)).1,
        Reason::LineTooLong { most_bytes: LONGEST_PAPER_LINE_BYTES }
    );
    let many = read(&"rain 1\n".repeat(MOST_PAPER_LINES + 5)).unwrap_err();
    assert_eq!((many.count, many.listed[0].line), (1, MOST_PAPER_LINES + 1));
    let both = read("cof-031 41\nx y\ncof-032 -x rats\n").unwrap_err();
    assert_eq!(both.listed.iter().map(|fault| fault.line).collect::<Vec<_>>(), [2, 3]);
}

#[test]
fn commas_part_words_and_dead_alone_are_lost() {
    let tray = "cof-031";
    for plain in ["cof-031, 41", "cof-031,41", "cof-031; 41", "cof-031;41"] {
        says(plain, "counted", json!({"tray": tray, "standing": 41}));
    }
    for dead in [
        "cof-031 90, 2 dead",
        "cof-031, 90, 2 dead",
        "cof-031,90,dead 2",
        "cof-031 90 and 2 dead",
        "cof-031 90 y 2 muertas",
    ] {
        says(dead, "counted", json!({"tray": tray, "standing": 90, "dead": 2}));
    }
    for lost in ["cof-031 3 dead", "cof-031 dead 3", "cof-031: 3 muertas"] {
        says(lost, "lost", json!({"tray": tray, "count": 3, "cause": "not said"}));
    }
    says("cof-031 3 dead, rats", "lost", json!({"tray": tray, "count": 3, "cause": "rats"}));
    says("cof-031 3 muertas por ratas", "lost", json!({"tray": tray, "count": 3, "cause": "ratas"}));
    says(
        "cof-031 h 24, 26,5, 31",
        "measured",
        json!({"tray": tray, "plants": [{"height_cm": 24}, {"height_cm": 26.5}, {"height_cm": 31}]}),
    );
    says("cof-031 note two, or three; pale", "noted", json!({"about": tray, "text": "two, or three; pale"}));
}

#[test]
fn rows_and_numbers_stand_on_either_side_of_the_bed() {
    let rows = json!({"tray": "cof-031", "bed": "Upper 1", "count": 30, "rows": "2-4"});
    for planted in
        ["cof-031 @ Upper 1 30 rows 2-4", "cof-031 30 @ Upper 1 hileras 2-4", "cof-031 @ Upper 1: 30, rows 2-4"]
    {
        says(planted, "outplanted", rows.clone());
    }
    says("@ Upper 1 weeded", "prepared", json!({"bed": "Upper 1", "task": "weeded"}));
    says("@ Bench 4 shade 30", "shade_set", json!({"place": "Bench 4", "shade_pct": 30}));
}

#[test]
fn what_lives_in_a_bed_and_how_hard_it_is() {
    let coffee = Catalogue::built_in().find("coffee").unwrap();
    let both = json!({"bed": "Upper 1", "species": coffee.as_str(), "alive": 70, "dead": 5});
    for written in [
        "Upper 1 alive 70 dead 5",
        "Upper 1 coffee 70 alive, 5 dead",
        "Upper 1 café vivas 70 muertas 5",
        "Upper 1 coffee 70 dead 5",
    ] {
        says(written, "survival_counted", both.clone());
    }
    says(
        "Upper 1 coffee 70 alive 5 dead borer",
        "survival_counted",
        json!({"bed": "Upper 1", "species": coffee.as_str(), "alive": 70, "dead": 5, "causes": "borer"}),
    );
    let pea = Catalogue::built_in().find("pigeon pea").unwrap();
    for written in ["Upper 1 pigeon pea 38", "Upper 1 pigeon pea alive 38", "Upper 1 gandul 38"] {
        says(written, "nurse_counted", json!({"bed": "Upper 1", "nurse": pea.as_str(), "alive": 38}));
    }
    says(
        "Upper 1 pigeon pea 38 wind",
        "nurse_counted",
        json!({"bed": "Upper 1", "nurse": pea.as_str(), "alive": 38, "cause": "wind"}),
    );
    let rod = json!({"bed": "Upper 1", "rod_mm": 8, "push_kg": 10.5, "depth_cm": 30, "wet": true});
    for written in ["Upper 1 rod 8 mm 10.5 kg 30 cm wet", "Upper 1 varilla 8mm, 10,5kg, 30cm, húmedo"] {
        says(written, "soil_checked", rod.clone());
    }
    says("Upper 1 soil 1,2 MPa dry", "soil_checked", json!({"bed": "Upper 1", "resistance_mpa": 1.2, "wet": false}));
    assert_eq!(fault("Upper 1 rod 8 mm").1, said("push_kg", Problem::Missing));
    assert_eq!(fault("Upper 1 coffee 70").1, said("dead", Problem::Missing));
    assert_eq!(
        fault("Lower terrace 70 alive 5 dead").1,
        Reason::WhichSpecies(vec![coffee, Catalogue::built_in().find("avocado").unwrap()])
    );
    // Of how many that live nothing is said: it is asked whether they were lost.
    let Reason::Words { why, meant } = fault("Upper 1 dead 5").1 else { panic!("no loss") };
    assert_eq!((why, meant[0][0].kind), (vec![Why::Several], "plants_lost"));
    assert!(matches!(fault("Upper 1 rod 8 feet").1, Reason::NotUnderstood(_) | Reason::Words { .. }));
}

#[test]
fn seed_and_tasks_let_go() {
    says(
        "cof-040 sown cof-L1 60 bag 1 l",
        "sown",
        json!({"tray": "cof-040", "lot": "cof-L1", "seeds": 60, "container": "bag 1 l"}),
    );
    says(
        "cof-040 sembrada cof-L1 60 semillas en bolsa > Bench 4",
        "sown",
        json!({"tray": "cof-040", "lot": "cof-L1", "seeds": 60, "container": "bolsa", "place": "Bench 4"}),
    );
    says("cof-L1 300 seeds", "lot_counted", json!({"lot": "cof-L1", "seeds": 300}));
    says("cof-L1 250 g", "lot_counted", json!({"lot": "cof-L1", "mass_g": 250}));
    let plates = json!([{"seeds": 50, "germinated": 41}, {"seeds": 50, "germinated": 43}]);
    for written in ["cof-L1 test 41/50 43/50 28 days", "cof-L1 prueba 41/50, 43/50, 28 días"] {
        says(written, "lot_tested", json!({"lot": "cof-L1", "replicates": plates, "days": 28}));
    }
    let gone = json!({"task": "count cof-031", "until": "2026-04-20", "why": "no time"});
    says("let go count cof-031 until 2026-04-20, no time", "let_go", gone);
    says("dejar Count cof-031 nunca", "let_go", json!({"task": "count cof-031", "never": true}));
    let unknown = Reason::UnknownTask { written: "count cof-013".into(), nearest: vec!["count cof-031".into()] };
    assert_eq!(fault("let go count cof-013 never").1, unknown);
    assert_eq!(fault("let go count cof-031").1, said("until", Problem::Missing));
    assert!(
        matches!(fault("cof-040 sown cof-L2 60 bag").1, Reason::UnknownName { nearest, .. } if nearest[0] == "cof-L1")
    );
    let Reason::Words { why, meant } = fault("cof-040 sown cof-L1 60").1 else { panic!("no container") };
    assert_eq!(why, [Why::Lacks("sown", vec!["container".into()])]);
    assert_eq!(meant[0][0].missing, ["container"]);
    let Reason::Words { why, meant } = fault("cof-L1 test 41/50").1 else { panic!("no days") };
    assert_eq!((why, &meant[0][0].missing[..]), (vec![Why::NotSaid("days")], &["days"][..]));
    let two = read("cof-050 sown cof-L1 60 bag\ncof-050 12\n").unwrap();
    assert_eq!(two[1].1.body["tray"], json!("cof-050"));
}

#[test]
fn a_day_before_a_line_is_of_that_line_only() {
    let text = "2026-03-02 cof-031 41\n3/3 cof-032 30\n4 mar avo 1 7\nMar 5: rain 3\nayer rain 4\nrain 5\n24 feb\nrain 6\non 25 feb cof-031 40\nrain 7\n28.2.26 counted tray=cof-031 standing=39\ncounted tray=cof-031 standing=38 happened=ayer\n";
    let days: Vec<String> = read(text).unwrap().into_iter().map(|(_, draft)| draft.happened.to_string()).collect();
    let expected = [
        "2026-03-02",
        "2026-03-03",
        "2026-03-04",
        "2026-03-05",
        "2026-03-13",
        "2026-03-13",
        "2026-02-24",
        "2026-02-25",
        "2026-02-24",
        "2026-02-28",
        "2026-03-13",
    ];
    assert_eq!(days, expected);
    assert_eq!(fault("15/3 cof-031 41"), (Some(1), Reason::ComingDay(today() + 1)));
}

#[test]
fn names_of_two_words_are_found_near() {
    let near = |text: &str| match fault(text) {
        (column, Reason::UnknownName { written, nearest }) => (column, written, nearest[0].clone()),
        other => panic!("{text}: {other:?}"),
    };
    let names = |written: &str, nearest: &str| (written.to_string(), nearest.to_string());
    let of = |text: &str| {
        let (_, written, nearest) = near(text);
        (written, nearest)
    };
    // A slip in a name that only one can be is read in a line that is clear otherwise; its numbers are no slips.
    let read = read_all("Uppper 1 weeded");
    assert_eq!(read.lines[0].1.body["bed"], "Upper 1");
    assert!(matches!(fault("Uppper 7 weeded").1, Reason::UnknownName { .. }));
    assert_eq!(of("cof-031 @ Ubber 1 30 rows 2-4"), names("Ubber 1", "Upper 1"));
    assert_eq!(of("louar terage weeded"), names("louar terage", "Lower terrace"));
    assert_eq!(of("cof-031 > Nabes de zonbras"), names("Nabes de zonbras", "Nave de sombra"));
    assert_eq!(of("cof-l2 300"), names("cof-l2", "cof-L1"));
}

#[test]
fn a_faulty_line_makes_only_its_own_fault() {
    // The new tray of a line that cannot be read is not unknown to the lines after it.
    let read = read_all("sb-1 > cof-060 many\ncof-060 29\ncof-032 11\n");
    assert_eq!((read.faults.count, read.lines.len()), (1, 2));
    assert!(["sb-1", "cof-060"].iter().all(|name| read.doubtful.contains(*name)));
    assert!(!read.doubtful.contains("cof-032"));
    // Under a day that cannot be read nothing is dated.
    let read = read_all("cof-031 41\n31/2/2026\ncof-032 11\nx y\n");
    assert_eq!((read.faults.count, read.lines.len()), (2, 1));
    assert_eq!(read_all("\n# nothing\n2026-03-01\n").faults.listed[0].reason, Reason::NoLines);
}

proptest! {
    #[test]
    fn no_text_makes_it_panic(
        any in any::<String>(),
        near in "((cof-031|cof-L1|Upper 1|Bench 4|rain|on|x|counted|~|>>?|@|-|plug|h|[0-9/.,;]{1,5}|é|tray=|#|\"|sown|test|rod|mm|kg|alive|dead|coffee|let go|until|rows|24 nov|ayer|hace) ?){0,8}",
    ) {
        for text in [any, near] {
            if let Ok(drafts) = read(&text) {
                prop_assert!(drafts.iter().all(|(_, draft)| draft.happened <= today()));
            }
        }
    }
}

#[test]
fn heights_in_mm_are_not_read_as_heights_in_cm() {
    for text in ["cof-031 h 240 250 260 mm", "cof-031 h 240 mm 250 mm"] {
        let (_, reason) = fault(text);
        assert!(!format!("{reason:?}").contains("Missing"), "{reason:?}");
    }
    assert!(read("cof-031 24/4.5 mm").is_ok(), "the collar is in mm");
}
