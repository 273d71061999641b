//! What a disk, a folder, a clock and other programs can do to the book.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use serde_json::json;

use super::{Row, count};
use crate::support::program::{Ended, Home};

/// A small disk of its own in memory, where the system lets us have one.
struct SmallDisk(PathBuf);

impl SmallDisk {
    fn mounted(at: &Path) -> Option<SmallDisk> {
        std::fs::create_dir_all(at).ok()?;
        let mut mount = Command::new("mount");
        mount.args(["-t", "tmpfs", "-o", "size=1m", "outplant-proof"]).arg(at).stderr(Stdio::null());
        mount.status().is_ok_and(|end| end.success()).then(|| SmallDisk(at.to_path_buf()))
    }
}

impl Drop for SmallDisk {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(&self.0).status();
    }
}

/// How a program ends on a disk that takes no more.
fn run_limited(home: &Home, nursery: &Path, words: &[&str], most_kib: Option<u64>) -> Ended {
    let limit = most_kib.map_or(String::new(), |kib| format!("ulimit -f {}; ", kib * 2));
    let output = Command::new("sh")
        // A file that grows over the limit is answered with an error where the signal is not listened to.
        .args(["-c", &format!("trap '' XFSZ; {limit}exec \"$0\" \"$@\""), env!("CARGO_BIN_EXE_outplant")])
        .args(words)
        .env_clear()
        .env("HOME", nursery.parent().unwrap())
        .env("OUTPLANT_TODAY", &home.today)
        .env("OUTPLANT_NURSERY", nursery)
        .env("PATH", std::env::var_os("PATH").unwrap_or_default())
        .stdin(Stdio::null())
        .output()
        .unwrap();
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
    Ended { code: output.status.code().unwrap_or(-1), out: text(output.stdout), err: text(output.stderr) }
}

#[test]
fn a_full_disk_loses_nothing_acknowledged_and_goes_on_when_there_is_room() {
    let home = Home::default();
    let small = SmallDisk::mounted(&home.file("small"));
    let name = if small.is_some() {
        "disk full: a disk of 1 MiB"
    } else {
        "disk full: files limited to 600 KiB (no disk could be mounted)"
    };
    let (mut row, limit) = (Row::begin(name), if small.is_some() { None } else { Some(600) });
    std::fs::create_dir_all(home.file("small")).unwrap();
    let nursery = home.file("small").join("book.outplant");
    let run = |words: &[&str], limit: Option<u64>| run_limited(&home, &nursery, words, limit);
    assert_eq!(run(&["begin", "--name", "T", "--lat", "0", "--lon", "36", "--altitude", "1500"], None).code, 0);
    let text = format!("text={}", "x".repeat(1_900));
    let (mut said, mut refused) = (1, 0);
    while refused < 5 && row.run < 1500 {
        let ended = run(&["write", "noted", &text], limit);
        said += u64::from(ended.code == 0);
        refused += u64::from(ended.code != 0);
        let says_why = small.is_none() || (ended.err.contains("no room") && !ended.err.contains("only be read"));
        let well = ended.code == 0 || (ended.code == 3 && !ended.err.contains("panicked") && says_why);
        row.ran((!well).then(|| format!("ended with {}: {}", ended.code, ended.err)));
    }
    assert_eq!(refused, 5, "the disk was never full: the test sees nothing");
    let lines: String =
        (0..800).map(|i| format!("{{\"kind\":\"noted\",\"text\":\"half {i} {}\"}}\n", "y".repeat(1_900))).collect();
    let import = home.with("lines", lines).display().to_string();
    let ended = run(&["import", &import], limit);
    row.ran((ended.code != 3).then(|| format!("the import ended with {}: {}", ended.code, ended.err)));
    let copy = home.file("small").join("copy");
    let ended = run(&["backup", &copy.display().to_string()], limit);
    row.ran((ended.code == 0 || copy.exists()).then(|| "a copy was made where there is no room".to_string()));
    if small.is_some() {
        // To the last byte: also SQLite's own small files have no room.
        let fill = home.file("small").join("fill");
        let _ = std::fs::write(&fill, vec![0; 2 << 20]);
        for (words, code) in [(&["ready"][..], 0), (&["write", "noted", "text=no"], 3)] {
            let ended = run(words, None);
            let says_why = code == 0 || ended.err.contains("no room");
            let well = ended.code == code && says_why && !ended.err.contains("only be read");
            row.ran((!well).then(|| format!("{words:?} on a disk that is full: {} {}", ended.code, ended.err)));
        }
        std::fs::remove_file(&fill).unwrap();
    }
    // Room again: all is there, and the book goes on.
    if let Some(small) = &small {
        let _ = Command::new("mount").args(["-o", "remount,size=8m"]).arg(&small.0).status();
    }
    let checked = run(&["check", "--json"], None);
    let found: serde_json::Value = serde_json::from_str(&checked.out).unwrap();
    let whole = checked.code == 0 && found["entries"] == json!(said);
    row.ran((!whole).then(|| format!("{said} acknowledged, {} there: {}", found["entries"], checked.out)));
    row.ran((run(&["write", "noted", "text=again"], None).code != 0).then(|| "it does not go on".to_string()));
    row.found = format!("{said} acknowledged, all there; {refused} writes, an import and a copy refused");
    row.must_hold();
}

