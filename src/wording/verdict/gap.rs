//! Why a question has no answer, what to do about it, and what part of a bed was seen.

use crate::base::text::cleaned;
use crate::base::{Day, SpeciesKey};
use crate::nursery::herbicide::may_have_no_label;
use crate::nursery::species::Catalogue;
use crate::reckon::picture::criterion::{RestsFrom, Soaking};
use crate::reckon::picture::quantity::{Beside, EndsBy, ShadeEnd};
use crate::reckon::picture::{Criterion, Gap, NoLight, PartSeen, Rule};
use crate::science::soil::{ROOT_LIMIT_MPA, rod_push_kg};
use crate::wording::Wording;

/// The figures of a shade band in a profile, as they are written.
const SHADE_BAND: &[&str] = &["outplant_shade_least_pct", "outplant_shade_most_pct"];
/// The figure of the last day in the container, as it is written.
const MOST_DAYS: &[&str] = &["plantable_most_days"];
/// The figure of bare roots, as it is written.
const BARE_ROOTS: &[&str] = &["bare_roots"];

impl Wording {
    fn too_hard_words(&self, mpa: f64, depth_cm: Option<f64>, rod_mm: f64) -> String {
        let (pushed, right) = (self.push_words(mpa, rod_mm), self.right_push(rod_mm));
        match depth_cm {
            Some(depth) => self.gap_rod_too_hard_at(self.number(depth, 0), pushed, right),
            None => self.gap_rod_too_hard(pushed, right),
        }
    }

    /// Plants that died of nobody knows what; of other gaps nothing.
    fn deaths_words(&self, gap: &Gap) -> String {
        match gap {
            Gap::ManyDied { on, gone, alive, again_from } => {
                self.gap_many_died(self.day(*on), *gone, *alive, self.day(*again_from))
            }
            Gap::CameFromDying { tray, plants, on, gone, alive, again_from } => {
                self.gap_came_from_dying(*plants, tray, self.day(*on), *gone, *alive, self.day(*again_from))
            }
            Gap::LeftDying { tray, plants, on, gone, alive } => {
                self.gap_left_dying(*plants, tray, self.day(*on), *gone, *alive)
            }
            Gap::SetOutFromDying { tray, plants, on, gone, alive } => {
                self.gap_set_out_from_dying(*plants, tray, self.day(*on), *gone, *alive)
            }
            Gap::DiedBeside { tray, on, gone, alive } => self.gap_died_beside(tray, self.day(*on), *gone, *alive),
            Gap::DiedInBed { tray, bed, on, gone, alive } => {
                self.gap_died_in_bed(tray, bed, self.day(*on), *gone, *alive)
            }
            Gap::SickInBed { tray, bed, on, what } => {
                self.gap_sick_in_bed(tray, bed, cleaned(&self.cause_told(what)), self.day(*on))
            }
            Gap::Harmed { on, gone, alive, what } => {
                self.gap_harmed(*gone, *alive, self.day(*on), cleaned(&self.cause_told(what)))
            }
            Gap::HarshWeather { on, celsius, cold: true } => self.gap_frost(self.day(*on), self.number(*celsius, 1)),
            Gap::HarshWeather { on, celsius, cold: false } => {
                self.gap_great_heat(self.day(*on), self.number(*celsius, 1))
            }
            Gap::GroundKills { on, dead, alive, what, again_from } => {
                let what = cleaned(&self.cause_told(what));
                self.gap_ground_kills(self.day(*on), *dead, what, *alive, self.day(*again_from))
            }
            Gap::MostOfBedDied { on, dead, alive, again_from } => {
                self.gap_most_of_bed_died(self.day(*on), *dead, *alive, self.day(*again_from))
            }
            _ => String::new(),
        }
    }

