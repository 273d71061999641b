//! `paths`: where things are kept, and what is set where.

use serde_json::{Map, Value, json};
use std::path::Path;

use crate::base::columns::{left_aligned, width_of};
use crate::base::letters::Letters;
use crate::cli::answer::Ending;
use crate::cli::run::{Exit, Run};
use crate::settings::NAMES;

/// Shows every place and every setting.
pub(crate) fn run(run: &Run) -> Result<Ending, Exit> {
    let folders = &run.around.folders;
    let (file, sample) = (folders.settings_file(), folders.sample_nursery());
    let places: [(&str, String, &Path); 5] = [
        ("settings", run.wording.paths_settings(), &file),
        ("notes", run.wording.paths_notes(), &folders.settings),
        ("data", run.wording.paths_data(), &folders.data),
        ("nursery", run.wording.paths_nursery(), &run.file),
        ("sample", run.wording.paths_sample(), &sample),
    ];
    let set = NAMES.map(|name| (name, setting(run, name)));
    if run.everywhere.json {
        let places = places.iter().map(|(key, _, path)| {
            let place = json!({"path": path.display().to_string(), "there": path.exists()});
            (key.to_string(), place)
        });
        let set = set.iter().map(|(name, (value, from))| {
            (name.to_string(), json!({"value": value, "from": from.map_or(Value::Null, |from| from.key().into())}))
        });
        let (places, set) = (places.collect::<Map<_, _>>(), set.collect::<Map<_, _>>());
        return run.answer_json(&json!({"version": 1, "paths": places, "settings": set}));
    }
    let room = places.iter().map(|(_, label, _)| width_of(label)).max().unwrap_or(0);
    let mut text = String::new();
    for (_, label, path) in &places {
        let missing = if path.exists() { String::new() } else { format!("  ({})", run.wording.paths_not_there()) };
        text.push_str(&format!("{}  {}{missing}\n", left_aligned(label, room), path.display()));
    }
    text.push_str(&format!("\n{}\n", run.wording.paths_set()));
    let room = NAMES.iter().map(|name| width_of(name)).max().unwrap_or(0);
    for (name, (value, from)) in &set {
        let from = from.map_or_else(|| run.wording.paths_usual(), |from| from.said(run));
        let value = value.as_deref().unwrap_or("-");
        text.push_str(&format!("  {}  {value}  ({from})\n", left_aligned(name, room)));
    }
    run.answer(&text)
}

/// Where a value comes from.
#[derive(Clone, Copy)]
enum From {
    Option,
    Environment,
    Settings,
    System,
}

impl From {
    fn key(self) -> &'static str {
        match self {
            From::Option => "option",
            From::Environment => "environment",
            From::Settings => "settings",
            From::System => "system",
        }
    }

    fn said(self, run: &Run) -> String {
        match self {
            From::Option => run.wording.paths_from_option(),
            From::Environment => run.wording.paths_from_environment(),
            From::Settings => run.wording.paths_from_settings(),
            From::System => run.wording.paths_from_system(),
        }
    }
}

/// The value of one of [`NAMES`] that holds for this run, and where it was said; none where nobody set it.
fn setting(run: &Run, name: &str) -> (Option<String>, Option<From>) {
    let (typed, set, around) = (&run.everywhere, &run.settings, &run.around);
    let path = |path: &Path| path.display().to_string();
    let yes = |is: bool| is.then(|| "true".to_string());
    let colour = |always: bool| if always { "always" } else { "never" }.to_string();
    let by_order = match name {
        "nursery" => [
            (typed.nursery.as_deref().map(path), From::Option),
            (around.nursery.as_deref().map(path), From::Environment),
            (set.nursery.as_deref().map(path), From::Settings),
            (None, From::System),
        ],
        "who" => [
            (typed.who.clone(), From::Option),
            (None, From::Environment),
            (set.who.clone(), From::Settings),
            (around.user.clone(), From::System),
        ],
        "lang" => [
            (typed.lang.clone(), From::Option),
            (None, From::Environment),
            (set.lang.clone(), From::Settings),
            (around.lang.clone(), From::System),
        ],
        "handbook" => [
            (yes(typed.handbook), From::Option),
            (None, From::Environment),
            (yes(set.handbook), From::Settings),
            (None, From::System),
        ],
        "color" => [
            (typed.color.clone(), From::Option),
            (None, From::Environment),
            (set.color.map(colour), From::Settings),
            (None, From::System),
        ],
        "keys" => [
            (None, From::Option),
            (None, From::Environment),
            (moved_letters(&set.keys), From::Settings),
            (None, From::System),
        ],
        _ => [
            (yes(typed.ascii), From::Option),
            (None, From::Environment),
            (yes(set.ascii), From::Settings),
            (None, From::System),
        ],
    };
    by_order.into_iter().find_map(|(value, from)| Some((Some(value?), Some(from)))).unwrap_or((None, None))
}

/// Letters that were moved, as they are written in the settings; none where all stand where they stood.
fn moved_letters(letters: &Letters) -> Option<String> {
    let moved: Vec<String> = letters.all_moved().map(|(work, pressed)| format!("{work} = \"{pressed}\"")).collect();
    (!moved.is_empty()).then(|| format!("{{ {} }}", moved.join(", ")))
}
