//! The frames: for every kind of entry how a statement of it is said.

mod clause;
mod of_care;
mod of_field;
mod of_moving;
mod of_nurse;
mod of_person;
mod of_seed;
mod of_tray;

pub(crate) use clause::{Clause, Fields};

use super::typed::{days, marks, named};
use super::{lexicon, why, written};
use named::NameOf;
use why::Why;

/// Entries: kind and fields.
pub(crate) type Drafts = Vec<(&'static str, Fields)>;
/// Reads a statement as one kind.
pub(crate) type Frame = fn(&mut Clause) -> Option<Drafts>;

/// All frames; which reads best is decided by what of the statement they explain.
pub(crate) const FRAMES: &[Frame] = &[
    of_tray::counted,
    of_tray::stocktaken,
    of_tray::lost,
    of_tray::culled,
    of_moving::carried,
    of_moving::moved_on,
    of_moving::outplanted,
    of_person::given_out,
    of_person::promised,
    of_tray::lost_of_species,
    of_seed::sown,
    of_seed::resown,
    of_seed::sown_in_bed,
    of_seed::lot_received,
    of_seed::lot_counted,
    of_seed::lot_kept,
    of_seed::plants_received,
    of_care::shade_set,
    of_care::watering_set,
    of_care::watered,
    of_care::pest_seen,
    of_care::treated,
    of_care::flushed,
    of_care::plug_checked,
    of_care::roots_cut,
    of_care::hardening_begun,
    of_care::held,
    of_care::released,
    of_care::grafted,
    of_care::measured,
    of_person::worked,
    of_field::weather,
    of_field::light_read,
    of_field::soil_checked,
    of_field::prepared,
    of_nurse::nurse_planted,
    of_nurse::nurse_counted,
    of_nurse::nurse_cut,
    of_field::survival_counted,
    of_field::plants_lost,
];

/// One entry.
pub(crate) fn one(kind: &'static str, fields: Fields) -> Option<Drafts> {
    Some(vec![(kind, fields)])
}

/// What an entry is about.
pub(crate) struct Subject {
    pub field: &'static str,
    pub name: String,
}

/// Uses all names of the first of these sorts that the statement has.
pub(crate) fn subject(clause: &mut Clause, sorts: &[NameOf], is_headed: bool) -> Option<Vec<Subject>> {
    for name_of in sorts {
        let Some(first) = clause.find_name(*name_of) else { continue };
        let field = match name_of {
            NameOf::Tray => "tray",
            NameOf::Bed => "bed",
            NameOf::Place => "place",
            NameOf::Lot => "lot",
            NameOf::Container => "container",
            NameOf::Field => "field",
        };
        let two = sorts.iter().filter(|of| clause.marks[first].is_name_of(**of)).count() > 1;
        if two && !clause.is_surely(*name_of) || !is_headed && !clause.is_surely(*name_of) {
            clause.lacks.push(Why::Both(clause.marks[first].typed.clone()));
        }
        let mut found = Vec::new();
        while let Some(name) = clause.name(*name_of) {
            found.push(Subject { field, name });
        }
        return Some(found);
    }
    None
}

/// The same fields for each subject.
pub(crate) fn for_each(kind: &'static str, subjects: &[Subject], told: &Fields) -> Option<Drafts> {
    let draft = |subject: &Subject| {
        let mut fields = Fields::new();
        fields.insert(subject.field.to_string(), subject.name.clone().into());
        fields.extend(told.clone());
        (kind, fields)
    };
    Some(subjects.iter().map(draft).collect())
}
