//! Last step: branch and bound on what the prices leave. It dives into the better side and otherwise takes the node with the best
//! bound. A node keeps only where columns stand and how bounds were moved.

mod choose;
mod sums;

use std::cmp::Ordering;
use std::collections::{BTreeMap, BinaryHeap};

use super::best::Best;
use super::corner::whole_corner;
use super::model::{Counted, Model, is_whole};
use super::rounding::rounded;
use super::simplex::{Ended, FAR, Stand};
use super::task::{Limit, Task};
use choose::{Choice, Learned};
use sums::Sum;

/// Pivots of one node.
const NODE_PIVOTS: usize = 5_000;
/// In the first nodes, and later in every so manieth, a plan is rounded ...
const ROUND_FIRST: u64 = 40;
const ROUND_EVERY: u64 = 8;
/// ... and a corner of whole plants is looked for.
const CORNER_FIRST: u64 = 20;
const CORNER_EVERY: u64 = 5;
/// Tries of one look.
const CORNER_TRIES: u64 = 4;
/// After so many nodes a search may begin afresh ...
const RESTART_NODES: u64 = 40;
/// ... with this share of its ways or fewer ...
const RESTART_PART: f64 = 0.8;
/// ... and so often.
const MOST_RESTARTS: u32 = 4;

/// A column and its new bounds.
type Change = (usize, f64, f64);

/// A part of the search that is still open.
struct Node {
    bound: f64,
    number: u64,
    changes: Vec<Change>,
    stands: Vec<Stand>,
}

impl PartialEq for Node {
    fn eq(&self, other: &Node) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Node {}

impl PartialOrd for Node {
    fn partial_cmp(&self, other: &Node) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Node {
    /// The best bound first, then the older node.
    fn cmp(&self, other: &Node) -> Ordering {
        self.bound.total_cmp(&other.bound).then(other.number.cmp(&self.number))
    }
}

/// What a search asks as it goes: best worth, bound, steps.
pub(super) type Goes<'a> = dyn FnMut(&Best, f64, u64) -> bool + 'a;

/// How a search ended.
enum End {
    Done,
    /// Somebody had enough; the bound.
    Stopped(f64),
    /// Fewer ways are worth a new beginning.
    Restart,
}

/// Searches from the best plan with fractions. The bound that is left: none where the best plan is proven.
pub(super) fn search(task: &Task, root: &Model, order: &[usize], best: &mut Best, goes: &mut Goes) -> Option<f64> {
    let mut restarts = 0;
    let mut nodes = 0;
    loop {
        let mut search = Search::new(task, root, order, best);
        search.nodes = nodes;
        let end = search.run(goes, restarts < MOST_RESTARTS);
        let doubted = search.doubted;
        nodes = search.nodes;
        match end {
            End::Done if doubted => return Some(root.program.total()),
            End::Done => return None,
            End::Stopped(bound) => return Some(bound),
            End::Restart => restarts += 1,
        }
    }
}

/// A search under way.
struct Search<'a> {
    task: &'a Task,
    root: &'a Model,
    root_total: f64,
    order: &'a [usize],
    best: &'a mut Best,
    model: Model,
    /// What the ways gain at the root, where they stand at 0 there.
    root_gains: Vec<Option<f64>>,
    /// Bounds that hold everywhere.
    low: Vec<f64>,
    high: Vec<f64>,
    /// Columns that must be whole.
    whole: Vec<usize>,
    /// The counted numbers of a bed by column, and whether the column is the most of one source.
    counted: BTreeMap<usize, (Counted, bool)>,
    sums: BTreeMap<Sum, usize>,
    learned: BTreeMap<usize, Learned>,
    open: BinaryHeap<Node>,
    made: u64,
    nodes: u64,
    /// A plan of whole plants did not fit: rounding errors; then nothing is proven.
    doubted: bool,
}

impl<'a> Search<'a> {
    fn new(task: &'a Task, root: &'a Model, order: &'a [usize], best: &'a mut Best) -> Search<'a> {
        let root_total = root.program.total();
        let model = root.only(|column| may_matter(root, column, root_total, best));
        let program = &model.program;
        let at_zero = |column: usize| program.state.stands[column] == Stand::Low;
        let root_gains =
            (0..model.ways.len()).map(|column| at_zero(column).then_some(program.state.gains[column])).collect();
        let mut counted = BTreeMap::new();
        for of in model.counted.iter().flatten() {
            counted.insert(of.most, (*of, true));
            counted.insert(of.total, (*of, false));
        }
        Search {
            root_total,
            root_gains,
            low: program.low.clone(),
            high: program.high.clone(),
            whole: counted.keys().copied().collect(),
            counted,
            sums: BTreeMap::new(),
            learned: BTreeMap::new(),
            open: BinaryHeap::new(),
            made: 0,
            nodes: 0,
            doubted: false,
            task,
            root,
            order,
            best,
            model,
        }
    }

