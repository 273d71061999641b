//! How long a lot lives, the way it is kept.

use crate::base::Day;
use crate::nursery::entry::types::Kept;
use crate::nursery::species::{Figure, Profile, Storage};
use crate::reckon::picture::{RuleSource, Source};
use crate::reckon::stock::LotStory;
use crate::science::storage::LONGEST_LIFE;

/// Longest life that is counted in days: a hundred years. Ours.
const MOST_LIFE_DAYS: f64 = 40_000.0;

/// How long a lot lives, the way it is kept.
#[derive(Clone, PartialEq, Debug)]
pub struct Life {
    /// The day it is counted from.
    pub from: Day,
    /// Whether that is the day of collection: so for seed that dies when dried, however it was handled since.
    pub from_collection: bool,
    /// Days of life.
    pub days: i32,
    /// How it is kept.
    pub kept: Kept,
    /// Where the days come from.
    pub source: Source,
}

impl Life {
    /// The last day of its life.
    pub fn last_day(&self) -> Day {
        self.from.plus(self.days)
    }

    /// The day by which all of it is taken for dead.
    pub fn dead_on(&self) -> Day {
        self.from.plus((f64::from(self.days) * LONGEST_LIFE).round() as i32)
    }

    /// Days left on a day; below 0 when past.
    pub fn days_left(&self, day: Day) -> i32 {
        self.last_day().days_since(day)
    }
}

/// Why nothing is said of a lot's life.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum NoLife {
    /// Nobody wrote that the lot came in, so neither species nor keeping is known.
    NotReceived,
    /// Its species is not known here.
    UnknownSpecies,
    /// The profile has no days for this way of keeping.
    NoFigure(Kept),
}

/// The life of a lot: each way of keeping has its figure, in the cold the profiles have none. Handled another way a new
/// clock begins; seed that dies when dried is counted from the day of collection all the same.
///
/// # Errors
/// Why nothing is known.
pub fn life(lot: &LotStory, profile: Option<&Profile>) -> Result<Life, NoLife> {
    let spell = lot.kept.last().ok_or(NoLife::NotReceived)?;
    let profile = profile.ok_or(NoLife::UnknownSpecies)?;
    let ambient = profile.storage_ambient_days.as_ref();
    let figure: Option<&Figure<f64>> = match spell.what {
        Kept::InPod => profile.storage_in_pod_days.as_ref().or(ambient),
        Kept::MucilageOn => profile.storage_mucilage_on_days.as_ref().or(ambient),
        Kept::WashedMoist => profile.storage_washed_moist_days.as_ref().or(ambient),
        Kept::InParchment | Kept::DrySealed | Kept::DryOpen | Kept::Other => ambient,
        Kept::Cold => None,
    };
    let figure = figure.filter(|figure| figure.value >= 1.0).ok_or(NoLife::NoFigure(spell.what))?;
    let no_source = figure.source.trim().is_empty();
    let source = if no_source { RuleSource::SeedLife.into() } else { Source::figure(Some(&figure.source)) };
    let dies_dried = profile.storage.as_ref().is_some_and(|storage| storage.value == Storage::Recalcitrant);
    let collected = lot.collected.filter(|_| dies_dried);
    Ok(Life {
        from: collected.unwrap_or(spell.from),
        from_collection: collected.is_some() || Some(spell.from) == lot.collected,
        days: figure.value.round().min(MOST_LIFE_DAYS) as i32,
        kept: spell.what,
        source,
    })
}
