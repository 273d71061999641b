//! `calc rains`.

use serde_json::json;

use super::light::day_under;
use crate::cli::calc::answer::Answer;
use crate::cli::calc::field::args::Rains;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::WrongInput;
use crate::science::water::onset::{Onset, OnsetRule, onset};
use crate::wording::Wording;

/// What was typed.
pub(crate) fn typed(typed: &Rains) -> Given {
    let mut given = Given::default();
    given.put_text("first_date", typed.first.as_ref());
    given.put_list("rain", typed.rain.as_ref());
    given
}

/// The start of the rains by each rule.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let first = day_under(given, "first_date")?;
    let rain = given.numbers("rain")?;
    if rain.is_empty() {
        return Err(WrongInput::Missing { input: "rain" }.into());
    }
    let mut answer = Answer::new(wording.calc_rains_formula(), wording.calc_rains_source());
    for rule in OnsetRule::ALL {
        let (key, name) = match rule {
            OnsetRule::ClimateService => ("climate_service", wording.calc_rains_climate_service()),
            OnsetRule::Sivakumar => ("sivakumar", wording.calc_rains_sivakumar()),
            OnsetRule::Stern => ("stern", wording.calc_rains_stern()),
            OnsetRule::Blocks => ("blocks", wording.calc_rains_blocks()),
        };
        let on = |at: usize| first.plus(at as i32).to_string();
        let (date, not_yet_known) = match onset(rule, &rain)? {
            Onset::Began(at) => (Some(on(at)), None),
            Onset::NotYetKnown(at) => (None, Some(on(at))),
            Onset::None => (None, None),
        };
        answer.say(match (&date, &not_yet_known) {
            (Some(date), _) => wording.calc_rains_began(&name, date),
            (None, Some(date)) => wording.calc_rains_not_yet(&name, date),
            (None, None) => wording.calc_rains_none(&name),
        });
        answer.figure(key, json!({"date": date, "not_yet_known": not_yet_known}));
    }
    Ok(answer)
}
