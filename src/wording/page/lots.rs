//! What a seed lot is still worth, in words.

use crate::base::{Day, Range};
use crate::reckon::lots::{
    Expected, LotOutlook, NoLife, NoRetest, NoViability, Retest, RetestWhy, StartFrom, TestRead, Way,
};
use crate::reckon::seed::SeedLife;
use crate::science::sampling::Differ;
use crate::science::storage::SPREAD_SHARE;
use crate::wording::Wording;
use crate::wording::number::{rounded, rounded_days};

impl Wording {
    /// What is said of a lot first, and whether it is good.
    pub fn lot_verdict(&self, outlook: &LotOutlook, day: Day) -> (bool, String) {
        let life = outlook.life.as_ref().ok();
        if let Some((life, below)) = life.and_then(|life| Some((life, life.killed_below_c?))) {
            return (false, self.lot_verdict_killed(self.day(life.from), self.number(below, 1)));
        }
        if let Some(test) = outlook.dead_by_test() {
            let seeds = self.seeds(test.seeds);
            return (false, self.lot_verdict_tested_dead(seeds, self.day(test.day), self.cut_some_open()));
        }
        let told = outlook.viability.as_ref().ok();
        let by_equation = told.is_some_and(|told| matches!(told.by, Way::Equation { .. }));
        let past = life.is_some_and(|life| life.days_left(day) < 0) && !by_equation;
        let lives = told.filter(|told| told.today.likely > 0.005).map(|told| self.percent(told.today.likely));
        match (lives, life.filter(|life| life.is_ending(day) && !by_equation)) {
            _ if outlook.is_dead(day) => (false, self.lot_verdict_dead(self.cut_some_open())),
            // Of seed past its life a test would come too late, unless one found it alive since.
            _ if past && outlook.is_too_late_to_test() => (false, self.lot_verdict_over(outlook)),
            // What may have been kept well or badly is cut open, whatever is likely.
            _ if past && life.is_some_and(SeedLife::keeping_unknown) => (false, self.lot_verdict_over(outlook)),
            (Some(share), _) if outlook.hardly_lives() => (false, self.lot_verdict_hardly(share)),
            (Some(share), Some(life)) => (true, self.lot_verdict_ending(self.day(life.last_day()), share)),
            (Some(share), None) => (!past, self.lot_verdict_good(share)),
            (None, _) if told.is_none() && !past => (false, self.lot_verdict_unknown()),
            (None, _) => (false, self.lot_verdict_over(outlook)),
        }
    }

    fn lot_verdict_over(&self, outlook: &LotOutlook) -> String {
        match outlook.retest {
            Err(NoRetest::LivesTooShort { .. }) => self.lot_verdict_past_short(self.cut_some_open()),
            Ok(_) | Err(_) => self.lot_verdict_past(),
        }
    }

    /// Seeds left of a lot: as counted, else about as many as its weight makes.
    pub(crate) fn seeds_left(&self, left: u32, counted: bool) -> String {
        if counted || left == 0 {
            return self.seeds(left);
        }
        self.lot_left_about(self.seeds(rounded(f64::from(left)) as u32))
    }

    /// A number of seeds that rests on a weight.
    pub(crate) fn seeds_of_weight(&self, seeds: u32) -> String {
        self.seed_about(rounded(f64::from(seeds)) as i64)
    }

    /// How long a lot lives, the way it is kept.
    pub(crate) fn lot_life(&self, life: &Result<SeedLife, NoLife>, day: Day) -> String {
        let life = match life {
            Ok(life) => life,
            Err(NoLife::NotReceived) => return self.lot_life_not_received(),
            Err(NoLife::UnknownSpecies) => return self.lot_life_no_species(),
            Err(NoLife::NoFigure(kept)) => return self.lot_life_no_figure(self.kept_name(*kept)),
        };
        let (from, last) = (self.day(life.from), self.day(life.last_day()));
        if let Some(below) = life.killed_below_c {
            return self.lot_life_killed(from, self.number(below, 1));
        }
        if life.keeping_unknown() {
            return self.lot_life_unsaid(life.days, life.longest_days, from);
        }
        match (life.days_left(day), life.from_collection) {
            (left @ 0.., false) => self.lot_life_left(life.days, from, left, last),
            (left @ 0.., true) => self.lot_life_left_collected(life.days, from, left, last),
            (left, false) => self.lot_life_over(life.days, from, last, -left),
            (left, true) => self.lot_life_over_collected(life.days, from, last, -left),
        }
    }

    /// What lives of a lot today, and from what it began.
    pub(crate) fn lot_expected(&self, viability: &Result<Expected, NoViability>) -> String {
        let told = match viability {
            Ok(told) => told,
            Err(NoViability::NoStart) => return self.lot_no_start(),
            Err(NoViability::NoFigures) => return self.lot_no_figures(),
            Err(NoViability::StoreUnknown) => return self.lot_no_store(),
            Err(NoViability::OpenAir) => return self.lot_open_air(),
            Err(NoViability::OutlivedItsLife) => return self.lot_outlived(),
        };
        let [low, likely, high] = self.three(told.today);
        let (began, day) = (told.start.share, self.day(told.start.day));
        let [began_low, began_likely, began_high] = self.three(began);
        let from = match told.start.from {
            StartFrom::Test => self.lot_from_test(began_likely, began_low, began_high, day),
            StartFrom::Arrival => self.lot_from_arrival(began_likely, day),
            StartFrom::Handbook => self.lot_from_handbook(began_likely, day),
        };
        let unsaid = matches!(told.by, Way::Life { life_days, longest_days, .. } if longest_days > life_days);
        let today = match (low == high || told.today.high < 0.005, unsaid) {
            (true, _) => self.lot_alive_about(likely),
            (false, true) => self.lot_alive_unsaid(low, high),
            (false, false) => self.lot_alive(likely, low, high),
        };
        format!("{today}, {from}")
    }

