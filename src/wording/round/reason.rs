//! Why a stop is due, with its numbers.

use crate::base::{Day, LotCode, SpeciesKey};
use crate::nursery::entry::types::{Kept, Roots};
use crate::nursery::herbicide::may_have_no_label;
use crate::nursery::pest::eater_of;
use crate::nursery::species::Catalogue;
use crate::reckon::forecast::{SowAgain, TrayForecast};
use crate::reckon::picture::Measure;
use crate::reckon::picture::quantity::SeenWater;
use crate::reckon::round::{ForTray, NextStep, NurseWork, RoundReason, SampleAsked, ToBed, TooLate};
use crate::wording::number::rounded;
use crate::wording::{Wording, theme};

/// What the sentences of a round are made against: the day looked at and the names of species.
#[derive(Clone, Copy)]
pub struct RoundOn<'a> {
    /// The day of the round.
    pub day: Day,
    /// The species.
    pub species: &'a Catalogue,
}

impl Wording {
    /// A day without its year where it lies within half a year of another.
    pub(crate) fn day_beside(&self, day: Day, other: Day) -> String {
        const HALF_A_YEAR_DAYS: i32 = 183;
        let near = day.days_since(other).abs() <= HALF_A_YEAR_DAYS;
        if near { self.short_day(day) } else { self.day(day) }
    }

    /// Why a stop is due now.
    pub fn round_reason(&self, why: &RoundReason, on: RoundOn<'_>) -> String {
        let near = |day: &Day| self.day_beside(*day, on.day);
        match why {
            RoundReason::GaugeUnread => self.round_gauge(),
            RoundReason::PartCounted { standing, seen, cells } => self.round_part_counted(*standing, *seen, *cells),
            RoundReason::Emerging { .. } | RoundReason::CountOld { .. } | RoundReason::Sick { .. } => {
                self.count_reason(why)
            }
            RoundReason::EmergenceOver { last_day, emerged, sown } => {
                self.round_emergence_over(near(last_day), *emerged, *sown)
            }
            RoundReason::SowAgainAsked { told, again, fresh, lot } => {
                self.sow_again_reason(told, (again, *fresh), lot.as_ref(), on)
            }
            RoundReason::SeedlingsOldEnough { age_days, from_days, .. } => self.round_old_enough(*age_days, *from_days),
            RoundReason::OverdueInContainer { .. }
            | RoundReason::SampleFails { .. }
            | RoundReason::Lanky { .. }
            | RoundReason::SampleSmall { .. }
            | RoundReason::NeverMeasured { .. }
            | RoundReason::SampleOld { .. }
            | RoundReason::PlugNotSeen { .. } => self.growth_reason(why),
            RoundReason::LankySoon { sturdiness, limit, on: day } => {
                self.round_lanky_soon(self.decimal(*sturdiness, 1), self.number(*limit, 1), near(day))
            }
            RoundReason::PastLastDay { .. }
            | RoundReason::PastTakenDay { .. }
            | RoundReason::BareNotMeasured { .. }
            | RoundReason::BareNotLookedAt { .. }
            | RoundReason::BareLeft { .. }
            | RoundReason::LastDayNear { .. }
            | RoundReason::BagAtOnce
            | RoundReason::BagWildlings => self.bare_reason(why, on),
            RoundReason::BagEnds { ends, rains_from } => self.round_bag_ends(near(ends), near(rains_from)),
            RoundReason::HardeningNotBegun { could_be_ready, length_days, too_late, step } => {
                let begins = self.hardening_due(*could_be_ready, *length_days, on);
                self.with_step(self.with_rains(begins, *too_late, on), step)
            }
            RoundReason::StepDue { days_since, too_late, step } => {
                let since = days_since.map_or_else(|| self.round_step_first(), |days| self.round_step_settled(days));
                self.with_step(self.with_rains(since, *too_late, on), step)
            }
            RoundReason::IntoShade { leapt, until, grafted, step } => {
                self.with_step(self.shade_reason(leapt.as_ref(), until.as_ref(), *grafted, on), step)
            }
            RoundReason::MostDied(_) | RoundReason::SickOpen { .. } => self.sick_reason(why, on),
            RoundReason::LabelNotRead { with, day, people, planting } => {
                self.label_reason(with, near(day), (*people, *planting))
            }
            RoundReason::TreatmentOver { with, over_on } => self.round_treated(with, near(over_on)),
            RoundReason::LotUntested { .. }
            | RoundReason::ReplicatesApart { .. }
            | RoundReason::LotPast { .. }
            | RoundReason::LotDead { .. }
            | RoundReason::LotTestedDead { .. }
            | RoundReason::LifeEnds { .. } => self.seed_reason(why, on),
            RoundReason::WorkMissing { .. }
            | RoundReason::RingWeeding { .. }
            | RoundReason::YoungDry { .. }
            | RoundReason::NursesNotCounted { .. }
            | RoundReason::NurseWork(_)
            | RoundReason::LightNotRead { .. }
            | RoundReason::SoilNotKnown { .. }
            | RoundReason::SurvivalDue { .. } => self.ground_reason(why, on),
            RoundReason::PlaceLightUnknown { trays } => self.round_place_light(i64::from(*trays)),
            RoundReason::Fits { beds, stays, measured, no_place } => {
                self.fits_reason(beds, (*stays, *measured), *no_place, on)
            }
        }
    }

