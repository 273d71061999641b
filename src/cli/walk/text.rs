//! The round for people: places in walking order, at each what to do, why, and what is lost without it.

use std::collections::BTreeMap;

use crate::cli::ready_text::page_top;
use crate::cli::sheet::{Ink, Sheet};
use crate::reckon::picture::Picture;
use crate::reckon::round::{Round, Stop, Task};
use crate::wording::Wording;
use crate::wording::round::RoundOn;

/// Days for which the closing line lets a task go.
const LET_GO_DAYS: i32 = 7;
/// Blanks before what is said of a stop.
const INDENT: usize = 4;

/// What `walk` prints. `width` is kept within 40 to 200 columns; colours only where `colour`.
pub fn walk_text(round: &Round, picture: &Picture, wording: &Wording, width: usize, colour: bool) -> String {
    let mut page = WalkPage { picture, wording, sheet: Sheet::new(width, colour) };
    page_top(picture, wording, &mut page.sheet);
    page.heading(round);
    page.stops(&round.stops);
    page.rest(round);
    if picture.trays.is_empty() && picture.beds.is_empty() {
        page.teach();
    }
    page.sheet.finish()
}

struct WalkPage<'a> {
    picture: &'a Picture,
    wording: &'a Wording,
    sheet: Sheet,
}

impl WalkPage<'_> {
    fn heading(&mut self, round: &Round) {
        let wording = self.wording;
        if round.stops.is_empty() && round.can_wait.is_empty() {
            self.sheet.gap();
            self.sheet.paragraph(&wording.round_nothing(), Ink::Plain);
            return;
        }
        let minutes = wording.number(round.minutes.ceil(), 0);
        let allowed = wording.number(round.minutes_allowed, 0);
        self.sheet.heading(&wording.round_heading(round.stops.len() as i64, minutes, allowed));
        if round.stops.iter().any(|stop| stop.marked) {
            self.sheet.paragraph(&wording.round_mark_means(), Ink::Plain);
        }
    }

    /// The stops under the places they are at.
    fn stops(&mut self, stops: &[Stop]) {
        let mut here: Option<&Stop> = None;
        for stop in stops {
            if here.is_none_or(|before| before.at != stop.at || before.order.leg != stop.order.leg) {
                self.place(stop);
            }
            here = Some(stop);
            self.stop(stop);
        }
    }

    fn place(&mut self, stop: &Stop) {
        let wording = self.wording;
        let name = wording.stop_place(&stop.at, &stop.subject);
        let sign = stop.place_sign.as_ref().map(|sign| format!("  {}", wording.sign(sign))).unwrap_or_default();
        self.sheet.heading(&format!("{name}{sign}"));
    }

    fn stop(&mut self, stop: &Stop) {
        let wording = self.wording;
        let on = RoundOn { day: self.picture.day, species: &self.picture.site.species };
        let why = wording.round_reason(&stop.why, on);
        let sign = stop.tray_sign.as_ref().map(|sign| format!(" {}", wording.sign(sign))).unwrap_or_default();
        let (mark, ink) = if stop.marked { ("! ", Ink::Danger) } else { ("- ", Ink::Plain) };
        self.sheet.hanging(
            mark,
            ink,
            &format!("{}{sign}: {why}", wording.stop_about(stop.task, &stop.subject, self.picture)),
            Ink::Plain,
        );
        let figures = self.figures(stop);
        if !figures.is_empty() {
            self.sheet.indented(INDENT, &figures.join("; "), Ink::Plain);
        }
    }

    /// The last figure, what to expect, until when, and what is lost.
    fn figures(&self, stop: &Stop) -> Vec<String> {
        let wording = self.wording;
        let last = wording.stop_last(stop).map(|(figure, day)| {
            let day = wording.day_beside(day, self.picture.day);
            wording.round_last(figure, day)
        });
        let expect = wording.stop_expect(stop).map(|said| {
            let is_good = stop.task == Task::GoOut;
            if is_good { wording.round_expect_good(said) } else { wording.round_expect(said) }
        });
        let until = stop.until.map(|day| wording.round_until(wording.day_beside(day, self.picture.day)));
        let lost = wording.lost_without(stop.at_stake);
        [last, expect, until, lost].into_iter().flatten().collect()
    }

    /// What can wait in one line, and how to let a task go.
    fn rest(&mut self, round: &Round) {
        let wording = self.wording;
        if !round.can_wait.is_empty() {
            let mut counted: BTreeMap<Task, usize> = BTreeMap::new();
            round.can_wait.iter().for_each(|stop| *counted.entry(stop.task).or_default() += 1);
            let mut counted: Vec<(Task, usize)> = counted.into_iter().collect();
            counted.sort_by_key(|(task, number)| (std::cmp::Reverse(*number), *task));
            let list: Vec<String> =
                counted.into_iter().map(|(task, number)| wording.tasks_counted(task, number)).collect();
            self.sheet.gap();
            let said = wording.round_can_wait(round.can_wait.len() as i64, list.join(", "));
            self.sheet.paragraph(&said, Ink::Plain);
        }
        let not_the_gauge = |stop: &&Stop| stop.task != Task::Gauge;
        if let Some(stop) = round.stops.iter().chain(&round.can_wait).find(not_the_gauge) {
            self.sheet.gap();
            let until = self.picture.day.plus(LET_GO_DAYS);
            self.sheet.paragraph(&wording.round_let_go(&stop.id, until), Ink::Plain);
        }
    }

    fn teach(&mut self) {
        self.sheet.gap();
        self.sheet.paragraph(&self.wording.teach_first_tray(), Ink::Plain);
        self.sheet.indented(2, &self.wording.teach_first_tray_command(), Ink::Bold);
        self.sheet.paragraph(&self.wording.teach_sheet(), Ink::Plain);
        self.sheet.indented(2, "outplant import trays.csv --as trays", Ink::Bold);
    }
}
