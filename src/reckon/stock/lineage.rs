//! What a tray inherits: species, sowings and origin, followed back through `moved_on`.

use super::place::Holds;
use super::tray::{Gone, Graft, Hold, Newcomers, Origin, PestLook, Since, Sowing, Stay};
use super::treatment::{Treatment, Treatments};
use crate::base::{Day, LotCode, PlaceName, SpeciesKey, TrayCode};
use crate::nursery::entry::subject::{Subject, is_unknown_lot};
use crate::nursery::entry::types::{ArrivedFrom, PlantForm, Roots};
use crate::nursery::entry::{Entry, OrderKey, PlantsReceived, SeedEntry, TrayEntry, What};
use crate::nursery::pest::{is_same_pest, nature_of, says_none};
use crate::reckon::ledger::Ledger;
use crate::reckon::site::Site;
use crate::reckon::tray::time::circle_no_more;

/// How many moves back a line is followed; a seedling is moved on two or three times in its life.
const MOST_MOVES: usize = 32;

/// What is inherited.
#[derive(Clone, Debug, Default)]
pub(crate) struct Lineage {
    /// The species as written, or as its lot says.
    pub species: Option<SpeciesKey>,
    /// The sowings.
    pub sowings: Vec<Sowing>,
    /// The origin, where the line began with plants from elsewhere.
    pub received: Option<Origin>,
    /// Of plants from elsewhere, the day they were sown or struck; none where nobody knows it.
    pub(super) begun_on: Vec<Since<Option<Day>>>,
    /// Bare roots and stumps, and the day on which they were brought into soil.
    pub(super) bare_until: Vec<Since<Origin>>,
    /// Treatments of the trays they stood in.
    pub treatments: Vec<Treatment>,
    /// Where those trays stood.
    pub stays: Vec<Stay>,
    /// The plug that showed circling roots, and how many held since some were thrown out.
    circling: Option<Since<usize>>,
    /// Grafts and buds.
    pub grafts: Vec<Since<Graft>>,
    /// Pests and sicknesses seen on the trays they stood in.
    pub pests: Vec<Since<PestLook>>,
    /// The days on which plants were culled.
    pub culled_on: Vec<Day>,
    /// Plants thrown out or dead, and the day.
    pub(super) gone: Vec<Since<Gone>>,
    /// Of how many plants roots were cut since that plug.
    roots_cut: u32,
    /// Soft flushes seen, and on how many plants at most.
    pub(super) flushes: Vec<Since<u32>>,
    /// Plants from elsewhere.
    pub(super) newcomers: Vec<Since<Newcomers>>,
    /// Wildlings: since when they have stood in a container, where they do, and how many.
    wildlings: Vec<Since<(Option<Day>, u32)>>,
    /// The last day on which roots were cut.
    pub last_cut: Option<Day>,
}

impl Lineage {
    /// Plants that came from elsewhere into a tray that they left on a day.
    fn came(&mut self, entry: &Entry, received: &PlantsReceived, left: Day) {
        let age_days = received.age_days.map(|age| age.0.min(100_000) as i32);
        let origin = Origin::Received {
            from: received.from,
            form: received.form,
            age_days,
            good_until: received.good_until,
            heeled_in: received.heeled_in == Some(true),
            stands_since: None,
            height_cm: received.height_cm.map(|height| height.0),
            light_share: None,
            day: entry.happened,
            entry: entry.id.clone(),
        };
        let begun_on = age_days.map(|age| entry.happened.plus(-age));
        self.begun_on.push(Since::begun_by(entry, begun_on));
        let plants = received.count.0;
        // The nursery's own stood here before the book began.
        let here = begun_on.filter(|_| received.from == ArrivedFrom::Opening);
        let known_since = received.stands_since.or(here).unwrap_or(entry.happened);
        let newcomers = Newcomers { plants, put_on: None };
        self.newcomers.push(Since { from: known_since, what: newcomers, entry: entry.id.clone() });
        if received.from == ArrivedFrom::Wildling {
            self.wildlings.push(Since::begun_by(entry, (wildlings_bagged(received, entry.happened), plants)));
        }
        if matches!(received.form, PlantForm::BareRoot | PlantForm::Stump) {
            self.bare_until.push(Since { from: left, what: origin.clone(), entry: entry.id.clone() });
        }
        self.received.get_or_insert(origin);
    }

