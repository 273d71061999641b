//! A file put back to each state it ever had.

use std::path::Path;

use crate::proof::faults::fresh;
use crate::proof::{Row, count};
use crate::support::program::Home;

fn put_back(file: &Path, state: &[u8]) {
    for behind in ["-wal", "-shm"] {
        let mut beside = file.as_os_str().to_owned();
        beside.push(behind);
        let _ = std::fs::remove_file(beside);
    }
    std::fs::write(file, state).unwrap();
}

/// What is wrong in what is said of a file from which so many entries are gone.
fn unsaid(home: &Home, gone: usize, words: &[&str]) -> Option<String> {
    let told = home.run(words);
    let wanted = match gone {
        0 => String::new(),
        1 => "one entry that was saved here is gone".to_string(),
        more => format!("{more} entries that were saved here are gone"),
    };
    let said = if gone == 0 { !told.err.contains("saved here") } else { told.err.contains(&wanted) };
    (!said).then(|| format!("{words:?}, {gone} gone: {}", told.err))
}

#[test]
fn a_file_put_back_to_any_earlier_state_is_told_with_the_number_that_is_gone() {
    let all = count("STATES", 6, 150) as usize;
    let home = fresh();
    let file = home.file("nursery.outplant");
    let mut states = vec![std::fs::read(&file).unwrap()];
    for number in 0..all {
        home.write("noted", &[&format!("text=n{number}")]);
        states.push(std::fs::read(&file).unwrap());
    }
    let mut row = Row::begin("a file put back to each earlier state: told, with the number that is gone");
    for (at, state) in states.iter().enumerate() {
        put_back(&file, state);
        row.ran(unsaid(&home, all - at, &["ready"]));
    }
    row.must_hold();
    // What is written afterwards does not make it forgotten.
    let mut row = Row::begin("the same after one more entry was written there");
    for (before, at) in [0, all / 2, all - 1].into_iter().enumerate() {
        put_back(&file, &states[at]);
        home.write("noted", &["text=goes on"]);
        // Those of the times before, each by a device of its own, are gone too, and are told in the same sentence.
        row.ran(unsaid(&home, all - at + before, &["ready"]));
        row.ran((home.run(&["check"]).code != 6).then(|| "check is content".to_string()));
        put_back(&file, &states[all]);
        home.done(&["ready"]);
    }
    row.must_hold();
    let mut row = Row::begin("control, must fail: the notes beside the settings are gone too");
    std::fs::remove_dir_all(home.file(".config")).unwrap();
    for (at, state) in states.iter().enumerate().take(all) {
        put_back(&file, state);
        row.ran(unsaid(&home, all - at, &["ready"]));
    }
    let run = row.run;
    assert_eq!(row.told().len() as u64, run, "it was told without notes: what is looked for is always said");
}
