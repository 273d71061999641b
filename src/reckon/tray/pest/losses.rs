//! What plants of a tray died of, or were thrown out for: a sighting where it names a sickness, a question where most died of nobody
//! knows what.

use crate::base::{Day, EntryId};
use crate::nursery::entry::Entry;
use crate::nursery::pest::{DiedOf, is_same_pest, nature_of};
use crate::reckon::picture::quantity::NotSo;
use crate::reckon::picture::{Criterion, Gap, Question, RuleSource};
use crate::reckon::stock::{CountLook, Gone, Since, TrayStory};

use super::{LOOK_AFTER_DAYS, OpenPest, PEST_HOLDS_PCT, Written};

/// Of young seedlings that damping-off takes, and of plants that die with a sign alone (wilted, dry), fewer than so many of a hundred that
/// stood, within [`LOOK_AFTER_DAYS`], are what every sowing and every bench loses. Ours.
const LOSS_SEEN_PCT: f64 = 5.0;

/// Losses and culls of a tray that name a sickness, as sightings.
pub(super) fn sightings(story: &TrayStory, day: Day) -> Vec<Written> {
    let of_it = |gone: &&Since<Gone>| gone.what.of == DiedOf::Sickness && gone.from <= day;
    let seen = story.gone.iter().filter(of_it).filter(|gone| !is_usual(story, gone));
    seen.filter_map(Since::sighting).collect()
}

/// Whether a loss is of the few that every sowing loses to damping-off while it is young, or every bench to thirst.
fn is_usual(story: &TrayStory, gone: &Since<Gone>) -> bool {
    let of_sort = |gone: &Since<Gone>| {
        let nature = nature_of(&gone.what.why, None);
        (nature.is_damping, nature.is_sign)
    };
    let sort @ (damps, is_sign) = of_sort(gone);
    let young = story.young_until().is_some_and(|until| gone.from <= until);
    if !(is_sign || damps && young) {
        return false;
    }
    let lately = |other: &&Since<Gone>| {
        let near = (0..LOOK_AFTER_DAYS).contains(&gone.from.days_since(other.from));
        near && other.is_dead_of_it() && of_sort(other) == sort && other.entry != gone.entry
    };
    let others = story.gone.iter().filter(lately).map(|other| f64::from(other.what.plants));
    let died = others.sum::<f64>() + f64::from(gone.what.plants);
    gone.what.stood.is_none_or(|stood| died * 100.0 < LOSS_SEEN_PCT * stood.max(1) as f64)
}

/// Whether an entry of a loss or a cull is a sighting of its tray.
pub(crate) fn is_sighting(story: &TrayStory, entry: &Entry) -> bool {
    let gone = Since::gone(entry, Some(story.accounts.standing));
    gone.is_some_and(|gone| !is_usual(story, &gone) && gone.sighting().is_some())
}

/// The day from which a whole count says as much as a look of a sickness that is known by losses alone: of what a treatment cures, and of
/// a sign. Of what nothing cures the plants that live say nothing.
pub(super) fn count_tells_from(pest: &OpenPest, story: &TrayStory, day: Day) -> Option<Day> {
    let tells = pest.by_loss && (pest.nature.has_cure || pest.nature.is_sign);
    let of_it = |gone: &&Since<Gone>| gone.from <= day && is_same_pest(&gone.what.why, &pest.seen.what);
    let last = story.gone.iter().filter(of_it).map(|gone| gone.from).max().filter(|_| tells)?;
    Some(last.plus(pest.look_after_days()))
}

/// Whether such a count was made, and found few gone since. Seedlings that are moved on go through somebody's hands one by one.
pub(super) fn counted_clear(pest: &OpenPest, story: &TrayStory, day: Day) -> bool {
    let Some(from) = count_tells_from(pest, story, day) else { return false };
    let since = from.plus(-pest.look_after_days());
    let moved = story.made_on.filter(|on| !story.moves_in.is_empty() && (from..=day).contains(on));
    let whole = || whole_counts(story, day).filter(|look| look.day > since);
    moved.is_some()
        || whole().filter(|look| look.day >= from && look.standing > 0).any(|look| {
            let counted: u32 = whole().filter(|other| other.day <= look.day).map(gone_of).fold(0, u32::saturating_add);
            let unsaid = unsaid(story).filter(|gone| (since.plus(1)..=look.day).contains(&gone.from));
            let lost = unsaid.map(|gone| gone.what.plants).fold(counted, u32::saturating_add);
            is_few(lost, look.standing)
        })
}

fn whole_counts(story: &TrayStory, day: Day) -> impl DoubleEndedIterator<Item = &CountLook> {
    story.counts.iter().filter(move |look| look.part_of_cells.is_none() && look.day <= day)
}

fn gone_of(look: &CountLook) -> u32 {
    look.dead.saturating_add(look.not_seen)
}

fn is_few(gone: u32, standing: u32) -> bool {
    f64::from(gone) * 100.0 < f64::from(standing) * PEST_HOLDS_PCT
}

/// Plants of this tray that died of nobody knows what.
fn unsaid(story: &TrayStory) -> impl Iterator<Item = &Since<Gone>> {
    story.gone.iter().filter(|gone| !gone.what.culled && gone.what.of == DiedOf::NotSaid && gone.what.stood.is_some())
}

/// Plants that died or were missed, and those that lived then.
struct Fall<'a> {
    on: Day,
    gone: u32,
    alive: u32,
    entry: &'a EntryId,
}

/// More plants dead or gone within two weeks than live, by counts and losses, and nobody wrote of what.
pub(super) fn many_died(story: &TrayStory, day: Day) -> Option<Criterion> {
    let counted = whole_counts(story, day).map(|look| Fall {
        on: look.day,
        gone: gone_of(look),
        alive: look.standing,
        entry: &look.entry,
    });
    let lost = unsaid(story).filter(|gone| gone.from <= day).map(|gone| {
        let left = gone.what.stood.unwrap_or(0).saturating_sub(u64::from(gone.what.plants));
        let alive = u32::try_from(left).unwrap_or(u32::MAX);
        Fall { on: gone.from, gone: gone.what.plants, alive, entry: &gone.entry }
    });
    let falls: Vec<Fall<'_>> = counted.chain(lost).collect();
    let by_then = |fall: &Fall<'_>| {
        let lately = falls.iter().filter(|other| (0..LOOK_AFTER_DAYS).contains(&fall.on.days_since(other.on)));
        lately.map(|other| other.gone).fold(0, u32::saturating_add)
    };
    let many = falls.iter().filter(|fall| fall.alive > 0 && fall.gone > 0 && by_then(fall) > fall.alive);
    let found = many.max_by_key(|fall| (fall.on, std::cmp::Reverse(fall.alive)))?;
    let again_from = found.on.plus(LOOK_AFTER_DAYS);
    let settled = whole_counts(story, day).any(|look| look.day >= again_from && is_few(gone_of(look), look.standing))
        || story.pests.iter().any(|pest| (found.on..=day).contains(&pest.from));
    if settled {
        return None;
    }
    let gap = Gap::ManyDied { on: found.on, gone: by_then(found), alive: found.alive, again_from };
    let unknown = Criterion::lacking(Question::Pest, Some(NotSo), Some(gap), true, RuleSource::Pest);
    Some(unknown.resting_on([found.entry.clone()]))
}
