//! Beside the list: what is chosen, how many, what to take care of, and the loading list; below it where it is narrow.

use super::words::{by_bed, near, reason, warning};
use super::{GoingOut, Part};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::{Ink, answered_mark};
use crate::dashboard::parts::Sheet;
use crate::reckon::loading::warnings;
use crate::reckon::picture::{BedSpecies, PairPicture, TrayPicture};
use crate::reckon::{SharedOffer, shared_offers};
use crate::wording::verdict::About;

/// How much is said beside the list: as much as has room, so that no sentence is cut.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Telling {
    /// Only sums and what is wrong.
    Sums,
    /// The list bed by bed too.
    List,
    /// And the reasons of the pair.
    Reasons,
    /// And the figures of the tray.
    Figures,
    /// Everything.
    All,
}

impl GoingOut {
    /// The page beside the list.
    pub(super) fn side(&self, cx: &ScreenContext<'_>, width: u16, room: u16) -> Sheet {
        let all = [Telling::All, Telling::Figures, Telling::Reasons, Telling::List];
        let fits = |page: &Sheet| page.height() <= usize::from(room);
        let told = all.into_iter().map(|telling| self.side_of(telling, cx, width)).find(fits);
        told.unwrap_or_else(|| self.side_of(Telling::Sums, cx, width))
    }

    fn side_of(&self, telling: Telling, cx: &ScreenContext<'_>, width: u16) -> Sheet {
        let mut page = Sheet::new(width);
        if self.part != Part::Coming {
            self.how_many(cx, &mut page);
            self.chosen_words(telling, cx, &mut page);
        }
        self.list_words(telling, cx, &mut page);
        page
    }

    /// The lines below the list where it is narrow: what is wrong goes before the caution, which is said again before
    /// anything is written.
    pub(super) fn foot(&self, cx: &ScreenContext<'_>, width: u16, room: u16) -> Sheet {
        let mut page = Sheet::new(width);
        if self.part != Part::Coming {
            self.how_many(cx, &mut page);
        }
        if self.part != Part::Loading {
            if !self.lines.is_empty() {
                page.paragraph(&self.sum_words(cx), Ink::Plain);
            }
            let mut told = page.clone();
            self.shared_words(cx, &mut told);
            return if told.height() > usize::from(room) { page } else { told };
        }
        let mut told = page.clone();
        let wrong = warnings(&cx.book.picture, &self.lines);
        for one in &wrong {
            told.hanging("! ", Ink::Danger, &warning(one, cx), Ink::Plain);
        }
        if told.height() > usize::from(room) {
            page.hanging("! ", Ink::Danger, &cx.wording.load_warnings(wrong.len() as i64), Ink::Plain);
            return page;
        }
        let mut cautious = told.clone();
        if !self.lines.is_empty() {
            cautious.paragraph(&cx.wording.load_caution_short(), Ink::Plain);
        }
        if cautious.height() > usize::from(room) { told } else { cautious }
    }

    fn sum_words(&self, cx: &ScreenContext<'_>) -> String {
        let sum = self.lines.iter().map(|line| line.plants).fold(0, u32::saturating_add);
        cx.wording.load_sum(self.lines.len() as i64, i64::from(sum))
    }

    fn how_many(&self, cx: &ScreenContext<'_>, page: &mut Sheet) {
        let (Some((tray, bed)), Some(plants)) = (self.pair(), self.plants(cx)) else { return };
        let text = match self.listed(tray, bed) {
            Some(listed) => cx.wording.load_number_listed(tray, bed, i64::from(listed)),
            None if plants == 0 && !self.lines.is_empty() => format!("{tray} → {bed}: {}", cx.wording.load_full()),
            None => cx.wording.load_number(tray, bed, i64::from(plants)),
        };
        page.paragraph(&text, Ink::Strong);
    }

