//! Why an entry cannot be read. Sentences are made in `wording`.

/// What is wrong with the value of a field.
#[derive(Clone, Debug, PartialEq)]
pub enum Problem {
    /// The entry cannot be without it.
    Missing,
    /// The entry cannot be without these either; all of them, the field itself first.
    MissingAll(Vec<&'static str>),
    /// No such field here; the nearest known names.
    Unknown(Vec<String>),
    /// No such field here, and none like it: every field there is.
    UnknownOf(Vec<String>),
    /// No such field here, but in the records of a field: how that is written.
    UnknownInside {
        /// The field that holds the records.
        outer: &'static str,
        /// The field in them that was meant.
        inner: &'static str,
        /// Whether it is a list of records.
        list: bool,
    },
    /// Not a number.
    NotANumber(String),
    /// A number with its unit or other letters behind it; the field's unit where it has one.
    LettersBehind {
        /// What was written.
        written: String,
        /// The unit the field is in.
        unit: Option<&'static str>,
    },
    /// A number that must be whole.
    NotWhole(String),
    /// A number that cannot be below zero.
    BelowZero(String),
    /// A number above the most that is kept.
    TooMany {
        /// Most value allowed.
        most: f64,
    },
    /// A number outside its ends.
    OutsideEnds {
        /// Least value allowed.
        least: f64,
        /// Most value allowed.
        most: f64,
    },
    /// Not true or false.
    NotTrueOrFalse,
    /// Not a text.
    NotText,
    /// Nothing written.
    Empty,
    /// More characters or items than allowed.
    TooLong(usize),
    /// Control, bidirectional or invisible characters, shown.
    Unseen(String),
    /// Not a day.
    NotADay(String),
    /// Not a day of the year.
    NotAMonthDay(String),
    /// Not a time of day.
    NotAClock(String),
    /// Not an entry.
    NotAnEntry(String),
    /// Not a place in a bed.
    NotASpot(String),
    /// Not one of the words.
    NotTheWord {
        /// What was written.
        written: String,
        /// The words that are read.
        known: Vec<&'static str>,
    },
    /// Not a list.
    NotAList,
    /// Not a record.
    NotARecord,
    /// One of these fields, or sets of fields, must be there.
    OneOf(&'static str),
    /// Of these fields only one can be there, and more are.
    OnlyOneOf(&'static str),
    /// A list by months that has not twelve of them.
    NotTwelve(usize),
    /// A tray moved on into itself.
    SameTray(String),
    /// Written twice.
    Twice,
    /// Fields that do not make an entry together, although each can be read.
    Unreadable,
}

/// A field and what is wrong with it.
#[derive(Clone, Debug, PartialEq)]
pub struct FieldFault {
    /// The field's name.
    pub field: String,
    /// What is wrong.
    pub problem: Problem,
}

/// Why a line is not an entry.
#[derive(Clone, Debug, PartialEq)]
pub enum EntryFault {
    /// Not a JSON object.
    NotJson(String),
    /// No kind was written.
    NoKind,
    /// No such kind; the nearest known ones.
    UnknownKind(String, Vec<String>),
    /// A field is wrong.
    Field {
        /// The kind of entry.
        kind: String,
        /// The field.
        fault: FieldFault,
    },
}
