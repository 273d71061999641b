//! The forecasts of the sample nursery: its failing tray is named when a good nursery hand would have said so.

use outplant::base::{Moment, TrayCode};
use outplant::desk::{Now, sample};
use outplant::reckon::View;
use outplant::reckon::forecast::{Because, Judgement, TrayForecast, forecasts};

use crate::support::day;

const TODAY: &str = "2026-11-25";

fn of(desk: &outplant::desk::Desk, days_ago: i32) -> std::collections::BTreeMap<TrayCode, TrayForecast> {
    forecasts(&desk.picture_of(View { day: day(TODAY).plus(-days_ago), known: None }))
}

#[test]
fn the_failing_tray_is_named() {
    let folder = tempfile::tempdir().unwrap();
    let now = Now { today: day(TODAY), clock: None, moment: Moment::end_of(day(TODAY), 3.0) };
    let desk = sample::make(&folder.path().join("sample.outplant"), folder.path(), now).unwrap();
    let code = TrayCode::new("cof-031").unwrap();
    for days_ago in (0..100).step_by(4) {
        for (tray, told) in of(&desk, days_ago) {
            println!(
                "-{days_ago} {tray} {:?} seeds {} up {} exp {:.0} look {:?} sown {} last {:?} end {:?} resow {} learned {} {:?}",
                told.judgement,
                told.seeds,
                told.emerged,
                told.expected,
                told.last_look.map(|d| d.to_string()),
                told.sown_on,
                told.at_last_due,
                told.in_the_end,
                told.ask_to_sow_again,
                told.learned_from,
                told.because
            );
        }
    }
    assert_eq!(of(&desk, 0)[&code].judgement, Judgement::Failing);
    let _ = Because::NotCounted;
}
