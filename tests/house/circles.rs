//! Files that look at each other in a circle can only be read together: none may be of more than four. Who looks at whom
//! is read from `use` lines, grouped ones too, and from paths written out. What a file only hands on (`pub use`) is looked
//! for in the file that has it. Tests are left out.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;

use super::{root, sources};

/// The most files that may look at each other in a circle.
const MOST_IN_A_CIRCLE: usize = 4;

/// A path of names from the root of the crate: a file, or something in it.
type Names = Vec<String>;

/// What a file takes in under a name.
struct TakenIn {
    handed_on: bool,
    path: Names,
    name: String,
}

#[derive(Default)]
struct Files {
    code: BTreeMap<Names, String>,
    taken_in: BTreeMap<Names, Vec<TakenIn>>,
}

/// The code of a file, without comments and without the tests at its end.
fn code_of(text: &str) -> String {
    let lines = text.lines().map(|line| line.split("//").next().unwrap_or_default());
    let mut code = String::new();
    let mut tests_begin = false;
    for line in lines {
        if tests_begin && line.starts_with("mod ") && line.ends_with('{') {
            break;
        }
        tests_begin = line == "#[cfg(test)]" || (tests_begin && line.starts_with("#["));
        code.push_str(line);
        code.push('\n');
    }
    code
}

/// Modules that are only there for tests, declared in a file.
fn only_for_tests(code: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut lines = code.lines().peekable();
    while let Some(line) = lines.next() {
        let next = lines.peek().and_then(|next| next.trim().trim_start_matches("pub ").strip_prefix("mod "));
        if line.trim() == "#[cfg(test)]" {
            found.extend(next.and_then(|next| next.strip_suffix(';')).map(str::to_string));
        }
    }
    found
}

/// Everything that stands between `use` and its semicolon, each with its whole path and the name it has here.
fn leaves(before: &[String], text: &str) -> Vec<(Names, String)> {
    let mut parts = vec![String::new()];
    let mut depth = 0;
    for letter in text.chars() {
        match letter {
            '{' => depth += 1,
            '}' => depth -= 1,
            ',' if depth == 0 => {
                parts.push(String::new());
                continue;
            }
            _ => {}
        }
        parts.last_mut().unwrap().push(letter);
    }
    let with = |names: &str| -> Names {
        let names = names.split("::").map(str::trim).filter(|name| !name.is_empty());
        before.iter().cloned().chain(names.map(str::to_string)).collect()
    };
    let mut found = Vec::new();
    for part in parts.iter().map(|part| part.trim()).filter(|part| !part.is_empty()) {
        if let Some((names, inner)) = part.split_once('{') {
            let inner = inner.trim_end().strip_suffix('}').unwrap_or_else(|| panic!("no use line: {text}"));
            found.extend(leaves(&with(names), inner));
            continue;
        }
        let (names, called) = part.split_once(" as ").unwrap_or((part, ""));
        let mut path = with(names);
        if path.last().is_some_and(|name| name == "self") {
            path.pop();
        }
        let name = if called.is_empty() { path.last().cloned().unwrap_or_default() } else { called.trim().to_string() };
        found.push((path, name));
    }
    found
}

/// The `use` lines of a file, and the rest of it.
fn use_lines(code: &str) -> (Vec<(bool, String)>, String) {
    let (mut lines, mut rest) = (Vec::new(), String::new());
    let mut open: Option<(bool, String)> = None;
    for line in code.lines() {
        let trimmed = line.trim();
        let public = trimmed.strip_prefix("pub").map(|after| match after.strip_prefix('(') {
            Some(inner) => inner.split_once(')').map_or("", |(_, after)| after),
            None => after,
        });
        let begins = match public {
            Some(after) => after.trim().strip_prefix("use ").map(|used| (true, used)),
            None => trimmed.strip_prefix("use ").map(|used| (false, used)),
        };
        match (&mut open, begins) {
            (Some((_, text)), _) => text.push_str(trimmed),
            (None, Some((handed_on, used))) => open = Some((handed_on, used.to_string())),
            (None, None) => {
                rest.push_str(line);
                rest.push('\n');
            }
        }
        if open.as_ref().is_some_and(|(_, text)| text.ends_with(';')) {
            lines.extend(open.take().map(|(handed_on, text)| (handed_on, text.trim_end_matches(';').to_string())));
        }
    }
    (lines, rest)
}

