//! A tray's clocks: days since sowing, days in its container, and what a lifted plug says of them.

use crate::base::{Day, EntryId};
use crate::nursery::entry::types::{MovedHow, Roots};
use crate::nursery::species::{Figure, Profile};
use crate::reckon::picture::criterion::RestsFrom;
use crate::reckon::picture::quantity::{DaysOfSpecies, Holds, InContainer};
use crate::reckon::picture::{Basis, Criterion, DaySpread, Gap, Question, RuleSource, Source};
use crate::reckon::site::Site;
use crate::reckon::stock::{Gone, Origin, Since, TrayStory};
use crate::reckon::tray::exposure::stands_any_light;
use crate::reckon::tray::hold::bagged_too_late;
use crate::reckon::tray::pest::is_share;
use crate::reckon::tray::size::SAMPLE_LASTS_DAYS;
use crate::science::container::holding_days;

/// Seedlings are pricked out so many days after half of them came up (2 cotyledons to 2 true leaves). Common practice,
/// about 3 weeks.
pub(crate) const PRICK_OUT_AFTER_DAYS: i32 = 21;
/// And within so many days, before the root is longer than the hole is deep. Ours, common practice.
pub(crate) const PRICK_OUT_WINDOW_DAYS: i32 = 21;

/// Days after sowing from which seedlings are pricked out of their seedbed.
pub(crate) fn prick_out_from_days(profile: Option<&Profile>) -> Option<i32> {
    let half = profile?.emerge_half_days.as_ref()?.value;
    Some(half.round() as i32 + PRICK_OUT_AFTER_DAYS)
}

/// A plug that holds overrules the holding time for so many days (ours, common practice: roots are looked at again
/// after three weeks).
pub(crate) const PLUG_SAYS_FOR_DAYS: i32 = 21;
/// The holding time is the middle of a spread of this share either way (ours).
const HOLDING_SPREAD: f64 = 0.15;

/// A nurse plant whose profile gives no least days goes out so many days after the last of the seed, or of the shoots, is
/// due. Ours: it has its first leaves and roots that hold then.
pub(crate) const NURSE_AFTER_EMERGENCE_DAYS: i32 = 21;

/// What is known of a tray's age.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct Age {
    /// Days since the youngest sowing, which counts for ready.
    pub youngest_days: Option<i32>,
    /// The entries it rests on.
    pub entries: Vec<EntryId>,
    /// The day the youngest was sown.
    pub youngest_on: Option<Day>,
    /// The day the oldest was sown.
    pub oldest_on: Option<Day>,
}

/// The age of a tray's plants on a day.
pub(crate) fn age(story: &TrayStory, day: Day) -> Age {
    let mut days: Vec<(Day, EntryId)> = story.sowings.iter().map(|sowing| (sowing.day, sowing.entry.clone())).collect();
    if let Some(Origin::Received { age_days: Some(age), day: arrived, entry, .. }) = &story.origin {
        days.push((arrived.plus(-age), entry.clone()));
    }
    let of_origin =
        |entry: &EntryId| matches!(&story.origin, Some(Origin::Received { entry: own, .. }) if own == entry);
    let moved_in = || story.begun_on.iter().filter(|begun| !of_origin(&begun.entry));
    days.extend(moved_in().filter_map(|begun| Some((begun.what?, begun.entry.clone()))));
    // Plants whose age nobody knows may be the youngest.
    let unknown = matches!(story.origin, Some(Origin::Received { age_days: None, .. }))
        || moved_in().any(|begun| begun.what.is_none());
    let youngest = days.iter().filter(|_| !unknown).max_by_key(|(on, _)| *on).map(|(on, _)| *on);
    let oldest = days.iter().min_by_key(|(on, _)| *on).map(|(on, _)| *on);
    Age {
        youngest_days: youngest.map(|on| day.days_since(on)),
        entries: days.into_iter().map(|(_, entry)| entry).collect(),
        youngest_on: youngest,
        oldest_on: oldest,
    }
}

fn whole_days(figure: Option<&Figure<f64>>) -> Option<i32> {
    figure.map(|figure| figure.value.round() as i32)
}

