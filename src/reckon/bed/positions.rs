//! Where plants can stand in a bed, and where there is still room.

use std::cmp::Ordering;
use std::collections::{BTreeMap, BTreeSet};

use crate::base::{EntryId, SpeciesKey};
use crate::nursery::entry::types::{BedEdges, PlantingPattern};
use crate::nursery::entry::{BedSet, PlanLine};
use crate::reckon::field::{rows_asked, rows_recorded};
use crate::reckon::picture::quantity::{PlantsAtLeast, Positions};
use crate::reckon::picture::{Basis, Criterion, PartSeen, Question, RuleSource};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, BlockedSpot, PartOfBed};
use crate::science::spacing::{self, Edges, Laying, Position, SpacingPattern};

/// Both edges of a bed are counted, or none; a spot that species share is one.
const SOURCE: RuleSource = RuleSource::Positions;

/// How far a blocked spot reaches in the grid of another species, in its distances in the row. Ours: of two neighbours at
/// least one stands clear.
pub(crate) const BLOCKS_WITHIN: f64 = 0.5;
/// Metres by which a position may seem to be farther away because 2.4 / 2 is not exact in a computer.
const FUZZ_M: f64 = 1e-9;

/// The room of a bed for a species.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Room {
    /// Positions of the species' grid that are its own.
    pub positions: u32,
    /// Positions of it where a rock or a stump lets nothing stand.
    pub blocked: u32,
    /// Living plants of the species by the books.
    pub living: u32,
    /// Positions where one can still be set.
    pub open: u32,
}

/// The whole grid of one line of a plan, whatever other species stand on it. A grid that cannot be reckoned (more positions
/// than any bed has) is empty.
pub fn grid(bed: &BedSet, line: &PlanLine) -> Vec<Position> {
    let edges = match bed.edges {
        Some(BedEdges::Half) => Edges::Half,
        Some(BedEdges::Counted) | None => Edges::Counted,
    };
    let pattern = match line.pattern {
        PlantingPattern::Square => SpacingPattern::Square,
        PlantingPattern::Rectangle => SpacingPattern::Rectangle,
        PlantingPattern::Triangle => SpacingPattern::Triangle,
        PlantingPattern::Quincunx => SpacingPattern::Quincunx,
        PlantingPattern::DoubleRow => SpacingPattern::DoubleRow,
    };
    let offset_m = line.offset_m.map_or(0.0, |offset| offset.0);
    let laying = Laying {
        gap_m: line.gap_m.map(|gap| gap.0),
        edges,
        offset_m,
        // One offset alone moves rows and places.
        row_offset_m: line.row_offset_m.map_or(offset_m, |offset| offset.0),
        ..Laying::new(pattern, Some(line.row_m.0), line.in_row_m.0)
    };
    spacing::positions(bed.length_m.0, bed.width_m.0, &laying).unwrap_or_default()
}

/// What of its grid a line of a plan is to have: its rows, its share.
fn asked_of_grid(bed: &BedSet, line: &PlanLine) -> Vec<Position> {
    let mut all = grid(bed, line);
    if let Some(rows) = line.rows.as_ref().and_then(|rows| rows_asked(&rows.0)) {
        all.retain(|position| rows.has(position.row));
    }
    if let Some(share) = line.share {
        // Evenly: of each run of places as many as the share of it, whole plants at last.
        let upto = |count: usize| (count as f64 * share.0 + FUZZ_M).floor();
        let mut at = 0;
        all.retain(|_| {
            at += 1;
            upto(at) > upto(at - 1)
        });
    }
    all
}

