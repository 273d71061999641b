//! What the documentation says of the code is so: kinds and fields, the worked hash, constants, links.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use outplant::base::Day;
use outplant::base::word::Word;
use outplant::nursery::caution::Caution;
use outplant::nursery::entry::all_kinds;
use outplant::nursery::entry::shape::{Field, Shape};
use outplant::nursery::envelope::{Hash, Sealed, canonical};
use outplant::share::{Written, read_lines};
use outplant::wording::{Lang, Wording};
use serde_json::Value;

const JOURNAL: &str = include_str!("../docs/journal-format.md");
const RECKONING: &str = include_str!("../docs/reckoning.md");
const CAUTIONS: &str = include_str!("../docs/cautions.md");
const PRECAUCIONES: &str = include_str!("../docs/precauciones.md");

fn home() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// The text of a section that begins with a bold title, to the next one.
fn section<'a>(title: &str) -> Option<&'a str> {
    let begin = JOURNAL.find(&format!("\n**{title}** - "))? + 1;
    let rest = &JOURNAL[begin + 2..];
    let end = rest.find("\n**").unwrap_or(rest.len());
    Some(&rest[..end])
}

/// What is not said, or said wrongly, of a table of fields.
fn missing_fields(title: &str, fields: &[Field]) -> Vec<String> {
    let Some(text) = section(title) else { return vec![format!("no section '{title}'")] };
    let rows: Vec<Vec<&str>> = text
        .lines()
        .filter(|line| line.starts_with("| `"))
        .map(|line| line.trim_matches('|').split('|').map(str::trim).collect())
        .collect();
    let mut missing = Vec::new();
    for field in fields {
        let row = rows.iter().find(|row| row[0] == format!("`{}`", field.name));
        let required = if field.required { "yes" } else { "no" };
        match row {
            None => missing.push(format!("{title}: {} is not named", field.name)),
            Some(row) if row[3] != required => missing.push(format!("{title}: {} required is {required}", field.name)),
            Some(_) => {}
        }
    }
    let unknown = rows.iter().filter(|row| !fields.iter().any(|field| row[0] == format!("`{}`", field.name)));
    missing.extend(unknown.map(|row| format!("{title}: no field {}", row[0])));
    missing
}

/// The fields of the records, and the words, that a shape holds inside.
fn inside(shape: &Shape, records: &mut Vec<&'static [Field]>, words: &mut Vec<&'static str>) {
    match shape {
        Shape::List(inner) => inside(inner, records, words),
        Shape::Record(fields) => records.push(fields),
        Shape::Word(lists) => words.extend(lists.iter().filter_map(|spellings| spellings.first())),
        Shape::Code(_)
        | Shape::Species
        | Shape::Count
        | Shape::Number { .. }
        | Shape::Flag
        | Shape::Text
        | Shape::Day
        | Shape::MonthDay
        | Shape::Clock
        | Shape::Spot
        | Shape::Entry
        | Shape::Open => {}
    }
}

#[test]
fn every_kind_and_field_is_in_the_journal_format() {
    let mut missing = Vec::new();
    let (mut records, mut words) = (Vec::new(), Vec::new());
    for kind in all_kinds() {
        missing.extend(missing_fields(&format!("`{}`", kind.kind), kind.fields));
        for field in kind.fields {
            inside(&field.shape, &mut records, &mut words);
        }
    }
    let titles = ["Rains", "PlanLine", "Replicate", "MeasuredPlant", "LightPair"];
    for fields in records {
        let described = titles.iter().any(|title| missing_fields(title, fields).is_empty());
        if !described {
            missing.push(format!("no record with {:?}", fields.iter().map(|field| field.name).collect::<Vec<_>>()));
        }
    }
    missing
        .extend(words.iter().filter(|word| !JOURNAL.contains(&format!("`{word}`"))).map(|word| format!("no {word}")));
    assert_eq!(missing, Vec::<String>::new());
}

/// The contents of every code fence with a title.
fn fences<'a>(text: &'a str, title: &str) -> Vec<&'a str> {
    text.split(&format!(" {title}\n")).skip(1).filter_map(|rest| rest.split("\n```").next()).collect()
}

