//! The shade to come: which nurse plants end when, how much of the shade goes with them, by when to set the next.

use super::crown::DAYS_PER_MONTH;
pub(crate) use super::stand::has_followers;
use super::stand::{FOLLOWER_LEAVES, Stand, When, stands};
use crate::base::Day;
use crate::nursery::entry::types::CutWhat;
use crate::nursery::species::{Figure, Profile};
use crate::reckon::picture::quantity::{EndsBy, ShadeEnd};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, GroundLook, NurseStory};

/// A bunch that shows is cut so many days later. Common practice: 75 to 110 days; Ulloa 2017 reads 12 weeks of a plantain.
pub(crate) const BUNCH_DAYS: i32 = 85;
/// So many days ahead a verdict looks for the end of shade. Ours: a young tree's first half year.
pub(crate) const SHADE_AHEAD_DAYS: i32 = 183;
/// Shade that ends is told from this share of a bed's shade on. Ours: no bed is to lose more in a month.
pub(crate) const SHADE_ENDS_SHARE: f64 = 0.25;
/// Days that a page looks ahead: two years.
const PAGE_AHEAD_DAYS: i32 = 731;
/// Of stems that were nearly all cut the rest has no end of its own. Ours.
const REST_TELLS: f64 = 0.05;

/// What ends within two years, first things first.
pub(crate) fn shade_ends(story: &BedStory, site: &Site, day: Day) -> Vec<ShadeEnd> {
    ends_until(story, site, day, day.plus(PAGE_AHEAD_DAYS)).into_iter().map(|one| one.end).collect()
}

/// The first end within half a year that takes much of the shade.
pub(crate) fn first_gap(story: &BedStory, site: &Site, day: Day) -> Option<ShadeEnd> {
    let soon = ends_until(story, site, day, day.plus(SHADE_AHEAD_DAYS));
    soon.into_iter().map(|one| one.end).find(|end| end.share >= SHADE_ENDS_SHARE)
}

/// An end with the share of the cohort's stems that goes.
struct End {
    end: ShadeEnd,
    of_stems: f64,
}

/// Plants whose day nobody wrote have no end that can be told, but for bunches that were seen.
fn ends_until(story: &BedStory, site: &Site, day: Day, until: Day) -> Vec<End> {
    let mut all = Vec::new();
    for nurse in story.nurses.iter().filter(|nurse| nurse.alive > 0 && nurse.day <= day) {
        let Some(profile) = site.profile(&nurse.nurse) else { continue };
        let ends = ends_of(story, nurse, profile, day).into_iter().filter(|one| one.end.about <= until);
        all.extend(ends.map(|one| End { end: with_share(story, site, nurse, one.end), ..one }));
    }
    all.sort_by_key(|one| one.end.about);
    all
}

/// When the stems of a cohort are cut with their bunches: by what, the day, and the share of its stems.
pub(crate) fn stems_to_cut(
    story: &BedStory,
    nurse: &NurseStory,
    profile: &Profile,
    day: Day,
) -> Vec<(EndsBy, Day, f64)> {
    let ends = ends_of(story, nurse, profile, day).into_iter().filter(|one| one.end.by != EndsBy::Age);
    ends.map(|one| (one.end.by, one.end.about, one.of_stems)).collect()
}

/// The ends of a cohort, each with the share of the cohort's own shade that goes.
fn ends_of(story: &BedStory, nurse: &NurseStory, profile: &Profile, day: Day) -> Vec<End> {
    let months = |figure: &Option<Figure<f64>>| figure.as_ref().map(|figure| figure.value);
    let after = |from: Day, months: f64| from.plus((months * DAYS_PER_MONTH).round() as i32);
    let shades_after = months(&profile.useful_shade_months);
    let end = |by: EndsBy, about: Day, of_stems: f64| {
        let share = if by == EndsBy::Age { of_stems } else { of_stems * (1.0 - FOLLOWER_LEAVES) };
        let set_next_by = shades_after.map(|months| after(about, -months));
        let (nurse, entry) = (nurse.nurse.clone(), nurse.entry.clone());
        End { end: ShadeEnd { nurse, by, about, share, set_next_by, entry }, of_stems }
    };
    let (least, most) = (months(&profile.stem_life_least_months), months(&profile.stem_life_most_months));
    let mut ends = Vec::new();
    if !has_followers(profile) {
        let about = most.filter(|_| nurse.planted > 0).map(|months| after(nurse.day, months));
        ends.extend(about.filter(|about| *about > day).map(|about| end(EndsBy::Age, about, 1.0)));
        return ends;
    }
    let cut = cut_share(story, nurse);
    let showing = f64::from(nurse.bunches_showing.unwrap_or(0).min(nurse.alive)) / f64::from(nurse.alive.max(1));
    let shown = nurse.counted_on.zip(nurse.bunches_showing).filter(|(_, bunches)| *bunches > 0);
    if let Some((counted, bunches)) = shown {
        let about = counted.plus(BUNCH_DAYS).max(day);
        // What was cut since the count were the bunches.
        let left = showing - cut_since(story, nurse, counted);
        if left > 0.0 {
            ends.push(end(EndsBy::Bunches(bunches), about, left));
        }
    }
    let rest = 1.0 - cut - showing;
    if let Some((least, most)) = least.zip(most).filter(|_| nurse.planted > 0 && rest > REST_TELLS) {
        let about = after(nurse.day, (least + most) / 2.0);
        if about > day {
            ends.push(end(EndsBy::Stems, about, rest));
        }
    }
    ends
}

