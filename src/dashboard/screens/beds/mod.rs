//! The screen Beds: which ground is ready for what, a plan of each bed, its light, its nurse plants, what lives there.

mod detail;
mod light;
mod list;
mod plan;

pub(crate) use detail::bed_at_a_glance;
#[cfg(test)]
mod tests;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use crate::base::{BedName, SpeciesKey};
use crate::dashboard::act::{Act, FormFor, WhyOf};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::form::begun_at;
use crate::dashboard::keys::{Key, KeyAction, KeyLine, hinted, known};
use crate::dashboard::look::Ink;
use crate::dashboard::message::Request;
use crate::dashboard::parts::Sheet;
use crate::dashboard::screens::screen::Screen;
use crate::dashboard::screens::signs::standing_signs;
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::types::GroundTask;
use crate::reckon::field::waits_for;
use crate::reckon::light::months::MONTHS_AHEAD;
use crate::reckon::picture::{BedPicture, Measure};
use light::Shown;
use list::{Choice, Line};

/// The columns of the detail where it stands beside the list, in hundredths of the width.
const DETAIL_SHARE: u16 = 44;
/// The columns between list and detail.
const BETWEEN: u16 = 2;
/// The most lines the frame keeps for itself, banners among them; drawing stops at the page's end all the same.
const FRAME: u16 = 8;

/// The screen.
#[derive(Debug, Default)]
pub(crate) struct Beds {
    /// The bed and species that are chosen.
    chosen: Option<Choice>,
    /// Whether the detail has the whole screen.
    open: bool,
    /// The first line of the detail.
    from: usize,
    /// The first column of a plan that is longer than the screen.
    along: usize,
    /// The month whose light is shown, this one being 0; none where the bed itself is.
    month: Option<usize>,
}

impl Beds {
    fn bed<'a>(&self, cx: &'a ScreenContext<'_>) -> Option<&'a BedPicture> {
        let chosen = self.chosen.as_ref()?;
        cx.book.picture.beds.get(&chosen.bed).map(AsRef::as_ref)
    }

    /// Chooses the line so many below, passing over headings.
    fn step(&mut self, by: isize, cx: &ScreenContext<'_>) {
        let choices = list::choices(cx);
        if choices.is_empty() {
            return;
        }
        let at = choices.iter().position(|choice| Some(choice) == self.chosen.as_ref()).unwrap_or(0) as isize;
        let to = (at + by).clamp(0, choices.len() as isize - 1) as usize;
        self.choose(choices[to].clone());
    }

    fn choose(&mut self, choice: Choice) {
        if self.chosen.as_ref() != Some(&choice) {
            (self.from, self.along) = (0, 0);
        }
        self.chosen = Some(choice);
    }

    /// Where the detail stands, and its page.
    fn detail(&self, cx: &ScreenContext<'_>, area: Rect) -> (Rect, Sheet) {
        let area = if self.open || !cx.is_wide() { area } else { split(area).1 };
        // One line stays for how much there is below.
        let body = Rect { height: area.height.saturating_sub(1), ..area };
        let page = match (self.bed(cx), &self.chosen) {
            (Some(bed), Some(chosen)) => detail::page(bed, chosen.species.as_ref(), self.along, cx, body.width),
            _ => Sheet::new(body.width),
        };
        (body, page)
    }

    fn scroll(&mut self, by: isize, cx: &ScreenContext<'_>) {
        let area = Rect::new(0, 0, cx.size.0, cx.size.1.saturating_sub(FRAME));
        let (body, page) = self.detail(cx, area);
        self.from = self.from.saturating_add_signed(by).min(page.last_start(body.height.max(1)));
    }

