//! A day of the season: what each tray and bed is on it, in a few words, so that a year fits on a screen. Past days say what
//! is known of them now, coming days what comes if nothing more is done.

use std::collections::BTreeMap;

use super::bed::season::rains_on;
use super::picture::{BedPicture, Stage, Standing};
use super::site::Site;
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
pub(crate) struct SeasonDay {
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

impl SeasonDay {
    /// A day of which nothing but its rains is said yet.
    pub(crate) fn of(site: &Site, day: Day) -> SeasonDay {
        let described = site.season.on(day).is_some_and(|season| !season.rains.is_empty());
        let in_rains = described.then(|| rains_on(site, day).is_some());
        SeasonDay { day, in_rains, trays: BTreeMap::new(), beds: BTreeMap::new(), shade: BTreeMap::new() }
    }

    /// Says what a bed is on it.
    pub(crate) fn take_bed(&mut self, bed: &BedPicture) {
        for line in &bed.species {
            self.beds.insert((bed.name.clone(), line.species.clone()), line.standing);
        }
        self.shade.insert(bed.name.clone(), shade_of(bed, self.day));
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
