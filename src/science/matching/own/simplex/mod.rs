//! A bounded simplex with sparse factors: primal from a plan that fits, dual from prices that hold.

mod dual;
mod factors;
mod lists;
mod primal;
mod program;
#[cfg(test)]
mod tests;

pub(super) use program::{Ended, FAR, Program, Stand, State};
