//! What keys do on the screen Going out.

use super::words::{first_reason, warning};
use super::{Chosen, GoingOut, MOST_PLANTS, Part, Writing, asking, loading};
use crate::base::{BedName, Day, TrayCode};
use crate::dashboard::act::Act;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::Key;
use crate::dashboard::parts::Typed;
use crate::reckon::loading::{LoadLine, LoadWarning, left_to_load, warnings};
use crate::reckon::picture::{Looking, Picture};
use crate::wording::verdict::About;

impl GoingOut {
    /// Keys on a list.
    pub(super) fn press_list(&mut self, key: Key, cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        let page = isize::try_from(cx.size.1 / 4).unwrap_or(1).max(1);
        match key {
            Key::Up => self.step(-1, cx),
            Key::Down => self.step(1, cx),
            Key::PageUp | Key::Char(',') => self.step(-page, cx),
            Key::PageDown | Key::Char('.') => self.step(page, cx),
            Key::Home => self.step(isize::MIN / 2, cx),
            Key::End => self.step(isize::MAX / 2, cx),
            Key::Char('v') => {
                self.part = self.part.next();
                self.settle_choice(cx);
            }
            Key::Esc | Key::Char('q') if self.part != Part::Pairs => {
                self.part = Part::Pairs;
                self.settle_choice(cx);
            }
            Key::Char('c') => return Some(self.ask(cx)),
            Key::Char('o') | Key::Enter => return Some(self.load(cx)),
            Key::Char('r') | Key::Backspace | Key::Delete => return Some(self.unload(cx)),
            Key::Char('+') => return Some(self.change(1, cx)),
            Key::Char('-') => return Some(self.change(-1, cx)),
            Key::Char(' ') if self.pair().is_some() => {
                self.field = Some(Typed::default());
            }
            _ => return None,
        }
        Some(Vec::new())
    }

    fn step(&mut self, by: isize, cx: &ScreenContext<'_>) {
        let choices = self.choices(cx);
        if choices.is_empty() {
            return;
        }
        let at = choices.iter().position(|choice| Some(choice) == self.chosen.as_ref()).unwrap_or(0) as isize;
        let to = at.saturating_add(by).clamp(0, choices.len() as isize - 1) as usize;
        self.choose(choices.get(to).cloned());
    }

    /// Keys in the open field for a number.
    pub(super) fn press_field(&mut self, key: Key, cx: &ScreenContext<'_>) -> Vec<Act> {
        let Some(field) = self.field.as_mut() else { return Vec::new() };
        match key {
            Key::Esc | Key::Char('q') => self.field = None,
            Key::Enter => {
                let typed = field.text();
                self.field = None;
                let Ok(plants) = typed.parse::<u32>() else { return Vec::new() };
                return self.set(plants.min(MOST_PLANTS), cx);
            }
            Key::Char(digit) if digit.is_ascii_digit() => {
                field.press(key);
            }
            Key::Backspace | Key::Delete | Key::Left | Key::Right | Key::Home | Key::End => {
                field.press(key);
            }
            _ => {}
        }
        Vec::new()
    }

    /// Puts the chosen pair on the list.
    fn load(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        match self.plants(cx) {
            None => self.load_best(cx),
            Some(0) => vec![Act::Say(cx.wording.load_nothing_left())],
            Some(plants) => self.set(plants, cx),
        }
    }

    /// Where a tray alone is chosen: the bed it fits best, or why it goes to none today.
    fn load_best(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        let tray = match &self.chosen {
            Some(Chosen::Tray(tray)) => tray.clone(),
            Some(Chosen::Bed(bed, _)) => return vec![Act::Say(cx.wording.load_choose_tray(bed))],
            Some(Chosen::Pair(..)) | None => return Vec::new(),
        };
        let pairs = cx.book.picture.pairs.of(&tray);
        if let Some(best) = pairs.iter().find(|pair| pair.fits) {
            (self.part, self.number) = (Part::Pairs, None);
            self.chosen = Some(Chosen::Pair(tray, best.bed.clone()));
            return self.load(cx);
        }
        let said = match cx.book.picture.pairs.nearest(&tray) {
            Some(nearest) => {
                let why = first_reason(&nearest.criteria, About::Pair, cx);
                cx.wording.load_fits_not(&tray, &nearest.bed, why)
            }
            None => cx.wording.load_no_bed(),
        };
        vec![Act::Say(said)]
    }

    /// The chosen pair on the list with a number; nought takes it off.
    fn set(&mut self, plants: u32, cx: &ScreenContext<'_>) -> Vec<Act> {
        let Some((tray, bed)) = self.pair().map(|(tray, bed)| (tray.clone(), bed.clone())) else { return Vec::new() };
        if plants == 0 {
            return self.unload(cx);
        }
        let said = cx.wording.load_said(i64::from(plants), &tray, &bed);
        let doubt = self.too_many(&(tray.clone(), bed.clone()), plants, cx);
        let message = doubt.map_or_else(|| said.clone(), |doubt| format!("{said}. {doubt}"));
        match self.lines.iter_mut().find(|line| line.tray == tray && line.bed == bed) {
            Some(line) => line.plants = plants,
            None => self.lines.push(LoadLine { tray, bed, plants }),
        }
        self.number = None;
        vec![self.keep(), Act::Say(message)]
    }

