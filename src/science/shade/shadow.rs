//! Shadows of crowns on the plane of a bed's positions, one direction of light at a time, in single precision.
//!
//! Along one direction the optical depth of an ellipsoid, seen from a plane, has a closed form: an ellipse with a
//! square-root profile. Geometry (ours); no ray is traced, and only positions inside of the ellipse are touched.
//!
//! With m = (east, north) / up, c the middle of the crown, d its height above the plane, r and h its half width and half
//! height, a the unit of m and g the slope of the ground:
//!
//!     middle  p* = c - m d / (1 - g m)
//!     E = v v' / (r² + h² m²) + n n' / r²        v = a - |m| g, n across a
//!     depth = per_m 2 r h / (up sqrt(r² + h² m²)) sqrt(1 - u'E u), u = p - p*

use std::f32::consts::LN_2;
use std::f64::consts::LOG2_E;

use super::crown::Crown;
use super::positions::{LANES, Positions};
use super::sky::Direction;

/// Shadows of more columns than this are looked at strip by strip. Ours, measured.
const WIDE: usize = 8;

/// The crowns that stand above the plane of some positions, a list for each figure; m from their origin.
pub(super) struct CrownRows {
    x: Vec<f32>,
    y: Vec<f32>,
    /// Middle above the plane.
    above: Vec<f32>,
    radius2: Vec<f32>,
    per_radius2: Vec<f32>,
    half_height2: Vec<f32>,
    /// 2 x half width x half height x what a metre holds back, in powers of two.
    strength: Vec<f32>,
    /// What a metre holds back, in powers of two.
    per_m: Vec<f32>,
    /// So many stand wholly above the plane; those after them reach through it.
    whole: usize,
}

impl CrownRows {
    /// Crowns with heights above their own feet; what holds nothing back or lies below the plane is left out.
    pub(super) fn new(crowns: &[Crown], positions: &Positions) -> CrownRows {
        let ground = positions.ground;
        let steep2 = ground.east * ground.east + ground.north * ground.north;
        // How far the crown reaches up and down, measured across a plane that lies like the ground.
        let reach = |crown: &Crown| (crown.half_height_m().powi(2) + crown.radius_m().powi(2) * steep2).sqrt();
        let above = |crown: &Crown| crown.middle_m() - positions.height_m;
        let mut kept: Vec<&Crown> =
            crowns.iter().filter(|crown| crown.per_m() > 0.0 && above(crown) + reach(crown) > 0.0).collect();
        let through = |crown: &Crown| above(crown) < reach(crown);
        kept.sort_by_key(|crown| through(crown));
        let list = |of: &dyn Fn(&Crown) -> f64| -> Vec<f32> { kept.iter().map(|crown| of(crown) as f32).collect() };
        CrownRows {
            x: list(&|crown| crown.at()[0] - positions.origin[0]),
            y: list(&|crown| crown.at()[1] - positions.origin[1]),
            above: list(&above),
            radius2: list(&|crown| crown.radius_m().powi(2)),
            per_radius2: list(&|crown| crown.radius_m().powi(-2)),
            half_height2: list(&|crown| crown.half_height_m().powi(2)),
            strength: list(&|crown| 2.0 * crown.radius_m() * crown.half_height_m() * crown.per_m() * LOG2_E),
            per_m: list(&|crown| crown.per_m() * LOG2_E),
            whole: kept.iter().filter(|crown| !through(crown)).count(),
        }
    }

    fn count(&self) -> usize {
        self.x.len()
    }
}

/// The shadows of one direction, a list for each figure.
#[derive(Default)]
pub(super) struct Shadows {
    x: Vec<f32>,
    y: Vec<f32>,
    half_x: Vec<f32>,
    half_y: Vec<f32>,
    /// Half width of the row through the middle, squared.
    row2: Vec<f32>,
    /// How far the middle of a row moves along it for each m across.
    lean: Vec<f32>,
    /// How much of `row2` each m2 across takes.
    taper: Vec<f32>,
    strength: Vec<f32>,
    kept: Vec<u32>,
    list: Vec<u32>,
}

