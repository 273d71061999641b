//! An entry as it stands in the file and in an export: envelope, body, and the hash that ties it to the entry before it
//! on the same device. Canonical JSON after RFC 8785, SHA-256.

use serde_json::{Map, Value};
use sha2::{Digest, Sha256};
use std::fmt;
use std::fmt::Write as _;

use super::entry::{Entry, reading};
use crate::base::{Clock, Day, EntryId, Moment};

/// A SHA-256 hash, written as 64 hexadecimal digits.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Hash(pub [u8; 32]);

impl fmt::Display for Hash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for Hash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl Hash {
    /// Reads 64 hexadecimal digits, lower or upper case.
    pub fn read(written: &str) -> Option<Hash> {
        if written.len() != 64 || !written.bytes().all(|byte| byte.is_ascii_hexdigit()) {
            return None;
        }
        let mut bytes = [0; 32];
        for (i, byte) in bytes.iter_mut().enumerate() {
            *byte = u8::from_str_radix(written.get(2 * i..2 * i + 2)?, 16).ok()?;
        }
        Some(Hash(bytes))
    }
}

impl Hash {
    /// The hash of a text.
    pub(crate) fn of_text(text: &str) -> Hash {
        Hash(Sha256::digest(text.as_bytes()).into())
    }
}

/// An entry that is not yet in the book: no identity, no hash.
#[derive(Clone, PartialEq, Debug)]
pub struct Draft {
    /// The day the person means.
    pub happened: Day,
    /// The time of day, where known.
    pub clock: Option<Clock>,
    /// Who writes.
    pub who: String,
    /// The kind's name in files.
    pub kind: String,
    /// The body, settled.
    pub body: Map<String, Value>,
}

/// An entry as it is stored.
#[derive(Clone, PartialEq, Debug)]
pub struct Sealed {
    /// Who it is.
    pub id: EntryId,
    /// The day the person means.
    pub happened: Day,
    /// The time of day, where known.
    pub clock: Option<Clock>,
    /// When the book learned it.
    pub recorded: Moment,
    /// Who wrote it.
    pub who: String,
    /// The kind's name in files.
    pub kind: String,
    /// The first number of the command that wrote it.
    pub command: u64,
    /// The body as canonical JSON.
    pub body: String,
    /// The hash of the entry before it on the same device; none for its first.
    pub prev: Option<Hash>,
    /// The hash of all the above.
    pub hash: Hash,
}

impl Draft {
    /// Gives a draft its identity and seals it.
    pub fn seal(&self, id: EntryId, recorded: Moment, command: u64, prev: Option<Hash>) -> Sealed {
        let mut sealed = Sealed {
            id,
            happened: self.happened,
            clock: self.clock,
            recorded,
            who: self.who.clone(),
            kind: self.kind.clone(),
            command,
            body: canonical(&Value::Object(self.body.clone())),
            prev,
            hash: Hash([0; 32]),
        };
        sealed.hash = sealed.reckoned_hash_of(self.body.clone());
        sealed
    }
}

impl Sealed {
    /// The hash its content should have.
    pub fn reckoned_hash(&self) -> Hash {
        let line = self.line_without_hash();
        Hash(Sha256::digest(canonical(&Value::Object(line)).as_bytes()).into())
    }

    fn line_without_hash(&self) -> Map<String, Value> {
        self.line_around(match serde_json::from_str(&self.body) {
            Ok(Value::Object(body)) => body,
            // A body that is no object cannot have been written by any version; it must not hash like one that is.
            _ => Map::from_iter([("unreadable".to_string(), Value::from(self.body.as_str()))]),
        })
    }

    /// The hash its content should have, where the body has been read already.
    pub fn reckoned_hash_of(&self, body: Map<String, Value>) -> Hash {
        Hash(Sha256::digest(canonical(&Value::Object(self.line_around(body))).as_bytes()).into())
    }

    fn line_around(&self, mut line: Map<String, Value>) -> Map<String, Value> {
        let text = |value: &dyn fmt::Display| Value::from(value.to_string());
        line.insert("id".into(), text(&self.id));
        line.insert("happened".into(), text(&self.happened));
        if let Some(clock) = self.clock {
            line.insert("clock".into(), text(&clock));
        }
        line.insert("recorded".into(), text(&self.recorded));
        line.insert("who".into(), Value::from(self.who.as_str()));
        line.insert("kind".into(), Value::from(self.kind.as_str()));
        line.insert("command".into(), Value::from(self.command));
        line.insert("prev".into(), self.prev.as_ref().map_or(Value::Null, |hash| text(hash)));
        line
    }

    /// The line of an export: canonical JSON with the hash, no line end.
    pub fn line(&self) -> String {
        let mut line = self.line_without_hash();
        line.insert("hash".into(), Value::from(self.hash.to_string()));
        canonical(&Value::Object(line))
    }

    /// The entry in memory; of one that a newer version wrote, what is known here. The error says why the body is no
    /// JSON.
    pub fn open(&self) -> Result<Entry, serde_json::Error> {
        Ok(Entry {
            id: self.id.clone(),
            happened: self.happened,
            clock: self.clock,
            recorded: self.recorded,
            who: self.who.as_str().into(),
            command: self.command,
            what: reading::read_body(&self.kind, &self.body)
                .or_else(|_| reading::read_what_is_known(&self.kind, &self.body))?,
        })
    }
}

/// Canonical JSON after RFC 8785: keys sorted by UTF-16 units, no blanks, numbers as ECMAScript writes them.
pub fn canonical(value: &Value) -> String {
    let mut out = String::with_capacity(128);
    write_canonical(value, &mut out);
    out
}

