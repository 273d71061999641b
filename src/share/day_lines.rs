//! The readable text of the sample nursery: a line an entry, its days counted back from today.
//!
//! ```text
//! # a comment
//! -412 mara lot_received lot=cof-L07 species=coffee source="mother row" collected=@-415 seeds=600 kept=in_parchment
//! -30/-28 07:40 mara counted tray=cof-031 standing=41
//! ```
//!
//! The second line happened 30 days ago and was recorded on the evening of 28 days ago. Inside any value `@-25` or
//! `@+60` stands for the day that many days from today, YYYY-MM-DD, or MM-DD where the field is a day of the year.

use serde_json::{Map, Value};

use super::draft::{Writer, read_kind, settle_draft, short};
use super::fault::{Fault, LineFaults, Reason};
use super::pairs::{Split, read_pair, split_words};
use crate::base::{Clock, Day};
use crate::nursery::entry::fields::find_field;
use crate::nursery::entry::shape::{Field, Shape};
use crate::nursery::envelope::Draft;

/// The most days from today that are read: a little over a hundred years.
const MOST_DAYS: i32 = 40_000;

/// Reads every line or lists every fault. Each draft comes with the day on whose evening it is to be recorded; they
/// stand in the order of those days, then of the text.
pub fn read_day_lines(text: &str, today: Day) -> Result<Vec<(Draft, Day)>, LineFaults> {
    let (mut drafts, mut faults) = (Vec::new(), LineFaults::default());
    for (i, line) in text.lines().enumerate() {
        let line = if i == 0 { line.trim_start_matches('\u{feff}') } else { line };
        let words = split_words(line, true);
        match words.and_then(|words| if words.is_empty() { Ok(None) } else { read_line(&words, today).map(Some) }) {
            Ok(Some(read)) => drafts.push(read),
            Ok(None) => {}
            Err(fault) => faults.note(fault.in_line(i + 1)),
        }
    }
    drafts.sort_by_key(|(_, recorded)| *recorded);
    faults.or(drafts)
}

fn read_line(words: &[Split], today: Day) -> Result<(Draft, Day), Fault> {
    let cut_short = || Fault::bare(Reason::LineCutShort);
    let (day, rest) = words.split_first().ok_or_else(cut_short)?;
    let (happened, recorded) = days(&day.text, today).map_err(|fault| at_column(fault, day))?;
    let clock = rest.first().filter(|word| !word.quoted).and_then(|word| word.text.parse::<Clock>().ok());
    let rest = if clock.is_some() { &rest[1..] } else { rest };
    let [who, kind, pairs @ ..] = rest else { return Err(cut_short()) };
    let known = read_kind(&kind.text).map_err(|fault| at_column(fault, kind))?;
    let mut fields = Map::new();
    for pair in pairs {
        let (name, mut value) =
            read_pair(known, &pair.text, &["at", "clock"]).map_err(|fault| at_column(fault, pair))?;
        expand(&mut value, find_field(known.fields, &name).map(|field| &field.shape), today);
        if fields.contains_key(&name) {
            return Err(at_column(Fault::on(&name, Reason::NameTwice), pair));
        }
        fields.insert(name, value);
    }
    let written = clock.map(|clock| Value::from(clock.to_string()));
    if written.is_some_and(|clock| fields.insert("clock".into(), clock).is_some()) {
        return Err(Fault::on("clock", Reason::AtAndClock));
    }
    fields.insert("happened".into(), Value::from(happened.to_string()));
    fields.insert("who".into(), Value::from(who.text.as_str()));
    let draft = settle_draft(known, fields, Writer { today, who: &who.text })?;
    Ok((draft, recorded))
}

fn at_column(fault: Fault, word: &Split) -> Fault {
    Fault { column: fault.column.or(Some(word.column)), ..fault }
}

/// `-412`, or `-30/-28`: the day it happened and the day it was recorded.
fn days(written: &str, today: Day) -> Result<(Day, Day), Fault> {
    let day = |part: &str| {
        days_from_today(part)
            .filter(|days| *days <= 0)
            .map(|days| today + days)
            .ok_or_else(|| Fault::bare(Reason::NotDaysBefore(short(written))))
    };
    let (happened, recorded) = match written.split_once('/') {
        Some((happened, recorded)) => (day(happened)?, day(recorded)?),
        None => (day(written)?, day(written)?),
    };
    if recorded < happened { Err(Fault::bare(Reason::RecordedBefore)) } else { Ok((happened, recorded)) }
}

fn days_from_today(written: &str) -> Option<i32> {
    let days: i32 = written.parse().ok()?;
    (-MOST_DAYS..=MOST_DAYS).contains(&days).then_some(days)
}

