//! `calc replicates`.

use crate::cli::calc::answer::Answer;
use crate::cli::calc::args::Replicates;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::sampling::{AGREE_FROM_SEEDS, Differ, agreement};
use crate::wording::Wording;

/// What was typed.
pub(crate) fn typed(typed: &Replicates) -> Given {
    let mut given = Given::default();
    given.put_list("replicates", typed.replicates.as_ref());
    given.put("n_each", typed.n_each);
    given
}

/// Whether replicates differ by more than chance.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let told = agreement(&given.counts("replicates")?, given.count("n_each")?)?;
    let mut answer = Answer::new(wording.calc_replicates_formula(), wording.calc_replicates_source());
    let mean = wording.number(told.mean, 2);
    answer.say(match (told.max_tolerated_range, told.within_tolerance) {
        (Some(most), Some(true)) => wording.calc_replicates_agree(told.range, most, mean),
        (Some(most), Some(false)) => wording.calc_replicates_apart(told.range, most, mean),
        (None, _) | (_, None) if told.differ() == Differ::Unknown => {
            wording.calc_replicates_cannot_tell(told.range, told.seeds, AGREE_FROM_SEEDS)
        }
        (None, _) | (_, None) => match told.p_value {
            Some(chance) => wording.calc_replicates_by_chance(told.range, wording.percent(chance)),
            None => wording.calc_replicates_same(mean),
        },
    });
    answer.figure("mean", told.mean);
    answer.figure("range", told.range);
    answer.figure("max_tolerated_range", told.max_tolerated_range);
    answer.figure("within_tolerance", told.within_tolerance);
    answer.figure("chi2", told.chi_squared);
    answer.figure("p_value", told.p_value);
    Ok(answer)
}
