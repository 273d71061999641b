//! Hand-worked cases of sections 29 to 32 of docs/reckoning.md.

use super::experience::by_handbook;
use super::experience::shrunk;
use super::stock::{pipelines, sum};
use super::worth::{Decision, chance_other_side};
use super::*;
use crate::base::SpeciesKey;
use crate::nursery::species::Catalogue;
use crate::reckon::picture::DaySpread;
use crate::reckon::round::Task;
use crate::science::life_table::{AtTime, median_time};

fn day(written: &str) -> Day {
    written.parse().unwrap()
}

#[test]
fn three_trays_of_five_tell_the_days_and_the_handbook_weighs_as_five() {
    let one = |time, happened, censored| AtTime { time, happened, censored };
    let trays =
        [one(250.0, 1.0, 0.0), one(260.0, 1.0, 0.0), one(270.0, 1.0, 0.0), one(240.0, 0.0, 1.0), one(265.0, 0.0, 1.0)];
    assert_eq!(median_time(&trays), Some(260.0));
    assert_eq!(shrunk(300.0, 260.0, 3), 285.0);
    // Under five trays the handbook leads, with more this nursery.
    assert!(shrunk(300.0, 260.0, 4) > 280.0 && shrunk(300.0, 260.0, 6) < 280.0);
}

#[test]
fn a_species_without_trays_is_known_by_the_handbook() {
    let species = Catalogue::built_in();
    let coffee = species.get(&species.find("coffee").unwrap()).unwrap();
    let known = by_handbook(Some(coffee));
    let days = coffee.plantable_usual_days.as_ref().unwrap().value;
    assert_eq!((known.days_to_plantable.used, known.days_to_plantable.here), (Some(days), None));
    assert_eq!(known.survival.used, Some(experience::USUAL_SURVIVAL));
    assert_eq!(by_handbook(None).days_to_plantable.used, None);
}

#[test]
fn the_worth_of_a_count_is_chance_plants_and_nearness_over_minutes() {
    let chance = chance_other_side(46.0, 70.0, 94.0, 60.0);
    assert!((chance - 0.2466).abs() < 1e-3, "{chance}");
    let decision = Decision { chance, plants: 120.0 - 46.0, last_day: Some(day("2026-04-15")) };
    let on = day("2026-04-01");
    let worth = decision.worth("count cof-031", Task::Count, 2.0, on);
    assert!((worth.nearness - 0.5).abs() < 1e-12 && (worth.saved_per_minute - 4.56).abs() < 0.02, "{worth:?}");
    // What is certain is not worth a look, nor what comes too late.
    assert_eq!(chance_other_side(70.0, 70.0, 70.0, 60.0), 0.0);
    assert_eq!(decision.worth("count cof-031", Task::Count, 2.0, day("2026-04-16")).saved_per_minute, 0.0);
    let far = Decision { last_day: None, ..decision };
    assert!((far.worth("count cof-031", Task::Count, 2.0, on).nearness - 14.0 / 74.0).abs() < 1e-12);
}

#[test]
fn doubts_that_do_not_hang_together_add_by_their_squares() {
    let both = sum(&[Range::new(7.0, 10.0, 13.0), Range::new(16.0, 20.0, 24.0)]);
    assert_eq!(both, Range::new(25.0, 30.0, 35.0));
    let tray = |code: &str, on: Option<&str>| {
        let on = on.map(day).map(|on| DaySpread { low: on, likely: on, high: on });
        let plants = Range::new(7.0, 10.0, 14.0);
        let species = SpeciesKey::new("COA");
        (
            TrayCode::new(code).unwrap(),
            TrayStock { species, plants, on, waits_for: Vec::new(), from: plants, survival: 0.9, culls: 0.1 },
        )
    };
    let all = [tray("cof-1", Some("2026-04-03")), tray("cof-2", Some("2026-04-28")), tray("cof-3", None)];
    let told = pipelines(&all.into_iter().collect());
    assert_eq!(told.len(), 1);
    let april = &told[0].months[..];
    assert_eq!((april.len(), april[0].year, april[0].month, april[0].trays), (1, 2026, 4, 2));
    assert_eq!((april[0].plants.likely, told[0].undated.unwrap().0), (20.0, 1));
}
