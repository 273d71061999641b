//! Drafts of a large import: kept small, each unfolded when its turn comes.

use std::collections::HashSet;
use std::sync::Arc;

use crate::base::{Clock, Day};
use crate::nursery::envelope::{Draft, canonical};

/// Drafts in the order of their lines, each with the number of its line.
#[derive(Default)]
pub(super) struct Packed {
    drafts: Vec<One>,
    texts: HashSet<Arc<str>>,
}

/// A draft whose body is text: a map of values takes ten times as much room.
struct One {
    line: usize,
    happened: Day,
    clock: Option<Clock>,
    who: Arc<str>,
    kind: Arc<str>,
    body: Box<str>,
}

impl Packed {
    /// Takes the draft of a line.
    pub fn push(&mut self, line: usize, draft: Draft) {
        let one = self.pack(line, draft);
        self.drafts.push(one);
    }

    fn pack(&mut self, line: usize, draft: Draft) -> One {
        let body = canonical(&serde_json::Value::Object(draft.body)).into_boxed_str();
        let (who, kind) = (self.once(&draft.who), self.once(&draft.kind));
        One { line, happened: draft.happened, clock: draft.clock, who, kind, body }
    }

    fn once(&mut self, text: &str) -> Arc<str> {
        if let Some(known) = self.texts.get(text) {
            return known.clone();
        }
        let new: Arc<str> = text.into();
        self.texts.insert(new.clone());
        new
    }

    /// How many there are.
    pub fn len(&self) -> usize {
        self.drafts.len()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.drafts.is_empty()
    }

    /// The line of a draft.
    pub fn line(&self, index: usize) -> usize {
        self.drafts.get(index).map_or(0, |one| one.line)
    }

    /// The lines, in order.
    pub fn lines(&self) -> Vec<usize> {
        self.drafts.iter().map(|one| one.line).collect()
    }

    /// The drafts, in order, unfolded one after the other.
    pub fn iter(&self) -> impl ExactSizeIterator<Item = Draft> {
        self.drafts.iter().map(One::draft)
    }

    /// Lets a draft be changed.
    pub fn change<T>(&mut self, index: usize, how: impl FnOnce(&mut Draft) -> T) -> Option<T> {
        let one = self.drafts.get(index)?;
        let (line, mut draft) = (one.line, one.draft());
        let said = how(&mut draft);
        let changed = self.pack(line, draft);
        if let Some(one) = self.drafts.get_mut(index) {
            *one = changed;
        }
        Some(said)
    }
}

impl One {
    fn draft(&self) -> Draft {
        Draft {
            happened: self.happened,
            clock: self.clock,
            who: self.who.to_string(),
            kind: self.kind.to_string(),
            // It was written by `canonical`, which writes nothing that cannot be read.
            body: serde_json::from_str(&self.body).unwrap_or_default(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn what_is_packed_is_unfolded_the_same_and_can_be_changed() {
        let draft = Draft {
            happened: Day::from_ymd(2026, 3, 14).unwrap(),
            clock: Clock::from_hm(7, 40),
            who: "mara".into(),
            kind: "measured".into(),
            body: json!({"tray":"t","plants":[{"height_cm":0.1,"collar_mm":1e21}],"text":"ñ\"\u{7f}"})
                .as_object()
                .unwrap()
                .clone(),
        };
        let mut packed = Packed::default();
        packed.push(3, draft.clone());
        packed.push(5, draft.clone());
        assert_eq!(packed.iter().collect::<Vec<_>>(), [draft.clone(), draft.clone()]);
        assert_eq!((packed.len(), packed.line(1), packed.lines()), (2, 5, vec![3, 5]));
        packed.change(1, |draft| draft.body.insert("tray".into(), json!("u")));
        let changed: Vec<Draft> = packed.iter().collect();
        assert_eq!((&changed[0], &changed[1].body["tray"]), (&draft, &json!("u")));
    }
}
