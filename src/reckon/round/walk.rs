//! Making stops: where each is, its signs, its place on the walk.

use std::collections::BTreeMap;

use super::stop::{AtStake, RoundReason, Stake, Stop, Task, ToBed, WalkOrder, Where};
use crate::base::{Day, LotCode, PlaceName, SpeciesKey, TrayCode};
use crate::nursery::entry::subject::Subject;
use crate::nursery::pest::keeps_apart;
use crate::nursery::species::Profile;
use crate::reckon::bed::sick;
use crate::reckon::forecast::{Outlook, TrayForecast};
use crate::reckon::picture::{BedPicture, BedSpecies, Criterion, Picture, Rule, Source, Stage, TrayPicture};
use crate::reckon::sowing::{expected_of_trays, open_places};
use crate::reckon::tray::{pest, time};

use super::intervals::NO_LAST_DAY_DAYS;

/// Parts of the walk, in their order.
const LEG_GAUGE: u8 = 0;
const LEG_PLACES: u8 = 1;
const LEG_NO_PLACE: u8 = 2;
const LEG_BEDS: u8 = 3;
const LEG_SEED: u8 = 4;
/// What is sick or quarantined comes last, so that hands and tools carry nothing on.
const LEG_SICK: u8 = 5;

/// What the tasks are looked for with.
pub(super) struct Walk<'a> {
    pub(super) picture: &'a Picture,
    /// Trays that go out today, and where.
    pub(super) going: BTreeMap<TrayCode, Vec<ToBed>>,
    /// What is expected of the sowings that are still asked about.
    pub(super) outlook: Outlook,
    /// Places in the order in which trays came to them: the order of the sheet of the first day.
    pub(super) places_in_order: BTreeMap<PlaceName, u32>,
}

/// Places that nobody described come after those that were, in the order in which trays came to them.
const NOT_DESCRIBED_FROM: u32 = 1 << 31;

/// Every place where a tray ever stood, in the order in which that was written.
pub(super) fn places_in_order(picture: &Picture) -> BTreeMap<PlaceName, u32> {
    let mut first: BTreeMap<&PlaceName, (Day, u64)> = BTreeMap::new();
    for stay in picture.trays.values().flat_map(|tray| &tray.story.places) {
        let written = (stay.from, stay.entry.seq);
        let earliest = first.entry(&stay.what).or_insert(written);
        *earliest = written.min(*earliest);
    }
    let mut places: Vec<(&PlaceName, (Day, u64))> = first.into_iter().collect();
    places.sort_by_key(|(name, written)| (*written, *name));
    (0..).zip(places).map(|(number, (name, _))| (name.clone(), number)).collect()
}

/// The day after which a tray is lost to its beds, and how many days that is away.
pub(super) fn days_until(day: Day, until: Option<Day>) -> i32 {
    until.map_or(NO_LAST_DAY_DAYS, |until| (until.days_since(day) + 1).max(1))
}

/// The sum of numbers of plants, stopping at the largest number there is.
pub(super) fn all_of(plants: impl Iterator<Item = u32>) -> u32 {
    plants.fold(0, u32::saturating_add)
}

/// A question of a verdict.
pub(super) fn asked(criteria: &[Criterion], rule: Rule) -> Option<&Criterion> {
    criteria.iter().find(|criterion| criterion.rule() == rule)
}

impl<'a> Walk<'a> {
    /// The day looked at.
    pub(super) fn day(&self) -> Day {
        self.picture.day
    }

    /// What a sowing will come to, where that can be said.
    pub(super) fn told(&self, tray: &TrayPicture) -> Option<&TrayForecast> {
        self.outlook.trays.get(&tray.code)
    }

