//! A sheet of beds: a row a bed, with what is to stand in it and what stands there already.

use serde_json::{Value, json};

use super::columns::{Cell, Meanings, columns};
use super::sheet::{RowReader, note_repeated, order_of, read_rows, without_total};
use super::{FirstDay, SheetNames, TakenFor, UnknownWhat};
use crate::base::{SpeciesKey, text, word::Word};
use crate::nursery::entry::fault::Problem;
use crate::nursery::entry::types::{BedEdges, PlantingPattern};
use crate::share::amounts::{self, METRES};
use crate::share::draft::short;
use crate::share::fault::{LineFaults, Reason};
use crate::share::sheet::Table;
use crate::share::vocabulary::{is, vocabulary};

/// The field of a bed where the sheet names none.
const HOME: &str = "Home";

/// A first row for a sheet of beds, in English and in Spanish.
pub const BED_EXAMPLE: [&str; 2] =
    ["Bed,Length,Width,Species,Spacing,Light", "Parcela;Largo;Ancho;Especie;Distancia;Luz"];

/// Reads a sheet of beds as `bed_set`, with `plants_found`, `nurse_planted` and `light_read` where the row tells them.
pub fn read_beds(table: &Table, names: &SheetNames) -> (FirstDay, LineFaults) {
    let mut faults = LineFaults::default();
    let (meanings, passed_over) = Meanings::of(table, &columns().beds, BED_EXAMPLE, &mut faults);
    let is_headed = faults.is_empty();
    table.faults.listed.iter().for_each(|fault| faults.note(fault.clone()));
    if !is_headed {
        return (FirstDay { passed_over, columns: meanings.each().collect(), ..FirstDay::default() }, faults);
    }
    let (table, total) = without_total(table, &meanings, "bed", None);
    note_repeated(&table, &meanings, "bed", &mut faults);
    let (order, taken) = order_of(names, &table, &meanings, &["planted about", "nurses planted"]);
    let day = FirstDay { passed_over, order: taken, total, ..FirstDay::default() };
    read_rows(&table, &meanings, names, order, (day, faults), &read_row)
}

fn read_row(reader: &mut RowReader) {
    let bed = reader.required("bed");
    if let Some(cell) = bed {
        reader.new_to_the_book(cell);
    }
    let length_m = reader.required("length").and_then(|cell| reader.amount(cell, &METRES));
    let width_m = reader.required("width").and_then(|cell| reader.amount(cell, &METRES));
    let species = reader.required("species").map(|cell| species_of(reader, cell)).unwrap_or_default();
    let plan = plan_of(reader, &species);
    let field = reader.filled("field").map(|cell| cell.written);
    // The other cells of a faulty row are read too: every fault is listed, and nothing is written.
    let name = bed.map_or("-", |cell| cell.written);
    if let (Some(length_m), Some(width_m), true) = (length_m, width_m, reader.faults.is_empty()) {
        if field.is_none() {
            reader.tell(None, TakenFor::Field(HOME));
        }
        let field = field.unwrap_or(HOME);
        let edges = BedEdges::Half.spelled();
        let body = json!({"bed": name, "field": field, "length_m": length_m, "width_m": width_m, "edges": edges, "plan": plan});
        let today = reader.names.today;
        reader.write(
            "bed_set",
            today,
            body,
            &[("length_m", "length"), ("width_m", "width"), ("plan", "species"), ("bed", "bed"), ("field", "field")],
        );
    }
    note_varieties(reader, name);
    write_standing(reader, name, &species);
    write_nurses(reader, name);
    write_light(reader, name);
    let line = reader.row.line;
    reader.day.note_unknown(UnknownWhat::BedSoil, None, line);
    reader.day.note_unknown(UnknownWhat::BedWork, None, line);
}

/// The items of a cell, parted by `+`.
fn items(written: &str) -> Vec<&str> {
    written.split('+').map(str::trim).filter(|item| !item.is_empty()).collect()
}

fn species_of(reader: &mut RowReader, cell: Cell) -> Vec<SpeciesKey> {
    items(cell.written).into_iter().filter_map(|item| reader.species(cell, item)).collect()
}

/// Varieties and grafts beside the names of species: a plan has none, so what is written is kept as a note.
fn note_varieties(reader: &mut RowReader, bed: &str) {
    let Some(cell) = reader.filled("species") else { return };
    let names = reader.names;
    let says_more = |item: &str| (names.find)(item).is_some_and(|key| (names.variety)(item, &key).is_some());
    if items(cell.written).into_iter().any(says_more) {
        let today = names.today;
        reader.write(
            "noted",
            today,
            json!({"about": bed, "text": cell.written}),
            &[("text", "species"), ("about", "bed")],
        );
    }
}

