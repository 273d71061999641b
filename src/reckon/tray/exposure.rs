//! The step of light from a tray to where it goes: a ratio, not points.

use crate::base::{EntryId, SpeciesKey};
use crate::nursery::species::Profile;
use crate::reckon::picture::{Basis, Criterion, Gap, Measure, Rule, RuleSource};
use crate::reckon::tray::light::LastLight;
use crate::science::light::exposure_ratio;

/// A step up to this ratio fits (ours).
pub(crate) const FITS_UP_TO: f64 = 1.3;
/// A step above this ratio blocks; between the two it warns (ours).
pub(crate) const BLOCKS_ABOVE: f64 = 1.6;
/// A step down below this ratio warns (ours).
pub(crate) const DARKER_WARNS_BELOW: f64 = 0.5;

const SOURCE: RuleSource = RuleSource::LightStep;

/// The band of light a species stands at planting, as shares of the open light: 1 - its shade band. Where the profile gives
/// only one end, the other is open (no shade, or full shade); none where it gives neither.
pub(crate) fn light_band(profile: Option<&Profile>) -> Option<(f64, f64)> {
    let profile = profile?;
    let least_shade = profile.outplant_shade_least_pct.as_ref().map(|figure| figure.value);
    let most_shade = profile.outplant_shade_most_pct.as_ref().map(|figure| figure.value);
    least_shade.or(most_shade)?;
    let (least_shade, most_shade) = (least_shade.unwrap_or(0.0), most_shade.unwrap_or(100.0));
    Some((1.0 - most_shade / 100.0, 1.0 - least_shade / 100.0))
}

/// The criterion `exposure_step` of a tray without a bed: the darkest light of the species' band must be in reach.
pub(crate) fn toward_band(
    last: Option<&LastLight>,
    species: Option<&SpeciesKey>,
    profile: Option<&Profile>,
) -> Criterion {
    let needed = Measure::RatioAtMost(BLOCKS_ABOVE);
    match (last, light_band(profile)) {
        (Some(last), Some((least, most))) if last.share > 0.0 => {
            let nearest = last.share.clamp(least, most);
            step(last, nearest, Vec::new())
        }
        (Some(last), None) if last.share > 0.0 => {
            let gap = species.map(|species| Gap::NoShadeBand(species.clone()));
            Criterion::unknown(Rule::ExposureStep, Some(needed), true, RuleSource::NoFigure)
                .resting_on(last.entries.iter().cloned())
                .lacking(gap)
        }
        (Some(_) | None, _) => Criterion::unknown(Rule::ExposureStep, Some(needed), true, SOURCE),
    }
}

/// The criterion `exposure_step` of a tray and a bed. Darker than the species stands is the bed's own `light_now`.
pub(crate) fn toward_bed(last: Option<&LastLight>, bed: Option<(f64, &[EntryId])>) -> Criterion {
    let needed = Measure::RatioAtMost(BLOCKS_ABOVE);
    match (last, bed) {
        (Some(last), Some((share, entries))) if last.share > 0.0 => step(last, share, entries.to_vec()),
        _ => Criterion::unknown(Rule::ExposureStep, Some(needed), true, SOURCE),
    }
}

fn step(last: &LastLight, to: f64, bed_entries: Vec<EntryId>) -> Criterion {
    let Ok(ratio) = exposure_ratio(to, last.share) else {
        return Criterion::unknown(Rule::ExposureStep, Some(Measure::RatioAtMost(BLOCKS_ABOVE)), true, SOURCE);
    };
    let basis = if last.basis == Basis::Measured { Basis::Measured } else { Basis::Reckoned };
    let known = Measure::LightStep { from: last.share, to };
    // A hair of rounding must not decide: 0.48 / 0.30 is 1.6.
    let met = ratio <= BLOCKS_ABOVE + 1e-9;
    let mut criterion =
        Criterion::known(Rule::ExposureStep, Measure::RatioAtMost(BLOCKS_ABOVE), known, basis, met, SOURCE)
            .resting_on(last.entries.iter().cloned())
            .resting_on(bed_entries);
    criterion.warns = met && !(DARKER_WARNS_BELOW..=FITS_UP_TO + 1e-9).contains(&ratio);
    criterion
}
