//! What questions need and what is known of them, each with the measure it is shown as.

use super::criterion::{Measure, SampleUnit};
use super::out_of::OutOf;
use crate::base::{Day, EntryId, PlaceName, Range, SpeciesKey, TrayCode};
use crate::nursery::entry::types::{GroundTask, Roots, Tubers};
use crate::nursery::species::LooksAlive;

/// Declares what is needed or known, and as which measure it is shown.
macro_rules! shown_as {
    ($($type:ty: $value:pat => $measure:expr;)+) => {
        $(impl From<$type> for Measure {
            fn from($value: $type) -> Measure {
                $measure
            }
        })+
    };
}

shown_as! {
    DaysAtLeast: DaysAtLeast(days) => Measure::DaysAtLeast(days);
    i32: days => Measure::Days(days);
    HeightBand: HeightBand { least_cm: least, most_cm: most } => Measure::HeightBand { least, most };
    CollarRule: CollarRule { floor_mm } => Measure::CollarRule { floor_mm };
    LeavesAtLeast: LeavesAtLeast { count, pairs } => Measure::LeavesAtLeast { count, pairs };
    Sample: Sample { pass, of, mean, unit, .. } => Measure::Sample { pass, of, mean, unit };
    Roots: roots => Measure::Roots(roots);
    RatioAtMost: RatioAtMost(ratio) => Measure::RatioAtMost(ratio);
    LightStep: LightStep { from, to, .. } => Measure::LightStep { from, to };
    NotSo: NotSo => Measure::No;
    LivesBare: lives => if lives == LivesBare::Yes { Measure::Yes } else { Measure::No };
    Option<Day>: day => day.map_or(Measure::No, Measure::On);
    Option<HeldFor>: held => held.map_or(Measure::No, |held| Measure::Said(held.why));
    Option<AtWork>: treated => treated.map_or(Measure::No, |treated| Measure::Said(treated.with));
    PlantsAtLeast: PlantsAtLeast(plants) => Measure::PlantsAtLeast(plants);
    Range: plants => Measure::Plants(plants);
    Positions: Positions(open) => Measure::Positions(open);
    Until: Until(day) => Measure::Until(day);
    KeepsUntil: KeepsUntil { last, .. } => Measure::Until(last);
    Day: day => Measure::On(day);
    LightBand: LightBand { least, most } => Measure::LightBand { least, most };
    Light: Light(share) => Measure::Light(share);
    ResistanceAtMost: ResistanceAtMost { mpa, depth_cm, rod_mm } => Measure::ResistanceAtMost { mpa, depth_cm, rod_mm };
    WorkWithin: WorkWithin { task, days, .. } => Measure::WorkWithin { task, days };
    WaterNeeded: needed => match needed {
        WaterNeeded::Rain(RainAtLeast { mm, days }) => Measure::RainAtLeast { mm, days },
        WaterNeeded::Left(mm) => Measure::WaterAtLeast(mm),
    };
}

/// The days of a species from sowing to planting out.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct DaysOfSpecies {
    /// Least.
    pub least: i32,
    /// Usual, where the profile has it.
    pub usual: Option<i32>,
    /// Most, where the profile has it.
    pub most: Option<i32>,
}

impl From<DaysOfSpecies> for Measure {
    /// All three where the profile has them, else only the least.
    fn from(DaysOfSpecies { least, usual, most }: DaysOfSpecies) -> Measure {
        match (usual, most) {
            (Some(usual), Some(most)) => Measure::DaySpan { least, usual, most },
            (Some(_), None) | (None, _) => Measure::DaysAtLeast(least),
        }
    }
}

/// At least so many days.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct DaysAtLeast(pub i32);

/// What a container holds.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Holds {
    /// So many days.
    Days(i32),
    /// Roots that do not circle, whatever the days.
    Roots,
}

impl From<Holds> for Measure {
    fn from(holds: Holds) -> Measure {
        match holds {
            Holds::Days(days) => Measure::DaysAtMost(days),
            Holds::Roots => Measure::Roots(Roots::Holds),
        }
    }
}

