//! What this nursery has seen of a species, beside what the handbook says.
//!
//! Trays that are not finished, and those thrown out, count as censored: at the last look it had not happened yet. Under five
//! trays the handbook leads: it weighs as much as five trays.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::learned::sown_looks;
use super::{ForecastBasis, species_days};
use crate::base::cores::on_every_core;
use crate::base::{Day, SpeciesKey};
use crate::nursery::species::Profile;
use crate::reckon::picture::Picture;
use crate::reckon::stock::{Origin, TrayStory};
use crate::reckon::tray::{size, time};
use crate::science::life_table::{AtTime, happened_by, lives_through, median_time};

/// The handbook weighs as much as so many trays. Ours; the same as for sowings.
pub(crate) const HANDBOOK_TRAYS: f64 = 5.0;
/// Share of seedlings that live through the nursery. Common practice: 5-10 % die.
pub(crate) const USUAL_SURVIVAL: f64 = 0.925;
/// Share of the survivors thrown out when grading. Common practice: 10-25 %.
pub(crate) const USUAL_CULLS: f64 = 0.175;
/// A tray has become plantable with this share of a sample passing. Ours.
const PASSING_SHARE: f64 = 0.5;

/// One figure: by the handbook, by this nursery, and what is used.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Learned {
    /// By the profile, else by common practice.
    pub handbook: Option<f64>,
    /// By the trays of this nursery alone.
    pub here: Option<f64>,
    /// Trays that tell it.
    pub trays: usize,
    /// Trays of which only is known that it had not happened by the last look.
    pub censored: usize,
    /// What forecasts use.
    pub used: Option<f64>,
    /// The least and the most of the trays that tell it, where that is asked of each tray alone and they differ.
    pub between: Option<(f64, f64)>,
}

impl Learned {
    fn new(
        handbook: Option<f64>,
        here: Option<f64>,
        trays: usize,
        censored: usize,
        forecast_basis: ForecastBasis,
    ) -> Learned {
        let used = match (handbook, here.filter(|_| trays > 0 && forecast_basis == ForecastBasis::OwnRecords)) {
            (Some(handbook), Some(here)) => Some(shrunk(handbook, here, trays)),
            (None, Some(here)) => Some(here),
            (handbook, None) => handbook,
        };
        Learned { handbook, here, trays, censored, used, between: None }
    }
}

/// The mean of the handbook, weighing as five trays, and of so many trays.
pub(crate) fn shrunk(handbook: f64, here: f64, trays: usize) -> f64 {
    let weight = trays as f64;
    (HANDBOOK_TRAYS * handbook + weight * here) / (HANDBOOK_TRAYS + weight)
}

/// What is known of a species, from both.
#[derive(Clone, PartialEq, Debug)]
pub struct Experience {
    /// Days from sowing until a tray can go out: median.
    pub days_to_plantable: Learned,
    /// Share of seeds that come up by the species' last day.
    pub germination: Learned,
    /// Share of seedlings that live through the nursery.
    pub survival: Learned,
    /// Share of those thrown out when grading.
    pub culls: Learned,
}

/// What is known of every species that has a tray here.
pub fn experiences(picture: &Picture, forecast_basis: ForecastBasis) -> BTreeMap<SpeciesKey, Experience> {
    let mut of_species: BTreeMap<SpeciesKey, Vec<&Arc<TrayStory>>> = BTreeMap::new();
    for story in picture.stories() {
        if let Some(key) = &story.species {
            of_species.entry(key.clone()).or_default().push(story);
        }
    }
    let of_species: Vec<(SpeciesKey, Vec<&Arc<TrayStory>>)> = of_species.into_iter().collect();
    let told = on_every_core(&of_species, |(key, stories)| {
        let profile = picture.site.profile(key).map(Arc::as_ref);
        of_stories(stories, profile, picture.day, forecast_basis)
    });
    of_species.into_iter().map(|(key, _)| key).zip(told).collect()
}

