//! Why, in the words said to a grower.

use super::measure::limits_of;
use crate::base::{Day, Range};
use crate::nursery::entry::types::{GroundTask, Roots, Tubers};
use crate::nursery::species::LooksAlive;
use crate::reckon::bed::soil::rests_on_a_hole;
use crate::reckon::picture::quantity::{
    AtWork, Beside, CollarRule, DaysAtLeast, DaysOfSpecies, Ground, Hardened, HeightBand, HeldFor, Holds, Hole,
    InContainer, KeepsUntil, LeavesAtLeast, Light, LightApart, LightBand, LightRead, LightSpan, LightStep, LivesBare,
    NotSo, PlantsAtLeast, Positions, RatioAtMost, ResistanceAtMost, Sample, SeenWater, Until, WaterLeft, WaterNeeded,
    Wet, WorkWithin,
};
use crate::reckon::picture::question::Found;
use crate::reckon::picture::{Basis, Criterion, HandsFrom, Question};
use crate::reckon::tray::exposure::{DARKER_WARNS_BELOW, FITS_UP_TO};
use crate::reckon::tray::light::{LAST_LIGHT_DAYS, SCORCH_SHOWS_DAYS};
use crate::wording::Wording;

/// What a verdict is about; a few reasons are said otherwise of a tray alone than of a tray for a bed.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum About {
    /// A tray.
    Tray,
    /// A bed, for a species.
    Bed,
    /// A tray for a bed.
    Pair,
}

/// Lets the ends of a band be inside although 1 - 0.3 is not exact in a computer.
const EXACT: f64 = 1e-9;

impl Wording {
    /// Why a criterion is as it is, in plain words; an unknown says what to measure.
    pub fn reason(&self, criterion: &Criterion, about: About) -> String {
        let said = match self.found_reason(criterion, about) {
            Some(found) => self.of_joined(self.in_part(found, criterion), criterion),
            None => match criterion.gap() {
                Some(gap) => self.gap_words(gap),
                None => self.reason_unknown(criterion, about),
            },
        };
        match criterion.hands_from {
            None => said,
            Some(HandsFrom::Day(day)) => self.after_wait_until(said, self.day(day)),
            Some(HandsFrom::Unwritten) => self.after_wait_unwritten(said),
        }
    }

    /// What holds plants back, or asks for care, on behalf of those that were put to them.
    fn of_joined(&self, sentence: String, criterion: &Criterion) -> String {
        let joined = criterion.joined.filter(|_| criterion.blocks || criterion.warns);
        joined.map_or(sentence.clone(), |joined| self.of_those_joined(joined.plants, sentence, self.day(joined.on)))
    }

    /// What was found, of whatever question; none where nothing is known.
    fn found_reason(&self, criterion: &Criterion, about: About) -> Option<String> {
        let expected = criterion.expected;
        Some(match &criterion.question {
            Question::DaysSinceSowing(age) => self.age_reason(age.found()?),
            Question::DaysInContainer(stands) => self.container_reason(stands.found()?),
            Question::Height(sample) => self.height_reason(sample.found()?, criterion.warns),
            Question::Collar(sample) => self.collar_reason(sample.found()?, criterion.warns),
            Question::Leaves(sample) => self.leaves_reason(sample.found()?),
            Question::Grafted(plants) => self.grafted_reason(plants.found()?, expected, criterion),
            Question::Plug(plug) => self.plug_reason(plug.found()?.known, criterion.warns),
            Question::Flush(seen) => self.flush_reason(seen.found()?, criterion),
            Question::Hardening(hardened) => self.hardening_reason(hardened.found()?, about),
            Question::ExposureStep(step) => self.step_reason(step.found()?, criterion.warns, about),
            Question::Held(held) => self.held_reason(held.found()?.known.as_ref(), expected),
            Question::Treated(with) => self.treated_reason(with.found()?.known.as_ref(), expected),
            Question::PlantBack(with) => self.plant_back_reason(with.found()?.known.as_ref(), expected),
            Question::Pest(seen) => self.pest_reason(seen.found()?, criterion.blocks),
            Question::Living(plants) => self.living_reason(plants.found()?),
            Question::Load(plants) => self.load_reason(plants.found()?),
            Question::GoodUntil(last) => self.good_until_reason(last.found()?, criterion.warns),
            Question::BareRoots(lives) => self.bare_roots_reason(lives.found()?.known),
            Question::LightNow(light) => self.light_reason(light.found()?),
            Question::LightComing(light) => self.light_coming_reason(light.found()?),
            Question::Soil(ground) => self.soil_reason(ground.found()?, criterion.blocks),
            Question::Cleared(work)
            | Question::Holes(work)
            | Question::Weeded(work)
            | Question::Mulched(work)
            | Question::Fenced(work) => self.work_reason(work.found()?),
            Question::Water(rain) => self.water_reason(rain.found()?, criterion.blocks, expected),
            Question::Season(rains) => self.season_reason(rains.found()?, expected),
            Question::OpenPositions(open) => self.positions_reason(open.found()?),
        })
    }