    /// What was seen or done on the day on which plants went. Of one day nobody knows the order: what was sprayed, or found sick, was so
    /// before it.
    fn on_that_day(&mut self, entry: &Entry, what: &TrayEntry, treatments: &mut Treatments) {
        match what {
            TrayEntry::Treated(treated) => treatments.write(entry.happened, treated, entry.id.clone()),
            TrayEntry::PestSeen(pest) if pest.share_pct.is_none_or(|share| share.0 > 0.0) => {
                self.pests.push(Since::pest(entry, pest, None));
            }
            _ => {}
        }
    }

    /// What was seen or done in a tray and goes along with its plants.
    fn take_along(&mut self, entry: &Entry, what: &TrayEntry) {
        match what {
            TrayEntry::PlugChecked(plug) => {
                // One ball that holds says nothing of those that circled, but where the bad ones were thrown out.
                if plug.roots == Roots::Circling {
                    self.circling = Some(Since::begun_by(entry, 0));
                    self.roots_cut = 0;
                } else if plug.roots == Roots::Holds
                    && let Some(seen) = &mut self.circling
                    && self.culled_on.iter().any(|culled| *culled >= seen.from)
                {
                    seen.what += 1;
                }
            }
            TrayEntry::Culled(culled) if culled.count.0 > 0 => {
                self.culled_on.push(entry.happened);
                self.gone.extend(Since::gone(entry, None));
            }
            TrayEntry::Lost(_) => self.gone.extend(Since::gone(entry, None)),
            TrayEntry::Grafted(grafted) => self.grafts.push(Since::begun_by(entry, Graft::written(grafted))),
            TrayEntry::PestSeen(pest) => self.pests.push(Since::pest(entry, pest, None)),
            TrayEntry::Flushed(_) => self.flushes.push(Since::begun_by(entry, u32::MAX)),
            TrayEntry::RootsCut(cut) => {
                let count = cut.count.map_or(u32::MAX, |count| count.0);
                self.roots_cut = self.roots_cut.saturating_add(count);
                self.last_cut = self.last_cut.max(Some(entry.happened));
            }
            _ => {}
        }
    }

    /// So many of them went on into another tray on a day, to others or to none: of what is only of a part it is no more than those.
    pub(super) fn went_on(&mut self, plants: u32, on: Day, to_others: bool) {
        self.of_each(&Counts::default(), plants, on, to_others);
    }

    fn of_each(&mut self, before: &Counts, plants: u32, on: Day, to_others: bool) {
        for graft in self.grafts.iter_mut().skip(before.grafts) {
            graft.what.plants = graft.what.plants.min(plants);
        }
        for flush in self.flushes.iter_mut().skip(before.flushes) {
            flush.what = flush.what.min(plants);
        }
        for came in self.newcomers.iter_mut().skip(before.newcomers) {
            came.what.plants = came.what.plants.min(plants);
            came.what.put_on = came.what.put_on.or(to_others.then_some(on));
        }
        for pest in self.pests.iter_mut().skip(before.pests) {
            pest.what.came = Some(pest.what.came.map_or(plants, |came| came.min(plants)));
        }
        for wild in self.wildlings.iter_mut().skip(before.wildlings) {
            wild.what = (wild.what.0.or(Some(on)), wild.what.1.min(plants));
        }
    }

    /// What a tray's own plants showed before others were put to them; their origin too, where there were any.
    fn set_aside(&mut self, made: bool) -> Before {
        let origin = made.then(|| self.received.clone());
        Before { circling: self.circling.take(), roots_cut: std::mem::take(&mut self.roots_cut), origin }
    }

