//! Whether a pest or a sickness that was seen would be carried into the field: it counts until a later look says that it is
//! gone. A treatment alone says nothing of that.

pub(crate) mod beside;
pub(crate) mod kin;
mod losses;

pub(crate) use losses::{LEAST_UNSAID_PLANTS, is_sighting, many_died};

use crate::base::{Day, EntryId, PlaceName};
use crate::nursery::pest::{Nature, comes_along, is_same_pest, looks_for, nature_of, says_none, stings};
use crate::nursery::species::Profile;
use crate::reckon::picture::out_of::OutOf;
use crate::reckon::picture::quantity::{LeavesAtLeast, LookAt, NotSo, PestLacks, PestSeen};
use crate::reckon::picture::{Basis, Criterion, Question, RuleSource};
use crate::reckon::stock::{Gone, PestLook, Places, Since, TrayStory};
use crate::reckon::tray::hold::{stays, treatments};
use crate::science::sampling::sample_size_detection_among;
use beside::SickPlaces;
use kin::Kin;

/// From this share of the plants on, percent, a pest above ground holds a tray back: one plant in ten is more than is left
/// behind while loading. Ours.
pub(crate) const PEST_HOLDS_PCT: f64 = 10.0;

/// From this share of the plants on, percent, what nothing cures and lives in the soil condemns the whole tray: its plants share a soil mix
/// and a bench, and it shows late. Ours.
pub(crate) const WHOLE_TRAY_PCT: f64 = 10.0;
/// From this share of the plants on, percent, lost leaves hold a tray back until it is looked at: a third of a load is more than is sorted
/// out while loading. Ours.
pub(crate) const LEAVES_HOLD_PCT: f64 = 33.0;
/// Pairs of sound leaves that a plant keeps at least, where its species has no figure. Ours, from common practice.
const SOUND_PAIRS: f64 = 4.0;

/// So many days after plants were thrown out or treated a look tells whether a sickness is gone: rots and damping-off show within two
/// weeks. Ours, from common practice.
pub(crate) const LOOK_AFTER_DAYS: i32 = 14;
/// The same of what no treatment cures: root-knot nematodes grow from egg to egg in three to four weeks in warm soil (University of
/// California IPM, Pest Notes: Nematodes), viruses and wilts show in as many or more. Ours.
pub(crate) const LOOK_AFTER_INCURABLE_DAYS: i32 = 28;
/// Plants that stood so many days where a sickness was seen soon after may have had it by then; fewer ask for care alone. Ours, as long as
/// one look beside a sick tray holds.
const REACHES_BACK_STAY_DAYS: i32 = beside::LOOK_BESIDE_DAYS;
/// A look is of as many plants as find a sickness with this chance, were it still on the share on which it was. The usual chance of
/// surveys.
const LOOK_CHANCE: f64 = 0.95;
/// Of a share smaller than this, percent, no more plants are looked at than of this one. Ours: 59 plants of very many.
const LOOK_LEAST_PCT: f64 = 5.0;
/// The fewest plants of a look, where so many stand. Ours.
pub(crate) const LOOK_LEAST_PLANTS: u32 = 10;

/// A pest as it was written.
pub(crate) type Written = Since<PestLook>;

/// What was seen and not settled since.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct OpenPest {
    /// What, and when last.
    pub seen: PestSeen,
    /// What is known of it.
    pub nature: Nature,
    /// How many plants stood when it was seen; none where it was seen elsewhere.
    pub stood: Option<u64>,
    /// How many came from where it was seen, where it was not seen here.
    came: Option<u32>,
    /// The day on which it was first seen.
    first_on: Day,
    /// The largest share that was seen on these plants, percent.
    worst_pct: Option<f64>,
    /// Whether it is known by plants that are gone alone.
    by_loss: bool,
    /// Whether it was only seen at the place where they stood.
    of_place: bool,
    /// What a person said of whether it goes along with plants.
    spreads: Option<bool>,
    /// Where it eats many plants of a bed, and nobody did anything against it: the last day on which it did.
    pub eats_bed: Option<Day>,
    /// The entries.
    pub entries: Vec<EntryId>,
}

