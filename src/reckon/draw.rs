//! Drawing a Picture: fold what is new, judge what was touched.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::bed::picture_bed;
use super::ledger::{Ledger, View};
use super::pair::pairs_of;
use super::picture::{Doubt, DoubtKind, Looking, Pairs, Picture};
use super::site::Site;
use super::stock::{BedStory, LotStory, Places, TrayStory, fold_bed, fold_lot, fold_places, fold_tray};
use super::tray::{Around, age_of_count, picture_tray};
use crate::base::{BedName, Day, LotCode, TrayCode};
use crate::nursery::entry::Entry;
use crate::nursery::entry::subject::Subject;

/// The folded stories of a view, kept so that a new entry refolds only what it touches.
#[derive(Clone, Debug)]
pub struct Fold {
    ledger: Ledger,
    today: Day,
    site: Arc<Site>,
    places: Arc<Places>,
    trays: BTreeMap<TrayCode, Arc<TrayStory>>,
    lots: BTreeMap<LotCode, Arc<LotStory>>,
    beds: BTreeMap<BedName, Arc<BedStory>>,
}

impl Fold {
    /// Folds entries, in any order, for a view. `today` says whether the day looked at is past or to come.
    pub fn new(view: View, today: Day, entries: impl IntoIterator<Item = Arc<Entry>>) -> Fold {
        let ledger = Ledger::new(view, entries);
        let mut fold = Fold {
            ledger,
            today,
            site: Arc::default(),
            places: Arc::default(),
            trays: BTreeMap::new(),
            lots: BTreeMap::new(),
            beds: BTreeMap::new(),
        };
        fold.fold_all();
        fold
    }

    /// Adds entries; the answer is the same as folding everything anew.
    pub fn add(&mut self, entries: impl IntoIterator<Item = Arc<Entry>>) {
        match self.ledger.add(entries) {
            None => self.fold_all(),
            Some(touched) => self.refold(touched),
        }
    }

    /// Takes entries out again, as if they had never been added.
    pub fn take_out(&mut self, entries: &[Arc<Entry>]) {
        match self.ledger.take_out(entries) {
            None => self.fold_all(),
            Some(touched) => {
                for subject in &touched {
                    self.forget(subject);
                }
                self.refold(touched);
            }
        }
    }

    /// A subject without entries has no story.
    fn forget(&mut self, subject: &Subject) {
        match subject {
            Subject::Tray(code) => drop(self.trays.remove(code)),
            Subject::Lot(code) => drop(self.lots.remove(code)),
            Subject::Bed(name) => drop(self.beds.remove(name)),
            Subject::Place(_) | Subject::Site => {}
        }
    }

    /// What cannot be believed in the books, without what only the Picture of a day shows.
    pub fn all_doubts(&self) -> Vec<Doubt> {
        let mut doubts = self.site.doubts.clone();
        doubts.extend(self.trays.values().flat_map(|story| story.doubts.iter().cloned()));
        doubts.extend(self.lots.values().flat_map(|story| story.doubts.iter().cloned()));
        doubts.extend(self.beds.values().flat_map(|story| story.doubts.iter().cloned()));
        doubts
    }

    /// The entries that count.
    pub fn ledger(&self) -> &Ledger {
        &self.ledger
    }

    /// What describes the site.
    pub fn site(&self) -> &Arc<Site> {
        &self.site
    }

    /// The stories of trays.
    pub fn trays(&self) -> &BTreeMap<TrayCode, Arc<TrayStory>> {
        &self.trays
    }

    /// The stories of lots.
    pub fn lots(&self) -> &BTreeMap<LotCode, Arc<LotStory>> {
        &self.lots
    }

    /// The stories of beds.
    pub fn beds(&self) -> &BTreeMap<BedName, Arc<BedStory>> {
        &self.beds
    }

    fn fold_all(&mut self) {
        self.site = Arc::new(Site::of(&self.ledger));
        self.places = Arc::new(fold_places(&self.ledger));
        self.trays.clear();
        self.lots.clear();
        self.beds.clear();
        let subjects: Vec<Subject> = self.ledger.subjects().cloned().collect();
        for subject in subjects {
            self.fold_one(&subject);
        }
    }

    fn fold_one(&mut self, subject: &Subject) {
        if self.ledger.of(subject).next().is_none() {
            return self.forget(subject);
        }
        match subject {
            Subject::Tray(code) => {
                self.trays.insert(code.clone(), Arc::new(fold_tray(&self.ledger, &self.site, code)));
            }
            Subject::Lot(code) => {
                self.lots.insert(code.clone(), Arc::new(fold_lot(&self.ledger, &self.site, code)));
            }
            Subject::Bed(name) => {
                self.beds.insert(name.clone(), Arc::new(fold_bed(&self.ledger, &self.site, name)));
            }
            Subject::Place(_) | Subject::Site => {}
        }
    }

