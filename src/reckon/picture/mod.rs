//! What the book says on a day: the one value that every view shows.

pub mod answered;
pub mod criterion;
pub mod doubt;
mod only;
pub(crate) mod out_of;
mod pairs;
pub mod quantity;
pub mod question;
pub mod source;

pub(crate) use criterion::hands_from;
pub use criterion::{Basis, Criterion, Gap, HandsFrom, Measure, NoLight, PartSeen, SampleUnit};
pub use doubt::{Doubt, DoubtKind};
pub use only::Only;
pub(crate) use pairs::Misses;
pub use pairs::{HeldBy, Pair, PairPicture, Pairs, Questions, Side};
pub(in crate::reckon) use pairs::{MadeOf, TrayPaired, line_of};
pub use question::{Passage, Question, Rule};
pub use source::{RuleSource, Source};

use imbl::OrdMap;
use std::sync::Arc;

use super::bed::eaten::BrokenInto;
use super::site::Site;
use super::stock::{BedStory, LotStory, Places, TrayStory};
use super::tray::age_of_count::WeeklyLoss;
use super::tray::closed::Closed;
use super::tray::pest::beside::SickPlaces;
use super::tray::pest::kin::Kin;
use crate::base::{BedName, Day, EntryId, FieldName, LotCode, Moment, PlaceName, Range, SpeciesKey, TrayCode};
use crate::words;

words! {
    /// The stage of a tray; reckoned from entries, set by nobody.
    Stage {
        /// Seed in, nothing up.
        Sown: "sown";
        /// Coming up.
        Emerging: "emerging";
        /// Pricked out in the last three weeks.
        PrickedOut: "pricked_out";
        /// Growing on.
        GrowingOn: "growing_on";
        /// Being hardened.
        Hardening: "hardening";
        /// Ready to go out.
        Ready: "ready";
        /// Past what its container can hold.
        Overdue: "overdue";
        /// Empty.
        Spent: "spent";
    }
    /// The standing of a bed for a species.
    Standing {
        /// Nothing to shade it stands yet.
        Bare: "bare";
        /// Pioneers in; light, soil or ground work not there yet.
        Nursing: "nursing";
        /// The species can go in today.
        Open: "open";
        /// Everything but water.
        Dry: "dry";
        /// Everything, but its ground stands full of water.
        Soaked: "soaked";
        /// No position is open.
        Full: "full";
        /// Gaps worth filling.
        Refill: "refill";
    }
    /// Whether the day looked at is today, past or to come.
    Looking {
        /// Today.
        Today: "today";
        /// A past day.
        Back: "back";
        /// A coming day: nothing more is assumed done, only time passes.
        Ahead: "ahead";
    }
}

/// Three days: low, likely, high of the same date.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct DaySpread {
    /// The earliest.
    pub low: Day,
    /// The most likely.
    pub likely: Day,
    /// The latest.
    pub high: Day,
}

/// A tray on a day.
#[derive(Clone, PartialEq, Debug)]
pub struct TrayPicture {
    /// Its code.
    pub code: TrayCode,
    /// Its species, where known.
    pub species: Option<SpeciesKey>,
    /// The lots its seed came from.
    pub lots: Vec<LotCode>,
    /// Its stage.
    pub stage: Stage,
    /// Living seedlings by the books.
    pub standing: u32,
    /// What may really stand there: widened by the age of the last count.
    pub standing_range: Range,
    /// Seed still in the tray by the books.
    pub seed: u32,
    /// The day of the last whole count (or of arrival, where that was a count).
    pub counted_on: Option<Day>,
    /// Plants that could be planted.
    pub plantable: Range,
    /// How `plantable` is known: measured from a sample, or reckoned.
    pub plantable_basis: Basis,
    /// Where it stands.
    pub place: Option<PlaceName>,
    /// The oldest sowing day, where known.
    pub sown_on: Option<Day>,
    /// Days since the youngest sowing, where known.
    pub age_days: Option<i32>,
    /// Light of its last 10 days, a share of the open light.
    pub light_share: Option<f64>,
    /// The light of today and since when, where it changed in these days.
    pub light_changed: Option<(f64, Day)>,
    /// Whether the trays's plants can go out today.
    pub ready: bool,
    /// The first day it is, or was, ready, where that can be said.
    pub ready_from: Option<Day>,
    /// The spread of `ready_from` where it rests on the species' least, usual and most days.
    pub ready_spread: Option<DaySpread>,
    /// The last day in its container, or of bare roots.
    pub best_before: Option<Day>,
    /// The spread of `best_before`.
    pub best_before_spread: Option<DaySpread>,
    /// The questions of its verdict.
    pub criteria: Vec<Criterion>,
    /// Its whole story.
    pub story: Arc<TrayStory>,
}

