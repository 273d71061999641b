//! The form of what is written: the types and shapes of fields, how a body is read, and what is wrong with one.

pub mod fault;
pub mod fields;
pub mod in_spanish;
pub mod reading;
pub mod rules;
pub mod shape;
pub mod types;
