//! The step of light from a tray to where it goes: by how many times, and by how much of the open light. Both together
//! burn: 20 to 35 % is 1.75 times and burns little, 65 to 100 % is 1.54 times and burns.

use crate::base::{EntryId, SpeciesKey};
use crate::nursery::species::{Profile, Role};
use crate::reckon::picture::quantity::{LightStep, RatioAtMost};
use crate::reckon::picture::{Basis, Criterion, Gap, Question, RuleSource};
use crate::reckon::tray::hardening;
use crate::reckon::tray::light::{LAST_LIGHT_DAYS, LastLight};
use crate::science::light::exposure_ratio;

/// A step up to this ratio fits without a warning (ours; no publication gives a safe number).
pub(crate) const FITS_UP_TO: f64 = 1.3;
/// A step of more than [`LARGE_STEP`] blocks above this ratio (ours: a net of 30 %, the commonest, may be taken off last, with care).
pub(crate) const LARGE_STEP_RATIO: f64 = 1.45;
/// A step of more than this share of the open light is large (ours: about 30 % burns).
pub(crate) const LARGE_STEP: f64 = 0.29;
/// A step of more than [`SMALL_STEP`] blocks above this ratio (ours).
pub(crate) const STEEP_RATIO: f64 = 2.0;
/// Up to this share of the open light a step never blocks (ours).
pub(crate) const SMALL_STEP: f64 = 0.15;
/// A species of full sun stands this share of the open light as well: no band begins higher (ours; a reading and a
/// passing cloud are not better than that).
pub(crate) const FULL_SUN_FROM: f64 = 0.70;
/// A step down below this ratio warns (ours).
pub(crate) const DARKER_WARNS_BELOW: f64 = 0.5;

const SOURCE: RuleSource = RuleSource::LightStep;

/// The band of light a species stands at planting, as shares of the open light: 1 - its shade band. Where the profile gives
/// only one end, the other is open (no shade, or full shade); where it gives neither, a nurse plant stands any light, and of
/// other species nothing is known.
pub(crate) fn light_band(profile: Option<&Profile>) -> Option<(f64, f64)> {
    let profile = profile?;
    let least_shade = profile.outplant_shade_least_pct.as_ref().map(|figure| figure.value);
    let most_shade = profile.outplant_shade_most_pct.as_ref().map(|figure| figure.value);
    if least_shade.or(most_shade).is_none() {
        // A nurse plant is planted in the open, or wherever it is to give shade.
        return (profile.role == Role::Nurse).then_some((0.0, 1.0));
    }
    let (least_shade, most_shade) = (least_shade.unwrap_or(0.0), most_shade.unwrap_or(100.0));
    let least = (1.0 - most_shade / 100.0).min(FULL_SUN_FROM);
    Some((least, 1.0 - least_shade / 100.0))
}

/// Whether a species stands any light and goes out soft: a nurse plant whose profile says neither how much shade it wants nor
/// how long it is hardened.
pub(crate) fn stands_any_light(profile: Option<&Profile>) -> bool {
    let soft = |profile: &Profile| profile.role == Role::Nurse && hardening::template_days(Some(profile)) == 0;
    profile.is_some_and(soft) && light_band(profile) == Some((0.0, 1.0))
}

/// The criterion `exposure_step` of a tray without a bed: the darkest light of the species' band must be in reach.
pub(crate) fn toward_band(
    last: Option<&LastLight>,
    species: Option<&SpeciesKey>,
    profile: Option<&Profile>,
) -> Criterion {
    match (last, light_band(profile)) {
        (Some(last), Some((least, most))) if last.share > 0.0 => {
            let nearest = last.share.clamp(least, most);
            step(last, nearest, Vec::new())
        }
        (Some(last), None) if last.share > 0.0 => {
            let gap = species.map(|species| Gap::NoShadeBand(species.clone()));
            Criterion::lacking(Question::ExposureStep, None, gap, true, RuleSource::NoFigure)
                .resting_on(last.entries.iter().cloned())
        }
        (Some(_) | None, _) => Criterion::unknown(Question::ExposureStep, None, true, SOURCE),
    }
}

/// The criterion `exposure_step` of a tray and a bed. Darker than the species stands is the bed's own `light_now`.
pub(crate) fn toward_bed(last: Option<&LastLight>, bed: Option<(f64, &[EntryId])>) -> Criterion {
    match (last, bed) {
        (Some(last), Some((share, entries))) if last.share > 0.0 => step(last, share, entries.to_vec()),
        _ => Criterion::unknown(Question::ExposureStep, None, true, SOURCE),
    }
}

fn step(last: &LastLight, to: f64, bed_entries: Vec<EntryId>) -> Criterion {
    let Ok(ratio) = exposure_ratio(to, last.share) else {
        return Criterion::unknown(Question::ExposureStep, None, true, SOURCE);
    };
    let basis = if last.basis == Basis::Measured { Basis::Measured } else { Basis::Reckoned };
    // What came too far into the light here may be scorched, wherever it goes: it shows within days.
    let in_sun = last.leap.filter(|_| last.in_sun);
    let burns = in_sun.or(last.burns).map(|burnt| (burnt.to, burnt.since));
    let (back, rests_until) = (last.back, last.rests_until);
    let known = LightStep { from: last.share, to, burns, in_sun: in_sun.is_some(), back, rests_until };
    let brightest = brightest_from(last.share);
    // A hair of rounding must not decide: 0.40 + 0.29 is 0.69.
    let met = to <= brightest + 1e-9 && burns.is_none();
    let needed = RatioAtMost(brightest / last.share);
    let mut criterion = Criterion::found(Question::ExposureStep, needed, known, basis, met, SOURCE)
        .resting_on(last.entries.iter().cloned())
        .resting_on(bed_entries);
    // So does a bench that became so much brighter in these days, short of burning: there may be scorch to look for.
    let stepped = last.changed.is_some_and(|changed| changed.to > changed.from * FITS_UP_TO + 1e-9);
    criterion.warns = met && (stepped || back.is_some() || !(DARKER_WARNS_BELOW..=FITS_UP_TO + 1e-9).contains(&ratio));
    // While they stand in that sun no day ends it.
    let shows_until =
        burns.filter(|_| in_sun.is_none() && to <= brightest + 1e-9).map(|(_, since)| since.plus(LAST_LIGHT_DAYS));
    criterion.expected_on(shows_until).of_those(last.joined)
}

/// The brightest light, as a share of the open light, to which plants may go in one step from a light: a step blocks when
/// it is large and more than a third brighter, or more than twice as bright and not small.
pub(crate) fn brightest_from(light: f64) -> f64 {
    let not_large = (light + LARGE_STEP).max(light * LARGE_STEP_RATIO);
    let not_steep = (light + SMALL_STEP).max(light * STEEP_RATIO);
    not_large.min(not_steep)
}
