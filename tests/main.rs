//! All integration tests.
mod science_handbook;
