//! Whether a sickness waits in a bed: seen there, written as what its plants died of, or brought by plants of a tray that had it. And
//! whether most of a species died there of nobody knows what.

mod back;
mod ground_kills;

pub(crate) use back::of_beds;

use crate::base::{Day, EntryId, SpeciesKey, TrayCode};
use crate::nursery::pest::{
    DiedOf, Nature, comes_along, eater_of, ground_kills, harms, is_same_pest, is_seen_in, nature_of, says_none, stings,
};
use crate::reckon::bed::eaten::{EATEN_TELLS_DAYS, eaten_by, eats_many, taken_lately};
use crate::reckon::picture::quantity::{BroughtBy, LookAt, NotSo, PestLacks, PestSeen};
use crate::reckon::picture::{Basis, Criterion, Gap, Question, RuleSource};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, Brought, CameFrom, Death, Places, Stay, still_seen};
use crate::reckon::tray::pest::kin::{Died, IN_BED_DAYS, Kin, set_out_with_sick};
use crate::reckon::tray::pest::{
    Around, Deeds, LEAST_UNSAID_PLANTS, LOOK_AFTER_DAYS, LOOK_AFTER_INCURABLE_DAYS, OpenPest, PEST_HOLDS_PCT, Written,
    early, hides_together_days, is_share, met_there, open, plants_to_look_at,
};

/// What lives in the ground unseen is let rest so long after the last plant that had it, with what it does not live on: a year of other
/// plants at least is common practice against wilts; they keep for years. Ours.
pub(crate) const GROUND_RESTS_DAYS: i32 = 365;
/// Animals of the soil of which plants died are no longer taken to be there after so many days. Ours.
const ANIMALS_STAY_DAYS: i32 = 90;
/// Nobody asks any more of what most of a species died, or what plants of a sick tray brought, after so many days: a year of rains and sun
/// has shown it. Ours.
const ASKED_FOR_DAYS: i32 = 365;

/// Of nobody knows what a fifth of a species in a bed may die and ask for care; from more than a third on its planting waits, percent. Ours: a tenth
/// to a fifth is what young trees lose in their first months (common practice).
const UNSAID_CARE_PCT: f64 = 20.0;
const UNSAID_HOLDS_PCT: f64 = 34.0;

