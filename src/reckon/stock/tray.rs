//! The story of a tray: its accounts, every look at it, where it stood and in what.

use serde::{Deserialize, Serialize};

use std::collections::BTreeMap;
use std::sync::Arc;

use super::place::Holds;
use super::treatment::Treatments;
use crate::base::{BedName, ContainerName, Day, EntryId, LotCode, PlaceName, Range, SpeciesKey, TrayCode};
use crate::nursery::entry::types::{ArrivedFrom, MovedHow, PlantForm, Roots, Text};
use crate::nursery::entry::{Entry, Grafted, Held, MeasuredPlant, PestSeen, TrayEntry, What};
use crate::nursery::pest::{DiedOf, died_of, is_seen_in, looks_for, says_none};
use crate::reckon::picture::Doubt;

/// Where a tray's plants came from.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub enum Origin {
    /// Sown here.
    Sown,
    /// Moved on from other trays.
    MovedOn(MovedHow),
    /// Not from our seed.
    Received {
        /// Where from.
        from: ArrivedFrom,
        /// In what form.
        form: PlantForm,
        /// Days since they were sown or struck, on arrival.
        age_days: Option<i32>,
        /// The last day they can be planted, as written.
        good_until: Option<Day>,
        /// Whether bare roots lie heeled in, cool and moist.
        heeled_in: bool,
        /// Since when they have stood in the light they stand in, where that was written.
        stands_since: Option<Day>,
        /// Height on arrival, cm.
        height_cm: Option<f64>,
        /// Light they stood in until then, a share of the open light.
        light_share: Option<f64>,
        /// The day they arrived.
        day: Day,
        /// The entry.
        entry: EntryId,
    },
}

/// A sowing that plants of this tray come from.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Sowing {
    /// The day.
    pub day: Day,
    /// The lot; none where nobody knows.
    pub lot: Option<LotCode>,
    /// Seeds; none where only a weight is known and nobody knows how many that is.
    pub seeds: Option<u32>,
    /// The entry.
    pub entry: EntryId,
}

/// The accounts of a tray, in plants and seeds. What came in equals what is there plus what went out:
/// `sown + arrived + moved_in + twins + unexplained = seed + standing + lost + not_seen + culled + given_out + moved_out + planted`.
#[derive(Clone, PartialEq, Eq, Debug, Default, Serialize, Deserialize)]
pub struct Accounts {
    /// Seeds that came from lots.
    pub sown: u64,
    /// Plants that came from elsewhere.
    pub arrived: u64,
    /// Plants that came from other trays.
    pub moved_in: u64,
    /// Seedlings beyond one a seed.
    pub twins: u64,
    /// Seed still in the tray.
    pub seed: u64,
    /// Living seedlings.
    pub standing: u64,
    /// Lost, by cause.
    pub lost: BTreeMap<Arc<str>, u64>,
    /// Lost, cause not seen.
    pub not_seen: u64,
    /// Of everything lost, what was lost while the tray was young: seed coming up, or weeks after.
    #[serde(default)]
    pub(crate) lost_young: u64,
    /// Culled, by reason.
    pub culled: BTreeMap<Arc<str>, u64>,
    /// Sold or given.
    pub given_out: u64,
    /// Gone into other trays.
    pub moved_out: u64,
    /// Gone into beds.
    pub planted: u64,
    /// What the books cannot explain: in minus out.
    pub unexplained: i64,
}

/// Seedlings are young for so many days after the last of the seed is due. Ours; damping-off takes seedlings in their first weeks
/// (common practice).
pub(crate) const YOUNG_DAYS: i32 = 28;
/// Where nobody knows when the last of the seed is due, it is taken for due so many days after sowing. Ours.
pub(crate) const UNKNOWN_EMERGENCE_DAYS: i32 = 90;

impl Accounts {
    /// Everything lost, culled not included.
    pub fn lost_in_all(&self) -> u64 {
        self.lost.values().sum::<u64>() + self.not_seen
    }

    /// Everything culled.
    pub(crate) fn culled_in_all(&self) -> u64 {
        self.culled.values().sum()
    }

    /// Living seedlings as a count for views; more than four thousand million do not stand in a nursery.
    pub(crate) fn standing_count(&self) -> u32 {
        u32::try_from(self.standing).unwrap_or(u32::MAX)
    }