    fn age_reason(&self, &Found { needed, known: days, met, .. }: &Found<DaysOfSpecies, i32>) -> String {
        let least = needed.least;
        match (met, least) {
            (true, 0) => self.old_without_least(days),
            (true, _) => self.old_enough(days, least),
            (false, _) => self.too_young(days, (least - days).max(0), least),
        }
    }

    fn container_reason(&self, &Found { needed, known, met, .. }: &Found<Holds, InContainer>) -> String {
        match (known, needed) {
            (InContainer::Circling, _) | (_, Holds::Roots) => self.container_circles(),
            (InContainer::Seedbed(days), Holds::Days(most)) if met => self.seedbed_holds(days, most),
            (InContainer::Seedbed(days), Holds::Days(most)) => self.seedbed_outgrown(days, most),
            (InContainer::CutLately { days, tells_from }, Holds::Days(most)) => {
                self.container_cut_lately(days, most, self.day(tells_from))
            }
            (InContainer::TooOld(days), Holds::Days(most)) => self.container_too_old(days, most),
            (InContainer::FarBeyond(days), Holds::Days(most)) => self.container_far_beyond(days, most),
            (InContainer::Days(days), Holds::Days(most)) if met => self.container_holds(days, most),
            (InContainer::Days(days), Holds::Days(most)) => self.container_outgrown(days, most),
        }
    }

    /// What a sample says; where plants went out since, that it is of before.
    fn of_before(&self, sentence: String, sample: Sample) -> String {
        match sample.gone_since {
            0 => sentence,
            gone => self.sample_of_before(sentence, self.plants(gone)),
        }
    }

    fn height_reason(&self, &Found { needed, known, met, .. }: &Found<HeightBand, Sample>, warns: bool) -> String {
        let HeightBand { least_cm, most_cm } = needed;
        let Sample { pass, of, mean, unit, .. } = known;
        let mean_words = self.mean_words(mean, unit, &[least_cm, most_cm]);
        let in_cm = |cm: f64| self.mean_words(cm, unit, &[]);
        let said = if met && warns && mean > most_cm {
            self.height_met_tall(pass, of, mean_words, in_cm(most_cm))
        } else if met && warns {
            self.height_met_of_few(pass, of, mean_words)
        } else if met {
            self.height_met(pass, of, mean_words)
        } else if pass == of {
            self.sample_too_few(pass, of)
        } else if mean > most_cm {
            self.height_tall(pass, of, mean_words, in_cm(most_cm))
        } else {
            self.height_short(pass, of, mean_words, in_cm(least_cm))
        };
        self.of_before(said, known)
    }

