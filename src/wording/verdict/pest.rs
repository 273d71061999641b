//! Pests and sicknesses that were seen, and what answers them.

use crate::reckon::picture::quantity::{BroughtBy, LookAt, NotSo, PestLacks, PestSeen};
use crate::reckon::picture::question::Found;
use crate::wording::Wording;

impl Wording {
    pub(super) fn pest_reason(&self, found: &Found<NotSo, Option<PestSeen>>, blocks: bool) -> String {
        let Some(PestSeen { what, share_pct, on, in_soil, in_bed, is_sign, lacks, brought, .. }) = &found.known else {
            return self.pest_met();
        };
        let (what, day) = (crate::base::text::cleaned(what), self.day(*on));
        if let Some((by, lacks)) = brought.as_ref().zip(*lacks) {
            return self.pest_brought_reason(what, day, by, lacks);
        }
        let next = lacks.map(|lacks| self.pest_next(lacks, *is_sign));
        match (next, *in_bed) {
            (Some(next), true) if blocks => self.pest_holds_bed(what, day, next),
            (Some(next), true) => self.pest_in_ground(what, day, next),
            (None, true) => self.pest_in_bed(what, day),
            (Some(_), false) if *lacks == Some(PestLacks::Kind) => self.pest_unknown(what, day),
            (Some(next), false) if *in_soil => self.pest_of_soil(what, day, next),
            (Some(next), false) => self.pest_spreads(what, day, next),
            (None, false) => match (share_pct.map(|share| self.percent(share / 100.0)), blocks) {
                (Some(share), true) => self.pest_on_many(what, day, share),
                (Some(share), false) => self.pest_on_few(what, day, share),
                (None, _) => self.pest_not_counted(what, day),
            },
        }
    }

    /// Plants of a bed that came from a tray in which a sickness was seen, and when a look at them tells.
    pub(crate) fn pest_brought_reason(&self, what: String, seen: String, by: &BroughtBy, lacks: PestLacks) -> String {
        let said = self.pest_brought(by.plants, by.tray.to_string(), what, seen, by.look_at);
        match lacks {
            PestLacks::Look { from, is_due: false, .. } => self.pest_next_look_from(said, self.day(from)),
            _ => said,
        }
    }

    /// What is missing until a sickness counts as gone, as the next thing to do.
    pub(crate) fn pest_next(&self, lacks: PestLacks, is_sign: bool) -> String {
        let next = match lacks {
            PestLacks::Kind => self.pest_next_kind(),
            PestLacks::Share => self.pest_next_share(),
            PestLacks::ThrownOut { least, so_far, or_treated: false } => self.pest_next_out(least, so_far),
            PestLacks::ThrownOut { least, so_far, or_treated: true } => self.pest_next_out_or_treat(least, so_far),
            PestLacks::TakenOut { least, so_far, or_treated: false } => self.pest_next_taken_out(least, so_far),
            PestLacks::TakenOut { least, so_far, or_treated: true } => self.pest_next_taken_out_or_treat(least, so_far),
            PestLacks::Deed => self.pest_next_deed(),
            PestLacks::Look { from, is_due: false, at: LookAt::Rested } => self.pest_next_rest(self.day(from)),
            PestLacks::Look { from, is_due, at } => {
                let look = match at {
                    LookAt::Plants(plants) => self.pest_look_plants(plants),
                    LookAt::Roots(plants) => self.pest_look_roots(plants),
                    LookAt::Ground => self.pest_look_ground(),
                    LookAt::Bed | LookAt::Brought => self.pest_look_bed(),
                    LookAt::RootsGrown(plants) => self.pest_look_roots_grown(plants),
                    LookAt::Rested => self.pest_look_rested(),
                };
                if is_due { look } else { self.pest_next_look_from(look, self.day(from)) }
            }
        };
        if is_sign { self.pest_sign(next) } else { next }
    }
}
