//! The light of a bed through the coming months, reckoned in the background: a month at a time, this one first. Frames and
//! writing never wait for it, and who asks for another bed gives the first one up.

use std::sync::Arc;
use std::sync::atomic::Ordering;

use super::Newest;
use crate::base::{BedName, SpeciesKey};
use crate::reckon::Picture;
use crate::reckon::field::species_plan;
use crate::reckon::light::advice::fewest_cuts::{FewestCuts, fewest_cuts};
use crate::reckon::light::months::{GoingOn, LightMonth, MONTHS_AHEAD};

/// Whose light is wanted.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct LightAsked {
    /// Which drawing of the book it is asked for: months of another are not of this book any more.
    pub(crate) generation: u64,
    /// The bed.
    pub(crate) bed: BedName,
    /// The species that is to stand there.
    pub(crate) species: SpeciesKey,
}

/// A month of it.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct LitMonth {
    /// On the whole.
    pub(crate) month: LightMonth,
    /// At each position of the species, in the order of its plan.
    pub(crate) at: Vec<f64>,
    /// What cuts come to where the bed is too dark today; of this month alone, and told last.
    pub(crate) cuts: Option<FewestCuts>,
}

/// What is known of a month: nothing where nothing that shades was written.
pub(crate) type MonthAnswer = Option<LitMonth>;

/// Reckons month after month and hands each over with its number, this month being 0; ends where another bed is asked for or
/// nobody listens.
pub(crate) fn light_ahead(
    asked: &LightAsked,
    picture: &Picture,
    (newest, mine): (&Newest, u64),
    give: &mut dyn FnMut(usize, MonthAnswer) -> bool,
) {
    let Some(bed) = picture.beds.get(&asked.bed) else { return };
    let (site, day) = (&picture.site, picture.day);
    let Some(going_on) = GoingOn::of(&bed.story, site, &asked.species, day) else {
        give(0, None);
        return;
    };
    let spots = species_plan(&bed.story, site, day, &asked.species).map(|plan| plan.spots).unwrap_or_default();
    for at in 0..MONTHS_AHEAD {
        if newest.load(Ordering::SeqCst) != mine {
            return;
        }
        if !give(at, Some(LitMonth { month: going_on.month(at), at: going_on.at_each(&spots, at), cuts: None })) {
            return;
        }
    }
    let cuts = fewest_cuts(&bed.story, site, &asked.species, day);
    if cuts.is_some() && newest.load(Ordering::SeqCst) == mine {
        give(0, Some(LitMonth { month: going_on.month(0), at: going_on.at_each(&spots, 0), cuts }));
    }
}

/// The same on a thread of its own.
pub(crate) fn light_ahead_aside(
    asked: LightAsked,
    picture: Arc<Picture>,
    newest: &Newest,
    mut give: impl FnMut(LightAsked, usize, MonthAnswer) -> bool + Send + 'static,
) {
    let mine = newest.fetch_add(1, Ordering::SeqCst) + 1;
    let newest = Arc::clone(newest);
    std::thread::spawn(move || {
        light_ahead(&asked, &picture, (&newest, mine), &mut |at, month| give(asked.clone(), at, month));
    });
}