    fn refold(&mut self, touched: BTreeSet<Subject>) {
        // What describes species or containers can change any reading of a count; weather and seasons cannot, but
        // they are rare enough to be folded with the rest.
        if touched.contains(&Subject::Site) {
            let before = self.site.clone();
            self.site = Arc::new(Site::of(&self.ledger));
            let species_changed = !Arc::ptr_eq(&before.species, &self.site.species)
                && before.species.iter().map(|(_, p)| p).ne(self.site.species.iter().map(|(_, p)| p));
            if species_changed {
                return self.fold_all();
            }
        }
        if touched.iter().any(|subject| matches!(subject, Subject::Place(_))) {
            self.site = Arc::new(Site::of(&self.ledger));
            self.places = Arc::new(fold_places(&self.ledger));
        }
        let mut all = touched.clone();
        self.add_linked(&touched, &mut all);
        for subject in &all {
            self.fold_one(subject);
        }
    }

    /// A lot lends its species to the trays sown from it, a tray its lineage to those moved on from it and to the beds
    /// it went out to.
    fn add_linked(&self, touched: &BTreeSet<Subject>, all: &mut BTreeSet<Subject>) {
        use crate::nursery::entry::subject::subjects;
        let mut todo: Vec<Subject> = touched.iter().cloned().collect();
        while let Some(subject) = todo.pop() {
            if !matches!(subject, Subject::Lot(_) | Subject::Tray(_)) {
                continue;
            }
            for entry in self.ledger.of(&subject) {
                let key = self.ledger.key_of(entry);
                for linked in subjects(&entry.what) {
                    let linked = match linked {
                        Subject::Tray(code) => Subject::Tray(self.ledger.tray_at(&code, &key)),
                        Subject::Bed(_) => linked,
                        Subject::Lot(_) | Subject::Place(_) | Subject::Site => continue,
                    };
                    if all.insert(linked.clone()) {
                        todo.push(linked);
                    }
                }
            }
        }
    }

    /// The Picture of the view's day.
    pub fn picture(&self) -> Picture {
        let day = self.ledger.view().day;
        let looking = match day.cmp(&self.today) {
            std::cmp::Ordering::Less => Looking::Back,
            std::cmp::Ordering::Equal => Looking::Today,
            std::cmp::Ordering::Greater => Looking::Ahead,
        };
        let weekly_loss = age_of_count::weekly_loss(&self.trays, day);
        let mut picture = Picture {
            day,
            looking,
            known: self.ledger.view().known,
            site: self.site.clone(),
            places: self.places.clone(),
            trays: BTreeMap::new(),
            lots: self.lots.clone(),
            beds: BTreeMap::new(),
            pairs: Pairs::default(),
            doubts: Vec::new(),
        };
        for (code, story) in self.trays.iter().filter(|(_, story)| story.origin.is_some()) {
            let lots_held = story.sowings.iter().filter_map(|s| self.lots.get(s.lot.as_ref()?)?.held.clone()).collect();
            let around = Around { site: &self.site, places: &self.places, lots_held, weekly_loss, day };
            picture.trays.insert(code.clone(), Arc::new(picture_tray(story, &around)));
        }
        for (name, story) in &self.beds {
            if let Some(bed) = picture_bed(story, &self.site, day, looking) {
                picture.beds.insert(name.clone(), Arc::new(bed));
            }
        }
        for (code, tray) in &picture.trays {
            picture.pairs.set(code, pairs_of(tray, &picture.beds, &self.places, day));
        }
        picture.doubts = self.doubts(&picture);
        picture
    }

    fn doubts(&self, picture: &Picture) -> Vec<Doubt> {
        let mut doubts = self.all_doubts();
        for tray in picture.trays.values().filter(|tray| tray.ready) {
            let Some(species) = &tray.species else { continue };
            let planned = picture.beds.values().any(|bed| bed.species.iter().any(|line| line.species == *species));
            if !planned {
                let kind = DoubtKind::NoBedPlans { tray: tray.code.clone(), species: species.clone() };
                doubts.push(Doubt { day: picture.day, kind, entries: Vec::new() });
            }
        }
        doubts.sort();
        doubts.dedup();
        doubts
    }
}

/// The Picture of entries, in any order, for a view.
pub fn draw_picture(view: View, today: Day, entries: impl IntoIterator<Item = Arc<Entry>>) -> Picture {
    Fold::new(view, today, entries).picture()
}
