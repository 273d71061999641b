//! Every command and every line that a guide shows does what it says, on the sample nursery.

use std::path::Path;

use crate::support::program::{Ended, Home};

const GUIDES: [(&str, &str); 4] = [("guide.md", "en"), ("guia.md", "es"), ("phrases.md", "en"), ("frases.md", "es")];
/// Paper lines of a day, as a guide's sheet may hold them.
const SHEET: &str = "cof-021 88\ngre-014 70\n";
/// What a first sheet of trays may hold.
const TRAYS: &str = "tray,species,count,sown,container,place\nk1,coffee,40,2026-01-10,bag,Bench 1\n";

/// What stands between backticks on a page.
fn quoted(page: &str) -> Vec<String> {
    let text = std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("docs").join(page)).unwrap();
    let spans = text.lines().flat_map(|line| line.split('`').skip(1).step_by(2));
    spans.map(str::to_string).collect()
}

/// The sample nursery.
fn sample() -> Home {
    let home = Home::default();
    home.done(&["sample", "--into", home.file("nursery.outplant").to_str().unwrap()]);
    home
}

/// A home with a copy of the sample nursery, and the files a guide names.
fn with(sample: &Home) -> Home {
    let home = Home::default();
    std::fs::copy(sample.file("nursery.outplant"), home.file("nursery.outplant")).unwrap();
    for name in ["sheet.txt", "hoja.txt"] {
        home.with(name, SHEET);
    }
    for name in ["trays.csv", "bandejas.csv"] {
        home.with(name, TRAYS);
    }
    home
}

/// The words of a command as a shell parts them, what stands for something filled in.
fn words(home: &Home, command: &str) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    for (i, part) in command.split('"').enumerate() {
        match i % 2 {
            0 => words.extend(part.split_whitespace().map(str::to_string)),
            _ => words.push(part.to_string()),
        }
    }
    let mut option = String::new();
    let here = |name: &str| home.file(name).to_str().unwrap().to_string();
    let filled = words.into_iter().skip(1).map(|word| {
        let is = match (option.as_str(), word.as_str()) {
            ("--name", "...") => "Terraza".to_string(),
            ("--lat", "...") => "11.3".to_string(),
            ("--lon", "...") => "39.9".to_string(),
            ("--altitude", "...") => "120".to_string(),
            ("--batch", "FILE" | "ARCHIVO") => here("sheet.txt"),
            (_, "FILE" | "ARCHIVO") => here("copy.outplant"),
            (_, name) if [".csv", ".txt", ".jsonl"].iter().any(|end| name.ends_with(end)) => here(name),
            (_, other) => other.to_string(),
        };
        option = word;
        is
    });
    filled.collect()
}

fn run(home: &Home, words: &[&str], lang: &str) -> Ended {
    let mut all = vec!["--lang", lang];
    all.extend(words.iter().filter(|word| **word != lang && **word != "--lang"));
    home.run_with(&all, SHEET)
}

#[test]
fn every_command_of_the_guides_runs_on_the_sample() {
    let (sample, mut seen) = (sample(), 0);
    for (page, lang) in GUIDES {
        let mut commands: Vec<String> = quoted(page).into_iter().filter(|text| text.starts_with("outplant")).collect();
        commands.sort();
        commands.dedup();
        for command in commands {
            let home = with(&sample);
            let words = words(&home, &command);
            let mut words: Vec<&str> = words.iter().map(String::as_str).collect();
            if words == ["calc"] {
                // Named as a whole: it says what can be reckoned.
                words.push("--help");
            }
            if words.first() == Some(&"begin") {
                std::fs::remove_file(home.file("nursery.outplant")).unwrap();
            }
            if words == ["undo"] {
                home.done(&["write", "cof-021", "88"]);
            }
            let ended = run(&home, &words, lang);
            assert_eq!(ended.code, 0, "{page}: {command}\n{}\n{}", ended.out, ended.err);
            assert!(!ended.out.is_empty() || !ended.err.is_empty(), "{page}: {command} says nothing");
            seen += 1;
        }
    }
    assert!(seen > 70, "{seen}");
}