/// For each line of a plan the positions that are its own. A spot nearer to another's than half the smaller distance in the
/// row is one spot: the wider spaced species has it, unless the other keeps its spots; of two alike the first in the plan.
pub(crate) fn own_positions(bed: &BedSet) -> Vec<Vec<Position>> {
    let asked: Vec<Vec<Position>> = bed.plan.iter().map(|line| asked_of_grid(bed, line)).collect();
    let ground_m2 = |line: &PlanLine| line.row_m.0 * line.in_row_m.0;
    // Who has the spot where two meet: who keeps it, then the wider, then the first.
    let mut order: Vec<usize> = (0..bed.plan.len()).collect();
    let rank = |at: &usize| bed.plan.get(*at).map(|line| (line.keeps_spot != Some(true), -ground_m2(line)));
    order.sort_by(|a, b| rank(a).partial_cmp(&rank(b)).unwrap_or(Ordering::Equal));
    let mut own: Vec<Vec<Position>> = vec![Vec::new(); asked.len()];
    let mut taken: Vec<(f64, Taken)> = Vec::new();
    for at in order {
        let (Some(line), Some(positions)) = (bed.plan.get(at), asked.get(at)) else { continue };
        let is_free = |position: &&Position| {
            taken.iter().all(|(in_row_m, taken)| !taken.is_near(position, line.in_row_m.0.min(*in_row_m) / 2.0))
        };
        let free: Vec<Position> = positions.iter().filter(is_free).copied().collect();
        taken.push((line.in_row_m.0, Taken::of(&free, line.in_row_m.0)));
        if let Some(own) = own.get_mut(at) {
            *own = free;
        }
    }
    own
}

/// Spots that are taken, by squares of a side, so that one is compared with those around it alone.
struct Taken {
    side_m: f64,
    squares: BTreeMap<(i64, i64), Vec<(f64, f64)>>,
}

impl Taken {
    fn of(positions: &[Position], side_m: f64) -> Taken {
        let mut taken = Taken { side_m, squares: BTreeMap::new() };
        for position in positions {
            let square = taken.square(position.x_m, position.y_m);
            taken.squares.entry(square).or_default().push((position.x_m, position.y_m));
        }
        taken
    }

    fn square(&self, x_m: f64, y_m: f64) -> (i64, i64) {
        ((x_m / self.side_m).floor() as i64, (y_m / self.side_m).floor() as i64)
    }

    /// Whether one stands nearer than `within_m`, which is no more than half a side.
    fn is_near(&self, position: &Position, within_m: f64) -> bool {
        let (x, y) = self.square(position.x_m, position.y_m);
        let around = (-1..=1).flat_map(|dx| (-1..=1).map(move |dy| (x + dx, y + dy)));
        let mut near = around.filter_map(|square| self.squares.get(&square)).flatten();
        near.any(|(x_m, y_m)| (position.x_m - x_m).hypot(position.y_m - y_m) < within_m - FUZZ_M)
    }
}

/// The species of a plan in plan order, each once, by key where known.
pub fn planned(site: &Site, bed: &BedSet) -> Vec<SpeciesKey> {
    let mut species: Vec<SpeciesKey> = Vec::new();
    for line in &bed.plan {
        let key = site.species_key(&line.species).unwrap_or_else(|| line.species.clone());
        if !species.contains(&key) {
            species.push(key);
        }
    }
    species
}

/// A blocked spot on the ground.
struct Rock<'a> {
    /// The layout and line whose grid the spot was read in, and its number there.
    read_in: (&'a BedSet, &'a PlanLine),
    at: Position,
}

impl Rock<'_> {
    /// Whether nothing can stand at a position of a line. In the grid it was read in it blocks its own spot alone; in
    /// another one every position within half the distance in the row.
    fn blocks(&self, bed: &BedSet, line: &PlanLine, position: &Position) -> bool {
        let (read_bed, read_line) = self.read_in;
        let sizes = |bed: &BedSet| (bed.length_m.0, bed.width_m.0);
        if read_line == line && sizes(read_bed) == sizes(bed) {
            return (position.row, position.place) == (self.at.row, self.at.place);
        }
        let away_m = (position.x_m - self.at.x_m).hypot(position.y_m - self.at.y_m);
        away_m <= line.in_row_m.0 * BLOCKS_WITHIN + FUZZ_M
    }
}

