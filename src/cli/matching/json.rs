//! The plan for programs: the contract of `match --json`.

use serde_json::{Value, json};

use crate::cli::criterion_json::number;
use crate::cli::ready_json::VERSION;
use crate::page::Asked;
use crate::page::matching::{empty, left_behind, one_more};
use crate::reckon::matching::{Cause, More, OneMore, Plan, Proof};

/// What `match --json` prints.
pub(super) fn match_json(plan: &Plan, asked: Asked<'_>) -> Value {
    let loads = plan.loads.iter().map(|load| {
        json!({
            "week": load.week, "from": load.from, "tray": load.tray, "bed": load.bed, "species": load.species,
            "plants": load.plants, "pinned": load.pinned, "first": load.first,
        })
    });
    let left = plan.left_behind.iter().map(|one| {
        json!({
            "tray": one.tray, "plants": one.plants, "cause": cause_name(&one.cause), "bed": one.bed,
            "sentence": left_behind(one, asked),
        })
    });
    let empty = plan.empty.iter().map(|one| {
        json!({
            "bed": one.bed, "species": one.species, "positions": one.positions,
            "cause": cause_name(&one.cause), "sentence": empty(one, asked),
        })
    });
    json!({
        "version": VERSION,
        "on": plan.on,
        "weeks": plan.weeks,
        "status": match plan.proof {
            Proof::Proven => "proven",
            Proof::BestSoFar { .. } => "best_so_far",
            Proof::Nothing => "nothing_to_plant",
        },
        "objective": plan.objective,
        "bound": plan.bound,
        "living_12_months": number(plan.living),
        "given_up": {"plants": plan.given_up.0, "trips": plan.given_up.1},
        "plants_per_week": plan.hands.map(|(_, week)| week),
        "loads": loads.collect::<Vec<_>>(),
        "compared": Value::Null,
        "left_behind": left.collect::<Vec<_>>(),
        "empty": empty.collect::<Vec<_>>(),
        "one_more": plan.one_more.iter().map(|more| more_json(plan, more, asked)).collect::<Vec<_>>(),
    })
}

fn more_json(plan: &Plan, more: &OneMore, asked: Asked<'_>) -> Value {
    let (of, week, bed) = match &more.of {
        More::PlantingDay { week } => ("work", Some(*week), None),
        More::Positions { bed, .. } => ("positions", None, Some(bed)),
    };
    json!({"of": of, "week": week, "bed": bed, "gain": more.plants, "sentence": one_more(plan, more, asked)})
}

/// The name of a cause for programs.
fn cause_name(cause: &Cause) -> Value {
    match cause {
        Cause::Question(criterion) => json!(criterion.rule()),
        Cause::NoBed => json!("no_bed"),
        Cause::Work => json!("work"),
        Cause::Positions => json!("positions"),
        Cause::Window => json!("window"),
        Cause::Stock => json!("stock"),
        Cause::LeastLoad => json!("least_load"),
        Cause::ByHand => json!("by_hand"),
    }
}