impl TrayPicture {
    /// Whether a pest or a sickness was seen on it and not settled: it goes after healthy trays.
    pub(crate) fn has_pest(&self) -> bool {
        self.criteria.iter().any(|criterion| criterion.rule() == Rule::Pest && criterion.met() == Some(false))
    }

    /// The earliest day its questions allow: the last of the days on which those that hold it back are expected to be
    /// met. Where one of them has no day it may be later.
    pub(crate) fn not_before(&self) -> Option<Day> {
        self.criteria.iter().filter(|criterion| criterion.blocks).filter_map(|criterion| criterion.expected).max()
    }
}

/// A species in a bed on a day.
#[derive(Clone, PartialEq, Debug)]
pub struct BedSpecies {
    /// The species.
    pub species: SpeciesKey,
    /// Positions of its grid.
    pub positions: u32,
    /// Living plants of it.
    pub living: u32,
    /// Open positions.
    pub open_positions: u32,
    /// Open positions whose light is inside the band.
    pub in_light: u32,
    /// The light as it is reckoned from the nurse plants, where nobody read it and it can be.
    pub(crate) light_reckoned: Option<quantity::LightSpan>,
    /// The standing of the bed for it.
    pub standing: Standing,
    /// The questions of its verdict.
    pub criteria: Vec<Criterion>,
}

/// A cohort of nurse plants on a day.
#[derive(Clone, PartialEq, Debug)]
pub struct NursePicture {
    /// The species.
    pub nurse: SpeciesKey,
    /// The day it was planted.
    pub planted: Day,
    /// Days since.
    pub age_days: i32,
    /// How many were planted.
    pub count: u32,
    /// How many live by the books.
    pub alive: u32,
    /// The day of the last count.
    pub counted_on: Option<Day>,
    /// Useful shade expected from this day (common practice of the profile).
    pub useful_shade_from: Option<Day>,
    /// Its stems or plants end about this day (most of the stem's life).
    pub ends_about: Option<Day>,
    /// The entry that planted it.
    pub entry: EntryId,
}

/// Light of a bed now.
#[derive(Clone, PartialEq, Debug)]
pub struct LightNow {
    /// Share of the open light.
    pub share: f64,
    /// The day of the newest reading it rests on.
    pub read_on: Day,
    /// How far the readings lie apart, where they do not agree.
    pub apart: Option<quantity::LightApart>,
    /// How it is known.
    pub basis: Basis,
    /// The readings.
    pub entries: Vec<EntryId>,
}

/// A bed on a day.
#[derive(Clone, PartialEq, Debug)]
pub struct BedPicture {
    /// Its name.
    pub name: BedName,
    /// The field it lies in.
    pub field: FieldName,
    /// Length, m.
    pub length_m: f64,
    /// Width, m.
    pub width_m: f64,
    /// Light now, where read.
    pub light_now: Option<LightNow>,
    /// The planned species in plan order.
    pub species: Vec<BedSpecies>,
    /// Nurse plants, oldest first.
    pub nurses: Vec<NursePicture>,
    /// Its whole story.
    pub story: Arc<BedStory>,
}

