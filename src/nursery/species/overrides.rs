//! A nursery's own figures over the built-in ones.

use serde::de::DeserializeOwned;
use serde_json::Value;

use super::figure::{Figure, Flag};

/// Reads a figure from a bare value or from `{"value", "source", "flag"}`; null takes the figure away.
pub(super) fn read_figure<T: DeserializeOwned>(value: &Value, source: &str) -> Result<Option<Figure<T>>, String> {
    match value {
        Value::Null => Ok(None),
        Value::Object(map) if map.contains_key("value") => {
            let text = |name: &str| map.get(name).and_then(Value::as_str);
            let inner = map.get("value").cloned().unwrap_or(Value::Null);
            let value = serde_json::from_value(inner).map_err(|fault| fault.to_string())?;
            let flag = match text("flag") {
                None => Flag::Own,
                Some(word) => crate::base::word::Word::read(word).ok_or_else(|| format!("unknown flag '{word}'"))?,
            };
            Ok(Some(Figure { value, source: text("source").unwrap_or(source).to_string(), flag }))
        }
        bare => {
            let value = serde_json::from_value(bare.clone()).map_err(|fault| fault.to_string())?;
            Ok(Some(Figure { value, source: source.to_string(), flag: Flag::Own }))
        }
    }
}
