//! Where plants can stand in a bed, and where there is still room.

use std::collections::BTreeSet;

use crate::base::{EntryId, SpeciesKey};
use crate::nursery::entry::types::PlantingPattern;
use crate::nursery::entry::{BedSet, PlanLine};
use crate::reckon::picture::quantity::{PlantsAtLeast, Positions};
use crate::reckon::picture::{Basis, Criterion, PartSeen, Question, RuleSource};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, BlockedSpot, PartOfBed};
use crate::science::spacing::{self, Position, SpacingPattern};

/// Both edges of a bed are counted; several species stand each on their own grid.
const SOURCE: RuleSource = RuleSource::Positions;

/// How far a blocked spot reaches in the grid of another species, in its distances in the row. Ours: of two neighbours at
/// least one stands clear.
pub(crate) const BLOCKS_WITHIN: f64 = 0.5;
/// Metres by which a position may seem to be farther away because 2.4 / 2 is not exact in a computer.
const FUZZ_M: f64 = 1e-9;

/// The room of a bed for a species.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Room {
    /// Positions of the species' grid.
    pub positions: u32,
    /// Positions of it where a rock or a stump lets nothing stand.
    pub blocked: u32,
    /// Living plants of the species by the books.
    pub living: u32,
    /// Positions where one can still be set.
    pub open: u32,
}

/// The grid of one line of a plan. A grid that cannot be reckoned (more positions than any bed has) is empty.
pub fn grid(bed: &BedSet, line: &PlanLine) -> Vec<Position> {
    let pattern = match line.pattern {
        PlantingPattern::Square => SpacingPattern::Square,
        PlantingPattern::Rectangle => SpacingPattern::Rectangle,
        PlantingPattern::Triangle => SpacingPattern::Triangle,
        PlantingPattern::Quincunx => SpacingPattern::Quincunx,
        PlantingPattern::DoubleRow => SpacingPattern::DoubleRow,
    };
    let (row_m, in_row_m) = (Some(line.row_m.0), line.in_row_m.0);
    let (offset_m, gap_m) = (line.offset_m.map(|offset| offset.0), line.gap_m.map(|gap| gap.0));
    spacing::positions(bed.length_m.0, bed.width_m.0, pattern, row_m, in_row_m, offset_m, gap_m).unwrap_or_default()
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

/// The room of a bed for a species. Nurse plants take no position of another species' grid.
pub fn room(story: &BedStory, site: &Site, bed: &BedSet, species: &SpeciesKey) -> Room {
    let rocks = rocks(story);
    let (mut positions, mut blocked) = (0u32, 0u32);
    for line in lines(site, bed, species) {
        let grid = grid(bed, line);
        let hit = grid.iter().filter(|position| rocks.iter().any(|rock| rock.blocks(bed, line, position))).count();
        positions = positions.saturating_add(grid.len() as u32);
        blocked = blocked.saturating_add(hit as u32);
    }
    let living = story.living_of(species);
    Room { positions, blocked, living, open: positions.saturating_sub(blocked).saturating_sub(living) }
}

/// The positions of one line of a plan, each with whether a rock or a stump lets nothing stand there.
pub(crate) fn positions_of(story: &BedStory, bed: &BedSet, line: &PlanLine) -> Vec<(Position, bool)> {
    let rocks = rocks(story);
    let hit = |position: &Position| rocks.iter().any(|rock| rock.blocks(bed, line, position));
    grid(bed, line).into_iter().map(|position| (position, hit(&position))).collect()
}

/// How many living plants of a species stand off the grid of a layout: more than it has positions, or at places it does
/// not have. Blocked spots do not count: a plant may stand beside a stump.
pub(crate) fn off_the_grid(story: &BedStory, site: &Site, bed: &BedSet, species: &SpeciesKey) -> u32 {
    let places: BTreeSet<(u32, u32)> = lines(site, bed, species)
        .flat_map(|line| grid(bed, line))
        .map(|position| (position.row, position.place))
        .collect();
    let living = story.living_of(species);
    let beyond = living.saturating_sub(room(story, site, bed, species).positions);
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
    let is_it =
        move |line: &&PlanLine| line.species == *species || site.species_key(&line.species).as_ref() == Some(species);
    bed.plan.iter().filter(is_it)
}
