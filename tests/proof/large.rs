//! A book large enough that its stories are kept and its entries looked up.

use std::sync::OnceLock;

use outplant::journal::Journal;
use rusqlite::Connection;

use crate::support::grown::write_grown;
use crate::support::program::Home;

/// Entries: above those of books that are read whole, and more than the lookup takes in at a time.
pub const ENTRIES: usize = 10_400;
const SEED: u64 = 20_261_126;
/// A day behind the last of the book.
const TODAY: &str = "2026-12-15";

/// What is taken out of a book before it is opened, and made again by that.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Large {
    WithoutStories,
    WithoutLookup,
}

/// The file, written once.
fn bytes() -> &'static [u8] {
    static BYTES: OnceLock<Vec<u8>> = OnceLock::new();
    BYTES.get_or_init(|| {
        let home = Home { folder: super::quick_folder(), today: TODAY.into() };
        write_grown(&home.file("nursery.outplant"), &home.file("shelf"), ENTRIES, SEED).unwrap();
        home.done(&["ready"]);
        std::fs::read(home.file("nursery.outplant")).unwrap()
    })
}

/// A home with such a book.
pub fn home(large: Large) -> Home {
    let home = Home { folder: super::quick_folder(), today: TODAY.into() };
    home.with("nursery.outplant", bytes());
    large.again(&home);
    home
}

impl Large {
    /// Takes it out again.
    pub fn again(self, home: &Home) {
        let raw = Connection::open(home.file("nursery.outplant")).unwrap();
        let stories = "DELETE FROM checkpoint; DELETE FROM story;";
        let lookup = "DELETE FROM about; DELETE FROM subject; UPDATE looked_up SET arrival = 0;";
        let text = match self {
            Large::WithoutStories => stories.to_string(),
            Large::WithoutLookup => format!("{stories}{lookup}"),
        };
        raw.execute_batch(&format!("BEGIN; {text} COMMIT")).unwrap();
    }

    /// Whether it is not all made.
    pub fn is_half_done(self, home: &Home) -> bool {
        let journal = Journal::open_read_only(&home.file("nursery.outplant")).unwrap();
        match self {
            Large::WithoutStories => journal.checkpoint().unwrap().is_none(),
            Large::WithoutLookup => !journal.lookup_is_up().unwrap(),
        }
    }
}
