//! What a lot is still worth and how many to sow, for programs.

use serde_json::{Value, json};

use super::LotAnswer;
use crate::base::Range;
use crate::cli::criterion_json::number;
use crate::cli::why_json::{answer, cautions_json};
use crate::page::care::of_lot;
use crate::reckon::lots::{Expected, Retest, RetestWhy, StartFrom, TestRead, Way};
use crate::reckon::picture::Picture;
use crate::reckon::round::Round;
use crate::reckon::sowing::{SowingAsked, SowingPlan};
use crate::science::sampling::Differ;
use crate::wording::Wording;

/// The answer of `why lot --json`.
pub(crate) fn why_lot_json(told: &LotAnswer<'_>, picture: &Picture, round: &Round, wording: &Wording) -> Value {
    let (lot, day) = (told.lot, picture.day);
    let outlook = &told.outlook;
    // Of seed that a test showed dead no days are left.
    let life = outlook.life.as_ref().ok().filter(|_| outlook.dead_by_test().is_none()).map(|life| {
        json!({
            "from": life.from, "from_collection": life.from_collection, "days": life.days, "kept": life.kept,
            "last_day": life.last_day(), "days_left": life.days_left(day),
            "source": wording.source_words(&life.source),
        })
    });
    let viability = outlook.viability.as_ref().ok().map(|told| expected_json(told, wording));
    let (sowing, sowing_text) = sowing_json(&told.sowing, wording);
    let mut lot_value = json!({
        "lot": lot.code,
        "species": lot.species,
        "species_name": lot.species.as_ref().map(|key| wording.species_of(key, &picture.site.species)),
        "source": lot.source,
        "collected": lot.collected,
        "received": lot.received,
        "seeds_left": lot.seeds_left,
        "counted": lot.counted,
        "kept": lot.kept.last().map(|spell| spell.what),
        "kept_since": lot.kept.last().map(|spell| spell.from),
        "moisture_pct": lot.stores.last().and_then(|store| store.what.moisture_pct),
        "store_c": lot.stores.last().and_then(|store| store.what.temp_c),
        "text": wording.lot_verdict(outlook, day).1,
        "life": life,
        "life_text": match outlook.dead_by_test() {
            Some(_) => wording.lot_verdict(outlook, day).1,
            None => wording.lot_life(&outlook.life, day),
        },
        "viability": viability,
        "viability_text": wording.lot_expected(&outlook.viability),
        "viability_source": wording.lot_source(outlook),
        "tests": outlook.tests.iter().map(|test| test_json(test, wording)).collect::<Vec<_>>(),
        "retest": outlook.retest.as_ref().ok().map(|retest| retest_json(retest, picture)),
        "retest_text": wording.lot_retest(&outlook.retest, day),
        "open_places": told.sowing.open_places,
        "standing_in_trays": told.sowing.standing,
        "sowing": sowing,
        "sowing_text": sowing_text,
    });
    needed_into(&mut lot_value, &told.sowing);
    let mut text = answer(picture, "lot", lot_value);
    text["cautions"] = cautions_json(&of_lot(&lot.code, &told.sowing, round), wording);
    text
}

/// How many to sow, and the same in words.
pub(super) fn sowing_json(asked: &SowingAsked, wording: &Wording) -> (Option<Value>, String) {
    let text = match &asked.plan {
        None => wording.sowing_nothing(asked),
        Some(Ok(plan)) => wording.sowing_said(plan),
        Some(Err(why)) => wording.sowing_no_plan(why),
    };
    let plan = asked.plan.as_ref().and_then(|plan| plan.as_ref().ok());
    (plan.map(|plan| plan_json(plan, asked.asked)), text)
}

/// What is needed, what is to come of trays, and the number as if nothing stood, beside the number to sow.
pub(super) fn needed_into(told: &mut Value, asked: &SowingAsked) {
    let gross = asked.gross.as_ref().and_then(|plan| plan.as_ref().ok());
    told["needed"] = json!(asked.needed);
    told["expected_from_trays"] = asked.needed.map_or(Value::Null, |_| range_json(asked.coming));
    told["still_needed"] = json!(asked.still_needed);
    told["sowing_gross"] = json!(gross.map(|plan| plan_json(plan, asked.asked)));
}