/// How plants stand in their container.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum InContainer {
    /// For so many days.
    Days(i32),
    /// In the seedbed for so many days.
    Seedbed(i32),
    /// For so many days, far beyond what it holds, and a plug that holds is not enough.
    FarBeyond(i32),
    /// So many days there, so far beyond those it holds that no plug tells.
    TooOld(i32),
    /// For so many days, longer than it holds, and roots were cut so lately that no plug tells of them.
    CutLately {
        /// Days.
        days: i32,
        /// The day from which a plug tells.
        tells_from: Day,
    },
    /// Their roots circle.
    Circling,
}

impl From<InContainer> for Measure {
    fn from(stands: InContainer) -> Measure {
        match stands {
            InContainer::Days(days)
            | InContainer::Seedbed(days)
            | InContainer::FarBeyond(days)
            | InContainer::TooOld(days)
            | InContainer::CutLately { days, .. } => Measure::Days(days),
            InContainer::Circling => Measure::Roots(Roots::Circling),
        }
    }
}

/// A height band, cm.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct HeightBand {
    /// Least.
    pub least_cm: f64,
    /// Most.
    pub most_cm: f64,
}

/// At least a floor in mm, and thick enough for the height.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct CollarRule {
    /// The species' floor, mm.
    pub floor_mm: f64,
}

/// At least so many leaves, or pairs.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LeavesAtLeast {
    /// How many.
    pub count: f64,
    /// Whether pairs are meant.
    pub pairs: bool,
}

/// How many plants of a sample pass, and its mean.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Sample {
    /// Plants that pass.
    pub pass: u32,
    /// Plants measured.
    pub of: u32,
    /// Mean of the sample.
    pub mean: f64,
    /// What the mean is in.
    pub unit: SampleUnit,
    /// Plants that went out to beds since: the sample is of before.
    pub gone_since: u32,
}

/// It must not be so.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct NotSo;

/// What a person holds back.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct HeldFor {
    /// Why, as written.
    pub why: String,
    /// The place that is held and from which these plants were carried off, where they are not held themselves.
    pub stood: Option<PlaceName>,
}

/// A treatment that is still at work.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct AtWork {
    /// What was used.
    pub with: String,
    /// Where, where it was not on these plants.
    pub beside: Option<Beside>,
    /// Whether its label asks for no wait, and only its own day is kept free.
    pub dries: bool,
    /// Whether it wets, and is kept free until it has dried.
    pub wets: bool,
}

/// What was treated beside plants, on the same bench.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Beside {
    /// A tray.
    Tray(TrayCode),
    /// The place itself, before they came.
    Place,
    /// A bed.
    Bed,
    /// Plants of a tray that were set out in a bed.
    Plants(TrayCode),
    /// A place from which they were carried off while its time ran.
    Stood(PlaceName),
    /// A tray beside which they stood when it was treated, and from which they were carried off since.
    Drifted(TrayCode),
}

/// Whether plants live from bare roots.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum LivesBare {
    /// Their species does.
    Yes,
    /// Their species does not.
    No,
    /// They were pulled in the wild, with torn roots.
    Wildling,
}

/// Plants that were put to those of a tray after it was made.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Joined {
    /// How many.
    pub plants: u32,
    /// The day.
    pub on: Day,
}

