use super::*;
use crate::nursery::entry::rules::BodyRule;
use crate::nursery::entry::shape::{Field, Shape};
use crate::nursery::entry::{all_kinds, reading};
use crate::wording::Lang;
use serde_json::{Map, Value, json};

fn entry(line: Value) -> Entry {
    let Value::Object(mut body) = line else { panic!("a line is a record") };
    let kind = body.remove("kind").unwrap();
    let day = |written: &str| written.parse().unwrap();
    Entry {
        id: "abcdefgh:7".parse().unwrap(),
        happened: day("2026-11-25"),
        clock: None,
        recorded: crate::base::Moment::end_of(day("2026-11-25"), 0.0),
        who: "mara".into(),
        command: 7,
        what: reading::read_body(kind.as_str().unwrap(), &Value::Object(body).to_string()).unwrap(),
    }
}

#[test]
fn an_entry_is_one_plain_sentence_in_both_languages() {
    let (en, es) = (Wording::new(Lang::En), Wording::new(Lang::Es));
    let cases = [
        (
            json!({"kind": "counted", "tray": "cof-031", "standing": 41}),
            "25 Nov · tray cof-031 counted: 41 living",
            "25 nov · bandeja cof-031 contada: 41 vivas",
        ),
        (
            json!({"kind": "sown", "tray": "cof-031", "lot": "cof-L07", "seeds": 60, "container": "cell 90", "place": "bench 1"}),
            "25 Nov · tray cof-031 sown: 60 seeds of lot cof-L07 in cell 90, at bench 1",
            "25 nov · bandeja cof-031 sembrada: 60 semillas del lote cof-L07 en cell 90, en bench 1",
        ),
        (
            json!({"kind": "moved_on", "from": "cof-031", "to": "cof-040", "count": 38, "how": "pricked_out"}),
            "25 Nov · 38 from tray cof-031 into tray cof-040, pricked out",
            "25 nov · 38 de bandeja cof-031 a bandeja cof-040, repicadas",
        ),
        (
            json!({"kind": "outplanted", "tray": "cof-031", "bed": "Lower", "count": 12, "rows": "2-4"}),
            "25 Nov · 12 from tray cof-031 planted out in bed Lower, rows 2-4",
            "25 nov · 12 de bandeja cof-031 plantadas en parcela Lower, hileras 2-4",
        ),
        (
            json!({"kind": "weather", "rain_mm": 12.5, "tmin_c": 14, "tmax_c": 27}),
            "25 Nov · weather: 12.5 mm of rain, 14 to 27 °C",
            "25 nov · tiempo: 12.5 mm de lluvia, 14 a 27 °C",
        ),
        (
            json!({"kind": "measured", "tray": "cof-031", "plants": [{"height_cm": 20, "collar_mm": 4}, {"height_cm": 23}]}),
            "25 Nov · tray cof-031 measured: 2 plants, mean 21.5 cm, collar 4 mm",
            "25 nov · bandeja cof-031 medida: 2 plantas, media 21.5 cm, cuello 4 mm",
        ),
        (
            json!({"kind": "light_read", "bed": "Lower", "readings": [{"under_lux": 300, "open_lux": 1000}]}),
            "25 Nov · bed Lower: 30 % light (1 pair) read",
            "25 nov · parcela Lower: 30 % de luz (1 par) leída",
        ),
        (
            json!({"kind": "withdrawn", "entries": ["abcdefgh:3"], "why": "undo"}),
            "25 Nov · taken back: 1 entry (abcdefgh:3), undo",
            "25 nov · retirada: 1 anotación (abcdefgh:3), undo",
        ),
        (
            json!({"kind": "relabelled", "tray": "avo-2", "was": "avo-1"}),
            "25 Nov · tray avo-1 is called avo-2 now",
            "25 nov · bandeja avo-1 se llama ahora avo-2",
        ),
        (
            json!({"kind": "season_set", "rains": [{"from": "03-15", "until": "06-10"}]}),
            "25 Nov · rains 15 Mar to 10 Jun",
            "25 nov · lluvias 15 mar a 10 jun",
        ),
    ];
    for (line, english, spanish) in cases {
        let written = entry(line);
        assert_eq!(en.entry_sentence(&written), english);
        assert_eq!(es.entry_sentence(&written), spanish);
    }
}

