//! What plants that were together in one tray have in common: a sickness that was hidden in them when they parted, and whatever it is that
//! others of them died of.

use imbl::OrdMap;
use std::collections::BTreeMap;
use std::sync::Arc;

use super::losses::{self, Deaths};
use super::{LOOK_AFTER_DAYS, LOOK_AFTER_INCURABLE_DAYS, LOOK_LEAST_PLANTS, Written, hides_together_days, is_share};
use crate::base::{BedName, Day, EntryId, PlaceName, TrayCode};
use crate::nursery::pest::{comes_along, is_same_pest, nature_of};
use crate::reckon::archived::{is_archived, tray_archived_from};
use crate::reckon::picture::out_of::OutOf;
use crate::reckon::picture::quantity::NotSo;
use crate::reckon::picture::{Criterion, Gap, Question, RuleSource};
use crate::reckon::stock::{BedStory, Since, TrayStory};
use crate::reckon::tray::hold::stays;

/// Plants that left a tray so many days before others of it were written as dead may have had what those died of. Ours: as long as what
/// nothing cures hides.
pub(crate) const LEFT_BEFORE_DAYS: i32 = LOOK_AFTER_INCURABLE_DAYS;
/// Plants that were set out from a tray in which others died are asked about for so many days: most shows within two months. Ours.
pub(crate) const IN_BED_DAYS: i32 = 56;
/// From this share on, percent, plants that died of nobody knows what are a word to the trays beside theirs. Ours: fewer are what one dry
/// corner loses.
const BESIDE_PCT: f64 = 33.0;
/// How many moves on a line is followed; a seedling is moved on two or three times in its life.
const MOST_MOVES: usize = 32;

/// What trays have in common with others by moves, each by its code.
#[derive(Clone, PartialEq, Debug, Default)]
pub(crate) struct Kin {
    sisters: BTreeMap<TrayCode, Vec<Sister>>,
    died: BTreeMap<TrayCode, Vec<Died>>,
    beside: BTreeMap<PlaceName, Vec<DiedThere>>,
    from_beds: BTreeMap<TrayCode, Vec<FromBed>>,
}

/// What a bed tells of a tray that plants came into it from.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct FromBed {
    /// The bed.
    pub bed: BedName,
    /// The tray.
    pub tray: TrayCode,
    /// How many were set out.
    pub plants: u32,
    /// The day they were.
    pub planted: Day,
    /// The entry that set them.
    pub entry: EntryId,
    /// What.
    pub told: Told,
}

/// What was found in a bed.
#[derive(Clone, PartialEq, Debug)]
pub(crate) enum Told {
    /// A sickness that hides for so many days, and whether it holds what stayed in the tray; what was said of whether it goes along.
    Sick { seen: Written, spreads: Option<bool>, hides: i32, holds: bool },
    /// Deaths of which nobody wrote what of.
    Died { on: Day, gone: u32, alive: u32 },
}

impl FromBed {
    /// The day on which it was seen.
    fn on(&self) -> Day {
        match &self.told {
            Told::Sick { seen, .. } => seen.from,
            Told::Died { on, .. } => *on,
        }
    }

    /// Whether plants that left the tray on a day may have it: it is some weeks since at most.
    pub(crate) fn may_be_in(&self, left: Day) -> bool {
        let hides = if let Told::Sick { hides, .. } = &self.told { *hides } else { LEFT_BEFORE_DAYS };
        self.on().days_since(left) <= hides
    }

    /// Whether it is told on a day of plants that came on another and were looked at so.
    fn is_asked<'a>(&self, mut looks: impl Iterator<Item = &'a Written>, came: Day, day: Day) -> bool {
        let lately = (0..=IN_BED_DAYS).contains(&day.days_since(self.on()));
        lately && !looks.any(|look| (self.on().max(came)..=day).contains(&look.from))
    }

    fn criterion(&self) -> Criterion {
        let (tray, bed, on) = (self.tray.clone(), self.bed.clone(), self.on());
        let gap = match &self.told {
            Told::Sick { seen, .. } => Gap::SickInBed { tray, bed, on, what: seen.what.what.clone() },
            Told::Died { gone, alive, .. } => Gap::DiedInBed { tray, bed, on, gone: *gone, alive: *alive },
        };
        let unknown = Criterion::lacking(Question::Pest, Some(NotSo), Some(gap), false, RuleSource::Pest);
        Criterion { warns: true, ..unknown.resting_on([self.entry.clone()]) }
    }
}

