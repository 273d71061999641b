//! The options of `calc`. Percentages are typed as such; JSON takes shares. No option at all: JSON is read.

use clap::{Args, Subcommand};

use super::field::args::{Et0, Leaves, Light, Radiation, Rains, Sun, Water};

/// `calc`
#[derive(Args, Debug)]
pub(crate) struct Calc {
    /// The formula.
    #[command(subcommand)]
    pub(crate) topic: Topic,
}

/// The formulas.
#[derive(Subcommand, Debug)]
pub(crate) enum Topic {
    /// Figures of germination counts.
    Germination(Germination),
    /// A curve of emergence.
    Emergence(Emergence),
    /// How many seeds to sow.
    Sowing(Sowing),
    /// How sure a share is.
    Interval(Interval),
    /// Whether replicates agree.
    Replicates(Replicates),
    /// What storage leaves of a lot.
    Viability(Viability),
    /// Sturdiness and Dickson's index.
    Quality(Quality),
    /// How many to look at.
    #[command(name = "sample_size", alias = "sample-size")]
    SampleSize(SampleSize),
    /// When plants are tall enough.
    Growth(Growth),
    /// Which plants go where and when.
    Matching(Matching),
    /// Where the sun stands.
    Sun(Sun),
    /// What the sun sends in a day.
    Radiation(Radiation),
    /// What grass gives off in a day.
    Et0(Et0),
    /// Water in reach of roots.
    Water(Water),
    /// When the rains began.
    Rains(Rains),
    /// Leaves of a banana plant.
    Leaves(Leaves),
    /// Light under crowns.
    Light(Light),
}

/// `calc germination`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Germination {
    /// Days looked at since sowing.
    #[arg(long, value_delimiter = ',', value_name = "DAYS")]
    pub(crate) times: Option<Vec<f64>>,
    /// Newly germinated at each look.
    #[arg(long, value_delimiter = ',', value_name = "COUNTS")]
    pub(crate) counts: Option<Vec<f64>>,
    /// Seeds sown.
    #[arg(long, value_name = "N")]
    pub(crate) seeds: Option<f64>,
}

/// `calc emergence`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Emergence {
    /// Days looked at since sowing.
    #[arg(long, value_delimiter = ',', value_name = "DAYS")]
    pub(crate) edges: Option<Vec<f64>>,
    /// Newly emerged at each look.
    #[arg(long, value_delimiter = ',', value_name = "COUNTS")]
    pub(crate) counts: Option<Vec<f64>>,
    /// Seeds sown.
    #[arg(long, value_name = "N")]
    pub(crate) seeds: Option<f64>,
    /// The day asked about.
    #[arg(long, value_name = "DAY")]
    pub(crate) last_day: Option<f64>,
}

/// `calc sowing`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Sowing {
    /// Plants wanted.
    #[arg(long, value_name = "N")]
    pub(crate) wanted: Option<f64>,
    /// How sure, %.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) confidence: Option<f64>,
    /// A species, by the handbook alone.
    #[arg(long, value_name = "NAME", conflicts_with_all = ["germination", "sown", "germinated", "prior_a", "prior_b", "survival", "survival_beta"])]
    pub(crate) species: Option<String>,
    /// Germination taken as known, %.
    #[arg(long, value_name = "PERCENT", conflicts_with_all = ["sown", "germinated", "prior_a", "prior_b"])]
    pub(crate) germination: Option<f64>,
    /// Seeds tested.
    #[arg(long, value_name = "N")]
    pub(crate) sown: Option<f64>,
    /// Of them germinated.
    #[arg(long, value_name = "N")]
    pub(crate) germinated: Option<f64>,
    /// Germinated before the test, as believed.
    #[arg(long, value_name = "A")]
    pub(crate) prior_a: Option<f64>,
    /// Not germinated before the test, as believed.
    #[arg(long, value_name = "B")]
    pub(crate) prior_b: Option<f64>,
    /// Seedlings that become plants, %.
    #[arg(long, value_name = "PERCENT", conflicts_with = "survival_beta")]
    pub(crate) survival: Option<f64>,
    /// The same as a beta distribution.
    #[arg(long, value_delimiter = ',', value_name = "A,B")]
    pub(crate) survival_beta: Option<Vec<f64>>,
}

