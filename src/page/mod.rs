//! What a page says, whatever shows it: blocks in their order. A face (lines of text, a screen, later paper) decides on
//! columns, colours, how entries are named and what is folded.

pub(crate) mod care;
pub(crate) mod lot;
pub(crate) mod matching;
pub(crate) mod place;
pub(crate) mod ready;
pub(crate) mod rows;
pub(crate) mod stop;
pub(crate) mod today;
pub(crate) mod walk;
pub(crate) mod why;

use crate::base::{EntryId, SpeciesKey};
use crate::reckon::picture::answered::Answered;
use crate::reckon::picture::{Criterion, Pair, Picture};
use crate::wording::Wording;
use crate::wording::page::Labelled;
use crate::wording::verdict::About;
use rows::{Named, Offer, TrayRow};

/// What a page is made from.
#[derive(Clone, Copy)]
pub(crate) struct Asked<'a> {
    /// The Picture of the day.
    pub(crate) picture: &'a Picture,
    /// The sentences.
    pub(crate) wording: &'a Wording,
}

impl Asked<'_> {
    /// The name of a species.
    pub(crate) fn species(&self, key: Option<&SpeciesKey>) -> String {
        key.map_or_else(
            || self.wording.species_unknown(),
            |key| self.wording.species_of(key, &self.picture.site.species),
        )
    }

    /// What plants can do to those who handle them.
    fn dangers(&self, plants: &[SpeciesKey]) -> Vec<Labelled> {
        self.wording.plant_dangers(&self.wording.label_plant(), plants, &self.picture.site.species)
    }

    /// A page with the labels of verdicts.
    fn page(&self) -> Page {
        let mut labels = self.wording.fact_labels();
        labels.extend(self.wording.forecast_labels());
        labels.push(self.wording.label_why());
        Page::with_labels(labels)
    }
}

/// The names of the questions that hold nothing back and ask for care.
fn names_to_watch(criteria: &[Criterion], wording: &Wording) -> String {
    let warns = criteria.iter().filter(|one| one.answered() == Answered::Warns);
    warns.map(|criterion| wording.rule_name(criterion.rule())).collect::<Vec<_>>().join(", ")
}

/// What to take care of where plants of a tray go into some beds: once where it is the same in all, else bed by bed; none where
/// there is nothing.
fn take_care(pairs: &[&Pair], wording: &Wording) -> Option<String> {
    let of = |pair: &&Pair| (pair.bed().to_string(), names_to_watch(&pair.once().criteria.once(), wording));
    let by_bed: Vec<(String, String)> = pairs.iter().map(of).filter(|(_, names)| !names.is_empty()).collect();
    let (_, first) = by_bed.first()?;
    if by_bed.len() == pairs.len() && by_bed.iter().all(|(_, names)| names == first) {
        return Some(wording.take_care(first));
    }
    let listed: Vec<String> = by_bed.iter().map(|(bed, names)| format!("{bed}: {names}")).collect();
    Some(wording.take_care(listed.join("; ")))
}

/// How a piece of text is meant; each face has its own ink for it.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Tone {
    /// As all other text.
    Plain,
    /// What counts most.
    Strong,
    /// It can go, or is gained.
    Good,
    /// It waits, or is lost.
    Waits,
    /// Loss and danger.
    Danger,
}

/// The sign before a line.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum Mark {
    /// A sign of its own.
    Sign(String, Tone),
    /// The sign of how a question stands.
    Answered(Answered),
}

/// A line of text; what does not fit folds under itself.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Line {
    /// How deep it stands under what is above it: 0, 1 or 2.
    pub(crate) depth: usize,
    /// The sign before it.
    pub(crate) mark: Option<Mark>,
    /// What it says.
    pub(crate) text: String,
    /// How that is meant.
    pub(crate) tone: Tone,
}

/// Labels with what stands behind them (an empty label where a line goes on), and the entries all of it rests on.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub(crate) struct Facts {
    /// Labels and texts.
    pub(crate) pairs: Vec<Labelled>,
    /// The same of what it is reckoned from: formulas, figures, sources. A folded page leaves it out.
    pub(crate) rest: Vec<Labelled>,
    /// Entries; each face names them in its way.
    pub(crate) entries: Vec<EntryId>,
}

impl From<Vec<Labelled>> for Facts {
    fn from(pairs: Vec<Labelled>) -> Facts {
        Facts { pairs, ..Facts::default() }
    }
}

impl Facts {
    /// Everything that stands in it.
    pub(crate) fn lines(&self) -> impl Iterator<Item = &Labelled> {
        self.pairs.iter().chain(&self.rest)
    }

    /// Without what a folded page leaves out; none where nothing stays.
    fn folded(self) -> Option<Facts> {
        Some(Facts::from(self.pairs)).filter(|facts| !facts.pairs.is_empty())
    }
}

