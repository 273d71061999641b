//! What the file promises, each promise shown.

mod device;
mod file;
mod import;
mod kills;
mod proof;
mod writing;

use serde_json::{Value, json};
use std::path::PathBuf;
use tempfile::TempDir;

use super::{Journal, JournalError};
use crate::base::Moment;
use crate::nursery::envelope::{Draft, Sealed};

/// Takes out of a file what came after its first version.
const BACK_TO_THE_FIRST_VERSION: &str =
    "DROP TABLE subject; DROP TABLE about; DROP TABLE looked_up; DROP TABLE story; DROP TABLE checkpoint;
     DROP INDEX entry_happened; DROP INDEX entry_recorded; PRAGMA user_version = 1;";

/// A nursery in a folder of its own.
struct Place {
    folder: TempDir,
}

impl Place {
    fn new() -> Place {
        Place { folder: tempfile::tempdir().unwrap() }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join("nursery").join(name)
    }

    fn file(&self) -> PathBuf {
        self.path("book.outplant")
    }

    fn shelf(&self) -> PathBuf {
        self.folder.path().join("shelf")
    }

    /// The note of this nursery's devices.
    fn note(&self) -> PathBuf {
        let mut notes = std::fs::read_dir(self.shelf().join("devices")).unwrap().map(|file| file.unwrap().path());
        notes.find(|path| path.extension().is_some_and(|ending| ending == "json")).unwrap()
    }

    fn begin(&self) -> Journal {
        Journal::begin(&self.file(), &self.shelf()).unwrap()
    }

    fn open(&self) -> Journal {
        Journal::open(&self.file(), &self.shelf()).unwrap()
    }

    fn raw(&self) -> rusqlite::Connection {
        rusqlite::Connection::open(self.file()).unwrap()
    }
}

fn moment(text: &str) -> Moment {
    text.parse().unwrap()
}

fn evening() -> Moment {
    moment("2026-03-14T15:30:00Z")
}

fn draft(kind: &str, body: Value) -> Draft {
    let Value::Object(body) = body else { panic!("a body is an object") };
    Draft { happened: "2026-03-14".parse().unwrap(), clock: None, who: "mara".into(), kind: kind.into(), body }
}

fn counted(standing: u32) -> Draft {
    draft("counted", json!({"tray": "cof-031", "standing": standing}))
}

fn lines(journal: &Journal) -> Vec<String> {
    sealed(journal).iter().map(Sealed::line).collect()
}

fn sealed(journal: &Journal) -> Vec<Sealed> {
    let mut all = Vec::new();
    journal
        .sealed::<JournalError>(&mut |sealed| {
            all.push(sealed);
            Ok(())
        })
        .unwrap();
    all
}
