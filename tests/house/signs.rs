//! Signs that every terminal draws in one column.

use std::collections::BTreeSet;
use std::fs;

use unicode_width::UnicodeWidthChar;

use super::{root, sources};

#[test]
fn every_sign_of_a_sentence_or_a_drawing_is_one_column_wide_and_none_is_private_or_an_emoji() {
    let code = sources(&root().join("src")).into_iter().filter(|path| {
        let name = path.to_string_lossy();
        ["dashboard", "cli", "page", "wording"].iter().any(|room| name.contains(&format!("/src/{room}")))
            && !name.contains("tests")
    });
    let languages = ["en", "es"].map(|language| root().join("src/wording").join(language));
    let sentences =
        languages.iter().flat_map(|folder| fs::read_dir(folder).unwrap()).map(|entry| entry.unwrap().path());
    let (mut read, mut signs) = (0, BTreeSet::new());
    for path in code.chain(sentences) {
        signs.extend(fs::read_to_string(&path).unwrap().chars().filter(|sign| !sign.is_ascii()));
        read += 1;
    }
    assert!(read > 150 && signs.len() > 30, "{read} files, {signs:?}");
    // Emoji drawn as such are two columns wide, what chooses a drawing (U+FE0F) has none.
    let private = |sign: &char| matches!(*sign, '\u{e000}'..='\u{f8ff}' | '\u{f0000}'..);
    let bad: Vec<String> = signs
        .iter()
        .filter(|sign| sign.width() != Some(1) || private(sign))
        .map(|sign| format!("{sign} {:x}", *sign as u32))
        .collect();
    assert_eq!(bad, Vec::<String>::new());
}
