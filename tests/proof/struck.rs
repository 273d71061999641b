//! The program killed at its n-th operation on the book, so that every moment has its turn, also the short ones.

use super::faults::{Told, copied, fault_after, fresh, operations, run, works};
use super::large::{self, Large};
use super::{Row, count, needs_strace};
use crate::support::program::{Ended, Home};

/// The operations before which it is killed.
const CALLS: [&str; 9] =
    ["pwrite64", "write", "fsync", "fdatasync", "ftruncate", "openat", "rename", "linkat", "unlink"];

/// So many of them, spread evenly.
fn spread(all: Vec<usize>, most: usize) -> Vec<usize> {
    let every = all.len().div_ceil(most.max(1)).max(1);
    all.into_iter().step_by(every).collect()
}

/// Kills one work at its operations; `words` gives the command for a home, `look` what is wrong after.
fn strike(
    row: &mut Row,
    begun: &Home,
    most: usize,
    words: &dyn Fn(&Home) -> Vec<String>,
    look: &mut dyn FnMut(&Home) -> Option<String>,
) {
    let mut places = Vec::new();
    for call in CALLS {
        let home = copied(begun);
        let words = words(&home);
        let words: Vec<&str> = words.iter().map(String::as_str).collect();
        places.extend(operations(&home, call, &words).into_iter().map(|nth| (call, nth)));
    }
    let all = places.len();
    for at in spread((0..all).collect(), most) {
        let (call, nth) = places[at];
        let home = copied(begun);
        let words = words(&home);
        let words: Vec<&str> = words.iter().map(String::as_str).collect();
        let (trace, inject) = (format!("trace={call}"), format!("inject={call}:signal=KILL:when={nth}"));
        let ended = run(&home, &["-e", &trace, "-e", &inject], &words);
        let was_killed = ended.code == -1;
        let failure = look(&home).or_else(|| (!was_killed).then(|| format!("it was not killed: {}", ended.err)));
        row.ran(failure.map(|why| format!("{call} number {nth}: {why}")));
    }
    row.found = format!("of {all} operations");
}

#[test]
fn killed_at_any_operation_nothing_is_there_by_half() {
    needs_strace();
    let most = count("STRIKES", 5, 100_000) as usize;
    let begun = fresh();
    for number in 0..4 {
        let name = works(&begun)[number].0;
        let mut row = Row::begin(&format!("kill -9 at every operation of {name}"));
        let mut told = Told::default();
        // Nothing was acknowledged where it was killed.
        let killed = Ended { code: 3, out: String::new(), err: "killed".into() };
        strike(&mut row, &begun, most, &|home| works(home)[number].1.clone(), &mut |home| {
            fault_after(home, name, &killed, &mut told)
        });
        row.found += &format!("; {} times all of it was there already", told.saved_all_the_same);
        row.must_hold();
    }
}

#[test]
fn killed_at_any_operation_of_what_is_kept_beside_the_entries_the_book_is_whole() {
    needs_strace();
    let most = count("STRIKES_LARGE", 4, 40) as usize;
    for (name, large) in [
        ("keeping a large book's stories anew", Large::WithoutStories),
        ("making a large book's lookup", Large::WithoutLookup),
    ] {
        let mut row = Row::begin(&format!("kill -9 at operations of {name}"));
        let begun = large::home(large);
        let mut half_done = 0;
        strike(
            &mut row,
            &begun,
            most,
            &|_| ["write", "noted", "text=during"].map(String::from).to_vec(),
            &mut |home| {
                half_done += u64::from(large.is_half_done(home));
                let checked = home.run(&["check", "--json"]);
                let whole = checked.code == 0 && !checked.out.contains("\"kept_stories_true\":false");
                let export = home.run(&["export"]).out;
                let there = export.matches("\"id\":\"grown:").count();
                if !whole || there != large::ENTRIES {
                    return Some(format!("{there} entries; check ends with {}: {}", checked.code, checked.out));
                }
                let after = home.run(&["write", "noted", "text=after"]);
                if after.code != 0 || large.is_half_done(home) {
                    return Some(format!("it does not go on: {}", after.err));
                }
                let checked = home.run(&["check", "--json"]);
                let whole = checked.code == 0 && checked.out.contains("\"kept_stories_true\":true");
                (!whole).then(|| format!("after going on check says {}", checked.out))
            },
        );
        row.found += &format!("; {half_done} kills came before it was all made");
        assert!(half_done > 0, "none came before it was made: the test sees nothing");
        row.must_hold();
    }
}
