//! Places where a sickness that goes along was seen, or where a tray that has it stands or stood: no clean tray is carried there, and
//! those that stand or stood there are looked at before they go.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::kin::Kin;
use super::{OpenPest, hides_days, nest_of, open, open_in_tray};
use crate::base::{Day, PlaceName, TrayCode};
use crate::nursery::pest::{DiedOf, is_same_pest, says_none, stings};
use crate::reckon::picture::quantity::{Beside, NotSo, PestLacks, PestSeen};
use crate::reckon::picture::{Basis, Criterion, Question, RuleSource};
use crate::reckon::stock::{Places, TrayStory};
use crate::reckon::tray::hold::stays;

/// A look at a tray beside a sick one holds so many days: what spreads by touch, splash or air shows new plants every week. Ours.
pub(crate) const LOOK_BESIDE_DAYS: i32 = 7;
/// A tray that is empty tells nothing more of its bench after so many days. Ours: past any wait for a look.
const EMPTY_TELLS_DAYS: i32 = 60;

/// A sickness at a place, and for how long.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct SickSpell {
    /// The tray that has it; none where it was seen at the place.
    pub tray: Option<TrayCode>,
    /// What, and when last.
    pub seen: PestSeen,
    /// From this day.
    pub from: Day,
    /// To this day; none where the tray still stands there.
    pub until: Option<Day>,
    /// Afterwards it may still be there for so many days.
    pub after_days: i32,
}

/// The places with a sickness.
pub(crate) type SickPlaces = BTreeMap<PlaceName, Vec<SickSpell>>;

/// Whether it goes from tray to tray. Grubs and termites stay in the soil of theirs.
fn goes_over(pest: &OpenPest) -> bool {
    !pest.nature.goes_by_itself() && !pest.nature.by_eye
}

/// The places of a day with a sickness.
pub(crate) fn sick_places<'a>(
    trays: impl Iterator<Item = &'a Arc<TrayStory>>,
    places: &Places,
    day: Day,
) -> SickPlaces {
    let mut sick = SickPlaces::new();
    let trays: Vec<&Arc<TrayStory>> = trays.filter(|story| tells(story, places, day)).collect();
    trays.iter().for_each(|story| add_nest(&mut sick, story, day));
    // It was there before it was seen, as long as it hides.
    let since = |pest: &OpenPest| pest.first_on.plus(-hides_days(pest.nature));
    let mut add = |place: &PlaceName, pest: &OpenPest, tray: Option<&TrayCode>, (from, until): (Day, Option<Day>)| {
        let after_days = pest.look_after_days();
        if until.is_none_or(|until| day.days_since(until) <= after_days) {
            let seen = PestSeen { lacks: None, ..pest.seen.clone() };
            sick.entry(place.clone()).or_default().push(SickSpell {
                tray: tray.cloned(),
                seen,
                from,
                until,
                after_days,
            });
        }
    };
    for (name, place) in places.iter().filter(|(_, place)| !place.pests.is_empty()) {
        for pest in open(place.pests.iter(), &LooksAtPlace, day).iter().filter(|pest| goes_over(pest)) {
            add(name, pest, None, (since(pest), Some(pest.seen.on)));
        }
    }
    for story in trays {
        let empty = if story.accounts.standing == 0 { story.last_on } else { None };
        // What may only be hidden in a tray was not seen there.
        for pest in open_in_tray(story, (places, &Kin::default()), day).iter().filter(|pest| goes_over(pest)) {
            let there = stays(story).map(|(place, from, until)| (place, from, until.or(empty)));
            // What was seen at a place is told of there by the place itself, as long as it is; else, and where the tray went since, by the tray.
            let there = there.filter(|(place, ..)| !pest.of_place || !told_at(places, place, pest, day));
            for (place, from, until) in there.filter(|(.., until)| until.is_none_or(|until| until >= since(pest))) {
                add(place, pest, Some(&story.code), (from.max(since(pest)), until));
            }
        }
    }
    sick
}