impl OpenPest {
    pub(crate) fn begun(look: &Written) -> OpenPest {
        let PestLook { what, share_pct, spreads, stood, .. } = &look.what;
        let seen = PestSeen::only(what, *share_pct, look.from);
        let mut pest = OpenPest {
            seen,
            nature: Nature::default(),
            stood: *stood,
            came: look.what.came,
            first_on: look.from,
            worst_pct: share_pct.filter(|_| !look.what.of_place),
            by_loss: look.what.of_loss,
            of_place: look.what.of_place,
            spreads: *spreads,
            eats_bed: None,
            entries: vec![look.entry.clone()],
        };
        pest.named(what);
        pest
    }

    /// It was seen again. Who writes no share but whether it goes along with plants answers that alone; a look that counted nothing
    /// makes no less of it.
    fn again(&mut self, look: &Written) {
        let PestLook { what, share_pct, spreads, stood, .. } = &look.what;
        self.spreads = spreads.or(self.spreads);
        self.entries.push(look.entry.clone());
        if share_pct.is_some() || spreads.is_none() {
            self.seen.share_pct = share_pct.or(self.seen.share_pct);
            self.seen.on = look.from;
            self.stood = *stood;
            self.came = look.what.came;
            self.by_loss = false;
            self.of_place &= look.what.of_place;
        }
        let here = share_pct.filter(|_| !look.what.of_place);
        self.worst_pct = [self.worst_pct, here].into_iter().flatten().reduce(f64::max);
        let before = std::mem::replace(&mut self.seen.what, what.clone());
        self.named(what);
        if !self.nature.in_soil && !self.nature.spreads {
            // Another name makes nothing harmless.
            self.named(&format!("{before} {what}"));
        }
    }

    fn named(&mut self, what: &str) {
        self.nature = nature_of(what, self.spreads);
        self.seen.in_soil = self.nature.in_soil;
        self.seen.spreads = self.nature.spreads;
        self.seen.is_sign = self.nature.is_sign;
        self.seen.is_damping = self.nature.is_damping;
        self.seen.in_stem = self.nature.in_stem;
        self.seen.leaves = self.nature.takes_leaves.then(|| sound_leaves(None));
    }

    /// Whether it holds a tray: what nobody counted may be on all of them.
    pub(crate) fn holds(&self) -> bool {
        let stripped = || self.seen.share_pct.is_none_or(|share| share >= LEAVES_HOLD_PCT);
        let many = || if self.nature.takes_leaves { stripped() } else { self.on_many() };
        !self.nature.goes_by_itself() || many()
    }

    pub(crate) fn on_many(&self) -> bool {
        self.seen.share_pct.is_none_or(|share| share >= PEST_HOLDS_PCT)
    }

    /// Whether it is on so many plants of a tray that all go, with their soil.
    fn takes_all(&self) -> bool {
        let many = || self.worst_pct.is_some_and(|share| share >= WHOLE_TRAY_PCT);
        self.nature.takes_tray || self.nature.fills_soil() && many()
    }

    /// Whether a tray has it in its soil and roots, where water, hands and tools take it on. Damping-off stays among seedlings.
    pub(crate) fn goes_with_soil(&self) -> bool {
        !self.seen.in_bed && self.nature.in_soil && !self.nature.by_eye && !self.nature.is_damping
    }

    /// How many days after it was answered a look tells whether it is gone.
    pub(crate) fn look_after_days(&self) -> i32 {
        shows_after_days(self.nature)
    }
}

fn shows_after_days(nature: Nature) -> i32 {
    if nature.has_cure { LOOK_AFTER_DAYS } else { LOOK_AFTER_INCURABLE_DAYS }
}

/// How many days plants may have it before anybody sees it: as long as a look waits. What eats and spots leaves, what is seen by the eye
/// and damping-off show at once.
pub(crate) fn hides_days(nature: Nature) -> i32 {
    let shows = nature.goes_by_itself() || nature.by_eye || nature.is_damping;
    if shows { 0 } else { shows_after_days(nature) }
}

