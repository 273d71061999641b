//! The share of a lot that is expected to live today, and for how long yet.

use super::test_read::{self, SEEN_SHARE, TestRead};
use crate::base::{Day, Range};
use crate::nursery::entry::types::Kept;
use crate::nursery::species::{Profile, Storage};
use crate::reckon::seed::{SeedLife, days_kept, longest_days};
use crate::reckon::stock::{LotStory, StoreWritten};
use crate::science::storage::{LONGEST_LIFE, SHORTEST_LIFE, days_until, still_alive};
use crate::science::viability::{Store, days_to, off_the_ends_pct, sigma_days, viability};
use crate::science::viability_constants::{ViabilityRecord, viability_record};

/// The part of what it began with at which a lot is taken for old: 85 %. FAO 2014, Genebank Standards (from memory).
pub(crate) const OLD_SHARE: f64 = 0.85;
/// The part at which half of it is lost.
pub(crate) const HALF_SHARE: f64 = 0.50;
/// Seeds as of which a percentage that nobody tested here counts where it is 0 or 100 %: a whole test of 4 x 100.
const SEEDS_OF_A_FIGURE: u32 = 400;
/// Days beyond which nothing is foretold: a hundred years. Ours.
const MOST_DAYS: f64 = 36_525.0;

/// Where the beginning comes from.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum StartFrom {
    /// The last test.
    Test,
    /// Written when it came in.
    Arrival,
    /// The profile's figure for fresh seed.
    Handbook,
}

/// What a lot began with.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Start {
    /// The day: of laying out, of arrival, of collection.
    pub day: Day,
    /// The share that lived then.
    pub share: Range,
    /// How that is known.
    pub from: StartFrom,
    /// Seeds it rests on.
    seeds: u32,
}

/// How it is reckoned.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Way {
    /// By the equation of Ellis & Roberts with published constants.
    Equation {
        /// The species' constants and their paper.
        record: &'static ViabilityRecord,
        /// Moisture and temperature now.
        store: Store,
        /// Days in which the probit falls by one, now.
        sigma_days: f64,
        /// Whether moisture and temperature are within what the equation is good for.
        within_limits: bool,
    },
    /// Cold killed it.
    Killed,
    /// Level for a while, then falling: half is gone at its stated life, which may be half as long or twice.
    Life {
        /// The longest it may live, where nobody knows how it was kept, days; else the same as the next.
        longest_days: i32,
        /// Days of that life.
        life_days: i32,
        /// Whether there is an equation for the species, but the lot is not sealed, or moisture or temperature is not written.
        store_unknown: bool,
    },
}

/// What is expected of a lot.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Expected {
    /// The share that lives today.
    pub today: Range,
    /// What it began with.
    pub start: Start,
    /// Days until it is down to 85 % of the beginning; 0 where it is already.
    pub to_old: Range,
    /// Days until it is down to half of the beginning.
    pub to_half: Range,
    /// How it is reckoned.
    pub by: Way,
}

impl Expected {
    /// What is left today of what lived at the beginning, 0 to 1; none where nothing did.
    pub fn left(&self) -> Option<f64> {
        let began = self.start.share.likely;
        (began > 0.0).then(|| (self.today.likely / began).clamp(0.0, 1.0))
    }
}

/// Why nothing is expected.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum NoViability {
    /// Neither a test, nor a figure on arrival, nor one for fresh seed.
    NoStart,
    /// There are no constants, and no days for the way it is kept.
    NoFigures,
    /// There are constants, but moisture and temperature are not written, and no days for the way it is kept.
    StoreUnknown,
    /// There are constants, for seed in a closed vessel, and it lies in the open air, with no days for that.
    OpenAir,
    /// It was tested alive after twice its stated life: only a test tells more.
    OutlivedItsLife,
}

/// What is expected of a lot on a day.
pub(super) fn expected(
    lot: &LotStory,
    profile: Option<&Profile>,
    life: Option<&SeedLife>,
    day: Day,
) -> Result<Expected, NoViability> {
    let start = start(lot, profile).ok_or(NoViability::NoStart)?;
    if life.is_some_and(|life| life.killed_below_c.is_some()) {
        let none = Range::exact(0.0);
        return Ok(Expected { today: none, start, to_old: none, to_half: none, by: Way::Killed });
    }
    // There is no equation for seed that dies when dried.
    let dried =
        profile.filter(|profile| profile.storage.as_ref().is_none_or(|storage| storage.value != Storage::Recalcitrant));
    let record = dried.and_then(|profile| viability_record(&profile.scientific));
    let told = record.and_then(|record| by_equation(lot, record, start, day));
    match (told, life) {
        (Some(told), _) => Ok(told),
        (None, Some(life)) => by_life(lot, profile, life, start, record.is_some(), day),
        (None, None) if record.is_some() && lies_open(lot, day) => Err(NoViability::OpenAir),
        (None, None) if record.is_some() => Err(NoViability::StoreUnknown),
        (None, None) => Err(NoViability::NoFigures),
    }
}