    fn collar_reason(&self, &Found { needed, known, met, .. }: &Found<CollarRule, Sample>, warns: bool) -> String {
        let Sample { pass, of, mean, unit, .. } = known;
        let mean = self.mean_words(mean, unit, &[]);
        let said = if met && warns {
            self.collar_under_floor(pass, of, mean, self.mean_words(needed.floor_mm, unit, &[]))
        } else if met {
            self.collar_met(pass, of, mean)
        } else if pass == of {
            self.sample_too_few(pass, of)
        } else {
            self.collar_thin(pass, of, mean, self.measure(&needed.into()))
        };
        self.of_before(said, known)
    }

    fn leaves_reason(&self, &Found { needed, known, met, .. }: &Found<LeavesAtLeast, Sample>) -> String {
        let Sample { pass, of, mean, unit, .. } = known;
        let mean = self.mean_words(mean, unit, &[]);
        let said = if met {
            self.leaves_met(pass, of, mean)
        } else if pass == of {
            self.sample_too_few(pass, of)
        } else {
            self.leaves_few(pass, of, mean, self.measure(&needed.into()))
        };
        self.of_before(said, known)
    }

    fn grafted_reason(
        &self,
        &Found { needed, known, met, .. }: &Found<PlantsAtLeast, Range>,
        heals_on: Option<Day>,
        &Criterion { blocks, warns, .. }: &Criterion,
    ) -> String {
        let plants = known.likely as i64;
        match (heals_on.map(|day| self.day(day)), blocks, warns) {
            (Some(day), true, false) => return self.grafted_heals(day),
            (Some(day), true, true) => return self.grafted_heals_look(day),
            (Some(day), false, _) => return self.grafted_few(plants, day),
            (None, _, true) if met => return self.grafted_look(),
            (None, ..) => {}
        }
        match (met, plants) {
            (true, _) => self.grafted_met(),
            (false, 0) => self.grafted_none(),
            (false, some) => self.grafted_some(some, needed.0),
        }
    }

    fn plug_reason(&self, roots: Roots, warns: bool) -> String {
        match roots {
            Roots::Crumbles if warns => self.plug_one_apart(),
            Roots::Crumbles => self.plug_crumbles(),
            Roots::Circling => self.plug_circles(),
            Roots::Holds if warns => self.plug_few_wild(),
            Roots::Holds => self.plug_met(),
        }
    }

    fn flush_reason(
        &self,
        &Found { known: seen, met, .. }: &Found<NotSo, Option<Day>>,
        &Criterion { blocks, warns, .. }: &Criterion,
    ) -> String {
        match seen {
            Some(day) if met && warns => self.flush_feel(self.day(day)),
            Some(day) if !met && blocks => self.flush_unmet_on(self.day(day)),
            Some(day) if !met => self.flush_few(self.day(day)),
            Some(_) | None => self.flush_met(),
        }
    }

    fn living_reason(&self, found: &Found<PlantsAtLeast, Range>) -> String {
        if found.met { self.living_met_plants(self.plants_range(found.known)) } else { self.living_unmet() }
    }

    fn load_reason(&self, &Found { needed, known, met, .. }: &Found<PlantsAtLeast, Range>) -> String {
        let plants = self.plants_range(known);
        if met { self.load_met(plants) } else { self.load_unmet(plants, needed.0) }
    }

    fn good_until_reason(&self, found: &Found<KeepsUntil, Day>, warns: bool) -> String {
        let KeepsUntil { last, stump, look, long_gone } = found.needed;
        let last = self.day(last);
        let alive = self.looks_alive(stump, look);
        let taken = found.basis == Basis::Assumed;
        match (found.met, warns, stump) {
            (true, true, _) if taken => self.good_until_looked(last),
            (false, ..) if taken => self.good_until_taken(last, alive),
            (true, true, _) => self.good_until_long(last, alive, self.bare_care(stump, look)),
            (true, false, _) => self.good_until_met(last, self.bare_care(stump, look)),
            (false, ..) if long_gone => self.good_until_long_gone(last),
            (false, ..) => self.good_until_unmet(last, alive),
        }
    }

