//! How a lot stands on a day: whether it keeps, must be sown soon, or is past its life.

use super::life::SeedLife;
use crate::base::Day;
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
    lot.held.as_ref().is_some_and(|held| held.what.1.is_none_or(|until| day <= until))
}

/// How a lot stands on a day. What is used up is that and nothing else; what is held back may keep or not.
pub(crate) fn lot_state(lot: &LotStory, life: Option<&SeedLife>, day: Day) -> LotState {
    if lot.seeds_left == Some(0) {
        return LotState::UsedUp;
    }
    if is_held(lot, day) {
        return LotState::Held;
    }
    match life {
        None => LotState::LifeUnknown,
        Some(life) if day > life.dead_on() => LotState::Dead,
        Some(life) if life.days_left(day) < 0 => LotState::Over,
        Some(life) if life.is_ending(day) => LotState::Ending,
        Some(_) => LotState::Keeps,
    }
}
