//! Work on nurse plants: bunches to cut, tubers to lift, more light by cutting, the next to set, and those whose life is over.

use crate::base::{Day, Range};
use crate::nursery::species::Profile;
use crate::reckon::field::{Crop, food_ahead};
use crate::reckon::light::DAYS_PER_MONTH;
use crate::reckon::light::advice::fewest_cuts::{MOST_SHADE_LOST, MOST_STEP};
use crate::reckon::light::coming::{SHADE_ENDS_SHARE, has_followers, shade_ends, stems_to_cut};
use crate::reckon::picture::quantity::EndsBy;
use crate::reckon::picture::question::{Found, Known};
use crate::reckon::picture::{BedPicture, BedSpecies, Measure, Question, Rule, RuleSource};
use crate::reckon::round::deadline::UntilFor;
use crate::reckon::round::ground::kept_out;
use crate::reckon::round::intervals::{
    BUNCH_AHEAD_DAYS, FALLING_LOSS, NURSE_GAP_LOSS, NURSES_EVERY_DAYS, SET_AHEAD_DAYS, TUBERS_AHEAD_DAYS, minutes, work,
};
use crate::reckon::round::stop::{LastLook, NurseWork, RoundReason, Stake, Stop, Task};
use crate::reckon::round::walk::{Walk, all_of, days_until};
use crate::reckon::stock::NurseStory;
use crate::reckon::tray::exposure::light_band;
use crate::science::light::largest_shade_share;

/// Where what is said here comes from.
const SOURCE: RuleSource = RuleSource::NurseWork;

/// What is due on the nurse plants of a bed.
pub(super) fn nurse_work(walk: &Walk<'_>, bed: &BedPicture) -> Vec<Stop> {
    if bed.story.nurses.iter().all(|nurse| nurse.alive == 0) {
        return Vec::new();
    }
    [bunches(walk, bed), tubers(walk, bed), too_dark(walk, bed), next_to_set(walk, bed), past_life(walk, bed)]
        .into_iter()
        .flatten()
        .collect()
}

fn living<'a>(walk: &Walk<'a>, bed: &'a BedPicture) -> impl Iterator<Item = (&'a NurseStory, &'a Profile)> {
    let (site, day) = (&walk.picture.site, walk.day());
    let alive = bed.story.nurses.iter().filter(move |nurse| nurse.alive > 0 && nurse.day <= day);
    alive.filter_map(|nurse| Some((nurse, &**site.profile(&nurse.nurse)?)))
}

/// Plants that a stem or a branch can fall on.
fn beneath(bed: &BedPicture) -> f64 {
    f64::from(all_of(bed.species.iter().map(|line| line.living)))
}

fn stop(walk: &Walk<'_>, bed: &BedPicture, (task, why): (Task, NurseWork)) -> Stop {
    walk.bed_stop(bed, task, RoundReason::NurseWork(why)).taking(minutes::BED, SOURCE)
}

/// Bunches that show are cut when their time comes.
fn bunches(walk: &Walk<'_>, bed: &BedPicture) -> Option<Stop> {
    let day = walk.day();
    let due = living(walk, bed).flat_map(|(nurse, profile)| {
        let ends = stems_to_cut(&bed.story, nurse, profile, day).into_iter();
        ends.filter_map(move |(by, about, _)| match by {
            EndsBy::Bunches(bunches) if about.days_since(day) <= BUNCH_AHEAD_DAYS => Some((about, nurse, bunches)),
            EndsBy::Bunches(_) | EndsBy::Stems | EndsBy::Age => None,
        })
    });
    let (about, nurse, bunches) = due.min_by_key(|(about, ..)| *about)?;
    let why = NurseWork::Bunches { nurse: nurse.nurse.clone(), bunches, about };
    let mut stop = stop(walk, bed, (Task::CutBunches, why))
        .risking(Stake::Planted, 0.0, BUNCH_AHEAD_DAYS)
        .working(f64::from(bunches) * work::BUNCH)
        .due(about.plus(-BUNCH_AHEAD_DAYS), 2 * BUNCH_AHEAD_DAYS)
        .until(Some(about.plus(BUNCH_AHEAD_DAYS)), UntilFor::Window);
    stop.last =
        nurse.counted_on.map(|day| LastLook { day, figure: Measure::Plants(Range::exact(f64::from(nurse.alive))) });
    stop.entries = vec![nurse.entry.clone()];
    Some(stop)
}