    /// In minus out; always zero.
    pub fn balance(&self) -> i128 {
        let inward = i128::from(self.sown + self.arrived + self.moved_in + self.twins);
        let outward = [
            self.seed,
            self.standing,
            self.lost_in_all(),
            self.culled_in_all(),
            self.given_out,
            self.moved_out,
            self.planted,
        ];
        inward + i128::from(self.unexplained) - outward.into_iter().map(i128::from).sum::<i128>()
    }
}

/// A count.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct CountLook {
    /// The day.
    pub day: Day,
    /// Standing as counted.
    pub standing: u32,
    /// Whether only about so many.
    pub about: bool,
    /// Cells looked at, where not all were: the count settles nothing.
    pub part_of_cells: Option<u32>,
    /// Cells with at least one seedling.
    pub cells_filled: Option<u32>,
    /// Newly emerged since the look before: the rise and what was taken out meanwhile.
    pub emerged: u32,
    /// Of the rise, what corrects an earlier count and is no emergence.
    pub corrected: u32,
    /// Of the fall, what nothing explains.
    pub not_seen: u32,
    /// Found dead at this look.
    #[serde(default)]
    pub(crate) dead: u32,
    /// Whether a stocktake, which settles the books.
    pub stocktake: bool,
    /// The entry.
    pub entry: EntryId,
}

/// A sample.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct SampleLook {
    /// The day.
    pub day: Day,
    /// The plants.
    pub plants: Vec<MeasuredPlant>,
    /// The entry.
    pub entry: EntryId,
}

/// Something that holds from a day on, with the entry that says so.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Since<T> {
    /// From this day.
    pub from: Day,
    /// What holds.
    pub what: T,
    /// The entry.
    pub entry: EntryId,
}

/// A time that plants stood at a place.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Stay {
    /// Where.
    pub place: PlaceName,
    /// From this day.
    pub from: Day,
    /// To this day, itself counted.
    pub until: Day,
    /// The shade of its own that its tray was given there last, percent.
    pub(crate) shade_pct: Option<f64>,
    /// Whether their tray was let go of a hold after it.
    pub(crate) released: bool,
}

/// Plants that were grafted or budded.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Graft {
    /// How many.
    pub plants: u32,
    /// The stock, as written.
    pub rootstock: Option<String>,
    /// The variety, as written.
    pub variety: Option<String>,
}

impl Graft {
    /// What an entry says.
    pub(super) fn written(grafted: &Grafted) -> Graft {
        let text = |text: &Option<Text>| text.as_ref().map(|text| text.0.to_string());
        Graft { plants: grafted.count.0, rootstock: text(&grafted.rootstock), variety: text(&grafted.variety) }
    }
}

/// A count of part of a tray's cells.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct PartLook {
    /// The day.
    pub day: Day,
    /// Cells looked at, at least one.
    pub seen: u32,
    /// Cells of the tray.
    pub cells: u32,
    /// Plants standing in those looked at.
    pub standing: u32,
    /// Plants in the whole tray by the books of that moment.
    pub books: u64,
    /// The entry.
    pub entry: EntryId,
}

impl PartLook {
    /// What it means for the whole tray on its day: what was seen, and the rest of the cells by the rate seen, two standard
    /// errors of a count (Poisson) either way; where nothing was seen the upper end is three in the cells looked at (the
    /// rule of three: Hanley & Lippman-Hand 1983, JAMA 249:1743, from memory).
    pub(crate) fn estimate(&self) -> Range {
        let (seen, rest) = (f64::from(self.seen), f64::from(self.cells.saturating_sub(self.seen)));
        let standing = f64::from(self.standing);
        let rate = standing / seen;
        let around = 2.0 * standing.sqrt() / seen;
        let upper = if self.standing == 0 { 3.0 / seen } else { rate + around };
        let low = standing + (rate - around).max(0.0) * rest;
        Range::new(low.floor(), (standing + rate * rest).round(), (standing + upper * rest).ceil())
    }

    /// Whether the books of its day lie outside of what it means.
    pub(crate) fn contradicts(&self) -> bool {
        let (estimate, books) = (self.estimate(), self.books as f64);
        books < estimate.low || books > estimate.high
    }
}

/// Plants that were put to those of a tray, or in which something was seen or done, come to hold all of them back from this share on; fewer
/// are left behind while loading. Ours.
const JOINED_SHARE: f64 = 0.1;

/// A hold: why, until when.
pub(crate) type Hold = (String, Option<Day>);

/// Plants from elsewhere: since they came their light is known, before they came it is not.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Serialize, Deserialize)]
pub(crate) struct Newcomers {
    /// How many.
    pub plants: u32,
    /// The day on which they were put to others; none where they are among none.
    pub put_on: Option<Day>,
}