#[test]
fn the_worked_hash_of_the_journal_format_is_right() {
    let (wholes, hashes) = (fences(JOURNAL, "worked-canonical"), fences(JOURNAL, "worked-hash"));
    let lines: Vec<&str> = fences(JOURNAL, "worked-lines").iter().flat_map(|fence| fence.lines()).collect();
    assert_eq!((wholes.len(), hashes.len(), lines.len()), (2, 2, 2));
    let read = read_lines(lines.join("\n").as_bytes(), "2026-03-15".parse::<Day>().unwrap(), "nobody").unwrap();
    let mut prev = None;
    for (i, line) in read.into_iter().enumerate() {
        let Written::Sealed(sealed) = line.written else { panic!("line {i} has no identity") };
        assert_eq!(sealed.hash, Hash::read(hashes[i]).unwrap());
        assert_eq!(sealed.reckoned_hash(), sealed.hash);
        assert_eq!(sealed.line(), lines[i]);
        assert_eq!(without_hash(&sealed), wholes[i]);
        assert_eq!(sealed.prev, prev);
        prev = Some(sealed.hash);
    }
}

fn without_hash(sealed: &Sealed) -> String {
    let mut line: Value = serde_json::from_str(&sealed.line()).unwrap();
    line.as_object_mut().unwrap().remove("hash");
    canonical(&line)
}

/// `NAME = value` in `src/...`, as the page on reckoning quotes constants.
fn quoted_constants() -> Vec<(String, String, String)> {
    RECKONING
        .split("` in `src/")
        .collect::<Vec<_>>()
        .windows(2)
        .map(|pair| {
            let quoted = pair[0].rsplit('`').next().unwrap();
            let (name, value) = quoted.split_once(" = ").unwrap_or_else(|| panic!("'{quoted}' is no constant"));
            let file = pair[1].split('`').next().unwrap();
            (name.to_string(), value.to_string(), format!("src/{file}"))
        })
        .collect()
}

/// The value a source file gives a constant.
fn value_in(source: &str, name: &str) -> Option<String> {
    let line = source.lines().find(|line| line.contains(&format!("const {name}: ")))?;
    Some(line.split_once(" = ")?.1.split(';').next()?.to_string())
}

#[test]
fn every_constant_quoted_on_the_page_of_reckoning_has_that_value() {
    let quoted = quoted_constants();
    assert!(quoted.len() > 40, "only {} constants were found", quoted.len());
    let plain = |value: &str| value.replace('_', "");
    for (name, value, file) in quoted {
        let source = std::fs::read_to_string(home().join(&file)).unwrap_or_else(|fault| panic!("{file}: {fault}"));
        let found = value_in(&source, &name).unwrap_or_else(|| panic!("{file} has no {name}"));
        // `_` inside numbers is for the eye; inside names of other constants it falls out on both sides.
        assert_eq!(plain(&found), plain(&value), "{name} in {file}");
    }
}

/// The constants of a source file that are numbers, or lists of them, without those of its tests.
fn numbers_of(source: &str) -> Vec<String> {
    let ours = source.split("#[cfg(test)]\nmod ").next().unwrap();
    let is_number = |kind: &str| {
        let words = kind.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
        let mut words = words.filter(|word| !word.chars().all(|c| c.is_ascii_digit())).peekable();
        const KINDS: [&str; 9] = ["f64", "f32", "u8", "u32", "u64", "usize", "i32", "i64", "i8"];
        words.peek().is_some() && words.all(|word| KINDS.contains(&word))
    };
    let of_line = |line: &str| {
        let (before, rest) = line.split_once("const ")?;
        let (name, rest) = rest.split_once(": ")?;
        let stands = before.trim().is_empty() || before.trim_start().starts_with("pub");
        let named = !name.is_empty() && name.chars().all(|c| c.is_ascii_uppercase() || c.is_ascii_digit() || c == '_');
        (stands && named && is_number(rest.split(" = ").next()?)).then(|| name.to_string())
    };
    ours.lines().filter_map(of_line).collect()
}

