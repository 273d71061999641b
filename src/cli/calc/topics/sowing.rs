//! `calc sowing`.

use serde_json::Value;

use crate::base::Day;
use crate::cli::calc::answer::Answer;
use crate::cli::calc::args::Sowing;
use crate::cli::calc::given::{Given, Wrong};
use crate::reckon::lots::TEST_SEEDS;
use crate::reckon::sowing::{MOST_SEEDS_A_PLANT, NoPlan, TooMany, Wanted, most_seeds, sowing_plan};
use crate::reckon::{View, draw_picture};
use crate::science::WrongInput;
use crate::science::chance::Chance;
use crate::science::sowing::{chance_of_enough, germination_belief, seeds_to_sow};
use crate::wording::Wording;

/// How sure, where nobody says. Common practice.
const USUAL_CONFIDENCE: f64 = 0.95;
/// Belief before a test where nobody says: Jeffreys' prior.
const USUAL_PRIOR: f64 = 0.5;

/// What was typed. A germination alone is taken as known; a test is believed as far as its seeds go.
pub(crate) fn typed(typed: &Sowing) -> Given {
    let mut given = Given::default();
    given.put_text("species", typed.species.as_ref());
    given.put("wanted", typed.wanted);
    given.put_whole_percent("confidence", typed.confidence);
    given.put_whole_percent("germination", typed.germination);
    given.put("sown", typed.sown);
    given.put("germinated", typed.germinated);
    given.put("prior_a", typed.prior_a);
    given.put("prior_b", typed.prior_b);
    given.put_whole_percent("survival", typed.survival);
    given.put_list("survival_beta", typed.survival_beta.as_ref());
    if !given.is_empty() {
        given.or_put("confidence", USUAL_CONFIDENCE);
        if typed.germination.is_none() && typed.species.is_none() {
            given.or_put("prior_a", USUAL_PRIOR);
            given.or_put("prior_b", USUAL_PRIOR);
        }
    }
    given
}

/// The smallest number of seeds that gives enough plants with enough confidence.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    // Where a belief or a germination is given, that is what is asked about.
    let believed = given.value("prior_a").is_some() || given.value("germination").is_some();
    if let (false, Some(species)) = (believed, given.maybe_text("species")?) {
        return of_species(species, given, wording);
    }
    let germination = match given.maybe_number("germination")? {
        Some(share) => Chance::known("germination", share)?,
        None => germination_belief(
            given.number("prior_a")?,
            given.number("prior_b")?,
            given.count("sown")?,
            given.count("germinated")?,
        )?,
    };
    let survival = survival(given)?;
    let (wanted, confidence) = (given.count("wanted")?, given.number("confidence")?);
    let mean = germination.mean() * survival.map_or(1.0, |survival| survival.mean());
    let mut answer = Answer::new(wording.calc_sowing_formula(), wording.calc_sowing_source());
    let told = if mean * f64::from(MOST_SEEDS_A_PLANT) < 1.0 && wanted > 0 {
        None
    } else {
        Some(seeds_to_sow(germination, survival, wanted, confidence)?).filter(|told| told.seeds <= most_seeds(wanted))
    };
    let Some(told) = told else {
        let divided = (f64::from(wanted) / mean).ceil().min(f64::from(u32::MAX)) as u32;
        let on_average = Some(divided).filter(|divided| *divided <= most_seeds(wanted));
        let tested = given.maybe_number("sown")?.is_some_and(|sown| sown >= f64::from(TEST_SEEDS));
        let too_many = TooMany { plants: wanted, mean_success: mean, on_average, tested, too_late_to_test: false };
        answer.say(wording.sowing_no_plan(&NoPlan::TooMany(too_many)));
        answer.figure("seeds", Value::Null);
        answer.figure("prob_at_n", Value::Null);
        answer.figure("mean_success", mean);
        return Ok(answer);
    };
    let divided = (f64::from(wanted) / told.mean_success).ceil().min(f64::from(u32::MAX)) as u32;
    let enough = chance_of_enough(germination, survival, wanted, divided).unwrap_or(1.0);
    answer.say(wording.calc_sowing_some(
        told.seeds,
        wanted,
        wording.percent(confidence),
        wording.percent(told.mean_success),
        divided,
        wording.percent(1.0 - enough),
    ));
    answer.figure("seeds", told.seeds);
    answer.figure("prob_at_n", told.prob_at_n);
    answer.figure("prob_at_n_minus_1", told.prob_at_n_minus_1);
    answer.figure("mean_success", told.mean_success);
    answer.figure("divided", divided);
    answer.figure("prob_divided", enough);
    Ok(answer)
}

/// The same for a species of which there is no lot and no record: what its profile says, as wide as it is known.
fn of_species(written: &str, given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let nowhere = Day::from_number(0);
    let picture = draw_picture(View { day: nowhere, known: None }, nowhere, []);
    let catalogue = &picture.site.species;
    let key = catalogue.find(written).ok_or_else(|| Wrong::Said(wording.not_one_species(written, catalogue)))?;
    let wanted = Wanted { plants: given.count("wanted")?, sure: given.number("confidence")? };
    let plan = sowing_plan(&picture, &key, None, wanted).map_err(|why| match why {
        NoPlan::Wrong(wrong) => Wrong::Input(wrong),
        NoPlan::UnknownSpecies | NoPlan::Dead | NoPlan::TooMany(_) | NoPlan::LifeUnknown { .. } => {
            Wrong::Said(wording.sowing_no_plan(&why))
        }
    })?;
    let mut answer = Answer::new(wording.sowing_formula(), wording.sowing_source());
    answer.say(wording.sowing_said(&plan));
    for (label, text) in wording.sowing_lines(&plan) {
        answer.say(format!("{label}: {text}"));
    }
    answer.figure("seeds", plan.seeds);
    answer.figure("prob_at_n", plan.enough);
    answer.figure("mean_success", plan.mean_success);
    answer.figure("divided", plan.divided);
    answer.figure("prob_divided", 1.0 - plan.divided_short);
    answer.figure("prior_a", plan.germination.a);
    answer.figure("prior_b", plan.germination.b);
    answer.figure("survival", plan.survival.mean);
    answer.figure("mass_g", plan.mass_g.map(|mass| mass.likely));
    Ok(answer)
}

fn survival(given: &Given) -> Result<Option<Chance>, Wrong> {
    if let Some(share) = given.maybe_number("survival")? {
        return Ok(Some(Chance::known("survival", share)?));
    }
    match given.value("survival_beta") {
        None => Ok(None),
        Some(Value::Array(_)) => match given.numbers("survival_beta")?[..] {
            [a, b] => Ok(Some(Chance::beta("survival_beta", a, b)?)),
            [..] => Err(WrongInput::Uneven { input: "survival_beta", other: "a, b" }.into()),
        },
        Some(_) => Err(WrongInput::Uneven { input: "survival_beta", other: "a, b" }.into()),
    }
}