impl Files {
    fn of<'a>(texts: impl Iterator<Item = (Names, &'a str)>) -> Files {
        let mut code: BTreeMap<Names, String> = texts.map(|(file, text)| (file, code_of(text))).collect();
        let tests: Vec<Names> = code
            .iter()
            .flat_map(|(file, code)| only_for_tests(code).into_iter().map(|name| [file.clone(), vec![name]].concat()))
            .collect();
        code.retain(|file, _| !tests.iter().any(|test| file.starts_with(test)));
        let mut files = Files { code, taken_in: BTreeMap::new() };
        let mut taken_in = BTreeMap::new();
        for (file, code) in &files.code {
            let mut of_file = Vec::new();
            for (handed_on, used) in use_lines(code).0 {
                for (path, name) in leaves(&[], &used) {
                    let path = files.seen_from_the_root(file, &path, &BTreeMap::new());
                    of_file.extend(path.map(|path| TakenIn { handed_on, path, name }));
                }
            }
            taken_in.insert(file.clone(), of_file);
        }
        files.taken_in = taken_in;
        files
    }

    /// A path as it is written in a file, from the root; none where it leads out of the crate.
    fn seen_from_the_root(&self, file: &Names, path: &[String], called: &BTreeMap<String, Names>) -> Option<Names> {
        let first = path.first()?;
        match first.as_str() {
            "crate" => Some(path[1..].to_vec()),
            "self" => Some([file.clone(), path[1..].to_vec()].concat()),
            "super" => {
                let ups = path.iter().take_while(|name| *name == "super").count();
                let above = file.get(..file.len().checked_sub(ups)?)?.to_vec();
                Some([above, path[ups..].to_vec()].concat())
            }
            _ => {
                let beside = [file.clone(), vec![first.clone()]].concat();
                let known = called.get(first).cloned().or_else(|| self.code.contains_key(&beside).then_some(beside))?;
                Some([known, path[1..].to_vec()].concat())
            }
        }
    }

    /// The file that has what a path names, and whether that is a file as a whole.
    fn file_of(&self, path: &[String], deep: usize) -> (Names, bool) {
        let mut known = 0;
        while known < path.len() && self.code.contains_key(&path[..=known]) {
            known += 1;
        }
        let (file, rest) = (path[..known].to_vec(), &path[known..]);
        let Some(wanted) = rest.first() else { return (file, true) };
        let handed_on = |taken: &&TakenIn| taken.handed_on && taken.name == *wanted;
        match self.taken_in.get(&file).and_then(|taken| taken.iter().find(handed_on)) {
            Some(from) if deep < 8 => self.file_of(&[from.path.clone(), rest[1..].to_vec()].concat(), deep + 1),
            Some(_) | None => (file, false),
        }
    }

    /// The files that each file looks at.
    fn looks(&self) -> BTreeMap<Names, BTreeSet<Names>> {
        let mut looks: BTreeMap<Names, BTreeSet<Names>> = BTreeMap::new();
        for (file, code) in &self.code {
            let seen = looks.entry(file.clone()).or_default();
            let mut called: BTreeMap<String, Names> = BTreeMap::new();
            for taken in &self.taken_in[file] {
                match self.file_of(&taken.path, 0) {
                    (other, true) => drop(called.insert(taken.name.clone(), other)),
                    (other, false) if !taken.handed_on => drop(seen.insert(other)),
                    (_, false) => {}
                }
            }
            let rest = use_lines(code).1;
            let words = rest.split(|letter: char| !(letter.is_alphanumeric() || letter == '_' || letter == ':'));
            for word in words.filter(|word| word.contains("::")) {
                let names: Names = word.split("::").filter(|name| !name.is_empty()).map(str::to_string).collect();
                let Some(path) = self.seen_from_the_root(file, &names, &called) else { continue };
                if let (other, false) = self.file_of(&path, 0) {
                    seen.insert(other);
                }
            }
            seen.remove(file);
        }
        looks
    }

    /// Files that look at each other in a circle, each circle once.
    fn circles(&self) -> BTreeSet<Vec<String>> {
        let looks = self.looks();
        let reached = |from: &Names| -> BTreeSet<Names> {
            let (mut reached, mut open) = (BTreeSet::new(), vec![from.clone()]);
            while let Some(file) = open.pop() {
                let further = looks.get(&file).into_iter().flatten();
                open.extend(further.filter(|other| reached.insert((*other).clone())).cloned());
            }
            reached
        };
        let reach: BTreeMap<&Names, BTreeSet<Names>> = looks.keys().map(|file| (file, reached(file))).collect();
        let back = |file: &Names, other: &Names| reach.get(other).is_some_and(|from| from.contains(file));
        let circle = |(file, reach): (&&Names, &BTreeSet<Names>)| -> Vec<String> {
            reach.iter().filter(|other| back(file, other)).map(|names| names.join("/")).collect()
        };
        reach.iter().map(circle).filter(|circle| circle.len() > 1).collect()
    }
}

