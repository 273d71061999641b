//! What changed a verdict, in words.

use crate::nursery::entry::Entry;
use crate::reckon::Change;
use crate::reckon::changes::Turned;
use crate::reckon::changes::by_cause::{Because, told_by};
use crate::reckon::picture::{Passage, Picture, Stage};
use crate::wording::{Wording, theme};

impl Wording {
    /// What the passing of days brought.
    pub(crate) fn passage_words(&self, passage: Passage) -> String {
        self.of_word(theme::PASSAGE, passage)
    }

    /// What a verdict is about, before and now.
    pub(crate) fn turned_words(&self, turned: &Turned, before: &Picture, after: &Picture) -> [String; 3] {
        let all = &after.site.species;
        match turned {
            Turned::Tray { tray, was, is } => {
                let state = |state: Option<(bool, Stage)>, none: String| {
                    state.map_or(none, |(ready, stage)| self.tray_state(ready, stage))
                };
                let pictured = after.trays.get(tray).or_else(|| before.trays.get(tray));
                let key = pictured.and_then(|tray| tray.species.as_ref());
                let species = key.map_or_else(|| self.species_unknown(), |key| self.species_of(key, all));
                let what = self.change_tray(tray, species);
                [what, state(*was, self.state_new()), state(*is, self.state_gone())]
            }
            Turned::Bed { bed, species: key, was, is } => {
                let what = self.change_bed(bed, self.species_of(key, all));
                let none = || self.state_not_planned();
                let [was, is] = [was, is].map(|state| state.map_or_else(none, |state| self.standing_name(state)));
                [what, was, is]
            }
            Turned::Pair { tray, bed, was, is } => {
                let state = |fits: Option<bool>| {
                    if fits == Some(true) { self.state_fits() } else { self.state_fits_not() }
                };
                [self.change_pair(tray, bed), state(*was), state(*is)]
            }
        }
    }

    /// A verdict that changed, with the questions that turned with it: what holds back or no longer does, else whatever
    /// changed.
    pub(crate) fn change_words(&self, change: &Change, before: &Picture, after: &Picture) -> String {
        let [what, was, is] = self.turned_words(&change.turned, before, after);
        let said = self.change_turned(what, was, is);
        let rules: Vec<String> = told_by(change).into_iter().map(|flip| self.rule_name(flip.rule)).collect();
        if rules.is_empty() { said } else { format!("{said} ({})", rules.join(", ")) }
    }

    /// What turned verdicts: the first of its entries, with its day and who wrote it, or the day and what it brought.
    /// `known` are the entries as far as they are at hand; `fitted` may shorten what an entry says.
    pub(crate) fn cause_words(
        &self,
        because: &Because<'_>,
        known: &[&Entry],
        after: &Picture,
        fitted: impl Fn(String) -> String,
    ) -> String {
        let [first, others @ ..] = known else {
            let day = self.day_beside(because.on.0, after.day);
            return self.change_by_days(day, self.passage_words(because.passage.unwrap_or(Passage::Time)));
        };
        let day = self.day_beside(first.happened, after.day);
        let said = fitted(self.what_sentence(&first.what, &after.site.species));
        let said = self.change_entry(day, self.who_told(&first.who), said);
        match others.len() {
            0 => said,
            more => format!("{said}, {}", self.change_more(more as i64)),
        }
    }

    /// The state of a tray in a word or two: its stage, and whether it is ready where the stage does not say so.
    fn tray_state(&self, ready: bool, stage: Stage) -> String {
        match (ready, stage == Stage::Ready) {
            (true, true) | (false, false) => self.stage_name(stage),
            (true, false) => format!("{} ({})", self.stage_name(Stage::Ready), self.stage_name(stage)),
            (false, true) => self.why_not_ready(),
        }
    }
}
