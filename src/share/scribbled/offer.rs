//! The line that says just one reading, ready to copy.

use super::{EntryDraft, Offer, written};
use serde_json::Value;

fn plain(value: Option<&Value>) -> String {
    match value {
        Some(Value::String(text)) => text.clone(),
        Some(other) => other.to_string(),
        None => String::new(),
    }
}

fn quoted(value: &Value) -> String {
    let text = plain(Some(value));
    if text.contains(' ') && matches!(value, Value::String(_)) { format!("\"{text}\"") } else { text }
}

/// The line of one entry: short where it has a short form that says all of it, else its kind and fields.
fn line(draft: &EntryDraft) -> String {
    let field = |key: &str| plain(draft.fields.get(key));
    let has_only = |keys: &[&str]| {
        draft.fields.keys().all(|key| keys.contains(&key.as_str()))
            && keys.iter().all(|key| draft.fields.contains_key(*key))
    };
    let day = draft.happened.map(written);
    let short = match draft.kind {
        "counted" if has_only(&["tray", "standing"]) => {
            Some(format!("{} {} standing", field("tray"), field("standing")))
        }
        "lost" if has_only(&["tray", "count"]) => Some(format!("{} lost {}", field("tray"), field("count"))),
        "carried" if has_only(&["tray", "place"]) => Some(format!("{} moved to {}", field("tray"), field("place"))),
        "outplanted" if has_only(&["tray", "bed", "count"]) => {
            Some(format!("{} @ {} {}", field("tray"), field("bed"), field("count")))
        }
        "watered" if has_only(&["tray"]) => Some(format!("{} watered", field("tray"))),
        "weather" if has_only(&["rain_mm"]) => Some(format!("rain {} mm", field("rain_mm"))),
        _ => None,
    };
    match (short, day) {
        (Some(short), Some(day)) => format!("{day} {short}"),
        (Some(short), None) => short,
        (None, day) => {
            let mut pieces = vec![draft.kind.to_string()];
            pieces.extend(draft.fields.iter().map(|(key, value)| format!("{key}={}", quoted(value))));
            pieces.extend(day.map(|day| format!("happened={day}")));
            pieces.join(" ")
        }
    }
}

/// The offer of some entries.
pub(super) fn offer(drafts: Vec<EntryDraft>) -> Offer {
    let line = drafts.iter().map(line).collect::<Vec<_>>().join("\n");
    Offer { line, drafts }
}
