//! Positions of a bed, laid out so that a shadow finds those beneath it without asking the others.

use crate::science::sun::radiation::Slope;
use crate::science::wrong_input::{self, WrongInput};

/// Positions that are reckoned side by side.
pub(super) const LANES: usize = 4;
/// Where the positions stand that fill up a strip, m: far from every shadow.
const FAR_M: f32 = 1e8;
/// Positions nearer than this stand in one row, m. Ours.
const SAME_ROW_M: f64 = 1e-3;
/// Narrowest strip and column, m. Ours.
const NARROWEST_M: f64 = 0.2;
/// Most cells of strips and columns for each position: beyond it rows do not tell how to lay them out. Ours.
const CELLS_EACH: usize = 8;

/// Positions at one height above level or evenly sloping ground.
pub struct Positions {
    /// Where each stands from the origin, m, strip by strip and within one from west to east.
    pub(super) x: Vec<f32>,
    pub(super) y: Vec<f32>,
    /// The place of each position in those lists.
    slot_of: Vec<u32>,
    pub(super) strips: Vec<Strip>,
    /// The first place of each column of each strip, and the end of its last.
    pub(super) first: Vec<u32>,
    pub(super) columns: usize,
    pub(super) grid: Grid,
    /// Where the positions stand along the rows and across them.
    pub(super) along: Axis,
    pub(super) across: Axis,
    /// What single precision counts from, m.
    pub(super) origin: [f64; 2],
    /// How high above the ground, m.
    pub(super) height_m: f64,
    pub(super) ground: Slope,
}

/// A row of positions, or a strip of as many as one.
pub(super) struct Strip {
    /// From south
    pub(super) low: f32,
    /// to north, m.
    pub(super) high: f32,
}

/// How strips and columns lie.
pub(super) struct Grid {
    pub(super) west: f32,
    pub(super) per_column: f32,
    pub(super) south: f32,
    pub(super) per_strip: f32,
}

/// Where positions stand on one axis.
#[derive(Clone, Copy)]
pub(super) struct Axis {
    first: f32,
    last: f32,
    step: f32,
    per_step: f32,
    steps: f32,
    /// Whether they stand evenly, so that the gaps between them are known.
    even: bool,
}

impl Axis {
    fn of(mut values: Vec<f64>) -> Axis {
        distinct(&mut values);
        let (first, last) = (values.first().copied().unwrap_or(0.0), values.last().copied().unwrap_or(0.0));
        let steps = values.len().saturating_sub(1) as f64;
        let step = if steps > 0.0 { (last - first) / steps } else { 0.0 };
        let off = |at: usize, value: f64| (value - first - step * at as f64).abs();
        let even = steps == 0.0
            || (step > 0.1 && values.iter().enumerate().all(|(at, value)| off(at, *value) < 2.0 * SAME_ROW_M));
        Axis {
            first: first as f32,
            last: last as f32,
            step: step as f32,
            per_step: if step > 0.0 { (1.0 / step) as f32 } else { 0.0 },
            steps: steps as f32,
            even,
        }
    }

    /// How far a value is from the nearest of them, m; where they stand unevenly, from the span of all.
    #[inline(always)]
    pub(super) fn off(self, value: f32) -> f32 {
        /// Added and taken away again this rounds to whole numbers.
        const ROUNDS: f32 = 8_388_608.0;
        if self.even {
            let steps = ((value - self.first) * self.per_step).max(0.0).min(self.steps);
            (value - self.first - ((steps + ROUNDS) - ROUNDS) * self.step).abs()
        } else {
            (value - value.max(self.first).min(self.last)).abs()
        }
    }
}

impl Positions {
    /// Positions at (m along the rows, m across them; within 10,000 km), `height_m` (-10 to 50) above ground that lies so.
    ///
    /// # Errors
    /// A figure outside of its range, or no number.
    pub fn new(points: &[[f64; 2]], height_m: f64, ground: Slope) -> Result<Positions, WrongInput> {
        wrong_input::within("height_m", height_m, -10.0, 50.0)?;
        for value in points.iter().flatten() {
            wrong_input::within("points", *value, -1e7, 1e7)?;
        }
        let origin = [0, 1].map(|axis| points.iter().map(|point| point[axis]).fold(f64::INFINITY, f64::min));
        let origin = origin.map(|least| if least.is_finite() { least } else { 0.0 });
        let points: Vec<[f64; 2]> = points.iter().map(|point| [point[0] - origin[0], point[1] - origin[1]]).collect();
        Ok(laid_out(&points, origin, height_m, ground))
    }

    /// How many positions there are.
    pub(super) fn count(&self) -> usize {
        self.slot_of.len()
    }

    /// Values in the order of the lists brought to the order of the positions.
    pub(super) fn in_order(&self, values: &[f32]) -> Vec<f32> {
        self.slot_of.iter().filter_map(|slot| values.get(*slot as usize).copied()).collect()
    }
}

