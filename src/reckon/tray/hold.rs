//! What a person or a plant's own growth holds back: held, under treatment, soft flush, last day of bare roots.

use crate::base::{Day, EntryId};
use crate::reckon::picture::{Basis, Criterion, Measure, Rule, RuleSource};
use crate::reckon::stock::{Places, Since, TrayStory};

/// Days a soft flush takes to harden (common practice: 2-3 weeks; the low end blocks).
pub const FLUSH_HARDENS_DAYS: i32 = 14;

const COMMON: RuleSource = RuleSource::CommonPractice;

/// The criterion `held`: the tray itself, its lots or its place.
pub fn held(story: &TrayStory, places: &Places, lots_held: &[Since<(String, Option<Day>)>], day: Day) -> Criterion {
    let at_place = story.place().and_then(|place| places.get(place)).and_then(|place| place.held.as_ref());
    let all = story.held.iter().chain(at_place).chain(lots_held);
    // Of several the one that holds longest; one without an end longest of all.
    let in_force = all
        .filter(|spell| spell.from <= day && spell.what.1.is_none_or(|until| day <= until))
        .max_by_key(|spell| (spell.what.1.is_none(), spell.what.1));
    match in_force {
        None => Criterion::known(Rule::Held, Measure::No, Measure::No, Basis::Reckoned, true, COMMON),
        Some(spell) => {
            let known = Measure::Said(spell.what.0.clone());
            Criterion::known(Rule::Held, Measure::No, known, Basis::Measured, false, COMMON)
                .expected_on(spell.what.1.map(|until| until.plus(1)))
                .resting_on([spell.entry.clone()])
        }
    }
}

/// The criterion `treated`: safe to work with again.
pub fn treated(story: &TrayStory, places: &Places, day: Day) -> Criterion {
    const SOURCE: RuleSource = RuleSource::WaitingTime;
    let at_place = story.place().and_then(|place| places.get(place)).into_iter().flat_map(|place| &place.treatments);
    let since = story.places.last().map(|spell| spell.from);
    let here = at_place.filter(|spell| since.is_none_or(|since| spell.from >= since));
    let working = story.treatments.iter().chain(here).filter(|spell| spell.from <= day && day < spell.what.1);
    match working.max_by_key(|spell| spell.what.1) {
        None => Criterion::known(Rule::Treated, Measure::No, Measure::No, Basis::Reckoned, true, SOURCE),
        Some(spell) => Criterion::known(
            Rule::Treated,
            Measure::No,
            Measure::Said(spell.what.0.clone()),
            Basis::Measured,
            false,
            SOURCE,
        )
        .expected_on(Some(spell.what.1))
        .resting_on([spell.entry.clone()]),
    }
}

/// The criterion `flush`: no soft new leaves.
pub fn flush(story: &TrayStory, day: Day) -> Criterion {
    const SOURCE: RuleSource = RuleSource::Flush;
    match story.flushes.last() {
        None => Criterion::known(Rule::Flush, Measure::No, Measure::No, Basis::Assumed, true, SOURCE),
        Some(seen) => {
            let hard = seen.from.plus(FLUSH_HARDENS_DAYS);
            Criterion::known(Rule::Flush, Measure::No, Measure::On(seen.from), Basis::Measured, day >= hard, SOURCE)
                .expected_on(Some(hard))
                .resting_on([seen.entry.clone()])
        }
    }
}

/// The criterion `good_until` of bare roots and stumps.
pub fn good_until(until: Option<Day>, entry: &EntryId, day: Day) -> Criterion {
    const SOURCE: RuleSource = RuleSource::LastDayWritten;
    match until {
        None => Criterion::unknown(Rule::GoodUntil, None, false, SOURCE).resting_on([entry.clone()]),
        Some(until) => Criterion::known(
            Rule::GoodUntil,
            Measure::Until(until),
            Measure::On(day),
            Basis::Measured,
            day <= until,
            SOURCE,
        )
        .resting_on([entry.clone()]),
    }
}
