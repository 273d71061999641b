//! What screens, forms and layers ask of the model: which form, which reasons, which screen.

use serde::{Deserialize, Serialize};

use super::message::Request;
use crate::base::{BedName, Day, LotCode, SpeciesKey, TrayCode};
use crate::desk::Withdraws;
use crate::nursery::entry::kind_of_entry;
use crate::nursery::entry::subject::Subject;
use crate::nursery::envelope::Draft;
use crate::words;

words! {
    /// The seven screens, in the order of their digits.
    ScreenName {
        /// Today's round.
        Walk: "walk";
        /// Trays.
        Trays: "trays";
        /// Beds.
        Beds: "beds";
        /// Which tray to which bed.
        GoingOut: "going_out";
        /// Seed lots.
        Seed: "seed";
        /// The year.
        Season: "season";
        /// Everything written.
        Journal: "journal";
    }
}

impl ScreenName {
    /// All of them, in order.
    pub(crate) const ALL: [ScreenName; 7] = [
        ScreenName::Walk,
        ScreenName::Trays,
        ScreenName::Beds,
        ScreenName::GoingOut,
        ScreenName::Seed,
        ScreenName::Season,
        ScreenName::Journal,
    ];
}

/// What a screen or a layer asks of the model.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Act {
    /// Opens a form.
    Form(FormFor),
    /// Opens a form where it was left.
    TakeUp(KeptForm),
    /// Opens a form with what a line says of it, and the keys where something is missing.
    Fill(KeptForm),
    /// Opens the picker of everything that can be written, about something where it is known.
    Kinds,
    /// Reads a line in a person's own words.
    Line(String),
    /// Opens the reasons.
    Why(WhyOf),
    /// Goes to where something is shown.
    Go(Subject),
    /// Another screen.
    Screen(ScreenName),
    /// Writes drafts without a form, with the sentence that says what is written.
    Write(Vec<Draft>),
    /// Asks before taking back.
    TakeBack(Withdraws),
    /// The day for what is written; none is today.
    WriteOn(Option<Day>),
    /// Says something in the line of messages.
    Say(String),
    /// Asks for entries that hold a text, so many at most; the model adds the sentences in which they are said.
    Entries(String, usize),
    /// Asks what changed.
    News,
    /// Another option.
    Switch(Switch),
    /// Closes the layer that says so.
    Close,
    /// Asks the clerk.
    Ask(Request),
    /// The form that says so is written.
    Submit,
    /// Leaves the program.
    Leave,
}

/// What can be switched.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Switch {
    /// The language.
    Lang,
    /// High contrast.
    Contrast,
    /// Only ASCII.
    Ascii,
    /// Reading only.
    ReadOnly,
    /// The mouse.
    Mouse,
    /// The handbook alone, without what this nursery learned.
    Handbook,
}

/// What a form has to do with a stop of the round.
#[derive(Clone, PartialEq, Eq, Debug, Default, Serialize, Deserialize)]
#[serde(from = "String", into = "String")]
pub(crate) enum AtStop {
    /// Nothing.
    #[default]
    Nowhere,
    /// It does the task of the stop with this id.
    Task(String),
    /// It is written at the stop with this id and does not do its task.
    Beside(String),
}

impl AtStop {
    /// Before the id of a stop beside whose task a form is, where it is kept on disk.
    const BESIDE: char = '+';

    /// The id of the stop.
    pub(crate) fn id(&self) -> Option<&str> {
        match self {
            AtStop::Nowhere => None,
            AtStop::Task(id) | AtStop::Beside(id) => Some(id),
        }
    }
}

impl From<String> for AtStop {
    fn from(kept: String) -> AtStop {
        match kept.strip_prefix(AtStop::BESIDE) {
            Some(id) => AtStop::Beside(id.to_string()),
            None if kept.is_empty() => AtStop::Nowhere,
            None => AtStop::Task(kept),
        }
    }
}

impl From<AtStop> for String {
    fn from(stop: AtStop) -> String {
        match stop {
            AtStop::Nowhere => String::new(),
            AtStop::Task(id) => id,
            AtStop::Beside(id) => format!("{}{id}", AtStop::BESIDE),
        }
    }
}

