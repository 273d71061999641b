//! The reasons of anything shown: what is needed, what is known and how, the source of the rule, the entries.

use std::collections::BTreeMap;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use crate::base::{BedName, EntryId, LotCode, SpeciesKey, TrayCode};
use crate::dashboard::act::{Act, WhyOf};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::Key;
use crate::dashboard::look::{Ink, answered_mark};
use crate::dashboard::parts::Page;
use crate::nursery::entry::subject::Subject;
use crate::reckon::growth::tray_growth;
use crate::reckon::lots::lot_outlook;
use crate::reckon::picture::answered::{Answered, pressing_first};
use crate::reckon::picture::{BedPicture, Criterion, Rule, TrayPicture};
use crate::reckon::sowing::{SowingAsked, USUAL_SURE};
use crate::reckon::stock::LotStory;
use crate::wording::round::RoundOn;
use crate::wording::verdict::About;

impl WhyOf {
    /// Whose entries may be named.
    pub(crate) fn subject(&self, cx: &ScreenContext<'_>) -> Option<Subject> {
        match self {
            WhyOf::About(subject) => Some(subject.clone()),
            WhyOf::Lot(lot, _) => Some(Subject::Lot(lot.clone())),
            WhyOf::Bed(bed, _) => Some(Subject::Bed(bed.clone())),
            WhyOf::Pair(tray, _) => Some(Subject::Tray(tray.clone())),
            WhyOf::Stop(id) => {
                let round = &cx.book.round;
                round.stops.iter().chain(&round.can_wait).find(|stop| stop.id == *id).map(|stop| stop.subject.clone())
            }
        }
    }
}

/// The reasons.
#[derive(Clone, Debug)]
pub(crate) struct Why {
    of: WhyOf,
    from: usize,
}

impl Why {
    /// Opens the reasons.
    pub(crate) fn new(of: WhyOf) -> Why {
        Why { of, from: 0 }
    }

    /// Takes a key.
    pub(crate) fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Vec<Act> {
        let page = usize::from(cx.size.1).saturating_sub(6).max(1);
        match key {
            Key::Esc | Key::Char('q' | 'y') | Key::Enter => return vec![Act::Close],
            Key::Down => self.from += 1,
            Key::Up => self.from = self.from.saturating_sub(1),
            Key::PageDown | Key::Char('.' | ' ') => self.from += page,
            Key::PageUp | Key::Char(',') => self.from = self.from.saturating_sub(page),
            Key::Home => self.from = 0,
            _ => {}
        }
        self.from = self.from.min(self.page(cx, cx.size.0).last_start(cx.size.1.saturating_sub(6)));
        Vec::new()
    }

    /// Draws it.
    pub(crate) fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        let page = self.page(cx, area.width);
        let body = Rect { height: area.height.saturating_sub(1), ..area };
        let left = page.draw(self.from, body, buffer);
        if left > 0 && area.height > 1 {
            let more = cx.wording.why_more(left as i64);
            buffer.set_stringn(area.x, area.bottom() - 1, more, usize::from(area.width), Ink::Quiet.style());
        }
    }

    fn page(&self, cx: &ScreenContext<'_>, width: u16) -> Page {
        let mut page = Page::new(width.min(100));
        let labels: Vec<String> = cx.wording.fact_labels().into_iter().chain(cx.wording.forecast_labels()).collect();
        page.labels(labels.iter().map(String::as_str));
        let picture = &cx.book.picture;
        match &self.of {
            WhyOf::About(Subject::Tray(code)) => match picture.trays.get(code) {
                Some(tray) => why_tray(tray, cx, &mut page),
                None => page.paragraph(&cx.wording.why_none(), Ink::Plain),
            },
            WhyOf::About(Subject::Bed(name)) => match picture.beds.get(name) {
                Some(bed) => why_bed(bed, None, cx, &mut page),
                None => page.paragraph(&cx.wording.why_none(), Ink::Plain),
            },
            WhyOf::Bed(name, species) => match picture.beds.get(name) {
                Some(bed) => why_bed(bed, Some(species), cx, &mut page),
                None => page.paragraph(&cx.wording.why_none(), Ink::Plain),
            },
            WhyOf::About(Subject::Lot(code)) => why_lot_of(code, None, cx, &mut page),
            WhyOf::Lot(code, plants) => why_lot_of(code, *plants, cx, &mut page),
            WhyOf::About(subject @ (Subject::Place(_) | Subject::Site)) => {
                why_story(subject, cx, &mut page);
            }
            WhyOf::Pair(tray, bed) => why_pair(tray, bed, cx, &mut page),
            WhyOf::Stop(id) => why_stop(id, cx, &mut page),
        }
        page
    }
}

