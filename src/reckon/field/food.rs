//! What the nurse plants of a bed give to eat: what is on the way and when, what was taken, month by month.

use std::collections::BTreeMap;

use super::plan::{SpotState, species_plan};
use crate::base::{Day, EntryId, SpeciesKey};
use crate::nursery::entry::types::CutWhat;
use crate::nursery::species::{Danger, Figure, Profile};
use crate::reckon::light::DAYS_PER_MONTH;
use crate::reckon::light::coming::{has_followers, stems_to_cut};
use crate::reckon::picture::quantity::EndsBy;
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, NurseStory, lifts_tubers};
use crate::words;

/// Food is told so many days ahead, and what was taken so many back. Ours: a year.
const FOOD_AHEAD_DAYS: i32 = 365;
/// A shrub that goes on bearing does so again after so many days. Common practice: pigeon pea bears once a year.
const BEARS_EVERY_DAYS: i32 = 365;
/// And is picked for so long. Ours.
const PICKED_DAYS: i32 = 60;

words! {
    /// What is eaten of it.
    Crop {
        /// Bunches, one of a stem.
        Bunches: "bunches";
        /// Tubers, with which the plant is lifted.
        Tubers: "tubers";
        /// Pods and grain.
        Grain: "grain";
    }
}

/// Food on the way.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct FoodAhead {
    /// Of which nurse plant.
    pub nurse: SpeciesKey,
    /// What.
    pub crop: Crop,
    /// About this day, or from it on.
    pub from: Day,
    /// Until then, where it is a time and no day.
    pub until: Option<Day>,
    /// Plants or stems that give it.
    pub plants: u32,
    /// Together, kg: least and most by the profile.
    pub kg: (f64, f64),
    /// Whether it was counted, else it is by age.
    pub counted: bool,
    /// Positions of the plan that are open in the bed, where lifting it loosens the ground.
    pub loosens: Option<u32>,
    /// The entry that planted it.
    pub entry: EntryId,
}

/// Food that was taken in a month.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub(crate) struct FoodTaken {
    /// Plants or stems that it was taken of, where written.
    pub plants: u32,
    /// What it weighed where that was written, kg.
    pub kg: f64,
    /// How often nobody wrote what it weighed.
    pub unweighed: u32,
}

/// What the nurse plants of a bed will give within a year if nothing more is done than to take it, first things first.
pub(crate) fn food_ahead(story: &BedStory, site: &Site, day: Day) -> Vec<FoodAhead> {
    let until = day.plus(FOOD_AHEAD_DAYS);
    let mut all = Vec::new();
    for nurse in story.nurses.iter().filter(|nurse| nurse.alive > 0 && nurse.day <= day) {
        let Some(profile) = site.profile(&nurse.nurse) else { continue };
        let Some(each_kg) = each_kg(profile) else { continue };
        let one = |crop: Crop, (from, until): (Day, Option<Day>), plants: u32, counted: bool| FoodAhead {
            nurse: nurse.nurse.clone(),
            crop,
            from,
            until,
            plants,
            kg: (f64::from(plants) * each_kg.0, f64::from(plants) * each_kg.1),
            counted,
            loosens: (crop == Crop::Tubers).then(|| open_positions(story, site, day)).filter(|open| *open > 0),
            entry: nurse.entry.clone(),
        };
        if has_followers(profile) {
            let stems = stems_to_cut(story, nurse, profile, day).into_iter().map(|(by, about, share)| match by {
                EndsBy::Bunches(_) => one(Crop::Bunches, (about, None), stems_of(nurse, share), true),
                EndsBy::Stems | EndsBy::Age => one(Crop::Bunches, (about, None), stems_of(nurse, share), false),
            });
            all.extend(stems);
        } else if nurse.planted > 0 {
            let crop = if lifts_tubers(&nurse.nurse) { Crop::Tubers } else { Crop::Grain };
            let time = time_of(nurse, profile, crop, day);
            all.extend(time.map(|(from, until)| one(crop, (from, Some(until)), nurse.alive, false)));
        }
    }
    all.retain(|food| food.from <= until && food.plants > 0);
    all.sort_by_key(|food| food.from);
    all
}

/// Months that food is told of.
pub(crate) const FOOD_MONTHS: usize = 12;
/// Bunches are cut within so many days before and after the day that is told. Ours.
const BUNCHES_WITHIN_DAYS: i32 = 15;

impl FoodAhead {
    /// From when to when it can be taken: bunches about their day.
    pub(crate) fn time(&self) -> (Day, Day) {
        match self.until {
            Some(until) => (self.from, until),
            None => (self.from.plus(-BUNCHES_WITHIN_DAYS), self.from.plus(BUNCHES_WITHIN_DAYS)),
        }
    }
}

