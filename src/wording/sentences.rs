//! The methods that `build.rs` makes of the sentences, and the texts they stand in.
#![allow(clippy::too_many_arguments)]

use std::fmt::Display;

use super::Wording;
use super::argument::Argument;
#[cfg(test)]
use super::argument::{Key, Kind};
use super::constant::{self, Constant};

/// The sentences of a language as they are written. A theme is read when one of its sentences is first said: most runs say few.
pub(super) struct Texts {
    /// Each theme's text.
    pub(super) themes: &'static [&'static str],
    /// The theme of each key, sorted by key.
    pub(super) theme_of: &'static [(&'static str, usize)],
}

include!(concat!(env!("OUT_DIR"), "/sentences.rs"));
