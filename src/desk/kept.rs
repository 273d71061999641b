//! Texts kept beside the book that are no entries: a form half filled, how far the round has come, what is on the loading
//! list. Each is a small file of this copy, written whole or not at all; losing one loses no entry.

use std::path::{Path, PathBuf};

use crate::share::files::{Existing, write_whole};

/// The longest text taken back, bytes; a longer file is not ours.
const LONGEST: u64 = 1 << 20;

/// The shelf of kept texts of one book.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct KeptTexts {
    folder: PathBuf,
}

impl KeptTexts {
    /// The texts of a book, by its file's identity, in the folder of the settings.
    pub fn of(shelf: &Path, file_id: &str) -> KeptTexts {
        let name: String = file_id.chars().filter(char::is_ascii_alphanumeric).collect();
        KeptTexts { folder: shelf.join("kept").join(name) }
    }

    /// Keeps a text under a name of small letters; an empty text is forgotten.
    pub fn keep(&self, name: &str, text: &str) -> std::io::Result<()> {
        let path = self.path(name);
        if text.is_empty() {
            return match std::fs::remove_file(&path) {
                Err(fault) if fault.kind() != std::io::ErrorKind::NotFound => Err(fault),
                Ok(()) | Err(_) => Ok(()),
            };
        }
        std::fs::create_dir_all(&self.folder)?;
        write_whole(&path, Existing::Replace, |file| std::io::Write::write_all(file, text.as_bytes()))
            .map_err(|fault| std::io::Error::other(format!("{fault:?}")))
    }

    /// The text kept under a name; none where there is none or it cannot be read.
    pub fn kept(&self, name: &str) -> Option<String> {
        let path = self.path(name);
        let about = std::fs::metadata(&path).ok()?;
        if about.len() > LONGEST { None } else { std::fs::read_to_string(path).ok() }
    }

    fn path(&self, name: &str) -> PathBuf {
        let name: String = name.chars().filter(|letter| letter.is_ascii_alphanumeric() || *letter == '_').collect();
        self.folder.join(format!("{name}.txt"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_kept_is_there_again_and_what_is_emptied_is_gone() {
        let shelf = tempfile::tempdir().unwrap();
        let texts = KeptTexts::of(shelf.path(), "ab-12");
        assert_eq!(texts.kept("walk"), None);
        texts.keep("walk", "at cof-031").unwrap();
        texts.keep("walk", "at cof-032").unwrap();
        assert_eq!(KeptTexts::of(shelf.path(), "ab-12").kept("walk").as_deref(), Some("at cof-032"));
        assert_eq!(KeptTexts::of(shelf.path(), "cd-34").kept("walk"), None);
        texts.keep("walk", "").unwrap();
        texts.keep("walk", "").unwrap();
        assert_eq!(texts.kept("walk"), None);
    }
}
