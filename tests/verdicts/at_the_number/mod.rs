//! A rule in a world where it alone decides: just before its number, and at it.

mod beds;
mod entries;
