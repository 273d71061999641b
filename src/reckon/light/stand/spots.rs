//! Where the plants of a cohort stand: on the grid of their distances, or spread evenly where only their number is known.

use crate::reckon::field::grid_of;
use crate::reckon::stock::NurseStory;
use crate::science::spacing::{Edges, Laying, SpacingPattern, positions};

/// The spots of so many living plants of a cohort in a bed so long and wide, m.
pub(super) fn spots_of(nurse: &NurseStory, alive: u32, sides_m: (f64, f64)) -> Vec<[f64; 2]> {
    let there = nurse.planted.max(alive);
    let on_grid = grid_of(nurse, sides_m).map(|spots| spots.into_iter().map(|(x, y)| [x, y]).collect::<Vec<_>>());
    let laid = || {
        let laying = Laying::new(SpacingPattern::Rectangle, Some(nurse.row_m), nurse.in_row_m);
        let inside = Laying { edges: Edges::Half, ..laying };
        let spots = positions(sides_m.0, sides_m.1, &inside).unwrap_or_default();
        spots.iter().map(|spot| [spot.x_m, spot.y_m]).collect::<Vec<_>>()
    };
    let spots = on_grid.unwrap_or_else(laid);
    if spots.len() >= there as usize { evenly(&spots, alive as usize) } else { closer(nurse, alive, sides_m) }
}

/// So many of some spots, evenly among them.
pub(super) fn evenly(spots: &[[f64; 2]], count: usize) -> Vec<[f64; 2]> {
    let all = spots.len().max(1);
    let upto = |at: usize| at * count.min(all) / all;
    spots.iter().enumerate().filter(|(at, _)| upto(at + 1) > upto(*at)).map(|(_, spot)| *spot).collect()
}

/// More plants than their distances have room for: as far apart as the bed allows, in rows as much wider as they are.
fn closer(nurse: &NurseStory, alive: u32, (length_m, width_m): (f64, f64)) -> Vec<[f64; 2]> {
    let each_m2 = length_m * width_m / f64::from(alive.max(1));
    let row_m = (each_m2 * nurse.row_m / nurse.in_row_m).sqrt();
    let rows = ((width_m / row_m).round() as u32).clamp(1, alive.max(1));
    let mut spots = Vec::with_capacity(alive as usize);
    for row in 0..rows {
        let places = alive * (row + 1) / rows - alive * row / rows;
        let y_m = (f64::from(row) + 0.5) * width_m / f64::from(rows);
        spots.extend((0..places).map(|place| [(f64::from(place) + 0.5) * length_m / f64::from(places), y_m]));
    }
    spots
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::{Day, DeviceId, EntryId, SpeciesKey};

    fn nurse(planted: u32, row_m: f64, in_row_m: f64) -> NurseStory {
        let entry = EntryId { device: DeviceId::new("kilima").unwrap(), seq: 1 };
        NurseStory::set((SpeciesKey::new("PLA"), planted), Day::from_number(20_000), (row_m, in_row_m), entry)
    }

    #[test]
    fn every_living_plant_has_a_spot_of_its_own_inside_the_bed() {
        for planted in [1, 7, 40, 55, 60, 200] {
            for alive in [1, planted / 2 + 1, planted] {
                let spots = spots_of(&nurse(planted, 3.0, 3.0), alive, (30.0, 12.0));
                assert_eq!(spots.len(), alive as usize, "{planted} {alive}");
                assert!(spots.iter().all(|[x, y]| (0.0..=30.0).contains(x) && (0.0..=12.0).contains(y)));
                let apart = |a: &[f64; 2], b: &[f64; 2]| (a[0] - b[0]).hypot(a[1] - b[1]) > 0.1;
                assert!(spots.iter().enumerate().all(|(at, a)| spots[at + 1..].iter().all(|b| apart(a, b))));
            }
        }
    }

    #[test]
    fn a_whole_grid_stands_on_it() {
        // 30 x 12 m at 3 x 3 m: both edges counted 5 rows of 11.
        let spots = spots_of(&nurse(55, 3.0, 3.0), 55, (30.0, 12.0));
        assert_eq!((spots[0], spots[54]), ([0.0, 0.0], [30.0, 12.0]));
        // Half of it: every second plant.
        assert_eq!(spots_of(&nurse(55, 3.0, 3.0), 27, (30.0, 12.0)).len(), 27);
    }
}
