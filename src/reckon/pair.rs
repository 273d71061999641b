//! Every tray with living plants against every bed whose plan names its species.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::picture::{
    BedPicture, BedSpecies, Criterion, HeldBy, MadeOf, Measure, Misses, Pair, PairPicture, Picture, Questions, Rule,
    Side, TrayPaired, TrayPicture, hands_from, line_of,
};
use super::site::Site;
use super::stock::Places;
use super::tray::size::whole_plants;
use super::tray::{Stood, exposure, hardening};
use crate::base::{BedName, Day, EntryId, SpeciesKey, TrayCode};

/// The pairs of a tray with those of some beds whose plan names its species, in the order of the beds.
pub(super) fn pairs_of<'a>(
    tray: &Arc<TrayPicture>,
    beds: impl Iterator<Item = &'a Arc<BedPicture>>,
    (site, places): (&Site, &Places),
    day: Day,
) -> Vec<Pair> {
    let beds: Vec<&Arc<BedPicture>> = beds.filter(|bed| tray.standing > 0 && line_of(tray, bed).is_some()).collect();
    if beds.is_empty() {
        return Vec::new();
    }
    let paired = Arc::new(TrayPaired::of(tray, Stood::of(&tray.story, site, places, day), beds.len()));
    beds.into_iter().zip(0..).filter_map(|(bed, number)| Pair::made_of(&paired, bed, number)).collect()
}

/// Plants or places that several rows of the main answer count more than once.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum SharedOffer {
    /// A tray's plants are offered to several beds, more in all than it has.
    Tray {
        /// The tray.
        tray: TrayCode,
        /// Plants it can give in all.
        plants: u32,
        /// The beds.
        beds: Vec<BedName>,
    },
    /// A bed's places for a species are offered to several trays, fewer in all than they bring.
    Bed {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// Places it has in all.
        places: u32,
        /// The trays.
        trays: Vec<TrayCode>,
    },
}

/// What the pairs that fit count more than once: trays first, then beds.
pub fn shared_offers(picture: &Picture) -> Vec<SharedOffer> {
    let mut of_tray: BTreeMap<&TrayCode, Vec<&Pair>> = BTreeMap::new();
    let mut of_bed: BTreeMap<(&BedName, &SpeciesKey), Vec<&Pair>> = BTreeMap::new();
    for pair in picture.pairs.iter().filter(|pair| pair.fits) {
        of_tray.entry(pair.tray()).or_default().push(pair);
        if let Some(species) = picture.trays.get(pair.tray()).and_then(|tray| tray.species.as_ref()) {
            of_bed.entry((pair.bed(), species)).or_default().push(pair);
        }
    }
    let offered = |pairs: &[&Pair]| pairs.iter().map(|pair| u64::from(pair.plants)).sum::<u64>();
    let mut all = Vec::new();
    for (code, pairs) in of_tray {
        let plants = picture.trays.get(code).map_or(0, |tray| whole_plants(tray.plantable.likely));
        if pairs.len() > 1 && offered(&pairs) > u64::from(plants) {
            let beds = pairs.iter().map(|pair| pair.bed().clone()).collect();
            all.push(SharedOffer::Tray { tray: code.clone(), plants, beds });
        }
    }
    for ((bed, species), pairs) in of_bed {
        let lines = picture.beds.get(bed).into_iter().flat_map(|bed| &bed.species);
        let places = lines.filter(|line| line.species == *species).map(|line| line.open_positions).max().unwrap_or(0);
        if pairs.len() > 1 && offered(&pairs) > u64::from(places) {
            let trays = pairs.iter().map(|pair| pair.tray().clone()).collect();
            all.push(SharedOffer::Bed { bed: bed.clone(), species: species.clone(), places, trays });
        }
    }
    all
}

/// All of a pair.
pub(super) fn whole_of(made_of: MadeOf, kept: &Pair) -> PairPicture {
    let (tray, bed) = (&made_of.of.tray, &made_of.bed);
    let held =
        |of: Side| move |criterion: &Criterion| criterion.blocks.then_some(HeldBy { of, rule: criterion.rule() });
    let own = own_questions(&made_of);
    let line = made_of.line();
    let mut held_by: Vec<HeldBy> = of_tray(tray, &own).filter_map(held(Side::Tray)).collect();
    held_by.extend(line.iter().flat_map(|line| &line.criteria).filter_map(held(Side::Bed)));
    held_by.extend(own.iter().filter_map(held(Side::Pair)));
    PairPicture {
        tray: tray.code.clone(),
        bed: bed.name.clone(),
        species: line.map_or_else(|| SpeciesKey::new(""), |line| line.species.clone()),
        fits: kept.fits,
        held_by,
        misses: kept.missed(),
        plants: kept.plants,
        in_light: kept.in_light,
        criteria: Questions::made_of(made_of),
    }
}

