//! How long a lot lives the way it is kept.

use crate::base::{Day, EntryId};
use crate::nursery::entry::types::Kept;
use crate::nursery::species::{Figure, Profile, Storage};
use crate::reckon::picture::{RuleSource, Source};
use crate::reckon::stock::LotStory;

/// Seed that stands drying lives so many times as long dry and sealed as in the open air. Ours.
pub(crate) const SEALED_TIMES: f64 = 2.0;
/// And so many times as long in a cold dry store of 4 to 6 degrees: life halves with each 5 degrees more (Harrington's thumb rule,
/// from memory), so 25 to 5 degrees is 16 times; half of that. Ours.
pub(crate) const COLD_TIMES: f64 = 8.0;
/// Seed that dies when dried lives so much of its days where it is kept dry. Ours.
pub(crate) const DRIED_TIMES: f64 = 0.25;
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
    /// Days of life, kept so.
    pub days: i32,
    /// How it is kept.
    pub kept: Kept,
    /// Where the days come from.
    pub source: Source,
    /// The entry that says how it is kept.
    pub entry: EntryId,
}

impl SeedLife {
    /// The last day of the stated life.
    pub fn last_day(&self) -> Day {
        self.from.plus(self.days)
    }

    /// The day by which nothing of it is expected to live.
    pub(crate) fn dead_on(&self) -> Day {
        self.from.plus((f64::from(self.days) * DEAD_AT_LIVES).round() as i32)
    }

    /// Days of the stated life left on a day; below nothing when it is over.
    pub fn days_left(&self, day: Day) -> i32 {
        self.last_day().days_since(day)
    }

    /// Whether the end of its life is so near that it must be sown now.
    pub(crate) fn is_ending(&self, day: Day) -> bool {
        (0..=self.notice_days()).contains(&self.days_left(day))
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
    let (days, source) = days_kept(spell.what, profile)?;
    let from = lot.collected.filter(|_| dies_dried(profile)).unwrap_or(spell.from);
    let from_collection = lot.collected == Some(from);
    Some(SeedLife { from, from_collection, days, kept: spell.what, source, entry: spell.entry.clone() })
}

/// Whether seed of a species dies when it is dried.
pub(crate) fn dies_dried(profile: &Profile) -> bool {
    profile.storage.as_ref().is_some_and(|storage| storage.value == Storage::Recalcitrant)
}

/// Days of life for a way of keeping: the profile's own figure for it, else its days at room temperature, longer sealed or cold for
/// seed that can be dried, shorter where seed that dies when dried is kept dry; and where they come from.
pub(crate) fn days_kept(kept: Kept, profile: &Profile) -> Option<(i32, Source)> {
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
        // Of seed that nobody knows how it was kept nobody knows how long it lives.
        (None, Kept::Cold | Kept::Unknown) => return None,
    };
    let figure: &Figure<f64> = own.or(profile.storage_ambient_days.as_ref())?;
    let source = if times != 1.0 {
        RuleSource::SeedLifeKept.into()
    } else if figure.source.trim().is_empty() {
        LIFE_SOURCE.into()
    } else {
        Source::figure(Some(&figure.source))
    };
    Some(((figure.value * times).round().clamp(0.0, 40_000.0) as i32, source))
}
