//! Words that sentences about entries share: what they are about, how much, where in a bed.

use crate::base::{BedName, LotCode, PlaceName, TrayCode};
use crate::nursery::entry::types::{ArrivedFrom, Count, CutWhat, MovedHow, NotNegative, PlantForm, Sky, Spot, Text};
use crate::wording::Wording;

/// Spots named in a sentence; the rest are counted.
const SPOTS_NAMED: usize = 6;

impl Wording {
    /// What an entry is about: the first of these that is there.
    pub(super) fn about(
        &self,
        tray: Option<&TrayCode>,
        lot: Option<&LotCode>,
        bed: Option<&BedName>,
        place: Option<&PlaceName>,
    ) -> String {
        let named = [
            tray.map(|tray| self.about_tray(tray)),
            lot.map(|lot| self.about_lot(lot)),
            bed.map(|bed| self.about_bed(bed)),
            place.map(|place| self.about_place(place)),
        ];
        let all: Vec<String> = named.into_iter().flatten().collect();
        if all.is_empty() { self.about_nothing() } else { all.join(", ") }
    }

    /// Seed as it was written: counted, weighed or both.
    pub(super) fn seed_amount(&self, seeds: Option<Count>, mass_g: Option<NotNegative>) -> String {
        let seeds = seeds.map(|seeds| self.seeds(seeds.0));
        let mass = mass_g.map(|mass| format!("{} g", self.number(mass.0, 3)));
        let all: Vec<String> = [seeds, mass].into_iter().flatten().collect();
        if all.is_empty() { "?".to_string() } else { all.join(", ") }
    }

    /// Where in a bed: rows, places.
    pub(super) fn where_in_bed(&self, rows: Option<&Text>, at: Option<&[Spot]>) -> [Option<String>; 2] {
        let rows = rows.map(|rows| self.entry_part_rows(&rows.0));
        [rows, at.filter(|spots| !spots.is_empty()).map(|spots| self.part_spots(self.spot_list(spots)))]
    }

    /// Places in a bed: the first ones, and how many more.
    pub(super) fn spot_list(&self, spots: &[Spot]) -> String {
        let mut said: Vec<String> = spots.iter().take(SPOTS_NAMED).map(|spot| spot.0.to_string()).collect();
        if spots.len() > SPOTS_NAMED {
            said.push(self.change_more((spots.len() - SPOTS_NAMED) as i64));
        }
        said.join(" ")
    }

    /// Where plants that are not from our seed came from.
    pub fn arrived_name(&self, from: ArrivedFrom) -> String {
        match from {
            ArrivedFrom::Opening => self.from_opening(),
            ArrivedFrom::Bought => self.from_bought(),
            ArrivedFrom::Wildling => self.from_wildling(),
            ArrivedFrom::Cutting => self.from_cutting(),
            ArrivedFrom::Graft => self.from_graft(),
            ArrivedFrom::Gift => self.from_gift(),
        }
    }

    /// The form a plant came in.
    pub fn form_name(&self, form: PlantForm) -> String {
        match form {
            PlantForm::Plug => self.form_plug(),
            PlantForm::Bag => self.form_bag(),
            PlantForm::BareRoot => self.form_bare_root(),
            PlantForm::Stump => self.form_stump(),
        }
    }

    /// How seedlings went into another tray.
    pub fn moved_how_name(&self, how: MovedHow) -> String {
        match how {
            MovedHow::PrickedOut => self.moved_pricked_out(),
            MovedHow::PottedOn => self.moved_potted_on(),
            MovedHow::Merged => self.moved_merged(),
        }
    }

    /// What was cut of a nurse plant.
    pub fn cut_name(&self, what: CutWhat) -> String {
        match what {
            CutWhat::Leaves => self.cut_leaves(),
            CutWhat::Stem => self.cut_stem(),
            CutWhat::Harvest => self.cut_harvest(),
            CutWhat::Felled => self.cut_felled(),
        }
    }

    /// The sky.
    pub fn sky_name(&self, sky: Sky) -> String {
        match sky {
            Sky::Overcast => self.sky_overcast(),
            Sky::Clear => self.sky_clear(),
        }
    }
}
