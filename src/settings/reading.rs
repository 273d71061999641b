//! Reading the settings file: a line that is wrong is named and left out, and the others hold.

use std::collections::BTreeMap;
use std::io::Read;
use std::path::Path;
use toml::{Table, Value};

use super::{Folders, NAMES, Settings};
use crate::base::letters::{Letters, LettersFault};

/// Longest settings file that is read, bytes (ours: six short lines and room for remarks).
const LONGEST: u64 = 64 * 1024;

/// What the settings file says, and what in it is wrong.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub(crate) struct ReadSettings {
    /// What could be read; the rest is as where nothing is set.
    pub(crate) settings: Settings,
    /// What could not, by line.
    pub(crate) faults: Vec<SettingsFault>,
}

/// Something wrong in the settings file.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct SettingsFault {
    /// The line, from 1; none where it is the whole file.
    pub(crate) line: Option<usize>,
    /// What.
    pub(crate) wrong: WrongSetting,
}

/// What can be wrong in the settings file.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum WrongSetting {
    /// The system does not hand the file over.
    Unreadable(std::io::ErrorKind),
    /// A folder, a pipe or a device.
    NoFile,
    /// Larger than any settings.
    TooLong,
    /// Not text in UTF-8.
    NoText,
    /// Not of the form `name = value`.
    NoSetting,
    /// No setting is called like this.
    Unknown(String),
    /// A setting that stands on an earlier line.
    Twice {
        /// The setting.
        name: &'static str,
        /// That line.
        first: usize,
    },
    /// A setting with a value it cannot have.
    Value {
        /// The setting.
        name: &'static str,
        /// What it takes.
        takes: Takes,
    },
}

/// What a setting takes.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum Takes {
    /// Text in quotation marks.
    Text,
    /// `true` or `false`.
    YesOrNo,
    /// One of these words.
    OneOf(&'static str),
    /// Letters and where they are moved to.
    Letters,
    /// Letters, of which one is none or is given twice.
    OtherLetters(LettersFault),
}

const LANGUAGES: &str = "\"en\", \"es\"";
const COLOURS: &str = "\"auto\", \"always\", \"never\"";

impl ReadSettings {
    /// Reads the settings; a file that is not there is no fault.
    pub(crate) fn of(folders: &Folders) -> ReadSettings {
        match text_of(&folders.settings_file()) {
            Ok(text) => ReadSettings::of_text(&text),
            Err(wrong) => ReadSettings { faults: vec![SettingsFault { line: None, wrong }], ..ReadSettings::default() },
        }
    }

    /// Whether the nursery that is set may be among what could not be read.
    pub(crate) fn hides_the_nursery(&self) -> bool {
        self.settings.nursery.is_none()
            && self.faults.iter().any(|fault| match &fault.wrong {
                WrongSetting::Unreadable(_)
                | WrongSetting::NoFile
                | WrongSetting::TooLong
                | WrongSetting::NoText
                | WrongSetting::NoSetting => true,
                WrongSetting::Unknown(_) => false,
                WrongSetting::Value { name, .. } | WrongSetting::Twice { name, .. } => *name == "nursery",
            })
    }

    fn of_text(text: &str) -> ReadSettings {
        let mut read = ReadSettings::default();
        let mut lines = BTreeMap::new();
        for (number, line) in (1..).zip(text.lines()) {
            // Every setting is one line, so that a wrong one spoils no other.
            match toml::from_str::<Table>(line) {
                Ok(table) => {
                    for (name, value) in &table {
                        let first = *lines.entry(name.clone()).or_insert(number);
                        read.take((number, first), name, value);
                    }
                }
                Err(_) => read.faults.push(SettingsFault { line: Some(number), wrong: WrongSetting::NoSetting }),
            }
        }
        read
    }

    /// Of a setting that is given twice the first line holds; which nursery is meant then is not known.
    fn take(&mut self, (line, first): (usize, usize), name: &str, value: &Value) {
        let wrong = match NAMES.into_iter().find(|known| *known == name) {
            None => Some(WrongSetting::Unknown(name.to_string())),
            Some(name) if first < line => {
                if name == "nursery" {
                    self.settings.nursery = None;
                }
                Some(WrongSetting::Twice { name, first })
            }
            Some(name) => self.settings.set(name, value).err().map(|takes| WrongSetting::Value { name, takes }),
        };
        self.faults.extend(wrong.map(|wrong| SettingsFault { line: Some(line), wrong }));
    }
}

