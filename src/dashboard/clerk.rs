//! The clerk: holds the desk, takes requests one at a time, and answers. On a thread of its own in the program, called
//! directly in tests. A frame never waits for it.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;
use std::sync::atomic::Ordering;
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender};
use std::time::Duration;

use super::aside::Newest;
use super::aside::light::{light_ahead, light_ahead_aside};
use super::aside::year::{YearAsked, draw_year};
use super::message::{Answer, Drawn, Request};
use crate::base::text::folded;
use crate::base::{Day, EntryId};
use crate::desk::{Desk, DeskError, FoundEntries, JournalError, KeptTexts, Now, Remark};
use crate::nursery::envelope::Draft;
use crate::reckon::changes::by_cause::view_before;
use crate::reckon::effect::effects;
use crate::reckon::forecast::{ForecastBasis, Remembered, outlook_of_living_remembering};
use crate::reckon::round::round_from;
use crate::reckon::{FromThen, Picture, View, changes};
use crate::wording::Wording;

/// How often the file is asked whether another process wrote in it.
const LOOK_EVERY: Duration = Duration::from_millis(500);

/// Says what the clock says.
pub type ReadClock = Box<dyn Fn() -> Option<Now> + Send>;

/// The clerk.
pub(crate) struct Clerk {
    desk: Desk,
    kept: KeptTexts,
    clock: ReadClock,
    view: View,
    forecast_basis: ForecastBasis,
    picture: Arc<Picture>,
    seen_version: Option<i64>,
    newest_year: Newest,
    newest_light: Newest,
    remembered: Remembered,
    /// What could not be read while nobody asked, until it is told.
    untold: Option<DeskError>,
    /// Whether such trouble was told and is not over: the same is not told with every look.
    is_told: bool,
}

impl Clerk {
    /// A clerk at a desk; `clock` is read before each request.
    pub(crate) fn new(
        desk: Desk,
        kept: KeptTexts,
        view: View,
        forecast_basis: ForecastBasis,
        clock: ReadClock,
    ) -> Clerk {
        // Where another day cannot be read, today is shown, and why is told.
        let today = View { day: desk.now().today, known: None };
        let (view, picture, untold) = match desk.picture_of(view) {
            Ok(found) => (view, found, None),
            Err(fault) => (today, desk.picture(), Some(fault)),
        };
        let picture = Arc::new(picture);
        let seen_version = desk.journal().data_version().ok();
        Clerk {
            desk,
            kept,
            clock,
            view,
            forecast_basis,
            picture,
            seen_version,
            newest_year: Newest::default(),
            newest_light: Newest::default(),
            remembered: Remembered::default(),
            untold,
            is_told: false,
        }
    }

    /// What could not be read while nobody asked, once.
    pub(crate) fn take_untold(&mut self) -> Option<DeskError> {
        self.untold.take()
    }

    /// What is drawn first.
    pub(crate) fn drawn(&mut self) -> Drawn {
        let outlook = outlook_of_living_remembering(&self.picture, self.forecast_basis, &mut self.remembered);
        Drawn {
            picture: Arc::clone(&self.picture),
            round: Arc::new(round_from(&self.picture, &outlook)),
            outlook: Arc::new(outlook),
            now: self.desk.now(),
            forecast_basis: self.forecast_basis,
            read_only_file: self.desk.journal().is_read_only(),
            gone: self.desk.gone(),
        }
    }

    /// How many entries the book has.
    #[cfg(test)]
    pub(crate) fn count(&self) -> usize {
        self.desk.count()
    }

    /// A text kept beside the book; none where it was kept of a book that had come further, as after a restored backup.
    pub(crate) fn kept(&self, name: &str) -> Option<String> {
        let kept = self.kept.kept(name)?;
        let (head, text) = kept.split_once('\n')?;
        let at = head.split(' ').next()?.parse().ok()?;
        (self.head(at).as_deref() == Some(head)).then(|| text.to_string())
    }

