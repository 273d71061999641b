use std::sync::Arc;

use super::sowing::looks_of;
use super::*;
use crate::base::{DeviceId, LotCode};
use crate::nursery::species::Catalogue;
use crate::reckon::stock::{CountLook, LotTest, Origin, Sowing};

fn day(written: &str) -> Day {
    written.parse().unwrap()
}

fn entry(seq: u64) -> EntryId {
    EntryId { device: DeviceId::new("kilima").unwrap(), seq }
}

/// A tray sown with coffee on 1 January, with so many newly up at each look.
fn sown(seeds: u32, looks: &[(i32, u32)]) -> TrayStory {
    let on = day("2026-01-01");
    let mut story = TrayStory::blank(TrayCode::new("cof-031").unwrap());
    story.origin = Some(Origin::Sown);
    story.species = Catalogue::built_in().find("coffee");
    story.accounts.sown = u64::from(seeds);
    story.sowings.push(Sowing { day: on, lot: None, seeds: Some(seeds), entry: entry(1) });
    story.entries.push(entry(1));
    let mut standing = 0;
    for (number, (age, emerged)) in looks.iter().enumerate() {
        standing += emerged;
        story.counts.push(CountLook {
            day: on.plus(*age),
            standing,
            about: false,
            part_of_cells: None,
            cells_filled: None,
            emerged: *emerged,
            corrected: 0,
            not_seen: 0,
            dead: 0,
            stocktake: false,
            entry: entry(number as u64 + 2),
        });
    }
    story
}

/// Coffee: 40 / 55 / 90 days and 90 %, as its profile has them.
fn coffee() -> Arc<Profile> {
    let species = Catalogue::built_in();
    species.get(&species.find("coffee").unwrap()).unwrap().clone()
}

fn told(story: &TrayStory, age: i32) -> TrayForecast {
    forecast_tray(story, &coffee(), &[], |_| None, day("2026-01-01").plus(age)).unwrap()
}

#[test]
fn before_anything_can_be_up_it_is_too_early() {
    let days = species_days(&coffee()).unwrap();
    let forecast = told(&sown(100, &[]), 10);
    assert_eq!(forecast.judgement, Judgement::TooEarly);
    let until = day("2026-01-01").plus((days.first * super::judgement::NO_VERDICT_BEFORE).min(days.half).ceil() as i32);
    assert_eq!(forecast.because, [Because::BeforeDay(until)]);
    assert!((forecast.in_the_end.likely - forecast.expected).abs() < 2.0, "{forecast:?}");
    // Long after, and nobody has counted: that is what is said, not that it failed.
    let unseen = told(&sown(100, &[]), 80);
    assert_eq!((unseen.judgement, &unseen.because[..]), (Judgement::TooEarly, &[Because::NotCounted][..]));
}

#[test]
fn a_good_sowing_is_on_its_way_and_then_finished() {
    let half = species_days(&coffee()).unwrap().half as i32;
    let last = species_days(&coffee()).unwrap().last as i32;
    let mid = told(&sown(100, &[(half - 15, 8), (half - 7, 15), (half, 17)]), half);
    assert_eq!(mid.judgement, Judgement::OnItsWay, "{mid:?}");
    assert!(mid.in_the_end.low > 45.0 && mid.in_the_end.high <= 100.0, "{mid:?}");
    let looks = [(half - 15, 8), (half - 7, 15), (half, 17), (half + 10, 22), (last, 12), (last + 25, 0)];
    let done = told(&sown(100, &looks), last + 26);
    assert_eq!(done.judgement, Judgement::Finished, "{done:?}");
    assert!(matches!(done.because[0], Because::QuietFor { .. }), "{done:?}");
    assert!(done.in_the_end.high - 74.0 < 3.0, "{done:?}");
}

#[test]
fn a_poor_sowing_fails_at_the_half_day_and_asks_to_sow_again() {
    let half = species_days(&coffee()).unwrap().half as i32;
    let poor = told(&sown(300, &[(half - 15, 2), (half - 5, 4), (half + 2, 5), (half + 10, 4)]), half + 10);
    assert_eq!(poor.judgement, Judgement::Failing, "{poor:?}");
    assert!(poor.ask_to_sow_again, "{poor:?}");
    assert!(poor.at_last_due.likely < 0.5 * poor.expected && poor.at_last_due.low >= 15.0, "{poor:?}");
    let nothing = told(&sown(300, &[(half + 2, 0), (half + 15, 0)]), half + 15);
    assert_eq!(nothing.judgement, Judgement::Failing, "{nothing:?}");
}