/// The criterion `pest` of a bed for a species, where something was seen there that may harm it and is not settled. What lives in its
/// ground, and what spreads from one plant, holds back until it is answered; what else eats there, and plants that came from a sick
/// tray, ask for care. Where most of its plants died of nobody knows what, it holds back.
pub(crate) fn criterion(
    (story, around): (&BedStory, Around<'_>),
    site: &Site,
    species: &SpeciesKey,
    day: Day,
) -> Option<Criterion> {
    let open = open_in_bed(story, around, day);
    let worst = worst_of(open.iter().filter(|pest| harms_species(&pest.seen.what, site, species)));
    let died = || many_died(story, species, day);
    let Some(worst) = worst.filter(|worst| holds_bed(worst) || died().is_none()) else {
        let came = || came_from_dying(story, around.1, day);
        let with_sick = || set_out_with_sick(around.1, story, day);
        return died().or_else(came).or_else(with_sick).or_else(|| shade_goes(story, &open, site));
    };
    let found =
        Criterion::found(Question::Pest, NotSo, Some(worst.seen.clone()), Basis::Measured, false, RuleSource::Pest);
    let found = found.resting_on(open.iter().flat_map(|pest| pest.entries.iter().cloned()));
    let found = found.expected_on(worst.eats_bed.map(|last| last.plus(EATEN_TELLS_DAYS + 1)));
    Some(if holds_bed(worst) { found } else { found.advising() })
}

fn harms_species(what: &str, site: &Site, species: &SpeciesKey) -> bool {
    harms(what, site.profile(species).map(|profile| profile.scientific.as_str()))
}

/// Plants that give shade have what nothing cures and what harms nothing else of the bed: they are taken out, and the light is another then.
fn shade_goes(story: &BedStory, open: &[OpenPest], site: &Site) -> Option<Criterion> {
    let goes = |pest: &OpenPest| {
        let of_it = story.nurses.iter().filter(|nurse| harms_species(&pest.seen.what, site, &nurse.nurse));
        let alive = of_it.map(|nurse| nurse.alive).fold(0, u32::saturating_add);
        let plants = match pest.seen.lacks? {
            PestLacks::TakenOut { least, so_far, .. } => least.saturating_sub(so_far).min(alive),
            PestLacks::Share => alive,
            _ => 0,
        };
        (plants > 0 && holds_bed(pest) && !pest.nature.in_stem).then_some(plants)
    };
    let (pest, plants) = open.iter().filter_map(|pest| Some((pest, goes(pest)?))).max_by_key(|(_, plants)| *plants)?;
    let seen = PestSeen { of_shade: Some(plants), ..pest.seen.clone() };
    let found = Criterion::found(Question::Pest, NotSo, Some(seen), Basis::Measured, false, RuleSource::Pest);
    Some(found.resting_on(pest.entries.iter().cloned()).advising())
}

/// The worst pest of a bed that is not settled.
pub(crate) struct InBed {
    /// The pest.
    pub pest: OpenPest,
    /// Whether it holds the bed back from one species at least.
    pub holds: bool,
    /// The day on which a look falls due, where it is another than that of the pest itself.
    pub due: Option<Day>,
    /// The entries of all that are open.
    pub entries: Vec<EntryId>,
}

/// The worst of what was seen in a bed and not settled; none where nothing is open.
pub(crate) fn worst_of_bed(story: &BedStory, around: Around<'_>, day: Day) -> Option<InBed> {
    let open = open_in_bed(story, around, day);
    let worst = worst_of(open.iter())?;
    let entries = open.iter().flat_map(|pest| pest.entries.iter().cloned()).collect();
    let due = worst.seen.brought.as_ref().map(|by| look_due(story, worst, by));
    Some(InBed { holds: holds_bed(worst), due, pest: worst.clone(), entries })
}

/// Whether something was used in a bed or taken out of it, and when.
pub(crate) fn acted_on(story: &BedStory) -> impl Iterator<Item = Day> {
    story.treatments.iter().filter(|one| one.can_cure()).map(|one| one.day)
}

/// Whether it holds a bed: what lives in its ground, what spreads from one plant, and what nobody knows. Animals of the soil that one
/// sees while digging hold it where they are many. Plants from a tray with a sickness of the soil hold it until they are looked at: one is
/// enough, and nobody puts more into suspect ground; of other sick trays, and of damping-off, they ask for care.
fn holds_bed(pest: &OpenPest) -> bool {
    let nature = pest.nature;
    if pest.eats_bed.is_some() || stings(&pest.seen.what) || ground_kills(&pest.seen.what) {
        return true;
    }
    if pest.seen.brought.is_some() {
        return nature.in_soil && !nature.by_eye && !nature.is_damping;
    }
    if nature.by_eye { pest.on_many() } else { !leaves_bed(pest) }
}

/// Whether it leaves a bed by itself, as what eats there and flies on does; a borer leaves no ground sick.
fn leaves_bed(pest: &OpenPest) -> bool {
    pest.nature.goes_by_itself() || pest.nature.in_stem
}

fn worst_of<'a>(open: impl Iterator<Item = &'a OpenPest>) -> Option<&'a OpenPest> {
    // What stings people comes before all that harms plants.
    open.max_by_key(|pest| {
        (stings(&pest.seen.what), holds_bed(pest), pest.seen.lacks.is_some(), pest.seen.in_soil, pest.seen.on)
    })
}

fn open_in_bed(story: &BedStory, (places, kin): Around<'_>, day: Day) -> Vec<OpenPest> {
    let died: Vec<(&Death, Written)> =
        story.deaths.iter().filter_map(|death| Some((death, died_of_it(story, death)?))).collect();
    let died: Vec<(&Death, Written)> = died.into_iter().filter(|(death, _)| stays(story, death, day)).collect();
    let (from_places, sisters) = (seen_where_they_stood(story, places, day), sisters_of(story, kin));
    let nothing = story.brought.is_empty() && from_places.is_empty() && sisters.is_empty();
    if story.pests.is_empty() && died.is_empty() && nothing {
        return Vec::new();
    }
    let deeds = DeedsInBed { story };
    let mut all = open(died.iter().map(|(_, look)| look).chain(&story.pests), &deeds, day);
    let of_trays = story.brought.iter().map(|brought| (brought, None, None));
    let of_sisters = sisters.iter().map(|(brought, with)| (brought, None, with.as_ref()));
    let brought = of_trays.chain(of_sisters).chain(from_places.iter().map(|came| (&came.brought, came.left, None)));
    for (one, left, with) in brought.filter(|(one, ..)| one.planted <= day && one.seen.from <= day) {
        if !all.iter().any(|pest| is_same_pest(&pest.seen.what, &one.seen.what.what)) {
            all.extend(still_brought(story, (one, with), left, day));
        }
    }
    for pest in &mut all {
        pest.seen.in_bed = true;
        pest.eats_bed = eats_many(story, pest, day);
    }
    all
}

