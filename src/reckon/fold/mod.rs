//! Drawing a Picture: fold what is new, judge what was touched.

mod drawing;
mod from_then;
mod lazy;

pub use from_then::FromThen;
pub use lazy::Wanted;

use imbl::OrdMap;
use std::collections::BTreeSet;
use std::sync::Arc;

use crate::base::cores::on_every_core;
use crate::base::{BedName, Day, LotCode, TrayCode};
use crate::nursery::entry::Entry;
use crate::nursery::entry::subject::Subject;
use crate::reckon::archived;
use crate::reckon::ledger::{Ledger, View};
use crate::reckon::picture::{Doubt, Picture};
use crate::reckon::season::SeasonDay;
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, LotStory, Places, TrayStory, fold_bed, fold_lot, fold_places, fold_tray};
use drawing::Drawn;
use lazy::InMemory;

/// Another fold does not go on from stories that this one kept: raised whenever what a story holds, or what is folded into
/// it, changes.
pub const FOLD_MARK: u32 = 34;

/// The folded stories of a view, kept so that a new entry refolds only what it touches.
#[derive(Clone, Debug)]
pub struct Fold {
    ledger: Ledger,
    today: Day,
    site: Arc<Site>,
    places: Arc<Places>,
    trays: OrdMap<TrayCode, Arc<TrayStory>>,
    lots: OrdMap<LotCode, Arc<LotStory>>,
    beds: OrdMap<BedName, Arc<BedStory>>,
    /// What of the book is in memory; none where all of it is.
    memory: Option<InMemory>,
    /// Stories of archived trays that are not among `trays`: the newest of each species.
    archived: Vec<Arc<TrayStory>>,
    activated: BTreeSet<Subject>,
    drawn: Drawn,
}

/// The stories of a moment.
pub(crate) struct StoriesThen {
    site: Arc<Site>,
    trays: OrdMap<TrayCode, Arc<TrayStory>>,
    lots: OrdMap<LotCode, Arc<LotStory>>,
    beds: OrdMap<BedName, Arc<BedStory>>,
}

impl StoriesThen {
    fn doubts(&self) -> impl Iterator<Item = &Doubt> {
        let of_trays = self.trays.values().flat_map(|story| &story.doubts);
        let of_lots = self.lots.values().flat_map(|story| &story.doubts);
        let of_beds = self.beds.values().flat_map(|story| &story.doubts);
        self.site.doubts.iter().chain(of_trays).chain(of_lots).chain(of_beds)
    }
}

/// Stories that were kept.
#[derive(Clone, Default, Debug)]
pub struct Stories {
    /// Of trays.
    pub trays: Vec<TrayStory>,
    /// Of lots.
    pub lots: Vec<LotStory>,
    /// Of beds.
    pub beds: Vec<BedStory>,
}

