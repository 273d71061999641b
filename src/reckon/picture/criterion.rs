//! One question of a verdict: what is needed, what is known and how, whether it is met, and where the rule comes from.

use super::answered::Answered;
use super::quantity::{Beside, Joined, LightSpan, ShadeEnd};
use super::question::{Found, Known, Question, Rule};
use super::source::Source;
use crate::base::{BedName, Day, EntryId, Range, SpeciesKey, TrayCode};
use crate::nursery::entry::types::{GroundTask, Roots};
use crate::words;

words! {
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
    /// How many plants of a sample pass, and the sample's mean.
    Sample {
        /// Plants that pass.
        pass: u32,
        /// Plants measured.
        of: u32,
        /// Mean of the sample.
        mean: f64,
        /// What the mean is in.
        unit: SampleUnit,
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
    /// The same as it is reckoned.
    LightReckoned(LightSpan),
    /// A band of the open light, shares of 0 to 1.
    LightBand {
        /// Least.
        least: f64,
        /// Most.
        most: f64,
    },
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
        /// The rod by whose push it is said, mm.
        rod_mm: f64,
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
        /// The rod, mm.
        rod_mm: f64,
    },
    /// Tubers were lifted so many days ago.
    TubersLifted(i32),
    /// The shape of lifted tubers.
    TuberShape(crate::nursery::entry::types::Tubers),
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
    /// Water left for young roots, mm, of what the ground holds.
    WaterLeft {
        /// mm.
        mm: f64,
        /// Of so many mm.
        of_mm: f64,
    },
    /// At least so much water left for young roots, mm.
    WaterAtLeast(f64),
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
    /// A pest in a person's own words, and the share of the plants, 0 to 1, where somebody counted.
    Pest {
        /// What.
        what: String,
        /// Share, 0 to 1.
        share: Option<f64>,
    },
    /// It is so.
    Yes,
    /// It is not so.
    No,
}

/// What the mean of a sample is in.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum SampleUnit {
    /// Centimetres of height.
    Cm,
    /// Millimetres of collar.
    Mm,
    /// Leaves, or pairs of them.
    Leaves,
}

/// What had soaked the ground when somebody looked at it.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Soaking {
    /// The day of the look.
    pub on: Day,
    /// Rain of that day and the day before, mm; none where a person said that it was soaked.
    pub rain_mm: Option<f64>,
}

/// Why roots rest: of several that end on one day the last counts.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum RestsFrom {
    /// They came into other soil.
    Move,
    /// They were cut.
    Cut,
    /// They were pulled in the wild.
    TheWild,
    /// Some among them were pulled in the wild.
    TheWildAmong,
    /// They lay bare past their last day before they came into soil.
    KeptTooLong,
}

/// Why the light of a bed cannot be reckoned.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum NoLight {
    /// Nothing is known of the crown or the leaves of a nurse plant or a tree that stands there.
    NoCrown(SpeciesKey),
    /// Nobody wrote when a nurse plant was planted, nor how large it is.
    NoAge(SpeciesKey),
    /// Plants stand there whose species nobody wrote.
    NoSpecies,
    /// More nurse plants than any bed has.
    TooMany,
}

