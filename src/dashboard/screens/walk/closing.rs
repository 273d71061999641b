//! The round in short, once every stop is behind one: what was done, counted, planted and lost, and what waits for tomorrow.

use super::plan::{Mark, Planned};
use super::{Shown, Walk, view};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::Sheet;
use crate::reckon::changes::tally::{Tally, counted_on_the_day};
use crate::reckon::round::Task;
use crate::reckon::round::to_write::LetGoBecause;

/// Stops that wait, named one by one; the rest is counted.
const WAITING_NAMED: usize = 3;

impl Walk {
    /// Whether every stop is behind one and nobody looks back at one of them.
    pub(super) fn is_over(&self, cx: &ScreenContext<'_>) -> bool {
        let (behind, all) = self.progress(cx);
        behind == all && all > 0 && !self.looks_back && self.plan_shown(cx).is_some()
    }

    /// The round in short, where it is over.
    pub(super) fn closing_shown(&self, cx: &ScreenContext<'_>, width: u16) -> Option<Sheet> {
        let plan = self.plan_shown(cx).filter(|_| self.is_over(cx))?;
        let (wording, picture) = (cx.wording, &cx.book.picture);
        let mut page = Sheet::new(width);
        page.paragraph(&wording.walk_closing(), Ink::Strong);
        let plants = |number: u64| wording.plants(i64::try_from(number).unwrap_or(i64::MAX));
        let (trays, counted) = counted_on_the_day(picture);
        if trays > 0 {
            page.paragraph(&wording.walk_counted_today(plants(counted), trays as i64), Ink::Plain);
        }
        let come = plan.before.map(|before| Tally::of(picture).since(before)).unwrap_or_default();
        if come.planted > 0 {
            page.paragraph(&wording.walk_planted_today(come.planted as i64), Ink::Plain);
        }
        if come.given_out > 0 {
            page.paragraph(&wording.walk_given_today(plants(come.given_out)), Ink::Plain);
        }
        // That nothing died is worth a line.
        page.paragraph(&wording.walk_lost_today(plants(come.lost)), Ink::Plain);
        if come.culled > 0 {
            page.paragraph(&wording.walk_culled_today(plants(come.culled)), Ink::Plain);
        }
        self.waiting(cx, &mut page);
        let is_let_go = |stop: &&Planned| was_let_go(&stop.id, &stop.said, cx);
        let behind = || plan.stops.iter().filter(|stop| stop.is_behind());
        let done = counted_by_task(behind().filter(|stop| stop.mark != Mark::Over && !is_let_go(stop)));
        if !done.is_empty() {
            let done: Vec<String> = done.iter().map(|(task, number)| wording.tasks_counted(*task, *number)).collect();
            page.gap();
            page.hanging("√ ", Ink::Good, &done.join(", "), Ink::Plain);
        }
        let let_go = behind().filter(is_let_go).count();
        if let_go > 0 {
            page.hanging("- ", Ink::Plain, &wording.walk_let_go_today(let_go as i64), Ink::Plain);
        }
        Some(page)
    }

    /// What waits for tomorrow, what loses most first.
    fn waiting(&self, cx: &ScreenContext<'_>, page: &mut Sheet) {
        let rest = self.rest(cx);
        if rest.is_empty() {
            return;
        }
        page.gap();
        page.paragraph(&cx.wording.walk_waits_for_tomorrow(rest.len() as i64), Ink::Strong);
        let first = rest.iter().filter(|stop| stop.marked).chain(rest.iter().filter(|stop| !stop.marked));
        for stop in first.take(WAITING_NAMED) {
            let (mark, ink) = if stop.marked { ("! ", Ink::Danger) } else { ("  ", Ink::Plain) };
            page.hanging(mark, ink, &view::short_about(&Shown::of_stop(stop, true, false), cx), Ink::Plain);
        }
        page.labelled("Enter", &cx.wording.key_does("rest_of_round"));
    }
}

/// Whether a task was let go on the day of the round: it is behind one and not done. Trays set apart, and seed of which nothing
/// comes, are written so too: that work is done.
pub(super) fn was_let_go(id: &str, said: &str, cx: &ScreenContext<'_>) -> bool {
    let picture = &cx.book.picture;
    let does_it = [LetGoBecause::SetApart, LetGoBecause::NothingComes];
    if does_it.into_iter().any(|because| said == cx.wording.let_go_because(because)) {
        return false;
    }
    picture.site.given_up.iter().any(|one| one.task == id && one.from == picture.day)
}

/// How many stops of each task were done, in walking order.
fn counted_by_task<'a>(stops: impl Iterator<Item = &'a Planned>) -> Vec<(Task, usize)> {
    let mut done: Vec<(Task, usize)> = Vec::new();
    for stop in stops {
        match done.iter_mut().find(|(task, _)| *task == stop.task) {
            Some((_, number)) => *number += 1,
            None => done.push((stop.task, 1)),
        }
    }
    done
}
