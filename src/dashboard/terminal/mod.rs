//! The real terminal: takes it, passes keys and answers to `update`, draws when something happened, and gives it back.

mod events;
mod guard;
mod signals;

use ratatui::backend::CrosstermBackend;
use ratatui::crossterm::execute;
use ratatui::crossterm::terminal::{Clear, ClearType, window_size};
use ratatui::layout::Rect;
use ratatui::{Terminal, TerminalOptions, Viewport};
use std::io::{self, Stdout, stdout};
use std::path::PathBuf;
use std::sync::Arc;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;
use std::time::{Duration, Instant};

use super::act::{KeptForm, ScreenName};
use super::clerk::{Clerk, ReadClock};
use super::context::Book;
use super::form::KEPT_FORM;
use super::frame;
use super::keys::Key;
use super::look::{Ink, Look};
use super::message::{Answer, Effect, Message, Request};
use super::model::Model;
use super::screens::Screens;
use super::update::{refresh, update};
use crate::base::Day;
use crate::desk::{Desk, KeptTexts};
use crate::reckon::View;
use crate::reckon::forecast::ForecastBasis;
use crate::wording::Wording;

/// How often the size is asked for besides: some terminals never say that it changed.
const SIZE_EVERY: Duration = Duration::from_millis(300);

/// What is needed to open the dashboard.
pub struct Opening {
    /// The desk of the nursery.
    pub desk: Desk,
    /// The sentences.
    pub wording: Wording,
    /// Who writes.
    pub who: String,
    /// The folder of the settings, where half-filled forms are kept.
    pub shelf: PathBuf,
    /// The day to look at first, where it is not today.
    pub on: Option<Day>,
    /// What leads in forecasts at first.
    pub forecast_basis: ForecastBasis,
    /// Says what the clock says.
    pub clock: ReadClock,
    /// Whether colour may be used.
    pub colour: bool,
    /// Whether only ASCII may be used.
    pub ascii: bool,
    /// Whether the round is wanted as numbered prompts.
    pub plain: bool,
    /// Whether the screen is touched: taps are taken from the beginning.
    pub touched: bool,
    /// What the settings hold that cannot be, said first.
    pub settings_faults: Vec<String>,
}

/// What happens to the loop.
#[derive(Debug)]
pub(super) enum Happening {
    /// Something for the model.
    Message(Message),
    /// An end from outside.
    End(Left),
}

/// How the dashboard was left.
#[derive(Debug)]
pub(super) enum Left {
    /// By a key.
    Key,
    /// By a signal.
    #[cfg_attr(not(unix), expect(dead_code, reason = "only Unix has signals"))]
    Signal(i32),
    /// The terminal is gone.
    TerminalGone,
    /// The clerk is gone.
    ClerkGone,
}

/// Opens the dashboard and stays until it is left.
///
/// # Errors
/// The terminal cannot be taken or drawn on.
pub(crate) fn open(opening: Opening) -> io::Result<()> {
    guard::restore_on_panic();
    let (to_loop, happenings) = channel();
    signals::listen(to_loop.clone())?;
    let taken = guard::Guard::take()?;
    let size = size_now().unwrap_or((80, 24));
    let (mut model, clerk) = set_up(opening, size);
    if model.mouse {
        guard::mouse(true)?;
    }
    let desk = start_clerk(clerk, to_loop.clone());
    thread::spawn(move || events::read_keys(&to_loop));
    let mut shown = Shown::new(model.size)?;
    let left = shown.stay(&mut model, &desk, &happenings);
    // The guard gives the terminal back. Dropped, this one would tell a terminal that is gone that it is gone, and panic.
    std::mem::forget(shown);
    drop(desk.requests);
    // What was handed to the clerk is written before the program ends.
    let clerk_ended = desk.worker.join();
    drop(taken);
    if let Err(panic) = clerk_ended {
        // Told already; the program ends as a panic does.
        std::panic::resume_unwind(panic);
    }
    let left = left.or_else(|fault| if size_now().is_none() { Ok(Left::TerminalGone) } else { Err(fault) });
    match left? {
        Left::Key => Ok(()),
        Left::ClerkGone => Err(io::Error::other("the desk is gone")),
        Left::Signal(signal) => {
            signals::end_as(signal);
            Ok(())
        }
        // As a hang-up would end it.
        Left::TerminalGone => {
            signals::end_as(1);
            Ok(())
        }
    }
}

