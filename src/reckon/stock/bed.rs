//! The story of a bed: its layout, what was planted and died, its nurse plants, and every look at its ground.
//!
//! The books of a bed: plants set (cohorts and nurse plants) + unexplained = living + dead, always.

use serde::{Deserialize, Serialize};

use super::place::Holds;
use super::place::{PlaceStory, Places};
use super::tray::{PestLook, Since, Stay};
use super::treatment::{Treatment, Treatments};
use crate::base::{BedName, Day, EntryId, PlaceName, SpeciesKey, TrayCode};
use crate::nursery::entry::BedSet;
use crate::nursery::entry::types::{GroundTask, Sky, SoilWhere, Tubers};
use crate::nursery::pest::DiedOf;
use crate::reckon::picture::Doubt;
use crate::reckon::site::Described;
use crate::reckon::tray::closed::closes;

/// A rock or a stump: a spot of ground where nothing can stand.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct BlockedSpot {
    /// (row, place) as written.
    pub spot: (u32, u32),
    /// The day it was written for; the layout of that day says where on the ground the spot is.
    pub day: Day,
    /// The entry.
    pub entry: EntryId,
}

/// Plants of one species set on one day.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct CohortStory {
    /// The species; none where its tray is unknown.
    pub species: Option<SpeciesKey>,
    /// The tray they came from; none for plants found or sown at stake.
    pub tray: Option<TrayCode>,
    /// The day they went in.
    pub day: Day,
    /// How many went in.
    pub planted: u32,
    /// How many live by the books.
    pub living: u32,
    /// How many died.
    pub dead: u32,
    /// Whether they were found standing rather than planted from a tray.
    pub found: bool,
    /// Whether they are seeds at stake: each hole is then one plant until a count says otherwise.
    pub at_stake: bool,
    /// Rows, where written.
    pub rows: Option<String>,
    /// Places (row, place), where written.
    pub spots: Vec<(u32, u32)>,
    /// The entry.
    pub entry: EntryId,
}

/// A cohort of nurse plants.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct NurseStory {
    /// The species.
    pub nurse: SpeciesKey,
    /// The day it was planted.
    pub day: Day,
    /// How many.
    pub planted: u32,
    /// How many live by the books.
    pub alive: u32,
    /// How many died, were felled or lifted.
    pub gone: u32,
    /// Distance between rows, m.
    pub row_m: f64,
    /// Distance in the row, m.
    pub in_row_m: f64,
    /// How far the first stands from the edges, m.
    pub offset_m: Option<f64>,
    /// The day of the last count.
    pub counted_on: Option<Day>,
    /// Bunches showing at the last count.
    pub bunches_showing: Option<u32>,
    /// The last height and crown radius measured, m, with the day.
    pub measured: Option<(Day, f64, f64)>,
    /// The entry that planted it.
    pub entry: EntryId,
}

impl NurseStory {
    /// A cohort as it is set, so far apart between rows and in the row, of which nothing more is known.
    pub(crate) fn set(
        (nurse, planted): (SpeciesKey, u32),
        day: Day,
        (row_m, in_row_m): (f64, f64),
        entry: EntryId,
    ) -> NurseStory {
        NurseStory {
            nurse,
            day,
            planted,
            alive: planted,
            gone: 0,
            row_m,
            in_row_m,
            offset_m: None,
            counted_on: None,
            bunches_showing: None,
            measured: None,
            entry,
        }
    }
}

/// A look at the light.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct LightLook {
    /// The day.
    pub day: Day,
    /// Share of the open light: as written, else the mean of the pairs.
    pub share: f64,
    /// How many pairs.
    pub pairs: u32,
    /// The sky.
    pub sky: Option<Sky>,
    /// The rows or places that were named; none = the whole bed.
    pub part: Option<PartOfBed>,
    /// Its place among the entries of the bed.
    pub order: usize,
    /// The entry.
    pub entry: EntryId,
}