/// Puts days in the place of `@-25` and `@+60` in every text of a value.
fn expand(value: &mut Value, shape: Option<&Shape>, today: Day) {
    match (value, shape) {
        (Value::String(text), shape) => *text = with_days(text, matches!(shape, Some(Shape::MonthDay)), today),
        (Value::Array(items), Some(Shape::List(inner))) => {
            items.iter_mut().for_each(|item| expand(item, Some(inner), today));
        }
        (Value::Array(items), _) => items.iter_mut().for_each(|item| expand(item, None, today)),
        (Value::Object(fields), shape) => {
            let known: &[Field] = if let Some(Shape::Record(known)) = shape { known } else { &[] };
            for (name, item) in fields.iter_mut() {
                expand(item, find_field(known, name).map(|field| &field.shape), today);
            }
        }
        (Value::Null | Value::Bool(_) | Value::Number(_), _) => {}
    }
}

fn with_days(text: &str, of_the_year: bool, today: Day) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((before, behind)) = rest.split_once('@') {
        out.push_str(before);
        let digits = behind.get(1..).map_or(0, |tail| tail.bytes().take_while(u8::is_ascii_digit).count());
        let signed = behind.starts_with(['+', '-']) && digits > 0;
        match signed.then(|| behind.get(..=digits).and_then(days_from_today)).flatten() {
            Some(days) => {
                let day = today + days;
                let (_, month, of_month) = day.ymd();
                out.push_str(&if of_the_year { format!("{month:02}-{of_month:02}") } else { day.to_string() });
                rest = behind.get(digits + 1..).unwrap_or_default();
            }
            None => {
                out.push('@');
                rest = behind;
            }
        }
    }
    out.push_str(rest);
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn today() -> Day {
        Day::from_ymd(2026, 3, 14).unwrap()
    }

    #[test]
    fn days_are_counted_back_from_today() {
        let text = concat!(
            "# seed\n",
            "-30/-28 07:40 mara counted tray=cof-031 standing=41 # seen late\n",
            "-412 \"Teo M\" lot_received lot=L7 species=coffee source=\"row #2, @-1\" collected=@-415 seeds=600 kept=cold\n",
            "\n",
            "-400 mara season_set rains=[{\"from\": \"@-25\", \"until\": \"@+60\"}]\n",
            "-28 mara flushed tray=cof-031\n",
        );
        let drafts = read_day_lines(text, today()).unwrap();
        let order: Vec<(&str, i32, i32)> = drafts
            .iter()
            .map(|(draft, recorded)| {
                (draft.kind.as_str(), draft.happened.days_since(today()), recorded.days_since(today()))
            })
            .collect();
        assert_eq!(
            order,
            [("lot_received", -412, -412), ("season_set", -400, -400), ("counted", -30, -28), ("flushed", -28, -28)]
        );
        let (lot, rains, count) = (&drafts[0].0, &drafts[1].0, &drafts[2].0);
        assert_eq!((lot.who.as_str(), &lot.body["source"]), ("Teo M", &Value::from("row #2, 2026-03-13")));
        assert_eq!(lot.body["collected"], (today() - 415).to_string());
        assert_eq!(rains.body["rains"][0], serde_json::json!({"from":"02-17","until":"05-13"}));
        assert_eq!((count.who.as_str(), count.clock.map(Clock::minutes)), ("mara", Some(460)));
    }

    #[test]
    fn every_fault_has_its_line() {
        let text = concat!(
            "-1 mara flushed tray=a\n",
            "3 mara flushed tray=a\n",
            "-1/-2 mara flushed tray=a\n",
            "-1 mara\n",
            "-1 mara flushed tray=\"a\n",
            "-1 mara flushed tray=a tray=b\n",
            "-1 mara flushd tray=a\n",
            "-1 07:40 mara flushed tray=a at=07:41\n",
            "-1 mara flushed tray=a who=teo\n",
        );
        let faults = read_day_lines(text, today()).unwrap_err();
        let reasons: Vec<(usize, Option<usize>, &Reason)> =
            faults.listed.iter().map(|fault| (fault.line, fault.column, &fault.reason)).collect();
        assert_eq!(reasons[0], (2, Some(1), &Reason::NotDaysBefore("3".into())));
        assert_eq!(reasons[1], (3, Some(1), &Reason::RecordedBefore));
        assert_eq!(reasons[2], (4, None, &Reason::LineCutShort));
        assert_eq!(reasons[3], (5, Some(22), &Reason::QuoteOpen));
        assert_eq!(reasons[4], (6, Some(24), &Reason::NameTwice));
        assert_eq!((reasons[5].0, reasons[5].1), (7, Some(9)));
        assert_eq!(reasons[6], (8, None, &Reason::AtAndClock));
        assert_eq!((reasons[7].0, reasons[7].1), (9, Some(24)));
        assert_eq!(faults.count, 8);
    }

    proptest! {
        #[test]
        fn no_text_makes_it_panic(text in any::<String>()) {
            let _ = read_day_lines(&text, today());
        }

        #[test]
        fn no_text_near_a_line_makes_it_panic(text in "(-?[0-9]{1,7}(/-?[0-9]{1,7})? (07:40 )?mara noted text=\"?[@+0-9é# -]{0,14}\"?\n?){0,4}") {
            let _ = read_day_lines(&text, today());
        }
    }
}
