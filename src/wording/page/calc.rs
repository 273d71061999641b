//! The words of `calc`: what a formula says, where it comes from, and what is wrong with what it was given.

use crate::science::WrongInput;
use crate::wording::Wording;
use crate::wording::messages::messages;

messages! {
    calc_formula();
    calc_source();
    calc_none();
    calc_yes();
    calc_no();
    calc_nothing_given();
    calc_not_json(fault: text);
    calc_word(input: text, written: text, known: text);
    wrong_missing(input: text);
    wrong_not_a_number(input: text);
    wrong_not_positive(input: text);
    wrong_outside(input: text, low: text, high: text);
    wrong_exactly(input: text, value: text);
    wrong_below(input: text, low: text);
    wrong_not_whole(input: text);
    wrong_uneven(input: text, other: text);
    wrong_out_of_order(input: text);
    wrong_more_than(input: text, part: text, other: text, whole: text);
    wrong_too_many(input: text, most: text);
    wrong_too_large();
    calc_germination_some(germinated: count, seeds: count, percent: text, mean: text, half: text);
    calc_germination_none(seeds: count);
    calc_germination_formula();
    calc_germination_source();
    calc_emergence_some(up: text, seeds: text, percent: text, low: text, high: text, plants: text);
    calc_emergence_half(day: text);
    calc_emergence_unknown(up: text, seeds: text);
    calc_emergence_by(day: text, plants: text);
    calc_emergence_formula();
    calc_emergence_source();
    calc_sowing_some(seeds: count, wanted: count, confidence: text, success: text, divided: count, short: text);
    calc_sowing_formula();
    calc_sowing_source();
    calc_interval_some(found: count, looked_at: count, share: text, low: text, high: text, level: text);
    calc_interval_formula();
    calc_interval_source();
    calc_replicates_agree(range: count, most: count, mean: text);
    calc_replicates_apart(range: count, most: count, mean: text);
    calc_replicates_by_chance(range: count, chance: text);
    calc_replicates_cannot_tell(range: text, seeds: text, least: text);
    calc_replicates_same(mean: text);
    calc_replicates_formula();
    calc_replicates_source();
    calc_viability_some(initial: text, left: text, days: text, half: text);
    calc_viability_target(target: text, days: text);
    calc_viability_ends();
    calc_viability_outside(driest: text, wettest: text, coldest: text, warmest: text);
    calc_viability_formula();
    calc_viability_source();
    calc_quality_good(quotient: text);
    calc_quality_weed_free(quotient: text);
    calc_quality_space_out(quotient: text);
    calc_quality_cull(quotient: text);
    calc_quality_dickson(index: text, least: text);
    calc_quality_formula();
    calc_quality_source();
    calc_sample_size_some(sampled: count, confidence: text);
    calc_sample_size_of(sampled: count, population: count, many: count, confidence: text);
    calc_sample_size_formula();
    calc_sample_size_source();
    calc_growth_logistic();
    calc_growth_gompertz();
    calc_growth_ends(name: text, height: text);
    calc_growth_reaches(name: text, height: text, day: text);
    calc_growth_reaches_between(name: text, height: text, day: text, low: text, high: text);
    calc_growth_never(name: text, height: text);
    calc_growth_untold(name: text);
    calc_growth_formula();
    calc_growth_source();
    help_calc();
    help_calc_more();
    help_calc_germination();
    help_calc_germination_times();
    help_calc_germination_counts();
    help_calc_germination_seeds();
    help_calc_emergence();
    help_calc_emergence_edges();
    help_calc_emergence_counts();
    help_calc_emergence_seeds();
    help_calc_emergence_last_day();
    help_calc_sowing();
    help_calc_sowing_wanted();
    help_calc_sowing_confidence();
    help_calc_sowing_species();
    help_calc_sowing_germination();
    help_calc_sowing_sown();
    help_calc_sowing_germinated();
    help_calc_sowing_prior_a();
    help_calc_sowing_prior_b();
    help_calc_sowing_survival();
    help_calc_sowing_survival_beta();
    help_calc_interval();
    help_calc_interval_x();
    help_calc_interval_n();
    help_calc_interval_level();
    help_calc_replicates();
    help_calc_replicates_replicates();
    help_calc_replicates_n_each();
    help_calc_viability();
    help_calc_viability_species();
    help_calc_viability_ke();
    help_calc_viability_cw();
    help_calc_viability_ch();
    help_calc_viability_cq();
    help_calc_viability_initial();
    help_calc_viability_tested();
    help_calc_viability_moisture();
    help_calc_viability_temp();
    help_calc_viability_days();
    help_calc_viability_target();
    help_calc_quality();
    help_calc_quality_height();
    help_calc_quality_collar();
    help_calc_quality_shoot();
    help_calc_quality_root();
    help_calc_sample_size();
    help_calc_sample_size_kind();
    help_calc_sample_size_confidence();
    help_calc_sample_size_p();
    help_calc_sample_size_cv();
    help_calc_sample_size_prevalence();
    help_calc_sample_size_half_width();
    help_calc_sample_size_population();
    help_calc_growth();
    help_calc_growth_t();
    help_calc_growth_y();
    help_calc_growth_target();
}

impl Wording {
    /// Why a formula has no answer.
    pub fn wrong_input(&self, wrong: &WrongInput) -> String {
        match *wrong {
            WrongInput::Missing { input } => self.wrong_missing(input),
            WrongInput::NotANumber { input } => self.wrong_not_a_number(input),
            WrongInput::NotPositive { input } => self.wrong_not_positive(input),
            WrongInput::Outside { input, low, high } if low == high => self.wrong_exactly(input, self.number(low, 3)),
            WrongInput::Outside { input, low, high } if high >= f64::from(u32::MAX) => {
                self.wrong_below(input, self.number(low, 3))
            }
            WrongInput::Outside { input, low, high } => {
                self.wrong_outside(input, self.number(low, 3), self.number(high, 3))
            }
            WrongInput::NotWhole { input } => self.wrong_not_whole(input),
            WrongInput::Uneven { input, other } => self.wrong_uneven(input, other),
            WrongInput::OutOfOrder { input } => self.wrong_out_of_order(input),
            WrongInput::MoreThan { input, part, other, whole } => self.wrong_more_than(input, part, other, whole),
            WrongInput::TooMany { input, most } => self.wrong_too_many(input, most),
            WrongInput::TooLarge => self.wrong_too_large(),
        }
    }
}