/// A look at the soil.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct SoilLook {
    /// The day.
    pub day: Day,
    /// Resistance as read or as the rod gives it, MPa; none where only tubers were looked at.
    pub resistance_mpa: Option<f64>,
    /// Diameter of the rod that was pushed, mm (the depth is then the depth of that pressure); none where none was.
    pub rod_mm: Option<f64>,
    /// Where it was looked at, where that was said; unsaid = where nobody dug.
    pub place: Option<SoilWhere>,
    /// Depth, cm.
    pub depth_cm: Option<f64>,
    /// Whether the ground was at field capacity: `wet` where it was said, else 2 to 14 days since a soaking; none = not
    /// said.
    pub at_field_capacity: Option<bool>,
    /// Whether it was found wet or dry, where that was said.
    #[serde(default)]
    pub(crate) wet: Option<bool>,
    /// Days since a soaking, where that was said.
    pub soaked_days: Option<f64>,
    /// Tubers lifted there.
    pub tubers: Option<Tubers>,
    /// The rows or places that were named; none = the whole bed.
    pub part: Option<PartOfBed>,
    /// The entry.
    pub entry: EntryId,
}

impl SoilLook {
    /// Whether it looked how hard the ground is, and not only how wet.
    pub(crate) fn tells_of_hardness(&self) -> bool {
        self.resistance_mpa.is_some() || self.tubers.is_some()
    }
}

/// Young plants watered at the foot.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Watering {
    /// The day.
    pub day: Day,
    /// How many; none = all.
    pub count: Option<u32>,
    /// Litres that each got, where written.
    pub litres_each: Option<f64>,
    /// The entry.
    pub entry: EntryId,
}

/// Ground work done.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct WorkDone {
    /// The day.
    pub day: Day,
    /// The work.
    pub task: GroundTask,
    /// Depth of holes as written, cm.
    #[serde(default)]
    pub(crate) depth_cm: Option<f64>,
    /// The rows or places that were named; none = the whole bed.
    pub part: Option<PartOfBed>,
    /// The entry.
    pub entry: EntryId,
}

/// Something cut or lifted of the nurse plants, or some of them lost.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct GroundLook {
    /// The day.
    pub day: Day,
    /// The nurse plant.
    pub nurse: SpeciesKey,
    /// What was cut; none where plants were lost to wind, cattle, ants.
    pub what: Option<crate::nursery::entry::types::CutWhat>,
    /// Plants cut, lifted or lost, where written or reckoned from a share.
    pub plants: Option<u32>,
    /// The share of what stood of that species, 0 to 1: of its plants, of leaves of its leaves.
    pub(crate) share: f64,
    /// Whether it is of a kind that lets light in: so much of it ends a light reading before it.
    pub lets_light_in: bool,
    /// Whether tubers were lifted, which loosens the ground.
    pub lifts_tubers: bool,
    /// What it gave, kg, where written.
    pub yield_kg: Option<f64>,
    /// Its place among the entries of the bed.
    pub order: usize,
    /// The entry.
    pub entry: EntryId,
}

/// A survival count.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct SurvivalLook {
    /// The day.
    pub day: Day,
    /// The species.
    pub species: SpeciesKey,
    /// The tray, where written.
    pub tray: Option<TrayCode>,
    /// The day of planting of the cohort counted: as written, else of the youngest cohort it matches.
    pub outplanted_on: Option<Day>,
    /// Whether neither a tray nor a day of planting was written: every cohort of the species was counted.
    pub of_all: bool,
    /// The cohorts it matches, by the entries that set them.
    pub cohorts: Vec<EntryId>,
    /// The rows and places looked at; none where it was all of the bed.
    pub part: Option<PartOfBed>,
    /// Alive.
    pub alive: u32,
    /// Dead.
    pub dead: u32,
    /// The entry.
    pub entry: EntryId,
}

