//! What commands say around their work.

use crate::base::columns::first_words;
use crate::desk::{Fault, Gone, JournalError, Note, WhyReadOnly};
use crate::wording::Wording;

/// The folder of the notes of devices beside the settings, where a fault names no file of its own.
const NOTES: &str = "devices";

/// Most letters of what SQLite says of a damage that are quoted (ours).
const LONGEST_QUOTE: usize = 160;

impl Wording {
    /// One thing found wrong in a file.
    pub fn damage(&self, fault: &Fault) -> String {
        match fault {
            Fault::Header => self.damage_header(),
            Fault::ForeignLog => self.damage_foreign_log(),
            Fault::Sqlite(what) => self.damage_sqlite(first_words(what, LONGEST_QUOTE)),
            Fault::Schema(name) => self.damage_schema(name),
            Fault::Row { entry: None, what } => self.damage_row(what),
            Fault::Row { entry: Some(entry), what } | Fault::Body { entry, what } => self.damage_entry(entry, what),
            Fault::Gap { device, from, to } => self.damage_gap(device, from, to),
            Fault::WrongHash(entry) => self.damage_hash(entry),
            Fault::WrongPrevious(entry) => self.damage_previous(entry),
        }
    }

    /// What a file has to tell on opening; nothing where the person asked for it.
    pub(crate) fn journal_note(&self, note: &Note) -> Option<String> {
        match note {
            Note::ReadOnly(WhyReadOnly::Asked) => None,
            Note::ReadOnly(WhyReadOnly::File) => Some(self.note_read_only_file()),
            Note::ReadOnly(WhyReadOnly::Folder) => Some(self.note_read_only_folder()),
            Note::ReadOnly(WhyReadOnly::NoRoom) => Some(self.note_no_room()),
            Note::NoWriteAheadLog { .. } => Some(self.note_no_log()),
            Note::KeptBefore(path) => Some(self.note_kept_before(path.display())),
            Note::NewDevice { .. } => Some(self.note_new_device()),
            Note::DeviceOfThisRun { why, .. } => Some(self.note_device_of_this_run(self.why_no_notes(why))),
            Note::DeviceNotNoted { why } => Some(self.note_device_not_noted(self.why_no_notes(why))),
            Note::Gone(gone) => Some(self.entries_gone(&[gone])),
            Note::DevicesPutAside(path) => Some(self.note_devices_put_aside(path.display())),
        }
    }

    /// The notes in their order; what is gone of several devices is one sentence.
    pub(crate) fn journal_notes(&self, notes: &[Note]) -> Vec<String> {
        let gone: Vec<&Gone> = notes.iter().filter_map(as_gone).collect();
        let first = notes.iter().position(|note| as_gone(note).is_some());
        let said = notes.iter().enumerate().filter_map(|(at, note)| match as_gone(note) {
            None => self.journal_note(note),
            Some(_) => (Some(at) == first).then(|| self.entries_gone(&gone)),
        });
        said.collect()
    }

    fn entries_gone(&self, gone: &[&Gone]) -> String {
        /// Of more devices the rest are only counted (ours).
        const MOST_NAMED: usize = 3;
        let named = gone.iter().take(MOST_NAMED).map(|gone| self.gone_of_device(&gone.device, gone.from, gone.to));
        let more = gone.len().saturating_sub(MOST_NAMED);
        let more = (more > 0).then(|| self.gone_of_more(more as i64));
        let which: Vec<String> = named.chain(more).collect();
        let entries: u64 = gone.iter().map(|gone| gone.count()).sum();
        self.note_gone(entries as i64, which.join(", "))
    }

    /// Why the notes beside the settings are not kept: only the reason, for the book itself is written.
    fn why_no_notes(&self, why: &JournalError) -> String {
        match why {
            JournalError::Full => self.system_no_room(),
            JournalError::ReadOnly => self.system_not_allowed(),
            JournalError::Io { kind, text, .. } => self.system_said(*kind, text),
            other => self.journal_error(other, NOTES),
        }
    }
}

fn as_gone(note: &Note) -> Option<&Gone> {
    match note {
        Note::Gone(gone) => Some(gone),
        Note::ReadOnly(_)
        | Note::NoWriteAheadLog { .. }
        | Note::KeptBefore(_)
        | Note::NewDevice { .. }
        | Note::DeviceOfThisRun { .. }
        | Note::DeviceNotNoted { .. }
        | Note::DevicesPutAside(_) => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_gone_of_ten_copies_is_one_sentence_that_counts_all_of_it() {
        let of =
            |device: &str| Note::Gone(Gone { device: crate::base::DeviceId::new(device).unwrap(), from: 3, to: 5 });
        let devices = ["a2b3c4d5", "b2b3c4d5", "c2b3c4d5", "d2b3c4d5", "e2b3c4d5"];
        let notes: Vec<Note> = devices.into_iter().map(of).collect();
        for lang in Lang::ALL {
            let said = Wording::new(lang).journal_notes(&notes);
            assert_eq!(said.len(), 1, "{said:?}");
            assert!(
                said[0].contains("15 ") && said[0].contains("a2b3c4d5:3") && !said[0].contains("d2b3c4d5"),
                "{said:?}"
            );
        }
    }
    use crate::wording::Lang;

    #[test]
    fn what_is_said_of_a_full_folder_of_settings_never_says_that_nothing_was_written() {
        for lang in Lang::ALL {
            let wording = Wording::new(lang);
            for why in [JournalError::Full, JournalError::ReadOnly] {
                let device = crate::base::DeviceId::new("a2b3c4d5").unwrap();
                let notes =
                    [Note::DeviceOfThisRun { device, why: why.clone() }, Note::DeviceNotNoted { why: why.clone() }];
                for note in &notes {
                    let said = wording.journal_note(note).unwrap();
                    assert!(!said.contains(&wording.nothing_written()) && !said.contains("no se anotó"), "{said}");
                    assert!(!said.contains(NOTES), "{said}");
                }
            }
        }
    }
}
