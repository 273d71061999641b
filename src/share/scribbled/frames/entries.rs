//! Entries as a frame makes them.

use super::clause::{Clause, Fields};
use crate::share::scribbled::typed::named::NameOf;
use crate::share::scribbled::why::Why;

/// Entries: kind and fields.
pub(crate) type Drafts = Vec<(&'static str, Fields)>;

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
        let two = sorts.iter().filter(|of| clause.marks[first].is_name_of(**of)).count() > 1;
        if two && !clause.is_surely(*name_of) || !is_headed && !clause.is_surely(*name_of) {
            clause.lacks.push(Why::Both(clause.marks[first].typed.clone()));
        }
        let mut found = Vec::new();
        while let Some(name) = clause.name(*name_of) {
            found.push(Subject { field: name_of.field(), name });
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
