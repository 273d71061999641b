//! What a page says, whatever shows it: blocks in their order. A face (lines of text, a screen, later paper) decides on
//! columns, colours, how entries are named and what is folded.

pub(crate) mod lot;
pub(crate) mod ready;
pub(crate) mod rows;
pub(crate) mod stop;
pub(crate) mod today;
pub(crate) mod walk;
pub(crate) mod why;

use crate::base::{EntryId, SpeciesKey};
use crate::reckon::picture::answered::Answered;
use crate::reckon::picture::{Criterion, PairPicture, Picture, Rule};
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

/// The names of the questions that hold nothing back and ask for care. Mulch and fence have stops of their own.
fn names_to_watch(criteria: &[Criterion], wording: &Wording) -> String {
    let own_stop = |rule: Rule| matches!(rule, Rule::Mulched | Rule::Fenced);
    let warns = criteria.iter().filter(|one| one.answered() == Answered::Warns && !own_stop(one.rule()));
    warns.map(|criterion| wording.rule_name(criterion.rule())).collect::<Vec<_>>().join(", ")
}

/// What to take care of where plants of a tray go into some beds: once where it is the same in all, else bed by bed; none where
/// there is nothing.
fn take_care(pairs: &[&PairPicture], wording: &Wording) -> Option<String> {
    let of = |pair: &&PairPicture| (pair.bed.to_string(), names_to_watch(&pair.criteria, wording));
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
    /// Entries; each face names them in its way.
    pub(crate) entries: Vec<EntryId>,
}

impl From<Vec<Labelled>> for Facts {
    fn from(pairs: Vec<Labelled>) -> Facts {
        Facts { pairs, entries: Vec::new() }
    }
}

/// One question of a verdict.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Question {
    /// How it stands, which gives its mark.
    pub(crate) answered: Answered,
    /// What is asked.
    pub(crate) name: String,
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
        if !facts.pairs.is_empty() {
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
            state: wording.answered_words(criterion.answered()),
            reason: wording.reason(criterion, about),
            facts: Facts { pairs: wording.criterion_facts(criterion), entries: criterion.entries.clone() },
        };
        self.blocks.push(Block::Questions(criteria.iter().map(question).collect()));
    }

    /// Questions that are met folded into one line each list, what holds back first, and how it is reckoned left out. That line names what shows all of them:
    /// a key or an option.
    pub(crate) fn folded(mut self, all: &str, wording: &Wording) -> Page {
        let mut folded = Vec::with_capacity(self.blocks.len());
        for block in std::mem::take(&mut self.blocks) {
            let mut questions = match block {
                Block::Questions(questions) => questions,
                Block::Reckoning(..) => continue,
                other => {
                    folded.push(other);
                    continue;
                }
            };
            questions.sort_by_key(|question| question.answered);
            let (met, rest): (Vec<Question>, Vec<Question>) =
                questions.into_iter().partition(|question| question.answered == Answered::Met);
            folded.push(Block::Questions(rest));
            if !met.is_empty() {
                let names: Vec<String> = met.iter().map(|question| question.name.clone()).collect();
                let text = wording.why_met(met.len() as i64, names.join(", "), all);
                let mark = Some(Mark::Answered(Answered::Met));
                folded.extend([Block::Gap, Block::Line(Line { depth: 0, mark, text, tone: Tone::Plain })]);
            }
        }
        self.blocks = folded;
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
