//! What fingers and rods found of the water in a bed, and feet of young plants that were watered.

use super::balance::{BALANCE_DAYS, DRY_RUN_REMEMBERED_DAYS, Waters};
use super::texture::Texture;
use crate::base::Day;
use crate::nursery::entry::types::SoilWhere;
use crate::reckon::stock::{BedStory, SoilLook, Watering};
use crate::science::soil::DAYS_AFTER_SOAKING;

/// A look that found the ground wet counts for so many days. Ours: without rain none holds out as long, and with rain the gauge tells.
pub(crate) const WET_LOOK_DAYS: i32 = 14;
/// Ground that water poured at a foot wets, m across: about that of a planting hole. Ours, common practice.
pub(crate) const WETTED_FOOT_M: f64 = 0.3;
/// The ground that is wetted at a foot, m2: a litre on a square metre is a mm.
pub(super) const WETTED_FOOT_M2: f64 = std::f64::consts::PI / 4.0 * WETTED_FOOT_M * WETTED_FOOT_M;
/// Least litres that a young plant is given at once, slowly. Common practice: 2 to 5 litres.
pub(crate) const FOOT_LEAST_LITRES: f64 = 2.0;
/// Most litres of that.
pub(crate) const FOOT_MOST_LITRES: f64 = 5.0;
/// Feet that were watered are left alone for so many days, the day itself the first, where what was poured keeps a plant so long. Ours:
/// nobody waters a field every day.
pub(crate) const FEET_LEAST_DAYS: i32 = 2;

/// What keeps a young plant alive, litres a day: with so much all of two species lived, with half of it a part of one died (Seldon et al.
/// 2021, Journal of Agriculture of the University of Puerto Rico 105(2), Swietenia and Tabebuia).
pub(crate) const LEAST_LITRES_A_DAY: f64 = 0.134;
/// Feet that were watered are asked about again after so many days, however much was poured: a week. Ours.
pub(crate) const WATERED_LASTS_DAYS: i32 = 7;

/// The days for which what was poured at each foot keeps its plant; where nobody wrote how much, a week.
pub(crate) fn keeps_alive_days(watering: &Watering) -> i32 {
    let days = watering.litres_each.map(|litres| (litres / LEAST_LITRES_A_DAY) as i32);
    days.map_or(WATERED_LASTS_DAYS, |days| days.min(WATERED_LASTS_DAYS))
}

/// What the last look that tells of water found.
#[derive(Clone, Copy, Debug)]
pub(super) struct Looks<'a> {
    /// It found the ground wet through.
    pub(super) wet: Option<&'a SoilLook>,
    /// It found the ground dry.
    pub(super) dry: Option<&'a SoilLook>,
    /// A look after it, or the only one, that found wet feet of plants that had been watered.
    pub(super) at_feet: Option<&'a SoilLook>,
}

/// The last look at the water of a bed that still counts on a day.
pub(super) fn looks<'a>(story: &'a BedStory, waters: &Waters, texture: Texture, day: Day) -> Looks<'a> {
    let mut looks = Looks { wet: None, dry: None, at_feet: None };
    for look in story.soil.iter().rev() {
        let ago = day.days_since(look.day);
        if look.wet == Some(false) && (0..=DRY_RUN_REMEMBERED_DAYS).contains(&ago) {
            looks.dry = Some(look);
            break;
        }
        if look.at_field_capacity != Some(true) || !(0..WET_LOOK_DAYS).contains(&ago) {
            continue;
        }
        if is_at_feet(look, story, waters, texture) {
            looks.at_feet = looks.at_feet.or(Some(look));
            continue;
        }
        // Who soaked one spot for the rod tells of the soil there; where the gauge tells of the water it leads.
        if look.soaked_days.is_some() && waters.tells {
            continue;
        }
        // Days since a soaking tell that it drained; a person's `wet` or so few days that it is still full.
        if look.soaked_days.is_none_or(|days| days <= f64::from(DAYS_AFTER_SOAKING)) {
            looks.wet = Some(look);
            break;
        }
        if look.wet == Some(true) {
            break;
        }
    }
    looks
}

/// Whether a look found wet what was watered, and says of no ground that it lay beside it.
fn is_at_feet(look: &SoilLook, story: &BedStory, waters: &Waters, texture: Texture) -> bool {
    let beside = matches!(look.place, Some(SoilWhere::Beside | SoilWhere::Undug));
    !beside && story.watered.iter().any(|watering| feet_hold(watering, waters, texture, look.day))
}

/// Whether feet that were watered still have water on a day: as long as the balance of what they got, from full ground where nobody
/// wrote how much.
pub(crate) fn feet_hold(watering: &Watering, waters: &Waters, texture: Texture, day: Day) -> bool {
    let ago = day.days_since(watering.day);
    if !(0..BALANCE_DAYS).contains(&ago) {
        return false;
    }
    let given_mm = watering.litres_each.map(|litres| litres / WETTED_FOOT_M2);
    let has_enough = || {
        let missing = waters.at_feet(texture, watering.day, given_mm, day);
        missing.is_some_and(|missing| missing.is_wet())
    };
    ago < FEET_LEAST_DAYS || has_enough()
}
