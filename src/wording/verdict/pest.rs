//! Pests and sicknesses that were seen, and what answers them.

use crate::base::Day;
use crate::nursery::pest::{ground_kills, stings};
use crate::reckon::picture::Measure;
use crate::reckon::picture::quantity::{Beside, BroughtBy, LeavesAtLeast, LookAt, NotSo, PestLacks, PestSeen};
use crate::reckon::picture::question::Found;
use crate::wording::Wording;

impl Wording {
    pub(super) fn pest_reason(&self, found: &Found<NotSo, Option<PestSeen>>, blocks: bool) -> String {
        let Some(seen) = &found.known else { return self.pest_met() };
        let (what, day) = (crate::base::text::cleaned(&self.cause_told(&seen.what)), self.day(seen.on));
        if let Some((by, lacks)) = seen.brought.as_ref().zip(seen.lacks) {
            return self.pest_brought_reason(what, day, by, lacks);
        }
        if let Some(beside) = &seen.beside {
            return match beside {
                Beside::Tray(tray) => self.pest_beside_tray(tray, what, day),
                Beside::Place | Beside::Bed | Beside::Plants(_) | Beside::Stood(_) | Beside::Drifted(_) => {
                    self.pest_beside_place(what, day)
                }
            };
        }
        if let Some((out_of, lacks)) = seen.out_of.as_ref().zip(seen.lacks) {
            let next = self.pest_next(lacks, seen.is_sign, None);
            if let Some(bed) = &out_of.bed {
                return self.pest_set_out_of(&out_of.tray, bed, self.day(out_of.left), what, day, next);
            }
            return match out_of.together {
                true => self.pest_together(&out_of.tray, self.day(out_of.left), what, day, next),
                false => self.pest_out_of(out_of.plants, &out_of.tray, what, day, next),
            };
        }
        let stood = seen.left.as_ref();
        let what = stood.map_or(what.clone(), |(place, left)| self.pest_where_they_stood(what, place, self.day(*left)));
        // The leaves of a bed's plants are no question of what goes in now.
        if let Some(leaves) = seen.leaves.filter(|_| !seen.in_bed) {
            return self.pest_leaves_reason(seen, leaves, blocks);
        }
        if let Some(plants) = seen.of_shade {
            return self.pest_on_shade(what, day, plants);
        }
        if stings(&seen.what) {
            return if seen.in_bed { self.pest_stings(what, day) } else { self.pest_stings_here(what, day) };
        }
        if seen.in_bed && ground_kills(&seen.what) {
            return self.pest_hurt_ground(what, day);
        }
        let next = seen.lacks.map(|lacks| self.pest_next(lacks, seen.is_sign, seen.count_from));
        match (next, seen.in_bed) {
            (Some(next), true) if blocks => self.pest_holds_bed(what, day, next),
            (Some(next), true) => self.pest_in_ground(what, day, next),
            (None, true) if blocks && seen.share_pct.is_none() => self.pest_eats_bed_uncounted(what, day),
            (None, true) if blocks => self.pest_eats_bed(what, day),
            (None, true) => self.pest_in_bed(what, day),
            (Some(_), false) if seen.lacks == Some(PestLacks::Kind) => {
                let asked = self.pest_unknown(what, day);
                seen.count_from.map_or(asked.clone(), |from| self.pest_next_or_count(asked, self.day(from)))
            }
            (Some(next), false) if seen.in_stem => self.pest_in_stem(what, day, next),
            (Some(next), false) if seen.is_sign => self.pest_may_spread(what, day, next),
            (Some(next), false) if seen.in_soil && seen.is_set_apart() => self.pest_of_soil_apart(what, day, next),
            (Some(next), false) if seen.in_soil => self.pest_of_soil(what, day, next),
            (Some(next), false) => self.pest_spreads(what, day, next),
            (None, false) => match (seen.share_pct.map(|share| self.percent(share / 100.0)), blocks) {
                (Some(share), true) => self.pest_on_many(what, day, share),
                (Some(share), false) => self.pest_on_few(what, day, share),
                (None, _) => self.pest_not_counted(what, day),
            },
        }
    }

