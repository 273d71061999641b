//! Verdicts in words: what is needed and known, why not, and what cannot be believed.

mod doubt;
mod gap;
mod measure;
mod names;
mod nurses;
mod pest;
mod reason;
mod source;
mod told;
mod unknown;

pub use reason::About;
