//! The light of a bed as it is read now, against the band a species stands at planting.
//!
//! Readings decide. Where none counts, the light is reckoned from the nurse plants (`reckon/light`): what is wholly outside
//! the band holds back, what is wholly inside asks for a reading before many go, and anything between is not known.

use super::positions::part_seen;
use crate::base::{Day, SpeciesKey};
use crate::nursery::species::{Flag, NURSE_STANDS_ANY_LIGHT, Profile, Template};
use crate::reckon::light::coming::first_gap;
use crate::reckon::light::{BedLight, bed_light};
use crate::reckon::picture::quantity::{LightApart, LightBand, LightRead};
use crate::reckon::picture::{Basis, Criterion, Gap, LightNow, NoLight, Question, RuleSource, Source};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, LightLook, ends_reading};
use crate::reckon::tray::exposure::{light_band, stands_any_light};

/// A reading counts while it is under this many days old. Ours; a nurse plant's crown changes in two months.
pub(crate) const READING_LASTS_DAYS: i32 = 60;
/// A reading has half the weight of one this many days newer. Ours.
pub(crate) const HALF_WEIGHT_DAYS: f64 = 30.0;
/// What one reading is worth, as a share of the open light either way. Ours: a reading is one moment at one spot; of
/// several the mean is better by the square root of their number.
pub(crate) const ONE_READING_ERROR: f64 = 0.10;
/// However many were read, the mean is not better than this. Ours.
pub(crate) const LEAST_ERROR: f64 = 0.02;
/// Readings further apart than this, as a share of the open light, do not agree: the bed is not evenly lit, or one of them is wrong.
/// Ours: twice what one reading is worth.
pub(crate) const READINGS_APART: f64 = 2.0 * ONE_READING_ERROR;
/// Lets the ends of the band themselves be inside although 1 - 0.3 is not exact in a computer.
const FUZZ: f64 = 1e-9;

/// The mean of the readings that count on a day: every pair of a reading weighs as much, newer ones more. None is used from before
/// cuts and losses that took much of the nurse plants in the bed: it tells of a shade that no longer stands.
pub fn light_now(story: &BedStory, day: Day) -> Option<LightNow> {
    let counting: Vec<&LightLook> = counting(story, day).collect();
    let read_on = counting.iter().map(|look| look.day).max()?;
    let newness = |look: &LightLook| 0.5_f64.powf(f64::from(day.days_since(look.day)) / HALF_WEIGHT_DAYS);
    let weight = |look: &LightLook| f64::from(look.pairs.max(1)) * newness(look);
    let weights: f64 = counting.iter().map(|look| weight(look)).sum();
    let share = counting.iter().map(|look| weight(look) * look.share).sum::<f64>() / weights;
    Some(LightNow {
        share,
        read_on,
        apart: apart(&counting),
        basis: Basis::Measured,
        entries: counting.iter().map(|look| look.entry.clone()).collect(),
    })
}

/// How far readings lie apart, where that is more than one reading each is worth.
fn apart(looks: &[&LightLook]) -> Option<LightApart> {
    let low = looks.iter().map(|look| look.share).reduce(f64::min)?;
    let high = looks.iter().map(|look| look.share).reduce(f64::max)?;
    let since = looks.iter().map(|look| look.day).min()?;
    (high - low > READINGS_APART + FUZZ).then_some(LightApart { low, high, since })
}

/// The readings that count on a day, oldest first.
pub fn counting(story: &BedStory, day: Day) -> impl Iterator<Item = &LightLook> {
    story.light.iter().filter(move |look| {
        let age_days = day.days_since(look.day);
        let since = story.cuts.iter().filter(|cut| cut.order > look.order && cut.day <= day);
        (0..READING_LASTS_DAYS).contains(&age_days) && !ends_reading(since)
    })
}

/// The light a species stands at planting, as shares of the open light, with the source of the figures.
pub fn band(profile: Option<&Profile>) -> Option<(f64, f64, String)> {
    let (least, most) = light_band(profile)?;
    let profile = profile?;
    let figure = profile.outplant_shade_most_pct.as_ref().or(profile.outplant_shade_least_pct.as_ref());
    let source = figure.map_or_else(|| NURSE_STANDS_ANY_LIGHT.to_string(), |figure| figure.source.clone());
    Some((least, most, source))
}

/// Whether the light now is inside the species' band. It must be known.
pub(super) fn criterion(
    story: &BedStory,
    (species, profile): (&SpeciesKey, Option<&Profile>),
    (rows, reckoned): (Option<u32>, Option<&Result<BedLight, NoLight>>),
    day: Day,
) -> Criterion {
    let known = light_now(story, day);
    let Some((least, most, band)) = band(profile) else {
        let read = known.map(|light| light.entries).unwrap_or_default();
        let gap = Some(Gap::NoShadeBand(species.clone()));
        return Criterion::lacking(Question::LightNow, None, gap, true, RuleSource::NoFigure).resting_on(read);
    };
    let needed = LightBand { least, most };
    let Some(light) = known else { return unread(story, needed, band, (profile, reckoned), day) };
    let source = Source::LightReadings { band };
    let error = error_of(counting(story, day)) + FUZZ;
    let inside = light.share >= least - FUZZ && light.share <= most + FUZZ;
    let near = light.share >= least - error && light.share <= most + error;
    // Too bright by a band that nobody published: care is asked for, and the place is not refused.
    let only_bright = light.share > most && !bright_end_is_sure(profile);
    let fits = near || only_bright;
    let known = LightRead { share: light.share, apart: light.apart, reckoned: None };
    let mut criterion =
        Criterion::found(Question::LightNow, needed, known, light.basis, fits, source).resting_on(light.entries);
    criterion.warns = fits && (!inside || light.apart.is_some());
    // Read in some rows only: it counts, and says so.
    let in_part = fits && counting(story, day).all(|look| look.part.is_some());
    let newest = counting(story, day).filter(|_| in_part).max_by_key(|look| (look.day, look.order));
    criterion.seen_in_part(newest.and_then(|look| part_seen(look.part.as_ref(), rows)))
}

