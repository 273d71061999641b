//! What the looks at a tray say of its emergence: counts between looks, the days nobody looked left out.

use crate::base::{Day, EntryId, LotCode};
use crate::reckon::seed::own_sowings;
use crate::reckon::stock::{Origin, TrayStory};
use crate::science::emergence::Looks;

/// Days since sowing that stand for a look before anything can be up: a sowing nobody has counted.
const NO_LOOK_DAYS: f64 = 1e-3;

/// Why the looks at a tray say nothing of emergence.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Unseen {
    /// No seed was sown in it here.
    NothingSown,
    /// Nobody knows how many seeds were sown.
    SeedsUnknown,
    /// Sown on several days: nobody can tell whose seedlings they are.
    SeveralSowings,
    /// The species has no days of emergence.
    NoSpeciesDays,
}

/// Seed sown in a tray on one day.
#[derive(Clone, PartialEq, Debug)]
pub struct SownOn {
    /// The day.
    pub day: Day,
    /// Seeds.
    pub seeds: u32,
    /// The lot of the last of that day; none where nobody knows it.
    pub lot: Option<LotCode>,
}

/// Looks at a tray.
#[derive(Clone, PartialEq, Debug)]
pub struct Seen {
    /// The day of the first sowing.
    pub sown_on: Day,
    /// Its sowings by day, oldest first.
    pub sowings: Vec<SownOn>,
    /// Seeds sown in all.
    pub seeds: u32,
    /// Looks with what newly emerged at each.
    pub looks: Looks,
    /// The last look at all of the tray; none where nobody has counted.
    pub last_look: Option<Day>,
    /// The last look at which something new was up.
    pub last_rise: Option<Day>,
    /// Whether seedlings disappeared that nobody saw die: more may have come up than were seen.
    pub deaths_unseen: bool,
    /// The counts it rests on.
    pub entries: Vec<EntryId>,
}

impl Seen {
    /// The day of the youngest sowing.
    pub(crate) fn youngest_on(&self) -> Day {
        self.sowings.last().map_or(self.sown_on, |sowing| sowing.day)
    }

    /// Days since the first sowing, of a day.
    pub fn age(&self, day: Day) -> f64 {
        f64::from(day.days_since(self.sown_on))
    }
}

/// The looks at a tray sown here on one day, as [`looks_at_all`].
///
/// # Errors
/// Why the looks say nothing; sown on several days as well.
pub(crate) fn looks_of(story: &TrayStory) -> Result<Seen, Unseen> {
    looks_at_all(story).and_then(|seen| if seen.sowings.len() > 1 { Err(Unseen::SeveralSowings) } else { Ok(seen) })
}

/// The looks at a tray sown here on one day or several. Counts of part of the cells settle nothing and stocktakes explain nothing:
/// neither is a look at emergence. Rises that correct an earlier count are in `corrected` and not counted here; what was
/// taken out between looks is counted as emerged by the books. Seedlings beyond one a seed are no emergence of seeds.
///
/// # Errors
/// Why the looks say nothing.
pub(crate) fn looks_at_all(story: &TrayStory) -> Result<Seen, Unseen> {
    looks_until(story, None)
}

/// The same up to a day.
pub(crate) fn looks_until(story: &TrayStory, until: Option<Day>) -> Result<Seen, Unseen> {
    let known = |day: Day| until.is_none_or(|until| day <= until);
    let sown_here = matches!(story.origin, Some(Origin::Sown)) && story.accounts.sown > 0;
    if !sown_here {
        return Err(Unseen::NothingSown);
    }
    if story.seed_unknown {
        return Err(Unseen::SeedsUnknown);
    }
    let sowings = sowings_until(story, known)?;
    let first = sowings.first().map(|sowing| sowing.day).ok_or(Unseen::NothingSown)?;
    let seeds =
        sowings.iter().try_fold(0u32, |sum, sowing| sum.checked_add(sowing.seeds)).ok_or(Unseen::SeedsUnknown)?;
    let mut days: Vec<(Day, u32)> = Vec::new();
    let mut entries = Vec::new();
    let mut left = seeds;
    let whole = story.counts.iter().filter(|look| look.part_of_cells.is_none() && !look.stocktake && known(look.day));
    for look in whole.clone() {
        let emerged = look.emerged.min(left);
        left -= emerged;
        entries.push(look.entry.clone());
        match days.last_mut() {
            Some((day, sum)) if *day == look.day => *sum += emerged,
            Some(_) | None => days.push((look.day, emerged)),
        }
    }
    let deaths_unseen = whole.clone().any(|look| look.not_seen > 0);
    let last_rise = days.iter().rev().find(|(_, emerged)| *emerged > 0).map(|(day, _)| *day);
    let (mut edges, mut counts, mut early) = (vec![0.0], Vec::new(), 0);
    for (day, emerged) in &days {
        let age = day.days_since(first);
        if age <= 0 {
            // Counted on the day of sowing: what was up then belongs to the first look after it.
            early += emerged;
            continue;
        }
        edges.push(f64::from(age));
        counts.push(emerged + early);
        early = 0;
    }
    if counts.is_empty() {
        edges.push(NO_LOOK_DAYS);
        counts.push(0);
    }
    let looks = Looks::new(&edges, &counts, seeds).map_err(|_| Unseen::SeedsUnknown)?;
    let last_look = days.last().map(|(day, _)| *day).filter(|day| *day > first);
    Ok(Seen { sown_on: first, sowings, seeds, looks, last_look, last_rise, deaths_unseen, entries })
}

/// The seed sown in a tray itself, by day.
fn sowings_until(story: &TrayStory, known: impl Fn(Day) -> bool) -> Result<Vec<SownOn>, Unseen> {
    let mut sowings: Vec<SownOn> = Vec::new();
    for sowing in own_sowings(story).into_iter().filter(|sowing| known(sowing.day)) {
        let seeds = sowing.seeds.ok_or(Unseen::SeedsUnknown)?;
        match sowings.last_mut() {
            Some(last) if last.day == sowing.day => {
                last.seeds = last.seeds.saturating_add(seeds);
                last.lot = sowing.lot;
            }
            Some(_) | None => sowings.push(SownOn { day: sowing.day, seeds, lot: sowing.lot }),
        }
    }
    sowings.retain(|sowing| sowing.seeds > 0);
    sowings.sort_by_key(|sowing| sowing.day);
    Ok(sowings)
}
