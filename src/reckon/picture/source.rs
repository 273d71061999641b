//! Where a rule comes from: a closed list, so that every language can say it. The sentences stand in `wording`.

use crate::words;

words! {
    /// The source of a rule that has no parameters. A publication it names is named in its sentence.
    RuleSource {
        /// Usual in the trade, no single publication.
        CommonPractice: "common_practice";
        /// A load of plants.
        Load: "load";
        /// The ratio of a bed's light to a tray's.
        LightStep: "light_step";
        /// The waiting time of a treatment; the label and local rules lead.
        WaitingTime: "waiting_time";
        /// The time before planting that the label of what kills plants asks for.
        PlantBack: "plant_back";
        /// Fresh dung and urea.
        FreshDung: "fresh_dung";
        /// The size of any seedling, where that of its species is not known.
        AnySize: "any_size";
        /// Wildlings.
        Wildlings: "wildlings";
        /// Ground that stands full of water.
        Drowned: "drowned";
        /// A waiting time of something on the same bench.
        WaitingBeside: "waiting_beside";
        /// Pests that would be carried into the field.
        Pest: "pest";
        /// New leaves harden in 2 to 3 weeks.
        Flush: "flush";
        /// The last day that was written when plants came.
        LastDayWritten: "last_day_written";
        /// The last day of bare roots, taken where nobody wrote it.
        LastDayTaken: "last_day_taken";
        /// Stumps and stakes of which nobody wrote how long they keep.
        StumpsKeep: "stumps_keep";
        /// Length of hardening.
        Hardening: "hardening";
        /// Holding time of a container.
        Holding: "holding";
        /// What a lifted plug tells.
        Plug: "plug";
        /// When nurse plants go out.
        NurseDays: "nurse_days";
        /// How tall grafted plants may stand.
        GraftedHeight: "grafted_height";
        /// When a graft has healed.
        GraftHeals: "graft_heals";
        /// Resistance at which roots stop.
        RootLimit: "root_limit";
        /// A rod under a known push.
        Rod: "rod";
        /// The shape of lifted tubers.
        TuberShape: "tuber_shape";
        /// Ground from which tubers were lifted.
        TubersLifted: "tubers_lifted";
        /// The end of the rains.
        SafeRains: "safe_rains";
        /// A person of this nursery wrote it.
        WrittenHere: "written_here";
        /// Rain in three days.
        Rain: "rain";
        /// What is left of the water that young roots reach.
        WaterLeft: "water_left";
        /// The usual rains, where no gauge was read.
        UsualRains: "usual_rains";
        /// A model of light that is not there yet.
        LightToCome: "light_to_come";
        /// The grid of a bed.
        Positions: "positions";
        /// A profile that has no figure for it.
        NoFigure: "no_figure";
        /// How often a tray is counted.
        Counting: "counting";
        /// The end of waiting for seed.
        StopWaiting: "stop_waiting";
        /// When a sowing is made again.
        SowAgain: "sow_again";
        /// When seedlings are pricked out.
        PrickOut: "prick_out";
        /// When plants are potted on.
        PotOn: "pot_on";
        /// When plants are spaced out or culled.
        Grading: "grading";
        /// When a sample is measured.
        Measuring: "measuring";
        /// When a plug is lifted.
        LiftPlug: "lift_plug";
        /// Steps of hardening.
        Steps: "steps";
        /// The end of a treatment.
        TreatmentOver: "treatment_over";
        /// When seed is tested.
        SeedTest: "seed_test";
        /// Life of seed as the profile gives it.
        SeedLife: "seed_life";
        /// The same longer or shorter by how it is kept.
        SeedLifeKept: "seed_life_kept";
        /// When ground is made ready.
        GroundAhead: "ground_ahead";
        /// When rings are weeded.
        Rings: "rings";
        /// When nurse plants are counted.
        Nurses: "nurses";
        /// When nurse plants are cut, lifted, set and taken out.
        NurseWork: "nurse_work";
        /// When light is read ahead of planting.
        LightAhead: "light_ahead";
        /// When soil is looked at ahead of planting.
        SoilAhead: "soil_ahead";
        /// When young plants are watered or looked at.
        YoungWater: "young_water";
        /// When survivors are counted.
        Survival: "survival";
        /// When trays go out.
        GoingOut: "going_out";
        /// The gauge.
        Gauge: "gauge";
    }
}

/// Where a rule comes from.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Source {
    /// A rule of this program.
    Rule(RuleSource),
    /// A figure of a species: the source its profile names.
    Figure(String),
    /// The rule for the root collar, with the source of the species' floor.
    Collar {
        /// Source of the floor.
        floor: String,
    },
    /// Light readings against a species' band, with the source of the band.
    LightReadings {
        /// Source of the band.
        band: String,
    },
    /// Light as it is reckoned, against a species' band, with the source of the band.
    LightReckoned {
        /// Source of the band.
        band: String,
    },
    /// Ground work that lasts so many days.
    GroundWork {
        /// Days.
        lasts_days: i32,
    },
}

impl Source {
    /// The source of a figure of a profile; common practice where there is none.
    pub fn figure(source: Option<&str>) -> Source {
        match source.map(str::trim).filter(|source| !source.is_empty()) {
            Some(source) => Source::Figure(source.to_string()),
            None => Source::default(),
        }
    }
}

impl Default for Source {
    fn default() -> Source {
        Source::Rule(RuleSource::CommonPractice)
    }
}

impl From<RuleSource> for Source {
    fn from(source: RuleSource) -> Source {
        Source::Rule(source)
    }
}

/// In tests a text is the source of a figure; outside of them every source is one of the list.
#[cfg(test)]
impl From<&str> for Source {
    fn from(source: &str) -> Source {
        Source::figure(Some(source))
    }
}
