//! From the Pictures of the coming weeks to what a solver is asked, and back.

use std::collections::{BTreeMap, BTreeSet};

use super::given::{ByHand, Load, NoMatch, POINTS_A_PLANT, POINTS_LAST_CHANCE};
use super::live::Lived;
use super::opens::{Opens, Week, opens};
use crate::base::day::WEEK_DAYS;
use crate::base::{BedName, Day, SpeciesKey, TrayCode};
use crate::reckon::picture::{Picture, TrayPicture};
use crate::reckon::round::{hands, hands_a_week};
use crate::reckon::tray::size::whole_plants;
use crate::science::matching::{Group, Instance, MOST_PLANTS, Offer, Opening, Share, ShareOf, Shipment};

/// The Pictures of the first days of the coming weeks, that of the day of the plan first.
pub struct Ahead {
    pictures: Vec<Picture>,
}

impl Ahead {
    /// Draws them: `drawn` gives the Picture of a day.
    ///
    /// # Errors
    /// Those of `drawn`.
    pub fn drawn<E>(on: Day, weeks: u32, drawn: impl FnMut(Day) -> Result<Picture, E>) -> Result<Ahead, E> {
        let weeks = i32::try_from(weeks.max(1)).unwrap_or(1);
        let pictures = (0..weeks).map(|week| on.plus(week * WEEK_DAYS)).map(drawn).collect::<Result<Vec<_>, E>>()?;
        Ok(Ahead { pictures })
    }

    /// How many weeks.
    pub(super) fn weeks(&self) -> u32 {
        u32::try_from(self.pictures.len()).unwrap_or(u32::MAX)
    }

    /// The day of the plan.
    pub(super) fn on(&self) -> Day {
        self.today().day
    }

    /// The Picture of that day.
    pub(crate) fn today(&self) -> &Picture {
        &self.pictures[0]
    }

    /// Each week with the Picture of its first day.
    fn each(&self) -> impl Iterator<Item = (Week, &Picture)> {
        (1..).zip(&self.pictures).map(|(number, picture)| (Week { number, from: picture.day }, picture))
    }

    /// The last day of the last week.
    fn until(&self) -> Day {
        self.each().last().map_or(self.on(), |(week, _)| week.to())
    }
}

/// A way for plants of a tray to a bed in a week.
#[derive(Clone, PartialEq, Debug)]
pub(super) struct Way {
    /// When, and what comes first.
    pub(super) opens: Opens,
    /// The chance of a plant to live a year later.
    pub(super) lives: f64,
    /// The worth of a plant.
    pub(super) value: i64,
}

/// What the solver is asked, with what it means. Groups are trays, openings are species of beds; numbers as in the instance.
pub(super) struct Task {
    /// What the solver is asked.
    pub(super) instance: Instance,
    /// The ways, by group, opening and week.
    pub(super) ways: BTreeMap<(usize, usize, u32), Way>,
    /// The tray of each group, and the week from which its plants can go.
    parts: Vec<Part>,
    /// The bed and the species of each opening.
    pub(super) beds: Vec<(BedName, SpeciesKey)>,
    /// What a person pinned: already taken off.
    pinned: Vec<Load>,
    /// Of those the plants that likely live a year later.
    pinned_living: f64,
    /// Plants that can be set in a day and in a week; none where nobody wrote how many.
    pub(super) hands: Option<(u32, u32)>,
}

/// The ways found, by the names of tray, bed and species.
type Found = BTreeMap<(TrayCode, (BedName, SpeciesKey), u32), (Way, u32)>;

/// Plants of a tray that can go from a week on.
type Part = (TrayCode, u32);

/// The name of a part as a group: no code of a tray holds a blank.
fn id_of((tray, week): &Part) -> String {
    format!("{tray} {week:03}")
}

/// The plants of each tray by the week from which they can go: those that grow tall enough, or that a look lets go, come later than the
/// first. So no week takes more of a tray than can be planted in it.
fn supply_of(found: &Found) -> BTreeMap<Part, i64> {
    let mut most: BTreeMap<(&TrayCode, u32), i64> = BTreeMap::new();
    for ((tray, _, week), (_, plants)) in found {
        let of_week = most.entry((tray, *week)).or_insert(0);
        *of_week = (*of_week).max(i64::from(*plants));
    }
    let (mut supply, mut before): (BTreeMap<Part, i64>, BTreeMap<&TrayCode, i64>) = Default::default();
    for ((tray, week), plants) in most {
        let so_far = before.entry(tray).or_insert(0);
        if plants > *so_far {
            supply.insert((tray.clone(), week), plants - *so_far);
            *so_far = plants;
        }
    }
    supply
}