/// Plants that came from a sick tray, or from a place where a sickness was seen while they stood there or soon after.
struct Came {
    brought: Brought,
    /// The day on which they left that place, where it was seen there after that.
    left: Option<Day>,
}

/// Sicknesses that were seen at a place while plants that were set out here stood there, or so soon after that it was hidden in them, and
/// that no look at them or at the place found gone before.
fn seen_where_they_stood(story: &BedStory, places: &Places, day: Day) -> Vec<Came> {
    let of_plants = |came: &CameFrom| {
        let met = |look: &Written, stay: &Stay| met_there(look, stay.from, Some(stay.until));
        let there: Vec<_> = came.there(places, |place| place.pests.iter(), met).collect();
        let looks = came.clear.iter().chain(there.iter().map(|(_, look)| *look));
        let looks = looks.filter(|look| comes_along(&look.what.what)).cloned().collect();
        let open = if there.is_empty() { Vec::new() } else { still_seen(looks, came.planted) };
        let brought = open.into_iter().map(|seen| {
            let stays = || there.iter().filter(|(_, look)| look.entry == seen.entry).map(|(stay, _)| *stay);
            let last = stays().max_by_key(|stay| stay.until);
            let left = last.map(|stay| stay.until).filter(|until| *until < seen.from);
            let (tray, entry) = (came.tray.clone(), came.entry.clone());
            let place = last.map(|stay| stay.place.clone());
            Came { brought: Brought { tray, plants: came.plants, planted: came.planted, seen, place, entry }, left }
        });
        brought.collect::<Vec<_>>()
    };
    story.came_from.iter().filter(|came| came.planted <= day).flat_map(of_plants).collect()
}

/// Sicknesses that were seen in trays from which plants had come into the tray they were set out from, or whose plants had been together
/// with them, so soon after that it was hidden in them: with the tray in which it was seen, where none of them came out of that.
fn sisters_of(story: &BedStory, kin: &Kin) -> Vec<(Brought, Option<TrayCode>)> {
    let of_plants = |came: &CameFrom| {
        let sisters = kin.sisters(&came.tray).iter().filter(|sister| {
            let look = &sister.seen;
            let hides = hides_together_days(nature_of(&look.what.what, look.what.spreads));
            let hidden = look.from.days_since(sister.out_of.left.min(came.planted)) <= hides;
            let known = story.brought.iter().any(|brought| brought.seen.entry == look.entry);
            // What was seen in a bed asks for care in others of the same tray.
            hidden && !known && sister.out_of.bed.is_none() && sister.came.is_none_or(|on| on <= came.planted)
        });
        let brought = sisters.map(|sister| {
            let (seen_in, together) = (sister.out_of.tray.clone(), sister.out_of.together);
            let (tray, with) = if together { (came.tray.clone(), Some(seen_in)) } else { (seen_in, None) };
            // What stood in the tray before came from nowhere: all of it was there.
            let plants = if sister.came.is_some() { came.plants.min(sister.out_of.plants) } else { came.plants };
            let (planted, seen, entry) = (came.planted, sister.seen.clone(), came.entry.clone());
            (Brought { tray, plants, planted, seen, place: None, entry }, with)
        });
        brought.collect::<Vec<_>>()
    };
    story.came_from.iter().flat_map(of_plants).collect()
}

