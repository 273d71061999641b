//! The waiting time of what was used, asked for where somebody can answer.

use serde_json::Value;

use super::super::answer::answered;
use super::super::run::{Exit, Run};
use crate::desk::{Desk, Remark};
use crate::nursery::entry::LONGEST_WAIT_DAYS;
use crate::nursery::envelope::Draft;

/// How often it is asked for where the answer is no number.
const MOST_ASKED: usize = 3;

/// Asks for the waiting time of each treatment that has none. Silence leaves it out: then it holds back.
pub(super) fn ask(run: &Run, desk: &mut Desk, drafts: &mut [Draft]) -> Result<(), Exit> {
    let is_treated = |draft: &Draft| draft.kind == "treated" && !draft.body.contains_key("safe_after_days");
    if !run.can_ask() || run.everywhere.yes || !drafts.iter().any(is_treated) {
        return Ok(());
    }
    let found = desk.remarks(drafts).map_err(|fault| run.desk_fault(fault))?;
    let asked = found.into_iter().filter(|(_, remark)| matches!(remark, Remark::NoWaitingTime { .. }));
    // One answer is for all that was treated with the same in one line.
    let mut known: Option<(Value, Option<f64>)> = None;
    for (at, remark) in asked {
        let Some(draft) = drafts.get_mut(at) else { continue };
        let with = draft.body.get("with").cloned().unwrap_or_default();
        let days = match &known {
            Some((before, days)) if *before == with => *days,
            Some(_) | None => days_of(run, &remark),
        };
        known = Some((with, days));
        draft.body.extend(days.map(|days| ("safe_after_days".to_string(), number(days))));
    }
    Ok(())
}

/// A whole number is kept as one.
fn number(days: f64) -> Value {
    if days.fract() == 0.0 { Value::from(days as i64) } else { Value::from(days) }
}

fn days_of(run: &Run, remark: &Remark) -> Option<f64> {
    run.note(&run.wording.remark(remark, run.now.today));
    for _ in 0..MOST_ASKED {
        let answer = answered(&run.wording.waiting_days_asked());
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
