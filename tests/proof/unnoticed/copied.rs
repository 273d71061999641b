//! A machine copied with its settings: both go on, and no two entries bear one name.

use std::collections::BTreeMap;

use crate::proof::faults::{copied, fresh};
use crate::proof::{Row, count};
use crate::support::program::Home;

/// Each entry of an export by its identity.
fn entries(home: &Home) -> BTreeMap<String, String> {
    let export = home.done(&["export"]);
    let id = |line: &str| serde_json::from_str::<serde_json::Value>(line).unwrap()["id"].as_str().unwrap().to_string();
    export.lines().map(|line| (id(line), line.to_string())).collect()
}

/// What is wrong where a copy and what it was copied from have both gone on.
fn fault(original: &Home, copy: &Home) -> Option<String> {
    let first = copy.run(&["write", "noted", "text=in the copy"]);
    if first.code != 0 || !first.err.contains("new device") {
        return Some(format!("the copy says nothing of itself: {} {}", first.code, first.err));
    }
    let second = copy.run(&["write", "noted", "text=in the copy again"]);
    if second.err.contains("new device") {
        return Some("it is said twice".into());
    }
    original.write("noted", &["text=in the original"]);
    let (own, its) = (entries(original), entries(copy));
    if let Some((id, _)) = its.iter().find(|(id, line)| own.get(*id).is_some_and(|own| own != *line)) {
        return Some(format!("{id} says two things"));
    }
    let lines = copy.with("lines-of-the-copy", its.values().cloned().collect::<Vec<_>>().join("\n"));
    let taken = original.run(&["import", lines.to_str().unwrap()]);
    let whole = entries(original);
    let all = own.keys().chain(its.keys()).all(|id| whole.contains_key(id));
    let checked = original.run(&["check"]);
    (taken.code != 0 || !all || checked.code != 0)
        .then(|| format!("they do not go together again: {} {} {}", taken.err, checked.code, checked.out))
}

#[test]
fn a_copied_machine_writes_as_another_device_and_both_go_together_again() {
    let mut row = Row::begin("a machine copied with its settings: a new device, said once; both go together again");
    let original = fresh();
    for _ in 0..count("COPIES", 3, 100) {
        row.ran(fault(&original, &copied(&original)));
    }
    row.must_hold();
    // What is looked for can be seen: another entry under a known identity is refused.
    let mut forged: serde_json::Value =
        serde_json::from_str(entries(&original).values().last().expect("entries")).unwrap();
    forged["text"] = "another text".into();
    let forged = original.with("forged", forged.to_string());
    assert_ne!(original.run(&["import", forged.to_str().unwrap()]).code, 0);
}
