//! Every interval and threshold of the round, with where it comes from, and the minutes each task takes on the walk.

use crate::reckon::picture::RuleSource;

/// Minutes a walk may take where the nursery says nothing: the middle of 40-60 minutes. Common practice.
pub(crate) const WALK_MINUTES: f64 = 50.0;
/// Stops marked as those that lose most. Ours.
pub(crate) const MARKED_STOPS: usize = 3;
/// A stop is late when so much of its own interval has passed since it fell due. Ours.
pub(crate) const LATE_SHARE: f64 = 0.5;
/// Share of the walk's minutes kept for what is late, whatever it loses. Ours.
pub(crate) const LATE_MINUTES_SHARE: f64 = 0.25;
/// Every so many days another kind of late stop has the first turn. Ours.
pub(crate) const TURN_DAYS: i32 = 5;
/// What is lost for each minute is compared in steps of so many times as much. Ours.
pub(crate) const WORTH_STEP: f64 = 4.0;
/// Days over which a loss without a last day is spread. Ours.
pub(crate) const NO_LAST_DAY_DAYS: i32 = 30;

/// A tray with seed due is counted every so many days until half of what is expected is up. Common practice: every 1-2
/// days.
pub(crate) const EMERGING_EVERY_DAYS: i32 = 2;
/// After that every so many days. Common practice: every 3-4 days.
pub(crate) const EMERGED_HALF_EVERY_DAYS: i32 = 4;
/// A living tray is counted every so many days. Ours, common practice.
pub(crate) const COUNT_EVERY_DAYS: i32 = 14;
/// A tray that hardens or is ready is counted every so many days. Ours, common practice.
pub(crate) const COUNT_NEAR_EVERY_DAYS: i32 = 7;
/// A tray that lost plants or shows a pest is counted every so many days. Ours: damping-off takes a tray in a week.
pub(crate) const COUNT_SICK_EVERY_DAYS: i32 = 2;
/// A loss or a pest makes a tray sick for so many days. Ours.
pub(crate) const SICK_FOR_DAYS: i32 = 7;
/// Losses of at least this share of what stood in those days make a tray sick. Ours: one cutworm does not.
pub(crate) const SICK_LOSS_SHARE: f64 = 0.05;
/// Seed of a species without figures is waited for so many days. Ours.
pub(crate) const UNKNOWN_LAST_DAY_DAYS: i32 = 180;
/// Source of the intervals of counting.
pub(crate) const COUNT_SOURCE: RuleSource = RuleSource::Counting;

/// Nothing new for so many days, at least, and the waiting ends. Common practice.
pub(crate) const NOTHING_NEW_DAYS: i32 = 7;
/// Or for this share of the days to half emergence. Common practice.
pub(crate) const NOTHING_NEW_SHARE: f64 = 0.25;
/// The round asks about it for so many days after the last day. Ours.
pub(crate) const STOP_WAITING_ASKED_DAYS: i32 = 30;
/// A sowing is poor below this share of what was expected. Common practice.
pub(crate) const POOR_EMERGENCE_SHARE: f64 = 0.3;
/// Source of the end of waiting.
pub(crate) const STOP_WAITING_SOURCE: RuleSource = RuleSource::StopWaiting;

/// Whether to sow again is asked for so many days after the last day. Ours.
pub(crate) const SOW_AGAIN_ASKED_DAYS: i32 = 30;
/// Source of sowing again.
pub(crate) const SOW_AGAIN_SOURCE: RuleSource = RuleSource::SowAgain;

/// Share of emergence after which "most" are up. Ours.
pub(crate) const MOST_EMERGED_SHARE: f64 = 0.5;
/// Share of seedlings lost to bent roots when pricked out too late. Ours: usual culls of 10-25 %.
pub(crate) const LATE_PRICKING_LOSS: f64 = 0.25;
/// Source of pricking out.
pub(crate) const PRICK_OUT_SOURCE: RuleSource = RuleSource::PrickOut;

