//! Names in an entry: every tray, lot, bed and species it speaks of must be known, and what it makes must be new.
//! Species are brought to the one key they are stored by.

use serde_json::{Map, Value};
use std::cell::Cell;
use std::collections::{BTreeMap, BTreeSet};

use super::refusal::Refusal;
use crate::base::text::folded;
use crate::base::{BedName, Day, LotCode, SpeciesKey, TrayCode, name_search};
use crate::nursery::entry::fault::{EntryFault, FieldFault, Problem};
use crate::nursery::entry::reading::settle_body;
use crate::nursery::entry::shape::{Field, Shape};
use crate::nursery::entry::subject::{Subject, is_unknown_lot};
use crate::nursery::entry::{BookEntry, GroundEntry, SeedEntry, SiteEntry, TrayEntry, What, kind_of_entry};
use crate::nursery::envelope::Draft;
use crate::nursery::species::{Catalogue, ProfileFault};
use crate::reckon::Fold;

/// The names a batch is judged against: those in the book and those its own lines make.
pub(super) struct Names {
    spelled: BTreeMap<(Space, String), BTreeSet<String>>,
    renamed: BTreeMap<TrayCode, (TrayCode, Day)>,
    trays: BTreeSet<TrayCode>,
    lots: BTreeSet<LotCode>,
    beds: BTreeSet<BedName>,
    species: Catalogue,
    /// How often the nearest names were looked for.
    searched: Cell<usize>,
}

/// The nearest names are looked for so often; a file of which more lines name nothing is another book's.
const MOST_SEARCHED: usize = 1000;

impl Names {
    /// The names in the book.
    pub fn of(fold: &Fold) -> Names {
        let mut spelled = BTreeMap::new();
        for (space, name) in names_of(fold) {
            spelled.entry((space, folded(&name))).or_insert_with(BTreeSet::new).insert(name);
        }
        Names {
            spelled,
            renamed: fold.ledger().all_renamed().collect(),
            trays: fold
                .trays()
                .iter()
                .filter(|(_, story)| story.origin.is_some())
                .map(|(code, _)| code.clone())
                .collect(),
            lots: fold
                .lots()
                .iter()
                .filter(|(_, story)| story.received.is_some())
                .map(|(code, _)| code.clone())
                .collect(),
            beds: fold
                .beds()
                .iter()
                .filter(|(_, s)| s.layout.each().next().is_some())
                .map(|(n, _)| n.clone())
                .collect(),
            species: (*fold.site().species).clone(),
            searched: Cell::new(0),
        }
    }

    /// The names of another part of the book as well.
    pub fn and(&mut self, other: Names) {
        for (key, spelled) in other.spelled {
            self.spelled.entry(key).or_default().extend(spelled);
        }
        self.renamed.extend(other.renamed);
        self.trays.extend(other.trays);
        self.lots.extend(other.lots);
        self.beds.extend(other.beds);
    }

    /// Brings what a draft names to the spelling it has in the book, learns what it makes, and reads it.
    pub fn settle(&mut self, draft: &mut Draft) -> Result<What, Refusal> {
        self.settle_spelling(draft)?;
        self.settle_species(draft)?;
        let what = super::judge::read(draft)?;
        self.learn(&what).map(|()| what)
    }

    /// Brings codes and names to the spelling they have in the book: case, accents, blanks and hyphens make no second
    /// tray. A name that is new keeps the spelling it came with.
    fn settle_spelling(&mut self, draft: &mut Draft) -> Result<(), Refusal> {
        let Some(kind) = kind_of_entry(&draft.kind) else { return Ok(()) };
        let mut changed = false;
        // A label may be written anew with other letters: that is what a relabelling is for.
        let was = draft.body.get("was").and_then(Value::as_str).map(folded);
        for field in kind.fields.iter().filter(|field| matches!(field.shape, Shape::Code)) {
            let Some(space) = Space::of(field.name) else { continue };
            let Some(Value::String(written)) = draft.body.get_mut(field.name) else { continue };
            let key = folded(written);
            if field.name == "tray" && was.as_ref() == Some(&key) {
                continue;
            }
            let known = self.spelled.entry((space, key)).or_default();
            match known.first().filter(|_| !known.contains(written.as_str())) {
                Some(first) => {
                    first.clone_into(written);
                    changed = true;
                }
                None => drop(known.insert(written.clone())),
            }
        }
        // Two codes may have become one: what holds of the whole entry is asked again.
        let whole = if changed { settle_body(kind.kind, &draft.body).map(drop) } else { Ok(()) };
        whole.map_err(Refusal::Entry)
    }

