//! A form outside its own drawing: what it says in a few words, the field that has the keys, its fields one by one.

use super::field::share_of;
use super::{Form, Outcome, Tried, outcome_words};
use crate::base::TrayCode;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::Key;
use crate::dashboard::parts::days::read_day;
use crate::desk::{DeskError, Refusal, Remark};
use crate::nursery::entry::shape::{Field, Shape};
use crate::reckon::round::to_write::LetGoBecause;
use crate::reckon::sample_progress::sample_progress;

/// Fields that say what the form is about and not what was found.
const ABOUT: [&str; 6] = ["tray", "from", "lot", "bed", "place", "about"];
/// Fields whose value says enough without their name.
const NAMELESS: [&str; 5] = ["bed", "place", "container", "count", "for_bed"];
/// Fields of how many: what the books cannot hold stands in the first that is filled.
const COUNTS: [&str; 5] = ["count", "standing", "alive", "seeds", "share_pct"];
/// The longest summary, in letters.
const LONGEST: usize = 60;

/// Whether a reading of light contradicts those before it: read again, it may be another.
fn contradicts(effect: &Outcome) -> bool {
    matches!(effect, Outcome::Light { is: Some((_, Some(_))), .. })
}

impl Form {
    /// What is typed in a few words: "Living 41, Found dead 2".
    pub(crate) fn summary(&self, cx: &ScreenContext<'_>) -> String {
        let wording = cx.wording;
        if self.kind() == "let_go" {
            return self.let_go_summary(cx);
        }
        let about = self.about_place();
        // How seedlings were moved the task says already.
        let says = |at: usize, name: &str| Some(at) != about && name != "how";
        let filled =
            self.lines.iter().enumerate().filter(|(at, line)| says(*at, line.field.name) && !line.value().is_empty());
        let parts: Vec<String> = filled
            .map(|(_, line)| {
                let value = line.value();
                match line.field.shape {
                    Shape::Word(_) | Shape::Flag => wording.choice_name(&value),
                    Shape::List(Shape::Record(_)) => wording.form_rows(value.split(';').count() as i64),
                    Shape::Text => wording.text_told(&value),
                    Shape::Species => value,
                    // The name of a bed or a place says itself what it is, and so does how many.
                    Shape::Code(_) | Shape::Count if NAMELESS.contains(&line.field.name) => value,
                    Shape::Number { .. } if line.is_share() => {
                        let title = wording.field_title_of(self.kind(), line.field.name);
                        let name = title.split(", ").next().unwrap_or_default().to_string();
                        let said = share_of(&value).map_or(value, |share| wording.percent(share));
                        format!("{name} {said}")
                    }
                    Shape::Code(_)
                    | Shape::Count
                    | Shape::Number { .. }
                    | Shape::Day
                    | Shape::MonthDay
                    | Shape::Clock
                    | Shape::Spot
                    | Shape::Entry
                    | Shape::List(_)
                    | Shape::Record(_)
                    | Shape::Open => {
                        let title = wording.field_title_of(self.kind(), line.field.name);
                        match title.rsplit_once(", ") {
                            Some((name, unit)) => format!("{name} {value} {unit}"),
                            None => format!("{title} {value}"),
                        }
                    }
                }
            })
            .collect();
        let message = if parts.is_empty() { self.heading(cx) } else { parts.join(", ") };
        crate::dashboard::parts::Sheet::shortened(&message, LONGEST)
    }

    /// What the form is called: its kind, or the task that is done by letting it go.
    pub(crate) fn called(&self, cx: &ScreenContext<'_>) -> String {
        let task = self.task_let_go(cx).filter(|_| self.is_done_by_letting_go(cx));
        task.unwrap_or_else(|| cx.wording.kind_name(self.kind()))
    }

    /// What is written, for the line that says it is saved: the kind, what it is about, and what was typed.
    pub(crate) fn told(&self, cx: &ScreenContext<'_>) -> String {
        let (heading, summary) = (self.heading(cx), self.summary(cx));
        match self.task_let_go(cx) {
            Some(_) if self.is_done_by_letting_go(cx) => heading,
            Some(task) => format!("{task}: {summary}"),
            None if heading == summary => heading,
            None => format!("{heading}: {summary}"),
        }
    }

    /// The task that is let go, in words.
    pub(super) fn task_let_go(&self, cx: &ScreenContext<'_>) -> Option<String> {
        self.typed("task").filter(|_| self.kind() == "let_go").map(|task| cx.wording.task_told(&task))
    }

    /// Whether the task is done by what is written: trays set apart, a sowing of which nothing comes. People do it and let
    /// nothing go.
    pub(super) fn is_done_by_letting_go(&self, cx: &ScreenContext<'_>) -> bool {
        let because = [LetGoBecause::SetApart, LetGoBecause::NothingComes].map(|one| cx.wording.let_go_because(one));
        self.typed("why").is_some_and(|why| because.contains(&why))
    }

