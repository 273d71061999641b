//! The nurse plants of a bed on a day: how old, how many, from when and until when they shade.

use crate::base::Day;
use crate::nursery::species::{Figure, Profile};
use crate::reckon::picture::NursePicture;
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, NurseStory};

/// Days in a month, on average.
const DAYS_PER_MONTH: f64 = 30.4;

/// Nurse plants, oldest first.
pub fn nurses(story: &BedStory, site: &Site, day: Day) -> Vec<NursePicture> {
    let mut all: Vec<NursePicture> = story.nurses.iter().map(|nurse| nurse_on(nurse, site, day)).collect();
    all.sort_by_key(|nurse| nurse.planted);
    all
}

fn nurse_on(nurse: &NurseStory, site: &Site, day: Day) -> NursePicture {
    let profile: Option<&Profile> = site.profile(&nurse.nurse).map(|profile| &**profile);
    let after = |months: Option<&Figure<f64>>| {
        months.map(|months| nurse.day.plus((months.value * DAYS_PER_MONTH).round() as i32))
    };
    NursePicture {
        nurse: nurse.nurse.clone(),
        planted: nurse.day,
        age_days: day.days_since(nurse.day),
        count: nurse.planted,
        alive: nurse.alive,
        counted_on: nurse.counted_on,
        useful_shade_from: after(profile.and_then(|profile| profile.useful_shade_months.as_ref())),
        ends_about: after(profile.and_then(|profile| profile.stem_life_most_months.as_ref())),
        entry: nurse.entry.clone(),
    }
}