/// What lives in soil and roots goes along with the soil in a bag: plants that stood in one soil are asked about for so many days after
/// they parted, however late it shows. Ours: as long as a bag is kept.
const SOIL_HIDES_DAYS: i32 = 365;

/// How many days after plants parted what is seen in some of them may be hidden in the others.
pub(crate) fn hides_together_days(nature: Nature) -> i32 {
    let hides = hides_days(nature);
    if hides > 0 && nature.in_soil { SOIL_HIDES_DAYS } else { hides }
}

/// Whether plants that stood at a place may have had what was written of it: while they stood there, or so soon after they left that it was
/// hidden in them. Of a look that found none only the first.
pub(crate) fn met_there(look: &Written, from: Day, until: Option<Day>) -> bool {
    let hidden = |until: Day| {
        !look.finds_none()
            && until.days_since(from) >= REACHES_BACK_STAY_DAYS
            && look.from.days_since(until) <= hides_days(nature_of(&look.what.what, look.what.spreads))
    };
    from <= look.from && until.is_none_or(|until| look.from <= until || hidden(until))
}

/// What was done against sicknesses, in a tray or in a bed.
pub(crate) trait Deeds {
    /// Whether a look that found none of a pest is believed.
    fn settled(&self, pest: &OpenPest, look: &Written) -> bool;
    /// What is missing on a day until a pest counts as gone.
    fn lacking(&self, pest: &OpenPest, day: Day) -> Option<PestLacks>;
    /// Whether the plants that stand were counted since, and that says as much as a look.
    fn counted_clear(&self, pest: &OpenPest, day: Day) -> bool;
}

/// What was done against sicknesses of a tray.
struct DeedsInTray<'a> {
    story: &'a TrayStory,
    /// Days on which something was used that can cure.
    treated: Vec<Day>,
    /// Plants standing now.
    standing: u64,
    /// What was seen at places, or in other trays, after these plants had left them, and when they did.
    left: Vec<(EntryId, Left, Day)>,
}

/// Where plants were before a sickness was seen there.
#[derive(Clone)]
enum Left {
    /// At a place.
    Place(PlaceName),
    /// In a tray.
    Tray(OutOf),
}

/// Places, and what trays have in common, with which the sicknesses of one are looked for.
pub(crate) type Around<'a> = (&'a Places, &'a Kin);

impl Deeds for DeedsInTray<'_> {
    fn settled(&self, pest: &OpenPest, look: &Written) -> bool {
        if pest.nature.goes_by_itself() {
            return true;
        }
        let Ok(from) = self.look_from(pest, look.from) else { return false };
        let enough = look.what.plants_seen.is_some_and(|plants| plants >= self.enough(pest));
        let at_roots = !pest.nature.in_soil || look.what.roots_seen;
        from <= look.from && enough && at_roots
    }

    fn lacking(&self, pest: &OpenPest, day: Day) -> Option<PestLacks> {
        if pest.nature.goes_by_itself() {
            return None;
        }
        let plants = self.enough(pest);
        let at = if pest.nature.in_soil { LookAt::Roots(plants) } else { LookAt::Plants(plants) };
        Some(match self.look_from(pest, day) {
            Ok(from) => PestLacks::Look { from, is_due: from <= day, early: early(&self.story.pests, pest, from), at },
            Err(lacks) => lacks,
        })
    }

    fn counted_clear(&self, pest: &OpenPest, day: Day) -> bool {
        losses::counted_clear(pest, self.story, day)
    }
}

/// A nest of what stings, or a snake, that was seen last and is not gone.
pub(super) fn nest_of(looks: &[Written], day: Day) -> Option<&Written> {
    let looks = || looks.iter().filter(|look| look.from <= day);
    let seen = looks().filter(|look| stings(&look.what.what) && !look.finds_none()).max_by_key(|look| look.from)?;
    let gone = looks().any(|look| look.from >= seen.from && look.clears(&seen.what.what));
    (!gone).then_some(seen)
}

