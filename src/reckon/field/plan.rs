//! Which position of a bed holds what, as far as it was written down. Where only a number is known, the number is given
//! and no position is made up.

use std::collections::{BTreeMap, BTreeSet};

use super::rows::rows_recorded;
use crate::base::{Day, SpeciesKey};
use crate::nursery::entry::types::PlantingPattern;
use crate::reckon::bed::positions::{lines, positions_of};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, CohortStory};
use crate::science::spacing::Position;

/// What a position holds.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum SpotState {
    /// A living plant stands there.
    Living,
    /// A plant was set there and died.
    Dead,
    /// Nothing stands there: one can be set.
    Open,
    /// A rock or a stump.
    Blocked,
    /// A plant or a gap: which one was not written.
    Unsaid,
}

/// A position.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Spot {
    /// Its row, from 1.
    pub row: u32,
    /// Its place in the row, from 1.
    pub place: u32,
    /// Metres along the bed.
    pub x_m: f64,
    /// Metres across the bed.
    pub y_m: f64,
    /// What it holds.
    pub state: SpotState,
}

/// Living plants of which only the number is known.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Unsaid {
    /// In these rows; none where it is anywhere in the bed.
    pub rows: Option<BTreeSet<u32>>,
    /// How many live.
    pub living: u32,
    /// The positions they can stand at.
    pub places: u32,
}

/// The positions of one species.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct SpeciesPlan {
    /// The species.
    pub species: SpeciesKey,
    /// Distance between rows, m.
    pub row_m: f64,
    /// Distance in the row, m.
    pub in_row_m: f64,
    /// How they stand to each other.
    pub pattern: PlantingPattern,
    /// The positions, row by row.
    pub spots: Vec<Spot>,
    /// Living plants of which only the number is known.
    pub unsaid: Vec<Unsaid>,
}

impl SpeciesPlan {
    /// How many positions are in a state.
    pub fn count(&self, state: SpotState) -> u32 {
        self.spots.iter().filter(|spot| spot.state == state).count() as u32
    }
}

/// The plan of a species in a bed on a day; none where the layout has no line for it. Of several lines of one species the
/// first is drawn; a plan that repeats a species is rare, and its other lines count as elsewhere.
pub(crate) fn species_plan(story: &BedStory, site: &Site, day: Day, species: &SpeciesKey) -> Option<SpeciesPlan> {
    let layout = story.layout.on(day)?;
    let line = lines(site, layout, species).next()?;
    let mut grid = Grid::of(positions_of(story, site, layout, species)?);
    let cohorts = || story.cohorts.iter().filter(|cohort| cohort.species.as_ref() == Some(species));
    let anywhere = grid.place(cohorts());
    let nurses = story.nurses.iter().filter(|nurse| nurse.nurse == *species).map(|nurse| nurse.alive);
    let unsaid = grid.settle(nurses.fold(anywhere, u32::saturating_add));
    Some(SpeciesPlan {
        species: species.clone(),
        row_m: line.row_m.0,
        in_row_m: line.in_row_m.0,
        pattern: line.pattern,
        spots: grid.spots.into_values().collect(),
        unsaid,
    })
}

/// Plants that stand somewhere at some places.
#[derive(Default)]
struct Stretch {
    rows: BTreeSet<u32>,
    places: BTreeSet<(u32, u32)>,
    living: u32,
}

struct Grid {
    spots: BTreeMap<(u32, u32), Spot>,
    stretches: Vec<Stretch>,
}

impl Grid {
    fn of(positions: Vec<(Position, bool)>) -> Grid {
        let spots = positions.into_iter().map(|(position, blocked)| {
            let state = if blocked { SpotState::Blocked } else { SpotState::Open };
            let spot = Spot { row: position.row, place: position.place, x_m: position.x_m, y_m: position.y_m, state };
            ((position.row, position.place), spot)
        });
        Grid { spots: spots.collect(), stretches: Vec::new() }
    }

