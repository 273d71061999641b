//! From stories to a Picture: what was not touched since the last one is taken over as it is.

use imbl::OrdMap;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Arc, Mutex, PoisonError};

use super::Fold;
use crate::base::cores::on_every_core;
use crate::base::{BedName, Day, LotCode, SpeciesKey, TrayCode};
use crate::nursery::entry::subject::Subject;
use crate::nursery::species::Role;
use crate::reckon::archived::{LEARNED_TRAYS, bed_archived_from, is_archived, lot_archived_from, tray_archived_from};
use crate::reckon::bed::eaten::broken_into;
use crate::reckon::bed::sick::of_beds;
use crate::reckon::bed::water::balance::Waters;
use crate::reckon::bed::{Then, picture_bed};
use crate::reckon::pair::pairs_of;
use crate::reckon::picture::{BedPicture, Doubt, Looking, Pairs, Picture, TrayPicture};
use crate::reckon::season::SeasonDay;
use crate::reckon::stock::{LotStory, TrayStory};
use crate::reckon::tray::age_of_count::{Losses, WeeklyLoss};
use crate::reckon::tray::closed::closed_places;
use crate::reckon::tray::hold::stays;
use crate::reckon::tray::pest::beside::sick_places;
use crate::reckon::tray::pest::kin::Kin;
use crate::reckon::tray::{Around, picture_tray};

/// The Picture drawn last and what was folded since.
#[derive(Default, Debug)]
pub(super) struct Drawn(Mutex<State>);

#[derive(Clone, Default, Debug)]
struct State {
    last: Option<Last>,
    touched: Touched,
}

#[derive(Clone, Debug)]
struct Last {
    picture: Picture,
    losses: Losses,
}

/// What was folded since the last Picture; of trays the stories that it knew.
#[derive(Clone, Default, Debug)]
struct Touched {
    trays: BTreeMap<TrayCode, Option<Arc<TrayStory>>>,
    lots: BTreeSet<LotCode>,
    beds: BTreeSet<BedName>,
}

impl Clone for Drawn {
    fn clone(&self) -> Drawn {
        Drawn(Mutex::new(self.0.lock().unwrap_or_else(PoisonError::into_inner).clone()))
    }
}

impl Drawn {
    fn state(&mut self) -> &mut State {
        self.0.get_mut().unwrap_or_else(PoisonError::into_inner)
    }

    /// The next Picture is drawn from nothing.
    pub(crate) fn forget(&mut self) {
        *self.state() = State::default();
    }

    /// A story is about to be another than the one given, or to go.
    pub fn touch(&mut self, subject: &Subject, before: Option<&Arc<TrayStory>>) {
        let State { last: Some(_), touched } = self.state() else { return };
        match subject {
            Subject::Tray(code) => drop(touched.trays.entry(code.clone()).or_insert_with(|| before.cloned())),
            Subject::Lot(code) => drop(touched.lots.insert(code.clone())),
            Subject::Bed(name) => drop(touched.beds.insert(name.clone())),
            Subject::Place(_) | Subject::Site => {}
        }
    }
}

/// Draws the Picture of a fold's day from the last one and what was touched since.
pub(super) fn draw(fold: &Fold, drawn: &Drawn) -> Picture {
    let mut state = drawn.0.lock().unwrap_or_else(PoisonError::into_inner);
    let State { last, touched } = std::mem::take(&mut *state);
    let known = last.filter(|last| {
        Arc::ptr_eq(&last.picture.site, fold.site()) && Arc::ptr_eq(&last.picture.places, fold.places())
    });
    let (archived, losses) = learned_from(fold, known.as_ref(), &touched);
    let weekly_loss = losses.weekly();
    let last = known.map(|known| known.picture).filter(|last| last.weekly_loss == weekly_loss);
    let picture = draw_on(fold, last, &touched, archived, weekly_loss);
    state.last = Some(Last { picture: picture.clone(), losses });
    picture
}

/// What a day of the season is: trays and beds as the Picture of the day has them, each drawn and let go, and nothing paired.
pub(super) fn draw_season_day(fold: &Fold) -> SeasonDay {
    let (archived, losses) = learned_from(fold, None, &Touched::default());
    let mut around = blank(fold, archived, losses.weekly());
    around.lots = lots(fold, around.day);
    let mut day = SeasonDay::of(fold.site(), around.day);
    let codes: Vec<&TrayCode> = fold.trays().keys().collect();
    let stages = on_every_core(&codes, |code| Some(((*code).clone(), tray(fold, &around, code)?.stage)));
    day.trays = stages.into_iter().flatten().collect();
    let waters = Waters::of(fold.site(), around.day);
    fold.beds().keys().filter_map(|name| bed(fold, (&around, &waters), name)).for_each(|bed| day.take_bed(&bed));
    day
}

