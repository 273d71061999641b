//! A page as lines of text: questions in the order they are asked, all unfolded, entries by their numbers.

use super::sheet::{Ink, Sheet};
use crate::base::columns::{left_aligned, shortened, width_of};
use crate::base::text::cleaned;
use crate::page::{Block, Facts, Line, Mark, Page, Question, Tone};
use crate::reckon::picture::answered::Answered;
use crate::reckon::picture::{Looking, Picture};
use crate::wording::Wording;

/// Blanks before the labels of facts.
const INDENT: usize = 4;
/// Blanks for each step that a line stands deeper.
const STEP: usize = 2;

/// A page under the name of the nursery and the day. `width` is kept within 40 to 200 columns; colours only where `colour`.
pub(super) fn page_text(page: &Page, picture: &Picture, wording: &Wording, width: usize, colour: bool) -> String {
    let mut sheet = Sheet::new(width, colour);
    page_top(picture, wording, &mut sheet);
    let label_room = page.labels.iter().map(|label| width_of(label)).max().unwrap_or(0);
    let mut face = Face { sheet, wording, label_room };
    page.blocks.iter().for_each(|block| face.block(block));
    face.sheet.finish()
}

/// The name of the nursery, the day, and whether another day is looked at.
fn page_top(picture: &Picture, wording: &Wording, sheet: &mut Sheet) {
    let nursery = picture.site.nursery.on(picture.day);
    let name = nursery.map_or_else(|| wording.page_unnamed(), |set| cleaned(&set.name.0));
    let day = wording.day(picture.day);
    let today = if picture.looking == Looking::Today { wording.page_today(day.clone()) } else { day.clone() };
    let room = sheet.width().saturating_sub(width_of(&today) + 2);
    let name = shortened(&name, room);
    let gap = " ".repeat(sheet.width().saturating_sub(width_of(&name) + width_of(&today)));
    sheet.hanging(&format!("{name}{gap}"), Ink::Bold, &today, Ink::Plain);
    match picture.looking {
        Looking::Today => {}
        Looking::Back => sheet.paragraph(&wording.page_back(day), Ink::Bold),
        Looking::Ahead => sheet.paragraph(&wording.page_ahead(day), Ink::Bold),
    }
    if let Some(known) = picture.known {
        let offset = nursery.map_or(0.0, |set| set.utc_offset_h.0);
        sheet.paragraph(&wording.page_known(wording.day(known.day(offset))), Ink::Bold);
    }
}

/// A page while it is laid out.
pub(super) struct Face<'a> {
    pub(super) sheet: Sheet,
    wording: &'a Wording,
    label_room: usize,
}

impl Face<'_> {
    fn block(&mut self, block: &Block) {
        match block {
            Block::Gap => self.sheet.gap(),
            Block::Heading(text) => self.sheet.heading(text),
            Block::Verdict(good, text) => {
                let (mark, ink) = if *good { ("+ ", Ink::Ready) } else { ("x ", Ink::Waits) };
                self.sheet.hanging(mark, ink, text, Ink::Bold);
            }
            Block::Line(line) => self.line(line),
            Block::Facts(facts) => self.facts(facts),
            Block::Part(heading, facts) | Block::Reckoning(heading, facts) => {
                self.sheet.gap();
                self.sheet.hanging("= ", Ink::Plain, heading, Ink::Bold);
                self.facts(facts);
            }
            Block::Questions(questions) => {
                let room = questions.iter().map(|one| width_of(&one.name)).max().unwrap_or(0);
                questions.iter().for_each(|one| self.question(one, room));
            }
            Block::Led(name, text) => self.sheet.hanging(&format!("{name}  "), Ink::Bold, text, Ink::Plain),
            Block::Offers(offers) => self.offers(offers),
            Block::Trays(groups) => self.trays(groups),
            Block::Named(rows) => self.named(rows),
        }
    }

    pub(super) fn line(&mut self, line: &Line) {
        let (mark, ink) = self.mark(line.mark.as_ref());
        self.sheet.hanging(&format!("{}{mark}", " ".repeat(line.depth * STEP)), ink, &line.text, ink_of(line.tone));
    }

    /// A sign with the blank behind it.
    pub(super) fn mark(&self, mark: Option<&Mark>) -> (String, Ink) {
        match mark {
            None => (String::new(), Ink::Plain),
            Some(Mark::Sign(sign, tone)) => (format!("{sign} "), ink_of(*tone)),
            Some(Mark::Answered(answered)) => (format!("{} ", answered.mark()), ink_of_answer(*answered)),
        }
    }

    fn facts(&mut self, facts: &Facts) {
        facts.lines().for_each(|(label, text)| self.labelled(label, text));
        if !facts.entries.is_empty() {
            let entries: Vec<String> = facts.entries.iter().map(ToString::to_string).collect();
            self.labelled(&self.wording.label_entries(), &entries.join(", "));
        }
    }

    /// A text behind its label.
    fn labelled(&mut self, label: &str, text: &str) {
        let beginning = format!("{}{}  ", " ".repeat(INDENT), left_aligned(label, self.label_room));
        self.sheet.hanging(&beginning, Ink::Plain, text, Ink::Plain);
    }

    fn question(&mut self, question: &Question, name_room: usize) {
        self.sheet.gap();
        let beginning = format!("{} {}  ", question.answered.mark(), left_aligned(&question.name, name_room));
        self.sheet.hanging(&beginning, ink_of_answer(question.answered), &question.state, Ink::Bold);
        self.labelled(&self.wording.label_why(), &question.reason);
        self.facts(&question.facts);
    }
}

