//! Plants of a bed that animals ate: what took many lately, and whether anything was set against it since.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::base::{Day, EntryId, FieldName};
use crate::nursery::entry::types::GroundTask;
use crate::nursery::pest::{Eater, eater_of, is_fenced_out, is_same_pest, says_none, strips_beds};
use crate::nursery::set_against::{keeps_animals_out, keeps_eaters_off};
use crate::reckon::stock::{BedStory, Death};
use crate::reckon::tray::pest::{OpenPest, PEST_HOLDS_PCT, Written, is_share};

use super::ground_work::lasts;

/// Animals that ate in a bed are taken to come again for so many days, until something is set against them. Ours.
pub(crate) const EATEN_TELLS_DAYS: i32 = 60;
/// What animals took in so many days is added up: two of sixty are few, and two every week are many. Ours.
const ADDED_UP_DAYS: i32 = 28;
/// From this share of a species dead of what gnaws at young plants on, percent, a bed is not planted; from a tenth on it asks for care.
/// Ours: snails and crickets take some plants in every wet week.
const GNAWED_HOLDS_PCT: f64 = 33.0;

/// From this share of a bed on, percent, what gnaws at plants and was seen alone holds it as well: on half of them it is looked for, and not
/// only met. Ours.
const GNAWED_SEEN_PCT: f64 = 50.0;

/// Plants of a species that were taken, by the words of their losses and counts, in the weeks up to one of them, and since a look found
/// none of it.
pub(super) fn taken_lately(story: &BedStory, death: &Death, of_it: impl Fn(&str) -> bool) -> u32 {
    let none = |look: &&Written| look.finds_none() && (says_none(&look.what.what) || of_it(&look.what.what));
    let clear = story.pests.iter().filter(none).map(|look| look.from).filter(|on| *on < death.day).max();
    let lately = |other: &&Death| {
        let near = (0..ADDED_UP_DAYS).contains(&death.day.days_since(other.day));
        near && other.species == death.species && clear.is_none_or(|on| other.day > on) && of_it(&other.what)
    };
    let fallen = |death: &Death| if death.is_count { death.plants } else { death.dead };
    let all = story.deaths.iter().filter(lately).map(fallen).fold(0, u32::saturating_add);
    all.max(death.dead).max(death.plants)
}

/// Whether so many plants that died with a loss or a count were taken by what its words name that it asks for care, all of the last
/// weeks together; how many those are.
pub(super) fn eaten_by(story: &BedStory, death: &Death) -> Option<u32> {
    eater_of(&death.what)?;
    let taken = taken_lately(story, death, |what| is_same_pest(what, &death.what));
    (taken > 0 && is_share(taken, death.alive, PEST_HOLDS_PCT)).then_some(taken)
}

/// The last day on which what eats and goes was on so many plants of a bed, or took so many, that what goes in is eaten, in the last weeks,
/// where nothing was used or set against it since. What a fence keeps out is the fence's question.
pub(super) fn eats_many(story: &BedStory, pest: &OpenPest, day: Day) -> Option<Day> {
    let seen = &pest.seen;
    let eater = eater_of(&seen.what).filter(|_| !is_fenced_out(&seen.what) && seen.brought.is_none())?;
    let many = match eater {
        // Nobody counts a bed in the night in which it is stripped.
        Eater::Takes => seen.share_pct.map_or(strips_beds(&seen.what), |share| share >= PEST_HOLDS_PCT),
        Eater::Gnaws => seen.share_pct.is_some_and(|share| share >= GNAWED_SEEN_PCT),
    };
    let least_pct = match eater {
        Eater::Takes => PEST_HOLDS_PCT,
        Eater::Gnaws => GNAWED_HOLDS_PCT,
    };
    let took = |death: &&Death| {
        let taken = || taken_lately(story, death, |what| is_same_pest(what, &seen.what));
        (seen.on..=day).contains(&death.day)
            && is_same_pest(&death.what, &seen.what)
            && is_share(taken(), death.alive, least_pct)
    };
    let taken_on = story.deaths.iter().filter(took).map(|death| death.day).max();
    let last = many.then_some(seen.on).max(taken_on)?;
    let since = |on: Day| (last..=day).contains(&on);
    let used = story
        .treatments
        .iter()
        .any(|one| since(one.day) && (one.can_cure() || keeps_eaters_off(&one.with, &seen.what)));
    (day.days_since(last) <= EATEN_TELLS_DAYS && !used).then_some(last)
}

