//! "copper 7 days", "copper safe 7", "cobre, 7 días de espera": what was used, and the waiting time that stands behind it.

use super::words::Words;
use crate::base::text;
use crate::share::amounts::span_days;
use crate::share::sheet::read_number;
use crate::share::vocabulary::{is, vocabulary};

/// The longest unit a waiting time is told in, days: of months and years an age or a date is told.
const LONGEST_UNIT_DAYS: f64 = 7.0;

/// What was used, and the days of its waiting time where the words end in one. A number of days behind a word like "every" or "ago" is
/// no waiting time, and a number without its unit is one only beside a word for waiting.
pub(super) fn with_its_time(behind: &Words) -> (String, Option<f64>) {
    let whole = behind.typed_from(0);
    let waits = |at: usize| is(&behind.folded(at), &vocabulary().line.wait);
    let joins = |at: usize| is(&behind.folded(at), &vocabulary().small.before_a_wait);
    let mut end = behind.len();
    let mut is_said = false;
    while end > 1 && (waits(end - 1) || joins(end - 1)) {
        is_said |= waits(end - 1);
        end -= 1;
    }
    let Some((number_at, days, has_unit)) = span_before(behind, end) else { return (whole, None) };
    let mut begin = number_at;
    while begin > 0 && (waits(begin - 1) || joins(begin - 1)) {
        is_said |= waits(begin - 1);
        begin -= 1;
    }
    let is_led = begin < number_at && !is_said;
    let is_otherwise = number_at > 0 && is(&behind.folded(number_at - 1), &vocabulary().time.no_wait_behind);
    // Words that only join stand for what nobody knows: "for 7 days" it may have been sprayed.
    if begin == 0 || is_led || is_otherwise || !(has_unit || is_said) || end < behind.len() && !is_said {
        return (whole, None);
    }
    let time = behind.typed_from(begin);
    let with = whole.strip_suffix(&time).unwrap_or(&whole);
    (with.trim_end_matches([' ', ',', ';', ':', '-', '(']).to_string(), Some(days))
}

/// The number of days or weeks that the words end in before `end`: where it stands, the days, whether the unit is said.
fn span_before(words: &Words, end: usize) -> Option<(usize, f64, bool)> {
    let bare = |at: usize| words.get(at).map(|word| word.trim_end_matches(['.', ')', ',']));
    let number = |written: &str| read_number(written)?.parse::<f64>().ok().filter(|days| *days >= 0.0);
    let worth = |unit: &str| span_days(unit).filter(|days| *days <= LONGEST_UNIT_DAYS);
    let last = end.checked_sub(1)?;
    let written = bare(last)?;
    if let Some(value) = number(written) {
        return Some((last, value, false));
    }
    if let Some(days) = worth(&text::folded(written)) {
        let at = last.checked_sub(1)?;
        return Some((at, number(bare(at)?)? * days, true));
    }
    // "7d", "7días".
    let letters = written.find(char::is_alphabetic)?;
    let (value, unit) = written.split_at(letters);
    Some((last, number(value)? * worth(&text::folded(unit))?, true))
}
