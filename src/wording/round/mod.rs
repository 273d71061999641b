//! The round in words: tasks, why each is due, what is lost without it, the signs of places; and what changed a verdict.

mod caution;
mod change;
mod reason;
mod sign;
mod stop;
mod task;
mod until;

pub use reason::RoundOn;
pub use sign::DrawnSign;
