//! The plan of a bed, drawn to scale in letters: a line is twice as many metres as a column is, because a letter is about
//! twice as high as it is wide.

use std::collections::{BTreeMap, BTreeSet};

use ratatui::style::Style;
use ratatui::text::{Line, Span};

use crate::base::SpeciesKey;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Sheet, width_of};
use crate::reckon::field::{NurseGrid, SpeciesPlan, Spot, SpotState, Unsaid, nurse_grids, rows_written, species_plan};
use crate::reckon::picture::BedPicture;

/// Columns by which a plan moves along.
pub(super) const STEP: usize = 10;
/// The farthest a plan moves; drawing stops at the bed's end.
pub(super) const MOST_ALONG: usize = 1_000_000;
/// Metres of a column that are drawn.
const SCALES_M: [f64; 11] = [0.1, 0.2, 0.25, 0.5, 1.0, 2.0, 2.5, 5.0, 10.0, 20.0, 50.0];
/// Lines over columns, in metres.
const LINE_OVER_COLUMN: f64 = 2.0;
/// The most lines a plan takes where a coarser one is as clear.
pub(super) const MOST_LINES: usize = 15;
/// Lets a plant on a line stay on it although 0.3 / 0.1 is not 3 in a computer.
const FUZZ: f64 = 1e-9;

/// The mark of a nurse plant to cut.
pub(super) const CUT_MARK: &str = "/";

/// The mark of a state and its ink.
pub(super) fn spot_mark(state: SpotState) -> (&'static str, Ink) {
    match state {
        SpotState::Living => ("●", Ink::Strong),
        SpotState::Dead => ("x", Ink::Danger),
        SpotState::Open => ("○", Ink::Good),
        SpotState::Blocked => ("■", Ink::Plain),
        SpotState::Unsaid => ("?", Ink::Plain),
    }
}

/// What else is drawn: other species of the plan in capitals, nurse plants in small letters.
pub(super) struct Other {
    letter: char,
    spots: Vec<(f64, f64)>,
    message: String,
}

/// Cells by line and column.
type Cells = BTreeMap<(usize, usize), (String, Style)>;

/// How the positions of a species are marked, and what is drawn beside them.
pub(super) struct Marks<'a> {
    /// The mark of a position, by its number in the plan.
    pub of: &'a dyn Fn(usize, &Spot) -> (String, Style),
    /// Nurse plants to cut, metres along and across the bed; drawn over everything else.
    pub to_cut: &'a [[f64; 2]],
    /// Whether the positions of other species are drawn too.
    pub with_species: bool,
    /// The most lines where a coarser plan is as clear.
    pub most_lines: usize,
}

/// Draws the plan of a bed for a species, with legend and scale.
pub(super) fn draw(bed: &BedPicture, species: &SpeciesKey, along: usize, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let Some(plan) = plan_of(bed, species, cx) else {
        page.paragraph(&cx.wording.plan_none(), Ink::Plain);
        return;
    };
    let of = |_: usize, spot: &Spot| {
        let (mark, ink) = spot_mark(spot.state);
        (mark.to_string(), ink.tile())
    };
    let marks = Marks { of: &of, to_cut: &[], with_species: true, most_lines: MOST_LINES };
    let (others, hidden) = sketch(bed, &plan, &marks, along, cx, page);
    legend(&plan, &others, cx, page);
    if hidden {
        page.paragraph(&cx.wording.plan_hidden(cx.species(Some(species))), Ink::Quiet);
    }
    elsewhere(bed, cx, page);
}

/// The plan of a species; none where it has no position.
pub(super) fn plan_of(bed: &BedPicture, species: &SpeciesKey, cx: &ScreenContext<'_>) -> Option<SpeciesPlan> {
    species_plan(&bed.story, &cx.book.picture.site, cx.day(), species).filter(|plan| !plan.spots.is_empty())
}