/// One shadow.
#[derive(Clone, Copy)]
struct Shadow {
    x: f32,
    y: f32,
    row2: f32,
    lean: f32,
    taper: f32,
    strength: f32,
}

impl Shadow {
    /// Square of the profile at a position: the depth is `strength` times its root; below 0 outside.
    #[inline(always)]
    fn profile(&self, x: f32, y: f32) -> f32 {
        let across = y - self.y;
        let along = x - self.x + self.lean * across;
        self.row2 - across * across * self.taper - along * along
    }
}

/// A crown that reaches through the plane: only what is above the position holds light back.
struct Through {
    per_m: f32,
    /// Half a chord of it, m, is so often the root of the profile.
    half: f32,
    /// The middle of the chord, m from the position: so much at the middle of the crown, less so much for each m east
    middle: f32,
    east: f32,
    /// and north of it.
    north: f32,
    x: f32,
    y: f32,
}

impl Through {
    #[inline(always)]
    fn depth(&self, x: f32, y: f32, profile: f32) -> f32 {
        let half = self.half * profile.sqrt();
        let middle = self.middle - (x - self.x) * self.east - (y - self.y) * self.north;
        self.per_m * ((middle + half).max(0.0) - (middle - half).max(0.0))
    }
}

/// Adds what each crown holds back of a light, in powers of two, to the depths of the positions. Not for a light that lies
/// behind the ground.
pub(super) fn cast(
    positions: &Positions,
    crowns: &CrownRows,
    light: &Direction,
    shadows: &mut Shadows,
    depths: &mut [f32],
) {
    shadows.fall(positions, crowns, light);
    let kept = shadows.select(positions, crowns.count());
    for place in 0..kept {
        let at = shadows.list[place] as usize;
        let shadow = shadows.one(at);
        let (half_x, half_y) = (shadows.half_x[at], shadows.half_y[at]);
        let through = (at >= crowns.whole).then(|| through(positions, crowns, at, &shadow, light));
        darken(positions, &shadow, [half_x, half_y], through.as_ref(), depths);
    }
}

impl Shadows {
    /// Where the shadow of each crown falls, and its form. Figures stand in lists and are taken by their place, so that the
    /// compiler reckons four crowns at a time.
    #[allow(clippy::needless_range_loop)]
    fn fall(&mut self, positions: &Positions, crowns: &CrownRows, light: &Direction) {
        let count = crowns.count();
        for list in [
            &mut self.x,
            &mut self.y,
            &mut self.half_x,
            &mut self.half_y,
            &mut self.row2,
            &mut self.lean,
            &mut self.taper,
            &mut self.strength,
        ] {
            list.resize(count, 0.0);
        }
        let ground = positions.ground;
        let level = light.east.hypot(light.north);
        let unit = if level > 1e-9 { [light.east / level, light.north / level] } else { [0.0, 1.0] };
        let (per_up, cot) = (1.0 / light.up, level / light.up);
        // Above 0, or the light lies behind the ground.
        let turn = 1.0 - cot * (ground.east * unit[0] + ground.north * unit[1]);
        let [ax, ay] = unit.map(|value| value as f32);
        let (vx, vy) = ((unit[0] - cot * ground.east) as f32, (unit[1] - cot * ground.north) as f32);
        let (mx, my) = ((cot * unit[0] / turn) as f32, (cot * unit[1] / turn) as f32);
        let (per_up, cot2, turn2) = (per_up as f32, (cot * cot) as f32, (turn * turn) as f32);
        let (vxx, vxy, vyy) = (vx * vx, vx * vy, vy * vy);
        let (nxx, nxy, nyy) = (ay * ay, -ax * ay, ax * ax);
        let (x, y, above) = (&crowns.x[..count], &crowns.y[..count], &crowns.above[..count]);
        let (r2, per_r2) = (&crowns.radius2[..count], &crowns.per_radius2[..count]);
        let (h2, strength) = (&crowns.half_height2[..count], &crowns.strength[..count]);
        let (to_x, to_y) = (&mut self.x[..count], &mut self.y[..count]);
        let (half_x, half_y) = (&mut self.half_x[..count], &mut self.half_y[..count]);
        let (row2, lean) = (&mut self.row2[..count], &mut self.lean[..count]);
        let (taper, dark) = (&mut self.taper[..count], &mut self.strength[..count]);
        for at in 0..count {
            let per_long2 = 1.0 / (r2[at] + h2[at] * cot2);
            let e11 = vxx * per_long2 + nxx * per_r2[at];
            let e12 = vxy * per_long2 + nxy * per_r2[at];
            let e22 = vyy * per_long2 + nyy * per_r2[at];
            let determinant = per_long2 * per_r2[at] * turn2;
            let (per_e11, per_determinant) = (1.0 / e11, 1.0 / determinant);
            to_x[at] = x[at] - above[at] * mx;
            to_y[at] = y[at] - above[at] * my;
            half_x[at] = (e22 * per_determinant).sqrt();
            half_y[at] = (e11 * per_determinant).sqrt();
            row2[at] = per_e11;
            lean[at] = e12 * per_e11;
            taper[at] = determinant * per_e11 * per_e11;
            dark[at] = strength[at] * per_up * (per_long2 * e11).sqrt();
        }
    }

