//! One question of a verdict: what is needed, what is known and how, whether it is met, and where the rule comes from.

use super::source::Source;
use crate::base::{Day, EntryId, Range, SpeciesKey};
use crate::nursery::entry::types::{GroundTask, Roots};
use crate::words;

words! {
    /// The questions a verdict is made of; the file spelling is the stable name in `--json`.
    Rule {
        /// Old enough since sowing.
        DaysSinceSowing: "days_since_sowing";
        /// Not longer in its container than the roots stand.
        DaysInContainer: "days_in_container";
        /// Height inside the species' range.
        Height: "height";
        /// Root collar thick enough.
        Collar: "collar";
        /// Leaves enough.
        Leaves: "leaves";
        /// The plug holds.
        Plug: "plug";
        /// No soft new leaves.
        Flush: "flush";
        /// Hardened long enough.
        Hardening: "hardening";
        /// The step from the tray's light to the bed's.
        ExposureStep: "exposure_step";
        /// Not held back by a person.
        Held: "held";
        /// No treatment still working.
        Treated: "treated";
        /// Something lives there.
        Living: "living";
        /// At least one load of plantable plants.
        Load: "load";
        /// Not past its last day (bare roots, stumps).
        GoodUntil: "good_until";
        /// Light of the bed now inside the species' band.
        LightNow: "light_now";
        /// Light of the bed in the coming months.
        LightComing: "light_coming";
        /// Ground soft enough for roots.
        Soil: "soil";
        /// Cleared of grass and brush.
        Cleared: "cleared";
        /// Holes dug.
        Holes: "holes";
        /// Weeded.
        Weeded: "weeded";
        /// Mulched.
        Mulched: "mulched";
        /// Fenced.
        Fenced: "fenced";
        /// Wet enough today.
        Water: "water";
        /// Enough of the rains left.
        Season: "season";
        /// Room in the bed.
        OpenPositions: "open_positions";
    }
    /// How a thing is known.
    Basis {
        /// Counted by a person.
        Counted: "counted";
        /// Measured or seen by a person and written down.
        Measured: "measured";
        /// Reckoned from what is written down.
        Reckoned: "reckoned";
        /// Taken from the species' profile or common practice.
        Assumed: "assumed";
        /// Not known.
        Unknown: "unknown";
    }
}

/// A needed or known thing, with its unit. `wording` turns it into words.
#[derive(Clone, PartialEq, Debug)]
pub enum Measure {
    /// So many days.
    Days(i32),
    /// At least so many days.
    DaysAtLeast(i32),
    /// At most so many days.
    DaysAtMost(i32),
    /// The least, usual and most days of the species.
    DaySpan {
        /// Least.
        least: i32,
        /// Usual.
        usual: i32,
        /// Most.
        most: i32,
    },
    /// A height band, cm.
    HeightBand {
        /// Least.
        least: f64,
        /// Most.
        most: f64,
    },
    /// A collar rule: at least a floor in mm and height / 8.
    CollarRule {
        /// The species' floor, mm.
        floor_mm: f64,
    },
    /// How many plants of a sample pass, and the sample's mean (cm, mm or leaves by the rule).
    Sample {
        /// Plants that pass.
        pass: u32,
        /// Plants measured.
        of: u32,
        /// Mean of the sample, in the unit of the rule.
        mean: f64,
    },
    /// At least so many leaves, or pairs.
    LeavesAtLeast {
        /// How many.
        count: f64,
        /// Whether pairs are meant.
        pairs: bool,
    },
    /// What the roots of a lifted plug show.
    Roots(Roots),
    /// A share of the open light, 0 to 1.
    Light(f64),
    /// A band of the open light, shares of 0 to 1.
    LightBand {
        /// Least.
        least: f64,
        /// Most.
        most: f64,
    },
    /// So many times as bright.
    Ratio(f64),
    /// At most so many times as bright.
    RatioAtMost(f64),
    /// The light of the tray and of the bed it would go to, shares of 0 to 1.
    LightStep {
        /// The tray's last 10 days.
        from: f64,
        /// The bed's.
        to: f64,
    },
    /// Plants, as a range.
    Plants(Range),
    /// At least so many plants.
    PlantsAtLeast(u32),
    /// So many positions.
    Positions(u32),
    /// At most so much resistance, MPa, down to a depth in cm.
    ResistanceAtMost {
        /// MPa.
        mpa: f64,
        /// Depth, cm.
        depth_cm: f64,
    },
    /// Resistance read, MPa, at a depth in cm where it was written.
    Resistance {
        /// MPa.
        mpa: f64,
        /// Depth, cm.
        depth_cm: Option<f64>,
    },
    /// The depth at which a rod under a known push stopped, cm, and the pressure at its tip, MPa.
    RodStopped {
        /// MPa at the tip.
        mpa: f64,
        /// Depth, cm.
        depth_cm: f64,
    },
    /// Tubers were lifted so many days ago.
    TubersLifted(i32),
    /// The shape of lifted tubers.
    TuberShape(crate::nursery::entry::types::Tubers),
    /// Ground read dry: the reading says nothing.
    ReadDry,
    /// Rain of so many mm in so many days.
    Rain {
        /// mm.
        mm: f64,
        /// Days.
        days: i32,
    },
    /// At least so much rain in so many days.
    RainAtLeast {
        /// mm.
        mm: f64,
        /// Days.
        days: i32,
    },
    /// A day on or before which it must be.
    Until(Day),
    /// A day.
    On(Day),
    /// Work done.
    Work(GroundTask),
    /// Work to be done, not longer ago than it lasts.
    WorkWithin {
        /// The work.
        task: GroundTask,
        /// Days it lasts.
        days: i32,
    },
    /// Hardened for so many days, but the last step is too fresh.
    FreshStep {
        /// Days of hardening.
        days: i32,
        /// The day of the last step.
        last: Day,
    },
    /// A person's own words (why held, treated with what).
    Said(String),
    /// It is so.
    Yes,
    /// It is not so.
    No,
}

