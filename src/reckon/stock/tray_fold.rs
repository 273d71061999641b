//! From the entries of a tray to its story. Refuses nothing: what cannot be true together becomes a Doubt and the
//! difference is booked under unexplained.

use std::sync::Arc;

use super::lineage::{Lineage, holds_of, is_written_after, lineage_of, wildlings_bagged};
use super::tray::{CountLook, Graft, Origin, PartLook, SampleLook, Since, Sowing, TrayStory};
use crate::base::{Day, SpeciesKey, TrayCode};
use crate::nursery::entry::subject::{Subject, is_unknown_lot};
use crate::nursery::entry::types::{Count, PlantForm, Text};
use crate::nursery::entry::{Counted, Entry, GroundEntry, MovedOn, PlantsReceived, Resown, Sown, TrayEntry, What};
use crate::reckon::impossible::{doubts_of, more_of};
use crate::reckon::ledger::Ledger;
use crate::reckon::picture::{Doubt, DoubtKind};
use crate::reckon::site::Site;

/// A rise in a tray without seed up to this many plants, or this share of what stands, corrects the earlier count
/// (ours, common practice: a hand count misses a few).
const MISCOUNT_PLANTS: u64 = 2;
const MISCOUNT_SHARE: f64 = 0.05;

/// Folds the entries of a tray.
pub(crate) fn fold_tray(ledger: &Ledger, site: &Site, code: &TrayCode) -> TrayStory {
    let mut fold = TrayFold {
        ledger,
        site,
        story: TrayStory::blank(code.clone()),
        gap: 0,
        gap_day: None,
        gap_look: None,
        lost_since_look: 0,
        up_unseen: 0,
        slip: None,
        let_go: None,
    };
    for entry in ledger.of(&Subject::Tray(code.clone())) {
        fold.story.entries.push(entry.id.clone());
        fold.story.last_on = fold.story.last_on.max(Some(entry.happened));
        fold.take(entry);
    }
    fold.note_order_doubts();
    fold.story.doubts.extend(doubts_of(ledger, &Subject::Tray(code.clone())));
    fold.story
}

struct TrayFold<'a> {
    ledger: &'a Ledger,
    site: &'a Site,
    story: TrayStory,
    /// Of the last look's fall, what nothing explained: a loss written for the same day fills it.
    gap: u64,
    gap_day: Option<Day>,
    /// Which of the looks that was.
    gap_look: Option<usize>,
    /// Losses written since the last look, which a look's `dead` may repeat.
    lost_since_look: u64,
    /// Seedlings that came up and went between two looks.
    up_unseen: u64,
    /// The last whole count, where it is far more than can have stood.
    slip: Option<Slip>,
    /// The last letting go of a hold.
    let_go: Option<Arc<Entry>>,
}

/// A count of far more than can have stood, and what it moved in the books: a slip of the pen, once the next count says so.
struct Slip {
    from_seed: u64,
    twins: u64,
    unexplained: u64,
    /// Its place among the counts.
    at: usize,
}

/// A count of at least so many times what can have stood is a slip of the pen if the next whole count finds no more than
/// could have stood before it (ours).
const SLIP_TIMES: u64 = 2;