    /// Where plants without soil are looked at, and what tells that they live.
    pub(crate) fn looks_alive(&self, stump: bool, look: Option<LooksAlive>) -> String {
        match look {
            Some(LooksAlive::HeartLeaves) => self.alive_heart_leaves(),
            Some(LooksAlive::Corm) => self.alive_corm(),
            Some(LooksAlive::SpearLeaf) => self.alive_spear_leaf(),
            Some(LooksAlive::Rhizome) => self.alive_rhizome(),
            Some(LooksAlive::Vine) => self.alive_vine(),
            Some(LooksAlive::Clump) => self.alive_clump(),
            None if stump => self.alive_bark(),
            None => self.alive_roots(),
        }
    }

    /// How plants without soil are kept.
    pub(crate) fn bare_care(&self, stump: bool, look: Option<LooksAlive>) -> String {
        match look {
            Some(LooksAlive::HeartLeaves | LooksAlive::Rhizome) => self.slips_care(),
            Some(LooksAlive::Corm) => self.suckers_care(),
            Some(LooksAlive::Vine) => self.vines_care(),
            _ if stump => self.stumps_care(),
            _ => self.bare_roots_care(),
        }
    }

    fn bare_roots_reason(&self, lives: LivesBare) -> String {
        match lives {
            LivesBare::Yes => self.bare_roots_met(),
            LivesBare::No => self.bare_roots_unmet(),
            LivesBare::Wildling => self.bare_roots_wildling(),
        }
    }

    fn hardening_reason(
        &self,
        &Found { needed, known, met, .. }: &Found<DaysAtLeast, Hardened>,
        about: About,
    ) -> String {
        let least = needed.0;
        match known {
            Hardened::GoesSoft => self.hardening_soft(),
            Hardened::NoBrighter => self.hardening_no_brighter(),
            Hardened::SaidAlone(day) => self.hardening_said_alone(self.short_day(day), least),
            Hardened::PutBack(day) => self.hardening_put_back(self.short_day(day), least),
            Hardened::FreshStep { last, from, .. } => self.hardening_fresh(self.day(last), self.day(from)),
            Hardened::BelowAdvice { days, advised, stood: false } => self.hardening_below_advice(days, least, advised),
            Hardened::BelowAdvice { days, advised, stood: true } => self.hardening_stood_below(days, least, advised),
            Hardened::Stood(days) if about == About::Tray => self.hardening_stood_tray(days),
            Hardened::SmallStep(days) if about == About::Tray => self.hardening_small_step_tray(days),
            Hardened::Stood(days) => self.hardening_stood(days),
            Hardened::SmallStep(days) => self.hardening_small_step(days),
            Hardened::StepsTaken(days) => self.hardening_steps_taken(days),
            Hardened::StoodHere(days) => self.hardening_stood_here(days, least),
            Hardened::StoodShort(days) => self.hardening_stood_short(days, least - days, least),
            Hardened::For(days) if met => self.hardening_met(days, least),
            Hardened::NotBefore(day) => self.hardening_not_before(least, self.day(day)),
            Hardened::Rests(until) => self.hardening_rests(self.day(until), least),
            Hardened::BegunToday => self.hardening_begun_today(least),
            Hardened::Leapt { on, from, days } => self.hardening_leapt(self.day(on), self.day(from), days),
            Hardened::For(0) => self.hardening_not_begun(least),
            Hardened::For(days) => self.hardening_short(days, least - days, least),
        }
    }

    fn held_reason(&self, held: Option<&HeldFor>, expected: Option<Day>) -> String {
        let Some(HeldFor { why, stood }) = held else { return self.held_met() };
        match (stood, expected) {
            (Some(place), _) => self.held_stood(place, why),
            // The day from which it is free comes after the last day of the hold.
            (None, Some(day)) => self.held_unmet_until(why, self.day(day.plus(-1))),
            (None, None) => self.held_unmet_said(why),
        }
    }

