//! A bed that is too dark for a species: the fewest stems or leaves whose cutting brings most positions into its band, with
//! what that does to the plants that stand there, and what falls as mulch.

use crate::base::{Day, EntryId, SpeciesKey};
use crate::nursery::entry::BedSet;
use crate::nursery::entry::types::CutWhat;
use crate::reckon::field::{gives_now_kg, grid_of};
use crate::reckon::light::by_reading::{self, density};
use crate::reckon::light::coming::going_on;
use crate::reckon::light::crown::{Size, TREE_M, crown, day_taken};
use crate::reckon::light::in_band::HALF_YEAR_MONTHS;
use crate::reckon::light::months::month_on;
use crate::reckon::light::scene::{
    crowns_of, ground_of, living_of, points_of, seen_along, some_of, species_living, suns_of,
};
use crate::reckon::light::stand::{FOLLOWER_GROWN_DAYS, FOLLOWER_LEAVES, Stand, When, has_followers, stands};
use crate::reckon::light::{MOST_POINTS, SKY_DIRECTIONS, mean};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, LEAVES_BACK_DAYS, lifts_tubers};
use crate::reckon::tray::exposure::light_band;
use crate::science::shade::crown::Crown;
use crate::science::shade::cuts::{Band, Cuts, LightTable, Limits};
use crate::science::shade::sky::together;
use crate::science::shade::{Month, Positions, even_sky, maps};

/// Most stems that are looked for. Ours: more are a new planting.
const MOST_CUTS: usize = 8;
/// No living plant gets more than so many times its light in a day. Ours: no publication gives a safe number.
pub(crate) const MOST_STEP: f64 = 1.6;
/// Of the shade over the open positions no more goes at one time. Ours: as `SHADE_ENDS_SHARE`, no bed loses more in a month.
pub(crate) const MOST_SHADE_LOST: f64 = 0.25;
/// A cut that brings fewer of the positions is not advised: each is to bring so many, one with the other. Ours.
const LEAST_GAIN: f64 = 0.05;
/// And all of them together so many. Ours: a reading of light errs by as much.
const LEAST_GAIN_IN_ALL: f64 = 0.10;
/// Of a plant that is chopped a third of the leaves stays. Common practice: what is stripped whole dies of it (Duguma 1988).
const CHOPPED_SHARE: f64 = 2.0 / 3.0;
/// Leaf area of a kilogram of dry leaves, m2. From memory.
const LEAF_M2_PER_KG: f64 = 15.0;
/// Positions, moments of the sun and directions of the sky while sets are tried. Ours: some hundred thousand sets then take less
/// than a second; what is chosen is reckoned as finely as everything else.
const TRIED_POINTS: usize = 32;
const TRIED_SUN: u32 = 16;
const TRIED_SKY: u32 = 100;

/// So many cuts, and what they bring.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Tried {
    /// Plants cut.
    pub cuts: usize,
    /// Positions inside the band afterwards, of those looked at.
    pub inside: usize,
    /// Whether every set of as many was tried.
    pub proven: bool,
}

/// A plant to cut.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct ToCut {
    /// The nurse plant.
    pub nurse: SpeciesKey,
    /// What: a stem, leaves, or the harvest that lifts it.
    pub what: CutWhat,
    /// Metres along the bed and across it.
    pub at_m: [f64; 2],
}

/// The cuts that are advised.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct Advice {
    /// The plants.
    pub plants: Vec<ToCut>,
    /// Whether every set of as many was tried.
    pub proven: bool,
    /// Whether it is known where each plant stands; else only how many live, and they are taken to stand evenly.
    pub places_known: bool,
    /// The share of open positions inside the band as the mean of six months, without the cuts and with them.
    pub half_year: (f64, f64),
    /// The share of the shade over them that goes.
    pub shade_lost: f64,
    /// How many times as much light the living plant gets that gains most; none where none stands there.
    pub step: Option<f64>,
    /// Dry leaves, kg.
    pub mulch_kg: f64,
    /// Bunches or tubers that are cut with it, kg: least and most.
    pub food_kg: (f64, f64),
}

