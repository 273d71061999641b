//! The story of a place where trays stand: its light, its water, what holds it back.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::tray::{Hold, PestLook, Since};
use super::treatment::Treatments;
use crate::base::text::folded;
use crate::base::{Day, EntryId, PlaceName};
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::{GroundEntry, LightRead, Released, SiteEntry, TrayEntry, What};
use crate::reckon::ledger::Ledger;
use crate::science::light::{LuxPair, light_share};

/// What a person holds back, and nobody let go of since: of one reason the last, and of several reasons each.
#[derive(Clone, PartialEq, Debug, Default, Serialize, Deserialize)]
pub struct Holds(Vec<Since<Hold>>);

impl Holds {
    pub(crate) fn write(&mut self, new: Since<Hold>) {
        self.0.retain(|hold| folded(&hold.what.0) != folded(&new.what.0));
        self.0.push(new);
    }

    /// Lets go of those that a release names, of these and of others beside them, where it names some of several; else of all. Whether
    /// none is left.
    pub(crate) fn let_go(&mut self, others: &mut Vec<Since<Hold>>, released: &Released) -> bool {
        let named = |hold: &Since<Hold>| released.why.as_ref().is_some_and(|why| is_named(&hold.what.0, &why.0));
        let some = self.0.iter().chain(&*others).any(&named);
        self.0.retain(|hold| some && !named(hold));
        others.retain(|hold| some && !named(hold));
        self.0.is_empty() && others.is_empty()
    }

    /// Each, in the order they were written.
    pub(crate) fn iter(&self) -> std::slice::Iter<'_, Since<Hold>> {
        self.0.iter()
    }

    /// Whether nothing is held.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Of those in force on a day the one that lasts longest; one without an end longest of all.
    pub(crate) fn longest_on(&self, day: Day) -> Option<&Since<Hold>> {
        longest_on(self.iter(), day)
    }
}

/// Of holds those in force on a day, the one that lasts longest; one without an end longest of all.
pub(crate) fn longest_on<'a>(all: impl Iterator<Item = &'a Since<Hold>>, day: Day) -> Option<&'a Since<Hold>> {
    let in_force = |hold: &&Since<Hold>| hold.from <= day && hold.what.1.is_none_or(|until| day <= until);
    all.filter(in_force).max_by_key(|hold| (hold.what.1.is_none(), hold.what.1))
}

/// Words that tell one hold from no other.
const SAYS_LITTLE: [&str; 8] = ["keep", "apart", "with", "from", "hold", "held", "para", "esta"];

/// Whether words name the reason of a hold: one of its words, of four letters or more, stands there.
pub(crate) fn is_named(reason: &str, words: &str) -> bool {
    let (reason, words) = (folded(reason), folded(words));
    let parts = |text: &str| -> Vec<String> {
        let all = text.split(|letter: char| !letter.is_alphanumeric());
        all.filter(|word| word.chars().count() >= 4).map(str::to_string).collect()
    };
    let words = parts(&words);
    parts(&reason).iter().any(|word| !SAYS_LITTLE.contains(&word.as_str()) && words.contains(word))
}

/// A change of the light at a place.
#[derive(Clone, PartialEq, Debug)]
pub struct LightChange {
    /// From this day.
    pub from: Day,
    /// Light as the shade over it says, a share of the open light; none where only readings are known.
    pub nominal: Option<f64>,
    /// Light as read, a share of the open light, since the last change of shade.
    pub read: Option<f64>,
    /// Whether somebody changed the shade (a reading changes nothing).
    pub step: bool,
    /// The entry.
    pub entry: EntryId,
}

/// The story of a place.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct PlaceStory {
    /// Changes of its light, oldest first; a description that comes first reaches back.
    pub light: Vec<LightChange>,
    /// Steps of its water, every so many days.
    pub waterings: Vec<Since<f64>>,
    /// What holds it back.
    pub held: Holds,
    /// Since when it has been held without a break, where it is.
    pub(crate) held_since: Option<Day>,
    /// Treatments.
    pub treatments: Treatments,
    /// Pests and sicknesses seen.
    pub pests: Vec<Since<PestLook>>,
}

