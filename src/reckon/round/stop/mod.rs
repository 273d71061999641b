//! One stop of the round: what to do there, why, and what is lost if it is not done.

pub mod deadline;
pub mod handled;
mod nurse_work;
pub mod tasks;

pub use nurse_work::NurseWork;

use super::deadline::{Due, UntilFor};
use crate::base::{BedName, Day, EntryId, LotCode, PlaceName, SpeciesKey, TrayCode};
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::types::{GroundTask, Kept, Roots};
use crate::nursery::species::LooksAlive;
use crate::reckon::forecast::{SowAgain, TrayForecast};
use crate::reckon::picture::quantity::{BroughtBy, LeavesAtLeast, PestLacks, WaterLeft};
use crate::reckon::picture::{Gap, Measure, Source, Stage};
use crate::words;

words! {
    /// What there is to do; the file spelling begins the stop's id.
    Task {
        /// Read the rain gauge.
        Gauge: "gauge", "pluviometro";
        /// Out to a bed today.
        GoOut: "go_out", "llevar al campo";
        /// Bare roots whose last day comes and that no bed takes.
        LastDay: "last_day", "ultimo dia";
        /// Count what stands.
        Count: "count", "contar";
        /// Stop waiting for seed and free the bench.
        StopWaiting: "stop_waiting", "dejar de esperar";
        /// Sow again what fails.
        SowAgain: "sow_again", "volver a sembrar";
        /// Prick out of the seedbed.
        PrickOut: "prick_out", "repicar";
        /// Into a larger container, or cull.
        PotOn: "pot_on", "cambiar de bolsa";
        /// Cut roots that circle.
        CutRoots: "cut_roots", "podar raices";
        /// Throw out what will not make a plant.
        Cull: "cull", "descartar";
        /// Set apart: too crowded.
        SpaceOut: "space_out", "espaciar";
        /// First step of hardening.
        BeginHardening: "begin_hardening", "empezar a endurecer";
        /// Next step of the shade.
        Shade: "shade", "sombra";
        /// Back into the shade.
        IntoShade: "into_shade", "a la sombra";
        /// Next step of the water.
        Water: "water", "riego";
        /// Measure a sample.
        Measure: "measure", "medir";
        /// Lift a plug.
        CheckPlug: "check_plug", "revisar cepellon";
        /// Read the waiting time on the label of what was used.
        ReadLabel: "read_label", "leer etiqueta";
        /// A treatment is over: look again.
        TreatmentOver: "treatment_over", "fin de tratamiento";
        /// Throw out, treat, or look again at what is sick.
        Sick: "sick", "enfermas";
        /// Lay out a germination test.
        TestLot: "test_lot", "probar lote";
        /// Sow seed before it dies.
        SowLot: "sow_lot", "sembrar lote";
        /// Throw out seed that is dead by all that is known.
        ThrowOutLot: "throw_out_lot", "descartar lote";
        /// Clear a bed.
        Clear: "clear", "limpiar";
        /// Dig holes.
        Holes: "holes", "hoyos";
        /// Weed, or weed rings.
        Weed: "weed", "deshierbar";
        /// Mulch.
        Mulch: "mulch", "acolchar";
        /// Fence.
        Fence: "fence", "cercar";
        /// Water young plants in a bed, or look whether they need it.
        WaterBed: "water_bed", "regar plantas";
        /// Count nurse plants.
        CountNurses: "count_nurses", "contar nodrizas";
        /// Cut ripe bunches.
        CutBunches: "cut_bunches", "cortar racimos";
        /// Lift tubers.
        LiftTubers: "lift_tubers", "sacar yuca";
        /// Chop leaves or cut stems where it is too dark.
        CutForLight: "cut_for_light", "cortar por luz";
        /// Set the next nurse plants.
        SetNurses: "set_nurses", "poner nodrizas";
        /// Take out nurse plants past their life.
        RemoveNurses: "remove_nurses", "sacar nodrizas";
        /// Read the light of a bed.
        ReadLight: "read_light", "leer luz";
        /// Push the rod.
        CheckSoil: "check_soil", "revisar suelo";
        /// Count survivors of a planting.
        CountSurvivors: "count_survivors", "contar sobrevivientes";
    }
    /// What could be lost.
    Stake {
        /// Seedlings in a tray.
        Seedlings: "seedlings";
        /// Plants that seed could still give.
        Seed: "seed";
        /// Plants living in a bed.
        Planted: "planted";
        /// Plants that would miss their bed or their rains.
        Planting: "planting";
        /// Nothing is lost, only not known.
        Knowledge: "knowledge";
    }
}

