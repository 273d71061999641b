use super::*;
use crate::base::{DeviceId, EntryId, TrayCode};
use crate::nursery::entry::MeasuredPlant;
use crate::nursery::species::Catalogue;
use crate::reckon::stock::{Origin, SampleLook, Sowing};
use crate::science::growth::{GrowthCurve, GrowthModel};
use serde_json::json;
use std::sync::Arc;

fn day(written: &str) -> Day {
    written.parse().unwrap()
}

fn sown_on() -> Day {
    day("2026-01-01")
}

fn entry(seq: u64) -> EntryId {
    EntryId { device: DeviceId::new("kilima").unwrap(), seq }
}

/// Coffee: 20 to 40 cm, collar 4 mm, 210 / 300 days.
fn coffee() -> Arc<Profile> {
    let species = Catalogue::built_in();
    species.get(&species.find("coffee").unwrap()).unwrap().clone()
}

fn plant(height_cm: f64, collar_mm: Option<f64>) -> MeasuredPlant {
    let mut body = json!({"height_cm": height_cm});
    if let Some(collar) = collar_mm {
        body["collar_mm"] = json!(collar);
    }
    serde_json::from_value(body).unwrap()
}

/// A tray sown on 1 January with samples of (age, plants).
fn tray(samples: &[(i32, Vec<MeasuredPlant>)]) -> TrayStory {
    let mut story = TrayStory::blank(TrayCode::new("cof-1").unwrap());
    story.origin = Some(Origin::Sown);
    story.sowings.push(Sowing { day: sown_on(), lot: None, seeds: Some(100), entry: entry(1) });
    for (number, (age, plants)) in samples.iter().enumerate() {
        let sample = SampleLook { day: sown_on().plus(*age), plants: plants.clone(), entry: entry(number as u64 + 2) };
        story.samples.push(sample);
    }
    story
}

/// Three plants a little below, at and above a height.
fn around(height: f64) -> Vec<MeasuredPlant> {
    [height * 0.95, height, height * 1.05].iter().map(|height| plant(*height, None)).collect()
}

fn told(story: &TrayStory) -> TrayGrowth {
    tray_growth(story, Some(&coffee()), sown_on().plus(200))
}

/// The example of docs/reckoning.md, section 35: A = 30, k = 0.03, t0 = 120 reaches 20 cm on 120 + ln 2 / 0.03 = 143.1.
#[test]
fn a_tray_foretells_its_own_day() {
    let curve = GrowthCurve { model: GrowthModel::Logistic, a: 30.0, k: 0.03, t0: 120.0 };
    let samples: Vec<(i32, Vec<MeasuredPlant>)> =
        [60, 80, 100, 120, 135].iter().map(|age| (*age, around(curve.height(f64::from(*age))))).collect();
    let growth = told(&tray(&samples));
    let Coming::Expected(reach) = growth.height.unwrap().coming else { panic!("{growth:?}") };
    assert_eq!((reach.samples, reach.plants), (5, 15));
    let (low, high) = reach.between.unwrap();
    let exact = sown_on().plus(144);
    assert!(low <= exact && exact <= high, "{low} {high}");
    assert!(reach.day.days_since(exact).abs() <= 2, "{}", reach.day);
    assert!(low >= sown_on().plus(135), "not before the last sample, which was below");
}

#[test]
fn too_few_samples_leave_the_days_of_the_species() {
    let growth = told(&tray(&[(60, around(4.0)), (80, around(7.0))]));
    assert_eq!(growth.height.unwrap().coming, Coming::Unknown(NoCurve::FewSamples { have: 2 }));
    // Through three days a curve goes whatever they say.
    let three = told(&tray(&[(60, around(4.0)), (80, around(7.0)), (100, around(12.0))]));
    assert_eq!(three.height.unwrap().coming, Coming::Unknown(NoCurve::FewSamples { have: 3 }));
    assert_eq!(growth.by_species, Some((sown_on().plus(210), Some(sown_on().plus(300)))));
    assert_eq!(told(&tray(&[])).height.unwrap().coming, Coming::Unknown(NoCurve::NeverMeasured));
    // Two samples of one day are one day.
    let twice = told(&tray(&[(60, around(4.0)), (60, around(4.2)), (80, around(7.0))]));
    assert_eq!((twice.samples, twice.height.unwrap().coming), (2, Coming::Unknown(NoCurve::FewSamples { have: 2 })));
}

#[test]
fn a_whole_sample_of_the_same_day_takes_the_place_of_the_one_before_as_in_the_verdict() {
    let of = |height: f64, plants: usize| vec![around(height)[0].clone(); plants];
    let mean = |samples: &[(i32, Vec<MeasuredPlant>)]| {
        let mut story = tray(samples);
        story.accounts.standing = 50;
        told(&story).height.unwrap().mean.unwrap()
    };
    let first = of(36.0, 20);
    let exact = mean(&[(180, of(75.0, 20))]);
    assert_eq!(mean(&[(180, first.clone()), (180, of(75.0, 20))]), exact);
    assert!(mean(&[(180, first), (180, of(75.0, 1))]) < exact, "one plant more is counted with the others");
}

