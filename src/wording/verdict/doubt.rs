//! What cannot be believed as written, and what settles it.

use crate::base::Day;
use crate::base::{SpeciesKey, TrayCode};
use crate::nursery::species::{Catalogue, Role};
use crate::reckon::impossible::Impossible;
use crate::reckon::picture::{Doubt, DoubtKind, Picture};
use crate::wording::Wording;

impl Wording {
    /// That no bed plans a species; of nurse plants that they need no plan.
    pub(crate) fn not_planned(&self, species: Option<&SpeciesKey>, picture: &Picture) -> String {
        let name = species.map_or_else(|| self.species_unknown(), |key| self.species_of(key, &picture.site.species));
        let is_nurse = species.and_then(|key| picture.site.profile(key)).is_some_and(|one| one.role == Role::Nurse);
        if is_nurse { self.no_bed_plans_nurse(name) } else { self.no_bed_plans(name) }
    }

    /// A ready tray that no bed plans, in a sentence.
    pub fn unplanned(&self, tray: &TrayCode, picture: &Picture) -> String {
        let species = picture.trays.get(tray).and_then(|tray| tray.species.as_ref());
        self.unplanned_tray(tray, species.map(|key| self.species_of(key, &picture.site.species)).unwrap_or_default())
    }

    /// A doubt in a sentence; species by the names of the catalogue.
    pub fn doubt(&self, doubt: &Doubt, species: &Catalogue) -> String {
        let day = self.day(doubt.day);
        let named = |key| self.species_of(key, species);
        match &doubt.kind {
            DoubtKind::MoreOutThanStood { tray, out, stood } => self.doubt_more_out_than_stood(tray, *out, *stood, day),
            DoubtKind::MoreSeedThanHeld { lot, out, held } => self.doubt_more_seed_than_held(lot, *out, *held, day),
            DoubtKind::MoreDeadThanLived { bed, species, dead, lived } => {
                self.doubt_more_dead_than_lived(bed, named(species), *dead, *lived, day)
            }
            DoubtKind::MoreAliveThanPlanted { bed, species, alive, dead: 0, planted } => {
                self.doubt_more_alive_than_planted(bed, named(species), *alive, *planted, day)
            }
            DoubtKind::MoreAliveThanPlanted { bed, species, alive, dead, planted } => {
                self.doubt_more_seen_than_planted(bed, named(species), *alive, *dead, *planted, day)
            }
            DoubtKind::AliveAgain { bed, species, alive, lived } => {
                self.doubt_alive_again(bed, named(species), *alive, *lived, day)
            }
            DoubtKind::MoreCutThanStood { bed, nurse, cut: Some(cut), stood } => {
                self.doubt_more_cut_than_stood(bed, named(nurse), *cut, *stood, day)
            }
            DoubtKind::MoreCutThanStood { bed, nurse, cut: None, stood: _ } => {
                self.doubt_cut_of_none(bed, named(nurse), day)
            }
            DoubtKind::MoreThanSeed { tray, counted, most } => self.doubt_more_than_seed(tray, *counted, *most, day),
            DoubtKind::RiseWithoutSeed { tray, books, counted } => {
                self.doubt_rise_without_seed(tray, *books, *counted, day)
            }
            DoubtKind::UnknownTray(tray) => self.doubt_unknown_tray(tray, day),
            DoubtKind::UnknownLot(lot) => self.doubt_unknown_lot(lot, day),
            DoubtKind::UnknownBed(bed) => self.doubt_unknown_bed(bed, day),
            DoubtKind::UnknownSpecies(species) => self.doubt_unknown_species(species, day),
            DoubtKind::TwiceMade(tray) => self.doubt_twice_made(tray, day),
            DoubtKind::TwiceReceived(lot) => self.doubt_twice_received(lot, day),
            DoubtKind::OrderMatters(tray) => self.doubt_order_matters(tray, day),
            DoubtKind::NotInPlan { bed, species } => self.doubt_not_in_plan(bed, named(species), day),
            DoubtKind::OffTheGrid { bed, species, plants } => self.doubt_off_the_grid(bed, named(species), *plants),
            DoubtKind::BadProfile { species, what } => {
                self.doubt_bad_profile(named(species), self.profile_fault(what), day)
            }
            DoubtKind::PartCountApart { tray, standing, seen, cells, books } => {
                self.doubt_part_count_apart(tray, *standing, *seen, *cells, *books, day)
            }
            DoubtKind::LookAtEmpty(tray) => self.doubt_look_at_empty(tray, day),
            DoubtKind::MoreOutThanPositions { bed, species, out, open, positions: _ } => {
                self.doubt_more_out_than_positions(bed, named(species), *out, *open, day)
            }
            DoubtKind::NoSuchPosition { bed, written, rows, places } => {
                self.doubt_no_such_position(bed, written, *rows, *places, day)
            }
            DoubtKind::SampleLarger { tray, sample, stood } => self.doubt_sample_larger(tray, *sample, *stood, day),
            DoubtKind::WorkedOnMore { tray, worked, stood } => self.doubt_worked_on_more(tray, *worked, *stood, day),
            DoubtKind::TwoSpecies { tray, species, other } => {
                self.doubt_two_species(tray, named(species), named(other), day)
            }
            DoubtKind::CannotBe(why) => self.doubt_cannot_be(self.impossible(why, doubt.day)),
        }
    }

    /// What an entry of a day says against itself.
    pub(crate) fn impossible(&self, why: &Impossible, on: Day) -> String {
        let day = self.day(on);
        let degrees = |hundredths: i32| self.number(f64::from(hundredths) / 100.0, 2);
        match why {
            Impossible::LowestAboveHighest { lowest, highest } => {
                self.cannot_lowest_above_highest(day, degrees(*lowest), degrees(*highest))
            }
            Impossible::CollectedLater { lot, collected } => {
                self.cannot_collected_later(lot, self.day(*collected), day)
            }
            Impossible::DayLater { field, day: later } => self.cannot_day_later(field, self.day(*later), day),
            Impossible::EndsBefore { until } => self.cannot_ends_before(self.day(*until), day),
            Impossible::MoreOf { part, parts, whole, wholes } => self.cannot_more_of(day, part, *parts, whole, *wholes),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::{BedName, SpeciesKey, TrayCode};
    use crate::wording::Lang;

    #[test]
    fn a_doubt_names_both_numbers_the_day_and_what_settles_it() {
        let doubt = |kind| Doubt { day: "2026-03-14".parse().unwrap(), kind, entries: Vec::new() };
        let tray = TrayCode::new("cof-031").unwrap();
        let catalogue = Catalogue::built_in();
        let out = doubt(DoubtKind::MoreOutThanStood { tray: tray.clone(), out: 41, stood: 30 });
        assert_eq!(
            Wording::new(Lang::En).doubt(&out, &catalogue),
            "cof-031: 41 went out on 14 Mar 2026, but 30 stood there by the books: count it and write a stocktake"
        );
        let bed = BedName::new("Upper 1").unwrap();
        let unplanned = doubt(DoubtKind::NotInPlan { bed, species: SpeciesKey::new("COA") });
        let said = Wording::new(Lang::Es).doubt(&unplanned, &catalogue);
        assert!(said.contains("café arábica") && !said.contains("COA"), "{said}");
    }
}