/// What is known of a species that has no tray here.
pub(crate) fn by_handbook(profile: Option<&Profile>) -> Experience {
    of_stories(&[], profile, Day::from_number(0), ForecastBasis::Handbook)
}

fn of_stories(
    stories: &[&Arc<TrayStory>],
    profile: Option<&Profile>,
    day: Day,
    forecast_basis: ForecastBasis,
) -> Experience {
    let days_to_plantable = days_to_plantable(stories, profile, day, forecast_basis);
    Experience {
        days_to_plantable,
        germination: germination(stories, profile, forecast_basis),
        survival: survival(stories, profile, days_to_plantable, day, forecast_basis),
        culls: culls(stories, forecast_basis),
    }
}

/// A tray became plantable on the day of the first sample of which half passes, where none had gone out before: a day on which plants
/// went out tells when it rained or there were hands. One that went out without such a sample had not come so far at the last sample
/// that failed, and tells no more; one that was moved on whole goes on in another tray and is no case of its own.
fn days_to_plantable(
    stories: &[&Arc<TrayStory>],
    profile: Option<&Profile>,
    day: Day,
    forecast_basis: ForecastBasis,
) -> Learned {
    let usual = profile.and_then(|profile| {
        let usual = profile.plantable_usual_days.as_ref().or(profile.plantable_least_days.as_ref());
        usual.map(|figure| figure.value)
    });
    let (mut at, mut told, mut censored) = (Vec::new(), Vec::new(), 0);
    for story in stories {
        let Some(sown) = time::age(story, day).youngest_on.filter(|_| !story.sowings.is_empty()) else { continue };
        let passed = story.samples.iter().find(|sample| {
            let (pass, of) = size::passing(story, profile, sample);
            of > 0 && f64::from(pass) >= PASSING_SHARE * f64::from(of)
        });
        let out = story.first_planted;
        let became = passed.map(|sample| sample.day).filter(|on| out.is_none_or(|out| *on <= out));
        let moved_on_whole = story.accounts.standing == 0 && story.accounts.moved_out > 0;
        if let Some(on) = became {
            let days = f64::from(on.days_since(sown));
            at.push(AtTime { time: days, happened: 1.0, censored: 0.0 });
            told.push(days);
        } else if let Some(last) = last_not_yet(story, day).filter(|_| !moved_on_whole) {
            at.push(AtTime { time: f64::from(last.days_since(sown)), happened: 0.0, censored: 1.0 });
            censored += 1;
        }
    }
    let (least, most) = (told.iter().copied().reduce(f64::min), told.iter().copied().reduce(f64::max));
    let between = least.zip(most).filter(|(least, most)| least < most);
    Learned { between, ..Learned::new(usual, median_time(&at), told.len(), censored, forecast_basis) }
}

/// The last day on which a tray was known not to have come so far: the last sample before plants went out; where none went out, the last
/// day on which its plants were seen.
fn last_not_yet(story: &TrayStory, day: Day) -> Option<Day> {
    match story.first_planted {
        Some(out) => story.samples.iter().map(|sample| sample.day).filter(|on| *on <= out).max(),
        None => last_seen(story, day),
    }
}

/// The last day on which plants of a tray were seen: the day looked at where they stand; none where there never were any.
fn last_seen(story: &TrayStory, day: Day) -> Option<Day> {
    if story.accounts.standing > 0 {
        return Some(day);
    }
    let counted = story.counts.iter().filter(|look| look.standing > 0).map(|look| look.day);
    counted.chain(story.samples.iter().map(|sample| sample.day)).max()
}

