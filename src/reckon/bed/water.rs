//! Whether it is wet enough to plant. A day without a gauge line is unknown, never dry.

use super::season;
use crate::base::{Day, EntryId};
use crate::reckon::picture::quantity::{RainAtLeast, Wet};
use crate::reckon::picture::{Basis, Criterion, Gap, Looking, Question, RuleSource};
use crate::reckon::site::Site;
use crate::science::soil::DAYS_AFTER_SOAKING;

/// Rain that wets the ground enough, mm. Ours: Sivakumar 1988 dates the onset of rains with it; for a day it is no rule of his.
pub(crate) const RAIN_NEEDED_MM: f64 = 20.0;
/// Days in which it must fall, the day itself the last. Ours, as above.
pub(crate) const RAIN_DAYS: i32 = 3;
/// Where the gauge was not read for so many days, the season's usual rains are taken instead. Ours.
pub(crate) const NO_GAUGE_DAYS: i32 = 10;
/// Rain of so much on a day and the day before fills the ground: no air is left for roots. Ours: three times what the soil around a ball
/// holds for its plant (20 to 40 mm).
pub(crate) const DROWNED_MM: f64 = 100.0;
/// Days after such rain in which it drains: field capacity comes in two or three (common practice); clay and hollows take longer.
pub(crate) const DRAINS_DAYS: i32 = DAYS_AFTER_SOAKING as i32;
/// A gauge errs by this share, by wind, dew and the eye (ours; the wind alone takes 2 to 10 %, from memory: WMO guide to instruments). Rain
/// that is short by no more asks for care, as ground that nobody read does.
pub(crate) const GAUGE_ERROR_SHARE: f64 = 0.10;
/// Lets 6.7 + 6.7 + 6.6 mm be 20 although a computer adds them inexactly, mm.
const FUZZ_MM: f64 = 1e-6;

const SOURCE: RuleSource = RuleSource::Rain;
const SEASON_SOURCE: RuleSource = RuleSource::UsualRains;

/// Whether enough rain fell by a day. Unknown water warns and does not block. On a coming day nothing is called dry.
pub fn criterion(site: &Site, day: Day, looking: Looking) -> Criterion {
    let needed = RainAtLeast { mm: RAIN_NEEDED_MM, days: RAIN_DAYS };
    if let Some(drowned) = drowned(site, day) {
        return Criterion::found(Question::Water, needed, drowned.known, Basis::Measured, false, RuleSource::Drowned)
            .expected_on(Some(drowned.until))
            .resting_on(drowned.entries);
    }
    let known: Vec<(&EntryId, f64)> = gauge(site, day, RAIN_DAYS).collect();
    let mm: f64 = known.iter().map(|(_, mm)| mm).sum();
    let enough = mm >= RAIN_NEEDED_MM - FUZZ_MM;
    let all_known = known.len() as i32 == RAIN_DAYS && looking != Looking::Ahead;
    let entries: Vec<EntryId> = known.iter().map(|(entry, _)| (*entry).clone()).collect();
    if enough || all_known {
        let known = Wet::Rain { mm, days: RAIN_DAYS };
        let found =
            Criterion::found(Question::Water, needed, known, Basis::Measured, enough, SOURCE).resting_on(entries);
        let near = !enough && mm >= RAIN_NEEDED_MM * (1.0 - GAUGE_ERROR_SHARE) - FUZZ_MM;
        return if near { found.advising() } else { found };
    }
    if gauge(site, day, NO_GAUGE_DAYS).next().is_none()
        && let Some((entry, _)) = season::rains_on(site, day)
    {
        let mut usual = Criterion::found(Question::Water, needed, Wet::UsualRains, Basis::Assumed, true, SEASON_SOURCE)
            .resting_on([entry]);
        // Nobody saw that it rained: a finger in the ground tells.
        usual.warns = true;
        return usual;
    }
    let gap = if looking == Looking::Ahead {
        Some(Gap::ComingDay)
    } else {
        let days_read = known.len() as i32;
        (days_read > 0).then_some(Gap::GaugePartly { days_read, of_days: RAIN_DAYS, mm })
    };
    let mut unknown = Criterion::lacking(Question::Water, Some(needed), gap, false, SOURCE).resting_on(entries);
    unknown.warns = true;
    unknown
}

/// Ground that stands full of water.
struct Drowned {
    known: Wet,
    until: Day,
    entries: Vec<EntryId>,
}

/// Whether so much fell that the ground has not drained on a day; none where it has, or nobody read it.
fn drowned(site: &Site, day: Day) -> Option<Drowned> {
    let rain = |on: Day| {
        let (entry, weather) = site.weather.get(&on)?;
        Some((entry, weather.rain_mm?.0))
    };
    (0..DRAINS_DAYS).map(|back| day.plus(-back)).find_map(|on| {
        let (last, mm) = rain(on).filter(|(_, mm)| *mm > 0.0)?;
        let before = rain(on.plus(-1));
        let both = mm + before.map_or(0.0, |(_, mm)| mm);
        let entries = before.into_iter().map(|(entry, _)| entry).chain([last]).cloned().collect();
        let known = Wet::Drowned { mm: both, on };
        (both >= DROWNED_MM).then(|| Drowned { known, until: on.plus(DRAINS_DAYS), entries })
    })
}

/// The rain of the last `days` days with a gauge line, the day itself among them.
fn gauge(site: &Site, day: Day, days: i32) -> impl Iterator<Item = (&EntryId, f64)> {
    let lines = site.weather.range(day.plus(1 - days)..=day);
    lines.filter_map(|(_, (entry, weather))| weather.rain_mm.map(|rain| (entry, rain.0)))
}
