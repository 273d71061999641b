//! The forecasts of the sample nursery: its failing tray is named when a good nursery hand would have said so.

use outplant::base::{Moment, TrayCode};
use outplant::desk::{Now, sample};
use outplant::reckon::Picture;
use outplant::reckon::View;
use outplant::reckon::forecast::{
    ForecastBasis, Judgement, Reach, Remembered, forecasts, outlook, outlook_of_living, outlook_of_living_remembering,
};
use outplant::reckon::round::{Task, round, round_by, round_from};
use outplant::reckon::sowing::SowingAsked;

use crate::support::day;

const TODAY: &str = "2026-11-25";

/// Old hearth-kept coffee seed, 300 sown 78 days ago, tested 6 of 50, 19 up; a good hand would say so once the half day, 55,
/// has passed and it has been counted.
#[test]
fn the_failing_tray_of_the_sample_is_named_and_no_good_one_is() {
    let folder = tempfile::tempdir().unwrap();
    let now = Now { today: day(TODAY), clock: None, moment: Moment::end_of(day(TODAY), 3.0) };
    let desk = sample::make(&folder.path().join("sample.outplant"), folder.path(), now).unwrap();
    let told = forecasts(&desk.picture_of(View { day: day(TODAY), known: None }).unwrap());
    assert!(told.len() > 5, "only {} forecasts", told.len());
    let failing: Vec<String> = told
        .iter()
        .filter(|(_, told)| told.judgement == Judgement::Failing)
        .map(|(tray, _)| tray.to_string())
        .collect();
    assert_eq!(failing, ["cof-031"], "{told:#?}");
    // Named at the first count after the half day that leaves no hope, and not before the half day.
    let code = TrayCode::new("cof-031").unwrap();
    let on = |ago: i32| forecasts(&desk.picture_of(View { day: day(TODAY).plus(-ago), known: None }).unwrap());
    let named: Vec<i32> = (0..40).filter(|ago| on(*ago)[&code].judgement == Judgement::Failing).collect();
    assert!(named.len() >= 12 && named.len() <= 78 - 55, "failing {named:?} days ago");
    assert!(named.iter().enumerate().all(|(number, ago)| *ago == number as i32), "not without a break: {named:?}");
    let poor = &told[&TrayCode::new("cof-031").unwrap()];
    assert!(poor.ask_to_sow_again && poor.emerged == 19, "{poor:?}");
}

fn sample_picture(folder: &std::path::Path) -> Picture {
    let now = Now { today: day(TODAY), clock: None, moment: Moment::end_of(day(TODAY), 3.0) };
    let desk = sample::make(&folder.join("sample.outplant"), folder, now).unwrap();
    desk.picture_of(View { day: day(TODAY), known: None }).unwrap()
}

#[test]
fn the_failing_tray_is_not_sown_again_while_the_others_give_enough_and_says_until_when_it_could_be() {
    let folder = tempfile::tempdir().unwrap();
    let picture = sample_picture(folder.path());
    let round = round(&picture);
    let told = outlook(&picture, ForecastBasis::OwnRecords);
    let code = TrayCode::new("cof-031").unwrap();
    let (forecast, again) = (&told.trays[&code], &told.again[&code]);
    assert!(forecast.judgement == Judgement::Failing && forecast.ask_to_sow_again, "{forecast:?}");
    assert!((again.missing - (forecast.expected - forecast.in_the_end.likely)).abs() < 1e-9 && again.missing > 20.0);
    match again.reach {
        Reach::Same { rains, sow_by } => assert_eq!(rains.last_safe.days_since(sow_by), again.usual_days),
        Reach::Later { rains, sow_by, was_by, .. } => {
            assert!(was_by < day(TODAY));
            assert_eq!(rains.unwrap().last_safe.days_since(sow_by.unwrap()), again.usual_days);
        }
        Reach::NoRains => panic!("the sample has rains"),
    }
    // Other coffee fills the beds, and no good sowing is asked about.
    let coffee = picture.trays[&code].species.as_ref();
    let asked = SowingAsked::of(&picture, &told.stock, coffee, None, None, 0.95);
    assert!(asked.open_places > 0 && asked.plan.is_none(), "{asked:?}");
    assert!(round.stops.iter().chain(&round.can_wait).all(|stop| stop.task != Task::SowAgain));
}

#[test]
fn what_is_worth_most_a_minute_comes_first_of_what_can_wait() {
    let folder = tempfile::tempdir().unwrap();
    let round = round(&sample_picture(folder.path()));
    let worth = &round.worth_looking;
    assert!(!worth.is_empty() && worth.is_sorted_by(|a, b| a.saved_per_minute >= b.saved_per_minute));
    for look in worth {
        let reckoned = look.chance * look.plants * look.nearness / look.minutes;
        assert!((look.saved_per_minute - reckoned).abs() < 1e-9 && look.chance <= 0.5 && look.nearness <= 1.0);
    }
    let waiting: Vec<&str> = round.can_wait.iter().map(|stop| stop.id.as_str()).collect();
    let first: Vec<&str> =
        round.worth_shown().map(|look| look.stop.as_str()).filter(|stop| waiting.contains(stop)).collect();
    assert_eq!(&waiting[..first.len()], &first[..]);
}

