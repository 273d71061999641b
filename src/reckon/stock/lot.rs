//! The story of a seed lot: what came in, what was sown, what is left, how it is kept and what its tests said.

use serde::{Deserialize, Serialize};

use super::place::Holds;
use super::tray::Since;
use crate::base::{Day, EntryId, LotCode, SpeciesKey};
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::types::Kept;
use crate::nursery::entry::{GroundEntry, LotReceived, SeedEntry, TrayEntry, What};
use crate::reckon::impossible::doubts_of;
use crate::reckon::ledger::Ledger;
use crate::reckon::picture::{Doubt, DoubtKind};
use crate::reckon::site::Site;

/// A germination test.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct LotTest {
    /// The day.
    pub day: Day,
    /// Seeds laid out and germinated, by replicate.
    pub replicates: Vec<(u32, u32)>,
    /// Days it ran.
    pub days: u32,
    /// The entry.
    pub entry: EntryId,
}

/// Moisture and temperature of a store, as far as they were written.
#[derive(Clone, Copy, PartialEq, Debug, Serialize, Deserialize)]
pub struct StoreWritten {
    /// Moisture of the seed, percent of fresh weight.
    pub moisture_pct: Option<f64>,
    /// Temperature, °C.
    pub temp_c: Option<f64>,
}

/// The story of a seed lot.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct LotStory {
    /// Its code.
    pub code: LotCode,
    /// Its species, by the key of the catalogue where known; none where nobody received it.
    pub species: Option<SpeciesKey>,
    /// The mother tree or stand.
    pub source: String,
    /// The day it was collected.
    pub collected: Option<Day>,
    /// The day it came in.
    pub received: Option<Day>,
    /// Seeds that came in, where known or reckoned from a weight.
    pub seeds_in: Option<u32>,
    /// Whether the number is known by counting; a number reckoned from a weight is "about".
    pub counted: bool,
    /// Seeds sown.
    pub sown: u32,
    /// Seeds laid out in tests.
    pub tested: u32,
    /// Seeds left by the books, where known.
    pub seeds_left: Option<u32>,
    /// What the books cannot explain: in minus out.
    pub unexplained: i64,
    /// Seeds in a kilogram, where this lot says so.
    pub seeds_per_kg: Option<f64>,
    /// How it is kept, oldest first.
    pub kept: Vec<Since<Kept>>,
    /// Moisture and temperature with each way of keeping, oldest first.
    pub stores: Vec<Since<StoreWritten>>,
    /// Viability on arrival, percent, where it was written.
    pub initial_pct: Option<f64>,
    /// Tests, oldest first.
    pub tests: Vec<LotTest>,
    /// What holds it back.
    pub held: Holds,
    /// The day of the last entry about it.
    pub last_on: Option<Day>,
    /// What cannot be believed.
    pub doubts: Vec<Doubt>,
}

/// The seeds of a weight: by the lot's own seeds per kilogram, else by the middle of the species' range.
pub(crate) fn seeds_of_mass(
    ledger: &Ledger,
    site: &Site,
    lot: Option<&LotCode>,
    species: Option<&SpeciesKey>,
    mass_g: f64,
) -> Option<u32> {
    let of_lot =
        lot.and_then(|lot| received_entry(ledger, lot)).and_then(|lot| lot.seeds_per_kg).map(|per_kg| per_kg.0);
    let per_kg = of_lot.or_else(|| {
        let profile = site.profile(species?)?;
        let least = profile.seeds_per_kg_least.as_ref()?.value;
        let most = profile.seeds_per_kg_most.as_ref()?.value;
        Some((least + most) / 2.0)
    })?;
    Some((mass_g / 1000.0 * per_kg).round().clamp(0.0, 1e9) as u32)
}

fn received_entry<'a>(ledger: &'a Ledger, lot: &LotCode) -> Option<&'a LotReceived> {
    ledger.of(&Subject::Lot(lot.clone())).find_map(|entry| match &entry.what {
        What::Seed(SeedEntry::LotReceived(received)) => Some(&**received),
        What::Seed(_) | What::Site(_) | What::Tray(_) | What::Ground(_) | What::Book(_) | What::Foreign { .. } => None,
    })
}

/// Folds the entries of a lot.
pub(crate) fn fold_lot(ledger: &Ledger, site: &Site, code: &LotCode) -> LotStory {
    let mut fold = LotFold {
        ledger,
        site,
        story: LotStory {
            code: code.clone(),
            species: None,
            source: String::new(),
            collected: None,
            received: None,
            seeds_in: None,
            counted: false,
            sown: 0,
            tested: 0,
            seeds_left: None,
            unexplained: 0,
            seeds_per_kg: None,
            kept: Vec::new(),
            stores: Vec::new(),
            initial_pct: None,
            tests: Vec::new(),
            held: Holds::default(),
            last_on: None,
            doubts: Vec::new(),
        },
    };
    for entry in ledger.of(&Subject::Lot(code.clone())) {
        fold.story.last_on = fold.story.last_on.max(Some(entry.happened));
        fold.take(entry);
    }
    fold.story.doubts.extend(doubts_of(ledger, &Subject::Lot(code.clone())));
    fold.story
}

struct LotFold<'a> {
    ledger: &'a Ledger,
    site: &'a Site,
    story: LotStory,
}

