//! The light of a whole bed, month by month, fast: by shadows in single precision, on every core.
//!
//! 96 moments of the sun and 600 directions of the sky are off by 0.011 at most and 0.003 in the mean against a sun of
//! every minute and a sky of single degrees (random beds; a property holds a part of that).

use super::crown::Crown;
use super::positions::Positions;
use super::shadow::{CrownRows, Shadows, cast, falling};
use super::sky::Direction;
use crate::base::cores::{cores, on_cores};

/// Moments of the sun for a map. Ours, measured.
pub(crate) const SUN_MOMENTS: u32 = 96;
/// Directions of the sky for a map. Ours, measured.
pub(crate) const SKY_DIRECTIONS: u32 = 600;
/// Directions of the sky that one core takes at a time: always as many, so that the sums come out the same on any number
/// of cores. Ours.
const SKY_PART: usize = 150;

/// What shades a bed in a month, and the suns of a day of it.
#[derive(Clone, PartialEq, Debug)]
pub struct Month {
    /// The crowns, with heights above their own feet, m along the rows and across them.
    pub crowns: Vec<Crown>,
    /// The suns; none where it does not rise.
    pub sun: Vec<Direction>,
}

/// Light at each position, shares of an open level place, 0 to 1.
#[derive(Clone, PartialEq, Debug)]
pub struct LightMap {
    /// Of the direct light; 0 where the sun does not rise.
    pub direct: Vec<f32>,
    /// Of the light of the sky.
    pub diffuse: Vec<f32>,
}

impl LightMap {
    /// Light of a day of which `diffuse_share` (0 to 1) comes from the sky.
    pub(crate) fn light(&self, diffuse_share: f64) -> Vec<f64> {
        let both = self.direct.iter().zip(&self.diffuse);
        both.map(|(direct, diffuse)| diffuse_share * f64::from(*diffuse) + (1.0 - diffuse_share) * f64::from(*direct))
            .collect()
    }
}

/// A map for each month on every core.
pub fn maps(positions: &Positions, months: &[Month], sky: &[Direction]) -> Vec<LightMap> {
    maps_on(cores(), positions, months, sky)
}

/// Some directions of one month.
struct Task<'a> {
    month: usize,
    crowns: &'a CrownRows,
    directions: &'a [Direction],
    of_sky: bool,
}

/// The same on so many cores; not a bit is otherwise.
pub(super) fn maps_on(cores: usize, positions: &Positions, months: &[Month], sky: &[Direction]) -> Vec<LightMap> {
    let rows: Vec<CrownRows> = months.iter().map(|month| CrownRows::new(&month.crowns, positions)).collect();
    let mut tasks = Vec::new();
    for (at, month) in months.iter().enumerate() {
        tasks.push(Task { month: at, crowns: &rows[at], directions: &month.sun, of_sky: false });
        // Under the same crowns the sky gives the same.
        if at == 0 || months[at - 1].crowns != month.crowns {
            let parts = sky.chunks(SKY_PART);
            tasks.extend(parts.map(|part| Task { month: at, crowns: &rows[at], directions: part, of_sky: true }));
        }
    }
    let lit = on_cores(cores, 1, &tasks, |task| light_of(positions, task));
    let nothing = || vec![0.0; positions.count()];
    let mut made: Vec<LightMap> = months.iter().map(|_| LightMap { direct: nothing(), diffuse: Vec::new() }).collect();
    for (task, lit) in tasks.iter().zip(lit) {
        let map = &mut made[task.month];
        if !task.of_sky {
            map.direct = lit;
        } else if map.diffuse.is_empty() {
            map.diffuse = lit;
        } else {
            map.diffuse.iter_mut().zip(lit).for_each(|(sum, part)| *sum += part);
        }
    }
    for at in 1..made.len() {
        if months[at - 1].crowns == months[at].crowns {
            made[at].diffuse = made[at - 1].diffuse.clone();
        }
    }
    made
}