fn nest_criterion(seen: PestSeen, entry: Option<EntryId>) -> Criterion {
    Criterion::found(Question::Pest, NotSo, Some(seen), Basis::Measured, false, RuleSource::Pest).resting_on(entry)
}

/// A nest of what stings, or a snake, at a place or in a tray that stands there: nobody works there until it is gone.
pub(crate) fn nest_at(name: &PlaceName, (places, sick): (&Places, &SickPlaces), day: Day) -> Option<Criterion> {
    let of_place = || {
        let seen = nest_of(&places.get(name)?.pests, day)?;
        let known = PestSeen::only(&seen.what.what, seen.what.share_pct, seen.from);
        Some(nest_criterion(known, Some(seen.entry.clone())))
    };
    let of_tray = || {
        let spell = sick.get(name)?.iter().find(|spell| stings(&spell.seen.what))?;
        Some(nest_criterion(spell.seen.clone(), None))
    };
    of_place().or_else(of_tray)
}

/// The same in a tray, or where it stands.
fn nest_around(story: &TrayStory, known: (&Places, &SickPlaces), day: Day) -> Option<Criterion> {
    let own = nest_of(&story.pests, day);
    let own = own.map(|seen| {
        let known = PestSeen::only(&seen.what.what, seen.what.share_pct, seen.from);
        nest_criterion(known, Some(seen.entry.clone()))
    });
    own.or_else(|| nest_at(story.place()?, known, day))
}

/// How many plants a worker leaves behind for what was seen on a few: those on which it was, less those that are gone since.
pub(super) fn left_behind(story: &TrayStory, places: &Places, kin: &Kin, day: Day) -> u64 {
    let standing = story.accounts.standing;
    let open = open_in_tray(story, (places, kin), day);
    let on_few = open.iter().filter(|pest| !pest.holds() && !pest.of_place);
    let left = on_few.filter_map(|pest| {
        let stood = pest.stood.unwrap_or(standing);
        let had_it = (stood as f64 * pest.seen.share_pct? / 100.0 - 1e-9).ceil() as u64;
        let since = story.gone.iter().filter(|gone| (pest.seen.on..=day).contains(&gone.from));
        Some(had_it.saturating_sub(since.map(|gone| u64::from(gone.what.plants)).sum()))
    });
    left.max().unwrap_or(0).min(standing)
}