/// That plants were set out here from a tray in which others died of nobody knows what, until somebody looks at these, or counts them
/// weeks later.
fn came_from_dying(story: &BedStory, kin: &Kin, day: Day) -> Option<Criterion> {
    let lately = story.came_from.iter().filter(|came| (0..=IN_BED_DAYS).contains(&day.days_since(came.planted)));
    let all = lately.flat_map(|came| kin.died(&came.tray).iter().map(move |died| (came, died)));
    let answered = |came: &CameFrom, died: &Died| {
        let looked = story.pests.iter().any(|look| (died.deaths.on.max(came.planted)..=day).contains(&look.from));
        let mut counts = story.deaths.iter().filter(|look| look.is_count && look.day <= day && look.day > came.planted);
        looked
            || counts
                .any(|look| look.day >= died.deaths.again_from && !is_share(look.plants, look.alive, PEST_HOLDS_PCT))
    };
    let mut asked =
        all.filter(|(came, died)| died.is_of(&came.tray, came.planted, came.plants) && !answered(came, died));
    let (came, died) = asked.next()?;
    let (tray, deaths) = (died.tray.clone(), &died.deaths);
    let plants = if died.tray == came.tray { came.plants } else { came.plants.min(died.plants) };
    let gap = Gap::SetOutFromDying { tray, plants, on: deaths.on, gone: deaths.gone, alive: deaths.alive };
    let unknown = Criterion::lacking(Question::Pest, Some(NotSo), Some(gap), false, RuleSource::Pest);
    Some(Criterion { warns: true, ..unknown.resting_on([deaths.entry.clone(), came.entry.clone()]) })
}

/// A sickness of which plants died, as a sighting on the share of those that stood: of a count those that died since the last, where
/// any did. One or two plants that grubs or termites took are no more than every bed loses.
fn died_of_it(story: &BedStory, death: &Death) -> Option<Written> {
    let by_eye = nature_of(&death.what, None).by_eye;
    let dead = if death.plants > 0 || by_eye { death.plants } else { death.dead };
    // What ate a tenth of them in a few weeks is there still.
    let eaten = eaten_by(story, death);
    let dead = eaten.unwrap_or(dead);
    let there = u64::from(death.alive) + u64::from(dead);
    (eaten.is_some() || is_seen_in(death.of, &death.what, dead))
        .then(|| Written::of_loss(&death.entry, death.day, &death.what, (dead, Some(there)), false))
}

/// Animals of the soil leave by themselves: a later count of the same species that does not name them, or time, is enough.
fn stays(story: &BedStory, death: &Death, day: Day) -> bool {
    let nature = nature_of(&death.what, None);
    let eats = nature.goes_by_itself() && eater_of(&death.what).is_some();
    if !nature.by_eye && !eats {
        return true;
    }
    let later = story.deaths.iter().filter(|later| later.is_count && later.day > death.day && later.day <= day);
    let mut others = later.filter(|later| later.species == death.species && !is_same_pest(&later.what, &death.what));
    day.days_since(death.day) <= ANIMALS_STAY_DAYS && others.next().is_none()
}

/// What was done against sicknesses of a bed.
struct DeedsInBed<'a> {
    story: &'a BedStory,
}

impl Deeds for DeedsInBed<'_> {
    fn settled(&self, pest: &OpenPest, look: &Written) -> bool {
        if leaves_bed(pest) {
            return true;
        }
        let Ok(from) = self.look_from(pest, look.from) else { return false };
        let seen = look.what.plants_seen.unwrap_or(0);
        from <= look.from
            && match self.look_at(pest) {
                LookAt::RootsGrown(plants) | LookAt::HostsGrown(plants) => look.what.roots_seen && seen >= plants,
                LookAt::Plants(plants) | LookAt::Roots(plants) => seen >= plants,
                LookAt::Ground | LookAt::Bed | LookAt::Rested | LookAt::Brought => true,
            }
    }

    fn lacking(&self, pest: &OpenPest, day: Day) -> Option<PestLacks> {
        if leaves_bed(pest) {
            return None;
        }
        Some(match self.look_from(pest, day) {
            Ok(from) => {
                let early = early(&self.story.pests, pest, from);
                PestLacks::Look { from, is_due: from <= day, early, at: self.look_at(pest) }
            }
            Err(lacks) => lacks,
        })
    }

    /// Whether the plants that stand there say as much as a look: of a sickness that is known by the dead alone, and seen on plants,
    /// a later count of the living that names no sickness. What roots tell, no count does.
    fn counted_clear(&self, pest: &OpenPest, day: Day) -> bool {
        let (story, seen) = (self.story, &pest.seen);
        let by_roots = matches!(self.look_at(pest), LookAt::RootsGrown(_) | LookAt::HostsGrown(_) | LookAt::Rested);
        let of_it = |death: &&Death| death.of == DiedOf::Sickness && is_same_pest(&death.what, &seen.what);
        let looked = story.pests.iter().any(|look| is_same_pest(&look.what.what, &seen.what) && look.from <= day);
        let Some(first) = story.deaths.iter().find(of_it).filter(|_| !by_roots && !looked) else { return false };
        let counts =
            story.deaths.iter().filter(|look| look.is_count && look.species == first.species && look.alive > 0);
        counts.filter(|look| look.day <= day && look.of != DiedOf::Sickness).any(|look| {
            let died = story.deaths.iter().filter(|death| death.species == look.species);
            let unsaid =
                died.filter(|death| death.of == DiedOf::NotSaid && death.day > seen.on && death.day <= look.day);
            let unsaid: f64 = unsaid.map(|death| f64::from(death.plants)).sum();
            let calm = unsaid * 100.0 < f64::from(look.alive) * PEST_HOLDS_PCT;
            calm && self.look_from(pest, look.day).is_ok_and(|from| from <= look.day)
        })
    }
}

