//! What short lines say of beds: light, work done, the rod, and what lives there.

use serde_json::json;

use super::forms::{Said, at_word, count_at, ends, light, not_understood, of_tray_or_place, or_not_said, rows_at};
use super::words::Words;
use super::{InBed, Sheet};
use crate::base::{SpeciesKey, text, word::Word};
use crate::nursery::entry::fault::Problem;
use crate::nursery::entry::types::GroundTask;
use crate::share::fault::{Fault, Reason};
use crate::share::sheet::read_number;
use crate::share::vocabulary::{is, vocabulary};

/// The most words of the name of a species.
const MOST_WORDS_OF_A_SPECIES: usize = 4;

/// What is said of a bed.
pub(super) fn of_bed(sheet: &Sheet, bed: &str, rest: &Words) -> Result<Said, Fault> {
    let first = rest.folded(0);
    let first = first.trim_end_matches(':');
    if is(first, &vocabulary().line.light) {
        return light("bed", bed, &rest.after(1));
    }
    if is(first, &vocabulary().line.rod) {
        return rod(bed, &rest.after(1));
    }
    if let Some(task) = GroundTask::read(&rest.typed_from(0)) {
        return Ok(("prepared", json!({"bed": bed, "task": task.spelled()})));
    }
    // A bed has no shade or water of its own to set.
    let has_of_its_own = !is(first, &vocabulary().line.shade) && !is(first, &vocabulary().line.water);
    if has_of_its_own && let Some(said) = of_tray_or_place("bed", bed, first, &rest.after(1))? {
        return Ok(said);
    }
    lives(sheet, bed, rest)
}

/// `rod 8 mm 10 kg 30 cm wet`, `soil 1,2 MPa`, or `soil dry`: numbers with their units in any order.
fn rod(bed: &str, rest: &Words) -> Result<Said, Fault> {
    const UNITS: [(&str, &str); 4] =
        [("mm", "rod_mm"), ("kg", "push_kg"), ("cm", "depth_cm"), ("mpa", "resistance_mpa")];
    let mut body = serde_json::Map::from_iter([("bed".to_string(), json!(bed))]);
    let mut at = 0;
    while at < rest.len() {
        let word = rest.folded(at);
        if is(&word, &vocabulary().line.wet) || is(&word, &vocabulary().line.dry) {
            body.insert("wet".into(), json!(is(&word, &vocabulary().line.wet)));
            at += 1;
            continue;
        }
        let unit_begins = word.find(char::is_alphabetic).unwrap_or(word.len());
        let (number, glued) = word.split_at(unit_begins);
        let (unit, taken) = if glued.is_empty() { (rest.folded(at + 1), 2) } else { (glued.to_string(), 1) };
        let field = UNITS.iter().find(|(known, _)| *known == unit).map(|(_, field)| *field);
        let number: Option<f64> = read_number(number).and_then(|plain| plain.parse().ok());
        let (Some(field), Some(number)) = (field, number) else { return Err(not_understood(&rest.after(at))) };
        if body.insert(field.into(), json!(number)).is_some() {
            return Err(at_word(rest, at, field, Reason::Envelope(Problem::Twice)));
        }
        at += taken;
    }
    let missing = |field: &str| at_word(rest, rest.len(), field, Reason::Envelope(Problem::Missing));
    // A finger tells how wet it is, and nothing else.
    let by_finger = body.contains_key("wet") && !body.contains_key("rod_mm") && !body.contains_key("push_kg");
    if !body.contains_key("resistance_mpa") && !by_finger {
        for field in ["rod_mm", "push_kg"] {
            if !body.contains_key(field) {
                return Err(missing(field));
            }
        }
    }
    Ok(("soil_checked", serde_json::Value::Object(body)))
}

/// How many live and how many died, in words and numbers of any order: `70 alive 5 dead`.
#[derive(Default)]
struct LivingAndDead {
    alive: Option<u32>,
    dead: Option<u32>,
    /// The word behind them.
    behind: usize,
}

