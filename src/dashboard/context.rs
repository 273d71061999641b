//! What screens, forms and layers are handed when they take a key or draw: the book and its sentences.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::ops::Deref;
use std::sync::Arc;

use super::aside::light::{LightAsked, MonthAnswer};
use super::aside::year::YearAsked;
use super::look::{Ink, Look};
use super::message::Drawn;
use crate::base::{Day, SpeciesKey, TrayCode};
use crate::desk::FoundEntries;
use crate::nursery::entry::Entry;
use crate::nursery::entry::subject::Subject;
use crate::reckon::forecast::{Band, band};
use crate::reckon::picture::TrayPicture;
use crate::reckon::season::SeasonDay;
use crate::wording::Wording;

/// What the book says, as far as it was asked for.
#[derive(Clone, Debug)]
pub(crate) struct Book {
    /// What was drawn last; read as if it were the book's own.
    drawn: Drawn,
    /// The curve that was drawn last: a picture of it is reckoned once.
    drawn_band: RefCell<Option<(TrayCode, u64, Arc<Band>)>>,
    /// Counts every drawing: another number, another Picture.
    pub(crate) generation: u64,
    /// Entries that were looked for.
    pub(crate) found: Option<FoundEntries>,
    /// The days of a year, as far as they are drawn.
    pub(crate) year: Option<(YearAsked, BTreeMap<Day, SeasonDay>)>,
    /// The light of a bed by months, as far as it is reckoned.
    pub(crate) light: Option<(LightAsked, BTreeMap<usize, MonthAnswer>)>,
    /// The entries about one thing, once they were asked for.
    pub(crate) story: Option<(Subject, Vec<Arc<Entry>>)>,
}

impl Deref for Book {
    type Target = Drawn;

    fn deref(&self) -> &Drawn {
        &self.drawn
    }
}

impl Book {
    /// What was drawn first.
    pub(crate) fn of(drawn: Drawn) -> Book {
        Book { drawn, drawn_band: RefCell::default(), generation: 0, found: None, year: None, light: None, story: None }
    }

    /// What was drawn now; what was asked for of the book before is asked for again.
    pub(crate) fn take(&mut self, drawn: Drawn) {
        self.drawn = drawn;
        self.generation += 1;
        (self.found, self.year, self.light, self.story) = (None, None, None, None);
    }

    /// A month of the light of a bed is reckoned; months of another bed are let go.
    pub(crate) fn take_light(&mut self, asked: LightAsked, at: usize, month: MonthAnswer) {
        let (_, months) = match self.light.take_if(|(of, _)| *of == asked) {
            Some(same) => self.light.insert(same),
            None => self.light.insert((asked, BTreeMap::new())),
        };
        months.insert(at, month);
    }

    /// The curve of a tray's sowing with its range, up to the day it is drawn to; none where nothing is forecast of it.
    pub(crate) fn band_of(&self, tray: &TrayPicture) -> Option<Arc<Band>> {
        let told = self.outlook.trays.get(&tray.code)?;
        if let Some((code, generation, band)) = &*self.drawn_band.borrow()
            && *code == tray.code
            && *generation == self.generation
        {
            return Some(Arc::clone(band));
        }
        let band = Arc::new(band(&tray.story, told, told.last_due.max(told.stop_waiting)));
        *self.drawn_band.borrow_mut() = Some((tray.code.clone(), self.generation, Arc::clone(&band)));
        Some(band)
    }

    /// The entries about something, where they are here; ask with `Request::Story`.
    pub(crate) fn story_of(&self, subject: &Subject) -> Option<&[Arc<Entry>]> {
        self.story.as_ref().filter(|(of, _)| of == subject).map(|(_, entries)| entries.as_slice())
    }
}

/// A line of messages.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Notice {
    /// What it says.
    pub(crate) text: String,
    /// How it looks.
    pub(crate) ink: Ink,
}

/// What screens and layers are handed when they take a key or draw.
#[derive(Clone, Copy)]
pub(crate) struct ScreenContext<'a> {
    /// The book.
    pub(crate) book: &'a Book,
    /// The sentences.
    pub(crate) wording: &'a Wording,
    /// The look, where a drawing differs in ASCII.
    pub(crate) look: Look,
    /// The day for what is written, where it is not today.
    pub(crate) writing_day: Option<Day>,
    /// Whether nothing can be written.
    pub(crate) read_only: bool,
    /// Columns and rows of the terminal.
    pub(crate) size: (u16, u16),
    /// Who writes.
    pub(crate) who: &'a str,
}

/// From this width on a list stands beside its detail.
pub(crate) const WIDE_FROM: u16 = 100;

impl ScreenContext<'_> {
    /// Whether a list stands beside its detail.
    pub(crate) fn is_wide(&self) -> bool {
        self.size.0 >= WIDE_FROM
    }

    /// A species as people call it.
    pub(crate) fn species(&self, key: Option<&SpeciesKey>) -> String {
        key.map_or_else(
            || self.wording.species_unknown(),
            |key| self.wording.species_of(key, &self.book.picture.site.species),
        )
    }

    /// An entry in one sentence.
    pub(crate) fn entry(&self, entry: &Entry) -> String {
        let species = &self.book.picture.site.species;
        self.wording.entry_sentence_beside(entry, self.book.now.today, species)
    }

    /// The day that the Picture shows.
    pub(crate) fn day(&self) -> Day {
        self.book.picture.day
    }
}