fn range_json(range: Range) -> Value {
    json!({"low": number(range.low), "likely": number(range.likely), "high": number(range.high)})
}

fn expected_json(told: &Expected, wording: &Wording) -> Value {
    let from = match told.start.from {
        StartFrom::Test => "test",
        StartFrom::Arrival => "arrival",
        StartFrom::Handbook => "handbook",
    };
    let (by, equation) = match told.by {
        Way::Equation { record, store, sigma_days, within_limits } => (
            "equation",
            Some(json!({
                "species": record.species, "paper": record.source,
                "ke": record.constants.ke, "cw": record.constants.cw, "ch": record.constants.ch, "cq": record.constants.cq,
                "moisture_pct": store.moisture_pct, "store_c": store.temp_c, "sigma_days": sigma_days,
                "within_limits": within_limits,
            })),
        ),
        Way::Life { .. } => ("life", None),
        Way::Killed => ("killed", None),
    };
    json!({
        "today": range_json(told.today),
        "start": {"on": told.start.day, "share": range_json(told.start.share), "from": from},
        "days_to_85": range_json(told.to_old),
        "days_to_half": range_json(told.to_half),
        "by": by,
        "equation": equation,
        "reckoned": wording.lot_reckoned(told),
    })
}

fn test_json(test: &TestRead, wording: &Wording) -> Value {
    let agree = match test.differ() {
        Differ::Agree => Some(true),
        Differ::Apart => Some(false),
        Differ::Unknown => None,
    };
    json!({
        "on": test.day, "laid_out": test.laid_out, "seeds": test.seeds, "germinated": test.germinated,
        "share": range_json(test.share), "replicates": test.counts, "replicates_agree": agree,
        "range": test.replicates.map(|told| told.range),
        "max_tolerated_range": test.replicates.and_then(|told| told.max_tolerated_range),
        "p_value": test.replicates.and_then(|told| told.p_value),
        "whole_on": test.whole_on, "text": wording.lot_test(test), "entries": [test.entry],
    })
}

fn retest_json(retest: &Retest, picture: &Picture) -> Value {
    let why = match retest.why {
        RetestWhy::NeverTested { .. } => "never_tested",
        RetestWhy::TestOld { .. } => "test_old",
        RetestWhy::Falling { .. } => "falling",
        RetestWhy::ReplicatesApart { .. } => "replicates_apart",
    };
    json!({"on": retest.on, "due": retest.on <= picture.day, "why": why, "since": retest.since()})
}

fn plan_json(plan: &SowingPlan, asked: bool) -> Value {
    let (known, containers) = (&plan.germination, &plan.containers);
    json!({
        "plants": plan.wanted.plants, "sure": plan.wanted.sure, "asked": asked,
        "seeds": plan.seeds, "prob_enough": plan.enough, "mean_success": plan.mean_success,
        "divided": plan.divided, "prob_divided_short": plan.divided_short,
        "germination": {
            "mean": known.mean(), "a": known.a, "b": known.b, "sowings": known.sowings, "left_in_store": known.left,
            "tested": known.tested.map(|(seeds, germinated)| json!({"seeds": seeds, "germinated": germinated})),
        },
        "survival": {
            "mean": plan.survival.mean, "trays": plan.survival.trays, "went_out": plan.survival.seen.0,
            "lost": plan.survival.seen.1,
        },
        "mass_g": plan.mass_g.map(|mass| mass.likely), "seeds_left": plan.seeds_left, "prob_enough_from_left": plan.enough_from_left,
        "seeds_if_tested": plan.seeds_if_tested,
        "containers": {
            "seedbed": containers.seedbed, "pricked_out": containers.pricked_out, "one_each": containers.one_each,
            "several": containers.several.map(|several| json!({
                "seeds_each": several.seeds_each, "containers": several.containers, "seeds": several.seeds,
            })),
        },
    })
}