fn start(lot: &LotStory, profile: Option<&Profile>) -> Option<Start> {
    let began = lot.collected.or(lot.received);
    let of_test = |test: &TestRead| {
        let day = began.map_or(test.laid_out, |began| test.laid_out.max(began));
        Start { day, share: test.share, from: StartFrom::Test, seeds: test.seeds }
    };
    let tests = || lot.tests.iter().rev().filter_map(|test| test_read::read(test, profile));
    if let Some(test) = tests().find(|test| test.seen >= SEEN_SHARE) {
        return Some(of_test(&test));
    }
    // What a test that ended too early found alive is alive at the least.
    let early = tests().find(|test| test.germinated > 0);
    match (before_tests(lot, profile, began), early) {
        (Some(start), Some(early)) => {
            let share = start.share;
            let low = share.low.max(early.share.low).min(early.share.likely);
            let likely = share.likely.max(f64::from(early.germinated) / f64::from(early.seeds.max(1)));
            Some(Start { share: Range { low, likely, high: share.high.max(likely) }, ..start })
        }
        (None, early) => early.as_ref().map(of_test),
        (start, None) => start,
    }
}

/// The beginning of a lot that no test tells of.
fn before_tests(lot: &LotStory, profile: Option<&Profile>, began: Option<Day>) -> Option<Start> {
    let told = |day: Day, pct: f64, from: StartFrom| {
        let share = Range::exact((pct / 100.0).clamp(0.0, 1.0));
        Start { day, share, from, seeds: SEEDS_OF_A_FIGURE }
    };
    if let Some((day, pct)) = lot.received.zip(lot.initial_pct) {
        return Some(told(day, pct, StartFrom::Arrival));
    }
    let fresh = profile?.germination_fresh_pct.as_ref()?;
    Some(told(began?, fresh.value, StartFrom::Handbook))
}

fn store_of(written: &StoreWritten) -> Option<Store> {
    Some(Store { moisture_pct: written.moisture_pct?, temp_c: written.temp_c? })
}

/// Seed in a closed vessel keeps the moisture it was written with; in the open air it takes up water again. What is cold with its
/// moisture written is taken for closed.
fn is_sealed(lot: &LotStory, from: Day) -> bool {
    let kept = lot.kept.iter().rev().find(|spell| spell.from <= from).or(lot.kept.first());
    kept.is_some_and(|spell| matches!(spell.what, Kept::DrySealed | Kept::Cold))
}

/// Whether it lies in the open air on a day.
fn lies_open(lot: &LotStory, day: Day) -> bool {
    let kept = lot.kept.iter().rev().find(|spell| spell.from <= day).or(lot.kept.first());
    kept.is_some_and(|spell| spell.what == Kept::DryOpen)
}

/// Probits lost from the beginning to a day in every store it lay in, and the present store with its sigma. Nothing where one
/// of them is not known, or was not sealed.
fn probits_lost(lot: &LotStory, record: &ViabilityRecord, from: Day, day: Day) -> Option<(f64, Store, f64)> {
    let mut lost = 0.0;
    let mut last = None;
    for (number, spell) in lot.stores.iter().enumerate() {
        let end = lot.stores.get(number + 1).map_or(day, |next| next.from.min(day));
        if number + 1 < lot.stores.len() && end <= from {
            continue;
        }
        let store = store_of(&spell.what).filter(|_| is_sealed(lot, spell.from))?;
        let sigma = sigma_days(record.constants, store).ok().filter(|sigma| *sigma > 0.0)?;
        lost += f64::from(end.days_since(spell.from.max(from)).max(0)) / sigma;
        last = Some((store, sigma));
    }
    last.map(|(store, sigma)| (lost, store, sigma))
}