    fn chosen_words(&self, telling: Telling, cx: &ScreenContext<'_>, page: &mut Sheet) {
        if telling < Telling::Reasons {
            return;
        }
        let picture = &cx.book.picture;
        let Some(tray) = self.chosen.as_ref().and_then(|chosen| chosen.tray()) else { return };
        let Some(tray) = picture.trays.get(tray) else { return };
        let pair = self.pair().and_then(|(tray, bed)| picture.pair(tray, bed));
        let line = pair.and_then(|pair| {
            let bed = picture.beds.get(&pair.bed)?;
            bed.species.iter().find(|line| Some(&line.species) == tray.species.as_ref())
        });
        if telling >= Telling::Figures {
            tray_words(tray, line, cx, page);
        }
        self.shared_words(cx, page);
        match pair {
            Some(pair) => pair_words(pair, cx, page),
            None => page.paragraph(&cx.wording.not_planned(tray.species.as_ref(), &cx.book.picture), Ink::Plain),
        }
    }

    /// That the plants of the chosen tray, or the places of its bed, are offered more than once.
    fn shared_words(&self, cx: &ScreenContext<'_>, page: &mut Sheet) {
        let Some((tray, bed)) = self.pair() else { return };
        let concerns = |offer: &SharedOffer| match offer {
            SharedOffer::Tray { tray: offered, .. } => offered == tray,
            SharedOffer::Bed { bed: offered, trays, .. } => offered == bed && trays.contains(tray),
        };
        let picture = &cx.book.picture;
        for offer in shared_offers(picture).iter().filter(|offer| concerns(offer)) {
            page.hanging("! ", Ink::Waits, &cx.wording.shared_offer(offer, &picture.site.species), Ink::Plain);
        }
    }

    fn list_words(&self, telling: Telling, cx: &ScreenContext<'_>, page: &mut Sheet) {
        let wording = cx.wording;
        page.heading(&wording.load_heading());
        if self.lines.is_empty() {
            page.paragraph(&wording.load_empty(), Ink::Plain);
            return;
        }
        if self.part != Part::Loading && telling >= Telling::List {
            by_bed(&self.lines, cx, page);
        }
        page.paragraph(&self.sum_words(cx), Ink::Strong);
        for one in warnings(&cx.book.picture, &self.lines) {
            page.hanging("! ", Ink::Danger, &warning(&one, cx), Ink::Plain);
        }
        if telling < Telling::All {
            page.paragraph(&wording.load_caution_short(), Ink::Plain);
            return;
        }
        page.gap();
        page.paragraph(&wording.load_caution(), Ink::Plain);
        page.gap();
        page.paragraph(&wording.load_confirm_hint(), Ink::Plain);
    }
}

/// The figures of a tray and of the room for it.
fn tray_words(tray: &TrayPicture, line: Option<&BedSpecies>, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    let (plantable, best) = (wording.label_plantable(), wording.label_best_before());
    let (counted, place) = (wording.label_counted(), wording.label_place());
    let standing = wording.label_standing();
    page.labels([plantable.as_str(), best.as_str(), counted.as_str(), place.as_str(), standing.as_str()]);
    page.gap();
    page.paragraph(&cx.species(tray.species.as_ref()), Ink::Plain);
    page.labelled(&standing, &wording.plants(tray.standing));
    let basis = wording.basis_name(tray.plantable_basis);
    page.labelled(&plantable, &wording.known_how(wording.plants_range(tray.plantable), basis));
    if let Some(day) = tray.best_before {
        page.labelled(&best, &near(day, cx));
    }
    if let Some(day) = tray.counted_on {
        page.labelled(&counted, &near(day, cx));
    }
    if let Some(name) = &tray.place {
        page.labelled(&place, name.as_str());
    }
    if let Some(line) = line {
        page.labelled(&wording.load_room(), &wording.bed_has_open(line.open_positions, line.positions));
    }
}

/// What holds the pair back and what to take care of; all reasons stand behind `y`.
fn pair_words(pair: &PairPicture, cx: &ScreenContext<'_>, page: &mut Sheet) {
    page.gap();
    let shown = pair.criteria.iter().filter(|criterion| criterion.blocks || criterion.warns);
    let mut none = true;
    for criterion in shown {
        none = false;
        let (mark, ink) = answered_mark(criterion.answered());
        page.hanging(&format!("{mark} "), ink, &reason(criterion, About::Pair, cx), Ink::Plain);
    }
    if none {
        page.hanging("+ ", Ink::Good, &cx.wording.pair_fits_well(), Ink::Plain);
    }
}