/// What is to stand in the bed: each species with its own spacing, or all with the one written.
fn plan_of(reader: &mut RowReader, species: &[SpeciesKey]) -> Vec<Value> {
    let spacings = spacings_of(reader, species.len());
    let pattern = reader.filled("pattern").and_then(|cell| {
        let read = PlantingPattern::read(cell.written).ok_or_else(|| {
            let known = PlantingPattern::WORDS.iter().map(|(pattern, _)| pattern.spelled()).collect();
            Reason::Envelope(Problem::NotTheWord { written: short(cell.written), known })
        });
        reader.or_fault(cell, read)
    });
    let mut plan = Vec::new();
    for (i, key) in species.iter().enumerate() {
        let written = spacings.get(i).or_else(|| spacings.first()).copied();
        let Some((row_m, in_row_m)) = written.or_else(|| usual_spacing(reader, key)) else { continue };
        let usual = if row_m == in_row_m { PlantingPattern::Square } else { PlantingPattern::Rectangle };
        let pattern = pattern.unwrap_or(usual).spelled();
        plan.push(json!({"species": key.as_str(), "pattern": pattern, "row_m": row_m, "in_row_m": in_row_m}));
    }
    plan
}

fn usual_spacing(reader: &mut RowReader, key: &SpeciesKey) -> Option<(f64, f64)> {
    let spacing_was_wrong = ["spacing", "row", "in row"].iter().any(|name| reader.filled(name).is_some());
    if spacing_was_wrong {
        return None;
    }
    match (reader.names.spacing)(key) {
        Some((row_m, in_row_m)) => {
            reader.tell(None, TakenFor::Spacing { row_m, in_row_m });
            Some((row_m, in_row_m))
        }
        None => {
            let missing = Reason::Envelope(Problem::Missing);
            let fault = match reader.meanings.cell(&reader.row.cells, "spacing") {
                Some(cell) => cell.fault(missing),
                None => crate::share::fault::Fault::on("spacing", missing),
            };
            reader.faults.push(fault);
            None
        }
    }
}

/// The spacings written: none, one for all, or one for each.
fn spacings_of(reader: &mut RowReader, species: usize) -> Vec<(f64, f64)> {
    if let Some(cell) = reader.filled("spacing") {
        let read: Result<Vec<_>, Reason> = items(cell.written).into_iter().map(read_spacing).collect();
        let Some(spacings) = reader.or_fault(cell, read) else { return Vec::new() };
        if spacings.len() > 1 && species > 0 && spacings.len() != species {
            let reason = Reason::NotOneForEach { species, numbers: spacings.len() };
            reader.faults.push(cell.fault(reason));
            return Vec::new();
        }
        return spacings;
    }
    let row = reader.filled("row").and_then(|cell| reader.amount(cell, &METRES));
    let in_row = reader.filled("in row").and_then(|cell| reader.amount(cell, &METRES));
    match (row, in_row) {
        (Some(row), Some(in_row)) => vec![(row, in_row)],
        (Some(both), None) | (None, Some(both)) => vec![(both, both)],
        (None, None) => Vec::new(),
    }
}

/// "2x2", "2.5 x 2", "2,5x2", "3 m por 2 m", or one number for both ways.
fn read_spacing(written: &str) -> Result<(f64, f64), Reason> {
    let fault = || Reason::NotASpacing(short(written));
    let spaced = written.to_lowercase().replace(" por ", "x").replace(" by ", "x");
    let parts: Vec<&str> = spaced.split(['x', '\u{d7}', '*']).map(str::trim).collect();
    let number = |part: &str| {
        let read = amounts::read_amount(part, &METRES).map_err(|_| fault())?;
        if read.value > 0.0 && !read.about { Ok(read.value) } else { Err(fault()) }
    };
    match parts[..] {
        [both] => number(both).map(|both| (both, both)),
        [row, in_row] => Ok((number(row)?, number(in_row)?)),
        _ => Err(fault()),
    }
}

