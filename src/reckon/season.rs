//! A day of the season: what each tray and bed is on it, in a few words, so that a year fits on a screen. Past days say what
//! is known of them now, coming days what comes if nothing more is done.

use std::collections::BTreeMap;

use super::bed::season::rains_on;
use super::picture::{BedPicture, Picture, Stage, Standing};
use crate::base::{BedName, Day, SpeciesKey, TrayCode};
use crate::words;

words! {
    /// The shade of a bed's nurse plants on a day.
    NurseShade {
        /// None stands there.
        None: "none";
        /// They grow; no useful shade yet.
        Growing: "growing";
        /// Useful shade is expected (common practice of the profile).
        Shading: "shading";
        /// Past the end of their stems or plants.
        Ended: "ended";
    }
}

/// A day of the season.
#[derive(Clone, PartialEq, Debug)]
pub struct SeasonDay {
    /// The day.
    pub day: Day,
    /// Whether it lies in the rains; none where no rains are described.
    pub in_rains: Option<bool>,
    /// The stage of each tray that exists on it.
    pub trays: BTreeMap<TrayCode, Stage>,
    /// The standing of each bed for each planned species.
    pub beds: BTreeMap<(BedName, SpeciesKey), Standing>,
    /// The shade of each bed's nurse plants.
    pub shade: BTreeMap<BedName, NurseShade>,
}

/// What a Picture's day looks like in the season.
pub(crate) fn season_day(picture: &Picture) -> SeasonDay {
    let day = picture.day;
    let described = picture.site.season.on(day).is_some_and(|season| !season.rains.is_empty());
    let beds = picture
        .beds
        .values()
        .flat_map(|bed| bed.species.iter().map(|one| ((bed.name.clone(), one.species.clone()), one.standing)));
    SeasonDay {
        day,
        in_rains: described.then(|| rains_on(&picture.site, day).is_some()),
        trays: picture.trays.values().map(|tray| (tray.code.clone(), tray.stage)).collect(),
        beds: beds.collect(),
        shade: picture.beds.values().map(|bed| (bed.name.clone(), shade_of(bed, day))).collect(),
    }
}

/// The best shade of the cohorts that live.
fn shade_of(bed: &BedPicture, day: Day) -> NurseShade {
    let of_cohort = |nurse: &super::picture::NursePicture| {
        if nurse.ends_about.is_some_and(|end| end < day) {
            NurseShade::Ended
        } else if nurse.useful_shade_from.is_some_and(|from| from <= day) {
            NurseShade::Shading
        } else {
            NurseShade::Growing
        }
    };
    let living = bed.nurses.iter().filter(|nurse| nurse.alive > 0).map(of_cohort);
    let best = living.max_by_key(|shade| match shade {
        NurseShade::None => 0,
        NurseShade::Ended => 1,
        NurseShade::Growing => 2,
        NurseShade::Shading => 3,
    });
    best.unwrap_or(NurseShade::None)
}