    fn let_go_summary(&self, cx: &ScreenContext<'_>) -> String {
        if let Some(why) = self.typed("why").filter(|_| self.is_done_by_letting_go(cx)) {
            return why;
        }
        let until = self.typed("until").and_then(|until| read_day(&until, cx.book.now.today).ok());
        match until {
            Some(day) => cx.wording.let_go_until(cx.wording.day_beside(day, cx.day())),
            None => cx.wording.let_go_for_good(),
        }
    }

    /// The field that has the keys, where it holds one plain figure or a choice, with what is typed in it.
    pub(crate) fn figure_typed(&self) -> Option<(Field, String)> {
        let line = self.lines.get(self.at)?;
        let plain = matches!(line.field.shape, Shape::Count | Shape::Number { .. } | Shape::Word(_));
        plain.then(|| (line.field, line.value()))
    }

    /// Why it was not written, or would not be.
    pub(crate) fn against(&self) -> Vec<String> {
        if !self.fault.is_empty() {
            return self.fault.clone();
        }
        match &self.tried {
            Tried::Refused(lines) => lines.clone(),
            Tried::Nothing | Tried::Waiting | Tried::Does(..) => Vec::new(),
        }
    }

    /// The keys go to the field that holds what was refused: the name that is not known or taken, the day, else how many.
    pub(crate) fn go_to_fault(&mut self, fault: &DeskError) {
        let DeskError::Refused(refused) = fault else { return };
        let Some(why) = refused.first().map(|one| &one.why) else { return };
        let holds = |name: &str| self.lines.iter().position(|line| line.value() == name);
        let filled = |name: &&str| self.place_of(name).filter(|at| !self.lines[*at].value().is_empty());
        let at = match why {
            Refusal::UnknownTray(code, _) | Refusal::TrayInUse(code) => holds(code.as_str()),
            Refusal::BeforeTheBook { tray: code, .. }
            | Refusal::CodeBefore { was: code, .. }
            | Refusal::TrayRenamed { was: code, .. } => holds(code.as_str()),
            Refusal::UnknownLot(code, _) | Refusal::LotInUse(code) => holds(code.as_str()),
            Refusal::UnknownBed(name, _) => holds(name.as_str()),
            Refusal::UnknownTask { task: name, .. }
            | Refusal::SeveralPlants { written: name, .. }
            | Refusal::MixedAlphabets(name)
            | Refusal::NameOfTwo { name, .. } => holds(name),
            Refusal::UnknownSpecies(..) => self.lines.iter().position(|line| line.field.shape == Shape::Species),
            Refusal::Book(_) => COUNTS.iter().find_map(filled),
            Refusal::FutureDay { .. } => Some(self.lines.len()),
            Refusal::Entry(_)
            | Refusal::UnknownEntry(_)
            | Refusal::ShareForPercent(_)
            | Refusal::Dots
            | Refusal::Profile(..)
            | Refusal::NothingToUndo
            | Refusal::OnlyTheBeginning(_)
            | Refusal::AlreadyWithdrawn(..)
            | Refusal::OneOfMany { .. }
            | Refusal::LeavesOthersWithoutGround { .. } => None,
        };
        self.at = at.unwrap_or(self.at);
    }

    /// What it would do, a sentence each, doubts behind it.
    pub(crate) fn outcome(&self, cx: &ScreenContext<'_>) -> Vec<String> {
        match &self.tried {
            Tried::Does(effects, doubts, remarks) => {
                let doubts = doubts.iter().map(|doubt| cx.wording.doubt(doubt, &cx.book.picture.site.species));
                let remarks = remarks.iter().map(|remark| cx.wording.remark(remark, cx.day()));
                outcome_words(effects, cx).into_iter().chain(doubts).chain(remarks).collect()
            }
            Tried::Nothing | Tried::Waiting | Tried::Refused(_) => Vec::new(),
        }
    }

    /// What would be doubted, or is asked, first of all.
    pub(super) fn first_doubt(&self, cx: &ScreenContext<'_>) -> Option<String> {
        let Tried::Does(effects, doubts, remarks) = &self.tried else { return None };
        let doubt = doubts.first().map(|doubt| cx.wording.doubt(doubt, &cx.book.picture.site.species));
        let asked = || remarks.iter().find(|one| one.is_asked()).map(|remark| cx.wording.remark(remark, cx.day()));
        let apart =
            || effects.iter().find(|one| contradicts(one)).cloned().map(|one| outcome_words(&[one], cx).join(" "));
        doubt.or_else(asked).or_else(apart)
    }

    /// Its fields in order, with what stands in each.
    pub(crate) fn fields(&self) -> Vec<(Field, String)> {
        self.lines.iter().map(|line| (line.field, line.value())).collect()
    }