/// A value that can be found again in a sentence, with what must then stand there.
fn value_of(field: &Field) -> (Value, Option<String>) {
    let found = |text: &str| Some(text.to_string());
    match field.shape {
        Shape::Count => (json!(37), found("37")),
        // A percentage of 62.5, a share of 0.625 are both said as 62.5 % or 63 %.
        Shape::Number { most, .. } if most <= 1.0 => (json!(0.62), found("62")),
        Shape::Number { .. } => (json!(62), found("62")),
        Shape::Flag => (json!(true), None),
        Shape::Code(_) | Shape::Text => (json!(format!("Q {}", field.name)), found(&format!("Q {}", field.name))),
        Shape::Species => (json!("COA"), found("arabica coffee")),
        Shape::Day => (json!("2026-02-03"), found("3 Feb 2026")),
        Shape::MonthDay => (json!("02-03"), found("3 Feb")),
        Shape::Clock => (json!("07:40"), None),
        Shape::Word(words) => (json!(words[0][0]), None),
        Shape::Spot => (json!("2.7"), found("2.7")),
        Shape::Entry => (json!("abcdefgh:3"), found("abcdefgh:3")),
        Shape::Open => (json!({"plantable_least_days": 200}), found("least")),
        Shape::List(inner) => {
            let (value, said) = value_of(&Field { name: field.name, shape: *inner, required: true });
            let twelve = matches!(field.name, "rain_mm" | "tmin_c" | "tmax_c");
            (Value::Array(vec![value; if twelve { 12 } else { 1 }]), said.filter(|_| !twelve))
        }
        Shape::Record(fields) => {
            (Value::Object(fields.iter().map(|f| (f.name.to_string(), value_of(f).0)).collect::<Map<_, _>>()), None)
        }
    }
}

#[test]
fn every_field_of_every_kind_is_said() {
    let en = Wording::new(Lang::En);
    let species = Catalogue::built_in();
    for kind in all_kinds() {
        for field in kind.fields {
            // What is written only together with another is tried with it.
            let beside = |other: &str| {
                kind.facts.rules.iter().any(|rule| match rule {
                    BodyRule::Together(one, two) => {
                        (*one, *two) == (field.name, other) || (*two, *one) == (field.name, other)
                    }
                    _ => false,
                })
            };
            let needed =
                kind.fields.iter().filter(|other| other.required || other.name == field.name || beside(other.name));
            let body: Map<String, Value> = needed.map(|f| (f.name.to_string(), value_of(f).0)).collect();
            let what = reading::read_body(kind.kind, &Value::Object(body.clone()).to_string()).unwrap();
            let said = en.what_sentence(&what, &species);
            if let Some(found) = value_of(field).1 {
                assert!(said.contains(&found), "{}.{}: '{said}' does not say {found}", kind.kind, field.name);
            }
            let mut without = body;
            if !field.required && without.remove(field.name).is_some() {
                let what = reading::read_body(kind.kind, &Value::Object(without).to_string()).unwrap();
                assert_ne!(said, en.what_sentence(&what, &species), "{}.{} is not said", kind.kind, field.name);
            }
        }
    }
}

#[test]
fn a_kind_of_a_newer_version_and_unseen_letters_do_no_harm() {
    let en = Wording::new(Lang::En);
    let foreign = What::Foreign { kind: "moon_seen\u{202e}".into(), body: json!({"a": 1}) };
    assert_eq!(en.what_sentence(&foreign, &Catalogue::built_in()), "moon_seen, written by a newer outplant");
}
