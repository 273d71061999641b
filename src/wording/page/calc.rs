//! The words of `calc`: what a formula says, where it comes from, and what is wrong with what it was given.

use crate::science::WrongInput;
use crate::wording::Wording;

impl Wording {
    /// Why a formula has no answer.
    pub(crate) fn wrong_input(&self, wrong: &WrongInput) -> String {
        match *wrong {
            WrongInput::Missing { input } => self.wrong_missing(input),
            WrongInput::NotANumber { input } => self.wrong_not_a_number(input),
            WrongInput::NotPositive { input } => self.wrong_not_positive(input),
            WrongInput::Outside { input, low, high } if low == high => self.wrong_exactly(input, self.number(low, 3)),
            WrongInput::Outside { input, low, high } if high >= f64::from(u32::MAX) => {
                self.wrong_below(input, self.number(low, 3))
            }
            WrongInput::Outside { input, low, high } => {
                self.wrong_outside(input, self.number(low, 3), self.number(high, 3))
            }
            WrongInput::NotWhole { input } => self.wrong_not_whole(input),
            WrongInput::Uneven { input, other } => self.wrong_uneven(input, other),
            WrongInput::OutOfOrder { input } => self.wrong_out_of_order(input),
            WrongInput::MoreThan { input, part, other, whole } => self.wrong_more_than(input, part, other, whole),
            WrongInput::TooMany { input, most } => self.wrong_too_many(input, most),
            WrongInput::TooLarge => self.wrong_too_large(),
        }
    }
}
