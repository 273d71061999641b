//! Leaves of a banana plant from its height and girth.
//!
//! Source: Nyombi, van Asten, Leffelaar, Corbeels, Kaizzi & Giller 2009, Annals of Applied Biology 155:403 (allometry of East
//! African highland bananas; the abstract was read): leaf = length x width x 0.68; middle leaf = -0.404 + 0.381 height +
//! 0.411 girth.

use std::f64::consts::PI;

use crate::science::wrong_input::{self, WrongInput};

/// Tallest stem and thickest girth, m. Ours.
const TALLEST_M: f64 = 15.0;
/// Most living leaves. Ours: a sound plant has 8 to 14.
const MOST_LEAVES: f64 = 40.0;

/// Area of the middle leaf, m2, of a stem `height_m` high and `girth_m` around at its foot (above 0, at most 15). None where
/// the plant is so small that the line goes below 0 (under about 0.8 m): measure a leaf.
///
/// # Errors
/// Outside of that, or no number.
pub(crate) fn middle_leaf_m2(height_m: f64, girth_m: f64) -> Result<Option<f64>, WrongInput> {
    for (name, value) in [("height_m", height_m), ("girth_m", girth_m)] {
        wrong_input::positive(name, value)?;
        wrong_input::within(name, value, 0.0, TALLEST_M)?;
    }
    let leaf = -0.404 + 0.381 * height_m + 0.411 * girth_m;
    Ok((leaf > 0.0).then_some(leaf))
}

/// Area of all leaves of a plant, m2: the middle leaf times the living leaves (0 to 40). None as above.
///
/// # Errors
/// A figure outside of its range, or no number.
pub(crate) fn plant_leaf_m2(height_m: f64, girth_m: f64, leaves: f64) -> Result<Option<f64>, WrongInput> {
    wrong_input::within("leaves", leaves, 0.0, MOST_LEAVES)?;
    Ok(middle_leaf_m2(height_m, girth_m)?.map(|leaf| leaf * leaves))
}

/// Leaf density of the crown that holds so many m2 of leaf (0 or more), m2 in m3: over the volume of an ellipsoid, its width
/// and its depth in m (above 0). Geometry.
///
/// # Errors
/// A figure outside of its range, or no number.
pub(crate) fn crown_leaf_density(leaf_m2: f64, width_m: f64, depth_m: f64) -> Result<f64, WrongInput> {
    wrong_input::not_negative("leaf_m2", leaf_m2)?;
    let (width_m, depth_m) = (wrong_input::positive("width_m", width_m)?, wrong_input::positive("depth_m", depth_m)?);
    wrong_input::answer(leaf_m2 / (PI / 6.0 * width_m * width_m * depth_m))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::science::light::transmitted_share;
    use serde_json::Value;

    const HANDBOOK: &str = include_str!("../../../tests/reference/handbook_examples.tsv");

    fn row(id: &str) -> (Value, Value, f64) {
        let line = HANDBOOK.lines().find(|line| line.starts_with(&format!("{id}\t"))).unwrap();
        let cells: Vec<&str> = line.split('\t').collect();
        let json = |text: &str| serde_json::from_str::<Value>(text).unwrap();
        (json(cells[2]), json(cells[3]), cells[4].parse().unwrap())
    }

    #[test]
    fn leaves_and_light_of_banana_stands_as_published() {
        for id in ["N02", "N03", "N04"] {
            let (given, want, within) = row(id);
            let number = |key: &str| given[key].as_f64().unwrap();
            let (height, girth) = (number("height_m"), number("girth_m"));
            let middle = middle_leaf_m2(height, girth).unwrap().unwrap();
            let plant = plant_leaf_m2(height, girth, number("leaves")).unwrap().unwrap();
            let index = plant / number("spacing_m2");
            let light = transmitted_share(number("k"), index).unwrap();
            for (key, got) in [("middle_leaf_m2", middle), ("plant_m2", plant), ("lai", index), ("light", light)] {
                if let Some(want) = want[key].as_f64() {
                    assert!((got - want).abs() <= within, "{id} {key}: {got} {want}");
                }
            }
        }
    }

    #[test]
    fn light_under_cassava_by_published_leaf_areas_and_extinctions() {
        for id in ["N06", "N07"] {
            let (given, want, within) = row(id);
            let list = |from: &Value| -> Vec<f64> {
                from.as_array().map_or_else(
                    || vec![from.as_f64().unwrap()],
                    |all| all.iter().map(|one| one.as_f64().unwrap()).collect(),
                )
            };
            let (k, index) = (list(&given["k"]), list(&given["lai"]));
            for (at, want) in list(&want["light"]).into_iter().enumerate() {
                let got = transmitted_share(k[at.min(k.len() - 1)], index[at.min(index.len() - 1)]).unwrap();
                assert!((got - want).abs() <= within, "{id}: {got} {want}");
            }
        }
    }

    #[test]
    fn a_plant_too_small_for_the_line_has_no_leaves_by_it_and_nonsense_is_refused() {
        assert_eq!((middle_leaf_m2(0.6, 0.2), plant_leaf_m2(0.6, 0.2, 5.0)), (Ok(None), Ok(None)));
        assert!(middle_leaf_m2(0.0, 0.2).is_err() && middle_leaf_m2(3.0, 70.0).is_err());
        assert!(plant_leaf_m2(3.0, 0.7, 100.0).is_err());
        // 10.27 m2 in a crown 3 m wide and 2 m deep: pi/6 x 18 = 9.42 m3.
        assert!((crown_leaf_density(10.27, 3.0, 2.0).unwrap() - 1.0897).abs() < 0.001);
        assert!(crown_leaf_density(10.0, 0.0, 2.0).is_err());
    }
}
