//! The screen Going out: which tray to which bed, the loading list, and what becomes ready in the coming weeks.

mod asking;
mod items;
mod keys;
mod loading;
mod side;
#[cfg(test)]
mod tests;
mod words;

use std::sync::Arc;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use crate::base::{BedName, Day, SpeciesKey, TrayCode};
use crate::dashboard::act::{Act, WhyOf};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::{Key, KeyAction, KeyLine, hinted, known};
use crate::dashboard::look::Ink;
use crate::dashboard::message::Request;
use crate::dashboard::parts::Typed;
use crate::dashboard::screens::screen::Screen;
use crate::nursery::entry::subject::Subject;
use crate::reckon::loading::{LoadLine, left_to_load};
use items::{Items, Offered};

/// The name under which the loading list is kept on disk.
const KEPT: &str = "screen_going_out";
/// The columns of the list where its side stands beside it, in hundredths of the width.
const LIST_SHARE: u16 = 58;
/// The columns between.
const BETWEEN: u16 = 3;
/// More plants than any list takes; a guard against a slip of the finger. Ours.
const MOST_PLANTS: u32 = 99_999;

/// What is chosen.
#[derive(Clone, PartialEq, Eq, Debug)]
enum Chosen {
    /// A tray for a bed.
    Pair(TrayCode, BedName),
    /// A tray.
    Tray(TrayCode),
    /// A bed for a species.
    Bed(BedName, SpeciesKey),
}

/// Which part is shown.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
enum Part {
    /// Trays before beds.
    #[default]
    Pairs,
    /// The loading list.
    Loading,
    /// The coming weeks.
    Coming,
}

impl Part {
    fn next(self) -> Part {
        match self {
            Part::Pairs => Part::Loading,
            Part::Loading => Part::Coming,
            Part::Coming => Part::Pairs,
        }
    }
}

/// Lines handed to the clerk: how often such a planting stood in the book before, so that it is seen when they are in it.
#[derive(Clone, Debug)]
struct Writing {
    day: Day,
    before: Vec<(LoadLine, usize)>,
}

/// The screen.
#[derive(Debug, Default)]
pub(crate) struct GoingOut {
    part: Part,
    chosen: Option<Chosen>,
    /// How many, for the pair that is chosen and not on the list.
    number: Option<u32>,
    /// The open field for a number.
    field: Option<Typed>,
    /// The loading list.
    lines: Vec<LoadLine>,
    /// Whether it is asked before the list is written, and from which line on it is read.
    asking: Option<usize>,
    /// The pair of which it was said that more has no room: the next `+` puts it on all the same.
    warned: Option<(TrayCode, BedName)>,
    writing: Option<Writing>,
    /// What was offered when the book was last drawn.
    offered: Option<Arc<Offered>>,
}

impl GoingOut {
    /// What is offered; reckoned again where the book was drawn again.
    fn offered(&self, cx: &ScreenContext<'_>) -> Arc<Offered> {
        let known = self.offered.as_ref().filter(|offered| offered.generation == cx.book.generation);
        known.map_or_else(|| Arc::new(Offered::now(cx)), Arc::clone)
    }

    fn pair(&self) -> Option<(&TrayCode, &BedName)> {
        match &self.chosen {
            Some(Chosen::Pair(tray, bed)) => Some((tray, bed)),
            Some(Chosen::Tray(_) | Chosen::Bed(..)) | None => None,
        }
    }

    fn listed(&self, tray: &TrayCode, bed: &BedName) -> Option<u32> {
        self.lines.iter().find(|line| line.tray == *tray && line.bed == *bed).map(|line| line.plants)
    }

    /// How many of the chosen pair: as on the list, as typed, else what is left.
    fn plants(&self, cx: &ScreenContext<'_>) -> Option<u32> {
        let (tray, bed) = self.pair()?;
        let left = || left_to_load(&cx.book.picture, &self.lines, tray, bed);
        Some(self.listed(tray, bed).or(self.number).unwrap_or_else(left))
    }

