//! The rules of the house: which room may look at which, which crate has which owner, how long things may be.

mod circles;
mod count;
mod signs;

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(sources(&path));
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            found.push(path);
        }
    }
    found.sort();
    found
}

fn room_of(path: &Path) -> String {
    let below = path.strip_prefix(root().join("src")).unwrap();
    below.components().next().unwrap().as_os_str().to_string_lossy().trim_end_matches(".rs").to_string()
}

/// The lines of a source without those that are comments.
fn code_of(text: &str) -> String {
    text.lines().filter(|line| !line.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n")
}

/// Whether a word begins here: what stands before is no part of it.
fn word_begins(code: &str, at: usize) -> bool {
    !code[..at].ends_with(|before: char| before.is_alphanumeric() || before == '_' || before == ':')
}

fn first_word(code: &str) -> String {
    code.chars().take_while(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || *c == '_').collect()
}

/// What stands in a group of a `use`, after its opening brace: the first word of each part, inner groups left out.
fn first_words_of_group(code: &str) -> Vec<String> {
    let (mut found, mut depth, mut begins) = (Vec::new(), 0, true);
    for (at, c) in code.char_indices() {
        match c {
            '{' => depth += 1,
            '}' if depth == 0 => break,
            '}' => depth -= 1,
            ',' if depth == 0 => begins = true,
            _ if c.is_whitespace() => {}
            _ if depth == 0 && begins => {
                found.push(first_word(&code[at..]));
                begins = false;
            }
            _ => {}
        }
    }
    found
}

/// Every `crate::room` that a source names, in `use` lines, in groups of them and in paths.
fn looked_at(text: &str) -> Vec<String> {
    let code = code_of(text);
    let places = code.match_indices("crate::").filter(|(at, _)| word_begins(&code, *at) || code[..*at].ends_with("$"));
    let found = places.flat_map(|(at, found)| {
        let rest = &code[at + found.len()..];
        rest.strip_prefix('{').map_or_else(|| vec![first_word(rest)], first_words_of_group)
    });
    found.filter(|room| !room.is_empty()).collect()
}

/// Whether a source names an outside crate: in paths, in `use` lines and in groups of them.
fn names_crate(code: &str, name: &str) -> bool {
    let in_path = code.match_indices(&format!("{name}::")).any(|(at, _)| word_begins(code, at));
    in_path || [";", " as "].iter().any(|end| code.contains(&format!("use {name}{end}")))
}

/// The names of the outside crates of Cargo.toml that the program is made of, as code spells them.
fn outside_crates() -> Vec<String> {
    let text = fs::read_to_string(root().join("Cargo.toml")).unwrap();
    let (mut found, mut counts) = (Vec::new(), false);
    for line in text.lines() {
        if let Some(part) = line.strip_prefix('[') {
            counts = part.trim_end_matches(']').ends_with("dependencies") && !part.starts_with("dev-");
        } else if let Some((name, _)) = line.split_once('=').filter(|_| counts && !line.starts_with('#')) {
            found.push(name.trim().split('.').next().unwrap().replace('-', "_"));
        }
    }
    found
}

#[test]
fn rooms_look_only_at_the_rooms_below_them() {
    let may: BTreeMap<&str, &[&str]> = BTreeMap::from([
        ("base", &[][..]),
        ("science", &["base"][..]),
        ("nursery", &["base"][..]),
        ("reckon", &["science", "nursery", "base"][..]),
        ("journal", &["nursery", "base"][..]),
        ("share", &["nursery", "base"][..]),
        ("desk", &["journal", "share", "reckon", "nursery", "base"][..]),
        // Of the desk only its error types, which carry those of journal and share.
        ("wording", &["desk", "reckon", "nursery", "science", "base"][..]),
        ("settings", &["base"][..]),
        ("page", &["wording", "reckon", "nursery", "base"][..]),
        ("cli", &["desk", "page", "wording", "settings", "reckon", "science", "nursery", "base"][..]),
        ("dashboard", &["desk", "page", "wording", "settings", "reckon", "nursery", "base"][..]),
    ]);
    // Macros of ours stand at the root of the crate.
    let macros = ["kinds", "records", "words"];
    let mut checked = 0;
    for path in sources(&root().join("src")) {
        let room = room_of(&path);
        if matches!(room.as_str(), "lib" | "main") {
            continue;
        }
        let allowed = may.get(room.as_str()).unwrap_or_else(|| panic!("{room} is no room"));
        for other in looked_at(&fs::read_to_string(&path).unwrap()) {
            checked += 1;
            let fine = other == room || allowed.contains(&other.as_str()) || macros.contains(&other.as_str());
            assert!(fine, "{} looks at {other}", path.display());
        }
    }
    assert!(checked > 200, "only {checked} looks were found: the test no longer sees them");
}

#[test]
fn a_look_is_seen_however_it_is_written() {
    let text = "// use crate::desk::Desk;\nuse crate::base::Day;\nuse crate::{journal::{Journal, rows}, share::read};\n\
                let a = crate::reckon::Fold::new();\n$crate::nursery::x!();";
    assert_eq!(looked_at(text), ["base", "journal", "share", "reckon", "nursery"]);
    let code =
        code_of("use imbl::OrdMap;\n// use toml::Value;\nuse {statrs::a, sha2::b};\nuse clap;\nlet y = my_serde::x();");
    let seen = ["imbl", "toml", "statrs", "sha2", "clap", "serde"].map(|name| names_crate(&code, name));
    assert_eq!(seen, [true, false, true, true, true, false]);
}

#[test]
fn each_outside_crate_has_its_owner_rooms() {
    // Rooms that may name a crate; `main` stands for main.rs, `every` for all of them.
    let owners: BTreeMap<&str, &[&str]> = BTreeMap::from([
        // Workbooks of spreadsheet programs.
        ("calamine", &["share"][..]),
        ("zip", &["share"][..]),
        // The calendar, and the clock that is read once.
        ("chrono", &["base", "cli"][..]),
        ("clap", &["cli"][..]),
        ("clap_complete", &["cli"][..]),
        ("clap_mangen", &["cli"][..]),
        ("directories", &["settings"][..]),
        ("fluent", &["wording"][..]),
        ("fluent_syntax", &["wording"][..]),
        ("foldhash", &["reckon"][..]),
        // Maps that share what is the same: stories and Pictures are such maps.
        ("imbl", &["reckon", "desk", "cli"][..]),
        ("postcard", &["desk"][..]),
        ("ratatui", &["dashboard"][..]),
        ("rusqlite", &["journal"][..]),
        // Where the holes of a file lie (in `carve/pages.rs` alone).
        ("rustix", &["journal"][..]),
        ("serde", &["every"][..]),
        ("serde_json", &["every"][..]),
        ("sha2", &["nursery"][..]),
        // Ends of an import from outside, and of the screen.
        ("signal_hook", &["cli", "dashboard"][..]),
        // Where the sun stands.
        ("solar_positioning", &["science"][..]),
        ("statrs", &["science"][..]),
        // Words that are a slip of the pen away from known ones.
        ("strsim", &["share"][..]),
        ("terminal_size", &["cli"][..]),
        ("thiserror", &["every"][..]),
        // Profiles of species, the settings file, words and columns of what is read.
        ("toml", &["nursery", "settings", "share"][..]),
        ("unicode_normalization", &["base"][..]),
        ("unicode_width", &["base", "dashboard"][..]),
    ]);
    let crates = outside_crates();
    assert!(crates.len() > 15, "only {crates:?} were found: the test no longer sees them");
    for name in &crates {
        assert!(owners.contains_key(name.as_str()), "{name} of Cargo.toml has no owner");
    }
    for (name, rooms) in owners {
        assert!(crates.iter().any(|known| known == name), "{name} has an owner and is not in Cargo.toml");
        let mut used_by = BTreeSet::new();
        for path in sources(&root().join("src")) {
            if names_crate(&code_of(&fs::read_to_string(&path).unwrap()), name) {
                let room = room_of(&path);
                let owns = rooms.contains(&"every") || rooms.contains(&room.as_str());
                assert!(owns, "{} uses {name}, which belongs to {rooms:?}", path.display());
                used_by.insert(room);
            }
        }
        let unused: Vec<&&str> = rooms.iter().filter(|room| **room != "every" && !used_by.contains(**room)).collect();
        assert!(unused.is_empty(), "{unused:?} own {name} and do not use it");
    }
}

#[test]
fn files_and_folders_keep_their_size() {
    let mut folders: BTreeMap<PathBuf, usize> = BTreeMap::new();
    for place in ["src", "tests"] {
        for path in sources(&root().join(place)) {
            let lines = fs::read_to_string(&path).unwrap().lines().count();
            assert!(lines <= 800, "{} has {lines} lines", path.display());
            *folders.entry(path.parent().unwrap().to_path_buf()).or_default() += 1;
        }
    }
    for (folder, files) in folders {
        let name = folder.file_name().unwrap().to_string_lossy().to_string();
        let most = if matches!(name.as_str(), "cli" | "science" | "species" | "tests" | "snapshots") { 30 } else { 12 };
        assert!(files <= most, "{} holds {files} files", folder.display());
    }
}

#[test]
fn nothing_is_left_undone_or_silenced() {
    let words = ["todo!(", "unimplemented!(", "dbg!(", "#[ignore", "FIXME", "XXX"];
    for path in sources(&root().join("src")) {
        let text = fs::read_to_string(&path).unwrap();
        for word in words {
            assert!(!text.contains(word), "{} holds {word}", path.display());
        }
    }
}

#[test]
fn the_top_level_holds_what_it_should() {
    let known = [
        "Cargo.toml",
        "Cargo.lock",
        "README.md",
        "DEVELOPERS.md",
        "LICENSE-MIT",
        "LICENSE-APACHE",
        "src",
        "tests",
        "sample-nursery",
        "docs",
        "target",
    ];
    for entry in fs::read_dir(root()).unwrap() {
        let name = entry.unwrap().file_name().to_string_lossy().to_string();
        assert!(name.starts_with('.') || known.contains(&name.as_str()), "{name} stands at the top level");
    }
}