/// What cuts come to in a bed that is too dark.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct FewestCuts {
    /// Positions looked at.
    pub positions: usize,
    /// The band of the species.
    pub band: (f64, f64),
    /// No cut, one, two ... as far as the limits allow.
    pub tried: Vec<Tried>,
    /// The fewest that bring most; none where none helps, or none brings enough.
    pub advice: Option<Advice>,
}

impl FewestCuts {
    /// Whether some cut brings more positions into the band, enough or not.
    pub(crate) fn some_help(&self) -> bool {
        let without = self.tried.first().map_or(0, |one| one.inside);
        self.tried.iter().any(|one| one.inside > without)
    }
}

/// One plant that can be cut.
struct Plant {
    entry: EntryId,
    spot: [f64; 2],
    cut: ToCut,
    /// Of its shade so much stays when it is cut.
    stays: f64,
}

/// The fewest cuts for a species; none where the bed is not too dark for it, no nurse plant stands there, or its light cannot
/// be reckoned.
pub(crate) fn fewest_cuts(story: &BedStory, site: &Site, species: &SpeciesKey, day: Day) -> Option<FewestCuts> {
    let bed = story.layout.on(day).filter(|_| !story.nurses.is_empty())?;
    let band = light_band(site.profile(species).map(|profile| &**profile)).filter(|band| *band != (0.0, 1.0))?;
    let told = by_reading::told(story, site, bed, species, day);
    let factor = density(told.as_ref(), day).factor;
    let standing = stands(story, site, bed, When { day, before: None }).ok()?;
    let plants = plants_of(story, site, &standing);
    let open = points_of(story, site, bed, species, day, MOST_POINTS);
    let scene = Scene { story, site, bed, factor, plants: &plants, open: &open, day };
    let before = scene.light(&standing, &[], day)?;
    if mean(&before) >= band.0 || plants.is_empty() {
        return None;
    }
    let (positions, found) = scene.tried(&standing, band)?;
    let tried: Vec<Tried> =
        found.iter().map(|cuts| Tried { cuts: cuts.crowns.len(), inside: cuts.in_band, proven: cuts.proven }).collect();
    let advice = worth_it(&found, positions).and_then(|cuts| scene.advice(&standing, cuts, (band, &before)));
    // What is inside today and out of the band in most months after it is no gain.
    let advice = advice.filter(|advice| advice.half_year.1 > advice.half_year.0);
    Some(FewestCuts { positions, band, tried, advice })
}

/// The fewest cuts that bring most, among those that bring enough for what they take.
fn worth_it(found: &[Cuts], positions: usize) -> Option<&Cuts> {
    let without = found.first()?.in_band;
    let (each, in_all) = (LEAST_GAIN * positions as f64, LEAST_GAIN_IN_ALL * positions as f64);
    let is_worth = |cuts: &&Cuts| {
        let gain = cuts.in_band.saturating_sub(without) as f64;
        !cuts.crowns.is_empty() && gain >= in_all && gain >= each * cuts.crowns.len() as f64
    };
    let best = found.iter().filter(is_worth).map(|cuts| cuts.in_band).max()?;
    found.iter().filter(is_worth).find(|cuts| cuts.in_band == best)
}

/// Every plant that shades and can be cut, in the order of what stands.
fn plants_of(story: &BedStory, site: &Site, standing: &[Stand]) -> Vec<Plant> {
    let mut all = Vec::new();
    for stand in standing {
        let Some(nurse) = story.nurses.iter().find(|nurse| nurse.entry == stand.entry) else { continue };
        let followed = site.profile(&nurse.nurse).is_some_and(|profile| has_followers(profile));
        let (what, stays) = if followed {
            (CutWhat::Stem, FOLLOWER_LEAVES)
        } else if lifts_tubers(&nurse.nurse) {
            (CutWhat::Harvest, 0.0)
        } else {
            (CutWhat::Leaves, 1.0 - CHOPPED_SHARE)
        };
        all.extend(stand.spots.iter().map(|spot| Plant {
            entry: stand.entry.clone(),
            spot: *spot,
            cut: ToCut { nurse: nurse.nurse.clone(), what, at_m: *spot },
            stays,
        }));
    }
    all
}

