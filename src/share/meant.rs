//! An entry that may be meant by a line.

use serde_json::{Map, Value};

use crate::base::Day;
use crate::nursery::envelope::Draft;

/// An entry that may be meant by a line: settled where nothing is missing.
#[derive(Clone, Debug, PartialEq)]
pub struct Meant {
    /// The kind of entry.
    pub kind: &'static str,
    /// Its fields.
    pub fields: Map<String, Value>,
    /// The day it happened.
    pub happened: Day,
    /// Whether that is another day than that of the sheet.
    pub names_its_day: bool,
    /// Fields it must have and the line does not say.
    pub missing: Vec<&'static str>,
}

impl Meant {
    /// The draft of it.
    pub(crate) fn draft(&self, who: &str) -> Draft {
        let mut body = self.fields.clone();
        let clock = body.remove("clock").and_then(|clock| clock.as_str()?.parse().ok());
        Draft { happened: self.happened, clock, who: who.to_string(), kind: self.kind.to_string(), body }
    }
}