/// The least days of a species, and its usual and most days where the profile has them; none without the least.
pub(crate) fn day_span(profile: Option<&Profile>) -> Option<DaysOfSpecies> {
    let profile = profile?;
    let least = whole_days(profile.plantable_least_days.as_ref()).or_else(|| nurse_least(profile))?;
    let usual = whole_days(profile.plantable_usual_days.as_ref());
    Some(DaysOfSpecies { least, usual, most: whole_days(profile.plantable_most_days.as_ref()) })
}

/// The day on which the youngest plants are as old as their species must be.
pub(crate) fn old_enough_on(age: &Age, profile: Option<&Profile>) -> Option<Day> {
    Some(age.youngest_on?.plus(day_span(profile)?.least))
}

/// The least days of a nurse plant whose profile gives none.
fn nurse_least(profile: &Profile) -> Option<i32> {
    let emerged = whole_days(profile.emerge_last_days.as_ref()).filter(|_| stands_any_light(Some(profile)))?;
    Some(emerged + NURSE_AFTER_EMERGENCE_DAYS)
}

/// The criterion `days_since_sowing`. An unknown age holds the tray back only where nothing else tells its size.
pub(crate) fn days_since_sowing(age: &Age, profile: Option<&Profile>, measured: bool) -> Criterion {
    let figure = profile.and_then(|profile| profile.plantable_least_days.as_ref());
    let of_nurses = figure.is_none() && stands_any_light(profile);
    let source = if of_nurses {
        RuleSource::NurseDays.into()
    } else {
        Source::figure(figure.map(|figure| figure.source.as_str()))
    };
    match (age.youngest_days, day_span(profile)) {
        (Some(days), Some(needed)) => {
            let least = needed.least;
            Criterion::found(Question::DaysSinceSowing, needed, days, Basis::Counted, days >= least, source)
                .expected_on(age.youngest_on.map(|on| on.plus(least)))
                .resting_on(age.entries.iter().cloned())
        }
        // The age is known and the species has no least age: nothing to wait for, and said as taken.
        (Some(days), None) => {
            let needed = DaysOfSpecies { least: 0, usual: None, most: None };
            Criterion::found(Question::DaysSinceSowing, needed, days, Basis::Assumed, true, source)
                .resting_on(age.entries.iter().cloned())
        }
        (None, needed) => {
            // Suckers of which nobody knows the age are planted as they come.
            let must_be_known = !measured && !of_nurses;
            Criterion::unknown(Question::DaysSinceSowing, needed, must_be_known, source)
                .resting_on(age.entries.iter().cloned())
        }
    }
}

/// How long a tray's roots have been in the present container, and how long it holds them.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct Holding {
    /// Since when.
    pub since: Day,
    /// Days it holds them.
    pub limit_days: i32,
    /// Whether the container's volume is known; otherwise the species' own container is taken.
    pub volume_known: bool,
    /// The entries it rests on.
    pub entries: Vec<EntryId>,
}

/// The holding time of a tray; none where the species has no figure or nobody knows since when.
pub(crate) fn holding(
    story: &TrayStory,
    profile: Option<&Profile>,
    site: &Site,
    age: &Age,
    day: Day,
) -> Option<Holding> {
    let profile = profile?;
    let most = profile.plantable_most_days.as_ref()?.value;
    let spell = story.container()?;
    let described =
        spell.what.as_ref().and_then(|name| site.containers.get(name)).and_then(|container| container.entry_on(day));
    let known_ml = profile.container_ml.as_ref().map(|figure| figure.value);
    let most = (most - in_seedbed_days(story, age, spell.from)).max(most / 2.0);
    let scaled = described.zip(known_ml).and_then(|((_, set), known)| holding_days(most, known, set.volume_ml.0).ok());
    // Seedlings of a seedbed are to be out of it before it is too narrow for them; one that nobody described may be a bag.
    let is_seedbed = scaled.is_some() && in_seedbed(story, Some(profile), site, day);
    let pricked = is_seedbed.then(|| prick_out_from_days(Some(profile))).flatten();
    let out_by = pricked.map_or(f64::INFINITY, |from| f64::from(from + PRICK_OUT_WINDOW_DAYS));
    let mut entries = vec![spell.entry.clone()];
    entries.extend(described.map(|(entry, _)| entry.clone()));
    // Plants from elsewhere brought their container with them: their whole age counts, where it is known.
    // Those of the wild were bagged when they came.
    let brought = story.accounts.arrived > 0 && story.containers.len() == 1 && story.wildlings.is_empty();
    let since = if brought { age.oldest_on? } else { spell.from };
    Some(Holding {
        since,
        limit_days: scaled.unwrap_or(most).min(out_by).round() as i32,
        volume_known: scaled.is_some(),
        entries,
    })
}

