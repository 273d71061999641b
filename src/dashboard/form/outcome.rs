//! What an entry would do, in words.

use crate::base::TrayCode;
use crate::dashboard::context::ScreenContext;
use crate::reckon::effect::{Effect, TrayBrief};
use crate::reckon::picture::{Stage, Standing};

/// The most lines; the rest is counted.
const MOST: usize = 6;

/// What would be otherwise, a sentence each.
pub(crate) fn outcome_words(effects: &[Effect], cx: &ScreenContext<'_>) -> Vec<String> {
    let wording = cx.wording;
    if effects.is_empty() {
        return vec![wording.outcome_none()];
    }
    let mut text: Vec<String> = effects.iter().take(MOST).map(|effect| words(effect, cx)).collect();
    if effects.len() > MOST {
        text.push(wording.outcome_more((effects.len() - MOST) as i64));
    }
    text
}

fn words(effect: &Effect, cx: &ScreenContext<'_>) -> String {
    let wording = cx.wording;
    match effect {
        Effect::Tray { tray, was: None, is: Some(is) } => wording.outcome_tray_new(tray, brief(is, None, cx)),
        Effect::Tray { tray, was, is } => tray_words(tray, was.as_ref(), is.as_ref(), cx),
        Effect::Bed { bed, species, was, is } => wording.outcome_bed(bed, cx.species(Some(species)), *was, *is),
        Effect::Standing { bed, species, was, is } => {
            let standing = |one: &Option<Standing>| {
                one.map_or_else(|| wording.state_not_planned(), |standing| wording.standing_name(standing))
            };
            wording.outcome_standing_of_bed(bed, cx.species(Some(species)), standing(was), standing(is))
        }
        Effect::Fits { bed, now, no_more } => {
            let list = |trays: &[TrayCode]| trays.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ");
            let now = (!now.is_empty()).then(|| wording.outcome_fits_now(bed, list(now)));
            let no_more = (!no_more.is_empty()).then(|| wording.outcome_fits_no_more(bed, list(no_more)));
            now.into_iter().chain(no_more).collect::<Vec<_>>().join("; ")
        }
        Effect::Lot { lot, was, is } => {
            let seeds = |seeds: &Option<u32>| {
                seeds.map_or_else(|| wording.outcome_seeds_unknown(), |seeds| wording.number(f64::from(seeds), 0))
            };
            wording.outcome_lot(lot, seeds(was), seeds(is))
        }
    }
}

fn tray_words(tray: &TrayCode, was: Option<&TrayBrief>, is: Option<&TrayBrief>, cx: &ScreenContext<'_>) -> String {
    let side = |one: Option<&TrayBrief>, other: Option<&TrayBrief>| {
        one.map_or_else(|| "-".to_string(), |one| brief(one, other, cx))
    };
    cx.wording.outcome_tray(tray, side(was, is), side(is, was))
}

/// A tray in a few words: only what is otherwise on the other side, and always how many.
fn brief(one: &TrayBrief, other: Option<&TrayBrief>, cx: &ScreenContext<'_>) -> String {
    let wording = cx.wording;
    let differs = |get: &dyn Fn(&TrayBrief) -> bool| other.is_none_or(|other| get(other) != get(one));
    let mut parts = vec![wording.outcome_standing(one.standing, wording.stage_name(one.stage))];
    // The stage says already what it says.
    let says_more = one.ready != (one.stage == Stage::Ready);
    if differs(&|brief| brief.ready) && says_more {
        parts.push(if one.ready { wording.outcome_ready() } else { wording.outcome_not_ready() });
    }
    if other.is_none_or(|other| other.place != one.place) {
        if let Some(place) = &one.place {
            parts.push(wording.outcome_place(place));
        } else if other.is_some() {
            parts.push(wording.outcome_no_place());
        }
    }
    parts.join(", ")
}