/// Share of plants lost when they stay too long in a container. Ours.
pub(crate) const OVERDUE_LOSS: f64 = 0.5;
/// Days within which that happens. Ours.
pub(crate) const OVERDUE_WITHIN_DAYS: i32 = 21;
/// That a container ends before the rains is told so many days before: six weeks to get bags and soil, or to find another field. Ours.
pub(crate) const BAG_ENDS_AHEAD_DAYS: i32 = 42;
/// Source of potting on.
pub(crate) const POT_ON_SOURCE: RuleSource = RuleSource::PotOn;
/// Above this height (cm) over collar (mm) plants are set apart. Common practice; Jaenicke 1999 wants under 6.
pub(crate) const LANKY_ABOVE: f64 = 8.0;
/// Above this they are culled. Common practice.
pub(crate) const CULL_LANKY_ABOVE: f64 = 10.0;
/// Share of lanky plants lost after planting out. Ours.
pub(crate) const LANKY_LOSS: f64 = 0.25;
/// Source of spacing out and culling.
pub(crate) const GRADING_SOURCE: RuleSource = RuleSource::Grading;

/// A sample is measured from so many days before the species' least days. Ours.
pub(crate) const MEASURE_BEFORE_DAYS: i32 = 30;
/// A sample is old after so many days. Common practice: 30 heights and collars monthly near delivery.
pub(crate) const SAMPLE_OLD_DAYS: i32 = 28;
/// Plants in a sample. Common practice.
pub(crate) const SAMPLE_PLANTS: u32 = 30;
/// Source of measuring.
pub(crate) const MEASURE_SOURCE: RuleSource = RuleSource::Measuring;
/// A plug is lifted from so many days before the least days. Ours.
pub(crate) const PLUG_BEFORE_LEAST_DAYS: i32 = 14;
/// And from so many days before the container's holding time ends. Ours.
pub(crate) const PLUG_BEFORE_LIMIT_DAYS: i32 = 14;
/// None lifted for so many days and it is due. Ours, common practice: the same 21 days for which a plug speaks.
pub(crate) const PLUG_EVERY_DAYS: i32 = crate::reckon::tray::time::PLUG_SAYS_FOR_DAYS;
/// Source of the plug.
pub(crate) const PLUG_SOURCE: RuleSource = RuleSource::LiftPlug;
/// Share of plants that a missed look at size or roots costs. Ours.
pub(crate) const UNSEEN_LOSS: f64 = 0.05;

/// A step settles so many days before the next. Common practice: 7-10.
pub(crate) const STEP_EVERY_DAYS: i32 = crate::reckon::tray::hardening::LAST_STEP_DAYS;
/// A tray put back under shade rests so many days before it begins again. Ours, common practice: 2-3 weeks.
pub(crate) const PUT_BACK_RESTS_DAYS: i32 = 14;
/// Share of plants lost when they go out unhardened or miss their rains. Ours; 30-50 % reported without shade.
pub(crate) const UNHARDENED_LOSS: f64 = 0.3;
/// Days within which a missed step is felt: one step. Ours.
pub(crate) const STEP_WITHIN_DAYS: i32 = 14;
/// For rains to come a step is due so many days before its last day. Ours.
pub(crate) const BEFORE_RAINS_DAYS: i32 = 28;
/// Source of the steps.
pub(crate) const STEP_SOURCE: RuleSource = RuleSource::Steps;

/// A treatment that is over is shown for so many days. Ours.
pub(crate) const TREATMENT_SHOWN_DAYS: i32 = 2;
/// In so many days after a waiting time has ended, plants are handled with gloves, and looked at before they go out. Ours: a label's time
/// is for those who walk in, and what dried on leaves comes off on wet hands.
pub(crate) const HANDLED_WITH_CARE_DAYS: i32 = 7;
/// Source of the waiting time that is asked for.
pub(crate) const LABEL_SOURCE: RuleSource = RuleSource::WaitingTime;
/// Source of the end of a treatment.
pub(crate) const TREATMENT_SOURCE: RuleSource = RuleSource::TreatmentOver;

/// A lot is tested after so many days kept without a test. Ours.
pub(crate) const TEST_AFTER_DAYS: i32 = crate::reckon::lots::TEST_AFTER_DAYS;
/// Source of tests.
pub(crate) const TEST_SOURCE: RuleSource = RuleSource::SeedTest;

