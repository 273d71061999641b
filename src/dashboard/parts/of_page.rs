//! A page on the screen: questions stand before the parts about what is expected, and first among them what presses.

use super::Sheet;
use crate::base::EntryId;
use crate::dashboard::look::{Ink, answered_mark};
use crate::page::rows::{Offer, TrayRow};
use crate::page::{Block, Facts, Line, Mark, Page, Question, Tone};
use crate::wording::Wording;

/// How the entries of a page are named.
pub(crate) type NameEntries<'a> = &'a dyn Fn(&[EntryId]) -> String;

impl Sheet {
    /// Lays a page out under what is there.
    pub(crate) fn add(&mut self, page: &Page, wording: &Wording, entries: NameEntries<'_>) {
        if !page.labels.is_empty() {
            self.labels(page.labels.iter().map(String::as_str));
        }
        let is_part = |block: &&Block| matches!(block, Block::Part(..) | Block::Reckoning(..));
        for block in page.blocks.iter().filter(|block| !is_part(block)).chain(page.blocks.iter().filter(is_part)) {
            match block {
                Block::Gap => self.gap(),
                Block::Heading(text) => self.heading(text),
                Block::Verdict(good, text) => {
                    let (mark, ink) = if *good { ("+ ", Ink::Good) } else { ("x ", Ink::Waits) };
                    self.hanging(mark, ink, text, Ink::Strong);
                }
                Block::Line(line) => self.add_line(line),
                Block::Facts(facts) => {
                    self.gap();
                    self.add_facts(facts, wording, entries);
                }
                Block::Part(heading, facts) | Block::Reckoning(heading, facts) => {
                    self.heading(heading);
                    self.add_facts(facts, wording, entries);
                }
                Block::Questions(questions) => {
                    let mut pressing_first: Vec<&Question> = questions.iter().collect();
                    pressing_first.sort_by_key(|question| question.answered);
                    pressing_first.into_iter().for_each(|question| self.add_question(question, wording, entries));
                }
                Block::Led(name, text) => self.hanging(&format!("{name}  "), Ink::Strong, text, Ink::Plain),
                Block::Offers(offers) => offers.iter().flat_map(Offer::lines).for_each(|line| self.add_line(&line)),
                Block::Trays(groups) => {
                    for (heading, rows) in groups {
                        heading.iter().for_each(|heading| self.paragraph(heading, Ink::Strong));
                        rows.iter().flat_map(TrayRow::lines).for_each(|line| self.add_line(&line));
                    }
                }
                Block::Named(rows) => rows.iter().for_each(|row| self.add_line(&row.line())),
            }
        }
    }

    fn add_line(&mut self, line: &Line) {
        let (mark, ink) = match &line.mark {
            None => (String::new(), Ink::Plain),
            Some(Mark::Sign(sign, tone)) => (format!("{sign} "), ink_of(*tone)),
            Some(Mark::Answered(answered)) => {
                let (mark, ink) = answered_mark(*answered);
                (format!("{mark} "), ink)
            }
        };
        self.hanging(&mark, ink, &line.text, ink_of(line.tone));
    }

    fn add_facts(&mut self, facts: &Facts, wording: &Wording, entries: NameEntries<'_>) {
        facts.lines().for_each(|(label, text)| self.labelled(label, text));
        if !facts.entries.is_empty() {
            self.labelled(&wording.label_entries(), &entries(&facts.entries));
        }
    }

    /// One question: its mark, name and word, why, what it rests on, its entries.
    fn add_question(&mut self, question: &Question, wording: &Wording, entries: NameEntries<'_>) {
        let (mark, ink) = answered_mark(question.answered);
        self.gap();
        self.hanging(&format!("{mark} "), ink, &format!("{}: {}", question.name, question.state), Ink::Strong);
        self.hanging("  ", Ink::Plain, &question.reason, Ink::Plain);
        self.add_facts(&question.facts, wording, entries);
    }
}

/// What a tone looks like here.
fn ink_of(tone: Tone) -> Ink {
    match tone {
        Tone::Plain => Ink::Plain,
        Tone::Strong => Ink::Strong,
        Tone::Good => Ink::Good,
        Tone::Waits => Ink::Waits,
        Tone::Danger => Ink::Danger,
    }
}
