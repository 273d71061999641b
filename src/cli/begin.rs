//! `begin`: an empty nursery.

use std::num::ParseFloatError;

use serde_json::{Map, Value, json};

use super::answer::{Ending, answered};
use super::args::Begin;
use super::open_desk::ask_of_first_day;
use super::run::{Exit, Run};
use crate::base::columns::wrapped;
use crate::desk::Desk;
use crate::nursery::entry::reading;
use crate::nursery::envelope::Draft;
use crate::nursery::species::Catalogue;

/// Begins a nursery.
pub(crate) fn run(run: &Run, begin: &Begin) -> Result<Ending, Exit> {
    run.only_today()?;
    ask_of_first_day(run)?;
    let (name, lat, lon) = name_and_place(run, begin)?;
    let offset_h = begin.utc_offset.unwrap_or_else(|| (lon / 15.0).round());
    let altitude_m = begin.altitude.or_else(|| altitude_asked(run));
    let written: Map<String, Value> = [
        ("name", Some(json!(name))),
        ("latitude_deg", Some(json!(lat))),
        ("longitude_deg", Some(json!(lon))),
        ("altitude_m", altitude_m.map(|metres| json!(metres))),
        ("utc_offset_h", Some(json!(offset_h))),
    ]
    .into_iter()
    .filter_map(|(name, value)| Some((name.to_string(), value?)))
    .collect();
    let body = reading::settle_body("nursery_set", &written)
        .map_err(|fault| Exit::refused(run.wording.entry_fault(&fault)))?;
    let draft = Draft {
        happened: run.now.today,
        clock: run.now.clock,
        who: run.who.clone(),
        kind: "nursery_set".to_string(),
        body,
    };
    let shelf = &run.around.folders.settings;
    Desk::begin(&run.file, shelf, run.now, vec![draft])
        .map_err(|fault| run.exit_for(&fault, &Catalogue::built_in()))?;
    if run.everywhere.json {
        return run.answer_json(&json!({"version":1,"nursery":name,"file":run.file.display().to_string()}));
    }
    let begun = run.wording.begun(&name, run.file.display());
    let next = wrapped(&run.wording.begun_next(), run.around.columns).join("\n");
    run.answer(&format!("{begun}\n{next}\n"))
}

/// How often something is asked for where the answer cannot be read.
const MOST_ASKED: usize = 3;

/// What a nursery is called and where it lies: as typed with the command, else as somebody answers at a terminal.
fn name_and_place(run: &Run, begin: &Begin) -> Result<(String, f64, f64), Exit> {
    let words = &run.wording;
    let called = |answer: &str| Some(answer.trim().to_string()).filter(|name| !name.is_empty());
    let name = begin.name.clone().or_else(|| asked(run, &words.begin_name_asked(), called));
    let degrees_of = |question: String| asked(run, &question, |answer| degrees(answer).ok());
    // Where one thing is not answered, no more is asked.
    let lat = begin.lat.or_else(|| name.as_ref().and_then(|_| degrees_of(words.begin_latitude_asked())));
    let lon = begin.lon.or_else(|| lat.and_then(|_| degrees_of(words.begin_longitude_asked())));
    match (name, lat, lon) {
        (Some(name), Some(lat), Some(lon)) => Ok((name, lat, lon)),
        (name, lat, lon) => {
            let all = [("--name", name.is_none()), ("--lat", lat.is_none()), ("--lon", lon.is_none())];
            let missing: Vec<&str> = all.into_iter().filter(|(_, is)| *is).map(|(option, _)| option).collect();
            let more = words.usage_more("outplant begin --help");
            Err(Exit { ending: Ending::Usage, lines: vec![words.usage_missing(missing.join(", ")), more] })
        }
    }
}

/// What somebody answers to a question; none without somebody to ask, or where no answer can be read.
fn asked<T>(run: &Run, question: &str, read: impl Fn(&str) -> Option<T>) -> Option<T> {
    if !run.can_ask() || run.everywhere.yes {
        return None;
    }
    (0..MOST_ASKED).find_map(|_| read(&answered(question)))
}

/// The altitude as somebody answers; silence and what is no number leave it unknown.
fn altitude_asked(run: &Run) -> Option<f64> {
    let read = |answer: &str| match (answer.trim(), metres(answer)) {
        ("" | "?", _) => Some(None),
        (_, Ok(altitude)) => Some(Some(altitude)),
        (_, Err(_)) => None,
    };
    asked(run, &run.wording.begin_altitude_asked(), read).flatten()
}

/// A number with a decimal point or comma.
pub(super) fn figure(written: &str) -> Result<f64, ParseFloatError> {
    written.trim().replace(',', ".").replace('−', "-").parse()
}

/// A number of metres, the unit behind it or not: `120 m`, `1650,5`.
pub(super) fn metres(written: &str) -> Result<f64, ParseFloatError> {
    let written = written.trim();
    let bare = ["msnm", "metros", "metres", "meters", "m"].into_iter().find_map(|unit| written.strip_suffix(unit));
    figure(bare.unwrap_or(written))
}

/// Degrees as people and instruments write them: `9,7`, `-84.1`, `11°20'N`, `84° 6' 30" W`; in Spanish west is `O`.
pub(super) fn degrees(written: &str) -> Result<f64, ParseFloatError> {
    /// Minutes in a degree, and seconds in a minute.
    const SIXTY: f64 = 60.0;
    let written = written.trim();
    let (side, bare) = match written.char_indices().last() {
        Some((at, letter)) if letter.is_alphabetic() => (letter.to_ascii_uppercase(), &written[..at]),
        _ => (' ', written),
    };
    let (mut degrees, mut part) = (0.0, 1.0);
    let all = bare.split(['°', 'º', '\'', '′', '’', '"', '″', '”']).map(str::trim).filter(|figure| !figure.is_empty());
    let mut below = None;
    for one in all {
        let number = figure(one)?;
        let below = *below.get_or_insert(one.starts_with(['-', '−']));
        degrees += if below && part < 1.0 { -number * part } else { number * part };
        part /= SIXTY;
    }
    if below.is_none() {
        return figure(written);
    }
    Ok(if matches!(side, 'S' | 'W' | 'O') { -degrees } else { degrees })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_position_is_read_as_people_and_instruments_write_it() {
        for (written, wanted) in [
            ("9,7", 9.7),
            ("-84.1", -84.1),
            ("-84,1", -84.1),
            ("11°20'N", 11.0 + 20.0 / 60.0),
            ("84° 6' W", -84.1),
            ("84°6'O", -84.1),
            ("1° 30' 36\" S", -1.51),
            ("-1°30'", -1.5),
        ] {
            let read = degrees(written).unwrap();
            assert!((read - wanted).abs() < 1e-9, "{written}: {read}");
        }
        assert!(degrees("north").is_err() && degrees("").is_err() && degrees("9,7,1").is_err());
        assert_eq!((metres("120 m"), metres("1650"), metres("1650 msnm")), (Ok(120.0), Ok(1650.0), Ok(1650.0)));
    }
}