    fn treated_reason(&self, treated: Option<&AtWork>, expected: Option<Day>) -> String {
        let Some(AtWork { with, beside, dries, wets }) = treated else { return self.treated_met() };
        let what = crate::base::text::cleaned(with);
        match (expected.map(|day| self.day(day)), beside) {
            (None, _) => self.treated_unmet_said(what),
            (Some(day), Some(Beside::Tray(tray))) if *dries && *wets => self.treated_beside_dries(tray, what, day),
            (Some(day), Some(Beside::Tray(tray))) if *dries => self.treated_beside_of_day(tray, what, day),
            (Some(day), Some(Beside::Drifted(tray))) => self.treated_drifted_until(tray, what, day),
            (Some(day), Some(Beside::Plants(tray))) if *dries => self.treated_plants_until(tray, what, day),
            (Some(day), _) if *dries && *wets => self.treated_dries(what, day),
            (Some(day), _) if *dries => self.treated_of_day(what, day),
            (Some(day), None | Some(Beside::Bed)) => self.treated_unmet_until(what, day),
            (Some(day), Some(Beside::Plants(tray))) => self.treated_plants_until(tray, what, day),
            (Some(day), Some(Beside::Place)) => self.treated_here_until(what, day),
            (Some(day), Some(Beside::Stood(place))) => self.treated_stood_until(place, what, day),
            (Some(day), Some(Beside::Tray(tray))) => self.treated_beside_until(tray, what, day),
        }
    }

    fn plant_back_reason(&self, treated: Option<&AtWork>, from: Option<Day>) -> String {
        let Some(AtWork { with, beside, .. }) = treated else { return self.plant_back_met() };
        let what = crate::base::text::cleaned(with);
        if *beside == Some(Beside::Place) {
            return self.plant_back_bench(what);
        }
        match from {
            Some(day) => self.plant_back_until(what, self.day(day)),
            None => self.plant_back_said(what),
        }
    }

    fn step_reason(&self, found: &Found<RatioAtMost, LightStep>, warns: bool, about: About) -> String {
        let LightStep { from, to, burns, in_sun, .. } = found.known;
        let Some((now, since)) = burns else {
            let alone = self.step_alone(found, warns, about);
            let back = found.known.back.map(|(days, since)| (days, self.day(since.plus(SCORCH_SHOWS_DAYS))));
            return back.map_or(alone.clone(), |(days, look)| self.step_back_from_shade(days, alone, look));
        };
        let ratio = to / from;
        let fits = ratio <= found.needed.0 + 1e-9;
        let warns = warns || (fits && !(DARKER_WARNS_BELOW..=FITS_UP_TO).contains(&ratio));
        let alone = self.step_alone(&Found { met: fits, ..found.clone() }, warns, about);
        let (now, shows) = (self.percent(now), self.day(since.plus(LAST_LIGHT_DAYS)));
        if in_sun {
            return self.step_in_sun(alone, now, self.day(since), shows);
        }
        self.step_after_burn(alone, now, self.day(since), shows)
    }

    fn step_alone(&self, found: &Found<RatioAtMost, LightStep>, warns: bool, about: About) -> String {
        let &Found { needed: RatioAtMost(most), known: LightStep { from, to, .. }, met, .. } = found;
        let (stood, goes) = (self.percent(from), self.percent(to));
        let alone = about == About::Tray;
        if let Some(no_brighter) = self.step_not_brighter((from, to), met && !warns, alone) {
            return no_brighter;
        }
        let ratio = self.times_beside(to / from, &limits_of(Some(&found.needed.into())));
        if let Some(until) = found.known.rests_until.filter(|_| !met || warns) {
            return self.step_after_rest(stood, goes, ratio, self.day(until));
        }
        match (met, warns, alone) {
            (true, false, false) => self.step_met(stood, goes),
            (true, false, true) => self.step_met_tray(stood, goes),
            (true, true, false) => self.step_watch(stood, goes, ratio),
            (true, true, true) => self.step_watch_tray(stood, goes, ratio),
            (false, _, false) => self.step_too_bright(stood, goes, ratio, steps_to_light(from, to, most)),
            (false, _, true) => self.step_too_bright_tray(stood, goes, ratio, steps_to_light(from, to, most)),
        }
    }