/// A sickness that was seen in another tray after the plants of this one had parted from those in it.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct Sister {
    /// The look there.
    pub seen: Written,
    /// The tray in which it was seen, how many came from there and when they parted.
    pub out_of: OutOf,
    /// The day on which they came into this tray; none where they stood in it before.
    pub came: Option<Day>,
}

/// Plants of a tray of which others died, of nobody knows what.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct Died {
    /// The tray in which they died.
    pub tray: TrayCode,
    /// The deaths.
    pub deaths: Deaths,
    /// How many came out of it.
    pub plants: u32,
    /// Whether they died before these left.
    pub before: bool,
    /// The move that brought them here.
    came: Since<()>,
}

/// A tray of which many died where it stood.
#[derive(Clone, PartialEq, Debug)]
struct DiedThere {
    tray: TrayCode,
    deaths: Deaths,
    left: Option<Day>,
}

impl Died {
    /// Whether so many plants that were set out from a tray on a day may have had what the others died of.
    pub(crate) fn is_of(&self, tray: &TrayCode, planted: Day, plants: u32) -> bool {
        let before = self.deaths.on.days_since(planted);
        match self.tray == *tray {
            true => before <= 0 || before <= LEFT_BEFORE_DAYS && self.deaths.are_many_with(plants),
            false => self.came.from <= planted,
        }
    }
}

impl Kin {
    /// What trays have in common on a day.
    pub(crate) fn of(trays: &OrdMap<TrayCode, Arc<TrayStory>>, from_beds: Vec<FromBed>, day: Day) -> Kin {
        // What is archived is not at hand, and tells nothing any more.
        let rests = |story: &TrayStory| is_archived(tray_archived_from(story), day);
        let at_hand: OrdMap<TrayCode, Arc<TrayStory>> = match trays.values().any(|story| rests(story)) {
            true => trays
                .iter()
                .filter(|(_, story)| !rests(story))
                .map(|(code, story)| (code.clone(), story.clone()))
                .collect(),
            false => trays.clone(),
        };
        let trays = &at_hand;
        let mut tracing = Tracing { trays, into: BTreeMap::new(), day, kin: Kin::default() };
        for (from, story) in trays {
            for moved in &story.moves_out {
                tracing.into.entry(&moved.what.0).or_default().push((from, moved));
            }
        }
        for story in trays.values() {
            tracing.sickness(story);
            tracing.deaths(story);
        }
        from_beds.into_iter().for_each(|one| tracing.bed(one));
        tracing.kin
    }

    /// What beds tell of a tray.
    fn told_by_beds(&self, tray: &TrayCode) -> &[FromBed] {
        self.from_beds.get(tray).map_or(&[], Vec::as_slice)
    }

    /// Sicknesses that may be hidden in plants of a tray.
    pub(crate) fn sisters(&self, tray: &TrayCode) -> &[Sister] {
        self.sisters.get(tray).map_or(&[], Vec::as_slice)
    }

    /// Deaths of which nobody wrote what of, among plants that a tray's own came from.
    pub(crate) fn died(&self, tray: &TrayCode) -> &[Died] {
        self.died.get(tray).map_or(&[], Vec::as_slice)
    }

    /// Whether it says another thing of a tray than an earlier one.
    pub(crate) fn is_other_for(&self, story: &TrayStory, before: &Kin) -> bool {
        let code = &story.code;
        let beside = || stays(story).any(|(place, ..)| self.beside.get(place) != before.beside.get(place));
        let of_trays = self.sisters(code) != before.sisters(code) || self.died(code) != before.died(code);
        of_trays || self.told_by_beds(code) != before.told_by_beds(code) || beside()
    }
}

/// A tray and a move out of it.
type Out<'a> = (&'a TrayCode, &'a Since<(TrayCode, u32)>);

