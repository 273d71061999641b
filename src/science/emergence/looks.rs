//! What was seen: looks at a sowing and what had newly come up at each.

use crate::science::wrong_input::{self, WrongInput};

/// Most looks at one sowing: every hour of a year. Ours.
const MOST_LOOKS: usize = 10_000;

/// Looks at one sowing, checked.
#[derive(Clone, PartialEq, Debug)]
pub struct Looks {
    /// 0 and the days looked at, going up.
    edges: Vec<f64>,
    /// Newly emerged between one edge and the next.
    counts: Vec<f64>,
    /// Seeds sown.
    seeds: f64,
    /// Seeds that emerged.
    emerged: f64,
}

impl Looks {
    /// Looks from `edges` (days since sowing: 0, then each day looked at, going up), `counts` newly emerged between each edge
    /// and the next, and `seeds` sown. A day on which nobody looked is no edge.
    ///
    /// # Errors
    /// Fewer than one look, a first edge that is not 0, days that do not go up, a number of counts that does not fit, more
    /// emerged than sown, no seed or too many, or no number.
    pub fn new(edges: &[f64], counts: &[u32], seeds: u32) -> Result<Looks, WrongInput> {
        if edges.len() < 2 {
            return Err(WrongInput::Missing { input: "edges" });
        }
        if edges.len() > MOST_LOOKS {
            return Err(WrongInput::TooMany { input: "edges", most: MOST_LOOKS as u32 });
        }
        wrong_input::in_order("edges", edges, false)?;
        wrong_input::within("first edge", edges[0], 0.0, 0.0)?;
        if counts.len() + 1 != edges.len() {
            return Err(WrongInput::Uneven { input: "counts", other: "intervals between edges" });
        }
        wrong_input::seeds("seeds", seeds)?;
        let emerged: u64 = counts.iter().map(|&count| u64::from(count)).sum();
        wrong_input::part_of("counts", emerged, "seeds", u64::from(seeds))?;
        Ok(Looks {
            edges: edges.to_vec(),
            counts: counts.iter().map(|&count| f64::from(count)).collect(),
            seeds: f64::from(seeds),
            emerged: emerged as f64,
        })
    }

    /// The same looks at fewer or more seeds; none where more came up than that.
    pub(crate) fn of_seeds(&self, seeds: u32) -> Option<Looks> {
        let seeds = f64::from(seeds);
        (seeds > 0.0 && seeds >= self.emerged).then(|| Looks { seeds, ..self.clone() })
    }

    /// Seeds sown.
    pub fn seeds(&self) -> f64 {
        self.seeds
    }

    /// Seeds that emerged up to the last look.
    pub fn emerged(&self) -> f64 {
        self.emerged
    }

    /// Day of the last look.
    pub fn last_look(&self) -> f64 {
        self.edges.last().copied().unwrap_or(0.0)
    }

    /// 0 and the days looked at.
    pub fn edges(&self) -> &[f64] {
        &self.edges
    }

    /// Newly emerged between one edge and the next.
    pub fn counts(&self) -> &[f64] {
        &self.counts
    }

    /// Intervals in which something emerged.
    pub(crate) fn intervals_with_emergence(&self) -> usize {
        self.counts.iter().filter(|count| **count > 0.0).count()
    }

    /// Whether the last look found nothing new, so that what emerged may be all.
    pub(crate) fn ended_level(&self) -> bool {
        self.counts.last().is_some_and(|count| *count == 0.0)
    }

    /// The same looks with empty neighbours taken as one: they say the same of a curve that is between them.
    pub(super) fn merged(&self) -> Looks {
        let mut edges = vec![0.0];
        let mut counts: Vec<f64> = Vec::new();
        for (&end, &count) in self.edges[1..].iter().zip(&self.counts) {
            match (counts.last(), edges.last_mut()) {
                (Some(last), Some(edge)) if *last == 0.0 && count == 0.0 => *edge = end,
                _ => {
                    edges.push(end);
                    counts.push(count);
                }
            }
        }
        Looks { edges, counts, seeds: self.seeds, emerged: self.emerged }
    }

    /// Day on which half of what emerged was up, on a straight line between looks; the last look where nothing is.
    pub(super) fn half_day(&self) -> f64 {
        let (mut day, mut total) = (0.0, 0.0);
        for (&end, &count) in self.edges[1..].iter().zip(&self.counts) {
            if count > 0.0 && total + count >= self.emerged / 2.0 {
                return day + (self.emerged / 2.0 - total) / count * (end - day);
            }
            (day, total) = (end, total + count);
        }
        day
    }
}