/// Which form to open, and what is known already.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub(crate) struct FormFor {
    /// The kind of entry.
    pub(crate) kind: String,
    /// Fields that are known, by name.
    pub(crate) preset: Vec<(String, String)>,
    /// The field to begin with, where it is not the first that is missing.
    pub(crate) begin_at: Option<String>,
    /// The stop of the round at which it is opened: the round hears of it.
    pub(crate) stop: AtStop,
}

impl FormFor {
    /// A form of a kind about something.
    pub(crate) fn about(kind: &str, subject: Option<&Subject>) -> FormFor {
        let mut asked = FormFor { kind: kind.to_string(), ..FormFor::default() };
        let Some(known) = kind_of_entry(kind) else { return asked };
        // A tray that an entry only mentions is not what it is about.
        let is_tray = matches!(subject, Some(Subject::Tray(_)));
        let has = |name: &str| {
            known.fields.iter().any(|field| field.name == name) && (!is_tray || known.facts.about.takes(name))
        };
        let (names, value): (&[&str], String) = match subject {
            Some(Subject::Tray(code)) => (&["tray", "from"], code.to_string()),
            Some(Subject::Lot(code)) => (&["lot"], code.to_string()),
            Some(Subject::Bed(name)) => (&["bed"], name.to_string()),
            Some(Subject::Place(name)) => (&["place"], name.to_string()),
            Some(Subject::Site) | None => (&[], String::new()),
        };
        if kind == "noted" {
            if !value.is_empty() {
                asked.preset.push(("about".to_string(), value));
            }
        } else if let Some(name) = names.iter().find(|name| has(name)) {
            // What "from" means differs: only a move comes from a tray.
            if *name != "from" || kind == "moved_on" {
                asked.preset.push(((*name).to_string(), value));
            }
        }
        asked
    }

    /// The same with a field known.
    pub(crate) fn with(mut self, name: &str, value: impl ToString) -> FormFor {
        self.preset.push((name.to_string(), value.to_string()));
        self
    }

    /// The same with the keys in a field at first.
    pub(crate) fn beginning_at(mut self, name: &str) -> FormFor {
        self.begin_at = Some(name.to_string());
        self
    }

    /// The same for the task of a stop, or beside it.
    pub(crate) fn at_stop(mut self, stop: AtStop) -> FormFor {
        self.stop = stop;
        self
    }
}

/// A half-filled form as it is kept on disk.
#[derive(Clone, PartialEq, Eq, Debug, Serialize, Deserialize)]
pub(crate) struct KeptForm {
    /// The kind of entry.
    pub(crate) kind: String,
    /// What was typed, by field.
    pub(crate) typed: Vec<(String, String)>,
    /// The day it is of, as typed.
    #[serde(default)]
    pub(crate) day: String,
    /// The stop it was opened from.
    #[serde(default)]
    pub(crate) stop: AtStop,
    /// The field that had the keys.
    #[serde(default)]
    pub(crate) at: Option<String>,
}

/// What the reasons are asked of.
#[derive(Clone, PartialEq, Debug)]
pub(crate) enum WhyOf {
    /// A tray or a bed, a lot or a place.
    About(Subject),
    /// A lot, and how many of it to sow for so many plants.
    Lot(LotCode, Option<u32>),
    /// A bed for one species.
    Bed(BedName, SpeciesKey),
    /// A tray for a bed.
    Pair(TrayCode, BedName),
    /// A stop of the round, by its id.
    Stop(String),
}

#[cfg(test)]
mod tests {
    use super::AtStop;

    #[test]
    fn a_stop_is_kept_on_disk_as_before() {
        for kept in ["", "count:cof-021", "+count:cof-021"] {
            let stop: AtStop = serde_json::from_value(serde_json::json!(kept)).unwrap();
            assert_eq!(serde_json::to_value(&stop).unwrap(), kept);
        }
        assert_eq!(AtStop::from("+a".to_string()), AtStop::Beside("a".to_string()));
    }
}
