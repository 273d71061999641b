//! `calc growth`.

use serde_json::{Value, json};

use crate::cli::calc::answer::{Answer, ends};
use crate::cli::calc::args::Growth;
use crate::cli::calc::given::{Given, Wrong};
use crate::reckon::growth::LEAST_SAMPLES;
use crate::science::growth::{GrowthFit, GrowthModel, Reached, fit_growth};
use crate::science::interval::Interval;
use crate::science::wrong_input::positive;
use crate::wording::Wording;

/// When a height is reached. No end of its interval lies before the first look, nor before the last day on which the mean was below it,
/// where the curve itself has that day behind it.
fn reached(fit: &GrowthFit, (t, y): (&[f64], &[f64]), target: f64) -> Option<Reached> {
    let mut reached = fit.reaches(target)?;
    let mut looks: Vec<(f64, Vec<f64>)> = Vec::new();
    for (&day, &height) in t.iter().zip(y) {
        match looks.last_mut() {
            Some((last, heights)) if *last == day => heights.push(height),
            Some(_) | None => looks.push((day, vec![height])),
        }
    }
    let is_below = |heights: &[f64]| heights.iter().sum::<f64>() < target * heights.len() as f64;
    let below = looks.iter().rev().find(|(_, heights)| is_below(heights)).map(|(day, _)| *day);
    let least = below.or(t.first().copied()).map_or(f64::NEG_INFINITY, |day| day.min(reached.t));
    let first = t.first().copied().unwrap_or(f64::NEG_INFINITY);
    reached.ci95 = reached.ci95.map(|ends| {
        let not_before = |day: f64| day.max(least).max(first);
        Interval { low: not_before(ends.low), high: not_before(ends.high) }
    });
    Some(reached)
}

/// Whether the heights tell where growth ends: its error is less than the end itself.
fn tells_its_end(fit: &GrowthFit) -> bool {
    fit.errors.is_none_or(|errors| errors[0] < fit.curve.a)
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
        let tells = t.chunk_by(|a, b| a == b).count() >= LEAST_SAMPLES;
        match fit.as_ref().filter(|_| !tells) {
            Some(_) => answer.say(wording.calc_growth_few(&name, LEAST_SAMPLES)),
            None => say(&mut answer, fit.as_ref(), &name, (&targets, (&t, &y)), wording),
        }
        let fit = fit.filter(|_| tells);
        answer.figure(key, figures(fit.as_ref(), &targets, (&t, &y)));
    }
    Ok(answer)
}

fn say(
    answer: &mut Answer,
    fit: Option<&GrowthFit>,
    name: &str,
    (targets, measured): (&[f64], (&[f64], &[f64])),
    wording: &Wording,
) {
    let Some(fit) = fit else {
        answer.say(wording.calc_growth_untold(name));
        return;
    };
    answer.say(match tells_its_end(fit) {
        true => wording.calc_growth_ends(name, wording.number(fit.curve.a, 1)),
        false => wording.calc_growth_no_end(name),
    });
    for &target in targets {
        let height = wording.number(target, 1);
        answer.say(match reached(fit, measured, target).map(|reached| (reached.t, reached.ci95)) {
            Some((day, Some(ends))) => wording.calc_growth_reaches_between(
                name,
                height,
                wording.number(day, 1),
                wording.number(ends.low, 1),
                wording.number(ends.high, 1),
            ),
            Some((day, None)) => wording.calc_growth_reaches(name, height, wording.number(day, 1)),
            None => wording.calc_growth_never(name, height),
        });
    }
}

fn figures(fit: Option<&GrowthFit>, targets: &[f64], measured: (&[f64], &[f64])) -> Value {
    let predictions: Vec<Value> = targets
        .iter()
        .map(|&target| {
            let reached = fit.and_then(|fit| reached(fit, measured, target));
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