/// Where the blocked spots lie on the ground: as numbered in the layout of the day they were written for, in the grid of
/// its first line, or the first that has such a number. A number that no grid has blocks nothing.
fn rocks(story: &BedStory) -> Vec<Rock<'_>> {
    let lie = |blocked: &BlockedSpot| {
        let layout = story.layout.on(blocked.day)?;
        layout.plan.iter().find_map(|line| {
            let grid = grid(layout, line);
            let at = grid.into_iter().find(|position| (position.row, position.place) == blocked.spot)?;
            Some(Rock { read_in: (layout, line), at })
        })
    };
    story.blocked.iter().filter_map(lie).collect()
}

/// The room of a bed for a species. Rows of nurse plants that no plan names take no position of another species' grid.
pub fn room(story: &BedStory, site: &Site, bed: &BedSet, species: &SpeciesKey) -> Room {
    let rocks = rocks(story);
    let own = own_positions(bed);
    let (mut positions, mut blocked, mut held) = (0u32, 0u32, 0u32);
    for (line, own_of_line) in bed.plan.iter().zip(&own) {
        if is_of(site, line, species) {
            let hit = own_of_line.iter().filter(|position| rocks.iter().any(|rock| rock.blocks(bed, line, position)));
            blocked = blocked.saturating_add(hit.count() as u32);
            positions = positions.saturating_add(own_of_line.len() as u32);
        }
    }
    // Plants of a species of which more live than it has spots of its own stand on spots that it shared before.
    for other in planned(site, bed).iter().filter(|other| *other != species) {
        let lines = || bed.plan.iter().zip(&own).filter(|(line, _)| is_of(site, line, other));
        let (whole, left) = lines().fold((0, 0), |(whole, left), (line, own)| {
            (whole + asked_of_grid(bed, line).len() as u32, left + own.len() as u32)
        });
        held = held.saturating_add(story.living_of(other).saturating_sub(left).min(whole.saturating_sub(left)));
    }
    let living = story.living_of(species);
    let open = positions.saturating_sub(blocked).saturating_sub(living).saturating_sub(held);
    Room { positions, blocked, living, open }
}

/// The room where ground work was done in parts of a bed only: no more is open than the places have in which all of it was done, less what
/// lives there. Rows that nobody can read are taken for all, but where they are numbers.
pub(super) fn within(
    room: Room,
    story: &BedStory,
    site: &Site,
    (bed, species): (&BedSet, &SpeciesKey),
    parts: &[Vec<&PartOfBed>],
) -> Room {
    let Some(positions) = parts.first().and_then(|_| positions_of(story, site, bed, species)) else { return room };
    let in_rows = |rows: &str, row: u32| match rows_recorded(rows) {
        Some(rows) => rows.contains(&row),
        None => !rows.chars().any(|letter| letter.is_ascii_digit()),
    };
    let is_in = |part: &PartOfBed, spot: (u32, u32)| {
        part.spots.contains(&spot) || part.rows.as_ref().is_some_and(|rows| in_rows(rows, spot.0))
    };
    let ready: Vec<(u32, u32)> = positions
        .iter()
        .filter(|(_, hit)| !hit)
        .map(|(position, _)| (position.row, position.place))
        .filter(|spot| parts.iter().all(|kind| kind.iter().any(|part| is_in(part, *spot))))
        .collect();
    let living = story.cohorts.iter().filter(|cohort| cohort.species.as_ref() == Some(species) && cohort.living > 0);
    let taken = living.map(|cohort| {
        let there = |spot: &&(u32, u32)| {
            let in_row =
                cohort.rows.as_ref().and_then(|rows| rows_recorded(rows)).is_some_and(|rows| rows.contains(&spot.0));
            in_row || cohort.spots.contains(spot)
        };
        u32::try_from(ready.iter().filter(there).count()).unwrap_or(u32::MAX).min(cohort.living)
    });
    let taken = taken.fold(0, u32::saturating_add);
    let open = u32::try_from(ready.len()).unwrap_or(u32::MAX).saturating_sub(taken);
    Room { open: open.min(room.open), ..room }
}

