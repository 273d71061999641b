//! Light maps of whole beds: how long they take, and how much longer numpy takes for the same in the same run. Prints
//! figures; judges nothing. `cargo bench --bench light 111 1111` takes other sizes; OUTPLANT_PYTHON names another python3.
#![allow(clippy::unwrap_used, clippy::print_stdout, missing_docs)]

#[path = "../support/taken.rs"]
mod taken;

use std::hint::black_box;
use std::process::Command;
use std::time::Instant;

use outplant::base::Day;
use outplant::science::shade::{Crown, Month, Positions, even_sky, maps, sun_through};
use outplant::science::sun::{Place, Slope};
use taken::report;

/// Crowns, and as many positions.
const SIZES: [usize; 3] = [111, 1_111, 5_000];
/// How often a series is reckoned.
const RUNS: u32 = 8;
/// Months of a map series.
const MONTHS: u32 = 24;
/// From plant to plant and from row to row, m.
const STEP_M: f64 = 3.0;

fn main() {
    let asked: Vec<usize> = std::env::args().filter_map(|word| word.parse().ok()).collect();
    let cores = std::thread::available_parallelism().unwrap().get();
    println!("{cores} cores; 96 moments of the sun and 600 directions of the sky");
    for size in if asked.is_empty() { SIZES.to_vec() } else { asked } {
        let bed = Bed::new(size);
        let (months, positions) = (bed.months(), bed.positions());
        let sky = even_sky(600);
        let begun = Instant::now();
        black_box(bed.months());
        let suns_s = begun.elapsed().as_secs_f64();
        report(&format!("{size} x {size}, the map of one month"), 20, || {
            black_box(maps(&positions, black_box(&months[..1]), &sky));
        });
        let (mut best_s, worked_s) = (f64::INFINITY, cpu_s());
        for _ in 0..RUNS {
            let begun = Instant::now();
            black_box(maps(&positions, black_box(&months), &sky));
            best_s = best_s.min(begun.elapsed().as_secs_f64());
        }
        let worked_s = (cpu_s() - worked_s) / f64::from(RUNS);
        println!(
            "{size} x {size}, {MONTHS} months: best of {RUNS} {best_s:.3} s; {worked_s:.2} s of work, {:.2} s on each core; \
             {suns_s:.3} s for crowns and suns",
            worked_s / cores as f64
        );
        numpy(&bed, worked_s);
    }
}

/// Seconds that the cores worked for this process so far, by the hundredth: on a machine that others use too it says more
/// than the clock on the wall. 0 where there is no /proc.
fn cpu_s() -> f64 {
    let stat = std::fs::read_to_string("/proc/self/stat").unwrap_or_default();
    let after_name: Vec<&str> = stat.rsplit(')').next().unwrap_or("").split_whitespace().collect();
    let ticks = after_name.get(11..13).unwrap_or_default();
    ticks.iter().filter_map(|ticks| ticks.parse::<f64>().ok()).sum::<f64>() / 100.0
}

/// A bed of nurse plants of many ages, as they are after a year of planting and refilling.
struct Bed {
    side: usize,
    /// Where each stands, m, how much older it is, months, and how much larger than others.
    plants: Vec<([f64; 2], f64, f64)>,
}

impl Bed {
    fn new(size: usize) -> Bed {
        let side = (size as f64).sqrt().ceil() as usize;
        let mut state = 9_u64;
        let mut share = move || {
            state ^= state << 13;
            state ^= state >> 7;
            state ^= state << 17;
            (state >> 11) as f64 / (1_u64 << 53) as f64
        };
        let plants = (0..size)
            .map(|at| {
                let spot = [at % side, at / side].map(|step| STEP_M * step as f64 + 0.2 * (share() - 0.5));
                (spot, 3.0 * (share() - 0.5), 0.85 + 0.3 * share())
            })
            .collect();
        Bed { side, plants }
    }

    /// The crowns in a month: height and width of a banana by its age (invented for the bench).
    fn figures(&self, month: u32) -> Vec<[f64; 6]> {
        const BY_AGE: [[f64; 3]; 6] =
            [[0.0, 0.4, 0.3], [3.0, 1.0, 0.7], [6.0, 2.0, 1.3], [9.0, 2.7, 1.6], [12.0, 3.0, 1.8], [27.0, 4.2, 2.05]];
        let grown = |age: f64| {
            let age = age.clamp(0.2, 26.9);
            let after = BY_AGE.iter().position(|row| row[0] > age).unwrap();
            let [from, to] = [BY_AGE[after - 1], BY_AGE[after]];
            let way = (age - from[0]) / (to[0] - from[0]);
            [from[1] + way * (to[1] - from[1]), from[2] + way * (to[2] - from[2])]
        };
        let figures = self.plants.iter().map(|([x, y], older, larger)| {
            let [height, radius] = grown(f64::from(month) + 3.0 + older).map(|size| size * larger);
            [*x, *y, 0.64 * height, radius, 0.36 * height, 1.05]
        });
        figures.collect()
    }