#[test]
fn every_line_of_the_guides_is_written_on_the_sample() {
    let (sample, mut seen) = (sample(), 0);
    for (page, lang) in &GUIDES[..2] {
        let home = with(&sample);
        let is_line = |text: &String| {
            let names = ["cof-02", "gre-01"].iter().any(|name| text.contains(name)) && text.contains(' ');
            (names || text.contains("22"))
                && !text.contains('→')
                && !text.starts_with("outplant")
                && !text.contains("--")
        };
        for line in quoted(page).into_iter().filter(is_line) {
            let ended = run(&home, &["write", "--dry-run", "--yes", &line], lang);
            assert_eq!(ended.code, 0, "{page}: {line}\n{}\n{}", ended.out, ended.err);
            seen += 1;
        }
    }
    assert!(seen > 14, "{seen}");
}

/// The fenced blocks of a page that say nothing of their own form, each a list of lines.
fn fenced(page: &str) -> Vec<Vec<String>> {
    let text = std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(page)).unwrap();
    let parts = text.split("\n```").collect::<Vec<_>>();
    let blocks = parts.iter().skip(1).step_by(2).filter_map(|part| part.strip_prefix('\n'));
    blocks.map(|block| block.lines().map(str::to_string).collect()).collect()
}

/// The words behind the name of the program; none where a line is no command of it.
fn command_of(line: &str) -> Option<Vec<String>> {
    let words = line.strip_prefix("outplant ").or_else(|| line.strip_prefix("cargo run --release -- "))?;
    let mut parted: Vec<String> = Vec::new();
    let (mut word, mut quote, mut any) = (String::new(), None, false);
    for letter in words.chars().chain([' ']) {
        match (quote, letter) {
            (Some(open), letter) if letter == open => quote = None,
            (None, '"' | '\'') => (quote, any) = (Some(letter), true),
            (None, ' ') => {
                if any || !word.is_empty() {
                    parted.push(std::mem::take(&mut word));
                }
                any = false;
            }
            (_, letter) => word.push(letter),
        }
    }
    Some(parted)
}

/// Runs the commands of a page's blocks one by one in their order; lines below a command that are none are what is piped
/// into it, and a block of a sheet is the sheet that is read next. The answer is how many commands there were.
fn run_blocks(page: &str, lang: &str, home: &Home, sheet: &str) -> usize {
    let mut seen = 0;
    for block in fenced(page) {
        if block.first().is_some_and(|line| line.contains(',') && command_of(line).is_none()) {
            home.with(sheet, block.join("\n"));
            continue;
        }
        let mut lines = block.iter().peekable();
        while let Some(line) = lines.next() {
            let Some(words) = command_of(line) else { continue };
            let mut piped = String::new();
            while let Some(below) = lines.next_if(|below| command_of(below).is_none()) {
                piped.push_str(&format!("{below}\n"));
            }
            let here = |word: &String| match word.ends_with(".csv") || word.ends_with(".outplant") {
                true => home.file(word).to_str().unwrap().to_string(),
                false => word.clone(),
            };
            let words: Vec<String> = words.iter().map(here).collect();
            let all: Vec<&str> = ["--lang", lang].into_iter().chain(words.iter().map(String::as_str)).collect();
            let ended = home.run_with(&all, &piped);
            assert_eq!(ended.code, 0, "{page}: {line}\n{piped}\n{}\n{}", ended.out, ended.err);
            assert!(!ended.out.is_empty(), "{page}: {line} says nothing");
            seen += 1;
        }
    }
    seen
}

#[test]
fn the_blocks_of_commands_of_the_guides_and_the_readme_run_in_their_order() {
    let sample = sample();
    for (page, lang) in &GUIDES[..2] {
        assert!(run_blocks(&format!("docs/{page}"), lang, &with(&sample), "trays.csv") > 0, "{page}");
    }
    // The README begins a nursery of its own: each command finds what those before it wrote.
    assert!(run_blocks("README.md", "en", &Home::default(), "trays.csv") >= 15);
}
