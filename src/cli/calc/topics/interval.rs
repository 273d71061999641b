//! `calc interval`.

use serde_json::json;

use crate::cli::calc::answer::{Answer, ends};
use crate::cli::calc::args::Interval;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::interval::{clopper_pearson, jeffreys};
use crate::science::sampling::wilson;
use crate::wording::Wording;

/// How sure, where nobody says. Common practice.
const USUAL_LEVEL: f64 = 0.95;

/// What was typed.
pub(crate) fn typed(typed: &Interval) -> Given {
    let mut given = Given::default();
    given.put("x", typed.x);
    given.put("n", typed.n);
    given.put_whole_percent("level", typed.level);
    if !given.is_empty() {
        given.or_put("level", USUAL_LEVEL);
    }
    given
}

/// Three intervals of a share.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let (x, n, level) = (given.count("x")?, given.count("n")?, given.number("level")?);
    let exact = clopper_pearson(x, n, level)?;
    let usual = wilson(x, n, level)?;
    let bayes = jeffreys(x, n, level)?;
    let mut answer = Answer::new(wording.calc_interval_formula(), wording.calc_interval_source());
    answer.say(wording.calc_interval_some(
        x,
        n,
        wording.percent(usual.likely),
        wording.percent(usual.low),
        wording.percent(usual.high),
        wording.percent(level),
    ));
    answer.figure("clopper_pearson", ends(exact));
    answer.figure("wilson", json!([usual.low, usual.high]));
    answer.figure("jeffreys_equal_tail", ends(bayes));
    Ok(answer)
}
