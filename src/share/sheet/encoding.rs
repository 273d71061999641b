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

/// The text of a sheet: UTF-16 where its mark stands first, UTF-8 where it is that, else Windows-1252.
pub fn decode(bytes: &[u8]) -> Result<(String, Encoding), Reason> {
    if is_workbook(bytes) {
        return Err(Reason::Workbook(WorkbookFault::NotHere));
    }
    if let Some(rest) = bytes.strip_prefix(b"\xff\xfe") {
        return utf_16(rest, u16::from_le_bytes).map(|text| (text, Encoding::Utf16LittleEndian));
    }
    if let Some(rest) = bytes.strip_prefix(b"\xfe\xff") {
        return utf_16(rest, u16::from_be_bytes).map(|text| (text, Encoding::Utf16BigEndian));
    }
    let plain = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    match std::str::from_utf8(plain) {
        Ok(text) => Ok((text.to_string(), Encoding::Utf8)),
        // With the mark of UTF-8 it was meant to be that.
        Err(error) if plain.len() < bytes.len() => Err(Reason::NotUtf8 { byte: error.valid_up_to() + 4 }),
        Err(_) => windows_1252(bytes).map(|text| (text, Encoding::Windows1252)),
    }
}

fn utf_16(bytes: &[u8], unit: fn([u8; 2]) -> u16) -> Result<String, Reason> {
    let (pairs, left_over) = bytes.as_chunks::<2>();
    let mut text = String::with_capacity(bytes.len());
    let mut units = 0;
    for letter in char::decode_utf16(pairs.iter().map(|pair| unit(*pair))) {
        match letter {
            Ok(letter) => {
                units += letter.len_utf16();
                text.push(letter);
            }
            // Two bytes of mark stand before the first unit.
            Err(_) => return Err(Reason::NotInEncoding { byte: 2 * units + 3 }),
        }
    }
    if left_over.is_empty() { Ok(text) } else { Err(Reason::NotInEncoding { byte: bytes.len() + 2 }) }
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