#[test]
fn every_number_with_a_name_in_reckon_and_science_stands_on_the_page_of_reckoning() {
    let mut files = Vec::new();
    for room in ["reckon", "science"] {
        rust_files(&home().join("src").join(room), &mut files);
    }
    let mut found = 0;
    let mut missing = Vec::new();
    for file in files.iter().filter(|file| !file.to_string_lossy().contains("test")) {
        for name in numbers_of(&std::fs::read_to_string(file).unwrap()) {
            found += 1;
            let is_word = |at: usize, text: &str| {
                let part = |c: Option<char>| c.is_some_and(|c| c.is_ascii_alphanumeric() || c == '_');
                !part(RECKONING[..at].chars().next_back()) && !part(RECKONING[at + text.len()..].chars().next())
            };
            if !RECKONING.match_indices(&name).any(|(at, text)| is_word(at, text)) {
                missing.push(format!("{}: {name}", file.display()));
            }
        }
    }
    assert!(found > 400, "only {found} were found");
    assert_eq!(missing, Vec::<String>::new(), "write it into its section, or into the last one");
}

/// Every page of the project, by path.
fn pages() -> Vec<PathBuf> {
    let mut pages = Vec::new();
    for folder in ["", "docs", "docs/decisions", "sample-nursery"] {
        let found = std::fs::read_dir(home().join(folder)).unwrap();
        pages.extend(found.map(|file| file.unwrap().path()).filter(|path| path.extension().is_some_and(|e| e == "md")));
    }
    pages.sort();
    pages
}

#[test]
fn every_relative_link_leads_somewhere() {
    let pages = pages();
    assert!(pages.iter().any(|page| page.ends_with("docs/reckoning.md")));
    let (mut broken, mut looked_at) = (Vec::new(), 0);
    for page in &pages {
        let text = std::fs::read_to_string(page).unwrap();
        for target in text.split("](").skip(1).filter_map(|rest| rest.split(')').next()) {
            let file = target.split('#').next().unwrap();
            if file.is_empty() || file.contains("://") || file.starts_with("mailto:") {
                continue;
            }
            looked_at += 1;
            if !page.parent().unwrap_or(Path::new("")).join(file).exists() {
                broken.push(format!("{}: {target}", page.display()));
            }
        }
    }
    assert!(looked_at > 10, "only {looked_at} links were found");
    assert_eq!(broken, Vec::<String>::new());
}

/// Every Rust file below a folder.
fn rust_files(folder: &Path, found: &mut Vec<PathBuf>) {
    for file in std::fs::read_dir(folder).unwrap() {
        let path = file.unwrap().path();
        if path.is_dir() {
            rust_files(&path, found);
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            found.push(path);
        }
    }
}

#[test]
fn every_guard_the_developers_page_names_is_a_test() {
    let page = std::fs::read_to_string(home().join("DEVELOPERS.md")).unwrap();
    let begin = page.find("| invariant | guard |").unwrap();
    let table: Vec<&str> = page[begin..].lines().skip(2).take_while(|line| line.starts_with('|')).collect();
    let mut files = Vec::new();
    rust_files(&home().join("src"), &mut files);
    rust_files(&home().join("tests"), &mut files);
    let code: Vec<String> = files.iter().map(|file| std::fs::read_to_string(file).unwrap()).collect();
    let mut guards = 0;
    for row in table {
        let named = row.rsplit(" | ").next().unwrap();
        for guard in named.split('`').skip(1).step_by(2).filter(|guard| !guard.contains('.')) {
            guards += 1;
            let is_test = code.iter().any(|text| text.contains(&format!("fn {guard}(")));
            assert!(is_test, "no test is named {guard}");
        }
    }
    assert!(guards > 20, "only {guards} guards were found");
}

/// The constants of the reckoning that carry a unit, as (value, unit as a sentence writes it, name).
fn constants_with_units() -> Vec<(f64, &'static str, String)> {
    let units: [(&str, f64, &[&str]); 8] = [
        ("_DAYS", 1.0, &["days", "días"]),
        ("_SHARE", 100.0, &["%"]),
        ("_LEVEL", 100.0, &["%"]),
        ("_MPA", 1.0, &["MPa"]),
        ("_MM", 1.0, &["mm"]),
        ("_CM", 1.0, &["cm"]),
        ("_PLANTS", 1.0, &["plants", "plantas"]),
        ("_SEEDS", 1.0, &["seeds", "semillas"]),
    ];
    let mut files = Vec::new();
    rust_files(&home().join("src/reckon"), &mut files);
    rust_files(&home().join("src/science"), &mut files);
    let mut all = Vec::new();
    for file in files {
        let text = std::fs::read_to_string(&file).unwrap();
        for line in text.lines().filter_map(|line| line.split_once("const ").map(|(_, rest)| rest)) {
            let Some((name, value)) = line.split_once(": ").zip(line.split_once(" = ")).map(|(n, v)| (n.0, v.1)) else {
                continue;
            };
            let Ok(value) = value.trim_end_matches(';').replace('_', "").parse::<f64>() else { continue };
            for (_, by, words) in units.iter().filter(|(ending, ..)| name.ends_with(ending)) {
                all.extend(words.iter().map(|word| (value * by, *word, name.to_string())));
            }
        }
    }
    all
}

