//! The main answer in short: one plan of the day, then what waits, shortest first, and the beds; the whole is `ready`.

use std::collections::BTreeSet;

use super::ready::Ready;
use super::rows::{Named, Offer, TrayRow};
use super::{Asked, Page, Tone, take_care};
use crate::base::{Day, TrayCode};
use crate::reckon::loading::{LoadLine, Planned, day_plan};
use crate::reckon::picture::{BedPicture, BedSpecies, Looking, Pair, Stage, TrayPicture};
use crate::reckon::round::hands;

/// Trays of the plan, of those whose places others fill, of those without a bed, of those that wait, and lines of beds
/// that wait; the rest is counted. So many that the answer is read on two screens of a small terminal. Ours.
const MOST_PLANNED: usize = 12;
const MOST_FILLED: usize = 12;
const MOST_WITHOUT_BED: usize = 4;
const MOST_WAITING: usize = 5;
const MOST_BEDS: usize = 4;

/// What to load today, and what the rest waits for, in short.
pub(crate) fn today(asked: Asked<'_>, since: Option<String>) -> Page {
    let mut answer = Ready::new(asked);
    let mut hidden = false;
    answer.plan(&mut hidden);
    if let Some(since) = since {
        answer.page.gap();
        answer.page.sentence(since);
    }
    answer.short_without_bed(&mut hidden);
    answer.waiting(&mut hidden);
    answer.short_beds(&mut hidden);
    answer.doubts();
    answer.unplanned();
    if hidden {
        answer.page.gap();
        answer.page.sentence(asked.wording.ready_all_hint());
    }
    answer.page
}

