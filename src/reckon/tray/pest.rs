//! Whether a pest or a sickness that was seen would be carried into the field: it counts until a later look says that it is
//! gone. A treatment alone says nothing of that.

use crate::base::{Day, EntryId};
use crate::nursery::pest::{comes_along, is_of_the_soil, is_same_pest, says_none, spreads};
use crate::reckon::picture::quantity::{NotSo, PestSeen};
use crate::reckon::picture::{Basis, Criterion, Question, RuleSource};
use crate::reckon::stock::{BedStory, Places, Since, TrayStory};
use crate::reckon::tray::hold::treatments;

/// From this share of the plants on, percent, a pest above ground holds a tray back: one plant in ten is more than is left
/// behind while loading. Ours.
pub(crate) const PEST_HOLDS_PCT: f64 = 10.0;

/// A pest as it was written: what, and the share of the plants in percent where somebody counted.
type Written = Since<(String, Option<f64>)>;

/// What was seen and not settled since.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct OpenPest {
    /// What, and when last.
    pub seen: PestSeen,
    /// The entries.
    pub entries: Vec<EntryId>,
}

impl OpenPest {
    /// Whether it holds a tray: what nobody counted may be on all of them.
    pub(crate) fn holds(&self) -> bool {
        self.seen.in_soil || self.seen.spreads || self.on_many()
    }

    /// Whether it holds a bed: what lives in its ground, and what spreads from one plant.
    fn holds_bed(&self) -> bool {
        self.seen.spreads || (self.seen.in_soil && self.on_many())
    }

    fn on_many(&self) -> bool {
        self.seen.share_pct.is_none_or(|share| share >= PEST_HOLDS_PCT)
    }

    /// Whether a look that found none of it is believed: nematodes, a root rot or a virus do not go by themselves, so somebody
    /// must have thrown out or treated first.
    fn can_be_gone(&self, on: Day, acted: &[Day]) -> bool {
        let by_itself = !self.seen.in_soil && !self.seen.spreads;
        by_itself || acted.iter().any(|acted| (self.seen.on..=on).contains(acted))
    }
}

/// Every pest of a tray that is not settled: seen on it, on the trays its plants come from, or at a place while they stood there.
pub(crate) fn open_in_tray(story: &TrayStory, places: &Places, day: Day) -> Vec<OpenPest> {
    let ends = story.places.iter().skip(1).map(|spell| Some(spell.from)).chain([None]);
    let stays = story.places.iter().zip(ends).map(|(spell, until)| (&spell.what, spell.from, until));
    let before = story.stays_before.iter().map(|stay| (&stay.place, stay.from, Some(stay.until)));
    let at_places = stays.chain(before).flat_map(|(place, from, until)| {
        let all = places.get(place).into_iter().flat_map(|place| place.pests.iter());
        all.filter(move |pest| from <= pest.from && until.is_none_or(|until| pest.from <= until))
    });
    open(at_places.chain(&story.pests).filter(|pest| comes_along(&pest.what.0)), &acted_on(story, places), day)
}

/// The days on which something was done against a sickness of a tray: plants thrown out, or a treatment that is more than water.
pub(crate) fn acted_on(story: &TrayStory, places: &Places) -> Vec<Day> {
    let treated = treatments(story, places).filter(|one| one.can_cure()).map(|one| one.day);
    story.culled_on.iter().copied().chain(treated).collect()
}

