use super::*;
use crate::nursery::entry::fault::Problem;
use proptest::prelude::*;
use serde_json::json;

fn today() -> Day {
    Day::from_ymd(2026, 3, 14).unwrap()
}

fn read(text: &str) -> Result<Vec<(usize, Draft)>, LineFaults> {
    let names = |names: &[&str]| names.iter().map(|name| name.to_string()).collect::<Vec<_>>();
    let known = KnownNames {
        trays: names(&["cof-031", "cof-032", "avo 1", "sb-1"]),
        beds: names(&["Upper", "Upper 1", "Lower terrace"]),
        places: names(&["Bench 4", "Nave de sombra"]),
        is_seedbed: &|tray| tray == "sb-1",
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
    (faults.listed[0].column, faults.listed[0].reason.clone())
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
        assert_eq!(one(example).0, *kind, "{example}");
    }
    let kinds = |forms: &[(&str, &'static str)]| forms.iter().map(|(_, kind)| *kind).collect::<Vec<_>>();
    assert_eq!(kinds(FORMS), kinds(FORMS_IN_SPANISH));
}

#[test]
fn every_fault_names_its_line_and_column() {
    let unknown = |written: &str, nearest: &[&str]| Reason::UnknownName {
        written: written.into(),
        nearest: nearest.iter().map(|name| name.to_string()).collect(),
    };
    assert_eq!(fault("cof-013 41"), (Some(1), unknown("cof-013", &["cof-031", "cof-032"])));
    assert_eq!(fault("Uper 1 weeded").1, unknown("Uper", &["Upper"]));
    assert_eq!(fault("rian 12"), (Some(1), unknown("rian", &["rain"])));
    assert_eq!(fault("cof-031 > Bench 5").0, Some(11));
    assert!(matches!(fault("cof-031 > Bench 5").1, Reason::UnknownName { .. }));
    assert!(matches!(fault("cof-031 @ Uppper 1 30").1, Reason::UnknownName { .. }));
    assert_eq!(fault("cof-031 41 +2"), (Some(12), Reason::NotUnderstood("+2".into())));
    assert_eq!(fault("cof-031"), (Some(8), Reason::NotUnderstood(String::new())));
    assert_eq!(fault("cof-031 forty"), (Some(9), Reason::NotUnderstood("forty".into())));
    assert_eq!(fault("cof-031 shade 30 maybe"), (Some(18), Reason::NotUnderstood("maybe".into())));
    assert_eq!(fault("cof-031 41.5"), (Some(9), Reason::Envelope(Problem::NotWhole("41.5".into()))));
    assert_eq!(fault("cof-031 @ Upper 1"), (Some(18), Reason::Envelope(Problem::Missing)));
    assert_eq!(fault("cof-031 > cof-032"), (Some(18), Reason::Envelope(Problem::Missing)));
    assert!(matches!(fault("cof-031 plug soft").1, Reason::Envelope(Problem::NotTheWord { .. })));
    assert!(matches!(fault("cof-031 shade 130").1, Reason::Entry(_)));
    assert!(matches!(fault("Upper 1 light 160%").1, Reason::Envelope(Problem::OutsideEnds { .. })));
    assert_eq!(fault("on 2026-03-15"), (Some(4), Reason::ComingDay(today() + 1)));
    assert!(matches!(fault("14/3/26"), (Some(1), Reason::Envelope(Problem::NotADay(_)))));
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

proptest! {
    #[test]
    fn no_text_makes_it_panic(
        any in any::<String>(),
        near in "((cof-031|Upper 1|Bench 4|rain|on|x|counted|~|>>?|@|-|plug|h|[0-9/.,]{1,5}|é|tray=|#|\") ?){0,7}",
    ) {
        for text in [any, near] {
            if let Ok(drafts) = read(&text) {
                prop_assert!(drafts.iter().all(|(_, draft)| draft.happened <= today()));
            }
        }
    }
}
