//! Plans of groups to beds and weeks against proven optima of other solvers (`reference/matching.json`: HiGHS through
//! scipy, CP-SAT), through the program as another program would ask it.

mod library;
mod properties;

use std::collections::{BTreeMap, BTreeSet};

use serde_json::{Value, json};

use crate::support::program::Home;
use crate::support::reference::reference;

fn instances() -> Vec<Value> {
    let all = reference(include_str!("../../reference/matching.json"));
    all["instances"].as_array().unwrap().clone()
}

fn whole(value: &Value) -> i64 {
    value.as_i64().unwrap_or(0)
}

/// What a plan is worth, from the words of `_model` in the reference alone; a sentence where it cannot be carried out.
fn worth(instance: &Value, plan: &[Value]) -> Result<i64, String> {
    let by_id = |list: &str| -> BTreeMap<String, Value> {
        let each = instance[list].as_array().unwrap().iter();
        each.map(|one| (one["id"].as_str().unwrap().to_string(), one.clone())).collect()
    };
    let (groups, beds, values) = (by_id("groups"), by_id("beds"), &instance["value"]);
    let (mut sums, mut worth): (BTreeMap<String, (i64, i64)>, i64) = (BTreeMap::new(), 0);
    let (mut of_bed, mut of_source, mut seen) = (BTreeMap::new(), BTreeMap::new(), BTreeSet::new());
    for row in plan {
        let (group, bed) = (&groups[row["group"].as_str().unwrap()], &beds[row["bed"].as_str().unwrap()]);
        let (id, species) = (row["bed"].as_str().unwrap(), group["species"].as_str().unwrap());
        let (week, plants) = (whole(&row["week"]), whole(&row["plants"]));
        let open = bed["open"].as_array().unwrap().iter().find(|open| open["species"] == species);
        let open = open.ok_or(format!("{id} is not open to {species}"))?;
        let first = whole(&group["ready_week"]).max(whole(&open["from_week"]));
        let last = whole(&group["last_week"]).min(whole(&open["until_week"]));
        if week < first || week > last || plants < 1 || !seen.insert((row["group"].to_string(), id, week)) {
            return Err(format!("{row}: not from {first} to {last}, no plants or twice"));
        }
        let distance = &values["block_distance"][group["block"].as_str().unwrap()][id];
        worth += plants
            * (whole(&values["base"])
                - whole(&values["wait_penalty_per_week"][species]) * (week - whole(&group["ready_week"]))
                - whole(&values["mismatch"][species][id])
                - whole(distance));
        let limits = [
            (format!("group {}", row["group"]), &group["supply"]),
            (format!("bed {id} {species}"), &open["positions"]),
            (format!("week {week}"), &instance["labour_per_week"][week as usize - 1]),
        ];
        for (name, most) in limits {
            sums.entry(name).or_insert((0, whole(most))).0 += plants;
        }
        *of_bed.entry(id).or_insert(0) += plants;
        *of_source.entry((id, group["source"].as_str().unwrap())).or_insert(0) += plants;
    }
    if let Some(over) = sums.iter().find(|(_, (sum, most))| sum > most) {
        return Err(format!("{over:?}"));
    }
    // Shares of the reference are hundredths.
    let hundredths = (instance["max_source_share"].as_f64().unwrap() * 100.0).round() as i64;
    for ((bed, source), plants) in of_source {
        let positions = beds[bed]["open"].as_array().unwrap().iter().map(|open| whole(&open["positions"])).sum();
        let of = if instance["share_basis"] == "assigned" { of_bed[bed] } else { positions };
        if hundredths < 100 && plants * 100 > hundredths * of {
            return Err(format!("{plants} of {source} in {bed}, {hundredths} % of {of}"));
        }
    }
    Ok(worth)
}

fn solved(home: &Home, instance: &Value) -> Value {
    let mut asked = instance.clone();
    asked.as_object_mut().unwrap().remove("expected");
    let ended = home.run_with(&["calc", "matching"], &asked.to_string());
    assert_eq!((ended.code, ended.err.as_str()), (0, ""), "{}", instance["id"]);
    serde_json::from_str(&ended.out).unwrap()
}