/// How many could go: the smaller of the likely plantable and the open positions.
pub(super) fn plants_of(tray: &TrayPicture, line: &BedSpecies) -> u32 {
    whole_plants(tray.plantable.likely).min(line.open_positions)
}

/// What holds back, each question once, as `questions_of` puts them together.
pub(super) fn misses_of(made_of: &MadeOf, line: &BedSpecies) -> Misses {
    let own = own_questions(made_of);
    let mut held: Vec<(Rule, Option<Day>)> = Vec::new();
    for criterion in
        of_tray(&made_of.of.tray, &own).chain(&own).chain(&line.criteria).filter(|criterion| criterion.blocks)
    {
        if !held.iter().any(|(rule, _)| *rule == criterion.rule()) {
            held.push((criterion.rule(), criterion.expected));
        }
    }
    Misses::of(&held)
}

/// The tray's questions that count in a bed, where those of the pair itself are known.
fn of_tray<'a>(tray: &'a TrayPicture, own: &'a [Criterion]) -> impl Iterator<Item = &'a Criterion> {
    let of_pair = |criterion: &Criterion| own.iter().any(|own| own.rule() == criterion.rule());
    tray.criteria.iter().filter(move |criterion| criterion.rule() != Rule::ExposureStep && !of_pair(criterion))
}

/// The questions of the pair itself. The tray's own hardening and step look at the band of its species; here the light of
/// this bed decides. Where nobody read that, hardening stays as it is asked of the tray.
pub(super) fn own_questions(made_of: &MadeOf) -> Vec<Criterion> {
    let MadeOf { of, bed, .. } = made_of;
    let TrayPaired { tray, stood, .. } = &**of;
    // Bare roots, and plants that stand any light, are asked for neither.
    let asks = |rule: Rule| tray.criteria.iter().any(|criterion| criterion.rule() == rule);
    let light =
        bed.light_now.as_ref().map(|light| (light.share, light.entries.as_slice())).or_else(|| reckoned(made_of));
    let last = stood.last_light.as_ref();
    let toward = |share: f64| hardening::toward_bed(&stood.asked(&tray.story), last, share);
    let hardening = light.filter(|_| asks(Rule::Hardening)).map(|(share, _)| toward(share));
    let step = asks(Rule::ExposureStep).then(|| {
        let step = exposure::toward_bed(last, light);
        let waits = step.blocks && step.expected.is_none() && last.is_some_and(|last| !last.in_sun);
        let fits_on = light.filter(|_| waits).and_then(|(share, _)| stood.step_fits_on(share));
        let expected = step.expected.or(fits_on);
        step.expected_on(expected)
    });
    let from = hands_from(&tray.criteria);
    hardening.into_iter().chain(step).map(|criterion| criterion.after_wait(from)).collect()
}

/// The light of a bed that nobody read, where what is reckoned fits the species: as bright as it may be, for a step is
/// judged by what could burn.
fn reckoned(made_of: &MadeOf) -> Option<(f64, &[EntryId])> {
    let light = made_of.line()?.criteria.iter().find(|criterion| criterion.rule() == Rule::LightNow)?;
    match light.known() {
        Some(Measure::LightReckoned(span)) if light.met() == Some(true) => Some((span.high, light.entries.as_slice())),
        _ => None,
    }
}

/// The questions of a pair, each once: held, treated and pest are asked of the tray, and of a bed only where
/// it is so: what holds back is said before what asks for care.
pub(super) fn questions_of(made_of: &MadeOf) -> Vec<Criterion> {
    let own = own_questions(made_of);
    let mut criteria: Vec<Criterion> = of_tray(&made_of.of.tray, &own).cloned().collect();
    criteria.extend(own);
    for criterion in made_of.line().into_iter().flat_map(|line| &line.criteria) {
        let same = criteria.iter().position(|own| own.rule() == criterion.rule());
        match same.and_then(|at| criteria.get_mut(at)) {
            Some(own) if !own.blocks && (!own.warns || criterion.blocks) => *own = criterion.clone(),
            Some(own) => own.entries.extend(criterion.entries.iter().cloned()),
            None => criteria.push(criterion.clone()),
        }
    }
    criteria
}
