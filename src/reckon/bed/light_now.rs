//! The light of a bed as it is read now, against the band a species stands at planting.
//!
//! Only readings decide here. A model of the light under growing nurse plants can take the place of [`light_now`] where
//! nothing was read, and answer [`coming`].

use super::positions::part_seen;
use crate::base::{Day, SpeciesKey};
use crate::nursery::species::Profile;
use crate::reckon::picture::{Basis, Criterion, Gap, LightNow, Measure, Rule, RuleSource, Source};
use crate::reckon::stock::{BedStory, LightLook};
use crate::reckon::tray::exposure::light_band;

/// A reading counts while it is under this many days old. Ours; a nurse plant's crown changes in two months.
pub(crate) const READING_LASTS_DAYS: i32 = 60;
/// A reading has half the weight of one this many days newer. Ours.
pub(crate) const HALF_WEIGHT_DAYS: f64 = 30.0;
/// How far outside the band still fits, as a share of the open light. Ours: a reading is not better than that.
pub(crate) const TOLERANCE: f64 = 0.02;
/// Lets the ends of the band themselves be inside although 1 - 0.3 is not exact in a computer.
const FUZZ: f64 = 1e-9;

/// The mean of the readings that count on a day, newer ones weighing more. None from before the last cut or loss that took
/// much of the nurse plants in the bed is used: it tells of a shade that no longer stands.
pub fn light_now(story: &BedStory, day: Day) -> Option<LightNow> {
    let counting: Vec<&LightLook> = counting(story, day).collect();
    let read_on = counting.iter().map(|look| look.day).max()?;
    let weight = |look: &LightLook| 0.5_f64.powf(f64::from(day.days_since(look.day)) / HALF_WEIGHT_DAYS);
    let weights: f64 = counting.iter().map(|look| weight(look)).sum();
    let share = counting.iter().map(|look| weight(look) * look.share).sum::<f64>() / weights;
    Some(LightNow {
        share,
        read_on,
        basis: Basis::Measured,
        entries: counting.iter().map(|look| look.entry.clone()).collect(),
    })
}

/// The readings that count on a day, oldest first.
pub fn counting(story: &BedStory, day: Day) -> impl Iterator<Item = &LightLook> {
    let opened = story.cuts.iter().filter(|cut| cut.opens_light && cut.day <= day).map(|cut| cut.order).max();
    story.light.iter().filter(move |look| {
        let age_days = day.days_since(look.day);
        (0..READING_LASTS_DAYS).contains(&age_days) && opened.is_none_or(|cut| look.order > cut)
    })
}

/// The light a species stands at planting, as shares of the open light, with the source of the figures.
pub fn band(profile: Option<&Profile>) -> Option<(f64, f64, String)> {
    let (least, most) = light_band(profile)?;
    let profile = profile?;
    let figure = profile.outplant_shade_most_pct.as_ref().or(profile.outplant_shade_least_pct.as_ref())?;
    Some((least, most, figure.source.clone()))
}

/// Whether the light now is inside the species' band. It must be known.
pub fn criterion(
    story: &BedStory,
    (species, profile): (&SpeciesKey, Option<&Profile>),
    rows: Option<u32>,
    day: Day,
) -> Criterion {
    let known = light_now(story, day);
    let Some((least, most, band)) = band(profile) else {
        let read = known.map(|light| light.entries).unwrap_or_default();
        return Criterion::unknown(Rule::LightNow, None, true, RuleSource::NoFigure)
            .resting_on(read)
            .lacking(Some(Gap::NoShadeBand(species.clone())));
    };
    let needed = Measure::LightBand { least, most };
    let source = Source::LightReadings { band };
    let Some(light) = known else {
        // The last reading is named although it is too old or from before a felling.
        let last = story.light.iter().rev().find(|look| look.day <= day).map(|look| look.entry.clone());
        return Criterion::unknown(Rule::LightNow, Some(needed), true, source).resting_on(last);
    };
    let inside = light.share >= least - TOLERANCE - FUZZ && light.share <= most + TOLERANCE + FUZZ;
    let criterion = Criterion::known(Rule::LightNow, needed, Measure::Light(light.share), light.basis, inside, source)
        .resting_on(light.entries);
    // Read in some rows only: it counts, and says so.
    let in_part = inside && counting(story, day).all(|look| look.part.is_some());
    let newest = counting(story, day).filter(|_| in_part).max_by_key(|look| (look.day, look.order));
    criterion.seen_in_part(newest.and_then(|look| part_seen(look.part.as_ref(), rows)))
}

/// The light of the coming months: not reckoned yet, so it neither blocks nor warns.
pub fn coming(species: &SpeciesKey, profile: Option<&Profile>) -> Criterion {
    let needed = band(profile).map(|(least, most, _)| Measure::LightBand { least, most });
    let gap = needed.is_none().then(|| Gap::NoShadeBand(species.clone()));
    Criterion::unknown(Rule::LightComing, needed, false, RuleSource::LightToCome).lacking(gap)
}