#[test]
fn stock_holds_every_living_tray_and_the_handbook_can_lead_alone() {
    let folder = tempfile::tempdir().unwrap();
    let picture = sample_picture(folder.path());
    let (here, handbook) = (outlook(&picture, ForecastBasis::OwnRecords), outlook(&picture, ForecastBasis::Handbook));
    for (code, tray) in picture.trays.iter().filter(|(_, tray)| tray.standing > 0 && tray.species.is_some()) {
        let stock = &here.stock[code];
        let plants = stock.plants;
        assert!(plants.low <= plants.likely && plants.likely <= plants.high, "{code}: {plants:?}");
        if tray.ready {
            assert_eq!(plants, tray.plantable, "{code}");
        } else {
            let reckoned = stock.from.likely * stock.survival * (1.0 - stock.culls);
            assert!((plants.likely - reckoned).abs() < 1e-9, "{code}");
        }
    }
    let sum: f64 = here.stock.values().map(|stock| stock.plants.likely).sum();
    let months = here.pipelines.iter().flat_map(|one| one.months.iter().map(|month| month.plants.likely));
    let undated = here.pipelines.iter().filter_map(|one| one.undated).map(|(_, plants)| plants.likely);
    assert!((months.chain(undated).sum::<f64>() - sum).abs() < 1e-6, "nothing falls out of the pipeline");
    assert!(here.experience.values().any(|known| known.days_to_plantable.trays > 0), "the sample taught nothing");
    for (species, known) in &handbook.experience {
        assert_eq!(known.days_to_plantable.used, known.days_to_plantable.handbook, "{species}");
        assert_eq!(known.days_to_plantable.here, here.experience[species].days_to_plantable.here, "still shown");
    }
    assert!(handbook.trays.values().all(|told| told.learned_from == 0));
}

/// The screen reckons what is expected once, for itself and for the round; the command line makes the round alone.
#[test]
fn the_round_of_the_screen_is_that_of_the_command_line_on_every_day() {
    let folder = tempfile::tempdir().unwrap();
    let now = Now { today: day(TODAY), clock: None, moment: Moment::end_of(day(TODAY), 3.0) };
    let desk = sample::make(&folder.path().join("sample.outplant"), folder.path(), now).unwrap();
    for ago in (0..360).step_by(45) {
        let picture = desk.picture_of(View { day: day(TODAY).plus(-ago), known: None }).unwrap();
        for forecast_basis in [ForecastBasis::OwnRecords, ForecastBasis::Handbook] {
            let told = outlook_of_living(&picture, forecast_basis);
            assert_eq!(round_from(&picture, &told), round_by(&picture, forecast_basis), "{ago} days ago");
            let all = outlook(&picture, forecast_basis);
            assert_eq!((told.stock, told.pipelines), (all.stock, all.pipelines), "{ago} days ago");
        }
    }
}

#[test]
fn what_is_remembered_of_earlier_pictures_changes_no_answer() {
    let folder = tempfile::tempdir().unwrap();
    let now = Now { today: day(TODAY), clock: None, moment: Moment::end_of(day(TODAY), 3.0) };
    let mut desk = sample::make(&folder.path().join("sample.outplant"), folder.path(), now).unwrap();
    let mut remembered = Remembered::default();
    let mut same = |picture: &Picture, forecast_basis: ForecastBasis| {
        let told = outlook_of_living_remembering(picture, forecast_basis, &mut remembered);
        assert_eq!(told, outlook_of_living(picture, forecast_basis), "on {}", picture.day);
        told
    };
    let first = same(&desk.picture(), ForecastBasis::OwnRecords);
    assert!(first.trays.len() > 5);
    // A count, a lot's test, another day, the handbook, and back again.
    let write = |kind: &str, pairs: &[&str]| {
        let pairs: Vec<String> = pairs.iter().map(|pair| pair.to_string()).collect();
        outplant::desk::read_typed(kind, &pairs, day(TODAY), "tabu").unwrap()
    };
    desk.record(vec![write("counted", &["tray=cof-031", "standing=40"])]).unwrap();
    let counted = same(&desk.picture(), ForecastBasis::OwnRecords);
    assert_ne!(first.trays, counted.trays, "a count changes the forecast");
    let lots = desk.picture().lots;
    let lot = lots.values().find(|lot| lot.seeds_left.is_some_and(|left| left >= 50)).unwrap().code.to_string();
    desk.record(vec![write(
        "lot_tested",
        &[&format!("lot={lot}"), "replicates=[{\"seeds\":50,\"germinated\":20}]", "days=5"],
    )])
    .unwrap();
    same(&desk.picture(), ForecastBasis::OwnRecords);
    let view = |ago: i32| View { day: day(TODAY).plus(-ago), known: None };
    for ago in [30, 0, 200] {
        same(&desk.picture_of(view(ago)).unwrap(), ForecastBasis::OwnRecords);
        same(&desk.picture_of(view(ago)).unwrap(), ForecastBasis::Handbook);
    }
    same(&desk.picture(), ForecastBasis::OwnRecords);
}