impl<T> Since<T> {
    /// What an entry says, from its day on.
    pub(super) fn begun_by(entry: &Entry, what: T) -> Since<T> {
        Since { from: entry.happened, what, entry: entry.id.clone() }
    }
}

impl Since<Hold> {
    /// A hold, as an entry says it.
    pub(super) fn hold(entry: &Entry, held: &Held) -> Since<Hold> {
        Since::begun_by(entry, (held.why.0.to_string(), held.until))
    }
}

/// Plants that died in a tray or were thrown out of it.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub(crate) struct Gone {
    /// How many.
    pub plants: u32,
    /// Whether they were thrown out; else they died.
    pub culled: bool,
    /// Of what, or why, in a person's own words.
    pub why: String,
    /// What those words say.
    pub of: DiedOf,
    /// How many stood before by the books; none of a tray they came from.
    pub stood: Option<u64>,
}

impl Since<Gone> {
    /// Plants that died or were thrown out, of an entry that says so.
    pub(crate) fn gone(entry: &Entry, stood: Option<u64>) -> Option<Since<Gone>> {
        let (plants, culled, why) = match &entry.what {
            What::Tray(TrayEntry::Lost(lost)) => (lost.count.0, false, &lost.cause.0),
            What::Tray(TrayEntry::Culled(culled)) => (culled.count.0, true, &culled.why.0),
            _ => return None,
        };
        let gone = Gone { plants, culled, why: why.to_string(), of: died_of(why), stood };
        Some(Since::begun_by(entry, gone))
    }

    /// Whether they died of a sickness.
    pub(crate) fn is_dead_of_it(&self) -> bool {
        !self.what.culled && matches!(self.what.of, DiedOf::Sickness | DiedOf::Unnamed)
    }

    /// A loss or a cull that names a sickness, or what may be one, as a sighting on the share of those that stood.
    pub(crate) fn sighting(&self) -> Option<Since<PestLook>> {
        let Gone { plants, culled, why, of, stood } = &self.what;
        let stood = stood.map(|stood| stood.max(u64::from(*plants)));
        let seen = is_seen_in(*of, why, *plants);
        seen.then(|| Since::of_loss(&self.entry, self.from, why, (*plants, stood), *culled))
    }
}

/// A look for a pest or a sickness.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct PestLook {
    /// What was seen, or looked for.
    pub(crate) what: String,
    /// The share of the plants, percent; none where nobody counted, 0 where it was gone.
    pub(crate) share_pct: Option<f64>,
    /// Whether a person says that it goes along with plants.
    pub(crate) spreads: Option<bool>,
    /// How many plants were looked at, where written.
    pub(crate) plants_seen: Option<u32>,
    /// Whether their roots were.
    pub(crate) roots_seen: bool,
    /// How many plants stood then by the books; none where it was seen elsewhere.
    pub(crate) stood: Option<u64>,
    /// Of plants that came from the tray in which it was seen, how many did.
    #[serde(default)]
    pub(crate) came: Option<u32>,
    /// Whether it was written of a place, and not of these plants.
    pub(crate) of_place: bool,
    /// Whether it was written as what plants died of, or why they were thrown out.
    pub(crate) of_loss: bool,
    /// Whether those plants were thrown out.
    pub(crate) thrown_out: bool,
}

impl Since<PestLook> {
    /// A pest or sickness as an entry says it.
    pub(super) fn pest(entry: &Entry, pest: &PestSeen, stood: Option<u64>) -> Since<PestLook> {
        let look = PestLook {
            what: pest.what.0.to_string(),
            share_pct: pest.share_pct.map(|share| share.0),
            spreads: pest.spreads,
            plants_seen: pest.plants_seen.map(|plants| plants.0),
            roots_seen: pest.roots_seen == Some(true),
            stood,
            came: None,
            of_place: pest.place.is_some(),
            of_loss: false,
            thrown_out: false,
        };
        Since::begun_by(entry, look)
    }
}

impl Since<PestLook> {
    /// A sickness of which plants died, or for which they were thrown out, on a share of those that stood there.
    pub(crate) fn of_loss(
        entry: &EntryId,
        on: Day,
        what: &str,
        (plants, stood): (u32, Option<u64>),
        thrown_out: bool,
    ) -> Since<PestLook> {
        let look = PestLook {
            what: what.to_string(),
            share_pct: stood.map(|stood| 100.0 * f64::from(plants) / (stood.max(1) as f64)),
            spreads: None,
            plants_seen: None,
            roots_seen: false,
            stood,
            came: None,
            of_place: false,
            of_loss: true,
            thrown_out,
        };
        Since { from: on, what: look, entry: entry.clone() }
    }