    /// Why a question has no answer, and what to write.
    pub(crate) fn gap_words(&self, gap: &Gap) -> String {
        match gap {
            Gap::ManyDied { .. }
            | Gap::CameFromDying { .. }
            | Gap::LeftDying { .. }
            | Gap::SetOutFromDying { .. }
            | Gap::DiedBeside { .. }
            | Gap::DiedInBed { .. }
            | Gap::SickInBed { .. }
            | Gap::Harmed { .. }
            | Gap::HarshWeather { .. }
            | Gap::GroundKills { .. }
            | Gap::MostOfBedDied { .. } => self.deaths_words(gap),
            Gap::FreshDung { with, on, until } => self.gap_fresh_dung(cleaned(with), self.day(*on), self.day(*until)),
            Gap::NoPlantBack { with, day, alive_from: None } => self.gap_no_plant_back(cleaned(with), self.day(*day)),
            Gap::NoPlantBack { with, day, alive_from: Some(alive) } => {
                self.gap_no_plant_back_plants(cleaned(with), self.day(*day), self.day(*alive))
            }
            Gap::MayBeScorched { with, day, alive_from } => {
                self.gap_may_be_scorched(cleaned(with), self.day(*day), self.day(*alive_from))
            }
            Gap::NoShadeBand(species) => {
                self.gap_no_shade_band(cleaned(species.as_str()), species_line(species, SHADE_BAND))
            }
            Gap::NoMostDays(species) => {
                self.gap_no_most_days(cleaned(species.as_str()), species_line(species, MOST_DAYS))
            }
            Gap::NoBareRoots(species) => {
                self.gap_no_bare_roots(cleaned(species.as_str()), species_line(species, BARE_ROOTS))
            }
            Gap::ReadDry => self.gap_read_dry(),
            Gap::ReadSoaked(Soaking { on, rain_mm: Some(mm) }) => {
                self.gap_read_after_rain(self.day(*on), self.number(*mm, 0))
            }
            Gap::ReadSoaked(Soaking { on, rain_mm: None }) => self.gap_read_soaked(self.day(*on)),
            Gap::RodTooHard { mpa, depth_cm, rod_mm } => self.too_hard_words(*mpa, *depth_cm, *rod_mm),
            Gap::RodTooWeak { mpa, depth_cm, rod_mm } => {
                let pushed = self.push_words(*mpa, *rod_mm);
                self.gap_rod_too_weak(self.number(*depth_cm, 0), pushed, self.right_push(*rod_mm))
            }
            Gap::AroundHole { depth_cm, rod_mm } => {
                self.gap_around_hole(self.number(*depth_cm, 0), self.push_words(ROOT_LIMIT_MPA, *rod_mm))
            }
            Gap::ReadTooShallow { depth_cm, needed_cm } => {
                self.gap_read_too_shallow(self.number(*depth_cm, 0), self.number(*needed_cm, 0))
            }
            Gap::GaugePartly { days_read, of_days, mm } => {
                self.gap_gauge_partly(*days_read, *of_days, self.number(*mm, 1))
            }
            Gap::LightReckoned(span) => self.gap_light_reckoned(self.span_words(*span)),
            Gap::LightNotReckoned(why) => self.light_not_reckoned(why),
            Gap::ShadeEnds { end, is_late } => self.shade_end_words(end, *is_late),
            Gap::LightSince { since, until } => self.gap_light_since(self.day(*since), self.day(*until)),
            Gap::NotLookedAt { came, keep_days } => self.gap_not_looked_at(self.day(*came), *keep_days),
            Gap::HeightOnArrival { cm, on } => self.gap_height_on_arrival(self.number(*cm, 0), self.day(*on)),
            Gap::SampleOld { on } => self.gap_sample_old(self.day(*on)),
            Gap::CameAfterSample { on } => self.gap_came_after_sample(self.day(*on)),
            Gap::RootsRest { since, until, why } => self.roots_rest(self.day(*since), self.day(*until), *why),
            Gap::PlugTells { on, until } => self.gap_plug_tells(self.day(*on), self.day(*until)),
            Gap::ComingDay => self.gap_coming_day(),
            Gap::ComingAfterDry { days, last } => self.gap_coming_after_dry(*days, self.day(*last)),
            Gap::ComingAfterDryLook { on } => self.gap_coming_after_dry_look(self.day(*on)),
            Gap::UnreadAfterDry { days, last } => self.gap_unread_after_dry(*days, self.day(*last)),
            Gap::NoWaitingTime { with, day, beside } => self.no_waiting_time(with, *day, beside.as_ref()),
        }
    }

