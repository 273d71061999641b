//! Rows as people write them: `1-2`, `1, 3, 5`, `4`.

use std::collections::BTreeSet;

/// More rows than any bed has; a guard against a slip of the pen. Ours.
const MOST_ROWS: u32 = 1000;

/// Rows without the signs that a program writes around them: "[1, 2]".
pub(crate) fn unbracketed(written: &str) -> &str {
    written.trim().trim_matches(['[', ']', '(', ')', '"'])
}

/// The rows that a text names; none where it says anything else, as a span that runs backwards.
pub(crate) fn rows_named(written: &str) -> Option<BTreeSet<u32>> {
    rows_of_spans(written, |first, last| (first <= last).then_some((first, last)))
}

/// The rows that an entry of work, of plants or of a reading says: a span from its end is the same rows.
pub(crate) fn rows_recorded(written: &str) -> Option<BTreeSet<u32>> {
    rows_of_spans(written, |first, last| Some((first.min(last), first.max(last))))
}

fn rows_of_spans(written: &str, span: impl Fn(u32, u32) -> Option<(u32, u32)>) -> Option<BTreeSet<u32>> {
    let mut rows = BTreeSet::new();
    let written = unbracketed(written).to_lowercase();
    let written = [" to ", " a ", " hasta "].iter().fold(written, |text, word| text.replace(word, "-"));
    let written = [" and ", " y ", " e ", " & "].iter().fold(written, |text, word| text.replace(word, ","));
    for part in written.split([',', ';', '+', ' ']).map(str::trim).filter(|part| !part.is_empty()) {
        let (first, last) = part.split_once(['-', '–']).unwrap_or((part, part));
        let (first, last) = span(first.parse().ok()?, last.parse().ok()?)?;
        if first == 0 || last > MOST_ROWS {
            return None;
        }
        rows.extend(first..=last);
    }
    (!rows.is_empty()).then_some(rows)
}

/// Which rows of a grid a line of a plan asks for.
pub(crate) enum RowsAsked {
    /// These.
    Named(BTreeSet<u32>),
    /// The first and each so many after it.
    Every(u32),
}

impl RowsAsked {
    /// Whether a row is one of them.
    pub(crate) fn has(&self, row: u32) -> bool {
        match self {
            RowsAsked::Named(rows) => rows.contains(&row),
            RowsAsked::Every(step) => (row - 1).is_multiple_of(*step),
        }
    }
}

/// `1-3,7`, or `every 3`: the first row and each third after it; none where it says anything else.
pub(crate) fn rows_asked(written: &str) -> Option<RowsAsked> {
    let folded = written.trim().to_lowercase();
    let step = ["every ", "cada "].iter().find_map(|word| folded.strip_prefix(word));
    match step {
        Some(step) => step.trim().parse().ok().filter(|step| *step > 0).map(RowsAsked::Every),
        None => rows_named(written).map(RowsAsked::Named),
    }
}

/// Rows as they are written: `1-2, 5`.
pub(crate) fn rows_written(rows: &BTreeSet<u32>) -> String {
    let mut runs: Vec<(u32, u32)> = Vec::new();
    for row in rows {
        match runs.last_mut() {
            Some((_, last)) if *last + 1 == *row => *last = *row,
            Some(_) | None => runs.push((*row, *row)),
        }
    }
    let said = |(first, last): &(u32, u32)| if first == last { first.to_string() } else { format!("{first}-{last}") };
    runs.iter().map(said).collect::<Vec<_>>().join(", ")
}