    /// The newest entry up to a place in the file, with its place.
    fn head(&self, up_to: i64) -> Option<String> {
        let (page, place) = self.desk.journal().entries_before(up_to.saturating_add(1), 1).ok()?;
        page.first().map_or(Some("0 -".to_string()), |entry| Some(format!("{place} {}", entry.id)))
    }

    /// Takes requests until nobody asks any more. What is superseded by a later request is passed over.
    pub(crate) fn work(mut self, requests: &Receiver<Request>, answers: &Sender<Answer>) {
        loop {
            let first = match requests.recv_timeout(LOOK_EVERY) {
                Ok(request) => request,
                Err(RecvTimeoutError::Timeout) => {
                    let news = self.look_around();
                    if news.into_iter().any(|answer| answers.send(answer).is_err()) {
                        return;
                    }
                    continue;
                }
                Err(RecvTimeoutError::Disconnected) => return,
            };
            let mut waiting: Vec<Request> = std::iter::once(first).chain(requests.try_iter()).collect();
            waiting = without_superseded(waiting);
            for request in waiting {
                if let Request::Year(asked) = request {
                    self.draw_year_aside(asked, answers.clone());
                    continue;
                }
                if let Request::LightAhead(asked) = request {
                    let (picture, answers) = (Arc::clone(&self.picture), answers.clone());
                    light_ahead_aside(asked, picture, &self.newest_light, move |asked, at, month| {
                        answers.send(Answer::LightMonth(asked, at, Box::new(month))).is_ok()
                    });
                    continue;
                }
                for answer in self.serve(request) {
                    if answers.send(answer).is_err() {
                        return;
                    }
                }
            }
        }
    }

    /// What another process wrote, and what the clock did.
    pub(crate) fn look_around(&mut self) -> Vec<Answer> {
        let looked = self.look();
        if looked.is_err() {
            // It is tried again with the next look.
            self.seen_version = None;
        }
        match self.told_once(looked) {
            Ok(answer) => answer.into_iter().collect(),
            Err(fault) => fault.map(Answer::NotRead).into_iter().collect(),
        }
    }

    fn look(&mut self) -> Result<Option<Answer>, DeskError> {
        self.read_clock()?;
        let version = Some(self.desk.journal().data_version()?);
        let is_of_today = self.picture.day == self.view.day;
        if version == self.seen_version && is_of_today {
            return Ok(None);
        }
        self.seen_version = version;
        if !self.desk.refresh()? && is_of_today {
            return Ok(None);
        }
        match self.draw_anew() {
            Answer::NotRead(fault) => Err(fault),
            drawn => Ok(Some(drawn)),
        }
    }

    /// Trouble that comes with every look is told the first time; that another process is writing is none.
    fn told_once<T>(&mut self, looked: Result<T, DeskError>) -> Result<T, Option<DeskError>> {
        match looked {
            Ok(found) => {
                self.is_told = false;
                Ok(found)
            }
            Err(DeskError::Journal(JournalError::Busy)) => Err(None),
            Err(_) if self.is_told => Err(None),
            Err(fault) => {
                self.is_told = true;
                Err(Some(fault))
            }
        }
    }

    /// What the clock says; where a new day cannot be read, it is tried again.
    fn read_clock(&mut self) -> Result<(), DeskError> {
        let Some(now) = (self.clock)() else { return Ok(()) };
        let before = self.desk.now().today;
        self.desk.set_now(now)?;
        if self.view == (View { day: before, known: None }) {
            self.view.day = now.today;
        }
        Ok(())
    }

    /// Answers one request.
    pub(crate) fn serve(&mut self, request: Request) -> Vec<Answer> {
        let clock = self.read_clock();
        let mut answers = self.answers_to(request);
        if let Err(Some(fault)) = self.told_once(clock) {
            answers.push(Answer::NotRead(fault));
        }
        answers
    }

