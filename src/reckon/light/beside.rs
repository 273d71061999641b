//! Nurse plants of the beds beside one: what their shade takes of its light, where both have a place on the map.

use std::sync::Arc;

use super::by_reading::{self, density};
use super::crown::TREE_M;
use super::scene::{crowns_of, ground_of, points_of, seen_along, suns_of};
use super::stand::{When, stands};
use super::{MOST_POINTS, SKY_DIRECTIONS, mean};
use crate::base::{BedName, Day, SpeciesKey};
use crate::nursery::entry::BedSet;
use crate::reckon::site::Site;
use crate::reckon::stock::BedStory;
use crate::science::ground::metres_of;
use crate::science::shade::crown::Crown;
use crate::science::shade::{Month, Positions, even_sky, maps};

/// Crowns shade no farther than so many times their height. Ours, measured: those beyond change about 0.001 of the light.
const REACH_HEIGHTS: f64 = 6.0;
/// Less of the light than this is not told. Ours.
const TOLD_FROM: f64 = 0.01;

/// What the beds beside one take of its light.
#[derive(Clone, PartialEq, Debug, Default)]
pub(crate) struct Beside {
    /// Those whose nurse plants shade it, and the share of the open light that they take at its open positions.
    pub shading: Vec<(BedName, f64)>,
    /// Those of the same field with nurse plants of which nobody wrote where they lie, or where this one does.
    pub not_placed: Vec<BedName>,
}

/// What other beds take of the light of one at the open positions of a species. Ground is taken as level between them.
pub(crate) fn beside<'a>(
    story: &BedStory,
    others: impl Iterator<Item = &'a Arc<BedStory>>,
    site: &Site,
    species: &SpeciesKey,
    day: Day,
) -> Beside {
    let mut told = Beside::default();
    let Some(bed) = story.layout.on(day) else { return told };
    let points = points_of(story, site, bed, species, day, MOST_POINTS);
    let own = own_crowns(story, site, bed, species, day);
    let before = own.as_deref().and_then(|own| light(&points, own, site, bed, day));
    for other in others.filter(|other| other.name != story.name) {
        let Some(layout) = other.layout.on(day).filter(|_| nurses_stand(other, day)) else { continue };
        match Across::of(bed, layout) {
            None if layout.field == bed.field => told.not_placed.push(other.name.clone()),
            None => {}
            Some(across) => {
                let theirs = own_crowns(other, site, layout, species, day).unwrap_or_default();
                let near = theirs.iter().map(|crown| across.moved(crown)).filter(|crown| reaches(crown, bed));
                let near: Vec<Crown> = near.collect();
                if near.is_empty() {
                    continue;
                }
                let both = [own.as_deref().unwrap_or_default(), &near].concat();
                let taken = before.zip(light(&points, &both, site, bed, day)).map(|(before, with)| before - with);
                told.shading.extend(taken.filter(|taken| *taken >= TOLD_FROM).map(|taken| (other.name.clone(), taken)));
            }
        }
    }
    told
}

fn nurses_stand(story: &BedStory, day: Day) -> bool {
    story.nurses.iter().any(|nurse| nurse.alive > 0 && nurse.day <= day)
}

/// The likely crowns of what stands in a bed; none where they cannot be drawn.
fn own_crowns(story: &BedStory, site: &Site, bed: &BedSet, species: &SpeciesKey, day: Day) -> Option<Vec<Crown>> {
    let standing = stands(story, site, bed, When { day, before: None }).ok()?;
    let told = by_reading::told(story, site, bed, species, day);
    Some(crowns_of(&standing, |leaves| leaves.likely, density(told.as_ref(), day).factor))
}

fn light(points: &[[f64; 2]], crowns: &[Crown], site: &Site, bed: &BedSet, day: Day) -> Option<f64> {
    let positions = Positions::new(points, TREE_M, ground_of(bed)).ok()?;
    let (sun, diffuse_share) = suns_of(site, bed, day);
    let month = Month { crowns: crowns.to_vec(), sun };
    let made = maps(&positions, &[month], &seen_along(&even_sky(SKY_DIRECTIONS), bed));
    made.first().map(|map| mean(&map.light(diffuse_share)).min(1.0))
}

/// Whether a crown can shade a bed.
fn reaches(crown: &Crown, bed: &BedSet) -> bool {
    let [x, y] = crown.at();
    let off = |value: f64, side: f64| (value - value.clamp(0.0, side)).abs();
    let far = off(x, bed.length_m.0).hypot(off(y, bed.width_m.0)) - crown.radius_m();
    far < REACH_HEIGHTS * (crown.middle_m() + crown.half_height_m())
}