    fn shade_reason(&self, leapt: Option<&Day>, until: Option<&Day>, grafted: bool, on: RoundOn<'_>) -> String {
        let near = |day: &Day| self.day_beside(*day, on.day);
        match (leapt, until) {
            (_, Some(until)) if grafted => self.round_shade_for_grafts(near(until)),
            (_, Some(until)) => self.round_shade_for_roots(near(until)),
            (Some(since), None) => self.round_shade_after_leap(near(since)),
            (None, None) => self.round_step_first(),
        }
    }

    /// What is asked of the label of something used: how long people stay away, and how long nothing is planted.
    pub(crate) fn label_reason(&self, with: &str, day: String, (people, planting): (bool, bool)) -> String {
        match (people, planting) {
            (_, false) if may_have_no_label(with) => self.round_label_home(with, day),
            (_, false) => self.round_label(with, day),
            (true, true) => self.round_label_both(with, day),
            (false, true) => self.round_label_planting(with, day),
        }
    }

    fn hardening_due(&self, could_be_ready: Option<Day>, length_days: i32, on: RoundOn<'_>) -> String {
        match could_be_ready {
            Some(day) if day <= on.day => self.round_hardening_since(length_days, self.day_beside(day, on.day)),
            Some(day) => self.round_hardening_by(length_days, self.day_beside(day, on.day)),
            None => self.round_hardening(length_days),
        }
    }

    fn sow_again_reason(
        &self,
        told: &TrayForecast,
        (again, fresh): (&SowAgain, bool),
        lot: Option<&LotCode>,
        on: RoundOn<'_>,
    ) -> String {
        let reasons = self.forecast_reasons(told, on.day).join("; ");
        let told = format!("{}: {reasons}", self.judgement_name(told.judgement));
        let said = self.round_sow_again(told, self.sow_again_lacking(again));
        let fresh = fresh.then(|| self.round_sow_again_fresh());
        let lot = lot.map(|lot| self.round_sow_again_lot(lot));
        [fresh, lot].into_iter().flatten().fold(said, |said, more| format!("{said}; {more}"))
    }

