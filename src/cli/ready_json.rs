//! The main answer for programs: the contract of `ready --json`.

use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::io::{self, Write};

use super::criterion_json::{criteria, doubt, number, unplanned};
use super::forecast::{stock_to_come_json, tray_forecast_json};
use super::json::ObjectOut;
use crate::base::SpeciesKey;
use crate::reckon::field::waits_for;
use crate::reckon::forecast::Outlook;
use crate::reckon::light::in_band::{InBand, TurnTo, in_band};
use crate::reckon::loading::{Planned, day_plan};
use crate::reckon::picture::quantity::{EndsBy, ShadeEnd};
use crate::reckon::picture::{BedPicture, BedSpecies, HeldBy, PairPicture, Picture, Rule, TrayPicture};
use crate::reckon::{SharedOffer, shared_offers};
use crate::wording::Wording;
use crate::wording::verdict::About;

/// The version of the objects below.
pub(super) const VERSION: u32 = 1;
/// Months of which a pair says what becomes of the light: this one and half a year.
const MONTHS_OF_PAIR: usize = 7;

/// The main answer to a program.
pub(crate) struct ReadyAnswer<'a> {
    /// The whole Picture.
    pub(crate) picture: &'a Picture,
    /// What of it is shown.
    pub(crate) shown: &'a Picture,
    /// What is expected.
    pub(crate) outlook: &'a Outlook,
    /// The sentences.
    pub(crate) wording: &'a Wording,
}

impl ReadyAnswer<'_> {
    /// Writes what `ready --json` prints, a part at a time.
    pub(crate) fn write(&self, out: &mut ObjectOut<impl Write>) -> io::Result<()> {
        let ReadyAnswer { picture, shown, outlook, wording } = *self;
        out.field("version", VERSION)?;
        out.field("on", picture.day)?;
        out.field("looking", picture.looking)?;
        out.field("known", picture.known)?;
        let doubts = picture.doubts.iter().map(|one| doubt(one, picture, wording));
        let gaps = picture.unplanned.iter().map(|tray| unplanned(tray, picture, wording));
        out.field("doubts", doubts.chain(gaps).collect::<Vec<_>>())?;
        let trays: Vec<_> = shown.trays.values().collect();
        out.list("trays", &trays, |tray| tray_json(tray, picture, outlook, wording))?;
        let beds: Vec<_> = shown.beds.values().collect();
        out.list("beds", &beds, |bed| bed_json(bed, picture, wording))?;
        let pairs: Vec<_> = shown.pairs.iter().collect();
        out.list("pairs", &pairs, |pair| pair_json(&pair.once(), picture, wording))?;
        let species = species_of(shown);
        let coming = outlook.pipelines.iter().filter(|coming| species.contains(&coming.species));
        out.field("stock_to_come", coming.map(stock_to_come_json).collect::<Vec<_>>())?;
        let offers: Vec<_> = shared_offers(picture).into_iter().filter(|offer| is_shown(offer, shown)).collect();
        out.list("shared", &offers, |offer| shared_json(offer, picture, wording))?;
        let is_shown = |one: &Planned| shown.pair(&one.line.tray, &one.line.bed).is_some();
        let load: Vec<Planned> = day_plan(picture).into_iter().filter(is_shown).collect();
        out.list("load", &load, |one| load_json(one, picture))
    }
}

/// The species of the trays and beds that are shown.
fn species_of(shown: &Picture) -> BTreeSet<&SpeciesKey> {
    let of_trays = shown.trays.values().filter_map(|tray| tray.species.as_ref());
    of_trays.chain(shown.beds.values().flat_map(|bed| &bed.species).map(|line| &line.species)).collect()
}

fn is_shown(offer: &SharedOffer, shown: &Picture) -> bool {
    match offer {
        SharedOffer::Tray { tray, .. } => shown.trays.contains_key(tray),
        SharedOffer::Bed { bed, .. } => shown.beds.contains_key(bed),
    }
}

