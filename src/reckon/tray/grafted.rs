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
    let met = all && heals_on.is_none();
    let criterion = Criterion::found(Question::Grafted, PlantsAtLeast(standing), grafted, Basis::Counted, met, source)
        .expected_on(heals_on)
        .resting_on(story.grafts.iter().map(|graft| graft.entry.clone()));
    let asked = standing > 0 && (usual.is_some() || heals_on.is_some());
    asked.then(|| if heals_on.is_some() { criterion } else { criterion.advising() })
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
