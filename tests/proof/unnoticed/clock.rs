//! A clock that is years ahead or behind.

use crate::proof::{Row, quick_folder};
use crate::support::program::{Ended, Home};

/// Commands that write, and what is piped in.
const WRITES: [(&[&str], &str); 4] = [
    (&["write", "noted", "text=by a wrong clock"], ""),
    (&["write", "--batch", "-"], "c1 2 lost\n"),
    (&["import", "--as", "trays", "-"], "Tray,Species,How many\nt7,cacao,by a wrong clock\n"),
    (&["undo"], ""),
];

/// Runs it by the clock of the machine; the book alone is years away from it.
fn by_the_clock(home: &Home, words: &[&str], piped: &str) -> Ended {
    use std::io::Write;
    let mut command = home.program();
    command.env_remove("OUTPLANT_TODAY").args(words);
    let pipe = std::process::Stdio::piped;
    let mut running = command.stdin(pipe()).stdout(pipe()).stderr(pipe()).spawn().unwrap();
    let _ = running.stdin.take().unwrap().write_all(piped.as_bytes());
    let output = running.wait_with_output().unwrap();
    let text = |bytes: Vec<u8>| String::from_utf8_lossy(&bytes).into_owned();
    Ended { code: output.status.code().unwrap_or(-1), out: text(output.stdout), err: text(output.stderr) }
}

#[test]
fn by_a_clock_years_ahead_or_behind_nothing_is_written_unasked_and_reading_says_so() {
    let this_year = year_of_the_machine();
    let mut row = Row::begin("a clock 15 years ahead and behind: nothing written unasked, and said");
    for years in [15, -15] {
        let home = begun_in(this_year + years);
        home.write("noted", &["text=the last"]);
        let before = home.done(&["export"]);
        for (words, piped) in WRITES {
            let ended = by_the_clock(&home, words, piped);
            let refused = ended.code == 1 && ended.err.contains("--yes");
            row.ran((!refused).then(|| format!("{years} years, {words:?}: {} {}", ended.code, ended.err)));
            row.ran(
                (home.done(&["export"]) != before).then(|| format!("{years} years, {words:?}: something was written")),
            );
        }
        let read = by_the_clock(&home, &["ready"], "");
        row.ran(
            (read.code != 0 || !read.err.contains("the clock"))
                .then(|| format!("{years} years: ready says {}", read.err)),
        );
    }
    // Control: by a clock that is right all of them but the nonsense are written.
    let home = begun_in(this_year);
    home.write("noted", &["text=the last"]);
    let ended = by_the_clock(&home, WRITES[0].0, "");
    assert!(ended.code == 0 && home.done(&["export"]).contains("by a wrong clock"), "{}", ended.err);
    row.must_hold();
}

fn year_of_the_machine() -> i32 {
    use chrono::Datelike;
    chrono::Local::now().year()
}

/// A nursery begun on the first day of a year.
fn begun_in(year: i32) -> Home {
    Home { folder: quick_folder(), today: format!("{year}-01-01") }.begun()
}