/// Why a question has no answer, where more can be said than that nobody looked.
#[derive(Clone, PartialEq, Debug)]
pub enum Gap {
    /// The profile of the species has no shade band at planting out.
    NoShadeBand(SpeciesKey),
    /// The profile has no most days.
    NoMostDays(SpeciesKey),
    /// Ground read dry: the reading says nothing.
    ReadDry,
    /// Ground read soft while it was soaked: it may be hard once it has drained.
    ReadSoaked(Soaking),
    /// A rod was pushed harder than the limit and went down deep: it would have gone into hard ground too.
    RodTooHard {
        /// MPa at the tip.
        mpa: f64,
        /// Depth reached, cm; none where not written.
        depth_cm: Option<f64>,
        /// The rod, mm.
        rod_mm: f64,
    },
    /// A rod under too weak a push stopped short: it would have stopped in soft ground too.
    RodTooWeak {
        /// MPa at the tip.
        mpa: f64,
        /// Depth reached, cm.
        depth_cm: f64,
        /// The rod, mm.
        rod_mm: f64,
    },
    /// A hole is dug, and nobody looked at the ground around it.
    AroundHole {
        /// Depth the roots go to, cm.
        depth_cm: f64,
        /// The rod, mm.
        rod_mm: f64,
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
    /// Nobody read the light; what is reckoned from the nurse plants does not tell whether it fits.
    LightReckoned(LightSpan),
    /// Much of the shade of a bed ends in the months to come.
    ShadeEnds {
        /// What ends.
        end: ShadeEnd,
        /// Whether the day by which the next nurse plants were to be set is past.
        is_late: bool,
    },
    /// Nobody read the light, and it cannot be reckoned.
    LightNotReckoned(NoLight),
    /// Plants came from elsewhere, and the light they stand in is known only since they stand here.
    LightSince {
        /// Since when.
        since: Day,
        /// The day on which that is long enough.
        until: Day,
    },
    /// The profile does not say whether the species lives from bare roots.
    NoBareRoots(SpeciesKey),
    /// Bare roots lie longer than they usually keep, and nobody looked at them today.
    NotLookedAt {
        /// The day they came.
        came: Day,
        /// Days they usually keep.
        keep_days: i32,
    },
    /// Nobody measured them here; how tall they were is known from the day they came.
    HeightOnArrival {
        /// Height, cm.
        cm: f64,
        /// The day.
        on: Day,
    },
    /// The last sample is too old to tell of plants that grow.
    SampleOld {
        /// The day of it.
        on: Day,
    },
    /// Other plants were put with those of the last sample.
    CameAfterSample {
        /// The day of it.
        on: Day,
    },
    /// Roots were cut, or plants potted on, a short while ago, and nobody lifted a plug since.
    RootsRest {
        /// The day of it.
        since: Day,
        /// The day on which that is long enough.
        until: Day,
        /// Why they rest.
        why: RestsFrom,
    },
    /// A coming day: its rain is not known yet.
    ComingDay,
    /// A coming day after a dry run.
    ComingAfterDry {
        /// Days written as dry.
        days: i32,
        /// The last of them.
        last: Day,
    },
    /// A coming day, and a finger found the ground dry.
    ComingAfterDryLook {
        /// The day of the look.
        on: Day,
    },
    /// Nobody read the gauge after a dry run.
    UnreadAfterDry {
        /// Days written as dry.
        days: i32,
        /// The last of them.
        last: Day,
    },
    /// Something was used of which nobody wrote the waiting time of the label.
    NoWaitingTime {
        /// What was used.
        with: String,
        /// The day of it.
        day: Day,
        /// Where, where it was not on these plants.
        beside: Option<Beside>,
    },
    /// A count found more plants dead or gone than alive, and nobody wrote of what.
    ManyDied {
        /// The day of the count.
        on: Day,
        /// Dead or gone.
        gone: u32,
        /// Alive.
        alive: u32,
        /// The day from which another count tells whether it is over.
        again_from: Day,
    },
    /// Plants came out of a tray after many of it had died, and nobody wrote of what.
    CameFromDying {
        /// The tray.
        tray: TrayCode,
        /// How many came.
        plants: u32,
        /// The day of the deaths.
        on: Day,
        /// Dead or gone.
        gone: u32,
        /// Alive.
        alive: u32,
        /// The day from which a count tells whether it is over.
        again_from: Day,
    },
    /// A few of them, or plants that left a tray before so many of it died.
    LeftDying {
        /// The tray.
        tray: TrayCode,
        /// How many came.
        plants: u32,
        /// The day of the deaths.
        on: Day,
        /// Dead or gone.
        gone: u32,
        /// Alive.
        alive: u32,
    },
    /// Plants were set out in a bed from a tray in which many others died, and nobody wrote of what.
    SetOutFromDying {
        /// The tray.
        tray: TrayCode,
        /// How many were set out.
        plants: u32,
        /// The day of the deaths.
        on: Day,
        /// Dead or gone.
        gone: u32,
        /// Alive.
        alive: u32,
    },
    /// Plants of a tray were set out in a bed in which many died soon after, and nobody wrote of what.
    DiedInBed {
        /// The tray.
        tray: TrayCode,
        /// The bed.
        bed: BedName,
        /// The day of the deaths.
        on: Day,
        /// Dead or gone.
        gone: u32,
        /// Alive.
        alive: u32,
    },
    /// Plants of a tray were set out in a bed in which a sickness was seen soon after.
    SickInBed {
        /// The tray.
        tray: TrayCode,
        /// The bed.
        bed: BedName,
        /// The day on which it was seen.
        on: Day,
        /// What was seen.
        what: String,
    },
    /// Many plants died in a tray that stood beside, and nobody wrote of what.
    DiedBeside {
        /// The tray.
        tray: TrayCode,
        /// The day of the deaths.
        on: Day,
        /// Dead or gone.
        gone: u32,
        /// Alive.
        alive: u32,
    },
    /// Many plants were lost to what leaves no sickness behind, and nobody looked at those that are left.
    Harmed {
        /// The day of the last loss.
        on: Day,
        /// Lost in the last weeks.
        gone: u32,
        /// Alive.
        alive: u32,
        /// To what, in a person's own words.
        what: String,
    },
    /// Fresh dung or urea lies in the ground, and burns young roots.
    FreshDung {
        /// What was used.
        with: String,
        /// The day of it.
        on: Day,
        /// From when it burns no more.
        until: Day,
    },
    /// A night so cold or a day so hot that the plants may be hurt, and nobody looked at them since.
    HarshWeather {
        /// The day.
        on: Day,
        /// The lowest or highest of the day, degrees Celsius.
        celsius: f64,
        /// Frost; else heat.
        cold: bool,
    },
    /// Many plants of a species died in a bed of what stays in its ground, as weed killer, water or fire.
    GroundKills {
        /// The day of the loss or the count.
        on: Day,
        /// Dead.
        dead: u32,
        /// Alive.
        alive: u32,
        /// Of what, in a person's own words.
        what: String,
        /// The day from which another count tells whether it is over.
        again_from: Day,
    },
    /// More plants of a species died in a bed than live there, and nobody wrote of what.
    MostOfBedDied {
        /// The day of the loss or the count.
        on: Day,
        /// Dead of nobody knows what.
        dead: u32,
        /// Alive.
        alive: u32,
        /// The day from which another count tells whether it is over.
        again_from: Day,
    },
    /// How long its bag still holds it is not known, and a plug lifted lately holds.
    PlugTells {
        /// The day of the plug.
        on: Day,
        /// Until then it tells.
        until: Day,
    },
    /// Plants were wetted with what kills weeds, and nobody knows yet whether they live.
    MayBeScorched {
        /// What was used.
        with: String,
        /// The day of it.
        day: Day,
        /// The day from which a count of those alive tells.
        alive_from: Day,
    },
    /// Something that may kill plants was used, and nobody wrote how long before planting its label asks to wait.
    NoPlantBack {
        /// What was used.
        with: String,
        /// The day of it.
        day: Day,
        /// Where it was used on plants, the day from which a count of those alive answers as well; none in a bed.
        alive_from: Option<Day>,
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
    /// The question, with what is needed and what is known.
    pub question: Question,
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
    /// The part of the bed that was looked at, where it was not the whole.
    pub part: Option<PartSeen>,
    /// The plants of a tray for which it is judged, where those were put to others.
    pub joined: Option<Joined>,
    /// From when hands may do what it asks for, where a waiting time keeps them off.
    pub hands_from: Option<HandsFrom>,
}

/// From when hands may go where a waiting time runs.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum HandsFrom {
    /// From a day on.
    Day(Day),
    /// Nobody wrote how long it is.
    Unwritten,
}

/// From when hands may go where these questions are asked; none where no waiting time keeps them off.
pub(crate) fn hands_from(criteria: &[Criterion]) -> Option<HandsFrom> {
    let waits = criteria.iter().find(|criterion| criterion.rule() == Rule::Treated && criterion.blocks)?;
    Some(waits.expected.map_or(HandsFrom::Unwritten, HandsFrom::Day))
}

impl Criterion {
    /// A criterion that is not known; it blocks only where it must be known.
    pub(crate) fn unknown<N, K>(
        question: impl FnOnce(Known<N, K>) -> Question,
        needed: Option<N>,
        must_be_known: bool,
        source: impl Into<Source>,
    ) -> Criterion {
        Criterion::lacking(question, needed, None, must_be_known, source)
    }