/// Whether a tray tells of what was seen in it, or where it stood.
fn tells(story: &TrayStory, places: &Places, day: Day) -> bool {
    let lately = story.last_on.is_some_and(|last| day.days_since(last) <= EMPTY_TELLS_DAYS);
    let stood = || stays(story).any(|(place, ..)| places.get(place).is_some_and(|place| !place.pests.is_empty()));
    let named = !story.pests.is_empty() || story.gone.iter().any(|gone| gone.what.of == DiedOf::Sickness) || stood();
    named && (story.accounts.standing > 0 || lately)
}

/// A nest of what stings in a tray is one of the bench on which it stands.
fn add_nest(sick: &mut SickPlaces, story: &TrayStory, day: Day) {
    let Some((place, seen)) = story.place().zip(nest_of(&story.pests, day)) else { return };
    let what = PestSeen::only(&seen.what.what, seen.what.share_pct, seen.from);
    let tray = Some(story.code.clone());
    let spell = SickSpell { tray, seen: what, from: seen.from, until: None, after_days: 0 };
    sick.entry(place.clone()).or_default().push(spell);
}

/// Whether a pest was seen at a place so lately that the place is told of.
fn told_at(places: &Places, place: &PlaceName, pest: &OpenPest, day: Day) -> bool {
    let looks = places.get(place).into_iter().flat_map(|place| place.pests.iter());
    let mut lately = looks.filter(|look| day.days_since(look.from) <= pest.look_after_days());
    lately.any(|look| is_same_pest(&look.what.what, &pest.seen.what))
}

/// Of a place a look that finds none is believed.
struct LooksAtPlace;

impl super::Deeds for LooksAtPlace {
    fn settled(&self, _: &OpenPest, _: &super::Written) -> bool {
        true
    }

    fn lacking(&self, _: &OpenPest, _: Day) -> Option<PestLacks> {
        None
    }

    fn counted_clear(&self, _: &OpenPest, _: Day) -> bool {
        false
    }
}

/// What may have gone over to a tray where it stands or stood, unless somebody looked at it since: of several what was seen last.
pub(crate) fn gone_over<'a>(sick: &'a SickPlaces, story: &TrayStory, day: Day) -> Option<&'a SickSpell> {
    let of_place = stays(story).flat_map(|(place, from, until)| {
        let here = sick.get(place).into_iter().flatten().filter(|spell| may_have(story, spell, day));
        here.filter_map(move |spell| {
            let gone = spell.until.unwrap_or(day);
            // Who comes to a bench soon after it was there may still get it there, on the day of coming.
            let ended = if from > gone { from } else { gone.min(until.unwrap_or(day)) };
            let met = spell.from <= ended && ended <= gone.plus(spell.after_days).min(day);
            (met && day.days_since(ended) <= spell.after_days).then_some((spell, ended))
        })
    });
    let open = of_place.filter(|(spell, ended)| !looked_at(story, spell, *ended));
    open.map(|(spell, _)| spell).max_by_key(|spell| spell.seen.on)
}

/// Whether clean plants of a tray would come to what they may get there. Damping-off takes none but young ones.
pub(crate) fn may_have(story: &TrayStory, spell: &SickSpell, day: Day) -> bool {
    let young = || story.young_until().is_some_and(|until| day <= until);
    spell.tray.as_ref() != Some(&story.code) && !stings(&spell.seen.what) && (!spell.seen.is_damping || young())
}

fn looked_at(story: &TrayStory, spell: &SickSpell, ended: Day) -> bool {
    story.pests.iter().any(|look| {
        let none = says_none(&look.what.what) || look.what.share_pct == Some(0.0);
        let of_it = says_none(&look.what.what) || is_same_pest(&look.what.what, &spell.seen.what);
        none && of_it && look.from >= spell.seen.on && look.from.plus(LOOK_BESIDE_DAYS) >= ended
    })
}

/// The criterion `pest` of a tray that is clean by all that is known, where something may have gone over to it.
pub(super) fn criterion(sick: &SickPlaces, story: &TrayStory, day: Day) -> Option<Criterion> {
    let spell = gone_over(sick, story, day)?;
    let beside = Some(spell.tray.clone().map_or(Beside::Place, Beside::Tray));
    let seen = PestSeen { beside, share_pct: None, ..spell.seen.clone() };
    let found = Criterion::found(Question::Pest, NotSo, Some(seen), Basis::Measured, false, RuleSource::Pest);
    Some(found.advising())
}
