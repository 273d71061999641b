//! Reasons as a grower hears them.

use std::collections::BTreeSet;

use super::*;
use crate::base::word::Word;
use crate::reckon::picture::quantity::LivesBare;
use crate::reckon::picture::quantity::{HeldFor, PestSeen, RainAtLeast};
use crate::reckon::picture::question::Known;
use crate::reckon::picture::{Basis, Gap, Rule, SampleUnit};
use crate::wording::Lang;

fn judged<N, K>(question: impl FnOnce(Known<N, K>) -> Question, needed: N, known: K, met: bool) -> Criterion {
    Criterion::found(question, needed, known, Basis::Measured, met, "common practice")
}

fn on(written: &str) -> Day {
    written.parse().unwrap()
}

/// Each question as it should be, as it should not, and unknown.
fn in_every_state<N: Copy, K>(question: fn(Known<N, K>) -> Question, needed: N, good: K, bad: K) -> [Criterion; 3] {
    let unknown = Criterion::unknown(question, Some(needed), true, "common practice");
    [judged(question, needed, good, true), judged(question, needed, bad, false), unknown]
}

fn aphids() -> Option<PestSeen> {
    Some(PestSeen::only("aphids", Some(60.0), "2026-04-03".parse().unwrap()))
}

fn every_question() -> Vec<[Criterion; 3]> {
    let sample = |pass, unit| Sample { pass, of: 30, mean: 14.2, unit, gone_since: 0 };
    let work = |task| WorkWithin { task, days: 30, at_least_cm: None, eaten_on: None, eaten_beside_on: None };
    let done = Some(on("2026-04-03"));
    let age = DaysOfSpecies { least: 210, usual: Some(300), most: Some(420) };
    let band = LightBand { least: 0.3, most: 0.5 };
    let leaves = LeavesAtLeast { count: 4.0, pairs: true };
    let ground = |mpa| Ground::Read { mpa, depth_cm: None, hole: Hole::Beside };
    let rain = |mm| Wet::Rain { mm, days: 3 };
    let step = |to| LightStep { from: 0.3, to, burns: None, in_sun: false, back: None, rests_until: None };
    let why = || Some(HeldFor { why: "promised".to_string(), stood: None });
    let at_work = || Some(AtWork { with: "glyphosate".into(), beside: None, dries: false, wets: false });
    let read = |share| LightRead { share, apart: None, reckoned: None };
    vec![
        in_every_state(Question::DaysSinceSowing, age, 250, 193),
        in_every_state(Question::DaysInContainer, Holds::Days(300), InContainer::Days(100), InContainer::Days(430)),
        in_every_state(
            Question::Height,
            HeightBand { least_cm: 20.0, most_cm: 40.0 },
            sample(29, SampleUnit::Cm),
            sample(3, SampleUnit::Cm),
        ),
        in_every_state(
            Question::Collar,
            CollarRule { floor_mm: 4.0 },
            sample(29, SampleUnit::Mm),
            sample(3, SampleUnit::Mm),
        ),
        in_every_state(Question::Leaves, leaves, sample(29, SampleUnit::Leaves), sample(3, SampleUnit::Leaves)),
        in_every_state(Question::Grafted, PlantsAtLeast(9), Range::exact(9.0), Range::exact(0.0)),
        in_every_state(Question::Plug, Roots::Holds, Roots::Holds, Roots::Crumbles),
        in_every_state(Question::Flush, NotSo, None, done),
        in_every_state(Question::Hardening, DaysAtLeast(28), Hardened::For(30), Hardened::For(12)),
        in_every_state(Question::ExposureStep, RatioAtMost(1.6), step(0.35), step(0.6)),
        in_every_state(Question::Held, NotSo, None, why()),
        in_every_state(Question::Treated, NotSo, None, at_work()),
        in_every_state(Question::PlantBack, NotSo, None, at_work()),
        in_every_state(Question::Pest, NotSo, None, aphids()),
        in_every_state(Question::BareRoots, LivesBare::Yes, LivesBare::Yes, LivesBare::No),
        in_every_state(Question::Living, PlantsAtLeast(1), Range::exact(9.0), Range::exact(0.0)),
        in_every_state(Question::Load, PlantsAtLeast(5), Range::exact(9.0), Range::exact(2.0)),
        in_every_state(
            Question::GoodUntil,
            KeepsUntil { last: on("2026-04-01"), stump: false, look: None, long_gone: false },
            on("2026-03-01"),
            on("2026-05-01"),
        ),
        in_every_state(Question::LightNow, band, read(0.4), read(0.9)),
        in_every_state(Question::LightComing, band, Light(0.4), Light(0.9)),
        in_every_state(
            Question::Soil,
            ResistanceAtMost { mpa: 2.0, depth_cm: 30.0, rod_mm: 8.0 },
            ground(1.0),
            ground(3.0),
        ),
        in_every_state(Question::Cleared, work(GroundTask::Cleared), done, None),
        in_every_state(Question::Holes, work(GroundTask::Holes), done, None),
        in_every_state(Question::Weeded, work(GroundTask::Weeded), done, None),
        in_every_state(Question::Mulched, work(GroundTask::Mulched), done, None),
        in_every_state(Question::Fenced, work(GroundTask::Fenced), done, None),
        in_every_state(Question::Water, WaterNeeded::Rain(RainAtLeast { mm: 20.0, days: 3 }), rain(25.0), rain(4.0)),
        in_every_state(Question::Season, Until(on("2026-04-15")), on("2026-04-01"), on("2026-06-01")),
        in_every_state(Question::OpenPositions, PlantsAtLeast(1), Positions(9), Positions(0)),
    ]
}

