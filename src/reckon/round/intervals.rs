//! Every interval and threshold of the round, with where it comes from, and the minutes each task takes on the walk.

use crate::reckon::picture::RuleSource;

/// Minutes a walk may take where the nursery says nothing: the middle of 40-60 minutes. Common practice.
pub const WALK_MINUTES: f64 = 50.0;
/// Stops marked as those that lose most. Ours.
pub const MARKED_STOPS: usize = 3;
/// A stop is late when so much of its own interval has passed since it fell due. Ours.
pub const LATE_SHARE: f64 = 0.5;
/// Share of the walk's minutes kept for what is late, whatever it loses. Ours.
pub const LATE_MINUTES_SHARE: f64 = 0.25;
/// Every so many days another kind of late stop has the first turn. Ours.
pub const TURN_DAYS: i32 = 5;
/// What is lost for each minute is compared in steps of so many times as much. Ours.
pub const WORTH_STEP: f64 = 4.0;
/// Days over which a loss without a last day is spread. Ours.
pub const NO_LAST_DAY_DAYS: i32 = 30;

/// A tray with seed due is counted every so many days until half of what is expected is up. Common practice: every 1-2
/// days.
pub const EMERGING_EVERY_DAYS: i32 = 2;
/// After that every so many days. Common practice: every 3-4 days.
pub const EMERGED_HALF_EVERY_DAYS: i32 = 4;
/// A living tray is counted every so many days. Ours, common practice.
pub const COUNT_EVERY_DAYS: i32 = 14;
/// A tray that hardens or is ready is counted every so many days. Ours, common practice.
pub const COUNT_NEAR_EVERY_DAYS: i32 = 7;
/// A tray that lost plants or shows a pest is counted every so many days. Ours: damping-off takes a tray in a week.
pub const COUNT_SICK_EVERY_DAYS: i32 = 2;
/// A loss or a pest makes a tray sick for so many days. Ours.
pub const SICK_FOR_DAYS: i32 = 7;
/// Losses of at least this share of what stood in those days make a tray sick. Ours: one cutworm does not.
pub const SICK_LOSS_SHARE: f64 = 0.05;
/// Seed of a species without figures is waited for so many days. Ours.
pub const UNKNOWN_LAST_DAY_DAYS: i32 = 180;
/// Source of the intervals of counting.
pub const COUNT_SOURCE: RuleSource = RuleSource::Counting;

/// Nothing new for so many days, at least, and the waiting ends. Common practice.
pub const NOTHING_NEW_DAYS: i32 = 7;
/// Or for this share of the days to half emergence. Common practice.
pub const NOTHING_NEW_SHARE: f64 = 0.25;
/// The round asks about it for so many days after the last day. Ours.
pub const STOP_WAITING_ASKED_DAYS: i32 = 30;
/// A sowing is poor below this share of what was expected. Common practice.
pub const POOR_EMERGENCE_SHARE: f64 = 0.3;
/// Source of the end of waiting.
pub const STOP_WAITING_SOURCE: RuleSource = RuleSource::StopWaiting;

/// Whether to sow again is asked for so many days after the last day. Ours.
pub const SOW_AGAIN_ASKED_DAYS: i32 = 30;
/// Source of sowing again.
pub const SOW_AGAIN_SOURCE: RuleSource = RuleSource::SowAgain;

/// Seedlings are pricked out so many days after half of them came up (2 cotyledons to 2 true leaves). Common practice,
/// about 3 weeks.
pub const PRICK_OUT_AFTER_DAYS: i32 = 21;
/// And within so many days, before the root is longer than the hole is deep. Ours, common practice.
pub const PRICK_OUT_WINDOW_DAYS: i32 = 21;
/// A container below this share of the species' own is a seedbed. Ours.
pub const SEEDBED_VOLUME_SHARE: f64 = 0.25;
/// Share of emergence after which "most" are up. Ours.
pub const MOST_EMERGED_SHARE: f64 = 0.5;
/// Share of seedlings lost to bent roots when pricked out too late. Ours: usual culls of 10-25 %.
pub const LATE_PRICKING_LOSS: f64 = 0.25;
/// Source of pricking out.
pub const PRICK_OUT_SOURCE: RuleSource = RuleSource::PrickOut;

/// Share of plants lost when they stay too long in a container. Ours.
pub const OVERDUE_LOSS: f64 = 0.5;
/// Days within which that happens. Ours.
pub const OVERDUE_WITHIN_DAYS: i32 = 21;
/// Source of potting on.
pub const POT_ON_SOURCE: RuleSource = RuleSource::PotOn;
/// Above this height (cm) over collar (mm) plants are set apart. Common practice; Jaenicke 1999 wants under 6.
pub const LANKY_ABOVE: f64 = 8.0;
/// Above this they are culled. Common practice.
pub const CULL_LANKY_ABOVE: f64 = 10.0;
/// Share of lanky plants lost after planting out. Ours.
pub const LANKY_LOSS: f64 = 0.25;
/// Source of spacing out and culling.
pub const GRADING_SOURCE: RuleSource = RuleSource::Grading;