fn by_equation(lot: &LotStory, record: &'static ViabilityRecord, start: Start, day: Day) -> Option<Expected> {
    let (lost, store, sigma) = probits_lost(lot, record, start.day, day)?;
    // As many days in the present store as lose what was lost in all the stores it lay in.
    let as_days = lost * sigma;
    let began = |share: f64| off_the_ends_pct((share * 100.0).clamp(0.0, 100.0), start.seeds).ok();
    let (low, likely, high) = (began(start.share.low)?, began(start.share.likely)?, began(start.share.high)?);
    let until = |part: f64| {
        // A beginning below the target has reached it.
        let days = |began: f64| {
            let whole = days_to(record.constants, store, began, likely * part).ok()?.unwrap_or(0.0);
            Some((whole - as_days).clamp(0.0, MOST_DAYS))
        };
        Some(Range { low: days(low)?, likely: days(likely)?, high: days(high)? })
    };
    let today =
        |began: f64| viability(record.constants, store, began, as_days).ok()?.viability_pct.map(|pct| pct / 100.0);
    Some(Expected {
        today: Range { low: today(low)?, likely: today(likely)?, high: today(high)? },
        start,
        to_old: until(OLD_SHARE)?,
        to_half: until(HALF_SHARE)?,
        by: Way::Equation { record, store, sigma_days: sigma, within_limits: store.within_limits() },
    })
}

/// By its stated life from the beginning on: level, then falling. Lives by which half would have been dead before a test found it alive
/// are not its own.
fn by_life(
    lot: &LotStory,
    profile: Option<&Profile>,
    life: &SeedLife,
    start: Start,
    store_unknown: bool,
    day: Day,
) -> Result<Expected, NoViability> {
    let at_start = f64::from(start.day.days_since(life.from).max(0));
    let now = f64::from(day.days_since(life.from)).max(at_start);
    let alive = start.share.likely > 0.0 && start.from == StartFrom::Test;
    let days = f64::from(life.days);
    let mut lives = vec![SHORTEST_LIFE * days, days, LONGEST_LIFE * f64::from(life.longest_days)];
    if alive {
        lives.retain(|life| *life > at_start);
    }
    let (Some(short), Some(long)) = (lives.first(), lives.last()) else { return Err(NoViability::OutlivedItsLife) };
    let usual = lives.iter().copied().find(|life| *life >= days).unwrap_or(*long);
    let before = kept_before(lot, profile, life, start.day, day)?;
    let left = |share: f64, life: f64, before: f64| {
        share.clamp(0.0, 1.0) * before * still_alive(life, at_start, now).unwrap_or(0.0)
    };
    let until = |part: f64| {
        let target = start.share.likely * part;
        let days = |share: f64, life: f64, before: f64| {
            let began = share.clamp(0.0, 1.0) * before;
            let whole = if began > target { days_until(life, at_start, target / began).unwrap_or(0.0) } else { 0.0 };
            (whole - (now - at_start)).clamp(0.0, MOST_DAYS)
        };
        Range {
            low: days(start.share.low, *short, before.low),
            likely: days(start.share.likely, usual, before.likely),
            high: days(start.share.high, *long, before.high),
        }
    };
    Ok(Expected {
        today: Range {
            low: left(start.share.low, *short, before.low),
            likely: left(start.share.likely, usual, before.likely),
            high: left(start.share.high, *long, before.high),
        },
        start,
        to_old: until(OLD_SHARE),
        to_half: until(HALF_SHARE),
        by: Way::Life { life_days: life.days, longest_days: life.longest_days, store_unknown },
    })
}

/// What was left of the beginning when the present clock began: what was lost in earlier ways of keeping stays lost. All of it where
/// the clock began with the beginning.
fn kept_before(
    lot: &LotStory,
    profile: Option<&Profile>,
    life: &SeedLife,
    start: Day,
    day: Day,
) -> Result<Range, NoViability> {
    let mut left = Range::exact(1.0);
    for (number, spell) in lot.kept.iter().enumerate() {
        let end = lot.kept.get(number + 1).map_or(life.from, |next| next.from).min(life.from).min(day);
        let from = spell.from.max(start);
        if end <= from {
            continue;
        }
        let days = profile.and_then(|profile| days_kept(spell.what, profile)).map(|(days, _)| f64::from(days));
        let days = days.filter(|days| *days > 0.0).ok_or(NoViability::NoFigures)?;
        let longest = profile.and_then(|profile| longest_days(spell.what, profile)).map_or(days, f64::from);
        let ages = (f64::from(from.days_since(spell.from)), f64::from(end.days_since(spell.from)));
        let part = |times: f64| still_alive(days * times, ages.0, ages.1).unwrap_or(0.0);
        left = Range {
            low: left.low * part(SHORTEST_LIFE),
            likely: left.likely * part(1.0),
            high: left.high * part(LONGEST_LIFE * longest / days),
        };
    }
    Ok(left)
}
