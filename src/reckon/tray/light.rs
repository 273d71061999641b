//! The light a tray stood in, day by day, from places, shade steps and readings.

use std::borrow::Cow;

use crate::base::{Day, EntryId};
use crate::nursery::entry::types::ArrivedFrom;
use crate::reckon::picture::Basis;
use crate::reckon::picture::quantity::Joined;
use crate::reckon::stock::{Origin, PlaceStory, Places, Since, TrayStory};
use crate::reckon::tray::exposure::brightest_from;
use crate::reckon::tray::hardening::SMALLEST_STEP;

/// Days over which the last light of a tray is taken (review of the trade's practice, ours).
pub(crate) const LAST_LIGHT_DAYS: i32 = 10;

/// A stretch of days in one light.
#[derive(Clone, PartialEq, Debug)]
pub struct Stretch {
    /// From this day.
    pub from: Day,
    /// The light by shade as set, a share of the open light.
    pub nominal: Option<f64>,
    /// The light as best known: read, else by shade.
    pub light: Option<f64>,
    /// Whether it was read.
    pub read: bool,
    /// Whether somebody acted at its beginning (carried, shade set) rather than only read the light.
    pub step: bool,
    /// Whether it was darker for a few days only: its light is the one the plants came back to.
    pub(crate) shaded: bool,
    /// Whether the plants stood in another tray then.
    pub(crate) in_other_tray: bool,
    /// The plants that were put to others at its beginning, where it is their light.
    pub(crate) joined: Option<Joined>,
    /// The entries it rests on.
    pub entries: Vec<EntryId>,
}

/// Plants that were put to those of a tray hold them back for so many days: by then they have stood in its light as long as any hardening
/// lasts. Ours.
const JOINED_TELLS_DAYS: i32 = 60;
/// Of plants put to others the light of so many days before counts: as long as leaves take to be made in it. Ours.
const BEFORE_JOINING_DAYS: i32 = 28;
/// More stays than any plants have before they are moved on. Ours.
const MOST_STAYS: usize = 12;

/// The light of a tray up to a day, oldest stretch first; empty where nothing is known of where it stood. Where a tenth of its plants or
/// more came into it from less light, it is theirs.
pub(crate) fn light_history(story: &TrayStory, places: &Places, day: Day) -> Vec<Stretch> {
    let own = own_history(story, places, day);
    let joined = with_joined(story, places, &own, day);
    let stands_since = joined.as_ref().and_then(|history| joined_in(history)).map(|joined| joined.on);
    let came = with_newcomers(story, &own, day);
    // Of both the one that has stood in this light the shorter.
    let later = came.filter(|(since, _)| stands_since.is_none_or(|on| *since > on)).map(|(_, history)| history);
    let mut history = later.or(joined).unwrap_or(own);
    history.retain(|stretch| stretch.from <= day);
    bridge(&mut history);
    history
}

fn own_history(story: &TrayStory, places: &Places, day: Day) -> Vec<Stretch> {
    let mut history: Vec<Stretch> = Vec::new();
    if let Some(Origin::Received { light_share: Some(light), day: arrived, entry, .. }) = &story.origin {
        let from = arrived.plus(-LAST_LIGHT_DAYS);
        history.push(stretch(from, Some(*light), None, false, vec![entry.clone()]));
    }
    let made = story.made_on.filter(|made| story.places.first().is_some_and(|first| first.from == *made));
    history.extend(made.map(|made| before_moving(story, places, made)).unwrap_or_default());
    for (i, spell) in story.places.iter().enumerate() {
        let until = story.places.get(i + 1).map_or(day.plus(1), |next| next.from);
        let own = story.shades.iter().find(|shade| shade.from >= spell.from && shade.from < until);
        let place_until = own.map_or(until, |shade| shade.from);
        if place_until > spell.from {
            let entry = spell.entry.clone();
            history.extend(places.get(&spell.what).map_or_else(
                || vec![stretch(spell.from, None, None, true, vec![entry.clone()])],
                |place| at_place(place, spell.from, place_until, Some(&entry)),
            ));
        }
        own_shade(story, spell.from, until, &mut history);
    }
    if story.places.is_empty() {
        own_shade(story, Day::from_number(1), day.plus(1), &mut history);
    }
    history
}