/// Where a stop is.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Where {
    /// No place: on the way out, or a tray nobody wrote a place for.
    Nowhere,
    /// A bench or frame.
    Place(PlaceName),
    /// A bed.
    Bed(BedName),
    /// Where the seed is kept.
    SeedStore,
}

/// The place of a stop on the walk: the gauge, places by their order, trays without a place, beds by field and name,
/// the seed store.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct WalkOrder {
    /// The part of the walk, from 0.
    pub leg: u8,
    /// The order of the place.
    pub number: u32,
    /// The place, or the field.
    pub name: String,
    /// The bed.
    pub bed: String,
}

/// Plants that could be lost, of which kind, and how soon.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct AtStake {
    /// What could be lost.
    pub what: Stake,
    /// How many plants.
    pub plants: f64,
    /// The most it can be, by what is there: plants of the tray, open places of the bed, seeds of the lot.
    pub(crate) most: Option<f64>,
    /// Within how many days, if it is not done.
    pub within_days: i32,
}

impl AtStake {
    /// Plants lost for each day of waiting.
    pub fn plants_per_day(&self) -> f64 {
        self.plants.max(0.0) / f64::from(self.within_days.max(1))
    }
}

/// The last figure known, and its day.
#[derive(Clone, PartialEq, Debug)]
pub struct LastLook {
    /// The day.
    pub day: Day,
    /// The figure.
    pub figure: Measure,
}

/// A bed that a tray can go out to today.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ToBed {
    /// The bed.
    pub bed: BedName,
    /// How many fit, looking at this tray alone.
    pub plants: u32,
    /// How many of them still have room once the trays that cannot wait as long are in.
    pub after_others: u32,
    /// How many of these the hands of today plant; all of them where nobody wrote how many plants a day they plant.
    pub today: u32,
    /// The day on which hands are there for the last of them, where that is not today.
    pub rest_on: Option<Day>,
    /// How many have no hands by the last day of their tray.
    pub late: u32,
}

/// A tray that a bed is made ready for.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ForTray {
    /// The tray.
    pub tray: TrayCode,
    /// Its species.
    pub species: SpeciesKey,
    /// The day it is, or is expected to be, ready.
    pub ready_from: Day,
    /// Whether all that it waits for ends by then; else it is not ready before.
    pub is_sure: bool,
    /// Whether it goes out to this bed today.
    pub goes_today: bool,
    /// Other trays that come for the bed too.
    pub others: u32,
}