impl DeedsInBed<'_> {
    /// The day from which a look tells whether a pest is gone, by what was done up to a day; else what is missing.
    fn look_from(&self, pest: &OpenPest, until: Day) -> Result<Day, PestLacks> {
        let nature = pest.nature;
        if nature.is_unknown {
            return Err(PestLacks::Kind);
        }
        if nature.by_eye {
            return Ok(pest.seen.on.plus(pest.look_after_days()));
        }
        let days = pest.seen.on..=until;
        let treated = acted_on(self.story).filter(|on| days.contains(on)).min();
        let done = match (treated.filter(|_| nature.has_cure), self.taken_out(pest, until)) {
            (Some(treated), Ok(out)) => treated.min(out),
            (Some(on), Err(_)) | (None, Ok(on)) => on,
            (None, Err(lacks)) => return Err(lacks),
        };
        let rests = match nature {
            Nature { unseen_in_ground: true, .. } => GROUND_RESTS_DAYS,
            Nature { in_roots: true, .. } => LOOK_AFTER_INCURABLE_DAYS,
            _ => pest.look_after_days(),
        };
        Ok(done.max(self.last_died(pest, until).unwrap_or(done)).plus(rests))
    }

    /// The day by which as many plants were out as had it. Where none stood there is nothing to take out: what no treatment cures then
    /// only rests.
    fn taken_out(&self, pest: &OpenPest, until: Day) -> Result<Day, PestLacks> {
        let stood = pest.stood.unwrap_or(0);
        if stood == 0 {
            return if pest.nature.has_cure { Err(PestLacks::Deed) } else { Ok(pest.seen.on) };
        }
        let share = pest.seen.share_pct.ok_or(PestLacks::Share)? / 100.0;
        let least = (stood as f64 * share - 1e-9).ceil().max(1.0) as u64;
        let mut so_far = 0;
        // What cattle or the sun took was not dug out; what was felled was.
        let is_out = |death: &&Death| death.of != DiedOf::Harm || death.what.is_empty();
        let gone = self.story.deaths.iter().filter(|death| (pest.seen.on..=until).contains(&death.day)).filter(is_out);
        for death in gone {
            so_far += u64::from(death.plants.max(if death.of == DiedOf::Sickness { death.dead } else { 0 }));
            if so_far >= least {
                return Ok(death.day);
            }
        }
        let whole = |plants: u64| u32::try_from(plants).unwrap_or(u32::MAX);
        let (least, so_far, or_treated) = (whole(least), whole(so_far), pest.nature.has_cure);
        Err(PestLacks::TakenOut { least, so_far, or_treated })
    }

    /// The last day up to one on which plants died of it.
    fn last_died(&self, pest: &OpenPest, until: Day) -> Option<Day> {
        let died = self.story.deaths.iter().filter(|death| death.of == DiedOf::Sickness && death.plants > 0);
        died.filter(|death| death.day <= until && is_same_pest(&death.what, &pest.seen.what))
            .map(|death| death.day)
            .max()
    }

    /// What a look that tells looks at.
    fn look_at(&self, pest: &OpenPest) -> LookAt {
        let nature = pest.nature;
        let living: u64 = self.story.cohorts.iter().map(|cohort| u64::from(cohort.living)).sum();
        if nature.unseen_in_ground {
            LookAt::Rested
        } else if nature.in_roots {
            LookAt::HostsGrown(plants_to_look_at(u64::from(u32::MAX), pest.seen.share_pct))
        } else if nature.in_soil && !nature.has_cure && !nature.by_eye {
            LookAt::RootsGrown(plants_to_look_at(u64::from(u32::MAX), pest.seen.share_pct))
        } else if nature.in_soil {
            LookAt::Ground
        } else if living > 0 {
            LookAt::Plants(plants_to_look_at(living, pest.seen.share_pct))
        } else {
            LookAt::Bed
        }
    }
}