/// Draws positions to scale with what stands beside them; the answer is what the letters mean, and whether a mark lies over
/// another.
pub(super) fn sketch(
    bed: &BedPicture,
    plan: &SpeciesPlan,
    marks: &Marks<'_>,
    along: usize,
    cx: &ScreenContext<'_>,
    page: &mut Sheet,
) -> (Vec<Other>, bool) {
    // Room for the number of a row, and a blank.
    let label = plan.spots.iter().map(|spot| spot.row).max().unwrap_or(1).to_string().len().max(2) + 1;
    let room = page.width().saturating_sub(label).max(8);
    let scale = Scale::of(bed, plan, (room, marks.most_lines));
    let others = others(bed, plan, marks.with_species, cx);
    let mut cells: Cells = BTreeMap::new();
    for other in others.iter().rev() {
        for (x_m, y_m) in &other.spots {
            cells.insert(scale.cell(*x_m, *y_m), (other.letter.to_string(), Ink::Quiet.tile()));
        }
    }
    let mut hidden = false;
    for (at, spot) in plan.spots.iter().enumerate() {
        hidden |= cells.insert(scale.cell(spot.x_m, spot.y_m), (marks.of)(at, spot)).is_some();
    }
    for [x_m, y_m] in marks.to_cut {
        cells.insert(scale.cell(*x_m, *y_m), (CUT_MARK.to_string(), Ink::Danger.tile()));
    }
    let from = along.min(scale.columns.saturating_sub(room));
    let view = View { from, room, label };
    ruler(bed, &scale, &view, cx, page);
    lines(&plan.spots, &scale, &cells, &view, page);
    page.gap();
    message(bed, &scale, from, room, cx, page);
    north(bed, cx, page);
    (others, hidden)
}

/// Where north is on the plan, which is seen from above: rows run to the right, the first at the foot.
fn north(bed: &BedPicture, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let Some(bearing) = bed.story.layout.on(cx.day()).and_then(|layout| layout.row_bearing_deg) else { return };
    let from_up_deg = (90.0 - bearing.0).rem_euclid(360.0);
    let eighth = (from_up_deg / 45.0).round() as i64 % 8;
    page.paragraph(&cx.wording.plan_north(eighth), Ink::Quiet);
}

/// What part of a plan is shown: from which column on, how many, behind how many for the number of a row.
struct View {
    from: usize,
    room: usize,
    label: usize,
}

/// How many metres a column stands for.
struct Scale {
    column_m: f64,
    columns: usize,
    lines: usize,
    /// Whether every position has a mark of its own.
    whole: bool,
}

impl Scale {
    /// The finest that fits; where it does not keep the positions apart, the coarsest that does, which is moved along.
    fn of(bed: &BedPicture, plan: &SpeciesPlan, (room, most_lines): (usize, usize)) -> Scale {
        let scales = || SCALES_M.iter().map(|column_m| Scale::with(bed, *column_m));
        let fits = |scale: &Scale| scale.columns <= room && scale.lines <= most_lines;
        // Where one of them keeps even distances even, that one.
        let even = |scale: &Scale| scale.is_even(plan) && scale.keeps_apart(plan);
        let fitting = scales().find(|scale| fits(scale) && even(scale)).or_else(|| scales().find(fits));
        let mut best = fitting.unwrap_or_else(|| Scale::with(bed, SCALES_M[SCALES_M.len() - 1]));
        best.whole = best.keeps_apart(plan);
        if best.whole {
            return best;
        }
        let finer = scales().rev().find(|scale| scale.column_m <= best.column_m && scale.keeps_apart(plan));
        match finer {
            Some(mut scale) => {
                scale.whole = true;
                scale
            }
            None => best,
        }
    }

    fn with(bed: &BedPicture, column_m: f64) -> Scale {
        let cells = |metres: f64, step_m: f64| (metres / step_m + FUZZ).floor() as usize + 1;
        Scale {
            column_m,
            columns: cells(bed.length_m, column_m),
            lines: cells(bed.width_m, column_m * LINE_OVER_COLUMN),
            whole: false,
        }
    }

