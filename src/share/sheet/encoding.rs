//! What the bytes of a sheet mean.

use super::workbook::is_workbook;
use crate::share::fault::{Reason, WorkbookFault};

/// How a sheet is written in bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Encoding {
    /// UTF-8, with or without its mark.
    Utf8,
    /// UTF-16, the lower byte first.
    Utf16LittleEndian,
    /// UTF-16, the higher byte first.
    Utf16BigEndian,
    /// UTF-32, in either order of bytes.
    Utf32,
    /// What older spreadsheet programs write in western Europe and the Americas.
    Windows1252,
    /// A workbook of a spreadsheet program.
    Workbook,
}

/// The characters of the bytes 80 to 9F of Windows-1252, `\0` where there is none; all others stand as in Latin-1.
/// From the table cp1252.txt that the Unicode Consortium publishes.
const WINDOWS_1252_80_TO_9F: [char; 32] = [
    '\u{20ac}', '\0', '\u{201a}', '\u{0192}', '\u{201e}', '\u{2026}', '\u{2020}', '\u{2021}', '\u{02c6}', '\u{2030}',
    '\u{0160}', '\u{2039}', '\u{0152}', '\0', '\u{017d}', '\0', '\0', '\u{2018}', '\u{2019}', '\u{201c}', '\u{201d}',
    '\u{2022}', '\u{2013}', '\u{2014}', '\u{02dc}', '\u{2122}', '\u{0161}', '\u{203a}', '\u{0153}', '\0', '\u{017e}',
    '\u{0178}',
];

/// First bytes of files that hold no sheet: a database (a nursery's file is one), a page to print, pictures, packed files.
const NO_SHEETS: [&[u8]; 6] = [DATABASE, b"%PDF-", b"\x89PNG", b"\xff\xd8\xff", b"GIF8", b"\x1f\x8b"];
const DATABASE: &[u8] = b"SQLite format 3\0";
/// So many bytes of a file are looked at to tell how it is written.
const FIRST_BYTES: usize = 1024;

/// The text of a sheet: UTF-32 and UTF-16 by their mark or by the zeros between their letters, UTF-8 where it is that, else
/// Windows-1252.
pub fn decode(bytes: &[u8]) -> Result<(String, Encoding), Reason> {
    if is_workbook(bytes) {
        return Err(Reason::Workbook(WorkbookFault::NotHere));
    }
    if NO_SHEETS.iter().any(|first| bytes.starts_with(first)) {
        return Err(Reason::NoSheet { is_database: bytes.starts_with(DATABASE) });
    }
    if let Some(text) = utf_32(bytes) {
        return Ok((text, Encoding::Utf32));
    }
    if let Some(rest) = bytes.strip_prefix(b"\xff\xfe") {
        return utf_16(rest, u16::from_le_bytes, MARK).map(|text| (text, Encoding::Utf16LittleEndian));
    }
    if let Some(rest) = bytes.strip_prefix(b"\xfe\xff") {
        return utf_16(rest, u16::from_be_bytes, MARK).map(|text| (text, Encoding::Utf16BigEndian));
    }
    match zeros(bytes) {
        Zeros::Behind => return utf_16(bytes, u16::from_le_bytes, 0).map(|text| (text, Encoding::Utf16LittleEndian)),
        Zeros::Before => return utf_16(bytes, u16::from_be_bytes, 0).map(|text| (text, Encoding::Utf16BigEndian)),
        Zeros::Anywhere => return Err(Reason::NoSheet { is_database: false }),
        Zeros::None => {}
    }
    let plain = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    match std::str::from_utf8(plain) {
        Ok(text) => Ok((text.to_string(), Encoding::Utf8)),
        // With the mark of UTF-8 it was meant to be that.
        Err(error) if plain.len() < bytes.len() => Err(Reason::NotUtf8 { byte: error.valid_up_to() + 4 }),
        Err(_) => windows_1252(bytes).map(|text| (text, Encoding::Windows1252)),
    }
}

/// Bytes of the mark of UTF-16.
const MARK: usize = 2;

/// Where zeros stand among the first bytes of a file.
enum Zeros {
    /// Nowhere, or so few that they are slips in a text.
    None,
    /// Behind most letters: UTF-16, the lower byte first.
    Behind,
    /// Before most letters: UTF-16, the higher byte first.
    Before,
    /// All over: no text.
    Anywhere,
}

fn zeros(bytes: &[u8]) -> Zeros {
    /// Fewer zeros than one in so many bytes are slips in a text (ours).
    const SLIPS: usize = 20;
    let first = &bytes[..bytes.len().min(FIRST_BYTES)];
    let zeros = |odd: usize| first.iter().skip(odd).step_by(2).filter(|byte| **byte == 0).count();
    let (before, behind) = (zeros(0), zeros(1));
    let pairs = first.len() / 2;
    match () {
        () if (before + behind) * SLIPS < first.len() || first.len() < 4 => Zeros::None,
        // The names of the columns are written in letters of one byte.
        () if behind * 2 > pairs && before * SLIPS <= pairs => Zeros::Behind,
        () if before * 2 > pairs && behind * SLIPS <= pairs => Zeros::Before,
        () => Zeros::Anywhere,
    }
}