impl BedPicture {
    /// The light as it is reckoned, where nobody read it: that of the first species of the plan that is asked for.
    pub(crate) fn light_reckoned(&self) -> Option<quantity::LightSpan> {
        self.species.iter().find_map(|line| line.light_reckoned)
    }
}

/// What the book says on a day.
#[derive(Clone, Debug)]
pub struct Picture {
    /// The day looked at.
    pub day: Day,
    /// Whether that is today, past or to come.
    pub looking: Looking,
    /// Only entries recorded by this moment were used, where one was given.
    pub known: Option<Moment>,
    /// What describes the site.
    pub site: Arc<Site>,
    /// The stories of the places where trays stand.
    pub places: Arc<Places>,
    /// The places that a waiting time closes to work of hands, and by what.
    pub(crate) closed: Arc<Closed>,
    /// The places where a sickness was seen, or a tray with one stands or stood.
    pub(crate) sick: Arc<SickPlaces>,
    /// What trays have in common by plants that were moved on.
    pub(crate) kin: Arc<Kin>,
    /// The fields where animals that a fence keeps out took many plants of a bed.
    pub(crate) broken_into: Arc<BrokenInto>,
    /// The share of what stands that this nursery loses in a week.
    pub weekly_loss: WeeklyLoss,
    /// Every active tray that exists on that day, empty ones too.
    pub trays: OrdMap<TrayCode, Arc<TrayPicture>>,
    /// Stories of archived trays that this nursery learns from: of each species the last ones.
    pub archived: Arc<[Arc<TrayStory>]>,
    /// Every active seed lot.
    pub lots: OrdMap<LotCode, Arc<LotStory>>,
    /// Every active bed.
    pub beds: OrdMap<BedName, Arc<BedPicture>>,
    /// Every tray with living plants against every bed whose plan names its species; fits first.
    pub pairs: Pairs,
    /// What cannot be believed as written.
    pub doubts: Vec<Doubt>,
    /// Ready trays whose species no bed plans: a gap of the plans and nothing wrong in the book.
    pub unplanned: Vec<TrayCode>,
}

impl Picture {
    /// What the sicknesses of a tray or a bed are looked for with.
    pub(crate) fn around(&self) -> (&Places, &Kin) {
        (&self.places, &self.kin)
    }

    /// The stories this nursery learns from: of every tray here, and of the last archived ones of each species.
    pub fn stories(&self) -> impl Iterator<Item = &Arc<TrayStory>> {
        self.archived.iter().chain(self.trays.values().map(|tray| &tray.story))
    }

    /// The pair that lets a tray go first, where that is before the tray is ready for every bed, and the day: a bed may be no brighter than
    /// where it stands.
    pub(crate) fn goes_before(&self, tray: &TrayPicture) -> Option<(Day, &Pair)> {
        let waits = |pair: &&Pair| !tray.ready && !pair.fits;
        let of_it = self.pairs.of(&tray.code).iter().filter(waits);
        // What could be measured today lets nothing go today: the day is still to come.
        let dated = of_it.filter_map(|pair| Some((pair.missed().until().filter(|until| *until > self.day)?, pair)));
        let first = dated.min_by_key(|(until, _)| *until)?;
        tray.ready_from.is_none_or(|from| first.0 < from).then_some(first)
    }

    /// The day from which a tray goes to some bed, or is ready for all.
    pub(crate) fn goes_from(&self, tray: &TrayPicture) -> Option<Day> {
        self.goes_before(tray).map(|(from, _)| from).or(tray.ready_from)
    }

    /// The pair of a tray and a bed, where the bed's plan names the tray's species.
    pub fn pair(&self, tray: &TrayCode, bed: &BedName) -> Option<&Pair> {
        self.pairs.get(tray, bed)
    }
}