/// How much of its shade a plant has so many days after it was cut.
fn back(plant: &Plant, days: f64) -> f64 {
    let whole_after = match plant.cut.what {
        CutWhat::Stem => FOLLOWER_GROWN_DAYS,
        CutWhat::Leaves => LEAVES_BACK_DAYS,
        CutWhat::Harvest | CutWhat::Felled => return 0.0,
    };
    plant.stays + (1.0 - plant.stays) * (days / whole_after).clamp(0.0, 1.0)
}

struct Scene<'a> {
    story: &'a BedStory,
    site: &'a Site,
    bed: &'a BedSet,
    factor: f64,
    plants: &'a [Plant],
    open: &'a [[f64; 2]],
    day: Day,
}

impl Scene<'_> {
    /// The light at the open positions on a day, some plants cut today.
    fn light(&self, standing: &[Stand], cut: &[usize], on: Day) -> Option<Vec<f64>> {
        self.light_at(self.open, standing, cut, on)
    }

    fn light_at(&self, points: &[[f64; 2]], standing: &[Stand], cut: &[usize], on: Day) -> Option<Vec<f64>> {
        let positions = Positions::new(points, TREE_M, ground_of(self.bed)).ok()?;
        let (sun, diffuse_share) = suns_of(self.site, self.bed, on);
        let mut crowns = crowns_of(standing, |leaves| leaves.likely, self.factor);
        let days = f64::from(day_taken(on).days_since(self.day).max(0));
        let of_cut: Vec<&Plant> = cut.iter().filter_map(|at| self.plants.get(*at)).collect();
        let cut_there = |at: [f64; 2]| of_cut.iter().find(|plant| plant.spot == at);
        for crown in &mut crowns {
            if let Some(plant) = cut_there(crown.at()) {
                *crown = crown.leafier(back(plant, days));
            }
        }
        let made = maps(&positions, &[Month { crowns, sun }], &seen_along(&even_sky(SKY_DIRECTIONS), self.bed));
        let light = made.first().map(|map| map.light(diffuse_share)).unwrap_or_default();
        Some(light.into_iter().map(|light| light.min(1.0)).collect())
    }

    /// Positions at which plants live, of whatever species.
    fn living(&self) -> Vec<[f64; 2]> {
        let of = |key: &SpeciesKey| living_of(self.story, self.site, key, self.day);
        species_living(self.story).iter().flat_map(of).collect()
    }

    /// The best sets of no cut, one cut ... and how many positions were looked at.
    fn tried(&self, standing: &[Stand], band: (f64, f64)) -> Option<(usize, Vec<Cuts>)> {
        let ground = ground_of(self.bed);
        let raised = |[x, y]: [f64; 2]| [x, y, TREE_M + ground.height_m([x, y])];
        let counted = some_of(self.open.to_vec(), TRIED_POINTS);
        let guarded = some_of(self.living(), TRIED_POINTS);
        let points: Vec<[f64; 3]> = counted.iter().chain(&guarded).map(|point| raised(*point)).collect();
        let (mut goes, mut stays) = (Vec::new(), Vec::new());
        let mut plants = self.plants.iter().peekable();
        for stand in standing {
            let density = stand.density.0 * stand.leaves.likely * self.factor;
            let drawn = |spot: [f64; 2], share: f64| {
                let one = crown(spot, stand.size, (density * share, stand.density.1))?;
                one.lifted(ground.height_m(one.at()))
            };
            for spot in &stand.spots {
                match plants.next_if(|plant| plant.entry == stand.entry && plant.spot == *spot) {
                    // One that is too small to shade keeps its place in the list.
                    Some(plant) => {
                        goes.push(drawn(*spot, 1.0 - plant.stays).or_else(|| no_shade(*spot))?);
                        stays.extend(drawn(*spot, plant.stays));
                    }
                    None => stays.extend(drawn(*spot, 1.0)),
                }
            }
        }
        let (sun, diffuse_share) = suns_of(self.site, self.bed, self.day);
        let every = (sun.len() / TRIED_SUN as usize).max(1);
        let some: Vec<_> = sun.iter().step_by(every).copied().collect();
        let weights: f64 = some.iter().map(|one| one.weight).sum();
        let some: Vec<_> = some
            .into_iter()
            .map(|one| crate::science::shade::Direction { weight: one.weight / weights.max(f64::MIN_POSITIVE), ..one })
            .collect();
        let lights = together(diffuse_share, &seen_along(&even_sky(TRIED_SKY), self.bed), &some);
        let table = LightTable::new(&points, (&goes, &stays), &lights, ground).ok()?;
        let limits = Limits { counted: counted.len(), most_step: MOST_STEP, most_shade: MOST_SHADE_LOST };
        let found = table.best_cuts(Band::new(band.0, band.1).ok()?, Some(limits), MOST_CUTS);
        Some((counted.len(), found))
    }

    fn advice(&self, standing: &[Stand], cuts: &Cuts, (band, before): ((f64, f64), &[f64])) -> Option<Advice> {
        let after = self.light(standing, &cuts.crowns, self.day)?;
        let shade = |light: &[f64]| light.iter().map(|light| 1.0 - light).sum::<f64>();
        let living = some_of(self.living(), MOST_POINTS);
        let had = self.light_at(&living, standing, &[], self.day)?;
        let gets = self.light_at(&living, standing, &cuts.crowns, self.day)?;
        let step = had.iter().zip(&gets).map(|(had, gets)| gets / had.max(f64::MIN_POSITIVE)).reduce(f64::max);
        let plants: Vec<&Plant> = cuts.crowns.iter().filter_map(|at| self.plants.get(*at)).collect();
        let grid = |plant: &Plant| {
            let nurse = self.story.nurses.iter().find(|nurse| nurse.entry == plant.entry);
            nurse.is_some_and(|nurse| {
                nurse.alive == nurse.planted && grid_of(nurse, (self.bed.length_m.0, self.bed.width_m.0)).is_some()
            })
        };
        Some(Advice {
            proven: cuts.proven,
            places_known: plants.iter().all(|plant| grid(plant)),
            half_year: (self.half_year(&[], band)?, self.half_year(&cuts.crowns, band)?),
            shade_lost: 1.0 - shade(&after) / shade(before).max(f64::MIN_POSITIVE),
            step,
            mulch_kg: plants.iter().map(|plant| self.mulch_kg(standing, plant)).sum(),
            food_kg: plants.iter().map(|plant| self.food_kg(plant)).fold((0.0, 0.0), |all, one| {
                let (least, most): (f64, f64) = all;
                (least + one.0, most + one.1)
            }),
            plants: plants.into_iter().map(|plant| plant.cut.clone()).collect(),
        })
    }

    /// The mean share of open positions inside the band over six months.
    fn half_year(&self, cut: &[usize], (least, most): (f64, f64)) -> Option<f64> {
        let later = going_on(self.story, self.site, self.day);
        let inside = (0..HALF_YEAR_MONTHS).map(|at| {
            let on = month_on(self.day, at);
            let standing = stands(&later, self.site, self.bed, When { day: on, before: None }).ok()?;
            let light = self.light(&standing, cut, on)?;
            let inside = light.iter().filter(|light| (least..=most).contains(*light)).count();
            Some(inside as f64 / light.len().max(1) as f64)
        });
        let inside: Vec<f64> = inside.collect::<Option<_>>()?;
        Some(inside.iter().sum::<f64>() / inside.len() as f64)
    }

    /// What is eaten of a plant that is cut.
    fn food_kg(&self, plant: &Plant) -> (f64, f64) {
        let nurse = self.story.nurses.iter().find(|nurse| nurse.entry == plant.entry);
        let told = nurse.and_then(|nurse| Some(gives_now_kg(nurse, self.site.profile(&nurse.nurse)?, self.day)));
        told.filter(|_| plant.cut.what != CutWhat::Leaves).unwrap_or_default()
    }

    /// The dry leaves that fall with a plant.
    fn mulch_kg(&self, standing: &[Stand], plant: &Plant) -> f64 {
        let Some(stand) = standing.iter().find(|stand| stand.entry == plant.entry) else { return 0.0 };
        let density = stand.density.0 * stand.leaves.likely * self.factor;
        leaf_m2(stand.size, density) * (1.0 - plant.stays) / LEAF_M2_PER_KG
    }
}