/// A container with less than this share of the species' own holds seedlings that are to be pricked out (ours).
const SEEDBED_VOLUME_SHARE: f64 = 0.25;

/// Whether its seedlings stand where they were sown to be pricked out: the profile says a seedbed, and it is sown into less
/// than its own container.
pub(crate) fn in_seedbed(story: &TrayStory, profile: Option<&Profile>, site: &Site, day: Day) -> bool {
    if !matches!(story.origin, Some(Origin::Sown)) {
        return false;
    }
    let sown_in = profile.and_then(|profile| profile.sow_place.as_ref()).map_or("", |figure| figure.value.as_str());
    let by_words = sown_in.contains("seedbed") || sown_in.contains("prick");
    let needed_ml = profile.and_then(|profile| profile.container_ml.as_ref()).map(|figure| figure.value);
    let container = story.container().and_then(|spell| spell.what.as_ref()).and_then(|name| site.containers.get(name));
    match container.and_then(|container| container.on(day)).zip(needed_ml) {
        Some((container, needed)) => by_words && container.volume_ml.0 < needed * SEEDBED_VOLUME_SHARE,
        None => sown_in.starts_with("seedbed") && !sown_in.contains("direct"),
    }
}

/// Days that the plants spent in the seedbed before they came into their container: a profile counts its most days from
/// sowing, the container holds from pricking out.
fn in_seedbed_days(story: &TrayStory, age: &Age, since: Day) -> f64 {
    let pricked_out = story.moved_how == Some(MovedHow::PrickedOut);
    let first = story.made_on == Some(since);
    let sown = age.oldest_on.filter(|_| pricked_out && first);
    sown.map_or(0.0, |sown| f64::from(since.days_since(sown).max(0)))
}

/// No plug lifted in so many days after roots were cut says that they hold: the ball held before the cut as well, and new tips
/// are not seen before three weeks. Ours.
pub(crate) const CUT_ROOTS_UNSEEN_DAYS: i32 = 21;

/// The last plug that still tells of the roots: lifted since they entered the present container, or earlier where it showed
/// roots that circle, which a larger container does not mend; none once roots were cut. A ball that circles holds as well: once
/// it was seen only a cut settles it, or a plug that holds after the bad ones were thrown out.
pub(crate) fn last_plug(story: &TrayStory) -> Option<(Day, Roots, EntryId)> {
    let since = story.container().map(|spell| spell.from);
    let tells = |from: Day| since.is_none_or(|since| from >= since);
    let plugs = story.plugs_that_tell();
    let last = plugs.last();
    let settled = |seen: Day| last.is_some_and(|last| is_sorted_out(story, seen, last.from));
    let circling = plugs.iter().rev().find(|plug| plug.what == Roots::Circling);
    let own = circling.map(|plug| (plug.from, &plug.entry));
    let before = || story.circling_from_before.as_ref().map(|plug| (plug.from, &plug.entry));
    if let Some((seen, entry)) = own.or_else(before) {
        let still = last.is_none_or(|last| last.what == Roots::Circling || !settled(seen));
        if still {
            return Some((seen, Roots::Circling, entry.clone()));
        }
    }
    if let Some(apart) = last.and_then(|last| fell_apart_lately(plugs, last)).filter(|plug| tells(plug.from)) {
        return Some((apart.from, Roots::Crumbles, apart.entry.clone()));
    }
    let told = last.filter(|plug| tells(plug.from) && !(plug.what == Roots::Holds && is_newly_cut(story, plug.from)));
    told.map(|plug| (plug.from, plug.what, plug.entry.clone()))
}

/// Where so large a share of the plants was thrown out since the plug that circled, percent, one that holds says that the bad ones went; where
/// fewer were, it takes as many plugs as against one weak ball. Ours.
const CIRCLING_CULLED_PCT: f64 = 5.0;

