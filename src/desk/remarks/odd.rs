//! What is asked about entries that describe or settle: they can be meant, and rarely are.

use std::sync::Arc;

use crate::base::{BedName, Day, EntryId};
use crate::desk::{Desk, DeskError};
use crate::nursery::entry::types::Alarm;
use crate::nursery::entry::{BedSet, BookEntry, Entry, Settled, SiteEntry, SpeciesSet, TrayEntry, What};
use crate::nursery::species::{Figure, Profile, Role, Stem};
use crate::reckon::bed::positions::grid;
use crate::reckon::field::rows_asked;
use crate::reckon::site::Site;

/// A bed of more than this is asked about, ha: the beds of one nursery are looked at in a round on foot. Ours.
const LARGE_BED_HA: f64 = 10.0;
const SQUARE_METRES_PER_HA: f64 = 10_000.0;
/// A density so many times the usual one, or a part of it, is asked about. Ours: planting guides of a tree differ by less.
const FAR_DENSITY: f64 = 4.0;

/// Something that is rarely meant.
#[derive(Clone, PartialEq, Debug)]
pub enum Odd {
    /// A bed larger than those of one nursery.
    LargeBed {
        /// The bed.
        bed: BedName,
        /// Its area, ha.
        area_ha: f64,
    },
    /// A plan that gives no position, or more than can be reckoned.
    NoPositions {
        /// The bed.
        bed: BedName,
        /// The species, as written.
        species: String,
    },
    /// Rows of a plan that cannot be read: it would have all.
    RowsUnread {
        /// As written.
        rows: String,
    },
    /// Far more or fewer plants on a hectare than the species usually has.
    Spacing {
        /// The bed.
        bed: BedName,
        /// The species.
        species: Arc<Profile>,
        /// Plants on a hectare by the spacing asked for.
        asked_per_ha: f64,
        /// The usual distance between rows and in the row, m.
        usual_m: (f64, f64),
    },
    /// A task let go until a day and for ever.
    UntilAndNever {
        /// The day.
        until: Day,
    },
    /// Nothing is missing here, and that is what is to be settled.
    NothingGone,
    /// The clock is to be settled while an entry of a day to come still counts.
    StillToCome {
        /// The entry.
        entry: EntryId,
        /// Its day.
        day: Day,
    },
    /// It is said of an entry that is not here and is not missed.
    OfNoEntry {
        /// As written.
        of: String,
    },
    /// What says where the nursery lies no longer counts by it.
    NoPlace,
    /// Figures that hold young plants back no longer do by it: they may go out where they could not.
    AskedNoMore {
        /// The species, as it was.
        species: Arc<Profile>,
        /// The names of the figures.
        figures: Vec<&'static str>,
    },
}

impl Desk {
    /// What is rarely meant in an entry.
    pub(super) fn odd(&self, entry: &Entry) -> Result<Option<Odd>, DeskError> {
        Ok(match &entry.what {
            What::Site(SiteEntry::SpeciesSet(set)) => asked_no_more(set, self.fold().site()),
            What::Site(SiteEntry::BedSet(bed)) => odd_bed(bed).or_else(|| odd_spacing(bed, self.fold().site())),
            What::Tray(TrayEntry::LetGo(gone)) => {
                gone.until.filter(|_| gone.never == Some(true)).map(|until| Odd::UntilAndNever { until })
            }
            What::Book(BookEntry::Settled(settled)) => self.settles_nothing(settled)?,
            What::Book(BookEntry::Withdrawn(back)) => self.takes_away_its_place(&back.entries).then_some(Odd::NoPlace),
            _ => None,
        })
    }

    fn settles_nothing(&self, settled: &Settled) -> Result<Option<Odd>, DeskError> {
        if let Some(of) = &settled.of
            && !self.is_of_an_entry(&of.0)?
        {
            return Ok(Some(Odd::OfNoEntry { of: of.0.to_string() }));
        }
        match settled.what {
            Alarm::Restored => Ok((self.gone() == 0).then_some(Odd::NothingGone)),
            Alarm::Clock => {
                let ahead = self.newest_of_days()?.filter(|(_, day)| *day > self.now().today);
                Ok(ahead.map(|(entry, day)| Odd::StillToCome { entry, day }))
            }
        }
    }