/// The leaf area of a plant so large and dense, m2.
fn leaf_m2(size: Size, density: f64) -> f64 {
    crown([0.0, 0.0], size, (density, 1.0)).map_or(0.0, |crown| {
        let radius_m = crown.radius_m();
        4.0 / 3.0 * std::f64::consts::PI * radius_m * radius_m * crown.half_height_m() * density
    })
}

/// A crown without leaves.
fn no_shade([x, y]: [f64; 2]) -> Option<Crown> {
    Crown::new([x, y, TREE_M], TREE_M, TREE_M, 0.0, 1.0).ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reckon::test_book::{TestBook, day};
    use serde_json::json;

    const ON: &str = "2026-04-10";

    fn bed(nurse: &str, apart_m: f64, count: u32) -> TestBook {
        let mut page = TestBook::upper_terrace(12.0, 9.0);
        page.nurses("2025-04-10", nurse, count, apart_m);
        page
    }

    fn of(page: &TestBook) -> Option<FewestCuts> {
        let (story, site) = page.story(ON);
        fewest_cuts(&story, &site, &SpeciesKey::new("COA"), day(ON))
    }

    #[test]
    fn a_bed_that_is_too_dark_is_told_the_fewest_stems_and_one_in_its_band_nothing() {
        let told = of(&bed("plantain", 1.5, 48)).unwrap();
        assert_eq!((told.band, told.positions), ((0.5, 0.7), 12));
        assert!(told.tried.windows(2).all(|pair| pair[1].cuts == pair[0].cuts + 1), "{:?}", told.tried);
        assert!(told.tried.iter().take(4).all(|one| one.proven), "{:?}", told.tried);
        assert_eq!(of(&bed("banana", 6.0, 4)), None);
    }

    #[test]
    fn cuts_that_bring_one_position_of_many_are_not_advised() {
        let cuts = |count: usize, in_band: usize| Cuts {
            crowns: (0..count).collect(),
            in_band,
            proven: true,
            light: Vec::new(),
        };
        let chosen = |inside: &[usize], positions: usize| {
            let found: Vec<Cuts> = inside.iter().enumerate().map(|(count, inside)| cuts(count, *inside)).collect();
            worth_it(&found, positions).map(|cuts| cuts.crowns.len())
        };
        assert_eq!(chosen(&[10, 11, 11], 32), None, "one of 32 is no tenth");
        assert_eq!(chosen(&[10, 11, 14], 32), Some(2));
        assert_eq!(chosen(&[10, 14, 15, 15], 32), Some(2), "the third brings nothing");
        assert_eq!(chosen(&[10, 14, 14, 14, 15], 32), Some(1), "four for five positions are too many");
        assert_eq!(chosen(&[2, 4], 12), Some(1));
        assert_eq!(chosen(&[3], 12), None);
    }

    #[test]
    fn what_is_advised_keeps_to_the_limits_and_brings_more_positions_in() {
        let mut page = bed("plantain", 2.0, 24);
        let came = json!({"tray":"cof-1","species":"coffee","count":4,"from":"bought","form":"bag"});
        page.write("2026-02-01", "plants_received", came);
        let out = json!({"tray":"cof-1","bed":"Upper terrace","count":4,"at":["1.1","1.2","2.1","2.2"]});
        page.write("2026-02-01", "outplanted", out);
        let told = of(&page).unwrap();
        let advice = told.advice.unwrap_or_else(|| panic!("{:?}", told.tried));
        assert!(!advice.plants.is_empty() && advice.plants.iter().all(|plant| plant.what == CutWhat::Stem));
        assert!(advice.shade_lost > 0.0 && advice.shade_lost <= MOST_SHADE_LOST + 0.03, "{}", advice.shade_lost);
        assert!(advice.step.unwrap() <= MOST_STEP + 0.05, "{:?}", advice.step);
        assert!(advice.mulch_kg > 0.1 * advice.plants.len() as f64, "{}", advice.mulch_kg);
        let best = told.tried.iter().map(|one| one.inside).max().unwrap();
        assert!(best > told.tried[0].inside && advice.plants.len() <= MOST_CUTS);
    }
}