/// Whether so many thrown out, and so many balls that held after that, say that the plants with roots that circle are gone.
pub(crate) fn circle_no_more(culled: u32, left: u32, held: usize) -> bool {
    culled > 0 && held > 0 && (held >= PLUGS_AGAINST_ONE || is_share(culled, left, CIRCLING_CULLED_PCT))
}

/// Whether those with roots that circle were thrown out between two days.
fn is_sorted_out(story: &TrayStory, seen: Day, until: Day) -> bool {
    let culled: Vec<&Since<Gone>> =
        story.gone.iter().filter(|gone| gone.what.culled && (seen..=until).contains(&gone.from)).collect();
    let plants = culled.iter().map(|gone| gone.what.plants).fold(0, u32::saturating_add);
    let first = culled.iter().map(|gone| gone.from).min();
    let holds = |plug: &&Since<Roots>| plug.what == Roots::Holds && first.is_some_and(|since| plug.from >= since);
    circle_no_more(plants, story.accounts.standing_count(), story.plugs_that_tell().iter().filter(holds).count())
}

/// A ball that fell apart counts against those that held in so many days after it: roots take hold in weeks. Ours.
pub(crate) const PLUG_AGAIN_DAYS: i32 = 14;
/// So many that held since say that it was the one weak one. Ours.
pub(crate) const PLUGS_AGAINST_ONE: usize = 3;

/// The ball that fell apart a short while before the last one held, where too few held since.
fn fell_apart_lately<'a>(plugs: &'a [Since<Roots>], last: &Since<Roots>) -> Option<&'a Since<Roots>> {
    let at = plugs.iter().rposition(|plug| plug.what == Roots::Crumbles)?;
    let (apart, since) = (plugs.get(at)?, plugs.len() - 1 - at);
    let lately = last.from.days_since(apart.from) < PLUG_AGAIN_DAYS;
    (last.what == Roots::Holds && lately && since < PLUGS_AGAINST_ONE).then_some(apart)
}

/// Whether roots were cut so lately that a plug tells nothing of them.
pub(crate) fn is_newly_cut(story: &TrayStory, day: Day) -> bool {
    plug_tells_from(story, day).is_some()
}

/// The day from which a plug tells again of roots that were cut a short while before a day; none where it tells.
pub(crate) fn plug_tells_from(story: &TrayStory, day: Day) -> Option<Day> {
    let cuts = story.roots_cut.iter().map(|cut| cut.from).chain(story.cut_before);
    let fresh = cuts.filter(|cut| (0..CUT_ROOTS_UNSEEN_DAYS).contains(&day.days_since(*cut)));
    fresh.max().map(|cut| cut.plus(CUT_ROOTS_UNSEEN_DAYS))
}

/// Beyond so many times the days a container holds, one plug that holds does not let plants go: a sample of these weeks must say
/// that they still grow straight and in measure. Ours.
pub(crate) const PLUG_ALONE_TIMES: f64 = 1.5;

/// Beyond so many times those days no plug and no sample lets plants go: the roots have wound round for years, and the outside of the ball
/// does not show it. Ours.
pub(crate) const OLD_BAG_TIMES: f64 = 3.0;

const HOLDING_SOURCE: RuleSource = RuleSource::Holding;

