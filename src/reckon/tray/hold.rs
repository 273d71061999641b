//! What a person or a plant's own growth holds back: held, under treatment, soft flush, last day of bare roots.

use super::closed::{self, Closed, Closing};
use crate::base::{Day, EntryId, PlaceName};
use crate::nursery::entry::types::{ArrivedFrom, PlantForm};
use crate::nursery::pest::holds_sick;
use crate::nursery::species::{LooksAlive, Profile, Role};
use crate::reckon::bed::held::planting_waits;
use crate::reckon::picture::quantity::{AtWork, Beside, HeldFor, KeepsUntil, LivesBare, NotSo};
use crate::reckon::picture::{Basis, Criterion, Gap, Question, RuleSource, Source};
use crate::reckon::stock::{Hold, Origin, PlaceStory, Places, Since, TrayStory, Treatment, holding, longest_on};

/// Days a soft flush takes to harden (common practice: 2-3 weeks; the low end blocks).
pub(crate) const FLUSH_HARDENS_DAYS: i32 = 14;
/// The high end: until then whoever plants feels the leaves.
pub(crate) const FLUSH_FIRM_DAYS: i32 = 21;

const COMMON: RuleSource = RuleSource::CommonPractice;

/// The criterion `held`: the tray itself, what its plants came from, its lots or its place. Carried off a held place it asks for care, and
/// is held where the place is so for a sickness.
pub fn held(story: &TrayStory, places: &Places, lots_held: &[Since<Hold>], day: Day) -> Criterion {
    let at_place = story.place().and_then(|place| places.get(place)).into_iter().flat_map(|place| place.held.iter());
    let in_force = longest_on(story.holds().chain(at_place).chain(lots_held), day);
    let nobody = || Criterion::found(Question::Held, NotSo, None, Basis::Reckoned, true, COMMON);
    match (in_force, carried_off(story, places, day)) {
        (Some(spell), _) => held_by(spell, None),
        (None, Some((place, spell))) => {
            let stood = held_by(spell, Some(place.clone()));
            if holds_sick(&spell.what.0) { stood } else { Criterion { warns: true, ..stood.advising() } }
        }
        (None, None) => nobody(),
    }
}

/// A place that is held, from which a tray was carried off while it was so, and was not let go since.
fn carried_off<'a>(story: &'a TrayStory, places: &'a Places, day: Day) -> Option<(&'a PlaceName, &'a Since<Hold>)> {
    let let_go = |left: Day| story.released_on.is_some_and(|on| on >= left);
    let own = story.places.windows(2).filter_map(|pair| match pair {
        [stood, next] => Some((&stood.what, stood.from, next.from, let_go(next.from))),
        _ => None,
    });
    let before = story.stays_before.iter();
    let before = before.map(|stay| (&stay.place, stay.from, stay.until, stay.released || let_go(stay.until)));
    // What was carried off on the day on which it came did not stand there.
    let stood = own.chain(before).filter(|(_, from, until, released)| !released && from < until && *until <= day);
    let held = stood.filter_map(|(name, _, until, _)| {
        let place = places.get(name)?;
        let spell = place.held.longest_on(day)?;
        place.held_since.is_some_and(|since| since <= until).then_some((name, spell))
    });
    held.max_by_key(|(_, spell)| (holds_sick(&spell.what.0), spell.what.1.is_none(), spell.what.1))
}

fn held_by(spell: &Since<Hold>, stood: Option<PlaceName>) -> Criterion {
    let known = Some(HeldFor { why: spell.what.0.clone(), stood });
    Criterion::found(Question::Held, NotSo, known, Basis::Measured, false, COMMON)
        .expected_on(spell.what.1.map(|until| until.plus(1)))
        .resting_on([spell.entry.clone()])
}

/// That a person holds back a whole place, where it is so on a day.
pub(crate) fn held_at(place: &PlaceStory, day: Day) -> Option<Criterion> {
    place.held.longest_on(day).map(|spell| held_by(spell, None))
}

