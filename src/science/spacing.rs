//! Where plants stand in a bed, and how many stand on a hectare.
//!
//! Source: plane geometry, common practice of planting. Rows run along the bed's length, row distances across its width.

use super::wrong_input::{self, WrongInput};

/// Square metres of a hectare.
const SQUARE_METRES_PER_HA: f64 = 10_000.0;
/// PlantRow distance of equal-sided triangles over the distance in the row: half the square root of 3, about 0.8660.
const TRIANGLE_HEIGHT: f64 = 0.866_025_403_784_438_6;
/// The wide distance of a double row over the narrow one when only the narrow one is given. Ours.
const WIDE_OVER_NARROW: f64 = 2.0;
/// Share of one step by which a plant may seem to be outside because 12 / 2.4 is not exact in a computer.
const FUZZ: f64 = 1e-9;
/// More positions than any bed of a small nursery has; a guard against a slip of the pen. Ours.
pub(crate) const MOST_POSITIONS: u32 = 100_000;

/// How plants stand to each other.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum SpacingPattern {
    /// The same distance in the row and between rows, unless a row distance is given.
    Square,
    /// Its own distance between rows; needs one.
    Rectangle,
    /// Each second row is shifted by half the distance in the row; rows are 0.866 of it apart, unless a row distance is given.
    Triangle,
    /// A square grid with one plant more in the centre of each square.
    Quincunx,
    /// Pairs of rows with a wide distance between pairs; needs the distance between the two rows of a pair.
    DoubleRow,
}

/// Where the first row and the first place of a row stand.
#[derive(Clone, Copy, PartialEq, Eq, Default, Debug)]
pub enum Edges {
    /// On the edge: plants stand on both edges of the bed.
    #[default]
    Counted,
    /// Half a spacing inside, so that each plant has its own ground: as many as whole spacings fit, at least one row and
    /// one place in the middle; what is over is left at the far edge.
    Half,
}

/// How plants are laid out in a bed. Distances in metres.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Laying {
    /// How they stand to each other.
    pub pattern: SpacingPattern,
    /// As in [`plants_per_ha`].
    pub row_m: Option<f64>,
    /// As in [`plants_per_ha`].
    pub in_row_m: f64,
    /// As in [`plants_per_ha`].
    pub gap_m: Option<f64>,
    /// Where the first stand.
    pub edges: Edges,
    /// Moves all along the rows; what then lies outside falls away.
    pub offset_m: f64,
    /// Moves all across the rows.
    pub row_offset_m: f64,
}

impl Laying {
    /// Distances between rows and in the row, from edge to edge.
    pub fn new(pattern: SpacingPattern, row_m: Option<f64>, in_row_m: f64) -> Laying {
        Laying { pattern, row_m, in_row_m, gap_m: None, edges: Edges::Counted, offset_m: 0.0, row_offset_m: 0.0 }
    }
}

/// The place of one plant in a bed.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Position {
    /// Number of the row across the bed, from 1.
    pub row: u32,
    /// Number of the place in its row, from 1.
    pub place: u32,
    /// Metres along the bed's length from its corner.
    pub x_m: f64,
    /// Metres across the bed's width from its corner.
    pub y_m: f64,
}

/// Plants per hectare of a large field, its edges not counted.
///
/// Square and rectangle 10000/(a b), triangle 10000/(0.8660 a²), quincunx 2 x 10000/(a b),
/// double row 2 x 10000/((wide + narrow) x in row). Distances in metres, above 0.
/// `row_m` may be left out except for rectangle and double row; `gap_m` (wide distance) counts for double rows only
/// and is twice `row_m` when left out.
///
/// # Errors
/// A distance that is missing, not above 0 or not a number, or so small that the answer is no number.
pub fn plants_per_ha(
    pattern: SpacingPattern,
    row_m: Option<f64>,
    in_row_m: f64,
    gap_m: Option<f64>,
) -> Result<f64, WrongInput> {
    let steps = Steps::new(pattern, row_m, in_row_m, gap_m)?;
    let (plants, rows_m) = match pattern {
        SpacingPattern::Square | SpacingPattern::Rectangle | SpacingPattern::Triangle => (1.0, steps.row_m),
        SpacingPattern::Quincunx => (2.0, steps.row_m),
        SpacingPattern::DoubleRow => (2.0, steps.row_m + steps.gap_m),
    };
    wrong_input::answer(plants * SQUARE_METRES_PER_HA / (rows_m * steps.in_row_m))
}

