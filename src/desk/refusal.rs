//! Why the desk does not write something. A person can mend it; nothing was written. Sentences are made in `wording`.

use std::sync::Arc;

use crate::base::{BedName, Day, EntryId, LotCode, SpeciesKey, TrayCode};
use crate::nursery::entry::Entry;
use crate::nursery::entry::fault::EntryFault;
use crate::nursery::species::ProfileFault;
use crate::reckon::picture::Doubt;

/// Why something is not written.
#[derive(Clone, PartialEq, Debug)]
pub enum Refusal {
    /// The entry cannot be read.
    Entry(EntryFault),
    /// No tray of this code; the nearest.
    UnknownTray(TrayCode, Vec<String>),
    /// No lot of this code; the nearest.
    UnknownLot(LotCode, Vec<String>),
    /// No bed of this name; the nearest.
    UnknownBed(BedName, Vec<String>),
    /// No species of this name; the nearest.
    UnknownSpecies(SpeciesKey, Vec<String>),
    /// Several plants are called so; the one most people mean leads.
    SeveralPlants {
        /// What was written.
        written: String,
        /// The plants.
        plants: Vec<SpeciesKey>,
    },
    /// No such task of the round; the nearest.
    UnknownTask {
        /// What was written.
        task: String,
        /// The nearest that are due.
        nearest: Vec<String>,
    },
    /// No such entry.
    UnknownEntry(EntryId),
    /// A new tray under a code in use.
    TrayInUse(TrayCode),
    /// A new tray called as a bed is, or a new bed called as a tray is, capitals and accents aside.
    NameOfTwo {
        /// The new name.
        name: String,
        /// What bears it already, as it is written there.
        other: String,
        /// Whether the new one is a tray.
        is_tray: bool,
    },
    /// A new name in which letters of two alphabets look alike.
    MixedAlphabets(String),
    /// A new lot under a code in use.
    LotInUse(LotCode),
    /// What the entry would make doubtful cannot be true.
    Book(Doubt),
    /// Something of a tray from before it came into the book with what stood in it.
    BeforeTheBook {
        /// The tray.
        tray: TrayCode,
        /// The day it came into the book.
        since: Day,
    },
    /// Another code for a tray before the last day of what is written of it.
    CodeBefore {
        /// The code.
        was: TrayCode,
        /// That day.
        until: Day,
    },
    /// A code that was given up for another one.
    TrayRenamed {
        /// The old code.
        was: TrayCode,
        /// The new one.
        is: TrayCode,
        /// Since when.
        since: Day,
    },
    /// A day that has not come yet.
    FutureDay {
        /// The day.
        day: Day,
        /// Today.
        today: Day,
    },
    /// A percentage below one that is more likely a share.
    ShareForPercent(f64),
    /// The dots of an example stand where a word was to be written.
    Dots,
    /// A figure of a species profile that makes no sense.
    Profile(SpeciesKey, ProfileFault),
    /// Nothing of this device is left to take back.
    NothingToUndo,
    /// What is left to take back is what the nursery was begun with; it must be named.
    OnlyTheBeginning(Arc<Entry>),
    /// An entry that has been taken back already, and the withdrawal that did it.
    AlreadyWithdrawn(EntryId, Arc<Entry>),
    /// An entry that came in with others by one command: all of them, or this one alone, must be said.
    OneOfMany {
        /// The entry named.
        entry: EntryId,
        /// Everything of its command that still counts.
        all: Vec<Arc<Entry>>,
    },
    /// Taking entries back would leave later ones without ground.
    LeavesOthersWithoutGround {
        /// What would be taken back.
        entries: Vec<Arc<Entry>>,
        /// The doubts it would raise.
        doubts: Vec<Doubt>,
        /// Later entries that rest on them.
        rest_on_them: Vec<Arc<Entry>>,
    },
}

/// Whether a percentage of seed or of surety is more likely a share: below one, and not nothing.
pub(crate) fn is_a_share(percent: f64) -> bool {
    percent > 0.0 && percent < 1.0
}

/// A refusal and the line of a batch it stands in, from 1.
#[derive(Clone, PartialEq, Debug)]
pub struct Refused {
    /// The line, or 0 where there is only one.
    pub line: usize,
    /// Why.
    pub why: Refusal,
}

/// Why something was not done.
#[derive(Debug)]
pub enum DeskError {
    /// A person can mend it; nothing was written. Every faulty line is listed.
    Refused(Vec<Refused>),
    /// The file.
    Journal(crate::journal::JournalError),
}

impl From<crate::journal::JournalError> for DeskError {
    fn from(fault: crate::journal::JournalError) -> Self {
        DeskError::Journal(fault)
    }
}

impl From<Refusal> for DeskError {
    fn from(why: Refusal) -> Self {
        DeskError::Refused(vec![Refused { line: 0, why }])
    }
}