    /// A step to the same light or to a darker one; none where it is brighter.
    fn step_not_brighter(&self, (from, to): (f64, f64), good: bool, alone: bool) -> Option<String> {
        let (stood, goes) = (self.percent(from), self.percent(to));
        // What is written alike is the same to a person.
        if good && stood == goes {
            return Some(if alone { self.step_inside_tray(stood) } else { self.step_same(stood) });
        }
        (to < from).then(|| match (good, alone) {
            (true, false) => self.step_darker(stood, goes),
            (true, true) => self.step_darker_tray(stood, goes),
            (false, false) => self.step_too_dark(stood, goes),
            (false, true) => self.step_too_dark_tray(stood, goes),
        })
    }

    fn light_reason(&self, found: &Found<LightBand, LightRead>) -> String {
        let said = self.light_mean_reason(found);
        match found.known.apart {
            Some(LightApart { low, high, since }) => {
                self.light_apart(said, self.percent(low), self.percent(high), self.day(since))
            }
            None => said,
        }
    }

    /// Light as it is reckoned: `about 45 % light (30 to 60 %)`.
    pub(crate) fn span_words(&self, LightSpan { share, low, high }: LightSpan) -> String {
        self.measure_light_reckoned(self.percent(share), self.number(low * 100.0, 0), self.percent(high))
    }

    fn light_reckoned_reason(&self, span: LightSpan, LightBand { least, most }: LightBand, met: bool) -> String {
        let words = self.span_words(span);
        match (met, span.low > most) {
            (true, _) => self.light_reckoned_met(words, self.band_words(least, most)),
            (false, true) => self.light_reckoned_bright(words, self.percent(most)),
            (false, false) => self.light_reckoned_dark(words, self.percent(least)),
        }
    }

    fn light_mean_reason(&self, &Found { needed, known, met, .. }: &Found<LightBand, LightRead>) -> String {
        if let Some(span) = known.reckoned {
            return self.light_reckoned_reason(span, needed, met);
        }
        let (LightBand { least, most }, light) = (needed, known.share);
        let words = self.percent_beside(light, &[least, most]);
        let inside = (least - EXACT..=most + EXACT).contains(&light);
        match (met, light > most) {
            (true, _) if !inside => self.light_near(words, self.band_words(least, most)),
            (true, _) => self.light_met(words, self.band_words(least, most)),
            (false, true) => self.light_too_bright(words, self.percent(most)),
            (false, false) => self.light_too_dark(words, self.percent(least)),
        }
    }

    fn light_coming_reason(&self, &Found { needed, known, met, .. }: &Found<LightBand, Light>) -> String {
        let (LightBand { least, most }, Light(light)) = (needed, known);
        let words = self.percent(light);
        match (met, light > most) {
            (true, _) => self.light_coming_met(words, self.band_words(least, most)),
            (false, true) => self.light_coming_bright(words, self.percent(most)),
            (false, false) => self.light_coming_dark(words, self.percent(least)),
        }
    }