/// The light of the plants that were put to those of a tray and came the furthest into the light by that; none where all came from as
/// much, or where they are few.
fn with_joined(story: &TrayStory, places: &Places, own: &[Stretch], day: Day) -> Option<Vec<Stretch>> {
    let made = story.made_on?;
    let lately =
        |moved: &&Since<u32>| moved.from > made && moved.from <= day && day.days_since(moved.from) <= JOINED_TELLS_DAYS;
    let mut plants = 0_u32;
    let moves = story.moves_in.iter().rev().filter(lately).filter_map(|moved| {
        plants = plants.saturating_add(moved.what);
        story.are_enough(plants).then_some((Joined { plants, on: moved.from }, &moved.entry))
    });
    let steps = moves.filter_map(|(joined, entry)| {
        let at = own.iter().rposition(|stretch| stretch.from <= joined.on)?;
        let (now, before) = (own.get(at)?, before_moving(story, places, joined.on));
        let ends = before.iter().skip(1).map(|next| next.from).chain([joined.on]);
        let lately = before.iter().zip(ends).filter(|(_, end)| joined.on.days_since(*end) < BEFORE_JOINING_DAYS);
        let darkest = lately.filter_map(|(stretch, _)| stretch.light).reduce(f64::min);
        // Where they stood nobody wrote: no step is known, and no time in this light but from then on.
        let step = darkest.map_or(f64::EPSILON, |darkest| now.light.map_or(0.0, |light| light - darkest));
        let is_step = now.light.is_some() && (darkest.is_none() || step > SMALLEST_STEP);
        is_step.then_some((step, joined, at, before, entry.clone()))
    });
    let (_, joined, at, mut history, entry) = steps.max_by(|a, b| a.0.total_cmp(&b.0).then(a.1.on.cmp(&b.1.on)))?;
    let (now, later) = own.get(at..)?.split_first()?;
    let mut came = Stretch { from: joined.on, step: true, joined: Some(joined), ..now.clone() };
    came.entries.push(entry);
    history.push(came);
    history.extend(later.iter().cloned());
    Some(history)
}

/// The light of plants from elsewhere that were put to those of a tray, and since when it is known: of their time before nothing is. None
/// where they are few or have stood here for long, and where the tray's own plants came later.
fn with_newcomers(story: &TrayStory, own: &[Stretch], day: Day) -> Option<(Day, Vec<Stretch>)> {
    let put = story.newcomers.iter().filter(|came| came.what.put_on.is_some_and(|on| on <= day));
    let (came, plants) = story.latest_of_enough(put, |came| came.plants)?;
    let on = came.what.put_on?;
    let own_known_since = match &story.origin {
        Some(Origin::Received { from, stands_since, day, .. }) if *from != ArrivedFrom::Opening => {
            Some(stands_since.unwrap_or(*day))
        }
        Some(Origin::Received { .. } | Origin::Sown | Origin::MovedOn(_)) | None => None,
    };
    if day.days_since(came.from) > JOINED_TELLS_DAYS || own_known_since.is_some_and(|since| since >= came.from) {
        return None;
    }
    let at = own.iter().rposition(|stretch| stretch.from <= on)?;
    let (now, later) = own.get(at..)?.split_first()?;
    let mut since = Stretch { from: came.from, step: true, joined: Some(Joined { plants, on }), ..now.clone() };
    since.entries.push(came.entry.clone());
    let history = [since].into_iter().chain(later.iter().cloned()).collect();
    Some((came.from, history))
}

/// The plants whose light a history is, where they were put to others.
pub(crate) fn joined_in(history: &[Stretch]) -> Option<Joined> {
    history.iter().find_map(|stretch| stretch.joined)
}

/// The light in which plants stood until they were moved on into a tray on a day, where that tray has a place: moving on is a carrying.
/// Of plants from several the darkest leads.
fn before_moving(story: &TrayStory, places: &Places, moved_on: Day) -> Vec<Stretch> {
    let mut until = moved_on;
    let mut history: Vec<Stretch> = Vec::new();
    for _ in 0..MOST_STAYS {
        let ended = story.stays_before.iter().filter(|stay| stay.until == until && stay.from < until);
        let stood = ended.filter_map(|stay| {
            let mut stretches = match stay.shade_pct {
                Some(shade) => vec![stretch(stay.from, Some(1.0 - shade / 100.0), None, true, Vec::new())],
                None => at_place(places.get(&stay.place)?, stay.from, until, None),
            };
            stretches.iter_mut().for_each(|stretch| stretch.in_other_tray = true);
            let light = stretches.last()?.light?;
            Some((light, stretches))
        });
        // In the same light those that stood there longest are most of them: who came lately is told of by itself.
        let began = |stretches: &[Stretch]| stretches.first().map(|first| first.from);
        let darkest = stood.min_by(|a, b| a.0.total_cmp(&b.0).then_with(|| began(&a.1).cmp(&began(&b.1))));
        let Some((_, mut stretches)) = darkest else { break };
        until = stretches.first().map_or(until, |first| first.from);
        stretches.append(&mut history);
        history = stretches;
    }
    history
}

