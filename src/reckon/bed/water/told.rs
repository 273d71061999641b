//! The water of a bed or a bench as its page tells it: what is left and for how long, the weeks after planting, and the litres
//! that its plants take a day.

use super::ahead::{WaterAhead, water_ahead};
use super::balance::{Et0, KC};
use super::looks::WETTED_FOOT_M2;
use super::texture::Texture;
use crate::base::{Day, PlaceName};
use crate::reckon::bed::season::is_young;
use crate::reckon::picture::quantity::{WaterLeft, Wet};
use crate::reckon::picture::question::{Found, Known};
use crate::reckon::picture::{BedPicture, Picture, Question, TrayPicture};
use crate::reckon::site::Site;

/// Water that a closed stand of young plants takes, over the reference. FAO-56, from memory: no crop takes much more than 1.2 times.
const BENCH_KC: f64 = 1.2;
/// Of what a plant takes in full light so much is left without any: the air takes water in shade too. Ours.
const IN_THE_DARK: f64 = 0.3;
/// Depth of a container of which nobody wrote it, cm: that of the roots in a bed. Ours.
const USUAL_DEPTH_CM: f64 = super::balance::ROOT_DEPTH_CM;
const CM2_PER_M2: f64 = 10_000.0;

/// Plants and the litres they take on a day without rain.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub(crate) struct Litres {
    /// Plants.
    pub plants: u32,
    /// Litres a day for all of them.
    pub a_day: f64,
}

/// The water of a bed.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct BedWater {
    /// What is left in its ground, where the balance tells it.
    pub left: Option<WaterLeft>,
    /// The weeks after planting.
    pub ahead: Option<WaterAhead>,
    /// Its young plants.
    pub young: Litres,
    /// As many as its open positions are for.
    pub open: Litres,
}

/// The water of a bed on a day.
pub(crate) fn bed_water(bed: &BedPicture, site: &Site, day: Day) -> BedWater {
    let field = site.fields.get(&bed.field).and_then(|field| field.on(day));
    let texture = Texture::of(field.and_then(|field| field.texture.as_ref()).map(|texture| &*texture.0));
    let each = litres_at_foot(site, day);
    let young = bed.story.cohorts.iter().filter(|cohort| !cohort.found && cohort.day <= day);
    let young = young.filter(|cohort| is_young(site, cohort.day, day)).map(|cohort| cohort.living);
    let of = |plants: u32| Litres { plants, a_day: f64::from(plants) * each };
    BedWater {
        left: bed.species.iter().find_map(|line| line.criteria.iter().find_map(|one| left(&one.question))),
        ahead: water_ahead(site, texture, day),
        young: of(young.fold(0, u32::saturating_add)),
        open: of(bed.species.iter().map(|line| line.open_positions).fold(0, u32::saturating_add)),
    }
}

fn left(question: &Question) -> Option<WaterLeft> {
    match question {
        Question::Water(Known::Found(Found { known: Wet::Left(left), .. })) => Some(*left),
        _ => None,
    }
}

/// What a young plant takes a day from the ground that is wetted at its foot, litres.
fn litres_at_foot(site: &Site, day: Day) -> f64 {
    WETTED_FOOT_M2 * KC * et0_mm(site, day)
}

fn et0_mm(site: &Site, day: Day) -> f64 {
    Et0::of(site, day).mm(site, site.weather.get(&day).map(|(_, weather)| weather), day)
}

/// What the plants at a place take a day, where the size of their containers is known: each the room of its container in a closed
/// stand. Plants in containers that nobody described, of species without a container, are left out.
pub(crate) fn bench_litres(name: &PlaceName, picture: &Picture) -> Litres {
    let light = picture.places.get(name).and_then(|story| story.light_on(picture.day));
    let light = light.and_then(|light| light.read.or(light.nominal)).unwrap_or(1.0);
    let each_m2 = et0_mm(&picture.site, picture.day) * BENCH_KC * (IN_THE_DARK + (1.0 - IN_THE_DARK) * light);
    let mut all = Litres::default();
    for tray in picture.trays.values().filter(|tray| tray.place.as_ref() == Some(name) && tray.standing > 0) {
        if let Some(room_m2) = room_m2(tray, picture) {
            all.plants = all.plants.saturating_add(tray.standing);
            all.a_day += f64::from(tray.standing) * room_m2 * each_m2;
        }
    }
    all
}