struct Tracing<'a> {
    trays: &'a OrdMap<TrayCode, Arc<TrayStory>>,
    /// Moves by the tray they went into.
    into: BTreeMap<&'a TrayCode, Vec<Out<'a>>>,
    day: Day,
    kin: Kin,
}

impl<'a> Tracing<'a> {
    /// What was seen in a tray itself, of what hides.
    fn sickness(&mut self, story: &'a TrayStory) {
        if story.pests.is_empty() && story.gone.is_empty()
            || story.moves_out.is_empty() && !self.into.contains_key(&story.code)
        {
            return;
        }
        let of_loss = losses::sightings(story, self.day);
        // A plant or two that wilted tell nothing of others.
        let of_loss = of_loss.iter().filter(|look| {
            let nature = nature_of(&look.what.what, None);
            !nature.is_sign && !nature.is_unknown
        });
        let own = |look: &&Written| look.from <= self.day && story.entries.contains(&look.entry);
        let looks: Vec<Written> = story.pests.iter().chain(of_loss).filter(own).cloned().collect();
        for look in looks.iter().filter(|look| !look.finds_none() && comes_along(&look.what.what)) {
            let said = |other: &&Written| {
                let answers = other.what.spreads.is_some() && !other.finds_none();
                answers && other.from > look.from && is_same_pest(&other.what.what, &look.what.what)
            };
            let answers = looks.iter().filter(said).cloned().collect();
            let nature = nature_of(&look.what.what, look.what.spreads);
            // What may be thirst is no sickness of weeks ago.
            let most = if nature.is_sign { LOOK_AFTER_DAYS } else { i32::MAX };
            let hides = hides_together_days(nature).min(most);
            let seen = Seen { story, bed: None, look: look.clone(), answers, hides };
            if seen.hides > 0 {
                self.up(&seen);
            }
        }
    }

    /// Trays whose plants were together with those of a sick one: those that came out of it, and, where all of it came out of one tray,
    /// that and what came out of that.
    fn up(&mut self, seen: &Seen<'a>) {
        let mut told = vec![&seen.story.code];
        self.down(seen, &seen.story.code, None, &mut told);
        self.sources(seen, seen.look.from, &mut told);
    }

    /// What a bed tells of a tray, for what stayed in that, for what it went on to, and for the other beds its plants went to.
    fn bed(&mut self, one: FromBed) {
        let Some((code, story)) = self.trays.get_key_value(&one.tray) else { return };
        if let Told::Sick { seen, spreads, hides, holds: true } = &one.told {
            let mut look = seen.clone();
            look.what.spreads = spreads.or(look.what.spreads);
            let bed = Some(one.bed.clone());
            let seen = Seen { story, bed: bed.clone(), look, answers: Vec::new(), hides: *hides };
            let (tray, plants) = (code.clone(), one.plants);
            self.tell(&seen, code, &OutOf { tray, plants, left: one.planted, together: true, bed }, None);
            let mut told = vec![code];
            self.down(&seen, code, Some(one.planted), &mut told);
            self.sources(&seen, one.planted, &mut told);
        }
        let mut reached = vec![code];
        let mut at = 0;
        while let Some(story) = reached.get(at).and_then(|code| self.trays.get(*code)) {
            let since = story.moves_out.iter().filter(|moved| moved.from >= one.planted);
            for to in since.filter_map(|moved| self.trays.get_key_value(&moved.what.0)).map(|(to, _)| to) {
                if !reached.contains(&to) {
                    reached.push(to);
                }
            }
            at += 1;
        }
        for code in reached {
            self.kin.from_beds.entry(code.clone()).or_default().push(one.clone());
        }
    }

    /// Where all plants of a tray came out of one, that and what came out of that, and so on.
    fn sources(&mut self, seen: &Seen<'a>, mut parted: Day, told: &mut Vec<&'a TrayCode>) {
        let (mut tray, by) = (&seen.story.code, parted);
        for _ in 0..MOST_MOVES {
            let Some((from, on)) = self.sole_source(tray, by) else { return };
            parted = parted.min(on);
            if seen.look.from.days_since(parted) > seen.hides || told.contains(&from) {
                return;
            }
            told.push(from);
            let bed = seen.bed.clone();
            let out_of = OutOf { tray: seen.story.code.clone(), plants: 0, left: parted, together: true, bed };
            self.tell(seen, from, &out_of, None);
            self.down(seen, from, Some(parted), told);
            tray = from;
        }
    }

