//! The round in words: tasks, why each is due, what is lost without it, the signs of places; and what changed a verdict.

mod change;
mod reason;
mod sign;
mod stop;
mod task;
mod until;

pub use reason::RoundOn;
pub use sign::DrawnSign;

#[cfg(test)]
pub(super) use {
    change::KEYS as CHANGE_KEYS, reason::KEYS as ROUND_REASON_KEYS, sign::KEYS as SIGN_KEYS, task::KEYS as TASK_KEYS,
    until::KEYS as UNTIL_KEYS,
};
