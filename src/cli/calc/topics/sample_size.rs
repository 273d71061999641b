//! `calc sample_size`.

use crate::cli::calc::answer::Answer;
use crate::cli::calc::args::SampleSize;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::WrongInput;
use crate::science::sampling::{sample_size_detection, sample_size_mean, sample_size_share};
use crate::science::wrong_input::share;
use crate::wording::Wording;

/// How sure, where nobody says. Common practice.
const USUAL_CONFIDENCE: f64 = 0.95;
/// How far off a mean or share may be, where nobody says: a tenth. Common practice.
const USUAL_HALF_WIDTH: f64 = 0.10;
/// The share expected, where nobody says: the one that asks for most.
const WORST_SHARE: f64 = 0.5;

/// What was typed.
pub(crate) fn typed(typed: &SampleSize) -> Given {
    let mut given = Given::default();
    given.put_text("kind", typed.kind.as_ref());
    given.put_percent("confidence", typed.confidence);
    given.put_percent("p", typed.p);
    given.put_percent("cv", typed.cv);
    given.put_percent("prevalence", typed.prevalence);
    given.put_percent("half_width", typed.half_width);
    given.put("population", typed.population);
    if !given.is_empty() {
        given.or_put("confidence", USUAL_CONFIDENCE);
        given.or_put("half_width", USUAL_HALF_WIDTH);
        if typed.kind.is_none() {
            let kind = match (typed.cv, typed.prevalence) {
                (Some(_), _) => "mean",
                (None, Some(_)) => "detection",
                (None, None) => "proportion",
            };
            given.put_text("kind", Some(&kind.to_string()));
        }
        if given.value("cv").is_none() && given.value("prevalence").is_none() {
            given.or_put("p", WORST_SHARE);
        }
    }
    given
}

/// How many to look at.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let kind = given.maybe_text("kind")?.ok_or(Wrong::Input(WrongInput::Missing { input: "kind" }))?;
    let confidence = share("confidence", given.number("confidence")?)?;
    let population = given.maybe_count("population")?;
    let (all, some) = match kind {
        "proportion" => {
            let (share, half_width) = (given.number("p")?, given.number("half_width")?);
            let of = |population| sample_size_share(share, half_width, confidence, population);
            (of(None)?, population.map(|all| of(Some(all))).transpose()?)
        }
        "mean" => {
            let spread = match given.maybe_number("sd")? {
                Some(deviation) => deviation,
                None => given.number("cv")?,
            };
            let half_width = given.number("half_width")?;
            let of = |population| sample_size_mean(spread, half_width, confidence, population);
            (of(None)?, population.map(|all| of(Some(all))).transpose()?)
        }
        "detection" => (sample_size_detection(given.number("prevalence")?, confidence)?, None),
        other => {
            let known = "proportion, mean, detection";
            return Err(Wrong::Word { input: "kind", written: other.to_string(), known });
        }
    };
    let mut answer = Answer::new(wording.calc_sample_size_formula(), wording.calc_sample_size_source());
    answer.say(match (some, population) {
        (Some(some), Some(population)) => {
            wording.calc_sample_size_of(some, population, all, wording.percent(confidence))
        }
        (None, _) | (_, None) => wording.calc_sample_size_some(all, wording.percent(confidence)),
    });
    answer.figure("n_infinite", all);
    answer.figure("n_finite", some);
    Ok(answer)
}
