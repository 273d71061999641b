//! Reasons as a grower hears them.

use std::collections::BTreeSet;

use super::*;
use crate::base::Range;
use crate::base::word::Word;
use crate::reckon::picture::{Basis, Measure};
use crate::wording::Lang;

fn judged(rule: Rule, needed: Measure, known: Measure, met: bool) -> Criterion {
    Criterion::known(rule, needed, known, Basis::Measured, met, "common practice")
}

#[test]
fn every_rule_says_something_of_its_own_in_every_state() {
    for lang in Lang::ALL {
        let wording = Wording::new(lang);
        for about in [About::Tray, About::Bed, About::Pair] {
            let mut said = BTreeSet::new();
            for (rule, _) in Rule::WORDS {
                let unknown = Criterion::unknown(*rule, None, true, "common practice");
                let bare = |met: bool| Criterion { met: Some(met), basis: Basis::Measured, ..unknown.clone() };
                let fit = |met: bool| Criterion {
                    needed: Some(Measure::Yes),
                    known: Some(if met { Measure::Yes } else { Measure::No }),
                    ..bare(met)
                };
                let with_known: BTreeSet<String> =
                    [fit(true), fit(false)].iter().map(|one| wording.reason(one, about)).collect();
                assert_eq!(with_known.len(), 2, "{rule}: met and unmet are said alike");
                for criterion in [unknown.clone(), bare(true), bare(false)] {
                    let reason = wording.reason(&criterion, about);
                    assert!(reason.chars().count() > 5, "{lang:?} {rule}: '{reason}'");
                    assert!(said.insert(reason.clone()), "{lang:?} {rule}: '{reason}' is said of another");
                }
            }
        }
    }
}

#[test]
fn a_grower_hears_what_is_short_and_what_to_do() {
    let en = Wording::new(Lang::En);
    let step = |from, to| Measure::LightStep { from, to };
    let cases = [
        (
            judged(Rule::DaysSinceSowing, Measure::DaysAtLeast(210), Measure::Days(193), false),
            "193 days old, 17 short of 210",
        ),
        (
            judged(Rule::DaysInContainer, Measure::DaysAtMost(300), Measure::Days(430), false),
            "in its bag 430 days, the bag holds it 300: pot on or cull",
        ),
        (
            judged(Rule::ExposureStep, Measure::RatioAtMost(1.6), step(0.3, 0.6), false),
            "stood in 30 % light, this bed has 60 %: 2.0 times as bright, bring it out in 2 steps first",
        ),
        (
            judged(
                Rule::Height,
                Measure::HeightBand { least: 20.0, most: 40.0 },
                Measure::Sample { pass: 3, of: 30, mean: 14.2 },
                false,
            ),
            "only 3 of 30 are the right height, mean 14.2 cm, at least 20 cm needed: let them grow",
        ),
        (
            judged(Rule::Weeded, Measure::Work(GroundTask::Weeded), Measure::No, false),
            "weeding is not written down: weed the rings, then write it",
        ),
        (
            judged(Rule::Load, Measure::PlantsAtLeast(5), Measure::Plants(Range::new(2.0, 3.0, 4.0)), false),
            "too few can be planted: 2 to 4 plants, likely 3; a load is 5",
        ),
        (
            judged(Rule::Water, Measure::RainAtLeast { mm: 20.0, days: 3 }, Measure::Rain { mm: 4.5, days: 3 }, false),
            "only 4.5 mm of rain in 3 days, 20 needed: wait for rain",
        ),
        (
            judged(Rule::ExposureStep, Measure::RatioAtMost(1.6), step(0.15, 0.9), false),
            "stood in 15 % light, this bed has 90 %: 6.0 times as bright, bring it out in 4 steps first",
        ),
        (Criterion::unknown(Rule::LightNow, None, true, ""), "the light is not known: read the light in this bed"),
        (
            Criterion::unknown(Rule::Hardening, None, true, ""),
            "nobody wrote down what light it stood in: read the light here",
        ),
    ];
    for (criterion, expected) in cases {
        assert_eq!(en.reason(&criterion, About::Pair), expected);
    }
}

#[test]
fn the_same_is_said_in_spanish_as_in_the_field() {
    let es = Wording::new(Lang::Es);
    let step = judged(Rule::ExposureStep, Measure::RatioAtMost(1.6), Measure::LightStep { from: 0.3, to: 0.6 }, false);
    assert_eq!(
        es.reason(&step, About::Pair),
        "estaba con 30 % de luz, esta era tiene 60 %: 2,0 veces la luz, sáquela antes en 2 pasos"
    );
    let hardening = judged(Rule::Hardening, Measure::DaysAtLeast(28), Measure::Days(1), false);
    assert_eq!(es.reason(&hardening, About::Tray), "1 día de endurecimiento, faltan 27 para 28");
}

#[test]
fn a_dry_reading_says_to_read_again_and_a_warning_is_said_as_one() {
    let en = Wording::new(Lang::En);
    let mut dry = Criterion::unknown(Rule::Soil, None, true, "");
    dry.known = Some(Measure::ReadDry);
    assert!(en.reason(&dry, About::Bed).contains("two days after a soaking"));
    let mut near =
        judged(Rule::ExposureStep, Measure::RatioAtMost(1.6), Measure::LightStep { from: 0.5, to: 0.7 }, true);
    near.warns = true;
    assert!(en.reason(&near, About::Pair).contains("watch for scorched leaves"));
}
