//! The options of the formulas of the field.

use clap::Args;

/// `calc sun`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Sun {
    /// Latitude, degrees.
    #[arg(long, value_name = "DEGREES")]
    pub(crate) lat: Option<f64>,
    /// Longitude, degrees.
    #[arg(long, value_name = "DEGREES")]
    pub(crate) lon: Option<f64>,
    /// Above the sea, m.
    #[arg(long, value_name = "M")]
    pub(crate) elev: Option<f64>,
    /// The moment.
    #[arg(long, value_name = "MOMENT")]
    pub(crate) utc: Option<String>,
}

/// `calc radiation`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Radiation {
    /// Latitude, degrees.
    #[arg(long, value_name = "DEGREES")]
    pub(crate) lat: Option<f64>,
    /// Day of the year.
    #[arg(long, value_name = "DAY")]
    pub(crate) doy: Option<f64>,
    /// How steep the ground is, degrees.
    #[arg(long, value_name = "DEGREES")]
    pub(crate) slope: Option<f64>,
    /// Where it falls to, degrees from north.
    #[arg(long, value_name = "DEGREES", requires = "slope")]
    pub(crate) facing: Option<f64>,
}

/// `calc et0`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Et0 {
    /// Latitude, degrees.
    #[arg(long, value_name = "DEGREES")]
    pub(crate) lat: Option<f64>,
    /// Above the sea, m.
    #[arg(long, value_name = "M")]
    pub(crate) elev: Option<f64>,
    /// Day of the year.
    #[arg(long, value_name = "DAY")]
    pub(crate) doy: Option<f64>,
    /// Warmest, °C.
    #[arg(long, value_name = "C")]
    pub(crate) tmax: Option<f64>,
    /// Coldest, °C.
    #[arg(long, value_name = "C")]
    pub(crate) tmin: Option<f64>,
    /// Highest humidity, %.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) rhmax: Option<f64>,
    /// Lowest humidity, %.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) rhmin: Option<f64>,
    /// Vapour pressure, kPa.
    #[arg(long, value_name = "KPA", conflicts_with_all = ["rhmax", "rhmin"])]
    pub(crate) ea: Option<f64>,
    /// Wind at 2 m, m/s.
    #[arg(long, value_name = "M_S")]
    pub(crate) u2: Option<f64>,
    /// Wind at another height, m/s.
    #[arg(long, value_name = "M_S", conflicts_with = "u2", requires = "wind_height")]
    pub(crate) wind: Option<f64>,
    /// That height, m.
    #[arg(long, value_name = "M", requires = "wind")]
    pub(crate) wind_height: Option<f64>,
    /// Sunlight, MJ/m2/day.
    #[arg(long, value_name = "MJ")]
    pub(crate) rs: Option<f64>,
    /// Hours of sunshine.
    #[arg(long, value_name = "HOURS", conflicts_with = "rs")]
    pub(crate) sunshine: Option<f64>,
}

/// `calc water`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Water {
    /// Water the root zone holds, mm.
    #[arg(long, value_name = "MM")]
    pub(crate) taw: Option<f64>,
    /// Field capacity, m3/m3.
    #[arg(long, value_name = "SHARE", conflicts_with = "taw")]
    pub(crate) fc: Option<f64>,
    /// Wilting point, m3/m3.
    #[arg(long, value_name = "SHARE", conflicts_with = "taw")]
    pub(crate) wp: Option<f64>,
    /// Depth of the roots, m.
    #[arg(long, value_name = "M", conflicts_with = "taw")]
    pub(crate) zr: Option<f64>,
    /// Share easily taken.
    #[arg(long, value_name = "SHARE")]
    pub(crate) p: Option<f64>,
    /// Whether it follows demand.
    #[arg(long)]
    pub(crate) p_adjusted: bool,
    /// Which depletion makes the stress of a day.
    #[arg(long, value_name = "MOMENT")]
    pub(crate) ks_from: Option<String>,
    /// Missing at the beginning, mm.
    #[arg(long, value_name = "MM")]
    pub(crate) dr0: Option<f64>,
    /// Rain by day, mm.
    #[arg(long, value_delimiter = ',', value_name = "MM")]
    pub(crate) rain: Option<Vec<f64>>,
    /// Watering by day, mm.
    #[arg(long, value_delimiter = ',', value_name = "MM")]
    pub(crate) irrigation: Option<Vec<f64>>,
    /// Demand of grass by day, mm.
    #[arg(long, value_delimiter = ',', value_name = "MM")]
    pub(crate) et0: Option<Vec<f64>>,
    /// Crop coefficient by day.
    #[arg(long, value_delimiter = ',', value_name = "KC")]
    pub(crate) kc: Option<Vec<f64>>,
}

