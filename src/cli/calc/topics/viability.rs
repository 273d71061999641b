//! `calc viability`.

use crate::cli::calc::answer::Answer;
use crate::cli::calc::args::Viability;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::viability::{
    COLDEST_C, DRIEST_PCT, Store, ViabilityConstants, WARMEST_C, WETTEST_PCT, days_to, off_the_ends_pct, viability,
};
use crate::science::viability_constants::viability_record;
use crate::wording::Wording;
use crate::wording::number::{rounded, rounded_days};

/// What was typed.
pub(crate) fn typed(typed: &Viability) -> Given {
    let mut given = Given::default();
    given.put_text("species", typed.species.as_ref());
    for (key, value) in [
        ("KE", typed.ke),
        ("CW", typed.cw),
        ("CH", typed.ch),
        ("CQ", typed.cq),
        ("initial_pct", typed.initial),
        ("tested", typed.tested),
        ("moisture_pct_fresh", typed.moisture),
        ("temp_c", typed.temp),
        ("days", typed.days),
        ("target_pct", typed.target),
    ] {
        given.put(key, value);
    }
    given
}

/// What storage leaves of a lot.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let (constants, paper) = constants(given)?;
    let store = Store { moisture_pct: given.number("moisture_pct_fresh")?, temp_c: given.number("temp_c")? };
    let (written, days) = (given.number("initial_pct")?, given.number("days")?);
    let initial = match given.maybe_count("tested")? {
        Some(tested) => off_the_ends_pct(written, tested)?,
        None => written,
    };
    let told = viability(constants, store, initial, days)?;
    let target = given.maybe_number("target_pct")?;
    let days_to_target = target.map(|target| days_to(constants, store, initial, target)).transpose()?.flatten();
    let mut answer = Answer::new(wording.calc_viability_formula(), wording.calc_viability_source());
    answer.say(match told.viability_pct.zip(told.p50_days) {
        Some((left, half)) => wording.calc_viability_some(
            wording.number(initial, 1),
            wording.number(rounded(left), 1),
            wording.number(days, 2),
            wording.number(rounded_days(half), 0),
        ),
        None => wording.calc_viability_ends(),
    });
    if let Some((target, reached)) = target.zip(days_to_target) {
        answer.say(wording.calc_viability_target(wording.number(target, 1), wording.number(reached, 1)));
    }
    if !store.within_limits() {
        answer.say(wording.calc_viability_outside(
            wording.number(DRIEST_PCT, 0),
            wording.number(WETTEST_PCT, 0),
            wording.number(COLDEST_C, 0),
            wording.number(WARMEST_C, 0),
        ));
    }
    answer.figure("Ki", told.ki);
    answer.figure("sigma_days", told.sigma_days);
    answer.figure("v_probit", told.v_probit);
    answer.figure("viability_pct", told.viability_pct);
    answer.figure("p50_days", told.p50_days);
    answer.figure("days_to_target", days_to_target);
    if let Some(paper) = paper {
        answer.figure("constants_source", paper);
    }
    Ok(answer)
}

/// The constants given, or those of a species with the paper they come from.
fn constants(given: &Given) -> Result<(ViabilityConstants, Option<&'static str>), Wrong> {
    match given.maybe_text("species")? {
        // A program may send a name beside the constants.
        Some(species) if given.value("KE").is_none() => {
            let unknown = || Wrong::Word { input: "species", written: species.to_string(), known: known_species() };
            let record = viability_record(species).ok_or_else(unknown)?;
            Ok((record.constants, Some(record.source)))
        }
        Some(_) | None => {
            let (ke, cw) = (given.number("KE")?, given.number("CW")?);
            let (ch, cq) = (given.number("CH")?, given.number("CQ")?);
            Ok((ViabilityConstants { ke, cw, ch, cq }, None))
        }
    }
}

fn known_species() -> &'static str {
    use std::sync::OnceLock;
    static NAMES: OnceLock<String> = OnceLock::new();
    NAMES.get_or_init(|| {
        let names = crate::science::viability_constants::VIABILITY_RECORDS.map(|record| record.species);
        names.join(", ")
    })
}
