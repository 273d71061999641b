//! The main answer for programs: the contract of `ready --json`.

use serde_json::{Value, json};

use super::criterion_json::{criteria, doubts, number};
use super::forecast::{pipeline_json, tray_forecast_json};
use crate::reckon::forecast::Outlook;
use crate::reckon::picture::{BedPicture, BedSpecies, PairPicture, Picture, TrayPicture};
use crate::reckon::{SharedOffer, shared_offers};
use crate::wording::Wording;
use crate::wording::verdict::About;

/// The version of the objects below.
pub(super) const VERSION: u32 = 1;

/// What `ready --json` prints.
pub fn ready_json(picture: &Picture, outlook: &Outlook, wording: &Wording) -> Value {
    json!({
        "version": VERSION,
        "on": picture.day,
        "looking": picture.looking,
        "known": picture.known,
        "doubts": doubts(picture, wording),
        "trays": picture.trays.values().map(|tray| tray_json(tray, picture, outlook, wording)).collect::<Vec<_>>(),
        "beds": picture.beds.values().map(|bed| bed_json(bed, picture, wording)).collect::<Vec<_>>(),
        "pairs": picture.pairs.iter().map(|pair| pair_json(pair, wording)).collect::<Vec<_>>(),
        "pipeline": outlook.pipelines.iter().map(pipeline_json).collect::<Vec<_>>(),
        "shared": shared_offers(picture).iter().map(|offer| shared_json(offer, picture, wording)).collect::<Vec<_>>(),
    })
}

/// A tray with its verdict.
pub(super) fn tray_json(tray: &TrayPicture, picture: &Picture, outlook: &Outlook, wording: &Wording) -> Value {
    let spread = |spread: Option<crate::reckon::picture::DaySpread>| {
        spread.map(|days| json!({"low": days.low, "likely": days.likely, "high": days.high}))
    };
    json!({
        "tray": tray.code,
        "species": tray.species,
        "species_name": tray.species.as_ref().map(|key| wording.species_of(key, &picture.site.species)),
        "lot": tray.lots.first(),
        "lots": tray.lots,
        "stage": tray.stage,
        "standing": tray.standing,
        "standing_range": range_json(tray.standing_range),
        "seed": tray.seed,
        "counted_on": tray.counted_on,
        "sown_on": tray.sown_on,
        "plantable": range_json(tray.plantable),
        "plantable_basis": tray.plantable_basis,
        "place": tray.place,
        "light": tray.light_share.map(number),
        "ready": tray.ready,
        "ready_from": tray.ready_from,
        "ready_spread": spread(tray.ready_spread),
        "best_before": tray.best_before,
        "best_before_spread": spread(tray.best_before_spread),
        "forecast": tray_forecast_json(&tray.code, picture, outlook, wording),
        "criteria": criteria(&tray.criteria, About::Tray, wording),
    })
}

fn range_json(range: crate::base::Range) -> Value {
    json!({"low": number(range.low), "likely": number(range.likely), "high": number(range.high)})
}

/// A bed with its verdict for each planned species, in plan order.
pub(super) fn bed_json(bed: &BedPicture, picture: &Picture, wording: &Wording) -> Value {
    json!({
        "bed": bed.name,
        "field": bed.field,
        "light_now": bed.light_now.as_ref().map(|light| number(light.share)),
        "light_read_on": bed.light_now.as_ref().map(|light| light.read_on),
        "species": bed.species.iter().map(|one| bed_species_json(one, picture, wording)).collect::<Vec<_>>(),
    })
}

fn bed_species_json(one: &BedSpecies, picture: &Picture, wording: &Wording) -> Value {
    json!({
        "species": one.species,
        "species_name": wording.species_of(&one.species, &picture.site.species),
        "positions": one.positions,
        "living": one.living,
        "open_positions": one.open_positions,
        "in_light": one.in_light,
        "standing": one.standing,
        "criteria": criteria(&one.criteria, About::Bed, wording),
    })
}

