//! Why a formula has no answer.

use thiserror::Error;

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
pub(super) fn positive(input: &'static str, value: f64) -> Result<f64, WrongInput> {
    if number(input, value)? > 0.0 { Ok(value) } else { Err(WrongInput::NotPositive { input }) }
}

/// A number from `low` to `high`, both allowed.
pub(super) fn within(input: &'static str, value: f64, low: f64, high: f64) -> Result<f64, WrongInput> {
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
pub(super) fn share(input: &'static str, value: f64) -> Result<f64, WrongInput> {
    within(input, value, 0.0, 1.0)
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