impl LotFold<'_> {
    fn take(&mut self, entry: &crate::nursery::entry::Entry) {
        let (day, id) = (entry.happened, entry.id.clone());
        match &entry.what {
            What::Seed(SeedEntry::LotReceived(received)) => self.received(day, id, received),
            What::Seed(SeedEntry::LotKept(kept)) => {
                let what = StoreWritten {
                    moisture_pct: kept.moisture_pct.map(|moisture| moisture.0),
                    temp_c: kept.store_c.map(|temperature| temperature.0),
                };
                self.story.stores.push(Since { from: day, what, entry: id.clone() });
                self.story.kept.push(Since { from: day, what: kept.kept, entry: id });
            }
            What::Seed(SeedEntry::LotCounted(count)) => {
                let seeds = count.seeds.map(|seeds| seeds.0).or_else(|| self.of_mass(count.mass_g?.0));
                if let Some(seeds) = seeds {
                    let left = self.story.seeds_left.unwrap_or(0);
                    self.story.unexplained += i64::from(seeds) - i64::from(left);
                    self.story.seeds_left = Some(seeds);
                    self.story.counted = count.seeds.is_some();
                    self.story.doubts.retain(|doubt| !matches!(doubt.kind, DoubtKind::MoreSeedThanHeld { .. }));
                }
            }
            What::Seed(SeedEntry::LotTested(test)) => {
                let replicates: Vec<(u32, u32)> =
                    test.replicates.iter().map(|replicate| (replicate.seeds.0, replicate.germinated.0)).collect();
                let used = replicates.iter().fold(0u32, |sum, (seeds, _)| sum.saturating_add(*seeds));
                self.story.tested = self.story.tested.saturating_add(used);
                self.leave(day, &id, used);
                self.story.tests.push(LotTest { day, replicates, days: test.days.0, entry: id });
            }
            What::Tray(what) => self.take_tray(day, id, what),
            What::Ground(GroundEntry::SownInBed(sown)) => {
                self.sow(day, &id, sown.seeds_per_hole.0.saturating_mul(sown.holes.0));
            }
            What::Ground(GroundEntry::NursePlanted(planted)) => self.sow(day, &id, planted.count.0),
            What::Ground(_) | What::Site(_) | What::Book(_) | What::Foreign { .. } => {}
        }
    }

    fn take_tray(&mut self, day: Day, id: EntryId, what: &TrayEntry) {
        match what {
            TrayEntry::Sown(sown) => {
                let seeds = sown.seeds.map(|seeds| seeds.0).or_else(|| self.of_mass(sown.mass_g?.0));
                self.sow(day, &id, seeds.unwrap_or(0));
            }
            TrayEntry::Resown(resown) => self.sow(day, &id, resown.seeds.0),
            TrayEntry::Held(held) => {
                self.story.held.write(Since { from: day, what: (held.why.0.to_string(), held.until), entry: id })
            }
            TrayEntry::Released(released) => {
                self.story.held.let_go(&mut Vec::new(), released);
            }
            _ => {}
        }
    }

    fn of_mass(&self, mass_g: f64) -> Option<u32> {
        seeds_of_mass(self.ledger, self.site, Some(&self.story.code), self.story.species.as_ref(), mass_g)
    }

    fn received(&mut self, day: Day, id: EntryId, received: &LotReceived) {
        if self.story.received.is_some() {
            let kind = DoubtKind::TwiceReceived(self.story.code.clone());
            self.story.doubts.push(Doubt { day, kind, entries: vec![id.clone()] });
            return;
        }
        let story = &mut self.story;
        story.species = Some(self.site.species_key(&received.species).unwrap_or_else(|| received.species.clone()));
        story.source = received.source.0.to_string();
        story.collected = Some(received.collected);
        story.received = Some(day);
        story.seeds_per_kg = received.seeds_per_kg.map(|per_kg| per_kg.0);
        story.initial_pct = received.initial_pct.map(|viable| viable.0);
        let what = StoreWritten {
            moisture_pct: received.moisture_pct.map(|moisture| moisture.0),
            temp_c: received.store_c.map(|temperature| temperature.0),
        };
        story.stores.push(Since { from: received.collected, what, entry: id.clone() });
        story.kept.push(Since { from: received.collected, what: received.kept, entry: id });
        let fruits = || {
            let seeds = f64::from(received.fruits?.0) * received.seeds_per_fruit?.0;
            Some(seeds.round().clamp(0.0, 1e9) as u32)
        };
        let counted = received.seeds.map(|seeds| seeds.0);
        let about = fruits().or_else(|| self.of_mass(received.mass_g?.0));
        let story = &mut self.story;
        story.counted = counted.is_some();
        story.seeds_in = counted.or(about);
        let earlier = story.seeds_left.unwrap_or(0);
        story.seeds_left = story.seeds_in.map(|seeds| seeds.saturating_add(earlier));
    }

    fn sow(&mut self, day: Day, id: &EntryId, seeds: u32) {
        self.story.sown = self.story.sown.saturating_add(seeds);
        self.leave(day, id, seeds);
    }

    /// Seeds leave the lot; beyond what a counted lot held they come from unexplained, with a Doubt. A lot known by
    /// weight is "about" and simply ends at nothing.
    fn leave(&mut self, day: Day, id: &EntryId, seeds: u32) {
        if self.story.received.is_none() {
            let kind = DoubtKind::UnknownLot(self.story.code.clone());
            self.story.doubts.push(Doubt { day, kind, entries: vec![id.clone()] });
        }
        let Some(left) = self.story.seeds_left else {
            self.story.unexplained += i64::from(seeds);
            return;
        };
        if seeds > left {
            self.story.unexplained += i64::from(seeds - left);
            if self.story.counted {
                let kind = DoubtKind::MoreSeedThanHeld { lot: self.story.code.clone(), out: seeds, held: left };
                self.story.doubts.push(Doubt { day, kind, entries: vec![id.clone()] });
            }
        }
        self.story.seeds_left = Some(left.saturating_sub(seeds));
    }
}