/// From the metres of one bed to those of another: where its corner lies there, and how its rows turn.
struct Across {
    corner: [f64; 2],
    turn: (f64, f64),
}

impl Across {
    /// None where either has no corner or no bearing.
    fn of(bed: &BedSet, other: &BedSet) -> Option<Across> {
        let place = |bed: &BedSet| {
            let corner = (bed.corner_lat_deg?.0, bed.corner_lon_deg?.0);
            Some((corner, bed.row_bearing_deg?.0.to_radians()))
        };
        let ((here, bearing), (there, other_bearing)) = (place(bed)?, place(other)?);
        let [east, north] = metres_of(there, here)?;
        let (sin, cos) = bearing.sin_cos();
        // Along the rows, and to their left.
        let corner = [east * sin + north * cos, north * sin - east * cos];
        Some(Across { corner, turn: (bearing - other_bearing).sin_cos() })
    }

    fn moved(&self, crown: &Crown) -> Crown {
        let ([x, y], (sin, cos)) = (crown.at(), self.turn);
        let to = [self.corner[0] + x * cos - y * sin, self.corner[1] + x * sin + y * cos];
        crown.moved([to[0] - x, to[1] - y])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reckon::test_book::{TestBook, day};
    use crate::science::ground::degrees_of;
    use serde_json::{Value, json};

    const ON: &str = "2026-06-20";
    const HERE: (f64, f64) = (-3.2, 36.7);

    /// A bed whose corner lies so many metres east and north, its rows running so.
    fn bed(page: &mut TestBook, name: &str, at: Option<[f64; 2]>, bearing_deg: f64) {
        let plan = json!([{"species":"coffee","pattern":"square","row_m":3,"in_row_m":3}]);
        let mut set = json!({"bed":name,"field":"Old maize","length_m":30,"width_m":6,"edges":"half","plan":plan,
            "row_bearing_deg":bearing_deg});
        if let Some(at) = at {
            let [lon, lat] = degrees_of(at, HERE).unwrap();
            set["corner_lat_deg"] = Value::from(lat);
            set["corner_lon_deg"] = Value::from(lon);
        }
        page.write("2025-01-05", "bed_set", set);
    }

    fn told(page: &TestBook) -> Beside {
        let picture = page.whole(ON);
        let stories: Vec<Arc<BedStory>> = picture.beds.values().map(|bed| bed.story.clone()).collect();
        let own = stories.iter().find(|story| story.name.to_string() == "Upper terrace").unwrap();
        beside(own, stories.iter(), &picture.site, &SpeciesKey::new("COA"), day(ON))
    }

    fn world(other: Option<[f64; 2]>, bearing_deg: f64) -> TestBook {
        let mut page = TestBook::default();
        let nursery = json!({"name":"N","latitude_deg":-3.2,"longitude_deg":36.7,"altitude_m":900,"utc_offset_h":3});
        page.write("2025-01-01", "nursery_set", nursery);
        bed(&mut page, "Upper terrace", Some([0.0, 0.0]), 90.0);
        bed(&mut page, "Lower terrace", other, bearing_deg);
        let set = json!({"bed":"Lower terrace","nurse":"plantain","count":30,"row_m":2,"in_row_m":3});
        page.write("2025-06-10", "nurse_planted", set);
        page
    }

    #[test]
    fn the_plantains_of_the_bed_beside_take_light_and_those_a_field_away_none() {
        let near = told(&world(Some([0.0, 7.0]), 90.0));
        assert_eq!(near.shading.len(), 1, "{near:?}");
        assert!(near.shading[0].1 > 0.02 && near.shading[0].1 < 0.4, "{near:?}");
        assert_eq!(told(&world(Some([0.0, 60.0]), 90.0)), Beside::default());
    }

    #[test]
    fn the_same_ground_told_by_its_other_end_shades_as_much() {
        let one = told(&world(Some([0.0, 7.0]), 90.0)).shading[0].1;
        // The rows of the other bed run west from its far corner: it lies on the same ground.
        let turned = told(&world(Some([30.0, 13.0]), 270.0)).shading[0].1;
        // Latitudes are written to 0.1 m.
        assert!((one - turned).abs() < 0.01, "{one} {turned}");
        // Not turned it begins at that corner and lies a bed away.
        let away = told(&world(Some([30.0, 13.0]), 90.0)).shading.first().map_or(0.0, |(_, taken)| *taken);
        assert!(away < 0.02, "{away}");
    }

    #[test]
    fn a_bed_of_the_field_that_has_no_place_is_named_and_not_reckoned() {
        let told = told(&world(None, 90.0));
        assert_eq!((told.shading.len(), told.not_placed.len()), (0, 1));
        assert_eq!(told.not_placed[0].to_string(), "Lower terrace");
    }
}
