//! What cutting plants under a bed's light would do: which few cuts bring most positions into a band of light.
//!
//! Source: ours. Depths of all crowns add up, so that cutting one is a subtraction; light is kept by position and direction,
//! and a cut that is only tried changes nothing.

use std::f64::consts::LOG2_E;

use super::crown::{Crown, Point};
use super::shadow::falling;
use super::sky::Direction;
use crate::science::sun::radiation::Slope;
use crate::science::wrong_input::{self, WrongInput};

/// Up to so many cuts every set is tried. Ours: more takes seconds.
const TRY_ALL_CUTS: usize = 4;
/// And while there are not more sets than this. Ours: about two seconds.
const TRY_ALL_SETS: u64 = 600_000;
/// Most cells of position and direction. Ours: 40 MB.
const MOST_CELLS: u32 = 5_000_000;
/// Lets a limit itself be kept in single precision.
const ROUNDING: f32 = 1e-5;
/// How much worse a position too bright is than one as far too dark: cutting never darkens it again. Ours.
const TOO_BRIGHT: f32 = 2.0;

/// Light of a bed by position and direction, ready for cuts.
#[derive(Clone)]
pub(crate) struct LightTable {
    /// Weights of the directions.
    weights: Vec<f32>,
    /// Depth of each cell in powers of two, a position after the other.
    depths: Vec<f32>,
    /// What comes through in each.
    through: Vec<f32>,
    /// Light at each position.
    light: Vec<f32>,
    /// What each crown holds back: cell and depth.
    crowns: Vec<Vec<(u32, f32)>>,
}

/// The light that is wanted, shares of the open.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct Band {
    low: f32,
    high: f32,
}

impl Band {
    /// From `low` to `high`, 0 to 1.
    ///
    /// # Errors
    /// Outside of that, the low above the high, or no number.
    pub(crate) fn new(low: f64, high: f64) -> Result<Band, WrongInput> {
        wrong_input::share("band", high)?;
        wrong_input::within("band", low, 0.0, high)?;
        Ok(Band { low: low as f32, high: high as f32 })
    }

    /// How good some light is: positions in the band, then how far the others are from it together.
    fn score(self, light: &[f32]) -> Score {
        light.iter().fold(Score { in_band: 0, off: 0.0 }, |score, light| {
            if *light < self.low {
                Score { off: score.off + self.low - light, ..score }
            } else if *light > self.high {
                Score { off: score.off + TOO_BRIGHT * (light - self.high), ..score }
            } else {
                Score { in_band: score.in_band + 1, ..score }
            }
        })
    }
}

/// What cuts must not do.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct Limits {
    /// So many of the points are counted; at those behind them living plants stand.
    pub(crate) counted: usize,
    /// No living plant gets more than so many times the light it had.
    pub(crate) most_step: f64,
    /// Of the shade at the counted points no more than this share goes.
    pub(crate) most_shade: f64,
}

/// What is looked for, and the light at the beginning.
struct Goal<'a> {
    band: Band,
    limits: Option<Limits>,
    before: &'a [f32],
}

impl Goal<'_> {
    fn counted(&self) -> usize {
        self.limits.map_or(self.before.len(), |limits| limits.counted.min(self.before.len()))
    }

    fn score(&self, light: &[f32]) -> Score {
        self.band.score(&light[..self.counted()])
    }

    /// Whether nothing has got too much light: more cuts never put that right.
    fn allows(&self, light: &[f32]) -> bool {
        let Some(limits) = self.limits else { return true };
        let counted = self.counted();
        let steps = || light[counted..].iter().zip(&self.before[counted..]);
        let shade = |light: &[f32]| light[..counted].iter().map(|light| 1.0 - light).sum::<f32>();
        let kept = (1.0 - limits.most_shade) as f32;
        steps().all(|(after, before)| *after <= before * limits.most_step as f32 + ROUNDING)
            && shade(light) >= kept * shade(self.before) - ROUNDING
    }
}

#[derive(Clone, Copy, PartialEq, Debug)]
struct Score {
    in_band: usize,
    off: f32,
}

impl Score {
    /// Better by more than rounding.
    fn beats(self, other: Score) -> bool {
        self.in_band > other.in_band || (self.in_band == other.in_band && self.off < other.off - 1e-6)
    }
}

/// Some cuts and what they bring.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct Cuts {
    /// Which crowns go, by their place in the list.
    pub(crate) crowns: Vec<usize>,
    /// Positions in the band afterwards.
    pub(crate) in_band: usize,
    /// Whether every set of as many cuts was tried; else it is the best that was found.
    pub(crate) proven: bool,
    /// Light at each position afterwards.
    pub(crate) light: Vec<f32>,
}

