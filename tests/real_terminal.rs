//! The dashboard on a real terminal: start and end, signals, a terminal that goes away, sizes, rest, and what is kept.
#![cfg(unix)]

use std::path::Path;
use std::time::Duration;

use crate::support::screen::Screen;

/// Longer than it ever takes: other tests share the machine.
const SOON: Duration = Duration::from_secs(60);

fn program() -> &'static Path {
    Path::new(env!("CARGO_BIN_EXE_outplant"))
}

fn sample(home: &Path) -> Screen {
    let screen = Screen::run(program(), &["sample"], home, &[("USER", "amani")], (100, 30));
    screen.wait_for("1 Walk");
    screen
}

#[test]
fn it_opens_and_q_gives_the_terminal_back() {
    let home = tempfile::tempdir().unwrap();
    let mut screen = sample(home.path());
    screen.insist("7", "What was written");
    screen.slowly("q\r");
    assert_eq!(screen.end(SOON).exit_code(), 0);
    screen.is_given_back();
}

/// A telephone's terminal is touched, and says what it is.
#[test]
fn the_mouse_is_left_alone_until_it_is_asked_for_but_on_a_telephone() {
    let home = tempfile::tempdir().unwrap();
    let mut screen = sample(home.path());
    assert!(!screen.takes_the_mouse());
    screen.slowly("zm");
    screen.wait_until("mouse", |_| screen.takes_the_mouse());
    screen.slowly("mqq\r");
    screen.end(SOON);
    screen.is_given_back();
    let home = tempfile::tempdir().unwrap();
    let phone = Screen::run(program(), &["sample"], home.path(), &[("TERMUX_VERSION", "0.118")], (48, 18));
    phone.wait_until("mouse", |_| phone.takes_the_mouse());
}

#[test]
fn every_ending_signal_gives_the_terminal_back_and_ends_as_it_says() {
    for (name, told) in [("INT", "Interrupt"), ("TERM", "Terminated"), ("HUP", "Hangup"), ("QUIT", "Quit")] {
        let home = tempfile::tempdir().unwrap();
        let mut screen = sample(home.path());
        screen.signal(name);
        let status = screen.end(SOON);
        assert!(status.signal().is_some_and(|signal| signal.contains(told)), "{name}: {status:?}");
        screen.is_given_back();
    }
}

#[test]
fn ctrl_c_leaves_at_once() {
    let home = tempfile::tempdir().unwrap();
    let mut screen = sample(home.path());
    screen.keys("\u{3}");
    assert_eq!(screen.end(SOON).exit_code(), 0);
    screen.is_given_back();
}

#[cfg(target_os = "linux")]
#[test]
fn ctrl_z_stops_it_and_it_comes_back_drawn() {
    let home = tempfile::tempdir().unwrap();
    let mut screen = sample(home.path());
    screen.keys("\u{1a}");
    let stopped = || {
        let state = std::fs::read_to_string(format!("/proc/{}/stat", screen.process())).unwrap();
        state.rsplit(") ").next().unwrap().starts_with('T')
    };
    let begun = std::time::Instant::now();
    while !stopped() {
        assert!(begun.elapsed() < SOON, "it does not stop");
        std::thread::sleep(Duration::from_millis(20));
    }
    screen.is_given_back();
    screen.signal("CONT");
    screen.wait_for("1 Walk");
    screen.insist("7", "What was written");
    screen.slowly("q\r");
    assert_eq!(screen.end(SOON).exit_code(), 0);
    screen.is_given_back();
}