/// So many days in the shade change no leaf that grew in the light: back in light they had before, plants have taken no step. Ours:
/// the build of a leaf stays, its pigments shift over days to weeks.
pub(crate) const SHORT_SHADE_DAYS: i32 = 7;
/// After so many days in the shade plants may come back as well, and are looked at for scorch. Ours: new leaves come in two to three weeks.
const BACK_WITH_CARE_DAYS: i32 = 14;
/// On this day after they came back what the sun scorched shows first. Common practice.
pub(crate) const SCORCH_SHOWS_DAYS: i32 = 3;

/// Gives a few days in the shade, after which plants came back, the light they came back to or had before, whichever is darker.
fn bridge(history: &mut [Stretch]) {
    let mut at = 1;
    while at < history.len() {
        let Some((until, light, nominal)) = short_shade(history, at) else {
            at += 1;
            continue;
        };
        for stretch in history.iter_mut().take(until).skip(at) {
            (stretch.light, stretch.nominal, stretch.shaded) = (Some(light), nominal, true);
        }
    }
}

/// Whether a short shade begins with a stretch, that somebody brought about: where it ends, and the light it is taken for. They must have
/// stood at least as long in that light before.
fn short_shade(history: &[Stretch], at: usize) -> Option<(usize, f64, Option<f64>)> {
    let (before, first) = (history.get(at.checked_sub(1)?)?, history.get(at)?);
    let (was, mut brightest) = (before.light?, first.light?);
    if !first.step || brightest >= was - SMALLEST_STEP {
        return None;
    }
    for (i, after) in history.iter().enumerate().skip(at + 1) {
        let is = after.light?;
        if is <= brightest + SMALLEST_STEP {
            brightest = brightest.max(is);
            continue;
        }
        let days = after.from.days_since(first.from);
        let to = was.min(is);
        let nominal = before.nominal.zip(after.nominal).map(|(was, is)| was.min(is));
        return (days <= BACK_WITH_CARE_DAYS && stood_before(history, at, to) >= days).then_some((i, to, nominal));
    }
    None
}

/// Days that plants stood in a light or a brighter one up to a stretch.
fn stood_before(history: &[Stretch], at: usize, light: f64) -> i32 {
    let mut until = history.get(at).map(|stretch| stretch.from);
    let mut days = 0;
    for stretch in history.iter().take(at).rev() {
        if stretch.light.is_none_or(|was| was < light - SMALLEST_STEP) {
            break;
        }
        let length = until.map_or(0, |until| until.days_since(stretch.from));
        days += if stretch.shaded { 0 } else { length };
        until = Some(stretch.from);
    }
    days
}

/// The light of plants as if they came back today from a few days in the shade, where they stand in it; what hardened them has not gone.
pub(crate) fn as_if_back(history: &[Stretch], day: Day) -> Cow<'_, [Stretch]> {
    let lately = |stretch: &Stretch| (0..=SHORT_SHADE_DAYS).contains(&day.days_since(stretch.from));
    let darker = history.windows(2).filter_map(|pair| match pair {
        [before, after] if lately(after) && after.step && after.light? < before.light? => Some(before.clone()),
        _ => None,
    });
    let brightest = darker.max_by(|a, b| a.light.unwrap_or(0.0).total_cmp(&b.light.unwrap_or(0.0)));
    let Some(before) = brightest else { return Cow::Borrowed(history) };
    let mut back = history.to_vec();
    back.push(Stretch { from: day, ..before });
    bridge(&mut back);
    back.pop();
    Cow::Owned(back)
}

/// Whether plants stand in the shade for a few days only, so far.
pub(crate) fn is_shaded_shortly(history: &[Stretch], day: Day) -> bool {
    as_if_back(history, day).last().is_some_and(|now| now.shaded)
}