impl Task {
    pub(super) fn of(ahead: &Ahead, by_hand: &ByHand) -> Result<Task, NoMatch> {
        let found = found(ahead, by_hand);
        let mut supply = supply_of(&found);
        let beds: BTreeSet<(BedName, SpeciesKey)> = found.keys().map(|(_, bed, _)| bed.clone()).collect();
        let mut positions: BTreeMap<(BedName, SpeciesKey), i64> = beds.into_iter().map(|bed| (bed, 0)).collect();
        for (key, open) in &mut positions {
            *open = i64::from(open_positions(ahead.today(), key));
        }
        let hands = hands(ahead.today()).zip(hands_a_week(ahead.today()));
        let week_work = hands.map_or(MOST_PLANTS, |(_, week)| i64::from(week).min(MOST_PLANTS));
        let mut work = vec![week_work; ahead.weeks() as usize];
        let (pinned, pinned_living) = pinned(&found, by_hand, (&mut supply, &mut positions, &mut work))?;
        let source = |tray: &TrayCode| source_of(ahead.today(), tray);
        let groups: Vec<Group> = supply
            .iter()
            .map(|(part, plants)| Group {
                id: id_of(part),
                source: source(&part.0),
                supply: (*plants).min(MOST_PLANTS),
            })
            .collect();
        let openings: Vec<Opening> = positions
            .iter()
            .map(|((bed, species), open)| Opening {
                bed: bed.to_string(),
                species: species.to_string(),
                positions: (*open).min(MOST_PLANTS),
            })
            .collect();
        let bed_at: BTreeMap<&(BedName, SpeciesKey), usize> = positions.keys().zip(0..).collect();
        let of_tray = parts_of(supply.keys());
        let offers = found.iter().flat_map(|((tray, bed, week), (way, _))| {
            let of_it = of_tray.get(tray).into_iter().flatten().filter(|(_, from)| from <= week);
            let opening = bed_at.get(bed).copied();
            of_it.filter_map(move |(group, _)| {
                Some(Offer { group: *group, opening: opening?, week: *week, value: way.value })
            })
        });
        let all = Share::new(ShareOf::Positions, 1.0);
        let instance = Instance::new(groups, openings, work, all, offers.collect()).map_err(|_| NoMatch::TooLarge)?;
        // The instance puts names into its own order.
        let named: BTreeMap<String, &Part> = supply.keys().map(|part| (id_of(part), part)).collect();
        let parts = instance.groups().iter().filter_map(|group| Some((*named.get(&group.id)?).clone()));
        let parts: Vec<Part> = parts.collect();
        let named: BTreeMap<(&str, &str), &(BedName, SpeciesKey)> =
            positions.keys().map(|bed| ((bed.0.as_str(), bed.1.as_str()), bed)).collect();
        let key = |opening: &Opening| Some((*named.get(&(opening.bed.as_str(), opening.species.as_str()))?).clone());
        let beds: Vec<(BedName, SpeciesKey)> = instance.openings().iter().filter_map(key).collect();
        let opening_of: BTreeMap<&(BedName, SpeciesKey), usize> = beds.iter().zip(0..).collect();
        let of_tray = parts_of(parts.iter());
        let ways = found.iter().flat_map(|((tray, bed, week), (way, _))| {
            let of_it = of_tray.get(tray).into_iter().flatten().filter(|(_, from)| from <= week);
            let opening = opening_of.get(bed).copied();
            of_it.filter_map(move |(group, _)| Some(((*group, opening?, *week), way.clone())))
        });
        let ways = ways.collect();
        Ok(Task { ways, parts, beds, pinned, pinned_living, hands, instance })
    }

    /// The tray of a group.
    pub(super) fn tray(&self, group: usize) -> &TrayCode {
        &self.parts[group].0
    }

    /// The groups of a tray; none where it goes nowhere.
    pub(super) fn groups_of(&self, tray: &TrayCode) -> Vec<usize> {
        // The instance has them by name, and the parts of a tray side by side.
        let from = self.instance.groups().partition_point(|group| group.id < id_of(&(tray.clone(), 0)));
        (from..self.parts.len()).take_while(|group| self.tray(*group) == tray).collect()
    }