/// A sample is measured from so many days before the species' least days. Ours.
pub const MEASURE_BEFORE_DAYS: i32 = 30;
/// A sample is old after so many days. Common practice: 30 heights and collars monthly near delivery.
pub const SAMPLE_OLD_DAYS: i32 = 28;
/// Plants in a sample. Common practice.
pub const SAMPLE_PLANTS: u32 = 30;
/// Source of measuring.
pub const MEASURE_SOURCE: RuleSource = RuleSource::Measuring;
/// A plug is lifted from so many days before the least days. Ours.
pub const PLUG_BEFORE_LEAST_DAYS: i32 = 14;
/// And from so many days before the container's holding time ends. Ours.
pub const PLUG_BEFORE_LIMIT_DAYS: i32 = 14;
/// None lifted for so many days and it is due. Ours, common practice: the same 21 days for which a plug speaks.
pub const PLUG_EVERY_DAYS: i32 = crate::reckon::tray::time::PLUG_SAYS_FOR_DAYS;
/// Source of the plug.
pub const PLUG_SOURCE: RuleSource = RuleSource::LiftPlug;
/// Share of plants that a missed look at size or roots costs. Ours.
pub const UNSEEN_LOSS: f64 = 0.05;

/// A step settles so many days before the next. Common practice: 7-10.
pub const STEP_EVERY_DAYS: i32 = crate::reckon::tray::hardening::LAST_STEP_DAYS;
/// A tray put back under shade rests so many days before it begins again. Ours, common practice: 2-3 weeks.
pub const PUT_BACK_RESTS_DAYS: i32 = 14;
/// Share of plants lost when they go out unhardened or miss their rains. Ours; 30-50 % reported without shade.
pub const UNHARDENED_LOSS: f64 = 0.3;
/// Days within which a missed step is felt: one step. Ours.
pub const STEP_WITHIN_DAYS: i32 = 14;
/// For rains to come a step is due so many days before its last day. Ours.
pub const BEFORE_RAINS_DAYS: i32 = 28;
/// Source of the steps.
pub const STEP_SOURCE: RuleSource = RuleSource::Steps;

/// A treatment that is over is shown for so many days. Ours.
pub const TREATMENT_SHOWN_DAYS: i32 = 2;
/// Source of the waiting time that is asked for.
pub const LABEL_SOURCE: RuleSource = RuleSource::WaitingTime;
/// Source of the end of a treatment.
pub const TREATMENT_SOURCE: RuleSource = RuleSource::TreatmentOver;

/// A lot is tested after so many days kept without a test. Ours.
pub const TEST_AFTER_DAYS: i32 = crate::reckon::lots::TEST_AFTER_DAYS;
/// Seeds in a small nursery's test: 2 x 25. Common practice.
pub const TEST_SEEDS: u32 = crate::reckon::lots::TEST_SEEDS;
/// Source of tests.
pub const TEST_SOURCE: RuleSource = RuleSource::SeedTest;

/// Clearing and holes are due for trays that are ready within so many days: 6 weeks. Common practice.
pub const GROUND_AHEAD_DAYS: i32 = 42;
/// Weeding and mulch within so many days. Common practice: 1-2 weeks ahead.
pub const WEED_AHEAD_DAYS: i32 = 14;
/// Source of ground work.
pub const GROUND_SOURCE: RuleSource = RuleSource::GroundAhead;
/// Rings are weeded from so many days after planting: 1 month. Common practice.
pub const RINGS_FROM_DAYS: i32 = 30;
/// To so many days: 6 months. Common practice.
pub const RINGS_UNTIL_DAYS: i32 = 183;
/// Every so many days: 4 weeks. Common practice.
pub const RINGS_EVERY_DAYS: i32 = 28;
/// Share of young plants that grass takes in a round of weeding missed. Ours: the first cause of death in old pasture.
pub const GRASS_LOSS: f64 = 0.1;
/// Source of ring weeding.
pub const RINGS_SOURCE: RuleSource = RuleSource::Rings;
/// Fences are asked about while plants are younger than this, days: 24 months. Common practice.
pub const FENCE_UNTIL_DAYS: i32 = 730;

/// Nurse plants are counted every so many days. Ours.
pub const NURSES_EVERY_DAYS: i32 = 60;
/// Share of what stands or will stand under them that an unseen gap costs. Ours.
pub const NURSE_GAP_LOSS: f64 = 0.05;
/// Source of nurse counts.
pub const NURSES_SOURCE: RuleSource = RuleSource::Nurses;
/// Light and soil are looked at where a tray is ready within so many days: 3 months. Common practice.
pub const LOOK_AHEAD_DAYS: i32 = 90;
/// Chance that a look at light or soil opens the bed. Ours.
pub const LOOK_OPENS: f64 = 0.5;
/// Source of light readings ahead.
pub const LIGHT_SOURCE: RuleSource = RuleSource::LightAhead;
/// Source of soil checks ahead.
pub const SOIL_SOURCE: RuleSource = RuleSource::SoilAhead;