    /// With so many others that were put to them since.
    fn with_those_before(&mut self, before: Before, moved: u32) {
        let brought = self.circling_in(moved).and_then(|_| self.circling.take());
        let own = (before.circling, before.roots_cut);
        // Roots cut in a tray before anything stood in it are those of the plants that came on that day.
        let cut_here = before.origin.is_none() && before.roots_cut >= moved;
        (self.circling, self.roots_cut) = if brought.is_some() && !cut_here { (brought, 0) } else { own };
        // Of a tray that stood already they are not the origin.
        if let Some(origin) = before.origin {
            self.received = origin;
        }
    }

    fn counts(&self) -> Counts {
        let (grafts, flushes) = (self.grafts.len(), self.flushes.len());
        let (newcomers, wildlings) = (self.newcomers.len(), self.wildlings.len());
        Counts { grafts, flushes, newcomers, wildlings, pests: self.pests.len() }
    }

    /// Wildlings that stand in a container, since when.
    pub(super) fn bagged_wildlings(&self) -> impl Iterator<Item = Since<u32>> {
        self.wildlings.iter().filter_map(|wild| {
            let (bagged, plants) = wild.what;
            Some(Since { from: bagged?, what: plants, entry: wild.entry.clone() })
        })
    }

    /// The plug that showed circling roots, where so many plants moved on are more than had their roots cut.
    pub(crate) fn circling_in(&self, moved: u32) -> Option<Since<()>> {
        let seen = self.circling.as_ref().filter(|_| moved > self.roots_cut)?;
        let culled = self.gone.iter().filter(|gone| gone.what.culled && gone.from >= seen.from);
        let culled = culled.map(|gone| gone.what.plants).fold(0, u32::saturating_add);
        let still = !circle_no_more(culled, moved, seen.what);
        still.then(|| Since { from: seen.from, what: (), entry: seen.entry.clone() })
    }
}

/// What is known of a tray before others are put to its plants.
struct Before {
    circling: Option<Since<usize>>,
    roots_cut: u32,
    /// Where any stood there, their origin, if that is elsewhere.
    origin: Option<Option<Origin>>,
}

/// How many there are of what is only of a part of the plants.
#[derive(Clone, Copy, Default)]
struct Counts {
    grafts: usize,
    flushes: usize,
    newcomers: usize,
    wildlings: usize,
    pests: usize,
}

/// The species of a lot, as written.
pub(crate) fn species_of_lot(ledger: &Ledger, lot: &LotCode) -> Option<SpeciesKey> {
    ledger.of(&Subject::Lot(lot.clone())).find_map(|entry| match &entry.what {
        What::Seed(SeedEntry::LotReceived(received)) => Some(received.species.clone()),
        What::Seed(_) | What::Site(_) | What::Tray(_) | What::Ground(_) | What::Book(_) | What::Foreign { .. } => None,
    })
}

/// What a tray had to hand on before a place in the order of things.
pub(crate) fn lineage_of(ledger: &Ledger, site: &Site, tray: &TrayCode, before: &OrderKey) -> Lineage {
    let mut lineage = Lineage::default();
    follow(ledger, site, &ledger.tray_at(tray, before), before, MOST_MOVES, &mut lineage);
    lineage
}

