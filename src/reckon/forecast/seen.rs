//! What the looks at a tray say of its emergence: counts between looks, the days nobody looked left out.

use crate::base::{Day, EntryId};
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

/// Looks at a tray.
#[derive(Clone, PartialEq, Debug)]
pub struct Seen {
    /// The day of sowing.
    pub sown_on: Day,
    /// Seeds sown.
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

/// The looks at a tray sown here on one day. Counts of part of the cells settle nothing and stocktakes explain nothing:
/// neither is a look at emergence. Rises that correct an earlier count are in `corrected` and not counted here; what was
/// taken out between looks is counted as emerged by the books. Seedlings beyond one a seed are no emergence of seeds.
///
/// # Errors
/// Why the looks say nothing.
pub fn looks_of(story: &TrayStory) -> Result<Seen, Unseen> {
    let sown_here = matches!(story.origin, Some(Origin::Sown)) && story.accounts.sown > 0;
    let (Some(first), true) = (story.sowings.first(), sown_here) else { return Err(Unseen::NothingSown) };
    if story.seed_unknown {
        return Err(Unseen::SeedsUnknown);
    }
    if story.sowings.iter().any(|sowing| sowing.day != first.day) {
        return Err(Unseen::SeveralSowings);
    }
    let seeds = u32::try_from(story.accounts.sown).map_err(|_| Unseen::SeedsUnknown)?;
    let mut days: Vec<(Day, u32)> = Vec::new();
    let mut entries = Vec::new();
    let mut left = seeds;
    let whole = story.counts.iter().filter(|look| look.part_of_cells.is_none() && !look.stocktake);
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
        let age = day.days_since(first.day);
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
    let last_look = days.last().map(|(day, _)| *day).filter(|day| *day > first.day);
    Ok(Seen { sown_on: first.day, seeds, looks, last_look, last_rise, deaths_unseen, entries })
}
