//! How many seeds to sow, in words.

use crate::base::Range;
use crate::reckon::sowing::{Germination, MOST_SEEDS_A_PLANT, NoPlan, SowingAsked, SowingPlan, Survival, TooMany};
use crate::wording::Wording;
use crate::wording::number::{rounded, rounded_up};

/// Chances that are said as "half the time".
const HALF: std::ops::RangeInclusive<f64> = 0.45..=0.55;

impl Wording {
    /// The number of seeds, and what dividing would give.
    pub fn sowing_said(&self, plan: &SowingPlan) -> String {
        let fails = if HALF.contains(&plan.divided_short) {
            self.sowing_fails_half()
        } else {
            self.sowing_fails_share(self.percent((plan.divided_short * 20.0).round() / 20.0))
        };
        let (sure, success) = (self.percent(plan.wanted.sure), self.percent(plan.mean_success));
        let (seeds, divided) = (rounded_up(plan.seeds), rounded(f64::from(plan.divided)) as u32);
        self.sowing_number(seeds, plan.wanted.plants, sure, success, divided, fails)
    }

    /// Where the number of plants comes from: the places open in the beds, where it was not asked for; less what stands.
    pub(crate) fn sowing_for_words(&self, asked: &SowingAsked) -> Option<String> {
        let open = (!asked.asked).then(|| self.sowing_for_open(asked.open_places));
        let net = self.coming_of(asked).zip(asked.still_needed).map(|((needed, coming), still)| {
            let [low, likely, high] = coming;
            self.sowing_net(needed, likely, low, high, still)
        });
        let all: Vec<String> = [open, net].into_iter().flatten().collect();
        (!all.is_empty()).then(|| all.join("; "))
    }

    /// What is said where nothing is sown: no place is open, or what stands is enough.
    pub(crate) fn sowing_nothing(&self, asked: &SowingAsked) -> String {
        match self.coming_of(asked) {
            Some((needed, [low, likely, high])) => self.sowing_met(needed, likely, low, high),
            None => self.sowing_none_open(),
        }
    }

    /// The number for all that are needed, as if nothing stood.
    pub(crate) fn sowing_gross_words(&self, asked: &SowingAsked) -> Option<String> {
        let plan = asked.gross.as_ref()?.as_ref().ok()?;
        Some(self.sowing_gross(rounded_up(plan.seeds), plan.wanted.plants))
    }

    /// Plants needed and what is to come of trays, where that takes something off.
    fn coming_of(&self, asked: &SowingAsked) -> Option<(u32, [String; 3])> {
        let needed = asked.needed.filter(|needed| asked.still_needed != Some(*needed))?;
        let Range { low, likely, high } = asked.coming;
        Some((needed, [low, likely, high].map(|plants| self.number(rounded(plants.floor()), 0))))
    }

    /// What is believed of the seed, and from what.
    pub(crate) fn sowing_germination(&self, known: &Germination) -> String {
        let sowings = (known.sowings > 0).then(|| self.sowing_and_sowings(known.sowings as i64));
        let test = known.tested.map(|(seeds, germinated)| self.sowing_and_test(germinated, seeds));
        let kept = known.left.filter(|left| *left < 0.995).map(|left| self.sowing_and_kept(self.percent(left)));
        let unknown = known.life_unknown.then(|| self.sowing_and_life_unknown());
        let first = self.sowing_comes_up(self.percent(known.mean()));
        [Some(first), sowings, test, kept, unknown].into_iter().flatten().collect::<Vec<_>>().join("; ")
    }

    /// What is believed of the nursery, and from what.
    pub(crate) fn sowing_survival(&self, known: &Survival) -> String {
        let share = self.percent(known.mean);
        if known.trays == 0 {
            return self.sowing_becomes(share);
        }
        self.sowing_becomes_here(share, known.trays as i64, known.seen.0, known.seen.1)
    }

    /// The weight of the seeds, no finer than seeds in a kilogram are known: of the lot two figures, of the species from its heaviest
    /// to its lightest seed.
    pub fn sowing_weight(&self, mass_g: Option<Range>) -> String {
        match mass_g {
            None => self.sowing_weight_unknown(),
            Some(mass) if rounded(mass.low) == rounded(mass.high) => self.sowing_weighs(self.weight(mass.likely)),
            Some(mass) => self.sowing_weighs_between(self.weight(mass.low), self.weight(mass.high)),
        }
    }

    fn weight(&self, grams: f64) -> String {
        let grams = rounded(grams);
        match grams {
            1000.0.. => self.sowing_kilograms(self.number(grams / 1000.0, 1)),
            _ => self.sowing_grams(self.number(grams, if grams < 10.0 { 1 } else { 0 })),
        }
    }

    /// Whether the lot is enough; nothing where nobody knows what is left.
    pub(crate) fn sowing_left(&self, plan: &SowingPlan) -> Option<String> {
        let left = plan.seeds_left?;
        Some(match plan.enough_from_left {
            None => self.sowing_left_enough(self.seeds(left)),
            // What does as often as was asked for is enough, said no finer than chances are.
            Some(chance) if (chance * 20.0).round() / 20.0 >= plan.wanted.sure => {
                self.sowing_left_enough(self.seeds(left))
            }
            Some(chance) => {
                let missing = rounded_up(plan.seeds).saturating_sub(left);
                self.sowing_left_short(self.seeds(left), missing, self.percent((chance * 20.0).round() / 20.0))
            }
        })
    }

    /// Containers to prepare.
    pub(crate) fn sowing_containers(&self, plan: &SowingPlan) -> String {
        let containers = &plan.containers;
        if containers.seedbed {
            return self.sowing_seedbed(rounded_up(containers.pricked_out));
        }
        let several = containers
            .several
            .map(|several| (rounded_up(several.containers), several.seeds_each))
            .map(|(containers, each)| self.sowing_several(containers, each, containers * each));
        let poor = containers.too_poor.then(|| self.sowing_too_poor(rounded_up(containers.pricked_out)));
        let first = self.sowing_one_each(rounded_up(containers.one_each));
        [Some(first), several, poor].into_iter().flatten().collect::<Vec<_>>().join("; ")
    }

    /// Why there is no number.
    pub fn sowing_no_plan(&self, why: &NoPlan) -> String {
        match why {
            NoPlan::UnknownSpecies => self.sowing_unknown_species(),
            NoPlan::Dead => self.sowing_dead(self.cut_some_open()),
            NoPlan::LifeUnknown { plants, fresh } => self.sowing_life_unknown(*plants, rounded_up(*fresh)),
            NoPlan::TooMany(TooMany { too_late_to_test: true, tested: false, .. }) => {
                self.sowing_too_many_late(MOST_SEEDS_A_PLANT, self.cut_some_open())
            }
            NoPlan::TooMany(TooMany { on_average: Some(seeds), plants, tested: false, .. }) => {
                self.sowing_too_many_unsure(MOST_SEEDS_A_PLANT, rounded_up(*seeds), *plants)
            }
            NoPlan::TooMany(TooMany { tested: true, .. }) => self.sowing_too_many_tested(MOST_SEEDS_A_PLANT),
            NoPlan::TooMany(TooMany { tested: false, .. }) => self.sowing_too_many(MOST_SEEDS_A_PLANT),
            NoPlan::Wrong(wrong) => self.sowing_wrong(self.wrong_input(wrong)),
        }
    }
}