/// `calc interval`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Interval {
    /// How many had it.
    #[arg(long, value_name = "X")]
    pub(crate) x: Option<f64>,
    /// Of how many.
    #[arg(long, value_name = "N")]
    pub(crate) n: Option<f64>,
    /// How sure, %.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) level: Option<f64>,
}

/// `calc replicates`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Replicates {
    /// Germinated in each.
    #[arg(long, value_delimiter = ',', value_name = "COUNTS")]
    pub(crate) replicates: Option<Vec<f64>>,
    /// Seeds in each.
    #[arg(long, value_name = "N")]
    pub(crate) n_each: Option<f64>,
}

/// `calc viability`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Viability {
    /// A species with published constants.
    #[arg(long, value_name = "NAME", conflicts_with_all = ["ke", "cw", "ch", "cq"])]
    pub(crate) species: Option<String>,
    /// Constant of the species.
    #[arg(long, value_name = "KE")]
    pub(crate) ke: Option<f64>,
    /// Constant of moisture.
    #[arg(long, value_name = "CW")]
    pub(crate) cw: Option<f64>,
    /// Constant of temperature.
    #[arg(long, value_name = "CH")]
    pub(crate) ch: Option<f64>,
    /// Constant of temperature squared.
    #[arg(long, value_name = "CQ")]
    pub(crate) cq: Option<f64>,
    /// Viable at the beginning, %.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) initial: Option<f64>,
    /// Seeds tested at the beginning.
    #[arg(long, value_name = "N")]
    pub(crate) tested: Option<f64>,
    /// Moisture, % of fresh weight.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) moisture: Option<f64>,
    /// Temperature, °C.
    #[arg(long, value_name = "C")]
    pub(crate) temp: Option<f64>,
    /// Days in store.
    #[arg(long, value_name = "DAYS")]
    pub(crate) days: Option<f64>,
    /// Viability asked about, %.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) target: Option<f64>,
}

/// `calc quality`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Quality {
    /// Height, cm.
    #[arg(long, value_name = "CM")]
    pub(crate) height: Option<f64>,
    /// Root collar, mm.
    #[arg(long, value_name = "MM")]
    pub(crate) collar: Option<f64>,
    /// Dry shoot, g.
    #[arg(long, value_name = "G")]
    pub(crate) shoot: Option<f64>,
    /// Dry root, g.
    #[arg(long, value_name = "G")]
    pub(crate) root: Option<f64>,
}

/// `calc sample_size`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct SampleSize {
    /// proportion, mean or detection.
    #[arg(long, value_name = "KIND")]
    pub(crate) kind: Option<String>,
    /// How sure, %.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) confidence: Option<f64>,
    /// The share expected, %.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) p: Option<f64>,
    /// How far plants differ, % of the mean.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) cv: Option<f64>,
    /// Share that has what is looked for, %.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) prevalence: Option<f64>,
    /// How far off is allowed, %.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) half_width: Option<f64>,
    /// Plants there are.
    #[arg(long, value_name = "N")]
    pub(crate) population: Option<f64>,
}

/// `calc growth`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Growth {
    /// Days of the measurements.
    #[arg(long, value_delimiter = ',', value_name = "DAYS")]
    pub(crate) t: Option<Vec<f64>>,
    /// Heights.
    #[arg(long, value_delimiter = ',', value_name = "HEIGHTS")]
    pub(crate) y: Option<Vec<f64>>,
    /// Heights asked about.
    #[arg(long, value_delimiter = ',', value_name = "HEIGHTS")]
    pub(crate) target: Option<Vec<f64>>,
}

/// `calc matching`
#[derive(Args, Debug, Default)]
pub(crate) struct Matching {}