    fn answers_to(&mut self, request: Request) -> Vec<Answer> {
        match request {
            Request::Record { ticket, mut drafts, sure } => {
                drafts.iter_mut().for_each(|draft| self.desk.settle_nurse_row(draft));
                if !sure && let Some(asks) = self.asks(ticket, &drafts) {
                    return vec![asks];
                }
                let before = self.desk.count();
                match self.desk.record(drafts) {
                    Ok(recorded) => self.after_writing(before, Answer::Recorded { ticket, recorded }),
                    Err(fault) => vec![Answer::Refused { ticket, fault }],
                }
            }
            Request::Line { text, happened, who } => vec![self.line(&text, happened, &who)],
            Request::TryOut { ticket, mut drafts } => {
                drafts.iter_mut().for_each(|draft| self.desk.settle_nurse_row(draft));
                let outcome = self.desk.preview(drafts);
                let outcome =
                    outcome.map(|(after, doubts, remarks)| (effects(&self.desk.picture(), &after), doubts, remarks));
                vec![Answer::Tried { ticket, outcome }]
            }
            Request::WouldTakeBack { ticket, what } => {
                let entries = self.desk.would_undo(&what, true);
                vec![Answer::WouldTakeBack { ticket, entries }]
            }
            Request::TakeBack { ticket, what, together, who, why } => {
                let before = self.desk.count();
                match self.desk.undo(&what, together, &who, &why) {
                    Ok(taken) => self.after_writing(before, Answer::TookBack(taken)),
                    Err(fault) => vec![Answer::Refused { ticket, fault }],
                }
            }
            Request::Look(view) => {
                self.view = view;
                vec![self.draw_anew()]
            }
            Request::ForecastBasis(forecast_basis) => {
                self.forecast_basis = forecast_basis;
                vec![self.draw_anew()]
            }
            Request::Story(subject) => {
                let entries = self.desk.story_of(&subject);
                vec![entries.map_or_else(Answer::NotRead, |entries| Answer::Story(subject, entries))]
            }
            Request::Entries { search, wording, most } => {
                vec![self.entries(&search, &wording, most).map_or_else(Answer::NotRead, Answer::Entries)]
            }
            Request::News(day) => {
                let then = self.desk.as_of_then(view_before(day, &self.picture, self.desk.end_of(day)));
                vec![then.map_or_else(Answer::NotRead, |from| self.news(from))]
            }
            // Without a thread, all at once.
            Request::Year(asked) => self.year_at_once(asked),
            Request::LightAhead(asked) => {
                let mut months = Vec::new();
                light_ahead(&asked, &self.picture, (&Newest::default(), 0), &mut |at, month| {
                    months.push(Answer::LightMonth(asked.clone(), at, Box::new(month)));
                    true
                });
                months
            }
            Request::Keep { name, text } => {
                // A text that cannot be kept is no reason to stop the work: the form is still on the screen.
                let head = self.head(i64::MAX - 1).unwrap_or_default();
                let text = if text.is_empty() { text } else { format!("{head}\n{text}") };
                let _ = self.kept.keep(&name, &text);
                Vec::new()
            }
        }
    }

    /// What would be doubted of drafts, or is asked about them; none where nothing is, and where they would be refused.
    fn asks(&mut self, ticket: u64, drafts: &[Draft]) -> Option<Answer> {
        let (_, doubts, remarks) = self.desk.preview(drafts.to_vec()).ok()?;
        let asked = !doubts.is_empty() || remarks.iter().any(Remark::is_asked);
        asked.then_some(Answer::Asks { ticket, doubts, remarks })
    }

    fn year_at_once(&self, asked: YearAsked) -> Vec<Answer> {
        let from = match self.year_from(asked) {
            Ok(from) => from,
            Err(fault) => return vec![Answer::NotRead(fault)],
        };
        let mut days = Vec::new();
        draw_year(asked, from, (&Newest::default(), 0), &mut |day| {
            days.push(Answer::YearDay(asked, Box::new(day)));
            true
        });
        days
    }

    /// The book as it was on the first day of a year.
    fn year_from(&self, asked: YearAsked) -> Result<FromThen, DeskError> {
        let first = View { day: asked.from.min(self.desk.now().today), known: None };
        self.desk.as_it_was(first)
    }

