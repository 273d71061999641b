//! What holds of reckoned light whatever the bed.

use serde_json::json;

use super::months::{GoingOn, light_months};
use super::scene::some_of;
use super::{bed_light, by_reading, light_told};
use crate::base::SpeciesKey;
use crate::reckon::field::species_plan;
use crate::reckon::picture::NoLight;
use crate::reckon::test_book::{TestBook, day};

const ON: &str = "2026-04-10";

fn bed() -> TestBook {
    TestBook::upper_terrace(30.0, 12.0)
}

fn light(page: &TestBook, on: &str) -> super::BedLight {
    let (story, site) = page.story(on);
    let layout = story.layout.on(day(on)).unwrap();
    bed_light(&story, &site, layout, &SpeciesKey::new("COA"), day(on)).unwrap()
}

#[test]
fn where_nothing_stands_it_is_full_light() {
    let open = light(&bed(), ON);
    assert!((open.span.share - 1.0).abs() < 1e-5 && (open.span.low - 0.9).abs() < 1e-5, "{:?}", open.span);
    assert_eq!((open.at.len(), open.inside((0.5, 0.7)), open.inside((0.7, 1.0))), (40, 0.0, 1.0));
    // Plants set today shade nothing yet.
    let mut page = bed();
    page.nurses(ON, "banana", 40, 3.0);
    assert!(light(&page, ON).span.share > 0.999);
}

#[test]
fn between_nurse_plants_some_positions_are_darker_than_others() {
    let mut page = bed();
    page.nurses("2025-06-01", "banana", 12, 5.0);
    let light = light(&page, ON);
    let (low, high) = light.ends();
    assert!(low < light.span.share - 0.05 && high > light.span.share + 0.05, "{low} {high} {:?}", light.span);
    let whole: f64 = [(0.0, 0.4), (0.4, 0.7), (0.7, 1.0)].into_iter().map(|band| light.inside(band)).sum();
    assert!((whole - 1.0).abs() < 1e-9);
}

#[test]
fn the_model_told_its_own_light_keeps_its_leaves() {
    let mut page = bed();
    page.nurses("2025-06-01", "banana", 40, 3.0);
    let key = SpeciesKey::new("COA");
    let mut unread = bed();
    unread.nurses("2025-06-01", "banana", 40, 3.0);
    page.write(ON, "light_read", json!({"bed":"Upper terrace","light_share":0.5,"sky":"overcast"}));
    let told = |page: &TestBook| {
        let (story, site) = page.story(ON);
        by_reading::told(&story, &site, story.layout.on(day(ON)).unwrap(), &key, day(ON)).unwrap()
    };
    let expected = told(&page).expected;
    let mut own = bed();
    own.nurses("2025-06-01", "banana", 40, 3.0);
    own.write(ON, "light_read", json!({"bed":"Upper terrace","light_share":expected,"sky":"overcast"}));
    assert!((told(&own).factor.unwrap() - 1.0).abs() < 1e-3, "{:?}", told(&own));
    // Without the reading it says what it said before anybody read.
    let (story, site) = page.story(ON);
    let told = light_told(&story, &site, &key, Some((0.5, 0.7)), day(ON)).unwrap();
    assert_eq!(told.unread, light(&unread, ON).span);
    assert!(told.ends.0 < told.light.share && told.ends.1 > told.light.share, "{told:?}");
}

#[test]
fn a_reading_of_before_a_felling_is_explained_by_what_stood_then() {
    let mut page = bed();
    page.nurses("2025-06-01", "banana", 40, 3.0);
    page.write("2026-03-01", "light_read", json!({"bed":"Upper terrace","light_share":0.5,"sky":"overcast"}));
    let key = SpeciesKey::new("COA");
    let told = |page: &TestBook| {
        let (story, site) = page.story(ON);
        by_reading::told(&story, &site, story.layout.on(day(ON)).unwrap(), &key, day(ON)).unwrap()
    };
    let before = told(&page);
    let cut = json!({"bed":"Upper terrace","nurse":"banana","what":"felled","count":20});
    page.write("2026-03-20", "nurse_cut", cut);
    page.write(
        "2026-04-01",
        "plants_lost",
        json!({"bed":"Upper terrace","species":"banana","count":10,"cause":"wind"}),
    );
    assert_eq!(told(&page), before);
    assert!(light(&page, ON).span.share > 0.75, "{:?}", light(&page, ON).span);
}

#[test]
fn of_many_positions_some_from_every_row_are_taken() {
    let all: Vec<[f64; 2]> = (0..1_600).map(|at| [f64::from(at % 16), f64::from(at / 16)]).collect();
    let some = some_of(all.clone(), 64);
    let columns: std::collections::BTreeSet<i64> = some.iter().map(|point| point[0] as i64).collect();
    assert!(some.len() > 60 && columns.len() >= 12, "{} {}", some.len(), columns.len());
    assert_eq!(some_of(all.clone(), 2_000), all);
}

