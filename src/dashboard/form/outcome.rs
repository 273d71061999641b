//! What an entry would do, in words.

use crate::dashboard::context::ScreenContext;
use crate::reckon::effect::Effect;

/// The most lines; the rest is counted.
const MOST: usize = 6;

/// What would be otherwise, a sentence each.
pub(crate) fn outcome_words(effects: &[Effect], cx: &ScreenContext<'_>) -> Vec<String> {
    cx.wording.outcomes(effects, &cx.book.picture.site.species, MOST)
}
