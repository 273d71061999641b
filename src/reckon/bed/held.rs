//! Whether a person holds the bed back, or something sprayed there still works. Asked only while it is so.

use crate::base::Day;
use crate::reckon::picture::quantity::NotSo;
use crate::reckon::picture::{Basis, Criterion, Question, RuleSource};
use crate::reckon::stock::{BedStory, holding};
use crate::reckon::tray::hold::waiting;

const HELD_SOURCE: RuleSource = RuleSource::WrittenHere;

/// The questions of a hold and of a treatment, where one is in force on a day.
pub fn criteria(story: &BedStory, day: Day) -> impl Iterator<Item = Criterion> {
    let held = story.held.iter().filter(move |(_, until, _)| until.is_none_or(|until| day <= until));
    let held = held.map(|(why, until, entry)| {
        let known = Some(why.clone());
        Criterion::found(Question::Held, NotSo, known, Basis::Measured, false, HELD_SOURCE)
            .expected_on(until.map(|until| until.plus(1)))
            .resting_on([entry.clone()])
    });
    held.chain(holding(story.treatments.iter(), day).map(|treatment| waiting(Some(treatment))))
}