/// Why a stop is due, with its numbers. Sentences are made in `wording`.
#[derive(Clone, PartialEq, Debug)]
pub enum RoundReason {
    /// The gauge has not been read today.
    GaugeUnread,
    /// Seed is due and was not looked at for so long.
    Emerging {
        /// Days since the last look; none where nobody looked yet.
        days_since: Option<i32>,
        /// A look is due every so many days.
        every_days: i32,
        /// Up so far by the books.
        emerged: u32,
        /// Expected to come up in all, where that can be said.
        expected: Option<f64>,
    },
    /// A count of part of the cells, far from what the books hold.
    PartCounted {
        /// Plants seen.
        standing: u32,
        /// In so many cells.
        seen: u32,
        /// Of so many.
        cells: u32,
    },
    /// Plants not counted for so long.
    CountOld {
        /// Days since the last count; none where nobody counted yet.
        days_since: Option<i32>,
        /// A count is due every so many days.
        every_days: i32,
        /// The stage of the tray.
        stage: Stage,
    },
    /// Plants were lost, or a pest or sickness seen, in the last days.
    Sick {
        /// Days since the last count; none where nobody counted yet.
        days_since: Option<i32>,
        /// A count is due every so many days.
        every_days: i32,
        /// What was seen last, where written.
        what: Option<String>,
    },
    /// The last day for seed has passed and nothing new came.
    EmergenceOver {
        /// The last day on which emergence was worth waiting for.
        last_day: Day,
        /// Came up.
        emerged: u32,
        /// Seeds sown.
        sown: u32,
    },
    /// A sowing far behind at the half day: whether to sow again.
    SowAgainAsked {
        /// The forecast.
        told: Box<TrayForecast>,
        /// What sowing again reaches, and what is missing after all that comes of other trays.
        again: SowAgain,
        /// Whether no lot here lives: fresh seed is wanted.
        fresh: bool,
        /// The lot it was sown from, where that is the one to sow again.
        lot: Option<LotCode>,
    },
    /// Seedlings old enough to prick out.
    SeedlingsOldEnough {
        /// Days since sowing.
        age_days: i32,
        /// Due from this age, days.
        from_days: i32,
        /// How many stand in the seedbed.
        standing: u32,
    },
    /// Too long in the container.
    OverdueInContainer {
        /// Days in it, where known.
        days: Option<i32>,
        /// Days it holds, where known.
        limit_days: Option<i32>,
        /// What the last plug showed.
        roots: Option<Roots>,
    },
    /// The part of a sample that fails, at an age at which it should not.
    SampleFails {
        /// Plants that pass.
        pass: u32,
        /// Plants measured.
        of: u32,
        /// Plants of the tray that fail, by that share.
        rest: u32,
    },
    /// Bare roots or stumps past their last day.
    PastLastDay {
        /// The last day.
        until: Day,
        /// Whether they are stumps or stakes.
        stump: bool,
        /// Where they are looked at, where that is neither roots nor bark.
        look: Option<LooksAlive>,
    },
    /// Bare roots or stumps past a day that nobody wrote.
    PastTakenDay {
        /// The day.
        until: Day,
        /// Whether they are stumps or stakes.
        stump: bool,
        /// Where they are looked at, where that is neither roots nor bark.
        look: Option<LooksAlive>,
    },
    /// Bare roots that a bed waits for and that nobody measured.
    BareNotMeasured {
        /// Their last day.
        until: Day,
        /// What is to be measured.
        sample: SampleAsked,
        /// The bed.
        bed: BedName,
        /// So many at most could go there.
        plants: u32,
    },
    /// Plants that stand too far in the sun: they came there by too large a step, or their roots were cut or torn.
    IntoShade {
        /// The day of that step; none where it is for the roots.
        leapt: Option<Day>,
        /// Until when they stay in the shade, where it is for the roots.
        until: Option<Day>,
        /// Whether it is for their grafts, longer than for the roots.
        grafted: bool,
        /// Where to.
        step: NextStep,
    },
    /// Bare roots that lie longer than they usually keep, though their last day was written later.
    BareNotLookedAt {
        /// The day they came.
        came: Day,
        /// Days they usually keep.
        keep_days: i32,
    },
    /// Bare roots that find no place when the others go.
    BareLeft {
        /// How many.
        left: u32,
        /// Their last day.
        until: Day,
        /// Whether they are stumps or stakes.
        stump: bool,
    },
    /// Tall and thin.
    Lanky {
        /// Mean height in cm over collar in mm.
        sturdiness: f64,
        /// Above this it is lanky.
        limit: f64,
    },
    /// Growing tall faster than thick: lanky soon.
    LankySoon {
        /// Mean height in cm over collar in mm now.
        sturdiness: f64,
        /// Above this it is lanky.
        limit: f64,
        /// The day it passes that.
        on: Day,
    },
    /// So few plants were measured that the mean may lie on either side of the least height.
    SampleSmall {
        /// How many more would do.
        more: u32,
        /// How near the mean is known, cm, 95 % sure.
        within_cm: f64,
        /// The least height, cm.
        least_cm: f64,
    },
    /// Old enough, and hardening has not begun.
    HardeningNotBegun {
        /// The first day it could be ready, where known.
        could_be_ready: Option<Day>,
        /// Days that hardening takes.
        length_days: i32,
        /// The rains it is too late for, if begun today.
        too_late: Option<TooLate>,
        /// The step to take.
        step: NextStep,
    },
    /// The last step has settled and the bed is brighter.
    StepDue {
        /// Days since the last step, where there was one.
        days_since: Option<i32>,
        /// The rains it is too late for, if the step is taken today.
        too_late: Option<TooLate>,
        /// The step to take.
        step: NextStep,
    },
    /// Never measured and near its least days, or its age is not known.
    NeverMeasured {
        /// Days to the species' least days; below 0 when past, none where not known.
        days_to_least: Option<i32>,
        /// What is to be measured.
        sample: SampleAsked,
    },
    /// Measured too long ago.
    SampleOld {
        /// Days since the sample.
        days: i32,
        /// What is to be measured.
        sample: SampleAsked,
    },
    /// Trays stand at a place whose light nobody wrote.
    PlaceLightUnknown {
        /// How many.
        trays: u32,
    },
    /// No plug lifted lately.
    PlugNotSeen {
        /// Days since the last plug; none where none was lifted.
        days_since: Option<i32>,
        /// Days to the species' least days, where near.
        days_to_least: Option<i32>,
        /// Days to the end of the container's holding time, where near.
        days_to_limit: Option<i32>,
    },
    /// Something was used and nobody wrote what its label says.
    LabelNotRead {
        /// What was used.
        with: String,
        /// The day of it.
        day: Day,
        /// Whether it is how long to stay away.
        people: bool,
        /// Whether it is how long before planting.
        planting: bool,
    },
    /// The waiting time of a treatment is over.
    TreatmentOver {
        /// With what.
        with: String,
        /// The day on which it ended.
        over_on: Day,
    },
    /// A pest or a sickness that nobody has answered, or that was answered and not looked at again.
    SickOpen {
        /// What was seen.
        what: String,
        /// The day of the last look.
        on: Day,
        /// Whether something was done against it since.
        done: bool,
        /// Of what does not go by itself, what is missing.
        lacks: Option<PestLacks>,
        /// Whether it is damping-off.
        is_damping: bool,
        /// Whether it may have more than one cause.
        is_sign: bool,
        /// Whether its tray is set apart, and it may have to be reported.
        apart: bool,
        /// Whether it is set apart because soil, water and tools take it on.
        of_soil: bool,
        /// Of lost leaves, those that a plant keeps at least.
        leaves: Option<LeavesAtLeast>,
        /// The day from which a count answers it too.
        count_from: Option<Day>,
        /// Whether it goes by itself and is on few, so that the others go out.
        few: bool,
        /// The plants that brought it into a bed.
        brought: Option<BroughtBy>,
    },
    /// Most plants of a tray, or of a species in a bed, died of nobody knows what.
    MostDied(Gap),
    /// A lot kept long without a test.
    LotUntested {
        /// Days since it was collected or last tested.
        days: i32,
        /// Whether it was ever tested.
        tested_before: bool,
        /// Seeds left by the books.
        seeds_left: u32,
        /// Whether they were counted; else about as many as their weight makes.
        counted: bool,
    },
    /// Seed past its stated life, of which some may live, and for which no test is worth its days.
    LotPast {
        /// The last day of that life.
        since: Day,
        /// Seeds left by the books; none where not known.
        seeds_left: Option<u32>,
        /// Whether they were counted; else about as many as their weight makes.
        counted: bool,
    },
    /// Seed that is dead by all that is known of it, and not thrown out.
    LotDead {
        /// The last day of its stated life, or the day on which cold killed it.
        since: Day,
        /// Below so many degrees, where cold killed it.
        killed_below_c: Option<f64>,
    },
    /// Seed of which none came up in a whole test, and not thrown out.
    LotTestedDead {
        /// The day of that test.
        on: Day,
        /// Seeds laid out.
        seeds: u32,
    },
    /// The replicates of the last test are further apart than chance explains.
    ReplicatesApart {
        /// Days since that test.
        days: i32,
    },
    /// The life of seed ends, the way it is kept.
    LifeEnds {
        /// The last day of its life.
        last_day: Day,
        /// Days left.
        days_left: i32,
        /// Days of life, kept so.
        life_days: i32,
        /// How it is kept.
        kept: Kept,
        /// Seeds left by the books; none where not known.
        seeds_left: Option<u32>,
        /// Whether they were counted; else about as many as their weight makes.
        counted: bool,
    },
    /// Ground work not done, or done too long ago, where a tray is coming.
    WorkMissing {
        /// Of a fence: the day on which animals that it keeps out were there since.
        eaten_on: Option<Day>,
        /// The work.
        work: GroundTask,
        /// When it was last done.
        done_on: Option<Day>,
        /// The first tray it is for.
        tray: Option<ForTray>,
    },
    /// Young plants in grass.
    RingWeeding {
        /// Days since the bed was last weeded, or since planting.
        days_since: i32,
        /// Young plants living there.
        plants: u32,
    },
    /// Young plants in ground that is or may be dry.
    YoungDry {
        /// How many.
        plants: u32,
        /// Days without rain by the gauge, where they are a week or more.
        dry_days: Option<i32>,
        /// What is left for their roots, where that can be reckoned.
        left: Option<WaterLeft>,
        /// Outside the rains the days of which nothing is known, where neither tells.
        unread_days: Option<i32>,
    },
    /// Nurse plants not counted for so long.
    NursesNotCounted {
        /// Days since the oldest count, or planting.
        days_since: i32,
        /// Alive by the books.
        alive: u32,
    },
    /// Work on nurse plants.
    NurseWork(NurseWork),
    /// No light reading that counts, and a tray is coming.
    LightNotRead {
        /// The last reading, however old.
        last_read: Option<Day>,
        /// The first tray it is for.
        tray: ForTray,
    },
    /// The ground is not known, and a tray is coming.
    SoilNotKnown {
        /// Whether it was only read dry.
        read_dry: bool,
        /// The first tray it is for.
        tray: ForTray,
    },
    /// A survival count falls due.
    SurvivalDue {
        /// Months after planting: 1, 3, 6 or 12.
        months: u32,
        /// The species.
        species: SpeciesKey,
        /// The day of planting.
        planted_on: Day,
        /// How many were planted.
        planted: u32,
        /// How many live by the books.
        living: u32,
    },
    /// Ready, and beds are open.
    Fits {
        /// The beds, best first.
        beds: Vec<ToBed>,
        /// Plants of the tray that stay behind because they fail or are not sure.
        stays: u32,
        /// Whether that is by a sample; else nobody can tell which they are.
        measured: bool,
        /// Plants that are good enough and find no place any more.
        no_place: u32,
    },
    /// Bare roots that no bed takes today.
    LastDayNear {
        /// The last day.
        until: Day,
        /// Days left.
        days_left: i32,
        /// Whether somebody wrote that day.
        written: bool,
        /// Whether they are stumps or stakes.
        stump: bool,
        /// Where they are looked at, where that is neither roots nor bark.
        look: Option<LooksAlive>,
    },
    /// Bare roots that do not live so.
    BagAtOnce,
    /// Wildlings with torn roots.
    BagWildlings,
    /// A container that ends before the next rains in which its plants could go.
    BagEnds {
        /// Its last day.
        ends: Day,
        /// The first day of those rains.
        rains_from: Day,
    },
}