/// Least and most kg of the month of a day and of those after it, each crop spread evenly over the days that are left to take it.
pub(crate) fn food_by_month(ahead: &[FoodAhead], day: Day) -> [(f64, f64); FOOD_MONTHS] {
    let mut months = [(0.0, 0.0); FOOD_MONTHS];
    let (year, month, _) = day.ymd();
    for food in ahead {
        let (from, until) = food.time();
        let from = from.max(day);
        let days = until.days_since(from).max(0) + 1;
        for at in 0..days {
            let (in_year, in_month, _) = from.plus(at).ymd();
            let after = (in_year - year) * 12 + in_month as i32 - month as i32;
            if let Some(told) = usize::try_from(after).ok().and_then(|after| months.get_mut(after)) {
                told.0 += food.kg.0 / f64::from(days);
                told.1 += food.kg.1 / f64::from(days);
            }
        }
    }
    months
}

/// What one plant of a cohort gives if it is cut on a day, kg: a bunch where some show, tubers where they are large enough.
pub(crate) fn gives_now_kg(nurse: &NurseStory, profile: &Profile, day: Day) -> (f64, f64) {
    let Some((least, most)) = each_kg(profile) else { return (0.0, 0.0) };
    let share = if has_followers(profile) {
        f64::from(nurse.bunches_showing.unwrap_or(0).min(nurse.alive)) / f64::from(nurse.alive.max(1))
    } else if lifts_tubers(&nurse.nurse) {
        let time = time_of(nurse, profile, Crop::Tubers, day);
        f64::from(u8::from(nurse.planted > 0 && time.is_some_and(|(from, _)| from <= day)))
    } else {
        0.0
    };
    (least * share, most * share)
}

/// What a plant gives at least and at most, kg; none of what nobody may eat, or of which nothing is known.
fn each_kg(profile: &Profile) -> Option<(f64, f64)> {
    let poisonous = profile.dangers().is_some_and(|dangers| dangers.contains(&Danger::PoisonousSeed));
    let value = |figure: &Option<Figure<f64>>| figure.as_ref().map(|figure| figure.value);
    value(&profile.yield_least_kg).zip(value(&profile.yield_most_kg)).filter(|_| !poisonous)
}

fn stems_of(nurse: &NurseStory, share: f64) -> u32 {
    (f64::from(nurse.alive) * share).round() as u32
}

/// From when to when it is taken next: tubers from the least to the most life of a plant, grain from its first month on and
/// a year later again; none where that is over.
fn time_of(nurse: &NurseStory, profile: &Profile, crop: Crop, day: Day) -> Option<(Day, Day)> {
    let after = |figure: &Option<Figure<f64>>| {
        figure.as_ref().map(|figure| nurse.day.plus((figure.value * DAYS_PER_MONTH).round() as i32))
    };
    let end = after(&profile.stem_life_most_months)?;
    if crop == Crop::Tubers {
        return Some((after(&profile.stem_life_least_months)?, end)).filter(|(_, end)| *end >= day);
    }
    let dies = profile.dies_after_fruiting.as_ref().is_some_and(|figure| figure.value);
    let mut from = after(&profile.fruiting_first_month)?;
    while !dies && from.plus(PICKED_DAYS) < day && from <= end {
        from = from.plus(BEARS_EVERY_DAYS);
    }
    let until = if dies { end } else { from.plus(PICKED_DAYS).min(end) };
    (from <= end && until >= day).then_some((from, until))
}

/// Positions of the plan, of whatever species, at which something can be set.
fn open_positions(story: &BedStory, site: &Site, day: Day) -> u32 {
    let plan = story.layout.on(day).map(|layout| layout.plan.clone()).unwrap_or_default();
    let mut species: Vec<SpeciesKey> = plan.iter().filter_map(|line| site.species_key(&line.species)).collect();
    species.sort_unstable();
    species.dedup();
    let plans = species.iter().filter_map(|key| species_plan(story, site, day, key));
    plans.map(|plan| plan.count(SpotState::Open) + plan.count(SpotState::Dead)).sum()
}

