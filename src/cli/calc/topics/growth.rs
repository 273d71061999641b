//! `calc growth`.

use serde_json::{Value, json};

use crate::cli::calc::answer::{Answer, ends};
use crate::cli::calc::args::Growth;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::growth::{GrowthFit, GrowthModel, fit_growth};
use crate::science::wrong_input::positive;
use crate::wording::Wording;

/// Days measured below which no day and no end is told (ours, as `why` has it).
const LEAST_DAYS: usize = 4;

/// An end of an interval: not before the first look.
fn not_before(first: Option<f64>, day: f64) -> f64 {
    first.map_or(day, |first| first.max(day))
}

/// What was typed.
pub(crate) fn typed(typed: &Growth) -> Given {
    let mut given = Given::default();
    given.put_list("t", typed.t.as_ref());
    given.put_list("y", typed.y.as_ref());
    given.put_list("target", typed.target.as_ref());
    given
}

/// Both curves, and when each height is reached.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let (t, y) = (given.numbers("t")?, given.numbers("y")?);
    let targets = if given.value("target").is_some() { given.numbers("target")? } else { Vec::new() };
    for &target in &targets {
        positive("target", target)?;
    }
    let mut answer = Answer::new(wording.calc_growth_formula(), wording.calc_growth_source());
    for model in GrowthModel::ALL {
        let (key, name) = match model {
            GrowthModel::Logistic => ("logistic", wording.calc_growth_logistic()),
            GrowthModel::Gompertz => ("gompertz", wording.calc_growth_gompertz()),
        };
        let fit = fit_growth(model, &t, &y)?;
        // Three days fit three numbers of themselves: they tell no day and no end.
        let tells = t.chunk_by(|a, b| a == b).count() >= LEAST_DAYS;
        match fit.as_ref().filter(|_| !tells) {
            Some(_) => answer.say(wording.calc_growth_few(&name, LEAST_DAYS)),
            None => say(&mut answer, fit.as_ref(), &name, (&targets, t.first().copied()), wording),
        }
        let fit = fit.filter(|_| tells);
        answer.figure(key, figures(fit.as_ref(), &targets));
    }
    Ok(answer)
}

fn say(
    answer: &mut Answer,
    fit: Option<&GrowthFit>,
    name: &str,
    (targets, first): (&[f64], Option<f64>),
    wording: &Wording,
) {
    let Some(fit) = fit else {
        answer.say(wording.calc_growth_untold(name));
        return;
    };
    answer.say(wording.calc_growth_ends(name, wording.number(fit.curve.a, 1)));
    for &target in targets {
        let height = wording.number(target, 1);
        answer.say(match fit.reaches(target).map(|reached| (reached.t, reached.ci95)) {
            Some((day, Some(ends))) => wording.calc_growth_reaches_between(
                name,
                height,
                wording.number(day, 1),
                wording.number(not_before(first, ends.low), 1),
                wording.number(not_before(first, ends.high), 1),
            ),
            Some((day, None)) => wording.calc_growth_reaches(name, height, wording.number(day, 1)),
            None => wording.calc_growth_never(name, height),
        });
    }
}

fn figures(fit: Option<&GrowthFit>, targets: &[f64]) -> Value {
    let predictions: Vec<Value> = targets
        .iter()
        .map(|&target| {
            let reached = fit.and_then(|fit| fit.reaches(target));
            let interval = reached.and_then(|reached| reached.ci95);
            json!({
                "target": target,
                "t": reached.map(|reached| reached.t),
                "se": reached.and_then(|reached| reached.se),
                "ci95": interval.map(ends),
            })
        })
        .collect();
    let error = |i: usize| fit.and_then(|fit| fit.errors).map(|errors| errors[i]);
    json!({
        "A": fit.map(|fit| fit.curve.a),
        "k": fit.map(|fit| fit.curve.k),
        "t0": fit.map(|fit| fit.curve.t0),
        "se_A": error(0),
        "se_k": error(1),
        "se_t0": error(2),
        "rss": fit.map(|fit| fit.rss),
        "predictions": predictions,
    })
}