    fn choose(&mut self, chosen: Option<Chosen>) {
        if self.chosen != chosen {
            (self.number, self.warned) = (None, None);
        }
        self.chosen = chosen;
    }

    fn draw_items(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        let draw = |items: &Items<'_>, buffer: &mut Buffer| items::draw(items, self.chosen.as_ref(), cx, area, buffer);
        match self.part {
            Part::Pairs => {
                let offered = self.offered(cx);
                draw(&items::pairs(&offered, &self.lines, cx, area.width), buffer);
            }
            Part::Loading => draw(&items::loading(&self.lines, cx, area.width), buffer),
            Part::Coming => draw(&items::coming(cx, area.width), buffer),
        }
    }

    fn choices(&self, cx: &ScreenContext<'_>) -> Vec<Chosen> {
        match self.part {
            Part::Pairs => self.offered(cx).in_order(&self.lines, cx),
            Part::Loading | Part::Coming => items::choices(self.part, &self.lines, cx),
        }
    }

    /// Chooses what is there where what was chosen is gone.
    fn settle_choice(&mut self, cx: &ScreenContext<'_>) {
        self.offered = Some(self.offered(cx));
        let choices = self.choices(cx);
        if self.chosen.as_ref().is_some_and(|chosen| choices.contains(chosen)) {
            return;
        }
        let same_tray = |choice: &&Chosen| match (*choice, &self.chosen) {
            (Chosen::Pair(tray, _), Some(Chosen::Pair(was, _) | Chosen::Tray(was))) => tray == was,
            _ => false,
        };
        let chosen = choices.iter().find(same_tray).or(choices.first()).cloned();
        self.choose(chosen);
    }

    fn keep(&self) -> Act {
        Act::Ask(Request::keep(KEPT, loading::to_text(&self.lines)))
    }
}

/// Where the list and its side stand beside each other.
fn split(area: Rect) -> (Rect, Rect) {
    let list = area.width * LIST_SHARE / 100;
    let side = Rect { x: area.x + list + BETWEEN, width: area.width - list - BETWEEN, ..area };
    (Rect { width: list, ..area }, side)
}

impl Screen for GoingOut {
    fn keys(&self, _cx: &ScreenContext<'_>) -> Vec<KeyLine> {
        if self.asking.is_some() {
            return vec![hinted("w", KeyAction::WriteList)];
        }
        let mut keys = Vec::new();
        let listed = !self.lines.is_empty();
        match self.part {
            Part::Pairs => keys.push(hinted("o", KeyAction::Load)),
            Part::Loading | Part::Coming => {}
        }
        if listed {
            keys.push(hinted("c", KeyAction::ConfirmLoad));
        }
        keys.push(hinted("v", KeyAction::NextPart));
        if self.part != Part::Coming {
            keys.extend([hinted("+ -", KeyAction::MoreOrFewer), known("Space", KeyAction::HowMany)]);
        }
        if listed && self.part != Part::Coming {
            keys.push(hinted("r", KeyAction::Unload));
        }
        keys
    }

    fn signs(&self, cx: &ScreenContext<'_>) -> Vec<(String, String)> {
        let wording = cx.wording;
        let all = [
            ("●", wording.sign_fits_today()),
            ("x", wording.sign_held_back()),
            ("?", wording.sign_not_known()),
            ("-", wording.sign_no_place()),
            ("!", wording.sign_take_care()),
            ("i", wording.sign_tray_to_come()),
            ("_", wording.sign_bed_to_come()),
        ];
        all.map(|(sign, means)| (sign.to_string(), means)).to_vec()
    }

    fn answers(&self, cx: &ScreenContext<'_>) -> String {
        cx.wording.answers_going_out()
    }

    fn goes_back(&self, _cx: &ScreenContext<'_>) -> bool {
        self.part != Part::Pairs || self.asking.is_some() || self.field.is_some()
    }

    fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        self.settle_choice(cx);
        if self.asking.is_some() {
            return self.press_asking(key, cx);
        }
        if self.field.is_some() {
            return Some(self.press_field(key, cx));
        }
        self.press_list(key, cx)
    }

    fn text(&mut self, text: &str, _cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        // Text is never a command: while it is asked, nothing is typed.
        if self.asking.is_some() {
            return Some(Vec::new());
        }
        let field = self.field.as_mut()?;
        field.insert(&text.chars().filter(char::is_ascii_digit).collect::<String>());
        Some(Vec::new())
    }

    fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        if let Some(from) = self.asking {
            asking::draw(&self.lines, from, cx, area, buffer);
            return;
        }
        let (list, side) = if cx.is_wide() {
            split(area)
        } else {
            // What is chosen and what is on the list, below.
            let page = self.foot(cx, area.width, area.height / 2);
            let foot = (page.height() as u16).min(area.height / 2);
            let (list, below) =
                area.height.checked_sub(foot).map_or((area, 0), |rest| (Rect { height: rest, ..area }, foot));
            (list, Rect { y: list.bottom(), height: below, ..area })
        };
        self.draw_items(cx, list, buffer);
        let page = if cx.is_wide() {
            self.side(cx, side.width, side.height)
        } else {
            self.foot(cx, side.width, area.height / 2)
        };
        page.draw(0, side, buffer);
        if let Some(field) = &self.field {
            let label = cx.wording.load_how_many();
            let row = Rect { y: side.y, height: 1.min(side.height), ..side };
            let width = (crate::dashboard::parts::width_of(&label) as u16 + 1).min(row.width);
            buffer.set_stringn(
                row.x,
                row.y,
                " ".repeat(usize::from(row.width)),
                usize::from(row.width),
                Ink::Plain.style(),
            );
            buffer.set_stringn(row.x, row.y, label, usize::from(row.width), Ink::Strong.style());
            field.draw(Rect { x: row.x + width, width: row.width - width, ..row }, buffer, true);
        }
    }

    fn chosen(&self, _cx: &ScreenContext<'_>) -> Option<Subject> {
        match self.chosen.as_ref()? {
            Chosen::Pair(tray, _) | Chosen::Tray(tray) => Some(Subject::Tray(tray.clone())),
            Chosen::Bed(bed, _) => Some(Subject::Bed(bed.clone())),
        }
    }

    fn why(&self, _cx: &ScreenContext<'_>) -> Option<WhyOf> {
        match self.chosen.as_ref()? {
            Chosen::Pair(tray, bed) => Some(WhyOf::Pair(tray.clone(), bed.clone())),
            Chosen::Tray(tray) => Some(WhyOf::About(Subject::Tray(tray.clone()))),
            Chosen::Bed(bed, species) => Some(WhyOf::Bed(bed.clone(), species.clone())),
        }
    }

    fn go_to(&mut self, subject: &Subject, cx: &ScreenContext<'_>) -> bool {
        let is_it = |choice: &Chosen| match (choice, subject) {
            (Chosen::Pair(tray, _) | Chosen::Tray(tray), Subject::Tray(wanted)) => tray == wanted,
            (Chosen::Pair(_, bed) | Chosen::Bed(bed, _), Subject::Bed(wanted)) => bed == wanted,
            _ => false,
        };
        let Some(found) = self.offered(cx).in_order(&self.lines, cx).into_iter().find(is_it) else { return false };
        (self.part, self.asking, self.field) = (Part::Pairs, None, None);
        self.choose(Some(found));
        true
    }

    fn refresh(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        let acts = self.note_written(cx);
        self.settle_choice(cx);
        acts
    }

    fn resume(&mut self, kept: &str, _cx: &ScreenContext<'_>) {
        self.lines = loading::of_text(kept);
    }
}
