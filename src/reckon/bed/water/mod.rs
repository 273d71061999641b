//! Whether it is wet enough to plant: by what is left of the water that young roots reach, where the gauge or the monthly normals tell
//! enough; else by the rain of three days. A day without a gauge line is unknown, never dry.

pub(crate) mod balance;
pub(crate) mod drowned;
pub(crate) mod texture;

use self::balance::{DRY_RUN_DAYS, Missing, Waters};
use self::texture::Texture;
use super::positions::part_seen;
use super::season;
use crate::base::{Day, EntryId};
use crate::reckon::picture::quantity::{RainAtLeast, WaterLeft, WaterNeeded, Wet};
use crate::reckon::picture::{Basis, Criterion, Gap, Looking, Question, RuleSource};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, SoilLook};

/// Rain that wets the ground enough, mm. Ours: Sivakumar 1988 dates the onset of rains with it; for a day it is no rule of his.
pub(crate) const RAIN_NEEDED_MM: f64 = 20.0;
/// Days in which it must fall, the day itself the last. Ours, as above.
pub(crate) const RAIN_DAYS: i32 = 3;
/// Where the gauge was not read for so many days, the season's usual rains are taken instead. Ours.
pub(crate) const NO_GAUGE_DAYS: i32 = 10;
/// A gauge errs by this share, by wind, dew and the eye (ours; the wind alone takes 2 to 10 %, from memory: WMO guide to instruments). Rain
/// that is short by no more, or water by so much of what the ground holds, asks for care, as ground that nobody read does.
pub(crate) const GAUGE_ERROR_SHARE: f64 = 0.10;
/// A look that found the ground wet counts for so many days. Ours: without rain none holds out as long, and with rain the gauge tells.
pub(crate) const WET_LOOK_DAYS: i32 = 14;
/// Lets 6.7 + 6.7 + 6.6 mm be 20 although a computer adds them inexactly, mm.
const FUZZ_MM: f64 = 1e-6;

const SOURCE: RuleSource = RuleSource::Rain;
const LEFT_SOURCE: RuleSource = RuleSource::WaterLeft;
const SEASON_SOURCE: RuleSource = RuleSource::UsualRains;

/// What the water of a bed is asked with.
#[derive(Clone, Copy)]
pub(crate) struct Asked<'a> {
    pub(crate) site: &'a Site,
    pub(crate) waters: &'a Waters,
    pub(crate) story: &'a BedStory,
    /// The texture of the field, as written.
    pub(crate) texture: Option<&'a str>,
    /// Rows of the plan.
    pub(crate) rows: Option<u32>,
    pub(crate) day: Day,
    pub(crate) looking: Looking,
}

/// Whether the ground of a bed is wet enough. Unknown water warns; it holds back only after a dry run. On a coming day nothing is called
/// dry.
pub(crate) fn criterion(asked: Asked<'_>) -> Criterion {
    let Asked { site, waters, texture, day, .. } = asked;
    let class = Texture::of(texture);
    let shared = waters.of_texture(class);
    // A look leads where the gauge alone does not tell that it is wet.
    let is_wet = |missing: &Missing| missing.with_nothing_mm <= missing.easily_mm() + FUZZ_MM;
    let look = seen_wet(asked.story, day).filter(|_| !shared.as_ref().is_some_and(is_wet));
    let since_look = look.and_then(|look| Some((look, waters.since_full(class, look.day)?)));
    let reckoned = since_look.map(|(_, missing)| missing).or(shared);
    let needed = reckoned.as_ref().map_or(NEEDED, needed);
    if let Some(drowned) = drowned::criterion(site, texture, needed, day) {
        return drowned;
    }
    if let Some((look, missing)) = since_look.filter(|(_, missing)| is_wet(missing)) {
        return left(&missing, Some(look), Basis::Measured, true)
            .resting_on([look.entry.clone()])
            .resting_on(lines(site, day, day.days_since(look.day) + 1))
            .seen_in_part(part_seen(look.part.as_ref(), asked.rows));
    }
    match reckoned.filter(|_| waters.tells) {
        Some(missing) => by_balance(asked, &missing, since_look.map(|(look, _)| look)),
        None => by_rain(asked),
    }
}

