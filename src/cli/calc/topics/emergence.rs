//! `calc emergence`.

use serde_json::json;

use crate::cli::calc::answer::{Answer, ends};
use crate::cli::calc::args::Emergence;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::WrongInput;
use crate::science::emergence::{EmergenceFit, Looks, fit_emergence};
use crate::wording::Wording;

/// What was typed; the day of sowing need not be.
pub(crate) fn typed(typed: &Emergence) -> Given {
    let mut given = Given::default();
    let edges =
        typed.edges.clone().map(|days| if days.first() == Some(&0.0) { days } else { [vec![0.0], days].concat() });
    given.put_list("edges", edges.as_ref());
    given.put_list("counts", typed.counts.as_ref());
    given.put("seeds", typed.seeds);
    given.put("last_day", typed.last_day);
    given
}

/// The curve by maximum likelihood, without a prior.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let looks = Looks::new(&given.numbers("edges")?, &given.counts("counts")?, given.count("seeds")?)?;
    let last_day = given.maybe_number("last_day")?;
    if last_day.is_some_and(|day| day < looks.last_look()) {
        return Err(WrongInput::OutOfOrder { input: "last_day" }.into());
    }
    let fit = fit_emergence(&looks);
    let emerged = looks.emerged();
    let at_last_day = last_day.and_then(|day| fit.at_day(&looks, day));
    let (in_the_end, in_the_end_ci95) = (fit.in_the_end(&looks), fit.in_the_end_ci95(&looks));
    let mut answer = Answer::new(wording.calc_emergence_formula(), wording.calc_emergence_source());
    say(&mut answer, &fit, &looks, wording);
    if let (Some(day), Some(plants)) = (last_day, at_last_day.filter(|_| fit.identifiable)) {
        answer.say(wording.calc_emergence_by(wording.number(day, 1), wording.number(plants, 0)));
    }
    answer.figure("emerged", emerged);
    answer.figure("d", fit.d);
    answer.figure("b", fit.curve.map(|curve| curve.b));
    answer.figure("t50", fit.curve.map(|curve| curve.t50));
    answer.figure("se_d", fit.se_d);
    answer.figure("se_b", fit.se_b);
    answer.figure("se_t50", fit.se_t50);
    answer.figure("loglik", fit.loglik);
    answer.figure("at_boundary_d1", fit.at_boundary_d1);
    answer.figure("identifiable", fit.identifiable);
    answer.figure("d_ci95", fit.d_ci95.map(ends));
    answer.figure(
        "forecast",
        json!({"at_last_day": at_last_day, "final": in_the_end, "final_ci95": in_the_end_ci95.map(ends)}),
    );
    Ok(answer)
}

fn say(answer: &mut Answer, fit: &EmergenceFit, looks: &Looks, wording: &Wording) {
    let (up, seeds) = (wording.number(looks.emerged(), 0), wording.number(looks.seeds(), 0));
    let told = fit.in_the_end(looks).zip(fit.in_the_end_ci95(looks)).filter(|_| fit.identifiable);
    let (Some(curve), Some((plants, between))) = (fit.curve, told) else {
        answer.say(wording.calc_emergence_unknown(up, seeds));
        return;
    };
    answer.say(wording.calc_emergence_some(
        up,
        seeds,
        wording.percent(curve.d),
        wording.number(between.low, 0),
        wording.number(between.high, 0),
        wording.number(plants, 0),
    ));
    answer.say(wording.calc_emergence_half(wording.number(curve.t50, 1)));
}