    fn is_even(&self, plan: &SpeciesPlan) -> bool {
        let steps = plan.in_row_m / self.column_m;
        (steps - steps.round()).abs() < 1e-6
    }

    fn keeps_apart(&self, plan: &SpeciesPlan) -> bool {
        let mut seen = BTreeSet::new();
        plan.spots.iter().all(|spot| seen.insert(self.cell(spot.x_m, spot.y_m)))
    }

    /// Line and column of a spot of ground.
    fn cell(&self, x_m: f64, y_m: f64) -> (usize, usize) {
        let line = (y_m / (self.column_m * LINE_OVER_COLUMN) + FUZZ).round() as usize;
        let column = (x_m / self.column_m + FUZZ).round() as usize;
        (line, column)
    }
}

fn ruler(bed: &BedPicture, scale: &Scale, view: &View, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let View { from, room, label } = *view;
    let shown = room.min(scale.columns);
    let metres = |column: usize| (column as f64 * scale.column_m).min(bed.length_m);
    let begin = cx.wording.number(metres(from), 1);
    let last = if from + shown >= scale.columns { bed.length_m } else { metres(from + shown - 1) };
    let end = format!("{} m", cx.wording.number(last, 1));
    let between = shown.saturating_sub(width_of(&begin) + width_of(&end) + 2);
    page.line(Line::raw(format!("{}{begin} {} {end}", " ".repeat(label), "─".repeat(between))));
}

fn lines(spots: &[Spot], scale: &Scale, cells: &Cells, view: &View, page: &mut Sheet) {
    let View { from, room, label: width } = *view;
    let mut labels: BTreeMap<usize, u32> = BTreeMap::new();
    for spot in spots {
        labels.entry(scale.cell(spot.x_m, spot.y_m).0).or_insert(spot.row);
    }
    let last = cells.keys().map(|(line, _)| *line).max().unwrap_or(0).max(scale.lines.saturating_sub(1));
    for line in (0..=last).rev() {
        let label = labels.get(&line).map(ToString::to_string).unwrap_or_default();
        let mut spans = vec![Span::raw(format!("{label:>width$} ", width = width - 1))];
        let mut at = from;
        for ((_, column), (mark, style)) in cells.range((line, from)..(line, from + room)) {
            spans.push(Span::raw(" ".repeat(column - at)));
            spans.push(Span::styled(mark.clone(), *style));
            at = column + 1;
        }
        page.line(Line::from(spans));
    }
}

/// The scale in words, and what part is shown.
fn message(bed: &BedPicture, scale: &Scale, from: usize, room: usize, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    let number = |metres: f64| wording.number(metres, 2);
    let message = wording.plan_scale(number(scale.column_m), number(scale.column_m * LINE_OVER_COLUMN));
    page.paragraph(&message, Ink::Quiet);
    if scale.columns > room {
        let begin = from as f64 * scale.column_m;
        let end = ((from + room) as f64 * scale.column_m).min(bed.length_m);
        page.paragraph(&wording.plan_part(number(begin), number(end), number(bed.length_m)), Ink::Waits);
    }
    if !scale.whole {
        page.paragraph(&wording.plan_thinned(), Ink::Waits);
    }
}

fn legend(plan: &SpeciesPlan, others: &[Other], cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    let name = cx.species(Some(&plan.species));
    let states = [SpotState::Living, SpotState::Dead, SpotState::Open, SpotState::Unsaid, SpotState::Blocked];
    for state in states {
        let count = plan.count(state);
        if count == 0 {
            continue;
        }
        let (mark, ink) = spot_mark(state);
        let message = match state {
            SpotState::Living => wording.plan_living(&name, count),
            SpotState::Dead => wording.plan_dead(count),
            SpotState::Open => wording.plan_open(count),
            SpotState::Blocked => wording.plan_blocked(count),
            SpotState::Unsaid => {
                for one in &plan.unsaid {
                    page.hanging(&format!("{mark} "), ink, &unsaid(one, cx), Ink::Plain);
                }
                continue;
            }
        };
        page.hanging(&format!("{mark} "), ink, &message, Ink::Plain);
    }
    letters(others, page);
}

