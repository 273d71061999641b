//! From stories to a Picture: what was not touched since the last one is taken over as it is.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Arc, Mutex, PoisonError};

use super::Fold;
use crate::base::{BedName, Day, LotCode, SpeciesKey, TrayCode};
use crate::nursery::entry::subject::Subject;
use crate::reckon::bed::picture_bed;
use crate::reckon::pair::pairs_of;
use crate::reckon::picture::{BedPicture, Doubt, DoubtKind, Looking, Pairs, Picture, TrayPicture};
use crate::reckon::rest::{LEARNED_TRAYS, bed_rests_on, lot_rests_on, rests, tray_rests_on};
use crate::reckon::stock::{BedStory, LotStory, TrayStory};
use crate::reckon::tray::{Around, age_of_count, picture_tray};

/// The Picture drawn last, and the weekly loss it was judged by.
#[derive(Default, Debug)]
pub(super) struct Drawn(Mutex<Option<Picture>>);

impl Clone for Drawn {
    fn clone(&self) -> Drawn {
        Drawn(Mutex::new(self.0.lock().unwrap_or_else(PoisonError::into_inner).clone()))
    }
}

impl Drawn {
    pub fn take(&self) -> Option<Picture> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).take()
    }

    pub fn keep(&self, picture: &Picture) {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner) = Some(picture.clone());
    }
}

/// Draws the Picture of a fold's day. `last` is one drawn by the same fold before.
pub(super) fn draw(fold: &Fold, last: Option<Picture>) -> Picture {
    let view = fold.ledger().view();
    let looking = match view.day.cmp(&fold.today()) {
        std::cmp::Ordering::Less => Looking::Back,
        std::cmp::Ordering::Equal => Looking::Today,
        std::cmp::Ordering::Greater => Looking::Ahead,
    };
    let at_rest = at_rest(fold, view.day);
    let awake = fold.trays().values().filter(|story| !rests(tray_rests_on(story), view.day));
    let weekly_loss = age_of_count::weekly_loss(at_rest.iter().chain(awake), view.day);
    let holds = |last: &Picture| {
        last.weekly_loss == weekly_loss
            && Arc::ptr_eq(&last.site, fold.site())
            && Arc::ptr_eq(&last.places, fold.places())
    };
    let last = last.filter(holds);
    let mut picture = Picture {
        day: view.day,
        looking,
        known: view.known,
        site: fold.site().clone(),
        places: fold.places().clone(),
        weekly_loss,
        at_rest,
        trays: BTreeMap::new(),
        lots: BTreeMap::new(),
        beds: BTreeMap::new(),
        pairs: Pairs::default(),
        doubts: Vec::new(),
    };
    let kept = fold.kept_awake();
    let here =
        |story: &LotStory| !rests(lot_rests_on(story), view.day) || kept.contains(&Subject::Lot(story.code.clone()));
    let lots = fold.lots().iter().filter(|(_, story)| here(story));
    picture.lots = lots.map(|(code, story)| (code.clone(), story.clone())).collect();
    picture.trays = trays(fold, &picture, last.as_ref());
    picture.beds = beds(fold, &picture, last.as_ref());
    picture.pairs = pairs(&picture, last.as_ref());
    picture.doubts = doubts(fold, &picture);
    picture
}

/// Of each species the trays that came to rest last: those in memory and those that were kept.
fn at_rest(fold: &Fold, day: Day) -> Vec<Arc<TrayStory>> {
    let kept = fold.at_rest().iter().filter(|story| !fold.has_read(&story.code));
    let mut all: BTreeMap<&SpeciesKey, Vec<(Day, &Arc<TrayStory>)>> = BTreeMap::new();
    for story in kept.chain(fold.trays().values()).filter(|story| story.origin.is_some()) {
        if let (Some(species), Some(on)) = (&story.species, tray_rests_on(story).filter(|on| *on <= day)) {
            all.entry(species).or_default().push((on, story));
        }
    }
    let mut learned = Vec::new();
    for (_, mut of_it) in all {
        of_it.sort_by(|a, b| (b.0, &a.1.code).cmp(&(a.0, &b.1.code)));
        learned.extend(of_it.into_iter().take(LEARNED_TRAYS).map(|(_, story)| story.clone()));
    }
    learned
}

