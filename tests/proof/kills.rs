//! The program killed at any moment, whatever it is doing. A kill proves nothing about power: see `power.rs`.

use std::io::{BufRead, BufReader};
use std::os::unix::process::CommandExt;
use std::process::Stdio;
use std::time::{Duration, Instant};

use super::large::{self, Large};
use super::{Dice, Row, count};
use crate::support::program::Home;

/// Entries of an import that is killed: few, so that many end before the kill.
const LINES: usize = 60;
/// Kills before a new nursery is begun, so that the book does not grow without end.
const KILLS_OF_A_HOME: u64 = 40;

/// What is being done when the kill comes.
struct Phase {
    name: &'static str,
    /// A loop of the shell that says a number aloud only after the program has ended well. `$1` is the first number, `$2`
    /// the program, `$3` the folder.
    script: &'static str,
    /// A large book, and what is done to it before each kill.
    large: Option<Large>,
}

const PHASES: [Phase; 5] = [
    Phase {
        name: "one entry after the other",
        script: r#"i=$1; while :; do "$2" write noted "text=n$i" >/dev/null || exit 1; echo "$i"; i=$((i+1)); done"#,
        large: None,
    },
    Phase {
        name: "imports of 60 lines",
        script: r#"i=$1; while :; do sed "s/NUMBER/n$i/" "$3/lines" | "$2" import - >/dev/null || exit 1; echo "$i"; i=$((i+1)); done"#,
        large: None,
    },
    Phase {
        name: "backups",
        script: r#"i=$1; while :; do "$2" backup "$3/copy-$i" >/dev/null || exit 1; echo "$i"; i=$((i+1)); done"#,
        large: None,
    },
    Phase {
        name: "a large book's stories being kept anew",
        // Each on the day before: stories of a later day are not gone on from.
        script: r#"i=$1; while :; do OUTPLANT_TODAY=$(date -d "2026-10-31 -$((i % 1000)) days" +%F) "$2" write noted "text=n$i" >/dev/null || exit 1; echo "$i"; i=$((i+1)); done"#,
        large: Some(Large::WithoutStories),
    },
    Phase {
        name: "a large book's lookup being made",
        script: r#"i=$1; while :; do "$2" write noted "text=n$i" >/dev/null || exit 1; echo "$i"; i=$((i+1)); done"#,
        large: Some(Large::WithoutLookup),
    },
];

fn killed(home: &Home, script: &str, first: u64, pause: Duration) -> Vec<u64> {
    let mut child = std::process::Command::new("sh")
        .args(["-c", script, "sh", &first.to_string(), env!("CARGO_BIN_EXE_outplant")])
        .arg(home.path())
        .env_clear()
        .env("HOME", home.path())
        .env("OUTPLANT_TODAY", &home.today)
        .env("OUTPLANT_NURSERY", home.file("nursery.outplant"))
        .env("PATH", std::env::var_os("PATH").unwrap_or_default())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .process_group(0)
        .spawn()
        .unwrap();
    let (out, pid) = (child.stdout.take().unwrap(), child.id());
    let killer = std::thread::spawn(move || {
        std::thread::sleep(pause);
        // Without `--` some versions of kill read only the first digit of a group: of -1234 that is -1, everything.
        let _ = std::process::Command::new("kill").args(["-9", "--", &format!("-{pid}")]).status();
    });
    let said = BufReader::new(out).lines().map_while(Result::ok).filter_map(|line| line.parse().ok()).collect();
    killer.join().unwrap();
    child.wait().unwrap();
    said
}

fn begun(phase: &Phase) -> Home {
    if let Some(large) = phase.large {
        return large::home(large);
    }
    let home = Home { folder: super::quick_folder(), ..Home::default() }.begun();
    let lines: String = (0..LINES).map(|i| format!("{{\"kind\":\"noted\",\"text\":\"NUMBER of {i}.\"}}\n")).collect();
    home.with("lines", lines);
    home
}