#[test]
fn a_late_sowing_that_still_comes_is_slow() {
    let half = species_days(&coffee()).unwrap().half as i32;
    let late = told(&sown(100, &[(half - 5, 0), (half, 5), (half + 3, 9)]), half + 3);
    assert_eq!(late.judgement, Judgement::Slow, "{late:?}");
    assert!(!late.because.is_empty());
}

fn of_lot(mut story: TrayStory) -> TrayStory {
    story.sowings[0].lot = Some(LotCode::new("cof-L07").unwrap());
    story
}

fn lot_tested(laid: u32, up: u32) -> LotStory {
    let mut lot = crate::reckon::stock::fold_lot(
        &crate::reckon::Ledger::new(crate::reckon::View { day: day("2026-06-01"), known: None }, []),
        &crate::reckon::site::Site::default(),
        &LotCode::new("cof-L07").unwrap(),
    );
    lot.tests.push(LotTest { day: day("2025-12-01"), replicates: vec![(laid, up)], days: 120, entry: entry(9) });
    lot
}

/// The example of docs/reckoning.md, section 29.
#[test]
fn old_seed_of_coffee_is_failing_on_day_78() {
    let story = of_lot(sown(300, &[(60, 6), (69, 8), (78, 5)]));
    let lot = lot_tested(50, 6);
    let on = day("2026-01-01").plus(78);
    let told = forecast_tray(&story, &coffee(), &[], |_| Some(&lot), on).unwrap();
    assert!((told.expected - 63.5).abs() < 0.05, "{}", told.expected);
    let Because::Up { emerged, due, .. } = told.because[0] else { panic!("{told:?}") };
    assert!(emerged == 19.0 && (due - 58.9).abs() < 0.05, "{due}");
    assert!(told.at_last_due.likely < 31.8, "{told:?}");
    assert_eq!(told.judgement, Judgement::Failing);
}

#[test]
fn a_test_of_the_lot_lowers_what_is_expected() {
    let half = species_days(&coffee()).unwrap().half as i32;
    let story = of_lot(sown(300, &[(half, 20), (half + 8, 15)]));
    let lot = lot_tested(50, 6);
    let on = day("2026-01-01").plus(half + 8);
    let with = forecast_tray(&story, &coffee(), &[], |_| Some(&lot), on).unwrap();
    let without = forecast_tray(&story, &coffee(), &[], |_| None, on).unwrap();
    assert!(with.expected < 0.5 * without.expected, "{} {}", with.expected, without.expected);
    assert!(with.in_the_end.likely < without.in_the_end.likely);
}

#[test]
fn looks_leave_out_what_is_no_look_at_emergence() {
    let mut story = sown(50, &[(30, 3), (40, 5), (40, 2), (60, 4)]);
    story.counts[3].part_of_cells = Some(10);
    let seen = looks_of(&story).unwrap();
    assert_eq!((seen.looks.edges(), seen.looks.counts()), (&[0.0, 30.0, 40.0][..], &[3.0, 7.0][..]));
    assert_eq!(seen.last_rise, Some(day("2026-01-01").plus(40)));
    story.counts[2].stocktake = true;
    assert_eq!(looks_of(&story).unwrap().looks.counts(), &[3.0, 5.0]);
    // More seedlings than seeds: twins are no seeds.
    let twins = sown(10, &[(30, 8), (40, 5)]);
    assert_eq!(looks_of(&twins).unwrap().looks.counts(), &[8.0, 2.0]);
}

#[test]
fn what_cannot_be_told_says_why() {
    let mut unknown = sown(50, &[]);
    unknown.seed_unknown = true;
    assert_eq!(looks_of(&unknown).unwrap_err(), Unseen::SeedsUnknown);
    let mut twice = sown(50, &[]);
    twice.sowings.push(Sowing { day: day("2026-02-01"), lot: None, seeds: Some(5), entry: entry(8) });
    twice.entries.push(entry(8));
    assert_eq!(looks_of(&twice).unwrap_err(), Unseen::SeveralSowings);
    assert_eq!(looks_of(&TrayStory::blank(TrayCode::new("cof-032").unwrap())).unwrap_err(), Unseen::NothingSown);
    let mut bare = (*coffee()).clone();
    bare.emerge_half_days = None;
    assert_eq!(forecast_tray(&sown(50, &[]), &bare, &[], |_| None, day("2026-02-01")), Err(Unseen::NoSpeciesDays));
}

