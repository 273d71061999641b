//! How many lines come right, are hinted at, stay bare, are taken wrongly.
//!
//! `cargo test --lib scribbled::tests::measured -- --nocapture` tells the numbers; with `TOLD=1` every line that is not right.

use super::*;
use std::fmt::Write as _;

/// Whether a value is as expected: a bar parts what is all right, a species may stand under its key.
fn agrees(got: Option<&Value>, wanted: &Value) -> bool {
    let Some(got) = got else { return false };
    match (got, wanted) {
        (Value::Array(got), Value::Array(wanted)) => {
            got.len() == wanted.len() && got.iter().zip(wanted).all(|(got, wanted)| agrees(Some(got), wanted))
        }
        (Value::Object(got), Value::Object(wanted)) => wanted.iter().all(|(key, value)| agrees(got.get(key), value)),
        (got, Value::String(wanted)) => {
            let got = got.as_str().map_or(got.to_string(), str::to_lowercase);
            wanted.to_lowercase().split('|').any(|one| one == got)
        }
        (got, wanted) => match (got.as_f64(), wanted.as_f64()) {
            (Some(got), Some(wanted)) => (got - wanted).abs() < 1e-6,
            _ => got == wanted,
        },
    }
}

fn fits(drafts: &[EntryDraft], wanted: &[(String, Value)]) -> bool {
    drafts.len() == wanted.len()
        && drafts.iter().zip(wanted).all(|(draft, (kind, fields))| {
            let day = draft.happened.map(|day| Value::from(written(day)));
            draft.kind == kind
                && fields.get("_happened").is_none_or(|wanted| day.as_ref() == Some(wanted))
                && (fields.get("_happened").is_some() || draft.happened.is_none())
                && fields
                    .as_object()
                    .unwrap()
                    .iter()
                    .all(|(key, value)| key == "_happened" || agrees(draft.fields.get(key), value))
        })
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Mark {
    Right,
    Hinted,
    Bare,
    Wrong,
}

fn judged(reading: &Reading, kind: &str, wanted: &str) -> Mark {
    if kind == "-" {
        let (Reading::Asks { why, offers } | Reading::Refused { why, offers }) = reading else { return Mark::Wrong };
        let mut said: String = why.iter().flat_map(Why::said).collect();
        offers.iter().for_each(|offer| said.push_str(&offer.line));
        let holds = wanted.split('|').any(|word| said.to_lowercase().contains(&word.to_lowercase()));
        return if holds { Mark::Right } else { Mark::Bare };
    }
    let wanted: Value = serde_json::from_str(wanted).unwrap();
    let wanted: Vec<(String, Value)> = match kind {
        "+" => serde_json::from_value(wanted).unwrap(),
        kind => vec![(kind.to_string(), wanted)],
    };
    // A count with its dead and a count beside a loss are told alike.
    let is_right = |drafts: &[EntryDraft]| {
        fits(drafts, &wanted)
            || (wanted.len() == 1 && drafts.len() == 2 && fits(&drafts[..1], &wanted) && drafts[1].kind == "lost")
    };
    match reading {
        Reading::Clear(drafts) if is_right(drafts) => Mark::Right,
        Reading::Clear(_) => Mark::Wrong,
        Reading::Asks { offers, .. } | Reading::Refused { offers, .. } => {
            if offers.iter().any(|offer| is_right(&offer.drafts)) { Mark::Hinted } else { Mark::Bare }
        }
    }
}

/// Reads a file of lines; how many fell where, and what did not come right.
fn measured(text: &str) -> ([usize; 4], String) {
    let reader = Reader::new(&World);
    let (mut counts, mut told) = ([0; 4], String::new());
    for row in text.lines().filter(|row| !row.trim().is_empty() && !row.starts_with('#')) {
        let cells: Vec<&str> = row.split('\t').collect();
        let reading = reader.read(cells[0], today());
        let mark = judged(&reading, cells[1], cells[2]);
        counts[mark as usize] += 1;
        if mark != Mark::Right {
            let shown = shown(&reading);
            writeln!(told, "{mark:?}\t{}\t{} {}\n\t\t{shown}", cells[0], cells[1], cells[2]).unwrap();
        }
    }
    (counts, told)
}

fn part(name: &str) -> [usize; 4] {
    let path = format!("{}/tests/reference/scribbled/{name}.tsv", env!("CARGO_MANIFEST_DIR"));
    let (counts, told) = measured(&std::fs::read_to_string(path).unwrap());
    if std::env::var("TOLD").is_ok() {
        println!("{told}");
    }
    println!("{name}: right {} hinted {} bare {} wrong {}", counts[0], counts[1], counts[2], counts[3]);
    counts
}

/// Right and wrong of a part, of 100.
fn holds(name: &str, least_right: usize, least_hinted: usize, most_wrong: usize) {
    let [right, hinted, bare, wrong] = part(name);
    let all = right + hinted + bare + wrong;
    assert!(all > 60, "{name}: lines are missing");
    assert!(right * 100 >= least_right * all, "{name}: {right} of {all} right");
    assert!((right + hinted) * 100 >= least_hinted * all, "{name}: {} of {all} right or hinted", right + hinted);
    assert!(wrong <= most_wrong, "{name}: {wrong} wrong");
}

#[test]
fn lines_seen_while_it_was_built() {
    holds("en_seen", 98, 99, 0);
    holds("es_seen", 98, 99, 0);
}

#[test]
fn lines_of_our_own() {
    holds("en_own", 97, 99, 0);
    holds("es_own", 97, 99, 0);
}

/// The reader was not mended on these lines: floors, not aims. The three that are taken wrongly stand in
/// `tests/reference/scribbled/README.md`.
#[test]
fn lines_unseen_while_it_was_built() {
    holds("en_unseen", 79, 90, 2);
    holds("es_unseen", 88, 92, 1);
}