fn follow(ledger: &Ledger, site: &Site, tray: &TrayCode, before: &OrderKey, moves_left: usize, lineage: &mut Lineage) {
    if moves_left == 0 {
        return;
    }
    let (mut treatments, mut stood, mut shades) = (Treatments::default(), Vec::new(), Vec::new());
    let (own, stays_before, mut let_go_on) = (lineage.counts(), lineage.stays.len(), None);
    let (mut made, mut of_several) = (false, false);
    for entry in ledger.of(&Subject::Tray(tray.clone())) {
        let key = ledger.key_of(entry);
        let What::Tray(what) = &entry.what else { continue };
        if key >= *before {
            if entry.happened > before.happened {
                break;
            }
            lineage.on_that_day(entry, what, &mut treatments);
            continue;
        }
        stood.extend(stands_at(ledger, tray, what, &key).map(|place| (entry.happened, place)));
        match what {
            TrayEntry::Released(_) => let_go_on = Some(entry.happened),
            // Of wildlings alone a plug that holds tells.
            TrayEntry::PlugChecked(plug) if plug.roots == Roots::Holds && !of_several => {
                lineage.wildlings.truncate(own.wildlings);
            }
            _ => {}
        }
        let (lot, seeds, written) = match what {
            TrayEntry::Sown(sown) => (&sown.lot, sown.seeds.map(|seeds| seeds.0), sown.species.clone()),
            TrayEntry::Resown(resown) => (&resown.lot, Some(resown.seeds.0), None),
            TrayEntry::PlantsReceived(received) => {
                lineage.species.get_or_insert_with(|| received.species.clone());
                lineage.came(entry, received, before.happened);
                made = true;
                continue;
            }
            TrayEntry::MovedOn(moved) if ledger.tray_at(&moved.to, &key) == *tray => {
                let (roots, counts) = (lineage.set_aside(made), lineage.counts());
                follow(ledger, site, &ledger.tray_at(&moved.from, &key), &key, moves_left - 1, lineage);
                lineage.of_each(&counts, moved.count.0, entry.happened, made);
                lineage.with_those_before(roots, moved.count.0);
                of_several |= made;
                made = true;
                continue;
            }
            TrayEntry::Treated(treated) => {
                treatments.write(entry.happened, treated, entry.id.clone());
                continue;
            }
            TrayEntry::ShadeSet(step) => {
                shades.push((entry.happened, step.shade_pct.0));
                continue;
            }
            other => {
                lineage.take_along(entry, other);
                continue;
            }
        };
        made = true;
        let lot = (!is_unknown_lot(lot)).then(|| lot.clone());
        let species = lot.as_ref().and_then(|lot| species_of_lot(ledger, lot)).or(written);
        if lineage.species.is_none() {
            lineage.species = species.and_then(|species| site.species_key(&species).or(Some(species)));
        }
        lineage.sowings.push(Sowing { day: entry.happened, lot, seeds, entry: entry.id.clone() });
    }
    lineage.treatments.extend(treatments.iter().cloned());
    lineage.stays.extend(stays_of(stood, &shades, before.happened));
    for stay in lineage.stays.iter_mut().skip(stays_before) {
        stay.released |= let_go_on.is_some_and(|on| on >= stay.until);
    }
}

/// Where plants stood until they left on a day, of the days on which they came to each place, and the shade of their own.
fn stays_of(stood: Vec<(Day, PlaceName)>, shades: &[(Day, f64)], left: Day) -> Vec<Stay> {
    let ends = stood.iter().skip(1).map(|(day, _)| *day).chain([left]).collect::<Vec<_>>();
    let stays = stood.into_iter().zip(ends).map(|((from, place), until)| {
        let own = shades.iter().rfind(|(on, _)| (from..=until).contains(on));
        Stay { place, from, until, shade_pct: own.map(|(_, shade)| *shade), released: false }
    });
    stays.collect()
}

/// What held a tray's plants back before a place in the order of things, where nobody let them go before it or that tray after it.
pub(super) fn holds_of(ledger: &Ledger, tray: &TrayCode, before: &OrderKey) -> Vec<Since<Hold>> {
    held_in(ledger, &ledger.tray_at(tray, before), before, MOST_MOVES)
}

/// Whether an entry was written after another one of the same day: of one day the hour of a kind says nothing of holds.
pub(super) fn is_written_after(entry: &Entry, other: &Entry) -> bool {
    let written = |entry: &Entry| (entry.recorded, entry.command);
    entry.happened == other.happened && written(entry) > written(other)
}

fn held_in(ledger: &Ledger, tray: &TrayCode, before: &OrderKey, moves_left: usize) -> Vec<Since<Hold>> {
    let (mut own, mut brought, mut let_go) = (Holds::default(), Vec::new(), None);
    for entry in ledger.of(&Subject::Tray(tray.clone())) {
        let key = ledger.key_of(entry);
        let is_before = key < *before;
        match &entry.what {
            What::Tray(TrayEntry::Held(held)) if is_before => own.write(Since::hold(entry, held)),
            // Who lets go of a tray lets go of what came from it, too.
            What::Tray(TrayEntry::Released(released)) if own.let_go(&mut brought, released) => let_go = Some(entry),
            What::Tray(TrayEntry::MovedOn(moved))
                if is_before
                    && moves_left > 0
                    && ledger.tray_at(&moved.to, &key) == *tray
                    && let_go.is_none_or(|let_go| !is_written_after(let_go, entry)) =>
            {
                let from = ledger.tray_at(&moved.from, &key);
                brought.extend(held_in(ledger, &from, &key, moves_left - 1));
            }
            _ => {}
        }
    }
    own.iter().cloned().chain(brought).collect()
}

