//! The reasons of anything shown: what is needed, what is known and how, the source of the rule, the entries.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use crate::base::{EntryId, LotCode};
use crate::dashboard::act::{Act, WhyOf};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::Key;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::Sheet;
use crate::nursery::entry::subject::Subject;
use crate::page::lot::why_lot;
use crate::page::stop::{bed_in_short, why_bed_folded, why_stop};
use crate::page::why::{why_bed, why_pair, why_tray};
use crate::page::{Asked, Page};
use crate::reckon::lots::lot_outlook;
use crate::reckon::picture::TrayPicture;
use crate::reckon::round::Stop;
use crate::reckon::sowing::{SowingAsked, USUAL_SURE};

impl WhyOf {
    /// Whose entries may be named.
    pub(crate) fn subject(&self, cx: &ScreenContext<'_>) -> Option<Subject> {
        match self {
            WhyOf::About(subject) => Some(subject.clone()),
            WhyOf::Lot(lot, _) => Some(Subject::Lot(lot.clone())),
            WhyOf::Bed(bed, _) => Some(Subject::Bed(bed.clone())),
            WhyOf::Pair(tray, _) => Some(Subject::Tray(tray.clone())),
            WhyOf::Stop(id) => stop_of(id, cx).map(|stop| stop.subject.clone()),
        }
    }
}

/// The reasons.
#[derive(Clone, Debug)]
pub(crate) struct Why {
    of: WhyOf,
    from: usize,
    /// Whether the questions that are met are shown too, each with its reason.
    all: bool,
}

/// The key that shows the questions that are met, and folds them again.
const ALL_KEY: char = 'a';
/// Rows of the terminal that are not of the reasons: tabs, the question under them, the line of keys.
const LEAVES_ROWS: usize = 6;
/// A page of fewer columns does not name what is met.
const NAMES_MET: u16 = 60;

impl Why {
    /// Opens the reasons.
    pub(crate) fn new(of: WhyOf) -> Why {
        Why { of, from: 0, all: false }
    }

    /// Whether all is shown.
    pub(crate) fn says_all(&self) -> bool {
        self.all
    }

    /// Takes a key.
    pub(crate) fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Vec<Act> {
        let page = usize::from(cx.size.1).saturating_sub(LEAVES_ROWS).max(1);
        match key {
            Key::Esc | Key::Char('q' | 'y') | Key::Enter => return vec![Act::Close],
            Key::Down => self.from += 1,
            Key::Up => self.from = self.from.saturating_sub(1),
            Key::PageDown | Key::Char('.' | ' ') => self.from += page,
            Key::PageUp | Key::Char(',') => self.from = self.from.saturating_sub(page),
            Key::Home => self.from = 0,
            Key::Char(ALL_KEY) => self.turn_all(cx),
            _ => {}
        }
        self.from = self.from.min(self.sheet(cx, cx.size.0).last_start(cx.size.1.saturating_sub(LEAVES_ROWS as u16)));
        Vec::new()
    }

    /// Shows all, or folds it again. What is new is in view.
    fn turn_all(&mut self, cx: &ScreenContext<'_>) {
        let folded = self.sheet(cx, cx.size.0);
        self.all = !self.all;
        let rows = usize::from(cx.size.1).saturating_sub(LEAVES_ROWS);
        let new = self.sheet(cx, cx.size.0).first_apart(&folded);
        // As much of what was there stays above it as has room.
        self.from = if self.all && new + rows / 2 >= rows { new.saturating_sub(rows / 2) } else { 0 };
    }