/// Product limit over seeds: those not up at a sowing's last look are censored there.
fn germination(stories: &[&Arc<TrayStory>], profile: Option<&Profile>, forecast_basis: ForecastBasis) -> Learned {
    let fresh = profile.and_then(|profile| profile.germination_fresh_pct.as_ref()).map(|figure| figure.value / 100.0);
    let Some(days) = profile.and_then(species_days) else { return Learned::new(fresh, None, 0, 0, forecast_basis) };
    let (mut at, mut told, mut censored) = (Vec::new(), 0, 0);
    for seen in stories.iter().filter_map(|story| sown_looks(story, days.half)) {
        let looks = &seen.looks;
        for (edge, up) in looks.edges().iter().skip(1).zip(looks.counts()) {
            at.push(AtTime { time: *edge, happened: *up, censored: 0.0 });
        }
        at.push(AtTime { time: looks.last_look(), happened: 0.0, censored: looks.seeds() - looks.emerged() });
        if looks.last_look() < days.last { censored += 1 } else { told += 1 }
    }
    let until = at.iter().map(|one| one.time).fold(days.last, f64::max);
    Learned::new(fresh, happened_by(&at, until), told, censored, forecast_basis)
}

/// Deaths in all plant-days from one count to the next, over the days from half emergence to plantable.
fn survival(
    stories: &[&Arc<TrayStory>],
    profile: Option<&Profile>,
    to_plantable: Learned,
    day: Day,
    forecast_basis: ForecastBasis,
) -> Learned {
    let half = profile.and_then(species_days).map_or(0.0, |days| days.half);
    let nursery_days = to_plantable.used.map(|days| (days - half).max(0.0));
    let (mut deaths, mut plant_days, mut told, mut censored) = (0.0, 0.0, 0, 0);
    for story in stories {
        let exposed = exposure(story, day);
        if exposed <= 0.0 {
            continue;
        }
        plant_days += exposed;
        deaths += story.accounts.lost_in_all() as f64;
        let finished = story.accounts.planted > 0 || story.accounts.given_out > 0;
        if finished { told += 1 } else { censored += 1 }
    }
    let here = nursery_days.and_then(|days| lives_through(deaths, plant_days, days));
    Learned::new(Some(USUAL_SURVIVAL), here.filter(|_| told > 0), told, censored, forecast_basis)
}

/// Plant-days of a tray: straight lines between the counts, from arrival or the first count to the last, or to the day.
fn exposure(story: &TrayStory, day: Day) -> f64 {
    let mut points: Vec<(Day, f64)> = Vec::new();
    let came = story.accounts.arrived + story.accounts.moved_in;
    let begun = match &story.origin {
        Some(Origin::Received { day, .. }) => Some(*day),
        Some(Origin::MovedOn(_) | Origin::Sown) | None => story.made_on,
    };
    points.extend(begun.filter(|_| came > 0).map(|on| (on, came as f64)));
    let whole = story.counts.iter().filter(|look| look.part_of_cells.is_none());
    points.extend(whole.map(|look| (look.day, f64::from(look.standing))));
    if story.accounts.standing > 0 {
        points.push((day, story.accounts.standing as f64));
    }
    points.sort_by_key(|(on, _)| *on);
    let spans = points.windows(2).map(|two| f64::from(two[1].0.days_since(two[0].0)) * (two[0].1 + two[1].1) / 2.0);
    spans.sum()
}

/// Thrown out over thrown out, planted and given, of trays in which any of it happened.
fn culls(stories: &[&Arc<TrayStory>], forecast_basis: ForecastBasis) -> Learned {
    let (mut culled, mut graded, mut told, mut censored) = (0.0, 0.0, 0, 0);
    for story in stories {
        let accounts = &story.accounts;
        let out = accounts.culled_in_all() + accounts.planted + accounts.given_out;
        if accounts.planted + accounts.given_out > 0 {
            culled += accounts.culled_in_all() as f64;
            graded += out as f64;
            told += 1;
        } else if accounts.standing > 0 {
            censored += 1;
        }
    }
    Learned::new(Some(USUAL_CULLS), (graded > 0.0).then(|| culled / graded), told, censored, forecast_basis)
}
