//! The round: places in walking order, at each what to do, why, and what is lost without it.

use std::collections::{BTreeMap, BTreeSet};

use super::{Asked, Mark, Page, Tone, take_care};
use crate::base::SpeciesKey;
use crate::base::text::cleaned;
use crate::nursery::caution::Caution;
use crate::nursery::entry::subject::Subject;
use crate::reckon::picture::Picture;
use crate::reckon::round::to_write::LET_GO_DAYS;
use crate::reckon::round::{Round, RoundReason, Stop, Task};
use crate::reckon::tray::hold::{is_stake, looks_alive};
use crate::wording::Wording;
use crate::wording::round::RoundOn;
use crate::wording::verdict::About;

/// The round of a day.
pub(crate) fn walk(round: &Round, asked: Asked<'_>) -> Page {
    let mut answer = Walk {
        picture: asked.picture,
        wording: asked.wording,
        page: Page::default(),
        cautions: BTreeSet::new(),
        plants: BTreeSet::new(),
    };
    answer.heading(round);
    answer.stay_away(round);
    answer.stops(&round.stops);
    answer.worth(round);
    answer.rest(round);
    if asked.picture.trays.is_empty() && asked.picture.beds.is_empty() {
        answer.page.first_tray(asked.wording);
        answer.page.sentence(asked.wording.teach_sheet());
        answer.page.line(1, "outplant import trays.csv --as trays".to_string(), Tone::Strong);
    }
    answer.page
}

/// Ground work of one bed that is for one tray and to be done by one day.
fn is_same_work(a: &Stop, b: &Stop) -> bool {
    let tray = |stop: &Stop| {
        let RoundReason::WorkMissing { tray, .. } = &stop.why else { return None };
        Some(tray.as_ref().map(|tray| tray.tray.clone()))
    };
    tray(a).is_some() && tray(a) == tray(b) && a.subject == b.subject && a.until == b.until
}

/// Whether a tray is ready and the places it fits are taken by trays that can wait less.
fn has_no_place(stop: &Stop) -> bool {
    matches!(&stop.why, RoundReason::Fits { beds, .. } if beds.iter().all(|to| to.after_others == 0))
}

/// The sign of a stop; of those that lose most another one.
fn mark_of(loses_most: bool) -> Mark {
    let (sign, tone) = if loses_most { ("!", Tone::Danger) } else { ("-", Tone::Plain) };
    Mark::Sign(sign.to_string(), tone)
}

/// Trays, benches and beds under a waiting time, those of one reason together: people walk past them.
pub(crate) fn away(round: &Round, picture: &Picture, wording: &Wording) -> Vec<String> {
    let mut by_reason: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for (subject, treated) in &round.stay_away {
        let about = if let Subject::Bed(_) = subject { About::Bed } else { About::Tray };
        let name = match subject {
            Subject::Tray(code) => {
                let place = picture.trays.get(code).and_then(|tray| tray.place.as_ref());
                format!("{code}{}", place.map(|place| format!(" ({place})")).unwrap_or_default())
            }
            Subject::Place(name) => name.to_string(),
            Subject::Bed(name) => name.to_string(),
            Subject::Lot(code) => code.to_string(),
            Subject::Site => String::new(),
        };
        by_reason.entry(wording.reason(treated, about)).or_default().push(name);
    }
    by_reason.into_iter().map(|(why, names)| wording.stay_away(names.join(", "), why)).collect()
}

/// That plants are looked at before they go out, where their waiting time has just ended and nobody did.
pub(crate) fn first_look(stop: &Stop, wording: &Wording) -> Option<String> {
    let after = stop.after_wait.as_ref().filter(|after| stop.task == Task::GoOut && !after.looked)?;
    Some(wording.look_first(cleaned(&after.with), wording.day(after.over_on)))
}

struct Walk<'a> {
    picture: &'a Picture,
    wording: &'a Wording,
    page: Page,
    /// What was said already at a stop before.
    cautions: BTreeSet<Caution>,
    plants: BTreeSet<SpeciesKey>,
}

