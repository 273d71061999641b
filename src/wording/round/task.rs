//! The names of tasks, alone and counted.

use crate::base::word::Word;
use crate::reckon::round::{AtStake, Stake, Task};
use crate::wording::{Wording, theme};

impl Wording {
    /// What there is to do: "Count".
    pub(crate) fn task_name(&self, task: Task) -> String {
        self.of_word(theme::TASK, task)
    }

    /// A stop by the name that is written in the book: "Count cof-021".
    pub(crate) fn task_told(&self, written: &str) -> String {
        let (task, about) = written.split_once(' ').unwrap_or((written, ""));
        match Task::read(task) {
            Some(task) => self.round_about(self.task_name(task), about).trim().to_string(),
            None => written.to_string(),
        }
    }

    /// The same as it is typed in the language asked for: "contar cof-021".
    pub(crate) fn task_typed(&self, written: &str) -> String {
        let (task, about) = written.split_once(' ').unwrap_or((written, ""));
        let spellings = Task::read(task).and_then(|task| Task::WORDS.iter().find(|(one, _)| *one == task));
        let typed =
            spellings.map_or_else(|| task.to_string(), |(_, spellings)| self.word_typed(spellings).replace('_', " "));
        format!("{typed} {about}").trim().to_string()
    }

    /// So many of a task: "12 counts".
    pub(crate) fn tasks_counted(&self, task: Task, number: usize) -> String {
        let n = i64::try_from(number).unwrap_or(i64::MAX);
        self.of_word_counted(theme::TASKS, task, n)
    }

    /// From so many plants to so many: "38 to 41 plants".
    pub(crate) fn plants_span(&self, low: f64, high: f64) -> String {
        if low == high {
            return self.plants(high.clamp(0.0, 1e15) as i64);
        }
        self.round_plants_between(self.number(low, 0), self.number(high, 0))
    }

    /// What is lost without it; nothing where it is less than a plant, or only not known.
    pub(super) fn lost_without(&self, stake: AtStake) -> Option<String> {
        if stake.plants.round() < 1.0 {
            return None;
        }
        let plants = self.rough_number(stake.plants, stake.most);
        match stake.what {
            Stake::Seedlings => Some(self.lose_seedlings(plants)),
            Stake::Seed => Some(self.lose_seed(plants)),
            Stake::Planted => Some(self.lose_planted(plants)),
            Stake::Planting => Some(self.lose_planting(plants)),
            Stake::Knowledge => None,
        }
    }
}
