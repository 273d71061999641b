//! One JSON object, written as it is reckoned: of a long list only the part at hand is in memory.

use serde::Serialize;
use serde_json::Value;
use std::io::{self, Write};

use crate::base::cores::on_every_core;

/// Items of a list that are made before they are written. Ours.
const BLOCK: usize = 256;

/// An object being written, key by key in the order in which they are said.
#[derive(Debug)]
pub(crate) struct ObjectOut<W: Write> {
    out: W,
    begun: bool,
}

impl<W: Write> ObjectOut<W> {
    /// An object of which nothing is written yet.
    pub(crate) fn new(out: W) -> ObjectOut<W> {
        ObjectOut { out, begun: false }
    }

    fn key(&mut self, key: &str) -> io::Result<()> {
        let before = if self.begun { "," } else { "{" };
        self.begun = true;
        write!(self.out, "{before}{}:", Value::from(key))
    }

    /// A key with its value.
    pub(crate) fn field(&mut self, key: &str, value: impl Serialize) -> io::Result<()> {
        self.key(key)?;
        serde_json::to_writer(&mut self.out, &value).map_err(io::Error::from)
    }

    /// A key with a list; its items are made on every core and written in their order.
    pub(crate) fn list<T: Sync>(
        &mut self,
        key: &str,
        items: &[T],
        made: impl Fn(&T) -> Value + Sync,
    ) -> io::Result<()> {
        self.key(key)?;
        let mut before = "[";
        for block in items.chunks(BLOCK) {
            for text in on_every_core(block, |item| made(item).to_string()) {
                write!(self.out, "{before}{text}")?;
                before = ",";
            }
        }
        write!(self.out, "{}", if before == "[" { "[]" } else { "]" })
    }

    /// The end of the object and its line.
    pub(crate) fn end(mut self) -> io::Result<()> {
        writeln!(self.out, "{}", if self.begun { "}" } else { "{}" })?;
        self.out.flush()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn what_is_written_is_one_object_with_its_lists_in_order() {
        let mut text = Vec::new();
        let mut out = ObjectOut::new(&mut text);
        out.field("version", 1).unwrap();
        out.list("none", &[] as &[u8], |_| Value::Null).unwrap();
        let many: Vec<usize> = (0..3 * BLOCK).collect();
        out.list("many", &many, |number| json!({"n\"": number})).unwrap();
        out.end().unwrap();
        let read: Value = serde_json::from_slice(&text).unwrap();
        let expected: Vec<Value> = many.iter().map(|number| json!({"n\"": number})).collect();
        assert_eq!(read, json!({"version": 1, "none": [], "many": expected}));
        assert!(text.starts_with(b"{\"version\":1,\"none\":[],") && text.ends_with(b"}\n"));
    }

    #[test]
    fn an_object_without_keys_is_one_too() {
        let mut text = Vec::new();
        ObjectOut::new(&mut text).end().unwrap();
        assert_eq!(text, b"{}\n");
    }
}