#[test]
fn no_sentence_repeats_a_constant_of_the_code() {
    // Where the number is the same and the thing is another.
    let others = [
        "calc_emergence_some",         // the level of the formula's interval
        "calc_growth_reaches_between", // the same
        "calc_rains_climate_service",  // the figures of a published rule
        "calc_rains_sivakumar",        // the same
        "calc_rains_stern",            // the same
        "calc_rains_blocks",           // the same
        "calc_rains_formula",          // the same
        "growth_expected_between",     // the same
        "trays_legend_growth",         // the same
        "seed_share",                  // the same
        "lot_by_equation_outside",     // the range of the published equation
        "light_legend",                // the steps of a drawing
        "day_hint",                    // an example of what may be typed
        "source_counting",             // "every 1-2 days", as the trade says it
        "source_steps",                // "every 7-10 days", as the trade says it
        "word_shade",                  // what a word of a profile means
    ];
    let constants = constants_with_units();
    assert!(constants.len() > 60, "only {} constants were found", constants.len());
    let (mut seen, mut repeated) = (0, Vec::new());
    for lang in ["en", "es"] {
        for file in std::fs::read_dir(home().join("src/wording").join(lang)).unwrap() {
            let text = std::fs::read_to_string(file.unwrap().path()).unwrap();
            let mut key = "";
            for line in text.lines().filter(|line| !line.starts_with('#')) {
                key = if line.starts_with(' ') { key } else { line.split(" =").next().unwrap_or(key) };
                seen += usize::from(line.contains("{ $LAST_STEP_DAYS } "));
                let words: Vec<&str> = line.split_whitespace().collect();
                for pair in words.windows(2) {
                    let number = pair[0].trim_start_matches(|c: char| !c.is_ascii_digit()).replace(',', ".");
                    let unit = pair[1].trim_end_matches(|c: char| !c.is_alphanumeric() && c != '%');
                    let Ok(number) = number.parse::<f64>() else { continue };
                    let same = |(value, word, _): &&(f64, &str, String)| (value - number).abs() < 1e-9 && *word == unit;
                    if let Some((_, _, name)) = constants.iter().find(same).filter(|_| !others.contains(&key)) {
                        repeated
                            .push(format!("{lang}: {key} says {number} {unit}, which is {name}: write {{ ${name} }}"));
                    }
                }
            }
        }
    }
    assert!(seen > 2, "the sentences were not read");
    assert_eq!(repeated, Vec::<String>::new());
}

#[test]
fn the_pages_of_cautions_hold_every_line_that_is_said_at_the_work() {
    for (lang, text) in [(Lang::En, CAUTIONS), (Lang::Es, PRECAUCIONES)] {
        let wording = Wording::new(lang);
        let table = text.split("\n## ").nth(1).unwrap();
        let rows: Vec<Vec<&str>> = table
            .lines()
            .filter(|line| line.starts_with("| ") && !line.starts_with("| ---"))
            .skip(1)
            .map(|line| line.trim_matches('|').split('|').map(str::trim).collect())
            .collect();
        let said: BTreeSet<String> =
            Caution::WORDS.iter().map(|(caution, _)| wording.caution_words(*caution)).collect();
        let held: BTreeSet<String> = rows.iter().map(|row| row[1].to_string()).collect();
        assert_eq!(held, said);
        assert_eq!(rows.len(), said.len(), "a line twice");
        assert!(rows.iter().all(|row| row.len() == 3 && !row[2].is_empty()), "a line without a source");
    }
}