/// The model and the clerk at their beginning.
pub(super) fn set_up(opening: Opening, size: (u16, u16)) -> (Model, Clerk) {
    let kept = KeptTexts::of(&opening.shelf, opening.desk.journal().file_id(), opening.desk.journal().path());
    let view = View { day: opening.on.unwrap_or(opening.desk.now().today), known: None };
    let file = opening.desk.journal().path().display().to_string();
    let mut clerk = Clerk::new(opening.desk, kept, view, opening.forecast_basis, opening.clock);
    let mut model = Model {
        book: Book::of(clerk.drawn()),
        wording: Arc::new(opening.wording),
        look: Look::new(opening.colour, opening.ascii),
        size,
        at: ScreenName::Walk,
        screens: Screens::default(),
        layers: Vec::new(),
        notice: None,
        writing_day: None,
        read_only: false,
        mouse: opening.touched,
        pending: std::collections::BTreeMap::new(),
        kept: std::collections::BTreeMap::new(),
        next_ticket: 0,
        who: opening.who,
        file,
    };
    if let Some(form) = clerk.kept(KEPT_FORM).and_then(|text| serde_json::from_str::<KeptForm>(&text).ok()) {
        let name = model.wording.kind_name(&form.kind);
        model.say(model.wording.said_kept_form(name), Ink::Strong);
        model.kept.insert(KEPT_FORM.to_string(), form);
    }
    if !opening.settings_faults.is_empty() {
        model.say(opening.settings_faults.join(" "), Ink::Danger);
    }
    if let Some(fault) = clerk.take_untold() {
        let lines = model.wording.desk_error(&fault, &model.file, &model.book.picture.site.species);
        model.say(lines.join(" "), Ink::Danger);
    }
    for name in ScreenName::ALL {
        if let Some(text) = clerk.kept(&format!("screen_{name}")) {
            let mut screens = std::mem::take(&mut model.screens);
            screens.at_mut(name).resume(&text, &model.context());
            model.screens = screens;
        }
    }
    (model, clerk)
}

/// The clerk at work, and the way to it.
struct AtDesk {
    requests: Sender<Request>,
    worker: thread::JoinHandle<()>,
}

fn start_clerk(clerk: Clerk, to_loop: Sender<Happening>) -> AtDesk {
    let (requests, to_clerk) = channel();
    let (answers, from_clerk) = channel::<Answer>();
    let worker = thread::spawn(move || clerk.work(&to_clerk, &answers));
    thread::spawn(move || {
        for answer in from_clerk {
            if to_loop.send(Happening::Message(Message::Answer(Box::new(answer)))).is_err() {
                return;
            }
        }
        let _ = to_loop.send(Happening::End(Left::ClerkGone));
    });
    AtDesk { requests, worker }
}

/// Columns and rows now; none where the terminal is gone.
fn size_now() -> Option<(u16, u16)> {
    window_size().ok().map(|size| (size.columns, size.rows))
}

/// Columns now; none where the terminal is gone or says none.
pub(super) fn columns() -> Option<usize> {
    size_now().map(|(columns, _)| usize::from(columns)).filter(|columns| *columns > 0)
}

/// A terminal of a size; another size is another terminal.
fn terminal_of((columns, rows): (u16, u16)) -> io::Result<Terminal<CrosstermBackend<Stdout>>> {
    let viewport = Viewport::Fixed(Rect::new(0, 0, columns, rows));
    Terminal::with_options(CrosstermBackend::new(stdout()), TerminalOptions { viewport })
}

/// The terminal drawn on.
struct Shown {
    terminal: Terminal<CrosstermBackend<Stdout>>,
    sized_at: Instant,
}