/// What is wrong after a kill.
fn fault_of(home: &Home, phase: &Phase, said: &[u64], all_said: &[u64]) -> Option<String> {
    let checked = home.run(&["check", "--json"]);
    if checked.code != 0 || checked.out.contains("\"kept_stories_true\":false") {
        return Some(format!("check ends with {}: {}", checked.code, checked.out));
    }
    let (imports, backups) = (phase.name.starts_with("imports"), phase.name == "backups");
    let export = home.done(&["export"]);
    let gone = all_said.iter().find(|number| match () {
        () if imports => export.matches(&format!("\"text\":\"n{number} of ")).count() != LINES,
        () if backups => false,
        () => !export.contains(&format!("\"text\":\"n{number}\"")),
    });
    if let Some(number) = gone {
        return Some(format!("n{number} was acknowledged and is gone"));
    }
    if imports && export.matches(" of 7.\"").count() * LINES != export.matches(" of ").count() {
        return Some("an import is there by half".into());
    }
    if phase.large.is_some() && export.matches("\"id\":\"grown:").count() != large::ENTRIES {
        return Some("entries from before are gone".into());
    }
    for number in if backups { said } else { &[] } {
        let copy = home.file(&format!("copy-{number}")).display().to_string();
        if home.run(&["check", "--nursery", &copy]).code != 0 {
            return Some(format!("copy-{number} was acknowledged and is not sound"));
        }
    }
    // A copy has its name only when it is whole, also where nobody heard so.
    let unsaid = home.file(&format!("copy-{}", said.last().map_or(0, |last| last + 1)));
    if backups && unsaid.exists() && home.run(&["check", "--nursery", &unsaid.display().to_string()]).code != 0 {
        return Some("a half copy has the name of a whole one".into());
    }
    None
}

/// How long one run of the program takes here and now.
fn one_run(home: &Home) -> Duration {
    let begun = Instant::now();
    home.done(&["write", "noted", "text=how long"]);
    begun.elapsed()
}

#[test]
fn whatever_is_being_done_when_it_is_killed_nothing_acknowledged_is_lost() {
    // Beside those of `bringing_up_is_killed` in src/journal/tests/kills.rs and of `struck.rs`. A large book takes longer.
    let all = count("KILLS", 16, 600);
    for (number, phase) in PHASES.iter().enumerate() {
        let each = if phase.large.is_some() { (all / 12).max(4) } else { all / 4 };
        let mut row = Row::begin(&format!("kill -9: {}", phase.name));
        let mut dice = Dice::new(number as u64 + 5);
        let (mut home, mut acknowledged, mut all_said) = (begun(phase), 0, Vec::new());
        let mut half_done = 0;
        let usual = one_run(&home).as_millis() as usize;
        for kill in 0..each {
            if kill % KILLS_OF_A_HOME == KILLS_OF_A_HOME - 1 {
                (home, all_said) = (begun(phase), Vec::new());
            }
            phase.large.iter().for_each(|large| large.again(&home));
            // A busy machine gets longer until something was acknowledged.
            let patience = if acknowledged == 0 { kill + 1 } else { 1 };
            let pause = Duration::from_millis((10 + dice.below(3 * usual) as u64) * patience);
            let said = killed(&home, phase.script, kill * 1000, pause);
            acknowledged += said.len();
            half_done += u64::from(phase.large.is_some_and(|large| large.is_half_done(&home)));
            all_said.extend(&said);
            row.ran(fault_of(&home, phase, &said, &all_said).map(|why| format!("kill {kill}: {why}")));
        }
        row.found = format!("{acknowledged} acknowledged");
        if phase.large.is_some() {
            row.found += &format!("; {half_done} kills came before it was all made");
        }
        row.must_hold();
        assert!(acknowledged > 0, "nothing was acknowledged: the test sees nothing");
    }
}
