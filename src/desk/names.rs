//! Names in an entry: every tray, lot, bed and species it speaks of must be known, and what it makes must be new.
//! Species are brought to the one key they are stored by.

use serde_json::{Map, Value};
use std::cell::Cell;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::refusal::{Refusal, is_a_share};
use crate::base::text::{folded, mixes_alphabets};
use crate::base::{BedName, ContainerName, Day, FieldName, LotCode, PlaceName, SpeciesKey, TrayCode, name_search};
use crate::nursery::entry::fault::{EntryFault, FieldFault, Problem};
use crate::nursery::entry::reading::{read_body, settle_body};
use crate::nursery::entry::shape::{Field, NameOf, Shape};
use crate::nursery::entry::subject::{Subject, is_unknown_lot};
use crate::nursery::entry::{GroundEntry, KindOfEntry, SeedEntry, SiteEntry, TrayEntry, What, kind_of_entry};
use crate::nursery::envelope::{Draft, canonical};
use crate::nursery::species::profile::FIGURES;
use crate::nursery::species::{Catalogue, Found, ProfileFault};
use crate::reckon::Fold;

/// What a draft says.
pub(super) fn read(draft: &Draft) -> Result<What, Refusal> {
    let body = canonical(&serde_json::Value::Object(draft.body.clone()));
    read_body(&draft.kind, &body).map_err(|_| {
        let problem = Problem::Unreadable;
        Refusal::Entry(EntryFault::Field {
            kind: draft.kind.clone(),
            fault: FieldFault { field: "body".into(), problem },
        })
    })
}

/// The names a batch is judged against: those in the book and those its own lines make.
pub(super) struct BatchNames<'f> {
    fold: &'f Fold,
    /// Every spelling by what is the same without case, accents, blanks and hyphens; made when a name is asked for that the
    /// book does not hold as it is written.
    spelled: Option<BTreeMap<(NameOf, String), BTreeSet<String>>>,
    new_trays: BTreeSet<TrayCode>,
    new_lots: BTreeSet<LotCode>,
    new_beds: BTreeSet<BedName>,
    species: Arc<Catalogue>,
    /// Another part of the book, of which the spelling counts as well.
    older: Option<&'f Fold>,
    /// How often the nearest names were looked for.
    searched: Cell<usize>,
}

/// The nearest names are looked for so often; a file of which more lines name nothing is another book's.
const MOST_SEARCHED: usize = 1000;

