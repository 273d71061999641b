//! Walk: today's round, stop by stop, in the order one walks.

mod closing;
mod large;
mod plan;
mod shapes;
mod usual;
mod view;

#[cfg(test)]
mod tests;

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use crate::dashboard::act::{Act, AtStop, FormFor, WhyOf};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::form::Form;
use crate::dashboard::keys::{Key, KeyAction, KeyLine, ON_A_TRAY, hinted, kind_for_tray, known};
use crate::dashboard::message::Request;
use crate::dashboard::screens::screen::Screen;
use crate::nursery::caution::Caution;
use crate::nursery::entry::Entry;
use crate::nursery::entry::subject::{Subject, subjects};
use crate::reckon::picture::Looking;
use crate::reckon::round::to_write::LET_GO_DAYS;
use crate::reckon::round::{Stop, Task, Where};
use plan::{Mark, Plan, Planned};

/// The name under which the round is kept on disk.
const KEPT_ROUND: &str = "screen_walk";
/// Below this width one stop fills the screen by itself: a list and what is said of a stop have no room there.
const ONE_STOP_BELOW: u16 = 60;
/// Stops that a page key passes.
const PAGE: isize = 8;

/// The screen.
#[derive(Debug, Default)]
pub(crate) struct Walk {
    plan: Option<Plan>,
    /// The chosen stop on a day that has no plan: one that is only looked at.
    looked_at: Option<String>,
    /// Whether those that can wait are shown.
    with_rest: bool,
    /// The stop that was chosen before those that can wait were shown.
    before_rest: Option<String>,
    /// Whether a person chose that one stop fills the screen, or that it does not.
    one_stop_chosen: Option<bool>,
    /// Whether a stop that is behind one is looked at once more after the last.
    looks_back: bool,
    /// How far the detail is scrolled.
    detail_from: usize,
    /// Parts of stops that were handed in and not answered yet: beds, nurse plants.
    passed: BTreeMap<String, Vec<String>>,
    kept: String,
}

/// A stop as it is shown: of the plan, of those that can wait, or of a day only looked at.
pub(crate) struct Shown<'a> {
    /// Its id.
    pub(crate) id: &'a str,
    /// What there is to do.
    pub(crate) task: Task,
    /// What it is about.
    pub(crate) subject: Subject,
    /// Where it is.
    pub(crate) at: Where,
    /// The sign of the place.
    pub(crate) place_sign: Option<&'a str>,
    /// The tray's own sign.
    pub(crate) tray_sign: Option<&'a str>,
    /// How far it is.
    pub(crate) mark: Mark,
    /// What was written here.
    pub(crate) message: &'a str,
    /// What was written here before that, where it was done once more.
    pub(crate) message_before: &'a str,
    /// Whether it came up since the round was planned.
    pub(crate) is_new: bool,
    /// The stop itself, while it is due.
    pub(crate) due: Option<&'a Stop>,
    /// Whether it can wait.
    pub(crate) waits: bool,
}

impl<'a> Shown<'a> {
    fn of_stop(stop: &'a Stop, waits: bool, is_new: bool) -> Shown<'a> {
        Shown {
            id: &stop.id,
            task: stop.task,
            subject: stop.subject.clone(),
            at: stop.at.clone(),
            place_sign: stop.place_sign.as_deref(),
            tray_sign: stop.tray_sign.as_deref(),
            mark: Mark::Open,
            message: "",
            message_before: "",
            is_new,
            due: Some(stop),
            waits,
        }
    }

    fn of_plan(planned: &'a Planned, due: Option<&'a Stop>) -> Shown<'a> {
        Shown {
            id: &planned.id,
            task: planned.task,
            subject: planned.subject(),
            at: planned.place(),
            place_sign: planned.place_sign.as_deref(),
            tray_sign: planned.tray_sign.as_deref(),
            mark: planned.mark,
            message: &planned.said,
            message_before: &planned.said_before,
            is_new: false,
            due,
            waits: false,
        }
    }

