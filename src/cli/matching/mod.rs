//! `match`: the best plan of trays to beds over the coming weeks.

mod json;

use std::time::{Duration, Instant};

use super::answer::Ending;
use super::args::Match;
use super::run::{Exit, Run};
use super::why::{bed_of, show_page, tray_of};
use crate::base::{BedName, TrayCode};
use crate::page::Asked;
use crate::page::matching::matching;
use crate::reckon::Picture;
use crate::reckon::matching::{Ahead, ByHand, MOST_PLAN_WEEKS, NoMatch, PLAN_WEEKS, plan};
use crate::science::matching::Own;

/// After so long the best plan so far is the answer.
const LONGEST: Duration = Duration::from_secs(20);

/// Plans, and shows the plan.
pub(crate) fn run(run: &Run, asked: &Match) -> Result<Ending, Exit> {
    let desk = run.desk()?;
    let weeks = asked.weeks.unwrap_or(PLAN_WEEKS);
    if !(1..=MOST_PLAN_WEEKS).contains(&weeks) {
        return Err(Exit::refused(run.wording.match_weeks_outside(weeks, MOST_PLAN_WEEKS)));
    }
    let on = run.on.unwrap_or(run.now.today);
    let today = run.picture_ahead(&desk, on)?;
    let by_hand = by_hand(run, &today, asked)?;
    let ahead =
        Ahead::drawn(on, weeks, |day| if day == on { Ok(today.clone()) } else { run.picture_ahead(&desk, day) })?;
    let begun = Instant::now();
    let made = plan(&ahead, &by_hand, &Own, &mut |_| begun.elapsed() < LONGEST);
    let made = made.map_err(|fault| Exit::refused(no_match(run, &fault)))?;
    let shown = Asked { picture: ahead.today(), wording: &run.wording };
    if run.everywhere.json {
        return run.answer_json(&json::match_json(&made, shown));
    }
    show_page(run, ahead.today(), &matching(&made, shown))
}

fn no_match(run: &Run, fault: &NoMatch) -> String {
    match fault {
        NoMatch::TooManyOfTray { tray, pinned, there } => run.wording.match_pin_too_many_of_tray(tray, pinned, there),
        NoMatch::TooManyToBed { bed, pinned, open } => run.wording.match_pin_too_many_to_bed(bed, pinned, open),
        NoMatch::NeverFits { tray, bed } => run.wording.match_pin_never(tray, bed),
        NoMatch::TooLarge => run.wording.match_too_large(),
    }
}

/// What a person decided before, by names that the book knows.
fn by_hand(run: &Run, picture: &Picture, asked: &Match) -> Result<ByHand, Exit> {
    let mut by_hand = ByHand::default();
    for written in &asked.pin {
        let unreadable = || Exit::refused(run.wording.match_pin_unreadable(written, run.wording.match_pin_form()));
        let (pair, plants) = written.rsplit_once('=').ok_or_else(unreadable)?;
        let plants: u32 = plants.trim().parse().map_err(|_| unreadable())?;
        let (tray, bed) = pair_of(run, picture, pair)?.ok_or_else(unreadable)?;
        by_hand.pinned.push((tray, bed, plants));
    }
    for written in &asked.forbid {
        let unreadable = || Exit::refused(run.wording.match_pin_unreadable(written, run.wording.match_pair_form()));
        by_hand.forbidden.push(pair_of(run, picture, written)?.ok_or_else(unreadable)?);
    }
    for bed in &asked.leave_out {
        by_hand.left_out.push(bed_of(run, picture, bed)?.name.clone());
    }
    Ok(by_hand)
}

/// A tray and a bed, as "cof-021:Ridge 2".
fn pair_of(run: &Run, picture: &Picture, written: &str) -> Result<Option<(TrayCode, BedName)>, Exit> {
    let Some((tray, bed)) = written.split_once(':') else { return Ok(None) };
    let (Ok(tray), Ok(bed)) = (TrayCode::new(tray.trim()), BedName::new(bed.trim())) else { return Ok(None) };
    let (tray, bed) = (tray_of(run, picture, &tray)?, bed_of(run, picture, &bed)?);
    Ok(Some((tray.code.clone(), bed.name.clone())))
}