impl LightTable {
    /// The light at some points under crowns from some directions; heights as in `plain.rs`. Only the first crowns can be
    /// cut, those that stay shade as well.
    ///
    /// # Errors
    /// More than five million pairs of point and direction.
    pub(crate) fn new(
        points: &[Point],
        (crowns, staying): (&[Crown], &[Crown]),
        directions: &[Direction],
        ground: Slope,
    ) -> Result<LightTable, WrongInput> {
        let seen: Vec<&Direction> = directions.iter().filter(|direction| !direction.behind(ground)).collect();
        let cells = points.len().saturating_mul(seen.len());
        if cells > MOST_CELLS as usize {
            return Err(WrongInput::TooMany { input: "points", most: MOST_CELLS / seen.len().max(1) as u32 });
        }
        let mut table = LightTable {
            weights: seen.iter().map(|direction| direction.weight as f32).collect(),
            depths: vec![0.0; cells],
            through: vec![1.0; cells],
            light: vec![0.0; points.len()],
            crowns: Vec::new(),
        };
        let can_be_cut = crowns.iter().map(|crown| (crown, true));
        for (crown, is_cut) in can_be_cut.chain(staying.iter().map(|crown| (crown, false))) {
            let mut held = Vec::new();
            let rays = points.iter().flat_map(|point| seen.iter().map(move |direction| (point, direction)));
            for (cell, (point, direction)) in rays.enumerate() {
                let depth = (crown.depth(*point, direction) * LOG2_E) as f32;
                if depth > 0.0 {
                    held.push((cell as u32, depth));
                    table.depths[cell] += depth;
                }
            }
            if is_cut {
                table.crowns.push(held);
            }
        }
        for (through, depth) in table.through.iter_mut().zip(&table.depths) {
            *through = falling(*depth);
        }
        if !seen.is_empty() {
            let lit = |cells: &[f32]| cells.iter().zip(&table.weights).map(|(through, weight)| through * weight).sum();
            table.light = table.through.chunks(seen.len()).map(lit).collect();
        }
        Ok(table)
    }

    /// Light at each position.
    pub(crate) fn light(&self) -> &[f32] {
        &self.light
    }

    /// Writes what the light would be without a crown; the table stays as it is.
    fn without(&self, crown: usize, light: &mut Vec<f32>) {
        light.clear();
        light.extend_from_slice(&self.light);
        let each = self.weights.len();
        for &(cell, depth) in &self.crowns[crown] {
            let cell = cell as usize;
            let more = falling((self.depths[cell] - depth).max(0.0)) - self.through[cell];
            light[cell / each] += self.weights[cell % each] * more;
        }
    }

    /// Takes a crown out.
    fn cut(&mut self, crown: usize) {
        let each = self.weights.len();
        for &(cell, depth) in &self.crowns[crown] {
            let cell = cell as usize;
            self.depths[cell] = (self.depths[cell] - depth).max(0.0);
            let through = falling(self.depths[cell]);
            self.light[cell / each] += self.weights[cell % each] * (through - self.through[cell]);
            self.through[cell] = through;
        }
    }

    /// The same table with some crowns cut.
    fn with_cut(&self, crowns: &[usize]) -> LightTable {
        let mut table = self.clone();
        crowns.iter().for_each(|crown| table.cut(*crown));
        table
    }

    /// The best set of no cut, one cut, two cuts ... up to `most` (at most as many as there are crowns, or as the limits
    /// allow).
    pub(crate) fn best_cuts(&self, band: Band, limits: Option<Limits>, most: usize) -> Vec<Cuts> {
        let goal = Goal { band, limits, before: &self.light };
        let mut found = vec![self.told(Vec::new(), &goal, true)];
        let mut greedy = self.clone();
        let mut cut: Vec<usize> = Vec::new();
        for count in 1..=most.min(self.crowns.len()) {
            let next = greedy.best_next(&goal, &cut).map(|(next, _)| next);
            if let Some(next) = next {
                greedy.cut(next);
                cut.push(next);
            }
            let known = next.map(|_| self.swapped(&goal, cut.clone()));
            let all = count <= TRY_ALL_CUTS && sets(self.crowns.len(), count) <= TRY_ALL_SETS;
            let best = if all { self.best_of_all(&goal, count, known) } else { known };
            let Some(best) = best else { break };
            if next.is_none() {
                // What was cut one by one goes no further and another set does.
                greedy = self.with_cut(&best);
                cut.clone_from(&best);
            }
            found.push(self.told(best, &goal, all));
        }
        found
    }