/// The last look that found the ground wet through, by a rod or a finger.
fn seen_wet(story: &BedStory, day: Day) -> Option<&SoilLook> {
    // Days since a soaking tell that it drained; a person's `wet` or so few days that it is still full.
    let is_full = |look: &&SoilLook| {
        look.at_field_capacity == Some(true) && look.soaked_days.is_none_or(|days| days <= f64::from(RAIN_DAYS - 1))
    };
    let lately = |look: &&SoilLook| (0..WET_LOOK_DAYS).contains(&day.days_since(look.day));
    story.soil.iter().rev().filter(lately).find(is_full)
}

const NEEDED: WaterNeeded = WaterNeeded::Rain(RainAtLeast { mm: RAIN_NEEDED_MM, days: RAIN_DAYS });

fn needed(missing: &Missing) -> WaterNeeded {
    WaterNeeded::Left(missing.full_mm - missing.easily_mm())
}

/// What is left, told by the least that unread days can have brought, or by the usual where that is asked for.
fn left(missing: &Missing, look: Option<&SoilLook>, basis: Basis, met: bool) -> Criterion {
    let by_usual = basis == Basis::Assumed;
    let missing_mm = if by_usual { missing.with_usual_mm } else { missing.with_nothing_mm };
    let days = ((missing.easily_mm() - missing_mm + FUZZ_MM) / missing.demand_mm.max(0.1)).floor().max(0.0);
    let known = Wet::Left(WaterLeft {
        left_mm: missing.full_mm - missing_mm,
        full_mm: missing.full_mm,
        days: days.min(f64::from(balance::BALANCE_DAYS)) as i32,
        missing_mm,
        unread_days: if by_usual { missing.unread_days } else { 0 },
        seen_wet: look.map(|look| look.day),
    });
    Criterion::found(Question::Water, needed(missing), known, basis, met, LEFT_SOURCE)
}

fn by_balance(asked: Asked<'_>, missing: &Missing, look: Option<&SoilLook>) -> Criterion {
    let Asked { site, waters, day, .. } = asked;
    let suffers_mm = missing.easily_mm() + FUZZ_MM;
    let held_mm = suffers_mm + GAUGE_ERROR_SHARE * missing.full_mm;
    let entries: Vec<EntryId> =
        lines(site, day, DRY_RUN_DAYS).into_iter().chain(look.map(|look| look.entry.clone())).collect();
    let told = if missing.with_nothing_mm <= suffers_mm {
        left(missing, look, Basis::Reckoned, true)
    } else if asked.looking == Looking::Ahead {
        not_known(needed(missing), coming(waters), false, LEFT_SOURCE)
    } else if missing.with_much_mm > held_mm {
        left(missing, look, Basis::Reckoned, false)
    } else if missing.with_nothing_mm == missing.with_much_mm {
        left(missing, look, Basis::Reckoned, false).advising()
    } else if missing.with_much_outside_drought_mm > held_mm {
        let gap = after_dry_run(waters).unwrap_or_else(|| partly_read(site, missing, day));
        not_known(needed(missing), Some(gap), true, LEFT_SOURCE)
    } else if waters.has_usual && missing.with_usual_mm <= suffers_mm {
        // Nobody saw that it rained: a finger in the ground tells.
        let mut usual = left(missing, look, Basis::Assumed, true);
        usual.warns = true;
        usual
    } else {
        let gap = partly_read(site, missing, day);
        not_known(needed(missing), Some(gap), false, LEFT_SOURCE)
    };
    told.resting_on(entries)
}

