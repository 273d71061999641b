//! Answers for programs: how an object is written, and the schema of each.

pub(super) mod geojson;
mod object_out;
pub(crate) mod schema;

pub(crate) use object_out::ObjectOut;