impl TrayFold<'_> {
    fn take(&mut self, entry: &Arc<Entry>) {
        let before = self.story.accounts.lost_in_all();
        self.take_in(entry);
        if self.story.young_until().is_some_and(|last| entry.happened <= last) {
            let accounts = &mut self.story.accounts;
            let after = accounts.lost_in_all();
            accounts.lost_young = (accounts.lost_young + after).saturating_sub(before);
        }
    }

    fn take_in(&mut self, entry: &Arc<Entry>) {
        match &entry.what {
            What::Tray(what) => self.take_tray(entry, what),
            What::Ground(GroundEntry::Outplanted(out)) => {
                let count = self.out(entry, u64::from(out.count.0));
                self.story.accounts.planted += count;
                self.story.first_planted.get_or_insert(entry.happened);
            }
            What::Ground(_) | What::Site(_) | What::Seed(_) | What::Book(_) | What::Foreign { .. } => {}
        }
    }

    fn take_tray(&mut self, entry: &Arc<Entry>, what: &TrayEntry) {
        let story = &mut self.story;
        match what {
            TrayEntry::Sown(sown) => self.sown(entry, sown),
            TrayEntry::Resown(resown) => self.resown(entry, resown),
            TrayEntry::PlantsReceived(received) => self.received(entry, received),
            TrayEntry::Counted(look) => self.counted(entry, look),
            TrayEntry::Stocktaken(look) => self.stocktaken(entry, u64::from(look.standing.0)),
            TrayEntry::Lost(lost) => {
                story.gone.extend(Since::gone(entry, Some(story.accounts.standing)));
                self.lost(entry, u64::from(lost.count.0), &lost.cause);
            }
            TrayEntry::Culled(culled) => {
                // A cull of none throws nothing out.
                story.culled_on.extend((culled.count.0 > 0).then_some(entry.happened));
                story.gone.extend(Since::gone(entry, Some(story.accounts.standing)));
                self.culled(entry, u64::from(culled.count.0), &culled.why);
            }
            TrayEntry::MovedOn(moved) => self.moved(entry, moved),
            TrayEntry::GivenOut(given) => {
                let count = self.out(entry, u64::from(given.count.0));
                self.story.accounts.given_out += count;
            }
            TrayEntry::Measured(sample) => {
                self.sampled(entry, as_count(sample.plants.len() as u64));
                let plants = sample.plants.clone();
                self.story.samples.push(SampleLook { day: entry.happened, plants, entry: entry.id.clone() });
                self.seen(entry);
            }
            TrayEntry::Carried(carried) => story.places.push(Since::begun_by(entry, carried.place.clone())),
            TrayEntry::PlugChecked(plug) => {
                story.plugs.push(Since::begun_by(entry, plug.roots));
                story.wildlings_by_plug(plug.roots);
                self.seen(entry);
            }
            TrayEntry::RootsCut(cut) => {
                self.worked_on(entry, cut.count.map_or(0, |count| count.0));
                self.story.cut_roots(entry, cut.count.map(|count| count.0));
            }
            TrayEntry::Grafted(grafted) => {
                self.worked_on(entry, grafted.count.0);
                self.story.grafts.push(Since::begun_by(entry, Graft::written(grafted)));
            }
            TrayEntry::Flushed(_) => {
                story.flush(entry);
                self.seen(entry);
            }
            TrayEntry::ShadeSet(step) => story.shades.push(Since::begun_by(entry, step.shade_pct.0)),
            TrayEntry::WateringSet(step) => story.waterings.push(Since::begun_by(entry, step.every_days.0)),
            TrayEntry::HardeningBegun(begun) => {
                story.hardening_begun.push(Since::begun_by(entry, begun.for_bed.clone()));
            }
            TrayEntry::Held(held) => {
                story.held.write(Since::hold(entry, held));
                self.seen(entry);
            }
            TrayEntry::Released(released) => {
                if story.held.let_go(&mut story.held_before, released) {
                    story.released_on = Some(entry.happened);
                    self.let_go = Some(entry.clone());
                }
            }
            TrayEntry::PestSeen(pest) => {
                story.pests.push(Since::pest(entry, pest, Some(story.accounts.standing)));
                self.seen(entry);
            }
            TrayEntry::Treated(treated) => {
                story.treatments.write(entry.happened, treated, entry.id.clone());
                self.seen(entry);
            }
            // A label is settled in the ledger; a task let go is of the site.
            TrayEntry::Relabelled(_) | TrayEntry::LetGo(_) => {}
        }
    }

    fn sampled(&mut self, entry: &Arc<Entry>, sample: u32) {
        if let Some(stood) = self.fewer_stand(entry, sample).or_else(|| self.fewer_can_stand(sample)) {
            self.doubt(entry, DoubtKind::SampleLarger { tray: self.story.code.clone(), sample, stood });
        }
    }

    /// Plants whose roots were cut, or that were grafted.
    fn worked_on(&mut self, entry: &Arc<Entry>, worked: u32) {
        if let Some(stood) = self.fewer_stand(entry, worked).or_else(|| self.fewer_can_stand(worked)) {
            self.doubt(entry, DoubtKind::WorkedOnMore { tray: self.story.code.clone(), worked, stood });
        }
    }

    /// How many stand by the books, where that and all its seed can give are fewer than so many that somebody had in hand: while nobody
    /// counted what came up, it is no more.
    fn fewer_can_stand(&self, in_hand: u32) -> Option<u32> {
        let accounts = &self.story.accounts;
        let most = accounts.standing + accounts.seed + self.twins_possible();
        let known = self.story.origin.is_some() && !self.story.seed_unknown;
        (known && u64::from(in_hand) > most + missed_of(most)).then(|| as_count(accounts.standing))
    }

    /// How many stand, where that is fewer than so many that somebody had in hand, but for those a hand count misses. While
    /// seed is due more may have come up than anybody counted; of a tray nobody made nothing is known.
    fn fewer_stand(&self, entry: &Arc<Entry>, in_hand: u32) -> Option<u32> {
        let stood = self.story.accounts.standing;
        let known = self.story.origin.is_some() && !self.story.seed_is_due(entry.happened);
        // Nobody counted since the seed came up: the books hold no number to go by.
        let counted = !self.story.counts.is_empty() || self.story.accounts.arrived + self.story.accounts.moved_in > 0;
        (known && counted && u64::from(in_hand) > stood + missed_of(stood)).then(|| as_count(stood))
    }

    fn sown(&mut self, entry: &Arc<Entry>, sown: &Sown) {
        self.made(entry, Origin::Sown);
        let lot = (!is_unknown_lot(&sown.lot)).then(|| sown.lot.clone());
        let written = sown.species.clone();
        let species = lot.as_ref().and_then(|lot| super::lineage::species_of_lot(self.ledger, lot)).or(written);
        self.settle_species(entry, species);
        let by_mass = || {
            let mass_g = sown.mass_g?.0;
            super::lot::seeds_of_mass(self.ledger, self.site, lot.as_ref(), self.story.species.as_ref(), mass_g)
        };
        let seeds = sown.seeds.map(|seeds| seeds.0).or_else(by_mass);
        self.put_seed(entry, lot, seeds);
        self.story.cells = sown.cells.map(|cells| cells.0).or(self.story.cells);
        self.story.sign = sown.sign.as_ref().map(|sign| sign.0.to_string()).or(self.story.sign.take());
        self.enter_container(entry, Some(sown.container.clone()));
        self.stand(entry, sown.place.as_ref());
    }

    fn resown(&mut self, entry: &Arc<Entry>, resown: &Resown) {
        let lot = (!is_unknown_lot(&resown.lot)).then(|| resown.lot.clone());
        let species = lot.as_ref().and_then(|lot| super::lineage::species_of_lot(self.ledger, lot));
        self.settle_species(entry, species);
        self.put_seed(entry, lot, Some(resown.seeds.0));
    }

    fn put_seed(&mut self, entry: &Arc<Entry>, lot: Option<crate::base::LotCode>, seeds: Option<u32>) {
        let story = &mut self.story;
        story.accounts.sown += u64::from(seeds.unwrap_or(0));
        story.accounts.seed += u64::from(seeds.unwrap_or(0));
        story.seed_unknown |= seeds.is_none();
        story.sowings.push(Sowing { day: entry.happened, lot, seeds, entry: entry.id.clone() });
        let profile = story.species.as_ref().and_then(|key| self.site.profile(key));
        let last = profile.and_then(|profile| profile.emerge_last_days.as_ref()).map(|figure| figure.value);
        story.seed_due_until = last.map(|days| entry.happened.plus(days.ceil() as i32));
    }

    fn received(&mut self, entry: &Arc<Entry>, received: &PlantsReceived) {
        let bagged = wildlings_bagged(received, entry.happened);
        let wild = bagged.map(|from| Since { from, what: received.count.0, entry: entry.id.clone() });
        self.story.wildlings.extend(wild);
        let origin = Origin::Received {
            from: received.from,
            form: received.form,
            age_days: received.age_days.map(|age| age.0.min(100_000) as i32),
            good_until: received.good_until,
            heeled_in: received.heeled_in == Some(true),
            stands_since: received.stands_since,
            height_cm: received.height_cm.map(|height| height.0),
            light_share: received.shade_now_pct.map(|shade| 1.0 - shade.0 / 100.0),
            day: entry.happened,
            entry: entry.id.clone(),
        };
        self.made(entry, origin);
        self.settle_species(entry, Some(received.species.clone()));
        let accounts = &mut self.story.accounts;
        accounts.arrived += u64::from(received.count.0);
        accounts.standing += u64::from(received.count.0);
        self.story.sign = received.sign.as_ref().map(|sign| sign.0.to_string()).or(self.story.sign.take());
        self.enter_container(entry, received.container.clone());
        self.stand(entry, received.place.as_ref());
    }

    fn moved(&mut self, entry: &Arc<Entry>, moved: &MovedOn) {
        let key = self.ledger.key_of(entry);
        let (from, to) = (self.ledger.tray_at(&moved.from, &key), self.ledger.tray_at(&moved.to, &key));
        if from == to {
            // A change of label can make one tray of two codes: nothing moves.
            return;
        }
        if from == self.story.code {
            let count = self.out(entry, u64::from(moved.count.0));
            self.story.accounts.moved_out += count;
            self.story.moves_out.push(Since::begun_by(entry, (to, as_count(count))));
            return;
        }
        let mut lineage: Lineage = lineage_of(self.ledger, self.site, &moved.from, &key);
        let circling = lineage.circling_in(moved.count.0);
        let new = self.story.origin.is_none();
        lineage.went_on(moved.count.0, entry.happened, !new);
        self.bring_along(&mut lineage);
        if self.let_go.as_ref().is_none_or(|let_go| !is_written_after(let_go, entry)) {
            self.story.held_before.extend(holds_of(self.ledger, &from, &key));
        }
        if new {
            self.story.origin = Some(match lineage.received {
                Some(received) => potted(received),
                None => Origin::MovedOn(moved.how),
            });
            self.story.made_on = Some(entry.happened);
            self.story.moved_how = Some(moved.how);
        }
        self.settle_species(entry, lineage.species);
        self.story.sowings.extend(lineage.sowings);
        self.story.sowings.sort_by(|a, b| (a.day, &a.entry).cmp(&(b.day, &b.entry)));
        self.story.sowings.dedup_by(|a, b| a.entry == b.entry);
        self.story.begun_on.extend(lineage.begun_on);
        self.story.bare_until.extend(lineage.bare_until);
        self.story.treatments.bring(lineage.treatments);
        self.story.stays_before.extend(lineage.stays);
        self.story.moves_in.push(Since::begun_by(entry, moved.count.0));
        self.story.culled_on.extend(lineage.culled_on);
        let known = self.story.gone.iter().map(|gone| gone.entry.clone()).collect::<Vec<_>>();
        self.story.gone.extend(lineage.gone.into_iter().filter(|gone| !known.contains(&gone.entry)));
        self.story.cut_before = self.story.cut_before.max(lineage.last_cut);
        let known = self.story.pests.iter().map(|pest| pest.entry.clone()).collect::<Vec<_>>();
        for pest in &mut self.story.pests {
            // More came out of the tray in which it was seen.
            let again = lineage.pests.iter().find(|other| other.entry == pest.entry).and_then(|other| other.what.came);
            pest.what.came = pest.what.came.map(|came| came.saturating_add(again.unwrap_or(0)));
        }
        self.story.pests.extend(lineage.pests.into_iter().filter(|pest| !known.contains(&pest.entry)));
        if circling.is_some() && !(new && self.story.cut_as_they_came(entry.happened, moved.count.0)) {
            // Roots that circled go on circling in a larger container until they are cut.
            self.story.circling_from_before = circling;
        }
        let accounts = &mut self.story.accounts;
        accounts.moved_in += u64::from(moved.count.0);
        accounts.standing += u64::from(moved.count.0);
        self.story.cells = moved.cells.map(|cells| cells.0).or(self.story.cells);
        if new || moved.container.is_some() {
            self.enter_container(entry, moved.container.clone());
        }
        self.stand(entry, moved.place.as_ref());
    }

    /// What plants that were moved on bring along in part of them.
    fn bring_along(&mut self, lineage: &mut Lineage) {
        let story = &mut self.story;
        story.grafts.append(&mut lineage.grafts);
        story.newcomers.append(&mut lineage.newcomers);
        story.wildlings.extend(lineage.bagged_wildlings());
        story.flushes.append(&mut lineage.flushes);
        story.flushes.sort_by_key(|flush| flush.from);
    }

    fn made(&mut self, entry: &Arc<Entry>, origin: Origin) {
        if self.story.origin.is_some() {
            self.doubt(entry, DoubtKind::TwiceMade(self.story.code.clone()));
            return;
        }
        self.story.origin = Some(origin);
        self.story.made_on = Some(entry.happened);
    }

    fn settle_species(&mut self, entry: &Arc<Entry>, written: Option<SpeciesKey>) {
        let Some(written) = written else { return };
        let key = self.site.species_key(&written);
        if key.is_none() {
            self.doubt(entry, DoubtKind::UnknownSpecies(written.clone()));
        }
        let other = key.unwrap_or(written);
        match self.story.species.clone() {
            None => self.story.species = Some(other),
            Some(species) if species != other => {
                let tray = self.story.code.clone();
                self.doubt(entry, DoubtKind::TwoSpecies { tray, species, other });
            }
            Some(_) => {}
        }
    }

    fn enter_container(&mut self, entry: &Arc<Entry>, container: Option<crate::base::ContainerName>) {
        self.story.containers.push(Since::begun_by(entry, container));
    }

    fn stand(&mut self, entry: &Arc<Entry>, place: Option<&crate::base::PlaceName>) {
        if let Some(place) = place {
            self.story.places.push(Since::begun_by(entry, place.clone()));
        }
    }

    /// Takes plants out of the tray; what was not there comes from unexplained, with a Doubt.
    fn out(&mut self, entry: &Arc<Entry>, count: u64) -> u64 {
        self.seen(entry);
        let stood = self.story.accounts.standing;
        if count > stood {
            let kind = DoubtKind::MoreOutThanStood {
                tray: self.story.code.clone(),
                out: as_count(count),
                stood: as_count(stood),
            };
            self.doubt(entry, kind);
            self.story.accounts.unexplained += as_difference(count - stood);
            self.story.accounts.standing = 0;
        } else {
            self.story.accounts.standing -= count;
        }
        count
    }

    /// Seedlings that died or were thrown out before anybody had counted them came up all the same: while seed is due,
    /// what did not stand yet by the books comes from the seed, and the next look counts it as emerged.
    fn come_up_unseen(&mut self, entry: &Arc<Entry>, count: u64) {
        let missing = count.saturating_sub(self.story.accounts.standing);
        if missing == 0 || !self.story.seed_is_due(entry.happened) {
            return;
        }
        let up = missing.min(self.story.accounts.seed);
        self.story.accounts.seed -= up;
        self.story.accounts.standing += up;
        self.up_unseen += up;
    }

    fn lost(&mut self, entry: &Arc<Entry>, count: u64, cause: &Text) {
        let filled = self.fill_gap(entry, count);
        self.come_up_unseen(entry, count - filled);
        let rest = self.out(entry, count - filled);
        self.lost_since_look += rest;
        *self.story.accounts.lost.entry(cause.0.clone()).or_insert(0) += count;
    }

    fn culled(&mut self, entry: &Arc<Entry>, count: u64, why: &Text) {
        let filled = self.fill_gap(entry, count);
        self.come_up_unseen(entry, count - filled);
        self.out(entry, count - filled);
        *self.story.accounts.culled.entry(why.0.clone()).or_insert(0) += count;
    }

    /// A loss written for the day of a look whose fall nothing explained fills that gap and is not subtracted again.
    fn fill_gap(&mut self, entry: &Arc<Entry>, count: u64) -> u64 {
        if self.gap_day != Some(entry.happened) {
            return 0;
        }
        let filled = count.min(self.gap);
        self.gap -= filled;
        self.story.accounts.not_seen -= filled;
        if let Some(look) = self.gap_look.and_then(|at| self.story.counts.get_mut(at)) {
            look.not_seen = look.not_seen.saturating_sub(as_count(filled));
        }
        filled
    }

    fn stocktaken(&mut self, entry: &Arc<Entry>, standing: u64) {
        self.story.part_look = None;
        // What a stocktake settles is settled: no earlier gap is left to fill.
        (self.gap, self.gap_day, self.gap_look) = (0, None, None);
        self.put_slip_right(standing);
        let accounts = &mut self.story.accounts;
        let missed = accounts.standing.saturating_sub(standing);
        let found = standing.saturating_sub(accounts.standing);
        accounts.unexplained += as_difference(standing) - as_difference(accounts.standing);
        accounts.standing = standing;
        // A stocktake settles what was doubted about the numbers before it.
        self.story.doubts.retain(|doubt| !settled_by_stocktake(&doubt.kind));
        self.remember(
            entry,
            &Counted {
                tray: self.story.code.clone(),
                standing: Count(as_count(standing)),
                dead: None,
                about: None,
                cells_seen: None,
                cells_filled: None,
            },
        );
        if let Some(look) = self.story.counts.last_mut() {
            look.stocktake = true;
            look.not_seen = as_count(missed);
            look.corrected = as_count(found);
        }
    }

    fn counted(&mut self, entry: &Arc<Entry>, look: &Counted) {
        if self.story.origin.is_none() {
            self.seen(entry);
        } else if look.standing.0 == 0 && self.is_empty(entry.happened) {
            self.doubt(entry, DoubtKind::LookAtEmpty(self.story.code.clone()));
        }
        let cells = self.story.cells.map(Count);
        if let Some(why) = more_of("cells_seen", look.cells_seen, "cells", cells) {
            self.doubt(entry, DoubtKind::CannotBe(why));
        }
        self.remember(entry, look);
        let part = look.cells_seen.is_some_and(|seen| self.story.cells.is_none_or(|cells| seen.0 < cells));
        if part {
            if let Some(last) = self.story.counts.last_mut() {
                last.part_of_cells = look.cells_seen.map(|cells| cells.0);
            }
            self.seen_in_part(entry, look);
            return;
        }
        self.story.part_look = None;
        self.story.doubts.retain(|doubt| !matches!(doubt.kind, DoubtKind::PartCountApart { .. }));
        let dead = look.dead.map_or(0, |dead| u64::from(dead.0)).saturating_sub(self.lost_since_look);
        self.lost_since_look = 0;
        (self.gap, self.gap_day, self.gap_look) = (0, Some(entry.happened), None);
        let up_unseen = std::mem::take(&mut self.up_unseen);
        if let Some(last) = self.story.counts.last_mut() {
            last.emerged = as_count(up_unseen);
            last.dead = as_count(dead);
        }
        // What must have stood for this count to be true: what stands now and what was found dead.
        let standing = u64::from(look.standing.0);
        let stood = standing + dead;
        self.put_slip_right(stood);
        let books = self.story.accounts.standing;
        if stood >= books {
            self.risen(entry, stood - books, books, standing);
            self.take_dead(dead);
        } else {
            let fall = books - standing;
            self.take_dead(dead.min(fall));
            let gap = fall - dead.min(fall);
            self.story.accounts.standing -= gap;
            self.story.accounts.not_seen += gap;
            self.gap = gap;
            self.gap_look = self.story.counts.len().checked_sub(1);
            if let Some(last) = self.story.counts.last_mut() {
                last.not_seen = as_count(gap);
            }
        }
    }

    /// Takes out of the books what a slip of the pen put in, where the next whole count finds no more than could have stood.
    fn put_slip_right(&mut self, stood: u64) {
        let Some(slip) = self.slip.take() else { return };
        let accounts = &mut self.story.accounts;
        let put_in = slip.from_seed + slip.twins + slip.unexplained;
        if stood > accounts.standing.saturating_sub(slip.unexplained) || put_in > accounts.standing {
            return;
        }
        accounts.standing -= put_in;
        accounts.seed += slip.from_seed;
        accounts.twins -= slip.twins;
        accounts.unexplained -= as_difference(slip.unexplained);
        if let Some(look) = self.story.counts.get_mut(slip.at) {
            look.emerged = look.emerged.saturating_sub(as_count(slip.from_seed + slip.twins));
            look.corrected = 0;
            let of_it = |doubt: &Doubt| doubt.entries.contains(&look.entry);
            let of_slip =
                |kind: &DoubtKind| matches!(kind, DoubtKind::MoreThanSeed { .. } | DoubtKind::RiseWithoutSeed { .. });
            self.story.doubts.retain(|doubt| !(of_it(doubt) && of_slip(&doubt.kind)));
        }
    }

    /// A count of part of the cells moves no number of the books; it says how far they may be off.
    fn seen_in_part(&mut self, entry: &Arc<Entry>, look: &Counted) {
        let Some(seen) = look.cells_seen.map(|cells| cells.0).filter(|seen| *seen > 0) else { return };
        let books = self.story.accounts.standing;
        let (day, standing) = (entry.happened, look.standing.0);
        // Where nobody wrote how many cells a tray has, its plants stand one to a bag.
        let one_each = !self.story.seed_is_due(day) && standing <= seen;
        let bags = one_each.then(|| as_count(books).max(seen));
        let Some(cells) = self.story.cells.or(bags) else { return };
        let part = PartLook { day, seen, cells, standing, books, entry: entry.id.clone() };
        if part.contradicts() && !self.story.seed_is_due(day) {
            let tray = self.story.code.clone();
            self.doubt(entry, DoubtKind::PartCountApart { tray, standing, seen, cells, books: as_count(books) });
        }
        self.story.part_look = Some(part);
    }

    fn take_dead(&mut self, dead: u64) {
        if dead > 0 {
            let accounts = &mut self.story.accounts;
            accounts.standing -= dead;
            *accounts.lost.entry(Arc::from(FOUND_DEAD)).or_insert(0) += dead;
        }
    }

    fn is_empty(&self, day: Day) -> bool {
        self.story.accounts.standing == 0 && !self.story.seed_is_due(day)
    }

    /// A rise: emergence while seed is due; a correction of the earlier count otherwise.
    fn risen(&mut self, entry: &Arc<Entry>, rise: u64, books: u64, counted: u64) {
        if rise == 0 {
            return;
        }
        let due = self.story.seed_is_due(entry.happened);
        let small = rise <= missed_of(books);
        let mut left = rise;
        let mut corrected = 0;
        if !due && small {
            // The plants were there all along: first those that an earlier low count had booked as lost.
            let back = left.min(self.story.accounts.not_seen);
            self.story.accounts.not_seen -= back;
            corrected += back;
            left -= back;
        }
        let accounts = &mut self.story.accounts;
        let from_seed = left.min(accounts.seed);
        accounts.seed -= from_seed;
        left -= from_seed;
        if !due && small {
            corrected += from_seed;
        }
        let mut emerged = if !due && small { 0 } else { from_seed };
        let mut twins = 0;
        if left > 0 && self.story.seed_unknown && due {
            self.story.accounts.sown += left;
            emerged += left;
            left = 0;
        }
        if left > 0 && (accounts_sown(&self.story) > 0) {
            twins = left.min(self.twins_possible());
            self.story.accounts.twins += twins;
            emerged += twins;
            left -= twins;
        }
        if left > 0 {
            self.unexplained_rise(entry, left, books, counted, small);
            corrected += left;
            let at = self.story.counts.len().saturating_sub(1);
            let far = counted >= SLIP_TIMES.saturating_mul(books + from_seed + twins);
            self.slip = (far && !small).then_some(Slip { from_seed, twins, unexplained: left, at });
        }
        self.story.accounts.standing += rise;
        if let Some(last) = self.story.counts.last_mut() {
            last.emerged = last.emerged.saturating_add(as_count(emerged));
            last.corrected = as_count(corrected);
        }
    }

    fn unexplained_rise(&mut self, entry: &Arc<Entry>, left: u64, books: u64, counted: u64, small: bool) {
        self.story.accounts.unexplained += as_difference(left);
        let (books, counted) = (as_count(books), as_count(counted));
        let tray = self.story.code.clone();
        if accounts_sown(&self.story) > 0 {
            let most = as_count(self.story.accounts.sown + self.story.accounts.twins);
            self.doubt(entry, DoubtKind::MoreThanSeed { tray, counted, most });
        } else if !small {
            self.doubt(entry, DoubtKind::RiseWithoutSeed { tray, books, counted });
        }
    }

    /// How many more seedlings the seeds can still give beyond one each.
    fn twins_possible(&self) -> u64 {
        let profile = self.story.species.as_ref().and_then(|key| self.site.profile(key));
        let each =
            profile.and_then(|profile| profile.seedlings_per_seed_most.as_ref()).map_or(1.0, |figure| figure.value);
        let most = (self.story.accounts.sown as f64 * (each - 1.0).max(0.0)).floor().min(f64::from(u32::MAX)) as u64;
        most.saturating_sub(self.story.accounts.twins)
    }

    fn remember(&mut self, entry: &Arc<Entry>, look: &Counted) {
        self.story.counts.push(CountLook {
            day: entry.happened,
            standing: look.standing.0,
            about: look.about.unwrap_or(false),
            part_of_cells: None,
            cells_filled: look.cells_filled.map(|cells| cells.0),
            emerged: 0,
            corrected: 0,
            not_seen: 0,
            dead: 0,
            stocktake: false,
            entry: entry.id.clone(),
        });
    }

    /// Notes that an entry speaks of a tray that nothing made.
    fn seen(&mut self, entry: &Arc<Entry>) {
        if self.story.origin.is_none() {
            self.doubt(entry, DoubtKind::UnknownTray(self.story.code.clone()));
        }
    }

    fn doubt(&mut self, entry: &Arc<Entry>, kind: DoubtKind) {
        self.story.doubts.push(Doubt { day: entry.happened, kind, entries: vec![entry.id.clone()] });
    }

    /// Two devices that moved numbers of this tray on one day, one of them by counting: the other order may give other
    /// numbers.
    fn note_order_doubts(&mut self) {
        let code = self.story.code.clone();
        let mut doubts = Vec::new();
        let entries: Vec<&Arc<Entry>> =
            self.ledger.of(&Subject::Tray(code.clone())).filter(|entry| moves_numbers(&entry.what)).collect();
        for day in entries.chunk_by(|a, b| a.happened == b.happened) {
            let Some(first) = day.first() else { continue };
            let devices = day.iter().any(|entry| entry.id.device != first.id.device);
            let counted = day.iter().any(|entry| matches!(entry.what, What::Tray(TrayEntry::Counted(_))));
            if devices && counted && day.len() > 1 {
                doubts.push(Doubt {
                    day: first.happened,
                    kind: DoubtKind::OrderMatters(code.clone()),
                    entries: day.iter().map(|entry| entry.id.clone()).collect(),
                });
            }
        }
        let settled = self.story.counts.iter().rev().find(|look| look.stocktake).map(|look| look.day);
        doubts.retain(|doubt| settled.is_none_or(|day| doubt.day > day));
        self.story.doubts.extend(doubts);
    }
}

