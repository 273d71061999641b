//! The waiting times of what was used, asked for where somebody can answer: how long to stay away, and how long until planting.

use serde_json::Value;

use super::super::answer::answered;
use super::super::run::{Exit, Run};
use crate::desk::{Desk, Remark};
use crate::nursery::entry::LONGEST_WAIT_DAYS;
use crate::nursery::envelope::Draft;
use crate::wording::Wording;

/// How often it is asked for where the answer is no number.
const MOST_ASKED: usize = 3;

/// A time that is asked for.
struct Asked {
    field: &'static str,
    /// Whether a remark says that it is missing.
    lacks: fn(&Remark) -> bool,
    question: fn(&Wording) -> String,
}

const ASKED: [Asked; 2] = [
    Asked {
        field: "safe_after_days",
        lacks: |remark| matches!(remark, Remark::NoWaitingTime { .. }),
        question: Wording::waiting_days_asked,
    },
    Asked {
        field: "plant_after_days",
        lacks: |remark| matches!(remark, Remark::MayKill { .. }),
        question: Wording::planting_days_asked,
    },
];

/// Asks for the times of each treatment that has none. Silence leaves them out: then it holds back.
pub(super) fn ask(run: &Run, desk: &mut Desk, drafts: &mut [Draft]) -> Result<(), Exit> {
    if !run.can_ask() || run.everywhere.yes || !drafts.iter().any(|draft| draft.kind == "treated") {
        return Ok(());
    }
    ASKED.iter().try_for_each(|asked| ask_for(asked, run, desk, drafts))
}

fn ask_for(asked: &Asked, run: &Run, desk: &mut Desk, drafts: &mut [Draft]) -> Result<(), Exit> {
    let found = desk.remarks(drafts).map_err(|fault| run.desk_fault(fault))?;
    // One answer is for all that was treated with the same in one line.
    let mut known: Option<(Value, Option<f64>)> = None;
    for (at, remark) in found.into_iter().filter(|(_, remark)| (asked.lacks)(remark)) {
        let Some(draft) = drafts.get_mut(at) else { continue };
        let with = draft.body.get("with").cloned().unwrap_or_default();
        let days = match &known {
            Some((before, days)) if *before == with => *days,
            Some(_) | None => days_of(run, asked, &remark),
        };
        known = Some((with, days));
        draft.body.extend(days.map(|days| (asked.field.to_string(), number(days))));
    }
    Ok(())
}

/// A whole number is kept as one.
fn number(days: f64) -> Value {
    if days.fract() == 0.0 { Value::from(days as i64) } else { Value::from(days) }
}

fn days_of(run: &Run, asked: &Asked, remark: &Remark) -> Option<f64> {
    run.note(&run.wording.remark(remark, run.now.today));
    for _ in 0..MOST_ASKED {
        let answer = answered(&(asked.question)(&run.wording));
        let written = answer.trim();
        if written.is_empty() {
            return None;
        }
        let days = written.parse::<f64>().ok().filter(|days| (0.0..=LONGEST_WAIT_DAYS).contains(days));
        if days.is_some() {
            return days;
        }
        run.note(&run.wording.waiting_days_not_read(crate::base::text::cleaned(written)));
    }
    None
}
