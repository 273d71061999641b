//! What plants of a tray died of, or were thrown out for: a sighting where it names a sickness, a question where most died of nobody
//! knows what.

use crate::base::{Day, EntryId};
use crate::nursery::entry::Entry;
use crate::nursery::pest::{DiedOf, is_same_pest, nature_of, says_unknown};
use crate::reckon::picture::quantity::NotSo;
use crate::reckon::picture::{Criterion, Gap, Question, RuleSource};
use crate::reckon::stock::{CountLook, Gone, Since, TrayStory};

use super::{LOOK_AFTER_DAYS, OpenPest, PEST_HOLDS_PCT, Written, is_share};

/// Of young seedlings that damping-off takes, and of plants that die with a sign alone (wilted, dry), fewer than so many of a hundred that
/// stood, within [`LOOK_AFTER_DAYS`], are what every sowing and every bench loses. Ours.
const LOSS_SEEN_PCT: f64 = 5.0;

/// From this share of those that stood on, percent, within [`LOOK_AFTER_DAYS`], plants that are no longer young and died of nobody knows
/// what are asked about: it is the share from which a pest holds. Ours.
const UNSAID_LOSS_PCT: f64 = PEST_HOLDS_PCT;
/// Plants that a count does not find, of which nobody wrote that they died, are asked about from this share on, percent: some were given
/// away, and nobody wrote it. Ours.
const MISSED_PCT: f64 = 33.0;

/// Fewer plants than this that died of nobody knows what hold nothing, of however few they are a part, in a tray and in a bed. Ours.
pub(crate) const LEAST_UNSAID_PLANTS: u32 = 3;

/// Losses and culls of a tray that name a sickness, as sightings.
pub(super) fn sightings(story: &TrayStory, day: Day) -> Vec<Written> {
    let of_it = |gone: &&Since<Gone>| matches!(gone.what.of, DiedOf::Sickness | DiedOf::Unnamed) && gone.from <= day;
    let seen = story.gone.iter().filter(of_it).filter(|gone| !is_usual(story, gone));
    seen.filter_map(Since::sighting).collect()
}

/// Whether a loss is of the few that every sowing loses to damping-off while it is young, or every bench to thirst.
fn is_usual(story: &TrayStory, gone: &Since<Gone>) -> bool {
    let of_sort = |gone: &Since<Gone>| {
        let nature = nature_of(&gone.what.why, None);
        (nature.is_damping, nature.is_sign || gone.what.of == DiedOf::Unnamed)
    };
    let sort @ (damps, is_sign) = of_sort(gone);
    let young = story.young_until().is_some_and(|until| gone.from <= until);
    if !(is_sign || damps && young) {
        return false;
    }
    let lately = |other: &&Since<Gone>| {
        let near = (0..LOOK_AFTER_DAYS).contains(&gone.from.days_since(other.from));
        let of_it = gone.what.culled == other.what.culled && other.what.of != DiedOf::NotSaid;
        near && of_it && of_sort(other) == sort && other.entry != gone.entry
    };
    let others = story.gone.iter().filter(lately).map(|other| f64::from(other.what.plants));
    let died = others.sum::<f64>() + f64::from(gone.what.plants);
    gone.what.stood.is_none_or(|stood| died * 100.0 < LOSS_SEEN_PCT * stood.max(1) as f64)
}

/// Whether an entry of a loss or a cull is a sighting of its tray.
pub(crate) fn is_sighting(story: &TrayStory, entry: &Entry) -> bool {
    let Some(gone) = Since::gone(entry, Some(story.accounts.standing)) else { return false };
    let Some(seen) = gone.sighting().filter(|_| !is_usual(story, &gone)) else { return false };
    // What was written late, and answered by a count since, holds nothing.
    let pest = OpenPest::begun(&seen);
    let last = story.last_on.unwrap_or(gone.from);
    !(count_tells(&pest) && calm_count(story, gone.from, gone.from.plus(pest.look_after_days()), last))
}

