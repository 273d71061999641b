//! The rows and places that an entry about a bed names: whether the bed has them.

use super::positions::grid;
use crate::base::SpeciesKey;
use crate::nursery::entry::types::{PlantingPattern, Size, Spot, Text};
use crate::nursery::entry::{BedSet, GroundEntry, NursePlanted, PlanLine};
use crate::reckon::field::unbracketed;
use crate::reckon::site::Site;
use crate::reckon::stock::BedStory;
use crate::science::spacing::Position;

/// A row or place that a bed does not have, and what it has.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct NotThere {
    /// As it was written.
    pub written: String,
    /// Rows of the bed.
    pub rows: u32,
    /// Places in its longest row.
    pub places: u32,
}

/// What an entry names in a bed.
pub struct Named<'a> {
    /// The species it speaks of; none where it speaks of the ground.
    pub species: Option<&'a SpeciesKey>,
    /// Whether that is a nurse plant, on a grid of its own.
    pub nurse: bool,
    /// Its rows.
    pub rows: Option<&'a Text>,
    /// Its places.
    pub at: Option<&'a [Spot]>,
}

/// What an entry names. `of_tray` is the species of the tray that went out.
pub fn named<'a>(what: &'a GroundEntry, of_tray: Option<&'a SpeciesKey>) -> Named<'a> {
    let all = |species: Option<&'a SpeciesKey>, nurse, rows: &'a Option<Text>, at: &'a Option<Vec<Spot>>| Named {
        species,
        nurse,
        rows: rows.as_ref(),
        at: at.as_deref(),
    };
    match what {
        GroundEntry::SownInBed(sown) => all(Some(&sown.species), false, &sown.rows, &sown.at),
        GroundEntry::PlantsFound(found) => all(Some(&found.species), false, &found.rows, &found.at),
        GroundEntry::PlantsLost(lost) => all(Some(&lost.species), false, &lost.rows, &lost.at),
        GroundEntry::SurvivalCounted(look) => all(Some(&look.species), false, &look.rows, &look.at),
        GroundEntry::Outplanted(out) => all(of_tray, false, &out.rows, &out.at),
        GroundEntry::NursePlanted(planted) => all(Some(&planted.nurse), true, &planted.rows, &planted.at),
        GroundEntry::NurseCounted(look) => all(Some(&look.nurse), true, &look.rows, &look.at),
        GroundEntry::NurseMeasured(look) => all(Some(&look.nurse), true, &look.rows, &look.at),
        GroundEntry::NurseCut(cut) => all(Some(&cut.nurse), true, &cut.rows, &cut.at),
        GroundEntry::LightRead(read) => all(None, false, &read.rows, &read.at),
        GroundEntry::SoilChecked(check) => all(None, false, &check.rows, &check.at),
        GroundEntry::PlantsWatered(_) => Named { species: None, nurse: false, rows: None, at: None },
        GroundEntry::Prepared(work) => all(None, false, &work.rows, &work.at),
    }
}

/// The grid of nurse plants as they are planted.
fn nurse_grid(layout: &BedSet, row_m: f64, in_row_m: f64, offset_m: Option<f64>) -> Vec<Position> {
    use crate::nursery::entry::types::NotNegative;
    let line = PlanLine {
        species: SpeciesKey::new("-"),
        pattern: PlantingPattern::Rectangle,
        row_m: Size(row_m),
        in_row_m: Size(in_row_m),
        offset_m: offset_m.map(NotNegative),
        row_offset_m: None,
        rows: None,
        share: None,
        keeps_spot: None,
        gap_m: None,
    };
    grid(layout, &line)
}

/// The first row or place named that no grid of the bed has which it can be of: that of the species, where the plan or a
/// planting tells it; for the ground any of them. `None` too where no grid is known.
pub(crate) fn not_there(
    story: &BedStory,
    site: &Site,
    layout: &BedSet,
    named: &Named<'_>,
    planting: Option<&NursePlanted>,
) -> Option<NotThere> {
    if named.rows.is_none() && named.at.is_none_or(<[Spot]>::is_empty) {
        return None;
    }
    let is = |written: &SpeciesKey| {
        let key = |species: &SpeciesKey| site.species_key(species).unwrap_or_else(|| species.clone());
        named.species.is_none_or(|wanted| key(wanted) == key(written))
    };
    let planned = layout.plan.iter().filter(|line| is(&line.species)).map(|line| grid(layout, line));
    let nurses = story.nurses.iter().filter(|nurse| is(&nurse.nurse) && (named.nurse || named.species.is_none()));
    let nurses = nurses.map(|nurse| nurse_grid(layout, nurse.row_m, nurse.in_row_m, nurse.offset_m));
    let now = planting.map(|p| nurse_grid(layout, p.row_m.0, p.in_row_m.0, p.offset_m.map(|offset| offset.0)));
    let all: Vec<Position> = planned.chain(nurses).chain(now).flatten().collect();
    let rows = all.iter().map(|position| position.row).max()?;
    let places = all.iter().map(|position| position.place).max()?;
    let lacking = |written: &str| NotThere { written: written.to_string(), rows, places };
    let has = |spot: &Spot| {
        crate::nursery::entry::shape::spot(&spot.0)
            .is_none_or(|spot| all.iter().any(|position| (position.row, position.place) == spot))
    };
    let spot = named.at.unwrap_or_default().iter().find(|spot| !has(spot)).map(|spot| lacking(&spot.0));
    spot.or_else(|| {
        let written = named.rows?;
        if names_no_row(&written.0) {
            return Some(lacking(&written.0));
        }
        let read = rows_read(&written.0)?;
        read.iter().any(|row| *row == 0 || *row > rows).then(|| lacking(&written.0))
    })
}

/// Whether a text for rows says nothing that a person would call rows.
fn names_no_row(written: &str) -> bool {
    let plain = written.to_lowercase();
    let plain = plain.trim_matches(|letter: char| !letter.is_alphanumeric());
    let word = plain.chars().filter(|letter| letter.is_alphabetic()).count() >= 3;
    let digits = plain.chars().any(|letter| letter.is_ascii_digit());
    !(word || digits) || matches!(plain, "none" | "null" | "true" | "false")
}

/// The rows named as numbers and spans ("2-4", "1, 3", "5 a 7"); none where it is said in another way.
fn rows_read(written: &str) -> Option<Vec<u32>> {
    let parts =
        unbracketed(written).split([',', ';', '-', '–', '+', ' ']).map(str::trim).filter(|part| !part.is_empty());
    let joins = |part: &&str| !matches!(*part, "to" | "a" | "and" | "y" | "hasta");
    let read: Option<Vec<u32>> = parts.filter(joins).map(|part| part.parse().ok()).collect();
    read.filter(|rows| !rows.is_empty())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_are_read_where_they_are_numbers_and_left_alone_where_not() {
        assert_eq!(rows_read("2-4"), Some(vec![2, 4]));
        assert_eq!(rows_read("1, 3 and 7"), Some(vec![1, 3, 7]));
        assert_eq!(rows_read("5 a 7"), Some(vec![5, 7]));
        assert_eq!(rows_read("[99]"), Some(vec![99]));
        assert_eq!(rows_read("the upper ones"), None);
        assert_eq!(rows_read(" "), None);
    }
}
