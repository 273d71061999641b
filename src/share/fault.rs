//! What is wrong with a line, a pair or a row that came from outside, and where.

use super::meant::Meant;
use super::scribbled::Why;
use crate::base::{Day, DeviceId, EntryId, SpeciesKey};
use crate::nursery::entry::fault::{EntryFault, Problem};

/// The most faults that are listed one by one; all are counted. More than this nobody reads.
pub const MOST_FAULTS_LISTED: usize = 1000;

/// What is wrong with a workbook, or with the sheet of it that is asked for.
#[derive(Clone, Debug, PartialEq)]
pub enum WorkbookFault {
    /// A workbook stands where text is read.
    NotHere,
    /// It cannot be read, or holds more than a person writes.
    Unread,
    /// A cell stands so far from the others that the sheet would be larger than any table; its name.
    FarCell(String),
    /// It has no sheet of this name; those it has.
    NoSuchSheet {
        /// The name asked for.
        wanted: String,
        /// Its sheets.
        there: Vec<String>,
    },
    /// A sheet is named of a file that is none of several sheets.
    NoneInText,
}

/// What is wrong.
#[derive(Clone, Debug, PartialEq)]
pub enum Reason {
    /// The line is longer than this and was not read.
    LineTooLong {
        /// The most that is read, bytes.
        most_bytes: usize,
    },
    /// The line has no end within reason; nothing behind it was read.
    LineWithoutEnd,
    /// Not UTF-8 from this byte of the line on.
    NotUtf8 {
        /// Byte in the line, from 1.
        byte: usize,
    },
    /// Not JSON from the column on.
    NotJson,
    /// JSON that ends too early.
    JsonCutShort,
    /// Lists in lists, deeper than is read.
    TooDeep,
    /// A number too large to hold.
    NumberTooLarge,
    /// JSON, but no record in braces.
    NotARecord,
    /// The same name twice in one record.
    NameTwice,
    /// A time of day under `at` and under `clock`.
    AtAndClock,
    /// A control, bidirectional or invisible character.
    Unseen {
        /// Its place in the text, in characters from 1.
        place: usize,
        /// The text, with the character shown as `\u{..}`.
        shown: String,
        /// Whether it stands in the name of the field and not in its value.
        in_name: bool,
    },
    /// The kind or a field of the body is wrong.
    Entry(Box<EntryFault>),
    /// A line with an `id` and without the rest of its envelope: what is missing.
    IdAlone(Vec<&'static str>),
    /// The day, the time, the person or another part of the envelope is wrong.
    Envelope(Problem),
    /// A day that has not come.
    ComingDay(Day),
    /// A day before the first that is read.
    TooLongAgo {
        /// What was written.
        happened: Day,
        /// The first that is read.
        first: Day,
    },
    /// Not a moment written as RFC 3339.
    NotAMoment(String),
    /// Not a hash of 64 hexadecimal digits.
    NotAHash(String),
    /// The content does not have the hash that stands with it: it was changed after it was written.
    WrongHash(EntryId),
    /// A line with an identity that does not fit those of its device that are here.
    Chain(ChainFault),
    /// No `=` between a name and its value.
    NoEqualsSign(String),
    /// A quotation mark that is not closed.
    QuoteOpen,
    /// A bracket or brace that is not closed.
    BracketOpen,
    /// Letters right behind a closed quotation mark or bracket, without a blank.
    NoBlankBehind,
    /// Not a count of days before today, as `-30`, `0` or `-30/-28`.
    NotDaysBefore(String),
    /// Recorded on a day before it happened.
    RecordedBefore,
    /// The line ends before the day, the person and the kind are written.
    LineCutShort,
    /// A workbook of a spreadsheet program, not a sheet saved as text.
    Workbook(WorkbookFault),
    /// The sheet is longer than this and was not read.
    SheetTooLong {
        /// The most that is read, bytes.
        most_bytes: usize,
    },
    /// A byte that means nothing in the encoding of the sheet.
    NotInEncoding {
        /// The byte in the file, from 1.
        byte: usize,
    },
    /// Neither text nor a workbook.
    NoSheet {
        /// Whether it is a database, as the file of a nursery is.
        is_database: bool,
    },
    /// The sheet has no row with the names of its columns.
    NoNames,
    /// More columns than are read.
    TooManyColumns(usize),
    /// A column holds something and has no name.
    ColumnWithoutName,
    /// The row has more cells than there are columns.
    TooManyCells {
        /// How many columns there are.
        columns: usize,
    },
    /// Letters behind the closing quotation mark of a cell.
    LettersBehindQuote,
    /// A day that is one only when day and month are read the other way round.
    DayInOtherOrder(String),
    /// Not a day as people write one.
    NotAHandDay(String),
    /// A month and a number that may be a day of it or its year.
    DayOrYear(String),
    /// A day that may be one of two: the one before today, and today or a coming one.
    WhichDay {
        /// What was written.
        written: String,
        /// The earlier one.
        first: Day,
        /// The later one.
        second: Day,
    },
    /// A number in words.
    NumberInWords {
        /// What was written.
        written: String,
        /// The number.
        figures: u32,
    },
    /// The sheet has names of columns and no row under them.
    NoRows,
    /// No column holds what every row needs.
    NoColumn {
        /// Its name in English and in Spanish.
        name: [&'static str; 2],
        /// The columns of the sheet as they are written.
        seen: Vec<String>,
    },
    /// The first row does not name the columns.
    NoHeader {
        /// The names that have to stand there, in English and in Spanish.
        example: [&'static str; 2],
        /// What stands there.
        seen: Vec<String>,
    },
    /// A tray in which no plant stands.
    EmptyTray,
    /// A bag that holds nothing, or less; as it is written.
    NoVolume(String),
    /// How many stand in a tray is said to be not known.
    CountNotKnown(String),
    /// Plants in no bag, of which nobody wrote how they stand.
    NoContainer(String),
    /// A place or a kind of container that is new and called nearly as one of the book.
    NewName {
        /// What was written.
        written: String,
        /// The nearest of the book.
        nearest: Vec<String>,
    },
    /// A tray or bed that the book has already.
    InTheBook(String),
    /// Every tray or bed of the sheet is in the book already: how many.
    AllInTheBook(usize),
    /// A part of a short line, by the field it fills, is wrong.
    Said {
        /// The field.
        what: String,
        /// What is wrong with it.
        problem: Box<Problem>,
    },
    /// A bed in which several species stand: which one is not said.
    WhichSpecies(Vec<SpeciesKey>),
    /// A task that is not due and of which nothing is known; the nearest.
    UnknownTask {
        /// What was written.
        written: String,
        /// The nearest.
        nearest: Vec<String>,
    },
    /// No line says anything.
    NoLines,
    /// Two columns mean the same; the other one as it is written.
    ColumnsMeanTheSame(String),
    /// The same code or name stands in an earlier row.
    SameAsLine {
        /// What is written.
        written: String,
        /// The line of the earlier row.
        line: usize,
    },
    /// A name nobody knows.
    UnknownName {
        /// What was written.
        written: String,
        /// The nearest known names.
        nearest: Vec<String>,
    },
    /// Several plants are called so; the one most people mean leads.
    SeveralPlants {
        /// What was written.
        written: String,
        /// The plants.
        plants: Vec<SpeciesKey>,
    },
    /// Not an age: days, or a number with days, weeks, months or years.
    NotAnAge(String),
    /// Not a spacing as `2x2`.
    NotASpacing(String),
    /// Not as many numbers as there are species in the row.
    NotOneForEach {
        /// How many species.
        species: usize,
        /// How many numbers.
        numbers: usize,
    },
    /// A line in a person's own words that is not written as it is.
    Words {
        /// Why.
        why: Vec<Why>,
        /// What may be meant, each with the entries that it would write.
        meant: Vec<Vec<Meant>>,
    },
    /// A short line of a paper sheet that says nothing known.
    NotUnderstood(String),
    /// More lines than are read.
    TooManyLines(usize),
}

/// Why a line with an identity does not fit those of its device that are here.
#[derive(Clone, Debug, PartialEq)]
pub enum ChainFault {
    /// Another entry of this name is here already.
    Fork(EntryId),
    /// It follows on another entry than the one that is here.
    FollowsAnother(EntryId),
    /// Entries before it are missing.
    Missing {
        /// The device.
        device: DeviceId,
        /// The first that is missing.
        from: u64,
        /// The last.
        to: u64,
    },
}

/// A fault on its way out, before it knows its line.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Fault {
    pub column: Option<usize>,
    pub field: Option<String>,
    pub reason: Reason,
}

impl Fault {
    pub fn bare(reason: Reason) -> Fault {
        Fault { column: None, field: None, reason }
    }

    pub fn on(field: &str, reason: Reason) -> Fault {
        Fault { column: None, field: Some(field.to_string()), reason }
    }

    pub fn at(column: usize, reason: Reason) -> Fault {
        Fault { column: Some(column), field: None, reason }
    }

    pub fn in_line(self, line: usize) -> LineFault {
        LineFault { line, column: self.column, field: self.field, reason: self.reason }
    }
}

impl From<EntryFault> for Fault {
    fn from(fault: EntryFault) -> Fault {
        let field = match &fault {
            EntryFault::Field { fault, .. } => Some(fault.field.clone()),
            EntryFault::NoKind | EntryFault::UnknownKind(..) => Some("kind".to_string()),
            EntryFault::NotJson(_) => None,
        };
        Fault { column: None, field, reason: Reason::Entry(Box::new(fault)) }
    }
}

/// A fault in a line of a file.
#[derive(Clone, Debug, PartialEq)]
pub struct LineFault {
    /// The line, from 1; blank lines count.
    pub line: usize,
    /// The column in characters, from 1, where known; of a sheet, the number of the sheet's column.
    pub column: Option<usize>,
    /// The field, where known (`plants[2].height_cm`).
    pub field: Option<String>,
    /// What is wrong.
    pub reason: Reason,
}

/// All faults of a file: the first of them listed, all counted.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LineFaults {
    /// The first [`MOST_FAULTS_LISTED`].
    pub listed: Vec<LineFault>,
    /// How many there are.
    pub count: usize,
}

impl LineFaults {
    /// Adds a fault.
    pub fn note(&mut self, fault: LineFault) {
        self.count += 1;
        if self.listed.len() < MOST_FAULTS_LISTED {
            self.listed.push(fault);
        }
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.count == 0
    }

    /// What was read where nothing is wrong, else the faults.
    pub fn or<T>(self, read: T) -> Result<T, LineFaults> {
        if self.is_empty() { Ok(read) } else { Err(self) }
    }
}

/// Why a file of lines was not read.
#[derive(Debug)]
pub enum ReadFault {
    /// The file could not be read to its end.
    Io(std::io::Error),
    /// Lines are wrong.
    Lines(LineFaults),
}

/// A fault in `key=value` pairs.
#[derive(Clone, Debug, PartialEq)]
pub struct PairFault {
    /// The pair, from 1; none where a pair is missing or the kind is wrong.
    pub pair: Option<usize>,
    /// The column in characters, from 1, where one text was split into pairs.
    pub column: Option<usize>,
    /// The field, where known.
    pub field: Option<String>,
    /// What is wrong.
    pub reason: Reason,
}

impl PairFault {
    pub(super) fn new(pair: Option<usize>, fault: Fault) -> PairFault {
        PairFault { pair, column: fault.column, field: fault.field, reason: fault.reason }
    }
}