/// One question of a verdict.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Question {
    /// How it stands, which gives its mark.
    pub(crate) answered: Answered,
    /// What is asked.
    pub(crate) name: String,
    /// What is so where it is met: "not held back".
    pub(crate) as_met: String,
    /// How it stands, in a word or two.
    pub(crate) state: String,
    /// Why, in one sentence.
    pub(crate) reason: String,
    /// What is needed and known, and where that comes from.
    pub(crate) facts: Facts,
}

/// A piece of a page.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum Block {
    /// Some space.
    Gap,
    /// A heading, with space before it.
    Heading(String),
    /// What is said first, good or not.
    Verdict(bool, String),
    /// A line.
    Line(Line),
    /// Facts.
    Facts(Facts),
    /// Facts under a heading of their own.
    Part(String, Facts),
    /// How it is reckoned, under a heading of its own: last, and folded away with what is met.
    Reckoning(String, Facts),
    /// The questions of a verdict, in the order in which they are asked.
    Questions(Vec<Question>),
    /// A name, and what is said of it.
    Led(String, String),
    /// Trays that can go.
    Offers(Vec<Offer>),
    /// Trays with what they wait for, some under a heading; columns are alike for all of them.
    Trays(Vec<(Option<String>, Vec<TrayRow>)>),
    /// Names with what is said of each.
    Named(Vec<Named>),
}

/// A page.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub(crate) struct Page {
    /// Its pieces.
    pub(crate) blocks: Vec<Block>,
    /// All labels that pages of this kind may have: what stands behind them is aligned on each of them alike.
    pub(crate) labels: Vec<String>,
}

impl Page {
    /// An empty page with such labels.
    pub(crate) fn with_labels(labels: Vec<String>) -> Page {
        Page { blocks: Vec::new(), labels }
    }

    /// A page of one sentence.
    pub(crate) fn of_sentence(text: String) -> Page {
        let mut page = Page::default();
        page.sentence(text);
        page
    }

    /// Some space.
    pub(crate) fn gap(&mut self) {
        self.blocks.push(Block::Gap);
    }

    /// A heading.
    pub(crate) fn heading(&mut self, text: String) {
        self.blocks.push(Block::Heading(text));
    }

    /// What is said first, good or not.
    pub(crate) fn verdict(&mut self, good: bool, text: String) {
        self.blocks.push(Block::Verdict(good, text));
    }

    /// A sentence.
    pub(crate) fn sentence(&mut self, text: String) {
        self.line(0, text, Tone::Plain);
    }

    /// A line so deep under what is above it.
    pub(crate) fn line(&mut self, depth: usize, text: String, tone: Tone) {
        self.blocks.push(Block::Line(Line { depth, mark: None, text, tone }));
    }

    /// A line behind a sign.
    pub(crate) fn marked(&mut self, depth: usize, mark: Mark, text: String, tone: Tone) {
        self.blocks.push(Block::Line(Line { depth, mark: Some(mark), text, tone }));
    }

    /// A plain line behind a sign that means nothing.
    pub(crate) fn item(&mut self, text: String) {
        self.marked(0, Mark::Sign("-".to_string(), Tone::Plain), text, Tone::Plain);
    }

    /// Facts.
    pub(crate) fn facts(&mut self, facts: impl Into<Facts>) {
        self.blocks.push(Block::Facts(facts.into()));
    }

    /// Facts under a heading of their own; nothing where there are none.
    pub(crate) fn part(&mut self, heading: String, facts: impl Into<Facts>) {
        let facts = facts.into();
        if facts.lines().next().is_some() {
            self.blocks.push(Block::Part(heading, facts));
        }
    }

    /// How it is reckoned; nothing where there is nothing.
    pub(crate) fn reckoning(&mut self, heading: String, facts: Facts) {
        if !facts.pairs.is_empty() {
            self.blocks.push(Block::Reckoning(heading, facts));
        }
    }

    /// The questions of a verdict; that nothing is asked is said.
    pub(crate) fn questions(&mut self, criteria: &[Criterion], about: About, wording: &Wording) {
        if criteria.is_empty() {
            self.sentence(wording.why_nothing_asked());
            return;
        }
        let question = |criterion: &Criterion| Question {
            answered: criterion.answered(),
            name: wording.rule_name(criterion.rule()),
            as_met: wording.rule_as_met(criterion.rule()),
            state: wording.answered_words(criterion.answered()),
            reason: wording.reason(criterion, about),
            facts: Facts {
                pairs: Vec::new(),
                rest: wording.criterion_facts(criterion),
                entries: criterion.entries.clone(),
            },
        };
        self.blocks.push(Block::Questions(criteria.iter().map(question).collect()));
    }