fn write_canonical(value: &Value, out: &mut String) {
    match value {
        Value::Null => out.push_str("null"),
        Value::Bool(flag) => out.push_str(if *flag { "true" } else { "false" }),
        Value::Number(number) => match (number.as_i64(), number.as_f64()) {
            (Some(whole), _) if whole.unsigned_abs() < (1 << 53) => {
                let _ = write!(out, "{whole}");
            }
            (_, Some(double)) => out.push_str(&ecmascript_number(double)),
            _ => out.push_str("null"),
        },
        Value::String(text) => write_text(text, out),
        Value::Array(items) => {
            out.push('[');
            for (i, item) in items.iter().enumerate() {
                if i > 0 {
                    out.push(',');
                }
                write_canonical(item, out);
            }
            out.push(']');
        }
        Value::Object(map) => {
            let mut keys: Vec<&String> = map.keys().collect();
            keys.sort_by(|a, b| a.encode_utf16().cmp(b.encode_utf16()));
            out.push('{');
            for (i, key) in keys.into_iter().enumerate() {
                if i > 0 {
                    out.push(',');
                }
                write_text(key, out);
                out.push(':');
                write_canonical(map.get(key).unwrap_or(&Value::Null), out);
            }
            out.push('}');
        }
    }
}

fn write_text(text: &str, out: &mut String) {
    // serde_json escapes exactly what RFC 8785 section 3.2.2.2 asks for.
    out.push_str(&serde_json::to_string(text).unwrap_or_default());
}

/// A number as ECMAScript writes it (ECMA-262 Number::toString), from Rust's shortest digits.
fn ecmascript_number(number: f64) -> String {
    if !number.is_finite() {
        return "null".into();
    }
    if number == 0.0 {
        return "0".into();
    }
    let scientific = format!("{:e}", number.abs());
    let (mantissa, exponent) = scientific.split_once('e').unwrap_or((&scientific, "0"));
    let digits: String = mantissa.chars().filter(char::is_ascii_digit).collect();
    let point = exponent.parse::<i32>().unwrap_or(0) + 1;
    let count = digits.len() as i32;
    let sign = if number < 0.0 { "-" } else { "" };
    if count <= point && point <= 21 {
        return format!("{sign}{digits}{}", "0".repeat((point - count) as usize));
    }
    if 0 < point && point <= 21 {
        let (whole, part) = digits.split_at(point as usize);
        return format!("{sign}{whole}.{part}");
    }
    if -6 < point && point <= 0 {
        return format!("{sign}0.{}{digits}", "0".repeat(-point as usize));
    }
    let exponent = point - 1;
    let shown = if exponent < 0 { format!("-{}", -exponent) } else { format!("+{exponent}") };
    let (first, rest) = digits.split_at(1);
    if rest.is_empty() { format!("{sign}{first}e{shown}") } else { format!("{sign}{first}.{rest}e{shown}") }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 8785 appendix B, table of number samples.
    #[test]
    fn numbers_are_written_as_in_rfc_8785_appendix_b() {
        let samples: [(u64, &str); 14] = [
            (0x0000_0000_0000_0000, "0"),
            (0x8000_0000_0000_0000, "0"),
            (0x0000_0000_0000_0001, "5e-324"),
            (0x7fef_ffff_ffff_ffff, "1.7976931348623157e+308"),
            (0x4340_0000_0000_0000, "9007199254740992"),
            (0x4430_0000_0000_0000, "295147905179352830000"),
            (0x44b5_2d02_c7e1_4af5, "9.999999999999997e+22"),
            (0x44b5_2d02_c7e1_4af6, "1e+23"),
            (0x444b_1ae4_d6e2_ef4e, "999999999999999700000"),
            (0x444b_1ae4_d6e2_ef50, "1e+21"),
            (0x3eb0_c6f7_a0b5_ed8c, "9.999999999999997e-7"),
            (0x3eb0_c6f7_a0b5_ed8d, "0.000001"),
            (0x41b3_de43_5555_5553, "333333333.3333332"),
            (0xbecb_f647_612f_3696, "-0.0000033333333333333333"),
        ];
        for (bits, expected) in samples {
            assert_eq!(ecmascript_number(f64::from_bits(bits)), expected, "bits {bits:016x}");
        }
    }

    /// RFC 8785 section 3.2.3, the sorting example.
    #[test]
    fn keys_are_sorted_by_utf_16_units_as_in_rfc_8785() {
        let value: Value = serde_json::from_str(
            r#"{"\u20ac":"Euro Sign","\r":"Carriage Return","\ufb33":"Hebrew Letter Dalet With Dagesh","1":"One","\ud83d\ude00":"Emoji: Grinning Face","\u0080":"Control","\u00f6":"Latin Small Letter O With Diaeresis"}"#,
        )
        .unwrap();
        let text = canonical(&value);
        let order: Vec<usize> = ["Carriage", "One", "Control", "Latin", "Euro", "Emoji", "Hebrew"]
            .iter()
            .map(|word| text.find(word).unwrap())
            .collect();
        assert!(order.is_sorted(), "{text}");
    }

    /// FIPS 180-2 appendix B.1: SHA-256 of "abc".
    #[test]
    fn the_hash_is_sha_256() {
        let hash = Hash(Sha256::digest(b"abc").into());
        assert_eq!(hash.to_string(), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
        assert_eq!(Hash::read(&hash.to_string()), Some(hash));
    }
}