/// A sickness that came with plants of a tray, until a look at them weeks later finds none of it, or they are gone and it is none of
/// the ground.
fn still_brought(
    story: &BedStory,
    (one, with): (&Brought, Option<&TrayCode>),
    left: Option<Day>,
    day: Day,
) -> Option<OpenPest> {
    let mut pest = OpenPest::begun(&one.seen);
    // What they got there they had when they left.
    let since = left.unwrap_or(one.seen.from).max(one.planted);
    let from = since.plus(pest.look_after_days());
    let plants = plants_to_look_at(u64::from(one.plants), None);
    let cohorts = story.cohorts.iter().map(|cohort| (&cohort.entry, cohort.living));
    let mut set_out = cohorts.chain(story.nurses.iter().map(|nurse| (&nurse.entry, nurse.alive)));
    let living = set_out.find(|(entry, _)| **entry == one.entry).map_or(0, |(_, living)| living);
    let enough = |look: &&Written| look.what.plants_seen.is_some_and(|seen| seen >= plants.min(living));
    let mut clear = looks_at(story, &one.seen).filter(|look| look.what.share_pct == Some(0.0));
    let known = nature_of(&one.seen.what.what, said_of(story, &one.seen));
    let settled = clear.any(|look| (from..=day).contains(&look.from) && enough(&look))
        || known.goes_by_itself()
        || (living == 0 && !known.in_soil)
        || day.days_since(since) > ASKED_FOR_DAYS;
    if settled {
        return None;
    }
    pest.nature = known;
    pest.entries.push(one.entry.clone());
    let (tray, place) = (one.tray.clone(), one.place.clone());
    let (with, on) = (with.cloned(), one.planted);
    pest.seen.brought = Some(BroughtBy { tray, with, place, left, plants: one.plants, on, look_at: plants });
    let early = early(&story.pests, &pest, from);
    pest.seen.lacks = Some(PestLacks::Look { from, is_due: from <= day, early, at: LookAt::Brought });
    Some(pest)
}

/// Looks in the bed for a sickness that was seen elsewhere, or for all.
fn looks_at<'a>(story: &'a BedStory, seen: &'a Written) -> impl Iterator<Item = &'a Written> {
    let for_it = |look: &&Written| says_none(&look.what.what) || is_same_pest(&look.what.what, &seen.what.what);
    story.pests.iter().filter(for_it)
}

/// What a person said last of whether it goes along with plants.
fn said_of(story: &BedStory, seen: &Written) -> Option<bool> {
    looks_at(story, seen).filter_map(|look| look.what.spreads).last().or(seen.what.spreads)
}

/// When plants from a sick tray are looked at: at once, and again on the day on which a look tells.
fn look_due(story: &BedStory, pest: &OpenPest, by: &BroughtBy) -> Day {
    let since = by.left.unwrap_or(pest.seen.on).max(by.on);
    let for_it = |look: &&Written| says_none(&look.what.what) || is_same_pest(&look.what.what, &pest.seen.what);
    let looked = story.pests.iter().filter(for_it).any(|look| look.from >= since);
    if looked { since.plus(pest.look_after_days()) } else { since }
}

/// Many plants of a species dead of the ground itself, or of nobody knows what: what holds goes before what asks for care.
pub(crate) fn many_died(story: &BedStory, species: &SpeciesKey, day: Day) -> Option<Criterion> {
    let unsaid = most_died(story, species, day);
    let killed = ground_kills::criterion(story, species, day);
    if unsaid.as_ref().is_some_and(|asked| asked.blocks) && killed.as_ref().is_some_and(|asked| !asked.blocks) {
        return unsaid;
    }
    killed.or(unsaid)
}