/// The criterion `days_in_container`.
pub(crate) fn days_in_container(
    holding: Option<&Holding>,
    plug: Option<&(Day, Roots, EntryId)>,
    gap: Option<Gap>,
    (seedbed, tells_from): (bool, Option<Day>),
    (sampled, day): (Option<Day>, Day),
) -> Criterion {
    if let Some((_, Roots::Circling, entry)) = plug {
        // Roots that circle are over the limit whatever the days: there is no number of days to show.
        let (needed, known) = (Holds::Roots, InContainer::Circling);
        return Criterion::found(Question::DaysInContainer, needed, known, Basis::Measured, false, HOLDING_SOURCE)
            .resting_on([entry.clone()]);
    }
    let Some(holding) = holding else {
        let until = |on: Day| on.plus(PLUG_SAYS_FOR_DAYS);
        let told = plug.filter(|(on, roots, _)| *roots == Roots::Holds && day <= until(*on));
        let gap = told.map(|(on, ..)| Gap::PlugTells { on: *on, until: until(*on) }).or(gap);
        return Criterion::lacking(Question::DaysInContainer, None, gap, false, HOLDING_SOURCE)
            .resting_on(told.map(|(.., entry)| entry.clone()));
    };
    let days = day.days_since(holding.since);
    let needed = Holds::Days(holding.limit_days);
    let within = days <= holding.limit_days;
    let far_over = f64::from(days) > f64::from(holding.limit_days) * PLUG_ALONE_TIMES;
    let sample_lasts = sampled.is_some_and(|on| day.days_since(on) <= SAMPLE_LASTS_DAYS);
    let seen_to_hold =
        plug.filter(|(checked, roots, _)| *roots == Roots::Holds && day.days_since(*checked) <= PLUG_SAYS_FOR_DAYS);
    let too_old = f64::from(days) > f64::from(holding.limit_days) * OLD_BAG_TIMES;
    let holds = seen_to_hold.filter(|_| !too_old && (!far_over || sample_lasts));
    let basis = match holds {
        Some(_) if !within => Basis::Measured,
        _ if holding.volume_known => Basis::Reckoned,
        _ => Basis::Assumed,
    };
    let met = within || holds.is_some();
    let known = match (seedbed, seen_to_hold.is_some() && holds.is_none()) {
        _ if !met && tells_from.is_some() => InContainer::CutLately { days, tells_from: tells_from.unwrap_or(day) },
        (true, _) => InContainer::Seedbed(days),
        (false, true) if too_old => InContainer::TooOld(days),
        (false, true) => InContainer::FarBeyond(days),
        (false, false) => InContainer::Days(days),
    };
    let mut criterion = Criterion::found(Question::DaysInContainer, needed, known, basis, met, HOLDING_SOURCE)
        .resting_on(holding.entries.iter().cloned());
    if let (Some((_, _, entry)), false) = (holds, within) {
        criterion.entries.push(entry.clone());
        criterion.warns = true;
    }
    criterion
}

/// Days after plants were moved on, and after roots were cut, in which nobody can take for granted that the roots hold the soil.
/// Ours: a ball that falls apart is planted without its fine roots; a plug that was seen to hold says it earlier.
pub(crate) const POTTED_ON_REST_DAYS: i32 = 28;

/// Wildlings stand so many days in their bags before they are brought out: three to four months in deep shade, common practice; the low
/// end holds back.
pub(crate) const WILDLING_DAYS: i32 = 90;

/// Roots that were cut, or came into new soil, a short while ago.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct RootsRest {
    since: Day,
    until: Day,
    why: RestsFrom,
}

/// Whether roots are still taking hold on a day, after they were cut or moved on, whichever was last; none where that is over,
/// or never was.
pub(crate) fn roots_rest(story: &TrayStory, profile: Option<&Profile>, day: Day) -> Option<RootsRest> {
    let rest = |since: Day, why: RestsFrom| {
        let wild = matches!(why, RestsFrom::TheWild | RestsFrom::TheWildAmong);
        let days = if wild { WILDLING_DAYS } else { POTTED_ON_REST_DAYS };
        RootsRest { since, until: since.plus(days), why }
    };
    // Bare roots that lay too long rest until a plug is seen to hold that could have grown since, and that leads.
    let late = bagged_too_late(story, profile).map(|since| rest(since, RestsFrom::KeptTooLong));
    let seen_since = |until: Day| story.plugs.iter().any(|plug| plug.what == Roots::Holds && plug.from >= until);
    if let Some(late) = late.filter(|late| late.since <= day && !seen_since(late.until)) {
        return Some(late);
    }
    let moved = story.moves_in.last().map(|moved| rest(moved.from, RestsFrom::Move));
    let cut = story.roots_cut.last().map(|cut| cut.from).max(story.cut_before).map(|cut| rest(cut, RestsFrom::Cut));
    let wild = story.latest_of_enough(&story.wildlings, |plants| *plants).map(|(wild, _)| wild.from);
    let among = story.has_others_than_wildlings();
    let among_others = if among { RestsFrom::TheWildAmong } else { RestsFrom::TheWild };
    let wild = wild.map(|bagged| rest(bagged, among_others));
    if let Some(wild) = wild.filter(|wild| among && wild.since <= day && day < wild.until) {
        return Some(wild);
    }
    let all = [moved, cut, wild].into_iter().flatten().filter(|rest| rest.since <= day && day < rest.until);
    all.max_by_key(|rest| (rest.until, rest.why))
}