    /// Whether it was a look that found nothing.
    pub(crate) fn finds_none(&self) -> bool {
        self.what.share_pct == Some(0.0) || says_none(&self.what.what)
    }

    /// Whether it found nothing of a sickness, or nothing at all.
    pub(crate) fn clears(&self, what: &str) -> bool {
        self.finds_none() && (says_none(&self.what.what) || looks_for(&self.what.what, what))
    }
}

/// The story of a tray up to the day looked at.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct TrayStory {
    /// Its code now.
    pub code: TrayCode,
    /// Where its plants came from; none where no entry made it.
    pub origin: Option<Origin>,
    /// The day it was made.
    pub made_on: Option<Day>,
    /// How its plants were moved on into it on that day, where they were.
    pub(crate) moved_how: Option<MovedHow>,
    /// Its species, by the key of the catalogue where known.
    pub species: Option<SpeciesKey>,
    /// The sowings its plants come from, oldest first (inherited through `moved_on`).
    pub sowings: Vec<Sowing>,
    /// Plants from elsewhere that came into it from other trays.
    pub(crate) newcomers: Vec<Since<Newcomers>>,
    /// Of plants from elsewhere that were moved on into it, the day they were sown or struck; none where nobody knows it.
    pub(crate) begun_on: Vec<Since<Option<Day>>>,
    /// Bare roots and stumps among its plants, and the day on which they were brought into soil.
    pub(crate) bare_until: Vec<Since<Origin>>,
    /// The accounts.
    pub accounts: Accounts,
    /// The day on which the last seed is due; none where nothing was sown here or the species has no figure.
    pub seed_due_until: Option<Day>,
    /// Whether seeds were put in of which nobody knows how many.
    pub seed_unknown: bool,
    /// Places for seedlings.
    pub cells: Option<u32>,
    /// Containers, oldest first: since when the roots are in it.
    pub containers: Vec<Since<Option<ContainerName>>>,
    /// Places, oldest first.
    pub places: Vec<Since<PlaceName>>,
    /// Steps of its own shade, percent, oldest first.
    pub shades: Vec<Since<f64>>,
    /// Steps of its own water, every so many days, oldest first.
    pub waterings: Vec<Since<f64>>,
    /// Hardening said aloud.
    pub hardening_begun: Vec<Since<Option<BedName>>>,
    /// Counts, oldest first.
    pub counts: Vec<CountLook>,
    /// A count of part of the cells since the last whole count.
    pub part_look: Option<PartLook>,
    /// Samples, oldest first.
    pub samples: Vec<SampleLook>,
    /// Plugs lifted, oldest first.
    pub plugs: Vec<Since<Roots>>,
    /// The plug that showed circling roots before the plants were moved on into it.
    pub circling_from_before: Option<Since<()>>,
    /// Times that circling roots were cut, oldest first: of how many plants.
    pub roots_cut: Vec<Since<u32>>,
    /// The last day on which roots of plants were cut before they were moved on into it.
    pub(crate) cut_before: Option<Day>,
    /// Wildlings among its plants: since when they have stood in a container, and how many.
    pub(crate) wildlings: Vec<Since<u32>>,
    /// How many plugs, the oldest, no longer tell: the roots of all plants were cut since.
    pub plugs_before_cut: usize,
    /// Plants grafted or budded, in this tray or before they came into it, oldest first.
    pub grafts: Vec<Since<Graft>>,
    /// Soft flushes seen and on how many plants, in this tray or before they came into it, oldest first.
    pub flushes: Vec<Since<u32>>,
    /// What holds it back.
    pub held: Holds,
    /// What holds plants of it back that were held where they came from.
    pub(crate) held_before: Vec<Since<Hold>>,
    /// The last day on which it was let go of a hold.
    pub(crate) released_on: Option<Day>,
    /// Treatments, those that its plants brought along too.
    pub treatments: Treatments,
    /// Where its plants stood before they were moved on into it.
    pub stays_before: Vec<Stay>,
    /// Pests and sicknesses seen.
    pub pests: Vec<Since<PestLook>>,
    /// Moves of plants into it and how many, oldest first.
    pub moves_in: Vec<Since<u32>>,
    /// The days on which plants were culled, in this tray or before they came into it.
    pub culled_on: Vec<Day>,
    /// Plants thrown out or dead, and the day, in this tray or before they came into it.
    pub(crate) gone: Vec<Since<Gone>>,
    /// Moves into other trays and how, oldest first.
    pub moves_out: Vec<Since<(TrayCode, u32)>>,
    /// The first day on which plants of it went out to a bed.
    pub first_planted: Option<Day>,
    /// The day of the last entry about it.
    pub last_on: Option<Day>,
    /// Its sign: a shape and a number of dots.
    pub sign: Option<String>,
    /// What cannot be believed.
    pub doubts: Vec<Doubt>,
    /// Its entries in the order of things.
    pub entries: Vec<EntryId>,
}