    /// The same, with the reason why it is not known.
    pub(crate) fn lacking<N, K>(
        question: impl FnOnce(Known<N, K>) -> Question,
        needed: Option<N>,
        gap: Option<Gap>,
        must_be_known: bool,
        source: impl Into<Source>,
    ) -> Criterion {
        Criterion::of(question(Known::Unknown { needed, gap }), must_be_known, source.into())
    }

    /// A criterion that is known; it blocks when unmet.
    pub(crate) fn found<N, K>(
        question: impl FnOnce(Known<N, K>) -> Question,
        needed: N,
        known: K,
        basis: Basis,
        met: bool,
        source: impl Into<Source>,
    ) -> Criterion {
        Criterion::of(question(Known::Found(Found { needed, known, basis, met })), !met, source.into())
    }

    fn of(question: Question, blocks: bool, source: Source) -> Criterion {
        Criterion {
            question,
            blocks,
            warns: false,
            expected: None,
            source,
            entries: Vec::new(),
            part: None,
            joined: None,
            hands_from: None,
        }
    }

    /// Which question it is.
    pub fn rule(&self) -> Rule {
        self.question.rule()
    }

    /// What is needed, where that can be said.
    pub fn needed(&self) -> Option<Measure> {
        self.question.asked().needed()
    }

