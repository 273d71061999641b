//! What short lines say of seed: a lot counted or tested, a tray sown.

use serde_json::json;

use super::Sheet;
use super::forms::{Said, at_word, count_at, ends, not_understood, number_at, or_not_said};
use super::words::Words;
use crate::base::text;
use crate::nursery::entry::fault::Problem;
use crate::nursery::entry::shape::NameOf;
use crate::share::amounts;
use crate::share::fault::{Fault, Reason};
use crate::share::vocabulary::{is, vocabulary};

/// `cof-040 sown cof-L1 60 bag 1 l > Bench 4`: a new tray, the lot, how many seeds, the bag, and where it stands.
pub(super) fn sown(sheet: &Sheet, words: &Words) -> Result<Option<Said>, Fault> {
    let Some(tray) = words.get(0).filter(|_| is(words.folded(1).trim_end_matches(':'), &vocabulary().line.sown)) else {
        return Ok(None);
    };
    let rest = words.after(2);
    let Some((lot, taken)) = sheet.longest_of(NameOf::Lot, &rest) else {
        let missing = || at_word(&rest, 0, "lot", Reason::Envelope(Problem::Missing));
        return Err(if rest.len() == 0 { missing() } else { sheet.unknown_of(NameOf::Lot, &rest) });
    };
    let seeds = count_at(&rest, taken, "seeds")?;
    let behind = rest.after(taken + 1);
    let behind = behind.after(usize::from(is(&behind.folded(0), &vocabulary().line.seeds)));
    let behind = behind.after(usize::from(is(&behind.folded(0), &vocabulary().small.within)));
    let sign = (0..behind.len()).find(|at| matches!(behind.get(*at), Some(">" | "@")));
    let container = behind.joined(0, sign.unwrap_or(behind.len())).unwrap_or_default();
    if container.is_empty() {
        return Err(at_word(&behind, 0, "container", Reason::Envelope(Problem::Missing)));
    }
    let place = match sign {
        None => None,
        Some(at) => {
            let there = behind.after(at + 1);
            match sheet.longest_of(NameOf::Place, &there) {
                Some((place, taken)) => {
                    ends(&there, taken)?;
                    Some(place)
                }
                None => return Err(sheet.unknown_of(NameOf::Place, &there)),
            }
        }
    };
    let body = json!({"tray": tray, "lot": lot, "seeds": seeds, "container": container, "place": place});
    Ok(Some(("sown", body)))
}

/// What is said of a seed lot: how much is left, a germination test, a note, a hold.
pub(super) fn of_lot(lot: &str, rest: &Words) -> Result<Said, Fault> {
    let first = rest.folded(0);
    let first = first.trim_end_matches(':');
    let behind = rest.after(1);
    match first {
        word if is(word, &vocabulary().line.test) => tested(lot, &behind),
        word if is(word, &vocabulary().line.note) => Ok(("noted", json!({"about": lot, "text": behind.typed_from(0)}))),
        word if is(word, &vocabulary().line.held) => {
            Ok(("held", json!({"lot": lot, "why": or_not_said(behind.typed_from(0))})))
        }
        word if is(word, &vocabulary().line.released) => {
            let why = behind.typed_from(0);
            Ok(("released", json!({"lot": lot, "why": (!why.is_empty()).then_some(why)})))
        }
        word if word.starts_with(|letter: char| letter.is_ascii_digit()) => counted(lot, rest),
        _ => Err(not_understood(rest)),
    }
}

/// `300`, `300 seeds`, `250 g`.
fn counted(lot: &str, rest: &Words) -> Result<Said, Fault> {
    if is(&rest.folded(1), &vocabulary().line.grams) {
        ends(rest, 2)?;
        return Ok(("lot_counted", json!({"lot": lot, "mass_g": number_at(rest, 0, "mass_g")?})));
    }
    let seeds = count_at(rest, 0, "seeds")?;
    ends(rest, 1 + usize::from(is(&rest.folded(1), &vocabulary().line.seeds)))?;
    Ok(("lot_counted", json!({"lot": lot, "seeds": seeds})))
}

/// `41/50 43/50 28 days`: of each plate how many germinated and how many lay in it, then how long it ran.
fn tested(lot: &str, rest: &Words) -> Result<Said, Fault> {
    let (mut replicates, mut days) = (Vec::new(), None);
    for at in 0..rest.len() {
        let word = rest.get(at).unwrap_or_default();
        if is(&text::folded(word), &vocabulary().small.filler) {
            continue;
        }
        let count = |written: &str, field: &str| {
            amounts::read_count(written).map(|amount| amount.value).map_err(|reason| at_word(rest, at, field, reason))
        };
        match word.split_once('/') {
            Some((germinated, seeds)) => {
                let (germinated, seeds) = (count(germinated, "germinated")?, count(seeds, "seeds")?);
                replicates.push(json!({"seeds": seeds, "germinated": germinated}));
            }
            None if days.is_none() => days = Some(count_at(rest, at, "days")?),
            None => return Err(not_understood(&rest.after(at))),
        }
    }
    let missing = |field: &str| at_word(rest, rest.len(), field, Reason::Envelope(Problem::Missing));
    if replicates.is_empty() {
        return Err(missing("germinated"));
    }
    let days = days.ok_or_else(|| missing("days"))?;
    Ok(("lot_tested", json!({"lot": lot, "replicates": replicates, "days": days})))
}
