//! The positions of a bed one by one, for programs: where each lies, what it holds, its light now and month by month.

use serde_json::{Value, json};

use crate::cli::criterion_json::number;
use crate::reckon::field::{SpotState, species_plan};
use crate::reckon::light::months::{GoingOn, MONTHS_AHEAD};
use crate::reckon::picture::{BedPicture, Picture};

/// What a position holds, as programs are told.
pub(in crate::cli) fn state_word(state: SpotState) -> &'static str {
    match state {
        SpotState::Living => "living",
        SpotState::Dead => "dead",
        SpotState::Open => "open",
        SpotState::Blocked => "blocked",
        SpotState::Unsaid => "plant_or_gap",
    }
}

/// Every position of the planned species of a bed. Light is that which is reckoned under what stands, as it goes on by itself; null
/// where no nurse plant was written, or where it is known from above only.
pub(in crate::cli) fn positions_json(bed: &BedPicture, picture: &Picture) -> Value {
    let (site, day) = (&picture.site, picture.day);
    let mut all = Vec::new();
    for line in &bed.species {
        let spots = species_plan(&bed.story, site, day, &line.species).map(|plan| plan.spots).unwrap_or_default();
        let going_on = GoingOn::of(&bed.story, site, &line.species, day);
        let months: Vec<Option<Vec<f64>>> = going_on.map_or_else(Vec::new, |going_on| {
            let known = |at: usize| going_on.month(at).left_out.is_none();
            (0..MONTHS_AHEAD).map(|at| known(at).then(|| going_on.at_each(&spots, at))).collect()
        });
        for (number_of_spot, spot) in spots.iter().enumerate() {
            let light_of = |month: &Option<Vec<f64>>| month.as_ref()?.get(number_of_spot).copied().map(number);
            let light: Vec<Option<Value>> = months.iter().map(light_of).collect();
            all.push(json!({
                "row": spot.row,
                "place": spot.place,
                "x_m": number(spot.x_m),
                "y_m": number(spot.y_m),
                "species": line.species,
                "state": state_word(spot.state),
                "light_now": light.first().cloned().flatten(),
                "light": if light.is_empty() { Value::Null } else { json!(light) },
            }));
        }
    }
    all.into()
}
