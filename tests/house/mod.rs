//! The rules of the house: which room may look at which, which crate has which owner, how long things may be.

mod circles;

use std::collections::BTreeMap;
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

/// Every `crate::room` that a source names, in `use` lines and in paths.
fn looked_at(text: &str) -> Vec<String> {
    let code: String = text.lines().filter(|line| !line.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n");
    code.match_indices("crate::")
        .map(|(at, found)| {
            code[at + found.len()..].chars().take_while(|c| c.is_ascii_lowercase() || *c == '_').collect::<String>()
        })
        .filter(|room| !room.is_empty())
        .collect()
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
        ("paper", &["wording", "reckon", "nursery", "base"][..]),
        ("cli", &["desk", "paper", "wording", "settings", "reckon", "science", "nursery", "base"][..]),
        ("dashboard", &["desk", "paper", "wording", "settings", "reckon", "nursery", "base"][..]),
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
fn each_outside_crate_has_one_owner_room() {
    let owners = [
        ("rusqlite", "journal"),
        ("clap", "cli"),
        ("ratatui", "dashboard"),
        ("crossterm", "dashboard"),
        ("fluent", "wording"),
        ("sha2", "nursery"),
        ("statrs", "science"),
        ("directories", "settings"),
        ("terminal_size", "cli"),
        ("unicode_normalization", "base"),
    ];
    for path in sources(&root().join("src")) {
        let text = fs::read_to_string(&path).unwrap();
        for (name, owner) in owners {
            let used = text.contains(&format!("use {name}::")) || text.contains(&format!(" {name}::"));
            assert!(!used || room_of(&path) == owner, "{} uses {name}, which belongs to {owner}", path.display());
        }
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