/// `calc light`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Light {
    /// Latitude, degrees.
    #[arg(long, value_name = "DEGREES")]
    pub(crate) lat: Option<f64>,
    /// Longitude, degrees.
    #[arg(long, value_name = "DEGREES")]
    pub(crate) lon: Option<f64>,
    /// Above the sea, m.
    #[arg(long, value_name = "M")]
    pub(crate) elev: Option<f64>,
    /// The day.
    #[arg(long, value_name = "DAY")]
    pub(crate) date: Option<String>,
    /// Months in a row.
    #[arg(long, value_name = "N")]
    pub(crate) months: Option<f64>,
    /// Share of the light that comes from the sky, %.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) diffuse: Option<f64>,
    /// Rows of nurse plants.
    #[arg(long, value_name = "N")]
    pub(crate) rows: Option<f64>,
    /// Plants in a row.
    #[arg(long, value_name = "N")]
    pub(crate) plants: Option<f64>,
    /// From row to row, m.
    #[arg(long, value_name = "M")]
    pub(crate) row: Option<f64>,
    /// From plant to plant, m.
    #[arg(long, value_name = "M")]
    pub(crate) plant: Option<f64>,
    /// Top of the crowns, m.
    #[arg(long, value_name = "M")]
    pub(crate) top: Option<f64>,
    /// Foot of the crowns, m.
    #[arg(long, value_name = "M")]
    pub(crate) foot: Option<f64>,
    /// Width of the crowns, m.
    #[arg(long, value_name = "M")]
    pub(crate) width: Option<f64>,
    /// Leaf density.
    #[arg(long, value_name = "M2_M3")]
    pub(crate) lad: Option<f64>,
    /// Extinction.
    #[arg(long, value_name = "K")]
    pub(crate) k: Option<f64>,
    /// Where the rows run to, degrees from north.
    #[arg(long, value_name = "DEGREES")]
    pub(crate) heading: Option<f64>,
    /// How steep the ground is, degrees.
    #[arg(long, value_name = "DEGREES", requires = "facing")]
    pub(crate) slope: Option<f64>,
    /// Where it falls to, degrees from north.
    #[arg(long, value_name = "DEGREES", requires = "slope")]
    pub(crate) facing: Option<f64>,
}

/// `calc rains`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Rains {
    /// The first day of the record.
    #[arg(long, value_name = "DAY")]
    pub(crate) first: Option<String>,
    /// Rain by day, mm.
    #[arg(long, value_delimiter = ',', value_name = "MM")]
    pub(crate) rain: Option<Vec<f64>>,
}

/// `calc leaves`
#[derive(Args, Debug, Default)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Leaves {
    /// Height of the stem, m.
    #[arg(long, value_name = "M")]
    pub(crate) height: Option<f64>,
    /// Around the stem, m.
    #[arg(long, value_name = "M")]
    pub(crate) girth: Option<f64>,
    /// Living leaves.
    #[arg(long, value_name = "N")]
    pub(crate) leaves: Option<f64>,
    /// Ground of a plant, m2.
    #[arg(long, value_name = "M2")]
    pub(crate) ground: Option<f64>,
    /// Extinction.
    #[arg(long, value_name = "K")]
    pub(crate) k: Option<f64>,
    /// Width of the crown, m.
    #[arg(long, value_name = "M", requires = "depth")]
    pub(crate) width: Option<f64>,
    /// Depth of the crown, m.
    #[arg(long, value_name = "M", requires = "width")]
    pub(crate) depth: Option<f64>,
}