/// Not a test of its own: a terminal with the program on it, for the test below.
#[cfg(target_os = "linux")]
#[test]
fn child_that_holds_a_terminal() {
    let Some(folder) = std::env::var_os("OUTPLANT_TEST_TERMINAL") else { return };
    let folder = std::path::PathBuf::from(folder);
    let screen = sample(&folder);
    std::fs::write(folder.join("process.new"), screen.process().to_string()).unwrap();
    std::fs::rename(folder.join("process.new"), folder.join("process")).unwrap();
    loop {
        std::thread::sleep(SOON);
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_terminal_that_goes_away_takes_the_program_along() {
    let home = tempfile::tempdir().unwrap();
    let mut holder = std::process::Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "real_terminal::child_that_holds_a_terminal", "--nocapture"])
        .env("OUTPLANT_TEST_TERMINAL", home.path())
        .stdout(std::process::Stdio::null())
        .spawn()
        .unwrap();
    let begun = std::time::Instant::now();
    let process = loop {
        if let Ok(process) = std::fs::read_to_string(home.path().join("process")) {
            break process;
        }
        assert!(begun.elapsed() < SOON, "the program was not started");
        std::thread::sleep(Duration::from_millis(20));
    };
    let lives = || {
        let stat = std::fs::read_to_string(format!("/proc/{process}/stat"));
        stat.is_ok_and(|stat| !stat.rsplit(") ").next().unwrap().starts_with('Z'))
    };
    assert!(lives());
    // Killed, it closes every end of the terminal that it holds.
    holder.kill().unwrap();
    holder.wait().unwrap();
    let begun = std::time::Instant::now();
    while lives() {
        assert!(begun.elapsed() < SOON, "still running without a terminal");
        std::thread::sleep(Duration::from_millis(20));
    }
}

#[test]
fn sizes_that_no_terminal_has_do_no_harm() {
    let home = tempfile::tempdir().unwrap();
    let mut screen = sample(home.path());
    let mut seed = 7_u32;
    for i in 0..60 {
        seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        let (columns, rows) = match i % 10 {
            0 => (0, 0),
            1 => (1, 1),
            _ => ((seed >> 8) as u16 % 200, (seed >> 20) as u16 % 60),
        };
        screen.resize(columns, rows);
        // No letters: what comes at once on a busy machine would be text.
        screen.keys(["\u{1b}[B", "\u{1b}[A", "\t"][i % 3]);
        // Some of them in the middle of drawing, others not.
        if i % 2 == 0 {
            screen.wait_until_it_rests();
        }
    }
    screen.wait_until_it_rests();
    screen.resize(90, 30);
    screen.insist("7", "What was written");
    screen.slowly("q\r");
    assert_eq!(screen.end(SOON).exit_code(), 0);
    screen.is_given_back();
}

#[cfg(target_os = "linux")]
#[test]
fn at_rest_nothing_is_written_and_next_to_nothing_reckoned() {
    let home = tempfile::tempdir().unwrap();
    let screen = sample(home.path());
    screen.wait_until_it_rests();
    // What is reckoned for later screens is done when nothing more is reckoned for a while.
    let mut last = (0, 0_u64);
    let ticks = || -> u64 {
        let stat = std::fs::read_to_string(format!("/proc/{}/stat", screen.process())).unwrap();
        let fields: Vec<&str> = stat.rsplit(") ").next().unwrap().split(' ').collect();
        fields[11].parse::<u64>().unwrap() + fields[12].parse::<u64>().unwrap()
    };
    let begun = std::time::Instant::now();
    while last != (screen.bytes(), ticks()) {
        assert!(begun.elapsed() < SOON, "it never comes to rest");
        last = (screen.bytes(), ticks());
        std::thread::sleep(Duration::from_millis(500));
    }
    let (bytes, before) = last;
    std::thread::sleep(Duration::from_secs(3));
    assert_eq!(screen.bytes(), bytes, "bytes while nothing happened");
    // A tick is 10 ms: three in three seconds are 1 %, and a program built for tests is slower than it ships.
    assert!(ticks() - before <= 3, "{} ticks in three seconds", ticks() - before);
}

#[test]
fn what_another_process_writes_shows_up() {
    let home = tempfile::tempdir().unwrap();
    let mut screen = sample(home.path());
    screen.insist("7", "What was written");
    let file = home.path().join(".local/share/outplant/sample.outplant");
    let written = std::process::Command::new(program())
        .env_clear()
        .env("HOME", home.path())
        .args(["--nursery", file.to_str().unwrap(), "write", "noted", "text=the heron is back"])
        .status();
    assert!(written.unwrap().success());
    screen.wait_for("the heron is back");
}

