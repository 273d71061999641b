use super::*;
use crate::base::{DeviceId, EntryId, LotCode, Range};
use crate::nursery::entry::types::Kept;
use crate::nursery::species::{Catalogue, Figure};
use crate::reckon::stock::{LotTest, Since, StoreWritten, fold_lot};
use crate::science::sampling::Differ;
use std::sync::Arc;

fn day(written: &str) -> Day {
    written.parse().unwrap()
}

fn entry(seq: u64) -> EntryId {
    EntryId { device: DeviceId::new("kilima").unwrap(), seq }
}

fn profile(name: &str) -> Arc<Profile> {
    let species = Catalogue::built_in();
    species.get(&species.find(name).unwrap()).unwrap().clone()
}

/// A lot collected on 1 January and kept so from then on.
fn lot(kept: Kept, store: Option<(f64, f64)>, left: u32) -> LotStory {
    let ledger = crate::reckon::Ledger::new(crate::reckon::View { day: day("2027-01-01"), known: None }, []);
    let mut lot = fold_lot(&ledger, &crate::reckon::site::Site::default(), &LotCode::new("l-1").unwrap());
    let from = day("2026-01-01");
    lot.collected = Some(from);
    lot.received = Some(from);
    lot.seeds_left = Some(left);
    lot.kept.push(Since { from, what: kept, entry: entry(1) });
    let what = StoreWritten { moisture_pct: store.map(|store| store.0), temp_c: store.map(|store| store.1) };
    lot.stores.push(Since { from, what, entry: entry(1) });
    lot
}

fn tested(lot: &mut LotStory, on: &str, days: u32, replicates: &[(u32, u32)]) {
    lot.tests.push(LotTest { day: day(on), replicates: replicates.to_vec(), days, entry: entry(9) });
}

fn near(got: f64, printed: f64, half_a_digit: f64) {
    assert!((got - printed).abs() <= half_a_digit * 1.000_001, "{got} is not {printed}");
}

/// The first example of docs/reckoning.md, section 33.
#[test]
fn cedrela_falls_by_the_equation() {
    let mut lot = lot(Kept::DrySealed, Some((8.0, 25.0)), 500);
    lot.initial_pct = Some(90.0);
    let told = lot_outlook(&lot, Some(&profile("Cedrela odorata")), day("2026-06-30"));
    let told = told.viability.unwrap();
    // 180 days at sigma 280.7: 73.9 %, as in section 28.
    near(told.today.likely, 0.739, 0.0005);
    let Way::Equation { sigma_days, within_limits, .. } = told.by else { panic!("{told:?}") };
    near(sigma_days, 280.7, 0.05);
    assert!(within_limits);
    // 85 % of 90 % is 76.5 %, probit 0.7225: (1.2816 - 0.7225) x 280.7 = 156.9 days, past. 45 % is -0.1257: 395.0 days.
    near(told.to_old.likely, 0.0, 0.0);
    near(told.to_half.likely, 395.0 - 180.0, 0.1);
    assert_eq!((told.start.from, told.start.share), (StartFrom::Arrival, Range::exact(0.9)));
}

#[test]
fn every_store_takes_its_own_part() {
    let mut lot = lot(Kept::DrySealed, Some((8.0, 25.0)), 500);
    lot.initial_pct = Some(90.0);
    let cold = Since {
        from: day("2026-04-01"),
        what: StoreWritten { moisture_pct: Some(8.0), temp_c: Some(5.0) },
        entry: entry(2),
    };
    lot.stores.push(cold);
    let cedrela = profile("Cedrela odorata");
    let on = day("2026-06-30");
    let mixed = lot_outlook(&lot, Some(&cedrela), on).viability.unwrap();
    // 90 days at 280.7, then 90 in the cold at 10^(6.9 - 3.4317 - 0.1455 - 0.0117) = 2,044: 0.3206 + 0.0440 lost.
    let left = crate::science::viability::viability(
        crate::science::viability_constants::viability_record("Cedrela odorata").unwrap().constants,
        crate::science::viability::Store { moisture_pct: 8.0, temp_c: 25.0 },
        90.0,
        (0.3206 + 0.0440) * 280.7,
    );
    near(mixed.today.likely, left.unwrap().viability_pct.unwrap() / 100.0, 0.0005);
    assert!(mixed.to_half.likely > 2000.0, "{mixed:?}");
    // A store nobody described: no equation; the stated life of 180 days stands, twice as long sealed, and the page says what to
    // write.
    lot.stores[1].what.temp_c = None;
    let stated = lot_outlook(&lot, Some(&cedrela), on).viability.unwrap();
    assert_eq!(stated.by, Way::Life { life_days: 360, longest_days: 360, store_unknown: true });
    // In the cold it lives for years.
    lot.kept.push(Since { from: day("2026-04-01"), what: Kept::Cold, entry: entry(2) });
    assert_eq!(lot_outlook(&lot, Some(&cedrela), on).life.unwrap().days, 1825);
}

