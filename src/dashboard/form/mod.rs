//! Forms: everything that can be written down, made from the tables of fields. What is typed is read by the same reader as
//! the command line's, judged by the same desk, and kept on disk until it is written.

mod begun;
mod care;
mod field;
mod outcome;
mod rows;
mod said;
mod suggest;
mod view;

use super::act::{Act, AtStop, FormFor, KeptForm, ScreenName};
use super::context::ScreenContext;
use super::keys::Key;
use super::parts::Typed;
use super::parts::days::{day_fault, read_day};
use crate::base::{Day, TrayCode};
use crate::desk::{Remark, read_typed};
use crate::nursery::entry::KindOfEntry;
use crate::nursery::entry::kind_of_entry;
use crate::nursery::entry::rules::one_only_of;
use crate::nursery::entry::shape::Shape;
use crate::nursery::envelope::Draft;
use crate::nursery::herbicide::has_no_wait;
use crate::reckon::effect::Effect as Outcome;
use crate::reckon::picture::Doubt;
pub(crate) use begun::{begun, begun_at, goes_with, where_to};
use field::FieldLine;
pub(crate) use outcome::outcome_words;

/// The name under which the newest half-filled form is kept on disk.
pub(crate) const KEPT_FORM: &str = "form";

/// What a push of the rod takes.
const TOGETHER_ROD: [&str; 4] = ["rod_mm", "push_kg", "depth_cm", "days_since_soaking"];

/// What the clerk found out about what is typed.
#[derive(Clone, PartialEq, Debug)]
pub(crate) enum Tried {
    /// Not asked, or not readable yet.
    Nothing,
    /// Asked; the answer is on its way.
    Waiting,
    /// It would do this.
    Does(Vec<Outcome>, Vec<Doubt>, Vec<Remark>),
    /// It would be refused.
    Refused(Vec<String>),
}

/// A form that is open.
#[derive(Clone, Debug)]
pub(crate) struct Form {
    known: &'static KindOfEntry,
    lines: Vec<FieldLine>,
    at: usize,
    day: Typed,
    stop: AtStop,
    screen: ScreenName,
    tried: Tried,
    ticket: u64,
    fault: Vec<String>,
    taken_up: bool,
    /// Whether a person was shown what would be doubted and has changed nothing since.
    sure: bool,
    /// What Enter made of what was typed, to be told.
    completed: Option<Completed>,
    /// Whether a person was asked for what may be left out and is better known: the container of plants moved on, the waiting time of
    /// what was used.
    asked_beside: bool,
}

/// What Enter took for what was typed.
#[derive(Clone, Debug)]
struct Completed {
    at: usize,
    typed: String,
    is: String,
}

impl Form {
    /// Opens a form; none for a kind nobody can write.
    pub(crate) fn open(asked: &FormFor) -> Option<Form> {
        let known = kind_of_entry(&asked.kind)?;
        let lines: Vec<FieldLine> = known
            .fields
            .iter()
            .map(|field| {
                let preset = asked.preset.iter().find(|(name, _)| name == field.name).map(|(_, value)| value.as_str());
                FieldLine::new(*field, preset.unwrap_or(""))
            })
            .collect();
        let mut form = Form {
            known,
            lines,
            at: 0,
            day: Typed::default(),
            stop: asked.stop.clone(),
            screen: ScreenName::Walk,
            tried: Tried::Nothing,
            ticket: 0,
            fault: Vec::new(),
            taken_up: false,
            sure: false,
            completed: None,
            asked_beside: false,
        };
        let wanted = asked.begin_at.as_ref().and_then(|name| form.place_of(name));
        form.at = wanted.or_else(|| form.first_missing()).or_else(|| form.first_empty()).unwrap_or(0);
        Some(form)
    }

    /// Opens a form where it was left.
    pub(crate) fn take_up(kept: &KeptForm) -> Option<Form> {
        let (preset, begin_at) = (kept.typed.clone(), kept.at.clone());
        let mut form = Form::open(&FormFor { kind: kept.kind.clone(), preset, begin_at, stop: kept.stop.clone() })?;
        form.day = Typed::of(&kept.day);
        form.lines.iter_mut().for_each(FieldLine::keep_typed);
        form.taken_up = true;
        Some(form)
    }