/// Animals that a fence keeps out, where they took many plants of a bed and nothing was done since.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct BrokenIn {
    /// The last day on which they did.
    pub(crate) on: Day,
    /// Whether something that keeps them out was set since, and no fence.
    pub(crate) guarded: bool,
    /// The entry.
    pub(crate) entry: EntryId,
}

/// The fields where animals broke into a bed.
pub(crate) type BrokenInto = BTreeMap<FieldName, BrokenIn>;

/// The last time that animals which a fence keeps out took many plants of a bed, where nobody fenced since: they come again. Of fewer
/// than a tenth the fence only asks for care, as ever. Where a fence stands a later look that finds none is enough.
pub(super) fn broken_in(story: &BedStory, day: Day) -> Option<BrokenIn> {
    let lately = |on: Day| (0..=EATEN_TELLS_DAYS).contains(&day.days_since(on));
    let many = |look: &Written| look.what.share_pct.is_none_or(|share| share >= PEST_HOLDS_PCT);
    let broke = |look: &Written| lately(look.from) && many(look) && is_fenced_out(&look.what.what);
    let seen_at = story.pests.iter().rposition(broke);
    let seen = seen_at.and_then(|at| story.pests.get(at)).map(|look| (look.from, &look.entry));
    let took = |death: &&Death| {
        let taken = || taken_lately(story, death, is_fenced_out);
        lately(death.day) && is_fenced_out(&death.what) && is_share(taken(), death.alive, PEST_HOLDS_PCT)
    };
    let died = story.deaths.iter().filter(took).map(|death| (death.day, &death.entry));
    let (on, entry) = seen.into_iter().chain(died).max_by_key(|(on, _)| *on)?;
    let since = |other: Day| (on..=day).contains(&other);
    let fenced = story.work.iter().any(|work| work.task == GroundTask::Fenced && since(work.day));
    let none = |look: &Written| {
        let of_it = says_none(&look.what.what) || is_fenced_out(&look.what.what);
        look.finds_none() && of_it && since(look.from)
    };
    let after = story.pests.iter().skip(seen_at.map_or(0, |at| at + 1));
    let held_out = lasts(story, GroundTask::Fenced, day).is_some() && after.into_iter().any(none);
    let guarded = story.treatments.iter().any(|one| since(one.day) && keeps_animals_out(&one.with));
    (!fenced && !held_out).then(|| BrokenIn { on, guarded, entry: entry.clone() })
}

/// The fields of a day where animals broke into a bed: of several beds what was last.
pub(crate) fn broken_into<'a>(beds: impl Iterator<Item = &'a Arc<BedStory>>, day: Day) -> BrokenInto {
    let mut all = BrokenInto::new();
    for story in beds.filter(|story| !story.pests.is_empty() || !story.deaths.is_empty()) {
        let Some((layout, broken)) = story.layout.on(day).zip(broken_in(story, day)) else { continue };
        match all.get_mut(&layout.field) {
            Some(known) if known.on >= broken.on => {}
            Some(known) => *known = broken,
            None => drop(all.insert(layout.field.clone(), broken)),
        }
    }
    all
}

/// Whether animals that broke into another bed of the field were not looked for, and not kept out, in this one since.
pub(super) fn beside<'a>(story: &BedStory, broken: Option<&'a BrokenIn>, day: Day) -> Option<&'a BrokenIn> {
    let broken = broken?;
    let since = |other: Day| (broken.on..=day).contains(&other);
    let fenced = story.work.iter().any(|work| work.task == GroundTask::Fenced && since(work.day));
    let none = |look: &Written| look.finds_none() && since(look.from);
    (!fenced && !story.pests.iter().any(none)).then_some(broken)
}
