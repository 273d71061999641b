//! The light a tray stood in, day by day, from places, shade steps and readings.

use crate::base::{Day, EntryId};
use crate::reckon::picture::Basis;
use crate::reckon::stock::{Origin, PlaceStory, Places, TrayStory};
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
    /// The entries it rests on.
    pub entries: Vec<EntryId>,
}

/// The light of a tray up to a day, oldest stretch first; empty where nothing is known of where it stood.
pub(crate) fn light_history(story: &TrayStory, places: &Places, day: Day) -> Vec<Stretch> {
    let mut history: Vec<Stretch> = Vec::new();
    if let Some(Origin::Received { light_share: Some(light), day: arrived, entry, .. }) = &story.origin {
        let from = arrived.plus(-LAST_LIGHT_DAYS);
        history.push(stretch(from, Some(*light), None, false, vec![entry.clone()]));
    }
    for (i, spell) in story.places.iter().enumerate() {
        let until = story.places.get(i + 1).map_or(day.plus(1), |next| next.from);
        let own = story.shades.iter().find(|shade| shade.from >= spell.from && shade.from < until);
        let place_until = own.map_or(until, |shade| shade.from);
        if place_until > spell.from {
            let entry = spell.entry.clone();
            history.extend(places.get(&spell.what).map_or_else(
                || vec![stretch(spell.from, None, None, true, vec![entry.clone()])],
                |place| at_place(place, spell.from, place_until, &entry),
            ));
        }
        own_shade(story, spell.from, until, &mut history);
    }
    if story.places.is_empty() {
        own_shade(story, Day::from_number(1), day.plus(1), &mut history);
    }
    history.retain(|stretch| stretch.from <= day);
    history
}

fn stretch(from: Day, nominal: Option<f64>, read: Option<f64>, step: bool, entries: Vec<EntryId>) -> Stretch {
    Stretch { from, nominal, light: read.or(nominal), read: read.is_some(), step, entries }
}

/// Shade set on the tray itself leads over its place until it is carried.
fn own_shade(story: &TrayStory, from: Day, until: Day, history: &mut Vec<Stretch>) {
    for shade in story.shades.iter().filter(|shade| shade.from >= from && shade.from < until) {
        history.push(stretch(shade.from, Some(1.0 - shade.what / 100.0), None, true, vec![shade.entry.clone()]));
    }
}

fn at_place(place: &PlaceStory, from: Day, until: Day, carried: &EntryId) -> Vec<Stretch> {
    let mut stretches = Vec::new();
    let first = place.light_on(from);
    let mut entries = vec![carried.clone()];
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
    let leap = leap(history);
    let last =
        LastLight { share, changed, burns, leap, in_sun: false, known_days: days, rests_until: None, basis, entries };
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