/// A pest or sickness that was seen and not settled since.
#[derive(Clone, PartialEq, Debug)]
pub struct PestSeen {
    /// A person's own words.
    pub what: String,
    /// Share of the plants, percent; none where nobody counted.
    pub share_pct: Option<f64>,
    /// The day of the last look.
    pub on: Day,
    /// Whether it lives in the soil or the roots.
    pub in_soil: bool,
    /// Whether one plant that has it is enough: a virus, a witches' broom, a wilt.
    pub spreads: bool,
    /// Whether it was seen in the bed, and not on the plants.
    pub in_bed: bool,
    /// Whether what was seen may have more than one cause, and nobody said which.
    pub is_sign: bool,
    /// Whether wet and still air brings it: damping-off.
    pub is_damping: bool,
    /// What is missing until it counts as gone, of what does not go by itself.
    pub lacks: Option<PestLacks>,
    /// The plants that brought it into a bed, where it was seen in their tray alone.
    pub brought: Option<BroughtBy>,
    /// Whether it bores in the stem.
    pub in_stem: bool,
    /// Of what goes along with no plant and takes their leaves: those that a plant keeps at least.
    pub leaves: Option<LeavesAtLeast>,
    /// Where a sickness of a tray is known by losses alone: the day from which a count answers it too.
    pub count_from: Option<Day>,
    /// Where it was seen, where it may have gone over to these plants.
    pub beside: Option<Beside>,
    /// The place where it was seen after these plants had left it, and when they did.
    pub left: Option<(PlaceName, Day)>,
    /// The tray in which it was seen after these plants had parted from those in it.
    pub(crate) out_of: Option<OutOf>,
    /// Of a bed where the plants that give the shade have it alone: how many of them go.
    pub of_shade: Option<u32>,
}

impl PestSeen {
    /// What a look found, of which nothing more is known yet.
    pub(crate) fn only(what: &str, share_pct: Option<f64>, on: Day) -> PestSeen {
        PestSeen {
            what: what.to_string(),
            share_pct,
            on,
            in_soil: false,
            spreads: false,
            in_bed: false,
            is_sign: false,
            is_damping: false,
            lacks: None,
            brought: None,
            in_stem: false,
            leaves: None,
            count_from: None,
            beside: None,
            left: None,
            out_of: None,
            of_shade: None,
        }
    }

    /// Whether plants that have it are set apart, and it may have to be reported: viruses, wilts, nematodes and their like.
    pub(crate) fn is_set_apart(&self) -> bool {
        self.spreads && !self.is_sign && !self.in_stem
    }

    /// The same of a tray: nobody carries a bed away.
    pub(crate) fn is_apart(&self) -> bool {
        !self.in_bed && self.is_set_apart()
    }
}

/// Plants in a bed that came from a tray with a sickness.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct BroughtBy {
    /// The tray.
    pub tray: TrayCode,
    /// The tray in which it was seen, where none of them came out of that and they had been together with its plants.
    pub(crate) with: Option<TrayCode>,
    /// The place where they stood and it was seen; none where it was seen in the tray.
    pub place: Option<PlaceName>,
    /// The day on which they left it, where it was seen there after that.
    pub left: Option<Day>,
    /// How many.
    pub plants: u32,
    /// The day they went in.
    pub on: Day,
    /// How many of them are looked at.
    pub look_at: u32,
}

/// What is missing until a sickness that does not go by itself counts as gone.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum PestLacks {
    /// Whether it goes along with plants at all.
    Kind,
    /// On how many plants it is.
    Share,
    /// Plants thrown out.
    ThrownOut {
        /// At least so many.
        least: u32,
        /// So many were.
        so_far: u32,
        /// So many died of it since it was seen, and are no longer asked for.
        died: u32,
        /// Or the whole tray treated.
        or_treated: bool,
    },
    /// The whole tray thrown out.
    WholeTray,
    /// Plants taken out of the bed.
    TakenOut {
        /// At least so many.
        least: u32,
        /// So many were, or died.
        so_far: u32,
        /// Or the ground treated.
        or_treated: bool,
    },
    /// Something done against it in the bed.
    Deed,
    /// A look that finds none of it.
    Look {
        /// Not before this day.
        from: Day,
        /// Whether that day has come.
        is_due: bool,
        /// The last look that found none of it and was made before that day: it told nothing.
        early: Option<Day>,
        /// What is looked at.
        at: LookAt,
    },
}

