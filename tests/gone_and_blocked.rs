//! Programs that stand still, files that were put back, clocks that are wrong: nobody waits for ever, and nothing that was
//! acknowledged goes missing unnoticed.

use std::io::Write;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use crate::support::program::Home;

/// Longer than a writer waits for another (5 seconds), shorter than for ever.
const AT_MOST: Duration = Duration::from_secs(60);

fn another_nursery(home: &Home, name: &str) -> String {
    let file = home.file(name).to_str().unwrap().to_string();
    home.done(&["--nursery", &file, "begin", "--name", "Other", "--lat", "-1.2", "--lon", "36.1", "--altitude", "900"]);
    file
}

#[cfg(unix)]
#[test]
fn an_import_that_stands_still_stops_no_reader_and_no_other_nursery_and_writers_give_up() {
    let home = Home::default().begun();
    let other = another_nursery(&home, "other.outplant");
    let mut import = home.program().args(["import", "-"]).stdin(Stdio::piped()).stdout(Stdio::null()).spawn().unwrap();
    let mut lines = import.stdin.take().unwrap();
    for number in 0..3000 {
        writeln!(lines, r#"{{"kind":"noted","happened":"2026-04-01","text":"n{number}"}}"#).unwrap();
    }
    lines.flush().unwrap();
    std::thread::sleep(Duration::from_millis(500));
    let signal = |name: &str| {
        assert!(Command::new("kill").args([name, &import.id().to_string()]).status().unwrap().success());
    };
    signal("-STOP");
    let begun = Instant::now();
    assert_eq!(home.run(&["ready"]).code, 0);
    assert_eq!(home.run(&["--nursery", &other, "write", "noted", "text=elsewhere"]).code, 0);
    let here = home.run(&["write", "noted", "text=here"]);
    assert!(begun.elapsed() < AT_MOST, "{:?}", begun.elapsed());
    // Either it had not begun to write, or it is waited for and then said.
    assert!(here.code == 0 || (here.code == 5 && here.err.contains("another outplant")), "{} {}", here.code, here.err);
    signal("-CONT");
    drop(lines);
    assert!(import.wait().unwrap().success());
    assert_eq!(home.run(&["write", "noted", "text=afterwards"]).code, 0);
    assert!(home.done(&["export"]).contains("n2999"));
}

#[test]
fn a_file_whose_entries_were_thrown_away_is_said_to_be_damaged_in_the_language_that_is_asked_for() {
    let home = Home::default().begun();
    home.write("noted", &["text=first"]);
    let file = rusqlite::Connection::open(home.file("nursery.outplant")).unwrap();
    file.execute_batch("DROP TABLE entry").unwrap();
    drop(file);
    for command in ["ready", "export", "check"] {
        let ended = home.run(&["--lang", "es", command]);
        let said = format!("{}{}", ended.out, ended.err);
        assert_eq!(ended.code, 6, "{command}: {said}");
        // What the machine says is said to be its words.
        assert!(!said.contains("el sistema dice"), "{command}: {said}");
        assert_eq!(said.contains("no such table"), said.contains("en palabras de la máquina"), "{command}: {said}");
    }
}

#[test]
fn an_older_copy_put_back_is_said_by_every_command_until_it_is_settled() {
    let home = Home::default().begun();
    home.write("noted", &["text=first"]);
    let (file, older) = (home.file("nursery.outplant"), home.file("older.outplant"));
    home.done(&["backup", older.to_str().unwrap()]);
    home.write("noted", &["text=second"]);
    home.write("noted", &["text=third"]);
    assert_eq!(home.run(&["ready"]).err, "");
    for behind in ["-wal", "-shm"] {
        let _ = std::fs::remove_file(home.file(&format!("nursery.outplant{behind}")));
    }
    std::fs::copy(&older, &file).unwrap();
    for (words, lang) in [(&["ready"][..], "en"), (&["walk"], "es"), (&["write", "noted", "text=on"], "en")] {
        let ended = home.run(&[words, &["--lang", lang]].concat());
        assert_eq!(ended.code, 0, "{}", ended.err);
        let gone = if lang == "en" { "2 entries that were saved here are gone" } else { "faltan 2 anotaciones" };
        assert!(ended.err.contains(gone), "{words:?}: {}", ended.err);
    }
    let copied = home.file("copied.outplant");
    for words in [&["export"][..], &["backup", copied.to_str().unwrap()], &["check"]] {
        let ended = home.run(words);
        assert!(ended.err.contains("2 entries that were saved here are gone"), "{words:?}: {}", ended.err);
        assert!(ended.err.contains("settled what=restored"), "{words:?}: {}", ended.err);
    }
    let told = &home.json(&["ready"])["notes"][0];
    assert!(told.as_str().unwrap().contains("2 entries that were saved here are gone"), "{told}");
    assert_eq!(home.run(&["check"]).code, 6, "check says so too, after a write as well");
    home.write("settled", &["what=restored"]);
    assert_eq!(home.run(&["ready"]).err, "");
    assert_eq!(home.json(&["ready"]).get("notes"), None);
    assert_eq!(home.run(&["check"]).code, 0);
}

#[test]
fn a_book_whose_folder_was_moved_misses_what_was_saved_where_it_lay() {
    // The older copy is laid into the file, or takes its place.
    for keeps_its_mark in [true, false] {
        let mut home = Home::default();
        std::fs::create_dir(home.file("field")).unwrap();
        let book = |home: &Home, folder: &str| home.file(folder).join("n.outplant").display().to_string();
        let run = |home: &Home, folder: &str, words: &[&str]| {
            home.run(&[&["--nursery", &book(home, folder)], words].concat())
        };
        let begin = ["begin", "--name", "Test", "--lat", "-1.2", "--lon", "36.1", "--altitude", "1650"];
        assert_eq!(run(&home, "field", &begin).code, 0);
        let older = home.file("older.outplant").display().to_string();
        assert_eq!(run(&home, "field", &["backup", &older]).code, 0);
        assert_eq!(run(&home, "field", &["write", "noted", "text=second"]).code, 0);
        std::fs::rename(home.file("field"), home.file("moved")).unwrap();
        if !keeps_its_mark {
            std::fs::remove_file(book(&home, "moved")).unwrap();
        }
        std::fs::copy(&older, book(&home, "moved")).unwrap();
        let told = "one entry that was saved here is gone";
        let ready = run(&home, "moved", &["ready"]);
        assert!(ready.err.contains(told), "{keeps_its_mark}: {}", ready.err);
        home.today = "2026-04-16".into();
        let written = run(&home, "moved", &["write", "noted", "text=third"]);
        assert!(written.code == 0 && written.err.contains(told), "{}", written.err);
        // Writing on does not make it forgotten, and a copy elsewhere still misses nothing.
        assert_eq!(run(&home, "moved", &["check"]).code, 6, "{keeps_its_mark}");
        assert!(run(&home, "moved", &["ready"]).err.contains(told));
        let copy = home.run(&["--nursery", &older, "ready"]);
        assert!(!copy.err.contains("gone"), "{}", copy.err);
        assert_eq!(run(&home, "moved", &["write", "settled", "what=restored"]).code, 0);
        assert_eq!(run(&home, "moved", &["ready"]).err, "");
        assert_eq!(run(&home, "moved", &["check"]).code, 0);
    }
}

#[test]
fn what_was_given_up_is_missed_again_once_that_is_taken_back() {
    let home = Home::default().begun();
    let (file, older) = (home.file("nursery.outplant"), home.file("older.outplant"));
    home.done(&["backup", older.to_str().unwrap()]);
    home.write("noted", &["text=second"]);
    std::fs::copy(&older, &file).unwrap();
    let gone = |home: &Home| home.run(&["ready"]).err.contains("one entry that was saved here is gone");
    assert!(gone(&home));
    home.write("settled", &["what=restored"]);
    assert!(!gone(&home));
    let newest = |home: &Home| {
        let log = home.json(&["log", "--most", "1"]);
        log["entries"][0]["entry"].as_str().unwrap().to_string()
    };
    home.done(&["undo", &newest(&home)]);
    assert!(gone(&home), "it was taken back");
    assert_eq!(home.run(&["check"]).code, 6);
    home.done(&["undo", &newest(&home), "--yes"]);
    assert!(!gone(&home), "that was taken back too");
    assert_eq!(home.run(&["check"]).code, 0);
}

#[test]
fn what_only_reads_leaves_nothing_beside_the_file() {
    let home = Home::default().begun();
    home.write("noted", &["text=first"]);
    let beside = |home: &Home| -> Vec<String> {
        let names = std::fs::read_dir(home.path()).unwrap().map(|file| file.unwrap().file_name());
        let names = names.map(|name| name.to_string_lossy().into_owned());
        names.filter(|name| name.starts_with("nursery.outplant-")).collect()
    };
    let before = std::fs::read(home.file("nursery.outplant")).unwrap();
    let copy = home.file("copy.outplant").display().to_string();
    for words in [&["check"][..], &["export"], &["backup", &copy], &["ready"], &["log"]] {
        home.done(words);
        assert_eq!(beside(&home), Vec::<String>::new(), "{words:?}");
        assert_eq!(std::fs::read(home.file("nursery.outplant")).unwrap(), before, "{words:?}");
    }
    // What an earlier version left there goes as well.
    std::fs::write(home.file("nursery.outplant-wal"), "").unwrap();
    home.done(&["check"]);
    assert_eq!(beside(&home), Vec::<String>::new());
}

#[cfg(unix)]
#[test]
fn a_pipe_that_nobody_writes_to_is_named_after_a_while() {
    use std::io::{BufRead, BufReader};
    let home = Home::default().begun();
    let pipe = home.file("pipe").display().to_string();
    assert!(Command::new("mkfifo").arg(&pipe).status().unwrap().success());
    for (words, told) in [
        (&["import", &pipe][..], "waiting for what is piped into "),
        (&["import", "--as", "trays", &pipe, "--lang", "es"], "se espera lo que ha de pasar por "),
        (&["write", "--batch", &pipe], "waiting for what is piped into "),
    ] {
        let mut command = home.program();
        command.args(words).stdout(Stdio::null()).stderr(Stdio::piped());
        let mut waits = command.spawn().unwrap();
        let mut line = String::new();
        BufReader::new(waits.stderr.take().unwrap()).read_line(&mut line).unwrap();
        assert!(line.starts_with(told) && line.trim_end().ends_with("pipe"), "{line}");
        waits.kill().unwrap();
        waits.wait().unwrap();
    }
}

#[test]
fn a_note_that_arises_while_something_is_written_is_shown() {
    let home = Home::default().begun();
    home.write("noted", &["text=first"]);
    let copy = home.file("copy.outplant");
    home.done(&["backup", copy.to_str().unwrap()]);
    home.write("noted", &["text=the file goes on"]);
    let ended = home.run(&["--nursery", copy.to_str().unwrap(), "write", "noted", "text=in the copy"]);
    assert_eq!(ended.code, 0);
    assert!(ended.err.contains("new device"), "{}", ended.err);
}

#[test]
fn a_file_with_a_guard_of_another_program_is_not_written_and_can_be_read() {
    let home = Home::default().begun();
    home.write("noted", &["text=first"]);
    let raw = rusqlite::Connection::open(home.file("nursery.outplant")).unwrap();
    raw.execute_batch("CREATE TRIGGER quietly_away AFTER INSERT ON entry BEGIN DELETE FROM checkpoint; END").unwrap();
    drop(raw);
    for lang in ["en", "es"] {
        let ended = home.run(&["write", "noted", "text=second", "--lang", lang]);
        assert_eq!(ended.code, 6, "{}", ended.err);
        assert!(ended.err.contains("quietly_away"), "{}", ended.err);
    }
    let export = home.done(&["export"]);
    assert!(export.contains("first") && !export.contains("second"));
}

/// The clock of the machine is left as it is: a book whose last entry is years old makes it one that cannot be right.
#[test]
fn by_a_clock_that_cannot_be_right_nothing_is_written_unless_that_is_said() {
    let home = Home { today: "2016-01-01".into(), ..Home::default() }.begun();
    let by_the_clock = |words: &[&str]| home.program().env_remove("OUTPLANT_TODAY").args(words).output().unwrap();
    let refused = by_the_clock(&["write", "noted", "text=first"]);
    assert_eq!(refused.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&refused.stderr).contains("--yes"));
    assert!(!home.done(&["export"]).contains("first"));
    assert_eq!(by_the_clock(&["ready"]).status.code(), Some(0), "reading is not refused");
    assert_eq!(by_the_clock(&["write", "noted", "text=second", "--yes"]).status.code(), Some(0));
    assert!(home.done(&["export"]).contains("second"));
    // The clock is set right: what it pinned is settled by an entry.
    assert!(home.run(&["ready"]).err.contains("2016"));
    assert_eq!(home.run(&["undo"]).code, 0);
    home.write("settled", &["what=clock"]);
    assert_eq!(home.run(&["write", "noted", "text=third"]).err, "");
    let third = home.done(&["export"]).lines().find(|line| line.contains("third")).unwrap().to_string();
    // By the hour of the machine it can still be the evening before, in the world's time.
    assert!(third.contains(r#""recorded":"2016"#) || third.contains(r#""recorded":"2015-12-31"#), "{third}");
}

/// What is written by a clock years ahead is written with a day that is given; the clock of the machine is right.
#[test]
fn what_a_clock_that_ran_ahead_wrote_is_mended_by_the_commands_that_are_named_and_nothing_is_asked() {
    let home = Home { today: "2090-03-01".into(), ..Home::default() };
    let by_the_clock = |words: &[&str]| {
        let output = home.program().env_remove("OUTPLANT_TODAY").args(words).output().unwrap();
        (output.status.code(), String::from_utf8(output.stderr).unwrap())
    };
    let begun = by_the_clock(&["begin", "--name", "Test", "--lat", "-1.2", "--lon", "36.1", "--altitude", "1650"]);
    assert_eq!(begun, (Some(0), String::new()));
    home.write("noted", &["text=first"]);
    home.write("weather", &["rain_mm=3"]);
    for lang in ["en", "es"] {
        let (code, said) = by_the_clock(&["write", "noted", "text=refused", "--lang", lang]);
        assert_eq!(code, Some(1), "{said}");
        assert_eq!(said.matches("outplant undo ").count(), 2, "{said}");
        assert!(said.contains("settled what=clock"), "{said}");
    }
    let (_, said) = by_the_clock(&["ready"]);
    for command in said.split("outplant undo ").skip(1) {
        let entry = command.split(';').next().unwrap();
        assert_eq!(by_the_clock(&["undo", entry]).0, Some(0), "{entry}");
    }
    assert_eq!(by_the_clock(&["write", "settled", "what=clock"]).0, Some(0));
    assert_eq!(by_the_clock(&["write", "noted", "text=on"]), (Some(0), String::new()));
    let export = home.done(&["export"]);
    assert!(export.contains("\"on\"") && !export.contains("refused"), "{export}");
}

#[cfg(unix)]
#[test]
fn a_pipe_given_as_a_nursery_is_refused_and_nobody_waits() {
    let home = Home::default().begun();
    let pipe = home.file("pipe");
    assert!(Command::new("mkfifo").arg(&pipe).status().unwrap().success());
    let begun = Instant::now();
    for words in [&["check"][..], &["rescue", "out.jsonl"], &["ready"], &["export"]] {
        let ended = home.run(&[&["--nursery", pipe.to_str().unwrap()], words].concat());
        assert!(ended.code == 3 && ended.err.contains("not a nursery"), "{words:?}: {} {}", ended.code, ended.err);
    }
    assert!(begun.elapsed() < AT_MOST);
}

#[cfg(target_os = "linux")]
#[test]
fn an_answer_that_cannot_be_shown_is_told_and_what_was_written_is_there() {
    let home = Home::default().begun();
    for (lang, told) in [("en", "could not be shown"), ("es", "no se pudo mostrar")] {
        let full = std::fs::OpenOptions::new().write(true).open("/dev/full").unwrap();
        let words = ["write", "noted", "text=once", "--lang", lang];
        let ended = home.program().args(words).stdout(full).stderr(Stdio::piped()).output().unwrap();
        assert_eq!(ended.status.code(), Some(3));
        assert!(String::from_utf8_lossy(&ended.stderr).contains(told));
    }
    assert_eq!(home.done(&["export"]).matches("once").count(), 2);
}

#[cfg(target_os = "linux")]
#[test]
fn an_export_that_is_given_nowhere_to_go_says_so() {
    let home = Home::default().begun();
    let in_shell = |redirected: &str| {
        let program = env!("CARGO_BIN_EXE_outplant");
        let mut shell = Command::new("sh");
        shell.envs(home.program().get_envs().filter_map(|(name, value)| Some((name, value?))));
        shell.args(["-c", &format!("'{program}' export {redirected}")]).output().unwrap()
    };
    let closed = in_shell(">&-");
    assert_eq!(closed.status.code(), Some(3));
    assert!(String::from_utf8_lossy(&closed.stderr).contains("could not be shown"));
    assert_eq!(in_shell("> /dev/null").status.code(), Some(0), "thrown away because that was asked for");
}

#[test]
fn what_is_made_in_a_file_is_not_made_in_one_that_is_called_a_pipe() {
    let home = Home::default().begun();
    let in_folder = |words: &[&str]| home.program().current_dir(home.path()).args(words).output().unwrap();
    for words in [&["backup", "-"][..], &["rescue", "-"], &["man", "--to", "-"], &["sample", "--into", "-"]] {
        for (lang, told) in [("en", "stands for what is piped"), ("es", "tubería")] {
            let ended = in_folder(&[words, &["--lang", lang]].concat());
            assert_eq!(ended.status.code(), Some(1), "{words:?}");
            assert!(String::from_utf8_lossy(&ended.stderr).contains(told), "{words:?}");
        }
        assert!(!home.file("-").exists(), "{words:?}");
    }
    assert_eq!(in_folder(&["backup", "./-"]).status.code(), Some(0));
    assert!(home.file("-").exists());
}

#[test]
fn a_file_that_another_program_holds_alone_is_not_called_damaged() {
    let home = Home::default().begun();
    home.write("noted", &["text=first"]);
    let file = home.file("nursery.outplant");
    let (held, is_held) = std::sync::mpsc::channel();
    let holder = std::thread::spawn(move || {
        let book = rusqlite::Connection::open(file).unwrap();
        book.pragma_update(None, "locking_mode", "exclusive").unwrap();
        book.execute_batch("BEGIN EXCLUSIVE").unwrap();
        held.send(()).unwrap();
        // Longer than one look waits (5 seconds), shorter than two.
        std::thread::sleep(Duration::from_millis(7000));
    });
    is_held.recv().unwrap();
    let ended = home.run(&["check"]);
    assert!(ended.code == 0 || ended.code == 5, "{} {}{}", ended.code, ended.out, ended.err);
    assert!(!ended.out.contains("damaged") && !ended.err.contains("damaged"), "{}{}", ended.out, ended.err);
    holder.join().unwrap();
    assert_eq!(home.run(&["check"]).code, 0);
}

#[cfg(unix)]
#[test]
fn a_copy_takes_away_what_a_killed_one_left_behind_an_hour_ago() {
    let home = Home::default().begun();
    let (old, fresh) = (home.file(".copy.outplant.abcdefgh.new-journal"), home.file(".copy.outplant.ijklmnop.new"));
    std::fs::write(&old, "half").unwrap();
    std::fs::write(&fresh, "half").unwrap();
    assert!(Command::new("touch").args(["-d", "2 hours ago"]).arg(&old).status().unwrap().success());
    home.done(&["backup", home.file("copy.outplant").to_str().unwrap()]);
    assert_eq!((old.exists(), fresh.exists()), (false, true));
}

#[test]
fn what_settles_nothing_speaks_of_no_entry_or_takes_nothing_back_is_told() {
    let home = Home::default().begun();
    for (lang, nothing, unknown) in [
        ("en", "nothing is missing here", "there is no entry called \"nope\" here"),
        ("es", "aquí no falta nada", "no hay ninguna anotación que se llame «nope»"),
    ] {
        let settled = home.run(&["write", "settled", "what=restored", "--lang", lang]);
        assert!(settled.err.contains(nothing), "{}", settled.err);
        let settled = home.run(&["write", "settled", "what=restored", "of=nope", "--lang", lang]);
        assert!(settled.err.contains(unknown), "{}", settled.err);
    }
    let empty = Home::default().begun();
    assert!(empty.refused(&["undo"]).contains("only the beginning of the book is left"));
    assert!(empty.refused(&["undo", "nope:1"]).contains("there is no entry nope:1 here"));
    let named = empty.run(&["--who", &"a".repeat(5000), "write", "noted", "text=x"]);
    assert!(named.code != 0 && named.err.contains("no more letters than 60"), "{}", named.err);
    assert!(named.err.chars().count() < 400 && !empty.done(&["export"]).contains("\"x\""), "{}", named.err);
}
