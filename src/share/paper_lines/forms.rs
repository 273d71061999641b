//! The short forms and what each of them says.

use serde_json::{Value, json};

use super::Sheet;
use super::waiting::with_its_time;
use super::words::Words;
use crate::base::{Day, text, word::Word};
use crate::nursery::entry::fault::Problem;
use crate::nursery::entry::shape::NameOf;
use crate::nursery::entry::types::{MovedHow, Roots};
use crate::share::amounts::{self, PERCENT};
use crate::share::draft::short;
use crate::share::fault::{Fault, Reason};
use crate::share::sheet::{DayOrder, read_day, read_number};
use crate::share::vocabulary::{is, vocabulary};

/// The forms, by example, with the kind of entry each makes. Help prints them.
pub const FORMS: &[(&str, &str)] = &[
    ("cof-031 41", "counted"),
    ("cof-031 ~41", "counted"),
    ("cof-031 41, 2 dead", "counted"),
    ("cof-031 -3 rats", "lost"),
    ("cof-031 3 dead", "lost"),
    ("cof-031 x 5 runts", "culled"),
    ("cof-031 > Bench 4", "carried"),
    ("cof-031 > cof-040 30 bag", "moved_on"),
    ("cof-031 @ Upper 1 30", "outplanted"),
    ("cof-031 @ Upper 1 30 rows 2-4", "outplanted"),
    ("cof-040 sown cof-L1 60 bag", "sown"),
    ("cof-031 shade 30", "shade_set"),
    ("cof-031 water 2", "watering_set"),
    ("cof-031 plug holds", "plug_checked"),
    ("cof-031 roots cut", "roots_cut"),
    ("cof-031 grafted 40 Late Green on wild stock", "grafted"),
    ("cof-031 flush", "flushed"),
    ("cof-031 h 24 26,5 31", "measured"),
    ("cof-031 24/4.5 26/5", "measured"),
    ("cof-031 given 5 the school", "given_out"),
    ("cof-031 recount 41", "stocktaken"),
    ("cof-031 hardening", "hardening_begun"),
    ("cof-031 held promised", "held"),
    ("cof-031 released", "released"),
    ("cof-031 pest aphids", "pest_seen"),
    ("cof-031 treated soap", "treated"),
    ("cof-031 note pale leaves", "noted"),
    ("Bench 4 shade 30", "shade_set"),
    ("Upper 1 light 60%", "light_read"),
    ("Upper 1 weeded", "prepared"),
    ("Upper 1 rod 8 mm 10 kg 30 cm wet", "soil_checked"),
    ("Upper 1 coffee 70 alive 5 dead", "survival_counted"),
    ("Upper 1 pigeon pea 38", "nurse_counted"),
    ("cof-L1 300", "lot_counted"),
    ("cof-L1 test 41/50 43/50 28 days", "lot_tested"),
    ("rain 12", "weather"),
    ("note the tank leaks", "noted"),
    ("let go count cof-031 until 2026-04-20", "let_go"),
    ("2026-03-11 cof-031 41", "counted"),
    ("24 feb cof-031 41", "counted"),
    ("cof-031 lost 3, rats", "lost"),
    ("moved cof-031 to Bench 4", "carried"),
    ("planted 30 cof-031 in Upper 1", "outplanted"),
    ("gave 5 cof-031 to the school", "given_out"),
    ("it rained 12 mm yesterday", "weather"),
    ("counted tray=cof-031 standing=41", "counted"),
];