    /// Draws it.
    pub(crate) fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        let sheet = self.sheet(cx, area.width);
        let body = Rect { height: area.height.saturating_sub(1), ..area };
        let left = sheet.draw(self.from, body, buffer);
        if left > 0 && area.height > 1 {
            let more = cx.wording.why_more(left as i64);
            buffer.set_stringn(area.x, area.bottom() - 1, more, usize::from(area.width), Ink::Quiet.style());
        }
    }

    fn sheet(&self, cx: &ScreenContext<'_>, width: u16) -> Sheet {
        let mut sheet = Sheet::new(width.min(100));
        let page = self.page(cx).unwrap_or_else(|| Page::of_sentence(cx.wording.why_none()));
        let page = if self.all { page } else { page.folded(&ALL_KEY.to_string(), width < NAMES_MET, cx.wording) };
        sheet.add(&page, cx.wording, &|ids| named(ids, cx));
        match &self.of {
            WhyOf::About(subject @ (Subject::Place(_) | Subject::Site)) => story(subject, cx, &mut sheet),
            WhyOf::About(Subject::Lot(_)) | WhyOf::Lot(..) | WhyOf::Stop(_) if !self.all => {}
            WhyOf::About(subject @ Subject::Lot(code)) => story_of_lot(code, subject, cx, &mut sheet),
            WhyOf::Lot(code, _) => story_of_lot(code, &Subject::Lot(code.clone()), cx, &mut sheet),
            WhyOf::Stop(id) => {
                if let Some(subject @ Subject::Lot(code)) = stop_of(id, cx).map(|stop| &stop.subject) {
                    story_of_lot(code, subject, cx, &mut sheet);
                }
            }
            WhyOf::About(Subject::Tray(_) | Subject::Bed(_)) | WhyOf::Bed(..) | WhyOf::Pair(..) => {}
        }
        sheet
    }

    /// The page that is asked for; none where nothing is known of it.
    fn page(&self, cx: &ScreenContext<'_>) -> Option<Page> {
        let picture = &cx.book.picture;
        let asked = Asked { picture, wording: cx.wording };
        match &self.of {
            WhyOf::About(Subject::Tray(code)) => picture.trays.get(code).map(|tray| page_of_tray(tray, None, cx)),
            WhyOf::About(Subject::Bed(name)) => match picture.beds.get(name) {
                // What holds a bed back for several of its species is said once.
                Some(bed) if !self.all && bed.species.len() > 1 => {
                    Some(why_bed_folded(bed, &ALL_KEY.to_string(), asked))
                }
                bed => bed.map(|bed| why_bed(bed, (None, None), asked)),
            },
            WhyOf::Bed(name, species) => picture.beds.get(name).map(|bed| why_bed(bed, (Some(species), None), asked)),
            WhyOf::About(Subject::Lot(code)) => page_of_lot(code, None, None, cx),
            WhyOf::Lot(code, plants) => page_of_lot(code, *plants, None, cx),
            // Of these there is only what was written.
            WhyOf::About(Subject::Place(_) | Subject::Site) => Some(Page::default()),
            WhyOf::Pair(tray, bed) => picture.pair(tray, bed).map(|pair| why_pair(pair, asked)),
            WhyOf::Stop(id) => stop_of(id, cx).map(|stop| page_of_stop(stop, cx)),
        }
    }
}

fn stop_of<'a>(id: &str, cx: &ScreenContext<'a>) -> Option<&'a Stop> {
    let round = &cx.book.round;
    round.stops.iter().chain(&round.can_wait).find(|stop| stop.id == id)
}

fn page_of_tray(tray: &TrayPicture, told: Option<&Stop>, cx: &ScreenContext<'_>) -> Page {
    let asked = Asked { picture: &cx.book.picture, wording: cx.wording };
    why_tray(tray, &cx.book.outlook, (&cx.book.round, told), asked)
}

fn page_of_lot(code: &LotCode, plants: Option<u32>, told: Option<&Stop>, cx: &ScreenContext<'_>) -> Option<Page> {
    let (picture, stock) = (&cx.book.picture, &cx.book.outlook.stock);
    let lot = picture.lots.get(code)?;
    let profile = lot.species.as_ref().and_then(|key| picture.site.profile(key));
    let outlook = lot_outlook(lot, profile.map(|profile| &**profile), picture.day);
    let sowing = SowingAsked::of(picture, stock, lot.species.as_ref(), Some(lot), plants, USUAL_SURE);
    let asked = Asked { picture, wording: cx.wording };
    Some(why_lot(lot, &outlook, &sowing, (&cx.book.round, told), asked))
}

/// The stop, and what it is about.
fn page_of_stop(stop: &Stop, cx: &ScreenContext<'_>) -> Page {
    let picture = &cx.book.picture;
    let asked = Asked { picture, wording: cx.wording };
    let worth = cx.book.round.worth_looking.iter().find(|worth| worth.stop == stop.id);
    let mut page = why_stop(stop, worth, asked);
    let about = match &stop.subject {
        Subject::Tray(code) => picture.trays.get(code).map(|tray| page_of_tray(tray, Some(stop), cx)),
        Subject::Bed(name) => picture.beds.get(name).map(|bed| bed_in_short(bed, stop, asked)),
        Subject::Lot(code) => page_of_lot(code, None, Some(stop), cx),
        Subject::Place(_) | Subject::Site => None,
    };
    about.into_iter().for_each(|about| page.add(about));
    page
}

/// Entries in words where they are here, else by their numbers.
fn named(ids: &[EntryId], cx: &ScreenContext<'_>) -> String {
    let story = cx.book.story.as_ref().map(|(_, entries)| entries.as_slice()).unwrap_or_default();
    let text: Vec<String> = ids
        .iter()
        .map(|id| match story.iter().find(|entry| entry.id == *id) {
            Some(entry) => format!("{} ({id})", cx.entry(entry)),
            None => id.to_string(),
        })
        .collect();
    text.join("; ")
}

/// What was written about a lot that is known.
fn story_of_lot(code: &LotCode, subject: &Subject, cx: &ScreenContext<'_>, sheet: &mut Sheet) {
    if cx.book.picture.lots.contains_key(code) {
        sheet.gap();
        story(subject, cx, sheet);
    }
}

/// What was written about something.
fn story(subject: &Subject, cx: &ScreenContext<'_>, sheet: &mut Sheet) {
    match cx.book.story_of(subject) {
        None => sheet.paragraph(&cx.wording.confirm_waiting(), Ink::Quiet),
        Some([]) => sheet.paragraph(&cx.wording.why_none(), Ink::Plain),
        Some(entries) => {
            for entry in entries.iter().rev() {
                sheet.hanging("- ", Ink::Plain, &cx.entry(entry), Ink::Plain);
            }
        }
    }
}