/// Tubers are lifted before they are wood.
fn tubers(walk: &Walk<'_>, bed: &BedPicture) -> Option<Stop> {
    let (site, day) = (&walk.picture.site, walk.day());
    let due = food_ahead(&bed.story, site, day).into_iter().filter(|food| food.crop == Crop::Tubers);
    let ends = due.filter_map(|food| Some((food.until?, food)));
    let (until, food) = ends.min_by_key(|(until, _)| *until)?;
    let from = until.plus(-TUBERS_AHEAD_DAYS).max(food.from);
    if from > day {
        return None;
    }
    let plants = food.plants;
    let why = NurseWork::Tubers { nurse: food.nurse, plants, until, loosens: food.loosens };
    let mut stop = stop(walk, bed, (Task::LiftTubers, why))
        .risking(Stake::Planted, 0.0, TUBERS_AHEAD_DAYS)
        .working(f64::from(plants) * work::LIFT)
        .due(from, TUBERS_AHEAD_DAYS)
        .until(Some(until), UntilFor::Window);
    stop.entries = vec![food.entry];
    Some(stop)
}

/// A bed that is too dark for a species of which a tray comes.
fn too_dark(walk: &Walk<'_>, bed: &BedPicture) -> Option<Stop> {
    let dark = |line: &BedSpecies| {
        let found = line.criteria.iter().find_map(|one| match &one.question {
            Question::LightNow(Known::Found(Found { needed, known, met: false, .. })) => Some((needed, known)),
            _ => None,
        });
        found.filter(|(needed, known)| known.share < needed.least).map(|(needed, known)| (known.share, needed.least))
    };
    // What more light would take from another species is no cut to propose.
    let suits = |line: &BedSpecies| {
        let light = line.criteria.iter().find(|one| one.rule() == Rule::LightNow);
        let is_there = line.open_positions > 0 || line.living > 0;
        is_there && light.is_some_and(|light| light.needed().is_some() && light.met() == Some(true))
    };
    if bed.species.iter().any(suits) {
        return None;
    }
    let open = bed.species.iter().filter(|line| line.open_positions > 0);
    let coming = open.filter_map(|line| {
        let (share, least) = dark(line)?;
        let (plants, plant_on, last_safe) = kept_out(walk, bed, line)?;
        Some((line, (share, least), plants, (plant_on, last_safe)))
    });
    let (line, (light, least), plants, (_, last_safe)) = coming.min_by_key(|(.., (plant_on, _))| *plant_on)?;
    // Young plants that stand there bear a step of light, and no bed loses more in a month.
    let stands = bed.species.iter().any(|line| line.living > 0);
    let step = largest_shade_share(MOST_STEP, light).ok().filter(|_| stands);
    let at_once = step.map_or(MOST_SHADE_LOST, |share| share.min(MOST_SHADE_LOST));
    let why = NurseWork::TooDark { species: line.species.clone(), light, least, at_once };
    let stems = all_of(living(walk, bed).map(|(nurse, _)| nurse.alive));
    let mut stop = stop(walk, bed, (Task::CutForLight, why))
        .risking(Stake::Planting, plants, days_until(walk.day(), last_safe))
        .working(f64::from(stems) * SHADE_ENDS_SHARE * work::CHOP)
        .until(last_safe, UntilFor::Rains);
    stop.entries = living(walk, bed).map(|(nurse, _)| nurse.entry.clone()).collect();
    Some(stop)
}

