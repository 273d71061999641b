//! Going to a tray, a bed, a lot or a place by typing or scanning its code.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::heading::heading_and_line;
use crate::base::name_search::nearest;
use crate::base::text::folded;
use crate::dashboard::act::Act;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::Key;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Column, Row, Sheet, Table, Typed};
use crate::nursery::entry::subject::Subject;
use crate::reckon::picture::Stage;
use crate::reckon::seed::{LotState, life, lot_state};
use crate::reckon::stock::LotStory;

/// The most lines shown.
const MOST: usize = 40;

/// Finding.
#[derive(Clone, Debug, Default)]
pub(crate) struct Find {
    typed: Typed,
    at: usize,
}

impl Find {
    /// What fits: the name itself first, then those that begin so, then those that hold it.
    fn found(&self, cx: &ScreenContext<'_>) -> Vec<(Subject, String)> {
        let wanted = folded(&self.typed.text());
        let mut fits: Vec<(u8, usize, (Subject, String))> = everything(cx)
            .into_iter()
            .enumerate()
            .filter_map(|(i, (subject, name, about))| {
                let (name, also) = (folded(&name), folded(&about));
                let rank = match () {
                    () if name == wanted => 0,
                    () if name.starts_with(&wanted) => 1,
                    () if name.contains(&wanted) => 2,
                    () if also.contains(&wanted) => 3,
                    () => return None,
                };
                Some((rank, i, (subject, about)))
            })
            .collect();
        // What is finished comes after what lives, unless it is named whole.
        let finished = |subject: &Subject| match subject {
            Subject::Tray(code) => cx.book.picture.trays.get(code).is_some_and(|tray| tray.stage == Stage::Spent),
            Subject::Lot(code) => cx.book.picture.lots.get(code).is_some_and(|lot| lot_finished(lot, cx).is_some()),
            Subject::Bed(_) | Subject::Place(_) | Subject::Site => false,
        };
        fits.sort_by_key(|(rank, i, (subject, _))| (*rank > 0, finished(subject), *rank, *i));
        fits.into_iter().map(|(_, _, found)| found).take(MOST).collect()
    }

    /// Takes a key.
    pub(crate) fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Vec<Act> {
        match key {
            Key::Esc => return vec![Act::Close],
            Key::Up => self.at = self.at.saturating_sub(1),
            Key::Down | Key::Tab => self.at = (self.at + 1).min(self.found(cx).len().saturating_sub(1)),
            Key::Enter => return self.go(cx),
            other => {
                self.typed.press(other);
                self.at = 0;
            }
        }
        Vec::new()
    }

    fn go(&self, cx: &ScreenContext<'_>) -> Vec<Act> {
        if let Some((subject, _)) = self.found(cx).into_iter().nth(self.at) {
            return vec![Act::Close, Act::Go(subject)];
        }
        let all = everything(cx);
        let written = self.typed.text();
        let near = nearest(&written, all.iter().map(|(_, name, _)| name.as_str()));
        let message = cx.wording.nearest_after(cx.wording.said_not_found(&written), &near);
        vec![Act::Say(message)]
    }

    /// Takes text that came at once.
    pub(crate) fn text(&mut self, text: &str, cx: &ScreenContext<'_>) -> Vec<Act> {
        let whole = text.ends_with('\n') || text.ends_with('\r');
        self.typed.insert(text.trim());
        self.at = 0;
        if whole { self.go(cx) } else { Vec::new() }
    }

    /// Draws it.
    pub(crate) fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        let rest = heading_and_line(&cx.wording.find_title(), &self.typed, area, buffer);
        let found = self.found(cx);
        if found.is_empty() {
            let mut page = Sheet::new(rest.width);
            page.paragraph(&cx.wording.find_none(), Ink::Plain);
            page.draw(0, rest, buffer);
            return;
        }
        let rows = found
            .into_iter()
            .map(|(subject, about)| Row::Cells(vec![(name_of(&subject), Ink::Strong), (about, Ink::Plain)]))
            .collect();
        let columns = vec![Column::words("", 0, 24), Column::words("", 1, 60)];
        Table { columns, rows, chosen: Some(self.at) }.draw(rest, buffer);
    }
}

fn name_of(subject: &Subject) -> String {
    match subject {
        Subject::Tray(code) => code.to_string(),
        Subject::Lot(code) => code.to_string(),
        Subject::Bed(name) => name.to_string(),
        Subject::Place(name) => name.to_string(),
        Subject::Site => String::new(),
    }
}

/// How a lot is finished, where it is: dead, or used up.
fn lot_finished(lot: &LotStory, cx: &ScreenContext<'_>) -> Option<LotState> {
    let profile = lot.species.as_ref().and_then(|key| cx.book.picture.site.profile(key)).map(|profile| &**profile);
    let life = profile.and_then(|profile| life(lot, profile));
    let state = lot_state(lot, profile, life.as_ref(), cx.day());
    matches!(state, LotState::Dead | LotState::UsedUp).then_some(state)
}

/// Everything that can be gone to: its name, and what it is.
fn everything(cx: &ScreenContext<'_>) -> Vec<(Subject, String, String)> {
    let (picture, wording) = (&cx.book.picture, cx.wording);
    let mut all = Vec::new();
    for tray in picture.trays.values() {
        let place = tray.place.as_ref().map_or_else(|| wording.round_no_place(), ToString::to_string);
        let about = wording.find_is_tray(cx.species(tray.species.as_ref()), place);
        let spent = tray.stage == Stage::Spent;
        let about = if spent { format!("{about} · {}", wording.stage_name(tray.stage)) } else { about };
        all.push((Subject::Tray(tray.code.clone()), tray.code.to_string(), about));
    }
    for bed in picture.beds.values() {
        all.push((Subject::Bed(bed.name.clone()), bed.name.to_string(), wording.find_is_bed(&bed.field)));
    }
    for lot in picture.lots.values() {
        let about = wording.find_is_lot(cx.species(lot.species.as_ref()));
        let finished = lot_finished(lot, cx).map(|state| wording.lot_state_name(state));
        let about = finished.map_or(about.clone(), |state| format!("{about} · {state}"));
        all.push((Subject::Lot(lot.code.clone()), lot.code.to_string(), about));
    }
    for place in picture.site.places.keys() {
        all.push((Subject::Place(place.clone()), place.to_string(), wording.find_is_place()));
    }
    all
}