impl DeedsInTray<'_> {
    /// The day from which a look tells whether a pest is gone, by what was done against it up to a day; else what is missing.
    fn look_from(&self, pest: &OpenPest, until: Day) -> Result<Day, PestLacks> {
        if pest.nature.is_unknown {
            return Err(PestLacks::Kind);
        }
        if pest.takes_all() {
            return Err(PestLacks::WholeTray);
        }
        let days = pest.seen.on..=until;
        let treated = self.treated.iter().copied().filter(|on| days.contains(on)).min();
        let cured = treated.filter(|_| pest.nature.has_cure);
        // Of what was seen at a place alone nobody knows whether these plants have it: their own look tells.
        let never_here = pest.of_place.then(|| self.left(pest).map_or(pest.seen.on, |(_, on)| on));
        let done = match (cured.into_iter().chain(never_here).min(), self.thrown_out(pest, until)) {
            (Some(cured), Ok(thrown)) => cured.min(thrown),
            (Some(on), Err(_)) | (None, Ok(on)) => on,
            (None, Err(lacks)) => return Err(lacks),
        };
        Ok(done.max(self.last_died(until).unwrap_or(done)).plus(pest.look_after_days()))
    }

    /// The day by which as many plants were thrown out, or dead of it, as had it; one at least was thrown out with its soil.
    fn thrown_out(&self, pest: &OpenPest, until: Day) -> Result<Day, PestLacks> {
        let share = pest.seen.share_pct.ok_or(PestLacks::Share)? / 100.0;
        let mut gone: Vec<&Since<Gone>> =
            self.story.gone.iter().filter(|gone| (pest.seen.on..=until).contains(&gone.from)).collect();
        gone.sort_by_key(|gone| gone.from);
        // What was dead on the day of a look is not among those on which it was seen; where only losses tell of it they are those.
        let died = gone.iter().filter(|gone| gone.is_dead_of_it() && (pest.by_loss || gone.from > pest.seen.on));
        let sum = |plants: u64, gone: &&Since<Gone>| plants + u64::from(gone.what.plants);
        let died = died.fold(0, sum);
        let culled = gone.iter().filter(|gone| gone.what.culled).fold(0, sum);
        let stood = pest.stood.unwrap_or(self.standing + culled + died);
        // Of few that came from where it was seen no more than those have it.
        let most = pest.came.map_or(u64::MAX, |came| u64::from(came.max(1)));
        let sick = ((stood as f64 * share - 1e-9).ceil().max(1.0) as u64).min(most);
        let least = sick.saturating_sub(died).max(1);
        if culled < least {
            let whole = |plants: u64| u32::try_from(plants).unwrap_or(u32::MAX);
            let (least, so_far, died, or_treated) = (whole(least), whole(culled), whole(died), pest.nature.has_cure);
            return Err(PestLacks::ThrownOut { least, so_far, died, or_treated });
        }
        let mut so_far = 0;
        let enough = gone.iter().filter(|gone| gone.what.culled).find(|gone| {
            so_far += u64::from(gone.what.plants);
            so_far >= least
        });
        Ok(enough.map_or(pest.seen.on, |gone| gone.from))
    }

    /// The last day up to one on which plants died of a sickness: it was not over.
    fn last_died(&self, until: Day) -> Option<Day> {
        self.story.gone.iter().filter(|gone| gone.is_dead_of_it() && gone.from <= until).map(|gone| gone.from).max()
    }

    /// The day on which the plants left the last place or tray where a pest was seen, where none was seen while they stood there.
    fn left(&self, pest: &OpenPest) -> Option<(&Left, Day)> {
        let of = |entry: &EntryId| self.left.iter().filter(|(of, ..)| of == entry).max_by_key(|(.., on)| *on);
        let left = pest.entries.iter().map(of).collect::<Option<Vec<_>>>()?;
        left.into_iter().max_by_key(|(.., on)| *on).map(|(_, place, on)| (place, *on))
    }

    /// The plants of a look that tells.
    fn enough(&self, pest: &OpenPest) -> u32 {
        plants_to_look_at(self.standing, pest.seen.share_pct)
    }
}

/// Whether of plants that are gone and that are left those gone are so many of a hundred, or more.
pub(crate) fn is_share(gone: u32, left: u32, pct: f64) -> bool {
    f64::from(gone) * 100.0 >= f64::from(gone.saturating_add(left).max(1)) * pct
}

/// The last look that found none of a pest, and was made before the day from which one tells.
pub(crate) fn early(looks: &[Written], pest: &OpenPest, from: Day) -> Option<Day> {
    let clear = looks.iter().filter(|look| look.clears(&pest.seen.what));
    clear.map(|look| look.from).filter(|on| (pest.seen.on..from).contains(on)).max()
}

/// Of so many plants standing the number to look at, were a sickness still on the share on which it was.
pub(crate) fn plants_to_look_at(standing: u64, share_pct: Option<f64>) -> u32 {
    let share = share_pct.unwrap_or(LOOK_LEAST_PCT).max(LOOK_LEAST_PCT) / 100.0;
    let standing = u32::try_from(standing).unwrap_or(u32::MAX).max(1);
    let with_it = (f64::from(standing) * share - 1e-9).ceil() as u32;
    sample_size_detection_among(standing, with_it, LOOK_CHANCE).max(LOOK_LEAST_PLANTS.min(standing))
}

