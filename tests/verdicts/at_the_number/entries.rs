//! What is refused, asked about or told when it is written, just below its number and at it; and what a first day asks.

use outplant::reckon::round::{Task, round};
use serde_json::json;

use crate::support::program::Home;
use crate::support::{Book, small_nursery};

/// A tray of 48 and a bed with a row of 8 bananas, in which 24 were planted.
fn planted() -> Home {
    let home = Home::default().begun();
    let came = ["tray=cof-1", "species=coffee", "count=48", "from=bought", "form=bag", "age_days=100"];
    home.write("plants_received", &[&came[..], &["happened=2026-03-01"]].concat());
    let plan = r#"plan=[{"species":"coffee","pattern":"square","row_m":2,"in_row_m":2}]"#;
    home.write("bed_set", &["bed=Upper 1", "field=Upper", "length_m=20", "width_m=6", plan, "happened=2026-03-01"]);
    let row = ["bed=Upper 1", "nurse=banana", "count=8", "row_m=5", "in_row_m=5", "happened=2026-03-02"];
    home.write("nurse_planted", &row);
    home.write("outplanted", &["tray=cof-1", "bed=Upper 1", "count=24", "happened=2026-03-03"]);
    home
}

/// How a run of `write` ends, of a fresh nursery.
fn ends(kind: &str, fields: &[&str]) -> i32 {
    planted().run(&[&["write", kind][..], fields].concat()).code
}

#[test]
fn as_many_alive_and_dead_as_were_planted_are_believed_and_one_more_is_refused() {
    let counted = |alive: &str, dead: &str| {
        ends("survival_counted", &["bed=Upper 1", "species=coffee", &format!("alive={alive}"), &format!("dead={dead}")])
    };
    assert_eq!([counted("22", "2"), counted("24", "0"), counted("22", "3"), counted("25", "0")], [0, 0, 1, 1]);
    let nurses = |alive: &str| ends("nurse_counted", &["bed=Upper 1", "nurse=banana", &format!("alive={alive}")]);
    assert_eq!([nurses("8"), nurses("9")], [0, 1]);
}

#[test]
fn a_row_is_felled_once_and_no_further() {
    let felled =
        |count: &str| ends("nurse_cut", &["bed=Upper 1", "nurse=banana", "what=felled", &format!("count={count}")]);
    assert_eq!([felled("8"), felled("9")], [0, 1]);
    let home = planted();
    home.write("nurse_cut", &["bed=Upper 1", "nurse=banana", "what=felled", "count=7", "happened=2026-04-01"]);
    let again = |count: &str| {
        let count = format!("count={count}");
        home.run(&["write", "nurse_cut", "bed=Upper 1", "nurse=banana", "what=felled", "--dry-run", &count]).code
    };
    assert_eq!([again("1"), again("2")], [0, 1]);
}

#[test]
fn half_of_a_tray_is_lost_unasked_and_one_more_is_asked_about() {
    // 24 stand: 12 are half of them.
    let lost = |count: &str, more: &[&str]| {
        ends("lost", &[&["tray=cof-1", "cause=rats", &format!("count={count}")][..], more].concat())
    };
    assert_eq!([lost("12", &[]), lost("13", &[]), lost("13", &["--yes"]), lost("25", &["--yes"])], [0, 1, 0, 1]);
    let counted = |standing: &str| ends("counted", &["tray=cof-1", &format!("standing={standing}")]);
    assert_eq!([counted("12"), counted("11")], [0, 1]);
}

#[test]
fn the_same_line_of_the_same_day_is_asked_about_and_another_number_or_day_is_not() {
    let home = planted();
    let lost =
        |fields: [&str; 2]| home.run(&[&["write", "lost", "tray=cof-1", "cause=rats"][..], &fields].concat()).code;
    let today = "happened=2026-04-15";
    assert_eq!(lost(["count=3", today]), 0);
    let then = [["count=3", today], ["count=2", today], ["count=3", "happened=2026-04-14"], ["count=3", "--yes"]];
    assert_eq!(then.map(lost), [1, 0, 0, 0]);
}

#[test]
fn what_goes_out_unready_is_written_with_a_word_of_care_and_what_is_ready_with_none() {
    let care = |book: &Home, count: &str| {
        let out = book.done(&["write", "outplanted", "tray=cof-1", "bed=Upper 1", &format!("count={count}")]);
        out.lines().filter(|line| line.starts_with("take care: ")).count()
    };
    assert_eq!(care(&planted(), "10"), 1);
    // Bananas need nothing of what coffee does.
    let home = planted();
    home.write("plants_received", &["tray=ban-1", "species=banana", "count=6", "from=cutting", "form=bare_root"]);
    let row = ["tray=ban-1", "bed=Upper 1", "count=6", "row_m=5", "in_row_m=5"];
    let out = home.done(&[&["write", "outplanted"][..], &row].concat());
    assert!(!out.contains("take care: "), "{out}");
}

#[test]
fn on_the_first_day_a_tray_past_its_bag_is_looked_into_before_it_is_potted_on() {
    let first_day = || -> Book {
        let mut book = small_nursery();
        // A bag holds coffee for 420 days.
        let stands = json!({"tray":"cof-7","species":"coffee","count":40,"from":"opening","form":"bag","container":"bag",
            "age_days":500,"place":"Half shade"});
        book.write("2026-04-15", "plants_received", stands);
        book
    };
    let asked = |book: &Book| -> Vec<Task> {
        let round = round(&book.on("2026-04-15"));
        let about = round.stops.iter().chain(&round.can_wait).filter(|stop| stop.tray().is_some());
        about.map(|stop| stop.task).collect()
    };
    let unseen = asked(&first_day());
    assert!(unseen.contains(&Task::CheckPlug) && !unseen.contains(&Task::PotOn), "{unseen:?}");
    let mut seen = first_day();
    seen.write("2026-04-15", "plug_checked", json!({"tray":"cof-7","roots":"circling"}));
    let then = asked(&seen);
    assert!(then.contains(&Task::PotOn) && !then.contains(&Task::CheckPlug), "{then:?}");
}
