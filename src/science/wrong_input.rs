//! Why a formula has no answer.

use thiserror::Error;

/// The most seeds of one sowing or test that a formula takes: more than any nursery sows at once. Ours.
pub(crate) const MOST_SEEDS: u32 = 10_000_000;

/// What is wrong with a number given to a formula. `input` is the name of the number as in the function's argument.
#[derive(Clone, Copy, PartialEq, Debug, Error)]
pub enum WrongInput {
    /// A number that this case needs was not given.
    #[error("{input} is missing")]
    Missing {
        /// Name of the input.
        input: &'static str,
    },
    /// Not a number, or infinite.
    #[error("{input} is not a number")]
    NotANumber {
        /// Name of the input.
        input: &'static str,
    },
    /// Zero or negative where only more than zero makes sense.
    #[error("{input} must be more than 0")]
    NotPositive {
        /// Name of the input.
        input: &'static str,
    },
    /// Outside the range in which the formula means anything.
    #[error("{input} must be from {low} to {high}")]
    Outside {
        /// Name of the input.
        input: &'static str,
        /// Lowest allowed value.
        low: f64,
        /// Highest allowed value.
        high: f64,
    },
    /// A count that is not a whole number.
    #[error("{input} must be whole numbers")]
    NotWhole {
        /// Name of the input.
        input: &'static str,
    },
    /// Two lists that go together and are not equally long.
    #[error("{input} and {other} must be equally many")]
    Uneven {
        /// Name of the one list.
        input: &'static str,
        /// Name of the other.
        other: &'static str,
    },
    /// Days that do not follow each other.
    #[error("{input} must go up from one to the next")]
    OutOfOrder {
        /// Name of the input.
        input: &'static str,
    },
    /// More of a part than of the whole.
    #[error("more {input} ({part}) than {other} ({whole})")]
    MoreThan {
        /// Name of the part.
        input: &'static str,
        /// How many.
        part: u64,
        /// Name of the whole.
        other: &'static str,
        /// How many.
        whole: u64,
    },
    /// More things than any real case has.
    #[error("more than {most} {input}")]
    TooMany {
        /// What there would be too many of.
        input: &'static str,
        /// The most that is allowed.
        most: u32,
    },
    /// The inputs are each possible, but the answer is too large to be written as a number.
    #[error("the answer is too large to be a number")]
    TooLarge,
}

/// A number that is neither NaN nor infinite.
pub(super) fn number(input: &'static str, value: f64) -> Result<f64, WrongInput> {
    if value.is_finite() { Ok(value) } else { Err(WrongInput::NotANumber { input }) }
}

/// A number above 0.
///
/// # Errors
/// 0, below 0, or no number.
pub(crate) fn positive(input: &'static str, value: f64) -> Result<f64, WrongInput> {
    if number(input, value)? > 0.0 { Ok(value) } else { Err(WrongInput::NotPositive { input }) }
}

/// A number from `low` to `high`, both allowed.
pub(crate) fn within(input: &'static str, value: f64, low: f64, high: f64) -> Result<f64, WrongInput> {
    if (low..=high).contains(&number(input, value)?) {
        Ok(value)
    } else {
        Err(WrongInput::Outside { input, low, high })
    }
}

/// A number that is 0 or more.
pub(super) fn not_negative(input: &'static str, value: f64) -> Result<f64, WrongInput> {
    within(input, value, 0.0, f64::MAX)
}

/// A share from 0 to 1.
pub(crate) fn share(input: &'static str, value: f64) -> Result<f64, WrongInput> {
    within(input, value, 0.0, 1.0)
}

/// How many of a part, unless there are more of it than of the whole.
pub(super) fn part_of(input: &'static str, part: u64, other: &'static str, whole: u64) -> Result<u64, WrongInput> {
    if part <= whole { Ok(part) } else { Err(WrongInput::MoreThan { input, part, other, whole }) }
}

/// A number of seeds, 1 to [`MOST_SEEDS`].
pub(super) fn seeds(input: &'static str, seeds: u32) -> Result<u32, WrongInput> {
    match seeds {
        0 => Err(WrongInput::NotPositive { input }),
        _ if seeds > MOST_SEEDS => Err(WrongInput::TooMany { input, most: MOST_SEEDS }),
        _ => Ok(seeds),
    }
}

/// Days that follow each other, each 0 or more; `or_equal` lets a day stand twice.
pub(super) fn in_order(input: &'static str, days: &[f64], or_equal: bool) -> Result<(), WrongInput> {
    for &day in days {
        not_negative(input, day)?;
    }
    let rises = |pair: &[f64]| pair[1] > pair[0] || (or_equal && pair[1] == pair[0]);
    if days.windows(2).all(rises) { Ok(()) } else { Err(WrongInput::OutOfOrder { input }) }
}

/// An answer, unless it grew past what a number can hold.
pub(super) fn answer(value: f64) -> Result<f64, WrongInput> {
    if value.is_finite() { Ok(value) } else { Err(WrongInput::TooLarge) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn says_what_is_wrong_and_where() {
        assert_eq!(positive("row_m", f64::NAN), Err(WrongInput::NotANumber { input: "row_m" }));
        assert_eq!(positive("row_m", f64::INFINITY), Err(WrongInput::NotANumber { input: "row_m" }));
        assert_eq!(positive("row_m", 0.0), Err(WrongInput::NotPositive { input: "row_m" }));
        assert_eq!(share("purity", 1.01), Err(WrongInput::Outside { input: "purity", low: 0.0, high: 1.0 }));
        assert_eq!(not_negative("leaf_area", 0.0), Ok(0.0));
        assert_eq!(answer(f64::INFINITY), Err(WrongInput::TooLarge));
    }
}