/// Light of some directions at each position.
fn light_of(positions: &Positions, task: &Task<'_>) -> Vec<f32> {
    let mut shadows = Shadows::default();
    let slots = positions.x.len();
    let (mut depths, mut sums) = (vec![0.0_f32; slots], vec![0.0_f32; slots]);
    for direction in task.directions.iter().filter(|direction| !direction.behind(positions.ground)) {
        cast(positions, task.crowns, direction, &mut shadows, &mut depths);
        let weight = direction.weight as f32;
        for (depth, sum) in depths.iter_mut().zip(&mut sums) {
            *sum += weight * falling(*depth);
            *depth = 0.0;
        }
    }
    positions.in_order(&sums)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::Day;
    use crate::science::shade::crown::Point;
    use crate::science::shade::plain::light_at;
    use crate::science::shade::sky::{even_sky, sky_patches, sun_through};
    use crate::science::sun::place::Place;
    use crate::science::sun::radiation::Slope;
    use proptest::prelude::*;

    /// Numbers from 0 to 1, always the same ones.
    struct Die(u64);

    impl Die {
        fn share(&mut self) -> f64 {
            self.0 ^= self.0 << 13;
            self.0 ^= self.0 >> 7;
            self.0 ^= self.0 << 17;
            (self.0 >> 11) as f64 / (1_u64 << 53) as f64
        }

        fn from(&mut self, low: f64, high: f64) -> f64 {
            low + (high - low) * self.share()
        }
    }

    /// A bed of nurse plants: those below `young` reach down to the positions and around them.
    fn bed(die: &mut Die, crowns: usize, side_m: f64, young: f64) -> Vec<Crown> {
        (0..crowns)
            .map(|_| {
                let (radius, half) = (die.from(0.6, 2.0), die.from(0.5, 1.6));
                let foot = if die.share() < young { die.from(-0.5 * half, 0.4) } else { die.from(0.4, 2.0) };
                let at = [die.from(0.0, side_m), die.from(0.0, side_m), foot + half];
                Crown::new(at, radius, half, die.from(0.4, 2.2), die.from(0.4, 0.7)).unwrap()
            })
            .collect()
    }

    fn points(die: &mut Die, count: usize, side_m: f64, in_rows: bool) -> Vec<[f64; 2]> {
        let each = (count as f64).sqrt().ceil() as usize;
        let step = side_m / each as f64;
        (0..count)
            .map(|at| {
                let jitter = if in_rows { [0.5, 0.5] } else { [die.share(), die.share()] };
                [((at % each) as f64 + jitter[0]) * step, ((at / each) as f64 + jitter[1]) * step]
            })
            .collect()
    }

    fn lifted(points: &[[f64; 2]], height_m: f64, ground: Slope) -> Vec<Point> {
        points.iter().map(|[x, y]| [*x, *y, height_m + ground.east * x + ground.north * y]).collect()
    }

    fn largest_off(fast: &[f32], plain: &[f64]) -> f64 {
        assert_eq!(fast.len(), plain.len());
        fast.iter().zip(plain).map(|(fast, plain)| (f64::from(*fast) - plain).abs()).fold(0.0, f64::max)
    }

    /// How far the fast map of some directions is off the plain reckoning by the same ones.
    fn off(crowns: &[Crown], points: &[[f64; 2]], height_m: f64, ground: Slope, sky: &[Direction]) -> f64 {
        let positions = Positions::new(points, height_m, ground).unwrap();
        let month = Month { crowns: crowns.to_vec(), sun: Vec::new() };
        let fast = maps_on(1, &positions, &[month], sky);
        let standing: Vec<Crown> = crowns.iter().map(|crown| crown.on(ground)).collect();
        largest_off(&fast[0].diffuse, &light_at(&lifted(points, height_m, ground), &standing, sky, ground))
    }

    fn day(month: u32) -> Day {
        Day::from_ymd(2026, month, 15).unwrap()
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(40))]

        #[test]
        fn the_fast_map_is_the_plain_reckoning(
            seed in 1_u64..u64::MAX,
            crowns in 0_usize..25,
            count in 1_usize..40,
            in_rows in any::<bool>(),
            young in 0.0..1.0_f64,
            side_m in 3.0..30.0_f64,
            lat in -35.0..35.0_f64,
            month in 1_u32..13,
            slope in prop::option::of((2.0..35.0_f64, 0.0..360.0_f64)),
            far in prop::bool::weighted(0.2),
        ) {
            let mut die = Die(seed);
            let mut trees = bed(&mut die, crowns, side_m, young);
            let mut points = points(&mut die, count, side_m, in_rows);
            if far {
                // Map coordinates: single precision must not see them.
                trees = trees.iter().map(|tree| tree.moved([512_345.0, 1_234_567.0])).collect();
                points = points.iter().map(|[x, y]| [x + 512_345.0, y + 1_234_567.0]).collect();
            }
            let ground = slope.map_or(Slope::LEVEL, |(steep, facing)| Slope::facing(steep, facing).unwrap());
            let sun = sun_through(Place::new(lat, 20.0, 0.0).unwrap(), day(month), 24).unwrap();
            for directions in [even_sky(60), sun] {
                let off = off(&trees, &points, 0.3, ground, &directions);
                prop_assert!(off < 3e-5, "off by {off}");
            }
        }

        #[test]
        fn fewer_leaves_are_never_darker_and_nothing_is_brighter_than_the_open(
            seed in 1_u64..u64::MAX,
            crowns in 1_usize..12,
        ) {
            let mut die = Die(seed);
            let trees = bed(&mut die, crowns, 8.0, 0.3);
            let positions = Positions::new(&points(&mut die, 16, 8.0, true), 0.3, Slope::LEVEL).unwrap();
            let lit = |crowns: &[Crown]| {
                let month = Month { crowns: crowns.to_vec(), sun: Vec::new() };
                maps_on(1, &positions, &[month], &even_sky(60)).remove(0).diffuse
            };
            let (all, less) = (lit(&trees), lit(&trees[1..]));
            for (all, less) in all.iter().zip(&less) {
                prop_assert!(*all >= 0.0 && *all <= less + 1e-6 && *less <= 1.0 + 1e-5, "{all} {less}");
            }
        }
    }

    #[test]
    fn one_two_and_four_cores_give_the_same_bits() {
        let mut die = Die(7);
        let place = Place::new(9.0, -83.0, 300.0).unwrap();
        let months: Vec<Month> = (1..5)
            .map(|month| Month {
                // Two months with the same crowns: their sky is reckoned once.
                crowns: bed(&mut Die(20 + u64::from(month / 2)), 20, 12.0, 0.3),
                sun: sun_through(place, day(month), 24).unwrap(),
            })
            .collect();
        assert_eq!(months[1].crowns, months[2].crowns);
        let positions = Positions::new(&points(&mut die, 49, 12.0, true), 0.3, Slope::LEVEL).unwrap();
        let one = maps_on(1, &positions, &months, &even_sky(400));
        for cores in [2, 4] {
            assert_eq!(maps_on(cores, &positions, &months, &even_sky(400)), one, "{cores} cores");
        }
        assert_eq!(one[1].diffuse, one[2].diffuse);
        assert_ne!(one[1].direct, one[2].direct);
    }

    #[test]
    fn without_crowns_there_is_full_light_and_without_sun_no_direct_light() {
        let positions = Positions::new(&[[0.0, 0.0], [2.0, 3.0]], 0.3, Slope::LEVEL).unwrap();
        let place = Place::new(5.0, 0.0, 0.0).unwrap();
        let months = [
            Month { crowns: Vec::new(), sun: sun_through(place, day(3), 24).unwrap() },
            Month { crowns: Vec::new(), sun: Vec::new() },
        ];
        let made = maps(&positions, &months, &even_sky(600));
        assert!(made[0].light(0.4).iter().all(|light| (light - 1.0).abs() < 1e-5), "{made:?}");
        assert_eq!(made[1].direct, [0.0, 0.0]);
        assert!(maps(&Positions::new(&[], 0.3, Slope::LEVEL).unwrap(), &months, &even_sky(10))[0].diffuse.is_empty());
    }

    #[test]
    fn a_bed_that_is_moved_and_turned_with_the_sky_has_the_same_light() {
        let mut die = Die(11);
        let (trees, points) = (bed(&mut die, 15, 9.0, 0.3), points(&mut die, 25, 9.0, true));
        let lit = |trees: &[Crown], points: &[[f64; 2]], sky: &[Direction]| {
            let positions = Positions::new(points, 0.3, Slope::LEVEL).unwrap();
            maps_on(1, &positions, &[Month { crowns: trees.to_vec(), sun: Vec::new() }], sky).remove(0).diffuse
        };
        let sky = even_sky(150);
        let here = lit(&trees, &points, &sky);
        // Rows that run north-east (37 degrees): the bed's own coordinates, and the light seen along its rows.
        let (sin, cos) = 37.0_f64.to_radians().sin_cos();
        let turn = |[x, y]: [f64; 2]| [x * sin + y * cos, y * sin - x * cos];
        let turned: Vec<Crown> = trees
            .iter()
            .map(|tree| {
                let to = turn(tree.at());
                tree.moved([to[0] - tree.at()[0], to[1] - tree.at()[1]])
            })
            .collect();
        let turned_points: Vec<[f64; 2]> = points.iter().map(|point| turn(*point)).collect();
        let turned_sky: Vec<Direction> = sky.iter().map(|one| one.along_rows(37.0)).collect();
        let there = lit(&turned, &turned_points, &turned_sky);
        for (here, there) in here.iter().zip(&there) {
            assert!((here - there).abs() < 3e-5, "{here} {there}");
        }
    }

    /// Errors of some random beds against a fine sun and a fine sky: the largest, and the largest mean of a bed.
    fn errors(seeds: std::ops::Range<u64>, fine_sun: u32, fine_sky: f64) -> (f64, f64) {
        let (mut worst, mut worst_mean) = (0.0_f64, 0.0_f64);
        let fine_sky = sky_patches(fine_sky).unwrap();
        for seed in seeds {
            let mut die = Die(seed * 7_919 + 1);
            let trees = bed(&mut die, 30, 12.0, 0.1);
            let points = points(&mut die, 25, 12.0, true);
            let place = Place::new(die.from(-23.0, 23.0), 0.0, 0.0).unwrap();
            let (day, share) = (day(1 + (die.share() * 12.0) as u32), die.from(0.3, 0.7));
            let positions = Positions::new(&points, 0.3, Slope::LEVEL).unwrap();
            let sun = sun_through(place, day, SUN_MOMENTS).unwrap();
            let fast = maps_on(1, &positions, &[Month { crowns: trees.clone(), sun }], &even_sky(SKY_DIRECTIONS));
            let plain = |directions: &[Direction]| {
                light_at(&lifted(&points, 0.3, Slope::LEVEL), &trees, directions, Slope::LEVEL)
            };
            let (direct, diffuse) = (plain(&sun_through(place, day, fine_sun).unwrap()), plain(&fine_sky));
            let off = fast[0].light(share).into_iter().zip(direct.iter().zip(&diffuse));
            let off: Vec<f64> =
                off.map(|(fast, (direct, diffuse))| (fast - share * diffuse - (1.0 - share) * direct).abs()).collect();
            worst = off.iter().copied().fold(worst, f64::max);
            worst_mean = worst_mean.max(off.iter().sum::<f64>() / off.len() as f64);
        }
        (worst, worst_mean)
    }

    #[test]
    fn maps_of_random_beds_are_near_enough_to_a_fine_sun_and_sky() {
        // `cargo test --release --lib near_enough` with OUTPLANT_LIGHT_BEDS=100 tries a hundred against every minute of
        // the sun and single degrees of the sky.
        let many: Option<u64> = std::env::var("OUTPLANT_LIGHT_BEDS").ok().and_then(|count| count.parse().ok());
        let (worst, worst_mean) = many.map_or_else(|| errors(0..2, 360, 3.0), |many| errors(0..many, 720, 1.0));
        println!("largest error {worst:.4}, largest mean of a bed {worst_mean:.4}");
        assert!(worst <= 0.012 && worst_mean < 0.004, "{worst} {worst_mean}");
    }
}
