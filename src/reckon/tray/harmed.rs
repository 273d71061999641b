//! Many plants of a tray lost to what leaves no sickness behind, as rats, heat or no water, and nights of frost: those that are left are
//! looked at first.

use super::pest::{LOOK_AFTER_DAYS, PEST_HOLDS_PCT, is_share};
use crate::base::Day;
use crate::nursery::herbicide::kills_weeds;
use crate::nursery::pest::{DiedOf, comes_along, is_by_people};
use crate::reckon::picture::quantity::{NotSo, PestSeen};
use crate::reckon::picture::{Basis, Criterion, Gap, Question, RuleSource};
use crate::reckon::site::Site;
use crate::reckon::stock::{Gone, PestLook, Since, TrayStory};

/// From this share of those that stood on, percent, lost in two weeks to what leaves no sickness behind, those that are left are looked at
/// before they go: what took so many went on, or hurt others too. Ours.
const HARMED_LOOK_PCT: f64 = 20.0;

/// At this lowest of a night or less, degrees Celsius, plants are looked at for frost: near the ground it is colder than at the gauge (Snyder
/// & de Melo-Abreu 2005, Frost Protection, FAO Environment and Natural Resources Series 10, from memory; the figure is ours).
const FROST_LOOK_C: f64 = 2.0;

/// At this lowest of a night or less, degrees Celsius, plants of warm lands are hurt, and are held until somebody looked. Ours: water freezes.
const FROST_HOLDS_C: f64 = 0.0;

/// At this highest of a day or more, degrees Celsius, plants are looked at for scorched leaves. Ours.
const HEAT_LOOK_C: f64 = 42.0;

/// Whether somebody counted the whole tray or measured a sample after a day.
fn was_handled_after(story: &TrayStory, on: Day) -> bool {
    let counted = story.counts.iter().any(|look| look.part_of_cells.is_none() && look.day > on);
    counted || story.samples.iter().any(|sample| sample.day > on)
}

/// A night of frost or a day of great heat in the last two weeks, until somebody counts or measures the tray after it, or writes a look. A
/// frost that holds comes before all, however mild the nights were since and however long ago.
fn by_weather(story: &TrayStory, site: &Site, day: Day) -> Option<Criterion> {
    if story.accounts.standing_count() == 0 {
        return None;
    }
    let looked = |on: Day| was_handled_after(story, on) || story.pests.iter().any(|look| look.from > on);
    let (lately, made_on) = (day.plus(1 - LOOK_AFTER_DAYS), story.made_on.unwrap_or(day).min(day));
    let harsh = site.weather.range(made_on..=day).filter_map(|(on, (entry, weather))| {
        let cold = weather.tmin_c.map(|low| low.0).filter(|low| *low <= FROST_LOOK_C).map(|low| (low, true));
        let hot = || weather.tmax_c.map(|high| high.0).filter(|high| *high >= HEAT_LOOK_C).map(|high| (high, false));
        let (celsius, cold) = cold.or_else(hot)?;
        let holds = cold && celsius <= FROST_HOLDS_C;
        let asks = (holds || *on >= lately) && !looked(*on);
        asks.then_some((holds, *on, Gap::HarshWeather { on: *on, celsius, cold }, entry))
    });
    let (holds, _, gap, entry) = harsh.max_by_key(|(holds, on, ..)| (*holds, *on))?;
    let unknown = Criterion::lacking(Question::Pest, Some(NotSo), Some(gap), holds, RuleSource::Pest);
    Some(Criterion { warns: !holds, ..unknown.resting_on([entry.clone()]) })
}

/// What comes and goes and was seen on a tenth of the plants of a tray or more, as rats, and nobody counted or measured them since: what was
/// eaten is so however long ago.
fn eaten_on(story: &TrayStory, day: Day) -> Option<&Since<PestLook>> {
    let own: Vec<&Since<PestLook>> =
        story.pests.iter().filter(|look| !look.what.of_place && look.from <= day).collect();
    let many = |look: &Since<PestLook>| {
        let many = look.what.share_pct.is_some_and(|share| share >= PEST_HOLDS_PCT);
        many && !comes_along(&look.what.what) && !is_by_people(&look.what.what)
    };
    let seen = *own.last().filter(|look| many(look))?;
    (!was_handled_after(story, seen.from) && story.accounts.standing_count() > 0).then_some(seen)
}

/// The share of the plants that were eaten, by that look: they stay behind.
pub(super) fn eaten_share(story: &TrayStory, day: Day) -> f64 {
    eaten_on(story, day).and_then(|seen| seen.what.share_pct).map_or(0.0, |pct| pct / 100.0)
}

/// It goes along with none of them, and those that are left are looked at first.
fn eaten(story: &TrayStory, day: Day) -> Option<Criterion> {
    let seen = eaten_on(story, day)?;
    let known = PestSeen::only(&seen.what.what, seen.what.share_pct, seen.from);
    let found = Criterion::found(Question::Pest, NotSo, Some(known), Basis::Measured, false, RuleSource::Pest);
    Some(found.resting_on([seen.entry.clone()]).advising())
}

/// Care for a tray whose plants were eaten, of which many were lost to harm, or that stood through frost or great heat.
pub(super) fn criterion(story: &TrayStory, site: &Site, day: Day) -> Option<Criterion> {
    lost(story, day).or_else(|| eaten(story, day)).or_else(|| by_weather(story, site, day))
}

/// Care for a tray of which so many were lost to harm, until somebody counts it on a later day, measures a sample, or writes a look.
fn lost(story: &TrayStory, day: Day) -> Option<Criterion> {
    let young = |on: Day| story.young_until().is_some_and(|until| on <= until);
    let harmed = |gone: &&Since<Gone>| {
        let lately = (0..LOOK_AFTER_DAYS).contains(&day.days_since(gone.from));
        // Plants that were moved on since went through somebody's hands.
        lately
            && gone.what.stood.is_some()
            && !gone.what.culled
            && gone.what.of == DiedOf::Harm
            && !young(gone.from)
            && !is_by_people(&gone.what.why)
    };
    let last = story.gone.iter().filter(harmed).max_by_key(|gone| gone.from)?;
    let all = story.gone.iter().filter(harmed).map(|gone| gone.what.plants).fold(0, u32::saturating_add);
    let alive = story.accounts.standing_count();
    let counted = story.counts.iter().any(|look| look.part_of_cells.is_none() && look.day > last.from);
    let measured = story.samples.iter().any(|sample| sample.day >= last.from);
    let looked = story.pests.iter().any(|look| look.from >= last.from);
    // Of what kills weeds any loss says that it reached the others too.
    let many = is_share(all, alive, HARMED_LOOK_PCT) || kills_weeds(&last.what.why);
    if counted || measured || looked || alive == 0 || !many {
        return None;
    }
    let gap = Gap::Harmed { on: last.from, gone: all, alive, what: last.what.why.clone() };
    let unknown = Criterion::lacking(Question::Pest, Some(NotSo), Some(gap), false, RuleSource::Pest);
    Some(Criterion { warns: true, ..unknown.resting_on([last.entry.clone()]) })
}
