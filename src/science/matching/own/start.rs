//! Fourth step: a plan to begin with. Ways in the order of what they gain at the estimated prices; each takes what is left, and the
//! row it fills gives it its place in the basis. Such a basis is triangular and about 1 % from the best.

use super::model::Model;
use super::simplex::Stand;

/// Ways that lose more than this at the estimated prices are not tried.
const LOSES: f64 = 60.0;
/// Rows with less than this share left may matter.
const NEARLY_FULL: f64 = 0.2;
/// A price above this is one.
const LEAST_PRICE: f64 = 1e-3;

/// Which rows are full, priced or nearly full after the greedy plan; its basis is in the stands of the model.
pub(super) fn begin(model: &mut Model, prices: &[f64]) -> Vec<bool> {
    model.program.start_from_slacks();
    let gains: Vec<f64> = (0..model.ways.len())
        .map(|column| {
            let rows = model.program.rows_of(column).iter();
            // To a millionth, so that the order does not hang on the last digit.
            (rows.fold(model.program.worth[column], |left, row| left - prices[*row as usize]) * 1e6).round()
        })
        .collect();
    let mut order: Vec<usize> = (0..gains.len()).filter(|column| gains[*column] > -LOSES * 1e6).collect();
    order.sort_unstable_by(|a, b| gains[*b].total_cmp(&gains[*a]).then(a.cmp(b)));
    let mut left = model.program.limits.clone();
    let mut is_full = vec![false; left.len()];
    for column in order {
        let rows = model.program.rows_of(column);
        if rows.iter().any(|row| is_full[*row as usize]) {
            continue;
        }
        let least = rows.iter().copied().min_by(|a, b| left[*a as usize].total_cmp(&left[*b as usize]));
        let Some(fills) = least.map(|row| row as usize) else { continue };
        let plants = left[fills];
        rows.iter().for_each(|row| left[*row as usize] -= plants);
        is_full[fills] = true;
        let slack = model.program.slack[fills] as usize;
        model.program.state.stands[slack] = Stand::Low;
        model.program.state.stands[column] = Stand::Basic;
    }
    model.program.head_from_stands();
    let limits = &model.program.limits;
    let matters = |row: usize| is_full[row] || prices[row] > LEAST_PRICE || left[row] < NEARLY_FULL * limits[row];
    (0..limits.len()).map(matters).collect()
}