    /// Puts each cohort where its entry says; the answer is how many living plants have no place or row written.
    fn place<'a>(&mut self, cohorts: impl Iterator<Item = &'a CohortStory>) -> u32 {
        let mut anywhere = 0u32;
        for cohort in cohorts {
            let at: BTreeSet<(u32, u32)> =
                cohort.spots.iter().filter(|at| self.spots.contains_key(at)).copied().collect();
            // A place for each plant: the entry says where every one stands.
            if !at.is_empty() && at.len() as u32 == cohort.planted {
                self.stand_at(at, cohort);
                continue;
            }
            let mut rows: BTreeSet<u32> = at.iter().map(|(row, _)| *row).collect();
            rows.extend(cohort.rows.as_deref().and_then(rows_recorded).unwrap_or_default());
            let places: BTreeSet<(u32, u32)> =
                self.spots.keys().filter(|(row, _)| rows.contains(row)).copied().collect();
            if places.is_empty() {
                anywhere = anywhere.saturating_add(cohort.living);
            } else {
                let rows = places.iter().map(|(row, _)| *row).collect();
                self.stretches.push(Stretch { rows, places, living: cohort.living });
            }
        }
        anywhere
    }

    fn stand_at(&mut self, at: BTreeSet<(u32, u32)>, cohort: &CohortStory) {
        let state = if cohort.dead == 0 {
            SpotState::Living
        } else if cohort.living == 0 {
            SpotState::Dead
        } else {
            SpotState::Unsaid
        };
        self.mark(at.iter().copied(), state);
        if state == SpotState::Unsaid {
            let rows = at.iter().map(|(row, _)| *row).collect();
            self.stretches.push(Stretch { rows, places: at, living: cohort.living });
        }
    }

    /// Says of every position that no entry names what can be said: all of a stretch living, all open, or only how many.
    fn settle(&mut self, anywhere: u32) -> Vec<Unsaid> {
        let mut unsaid = Vec::new();
        for stretch in joined(std::mem::take(&mut self.stretches)) {
            let free: Vec<(u32, u32)> = self.maybe_free().filter(|at| stretch.places.contains(at)).collect();
            if stretch.living >= free.len() as u32 {
                self.mark(free, SpotState::Living);
            } else if stretch.living > 0 {
                let places = free.len() as u32;
                self.mark(free, SpotState::Unsaid);
                unsaid.push(Unsaid { rows: Some(stretch.rows), living: stretch.living, places });
            }
        }
        if anywhere == 0 {
            return unsaid;
        }
        // What stands anywhere can stand wherever nothing is known to live.
        let held = unsaid.iter().map(|one| one.living).fold(0, u32::saturating_add);
        let everywhere: Vec<(u32, u32)> = self.maybe_free().collect();
        let (living, places) = (anywhere.saturating_add(held), everywhere.len() as u32);
        if living >= places {
            self.mark(everywhere, SpotState::Living);
            return Vec::new();
        }
        self.mark(everywhere, SpotState::Unsaid);
        unsaid.push(Unsaid { rows: None, living: anywhere, places: places.saturating_sub(held) });
        unsaid
    }

    fn maybe_free(&self) -> impl Iterator<Item = (u32, u32)> + '_ {
        self.spots.iter().filter(|(_, spot)| spot.state.may_be_empty()).map(|(at, _)| *at)
    }

    fn mark(&mut self, at: impl IntoIterator<Item = (u32, u32)>, state: SpotState) {
        for place in at {
            if let Some(spot) = self.spots.get_mut(&place) {
                spot.state = state;
            }
        }
    }
}

impl SpotState {
    fn may_be_empty(self) -> bool {
        match self {
            SpotState::Open | SpotState::Unsaid | SpotState::Dead => true,
            SpotState::Living | SpotState::Blocked => false,
        }
    }
}

/// Stretches that share a place are one.
fn joined(all: Vec<Stretch>) -> Vec<Stretch> {
    let mut joined: Vec<Stretch> = Vec::new();
    for mut stretch in all {
        let (touching, apart): (Vec<Stretch>, Vec<Stretch>) =
            joined.into_iter().partition(|other| !other.places.is_disjoint(&stretch.places));
        for other in touching {
            stretch.rows.extend(other.rows);
            stretch.places.extend(other.places);
            stretch.living = stretch.living.saturating_add(other.living);
        }
        joined = apart;
        joined.push(stretch);
    }
    joined.sort_by(|a, b| a.rows.cmp(&b.rows));
    joined
}
