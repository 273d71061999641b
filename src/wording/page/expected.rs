//! What is expected, as pairs of a label and what stands behind it: of a tray, of a species, of a lot, of a sowing, of growth.
//! The command line and the screens show the same pairs.

use std::cmp::Ordering;

use super::growth::GrowthOf;
use crate::base::{Day, SpeciesKey, TrayCode};
use crate::reckon::forecast::worth::{WorthLooking, of_tray};
use crate::reckon::forecast::{ForecastBasis, Judgement, Outlook, TrayForecast, TrayStock};
use crate::reckon::growth::{Coming, TrayGrowth};
use crate::reckon::lots::{HALF_SHARE, LotOutlook, OLD_SHARE, TEST_SEEDS};
use crate::reckon::picture::Picture;
use crate::reckon::round::is_asked_about;
use crate::reckon::seed::SeedLife;
use crate::reckon::sowing::SowingPlan;
use crate::reckon::stock::LotStory;
use crate::reckon::tray::size::whole_plants;
use crate::wording::Wording;

/// A label and what stands behind it.
pub type Labelled = (String, String);

impl Wording {
    /// What is expected of a tray: labels with their lines, an empty label where a line goes on.
    pub(crate) fn forecast_lines(
        &self,
        tray: &TrayCode,
        picture: &Picture,
        outlook: &Outlook,
        worth: &[WorthLooking],
    ) -> Vec<Labelled> {
        let mut lines = Vec::new();
        let known = picture.trays.get(tray);
        let seed_stands = known.is_some_and(|tray| tray.seed > 0);
        // What came up long ago is not waited for.
        let asked = known.is_some_and(|tray| is_asked_about(&tray.story, picture.day) && !tray.ready);
        if let Some(told) = outlook.trays.get(tray).filter(|_| asked) {
            let reasons = self.forecast_reasons(told, picture.day).join("; ");
            lines.push((self.label_sowing(), format!("{}: {reasons}", self.judgement_name(told.judgement))));
            if seed_stands {
                lines.push((self.label_in_the_end(), self.in_the_end_words(told)));
                lines.push((self.label_last_to_come(), self.forecast_last_day(self.day(told.last_due))));
                lines.push((self.label_waiting(), self.waiting_words(told, picture.day)));
            }
            let asks = match told.judgement {
                Judgement::Failing => true,
                Judgement::Slow | Judgement::Finished => told.ask_to_sow_again,
                Judgement::TooEarly | Judgement::OnItsWay => false,
            };
            let again = outlook.again.get(tray).filter(|_| asks && seed_stands);
            lines.extend(again.map(|again| (self.label_sow_again(), self.sow_again_words(again))));
        }
        if let Some(stock) = outlook.stock.get(tray) {
            let said = self.stock_words(stock);
            // Beside what is good enough today another number wants its reason.
            let today = known
                .filter(|tray| tray.standing > 0 && tray.seed == 0)
                .map(|tray| whole_plants(tray.plantable.likely));
            let said = match today.map(|today| whole_plants(stock.plants.likely).cmp(&today)) {
                Some(Ordering::Less) => self.will_give_fewer(said),
                // Bare roots grow nowhere.
                Some(Ordering::Greater) if known.is_some_and(|tray| !tray.story.is_bare()) => self.will_give_more(said),
                Some(Ordering::Greater | Ordering::Equal) | None => said,
            };
            lines.push((self.label_will_give(), said));
        }
        let worth = of_tray(worth, tray).map(|worth| self.worth_said_words(worth)).collect();
        lines.extend(labelled_once(self.label_worth(), worth));
        lines
    }

    /// What the handbook and this nursery say of the species of a tray that will give plants.
    pub(crate) fn known_here_lines(&self, tray: &TrayCode, picture: &Picture, outlook: &Outlook) -> Vec<Labelled> {
        let Some(stock) = outlook.stock.get(tray) else { return Vec::new() };
        let mut known = self.experience_words(&outlook.experience_of(&stock.species, picture));
        if outlook.forecast_basis == ForecastBasis::Handbook {
            known.push(self.learned_ignored());
        }
        labelled_once(self.label_known_here(), known).collect()
    }

