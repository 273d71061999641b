//! The dashboard in tests: the model and the clerk without a terminal or a thread. Keys in, frames out.

mod care;
mod foresight;
mod forms;
mod frames;
mod moved_keys;
mod muddy;
mod picture;
mod race;
mod said;
mod stage;
mod whole_round;
mod words;

pub(crate) use stage::{Stage, TODAY};
