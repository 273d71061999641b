//! How a lot stands on a day: whether it keeps, must be sown soon, or is past its life.

use std::sync::Arc;

use super::life::{SeedLife, life};
use crate::base::{Day, SpeciesKey};
use crate::nursery::species::Profile;
use crate::reckon::lots::tested_dead;
use crate::reckon::picture::Picture;
use crate::reckon::stock::LotStory;
use crate::words;

words! {
    /// How a lot stands.
    LotState {
        /// It keeps for a while.
        Keeps: "keeps";
        /// Its life ends soon.
        Ending: "ending";
        /// Its stated life is over; some of it may still come up.
        Over: "over";
        /// Nothing of it is expected to come up.
        Dead: "dead";
        /// How long it lives the way it is kept is not known.
        LifeUnknown: "life_unknown";
        /// Nothing is left.
        UsedUp: "used_up";
        /// A person holds it back.
        Held: "held";
    }
}

/// Whether a person holds a lot back on a day.
pub(crate) fn is_held(lot: &LotStory, day: Day) -> bool {
    lot.held.longest_on(day).is_some()
}

/// How a lot stands on a day. What is used up is that and nothing else; what is held back may keep or not.
pub(crate) fn lot_state(lot: &LotStory, profile: Option<&Profile>, life: Option<&SeedLife>, day: Day) -> LotState {
    if lot.seeds_left == Some(0) {
        return LotState::UsedUp;
    }
    if is_held(lot, day) {
        return LotState::Held;
    }
    if tested_dead(lot, profile) {
        return LotState::Dead;
    }
    match life {
        None => LotState::LifeUnknown,
        Some(life) if day > life.dead_on() => LotState::Dead,
        Some(life) if life.days_left(day) < 0 => LotState::Over,
        Some(life) if life.is_ending(day) => LotState::Ending,
        Some(_) => LotState::Keeps,
    }
}

impl LotState {
    /// Its place where seed is chosen for sowing: what dies soonest is sown first, what cannot come up or be had last.
    pub(crate) fn sowing_order(self) -> u8 {
        match self {
            LotState::Ending => 0,
            LotState::Keeps => 1,
            LotState::LifeUnknown => 2,
            LotState::Over => 3,
            LotState::Held => 4,
            LotState::Dead => 5,
            LotState::UsedUp => 6,
        }
    }

    /// Whether it can be sown with something to come of it.
    pub(crate) fn can_be_sown(self) -> bool {
        match self {
            LotState::Ending | LotState::Keeps | LotState::LifeUnknown | LotState::Over => true,
            LotState::Held | LotState::Dead | LotState::UsedUp => false,
        }
    }
}

/// How a lot of the book stands.
pub(crate) fn state_in(lot: &LotStory, picture: &Picture) -> LotState {
    let profile = lot.species.as_ref().and_then(|key| picture.site.profile(key)).map(|profile| &**profile);
    let life = profile.and_then(|profile| life(lot, profile));
    lot_state(lot, profile, life.as_ref(), picture.day)
}

/// The lots of a species, those to sow from first.
pub(crate) fn lots_to_sow<'a>(species: &SpeciesKey, picture: &'a Picture) -> Vec<&'a Arc<LotStory>> {
    let mut lots: Vec<_> = picture.lots.values().filter(|lot| lot.species.as_ref() == Some(species)).collect();
    // Of several that stand alike, the one with more seed left.
    lots.sort_by_key(|lot| (state_in(lot, picture).sowing_order(), std::cmp::Reverse(lot.seeds_left)));
    lots
}

/// The lot of a species that is sown first, of those whose life is not over; none where only fresh seed helps.
pub(crate) fn lot_to_sow<'a>(species: &SpeciesKey, picture: &'a Picture) -> Option<&'a Arc<LotStory>> {
    let lives = |lot: &&Arc<LotStory>| {
        let state = state_in(lot, picture);
        state.can_be_sown() && state != LotState::Over
    };
    lots_to_sow(species, picture).into_iter().find(lives)
}