    /// What came out of a tray, whose plants had parted from the sick ones on a day, or part from them by leaving.
    fn down(&mut self, seen: &Seen<'a>, from: &'a TrayCode, parted: Option<Day>, told: &mut Vec<&'a TrayCode>) {
        let Some(story) = self.trays.get(from) else { return };
        let together = parted.is_some();
        let left = |moved: &Since<(TrayCode, u32)>| parted.map_or(moved.from, |parted| parted.min(moved.from));
        let hidden =
            |moved: &&'a Since<(TrayCode, u32)>| (0..=seen.hides).contains(&seen.look.from.days_since(left(moved)));
        for first in story.moves_out.iter().filter(hidden) {
            let to = &first.what.0;
            if told.contains(&to) {
                continue;
            }
            told.push(to);
            // In several goes the last of them parted last.
            let goes = || story.moves_out.iter().filter(hidden).filter(|moved| moved.what.0 == *to);
            let plants = goes().map(|moved| moved.what.1).fold(0, u32::saturating_add);
            let left = goes().map(left).max().unwrap_or(first.from);
            let bed = seen.bed.clone();
            let out_of = OutOf { tray: seen.story.code.clone(), plants, left, together, bed };
            self.tell(seen, to, &out_of, Some(first.from));
            self.on(seen, to, &out_of, first.from, told);
        }
    }

    /// And on from there.
    fn on(&mut self, seen: &Seen<'a>, from: &'a TrayCode, out_of: &OutOf, came: Day, told: &mut Vec<&'a TrayCode>) {
        let Some(story) = self.trays.get(from) else { return };
        for moved in story.moves_out.iter().filter(|moved| moved.from >= came) {
            let to = &moved.what.0;
            if !told.contains(&to) {
                told.push(to);
                let out_of = OutOf { plants: out_of.plants.min(moved.what.1), ..out_of.clone() };
                self.tell(seen, to, &out_of, Some(moved.from));
                self.on(seen, to, &out_of, moved.from, told);
            }
        }
    }

    fn tell(&mut self, seen: &Seen<'a>, tray: &TrayCode, out_of: &OutOf, came: Option<Day>) {
        let Some(story) = self.trays.get(tray) else { return };
        let here = |entry: &EntryId| {
            let seen = story.pests.iter().any(|pest| pest.entry == *entry);
            seen || story.gone.iter().any(|gone| gone.entry == *entry)
        };
        // What was seen before they left came along.
        if here(&seen.look.entry) {
            return;
        }
        let sisters = self.kin.sisters.entry(tray.clone()).or_default();
        for look in std::iter::once(&seen.look).chain(&seen.answers) {
            let mut there = look.clone();
            (there.what.of_place, there.what.stood) = (true, None);
            sisters.push(Sister { seen: there, out_of: out_of.clone(), came });
        }
    }

    /// The tray out of which all plants of another came by a day, and when the last of them did.
    fn sole_source(&self, tray: &TrayCode, by: Day) -> Option<(&'a TrayCode, Day)> {
        let story = self.trays.get(tray)?;
        let from_elsewhere = story.accounts.sown + story.accounts.arrived > 0 || story.seed_unknown;
        let mut all = self.into.get(tray)?.iter().filter(|(_, moved)| moved.from <= by);
        let (from, first) = all.next().filter(|_| !from_elsewhere)?;
        let mut last = first.from;
        for (other, moved) in all {
            if other != from {
                return None;
            }
            last = last.max(moved.from);
        }
        Some((from, last))
    }

