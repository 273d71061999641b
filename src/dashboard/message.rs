//! What happens to the screen, what the screen asks for, and what is answered.

use std::sync::Arc;

use super::aside::light::{LightAsked, MonthAnswer};
use super::aside::year::YearAsked;
use super::keys::Key;
use crate::base::Day;
use crate::desk::{DeskError, FoundEntries, LineFaults, Now, Recorded, Remark, TakenBack, Withdraws};
use crate::nursery::entry::Entry;
use crate::nursery::entry::subject::Subject;
use crate::nursery::envelope::Draft;
use crate::reckon::effect::Effect as Outcome;
use crate::reckon::forecast::{ForecastBasis, Outlook};
use crate::reckon::picture::Doubt;
use crate::reckon::round::Round;
use crate::reckon::season::SeasonDay;
use crate::reckon::{Change, Picture, View};
use crate::wording::Wording;

/// What happened.
#[derive(Debug)]
pub(crate) enum Message {
    /// A key.
    Key(Key),
    /// Text that came at once: pasted, scanned, or typed by a tool bar.
    Text(String),
    /// The terminal has another size.
    Resized(u16, u16),
    /// A finger or a mouse at a column and row.
    Tap(u16, u16),
    /// The clerk answered.
    Answer(Box<Answer>),
}

/// What the outside shall do.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Effect {
    /// Something for the clerk.
    Ask(Request),
    /// Leave.
    Leave,
    /// To the shell and back.
    Suspend,
    /// Everything again.
    Redraw,
    /// The mouse on or off.
    Mouse(bool),
}

/// What the clerk is asked.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Request {
    /// To write drafts, all or none.
    Record {
        /// Names the answer.
        ticket: u64,
        /// What to write.
        drafts: Vec<Draft>,
        /// Whether a person said yes to what would be doubted or asked.
        sure: bool,
    },
    /// What a line in a person's own words says; nothing is written.
    Line {
        /// The line.
        text: String,
        /// The day it is of where it names none.
        happened: Option<Day>,
        /// Who writes.
        who: String,
    },
    /// What drafts would do, with nothing written.
    TryOut {
        /// Names the answer.
        ticket: u64,
        /// What would be written.
        drafts: Vec<Draft>,
    },
    /// What would be taken back.
    WouldTakeBack {
        /// Names the answer.
        ticket: u64,
        /// What.
        what: Withdraws,
    },
    /// To take back.
    TakeBack {
        /// Names the answer.
        ticket: u64,
        /// What.
        what: Withdraws,
        /// Whether what rests on it goes too.
        together: bool,
        /// Who takes it back.
        who: String,
        /// Why.
        why: String,
    },
    /// To look at a day.
    Look(View),
    /// What leads in forecasts.
    ForecastBasis(ForecastBasis),
    /// The entries about something.
    Story(Subject),
    /// Entries, newest first, that hold a text.
    Entries {
        /// What they hold, in the sentence that says them, the writer's name or their number; empty holds for all.
        search: String,
        /// The sentences.
        wording: Arc<Wording>,
        /// The most that are wanted.
        most: usize,
    },
    /// What changed since the end of a day.
    News(Day),
    /// What trays and beds are on the days of a year.
    Year(YearAsked),
    /// The light of a bed through the coming months.
    LightAhead(LightAsked),
    /// To keep a text on disk under a name; empty forgets it.
    Keep {
        /// The name.
        name: String,
        /// The text.
        text: String,
    },
}

impl Request {
    /// Looks at a day, with all that is known of it.
    pub(crate) fn look_at(day: Day) -> Request {
        Request::Look(View { day, known: None })
    }

    /// Keeps a text under a name.
    pub(crate) fn keep(name: &str, text: String) -> Request {
        Request::Keep { name: name.to_string(), text }
    }
}

/// What is drawn of the book.
#[derive(Clone, Debug)]
pub(crate) struct Drawn {
    /// The Picture of the day looked at.
    pub(crate) picture: Arc<Picture>,
    /// Its round.
    pub(crate) round: Arc<Round>,
    /// What is expected of all that lives.
    pub(crate) outlook: Arc<Outlook>,
    /// What the clock says.
    pub(crate) now: Now,
    /// What leads in forecasts.
    pub(crate) forecast_basis: ForecastBasis,
    /// Whether the file can only be read.
    pub(crate) read_only_file: bool,
    /// Entries that were saved here and are gone.
    pub(crate) gone: u64,
}

/// What would be otherwise, what would be doubted, and what there is to ask or tell.
pub(crate) type TriedOut = (Vec<Outcome>, Vec<Doubt>, Vec<Remark>);

/// What the clerk answers.
#[derive(Debug)]
pub(crate) enum Answer {
    /// The book was drawn again.
    Drawn(Drawn),
    /// It is in the file.
    Recorded {
        /// Which request.
        ticket: u64,
        /// What was written.
        recorded: Recorded,
    },
    /// Nothing was written yet: what would be doubted, and what is asked.
    Asks {
        /// Which request.
        ticket: u64,
        /// What would be doubted.
        doubts: Vec<Doubt>,
        /// What is asked.
        remarks: Vec<Remark>,
    },
    /// What it would do.
    Tried {
        /// Which request.
        ticket: u64,
        /// What it would do.
        outcome: Result<TriedOut, DeskError>,
    },
    /// What would be taken back.
    WouldTakeBack {
        /// Which request.
        ticket: u64,
        /// The entries.
        entries: Result<Vec<Arc<Entry>>, DeskError>,
    },
    /// It was taken back.
    TookBack(TakenBack),
    /// Nothing was written.
    Refused {
        /// Which request.
        ticket: u64,
        /// Why.
        fault: DeskError,
    },
    /// The entries about something, oldest first.
    Story(Subject, Vec<Arc<Entry>>),
    /// What a line says, or why it is not taken.
    Line(Result<Vec<Draft>, LineFaults>),
    /// Entries that were looked for.
    Entries(FoundEntries),
    /// A day of the year that was asked for.
    YearDay(YearAsked, Box<SeasonDay>),
    /// A month of the light that was asked for, this one being 0.
    LightMonth(LightAsked, usize, Box<MonthAnswer>),
    /// What was asked for could not be read.
    NotRead(DeskError),
    /// What changed, the Picture before, and the entries that changed it.
    News(Vec<Change>, Arc<Picture>, Vec<Arc<Entry>>),
}