/// How long plants stood in the shade before they came back from it in these days, where that was longer than leaves shrug off, and the
/// day on which they came.
fn back_since(history: &[Stretch], first_day: Day) -> Option<(i32, Day)> {
    let back = history.windows(2).rposition(|pair| matches!(pair, [shade, sun] if shade.shaded && !sun.shaded))?;
    let since = history.get(back + 1).filter(|sun| sun.from >= first_day)?.from;
    let shade = history.iter().take(back + 1).rev().take_while(|stretch| stretch.shaded).last()?;
    let days = since.days_since(shade.from);
    (days > SHORT_SHADE_DAYS).then_some((days, since))
}

/// Of the days from one to another, those that plants spent in a short shade.
pub(crate) fn shaded_days(history: &[Stretch], from: Day, to: Day) -> i32 {
    let ends = history.iter().skip(1).map(|next| next.from).chain([to]);
    let shaded = history.iter().zip(ends).filter(|(stretch, _)| stretch.shaded);
    shaded.map(|(stretch, until)| until.min(to).days_since(stretch.from.max(from)).max(0)).sum()
}

/// Days that plants had stood in a light, or a brighter one, up to a day.
pub(crate) fn stood_until(history: &[Stretch], day: Day, light: f64) -> i32 {
    let at = history.iter().position(|stretch| stretch.from >= day).unwrap_or(history.len());
    stood_before(history, at, light)
}

fn stretch(from: Day, nominal: Option<f64>, read: Option<f64>, step: bool, entries: Vec<EntryId>) -> Stretch {
    let light = read.or(nominal);
    let read = read.is_some();
    Stretch { from, nominal, light, read, step, shaded: false, in_other_tray: false, joined: None, entries }
}

/// Shade set on the tray itself leads over its place until it is carried.
fn own_shade(story: &TrayStory, from: Day, until: Day, history: &mut Vec<Stretch>) {
    for shade in story.shades.iter().filter(|shade| shade.from >= from && shade.from < until) {
        history.push(stretch(shade.from, Some(1.0 - shade.what / 100.0), None, true, vec![shade.entry.clone()]));
    }
}

fn at_place(place: &PlaceStory, from: Day, until: Day, carried: Option<&EntryId>) -> Vec<Stretch> {
    let mut stretches = Vec::new();
    let first = place.light_on(from);
    let mut entries = Vec::from_iter(carried.cloned());
    entries.extend(first.map(|change| change.entry.clone()));
    stretches.push(stretch(
        from,
        first.and_then(|change| change.nominal),
        first.and_then(|change| change.read),
        true,
        entries,
    ));
    for change in place.light.iter().filter(|change| change.from > from && change.from < until) {
        stretches.push(stretch(change.from, change.nominal, change.read, change.step, vec![change.entry.clone()]));
    }
    stretches
}

/// A change of a tray's light in its last days.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LightChanged {
    /// The light before, a share of the open light.
    pub from: f64,
    /// The light now.
    pub to: f64,
    /// Since when.
    pub since: Day,
}

/// The light of a tray's last days: the mean over the days of which it is known, where the present light is known.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct LastLight {
    /// Share of the open light.
    pub share: f64,
    /// The light of today, where it came within these days, with the day since when and the light before it.
    pub changed: Option<LightChanged>,
    /// The last step of these days that was too large, though it may have been taken back since.
    pub burns: Option<LightChanged>,
    /// The step that was too large and in whose light they still stand, however long ago.
    pub leap: Option<LightChanged>,
    /// Whether nobody looked at them since that step shows what it scorched.
    pub in_sun: bool,
    /// Of how many of these days the light is known.
    pub known_days: i32,
    /// Days in the shade, and the day on which they came back from it within these days, where that wants a look.
    pub back: Option<(i32, Day)>,
    /// The plants whose light it is, where they were put to others.
    pub joined: Option<Joined>,
    /// Until when its plants stay in the shade for their roots, where they do.
    pub rests_until: Option<Day>,
    /// Measured where it was read, reckoned from the shade otherwise.
    pub basis: Basis,
    /// The entries it rests on.
    pub entries: Vec<EntryId>,
}

