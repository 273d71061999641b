//! How large the house is: `cargo test --test outplant house::count -- --nocapture` prints it.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use super::{code_of, room_of, root, sources};

/// Lines of one kind of source.
#[derive(Clone, Copy, Default, PartialEq, Eq, Debug)]
struct Lines {
    code: usize,
    tests: usize,
    comments: usize,
    blank: usize,
    /// Items that are plainly `pub`: functions, types, constants and rooms; no fields and no re-exports.
    open: usize,
}

impl std::ops::AddAssign for Lines {
    fn add_assign(&mut self, other: Lines) {
        self.code += other.code;
        self.tests += other.tests;
        self.comments += other.comments;
        self.blank += other.blank;
        self.open += other.open;
    }
}

/// Whether a whole file holds only tests.
fn is_of_tests(path: &Path) -> bool {
    let name = path.file_stem().unwrap().to_string_lossy().to_string();
    let in_folder = path.components().any(|part| part.as_os_str() == "tests");
    in_folder || name == "tests" || name.ends_with("_tests") || name == "test_picture" || name == "written"
}

/// Whether a line opens an item to everybody.
fn opens(line: &str) -> bool {
    const ITEMS: [&str; 8] = ["fn", "struct", "enum", "trait", "const", "static", "type", "mod"];
    line.trim_start().strip_prefix("pub ").is_some_and(|rest| ITEMS.contains(&rest.split(' ').next().unwrap()))
}

/// Counts a source. A block of tests begins with `#[cfg(test)]` on a `mod` with a body and ends with the file.
fn count(text: &str, all_tests: bool) -> Lines {
    let mut lines = Lines::default();
    let mut in_tests = all_tests;
    let all: Vec<&str> = text.lines().collect();
    for (at, line) in all.iter().enumerate() {
        let next = all.get(at + 1).map_or("", |next| next.trim());
        in_tests |= line.trim() == "#[cfg(test)]" && next.starts_with("mod ") && next.ends_with('{');
        match line.trim() {
            "" => lines.blank += 1,
            _ if in_tests => lines.tests += 1,
            comment if comment.starts_with("//") => lines.comments += 1,
            _ => lines.code += 1,
        }
        lines.open += usize::from(opens(line));
    }
    lines
}

fn told(what: &str, lines: Lines) {
    let Lines { code, tests, comments, blank, open } = lines;
    println!("| {what} | {code} | {tests} | {comments} | {blank} | {open} |");
}

#[test]
fn every_line_is_code_test_comment_or_blank() {
    let text = "//! What.\n\n/// A.\npub fn a() {}\npub(crate) fn b() {}\n    pub field: u8,\npub use c::d;\n\n#[cfg(test)]\nmod tests {\n    // Why.\n    pub fn e() {}\n}\n";
    let counted = count(text, false);
    assert_eq!(counted, Lines { code: 4, tests: 5, comments: 2, blank: 2, open: 2 });
    assert_eq!(code_of(text).lines().count(), 10, "the rules of the house read the same lines as code");
}

/// The most items that are plainly `pub`: what no other crate needs is `pub(crate)`, so that the compiler finds what is dead.
const MOST_OPEN: usize = 1_200;

#[test]
fn lines_and_open_doors_are_counted() {
    let mut rooms: BTreeMap<String, Lines> = BTreeMap::new();
    let (mut all, mut sum) = (0, Lines::default());
    for path in sources(&root().join("src")) {
        let text = fs::read_to_string(&path).unwrap();
        let counted = count(&text, is_of_tests(&path));
        all += text.lines().count();
        sum += counted;
        *rooms.entry(room_of(&path)).or_default() += counted;
    }
    println!("\n| room | code | tests | comments | blank | pub |\n| --- | --- | --- | --- | --- | --- |");
    rooms.into_iter().for_each(|(room, lines)| told(&room, lines));
    told("src", sum);
    let mut outside = Lines::default();
    for path in sources(&root().join("tests")) {
        outside += count(&fs::read_to_string(&path).unwrap(), true);
    }
    told("tests", outside);
    assert_eq!(sum.code + sum.tests + sum.comments + sum.blank, all);
    assert!(sum.open <= MOST_OPEN, "{} items are plainly pub, {MOST_OPEN} are allowed", sum.open);
}