/// Every place's story.
pub type Places = BTreeMap<PlaceName, PlaceStory>;

/// Folds every place of a ledger.
pub(crate) fn fold_places(ledger: &Ledger) -> Places {
    let mut places = Places::new();
    for subject in ledger.subjects() {
        if let Subject::Place(name) = subject {
            places.insert(name.clone(), fold_place(ledger, name));
        }
    }
    places
}

/// The share a light reading gives, 0 to 1, of a bed and of a place alike: as written (ours: the person may have left
/// out a pair under a cloud), else the mean of its pairs.
pub(crate) fn share_read(read: &LightRead) -> Option<f64> {
    let written = read.light_share.map(|share| share.0).filter(|share| share.is_finite());
    if let Some(share) = written {
        return Some(share.clamp(0.0, 1.0));
    }
    let pairs: Vec<LuxPair> = read
        .readings
        .iter()
        .flatten()
        .map(|pair| LuxPair { under_lux: pair.under_lux.0, open_lux: pair.open_lux.0 })
        .collect();
    light_share(&pairs).ok()
}

fn fold_place(ledger: &Ledger, name: &PlaceName) -> PlaceStory {
    let mut story = PlaceStory::default();
    let mut described = false;
    for entry in ledger.of(&Subject::Place(name.clone())) {
        let (from, id) = (entry.happened, entry.id.clone());
        match &entry.what {
            What::Site(SiteEntry::PlaceSet(set)) => {
                described |= story.light.iter().all(|change| change.nominal.is_none());
                story.shade(from, set.shade_pct.0, id);
            }
            What::Tray(TrayEntry::ShadeSet(set)) => story.shade(from, set.shade_pct.0, id),
            What::Tray(TrayEntry::WateringSet(set)) => {
                story.waterings.push(Since::begun_by(entry, set.every_days.0));
            }
            What::Tray(TrayEntry::Held(held)) => {
                let goes_on = story.held.longest_on(from).is_some();
                story.held_since = story.held_since.filter(|_| goes_on).or(Some(from));
                story.held.write(Since::hold(entry, held));
            }
            What::Tray(TrayEntry::Released(released)) => {
                if story.held.let_go(&mut Vec::new(), released) {
                    story.held_since = None;
                }
            }
            What::Tray(TrayEntry::PestSeen(pest)) => story.pests.push(Since::pest(entry, pest, None)),
            What::Tray(TrayEntry::Treated(treated)) => story.treatments.write(from, treated, id),
            What::Ground(GroundEntry::LightRead(read)) => {
                if let Some(share) = share_read(read) {
                    let nominal = story.light.last().and_then(|last| last.nominal);
                    story.light.push(LightChange { from, nominal, read: Some(share), step: false, entry: id });
                }
            }
            What::Tray(_) | What::Ground(_) | What::Site(_) | What::Seed(_) | What::Book(_) | What::Foreign { .. } => {}
        }
    }
    if described {
        story.reach_back();
    }
    story
}

impl PlaceStory {
    fn shade(&mut self, from: Day, shade_pct: f64, entry: EntryId) {
        let nominal = 1.0 - shade_pct / 100.0;
        // A place described again with the same shade keeps what was read under it.
        let same = self.light.last().is_some_and(|last| last.nominal.is_some_and(|last| (last - nominal).abs() < 1e-9));
        if !same {
            self.light.push(LightChange { from, nominal: Some(nominal), read: None, step: true, entry });
        }
    }

    /// What describes reaches back: before the first known shade, that shade. A shade that was changed does not: what was there
    /// before is not known.
    fn reach_back(&mut self) {
        let Some(first) = self.light.iter().position(|change| change.nominal.is_some()) else { return };
        let nominal = self.light.get(first).and_then(|change| change.nominal);
        for change in self.light.iter_mut().take(first) {
            change.nominal = nominal;
        }
        if let Some(change) = self.light.first_mut()
            && change.step
        {
            change.from = Day::from_number(1);
        }
    }

    /// The light on a day.
    pub(crate) fn light_on(&self, day: Day) -> Option<&LightChange> {
        self.light.iter().rev().find(|change| change.from <= day)
    }
}