/// Plants that died, were taken out or were counted as dead.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub(crate) struct Death {
    /// The day.
    pub day: Day,
    /// The species.
    pub species: SpeciesKey,
    /// By how many the living fell.
    pub plants: u32,
    /// Of a count by how many the living rose that no planting explains.
    pub back: u32,
    /// Dead, as written.
    pub dead: u32,
    /// Living of the species after it, at least those a count found.
    pub alive: u32,
    /// Whether it was a count of the living and the dead.
    pub is_count: bool,
    /// Of what.
    pub of: DiedOf,
    /// The same in a person's own words.
    pub what: String,
    /// The entry.
    pub entry: EntryId,
}

/// Plants set out from a tray in which a sickness was seen by then or soon after.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub(crate) struct Brought {
    /// The tray.
    pub tray: TrayCode,
    /// How many.
    pub plants: u32,
    /// The day they went in.
    pub planted: Day,
    /// What was seen, and when last.
    pub seen: Since<PestLook>,
    /// The place where it was seen while they stood there; none where it was seen in their tray.
    pub place: Option<PlaceName>,
    /// The entry that set them.
    pub entry: EntryId,
}

/// A waiting time that plants of a tray brought along.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub(crate) struct Sprayed {
    /// The tray.
    pub tray: TrayCode,
    /// What was used, and its time.
    pub treatment: Treatment,
}

/// Plants set out from a tray, and where they had stood: what was sprayed or seen at a place then came along.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub(crate) struct CameFrom {
    /// The tray.
    pub tray: TrayCode,
    /// How many.
    pub plants: u32,
    /// The day they went in.
    pub planted: Day,
    /// The places, each from when until when.
    pub stays: Vec<Stay>,
    /// Looks at these plants that found nothing.
    pub clear: Vec<Since<PestLook>>,
    /// The entry that set them.
    pub entry: EntryId,
}

impl CameFrom {
    /// What of a kind was written of the places and met the plants where they stood, with their stay.
    pub(crate) fn there<'a, T: 'a, I: Iterator<Item = &'a T>>(
        &'a self,
        places: &'a Places,
        of_place: impl Fn(&'a PlaceStory) -> I + 'a,
        met: impl Fn(&T, &Stay) -> bool + Copy + 'a,
    ) -> impl Iterator<Item = (&'a Stay, &'a T)> {
        self.stays.iter().flat_map(move |stay| {
            let all = places.get(&stay.place).into_iter().flat_map(&of_place);
            all.filter(move |one| met(one, stay)).map(|one| (stay, one)).collect::<Vec<_>>()
        })
    }
}

/// Rows and places of a bed as they were written, blanks and the order of places aside.
#[derive(Clone, PartialEq, Eq, Debug, Serialize, Deserialize)]
pub struct PartOfBed {
    /// The rows, without blanks.
    pub rows: Option<String>,
    /// Places (row, place), in order.
    pub spots: Vec<(u32, u32)>,
}

/// The story of a bed.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct BedStory {
    /// Its name.
    pub name: BedName,
    /// Its layouts.
    pub layout: Described<BedSet>,
    /// Spots of ground where nothing can stand, oldest first.
    pub blocked: Vec<BlockedSpot>,
    /// Plants set, oldest first.
    pub cohorts: Vec<CohortStory>,
    /// Nurse plants, oldest first.
    pub nurses: Vec<NurseStory>,
    /// Looks at the light, oldest first.
    pub light: Vec<LightLook>,
    /// Looks at the soil, oldest first.
    pub soil: Vec<SoilLook>,
    /// Young plants watered at the foot.
    #[serde(default)]
    pub(crate) watered: Vec<Watering>,
    /// Work done, oldest first.
    pub work: Vec<WorkDone>,
    /// Cuts of nurse plants, and losses that let light in, oldest first.
    pub cuts: Vec<GroundLook>,
    /// Survival counts, oldest first.
    pub survival: Vec<SurvivalLook>,
    /// What holds it back.
    pub held: Holds,
    /// Treatments.
    pub treatments: Treatments,
    /// Pests and sicknesses seen.
    pub pests: Vec<Since<PestLook>>,
    /// Plants that died or were taken out, oldest first.
    pub(crate) deaths: Vec<Death>,
    /// Plants that came from trays with a sickness, oldest first.
    pub(crate) brought: Vec<Brought>,
    /// Waiting times that plants brought along from their trays.
    pub(crate) sprayed: Vec<Sprayed>,
    /// Plants set out from trays, and where they had stood, oldest first.
    pub(crate) came_from: Vec<CameFrom>,
    /// The day of the last entry about it.
    pub last_on: Option<Day>,
    /// Plants that the books cannot explain (more alive than planted, more dead than lived): in minus out.
    pub unexplained: i64,
    /// What cannot be believed.
    pub doubts: Vec<Doubt>,
}

