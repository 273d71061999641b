//! A sheet of trays that already stand: a row a tray.

use serde_json::json;

use super::columns::{Cell, Meanings, columns};
use super::sheet::{RowReader, note_repeated, order_of, read_rows, without_total};
use super::{FirstDay, SheetNames, SpellingOf, TakenFor, UnknownWhat};
use crate::base::{text, word::Word};
use crate::nursery::entry::fault::Problem;
use crate::nursery::entry::types::PlantForm;
use crate::nursery::herbicide::names_treatment;
use crate::nursery::pest::is_pest_named_in;
use crate::share::amounts;
use crate::share::draft::short;
use crate::share::fault::{LineFaults, Reason};
use crate::share::sheet::Table;
use crate::share::vocabulary::{is, vocabulary};

/// A first row for a sheet of trays, in English and in Spanish.
pub const TRAY_EXAMPLE: [&str; 2] =
    ["Tray,Species,How many,Sown about,Bag,Bench", "Bandeja;Especie;Cuántas;Sembrada hacia;Funda;Mesa"];

/// Reads a sheet of trays as `plants_received` from `opening`, every fault listed by row and column. A count that is
/// only about so many gives a `counted` beside it.
pub fn read_trays(table: &Table, names: &SheetNames) -> (FirstDay, LineFaults) {
    let mut faults = LineFaults::default();
    let (meanings, passed_over) = Meanings::of(table, &columns().trays, TRAY_EXAMPLE, &mut faults);
    let is_headed = faults.is_empty();
    table.faults.listed.iter().for_each(|fault| faults.note(fault.clone()));
    if !is_headed {
        return (FirstDay { passed_over, columns: meanings.each().collect(), ..FirstDay::default() }, faults);
    }
    let (table, total) = without_total(table, &meanings, "tray", Some("how many"));
    note_repeated(&table, &meanings, "tray", &mut faults);
    let (order, taken) = order_of(names, &table, &meanings, &["sown about"]);
    let day = FirstDay { passed_over, order: taken, total, ..FirstDay::default() };
    read_rows(&table, &meanings, names, order, (day, faults), &read_row)
}

/// How many stand there; none where the cell does not say it.
fn count_of(reader: &mut RowReader) -> Option<amounts::Amount<u32>> {
    reader.required("how many").and_then(|cell| {
        if is(&text::folded(cell.written), &vocabulary().sheet.not_known) {
            reader.faults.push(cell.fault(Reason::CountNotKnown(short(cell.written))));
            return None;
        }
        let count = reader.count(cell)?;
        if count.value == 0 {
            reader.faults.push(cell.fault(Reason::EmptyTray));
        }
        Some(count)
    })
}

fn read_row(reader: &mut RowReader) {
    let tray = reader.required("tray");
    if let Some(cell) = tray {
        reader.new_to_the_book(cell);
    }
    let species = reader.required("species").and_then(|cell| reader.species(cell, cell.written));
    let variety = reader
        .filled("species")
        .zip(species.as_ref())
        .and_then(|(cell, species)| (reader.names.variety)(cell.written, species));
    let count = count_of(reader);
    let age_days = age_of(reader);
    let in_nothing = |cell: &Cell| is(&text::folded(cell.written), &vocabulary().sheet.nothing);
    if let Some(cell) = reader.filled("container").filter(in_nothing)
        && reader.filled("form").is_none()
    {
        reader.faults.push(cell.fault(Reason::NoContainer(short(cell.written))));
    }
    let container = reader.filled("container").filter(|cell| !in_nothing(cell)).map(|cell| {
        if amounts::has_no_volume(cell.written) {
            reader.faults.push(cell.fault(Reason::NoVolume(short(cell.written))));
        }
        reader.spelling(cell, SpellingOf::Container)
    });
    let place = reader.filled("place").map(|cell| reader.spelling(cell, SpellingOf::Place));
    let form = form_of(reader, container.as_ref().map(|(name, _)| name.as_str()));
    let height_cm = reader.filled("height").and_then(|cell| {
        let in_metres = cell.plain.ends_with("(m)") || cell.plain.ends_with("-m");
        let units = if in_metres { &amounts::METRES[..] } else { &amounts::CENTIMETRES[..] };
        reader.amount(cell, units).map(|value| if in_metres { value * 100.0 } else { value })
    });
    let shade_pct = reader.filled("shade").and_then(|cell| reader.percent_of_all(cell));
    let [source, notes] = ["source", "notes"].map(|name| reader.filled(name).map(|cell| cell.written));
    let (Some(tray), Some(species), Some(count), Some(form)) = (tray, species, count, form) else { return };
    let container = container.map(|(name, known)| {
        let known = known || write_volume(reader, &name);
        (name, known)
    });
    note_unknowns(reader, age_days, container.as_ref(), place.as_ref());
    note_what_notes_name(reader, tray.written, &[source, notes].map(Option::unwrap_or_default).join(" "));
    let body = json!({
        "tray": tray.written, "species": species.as_str(), "variety": variety, "count": count.value, "from": "opening", "form": form,
        "age_days": age_days, "height_cm": height_cm, "container": container.map(|(name, _)| name),
        "place": place.map(|(name, _)| name), "shade_now_pct": shade_pct,
        "source": source,
    });
    let columns = [
        ("count", "how many"),
        ("variety", "species"),
        ("age_days", "age"),
        ("height_cm", "height"),
        ("shade_now_pct", "shade"),
        ("container", "container"),
        ("place", "place"),
        ("source", "source"),
        ("tray", "tray"),
    ];
    let today = reader.names.today;
    reader.write("plants_received", today, body, &columns);
    if let Some(notes) = notes {
        let note = json!({"about": tray.written, "text": notes});
        reader.write("noted", today, note, &[("text", "notes"), ("about", "tray")]);
    }
    if count.about {
        let look = json!({"tray": tray.written, "standing": count.value, "about": true});
        reader.write("counted", today, look, &[("standing", "how many")]);
    }
}