/// The day from which a whole count says as much as a look of a sickness that is known by losses alone: of what a treatment cures, and of
/// a sign. Of what nothing cures the plants that live say nothing.
pub(super) fn count_tells_from(pest: &OpenPest, story: &TrayStory, day: Day) -> Option<Day> {
    let tells = count_tells(pest);
    let of_it = |gone: &&Since<Gone>| gone.from <= day && is_same_pest(&gone.what.why, &pest.seen.what);
    let last = story.gone.iter().filter(of_it).map(|gone| gone.from).max().filter(|_| tells)?;
    Some(last.plus(pest.look_after_days()))
}

fn count_tells(pest: &OpenPest) -> bool {
    let cured = pest.nature.has_cure && !pest.nature.in_roots;
    pest.by_loss && (cured || pest.nature.is_sign || pest.nature.is_unknown)
}

/// Whether such a count was made, and found few gone since. Seedlings that are moved on go through somebody's hands one by one.
pub(super) fn counted_clear(pest: &OpenPest, story: &TrayStory, day: Day) -> bool {
    let Some(from) = count_tells_from(pest, story, day) else { return false };
    let since = from.plus(-pest.look_after_days());
    let moved = story.made_on.filter(|on| !story.moves_in.is_empty() && (from..=day).contains(on));
    moved.is_some() || calm_count(story, since, from, day)
}