    fn roots_rest(&self, since: String, until: String, why: RestsFrom) -> String {
        match why {
            RestsFrom::Cut => self.gap_roots_cut(since, until),
            RestsFrom::Move => self.gap_potted_on(since, until),
            RestsFrom::KeptTooLong => self.gap_kept_too_long(since, until),
            RestsFrom::TheWild => self.gap_wildlings(since, until),
            RestsFrom::TheWildAmong => self.gap_wildlings_among(since, until),
        }
    }

    /// What ends when, how much of the shade goes with it, and by when to set the next.
    pub(crate) fn shade_end_words(&self, end: &ShadeEnd, is_late: bool) -> String {
        let nurse = self.species_of(&end.nurse, &Catalogue::built_in());
        let (year, month, _) = end.about.ymd();
        let month = format!("{} {year}", self.month_short(month));
        let share = self.percent(end.share);
        let said = match end.by {
            EndsBy::Bunches(bunches) => self.shade_goes_with_bunches(month, share, bunches, nurse),
            EndsBy::Stems => self.shade_goes_with_stems(month, share, nurse),
            EndsBy::Age => self.shade_goes_by_age(month, share, nurse),
        };
        match end.set_next_by {
            Some(by) if is_late => self.shade_set_late(said, self.day(by)),
            Some(by) => self.shade_set_next(said, self.day(by)),
            None => said,
        }
    }

    /// Why the light of a bed is not reckoned.
    pub(crate) fn light_not_reckoned(&self, why: &NoLight) -> String {
        let said = |species: &SpeciesKey| self.species_of(species, &Catalogue::built_in());
        match why {
            NoLight::NoCrown(plant) => self.gap_light_no_crown(said(plant)),
            NoLight::NoAge(nurse) => self.gap_light_no_age(said(nurse)),
            NoLight::NoSpecies => self.gap_light_trees(),
            NoLight::TooMany => self.gap_light_too_many(),
        }
    }

    /// A waiting time that nobody wrote; of what may have no label also what to write then.
    fn no_waiting_time(&self, with: &str, day: Day, beside: Option<&Beside>) -> String {
        let (with, day) = (cleaned(with), self.day(day));
        let no_label = may_have_no_label(&with);
        let asked = match beside {
            None | Some(Beside::Bed) => self.gap_no_waiting_time(with, day),
            Some(Beside::Plants(tray)) => self.gap_no_waiting_time_plants(tray, with, day),
            Some(Beside::Place) => self.gap_no_waiting_time_here(with, day),
            Some(Beside::Stood(place)) => self.gap_no_waiting_time_stood(place, with, day),
            Some(Beside::Drifted(tray)) => self.gap_no_waiting_time_drifted(tray, with, day),
            Some(Beside::Tray(tray)) => self.gap_no_waiting_time_beside(tray, with, day),
        };
        if no_label { self.or_no_label(asked) } else { asked }
    }

    /// The push that tells hard ground from soft on a rod: "10 kg".
    fn right_push(&self, rod_mm: f64) -> String {
        self.number(rod_push_kg(ROOT_LIMIT_MPA, rod_mm).unwrap_or_default(), 0)
    }

    /// A reason with the part of the bed it was seen in, where that was not the whole.
    pub(super) fn in_part(&self, sentence: String, criterion: &Criterion) -> String {
        let Some(part) = &criterion.part else { return sentence };
        let was_read = matches!(criterion.rule(), Rule::LightNow | Rule::LightComing | Rule::Soil);
        if was_read { self.read_in_part(sentence, part) } else { self.done_in_part(sentence, part) }
    }