impl TrayStory {
    /// A tray of which nothing is known.
    pub fn blank(code: TrayCode) -> TrayStory {
        TrayStory {
            code,
            origin: None,
            made_on: None,
            moved_how: None,
            species: None,
            sowings: Vec::new(),
            newcomers: Vec::new(),
            begun_on: Vec::new(),
            bare_until: Vec::new(),
            accounts: Accounts::default(),
            seed_due_until: None,
            seed_unknown: false,
            cells: None,
            containers: Vec::new(),
            places: Vec::new(),
            shades: Vec::new(),
            waterings: Vec::new(),
            hardening_begun: Vec::new(),
            counts: Vec::new(),
            part_look: None,
            samples: Vec::new(),
            plugs: Vec::new(),
            circling_from_before: None,
            roots_cut: Vec::new(),
            cut_before: None,
            wildlings: Vec::new(),
            plugs_before_cut: 0,
            grafts: Vec::new(),
            flushes: Vec::new(),
            held: Holds::default(),
            held_before: Vec::new(),
            released_on: None,
            treatments: Treatments::default(),
            stays_before: Vec::new(),
            pests: Vec::new(),
            moves_in: Vec::new(),
            culled_on: Vec::new(),
            gone: Vec::new(),
            moves_out: Vec::new(),
            first_planted: None,
            last_on: None,
            sign: None,
            doubts: Vec::new(),
            entries: Vec::new(),
        }
    }

    /// The last count of the whole tray, or stocktake.
    pub(crate) fn last_whole_count(&self) -> Option<&CountLook> {
        self.counts.iter().rev().find(|look| look.part_of_cells.is_none())
    }

    /// The day from which the number standing is known by counting: the last whole count, else the day plants arrived or
    /// were moved in (they were counted then).
    pub fn counted_on(&self) -> Option<Day> {
        let arrived = match &self.origin {
            Some(Origin::Received { day, .. }) if self.accounts.arrived > 0 => Some(*day),
            Some(Origin::Received { .. } | Origin::MovedOn(_)) => self.made_on,
            Some(Origin::Sown) | None => None,
        };
        self.last_whole_count().map(|look| look.day).or(arrived)
    }

    /// Roots were cut. Where that is all plants that stand, no plug before tells of them any more.
    pub(super) fn cut_roots(&mut self, entry: &Entry, count: Option<u32>) {
        let standing = self.accounts.standing_count();
        self.roots_cut.push(Since::begun_by(entry, count.unwrap_or(standing)));
        let circling = self.plugs_that_tell().iter().find(|plug| plug.what == Roots::Circling).map(|plug| plug.from);
        let lifted = circling.or(self.plugs_that_tell().last().map(|plug| plug.from));
        let seen = self.circling_from_before.as_ref().map(|plug| plug.from).or(lifted);
        let since = self.roots_cut.iter().filter(|cut| seen.is_none_or(|seen| cut.from >= seen));
        if count.is_none() || since.map(|cut| cut.what).fold(0, u32::saturating_add) >= standing {
            self.plugs_before_cut = self.plugs.len();
            self.circling_from_before = None;
        }
    }

    /// Whether the roots of so many plants that came on a day into a tray in which nothing stood were cut there on that day, as a sheet of
    /// the evening says it, on which a cut stands before a move.
    pub(super) fn cut_as_they_came(&mut self, on: Day, plants: u32) -> bool {
        let mut of_day = self.roots_cut.iter_mut().filter(|cut| cut.from == on);
        let all = of_day.find(|cut| cut.what == 0 || cut.what >= plants);
        all.map(|cut| cut.what = plants).is_some()
    }