/// A story just folded.
enum Folded {
    Tray(Arc<TrayStory>),
    Lot(Arc<LotStory>),
    Bed(Arc<BedStory>),
    /// What describes has its place in the site.
    Described,
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
            trays: OrdMap::new(),
            lots: OrdMap::new(),
            beds: OrdMap::new(),
            memory: None,
            archived: Vec::new(),
            activated: BTreeSet::new(),
            drawn: Drawn::default(),
        };
        fold.fold_all();
        fold
    }

    /// Goes on from stories that were kept. `entries` are those that describe the site and its places, every withdrawal and
    /// every change of a label. Before anything is added or taken out, what it wants must be looked up.
    pub fn from_stories(
        view: View,
        today: Day,
        entries: impl IntoIterator<Item = Arc<Entry>>,
        stories: Stories,
    ) -> Fold {
        let mut fold = Fold::new(view, today, std::iter::empty());
        fold.memory = Some(InMemory::default());
        fold.ledger = Ledger::new(view, entries);
        fold.site = Arc::new(Site::of(&fold.ledger));
        fold.places = Arc::new(fold_places(&fold.ledger));
        fold.put(stories);
        fold
    }

    /// Lays kept stories beside those that are there.
    pub fn put(&mut self, stories: Stories) {
        for story in stories.trays.into_iter().map(Arc::new) {
            if !self.trays.contains_key(&story.code) {
                self.touch(&Subject::Tray(story.code.clone()));
                self.trays.insert(story.code.clone(), story);
            }
        }
        for story in stories.lots.into_iter().map(Arc::new) {
            if !self.lots.contains_key(&story.code) {
                self.touch(&Subject::Lot(story.code.clone()));
                self.lots.insert(story.code.clone(), story);
            }
        }
        for story in stories.beds.into_iter().map(Arc::new) {
            if !self.beds.contains_key(&story.name) {
                self.touch(&Subject::Bed(story.name.clone()));
                self.beds.insert(story.name.clone(), story);
            }
        }
    }

    /// The stories of archived trays that are learned from and not in memory otherwise.
    pub fn put_archived(&mut self, stories: Vec<Arc<TrayStory>>) {
        self.drawn.forget();
        self.archived = stories;
    }

    /// Whether all of the book is in memory.
    pub fn is_whole(&self) -> bool {
        self.memory.is_none()
    }

    /// What has to be looked up before entries can be added or taken out. Asked again after each answer, until nothing is
    /// wanted.
    pub fn wanting(&self, entries: &[Arc<Entry>]) -> Vec<Wanted> {
        self.memory.as_ref().map_or_else(Vec::new, |memory| lazy::wanting(&self.ledger, memory, entries))
    }

    /// What has to be looked up so that everything about some things is in memory.
    pub(crate) fn wanting_for(&self, subjects: &BTreeSet<Subject>) -> Vec<Wanted> {
        let memory = self.memory.as_ref();
        memory
            .map_or_else(Vec::new, |memory| lazy::wanting_for(&self.ledger, memory, subjects.clone(), BTreeSet::new()))
    }

    /// Takes in what was looked up.
    pub fn take_in(&mut self, wanted: &[Wanted], entries: Vec<Arc<Entry>>) {
        let found = entries.iter().map(|entry| entry.id.clone()).collect();
        self.ledger.take_in(entries);
        if let Some(memory) = &mut self.memory {
            memory.note(wanted, &found);
        }
    }

    /// Folds what was archived and is looked up, so that it has a story again.
    pub fn fold_looked_up(&mut self) {
        let read: Vec<Subject> = self.memory.iter().flat_map(|memory| memory.whole.iter().cloned()).collect();
        for subject in read {
            let there = match &subject {
                Subject::Tray(code) => self.trays.contains_key(code),
                Subject::Lot(code) => self.lots.contains_key(code),
                Subject::Bed(name) => self.beds.contains_key(name),
                Subject::Place(_) | Subject::Site => true,
            };
            if !there {
                self.fold_one(&subject);
            }
        }
    }

    /// The same book seen from another view. `outside` are the entries that do not belong to it, `reaching` those that do
    /// though they are of later days. All they want must have been looked up.
    pub fn at(mut self, view: View, outside: &[Arc<Entry>], reaching: &[Arc<Entry>]) -> Fold {
        self.drawn.forget();
        self.ledger.set_view(view);
        self.take_out(outside);
        self.describe_anew(reaching);
        self
    }

    /// Goes on to a later view with the entries that belong to it and did not before. `reaching` are entries of later days
    /// that belonged to it already.
    pub fn go_to(&mut self, view: View, new: Vec<Arc<Entry>>, reaching: &[Arc<Entry>]) {
        self.drawn.forget();
        self.ledger.set_view(view);
        self.add(new);
        self.describe_anew(reaching);
    }

    /// What describes the site leads from its own day on: on another day it is another.
    fn describe_anew(&mut self, reaching: &[Arc<Entry>]) {
        let before = self.site.clone();
        self.site = Arc::new(Site::of(&self.ledger));
        self.places = Arc::new(fold_places(&self.ledger));
        if other_species(&before, &self.site) {
            return self.fold_all();
        }
        self.fold_each(&lazy::subjects_of(&self.ledger, reaching).into_iter().collect::<Vec<_>>());
    }

    /// Every entry that is in memory, taken back or not, by device and number.
    pub(crate) fn every_entry(&self) -> Vec<Arc<Entry>> {
        self.ledger.every_entry()
    }

    /// Lets something be in the Picture though it is archived.
    pub(crate) fn activate(&mut self, subject: Subject) {
        self.drawn.forget();
        self.activated.insert(subject);
    }

    /// What is in the Picture because somebody asked for it.
    pub(super) fn activated(&self) -> &BTreeSet<Subject> {
        &self.activated
    }

    /// Adds entries; the answer is the same as folding everything again.
    pub fn add(&mut self, entries: impl IntoIterator<Item = Arc<Entry>>) {
        let entries: Vec<Arc<Entry>> = entries.into_iter().collect();
        match self.ledger.add(entries.iter().cloned()) {
            None => self.fold_all(),
            Some(touched) => {
                let lend = lazy::those_affecting_descendants(&self.ledger, &entries);
                self.refold(touched, lend);
            }
        }
    }

    /// Takes entries out again, as if they had never been added.
    pub fn take_out(&mut self, entries: &[Arc<Entry>]) {
        let lend = lazy::those_affecting_descendants(&self.ledger, entries);
        match self.ledger.take_out(entries) {
            None => self.fold_all(),
            Some(touched) => {
                for subject in &touched {
                    self.forget(subject);
                }
                self.refold(touched, lend);
            }
        }
    }

    /// A subject without entries has no story.
    fn forget(&mut self, subject: &Subject) {
        self.touch(subject);
        match subject {
            Subject::Tray(code) => drop(self.trays.remove(code)),
            Subject::Lot(code) => drop(self.lots.remove(code)),
            Subject::Bed(name) => drop(self.beds.remove(name)),
            Subject::Place(_) | Subject::Site => {}
        }
    }

    fn touch(&mut self, subject: &Subject) {
        let before = match subject {
            Subject::Tray(code) => self.trays.get(code),
            Subject::Lot(_) | Subject::Bed(_) | Subject::Place(_) | Subject::Site => None,
        };
        self.drawn.touch(subject, before);
    }

    /// What cannot be believed in the books, without what only the Picture of a day shows.
    pub fn all_doubts(&self) -> Vec<Doubt> {
        let mut doubts = self.site.doubts.clone();
        doubts.extend(self.trays.values().flat_map(|story| story.doubts.iter().cloned()));
        doubts.extend(self.lots.values().flat_map(|story| story.doubts.iter().cloned()));
        doubts.extend(self.beds.values().flat_map(|story| story.doubts.iter().cloned()));
        doubts
    }

    /// The stories as they are now, to say later which doubts are new. Nothing is copied: stories are shared.
    pub(crate) fn stories_now(&self) -> StoriesThen {
        StoriesThen {
            site: Arc::clone(&self.site),
            trays: self.trays.clone(),
            lots: self.lots.clone(),
            beds: self.beds.clone(),
        }
    }

    /// The doubts that were not there then: only stories that are others by now are looked at.
    pub(crate) fn doubts_since(&self, then: &StoriesThen) -> Vec<Doubt> {
        let mut new: Vec<&Doubt> = Vec::new();
        if !Arc::ptr_eq(&self.site, &then.site) {
            new.extend(&self.site.doubts);
        }
        let same =
            |now: &Arc<TrayStory>, code: &TrayCode| then.trays.get(code).is_some_and(|story| Arc::ptr_eq(story, now));
        new.extend(self.trays.iter().filter(|(code, now)| !same(now, code)).flat_map(|(_, story)| &story.doubts));
        let same =
            |now: &Arc<LotStory>, code: &LotCode| then.lots.get(code).is_some_and(|story| Arc::ptr_eq(story, now));
        new.extend(self.lots.iter().filter(|(code, now)| !same(now, code)).flat_map(|(_, story)| &story.doubts));
        let same =
            |now: &Arc<BedStory>, name: &BedName| then.beds.get(name).is_some_and(|story| Arc::ptr_eq(story, now));
        new.extend(self.beds.iter().filter(|(name, now)| !same(now, name)).flat_map(|(_, story)| &story.doubts));
        if new.is_empty() {
            return Vec::new();
        }
        let before: BTreeSet<&Doubt> = then.doubts().collect();
        new.into_iter().filter(|doubt| !before.contains(doubt)).cloned().collect()
    }

    /// The same without what is archived on the view's day.
    pub(super) fn doubts_of_active(&self) -> Vec<Doubt> {
        let day = self.ledger.view().day;
        let mut doubts = self.site.doubts.clone();
        let trays = self.trays.values().filter(|story| !story.doubts.is_empty());
        let trays = trays.filter(|story| !archived::is_archived(archived::tray_archived_from(story), day));
        doubts.extend(trays.flat_map(|story| story.doubts.iter().cloned()));
        let lots = self.lots.values().filter(|story| !story.doubts.is_empty());
        let lots = lots.filter(|story| !archived::is_archived(archived::lot_archived_from(story), day));
        doubts.extend(lots.flat_map(|story| story.doubts.iter().cloned()));
        let beds = self.beds.values().filter(|story| !story.doubts.is_empty());
        let beds = beds.filter(|story| !archived::is_archived(archived::bed_archived_from(story), day));
        doubts.extend(beds.flat_map(|story| story.doubts.iter().cloned()));
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
    pub fn trays(&self) -> &OrdMap<TrayCode, Arc<TrayStory>> {
        &self.trays
    }

    /// The stories of lots.
    pub fn lots(&self) -> &OrdMap<LotCode, Arc<LotStory>> {
        &self.lots
    }

    /// The stories of beds.
    pub fn beds(&self) -> &OrdMap<BedName, Arc<BedStory>> {
        &self.beds
    }

    fn fold_all(&mut self) {
        self.site = Arc::new(Site::of(&self.ledger));
        self.places = Arc::new(fold_places(&self.ledger));
        let subjects: Vec<Subject> = match &self.memory {
            // Stories of which nothing is in memory stand as they are.
            Some(memory) => memory.whole.iter().cloned().collect(),
            None => {
                self.drawn.forget();
                self.trays.clear();
                self.lots.clear();
                self.beds.clear();
                self.ledger.subjects().cloned().collect()
            }
        };
        self.fold_each(&subjects);
    }

    /// Stories do not look at each other: each is folded from entries, on every core; so many at a time that those they take
    /// the place of do not stay beside them.
    fn fold_each(&mut self, subjects: &[Subject]) {
        const AT_A_TIME: usize = 256;
        for some in subjects.chunks(AT_A_TIME) {
            let folded = on_every_core(some, |subject| self.folded(subject));
            for (subject, folded) in some.iter().zip(folded) {
                self.lay(subject, folded);
            }
        }
    }

    fn fold_one(&mut self, subject: &Subject) {
        let folded = self.folded(subject);
        self.lay(subject, folded);
    }

    /// The story of a subject as its entries say; none where it has no entry.
    fn folded(&self, subject: &Subject) -> Option<Folded> {
        self.ledger.of(subject).next()?;
        Some(match subject {
            Subject::Tray(code) => Folded::Tray(Arc::new(fold_tray(&self.ledger, &self.site, code))),
            Subject::Lot(code) => Folded::Lot(Arc::new(fold_lot(&self.ledger, &self.site, code))),
            Subject::Bed(name) => Folded::Bed(Arc::new(fold_bed(&self.ledger, &self.site, name))),
            Subject::Place(_) | Subject::Site => Folded::Described,
        })
    }

    fn lay(&mut self, subject: &Subject, folded: Option<Folded>) {
        self.touch(subject);
        match folded {
            Some(Folded::Tray(story)) => drop(self.trays.insert(story.code.clone(), story)),
            Some(Folded::Lot(story)) => drop(self.lots.insert(story.code.clone(), story)),
            Some(Folded::Bed(story)) => drop(self.beds.insert(story.name.clone(), story)),
            Some(Folded::Described) => {}
            None => self.forget(subject),
        }
    }

    fn refold(&mut self, touched: BTreeSet<Subject>, lend: BTreeSet<Subject>) {
        // What describes species or containers can change any reading of a count; weather and seasons cannot, but
        // they are rare enough to be folded with the rest.
        if touched.contains(&Subject::Site) {
            let before = self.site.clone();
            self.site = Arc::new(Site::of(&self.ledger));
            if other_species(&before, &self.site) {
                return self.fold_all();
            }
        }
        if touched.iter().any(|subject| matches!(subject, Subject::Place(_))) {
            self.site = Arc::new(Site::of(&self.ledger));
            self.places = Arc::new(fold_places(&self.ledger));
        }
        let mut all = touched;
        // A lot lends its species to the trays sown from it, a tray its lineage to those moved on from it and to the beds
        // it went out to.
        let mut todo: Vec<Subject> = lend.iter().cloned().collect();
        let mut followed = lend;
        while let Some(subject) = todo.pop() {
            let descendants = lazy::descendants(&self.ledger, &subject);
            all.extend(descendants.iter().cloned());
            todo.extend(descendants.into_iter().filter(|other| followed.insert(other.clone())));
        }
        self.fold_each(&all.into_iter().collect::<Vec<_>>());
    }

    /// The Picture of the view's day. Only what was touched since the last one is judged again.
    pub fn picture(&self) -> Picture {
        drawing::draw(self, &self.drawn)
    }

    /// What a day of the season is, without a Picture of it.
    pub(crate) fn season_day(&self) -> SeasonDay {
        drawing::draw_season_day(self)
    }

    pub(super) fn today(&self) -> Day {
        self.today
    }

    /// Whether what is known of a tray is in memory: then what was kept of it no longer counts.
    pub(super) fn has_read(&self, tray: &TrayCode) -> bool {
        let read = |memory: &InMemory| memory.whole.contains(&Subject::Tray(tray.clone()));
        self.trays.contains_key(tray) || self.memory.as_ref().is_some_and(read)
    }

    /// Stories of archived trays beside those in memory.
    pub(crate) fn archived_stories(&self) -> &[Arc<TrayStory>] {
        &self.archived
    }

    /// Every place.
    pub(crate) fn places(&self) -> &Arc<Places> {
        &self.places
    }
}

fn other_species(before: &Site, now: &Site) -> bool {
    !Arc::ptr_eq(&before.species, &now.species)
        && before.species.iter().map(|(_, p)| p).ne(now.species.iter().map(|(_, p)| p))
}

/// The Picture of entries, in any order, for a view.
pub fn draw_picture(view: View, today: Day, entries: impl IntoIterator<Item = Arc<Entry>>) -> Picture {
    Fold::new(view, today, entries).picture()
}