fn why_tray(tray: &TrayPicture, cx: &ScreenContext<'_>, page: &mut Page) {
    let wording = cx.wording;
    page.paragraph(&wording.why_tray_heading(&tray.code, cx.species(tray.species.as_ref())), Ink::Strong);
    let text = if tray.ready { wording.why_ready() } else { wording.why_not_ready() };
    verdict(tray.ready, &text, page);
    page.gap();
    facts_of(&wording.tray_facts(tray), page);
    why_expected(tray, cx, page);
    criteria_of(&tray.criteria, About::Tray, cx, page);
}

/// What is expected of a tray, how it is reckoned, and where that comes from.
fn why_expected(tray: &TrayPicture, cx: &ScreenContext<'_>, page: &mut Page) {
    let (wording, book) = (cx.wording, cx.book);
    let expected = wording.forecast_lines(&tray.code, &book.picture, &book.outlook, &book.round.worth_looking);
    if !expected.is_empty() {
        page.heading(&wording.forecast_heading());
        facts_of(&expected, page);
        facts_of(&wording.forecast_formulas(&tray.code, &book.picture, &book.outlook), page);
        let entries = book.outlook.trays.get(&tray.code).map(|told| told.entries.as_slice());
        entries_of(entries.unwrap_or_default(), cx, page);
    }
    let profile = tray.species.as_ref().and_then(|key| book.picture.site.profile(key));
    let growth = tray_growth(&tray.story, profile.map(|profile| &**profile), cx.day());
    let grows = wording.growth_lines(&growth);
    if tray.standing > 0 && !grows.is_empty() {
        page.heading(&wording.growth_heading());
        facts_of(&grows, page);
        facts_of(&wording.growth_formulas(&growth), page);
    }
}

fn why_lot_of(code: &LotCode, plants: Option<u32>, cx: &ScreenContext<'_>, page: &mut Page) {
    let labels: Vec<String> = cx.wording.lot_labels().into_iter().chain([cx.wording.label_entries()]).collect();
    page.labels(labels.iter().map(String::as_str));
    match cx.book.picture.lots.get(code) {
        Some(lot) => why_lot(lot, plants, cx, page),
        None => page.paragraph(&cx.wording.why_none(), Ink::Plain),
    }
}

/// What a lot is still worth, its tests, how many to sow, and what was written of it.
fn why_lot(lot: &LotStory, plants: Option<u32>, cx: &ScreenContext<'_>, page: &mut Page) {
    let (wording, picture) = (cx.wording, &cx.book.picture);
    let profile = lot.species.as_ref().and_then(|key| picture.site.profile(key));
    let outlook = lot_outlook(lot, profile.map(|profile| &**profile), cx.day());
    page.paragraph(&wording.lot_heading(&lot.code, cx.species(lot.species.as_ref())), Ink::Strong);
    let (good, text) = wording.lot_verdict(&outlook, cx.day());
    verdict(good, &text, page);
    page.gap();
    facts_of(&wording.lot_worth_lines(lot, &outlook, cx.day()), page);
    page.gap();
    facts_of(&wording.lot_test_lines(&outlook, cx.day()), page);
    let asked = SowingAsked::of(picture, &cx.book.outlook.stock, lot.species.as_ref(), Some(lot), plants, USUAL_SURE);
    match &asked.plan {
        None if asked.needed.is_some() => page.paragraph(&wording.sowing_nothing(&asked), Ink::Plain),
        None => {}
        Some(Ok(plan)) => {
            page.heading(&wording.sowing_heading(plan.wanted.plants));
            wording.sowing_for_words(&asked).iter().for_each(|said| page.paragraph(said, Ink::Plain));
            page.hanging("> ", Ink::Plain, &wording.sowing_said(plan), Ink::Strong);
            wording.sowing_gross_words(&asked).iter().for_each(|said| page.paragraph(said, Ink::Plain));
            facts_of(&wording.sowing_lines(plan), page);
            facts_of(&[wording.sowing_formula_line()], page);
        }
        Some(Err(why)) => page.hanging("x ", Ink::Waits, &wording.sowing_no_plan(why), Ink::Plain),
    }
    page.gap();
    why_story(&Subject::Lot(lot.code.clone()), cx, page);
}

