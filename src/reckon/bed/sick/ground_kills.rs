//! Plants of a bed that died of the ground they stood in: of weed killer, water that stands, fire. What goes in next stands in the same.

use super::{UNSAID_CARE_PCT, UNSAID_HOLDS_PCT, taken_lately};
use crate::base::{Day, SpeciesKey};
use crate::nursery::pest::ground_kills;
use crate::reckon::picture::quantity::NotSo;
use crate::reckon::picture::{Criterion, Gap, Question, RuleSource};
use crate::reckon::stock::{BedStory, Death};
use crate::reckon::tray::pest::{LEAST_UNSAID_PLANTS, LOOK_AFTER_DAYS, PEST_HOLDS_PCT, is_share};

/// Nobody asks any more whether the ground of a bed kills after so many days: weed killers that last, and whole rains, are over by then. Ours.
const GROUND_TELLS_DAYS: i32 = 365;

/// More than a third of a species that died so in a few weeks (of a fifth it asks for care), until somebody writes a look, or a count weeks
/// later finds few more.
pub(super) fn criterion(story: &BedStory, species: &SpeciesKey, day: Day) -> Option<Criterion> {
    let of_it = |death: &&Death| death.species == *species && ground_kills(&death.what);
    let taken = |death: &Death| taken_lately(story, death, ground_kills);
    let many = |death: &&Death| {
        let lately = (0..=GROUND_TELLS_DAYS).contains(&day.days_since(death.day));
        lately && taken(death) >= LEAST_UNSAID_PLANTS && is_share(taken(death), death.alive, UNSAID_CARE_PCT)
    };
    let death = story.deaths.iter().filter(of_it).filter(many).max_by_key(|death| death.day)?;
    let again_from = death.day.plus(LOOK_AFTER_DAYS);
    let looked = story.pests.iter().any(|look| (death.day..=day).contains(&look.from));
    let mut counts = story.deaths.iter().filter(|look| look.is_count && look.species == *species && look.alive > 0);
    let counted =
        counts.any(|look| (again_from..=day).contains(&look.day) && !is_share(look.plants, look.alive, PEST_HOLDS_PCT));
    if looked || counted {
        return None;
    }
    let (on, dead, alive, what) = (death.day, taken(death), death.alive, death.what.clone());
    let holds = is_share(dead, alive, UNSAID_HOLDS_PCT);
    let gap = Gap::GroundKills { on, dead, alive, what, again_from };
    let unknown = Criterion::lacking(Question::Pest, Some(NotSo), Some(gap), holds, RuleSource::Pest);
    Some(Criterion { warns: !holds, ..unknown.resting_on([death.entry.clone()]) })
}
