//! What commands say around their work.

use crate::desk::{Fault, Note, WhyReadOnly};
use crate::wording::Wording;
use crate::wording::messages::messages;

messages! {
    settings_unreadable(what: text);
    today_unreadable(written: text);
    begun_next();
    sample_look(file: text);
    write_lists_kinds();
    value_number();
    value_entry();
    clock_set_it();
    how_heading(things: count);
    refused_empty_tray(tray: text);
    check_damaged(faults: count);
    check_what_now();
    check_undamaged(entries: count);
    lost_one(device: text, first: text);
    lost_many(device: text, first: text, last: text, entries: count);
    rescued(entries: count, file: text);
    rescued_all();
    rescued_none_named();
    rescued_lost();
    rescued_nothing();
    rescued_apart(first: text, last: text, device: text);
    rescued_into_new(file: text);
    rescued_into_backup(file: text);
    damage_header();
    damage_foreign_log();
    damage_sqlite(what: text);
    damage_schema(name: text);
    damage_row(what: text);
    damage_entry(entry: text, what: text);
    damage_gap(device: text, first: text, last: text);
    damage_hash(entry: text);
    damage_previous(entry: text);
    check_unbalanced(name: text);
    check_replay_differs();
    check_kept_stories_differ();
    check_unknown_kinds(entries: count);
    check_versions(file: count, program: count, sqlite: text);
    note_read_only_file();
    note_read_only_folder();
    note_no_log();
    note_kept_before(file: text);
    note_new_device();
    note_device_of_this_run(why: text);
    note_device_not_noted(why: text);
    note_devices_put_aside(file: text);
}

impl Wording {
    /// One thing found wrong in a file.
    pub fn damage(&self, fault: &Fault) -> String {
        match fault {
            Fault::Header => self.damage_header(),
            Fault::ForeignLog => self.damage_foreign_log(),
            Fault::Sqlite(what) => self.damage_sqlite(what),
            Fault::Schema(name) => self.damage_schema(name),
            Fault::Row { entry: None, what } => self.damage_row(what),
            Fault::Row { entry: Some(entry), what } | Fault::Body { entry, what } => self.damage_entry(entry, what),
            Fault::Gap { device, from, to } => self.damage_gap(device, from, to),
            Fault::WrongHash(entry) => self.damage_hash(entry),
            Fault::WrongPrevious(entry) => self.damage_previous(entry),
        }
    }

    /// What a file has to tell on opening; nothing where the person asked for it.
    pub fn journal_note(&self, note: &Note) -> Option<String> {
        match note {
            Note::ReadOnly(WhyReadOnly::Asked) => None,
            Note::ReadOnly(WhyReadOnly::File) => Some(self.note_read_only_file()),
            Note::ReadOnly(WhyReadOnly::Folder) => Some(self.note_read_only_folder()),
            Note::NoWriteAheadLog { .. } => Some(self.note_no_log()),
            Note::KeptBefore(path) => Some(self.note_kept_before(path.display())),
            Note::NewDevice { .. } => Some(self.note_new_device()),
            Note::DeviceOfThisRun { why, .. } => Some(self.note_device_of_this_run(why)),
            Note::DeviceNotNoted { why } => Some(self.note_device_not_noted(why)),
            Note::DevicesPutAside(path) => Some(self.note_devices_put_aside(path.display())),
        }
    }
}