/// Every position of a bed, row by row. With both edges counted 30 x 12 m at 2.5 m between rows and 2 m in the row is 5 rows
/// of 16, half a spacing inside it is 4 rows of 15: the density of the spacing.
///
/// `offset_m` and `row_offset_m` move the grid away from the corner; the far edges stay allowed. A double row whose second
/// row no longer fits ends with a single row. Centre rows of a quincunx are rows with their own number. A row in which no
/// plant fits has no number.
///
/// # Errors
/// A distance that is missing, not above 0 or not a number, an offset below 0 or beyond the bed,
/// or more than [`MOST_POSITIONS`].
pub fn positions(length_m: f64, width_m: f64, laying: &Laying) -> Result<Vec<Position>, WrongInput> {
    wrong_input::positive("length_m", length_m)?;
    wrong_input::positive("width_m", width_m)?;
    let steps = Steps::new(laying.pattern, laying.row_m, laying.in_row_m, laying.gap_m)?;
    let offset_m = wrong_input::within("offset_m", laying.offset_m, 0.0, length_m)?;
    let row_offset_m = wrong_input::within("row_offset_m", laying.row_offset_m, 0.0, width_m)?;
    let rows = match laying.edges {
        Edges::Counted => rows(laying.pattern, &steps, length_m - offset_m, width_m - row_offset_m)?,
        Edges::Half => rows_inside(laying.pattern, &steps, length_m, width_m)?,
    };
    let (mut positions, mut number) = (Vec::new(), 0);
    for row in &rows {
        let y_m = row_offset_m + row.y_m;
        let x_of = |place: u32| offset_m + row.shift_m + f64::from(place) * steps.in_row_m;
        let is_in = |place: &u32| {
            y_m <= width_m + FUZZ * (steps.row_m + steps.gap_m) && x_of(*place) <= length_m + FUZZ * steps.in_row_m
        };
        let fitting = (0..row.places).filter(is_in).count() as u32;
        number += u32::from(fitting > 0);
        let place = |place: u32| {
            let (x_m, y_m) = (x_of(place).min(length_m), y_m.min(width_m));
            Position { row: number, place: place + 1, x_m, y_m }
        };
        positions.extend((0..fitting).map(place));
    }
    Ok(positions)
}

/// The distances of a pattern, none left open.
struct Steps {
    row_m: f64,
    in_row_m: f64,
    gap_m: f64,
}

impl Steps {
    fn new(
        pattern: SpacingPattern,
        row_m: Option<f64>,
        in_row_m: f64,
        gap_m: Option<f64>,
    ) -> Result<Steps, WrongInput> {
        wrong_input::positive("in_row_m", in_row_m)?;
        let usual_row_m = match pattern {
            SpacingPattern::Square | SpacingPattern::Quincunx => Some(in_row_m),
            SpacingPattern::Triangle => Some(TRIANGLE_HEIGHT * in_row_m),
            SpacingPattern::Rectangle | SpacingPattern::DoubleRow => None,
        };
        let row_m = row_m.or(usual_row_m).ok_or(WrongInput::Missing { input: "row_m" })?;
        wrong_input::positive("row_m", row_m)?;
        let gap_m = wrong_input::positive("gap_m", gap_m.unwrap_or(WIDE_OVER_NARROW * row_m))?;
        Ok(Steps { row_m, in_row_m, gap_m })
    }
}

/// One row, seen from the first row's first place.
struct PlantRow {
    y_m: f64,
    shift_m: f64,
    places: u32,
}

