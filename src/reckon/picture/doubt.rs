//! What cannot be believed as written: kept, named, and shown in every view until settled.

use serde::{Deserialize, Serialize};

use crate::base::{BedName, Day, EntryId, LotCode, SpeciesKey, TrayCode};
use crate::nursery::species::ProfileFault;
use crate::reckon::impossible::Impossible;

/// What is doubtful.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug, Serialize, Deserialize)]
pub enum DoubtKind {
    /// More left a tray than stood there.
    MoreOutThanStood {
        /// The tray.
        tray: TrayCode,
        /// Out by the entry.
        out: u32,
        /// Stood by the books.
        stood: u32,
    },
    /// More seed left a lot than it held.
    MoreSeedThanHeld {
        /// The lot.
        lot: LotCode,
        /// Out by the entry.
        out: u32,
        /// Held by the books.
        held: u32,
    },
    /// More plants died in a bed than lived there.
    MoreDeadThanLived {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// Dead by the entry.
        dead: u32,
        /// Lived by the books.
        lived: u32,
    },
    /// More in a bed, alive and dead, than was ever planted.
    MoreAliveThanPlanted {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// Alive by the entry.
        alive: u32,
        /// Dead by the entry.
        dead: u32,
        /// Planted by the books.
        planted: u32,
    },
    /// More of a species alive in a bed than lived there by the last count and what was planted since: the dead do not come back.
    AliveAgain {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// Alive by the entry.
        alive: u32,
        /// Lived by the books.
        lived: u32,
    },
    /// More nurse plants cut or lifted than stood.
    MoreCutThanStood {
        /// The bed.
        bed: BedName,
        /// The nurse plant.
        nurse: SpeciesKey,
        /// Cut by the entry; none where it was a share of none.
        cut: Option<u32>,
        /// Stood by the books.
        stood: u32,
    },
    /// More seedlings than the seeds can have given.
    MoreThanSeed {
        /// The tray.
        tray: TrayCode,
        /// Counted.
        counted: u32,
        /// The most the seeds can have given.
        most: u32,
    },
    /// A rise in a tray without seed that is too large for a miscount.
    RiseWithoutSeed {
        /// The tray.
        tray: TrayCode,
        /// Stood by the books.
        books: u32,
        /// Counted.
        counted: u32,
    },
    /// An entry about a tray nobody made.
    UnknownTray(TrayCode),
    /// An entry about a lot nobody received.
    UnknownLot(LotCode),
    /// An entry about a bed nobody laid out.
    UnknownBed(BedName),
    /// An entry about a species nobody knows.
    UnknownSpecies(SpeciesKey),
    /// One code given to two trays.
    TwiceMade(TrayCode),
    /// One lot received twice.
    TwiceReceived(LotCode),
    /// Two devices touched a tray on one day and the other order would give other numbers.
    OrderMatters(TrayCode),
    /// A tray went out into a bed whose plan does not name its species.
    NotInPlan {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
    },
    /// Living plants that stand off the bed's grid since it was laid out again.
    OffTheGrid {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// How many more than the grid has room for.
        plants: u32,
    },
    /// More went out into a bed than it had positions for.
    MoreOutThanPositions {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// Out by the entry.
        out: u32,
        /// Positions that were open by the books.
        open: u32,
        /// All positions that the plan has for the species.
        positions: u32,
    },
    /// A row or place that the bed does not have.
    NoSuchPosition {
        /// The bed.
        bed: BedName,
        /// As it was written.
        written: String,
        /// Rows of the bed.
        rows: u32,
        /// Places in its longest row.
        places: u32,
    },
    /// A sample of more plants than stood in the tray.
    SampleLarger {
        /// The tray.
        tray: TrayCode,
        /// Plants measured.
        sample: u32,
        /// Stood by the books.
        stood: u32,
    },
    /// Work on more plants than stood in the tray: roots cut, plants grafted.
    WorkedOnMore {
        /// The tray.
        tray: TrayCode,
        /// Plants worked on.
        worked: u32,
        /// Stood by the books.
        stood: u32,
    },
    /// Seed or plants of one species into a tray of another.
    TwoSpecies {
        /// The tray.
        tray: TrayCode,
        /// What it holds.
        species: SpeciesKey,
        /// What came in.
        other: SpeciesKey,
    },
    /// An entry that says something against itself.
    CannotBe(Impossible),
    /// A species profile entry that could not be read.
    BadProfile {
        /// The species.
        species: SpeciesKey,
        /// What is wrong.
        what: ProfileFault,
    },
    /// A count of part of a tray's cells that the books cannot be true beside.
    PartCountApart {
        /// The tray.
        tray: TrayCode,
        /// Plants seen.
        standing: u32,
        /// In so many cells.
        seen: u32,
        /// Of so many.
        cells: u32,
        /// Plants in the whole tray by the books.
        books: u32,
    },
    /// A look at a tray in which nothing stands and nothing is due.
    LookAtEmpty(TrayCode),
}

impl DoubtKind {
    /// How grave it is: whether an entry that raises it about itself cannot be true, so that the desk does not write it. What
    /// came in from elsewhere is kept and doubted all the same.
    pub(crate) fn cannot_be_true(&self) -> bool {
        match self {
            DoubtKind::MoreOutThanStood { .. }
            | DoubtKind::MoreSeedThanHeld { .. }
            | DoubtKind::MoreDeadThanLived { .. }
            | DoubtKind::MoreCutThanStood { .. }
            | DoubtKind::NoSuchPosition { .. }
            | DoubtKind::SampleLarger { .. }
            | DoubtKind::WorkedOnMore { .. }
            | DoubtKind::TwoSpecies { .. }
            | DoubtKind::CannotBe(_)
            | DoubtKind::TwiceMade(_)
            | DoubtKind::TwiceReceived(_)
            | DoubtKind::BadProfile { .. } => true,
            // Up to the whole bed can be refilled where nobody wrote down the dead.
            DoubtKind::MoreOutThanPositions { out, positions, .. } => out > positions,
            // Of what nobody wrote as planted a count is the first that is known.
            DoubtKind::MoreAliveThanPlanted { planted, .. } => *planted > 0,
            DoubtKind::MoreThanSeed { .. }
            | DoubtKind::AliveAgain { .. }
            | DoubtKind::RiseWithoutSeed { .. }
            | DoubtKind::UnknownTray(_)
            | DoubtKind::UnknownLot(_)
            | DoubtKind::UnknownBed(_)
            | DoubtKind::UnknownSpecies(_)
            | DoubtKind::OrderMatters(_)
            | DoubtKind::NotInPlan { .. }
            | DoubtKind::OffTheGrid { .. }
            | DoubtKind::PartCountApart { .. }
            | DoubtKind::LookAtEmpty(_) => false,
        }
    }
}

/// Something that cannot be believed as written.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug, Serialize, Deserialize)]
pub struct Doubt {
    /// The day of the entry that raised it.
    pub day: Day,
    /// What is doubtful.
    pub kind: DoubtKind,
    /// The entries it rests on.
    pub entries: Vec<EntryId>,
}