impl Settings {
    /// Sets one of [`NAMES`]; the error is what it takes.
    fn set(&mut self, name: &str, value: &Value) -> Result<(), Takes> {
        let text = || value.as_str().filter(|text| !text.trim().is_empty()).ok_or(Takes::Text);
        let yes_or_no = || value.as_bool().ok_or(Takes::YesOrNo);
        match name {
            "nursery" => self.nursery = Some(text()?.into()),
            "who" => self.who = Some(text()?.to_string()),
            "lang" => {
                let known = value.as_str().filter(|lang| ["en", "es"].contains(lang));
                self.lang = Some(known.ok_or(Takes::OneOf(LANGUAGES))?.to_string());
            }
            "handbook" => self.handbook = yes_or_no()?,
            "color" => {
                let known = value.as_str().and_then(colour);
                self.color = known.ok_or(Takes::OneOf(COLOURS))?;
            }
            "ascii" => self.ascii = yes_or_no()?,
            _ => self.keys = letters(value)?,
        }
        Ok(())
    }
}

/// Letters as they are moved: `{ c = "v" }`.
fn letters(value: &Value) -> Result<Letters, Takes> {
    let table = value.as_table().filter(|table| !table.is_empty()).ok_or(Takes::Letters)?;
    let pair = |(work, onto): (&'_ String, &'_ Value)| onto.as_str().map(|onto| (work.clone(), onto.to_string()));
    let pairs: Vec<(String, String)> = table.iter().map(pair).collect::<Option<_>>().ok_or(Takes::Letters)?;
    Letters::moved(pairs.iter().map(|(work, onto)| (work.as_str(), onto.as_str()))).map_err(Takes::OtherLetters)
}

/// When colour is used, as it is written: always, never, or as the screen says.
pub(crate) fn colour(word: &str) -> Option<Option<bool>> {
    match word {
        "always" => Some(Some(true)),
        "never" => Some(Some(false)),
        "auto" => Some(None),
        _ => None,
    }
}