#[test]
fn what_is_there_is_there_and_what_cannot_be_told_says_why() {
    let there = told(&tray(&[(180, around(24.0))]));
    assert_eq!(there.height.unwrap().coming, Coming::There { measured_on: sown_on().plus(180) });
    // A curve that plainly ends at 12 cm.
    let stunted = GrowthCurve { model: GrowthModel::Logistic, a: 12.0, k: 0.08, t0: 70.0 };
    let samples: Vec<(i32, Vec<MeasuredPlant>)> =
        [50, 70, 90, 120, 150, 180].iter().map(|age| (*age, around(stunted.height(f64::from(*age))))).collect();
    let Coming::Unknown(NoCurve::EndsBelow { at }) = told(&tray(&samples)).height.unwrap().coming else {
        panic!("{:?}", told(&tray(&samples)))
    };
    assert!((at - 12.0).abs() < 0.5, "{at}");
    // Nobody knows when it was sown.
    let mut ageless = tray(&samples);
    ageless.sowings.clear();
    assert_eq!(told(&ageless).height.unwrap().coming, Coming::Unknown(NoCurve::NoAge));
    // Shrinking, level and wild samples give a reason or a day, never a panic.
    for heights in [[15.0, 12.0, 9.0, 5.0], [8.0, 8.0, 8.0, 8.0], [1.0, 19.0, 1.0, 19.0], [0.1, 0.1, 0.1, 19.0]] {
        let samples: Vec<(i32, Vec<MeasuredPlant>)> =
            heights.iter().enumerate().map(|(i, height)| (40 + 20 * i as i32, around(*height))).collect();
        let coming = told(&tray(&samples)).height.unwrap().coming;
        if let Coming::Expected(reach) = coming {
            assert!(reach.day >= sown_on().plus(100), "{heights:?}: {reach:?}");
        }
    }
}

/// Twelve plants of a height over collar.
fn over(height: f64, quotient: f64) -> Vec<MeasuredPlant> {
    (0..12).map(|i| plant(height, Some(height / (quotient + 0.1 * f64::from(i % 3 - 1))))).collect()
}

/// The second example of section 35: 6.0 on day 100 and 7.0 on day 120 pass 8 on day 140.
#[test]
fn lanky_stock_is_seen_in_time() {
    let growth = told(&tray(&[(100, over(18.0, 6.0)), (120, over(21.0, 7.0))]));
    let lanky = growth.lanky.unwrap();
    assert!((lanky.sturdiness - 7.0).abs() < 0.01, "{lanky:?}");
    let LankyComes::On(on) = lanky.comes else { panic!("{lanky:?}") };
    assert!((139..=141).contains(&on.days_since(sown_on())), "{on}");
    assert_eq!(lanky.entries, [entry(3), entry(2)]);
    assert_eq!(told(&tray(&[(100, over(18.0, 8.4))])).lanky.unwrap().comes, LankyComes::Now);
    assert_eq!(told(&tray(&[(100, over(18.0, 6.0))])).lanky.unwrap().comes, LankyComes::OneSample);
    // Samples of three days apart, a fall, and a rise within chance tell nothing.
    let near = told(&tray(&[(117, over(18.0, 6.0)), (120, over(21.0, 7.0))]));
    assert_eq!(near.lanky.unwrap().comes, LankyComes::OneSample);
    let falls = told(&tray(&[(100, over(18.0, 7.0)), (120, over(21.0, 6.0))]));
    assert_eq!(falls.lanky.unwrap().comes, LankyComes::NotSeen);
    let chance = told(&tray(&[(100, over(18.0, 6.0)), (120, over(21.0, 6.01))]));
    assert_eq!(chance.lanky.unwrap().comes, LankyComes::NotSeen);
    // No rule for soft stems, and nothing without a collar.
    let mut soft = (*coffee()).clone();
    soft.stem.as_mut().unwrap().value = Stem::Soft;
    let story = tray(&[(100, over(18.0, 8.4))]);
    assert!(tray_growth(&story, Some(&soft), sown_on().plus(120)).lanky.is_none());
    assert!(told(&tray(&[(100, around(18.0))])).lanky.is_none());
}

/// The third example of section 35: five plants of 18, 19, 20, 21, 22: s = 1.581, t(4) = 2.776, within 1.96 cm.
#[test]
fn a_small_sample_near_the_limit_is_not_decided() {
    let plants: Vec<MeasuredPlant> = [18.0, 19.0, 20.0, 21.0, 22.0].iter().map(|height| plant(*height, None)).collect();
    let known = told(&tray(&[(180, plants)])).sample.unwrap();
    assert!((known.within_cm.unwrap() - 1.963).abs() < 0.0005, "{known:?}");
    assert!(known.undecided && known.more > 0, "{known:?}");
    let tall: Vec<MeasuredPlant> = [28.0, 29.0, 30.0, 31.0, 32.0].iter().map(|height| plant(*height, None)).collect();
    assert!(!told(&tray(&[(180, tall)])).sample.unwrap().undecided);
    let one = told(&tray(&[(180, vec![plant(20.0, None)])])).sample.unwrap();
    assert_eq!((one.within_cm, one.undecided), (None, false));
}
