//! From the entries of a bed to its story. Refuses nothing: what cannot be true together becomes a Doubt and the
//! difference is booked under unexplained.

use std::sync::Arc;

use super::bed::{
    BedStory, BlockedSpot, Brought, CameFrom, CohortStory, Death, GroundLook, LightLook, NurseStory, PartOfBed,
    SoilLook, Sprayed, SurvivalLook, Watering, WorkDone,
};
use super::bed_books::{self, Book};
use super::bed_cuts;
use super::lineage::{Lineage, lineage_of, sicknesses_of};
use super::place::share_read;
use super::tray::Since;
use super::tray_fold::missed_of;
use crate::base::{BedName, Day, SpeciesKey, TrayCode};
use crate::nursery::entry::shape::spot;
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::types::{CutWhat, Spot, Text};
use crate::nursery::entry::{
    BedSet, Entry, GroundEntry, LightRead, NurseCounted, NurseCut, NursePlanted, OrderKey, Outplanted, PlantsFound,
    SiteEntry, SoilChecked, SownInBed, SurvivalCounted, TrayEntry, What,
};
use crate::nursery::pest::{DiedOf, died_of, harms};
use crate::nursery::species::Profile;
use crate::reckon::bed::named_places::{self, Named, NotThere};
use crate::reckon::bed::positions;
use crate::reckon::impossible::doubts_of;
use crate::reckon::ledger::Ledger;
use crate::reckon::picture::{Doubt, DoubtKind};
use crate::reckon::site::Site;
use crate::reckon::tray::closed::closes;
use crate::science::soil::{at_field_capacity, rod_resistance_mpa};

/// Distance of nurse plants that were counted but never written as planted, where their profile gives none, m (ours).
const UNWRITTEN_SPACING_M: f64 = 1.0;
/// Trees that were planted so long ago stand above young plants and shade them (ours).
const SHADES_AFTER_DAYS: i32 = 365;
/// What wants shade and is planted no wider in the row stays a shrub beneath others, m (ours; coffee and cacao: 2 to 3 m).
const SHRUB_ROOM_M: f64 = 3.0;

/// Folds the entries of a bed.
pub(crate) fn fold_bed(ledger: &Ledger, site: &Site, name: &BedName) -> BedStory {
    let mut fold = BedFold { ledger, site, story: BedStory::blank(name.clone()), order: 0, blocked_spots: Vec::new() };
    let subject = Subject::Bed(name.clone());
    // Layouts first: the first one reaches back.
    for entry in ledger.of(&subject) {
        fold.lay_out(entry);
    }
    fold.note_blocked_off_the_grid();
    for (order, entry) in ledger.of(&subject).enumerate() {
        fold.order = order;
        fold.story.last_on = fold.story.last_on.max(Some(entry.happened));
        fold.take(entry);
    }
    let never_laid_out = fold.story.layout.each().next().is_none();
    if let Some(first) = ledger.of(&subject).next().filter(|_| never_laid_out) {
        fold.doubt(first, DoubtKind::UnknownBed(name.clone()));
    }
    fold.note_off_the_grid();
    fold.story.doubts.extend(doubts_of(ledger, &subject));
    fold.story
}

struct BedFold<'a> {
    ledger: &'a Ledger,
    site: &'a Site,
    story: BedStory,
    order: usize,
    blocked_spots: Vec<(Arc<Entry>, Vec<Spot>)>,
}

