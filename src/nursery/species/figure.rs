//! One figure of a species profile with where it comes from.

use serde::{Deserialize, Serialize};

use crate::words;

words! {
    /// How far a figure can be trusted.
    Flag {
        /// The figure was read in the source named.
        Seen: "seen", "visto";
        /// Recalled from the source named, not verified.
        Memory: "memory", "memoria";
        /// Common practice in the trade; no single source.
        Common: "common practice", "common", "practica comun";
        /// Our own default, not published: reasoned from what is named beside it, or chosen.
        Ours: "ours", "nuestro";
        /// Written by this nursery over the built-in figure.
        Own: "own", "propio";
    }
}

/// A value with its source and how far it can be trusted.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Figure<T> {
    /// The value, in the unit its field name ends with.
    pub value: T,
    /// The publication, "common practice", or "ours" with what it is reasoned from.
    pub source: String,
    /// How far it can be trusted.
    pub flag: Flag,
}
