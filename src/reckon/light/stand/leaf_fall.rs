//! Leaves that fall in the dry months and come back with the rains.

use super::Leaves;
use crate::base::Day;
use crate::nursery::species::Profile;
use crate::reckon::bed::season::rains_on;
use crate::reckon::light::crown::day_taken;
use crate::reckon::site::Site;

/// A month that usually brings less rain is dry, mm. Köppen's limit of a dry month in the tropics.
const DRY_MONTH_MM: f64 = 60.0;
/// Days of a dry spell until what falls has fallen. Ours: leaves of the second month are down.
const FALLS_DAYS: i32 = 60;
/// Days of rain until they are back. Ours: a flush.
const BACK_DAYS: i32 = 30;
/// Days by which a look goes back. Ours.
const STEP_DAYS: i32 = 10;

/// What a species that sheds carries of its leaves on a day, by the usual rain of the months, else by the rains that are
/// described. A year may be wetter or drier, so that the range goes from all that falls to none. Where nothing tells of dry
/// months they may have fallen on any day.
pub(super) fn after_fall(site: &Site, profile: &Profile, day: Day) -> Leaves {
    let full = Leaves { thin: 1.0, likely: 1.0, dense: 1.0 };
    let Some(kept) = kept(profile) else { return full };
    match fallen(site, day_taken(day)) {
        None => Leaves { thin: kept, ..full },
        Some(part) if part > 0.0 => Leaves { thin: kept, likely: 1.0 - part * (1.0 - kept), dense: 1.0 },
        Some(_) => full,
    }
}

/// The share of its leaves that a species keeps through the dry months, where it is known to shed.
fn kept(profile: &Profile) -> Option<f64> {
    profile.dry_months_leaves_pct.as_ref().map(|figure| (figure.value / 100.0).clamp(0.0, 1.0))
}

/// Which part of what falls is down on a day.
fn fallen(site: &Site, day: Day) -> Option<f64> {
    let dry_now = is_dry(site, day)?;
    let long = if dry_now { FALLS_DAYS } else { BACK_DAYS };
    let mut days = STEP_DAYS;
    while days < long && is_dry(site, day.plus(-days))? == dry_now {
        days += STEP_DAYS;
    }
    let part = f64::from(days) / f64::from(long);
    Some(if dry_now { part } else { 1.0 - part })
}

/// Whether a day lies in a dry month; none where nothing is written of the months.
fn is_dry(site: &Site, day: Day) -> Option<bool> {
    let season = site.season.on(day)?;
    let month = day.ymd().1 as usize - 1;
    match season.rain_mm.as_ref().and_then(|rain| rain.get(month)) {
        Some(rain) => Some(rain.0 < DRY_MONTH_MM),
        None if season.rains.is_empty() => None,
        None => Some(rains_on(site, day).is_none()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::SpeciesKey;
    use crate::reckon::test_book::{TestBook, day};
    use serde_json::json;

    fn on(season: serde_json::Value, when: &str) -> Leaves {
        let mut page = TestBook::default();
        if !season.is_null() {
            page.write("2025-01-01", "season_set", season);
        }
        let (_, site) = page.story(when);
        let profile = site.profile(&SpeciesKey::new("CAS")).unwrap().clone();
        after_fall(&site, &profile, day(when))
    }

    #[test]
    fn leaves_fall_through_two_dry_months_and_are_back_after_one_of_rain() {
        let rain = json!({"rains":[],"rain_mm":[0,0,20,90,150,150,120,120,120,90,70,10]});
        let kept = 0.58;
        let likely = |when: &str| on(rain.clone(), when).likely;
        assert_eq!(likely("2026-07-15"), 1.0);
        assert!((likely("2026-02-20") - kept).abs() < 1e-9, "the end of the dry months");
        assert!(likely("2025-12-20") < 1.0 && likely("2025-12-20") > kept, "they begin to fall");
        assert!(likely("2026-04-10") > kept && likely("2026-04-10") < 1.0, "they come back");
        assert_eq!(likely("2026-05-10"), 1.0);
        let dry = on(rain.clone(), "2026-02-20");
        assert_eq!((dry.thin, dry.dense), (kept, 1.0), "a year may be drier or wetter");
    }

    #[test]
    fn described_rains_tell_of_dry_months_and_where_nothing_does_leaves_may_be_down_any_day() {
        let rains = json!({"rains":[{"from":"04-01","until":"11-15"}]});
        assert!((on(rains.clone(), "2026-02-20").likely - 0.58).abs() < 1e-9);
        assert_eq!(on(rains, "2026-08-01").likely, 1.0);
        let unknown = on(serde_json::Value::Null, "2026-08-01");
        assert_eq!((unknown.thin, unknown.likely, unknown.dense), (0.58, 1.0, 1.0));
    }
}