/// Whether a whole count from a day on found few gone since another.
fn calm_count(story: &TrayStory, since: Day, from: Day, day: Day) -> bool {
    let whole = || whole_counts(story, day).filter(|look| look.day > since);
    whole().filter(|look| look.day >= from && look.standing > 0).any(|look| {
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
    /// Of a whole count its place among them.
    at: Option<usize>,
    /// Of a count, how many it took back of those an earlier one missed.
    back: u32,
    entry: &'a EntryId,
}

/// Plants that died of nobody knows what, or were thrown out as that, in the days up to one.
fn unsaid_by(story: &TrayStory, on: Day) -> u32 {
    let said_so = |gone: &&Since<Gone>| !gone.what.culled || says_unknown(&gone.what.why);
    let lately = |gone: &&Since<Gone>| (0..LOOK_AFTER_DAYS).contains(&on.days_since(gone.from));
    let of_none = story.gone.iter().filter(|gone| gone.what.of == DiedOf::NotSaid && gone.what.stood.is_some());
    of_none.filter(said_so).filter(lately).map(|gone| gone.what.plants).fold(0, u32::saturating_add)
}

/// Whether a tenth of plants that are no longer young were lost so or found dead by a count: young seedlings die of many things, and nobody looks for each.
fn is_asked(story: &TrayStory, fall: &Fall<'_>) -> bool {
    let young = story.young_until().is_some_and(|until| fall.on <= until);
    let lately = || whole_counts(story, fall.on).filter(|look| fall.on.days_since(look.day) < LOOK_AFTER_DAYS);
    let dead = lately().map(|look| look.dead).fold(unsaid_by(story, fall.on), u32::saturating_add);
    let gone = lately().map(|look| look.not_seen).fold(dead, u32::saturating_add);
    // A wrong count that a later one put right lost nothing.
    let gone = gone.saturating_sub(lately().map(|look| look.corrected).fold(0, u32::saturating_add));
    let many = |plants: u32, pct: f64| plants >= LEAST_UNSAID_PLANTS && is_share(plants, fall.alive, pct);
    !young && fall.alive > 0 && (many(dead.min(gone), UNSAID_LOSS_PCT) || many(gone, MISSED_PCT))
}

/// Deaths of a tray of which nobody wrote what of.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct Deaths {
    /// The day of the count or the loss.
    pub on: Day,
    /// Dead or gone.
    pub gone: u32,
    /// Alive.
    pub alive: u32,
    /// The day from which another count tells whether it is over.
    pub again_from: Day,
    /// The entry.
    pub entry: EntryId,
}

impl Deaths {
    /// Whether they are a tenth of all, together with so many that left before.
    pub(super) fn are_many_with(&self, left: u32) -> bool {
        is_share(self.gone, self.alive.saturating_add(left), UNSAID_LOSS_PCT)
    }
}

/// More plants dead or gone within two weeks than live, or a tenth of older ones lost, by counts and losses, and nobody wrote of what
/// since: each time that it was so.
pub(super) fn unanswered(story: &TrayStory, day: Day) -> Vec<Deaths> {
    let counted = whole_counts(story, day).enumerate().map(|(at, look)| Fall {
        on: look.day,
        gone: gone_of(look),
        alive: look.standing,
        at: Some(at),
        back: look.corrected,
        entry: &look.entry,
    });
    let lost = unsaid(story).filter(|gone| gone.from <= day).map(|gone| {
        let left = gone.what.stood.unwrap_or(0).saturating_sub(u64::from(gone.what.plants));
        let alive = u32::try_from(left).unwrap_or(u32::MAX);
        Fall { on: gone.from, gone: gone.what.plants, alive, at: None, back: 0, entry: &gone.entry }
    });
    let thrown = story.gone.iter().filter(|gone| gone.what.culled && gone.from <= day && says_unknown(&gone.what.why));
    let thrown = thrown.filter_map(|gone| {
        let left = gone.what.stood?.saturating_sub(u64::from(gone.what.plants));
        let alive = u32::try_from(left).unwrap_or(u32::MAX);
        Some(Fall { on: gone.from, gone: 0, alive, at: None, back: 0, entry: &gone.entry })
    });
    let falls: Vec<Fall<'_>> = counted.chain(lost).chain(thrown).collect();
    let by_then = |fall: &Fall<'_>| {
        let lately = || falls.iter().filter(|other| (0..LOOK_AFTER_DAYS).contains(&fall.on.days_since(other.on)));
        let back = lately().map(|other| other.back).fold(0, u32::saturating_add);
        lately().map(|other| other.gone).fold(0, u32::saturating_add).saturating_sub(back)
    };
    // A later count that takes any back is asked itself about what is still missing.
    let put_right = |fall: &&Fall<'_>| {
        let after = |at: Option<usize>| fall.at.is_none_or(|before| at.is_some_and(|at| at > before));
        let soon = |on: Day| (0..LOOK_AFTER_DAYS).contains(&on.days_since(fall.on));
        falls.iter().any(|other| other.at.is_some() && other.back > 0 && soon(other.on) && after(other.at))
    };
    let most = |fall: &&Fall<'_>| {
        let some = fall.gone > 0 || fall.back > 0;
        fall.alive > 0 && some && by_then(fall) >= LEAST_UNSAID_PLANTS && by_then(fall) > fall.alive
    };
    let settled = |fall: &&Fall<'_>| {
        counted_few(story, fall.on.plus(LOOK_AFTER_DAYS), day)
            || story.pests.iter().any(|pest| (fall.on..=day).contains(&pest.from))
    };
    let many = falls.iter().filter(|fall| most(fall) || is_asked(story, fall));
    let open = many.filter(|fall| !put_right(fall) && !settled(fall));
    let deaths = open.map(|fall| Deaths {
        on: fall.on,
        gone: by_then(fall).max(unsaid_by(story, fall.on)),
        alive: fall.alive,
        again_from: fall.on.plus(LOOK_AFTER_DAYS),
        entry: fall.entry.clone(),
    });
    deaths.collect()
}

/// Whether a whole count from a day on found few gone.
pub(super) fn counted_few(story: &TrayStory, from: Day, day: Day) -> bool {
    whole_counts(story, day).any(|look| look.day >= from && is_few(gone_of(look), look.standing))
}

/// Whether a tray may have deaths of which nobody wrote what of.
pub(super) fn has_gone(story: &TrayStory) -> bool {
    story.counts.iter().any(|look| gone_of(look) > 0)
        || story.gone.iter().any(|gone| gone.what.of == DiedOf::NotSaid && gone.what.stood.is_some())
}

/// That many died in a tray itself, and nobody wrote of what.
pub(crate) fn many_died(story: &TrayStory, day: Day) -> Option<Criterion> {
    let Deaths { on, gone, alive, again_from, entry } =
        unanswered(story, day).into_iter().max_by_key(|deaths| (deaths.on, std::cmp::Reverse(deaths.alive)))?;
    let gap = Gap::ManyDied { on, gone, alive, again_from };
    let unknown = Criterion::lacking(Question::Pest, Some(NotSo), Some(gap), true, RuleSource::Pest);
    Some(unknown.resting_on([entry]))
}