/// Plants from elsewhere that were moved on stand in a container of ours: bare roots and stumps are none any more.
fn potted(origin: Origin) -> Origin {
    match origin {
        Origin::Received {
            from,
            form: PlantForm::BareRoot | PlantForm::Stump,
            age_days,
            height_cm,
            light_share,
            day,
            entry,
            ..
        } => Origin::Received {
            from,
            form: PlantForm::Bag,
            age_days,
            good_until: None,
            heeled_in: false,
            stands_since: None,
            height_cm,
            light_share,
            day,
            entry,
        },
        Origin::Received { .. } | Origin::Sown | Origin::MovedOn(_) => origin,
    }
}

/// How many of so many plants a hand count misses.
pub(crate) fn missed_of(plants: u64) -> u64 {
    MISCOUNT_PLANTS.max((plants as f64 * MISCOUNT_SHARE).ceil() as u64)
}

/// The cause under which plants found dead at a count are booked.
pub(crate) const FOUND_DEAD: &str = "found dead";

fn accounts_sown(story: &TrayStory) -> u64 {
    story.accounts.sown
}

/// A number of plants as a count for views.
fn as_count(plants: u64) -> u32 {
    u32::try_from(plants).unwrap_or(u32::MAX)
}

/// A number of plants as a difference; no book holds enough entries to pass its end.
fn as_difference(plants: u64) -> i64 {
    i64::try_from(plants).unwrap_or(i64::MAX)
}

fn settled_by_stocktake(kind: &DoubtKind) -> bool {
    matches!(
        kind,
        DoubtKind::MoreOutThanStood { .. }
            | DoubtKind::MoreThanSeed { .. }
            | DoubtKind::RiseWithoutSeed { .. }
            | DoubtKind::OrderMatters(_)
            | DoubtKind::LookAtEmpty(_)
            | DoubtKind::PartCountApart { .. }
            | DoubtKind::SampleLarger { .. }
            | DoubtKind::WorkedOnMore { .. }
    )
}

fn moves_numbers(what: &What) -> bool {
    what.facts().is_some_and(|facts| facts.moves_numbers)
}