impl Shown {
    fn new(size: (u16, u16)) -> io::Result<Shown> {
        Ok(Shown { terminal: terminal_of(size)?, sized_at: Instant::now() })
    }

    /// Everything again. Not by the terminal's own clearing, which asks where the cursor is: the answer would come to the
    /// thread that reads keys.
    fn anew(&mut self, size: (u16, u16)) -> io::Result<()> {
        execute!(stdout(), Clear(ClearType::All))?;
        self.terminal = terminal_of(size)?;
        Ok(())
    }

    /// The loop: waits, takes everything that happened, draws once.
    fn stay(&mut self, model: &mut Model, desk: &AtDesk, happenings: &Receiver<Happening>) -> io::Result<Left> {
        let begin = refresh(model);
        if let Some(left) = self.carry_out(model, begin, desk)? {
            return Ok(left);
        }
        self.draw(model)?;
        loop {
            let mut waiting: Vec<Happening> = Vec::new();
            match happenings.recv_timeout(SIZE_EVERY) {
                Ok(happening) => waiting.push(happening),
                Err(std::sync::mpsc::RecvTimeoutError::Timeout) => {}
                Err(std::sync::mpsc::RecvTimeoutError::Disconnected) => return Ok(Left::TerminalGone),
            }
            waiting.extend(happenings.try_iter());
            if self.sized_at.elapsed() >= SIZE_EVERY {
                self.sized_at = Instant::now();
                match size_now() {
                    None => waiting.push(Happening::End(Left::TerminalGone)),
                    Some(size) if size != model.size => {
                        waiting.push(Happening::Message(Message::Resized(size.0, size.1)))
                    }
                    Some(_) => {}
                }
            }
            if waiting.is_empty() {
                continue;
            }
            if let Some(left) = self.take_all(model, waiting, desk)? {
                return Ok(left);
            }
            self.draw(model)?;
        }
    }

    fn take_all(&mut self, model: &mut Model, all: Vec<Happening>, desk: &AtDesk) -> io::Result<Option<Left>> {
        for happening in all {
            let message = match happening {
                Happening::Message(message) => message,
                Happening::End(Left::ClerkGone) => return Ok(Some(Left::ClerkGone)),
                Happening::End(left) => return self.leave_by(model, left, desk),
            };
            let layers = model.layers.len();
            let is_key = matches!(message, Message::Key(_));
            let effects = update(model, message);
            if let Some(left) = self.carry_out(model, effects, desk)? {
                return Ok(Some(left));
            }
            // Keys typed before a question was seen do not answer it.
            let asks = matches!(model.layers.last(), Some(super::layer::Layer::Confirm(_)));
            if is_key && asks && model.layers.len() > layers {
                break;
            }
        }
        Ok(None)
    }

    /// What is typed is kept before the program is left.
    fn leave_by(&mut self, model: &mut Model, left: Left, desk: &AtDesk) -> io::Result<Option<Left>> {
        for effect in update(model, Message::Key(Key::Interrupt)) {
            if let Effect::Ask(request) = effect {
                let _ = desk.requests.send(request);
            }
        }
        Ok(Some(left))
    }

    fn carry_out(&mut self, model: &mut Model, effects: Vec<Effect>, desk: &AtDesk) -> io::Result<Option<Left>> {
        for effect in effects {
            match effect {
                Effect::Ask(request) => {
                    let _ = desk.requests.send(request);
                }
                Effect::Leave => return Ok(Some(Left::Key)),
                Effect::Suspend => {
                    guard::give_back();
                    signals::stop();
                    std::mem::forget(guard::Guard::take()?);
                    guard::mouse(model.mouse)?;
                    self.anew(model.size)?;
                }
                Effect::Redraw => self.anew(model.size)?,
                Effect::Mouse(on) => guard::mouse(on)?,
            }
        }
        Ok(None)
    }

    fn draw(&mut self, model: &Model) -> io::Result<()> {
        if model.size.0 == 0 || model.size.1 == 0 {
            return Ok(());
        }
        guard::while_taken(|| self.terminal.draw(|shown| frame::draw(model, shown.buffer_mut())).map(|_| ()))
    }
}
