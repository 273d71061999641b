//! A crown: an ellipsoid full of leaves.
//!
//! Sources: the chord of a ray through an ellipsoid is geometry; exp(-k x leaf area along the ray) Monsi & Saeki 1953.

use super::sky::Direction;
use crate::science::sun::radiation::Slope;
use crate::science::wrong_input::{self, WrongInput};

/// Widest and highest half of a crown, m: a closed roof of leaves may be drawn as one flat crown. Ours.
const LARGEST_M: f64 = 1e6;
/// Furthest from the corner of the bed that anything stands, m. Ours.
const FURTHEST_M: f64 = 1e7;
/// Densest leaves, m2 of leaf in m3 of crown. Ours: a clipped hedge has about 10.
const DENSEST: f64 = 50.0;
/// Most light that a leaf lying flat holds back. Geometry: 1; clumsy definitions of k go above. Ours.
const MOST_EXTINCTION: f64 = 2.0;

/// A crown whose numbers make sense.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Crown {
    /// Where it stands: m to the east (or along the rows) of the corner,
    x_m: f64,
    /// and to the north (or across the rows).
    y_m: f64,
    /// Its middle, m.
    middle_m: f64,
    /// Half its width, m.
    radius_m: f64,
    /// Half its height, m.
    half_height_m: f64,
    /// Light held back by a metre of it: extinction x leaf density, 1/m.
    per_m: f64,
}

/// A point that light falls on: m east, m north, m high.
pub type Point = [f64; 3];

impl Crown {
    /// A crown with its middle at `at` (m east, north and high; within 10,000 km), half as wide as `radius_m` and half as
    /// high as `half_height_m` (above 0), with `leaf_density` m2 of leaf in a m3 (0 to 50) that hold back light with
    /// `extinction` (k, 0 to 2).
    ///
    /// # Errors
    /// A crown of no size, a figure outside of its range, or no number; named by the keys of `calc light`.
    pub fn new(
        at: Point,
        radius_m: f64,
        half_height_m: f64,
        leaf_density: f64,
        extinction: f64,
    ) -> Result<Crown, WrongInput> {
        for (name, value) in ["x", "y", "zc"].into_iter().zip(at) {
            wrong_input::within(name, value, -FURTHEST_M, FURTHEST_M)?;
        }
        for (name, value) in [("rh", radius_m), ("hh", half_height_m)] {
            wrong_input::positive(name, value)?;
            wrong_input::within(name, value, 0.0, LARGEST_M)?;
        }
        wrong_input::within("lad", leaf_density, 0.0, DENSEST)?;
        wrong_input::within("k", extinction, 0.0, MOST_EXTINCTION)?;
        let [x_m, y_m, middle_m] = at;
        Ok(Crown { x_m, y_m, middle_m, radius_m, half_height_m, per_m: extinction * leaf_density })
    }

    /// Where it stands, m east and north.
    pub(crate) fn at(&self) -> [f64; 2] {
        [self.x_m, self.y_m]
    }

    /// The same so much higher, m; none where that is farther than any crown is.
    pub(crate) fn lifted(&self, by_m: f64) -> Option<Crown> {
        let middle_m = self.middle_m + by_m;
        (middle_m.abs() <= FURTHEST_M).then_some(Crown { middle_m, ..*self })
    }

    /// Height of its middle, m.
    pub(crate) fn middle_m(&self) -> f64 {
        self.middle_m
    }

    /// Half its width, m.
    pub(crate) fn radius_m(&self) -> f64 {
        self.radius_m
    }

    /// Half its height, m.
    pub(crate) fn half_height_m(&self) -> f64 {
        self.half_height_m
    }

    /// Light held back by a metre of it, 1/m.
    pub(crate) fn per_m(&self) -> f64 {
        self.per_m
    }

    /// The same crown so many m further east and north.
    pub(crate) fn moved(&self, [east_m, north_m]: [f64; 2]) -> Crown {
        Crown { x_m: self.x_m + east_m, y_m: self.y_m + north_m, ..*self }
    }