    fn water_reason(
        &self,
        &Found { needed, known, basis, met }: &Found<WaterNeeded, Wet>,
        blocks: bool,
        drained: Option<Day>,
    ) -> String {
        let needed_mm = match needed {
            WaterNeeded::Rain(rain) => rain.mm,
            WaterNeeded::Left(mm) => mm,
        };
        match known {
            Wet::Left(left) => self.water_left_reason(&left, needed_mm, (met, blocks, basis)),
            Wet::Drowned { mm, on } => {
                self.water_drowned(self.number(mm, 0), self.day(on), self.day(drained.unwrap_or(on)))
            }
            Wet::Drained { mm, on } => self.water_drained(self.number(mm, 0), self.day(on)),
            Wet::UsualRains => self.water_usual(),
            Wet::Rain { mm, days } => {
                let fallen = self.number_beside(mm, &[needed_mm], 1);
                if met {
                    self.water_met(fallen, days)
                } else if !blocks {
                    self.water_near(fallen, days, self.number(needed_mm, 1))
                } else {
                    self.water_short(fallen, days, self.number(needed_mm, 1))
                }
            }
        }
    }

    /// What is left of the water for young roots, for how long that is enough, and how much rain to wait for.
    fn water_left_reason(&self, left: &WaterLeft, needed_mm: f64, (met, blocks, basis): (bool, bool, Basis)) -> String {
        let (mm, full) = (self.number_beside(left.left_mm, &[needed_mm], 0), self.number(left.full_mm, 0));
        let needed = self.number(needed_mm, 0);
        let rain = || self.number(left.missing_mm.ceil(), 0);
        match (met, left.seen) {
            (true, _) if basis == Basis::Assumed => self.water_left_usual(mm, full, left.unread_days),
            (true, Some(SeenWater::Wet(on))) => self.water_left_seen(self.day(on), mm, full, left.days),
            (true, Some(SeenWater::Dry(on))) => self.water_left_since_dry(self.day(on), mm, full, left.days),
            (true, Some(SeenWater::AtFeet(_)) | None) => self.water_left_met(mm, full, left.days),
            (false, Some(SeenWater::Dry(on))) if basis == Basis::Measured => self.water_found_dry(self.day(on), rain()),
            (false, Some(SeenWater::Dry(on))) if blocks => {
                self.water_short_since_dry(self.day(on), mm, full, needed, rain())
            }
            (false, Some(SeenWater::AtFeet(on))) if blocks => {
                self.water_left_at_feet(self.water_left_short(mm, full, needed, rain()), self.day(on))
            }
            (false, _) if !blocks => self.water_left_near(mm, full, needed),
            (false, _) => self.water_left_short(mm, full, needed, rain()),
        }
    }

    fn season_reason(&self, &Found { needed, known, met, .. }: &Found<Until, Day>, expected: Option<Day>) -> String {
        match (met, expected) {
            (true, _) => self.season_met(self.day(needed.0)),
            // The last safe day is still to come: it is that of the rains that have not begun.
            (false, Some(day)) if known <= needed.0 => self.season_begins(self.day(day)),
            (false, Some(day)) => self.season_from(self.day(day)),
            (false, None) => self.season_past(self.day(needed.0)),
        }
    }

    fn positions_reason(&self, found: &Found<PlantsAtLeast, Positions>) -> String {
        if found.met { self.open_positions_met(found.known.0) } else { self.open_positions_unmet() }
    }

    fn work_reason(&self, &Found { needed, known, met, .. }: &Found<WorkWithin, Option<Day>>) -> String {
        let WorkWithin { task, days: lasts, at_least_cm, eaten_on, eaten_beside_on } = needed;
        if let Some(on) = eaten_on {
            return self.fenced_eaten(self.day(on));
        }
        if let Some(on) = eaten_beside_on {
            return self.fenced_eaten_beside(self.day(on));
        }
        if let Some((day, cm)) = known.zip(at_least_cm) {
            return self.holes_shallow(self.day(day), self.number(cm, 0));
        }
        match known.map(|day| self.day(day)) {
            Some(day) if met => match task {
                GroundTask::Cleared => self.cleared_on(day),
                GroundTask::Holes => self.holes_on(day),
                GroundTask::Weeded => self.weeded_on(day),
                GroundTask::Mulched => self.mulched_on(day),
                GroundTask::Fenced => self.fenced_on(day),
            },
            Some(day) => match task {
                GroundTask::Cleared => self.cleared_stale(day, lasts),
                GroundTask::Holes => self.holes_stale(day, lasts),
                GroundTask::Weeded => self.weeded_stale(day, lasts),
                GroundTask::Mulched => self.mulched_stale(day, lasts),
                GroundTask::Fenced => self.fenced_stale(day, lasts),
            },
            None => match task {
                GroundTask::Cleared => self.cleared_unmet(),
                GroundTask::Holes => self.holes_unmet(),
                GroundTask::Weeded => self.weeded_unmet(),
                GroundTask::Mulched => self.mulched_unmet(),
                GroundTask::Fenced => self.fenced_unmet(),
            },
        }
    }

