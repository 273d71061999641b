//! The crown of a nurse plant: how high and wide by age or tape, and how dense its leaves are by what its profile says of a
//! closed stand.

use super::kept::Kept;
use crate::base::{Day, SpeciesKey};
use crate::nursery::species::{GrowthPoint, Profile};
use crate::reckon::picture::NoLight;
use crate::reckon::stock::NurseStory;
use crate::science::shade::crown::Crown;
use crate::science::shade::even_sky;
use crate::science::shade::reading::leaf_factor;
use crate::science::sun::radiation::Slope;

/// Days in a month, on average.
pub(crate) const DAYS_PER_MONTH: f64 = 30.4;
/// How high a young tree's leaves stand, m. Ours: those of the first months.
pub(super) const TREE_M: f64 = 0.3;
/// Of a nurse plant so much is bare stem under its crown, as a share of its height. Ours; leaf density is fitted to it.
const BARE_STEM: f64 = 0.4;
/// Light held back by a leaf lying flat, where the profile gives none. From memory; only its product with the leaf density
/// counts, and that is fitted to the light of a closed stand.
const EXTINCTION: f64 = 0.6;
/// Plants on each side of the closed stand that leaf density is fitted to. Ours.
const STAND_SIDE: u32 = 7;
/// Directions of the sky for it. Ours, measured.
const SKY_DIRECTIONS: u32 = 300;

/// Plants and sun are taken as they are on every tenth day: in ten days they change less than is known of them. Ours.
const EVERY_DAYS: i32 = 10;

static DENSITIES: Kept<Option<f64>> = Kept::nothing();

/// Height and crown radius, m.
pub(super) type Size = (f64, f64);

/// The crown of a size at a spot, its leaves so dense; none where it is too small to shade anything.
pub(super) fn crown(
    [x_m, y_m]: [f64; 2],
    (height_m, radius_m): Size,
    (density, extinction): (f64, f64),
) -> Option<Crown> {
    let half_m = height_m * (1.0 - BARE_STEM) / 2.0;
    let casts = height_m > TREE_M && radius_m > 0.0 && density > 0.0;
    casts.then(|| Crown::new([x_m, y_m, height_m - half_m], radius_m, half_m, density, extinction).ok()).flatten()
}

/// The day that stands for those around it.
pub(super) fn day_taken(day: Day) -> Day {
    Day::from_number(day.number() - day.number().rem_euclid(EVERY_DAYS))
}

/// Size by months since planting: straight lines from nothing at planting through the points of the profile, and no larger
/// after the last.
pub(super) fn size_at(points: &[GrowthPoint], months: f64) -> Size {
    let mut before = GrowthPoint { month: 0.0, height_m: 0.0, radius_m: 0.0 };
    for point in points {
        if months <= point.month {
            let part = ((months - before.month) / (point.month - before.month).max(f64::MIN_POSITIVE)).clamp(0.0, 1.0);
            let between = |from: f64, to: f64| from + (to - from) * part;
            return (between(before.height_m, point.height_m), between(before.radius_m, point.radius_m));
        }
        before = *point;
    }
    (before.height_m, before.radius_m)
}

/// Months from one day to another, 0 where it is earlier.
pub(super) fn months_between(from: Day, to: Day) -> f64 {
    f64::from(to.days_since(from).max(0)) / DAYS_PER_MONTH
}

/// Size on a day: by age from the profile, larger or smaller as the tape said; of plants whose day nobody wrote by the tape
/// alone.
pub(super) fn size_on(nurse: &NurseStory, profile: &Profile, day: Day) -> Result<Size, NoLight> {
    let points = profile.growth_points.as_ref().map(|figure| figure.value.as_slice());
    let points = points.ok_or_else(|| NoLight::NoCrown(nurse.nurse.clone()))?;
    let by_age = |on: Day| size_at(points, months_between(nurse.day, on));
    let has_day = nurse.planted > 0;
    match nurse.measured {
        Some((on, height_m, radius_m)) if has_day => {
            let (then, now) = (by_age(on), by_age(day));
            let scaled = |read: f64, then: f64, now: f64| if then > 0.0 { read * now / then } else { read };
            Ok((scaled(height_m, then.0, now.0), scaled(radius_m, then.1, now.1)))
        }
        Some((_, height_m, radius_m)) => Ok((height_m, radius_m)),
        None if has_day => Ok(by_age(day)),
        None => Err(NoLight::NoAge(nurse.nurse.clone())),
    }
}