/// Shade that plants need and that ends by age: the next nurse plants are set so long before that they shade by then.
fn next_to_set(walk: &Walk<'_>, bed: &BedPicture) -> Option<Stop> {
    let (site, day) = (&walk.picture.site, walk.day());
    let band = |line: &BedSpecies| light_band(site.profile(&line.species).map(|profile| &**profile));
    let needs_shade = |line: &&BedSpecies| band(line).is_some_and(|(_, most)| most < 1.0);
    let under = bed.species.iter().filter(needs_shade).map(|line| line.living.saturating_add(line.open_positions));
    let under = all_of(under);
    if under == 0 {
        return None;
    }
    // What was set since is the next.
    let set_since = |by: Day| living(walk, bed).any(|(nurse, _)| nurse.day >= by.plus(-2 * SET_AHEAD_DAYS));
    let ends = shade_ends(&bed.story, site, day).into_iter().filter(|end| end.by == EndsBy::Age);
    let end = ends
        .filter(|end| end.share >= SHADE_ENDS_SHARE)
        .find(|end| end.set_next_by.is_some_and(|by| by.days_since(day) <= SET_AHEAD_DAYS && !set_since(by)))?;
    let (by, entry) = (end.set_next_by?, end.entry.clone());
    let alive = bed.story.nurses.iter().find(|nurse| nurse.entry == entry).map_or(0, |nurse| nurse.alive);
    let mut stop = stop(walk, bed, (Task::SetNurses, NurseWork::SetNext(end)))
        .risking(Stake::Planted, f64::from(under) * NURSE_GAP_LOSS, NURSES_EVERY_DAYS)
        .working(f64::from(alive) * work::SET)
        .due(by.plus(-SET_AHEAD_DAYS), SET_AHEAD_DAYS)
        .until(Some(by), UntilFor::Window);
    stop.entries = vec![entry];
    Some(stop)
}

