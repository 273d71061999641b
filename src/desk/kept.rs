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
    /// The texts of a book, by its file's identity and where it lies, in the folder of the settings: a copy of a file has
    /// the same identity, and its list is another one.
    pub fn of(shelf: &Path, file_id: &str, file: &Path) -> KeptTexts {
        let name: String = file_id.chars().filter(char::is_ascii_alphanumeric).collect();
        let file = file.canonicalize().unwrap_or_else(|_| file.to_path_buf());
        let place = mark_of(file.to_string_lossy().as_bytes());
        KeptTexts { folder: shelf.join("kept").join(format!("{name}-{place:016x}")) }
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

/// A short mark of a text (Fowler, Noll and Vo, FNV-1a of 64 bits): the same in every version of the program.
fn mark_of(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |mark, byte| (mark ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_kept_is_there_again_and_what_is_emptied_is_gone() {
        let shelf = tempfile::tempdir().unwrap();
        let texts = KeptTexts::of(shelf.path(), "ab-12", Path::new("a.outplant"));
        assert_eq!(texts.kept("walk"), None);
        texts.keep("walk", "at cof-031").unwrap();
        texts.keep("walk", "at cof-032").unwrap();
        assert_eq!(
            KeptTexts::of(shelf.path(), "ab-12", Path::new("a.outplant")).kept("walk").as_deref(),
            Some("at cof-032")
        );
        assert_eq!(KeptTexts::of(shelf.path(), "ab-12", Path::new("copy.outplant")).kept("walk"), None);
        assert_eq!(KeptTexts::of(shelf.path(), "cd-34", Path::new("a.outplant")).kept("walk"), None);
        texts.keep("walk", "").unwrap();
        texts.keep("walk", "").unwrap();
        assert_eq!(texts.kept("walk"), None);
    }
}
