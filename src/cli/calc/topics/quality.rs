//! `calc quality`.

use crate::cli::calc::answer::Answer;
use crate::cli::calc::args::Quality;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::WrongInput;
use crate::science::quality::{DICKSON_LEAST, SturdinessBand, dickson, sturdiness, sturdiness_band};
use crate::wording::Wording;

/// What was typed.
pub(crate) fn typed(typed: &Quality) -> Given {
    let mut given = Given::default();
    given.put("height_cm", typed.height);
    given.put("collar_mm", typed.collar);
    given.put("shoot_g", typed.shoot);
    given.put("root_g", typed.root);
    given
}

/// Sturdiness, and Dickson's index where the dry weights are known.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let (height_cm, collar_mm) = (given.number("height_cm")?, given.number("collar_mm")?);
    let quotient = sturdiness(height_cm, collar_mm)?;
    let index = match (given.maybe_number("shoot_g")?, given.maybe_number("root_g")?) {
        (None, None) => None,
        (Some(shoot_g), Some(root_g)) => Some(dickson(height_cm, collar_mm, shoot_g, root_g)?),
        (Some(_), None) => return Err(WrongInput::Missing { input: "root_g" }.into()),
        (None, Some(_)) => return Err(WrongInput::Missing { input: "shoot_g" }.into()),
    };
    let mut answer = Answer::new(wording.calc_quality_formula(), wording.calc_quality_source());
    let shown = wording.number(quotient, 1);
    answer.say(match sturdiness_band(quotient)? {
        SturdinessBand::Good => wording.calc_quality_good(shown),
        SturdinessBand::WeedFreeBed => wording.calc_quality_weed_free(shown),
        SturdinessBand::SpaceOut => wording.calc_quality_space_out(shown),
        SturdinessBand::Cull => wording.calc_quality_cull(shown),
    });
    if let Some(index) = index {
        answer.say(wording.calc_quality_dickson(wording.number(index, 3), wording.decimal(DICKSON_LEAST, 2)));
    }
    answer.figure("sturdiness", quotient);
    answer.figure("dickson", index);
    Ok(answer)
}
