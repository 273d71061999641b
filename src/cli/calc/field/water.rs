//! `calc water`.

use serde_json::Value;

use crate::cli::calc::answer::Answer;
use crate::cli::calc::field::args::Water;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::WrongInput;
use crate::science::water::root_zone::{RootZone, StressOf, WaterDay, WaterTold, total_available_mm};
use crate::wording::Wording;

/// The words of `ks_from`.
const PREVIOUS_END: &str = "previous_end";
const START_OF_DAY: &str = "start_of_day";
const MOMENTS: &str = "previous_end, start_of_day";

/// What was typed.
pub(crate) fn typed(typed: &Water) -> Given {
    let mut given = Given::default();
    for (key, value) in [
        ("taw", typed.taw),
        ("fc", typed.fc),
        ("wp", typed.wp),
        ("zr_m", typed.zr),
        ("p_table", typed.p),
        ("dr0", typed.dr0),
    ] {
        given.put(key, value);
    }
    given.put_text("ks_from", typed.ks_from.as_ref());
    given.put_list("rain", typed.rain.as_ref());
    given.put_list("irrigation", typed.irrigation.as_ref());
    given.put_list("et0", typed.et0.as_ref());
    given.put_list("kc", typed.kc.as_ref());
    given.put_yes("p_adjusted", typed.p_adjusted);
    given
}

/// Water in reach of roots, day by day.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let taw = match given.maybe_number("taw")? {
        Some(taw) => taw,
        None if given.value("fc").is_some() => {
            total_available_mm(given.number("fc")?, given.number("wp")?, given.number("zr_m")?)?
        }
        None => return Err(WrongInput::Missing { input: "taw" }.into()),
    };
    let stress_of = match given.maybe_text("ks_from")? {
        None | Some(PREVIOUS_END) => StressOf::PreviousEnd,
        Some(START_OF_DAY) => StressOf::StartOfDay,
        Some(other) => {
            return Err(Wrong::Word { input: "ks_from", written: other.to_string(), known: MOMENTS });
        }
    };
    let zone = RootZone::new(taw, given.number("p_table")?, given.yes("p_adjusted")?, stress_of)?;
    let days = days(given)?;
    let told = zone
        .days(given.number("dr0")?, &days)
        .map_err(|(day, wrong)| Wrong::Said(wording.calc_water_day((day + 1) as u64, wording.wrong_input(&wrong))))?;
    let mut answer = Answer::new(wording.calc_water_formula(), wording.calc_water_source());
    say(&mut answer, zone.taw_mm(), &told, wording);
    answer.figure("taw", zone.taw_mm());
    let list = |of: fn(&WaterTold) -> f64| -> Value { told.iter().map(of).collect() };
    answer.figure("p", list(|day| day.p));
    answer.figure("ks", list(|day| day.ks));
    answer.figure("eta", list(|day| day.eta_mm));
    answer.figure("dp", list(|day| day.dp_mm));
    answer.figure("dr_end", list(|day| day.dr_end_mm));
    Ok(answer)
}

fn say(answer: &mut Answer, taw: f64, told: &[WaterTold], wording: &Wording) {
    let Some(last) = told.last() else { return };
    let left = wording.number(taw - last.dr_end_mm, 1);
    answer.say(wording.calc_water_end(told.len() as u64, left, wording.number(taw, 1)));
    answer.say(match told.iter().position(|day| day.ks < 1.0) {
        None => wording.calc_water_no_stress(),
        Some(first) => {
            let days = told.iter().filter(|day| day.ks < 1.0).count();
            wording.calc_water_stress(days as u64, (first + 1) as u64)
        }
    });
}

/// The days of the rain; of the other lists one number stands for every day. No watering is none.
fn days(given: &Given) -> Result<Vec<WaterDay>, Wrong> {
    let rain = given.numbers("rain")?;
    if rain.is_empty() {
        return Err(WrongInput::Missing { input: "rain" }.into());
    }
    let of = |input: &'static str| -> Result<Vec<f64>, Wrong> {
        match given.numbers(input)?.as_slice() {
            [one] => Ok(vec![*one; rain.len()]),
            many if many.len() == rain.len() => Ok(many.to_vec()),
            _ => Err(WrongInput::Uneven { input, other: "rain" }.into()),
        }
    };
    let irrigation = if given.value("irrigation").is_some() { of("irrigation")? } else { vec![0.0; rain.len()] };
    let (et0, kc) = (of("et0")?, of("kc")?);
    let days = (0..rain.len()).map(|at| WaterDay {
        rain_mm: rain[at],
        irrigation_mm: irrigation[at],
        et0_mm: et0[at],
        kc: kc[at],
    });
    Ok(days.collect())
}