/// Until when plants stay in the shade because their roots were cut or torn, where no plug was seen to hold since.
pub(crate) fn in_shade_until(story: &TrayStory, profile: Option<&Profile>, day: Day) -> Option<Day> {
    rests_in_shade(&plug_criterion(last_plug(story).as_ref(), roots_rest(story, profile, day), false))
}

/// The same by the criterion `plug`.
pub(crate) fn rests_in_shade(plug: &Criterion) -> Option<Day> {
    match plug.gap() {
        Some(Gap::RootsRest { why, until, .. }) if *why != RestsFrom::Move => Some(*until),
        _ => None,
    }
}

/// The criterion `plug`. While roots rest a plug must have been seen since they were cut or potted on.
/// Too young to go, nobody lifts one.
pub(crate) fn plug_criterion(
    plug: Option<&(Day, Roots, EntryId)>,
    rest: Option<RootsRest>,
    is_young: bool,
) -> Criterion {
    // Of bare roots that lay too long no plug has told yet, and one of many does not tell of the wildlings among them.
    let wild = rest.is_some_and(|rest| matches!(rest.why, RestsFrom::TheWild | RestsFrom::TheWildAmong));
    let source = if wild { RuleSource::Wildlings } else { RuleSource::Plug };
    let told_by = |rest: RootsRest| !matches!(rest.why, RestsFrom::KeptTooLong | RestsFrom::TheWildAmong);
    let since = |on: Day| rest.is_none_or(|rest| on >= rest.since && told_by(rest));
    let Some((checked, roots, entry)) = plug.filter(|(on, roots, _)| *roots != Roots::Holds || since(*on)) else {
        let gap = rest.map(|RootsRest { since, until, why }| Gap::RootsRest { since, until, why });
        return Criterion::lacking(Question::Plug, Some(Roots::Holds), gap, rest.is_some(), source)
            .expected_on(rest.map(|rest| rest.until))
            .caring_where_unknown(rest.is_none() && !is_young);
    };
    let holds = *roots == Roots::Holds;
    Criterion::found(Question::Plug, Roots::Holds, *roots, Basis::Measured, holds, source)
        .expected_on(holds.then_some(*checked))
        .resting_on([entry.clone()])
}

/// The criterion `plug` where plugs differ, and where few wildlings stand among the plants: those hold back none of the others, and are
/// left behind.
pub(crate) fn of_several(plug: Criterion, story: &TrayStory, day: Day) -> Criterion {
    // The one that fell apart is said beside the one that held.
    let last_holds = story.plugs_that_tell().last().is_some_and(|last| last.what == Roots::Holds);
    if last_holds && plug.met() == Some(false) && plug.blocks {
        return Criterion { warns: true, ..plug };
    }
    let fresh = |wild: &&Since<u32>| (0..WILDLING_DAYS).contains(&day.days_since(wild.from));
    let few = plug.met() == Some(true) && story.wildlings.iter().any(|wild| fresh(&wild));
    if few { Criterion { warns: true, ..plug } } else { plug }
}

/// The last day in the container, or of bare roots, and its spread.
pub(crate) fn best_before(
    holding: Option<&Holding>,
    plug: Option<&(Day, Roots, EntryId)>,
    good_until: Option<Day>,
) -> (Option<Day>, Option<DaySpread>) {
    if let Some(until) = good_until {
        return (Some(until), None);
    }
    if let Some((checked, Roots::Circling, _)) = plug {
        return (Some(*checked), None);
    }
    let Some(holding) = holding else { return (None, None) };
    let clock = holding.since.plus(holding.limit_days);
    let held_to = plug.filter(|(_, roots, _)| *roots == Roots::Holds).map(|(on, ..)| on.plus(PLUG_SAYS_FOR_DAYS));
    let likely = held_to.map_or(clock, |held| held.max(clock));
    let around = (f64::from(holding.limit_days) * HOLDING_SPREAD).round() as i32;
    (Some(likely), Some(DaySpread { low: likely.plus(-around), likely, high: likely.plus(around) }))
}