    fn sick_reason(&self, why: &RoundReason, on: RoundOn<'_>) -> String {
        if let RoundReason::MostDied(gap) = why {
            return self.gap_words(gap);
        }
        let RoundReason::SickOpen {
            what,
            on: seen,
            done,
            lacks,
            is_damping,
            is_sign,
            apart,
            of_soil,
            leaves,
            count_from,
            few,
            brought,
        } = why
        else {
            return String::new();
        };
        let (what, day) = (crate::base::text::cleaned(what), self.day_beside(*seen, on.day));
        if let Some((by, lacks)) = brought.as_ref().zip(*lacks) {
            return self.pest_brought_reason(what, day, by, lacks);
        }
        if let Some(leaves) = leaves {
            return self.round_leaves_lost(what, day, self.measure(&Measure::from(*leaves)));
        }
        match lacks {
            Some(lacks) => {
                let next = self.round_sick_next(what, day, self.pest_next(*lacks, *is_sign, *count_from));
                let kept = || of_soil.then(|| self.round_sick_of_soil());
                let apart = apart.then(|| self.round_sick_apart()).or_else(kept);
                let wet = is_damping.then(|| self.round_sick_damping());
                [Some(next), apart, wet].into_iter().flatten().collect::<Vec<_>>().join(". ")
            }
            None if *few && !*done => self.round_sick_few(what, day),
            None if *done => self.round_sick_again(what, day),
            // What comes and goes is thrown out with no soil.
            None if eater_of(&what).is_some() => self.round_eats_open(what, day),
            None => self.round_sick_open(what, day),
        }
    }

    fn count_reason(&self, why: &RoundReason) -> String {
        if let RoundReason::Emerging { days_since, every_days, emerged, expected } = why {
            let since = days_since.map(|days| self.round_emerging(days, *every_days));
            let up = match expected.filter(|expected| expected.round() >= 1.0) {
                Some(expected) => self.round_up_of(*emerged, self.number(rounded(expected), 0)),
                None => self.round_up(*emerged),
            };
            return format!("{}; {up}", since.unwrap_or_else(|| self.round_emerging_never()));
        }
        if let RoundReason::CountOld { days_since: Some(days), every_days, stage } = why {
            return self.round_count_old(*days, *every_days, self.stage_name(*stage));
        }
        if let RoundReason::Sick { days_since, every_days, what } = why {
            let seen = what.as_ref().map(|what| self.round_sick(what, *every_days));
            let seen = seen.unwrap_or_else(|| self.round_losses(*every_days));
            let counted = days_since.map(|days| format!("; {}", self.round_counted_ago(days)));
            return format!("{seen}{}", counted.unwrap_or_default());
        }
        self.round_count_never()
    }

    fn bare_reason(&self, why: &RoundReason, on: RoundOn<'_>) -> String {
        let near = |day: &Day| self.day_beside(*day, on.day);
        if let RoundReason::PastLastDay { until, stump, look } = why {
            return self.good_until_unmet(near(until), self.looks_alive(*stump, *look));
        }
        if let RoundReason::PastTakenDay { until, stump, look } = why {
            return self.good_until_taken(near(until), self.looks_alive(*stump, *look));
        }
        if let RoundReason::BareNotMeasured { until, sample, bed, plants } = why {
            return self.with_sample(self.round_bare_unmeasured(bed, *plants, near(until)), *sample);
        }
        if let RoundReason::BareNotLookedAt { came, keep_days } = why {
            return self.gap_not_looked_at(near(came), *keep_days);
        }
        if let RoundReason::BareLeft { left, until, stump } = why {
            let (left, day) = (*left, near(until));
            return if *stump { self.round_stumps_left(left, day) } else { self.round_bare_left(left, day) };
        }
        if let RoundReason::LastDayNear { until, days_left, written, stump, look } = why {
            return match (*written, *stump) {
                (true, true) => self.round_stumps_near(*days_left),
                (true, false) => self.round_bare_near(*days_left),
                (false, _) => self.round_bare_taken(near(until), self.looks_alive(*stump, *look)),
            };
        }
        if *why == RoundReason::BagWildlings { self.bare_roots_wildling() } else { self.round_bag_at_once() }
    }

