//! Sowings that never were: a seeded die, and seeds that come up after a curve drawn from a species' own spread.

use outplant::science::emergence::{Batch, Curve, CurvePrior, Looks, forecast_by_prior, forecast_of_several};

/// A seeded die (SplitMix64, Steele, Lea & Flood 2014).
pub struct Die(pub u64);

impl Die {
    /// A number above 0 and below 1.
    pub fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        (((z ^ (z >> 31)) >> 11) as f64 + 0.5) / (1u64 << 53) as f64
    }

    /// A standard normal number (Box & Muller 1958).
    pub fn normal(&mut self) -> f64 {
        (-2.0 * self.share().ln()).sqrt() * (std::f64::consts::TAU * self.share()).cos()
    }

    /// A gamma number (Marsaglia & Tsang 2000).
    fn gamma(&mut self, shape: f64) -> f64 {
        if shape < 1.0 {
            return self.gamma(shape + 1.0) * self.share().powf(1.0 / shape);
        }
        let d = shape - 1.0 / 3.0;
        loop {
            let x = self.normal();
            let v = (1.0 + x / (9.0 * d).sqrt()).powi(3);
            if v > 0.0 && self.share().ln() < 0.5 * x * x + d - d * v + d * v.ln() {
                return d * v;
            }
        }
    }

    /// A beta number.
    pub fn beta(&mut self, a: f64, b: f64) -> f64 {
        let (x, y) = (self.gamma(a), self.gamma(b));
        x / (x + y)
    }
}

/// A simulated sowing.
pub struct Simulated {
    /// The days on which its seeds came up; never is not among them.
    pub days: Vec<f64>,
    /// Seeds sown.
    pub seeds: u32,
    /// The curve it was thrown from.
    pub curve: Curve,
}

impl Simulated {
    /// A sowing of the species whose curve is drawn from what is known of it beforehand.
    pub fn draw(die: &mut Die, prior: &CurvePrior, seeds: u32) -> Simulated {
        let curve = Curve {
            d: die.beta(prior.d.a, prior.d.b),
            b: prior.b.median * (prior.b.spread * die.normal()).exp(),
            t50: prior.t50.median * (prior.t50.spread * die.normal()).exp(),
        };
        let mut days = Vec::new();
        for _ in 0..seeds {
            if die.share() < curve.d {
                days.push(curve.day_of(die.share()));
            }
        }
        Simulated { days, seeds, curve }
    }

    /// So many seedlings of so many seeds by a given curve.
    pub fn of_curve(die: &mut Die, curve: Curve, seeds: u32, seedlings: usize) -> Simulated {
        let days = (0..seedlings).map(|_| curve.day_of(die.share())).collect();
        Simulated { days, seeds, curve }
    }

    /// How many were up on a day.
    pub fn up(&self, day: f64) -> u32 {
        self.days.iter().filter(|came| **came <= day).count() as u32
    }

    /// Looks every so many days up to a day.
    pub fn looks(&self, every: f64, until: f64) -> Looks {
        let mut edges = vec![0.0];
        while edges[edges.len() - 1] + every <= until {
            edges.push(edges[edges.len() - 1] + every);
        }
        if edges.len() == 1 {
            edges.push(until);
        }
        let counts: Vec<u32> = edges.windows(2).map(|pair| self.up(pair[1]) - self.up(pair[0])).collect();
        Looks::new(&edges, &counts, self.seeds).unwrap()
    }
}

/// Three species as their profiles have them: first, half and last day of emergence, germination of fresh seed.
pub const SPECIES: [(f64, f64, f64, f64); 3] =
    [(35.0, 55.0, 90.0, 0.8), (7.0, 12.0, 25.0, 0.6), (14.0, 21.0, 35.0, 0.9)];

/// Of so many simulated sowings, looked at up to so many times the species' half day, in how many the 90 % range of what will
/// be up by twice the last day held what came; with the mean width of the range as a share of the seeds.
pub fn held(sowings: u32, seed: u64, halves: f64) -> (u32, f64) {
    let mut die = Die(seed);
    let (mut held, mut widths) = (0, 0.0);
    for number in 0..sowings {
        let (first, half, last, germination) = SPECIES[number as usize % SPECIES.len()];
        let prior = CurvePrior::of_species(Some(first), half, Some(last), germination).unwrap();
        let seeds = [25, 60, 150][(number as usize / SPECIES.len()) % 3];
        let sowing = Simulated::draw(&mut die, &prior, seeds);
        let told = forecast_by_prior(&sowing.looks(half / 8.0, half * halves), &prior, 2.0 * last, 0.9).unwrap();
        let came = f64::from(sowing.up(2.0 * last));
        held += u32::from(told.at_last_day.low <= came && came <= told.at_last_day.high);
        widths += (told.at_last_day.high - told.at_last_day.low) / f64::from(seeds);
    }
    (held, widths / f64::from(sowings))
}

/// Two sowings of 60 seeds in one tray, the second so many days after the first, with the looks at both together.
pub fn two_sowings(die: &mut Die, prior: &CurvePrior, between: f64, every: f64, until: f64) -> (Looks, [Simulated; 2]) {
    let (first, other) = (Simulated::draw(die, prior, 60), Simulated::draw(die, prior, 60));
    // The shares differ; the shape is the bench's and the species', the same for both.
    let second = Simulated::of_curve(die, first.curve, 60, other.days.len());
    let mut edges = vec![0.0];
    while edges[edges.len() - 1] + every <= until {
        edges.push(edges[edges.len() - 1] + every);
    }
    let up = |day: f64| first.up(day) + second.up(day - between);
    let counts: Vec<u32> = edges.windows(2).map(|pair| up(pair[1]) - up(pair[0])).collect();
    (Looks::new(&edges, &counts, 120).unwrap(), [first, second])
}

/// The same as [`held`] of pairs of sowings in one tray, half of the half day to twice it apart, looked at up to the half day
/// of the second.
pub fn held_together(pairs: u32, seed: u64) -> (u32, f64) {
    let mut die = Die(seed);
    let (mut held, mut widths) = (0, 0.0);
    for number in 0..pairs {
        let (first, half, last, germination) = SPECIES[number as usize % SPECIES.len()];
        let prior = CurvePrior::of_species(Some(first), half, Some(last), germination).unwrap();
        let between = half * [0.5, 1.0, 2.0][(number as usize / SPECIES.len()) % 3];
        let (looks, both) = two_sowings(&mut die, &prior, between, half / 8.0, between + half);
        let batch = |after_days| Batch { after_days, seeds: 60, d: prior.d };
        let last_day = between + 2.0 * last;
        let told =
            forecast_of_several(&looks, &[batch(0.0), batch(between)], (prior.t50, prior.b), last_day, 0.9).unwrap();
        let came = f64::from(both[0].up(last_day) + both[1].up(last_day - between));
        held += u32::from(told.at_last_day.low <= came && came <= told.at_last_day.high);
        widths += (told.at_last_day.high - told.at_last_day.low) / 120.0;
        assert!(told.of_youngest.low <= told.of_youngest.likely && told.of_youngest.high <= looks.emerged());
    }
    (held, widths / f64::from(pairs))
}