/// Every pest of a tray that is not settled: seen on it, on the trays its plants come from, or at a place while they stood there; and what
/// was seen in those trays so soon after they left that it was hidden in them.
pub(crate) fn open_in_tray(story: &TrayStory, (places, kin): Around<'_>, day: Day) -> Vec<OpenPest> {
    let at_places = stays(story).flat_map(|(place, from, until)| {
        let all = places.get(place).into_iter().flat_map(|place| place.pests.iter());
        all.filter(move |look| met_there(look, from, until)).map(move |look| (look, place, until))
    });
    let at_places: Vec<(&Written, &PlaceName, Option<Day>)> = at_places.collect();
    let lost = losses::sightings(story, day);
    let sisters = kin.sisters(&story.code);
    let seen = at_places.iter().map(|(look, ..)| *look).chain(sisters.iter().map(|sister| &sister.seen));
    let mut seen = seen.chain(&story.pests).chain(&lost).filter(|pest| comes_along(&pest.what.what)).peekable();
    if seen.peek().is_none() {
        return Vec::new();
    }
    let treated = treatments(story, places).filter(|one| one.can_cure()).map(|one| one.day).collect();
    let left = at_places.iter().filter_map(|(look, place, until)| {
        let on = until.filter(|until| *until < look.from)?;
        Some((look.entry.clone(), Left::Place((*place).clone()), on))
    });
    let out_of =
        sisters.iter().map(|sister| (sister.seen.entry.clone(), Left::Tray(sister.out_of.clone()), sister.out_of.left));
    let left = left.chain(out_of).collect();
    let deeds = DeedsInTray { story, treated, standing: story.accounts.standing, left };
    let mut open = open(seen, &deeds, day);
    for pest in &mut open {
        pest.seen.count_from = losses::count_tells_from(pest, story, day);
        match deeds.left(pest).filter(|_| pest.of_place) {
            Some((Left::Place(place), on)) => pest.seen.left = Some((place.clone(), on)),
            Some((Left::Tray(out_of), _)) => pest.seen.out_of = Some(out_of.clone()),
            None => {}
        }
    }
    open.retain(|pest| !(pest.nature.takes_leaves && leaves_counted(story, pest.seen.on)));
    open
}

/// Whether the leaves of a sample were counted on a day or since: it tells more than the share that was hurt.
fn leaves_counted(story: &TrayStory, on: Day) -> bool {
    let counted = |plant: &crate::nursery::entry::MeasuredPlant| plant.leaves.is_some() || plant.leaf_pairs.is_some();
    story.samples.iter().any(|sample| sample.day >= on && sample.plants.iter().any(counted))
}

/// The sound leaves that plants keep at least: of their species, else of all.
pub(crate) fn sound_leaves(profile: Option<&Profile>) -> LeavesAtLeast {
    let figure = profile.and_then(|profile| profile.leaves_least.as_ref());
    let in_pairs = || profile.and_then(|profile| profile.leaves_in_pairs.as_ref()).is_some_and(|pairs| pairs.value);
    match figure {
        Some(figure) => LeavesAtLeast { count: figure.value, pairs: in_pairs() },
        None => LeavesAtLeast { count: SOUND_PAIRS, pairs: true },
    }
}

/// The days on which something was done against a sickness of a tray: plants thrown out, or a treatment that is more than water.
pub(crate) fn acted_on(story: &TrayStory, places: &Places) -> Vec<Day> {
    let treated = treatments(story, places).filter(|one| one.can_cure()).map(|one| one.day);
    story.culled_on.iter().copied().chain(treated).collect()
}