fn trays(fold: &Fold, new: &Picture, last: Option<&Picture>) -> BTreeMap<TrayCode, Arc<TrayPicture>> {
    let same_lot = |lot: &LotCode| {
        let before = last.and_then(|last| last.lots.get(lot));
        match (before, new.lots.get(lot)) {
            (Some(before), Some(now)) => Arc::ptr_eq(before, now),
            (None, None) => true,
            (Some(_), None) | (None, Some(_)) => false,
        }
    };
    let mut trays = BTreeMap::new();
    let kept = |story: &TrayStory| fold.kept_awake().contains(&Subject::Tray(story.code.clone()));
    let here = |story: &TrayStory| story.origin.is_some() && (!rests(tray_rests_on(story), new.day) || kept(story));
    for (code, story) in fold.trays().iter().filter(|(_, story)| here(story)) {
        let mut lots = story.sowings.iter().filter_map(|sowing| sowing.lot.as_ref());
        let same = last.and_then(|last| last.trays.get(code)).filter(|tray| Arc::ptr_eq(&tray.story, story));
        if let Some(same) = same.filter(|_| lots.clone().all(same_lot)) {
            trays.insert(code.clone(), same.clone());
            continue;
        }
        let lots_held = lots.by_ref().filter_map(|lot| new.lots.get(lot)?.held.clone()).collect();
        let around =
            Around { site: fold.site(), places: fold.places(), lots_held, weekly_loss: new.weekly_loss, day: new.day };
        trays.insert(code.clone(), Arc::new(picture_tray(story, &around)));
    }
    trays
}

fn beds(fold: &Fold, new: &Picture, last: Option<&Picture>) -> BTreeMap<BedName, Arc<BedPicture>> {
    let mut beds = BTreeMap::new();
    let kept = |story: &BedStory| fold.kept_awake().contains(&Subject::Bed(story.name.clone()));
    let here = |story: &BedStory| !rests(bed_rests_on(story), new.day) || kept(story);
    for (name, story) in fold.beds().iter().filter(|(_, story)| here(story)) {
        let same = last.and_then(|last| last.beds.get(name)).filter(|bed| Arc::ptr_eq(&bed.story, story));
        let bed = same.cloned().or_else(|| picture_bed(story, fold.site(), new.day, new.looking).map(Arc::new));
        if let Some(bed) = bed {
            beds.insert(name.clone(), bed);
        }
    }
    beds
}

/// Beds that are others than before, those gone among them.
fn changed_beds<'a>(new: &'a Picture, last: &'a Picture) -> BTreeSet<&'a BedName> {
    let differs = |name: &&BedName| match (new.beds.get(*name), last.beds.get(*name)) {
        (Some(now), Some(before)) => !Arc::ptr_eq(now, before),
        (Some(_) | None, _) => true,
    };
    new.beds.keys().chain(last.beds.keys()).filter(differs).collect()
}

fn pairs(new: &Picture, last: Option<&Picture>) -> Pairs {
    let Some(last) = last else {
        let mut pairs = Pairs::default();
        for (code, tray) in &new.trays {
            pairs.set(code, pairs_of(tray, new.beds.values(), &new.places, new.day));
        }
        return pairs;
    };
    let mut pairs = last.pairs.clone();
    for code in last.trays.keys().filter(|code| !new.trays.contains_key(*code)) {
        pairs.set(code, Vec::new());
    }
    let changed = changed_beds(new, last);
    let others = || changed.iter().filter_map(|name| new.beds.get(*name));
    for (code, tray) in &new.trays {
        if !last.trays.get(code).is_some_and(|before| Arc::ptr_eq(before, tray)) {
            pairs.set(code, pairs_of(tray, new.beds.values(), &new.places, new.day));
            continue;
        }
        if changed.is_empty() {
            continue;
        }
        let anew = pairs_of(tray, others(), &new.places, new.day);
        if anew.is_empty() && !pairs.of(code).iter().any(|pair| changed.contains(&pair.bed)) {
            continue;
        }
        let kept = pairs.of(code).iter().filter(|pair| !changed.contains(&pair.bed)).cloned();
        let mut all: Vec<_> = kept.chain(anew).collect();
        all.sort_by(|a, b| a.bed.cmp(&b.bed));
        pairs.set(code, all);
    }
    pairs
}

fn doubts(fold: &Fold, picture: &Picture) -> Vec<Doubt> {
    let mut doubts = fold.doubts_awake();
    let planned: BTreeSet<_> = picture.beds.values().flat_map(|bed| &bed.species).map(|line| &line.species).collect();
    for tray in picture.trays.values().filter(|tray| tray.ready) {
        let Some(species) = tray.species.as_ref().filter(|species| !planned.contains(species)) else { continue };
        let kind = DoubtKind::NoBedPlans { tray: tray.code.clone(), species: species.clone() };
        doubts.push(Doubt { day: picture.day, kind, entries: Vec::new() });
    }
    doubts.sort();
    doubts.dedup();
    doubts
}
