//! Ground that stands full of water after heavy rain.

use super::texture::named;
use crate::base::{Day, EntryId};
use crate::reckon::picture::quantity::{WaterNeeded, Wet};
use crate::reckon::picture::{Basis, Criterion, Question, RuleSource};
use crate::reckon::site::Site;
use crate::science::soil::DAYS_AFTER_SOAKING;

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
/// More days than these are not added, whatever fell. Ours.
const MOST_DAYS_MORE: f64 = 6.0;

/// Whether ground of a texture stands full of water, or asks for a look whether it does; none where it has drained, or a finger found
/// it dry after that rain.
pub(super) fn criterion(
    site: &Site,
    texture: Option<&str>,
    needed: WaterNeeded,
    (day, found_dry): (Day, Option<Day>),
) -> Option<Criterion> {
    let drowned = drowned(site, texture, day).filter(|rain| found_dry.is_none_or(|dry| rain.on >= dry))?;
    let full = day < drowned.until;
    let known = if full { drowned.known } else { Wet::Drained { mm: drowned.mm, on: drowned.on } };
    let mut found = Criterion::found(Question::Water, needed, known, Basis::Measured, !full, RuleSource::Drowned)
        .resting_on(drowned.entries);
    found.warns = !full;
    Some(found.expected_on(full.then_some(drowned.until)))
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
    match named(texture) {
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
