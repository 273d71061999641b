//! What a reading of the light under crowns says of their leaves.
//!
//! Source: ours. The share R(f) of light under crowns whose leaves are f times as dense falls with f, and ln R is convex
//! (a sum of exponentials), so Newton's steps on ln R from f = 0 rise to the answer and never pass it.

use super::crown::{Crown, Point};
use super::plain::Reach;
use super::sky::Direction;
use crate::science::sun::radiation::Slope;
use crate::science::wrong_input::{self, WrongInput};

/// Most steps of the search; it takes five to seven.
const MOST_STEPS: u32 = 60;
/// How near ln R has to come.
const NEAR: f64 = 1e-10;
/// What rounding does to a sum of weights.
const ROUNDING: f64 = 1e-9;
/// Leaves are not believed to be thinner than so many times the expected. Ours.
pub(crate) const LEAST_FACTOR: f64 = 0.3;
/// Nor denser. Ours.
pub(crate) const MOST_FACTOR: f64 = 3.0;

/// What a reading tells.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct LeafReading {
    /// The mean light that the crowns as drawn let through at the points read, 0 to 1.
    pub(crate) expected: f64,
    /// What no leaf stands before, 0 to 1: no density of leaves makes it darker.
    pub(crate) gaps: f64,
    /// How many times as dense the leaves are as drawn; none where no density gives the reading: the crowns are drawn too
    /// small or too large, or in the wrong place.
    pub(crate) factor: Option<f64>,
    /// By how many percent the light falls for one percent more leaves there: the error of the factor is the error of the
    /// reading divided by it.
    pub(crate) sharpness: Option<f64>,
}

/// How dense the leaves of all crowns are by a reading: the mean share of open light (0 to 1) at some points, under the light
/// of that moment.
///
/// # Errors
/// A share outside 0 to 1, no point, no direction, or no number.
pub(crate) fn leaf_factor(
    points: &[Point],
    crowns: &[Crown],
    directions: &[Direction],
    ground: Slope,
    light_share: f64,
) -> Result<LeafReading, WrongInput> {
    wrong_input::share("light_share", light_share)?;
    if points.is_empty() {
        return Err(WrongInput::Missing { input: "points" });
    }
    let seen: Vec<&Direction> = directions.iter().filter(|direction| !direction.behind(ground)).collect();
    let mut rays = Vec::with_capacity(points.len() * seen.len());
    for point in points {
        let near: Vec<(&Crown, Reach)> = crowns.iter().map(|crown| (crown, Reach::of(crown, *point))).collect();
        for direction in &seen {
            let hit = near.iter().filter(|(_, reach)| reach.meets(direction));
            let depth: f64 = hit.map(|(crown, _)| crown.depth(*point, direction)).sum();
            rays.push(Ray { depth, weight: direction.weight / points.len() as f64 });
        }
    }
    let gaps = rays.iter().filter(|ray| ray.depth <= 0.0).map(|ray| ray.weight).sum();
    let factor = factor_of(&rays, light_share, gaps);
    let sharpness = factor.map(|factor| {
        let (light, falls) = light_and_fall(&rays, factor);
        factor * falls / light
    });
    Ok(LeafReading { expected: light_and_fall(&rays, 1.0).0, gaps, factor, sharpness })
}

/// One direction at one point.
struct Ray {
    /// Optical depth with the leaves as drawn.
    depth: f64,
    weight: f64,
}

/// Light with leaves `factor` times as dense, and how fast it falls with the factor.
fn light_and_fall(rays: &[Ray], factor: f64) -> (f64, f64) {
    rays.iter().fold((0.0, 0.0), |(light, falls), ray| {
        let through = ray.weight * (-factor * ray.depth).exp();
        (light + through, falls + through * ray.depth)
    })
}

fn factor_of(rays: &[Ray], light_share: f64, gaps: f64) -> Option<f64> {
    let open = light_and_fall(rays, 0.0).0;
    // Full light, or nothing but the gaps, within rounding.
    if light_share >= open * (1.0 - ROUNDING) || light_share <= gaps * (1.0 + ROUNDING) {
        return None;
    }
    let (mut factor, mut low, mut high) = (0.0_f64, 0.0_f64, f64::INFINITY);
    for _ in 0..MOST_STEPS {
        let (light, falls) = light_and_fall(rays, factor);
        let above = (light / light_share).ln();
        if above.abs() < NEAR {
            break;
        }
        if above > 0.0 {
            low = low.max(factor);
        } else {
            high = high.min(factor);
        }
        let next = factor + above * light / falls;
        // Newton does not pass the answer; rounding near it may.
        factor = if next > low && next < high { next } else { (low + high.min(2.0 * low + 1.0)) / 2.0 };
    }
    Some(factor)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::science::shade::plain::light_at;
    use crate::science::shade::sky::{even_sky, overcast};

    fn crowns() -> Vec<Crown> {
        (0..9)
            .map(|at| {
                let at = [3.0 * f64::from(at % 3), 3.0 * f64::from(at / 3), 2.4];
                Crown::new(at, 1.7, 1.2, 1.0, 0.6).unwrap()
            })
            .collect()
    }

    fn points() -> Vec<Point> {
        (0..12).map(|at| [0.7 + f64::from(at % 4) * 1.6, 0.9 + f64::from(at / 4) * 1.9, 0.3]).collect()
    }

    #[test]
    fn the_light_of_leafier_crowns_tells_how_much_leafier_they_are() {
        let sky = overcast(&even_sky(300));
        for times in [0.35, 0.6, 1.0, 1.6, 2.8] {
            let leafier: Vec<Crown> = crowns().iter().map(|crown| crown.leafier(times)).collect();
            let lit = light_at(&points(), &leafier, &sky, Slope::LEVEL);
            let reading = lit.iter().sum::<f64>() / lit.len() as f64;
            let told = leaf_factor(&points(), &crowns(), &sky, Slope::LEVEL, reading).unwrap();
            assert!((told.factor.unwrap() / times - 1.0).abs() < 1e-7, "{times}: {told:?}");
            assert!(told.sharpness.unwrap() > 0.1 && told.gaps < reading, "{told:?}");
        }
    }

    #[test]
    fn how_sharp_a_reading_is_is_how_fast_light_falls_with_leaves() {
        let sky = even_sky(200);
        let at = |share: f64| leaf_factor(&points(), &crowns(), &sky, Slope::LEVEL, share).unwrap();
        let (a, b) = (at(0.400), at(0.404));
        let by_steps = (0.404_f64 / 0.400).ln() / (a.factor.unwrap() / b.factor.unwrap()).ln();
        assert!((by_steps / a.sharpness.unwrap() - 1.0).abs() < 0.02, "{by_steps} {a:?}");
    }

    #[test]
    fn a_reading_that_no_leaves_explain_has_no_factor() {
        let sky = even_sky(200);
        let at = |share: f64| leaf_factor(&points(), &crowns(), &sky, Slope::LEVEL, share).unwrap();
        let gaps = at(0.5).gaps;
        assert_eq!((at(1.0).factor, at(gaps * 0.9).factor, at(0.0).factor), (None, None, None));
        let bare = leaf_factor(&points(), &[], &sky, Slope::LEVEL, 0.5).unwrap();
        assert!(bare.factor.is_none() && (bare.gaps - 1.0).abs() < 1e-9);
        assert!(leaf_factor(&points(), &crowns(), &sky, Slope::LEVEL, 1.2).is_err());
        assert!(leaf_factor(&[], &crowns(), &sky, Slope::LEVEL, 0.4).is_err());
    }
}
