//! Criteria, doubts and numbers as objects for programs.

use serde_json::{Value, json};

use crate::base::TrayCode;
use crate::reckon::picture::quantity::LightSpan;
use crate::reckon::picture::{Criterion, Doubt, DoubtKind, Measure, Picture, SampleUnit};
use crate::wording::Wording;
use crate::wording::verdict::About;

/// A number for programs: whole where it is whole, else to six decimals; null where it is no number.
pub(super) fn number(value: f64) -> Value {
    if !value.is_finite() {
        return Value::Null;
    }
    let rounded = (value * 1e6).round() / 1e6;
    if rounded.fract() == 0.0 && rounded.abs() < 9e15 { Value::from(rounded as i64) } else { Value::from(rounded) }
}

/// The number a measure is about, the ends of its band or range, and the unit.
#[derive(Clone, Copy, Default)]
struct Figures {
    value: Option<f64>,
    low: Option<f64>,
    high: Option<f64>,
    unit: Option<&'static str>,
}

fn one(value: f64, unit: &'static str) -> Figures {
    Figures { value: Some(value), low: None, high: None, unit: Some(unit) }
}

fn band(low: f64, high: f64, unit: &'static str) -> Figures {
    Figures { value: None, low: Some(low), high: Some(high), unit: Some(unit) }
}

/// What a sample's mean is in.
fn sample_unit(unit: SampleUnit) -> &'static str {
    match unit {
        SampleUnit::Cm => "cm",
        SampleUnit::Mm => "mm",
        SampleUnit::Leaves => "leaves",
    }
}

fn figures(measure: &Measure) -> Figures {
    match measure {
        Measure::Days(days) | Measure::DaysAtLeast(days) | Measure::DaysAtMost(days) => one(f64::from(*days), "days"),
        Measure::DaySpan { least, usual, most } => Figures {
            value: Some(f64::from(*usual)),
            low: Some(f64::from(*least)),
            high: Some(f64::from(*most)),
            unit: Some("days"),
        },
        Measure::WorkWithin { days, .. } | Measure::FreshStep { days, .. } | Measure::TubersLifted(days) => {
            one(f64::from(*days), "days")
        }
        Measure::HeightBand { least, most } => band(*least, *most, "cm"),
        Measure::CollarRule { floor_mm } => one(*floor_mm, "mm"),
        Measure::Sample { mean, unit, .. } => one(*mean, sample_unit(*unit)),
        Measure::LeavesAtLeast { count, .. } => one(*count, "leaves"),
        Measure::Light(share) | Measure::Pest { share: Some(share), .. } => one(*share, "share"),
        Measure::LightReckoned(LightSpan { share, low, high }) => {
            Figures { value: Some(*share), low: Some(*low), high: Some(*high), unit: Some("share") }
        }
        Measure::LightBand { least, most } => band(*least, *most, "share"),
        Measure::RatioAtMost(ratio) => one(*ratio, "times"),
        Measure::LightStep { from, to } if *from > 0.0 => one(to / from, "times"),
        Measure::Plants(range) => {
            Figures { value: Some(range.likely), low: Some(range.low), high: Some(range.high), unit: Some("plants") }
        }
        Measure::PlantsAtLeast(plants) => one(f64::from(*plants), "plants"),
        Measure::Positions(positions) => one(f64::from(*positions), "positions"),
        Measure::ResistanceAtMost { mpa, .. } | Measure::Resistance { mpa, .. } | Measure::RodStopped { mpa, .. } => {
            one(*mpa, "MPa")
        }
        Measure::Rain { mm, .. }
        | Measure::RainAtLeast { mm, .. }
        | Measure::WaterLeft { mm, .. }
        | Measure::WaterAtLeast(mm) => one(*mm, "mm"),
        Measure::LightStep { .. }
        | Measure::Roots(_)
        | Measure::TuberShape(_)
        | Measure::Until(_)
        | Measure::On(_)
        | Measure::Work(_)
        | Measure::Said(_)
        | Measure::Pest { share: None, .. }
        | Measure::Yes
        | Measure::No => Figures::default(),
    }
}

/// A measure in words and numbers.
pub(super) fn measure_json(measure: &Measure, wording: &Wording) -> Value {
    let figures = figures(measure);
    json!({
        "text": wording.measure(measure),
        "value": figures.value.map(number),
        "low": figures.low.map(number),
        "high": figures.high.map(number),
        "unit": figures.unit,
    })
}