    fn soil_reason(&self, found: &Found<ResistanceAtMost, Ground>, blocks: bool) -> String {
        let &Found { needed: ResistanceAtMost { mpa: most, depth_cm: needed_cm, .. }, known, met, .. } = found;
        let hard = match known {
            Ground::Read { depth_cm: Some(depth_cm), hole: Hole::Taken(hole_cm), .. }
            | Ground::AtHole { depth_cm, hole: Hole::Taken(hole_cm), .. }
                if met && rests_on_a_hole(known, needed_cm) =>
            {
                let cm = |cm: f64| self.number(cm, 0);
                return self.soil_beneath_if(cm(depth_cm), cm(hole_cm), cm(needed_cm));
            }
            Ground::Read { mpa, .. } if met => return self.soil_met(self.number_beside(mpa, &[most], 1)),
            Ground::RodStopped { depth_cm, .. } | Ground::AtHole { depth_cm, .. } if met => {
                return self.soil_rod_met(self.number(depth_cm, 0));
            }
            Ground::Lifted(days) => return self.soil_lifted(days),
            Ground::Tubers(shape @ (Tubers::Even | Tubers::Full)) => {
                return self.soil_tubers_met(self.tuber_words(shape));
            }
            Ground::Read { mpa, .. } => self.soil_hard(self.number_beside(mpa, &[most], 1), self.number(most, 1)),
            Ground::RodStopped { depth_cm, .. } => {
                self.soil_rod_short(self.number(depth_cm, 0), self.number(needed_cm, 0))
            }
            Ground::AtHole { depth_cm, hole, .. } => self.hole_short(depth_cm, hole, needed_cm),
            Ground::Tubers(Tubers::ThinNecked) => self.soil_tubers_thin(),
        };
        if blocks && matches!(known, Ground::AtHole { .. }) {
            self.soil_hole_is_a_pot(hard)
        } else if blocks {
            self.soil_loosen_first(hard)
        } else {
            self.soil_around_hole(hard)
        }
    }
}

impl Wording {
    /// How deep a rod went beneath or beside a dug hole, and what that makes with the hole.
    fn hole_short(&self, depth_cm: f64, hole: Hole, needed_cm: f64) -> String {
        let cm = |cm: f64| self.number(cm, 0);
        match hole {
            Hole::Written(hole_cm) => self.soil_beneath_short(cm(depth_cm), cm(hole_cm + depth_cm), cm(needed_cm)),
            Hole::Taken(hole_cm) => self.soil_beneath_taken(cm(depth_cm), cm(hole_cm), cm(needed_cm)),
            Hole::Unknown => self.soil_beneath_unknown(cm(depth_cm), cm(needed_cm)),
            Hole::Beside => self.soil_beside_short(cm(depth_cm), cm(needed_cm)),
        }
    }
}

/// The steps, each of at most the ratio allowed, in which plants come from one light to a brighter one.
fn steps_to_light(from: f64, to: f64, most: f64) -> i64 {
    /// More steps than this are not counted out (ours).
    const MOST_STEPS: f64 = 20.0;
    let steps = ((to / from).ln() / most.ln()).ceil();
    steps.clamp(2.0, MOST_STEPS) as i64
}

#[cfg(test)]
#[path = "reason_tests.rs"]
mod tests;