/// What is still open of what was seen: a later look at the same replaces an earlier one, and 0 of it settles it, of what does not
/// go by itself only after plants were culled or treated.
fn open<'a>(seen: impl Iterator<Item = &'a Written>, acted: &[Day], day: Day) -> Vec<OpenPest> {
    let mut seen: Vec<&Written> = seen.filter(|pest| pest.from <= day).collect();
    seen.sort_by_key(|pest| pest.from);
    let mut open: Vec<OpenPest> = Vec::new();
    for Since { from, what: (what, share_pct), entry } in seen {
        let gone = *share_pct == Some(0.0);
        if says_none(what) && share_pct.is_none_or(|share| share == 0.0) {
            open.retain(|pest| !pest.can_be_gone(*from, acted));
            continue;
        }
        let same = open.iter().position(|pest| is_same_pest(&pest.seen.what, what));
        match same.and_then(|at| open.get_mut(at)) {
            Some(_) if gone => {
                open.retain(|pest| !is_same_pest(&pest.seen.what, what) || !pest.can_be_gone(*from, acted));
            }
            Some(pest) => {
                // A look that counted nothing does not make less of it.
                pest.seen.share_pct = share_pct.or(pest.seen.share_pct);
                pest.seen.on = *from;
                pest.seen.what.clone_from(what);
                pest.seen.in_soil |= is_of_the_soil(what);
                pest.seen.spreads |= spreads(what);
                pest.entries.push(entry.clone());
            }
            None if gone => {}
            None => {
                let seen = PestSeen {
                    what: what.clone(),
                    share_pct: *share_pct,
                    on: *from,
                    in_soil: is_of_the_soil(what),
                    spreads: spreads(what),
                    in_bed: false,
                };
                open.push(OpenPest { seen, entries: vec![entry.clone()] });
            }
        }
    }
    open
}

/// The criterion `pest` of a tray.
pub(crate) fn criterion(story: &TrayStory, places: &Places, day: Day) -> Criterion {
    const SOURCE: RuleSource = RuleSource::Pest;
    let open = open_in_tray(story, places, day);
    let share = |pest: &OpenPest| (pest.seen.share_pct.unwrap_or(0.0) * 100.0) as i64;
    let Some(worst) = open.iter().max_by_key(|pest| (pest.holds(), pest.seen.in_soil, share(pest))) else {
        return Criterion::found(Question::Pest, NotSo, None, Basis::Reckoned, true, SOURCE);
    };
    let criterion = Criterion::found(Question::Pest, NotSo, Some(worst.seen.clone()), Basis::Measured, false, SOURCE)
        .resting_on(open.iter().flat_map(|pest| pest.entries.iter().cloned()));
    if worst.holds() { criterion } else { criterion.advising() }
}

/// The criterion `pest` of a bed, where something was seen there and not settled. What lives in its ground on many, and what
/// spreads from one plant, holds back until a look finds none of it, also after a treatment; what else eats there waits for young
/// plants and asks for care.
pub(crate) fn in_bed(story: &BedStory, day: Day) -> Option<Criterion> {
    let last = holding_in_bed(story, day)?;
    let seen = Some(PestSeen { in_bed: true, ..last.pest.seen.clone() });
    let found = Criterion::found(Question::Pest, NotSo, seen, Basis::Measured, false, RuleSource::Pest);
    let found = found.resting_on(last.entries);
    Some(if last.holds { found } else { found.advising() })
}

/// The worst pest of a bed that is not settled.
pub(crate) struct InBed {
    /// The pest.
    pub pest: OpenPest,
    /// Whether it holds the bed back.
    pub holds: bool,
    /// The entries of all that are open.
    pub entries: Vec<EntryId>,
}

/// The worst of what was seen in a bed and not settled; none where nothing is open.
pub(crate) fn holding_in_bed(story: &BedStory, day: Day) -> Option<InBed> {
    // A later look at a bed is believed: nobody culls there.
    let looked: Vec<Day> = story.pests.iter().map(|pest| pest.from).collect();
    let open = open(story.pests.iter(), &looked, day);
    let entries = open.iter().flat_map(|pest| pest.entries.iter().cloned()).collect();
    let last = open.iter().max_by_key(|pest| (pest.holds_bed(), pest.seen.in_soil, pest.seen.on))?;
    Some(InBed { holds: last.holds_bed(), pest: last.clone(), entries })
}