/// UTF-32, where every four bytes are a letter.
fn utf_32(bytes: &[u8]) -> Option<String> {
    let (fours, left_over) = bytes.as_chunks::<4>();
    if fours.len() < 2 || !left_over.is_empty() {
        return None;
    }
    let text = |order: fn([u8; 4]) -> u32| {
        let letter = |four: &[u8; 4]| char::from_u32(order(*four)).filter(|letter| *letter != '\0');
        let text: Option<String> = fours.iter().map(letter).collect();
        text.map(|text| text.trim_start_matches('\u{feff}').to_string())
    };
    text(u32::from_le_bytes).or_else(|| text(u32::from_be_bytes))
}

fn utf_16(bytes: &[u8], unit: fn([u8; 2]) -> u16, before: usize) -> Result<String, Reason> {
    let (pairs, left_over) = bytes.as_chunks::<2>();
    let mut text = String::with_capacity(bytes.len());
    let mut units = 0;
    for letter in char::decode_utf16(pairs.iter().map(|pair| unit(*pair))) {
        match letter {
            Ok(letter) => {
                units += letter.len_utf16();
                text.push(letter);
            }
            Err(_) => return Err(Reason::NotInEncoding { byte: 2 * units + before + 1 }),
        }
    }
    if left_over.is_empty() { Ok(text) } else { Err(Reason::NotInEncoding { byte: bytes.len() + before }) }
}

fn windows_1252(bytes: &[u8]) -> Result<String, Reason> {
    bytes
        .iter()
        .enumerate()
        .map(|(i, byte)| match byte {
            0x80..=0x9f => match WINDOWS_1252_80_TO_9F[usize::from(byte - 0x80)] {
                '\0' => Err(Reason::NotInEncoding { byte: i + 1 }),
                letter => Ok(letter),
            },
            other => Ok(char::from(*other)),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_encodings_are_told_apart() {
        assert_eq!(decode("año".as_bytes()).unwrap(), ("año".into(), Encoding::Utf8));
        assert_eq!(decode(b"\xef\xbb\xbfa").unwrap(), ("a".into(), Encoding::Utf8));
        assert_eq!(decode(b"a\xf1o \x80 \x9f").unwrap(), ("año € Ÿ".into(), Encoding::Windows1252));
        assert_eq!(decode(b"\xff\xfea\0\xf1\0").unwrap(), ("añ".into(), Encoding::Utf16LittleEndian));
        assert_eq!(decode(b"\xfe\xff\0a\0\xf1").unwrap(), ("añ".into(), Encoding::Utf16BigEndian));
    }

    #[test]
    fn wide_letters_are_read_without_their_mark_and_a_file_that_is_no_sheet_is_said_to_be_none() {
        let sheet = "Bandeja;Especie;Cuántas\na-1;café;12\n";
        let little: Vec<u8> = sheet.encode_utf16().flat_map(u16::to_le_bytes).collect();
        let big: Vec<u8> = sheet.encode_utf16().flat_map(u16::to_be_bytes).collect();
        assert_eq!(decode(&little).unwrap(), (sheet.into(), Encoding::Utf16LittleEndian));
        assert_eq!(decode(&big).unwrap(), (sheet.into(), Encoding::Utf16BigEndian));
        for mark in ["", "\u{feff}"] {
            let letters = || mark.chars().chain(sheet.chars()).map(u32::from);
            let little: Vec<u8> = letters().flat_map(u32::to_le_bytes).collect();
            let big: Vec<u8> = letters().flat_map(u32::to_be_bytes).collect();
            assert_eq!(decode(&little).unwrap(), (sheet.into(), Encoding::Utf32));
            assert_eq!(decode(&big).unwrap(), (sheet.into(), Encoding::Utf32));
        }
        let database = [&b"SQLite format 3\0"[..], &[16, 0, 1, 1]].concat();
        assert_eq!(decode(&database), Err(Reason::NoSheet { is_database: true }));
        assert_eq!(decode(b"\x7fELF\x02\0\0\0\0\0\0\x01"), Err(Reason::NoSheet { is_database: false }));
        assert_eq!(decode(b"Tray,Species\na-1,coffee\0\n").unwrap().1, Encoding::Utf8);
    }

    #[test]
    fn bytes_that_mean_nothing_are_named() {
        assert_eq!(decode(b"a\xf1\x81"), Err(Reason::NotInEncoding { byte: 3 }));
        assert_eq!(decode(b"\xff\xfea\0\0\xd8a\0"), Err(Reason::NotInEncoding { byte: 5 }));
        assert_eq!(decode(b"\xff\xfea\0b"), Err(Reason::NotInEncoding { byte: 5 }));
        assert_eq!(decode(b"\xef\xbb\xbfa\xf1"), Err(Reason::NotUtf8 { byte: 5 }));
        assert_eq!(decode(b"PK\x03\x04"), Err(Reason::Workbook(WorkbookFault::NotHere)));
    }

    proptest! {
        #[test]
        fn utf_16_is_read_as_it_was_written(text in any::<String>()) {
            let mut little = vec![0xff, 0xfe];
            little.extend(text.encode_utf16().flat_map(u16::to_le_bytes));
            prop_assert_eq!(decode(&little).unwrap(), (text.clone(), Encoding::Utf16LittleEndian));
            let mut big = vec![0xfe, 0xff];
            big.extend(text.encode_utf16().flat_map(u16::to_be_bytes));
            prop_assert_eq!(decode(&big).unwrap(), (text, Encoding::Utf16BigEndian));
        }
    }
}