fn look(rest: &Words) -> Result<LivingAndDead, Fault> {
    let mut look = LivingAndDead::default();
    loop {
        let at = look.behind;
        let (here, next) = (rest.folded(at), rest.folded(at + 1));
        let number = |at: usize| rest.get(at).is_some_and(|word| word.starts_with(|c: char| c.is_ascii_digit()));
        let of = |word: &str| {
            if is(word, &vocabulary().line.alive) {
                Some("alive")
            } else {
                is(word, &vocabulary().line.dead).then_some("dead")
            }
        };
        let (field, at_number) = match (of(&here), of(&next)) {
            (Some(field), _) => (field, at + 1),
            // "70 dead 5": the first number has no word of its own.
            (None, Some("dead"))
                if number(at) && look.alive.is_none() && number(at + 2) && of(&rest.folded(at + 3)).is_none() =>
            {
                look.alive = Some(count_at(rest, at, "alive")?);
                look.behind += 1;
                continue;
            }
            (None, Some(field)) if number(at) => (field, at),
            (None, _) if number(at) && look.alive.is_none() => {
                look.alive = Some(count_at(rest, at, "alive")?);
                look.behind += 1;
                continue;
            }
            (None, _) => return Ok(look),
        };
        let count = count_at(rest, at_number, field)?;
        let place = if field == "alive" { &mut look.alive } else { &mut look.dead };
        if place.replace(count).is_some() {
            return Err(at_word(rest, at, field, Reason::Envelope(Problem::Twice)));
        }
        look.behind += 2;
    }
}

/// `coffee 70 alive 5 dead`, `70 alive 5 dead` where one species stands there, `pigeon pea 38 wind`.
fn lives(sheet: &Sheet, bed: &str, rest: &Words) -> Result<Said, Fault> {
    let in_bed = (sheet.known.in_bed)(bed);
    let (named, taken) = species_at(sheet, rest, &in_bed)?.map_or((None, 0), |(key, taken)| (Some(key), taken));
    let rest = rest.after(taken);
    let look = look(&rest)?;
    let Some(alive) = look.alive else {
        return Err(match (named, look.dead) {
            (None, None) => not_understood(&rest),
            _ => at_word(&rest, look.behind, "alive", Reason::Envelope(Problem::Missing)),
        });
    };
    let is_nurse = named.as_ref().is_some_and(|key| in_bed.nurses.contains(key) || !in_bed.plants.contains(key));
    if let (Some(nurse), true, None) = (&named, is_nurse, look.dead) {
        let cause = rest.typed_from(look.behind);
        let cause = cause.trim_start_matches([',', ':', ' ']);
        let body = json!({"bed": bed, "nurse": nurse.as_str(), "alive": alive,
            "cause": (!cause.is_empty()).then_some(cause)});
        return Ok(("nurse_counted", body));
    }
    let species = match named {
        Some(species) => species,
        None => only_one(in_bed).map_err(|all| Fault::at(rest.begin(), Reason::WhichSpecies(all)))?,
    };
    let Some(dead) = look.dead else {
        return Err(at_word(&rest, look.behind, "dead", Reason::Envelope(Problem::Missing)));
    };
    let is_rows = is(&rest.folded(look.behind), &vocabulary().line.rows);
    let rows = if is_rows { rows_at(&rest, look.behind)? } else { None };
    let causes = if is_rows { String::new() } else { or_not_said(rest.typed_from(look.behind)) };
    let said = look.behind < rest.len() && !is_rows;
    let body = json!({"bed": bed, "species": species.as_str(), "alive": alive, "dead": dead,
        "causes": said.then_some(causes), "rows": rows});
    ends(&rest, rest.len())?;
    Ok(("survival_counted", body))
}

/// The one species that stands in a bed; else all of them.
fn only_one(in_bed: InBed) -> Result<SpeciesKey, Vec<SpeciesKey>> {
    match &in_bed.plants[..] {
        [one] => Ok(one.clone()),
        _ => Err(in_bed.plants),
    }
}

/// The species that words begin with, and how many of them it takes. Of several plants of one name it is the one that
/// stands in the bed.
fn species_at(sheet: &Sheet, rest: &Words, in_bed: &InBed) -> Result<Option<(SpeciesKey, usize)>, Fault> {
    if rest.get(0).is_some_and(|word| word.starts_with(|letter: char| letter.is_ascii_digit())) {
        return Ok(None);
    }
    for taken in (1..=MOST_WORDS_OF_A_SPECIES).rev() {
        let Some(name) = rest.joined(0, taken) else { continue };
        let name = name.trim_end_matches(':');
        if is(&text::folded(name), &vocabulary().line.alive) {
            continue;
        }
        if let Some(key) = (sheet.known.find)(name) {
            return Ok(Some((key, taken)));
        }
        let plants = (sheet.known.several)(name);
        let stands = |key: &&SpeciesKey| in_bed.plants.contains(key) || in_bed.nurses.contains(key);
        let standing: Vec<&SpeciesKey> = plants.iter().filter(stands).collect();
        if let [one] = standing[..] {
            return Ok(Some((one.clone(), taken)));
        }
        if !plants.is_empty() {
            return Err(Fault::at(rest.begin(), Reason::SeveralPlants { written: name.to_string(), plants }));
        }
    }
    Ok(None)
}