/// Positions of the whole grids of a species, whatever else stands on them: so many can have been set out.
pub(crate) fn whole_grid(site: &Site, bed: &BedSet, species: &SpeciesKey) -> u32 {
    lines(site, bed, species).map(|line| grid(bed, line).len() as u32).fold(0, u32::saturating_add)
}

/// The positions of the first line of a plan that names a species, each with whether a rock or a stump lets nothing stand
/// there.
pub(crate) fn positions_of(
    story: &BedStory,
    site: &Site,
    bed: &BedSet,
    species: &SpeciesKey,
) -> Option<Vec<(Position, bool)>> {
    let rocks = rocks(story);
    let own = own_positions(bed);
    let (line, own) = bed.plan.iter().zip(own).find(|(line, _)| is_of(site, line, species))?;
    let hit = |position: &Position| rocks.iter().any(|rock| rock.blocks(bed, line, position));
    Some(own.into_iter().map(|position| (position, hit(&position))).collect())
}

/// How many living plants of a species stand off the grid of a layout: more than it has positions, or at places it does
/// not have. Blocked spots do not count: a plant may stand beside a stump.
pub(crate) fn off_the_grid(story: &BedStory, site: &Site, bed: &BedSet, species: &SpeciesKey) -> u32 {
    let places: BTreeSet<(u32, u32)> = lines(site, bed, species)
        .flat_map(|line| grid(bed, line))
        .map(|position| (position.row, position.place))
        .collect();
    let living = story.living_of(species);
    let beyond = living.saturating_sub(whole_grid(site, bed, species));
    let cohorts = story.cohorts.iter().filter(|cohort| cohort.species.as_ref() == Some(species));
    let off_spot = cohorts.map(|cohort| {
        let off = cohort.spots.iter().filter(|spot| !places.contains(spot)).count();
        u32::try_from(off).unwrap_or(u32::MAX).min(cohort.living)
    });
    beyond.max(off_spot.fold(0, u32::saturating_add)).min(living)
}

/// Rows of the grids of a species in a bed; none where its plan has none.
pub fn rows(site: &Site, bed: &BedSet, species: &SpeciesKey) -> Option<u32> {
    lines(site, bed, species).flat_map(|line| grid(bed, line)).map(|position| position.row).max()
}

/// What part of a bed was looked at, as a criterion shows it.
pub(super) fn part_seen(part: Option<&PartOfBed>, of_rows: Option<u32>) -> Option<PartSeen> {
    let part = part?;
    Some(PartSeen { rows: part.rows.clone(), places: u32::try_from(part.spots.len()).unwrap_or(u32::MAX), of_rows })
}

/// Whether there is room for one plant.
pub fn criterion(story: &BedStory, species: &SpeciesKey, room: Room, layout: Option<&EntryId>) -> Criterion {
    let (needed, known) = (PlantsAtLeast(1), Positions(room.open));
    let cohorts = story.cohorts.iter().filter(|cohort| cohort.species.as_ref() == Some(species) && cohort.living > 0);
    Criterion::found(Question::OpenPositions, needed, known, Basis::Reckoned, room.open > 0, SOURCE)
        .resting_on(layout.cloned())
        .resting_on(cohorts.map(|cohort| cohort.entry.clone()))
}

/// The lines of a plan that name a species.
pub fn lines<'a>(site: &'a Site, bed: &'a BedSet, species: &'a SpeciesKey) -> impl Iterator<Item = &'a PlanLine> {
    bed.plan.iter().filter(move |line| is_of(site, line, species))
}

fn is_of(site: &Site, line: &PlanLine, species: &SpeciesKey) -> bool {
    line.species == *species || site.species_key(&line.species).as_ref() == Some(species)
}
