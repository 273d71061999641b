//! What is wrong in the settings file, in the person's language.

use crate::base::letters::LettersFault;
use crate::base::name_search;
use crate::settings::{Folders, NAMES, ReadSettings, Takes, WrongSetting};
use crate::wording::Wording;

/// A sentence for each fault.
pub(crate) fn sentences(read: &ReadSettings, folders: &Folders, wording: &Wording) -> Vec<String> {
    let file = folders.settings_file();
    let sentence = |line: Option<usize>, wrong: &WrongSetting| {
        let what = what(wrong, wording);
        match line {
            Some(line) => wording.settings_wrong_line(file.display(), line, what),
            None => wording.settings_wrong_file(file.display(), what),
        }
    };
    read.faults.iter().map(|fault| sentence(fault.line, &fault.wrong)).collect()
}

fn what(wrong: &WrongSetting, wording: &Wording) -> String {
    match wrong {
        WrongSetting::Unreadable(kind) => wording.system_said(*kind, &kind.to_string()),
        WrongSetting::NoFile => wording.settings_no_file(),
        WrongSetting::TooLong => wording.settings_too_long(),
        WrongSetting::NoText => wording.settings_no_text(),
        WrongSetting::NoSetting => wording.settings_no_setting(),
        WrongSetting::Unknown(name) => {
            wording.nearest_after(wording.settings_unknown(name), &name_search::nearest(name, NAMES.into_iter()))
        }
        WrongSetting::Twice { name, first } => wording.settings_twice(name, first),
        WrongSetting::Value { name, takes } => match takes {
            Takes::Text => wording.settings_takes_text(name),
            Takes::YesOrNo => wording.settings_takes_yes_or_no(name),
            Takes::OneOf(values) => wording.settings_takes_one_of(name, values),
            Takes::Letters => wording.settings_takes_letters(name),
            Takes::OtherLetters(LettersFault::NoLetter(written)) => wording.settings_no_letter(name, written),
            Takes::OtherLetters(LettersFault::Twice(letter)) => wording.settings_letter_twice(name, letter),
        },
    }
}
