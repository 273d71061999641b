//! The forecasts of the sample nursery: its failing tray is named when a good nursery hand would have said so.

use outplant::base::{Moment, TrayCode};
use outplant::desk::{Now, sample};
use outplant::reckon::View;
use outplant::reckon::forecast::{Judgement, forecasts};

use crate::support::day;

const TODAY: &str = "2026-11-25";

/// Old hearth-kept coffee seed, 300 sown 78 days ago, tested 6 of 50, 19 up; a good hand would say so once the half day, 55,
/// has passed and it has been counted.
#[test]
fn the_failing_tray_of_the_sample_is_named_and_no_good_one_is() {
    let folder = tempfile::tempdir().unwrap();
    let now = Now { today: day(TODAY), clock: None, moment: Moment::end_of(day(TODAY), 3.0) };
    let desk = sample::make(&folder.path().join("sample.outplant"), folder.path(), now).unwrap();
    let told = forecasts(&desk.picture_of(View { day: day(TODAY), known: None }));
    assert!(told.len() > 5, "only {} forecasts", told.len());
    let failing: Vec<String> = told
        .iter()
        .filter(|(_, told)| told.judgement == Judgement::Failing)
        .map(|(tray, _)| tray.to_string())
        .collect();
    assert_eq!(failing, ["cof-031"], "{told:#?}");
    // Named at the first count after the half day that leaves no hope, and not before the half day.
    let code = TrayCode::new("cof-031").unwrap();
    let on = |ago: i32| forecasts(&desk.picture_of(View { day: day(TODAY).plus(-ago), known: None }));
    let named: Vec<i32> = (0..40).filter(|ago| on(*ago)[&code].judgement == Judgement::Failing).collect();
    assert!(named.len() >= 12 && named.len() <= 78 - 55, "failing {named:?} days ago");
    assert!(named.iter().enumerate().all(|(number, ago)| *ago == number as i32), "not without a break: {named:?}");
    let poor = &told[&TrayCode::new("cof-031").unwrap()];
    assert!(poor.ask_to_sow_again && poor.emerged == 19, "{poor:?}");
}