/// Plants or places that several pairs count.
fn shared_json(offer: &SharedOffer, picture: &Picture, wording: &Wording) -> Value {
    let text = wording.shared_offer(offer, &picture.site.species);
    match offer {
        SharedOffer::Tray { tray, plants, beds } => {
            json!({"tray": tray, "bed": null, "species": null, "plants": plants, "beds": beds, "trays": [tray], "text": text})
        }
        SharedOffer::Bed { bed, species, places, trays } => {
            json!({"tray": null, "bed": bed, "species": species, "plants": places, "beds": [bed], "trays": trays, "text": text})
        }
    }
}

/// A tray against a bed.
pub(super) fn pair_json(pair: &PairPicture, wording: &Wording) -> Value {
    json!({
        "tray": pair.tray,
        "bed": pair.bed,
        "fits": pair.fits,
        "plants": pair.plants,
        "criteria": criteria(&pair.criteria, About::Pair, wording),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cli::test_picture::{empty, small};
    use crate::reckon::forecast::{ForecastBasis, outlook};
    use crate::wording::Lang;

    fn ready_of(picture: &Picture, wording: &Wording) -> Value {
        ready_json(picture, &outlook(picture, ForecastBasis::OwnRecords), wording)
    }

    #[test]
    fn the_object_holds_what_the_contract_promises() {
        let answer = ready_of(&small(), &Wording::new(Lang::En));
        assert_eq!((&answer["version"], &answer["on"]), (&json!(1), &json!("2026-03-14")));
        let tray = answer["trays"].as_array().unwrap().iter().find(|tray| tray["tray"] == "cof-031").unwrap();
        assert_eq!(tray["plantable"], json!({"low": 20.5, "likely": 24, "high": 28}));
        assert_eq!(
            (&tray["standing"], &tray["ready"], &tray["counted_on"]),
            (&json!(30), &json!(true), &json!("2026-03-10"))
        );
        assert_eq!(
            (&tray["stage"], &tray["lot"], &tray["place"]),
            (&json!("ready"), &json!("cof-L07"), &json!("bench 2"))
        );
        let age = &tray["criteria"][0];
        for (key, expected) in [
            ("rule", json!("days_since_sowing")),
            ("needed", json!("at least 210 d")),
            ("needed_value", json!(210)),
            ("known", json!("310 d")),
            ("known_value", json!(310)),
            ("unit", json!("days")),
            ("basis", json!("counted")),
            ("met", json!(true)),
            ("blocks", json!(false)),
            ("expected", json!("2025-12-04")),
            ("source", json!("Wintgens 2004, Coffee")),
            ("entries", json!(["k3f9:12"])),
        ] {
            assert_eq!(age[key], expected, "{key}");
        }
        let bed = answer["beds"].as_array().unwrap().iter().find(|bed| bed["bed"] == "Lower terrace").unwrap();
        assert_eq!((&bed["field"], &bed["light_now"]), (&json!("Terraces"), &json!(0.45)));
        let coffee = &bed["species"][0];
        assert_eq!(
            (&coffee["open_positions"], &coffee["in_light"], &coffee["standing"]),
            (&json!(40), &json!(31), &json!("open"))
        );
        let pair = &answer["pairs"][0];
        assert_eq!((&pair["tray"], &pair["fits"], &pair["plants"]), (&json!("cof-031"), &json!(true), &json!(24)));
        assert_eq!(answer["doubts"][0]["kind"], "no_bed_plans");
    }

    #[test]
    fn what_is_not_known_is_null_and_every_source_is_named() {
        let answer = ready_of(&small(), &Wording::new(Lang::Es));
        let pairs = answer["pairs"].as_array().unwrap().iter().flat_map(|pair| pair["criteria"].as_array().unwrap());
        let mut unknown = 0;
        for criterion in pairs {
            assert!(!criterion["source"].as_str().unwrap().is_empty());
            assert_eq!(criterion["met"].is_null(), criterion["basis"] == "unknown");
            if criterion["basis"] == "unknown" {
                unknown += 1;
                assert!(criterion["known"].is_null() && criterion["known_value"].is_null());
            }
        }
        assert!(unknown > 0, "the sample should hold something unknown");
    }

    #[test]
    fn an_empty_nursery_has_empty_lists() {
        let answer = ready_of(&empty(), &Wording::new(Lang::En));
        for key in ["doubts", "trays", "beds", "pairs"] {
            assert_eq!(answer[key], json!([]), "{key}");
        }
    }
}