/// Leaf density, m2 in a m3 of crown, and extinction: so that a closed stand of grown plants at the distances of the profile
/// lets through the light that its profile says.
pub(super) fn leaves_of(species: &SpeciesKey, profile: &Profile) -> Result<(f64, f64), NoLight> {
    let value = |figure: &Option<crate::nursery::species::Figure<f64>>| figure.as_ref().map(|figure| figure.value);
    let lacking = || NoLight::NoCrown(species.clone());
    let through = value(&profile.light_transmitted_least_pct).zip(value(&profile.light_transmitted_most_pct));
    let distances = value(&profile.row_m).zip(value(&profile.in_row_m));
    let points = profile.growth_points.as_ref().map(|figure| figure.value.as_slice());
    let (least, most) = through.ok_or_else(lacking)?;
    let (row_m, in_row_m) = distances.ok_or_else(lacking)?;
    // A stem that ends before its last point never grows so large.
    let grown_months = value(&profile.stem_life_most_months).unwrap_or(f64::MAX);
    let size = size_at(points.ok_or_else(lacking)?, grown_months);
    let light = (least.max(1.0) * most.max(1.0)).sqrt().min(99.0) / 100.0;
    let extinction = value(&profile.crown_k).unwrap_or(EXTINCTION);
    let stand = ClosedStand { row_m, in_row_m, size, light, extinction };
    let density = DENSITIES.or(&stand.key(), || stand.density()).ok_or_else(lacking)?;
    Ok((density, extinction))
}

/// Grown plants all alike, on a grid.
struct ClosedStand {
    row_m: f64,
    in_row_m: f64,
    size: Size,
    /// The share of the open light that comes through.
    light: f64,
    extinction: f64,
}

impl ClosedStand {
    fn key(&self) -> [u64; 6] {
        [self.row_m, self.in_row_m, self.size.0, self.size.1, self.light, self.extinction].map(f64::to_bits)
    }

    /// The leaf density that gives its light between the plants in the middle; where crowns leave such gaps that none does,
    /// by Beer's law over the ground of a plant.
    fn density(&self) -> Option<f64> {
        let each = (0..STAND_SIDE).flat_map(|row| (0..STAND_SIDE).map(move |place| (row, place)));
        let at = |(row, place): (u32, u32)| [f64::from(place) * self.in_row_m, f64::from(row) * self.row_m];
        let stands = each.map(|spot| crown(at(spot), self.size, (1.0, self.extinction)));
        let crowns: Vec<Crown> = stands.collect::<Option<_>>()?;
        let middle = f64::from(STAND_SIDE / 2);
        let parts = [1.0 / 6.0, 0.5, 5.0 / 6.0];
        let spots = parts.iter().flat_map(|along| parts.iter().map(move |across| [*along, *across]));
        let points: Vec<[f64; 3]> = spots
            .map(|[along, across]| [(middle + along) * self.in_row_m, (middle + across) * self.row_m, TREE_M])
            .collect();
        let read = leaf_factor(&points, &crowns, &even_sky(SKY_DIRECTIONS), Slope::LEVEL, self.light).ok()?;
        let (height_m, radius_m) = self.size;
        let half_m = height_m * (1.0 - BARE_STEM) / 2.0;
        let volume_m3 = 4.0 / 3.0 * std::f64::consts::PI * radius_m * radius_m * half_m;
        let by_ground = -self.light.ln() / self.extinction * self.row_m * self.in_row_m / volume_m3;
        Some(read.factor.unwrap_or(by_ground))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::nursery::species::Catalogue;

    fn profile(key: &str) -> std::sync::Arc<Profile> {
        Catalogue::built_in().get(&SpeciesKey::new(key)).unwrap().clone()
    }

    #[test]
    fn size_grows_with_age_and_never_shrinks() {
        // Maize dries up at the end.
        for key in ["BAN", "PLA", "CAS", "CTR", "PIG", "TEP"] {
            let points = profile(key).growth_points.as_ref().unwrap().value.clone();
            let mut before = (0.0, 0.0);
            for tenth in 0..400 {
                let now = size_at(&points, f64::from(tenth) / 10.0);
                assert!(now.0 >= before.0 && now.1 >= before.1, "{key} {tenth}");
                before = now;
            }
        }
        // Plantain: 2.2 m at 6 months, 3.0 m at 9.
        let (height, radius) = size_at(&profile("PLA").growth_points.as_ref().unwrap().value, 7.5);
        assert!((height - 2.6).abs() < 1e-9 && (radius - 1.45).abs() < 1e-9);
    }

    #[test]
    fn leaves_are_as_dense_as_published_leaf_areas_of_a_plant() {
        // Nyombi et al. 2009: a banana 3 m tall and 0.7 m around with 10 leaves has 10.3 m2 of leaf. A plantain of the
        // profile is that tall; clumped in crowns it needs more leaf for the same light than Beer's law.
        for key in ["BAN", "PLA"] {
            let profile = profile(key);
            let (density, _) = leaves_of(&SpeciesKey::new(key), &profile).unwrap();
            let (height, radius) = size_at(&profile.growth_points.as_ref().unwrap().value, 12.0);
            let volume = 4.0 / 3.0 * std::f64::consts::PI * radius * radius * height * 0.3;
            let leaf_m2 = density * volume;
            assert!((6.0..=17.0).contains(&leaf_m2), "{key}: {leaf_m2}");
        }
    }
}
