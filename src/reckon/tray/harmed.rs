//! Many plants of a tray lost to what leaves no sickness behind, as rats, heat or no water: those that are left are looked at first.

use super::pest::{LOOK_AFTER_DAYS, is_share};
use crate::base::Day;
use crate::nursery::pest::{DiedOf, is_by_people};
use crate::reckon::picture::quantity::NotSo;
use crate::reckon::picture::{Criterion, Gap, Question, RuleSource};
use crate::reckon::stock::{Gone, Since, TrayStory};

/// From this share of those that stood on, percent, lost in two weeks to what leaves no sickness behind, those that are left are looked at
/// before they go: what took so many went on, or hurt others too. Ours.
const HARMED_LOOK_PCT: f64 = 20.0;

/// Care for a tray of which so many were lost to harm, until somebody counts it on a later day, measures a sample, or writes a look.
pub(super) fn criterion(story: &TrayStory, day: Day) -> Option<Criterion> {
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