fn draw_on(
    fold: &Fold,
    last: Option<Picture>,
    touched: &Touched,
    archived: Arc<[Arc<TrayStory>]>,
    weekly_loss: WeeklyLoss,
) -> Picture {
    let mut picture = blank(fold, archived, weekly_loss);
    match last {
        Some(last) => draw_touched(fold, &mut picture, last, touched),
        None => draw_all(fold, &mut picture),
    }
    picture.doubts = doubts(fold);
    picture.unplanned = unplanned(&picture);
    picture
}

/// The Picture of a fold's day before anything is drawn in it.
fn blank(fold: &Fold, archived: Arc<[Arc<TrayStory>]>, weekly_loss: WeeklyLoss) -> Picture {
    let view = fold.ledger().view();
    let looking = match view.day.cmp(&fold.today()) {
        std::cmp::Ordering::Less => Looking::Back,
        std::cmp::Ordering::Equal => Looking::Today,
        std::cmp::Ordering::Greater => Looking::Ahead,
    };
    Picture {
        day: view.day,
        looking,
        known: view.known,
        site: fold.site().clone(),
        places: fold.places().clone(),
        closed: Arc::new(closed_places(fold.trays().values(), fold.places(), view.day)),
        sick: Arc::new(sick_places(fold.trays().values(), fold.places(), view.day)),
        kin: Arc::new(Kin::of(fold.trays(), of_beds(fold.beds().values(), fold.site(), view.day), view.day)),
        broken_into: Arc::new(broken_into(fold.beds().values(), view.day)),
        weekly_loss,
        archived,
        trays: OrdMap::new(),
        lots: OrdMap::new(),
        beds: OrdMap::new(),
        pairs: Pairs::default(),
        doubts: Vec::new(),
        unplanned: Vec::new(),
    }
}

fn lots(fold: &Fold, day: Day) -> OrdMap<LotCode, Arc<LotStory>> {
    fold.lots().keys().filter_map(|code| Some((code.clone(), lot(fold, code, day)?))).collect()
}

fn draw_all(fold: &Fold, new: &mut Picture) {
    new.lots = lots(fold, new.day);
    let codes: Vec<&TrayCode> = fold.trays().keys().collect();
    let drawn = on_every_core(&codes, |code| tray(fold, new, code));
    new.trays = drawn.into_iter().flatten().map(|tray| (tray.code.clone(), tray)).collect();
    let waters = Waters::of(fold.site(), new.day);
    new.beds = fold.beds().keys().filter_map(|name| Some((name.clone(), bed(fold, (new, &waters), name)?))).collect();
    let trays: Vec<&Arc<TrayPicture>> = new.trays.values().collect();
    // Laid out for good on the way, so that no second copy of all of them stands beside the first.
    let around = (&*new.site, &*new.places);
    let paired = on_every_core(&trays, |tray| Arc::from(pairs_of(tray, new.beds.values(), around, new.day)));
    for (code, pairs) in new.trays.keys().zip(paired) {
        new.pairs.set(code, pairs);
    }
}