    /// Whether it is still to be done.
    pub(crate) fn is_to_do(&self) -> bool {
        match self.mark {
            Mark::Open | Mark::Skipped => true,
            Mark::Sent | Mark::Done | Mark::Over => false,
        }
    }

    /// Whether it loses most by waiting and is still to be done.
    pub(crate) fn loses_most(&self) -> bool {
        self.is_to_do() && self.due.is_some_and(|stop| stop.marked)
    }
}

/// Whether a list has no room beside or above what is to be said of a stop.
fn is_narrow(cx: &ScreenContext<'_>) -> bool {
    cx.size.0 < ONE_STOP_BELOW
}

/// Whether there is neither a tray nor a bed yet.
fn is_new(cx: &ScreenContext<'_>) -> bool {
    cx.book.picture.trays.is_empty() && cx.book.picture.beds.is_empty()
}

impl Walk {
    /// Whether one stop fills the screen: as chosen, else by itself where there is little room.
    fn is_one_stop(&self, cx: &ScreenContext<'_>) -> bool {
        self.one_stop_chosen.unwrap_or_else(|| is_narrow(cx))
    }

    /// The plan, where the day shown is the one it is for.
    fn plan_shown(&self, cx: &ScreenContext<'_>) -> Option<&Plan> {
        let today = cx.book.picture.looking == Looking::Today;
        self.plan.as_ref().filter(|plan| today && plan.day == cx.day())
    }

    /// Every stop shown, in order; those that can wait last, where they are shown.
    pub(crate) fn shown<'a>(&'a self, cx: &ScreenContext<'a>) -> Vec<Shown<'a>> {
        let round = &cx.book.round;
        let Some(plan) = self.plan_shown(cx) else {
            let mut all: Vec<Shown<'a>> = round.stops.iter().map(|stop| Shown::of_stop(stop, false, false)).collect();
            if self.with_rest {
                all.extend(round.can_wait.iter().map(|stop| Shown::of_stop(stop, true, false)));
            }
            return all;
        };
        let due: BTreeMap<&str, &Stop> =
            round.stops.iter().chain(&round.can_wait).map(|stop| (stop.id.as_str(), stop)).collect();
        let mut all: Vec<Shown<'a>> =
            plan.stops.iter().map(|stop| Shown::of_plan(stop, due.get(stop.id.as_str()).copied())).collect();
        if self.with_rest {
            all.extend(self.rest(cx).into_iter().map(|stop| Shown::of_stop(stop, true, plan.is_new(&stop.id))));
        }
        all
    }