fn facts_of(facts: &[(String, String)], page: &mut Page) {
    facts.iter().for_each(|(label, text)| page.labelled(label, text));
}

/// What is said first, good or not.
fn verdict(good: bool, text: &str, page: &mut Page) {
    let (mark, ink) = if good { ("+ ", Ink::Good) } else { ("x ", Ink::Waits) };
    page.hanging(mark, ink, text, Ink::Strong);
}

fn why_bed(bed: &BedPicture, species: Option<&SpeciesKey>, cx: &ScreenContext<'_>, page: &mut Page) {
    let wording = cx.wording;
    let asked = bed.species.iter().filter(|one| species.is_none_or(|wanted| one.species == *wanted));
    let mut shown = false;
    for one in asked {
        shown = true;
        page.heading(&wording.why_bed_heading(&bed.name, cx.species(Some(&one.species))));
        let (open, text) = wording.bed_line_words(one);
        verdict(open, &text, page);
        criteria_of(&one.criteria, About::Bed, cx, page);
    }
    if !shown {
        page.paragraph(&wording.teach_plan(&bed.name), Ink::Plain);
    }
}

fn why_pair(tray: &TrayCode, bed: &BedName, cx: &ScreenContext<'_>, page: &mut Page) {
    let wording = cx.wording;
    page.paragraph(&wording.why_pair_heading(tray, bed), Ink::Strong);
    let Some(pair) = cx.book.picture.pair(tray, bed) else {
        page.paragraph(&wording.why_none(), Ink::Plain);
        return;
    };
    let text = if pair.fits { wording.why_fits(wording.plants(pair.plants)) } else { wording.why_fits_not() };
    verdict(pair.fits, &text, page);
    criteria_of(&pair.criteria, About::Pair, cx, page);
}

fn why_stop(id: &str, cx: &ScreenContext<'_>, page: &mut Page) {
    let wording = cx.wording;
    let round = &cx.book.round;
    let Some(stop) = round.stops.iter().chain(&round.can_wait).find(|stop| stop.id == id) else {
        page.paragraph(&wording.why_none(), Ink::Plain);
        return;
    };
    page.paragraph(&wording.stop_about(stop.task, &stop.subject, &cx.book.picture), Ink::Strong);
    page.paragraph(&wording.stop_place(&stop.at, &stop.subject), Ink::Plain);
    let about = RoundOn { day: cx.day(), species: &cx.book.picture.site.species };
    page.paragraph(&wording.round_reason(&stop.why, about), Ink::Plain);
    page.paragraph(&wording.until_words(stop, about), Ink::Plain);
    page.paragraph(&wording.lost_without_stop(stop), Ink::Plain);
    page.gap();
    page.labelled(&wording.label_source(), &wording.source_words(&stop.source));
    entries_of(&stop.entries, cx, page);
    let picture = &cx.book.picture;
    match &stop.subject {
        Subject::Tray(code) => {
            if let Some(tray) = picture.trays.get(code) {
                page.gap();
                why_tray(tray, cx, page);
            }
        }
        Subject::Bed(name) => {
            if let Some(bed) = picture.beds.get(name) {
                bed_in_short(bed, cx, page);
            }
        }
        Subject::Lot(code) => {
            page.gap();
            why_lot_of(code, None, cx, page);
        }
        Subject::Place(_) | Subject::Site => {}
    }
}

fn criteria_of(criteria: &[Criterion], about: About, cx: &ScreenContext<'_>, page: &mut Page) {
    if criteria.is_empty() {
        page.gap();
        page.paragraph(&cx.wording.why_nothing_asked(), Ink::Plain);
    }
    for criterion in pressing_first(criteria) {
        criterion_of(criterion, about, cx, page);
    }
}