impl<'f> BatchNames<'f> {
    /// The names in the book.
    pub fn of(fold: &'f Fold) -> BatchNames<'f> {
        BatchNames {
            fold,
            spelled: None,
            new_trays: BTreeSet::new(),
            new_lots: BTreeSet::new(),
            new_beds: BTreeSet::new(),
            species: fold.site().species.clone(),
            older: None,
            searched: Cell::new(0),
        }
    }

    /// The spelling of another part of the book counts as well.
    pub(crate) fn spelled_also_as_in(self, older: Option<&'f Fold>) -> BatchNames<'f> {
        BatchNames { older, ..self }
    }

    /// Brings what a draft names to the spelling it has in the book, learns what it makes, and reads it.
    pub(crate) fn settle(&mut self, draft: &mut Draft) -> Result<What, Refusal> {
        let is_dots = |value: &Value| value.as_str().is_some_and(|text| matches!(text.trim(), "..." | "…"));
        if draft.body.values().any(is_dots) {
            return Err(Refusal::Dots);
        }
        self.settle_spelling(draft)?;
        self.settle_species(draft)?;
        let what = read(draft)?;
        self.learn(&what).map(|()| what)
    }

    /// Whether the book holds a name just as it is written.
    fn holds(&self, name_of: NameOf, written: &str) -> bool {
        let site = self.fold.site();
        match name_of {
            NameOf::Tray => TrayCode::new(written).is_ok_and(|code| self.fold.trays().contains_key(&code)),
            NameOf::Lot => LotCode::new(written).is_ok_and(|code| self.fold.lots().contains_key(&code)),
            NameOf::Bed => BedName::new(written).is_ok_and(|name| self.fold.beds().contains_key(&name)),
            NameOf::Place => PlaceName::new(written).is_ok_and(|name| site.places.contains_key(&name)),
            NameOf::Container => ContainerName::new(written).is_ok_and(|name| site.containers.contains_key(&name)),
            NameOf::Field => FieldName::new(written).is_ok_and(|name| site.fields.contains_key(&name)),
        }
    }

    /// Brings codes and names to the spelling they have in the book: case, accents, blanks and hyphens make no second
    /// tray. A name that is new keeps the spelling it came with.
    fn settle_spelling(&mut self, draft: &mut Draft) -> Result<(), Refusal> {
        let Some(kind) = kind_of_entry(&draft.kind) else { return Ok(()) };
        let mut changed = false;
        // A label may be written again with other letters: that is what a relabelling is for.
        let was = draft.body.get("was").and_then(Value::as_str).map(folded);
        for field in kind.fields {
            let Shape::Code(name_of) = field.shape else { continue };
            let Some(Value::String(written)) = draft.body.get_mut(field.name) else { continue };
            if self.holds(name_of, written) {
                continue;
            }
            let key = folded(written);
            if field.name == "tray" && was.as_ref() == Some(&key) {
                continue;
            }
            if mixes_alphabets(written) {
                return Err(Refusal::MixedAlphabets(written.clone()));
            }
            let spelled = self.spelled.get_or_insert_with(|| spelled(self.fold, self.older));
            let known = spelled.entry((name_of, key)).or_default();
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
        keep_variety(kind, &mut draft.body, species);
        settle_record(kind.fields, &mut draft.body, species)
    }

    fn learn_species(&mut self, draft: &mut Draft) -> Result<(), Refusal> {
        let written = draft.body.get("species").and_then(Value::as_str).unwrap_or_default().to_string();
        let figures = draft.body.get("profile").and_then(Value::as_object).cloned().unwrap_or_default();
        if let Some(share) = germination_of(&figures).filter(|pct| is_a_share(*pct)) {
            return Err(Refusal::ShareForPercent(share));
        }
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
        Arc::make_mut(&mut self.species).insert(profile);
        Ok(())
    }

    /// What a draft makes is learned, so that other lines may speak of it whatever their order.
    fn learn(&mut self, what: &What) -> Result<(), Refusal> {
        match what {
            What::Tray(TrayEntry::Sown(sown)) => self.new_tray(&sown.tray),
            What::Tray(TrayEntry::PlantsReceived(received)) => self.new_tray(&received.tray),
            What::Tray(TrayEntry::MovedOn(moved)) => {
                if !self.has_tray(&moved.to) {
                    self.is_no_bed(&moved.to)?;
                    self.new_trays.insert(moved.to.clone());
                }
                Ok(())
            }
            What::Tray(TrayEntry::Relabelled(label)) if label.was.is_some() => self.new_tray(&label.tray),
            What::Seed(SeedEntry::LotReceived(lot)) => {
                if self.has_lot(&lot.lot) || !self.new_lots.insert(lot.lot.clone()) {
                    return Err(Refusal::LotInUse(lot.lot.clone()));
                }
                Ok(())
            }
            What::Site(SiteEntry::BedSet(bed)) => {
                if !self.has_bed(&bed.bed) {
                    self.is_no_tray(&bed.bed)?;
                    self.new_beds.insert(bed.bed.clone());
                }
                Ok(())
            }
            What::Tray(_) | What::Seed(_) | What::Site(_) | What::Ground(_) | What::Book(_) | What::Foreign { .. } => {
                Ok(())
            }
        }
    }

    /// Every spelling of a name of one sort, in the book and in this batch.
    fn spellings(&mut self, name_of: NameOf, name: &str) -> Vec<String> {
        let spelled = self.spelled.get_or_insert_with(|| spelled(self.fold, self.older));
        spelled.get(&(name_of, folded(name))).into_iter().flatten().cloned().collect()
    }

    /// A new tray must not be called as a bed is: a line could not tell which of them is meant.
    fn is_no_bed(&mut self, tray: &TrayCode) -> Result<(), Refusal> {
        let beds = self.spellings(NameOf::Bed, tray.as_str());
        match beds.into_iter().find(|bed| BedName::new(bed).is_ok_and(|bed| self.has_bed(&bed))) {
            Some(other) => Err(Refusal::NameOfTwo { name: tray.to_string(), other, is_tray: true }),
            None => Ok(()),
        }
    }

    /// The same of a new bed.
    fn is_no_tray(&mut self, bed: &BedName) -> Result<(), Refusal> {
        let trays = self.spellings(NameOf::Tray, bed.as_str());
        match trays.into_iter().find(|tray| TrayCode::new(tray).is_ok_and(|tray| self.has_tray(&tray))) {
            Some(other) => Err(Refusal::NameOfTwo { name: bed.to_string(), other, is_tray: false }),
            None => Ok(()),
        }
    }

    fn new_tray(&mut self, tray: &TrayCode) -> Result<(), Refusal> {
        self.is_no_bed(tray)?;
        if self.has_tray(tray) || !self.new_trays.insert(tray.clone()) {
            return Err(Refusal::TrayInUse(tray.clone()));
        }
        Ok(())
    }

    /// Trays that were made, in the book.
    fn trays(&self) -> impl Iterator<Item = &TrayCode> {
        let made = self.fold.trays().iter().filter(|(_, story)| story.origin.is_some());
        made.map(|(code, _)| code).chain(&self.new_trays)
    }

    fn has_tray(&self, tray: &TrayCode) -> bool {
        let made = self.fold.trays().get(tray).is_some_and(|story| story.origin.is_some());
        made || self.new_trays.contains(tray)
    }

    fn has_lot(&self, lot: &LotCode) -> bool {
        let came = self.fold.lots().get(lot).is_some_and(|story| story.received.is_some());
        came || self.new_lots.contains(lot)
    }

    fn has_bed(&self, bed: &BedName) -> bool {
        let laid_out = self.fold.beds().get(bed).is_some_and(|story| story.layout.each().next().is_some());
        laid_out || self.new_beds.contains(bed)
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
            What::Seed(SeedEntry::LotReceived(lot)) => {
                let share = lot.initial_pct.map(|pct| pct.0).filter(|pct| is_a_share(*pct));
                share.map_or(Ok(()), |share| Err(Refusal::ShareForPercent(share)))
            }
            What::Tray(_) | What::Seed(_) | What::Site(_) | What::Ground(_) => Ok(()),
            What::Book(_) | What::Foreign { .. } => Ok(()),
        }
    }

    fn nearest<'n>(&self, name: &str, among: impl Iterator<Item = &'n str>) -> Vec<String> {
        self.searched.set(self.searched.get() + 1);
        if self.searched.get() > MOST_SEARCHED { Vec::new() } else { name_search::nearest(name, among) }
    }

    fn known_tray(&self, tray: &TrayCode, on: Day) -> Result<(), Refusal> {
        if self.has_tray(tray) {
            return Ok(());
        }
        if let Some((is, since)) = self.fold.ledger().renamed(tray) {
            // Up to the day of the change the old code was the right one.
            let was = tray.clone();
            return if on <= since { Ok(()) } else { Err(Refusal::TrayRenamed { was, is, since }) };
        }
        let nearest = self.nearest(tray.as_str(), self.trays().map(TrayCode::as_str));
        Err(Refusal::UnknownTray(tray.clone(), nearest))
    }

    fn known_lot(&self, lot: &LotCode) -> Result<(), Refusal> {
        if self.has_lot(lot) {
            return Ok(());
        }
        let came = self.fold.lots().iter().filter(|(_, story)| story.received.is_some());
        let known = came.map(|(code, _)| code).chain(&self.new_lots);
        let nearest = self.nearest(lot.as_str(), known.map(LotCode::as_str));
        Err(Refusal::UnknownLot(lot.clone(), nearest))
    }

    fn known_bed(&self, bed: &BedName) -> Result<(), Refusal> {
        if self.has_bed(bed) {
            return Ok(());
        }
        let laid_out = self.fold.beds().iter().filter(|(_, story)| story.layout.each().next().is_some());
        let known = laid_out.map(|(name, _)| name).chain(&self.new_beds);
        let nearest = self.nearest(bed.as_str(), known.map(BedName::as_str));
        Err(Refusal::UnknownBed(bed.clone(), nearest))
    }
}

/// Every name in the book by what is the same without case, accents, blanks and hyphens.
fn spelled(fold: &Fold, older: Option<&Fold>) -> BTreeMap<(NameOf, String), BTreeSet<String>> {
    let mut spelled = BTreeMap::new();
    for (name_of, name) in [Some(fold), older].into_iter().flatten().flat_map(names_of) {
        spelled.entry((name_of, folded(&name))).or_insert_with(BTreeSet::new).insert(name);
    }
    spelled
}

/// Every name in the book.
pub(super) fn names_of(fold: &Fold) -> Vec<(NameOf, String)> {
    let site = fold.site();
    let trays = fold.trays().keys().map(|name| (NameOf::Tray, name.to_string()));
    let lots = fold.lots().keys().map(|name| (NameOf::Lot, name.to_string()));
    let beds = fold.beds().keys().map(|name| (NameOf::Bed, name.to_string()));
    let stood_on: BTreeSet<_> =
        fold.trays().values().flat_map(|story| &story.places).map(|spell| &spell.what).collect();
    let places = site.places.keys().chain(stood_on).map(|name| (NameOf::Place, name.to_string()));
    let used = fold.trays().values().flat_map(|story| &story.containers).filter_map(|spell| spell.what.as_ref());
    let used: BTreeSet<_> = used.collect();
    let containers = site.containers.keys().chain(used).map(|name| (NameOf::Container, name.to_string()));
    let fields = fold.beds().values().flat_map(|story| story.layout.each()).map(|(_, _, bed)| &bed.field);
    let fields = site.fields.keys().chain(fields).map(|name| (NameOf::Field, name.to_string()));
    trays.chain(lots).chain(beds).chain(places).chain(containers).chain(fields).collect()
}

/// A variety or graft that stands beside the name of a species is kept where the entry has a field for it.
fn keep_variety(kind: &KindOfEntry, body: &mut Map<String, Value>, species: &Catalogue) {
    let has = |name: &str| kind.fields.iter().any(|field| field.name == name);
    if !has("variety") || body.contains_key("variety") {
        return;
    }
    let written = body.get("species").and_then(Value::as_str);
    let variety = written.and_then(|written| species.variety_beside(written, &species.find(written)?));
    body.extend(variety.map(|variety| ("variety".to_string(), Value::from(variety))));
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
            let key = known_species(species, written)?;
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

/// The one species meant by a name.
fn known_species(species: &Catalogue, written: &str) -> Result<SpeciesKey, Refusal> {
    match species.resolve(written) {
        Found::One(key) => Ok(key),
        Found::Several(plants) => Err(Refusal::SeveralPlants { written: written.trim().to_string(), plants }),
        Found::Nothing => match species.with_piece(written) {
            none if none.is_empty() => Err(Refusal::UnknownSpecies(SpeciesKey::new(written), species.nearest(written))),
            plants => Err(Refusal::SeveralPlants { written: written.trim().to_string(), plants }),
        },
    }
}

/// Brings the species in lines that already have an identity to their keys, and seals them again. Only for lines that
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

/// The germination of fresh seed among figures of a profile, by any of its names.
fn germination_of(figures: &Map<String, Value>) -> Option<f64> {
    let (_, others) = FIGURES.iter().find(|(name, _)| *name == GERMINATION)?;
    let written = [GERMINATION].iter().chain(*others).find_map(|name| figures.get(*name))?;
    written.as_f64().or_else(|| written.get("value")?.as_f64())
}

/// The figure of a profile that says how much of fresh seed germinates.
const GERMINATION: &str = "germination_fresh_pct";