    /// What is due and not in the plan: it can wait.
    pub(crate) fn rest<'a>(&self, cx: &ScreenContext<'a>) -> Vec<&'a Stop> {
        let round = &cx.book.round;
        match self.plan_shown(cx) {
            None => round.can_wait.iter().collect(),
            Some(plan) => round.stops.iter().chain(&round.can_wait).filter(|stop| !plan.holds(&stop.id)).collect(),
        }
    }

    /// How many of those that can wait came up since the round was planned.
    pub(crate) fn new_stops(&self, cx: &ScreenContext<'_>) -> usize {
        let plan = self.plan_shown(cx);
        plan.map_or(0, |plan| self.rest(cx).iter().filter(|stop| plan.is_new(&stop.id)).count())
    }

    /// The id of the chosen stop.
    fn at<'a>(&'a self, cx: &ScreenContext<'a>) -> Option<&'a str> {
        let chosen =
            if self.plan_shown(cx).is_some() { self.plan.as_ref()?.at.as_deref() } else { self.looked_at.as_deref() };
        let shown = self.shown(cx);
        let here = chosen.and_then(|id| shown.iter().find(|stop| stop.id == id));
        here.or(shown.first()).map(|stop| stop.id)
    }

    /// The chosen stop.
    pub(crate) fn here<'a>(&'a self, cx: &ScreenContext<'a>) -> Option<Shown<'a>> {
        let at = self.at(cx)?;
        self.shown(cx).into_iter().find(|stop| stop.id == at)
    }

    /// What the stops before one say in full of what could hurt: behind them it is said in short.
    fn cautions_before(&self, stop: &Shown<'_>, cx: &ScreenContext<'_>) -> BTreeSet<Caution> {
        let shown = self.shown(cx);
        let before = shown.iter().take_while(|one| one.id != stop.id);
        before.filter_map(|one| one.due).flat_map(Stop::cautions).collect()
    }

    /// Stops behind one and all of them.
    pub(crate) fn progress(&self, cx: &ScreenContext<'_>) -> (usize, usize) {
        match self.plan_shown(cx) {
            Some(plan) => plan.progress(),
            None => (0, cx.book.round.stops.len()),
        }
    }

    /// Goes to a stop.
    pub(crate) fn go(&mut self, id: &str, cx: &ScreenContext<'_>) {
        self.detail_from = 0;
        let planned = self.plan_shown(cx).is_some();
        match &mut self.plan {
            Some(plan) if planned => plan.at = Some(id.to_string()),
            Some(_) | None => self.looked_at = Some(id.to_string()),
        }
    }

    fn step(&mut self, by: isize, cx: &ScreenContext<'_>) -> Vec<Act> {
        self.looks_back = true;
        let shown = self.shown(cx);
        let at = self.at(cx).and_then(|id| shown.iter().position(|stop| stop.id == id)).unwrap_or(0);
        let last = shown.len().saturating_sub(1);
        let next = at.saturating_add_signed(by).min(last);
        if let Some(id) = shown.get(next).map(|stop| stop.id.to_string()) {
            drop(shown);
            self.go(&id, cx);
        }
        self.keep()
    }

    /// Goes on to the next stop that is to be done; false where none is.
    pub(crate) fn go_on(&mut self, cx: &ScreenContext<'_>) -> bool {
        let Some(id) = self.at(cx).map(str::to_string) else { return false };
        let next = self.plan_shown(cx).and_then(|plan| plan.next_after(&id));
        match next {
            Some(next) => {
                self.go(&next, cx);
                true
            }
            None => false,
        }
    }

    /// Shows what can wait, from its first stop on, or hides it again.
    fn show_rest(&mut self, shown: bool, cx: &ScreenContext<'_>) {
        self.with_rest = shown;
        let first = self.rest(cx).first().map(|stop| stop.id.clone());
        let before = std::mem::take(&mut self.before_rest);
        if shown {
            self.before_rest = self.at(cx).map(str::to_string);
        }
        if let Some(id) = if shown { first } else { before } {
            self.go(&id, cx);
        }
    }

    fn skip(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        let Some(id) = self.at(cx).map(str::to_string) else { return Vec::new() };
        if self.plan_shown(cx).is_none() {
            return self.step(1, cx);
        }
        let stop = self.plan.as_mut().and_then(|plan| plan.stop_mut(&id));
        let is_behind = stop.as_ref().is_some_and(|stop| stop.is_behind());
        if let Some(stop) = stop.filter(|stop| stop.mark == Mark::Open) {
            stop.mark = Mark::Skipped;
            self.go_on(cx);
        } else if !(is_behind && self.go_on(cx)) {
            // From what is behind one it goes to what is not.
            return self.step(1, cx);
        }
        self.keep()
    }

    /// What the walk keeps on disk, where it is otherwise than before.
    fn keep(&mut self) -> Vec<Act> {
        let text = self.plan.as_ref().map(Plan::kept).unwrap_or_default();
        if text == self.kept {
            return Vec::new();
        }
        self.kept.clone_from(&text);
        vec![Act::Ask(Request::keep(KEPT_ROUND, text))]
    }

    /// The form of the usual action at a stop.
    fn usual(&self, stop: &Shown<'_>, cx: &ScreenContext<'_>) -> FormFor {
        let passed = self.passed.get(stop.id).map(Vec::as_slice).unwrap_or_default();
        match stop.due {
            Some(due) => usual::usual(due, passed, cx),
            // What is done already is written once more: a second count corrects the first.
            None => {
                FormFor::about(stop.task.facts().kind, Some(&stop.subject)).at_stop(AtStop::Task(stop.id.to_string()))
            }
        }
    }

    /// The form of a letter at the chosen stop.
    pub(crate) fn letter(&self, kind: &str, cx: &ScreenContext<'_>) -> Option<FormFor> {
        let stop = self.here(cx)?;
        let about_any = kind == "noted";
        if !about_any && !matches!(stop.subject, Subject::Tray(_)) {
            return None;
        }
        let usual = self.usual(&stop, cx);
        if usual.kind == kind {
            return Some(usual);
        }
        let form = match stop.due {
            Some(due) => usual::beside(kind, due, cx),
            None => FormFor::about(kind, Some(&stop.subject)),
        };
        let fits = stop.task.facts().is_done_by(kind);
        let id = stop.id.to_string();
        Some(form.at_stop(if fits { AtStop::Task(id) } else { AtStop::Beside(id) }))
    }

    fn let_go(&self, cx: &ScreenContext<'_>) -> Option<FormFor> {
        let stop = self.here(cx)?;
        let until = cx.book.now.today.plus(LET_GO_DAYS);
        let mut form = FormFor::about("let_go", None).with("task", stop.id).with("until", until);
        form.stop = AtStop::Task(stop.id.to_string());
        form.begin_at = Some("until".to_string());
        Some(form)
    }

    fn open_usual(&mut self, cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        if self.is_over(cx) {
            let waits = !self.rest(cx).is_empty();
            self.show_rest(waits, cx);
            self.looks_back = true;
            return waits.then(Vec::new);
        }
        // A new book is begun with what stands there.
        if is_new(cx) {
            return None;
        }
        let stop = self.here(cx)?;
        let form = self.usual(&stop, cx);
        Some(vec![Act::Form(form)])
    }
}