/// One question: its mark and word, why, what it rests on, its entries.
fn criterion_of(criterion: &Criterion, about: About, cx: &ScreenContext<'_>, page: &mut Page) {
    let wording = cx.wording;
    let (mark, ink) = answered_mark(criterion.answered());
    page.gap();
    let name = format!("{}: {}", wording.rule_name(criterion.rule()), wording.answered_words(criterion.answered()));
    page.hanging(&format!("{mark} "), ink, &name, Ink::Strong);
    page.hanging("  ", Ink::Plain, &wording.reason(criterion, about), Ink::Plain);
    facts_of(&wording.criterion_facts(criterion), page);
    entries_of(&criterion.entries, cx, page);
}

/// A bed as it stands for all its species at once: each thing that holds it back or asks for care once, with the species
/// it is so for where it is not so for all; the rest by name. The screen Beds has all of it.
fn bed_in_short(bed: &BedPicture, cx: &ScreenContext<'_>, page: &mut Page) {
    let wording = cx.wording;
    page.gap();
    if bed.species.is_empty() {
        page.paragraph(&wording.teach_plan(&bed.name), Ink::Plain);
        return;
    }
    for line in &bed.species {
        let (open, text) = wording.bed_line_words(line);
        verdict(open, &format!("{}: {text}", cx.species(Some(&line.species))), page);
    }
    let mut told: BTreeMap<(Answered, Rule, String), Vec<&SpeciesKey>> = BTreeMap::new();
    let mut named: BTreeMap<Answered, Vec<String>> = BTreeMap::new();
    let all = || bed.species.iter().flat_map(|line| line.criteria.iter().map(move |one| (line, one)));
    for (line, criterion) in all().filter(|(_, criterion)| criterion.answered() <= Answered::Warns) {
        let reason = wording.reason(criterion, About::Bed);
        told.entry((criterion.answered(), criterion.rule(), reason)).or_default().push(&line.species);
    }
    for (_, criterion) in all() {
        let name = wording.rule_name(criterion.rule());
        // What is told of one species is not called met for the others beside it.
        let is_told = told.keys().any(|(_, rule, _)| *rule == criterion.rule());
        let names = named.entry(criterion.answered()).or_default();
        if !is_told && !names.contains(&name) {
            names.push(name);
        }
    }
    named.retain(|_, names| !names.is_empty());
    page.gap();
    for ((answered, _, reason), of) in &told {
        let (mark, ink) = answered_mark(*answered);
        let of: Vec<String> = of.iter().map(|key| cx.species(Some(key))).collect();
        let all = of.len() == bed.species.len();
        let text = if all { reason.clone() } else { format!("{}: {reason}", of.join(", ")) };
        page.hanging(&format!("{mark} "), ink, &text, Ink::Plain);
    }
    for (answered, names) in &named {
        let (mark, ink) = answered_mark(*answered);
        let text = format!("{}: {}", wording.answered_words(*answered), names.join(", "));
        page.hanging(&format!("{mark} "), ink, &text, Ink::Plain);
    }
    page.gap();
    page.paragraph(&wording.why_rest_in_beds(), Ink::Quiet);
}

/// Entries in words where they are here, else by their numbers.
fn entries_of(ids: &[EntryId], cx: &ScreenContext<'_>, page: &mut Page) {
    if ids.is_empty() {
        return;
    }
    let story = cx.book.story.as_ref().map(|(_, entries)| entries.as_slice()).unwrap_or_default();
    let text: Vec<String> = ids
        .iter()
        .map(|id| match story.iter().find(|entry| entry.id == *id) {
            Some(entry) => format!("{} ({id})", cx.entry(entry)),
            None => id.to_string(),
        })
        .collect();
    page.labelled(&cx.wording.label_entries(), &text.join("; "));
}

/// What was written about something that no verdict is made of.
fn why_story(subject: &Subject, cx: &ScreenContext<'_>, page: &mut Page) {
    match cx.book.story_of(subject) {
        None => page.paragraph(&cx.wording.confirm_waiting(), Ink::Quiet),
        Some([]) => page.paragraph(&cx.wording.why_none(), Ink::Plain),
        Some(entries) => {
            for entry in entries.iter().rev() {
                page.hanging("- ", Ink::Plain, &cx.entry(entry), Ink::Plain);
            }
        }
    }
}
