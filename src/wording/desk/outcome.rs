//! What an entry does or did, in words.

use crate::base::TrayCode;
use crate::nursery::species::Catalogue;
use crate::reckon::effect::{Effect, TrayBrief};
use crate::reckon::picture::quantity::LightApart;
use crate::reckon::picture::{Stage, Standing};
use crate::wording::Wording;

impl Wording {
    /// What is otherwise, a sentence each; of more than `most` the rest is counted.
    pub(crate) fn outcomes(&self, effects: &[Effect], species: &Catalogue, most: usize) -> Vec<String> {
        if effects.is_empty() {
            return vec![self.outcome_none()];
        }
        let mut text: Vec<String> = effects.iter().take(most).map(|effect| self.outcome(effect, species)).collect();
        if effects.len() > most {
            text.push(self.outcome_more((effects.len() - most) as i64));
        }
        text
    }

    fn outcome(&self, effect: &Effect, species: &Catalogue) -> String {
        match effect {
            Effect::Tray { tray, was: None, is: Some(is) } => self.outcome_tray_new(tray, self.brief(is, None)),
            Effect::Tray { tray, was, is } => self.of_tray(tray, was.as_ref(), is.as_ref()),
            Effect::Plantable { tray, was, is } => {
                self.outcome_plantable(tray, self.plants_range(*was), self.plants_range(*is))
            }
            Effect::Bed { bed, species: key, was, is } => {
                self.outcome_bed(bed, self.species_of(key, species), *was, *is)
            }
            Effect::Standing { bed, species: key, was, is } => {
                let standing = |one: &Option<Standing>| {
                    one.map_or_else(|| self.state_not_planned(), |standing| self.standing_name(standing))
                };
                self.outcome_standing_of_bed(bed, self.species_of(key, species), standing(was), standing(is))
            }
            Effect::Fits { bed, now, no_more } => {
                let list = |trays: &[TrayCode]| trays.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ");
                let now = (!now.is_empty()).then(|| self.outcome_fits_now(bed, list(now)));
                let no_more = (!no_more.is_empty()).then(|| self.outcome_fits_no_more(bed, list(no_more)));
                now.into_iter().chain(no_more).collect::<Vec<_>>().join("; ")
            }
            Effect::Light { bed, was, is } => {
                let share = |share: Option<f64>| share.map_or_else(|| "-".to_string(), |share| self.percent(share));
                let sentence = self.outcome_light(bed, share(*was), share(is.map(|(share, _)| share)));
                match is.and_then(|(_, apart)| apart) {
                    Some(LightApart { low, high, since }) => {
                        self.light_apart(sentence, self.percent(low), self.percent(high), self.day(since))
                    }
                    None => sentence,
                }
            }
            Effect::Lot { lot, was, is, counted } => {
                // A weight makes no exact number of seeds.
                let seeds = |seeds: &Option<u32>| match seeds {
                    None => self.outcome_seeds_unknown(),
                    Some(seeds) if *counted || *seeds == 0 => self.number(f64::from(*seeds), 0),
                    Some(seeds) => self.seeds_of_weight(*seeds),
                };
                self.outcome_lot(lot, seeds(was), seeds(is))
            }
        }
    }

    fn of_tray(&self, tray: &TrayCode, was: Option<&TrayBrief>, is: Option<&TrayBrief>) -> String {
        let side = |one: Option<&TrayBrief>, other: Option<&TrayBrief>| {
            one.map_or_else(|| "-".to_string(), |one| self.brief(one, other))
        };
        if let (Some(was), Some(is)) = (was, is)
            && is.not_seen < was.not_seen
            && *is == (TrayBrief { not_seen: is.not_seen, ..was.clone() })
        {
            let told = (was.not_seen - is.not_seen) as i64;
            return self.outcome_gap_told(tray, told, i64::from(is.standing));
        }
        let sentence = self.outcome_tray(tray, side(was, is), side(is, was));
        let not_seen = |one: Option<&TrayBrief>| one.map_or(0, |one| one.not_seen);
        match not_seen(is).saturating_sub(not_seen(was)) {
            0 => sentence,
            more => format!("{sentence}, {}", self.outcome_not_seen(more as i64)),
        }
    }

    /// A tray in a few words: only what is otherwise on the other side, and always how many.
    fn brief(&self, one: &TrayBrief, other: Option<&TrayBrief>) -> String {
        let differs = |get: &dyn Fn(&TrayBrief) -> bool| other.is_none_or(|other| get(other) != get(one));
        let mut parts = vec![self.outcome_standing(one.standing, self.stage_name(one.stage))];
        // The stage says already what it says.
        let says_more = one.ready != (one.stage == Stage::Ready);
        if differs(&|brief| brief.ready) && says_more {
            parts.push(if one.ready { self.outcome_ready() } else { self.outcome_not_ready() });
        }
        if other.is_none_or(|other| other.place != one.place) {
            if let Some(place) = &one.place {
                parts.push(self.outcome_place(place));
            } else if other.is_some() {
                parts.push(self.outcome_no_place());
            }
        }
        parts.join(", ")
    }
}