fn takes_stems(cut: &GroundLook, nurse: &NurseStory) -> bool {
    let of_it = cut.nurse == nurse.nurse && cut.day >= nurse.day;
    of_it && matches!(cut.what, Some(CutWhat::Harvest | CutWhat::Stem))
}

/// The share of its stems that was cut.
fn cut_share(story: &BedStory, nurse: &NurseStory) -> f64 {
    story.cuts.iter().filter(|cut| takes_stems(cut, nurse)).map(|cut| cut.share).sum::<f64>().min(1.0)
}

fn cut_since(story: &BedStory, nurse: &NurseStory, day: Day) -> f64 {
    let since = story.cuts.iter().filter(|cut| cut.day >= day && takes_stems(cut, nurse));
    since.map(|cut| cut.share).sum::<f64>().min(1.0)
}

/// The same with the share of the shade of the whole bed: its leaves among those of all that then stand.
fn with_share(story: &BedStory, site: &Site, nurse: &NurseStory, end: ShadeEnd) -> ShadeEnd {
    let Some(bed) = story.layout.on(end.about) else { return end };
    let standing = stands(story, site, bed, When { day: end.about, before: None });
    let leaf = |stand: &Stand| {
        let ((height_m, radius_m), (density, extinction)) = (stand.size, stand.density);
        stand.spots.len() as f64 * height_m * radius_m * radius_m * density * extinction
    };
    let share = standing.ok().map(|standing| {
        let all: f64 = standing.iter().map(leaf).sum();
        let own: f64 = standing.iter().filter(|stand| stand.entry == nurse.entry).map(leaf).sum();
        if all > 0.0 { end.share * own / all } else { 0.0 }
    });
    // Where it cannot be reckoned, what is known of the cohort alone.
    ShadeEnd { share: share.unwrap_or(end.share), ..end }
}

/// The story as it goes on by itself: stems are cut with their bunches when those are due, and nothing else is done.
pub(crate) fn going_on(story: &BedStory, site: &Site, day: Day) -> BedStory {
    let mut later = story.clone();
    for one in ends_until(story, site, day, day.plus(PAGE_AHEAD_DAYS)) {
        if one.end.by != EndsBy::Age {
            later.cuts.push(GroundLook {
                day: one.end.about,
                nurse: one.end.nurse,
                what: Some(CutWhat::Harvest),
                plants: None,
                share: one.of_stems,
                lets_light_in: true,
                lifts_tubers: false,
                yield_kg: None,
                order: usize::MAX,
                entry: one.end.entry,
            });
        }
    }
    later
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::SpeciesKey;
    use crate::nursery::species::Catalogue;
    use crate::reckon::light::stand::FOLLOWER_GROWN_DAYS;

    const HANDBOOK: &str = include_str!("../../../tests/reference/handbook_examples.tsv");

    fn number(id: &str, cell: usize, name: &str) -> f64 {
        let line = HANDBOOK.lines().find(|line| line.starts_with(&format!("{id}\t"))).unwrap();
        let told: serde_json::Value = serde_json::from_str(line.split('\t').nth(cell).unwrap()).unwrap();
        told[name].as_f64().unwrap()
    }

    #[test]
    fn bunches_and_followers_take_the_days_that_were_published() {
        // N15, Ulloa et al. 2017: flower to harvest of a plantain, and its bunch.
        assert!((number("N15", 3, "days") - f64::from(BUNCH_DAYS)).abs() < 1.0);
        let catalogue = Catalogue::built_in();
        let of = |key: &str| catalogue.get(&SpeciesKey::new(key)).unwrap().clone();
        let plantain = of("PLA");
        let kg = |figure: &Option<Figure<f64>>| figure.as_ref().unwrap().value;
        let bunch_kg = number("N15", 2, "bunch_kg");
        assert!(kg(&plantain.yield_least_kg) <= bunch_kg && bunch_kg <= kg(&plantain.yield_most_kg));
        // N14, El-Khawaga 2013: from the plant crop to the first ratoon; a follower is grown when it is to bear.
        let ratoon = number("N14", 3, "interval_d");
        assert!((FOLLOWER_GROWN_DAYS / ratoon - 1.0).abs() < 0.15, "{ratoon}");
        // Common practice: banana and plantain bear at 10 to 11 months, and a stem only once.
        for key in ["BAN", "PLA"] {
            let profile = of(key);
            assert!(has_followers(&profile) && profile.dies_after_fruiting.as_ref().unwrap().value, "{key}");
            assert!(kg(&profile.fruiting_first_month) <= 11.0 && kg(&profile.stem_life_most_months) >= 11.0, "{key}");
        }
    }
}
