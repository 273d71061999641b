//! Why, for programs.

use serde_json::{Value, json};

use super::criterion_json::{criteria, number};
use super::forecast::{experience_json, worth_json};
use super::ready_json::{VERSION, bed_json, ends_by, in_band_json, pair_json, tray_json};
use super::walk::json::{caution_json, dangers_json};
use super::why_more::growth_json::growth_json;
use crate::base::Day;
use crate::base::SpeciesKey;
use crate::nursery::caution::Caution;
use crate::page::care::{of_pair, of_tray as cautions_of_tray, of_work};
use crate::page::why::plants_of_pair;
use crate::reckon::Round;
use crate::reckon::bed::water::ahead::DrawnFrom;
use crate::reckon::bed::water::told::{BedWater, Litres, bed_water};
use crate::reckon::field::{food_ahead, food_taken};
use crate::reckon::forecast::Outlook;
use crate::reckon::forecast::worth::of_tray;
use crate::reckon::growth::tray_growth;
use crate::reckon::light::advice::fewest_cuts::{ToCut, fewest_cuts};
use crate::reckon::light::advice::new_nurses::{NewNurses, new_nurses, wanted_on};
use crate::reckon::light::beside::beside;
use crate::reckon::light::coming::shade_ends;
use crate::reckon::light::in_band::in_band;
use crate::reckon::light::months::{LightMonth, MONTHS_AHEAD, light_months};
use crate::reckon::picture::quantity::ShadeEnd;
use crate::reckon::picture::{BedPicture, BedSpecies, Criterion, PairPicture, Picture, TrayPicture};
use crate::wording::Wording;
use crate::wording::verdict::About;

/// Why a tray is ready or not: the tray as in `ready --json`.
pub(crate) fn why_tray_json(
    tray: &TrayPicture,
    picture: &Picture,
    outlook: &Outlook,
    round: &Round,
    wording: &Wording,
) -> Value {
    let mut text = answer(picture, "tray", tray_json(tray, picture, outlook, wording));
    let known = tray.species.as_ref().map(|species| outlook.experience_of(species, picture));
    text["experience"] = json!(known.map(|known| experience_json(&known, wording)));
    let worth = of_tray(&round.worth_looking, &tray.code).map(|worth| worth_json(worth, wording));
    text["worth_looking"] = json!(worth.collect::<Vec<_>>());
    let profile = tray.species.as_ref().and_then(|key| picture.site.profile(key));
    let growth = tray_growth(&tray.story, profile.map(|profile| &**profile), picture.day);
    text["growth"] = growth_json(&growth, wording);
    text["cautions"] = cautions_json(&cautions_of_tray(tray, round), wording);
    text
}

/// Why a bed is open or not, for one species or for every planned one.
pub(crate) fn why_bed_json(
    bed: &BedPicture,
    (species, by): (Option<&SpeciesKey>, Option<Day>),
    picture: &Picture,
    wording: &Wording,
) -> Value {
    let mut only = bed.clone();
    only.species.retain(|one| species.is_none_or(|wanted| one.species == *wanted));
    let asked: Vec<Criterion> = only.species.iter().flat_map(|line| line.criteria.iter().cloned()).collect();
    let mut text = answer(picture, "bed", bed_json(&only, picture, wording));
    text["cautions"] = cautions_json(&of_work(&asked), wording);
    text["water"] = water_json(&bed_water(&only, &picture.site, picture.day));
    text["nurses_to_set"] = only.species.iter().flat_map(|one| nurses_to_set_json(bed, one, picture, by)).collect();
    if !bed.story.nurses.is_empty() {
        let ends = shade_ends(&bed.story, &picture.site, picture.day);
        text["shade_ends"] = ends.iter().map(|end| shade_end_json(end, picture.day, wording)).collect();
        text["beside"] = only.species.iter().map(|one| beside_json(bed, one, picture)).collect();
        text["food"] = food_json(bed, picture);
        text["fewest_cuts"] = only.species.iter().filter_map(|one| cuts_json(bed, one, picture)).collect();
        text["light_months"] = only.species.iter().map(|one| months_json(bed, one, picture, wording)).collect();
    }
    text
}