/// Positions counted from their origin, in strips and columns.
fn laid_out(points: &[[f64; 2]], origin: [f64; 2], height_m: f64, ground: Slope) -> Positions {
    let span = |axis: usize| points.iter().map(|point| point[axis]).fold(0.0, f64::max);
    let (width, depth) = (span(0), span(1));
    let mean = (width.max(1.0) * depth.max(1.0) / points.len().max(1) as f64).sqrt().max(NARROWEST_M);
    let rows_apart = row_distance(points).unwrap_or(mean);
    let cells = |strip: f64| [(width / mean) as usize + 2, (depth / strip) as usize + 2];
    let fits = cells(rows_apart).iter().product::<usize>() <= CELLS_EACH * points.len() + 10_000;
    let strip = if fits { rows_apart } else { mean };
    let [columns, strips] = cells(strip);
    // Half a cell aside, so that rows stand in the middle of strips.
    let (west, south) = (-0.5 * mean, -0.5 * strip);
    let place = |value: f64, from: f64, wide: f64, count: usize| (((value - from) / wide) as usize).min(count - 1);
    let cell = |point: &[f64; 2]| [place(point[1], south, strip, strips), place(point[0], west, mean, columns)];
    let mut order: Vec<(usize, [usize; 2])> = points.iter().map(cell).enumerate().collect();
    order.sort_by(|(a, in_a), (b, in_b)| in_a.cmp(in_b).then(points[*a][0].total_cmp(&points[*b][0])));
    let mut made = Positions {
        x: Vec::new(),
        y: Vec::new(),
        slot_of: vec![0; points.len()],
        strips: Vec::new(),
        first: Vec::new(),
        columns,
        grid: Grid {
            west: west as f32,
            per_column: (1.0 / mean) as f32,
            south: south as f32,
            per_strip: (1.0 / strip) as f32,
        },
        along: Axis::of(points.iter().map(|point| point[0]).collect()),
        across: Axis::of(points.iter().map(|point| point[1]).collect()),
        origin,
        height_m,
        ground,
    };
    let mut ordered = order.into_iter().peekable();
    for at_strip in 0..strips {
        let (mut low, mut high) = (f32::INFINITY, f32::NEG_INFINITY);
        for at_column in 0..columns {
            made.first.push(made.x.len() as u32);
            while let Some((at, _)) = ordered.next_if(|(_, cell)| *cell == [at_strip, at_column]) {
                let [x, y] = points[at].map(|value| value as f32);
                (low, high) = (low.min(y), high.max(y));
                made.slot_of[at] = made.x.len() as u32;
                made.x.push(x);
                made.y.push(y);
            }
        }
        made.first.push(made.x.len() as u32);
        made.strips.push(Strip { low, high });
        // So that four at a time never reach into the next strip.
        made.x.extend([FAR_M; LANES]);
        made.y.extend([FAR_M; LANES]);
    }
    made
}

/// The smallest distance between rows, where the positions stand in rows of three and more.
fn row_distance(points: &[[f64; 2]]) -> Option<f64> {
    let mut rows: Vec<f64> = points.iter().map(|point| point[1]).collect();
    distinct(&mut rows);
    let in_rows = rows.len() > 1 && rows.len() * 3 < points.len();
    let least = rows.windows(2).map(|pair| pair[1] - pair[0]).fold(f64::INFINITY, f64::min);
    in_rows.then_some(least.max(NARROWEST_M))
}

/// In their order, what is as good as the same once.
fn distinct(values: &mut Vec<f64>) {
    values.sort_by(f64::total_cmp);
    values.dedup_by(|a, b| (*a - *b).abs() < SAME_ROW_M);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_position_has_a_place_in_the_strip_and_column_it_stands_in() {
        let regular: Vec<[f64; 2]> = (0..35).map(|at| [3.0 * f64::from(at % 7), 2.0 * f64::from(at / 7)]).collect();
        let scattered: Vec<[f64; 2]> =
            (0..40).map(|at| [f64::from(at * 37 % 101) * 0.31, f64::from(at * 53 % 97) * 0.17]).collect();
        for points in [regular, scattered, vec![[500_000.0, 7.0]], vec![[1.0, 1.0], [1.0, 1.0]], vec![]] {
            let made = Positions::new(&points, 0.3, Slope::LEVEL).unwrap();
            assert_eq!(made.count(), points.len());
            for (at, point) in points.iter().enumerate() {
                let slot = made.slot_of[at] as usize;
                let there = [f64::from(made.x[slot]) + made.origin[0], f64::from(made.y[slot]) + made.origin[1]];
                assert!(
                    (there[0] - point[0]).abs() < 1e-4 && (there[1] - point[1]).abs() < 1e-4,
                    "{there:?} {point:?}"
                );
                let strip = ((made.y[slot] - made.grid.south) * made.grid.per_strip) as usize;
                let column = ((made.x[slot] - made.grid.west) * made.grid.per_column) as usize;
                let place = strip * (made.columns + 1) + column;
                let range = made.first[place] as usize..made.first[place + 1] as usize;
                assert!(range.contains(&slot), "{point:?} stands in {slot}, not in {range:?}");
            }
            let order: Vec<f32> = (0..made.x.len()).map(|slot| slot as f32).collect();
            let slots: Vec<f32> = made.slot_of.iter().map(|slot| *slot as f32).collect();
            assert_eq!(made.in_order(&order), slots);
        }
    }

    #[test]
    fn between_even_rows_a_shadow_may_fall_on_nobody() {
        let points: Vec<[f64; 2]> = (0..20).map(|at| [2.0 * f64::from(at % 5), 3.0 * f64::from(at / 5)]).collect();
        let made = Positions::new(&points, 0.3, Slope::LEVEL).unwrap();
        assert!((made.across.off(4.5) - 1.5).abs() < 1e-6 && made.across.off(6.0) < 1e-6);
        assert!((made.along.off(-1.0) - 1.0).abs() < 1e-6 && (made.along.off(9.5) - 1.5).abs() < 1e-6);
    }
}