    /// How what is expected of a tray is reckoned: what is known of its species, formulas with their numbers, what was known
    /// beforehand, and the sources.
    pub(crate) fn forecast_formulas(&self, tray: &TrayCode, picture: &Picture, outlook: &Outlook) -> Vec<Labelled> {
        let mut lines = self.known_here_lines(tray, picture, outlook);
        if let Some(told) = outlook.trays.get(tray) {
            lines.push((self.label_formula(), self.forecast_formula_words(told)));
            lines.push((self.label_beforehand(), self.beforehand_words(told)));
            lines.push((self.label_source(), self.forecast_source()));
        }
        if let Some(stock) = outlook.stock.get(tray) {
            lines.push((self.label_formula(), self.stock_formula_words(stock)));
            lines.push((self.label_source(), self.stock_source()));
        }
        lines
    }

    /// The labels of all of these, for alignment.
    pub(crate) fn forecast_labels(&self) -> Vec<String> {
        vec![
            self.label_sowing(),
            self.label_in_the_end(),
            self.label_last_to_come(),
            self.label_waiting(),
            self.label_sow_again(),
            self.label_will_give(),
            self.label_known_here(),
            self.label_worth(),
            self.label_formula(),
            self.label_beforehand(),
            self.label_source(),
        ]
    }

    fn forecast_formula_words(&self, told: &TrayForecast) -> String {
        let curve = told.curve;
        let said = self.forecast_formula(self.percent(curve.d), self.number(curve.b, 1), self.number(curve.t50, 0));
        if told.sowings.len() > 1 { format!("{said}; {}", self.forecast_formula_several()) } else { said }
    }

    /// What was known of a sowing beforehand: the middle 90 % of the half day and of the share that comes up.
    fn beforehand_words(&self, told: &TrayForecast) -> String {
        let (half, share) = (told.prior.half_day(), told.prior.share());
        let days = |days: f64| self.number(days, 0);
        let said = self.forecast_beforehand(
            days(half.likely),
            days(half.low),
            days(half.high),
            self.percent(share.likely),
            self.percent(share.low),
            self.percent(share.high),
        );
        match told.learned_from {
            0 => said,
            sowings => format!("{said}; {}", self.forecast_beforehand_learned(sowings as i64)),
        }
    }

    fn stock_formula_words(&self, stock: &TrayStock) -> String {
        if stock.survival == 1.0 && stock.culls == 0.0 {
            return self.stock_formula_ready();
        }
        let from = self.number(stock.from.likely, 0);
        self.stock_formula(from, self.percent(stock.survival), self.percent(stock.culls))
    }

    /// What is known and what is coming of a species: headings with their lines.
    pub(crate) fn species_lines(
        &self,
        species: &SpeciesKey,
        picture: &Picture,
        outlook: &Outlook,
    ) -> Vec<(String, Vec<String>)> {
        let mut known = self.experience_words(&outlook.experience_of(species, picture));
        if outlook.forecast_basis == ForecastBasis::Handbook {
            known.push(self.learned_ignored());
        }
        let all = [(self.learned_heading(), known), (self.stock_coming_heading(), self.coming_words(species, outlook))];
        all.into_iter().filter(|(_, lines)| !lines.is_empty()).collect()
    }

    /// What is coming of a species, a line a month.
    pub(crate) fn coming_words(&self, species: &SpeciesKey, outlook: &Outlook) -> Vec<String> {
        let coming = outlook.pipelines.iter().filter(|pipeline| pipeline.species == *species);
        coming.flat_map(|pipeline| self.pipeline_words(pipeline)).collect()
    }

