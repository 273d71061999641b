//! Second step: the task as a linear program, without rows that cannot bind.

use std::collections::BTreeMap;

use super::simplex::{FAR, Program};
use super::task::{Limit, Task};

/// What a row is of.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub(super) enum Row {
    /// Plants of a lot.
    Lot(usize),
    /// Positions of an opening.
    Opening(usize),
    /// Work of a week.
    Week(usize),
    /// Plants of one source in a bed.
    Source(usize),
    /// All plants of a bed are its total.
    Total(usize),
    /// Whole times the most of one source is parts times the total.
    Share(usize),
}

/// Two numbers of a bed that must be whole: the most of one source, and all plants.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Counted {
    pub(super) most: usize,
    pub(super) total: usize,
}

/// The program of some ways of a task. Its first columns are the ways.
#[derive(Clone, Default)]
pub(super) struct Model {
    pub(super) program: Program,
    /// The way of each column.
    pub(super) ways: Vec<usize>,
    pub(super) rows: Vec<Row>,
    /// By bed, where the share is of what is planted.
    pub(super) counted: Vec<Option<Counted>>,
}

/// Which rows of shares a model has.
pub(super) enum Shares<'a> {
    /// None.
    None,
    /// All that can bind.
    All,
    /// Those of these beds and sources.
    Only(&'a [bool]),
}

impl Model {
    /// A model of these ways, in their order.
    pub(super) fn new(task: &Task, ways: Vec<usize>, shares: &Shares) -> Model {
        let mut rows = Rows::new(task, &ways, shares);
        let limits = rows.all.iter().map(|row| rows.limit(task, *row)).collect();
        let mut model = Model { program: Program::new(limits), counted: vec![None; task.beds], ..Model::default() };
        let mut entries = Vec::new();
        for way in ways.iter().map(|way| &task.ways[*way]) {
            entries.clear();
            let bed = task.bed_of[way.opening];
            let of_way = [
                Row::Lot(way.lot),
                Row::Opening(way.opening),
                Row::Week(way.week),
                Row::Source(task.bed_source(way)),
                Row::Total(bed),
            ];
            entries.extend(of_way.into_iter().filter_map(|row| rows.at(row)).map(|row| (row, 1.0)));
            model.program.add(way.value as f64, (0.0, FAR), &entries);
        }
        model.ways = ways;
        for (at, _) in rows.all.iter().enumerate().filter(|(_, row)| !matches!(row, Row::Total(_))) {
            model.program.slack[at] = model.program.add(0.0, (0.0, FAR), &[(at, 1.0)]) as u32;
        }
        model.rows = std::mem::take(&mut rows.all);
        if let (Limit::Planted { parts, whole }, Shares::All) = (task.limit, shares) {
            model.add_counted(task, parts, whole);
        }
        model
    }

    fn add_counted(&mut self, task: &Task, parts: i64, whole: i64) {
        let rows: BTreeMap<Row, usize> = self.rows.iter().enumerate().map(|(at, row)| (*row, at)).collect();
        for bed in 0..task.beds {
            let Some((total_row, share_row)) = rows.get(&Row::Total(bed)).zip(rows.get(&Row::Share(bed))) else {
                continue;
            };
            let most = task.total_most[bed];
            let total = self.program.add(0.0, (0.0, most as f64), &[(*total_row, -1.0), (*share_row, -1.0)]);
            self.program.slack[*total_row] = total as u32;
            let mut entries = vec![(*share_row, whole as f64 / parts as f64)];
            let sources = rows.range(Row::Source(bed * task.sources)..Row::Source((bed + 1) * task.sources));
            entries.extend(sources.map(|(_, row)| (*row, -1.0)));
            let most = self.program.add(0.0, (0.0, (parts * most / whole) as f64), &entries);
            self.counted[bed] = Some(Counted { most, total });
        }
    }

    /// Stands as another model of the same task stands; what that has not, stands as it is here.
    pub(super) fn stand_as(&mut self, other: &Model) {
        let stands = &other.program.state.stands;
        let mut theirs = other.ways.iter().zip(stands).peekable();
        for (column, way) in self.ways.iter().enumerate() {
            while theirs.next_if(|(other, _)| *other < way).is_some() {}
            if let Some((_, stand)) = theirs.next_if(|(other, _)| *other == way) {
                self.program.state.stands[column] = *stand;
            }
        }
        let of_row: BTreeMap<Row, u32> = other.rows.iter().copied().zip(other.program.slack.iter().copied()).collect();
        for (at, row) in self.rows.iter().enumerate() {
            if let Some(slack) = of_row.get(row) {
                self.program.state.stands[self.program.slack[at] as usize] = stands[*slack as usize];
            }
        }
        for (of, other_of) in self.counted.iter().zip(&other.counted) {
            if let Some((of, other_of)) = of.zip(*other_of) {
                self.program.state.stands[of.most] = stands[other_of.most];
            }
        }
        self.program.head_from_stands();
    }

    /// The same model with some of its ways.
    pub(super) fn only(&self, is_kept: impl Fn(usize) -> bool) -> Model {
        let ways = self.ways.len();
        let (program, went) = self.program.only(|column| column >= ways || is_kept(column));
        let counted = |of: &Counted| Counted { most: went[of.most], total: went[of.total] };
        Model {
            program,
            ways: (0..ways).filter(|column| is_kept(*column)).map(|column| self.ways[column]).collect(),
            rows: self.rows.clone(),
            counted: self.counted.iter().map(|of| of.as_ref().map(counted)).collect(),
        }
    }

