//! The program killed at any moment: nothing that was acknowledged is lost, nothing is half written.

use crate::support::program::Home;
use std::io::{BufRead, BufReader, Write};
use std::process::Stdio;
use std::time::Duration;

/// Kills in `cargo test`.
const KILLS: u64 = 20;
/// The most kills, where the machine is busy.
const MOST_KILLS: u64 = 4 * KILLS;
/// Entries that must have been acknowledged, or the test sees nothing.
const ENOUGH: usize = 20;

#[test]
fn kill_9_at_any_moment_loses_nothing_that_was_acknowledged() {
    let home = Home::default().begun();
    home.write("plants_received", &["tray=t1", "species=coffee", "count=500", "from=opening", "form=bag"]);
    let mut acknowledged = 0;
    for kill in 0..MOST_KILLS {
        // On a busy machine little is written between two kills: there it goes on until enough was acknowledged.
        if kill >= KILLS && acknowledged > ENOUGH {
            break;
        }
        // A writer that says each number aloud only after the program has said "saved".
        let script = r#"i=$1; end=$((i+500)); while [ "$i" -lt "$end" ]; do "$2" write noted "text=n$i" >/dev/null || exit 1; echo "$i"; i=$((i+1)); done"#;
        let mut child = std::process::Command::new("sh")
            .args(["-c", script, "sh", &format!("{}", kill * 1000), env!("CARGO_BIN_EXE_outplant")])
            .env_clear()
            .env("HOME", home.path())
            .env("OUTPLANT_TODAY", &home.today)
            .env("OUTPLANT_NURSERY", home.file("nursery.outplant"))
            .env("PATH", std::env::var_os("PATH").unwrap_or_default())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .process_group_of_its_own()
            .spawn()
            .unwrap();
        let out = child.stdout.take().unwrap();
        let pause = Duration::from_millis(60 + (kill * 97) % 400);
        let pid = child.id();
        let killer = std::thread::spawn(move || {
            std::thread::sleep(pause);
            // Without `--` some versions of kill read only the first digit of a group: of -1234 that is -1, everything.
            let _ = std::process::Command::new("kill").args(["-9", "--", &format!("-{pid}")]).status();
        });
        let said: Vec<u64> =
            BufReader::new(out).lines().map_while(Result::ok).filter_map(|line| line.parse().ok()).collect();
        killer.join().unwrap();
        child.wait().unwrap();
        let export = home.done(&["export"]);
        for number in &said {
            assert!(
                export.contains(&format!("\"text\":\"n{number}\"")),
                "kill {kill}: n{number} was acknowledged and is gone"
            );
        }
        acknowledged += said.len();
        assert_eq!(home.json(&["check"])["sound"], serde_json::json!(true), "kill {kill}");
    }
    assert!(acknowledged > ENOUGH, "only {acknowledged} entries were acknowledged: the test sees nothing");
    // All of it stands under one device: a kill makes no new one.
    assert_eq!(home.json(&["check"])["devices"], serde_json::json!(1));
}

#[test]
fn an_import_that_is_killed_is_there_whole_or_not_at_all() {
    let home = Home::default().begun();
    let mut halves = 0;
    // Few lines are judged in memory, many inside the transaction that takes them in.
    for (count, longer) in [(3000, 60), (12_000, 250)] {
        let lines: String = (0..count).map(|i| format!("{{\"kind\":\"noted\",\"text\":\"line {i}\"}}\n")).collect();
        let stood = home.done(&["export"]).lines().count();
        for kill in 0..5u64 {
            let mut child =
                home.program().args(["import", "-"]).stdin(Stdio::piped()).stdout(Stdio::null()).spawn().unwrap();
            let mut input = child.stdin.take().unwrap();
            let text = lines.clone();
            let feeder = std::thread::spawn(move || {
                let _ = input.write_all(text.as_bytes());
            });
            std::thread::sleep(Duration::from_millis(20 + kill * longer));
            let _ = child.kill();
            child.wait().unwrap();
            feeder.join().unwrap();
            let now = home.done(&["export"]).lines().count();
            halves += usize::from((now - stood) % count != 0);
        }
    }
    assert_eq!(home.json(&["check"])["sound"], serde_json::json!(true));
    assert_eq!(halves, 0);
}

trait OwnGroup {
    fn process_group_of_its_own(&mut self) -> &mut Self;
}

impl OwnGroup for std::process::Command {
    fn process_group_of_its_own(&mut self) -> &mut Self {
        use std::os::unix::process::CommandExt;
        self.process_group(0)
    }
}