    /// The same crown with its height told from a level plane, where it was told from its own foot on a slope.
    pub(crate) fn on(&self, ground: Slope) -> Crown {
        Crown { middle_m: self.middle_m + ground.height_m(self.at()), ..*self }
    }

    /// The same crown with its leaves that many times as dense.
    pub(crate) fn leafier(&self, times: f64) -> Crown {
        Crown { per_m: self.per_m * times, ..*self }
    }

    /// Optical depth of the crown from a point towards the light: what stands behind the point does not count.
    pub(crate) fn depth(&self, point: Point, towards: &Direction) -> f64 {
        let (wide, high) = (self.radius_m, self.half_height_m);
        let from = [(point[0] - self.x_m) / wide, (point[1] - self.y_m) / wide, (point[2] - self.middle_m) / high];
        let ray = [towards.east / wide, towards.north / wide, towards.up / high];
        let dot = |a: [f64; 3], b: [f64; 3]| a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
        let (a, b) = (dot(ray, ray), dot(from, ray));
        let under_root = b * b - a * (dot(from, from) - 1.0);
        if under_root <= 0.0 {
            return 0.0;
        }
        let root = under_root.sqrt();
        (((-b + root) / a).max(0.0) - ((-b - root) / a).max(0.0)) * self.per_m
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::Value;

    const LIGHT: &str = include_str!("../../../tests/reference/light.json");

    #[test]
    fn chords_agree_with_the_closed_forms_and_with_a_march_along_the_ray() {
        let all: Value = serde_json::from_str(LIGHT).unwrap();
        let cases = all["analytic"].as_array().unwrap();
        assert_eq!(cases.len(), 27);
        for case in cases {
            let number = |from: &Value, key: &str| from[key].as_f64().unwrap();
            let point = [0, 1, 2].map(|at| case["point"][at].as_f64().unwrap());
            let towards = Direction::of(number(case, "elevation_deg"), number(case, "azimuth_deg"));
            let k = number(case, "k");
            let depth: f64 = case["crowns"]
                .as_array()
                .unwrap()
                .iter()
                .map(|crown| {
                    let at = ["x", "y", "zc"].map(|key| number(crown, key));
                    let (rh, hh, lad) = (number(crown, "rh"), number(crown, "hh"), number(crown, "lad"));
                    Crown::new(at, rh, hh, lad, k).unwrap().depth(point, &towards)
                })
                .sum();
            let want = number(case, "optical_depth_sum_lad_times_length");
            assert!((depth / k - want).abs() < 1e-9 * want.max(1.0), "{}: {} {want}", case["case"], depth / k);
            assert!(((-depth).exp() - number(case, "transmission")).abs() < 1e-9, "{}", case["case"]);
            if let Some(closed) = case["closed_form"].as_f64() {
                assert!((depth / k - closed).abs() < 1e-6, "{}: {}", case["case"], depth / k);
            }
            if let Some(marched) = case["marching_check"].as_f64() {
                assert!((depth / k - marched).abs() < 1e-3, "{}: {}", case["case"], depth / k);
            }
        }
    }

    #[test]
    fn a_crown_that_cannot_be_is_refused_by_name() {
        let fine = [0.0, 0.0, 3.0];
        let said = |crown: Result<Crown, WrongInput>| crown.unwrap_err().to_string();
        assert!(said(Crown::new(fine, 0.0, 1.0, 1.0, 0.5)).starts_with("rh must be more than 0"));
        assert!(said(Crown::new(fine, 1.0, 0.0, 1.0, 0.5)).starts_with("hh must be more than 0"));
        assert!(said(Crown::new(fine, 1.0, 1.0, -1.0, 0.5)).starts_with("lad"));
        assert!(said(Crown::new(fine, 1.0, 1.0, 1.0, 3.0)).starts_with("k"));
        assert!(said(Crown::new([0.0, f64::NAN, 3.0], 1.0, 1.0, 1.0, 0.5)).starts_with("y"));
    }
}
