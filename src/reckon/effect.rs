//! What an entry would do: two Pictures compared by what stands where.

use super::picture::{Picture, Stage};
use crate::base::{BedName, LotCode, PlaceName, SpeciesKey, TrayCode};

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
    /// The seed left in a lot, where both are known.
    Lot {
        /// The lot.
        lot: LotCode,
        /// Seeds before; none where there was no lot or no figure.
        was: Option<u32>,
        /// Seeds after.
        is: Option<u32>,
    },
}

/// What is otherwise in the second Picture, by tray, bed and lot.
pub(crate) fn effects(before: &Picture, after: &Picture) -> Vec<Effect> {
    let mut found = Vec::new();
    for tray in before.trays.keys().chain(after.trays.keys().filter(|code| !before.trays.contains_key(*code))) {
        let (was, is) = (brief(before, tray), brief(after, tray));
        if was != is {
            found.push(Effect::Tray { tray: tray.clone(), was, is });
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
    for (code, lot) in &after.lots {
        let was = before.lots.get(code).and_then(|lot| lot.seeds_left);
        let is = lot.seeds_left;
        if was != is {
            found.push(Effect::Lot { lot: code.clone(), was, is });
        }
    }
    found
}

fn brief(picture: &Picture, code: &TrayCode) -> Option<TrayBrief> {
    picture.trays.get(code).map(|tray| TrayBrief {
        standing: tray.standing,
        stage: tray.stage,
        ready: tray.ready,
        place: tray.place.clone(),
    })
}
