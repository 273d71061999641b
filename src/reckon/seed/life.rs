//! How long a lot lives the way it is kept.

use crate::base::{Day, EntryId};
use crate::nursery::entry::types::Kept;
use crate::nursery::species::{Figure, Profile, Storage};
use crate::reckon::picture::{RuleSource, Source};
use crate::reckon::stock::{LotStory, StoreWritten};

/// Seed that stands drying lives so many times as long dry and sealed as in the open air. Ours.
pub(crate) const SEALED_TIMES: f64 = 2.0;
/// And so many times as long in a cold dry store of 4 to 6 degrees: life halves with each 5 degrees more (Harrington's thumb rule,
/// from memory), so 25 to 5 degrees is 16 times; half of that. Ours.
pub(crate) const COLD_TIMES: f64 = 8.0;
/// Seed that dies when dried lives so much of its days where it is kept dry. Ours.
pub(crate) const DRIED_TIMES: f64 = 0.25;
/// Seed that dies when dried and whose profile names no days lives so many, however it is kept. Ours: such seed lives days to weeks.
pub(crate) const RECALCITRANT_DAYS: f64 = 7.0;
/// The ways of keeping of which the worst is taken where nobody knows how a lot was kept.
const EVERY_WAY: [Kept; 6] =
    [Kept::InPod, Kept::MucilageOn, Kept::WashedMoist, Kept::InParchment, Kept::DryOpen, Kept::DrySealed];
/// Seed is dead at so many times its stated life. Ours: even of a life twice as long half is gone then.
pub(crate) const DEAD_AT_LIVES: f64 = crate::science::storage::LONGEST_LIFE;
/// The end of a lot's life is told when this share of it is left. Ours.
pub(crate) const LIFE_NOTICE_SHARE: f64 = 0.25;
/// And at least so many days before. Ours.
pub(crate) const LIFE_NOTICE_DAYS: i32 = 7;
/// Source of the end of life, where the profile has none.
pub(crate) const LIFE_SOURCE: RuleSource = RuleSource::SeedLife;

/// The life of a lot, the way it is kept.
#[derive(Clone, PartialEq, Debug)]
pub struct SeedLife {
    /// The day its clock began.
    pub from: Day,
    /// Whether that is the day of collection: so for seed that dies when dried, however it was handled since.
    pub from_collection: bool,
    /// Days of life, kept so; where nobody knows how it was kept, those of the worst way.
    pub days: i32,
    /// The same of the best way in which it may have been kept.
    pub longest_days: i32,
    /// How it is kept.
    pub kept: Kept,
    /// Where the days come from.
    pub source: Source,
    /// The entry that says how it is kept.
    pub entry: EntryId,
    /// Where cold killed it on the day its clock began: below so many degrees.
    pub killed_below_c: Option<f64>,
}

impl SeedLife {
    /// The last day of the stated life.
    pub fn last_day(&self) -> Day {
        self.from.plus(self.days)
    }

    /// The day by which nothing of it is expected to live.
    pub(crate) fn dead_on(&self) -> Day {
        if self.killed_below_c.is_some() {
            return self.from.plus(-1);
        }
        self.from.plus((f64::from(self.longest_days) * DEAD_AT_LIVES).round() as i32)
    }

    /// Whether nobody knows how it was kept, and that makes a difference.
    pub(crate) fn keeping_unknown(&self) -> bool {
        self.longest_days > self.days
    }

    /// Days of the stated life left on a day; below nothing when it is over.
    pub fn days_left(&self, day: Day) -> i32 {
        self.last_day().days_since(day)
    }

    /// Whether the end of its life is so near that it must be sown now.
    pub(crate) fn is_ending(&self, day: Day) -> bool {
        self.killed_below_c.is_none() && (0..=self.notice_days()).contains(&self.days_left(day))
    }

    /// So many days before its end it must be sown.
    pub(crate) fn notice_days(&self) -> i32 {
        ((f64::from(self.days) * LIFE_NOTICE_SHARE).ceil() as i32).max(LIFE_NOTICE_DAYS)
    }
}

/// The life of a lot: each way of keeping has its figure; none where nothing is known of it, or nobody wrote how it is kept.
/// Handled another way a new clock begins; seed that dies when dried (recalcitrant) is counted from the day of collection all
/// the same.
pub fn life(lot: &LotStory, profile: &Profile) -> Option<SeedLife> {
    let spell = lot.kept.last()?;
    if let Some((from, below)) = killed_by_cold(lot, profile) {
        let (kept, source) = (spell.what, Source::figure(Some(&below.source)));
        let entry = spell.entry.clone();
        let killed_below_c = Some(below.value);
        let (days, longest_days) = (0, 0);
        return Some(SeedLife {
            from,
            from_collection: false,
            days,
            longest_days,
            kept,
            source,
            entry,
            killed_below_c,
        });
    }
    let (days, source) = days_kept(spell.what, profile)?;
    let from = lot.collected.filter(|_| dies_dried(profile)).unwrap_or(spell.from);
    let from_collection = lot.collected == Some(from);
    Some(SeedLife {
        from,
        from_collection,
        days,
        longest_days: longest_days(spell.what, profile).unwrap_or(days),
        kept: spell.what,
        source,
        entry: spell.entry.clone(),
        killed_below_c: None,
    })
}