/// What is left of the water, the weeks after planting, and the litres that plants take a day.
fn water_json(told: &BedWater) -> Value {
    let left = told.left.map(
        |left| json!({"left_mm": number(left.left_mm), "full_mm": number(left.full_mm), "days_to_stress": left.days}),
    );
    let ahead = told.ahead.map(|ahead| {
        let from = match ahead.from {
            DrawnFrom::Gauge => "gauge",
            DrawnFrom::Usual => "usual",
            DrawnFrom::Both => "both",
        };
        json!({
            "chance_today": number(ahead.today),
            "last_safe": ahead.last_safe,
            "rains_from": ahead.rains.map(|rains| rains.from),
            "rains_until": ahead.rains.map(|rains| rains.until),
            "rains_began": ahead.began,
            "full_lasts_days": ahead.lasts_days,
            "drawn_from": from,
        })
    });
    json!({"left": left, "ahead": ahead, "young": litres_json(&told.young), "open": litres_json(&told.open)})
}

/// Plants and the litres they take on a day without rain.
pub(super) fn litres_json(litres: &Litres) -> Value {
    json!({"plants": litres.plants, "litres_a_day": number(litres.a_day)})
}

/// Which nurse plants to set where a bed is too bright for a species, and by when.
fn nurses_to_set_json(bed: &BedPicture, line: &BedSpecies, picture: &Picture, by: Option<Day>) -> Vec<Value> {
    let wanted = by.unwrap_or_else(|| wanted_on(picture, &line.species));
    let all = new_nurses(&bed.story, &picture.site, &line.species, (picture.day, wanted));
    let one = |one: NewNurses| {
        let is_late = one.is_late();
        json!({
            "species": line.species,
            "nurse": one.nurse,
            "row_m": number(one.row_m),
            "in_row_m": number(one.in_row_m),
            "plants": one.plants,
            "wanted_on": one.wanted_on,
            "set_by": one.set_by,
            "late": is_late,
            "suits_from": one.suits_from,
            "inside_6_months": number(one.inside),
            "parts": one.parts,
        })
    };
    all.into_iter().map(one).collect()
}

fn shade_end_json(end: &ShadeEnd, today: Day, wording: &Wording) -> Value {
    json!({
        "nurse": end.nurse,
        "by": ends_by(end),
        "about": end.about,
        "share": number(end.share),
        "set_next_by": end.set_next_by,
        "text": wording.shade_end_words(end, end.is_late(today)),
    })
}

/// What nurse plants of other beds take of the light for a species.
fn beside_json(bed: &BedPicture, line: &BedSpecies, picture: &Picture) -> Value {
    let others = picture.beds.values().map(|bed| &bed.story);
    let told = beside(&bed.story, others, &picture.site, &line.species, picture.day);
    let shading = told.shading.iter().map(|(bed, taken)| json!({"bed": bed, "taken": number(*taken)}));
    json!({"species": line.species, "shading": shading.collect::<Vec<_>>(), "not_placed": told.not_placed})
}

/// Which plants to cut where a bed is too dark for a species.
fn cuts_json(bed: &BedPicture, line: &BedSpecies, picture: &Picture) -> Option<Value> {
    let told = fewest_cuts(&bed.story, &picture.site, &line.species, picture.day)?;
    let tried = told.tried.iter().map(|one| json!({"cuts": one.cuts, "inside": one.inside, "proven": one.proven}));
    let plant = |plant: &ToCut| {
        let [x_m, y_m] = plant.at_m.map(number);
        json!({"nurse": plant.nurse, "what": plant.what, "x_m": x_m, "y_m": y_m})
    };
    let advice = told.advice.as_ref().map(|advice| {
        json!({
            "plants": advice.plants.iter().map(plant).collect::<Vec<_>>(),
            "proven": advice.proven,
            "places_known": advice.places_known,
            "inside_6_months": number(advice.half_year.1),
            "inside_6_months_without": number(advice.half_year.0),
            "shade_lost": number(advice.shade_lost),
            "step": advice.step.map(number),
            "mulch_kg": number(advice.mulch_kg),
            "food_least_kg": number(advice.food_kg.0),
            "food_most_kg": number(advice.food_kg.1),
        })
    });
    Some(json!({
        "species": line.species,
        "positions": told.positions,
        "tried": tried.collect::<Vec<_>>(),
        "advice": advice,
    }))
}