/// The waiting time that closes a place on a day: of several the one that lasts longest.
pub(crate) fn waiting_at(closed: &Closed, name: &PlaceName, day: Day) -> Option<Criterion> {
    let closing = closed.get(name)?;
    let longest = holding(closing.iter().map(|one| &one.treatment), day)?;
    let tray = closing.iter().find(|one| one.treatment.entry == longest.entry)?.tray.clone();
    Some(waiting(Some(longest), Some(tray.map_or(Beside::Place, Beside::Tray))))
}

/// Every treatment that reached the plants of a tray: its own, those its plants brought along, and those of a place while
/// they stood there.
pub(crate) fn treatments<'a>(story: &'a TrayStory, places: &'a Places) -> impl Iterator<Item = &'a Treatment> {
    let at_places = stays(story).flat_map(move |(place, from, until)| {
        let all = places.get(place).into_iter().flat_map(|place| place.treatments.iter());
        all.filter(move |one| from <= one.day && until.is_none_or(|until| one.day <= until))
    });
    story.treatments.iter().chain(at_places)
}

/// Where a tray's plants stood, from when until when; the last stay has no end.
pub(crate) fn stays(story: &TrayStory) -> impl Iterator<Item = (&PlaceName, Day, Option<Day>)> {
    let ends = story.places.iter().skip(1).map(|spell| Some(spell.from)).chain([None]);
    let stays = story.places.iter().zip(ends).map(|(spell, until)| (&spell.what, spell.from, until));
    stays.chain(story.stays_before.iter().map(|stay| (&stay.place, stay.from, Some(stay.until))))
}

/// The criterion `treated`: the waiting time of every treatment, as written from the label, has ended; those of the trays beside it
/// too, for nobody works among them before.
pub(crate) fn treated(story: &TrayStory, places: &Places, closed: &Closed, day: Day) -> Criterion {
    let own = holding(treatments(story, places), day);
    let beside = closed::beside(closed, story, day);
    // What drifts from a tray beside is on these as well, wherever they are carried.
    let drifted = closed::drifted(closed, story, day);
    let drifted = drifted.filter(|one| beside.is_none_or(|beside| beside.treatment.ends_before(&one.treatment)));
    if let Some((one, tray)) = drifted.and_then(|one| Some((one, one.tray.clone()?)))
        && own.is_none_or(|own| own.ends_before(&one.treatment))
    {
        return waiting(Some(&one.treatment), Some(Beside::Drifted(tray)));
    }
    let Some(Closing { treatment, tray }) = beside.filter(|one| own.is_none_or(|own| own.ends_before(&one.treatment)))
    else {
        let off = stood_on(story, places, day).filter(|_| own.is_none());
        let Some((place, treatment)) = off else { return waiting(own, None) };
        let care = waiting(Some(treatment), Some(Beside::Stood(place.clone()))).advising();
        return Criterion { warns: true, ..care };
    };
    waiting(Some(treatment), Some(tray.clone().map_or(Beside::Place, Beside::Tray)))
}

/// A place to which a tray came after it was treated, and from which it was carried off while the time ran, as it still does: of several
/// the one that lasts longest. What was put down on it asks for gloves; its plants were not wetted.
fn stood_on<'a>(story: &'a TrayStory, places: &'a Places, day: Day) -> Option<(&'a PlaceName, &'a Treatment)> {
    let stood = stays(story).filter_map(|(place, from, until)| Some((place, from, until?)));
    let met = stood.flat_map(|(place, from, until)| {
        let here = places.get(place).into_iter().flat_map(|place| place.treatments.iter());
        // Carried off on the day on which it came it was not put down.
        let ran = here.filter(move |one| one.day < from && from < until && until <= day);
        ran.filter(move |one| closed::closes(one, from) && closed::closes(one, day)).map(move |one| (place, one))
    });
    let lately =
        met.filter(|(_, one)| one.over_on().is_some() || day.days_since(one.day) < closed::UNKNOWN_WAIT_BESIDE_DAYS);
    lately.max_by_key(|(_, one)| (one.over_on().is_none(), one.over_on()))
}

