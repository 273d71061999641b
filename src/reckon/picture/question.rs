//! The questions of verdicts: the one list of what is asked, what each must be and can be known as, and what days alone
//! change in it.

use super::criterion::{Basis, Gap, Measure};
use super::quantity::{
    AtWork, CollarRule, DaysAtLeast, DaysOfSpecies, Ground, Hardened, HeightBand, HeldFor, Holds, InContainer,
    KeepsUntil, LeavesAtLeast, Light, LightBand, LightRead, LightStep, LivesBare, NotSo, PestSeen, PlantsAtLeast,
    Positions, RatioAtMost, ResistanceAtMost, Sample, Until, WaterNeeded, Wet, WorkWithin,
};
use crate::base::{Day, Range};
use crate::nursery::entry::types::Roots;
use crate::words;

/// Declares the questions: `/// note  Name: "file_spelling", needed => known, what days alone change, how its wait ends;`.
macro_rules! questions {
    ($($(#[$note:meta])* $question:ident: $word:literal, $needed:ty => $known:ty, $passage:ident, $ends:ident;)+) => {
        words! {
            /// The questions a verdict is made of; the file spelling is the stable name in `--json`.
            Rule { $($(#[$note])* $question: $word;)+ }
        }

        /// A question with what is known of it.
        #[derive(Clone, PartialEq, Debug)]
        pub enum Question { $($(#[$note])* $question(Known<$needed, $known>),)+ }

        impl Question {
            /// Which question it is.
            pub fn rule(&self) -> Rule {
                match self { $(Question::$question(_) => Rule::$question,)+ }
            }

            pub(super) fn asked(&self) -> &dyn Asked {
                match self { $(Question::$question(known) => known,)+ }
            }
        }

        impl Rule {
            fn turned_by(self) -> Passage {
                match self { $(Rule::$question => Passage::$passage,)+ }
            }

            /// How it ends that it holds back, where no day can be told.
            pub(crate) fn ends(self) -> Ends {
                match self { $(Rule::$question => Ends::$ends,)+ }
            }
        }
    };
}

questions! {
    /// Old enough since sowing.
    DaysSinceSowing: "days_since_sowing", DaysOfSpecies => i32, OldEnough, Open;
    /// Not longer in its container than the roots stand.
    DaysInContainer: "days_in_container", Holds => InContainer, HoldingTime, Open;
    /// Height inside the species' range.
    Height: "height", HeightBand => Sample, Time, Open;
    /// Root collar thick enough.
    Collar: "collar", CollarRule => Sample, Time, Open;
    /// Leaves enough.
    Leaves: "leaves", LeavesAtLeast => Sample, Time, Open;
    /// Grafted or budded, where that is usual.
    Grafted: "grafted", PlantsAtLeast => Range, Time, Open;
    /// The plug holds.
    Plug: "plug", Roots => Roots, Time, Open;
    /// No soft new leaves.
    Flush: "flush", NotSo => Option<Day>, LeavesHardened, Open;
    /// Hardened long enough.
    Hardening: "hardening", DaysAtLeast => Hardened, Hardened, Begun;
    /// The step from the tray's light to the bed's.
    ExposureStep: "exposure_step", RatioAtMost => LightStep, Hardened, Begun;
    /// Not held back by a person.
    Held: "held", NotSo => Option<HeldFor>, HoldEnded, Open;
    /// No treatment still working.
    Treated: "treated", NotSo => Option<AtWork>, HoldEnded, Open;
    /// Nothing in the ground that kills what is planted.
    PlantBack: "plant_back", NotSo => Option<AtWork>, HoldEnded, Open;
    /// No pest or sickness that would be carried along.
    Pest: "pest", NotSo => Option<PestSeen>, Time, Open;
    /// Something lives there.
    Living: "living", PlantsAtLeast => Range, Time, Open;
    /// At least one load of plantable plants.
    Load: "load", PlantsAtLeast => Range, Time, WithOthers;
    /// Not past its last day (bare roots, stumps).
    GoodUntil: "good_until", KeepsUntil => Day, LastDay, Open;
    /// Bare roots, of a species that lives from them.
    BareRoots: "bare_roots", LivesBare => LivesBare, Time, Open;
    /// Light of the bed now inside the species' band.
    LightNow: "light_now", LightBand => LightRead, ReadingOld, Open;
    /// Light of the bed in the coming months.
    LightComing: "light_coming", LightBand => Light, ReadingOld, Open;
    /// Ground soft enough for roots.
    Soil: "soil", ResistanceAtMost => Ground, ReadingOld, Open;
    /// Cleared of grass and brush.
    Cleared: "cleared", WorkWithin => Option<Day>, WorkOld, Worked;
    /// Holes dug.
    Holes: "holes", WorkWithin => Option<Day>, WorkOld, Worked;
    /// Weeded.
    Weeded: "weeded", WorkWithin => Option<Day>, WorkOld, Worked;
    /// Mulched.
    Mulched: "mulched", WorkWithin => Option<Day>, WorkOld, Worked;
    /// Fenced.
    Fenced: "fenced", WorkWithin => Option<Day>, WorkOld, Worked;
    /// Wet enough today.
    Water: "water", WaterNeeded => Wet, RainOld, WithRain;
    /// Enough of the rains left.
    Season: "season", Until => Day, Rains, Open;
    /// Room in the bed.
    OpenPositions: "open_positions", PlantsAtLeast => Positions, Time, Open;
}

words! {
    /// What the passing of days alone brings.
    Passage {
        /// Old enough.
        OldEnough: "old_enough";
        /// The container's holding time ended.
        HoldingTime: "holding_time";
        /// The last day of bare roots passed.
        LastDay: "last_day";
        /// Hardened long enough, or the last days' light moved on.
        Hardened: "hardened";
        /// New leaves hardened.
        LeavesHardened: "leaves_hardened";
        /// A hold or a waiting time ended.
        HoldEnded: "hold_ended";
        /// A reading grew too old.
        ReadingOld: "reading_old";
        /// Ground work grew over.
        WorkOld: "work_old";
        /// The safe days of the rains ended.
        Rains: "rains";
        /// The rains began.
        RainsBegan: "rains_began";
        /// The last good rain fell too long ago.
        RainOld: "rain_old";
        /// The rain of the last days is not known.
        RainUnknown: "rain_unknown";
        /// Something else that days change.
        Time: "time";
    }
}

/// How it ends that a question holds back, where no day can be told.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Ends {
    /// Nobody can tell: plants, light or ground have to become other than they are.
    Open,
    /// So many days after somebody begins.
    Begun,
    /// When it rains.
    WithRain,
    /// When somebody does a day's work.
    Worked,
    /// With the others: it follows from them.
    WithOthers,
}

impl Rule {
    /// What days alone change in a question that is now answered so.
    pub(crate) fn passage(self, met: Option<bool>) -> Passage {
        match (self.turned_by(), met) {
            (Passage::Rains, Some(true)) => Passage::RainsBegan,
            (Passage::RainOld, None) => Passage::RainUnknown,
            (passage, _) => passage,
        }
    }

    /// Whether what it asks for, where it is not met, takes hands among plants or into a bed: work there, or a look from near.
    pub(super) fn takes_hands(self, met: Option<bool>) -> bool {
        match self {
            Rule::DaysInContainer
            | Rule::Grafted
            | Rule::Plug
            | Rule::Flush
            | Rule::Hardening
            | Rule::ExposureStep
            | Rule::Pest
            | Rule::GoodUntil
            | Rule::BareRoots
            | Rule::LightNow
            | Rule::Soil
            | Rule::Cleared
            | Rule::Holes
            | Rule::Weeded
            | Rule::Mulched
            | Rule::Fenced => true,
            // Known, plants grow and rain comes by themselves.
            Rule::Height | Rule::Collar | Rule::Leaves | Rule::Water => met.is_none(),
            Rule::DaysSinceSowing
            | Rule::Held
            | Rule::Treated
            | Rule::PlantBack
            | Rule::Living
            | Rule::Load
            | Rule::LightComing
            | Rule::Season
            | Rule::OpenPositions => false,
        }
    }
}

/// What is known of a question, beside what is needed.
#[derive(Clone, PartialEq, Debug)]
pub enum Known<N, K> {
    /// It is known.
    Found(Found<N, K>),
    /// It is not known.
    Unknown {
        /// What is needed, where that can be said.
        needed: Option<N>,
        /// Why it is not known, where more can be said than that nobody looked.
        gap: Option<Gap>,
    },
}

/// What was found.
#[derive(Clone, PartialEq, Debug)]
pub struct Found<N, K> {
    /// What is needed.
    pub needed: N,
    /// What is known.
    pub known: K,
    /// How.
    pub basis: Basis,
    /// Whether it is as needed.
    pub met: bool,
}

impl<N, K> Known<N, K> {
    /// What was found, where it is known.
    pub(crate) fn found(&self) -> Option<&Found<N, K>> {
        match self {
            Known::Found(found) => Some(found),
            Known::Unknown { .. } => None,
        }
    }
}

/// What can be said of any question, whatever it asks for.
pub(super) trait Asked {
    fn needed(&self) -> Option<Measure>;
    fn known(&self) -> Option<Measure>;
    fn basis(&self) -> Basis;
    fn met(&self) -> Option<bool>;
    fn gap(&self) -> Option<&Gap>;
}

impl<N: Clone + Into<Measure>, K: Clone + Into<Measure>> Asked for Known<N, K> {
    fn needed(&self) -> Option<Measure> {
        match self {
            Known::Found(found) => Some(found.needed.clone().into()),
            Known::Unknown { needed, .. } => needed.clone().map(Into::into),
        }
    }

    fn known(&self) -> Option<Measure> {
        self.found().map(|found| found.known.clone().into())
    }

    fn basis(&self) -> Basis {
        self.found().map_or(Basis::Unknown, |found| found.basis)
    }

    fn met(&self) -> Option<bool> {
        self.found().map(|found| found.met)
    }

    fn gap(&self) -> Option<&Gap> {
        match self {
            Known::Found(_) => None,
            Known::Unknown { gap, .. } => gap.as_ref(),
        }
    }
}