/// What the letters of a plan mean.
pub(super) fn letters(others: &[Other], page: &mut Sheet) {
    for other in others {
        page.hanging(&format!("{} ", other.letter), Ink::Strong, &other.message, Ink::Plain);
    }
}

fn unsaid(one: &Unsaid, cx: &ScreenContext<'_>) -> String {
    let wording = cx.wording;
    match &one.rows {
        Some(rows) => wording.plan_unsaid_rows(rows_written(rows), one.living, one.places),
        None => wording.plan_unsaid(one.living, one.places),
    }
}

/// The other species of the plan, and nurse plants whose places are known.
fn others(bed: &BedPicture, plan: &SpeciesPlan, with_species: bool, cx: &ScreenContext<'_>) -> Vec<Other> {
    let wording = cx.wording;
    // Letters that stand for something else.
    let mut taken: BTreeSet<char> = "oOxX".chars().collect();
    let mut all = Vec::new();
    for line in bed.species.iter().filter(|line| with_species && line.species != plan.species) {
        let Some(other) = species_plan(&bed.story, &cx.book.picture.site, cx.day(), &line.species) else { continue };
        let name = cx.species(Some(&line.species));
        let letter = letter_of(&name, &mut taken, true);
        let spots = other.spots.iter().map(|spot| (spot.x_m, spot.y_m)).collect();
        let message = wording.plan_other(&name, line.living, line.positions);
        all.push(Other { letter, spots, message });
    }
    let mut nurses: BTreeMap<SpeciesKey, Vec<NurseGrid>> = BTreeMap::new();
    for grid in nurse_grids(bed) {
        nurses.entry(grid.nurse.clone()).or_default().push(grid);
    }
    for (nurse, grids) in nurses {
        let name = cx.species(Some(&nurse));
        let letter = letter_of(&name, &mut taken, false);
        let sum = |of: fn(&NurseGrid) -> u32| grids.iter().map(of).fold(0, u32::saturating_add);
        let (planted, alive) = (sum(|grid| grid.planted), sum(|grid| grid.alive));
        let message = if alive < planted {
            wording.plan_nurse_some(&name, planted, alive)
        } else {
            wording.plan_nurse_all(&name, planted)
        };
        all.push(Other { letter, spots: grids.into_iter().flat_map(|grid| grid.spots).collect(), message });
    }
    all
}

/// The first letter of a name that stands for nothing else yet.
fn letter_of(name: &str, taken: &mut BTreeSet<char>, capital: bool) -> char {
    let plain = crate::base::text::folded(name);
    let of_name = plain.chars().chain('a'..='z').filter(char::is_ascii_alphabetic);
    let cased = |letter: char| if capital { letter.to_ascii_uppercase() } else { letter.to_ascii_lowercase() };
    let letter = of_name.map(cased).find(|letter| !taken.contains(letter)).unwrap_or('*');
    taken.insert(letter);
    letter
}

/// Nurse plants that live somewhere that was not written.
pub(super) fn elsewhere(bed: &BedPicture, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let drawn: BTreeSet<_> = nurse_grids(bed).into_iter().map(|grid| grid.entry).collect();
    for nurse in bed.nurses.iter().filter(|nurse| nurse.alive > 0 && !drawn.contains(&nurse.entry)) {
        let message = cx.wording.plan_nurse_elsewhere(cx.species(Some(&nurse.nurse)), nurse.alive);
        page.paragraph(&message, Ink::Quiet);
    }
}