/// The text of the settings file; a pipe or a device is not waited for.
fn text_of(path: &Path) -> Result<String, WrongSetting> {
    let unreadable = |fault: std::io::Error| WrongSetting::Unreadable(fault.kind());
    match std::fs::metadata(path) {
        Err(fault) if fault.kind() == std::io::ErrorKind::NotFound => return Ok(String::new()),
        Err(fault) => return Err(unreadable(fault)),
        Ok(about) if !about.is_file() => return Err(WrongSetting::NoFile),
        Ok(about) if about.len() > LONGEST => return Err(WrongSetting::TooLong),
        Ok(_) => {}
    }
    let mut bytes = Vec::new();
    let file = std::fs::File::open(path).map_err(unreadable)?;
    file.take(LONGEST + 1).read_to_end(&mut bytes).map_err(unreadable)?;
    String::from_utf8(bytes).map_err(|_| WrongSetting::NoText)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn no_settings_make_it_panic(any in any::<String>(), near in "((nursery|who|lang|color|ascii|keys) ?= ?[\"'a-z0-9\\[{=} ]{0,12}\n?){0,6}") {
            for text in [&any, &near] {
                let lines = text.lines().count();
                let read = ReadSettings::of_text(text);
                prop_assert!(read.faults.iter().all(|fault| fault.line.is_some_and(|line| line <= lines)));
            }
        }
    }

    #[test]
    fn a_wrong_line_is_named_and_the_others_hold() {
        let read = ReadSettings::of_text(
            "# ours\nwho = \"mara\"\nlang = \"xx\"\nwhoo = 1\nnursery = \"x\nhandbook = true\ncolor = \"never\"\n",
        );
        assert_eq!((read.settings.who.as_deref(), read.settings.handbook), (Some("mara"), true));
        assert_eq!(read.settings.color, Some(false));
        let lines: Vec<Option<usize>> = read.faults.iter().map(|fault| fault.line).collect();
        assert_eq!(lines, [Some(3), Some(4), Some(5)]);
        let takes = Takes::OneOf(LANGUAGES);
        assert_eq!(read.faults[0].wrong, WrongSetting::Value { name: "lang", takes });
        assert_eq!(read.faults[1].wrong, WrongSetting::Unknown("whoo".into()));
        assert_eq!(read.faults[2].wrong, WrongSetting::NoSetting);
        assert!(read.hides_the_nursery());
        assert!(!ReadSettings::of_text("lang = 1\n").hides_the_nursery());
        assert!(!ReadSettings::of_text("=\nnursery = \"x\"\n").hides_the_nursery());
    }

    #[test]
    fn a_setting_given_twice_is_named_and_the_first_line_holds_but_no_nursery_is_taken_for_the_one() {
        let read = ReadSettings::of_text("who = \"mara\"\n\nwho = \"tomas\"\nkeys.c = \"v\"\nkeys.l = \"z\"\n");
        assert_eq!(read.settings.who.as_deref(), Some("mara"));
        let twice = |line, name, first| SettingsFault { line: Some(line), wrong: WrongSetting::Twice { name, first } };
        assert_eq!(read.faults, [twice(3, "who", 1), twice(5, "keys", 4)]);
        assert!(!read.hides_the_nursery());
        let read = ReadSettings::of_text("nursery = \"~/n\"\nnursery = \"/x\"\n");
        assert_eq!((read.settings.nursery.as_deref(), &read.faults[..]), (None, &[twice(2, "nursery", 1)][..]));
        assert!(read.hides_the_nursery());
    }

    #[test]
    fn every_setting_can_be_set() {
        let text = "nursery = \"n\"\nwho = \"w\"\nlang = \"es\"\nhandbook = true\ncolor = \"always\"\nascii = true\n\
            keys = { c = \"v\" }\n";
        let read = ReadSettings::of_text(text);
        assert_eq!(read.faults, []);
        let set = read.settings;
        assert_eq!((set.nursery, set.who), (Some("n".into()), Some("w".into())));
        assert_eq!((set.lang.as_deref(), set.color), (Some("es"), Some(true)));
        assert!(set.handbook && set.ascii);
        assert_eq!(set.keys.pressed_for('c'), 'v');
        assert_eq!(NAMES.map(|name| text.contains(&format!("{name} = "))), [true; NAMES.len()]);
    }

    #[test]
    fn letters_that_clash_or_are_none_are_named_with_their_line_and_the_others_stay() {
        let wrong = |value: &str| {
            let read = ReadSettings::of_text(&format!("who = \"mara\"\nkeys = {value}\n"));
            assert_eq!((read.settings.who.as_deref(), &read.settings.keys), (Some("mara"), &Letters::default()));
            read.faults.into_iter().map(|fault| (fault.line, fault.wrong)).collect::<Vec<_>>()
        };
        let told = |takes| vec![(Some(2), WrongSetting::Value { name: "keys", takes })];
        let no_letter = |letter: &str| told(Takes::OtherLetters(LettersFault::NoLetter(letter.to_string())));
        assert_eq!(wrong("{ c = \"v\", l = \"v\" }"), told(Takes::OtherLetters(LettersFault::Twice('v'))));
        assert_eq!(wrong("{ c = \"F1\" }"), no_letter("F1"));
        assert_eq!(wrong("{ Enter = \"v\" }"), no_letter("Enter"));
        for value in ["\"v\"", "{}", "{ c = 1 }", "true"] {
            assert_eq!(wrong(value), told(Takes::Letters), "{value}");
        }
    }

    #[cfg(unix)]
    #[test]
    fn what_is_no_file_is_told_and_not_waited_for() {
        let folder = tempfile::tempdir().unwrap();
        let folders = Folders { settings: folder.path().into(), data: folder.path().into(), home: None };
        let wrong = || ReadSettings::of(&folders).faults.into_iter().map(|fault| fault.wrong).collect::<Vec<_>>();
        assert_eq!(wrong(), []);
        let path = folders.settings_file();
        let pipe = std::process::Command::new("mkfifo").arg(&path).status().unwrap();
        assert!(pipe.success());
        assert_eq!(wrong(), [WrongSetting::NoFile]);
        std::fs::remove_file(&path).unwrap();
        std::os::unix::fs::symlink("/dev/zero", &path).unwrap();
        assert_eq!(wrong(), [WrongSetting::NoFile]);
        std::fs::remove_file(&path).unwrap();
        std::fs::write(&path, [0xff, 0xfe]).unwrap();
        assert_eq!(wrong(), [WrongSetting::NoText]);
        std::fs::write(&path, vec![b'#'; 70_000]).unwrap();
        assert_eq!(wrong(), [WrongSetting::TooLong]);
    }
}