/// What is still open of what was seen: a later look at the same replaces an earlier one, and 0 of it settles it, of what does not
/// go by itself only where plants were thrown out or treated long enough before, and enough plants were looked at.
pub(crate) fn open<'a>(seen: impl Iterator<Item = &'a Written>, deeds: &impl Deeds, day: Day) -> Vec<OpenPest> {
    let mut seen: Vec<&Written> = seen.filter(|pest| pest.from <= day).collect();
    seen.sort_by_key(|pest| pest.from);
    let mut open: Vec<OpenPest> = Vec::new();
    for look in seen {
        let PestLook { what, share_pct, spreads, .. } = &look.what;
        let gone = *share_pct == Some(0.0);
        if says_none(what) && share_pct.is_none_or(|share| share == 0.0) {
            open.retain(|pest| !deeds.settled(pest, look));
            continue;
        }
        // A look that found none tells of what it names alone.
        let is_it = |pest: &OpenPest| match gone {
            true => looks_for(what, &pest.seen.what),
            false => is_same_pest(&pest.seen.what, what),
        };
        let same = open.iter().position(is_it);
        // What is thrown out of a tray with an open sickness answers that, by whatever name.
        if same.is_none() && look.what.thrown_out && open.iter().any(|pest| answers(pest, what)) {
            continue;
        }
        match same.and_then(|at| open.get_mut(at)) {
            Some(pest) if gone => {
                if spreads.is_some() {
                    pest.spreads = *spreads;
                    pest.named(&pest.seen.what.clone());
                }
                open.retain(|pest| !looks_for(what, &pest.seen.what) || !deeds.settled(pest, look));
            }
            // What plants of a bed died of is no look at how many have it.
            Some(pest) if look.what.of_loss => pest.entries.push(look.entry.clone()),
            Some(pest) => pest.again(look),
            None if gone => {}
            None => {
                // Who looks and writes what it is has answered what plants were lost of.
                open.retain(|pest| look.what.of_loss || !(pest.by_loss && pest.nature.is_unknown));
                open.push(OpenPest::begun(look));
            }
        }
    }
    open.retain(|pest| !deeds.counted_clear(pest, day));
    for pest in &mut open {
        pest.seen.lacks = deeds.lacking(pest, day);
    }
    open
}

fn answers(pest: &OpenPest, what: &str) -> bool {
    let of = nature_of(what, None);
    !pest.nature.goes_by_itself() && (pest.nature.in_soil == of.in_soil || of.is_unknown || of.is_sign)
}

/// The criterion `pest` of a tray.
pub(crate) fn criterion(
    story: &TrayStory,
    profile: Option<&Profile>,
    (places, sick, kin): (&Places, &SickPlaces, &Kin),
    day: Day,
) -> Criterion {
    const SOURCE: RuleSource = RuleSource::Pest;
    if let Some(nest) = nest_around(story, (places, sick), day) {
        return nest;
    }
    let mut open = open_in_tray(story, (places, kin), day);
    // Bare roots and stumps are set out without their leaves.
    open.retain(|pest| !(pest.nature.takes_leaves && story.is_bare()));
    let share = |pest: &OpenPest| (pest.seen.share_pct.unwrap_or(0.0) * 100.0) as i64;
    let by_itself = |pest: &OpenPest| pest.nature.goes_by_itself();
    let worst = open.iter().max_by_key(|pest| (pest.holds(), !by_itself(pest), pest.seen.in_soil, share(pest)));
    let stands = story.accounts.standing > 0;
    let from_dying = kin::came_from_dying(kin, story).filter(|_| stands);
    let died = || losses::many_died(story, day).or_else(|| from_dying.clone().filter(|died| died.blocks));
    let beside = || beside::criterion(sick, story, day).filter(|_| stands);
    let with_care = || beside().or_else(|| from_dying.clone());
    let Some(worst) = worst else {
        let nothing = || Criterion::found(Question::Pest, NotSo, None, Basis::Reckoned, true, SOURCE);
        let beside_dying = || kin::beside_dying(kin, story, day).filter(|_| stands);
        let set_out = || kin::set_out_sick(kin, story, day).filter(|_| stands);
        return died().or_else(with_care).or_else(set_out).or_else(beside_dying).unwrap_or_else(nothing);
    };
    if let Some(died) = died().filter(|_| !worst.holds()) {
        return died;
    }
    let mut seen = worst.seen.clone();
    seen.leaves = seen.leaves.map(|_| sound_leaves(profile));
    let criterion = Criterion::found(Question::Pest, NotSo, Some(seen), Basis::Measured, false, SOURCE)
        .resting_on(open.iter().flat_map(|pest| pest.entries.iter().cloned()));
    if worst.holds() { criterion } else { with_care().unwrap_or_else(|| criterion.advising()) }
}