    fn told(&self, mut crowns: Vec<usize>, goal: &Goal<'_>, proven: bool) -> Cuts {
        crowns.sort_unstable();
        let light = self.with_cut(&crowns).light;
        Cuts { crowns, in_band: goal.score(&light).in_band, proven, light }
    }

    /// The crown that is best cut next, and what that comes to.
    fn best_next(&self, goal: &Goal<'_>, cut: &[usize]) -> Option<(usize, Score)> {
        let mut light = Vec::new();
        let mut best: Option<(usize, Score)> = None;
        for crown in (0..self.crowns.len()).filter(|crown| !cut.contains(crown)) {
            self.without(crown, &mut light);
            let score = goal.score(&light);
            if best.is_none_or(|(_, known)| score.beats(known)) && goal.allows(&light) {
                best = Some((crown, score));
            }
        }
        best
    }

    /// One cut for another while that is better.
    fn swapped(&self, goal: &Goal<'_>, mut cut: Vec<usize>) -> Vec<usize> {
        let mut score = goal.score(&self.with_cut(&cut).light);
        loop {
            let mut better = None;
            for place in 0..cut.len() {
                let others = [&cut[..place], &cut[place + 1..]].concat();
                let found = self.with_cut(&others).best_next(goal, &cut);
                if let Some((crown, with)) = found.filter(|(_, with)| with.beats(score)) {
                    score = with;
                    better = Some((place, crown));
                }
            }
            match better {
                Some((place, crown)) => cut[place] = crown,
                None => return cut,
            }
        }
    }

    /// The best of every set of so many cuts, beginning with a good one where one is known.
    fn best_of_all(&self, goal: &Goal<'_>, count: usize, known: Option<Vec<usize>>) -> Option<Vec<usize>> {
        let best = known.map(|known| (goal.score(&self.with_cut(&known).light), known));
        let mut search = Search { goal, best, chosen: Vec::new(), light: Vec::new() };
        search.from(&mut self.clone(), 0, count);
        search.best.map(|(_, best)| best)
    }
}

/// Every set, each cut laid upon those before it.
struct Search<'a> {
    goal: &'a Goal<'a>,
    best: Option<(Score, Vec<usize>)>,
    chosen: Vec<usize>,
    light: Vec<f32>,
}

impl Search<'_> {
    fn from(&mut self, table: &mut LightTable, first: usize, left: usize) {
        for crown in first..table.crowns.len() {
            if left == 1 {
                table.without(crown, &mut self.light);
                let score = self.goal.score(&self.light);
                let better = self.best.as_ref().is_none_or(|(known, _)| score.beats(*known));
                if better && self.goal.allows(&self.light) {
                    self.best = Some((score, [&self.chosen[..], &[crown]].concat()));
                }
                continue;
            }
            // Only what the cut changes is kept and put back.
            let light = table.light.clone();
            let cells: Vec<(f32, f32)> = table.crowns[crown]
                .iter()
                .map(|(cell, _)| (table.depths[*cell as usize], table.through[*cell as usize]))
                .collect();
            table.cut(crown);
            if self.goal.allows(&table.light) {
                self.chosen.push(crown);
                self.from(table, crown + 1, left - 1);
                self.chosen.pop();
            }
            for (at, (depth, through)) in cells.into_iter().enumerate() {
                let cell = table.crowns[crown][at].0 as usize;
                (table.depths[cell], table.through[cell]) = (depth, through);
            }
            table.light = light;
        }
    }
}

