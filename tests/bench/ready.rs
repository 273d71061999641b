//! `ready` as a whole process on the sample nursery, and the fold alone. Prints figures; judges nothing.
#![allow(clippy::unwrap_used, clippy::print_stdout)]

#[path = "../support/taken.rs"]
mod taken;

use std::process::{Command, Stdio};

use taken::report;

fn main() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("sample.outplant");
    let program = || {
        let mut command = Command::new(env!("CARGO_BIN_EXE_outplant"));
        command.env("HOME", folder.path()).env("OUTPLANT_TODAY", "2026-11-25").stdout(Stdio::null());
        command
    };
    assert!(program().args(["sample", "--into"]).arg(&file).status().unwrap().success());
    let figures = [
        ("ready, whole process", vec!["ready"]),
        ("ready --json, whole process", vec!["ready", "--json"]),
        ("why tray, whole process", vec!["why", "tray", "cof-021"]),
        ("species, whole process", vec!["species"]),
    ];
    for (name, words) in figures {
        let run = || assert!(program().arg("--nursery").arg(&file).args(&words).status().unwrap().success());
        report(name, 60, run);
    }
}