    /// Deaths of a tray of which nobody wrote what of, for those that came out of it and those beside it.
    fn deaths(&mut self, story: &'a TrayStory) {
        let lately = story.last_on.is_some_and(|last| self.day.days_since(last) <= IN_BED_DAYS + LEFT_BEFORE_DAYS);
        let live_on = |to: &TrayCode| {
            let story = self.trays.get(to);
            story.is_some_and(|story| story.accounts.standing > 0 || !story.moves_out.is_empty())
        };
        let concerns = lately || story.moves_out.iter().any(|moved| live_on(&moved.what.0));
        if !concerns || !losses::has_gone(story) {
            return;
        }
        let open = losses::unanswered(story, self.day);
        let Some(last) = open.iter().max_by_key(|deaths| deaths.on) else { return };
        let died = |before: bool, deaths: &Deaths, plants: u32, came: Since<()>| {
            let (tray, deaths) = (story.code.clone(), deaths.clone());
            Died { tray, deaths, plants, before, came }
        };
        for moved in &story.moves_out {
            let by_then = open.iter().filter(|deaths| deaths.on <= moved.from).max_by_key(|deaths| deaths.on);
            let soon = |deaths: &&Deaths| {
                let days = deaths.on.days_since(moved.from);
                (1..=LEFT_BEFORE_DAYS).contains(&days) && deaths.are_many_with(left_before(story, deaths.on))
            };
            let deaths = by_then.or_else(|| open.iter().filter(soon).min_by_key(|deaths| deaths.on));
            let came = Since { from: moved.from, what: (), entry: moved.entry.clone() };
            let item = deaths.map(|deaths| died(by_then.is_some(), deaths, moved.what.1, came));
            item.into_iter().for_each(|item| self.hand(item, &moved.what.0, &mut vec![&story.code]));
        }
        // Its own, for the beds its plants went to.
        let first = story.entries.first().cloned().unwrap_or_else(|| last.entry.clone());
        let own = died(true, last, 0, Since { from: last.on, what: (), entry: first });
        self.kin.died.entry(story.code.clone()).or_default().push(own);
        if last.gone >= LOOK_LEAST_PLANTS && is_share(last.gone, last.alive, BESIDE_PCT) {
            let there =
                stays(story).filter(|(_, from, until)| *from <= last.on && until.is_none_or(|until| until >= last.on));
            for (place, _, left) in there {
                let there = DiedThere { tray: story.code.clone(), deaths: last.clone(), left };
                self.kin.beside.entry(place.clone()).or_default().push(there);
            }
        }
    }

    fn hand(&mut self, item: Died, to: &'a TrayCode, through: &mut Vec<&'a TrayCode>) {
        if through.len() > MOST_MOVES || through.contains(&to) {
            return;
        }
        let Some(story) = self.trays.get(to).filter(|story| !is_answered(story, &item, self.day)) else { return };
        through.push(to);
        for moved in story.moves_out.iter().filter(|moved| moved.from >= item.came.from) {
            let came = Since { from: moved.from, what: (), entry: moved.entry.clone() };
            let on = Died { plants: item.plants.min(moved.what.1), came, ..item.clone() };
            self.hand(on, &moved.what.0, through);
        }
        through.pop();
        self.kin.died.entry(to.clone()).or_default().push(item);
    }
}

/// How many were moved out of a tray in the weeks before a day: those that are left are what was not worth it, and die sooner.
fn left_before(story: &TrayStory, on: Day) -> u32 {
    let lately = story.moves_out.iter().filter(|moved| (1..=LEFT_BEFORE_DAYS).contains(&on.days_since(moved.from)));
    lately.map(|moved| moved.what.1).fold(0, u32::saturating_add)
}

/// A sickness seen in a tray, or in a bed on plants of it.
struct Seen<'a> {
    story: &'a TrayStory,
    /// The bed, where it was seen there on plants of that tray.
    bed: Option<BedName>,
    look: Written,
    /// What was said later of whether it goes along with plants.
    answers: Vec<Written>,
    /// How many days it hides.
    hides: i32,
}

