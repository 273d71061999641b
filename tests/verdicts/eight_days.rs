//! The sample nursery on eight days of its year, as `ready` says it: read line by line as a forester who would sign it.

use crate::support::program::Home;

/// The day of the sample; before it the book looks back, after it ahead.
const TODAY: &str = "2026-11-25";
const DAYS: [&str; 8] =
    ["2026-02-02", "2026-05-13", "2026-08-01", "2026-09-30", "2026-11-15", "2026-11-25", "2026-12-29", "2027-01-28"];

#[test]
fn eight_days_of_the_sample_say_what_a_forester_would_sign() {
    let home = Home { today: TODAY.into(), ..Home::default() };
    let book = home.file("nursery.outplant");
    home.done(&["sample", "--into", book.to_str().unwrap()]);
    let mut text = String::new();
    for day in DAYS {
        let said = home.done(&["ready", "--all", "--on", day, "--lang", "en"]);
        text += &format!("# {day}\n{said}\n");
    }
    insta::assert_snapshot!("eight_days", text);
}