    /// Leaves that were lost to what goes along with no plant.
    fn pest_leaves_reason(&self, seen: &PestSeen, leaves: LeavesAtLeast, blocks: bool) -> String {
        let (what, day) = (crate::base::text::cleaned(&self.cause_told(&seen.what)), self.day(seen.on));
        let least = self.measure(&Measure::from(leaves));
        match (seen.share_pct.map(|share| self.percent(share / 100.0)), blocks) {
            (Some(share), true) => self.pest_leaves_many(what, day, share, least),
            (Some(share), false) => self.pest_leaves_few(what, day, share, least),
            (None, _) => self.pest_leaves_uncounted(what, day, least),
        }
    }

    /// Plants of a bed that came from a tray in which a sickness was seen, and when a look at them tells.
    pub(crate) fn pest_brought_reason(&self, what: String, seen: String, by: &BroughtBy, lacks: PestLacks) -> String {
        let said = match (&by.place, by.left, &by.with) {
            (Some(place), Some(left), _) => {
                self.pest_brought_place_left(by.plants, &by.tray, place, self.day(left), what, seen, by.look_at)
            }
            (Some(place), None, _) => self.pest_brought_place(by.plants, &by.tray, place, what, seen, by.look_at),
            (None, _, Some(with)) => self.pest_brought_with(by.plants, &by.tray, with, what, seen, by.look_at),
            (None, _, None) => self.pest_brought(by.plants, by.tray.to_string(), what, seen, by.look_at),
        };
        match lacks {
            PestLacks::Look { from, is_due, early, .. } => self.look_from(said, (from, is_due), early),
            _ => said,
        }
    }

    /// A look, the day from which it tells, and that one before told nothing.
    fn look_from(&self, look: String, (from, is_due): (Day, bool), early: Option<Day>) -> String {
        let look = if is_due { look } else { self.pest_next_look_from(look, self.day(from)) };
        early.map_or(look.clone(), |early| self.pest_early_look(look, self.day(early)))
    }

    /// What is missing until a sickness counts as gone, as the next thing to do.
    pub(crate) fn pest_next(&self, lacks: PestLacks, is_sign: bool, count_from: Option<Day>) -> String {
        let next = match lacks {
            PestLacks::Kind => self.pest_next_kind(),
            PestLacks::Share => self.pest_next_share(),
            PestLacks::ThrownOut { least, so_far, died, or_treated } => {
                let so_far = if died > 0 { self.pest_so_far_and_died(so_far, died) } else { self.pest_so_far(so_far) };
                if or_treated { self.pest_next_out_or_treat(least, so_far) } else { self.pest_next_out(least, so_far) }
            }
            PestLacks::WholeTray => self.pest_next_whole_tray(),
            PestLacks::TakenOut { least, so_far, or_treated: false } => self.pest_next_taken_out(least, so_far),
            PestLacks::TakenOut { least, so_far, or_treated: true } => self.pest_next_taken_out_or_treat(least, so_far),
            PestLacks::Deed => self.pest_next_deed(),
            PestLacks::Look { from, is_due: false, at: LookAt::Rested, .. } => self.pest_next_rest(self.day(from)),
            PestLacks::Look { from, is_due, early, at } => {
                let look = match at {
                    LookAt::Plants(plants) => self.pest_look_plants(plants),
                    LookAt::Roots(plants) => self.pest_look_roots(plants),
                    LookAt::Ground => self.pest_look_ground(),
                    LookAt::Bed | LookAt::Brought => self.pest_look_bed(),
                    LookAt::RootsGrown(plants) => self.pest_look_roots_grown(plants),
                    LookAt::HostsGrown(plants) => self.pest_look_hosts_grown(plants),
                    LookAt::Rested => self.pest_look_rested(),
                };
                self.look_from(look, (from, is_due), early)
            }
        };
        let next = match count_from {
            Some(from) => self.pest_next_or_count(next, self.day(from)),
            None => next,
        };
        if is_sign { self.pest_sign(next) } else { next }
    }
}