/// What is looked at for a sickness.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum LookAt {
    /// So many plants.
    Plants(u32),
    /// The roots of so many plants.
    Roots(u32),
    /// The ground of a bed, dug.
    Ground,
    /// The plants of a bed.
    Bed,
    /// The roots of so many plants that grew in the ground of a bed since.
    RootsGrown(u32),
    /// The roots of so many young plants of what it lives on, grown in the ground of a bed since.
    HostsGrown(u32),
    /// Ground that has rested, with what it does not live on.
    Rested,
    /// Plants that came from a sick tray.
    Brought,
}

impl From<Option<PestSeen>> for Measure {
    fn from(seen: Option<PestSeen>) -> Measure {
        match seen {
            Some(PestSeen { what, share_pct, .. }) => {
                Measure::Pest { what, share: share_pct.map(|share| share / 100.0) }
            }
            None => Measure::No,
        }
    }
}

/// How far plants are hardened.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Hardened {
    /// Their species goes out soft.
    GoesSoft,
    /// Where they go is no brighter than where they stood.
    NoBrighter,
    /// For so many days.
    For(i32),
    /// Not begun, and it need not begin before a day: they are too young to go.
    NotBefore(Day),
    /// Their roots or grafts rest in the shade until a day, and they stand in the sun.
    Rests(Day),
    /// Since today.
    BegunToday,
    /// A step that was too large: it counts from a day on, when what it scorched shows.
    Leapt {
        /// The day of the step.
        on: Day,
        /// The day from which it counts.
        from: Day,
        /// For so many days from then on.
        days: i32,
    },
    /// They stood so many days in a light no darker than where they go.
    Stood(i32),
    /// They stood so many days in their light, long enough for the small step to where they go.
    SmallStep(i32),
    /// They stood so many days in light from which it is a small step to where they go.
    StepsTaken(i32),
    /// They stood so many days in their light, long enough.
    StoodHere(i32),
    /// They stood so many days in their light, not long enough.
    StoodShort(i32),
    /// Long enough, and shorter than advised.
    BelowAdvice {
        /// Days of hardening.
        days: i32,
        /// Days advised for the species.
        advised: i32,
        /// Whether they only stood there.
        stood: bool,
    },
    /// Long enough, but the last step is too fresh.
    FreshStep {
        /// Days of hardening.
        days: i32,
        /// The day of the last step.
        last: Day,
        /// The day it is old enough.
        from: Day,
    },
    /// The shade was put back up.
    PutBack(Day),
    /// Somebody said that it began, and the light never changed.
    SaidAlone(Day),
}

impl From<Hardened> for Measure {
    fn from(hardened: Hardened) -> Measure {
        match hardened {
            Hardened::GoesSoft | Hardened::NoBrighter => Measure::No,
            Hardened::For(days)
            | Hardened::Stood(days)
            | Hardened::SmallStep(days)
            | Hardened::StepsTaken(days)
            | Hardened::StoodHere(days)
            | Hardened::StoodShort(days)
            | Hardened::BelowAdvice { days, .. } => Measure::Days(days),
            Hardened::FreshStep { days, last, .. } => Measure::FreshStep { days, last },
            Hardened::NotBefore(_) | Hardened::Rests(_) | Hardened::BegunToday | Hardened::Leapt { .. } => {
                Measure::Days(0)
            }
            Hardened::PutBack(day) | Hardened::SaidAlone(day) => Measure::On(day),
        }
    }
}

/// At most so many times as bright.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct RatioAtMost(pub f64);

/// The light of the tray and of where it would go, shares of the open light.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LightStep {
    /// The tray's last 10 days; above nought.
    pub from: f64,
    /// The bed's.
    pub to: f64,
    /// A step of light of the last days that was too large: the light now, and since when.
    pub burns: Option<(f64, Day)>,
    /// Whether they still stand in the light of that step, and nobody looked at them since it shows what it scorched.
    pub(crate) in_sun: bool,
    /// Days in the shade, and the day on which they came back from it, where that wants a look.
    pub(crate) back: Option<(i32, Day)>,
    /// Until when its plants stay in the shade for their roots, where they do.
    pub rests_until: Option<Day>,
}

/// At least so many plants.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct PlantsAtLeast(pub u32);

/// So many positions.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Positions(pub u32);

