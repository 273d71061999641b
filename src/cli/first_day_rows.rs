//! How a sheet was understood, row by row: its columns, its names, and the entry each row or line becomes.

use serde_json::{Value, json};

use crate::desk::{ColumnTaken, NameTaken};
use crate::nursery::envelope::Draft;
use crate::nursery::species::Catalogue;
use crate::wording::Wording;

/// Each column with what it means, and each name with the species it was taken for.
pub(crate) fn understood(
    wording: &Wording,
    columns: &[ColumnTaken],
    names: &[NameTaken],
    species: &Catalogue,
) -> Vec<String> {
    let columns: Vec<String> = columns
        .iter()
        .map(|column| wording.sheet_column_means(&column.written, wording.of_two(column.means)))
        .collect();
    let names: Vec<String> = names
        .iter()
        .map(|name| match &name.species {
            Some(key) => {
                let scientific = species.get(key).map(|profile| profile.scientific.clone()).filter(|s| !s.is_empty());
                let known = wording.species_of(key, species);
                let text = scientific.map_or_else(|| known.clone(), |scientific| format!("{known}, {scientific}"));
                wording.sheet_name_is(&name.written, text, name.rows as i64)
            }
            None => wording.sheet_name_unknown(&name.written, name.rows as i64),
        })
        .collect();
    let mut lines = Vec::new();
    if !columns.is_empty() {
        lines.push(wording.sheet_columns(columns.join("; ")));
    }
    if !names.is_empty() {
        lines.push(wording.sheet_names(names.join("; ")));
    }
    lines
}

/// Each line with the entry it becomes.
pub(crate) fn rows(wording: &Wording, read: &[(usize, Draft)], species: &Catalogue) -> Vec<String> {
    let each = read.iter();
    each.map(|(line, draft)| wording.sheet_row_is(*line as i64, wording.draft_sentence(draft, species))).collect()
}

/// The columns for programs.
pub(crate) fn columns_json(wording: &Wording, columns: &[ColumnTaken]) -> Value {
    columns
        .iter()
        .map(|column| {
            let [means, _] = column.means;
            json!({"number": column.number, "column": column.written, "means": means,
                "text": wording.of_two(column.means)})
        })
        .collect()
}

/// The names of species for programs.
pub(crate) fn names_json(names: &[NameTaken]) -> Value {
    names
        .iter()
        .map(|name| {
            let key = name.species.as_ref().map(|key| key.as_str());
            json!({"written": name.written, "species": key, "rows": name.rows})
        })
        .collect()
}

/// The lines for programs: the entry each becomes, its fields and its words.
pub(crate) fn lines_json(wording: &Wording, read: &[(usize, Draft)], species: &Catalogue) -> Value {
    read.iter()
        .map(|(line, draft)| {
            json!({"line": line, "kind": draft.kind, "happened": draft.happened, "fields": draft.body,
                "text": wording.draft_sentence(draft, species)})
        })
        .collect()
}