/// Months after planting at which survivors are counted. Common practice.
pub const SURVIVAL_MONTHS: [u32; 4] = [1, 3, 6, 12];
/// Days in a month, on average.
pub const DAYS_PER_MONTH: f64 = 30.44;
/// A survival count falls due at this share of its months. Ours.
pub const SURVIVAL_FROM_SHARE: f64 = 0.9;
/// A count made from this share of its months on is that count. Ours.
pub const SURVIVAL_COUNTS_FROM_SHARE: f64 = 0.75;
/// And is no longer that count after this share. Ours.
pub const SURVIVAL_UNTIL_SHARE: f64 = 1.5;
/// Share of dead that can be refilled in time where they are counted, year 1. Banin et al. 2023: 18 % dead in year 1.
pub const REFILL_SHARE: f64 = 0.18;
/// Source of survival counts.
pub const SURVIVAL_SOURCE: RuleSource = RuleSource::Survival;

/// The last day of bare roots is told so many days before. Ours.
pub const LAST_DAY_NOTICE_DAYS: i32 = 7;
/// Source of going out.
pub const GO_OUT_SOURCE: RuleSource = RuleSource::GoingOut;
/// Source of last days.
pub const LAST_DAY_SOURCE: RuleSource = RuleSource::LastDayWritten;
/// Source of the gauge.
pub const GAUGE_SOURCE: RuleSource = RuleSource::Gauge;

/// Share of seedlings that damping-off, ants or rats can take in a week unseen while they come up. Ours.
pub const EMERGING_LOSS: f64 = 0.10;
/// The same in a sick tray. Ours.
pub const SICK_LOSS: f64 = 0.5;
/// Days within which that happens. Ours.
pub const SICK_WITHIN_DAYS: i32 = 7;
/// Share of older plants lost unseen in four weeks. Ours: about 1 % a week.
pub const UNCOUNTED_LOSS: f64 = 0.04;
/// Those four weeks.
pub const UNCOUNTED_WITHIN_DAYS: i32 = 28;

/// Minutes of the work itself, for one person. Ours, from common practice; no publication.
pub mod work {
    /// Carry and plant out one plant into a hole that is dug: 150-200 a day.
    pub const PLANT_OUT: f64 = 3.0;
    /// Prick out one seedling: 800-1,000 a day.
    pub const PRICK_OUT: f64 = 0.5;
    /// Fill a larger bag and pot one plant on: some 400 a day.
    pub const POT_ON: f64 = 1.2;
    /// Take one plant in hand: set it apart or throw it out.
    pub const SORT: f64 = 0.1;
    /// Heel in one plant with bare roots.
    pub const HEEL_IN: f64 = 0.5;
    /// Sow one seed into a filled bag.
    pub const SOW: f64 = 0.1;
    /// Clear a square metre.
    pub const CLEAR_M2: f64 = 1.0;
    /// Dig one hole: some 40 a day.
    pub const HOLE: f64 = 12.0;
    /// Weed one ring of 1.5 m.
    pub const RING: f64 = 3.0;
    /// Carry and lay the mulch of one plant.
    pub const MULCH: f64 = 3.0;
    /// A metre of fence.
    pub const FENCE_M: f64 = 6.0;
    /// Source of all of these.
    pub const SOURCE: &str = "ours, from common practice: one person with hand tools";
}

/// Minutes on the walk, ours. A task that is work of the day takes only the minutes of looking.
pub mod minutes {
    /// Read the gauge.
    pub const GAUGE: f64 = 1.0;
    /// Stop at a tray and write it down.
    pub const AT_TRAY: f64 = 0.5;
    /// Seedlings counted in a minute.
    pub const COUNTED_IN_A_MINUTE: f64 = 100.0;
    /// Look at a tray and decide.
    pub const LOOK: f64 = 1.0;
    /// A step of shade or water.
    pub const STEP: f64 = 2.0;
    /// 30 heights and collars.
    pub const MEASURE: f64 = 9.0;
    /// Lift a plug.
    pub const PLUG: f64 = 1.0;
    /// Mark what goes out.
    pub const GO_OUT: f64 = 2.0;
    /// Lay out a test.
    pub const TEST: f64 = 8.0;
    /// Look at a lot.
    pub const SEED: f64 = 2.0;
    /// Walk to a bed and look.
    pub const BED: f64 = 2.0;
    /// Ten pairs of light readings.
    pub const LIGHT: f64 = 6.0;
    /// The rod at five places.
    pub const SOIL: f64 = 5.0;
    /// Plants in a bed counted in a minute.
    pub const BED_COUNTED_IN_A_MINUTE: f64 = 20.0;
}