    /// When a lot is down to a part of what it began with.
    pub(crate) fn lot_falls(&self, told: &Expected, until: Range, part: f64) -> String {
        let share = self.percent(told.start.share.likely * part);
        if until.likely <= 0.0 {
            return self.lot_falls_already(share);
        }
        let [low, likely, high] = [until.low.floor(), until.likely.ceil(), until.high.ceil()].map(rounded_days);
        self.lot_falls_in(likely as i64, self.number(low, 0), self.number(high, 0), share)
    }

    /// How what lives is reckoned.
    pub(crate) fn lot_reckoned(&self, told: &Expected) -> String {
        match told.by {
            Way::Equation { store, sigma_days, within_limits, .. } => {
                let moisture = self.percent(store.moisture_pct / 100.0);
                let said = self.lot_by_equation(moisture, self.number(store.temp_c, 1), self.number(sigma_days, 1));
                if within_limits { said } else { format!("{said}; {}", self.lot_by_equation_outside()) }
            }
            Way::Killed => self.lot_by_cold(),
            Way::Life { life_days, store_unknown, .. } => {
                let said = self.lot_by_life(life_days, self.percent(SPREAD_SHARE));
                if store_unknown { format!("{said}; {}", self.lot_by_life_store()) } else { said }
            }
        }
    }

    /// Where that comes from: the paper of the constants, else the source of the days of life.
    pub(crate) fn lot_source(&self, outlook: &LotOutlook) -> Option<String> {
        if let Ok(Expected { by: Way::Equation { record, .. }, .. }) = &outlook.viability {
            return Some(self.lot_by_equation_source(record.species, record.source));
        }
        outlook.life.as_ref().ok().map(|life| self.source_words(&life.source))
    }

    /// A test.
    pub(crate) fn lot_test(&self, test: &TestRead) -> String {
        let [low, likely, high] = self.three(test.share);
        let said = match test.whole_on {
            None => self.lot_tested(self.day(test.day), test.germinated, test.seeds, likely, low, high),
            Some(until) => {
                let days = test.day.days_since(test.laid_out);
                let share = self.percent(f64::from(test.germinated) / f64::from(test.seeds.max(1)));
                let (on, until) = (self.day(test.day), self.day(until));
                self.lot_tested_short(on, test.germinated, test.seeds, days, share, until)
            }
        };
        let Some(told) = test.replicates else { return said };
        let counts = test.counts.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ");
        let agree = match test.differ() {
            Differ::Apart => self.lot_replicates_apart(counts),
            Differ::Agree => self.lot_replicates_agree(counts),
            Differ::Unknown => return format!("{said}; {}", self.lot_replicates_cannot_tell(counts)),
        };
        let by = match (told.max_tolerated_range, told.p_value) {
            (Some(most), _) => format!(" ({})", self.lot_replicates_most(told.range, most)),
            (None, Some(chance)) => format!(" ({})", self.lot_replicates_chance(self.percent(chance))),
            (None, None) => String::new(),
        };
        format!("{said}; {agree}{by}")
    }

    /// When a lot is tested again, and why.
    pub(crate) fn lot_retest(&self, retest: &Result<Retest, NoRetest>, day: Day) -> String {
        let retest = match retest {
            Ok(retest) => retest,
            Err(NoRetest::SeedsUnknown) => return self.lot_retest_unknown_seeds(),
            Err(NoRetest::FewSeeds { left }) => return self.lot_retest_few(self.seeds(*left)),
            Err(NoRetest::NoDay) => return self.lot_retest_no_day(),
            Err(NoRetest::TestedDead) => return self.lot_retest_tested_dead(),
            Err(NoRetest::Killed) => return self.lot_retest_killed(),
            Err(NoRetest::LivesTooShort { takes_days }) => {
                return self.lot_retest_too_late(*takes_days, self.cut_some_open());
            }
        };
        let due = retest.on <= day;
        let days = if due { day.days_since(retest.since()) } else { retest.every_days };
        let why = match retest.why {
            RetestWhy::NeverTested { .. } => self.lot_retest_never(days),
            RetestWhy::TestOld { .. } => self.lot_retest_old(days),
            RetestWhy::Falling { .. } => self.lot_retest_falling(retest.every_days),
            RetestWhy::ReplicatesApart { .. } => self.lot_retest_apart(),
        };
        let on = self.day(retest.on);
        if due { self.lot_retest_due(on, why) } else { self.lot_retest_later(on, why) }
    }

    /// Low, likely and high as percent.
    fn three(&self, share: Range) -> [String; 3] {
        [share.low, share.likely, share.high].map(|share| self.percent(share))
    }
}
