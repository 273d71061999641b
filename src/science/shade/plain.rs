//! Light at points of any height, reckoned straight on in double precision: every point, direction and crown. Short, exact,
//! and what the fast maps are held against.

use super::crown::{Crown, Point};
use super::sky::Direction;
use crate::base::cores::on_every_core;
use crate::science::sun::radiation::Slope;

/// Light at each point as a share (0 to 1) of what an open level place gets from the same directions. Heights are told
/// from one level plane; a direction that lies behind `ground` is dark.
pub(crate) fn light_at(points: &[Point], crowns: &[Crown], directions: &[Direction], ground: Slope) -> Vec<f64> {
    let seen: Vec<&Direction> = directions.iter().filter(|direction| !direction.behind(ground)).collect();
    on_every_core(points, |point| {
        let near: Vec<(&Crown, Reach)> = crowns.iter().map(|crown| (crown, Reach::of(crown, *point))).collect();
        seen.iter()
            .map(|direction| {
                let hit = near.iter().filter(|(_, reach)| reach.meets(direction));
                direction.weight * (-hit.map(|(crown, _)| crown.depth(*point, direction)).sum::<f64>()).exp()
            })
            .sum()
    })
}

/// How low a light may stand for a crown to be in its way: most crowns are passed over by two multiplications.
pub(super) struct Reach {
    /// From the point to the nearest of the crown on the ground, m; below 0 under it.
    aside_m: f64,
    /// From the point up to the top of the crown, m.
    above_m: f64,
}

impl Reach {
    pub(super) fn of(crown: &Crown, point: Point) -> Reach {
        let [x_m, y_m] = crown.at();
        Reach {
            aside_m: (point[0] - x_m).hypot(point[1] - y_m) - crown.radius_m(),
            above_m: crown.middle_m() + crown.half_height_m() - point[2],
        }
    }