/// The day on which cold killed a lot whose species it kills, and below what: in a cold store of 4 to 6 degrees, or colder than that
/// as written; none where a test laid out since found it alive.
fn killed_by_cold<'a>(lot: &LotStory, profile: &'a Profile) -> Option<(Day, &'a Figure<f64>)> {
    let below = profile.seed_dies_below_c.as_ref()?;
    let colder = |store: &StoreWritten| store.temp_c.map(|celsius| celsius < below.value);
    let written = |from: Day| lot.stores.iter().rev().find(|store| store.from <= from).and_then(|it| colder(&it.what));
    let stored = lot.kept.iter().filter(|spell| spell.what == Kept::Cold && written(spell.from).unwrap_or(true));
    let read = lot.stores.iter().filter(|store| colder(&store.what) == Some(true)).map(|store| store.from);
    let killed = stored.map(|spell| spell.from).chain(read).min()?;
    let alive_since = lot.tests.iter().any(|test| {
        let laid_out = test.day.plus(-i32::try_from(test.days).unwrap_or(i32::MAX));
        laid_out >= killed && test.replicates.iter().any(|(_, up)| *up > 0)
    });
    (!alive_since).then_some((killed, below))
}

/// Whether seed of a species dies when it is dried.
pub(crate) fn dies_dried(profile: &Profile) -> bool {
    profile.storage.as_ref().is_some_and(|storage| storage.value == Storage::Recalcitrant)
}

/// Days of life for a way of keeping, and where they come from; where nobody knows how it was kept, those of the worst way.
pub(crate) fn days_kept(kept: Kept, profile: &Profile) -> Option<(i32, Source)> {
    if !matches!(kept, Kept::Unknown | Kept::Other) {
        return days_kept_so(kept, profile);
    }
    let worst = EVERY_WAY.iter().filter_map(|way| days_kept_so(*way, profile)).map(|(days, _)| days).min()?;
    Some((worst, RuleSource::SeedLifeKept.into()))
}

/// The longest days of life: where nobody knows how it was kept, those of the best way.
pub(crate) fn longest_days(kept: Kept, profile: &Profile) -> Option<i32> {
    if !matches!(kept, Kept::Unknown | Kept::Other) {
        return days_kept_so(kept, profile).map(|(days, _)| days);
    }
    EVERY_WAY.iter().filter_map(|way| days_kept_so(*way, profile)).map(|(days, _)| days).max()
}

/// The profile's own figure for a way of keeping, else its days at room temperature, longer sealed or cold for seed that can be
/// dried, shorter where seed that dies when dried is kept dry.
fn days_kept_so(kept: Kept, profile: &Profile) -> Option<(i32, Source)> {
    let keeps_dry = profile.storage.as_ref().is_some_and(|storage| storage.value == Storage::Orthodox);
    let own = match kept {
        Kept::InPod => profile.storage_in_pod_days.as_ref(),
        Kept::MucilageOn => profile.storage_mucilage_on_days.as_ref(),
        Kept::WashedMoist => profile.storage_washed_moist_days.as_ref(),
        Kept::DrySealed => profile.storage_dry_sealed_days.as_ref(),
        Kept::Cold => profile.storage_cold_days.as_ref(),
        Kept::InParchment | Kept::DryOpen | Kept::Other | Kept::Unknown => None,
    };
    let times = match (own, kept) {
        (Some(_), _) | (None, Kept::InPod | Kept::MucilageOn | Kept::WashedMoist | Kept::InParchment | Kept::Other) => {
            1.0
        }
        (None, Kept::DrySealed | Kept::DryOpen) if dies_dried(profile) => DRIED_TIMES,
        (None, Kept::DrySealed) if keeps_dry => SEALED_TIMES,
        (None, Kept::DrySealed | Kept::DryOpen) => 1.0,
        (None, Kept::Cold) if keeps_dry => COLD_TIMES,
        // What the cold does to such seed nobody wrote.
        (None, Kept::Cold | Kept::Unknown) => return None,
    };
    let figure = own.or(profile.storage_ambient_days.as_ref());
    let known = figure.map(|figure| figure.value).or_else(|| dies_dried(profile).then_some(RECALCITRANT_DAYS))?;
    let source = match figure.filter(|_| times == 1.0) {
        None => RuleSource::SeedLifeKept.into(),
        Some(figure) if figure.source.trim().is_empty() => LIFE_SOURCE.into(),
        Some(figure) => Source::figure(Some(&figure.source)),
    };
    Some(((known * times).round().clamp(0.0, 40_000.0) as i32, source))
}