/// `a/mod.rs` and `a.rs` are both `a`.
fn names_of(path: &str) -> Names {
    let path = path.trim_end_matches(".rs").trim_end_matches("/mod");
    path.split('/').filter(|name| *name != "lib").map(str::to_string).collect()
}

#[test]
fn no_circle_of_more_than_four_files() {
    let src = root().join("src");
    let texts: Vec<(String, String)> = sources(&src)
        .into_iter()
        .map(|path| {
            let name = path.strip_prefix(&src).unwrap().to_string_lossy().into_owned();
            (name, fs::read_to_string(path).unwrap())
        })
        .filter(|(name, _)| name != "main.rs")
        .collect();
    let files = Files::of(texts.iter().map(|(name, text)| (names_of(name), text.as_str())));
    let looks: usize = files.looks().values().map(BTreeSet::len).sum();
    assert!(looks > 1000, "only {looks} looks from file to file were found: the test no longer sees them");
    let circles = files.circles();
    let large: Vec<_> = circles.iter().filter(|circle| circle.len() > MOST_IN_A_CIRCLE).collect();
    assert!(large.is_empty(), "files that look at each other in a circle: {large:#?}");
}

#[test]
fn a_circle_is_seen_through_groups_handing_on_and_paths_and_tests_make_none() {
    let circles = |texts: &[(&str, &str)]| -> Vec<Vec<String>> {
        Files::of(texts.iter().map(|(name, text)| (names_of(name), *text))).circles().into_iter().collect()
    };
    let mods = "mod one;\nmod two;\npub use one::One;\npub use two::Two;\n";
    let grouped = "use crate::{\n    base::Day,\n    a::{Two as Other, One},\n};\nstruct One(Other);\n";
    let path = "struct Two(super::one::One);\n";
    let through = [("a/mod.rs", mods), ("a/one.rs", grouped), ("a/two.rs", path)];
    assert_eq!(circles(&through), [["a/one", "a/two"]]);
    let through_a_name =
        [("a/mod.rs", mods), ("a/one.rs", grouped), ("a/two.rs", "use super::one;\nfn f(_: one::One) {}\n")];
    assert_eq!(circles(&through_a_name), [["a/one", "a/two"]]);
    // A folder that only hands on looks at nothing; one that uses what lies in it does.
    let folder = [("a/mod.rs", "pub mod one;\nstruct Up(one::One);\n"), ("a/one.rs", "use super::Up;\n")];
    assert_eq!(circles(&folder), [["a", "a/one"]]);
    let tests = "struct One;\n\n#[cfg(test)]\nmod tests {\n    use super::super::Two;\n}\n";
    assert!(circles(&[("a/mod.rs", mods), ("a/one.rs", tests), ("a/two.rs", path)]).is_empty());
    let files = "#[cfg(test)]\nmod two;\nmod one;\npub use one::One;\n";
    assert!(circles(&[("a/mod.rs", files), ("a/one.rs", grouped), ("a/two.rs", path)]).is_empty());
}