/// The same as they are written in Spanish, in the same order.
pub const FORMS_IN_SPANISH: &[(&str, &str)] = &[
    ("cof-031 41", "counted"),
    ("cof-031 ~41", "counted"),
    ("cof-031 41, 2 muertas", "counted"),
    ("cof-031 -3 ratas", "lost"),
    ("cof-031 3 muertas", "lost"),
    ("cof-031 x 5 raquíticas", "culled"),
    ("cof-031 > Bench 4", "carried"),
    ("cof-031 > cof-040 30 bolsa", "moved_on"),
    ("cof-031 @ Upper 1 30", "outplanted"),
    ("cof-031 @ Upper 1 30 hileras 2-4", "outplanted"),
    ("cof-040 sembrada cof-L1 60 bolsa", "sown"),
    ("cof-031 sombra 30", "shade_set"),
    ("cof-031 riego 2", "watering_set"),
    ("cof-031 cepellón sostiene", "plug_checked"),
    ("cof-031 raíces podadas", "roots_cut"),
    ("cof-031 injertadas 40 Verde Tardío sobre patrón criollo", "grafted"),
    ("cof-031 brotes", "flushed"),
    ("cof-031 altura 24 26.5 31", "measured"),
    ("cof-031 24/4.5 26/5", "measured"),
    ("cof-031 dadas 5 a la escuela", "given_out"),
    ("cof-031 recuento 41", "stocktaken"),
    ("cof-031 endurecimiento", "hardening_begun"),
    ("cof-031 retenida prometida", "held"),
    ("cof-031 liberada", "released"),
    ("cof-031 plaga pulgones", "pest_seen"),
    ("cof-031 tratada con jabón", "treated"),
    ("cof-031 nota hojas pálidas", "noted"),
    ("Bench 4 sombra 30", "shade_set"),
    ("Upper 1 luz 60%", "light_read"),
    ("Upper 1 deshierbado", "prepared"),
    ("Upper 1 varilla 8 mm 10 kg 30 cm mojado", "soil_checked"),
    ("Upper 1 café 70 vivas 5 muertas", "survival_counted"),
    ("Upper 1 gandul 38", "nurse_counted"),
    ("cof-L1 300", "lot_counted"),
    ("cof-L1 prueba 41/50 43/50 28 días", "lot_tested"),
    ("lluvia 12", "weather"),
    ("nota el tanque gotea", "noted"),
    ("dejar contar cof-031 hasta 2026-04-20", "let_go"),
    ("11/3 cof-031 41", "counted"),
    ("ayer cof-031 41", "counted"),
    ("murieron 3 cof-031 por ratas", "lost"),
    ("pasé cof-031 a Bench 4", "carried"),
    ("planté 30 cof-031 en Upper 1", "outplanted"),
    ("regalé 5 cof-031 a la escuela", "given_out"),
    ("ayer llovió 12 mm", "weather"),
    ("contada bandeja=cof-031 paradas=41", "counted"),
];

/// Words a line may begin with, for the nearest one to a slip.
pub(super) const FIRST_WORDS: [&str; 10] =
    ["rain", "lluvia", "note", "nota", "on", "el", "yesterday", "ayer", "let go", "dejar"];

/// Where a person gives no cause, reason or name.
pub(super) const NOT_SAID: &str = "not said";