impl BedStory {
    /// A bed of which nothing is known.
    pub fn blank(name: BedName) -> BedStory {
        BedStory {
            name,
            layout: Described::default(),
            blocked: Vec::new(),
            cohorts: Vec::new(),
            nurses: Vec::new(),
            light: Vec::new(),
            soil: Vec::new(),
            watered: Vec::new(),
            work: Vec::new(),
            cuts: Vec::new(),
            survival: Vec::new(),
            held: Holds::default(),
            treatments: Treatments::default(),
            pests: Vec::new(),
            deaths: Vec::new(),
            brought: Vec::new(),
            sprayed: Vec::new(),
            came_from: Vec::new(),
            last_on: None,
            unexplained: 0,
            doubts: Vec::new(),
        }
    }

    /// In minus out; always zero: planted + unexplained = living + dead, nurse plants among them.
    pub fn balance(&self) -> i64 {
        let cohorts = self.cohorts.iter().map(|cohort| (cohort.planted, cohort.living, cohort.dead));
        let nurses = self.nurses.iter().map(|nurse| (nurse.planted, nurse.alive, nurse.gone));
        let planted_less_there =
            |(planted, living, dead): (u32, u32, u32)| i64::from(planted) - i64::from(living) - i64::from(dead);
        cohorts.chain(nurses).map(planted_less_there).sum::<i64>() + self.unexplained
    }

    /// The waiting time that keeps hands out on a day, and the tray whose plants brought it along, if it was one: of several the one that
    /// lasts longest.
    pub(crate) fn in_wait<'a>(&'a self, places: &'a Places, day: Day) -> Option<(&'a Treatment, Option<&'a TrayCode>)> {
        let own = self.treatments.iter().filter(|one| one.holds_on(day)).map(|one| (one, None));
        let of_trays = self.sprayed.iter().map(|one| (&one.treatment, Some(&one.tray)));
        let of_places = self.came_from.iter().flat_map(|came| {
            let met = |one: &Treatment, stay: &Stay| (stay.from..=stay.until).contains(&one.day);
            let there = came.there(places, |place| place.treatments.iter(), met);
            there.map(|(_, one)| (one, Some(&came.tray)))
        });
        let brought = of_trays.chain(of_places).filter(|(one, _)| closes(one, day));
        // Of two that end on one day the bed's own.
        let lasts = |(one, tray): &(&Treatment, Option<&TrayCode>)| {
            (one.over_on().is_none(), one.over_on(), one.day, tray.is_none())
        };
        own.chain(brought).max_by_key(lasts)
    }

    /// Living plants of a species by the books; nurse plants of that species stand on its grid too.
    pub(crate) fn living_of(&self, species: &SpeciesKey) -> u32 {
        let cohorts = self.cohorts.iter().filter(|cohort| cohort.species.as_ref() == Some(species));
        let nurses = self.nurses.iter().filter(|nurse| nurse.nurse == *species);
        let living = cohorts.map(|cohort| cohort.living).chain(nurses.map(|nurse| nurse.alive));
        living.fold(0, u32::saturating_add)
    }
}
