//! What describes the site, as it stands on each day: the first description reaches back, each later one leads from its
//! own day.

use serde::{Deserialize, Serialize};

use std::collections::BTreeMap;
use std::sync::Arc;

use super::impossible::{doubts_of, lowest_above};
use super::ledger::Ledger;
use super::picture::{Doubt, DoubtKind};
use crate::base::text::folded;
use crate::base::{ContainerName, Day, EntryId, FieldName, PlaceName, SpeciesKey};
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::{
    BookEntry, ContainerSet, Entry, FieldSet, NurserySet, PlaceSet, SeasonSet, SiteEntry, TrayEntry, Weather, What,
};
use crate::nursery::species::{Catalogue, Profile};

/// Lines of the gauge older than this are left out, days: the rain before the oldest look at the soil that counts is the last that
/// a verdict asks for. Ours.
const WEATHER_KEPT_DAYS: i32 = 732;

/// The first day of which the gauge is looked at on a day.
pub(crate) fn weather_from(day: Day) -> Day {
    day.plus(-WEATHER_KEPT_DAYS)
}

/// Something described again and again, newest last.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Described<T> {
    all: Vec<(Day, EntryId, T)>,
}

impl<T> Default for Described<T> {
    fn default() -> Self {
        Described { all: Vec::new() }
    }
}

impl<T> Described<T> {
    /// Adds a description; days come in order.
    pub fn add(&mut self, day: Day, entry: EntryId, what: T) {
        self.all.push((day, entry, what));
    }

    /// The description that holds on a day: the last one by then, else the first of all.
    pub fn on(&self, day: Day) -> Option<&T> {
        self.entry_on(day).map(|(_, what)| what)
    }

    /// The same with the entry it stands in.
    pub(crate) fn entry_on(&self, day: Day) -> Option<(&EntryId, &T)> {
        let by_then = self.all.iter().rev().find(|(from, _, _)| *from <= day);
        by_then.or_else(|| self.all.first()).map(|(_, entry, what)| (entry, what))
    }

    /// Every description with its day and entry, oldest first.
    pub fn each(&self) -> impl Iterator<Item = &(Day, EntryId, T)> {
        self.all.iter()
    }
}

/// A due task that a person said will not be done.
#[derive(Clone, PartialEq, Debug)]
pub struct GivenUp {
    /// The task's name as it stands on the round.
    pub task: String,
    /// The day it was said.
    pub from: Day,
    /// The last day it holds; none where it holds for good.
    pub until: Option<Day>,
    /// The entry.
    pub entry: EntryId,
}

impl GivenUp {
    /// Whether it holds on a day for the task of a name; blanks, hyphens, underscores, case and accents do not count.
    pub fn holds(&self, task: &str, day: Day) -> bool {
        let in_force = self.from <= day && self.until.is_none_or(|until| day <= until);
        in_force && folded(&self.task) == folded(task)
    }
}

/// What describes the site.
#[derive(Clone, Debug, Default)]
pub struct Site {
    /// The place.
    pub nursery: Described<NurserySet>,
    /// Usual rains and normals.
    pub season: Described<SeasonSet>,
    /// Benches and frames.
    pub places: BTreeMap<PlaceName, Described<PlaceSet>>,
    /// Kinds of container.
    pub containers: BTreeMap<ContainerName, Described<ContainerSet>>,
    /// Pieces of land.
    pub fields: BTreeMap<FieldName, Described<FieldSet>>,
    /// The gauge, one line a day, with the entry it stands in.
    pub weather: BTreeMap<Day, (EntryId, Weather)>,
    /// Species in force on the day looked at.
    pub species: Arc<Catalogue>,
    /// Due tasks that will not be done, oldest first.
    pub given_up: Vec<GivenUp>,
    /// What could not be read.
    pub doubts: Vec<Doubt>,
}

impl Site {
    /// The site of a ledger.
    pub fn of(ledger: &Ledger) -> Site {
        let mut site = Site { species: Arc::new(Catalogue::built_in()), ..Site::default() };
        let mut own: BTreeMap<SpeciesKey, Described<Profile>> = BTreeMap::new();
        let weather_from = weather_from(ledger.view().day);
        for entry in ledger.of(&Subject::Site) {
            let old = matches!(entry.what, What::Book(BookEntry::Weather(_))) && entry.happened < weather_from;
            if !old {
                site.take(entry, &mut own);
            }
        }
        let places = ledger.subjects().filter_map(|subject| match subject {
            Subject::Place(name) => Some(name.clone()),
            Subject::Tray(_) | Subject::Lot(_) | Subject::Bed(_) | Subject::Site => None,
        });
        for name in places {
            site.doubts.extend(doubts_of(ledger, &Subject::Place(name.clone())));
            for entry in ledger.of(&Subject::Place(name.clone())) {
                if let What::Site(SiteEntry::PlaceSet(place)) = &entry.what {
                    site.places.entry(name.clone()).or_default().add(
                        entry.happened,
                        entry.id.clone(),
                        PlaceSet::clone(place),
                    );
                }
            }
        }
        site.doubts.extend(doubts_of(ledger, &Subject::Site));
        site.lay_over(own, ledger.view().day);
        site
    }