    /// What a lot is still worth and how that is reckoned.
    pub(crate) fn lot_worth_lines(&self, lot: &LotStory, outlook: &LotOutlook, day: Day) -> Vec<Labelled> {
        let left = match lot.seeds_left {
            None => self.lot_left_unknown(),
            Some(0) => self.lot_none_left(),
            Some(left) => self.seeds_left(left, lot.counted),
        };
        let mut lines = vec![(self.lot_label_left(), left)];
        let kept = self.lot_kept_words(lot, day);
        lines.extend(Some((self.lot_label_kept(), kept)).filter(|(_, kept)| !kept.is_empty()));
        // Of dead seed no days are left.
        let dead = outlook.dead_by_test().is_some();
        lines.extend((!dead).then(|| (self.lot_label_life(), self.lot_life(&outlook.life, day))));
        lines.push((self.lot_label_alive(), self.lot_expected(&outlook.viability)));
        lines
    }

    /// What came up of the sowings of a lot that are over, the last three, where a tray has no other seed.
    pub(crate) fn lot_sown_lines(&self, lot: &LotStory, picture: &Picture) -> Vec<Labelled> {
        let mut over: Vec<(Day, String)> = Vec::new();
        for tray in picture.trays.values().filter(|tray| !tray.story.seed_is_due(picture.day)) {
            let ([sowing], accounts) = (tray.story.sowings.as_slice(), &tray.story.accounts) else { continue };
            if sowing.lot.as_ref() == Some(&lot.code) && accounts.sown > 0 && tray.story.moves_in.is_empty() {
                let up = accounts.sown.saturating_sub(accounts.seed);
                over.push((sowing.day, self.lot_sown_from(&tray.code, up, accounts.sown)));
            }
        }
        over.sort_by_key(|(sown, _)| std::cmp::Reverse(*sown));
        let said = over.into_iter().take(3).map(|(_, said)| said).collect::<Vec<_>>().join("; ");
        Vec::from_iter((!said.is_empty()).then(|| (self.lot_label_sown(), said)))
    }

    /// When less of a lot lives, how all of it is reckoned, and its source.
    pub(crate) fn lot_reckoned_lines(&self, outlook: &LotOutlook) -> Vec<Labelled> {
        let mut lines = Vec::new();
        let unsaid = outlook.life.as_ref().is_ok_and(SeedLife::keeping_unknown);
        if let Ok(told) = &outlook.viability {
            // Where anything may be, no day is told.
            if !unsaid && outlook.dead_by_test().is_none() {
                lines.push((self.lot_label_old(), self.lot_falls(told, told.to_old, OLD_SHARE)));
                lines.push((self.lot_label_half(), self.lot_falls(told, told.to_half, HALF_SHARE)));
            }
            lines.push((self.lot_label_reckoned(), self.lot_reckoned(told)));
        }
        lines.extend(self.lot_source(outlook).map(|source| (self.label_source(), source)));
        lines
    }

    fn lot_kept_words(&self, lot: &LotStory, day: Day) -> String {
        let mut parts: Vec<String> = Vec::new();
        if let Some(spell) = lot.kept.last() {
            parts.push(self.lot_kept_since(self.kept_name(spell.what), self.day(spell.from)));
        }
        if let Some(store) = lot.stores.last() {
            parts.extend(store.what.moisture_pct.map(|pct| self.lot_moisture(self.percent(pct / 100.0))));
            parts.extend(store.what.temp_c.map(|celsius| self.lot_temperature(self.number(celsius, 1))));
        }
        if let Some(collected) = lot.collected {
            parts.push(self.lot_collected(self.day(collected), day.days_since(collected)));
        }
        parts.join("; ")
    }

    /// The tests of a lot, and when the next is due.
    pub(crate) fn lot_test_lines(&self, outlook: &LotOutlook, day: Day) -> Vec<Labelled> {
        let mut lines: Vec<Labelled> =
            outlook.tests.iter().map(|test| (self.lot_label_test(), self.lot_test(test))).collect();
        if lines.is_empty() {
            lines.push((self.lot_label_test(), self.lot_never_tested()));
        }
        lines.push((self.lot_label_retest(), self.lot_retest(&outlook.retest, day)));
        lines
    }