/// The gauge since the first day that nobody read, a week at least.
fn partly_read(site: &Site, missing: &Missing, day: Day) -> Gap {
    let unread_since = missing.first_unread.map_or(0, |first| day.days_since(first) + 1);
    let of_days = unread_since.max(DRY_RUN_DAYS);
    let read: Vec<f64> = gauge(site, day, of_days).map(|(_, mm)| mm).collect();
    Gap::GaugePartly { days_read: read.len() as i32, of_days, mm: read.iter().sum() }
}

/// The rule where too little is known for the balance: the rain of three days.
fn by_rain(asked: Asked<'_>) -> Criterion {
    let Asked { site, waters, day, looking, .. } = asked;
    let known: Vec<(&EntryId, f64)> = gauge(site, day, RAIN_DAYS).collect();
    let mm: f64 = known.iter().map(|(_, mm)| mm).sum();
    let enough = mm >= RAIN_NEEDED_MM - FUZZ_MM;
    let all_known = known.len() as i32 == RAIN_DAYS && looking != Looking::Ahead;
    let entries: Vec<EntryId> = known.iter().map(|(entry, _)| (*entry).clone()).collect();
    if enough || all_known {
        let known = Wet::Rain { mm, days: RAIN_DAYS };
        let found =
            Criterion::found(Question::Water, NEEDED, known, Basis::Measured, enough, SOURCE).resting_on(entries);
        let near = !enough && mm >= RAIN_NEEDED_MM * (1.0 - GAUGE_ERROR_SHARE) - FUZZ_MM;
        return if near { found.advising() } else { found };
    }
    if looking == Looking::Ahead {
        return not_known(NEEDED, coming(waters), false, SOURCE).resting_on(entries);
    }
    if let Some(gap) = after_dry_run(waters) {
        return not_known(NEEDED, Some(gap), true, SOURCE).resting_on(lines(site, day, NO_GAUGE_DAYS));
    }
    if gauge(site, day, NO_GAUGE_DAYS).next().is_none()
        && let Some((entry, _)) = season::rains_on(site, day)
    {
        let mut usual = Criterion::found(Question::Water, NEEDED, Wet::UsualRains, Basis::Assumed, true, SEASON_SOURCE)
            .resting_on([entry]);
        usual.warns = true;
        return usual;
    }
    let days_read = known.len() as i32;
    let gap = (days_read > 0).then_some(Gap::GaugePartly { days_read, of_days: RAIN_DAYS, mm });
    not_known(NEEDED, gap, false, SOURCE).resting_on(entries)
}

fn not_known(needed: WaterNeeded, gap: Option<Gap>, holds: bool, source: RuleSource) -> Criterion {
    let mut unknown = Criterion::lacking(Question::Water, Some(needed), gap, holds, source);
    unknown.warns = !holds;
    unknown
}

/// Nobody knows the rain of a coming day; after a dry run it is not promised either.
fn coming(waters: &Waters) -> Option<Gap> {
    let dry = waters.dry_run().map(|dry| Gap::ComingAfterDry { days: dry.days, last: dry.last });
    Some(dry.unwrap_or(Gap::ComingDay))
}

fn after_dry_run(waters: &Waters) -> Option<Gap> {
    waters.dry_run().map(|dry| Gap::UnreadAfterDry { days: dry.days, last: dry.last })
}

/// The lines of the gauge of the last `days` days, the day itself among them.
fn lines(site: &Site, day: Day, days: i32) -> Vec<EntryId> {
    gauge(site, day, days).map(|(entry, _)| entry.clone()).collect()
}

/// The rain of the last `days` days with a gauge line, the day itself among them.
fn gauge(site: &Site, day: Day, days: i32) -> impl Iterator<Item = (&EntryId, f64)> {
    let lines = site.weather.range(day.plus(1 - days)..=day);
    lines.filter_map(|(_, (entry, weather))| weather.rain_mm.map(|rain| (entry, rain.0)))
}
