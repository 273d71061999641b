//! A machine copied with its settings: both go on, and no two entries bear one name. A chain reckoned anew: what the file
//! alone cannot tell.

use std::collections::BTreeMap;

use outplant::nursery::envelope::canonical;
use sha2::{Digest, Sha256};

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

/// The lines of one device with every hash reckoned anew, as somebody could who has the file.
fn sealed_anew(lines: Vec<serde_json::Value>) -> Vec<String> {
    let mut prev = serde_json::Value::Null;
    let mut sealed = Vec::new();
    for mut line in lines {
        line["prev"] = prev;
        line.as_object_mut().unwrap().remove("hash");
        let digest = Sha256::digest(canonical(&line).as_bytes());
        prev = digest.iter().map(|byte| format!("{byte:02x}")).collect::<String>().into();
        line["hash"] = prev.clone();
        sealed.push(canonical(&line));
    }
    sealed
}

#[test]
fn a_chain_that_was_reckoned_anew_is_told_by_a_copy_elsewhere_and_by_nothing_else() {
    let original = Home::default().begun();
    for text in ["first", "second", "third"] {
        original.write("noted", &[&format!("text={text}")]);
    }
    let export = original.done(&["export"]);
    let mut lines: Vec<serde_json::Value> = export.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    // What is reckoned here is what the program reckons.
    assert_eq!(sealed_anew(lines.clone()), export.lines().collect::<Vec<_>>());
    let changed = lines.iter_mut().find(|line| line["text"] == "second").unwrap();
    changed["text"] = "another".into();
    let id = changed["id"].as_str().unwrap().to_string();
    let forged = sealed_anew(lines).join("\n");
    // Elsewhere it is taken for a true one, and no check sees it.
    let elsewhere = Home::default().begun();
    let file = elsewhere.with("forged", &forged);
    elsewhere.done(&["import", file.to_str().unwrap()]);
    elsewhere.done(&["check"]);
    // The copy tells, whichever of the two comes first, and nothing is taken.
    let true_lines = elsewhere.with("true", &export);
    let said = elsewhere.refused(&["import", true_lines.to_str().unwrap()]);
    assert!(said.contains(&id), "{said}");
    let file = original.with("forged", &forged);
    let said = original.refused(&["import", file.to_str().unwrap()]);
    assert!(said.contains(&id), "{said}");
    assert_eq!(original.done(&["export"]), export);
}