fn rows(pattern: SpacingPattern, steps: &Steps, room_x_m: f64, room_y_m: f64) -> Result<Vec<PlantRow>, WrongInput> {
    let half_m = steps.in_row_m / 2.0;
    let straight = fitting(room_x_m, steps.in_row_m)?;
    let mut rows: Vec<PlantRow> = match pattern {
        SpacingPattern::Square | SpacingPattern::Rectangle => {
            let row = |n: u32| PlantRow { y_m: f64::from(n) * steps.row_m, shift_m: 0.0, places: straight };
            (0..fitting(room_y_m, steps.row_m)?).map(row).collect()
        }
        SpacingPattern::Triangle => {
            let shifted = fitting(room_x_m - half_m, steps.in_row_m)?;
            let row = |n: u32| {
                let (shift_m, places) = if n.is_multiple_of(2) { (0.0, straight) } else { (half_m, shifted) };
                PlantRow { y_m: f64::from(n) * steps.row_m, shift_m, places }
            };
            (0..fitting(room_y_m, steps.row_m)?).map(row).collect()
        }
        SpacingPattern::Quincunx => {
            let lines = fitting(room_y_m, steps.row_m)?;
            let grid = |n: u32| PlantRow { y_m: f64::from(n) * steps.row_m, shift_m: 0.0, places: straight };
            let centre = |n: u32| PlantRow {
                y_m: (f64::from(n) + 0.5) * steps.row_m,
                shift_m: half_m,
                places: if n + 1 < lines { straight.saturating_sub(1) } else { 0 },
            };
            (0..lines).flat_map(|n| [grid(n), centre(n)]).collect()
        }
        SpacingPattern::DoubleRow => {
            let pair_m = steps.row_m + steps.gap_m;
            let second = fitting(room_y_m - steps.row_m, pair_m)?;
            let pair = |n: u32| {
                let y_m = f64::from(n) * pair_m;
                let second_places = if n < second { straight } else { 0 };
                [
                    PlantRow { y_m, shift_m: 0.0, places: straight },
                    PlantRow { y_m: y_m + steps.row_m, shift_m: 0.0, places: second_places },
                ]
            };
            (0..fitting(room_y_m, pair_m)?).flat_map(pair).collect()
        }
    };
    rows.retain(|row| row.places > 0);
    not_too_many(rows)
}

fn not_too_many(rows: Vec<PlantRow>) -> Result<Vec<PlantRow>, WrongInput> {
    let all: u64 = rows.iter().map(|row| u64::from(row.places)).sum();
    if all > u64::from(MOST_POSITIONS) { Err(TOO_MANY) } else { Ok(rows) }
}

/// Rows of which the first stands half a spacing inside, as many as whole spacings fit.
fn rows_inside(
    pattern: SpacingPattern,
    steps: &Steps,
    length_m: f64,
    width_m: f64,
) -> Result<Vec<PlantRow>, WrongInput> {
    let half_m = steps.in_row_m.min(length_m) / 2.0;
    let places = whole(length_m, steps.in_row_m)?;
    let straight = |y_m: f64| PlantRow { y_m, shift_m: half_m, places };
    // Shifted by half a spacing more the last of as many stands on the far edge at most.
    let shifted = |y_m: f64| PlantRow { y_m, shift_m: (half_m + steps.in_row_m / 2.0).min(length_m), places };
    let first_m = steps.row_m.min(width_m) / 2.0;
    let y_m = |n: u32| first_m + f64::from(n) * steps.row_m;
    let rows: Vec<PlantRow> = match pattern {
        SpacingPattern::Square | SpacingPattern::Rectangle => {
            (0..whole(width_m, steps.row_m)?).map(|n| straight(y_m(n))).collect()
        }
        SpacingPattern::Triangle => {
            let row = |n: u32| if n.is_multiple_of(2) { straight(y_m(n)) } else { shifted(y_m(n)) };
            (0..whole(width_m, steps.row_m)?).map(row).collect()
        }
        SpacingPattern::Quincunx => {
            let centre = |n: u32| shifted((y_m(n) + steps.row_m / 2.0).min(width_m));
            (0..whole(width_m, steps.row_m)?).flat_map(|n| [straight(y_m(n)), centre(n)]).collect()
        }
        SpacingPattern::DoubleRow => {
            let pair_m = steps.row_m + steps.gap_m;
            let left_m = (pair_m.min(width_m) - steps.row_m).max(0.0) / 2.0;
            let pair = |n: u32| {
                let y_m = left_m + f64::from(n) * pair_m;
                [straight(y_m), straight((y_m + steps.row_m).min(width_m))]
            };
            (0..whole(width_m, pair_m)?).flat_map(pair).collect()
        }
    };
    not_too_many(rows)
}

const TOO_MANY: WrongInput = WrongInput::TooMany { input: "positions", most: MOST_POSITIONS };

/// How many plants stand on a line of `room_m` with `step_m` between them, both ends counted.
fn fitting(room_m: f64, step_m: f64) -> Result<u32, WrongInput> {
    let count = (room_m / step_m + FUZZ).floor() + 1.0;
    if count > f64::from(MOST_POSITIONS) { Err(TOO_MANY) } else { Ok(count.max(0.0) as u32) }
}