/// What a tone looks like here.
fn ink_of(tone: Tone) -> Ink {
    match tone {
        Tone::Plain => Ink::Plain,
        Tone::Strong => Ink::Bold,
        Tone::Good => Ink::Ready,
        Tone::Waits => Ink::Waits,
        Tone::Danger => Ink::Danger,
    }
}

fn ink_of_answer(answered: Answered) -> Ink {
    match answered {
        Answered::HoldsBack | Answered::UnknownHoldsBack | Answered::Warns => Ink::Waits,
        Answered::Met => Ink::Ready,
        Answered::Unmet | Answered::Unknown => Ink::Plain,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::SpeciesKey;
    use crate::cli::test_picture::small;
    use crate::page::Asked;
    use crate::page::why::{why_bed, why_pair, why_tray};
    use crate::reckon::forecast::{ForecastBasis, outlook};
    use crate::reckon::round;
    use crate::wording::Lang;

    fn every_page(width: usize, lang: Lang, colour: bool) -> Vec<String> {
        let (picture, wording) = (small(), Wording::new(lang));
        let (told, due) = (outlook(&picture, ForecastBasis::OwnRecords), round(&picture));
        let asked = Asked { picture: &picture, wording: &wording };
        let trays = picture.trays.values().map(|tray| why_tray(tray, &told, (&due, None), asked));
        let beds = picture.beds.values().map(|bed| why_bed(bed, (None, None), asked));
        let pairs = picture.pairs.iter().map(|pair| why_pair(pair, asked));
        trays.chain(beds).chain(pairs).map(|page| page_text(&page, &picture, &wording, width, colour)).collect()
    }

    #[test]
    fn no_line_is_wider_than_the_page_in_either_language() {
        for lang in Lang::ALL {
            for width in 40..=120 {
                for line in every_page(width, lang, false).iter().flat_map(|page| page.lines()) {
                    assert!(width_of(line) <= width, "{width}: {line}");
                    assert!(!line.contains('\u{1b}'));
                }
            }
        }
        assert!(every_page(80, Lang::En, true).iter().all(|page| page.contains("\u{1b}[")));
    }

    #[test]
    fn a_pair_shows_every_question_with_what_is_needed_known_and_its_source() {
        let picture = small();
        let pair = picture.pairs.iter().last().unwrap();
        let wording = Wording::new(Lang::En);
        let page = why_pair(pair, Asked { picture: &picture, wording: &wording });
        let text = page_text(&page, &picture, &wording, 80, false);
        insta::assert_snapshot!(text, @r#"
Tumbaro school nursery                                        today, 14 Mar 2026

Tray cof-031 for bed Upper terrace
x does not fit

x step in light      holds it back
    why          stood in 30 % light, this bed has 60 %: 2.0 times as bright,
                 bring it out in 2 steps first
    needed       at most 1.6 times as bright
    known        30 % to 60 % light, 2.0 times as bright (reckoned)
    source       common practice

? light now          not known, holds it back
    why          the light is not known: read the light in this bed
    needed       30 to 50 % light
    known        not known
    source       common practice for young arabica

x weeding            holds it back
    why          weeding is not written down: weed the rings, then write it
    needed       weeded, at most 30 d ago
    known        no (reckoned)
    source       common practice

+ days since sowing  met
    why          310 days old, 210 needed
    needed       at least 210 d
    known        310 d (counted)
    expected     since 4 Dec 2025
    source       Wintgens 2004, Coffee
    entries      k3f9:12
    Care: Cloth from a firm ladder that somebody holds, not from crates or
    tanks. Trays: knees bent.
    Care: Machete and hoe sharp and sheathed, boots on; two arm's lengths apart;
    cut away from the leg.
    Local rules, the label and licensed practice lead over what is said here.
"#);
    }

    #[test]
    fn a_species_no_bed_plans_is_said_so() {
        let picture = small();
        let bed = &picture.beds[&crate::base::BedName::new("Lower terrace").unwrap()];
        let avocado = SpeciesKey::new("AVO");
        let wording = Wording::new(Lang::En);
        let page = why_bed(bed, (Some(&avocado), None), Asked { picture: &picture, wording: &wording });
        let text = page_text(&page, &picture, &wording, 80, false);
        assert!(text.contains("Lower terrace does not plan avocado"), "{text}");
    }
}