/// The room of one container in a closed stand: the square around its round.
fn room_m2(tray: &TrayPicture, picture: &Picture) -> Option<f64> {
    let profile = tray.species.as_ref().and_then(|key| picture.site.profile(key));
    let named = tray.story.container().and_then(|spell| spell.what.as_ref());
    let described = named.and_then(|name| picture.site.containers.get(name)).and_then(|set| set.on(picture.day));
    let of_species = || Some(profile?.container_ml.as_ref()?.value);
    let ml = described.map(|set| set.volume_ml.0).or_else(of_species)?;
    let usual_cm = || profile.and_then(|profile| profile.container_depth_cm.as_ref()).map(|figure| figure.value);
    let depth_cm = described.and_then(|set| set.depth_cm).map(|depth| depth.0).or_else(usual_cm);
    let depth_cm = depth_cm.unwrap_or(USUAL_DEPTH_CM).max(1.0);
    Some(ml / depth_cm * 4.0 / std::f64::consts::PI / CM2_PER_M2)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reckon::test_book::{TestBook, day};
    use serde_json::json;

    const ON: &str = "2026-04-10";

    fn planted(count: u32) -> TestBook {
        let mut page = TestBook::upper_terrace(12.0, 9.0);
        let came = json!({"tray":"cof-1","species":"coffee","count":count,"from":"bought","form":"bag"});
        page.write("2026-04-01", "plants_received", came);
        page.write("2026-04-01", "outplanted", json!({"tray":"cof-1","bed":"Upper terrace","count":count}));
        page
    }

    #[test]
    fn a_young_plant_takes_what_saplings_were_measured_to_take() {
        // 0.0707 m2 x 0.9 x 4 mm; W37 of the handbook, Seldon et al. 2021: at full demand, and half of it keeps all alive.
        let table = include_str!("../../../../tests/reference/handbook_examples.tsv");
        let cells: Vec<&str> = table.lines().find(|line| line.starts_with("W37\t")).unwrap().split('\t').collect();
        let [given, want] = [2, 3].map(|at| serde_json::from_str::<serde_json::Value>(cells[at]).unwrap());
        let full = given["full_demand_l"].as_f64().unwrap();
        assert_eq!(want["survival_pct"][2], 100);
        assert_eq!(given["litre_per_day"][2].as_f64(), Some(crate::reckon::bed::water::looks::LEAST_LITRES_A_DAY));
        let told = bed_water(&planted(4).picture(ON), &planted(4).story(ON).1, day(ON));
        assert_eq!((told.young.plants, told.open.plants), (4, 8));
        let each = told.young.a_day / 4.0;
        assert!((each - 0.2545).abs() < 0.0005 && (each / full - 1.0).abs() < 0.1, "{each}");
        assert!((told.open.a_day - 8.0 * each).abs() < 1e-9);
    }

    #[test]
    fn plants_that_are_not_young_any_more_are_not_counted() {
        let page = planted(4);
        let on = "2026-06-20";
        assert_eq!(bed_water(&page.picture(on), &page.story(on).1, day(on)).young, Litres::default());
    }

    #[test]
    fn a_bench_takes_by_the_room_of_its_bags_and_less_in_the_shade() {
        let mut page = TestBook::default();
        page.write("2026-01-01", "container_set", json!({"container":"bag","volume_ml":1000,"depth_cm":20}));
        let came = json!({"tray":"cof-1","species":"coffee","count":100,"from":"bought","form":"bag",
            "container":"bag","place":"Bench 1"});
        page.write("2026-04-01", "plants_received", came);
        let of = |page: &TestBook| bench_litres(&PlaceName::new("Bench 1").unwrap(), &page.whole(ON));
        // 1000 / 20 = 50 cm2, its square 63.7 cm2: 0.637 m2 for a hundred, 4.8 mm.
        let open = of(&page);
        assert!(open.plants == 100 && (open.a_day - std::f64::consts::FRAC_2_PI * 4.8).abs() < 0.01, "{open:?}");
        page.write("2026-04-02", "place_set", json!({"place":"Bench 1","order":1,"shade_pct":50}));
        let shaded = of(&page);
        assert!((shaded.a_day / open.a_day - 0.65).abs() < 1e-9, "{shaded:?}");
    }
}