/// Takes over what was not touched.
fn draw_touched(fold: &Fold, new: &mut Picture, last: Picture, touched: &Touched) {
    let (closed, sick, kin, broken_into) = (last.closed, last.sick, last.kin, last.broken_into);
    (new.lots, new.trays, new.beds, new.pairs) = (last.lots, last.trays, last.beds, last.pairs);
    let mut trays: BTreeSet<TrayCode> = touched.trays.keys().cloned().collect();
    if closed != new.closed {
        let other =
            |tray: &TrayPicture| tray.place.as_ref().is_some_and(|place| closed.get(place) != new.closed.get(place));
        trays.extend(new.trays.values().filter(|tray| other(tray)).map(|tray| tray.code.clone()));
    }
    if sick != new.sick {
        let stood = |tray: &TrayPicture| stays(&tray.story).any(|(place, ..)| sick.get(place) != new.sick.get(place));
        trays.extend(new.trays.values().filter(|tray| stood(tray)).map(|tray| tray.code.clone()));
    }
    let mut beds = touched.beds.clone();
    if kin != new.kin {
        let other = |code: &TrayCode| fold.trays().get(code).is_some_and(|story| new.kin.is_other_for(story, &kin));
        trays.extend(new.trays.keys().filter(|code| other(code)).cloned());
        let from_other = |bed: &BedPicture| bed.story.came_from.iter().any(|came| other(&came.tray));
        beds.extend(new.beds.values().filter(|bed| from_other(bed)).map(|bed| bed.name.clone()));
    }
    for code in &touched.lots {
        let (before, now) = (new.lots.remove(code), lot(fold, code, new.day));
        let same = match (&before, &now) {
            (Some(before), Some(now)) => Arc::ptr_eq(before, now),
            (None, None) => true,
            (Some(_), None) | (None, Some(_)) => false,
        };
        new.lots.extend(now.map(|now| (code.clone(), now)));
        if !same {
            let from_it =
                |tray: &&Arc<TrayPicture>| tray.story.sowings.iter().any(|sown| sown.lot.as_ref() == Some(code));
            trays.extend(new.trays.values().filter(from_it).map(|tray| tray.code.clone()));
        }
    }
    for code in &trays {
        new.trays.remove(code);
        let drawn = tray(fold, new, code);
        new.trays.extend(drawn.map(|drawn| (code.clone(), drawn)));
    }
    if broken_into != new.broken_into {
        let other = |bed: &BedPicture| broken_into.get(&bed.field) != new.broken_into.get(&bed.field);
        beds.extend(new.beds.values().filter(|bed| other(bed)).map(|bed| bed.name.clone()));
    }
    let mut planned: Vec<Arc<BedPicture>> = Vec::new();
    let waters = (!beds.is_empty()).then(|| Waters::of(fold.site(), new.day));
    for name in &beds {
        planned.extend(new.beds.remove(name));
        let drawn = waters.as_ref().and_then(|waters| bed(fold, (new, waters), name));
        planned.extend(drawn.iter().cloned());
        new.beds.extend(drawn.map(|drawn| (name.clone(), drawn)));
    }
    let species = planned.iter().flat_map(|bed| &bed.species).map(|line| &line.species).collect();
    pair_anew(new, &trays, &beds, &species);
}

fn lot(fold: &Fold, code: &LotCode, day: Day) -> Option<Arc<LotStory>> {
    let story = fold.lots().get(code)?;
    let kept = || fold.activated().contains(&Subject::Lot(code.clone()));
    (!is_archived(lot_archived_from(story), day) || kept()).then(|| story.clone())
}

fn tray(fold: &Fold, new: &Picture, code: &TrayCode) -> Option<Arc<TrayPicture>> {
    let story = fold.trays().get(code).filter(|story| story.origin.is_some())?;
    if is_archived(tray_archived_from(story), new.day) && !fold.activated().contains(&Subject::Tray(code.clone())) {
        return None;
    }
    let lots = story.sowings.iter().filter_map(|sowing| sowing.lot.as_ref());
    let lots_held = lots.filter_map(|lot| new.lots.get(lot)).flat_map(|lot| lot.held.iter().cloned()).collect();
    let around = Around {
        site: fold.site(),
        places: fold.places(),
        closed: &new.closed,
        sick: &new.sick,
        kin: &new.kin,
        lots_held,
        weekly_loss: new.weekly_loss,
        day: new.day,
    };
    Some(Arc::new(picture_tray(story, &around)))
}

fn bed(fold: &Fold, (new, waters): (&Picture, &Waters), name: &BedName) -> Option<Arc<BedPicture>> {
    let story = fold.beds().get(name)?;
    if is_archived(bed_archived_from(story), new.day) && !fold.activated().contains(&Subject::Bed(name.clone())) {
        return None;
    }
    let (site, places, kin, broken_into) = (fold.site(), fold.places(), &new.kin, &new.broken_into);
    let then = Then { site, places, kin, broken_into, waters, day: new.day, looking: new.looking };
    picture_bed(story, then).map(Arc::new)
}