/// In humid air dry seed takes up water again: its moisture of the first day says nothing of the hundredth.
#[test]
fn the_equation_is_for_closed_vessels() {
    let cedrela = profile("Cedrela odorata");
    let way =
        |kept| lot_outlook(&lot(kept, Some((8.0, 25.0)), 500), Some(&cedrela), day("2026-06-30")).viability.unwrap().by;
    assert!(matches!(way(Kept::DrySealed), Way::Equation { .. }));
    assert!(matches!(way(Kept::Cold), Way::Equation { .. }));
    // Of another way of keeping the worst counts, and the best is its high end: twice as long sealed.
    for (open, longest_days) in [(Kept::DryOpen, 180), (Kept::Other, 360), (Kept::WashedMoist, 180)] {
        assert_eq!(way(open), Way::Life { life_days: 180, longest_days, store_unknown: true }, "{open:?}");
    }
}

/// The second example of section 33.
#[test]
fn avocado_lives_from_the_day_of_collection_on_and_then_falls() {
    let mut avocado = (*profile("avocado")).clone();
    avocado.germination_fresh_pct.as_mut().unwrap().value = 80.0;
    avocado.storage_ambient_days.as_mut().unwrap().value = 20.0;
    let mut lot = lot(Kept::InPod, None, 48);
    // Washed later: seed that dies when dried still counts from the tree.
    lot.kept.push(Since { from: day("2026-01-06"), what: Kept::WashedMoist, entry: entry(2) });
    let told = lot_outlook(&lot, Some(&avocado), day("2026-01-06"));
    let life = told.life.unwrap();
    assert_eq!(
        (life.last_day(), life.days_left(day("2026-01-06")), life.from_collection),
        (day("2026-01-21"), 15, true)
    );
    let told = told.viability.unwrap();
    // 5 of 20 days are 3 spreads of 5 days before half: 0.9987; of 10 days 2 of 2.5: 0.9772; of 40 3.5 of 10: 0.9998.
    near(told.today.likely, 0.8 * 0.9987, 2e-4);
    near(told.today.low, 0.8 * 0.9772, 2e-4);
    near(told.today.high, 0.8 * 0.9998, 2e-4);
    // Half is gone at the end of the life: in 15 days; of 10 days in 5, of 40 in 35.
    near(told.to_half.low, 5.0, 0.01);
    near(told.to_half.likely, 15.0, 0.01);
    near(told.to_half.high, 35.0, 0.01);
}

#[test]
fn seed_that_keeps_begins_a_new_clock_when_it_is_handled() {
    let mut lot = lot(Kept::DryOpen, None, 300);
    lot.kept.push(Since { from: day("2026-03-01"), what: Kept::DrySealed, entry: entry(2) });
    let life = lot_outlook(&lot, Some(&profile("grevillea")), day("2026-03-02")).life.unwrap();
    assert_eq!((life.from, life.from_collection, life.days), (day("2026-03-01"), false, 180));
    // What it lost before stays lost: 59 of 90 days in the open are 1.378 spreads of 22.5 before half, 0.9159 of it is left.
    let now = lot_outlook(&lot, Some(&profile("grevillea")), day("2026-03-01")).viability.unwrap();
    near(now.today.likely / now.start.share.likely, 0.9159, 0.001);
}

#[test]
fn a_test_refutes_lives_that_ended_before_it() {
    let mut coffee = (*profile("coffee")).clone();
    coffee.storage_ambient_days = Some(Figure { value: 90.0, ..coffee.storage_ambient_days.unwrap() });
    coffee.emerge_last_days.as_mut().unwrap().value = 60.0;
    let mut lot = lot(Kept::InParchment, None, 400);
    // Laid out on day 100 of a stated life of 90: only the long life of 180 is left.
    tested(&mut lot, "2026-06-10", 60, &[(25, 10), (25, 10)]);
    let told = lot_outlook(&lot, Some(&coffee), day("2026-05-21")).viability.unwrap();
    assert_eq!((told.start.day, told.start.from), (day("2026-04-11"), StartFrom::Test));
    // Day 140 of 180 is 0.889 spreads of 45 days before half, day 100 1.778: 0.8130 / 0.9623 of the 40 % are left.
    near(told.today.likely, 0.4 * 0.8130 / 0.9623, 1e-4);
    // Laid out past twice its life and alive: only another test tells.
    let mut old = lot.clone();
    tested(&mut old, "2026-09-30", 60, &[(25, 5), (25, 5)]);
    let told = lot_outlook(&old, Some(&coffee), day("2026-10-01"));
    assert_eq!(told.viability, Err(NoViability::OutlivedItsLife));
    // None alive: that is what is expected.
    tested(&mut old, "2026-10-20", 60, &[(50, 0)]);
    assert_eq!(lot_outlook(&old, Some(&coffee), day("2026-10-21")).viability.unwrap().today.likely, 0.0);
}

