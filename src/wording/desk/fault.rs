//! Why a line is not an entry, and what to write instead.

use crate::desk::{PairFault, Reason};
use crate::nursery::entry::fault::{EntryFault, FieldFault, Problem};
use crate::nursery::entry::kind_of_entry;
use crate::wording::Wording;

/// A least value that only keeps nought out.
pub(crate) const NEARLY_NOUGHT: f64 = 0.001;
/// A most value that only keeps out what no number of a nursery is.
const NO_MOST: f64 = 1e6;

impl Wording {
    /// Why a line is not an entry.
    pub(crate) fn entry_fault(&self, fault: &EntryFault) -> String {
        match fault {
            EntryFault::NotJson(what) => self.fault_not_json(what),
            EntryFault::NoKind => self.fault_no_kind(),
            EntryFault::UnknownKind(kind, nearest) if nearest.is_empty() => {
                self.fault_kinds_listed(self.fault_unknown_kind(kind))
            }
            EntryFault::UnknownKind(kind, nearest) => {
                let nearest: Vec<String> = nearest.iter().map(|kind| self.kind_typed(kind).to_string()).collect();
                self.nearest_after(self.fault_unknown_kind(kind), &nearest)
            }
            EntryFault::Field { kind, fault } => {
                let sentence = self.fault_in_kind(self.kind_typed(kind), self.field_fault(fault));
                let known = kind_of_entry(kind).filter(|_| matches!(fault.problem, Problem::MissingAll(_)));
                known.map_or(sentence.clone(), |known| {
                    self.fault_for_instance(sentence, self.least_form(known.kind, known.fields))
                })
            }
        }
    }

    /// What is wrong with a field.
    pub(crate) fn field_fault(&self, fault: &FieldFault) -> String {
        let field = &self.fields_typed(&fault.field);
        let each = |fields: &[String]| fields.iter().map(|field| self.fields_typed(field)).collect::<Vec<String>>();
        match &fault.problem {
            Problem::Missing => self.problem_missing(field),
            Problem::MissingAll(fields) => {
                let named: Vec<&str> = fields.iter().map(|field| self.field_typed(field)).collect();
                self.problem_missing_all(named.join(", "))
            }
            Problem::Unknown(nearest) => self.nearest_after(self.problem_unknown(field), &each(nearest)),
            Problem::UnknownOf(fields) => self.problem_unknown_of(field, each(fields).join(", ")),
            Problem::UnknownInside { outer, inner, list } => {
                let outer = self.field_typed(outer);
                let record = format!("{{\"{inner}\": ...}}");
                let form = if *list { format!("{outer}='[{record}]'") } else { format!("{outer}='{record}'") };
                self.problem_unknown_inside(field, form)
            }
            Problem::NotANumber(written) => self.problem_not_a_number(field, written),
            Problem::LettersBehind { written, unit: Some(unit) } => {
                self.problem_letters_behind_unit(field, written, self.unit_said(unit))
            }
            Problem::LettersBehind { written, unit: None } => self.problem_letters_behind(field, written),
            Problem::NotWhole(written) => self.problem_not_whole(field, written),
            Problem::BelowZero(written) => self.problem_below_zero(field, written),
            Problem::TooMany { most } => self.problem_too_many(field, self.number(*most, 0)),
            Problem::OutsideEnds { least, most } => match (*least > 0.0 && *least <= NEARLY_NOUGHT, *most >= NO_MOST) {
                (true, true) => self.problem_above_nought(field),
                (true, false) => self.problem_above_nought_to(field, self.number(*most, 3)),
                (false, true) => self.problem_below_least(field, self.number(*least, 3)),
                (false, false) => self.problem_outside_ends(field, self.number(*least, 3), self.number(*most, 3)),
            },
            Problem::NotTrueOrFalse => self.problem_not_true_or_false(field),
            Problem::NotText => self.problem_not_text(field),
            Problem::Empty => self.problem_empty(field),
            Problem::TooLong(most) => self.problem_too_long(field, i64::try_from(*most).unwrap_or(i64::MAX)),
            Problem::Unseen(shown) => self.problem_unseen(field, shown),
            Problem::NotADay(written) => self.problem_not_a_day(field, written),
            Problem::NotAMonthDay(written) => self.problem_not_a_month_day(field, written),
            Problem::NotAClock(written) => self.problem_not_a_clock(field, written),
            Problem::NotAnEntry(written) => self.problem_not_an_entry(field, written),
            Problem::NotASpot(written) => self.problem_not_a_spot(field, written),
            Problem::NotTheWord { written, known } => {
                let known: Vec<String> = known.iter().map(|word| self.word_of_a_list(word)).collect();
                self.problem_not_the_word(field, written, known.join(", "))
            }
            Problem::NotAList => self.problem_not_a_list(field),
            Problem::NotARecord => self.problem_not_a_record(field),
            Problem::NotTwelve(months) => self.problem_twelve_months(field, *months as i64),
            Problem::SameTray(tray) => self.problem_same_tray(tray),
            Problem::OnlyOneOf(fields) => self.problem_only_one_of(self.fields_typed(fields)),
            Problem::OneOf(fields) => self.problem_one_of(self.fields_typed(fields)),
            Problem::Twice => self.problem_twice(field),
            Problem::Unreadable => self.problem_unreadable(),
        }
    }

