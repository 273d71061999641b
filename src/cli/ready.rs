//! `ready`: the main answer, and what changed in it since a day.

use super::answer::Ending;
use super::args::{Ready, Why};
use super::named::what_is_asked;
use super::ready_json::ReadyAnswer;
use super::run::{Exit, Run, day_asked};
use super::since::{Since, since_yesterday};
use super::why::{bed_of, show_page, tray_of};
use crate::base::Day;
use crate::desk::Desk;
use crate::page::Asked;
use crate::page::ready::ready;
use crate::page::today::today;
use crate::reckon::forecast::outlook;
use crate::reckon::picture::{Only, Picture};

/// Opens the nursery and shows it, or what changed since a day.
pub(crate) fn run(run: &Run, arguments: &Ready) -> Result<Ending, Exit> {
    let mut desk = run.desk()?;
    let named = match named(run, &mut desk, arguments)? {
        Some(Named::Ready(narrowed)) => Some(narrowed),
        // What stands at a place, what a lot is worth: `why` answers that.
        Some(Named::Why(why)) => return super::why::run(run, &why),
        None => None,
    };
    let arguments = named.as_ref().unwrap_or(arguments);
    match &arguments.since {
        Some(written) => {
            let day = day_asked(written, "--since", run.now.today, &run.wording)?;
            changed(run, &desk, day, arguments)
        }
        None => show(run, &desk, arguments),
    }
}

/// What a bare name asks for.
enum Named {
    /// The answer narrowed to a tray, a bed, or both.
    Ready(Ready),
    /// A place, a lot or a species, of which it has no answer of its own.
    Why(Why),
}

/// The answer narrowed to what alone bears a name.
fn named(run: &Run, desk: &mut Desk, arguments: &Ready) -> Result<Option<Named>, Exit> {
    if arguments.name.is_empty() {
        return Ok(None);
    }
    let (mut tray, mut bed) = (arguments.tray.clone(), arguments.bed.clone());
    match what_is_asked(run, desk, &arguments.name, (None, None), (false, false))? {
        Why::Tray { tray: named, .. } => tray = Some(named),
        Why::Bed { bed: named, .. } => bed = Some(named),
        Why::Pair { tray: one, bed: other, .. } => (tray, bed) = (Some(one), Some(other)),
        why @ (Why::Place { .. } | Why::Lot { .. } | Why::Species { .. }) if arguments.since.is_none() => {
            return Ok(Some(Named::Why(why)));
        }
        Why::Place { .. } | Why::Lot { .. } | Why::Species { .. } | Why::Named { .. } => {
            return Err(Exit::refused(run.wording.line_unknown_name(arguments.name.join(" "))));
        }
    }
    Ok(Some(Named::Ready(Ready {
        form: arguments.form.clone(),
        name: Vec::new(),
        since: arguments.since.clone(),
        tray,
        bed,
        fits: arguments.fits,
        all: arguments.all,
    })))
}

/// Shows which trays are ready for which bed.
pub(crate) fn show(run: &Run, desk: &Desk, arguments: &Ready) -> Result<Ending, Exit> {
    let picture = run.picture(desk)?;
    let only = only(run, desk, &picture, arguments)?;
    let shown = picture.narrowed(&only);
    if run.everywhere.json {
        let outlook = outlook(&picture, run.forecast_basis);
        let answer = ReadyAnswer { picture: &picture, shown: &shown, outlook: &outlook, wording: &run.wording };
        return run.answer_object(|out| answer.write(out));
    }
    let since = if only.is_everything() { since_yesterday(run, desk, &picture)? } else { None };
    let is_new = picture.trays.is_empty();
    let asked = Asked { picture: &shown, wording: &run.wording };
    let whole = arguments.all || is_new || !only.is_everything();
    let page = if whole { ready(asked, since, is_new, !picture.beds.is_empty()) } else { today(asked, since) };
    show_page(run, &shown, &page)
}

/// Shows every verdict that changed since the end of a day.
fn changed(run: &Run, desk: &Desk, day: Day, arguments: &Ready) -> Result<Ending, Exit> {
    let picture = run.picture(desk)?;
    let only = only(run, desk, &picture, arguments)?;
    let shown = picture.narrowed(&only);
    let mut since = Since::asked(run, day, desk, &picture)?;
    if !only.is_everything() {
        since.keep_those_of(&shown);
    }
    if run.everywhere.json {
        let outlook = outlook(&picture, run.forecast_basis);
        let answer = ReadyAnswer { picture: &picture, shown: &shown, outlook: &outlook, wording: &run.wording };
        return run.answer_object(|out| {
            answer.write(out)?;
            out.field("since", day)?;
            out.field("changes", since.json())
        });
    }
    run.answer(&since.text(run.around.columns, run.around.colour))
}

/// What the answer is narrowed to, by names the book knows.
fn only(run: &Run, desk: &Desk, picture: &Picture, arguments: &Ready) -> Result<Only, Exit> {
    let tray = arguments.tray.as_ref().map(|tray| tray_of(run, picture, &desk.fold().ledger().tray_now(tray)));
    let bed = arguments.bed.as_ref().map(|bed| bed_of(run, picture, bed));
    Ok(Only {
        tray: tray.transpose()?.map(|tray| tray.code.clone()),
        bed: bed.transpose()?.map(|bed| bed.name.clone()),
        fits: arguments.fits,
    })
}

#[cfg(test)]
#[path = "ready_tests.rs"]
mod tests;