    fn form(&self, kind: &str, cx: &ScreenContext<'_>) -> Vec<Act> {
        let Some(bed) = self.bed(cx) else { return vec![Act::Say(cx.wording.no_beds())] };
        let subject = Subject::Bed(bed.name.clone());
        let mut form = FormFor::about(kind, Some(&subject));
        let species = self.chosen.as_ref().and_then(|chosen| chosen.species.clone());
        match kind {
            "survival_counted" | "plants_lost" => {
                if let Some(species) = species {
                    form = form.with("species", cx.species(Some(&species)));
                }
            }
            "nurse_counted" => {
                let mut living = bed.nurses.iter().filter(|nurse| nurse.alive > 0).map(|nurse| &nurse.nurse);
                if let Some(nurse) = living.next().filter(|nurse| living.all(|other| other == *nurse)) {
                    form = form.with("nurse", cx.species(Some(nurse)));
                }
            }
            // The work that is missing first is most likely the one that was done.
            "prepared" => {
                if let Some(work) = missing_work(bed, species.as_ref(), cx) {
                    form = form.with("task", work);
                }
            }
            _ => {}
        }
        vec![Act::Form(begun_at(form))]
    }

    /// What is shown of the light; none where the bed itself is.
    fn light<'a>(&'a self, cx: &'a ScreenContext<'_>) -> Option<Shown<'a>> {
        let (bed, chosen) = (self.bed(cx)?, self.chosen.as_ref()?);
        Some(Shown { bed, species: chosen.species.as_ref()?, at: self.month?, along: self.along })
    }

    /// Asks for the light that is shown, where it is not here.
    fn ask(&self, cx: &ScreenContext<'_>) -> Vec<Act> {
        let Some(asked) = self.light(cx).map(|shown| shown.asked(cx)) else { return Vec::new() };
        let here = cx.book.light.as_ref().is_some_and(|(of, _)| *of == asked);
        if here { Vec::new() } else { vec![Act::Ask(Request::LightAhead(asked))] }
    }

    /// The keys of the light by month; false where the key means something else.
    fn press_light(&mut self, key: Key, cx: &ScreenContext<'_>) -> bool {
        let last = MONTHS_AHEAD - 1;
        let month = match (key, self.month) {
            (Key::Char('m'), Some(_)) => None,
            (key, Some(_)) if key.goes_back() => None,
            (Key::Char('m' | '-' | '+'), None) => Some(0),
            (Key::Char('+'), Some(at)) => Some((at + 1).min(last)),
            (Key::Char('-'), Some(at)) => Some(at.saturating_sub(1)),
            (Key::Home, Some(_)) => Some(0),
            (Key::End, Some(_)) => Some(last),
            (Key::PageDown | Key::Char('.'), Some(_)) => {
                let page = usize::from(cx.size.1 / 2);
                self.from = (self.from + page).min(self.last_line_of_light(cx));
                return true;
            }
            (Key::PageUp | Key::Char(','), Some(_)) => {
                self.from = self.from.saturating_sub(usize::from(cx.size.1 / 2));
                return true;
            }
            _ => return false,
        };
        if self.chosen.as_ref().is_none_or(|chosen| chosen.species.is_none()) {
            return matches!(key, Key::Char('m' | '-' | '+'));
        }
        if self.month.is_some() != month.is_some() {
            self.from = 0;
        }
        self.month = month;
        true
    }

    /// The last line of the light at which it can begin.
    fn last_line_of_light(&self, cx: &ScreenContext<'_>) -> usize {
        let Some(shown) = self.light(cx) else { return 0 };
        let (_, below) = light_pages(shown, cx, (cx.size.0, usize::from(cx.size.1.saturating_sub(FRAME))));
        let heads = light::head(shown, cx, cx.size.0).height() as u16;
        below.iter().map(|page| page.last_start(cx.size.1.saturating_sub(FRAME + heads).max(1))).max().unwrap_or(0)
    }

    /// The keys that move about; none where the key does not.
    fn move_by(&mut self, key: Key, cx: &ScreenContext<'_>) -> bool {
        let page = isize::try_from(cx.size.1 / 2).unwrap_or(1).max(1);
        let reading = self.open && self.month.is_none();
        match key {
            Key::Up if reading => self.scroll(-1, cx),
            Key::Down if reading => self.scroll(1, cx),
            Key::Up => self.step(-1, cx),
            Key::Down => self.step(1, cx),
            Key::PageDown | Key::Char('.') if reading || cx.is_wide() => self.scroll(page, cx),
            Key::PageUp | Key::Char(',') if reading || cx.is_wide() => self.scroll(-page, cx),
            Key::PageDown | Key::Char('.') => self.step(page, cx),
            Key::PageUp | Key::Char(',') => self.step(-page, cx),
            Key::Home if reading => self.from = 0,
            Key::Home => self.step(isize::MIN / 2, cx),
            Key::End if reading => self.scroll(isize::MAX / 2, cx),
            Key::End => self.step(isize::MAX / 2, cx),
            Key::Left => self.along = self.along.saturating_sub(plan::STEP),
            Key::Right => self.along = (self.along + plan::STEP).min(plan::MOST_ALONG),
            Key::Enter => (self.open, self.month) = (self.chosen.is_some(), None),
            _ => return false,
        }
        true
    }
}