/// How many plants are to be measured.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct SampleAsked {
    /// So many.
    pub plants: u32,
    /// Whether that is all that stand.
    pub all: bool,
}

/// Rains whose last safe day comes before a tray can be hardened.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct TooLate {
    /// Their last safe day.
    pub last_safe: Day,
    /// The first day of the next rains, where there are any.
    pub next_from: Option<Day>,
}

/// A step of light or water.
#[derive(Clone, PartialEq, Debug)]
pub struct NextStep {
    /// Light of the tray now, a share of the open light.
    pub light_now: Option<f64>,
    /// Light of the bed, or the nearest end of the species' band, in the end.
    pub light_in_the_end: Option<f64>,
    /// Where this step brings it.
    pub next: Option<ToLight>,
    /// Where the step after it would bring it, where one is needed.
    pub then: Option<ToLight>,
    /// Water every so many days from this step (the species' template).
    pub water_every_days: Option<u32>,
}

/// A brighter light, and the place with room that gives it; no place where cloth has to.
#[derive(Clone, PartialEq, Debug)]
pub struct ToLight {
    /// Light there, a share of the open light.
    pub light: f64,
    /// The place.
    pub place: Option<PlaceName>,
}

/// A waiting time that ended a short while ago.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct AfterWait {
    /// What was used.
    pub with: String,
    /// The day on which its wait ended.
    pub over_on: Day,
    /// Whether somebody looked at the plants since.
    pub looked: bool,
}