/// Clearing and holes are due for trays that are ready within so many days: 6 weeks. Common practice.
pub(crate) const GROUND_AHEAD_DAYS: i32 = 42;
/// Weeding and mulch within so many days. Common practice: 1-2 weeks ahead.
pub(crate) const WEED_AHEAD_DAYS: i32 = 14;
/// Source of ground work.
pub(crate) const GROUND_SOURCE: RuleSource = RuleSource::GroundAhead;
/// Rings are weeded from so many days after planting: 1 month. Common practice.
pub(crate) const RINGS_FROM_DAYS: i32 = 30;
/// To so many days: 6 months. Common practice.
pub(crate) const RINGS_UNTIL_DAYS: i32 = 183;
/// Every so many days: 4 weeks. Common practice.
pub(crate) const RINGS_EVERY_DAYS: i32 = 28;
/// Share of young plants that grass takes in a round of weeding missed. Ours: the first cause of death in old pasture.
pub(crate) const GRASS_LOSS: f64 = 0.1;
/// Source of ring weeding.
pub(crate) const RINGS_SOURCE: RuleSource = RuleSource::Rings;
/// Fences are asked about while plants are younger than this, days: 24 months. Common practice.
pub(crate) const FENCE_UNTIL_DAYS: i32 = 730;

/// Share of young plants that a week without water costs once their ground is dry. Ours.
pub(crate) const DRY_LOSS: f64 = 0.2;
/// That week.
pub(crate) const DRY_WITHIN_DAYS: i32 = 7;
/// Source of watering young plants.
pub(crate) const YOUNG_WATER_SOURCE: RuleSource = RuleSource::YoungWater;

/// Nurse plants are counted every so many days. Ours.
pub(crate) const NURSES_EVERY_DAYS: i32 = 60;
/// Share of what stands or will stand under them that an unseen gap costs. Ours.
pub(crate) const NURSE_GAP_LOSS: f64 = 0.05;
/// Chance that a cut for light lets plants go out in these rains. Ours: no more than a quarter of the shade goes in a month.
pub(crate) const CUT_OPENS: f64 = 0.1;
/// Bunches are cut within so many days before and after the day that is reckoned. Ours.
pub(crate) const BUNCH_AHEAD_DAYS: i32 = 14;
/// Tubers are lifted in the last days of their time, where nobody did before: so many. Ours.
pub(crate) const TUBERS_AHEAD_DAYS: i32 = 60;
/// The next nurse plants are asked for so many days before the day by which they are to be set. Ours.
pub(crate) const SET_AHEAD_DAYS: i32 = 30;
/// Share of the plants beneath that branches of dead nurse plants break. Ours.
pub(crate) const FALLING_LOSS: f64 = 0.02;
/// Source of nurse counts.
pub(crate) const NURSES_SOURCE: RuleSource = RuleSource::Nurses;
/// Light and soil are looked at where a tray is ready within so many days: 3 months. Common practice.
pub(crate) const LOOK_AHEAD_DAYS: i32 = 90;
/// Chance that a look at light or soil opens the bed. Ours.
pub(crate) const LOOK_OPENS: f64 = 0.5;
/// Source of light readings ahead.
pub(crate) const LIGHT_SOURCE: RuleSource = RuleSource::LightAhead;
/// Source of soil checks ahead.
pub(crate) const SOIL_SOURCE: RuleSource = RuleSource::SoilAhead;

/// Months after planting at which survivors are counted. Common practice.
pub(crate) const SURVIVAL_MONTHS: [u32; 4] = [1, 3, 6, 12];
/// Days in a month, on average.
pub(crate) const DAYS_PER_MONTH: f64 = 30.44;
/// A survival count falls due at this share of its months. Ours.
pub(crate) const SURVIVAL_FROM_SHARE: f64 = 0.9;
/// A count made from this share of its months on is that count. Ours.
pub(crate) const SURVIVAL_COUNTS_FROM_SHARE: f64 = 0.75;
/// And is no longer that count after this share. Ours.
pub(crate) const SURVIVAL_UNTIL_SHARE: f64 = 1.5;
/// Share of dead that can be refilled in time where they are counted, year 1. Banin et al. 2023: 18 % dead in year 1.
pub(crate) const REFILL_SHARE: f64 = 0.18;
/// Source of survival counts.
pub(crate) const SURVIVAL_SOURCE: RuleSource = RuleSource::Survival;

/// Dead seed is asked to be thrown out for so many days. Ours.
pub(crate) const DEAD_LOT_ASKED_DAYS: i32 = 60;
/// The last day of bare roots is told so many days before. Ours.
pub(crate) const LAST_DAY_NOTICE_DAYS: i32 = 7;
/// Source of going out.
pub(crate) const GO_OUT_SOURCE: RuleSource = RuleSource::GoingOut;
/// Source of last days.
pub(crate) const LAST_DAY_SOURCE: RuleSource = RuleSource::LastDayWritten;
/// Source of the gauge.
pub(crate) const GAUGE_SOURCE: RuleSource = RuleSource::Gauge;