impl BedFold<'_> {
    fn lay_out(&mut self, entry: &Arc<Entry>) {
        match &entry.what {
            What::Site(SiteEntry::BedSet(set)) => {
                for line in &set.plan {
                    self.species(entry, &line.species);
                }
                self.story.layout.add(entry.happened, entry.id.clone(), BedSet::clone(set));
            }
            What::Site(SiteEntry::PositionsBlocked(blocked)) => {
                self.blocked_spots.push((entry.clone(), blocked.at.clone()));
                let spots = spots(Some(&blocked.at));
                let blocked = |spot| BlockedSpot { spot, day: entry.happened, entry: entry.id.clone() };
                self.story.blocked.extend(spots.into_iter().map(blocked));
            }
            What::Site(_) | What::Seed(_) | What::Tray(_) | What::Ground(_) | What::Book(_) | What::Foreign { .. } => {}
        }
    }

    fn take(&mut self, entry: &Arc<Entry>) {
        match &entry.what {
            What::Ground(what) => self.take_ground(entry, what),
            What::Tray(TrayEntry::Held(held)) => self.story.held.write(Since::hold(entry, held)),
            What::Tray(TrayEntry::Released(released)) => {
                self.story.held.let_go(&mut Vec::new(), released);
            }
            What::Tray(TrayEntry::PestSeen(pest)) => {
                let stood = self.hosts_standing(&pest.what.0);
                self.story.pests.push(Since::pest(entry, pest, Some(stood)));
            }
            What::Tray(TrayEntry::Treated(treated)) => {
                self.story.treatments.write(entry.happened, treated, entry.id.clone());
            }
            What::Tray(_) | What::Site(_) | What::Seed(_) | What::Book(_) | What::Foreign { .. } => {}
        }
    }

    fn take_ground(&mut self, entry: &Arc<Entry>, what: &GroundEntry) {
        self.note_no_such_position(entry, what);
        match what {
            GroundEntry::SownInBed(sown) => self.sown(entry, sown),
            GroundEntry::PlantsFound(found) => self.found(entry, found),
            GroundEntry::NursePlanted(planted) => self.nurse_planted(entry, planted),
            GroundEntry::NurseCounted(look) => self.nurse_counted(entry, look),
            GroundEntry::NurseMeasured(look) => {
                let species = self.species(entry, &look.nurse);
                // The tape measures the plants that give the shade: the oldest that live, else the youngest.
                let nurses = &mut self.story.nurses;
                let at = nurses.iter().position(|nurse| nurse.nurse == species && nurse.alive > 0);
                let at = at.or_else(|| nurses.iter().rposition(|nurse| nurse.nurse == species));
                if let Some(nurse) = at.and_then(|at| nurses.get_mut(at)) {
                    nurse.measured = Some((entry.happened, look.height_m.0, look.crown_radius_m.0));
                }
            }
            GroundEntry::NurseCut(cut) => self.nurse_cut(entry, cut),
            GroundEntry::LightRead(read) => self.light_read(entry, read),
            GroundEntry::SoilChecked(check) => self.soil_checked(entry, check),
            GroundEntry::PlantsWatered(given) => self.story.watered.push(Watering {
                day: entry.happened,
                count: given.count.map(|count| count.0),
                litres_each: given.litres_each.map(|litres| litres.0),
                entry: entry.id.clone(),
            }),
            GroundEntry::Prepared(work) => self.story.work.push(WorkDone {
                day: entry.happened,
                task: work.task,
                depth_cm: work.depth_cm.map(|depth| depth.0),
                part: part_of_bed(work.rows.as_ref(), work.at.as_ref()),
                entry: entry.id.clone(),
            }),
            GroundEntry::Outplanted(out) => self.outplanted(entry, out),
            GroundEntry::PlantsLost(lost) => {
                let species = self.species(entry, &lost.species);
                let (lived, all) = (self.nurses_of(&species), self.story.living_of(&species));
                let grown = self.grown_of(entry.happened, &species);
                self.remove(entry, &species, lost.count.0, true);
                self.note_loss(entry, &species, lived, self.nurses_of(&species));
                self.note_grown_loss(entry, &species, grown);
                self.died(entry, &species, (all, lost.count.0), Some(&lost.cause), None);
            }
            GroundEntry::SurvivalCounted(look) => self.survival_counted(entry, look),
        }
    }

    fn sown(&mut self, entry: &Arc<Entry>, sown: &SownInBed) {
        let species = self.species(entry, &sown.species);
        self.note_no_room(entry, &species, sown.holes.0);
        let mut cohort = cohort(entry, Some(species), sown.holes.0, sown.rows.as_ref(), sown.at.as_ref());
        cohort.at_stake = true;
        self.story.cohorts.push(cohort);
    }

    fn found(&mut self, entry: &Arc<Entry>, found: &PlantsFound) {
        let species = self.species(entry, &found.species);
        let mut cohort = cohort(entry, Some(species), found.alive.0, found.rows.as_ref(), found.at.as_ref());
        cohort.day = found.planted_about.unwrap_or(entry.happened);
        cohort.found = true;
        self.story.cohorts.push(cohort);
    }

    fn outplanted(&mut self, entry: &Arc<Entry>, out: &Outplanted) {
        let key = self.ledger.key_of(entry);
        let tray = self.ledger.tray_at(&out.tray, &key);
        let species = self.species_of_tray(&out.tray, &tray, &key);
        let species = species.map(|written| self.species(entry, &written));
        self.brought(entry, out, &tray, &key);
        self.came_from(entry, out, &tray, &key);
        if let (Some(nurse), Some((row_m, in_row_m))) = (&species, out.row_m.zip(out.in_row_m)) {
            // Plants of a tray begin a row of nurse plants; they need no place in a plan.
            self.story.nurses.push(NurseStory::set(
                (nurse.clone(), out.count.0),
                entry.happened,
                (row_m.0, in_row_m.0),
                entry.id.clone(),
            ));
            return;
        }
        if let (Some(species), Some(layout)) = (&species, self.story.layout.on(entry.happened)) {
            let named = |line: &SpeciesKey| self.site.species_key(line).as_ref() == Some(species) || line == species;
            if !layout.plan.iter().any(|line| named(&line.species)) {
                let (bed, species) = (self.story.name.clone(), species.clone());
                self.doubt(entry, DoubtKind::NotInPlan { bed, species });
            }
        }
        if let Some(species) = &species {
            self.note_no_room(entry, species, out.count.0);
        }
        let mut cohort = cohort(entry, species, out.count.0, out.rows.as_ref(), out.at.as_ref());
        cohort.tray = Some(tray);
        self.story.cohorts.push(cohort);
    }

    /// Sicknesses of the tray that plants came from.
    fn brought(&mut self, entry: &Arc<Entry>, out: &Outplanted, tray: &TrayCode, key: &OrderKey) {
        let seen = sicknesses_of(self.ledger, self.site, &out.tray, key);
        self.story.brought.extend(seen.into_iter().map(|seen| Brought {
            tray: tray.clone(),
            plants: out.count.0,
            planted: entry.happened,
            seen,
            place: None,
            entry: entry.id.clone(),
        }));
    }

    /// Waiting times of the tray that run on the day of planting go along with its plants, and what was written of the places where
    /// they had stood.
    fn came_from(&mut self, entry: &Arc<Entry>, out: &Outplanted, tray: &TrayCode, key: &OrderKey) {
        let Lineage { treatments, stays, pests, .. } = lineage_of(self.ledger, self.site, tray, key);
        let runs = treatments.into_iter().filter(|one| closes(one, entry.happened));
        self.story.sprayed.extend(runs.map(|treatment| Sprayed { tray: tray.clone(), treatment }));
        self.story.came_from.push(CameFrom {
            tray: tray.clone(),
            plants: out.count.0,
            planted: entry.happened,
            stays,
            clear: pests.into_iter().filter(Since::finds_none).collect(),
            entry: entry.id.clone(),
        });
    }

    /// Plants that died, were taken out or were counted as dead, of what was written; so many lived before.
    fn died(
        &mut self,
        entry: &Arc<Entry>,
        species: &SpeciesKey,
        (lived, dead): (u32, u32),
        of: Option<&Text>,
        counted: Option<u32>,
    ) {
        let alive = self.story.living_of(species);
        self.story.deaths.push(Death {
            day: entry.happened,
            species: species.clone(),
            plants: lived.saturating_sub(alive),
            back: if counted.is_some() { alive.saturating_sub(lived) } else { 0 },
            dead,
            // A count of one tray's plants says nothing of the others that live there.
            alive: counted.map_or(alive, |found| found.max(alive)),
            is_count: counted.is_some(),
            of: of.map_or(DiedOf::NotSaid, |of| in_bed(died_of(&of.0))),
            what: of.map(|of| unlisted(&of.0)).unwrap_or_default(),
            entry: entry.id.clone(),
        });
    }

    /// Nurse plants that were felled or lifted are out.
    fn felled(&mut self, entry: &Arc<Entry>, species: &SpeciesKey, lived: u32) {
        let alive = self.story.living_of(species);
        self.story.deaths.push(Death {
            day: entry.happened,
            species: species.clone(),
            plants: lived.saturating_sub(alive),
            back: 0,
            dead: 0,
            alive,
            is_count: false,
            of: DiedOf::Harm,
            what: String::new(),
            entry: entry.id.clone(),
        });
    }

    /// Living plants that a sickness may be on: those set out, of which it has hosts among them; else the nurse plants.
    fn hosts_standing(&self, what: &str) -> u64 {
        let is_host =
            |species: &SpeciesKey| harms(what, self.site.profile(species).map(|profile| profile.scientific.as_str()));
        let cohorts = self.story.cohorts.iter().filter(|cohort| cohort.species.as_ref().is_none_or(is_host));
        let set_out: u64 = cohorts.map(|cohort| u64::from(cohort.living)).sum();
        let nurses = self.story.nurses.iter().filter(|nurse| is_host(&nurse.nurse));
        if set_out > 0 { set_out } else { nurses.map(|nurse| u64::from(nurse.alive)).sum() }
    }

    /// More out than the plan has positions for, where it has any for the species. A plant may stand beside a stump, so
    /// blocked spots do not count.
    fn note_no_room(&mut self, entry: &Arc<Entry>, species: &SpeciesKey, out: u32) {
        let Some(layout) = self.story.layout.on(entry.happened) else { return };
        let positions = positions::whole_grid(self.site, layout, species);
        if positions > 0 && out > positions.saturating_sub(self.story.living_of(species)) {
            // What is told is what the verdict calls open.
            let open = positions::room(&self.story, self.site, layout, species).open;
            let (bed, species) = (self.story.name.clone(), species.clone());
            self.doubt(entry, DoubtKind::MoreOutThanPositions { bed, species, out, open, positions });
        }
    }

    /// Rows or places that the bed does not have.
    fn note_no_such_position(&mut self, entry: &Arc<Entry>, what: &GroundEntry) {
        let out = if let GroundEntry::Outplanted(out) = what { Some(out) } else { None };
        let of_tray = out.and_then(|out| {
            let key = self.ledger.key_of(entry);
            self.species_of_tray(&out.tray, &self.ledger.tray_at(&out.tray, &key), &key)
        });
        let planting = if let GroundEntry::NursePlanted(planted) = what { Some(&**planted) } else { None };
        let named = named_places::named(what, of_tray.as_ref());
        // A tray of which nobody knows the species can have gone on any grid.
        let Some(layout) = self.story.layout.on(entry.happened) else { return };
        if let Some(lacking) = named_places::not_there(&self.story, self.site, layout, &named, planting) {
            self.doubt_position(entry, lacking);
        }
    }

    /// Blocked spots that no grid of their day has.
    fn note_blocked_off_the_grid(&mut self) {
        for (entry, at) in std::mem::take(&mut self.blocked_spots) {
            let named = Named { species: None, nurse: false, rows: None, at: Some(&at) };
            let Some(layout) = self.story.layout.on(entry.happened) else { continue };
            if let Some(lacking) = named_places::not_there(&self.story, self.site, layout, &named, None) {
                self.doubt_position(&entry, lacking);
            }
        }
    }

    fn doubt_position(&mut self, entry: &Arc<Entry>, lacking: NotThere) {
        let NotThere { written, rows, places } = lacking;
        let bed = self.story.name.clone();
        self.doubt(entry, DoubtKind::NoSuchPosition { bed, written, rows, places });
    }

    /// What the tray had to hand on by then; where nothing did, what its own entries of any day say.
    fn species_of_tray(&self, written: &TrayCode, tray: &TrayCode, key: &OrderKey) -> Option<SpeciesKey> {
        let by_then = lineage_of(self.ledger, self.site, written, key).species;
        by_then.or_else(|| {
            let last = OrderKey { happened: self.ledger.view().day.plus(1), ..key.clone() };
            lineage_of(self.ledger, self.site, tray, &last).species
        })
    }

    fn nurse_planted(&mut self, entry: &Arc<Entry>, planted: &NursePlanted) {
        let nurse = self.species(entry, &planted.nurse);
        let spacing_m = (planted.row_m.0, planted.in_row_m.0);
        let row = NurseStory::set((nurse, planted.count.0), entry.happened, spacing_m, entry.id.clone());
        self.story.nurses.push(NurseStory { offset_m: planted.offset_m.map(|offset| offset.0), ..row });
    }

    /// A count of all nurse plants of a species in the bed; one of some rows settles nothing.
    fn nurse_counted(&mut self, entry: &Arc<Entry>, look: &NurseCounted) {
        let species = self.species(entry, &look.nurse);
        let of_species = |cohort: &CohortStory| cohort.species.as_ref() == Some(&species);
        let part = in_part(look.rows.as_ref(), look.at.as_ref());
        let stood = self.story.living_of(&species);
        if self.story.nurses.iter().any(|nurse| nurse.nurse == species) {
            if !part {
                let lived = self.nurses_of(&species);
                self.settle_nurses(entry, &species, look.alive.0, 0);
                self.note_loss(entry, &species, lived, look.alive.0);
            }
            self.nurses_died(entry, &species, stood, look);
        } else if self.story.cohorts.iter().any(of_species) {
            if !part {
                self.settle_cohorts(entry, &species, (look.alive.0, 0), &of_species);
                self.note_loss(entry, &species, stood, look.alive.0);
            }
            self.nurses_died(entry, &species, stood, look);
            return;
        } else {
            self.nurses_never_written(entry, &species, look.alive.0);
            self.nurses_died(entry, &species, stood, look);
        }
        // Bunches are shown once for the species, on its oldest cohort that lives.
        let mut bunches = look.bunches_showing.map(|bunches| bunches.0);
        for nurse in self.story.nurses.iter_mut().filter(|nurse| nurse.nurse == species) {
            nurse.counted_on = if part { nurse.counted_on } else { Some(entry.happened) };
            if look.bunches_showing.is_some() {
                nurse.bunches_showing = if nurse.alive > 0 { bunches.take() } else { None };
            }
        }
    }

    /// Nurse plants that a count found dead, of what it names: one at least where it names anything. A whole count that names nothing
    /// answers what others of them died of; else it asks nothing, for many are felled and nobody writes it.
    fn nurses_died(&mut self, entry: &Arc<Entry>, species: &SpeciesKey, stood: u32, look: &NurseCounted) {
        let alive = self.story.living_of(species);
        let whole = !in_part(look.rows.as_ref(), look.at.as_ref());
        let gone = stood.saturating_sub(alive);
        let of_it = |death: &Death| death.species == *species && death.of == DiedOf::Sickness;
        let answers = || whole && self.story.deaths.iter().any(of_it);
        if look.cause.is_some() {
            self.died(entry, species, (stood, gone.max(1)), look.cause.as_ref(), whole.then_some(alive));
        } else if answers() {
            self.died(entry, species, (stood, gone), None, Some(alive));
        }
    }

    /// Living nurse plants of a species.
    fn nurses_of(&self, species: &SpeciesKey) -> u32 {
        let nurses = self.story.nurses.iter().filter(|nurse| nurse.nurse == *species);
        nurses.map(|nurse| nurse.alive).fold(0, u32::saturating_add)
    }

    /// A fall of nurse plants lets light in like a felling.
    fn note_loss(&mut self, entry: &Arc<Entry>, nurse: &SpeciesKey, lived: u32, alive: u32) {
        if alive < lived {
            self.story.cuts.push(GroundLook {
                day: entry.happened,
                nurse: nurse.clone(),
                what: None,
                plants: Some(lived - alive),
                share: bed_cuts::share_of(lived - alive, lived),
                lets_light_in: true,
                lifts_tubers: false,
                yield_kg: None,
                order: self.order,
                entry: entry.id.clone(),
            });
        }
    }

    /// Living plants of a species, no nurse plants, that have grown above young ones and shade them: found, or planted a year before; of
    /// shrubs that stand in the shade of others, none.
    fn grown_of(&self, on: Day, species: &SpeciesKey) -> u32 {
        if self.site.profile(species).is_some_and(|profile| stands_beneath(profile))
            || self.story.nurses.iter().any(|nurse| nurse.nurse == *species)
        {
            return 0;
        }
        let grown = |cohort: &&CohortStory| cohort.found || on.days_since(cohort.day) >= SHADES_AFTER_DAYS;
        let of_it = self.story.cohorts.iter().filter(|cohort| cohort.species.as_ref() == Some(species));
        of_it.filter(grown).map(|cohort| cohort.living).fold(0, u32::saturating_add)
    }

    /// Where of so many grown plants some are gone, light comes in as after a felling.
    fn note_grown_loss(&mut self, entry: &Arc<Entry>, species: &SpeciesKey, lived: u32) {
        self.note_loss(entry, species, lived, self.grown_of(entry.happened, species));
    }

    fn nurses_never_written(&mut self, entry: &Arc<Entry>, species: &SpeciesKey, alive: u32) {
        if alive == 0 {
            return;
        }
        let profile = self.site.profile(species);
        let row_m = profile.and_then(|profile| profile.row_m.as_ref()).map(|figure| figure.value);
        let in_row_m = profile.and_then(|profile| profile.in_row_m.as_ref()).map(|figure| figure.value);
        let spacing_m = (row_m.unwrap_or(UNWRITTEN_SPACING_M), in_row_m.unwrap_or(UNWRITTEN_SPACING_M));
        self.story.nurses.push(NurseStory::set((species.clone(), 0), entry.happened, spacing_m, entry.id.clone()));
        self.settle_nurses(entry, species, alive, 0);
    }

    fn nurse_cut(&mut self, entry: &Arc<Entry>, cut: &NurseCut) {
        let species = self.species(entry, &cut.nurse);
        let lived = self.story.living_of(&species);
        // A share of leaves is no number of plants.
        let of_plants = |share: f64| (f64::from(lived) * share).round() as u32;
        let shared = cut.share.filter(|_| cut.what != CutWhat::Leaves).map(|share| of_plants(share.0));
        let plants = cut.count.map(|count| count.0).or(shared);
        let effect = bed_cuts::effect(self.site, &species, cut, lived);
        let more = self.more_cut_than_stood(cut, effect.ends_plants, &species, lived);
        if effect.ends_plants {
            // What is more than stood is said below, of the cut.
            self.remove(entry, &species, plants.unwrap_or(0), more.is_none());
            self.felled(entry, &species, lived);
        }
        if let Some(more) = more {
            self.doubt(entry, more);
        }
        let none = plants == Some(0);
        self.story.cuts.push(GroundLook {
            day: entry.happened,
            nurse: species,
            what: Some(cut.what),
            plants,
            share: effect.share,
            lets_light_in: effect.lets_light_in && !none,
            lifts_tubers: effect.lifts_tubers && !none,
            yield_kg: cut.yield_kg.map(|kg| kg.0),
            order: self.order,
            entry: entry.id.clone(),
        });
    }

    /// A cut of more plants than stand, or of a share of none where some were planted. Stems can be more than plants.
    fn more_cut_than_stood(
        &self,
        cut: &NurseCut,
        ends_plants: bool,
        species: &SpeciesKey,
        stood: u32,
    ) -> Option<DoubtKind> {
        let known = self.story.nurses.iter().any(|nurse| nurse.nurse == *species) || stood > 0;
        let of_plants = ends_plants || cut.what == CutWhat::Leaves || stood == 0;
        let counted = cut.count.map(|count| count.0).filter(|count| of_plants && *count > stood);
        let of_none = stood == 0 && cut.count.is_none() && cut.share.is_some_and(|share| share.0 > 0.0);
        let (bed, nurse) = (self.story.name.clone(), species.clone());
        let more = DoubtKind::MoreCutThanStood { bed, nurse, cut: counted, stood };
        (known && (counted.is_some() || of_none)).then_some(more)
    }

    fn light_read(&mut self, entry: &Arc<Entry>, read: &LightRead) {
        if let Some(share) = share_read(read) {
            self.story.light.push(LightLook {
                day: entry.happened,
                share,
                pairs: read.readings.as_ref().map_or(0, |pairs| u32::try_from(pairs.len()).unwrap_or(u32::MAX)),
                sky: read.sky,
                part: part_of_bed(read.rows.as_ref(), read.at.as_ref()),
                order: self.order,
                entry: entry.id.clone(),
            });
        }
    }

    fn soil_checked(&mut self, entry: &Arc<Entry>, check: &SoilChecked) {
        let by_rod = check.push_kg.zip(check.rod_mm).and_then(|(push, rod)| rod_resistance_mpa(push.0, rod.0).ok());
        let written = check.resistance_mpa.map(|mpa| mpa.0);
        self.story.soil.push(SoilLook {
            day: entry.happened,
            resistance_mpa: written.or(by_rod),
            rod_mm: check.rod_mm.map(|rod| rod.0).filter(|_| written.is_none() && by_rod.is_some()),
            place: check.r#where,
            depth_cm: check.depth_cm.map(|depth| depth.0),
            at_field_capacity: at_field_capacity(check.wet, check.days_since_soaking.map(|days| days.0)),
            wet: check.wet,
            soaked_days: check.days_since_soaking.map(|days| days.0),
            tubers: check.tubers,
            part: part_of_bed(check.rows.as_ref(), check.at.as_ref()),
            entry: entry.id.clone(),
        });
    }

    /// A count of the living and the dead. Without rows or places it is a count of all cohorts it matches; with them a
    /// look at a part, which books only the dead it saw.
    fn survival_counted(&mut self, entry: &Arc<Entry>, look: &SurvivalCounted) {
        let species = self.species(entry, &look.species);
        let tray = look.tray.as_ref().map(|tray| self.ledger.tray_at(tray, &self.ledger.key_of(entry)));
        let matches = |cohort: &CohortStory| {
            cohort.species.as_ref() == Some(&species)
                && (tray.is_none() || cohort.tray == tray)
                && look.outplanted_on.is_none_or(|day| cohort.day == day)
        };
        let youngest = self.story.cohorts.iter().filter(|cohort| matches(cohort)).map(|cohort| cohort.day).max();
        let lived = self.story.living_of(&species);
        let grown = self.grown_of(entry.happened, &species);
        let part = part_of_bed(look.rows.as_ref(), look.at.as_ref());
        let survival = SurvivalLook {
            day: entry.happened,
            species: species.clone(),
            tray: tray.clone(),
            outplanted_on: look.outplanted_on.or(youngest),
            of_all: look.tray.is_none() && look.outplanted_on.is_none(),
            cohorts: Vec::new(),
            part,
            alive: look.alive.0,
            dead: look.dead.0,
            entry: entry.id.clone(),
        };
        if survival.part.is_some() {
            let died = look.dead.0.saturating_sub(self.dead_seen_before(&survival));
            bed_books::bury(&mut self.story.cohort_books(matches), u64::from(died));
        } else if youngest.is_some() {
            self.note_alive_again(entry, &species, look.alive.0, &matches);
            self.settle_cohorts(entry, &species, (look.alive.0, look.dead.0), &matches);
            // The living were counted: how many went out too many is settled.
            self.story.doubts.retain(|doubt| !is_about_room(&doubt.kind, &species));
        } else if self.story.nurses.iter().any(|nurse| nurse.nurse == species) {
            self.settle_nurses(entry, &species, look.alive.0, look.dead.0);
        } else if look.alive.0 > 0 {
            let mut unwritten = cohort(entry, Some(species.clone()), 0, None, None);
            unwritten.day = look.outplanted_on.unwrap_or(entry.happened);
            unwritten.tray = tray.clone();
            unwritten.found = true;
            self.story.cohorts.push(unwritten);
            self.settle_cohorts(entry, &species, (look.alive.0, look.dead.0), &matches);
        }
        self.note_grown_loss(entry, &species, grown);
        self.died(entry, &species, (lived, look.dead.0), look.causes.as_ref(), Some(look.alive.0));
        let counted = self.story.cohorts.iter().filter(|cohort| matches(cohort));
        let cohorts = counted.map(|cohort| cohort.entry.clone()).collect();
        self.story.survival.push(SurvivalLook { cohorts, ..survival });
    }

    /// More alive than lived by the last count and what was planted since, beyond a miscount. A later count that agrees settles it.
    fn note_alive_again(
        &mut self,
        entry: &Arc<Entry>,
        species: &SpeciesKey,
        alive: u32,
        matches: &impl Fn(&CohortStory) -> bool,
    ) {
        self.story
            .doubts
            .retain(|doubt| !matches!(&doubt.kind, DoubtKind::AliveAgain { species: of, .. } if of == species));
        let books = self.story.cohort_books(matches);
        let (lived, there) = (bed_books::living(&books), bed_books::there(&books));
        // What is more than ever stood there is said by another doubt.
        let is_more = u64::from(alive) > lived + missed_of(lived) && u64::from(alive) <= there;
        if is_more {
            let (bed, lived) = (self.story.name.clone(), u32::try_from(lived).unwrap_or(u32::MAX));
            self.doubt(entry, DoubtKind::AliveAgain { bed, species: species.clone(), alive, lived });
        }
    }

    /// The most dead that earlier looks saw of the same planting in the same rows and places: they are booked.
    fn dead_seen_before(&self, look: &SurvivalLook) -> u32 {
        let same = |other: &&SurvivalLook| {
            (&other.species, &other.tray, other.of_all, &other.part)
                == (&look.species, &look.tray, look.of_all, &look.part)
                && (look.of_all || other.outplanted_on == look.outplanted_on)
        };
        self.story.survival.iter().filter(same).map(|other| other.dead).max().unwrap_or(0)
    }

    fn settle_cohorts(
        &mut self,
        entry: &Arc<Entry>,
        species: &SpeciesKey,
        (alive, dead): (u32, u32),
        matches: &impl Fn(&CohortStory) -> bool,
    ) {
        let settled = settle(&mut self.story.cohort_books(matches), alive, dead);
        self.more_seen(entry, species, (alive, dead), settled);
    }

    fn settle_nurses(&mut self, entry: &Arc<Entry>, species: &SpeciesKey, alive: u32, dead: u32) {
        let settled = settle(&mut self.story.nurse_books(species), alive, dead);
        self.more_seen(entry, species, (alive, dead), settled);
    }

    fn more_seen(&mut self, entry: &Arc<Entry>, species: &SpeciesKey, (alive, dead): (u32, u32), settled: Settled) {
        self.story.unexplained += settled.added;
        if settled.added > 0 || settled.more_than_there {
            let (bed, species, planted) = (self.story.name.clone(), species.clone(), settled.planted);
            self.doubt(entry, DoubtKind::MoreAliveThanPlanted { bed, species, alive, dead, planted });
        }
    }

    /// Takes plants of a species out of the living: those set out first, then nurse plants. What never lived by the
    /// books is unexplained, with a Doubt where nothing else says so.
    fn remove(&mut self, entry: &Arc<Entry>, species: &SpeciesKey, count: u32, doubted: bool) {
        let of_species = |cohort: &CohortStory| cohort.species.as_ref() == Some(species);
        let lived = self.story.living_of(species);
        let wanted = u64::from(count);
        let mut left = wanted - bed_books::bury(&mut self.story.cohort_books(of_species), wanted);
        left -= bed_books::bury(&mut self.story.nurse_books(species), left);
        if left == 0 {
            return;
        }
        if !self.story.cohorts.iter().any(of_species) && !self.story.nurses.iter().any(|nurse| nurse.nurse == *species)
        {
            let mut unwritten = cohort(entry, Some(species.clone()), 0, None, None);
            unwritten.found = true;
            self.story.cohorts.push(unwritten);
        }
        let mut books: Vec<Book<'_>> = self.story.cohort_books(of_species);
        if books.is_empty() {
            books = self.story.nurse_books(species);
        }
        let added = bed_books::add_dead(&mut books, left);
        self.story.unexplained += added;
        if doubted {
            let (bed, species) = (self.story.name.clone(), species.clone());
            self.doubt(entry, DoubtKind::MoreDeadThanLived { bed, species, dead: count, lived });
        }
    }

    /// The key of a species as written; where nobody knows it, what was written, with a Doubt.
    fn species(&mut self, entry: &Arc<Entry>, written: &SpeciesKey) -> SpeciesKey {
        self.site.species_key(written).unwrap_or_else(|| {
            self.doubt(entry, DoubtKind::UnknownSpecies(written.clone()));
            written.clone()
        })
    }

    /// Raises a Doubt; one of the same kind gets the entry too.
    fn doubt(&mut self, entry: &Arc<Entry>, kind: DoubtKind) {
        match self.story.doubts.iter_mut().find(|doubt| doubt.kind == kind) {
            Some(doubt) if doubt.entries.contains(&entry.id) => {}
            Some(doubt) => doubt.entries.push(entry.id.clone()),
            None => self.story.doubts.push(Doubt { day: entry.happened, kind, entries: vec![entry.id.clone()] }),
        }
    }

    /// Living plants for which a newer layout has no room.
    fn note_off_the_grid(&mut self) {
        let day = self.ledger.view().day;
        let layouts = self.story.layout.each().count();
        let Some((entry, layout)) = self.story.layout.entry_on(day).filter(|_| layouts > 1) else { return };
        let from = self.story.layout.each().find(|(_, id, _)| id == entry).map_or(day, |(from, _, _)| *from);
        let species: std::collections::BTreeSet<SpeciesKey> =
            self.story.cohorts.iter().filter_map(|cohort| cohort.species.clone()).collect();
        let mut doubts = Vec::new();
        for species in species {
            let plants = positions::off_the_grid(&self.story, self.site, layout, &species);
            if plants > 0 {
                let kind = DoubtKind::OffTheGrid { bed: self.story.name.clone(), species, plants };
                doubts.push(Doubt { day: from, kind, entries: vec![entry.clone()] });
            }
        }
        self.story.doubts.extend(doubts);
    }
}