    fn months(&self) -> Vec<Month> {
        let place = Place::new(10.0, 0.0, 0.0).unwrap();
        let month = |month: u32| Month {
            crowns: self
                .figures(month)
                .iter()
                .map(|[x, y, middle, radius, half, lad]| {
                    Crown::new([*x, *y, *middle], *radius, *half, *lad, 0.6).unwrap()
                })
                .collect(),
            sun: sun_through(place, Day::from_ymd(2026 + (month / 12) as i32, month % 12 + 1, 15).unwrap(), 96)
                .unwrap(),
        };
        (0..MONTHS).map(month).collect()
    }

    fn spots(&self) -> Vec<[f64; 2]> {
        let spot = |at: usize| [at % self.side, at / self.side].map(|step| STEP_M * (step as f64 + 0.5));
        (0..self.plants.len()).map(spot).collect()
    }

    fn positions(&self) -> Positions {
        Positions::new(&self.spots(), 0.3, Slope::LEVEL).unwrap()
    }
}

/// The straightforward numpy of one map: each crown's chord at every point along every direction, in double precision; as
/// many crowns as take a few seconds, scaled to all of them.
const NUMPY: &str = r"
import sys, time, json, math
try:
    import numpy as np
except ImportError:
    sys.exit(3)
bed = json.load(sys.stdin)
P, C, n = np.array(bed['points']), np.array(bed['crowns']), 696
u = (np.arange(n) + 0.5) / n
a = np.arange(n) * math.pi * (3 - math.sqrt(5))
S = np.c_[np.sqrt(u) * np.sin(a), np.sqrt(u) * np.cos(a), np.sqrt(1 - u)]
m = min(len(C), 60 if len(P) < 300 else 12 if len(P) < 2000 else 3)
tau = np.zeros((len(P), n))
begun = time.process_time()
for x, y, zc, rh, hh, lad in C[:m]:
    scale = np.array([rh, rh, hh]); o = (P - np.array([x, y, zc])) / scale; d = S / scale
    A = (d * d).sum(1)[None, :]; B = o @ d.T; root = B * B - A * ((o * o).sum(1)[:, None] - 1); hit = root > 0
    root = np.sqrt(np.where(hit, root, 0)); near = np.maximum(0, (-B - root) / A); far = np.maximum(0, (-B + root) / A)
    tau += np.where(hit, far - near, 0) * lad
crowns = time.process_time() - begun
begun = time.process_time()
np.exp(-0.6 * tau).mean(1)
print((crowns * len(C) / m + time.process_time() - begun), m, np.__version__)
";

fn numpy(bed: &Bed, worked_s: f64) {
    use std::io::Write;
    let python = std::env::var("OUTPLANT_PYTHON").unwrap_or_else(|_| "python3".to_string());
    let points: Vec<[f64; 3]> = bed.spots().iter().map(|[x, y]| [*x, *y, 0.3]).collect();
    let given = serde_json::json!({"points": points, "crowns": bed.figures(12)}).to_string();
    let mut asked = Command::new(python);
    asked.args(["-c", NUMPY]).stdin(std::process::Stdio::piped()).stdout(std::process::Stdio::piped());
    let Ok(mut running) = asked.spawn() else {
        println!("  no python3 here: nothing to compare with");
        return;
    };
    // Without numpy it ends before it reads.
    let _ = running.stdin.take().unwrap().write_all(given.as_bytes());
    let ended = running.wait_with_output().unwrap();
    let told = String::from_utf8_lossy(&ended.stdout).into_owned();
    let words: Vec<&str> = told.split_whitespace().collect();
    let [seconds, crowns, version] = words[..] else {
        println!("  no numpy here: nothing to compare with");
        return;
    };
    let all_s = seconds.parse::<f64>().unwrap() * f64::from(MONTHS);
    println!(
        "  numpy {version}, the same number of directions: {all_s:.0} s of work for {MONTHS} months (scaled from {crowns} \
         crowns of one month), {:.0} times as much",
        all_s / worked_s
    );
}
