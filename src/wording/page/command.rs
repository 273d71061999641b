//! What commands say around their work.

use crate::base::columns::first_words;
use crate::desk::{Fault, Note, WhyReadOnly};
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
            Note::DeviceOfThisRun { why, .. } => Some(self.note_device_of_this_run(self.journal_error(why, NOTES))),
            Note::DeviceNotNoted { why } => Some(self.note_device_not_noted(self.journal_error(why, NOTES))),
            Note::Gone(gone) => Some(self.note_gone(gone.count() as i64, &gone.device, gone.from, gone.to)),
            Note::DevicesPutAside(path) => Some(self.note_devices_put_aside(path.display())),
        }
    }
}