/// Plants that went out so many days before a sickness was seen in their tray may have had it: most show within two months. Ours.
const SEEN_WITHIN_DAYS: i32 = 56;

/// A rot or a damping-off of which plants died so many days before the others went out is not told of those any more: it shows within two
/// weeks. Ours.
const CURED_WITHIN_DAYS: i32 = 28;

/// The sicknesses of a tray of which plants go out: those that do not go by themselves, seen by then and not found gone, or in the weeks
/// after it.
pub(super) fn sicknesses_of(ledger: &Ledger, site: &Site, tray: &TrayCode, out: &OrderKey) -> Vec<Since<PestLook>> {
    let Lineage { pests: mut looks, gone, .. } = lineage_of(ledger, site, tray, out);
    // What a treatment cures, and plants died of long ago, was over when these went; a plant or two that wilted tell nothing of others.
    let tells = |gone: &&Since<Gone>| {
        let nature = nature_of(&gone.what.why, None);
        !nature.is_sign
            && !nature.is_unknown
            && (!nature.has_cure || out.happened.days_since(gone.from) <= CURED_WITHIN_DAYS)
    };
    looks.extend(gone.iter().filter(tells).filter_map(Since::sighting));
    let subject = Subject::Tray(ledger.tray_at(tray, out));
    let since = ledger.of(&subject).filter(|entry| {
        let days = entry.happened.days_since(out.happened);
        (1..=SEEN_WITHIN_DAYS).contains(&days)
    });
    let seen = since.filter_map(|entry| match &entry.what {
        What::Tray(TrayEntry::PestSeen(pest)) => Some(Since::pest(entry, pest, None)),
        _ => Since::gone(entry, None).filter(|gone| tells(&gone))?.sighting(),
    });
    looks.extend(seen);
    still_seen(looks, out.happened)
}

/// Of looks those whose sickness does not go by itself and was not found gone when plants went out on a day.
pub(crate) fn still_seen(mut looks: Vec<Since<PestLook>>, out: Day) -> Vec<Since<PestLook>> {
    looks.sort_by_key(|look| look.from);
    let mut open: Vec<Since<PestLook>> = Vec::new();
    for look in looks {
        let gone = look.finds_none();
        // What is gone from the tray later says nothing of what went out before.
        if gone && look.from > out {
            continue;
        }
        let all_gone = gone && says_none(&look.what.what);
        open.retain(|seen| !all_gone && !is_same_pest(&seen.what.what, &look.what.what));
        if !gone && !nature_of(&look.what.what, look.what.spreads).goes_by_itself() {
            open.push(look);
        }
    }
    open
}

/// The place to which an entry brings a tray.
fn stands_at(ledger: &Ledger, tray: &TrayCode, what: &TrayEntry, key: &OrderKey) -> Option<PlaceName> {
    match what {
        TrayEntry::Sown(sown) => sown.place.clone(),
        TrayEntry::PlantsReceived(received) => received.place.clone(),
        TrayEntry::MovedOn(moved) if ledger.tray_at(&moved.to, key) == *tray => moved.place.clone(),
        TrayEntry::Carried(carried) => Some(carried.place.clone()),
        _ => None,
    }
}

/// Since when wildlings that came in bags have stood in them; none of others.
pub(super) fn wildlings_bagged(received: &PlantsReceived, came: Day) -> Option<Day> {
    let bagged = matches!(received.form, PlantForm::Bag | PlantForm::Plug);
    (received.from == ArrivedFrom::Wildling && bagged).then(|| received.stands_since.unwrap_or(came))
}