    /// What holds back and what to do about it, before all else; what is met in one line each list, and nothing of what it is
    /// reckoned from. A line names what shows all of it: a key or an option. A narrow page does not name what is met.
    pub(crate) fn folded(mut self, all: &str, is_narrow: bool, wording: &Wording) -> Page {
        let (mut folded, mut section) = (Vec::with_capacity(self.blocks.len()), Vec::new());
        let leaves_out = |facts: &Facts| !facts.rest.is_empty() || !facts.entries.is_empty();
        let mut says_all = !self.blocks.iter().any(|block| match block {
            Block::Facts(facts) | Block::Part(_, facts) => leaves_out(facts),
            Block::Reckoning(..) => true,
            _ => false,
        });
        let mut close = |section: &mut Vec<Block>| {
            let (first, behind) = folded_section(std::mem::take(section), all, is_narrow, wording);
            says_all |= first.iter().any(|block| matches!(block, Block::Questions(_)));
            folded.extend(first.into_iter().chain(behind));
        };
        for block in std::mem::take(&mut self.blocks) {
            if matches!(block, Block::Heading(_)) {
                close(&mut section);
            }
            section.push(block);
        }
        close(&mut section);
        self.blocks = folded;
        if !says_all {
            self.gap();
            self.sentence(wording.why_rest(all));
        }
        self
    }

    /// A name, and what is said of it.
    pub(crate) fn led(&mut self, name: String, text: String) {
        self.blocks.push(Block::Led(name, text));
    }

    /// Trays that can go.
    pub(crate) fn offers(&mut self, offers: Vec<Offer>) {
        self.blocks.push(Block::Offers(offers));
    }

    /// Trays with what they wait for.
    pub(crate) fn trays(&mut self, groups: Vec<(Option<String>, Vec<TrayRow>)>) {
        self.blocks.push(Block::Trays(groups));
    }

    /// Names with what is said of each.
    pub(crate) fn named(&mut self, rows: Vec<Named>) {
        self.blocks.push(Block::Named(rows));
    }

    /// How a new nursery writes down its first tray.
    fn first_tray(&mut self, wording: &Wording) {
        self.gap();
        self.sentence(wording.teach_first_tray());
        self.line(1, wording.teach_first_tray_command(), Tone::Strong);
    }

    /// What another page says, under this one; its labels are aligned with those of this one.
    pub(crate) fn add(&mut self, other: Page) {
        self.blocks.extend(other.blocks);
        self.labels.extend(other.labels);
    }
}

/// A part of a page under one heading, folded: what is said first, and what stands behind it.
fn folded_section(section: Vec<Block>, all: &str, is_narrow: bool, wording: &Wording) -> (Vec<Block>, Vec<Block>) {
    let asks = section.iter().any(|block| matches!(block, Block::Questions(_)));
    let (mut first, mut behind) = (Vec::new(), Vec::new());
    for block in section {
        let later = if asks { &mut behind } else { &mut first };
        match block {
            Block::Questions(questions) => first.extend(folded_questions(questions, all, is_narrow, wording)),
            Block::Facts(facts) => later.extend(facts.folded().map(Block::Facts)),
            Block::Part(heading, facts) => later.extend(facts.folded().map(|facts| Block::Part(heading, facts))),
            Block::Gap => later.push(Block::Gap),
            Block::Reckoning(..) => {}
            other => first.push(other),
        }
    }
    (first, behind)
}

fn folded_questions(mut questions: Vec<Question>, all: &str, is_narrow: bool, wording: &Wording) -> Vec<Block> {
    questions.sort_by_key(|question| question.answered);
    let of = |answered: Answered, said: fn(&Question) -> &str| -> Vec<&str> {
        questions.iter().filter(|one| one.answered == answered).map(said).collect()
    };
    let (unknown, met) = (of(Answered::Unknown, |one| &one.name), of(Answered::Met, |one| &one.as_met));
    let mut lines = Vec::new();
    if !unknown.is_empty() {
        lines.push((Answered::Unknown, wording.why_unknown_many(unknown.join(", "))));
    }
    if !met.is_empty() {
        let text = match is_narrow {
            true => wording.why_met_many(met.len() as i64, all),
            false => wording.why_met(met.len() as i64, met.join(", "), all),
        };
        lines.push((Answered::Met, text));
    }
    let is_said_alone = |one: &Question| !matches!(one.answered, Answered::Unknown | Answered::Met);
    let short = |one: &Question| Question { facts: Facts::default(), ..one.clone() };
    let mut blocks = vec![Block::Questions(questions.iter().filter(|one| is_said_alone(one)).map(short).collect())];
    for (answered, text) in lines {
        let mark = Some(Mark::Answered(answered));
        blocks.extend([Block::Gap, Block::Line(Line { depth: 0, mark, text, tone: Tone::Plain })]);
    }
    blocks
}
