//! Climbing to the top of a function of two numbers: Newton's steps, damped after Levenberg and Marquardt.
//!
//! Sources: Levenberg 1944, Marquardt 1963 (from memory).

use std::ops::RangeInclusive;

/// A value with its gradient and Hessian in (a, b).
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Slope {
    /// The value.
    pub value: f64,
    /// Derivatives by a and b.
    pub first: [f64; 2],
    /// Second derivatives: aa, ab, bb.
    pub second: [f64; 3],
}

/// Most steps of one climb: usual is 5 to 15.
const MOST_STEPS: usize = 200;
/// The climb ends when a step promises less than this share of the likelihood's own size.
const SMALL_GAIN: f64 = 1e-13;

/// Where a climb ended.
#[derive(Clone, Copy, Debug)]
pub(super) struct Top {
    /// The first number.
    pub a: f64,
    /// The second.
    pub b: f64,
    /// The value there.
    pub value: f64,
}

/// Climbs from (a, b) as far as it goes with b inside its `limits`. Nothing where the start itself has no value.
pub(super) fn climb(
    start: (f64, f64),
    limits: &RangeInclusive<f64>,
    function: impl Fn(f64, f64) -> Slope,
) -> Option<Top> {
    let (mut a, mut b) = start;
    let mut here = function(a, b);
    if !here.value.is_finite() {
        return None;
    }
    let mut damping = 1e-3;
    for _ in 0..MOST_STEPS {
        let (step, gain) = damped_step(&here, damping);
        if gain <= SMALL_GAIN * (1.0 + here.value.abs()) && damping < 1.0 {
            break;
        }
        let (next_a, next_b) = (a + step[0], b + step[1]);
        let there = if limits.contains(&next_b) { Some(function(next_a, next_b)) } else { None };
        match there.filter(|there| there.value > here.value) {
            Some(there) => {
                (a, b, here) = (next_a, next_b, there);
                damping = (damping / 10.0).max(1e-12);
            }
            None => {
                damping *= 10.0;
                if damping > 1e12 {
                    break;
                }
            }
        }
    }
    Some(Top { a, b, value: here.value })
}

/// The step (-H + damping D) s = g with D the diagonal of -H, and the gain it promises. Where -H is not positive, damping
/// grows until it is.
fn damped_step(here: &Slope, damping: f64) -> ([f64; 2], f64) {
    let [g0, g1] = here.first;
    let (aa, ab, bb) = (-here.second[0], -here.second[1], -here.second[2]);
    let least = 1e-8 * (1.0 + aa.abs() + bb.abs());
    let mut extra = damping;
    loop {
        let p = aa + extra * aa.abs().max(least);
        let q = bb + extra * bb.abs().max(least);
        let whole = p * q - ab * ab;
        if p > 0.0 && q > 0.0 && whole > 1e-14 * p * q {
            let step = [(q * g0 - ab * g1) / whole, (p * g1 - ab * g0) / whole];
            return (step, 0.5 * (step[0] * g0 + step[1] * g1));
        }
        if extra > 1e12 {
            return ([0.0, 0.0], 0.0);
        }
        extra = (extra * 10.0).max(1e-3);
    }
}