/// The criterion `treated` of what is treated: a waiting time that nobody wrote is unknown and holds back.
pub(crate) fn waiting(holding: Option<&Treatment>, beside: Option<Beside>) -> Criterion {
    const SOURCE: RuleSource = RuleSource::WaitingTime;
    let Some(treatment) = holding else {
        return Criterion::found(Question::Treated, NotSo, None, Basis::Reckoned, true, SOURCE);
    };
    let on_bench = matches!(beside, Some(Beside::Tray(_) | Beside::Place | Beside::Stood(_)));
    let source = if on_bench { RuleSource::WaitingBeside } else { SOURCE };
    let criterion = match treatment.over_on() {
        Some(over) => {
            let dries = treatment.wait_days == Some(0);
            let known = Some(AtWork { with: treatment.with.clone(), beside, dries, wets: treatment.wets() });
            Criterion::found(Question::Treated, NotSo, known, Basis::Measured, false, source).expected_on(Some(over))
        }
        None => {
            let gap = Gap::NoWaitingTime { with: treatment.with.clone(), day: treatment.day, beside };
            Criterion::lacking(Question::Treated, Some(NotSo), Some(gap), true, source)
        }
    };
    criterion.resting_on([treatment.entry.clone()])
}

/// What kills weeds shows on plants within four weeks: glyphosate in one to three (from memory). Ours.
pub(crate) const SHOWS_AFTER_DAYS: i32 = 28;
/// Nobody counted for so long, and what stands is taken to live. Ours.
const SHOWN_AFTER_DAYS: i32 = 365;

/// Whether plants of a tray were counted or measured alive on a day or later.
fn lived_on(story: &TrayStory, day: Day) -> bool {
    let counted = story.counts.iter().filter(|look| look.standing > 0).map(|look| look.day);
    counted.chain(story.samples.iter().map(|sample| sample.day)).any(|alive| alive >= day)
}

/// The treatments that may kill a tray's plants on a day: of those of which nobody knows it, and of what kills all that it wets, until
/// plants were counted or measured alive [`SHOWS_AFTER_DAYS`] after.
pub(crate) fn may_be_hurt<'a>(
    story: &'a TrayStory,
    places: &'a Places,
    day: Day,
) -> impl Iterator<Item = &'a Treatment> {
    treatments(story, places).filter(move |one| {
        let lived = || lived_on(story, one.day.plus(SHOWS_AFTER_DAYS));
        is_scorched(story, one, day) || (one.holds_planting_on(day) && (one.plantable_on().is_some() || !lived()))
    })
}

/// Whether nobody knows yet if plants live that were wetted with what kills weeds: the planting days of its label are for the ground.
fn is_scorched(story: &TrayStory, one: &Treatment, day: Day) -> bool {
    let shows = one.scorches_until(SHOWS_AFTER_DAYS).filter(|_| one.day <= day && day < one.day.plus(SHOWN_AFTER_DAYS));
    shows.is_some_and(|shows| !lived_on(story, shows))
}

/// The criterion `plant_back` of a tray, where something was used on it, or where it stood, that may kill plants, or lies in the ground
/// on which it was put.
pub(crate) fn plant_back(story: &TrayStory, places: &Places, day: Day) -> Option<Criterion> {
    const SOURCE: RuleSource = RuleSource::PlantBack;
    let scorched = treatments(story, places).filter(|one| is_scorched(story, one, day)).max_by_key(|one| one.day);
    if let Some((one, alive_from)) = scorched.and_then(|one| Some((one, one.scorches_until(SHOWS_AFTER_DAYS)?))) {
        let gap = Gap::MayBeScorched { with: one.with.clone(), day: one.day, alive_from };
        let unknown = Criterion::lacking(Question::PlantBack, Some(NotSo), Some(gap), true, SOURCE);
        return Some(unknown.expected_on(Some(alive_from)).resting_on([one.entry.clone()]));
    }
    planting_waits(may_be_hurt(story, places, day), false).or_else(|| on_treated_ground(story, places, day))
}

