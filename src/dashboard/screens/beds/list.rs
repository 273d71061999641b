//! The list of fields and beds, a line for each species of a bed's plan.

use std::collections::BTreeMap;

use crate::base::{BedName, FieldName, SpeciesKey};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::{Ink, standing_mark};
use crate::dashboard::parts::{Column, Row, Table};
use crate::reckon::field::waits_for;
use crate::reckon::picture::{BedPicture, BedSpecies, Standing};

/// A bed and one species of its plan; none where it plans nothing.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(super) struct Choice {
    pub(crate) bed: BedName,
    pub(crate) species: Option<SpeciesKey>,
}

/// A line of the list.
#[derive(Clone, Debug)]
pub(super) enum Line {
    Field(FieldName),
    Species(Choice),
}

/// The lines, field by field.
pub(super) fn lines(cx: &ScreenContext<'_>) -> Vec<Line> {
    let mut fields: BTreeMap<&FieldName, Vec<&BedPicture>> = BTreeMap::new();
    for bed in cx.book.picture.beds.values() {
        fields.entry(&bed.field).or_default().push(bed);
    }
    let mut lines = Vec::new();
    for (field, beds) in fields {
        lines.push(Line::Field(field.clone()));
        for bed in beds {
            let species: Vec<Option<SpeciesKey>> = match bed.species.as_slice() {
                [] => vec![None],
                planned => planned.iter().map(|one| Some(one.species.clone())).collect(),
            };
            let choices = species.into_iter().map(|species| Choice { bed: bed.name.clone(), species });
            lines.extend(choices.map(Line::Species));
        }
    }
    lines
}

/// The lines that can be chosen.
pub(super) fn choices(cx: &ScreenContext<'_>) -> Vec<Choice> {
    let only = |line| match line {
        Line::Species(choice) => Some(choice),
        Line::Field(_) => None,
    };
    lines(cx).into_iter().filter_map(only).collect()
}

/// The table; the light drops first, then the open positions; what is missing next stays as long as it can.
pub(super) fn table(chosen: Option<&Choice>, cx: &ScreenContext<'_>) -> Table {
    let wording = cx.wording;
    let lines = lines(cx);
    let at = lines.iter().position(|line| matches!(line, Line::Species(choice) if Some(choice) == chosen));
    let mut above: Option<BedName> = None;
    let rows = lines.iter().map(|line| match line {
        Line::Field(field) => Row::Heading(field.to_string()),
        Line::Species(choice) => {
            let again = above.as_ref() == Some(&choice.bed);
            above = Some(choice.bed.clone());
            row(choice, again, cx)
        }
    });
    let rows = rows.collect();
    Table {
        columns: vec![
            Column::words(wording.beds_bed(), 0, 16),
            Column::words(wording.beds_species(), 0, 14),
            Column::words(wording.beds_standing(), 0, 14),
            Column::figures(wording.beds_open(), 3, 6),
            Column::figures(wording.beds_light(), 4, 6),
            Column::words(wording.beds_missing(), 1, 18),
        ],
        rows,
        chosen: at,
    }
}

fn row(choice: &Choice, again: bool, cx: &ScreenContext<'_>) -> Row {
    let wording = cx.wording;
    let Some(bed) = cx.book.picture.beds.get(&choice.bed) else { return Row::Heading(choice.bed.to_string()) };
    let name = if again { String::new() } else { bed.name.to_string() };
    let light = bed.light_now.as_ref().map_or_else(|| "?".to_string(), |light| wording.percent(light.share));
    let light = if again { String::new() } else { light };
    let line = bed.species.iter().find(|line| Some(&line.species) == choice.species.as_ref());
    let Some(line) = line else {
        let nothing = |text: String| (text, Ink::Plain);
        let planned = wording.beds_nothing();
        return Row::Cells(vec![
            nothing(name),
            nothing(planned),
            nothing(String::new()),
            nothing(String::new()),
            nothing(light),
            nothing(String::new()),
        ]);
    };
    let (mark, ink) = standing_mark(line.standing);
    Row::Cells(vec![
        (name, Ink::Strong),
        (cx.species(Some(&line.species)), Ink::Plain),
        (format!("{mark} {}", wording.standing_name(line.standing)), ink),
        (line.open_positions.to_string(), Ink::Plain),
        (light, Ink::Plain),
        (missing(line, cx), Ink::Plain),
    ])
}

/// What is missing next; where nothing is open, the standing says it. Else the first thing that holds it back by name, and how many more.
fn missing(line: &BedSpecies, cx: &ScreenContext<'_>) -> String {
    if line.standing == Standing::Full {
        return String::new();
    }
    let waits = waits_for(&line.criteria, cx.day());
    match waits.as_slice() {
        [] => String::new(),
        [only] => cx.wording.rule_name(only.rule()),
        [first, more @ ..] => format!("{} +{}", cx.wording.rule_name(first.rule()), more.len()),
    }
}
