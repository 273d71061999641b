//! The words of `calc`: what a formula says, where it comes from, and what is wrong with what it was given.

use crate::science::WrongInput;
use crate::wording::Wording;

impl Wording {
    /// Why a formula has no answer, by the names of its numbers.
    pub(crate) fn wrong_input(&self, wrong: &WrongInput) -> String {
        self.wrong_input_named(wrong, &|input| InputName { text: input.to_string(), is_percent: false })
    }

    /// The same, by the names under which they were typed.
    pub(crate) fn wrong_input_named(&self, wrong: &WrongInput, name: &dyn Fn(&str) -> InputName) -> String {
        let text = |input: &str| name(input).text;
        match *wrong {
            WrongInput::Missing { input } => self.wrong_missing(text(input)),
            WrongInput::NotANumber { input } => self.wrong_not_a_number(text(input)),
            WrongInput::NotPositive { input } => self.wrong_not_positive(text(input)),
            WrongInput::Outside { input, low, high } => {
                let InputName { text, is_percent } = name(input);
                let number = |limit: f64| if is_percent { self.percent(limit) } else { self.number(limit, 3) };
                if low == high {
                    self.wrong_exactly(text, number(low))
                } else if high >= f64::from(u32::MAX) {
                    self.wrong_below(text, number(low))
                } else {
                    self.wrong_outside(text, number(low), number(high))
                }
            }
            WrongInput::NotWhole { input } => self.wrong_not_whole(text(input)),
            WrongInput::Uneven { input, other } => self.wrong_uneven(text(input), text(other)),
            WrongInput::OutOfOrder { input } => self.wrong_out_of_order(text(input)),
            WrongInput::MoreThan { input, part, other, whole } => {
                self.wrong_more_than(text(input), part, text(other), whole)
            }
            WrongInput::TooMany { input, most } => self.wrong_too_many(text(input), most),
            WrongInput::TooLarge => self.wrong_too_large(),
        }
    }
}

/// How a number of a formula is called where it was given.
pub(crate) struct InputName {
    /// Its name.
    pub(crate) text: String,
    /// Whether it was given as a percentage.
    pub(crate) is_percent: bool,
}
