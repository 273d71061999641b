//! Whether a person holds the bed back, or something sprayed there still works. Asked only while it is so.

use crate::base::Day;
use crate::reckon::picture::quantity::{AtWork, Beside, HeldFor, NotSo};
use crate::reckon::picture::{Basis, Criterion, Gap, Question, RuleSource};
use crate::reckon::stock::{BedStory, Places, Treatment};
use crate::reckon::tray::hold::{SHOWS_AFTER_DAYS, waiting};

const HELD_SOURCE: RuleSource = RuleSource::WrittenHere;

/// The questions of a hold and of a treatment, where one is in force on a day.
pub(crate) fn criteria(story: &BedStory, places: &Places, day: Day) -> impl Iterator<Item = Criterion> {
    let held = story.held.longest_on(day).map(|hold| {
        let known = Some(HeldFor { why: hold.what.0.clone(), stood: None });
        Criterion::found(Question::Held, NotSo, known, Basis::Measured, false, HELD_SOURCE)
            .expected_on(hold.what.1.map(|until| until.plus(1)))
            .resting_on([hold.entry.clone()])
    });
    let treated = closed_by(story, places, day);
    held.into_iter().chain(treated).chain(plant_back(story, day))
}

/// The waiting time that keeps hands out of a bed: its own, or that of plants that were set out in it.
pub(crate) fn closed_by(story: &BedStory, places: &Places, day: Day) -> Option<Criterion> {
    let (treatment, tray) = story.in_wait(places, day)?;
    Some(waiting(Some(treatment), Some(tray.cloned().map_or(Beside::Bed, Beside::Plants))))
}

/// The question of what kills plants and lies in the ground, where planting waits for it: of several the one that lasts longest, one of
/// which nobody knows how long before all.
fn plant_back(story: &BedStory, day: Day) -> Option<Criterion> {
    let in_ground = story.treatments.iter().filter(|one| one.holds_planting_on(day));
    planting_waits(in_ground, true).or_else(|| fresh_dung(story, day))
}

/// Fresh dung or urea in the ground: of several the one that lasts longest.
fn fresh_dung(story: &BedStory, day: Day) -> Option<Criterion> {
    let burns = story.treatments.iter().filter_map(|one| Some((one, one.burns_roots_until()?)));
    let (one, until) = burns.filter(|(one, until)| one.day <= day && day < *until).max_by_key(|(_, until)| *until)?;
    let gap = Gap::FreshDung { with: one.with.clone(), on: one.day, until };
    let waits = Criterion::lacking(Question::PlantBack, Some(NotSo), Some(gap), true, RuleSource::FreshDung);
    Some(waits.expected_on(Some(until)).resting_on([one.entry.clone()]))
}

/// The question of what may kill plants, of a bed or of plants that it reached.
pub(crate) fn planting_waits<'a>(all: impl Iterator<Item = &'a Treatment>, in_bed: bool) -> Option<Criterion> {
    let longest = all.max_by_key(|one| (one.plantable_on().is_none(), one.plantable_on(), one.day))?;
    let with = longest.with.clone();
    let alive_from = (!in_bed).then(|| longest.day.plus(SHOWS_AFTER_DAYS));
    let criterion = match longest.plantable_on() {
        Some(on) => {
            let known = Some(AtWork { with, beside: in_bed.then_some(Beside::Bed), dries: false, wets: false });
            Criterion::found(Question::PlantBack, NotSo, known, Basis::Measured, false, RuleSource::PlantBack)
                .expected_on(Some(on))
        }
        None => {
            let gap = Gap::NoPlantBack { with, day: longest.day, alive_from };
            Criterion::lacking(Question::PlantBack, Some(NotSo), Some(gap), true, RuleSource::PlantBack)
        }
    };
    Some(criterion.resting_on([longest.entry.clone()]))
}