/// A criterion. `met` is null, and `known` left out, exactly where the basis is unknown.
pub(super) fn criterion(criterion: &Criterion, about: About, wording: &Wording) -> Value {
    let numbers = |measure: Option<&Measure>| measure.map_or_else(Figures::default, figures);
    let needed_measure = criterion.needed();
    let (needed, mut known) = (numbers(needed_measure.as_ref()), numbers(criterion.known().as_ref()));
    let unit = needed.unit.or(known.unit);
    if known.unit != unit {
        known = Figures::default();
    }
    without_nulls(json!({
        "rule": criterion.rule(),
        "needed": needed_measure.map(|needed| wording.measure(&needed)),
        "needed_value": needed.value.map(number),
        "needed_low": needed.low.map(number),
        "needed_high": needed.high.map(number),
        "known": wording.known_words(criterion),
        "known_value": known.value.map(number),
        "known_low": known.low.map(number),
        "known_high": known.high.map(number),
        "unit": unit,
        "basis": criterion.basis(),
        "met": criterion.met(),
        "blocks": criterion.blocks,
        "warns": criterion.warns,
        "expected": criterion.expected,
        "reason": wording.reason(criterion, about),
        "source": wording.source_words(&criterion.source),
        "entries": criterion.entries,
    }))
}

/// A criterion without the keys that say nothing; `met` stays, for null is one of its answers.
fn without_nulls(mut criterion: Value) -> Value {
    if let Some(criterion) = criterion.as_object_mut() {
        criterion.retain(|key, value| key == "met" || !value.is_null());
    }
    criterion
}

/// Criteria in their order.
pub(super) fn criteria<'a>(
    all: impl IntoIterator<Item = &'a Criterion>,
    about: About,
    wording: &Wording,
) -> Vec<Value> {
    all.into_iter().map(|one| criterion(one, about, wording)).collect()
}

/// The stable word for a kind of doubt.
fn doubt_word(kind: &DoubtKind) -> &'static str {
    match kind {
        DoubtKind::MoreOutThanStood { .. } => "more_out_than_stood",
        DoubtKind::MoreSeedThanHeld { .. } => "more_seed_than_held",
        DoubtKind::MoreDeadThanLived { .. } => "more_dead_than_lived",
        DoubtKind::MoreCutThanStood { .. } => "more_cut_than_stood",
        DoubtKind::MoreAliveThanPlanted { .. } => "more_alive_than_planted",
        DoubtKind::MoreThanSeed { .. } => "more_than_seed",
        DoubtKind::AliveAgain { .. } => "alive_again",
        DoubtKind::RiseWithoutSeed { .. } => "rise_without_seed",
        DoubtKind::UnknownTray(_) => "unknown_tray",
        DoubtKind::UnknownLot(_) => "unknown_lot",
        DoubtKind::UnknownBed(_) => "unknown_bed",
        DoubtKind::UnknownSpecies(_) => "unknown_species",
        DoubtKind::TwiceMade(_) => "twice_made",
        DoubtKind::TwiceReceived(_) => "twice_received",
        DoubtKind::OrderMatters(_) => "order_matters",
        DoubtKind::NotInPlan { .. } => "not_in_plan",
        DoubtKind::OffTheGrid { .. } => "off_the_grid",
        DoubtKind::MoreOutThanPositions { .. } => "more_out_than_positions",
        DoubtKind::NoSuchPosition { .. } => "no_such_position",
        DoubtKind::SampleLarger { .. } => "sample_larger",
        DoubtKind::WorkedOnMore { .. } => "worked_on_more",
        DoubtKind::TwoSpecies { .. } => "two_species",
        DoubtKind::CannotBe(_) => "cannot_be",
        DoubtKind::BadProfile { .. } => "bad_profile",
        DoubtKind::PartCountApart { .. } => "part_count_apart",
        DoubtKind::LookAtEmpty(_) => "look_at_empty",
    }
}

/// A ready tray that no bed plans, as programs read it among the doubts: a gap of the plans, and no entry is wrong.
pub(super) fn unplanned(tray: &TrayCode, picture: &Picture, wording: &Wording) -> Value {
    json!({"kind": "no_bed_plans", "text": wording.unplanned(tray, picture), "day": picture.day, "entries": []})
}

/// A doubt.
pub(super) fn doubt(doubt: &Doubt, picture: &Picture, wording: &Wording) -> Value {
    json!({
        "kind": doubt_word(&doubt.kind),
        "text": wording.doubt(doubt, &picture.site.species),
        "day": doubt.day,
        "entries": doubt.entries,
    })
}
