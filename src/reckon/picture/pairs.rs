//! Trays against beds: which fits where. Their questions are put together only where somebody asks.

use imbl::OrdMap;
use std::borrow::Cow;
use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

use super::{BedPicture, Criterion, Rule, TrayPicture};
use crate::base::{BedName, Day, SpeciesKey, TrayCode};
use crate::reckon::pair::{own_questions, questions_of};
use crate::reckon::tray::Stood;
use crate::words;

words! {
    /// Whose question it is.
    Side {
        /// Of the tray, whatever the bed.
        Tray: "tray";
        /// Of the bed, whatever the tray.
        Bed: "bed";
        /// Of this tray in this bed.
        Pair: "pair";
    }
}

/// A question that holds a pair back, and whose it is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct HeldBy {
    /// Whose.
    pub of: Side,
    /// The question.
    pub rule: Rule,
}

/// How much holds a pair back: fewer reasons come first, then what ends sooner; what has no end comes last.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub(crate) struct Misses {
    /// Questions that hold it back, each once.
    pub(in crate::reckon) reasons: usize,
    /// Whether one of them has no day on which it is expected to be met.
    pub(in crate::reckon) is_open: bool,
    /// The day on which the last of them is expected to be met.
    pub(in crate::reckon) until: Option<Day>,
}

impl Misses {
    /// Of the questions that hold back and when each is expected to be met.
    pub(crate) fn of(held: &[(Rule, Option<Day>)]) -> Misses {
        let is_open = held.is_empty() || held.iter().any(|(_, until)| until.is_none());
        let until = held.iter().filter_map(|(_, until)| *until).max().filter(|_| !is_open);
        Misses { reasons: held.len(), is_open, until }
    }
}

/// A tray against a bed on a day.
#[derive(Clone, PartialEq, Debug)]
pub struct PairPicture {
    /// The tray.
    pub tray: TrayCode,
    /// The bed.
    pub bed: BedName,
    /// The species of the tray, which the bed's plan names.
    pub species: SpeciesKey,
    /// Whether nothing holds it back.
    pub fits: bool,
    /// What holds it back: the tray's questions, the bed's, its own.
    pub held_by: Vec<HeldBy>,
    /// How much holds it back, and how long.
    pub(crate) misses: Misses,
    /// How many could go: the smaller of the likely plantable and the open positions.
    pub plants: u32,
    /// Whether some of the bed's open positions lie in the species' band of light.
    pub in_light: bool,
    /// The questions of the pair: the tray's, its own (hardening and the step in light), the bed's.
    pub criteria: Questions,
}

/// What a pair is made of.
#[derive(Clone, Debug)]
pub(in crate::reckon) struct MadeOf {
    pub tray: Arc<TrayPicture>,
    pub stood: Arc<Stood>,
    pub bed: Arc<BedPicture>,
    /// Which line of the bed's plan.
    pub line: usize,
}

/// The questions of a pair: as a slice, put together when first looked at.
#[derive(Clone, Debug)]
pub struct Questions {
    made_of: Option<MadeOf>,
    asked: OnceLock<Vec<Criterion>>,
}

impl Questions {
    pub(in crate::reckon) fn made_of(made_of: MadeOf) -> Questions {
        Questions { made_of: Some(made_of), asked: OnceLock::new() }
    }

    /// All of them without keeping them: of very many pairs each is looked at once.
    pub(crate) fn once(&self) -> Cow<'_, [Criterion]> {
        match (self.asked.get(), &self.made_of) {
            (Some(asked), _) => Cow::Borrowed(asked),
            (None, Some(made_of)) => Cow::Owned(questions_of(made_of)),
            (None, None) => Cow::Borrowed(&[]),
        }
    }

    /// Those of the pair alone: neither the tray's nor the bed's.
    pub fn own(&self) -> Vec<Criterion> {
        match &self.made_of {
            Some(made_of) => own_questions(made_of),
            None => self.iter().filter(|criterion| criterion.rule() == Rule::ExposureStep).cloned().collect(),
        }
    }
}

impl From<Vec<Criterion>> for Questions {
    fn from(criteria: Vec<Criterion>) -> Questions {
        Questions { made_of: None, asked: OnceLock::from(criteria) }
    }
}

impl std::ops::Deref for Questions {
    type Target = [Criterion];

    fn deref(&self) -> &[Criterion] {
        self.asked.get_or_init(|| self.made_of.as_ref().map(questions_of).unwrap_or_default())
    }
}

impl PartialEq for Questions {
    fn eq(&self, other: &Questions) -> bool {
        **self == **other
    }
}

/// Every tray with living plants against every bed whose plan names its species.
#[derive(Clone, Default, Debug)]
pub struct Pairs {
    of_tray: OrdMap<TrayCode, Arc<[Arc<PairPicture>]>>,
}

impl Pairs {
    pub(in crate::reckon) fn set(&mut self, tray: &TrayCode, pairs: Vec<Arc<PairPicture>>) {
        if pairs.is_empty() {
            self.of_tray.remove(tray);
        } else {
            self.of_tray.insert(tray.clone(), pairs.into());
        }
    }

    /// Fits first, those in the light before others, then by tray and bed.
    pub fn iter(&self) -> impl Iterator<Item = &Arc<PairPicture>> {
        const PASSES: [(bool, bool); 4] = [(true, true), (true, false), (false, true), (false, false)];
        let of_pass = |pass: (bool, bool)| move |pair: &&Arc<PairPicture>| (pair.fits, pair.in_light) == pass;
        PASSES.into_iter().flat_map(move |pass| self.of_tray.values().flat_map(|of| of.iter()).filter(of_pass(pass)))
    }

    /// The pairs of one tray, by bed.
    pub fn of(&self, tray: &TrayCode) -> &[Arc<PairPicture>] {
        self.of_tray.get(tray).map_or(&[], |pairs| &**pairs)
    }

    /// The pair of a tray that misses least; of several the bed that comes first by name.
    pub(crate) fn nearest(&self, tray: &TrayCode) -> Option<&Arc<PairPicture>> {
        self.of(tray).iter().min_by_key(|pair| (pair.misses, &pair.bed))
    }

    /// Those of which something is true.
    pub(in crate::reckon) fn kept(&self, keep: impl Fn(&PairPicture) -> bool) -> Pairs {
        let mut kept = Pairs::default();
        for (tray, of_it) in &self.of_tray {
            kept.set(tray, of_it.iter().filter(|pair| keep(pair)).cloned().collect());
        }
        kept
    }

    /// The pair of a tray and a bed.
    pub fn get(&self, tray: &TrayCode, bed: &BedName) -> Option<&Arc<PairPicture>> {
        let pairs = self.of(tray);
        pairs.binary_search_by(|pair| pair.bed.cmp(bed)).ok().and_then(|at| pairs.get(at))
    }
}

impl PartialEq for Pairs {
    fn eq(&self, other: &Pairs) -> bool {
        self.of_tray == other.of_tray
    }
}

impl From<Vec<Arc<PairPicture>>> for Pairs {
    fn from(all: Vec<Arc<PairPicture>>) -> Pairs {
        let mut by_tray: BTreeMap<TrayCode, Vec<Arc<PairPicture>>> = BTreeMap::new();
        for pair in all {
            by_tray.entry(pair.tray.clone()).or_default().push(pair);
        }
        let mut pairs = Pairs::default();
        for (tray, mut of_it) in by_tray {
            of_it.sort_by(|a, b| a.bed.cmp(&b.bed));
            pairs.set(&tray, of_it);
        }
        pairs
    }
}
