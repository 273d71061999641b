//! Entries about seed lots in a sentence.

use super::with_parts;
use crate::nursery::entry::types::{Celsius, Percent};
use crate::nursery::entry::{LotReceived, SeedEntry};
use crate::nursery::species::Catalogue;
use crate::wording::Wording;

impl Wording {
    pub(super) fn seed_sentence(&self, entry: &SeedEntry, species: &Catalogue) -> String {
        match entry {
            SeedEntry::LotReceived(lot) => self.received_sentence(lot, species),
            SeedEntry::LotKept(lot) => {
                let kept = self.entry_lot_kept(&lot.lot, self.kept_name(lot.kept));
                with_parts(kept, self.keeping_parts(lot.moisture_pct, lot.store_c))
            }
            SeedEntry::LotCounted(lot) => self.entry_lot_counted(&lot.lot, self.seed_amount(lot.seeds, lot.mass_g)),
            SeedEntry::LotTested(lot) => {
                let sum = |each: fn(&crate::nursery::entry::Replicate) -> u32| -> i64 {
                    lot.replicates.iter().map(|replicate| i64::from(each(replicate))).sum()
                };
                let (germinated, seeds) = (sum(|r| r.germinated.0), sum(|r| r.seeds.0));
                self.entry_lot_tested(&lot.lot, germinated, seeds, lot.days.0)
            }
        }
    }

    fn received_sentence(&self, lot: &LotReceived, species: &Catalogue) -> String {
        let said = self.entry_lot_received(&lot.lot, self.species_of(&lot.species, species), &lot.source.0);
        let counted = lot.seeds.is_some() || lot.mass_g.is_some();
        let amounts = [
            lot.variety.as_ref().map(|variety| self.part_variety(&variety.0)),
            counted.then(|| self.seed_amount(lot.seeds, lot.mass_g)),
            lot.fruits.map(|fruits| self.part_fruits(fruits.0)),
            lot.seeds_per_fruit.map(|seeds| self.part_seeds_per_fruit(self.number(seeds.0, 1))),
            lot.seeds_per_kg.map(|seeds| self.part_seeds_per_kg(self.number(seeds.0, 1))),
            Some(self.part_collected(self.day(lot.collected))),
            Some(self.kept_name(lot.kept)),
        ];
        let initial = lot.initial_pct.map(|share| self.part_initial(self.percent(share.0 / 100.0)));
        let keeping = self.keeping_parts(lot.moisture_pct, lot.store_c);
        with_parts(said, amounts.into_iter().chain(keeping).chain([initial]))
    }

    fn keeping_parts(&self, moisture: Option<Percent>, store: Option<Celsius>) -> [Option<String>; 2] {
        [
            moisture.map(|moisture| self.part_moisture(self.percent(moisture.0 / 100.0))),
            store.map(|store| self.part_store(self.number(store.0, 1))),
        ]
    }
}