/// Pairs again what was touched; `species` are those that the beds planned before or plan now.
fn pair_anew(new: &mut Picture, trays: &BTreeSet<TrayCode>, beds: &BTreeSet<BedName>, species: &BTreeSet<&SpeciesKey>) {
    for code in trays {
        let of_it =
            new.trays.get(code).map(|tray| pairs_of(tray, new.beds.values(), (&new.site, &new.places), new.day));
        new.pairs.set(code, of_it.unwrap_or_default());
    }
    if beds.is_empty() {
        return;
    }
    let may_pair = |tray: &TrayPicture| tray.species.as_ref().is_some_and(|own| species.contains(own));
    let others = new.trays.iter().filter(|(code, tray)| may_pair(tray) && !trays.contains(*code));
    for (code, tray) in others {
        let anew = pairs_of(tray, beds.iter().filter_map(|name| new.beds.get(name)), (&new.site, &new.places), new.day);
        if anew.is_empty() && !new.pairs.of(code).iter().any(|pair| beds.contains(pair.bed())) {
            continue;
        }
        let kept = new.pairs.of(code).iter().filter(|pair| !beds.contains(pair.bed())).cloned();
        let mut all: Vec<_> = kept.chain(anew).collect();
        all.sort_by(|a, b| a.bed().cmp(b.bed()));
        new.pairs.set(code, all);
    }
}

/// The archived stories that are learned from, and what was lost in the trays of the nursery: as they were, where nothing
/// archived was touched.
fn learned_from(fold: &Fold, last: Option<&Last>, touched: &Touched) -> (Arc<[Arc<TrayStory>]>, Losses) {
    let day = fold.ledger().view().day;
    let archived = |story: &Arc<TrayStory>| is_archived(tray_archived_from(story), day);
    let rested = |(code, before): (&TrayCode, &Option<Arc<TrayStory>>)| match before {
        Some(before) => archived(before) || fold.trays().get(code).is_some_and(archived),
        None => {
            fold.trays().get(code).is_some_and(archived)
                || fold.archived_stories().iter().any(|kept| kept.code == *code)
        }
    };
    match last {
        Some(last) if !touched.trays.iter().any(rested) => {
            let mut losses = last.losses;
            for (code, before) in &touched.trays {
                before.iter().for_each(|before| losses.take_out(before, day));
                fold.trays().get(code).iter().for_each(|now| losses.add(now, day));
            }
            (last.picture.archived.clone(), losses)
        }
        Some(_) | None => {
            let mut losses = Losses::default();
            let learned = archived_of(fold, day);
            let active = fold.trays().values().filter(|story| !archived(story));
            learned.iter().chain(active).for_each(|story| losses.add(story, day));
            (learned, losses)
        }
    }
}

/// Of each species the trays archived last: those in memory and those that were kept.
fn archived_of(fold: &Fold, day: Day) -> Arc<[Arc<TrayStory>]> {
    let kept = fold.archived_stories().iter().filter(|story| !fold.has_read(&story.code));
    let mut all: BTreeMap<&SpeciesKey, Vec<(Day, &Arc<TrayStory>)>> = BTreeMap::new();
    for story in kept.chain(fold.trays().values()).filter(|story| story.origin.is_some()) {
        if let (Some(species), Some(on)) = (&story.species, tray_archived_from(story).filter(|on| *on <= day)) {
            all.entry(species).or_default().push((on, story));
        }
    }
    let mut learned = Vec::new();
    for (_, mut of_it) in all {
        of_it.sort_by(|a, b| (b.0, &a.1.code).cmp(&(a.0, &b.1.code)));
        learned.extend(of_it.into_iter().take(LEARNED_TRAYS).map(|(_, story)| story.clone()));
    }
    learned.into()
}

fn doubts(fold: &Fold) -> Vec<Doubt> {
    let mut doubts = fold.doubts_of_active();
    doubts.sort();
    doubts.dedup();
    doubts
}

fn unplanned(picture: &Picture) -> Vec<TrayCode> {
    let ready = || picture.trays.values().filter(|tray| tray.ready);
    // Nurse plants need no plan.
    let is_nurse = |key: &&SpeciesKey| picture.site.profile(key).is_some_and(|profile| profile.role == Role::Nurse);
    let species = ready().filter_map(|tray| tray.species.as_ref());
    let mut unplanned: BTreeSet<&SpeciesKey> = species.filter(|key| !is_nurse(key)).collect();
    for line in picture.beds.values().flat_map(|bed| &bed.species) {
        if unplanned.is_empty() {
            break;
        }
        unplanned.remove(&line.species);
    }
    let is_unplanned = |tray: &&Arc<TrayPicture>| tray.species.as_ref().is_some_and(|own| unplanned.contains(own));
    ready().filter(is_unplanned).map(|tray| tray.code.clone()).collect()
}
