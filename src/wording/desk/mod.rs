//! What the desk says: faults of a line, refusals, and what was done.

mod errors;
mod fault;
mod kind_form;
mod outcome;
mod own_words;
mod profile_fault;
mod sheet;
mod written;

pub(crate) use sheet::encoding_name;