#[test]
fn the_months_to_come_grow_darker_until_stems_are_cut() {
    let mut page = bed();
    page.nurses("2026-01-10", "banana", 40, 3.0);
    let (story, site) = page.story(ON);
    let months = light_months(&story, &site, &SpeciesKey::new("COA"), (day(ON), 24)).unwrap();
    assert_eq!((months.len(), months[0].on, months[1].on), (24, day("2026-04-15"), day("2026-05-15")));
    let light: Vec<f64> = months.iter().map(|month| month.light.share).collect();
    // Past 10 months stems may have ended; 12 months after planting, midway to 14, they are taken as cut: 10 January 2027.
    assert!(light[..8].windows(2).all(|pair| pair[1] < pair[0] + 0.01), "{light:?}");
    assert!(light[8] > light[7] && light[9] > light[8] + 0.05, "{light:?}");
    assert!(light[16] < light[9] - 0.05, "followers grow: {light:?}");
    assert!(months.iter().all(|month| month.light.low <= month.light.share && month.light.share <= month.light.high));
}

#[test]
fn a_slope_that_falls_away_from_the_sun_is_darker_and_a_level_one_is_as_before() {
    let on_slope = |slope: Option<(f64, f64)>| {
        let mut page = TestBook::default();
        let plan = json!([{"species":"coffee","pattern":"square","row_m":3,"in_row_m":3}]);
        let mut set =
            json!({"bed":"Upper terrace","field":"Old maize","length_m":30,"width_m":12,"edges":"half","plan":plan});
        if let Some((pct, to)) = slope {
            set["slope_pct"] = json!(pct);
            set["slope_bearing_deg"] = json!(to);
        }
        let nursery = json!({"name":"N","latitude_deg":-30,"longitude_deg":30,"altitude_m":100,"utc_offset_h":2});
        page.write("2025-01-01", "nursery_set", nursery);
        page.write("2025-01-05", "bed_set", set);
        page.nurses("2025-06-01", "banana", 40, 3.0);
        light(&page, "2026-06-20").span.share
    };
    let level = on_slope(None);
    assert!((on_slope(Some((0.0, 180.0))) - level).abs() < 1e-6);
    // South of the equator the sun of June stands in the north.
    let (north, south) = (on_slope(Some((60.0, 0.0))), on_slope(Some((60.0, 180.0))));
    assert!(north > south + 0.02 && south < level - 0.02, "north {north}, level {level}, south {south}");
}

#[test]
fn a_tree_of_no_known_crown_makes_the_light_a_bound_from_above_and_no_figure() {
    let mut page = bed();
    page.nurses("2025-06-01", "banana", 40, 3.0);
    let without = light(&page, ON);
    let came = json!({"tray":"cof-1","species":"coffee","count":20,"from":"bought","form":"bag"});
    page.write("2025-08-01", "plants_received", came);
    page.write("2025-08-01", "outplanted", json!({"tray":"cof-1","bed":"Upper terrace","count":20}));
    let (story, site) = page.story(ON);
    let months = light_months(&story, &site, &SpeciesKey::new("COA"), (day(ON), 12)).unwrap();
    // Coffee of a year is no seedling any more: from August 2026 on.
    let known = months.iter().take_while(|month| month.left_out.is_none()).count();
    assert_eq!((known, months.len(), months[known].on), (4, 12, day("2026-08-15")));
    let bound = &months[known];
    assert_eq!((bound.light.low, bound.light.share, bound.inside), (0.0, bound.light.high, None));
    assert!(bound.light.high < 1.0 && bound.light.high > months[known - 1].light.share, "{bound:?}");
    // At each position too: no less than is likely without the coffee.
    let plan = species_plan(&story, &site, day(ON), &SpeciesKey::new("COA")).unwrap();
    let key = SpeciesKey::new("COA");
    let going_on = GoingOn::of(&story, &site, &key, day(ON)).unwrap();
    let (likely, most) = (going_on.at_each(&plan.spots, known - 1), going_on.at_each(&plan.spots, known));
    assert!(likely.iter().zip(&most).all(|(likely, most)| most > likely), "{likely:?} {most:?}");
    // Nobody takes the bound for a light: of a day on which it stands the verdict knows nothing.
    let layout = story.layout.on(day(ON)).unwrap();
    let later = bed_light(&story, &site, layout, &SpeciesKey::new("COA"), day("2026-09-15"));
    assert_eq!(later, Err(NoLight::NoCrown(SpeciesKey::new("COA"))));
    let told = light_told(&story, &site, &SpeciesKey::new("COA"), Some((0.5, 0.7)), day("2026-09-15")).unwrap();
    assert!(told.left_out.is_some() && told.light.low == 0.0 && told.light.high < 1.0, "{told:?}");
    assert!(without.span.share > 0.2);
}

#[test]
fn cassava_lets_in_more_light_at_the_end_of_the_dry_months_than_in_the_rains() {
    let share = |rain: serde_json::Value| {
        let mut page = bed();
        page.nurses("2025-06-01", "cassava", 200, 1.3);
        page.write("2025-01-01", "season_set", json!({"rains":[],"rain_mm":rain}));
        light(&page, ON).span
    };
    let wet = share(json!([120, 120, 120, 120, 120, 120, 120, 120, 120, 120, 120, 120]));
    let dry = share(json!([10, 10, 10, 10, 120, 120, 120, 120, 120, 120, 120, 10]));
    assert!(dry.share > wet.share + 0.03, "{dry:?} {wet:?}");
    assert!(dry.low <= wet.low + 1e-9 && dry.high > wet.high, "a year may be wetter: {dry:?} {wet:?}");
}
