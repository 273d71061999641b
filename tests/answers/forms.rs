//! `--format`: each list for people, as JSON, and as a table that a reader of RFC 4180 sheets reads back.

use serde_json::Value;

use crate::support::program::Home;

/// Reads a table by the grammar of RFC 4180 section 2, on its own.
fn read(text: &str, parted_by: char) -> Vec<Vec<String>> {
    let (mut rows, mut row, mut cell, mut quoted) = (Vec::new(), Vec::new(), String::new(), false);
    let mut rest = text.chars().peekable();
    while let Some(sign) = rest.next() {
        match sign {
            '"' if quoted && rest.peek() == Some(&'"') => cell.extend(rest.next()),
            '"' => quoted = !quoted,
            _ if quoted => cell.push(sign),
            '\r' => {}
            '\n' => {
                row.push(std::mem::take(&mut cell));
                rows.push(std::mem::take(&mut row));
            }
            _ if sign == parted_by => row.push(std::mem::take(&mut cell)),
            _ => cell.push(sign),
        }
    }
    rows
}

/// What a cell of a field is, as a reader of the JSON would write it.
fn cell(value: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::String(text) => text.clone(),
        other => other.to_string(),
    }
}

#[test]
fn every_list_comes_as_csv_tsv_json_and_for_people() {
    let home = super::home();
    for (words, list, names) in [
        (vec!["ready"], "pairs", ["tray", "bed"]),
        (vec!["ready", "--list", "trays"], "trays", ["tray", "species"]),
        (vec!["walk"], "stops", ["task", "why"]),
        (vec!["log"], "entries", ["entry", "text"]),
        (vec!["species"], "species", ["species", "name"]),
    ] {
        let asked = |form: &str| home.run(&[&words[..], &["--format", form]].concat());
        let object: Value = serde_json::from_str(&asked("json").out).unwrap();
        let items = object[list].as_array().unwrap();
        assert!(items.len() > 5, "{words:?}");
        for (form, parted_by) in [("csv", ','), ("tsv", '\t')] {
            let rows = read(&asked(form).out, parted_by);
            assert_eq!(rows.len(), items.len() + 1, "{words:?} {form}");
            assert!(rows.iter().all(|row| row.len() == rows[0].len()));
            for name in names {
                let at =
                    rows[0].iter().position(|column| column == name).unwrap_or_else(|| panic!("{name}: {:?}", rows[0]));
                for (row, item) in rows[1..].iter().zip(items) {
                    // A text that a spreadsheet would run has an apostrophe before it.
                    assert_eq!(row[at].trim_start_matches('\''), cell(&item[name]).trim_start_matches('\''));
                }
            }
        }
        let people = [&words[..1]].concat();
        assert_eq!(home.run(&[&people[..], &["--format", "table"]].concat()).out, home.run(&people).out);
    }
}

#[test]
fn a_list_that_an_answer_has_not_is_named_with_those_it_has() {
    let home: Home = super::home();
    let ended = home.run(&["walk", "--format", "csv", "--list", "trees"]);
    assert_eq!((ended.code, ended.out.as_str()), (2, ""));
    let said: Value = serde_json::from_str(&ended.err).unwrap();
    let line = said["refused"][0].as_str().unwrap();
    assert!(line.contains("'trees'") && line.contains("stops") && line.contains("can_wait"), "{line}");
    assert_eq!(home.run(&["walk", "--list", "stops"]).code, 2);
    assert_eq!(home.run(&["check", "--format", "csv"]).code, 2);
    assert_eq!(home.run(&["walk", "--format", "csv", "--json"]).code, 2);
}