    /// A unit as people say it.
    fn unit_said(&self, unit: &str) -> String {
        match unit {
            "pct" => "%".to_string(),
            "mpa" => "MPa".to_string(),
            "c" => "°C".to_string(),
            "deg" => self.unit_degrees(),
            "h" => self.unit_hours(),
            "days" => self.unit_whole_days(),
            "litres_per_day" => self.unit_litres_a_day(),
            other => other.to_string(),
        }
    }

    /// Names of fields in a text, each as it is typed in the language asked for: `plants[1].height_cm`, `seeds / mass_g`.
    fn fields_typed(&self, names: &str) -> String {
        let (mut typed, mut name) = (String::new(), String::new());
        for letter in names.chars().chain(['\n']) {
            if letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '_' {
                name.push(letter);
                continue;
            }
            typed.push_str(self.field_typed(&name));
            name.clear();
            typed.push(letter);
        }
        typed.trim_end().to_string()
    }

    /// What is wrong with what is typed in a form: its fields are named as the form names them.
    pub(crate) fn form_fault(&self, kind: &str, fault: &PairFault) -> String {
        let inner = match &fault.reason {
            Reason::Entry(inner) => Some(&**inner),
            _ => None,
        };
        let Some(EntryFault::Field { fault: inner, .. }) = inner else {
            let field = fault.field.as_ref().map(|field| self.title_in_form(kind, field));
            return self.pair_fault(&PairFault { field, ..fault.clone() });
        };
        let title = self.title_in_form(kind, &inner.field);
        let sentence = match &inner.problem {
            Problem::OneOf(fields) => self.form_missing(self.titles_in_form(kind, fields)),
            Problem::OnlyOneOf(fields) => self.problem_only_one_of(self.titles_in_form(kind, fields)),
            Problem::NotTheWord { written, known } => {
                let known: Vec<String> = known.iter().map(|word| self.choice_name(word)).collect();
                self.problem_not_the_word(title, written, known.join(", "))
            }
            Problem::MissingAll(fields) => {
                let all = fields.iter().map(|field| self.title_in_form(kind, field));
                self.form_missing(all.reduce(|one, other| self.form_and(one, other)).unwrap_or_default())
            }
            // A cell of a row is handed on as a text.
            Problem::NotANumber(written) => self.problem_not_a_number(title, written.trim_matches('"')),
            problem => self.field_fault(&FieldFault { field: title, problem: problem.clone() }),
        };
        match row_of(&inner.field) {
            Some(row) => self.form_in_row(row, sentence),
            None => sentence,
        }
    }

    /// Fields of which one is wanted, as their form names them: "Seeds or Fruits and Seeds per fruit".
    fn titles_in_form(&self, kind: &str, fields: &str) -> String {
        let title = |field: &str| self.title_in_form(kind, field);
        let together = |fields: &str| {
            fields.split(" + ").map(title).reduce(|one, other| self.form_and(one, other)).unwrap_or_default()
        };
        fields.split(" / ").map(together).reduce(|one, other| self.form_or(one, other)).unwrap_or_default()
    }

