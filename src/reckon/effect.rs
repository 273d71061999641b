//! What an entry would do: two Pictures compared by what stands where.

use std::collections::BTreeMap;

use super::changes::{Turned, all_turned};
use super::picture::quantity::LightApart;
use super::picture::{BedPicture, Picture, Stage, Standing};
use super::tray::size::whole_plants;
use crate::base::{BedName, LotCode, PlaceName, Range, SpeciesKey, TrayCode};

/// A tray in a few figures.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct TrayBrief {
    /// Living seedlings.
    pub standing: u32,
    /// Its stage.
    pub stage: Stage,
    /// Whether it is ready to go out.
    pub ready: bool,
    /// Where it stands.
    pub place: Option<PlaceName>,
    /// Plants that were lost and nobody saw why, so far.
    pub not_seen: u64,
}

/// What is otherwise than before.
#[derive(Clone, PartialEq, Debug)]
pub enum Effect {
    /// A tray; none before where it is new, none after where it is gone.
    Tray {
        /// The tray.
        tray: TrayCode,
        /// Before.
        was: Option<TrayBrief>,
        /// After.
        is: Option<TrayBrief>,
    },
    /// How many plants of a tray can be planted, where nothing else of it is otherwise.
    Plantable {
        /// The tray.
        tray: TrayCode,
        /// Before.
        was: Range,
        /// After.
        is: Range,
    },
    /// The living plants of a species in a bed.
    Bed {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// Living before.
        was: u32,
        /// Living after.
        is: u32,
    },
    /// The light of a bed by its readings.
    Light {
        /// The bed.
        bed: BedName,
        /// The share of the open light before; none where nobody read it.
        was: Option<f64>,
        /// After, with how far its readings lie apart.
        is: Option<(f64, Option<LightApart>)>,
    },
    /// The standing of a bed for a species.
    Standing {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// Before; none where it was not planned.
        was: Option<Standing>,
        /// After; none where it is not planned any more.
        is: Option<Standing>,
    },
    /// Trays that fit a bed and did not, or did and no longer do.
    Fits {
        /// The bed.
        bed: BedName,
        /// Those that fit now.
        now: Vec<TrayCode>,
        /// Those that no longer do.
        no_more: Vec<TrayCode>,
    },
    /// The seed left in a lot, where both are known.
    Lot {
        /// The lot.
        lot: LotCode,
        /// Seeds before; none where there was no lot or no figure.
        was: Option<u32>,
        /// Seeds after.
        is: Option<u32>,
        /// Whether they were counted; else about as many as a weight makes.
        counted: bool,
    },
}

/// What is otherwise in the second Picture, by tray, bed and lot.
pub(crate) fn effects(before: &Picture, after: &Picture) -> Vec<Effect> {
    let mut found = Vec::new();
    for tray in before.trays.keys().chain(after.trays.keys().filter(|code| !before.trays.contains_key(*code))) {
        let (was, is) = (brief(before, tray), brief(after, tray));
        if was != is {
            found.push(Effect::Tray { tray: tray.clone(), was, is });
        } else {
            found.extend(plantable_of(before, after, tray));
        }
    }
    for (name, bed) in &after.beds {
        for one in &bed.species {
            let was =
                before.beds.get(name).and_then(|bed| bed.species.iter().find(|other| other.species == one.species));
            let was = was.map_or(0, |other| other.living);
            if was != one.living {
                found.push(Effect::Bed { bed: name.clone(), species: one.species.clone(), was, is: one.living });
            }
        }
    }
    found.extend(after.beds.values().filter_map(|bed| light_of(before, bed)));
    found.extend(turned(before, after));
    for (code, lot) in &after.lots {
        let was = before.lots.get(code).and_then(|lot| lot.seeds_left);
        let is = lot.seeds_left;
        if was != is {
            found.push(Effect::Lot { lot: code.clone(), was, is, counted: lot.counted });
        }
    }
    found
}

/// How many of a tray can be planted, where it is otherwise in whole plants: a count of a part, or a sample, moves nothing else.
fn plantable_of(before: &Picture, after: &Picture, code: &TrayCode) -> Option<Effect> {
    let of = |picture: &Picture| picture.trays.get(code).map(|tray| tray.plantable);
    let (was, is) = (of(before)?, of(after)?);
    let whole = |range: Range| [range.low, range.likely, range.high].map(whole_plants);
    (whole(was) != whole(is)).then(|| Effect::Plantable { tray: code.clone(), was, is })
}

/// The light of a bed, where its readings make another one of it.
fn light_of(before: &Picture, bed: &BedPicture) -> Option<Effect> {
    /// Less is not seen where light is said in whole percent.
    const LEAST: f64 = 0.005;
    let was = before.beds.get(&bed.name).and_then(|bed| bed.light_now.as_ref()).map(|light| light.share);
    let is = bed.light_now.as_ref().map(|light| (light.share, light.apart));
    let differs = match (was, is) {
        (Some(was), Some((is, _))) => (was - is).abs() >= LEAST,
        (was, is) => was.is_some() != is.is_some(),
    };
    differs.then(|| Effect::Light { bed: bed.name.clone(), was, is })
}

/// What turns in beds: their standing, and which trays fit them. A tray that is emptied fits nothing, and is told already.
fn turned(before: &Picture, after: &Picture) -> Vec<Effect> {
    let mut found = Vec::new();
    let mut fits: BTreeMap<BedName, [Vec<TrayCode>; 2]> = BTreeMap::new();
    for turned in all_turned(before, after) {
        match turned {
            Turned::Tray { .. } => {}
            Turned::Bed { bed, species, was, is } => found.push(Effect::Standing { bed, species, was, is }),
            Turned::Pair { tray, bed, is, .. } => {
                if after.trays.get(&tray).is_some_and(|tray| tray.standing > 0) {
                    fits.entry(bed).or_default()[usize::from(is != Some(true))].push(tray);
                }
            }
        }
    }
    found.extend(fits.into_iter().map(|(bed, [now, no_more])| Effect::Fits { bed, now, no_more }));
    found
}

fn brief(picture: &Picture, code: &TrayCode) -> Option<TrayBrief> {
    picture.trays.get(code).map(|tray| TrayBrief {
        standing: tray.standing,
        stage: tray.stage,
        ready: tray.ready,
        place: tray.place.clone(),
        not_seen: tray.story.accounts.not_seen,
    })
}