fn water_left(left_mm: f64) -> Wet {
    let days = ((left_mm - 26.25) / 3.6).max(0.0) as i32;
    Wet::Left(WaterLeft { left_mm, full_mm: 37.5, days, missing_mm: 37.5 - left_mm, unread_days: 0, seen: None })
}

#[test]
fn every_rule_says_something_of_its_own_in_every_state() {
    let asked: BTreeSet<Rule> = every_question().iter().flatten().map(Criterion::rule).collect();
    assert_eq!(asked, Rule::WORDS.iter().map(|(rule, _)| *rule).collect());
    for lang in Lang::ALL {
        let wording = Wording::new(lang);
        for about in [About::Tray, About::Bed, About::Pair] {
            let mut said = BTreeSet::new();
            for criterion in every_question().iter().flatten() {
                let (rule, reason) = (criterion.rule(), wording.reason(criterion, about));
                assert!(reason.chars().count() > 5, "{lang:?} {rule}: '{reason}'");
                assert!(said.insert(reason.clone()), "{lang:?} {rule}: '{reason}' is said of another");
            }
        }
    }
}

#[test]
fn a_grower_hears_what_is_short_and_what_to_do() {
    let en = Wording::new(Lang::En);
    let step = |from, to| LightStep { from, to, burns: None, in_sun: false, back: None, rests_until: None };
    let age = DaysOfSpecies { least: 210, usual: None, most: None };
    let task = GroundTask::Weeded;
    let weeded = WorkWithin { task, days: 30, at_least_cm: None, eaten_on: None, eaten_beside_on: None };
    let cases = [
        (judged(Question::DaysSinceSowing, age, 193, false), "193 days old, 17 short of 210"),
        (
            judged(Question::DaysInContainer, Holds::Days(300), InContainer::Days(430), false),
            "in its bag 430 days, the bag holds it 300: lift a plug, then pot on or cull",
        ),
        (
            judged(Question::ExposureStep, RatioAtMost(1.6), step(0.3, 0.6), false),
            "stood in 30 % light, this bed has 60 %: 2.0 times as bright, bring it out in 2 steps first",
        ),
        (
            judged(
                Question::Height,
                HeightBand { least_cm: 20.0, most_cm: 40.0 },
                Sample { pass: 3, of: 30, mean: 14.2, unit: SampleUnit::Cm, gone_since: 0 },
                false,
            ),
            "only 3 of 30 are the right height, mean 14.2 cm, at least 20 cm needed: let them grow",
        ),
        (judged(Question::Weeded, weeded, None, false), "weeding is not written down: weed the rings, then write it"),
        (
            judged(Question::Load, PlantsAtLeast(5), Range::new(2.0, 3.0, 4.0), false),
            "too few can be planted: 2 to 4 plants, likely 3; a load is 5",
        ),
        (
            judged(
                Question::Water,
                WaterNeeded::Rain(RainAtLeast { mm: 20.0, days: 3 }),
                Wet::Rain { mm: 4.5, days: 3 },
                false,
            ),
            "only 4.5 mm of rain in 3 days, 20 needed: wait for rain, or write the ground as wet where a finger finds it so",
        ),
        (
            judged(Question::Water, WaterNeeded::Left(26.25), water_left(9.2), false),
            "only 9 of 38 mm left for young roots, 26 needed: wait for about 29 mm of rain, or write the ground as wet \
             where a finger finds it so",
        ),
        (
            judged(Question::Water, WaterNeeded::Left(26.25), water_left(34.0), true),
            "34 of 38 mm left for young roots: enough for 2 days without rain",
        ),
        (
            judged(Question::ExposureStep, RatioAtMost(1.6), step(0.15, 0.9), false),
            "stood in 15 % light, this bed has 90 %: 6.0 times as bright, bring it out in 4 steps first",
        ),
        (Criterion::unknown(Question::LightNow, None, true, ""), "the light is not known: read the light in this bed"),
        (
            Criterion::unknown(Question::Hardening, None, true, ""),
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
    let step = judged(
        Question::ExposureStep,
        RatioAtMost(1.6),
        LightStep { from: 0.3, to: 0.6, burns: None, in_sun: false, back: None, rests_until: None },
        false,
    );
    assert_eq!(
        es.reason(&step, About::Pair),
        "estaba con 30 % de luz, esta parcela tiene 60 %: 2.0 veces la luz, sáquela antes en 2 pasos"
    );
    let hardening = judged(Question::Hardening, DaysAtLeast(28), Hardened::For(1), false);
    assert_eq!(es.reason(&hardening, About::Tray), "1 día de endurecimiento, faltan 27 para 28");
}

#[test]
fn a_dry_reading_says_to_read_again_and_a_warning_is_said_as_one() {
    let en = Wording::new(Lang::En);
    let dry = Criterion::lacking(Question::Soil, None, Some(Gap::ReadDry), true, "");
    assert!(en.reason(&dry, About::Bed).contains("two days after a soaking"));
    let mut near = judged(
        Question::ExposureStep,
        RatioAtMost(1.6),
        LightStep { from: 0.5, to: 0.7, burns: None, in_sun: false, back: None, rests_until: None },
        true,
    );
    near.warns = true;
    assert!(en.reason(&near, About::Pair).contains("watch for scorched leaves"));
}