#[test]
fn waiting_ends_no_earlier_than_the_species_and_no_later_than_twice_its_last_day() {
    let last = species_days(&coffee()).unwrap().last;
    for looks in [&[][..], &[(50, 2), (60, 3), (80, 1)][..], &[(100, 1), (150, 2), (170, 3)][..]] {
        let stop = told(&sown(80, looks), 175).stop_waiting.days_since(day("2026-01-01"));
        assert!(f64::from(stop) >= last && f64::from(stop) <= 2.0 * last + 1.0, "{stop}");
    }
}

/// A tray sown again on a later day with seed of nobody knows which lot.
fn sown_again(mut story: TrayStory, age: i32, seeds: u32) -> TrayStory {
    let on = story.sowings[0].day.plus(age);
    story.sowings.push(Sowing { day: on, lot: None, seeds: Some(seeds), entry: entry(90) });
    story.entries.push(entry(90));
    story.accounts.sown += u64::from(seeds);
    story
}

#[test]
fn sowing_again_gives_one_forecast_for_both_sowings() {
    // 20 of 300 up by day 110, sown again with 280 on day 112.
    let looks = [(60, 6), (69, 8), (78, 5), (95, 1), (110, 0)];
    let story = sown_again(sown(300, &looks), 112, 280);
    let told_now = told(&story, 112);
    assert_eq!(told_now.judgement, Judgement::TooEarly, "{told_now:?}");
    assert_eq!(told_now.sowings.len(), 2);
    // What was hoped for on the day it was sown again: what the first was then to give, and 90 % of the second.
    let first = told(&sown(300, &looks), 112).in_the_end.likely;
    assert!(first < 26.0 && (told_now.expected - first - 0.9 * 280.0).abs() < 1.0, "{} {first}", told_now.expected);
    assert!(told_now.in_the_end.likely > 0.9 * told_now.expected, "{told_now:?}");
    assert_eq!(told_now.last_due, day("2026-01-01").plus(112 + 90));
    // Two months on 150 more are up. The second is on its way, and the counts say whose they are.
    let later = told(&sown_again(sown(300, &[&looks[..], &[(170, 60), (175, 90)]].concat()), 112, 280), 175);
    assert_eq!(later.judgement, Judgement::OnItsWay, "{later:?}");
    let Some(Because::SeveralSowings { sowings: 2, of_youngest, apart: true, .. }) = later.because.last() else {
        panic!("{later:?}")
    };
    assert!(of_youngest.low > 140.0 && of_youngest.high <= 155.0, "{of_youngest:?}");
    assert!(later.sowings[0].share < 0.15 && later.sowings[1].share > 0.5, "{later:?}");
}

#[test]
fn sowings_a_few_days_apart_cannot_be_told_apart_and_it_is_said() {
    let story = sown_again(sown(100, &[(50, 20), (60, 50), (70, 40)]), 6, 100);
    let told = told(&story, 70);
    assert!(
        told.because.iter().any(|because| matches!(because, Because::SeveralSowings { apart: false, .. })),
        "{told:?}"
    );
    assert!(told.in_the_end.low >= 110.0 && told.in_the_end.high <= 200.0, "{told:?}");
}

#[test]
fn a_nursery_in_which_sowings_failed_expects_less_of_the_next() {
    let failed = EarlierSowing {
        tray: TrayCode::new("cof-001").unwrap(),
        seen: crate::science::emergence::SeenSowing { seeds: 100.0, emerged: 0.0, last_look: 200.0, curve: None },
    };
    let next = sown(100, &[]);
    let on = day("2026-01-11");
    let without = forecast_tray(&next, &coffee(), &[], |_| None, on).unwrap();
    let with = forecast_tray(&next, &coffee(), &[failed.clone(), failed], |_| None, on).unwrap();
    // 5 x 90 % and twice none: 4.5 / 7.
    assert!((without.expected - 90.0).abs() < 1e-6 && (with.expected - 450.0 / 7.0).abs() < 0.5, "{}", with.expected);
}

#[test]
fn the_width_of_an_untested_lot_is_what_the_profile_says() {
    let species = Catalogue::built_in();
    let of = |name: &str| prior_of(species.get(&species.find(name).unwrap()).unwrap(), &[], None).unwrap().d;
    let (rain_tree, coffee) = (of("rain tree"), of("coffee"));
    assert!((rain_tree.a + rain_tree.b - 2.0).abs() < 1e-9, "lots differ widely: {rain_tree:?}");
    assert!((coffee.a + coffee.b - 4.0).abs() < 1e-9, "{coffee:?}");
}