    /// What is known; none exactly where the basis is unknown.
    pub fn known(&self) -> Option<Measure> {
        self.question.asked().known()
    }

    /// How it is known.
    pub fn basis(&self) -> Basis {
        self.question.asked().basis()
    }

    /// Whether it is met; none exactly where the basis is unknown.
    pub fn met(&self) -> Option<bool> {
        self.question.asked().met()
    }

    /// Why it is not known, where more can be said than that nobody looked.
    pub fn gap(&self) -> Option<&Gap> {
        self.question.asked().gap()
    }

    /// The same, expected to be met from a day.
    pub(crate) fn expected_on(mut self, day: Option<Day>) -> Criterion {
        self.expected = day;
        self
    }

    /// The same, resting on entries.
    pub(crate) fn resting_on(mut self, entries: impl IntoIterator<Item = EntryId>) -> Criterion {
        self.entries.extend(entries);
        self
    }

    /// The same, seen in a part of the bed only; it counts and warns.
    pub(crate) fn seen_in_part(mut self, part: Option<PartSeen>) -> Criterion {
        self.warns = self.warns || part.is_some();
        self.part = part;
        self
    }

    /// The same, judged for plants that were put to others.
    pub(crate) fn of_those(mut self, joined: Option<Joined>) -> Criterion {
        self.joined = joined;
        self
    }

    /// The same, and what it asks hands to do is told to wait. What ends by itself asks for nothing, and a look at pests among what
    /// was sprayed waits although its day is known.
    pub(crate) fn after_wait(mut self, hands_from: Option<HandsFrom>) -> Criterion {
        let ends_by_itself = self.expected.is_some() && self.rule() != Rule::Pest;
        let asks = self.answered() != Answered::Met && !ends_by_itself;
        self.hands_from = hands_from.filter(|_| asks && self.rule().takes_hands(self.met()));
        self
    }

    /// The same, but only advising: it never blocks and warns when unmet.
    pub(crate) fn advising(mut self) -> Criterion {
        self.blocks = false;
        self.warns = self.warns || self.met() == Some(false);
        self
    }
}