#[test]
fn a_test_is_read_with_its_interval_and_its_replicates() {
    let mut lot = lot(Kept::DryOpen, None, 1000);
    tested(&mut lot, "2026-03-01", 20, &[(25, 22), (25, 21)]);
    tested(&mut lot, "2026-03-02", 20, &[(100, 84), (100, 79), (100, 88), (100, 81)]);
    tested(&mut lot, "2026-03-03", 20, &[(100, 90), (100, 70), (100, 95), (100, 77)]);
    tested(&mut lot, "2026-03-04", 20, &[(25, 25), (10, 1)]);
    tested(&mut lot, "2026-03-05", 20, &[(0, 0)]);
    let tests = lot_outlook(&lot, None, day("2026-03-06")).tests;
    assert_eq!(tests.len(), 4, "nothing laid out says nothing");
    assert_eq!((tests[0].germinated, tests[0].seeds, tests[0].laid_out), (43, 50, day("2026-02-09")));
    near(tests[0].share.low, 0.738, 0.0005);
    assert_eq!(tests[0].differ(), Differ::Unknown, "two of 25 cannot tell");
    // Section 24: range 9 of 15 tolerated.
    let table = tests[1].replicates.unwrap();
    assert_eq!((table.range, table.max_tolerated_range, tests[1].differ()), (9, Some(15), Differ::Agree));
    assert_eq!(tests[2].differ(), Differ::Apart);
    assert_eq!((tests[3].replicates, tests[3].differ()), (None, Differ::Unknown));
}

#[test]
fn a_lot_is_tested_again_for_a_reason() {
    let grevillea = profile("grevillea");
    let on = day("2026-03-10");
    let retest = |lot: &LotStory, profile: &Profile| lot_outlook(lot, Some(profile), on).retest;
    let fresh = lot(Kept::DryOpen, None, 300);
    let told = retest(&fresh, &grevillea).unwrap();
    let since = day("2026-01-01");
    assert_eq!((told.on, told.why), (since.plus(61), RetestWhy::NeverTested { since }));
    let mut apart = fresh.clone();
    tested(&mut apart, "2026-03-05", 20, &[(50, 45), (50, 20)]);
    let told = retest(&apart, &grevillea).unwrap();
    assert_eq!((told.on, told.every_days), (day("2026-03-05"), 0));
    assert!(matches!(told.why, RetestWhy::ReplicatesApart { .. }));
    // Cedrela at 8 % and 25 degrees falls to 85 % of 90 % in 156.9 days: a third is 52 days.
    let mut cedrela = lot(Kept::DrySealed, Some((8.0, 25.0)), 300);
    cedrela.initial_pct = Some(90.0);
    let told = retest(&cedrela, &profile("Cedrela odorata")).unwrap();
    assert_eq!((told.every_days, told.why), (52, RetestWhy::Falling { since, tested: false }));
    assert_eq!(retest(&lot(Kept::DryOpen, None, 99), &grevillea), Err(NoRetest::FewSeeds { left: 99 }));
    let mut unknown = fresh.clone();
    unknown.seeds_left = None;
    assert_eq!(retest(&unknown, &grevillea), Err(NoRetest::SeedsUnknown));
    let mut dateless = fresh;
    dateless.collected = None;
    assert_eq!(retest(&dateless, &grevillea), Err(NoRetest::NoDay));
}

#[test]
fn what_is_not_known_says_why_and_nothing_panics() {
    let ledger = crate::reckon::Ledger::new(crate::reckon::View { day: day("2027-01-01"), known: None }, []);
    let bare = fold_lot(&ledger, &crate::reckon::site::Site::default(), &LotCode::new("l-2").unwrap());
    let told = lot_outlook(&bare, None, day("2026-03-01"));
    assert_eq!((told.life, told.viability), (Err(NoLife::NotReceived), Err(NoViability::NoStart)));
    // Figures no seed has, and days that run backward.
    for (moisture, celsius) in [(0.0, 20.0), (100.0, 20.0), (f64::NAN, 20.0), (8.0, f64::INFINITY), (8.0, 1e9)] {
        let mut odd = lot(Kept::DrySealed, Some((moisture, celsius)), u32::MAX);
        odd.initial_pct = Some(1e9);
        tested(&mut odd, "2026-01-02", u32::MAX, &[(u32::MAX, u32::MAX), (u32::MAX, 0)]);
        for on in ["0001-01-01", "2026-01-01", "9999-12-31"] {
            let told = lot_outlook(&odd, Some(&profile("Cedrela odorata")), day(on));
            if let Ok(told) = told.viability {
                assert!((0.0..=1.0).contains(&told.today.likely), "{told:?}");
            }
        }
    }
}
