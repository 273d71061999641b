//! Why a line is not written.

#[cfg(test)]
use super::lexicon::lexicon;

/// Why a line is not written, or what is missing in it.
#[derive(Clone, Debug, PartialEq)]
pub enum Why {
    /// The line says that it was not done; the word that says so.
    NotDone(String),
    /// It is still to be done.
    Intent(String),
    /// It is of a coming day.
    Coming(String),
    /// The writer is not sure.
    Unsure(String),
    /// It asks; what it asks of.
    Question(Vec<String>),
    /// The number is missing.
    NoNumber,
    /// Plants are whole.
    NotWhole(f64),
    /// Two numbers where one was to be.
    Range(f64, f64),
    /// A name nobody knows, and the nearest ones.
    UnknownName(String, Vec<String>),
    /// Which tray?
    NoTray,
    /// To which place?
    NoPlace,
    /// Of which lot?
    NoLot,
    /// Treated with what?
    NoRemedy,
    /// A number without its unit, or with one that is not read.
    NoUnit,
    /// One number for several trays.
    EachOrAll(Vec<String>),
    /// No such day; as typed.
    BadDay(String),
    /// A day nobody knows.
    FarOpen(String),
    /// More lost than half of what stands there.
    OverHalf(u32),
    /// More than there is.
    MoreThanThere(u32),
    /// The tray is in use.
    InUse(String),
    /// The lowest is above the highest.
    Crossed(f64, f64),
    /// A name of two things.
    Both(String),
    /// It can mean several things.
    Several,
    /// Nothing fits; the words that were not read.
    NoReading(Vec<String>),
}

impl Why {
    /// The sentence in English and in Spanish, with what it speaks of.
    #[cfg(test)]
    pub fn said(&self) -> [String; 2] {
        let (key, about) = self.parts();
        let both = lexicon().said(key);
        let of = |text: &str| if about.is_empty() { format!("{text}.") } else { format!("{text}: {about}.") };
        [of(both[0]), of(both[1])]
    }

    #[cfg(test)]
    fn parts(&self) -> (&'static str, String) {
        match self {
            Why::NotDone(word) => ("not_done", word.clone()),
            Why::Intent(word) => ("intent", word.clone()),
            Why::Coming(word) => ("coming", word.clone()),
            Why::Unsure(word) => ("unsure", word.clone()),
            Why::Question(names) => ("question", names.join(", ")),
            Why::NoNumber => ("no_number", String::new()),
            Why::NotWhole(value) => ("not_whole", value.to_string()),
            Why::Range(low, high) => ("unsure", format!("{low} - {high}")),
            Why::UnknownName(name, near) => {
                ("unknown_name", [std::slice::from_ref(name), near.as_slice()].concat().join(", "))
            }
            Why::NoTray => ("no_tray", String::new()),
            Why::NoPlace => ("no_place", String::new()),
            Why::NoLot => ("no_lot", String::new()),
            Why::NoRemedy => ("no_remedy", String::new()),
            Why::NoUnit => ("no_unit", String::new()),
            Why::EachOrAll(trays) => ("each_or_all", trays.join(", ")),
            Why::BadDay(day) => ("bad_day", day.clone()),
            Why::FarOpen(day) => ("far_open", day.clone()),
            Why::OverHalf(standing) => ("over_half", standing.to_string()),
            Why::MoreThanThere(there) => ("more_than_there", there.to_string()),
            Why::InUse(name) => ("in_use", name.clone()),
            Why::Crossed(low, high) => ("crossed", format!("{low}, {high}")),
            Why::Both(name) => ("both", name.clone()),
            Why::Several => ("several", String::new()),
            Why::NoReading(words) => ("no_reading", words.join(", ")),
        }
    }
}