    /// Whether a text names an entry of this book or one that is missed here, in any of its words.
    fn is_of_an_entry(&self, of: &str) -> Result<bool, DeskError> {
        for word in of.split([' ', ',', ';']) {
            if let Ok(id) = word.parse::<EntryId>() {
                let missed = self.gone() > 0 && self.journal().own_devices().contains(&id.device);
                return Ok(missed || !self.named([&id])?.is_empty());
            }
        }
        Ok(false)
    }

    /// Whether no entry is left that says where the nursery lies.
    pub(crate) fn takes_away_its_place(&self, entries: &[EntryId]) -> bool {
        let mut told = self.fold().site().nursery.each().peekable();
        told.peek().is_some() && told.all(|(_, entry, _)| entries.contains(entry))
    }
}

/// A figure of a profile, and whether it asks something of young plants before they go out.
type Asks = (&'static str, fn(&Profile) -> bool);

/// The figures by which young plants wait. That a species is no nurse plant is one of them.
const ASKS: [Asks; 8] = [
    ("role", |profile| profile.role != Role::Nurse),
    ("plantable_least_days", |profile| some(profile.plantable_least_days.as_ref())),
    ("plantable_most_days", |profile| some(profile.plantable_most_days.as_ref())),
    ("height_least_cm", |profile| some(profile.height_least_cm.as_ref())),
    ("collar_floor_mm", |profile| some(profile.collar_floor_mm.as_ref())),
    ("leaves_least", |profile| some(profile.leaves_least.as_ref())),
    ("stem", |profile| profile.stem.as_ref().is_some_and(|stem| stem.value == Stem::Woody)),
    ("hardening_days", |profile| profile.hardening_days.as_ref().is_none_or(|days| days.value > 0.0)),
];

fn some(figure: Option<&Figure<f64>>) -> bool {
    figure.is_some_and(|figure| figure.value > 0.0)
}

/// Figures of a known species that ask nothing any more.
fn asked_no_more(set: &SpeciesSet, site: &Site) -> Option<Odd> {
    let species = site.species.get(&set.species)?.clone();
    let (_, then) = site.species.with_stored(&set.species, &set.profile.0, "this nursery").ok()?;
    let ended = |(_, asks): &&Asks| asks(&species) && !asks(&then);
    let figures: Vec<&str> = ASKS.iter().filter(ended).map(|(name, _)| *name).collect();
    (!figures.is_empty()).then_some(Odd::AskedNoMore { species, figures })
}

fn odd_bed(bed: &BedSet) -> Option<Odd> {
    let area_ha = bed.length_m.0 * bed.width_m.0 / SQUARE_METRES_PER_HA;
    if area_ha > LARGE_BED_HA {
        return Some(Odd::LargeBed { bed: bed.bed.clone(), area_ha });
    }
    let unread = bed.plan.iter().filter_map(|line| line.rows.as_ref()).find(|rows| rows_asked(&rows.0).is_none());
    if let Some(rows) = unread {
        return Some(Odd::RowsUnread { rows: rows.0.to_string() });
    }
    let empty = bed.plan.iter().find(|line| grid(bed, line).is_empty());
    empty.map(|line| Odd::NoPositions { bed: bed.bed.clone(), species: line.species.to_string() })
}

/// A spacing by which many more, or many fewer, stand on a hectare than usually do.
fn odd_spacing(bed: &BedSet, site: &Site) -> Option<Odd> {
    bed.plan.iter().find_map(|line| {
        let profile = site.profile(&site.species_key(&line.species)?)?;
        let (row_m, in_row_m) = (profile.row_m.as_ref()?.value, profile.in_row_m.as_ref()?.value);
        let (asked, usual) = (1.0 / (line.row_m.0 * line.in_row_m.0), 1.0 / (row_m * in_row_m));
        let is_far = asked > usual * FAR_DENSITY || asked < usual / FAR_DENSITY;
        is_far.then(|| Odd::Spacing {
            bed: bed.bed.clone(),
            species: profile.clone(),
            asked_per_ha: asked * SQUARE_METRES_PER_HA,
            usual_m: (row_m, in_row_m),
        })
    })
}