    /// Lists the shadows that may fall on somebody; how many those are. By place, as above.
    #[allow(clippy::needless_range_loop)]
    fn select(&mut self, positions: &Positions, count: usize) -> usize {
        self.kept.resize(count, 0);
        self.list.resize(count + 1, 0);
        let (along, across) = (positions.along, positions.across);
        let (x, y, kept) = (&self.x[..count], &self.y[..count], &mut self.kept[..count]);
        let (half_x, half_y) = (&self.half_x[..count], &self.half_y[..count]);
        for at in 0..count {
            kept[at] = u32::from((along.off(x[at]) <= half_x[at]) & (across.off(y[at]) <= half_y[at]));
        }
        let mut found = 0;
        for (at, kept) in kept.iter().enumerate() {
            self.list[found] = at as u32;
            found += *kept as usize;
        }
        found
    }

    fn one(&self, at: usize) -> Shadow {
        Shadow {
            x: self.x[at],
            y: self.y[at],
            row2: self.row2[at],
            lean: self.lean[at],
            taper: self.taper[at],
            strength: self.strength[at],
        }
    }
}

fn through(positions: &Positions, crowns: &CrownRows, at: usize, shadow: &Shadow, light: &Direction) -> Through {
    let (per_r2, per_h2) = (crowns.per_radius2[at], 1.0 / crowns.half_height2[at]);
    let [east, north, up] = [light.east, light.north, light.up].map(|value| value as f32);
    let ground = [positions.ground.east, positions.ground.north].map(|value| value as f32);
    let per_a = 1.0 / ((east * east + north * north) * per_r2 + up * up * per_h2);
    Through {
        per_m: crowns.per_m[at],
        half: 0.5 * shadow.strength / crowns.per_m[at],
        middle: up * per_h2 * per_a * crowns.above[at],
        east: (east * per_r2 + up * per_h2 * ground[0]) * per_a,
        north: (north * per_r2 + up * per_h2 * ground[1]) * per_a,
        x: crowns.x[at],
        y: crowns.y[at],
    }
}