fn bytes_of(path: &Path) -> Vec<u8> {
    std::fs::read(path).unwrap()
}

#[test]
fn a_folder_that_may_only_be_read_is_read_and_nothing_is_written() {
    use std::os::unix::fs::PermissionsExt;
    let mut row = Row::begin("folder that may only be read");
    let home = Home::default();
    std::fs::create_dir(home.file("shut")).unwrap();
    let nursery = home.file("shut/book.outplant").display().to_string();
    home.done(&["sample", "--into", &nursery]);
    let _ = std::fs::remove_file(home.file("shut/book.outplant-wal"));
    let before = bytes_of(Path::new(&nursery));
    let mode = |mode| std::fs::set_permissions(home.file("shut"), std::fs::Permissions::from_mode(mode)).unwrap();
    mode(0o500);
    let rescued = home.file("rescued").display().to_string();
    for words in [&["ready"][..], &["walk"], &["export"], &["check"], &["rescue", &rescued]] {
        let all: Vec<&str> = words.iter().copied().chain(["--nursery", &nursery]).collect();
        let ended = home.run(&all);
        row.ran((ended.code != 0).then(|| format!("{words:?} ended with {}: {}", ended.code, ended.err)));
    }
    for words in [&["write", "noted", "text=no"][..], &["undo"]] {
        let all: Vec<&str> = words.iter().copied().chain(["--nursery", &nursery]).collect();
        let ended = home.run(&all);
        row.ran((ended.code == 0 || ended.err.is_empty()).then(|| format!("{words:?} ended with {}", ended.code)));
    }
    row.ran((bytes_of(Path::new(&nursery)) != before).then(|| "the file was written to".to_string()));
    mode(0o700);
    row.must_hold();
}

#[test]
fn writers_at_the_same_time_lose_nothing() {
    let seconds = count("WRITERS_S", 3, 180);
    let mut row = Row::begin(&format!("two writers, an importer and a reader at once, {seconds} s"));
    let home = Home { folder: super::quick_folder(), ..Home::default() }.begun();
    home.with(
        "lines",
        (0..30).map(|i| format!("{{\"kind\":\"noted\",\"text\":\"NAME of {i}.\"}}\n")).collect::<String>(),
    );
    let write = r#"if "$2" write noted "text=$1-$i." >/dev/null 2>&1; then echo "$1-$i"; else echo "end $?"; fi"#;
    let import = r#"if sed "s/NAME/$1-$i./" "$3/lines" | "$2" import - >/dev/null 2>&1; then echo "$1-$i"; else echo "end $?"; fi"#;
    let read = r#""$2" ready >/dev/null 2>&1 || echo "end $?""#;
    let begun = Instant::now();
    let loops: Vec<_> = [("a", write), ("b", write), ("c", import), ("d", read)]
        .map(|(name, work)| {
            let script = format!(
                "i=0; end=$(($(date +%s)+{seconds})); while [ $(date +%s) -lt $end ]; do i=$((i+1)); {work}; done"
            );
            let mut shell = Command::new("sh");
            shell
                .args(["-c", &script, "sh", name, env!("CARGO_BIN_EXE_outplant")])
                .arg(home.path())
                .env_clear()
                .env("HOME", home.path())
                .env("OUTPLANT_TODAY", &home.today)
                .env("OUTPLANT_NURSERY", home.file("nursery.outplant"))
                .env("PATH", std::env::var_os("PATH").unwrap_or_default())
                .stdout(Stdio::piped())
                .stderr(Stdio::null());
            shell.spawn().unwrap()
        })
        .into();
    let said: Vec<String> = loops
        .into_iter()
        .flat_map(|child| {
            let out = child.wait_with_output().unwrap().stdout;
            String::from_utf8(out).unwrap().lines().map(str::to_string).collect::<Vec<_>>()
        })
        .collect();
    assert!(begun.elapsed() >= Duration::from_secs(seconds - 1));
    let export = home.done(&["export"]);
    for line in &said {
        let is_there = export.contains(&format!("\"{line}.")) || line == "end 5";
        row.ran((!is_there).then(|| format!("{line} was said and is not in the book")));
    }
    let busy = said.iter().filter(|line| *line == "end 5").count();
    let checked = home.run(&["check"]);
    row.ran((checked.code != 0).then(|| format!("check: {}", checked.out)));
    row.found = format!("{} acknowledged, told of another program writing {busy} times", said.len() - busy);
    assert!(said.len() - busy > 3, "hardly anything was written: the test sees nothing");
    row.must_hold();
}

