//! What could hurt somebody who does the work that a page speaks of: each caution in full, once, where the work stands.

use super::{Asked, Page, Tone};
use crate::base::LotCode;
use crate::nursery::caution::Caution;
use crate::reckon::picture::answered::Answered;
use crate::reckon::picture::{Criterion, PairPicture, TrayPicture};
use crate::reckon::round::tasks::work_for;
use crate::reckon::round::{Round, Stop};
use crate::reckon::sowing::SowingAsked;
use crate::wording::round::RoundOn;

/// The cautions a page has said.
#[derive(Default)]
pub(super) struct Care {
    said: Vec<Caution>,
    /// What leads over them is to be said here.
    owes_lead: bool,
}

impl Care {
    /// Those of a stop are said already, above the page, with what leads over them.
    pub(super) fn said_of(stop: Option<&Stop>) -> Care {
        Care { said: stop.map(Stop::cautions).unwrap_or_default(), owes_lead: false }
    }

    /// Says those that are not said yet, under what stands there.
    pub(super) fn say(&mut self, cautions: impl IntoIterator<Item = Caution>, asked: Asked<'_>, page: &mut Page) {
        let wording = asked.wording;
        for caution in cautions {
            if !self.said.contains(&caution) {
                self.owes_lead |= self.said.is_empty();
                self.said.push(caution);
                let line = wording.caution_line(wording.caution_label(), wording.caution_words(caution));
                page.line(2, line, Tone::Strong);
            }
        }
    }

    /// Says those of the work that questions ask for, under them.
    pub(super) fn say_of(&mut self, criteria: &[Criterion], asked: Asked<'_>, page: &mut Page) {
        self.say_whole(of_work(criteria), asked, page);
    }

    /// Says those that are not said yet; then once that rules, label and practice lead over all of it.
    pub(super) fn say_whole(&mut self, cautions: impl IntoIterator<Item = Caution>, asked: Asked<'_>, page: &mut Page) {
        self.say(cautions, asked, page);
        if std::mem::take(&mut self.owes_lead) {
            page.line(2, asked.wording.caution_leads(), Tone::Plain);
        }
    }
}

/// Of the work that questions ask for: those that are known not to be met, or hold back until somebody has looked.
pub(crate) fn of_work(criteria: &[Criterion]) -> Vec<Caution> {
    let asks = criteria.iter().filter(|criterion| criterion.answered() < Answered::Unknown);
    once(asks.filter_map(|criterion| work_for(criterion.rule())?.facts().caution))
}

/// Of everything that is due at a tray and of the work that its questions ask for.
pub(crate) fn of_tray(tray: &TrayPicture, round: &Round) -> Vec<Caution> {
    let of_stops = due_at(tray, round).flat_map(Stop::cautions);
    once(of_stops.chain(of_work(&tray.criteria)))
}

/// Of everything that is due at a lot, and of sowing where a number of seeds to sow is said.
pub(crate) fn of_lot(lot: &LotCode, sowing: &SowingAsked, round: &Round) -> Vec<Caution> {
    let sows = matches!(sowing.plan, Some(Ok(_))).then_some(Caution::Sowing);
    once(due_at_lot(lot, round).flat_map(Stop::cautions).chain(sows))
}

/// Of the work that a pair asks for, and of planting where it fits.
pub(crate) fn of_pair(pair: &PairPicture) -> Vec<Caution> {
    let planting = pair.fits.then_some(Caution::Planting);
    once(of_work(&pair.criteria).into_iter().chain(planting))
}

/// What the round has for a lot.
pub(super) fn due_at_lot<'a>(lot: &'a LotCode, round: &'a Round) -> impl Iterator<Item = &'a Stop> {
    round.stops.iter().chain(&round.can_wait).filter(move |stop| stop.lot() == Some(lot))
}

/// What the round has for a tray.
pub(super) fn due_at<'a>(tray: &'a TrayPicture, round: &'a Round) -> impl Iterator<Item = &'a Stop> {
    round.stops.iter().chain(&round.can_wait).filter(|stop| stop.tray() == Some(&tray.code))
}

/// What is due, as the round says it, each with what to take care of.
pub(super) fn say_due<'a>(due: impl Iterator<Item = &'a Stop>, care: &mut Care, asked: Asked<'_>, page: &mut Page) {
    let on = RoundOn { day: asked.picture.day, species: &asked.picture.site.species };
    let wording = asked.wording;
    for (number, stop) in due.enumerate() {
        if number == 0 {
            page.gap();
        }
        page.item(wording.why_due(wording.task_name(stop.task), wording.round_reason(&stop.why, on)));
        care.say(stop.cautions(), asked, page);
    }
}

fn once(cautions: impl Iterator<Item = Caution>) -> Vec<Caution> {
    let mut found = Vec::new();
    for caution in cautions {
        if !found.contains(&caution) {
            found.push(caution);
        }
    }
    found
}
