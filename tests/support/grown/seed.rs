//! Seed: lots that come in when they are needed, are tested and counted, and get too old.

use outplant::base::Day;
use serde_json::json;

use super::nursery::Nursery;
use super::species::{TREES, Told};
use super::tray::Tray;

/// Sowings that a new lot is enough for, least and most.
const SOWINGS_OF_A_LOT: (i32, i32) = (3, 9);
/// Lots that are tested, kept another way and counted at their end.
const TESTED: f64 = 0.6;
const KEPT_ANEW: f64 = 0.2;
const COUNTED: f64 = 0.5;

/// A lot that is sown from.
struct Lot {
    code: String,
    came: Day,
    left: u32,
    test: Option<Day>,
    keep: Option<Day>,
}

#[derive(Default)]
pub struct Lots {
    open: [Option<Lot>; 6],
    numbers: [u32; 6],
}

impl Nursery {
    /// Takes seed from the lot that is open, or from a new one. The answer is its code.
    pub fn take_seed(&mut self, tree: usize, seeds: u32) -> String {
        let stale = |lot: &Lot| {
            self.day.days_since(lot.came) > TREES[tree].store_days || lot.left < seeds + seeds_of_a_test(tree)
        };
        if self.lots.open[tree].as_ref().is_none_or(stale) {
            self.close_lot(tree);
            self.receive_lot(tree);
        }
        let lot = self.lots.open[tree].as_mut().unwrap();
        lot.left -= seeds;
        lot.code.clone()
    }

    fn close_lot(&mut self, tree: usize) {
        let Some(lot) = self.lots.open[tree].take() else { return };
        if self.die.chance(COUNTED) && matches!(TREES[tree].told, Told::Seeds) {
            self.done(vec![("lot_counted", json!({"lot":lot.code,"seeds":lot.left}))]);
        }
    }

    fn receive_lot(&mut self, tree: usize) {
        let kind = &TREES[tree];
        self.lots.numbers[tree] += 1;
        let code = format!("{}-L{:02}", kind.code, self.lots.numbers[tree]);
        let sowings = self.die.between(SOWINGS_OF_A_LOT.0, SOWINGS_OF_A_LOT.1) as u32;
        let wanted = sowings * kind.seeds.1 as u32 + 2 * seeds_of_a_test(tree);
        let collected = self.day.plus(-self.die.between(2, 12));
        let mut body = json!({"lot":code,"species":kind.key,"source":kind.source,"collected":collected.to_string(),
            "kept":kind.kept});
        let left = match kind.told {
            Told::Seeds => {
                body["seeds"] = json!(wanted);
                wanted
            }
            Told::Weight(per_kg) => {
                let mass_g = (f64::from(wanted) / f64::from(per_kg) * 1000.0).ceil();
                body["mass_g"] = json!(mass_g);
                body["seeds_per_kg"] = json!(per_kg);
                body["moisture_pct"] = json!(self.die.between(7, 11));
                (mass_g / 1000.0 * f64::from(per_kg)) as u32
            }
            Told::Fruits(in_one) => {
                let fruits = wanted.div_ceil(in_one);
                body["fruits"] = json!(fruits);
                body["seeds_per_fruit"] = json!(in_one);
                fruits * in_one
            }
        };
        self.pieces.push(super::nursery::Piece {
            happened: self.day,
            lines: vec![("lot_received", body)],
            timed: false,
            slip: None,
        });
        let test_after = kind.test_days.min(kind.store_days - 1);
        let test = self.die.chance(TESTED).then(|| self.day.plus(test_after));
        let keep = self.die.chance(KEPT_ANEW).then(|| self.day.plus(self.die.between(3, 12)));
        self.lots.open[tree] = Some(Lot { code, came: self.day, left, test, keep });
    }

    /// Tests that are read today, and lots that are stored another way.
    pub fn tend_lots(&mut self) {
        for (tree, kind) in TREES.iter().enumerate() {
            let Some(lot) = self.lots.open[tree].as_mut() else { continue };
            let code = lot.code.clone();
            let (test, keep) = (lot.test == Some(self.day), lot.keep == Some(self.day));
            let seeds = seeds_of_a_test(tree);
            if test && lot.left >= seeds {
                lot.left -= seeds;
                let days = self.day.days_since(lot.came);
                let each = seeds / 2;
                let mut replicate = || json!({"seeds":each,"germinated":self.die.of(each, kind.germinates)});
                let replicates = [replicate(), replicate()];
                self.done(vec![("lot_tested", json!({"lot":code,"replicates":replicates,"days":days}))]);
            }
            if keep {
                let body = json!({"lot":code,"kept":kind.kept,"store_c":self.die.between(15, 19)});
                self.done(vec![("lot_kept", body)]);
            }
        }
    }

    /// A sowing of a tree drawn by its share.
    pub fn sow_one(&mut self) {
        let tree = self.draw_tree();
        let kind = &TREES[tree];
        let mut seeds = self.die.between(kind.seeds.0, kind.seeds.1) as u32;
        let mut mass = None;
        if let Told::Weight(per_kg) = kind.told {
            // Small seed is sown by weight, to a tenth of a gram.
            let mass_g = (f64::from(seeds) / f64::from(per_kg) * 10_000.0).round() / 10.0;
            seeds = (mass_g / 1000.0 * f64::from(per_kg)).round() as u32;
            mass = Some(mass_g);
        }
        let lot = self.take_seed(tree, seeds);
        let mut tray = Tray::sown(self, tree, seeds);
        let mut body = json!({"tray":tray.code,"lot":lot,"container":tray.container(),"place":tray.place()});
        match mass {
            Some(mass_g) => body["mass_g"] = json!(mass_g),
            None => body["seeds"] = json!(seeds),
        }
        if !kind.seedbed {
            body["cells"] = json!(seeds);
        }
        self.done(vec![("sown", body)]);
        tray.next = self.day.plus((kind.emerges.0 * 0.7) as i32);
        self.new_trays.push(tray);
    }

    pub fn draw_tree(&mut self) -> usize {
        let mut drawn = self.die.share();
        let found = TREES.iter().position(|tree| {
            drawn -= tree.weight;
            drawn < 0.0
        });
        found.unwrap_or(0)
    }
}

fn seeds_of_a_test(tree: usize) -> u32 {
    if matches!(TREES[tree].told, Told::Fruits(_)) { 10 } else { 50 }
}
