//! Where the cells of an Office Open XML workbook stand, before the library that reads it reckons with their numbers: it does
//! so unchecked (calamine 0.38), and a cell far behind the last one of any sheet would be read as another.

use std::io::{BufRead, BufReader, Cursor, Read};

use zip::ZipArchive;

use super::open_document::{LONGEST_TAG, next_tag};

/// The last row and the last column that a sheet can have (ECMA-376 part 1, 18.3.1.73 and 18.3.1.13; XFD is column 16,384).
const LAST_ROW: u64 = 1_048_576;
const LAST_COLUMN: u64 = 16_384;

/// The first row or cell whose name no sheet has, as it is written; nothing where all are possible, or where it cannot be
/// read: that is told by whoever reads it.
pub(super) fn impossible_cell(bytes: &[u8], most_bytes: u64) -> Option<String> {
    let mut parts = ZipArchive::new(Cursor::new(bytes)).ok()?;
    (0..parts.len()).find_map(|at| {
        let part = parts.by_index(at).ok()?;
        let is_text = part.name().is_ok_and(|name| name.to_ascii_lowercase().ends_with(".xml"));
        first_impossible(&mut BufReader::new(part.take(if is_text { most_bytes } else { 0 })))
    })
}

fn first_impossible(text: &mut impl BufRead) -> Option<String> {
    while let Some(tag) = next_tag(text) {
        let name = whole(tag, text).and_then(|tag| impossible_name(&tag));
        if name.is_some() {
            return name;
        }
    }
    None
}

/// A tag of a row or a cell to its end: a `>` may stand in what is quoted. Nothing of any other tag.
fn whole(mut tag: Vec<u8>, text: &mut impl BufRead) -> Option<Vec<u8>> {
    let end = tag.iter().position(|byte| byte.is_ascii_whitespace() || matches!(byte, b'/' | b'>'))?;
    if !matches!(tag[..end].rsplit(|byte| *byte == b':').next()?, b"c" | b"row") {
        return None;
    }
    while is_in_quotes(&tag) && text.by_ref().take(LONGEST_TAG).read_until(b'>', &mut tag).is_ok_and(|read| read > 0) {}
    Some(tag)
}

fn is_in_quotes(tag: &[u8]) -> bool {
    tag.iter()
        .fold(None, |open, byte| match open {
            Some(quote) => Some(quote).filter(|quote| quote != byte),
            None => Some(*byte).filter(|byte| matches!(byte, b'"' | b'\'')),
        })
        .is_some()
}

/// The name that the tag of a row or a cell gives it, where no sheet has it.
fn impossible_name(tag: &[u8]) -> Option<String> {
    /// Of a longer name so many letters tell where to look.
    const LONGEST_NAME: usize = 20;
    let name = String::from_utf8_lossy(named(tag)?).into_owned();
    (!is_possible(&name)).then(|| name.chars().take(LONGEST_NAME).collect())
}

/// The value of the attribute `r`. One that does not end is what stands there of it.
fn named(tag: &[u8]) -> Option<&[u8]> {
    let mut rest = tag;
    loop {
        let equals = rest.iter().position(|byte| *byte == b'=')?;
        let attribute = rest[..equals].trim_ascii_end().rsplit(|byte| byte.is_ascii_whitespace()).next()?;
        let (quote, value) = rest[equals + 1..].trim_ascii_start().split_first()?;
        let end = value.iter().position(|byte| byte == quote).unwrap_or(value.len());
        if attribute == b"r" {
            return Some(&value[..end]);
        }
        rest = value.get(end + 1..)?;
    }
}

/// Whether letters and digits name a cell, or digits a row, that a sheet can have. What is no name at all is told by whoever
/// reads it.
fn is_possible(name: &str) -> bool {
    let digits = name.trim_start_matches(|letter: char| letter.is_ascii_alphabetic());
    let letters = &name[..name.len() - digits.len()];
    if digits.is_empty() || !digits.bytes().all(|byte| byte.is_ascii_digit()) {
        return true;
    }
    let column = letters.bytes().fold(0u64, |column, letter| {
        column.saturating_mul(26).saturating_add(u64::from(letter.to_ascii_uppercase() - b'A') + 1)
    });
    column <= LAST_COLUMN && digits.parse::<u64>().is_ok_and(|row| row <= LAST_ROW)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_cell_of_a_sheet_is_possible_and_none_behind_it() {
        for possible in ["A1", "XFD1048576", "1048576", "xfd1", "", "A", "A1B"] {
            assert!(is_possible(possible), "{possible}");
        }
        for not in ["A1048577", "XFE1", "AAAA1", "A4294967297", "A99999999999999999999999", "1048577"] {
            assert!(!is_possible(not), "{not}");
        }
    }

    #[test]
    fn the_name_of_a_cell_is_found_however_its_tag_is_written() {
        let name_in = |text: &str| first_impossible(&mut text.as_bytes());
        for text in [
            "<row><c r=\"A1048577\">",
            "<x:c s='1' r = 'A1048577'>",
            "<row spans=\"1:2\" r=\"A1048577\"/>",
            "<c s=\"=>\" t='\">' r=\"A1048577\"/>",
            "<!-- don't --><c\nr=\"A1048577\"/>",
        ] {
            assert_eq!(name_in(text).as_deref(), Some("A1048577"), "{text}");
        }
        for text in ["<c s=\"1\">", "<col r=\"A1048577\">", "<c r=\"B2\"/>", "</c>", "<c r=\"A1", "<c"] {
            assert_eq!(name_in(text), None, "{text}");
        }
    }
}