/// Share of seedlings that damping-off, ants or rats can take in a week unseen while they come up. Ours.
pub(crate) const EMERGING_LOSS: f64 = 0.10;
/// The same in a sick tray. Ours.
pub(crate) const SICK_LOSS: f64 = 0.5;
/// Days within which that happens. Ours.
pub(crate) const SICK_WITHIN_DAYS: i32 = 7;
/// Share of older plants lost unseen in four weeks. Ours: about 1 % a week.
pub(crate) const UNCOUNTED_LOSS: f64 = 0.04;
/// Those four weeks.
pub(crate) const UNCOUNTED_WITHIN_DAYS: i32 = 28;

/// Minutes of the work itself, for one person. Ours, from common practice; no publication.
pub mod work {
    /// Carry and plant out one plant into a hole that is dug: 150-200 a day.
    pub(crate) const PLANT_OUT: f64 = 3.0;
    /// Prick out one seedling: 800-1,000 a day.
    pub(crate) const PRICK_OUT: f64 = 0.5;
    /// Fill a larger bag and pot one plant on: some 400 a day.
    pub(crate) const POT_ON: f64 = 1.2;
    /// Take one plant in hand: set it apart or throw it out.
    pub(crate) const SORT: f64 = 0.1;
    /// Heel in one plant with bare roots.
    pub(crate) const HEEL_IN: f64 = 0.5;
    /// Sow one seed into a filled bag.
    pub(crate) const SOW: f64 = 0.1;
    /// Clear a square metre.
    pub(crate) const CLEAR_M2: f64 = 1.0;
    /// Dig one hole: some 40 a day.
    pub(crate) const HOLE: f64 = 12.0;
    /// Weed one ring of 1.5 m.
    pub(crate) const RING: f64 = 3.0;
    /// Carry and lay the mulch of one plant.
    pub(crate) const MULCH: f64 = 3.0;
    /// Carry water to one young plant and pour it slowly.
    pub(crate) const WATER: f64 = 2.0;
    /// Cut one stem with its bunch and carry both out.
    pub(crate) const BUNCH: f64 = 6.0;
    /// Lift one cassava.
    pub(crate) const LIFT: f64 = 4.0;
    /// Chop the leaves of one nurse plant.
    pub(crate) const CHOP: f64 = 3.0;
    /// Set one nurse plant.
    pub(crate) const SET: f64 = 4.0;
    /// Fell one nurse plant and chop it up.
    pub(crate) const FELL: f64 = 8.0;
    /// A metre of fence.
    pub(crate) const FENCE_M: f64 = 6.0;
    /// Source of all of these.
    pub(crate) const SOURCE: &str = "ours, from common practice: one person with hand tools";
}

/// Minutes on the walk, ours. A task that is work of the day takes only the minutes of looking.
pub mod minutes {
    /// Read the gauge.
    pub(crate) const GAUGE: f64 = 1.0;
    /// Stop at a tray and write it down.
    pub(crate) const AT_TRAY: f64 = 0.5;
    /// Seedlings counted in a minute.
    pub(crate) const COUNTED_IN_A_MINUTE: f64 = 100.0;
    /// A look at what is left over of plants that were just sent out, or at the bed to which they go.
    pub(crate) const LEFT_OVER: f64 = 0.2;
    /// Look at a tray and decide.
    pub(crate) const LOOK: f64 = 1.0;
    /// A step of shade or water.
    pub(crate) const STEP: f64 = 2.0;
    /// 30 heights and collars.
    pub(crate) const MEASURE: f64 = 9.0;
    /// Lift a plug.
    pub(crate) const PLUG: f64 = 1.0;
    /// Mark what goes out.
    pub(crate) const GO_OUT: f64 = 2.0;
    /// Lay out a test.
    pub(crate) const TEST: f64 = 8.0;
    /// Look at a lot.
    pub const SEED: f64 = 2.0;
    /// Walk to a bed and look.
    pub(crate) const BED: f64 = 2.0;
    /// Ten pairs of light readings.
    pub(crate) const LIGHT: f64 = 6.0;
    /// Look at the shade cloth of a place, or read the light there once.
    pub(crate) const LIGHT_OF_PLACE: f64 = 2.0;
    /// The rod at five places.
    pub(crate) const SOIL: f64 = 5.0;
    /// Plants in a bed counted in a minute.
    pub(crate) const BED_COUNTED_IN_A_MINUTE: f64 = 20.0;
}