/// What lies under the head of the light: the map and the year beside each other where there is room for both, else one page.
fn light_pages(shown: Shown<'_>, cx: &ScreenContext<'_>, (width, lines): (u16, usize)) -> (u16, Vec<Sheet>) {
    if cx.is_wide() {
        let left = width - width * DETAIL_SHARE / 100 - BETWEEN;
        let year = light::year(shown, cx, width - left - BETWEEN);
        return (left, vec![light::map(shown, cx, (left, lines)), year]);
    }
    let mut page = light::map(shown, cx, (width, lines));
    page.append(light::year(shown, cx, width));
    (width, vec![page])
}

fn draw_light(shown: Shown<'_>, from: usize, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let head = light::head(shown, cx, area.width);
    head.draw(0, area, buffer);
    let top = (head.height() as u16 + u16::from(area.height > 14)).min(area.height);
    // One line stays for how much there is below.
    let body = Rect { y: area.y + top, height: area.height.saturating_sub(top + 1), ..area };
    let (left, pages) = light_pages(shown, cx, (area.width, usize::from(body.height)));
    let mut below = 0;
    for (page, x) in pages.iter().zip([0, left + BETWEEN]) {
        below = below.max(page.draw(from, Rect { x: area.x + x, width: area.width.saturating_sub(x), ..body }, buffer));
    }
    if below > 0 && area.height > top {
        let text = format!("{}  (. ,)", cx.wording.why_more(below as i64));
        buffer.set_stringn(body.x, body.bottom(), text, usize::from(body.width), Ink::Quiet.style());
    }
}

/// Where the list and its detail stand beside each other.
fn split(area: Rect) -> (Rect, Rect) {
    let width = area.width * DETAIL_SHARE / 100;
    let detail = Rect { x: area.right() - width, width, ..area };
    (Rect { width: area.width - width - BETWEEN, ..area }, detail)
}

/// The ground work that a species of a bed waits for first.
fn missing_work(bed: &BedPicture, species: Option<&SpeciesKey>, cx: &ScreenContext<'_>) -> Option<GroundTask> {
    let line = bed.species.iter().find(|line| Some(&line.species) == species)?;
    waits_for(&line.criteria, cx.day()).iter().find_map(|criterion| match criterion.needed() {
        Some(Measure::WorkWithin { task, .. }) => Some(task),
        _ => None,
    })
}

impl Screen for Beds {
    fn keys(&self, _cx: &ScreenContext<'_>) -> Vec<KeyLine> {
        let (month, months) = (KeyAction::MonthStep, hinted("m", KeyAction::LightMap));
        let first = if self.month.is_some() {
            vec![hinted("- +", month), months, hinted("s", KeyAction::ReadLight), hinted("g", KeyAction::CheckSoil)]
        } else {
            vec![hinted("s", KeyAction::ReadLight), hinted("g", KeyAction::CheckSoil), months, known("- +", month)]
        };
        let others = [
            hinted("p", KeyAction::GroundWork),
            hinted("c", KeyAction::CountSurvivors),
            hinted("k", KeyAction::CountNurses),
            hinted("l", KeyAction::Lost),
            known("a", KeyAction::Note),
            known("arrows", KeyAction::AlongBed),
        ];
        first.into_iter().chain(others).collect()
    }