    /// Whether the ray, where it comes to the crown, is not above its top already.
    pub(super) fn meets(&self, direction: &Direction) -> bool {
        let level = direction.east.hypot(direction.north);
        self.above_m > 0.0 && (self.aside_m <= 0.0 || self.aside_m * direction.up <= self.above_m * level)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::Day;
    use crate::science::shade::sky::{even_sky, sky_patches, sun_by_clock, sun_through};
    use crate::science::sun::place::Place;
    use serde_json::Value;

    const LIGHT: &str = include_str!("../../../tests/reference/light.json");

    fn number(from: &Value, key: &str) -> f64 {
        from[key].as_f64().unwrap_or_else(|| panic!("no {key} in {from}"))
    }

    fn numbers(from: &Value, key: &str) -> Vec<f64> {
        from[key].as_array().unwrap().iter().map(|value| value.as_f64().unwrap()).collect()
    }

    fn crown(at: Point, radius_m: f64, half_height_m: f64, leaf_density: f64) -> Crown {
        Crown::new(at, radius_m, half_height_m, leaf_density, 0.5).unwrap()
    }

    #[test]
    fn scenes_agree_with_the_reference_by_the_same_suns_and_by_finer_ones() {
        let all: Value = serde_json::from_str(LIGHT).unwrap();
        for scene in all["scenes"].as_array().unwrap() {
            let place = Place::new(number(scene, "lat"), number(scene, "lon"), number(scene, "elev_m")).unwrap();
            let day: Day = scene["date"].as_str().unwrap().parse().unwrap();
            let k = number(scene, "k");
            let crowns: Vec<Crown> = scene["crowns"]
                .as_array()
                .unwrap()
                .iter()
                .map(|one| {
                    let at = ["x", "y", "zc"].map(|key| number(one, key));
                    Crown::new(at, number(one, "rh"), number(one, "hh"), number(one, "lad"), k).unwrap()
                })
                .collect();
            // Every fifth point is enough here; `calc light` is tried on all of them.
            let picked = |list: Vec<f64>| list.into_iter().step_by(5).collect::<Vec<f64>>();
            let points: Vec<Point> = scene["points"]
                .as_array()
                .unwrap()
                .iter()
                .step_by(5)
                .map(|point| [0, 1, 2].map(|at| point[at].as_f64().unwrap()))
                .collect();
            let by_clock = sun_by_clock(place, day, number(scene, "utc_offset_h"), 10.0).unwrap();
            let near = |directions: &[Direction], key: &str, within: f64| {
                let got = light_at(&points, &crowns, directions, Slope::LEVEL);
                for (got, want) in got.into_iter().zip(picked(numbers(scene, key))) {
                    assert!((got - want).abs() < within, "{} {key}: {got} {want}", scene["id"]);
                }
            };
            // A sun 0.0001 degrees elsewhere moves light by some 1e-5 where a crown's edge is crossed.
            near(&by_clock, "direct_10min", 5e-5);
            near(&sky_patches(5.0).unwrap(), "diffuse_5deg", 1e-7);
            near(&sun_through(place, day, 96).unwrap(), "fine_direct_1min", 0.009);
            near(&even_sky(600), "fine_diffuse_1deg", 0.0109);
        }
    }

    #[test]
    fn under_a_wide_slab_of_leaves_the_even_sky_gives_twice_the_exponential_integral() {
        let all: Value = serde_json::from_str(LIGHT).unwrap();
        let cases = all["analytic_diffuse"].as_array().unwrap();
        assert_eq!(cases.len(), 6);
        for case in cases {
            let (k, lad) = (number(case, "k"), number(case, "lad"));
            let lit =
                |crown: Crown, point: Point, sky: &[Direction]| light_at(&[point], &[crown], sky, Slope::LEVEL)[0];
            if let Some(radius) = case["R"].as_f64() {
                let sphere = Crown::new([0.0, 0.0, 4.0], radius, radius, lad, k).unwrap();
                assert!((lit(sphere, [0.0, 0.0, 4.0], &even_sky(50)) - number(case, "exact")).abs() < 1e-9, "{case}");
                continue;
            }
            // An ellipsoid so wide that it is a slab above the point.
            let slab = Crown::new([0.0, 0.0, 5.0], 1e6, number(case, "thickness") / 2.0, lad, k).unwrap();
            let by_patches = lit(slab, [0.0, 0.0, 0.3], &sky_patches(5.0).unwrap());
            assert!((by_patches - number(&case["patch_sum"], "5")).abs() < 1e-6, "{case}: {by_patches}");
            let by_seeds = lit(slab, [0.0, 0.0, 0.3], &even_sky(600));
            assert!((by_seeds - number(case, "exact_2E3")).abs() < 0.001, "{case}: {by_seeds}");
        }
    }

    #[test]
    fn no_crown_is_full_light_and_another_crown_never_adds_any() {
        let sky = even_sky(100);
        let points = [[0.0, 0.0, 0.3], [2.0, 1.0, 0.3], [0.5, -3.0, 2.0]];
        for lit in light_at(&points, &[], &sky, Slope::LEVEL) {
            assert!((lit - 1.0).abs() < 1e-12);
        }
        let many: Vec<Crown> =
            (0..12).map(|at| crown([f64::from(at % 4), f64::from(at / 4), 2.0], 0.8, 0.9, 1.5)).collect();
        for count in 0..many.len() {
            let (less, more) = (&many[..count], &many[..=count]);
            let lit = [less, more].map(|crowns| light_at(&points, crowns, &sky, Slope::LEVEL));
            assert!(lit[0].iter().zip(&lit[1]).all(|(less, more)| more <= less), "{count}");
        }
    }

    #[test]
    fn at_the_equator_on_an_equinox_west_mirrors_east() {
        let place = Place::new(0.0, 0.0, 0.0).unwrap();
        let sun = sun_through(place, Day::from_ymd(2026, 3, 20).unwrap(), 96).unwrap();
        let trees = [crown([1.5, 0.4, 3.0], 1.2, 1.5, 1.3), crown([-0.7, -1.0, 2.0], 0.8, 0.9, 2.0)];
        let mirrored = [crown([-1.5, 0.4, 3.0], 1.2, 1.5, 1.3), crown([0.7, -1.0, 2.0], 0.8, 0.9, 2.0)];
        let points: Vec<Point> = (-4..5).map(|at| [f64::from(at) * 0.7, 0.2, 0.3]).collect();
        let other: Vec<Point> = points.iter().map(|point| [-point[0], point[1], point[2]]).collect();
        for (sky, within) in [(sun, 0.004), (sky_patches(5.0).unwrap(), 1e-9)] {
            let one = light_at(&points, &trees, &sky, Slope::LEVEL);
            let two = light_at(&other, &mirrored, &sky, Slope::LEVEL);
            for (one, two) in one.into_iter().zip(two) {
                assert!((one - two).abs() < within, "{one} {two}");
            }
        }
    }

    #[test]
    fn a_hillside_hides_the_sky_behind_it() {
        // Falls to the south by 45 degrees: half of the sky's ring below 45 degrees in the north is gone.
        let hill = Slope::facing(45.0, 180.0).unwrap();
        let lit = light_at(&[[0.0, 0.0, 0.3]], &[], &sky_patches(2.0).unwrap(), hill)[0];
        // View factor of a level plate with a half plane rising behind it by an angle s: (1 + cos s) / 2.
        assert!((lit - (1.0 + 45.0_f64.to_radians().cos()) / 2.0).abs() < 0.003, "{lit}");
    }
}
