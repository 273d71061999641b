//! What is asked about entries that describe or settle: they can be meant, and rarely are.

use std::sync::Arc;

use super::story_of;
use crate::base::{BedName, Day, EntryId, TrayCode};
use crate::desk::{Desk, DeskError};
use crate::nursery::entry::types::Alarm;
use crate::nursery::entry::{
    BedSet, BookEntry, Entry, GroundEntry, Measured, MeasuredPlant, Prepared, Settled, SiteEntry, SpeciesSet,
    TrayEntry, What,
};
use crate::nursery::species::{Figure, Profile, Role, Stem};
use crate::reckon::bed::positions::grid;
use crate::reckon::field::rows_asked;
use crate::reckon::site::Site;
use crate::reckon::tray::size::mean;

/// A bed of more than this is asked about, ha: the beds of one nursery are looked at in a round on foot. Ours.
const LARGE_BED_HA: f64 = 10.0;
const SQUARE_METRES_PER_HA: f64 = 10_000.0;
/// A density so many times the usual one, or a part of it, is asked about. Ours: planting guides of a tree differ by less.
const FAR_DENSITY: f64 = 4.0;

/// A woody stem of which so many times the collar, mm, is more than the height, cm, is asked about. Ours: young trees are 4 to 10 cm tall for
/// each mm.
const THICKEST_CM_TO_MM: f64 = 2.0;
/// So many times the mean of the last sample, or a part of it, is asked about. Ours: a slip of the point is ten times.
const FAR_SAMPLES: f64 = 3.0;
/// A deeper hole is asked about, cm. Ours: nobody digs deeper for a tree.
const DEEPEST_HOLE_CM: f64 = 120.0;

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
    /// Stems thicker than those of their height.
    Thick {
        /// The tray.
        tray: TrayCode,
        /// Mean height, cm.
        height_cm: f64,
        /// Mean collar, mm.
        collar_mm: f64,
    },
    /// A sample far from the last one.
    FarSample {
        /// The tray.
        tray: TrayCode,
        /// The day of the last.
        on: Day,
        /// Whether of the height, cm; else of the collar, mm.
        is_height: bool,
        /// The mean then.
        then: f64,
        /// The mean now.
        now: f64,
    },
    /// A hole deeper than anybody digs.
    DeepHole {
        /// The bed.
        bed: BedName,
        /// Its depth, cm.
        depth_cm: f64,
    },
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
            What::Tray(TrayEntry::Measured(sample)) => self.odd_sample(sample, entry),
            What::Ground(GroundEntry::Prepared(work)) => deep_hole(work),
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

    /// A sample with a point that may have slipped: stems as thick as they can hardly be, or far from the last sample.
    fn odd_sample(&self, sample: &Measured, entry: &Entry) -> Option<Odd> {
        let story = story_of(self.fold(), entry, &sample.tray)?;
        let profile = story.species.as_ref().and_then(|key| self.fold().site().profile(key));
        let woody = profile.and_then(|profile| profile.stem.as_ref()).is_some_and(|stem| stem.value == Stem::Woody);
        let (height_cm, collar_mm) = (mean_height(&sample.plants)?, mean_collar(&sample.plants));
        if let Some(collar_mm) = collar_mm.filter(|mm| woody && *mm * THICKEST_CM_TO_MM > height_cm) {
            return Some(Odd::Thick { tray: story.code.clone(), height_cm, collar_mm });
        }
        let before = story.samples.iter().rfind(|look| look.day < entry.happened)?;
        let apart = |(then, now): &(f64, f64)| now / then >= FAR_SAMPLES || then / now >= FAR_SAMPLES;
        let heights = mean_height(&before.plants).map(|then| (then, height_cm)).filter(apart);
        let collars = || mean_collar(&before.plants).zip(collar_mm).filter(apart);
        let (is_height, (then, now)) =
            heights.map(|both| (true, both)).or_else(|| collars().map(|both| (false, both)))?;
        Some(Odd::FarSample { tray: story.code.clone(), on: before.day, is_height, then, now })
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
    ("hardening_days", |profile| profile.hardening_days.as_ref().is_none_or(|days| days.value >= FEW_HARDENING_DAYS)),
];

/// A hardening shorter than this hardens nothing, days. Ours: one step of light takes a week.
const FEW_HARDENING_DAYS: f64 = 7.0;

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

fn mean_of(values: impl Iterator<Item = f64>) -> Option<f64> {
    Some(mean(&values.collect::<Vec<_>>())).filter(|mean| *mean > 0.0)
}

fn mean_height(plants: &[MeasuredPlant]) -> Option<f64> {
    mean_of(plants.iter().map(|plant| plant.height_cm.0))
}

fn mean_collar(plants: &[MeasuredPlant]) -> Option<f64> {
    mean_of(plants.iter().filter_map(|plant| plant.collar_mm.map(|mm| mm.0)))
}

/// A hole that is deeper than a person digs.
fn deep_hole(work: &Prepared) -> Option<Odd> {
    let depth_cm = work.depth_cm.map(|depth| depth.0).filter(|cm| *cm > DEEPEST_HOLE_CM)?;
    Some(Odd::DeepHole { bed: work.bed.clone(), depth_cm })
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