/// That a tray was put on ground in which something lies that its roots may take up. It asks for care until plants are counted alive so
/// long after they came.
fn on_treated_ground(story: &TrayStory, places: &Places, day: Day) -> Option<Criterion> {
    let stay = story.places.last()?;
    let here = places.get(&stay.what)?.treatments.iter();
    let before = here.filter(|one| one.day < stay.from && one.lies_in_ground_on(stay.from));
    let one = before.max_by_key(|one| one.day).filter(|_| !lived_on(story, stay.from.plus(SHOWS_AFTER_DAYS)))?;
    let known = Some(AtWork { with: one.with.clone(), beside: Some(Beside::Place), dries: false, wets: false });
    let waits = Criterion::found(Question::PlantBack, NotSo, known, Basis::Measured, false, RuleSource::PlantBack);
    (day >= stay.from).then(|| waits.advising().resting_on([one.entry.clone(), stay.entry.clone()]))
}

/// The criterion `flush`: no soft new leaves.
pub fn flush(story: &TrayStory, day: Day) -> Criterion {
    const SOURCE: RuleSource = RuleSource::Flush;
    // Soft leaves of few plants hold back those alone.
    let fresh = |few: &&Since<u32>| (0..FLUSH_HARDENS_DAYS).contains(&day.days_since(few.from));
    match story.last_flush() {
        None => match story.flushes.iter().filter(fresh).max_by_key(|few| few.from) {
            Some(few) => Criterion::found(Question::Flush, NotSo, Some(few.from), Basis::Measured, false, SOURCE)
                .resting_on([few.entry.clone()])
                .advising(),
            None => Criterion::found(Question::Flush, NotSo, None, Basis::Assumed, true, SOURCE),
        },
        Some(seen) => {
            let hard = seen.from.plus(FLUSH_HARDENS_DAYS);
            let mut flush =
                Criterion::found(Question::Flush, NotSo, Some(seen.from), Basis::Measured, day >= hard, SOURCE)
                    .expected_on(Some(hard))
                    .resting_on([seen.entry.clone()]);
            flush.warns = day >= hard && day <= seen.from.plus(FLUSH_FIRM_DAYS);
            flush
        }
    }
}

/// Days that bare roots and stumps keep where nobody wrote their last day (from memory: Jaenicke 1999, Good tree nursery
/// practices, ICRAF).
pub(crate) const BARE_ROOTS_KEEP_DAYS: i32 = 2;
/// The same where they lie heeled in, cool and moist (from memory, as above).
pub(crate) const HEELED_IN_KEEP_DAYS: i32 = 7;

/// Days that stumps and stakes keep, moist and in the shade, where their profile has no figure: they have no leaves to lose water by. Ours,
/// from common practice: one to three weeks.
pub(crate) const STUMPS_KEEP_DAYS: i32 = 7;
/// Stakes, slips and suckers of which nobody wrote the last day are looked at, and not refused, until they lay so many times as long as
/// their species keeps. Ours: the days of the profiles are the low end.
const STAKES_ARE_LOOKED_AT_TIMES: i32 = 2;

/// Bare roots so many days past the last day that somebody wrote are dead: out of the ground they keep some days, heeled in a week. Of
/// those that lie heeled in nobody knows: they may have rooted there. Ours.
const BARE_ROOTS_DEAD_AFTER_DAYS: i32 = 28;

fn lies_dead(origin: &Option<Origin>, until: Day, day: Day) -> bool {
    let heeled_in = matches!(origin, Some(Origin::Received { heeled_in: true, .. }));
    !heeled_in && day.days_since(until) > BARE_ROOTS_DEAD_AFTER_DAYS
}

/// Where plants without soil are looked at, where that is neither roots nor bark.
pub(crate) fn looks_alive(profile: Option<&Profile>) -> Option<LooksAlive> {
    profile.and_then(|profile| profile.looks_alive.as_ref()).map(|figure| figure.value)
}

/// Whether plants are stumps, or stakes and slips: cuttings without soil of a species whose stakes are known to keep. Slips and suckers
/// are, wherever they come from, and so is what is raised from nothing else; of what was pulled in the wild nobody knows.
pub(crate) fn is_stake(story: &TrayStory, profile: Option<&Profile>) -> bool {
    story.origin.as_ref().is_some_and(|origin| origin_is_stake(origin, profile))
}

fn origin_is_stake(origin: &Origin, profile: Option<&Profile>) -> bool {
    matches!(origin, Origin::Received { form, from, .. } if came_as_stake(*form, *from, profile))
}