impl Walk<'_> {
    fn heading(&mut self, round: &Round) {
        let wording = self.wording;
        if round.stops.is_empty() && round.can_wait.is_empty() {
            self.page.gap();
            self.page.sentence(wording.round_nothing());
            return;
        }
        let minutes = wording.number(round.minutes.ceil(), 0);
        let allowed = wording.number(round.minutes_allowed, 0);
        self.page.heading(wording.round_heading(round.stops.len() as i64, minutes, allowed));
        let text = if round.work_minutes > 0.0 {
            wording.work_heading(wording.number(round.minutes_allowed, 0), wording.work_time(round.work_minutes))
        } else {
            wording.work_heading_none(wording.number(round.minutes_allowed, 0))
        };
        self.page.sentence(text);
        if round.stops.iter().any(|stop| stop.marked) {
            self.page.sentence(wording.round_mark_means());
        }
        if round.stops.iter().any(|stop| !stop.cautions().is_empty()) {
            self.page.sentence(format!("{} {}", wording.caution_said_first(), wording.caution_leads()));
        }
    }

    /// What nobody touches: no stop is there. Where the time is not known a stop asks for it as well.
    fn stay_away(&mut self, round: &Round) {
        for text in away(round, self.picture, self.wording) {
            self.page.marked(0, mark_of(true), text, Tone::Strong);
        }
    }

    /// The stops under the places they are at.
    fn stops(&mut self, stops: &[Stop]) {
        let mut here: Option<&Stop> = None;
        for together in stops.chunk_by(is_same_work) {
            let [stop, others @ ..] = together else { continue };
            if here.is_none_or(|before| before.at != stop.at || before.order.leg != stop.order.leg) {
                self.place(stop);
            }
            here = Some(stop);
            if others.is_empty() { self.stop(stop) } else { self.work(together) }
        }
    }

    fn place(&mut self, stop: &Stop) {
        let wording = self.wording;
        let name = wording.stop_place(&stop.at, &stop.subject);
        let sign = stop.place_sign.as_ref().map(|sign| format!("  {}", wording.sign(sign))).unwrap_or_default();
        self.page.heading(format!("{name}{sign}"));
    }

    fn stop(&mut self, stop: &Stop) {
        let wording = self.wording;
        let on = RoundOn { day: self.picture.day, species: &self.picture.site.species };
        let why = wording.round_reason(&stop.why, on);
        let sign = stop.tray_sign.as_ref().map(|sign| format!(" {}", wording.sign(sign))).unwrap_or_default();
        let about = wording.stop_about(stop.task, &stop.subject, self.picture);
        self.page.marked(0, mark_of(stop.marked), format!("{about}{sign}: {why}"), Tone::Plain);
        let figures = self.figures(stop);
        if !figures.is_empty() {
            self.page.line(2, figures.join("; "), Tone::Plain);
        }
        self.watch(stop);
        self.care(std::slice::from_ref(stop));
    }

    /// What to take care of with plants that go out, and with bare roots until they do.
    fn watch(&mut self, stop: &Stop) {
        let Some(tray) = stop.tray().and_then(|code| self.picture.trays.get(code)) else { return };
        if let Some(first) = first_look(stop, self.wording) {
            self.page.line(2, first, Tone::Waits);
        }
        if let RoundReason::Fits { beds, .. } = &stop.why {
            let all = beds.iter().filter_map(|to| self.picture.pair(&tray.code, &to.bed));
            if let Some(care) = take_care(&all.collect::<Vec<_>>(), self.wording) {
                self.page.line(2, care, Tone::Waits);
            }
        }
        if tray.story.is_bare() && matches!(stop.task, Task::GoOut | Task::LastDay) {
            let profile = tray.species.as_ref().and_then(|key| self.picture.site.profile(key));
            let stump = is_stake(&tray.story, profile.map(|profile| &**profile));
            let care = self.wording.bare_care(stump, looks_alive(profile.map(|profile| &**profile)));
            self.page.line(2, care, Tone::Plain);
        }
    }

    /// What could hurt somebody here, and the plants that can: in full where no stop before said it already, then in short.
    fn care(&mut self, together: &[Stop]) {
        let wording = self.wording;
        let mut said = Vec::new();
        let mut cautions: Vec<Caution> = Vec::new();
        for caution in together.iter().flat_map(Stop::cautions) {
            if !cautions.contains(&caution) {
                cautions.push(caution);
            }
        }
        for caution in cautions {
            let first = self.cautions.insert(caution);
            let line = if first { wording.caution_words(caution) } else { wording.caution_in_short(caution) };
            said.push((wording.caution_label(), line));
        }
        let mut plants: Vec<SpeciesKey> = together.iter().flat_map(|stop| stop.plants_handled(self.picture)).collect();
        plants.dedup();
        let species = &self.picture.site.species;
        let mut again: Vec<String> = Vec::new();
        plants.retain(|key| {
            let first = self.plants.insert(key.clone());
            let known = !first && wording.plant_danger(key, species).is_some();
            again.extend(Some(wording.species_of(key, species)).filter(|name| known && !again.contains(name)));
            first
        });
        let dangers = wording.plant_dangers(&wording.caution_plant_label(), &plants, species);
        let again = Some((wording.caution_plant_label(), again.join(", "))).filter(|(_, names)| !names.is_empty());
        for (label, line) in said.into_iter().chain(dangers).chain(again) {
            self.page.line(2, wording.caution_line(label, line), Tone::Strong);
        }
    }

    /// Several kinds of ground work of one bed for one tray, as one stop.
    fn work(&mut self, together: &[Stop]) {
        let wording = self.wording;
        let on = RoundOn { day: self.picture.day, species: &self.picture.site.species };
        let mut parts = Vec::new();
        let mut tray = None;
        for stop in together {
            if let RoundReason::WorkMissing { done_on, eaten_on, tray: coming, .. } = &stop.why {
                parts.push(wording.work_part(wording.task_name(stop.task), wording.work_done(*done_on, *eaten_on, on)));
                tray = tray.or(coming.as_ref());
            }
        }
        parts.extend(tray.map(|tray| wording.for_tray(tray, on)));
        let marked = together.iter().any(|stop| stop.marked);
        self.page.marked(0, mark_of(marked), parts.join("; "), Tone::Plain);
        let most = together.iter().max_by(|a, b| a.at_stake.plants.total_cmp(&b.at_stake.plants));
        let Some(most) = most else { return };
        let all: f64 = together.iter().map(|stop| stop.work_minutes.unwrap_or(stop.minutes)).sum();
        let text = [wording.until_words(most, on), wording.or_else_lost(most), self.work_of(Some(all))];
        let text: Vec<String> = text.into_iter().filter(|text| !text.is_empty()).collect();
        self.page.line(2, text.join("; "), Tone::Plain);
        self.care(together);
    }

    fn work_of(&self, minutes: Option<f64>) -> String {
        minutes.map(|minutes| self.wording.work_takes(self.wording.work_time(minutes))).unwrap_or_default()
    }

    /// The last figure, what to expect, until when, and what is lost.
    fn figures(&self, stop: &Stop) -> Vec<String> {
        let wording = self.wording;
        let last = wording.stop_last(stop).map(|(figure, day)| {
            let day = wording.day_beside(day, self.picture.day);
            wording.round_last(figure, day)
        });
        let expect = wording.stop_expect(stop).map(|text| {
            let is_good = stop.task == Task::GoOut;
            if is_good { wording.round_expect_good(text) } else { wording.round_expect(text) }
        });
        let on = RoundOn { day: self.picture.day, species: &self.picture.site.species };
        let (until, lost) = (wording.until_words(stop, on), wording.or_else_lost(stop));
        let work = Some(self.work_of(stop.work_minutes)).filter(|work| !work.is_empty());
        [last, expect, Some(until), Some(lost), work].into_iter().flatten().collect()
    }

    /// The looks worth most for each minute.
    fn worth(&mut self, round: &Round) {
        let wording = self.wording;
        let shown: Vec<String> = round
            .worth_shown()
            .filter_map(|worth| {
                let stop = round.stops.iter().chain(&round.can_wait).find(|stop| stop.id == worth.stop)?;
                let about = match &stop.subject {
                    Subject::Bed(bed) => {
                        wording.round_about(wording.stop_about(stop.task, &stop.subject, self.picture), bed)
                    }
                    Subject::Place(place) => {
                        wording.round_about(wording.stop_about(stop.task, &stop.subject, self.picture), place)
                    }
                    Subject::Tray(_) | Subject::Lot(_) | Subject::Site => {
                        wording.stop_about(stop.task, &stop.subject, self.picture)
                    }
                };
                Some(wording.worth_line_words(about, worth))
            })
            .collect();
        if shown.is_empty() {
            return;
        }
        self.page.heading(wording.worth_heading());
        shown.into_iter().for_each(|line| self.page.item(line));
    }

    /// What can wait in one line, and how to let a task go.
    fn rest(&mut self, round: &Round) {
        let wording = self.wording;
        if !round.can_wait.is_empty() {
            let mut counted: BTreeMap<(Task, bool), usize> = BTreeMap::new();
            round.can_wait.iter().for_each(|stop| *counted.entry((stop.task, has_no_place(stop))).or_default() += 1);
            let mut counted: Vec<((Task, bool), usize)> = counted.into_iter().collect();
            counted.sort_by_key(|(kind, number)| (std::cmp::Reverse(*number), *kind));
            let text = |((task, no_place), number): ((Task, bool), usize)| {
                if no_place { wording.tasks_no_place(number as i64) } else { wording.tasks_counted(task, number) }
            };
            let list: Vec<String> = counted.into_iter().map(text).collect();
            self.page.gap();
            let text = wording.round_can_wait(round.can_wait.len() as i64, list.join(", "));
            self.page.sentence(text);
        }
        let not_the_gauge = |stop: &&Stop| stop.task != Task::Gauge;
        if let Some(stop) = round.stops.iter().chain(&round.can_wait).find(not_the_gauge) {
            self.page.gap();
            let until = self.picture.day.plus(LET_GO_DAYS);
            self.page.sentence(wording.round_let_go(wording.task_typed(&stop.id), until));
        }
    }
}
