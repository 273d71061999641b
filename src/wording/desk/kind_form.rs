//! How an entry is written whole, field by field.

use crate::nursery::entry::shape::{Field, Shape};
use crate::wording::Wording;

impl Wording {
    /// `counted tray=... standing=N [dead=N]`: each field with what it may hold, those that may be left out in brackets.
    pub(crate) fn kind_form(&self, kind: &str, fields: &[Field]) -> String {
        let shown: Vec<String> = fields
            .iter()
            .map(|field| {
                let pair = format!("{}={}", self.field_of_kind_typed(kind, field.name), self.may_hold(&field.shape));
                if field.required { pair } else { format!("[{pair}]") }
            })
            .collect();
        format!("{} {}", self.kind_typed(kind), shown.join(" "))
    }

    /// The same without what may be left out.
    pub(crate) fn least_form(&self, kind: &str, fields: &[Field]) -> String {
        let must = fields.iter().filter(|field| field.required);
        let shown: Vec<String> = must
            .map(|field| format!("{}={}", self.field_of_kind_typed(kind, field.name), self.may_hold(&field.shape)))
            .collect();
        format!("{} {}", self.kind_typed(kind), shown.join(" "))
    }

    fn may_hold(&self, shape: &Shape) -> String {
        match shape {
            Shape::Word(words) => {
                words.iter().map(|spellings| self.word_typed(spellings)).collect::<Vec<_>>().join("|")
            }
            Shape::Count => "N".to_string(),
            Shape::Number { .. } => self.value_number(),
            Shape::Flag => self.value_flag(),
            Shape::Day => "2026-03-14".to_string(),
            Shape::MonthDay => "03-14".to_string(),
            Shape::Clock => "07:40".to_string(),
            Shape::List(_) => "[...]".to_string(),
            Shape::Record(_) | Shape::Open => "{...}".to_string(),
            Shape::Spot => "2.7".to_string(),
            Shape::Entry => self.value_entry(),
            Shape::Code(_) | Shape::Species | Shape::Text => "...".to_string(),
        }
    }
}
