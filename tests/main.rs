//! All integration tests.
