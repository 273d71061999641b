//! What is expected, for programs: `forecast` of a tray, `experience` and `stock_to_come` of a species, `worth_looking` of a round.

use serde_json::{Value, json};

use crate::base::{Range, TrayCode};
use crate::cli::criterion_json::number;
use crate::reckon::forecast::worth::WorthLooking;
use crate::reckon::forecast::{
    Experience, Judgement, Learned, Outlook, Pipeline, Reach, SowAgain, SowingCurve, TrayForecast, TrayStock,
};
use crate::reckon::picture::Picture;
use crate::wording::Wording;

/// What is expected of a tray: of its sowing (none where nothing can be said), and how many plants it gives.
pub(crate) fn tray_forecast_json(tray: &TrayCode, picture: &Picture, outlook: &Outlook, wording: &Wording) -> Value {
    let told = outlook.trays.get(tray);
    let stock = outlook.stock.get(tray);
    if told.is_none() && stock.is_none() {
        return Value::Null;
    }
    json!({
        "sowing": told.map(|told| sowing_json(told, outlook.again.get(tray), picture, wording)),
        "stock": stock.map(|stock| stock_json(stock, wording)),
    })
}

fn sowing_json(told: &TrayForecast, again: Option<&SowAgain>, picture: &Picture, wording: &Wording) -> Value {
    json!({
        "judgement": judgement_word(told.judgement),
        "judgement_text": wording.judgement_name(told.judgement),
        "because": wording.forecast_reasons(told, picture.day),
        "sown_on": told.sown_on,
        "seeds": told.seeds,
        "sowings": told.sowings.iter().map(sown_json).collect::<Vec<_>>(),
        "emerged": told.emerged,
        "expected": number(told.expected),
        "last_look": told.last_look,
        "last_due": told.last_due,
        "at_last_due": range(told.at_last_due),
        "in_the_end": range(told.in_the_end),
        "curve": {"d": number(told.curve.d), "b": number(told.curve.b), "t50": number(told.curve.t50)},
        "stop_waiting": told.stop_waiting,
        "stop_waiting_text": wording.waiting_words(told, picture.day),
        "ask_to_sow_again": told.ask_to_sow_again,
        "sow_again": again.map(|again| again_json(again, wording)),
        "learned_from": told.learned_from,
        "entries": told.entries,
    })
}

fn sown_json(sowing: &SowingCurve) -> Value {
    json!({"on": sowing.on, "seeds": sowing.seeds, "share": number(sowing.share)})
}

fn judgement_word(judgement: Judgement) -> &'static str {
    match judgement {
        Judgement::TooEarly => "too_early",
        Judgement::OnItsWay => "on_its_way",
        Judgement::Slow => "slow",
        Judgement::Failing => "failing",
        Judgement::Finished => "finished",
    }
}

fn again_json(again: &SowAgain, wording: &Wording) -> Value {
    let reaches = match again.reach {
        Reach::NoRains => None,
        Reach::Same { .. } => Some(true),
        Reach::Later { .. } => Some(false),
    };
    json!({
        "missing": number(again.missing),
        "usual_days": again.usual_days,
        "sow_by": again.sow_by(),
        "reaches_its_rains": reaches,
        "text": wording.sow_again_words(again),
    })
}

fn stock_json(stock: &TrayStock, wording: &Wording) -> Value {
    json!({
        "plants": range(stock.plants),
        "on": stock.on.map(|on| json!({"low": on.low, "likely": on.likely, "high": on.high})),
        "from": range(stock.from),
        "survival": number(stock.survival),
        "culls": number(stock.culls),
        "text": wording.stock_words(stock),
    })
}

/// What the handbook and this nursery say of a species.
pub(crate) fn experience_json(known: &Experience, wording: &Wording) -> Value {
    json!({
        "days_to_plantable": learned_json(known.days_to_plantable),
        "germination": learned_json(known.germination),
        "survival": learned_json(known.survival),
        "culls": learned_json(known.culls),
        "text": wording.experience_words(known),
    })
}

fn learned_json(known: Learned) -> Value {
    json!({
        "handbook": known.handbook.map(number),
        "here": known.here.filter(|_| known.trays > 0).map(number),
        "trays": known.trays,
        "censored": known.censored,
        "used": known.used.map(number),
        "between": known.between.map(|(least, most)| [number(least), number(most)]),
    })
}

/// What is coming of a species, by month.
pub(crate) fn stock_to_come_json(pipeline: &Pipeline) -> Value {
    let months = pipeline.months.iter().map(|one| {
        let month = format!("{:04}-{:02}", one.year, one.month);
        json!({"month": month, "trays": one.trays, "plants": range(one.plants)})
    });
    json!({
        "species": pipeline.species,
        "months": months.collect::<Vec<_>>(),
        "undated": pipeline.undated.map(|(trays, plants)| json!({"trays": trays, "plants": range(plants)})),
    })
}

/// A look with how its worth is reckoned.
pub(crate) fn worth_json(worth: &WorthLooking, wording: &Wording) -> Value {
    json!({
        "id": worth.stop,
        "task": worth.task,
        "chance": number(worth.chance),
        "plants": number(worth.plants),
        "last_day": worth.last_day,
        "nearness": number(worth.nearness),
        "minutes": number(worth.minutes),
        "saved_per_minute": number(worth.saved_per_minute),
        "why": wording.worth_words(worth),
    })
}

fn range(range: Range) -> Value {
    json!({"low": number(range.low), "likely": number(range.likely), "high": number(range.high)})
}