    /// What a number of seeds rests on, and what to prepare.
    pub(crate) fn sowing_lines(&self, plan: &SowingPlan) -> Vec<Labelled> {
        let mut lines = vec![
            (self.sowing_label_comes_up(), self.sowing_germination(&plan.germination)),
            (self.sowing_label_becomes(), self.sowing_survival(&plan.survival)),
            (self.sowing_label_weight(), self.sowing_weight(plan.mass_g)),
        ];
        lines.extend(self.sowing_left(plan).map(|left| (self.sowing_label_left(), left)));
        let tested = plan.seeds_if_tested.map(|seeds| self.sowing_if_tested(self.seeds(TEST_SEEDS), seeds));
        lines.extend(tested.map(|said| (self.lot_label_test(), said)));
        lines.push((self.sowing_label_containers(), self.sowing_containers(plan)));
        lines
    }

    /// The formula and the source of a number of seeds.
    pub(crate) fn sowing_formula_line(&self) -> Labelled {
        (self.label_source(), format!("{}. {}", self.sowing_formula(), self.sowing_source()))
    }

    /// The labels of the lines of lots and sowings, for alignment.
    pub(crate) fn lot_labels(&self) -> Vec<String> {
        vec![
            self.lot_label_left(),
            self.lot_label_kept(),
            self.lot_label_life(),
            self.lot_label_alive(),
            self.lot_label_sown(),
            self.lot_label_old(),
            self.lot_label_half(),
            self.lot_label_reckoned(),
            self.lot_label_test(),
            self.lot_label_retest(),
            self.label_source(),
            self.sowing_label_comes_up(),
            self.sowing_label_becomes(),
            self.sowing_label_weight(),
            self.sowing_label_left(),
            self.sowing_label_containers(),
            self.label_plant(),
        ]
    }

    /// How the plants of a tray grow; nothing where nothing is asked of them and nobody measured.
    pub(crate) fn growth_lines(&self, growth: &TrayGrowth) -> Vec<Labelled> {
        let mut lines = Vec::new();
        for (of, grows) in [(GrowthOf::Height, growth.height), (GrowthOf::Collar, growth.collar)] {
            let label = match of {
                GrowthOf::Height => self.growth_label_height(),
                GrowthOf::Collar => self.growth_label_collar(),
            };
            lines.extend(grows.map(|grows| (label, self.growth_coming(of, &grows, growth))));
        }
        if lines.is_empty() && growth.sample.is_none() {
            return Vec::new();
        }
        lines.extend(growth.lanky.as_ref().map(|lanky| (self.growth_label_lanky(), self.growth_lanky(lanky))));
        let sample = growth.sample.as_ref();
        lines.extend(sample.map(|known| (self.growth_label_sample(), self.growth_sample_known(known))));
        lines
    }

    /// The curve of growth with its numbers, and its source.
    pub(crate) fn growth_formulas(&self, growth: &TrayGrowth) -> Vec<Labelled> {
        let of = [(GrowthOf::Height, growth.height), (GrowthOf::Collar, growth.collar)];
        let curve = of.iter().find_map(|(of, grows)| match grows.as_ref()?.coming {
            Coming::Expected(reach) => Some(self.growth_curve(*of, &reach.curve)),
            Coming::There { .. } | Coming::Unknown(_) => None,
        });
        let formula = curve.map(|curve| (self.growth_label_formula(), self.growth_formula(curve)));
        let source = (growth.samples > 0).then(|| (self.label_source(), self.growth_source()));
        formula.into_iter().chain(source).collect()
    }
}

fn labelled_once(label: String, lines: Vec<String>) -> impl Iterator<Item = Labelled> {
    lines.into_iter().enumerate().map(move |(at, line)| (if at == 0 { label.clone() } else { String::new() }, line))
}