/// Nurse plants past their life: dead wood stands over young plants.
fn past_life(walk: &Walk<'_>, bed: &BedPicture) -> Option<Stop> {
    let day = walk.day();
    let past = living(walk, bed).filter(|(nurse, profile)| nurse.planted > 0 && !has_followers(profile));
    let past = past.filter_map(|(nurse, profile)| {
        let months = profile.stem_life_most_months.as_ref()?.value;
        Some((nurse.day.plus((months * DAYS_PER_MONTH).round() as i32), nurse)).filter(|(ended, _)| *ended < day)
    });
    let (ended, nurse) = past.min_by_key(|(ended, _)| *ended)?;
    let why = NurseWork::PastLife { nurse: nurse.nurse.clone(), plants: nurse.alive, ended };
    let mut stop = stop(walk, bed, (Task::RemoveNurses, why))
        .risking(Stake::Planted, beneath(bed) * FALLING_LOSS, NURSES_EVERY_DAYS)
        .working(f64::from(nurse.alive) * work::FELL)
        .due_by_interval(ended, NURSES_EVERY_DAYS);
    stop.entries = vec![nurse.entry.clone()];
    Some(stop)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reckon::round;
    use crate::reckon::test_book::{TestBook, day};
    use serde_json::json;

    fn bed() -> TestBook {
        let mut page = TestBook::upper_terrace(30.0, 12.0);
        let nursery = json!({"name":"N","latitude_deg":-3.2,"longitude_deg":36.7,"altitude_m":900,"utc_offset_h":3});
        page.write("2025-01-01", "nursery_set", nursery);
        page
    }

    fn coffee(page: &mut TestBook, on: &str) {
        let came = json!({"tray":"cof-1","species":"coffee","count":20,"from":"bought","form":"bag"});
        page.write(on, "plants_received", came);
        page.write(on, "outplanted", json!({"tray":"cof-1","bed":"Upper terrace","count":20}));
    }

    /// The stops of nurse work on a day, of today's walk and of what can wait.
    fn due(page: &TestBook, on: &str) -> Vec<(Task, NurseWork)> {
        let round = round(&page.whole(on));
        let all = round.stops.into_iter().chain(round.can_wait);
        all.filter_map(|stop| if let RoundReason::NurseWork(work) = stop.why { Some((stop.task, work)) } else { None })
            .collect()
    }

    fn tasks(page: &TestBook, on: &str) -> Vec<Task> {
        due(page, on).into_iter().map(|(task, _)| task).collect()
    }

    #[test]
    fn bunches_are_cut_when_they_are_ripe_and_what_was_cut_is_due_no_more() {
        let mut page = bed();
        page.nurses("2025-06-10", "banana", 40, 3.0);
        let showing = json!({"bed":"Upper terrace","nurse":"banana","alive":40,"bunches_showing":12});
        page.write("2026-04-01", "nurse_counted", showing);
        // 85 days later: 25 June, and from two weeks before on.
        assert_eq!(tasks(&page, "2026-06-10"), []);
        let (task, work) = due(&page, "2026-06-11").remove(0);
        assert_eq!(task, Task::CutBunches);
        assert!(
            matches!(work, NurseWork::Bunches { bunches: 12, about, .. } if about == day("2026-06-25")),
            "{work:?}"
        );
        let cut = json!({"bed":"Upper terrace","nurse":"banana","what":"harvest","count":12});
        page.write("2026-06-20", "nurse_cut", cut);
        assert_eq!(tasks(&page, "2026-06-21"), []);
    }

    #[test]
    fn tubers_are_lifted_before_they_are_wood() {
        let mut page = bed();
        page.nurses("2025-01-10", "cassava", 90, 2.0);
        // 18 months: to 11 July 2026, asked for in the last 60 days.
        assert!(!tasks(&page, "2026-05-10").contains(&Task::LiftTubers));
        let all = due(&page, "2026-05-13");
        let (_, work) = all.iter().find(|(task, _)| *task == Task::LiftTubers).unwrap();
        assert!(matches!(work, NurseWork::Tubers { plants: 90, loosens: Some(40), .. }), "{work:?}");
        assert!(Task::LiftTubers.facts().caution.is_some());
    }

    #[test]
    fn the_next_nurse_plants_are_set_before_the_shade_of_old_ones_ends_and_where_plants_need_it() {
        let mut page = bed();
        page.nurses("2024-06-01", "pigeon pea", 60, 2.0);
        coffee(&mut page, "2026-03-01");
        let by = {
            let (story, site) = page.story("2026-04-10");
            shade_ends(&story, &site, day("2026-04-10")).remove(0).set_next_by.unwrap()
        };
        let before = by.plus(-SET_AHEAD_DAYS - 1).to_string();
        let on = by.plus(-SET_AHEAD_DAYS).to_string();
        assert!(!tasks(&page, &before).contains(&Task::SetNurses));
        assert_eq!(tasks(&page, &on), [Task::SetNurses]);
        // Set, it is done.
        page.nurses(&on, "pigeon pea", 60, 2.0);
        assert!(!tasks(&page, &by.to_string()).contains(&Task::SetNurses));
        // Trees of full sun wait for no shade.
        let mut sunny = bed();
        let plan = json!([{"species":"grevillea","pattern":"square","row_m":3,"in_row_m":3}]);
        sunny.write(
            "2025-01-06",
            "bed_set",
            json!({"bed":"Upper terrace","field":"Old maize","length_m":30,"width_m":12,"edges":"half","plan":plan}),
        );
        sunny.nurses("2024-06-01", "pigeon pea", 60, 2.0);
        assert!(!tasks(&sunny, &on).contains(&Task::SetNurses));
    }

    #[test]
    fn what_is_past_its_life_is_taken_out() {
        let mut page = bed();
        page.nurses("2022-06-01", "pigeon pea", 60, 2.0);
        assert_eq!(tasks(&page, "2026-04-10"), [Task::RemoveNurses]);
        let cut = json!({"bed":"Upper terrace","nurse":"pigeon pea","what":"felled","share":1});
        page.write("2026-04-10", "nurse_cut", cut);
        assert_eq!(tasks(&page, "2026-04-11"), []);
    }
}
