//! Names people write on labels, and the identity of an entry. Each is its own type, so that a bed cannot be
//! handed over where a tray is meant.

use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::cell::RefCell;
use std::fmt;
use std::str::FromStr;
use std::sync::Arc;

use super::text;

/// The longest code or name, in characters.
pub const LONGEST_CODE: usize = 24;

/// Why a text is not a code.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum CodeError {
    /// Nothing was written.
    #[error("a name cannot be empty")]
    Empty,
    /// More than [`LONGEST_CODE`] characters.
    #[error("a name has at most {LONGEST_CODE} characters; '{0}…' is longer")]
    TooLong(String),
    /// A control, bidirectional or invisible character.
    #[error("the name holds an invisible or control character: {0}")]
    Unseen(String),
}

fn checked(written: &str) -> Result<Arc<str>, CodeError> {
    let trimmed = written.trim();
    if trimmed.is_empty() {
        return Err(CodeError::Empty);
    }
    if text::has_unseen(trimmed) {
        return Err(CodeError::Unseen(text::shown(trimmed).chars().take(60).collect()));
    }
    if trimmed.chars().count() > LONGEST_CODE {
        return Err(CodeError::TooLong(trimmed.chars().take(LONGEST_CODE).collect()));
    }
    Ok(Arc::from(trimmed))
}

macro_rules! names {
    ($($(#[$note:meta])* $name:ident)*) => {$(
        $(#[$note])*
        #[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
        pub struct $name(Arc<str>);

        impl $name {
            /// The name as written, outer blanks removed; 1 to 24 characters, none of them unseen.
            pub fn new(written: &str) -> Result<Self, CodeError> {
                checked(written).map(Self)
            }
            /// The name as text.
            pub fn as_str(&self) -> &str {
                &self.0
            }
        }
        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.pad(&self.0)
            }
        }
        impl FromStr for $name {
            type Err = CodeError;
            fn from_str(written: &str) -> Result<Self, CodeError> {
                Self::new(written)
            }
        }
        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(&self.0)
            }
        }
        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                let written = std::borrow::Cow::<'de, str>::deserialize(deserializer)?;
                Self::new(&written).map_err(serde::de::Error::custom)
            }
        }
    )*};
}

names! {
    /// The code on a tray's label (`cof-031`).
    TrayCode
    /// The code of a seed lot (`cof-L07`).
    LotCode
    /// What people call a bed.
    BedName
    /// What people call a piece of land.
    FieldName
    /// What people call a bench, frame or shelf.
    PlaceName
    /// What people call a kind of bag, cell or seedbed strip.
    ContainerName
}

/// The key a species is stored by: three capital letters (`COA`), or what a nursery chose for its own.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Serialize)]
#[serde(transparent)]
pub struct SpeciesKey(Arc<str>);

impl SpeciesKey {
    /// A key from text already known to be a species' name; trimmed, otherwise unchanged.
    pub fn new(written: &str) -> SpeciesKey {
        SpeciesKey(Arc::from(written.trim()))
    }
    /// The key as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for SpeciesKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.0)
    }
}

impl<'de> Deserialize<'de> for SpeciesKey {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let written = std::borrow::Cow::<'de, str>::deserialize(deserializer)?;
        if written.trim().is_empty() {
            return Err(serde::de::Error::custom("a species cannot be empty"));
        }
        Ok(SpeciesKey::new(&written))
    }
}

/// The copy of the journal that wrote an entry: 1 to 32 letters, digits or hyphens.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Serialize)]
#[serde(transparent)]
pub struct DeviceId(Arc<str>);

thread_local! {
    /// The device named last: nearly every name is of the same one, and shares its letters.
    static LAST_DEVICE: RefCell<Option<DeviceId>> = const { RefCell::new(None) };
}

impl DeviceId {
    /// Reads a device id; `None` unless it is 1 to 32 ASCII letters, digits or hyphens.
    pub fn new(written: &str) -> Option<DeviceId> {
        let plain = (1..=32).contains(&written.len())
            && written.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-');
        plain.then(|| {
            LAST_DEVICE.with_borrow_mut(|last| match last {
                Some(same) if &*same.0 == written => same.clone(),
                Some(_) | None => last.insert(DeviceId(Arc::from(written))).clone(),
            })
        })
    }
    /// The id as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for DeviceId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.0)
    }
}

impl<'de> Deserialize<'de> for DeviceId {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let written = std::borrow::Cow::<'de, str>::deserialize(deserializer)?;
        DeviceId::new(&written).ok_or_else(|| serde::de::Error::custom("not a device id"))
    }
}

/// Who an entry is: the device that wrote it and its running number there (1, 2, 3 ...). Written `device:seq`.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct EntryId {
    /// The copy that wrote it.
    pub device: DeviceId,
    /// Its running number on that copy, from 1.
    pub seq: u64,
}

impl fmt::Display for EntryId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&format!("{}:{}", self.device, self.seq))
    }
}

impl FromStr for EntryId {
    type Err = String;
    fn from_str(written: &str) -> Result<EntryId, String> {
        let fault =
            || format!("'{}' is not an entry written device:number", written.chars().take(60).collect::<String>());
        let (device, seq) = written.rsplit_once(':').ok_or_else(fault)?;
        if seq.is_empty() || seq.len() > 15 || !seq.bytes().all(|byte| byte.is_ascii_digit()) {
            return Err(fault());
        }
        let seq: u64 = seq.parse().map_err(|_| fault())?;
        if seq == 0 {
            return Err(fault());
        }
        Ok(EntryId { device: DeviceId::new(device).ok_or_else(fault)?, seq })
    }
}

/// Text where a person may read it, else device and number.
impl Serialize for EntryId {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        if !serializer.is_human_readable() {
            return (&self.device, self.seq).serialize(serializer);
        }
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for EntryId {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<EntryId, D::Error> {
        if !deserializer.is_human_readable() {
            return <(DeviceId, u64)>::deserialize(deserializer).map(|(device, seq)| EntryId { device, seq });
        }
        let written = std::borrow::Cow::<'de, str>::deserialize(deserializer)?;
        written.parse().map_err(serde::de::Error::custom)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_code_is_whatever_was_written_within_24_visible_characters() {
        assert_eq!(TrayCode::new(" cof-031 ").unwrap().as_str(), "cof-031");
        assert_eq!(TrayCode::new("   "), Err(CodeError::Empty));
        assert!(matches!(TrayCode::new(&"x".repeat(25)), Err(CodeError::TooLong(_))));
        assert!(matches!(TrayCode::new("cof\u{202e}130"), Err(CodeError::Unseen(_))));
    }

    #[test]
    fn an_entry_is_named_by_device_and_number() {
        let id: EntryId = "k3f9:12".parse().unwrap();
        assert_eq!(id.to_string(), "k3f9:12");
        for wrong in ["k3f9", "k3f9:0", "k3f9:x", ":4", "k 3:4"] {
            assert!(wrong.parse::<EntryId>().is_err(), "{wrong} was read as an entry");
        }
    }
}
