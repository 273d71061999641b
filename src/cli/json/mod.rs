//! Answers for programs: how an object is written, and the schema of each.

mod object_out;
pub mod schema;

pub use object_out::ObjectOut;
