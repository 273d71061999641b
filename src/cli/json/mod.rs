//! Answers for programs: how an object is written, and the schema of each.

mod object_out;
pub(crate) mod schema;

pub(crate) use object_out::ObjectOut;