    fn run(&mut self, goes: &mut Goes, may_restart: bool) -> End {
        let begun = self.nodes;
        let stands = self.model.program.state.stands.clone();
        let mut next = Some(Node { bound: self.root_total, number: 0, changes: Vec::new(), stands });
        let mut is_dive = false;
        while let Some(node) = next.take().or_else(|| {
            is_dive = false;
            self.open.pop()
        }) {
            if node.bound < self.best.cutoff() {
                if is_dive {
                    continue;
                }
                return End::Done;
            }
            let bound = self.open.peek().map_or(node.bound, |open| open.bound.max(node.bound));
            if !goes(self.best, bound, self.model.program.pivots) {
                return End::Stopped(bound);
            }
            if may_restart && !is_dive && self.nodes - begun >= RESTART_NODES && self.is_worth_a_restart() {
                return End::Restart;
            }
            self.nodes += 1;
            let branched = self.visit(&node, is_dive);
            is_dive = branched.is_some();
            if let Some((dive, other)) = branched {
                self.open.push(other);
                next = Some(dive);
            }
        }
        End::Done
    }

    fn is_worth_a_restart(&self) -> bool {
        let ways = self.model.ways.len();
        let left =
            (0..self.root.ways.len()).filter(|column| may_matter(self.root, *column, self.root_total, self.best));
        (left.count() as f64) < RESTART_PART * ways as f64
    }

    /// Solves a node. Two new ones where it must be branched on, the one to dive into first.
    fn visit(&mut self, node: &Node, is_dive: bool) -> Option<(Node, Node)> {
        if !self.enter(node, is_dive) {
            return None;
        }
        let mut changes = node.changes.clone();
        loop {
            let ended = self.model.program.dual(self.best.cutoff(), NODE_PIVOTS);
            let bound = self.model.program.total();
            if matches!(ended, Ended::Impossible | Ended::NotBetter) || bound < self.best.cutoff() {
                return None;
            }
            if self.nodes < ROUND_FIRST || self.nodes.is_multiple_of(ROUND_EVERY) {
                self.take(rounded(self.task, &self.model, self.order));
            }
            let mut candidates = self.candidates();
            if candidates.is_empty() {
                if self.model.is_whole() {
                    self.doubted |= !self.take(self.model.plants(self.task));
                    return None;
                }
                self.try_corner();
            }
            if bound < self.best.cutoff() {
                return None;
            }
            if candidates.is_empty() {
                candidates.push(self.new_sum());
            }
            match self.choose(&candidates, bound) {
                Choice::Dead => return None,
                Choice::Tighten(tighter) => {
                    if !self.tighten(&tighter) {
                        return None;
                    }
                    changes.extend(tighter);
                    self.model.program.find_amounts();
                }
                Choice::Branch { column, down_first } => return Some(self.branch(column, down_first, bound, &changes)),
            }
        }
    }

    /// Puts the program to where a node begins; not where its bounds exclude each other.
    fn enter(&mut self, node: &Node, is_dive: bool) -> bool {
        let program = &mut self.model.program;
        program.low.copy_from_slice(&self.low);
        program.high.copy_from_slice(&self.high);
        if !self.tighten(&node.changes) {
            return false;
        }
        let program = &mut self.model.program;
        if !is_dive {
            program.state.stands[..node.stands.len()].copy_from_slice(&node.stands);
            program.state.stands[node.stands.len()..].fill(Stand::Basic);
            program.head_from_stands();
            program.find_gains();
        }
        program.find_amounts();
        true
    }