#[test]
fn a_half_filled_form_survives_kill_9() {
    let home = tempfile::tempdir().unwrap();
    let mut screen = sample(home.path());
    screen.slowly("n");
    screen.wait_for("What do you want to write down?");
    screen.slowly("a note");
    screen.wait_until("the word that was typed", |text| {
        text.lines().any(|line| line.trim_start().starts_with("> a note"))
    });
    screen.slowly("\r");
    screen.wait_for("any words");
    screen.slowly("loose board");
    let kept = || {
        let folder = home.path().join(".config/outplant/kept");
        let inner = std::fs::read_dir(folder).into_iter().flatten().flatten();
        inner
            .flat_map(|book| std::fs::read_dir(book.path()))
            .flatten()
            .flatten()
            .any(|file| std::fs::read_to_string(file.path()).is_ok_and(|text| text.contains("loose board")))
    };
    let begun = std::time::Instant::now();
    while !kept() {
        assert!(begun.elapsed() < SOON, "the form is not on disk");
        std::thread::sleep(Duration::from_millis(20));
    }
    screen.kill();
    let mut screen = sample(home.path());
    screen.wait_for("half-filled");
    screen.slowly("n\r");
    screen.wait_for("loose board");
    screen.slowly("\u{3}");
    screen.end(SOON);
}

/// Not a test of its own: the program with a clock that fails, for the test below.
#[test]
fn child_with_a_bad_clock() {
    let Some(folder) = std::env::var_os("OUTPLANT_TEST_CHILD") else { return };
    let folder = std::path::PathBuf::from(folder);
    let today = "2026-04-15".parse().unwrap();
    let moment = outplant::base::Moment::end_of(today, 3.0);
    let now = outplant::desk::Now { today, clock: None, moment };
    let (desk, _) = outplant::desk::Desk::begin(&folder.join("n.outplant"), &folder, now, Vec::new()).unwrap();
    let opening = outplant::dashboard::Opening {
        desk,
        wording: outplant::wording::Wording::new(outplant::wording::Lang::En),
        who: "amani".to_string(),
        shelf: folder,
        on: None,
        forecast_basis: outplant::reckon::forecast::ForecastBasis::OwnRecords,
        clock: Box::new(|| panic!("the clock fell off the wall")),
        colour: true,
        ascii: false,
        plain: false,
        touched: false,
        settings_faults: Vec::new(),
    };
    let _ = outplant::dashboard::open(opening);
}

#[test]
fn a_panic_on_any_thread_gives_the_terminal_back_and_is_told() {
    let home = tempfile::tempdir().unwrap();
    let words = ["--exact", "real_terminal::child_with_a_bad_clock", "--nocapture"];
    let variables = [("OUTPLANT_TEST_CHILD", home.path().to_str().unwrap())];
    let own = std::env::current_exe().unwrap();
    let mut screen = Screen::run(&own, &words, home.path(), &variables, (100, 30));
    assert_ne!(screen.end(SOON).exit_code(), 0);
    screen.wait_for("the clock fell off the wall");
    screen.is_given_back();
}

#[test]
fn without_a_terminal_it_prints_what_ready_prints() {
    let home = tempfile::tempdir().unwrap();
    let run = |words: &[&str]| {
        let ended = std::process::Command::new(program())
            .env_clear()
            .env("HOME", home.path())
            .args(words)
            .stdin(std::process::Stdio::null())
            .output()
            .unwrap();
        (ended.status.code(), String::from_utf8(ended.stdout).unwrap())
    };
    assert_eq!(run(&["sample"]).0, Some(0));
    let file = home.path().join(".local/share/outplant/sample.outplant");
    let file = file.to_str().unwrap();
    let (code, bare) = run(&["--nursery", file]);
    assert_eq!(code, Some(0));
    assert_eq!(bare, run(&["--nursery", file, "ready"]).1);
}

#[test]
fn what_the_settings_hold_that_cannot_be_is_said_on_the_screen() {
    let home = tempfile::tempdir().unwrap();
    let folder = home.path().join(".config/outplant");
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(folder.join("settings.toml"), "keys = { c = \"ñ\" }\n").unwrap();
    let screen = sample(home.path());
    // What was said before the screen was opened is hidden by it.
    let shown = screen.text();
    assert!(shown.contains("settings.toml") && shown.contains("keys"), "{shown}");
}