    /// The opening of a species in a bed; none where nothing goes there.
    pub(super) fn opening_of(&self, bed: &BedName, species: &SpeciesKey) -> Option<usize> {
        let sought = (bed.as_str(), species.as_str());
        let openings = self.instance.openings();
        openings.binary_search_by(|one| (one.bed.as_str(), one.species.as_str()).cmp(&sought)).ok()
    }

    /// A plan of the solver as loads, with what was pinned.
    pub(super) fn loads(&self, plan: &[Shipment]) -> Vec<Load> {
        let load = |row: &Shipment| {
            let way = self.ways.get(&(row.group, row.opening, row.week))?;
            let (bed, species) = self.beds[row.opening].clone();
            Some(Load {
                week: row.week,
                from: way.opens.from,
                tray: self.parts[row.group].0.clone(),
                bed,
                species,
                plants: u32::try_from(row.plants).unwrap_or(u32::MAX),
                pinned: false,
                first: way.opens.first.clone(),
            })
        };
        let mut loads: Vec<Load> = plan.iter().filter_map(load).chain(self.pinned.iter().cloned()).collect();
        loads.sort_by(|a, b| (a.week, &a.bed, &a.tray, a.pinned).cmp(&(b.week, &b.bed, &b.tray, b.pinned)));
        // Plants of one tray that can go from different weeks on are one load.
        loads.dedup_by(|next, kept| {
            let same =
                (next.week, &next.bed, &next.tray, next.pinned) == (kept.week, &kept.bed, &kept.tray, kept.pinned);
            if same {
                kept.plants = kept.plants.saturating_add(next.plants);
            }
            same
        });
        loads
    }

    /// Plants of a plan, and of what was pinned, that likely live a year later.
    pub(super) fn living(&self, plan: &[Shipment]) -> f64 {
        let lives = |row: &Shipment| self.ways.get(&(row.group, row.opening, row.week)).map_or(0.0, |way| way.lives);
        plan.iter().map(|row| row.plants as f64 * lives(row)).sum::<f64>() + self.pinned_living
    }
}

fn open_positions(picture: &Picture, (bed, species): &(BedName, SpeciesKey)) -> u32 {
    let lines = picture.beds.get(bed).into_iter().flat_map(|bed| &bed.species);
    lines.filter(|line| line.species == *species).map(|line| line.open_positions).max().unwrap_or(0)
}

/// The mother tree or stand of a tray's seed; the tray itself where nobody wrote it.
fn source_of(picture: &Picture, tray: &TrayCode) -> String {
    let lot = picture.trays.get(tray).and_then(|tray| tray.lots.first()).and_then(|lot| picture.lots.get(lot));
    lot.map(|lot| lot.source.clone()).filter(|source| !source.is_empty()).unwrap_or_else(|| tray.to_string())
}

/// Every way, and the plants that could take it.
fn found(ahead: &Ahead, by_hand: &ByHand) -> Found {
    let (lived, until, today) = (Lived::of(ahead.today()), ahead.until(), ahead.today());
    let mut found = Found::new();
    for (week, picture) in ahead.each() {
        for pair in picture.pairs.iter() {
            let (tray, bed) = (pair.tray(), pair.bed());
            let is_forbidden = by_hand.forbidden.iter().any(|(no, never)| no == tray && never == bed);
            if is_forbidden || by_hand.left_out.contains(bed) {
                continue;
            }
            let (Some(known), Some(now)) = (picture.trays.get(tray), today.pair(tray, bed)) else { continue };
            let plants = whole_plants(known.plantable.likely);
            let (whole, now) = (pair.once(), now.once());
            let Some(opens) = opens(&whole.criteria.once(), &now.criteria.once(), week, today.day) else { continue };
            let key = (bed.clone(), whole.species.clone());
            if plants == 0 || open_positions(today, &key) == 0 {
                continue;
            }
            let lives = lived.chance(today, &whole.species, opens.from) * stays(today, known);
            // Sooner of two that are worth the same.
            let late = i64::from(week.number);
            let value = (lives * POINTS_A_PLANT).round() as i64 + last_chance(known, today.day, until) - late;
            found.insert((tray.clone(), key, week.number), (Way { opens, lives, value }, plants));
        }
    }
    found
}