/// A day on or before which it must be.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Until(pub Day);

/// The last day of plants without soil.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct KeepsUntil {
    /// The day.
    pub last: Day,
    /// Whether they are stumps, stakes, slips or suckers, which have no fine roots to look at.
    pub stump: bool,
    /// Where they are looked at, where that is neither roots nor bark.
    pub look: Option<LooksAlive>,
    /// Whether they lie so long past a day that somebody wrote that no look is worth it.
    pub long_gone: bool,
}

/// A band of the open light, shares of 0 to 1.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LightBand {
    /// Least.
    pub least: f64,
    /// Most.
    pub most: f64,
}

/// A share of the open light, 0 to 1.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Light(pub f64);

/// The light of a bed: the mean of its readings, or what was reckoned where nobody read.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LightRead {
    /// A share of the open light, 0 to 1.
    pub share: f64,
    /// How far the readings lie apart, where they do not agree.
    pub apart: Option<LightApart>,
    /// From where to where it may be, where it was reckoned and not read.
    pub(crate) reckoned: Option<LightSpan>,
}

impl From<LightRead> for Measure {
    fn from(light: LightRead) -> Measure {
        light.reckoned.map_or(Measure::Light(light.share), Measure::LightReckoned)
    }
}

/// Light as it is reckoned, shares of the open light: four times in five it is from low to high.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LightSpan {
    /// The likely share.
    pub share: f64,
    /// As dark as it may be.
    pub low: f64,
    /// As bright as it may be.
    pub high: f64,
}

/// Shade that ends.
#[derive(Clone, PartialEq, Debug)]
pub struct ShadeEnd {
    /// The nurse plant.
    pub nurse: SpeciesKey,
    /// With what it ends.
    pub by: EndsBy,
    /// About when.
    pub about: Day,
    /// The share of the shade of the bed that goes, 0 to 1.
    pub share: f64,
    /// By when the next nurse plants have to be set to shade then, where their profile tells.
    pub set_next_by: Option<Day>,
    /// The entry that planted it.
    pub entry: EntryId,
}

impl ShadeEnd {
    /// Whether the day by which the next nurse plants were to be set is past.
    pub(crate) fn is_late(&self, today: Day) -> bool {
        self.set_next_by.is_some_and(|by| by < today)
    }
}

/// With what the shade of a nurse plant ends.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum EndsBy {
    /// So many bunches that were seen are cut.
    Bunches(u32),
    /// Its stems have fruited, by their age.
    Stems,
    /// It has lived its time.
    Age,
}

/// Readings that do not agree.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LightApart {
    /// The darkest, a share of the open light.
    pub low: f64,
    /// The brightest.
    pub high: f64,
    /// The day of the oldest.
    pub since: Day,
}

/// At most so much resistance, MPa, down to a depth in cm.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct ResistanceAtMost {
    /// MPa.
    pub mpa: f64,
    /// Depth, cm.
    pub depth_cm: f64,
    /// The rod by whose push it is said to a person, mm.
    pub rod_mm: f64,
}

/// What tells of the ground.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Ground {
    /// Resistance read, at a depth where it was written.
    Read {
        /// MPa.
        mpa: f64,
        /// Depth, cm.
        depth_cm: Option<f64>,
        /// The hole, where it was read in the bottom of one.
        hole: Hole,
    },
    /// Where a rod under a known push stopped.
    RodStopped {
        /// MPa at the tip.
        mpa: f64,
        /// Depth, cm.
        depth_cm: f64,
        /// The rod, mm.
        rod_mm: f64,
    },
    /// Where a rod under a known push stopped beneath or beside a dug hole.
    AtHole {
        /// MPa at the tip.
        mpa: f64,
        /// Depth, cm: beneath a hole from its bottom.
        depth_cm: f64,
        /// The hole.
        hole: Hole,
        /// The rod, mm.
        rod_mm: f64,
    },
    /// Tubers were lifted so many days ago.
    Lifted(i32),
    /// The shape of lifted tubers.
    Tubers(Tubers),
}