pub(super) type Said = (&'static str, Value);

pub(super) fn not_understood(rest: &Words) -> Fault {
    let reason = Reason::NotUnderstood(short(&rest.typed_from(0)));
    Fault::at(rest.begin(), reason)
}

pub(super) fn at_word(words: &Words, at: usize, field: &str, reason: Reason) -> Fault {
    let column = words.column(at).or(Some(words.after(at).begin()));
    // A person typed no field's name: the fault tells what is meant.
    let reason = match reason {
        Reason::Envelope(problem) => Reason::Said { what: field.into(), problem: Box::new(problem) },
        other => other,
    };
    Fault { column, field: None, reason }
}

/// The count a word is.
pub(super) fn count_at(words: &Words, at: usize, field: &str) -> Result<u32, Fault> {
    let Some(written) = words.get(at) else {
        return Err(at_word(words, at, field, Reason::Envelope(Problem::Missing)));
    };
    amounts::read_count(written).map(|amount| amount.value).map_err(|reason| at_word(words, at, field, reason))
}

pub(super) fn number_at(words: &Words, at: usize, field: &str) -> Result<f64, Fault> {
    let Some(written) = words.get(at) else {
        return Err(at_word(words, at, field, Reason::Envelope(Problem::Missing)));
    };
    amounts::read_amount(written, &PERCENT)
        .map(|amount| amount.value)
        .map_err(|reason| at_word(words, at, field, reason))
}

fn signed_at(words: &Words, at: usize, field: &str) -> Result<f64, Fault> {
    let written = words.get(at).unwrap_or_default();
    let read = read_number(written).and_then(|plain| plain.parse().ok());
    read.ok_or_else(|| at_word(words, at, field, Reason::Envelope(Problem::NotANumber(short(written)))))
}

/// Nothing may stand behind so many words.
pub(super) fn ends(words: &Words, taken: usize) -> Result<(), Fault> {
    if words.len() > taken { Err(not_understood(&words.after(taken))) } else { Ok(()) }
}

pub(super) fn or_not_said(typed: String) -> String {
    let bare = typed.trim_start_matches([',', ':', ' ']).trim();
    let inside = bare.strip_prefix('(').and_then(|rest| rest.strip_suffix(')'));
    let bare = inside.filter(|inside| !inside.contains(['(', ')'])).unwrap_or(bare);
    if bare.is_empty() { NOT_SAID.to_string() } else { bare.to_string() }
}

/// A line that names nothing: rain and temperatures, a task let go, or a note.
pub(super) fn without_name(sheet: &Sheet, words: &Words) -> Result<Option<Said>, Fault> {
    let first = words.folded(0).trim_end_matches(':').to_string();
    if is(&first, &vocabulary().line.note) {
        return Ok(Some(("noted", json!({ "text": words.typed_from(1) }))));
    }
    if begins_let_go(words) {
        return let_go(sheet, &words.after(1 + usize::from(first == "let"))).map(Some);
    }
    let is_weather = |word: &str| {
        is(word, &vocabulary().line.rain)
            || is(word, &vocabulary().line.coldest)
            || is(word, &vocabulary().line.hottest)
    };
    if !is_weather(&first) {
        return Ok(None);
    }
    let mut body = serde_json::Map::new();
    let mut at = 0;
    while at < words.len() {
        let word = words.folded(at).trim_end_matches(':').to_string();
        let field = match word.as_str() {
            word if is(word, &vocabulary().line.rain) => "rain_mm",
            word if is(word, &vocabulary().line.coldest) => "tmin_c",
            word if is(word, &vocabulary().line.hottest) => "tmax_c",
            "mm" | "c" => {
                at += 1;
                continue;
            }
            _ => return Err(not_understood(&words.after(at))),
        };
        if words.len() <= at + 1 {
            return Err(at_word(words, at + 1, field, Reason::Envelope(Problem::Missing)));
        }
        let bare = Words::of(&words.get(at + 1).unwrap_or_default().replace("mm", ""));
        let number = signed_at(&bare, 0, field).map_err(|fault| Fault { column: words.column(at + 1), ..fault })?;
        if body.insert(field.into(), Value::from(number)).is_some() {
            return Err(at_word(words, at, field, Reason::NameTwice));
        }
        at += 2;
    }
    Ok(Some(("weather", Value::Object(body))))
}

/// Whether a line lets a task go.
pub(super) fn begins_let_go(words: &Words) -> bool {
    let first = words.folded(0).trim_end_matches(':').to_string();
    // "soltar c1": a tray that was held.
    let of_a_task = || first != "soltar" || (0..words.len()).any(|at| is_end_of_a_task(&words.folded(at)));
    first == "let" && words.folded(1) == "go" || is(&first, &vocabulary().line.let_go) && of_a_task()
}

/// Whether a word says until when a task is let go.
fn is_end_of_a_task(word: &str) -> bool {
    is(word, &vocabulary().line.until) || is(word, &vocabulary().line.never)
}

/// `let go count cof-031 until 2026-04-20`, `let go count cof-031 never`.
fn let_go(sheet: &Sheet, words: &Words) -> Result<Said, Fault> {
    let at = (0..words.len()).find(|at| is_end_of_a_task(&words.folded(*at)));
    let Some(at) = at else {
        return Err(at_word(words, words.len(), "until", Reason::Envelope(Problem::Missing)));
    };
    let task = words.joined(0, at).unwrap_or_default();
    if task.is_empty() {
        return Err(at_word(words, 0, "task", Reason::Envelope(Problem::Missing)));
    }
    let task = (sheet.known.task)(&task).map_err(|nearest| {
        let reason = Reason::UnknownTask { written: short(&task), nearest };
        Fault { column: words.column(0), field: None, reason }
    })?;
    let never = is(&words.folded(at), &vocabulary().line.never);
    let until = if never { None } else { Some(coming_day(words, at + 1)?) };
    let why = words.typed_from(at + 1 + usize::from(!never));
    let why = why.trim_start_matches([',', ':', ' ']);
    let body = json!({"task": task, "until": until.map(|day| day.to_string()), "never": never.then_some(true),
        "why": (!why.is_empty()).then_some(why)});
    Ok(("let_go", body))
}

/// A day to come, which nobody can leave the year out of.
fn coming_day(words: &Words, at: usize) -> Result<Day, Fault> {
    let written = words.get(at).unwrap_or_default();
    if written.is_empty() {
        return Err(at_word(words, at, "until", Reason::Envelope(Problem::Missing)));
    }
    read_day(written, DayOrder::DayFirst).map(|read| read.day).map_err(|reason| at_word(words, at, "until", reason))
}

/// What is said of a tray.
pub(super) fn of_tray(sheet: &Sheet, tray: &str, rest: &Words) -> Result<Said, Fault> {
    let first = rest.folded(0);
    let first = first.trim_end_matches(':');
    match first {
        "" => Err(not_understood(rest)),
        ">" => moved_or_carried(sheet, tray, &rest.after(1)),
        ">>" | "@" => outplanted(sheet, tray, &rest.after(1)),
        "x" | "\u{d7}" => culled(tray, &rest.after(1)),
        "~" | "\u{2248}" => about(tray, rest, 1),
        word if is(word, &vocabulary().line.count) => counted(sheet, tray, &rest.after(1)),
        word if is(word, &vocabulary().line.dead) => died(tray, &rest.after(1), 0, 1),
        word if word.starts_with(['-', '\u{2212}', '\u{2013}']) => lost(tray, rest),
        word if word.starts_with(|letter: char| letter.is_ascii_digit()) => number_first(sheet, tray, rest),
        word if is_glued_cull(word) => culled(tray, &glued(rest)),
        _ => match word_first(tray, first, rest)? {
            Some(said) => Ok(said),
            None if amounts::without_about(&rest.typed_from(0)).1 => about(tray, rest, 0),
            None => Err(number_in_words(rest).unwrap_or_else(|| not_understood(rest))),
        },
    }
}

/// The fault of a number written in words, or below zero: "two", "menos dos".
fn number_in_words(rest: &Words) -> Option<Fault> {
    match amounts::read_count(&rest.typed_from(0)) {
        Err(reason @ (Reason::NumberInWords { .. } | Reason::Envelope(Problem::BelowZero(_)))) => {
            Some(at_word(rest, 0, "standing", reason))
        }
        Ok(_) | Err(_) => None,
    }
}

/// `x5`.
fn is_glued_cull(word: &str) -> bool {
    let number = word.strip_prefix(['x', '\u{d7}']).unwrap_or_default();
    !number.is_empty() && number.bytes().all(|byte| byte.is_ascii_digit())
}

/// The words with a sign before the first number taken off.
fn glued(rest: &Words) -> Words {
    let mut letters: Vec<char> = rest.raw().chars().collect();
    if let Some(letter) = letters.get_mut(rest.begin() - 1) {
        *letter = ' ';
    }
    let line: String = letters.into_iter().collect();
    let words = Words::of(&line);
    let before = (0..words.len()).filter(|at| words.column(*at).is_some_and(|column| column < rest.begin())).count();
    words.after(before)
}

fn number_first(sheet: &Sheet, tray: &str, rest: &Words) -> Result<Said, Fault> {
    if rest.get(0).is_some_and(|word| word.contains('/')) { measured(tray, rest) } else { counted(sheet, tray, rest) }
}

/// `41`, `41 dead 2`, `41, 2 dead`, `41 and 2 dead`; but `3 dead` alone are lost, and `30 @ Upper 1` go out.
fn counted(sheet: &Sheet, tray: &str, rest: &Words) -> Result<Said, Fault> {
    if matches!(rest.get(0), Some("~" | "\u{2248}")) {
        return about(tray, rest, 1);
    }
    if is(&rest.folded(1), &vocabulary().line.dead) && rest.get(2).is_none_or(|word| amounts::read_count(word).is_err())
    {
        return died(tray, rest, 0, 2);
    }
    let standing = count_at(rest, 0, "standing")?;
    if rest.len() == 1 {
        return Ok(("counted", json!({"tray": tray, "standing": standing})));
    }
    if matches!(rest.get(1), Some("@" | ">>")) {
        return planted_out(sheet, tray, &rest.after(2), Some(standing));
    }
    let from = 1 + usize::from(is(&rest.folded(1), &vocabulary().small.and));
    let number_at =
        match (is(&rest.folded(from), &vocabulary().line.dead), is(&rest.folded(from + 1), &vocabulary().line.dead)) {
            (true, false) => from + 1,
            (false, true) => from,
            (false, false) | (true, true) => return Err(not_understood(&rest.after(1))),
        };
    ends(rest, from + 2)?;
    let dead = count_at(rest, number_at, "dead")?;
    Ok(("counted", json!({"tray": tray, "standing": standing, "dead": dead})))
}

/// `3 dead`, `dead 3 of rats`: the number stands at one word, the cause begins at another.
fn died(tray: &str, rest: &Words, number: usize, cause: usize) -> Result<Said, Fault> {
    let count = count_at(rest, number, "count")?;
    let cause = cause + usize::from(is(&rest.folded(cause), &vocabulary().small.of));
    Ok(("lost", json!({"tray": tray, "count": count, "cause": or_not_said(rest.typed_from(cause))})))
}

fn about(tray: &str, rest: &Words, from: usize) -> Result<Said, Fault> {
    let read = amounts::read_count(&rest.typed_from(from));
    let standing = read.map_err(|reason| at_word(rest, from, "standing", reason))?.value;
    Ok(("counted", json!({"tray": tray, "standing": standing, "about": true})))
}

/// `-3 rats`, `- 3 rats`.
fn lost(tray: &str, rest: &Words) -> Result<Said, Fault> {
    let bare = glued(rest);
    let count = count_at(&bare, 0, "count")?;
    Ok(("lost", json!({"tray": tray, "count": count, "cause": or_not_said(bare.typed_from(1))})))
}

fn culled(tray: &str, rest: &Words) -> Result<Said, Fault> {
    let count = count_at(rest, 0, "count")?;
    Ok(("culled", json!({"tray": tray, "count": count, "why": or_not_said(rest.typed_from(1))})))
}

/// Whether a word is made like the code of a tray or lot.
pub(super) fn is_like_a_code(word: &str) -> bool {
    word.contains('-')
        && word.chars().any(|letter| letter.is_ascii_digit())
        && word.starts_with(|letter: char| letter.is_alphabetic())
}

/// Behind `>`: a known place and nothing more is where the tray goes; a tray, or a new code and a number, is where
/// seedlings go.
fn moved_or_carried(sheet: &Sheet, tray: &str, rest: &Words) -> Result<Said, Fault> {
    if rest.len() == 0 {
        return Err(at_word(rest, 0, "place", Reason::Envelope(Problem::Missing)));
    }
    let place = sheet.longest_of(NameOf::Place, rest).filter(|(_, taken)| *taken == rest.len());
    if let Some((place, _)) = place {
        return Ok(("carried", json!({"tray": tray, "place": place})));
    }
    let known = sheet.longest_of(NameOf::Tray, rest);
    let (to, taken) = match known {
        Some(known) => known,
        None => match rest.get(0) {
            Some(code) if is_like_a_code(code) => (code.to_string(), 1),
            Some(_) | None => return Err(sheet.unknown_name(rest, 0)),
        },
    };
    let count = count_at(rest, taken, "count")?;
    let container = rest.typed_from(taken + 1);
    let container = (!container.is_empty()).then_some(container);
    let how = if (sheet.known.is_seedbed)(tray) { MovedHow::PrickedOut } else { MovedHow::PottedOn };
    let body = json!({"from": tray, "to": to, "count": count, "how": how.spelled(), "container": container});
    Ok(("moved_on", body))
}

fn outplanted(sheet: &Sheet, tray: &str, rest: &Words) -> Result<Said, Fault> {
    planted_out(sheet, tray, rest, None)
}

/// `Upper 1 30`, `Upper 1 30 rows 2-4`; the number may have stood before the bed.
fn planted_out(sheet: &Sheet, tray: &str, rest: &Words, before: Option<u32>) -> Result<Said, Fault> {
    let Some((bed, taken)) = sheet.longest_of(NameOf::Bed, rest) else {
        let missing = || at_word(rest, 0, "bed", Reason::Envelope(Problem::Missing));
        return Err(if rest.len() == 0 { missing() } else { sheet.unknown_of(NameOf::Bed, rest) });
    };
    let (count, taken) = match before {
        Some(count) => (count, taken),
        None => (count_at(rest, taken, "count")?, taken + 1),
    };
    let rows = rows_at(rest, taken)?;
    Ok(("outplanted", json!({"tray": tray, "bed": bed, "count": count, "rows": rows})))
}

/// `rows 2-4` to the end of the line, or nothing.
pub(super) fn rows_at(rest: &Words, at: usize) -> Result<Option<String>, Fault> {
    if !is(&rest.folded(at), &vocabulary().line.rows) {
        return ends(rest, at).map(|()| None);
    }
    let rows = rest.typed_from(at + 1);
    if rows.is_empty() {
        Err(at_word(rest, at + 1, "rows", Reason::Envelope(Problem::Missing)))
    } else {
        Ok(Some(rows))
    }
}

/// `24/4.5 26/5`, or heights alone.
fn measured(tray: &str, rest: &Words) -> Result<Said, Fault> {
    let mut plants = Vec::new();
    for at in 0..rest.len() {
        let word = rest.get(at).unwrap_or_default().trim_end_matches([',', ';']);
        let unit = text::folded(word);
        let of_height = at > 0 && !rest.get(at - 1).unwrap_or_default().contains('/');
        if unit == "cm" || unit == "mm" && !of_height {
            continue;
        }
        if unit == "mm" {
            // A height is in cm: 240 mm are no 240 cm.
            let height = format!("{}mm", rest.get(at - 1).unwrap_or_default().trim_end_matches([',', ';']));
            let reason = amounts::read_amount(&height, &[("cm", 1.0)]).err();
            let reason = reason.unwrap_or(Reason::Envelope(Problem::Missing));
            return Err(at_word(rest, at - 1, "height_cm", reason));
        }
        let (height, collar) = word.split_once('/').map_or((word, None), |(height, collar)| (height, Some(collar)));
        let fault = |field: &str, reason| at_word(rest, at, field, reason);
        let height = amounts::read_amount(height, &[("cm", 1.0)]).map_err(|reason| fault("height_cm", reason))?.value;
        let collar = collar.map(|written| amounts::read_amount(written, &[("mm", 1.0)])).transpose();
        let collar = collar.map_err(|reason| fault("collar_mm", reason))?.map(|amount| amount.value);
        plants.push(json!({"height_cm": height, "collar_mm": collar}));
    }
    if plants.is_empty() {
        return Err(at_word(rest, 0, "plants", Reason::Envelope(Problem::Missing)));
    }
    Ok(("measured", json!({"tray": tray, "plants": plants})))
}

fn word_first(tray: &str, first: &str, rest: &Words) -> Result<Option<Said>, Fault> {
    let behind = rest.after(1);
    if let Some(said) = of_tray_or_place("tray", tray, first, &behind)? {
        return Ok(Some(said));
    }
    let alone = |kind: &'static str| ends(rest, 1).map(|()| Some((kind, json!({ "tray": tray }))));
    match first {
        word if is(word, &vocabulary().line.plug) && is(&behind.folded(0), &vocabulary().line.cut) => {
            ends(&behind, 2)?;
            let count = (behind.len() > 1).then(|| count_at(&behind, 1, "count")).transpose()?;
            Ok(Some(("roots_cut", json!({"tray": tray, "count": count}))))
        }
        word if is(word, &vocabulary().line.plug) => {
            let written = behind.typed_from(0);
            let read = Roots::read(&written).ok_or_else(|| {
                let known = Roots::WORDS.iter().map(|(roots, _)| roots.spelled()).collect();
                let reason = Reason::Envelope(Problem::NotTheWord { written: short(&written), known });
                at_word(&behind, 0, "roots", reason)
            })?;
            Ok(Some(("plug_checked", json!({"tray": tray, "roots": read.spelled()}))))
        }
        word if is(word, &vocabulary().line.grafted) => grafted(tray, &behind).map(Some),
        word if is(word, &vocabulary().line.flush) => alone("flushed"),
        word if is(word, &vocabulary().line.hardening) => alone("hardening_begun"),
        word if is(word, &vocabulary().line.height) => measured(tray, &behind).map(Some),
        word if is(word, &vocabulary().line.recount) => {
            let standing = count_at(&behind, 0, "standing")?;
            ends(&behind, 1)?;
            Ok(Some(("stocktaken", json!({"tray": tray, "standing": standing}))))
        }
        word if is(word, &vocabulary().line.given) => {
            let count = count_at(&behind, 0, "count")?;
            let filler = usize::from(is(&behind.folded(1), &vocabulary().small.filler));
            Ok(Some((
                "given_out",
                json!({"tray": tray, "count": count, "to": or_not_said(behind.typed_from(1 + filler))}),
            )))
        }
        _ => Ok(None),
    }
}

/// `40`, `40 Late Green`, `40 Late Green on wild stock`.
fn grafted(tray: &str, behind: &Words) -> Result<Said, Fault> {
    let count = count_at(behind, 0, "count")?;
    let on = (1..behind.len()).find(|at| is(&behind.folded(*at), &vocabulary().small.upon));
    let variety = behind.joined(1, on.unwrap_or(behind.len()).saturating_sub(1)).filter(|variety| !variety.is_empty());
    let rootstock = on.map(|on| behind.typed_from(on + 1)).filter(|stock| !stock.is_empty());
    Ok(("grafted", json!({"tray": tray, "count": count, "variety": variety, "rootstock": rootstock})))
}

/// What may be said of a tray and of a place alike.
pub(super) fn of_tray_or_place(field: &str, name: &str, first: &str, behind: &Words) -> Result<Option<Said>, Fault> {
    let value_at = || (0..behind.len()).find(|at| !is(&behind.folded(*at), &vocabulary().small.filler)).unwrap_or(0);
    let only_fillers = |from: usize| match (from..behind.len())
        .find(|at| !is(&behind.folded(*at), &vocabulary().small.filler) && behind.get(*at) != Some("%"))
    {
        Some(at) => Err(not_understood(&behind.after(at))),
        None => Ok(()),
    };
    let said = match first {
        word if is(word, &vocabulary().line.shade) => {
            let shade = number_at(behind, value_at(), "shade_pct")?;
            only_fillers(value_at() + 1)?;
            ("shade_set", json!({field: name, "shade_pct": shade}))
        }
        word if is(word, &vocabulary().line.water) => {
            let days = number_at(behind, value_at(), "every_days")?;
            only_fillers(value_at() + 1)?;
            ("watering_set", json!({field: name, "every_days": days}))
        }
        word if is(word, &vocabulary().line.note) => ("noted", json!({"about": name, "text": behind.typed_from(0)})),
        word if is(word, &vocabulary().line.held) => {
            ("held", json!({field: name, "why": or_not_said(behind.typed_from(0))}))
        }
        word if is(word, &vocabulary().line.released) => {
            let why = behind.typed_from(0);
            ("released", json!({field: name, "why": (!why.is_empty()).then_some(why)}))
        }
        word if is(word, &vocabulary().line.pest) => ("pest_seen", json!({field: name, "what": behind.typed_from(0)})),
        word if is(word, &vocabulary().line.treated) => {
            let filler = usize::from(is(&behind.folded(0), &vocabulary().small.with));
            let (with, days) = with_its_time(&behind.after(filler));
            ("treated", json!({field: name, "with": with, "safe_after_days": days}))
        }
        _ => return Ok(None),
    };
    Ok(Some(said))
}

pub(super) fn light(field: &str, name: &str, behind: &Words) -> Result<Said, Fault> {
    let percent = number_at(behind, 0, "light_share")?;
    let taken = 1 + usize::from(behind.get(1) == Some("%"));
    ends(behind, taken)?;
    if percent > 100.0 {
        let reason = Reason::Envelope(Problem::OutsideEnds { least: 0.0, most: 100.0 });
        return Err(at_word(behind, 0, "light_share", reason));
    }
    Ok(("light_read", json!({field: name, "light_share": percent / 100.0})))
}

/// What is said of a place: its light, shade and water, a note.
pub(super) fn of_place(place: &str, rest: &Words) -> Result<Said, Fault> {
    let first = rest.folded(0);
    let first = first.trim_end_matches(':');
    if is(first, &vocabulary().line.light) {
        return light("place", place, &rest.after(1));
    }
    of_tray_or_place("place", place, first, &rest.after(1))?.ok_or_else(|| not_understood(rest))
}