    fn read_in_part(&self, sentence: String, part: &PartSeen) -> String {
        match (&part.rows, part.of_rows) {
            (Some(rows), Some(of)) => self.part_rows_of(sentence, rows, of),
            (Some(rows), None) => self.part_rows(sentence, rows),
            (None, _) => self.part_places(sentence, part.places),
        }
    }

    fn done_in_part(&self, sentence: String, part: &PartSeen) -> String {
        match (&part.rows, part.of_rows) {
            (Some(rows), Some(of)) => self.part_done_rows_of(sentence, rows, of),
            (Some(rows), None) => self.part_done_rows(sentence, rows),
            (None, _) => self.part_done_places(sentence, part.places),
        }
    }
}

/// The command that puts figures into a profile; `...` stands where the figures go.
fn species_line(species: &SpeciesKey, figures: &[&str]) -> String {
    let fields: Vec<String> = figures.iter().map(|name| format!("\"{name}\": ...")).collect();
    format!("outplant write species_set species=\"{}\" profile='{{{}}}'", cleaned(species.as_str()), fields.join(", "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reckon::picture::quantity::LightSpan;
    use crate::wording::Lang;
    use std::collections::BTreeSet;

    fn shade_end(by: EndsBy) -> Gap {
        let end = ShadeEnd {
            nurse: SpeciesKey::new("PLA"),
            by,
            about: Day::from_number(20_700),
            share: 0.4,
            set_next_by: Some(Day::from_number(20_520)),
            entry: crate::base::EntryId { device: crate::base::DeviceId::new("kilima").unwrap(), seq: 1 },
        };
        Gap::ShadeEnds { end, is_late: false }
    }

    fn gaps_of_deaths() -> Vec<Gap> {
        vec![
            Gap::ManyDied { on: Day::from_number(20_000), gone: 30, alive: 18, again_from: Day::from_number(20_014) },
            Gap::CameFromDying {
                tray: "cof-1".parse().unwrap(),
                plants: 20,
                on: Day::from_number(20_000),
                gone: 30,
                alive: 18,
                again_from: Day::from_number(20_014),
            },
            Gap::LeftDying {
                tray: "cof-1".parse().unwrap(),
                plants: 20,
                on: Day::from_number(20_000),
                gone: 30,
                alive: 18,
            },
            Gap::SetOutFromDying {
                tray: "cof-1".parse().unwrap(),
                plants: 20,
                on: Day::from_number(20_000),
                gone: 30,
                alive: 18,
            },
            Gap::DiedBeside { tray: "cof-1".parse().unwrap(), on: Day::from_number(20_000), gone: 30, alive: 18 },
            Gap::DiedInBed {
                tray: "cof-1".parse().unwrap(),
                bed: "Upper 1".parse().unwrap(),
                on: Day::from_number(20_000),
                gone: 30,
                alive: 18,
            },
            Gap::SickInBed {
                tray: "cof-1".parse().unwrap(),
                bed: "Upper 1".parse().unwrap(),
                on: Day::from_number(20_000),
                what: "wilting".into(),
            },
            Gap::Harmed { on: Day::from_number(20_000), gone: 20, alive: 40, what: "rats".into() },
            Gap::HarshWeather { on: Day::from_number(20_000), celsius: -1.5, cold: true },
            Gap::HarshWeather { on: Day::from_number(20_000), celsius: 43.0, cold: false },
            Gap::GroundKills {
                on: Day::from_number(20_000),
                dead: 30,
                alive: 18,
                what: "flood".into(),
                again_from: Day::from_number(20_014),
            },
            Gap::MostOfBedDied {
                on: Day::from_number(20_000),
                dead: 30,
                alive: 18,
                again_from: Day::from_number(20_014),
            },
        ]
    }

    fn every_gap() -> Vec<Gap> {
        let own = SpeciesKey::new("Markhamia lutea");
        vec![
            Gap::NoShadeBand(own.clone()),
            Gap::NoMostDays(own),
            Gap::ReadDry,
            Gap::LightReckoned(LightSpan { share: 0.45, low: 0.3, high: 0.6 }),
            Gap::LightNotReckoned(NoLight::NoCrown(SpeciesKey::new("Markhamia lutea"))),
            Gap::LightNotReckoned(NoLight::NoAge(SpeciesKey::new("Markhamia lutea"))),
            Gap::LightNotReckoned(NoLight::NoSpecies),
            Gap::LightNotReckoned(NoLight::TooMany),
            shade_end(EndsBy::Bunches(20)),
            shade_end(EndsBy::Stems),
            shade_end(EndsBy::Age),
            Gap::SampleOld { on: Day::from_number(20_000) },
            Gap::NotLookedAt { came: Day::from_number(20_000), keep_days: 2 },
            Gap::CameAfterSample { on: Day::from_number(20_000) },
            Gap::RodTooHard { mpa: 13.7, depth_cm: Some(35.0), rod_mm: 8.0 },
            Gap::RodTooHard { mpa: 13.7, depth_cm: None, rod_mm: 8.0 },
            Gap::RodTooWeak { mpa: 1.2, depth_cm: 12.0, rod_mm: 8.0 },
            Gap::AroundHole { depth_cm: 50.0, rod_mm: 8.0 },
            Gap::ReadTooShallow { depth_cm: 10.0, needed_cm: 28.0 },
            Gap::GaugePartly { days_read: 2, of_days: 3, mm: 7.0 },
            Gap::LightSince { since: Day::from_number(20_000), until: Day::from_number(20_021) },
            Gap::PlugTells { on: Day::from_number(20_000), until: Day::from_number(20_021) },
            Gap::ComingDay,
            Gap::ComingAfterDry { days: 29, last: Day::from_number(20_000) },
            Gap::ComingAfterDryLook { on: Day::from_number(20_000) },
            Gap::UnreadAfterDry { days: 29, last: Day::from_number(20_000) },
            Gap::FreshDung { with: "manure".into(), on: Day::from_number(20_000), until: Day::from_number(20_028) },
            Gap::NoPlantBack { with: "glyphosate".into(), day: Day::from_number(20_000), alive_from: None },
            Gap::NoPlantBack {
                with: "glyphosate".into(),
                day: Day::from_number(20_000),
                alive_from: Some(Day::from_number(20_028)),
            },
            Gap::MayBeScorched {
                with: "glyphosate".into(),
                day: Day::from_number(20_000),
                alive_from: Day::from_number(20_028),
            },
            Gap::NoWaitingTime { with: "copper".into(), day: Day::from_number(20_000), beside: None },
            Gap::NoWaitingTime { with: "copper".into(), day: Day::from_number(20_000), beside: Some(Beside::Place) },
            Gap::NoWaitingTime {
                with: "copper".into(),
                day: Day::from_number(20_000),
                beside: Some(Beside::Tray("cof-1".parse().unwrap())),
            },
        ]
    }

    #[test]
    fn every_gap_has_a_sentence_of_its_own_in_both_languages() {
        let mut said = BTreeSet::new();
        for lang in Lang::ALL {
            let wording = Wording::new(lang);
            for gap in every_gap().into_iter().chain(gaps_of_deaths()) {
                let sentence = wording.gap_words(&gap);
                assert!(sentence.chars().count() > 20 && said.insert(sentence.clone()), "{lang:?}: {sentence}");
            }
        }
    }

    #[test]
    fn a_profile_without_a_figure_says_what_to_write() {
        let said = Wording::new(Lang::En).gap_words(&Gap::NoMostDays(SpeciesKey::new("Markhamia lutea")));
        assert!(
            said.contains(
                r#"outplant write species_set species="Markhamia lutea" profile='{"plantable_most_days": ...}'"#
            ),
            "{said}"
        );
    }
}