fn came_as_stake(form: PlantForm, from: ArrivedFrom, profile: Option<&Profile>) -> bool {
    let is_offset = || matches!(looks_alive(profile), Some(LooksAlive::HeartLeaves | LooksAlive::Corm));
    match form {
        PlantForm::Stump => true,
        PlantForm::BareRoot => {
            let keeps = || stumps_keep_days(profile).is_some() && (from == ArrivedFrom::Cutting || is_offset());
            let rootless = from != ArrivedFrom::Wildling && profile.is_some_and(Profile::is_set_without_roots);
            rootless || keeps()
        }
        _ => false,
    }
}

fn stumps_keep_days(profile: Option<&Profile>) -> Option<i32> {
    profile.and_then(|profile| profile.stump_keep_days.as_ref()).map(|figure| figure.value.round() as i32)
}

/// Days that bare roots usually keep.
fn roots_keep_days(heeled_in: bool) -> i32 {
    if heeled_in { HEELED_IN_KEEP_DAYS } else { BARE_ROOTS_KEEP_DAYS }
}

/// The last day of bare roots and stumps, and whether somebody wrote it; none of any other plants.
pub(crate) fn last_day<'a>(story: &'a TrayStory, profile: Option<&Profile>) -> Option<(Day, bool, &'a EntryId)> {
    last_day_of(story.origin.as_ref()?, profile)
}

/// The day on which bare roots were last brought into soil that had lain there past their last day; none where none were.
pub(crate) fn bagged_too_late(story: &TrayStory, profile: Option<&Profile>) -> Option<Day> {
    let late = |bare: &&Since<Origin>| last_day_of(&bare.what, profile).is_some_and(|(last, ..)| last < bare.from);
    story.bare_until.iter().filter(late).map(|bare| bare.from).max()
}

fn last_day_of<'a>(origin: &'a Origin, profile: Option<&Profile>) -> Option<(Day, bool, &'a EntryId)> {
    let Origin::Received { good_until, heeled_in, form, day, entry, .. } = origin else { return None };
    let usual = match origin_is_stake(origin, profile) {
        true => stumps_keep_days(profile).unwrap_or(STUMPS_KEEP_DAYS),
        false => roots_keep_days(*heeled_in),
    };
    match good_until {
        Some(until) => Some((*until, true, entry)),
        None if matches!(form, PlantForm::BareRoot | PlantForm::Stump) => Some((day.plus(usual), false, entry)),
        None => None,
    }
}

/// The criterion `bare_roots`, of plants that came so: a species that does not live from them is held back until it stands in bags;
/// where nobody wrote it, it asks for care. Not asked of nurse plants, whose suckers and stakes are planted so, nor of stakes and slips,
/// which are set in no other way.
pub(crate) fn bare_roots(story: &TrayStory, profile: Option<&Profile>) -> Option<Criterion> {
    let is_set_so = story.form() == Some(PlantForm::BareRoot) && is_stake(story, profile);
    if is_set_so || profile.is_some_and(|profile| profile.role == Role::Nurse) {
        return None;
    }
    let entry = last_day(story, profile).map(|(.., entry)| entry.clone());
    let wild = matches!(&story.origin, Some(Origin::Received { from: ArrivedFrom::Wildling, .. }));
    if wild && story.form() == Some(PlantForm::BareRoot) {
        let (needed, known) = (LivesBare::Yes, LivesBare::Wildling);
        let torn = Criterion::found(Question::BareRoots, needed, known, Basis::Measured, false, RuleSource::Wildlings);
        return Some(torn.resting_on(entry));
    }
    let criterion = match profile.and_then(|profile| profile.bare_roots.as_ref()) {
        Some(figure) => {
            let (lives, source) = (figure.value, Source::figure(Some(&figure.source)));
            let known = if lives { LivesBare::Yes } else { LivesBare::No };
            Criterion::found(Question::BareRoots, LivesBare::Yes, known, Basis::Assumed, lives, source)
        }
        None => {
            let gap = story.species.clone().map(Gap::NoBareRoots);
            let mut unknown =
                Criterion::lacking(Question::BareRoots, Some(LivesBare::Yes), gap, false, RuleSource::NoFigure);
            unknown.warns = true;
            unknown
        }
    };
    Some(criterion.resting_on(entry))
}