/// Whether somebody looked at a tray since plants came into it, or counted and found few gone weeks after the deaths.
fn is_answered(story: &TrayStory, item: &Died, day: Day) -> bool {
    let since = item.deaths.on.max(item.came.from);
    let looked = story.pests.iter().filter(|look| (since..=day).contains(&look.from));
    let came = &item.came.entry;
    // Of the day on which they came what was written after it counts.
    let after = |look: &Written| {
        let written_later = look.entry.device == came.device && look.entry.seq > came.seq;
        story.entries.contains(&look.entry) && (look.from > item.came.from || written_later)
    };
    looked.into_iter().any(after) || losses::counted_few(story, item.deaths.again_from.max(item.came.from.plus(1)), day)
}

/// That plants of a tray came out of one of which many died: held where they left it after that and are enough, else with care.
pub(crate) fn came_from_dying(kin: &Kin, story: &TrayStory) -> Option<Criterion> {
    let from_others = || kin.died(&story.code).iter().filter(|died| died.tray != story.code);
    let plants = from_others().filter(|died| died.before).map(|died| died.plants).fold(0, u32::saturating_add);
    let holds = plants > 0 && story.are_enough(plants);
    let worst = from_others().max_by_key(|died| (died.before, died.plants))?;
    let Deaths { on, gone, alive, again_from, ref entry } = worst.deaths;
    let tray = worst.tray.clone();
    let gap = match holds {
        true => Gap::CameFromDying { tray, plants: worst.plants, on, gone, alive, again_from },
        false => Gap::LeftDying { tray, plants: worst.plants, on, gone, alive },
    };
    let unknown = Criterion::lacking(Question::Pest, Some(NotSo), Some(gap), holds, RuleSource::Pest);
    Some(Criterion { warns: !holds, ..unknown.resting_on([entry.clone(), worst.came.entry.clone()]) })
}

/// That plants of a tray were set out in a bed in which many died soon after, or a sickness was seen that does not hold what stayed.
pub(super) fn set_out_sick(kin: &Kin, story: &TrayStory, day: Day) -> Option<Criterion> {
    let asked = |one: &&FromBed| {
        let own = story.pests.iter().filter(|look| story.entries.contains(&look.entry));
        !matches!(one.told, Told::Sick { holds: true, .. }) && one.is_asked(own, one.planted, day)
    };
    kin.told_by_beds(&story.code).iter().filter(asked).max_by_key(|one| one.on()).map(FromBed::criterion)
}

/// The same for another bed to which plants of that tray went.
pub(crate) fn set_out_with_sick(kin: &Kin, story: &BedStory, day: Day) -> Option<Criterion> {
    let came = story.came_from.iter().filter(|came| came.planted <= day);
    let all = came.flat_map(|came| kin.told_by_beds(&came.tray).iter().map(move |one| (came, one)));
    let asked = all.filter(|(came, one)| {
        let tells = one.bed != story.name && one.may_be_in(came.planted);
        let sure = !matches!(one.told, Told::Sick { holds: false, .. });
        tells && sure && one.is_asked(story.pests.iter(), came.planted, day)
    });
    asked.max_by_key(|(_, one)| one.on()).map(|(_, one)| one.criterion())
}

/// That many died in a tray that stood beside another in these weeks.
pub(super) fn beside_dying(kin: &Kin, story: &TrayStory, day: Day) -> Option<Criterion> {
    let looked = |deaths: &Deaths| story.pests.iter().any(|look| (deaths.on..=day).contains(&look.from));
    let met = stays(story).flat_map(|(place, from, until)| {
        let there = kin.beside.get(place).into_iter().flatten().filter(|died| died.tray != story.code);
        there.filter(move |died| {
            let on = died.deaths.on;
            let together = until.is_none_or(|until| until >= on.plus(-LOOK_AFTER_DAYS));
            together && from <= died.left.unwrap_or(day) && day.days_since(on) <= LEFT_BEFORE_DAYS
        })
    });
    let died = met.filter(|died| !looked(&died.deaths)).max_by_key(|died| died.deaths.on)?;
    let Deaths { on, gone, alive, ref entry, .. } = died.deaths;
    let gap = Gap::DiedBeside { tray: died.tray.clone(), on, gone, alive };
    let unknown = Criterion::lacking(Question::Pest, Some(NotSo), Some(gap), false, RuleSource::Pest);
    Some(Criterion { warns: true, ..unknown.resting_on([entry.clone()]) })
}