    fn take(&mut self, entry: &Arc<Entry>, own: &mut BTreeMap<SpeciesKey, Described<Profile>>) {
        let (day, id) = (entry.happened, entry.id.clone());
        match &entry.what {
            What::Site(SiteEntry::NurserySet(nursery)) => self.nursery.add(day, id, NurserySet::clone(nursery)),
            What::Site(SiteEntry::SeasonSet(season)) => self.season.add(day, id, SeasonSet::clone(season)),
            What::Site(SiteEntry::SpeciesSet(set)) => {
                // Each entry lays its figures over what was in force before it.
                let mut so_far = (*self.species).clone();
                for described in own.values() {
                    if let Some(profile) = described.each().last().map(|(_, _, profile)| profile) {
                        so_far.insert(profile.clone());
                    }
                }
                match so_far.with_stored(&set.species, &set.profile.0, "this nursery") {
                    Ok((key, profile)) => own.entry(key).or_default().add(day, id, profile),
                    Err(what) => self.doubts.push(Doubt {
                        day,
                        kind: DoubtKind::BadProfile { species: set.species.clone(), what },
                        entries: vec![id],
                    }),
                }
            }
            What::Site(SiteEntry::ContainerSet(set)) => {
                self.containers.entry(set.container.clone()).or_default().add(day, id, ContainerSet::clone(set));
            }
            What::Site(SiteEntry::FieldSet(set)) => {
                self.fields.entry(set.field.clone()).or_default().add(day, id, FieldSet::clone(set));
            }
            What::Book(BookEntry::Weather(weather)) => self.take_weather(day, id, weather),
            What::Tray(TrayEntry::LetGo(gone)) => {
                let until = if gone.never == Some(true) { None } else { gone.until };
                self.given_up.push(GivenUp { task: gone.task.0.to_string(), from: day, until, entry: id });
            }
            What::Site(SiteEntry::PlaceSet(_) | SiteEntry::BedSet(_) | SiteEntry::PositionsBlocked(_))
            | What::Seed(_)
            | What::Tray(_)
            | What::Ground(_)
            | What::Book(BookEntry::Noted(_) | BookEntry::Settled(_) | BookEntry::Withdrawn(_))
            | What::Foreign { .. } => {}
        }
    }

    /// A later line for the same day replaces what it names and leaves the rest.
    fn take_weather(&mut self, day: Day, id: EntryId, weather: &Weather) {
        let earlier = self.weather.get(&day).map(|(_, earlier)| earlier.clone());
        let merged = earlier.map_or_else(
            || weather.clone(),
            |earlier| Weather {
                rain_mm: weather.rain_mm.or(earlier.rain_mm),
                tmin_c: weather.tmin_c.or(earlier.tmin_c),
                tmax_c: weather.tmax_c.or(earlier.tmax_c),
            },
        );
        if let Some(why) = lowest_above(merged.tmin_c, merged.tmax_c) {
            let known = self.weather.get(&day).map(|(earlier, _)| earlier.clone());
            let entries = [id.clone()].into_iter().chain(known).collect();
            self.doubts.push(Doubt { day, kind: DoubtKind::CannotBe(why), entries });
        }
        self.weather.insert(day, (id, merged));
    }

    /// Before the first `species_set` of a species the built-in profile holds (for a new species its first entry reaches
    /// back); from its day on the nursery's own.
    fn lay_over(&mut self, own: BTreeMap<SpeciesKey, Described<Profile>>, day: Day) {
        if own.is_empty() {
            return;
        }
        let mut catalogue = (*self.species).clone();
        for (key, described) in own {
            let by_then = described.each().rev_find(day);
            let built_in = catalogue.get(&key).is_some();
            let holds = if built_in { by_then } else { described.on(day) };
            if let Some(profile) = holds {
                catalogue.insert(profile.clone());
            }
        }
        self.species = Arc::new(catalogue);
    }

    /// The key of a species however it was written.
    pub(crate) fn species_key(&self, written: &SpeciesKey) -> Option<SpeciesKey> {
        if self.species.get(written).is_some() {
            return Some(written.clone());
        }
        self.species.find(written.as_str())
    }

    /// The profile of a species however it was written.
    pub fn profile(&self, written: &SpeciesKey) -> Option<&Arc<Profile>> {
        self.species_key(written).and_then(|key| self.species.get(&key))
    }
}

trait LatestBy<'a, T: 'a> {
    fn rev_find(self, day: Day) -> Option<&'a T>;
}

impl<'a, T: 'a, I: Iterator<Item = &'a (Day, EntryId, T)>> LatestBy<'a, T> for I {
    fn rev_find(self, day: Day) -> Option<&'a T> {
        self.filter(|(from, _, _)| *from <= day).last().map(|(_, _, what)| what)
    }
}
