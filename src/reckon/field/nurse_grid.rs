//! Where nurse plants stand, where their distances and their number agree on it.

use crate::base::{EntryId, SpeciesKey};
use crate::reckon::picture::BedPicture;
use crate::reckon::stock::NurseStory;
use crate::science::spacing::{Edges, Laying, SpacingPattern, positions};

/// A cohort of nurse plants that was planted on a whole grid.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct NurseGrid {
    /// The nurse plant.
    pub nurse: SpeciesKey,
    /// How many were planted.
    pub planted: u32,
    /// How many live.
    pub alive: u32,
    /// Where they were set: metres along and across the bed.
    pub spots: Vec<(f64, f64)>,
    /// The entry that planted them.
    pub entry: EntryId,
}

/// The living cohorts whose number is exactly that of the grid of their distances; of the others the places are not known.
pub(crate) fn nurse_grids(bed: &BedPicture) -> Vec<NurseGrid> {
    let living = bed.story.nurses.iter().filter(|nurse| nurse.alive > 0);
    let grids = living.filter_map(|nurse| {
        let spots = grid_of(nurse, (bed.length_m, bed.width_m))?;
        Some(NurseGrid {
            nurse: nurse.nurse.clone(),
            planted: nurse.planted,
            alive: nurse.alive,
            spots,
            entry: nurse.entry.clone(),
        })
    });
    grids.collect()
}

/// The spots of nurse plants in a bed so long and wide, m, where the grid of their distances has exactly as many.
pub(crate) fn grid_of(nurse: &NurseStory, (length_m, width_m): (f64, f64)) -> Option<Vec<(f64, f64)>> {
    let offset_m = nurse.offset_m.unwrap_or(0.0);
    let laying = Laying::new(SpacingPattern::Rectangle, Some(nurse.row_m), nurse.in_row_m);
    // As many as the grid has, with plants on its edges or half a spacing inside: nobody writes which.
    [Edges::Counted, Edges::Half].into_iter().find_map(|edges| {
        let laying = Laying { edges, offset_m, row_offset_m: offset_m, ..laying };
        let spots = positions(length_m, width_m, &laying).ok()?;
        let all = spots.len() == nurse.planted as usize;
        all.then(|| spots.iter().map(|spot| (spot.x_m, spot.y_m)).collect())
    })
}
