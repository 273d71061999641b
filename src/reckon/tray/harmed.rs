//! Many plants of a tray lost to what leaves no sickness behind, as rats, heat or no water: those that are left are looked at first.

use super::pest::{LOOK_AFTER_DAYS, PEST_HOLDS_PCT, is_share};
use crate::base::Day;
use crate::nursery::pest::{DiedOf, comes_along, is_by_people};
use crate::reckon::picture::quantity::{NotSo, PestSeen};
use crate::reckon::picture::{Basis, Criterion, Gap, Question, RuleSource};
use crate::reckon::stock::{Gone, PestLook, Since, TrayStory};

/// From this share of those that stood on, percent, lost in two weeks to what leaves no sickness behind, those that are left are looked at
/// before they go: what took so many went on, or hurt others too. Ours.
const HARMED_LOOK_PCT: f64 = 20.0;

/// What comes and goes and was seen on a tenth of the plants of a tray or more, as rats: it goes along with none of them, and those that are
/// left are looked at first.
fn eaten(story: &TrayStory, day: Day) -> Option<Criterion> {
    let own: Vec<&Since<PestLook>> =
        story.pests.iter().filter(|look| !look.what.of_place && look.from <= day).collect();
    let many = |look: &Since<PestLook>| {
        let lately = (0..LOOK_AFTER_DAYS).contains(&day.days_since(look.from));
        let many = look.what.share_pct.is_some_and(|share| share >= PEST_HOLDS_PCT);
        lately && many && !comes_along(&look.what.what) && !is_by_people(&look.what.what)
    };
    let seen = *own.last().filter(|look| many(look))?;
    let counted = story.counts.iter().any(|look| look.part_of_cells.is_none() && look.day > seen.from);
    let measured = story.samples.iter().any(|sample| sample.day > seen.from);
    if counted || measured || story.accounts.standing_count() == 0 {
        return None;
    }
    let known = PestSeen::only(&seen.what.what, seen.what.share_pct, seen.from);
    let found = Criterion::found(Question::Pest, NotSo, Some(known), Basis::Measured, false, RuleSource::Pest);
    Some(found.resting_on([seen.entry.clone()]).advising())
}

/// Care for a tray whose plants were eaten, or of which many were lost to harm.
pub(super) fn criterion(story: &TrayStory, day: Day) -> Option<Criterion> {
    lost(story, day).or_else(|| eaten(story, day))
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
    if counted || measured || looked || alive == 0 || !is_share(all, alive, HARMED_LOOK_PCT) {
        return None;
    }
    let gap = Gap::Harmed { on: last.from, gone: all, alive, what: last.what.why.clone() };
    let unknown = Criterion::lacking(Question::Pest, Some(NotSo), Some(gap), false, RuleSource::Pest);
    Some(Criterion { warns: true, ..unknown.resting_on([last.entry.clone()]) })
}
