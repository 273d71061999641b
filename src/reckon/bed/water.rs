//! Whether it is wet enough to plant. A day without a gauge line is unknown, never dry.

use super::season;
use crate::base::text::folded;
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
/// Days after such rain in which loam drains, and ground of which nobody wrote the texture: field capacity comes in two or three days
/// (common practice).
pub(crate) const DRAINS_DAYS: i32 = DAYS_AFTER_SOAKING as i32;
/// The same of sand. Ours: hours to a day.
pub(crate) const SAND_DRAINS_DAYS: i32 = 1;
/// The same of clay. Ours: it goes on for many days.
pub(crate) const CLAY_DRAINS_DAYS: i32 = 4;
/// Each further so many mm take a day more. Ours.
pub(crate) const DAY_MORE_MM: f64 = 100.0;
/// For so many times the days in which it drains, a look is asked for whether water stands. Ours: hollows and texts on texture are what
/// they are.
pub(crate) const LOOK_TIMES: i32 = 2;
/// A gauge errs by this share, by wind, dew and the eye (ours; the wind alone takes 2 to 10 %, from memory: WMO guide to instruments). Rain
/// that is short by no more asks for care, as ground that nobody read does.
pub(crate) const GAUGE_ERROR_SHARE: f64 = 0.10;
/// More days than these are not added, whatever fell. Ours.
const MOST_DAYS_MORE: f64 = 6.0;
/// Lets 6.7 + 6.7 + 6.6 mm be 20 although a computer adds them inexactly, mm.
const FUZZ_MM: f64 = 1e-6;

const SOURCE: RuleSource = RuleSource::Rain;
const SEASON_SOURCE: RuleSource = RuleSource::UsualRains;

/// Whether enough rain fell by a day, on ground of such a texture. Unknown water warns and does not block. On a coming day nothing is
/// called dry.
pub fn criterion(site: &Site, texture: Option<&str>, day: Day, looking: Looking) -> Criterion {
    let needed = RainAtLeast { mm: RAIN_NEEDED_MM, days: RAIN_DAYS };
    if let Some(drowned) = drowned(site, texture, day) {
        let full = day < drowned.until;
        let known = if full { drowned.known } else { Wet::Drained { mm: drowned.mm, on: drowned.on } };
        let found = Criterion::found(Question::Water, needed, known, Basis::Measured, !full, RuleSource::Drowned)
            .resting_on(drowned.entries);
        if full {
            return found.expected_on(Some(drowned.until));
        }
        let mut look = found;
        look.warns = true;
        return look;
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

/// Ground that stood full of water.
struct Drowned {
    known: Wet,
    mm: f64,
    on: Day,
    /// The day by which it has drained.
    until: Day,
    entries: Vec<EntryId>,
}

/// Days in which ground of a texture drains, in the words of English and Spanish; unknown as loam.
fn drains_days(texture: Option<&str>) -> i32 {
    let words = folded(texture.unwrap_or_default());
    let has = |stems: &[&str]| stems.iter().any(|stem| words.contains(stem));
    match (has(&["loam", "franc", "silt", "limo"]), has(&["clay", "arcill"]), has(&["sand", "aren"])) {
        (false, true, false) => CLAY_DRAINS_DAYS,
        (false, false, true) => SAND_DRAINS_DAYS,
        _ => DRAINS_DAYS,
    }
}

/// The rain that fills the ground on a day, or filled it so lately that water may stand; none where it has drained, or nobody read it.
fn drowned(site: &Site, texture: Option<&str>, day: Day) -> Option<Drowned> {
    let rain = |on: Day| {
        let (entry, weather) = site.weather.get(&on)?;
        Some((entry, weather.rain_mm?.0))
    };
    let of = |on: Day| {
        let (last, mm) = rain(on).filter(|(_, mm)| *mm > 0.0)?;
        let before = rain(on.plus(-1));
        let both = mm + before.map_or(0.0, |(_, mm)| mm);
        let more = ((both - DROWNED_MM) / DAY_MORE_MM).floor().clamp(0.0, MOST_DAYS_MORE) as i32;
        let drains = drains_days(texture) + more;
        let asked = both >= DROWNED_MM && day < on.plus(drains * LOOK_TIMES);
        let entries = before.into_iter().map(|(entry, _)| entry).chain([last]).cloned().collect();
        let known = Wet::Drowned { mm: both, on };
        asked.then(|| Drowned { known, mm: both, on, until: on.plus(drains), entries })
    };
    let longest = (CLAY_DRAINS_DAYS + MOST_DAYS_MORE as i32) * LOOK_TIMES;
    (0..longest).map(|back| day.plus(-back)).filter_map(of).max_by_key(|one| one.until)
}

/// The rain of the last `days` days with a gauge line, the day itself among them.
fn gauge(site: &Site, day: Day, days: i32) -> impl Iterator<Item = (&EntryId, f64)> {
    let lines = site.weather.range(day.plus(1 - days)..=day);
    lines.filter_map(|(_, (entry, weather))| weather.rain_mm.map(|rain| (entry, rain.0)))
}