/// What is said of a bed whose light no reading tells: it must be known, and what is reckoned of it counts as it may be off.
fn unread(
    story: &BedStory,
    needed: LightBand,
    band: String,
    (profile, reckoned): (Option<&Profile>, Option<&Result<BedLight, NoLight>>),
    day: Day,
) -> Criterion {
    // The last reading is named although it is too old or from before a felling.
    let last = story.light.iter().rev().find(|look| look.day <= day).map(|look| look.entry.clone());
    let must_be_known = !stands_any_light(profile);
    let lacking = |gap: Option<Gap>, source: Source| {
        Criterion::lacking(Question::LightNow, Some(needed), gap, must_be_known, source).resting_on(last.clone())
    };
    let light = match reckoned {
        None => return lacking(None, Source::LightReadings { band }),
        Some(Err(why)) => {
            return lacking(Some(Gap::LightNotReckoned(why.clone())), Source::LightReadings { band });
        }
        Some(Ok(light)) => light,
    };
    let (span, source) = (light.span, Source::LightReckoned { band });
    // Brighter than a band that nobody published is not known to harm.
    let brightest = if bright_end_is_sure(profile) { needed.most } else { 1.0 };
    let inside = span.low >= needed.least - FUZZ && span.high <= brightest + FUZZ;
    let outside = span.high < needed.least - FUZZ || span.low > brightest + FUZZ;
    let criterion = if inside || outside {
        let known = LightRead { share: span.share, apart: None, reckoned: Some(span) };
        let mut found = Criterion::found(Question::LightNow, needed, known, Basis::Reckoned, inside, source);
        found.warns = inside;
        found.resting_on(last)
    } else {
        lacking(Some(Gap::LightReckoned(span)), source)
    };
    criterion.resting_on(light.entries.iter().cloned())
}

/// The light of a bed for a species as it is reckoned: where no reading counts, nurse plants were written, and the species
/// does not stand any light.
pub(super) fn reckoned(
    story: &BedStory,
    site: &Site,
    (species, profile): (&SpeciesKey, Option<&Profile>),
    day: Day,
) -> Option<Result<BedLight, NoLight>> {
    let nursed = story.nurses.iter().any(|nurse| nurse.day <= day);
    let asked = nursed && band(profile).is_some() && !stands_any_light(profile) && light_now(story, day).is_none();
    let layout = story.layout.on(day).filter(|_| asked)?;
    Some(bed_light(story, site, layout, species, day))
}

/// How far the mean of some readings may be off, as a share of the open light.
fn error_of<'a>(looks: impl Iterator<Item = &'a LightLook>) -> f64 {
    let readings: u32 = looks.map(|look| look.pairs.max(1)).fold(0, u32::saturating_add);
    (ONE_READING_ERROR / f64::from(readings.max(1)).sqrt()).max(LEAST_ERROR)
}

/// Whether more light than the band is known to harm: shade plants, and bands that were read in a publication or are
/// common practice. Of the others the bright end is from memory alone.
fn bright_end_is_sure(profile: Option<&Profile>) -> bool {
    let shade_plant = |profile: &Profile| {
        profile.hardening_template.as_ref().is_some_and(|template| template.value == Template::Shade)
    };
    let known = |profile: &Profile| {
        let flag = profile.outplant_shade_least_pct.as_ref().map(|figure| figure.flag);
        !matches!(flag, Some(Flag::Memory | Flag::Ours) | None)
    };
    profile.is_some_and(|profile| shade_plant(profile) || known(profile))
}

/// The light of the coming months: that much of the shade ends asks for care where more light would harm, with when and
/// with what. It never blocks.
pub(super) fn coming(
    story: &BedStory,
    site: &Site,
    (species, profile): (&SpeciesKey, Option<&Profile>),
    day: Day,
) -> Criterion {
    let Some((least, most, _)) = band(profile) else {
        let gap = Some(Gap::NoShadeBand(species.clone()));
        return Criterion::lacking(Question::LightComing, None, gap, false, RuleSource::LightToCome);
    };
    let needed = Some(LightBand { least, most });
    let harms = most < 1.0 - FUZZ && bright_end_is_sure(profile) && !stands_any_light(profile);
    let ends = Some(story).filter(|_| harms).and_then(|story| first_gap(story, site, day));
    let entry = ends.as_ref().map(|end| end.entry.clone());
    let gap = ends.map(|end| Gap::ShadeEnds { is_late: end.is_late(day), end });
    let mut criterion = Criterion::lacking(Question::LightComing, needed, gap, false, RuleSource::LightToCome);
    criterion.warns = entry.is_some();
    criterion.resting_on(entry)
}