    /// Whether every way carries whole plants.
    pub(super) fn is_whole(&self) -> bool {
        self.program.state.amounts[..self.ways.len()].iter().all(|amount| is_whole(*amount))
    }

    /// The plants on each way of the task, rounded.
    pub(super) fn plants(&self, task: &Task) -> Vec<i64> {
        let mut plants = vec![0; task.ways.len()];
        for (column, way) in self.ways.iter().enumerate() {
            plants[*way] = self.program.state.amounts[column].round() as i64;
        }
        plants
    }
}

/// What is off by no more than this is whole.
const WHOLE_WITHIN: f64 = 1e-6;

/// Whether an amount is a whole number.
pub(super) fn is_whole(amount: f64) -> bool {
    (amount - amount.round()).abs() < WHOLE_WITHIN
}

/// Rows that may bind, and where they stand.
struct Rows {
    all: Vec<Row>,
    lots: Vec<Option<usize>>,
    openings: Vec<Option<usize>>,
    weeks: Vec<Option<usize>>,
    sources: Vec<Option<usize>>,
    totals: Vec<Option<usize>>,
}

impl Rows {
    fn new(task: &Task, ways: &[usize], shares: &Shares) -> Rows {
        let mut rows = Rows {
            all: Vec::new(),
            lots: vec![None; task.lots.len()],
            openings: vec![None; task.positions.len()],
            weeks: vec![None; task.work.len()],
            sources: vec![None; task.beds * task.sources],
            totals: vec![None; task.beds],
        };
        let could = Could::come(task, ways);
        for way in ways.iter().map(|way| &task.ways[*way]) {
            open(&mut rows.lots[way.lot], Row::Lot(way.lot), &mut rows.all);
            if could.openings[way.opening] > task.positions[way.opening] {
                open(&mut rows.openings[way.opening], Row::Opening(way.opening), &mut rows.all);
            }
            if could.weeks[way.week] > task.work[way.week] {
                open(&mut rows.weeks[way.week], Row::Week(way.week), &mut rows.all);
            }
        }
        let is_asked = |at: usize| match shares {
            Shares::None => false,
            Shares::All => true,
            Shares::Only(some) => some[at],
        };
        let is_planted = matches!(task.limit, Limit::Planted { .. });
        for at in (0..could.sources.len()).filter(|at| task.limit != Limit::None && is_asked(*at)) {
            let bed = at / task.sources;
            if could.sources[at] > 0 && (is_planted || could.sources[at] > task.source_most[bed]) {
                if is_planted && rows.totals[bed].is_none() {
                    open(&mut rows.totals[bed], Row::Total(bed), &mut rows.all);
                    rows.all.push(Row::Share(bed));
                }
                open(&mut rows.sources[at], Row::Source(at), &mut rows.all);
            }
        }
        rows
    }

    fn at(&self, row: Row) -> Option<usize> {
        match row {
            Row::Lot(lot) => self.lots[lot],
            Row::Opening(opening) => self.openings[opening],
            Row::Week(week) => self.weeks[week],
            Row::Source(at) => self.sources[at],
            Row::Total(bed) => self.totals[bed],
            Row::Share(bed) => self.totals[bed].map(|row| row + 1),
        }
    }

    fn limit(&self, task: &Task, row: Row) -> f64 {
        let limit = match row {
            Row::Lot(lot) => task.lots[lot].supply,
            Row::Opening(opening) => task.positions[opening],
            Row::Week(week) => task.work[week],
            Row::Source(at) if task.limit == Limit::Positions => task.source_most[at / task.sources],
            Row::Source(_) | Row::Total(_) | Row::Share(_) => 0,
        };
        limit as f64
    }
}

fn open(place: &mut Option<usize>, row: Row, all: &mut Vec<Row>) {
    if place.is_none() {
        *place = Some(all.len());
        all.push(row);
    }
}

/// The plants that could come, were there no other limit.
struct Could {
    openings: Vec<i64>,
    weeks: Vec<i64>,
    sources: Vec<i64>,
}

impl Could {
    fn come(task: &Task, ways: &[usize]) -> Could {
        let mut could = Could {
            openings: vec![0; task.positions.len()],
            weeks: vec![0; task.work.len()],
            sources: vec![0; task.beds * task.sources],
        };
        let mut seen =
            (vec![None; could.openings.len()], vec![None; could.weeks.len()], vec![None; could.sources.len()]);
        // Ways stand lot by lot: each lot counts once.
        let add = |sums: &mut [i64], seen: &mut [Option<usize>], at: usize, lot: usize| {
            if seen[at] != Some(lot) {
                seen[at] = Some(lot);
                sums[at] += task.lots[lot].supply;
            }
        };
        for way in ways.iter().map(|way| &task.ways[*way]) {
            add(&mut could.openings, &mut seen.0, way.opening, way.lot);
            add(&mut could.weeks, &mut seen.1, way.week, way.lot);
            add(&mut could.sources, &mut seen.2, task.bed_source(way), way.lot);
        }
        could
    }
}