    fn growth_reason(&self, why: &RoundReason) -> String {
        if let RoundReason::OverdueInContainer { days, limit_days, roots } = why {
            let full = days.zip(*limit_days).is_some_and(|(days, limit)| days > limit);
            return match (days, limit_days) {
                _ if *roots == Some(Roots::Circling) && !full => self.round_roots_circle(),
                (Some(days), Some(limit)) if full && *roots == Some(Roots::Circling) => {
                    self.round_in_container_circling(*days, *limit)
                }
                (Some(days), Some(limit)) if full => self.round_in_container_of(*days, *limit),
                (Some(days), _) => self.round_in_container(*days),
                (None, _) => self.round_container_overdue(),
            };
        }
        if let RoundReason::SampleFails { pass, of, rest } = why {
            return self.round_sample_fails(*pass, *of, *rest);
        }
        if let RoundReason::Lanky { sturdiness, limit } = why {
            return self.round_lanky(self.decimal(*sturdiness, 1), self.number(*limit, 1));
        }
        if let RoundReason::SampleSmall { more, within_cm, least_cm } = why {
            let near = |value: f64| self.growth_cm(self.number(value, 1));
            return self.round_sample_small(*more, near(*within_cm), near(*least_cm));
        }
        if let RoundReason::SampleOld { days, sample } = why {
            return self.with_sample(self.round_sample_old(*days), *sample);
        }
        if let RoundReason::PlugNotSeen { days_since, days_to_least, days_to_limit } = why {
            let last = days_since.map_or_else(|| self.round_no_plug(), |days| self.round_plug_ago(days));
            let limit = days_to_limit.map(|days| match days {
                1.. => self.round_plug_to_limit(days),
                _ => self.round_plug_past_limit(),
            });
            let least = days_to_least.map(|days| match days {
                1.. => self.round_plug_to_least(days),
                _ => self.round_plug_past_least(),
            });
            return [Some(last), limit.or(least)].into_iter().flatten().collect::<Vec<_>>().join("; ");
        }
        if let RoundReason::NeverMeasured { days_to_least, sample } = why {
            let never = match days_to_least {
                Some(days @ 1..) => self.round_never_measured_near(*days),
                Some(days @ ..0) => self.round_never_measured_past(-days),
                Some(0) | None => self.round_never_measured(),
            };
            return self.with_sample(never, *sample);
        }
        self.round_never_measured()
    }

    /// What came before, and how many plants are to be measured.
    fn with_sample(&self, before: String, sample: SampleAsked) -> String {
        let asked = if sample.all { self.round_measure_all(sample.plants) } else { self.round_measure(sample.plants) };
        format!("{before}; {asked}")
    }

    /// What came before, and the rains that are missed whatever is done.
    fn with_rains(&self, before: String, too_late: Option<TooLate>, on: RoundOn<'_>) -> String {
        let near = |day: Day| self.day_beside(day, on.day);
        match too_late {
            Some(TooLate { last_safe, next_from: Some(next) }) => {
                format!("{before}; {}", self.round_too_late(near(last_safe), near(next)))
            }
            Some(TooLate { last_safe, next_from: None }) => {
                format!("{before}; {}", self.round_too_late_for_all(near(last_safe)))
            }
            None => before,
        }
    }

    /// What came before, and the steps to take.
    fn with_step(&self, before: String, step: &NextStep) -> String {
        let light = step.light_now.zip(step.next.as_ref()).map(|(now, next)| {
            let same = step.light_in_the_end.is_none_or(|end| (end - next.light).abs() < 0.025);
            let end = step.light_in_the_end.filter(|_| !same).map(|end| self.round_step_end(self.percent(end)));
            let light = self.round_step_light(self.percent(now), self.percent(next.light));
            [Some(light), end].into_iter().flatten().collect::<Vec<_>>().join(", ")
        });
        let place = step.next.as_ref().map(|next| match &next.place {
            Some(place) => self.round_step_place(place),
            None => self.cloth_words(next.light),
        });
        let then = step.then.as_ref().map(|then| match &then.place {
            Some(place) => self.round_step_then(self.percent(then.light), place),
            None => self.round_step_then_cloth(self.percent(then.light)),
        });
        let water = step.water_every_days.map(|days| self.round_step_water(days));
        [Some(before), light, place, then, water].into_iter().flatten().collect::<Vec<_>>().join("; ")
    }

    /// How a light is made that no bench gives: a cloth, or two layers of a thinner one that let no more through.
    fn cloth_words(&self, light: f64) -> String {
        let shade = ((1.0 - light) * 100.0).round().clamp(0.0, 100.0) as i64;
        let layer = ((1.0 - light.max(0.0).sqrt()) * 20.0 - 1e-9).ceil().clamp(0.0, 20.0) as i64 * 5;
        match shade {
            0 => self.round_step_open(),
            ..15 => self.round_step_cloth(shade),
            _ => self.round_step_layers(shade, layer),
        }
    }