    /// Whether all its plants are grafts or budded: they came so, or as many as stand were grafted.
    pub(crate) fn is_grafted(&self) -> bool {
        let came_so = matches!(&self.origin, Some(Origin::Received { from: ArrivedFrom::Graft, .. }));
        let grafted: u64 = self.grafts.iter().map(|graft| u64::from(graft.what.plants)).sum();
        came_so || (grafted > 0 && grafted >= self.accounts.standing)
    }

    /// The latest of what began among its plants from which on it makes up a share of those that stand that holds them back, with how many
    /// they are; none where they are fewer.
    pub(crate) fn latest_of_enough<'a, T>(
        &self,
        all: impl IntoIterator<Item = &'a Since<T>>,
        plants_of: impl Fn(&T) -> u32,
    ) -> Option<(&'a Since<T>, u32)> {
        let mut all = all.into_iter().collect::<Vec<_>>();
        all.sort_by_key(|one| std::cmp::Reverse(one.from));
        let mut plants = 0_u32;
        all.into_iter().find_map(|one| {
            plants = plants.saturating_add(plants_of(&one.what));
            self.are_enough(plants).then_some((one, plants))
        })
    }

    /// Whether so many plants hold back all that stand with them.
    pub(crate) fn are_enough(&self, plants: u32) -> bool {
        f64::from(plants) + 1e-9 >= self.accounts.standing as f64 * JOINED_SHARE
    }

    /// A soft flush was seen.
    pub(super) fn flush(&mut self, entry: &Entry) {
        // While nobody has counted all that came up it is seen on all of them.
        let known = self.accounts.standing > 0 && !self.seed_is_due(entry.happened);
        let plants = if known { self.accounts.standing_count() } else { u32::MAX };
        self.flushes.push(Since::begun_by(entry, plants));
    }

    /// A plug was lifted: what it tells of wildlings alone holds among others too.
    pub(super) fn wildlings_by_plug(&mut self, roots: Roots) {
        if roots == Roots::Holds && !self.has_others_than_wildlings() {
            self.wildlings.clear();
        }
    }

    /// Whether enough others stand among its wildlings that a plug may be one of those.
    pub(crate) fn has_others_than_wildlings(&self) -> bool {
        let wild = self.wildlings.iter().map(|wild| wild.what).fold(0, u32::saturating_add);
        let others = self.accounts.standing_count().saturating_sub(wild);
        others > 0 && self.are_enough(others)
    }

    /// The last soft flush, where enough of its plants have it.
    pub(crate) fn last_flush(&self) -> Option<&Since<u32>> {
        self.latest_of_enough(&self.flushes, |plants| *plants).map(|(flush, _)| flush)
    }

    /// What holds it back, in its own right or since before its plants came into it.
    pub(crate) fn holds(&self) -> impl Iterator<Item = &Since<Hold>> {
        self.held.iter().chain(&self.held_before)
    }

    /// Plugs lifted since roots were last cut.
    pub(crate) fn plugs_that_tell(&self) -> &[Since<Roots>] {
        self.plugs.get(self.plugs_before_cut..).unwrap_or_default()
    }

    /// Whether seed may still come up on a day.
    pub(crate) fn seed_is_due(&self, day: Day) -> bool {
        (self.accounts.seed > 0 || self.seed_unknown) && self.seed_due_until.is_none_or(|last| day <= last)
    }

    /// The last day on which its plants are young, the stage of damping-off, ants and slugs; none where they were never sown here (or in a
    /// tray they come from).
    pub(crate) fn young_until(&self) -> Option<Day> {
        let youngest = self.sowings.iter().map(|sowing| sowing.day).max()?;
        Some(self.seed_due_until.unwrap_or_else(|| youngest.plus(UNKNOWN_EMERGENCE_DAYS)).plus(YOUNG_DAYS))
    }

    /// The present container and since when the roots are in it.
    pub fn container(&self) -> Option<&Since<Option<ContainerName>>> {
        self.containers.last()
    }

    /// Where it stands.
    pub fn place(&self) -> Option<&PlaceName> {
        self.places.last().map(|spell| &spell.what)
    }

    /// Whether its plants skip the questions of plug, leaves and hardening: bare roots and stumps.
    pub(crate) fn is_bare(&self) -> bool {
        matches!(self.form(), Some(PlantForm::BareRoot | PlantForm::Stump))
    }

    /// The form its plants came in, where they are not from our seed.
    pub fn form(&self) -> Option<PlantForm> {
        match &self.origin {
            Some(Origin::Received { form, .. }) => Some(*form),
            Some(Origin::Sown | Origin::MovedOn(_)) | None => None,
        }
    }
}