    /// Brings the species named in a draft to their keys, and learns a new one.
    fn settle_species(&mut self, draft: &mut Draft) -> Result<(), Refusal> {
        let Some(kind) = kind_of_entry(&draft.kind) else { return Ok(()) };
        if kind.kind == "species_set" {
            return self.learn_species(draft);
        }
        let species = &self.species;
        settle_record(kind.fields, &mut draft.body, species)
    }

    fn learn_species(&mut self, draft: &mut Draft) -> Result<(), Refusal> {
        let written = draft.body.get("species").and_then(Value::as_str).unwrap_or_default().to_string();
        let figures = draft.body.get("profile").and_then(Value::as_object).cloned().unwrap_or_default();
        let (key, profile) = self
            .species
            .with_own(&written, &figures, "this nursery")
            .map_err(|what| Refusal::Profile(SpeciesKey::new(&written), what))?;
        if let Some((name, other)) = self.species.shared_names(&profile).first() {
            return Err(Refusal::Profile(
                SpeciesKey::new(&written),
                ProfileFault::NameTaken { name: name.clone(), other: other.to_string() },
            ));
        }
        draft.body.insert("species".into(), Value::from(key.as_str()));
        self.species.insert(profile);
        Ok(())
    }

    /// What a draft makes is learned, so that other lines may speak of it whatever their order.
    fn learn(&mut self, what: &What) -> Result<(), Refusal> {
        match what {
            What::Tray(TrayEntry::Sown(sown)) => self.new_tray(&sown.tray),
            What::Tray(TrayEntry::PlantsReceived(received)) => self.new_tray(&received.tray),
            What::Tray(TrayEntry::MovedOn(moved)) => {
                self.trays.insert(moved.to.clone());
                Ok(())
            }
            What::Tray(TrayEntry::Relabelled(label)) if label.was.is_some() => self.new_tray(&label.tray),
            What::Seed(SeedEntry::LotReceived(lot)) => {
                if self.lots.insert(lot.lot.clone()) {
                    Ok(())
                } else {
                    Err(Refusal::LotInUse(lot.lot.clone()))
                }
            }
            What::Site(SiteEntry::BedSet(bed)) => {
                self.beds.insert(bed.bed.clone());
                Ok(())
            }
            What::Tray(_) | What::Seed(_) | What::Site(_) | What::Ground(_) | What::Book(_) | What::Foreign { .. } => {
                Ok(())
            }
        }
    }

    fn new_tray(&mut self, tray: &TrayCode) -> Result<(), Refusal> {
        if self.trays.insert(tray.clone()) { Ok(()) } else { Err(Refusal::TrayInUse(tray.clone())) }
    }

    /// Every tray, lot and bed an entry of a day speaks of must be known.
    pub fn check(&self, what: &What, on: Day) -> Result<(), Refusal> {
        for subject in crate::nursery::entry::subject::subjects(what) {
            match subject {
                Subject::Tray(tray) => self.known_tray(&tray, on)?,
                Subject::Lot(lot) => self.known_lot(&lot)?,
                Subject::Bed(bed) => self.known_bed(&bed)?,
                Subject::Place(_) | Subject::Site => {}
            }
        }
        match what {
            What::Tray(TrayEntry::HardeningBegun(begun)) => {
                begun.for_bed.as_ref().map_or(Ok(()), |bed| self.known_bed(bed))
            }
            What::Ground(GroundEntry::SurvivalCounted(look)) => {
                look.tray.as_ref().map_or(Ok(()), |tray| self.known_tray(tray, on))
            }
            What::Tray(TrayEntry::Sown(sown)) if is_unknown_lot(&sown.lot) && sown.species.is_none() => {
                let fault = FieldFault { field: "species".into(), problem: Problem::Missing };
                Err(Refusal::Entry(EntryFault::Field { kind: "sown".into(), fault }))
            }
            What::Tray(_) | What::Seed(_) | What::Site(_) | What::Ground(_) => Ok(()),
            What::Book(BookEntry::Weather(_) | BookEntry::Noted(_) | BookEntry::Withdrawn(_))
            | What::Foreign { .. } => Ok(()),
        }
    }