    fn signs(&self, cx: &ScreenContext<'_>) -> Vec<(String, String)> {
        let wording = cx.wording;
        let more = [("?", wording.sign_not_read()), ("+1", wording.sign_more_missing())];
        standing_signs(cx).into_iter().chain(more.map(|(sign, means)| (sign.to_string(), means))).collect()
    }

    fn answers(&self, cx: &ScreenContext<'_>) -> String {
        cx.wording.answers_beds()
    }

    fn goes_back(&self, _cx: &ScreenContext<'_>) -> bool {
        self.open || self.month.is_some()
    }

    fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        if self.press_light(key, cx) {
            return Some(self.ask(cx));
        }
        if self.open && key.goes_back() {
            self.open = false;
            self.from = 0;
            return Some(Vec::new());
        }
        if self.move_by(key, cx) {
            return Some(self.ask(cx));
        }
        let kind = match key {
            Key::Char('s') => "light_read",
            Key::Char('g') => "soil_checked",
            Key::Char('p') => "prepared",
            Key::Char('c') => "survival_counted",
            Key::Char('k') => "nurse_counted",
            Key::Char('l') => "plants_lost",
            Key::Char('a') => "noted",
            _ => return None,
        };
        Some(self.form(kind, cx))
    }

    fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        if cx.book.picture.beds.is_empty() {
            let mut page = Sheet::new(area.width);
            page.paragraph(&cx.wording.no_beds(), Ink::Plain);
            page.draw(0, area, buffer);
            return;
        }
        if let Some(shown) = self.light(cx) {
            return draw_light(shown, self.from, cx, area, buffer);
        }
        if !self.open {
            let beside = if cx.is_wide() { split(area).0 } else { area };
            list::table(self.chosen.as_ref(), cx).draw(beside, buffer);
        }
        if self.open || cx.is_wide() {
            let (body, page) = self.detail(cx, area);
            let left = page.draw(self.from, body, buffer);
            if left > 0 && area.height > 1 {
                let more = cx.wording.why_more(left as i64);
                let text = format!("{more}  (. ,)");
                buffer.set_stringn(body.x, body.bottom(), text, usize::from(body.width), Ink::Quiet.style());
            }
        }
    }

    fn chosen(&self, cx: &ScreenContext<'_>) -> Option<Subject> {
        self.bed(cx).map(|bed| Subject::Bed(bed.name.clone()))
    }

    fn why(&self, cx: &ScreenContext<'_>) -> Option<WhyOf> {
        let bed = self.bed(cx)?;
        match self.chosen.as_ref().and_then(|chosen| chosen.species.clone()) {
            Some(species) => Some(WhyOf::Bed(bed.name.clone(), species)),
            None => Some(WhyOf::About(Subject::Bed(bed.name.clone()))),
        }
    }

    fn go_to(&mut self, subject: &Subject, cx: &ScreenContext<'_>) -> bool {
        let Subject::Bed(name) = subject else { return false };
        let Some(choice) = first_of(name, cx) else { return false };
        if self.chosen.as_ref().is_none_or(|chosen| chosen.bed != *name) {
            self.choose(choice);
        }
        self.open = !cx.is_wide();
        true
    }

    fn refresh(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        let choices = list::choices(cx);
        let still = self.chosen.as_ref().is_some_and(|chosen| choices.contains(chosen));
        if !still {
            let same_bed = self.chosen.as_ref().and_then(|chosen| first_of(&chosen.bed, cx));
            self.chosen = same_bed.or_else(|| choices.first().cloned());
            self.open = self.open && self.chosen.is_some();
            (self.from, self.along) = (0, 0);
        }
        self.ask(cx)
    }
}

/// The first line of a bed.
fn first_of(name: &BedName, cx: &ScreenContext<'_>) -> Option<Choice> {
    list::lines(cx).into_iter().find_map(|line| match line {
        Line::Species(choice) if choice.bed == *name => Some(choice),
        Line::Species(_) | Line::Field(_) => None,
    })
}