    fn seed_reason(&self, why: &RoundReason, on: RoundOn<'_>) -> String {
        if let RoundReason::LotDead { since, killed_below_c } = why {
            let day = self.day_beside(*since, on.day);
            return match killed_below_c {
                Some(below) => self.round_lot_killed(day, self.number(*below, 1)),
                None => self.round_lot_dead(day),
            };
        }
        if let RoundReason::LotTestedDead { on: tested, seeds } = why {
            return self.round_lot_tested_dead(self.seeds(*seeds), self.day_beside(*tested, on.day));
        }
        if let RoundReason::LotPast { since, seeds_left, counted } = why {
            let past = self.round_lot_past(self.day_beside(*since, on.day));
            let left = seeds_left.map(|seeds| format!("; {}", self.round_seeds_left(self.seeds_left(seeds, *counted))));
            return format!("{past}{}", left.unwrap_or_default());
        }
        if let RoundReason::LotUntested { days, tested_before, seeds_left, counted } = why {
            let seeds = self.seeds_left(*seeds_left, *counted);
            return if *tested_before { self.round_tested(seeds, *days) } else { self.round_untested(seeds, *days) };
        }
        if let RoundReason::ReplicatesApart { days } = why {
            return self.round_replicates_apart(*days);
        }
        if let RoundReason::LifeEnds { days_left, life_days, kept, seeds_left, counted, .. } = why {
            let ends = self.round_life_ends(self.kept_name(*kept), *life_days, *days_left);
            let left = seeds_left.map(|seeds| format!("; {}", self.round_seeds_left(self.seeds_left(seeds, *counted))));
            return format!("{ends}{}", left.unwrap_or_default());
        }
        String::new()
    }

    fn ground_reason(&self, why: &RoundReason, on: RoundOn<'_>) -> String {
        let near = |day: Day| self.day_beside(day, on.day);
        let with_tray = |first: String, tray: Option<&ForTray>| match tray {
            Some(tray) => format!("{first}; {}", self.for_tray(tray, on)),
            None => first,
        };
        if let RoundReason::WorkMissing { done_on, eaten_on, tray, .. } = why {
            return with_tray(self.work_done(*done_on, *eaten_on, on), tray.as_ref());
        }
        if let RoundReason::RingWeeding { days_since, plants } = why {
            return self.round_rings(*plants, *days_since);
        }
        if let RoundReason::YoungDry { plants, dry_days, left, unread_days } = why {
            let found_dry = left.and_then(|left| match left.seen {
                Some(SeenWater::Dry(on)) if left.left_mm <= 0.0 => Some(on),
                _ => None,
            });
            if let Some(days) = unread_days {
                return self.round_water_feet(self.round_young_unread(*plants, *days));
            }
            let dry = match (dry_days, found_dry, left) {
                (Some(days), ..) => self.round_young_dry(*plants, *days),
                (None, Some(on), _) => self.round_young_found_dry(*plants, near(on)),
                (None, None, Some(left)) => {
                    self.round_young_short(*plants, self.number(left.left_mm, 0), self.number(left.full_mm, 0))
                }
                (None, None, None) => String::new(),
            };
            return self.round_water_feet(dry);
        }
        if let RoundReason::NursesNotCounted { days_since, alive } = why {
            return self.round_nurses(*alive, *days_since);
        }
        if let RoundReason::NurseWork(work) = why {
            return self.nurse_work_reason(work, on);
        }
        if let RoundReason::LightNotRead { last_read, tray } = why {
            let read = last_read.map_or_else(|| self.round_light_never(), |day| self.round_light_old(near(day)));
            return with_tray(read, Some(tray));
        }
        if let RoundReason::SoilNotKnown { read_dry, tray } = why {
            let read = if *read_dry { self.round_soil_dry() } else { self.round_soil_never() };
            return with_tray(read, Some(tray));
        }
        if let RoundReason::SurvivalDue { months, species, planted_on, planted, living } = why {
            let name = self.species_of(species, on.species);
            return self.round_survival(*months, *planted, name, near(*planted_on), *living);
        }
        String::new()
    }