/// Points for plants whose time ends in the weeks of the plan: all where it ends on its day, half of them where it ends with its last.
fn last_chance(tray: &TrayPicture, on: Day, until: Day) -> i64 {
    let Some(last) = tray.best_before.filter(|last| *last <= until) else { return 0 };
    let (waits, weeks) = (i64::from(last.days_since(on).max(0)), i64::from(until.days_since(on).max(1)));
    POINTS_LAST_CHANCE - POINTS_LAST_CHANCE / 2 * waits / weeks
}

/// The share of a tray's plants of today that is expected to be there still.
fn stays(today: &Picture, later: &TrayPicture) -> f64 {
    let now = today.trays.get(&later.code).map_or(0.0, |tray| tray.plantable.likely);
    if now > 0.0 { (later.plantable.likely / now).clamp(0.0, 1.0) } else { 1.0 }
}

/// Plants of trays, positions of beds and work of weeks that are left.
type Left<'a> = (&'a mut BTreeMap<Part, i64>, &'a mut BTreeMap<(BedName, SpeciesKey), i64>, &'a mut [i64]);

/// Takes what is pinned off: each in its first week with hands left.
fn pinned(found: &Found, by_hand: &ByHand, (supply, positions, work): Left<'_>) -> Result<(Vec<Load>, f64), NoMatch> {
    let (mut loads, mut living) = (Vec::new(), 0.0);
    for (tray, bed, plants) in by_hand.pinned.iter().filter(|(_, _, plants)| *plants > 0) {
        let ways: Vec<_> = found.iter().filter(|((of, (to, _), _), _)| of == tray && to == bed).collect();
        let never = || NoMatch::NeverFits { tray: tray.clone(), bed: bed.clone() };
        let ((_, place, _), _) = ways.first().ok_or_else(never)?;
        let wanted = i64::from(*plants);
        let there: i64 = supply.iter().filter(|(part, _)| part.0 == *tray).map(|(_, plants)| *plants).sum();
        let counted = |plants: i64| u32::try_from(plants.max(0)).unwrap_or(u32::MAX);
        if wanted > there {
            return Err(NoMatch::TooManyOfTray { tray: tray.clone(), pinned: *plants, there: counted(there) });
        }
        let open = positions.get_mut(place).ok_or_else(never)?;
        if wanted > *open {
            return Err(NoMatch::TooManyToBed { bed: bed.clone(), pinned: *plants, open: counted(*open) });
        }
        *open -= wanted;
        let mut left = wanted;
        let last = ways.last().map(|((_, _, week), _)| *week);
        for ((_, (_, species), week), (way, _)) in &ways {
            let mut can: Vec<&mut i64> = supply
                .iter_mut()
                .filter(|(part, _)| part.0 == *tray && part.1 <= *week)
                .map(|(_, left)| left)
                .collect();
            let most = can.iter().map(|plants| **plants).sum::<i64>().min(left);
            // What a person decided goes in the last of its weeks though there are too few hands.
            let hands = &mut work[*week as usize - 1];
            let goes = if Some(*week) == last { most } else { most.min(*hands) };
            *hands -= goes.min(*hands);
            left -= goes;
            let mut taken = goes;
            for plants in &mut can {
                let takes = taken.min(**plants);
                **plants -= takes;
                taken -= takes;
            }
            living += goes as f64 * way.lives;
            if goes > 0 {
                let (tray, bed, species) = (tray.clone(), bed.clone(), species.clone());
                let (from, first) = (way.opens.from, way.opens.first.clone());
                loads.push(Load { week: *week, from, tray, bed, species, plants: counted(goes), pinned: true, first });
            }
        }
        if left > 0 {
            return Err(NoMatch::TooManyOfTray { tray: tray.clone(), pinned: *plants, there: counted(wanted - left) });
        }
    }
    Ok((loads, living))
}

/// The numbers of the parts of each tray, with the week from which each can go.
fn parts_of<'a>(parts: impl Iterator<Item = &'a Part>) -> BTreeMap<&'a TrayCode, Vec<(usize, u32)>> {
    let mut of_tray: BTreeMap<&TrayCode, Vec<(usize, u32)>> = BTreeMap::new();
    for (group, (tray, from)) in parts.enumerate() {
        of_tray.entry(tray).or_default().push((group, *from));
    }
    of_tray
}
