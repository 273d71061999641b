//! Whether it is wet enough to plant: by what is left of the water that young roots reach, where the gauge or the monthly normals tell
//! enough; else by the rain of three days. A day without a gauge line is unknown, never dry.

pub(crate) mod ahead;
pub(crate) mod balance;
pub(crate) mod drowned;
pub(crate) mod looks;
pub(crate) mod texture;
pub(crate) mod told;

use self::balance::{DRY_RUN_DAYS, FUZZ_MM, Missing, NO_GAUGE_DAYS, Waters};
use self::texture::Texture;
use super::positions::part_seen;
use super::season;
use crate::base::{Day, EntryId};
use crate::reckon::picture::quantity::{RainAtLeast, SeenWater, WaterLeft, WaterNeeded, Wet};
use crate::reckon::picture::{Basis, Criterion, Gap, Looking, Question, RuleSource};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, SoilLook};

/// Rain that wets the ground enough, mm. Ours: Sivakumar 1988 dates the onset of rains with it; for a day it is no rule of his.
pub(crate) const RAIN_NEEDED_MM: f64 = 20.0;
/// Days in which it must fall, the day itself the last. Ours, as above.
pub(crate) const RAIN_DAYS: i32 = 3;
/// A gauge errs by this share, by wind, dew and the eye (ours; the wind alone takes 2 to 10 %, from memory: WMO guide to instruments). Rain
/// that is short by no more, or water by so much of what the ground holds, asks for care, as ground that nobody read does.
pub(crate) const GAUGE_ERROR_SHARE: f64 = 0.10;

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

/// Whether the ground of a bed is wet enough. Unknown water warns; it holds back only after a dry run or a dry look. On a coming day
/// nothing is called dry.
pub(crate) fn criterion(asked: Asked<'_>) -> Criterion {
    let Asked { site, waters, texture, day, .. } = asked;
    let class = Texture::of(texture);
    let shared = waters.of_texture(class);
    let looks = looks::looks(asked.story, waters, class, day);
    // A look leads: one that found it wet where the gauge alone does not tell that it is, one that found it dry until the rain since has
    // made good what it found.
    let wet = looks.wet.filter(|_| !shared.as_ref().is_some_and(Missing::is_wet));
    let since_wet = wet.and_then(|look| Some((look, waters.since_full(class, look.day)?)));
    let since_dry = looks.dry.and_then(|look| Some((look, waters.since_dry(class, look.day)?)));
    let since_dry = since_dry.filter(|(_, missing)| !missing.is_wet() || shared.is_none_or(|all| !all.is_as(missing)));
    let reckoned = since_wet.or(since_dry).map(|(_, missing)| missing).or(shared);
    let needed = reckoned.as_ref().map_or(NEEDED, needed);
    if let Some(drowned) = drowned::criterion(site, texture, needed, (day, since_dry.map(|(look, _)| look.day))) {
        return drowned;
    }
    if let Some((look, missing)) = since_wet.filter(|(_, missing)| missing.is_wet()) {
        return left(&missing, Some(SeenWater::Wet(look.day)), Basis::Measured, true)
            .resting_on([look.entry.clone()])
            .resting_on(lines(site, day, day.days_since(look.day) + 1))
            .seen_in_part(part_seen(look.part.as_ref(), asked.rows));
    }
    // Ground that was found dry and has been wet since, where the gauge tells too little, is as any other.
    let since_dry = since_dry.filter(|(_, missing)| waters.tells || !missing.wetted || missing.is_wet());
    if let Some((look, missing)) = since_dry {
        return by_balance(asked, &missing, Some((look, SeenWater::Dry(look.day))));
    }
    let at_feet = looks.at_feet.map(|look| (look, SeenWater::AtFeet(look.day)));
    match reckoned.filter(|_| waters.tells) {
        Some(missing) => {
            let wet = since_wet.map(|(look, _)| (look, SeenWater::Wet(look.day)));
            by_balance(asked, &missing, wet.or(at_feet))
        }
        None => by_rain(asked),
    }
}

const NEEDED: WaterNeeded = WaterNeeded::Rain(RainAtLeast { mm: RAIN_NEEDED_MM, days: RAIN_DAYS });

fn needed(missing: &Missing) -> WaterNeeded {
    WaterNeeded::Left(missing.full_mm - missing.easily_mm())
}

/// What is left, told by the least that unread days can have brought, or by the usual where that is asked for.
fn left(missing: &Missing, seen: Option<SeenWater>, basis: Basis, met: bool) -> Criterion {
    let by_usual = basis == Basis::Assumed;
    let missing_mm = if by_usual { missing.with_usual_mm } else { missing.with_nothing_mm };
    let days = ((missing.easily_mm() - missing_mm + FUZZ_MM) / missing.demand_mm.max(0.1)).floor().max(0.0);
    let known = Wet::Left(WaterLeft {
        left_mm: missing.full_mm - missing_mm,
        full_mm: missing.full_mm,
        days: days.min(f64::from(balance::BALANCE_DAYS)) as i32,
        missing_mm,
        unread_days: if by_usual { missing.unread_days } else { 0 },
        seen,
    });
    Criterion::found(Question::Water, needed(missing), known, basis, met, LEFT_SOURCE)
}

fn by_balance(asked: Asked<'_>, missing: &Missing, look: Option<(&SoilLook, SeenWater)>) -> Criterion {
    let Asked { site, waters, day, .. } = asked;
    let suffers_mm = missing.easily_mm() + FUZZ_MM;
    let held_mm = suffers_mm + GAUGE_ERROR_SHARE * missing.full_mm;
    let (look, seen) = look.unzip();
    let entries: Vec<EntryId> =
        lines(site, day, DRY_RUN_DAYS).into_iter().chain(look.map(|look| look.entry.clone())).collect();
    let told = if missing.with_nothing_mm <= suffers_mm {
        left(missing, seen, Basis::Reckoned, true)
    } else if asked.looking == Looking::Ahead {
        let gap = match seen {
            Some(SeenWater::Dry(on)) if !missing.wetted => Some(Gap::ComingAfterDryLook { on }),
            _ => coming(waters),
        };
        not_known(needed(missing), gap, false, LEFT_SOURCE)
    } else if missing.with_much_mm > held_mm {
        // Where nothing came since, it is as the finger found it.
        let as_found = matches!(seen, Some(SeenWater::Dry(_))) && missing.is_empty();
        left(missing, seen, if as_found { Basis::Measured } else { Basis::Reckoned }, false)
    } else if missing.with_nothing_mm == missing.with_much_mm {
        left(missing, seen, Basis::Reckoned, false).advising()
    } else if missing.with_much_outside_drought_mm > held_mm {
        let gap = after_dry_run(waters).unwrap_or_else(|| partly_read(site, missing, day));
        not_known(needed(missing), Some(gap), true, LEFT_SOURCE)
    } else if waters.has_usual && missing.with_usual_mm <= suffers_mm {
        // Nobody saw that it rained: a finger in the ground tells.
        let mut usual = left(missing, seen, Basis::Assumed, true);
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