/// What was taken of each nurse plant, by year and month, in the year up to a day.
pub(crate) fn food_taken(story: &BedStory, day: Day) -> BTreeMap<(i32, u32, SpeciesKey), FoodTaken> {
    let last_year = |on: Day| (0..FOOD_AHEAD_DAYS).contains(&day.days_since(on));
    let mut all: BTreeMap<(i32, u32, SpeciesKey), FoodTaken> = BTreeMap::new();
    for cut in story.cuts.iter().filter(|cut| cut.what == Some(CutWhat::Harvest) && last_year(cut.day)) {
        let (year, month, _) = cut.day.ymd();
        let taken = all.entry((year, month, cut.nurse.clone())).or_default();
        taken.plants = taken.plants.saturating_add(cut.plants.unwrap_or(0));
        match cut.yield_kg {
            Some(kg) => taken.kg += kg,
            None => taken.unweighed += 1,
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reckon::test_book::{TestBook, day};
    use serde_json::json;

    const ON: &str = "2026-04-10";

    fn bed() -> TestBook {
        TestBook::upper_terrace(30.0, 12.0)
    }

    fn ahead(page: &TestBook) -> Vec<FoodAhead> {
        let (story, site) = page.story(ON);
        food_ahead(&story, &site, day(ON))
    }

    #[test]
    fn bunches_that_were_counted_come_first_and_the_others_by_the_age_of_their_stems() {
        let mut page = bed();
        page.nurses("2025-06-10", "banana", 40, 3.0);
        let showing = json!({"bed":"Upper terrace","nurse":"banana","alive":40,"bunches_showing":12});
        page.write("2026-04-01", "nurse_counted", showing);
        let all = ahead(&page);
        let told: Vec<_> = all.iter().map(|food| (food.crop, food.plants, food.counted, food.from)).collect();
        let counted = (Crop::Bunches, 12, true, day("2026-06-25"));
        // Stems live 10 to 14 months: the others about 12 after planting.
        assert_eq!(told, [(Crop::Bunches, 28, false, day("2026-06-10")), counted]);
        assert_eq!(all[1].kg, (12.0 * 15.0, 12.0 * 30.0));
    }

    #[test]
    fn what_is_cut_is_no_longer_on_the_way_and_stands_in_the_month_in_which_it_was_taken() {
        let mut page = bed();
        page.nurses("2025-06-10", "banana", 40, 3.0);
        let harvest = |count: u32, kg: Option<f64>| {
            let mut cut = json!({"bed":"Upper terrace","nurse":"banana","what":"harvest","count":count});
            kg.into_iter().for_each(|kg| cut["yield_kg"] = json!(kg));
            cut
        };
        page.write("2026-03-02", "nurse_cut", harvest(6, Some(96.5)));
        page.write("2026-03-20", "nurse_cut", harvest(4, None));
        assert_eq!(ahead(&page).iter().map(|food| food.plants).sum::<u32>(), 30);
        let (story, _) = page.story(ON);
        let taken = food_taken(&story, day(ON));
        let banana = SpeciesKey::new("BAN");
        let of_march = FoodTaken { plants: 10, kg: 96.5, unweighed: 1 };
        assert_eq!(taken.into_iter().collect::<Vec<_>>(), [((2026, 3, banana), of_march)]);
    }

    #[test]
    fn tubers_have_a_time_and_their_lifting_loosens_open_positions() {
        let mut page = bed();
        page.nurses("2025-08-01", "cassava", 90, 2.0);
        let all = ahead(&page);
        assert_eq!(all.len(), 1);
        // 10 to 18 months.
        assert_eq!((all[0].from, all[0].until), (day("2026-06-01"), Some(day("2027-01-30"))));
        assert_eq!((all[0].crop, all[0].plants, all[0].loosens), (Crop::Tubers, 90, Some(40)));
    }

    #[test]
    fn month_by_month_it_is_all_that_is_on_the_way() {
        let mut page = bed();
        page.nurses("2025-06-10", "banana", 40, 3.0);
        page.nurses("2025-08-01", "cassava", 90, 2.0);
        let all = ahead(&page);
        let months = food_by_month(&all, day(ON));
        let sum = months.iter().fold((0.0, 0.0), |sum, one| (sum.0 + one.0, sum.1 + one.1));
        let told = all.iter().fold((0.0, 0.0), |sum, one| (sum.0 + one.kg.0, sum.1 + one.kg.1));
        assert!((sum.0 - told.0).abs() < 1e-6 && (sum.1 - told.1).abs() < 1e-6, "{sum:?} {told:?}");
        // Bunches about 10 June, the first tubers on 1 June, nothing in April.
        assert_eq!(months[0], (0.0, 0.0));
        assert!(months[2].0 > months[4].0 && months[4].0 > 0.0, "{months:?}");
    }

    #[test]
    fn a_stem_without_a_bunch_and_cassava_too_young_give_nothing_yet() {
        let gives = |page: &TestBook, on: &str| {
            let (story, site) = page.story(on);
            gives_now_kg(&story.nurses[0], site.profile(&story.nurses[0].nurse).unwrap(), day(on))
        };
        let mut bananas = bed();
        bananas.nurses("2025-06-10", "banana", 40, 3.0);
        assert_eq!(gives(&bananas, ON), (0.0, 0.0));
        let showing = json!({"bed":"Upper terrace","nurse":"banana","alive":40,"bunches_showing":20});
        bananas.write("2026-04-01", "nurse_counted", showing);
        assert_eq!(gives(&bananas, ON), (7.5, 15.0));
        let mut cassava = bed();
        cassava.nurses("2025-08-01", "cassava", 90, 2.0);
        assert_eq!(gives(&cassava, ON), (0.0, 0.0));
        assert!(gives(&cassava, "2026-07-01").0 > 0.0);
    }

    #[test]
    fn pigeon_pea_bears_every_year_and_of_castor_nothing_is_eaten() {
        let mut page = bed();
        page.nurses("2024-12-01", "pigeon pea", 50, 2.0);
        page.nurses("2025-06-01", "castor", 10, 3.0);
        let all = ahead(&page);
        // First in June 2025, and a year later again.
        assert_eq!(
            all.iter().map(|food| (food.crop, food.from)).collect::<Vec<_>>(),
            [(Crop::Grain, day("2026-06-01"))]
        );
    }
}