/// How many sets of `count` there are among `of`.
fn sets(of: usize, count: usize) -> u64 {
    (0..count as u64).fold(1_u64, |sets, at| sets.saturating_mul((of as u64).saturating_sub(at)) / (at + 1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::science::shade::plain::light_at;
    use crate::science::shade::sky::even_sky;

    fn crowns() -> Vec<Crown> {
        (0..9)
            .map(|at| {
                let at =
                    [2.5 * f64::from(at % 3) + 0.1 * f64::from(at), 2.5 * f64::from(at / 3), 2.0 + 0.1 * f64::from(at)];
                Crown::new(at, 1.6, 1.2, 1.2, 0.6).unwrap()
            })
            .collect()
    }

    fn points() -> Vec<Point> {
        (0..16).map(|at| [0.8 + f64::from(at % 4) * 1.3, 0.9 + f64::from(at / 4) * 1.2, 0.3]).collect()
    }

    fn table() -> LightTable {
        LightTable::new(&points(), (&crowns(), &[]), &even_sky(60), Slope::LEVEL).unwrap()
    }

    fn near(light: &[f32], crowns: &[Crown]) {
        for (got, want) in light.iter().zip(light_at(&points(), crowns, &even_sky(60), Slope::LEVEL)) {
            assert!((f64::from(*got) - want).abs() < 1e-5, "{got} {want}");
        }
    }

    #[test]
    fn a_cut_is_a_subtraction() {
        let mut all = crowns();
        let mut table = table();
        near(table.light(), &all);
        let mut tried = Vec::new();
        table.without(4, &mut tried);
        for crown in [4, 0, 7] {
            table.cut(crown);
            // Left out of the full reckoning in its place: leaves of no density.
            all[crown] = all[crown].leafier(0.0);
            if crown == 4 {
                near(&tried, &all);
            }
            near(table.light(), &all);
        }
    }

    #[test]
    fn the_best_cuts_are_those_of_every_set_tried_by_hand() {
        let (table, band) = (table(), Band::new(0.40, 0.60).unwrap());
        let found = table.best_cuts(band, None, 3);
        assert_eq!(found.iter().map(|cuts| cuts.crowns.len()).collect::<Vec<_>>(), [0, 1, 2, 3]);
        assert!(found.iter().all(|cuts| cuts.proven));
        let in_band = |cut: &[usize]| band.score(&table.with_cut(cut).light).in_band;
        let best_pair = (0..9).flat_map(|a| (0..a).map(move |b| [a, b])).map(|pair| in_band(&pair)).max().unwrap();
        let best_one = (0..9).map(|one| in_band(&[one])).max().unwrap();
        assert_eq!([found[1].in_band, found[2].in_band], [best_one, best_pair]);
        assert_eq!(in_band(&found[3].crowns), found[3].in_band);
        assert!(found[2].in_band > found[0].in_band, "{found:?}");
    }

    #[test]
    fn a_set_that_breaks_a_limit_is_never_chosen_and_the_best_of_the_others_is() {
        let (table, band) = (table(), Band::new(0.40, 0.60).unwrap());
        // The last four points hold living plants.
        let limits = Limits { counted: 12, most_step: 1.25, most_shade: 0.25 };
        let before = table.light().to_vec();
        let allowed = |light: &[f32]| {
            let shade = |light: &[f32]| light[..12].iter().map(|light| 1.0 - light).sum::<f32>();
            let steps = light[12..].iter().zip(&before[12..]).all(|(after, before)| *after <= 1.25 * before + 1e-5);
            steps && shade(light) >= 0.75 * shade(&before) - 1e-5
        };
        let found = table.best_cuts(band, Some(limits), 4);
        for cuts in &found {
            assert!(allowed(&cuts.light), "{:?}", cuts.crowns);
            assert_eq!(cuts.in_band, band.score(&cuts.light[..12]).in_band);
        }
        let pairs = (0..9).flat_map(|a| (0..a).map(move |b| [a, b])).map(|pair| table.with_cut(&pair).light);
        let best = pairs.filter(|light| allowed(light)).map(|light| band.score(&light[..12]).in_band).max();
        assert_eq!(best, found.get(2).map(|cuts| cuts.in_band));
        let free = table.best_cuts(band, None, 4);
        assert!(free.len() > found.len() || !free.iter().all(|cuts| allowed(&cuts.light)), "the limits bind");
        // Nothing may go where any cut is too much.
        let strict = Limits { most_step: 1.0001, most_shade: 0.0001, ..limits };
        assert_eq!(table.best_cuts(band, Some(strict), 4).len(), 1);
    }

    #[test]
    fn crowns_that_stay_shade_and_are_not_cut() {
        let all = crowns();
        let table = LightTable::new(&points(), (&all[..3], &all[3..]), &even_sky(60), Slope::LEVEL).unwrap();
        near(table.light(), &all);
        assert_eq!(table.best_cuts(Band::new(0.9, 1.0).unwrap(), None, 9).len(), 4);
    }

    #[test]
    fn beyond_what_is_tried_whole_it_is_the_best_found() {
        let found = table().best_cuts(Band::new(0.5, 0.8).unwrap(), None, 20);
        assert_eq!(found.len(), 10, "no more cuts than crowns");
        assert!(found[4].proven && !found[5].proven);
        assert!(found[9].light.iter().all(|light| (light - 1.0).abs() < 1e-4), "all cut is full light");
        assert_eq!((sets(40, 4), sets(1_111, 4) > TRY_ALL_SETS), (91_390, true));
    }

    #[test]
    fn a_band_upside_down_and_a_bed_too_large_are_refused() {
        assert!(Band::new(0.6, 0.4).is_err() && Band::new(0.2, 1.4).is_err());
        let many = vec![[0.0, 0.0, 0.3]; 90_000];
        assert!(LightTable::new(&many, (&[], &[]), &even_sky(60), Slope::LEVEL).is_err());
    }
}