/// Where the last day of plants that came so is later than they usually keep: how many days after they came it is, and how many they keep
/// at most. None of plants in soil.
pub(crate) fn kept_long(
    (form, from): (PlantForm, ArrivedFrom),
    (came, good_until): (Day, Option<Day>),
    profile: Option<&Profile>,
) -> Option<(i32, i32)> {
    let usual = match came_as_stake(form, from, profile) {
        true => STAKES_ARE_LOOKED_AT_TIMES * stumps_keep_days(profile).unwrap_or(STUMPS_KEEP_DAYS),
        false => HEELED_IN_KEEP_DAYS,
    };
    let days = good_until?.days_since(came);
    let bare = matches!(form, PlantForm::BareRoot | PlantForm::Stump);
    (bare && days > usual).then_some((days, usual))
}

/// The criterion `good_until` of bare roots and stumps.
pub(crate) fn good_until(story: &TrayStory, profile: Option<&Profile>, day: Day) -> Option<Criterion> {
    let (until, written, entry) = last_day(story, profile)?;
    let of_profile = profile.and_then(|profile| profile.stump_keep_days.as_ref());
    // A coming day is written down, and measured by nobody.
    let stump = is_stake(story, profile);
    let (basis, source) = match (written, stump, of_profile) {
        (true, _, _) => (Basis::Reckoned, RuleSource::LastDayWritten.into()),
        (false, true, Some(figure)) => (Basis::Assumed, Source::figure(Some(&figure.source))),
        (false, true, None) => (Basis::Assumed, RuleSource::StumpsKeep.into()),
        (false, false, _) => (Basis::Assumed, RuleSource::LastDayTaken.into()),
    };
    let long_gone = written && !stump && lies_dead(&story.origin, until, day);
    let keeps = KeepsUntil { last: until, stump, look: looks_alive(profile), long_gone };
    if let Some(gap) = not_looked_at(story, written, day).filter(|_| day <= until && !stump) {
        let unknown = Criterion::lacking(Question::GoodUntil, Some(keeps), Some(gap), true, source);
        return Some(unknown.resting_on([entry.clone()]));
    }
    // A day that nobody wrote tells less than whoever looks at them on the day.
    let seen_alive = !written && day > until && looked_at_on(story, day).is_some();
    let mut criterion = Criterion::found(Question::GoodUntil, keeps, day, basis, day <= until || seen_alive, source)
        .warning_if(seen_alive);
    // Stakes and slips that nobody wrote a day for are looked at for as long again.
    let more = (STAKES_ARE_LOOKED_AT_TIMES - 1) * stumps_keep_days(profile).unwrap_or(STUMPS_KEEP_DAYS);
    if stump && !written && day <= until.plus(more) {
        criterion = criterion.advising();
    }
    if let Some(Origin::Received { good_until, form, from, day: came, .. }) = &story.origin {
        let long = !stump && kept_long((*form, *from), (*came, *good_until), profile).is_some();
        criterion.warns = criterion.warns || (!criterion.blocks && long);
    }
    Some(criterion.resting_on([entry.clone()]).resting_on(looked_at_on(story, day).cloned()))
}

/// Bare roots whose last day was written later than they usually keep, once those days are over and nobody looked at them on the day: a
/// day written in advance tells nothing of how they lay.
fn not_looked_at(story: &TrayStory, written: bool, day: Day) -> Option<Gap> {
    let Some(Origin::Received { form: PlantForm::BareRoot, heeled_in, day: came, .. }) = &story.origin else {
        return None;
    };
    let keep_days = roots_keep_days(*heeled_in);
    let old = written && day.days_since(*came) > keep_days;
    (old && looked_at_on(story, day).is_none()).then_some(Gap::NotLookedAt { came: *came, keep_days })
}

/// The entry of a count or a sample of a day.
fn looked_at_on(story: &TrayStory, day: Day) -> Option<&EntryId> {
    let counted = story.counts.iter().map(|look| (look.day, &look.entry));
    let sampled = story.samples.iter().map(|sample| (sample.day, &sample.entry));
    counted.chain(sampled).find(|(on, _)| *on == day).map(|(_, entry)| entry)
}