/// Why a question has no answer, where more can be said than that nobody looked.
#[derive(Clone, PartialEq, Debug)]
pub enum Gap {
    /// The profile of the species has no shade band at planting out.
    NoShadeBand(SpeciesKey),
    /// The profile has no most days.
    NoMostDays(SpeciesKey),
    /// A rod was pushed harder than the limit and went down deep: it would have gone into hard ground too.
    RodTooHard {
        /// MPa at the tip.
        mpa: f64,
        /// Depth reached, cm; none where not written.
        depth_cm: Option<f64>,
    },
    /// A rod under too weak a push stopped short: it would have stopped in soft ground too.
    RodTooWeak {
        /// MPa at the tip.
        mpa: f64,
        /// Depth reached, cm.
        depth_cm: f64,
    },
    /// The ground was read soft, but not as deep as the plants go.
    ReadTooShallow {
        /// Depth read, cm.
        depth_cm: f64,
        /// Depth needed, cm.
        needed_cm: f64,
    },
    /// The gauge was read on some of the days that count, and the rain of those is not enough.
    GaugePartly {
        /// Days with a gauge line.
        days_read: i32,
        /// Days that count.
        of_days: i32,
        /// Rain of the days read, mm.
        mm: f64,
    },
    /// A coming day: its rain is not known yet.
    ComingDay,
    /// Something was used of which nobody wrote the waiting time of the label.
    NoWaitingTime {
        /// What was used.
        with: String,
        /// The day of it.
        day: Day,
    },
}

/// The part of a bed that was looked at or worked, where it was not the whole.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct PartSeen {
    /// The rows, as written.
    pub rows: Option<String>,
    /// Single places, where those were named.
    pub places: u32,
    /// Rows of the bed, where its plan says.
    pub of_rows: Option<u32>,
}

/// One question of a verdict.
#[derive(Clone, PartialEq, Debug)]
pub struct Criterion {
    /// The question.
    pub rule: Rule,
    /// What is needed.
    pub needed: Option<Measure>,
    /// What is known; none where the basis is unknown, except that ground was read dry.
    pub known: Option<Measure>,
    /// How it is known.
    pub basis: Basis,
    /// Whether it is met; none exactly where the basis is unknown.
    pub met: Option<bool>,
    /// Whether it holds things back now.
    pub blocks: bool,
    /// Whether it deserves a warning although it does not block.
    pub warns: bool,
    /// The first day on which it is, or was, met, where that can be said.
    pub expected: Option<Day>,
    /// Where the rule comes from.
    pub source: Source,
    /// The entries it rests on.
    pub entries: Vec<EntryId>,
    /// Why it is not known, where more can be said than that nobody looked.
    pub gap: Option<Gap>,
    /// The part of the bed that was looked at, where it was not the whole.
    pub part: Option<PartSeen>,
}

impl Criterion {
    /// A criterion that is not known; it blocks only where it must be known.
    pub fn unknown(rule: Rule, needed: Option<Measure>, must_be_known: bool, source: impl Into<Source>) -> Criterion {
        Criterion {
            rule,
            needed,
            known: None,
            basis: Basis::Unknown,
            met: None,
            blocks: must_be_known,
            warns: false,
            expected: None,
            source: source.into(),
            entries: Vec::new(),
            gap: None,
            part: None,
        }
    }

    /// A criterion that is known; it blocks when unmet.
    pub fn known(
        rule: Rule,
        needed: Measure,
        known: Measure,
        basis: Basis,
        met: bool,
        source: impl Into<Source>,
    ) -> Criterion {
        Criterion {
            rule,
            needed: Some(needed),
            known: Some(known),
            basis,
            met: Some(met),
            blocks: !met,
            warns: false,
            expected: None,
            source: source.into(),
            entries: Vec::new(),
            gap: None,
            part: None,
        }
    }

    /// The same, expected to be met from a day.
    pub fn expected_on(mut self, day: Option<Day>) -> Criterion {
        self.expected = day;
        self
    }

    /// The same, resting on entries.
    pub fn resting_on(mut self, entries: impl IntoIterator<Item = EntryId>) -> Criterion {
        self.entries.extend(entries);
        self
    }

    /// The same, with the reason why it is not known.
    pub fn lacking(mut self, gap: Option<Gap>) -> Criterion {
        self.gap = gap;
        self
    }

    /// The same, seen in a part of the bed only; it counts and warns.
    pub fn seen_in_part(mut self, part: Option<PartSeen>) -> Criterion {
        self.warns = self.warns || part.is_some();
        self.part = part;
        self
    }

    /// The same, but only advising: it never blocks and warns when unmet.
    pub fn advising(mut self) -> Criterion {
        self.blocks = false;
        self.warns = self.warns || self.met == Some(false);
        self
    }
}
