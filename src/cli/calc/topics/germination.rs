//! `calc germination`.

use crate::cli::calc::answer::Answer;
use crate::cli::calc::args::Germination;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::germination::germination;
use crate::wording::Wording;

/// What was typed.
pub(crate) fn typed(typed: &Germination) -> Given {
    let mut given = Given::default();
    given.put_list("times", typed.times.as_ref());
    given.put_list("counts", typed.counts.as_ref());
    given.put("seeds", typed.seeds);
    given
}

/// The figures of a series of counts.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let seeds = given.count("seeds")?;
    let told = germination(&given.numbers("times")?, &given.counts("counts")?, seeds)?;
    let mut answer = Answer::new(wording.calc_germination_formula(), wording.calc_germination_source());
    answer.say(match (told.mgt, told.t50_farooq) {
        (Some(mean), Some(half)) => wording.calc_germination_some(
            told.germinated as i64,
            seeds,
            wording.percent(told.germ_pct / 100.0),
            wording.number(mean, 1),
            wording.number(half, 1),
        ),
        (None, _) | (_, None) => wording.calc_germination_none(seeds),
    });
    answer.figure("germinated", told.germinated);
    answer.figure("germination_pct", told.germ_pct);
    for (key, figure) in [
        ("mean_days", told.mgt),
        ("days_variance", told.var_gt),
        ("mean_days_standard_error", told.se_mgt),
        ("days_spread_pct", told.cv_gt.map(|share| 100.0 * share)),
        ("half_up_days", told.t50_coolbear),
        ("half_up_days_farooq", told.t50_farooq),
        ("mean_rate", told.mgr),
        ("velocity", told.cvg),
        ("rate_index_seeds", told.gri_counts),
        ("rate_index_percent", told.gri_percent),
        ("uncertainty", told.uncertainty),
        ("synchrony", told.synchrony),
        ("uniformity", told.cug),
    ] {
        answer.figure(key, figure);
    }
    Ok(answer)
}
