//! `calc leaves`.

use crate::cli::calc::answer::Answer;
use crate::cli::calc::field::args::Leaves;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::light::transmitted_share;
use crate::science::shade::banana::{crown_leaf_density, middle_leaf_m2, plant_leaf_m2};
use crate::science::wrong_input::{positive, within};
use crate::wording::Wording;

/// What was typed.
pub(crate) fn typed(typed: &Leaves) -> Given {
    let mut given = Given::default();
    for (key, value) in [
        ("height_m", typed.height),
        ("girth_m", typed.girth),
        ("leaves", typed.leaves),
        ("spacing_m2", typed.ground),
        ("k", typed.k),
        ("width_m", typed.width),
        ("depth_m", typed.depth),
    ] {
        given.put(key, value);
    }
    given
}

/// Leaves of a banana plant, and the light under a stand of such plants.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let (height_m, girth_m) = (given.number("height_m")?, given.number("girth_m")?);
    let leaves = given.number("leaves")?;
    let middle = middle_leaf_m2(height_m, girth_m)?;
    let plant = plant_leaf_m2(height_m, girth_m, leaves)?;
    let ground = given
        .maybe_number("spacing_m2")?
        .map(|ground| within("spacing_m2", positive("spacing_m2", ground)?, 0.0, 1e4))
        .transpose()?;
    let index = plant.zip(ground).map(|(plant, ground)| plant / ground);
    let light = match (index, given.maybe_number("k")?) {
        (Some(index), Some(k)) => Some(transmitted_share(k, index)?),
        _ => None,
    };
    let density = match (plant, given.maybe_number("width_m")?) {
        (Some(plant), Some(width_m)) => Some(crown_leaf_density(plant, width_m, given.number("depth_m")?)?),
        _ => None,
    };
    let mut answer = Answer::new(wording.calc_leaves_formula(), wording.calc_leaves_source());
    answer.say(match plant {
        Some(plant) => wording.calc_leaves_some(wording.number(plant, 2)),
        None => wording.calc_leaves_too_small(),
    });
    if let Some((index, light)) = index.zip(light) {
        answer.say(wording.calc_leaves_light(wording.number(index, 2), wording.percent(light)));
    }
    answer.figure("middle_leaf_m2", middle);
    answer.figure("plant_m2", plant);
    answer.figure("lai", index);
    answer.figure("light", light);
    answer.figure("lad", density);
    Ok(answer)
}
