//! The round for programs: the contract of `walk --json`.

use serde_json::{Map, Value, json};

use crate::base::SpeciesKey;
use crate::cli::criterion_json::{measure_json, number};
use crate::cli::forecast::worth_json;
use crate::cli::ready_json::VERSION;
use crate::nursery::caution::Caution;
use crate::nursery::entry::subject::Subject;
use crate::reckon::picture::{Criterion, Picture};
use crate::reckon::round::intervals::work;
use crate::reckon::round::to_write::{Known, Writing, to_write};
use crate::reckon::round::{Round, Stop, Where};
use crate::wording::Wording;
use crate::wording::round::RoundOn;
use crate::wording::verdict::About;

/// What `walk --json` prints.
pub(crate) fn walk_json(round: &Round, picture: &Picture, wording: &Wording) -> Value {
    let all = |stops: &[Stop]| stops.iter().map(|stop| stop_json(stop, picture, wording)).collect::<Vec<_>>();
    json!({
        "version": VERSION,
        "on": picture.day,
        "looking": picture.looking,
        "minutes": number(round.minutes),
        "minutes_allowed": number(round.minutes_allowed),
        "minutes_of": "looking",
        "work_minutes": number(round.work_minutes),
        "care": wording.caution_leads(),
        "stay_away": round.stay_away.iter().map(|(subject, treated)| away_json(subject, treated, wording)).collect::<Vec<_>>(),
        "stops": all(&round.stops),
        "can_wait": all(&round.can_wait),
        "worth_looking": round.worth_shown().map(|worth| worth_json(worth, wording)).collect::<Vec<_>>(),
    })
}

/// What nobody touches, why, and until when where that is known.
fn away_json(subject: &Subject, treated: &Criterion, wording: &Wording) -> Value {
    let (mut tray, mut place, mut bed) = (None, None, None);
    match subject {
        Subject::Tray(code) => tray = Some(code),
        Subject::Place(name) => place = Some(name),
        Subject::Bed(name) => bed = Some(name),
        Subject::Lot(_) | Subject::Site => {}
    }
    let about = if bed.is_some() { About::Bed } else { About::Tray };
    json!({
        "tray": tray,
        "place": place,
        "bed": bed,
        "why": wording.reason(treated, about),
        "until": treated.expected,
        "entries": treated.entries,
    })
}

/// The entry that does the task, with the fields that are known.
fn entry_json(stop: &Stop, picture: &Picture, wording: &Wording) -> Value {
    let entry = to_write(stop, Writing { picture, today: picture.day, day: picture.day, passed: &[] });
    let value = |known: &Known| match known {
        Known::Text(text) => json!(text),
        Known::Number(number) => json!(number),
        Known::Species(species) => json!(species),
        Known::Yes => json!(true),
        Known::LetGo(because) => json!(wording.let_go_because(*because)),
    };
    let fields: Map<String, Value> =
        entry.fields.iter().map(|(name, known)| ((*name).to_string(), value(known))).collect();
    json!({"kind": entry.kind, "fields": fields})
}

/// Of plants those that can harm, or of which nobody wrote whether they do.
pub(in crate::cli) fn dangers_json(plants: &[SpeciesKey], picture: &Picture, wording: &Wording) -> Vec<Value> {
    let species = &picture.site.species;
    let one = |key: &SpeciesKey| {
        let text = wording.plant_danger(key, species)?;
        Some(json!({"species": key, "dangers": species.get(key).and_then(|profile| profile.dangers()), "text": text}))
    };
    plants.iter().filter_map(one).collect()
}

/// A caution with its words.
pub(in crate::cli) fn caution_json(caution: Caution, wording: &Wording) -> Value {
    json!({"word": caution, "text": wording.caution_words(caution)})
}

fn stop_json(stop: &Stop, picture: &Picture, wording: &Wording) -> Value {
    let on = RoundOn { day: picture.day, species: &picture.site.species };
    let place = match (&stop.subject, &stop.at) {
        (Subject::Place(place), _) | (_, Where::Place(place)) => Some(place),
        (_, Where::Nowhere | Where::Bed(_) | Where::SeedStore) => None,
    };
    let cautions: Vec<Value> = stop.cautions().into_iter().map(|caution| caution_json(caution, wording)).collect();
    json!({
        "id": stop.id,
        "task": stop.task,
        "tray": stop.tray(),
        "bed": stop.bed(),
        "lot": stop.lot(),
        "place": place,
        "sign": stop.tray_sign,
        "place_sign": stop.place_sign,
        "why": wording.round_reason(&stop.why, on),
        "due_on": stop.due.map(|due| due.on),
        "until": stop.until,
        "until_for": stop.until_for,
        "until_source": stop.until_for.map(|what| what.source()),
        "until_text": wording.until_words(stop, on),
        "overdue": stop.is_overdue(picture.day),
        "at_stake": {
            "what": stop.at_stake.what,
            "plants": number(stop.at_stake.plants),
            "within_days": stop.at_stake.within_days,
        },
        "lost": wording.or_else_lost(stop),
        "caution": cautions.first(),
        "cautions": cautions,
        "look_first": stop.after_wait.as_ref().is_some_and(|after| !after.looked),
        "plants": dangers_json(&stop.plants_handled(picture), picture, wording),
        "entry": entry_json(stop, picture, wording),
        "minutes": number(stop.minutes),
        "work_minutes": stop.work_minutes.map(number),
        "work_source": stop.work_minutes.map(|_| work::SOURCE),
        "last": stop.last.as_ref().map(|last| {
            let mut figure = measure_json(&last.figure, wording);
            figure["day"] = json!(last.day);
            figure
        }),
        "expect": stop.expect.as_ref().map(|expect| measure_json(expect, wording)),
        "loses_most": stop.marked,
        "source": wording.source_words(&stop.source),
        "entries": stop.entries,
    })
}