/// Writes the volume that a bag's own name tells, once for all trays; the answer is whether it tells one.
fn write_volume(reader: &mut RowReader, name: &str) -> bool {
    let Some(volume_ml) = amounts::volume_ml(name) else { return false };
    if reader.day.volumes.insert(name.to_string()) {
        let cell = reader.filled("container");
        reader.tell(cell, TakenFor::VolumeMl(volume_ml));
        let today = reader.names.today;
        reader.write(
            "container_set",
            today,
            json!({"container": name, "volume_ml": volume_ml}),
            &[("container", "container"), ("volume_ml", "container")],
        );
    }
    true
}

/// Days since sowing, from the day or the age; the day leads where both are written.
fn age_of(reader: &mut RowReader) -> Option<u32> {
    let today = reader.names.today;
    let by_day = reader.filled("sown about").and_then(|cell| reader.hand_day(cell));
    let by_age = reader.filled("age").and_then(|cell| {
        let unit = ["month", "mes", "week", "semana"].into_iter().find(|unit| cell.plain.contains(unit));
        let amount = reader.or_fault(cell, amounts::read_age(cell.written, unit.unwrap_or("days")))?;
        if by_day.is_none() && (amount.about || unit.is_some()) {
            reader.tell(Some(cell), TakenFor::AgeDays(amount.value));
        }
        Some(amount.value)
    });
    by_day.map(|day| today.days_since(day).unsigned_abs()).or(by_age)
}

/// The form: as written, else a plug where the container reads like a cell, else a bag.
fn form_of(reader: &mut RowReader, container: Option<&str>) -> Option<&'static str> {
    let known = &vocabulary().sheet;
    let also = [
        (&known.bare_root, PlantForm::BareRoot),
        (&known.bag, PlantForm::Bag),
        (&known.plug, PlantForm::Plug),
        (&known.stump, PlantForm::Stump),
    ];
    let Some(cell) = reader.filled("form") else {
        let folded = text::folded(container.unwrap_or_default());
        let is_cell = known.cells.iter().any(|word| folded.contains(word.as_str()));
        return Some(if is_cell { PlantForm::Plug } else { PlantForm::Bag }.spelled());
    };
    let folded = text::folded(cell.written);
    let also = || also.into_iter().find(|(words, _)| is(&folded, words)).map(|(_, form)| form);
    let read = PlantForm::read(cell.written).or_else(also).map(Word::spelled).ok_or_else(|| {
        let known = PlantForm::WORDS.iter().map(|(form, _)| form.spelled()).collect();
        Reason::Envelope(Problem::NotTheWord { written: short(cell.written), known })
    });
    reader.or_fault(cell, read)
}

/// A sickness or a spray in the notes is asked for as an entry of its own: a note holds nothing back, and nothing is made up.
fn note_what_notes_name(reader: &mut RowReader, tray: &str, notes: &str) {
    let line = reader.row.line;
    if is_pest_named_in(notes) {
        reader.day.note_unknown(UnknownWhat::NotedSickness, Some(tray), line);
    }
    if names_treatment(notes) {
        reader.day.note_unknown(UnknownWhat::NotedUse, Some(tray), line);
    }
}

fn note_unknowns(
    reader: &mut RowReader,
    age_days: Option<u32>,
    container: Option<&(String, bool)>,
    place: Option<&(String, bool)>,
) {
    let line = reader.row.line;
    let mut unknown = |what, name: Option<&str>| reader.day.note_unknown(what, name, line);
    if age_days.is_none() {
        unknown(UnknownWhat::Age, None);
    }
    match container {
        None => unknown(UnknownWhat::Container, None),
        Some((name, false)) => unknown(UnknownWhat::ContainerVolume, Some(name)),
        Some((_, true)) => {}
    }
    match place {
        None => unknown(UnknownWhat::Place, None),
        Some((name, false)) => unknown(UnknownWhat::PlaceShade, Some(name)),
        Some((_, true)) => {}
    }
    // A height on arrival is one number for the tray; the verdict asks for a sample with collars.
    unknown(UnknownWhat::Measured, None);
}