    /// Moves bounds closer; whether anything is left between them.
    fn tighten(&mut self, changes: &[Change]) -> bool {
        let program = &mut self.model.program;
        for (column, low, high) in changes.iter().copied() {
            program.low[column] = program.low[column].max(low);
            program.high[column] = program.high[column].min(high);
        }
        changes.iter().all(|(column, _, _)| program.low[*column] <= program.high[*column])
    }

    /// Takes a plan that fits and is better. Ways that then cannot matter any more are closed for good.
    fn take(&mut self, plants: Vec<i64>) -> bool {
        let before = self.best.worth;
        let fits = self.best.take(self.task, plants);
        if self.best.worth > before {
            let cutoff = self.best.cutoff();
            for (column, gain) in self.root_gains.iter().enumerate() {
                if gain.is_some_and(|gain| self.root_total + gain < cutoff) {
                    self.high[column] = 0.0;
                }
            }
        }
        fits
    }

    fn try_corner(&mut self) {
        if (self.nodes < CORNER_FIRST || self.nodes.is_multiple_of(CORNER_EVERY))
            && let Some(corner) = whole_corner(&self.model, self.nodes, &self.whole, CORNER_TRIES)
        {
            self.take(corner.plants(self.task));
        }
    }

    /// Columns that must be whole and are not.
    fn candidates(&self) -> Vec<usize> {
        let amounts = &self.model.program.state.amounts;
        self.whole.iter().copied().filter(|column| !is_whole(amounts[*column])).collect()
    }

    /// A sum of ways that must be whole and is not, as a new column; where there is none, a way itself.
    fn new_sum(&mut self) -> usize {
        let Some((sum, ways)) = self.fractional_sum() else { return self.fractional_way() };
        let column = match ways[..] {
            [way] => way as usize,
            _ => {
                let column = self.model.program.add_sum(&ways);
                self.low.push(0.0);
                self.high.push(FAR);
                column
            }
        };
        self.sums.insert(sum, column);
        self.whole.push(column);
        column
    }

    /// The new bounds of a column, and those that follow for the other number of its bed.
    fn with_tied(&self, column: usize, low: f64, high: f64) -> Vec<Change> {
        let mut changes = vec![(column, low, high)];
        if let (Some((of, is_most)), Limit::Planted { parts, whole }) = (self.counted.get(&column), self.task.limit) {
            let up = |plants: i64, by: i64| -(-plants * whole).div_euclid(by);
            if *is_most {
                let least = up(low as i64, parts) as f64;
                let most = (up(high as i64 + 1, parts) - 1) as f64;
                changes.push((of.total, least, most));
            } else {
                changes.push((of.most, 0.0, (parts * high as i64 / whole) as f64));
            }
        }
        changes
    }

    fn branch(&mut self, column: usize, down_first: bool, bound: f64, changes: &[Change]) -> (Node, Node) {
        let below = self.model.program.state.amounts[column].floor();
        let (low, high) = (self.model.program.low[column], self.model.program.high[column].min(BIG));
        let mut node = |low: f64, high: f64| {
            self.made += 1;
            let mut changes = changes.to_vec();
            changes.extend(self.with_tied(column, low, high));
            Node { bound, number: self.made, changes, stands: self.model.program.state.stands.clone() }
        };
        let (down, up) = (node(low, below), node(below + 1.0, high));
        if down_first { (down, up) } else { (up, down) }
    }
}

/// More plants than any sum holds.
const BIG: f64 = 1e12;

/// Whether a way of the root may be part of a better plan.
fn may_matter(root: &Model, column: usize, root_total: f64, best: &Best) -> bool {
    let state = &root.program.state;
    state.stands[column] == Stand::Basic || root_total + state.gains[column] >= best.cutoff()
}