/// What a count of the living and the dead came to.
struct Settled {
    /// Living plants that no planting explains.
    added: i64,
    /// Planted by the books.
    planted: u32,
    /// Whether more living and dead were seen than the books ever had, where they had any.
    more_than_there: bool,
}

/// Brings the living to a count: the difference died, or deaths are taken back. What no planting explains is added to
/// the youngest cohort.
fn settle(books: &mut [Book<'_>], alive: u32, dead: u32) -> Settled {
    let (lived, there) = (bed_books::living(books), bed_books::there(books));
    let planted = u32::try_from(bed_books::planted(books)).unwrap_or(u32::MAX);
    let more_than_there = planted > 0 && u64::from(alive) + u64::from(dead) > there;
    let alive = u64::from(alive);
    bed_books::bury(books, lived.saturating_sub(alive));
    let rise = alive.saturating_sub(lived);
    let left = rise - bed_books::take_back(books, rise);
    Settled { added: bed_books::add_living(books, left), planted, more_than_there }
}

/// Whether it is a shrub that stands beneath others: it wants shade when it is planted, and little room.
fn stands_beneath(profile: &Profile) -> bool {
    let wants_shade = profile.outplant_shade_least_pct.as_ref().is_some_and(|least| least.value > 0.0);
    wants_shade && profile.in_row_m.as_ref().is_some_and(|metres| metres.value <= SHRUB_ROOM_M)
}

fn cohort(
    entry: &Arc<Entry>,
    species: Option<SpeciesKey>,
    planted: u32,
    rows: Option<&Text>,
    at: Option<&Vec<Spot>>,
) -> CohortStory {
    CohortStory {
        species,
        tray: None,
        day: entry.happened,
        planted,
        living: planted,
        dead: 0,
        found: false,
        at_stake: false,
        rows: rows.map(|rows| rows.0.to_string()),
        spots: spots(at),
        entry: entry.id.clone(),
    }
}

fn spots(at: Option<&Vec<Spot>>) -> Vec<(u32, u32)> {
    at.into_iter().flatten().filter_map(|written| spot(&written.0)).collect()
}

fn part_of_bed(rows: Option<&Text>, at: Option<&Vec<Spot>>) -> Option<PartOfBed> {
    let mut spots = spots(at);
    spots.sort_unstable();
    spots.dedup();
    let named = in_part(rows, at);
    named.then(|| PartOfBed { rows: rows.map(|rows| plain_rows(&rows.0)), spots })
}

/// Rows without needless blanks: "1 3" are two.
fn plain_rows(written: &str) -> String {
    let words = written.split_whitespace().collect::<Vec<_>>().join(" ");
    [",", ";", "-", "+"]
        .into_iter()
        .fold(words, |text, sign| text.replace(&format!(" {sign}"), sign).replace(&format!("{sign} "), sign))
}

fn is_about_room(kind: &DoubtKind, of: &SpeciesKey) -> bool {
    matches!(kind, DoubtKind::MoreOutThanPositions { species, .. } if species == of)
}

fn in_part(rows: Option<&Text>, at: Option<&Vec<Spot>>) -> bool {
    rows.is_some() || at.is_some_and(|at| !at.is_empty())
}

/// What plants of a bed died of: a word that names no sickness says nothing there, for sun and cattle kill more than sicknesses do.
fn in_bed(of: DiedOf) -> DiedOf {
    if of == DiedOf::Unnamed { DiedOf::NotSaid } else { of }
}

/// A text without the brackets and quotes of a list of one, as some write it on the command line.
fn unlisted(text: &str) -> String {
    let inside = text.trim().strip_prefix('[').and_then(|text| text.strip_suffix(']'));
    inside.map_or_else(|| text.to_string(), |inside| inside.replace(['"', '\''], "").trim().to_string())
}