#[test]
fn a_clock_far_off_neither_loses_nor_doubles_anything() {
    let mut row = Row::begin("clock in 1970, 2036, 2038 and 2100, and back");
    let mut home = Home::default().begun();
    for (number, today) in
        ["2026-04-15", "1970-01-01", "2036-02-07", "2038-01-20", "2100-03-01", "1970-01-02", "2026-04-16"]
            .iter()
            .enumerate()
    {
        home.today = today.to_string();
        for words in [&["write", "noted", "text=clock"][..], &["ready"], &["walk"], &["check"]] {
            let ended = home.run(words);
            row.ran(
                (ended.code != 0 || ended.err.contains("panicked"))
                    .then(|| format!("{today}: {words:?}: {} {}", ended.code, ended.err)),
            );
        }
        let export = home.done(&["export"]);
        let recorded: Vec<String> = export
            .lines()
            .map(|line| {
                serde_json::from_str::<serde_json::Value>(line).unwrap()["recorded"].as_str().unwrap().to_string()
            })
            .collect();
        row.ran((!recorded.is_sorted()).then(|| format!("{today}: recorded goes back: {recorded:?}")));
        row.ran(
            (export.matches("\"text\":\"clock\"").count() != number + 1)
                .then(|| format!("{today}: an entry is missing")),
        );
        // Another nursery takes it, whatever its own clock says.
        let other = Home { today: "1999-09-09".into(), ..Home::default() }.begun();
        let lines = other.with("lines", &export).display().to_string();
        let ended = other.run(&["import", &lines]);
        row.ran((ended.code != 0).then(|| format!("{today}: the export is not taken elsewhere: {}", ended.err)));
    }
    row.must_hold();
}

#[test]
fn a_file_of_a_newer_version_is_not_touched() {
    let mut row = Row::begin("file of a newer version");
    let home = Home::default().begun();
    let path = home.file("nursery.outplant");
    let mut bytes = bytes_of(&path);
    // user_version: SQLite file format, section 1.3.
    bytes[60..64].copy_from_slice(&99_i32.to_be_bytes());
    std::fs::write(&path, &bytes).unwrap();
    for words in [&["ready"][..], &["write", "noted", "text=no"], &["undo"], &["import", "-"], &["walk"], &[]] {
        let ended = home.run(words);
        row.ran((ended.code != 3 || ended.err.is_empty()).then(|| format!("{words:?} ended with {}", ended.code)));
        row.ran((bytes_of(&path) != bytes).then(|| format!("{words:?} wrote to it")));
    }
    for words in [&["export"][..], &["check"]] {
        let ended = home.run(words);
        row.ran((ended.code != 0).then(|| format!("{words:?} ended with {}: {}", ended.code, ended.err)));
        row.ran((bytes_of(&path) != bytes).then(|| format!("{words:?} wrote to it")));
    }
    row.must_hold();
}
