//! How a tray grows, for programs.

use serde_json::{Value, json};

use crate::reckon::growth::{Coming, Grows, LankyComes, NoCurve, TrayGrowth};
use crate::science::growth::GrowthModel;
use crate::wording::Wording;
use crate::wording::page::GrowthOf;

/// The object `growth` of `why tray --json`.
pub(crate) fn growth_json(growth: &TrayGrowth, wording: &Wording) -> Value {
    json!({
        "samples": growth.samples,
        "height": growth.height.as_ref().map(|grows| grows_json(GrowthOf::Height, grows, growth, wording)),
        "collar": growth.collar.as_ref().map(|grows| grows_json(GrowthOf::Collar, grows, growth, wording)),
        "lanky": growth.lanky.as_ref().map(|lanky| {
            let (comes, on) = match lanky.comes {
                LankyComes::Now => ("now", None),
                LankyComes::On(on) => ("on", Some(on)),
                LankyComes::NotSeen => ("not_seen", None),
                LankyComes::OneSample => ("one_sample", None),
            };
            json!({
                "sturdiness": lanky.sturdiness, "measured_on": lanky.measured_on, "limit": lanky.limit,
                "comes": comes, "on": on, "text": wording.growth_lanky(lanky), "entries": lanky.entries,
            })
        }),
        "sample": growth.sample.as_ref().map(|known| json!({
            "on": known.day, "plants": known.plants, "mean_cm": known.mean_cm, "within_cm": known.within_cm,
            "more": known.more, "undecided": known.undecided, "text": wording.growth_sample_known(known),
            "entries": [known.entry],
        })),
        "species_least_day": growth.by_species.map(|(least, _)| least),
        "species_usual_day": growth.by_species.and_then(|(_, usual)| usual),
    })
}

fn grows_json(of: GrowthOf, grows: &Grows, growth: &TrayGrowth, wording: &Wording) -> Value {
    let (state, on, reach, unknown) = match grows.coming {
        Coming::There { measured_on } => ("there", Some(measured_on), None, None),
        Coming::Expected(reach) => ("expected", Some(reach.day), Some(reach), None),
        Coming::Unknown(why) => ("unknown", None, None, Some(why)),
    };
    let why = unknown.map(|why| match why {
        NoCurve::NeverMeasured => "never_measured",
        NoCurve::FewSamples { .. } => "few_samples",
        NoCurve::NoAge => "no_age",
        NoCurve::NoEnd => "no_end",
        NoCurve::TooWide => "too_wide",
        NoCurve::EndsBelow { .. } => "ends_below",
    });
    json!({
        "target": grows.target,
        "mean": grows.mean,
        "state": state,
        "on": on,
        "low": reach.and_then(|reach| reach.between).map(|(low, _)| low),
        "high": reach.and_then(|reach| reach.between).map(|(_, high)| high),
        "curve": reach.map(|reach| json!({
            "model": match reach.curve.model { GrowthModel::Logistic => "logistic", GrowthModel::Gompertz => "gompertz" },
            "a": reach.curve.a, "k": reach.curve.k, "t0": reach.curve.t0, "plants": reach.plants,
        })),
        "why": why,
        "text": wording.growth_coming(of, grows, growth),
    })
}
