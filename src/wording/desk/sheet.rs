//! What a sheet brought, how it was understood, and what it does not tell.

use crate::desk::{
    ColumnPassedOver, DayOrder, Encoding, OrderTaken, SheetImported, TakenFor, Total, Understood, Unknown, UnknownWhat,
};
use crate::wording::Wording;

/// Lines of a sheet that are named; more are only counted.
const MOST_LINES_NAMED: usize = 3;

impl Wording {
    /// How the sheet is written.
    pub fn sheet_form(&self, sheet: &SheetImported) -> String {
        if let Some(name) = &sheet.sheet {
            return self.sheet_in_workbook(name);
        }
        let delimiter = match sheet.delimiter {
            '\t' => self.sheet_tab(),
            ',' => self.sheet_comma(),
            ';' => self.sheet_semicolon(),
            other => other.to_string(),
        };
        self.sheet_written_as(encoding_name(sheet.encoding), delimiter)
    }

    /// What a cell was taken for, with its column where it has one.
    pub fn understood(&self, understood: &Understood) -> String {
        let written = &understood.written;
        let sentence = match &understood.taken {
            TakenFor::Day(day) => self.taken_day(written, self.day(*day)),
            TakenFor::AboutDay(day) => self.taken_about_day(written, self.day(*day)),
            TakenFor::AgeDays(days) => self.taken_age(written, *days),
            TakenFor::Count(count) => self.taken_count(written, *count),
            TakenFor::AboutCount(count) => self.taken_about_count(written, *count),
            TakenFor::Percent(percent) => self.taken_percent(written, self.percent(percent / 100.0)),
            TakenFor::VolumeMl(ml) => self.taken_volume(written, self.number(*ml, 0)),
            TakenFor::Field(field) => self.taken_field(field),
            TakenFor::Spacing { row_m, in_row_m } => {
                self.taken_spacing(self.number(*row_m, 2), self.number(*in_row_m, 2))
            }
        };
        match &understood.column {
            Some(column) => self.on_field(column, sentence),
            None => sentence,
        }
    }

    /// How day and month were told apart, and each day that the other order would give differently.
    pub(crate) fn order_taken(&self, taken: &OrderTaken) -> String {
        let order = match taken.order {
            DayOrder::DayFirst => self.sheet_order_day_first(),
            DayOrder::MonthFirst => self.sheet_order_month_first(),
        };
        let why = match &taken.shown_by {
            Some((line, written)) => self.sheet_order_shown(order, written, *line as i64),
            None => self.sheet_order_taken(order),
        };
        if taken.so_read.is_empty() {
            return why;
        }
        let each = taken.so_read.iter();
        let list: Vec<String> =
            each.map(|(line, written, day)| self.sheet_order_one(written, *line as i64, self.day(*day))).collect();
        format!("{why} {}", self.sheet_order_read(list.join(", ")))
    }

    /// A row of totals that was passed over, and whether it agrees.
    pub(crate) fn total_passed(&self, total: &Total) -> String {
        match total.written.filter(|written| *written != total.counted) {
            Some(written) => self.sheet_total_differs(total.line as i64, written, total.counted),
            None => self.sheet_total_passed(total.line as i64),
        }
    }

    /// What is not known, and of how many trays or beds.
    pub(crate) fn still_unknown(&self, unknown: &Unknown) -> String {
        let lines = unknown.lines.len() as i64;
        let of = |counted: String| {
            if unknown.lines.len() > MOST_LINES_NAMED {
                return counted;
            }
            let lines: Vec<String> = unknown.lines.iter().map(ToString::to_string).collect();
            self.sheet_lines(counted, lines.join(", "), unknown.lines.len() as i64)
        };
        let (trays, beds) = (of(self.trays(lines)), of(self.beds(lines)));
        let name = unknown.name.as_deref().unwrap_or("-");
        match unknown.what {
            UnknownWhat::ContainerVolume => self.still_container_volume(name, trays),
            UnknownWhat::Container => self.still_container(trays),
            UnknownWhat::Age => self.still_age(trays),
            UnknownWhat::LeastDays => self.still_least_days(name, trays),
            UnknownWhat::PlaceShade => self.still_place_shade(name, trays),
            UnknownWhat::Place => self.still_place(trays),
            UnknownWhat::Measured => self.still_measured(trays),
            UnknownWhat::SpeciesShade => self.still_species_shade(name, trays),
            UnknownWhat::SpeciesMostDays => self.still_species_most_days(name, trays),
            UnknownWhat::BedLight => self.still_bed_light(beds),
            UnknownWhat::BedSoil => self.still_bed_soil(beds),
            UnknownWhat::BedWork => self.still_bed_work(beds),
            UnknownWhat::NurseCount => self.still_nurse_count(name, beds),
            UnknownWhat::NursePlanted => self.still_nurse_planted(name, beds),
            UnknownWhat::NurseSpacing => self.still_nurse_spacing(name, beds),
            UnknownWhat::NotedSickness => self.still_noted_sickness(name, trays),
            UnknownWhat::NotedUse => self.still_noted_use(name, trays),
        }
    }
}

impl Wording {
    /// The columns that mean nothing here, each with what it may mean.
    pub(crate) fn columns_passed_over(&self, columns: &[ColumnPassedOver]) -> String {
        let said = columns.iter().map(|column| match column.nearest {
            Some(nearest) => self.sheet_passed_over_near(&column.written, self.of_two(nearest)),
            None => column.written.clone(),
        });
        self.sheet_passed_over(said.collect::<Vec<_>>().join(", "))
    }
}

/// The name of an encoding, the same in every language.
pub(crate) fn encoding_name(encoding: Encoding) -> &'static str {
    match encoding {
        Encoding::Utf8 => "UTF-8",
        Encoding::Utf16LittleEndian | Encoding::Utf16BigEndian => "UTF-16",
        Encoding::Utf32 => "UTF-32",
        Encoding::Windows1252 => "Windows-1252",
        Encoding::Workbook => "workbook",
    }
}
