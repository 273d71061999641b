//! Pests and sicknesses that were seen, and what answers them.

use crate::reckon::picture::quantity::{LookAt, NotSo, PestLacks, PestSeen};
use crate::reckon::picture::question::Found;
use crate::wording::Wording;

impl Wording {
    pub(super) fn pest_reason(&self, found: &Found<NotSo, Option<PestSeen>>, blocks: bool) -> String {
        let Some(PestSeen { what, share_pct, on, in_soil, in_bed, is_sign, lacks, .. }) = &found.known else {
            return self.pest_met();
        };
        let (what, day) = (crate::base::text::cleaned(what), self.day(*on));
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

    /// What is missing until a sickness counts as gone, as the next thing to do.
    pub(crate) fn pest_next(&self, lacks: PestLacks, is_sign: bool) -> String {
        let next = match lacks {
            PestLacks::Kind => self.pest_next_kind(),
            PestLacks::Share => self.pest_next_share(),
            PestLacks::ThrownOut { least, so_far, or_treated: false } => self.pest_next_out(least, so_far),
            PestLacks::ThrownOut { least, so_far, or_treated: true } => self.pest_next_out_or_treat(least, so_far),
            PestLacks::Deed => self.pest_next_deed(),
            PestLacks::Look { from, is_due, at } => {
                let look = match at {
                    LookAt::Plants(plants) => self.pest_look_plants(plants),
                    LookAt::Roots(plants) => self.pest_look_roots(plants),
                    LookAt::Ground => self.pest_look_ground(),
                    LookAt::Bed => self.pest_look_bed(),
                };
                if is_due { look } else { self.pest_next_look_from(look, self.day(from)) }
            }
        };
        if is_sign { self.pest_sign(next) } else { next }
    }
}
