//! How the question of a criterion is answered, what holds back first.

use super::Criterion;

/// How a question stands.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Answered {
    /// Known, and it holds back.
    HoldsBack,
    /// Not known, and it holds back until it is.
    UnknownHoldsBack,
    /// It holds nothing back and asks for care.
    Warns,
    /// Not as it should be, and nothing waits for it.
    Unmet,
    /// Not known, and nothing waits for it.
    Unknown,
    /// As it should be.
    Met,
}

impl Answered {
    /// Every answer.
    pub const ALL: [Answered; 6] = [
        Answered::HoldsBack,
        Answered::UnknownHoldsBack,
        Answered::Warns,
        Answered::Unmet,
        Answered::Unknown,
        Answered::Met,
    ];

    /// Its mark, which stands beside its word.
    pub fn mark(self) -> &'static str {
        match self {
            Answered::HoldsBack => "x",
            Answered::UnknownHoldsBack | Answered::Unknown => "?",
            Answered::Warns => "!",
            Answered::Unmet => "-",
            Answered::Met => "+",
        }
    }
}

impl Criterion {
    /// How its question stands.
    pub fn answered(&self) -> Answered {
        match (self.met(), self.blocks, self.warns) {
            (None, true, _) => Answered::UnknownHoldsBack,
            (Some(_), true, _) => Answered::HoldsBack,
            (_, false, true) => Answered::Warns,
            (Some(false), false, false) => Answered::Unmet,
            (None, false, false) => Answered::Unknown,
            (Some(true), false, false) => Answered::Met,
        }
    }
}

/// Criteria with what holds back first; within the same answer as they were asked.
pub(crate) fn pressing_first(criteria: &[Criterion]) -> Vec<&Criterion> {
    let mut sorted: Vec<&Criterion> = criteria.iter().collect();
    sorted.sort_by_key(|criterion| criterion.answered());
    sorted
}