    /// The kind of entry.
    pub(crate) fn kind(&self) -> &'static str {
        self.known.kind
    }

    /// The field that has the keys; none where it is the day.
    pub(crate) fn field_with_keys(&self) -> Option<&'static str> {
        self.lines.get(self.at).map(|line| line.field.name)
    }

    /// The choices of the field that has the keys.
    #[cfg(test)]
    pub(crate) fn choices_with_keys(&self) -> Vec<&'static str> {
        self.lines.get(self.at).map_or_else(Vec::new, FieldLine::choices)
    }

    /// The stop it was opened from; empty where none.
    pub(crate) fn stop(&self) -> &AtStop {
        &self.stop
    }

    /// The screen it was opened from, which hears what becomes of it.
    pub(crate) fn screen(&self) -> ScreenName {
        self.screen
    }

    /// It was opened from a screen.
    pub(crate) fn opened_from(&mut self, screen: ScreenName) {
        self.screen = screen;
    }

    /// What is typed, to be kept; none where nothing was typed beyond what the form began with.
    pub(crate) fn to_keep(&self) -> Option<KeptForm> {
        let typed: Vec<(String, String)> = self
            .lines
            .iter()
            .filter(|line| !line.value().is_empty())
            .map(|line| (line.field.name.to_string(), line.value()))
            .collect();
        let touched = self.lines.iter().any(FieldLine::is_touched) || !self.day.is_empty();
        let day = self.day.text();
        let at = self.field_with_keys().map(str::to_string);
        touched.then(|| KeptForm { kind: self.kind().to_string(), typed, day, stop: self.stop.clone(), at })
    }

    /// The number of the last trial.
    pub(crate) fn ticket(&self) -> u64 {
        self.ticket
    }

    /// A trial is on its way.
    pub(crate) fn trying(&mut self, ticket: u64) {
        self.ticket = ticket;
        self.tried = Tried::Waiting;
    }

    /// The trial's answer.
    pub(crate) fn tried(&mut self, tried: Tried) {
        self.tried = tried;
    }

    /// It came back: why it was not written.
    pub(crate) fn refused(&mut self, lines: Vec<String>) {
        self.fault = lines;
    }

    /// Whether a person was shown what would be doubted, and wants it written all the same.
    pub(crate) fn is_sure(&self) -> bool {
        self.sure
    }

    /// What would be doubted is shown; the next Enter writes it all the same.
    pub(crate) fn ask(&mut self, wording: &crate::wording::Wording) {
        self.sure = true;
        self.fault = vec![wording.form_enter_again()];
    }

    /// A person said yes already.
    pub(crate) fn be_sure(&mut self) {
        self.sure = true;
    }

    /// The drafts that what is typed makes; the error is what to tell the person, and the field to mend is chosen.
    pub(crate) fn drafts(&self, cx: &ScreenContext<'_>, who: &str) -> Result<Vec<Draft>, (Option<usize>, String)> {
        let today = cx.book.now.today;
        let day = self.happened(cx).map_err(|message| (Some(self.lines.len()), message))?;
        if let Some(at) = self.first_missing() {
            let name = cx.wording.title_in_form(self.kind(), self.lines[at].field.name);
            return Err((Some(at), cx.wording.form_missing(name)));
        }
        let filled: Vec<usize> = (0..self.lines.len()).filter(|i| !self.lines[*i].value().is_empty()).collect();
        let mut pairs = Vec::with_capacity(filled.len() + 1);
        for i in &filled {
            let line = &self.lines[*i];
            if line.names_no_rows() {
                return Err((Some(*i), cx.wording.form_rows_not_read(line.value())));
            }
            if line.field.shape == Shape::Day
                && let Err(reason) = read_day(&line.value(), today)
            {
                return Err((Some(*i), day_fault(&line.value(), &reason, cx.wording)));
            }
            pairs.push(format!("{}={}", line.field.name, line.for_reader(today)));
        }
        pairs.push(format!("happened={day}"));
        let draft = read_typed(self.kind(), &pairs, today, who).map_err(|fault| {
            let at = fault.pair.and_then(|pair| filled.get(pair - 1).copied());
            (at, cx.wording.form_fault(self.kind(), &fault))
        })?;
        Ok(vec![draft])
    }

    /// The day it happened: as typed, else the day for what is written, else today.
    fn happened(&self, cx: &ScreenContext<'_>) -> Result<Day, String> {
        let today = cx.book.now.today;
        if self.day.is_empty() {
            return Ok(cx.writing_day.unwrap_or(today));
        }
        let written = self.day.text();
        let day = read_day(&written, today).map_err(|reason| day_fault(&written, &reason, cx.wording))?;
        if day > today { Err(cx.wording.day_not_coming()) } else { Ok(day) }
    }

    fn place_of(&self, name: &str) -> Option<usize> {
        self.lines.iter().position(|line| line.field.name == name)
    }

    fn first_missing(&self) -> Option<usize> {
        self.lines.iter().position(|line| line.field.required && line.value().is_empty())
    }

    fn first_empty(&self) -> Option<usize> {
        self.lines.iter().position(|line| line.value().is_empty())
    }

    /// An entry about one thing only: what is typed in one of its fields takes the place of what another began with;
    /// once it is taken out, that comes back.
    fn keep_to_one(&mut self) {
        let here = self.field_with_keys().unwrap_or_default();
        let names: Vec<&str> = one_only_of(self.kind()).collect();
        if !names.contains(&here) {
            return;
        }
        let empty = self.lines.get(self.at).is_some_and(|line| line.value().is_empty());
        for line in &mut self.lines {
            if line.field.name != here && names.contains(&line.field.name) {
                if empty { line.come_back() } else { line.give_way() }
            }
        }
    }

    /// Takes text that came at once.
    pub(crate) fn text(&mut self, text: &str) -> Vec<Act> {
        match self.lines.get_mut(self.at) {
            Some(line) => line.insert(text),
            None => self.day.insert(text),
        }
        self.keep_to_one();
        self.fault.clear();
        self.sure = false;
        Vec::new()
    }

    /// Takes a key.
    pub(crate) fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Vec<Act> {
        self.fault.clear();
        self.sure &= key == Key::Enter;
        match key {
            Key::Esc => return vec![Act::Close],
            Key::Tab if self.light_for_readings().is_some() => self.put_into_light(),
            Key::Tab => {
                self.complete(cx);
                self.step(1);
            }
            Key::Down => self.step(1),
            Key::BackTab | Key::Up => self.step(-1),
            Key::Enter => return self.enter(cx),
            other => {
                let on_the_way = self.picks(cx);
                let before = self.lines.get(self.at).map(FieldLine::value);
                match self.lines.get_mut(self.at) {
                    Some(line) => line.press(other, &on_the_way),
                    None => {
                        self.day.press(other);
                    }
                }
                if before != self.lines.get(self.at).map(FieldLine::value) {
                    self.keep_to_one();
                }
            }
        }
        Vec::new()
    }

    /// A bare number among the pairs of lux of a reading of light: it is rather the share of the open light, percent.
    pub(super) fn light_for_readings(&self) -> Option<String> {
        let line = self.lines.get(self.at).filter(|_| self.kind() == "light_read")?;
        let typed = line.value();
        let share = typed.trim_end_matches('%').trim().replace(',', ".").parse::<f64>().ok()?;
        let is_open = self.typed("light_share").is_none();
        (line.field.name == "readings" && is_open && (0.0..=100.0).contains(&share)).then_some(typed)
    }

    fn put_into_light(&mut self) {
        let (Some(typed), Some(to)) = (self.light_for_readings(), self.place_of("light_share")) else { return };
        if let Some(line) = self.lines.get_mut(self.at) {
            line.fill("");
        }
        if let Some(line) = self.lines.get_mut(to) {
            line.fill(&typed);
        }
        self.at = to;
    }

    fn step(&mut self, by: isize) {
        let places = self.lines.len() as isize + 1;
        let next = |at: usize| (at as isize + by).rem_euclid(places) as usize;
        self.at = next(self.at);
        if self.is_hidden(self.at) {
            self.at = next(self.at);
        }
    }

    /// Whether a field is not shown: the task that is let go stands in the heading.
    fn is_hidden(&self, at: usize) -> bool {
        self.kind() == "let_go"
            && self.lines.get(at).is_some_and(|line| line.field.name == "task" && !line.value().is_empty())
    }

    /// Enter: adds the row that is typed, goes to what is missing, or writes.
    fn enter(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        if self.lines.get_mut(self.at).is_some_and(FieldLine::take_row) {
            return Vec::new();
        }
        let completed = self.complete(cx);
        // Fields that only together say something are gone through one after the other.
        if let Some(next) = self.next_together() {
            self.at = next;
            return Vec::new();
        }
        match self.first_missing() {
            Some(at) if at != self.at => {
                self.at = at;
                Vec::new()
            }
            // What was taken for what was typed is seen before it is written.
            Some(_) | None if completed => Vec::new(),
            None if self.asks_for_container(cx) => {
                self.ask_beside("container", cx.wording.form_no_container_asks());
                Vec::new()
            }
            None if self.asks_for_waiting_time() => {
                self.ask_beside("safe_after_days", cx.wording.form_no_waiting_time_asks());
                Vec::new()
            }
            Some(_) | None if self.raises_doubt() && !self.sure => {
                self.ask(cx.wording);
                self.first_doubt(cx).map(Act::Say).into_iter().collect()
            }
            Some(_) | None => vec![Act::Submit],
        }
    }

    /// Goes to a field that may be left out, and asks for it once.
    fn ask_beside(&mut self, field: &str, question: String) {
        self.mend(self.place_of(field), question);
        self.asked_beside = true;
    }

    /// Whether something was used, its waiting time is not written, and nobody was asked.
    fn asks_for_waiting_time(&self) -> bool {
        let with = self.typed("with").filter(|_| self.kind() == "treated" && !self.asked_beside);
        with.is_some_and(|with| !has_no_wait(&with)) && self.typed("safe_after_days").is_none()
    }

    /// Whether plants are moved on into a new tray, nobody said in what, and nobody was asked.
    fn asks_for_container(&self, cx: &ScreenContext<'_>) -> bool {
        let to = self.typed("to").and_then(|code| TrayCode::new(&code).ok());
        let is_there = to.is_some_and(|code| cx.book.picture.trays.contains_key(&code));
        self.kind() == "moved_on" && !self.asked_beside && !is_there && self.typed("container").is_none()
    }

    /// Takes the only name that fits what is typed; not again what a person has typed back.
    fn complete(&mut self, cx: &ScreenContext<'_>) -> bool {
        let others = |name: &str| self.typed(name);
        let picks = self.lines.get(self.at).map(|line| suggest::only_one_meant(line, self.kind(), &others, cx));
        let picks = picks.unwrap_or_default();
        let at = self.at;
        let Some(line) = self.lines.get_mut(at) else { return false };
        let typed = line.value();
        if self.completed.as_ref().is_some_and(|before| before.at == at && before.typed == typed) {
            return false;
        }
        let done = line.settle(&picks);
        if done {
            self.completed = Some(Completed { at, typed, is: line.value() });
        }
        done
    }

    /// The form with the name that is meant by the beginning of one, as Enter takes it.
    pub(crate) fn as_enter_takes_it(&self, cx: &ScreenContext<'_>) -> Form {
        let mut taken = self.clone();
        taken.complete(cx);
        taken
    }

    fn next_together(&self) -> Option<usize> {
        let together: &[&str] = if self.kind() == "soil_checked" { &TOGETHER_ROD } else { &[] };
        let name = self.lines.get(self.at)?.field.name;
        let at = together.iter().position(|wanted| *wanted == name)?;
        self.place_of(together.get(at + 1)?)
    }

    /// Moves to a field that has to be mended, and says why.
    pub(crate) fn mend(&mut self, at: Option<usize>, message: String) {
        if let Some(at) = at {
            self.at = at;
        }
        self.fault = vec![message];
    }

    /// The figures of a form for its field, where there are any: names that fit what is typed, causes used most.
    fn picks(&self, cx: &ScreenContext<'_>) -> Vec<String> {
        let others = |name: &str| self.typed(name);
        self.lines.get(self.at).map_or_else(Vec::new, |line| suggest::picks(line, self.kind(), &others, cx))
    }

    /// Its heading: the kind, and what it is about.
    pub(crate) fn heading(&self, cx: &ScreenContext<'_>) -> String {
        if let Some(task) = self.task_let_go(cx) {
            return if self.is_done_by_letting_go(cx) { task } else { cx.wording.let_go_heading(task) };
        }
        let name = cx.wording.kind_name(self.kind());
        let about = ["tray", "from", "lot", "bed", "place"]
            .iter()
            .filter_map(|wanted| self.place_of(wanted))
            .map(|at| self.lines[at].value())
            .find(|value| !value.is_empty());
        about.map_or_else(|| name.clone(), |about| format!("{name}: {about}"))
    }
}
