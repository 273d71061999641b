//! A program that stands still at any of its operations: other nurseries go on, readers answer and writers write, or they wait
//! a while and say why.

use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use crate::proof::faults::{copied, fresh, operations, traced, works};
use crate::proof::{Row, count, needs_strace};
use crate::support::program::Home;

/// The operations at which it stops; locks are among them.
const CALLS: [&str; 7] = ["fcntl", "flock", "pwrite64", "fdatasync", "fsync", "write", "openat"];
/// Longer than a writer waits for another (5 seconds) on a busy machine, shorter than for ever.
const AT_MOST: Duration = Duration::from_secs(40);

/// Starts a work that stops at its n-th call.
fn stopped(home: &Home, call: &str, nth: usize, words: &[String]) -> Child {
    let (trace, inject) = (format!("trace={call}"), format!("inject={call}:signal=STOP:when={nth}"));
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let mut command = traced(home, &["-e", &trace, "-e", &inject], &words);
    command.stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap()
}

/// The program itself, once it stands still; none where it ended before.
fn standing_still(home: &Home, strace: &mut Child) -> Option<String> {
    let begun = Instant::now();
    while begun.elapsed() < AT_MOST && strace.try_wait().unwrap().is_none() {
        let trace = std::fs::read_to_string(home.file("trace")).unwrap_or_default();
        if trace.contains("stopped by SIGSTOP") {
            return trace.split_whitespace().next().map(str::to_string);
        }
        std::thread::sleep(Duration::from_millis(10));
    }
    None
}

/// How often a reader and a writer were told of the one that stands still.
#[derive(Default)]
struct Told {
    readers: u64,
    writers: u64,
}

/// What others could not do meanwhile.
fn stopped_others(home: &Home, other: &str, told: &mut Told) -> Option<String> {
    for (words, codes, count) in [
        (&["ready"][..], &[0, 5][..], &mut told.readers),
        (&["--nursery", other, "write", "noted", "text=elsewhere"], &[0], &mut 0),
        (&["write", "noted", "text=meanwhile"], &[0, 5], &mut told.writers),
    ] {
        let begun = Instant::now();
        let ended = home.run(words);
        if !codes.contains(&ended.code) || begun.elapsed() > AT_MOST {
            return Some(format!("{words:?} ends with {} after {:?}: {}", ended.code, begun.elapsed(), ended.err));
        }
        if ended.code == 5 && !ended.err.contains("another outplant") {
            return Some(format!("it is not said why: {}", ended.err));
        }
        *count += u64::from(ended.code == 5);
    }
    None
}

#[test]
fn a_program_that_stands_still_at_any_operation_makes_nobody_wait_for_ever() {
    needs_strace();
    let most = count("STANDING_STILL", 3, 1000) as usize;
    let begun = fresh();
    let other = begun.file("other.outplant").to_str().unwrap().to_string();
    begun.done(&["--nursery", &other, "begin", "--name", "O", "--lat", "0", "--lon", "36", "--altitude", "900"]);
    for number in 0..2 {
        let (name, _) = works(&begun)[number].clone();
        let mut row = Row::begin(&format!("a program that stands still at any operation of {name}"));
        let mut places = Vec::new();
        for call in CALLS {
            let home = copied(&begun);
            let words = works(&home)[number].1.clone();
            let words: Vec<&str> = words.iter().map(String::as_str).collect();
            places.extend(operations(&home, call, &words).into_iter().map(|nth| (call, nth)));
        }
        let (all, mut told) = (places.len(), Told::default());
        let every = all.div_ceil(most).max(1);
        // From the end on: the last operations are those under the lock.
        for (call, nth) in places.into_iter().rev().step_by(every) {
            let home = copied(&begun);
            let other = home.file("other.outplant").to_str().unwrap().to_string();
            let mut strace = stopped(&home, call, nth, &works(&home)[number].1);
            let Some(program) = standing_still(&home, &mut strace) else {
                row.ran(Some(format!("{call} number {nth}: it did not stand still")));
                continue;
            };
            let failure = stopped_others(&home, &other, &mut told);
            assert!(Command::new("kill").args(["-CONT", &program]).status().unwrap().success());
            let ended = strace.wait().unwrap().code();
            let checked = home.run(&["check"]);
            let after = (checked.code != 0 || !matches!(ended, Some(0..=6)))
                .then(|| format!("afterwards it ends with {ended:?}, check with {}: {}", checked.code, checked.out));
            row.ran(failure.or(after).map(|why| format!("{call} number {nth}: {why}")));
        }
        let Told { readers, writers } = told;
        row.found = format!("of {all} operations; told that another is writing: {writers} writers, {readers} readers");
        assert!(most < 30 || writers > 0, "the book was never held: the test sees nothing");
        row.must_hold();
    }
}
