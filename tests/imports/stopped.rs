//! An import that is stopped leaves nothing; it says how far it is where somebody sees it.

use std::io::Write;
use std::ops::ControlFlow;
use std::process::{Child, Command, Output, Stdio};
use std::time::{Duration, Instant};

use outplant::desk::{DeskError, How, ImportError, ImportStep, JournalError, check};
use outplant::journal::untold;

use super::{Place, take};
use crate::support::program::Home;

/// Longer than it ever takes: other tests share the machine.
const SOON: Duration = Duration::from_secs(60);

fn grown_lines(entries: usize) -> Vec<String> {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("grown.outplant");
    crate::support::grown::write_grown(&file, folder.path(), entries, 5).unwrap();
    let mut text = Vec::new();
    outplant::desk::Reading::open(&file, std::path::Path::new(""))
        .unwrap()
        .export(outplant::desk::Export::Lines, &mut text)
        .unwrap();
    String::from_utf8(text).unwrap().lines().map(str::to_string).collect()
}

#[test]
fn stopped_at_any_step_nothing_is_taken_in_and_it_can_be_taken_afterwards() {
    let theirs = grown_lines(2600);
    let notes = (0..1500).map(|i| format!("{{\"kind\":\"noted\",\"text\":\"n{i}\"}}"));
    let (known, coming) = theirs.split_at(300);
    let coming: Vec<String> = coming.iter().cloned().chain(notes).collect();
    let text = coming.join("\n");
    let mut kinds_of_steps = std::collections::BTreeSet::new();
    for at_once in [0, usize::MAX] {
        for only_try in [false, true] {
            let place = Place::empty(u64::MAX);
            let mut desk = place.desk();
            take(&mut desk, known, usize::MAX, false).unwrap();
            let (stood, picture) = (place.lines(), desk.picture());
            let how = How { only_try, at_once };
            let mut stop_at = 0;
            let taken = loop {
                let mut steps = 0;
                let taken = desk.import_told(text.as_bytes(), "mara", how, &mut |step| {
                    steps += 1;
                    kinds_of_steps
                        .insert(format!("{step:?}").chars().take_while(|c| c.is_alphabetic()).collect::<String>());
                    if steps > stop_at { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
                });
                match taken {
                    Err(ImportError::Desk(DeskError::Journal(JournalError::Cancelled))) => {}
                    other => break other,
                }
                stop_at += 1;
                assert_eq!(place.lines(), stood, "stopped at step {stop_at}");
                assert_eq!(desk.count(), stood.len());
                assert_eq!(desk.picture().trays.len(), picture.trays.len());
                assert!(check(&place.file(), place.file().parent().unwrap(), &mut untold).unwrap().faults.is_empty());
            };
            assert!(stop_at >= 3, "it was asked {stop_at} times");
            assert_eq!(taken.unwrap().lines, coming.len());
            assert_eq!(place.lines().len(), if only_try { stood.len() } else { stood.len() + coming.len() });
        }
    }
    let all = ["Judged", "LookedUp", "Read", "Saving", "Written"];
    let seen: Vec<&str> = all.into_iter().filter(|kind| kinds_of_steps.contains(*kind)).collect();
    assert!(seen.contains(&"Judged") && seen.contains(&"Saving") && seen.contains(&"Written"), "{kinds_of_steps:?}");
}

#[cfg(unix)]
#[test]
fn a_signal_ends_an_import_with_a_sentence_and_nothing_is_taken_in() {
    let home = Home::default().begun();
    let before = home.done(&["export"]);
    let lines: String = (0..20_000).map(|i| format!("{{\"kind\":\"noted\",\"text\":\"line {i}\"}}\n")).collect();
    let signals = [
        ("INT", 130, "en", ("the import was stopped", " after line ", "; nothing was taken in")),
        ("TERM", 143, "es", ("se detuvo la importación", " después de la línea ", "; no se tomó nada")),
        ("HUP", 129, "en", ("the import was stopped", " after line ", "; nothing was taken in")),
    ];
    // Tests that were begun to outlive their terminal begin programs that do so too: those hear no HUP.
    let heard = signals.into_iter().filter(|(signal, ..)| *signal != "HUP" || !outlives_its_terminal());
    // The end of what is piped in never comes: it stands in the middle of the file.
    for (signal, code, lang, sentence) in heard {
        let (begins, at_line, ends) = sentence;
        for fed in [&lines[..], ""] {
            let mut command = home.program();
            command.args(["import", "-", "--lang", lang]);
            command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
            let mut child = command.spawn().unwrap();
            let mut input = child.stdin.take().unwrap();
            input.write_all(fed.as_bytes()).unwrap();
            let ended = ended_by(signal, child);
            drop(input);
            let said = String::from_utf8(ended.stderr).unwrap();
            assert_eq!(ended.status.code(), Some(code), "{signal}: {said}");
            let where_it_was = said.trim_end().strip_prefix(begins).and_then(|said| said.strip_suffix(ends));
            let line = where_it_was.and_then(|said| said.strip_prefix(at_line)).and_then(|line| line.parse().ok());
            // A pipe is read to its end before its lines are.
            assert!(where_it_was == Some("") || line.is_some_and(|line: u64| line <= 20_000), "{signal}: {said}");
            assert!(ended.stdout.is_empty());
            assert_eq!(home.done(&["export"]), before);
            assert_eq!(home.json(&["check"])["sound"], serde_json::json!(true));
        }
    }
    // Nothing stands in the way of the next one.
    let file = home.with("lines.jsonl", &lines);
    home.done(&["import", file.to_str().unwrap()]);
    assert_eq!(home.done(&["export"]).lines().count(), before.lines().count() + 20_000);
}

/// Whether this process ignores SIGHUP (bit 0 of the mask that the system shows), as programs under `nohup` do.
#[cfg(unix)]
fn outlives_its_terminal() -> bool {
    let said = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let ignored = said.lines().find_map(|line| line.strip_prefix("SigIgn:"));
    ignored.and_then(|mask| u64::from_str_radix(mask.trim(), 16).ok()).unwrap_or(0) & 1 != 0
}

/// What a program that listens is ended with by a signal, soon.
#[cfg(unix)]
fn ended_by(signal: &str, child: Child) -> Output {
    wait_until_it_listens(child.id());
    let begun = Instant::now();
    let pid = child.id().to_string();
    assert!(Command::new("kill").args(["-s", signal, &pid]).status().unwrap().success());
    let ended = child.wait_with_output().unwrap();
    assert!(begun.elapsed() < SOON);
    ended
}

/// Until it catches SIGINT and SIGTERM itself (bits 1 and 14 of the mask that the system shows), and has read.
#[cfg(target_os = "linux")]
fn wait_until_it_listens(process: u32) {
    let begun = Instant::now();
    loop {
        let said = std::fs::read_to_string(format!("/proc/{process}/status")).unwrap_or_default();
        let caught = said.lines().find_map(|line| line.strip_prefix("SigCgt:"));
        let mask = caught.and_then(|mask| u64::from_str_radix(mask.trim(), 16).ok()).unwrap_or(0);
        if mask & (1 << 1) != 0 && mask & (1 << 14) != 0 {
            return;
        }
        assert!(begun.elapsed() < SOON, "it does not listen for signals");
        std::thread::sleep(Duration::from_millis(5));
    }
}

#[cfg(all(unix, not(target_os = "linux")))]
fn wait_until_it_listens(_process: u32) {
    std::thread::sleep(Duration::from_secs(2));
}

#[cfg(target_os = "linux")]
#[test]
fn an_import_that_was_begun_to_outlive_its_terminal_does() {
    let home = Home::default().begun();
    let mut shell = Command::new("sh");
    shell.envs(home.program().get_envs().filter_map(|(name, value)| Some((name, value?))));
    let program = env!("CARGO_BIN_EXE_outplant");
    shell.args(["-c", &format!("trap '' HUP; exec '{program}' import -")]);
    let mut child = shell.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    let mut input = child.stdin.take().unwrap();
    wait_until_it_listens(child.id());
    assert!(Command::new("kill").args(["-s", "HUP", &child.id().to_string()]).status().unwrap().success());
    input.write_all(b"{\"kind\":\"noted\",\"text\":\"taken all the same\"}\n").unwrap();
    drop(input);
    assert!(child.wait_with_output().unwrap().status.success());
    assert!(home.done(&["export"]).contains("taken all the same"));
}

/// Bytes that a process has read from files.
#[cfg(target_os = "linux")]
fn read_by(process: u32) -> u64 {
    let said = std::fs::read_to_string(format!("/proc/{process}/io")).unwrap_or_default();
    said.lines().find_map(|line| line.strip_prefix("rchar: ")).map_or(0, |bytes| bytes.trim().parse().unwrap())
}

#[cfg(target_os = "linux")]
#[test]
fn a_file_that_is_stopped_while_it_is_read_says_at_which_line() {
    let home = Home::default().begun();
    let lines: String = (0..400_000).map(|i| format!("{{\"kind\":\"noted\",\"text\":\"line {i}\"}}\n")).collect();
    let file = home.with("lines.jsonl", &lines);
    let mut command = home.program();
    command.args(["import", file.to_str().unwrap()]).stdout(Stdio::piped()).stderr(Stdio::piped());
    let child = command.spawn().unwrap();
    wait_until_it_listens(child.id());
    let begun = Instant::now();
    while read_by(child.id()) < 4_000_000 {
        assert!(begun.elapsed() < SOON, "it does not read");
        std::thread::sleep(Duration::from_millis(5));
    }
    let pid = child.id().to_string();
    assert!(Command::new("kill").args(["-s", "TERM", &pid]).status().unwrap().success());
    let ended = child.wait_with_output().unwrap();
    let said = String::from_utf8(ended.stderr).unwrap();
    assert_eq!(ended.status.code(), Some(143), "{said}");
    assert!(said.contains("after line "), "{said}");
}

#[test]
fn a_pipe_hears_nothing_of_how_far_it_is() {
    let home = Home::default().begun();
    let lines: String = (0..30_000).map(|i| format!("{{\"kind\":\"noted\",\"text\":\"line {i}\"}}\n")).collect();
    let file = home.with("lines.jsonl", &lines);
    let ended = home.run(&["import", file.to_str().unwrap()]);
    assert_eq!((ended.code, ended.err.as_str()), (0, ""));
}

#[cfg(unix)]
#[test]
fn on_a_screen_one_line_is_written_over_and_gone_at_the_end() {
    use crate::support::screen::Screen;
    let home = tempfile::tempdir().unwrap();
    let program = std::path::Path::new(env!("CARGO_BIN_EXE_outplant"));
    let book = home.path().join("book.outplant");
    let variables = [("USER", "amani"), ("OUTPLANT_NURSERY", book.to_str().unwrap()), ("OUTPLANT_TODAY", "2026-04-15")];
    let run = |words: &[&str], more: &[(&str, &str)]| {
        let all: Vec<(&str, &str)> = variables.iter().chain(more).copied().collect();
        Screen::run(program, words, home.path(), &all, (100, 60))
    };
    let place = ["begin", "--name", "T", "--lat", "-1.2", "--lon", "36.1", "--altitude", "1650"];
    assert_eq!(run(&place, &[]).end(SOON).exit_code(), 0);
    let lines: String = (0..120_000).map(|i| format!("{{\"kind\":\"noted\",\"text\":\"line {i}\"}}\n")).collect();
    let file = home.path().join("lines.jsonl");
    std::fs::write(&file, lines).unwrap();
    let words = ["import", file.to_str().unwrap(), "--dry-run"];
    let mut screen = run(&words, &[]);
    screen.wait_until("how far it is", |text| text.contains("lines read") || text.contains("entries written"));
    assert_eq!(screen.end(SOON).exit_code(), 0);
    let text = screen.text();
    assert!(!text.contains("lines read") && !text.contains("entries written"), "{text}");
    assert!(text.contains("120000 entries could be written"), "{text}");
    assert!(!screen.received_escapes(), "only the return to the beginning of the line");
    // A terminal that can do no more gets a line now and then.
    let mut screen = run(&words, &[("TERM", "dumb")]);
    assert_eq!(screen.end(SOON).exit_code(), 0);
    let text = screen.text();
    assert!(text.contains("100000 lines read") && text.contains("100000 entries written"), "{text}");
}

#[test]
fn the_steps_of_an_import_come_in_order() {
    let place = Place::empty(0);
    let theirs = grown_lines(3000);
    let mut steps: Vec<u8> = Vec::new();
    let how = How { only_try: false, at_once: 0 };
    let taken = place.desk().import_told(theirs.join("\n").as_bytes(), "mara", how, &mut |step| {
        steps.push(match step {
            ImportStep::Read(_) => 0,
            ImportStep::Written(_) => 1,
            ImportStep::LookedUp(_) => 2,
            ImportStep::Judged { done, all } => {
                assert!(done < all);
                3
            }
            ImportStep::Saving => 4,
        });
        ControlFlow::Continue(())
    });
    assert_eq!(taken.unwrap().lines, 3000);
    assert!(steps.is_sorted() && steps.starts_with(&[0]) && steps.ends_with(&[3, 4]), "{steps:?}");
}

#[cfg(target_os = "linux")]
#[test]
fn a_signal_ends_a_check_and_a_rescue_with_a_sentence_and_nothing_is_made() {
    let home = Home::default().begun();
    // Every other byte looks like the beginning of a row.
    let huge = home.with("huge.outplant", [14, 0].repeat(24 << 20));
    let made = home.file("made.jsonl");
    let huge = huge.to_str().unwrap();
    for (words, lang, code, signal, sentence) in [
        (&["check"][..], "en", 130, "INT", "stopped before the file was proved"),
        (&["rescue", made.to_str().unwrap()], "es", 143, "TERM", "no se sacó nada"),
    ] {
        let mut command = home.program();
        command.args(["--nursery", huge, "--lang", lang]).args(words);
        let child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        let ended = ended_by(signal, child);
        let said = String::from_utf8(ended.stderr).unwrap();
        assert_eq!(ended.status.code(), Some(code), "{said}");
        assert!(said.contains(sentence) && said.lines().count() == 1, "{said}");
        assert!(ended.stdout.is_empty() && !made.exists());
    }
}