    /// Takes the chosen pair off the list.
    fn unload(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        let Some((tray, bed)) = self.pair().map(|(tray, bed)| (tray.clone(), bed.clone())) else { return Vec::new() };
        if self.listed(&tray, &bed).is_none() {
            return Vec::new();
        }
        self.lines.retain(|line| line.tray != tray || line.bed != bed);
        let message = cx.wording.load_taken_off(&tray, &bed);
        self.settle_choice(cx);
        vec![self.keep(), Act::Say(message)]
    }

    /// More or fewer of the chosen pair; on the list the number is changed there. At the last place, or the last plant, it
    /// is said that there is no more; the next press goes on all the same.
    fn change(&mut self, by: i32, cx: &ScreenContext<'_>) -> Vec<Act> {
        let Some((tray, bed, before)) = self.plans_now(cx) else { return Vec::new() };
        let plants = before.saturating_add_signed(by).min(MOST_PLANTS);
        let pair = (tray, bed);
        if by > 0
            && self.warned.as_ref() != Some(&pair)
            && plants > left_to_load(&cx.book.picture, &self.lines, &pair.0, &pair.1)
        {
            let why = self.too_many(&pair, plants, cx).unwrap_or_else(|| cx.wording.load_nothing_left());
            self.warned = Some(pair);
            return vec![Act::Say(cx.wording.load_no_more(why))];
        }
        if self.listed(&pair.0, &pair.1).is_some() {
            // One is the least on the list: it is taken off by a key of its own.
            return self.set(plants.max(1), cx);
        }
        self.number = Some(plants);
        Vec::new()
    }

    /// The chosen pair and how many of it.
    fn plans_now(&self, cx: &ScreenContext<'_>) -> Option<(TrayCode, BedName, u32)> {
        let (tray, bed) = self.pair()?;
        Some((tray.clone(), bed.clone(), self.plants(cx)?))
    }

    /// What is promised twice where so many of a pair are on the list.
    fn too_many(&self, (tray, bed): &(TrayCode, BedName), plants: u32, cx: &ScreenContext<'_>) -> Option<String> {
        let mut lines = self.lines.clone();
        lines.retain(|line| line.tray != *tray || line.bed != *bed);
        lines.push(LoadLine { tray: tray.clone(), bed: bed.clone(), plants });
        let species = cx.book.picture.trays.get(tray).and_then(|tray| tray.species.as_ref());
        let about = |one: &LoadWarning| match one {
            LoadWarning::TrayPromised { tray: promised, .. } => promised == tray,
            LoadWarning::BedPromised { bed: promised, species: of, .. } => promised == bed && Some(of) == species,
            LoadWarning::FitsNot { .. } | LoadWarning::Gone { .. } => false,
        };
        warnings(&cx.book.picture, &lines).iter().find(|one| about(one)).map(|one| warning(one, cx))
    }

    /// Asks before the list is written.
    fn ask(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        if self.lines.is_empty() {
            return vec![Act::Say(cx.wording.load_empty())];
        }
        if cx.read_only {
            return vec![Act::Say(cx.wording.said_read_only())];
        }
        if cx.book.picture.looking != Looking::Today {
            return vec![Act::Say(cx.wording.said_looking())];
        }
        self.asking = Some(0);
        Vec::new()
    }

    /// Keys while it is asked: another key than the one that asked writes; a key that is held down does nothing.
    pub(super) fn press_asking(&mut self, key: Key, cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        let from = self.asking?;
        let last = asking::last_start(&self.lines, cx);
        match key {
            Key::Esc | Key::Char('q') => self.asking = None,
            Key::Up => self.asking = Some(from.saturating_sub(1)),
            Key::Down => self.asking = Some((from + 1).min(last)),
            Key::Char('w') => {
                self.asking = None;
                return Some(self.write(cx));
            }
            // Help is for everyone.
            Key::Char('h' | '?' | 'x') => return None,
            _ => {}
        }
        Some(Vec::new())
    }

    fn write(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        match loading::drafts(&self.lines, cx) {
            Ok(drafts) => {
                let day = loading::day(cx);
                let before =
                    self.lines.iter().map(|line| (line.clone(), plantings(&cx.book.picture, line, day))).collect();
                self.writing = Some(Writing { day, before });
                vec![Act::Write(drafts)]
            }
            Err(message) => vec![Act::Say(message)],
        }
    }

    /// What was handed to the clerk and is in the book now comes off the list; where it was refused, the list stays.
    pub(super) fn note_written(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        let Some(writing) = &self.writing else { return Vec::new() };
        let (picture, day) = (&cx.book.picture, writing.day);
        if !writing.before.iter().all(|(line, before)| plantings(picture, line, day) > *before) {
            return Vec::new();
        }
        let written: Vec<&LoadLine> = writing.before.iter().map(|(line, _)| line).collect();
        self.lines.retain(|line| !written.contains(&line));
        self.writing = None;
        self.part = Part::Pairs;
        self.choose(None);
        vec![self.keep()]
    }
}

/// How often a planting stands in the book.
fn plantings(picture: &Picture, line: &LoadLine, day: Day) -> usize {
    picture.beds.get(&line.bed).map_or(0, |bed| {
        let same = bed.story.cohorts.iter().filter(|cohort| {
            cohort.tray.as_ref() == Some(&line.tray) && cohort.day == day && cohort.planted == line.plants
        });
        same.count()
    })
}

impl Chosen {
    /// The tray, where one is meant.
    pub(super) fn tray(&self) -> Option<&crate::base::TrayCode> {
        match self {
            Chosen::Pair(tray, _) | Chosen::Tray(tray) => Some(tray),
            Chosen::Bed(..) => None,
        }
    }
}
