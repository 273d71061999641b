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
use crate::reckon::forecast::Outlook;
use crate::reckon::forecast::worth::of_tray;
use crate::reckon::growth::tray_growth;
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
    species: Option<&SpeciesKey>,
    picture: &Picture,
    wording: &Wording,
) -> Value {
    let mut only = bed.clone();
    only.species.retain(|one| species.is_none_or(|wanted| one.species == *wanted));
    let asked: Vec<Criterion> = only.species.iter().flat_map(|line| line.criteria.iter().cloned()).collect();
    let mut text = answer(picture, "bed", bed_json(&only, picture, wording));
    text["cautions"] = cautions_json(&of_work(&asked), wording);
    if !bed.story.nurses.is_empty() {
        let ends = shade_ends(&bed.story, &picture.site, picture.day);
        text["shade_ends"] = ends.iter().map(|end| shade_end_json(end, picture.day, wording)).collect();
        text["light_months"] = only.species.iter().map(|one| months_json(bed, one, picture)).collect();
    }
    text
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

/// The light of two years under what stands, month by month; null where it cannot be reckoned.
fn months_json(bed: &BedPicture, line: &BedSpecies, picture: &Picture) -> Value {
    let months = light_months(&bed.story, &picture.site, &line.species, (picture.day, MONTHS_AHEAD));
    let month = |one: &LightMonth| {
        json!({
            "on": one.on,
            "share": number(one.light.share),
            "low": number(one.light.low),
            "high": number(one.light.high),
            "inside": one.inside.map(number),
        })
    };
    let ahead = in_band(&bed.story, &picture.site, &line.species, (picture.day, MONTHS_AHEAD));
    let ahead = ahead.map(|told| in_band_json(&told));
    json!({"species": line.species, "ahead": ahead, "months": months.map(|all| all.iter().map(month).collect::<Vec<_>>())})
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
            assert_eq!(why_bed_json(bed, None, &picture, &wording)["bed"], ready["beds"][number]);
            let other = why_bed_json(bed, Some(&SpeciesKey::new("AVO")), &picture, &wording);
            assert_eq!(other["bed"]["species"], json!([]));
        }
    }
}