fn write_standing(reader: &mut RowReader, bed: &str, species: &[SpeciesKey]) {
    let planted = reader.filled("planted about").and_then(|cell| reader.hand_day(cell));
    let Some(cell) = reader.filled("standing") else { return };
    let written = items(cell.written);
    let mut counts = Vec::new();
    for item in &written {
        let read = reader.or_fault(cell, amounts::read_count(item));
        counts.extend(read.map(|amount| amount.value));
    }
    if counts.len() != written.len() || species.is_empty() {
        return;
    }
    if counts.len() != species.len() {
        let nothing = counts.iter().all(|count| *count == 0);
        if !nothing {
            let reason = Reason::NotOneForEach { species: species.len(), numbers: counts.len() };
            reader.faults.push(cell.fault(reason));
        }
        return;
    }
    let today = reader.names.today;
    for (key, alive) in species.iter().zip(counts).filter(|(_, alive)| *alive > 0) {
        let planted = planted.map(|day| day.to_string());
        let body = json!({"bed": bed, "species": key.as_str(), "alive": alive, "planted_about": planted});
        reader.write("plants_found", today, body, &[("alive", "standing")]);
    }
}

/// Nurse plants are entered where their number, day and spacing are known; a guess of the day would foretell wrong light.
fn write_nurses(reader: &mut RowReader, bed: &str) {
    let planted = reader.filled("nurses planted").and_then(|cell| reader.hand_day(cell));
    let none = |cell: &Cell| is(&text::folded(cell.written), &vocabulary().sheet.nothing);
    let Some(cell) = reader.filled("nurse plants").filter(|cell| !none(cell)) else { return };
    let line = reader.row.line;
    for item in items(cell.written) {
        let (name, count) = name_and_count(item);
        let count = match count.map(amounts::read_count) {
            Some(read) => match reader.or_fault(cell, read) {
                Some(amount) => Some(amount.value),
                None => continue,
            },
            None => None,
        };
        let Some(nurse) = reader.species(cell, name) else { continue };
        let spacing = (reader.names.spacing)(&nurse);
        let missing = match (count, planted, spacing) {
            (None, _, _) => UnknownWhat::NurseCount,
            (Some(_), None, _) => UnknownWhat::NursePlanted,
            (Some(_), Some(_), None) => UnknownWhat::NurseSpacing,
            (Some(count), Some(day), Some((row_m, in_row_m))) => {
                let body =
                    json!({"bed": bed, "nurse": nurse.as_str(), "count": count, "row_m": row_m, "in_row_m": in_row_m});
                reader.write("nurse_planted", day, body, &[("nurse", "nurse plants"), ("count", "nurse plants")]);
                continue;
            }
        };
        reader.day.note_unknown(missing, Some(name), line);
    }
}

/// "banana 20", "20 banana", "banana": the name and what is written of its number.
fn name_and_count(item: &str) -> (&str, Option<&str>) {
    let number = |word: &str| word.trim_start_matches('~').starts_with(|letter: char| letter.is_ascii_digit());
    match (item.split_once(char::is_whitespace), item.rsplit_once(char::is_whitespace)) {
        (Some((first, rest)), _) if number(first) => (rest.trim(), Some(first)),
        (_, Some((rest, last))) if number(last) => (rest.trim(), Some(last)),
        (_, _) => (item, None),
    }
}

fn write_light(reader: &mut RowReader, bed: &str) {
    let today = reader.names.today;
    match reader.filled("light").and_then(|cell| reader.percent_of_light(cell)) {
        None => {
            let line = reader.row.line;
            reader.day.note_unknown(UnknownWhat::BedLight, None, line);
        }
        Some(percent) => {
            let body = json!({"bed": bed, "light_share": percent / 100.0});
            reader.write("light_read", today, body, &[("light_share", "light")]);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spacings_are_read_as_people_write_them() {
        for (written, expected) in [
            ("2x2", (2.0, 2.0)),
            ("2.5 x 2", (2.5, 2.0)),
            ("2,5x2", (2.5, 2.0)),
            ("3 m X 2 m", (3.0, 2.0)),
            ("3 por 2", (3.0, 2.0)),
            ("2", (2.0, 2.0)),
        ] {
            assert_eq!(read_spacing(written), Ok(expected), "{written}");
        }
        for wrong in ["2x", "x", "0x2", "2x2x2", "-2x2", "wide"] {
            assert_eq!(read_spacing(wrong), Err(Reason::NotASpacing(wrong.into())));
        }
    }

    #[test]
    fn nurse_plants_have_their_number_before_or_behind() {
        assert_eq!(name_and_count("banana 20"), ("banana", Some("20")));
        assert_eq!(name_and_count("20 pigeon pea"), ("pigeon pea", Some("20")));
        assert_eq!(name_and_count("pigeon pea"), ("pigeon pea", None));
    }
}
