//! outplant: see README.md.
fn main() {}