    pub(super) fn profile(&self, species: Option<&SpeciesKey>) -> Option<&'a Profile> {
        species.and_then(|key| self.picture.site.profile(key)).map(|profile| &**profile)
    }

    /// Trays in which plants stand or seed is due.
    pub(super) fn living_trays(&self) -> impl Iterator<Item = &'a TrayPicture> {
        let day = self.day();
        let all = self.picture.trays.values().map(|tray| &**tray);
        all.filter(move |tray| tray.stage != Stage::Spent && (tray.standing > 0 || tray.story.seed_is_due(day)))
    }

    /// Plants of a species still to be raised, as `why` reckons them: the places open in the beds less what the trays are expected to give;
    /// none where no bed plans it.
    pub(super) fn still_short(&self, species: Option<&SpeciesKey>) -> Option<f64> {
        let species = species?;
        let planned = self.picture.beds.values().flat_map(|bed| &bed.species).any(|line| line.species == *species);
        planned.then(|| {
            let coming = expected_of_trays(&self.outlook.stock, species).likely.max(0.0).floor();
            (f64::from(open_places(self.picture, species)) - coming).max(0.0)
        })
    }

    /// How many plants of a tray go out today: those for which the trays that can wait less leave room.
    pub(super) fn going_out(&self, tray: &TrayPicture) -> u32 {
        all_of(self.going.get(&tray.code).into_iter().flatten().map(|to| to.after_others))
    }

    pub(super) fn goes_out(&self, tray: &TrayPicture) -> bool {
        self.going_out(tray) > 0
    }

    /// Whether a tray stands in a seedbed: sown here in a container far smaller than its species needs.
    pub(super) fn in_seedbed(&self, tray: &TrayPicture) -> bool {
        let profile = self.profile(tray.species.as_ref());
        time::in_seedbed(&tray.story, profile, &self.picture.site, self.day())
    }

    /// Whether a tray's plants were raised or kept in such a way that size, roots and hardening are asked about.
    pub(super) fn grows_on(&self, tray: &TrayPicture) -> bool {
        tray.standing > 0 && !tray.story.is_bare() && !self.in_seedbed(tray)
    }

    /// Whether a person or a sickness holds a tray back today.
    pub(super) fn is_held(&self, tray: &TrayPicture) -> bool {
        let holds = |rule| asked(&tray.criteria, rule).is_some_and(|criterion| criterion.blocks);
        holds(Rule::Held) || holds(Rule::Treated)
    }

    /// The day a tray is ready, or is expected to be: today where it is, the reckoned day, else the species' least days.
    pub(super) fn comes_ready(&self, tray: &TrayPicture) -> Option<Day> {
        let day = self.day();
        if tray.standing == 0 || tray.stage == Stage::Spent {
            return None;
        }
        if tray.ready {
            return Some(day);
        }
        let by_age = asked(&tray.criteria, Rule::DaysSinceSowing).and_then(|criterion| criterion.expected);
        self.picture.goes_from(tray).or(by_age.filter(|on| *on > day)).map(|on| on.max(day))
    }

    /// The day a tray is old enough by its species' least days, where its age is known.
    pub(super) fn old_enough_on(&self, tray: &TrayPicture) -> Option<Day> {
        let least = time::day_span(self.profile(tray.species.as_ref()))?.least;
        time::age(&tray.story, self.day()).youngest_on.map(|on| on.plus(least))
    }

    /// The day a tray came into the book.
    pub(super) fn began_on(&self, tray: &TrayPicture) -> Day {
        let sown = tray.story.sowings.first().map(|sowing| sowing.day);
        sown.or(tray.story.made_on).unwrap_or(self.day())
    }

    pub(super) fn site_stop(&self, task: Task, why: RoundReason) -> Stop {
        let order = WalkOrder { leg: LEG_GAUGE, number: 0, name: String::new(), bed: String::new() };
        blank(task, task.to_string(), Subject::Site, Where::Nowhere, order, why)
    }

    pub(super) fn tray_stop(&self, tray: &TrayPicture, task: Task, why: RoundReason) -> Stop {
        let (at, order, place_sign) = self.place_of(tray.place.as_ref());
        let id = format!("{task} {}", tray.code);
        let mut stop = blank(task, id, Subject::Tray(tray.code.clone()), at, order, why);
        stop.tray_sign = tray.story.sign.clone();
        stop.place_sign = place_sign;
        if self.is_sick(tray) { stop.last_of_all() } else { stop }
    }

    /// Whether plants are sick, or a person keeps them apart because they may be.
    pub(super) fn is_sick(&self, tray: &TrayPicture) -> bool {
        let places = &self.picture.places;
        let at_place = tray.place.as_ref().and_then(|place| places.get(place)).into_iter();
        let at_place = at_place.flat_map(|place| place.held.iter());
        let held = tray.story.holds().chain(at_place);
        let mut in_force = held.filter(|held| held.what.1.is_none_or(|until| self.day() <= until));
        in_force.any(|held| keeps_apart(&held.what.0))
            || pest::open_in_tray(&tray.story, self.picture.around(), self.day())
                .iter()
                .any(|pest| !pest.nature.takes_leaves)
    }

    /// Whether a clean tray may be carried to a place: no waiting time keeps hands out, nothing lies in its ground, and it gets no sickness
    /// there.
    pub(super) fn may_come_to(&self, place: &PlaceName, tray: &TrayPicture) -> bool {
        let mut sick = self.picture.sick.get(place).into_iter().flatten();
        let gets_it = sick.any(|spell| pest::beside::may_have(&tray.story, spell, self.day()));
        // What lies in the ground of a bench is taken up by roots.
        let day = self.day();
        let mut used = self.picture.places.get(place).into_iter().flat_map(|place| place.treatments.iter());
        let lies = used.any(|one| one.day <= day && one.lies_in_ground_on(day));
        !gets_it && !lies && !self.picture.closed.contains_key(place)
    }

    pub(super) fn place_stop(&self, place: &PlaceName, task: Task, why: RoundReason) -> Stop {
        let (at, order, place_sign) = self.place_of(Some(place));
        let mut stop = blank(task, format!("{task} {place}"), Subject::Place(place.clone()), at, order, why);
        stop.place_sign = place_sign;
        stop
    }

    fn place_of(&self, place: Option<&PlaceName>) -> (Where, WalkOrder, Option<String>) {
        let Some(place) = place else {
            let order = WalkOrder { leg: LEG_NO_PLACE, number: 0, name: String::new(), bed: String::new() };
            return (Where::Nowhere, order, None);
        };
        let described = self.picture.site.places.get(place).and_then(|place| place.on(self.day()));
        let came = self.places_in_order.get(place);
        let not_described = || came.map_or(u32::MAX, |came| NOT_DESCRIBED_FROM.saturating_add(*came));
        let number = described.map_or_else(not_described, |set| set.order.0);
        let order = WalkOrder { leg: LEG_PLACES, number, name: place.to_string(), bed: String::new() };
        let sign = described.and_then(|set| set.sign.as_ref()).map(|sign| sign.0.to_string());
        (Where::Place(place.clone()), order, sign)
    }

    pub(super) fn bed_stop(&self, bed: &BedPicture, task: Task, why: RoundReason) -> Stop {
        let order = WalkOrder { leg: LEG_BEDS, number: 0, name: bed.field.to_string(), bed: bed.name.to_string() };
        let id = format!("{task} {}", bed.name);
        let stop = blank(task, id, Subject::Bed(bed.name.clone()), Where::Bed(bed.name.clone()), order, why);
        // Hands, hoes and boots carry its soil on, whether it holds the bed back or asks for care.
        let stays = |found: &sick::InBed| found.holds || found.pest.seen.lacks.is_some();
        let is_sick = sick::worst_of_bed(&bed.story, self.picture.around(), self.day()).as_ref().is_some_and(stays);
        if is_sick { stop.last_of_all() } else { stop }
    }

    pub(super) fn lot_stop(&self, lot: &LotCode, task: Task, why: RoundReason) -> Stop {
        let order = WalkOrder { leg: LEG_SEED, number: 0, name: lot.to_string(), bed: String::new() };
        blank(task, format!("{task} {lot}"), Subject::Lot(lot.clone()), Where::SeedStore, order, why)
    }

    /// Every bed with each species of its plan that has room.
    pub(super) fn open_lines(&self, species: &SpeciesKey) -> impl Iterator<Item = (&'a BedPicture, &'a BedSpecies)> {
        let species = species.clone();
        self.picture.beds.values().flat_map(move |bed| {
            let lines = bed.species.iter().filter(|line| line.open_positions > 0);
            lines.filter(|line| line.species == species).map(|line| (&**bed, line)).collect::<Vec<_>>()
        })
    }
}

fn blank(task: Task, id: String, subject: Subject, at: Where, order: WalkOrder, why: RoundReason) -> Stop {
    Stop {
        id,
        task,
        subject,
        at,
        order,
        why,
        due: None,
        until: None,
        until_for: None,
        at_stake: AtStake { what: Stake::Knowledge, plants: 0.0, most: None, within_days: NO_LAST_DAY_DAYS },
        minutes: 0.0,
        work_minutes: None,
        marked: false,
        tray_sign: None,
        place_sign: None,
        last: None,
        expect: None,
        at_sick: false,
        after_wait: None,
        entries: Vec::new(),
        source: Source::default(),
    }
}

impl Stop {
    /// The same at the end of the walk.
    fn last_of_all(mut self) -> Stop {
        self.order.leg = LEG_SICK;
        self.at_sick = true;
        self
    }

    pub(super) fn risking(mut self, what: Stake, plants: f64, within_days: i32) -> Stop {
        self.at_stake = AtStake { what, plants: plants.max(0.0), most: None, within_days: within_days.max(1) };
        self
    }

    pub(super) fn taking(mut self, minutes: f64, source: impl Into<Source>) -> Stop {
        self.minutes = minutes;
        self.source = source.into();
        self
    }
}
