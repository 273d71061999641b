//! The constants of the code that sentences say, `{ $LOAD_PLANTS }`: a threshold that is changed is said as it is. Keys
//! are said so too, `{ $KEY_V }`: a letter that a person moved is named where it is now.

pub(super) use crate::reckon::bed::light_now::READING_LASTS_DAYS;
pub(super) use crate::reckon::bed::sick::GROUND_RESTS_DAYS;
pub(super) use crate::reckon::bed::water::ahead::STRESS_BORNE_DAYS;
pub(super) use crate::reckon::bed::water::balance::{EASILY_TAKEN_SHARE, NO_GAUGE_DAYS, ROOT_DEPTH_CM};
pub(super) use crate::reckon::bed::water::drowned::{CLAY_DRAINS_DAYS, DAY_MORE_MM, DROWNED_MM};
pub(super) use crate::reckon::bed::water::looks::{FOOT_LEAST_LITRES, FOOT_MOST_LITRES};
pub(super) use crate::reckon::forecast::{RANGE_LEVEL, SOW_AGAIN_SHARE, WORTH_WAITING_SHARE};
pub(super) use crate::reckon::growth::LEAST_SAMPLES;
pub(super) use crate::reckon::light::advice::fewest_cuts::MOST_STEP;
pub(super) use crate::reckon::light::coming::{BUNCH_DAYS, SHADE_AHEAD_DAYS, SHADE_ENDS_SHARE};
pub(super) use crate::reckon::lots::{OLD_SHARE, TEST_AFTER_DAYS, TEST_LEVEL, TEST_SEEDS};
pub(super) use crate::reckon::round::intervals::{
    COUNT_EVERY_DAYS, COUNT_NEAR_EVERY_DAYS, COUNT_SICK_EVERY_DAYS, CULL_LANKY_ABOVE, LANKY_ABOVE, NOTHING_NEW_DAYS,
    POOR_EMERGENCE_SHARE, SAMPLE_PLANTS,
};
pub(super) use crate::reckon::sample_progress::USUAL_SAMPLE;
pub(super) use crate::reckon::seed::RECALCITRANT_DAYS;
pub(super) use crate::reckon::sowing::MOST_EACH;
pub(super) use crate::reckon::stock::BURNS_ROOTS_DAYS;
pub(super) use crate::reckon::tray::exposure::{
    DARKER_WARNS_BELOW, FITS_UP_TO, LARGE_STEP, LARGE_STEP_RATIO, SMALL_STEP, STEEP_RATIO,
};
pub(super) use crate::reckon::tray::grafted::GRAFT_HEALS_DAYS;
pub(super) use crate::reckon::tray::hardening::{LAST_STEP_DAYS, LEAST_DAYS as HARDENING_LEAST_DAYS};
pub(super) use crate::reckon::tray::hold::{
    BARE_ROOTS_KEEP_DAYS, HEELED_IN_KEEP_DAYS, SHOWS_AFTER_DAYS, STUMPS_KEEP_DAYS,
};
pub(super) use crate::reckon::tray::light::LAST_LIGHT_DAYS;
pub(super) use crate::reckon::tray::pest::{LOOK_AFTER_DAYS, LOOK_AFTER_INCURABLE_DAYS, PEST_HOLDS_PCT};
pub(super) use crate::reckon::tray::size::{ANY_LEAST_CM, GRAFTED_MOST_CM, LOAD_PLANTS, SAMPLE_LASTS_DAYS};
pub(super) use crate::reckon::tray::time::{
    CUT_ROOTS_UNSEEN_DAYS, NURSE_AFTER_EMERGENCE_DAYS, PLUG_AGAIN_DAYS, PLUGS_AGAINST_ONE, WILDLING_DAYS,
};

use super::sentences;
use crate::base::letters::Letters;

/// A constant as a number, whatever it is kept as.
pub(super) trait Constant {
    /// The number.
    fn into_f64(self) -> f64;
}

impl Constant for f64 {
    fn into_f64(self) -> f64 {
        self
    }
}

impl Constant for i32 {
    fn into_f64(self) -> f64 {
        f64::from(self)
    }
}

impl Constant for u32 {
    fn into_f64(self) -> f64 {
        f64::from(self)
    }
}

impl Constant for usize {
    fn into_f64(self) -> f64 {
        self as f64
    }
}

/// What the mark of a key begins with: `{ $KEY_V }` is the letter that does what `v` does.
const OF_A_KEY: &str = "KEY_";

/// The sentences of a file with the constants put in, and the letters of keys.
pub(super) fn with_constants(text: &str, letters: &Letters) -> String {
    let constants = sentences::constants();
    let mut parts = text.split("{ $");
    let mut whole = parts.next().unwrap_or_default().to_string();
    for part in parts {
        let found = part.split_once(" }").and_then(|(name, rest)| {
            let constant = || constants.iter().find(|(known, _)| *known == name);
            let key = name.strip_prefix(OF_A_KEY).and_then(|key| key.chars().next());
            let value = match key {
                Some(key) => letters.pressed_for(key.to_ascii_lowercase()).to_string(),
                None => constant().map(|(name, value)| written(name, *value))?,
            };
            Some((value, rest))
        });
        match found {
            Some((value, rest)) => whole.extend([value.as_str(), rest]),
            None => whole.extend(["{ $", part]),
        }
    }
    whole
}

/// A number as it is written; shares and levels as percent.
fn written(name: &str, value: f64) -> String {
    let value = if name.ends_with("_SHARE") || name.ends_with("_LEVEL") { value * 100.0 } else { value };
    ((value * 1e6).round() / 1e6).to_string()
}