    /// What is due on nurse plants.
    fn nurse_work_reason(&self, work: &NurseWork, on: RoundOn<'_>) -> String {
        let near = |day: &Day| self.day_beside(*day, on.day);
        let name = |key: &SpeciesKey| self.species_of(key, on.species);
        match work {
            NurseWork::Bunches { nurse, bunches, about } => self.round_bunches(*bunches, name(nurse), near(about)),
            NurseWork::Tubers { nurse, plants, until, loosens } => {
                let said = self.round_tubers(*plants, name(nurse), near(until));
                loosens.map_or(said.clone(), |positions| self.round_tubers_loosen(said, positions))
            }
            NurseWork::TooDark { species, light, least, at_once } => {
                let now = self.percent_beside(*light, &[*least]);
                self.round_too_dark(now, name(species), self.percent(*least), self.percent(*at_once))
            }
            NurseWork::SetNext(end) => self.shade_end_words(end, end.is_late(on.day)),
            NurseWork::PastLife { nurse, plants, ended } => self.round_past_life(*plants, name(nurse), near(ended)),
        }
    }

    /// When ground work was last done.
    pub(crate) fn work_done(&self, done_on: Option<Day>, eaten_on: Option<Day>, on: RoundOn<'_>) -> String {
        if let Some(eaten) = eaten_on {
            return self.round_fence_eaten(self.day_beside(eaten, on.day));
        }
        done_on.map_or_else(|| self.round_work_never(), |day| self.round_work_old(self.day_beside(day, on.day)))
    }

    /// The tray that a bed is made ready for, and how many more.
    pub(crate) fn for_tray(&self, tray: &ForTray, on: RoundOn<'_>) -> String {
        let species = self.species_of(&tray.species, on.species);
        let first = if tray.goes_today {
            self.round_for_tray_today(&tray.tray, species)
        } else if !tray.is_sure {
            self.round_for_tray_not_before(&tray.tray, species, self.day_beside(tray.ready_from, on.day))
        } else if tray.ready_from <= on.day {
            self.round_for_tray_now(&tray.tray, species)
        } else {
            self.round_for_tray(&tray.tray, species, self.day_beside(tray.ready_from, on.day))
        };
        if tray.others == 0 { first } else { format!("{first}, {}", self.round_for_more(i64::from(tray.others))) }
    }

    /// What of it the hands of today plant, and what they do not plant in time.
    fn hands_reason(&self, beds: &[ToBed], on: RoundOn<'_>) -> Option<String> {
        let rest_on = beds.iter().filter_map(|to| to.rest_on).max()?;
        let sum = |of: fn(&ToBed) -> u32| beds.iter().map(of).fold(0, u32::saturating_add);
        let (today, late) = (sum(|to| to.today), sum(|to| to.late));
        let day = self.day_beside(rest_on, on.day);
        let said = if today > 0 { self.round_hands_rest(today, day) } else { self.round_hands_not_today(day) };
        Some(if late > 0 { format!("{said}; {}", self.round_hands_late(late)) } else { said })
    }

    fn fits_reason(&self, beds: &[ToBed], (stays, measured): (u32, bool), no_place: u32, on: RoundOn<'_>) -> String {
        let going: Vec<String> = beds
            .iter()
            .filter(|to| to.after_others > 0)
            .map(|to| self.round_to_bed(to.after_others, &to.bed))
            .collect();
        if going.is_empty() {
            let beds: Vec<String> = beds.iter().map(|to| to.bed.to_string()).collect();
            return self.round_fits_taken(beds.join(", "));
        }
        let stay = (stays > 0).then(|| if measured { self.round_stays(stays) } else { self.round_not_sorted() });
        let no_place = (no_place > 0).then(|| self.round_no_place_left(no_place));
        [Some(going.join(", ")), self.hands_reason(beds, on), no_place, stay]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join("; ")
    }

    /// How seed is kept.
    pub(crate) fn kept_name(&self, kept: Kept) -> String {
        self.of_word(theme::KEPT, kept)
    }
}