/// One stop.
#[derive(Clone, PartialEq, Debug)]
pub struct Stop {
    /// Its stable name: the task and what it is about, as `let_go task=` takes it.
    pub id: String,
    /// What there is to do.
    pub task: Task,
    /// What it is about.
    pub subject: Subject,
    /// Where it is.
    pub at: Where,
    /// Its place on the walk.
    pub order: WalkOrder,
    /// Why it is due.
    pub why: RoundReason,
    /// The day it fell due and its own interval; none where it is due today whatever went before.
    pub due: Option<Due>,
    /// The last day it is worth doing, where there is one; before the day of the round where it is overdue.
    pub until: Option<Day>,
    /// What that last day stands for; none exactly where there is none.
    pub until_for: Option<UntilFor>,
    /// What is lost if it is not done.
    pub at_stake: AtStake,
    /// Minutes of the walk: of looking and writing it down.
    pub minutes: f64,
    /// Minutes of the work itself for one person, where it is more than looking (ours, common practice).
    pub work_minutes: Option<f64>,
    /// Whether it is one of those that lose most.
    pub marked: bool,
    /// The tray's own sign: a shape and dots.
    pub tray_sign: Option<String>,
    /// The sign of the place.
    pub place_sign: Option<String>,
    /// The last figure.
    pub last: Option<LastLook>,
    /// What to expect, where that can be said.
    pub expect: Option<Measure>,
    /// Whether it is at sick or quarantined plants, or at a bed with what spreads: such stops come last.
    pub(crate) at_sick: bool,
    /// The wait of what it is about that ended in the last days.
    pub(crate) after_wait: Option<AfterWait>,
    /// The entries it rests on.
    pub entries: Vec<EntryId>,
    /// Where the rule comes from.
    pub source: Source,
}

impl Stop {
    /// The tray it is about, if it is about one.
    pub fn tray(&self) -> Option<&TrayCode> {
        match &self.subject {
            Subject::Tray(tray) => Some(tray),
            Subject::Lot(_) | Subject::Bed(_) | Subject::Place(_) | Subject::Site => None,
        }
    }

    /// The lot it is about, if it is about one.
    pub fn lot(&self) -> Option<&LotCode> {
        match &self.subject {
            Subject::Lot(lot) => Some(lot),
            Subject::Tray(_) | Subject::Bed(_) | Subject::Place(_) | Subject::Site => None,
        }
    }

    /// The bed it is about, if it is about one.
    pub fn bed(&self) -> Option<&BedName> {
        match &self.subject {
            Subject::Bed(bed) => Some(bed),
            Subject::Tray(_) | Subject::Lot(_) | Subject::Place(_) | Subject::Site => None,
        }
    }
}
