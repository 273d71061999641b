//! The methods that `build.rs` makes of the sentences, and the texts they stand in.
#![allow(clippy::too_many_arguments)]

use std::fmt::Display;

use super::Wording;
use super::argument::Argument;
#[cfg(test)]
use super::argument::{Key, Kind};
use super::constant::{self, Constant};

include!(concat!(env!("OUT_DIR"), "/sentences.rs"));
