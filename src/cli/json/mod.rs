//! Answers for programs: how an object is written.

mod object_out;

pub use object_out::ObjectOut;