    /// A field as its form names it, without unit: of a row of a list the field in the row.
    pub(crate) fn title_in_form(&self, kind: &str, field: &str) -> String {
        let last = field.rsplit('.').next().unwrap_or(field);
        let name = last.split('[').next().unwrap_or(last);
        let title = self.field_title_of(kind, name);
        title.split([':', ',']).next().unwrap_or_default().trim().to_string()
    }

    /// A sentence with the nearest known names behind it, where there are any.
    pub(crate) fn nearest_after(&self, sentence: String, nearest: &[String]) -> String {
        if nearest.is_empty() {
            return sentence;
        }
        // The full stop belongs behind the names.
        match sentence.strip_suffix('.') {
            Some(bare) => format!("{}.", self.with_nearest(bare, nearest.join(", "))),
            None => self.with_nearest(sentence, nearest.join(", ")),
        }
    }
}

/// The row of a list in which a field is: `replicates[2].seeds`.
fn row_of(field: &str) -> Option<&str> {
    field.split_once('[')?.1.split_once("].").map(|(row, _)| row)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wording::Lang;

    fn field(field: &str, problem: Problem) -> EntryFault {
        EntryFault::Field { kind: "counted".into(), fault: FieldFault { field: field.into(), problem } }
    }

    #[test]
    fn a_fault_names_the_field_what_was_written_and_what_to_write() {
        let en = Wording::new(Lang::En);
        let letters = Problem::LettersBehind { written: "41kg".into(), unit: None };
        assert_eq!(
            en.entry_fault(&field("standing", letters)),
            "counted: standing is a number: write the number alone, not '41kg'"
        );
        let centimetres = Problem::LettersBehind { written: "41cm".into(), unit: Some("cm") };
        assert_eq!(
            en.entry_fault(&field("height_cm", centimetres)),
            "counted: height_cm is in cm: write the number alone, not '41cm'"
        );
        assert_eq!(
            en.entry_fault(&field("standin", Problem::Unknown(vec!["standing".into()]))),
            "counted: there is no field standin here; nearest: standing"
        );
        assert_eq!(
            Wording::new(Lang::Es).entry_fault(&EntryFault::UnknownKind("contado".into(), vec![])),
            "no existe la anotación 'contado'; `outplant write` sola muestra todas"
        );
    }

    #[test]
    fn every_problem_of_every_language_is_a_sentence_of_its_own() {
        let all = || {
            vec![
                Problem::Missing,
                Problem::MissingAll(vec!["f", "g"]),
                Problem::Unknown(vec![]),
                Problem::UnknownOf(vec!["tray".into()]),
                Problem::UnknownInside { outer: "plants", inner: "height_cm", list: true },
                Problem::NotANumber("x".into()),
                Problem::LettersBehind { written: "x".into(), unit: None },
                Problem::LettersBehind { written: "x".into(), unit: Some("cm") },
                Problem::NotWhole("x".into()),
                Problem::BelowZero("x".into()),
                Problem::OutsideEnds { least: 0.001, most: 100.0 },
                Problem::NotTrueOrFalse,
                Problem::NotText,
                Problem::Empty,
                Problem::TooLong(24),
                Problem::Unseen("x".into()),
                Problem::NotADay("x".into()),
                Problem::NotAMonthDay("x".into()),
                Problem::NotAClock("x".into()),
                Problem::NotAnEntry("x".into()),
                Problem::NotASpot("x".into()),
                Problem::NotTheWord { written: "x".into(), known: vec!["plug", "bag"] },
                Problem::NotAList,
                Problem::NotARecord,
                Problem::OneOf("seeds / mass_g"),
                Problem::NotTwelve(3),
                Problem::SameTray("cof-1".into()),
                Problem::OnlyOneOf("tray / place"),
                Problem::Twice,
                Problem::Unreadable,
            ]
        };
        for lang in Lang::ALL {
            let wording = Wording::new(lang);
            let said: std::collections::BTreeSet<String> = all()
                .into_iter()
                .map(|problem| wording.field_fault(&FieldFault { field: "f".into(), problem }))
                .collect();
            assert_eq!(said.len(), all().len(), "{said:#?}");
        }
    }
}