impl Screen for Walk {
    fn keys(&self, cx: &ScreenContext<'_>) -> Vec<KeyLine> {
        let today = cx.book.picture.looking == Looking::Today;
        // On another day nothing is written.
        let writes = |line: KeyLine| KeyLine { hinted: today, ..line };
        if self.is_over(cx) {
            return vec![hinted("Enter", KeyAction::RestOfRound), hinted("v", KeyAction::OneStop)];
        }
        let mut keys = vec![writes(hinted("Enter", KeyAction::Usual)), writes(hinted("Space", KeyAction::Skip))];
        let on_tray = today && matches!(self.chosen(cx), Some(Subject::Tray(_)));
        keys.push(if on_tray { hinted("l", KeyAction::Lost) } else { known("l", KeyAction::Lost) });
        keys.push(hinted("v", KeyAction::OneStop));
        keys.push(hinted("+", KeyAction::RestOfRound));
        keys.push(known("r", KeyAction::LetGo));
        keys.extend(ON_A_TRAY.iter().filter(|line| line.keys != "l"));
        keys
    }

    fn signs(&self, cx: &ScreenContext<'_>) -> Vec<(String, String)> {
        let wording = cx.wording;
        let all = [
            ("!", wording.sign_loses_most()),
            ("√", wording.walk_done()),
            ("~", wording.sign_sent()),
            (">", wording.walk_skipped()),
            ("*", wording.sign_new()),
            ("-", wording.sign_over()),
        ];
        all.map(|(sign, means)| (sign.to_string(), means)).to_vec()
    }

    fn answers(&self, cx: &ScreenContext<'_>) -> String {
        cx.wording.answers_walk()
    }

    fn goes_back(&self, cx: &ScreenContext<'_>) -> bool {
        self.one_stop_chosen == Some(true) && !is_narrow(cx)
    }

    fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        match key {
            Key::Esc | Key::Char('q') if self.goes_back(cx) => self.one_stop_chosen = None,
            Key::Char('v') => self.one_stop_chosen = Some(!self.is_one_stop(cx)),
            Key::Up => return Some(self.step(-1, cx)),
            Key::Down => return Some(self.step(1, cx)),
            Key::PageUp | Key::Char(',') => return Some(self.step(-PAGE, cx)),
            Key::PageDown | Key::Char('.') => return Some(self.step(PAGE, cx)),
            Key::Home => return Some(self.step(isize::MIN, cx)),
            Key::End => return Some(self.step(isize::MAX, cx)),
            Key::Right => self.detail_from = (self.detail_from + 1).min(self.detail_end(cx)),
            Key::Left => self.detail_from = self.detail_from.saturating_sub(1),
            Key::Char('+' | '-') => {
                self.looks_back = true;
                self.show_rest(key == Key::Char('+') && !self.with_rest, cx);
            }
            Key::Char(' ') => return Some(self.skip(cx)),
            // Where nothing is due there is always something to write.
            Key::Enter => return Some(self.open_usual(cx).unwrap_or_else(|| vec![Act::Kinds])),
            Key::Char('r') => return Some(self.let_go(cx).map(Act::Form).into_iter().collect()),
            Key::Char(letter) => {
                let form = kind_for_tray(letter).and_then(|kind| self.letter(kind, cx))?;
                return Some(vec![Act::Form(form)]);
            }
            Key::Esc
            | Key::Tab
            | Key::BackTab
            | Key::Backspace
            | Key::Delete
            | Key::ClearLine
            | Key::Redraw
            | Key::Suspend
            | Key::Interrupt => return None,
        }
        Some(Vec::new())
    }

    fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        if self.is_one_stop(cx) {
            large::draw(self, None, cx, area, buffer);
        } else {
            view::draw(self, cx, area, buffer);
        }
    }

    fn draw_form(&self, form: &Form, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) -> bool {
        // A form about something else, as a line in own words opens it, shows itself what it is about.
        let of_stop = form.stop().id().is_some() && form.stop().id() == self.at(cx);
        let fits = self.is_one_stop(cx) && of_stop && form.figure_typed().is_some();
        if fits {
            large::draw(self, Some(form), cx, area, buffer);
        }
        fits
    }

    fn chosen(&self, cx: &ScreenContext<'_>) -> Option<Subject> {
        self.here(cx).map(|stop| stop.subject)
    }

    fn why(&self, cx: &ScreenContext<'_>) -> Option<WhyOf> {
        let stop = self.here(cx)?;
        Some(if stop.due.is_some() { WhyOf::Stop(stop.id.to_string()) } else { WhyOf::About(stop.subject) })
    }

    fn go_to(&mut self, subject: &Subject, cx: &ScreenContext<'_>) -> bool {
        let found = self.shown(cx).iter().find(|stop| stop.subject == *subject).map(|stop| stop.id.to_string());
        if let Some(id) = &found {
            self.looks_back = true;
            self.go(id, cx);
        }
        found.is_some()
    }

    fn tap(&mut self, line: &str, cx: &ScreenContext<'_>) -> bool {
        let named: Vec<String> = {
            let shown = self.shown(cx);
            let here = shown.iter().filter(|stop| line.contains(&view::short_about(stop, cx)));
            here.map(|stop| stop.id.to_string()).collect()
        };
        // The same work at several beds stands in lines that say the same: the next one is meant.
        let at = self.at(cx).and_then(|id| named.iter().position(|one| one == id));
        let next = at.filter(|_| named.len() > 1).map_or(0, |at| (at + 1) % named.len());
        let Some(id) = named.get(next) else { return false };
        self.looks_back = true;
        self.go(id, cx);
        true
    }

    fn choice(&self, cx: &ScreenContext<'_>) -> Option<String> {
        self.at(cx).map(str::to_string)
    }

    fn handed_in(&mut self, stop: &AtStop, kind: &str, message: &str, cx: &ScreenContext<'_>) -> Vec<Act> {
        let Some(id) = stop.id() else { return Vec::new() };
        self.looks_back = false;
        let round = &cx.book.round;
        let due = round.stops.iter().chain(&round.can_wait).find(|due| due.id == id);
        let Some(plan) = &mut self.plan else { return Vec::new() };
        if let Some(due) = due {
            plan.take_in(due, &cx.book.picture);
        }
        let Some(planned) = plan.stop_mut(id) else { return Vec::new() };
        // What is done once more says its last result and the one before; parts of a stop, and what is written beside it, stand one
        // behind the other.
        let again = matches!(stop, AtStop::Task(_)) && planned.is_behind();
        if again {
            planned.said_before = std::mem::take(&mut planned.said);
        }
        if planned.said.is_empty() {
            planned.said = message.to_string();
        } else {
            planned.said = format!("{}; {message}", planned.said);
        }
        if let AtStop::Beside(_) = stop {
            // The water of a step whose light is behind one ends the stop.
            if kind == "watering_set" && matches!(planned.mark, Mark::Sent | Mark::Done) {
                self.go_on(cx);
            }
            return self.keep();
        }
        if let Some(water) = due.and_then(|due| usual::water_of_step(due, kind)) {
            planned.mark = Mark::Sent;
            plan.at = Some(id.to_string());
            let mut acts = self.keep();
            acts.push(Act::Form(water.at_stop(AtStop::Beside(id.to_string()))));
            return acts;
        }
        // What is let go has no parts that are still to come.
        let parts = due.filter(|_| kind != "let_go").map(|due| usual::parts(due, cx)).unwrap_or_default();
        let passed = self.passed.entry(id.to_string()).or_default();
        if let Some(part) = parts.iter().find(|part| !passed.contains(part)) {
            passed.push(part.clone());
        }
        let more = parts.iter().any(|part| !passed.contains(part));
        if !more {
            planned.mark = Mark::Sent;
            plan.at = Some(id.to_string());
            self.go_on(cx);
        }
        self.keep()
    }

    fn came_back(&mut self, stop: &AtStop, cx: &ScreenContext<'_>) -> Vec<Act> {
        let Some(id) = stop.id() else { return Vec::new() };
        self.passed.remove(id);
        if let Some(planned) = self.plan.as_mut().and_then(|plan| plan.stop_mut(id)) {
            // What stood there before it was handed in stands there again.
            planned.said = std::mem::take(&mut planned.said_before);
            if planned.mark == Mark::Sent {
                planned.mark = Mark::Open;
            }
        }
        self.go(id, cx);
        self.keep()
    }

    fn taken_back(&mut self, entries: &[Arc<Entry>], _cx: &ScreenContext<'_>) -> Vec<Act> {
        let Some(plan) = &mut self.plan else { return Vec::new() };
        let about: Vec<Subject> = entries.iter().flat_map(|entry| subjects(&entry.what)).collect();
        plan.forget_said_of(&about);
        self.keep()
    }

    fn written(&mut self, stop: &AtStop, cx: &ScreenContext<'_>) -> Vec<Act> {
        // What was written beside a task leaves the stop as it is.
        let AtStop::Task(stop) = stop else { return Vec::new() };
        let round = &cx.book.round;
        let due = round.stops.iter().chain(&round.can_wait).any(|due| due.id == *stop);
        let handed_in = self
            .plan
            .as_mut()
            .and_then(|plan| plan.stop_mut(stop))
            .is_some_and(|stop| matches!(stop.mark, Mark::Sent | Mark::Done));
        if let Some(plan) = self.plan.as_mut().filter(|_| handed_in) {
            plan.done(stop, due, cx.writing_day.is_some(), &cx.book.picture);
        }
        self.passed.remove(stop);
        self.keep()
    }

    fn refresh(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        if cx.book.picture.looking != Looking::Today {
            return Vec::new();
        }
        match self.plan.as_mut().filter(|plan| plan.day == cx.day()) {
            Some(plan) => {
                let was_open = plan.is_open_here();
                plan.look_again(&cx.book.round, &cx.book.picture);
                // What was written ended the stop one was sent to: nobody stays at it.
                if was_open && !plan.is_open_here() && !self.looks_back {
                    self.go_on(cx);
                }
            }
            None => self.plan = Some(Plan::of(&cx.book.round, &cx.book.picture)),
        }
        self.keep()
    }

    fn resume(&mut self, kept: &str, cx: &ScreenContext<'_>) {
        self.plan = Plan::read(kept).filter(|plan| plan.day == cx.book.now.today);
        if self.plan.is_some() {
            self.kept = kept.to_string();
        }
    }
}