/// The light of the last 10 days; none where the present light is unknown.
pub(crate) fn last_light(history: &[Stretch], day: Day) -> Option<LastLight> {
    history.last()?.light?;
    let first_day = day.plus(1 - LAST_LIGHT_DAYS);
    let (mut sum, mut days) = (0.0, 0);
    let mut entries = Vec::new();
    let mut all_read = true;
    for (i, stretch) in history.iter().enumerate() {
        let from = stretch.from.max(first_day);
        let until = history.get(i + 1).map_or(day.plus(1), |next| next.from);
        let length = until.days_since(from);
        let (Some(light), true) = (stretch.light, length > 0) else { continue };
        sum += light * f64::from(length);
        days += length;
        all_read &= stretch.read;
        entries.extend(stretch.entries.iter().cloned());
    }
    entries.dedup();
    let basis = if all_read { Basis::Measured } else { Basis::Reckoned };
    let changed = changed_since(history, first_day);
    let burns = burnt_since(history, first_day);
    let share = sum / f64::from(days);
    let (leap, joined) = (leap(history), joined_in(history));
    let last = LastLight {
        share,
        changed,
        burns,
        leap,
        in_sun: false,
        known_days: days,
        back: back_since(history, first_day),
        joined,
        rests_until: None,
        basis,
        entries,
    };
    (days > 0).then_some(last)
}

/// The light of a tray's last days, with what its story says of it: whether it rests in the shade, and whether anybody looked at it since
/// it came too far into the sun.
pub(crate) fn last_light_of(
    story: &TrayStory,
    history: &[Stretch],
    rests_until: Option<Day>,
    day: Day,
) -> Option<LastLight> {
    let last = last_light(history, day)?;
    Some(LastLight { rests_until, in_sun: in_sun(story, history).is_some(), ..last })
}

/// The step that was too large, where plants still stand in its light and nobody counted or measured them since it shows what it scorched.
pub(crate) fn in_sun(story: &TrayStory, history: &[Stretch]) -> Option<LightChanged> {
    let counted = || story.counts.iter().map(|look| look.day).chain(story.samples.iter().map(|sample| sample.day));
    leap(history).filter(|leap| !counted().any(|on| on >= leap.since.plus(LAST_LIGHT_DAYS)))
}

/// The first of the next days on which something is true of the light of the last days, where the light of today goes on.
pub(crate) fn comes_on(history: &[Stretch], day: Day, is_so: impl Fn(&LastLight) -> bool) -> Option<Day> {
    (1..=LAST_LIGHT_DAYS)
        .map(|ahead| day.plus(ahead))
        .find(|on| last_light(history, *on).is_some_and(|last| is_so(&last)))
}

/// The step that somebody brought about, that was larger than plants take at once, and in whose light they still stand.
fn leap(history: &[Stretch]) -> Option<LightChanged> {
    let mut last: Option<&Stretch> = None;
    let mut leap: Option<LightChanged> = None;
    for (i, stretch) in history.iter().enumerate() {
        if history.get(i + 1).is_some_and(|next| next.from <= stretch.from) {
            continue;
        }
        let Some(light) = stretch.light else { continue };
        leap = leap.filter(|leap| light > brightest_from(leap.from) + 1e-9);
        if let Some(from) = last.and_then(|last| last.light)
            && stretch.step
            && light > brightest_from(from) + 1e-9
        {
            leap = Some(LightChanged { from, to: light, since: stretch.from });
        }
        last = Some(stretch);
    }
    leap
}

/// The last change of light that was more than a hair, if somebody brought it about on a day or later: a reading alone changes
/// nothing.
fn changed_since(history: &[Stretch], first_day: Day) -> Option<LightChanged> {
    let to = history.last()?.light?;
    let differs = |stretch: &Stretch| stretch.light.is_some_and(|was| (was - to).abs() > SMALLEST_STEP);
    let before = history.iter().rposition(differs)?;
    let (was, is) = (history.get(before)?, history.get(before + 1)?);
    let (from, since) = (was.light?, is.from);
    (is.step && since >= first_day).then_some(LightChanged { from, to, since })
}

/// The last step that somebody brought about on a day or later and that was larger than plants take at once. What was carried
/// back on the same day did not stand there.
fn burnt_since(history: &[Stretch], first_day: Day) -> Option<LightChanged> {
    let mut last: Option<&Stretch> = None;
    let mut burnt = None;
    for (i, stretch) in history.iter().enumerate() {
        if history.get(i + 1).is_some_and(|next| next.from <= stretch.from) {
            continue;
        }
        if let (Some(from), Some(to)) = (last.and_then(|last| last.light), stretch.light)
            && stretch.step
            && stretch.from >= first_day
            && to > brightest_from(from) + 1e-9
        {
            burnt = Some(LightChanged { from, to, since: stretch.from });
        }
        last = Some(stretch);
    }
    burnt
}
