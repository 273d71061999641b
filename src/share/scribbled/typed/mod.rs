//! What a person typed, taken apart: words, numbers, days, names, and what each stretch of a line may be.

pub(crate) mod days;
pub(crate) mod marks;
pub(crate) mod named;
pub(crate) mod numbers;
pub(crate) mod short_names;
pub(crate) mod spelling;
pub(crate) mod words;

use super::lexicon;