    /// Draws a year on a thread of its own; one that was being drawn is given up.
    fn draw_year_aside(&mut self, asked: YearAsked, answers: Sender<Answer>) {
        let mine = self.newest_year.fetch_add(1, Ordering::SeqCst) + 1;
        let newest = Arc::clone(&self.newest_year);
        let from = match self.year_from(asked) {
            Ok(from) => from,
            Err(fault) => {
                // Where nobody listens the program is being left.
                let _ = answers.send(Answer::NotRead(fault));
                return;
            }
        };
        std::thread::spawn(move || {
            draw_year(asked, from, (&newest, mine), &mut |day| {
                answers.send(Answer::YearDay(asked, Box::new(day))).is_ok()
            });
        });
    }

    fn after_writing(&mut self, entries_before: usize, answer: Answer) -> Vec<Answer> {
        self.seen_version = self.desk.journal().data_version().ok();
        if self.desk.count() <= entries_before {
            return vec![answer];
        }
        match self.draw_anew() {
            // What was written is told first: it is in the file, whatever can be shown of it.
            unread @ Answer::NotRead(_) => vec![answer, unread],
            drawn => vec![drawn, answer],
        }
    }

    /// The book as it is now; what is shown stays as it was where it cannot be read.
    fn draw_anew(&mut self) -> Answer {
        match self.desk.picture_of(self.view) {
            Ok(picture) => {
                self.picture = Arc::new(picture);
                Answer::Drawn(self.drawn())
            }
            Err(fault) => Answer::NotRead(fault),
        }
    }

    fn news(&self, from: FromThen) -> Answer {
        let before = from.then.picture();
        let changed = changes(&before, &self.picture, &from);
        // Those of one command are named once, however many verdicts they turned.
        let together: BTreeMap<Option<&EntryId>, &[EntryId]> =
            changed.iter().map(|change| (change.entries.first(), &*change.entries)).collect();
        let ids: BTreeSet<&EntryId> = together.into_values().flatten().collect();
        let named = from.later.iter().filter(|entry| ids.contains(&entry.id)).cloned().collect();
        Answer::News(changed, Arc::new(before), named)
    }

    /// What a line says.
    fn line(&mut self, text: &str, happened: Option<Day>, who: &str) -> Answer {
        self.desk.read_line(text, happened, who).map_or_else(Answer::NotRead, Answer::Line)
    }

    /// Entries, newest first, that hold a text; as many as are wanted.
    fn entries(&self, search: &str, wording: &Wording, most: usize) -> Result<FoundEntries, DeskError> {
        let species = &self.desk.fold().site().species;
        let (wanted, today) = (folded(search), self.desk.now().today);
        self.desk.newest_entries(&|entry| wording.entry_holds(entry, &wanted, today, species), most)
    }
}

/// Of requests that only ask for a look, the last one counts.
fn without_superseded(requests: Vec<Request>) -> Vec<Request> {
    let same = |a: &Request, b: &Request| match (a, b) {
        (Request::TryOut { .. }, Request::TryOut { .. })
        | (Request::Look(_), Request::Look(_))
        | (Request::ForecastBasis(_), Request::ForecastBasis(_))
        | (Request::Story(_), Request::Story(_))
        | (Request::Entries { .. }, Request::Entries { .. })
        | (Request::News(_), Request::News(_))
        | (Request::Year(_), Request::Year(_))
        | (Request::LightAhead(_), Request::LightAhead(_)) => true,
        (Request::Keep { name, .. }, Request::Keep { name: other, .. }) => name == other,
        (
            Request::Record { .. }
            | Request::Line { .. }
            | Request::TryOut { .. }
            | Request::WouldTakeBack { .. }
            | Request::TakeBack { .. }
            | Request::Look(_)
            | Request::ForecastBasis(_)
            | Request::Story(_)
            | Request::Entries { .. }
            | Request::News(_)
            | Request::Year(_)
            | Request::LightAhead(_)
            | Request::Keep { .. },
            _,
        ) => false,
    };
    let mut kept: Vec<Request> = Vec::with_capacity(requests.len());
    for (i, request) in requests.iter().enumerate() {
        if !requests[i + 1..].iter().any(|later| same(request, later)) {
            kept.push(request.clone());
        }
    }
    kept
}
