//! Whether plants that are usually sold as grafts are grafted. It advises and does not block: a seedling is stock, shade or
//! timber, and bears late and not true to its mother. What was grafted here a short while ago, of whatever species, is held back until it
//! has healed.

use crate::base::{Day, Range};
use crate::nursery::species::Profile;
use crate::reckon::picture::quantity::PlantsAtLeast;
use crate::reckon::picture::{Basis, Criterion, Question, RuleSource, Source};
use crate::reckon::stock::TrayStory;

/// Days after grafting or budding in which the union knits, the tie comes off and the first new leaves harden. Ours; unions of
/// fruit trees are said to knit in 3 to 8 weeks (Hartmann & Kester, Plant Propagation, from memory).
pub(crate) const GRAFT_HEALS_DAYS: i32 = 60;

/// Days after grafting in which plants take no step of light and get no rarer water: the union knits in 3 to 6 weeks (common practice; the
/// high end).
pub(crate) const GRAFT_KNITS_DAYS: i32 = 42;

/// From so many days after grafting a look tells which took: buds are looked at after three to five weeks (common practice; the high end).
pub(crate) const TAKE_SHOWS_DAYS: i32 = 35;
/// Nobody asks any more which took after so many days: what did not has dried up and was seen. Ours.
const TAKE_IS_ASKED_DAYS: i32 = 180;

/// The criterion `grafted`; none where plants of the species go out as seedlings and none were grafted lately, and where nothing stands.
pub(crate) fn criterion(story: &TrayStory, profile: Option<&Profile>, day: Day) -> Option<Criterion> {
    let usual = profile.and_then(|profile| profile.usually_grafted.as_ref()).filter(|usual| usual.value);
    let heals_on = heals_on(story, day);
    let source = match usual {
        Some(usual) => Source::figure(Some(&usual.source)),
        None => RuleSource::GraftHeals.into(),
    };
    let standing = story.accounts.standing_count();
    let all = story.is_grafted();
    let written = story.grafts.iter().map(|graft| graft.what.plants).fold(0, u32::saturating_add);
    let grafted = Range::exact(f64::from(if all { standing } else { written }));
    let entries = || story.grafts.iter().map(|graft| graft.entry.clone());
    let found = |known: Range, met: bool| {
        let needed = PlantsAtLeast(standing);
        Criterion::found(Question::Grafted, needed, known, Basis::Counted, met, source.clone()).resting_on(entries())
    };
    if standing == 0 {
        return None;
    }
    if heals_on.is_some() {
        let warns = take_unseen(story, day);
        return Some(Criterion { warns, ..found(grafted, false).expected_on(heals_on) });
    }
    if let Some((few, over)) = fresh_few(story, day) {
        return Some(found(Range::exact(f64::from(few)), false).expected_on(Some(over)).advising());
    }
    let unseen = take_unseen(story, day);
    if usual.is_none() {
        return unseen.then(|| Criterion { warns: true, ..found(grafted, true) });
    }
    let criterion = found(grafted, all).advising();
    let warns = criterion.warns || unseen;
    Some(Criterion { warns, ..criterion })
}

/// Plants grafted a short while ago that are too few to hold back those that stand with them, and when the last of them have healed.
fn fresh_few(story: &TrayStory, day: Day) -> Option<(u32, Day)> {
    let fresh = || story.grafts.iter().filter(|graft| (0..GRAFT_HEALS_DAYS).contains(&day.days_since(graft.from)));
    let last = fresh().map(|graft| graft.from).max()?;
    Some((fresh().map(|graft| graft.what.plants).fold(0, u32::saturating_add), last.plus(GRAFT_HEALS_DAYS)))
}

/// Whether enough of its plants were grafted so long ago that a look tells which took, and nobody counted, measured or wrote off any since.
fn take_unseen(story: &TrayStory, day: Day) -> bool {
    let Some(grafted) = last_grafted(story) else { return false };
    let from = grafted.plus(TAKE_SHOWS_DAYS);
    let counted = story.counts.iter().any(|look| look.part_of_cells.is_none() && look.day >= from);
    let measured = story.samples.iter().any(|sample| sample.day >= from);
    let written_off = story.gone.iter().any(|gone| gone.from >= from);
    (from..grafted.plus(TAKE_IS_ASKED_DAYS)).contains(&day) && !counted && !measured && !written_off
}

/// The day on which enough of its plants were last grafted.
fn last_grafted(story: &TrayStory) -> Option<Day> {
    story.latest_of_enough(&story.grafts, |graft| graft.plants).map(|(graft, _)| graft.from)
}

/// The day on which the unions of plants grafted a short while ago have knit; none where none have still to, or they are few.
pub(crate) fn knits_on(story: &TrayStory, day: Day) -> Option<Day> {
    last_grafted(story).map(|on| on.plus(GRAFT_KNITS_DAYS)).filter(|over| day < *over)
}

/// The day on which the unions of plants grafted a short while ago have healed; none where none are, or they are few.
pub(crate) fn heals_on(story: &TrayStory, day: Day) -> Option<Day> {
    last_grafted(story).map(|on| on.plus(GRAFT_HEALS_DAYS)).filter(|over| day < *over)
}
