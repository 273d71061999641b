//! Whether plants that are usually sold as grafts are grafted. It advises and never blocks: a seedling is stock, shade or
//! timber, and bears late and not true to its mother.

use crate::base::Range;
use crate::nursery::species::Profile;
use crate::reckon::picture::quantity::PlantsAtLeast;
use crate::reckon::picture::{Basis, Criterion, Question, Source};
use crate::reckon::stock::TrayStory;

/// The criterion `grafted`; none where plants of the species go out as seedlings, and where nothing stands.
pub(crate) fn criterion(story: &TrayStory, profile: Option<&Profile>) -> Option<Criterion> {
    let usual = profile?.usually_grafted.as_ref().filter(|usual| usual.value)?;
    let standing = story.accounts.standing_count();
    let all = story.is_grafted();
    let written = story.grafts.iter().map(|graft| graft.what.plants).fold(0, u32::saturating_add);
    let grafted = Range::exact(f64::from(if all { standing } else { written }));
    let source = Source::figure(Some(&usual.source));
    let criterion = Criterion::found(Question::Grafted, PlantsAtLeast(standing), grafted, Basis::Counted, all, source)
        .resting_on(story.grafts.iter().map(|graft| graft.entry.clone()));
    (standing > 0).then(|| criterion.advising())
}