impl Ready<'_> {
    /// What to load first, each plant and each place once; then the trays whose places others fill.
    fn plan(&mut self, hidden: &mut bool) {
        let wording = self.wording;
        let is_today = self.picture.looking == Looking::Today;
        let day = wording.day(self.picture.day);
        self.page.heading(if is_today { wording.day_plan_heading() } else { wording.day_plan_heading_on(day.clone()) });
        let plan = day_plan(self.picture);
        if plan.is_empty() {
            self.page.sentence(if is_today { wording.ready_none() } else { wording.ready_none_on(day) });
            return;
        }
        let today = plan.iter().filter(|one| one.today > 0);
        let lines: Vec<LoadLine> = today.map(|one| LoadLine { plants: one.today, ..one.line.clone() }).collect();
        let planned: BTreeSet<&TrayCode> = plan.iter().map(|one| &one.line.tray).collect();
        let mut seen: BTreeSet<&TrayCode> = BTreeSet::new();
        let trays: Vec<&TrayCode> = lines.iter().map(|line| &line.tray).filter(|tray| seen.insert(tray)).collect();
        self.page.offers(trays.iter().take(MOST_PLANNED).map(|tray| self.load_of(tray, &lines)).collect());
        self.count_more(trays.len(), MOST_PLANNED, hidden);
        self.without_hands(&plan);
        let left: Vec<String> = self
            .trays()
            .filter(|tray| self.has_fit(&tray.code) && !planned.contains(&tray.code))
            .map(|tray| tray.code.to_string())
            .collect();
        if !left.is_empty() {
            let mut codes = left[..left.len().min(MOST_FILLED)].to_vec();
            if left.len() > MOST_FILLED {
                codes.push(wording.ready_more((left.len() - MOST_FILLED) as i64));
                *hidden = true;
            }
            self.page.line(1, wording.plan_places_filled(left.len() as i64, codes.join(", ")), Tone::Plain);
        }
    }

    /// What the hands of the day do not plant, when they do and by when it must be, and what they do not plant in time.
    fn without_hands(&mut self, plan: &[Planned]) {
        let (wording, day) = (self.wording, self.picture.day);
        let Some(a_day) = hands(self.picture) else { return };
        let rest = plan.iter().filter_map(|one| Some((one, one.rest_on?)));
        let rest: Vec<String> = rest
            .map(|(one, on)| {
                let plants = one.line.plants - one.today;
                let on = wording.day_beside(on, day);
                match one.last {
                    Some(last) => wording.plan_rest_by(&one.line.tray, plants, on, wording.day_beside(last, day)),
                    None => wording.plan_rest_on(&one.line.tray, plants, on),
                }
            })
            .collect();
        if !rest.is_empty() {
            self.page.line(1, wording.plan_hands(a_day, rest.join(", ")), Tone::Plain);
        }
        let late = plan.iter().filter(|one| one.late > 0);
        let late: Vec<String> = late.map(|one| wording.plan_of_tray(&one.line.tray, one.late)).collect();
        if !late.is_empty() {
            self.page.line(1, wording.plan_late(late.join(", ")), Tone::Strong);
        }
    }

    fn load_of(&self, tray: &TrayCode, lines: &[LoadLine]) -> Offer {
        let known = self.picture.trays.get(tray);
        let same: Vec<&LoadLine> = lines.iter().filter(|line| line.tray == *tray).collect();
        let pairs: Vec<&Pair> = same.iter().filter_map(|line| self.picture.pair(tray, &line.bed)).collect();
        Offer {
            tray: tray.to_string(),
            species: known.map(|tray| self.species(tray)).unwrap_or_default(),
            to: same.iter().map(|line| (self.wording.plants(line.plants), line.bed.to_string())).collect(),
            before: known.and_then(|tray| self.go_by(tray, pairs.first().copied())).unwrap_or_default(),
            care: take_care(&pairs, self.wording).unwrap_or_default(),
        }
    }

    fn short_without_bed(&mut self, hidden: &mut bool) {
        let mut rows = self.rows_without_bed();
        if rows.is_empty() {
            return;
        }
        let all = rows.len();
        rows.truncate(MOST_WITHOUT_BED);
        self.page.heading(self.without_bed_heading());
        self.page.trays(vec![(None, rows)]);
        self.count_more(all, MOST_WITHOUT_BED, hidden);
    }

    /// The trays that are not ready, those that wait shortest first; what only a person can end has no day and comes last.
    fn waiting(&mut self, hidden: &mut bool) {
        let mut trays: Vec<&TrayPicture> = self
            .trays()
            .filter(|tray| !tray.ready && tray.stage != Stage::Spent && !self.has_fit(&tray.code))
            .collect();
        let day = |tray: &TrayPicture| -> Option<Day> { tray.ready_from.or_else(|| tray.not_before()) };
        trays.sort_by_key(|tray| (tray.stage != Stage::Overdue, day(tray).is_none(), day(tray)));
        let rows: Vec<TrayRow> = trays.iter().take(MOST_WAITING).map(|tray| self.waiting_row(tray)).collect();
        if rows.is_empty() {
            return;
        }
        self.page.heading(self.wording.waiting_heading());
        self.page.trays(vec![(None, rows)]);
        self.count_more(trays.len(), MOST_WAITING, hidden);
        self.spared();
    }

    /// The beds that are open in one line, then those of which least is missing.
    fn short_beds(&mut self, hidden: &mut bool) {
        let wording = self.wording;
        let all: Vec<(&BedPicture, &BedSpecies)> =
            self.picture.beds.values().flat_map(|bed| bed.species.iter().map(move |one| (&**bed, one))).collect();
        if all.is_empty() {
            return;
        }
        self.page.heading(wording.beds_heading());
        let blocks = |one: &BedSpecies| one.criteria.iter().filter(|criterion| criterion.blocks).count();
        let (open, mut waits): (Vec<_>, Vec<_>) = all.into_iter().partition(|(_, one)| blocks(one) == 0);
        let named = |(bed, one): &(&BedPicture, &BedSpecies)| {
            let species = wording.species_of(&one.species, &self.picture.site.species);
            wording.bed_open_for(&bed.name, species, one.open_positions)
        };
        if !open.is_empty() {
            let list: Vec<String> = open.iter().map(named).collect();
            self.page.line(0, wording.open_beds(list.join(", ")), Tone::Plain);
        }
        // A bed that is full waits for nothing a person could do.
        waits.retain(|(_, one)| one.open_positions > 0);
        waits.sort_by_key(|(_, one)| blocks(one));
        let mut rows: Vec<(&BedPicture, Named)> = Vec::new();
        for (bed, one) in waits {
            let row = self.bed_line(bed, one);
            // What a bed waits for is said once for all its species.
            match rows.iter_mut().find(|(other, said)| other.name == bed.name && said.text == row.text) {
                Some((_, said)) => said.name = bed.name.to_string(),
                None => rows.push((bed, Named { name: wording.bed_and_species(&bed.name, &row.name), ..row })),
            }
        }
        self.count_beds(rows.into_iter().map(|(_, row)| row).collect(), hidden);
    }

    fn count_beds(&mut self, mut rows: Vec<Named>, hidden: &mut bool) {
        let all = rows.len();
        rows.truncate(MOST_BEDS);
        self.page.named(rows);
        self.count_more(all, MOST_BEDS, hidden);
    }

    fn count_more(&mut self, all: usize, shown: usize, hidden: &mut bool) {
        if all > shown {
            *hidden = true;
            self.page.line(1, self.wording.ready_more((all - shown) as i64), Tone::Plain);
        }
    }
}
