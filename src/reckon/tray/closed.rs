//! Places that a waiting time closes: what is treated stands, or stood on the day of the treatment, beside other trays. A bench is one
//! area, and nobody works with hands in it.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::hold;
use crate::base::{Day, PlaceName, TrayCode};
use crate::reckon::stock::{Places, TrayStory, Treatment, holding};

/// So many days after a treatment whose waiting time nobody wrote, the place from which the tray is gone stays closed: labels ask
/// people to stay out for up to a month (from memory). Where the tray stands it is closed until the time is written. Ours.
pub(super) const UNKNOWN_WAIT_BESIDE_DAYS: i32 = 30;

/// A treatment that closes a place.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct Closing {
    /// The treatment.
    pub treatment: Treatment,
    /// The tray that was treated; none where the place was.
    pub tray: Option<TrayCode>,
}

/// The places that are closed on a day, and by what.
pub(crate) type Closed = BTreeMap<PlaceName, Vec<Closing>>;

/// Whether a treatment closes its bench on a day. Where the label asks for no wait it does so until it has dried, on its own day; what is
/// no spray closes it to nobody.
pub(crate) fn closes(treatment: &Treatment, day: Day) -> bool {
    treatment.holds_on(day) && (treatment.wait_days.is_none_or(|days| days > 0) || treatment.is_spray())
}

/// The places that treatments close on a day: treated themselves, with a treated tray on them, or with one on them when it was treated.
pub(crate) fn closed_places<'a>(trays: impl Iterator<Item = &'a Arc<TrayStory>>, places: &Places, day: Day) -> Closed {
    let mut closed = Closed::new();
    let mut close = |place: &PlaceName, treatment: &Treatment, tray: Option<&TrayCode>| {
        let here = closed.entry(place.clone()).or_default();
        if !here.iter().any(|one| one.treatment.entry == treatment.entry && one.tray.as_ref() == tray) {
            here.push(Closing { treatment: treatment.clone(), tray: tray.cloned() });
        }
    };
    let mut sprayed = false;
    for (name, place) in places {
        for treatment in place.treatments.iter().filter(|one| closes(one, day)) {
            close(name, treatment, None);
            sprayed = true;
        }
    }
    for story in trays {
        if !sprayed && !story.treatments.iter().any(|one| closes(one, day)) {
            continue;
        }
        let lives = story.accounts.standing > 0 || story.seed_is_due(day);
        for treatment in hold::treatments(story, places).filter(|one| closes(one, day)) {
            story.place().filter(|_| lives).iter().for_each(|place| close(place, treatment, Some(&story.code)));
        }
        for treatment in story.treatments.iter().filter(|one| closes(one, day)) {
            let unknown_long =
                treatment.over_on().is_none() && day.days_since(treatment.day) >= UNKNOWN_WAIT_BESIDE_DAYS;
            let then = hold::stays(story)
                .filter(|(_, from, until)| *from <= treatment.day && until.is_none_or(|until| treatment.day <= until));
            then.filter(|_| !unknown_long).for_each(|(place, ..)| close(place, treatment, Some(&story.code)));
        }
    }
    closed
}

/// What closes a place to work at a tray on it: of several the one that lasts longest. What was done to the tray itself is said by its
/// own wait.
pub(crate) fn beside<'a>(closed: &'a Closed, story: &TrayStory, day: Day) -> Option<&'a Closing> {
    let here = closed.get(story.place()?)?;
    let others = || here.iter().filter(|one| one.tray.as_ref() != Some(&story.code));
    let longest = holding(others().map(|one| &one.treatment), day)?;
    others().find(|one| one.treatment.entry == longest.entry)
}

/// What was used on another tray, or on a place, on a day on which a tray stood there that was carried off since: what drifts wetted it too,
/// and it takes the wait along. Of several the one that lasts longest.
pub(crate) fn drifted<'a>(closed: &'a Closed, story: &TrayStory, day: Day) -> Option<&'a Closing> {
    let left = hold::stays(story).filter_map(|(place, from, until)| Some((closed.get(place)?, from, until?)));
    let met = left.flat_map(|(here, from, until)| {
        here.iter().filter(move |one| {
            (from..=until).contains(&one.treatment.day) && one.tray.is_some() && one.treatment.is_spray()
        })
    });
    let met: Vec<&Closing> = met.filter(|one| one.tray.as_ref() != Some(&story.code)).collect();
    let longest = holding(met.iter().map(|one| &one.treatment), day)?;
    met.into_iter().find(|one| one.treatment.entry == longest.entry)
}

/// How the trays of a place that one treated tray closes may be spared.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum Spared {
    /// It was treated before it was brought there: carried off again, the place is open.
    CarriedOff(TrayCode),
    /// It was treated among them.
    Apart(TrayCode),
}

/// The one tray that closes a place where it stands, and how the others there may be spared; none where more than it closes the place.
pub(crate) fn spared<'a>(
    closed: &Closed,
    name: &PlaceName,
    story_of: impl FnOnce(&TrayCode) -> Option<&'a TrayStory>,
) -> Option<Spared> {
    let here = closed.get(name)?;
    let tray = here.first()?.tray.as_ref().filter(|tray| here.iter().all(|one| one.tray.as_ref() == Some(tray)))?;
    let story = story_of(tray).filter(|story| story.place() == Some(name))?;
    let among = |one: &Closing| {
        let on = one.treatment.day;
        hold::stays(story).any(|(at, from, until)| at == name && from <= on && until.is_none_or(|until| on <= until))
    };
    match here.iter().filter(|one| among(one)).count() {
        0 => Some(Spared::CarriedOff(tray.clone())),
        all if all == here.len() => Some(Spared::Apart(tray.clone())),
        _ => None,
    }
}