/// Adds one shadow to the positions beneath it.
fn darken(
    positions: &Positions,
    shadow: &Shadow,
    [half_x, half_y]: [f32; 2],
    through: Option<&Through>,
    depths: &mut [f32],
) {
    let (grid, columns) = (&positions.grid, positions.columns);
    let (last_column, last_strip) = (columns as i32 - 1, positions.strips.len() as i32 - 1);
    let column = |x: f32| (((x - grid.west) * grid.per_column) as i32).clamp(0, last_column) as usize;
    let strip = |y: f32| (((y - grid.south) * grid.per_strip) as i32).clamp(0, last_strip) as usize;
    let (first, last) = (column(shadow.x - half_x), column(shadow.x + half_x));
    let narrow = last - first < WIDE;
    for at in strip(shadow.y - half_y)..=strip(shadow.y + half_y) {
        let columns_hit =
            if narrow && through.is_none() { Some((first, last)) } else { row_of(positions, shadow, at, column) };
        let Some((first, last)) = columns_hit else { continue };
        let row = at * (columns + 1);
        let (from, to) = (positions.first[row + first] as usize, positions.first[row + last + 1] as usize);
        match through {
            None => darken_row(positions, shadow, from, to, depths),
            Some(through) => {
                let stand = positions.x[from..to].iter().zip(&positions.y[from..to]);
                for (depth, (x, y)) in depths[from..to].iter_mut().zip(stand) {
                    let profile = shadow.profile(*x, *y);
                    if profile > 0.0 {
                        *depth += through.depth(*x, *y, profile);
                    }
                }
            }
        }
    }
}

/// The columns of a strip that a shadow may reach.
fn row_of(positions: &Positions, shadow: &Shadow, at: usize, column: impl Fn(f32) -> usize) -> Option<(usize, usize)> {
    let strip = &positions.strips[at];
    let (low, high) = (strip.low - shadow.y, strip.high - shadow.y);
    let nearest = if low > 0.0 { low } else { high.min(0.0) };
    let half2 = shadow.row2 - nearest * nearest * shadow.taper;
    // An empty strip has its low end above its high one.
    if low > high || half2 <= 0.0 {
        return None;
    }
    let half = half2.sqrt();
    let (a, b) = (shadow.x - shadow.lean * low, shadow.x - shadow.lean * high);
    Some((column(a.min(b) - half), column(a.max(b) + half)))
}

/// Four positions at a time; the places that fill up a strip stand so far off that nothing falls on them.
#[inline(always)]
#[allow(clippy::needless_range_loop)]
fn darken_row(positions: &Positions, shadow: &Shadow, from: usize, to: usize, depths: &mut [f32]) {
    let mut slot = from;
    while slot < to {
        let four = slot..slot + LANES;
        let (Some(x), Some(y), Some(depth)) = (
            positions.x[four.clone()].first_chunk::<LANES>(),
            positions.y[four.clone()].first_chunk::<LANES>(),
            depths[four].first_chunk_mut::<LANES>(),
        ) else {
            return;
        };
        // Taken out and put back: through the slices the compiler would take one at a time.
        let (mut told, mut profile) = (*depth, [0.0_f32; LANES]);
        for lane in 0..LANES {
            let value = shadow.profile(x[lane], y[lane]);
            profile[lane] = if value > 0.0 { value } else { 0.0 };
        }
        for lane in 0..LANES {
            told[lane] += shadow.strength * profile[lane].sqrt();
        }
        *depth = told;
        slot += LANES;
    }
}

/// 2 to the power of -depth, for a depth of 0 or more: whole steps by the exponent, what is left by a polynomial of the
/// fifth degree (error 4e-6 of it). Four at a time where the compiler can.
#[inline(always)]
pub(super) fn falling(depth: f32) -> f32 {
    /// Added and taken away again this rounds to whole numbers, and leaves them in the lowest bits.
    const ROUNDS: f32 = 12_582_912.0;
    let power = (-depth).max(-80.0);
    let rounded = power + ROUNDS;
    let rest = power - (rounded - ROUNDS);
    let near =
        1.0 + rest * (LN_2 + rest * (0.240_226_5 + rest * (0.055_504_1 + rest * (0.009_618_1 + rest * 0.001_333_4))));
    f32::from_bits(near.to_bits().wrapping_add(rounded.to_bits().wrapping_shl(23)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_falls_by_powers_of_two_is_near_enough() {
        for step in 0..7_900 {
            let depth = f32::from(i16::try_from(step).unwrap()) * 0.01;
            let want = (-f64::from(depth)).exp2();
            assert!((f64::from(falling(depth)) - want).abs() < 4e-6 * want, "{depth}");
        }
        assert!(falling(1e9) < 1e-20);
    }
}
