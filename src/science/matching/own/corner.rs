//! Another corner of the best face: where fractions are of no worth, one of whole plants often lies beside. What has a price stays
//! where it is; fractions are pushed towards the nearest whole, and where that stalls mixed numbers lead along the face.

use super::model::{Model, is_whole};
use super::simplex::{Ended, Stand};

/// A gain above this is a price.
const LEAST_PRICE: f64 = 1e-6;
/// How much mixed numbers tilt the push to the nearest whole.
const TILT: f64 = 0.3;

/// Well mixed bits of a number: the same on every machine (splitmix64, Steele et al. 2014, from memory).
pub(super) fn mix(number: u64) -> u64 {
    let mut mixed = number.wrapping_add(0x9E37_79B9_7F4A_7C15);
    mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    mixed ^ (mixed >> 31)
}

/// Looks for a corner of whole plants on the best face. The model itself is left as it was; gains must hold. `whole` are columns
/// that stay whole once they are.
pub(super) fn whole_corner(model: &Model, seed: u64, whole: &[usize], tries: u64) -> Option<Model> {
    let mut moved = model.clone();
    let (program, ways) = (&mut moved.program, model.ways.len());
    for column in 0..program.width() {
        let amount = program.state.amounts[column];
        if program.state.stands[column] != Stand::Basic && program.state.gains[column].abs() > LEAST_PRICE {
            let at_high = program.state.stands[column] == Stand::High;
            let bound = if at_high { program.high[column] } else { program.low[column] };
            (program.low[column], program.high[column]) = (bound, bound);
        } else if program.state.stands[column] == Stand::Basic && whole.contains(&column) && is_whole(amount) {
            (program.low[column], program.high[column]) = (amount.round(), amount.round());
        }
    }
    let (mut fewest, mut stalled) = (usize::MAX, 0);
    for attempt in 0..tries {
        let afresh = stalled > 1;
        program.worth.fill(0.0);
        for column in 0..ways {
            let mixed = (mix(seed << 40 ^ attempt << 32 ^ column as u64) % 1_000) as f64 / 1_000.0;
            program.worth[column] = push(program.state.amounts[column], mixed, afresh);
        }
        if program.primal() != Ended::Best {
            return None;
        }
        let fractions = program.state.amounts[..ways].iter().filter(|amount| !is_whole(**amount)).count();
        if fractions == 0 {
            return Some(moved);
        }
        if afresh || fractions < fewest {
            (fewest, stalled) = (if stalled > 1 { usize::MAX } else { fractions }, 0);
        } else {
            stalled += 1;
        }
    }
    None
}

fn push(amount: f64, mixed: f64, afresh: bool) -> f64 {
    if afresh {
        return mixed;
    }
    if is_whole(amount) {
        return 0.0;
    }
    let towards = amount - amount.floor() + TILT * (mixed - 0.5) >= 0.5;
    (0.5 + mixed) * if towards { 1.0 } else { -1.0 }
}