/// What goes from a tray to a bed, and how much of it the hands of the day plant.
fn load_json(one: &Planned, picture: &Picture) -> Value {
    let tray = picture.trays.get(&one.line.tray);
    json!({
        "tray": one.line.tray,
        "bed": one.line.bed,
        "species": tray.and_then(|tray| tray.species.as_ref()),
        "plants": one.line.plants,
        "best_before": one.last,
        "today": one.today,
        "rest_on": one.rest_on,
        "late": one.late,
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
        "ready_from": picture.goes_from(tray),
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
    let mut written = json!({
        "species": one.species,
        "species_name": wording.species_of(&one.species, &picture.site.species),
        "positions": one.positions,
        "living": one.living,
        "open_positions": one.open_positions,
        "in_light": one.in_light,
        "standing": one.standing,
        "criteria": criteria(&one.criteria, About::Bed, wording),
    });
    if let Some(light) = &one.light_reckoned {
        written["light_reckoned"] =
            json!({"share": number(light.share), "low": number(light.low), "high": number(light.high)});
    }
    written
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

/// A tray against a bed: whether it fits, what holds it back, and what is asked of the two together. What is asked of
/// each alone stands with the tray and with the bed.
pub(super) fn pair_json(pair: &PairPicture, picture: &Picture, wording: &Wording) -> Value {
    let mut held_by: Vec<&HeldBy> = pair.held_by.iter().collect();
    if held_by.len() > 1 {
        // What lasts longest first, as everywhere else.
        let asked = pair.criteria.once();
        let waits: Vec<Rule> = waits_for(&asked, picture.day).iter().map(|criterion| criterion.rule()).collect();
        held_by.sort_by_key(|held| waits.iter().position(|rule| *rule == held.rule));
    }
    let held_by = held_by.into_iter().map(|held| json!({"of": held.of, "rule": held.rule}));
    let mut text = json!({
        "tray": pair.tray,
        "bed": pair.bed,
        "species": pair.species,
        "fits": pair.fits,
        "plants": pair.plants,
        "in_light": pair.in_light,
        "held_by": held_by.collect::<Vec<_>>(),
        "criteria": criteria(&pair.criteria.own(), About::Pair, wording),
    });
    let bed = picture.beds.get(&pair.bed).filter(|_| pair.fits);
    let ahead = bed.and_then(|bed| in_band(&bed.story, &picture.site, &pair.species, (picture.day, MONTHS_OF_PAIR)));
    if let Some(ahead) = ahead {
        text["light_ahead"] = in_band_json(&ahead);
    }
    text
}

/// What becomes of the light of a bed for a species.
pub(super) fn in_band_json(told: &InBand) -> Value {
    let turn = told.turn.as_ref().map(|turn| {
        let to = match turn.to {
            TurnTo::Bright => "bright",
            TurnTo::Dark => "dark",
            TurnTo::Inside => "inside",
        };
        let by = match &turn.by {
            Some(end) => ends_by(end),
            None if turn.brighter => "thinning",
            None => "growth",
        };
        json!({"on": turn.on, "to": to, "by": by, "nurse": turn.by.as_ref().map(|end| &end.nurse)})
    });
    json!({"inside_now": number(told.now), "inside_6_months": number(told.half_year), "turn": turn})
}

/// What ends shade, in a word.
pub(super) fn ends_by(end: &ShadeEnd) -> &'static str {
    match end.by {
        EndsBy::Bunches(_) => "bunches",
        EndsBy::Stems => "stems",
        EndsBy::Age => "age",
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use crate::cli::test_picture::{empty, small};
    use crate::reckon::forecast::{ForecastBasis, outlook};
    use crate::reckon::picture::Only;
    use crate::wording::Lang;

    pub(in crate::cli) fn ready_of(picture: &Picture, wording: &Wording) -> Value {
        let (outlook, mut text) = (outlook(picture, ForecastBasis::OwnRecords), Vec::new());
        let mut out = ObjectOut::new(&mut text);
        ReadyAnswer { picture, shown: picture, outlook: &outlook, wording }.write(&mut out).unwrap();
        out.end().unwrap();
        serde_json::from_slice(&text).unwrap()
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
        assert_eq!((&pair["tray"], &pair["species"]), (&json!("cof-031"), &json!("COA")));
        assert_eq!((&pair["fits"], &pair["plants"], &pair["in_light"]), (&json!(true), &json!(24), &json!(true)));
        assert_eq!(answer["doubts"][0]["kind"], "no_bed_plans");
    }

    #[test]
    fn a_pair_names_what_holds_it_and_repeats_nothing_of_its_tray_or_bed() {
        let answer = ready_of(&small(), &Wording::new(Lang::En));
        let pairs = answer["pairs"].as_array().unwrap();
        for pair in pairs {
            let rules: Vec<&Value> = pair["criteria"].as_array().unwrap().iter().map(|one| &one["rule"]).collect();
            assert_eq!(rules, ["exposure_step"], "{pair:#}");
            assert_eq!(pair["fits"], pair["held_by"].as_array().unwrap().is_empty(), "{pair:#}");
        }
        let upper = pairs.iter().find(|pair| pair["bed"] == "Upper terrace").unwrap();
        let expected = json!([
            {"of": "pair", "rule": "exposure_step"}, {"of": "bed", "rule": "light_now"}, {"of": "bed", "rule": "weeded"}
        ]);
        assert_eq!(upper["held_by"], expected);
    }

    #[test]
    fn what_is_not_known_is_left_out_and_every_source_is_named() {
        let answer = ready_of(&small(), &Wording::new(Lang::Es));
        let of = |list: &str| answer[list].as_array().unwrap().clone();
        let lines = of("beds").into_iter().flat_map(|bed| bed["species"].as_array().unwrap().clone());
        let all = of("trays").into_iter().chain(lines).chain(of("pairs"));
        let mut unknown = 0;
        for criterion in all.flat_map(|one| one["criteria"].as_array().unwrap().clone()) {
            assert!(!criterion["source"].as_str().unwrap().is_empty());
            assert_eq!(criterion["met"].is_null(), criterion["basis"] == "unknown");
            let nulls: Vec<(&String, &Value)> =
                criterion.as_object().unwrap().iter().filter(|(key, value)| value.is_null() && *key != "met").collect();
            assert!(nulls.is_empty(), "{nulls:?}");
            if criterion["basis"] == "unknown" {
                unknown += 1;
                assert!(criterion.get("known").is_none() && criterion.get("known_value").is_none());
            }
        }
        assert!(unknown > 0, "the sample should hold something unknown");
    }

    #[test]
    fn an_answer_can_be_narrowed_to_a_tray_a_bed_and_what_fits() {
        let picture = small();
        let names = |only: &Only| {
            let shown = picture.narrowed(only);
            let trays: Vec<String> = shown.trays.keys().map(ToString::to_string).collect();
            let beds: Vec<String> = shown.beds.keys().map(ToString::to_string).collect();
            (trays.join(", "), beds.join(", "), shown.pairs.iter().count())
        };
        let tray = |code: &str| Some(crate::base::TrayCode::new(code).unwrap());
        let bed = |name: &str| Some(crate::base::BedName::new(name).unwrap());
        let message = |trays: &str, beds: &str, pairs: usize| (trays.to_string(), beds.to_string(), pairs);
        assert_eq!(names(&Only { fits: true, ..Only::default() }), message("cof-031", "Lower terrace, School plot", 2));
        assert_eq!(names(&Only { tray: tray("gre-009"), ..Only::default() }), message("gre-009", "", 0));
        assert_eq!(names(&Only { bed: bed("Windbreak"), ..Only::default() }), message("", "Windbreak", 0));
        let both = Only { tray: tray("cof-031"), bed: bed("Upper terrace"), fits: false };
        assert_eq!(names(&both), message("cof-031", "Upper terrace", 1));
        assert_eq!(picture.narrowed(&Only::default()).trays.len(), picture.trays.len());
    }

    #[test]
    fn an_empty_nursery_has_empty_lists() {
        let answer = ready_of(&empty(), &Wording::new(Lang::En));
        for key in ["doubts", "trays", "beds", "pairs"] {
            assert_eq!(answer[key], json!([]), "{key}");
        }
    }
}