/// The hole at which a rod was pushed.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Hole {
    /// Beside it.
    Beside,
    /// In its bottom: so deep as it was written, cm.
    Written(f64),
    /// In its bottom: as deep as the ball of its species needs, cm; nobody wrote its depth.
    Taken(f64),
    /// In its bottom, and nobody knows how deep that is.
    Unknown,
}

impl Hole {
    /// Its depth above the rod, where that is known or taken, cm.
    pub(crate) fn depth_cm(self) -> Option<f64> {
        match self {
            Hole::Written(cm) | Hole::Taken(cm) => Some(cm),
            Hole::Beside | Hole::Unknown => None,
        }
    }
}

impl From<Ground> for Measure {
    fn from(ground: Ground) -> Measure {
        match ground {
            Ground::Read { mpa, depth_cm, .. } => Measure::Resistance { mpa, depth_cm },
            Ground::RodStopped { mpa, depth_cm, rod_mm } | Ground::AtHole { mpa, depth_cm, rod_mm, .. } => {
                Measure::RodStopped { mpa, depth_cm, rod_mm }
            }
            Ground::Lifted(days) => Measure::TubersLifted(days),
            Ground::Tubers(tubers) => Measure::TuberShape(tubers),
        }
    }
}

/// Work to be done, not longer ago than it lasts.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct WorkWithin {
    /// The work.
    pub task: GroundTask,
    /// Days it lasts.
    pub days: i32,
    /// Of holes that are too shallow: how deep the container of the species is, cm.
    pub(crate) at_least_cm: Option<f64>,
    /// Of a fence: the day on which animals that it keeps out ate there since; then that of another bed of its field.
    pub(crate) eaten_on: Option<Day>,
    pub(crate) eaten_beside_on: Option<Day>,
}

/// At least so much rain in so many days.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct RainAtLeast {
    /// mm.
    pub mm: f64,
    /// Days.
    pub days: i32,
}

/// How wet it has to be.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum WaterNeeded {
    /// By the rain of the last days.
    Rain(RainAtLeast),
    /// By the water left for young roots: at least so many mm.
    Left(f64),
}

/// What is left of the water that young roots reach.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct WaterLeft {
    /// mm.
    pub left_mm: f64,
    /// What the ground holds when it is full, mm.
    pub full_mm: f64,
    /// Days for which it is enough without rain.
    pub days: i32,
    /// What is missing until the ground is full, mm.
    pub missing_mm: f64,
    /// Days that nobody read and that were filled with the usual rain.
    pub unread_days: i32,
    /// What somebody found who looked.
    pub seen: Option<SeenWater>,
}

/// What a look at the water of the ground found, and when.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum SeenWater {
    /// Wet through.
    Wet(Day),
    /// Dry.
    Dry(Day),
    /// Wet at the feet of young plants that were watered, which tells nothing of the ground between them.
    AtFeet(Day),
}

/// How wet it is known to be.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Wet {
    /// Rain of so many mm in so many days.
    Rain {
        /// mm.
        mm: f64,
        /// Days.
        days: i32,
    },
    /// So much is left for young roots.
    Left(WaterLeft),
    /// The time of the usual rains.
    UsualRains,
    /// So much on a day and the day before that the ground stands full.
    Drowned {
        /// mm.
        mm: f64,
        /// The day of the last of it.
        on: Day,
    },
    /// The same, some days ago: it has drained, but where water stands.
    Drained {
        /// mm.
        mm: f64,
        /// The day of the last of it.
        on: Day,
    },
}

impl From<Wet> for Measure {
    fn from(wet: Wet) -> Measure {
        match wet {
            Wet::Rain { mm, days } => Measure::Rain { mm, days },
            Wet::Left(left) => Measure::WaterLeft { mm: left.left_mm, of_mm: left.full_mm },
            Wet::UsualRains => Measure::Yes,
            Wet::Drowned { mm, .. } | Wet::Drained { mm, .. } => Measure::Rain { mm, days: 2 },
        }
    }
}