#[test]
fn every_plan_of_the_reference_is_as_good_as_the_best_and_can_be_carried_out() {
    let (home, instances) = (Home::default(), instances());
    assert_eq!(instances.len(), 41);
    for instance in &instances {
        let name = &instance["id"];
        let told = solved(&home, instance);
        assert_eq!(told["objective"], instance["expected"]["objective"], "{name}");
        assert_eq!((&told["proven_optimal"], &told["bound"]), (&json!(true), &told["objective"]), "{name}");
        assert_eq!(worth(instance, told["plan"].as_array().unwrap()), Ok(whole(&told["objective"])), "{name}");
    }
}

#[test]
fn the_check_of_the_tests_finds_what_cannot_be_carried_out() {
    let instance = &instances()[0];
    let row =
        |group: &str, bed: &str, week: i64, plants: i64| json!({"group":group,"bed":bed,"week":week,"plants":plants});
    // Share of the assigned 0.5: one source alone is too many.
    assert!(worth(instance, &[row("G1", "B1", 2, 1)]).unwrap_err().contains("50 %"));
    assert_eq!(worth(instance, &[row("G1", "B1", 2, 1), row("G2", "B1", 1, 1)]), Ok(872 + 872));
    assert!(worth(instance, &[row("G1", "B1", 4, 1)]).unwrap_err().contains("not from 2 to 3"));
    assert!(worth(instance, &[row("G3", "B1", 3, 7)]).unwrap_err().contains("group"));
}

#[test]
fn what_makes_no_instance_is_refused_with_what_and_where() {
    let home = Home::default();
    let good = &instances()[0];
    let with = |path: &str, value: Value| {
        let mut changed = good.clone();
        *changed.pointer_mut(path).unwrap() = value;
        changed
    };
    let cases = [
        (with("/weeks", json!(5)), "labour_per_week and weeks must be equally many"),
        (with("/groups/1/id", json!("G1")), "groups: G1 is there twice"),
        (with("/groups/1/supply", json!(-3)), "groups 2: supply must be from 0"),
        (with("/groups/1/supply", json!(2.5)), "groups 2: supply must be whole numbers"),
        (with("/groups/1/species", Value::Null), "groups 2: species is missing"),
        (with("/beds/0/open/1/species", json!("S1")), "beds: B1 is open to S1 twice"),
        (with("/beds/0/open/1/positions", json!("many")), "beds 1: open 2: positions is not a number"),
        (with("/share_basis", json!("half")), "known are: open_positions, assigned"),
        (with("/max_source_share", json!(30)), "max_source_share must be from 0 to 1"),
        (with("/value", json!(7)), "value is '7'"),
        (with("/value/mismatch/S1", json!([1])), "mismatch is '[1]'"),
        (with("/value/mismatch/S1/B1", json!(1e9)), "mismatch must be from"),
        (json!({}), "weeks is missing"),
    ];
    for (given, why) in cases {
        let ended = home.run_with(&["calc", "matching"], &given.to_string());
        assert_eq!((ended.code, ended.out.as_str()), (1, ""), "{why}");
        assert!(ended.err.contains(why), "{why}: {}", ended.err);
    }
    let spanish = home.run_with(&["--lang", "es", "calc", "matching"], &with("/groups/1/id", json!("G1")).to_string());
    assert!(spanish.err.contains("G1 está dos veces"), "{}", spanish.err);
}

#[test]
fn what_leaves_nothing_to_plan_is_an_empty_plan() {
    let home = Home::default();
    let good = &instances()[0];
    let nothing = |changes: &[(&str, Value)]| {
        let mut changed = good.clone();
        for (path, value) in changes {
            *changed.pointer_mut(path).unwrap() = value.clone();
        }
        solved(&home, &changed)
    };
    let cases: [&[(&str, Value)]; 4] = [
        &[("/groups", json!([]))],
        &[("/beds", json!([]))],
        &[("/labour_per_week", json!([0, 0, 0, 0]))],
        &[("/weeks", json!(0)), ("/labour_per_week", json!([]))],
    ];
    for changes in cases {
        let told = nothing(changes);
        assert_eq!((&told["objective"], &told["proven_optimal"], &told["plan"]), (&json!(0), &json!(true), &json!([])));
    }
}