/// How many whole steps lie on a line, at least one.
fn whole(room_m: f64, step_m: f64) -> Result<u32, WrongInput> {
    let count = (room_m / step_m + FUZZ).floor();
    if count > f64::from(MOST_POSITIONS) { Err(TOO_MANY) } else { Ok(count.max(1.0) as u32) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const PATTERNS: [SpacingPattern; 5] = [
        SpacingPattern::Square,
        SpacingPattern::Rectangle,
        SpacingPattern::Triangle,
        SpacingPattern::Quincunx,
        SpacingPattern::DoubleRow,
    ];

    fn laid(
        length_m: f64,
        width_m: f64,
        pattern: SpacingPattern,
        row_m: Option<f64>,
        in_row_m: f64,
        offset_m: Option<f64>,
        gap_m: Option<f64>,
    ) -> Result<Vec<Position>, WrongInput> {
        let offset_m = offset_m.unwrap_or(0.0);
        let laying = Laying::new(pattern, row_m, in_row_m);
        positions(length_m, width_m, &Laying { gap_m, offset_m, row_offset_m: offset_m, ..laying })
    }

    fn inside(length_m: f64, width_m: f64, pattern: SpacingPattern, row_m: f64, in_row_m: f64) -> Vec<Position> {
        let laying = Laying { edges: Edges::Half, ..Laying::new(pattern, Some(row_m), in_row_m) };
        positions(length_m, width_m, &laying).unwrap()
    }

    #[test]
    fn half_a_spacing_inside_a_bed_has_the_density_of_its_spacing() {
        // By hand: 12 / 2.5 = 4.8 rows and 30 / 2 = 15 places; 10 / 2.5 = 4 rows and 20 / 2 = 10 places.
        let bed = inside(30.0, 12.0, SpacingPattern::Rectangle, 2.5, 2.0);
        assert_eq!(row_lengths(&bed), [15; 4]);
        assert_eq!((at(&bed, 1, 1), at(&bed, 4, 15)), ((1.0, 1.25), (29.0, 8.75)));
        assert_eq!(inside(20.0, 10.0, SpacingPattern::Rectangle, 2.5, 2.0).len(), 40);
        for pattern in PATTERNS {
            let (row_m, gap_m) = (1.0, 2.0);
            // Whole spacings on both sides, of a double row whole pairs.
            let laying = Laying { gap_m: Some(gap_m), edges: Edges::Half, ..Laying::new(pattern, Some(row_m), 2.0) };
            let count = positions(40.0, 30.0, &laying).unwrap().len() as f64;
            let per_ha = plants_per_ha(pattern, Some(row_m), 2.0, Some(gap_m)).unwrap();
            let of_area = count / (40.0 * 30.0) * SQUARE_METRES_PER_HA;
            assert!((of_area / per_ha - 1.0).abs() < 1e-9, "{pattern:?}: {of_area} against {per_ha}");
        }
    }

    #[test]
    fn a_bed_narrower_than_its_spacing_has_one_row_in_the_middle() {
        let bed = inside(10.0, 1.0, SpacingPattern::Square, 2.0, 2.0);
        assert_eq!(row_lengths(&bed), [5]);
        assert_eq!(at(&bed, 1, 1), (1.0, 0.5));
    }

    #[test]
    fn an_offset_moves_the_grid_and_what_lies_outside_falls_away() {
        let laying = Laying {
            edges: Edges::Half,
            offset_m: 1.0,
            row_offset_m: 1.5,
            ..Laying::new(SpacingPattern::Square, None, 2.0)
        };
        // Places at 1, 3, 5, 7, 9 of 10 m move to 2 ... 10, all inside; rows at 1, 3, 5 of 6 m to 2.5, 4.5 and 6.5, outside.
        let bed = positions(10.0, 6.0, &laying).unwrap();
        assert_eq!(row_lengths(&bed), [5, 5]);
        assert_eq!((at(&bed, 1, 1), at(&bed, 2, 5)), ((2.0, 2.5), (10.0, 4.5)));
        // The numbers of other rows and places stay as they were.
        let along = positions(10.0, 6.0, &Laying { offset_m: 1.5, row_offset_m: 0.0, ..laying }).unwrap();
        assert_eq!(row_lengths(&along), [4; 3]);
    }

    /// Places in each row.
    fn row_lengths(positions: &[Position]) -> Vec<u32> {
        let rows = positions.last().map_or(0, |last| last.row);
        (1..=rows).map(|row| positions.iter().filter(|position| position.row == row).count() as u32).collect()
    }

    fn at(positions: &[Position], row: u32, place: u32) -> (f64, f64) {
        let found = positions.iter().find(|position| (position.row, position.place) == (row, place)).unwrap();
        (found.x_m, found.y_m)
    }

    #[test]
    fn a_bed_counts_both_edges() {
        let bed = laid(30.0, 12.0, SpacingPattern::Rectangle, Some(2.5), 2.0, None, None).unwrap();
        assert_eq!(row_lengths(&bed), [16; 5]);
        assert_eq!(at(&bed, 1, 1), (0.0, 0.0));
        assert_eq!(at(&bed, 5, 16), (30.0, 10.0));
    }

    #[test]
    fn a_row_on_the_far_edge_is_not_lost_to_rounding() {
        // 0.3 / 0.1 is 2.9999999999999996 in a computer.
        let bed = laid(0.3, 0.3, SpacingPattern::Square, None, 0.1, None, None).unwrap();
        assert_eq!(row_lengths(&bed), [4; 4]);
        assert!(bed.iter().all(|position| position.x_m <= 0.3 && position.y_m <= 0.3));
    }

    #[test]
    fn an_offset_moves_the_first_row_and_the_first_place() {
        let bed = laid(10.0, 4.0, SpacingPattern::Square, None, 2.0, Some(1.0), None).unwrap();
        assert_eq!(row_lengths(&bed), [5, 5]);
        assert_eq!(at(&bed, 1, 1), (1.0, 1.0));
        assert_eq!(at(&bed, 2, 5), (9.0, 3.0));
    }

    #[test]
    fn a_triangle_shifts_each_second_row() {
        let bed = laid(9.0, 6.0, SpacingPattern::Triangle, None, 3.0, None, None).unwrap();
        assert_eq!(row_lengths(&bed), [4, 3, 4]);
        let (x_m, y_m) = at(&bed, 2, 1);
        assert!((x_m - 1.5).abs() < 1e-12 && (y_m - 2.598_076_211).abs() < 1e-9, "{x_m} {y_m}");
        let given = laid(9.0, 6.0, SpacingPattern::Triangle, Some(2.0), 3.0, None, None).unwrap();
        assert_eq!(row_lengths(&given), [4, 3, 4, 3]);
    }

    #[test]
    fn a_quincunx_puts_a_plant_in_each_square() {
        let bed = laid(6.0, 4.0, SpacingPattern::Quincunx, None, 2.0, None, None).unwrap();
        assert_eq!(row_lengths(&bed), [4, 3, 4, 3, 4]);
        assert_eq!(at(&bed, 2, 1), (1.0, 1.0));
        assert_eq!(at(&bed, 3, 1), (0.0, 2.0));
        let single_line = laid(1.0, 4.0, SpacingPattern::Quincunx, None, 2.0, None, None).unwrap();
        assert_eq!(row_lengths(&single_line), [1, 1, 1]);
    }

    #[test]
    fn double_rows_come_in_pairs() {
        let bed = laid(2.0, 7.0, SpacingPattern::DoubleRow, Some(1.0), 1.0, None, None).unwrap();
        let rows: Vec<f64> = bed.iter().filter(|position| position.place == 1).map(|position| position.y_m).collect();
        assert_eq!(rows, [0.0, 1.0, 3.0, 4.0, 6.0, 7.0]);
        let odd = laid(2.0, 5.5, SpacingPattern::DoubleRow, Some(1.0), 1.0, None, Some(4.5)).unwrap();
        let rows: Vec<f64> = odd.iter().filter(|position| position.place == 1).map(|position| position.y_m).collect();
        assert_eq!(rows, [0.0, 1.0, 5.5]);
    }

    #[test]
    fn plants_per_hectare_of_the_other_patterns() {
        // 2 x 10000 / 3² and 2 x 10000 / ((2 + 1) x 0.5), by hand.
        let quincunx = plants_per_ha(SpacingPattern::Quincunx, None, 3.0, None).unwrap();
        assert!((quincunx - 2222.222).abs() < 0.001, "{quincunx}");
        let double = plants_per_ha(SpacingPattern::DoubleRow, Some(1.0), 0.5, Some(2.0)).unwrap();
        assert!((double - 13_333.333).abs() < 0.001, "{double}");
    }

    #[test]
    fn a_large_field_holds_what_the_hectare_figure_says() {
        // 1 km x 1 km with 10 m steps: the edges add up to 1 % along and 2 % across (a single row of 67).
        for pattern in PATTERNS {
            let planted = laid(1000.0, 1000.0, pattern, Some(10.0), 10.0, None, None).unwrap().len() as f64;
            let reckoned = plants_per_ha(pattern, Some(10.0), 10.0, None).unwrap() * 100.0;
            assert!((0.98..1.04).contains(&(planted / reckoned)), "{pattern:?}: {planted} against {reckoned}");
        }
    }

    #[test]
    fn nonsense_is_refused() {
        let square = SpacingPattern::Square;
        for wrong in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert!(laid(wrong, 5.0, square, None, 1.0, None, None).is_err(), "length {wrong}");
            assert!(laid(5.0, wrong, square, None, 1.0, None, None).is_err(), "width {wrong}");
            assert!(laid(5.0, 5.0, square, Some(wrong), 1.0, None, None).is_err(), "row {wrong}");
            assert!(laid(5.0, 5.0, square, None, wrong, None, None).is_err(), "in row {wrong}");
            assert!(laid(5.0, 5.0, square, None, 1.0, None, Some(wrong)).is_err(), "gap {wrong}");
            assert!(plants_per_ha(square, None, wrong, None).is_err(), "per hectare {wrong}");
        }
        assert!(laid(5.0, 5.0, square, None, 1.0, Some(-0.1), None).is_err());
        assert!(laid(5.0, 5.0, square, None, 1.0, Some(5.1), None).is_err());
        for pattern in [SpacingPattern::Rectangle, SpacingPattern::DoubleRow] {
            let missing = Err(WrongInput::Missing { input: "row_m" });
            assert_eq!(laid(5.0, 5.0, pattern, None, 1.0, None, None), missing);
        }
        assert_eq!(plants_per_ha(square, None, 1e-200, None), Err(WrongInput::TooLarge));
    }

    #[test]
    fn a_slip_of_the_pen_does_not_fill_the_memory() {
        for pattern in PATTERNS {
            assert_eq!(laid(1e9, 1e9, pattern, Some(1e-3), 1e-3, None, None), Err(TOO_MANY), "{pattern:?}");
            assert_eq!(laid(f64::MAX, 1.0, pattern, Some(1.0), 1e-300, None, None), Err(TOO_MANY), "{pattern:?}");
            assert_eq!(laid(400.0, 400.0, pattern, Some(1.0), 1.0, None, Some(0.5)), Err(TOO_MANY), "{pattern:?}");
        }
        let most = laid(99.0, 999.0, SpacingPattern::Square, None, 1.0, None, None).unwrap();
        assert_eq!(most.len(), MOST_POSITIONS as usize);
    }

    fn pattern() -> impl Strategy<Value = SpacingPattern> {
        proptest::sample::select(PATTERNS.to_vec())
    }

    proptest! {
        #[test]
        fn every_position_is_in_the_bed_and_numbered_in_order(
            length_m in 0.5..60.0f64, width_m in 0.5..30.0f64, pattern in pattern(),
            row_m in 0.5..5.0f64, in_row_m in 0.5..5.0f64, offset_m in 0.0..0.5f64, gap_m in 0.5..5.0f64,
        ) {
            let bed = laid(length_m, width_m, pattern, Some(row_m), in_row_m, Some(offset_m), Some(gap_m)).unwrap();
            prop_assert!(!bed.is_empty());
            prop_assert_eq!((bed[0].row, bed[0].place), (1, 1));
            for position in &bed {
                prop_assert!((offset_m..=length_m).contains(&position.x_m), "{:?}", position);
                prop_assert!((offset_m..=width_m).contains(&position.y_m), "{:?}", position);
            }
            for pair in bed.windows(2) {
                let next_place = pair[1].row == pair[0].row && pair[1].place == pair[0].place + 1 && pair[1].x_m > pair[0].x_m;
                let next_row = pair[1].row == pair[0].row + 1 && pair[1].place == 1 && pair[1].y_m > pair[0].y_m;
                prop_assert!(next_place || next_row, "{:?}", pair);
            }
        }

        #[test]
        fn a_larger_bed_never_holds_fewer(
            length_m in 0.5..60.0f64, width_m in 0.5..30.0f64, longer_m in 0.0..5.0f64, wider_m in 0.0..5.0f64,
            pattern in pattern(), row_m in 0.5..5.0f64, in_row_m in 0.5..5.0f64, offset_m in 0.0..0.5f64,
        ) {
            let count = |length_m, width_m| {
                laid(length_m, width_m, pattern, Some(row_m), in_row_m, Some(offset_m), None).unwrap().len()
            };
            prop_assert!(count(length_m + longer_m, width_m) >= count(length_m, width_m));
            prop_assert!(count(length_m, width_m + wider_m) >= count(length_m, width_m));
        }
    }
}