    fn nearest<'n>(&self, name: &str, among: impl Iterator<Item = &'n str>) -> Vec<String> {
        self.searched.set(self.searched.get() + 1);
        if self.searched.get() > MOST_SEARCHED { Vec::new() } else { name_search::nearest(name, among) }
    }

    fn known_tray(&self, tray: &TrayCode, on: Day) -> Result<(), Refusal> {
        if self.trays.contains(tray) {
            return Ok(());
        }
        if let Some((is, since)) = self.renamed.get(tray) {
            // Up to the day of the change the old code was the right one.
            let (was, is, since) = (tray.clone(), is.clone(), *since);
            return if on <= since { Ok(()) } else { Err(Refusal::TrayRenamed { was, is, since }) };
        }
        let nearest = self.nearest(tray.as_str(), self.trays.iter().map(TrayCode::as_str));
        Err(Refusal::UnknownTray(tray.clone(), nearest))
    }

    fn known_lot(&self, lot: &LotCode) -> Result<(), Refusal> {
        if self.lots.contains(lot) {
            return Ok(());
        }
        let nearest = self.nearest(lot.as_str(), self.lots.iter().map(LotCode::as_str));
        Err(Refusal::UnknownLot(lot.clone(), nearest))
    }

    fn known_bed(&self, bed: &BedName) -> Result<(), Refusal> {
        if self.beds.contains(bed) {
            return Ok(());
        }
        let nearest = self.nearest(bed.as_str(), self.beds.iter().map(BedName::as_str));
        Err(Refusal::UnknownBed(bed.clone(), nearest))
    }
}

/// Names of one sort: a bed and a tray may be called alike.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Space {
    Tray,
    Lot,
    Bed,
    Place,
    Container,
    Field,
}

impl Space {
    /// The sort of name a field holds.
    fn of(field: &str) -> Option<Space> {
        match field {
            "tray" | "from" | "to" | "was" => Some(Space::Tray),
            "lot" => Some(Space::Lot),
            "bed" | "for_bed" => Some(Space::Bed),
            "place" => Some(Space::Place),
            "container" => Some(Space::Container),
            "field" => Some(Space::Field),
            _ => None,
        }
    }
}

/// Every name in the book.
fn names_of(fold: &Fold) -> Vec<(Space, String)> {
    let site = fold.site();
    let trays = fold.trays().keys().map(|name| (Space::Tray, name.to_string()));
    let lots = fold.lots().keys().map(|name| (Space::Lot, name.to_string()));
    let beds = fold.beds().keys().map(|name| (Space::Bed, name.to_string()));
    let stood_on: BTreeSet<_> =
        fold.trays().values().flat_map(|story| &story.places).map(|spell| &spell.what).collect();
    let places = site.places.keys().chain(stood_on).map(|name| (Space::Place, name.to_string()));
    let used = fold.trays().values().flat_map(|story| &story.containers).filter_map(|spell| spell.what.as_ref());
    let used: BTreeSet<_> = used.collect();
    let containers = site.containers.keys().chain(used).map(|name| (Space::Container, name.to_string()));
    let fields = fold.beds().values().flat_map(|story| story.layout.each()).map(|(_, _, bed)| &bed.field);
    let fields = site.fields.keys().chain(fields).map(|name| (Space::Field, name.to_string()));
    trays.chain(lots).chain(beds).chain(places).chain(containers).chain(fields).collect()
}

fn settle_record(fields: &[Field], body: &mut Map<String, Value>, species: &Catalogue) -> Result<(), Refusal> {
    for field in fields {
        if let Some(value) = body.get_mut(field.name) {
            settle_value(&field.shape, value, species)?;
        }
    }
    Ok(())
}

fn settle_value(shape: &Shape, value: &mut Value, species: &Catalogue) -> Result<(), Refusal> {
    match (shape, value) {
        (Shape::Species, Value::String(written)) => {
            let key = species
                .find(written)
                .ok_or_else(|| Refusal::UnknownSpecies(SpeciesKey::new(written), species.nearest(written)))?;
            *written = key.as_str().to_string();
            Ok(())
        }
        (Shape::List(inner), Value::Array(items)) => {
            items.iter_mut().try_for_each(|item| settle_value(inner, item, species))
        }
        (Shape::Record(fields), Value::Object(map)) => settle_record(fields, map, species),
        _ => Ok(()),
    }
}

/// Brings the species in lines that already have an identity to their keys, and seals them anew. Only for lines that
/// this program itself makes (the sample).
pub(super) fn settle_sealed_species(lines: &mut [crate::nursery::envelope::Sealed]) {
    let species = Catalogue::built_in();
    let mut prev = None;
    for line in lines {
        let body: Map<String, Value> = serde_json::from_str(&line.body).unwrap_or_default();
        let mut draft =
            Draft { happened: line.happened, clock: line.clock, who: line.who.clone(), kind: line.kind.clone(), body };
        if let Some(kind) = kind_of_entry(&draft.kind) {
            // A name nobody knows stays as it is and becomes a Doubt.
            let _ = settle_record(kind.fields, &mut draft.body, &species);
        }
        *line = draft.seal(line.id.clone(), line.recorded, line.command, prev);
        prev = Some(line.hash);
    }
}