    /// The field the form begins with, or has the keys.
    pub(crate) fn begin_place(&self) -> usize {
        self.at
    }

    /// The field that says what the form is about.
    pub(crate) fn about_place(&self) -> Option<usize> {
        ABOUT.iter().filter_map(|name| self.place_of(name)).find(|at| !self.lines[*at].value().is_empty())
    }

    /// Whether a field says something only together with others of this kind.
    pub(crate) fn goes_together(&self, field: &str) -> bool {
        self.kind() == "soil_checked" && super::TOGETHER_ROD.contains(&field)
    }

    /// The choices of a field, in the spelling of files.
    pub(crate) fn choices_at(&self, at: usize) -> Vec<&'static str> {
        self.lines.get(at).map_or_else(Vec::new, super::FieldLine::choices)
    }

    /// Whether what is typed would leave a doubt, or is asked about.
    pub(crate) fn raises_doubt(&self) -> bool {
        let Tried::Does(effects, doubts, remarks) = &self.tried else { return false };
        !doubts.is_empty() || remarks.iter().any(Remark::is_asked) || effects.iter().any(contradicts)
    }

    /// A sample so far: how many, their mean, how many more would do.
    pub(crate) fn sample_words(&self, cx: &ScreenContext<'_>) -> Option<String> {
        let plants = self.place_of("plants").filter(|_| self.kind() == "measured")?;
        let heights = self.lines[plants].first_figures();
        let tray = self.typed("tray").and_then(|code| TrayCode::new(&code).ok());
        let standing = tray.and_then(|code| cx.book.picture.trays.get(&code)).map(|tray| tray.standing);
        let progress = sample_progress(&heights, standing.filter(|standing| *standing > 0))?;
        let measured = cx.wording.form_sample(heights.len() as i64, cx.wording.number(progress.mean, 1));
        let more = match progress.more {
            0 => cx.wording.form_sample_enough(),
            more => cx.wording.form_sample_more(i64::from(more)),
        };
        Some(format!("{measured}; {more}"))
    }

    /// Puts a whole answer into a field, and the keys there. A digit picks from the list or the choices, a word of a
    /// choice is read in either language.
    pub(crate) fn answer(&mut self, at: usize, answer: &str, cx: &ScreenContext<'_>) {
        let picks = self.offered_first(at, cx);
        let (kind, known) = (self.kind(), self.is_named(at, answer, cx));
        let Some(line) = self.lines.get_mut(at) else { return };
        self.at = at;
        self.fault.clear();
        let choices = line.choices();
        let number: Option<usize> = answer.trim().parse().ok();
        if !choices.is_empty() {
            let wanted = crate::base::text::folded(answer);
            let by_number = number.and_then(|number| choices.get(number.checked_sub(1)?).copied());
            let by_word = choices
                .iter()
                .find(|choice| crate::base::text::folded(&cx.wording.choice_name(choice)) == wanted)
                .copied();
            line.fill(by_number.or(by_word).unwrap_or(answer));
            return;
        }
        // A number picks a name from the list, unless something is called so.
        let is_name = matches!(line.field.shape, Shape::Code(_)) && !super::suggest::may_be_new(line.field.name, kind);
        let picked = number.filter(|_| line.takes_picks_by_digit() || (is_name && !known));
        match picked.and_then(|number| picks.get(number.checked_sub(1)?)) {
            Some(pick) => line.fill(pick),
            None => line.fill(answer),
        }
    }

    /// Whether a field can name what was answered: something in the book is called so.
    pub(crate) fn is_named(&self, at: usize, answer: &str, cx: &ScreenContext<'_>) -> bool {
        let others = |name: &str| self.typed(name);
        self.lines.get(at).is_some_and(|line| super::suggest::is_named(line, self.kind(), &others, answer, cx))
    }

    /// Whether a number picks from what is offered in a field.
    pub(crate) fn numbers_pick(&self, at: usize) -> bool {
        let names = |line: &super::FieldLine| {
            matches!(line.field.shape, Shape::Code(_)) && !super::suggest::may_be_new(line.field.name, self.kind())
        };
        self.lines.get(at).is_some_and(|line| line.takes_picks_by_digit() || names(line))
    }

    /// What is offered in a field while nothing is typed in it.
    pub(crate) fn offered_first(&self, at: usize, cx: &ScreenContext<'_>) -> Vec<String> {
        let Some(line) = self.lines.get(at) else { return Vec::new() };
        let empty = super::FieldLine::new(line.field, "");
        super::suggest::picks(&empty, self.kind(), &|name| self.typed(name), cx)
    }

    /// A key that changes nothing, so that what is typed is tried out.
    pub(crate) const STILL: Key = Key::Home;
}