/// What the nurse plants give to eat: on the way, and taken in the last year.
fn food_json(bed: &BedPicture, picture: &Picture) -> Value {
    let ahead = food_ahead(&bed.story, &picture.site, picture.day);
    let ahead = ahead.iter().map(|food| {
        json!({
            "nurse": food.nurse,
            "crop": food.crop,
            "from": food.from,
            "until": food.until,
            "plants": food.plants,
            "least_kg": number(food.kg.0),
            "most_kg": number(food.kg.1),
            "counted": food.counted,
            "loosens_positions": food.loosens,
        })
    });
    let taken = food_taken(&bed.story, picture.day).into_iter().map(|((year, month, nurse), taken)| {
        json!({
            "nurse": nurse,
            "month": format!("{year}-{month:02}"),
            "plants": taken.plants,
            "kg": number(taken.kg),
            "unweighed": taken.unweighed,
        })
    });
    json!({"ahead": ahead.collect::<Vec<_>>(), "taken": taken.collect::<Vec<_>>()})
}

/// The light of two years under what stands, month by month; null where it cannot be reckoned. Months of which something
/// that shades is unknown stand apart: of these only the most is known.
fn months_json(bed: &BedPicture, line: &BedSpecies, picture: &Picture, wording: &Wording) -> Value {
    let months =
        light_months(&bed.story, &picture.site, &line.species, (picture.day, MONTHS_AHEAD)).unwrap_or_default();
    let month = |one: &LightMonth| {
        json!({
            "on": one.on,
            "share": number(one.light.share),
            "low": number(one.light.low),
            "high": number(one.light.high),
            "inside": one.inside.map(number),
        })
    };
    let known: Vec<Value> = months.iter().take_while(|one| one.left_out.is_none()).map(month).collect();
    let at_most: Vec<Value> = months
        .iter()
        .filter_map(|one| {
            let why = one.left_out.as_ref()?;
            Some(json!({"on": one.on, "share": number(one.light.high), "why": wording.light_not_reckoned(why)}))
        })
        .collect();
    let ahead = in_band(&bed.story, &picture.site, &line.species, (picture.day, MONTHS_AHEAD));
    let ahead = ahead.map(|told| in_band_json(&told));
    let months = if known.is_empty() { Value::Null } else { known.into() };
    json!({"species": line.species, "ahead": ahead, "months": months, "at_most": at_most})
}

/// Why a tray fits a bed or not: the pair as in `ready --json`, with every question of its tray and its bed too.
pub(crate) fn why_pair_json(pair: &PairPicture, picture: &Picture, wording: &Wording) -> Value {
    let mut text = pair_json(pair, picture, wording);
    text["criteria"] = json!(criteria(&*pair.criteria, About::Pair, wording));
    let mut text = answer(picture, "pair", text);
    text["cautions"] = cautions_json(&of_pair(pair), wording);
    text["plants"] = json!(dangers_json(&plants_of_pair(pair, picture), picture, wording));
    text
}

/// What could hurt somebody who does the work that is due or asked for, as `walk --json` has it at a stop.
pub(super) fn cautions_json(cautions: &[Caution], wording: &Wording) -> Value {
    cautions.iter().map(|caution| caution_json(*caution, wording)).collect()
}

/// An answer about a subject on a day.
pub(super) fn answer(picture: &Picture, subject: &str, verdict: Value) -> Value {
    json!({"version": VERSION, "on": picture.day, "looking": picture.looking, "known": picture.known, subject: verdict})
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cli::ready_json::tests::ready_of;
    use crate::cli::test_picture::small;
    use crate::reckon::forecast::{ForecastBasis, outlook};
    use crate::reckon::round;
    use crate::wording::Lang;

    #[test]
    fn why_says_of_each_thing_what_ready_says() {
        let (picture, wording) = (small(), Wording::new(Lang::En));
        let (expected, due) = (outlook(&picture, ForecastBasis::OwnRecords), round(&picture));
        let ready = ready_of(&picture, &wording);
        for (number, tray) in picture.trays.values().enumerate() {
            assert_eq!(why_tray_json(tray, &picture, &expected, &due, &wording)["tray"], ready["trays"][number]);
        }
        for (number, pair) in picture.pairs.iter().enumerate() {
            let mut why = why_pair_json(pair, &picture, &wording)["pair"].clone();
            assert_eq!(why["criteria"].as_array().unwrap().len(), pair.criteria.len());
            why["criteria"] = ready["pairs"][number]["criteria"].clone();
            assert_eq!(why, ready["pairs"][number]);
        }
        for (number, bed) in picture.beds.values().enumerate() {
            assert_eq!(why_bed_json(bed, (None, None), &picture, &wording)["bed"], ready["beds"][number]);
            let other = why_bed_json(bed, (Some(&SpeciesKey::new("AVO")), None), &picture, &wording);
            assert_eq!(other["bed"]["species"], json!([]));
        }
    }
}