/// By how many more of a species live at a count than at an earlier one, without those set out in between. What was set out on the day of
/// the earlier one may have come after it, where others stood there before.
fn risen(story: &BedStory, at: &Death, death: &Death) -> u32 {
    let cohorts =
        story.cohorts.iter().filter(|cohort| !cohort.found && cohort.species.as_ref() == Some(&death.species));
    let nurses = story.nurses.iter().filter(|nurse| nurse.nurse == death.species);
    let all: Vec<(Day, u32)> = cohorts
        .map(|cohort| (cohort.day, cohort.planted))
        .chain(nurses.map(|nurse| (nurse.day, nurse.planted)))
        .collect();
    let stood = all.iter().any(|(on, _)| *on < at.day);
    let since = |on: Day| on <= death.day && (on > at.day || stood && on == at.day);
    let set_out = all.iter().filter(|(on, _)| since(*on)).map(|(_, planted)| *planted).fold(0, u32::saturating_add);
    death.alive.saturating_sub(at.alive.saturating_add(set_out))
}

/// More than a third of the plants of a species dead or gone (of a fifth it asks for care), of nobody knows what, until somebody writes of
/// what, or a count weeks later finds few more, or one finds most of them alive.
fn most_died(story: &BedStory, species: &SpeciesKey, day: Day) -> Option<Criterion> {
    let (mut said, mut unsaid, mut answered) = (0_u32, 0_u32, 0_u32);
    let mut asked: Option<(&Death, u32)> = None;
    for death in story.deaths.iter().filter(|death| death.species == *species && death.day <= day) {
        if death.of != DiedOf::NotSaid {
            said = said.saturating_add(death.plants.max(if death.is_count { 0 } else { death.dead }));
            if death.is_count || asked.is_some_and(|(_, dead)| death.dead >= dead) {
                (asked, unsaid) = (None, 0);
            }
            continue;
        }
        if !death.is_count {
            unsaid = unsaid.saturating_add(death.dead);
            asked = Some((death, unsaid)).filter(|_| is_share(unsaid, death.alive, UNSAID_CARE_PCT)).or(asked);
            continue;
        }
        let few = !is_share(death.plants, death.alive, PEST_HOLDS_PCT);
        let later = asked.is_some_and(|(at, _)| few && death.day >= at.day.plus(LOOK_AFTER_DAYS));
        // Plants that were set in since explain a rise; what no planting explains was never gone.
        let back = asked.map_or(0, |(at, _)| death.back.min(risen(story, at, death)));
        let still = asked.map_or(0, |(_, dead)| dead.saturating_sub(back));
        if later || back > 0 && !is_share(still, death.alive, UNSAID_CARE_PCT) {
            answered = death.dead.saturating_sub(said);
            (asked, unsaid) = (None, 0);
            continue;
        }
        if back > 0 {
            (asked, unsaid) = (Some((death, still)), still);
            continue;
        }
        let found = death.dead.saturating_sub(said.saturating_add(answered));
        unsaid = unsaid.max(found);
        // The same dead found again are no more than they were; what is gone and was not seen to die is gone.
        let here = match asked {
            Some(_) if death.plants == 0 => continue,
            Some((_, dead)) => found.max(dead.saturating_add(death.plants)),
            None => found.max(death.plants),
        };
        if is_share(here, death.alive, UNSAID_CARE_PCT) {
            asked = Some((death, here));
        }
    }
    let (death, dead) = asked.filter(|(death, _)| day.days_since(death.day) <= ASKED_FOR_DAYS)?;
    if story.pests.iter().any(|look| (death.day..=day).contains(&look.from)) {
        return None;
    }
    let again_from = death.day.plus(LOOK_AFTER_DAYS);
    let gap = Gap::MostOfBedDied { on: death.day, dead, alive: death.alive, again_from };
    let holds = dead >= LEAST_UNSAID_PLANTS && is_share(dead, death.alive, UNSAID_HOLDS_PCT);
    let unknown = Criterion::lacking(Question::Pest, Some(NotSo), Some(gap), holds, RuleSource::Pest);
    Some(Criterion { warns: !holds, ..unknown.resting_on([death.entry.clone()]) })
}
