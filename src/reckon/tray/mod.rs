//! A tray's readiness: every question of its verdict, its stage, and from when until when it can go out.

pub mod age_of_count;
pub(crate) mod closed;
pub mod exposure;
pub(crate) mod grafted;
pub mod hardening;
mod harmed;
pub mod hold;
pub mod light;
pub(crate) mod pest;
pub mod size;
pub mod time;

use std::sync::Arc;

use crate::base::{Day, LotCode, Range};
use crate::nursery::entry::types::MovedHow;
use crate::nursery::species::Profile;
use crate::reckon::picture::quantity::PlantsAtLeast;
use crate::reckon::picture::{
    Basis, Criterion, DaySpread, Gap, Question, Rule, RuleSource, Source, Stage, TrayPicture, hands_from,
};
use crate::reckon::site::Site;
use crate::reckon::stock::{Hold, Origin, Places, Since, TrayStory};
use age_of_count::WeeklyLoss;
use hardening::HardeningClock;
use light::Stretch;

/// Days a tray counts as "pricked out" before it grows on, and stands in the shade (CATIE seed bank pages: 50 % shade for 2-3 weeks; 2-4
/// weeks: FAO ae939e, chapter 2, from memory).
const PRICKED_OUT_DAYS: i32 = 21;

/// What a tray is judged with.
pub(crate) struct Around<'a> {
    /// The site.
    pub site: &'a Site,
    /// Every place.
    pub places: &'a Places,
    /// The places that a waiting time closes.
    pub closed: &'a closed::Closed,
    /// The places with a sickness.
    pub sick: &'a pest::beside::SickPlaces,
    /// What trays have in common by plants that were moved on.
    pub kin: &'a pest::kin::Kin,
    /// Held lots among the tray's own.
    pub lots_held: Vec<Since<Hold>>,
    /// The nursery's weekly loss.
    pub weekly_loss: WeeklyLoss,
    /// The day looked at.
    pub day: Day,
}

/// The light a tray stood in and its clock of hardening, for its pairs with beds.
#[derive(Debug)]
pub(crate) struct Stood {
    profile: Option<Arc<Profile>>,
    history: Vec<Stretch>,
    clock: HardeningClock,
    day: Day,
    /// The light of its last days.
    pub last_light: Option<light::LastLight>,
}

impl Stood {
    pub(crate) fn of(story: &TrayStory, site: &Site, places: &Places, day: Day) -> Stood {
        let history = light::light_history(story, places, day);
        let profile = story.species.as_ref().and_then(|key| site.profile(key)).cloned();
        let clock = hardening::clock(story, &history, hardening::length_days(profile.as_deref()), day);
        let rests_until = time::in_shade_until(story, profile.as_deref(), day);
        let last_light = light::last_light_of(story, &history, rests_until, day);
        Stood { profile, clock, last_light, history, day }
    }

    /// The first of the coming days on which the mean light of the last days lets the plants take a step to a light, where the light
    /// they stand in today goes on.
    pub(crate) fn step_fits_on(&self, to: f64) -> Option<Day> {
        light::comes_on(&self.history, self.day, |last| to <= exposure::brightest_from(last.share) + 1e-9)
    }

    /// What its hardening is judged with.
    pub(crate) fn asked<'a>(&'a self, story: &'a TrayStory) -> hardening::Asked<'a> {
        let &Stood { ref profile, ref history, ref clock, day, .. } = self;
        let old_enough_on = time::old_enough_on(&time::age(story, day), profile.as_deref());
        let rests_until = no_step_until(story, profile.as_deref(), day);
        hardening::Asked { story, profile: profile.as_deref(), clock, history, old_enough_on, rests_until, day }
    }
}

/// Until when plants take no step of light or water: while cut or torn roots rest, and until a graft has knit.
pub(crate) fn no_step_until(story: &TrayStory, profile: Option<&Profile>, day: Day) -> Option<Day> {
    time::in_shade_until(story, profile, day).max(grafted::knits_on(story, day)).max(pricked_out_until(story, day))
}

/// Until when seedlings stand in the shade after they were pricked out, whatever their age; none of others.
pub(crate) fn pricked_out_until(story: &TrayStory, day: Day) -> Option<Day> {
    let pricked_out = story.moved_how == Some(MovedHow::PrickedOut);
    let until = story.made_on.filter(|_| pricked_out)?.plus(PRICKED_OUT_DAYS);
    (day < until).then_some(until)
}

/// A tray on a day.
pub(crate) fn picture_tray(story: &Arc<TrayStory>, around: &Around<'_>) -> TrayPicture {
    let day = around.day;
    let profile = story.species.as_ref().and_then(|key| around.site.profile(key)).map(Arc::as_ref);
    let age = time::age(story, day);
    let history = light::light_history(story, around.places, day);
    let clock = hardening::clock(story, &history, hardening::length_days(profile), day);
    let rests_until = time::in_shade_until(story, profile, day);
    let last_light = light::last_light_of(story, &history, rests_until, day);
    let holding = time::holding(story, profile, around.site, &age, day);
    let plug = time::last_plug(story);
    let standing_range = age_of_count::standing_range(story, around.weekly_loss, day);
    let share = size::plantable_share(story, profile, age.youngest_days, day);
    let judged =
        Judged { story, profile, age: &age, clock: &clock, history: &history, last_light: last_light.as_ref() };
    let mut criteria = judged.criteria(around, holding.as_ref(), plug.as_ref(), standing_range);
    let plantable = standing_range.times(share.share).times(Range::exact(share_without_pest(story, &criteria, around)));
    criteria.push(load_criterion(story, plantable, share.basis));
    // There are very many trays in some books, and nothing is added to these.
    criteria.shrink_to_fit();
    let ready = criteria.iter().all(|criterion| !criterion.blocks);
    let good_until = hold::last_day(story, profile).map(|(until, ..)| until);
    let (best_before, best_before_spread) = time::best_before(holding.as_ref(), plug.as_ref(), good_until);
    let ready_from = ready_from(&criteria, ready, day);
    TrayPicture {
        code: story.code.clone(),
        species: story.species.clone(),
        lots: lots_of(story),
        stage: judged.stage(&criteria, ready, day),
        standing: story.accounts.standing_count(),
        standing_range,
        seed: u32::try_from(story.accounts.seed).unwrap_or(u32::MAX),
        counted_on: story.counted_on(),
        plantable,
        plantable_basis: share.basis,
        place: story.place().cloned(),
        sown_on: age.oldest_on,
        age_days: age.youngest_days,
        light_changed: last_light.as_ref().and_then(|light| light.changed).map(|changed| (changed.to, changed.since)),
        light_share: last_light.map(|light| light.share),
        ready,
        ready_from,
        // What is ready today has no coming day to be ready from.
        ready_spread: ready_from.filter(|_| !ready).and_then(|from| ready_spread(from, &age, profile, share.basis)),
        best_before,
        best_before_spread,
        criteria,
        story: story.clone(),
    }
}

/// The share of the plants that is left where those on which a pest was seen stay behind.
fn share_without_pest(story: &TrayStory, criteria: &[Criterion], around: &Around<'_>) -> f64 {
    let on_few = criteria.iter().any(|criterion| criterion.rule() == Rule::Pest && criterion.warns);
    let standing = story.accounts.standing;
    if !on_few || standing == 0 {
        return 1.0;
    }
    let behind = pest::left_behind(story, around.places, around.kin, around.day) as f64 / standing as f64;
    1.0 - behind.max(harmed::eaten_share(story, around.day))
}

fn lots_of(story: &TrayStory) -> Vec<LotCode> {
    let mut lots: Vec<LotCode> = story.sowings.iter().filter_map(|sowing| sowing.lot.clone()).collect();
    lots.dedup();
    lots
}

fn load_criterion(story: &TrayStory, plantable: Range, basis: Basis) -> Criterion {
    let standing = story.accounts.standing_count();
    let met = size::is_load(plantable.likely, standing);
    let needed = PlantsAtLeast(size::load(standing));
    let entries = size::last_sample(story).map(|sample| sample.entry.clone());
    let counted = story.last_whole_count().map(|look| look.entry.clone());
    Criterion::found(Question::Load, needed, plantable, basis, met, RuleSource::Load)
        .resting_on(entries.into_iter().chain(counted))
}

/// The last of the days on which each question is first met; none where a question that blocks has no such day.
fn ready_from(criteria: &[Criterion], ready: bool, day: Day) -> Option<Day> {
    // A load follows from the others: it grows with the days and the sample.
    let asked = criteria.iter().filter(|criterion| criterion.rule() != Rule::Load);
    let load_waits = criteria.iter().any(|criterion| criterion.rule() == Rule::Load && criterion.blocks);
    let mut latest: Option<Day> = None;
    let mut waits = false;
    for criterion in asked {
        match (criterion.blocks, criterion.expected) {
            (true, None) => return None,
            (true, Some(expected)) => {
                waits = true;
                latest = latest.max(Some(expected.max(day.plus(1))));
            }
            (false, expected) if criterion.met() == Some(true) => latest = latest.max(expected.filter(|on| *on <= day)),
            (false, _) => {}
        }
    }
    if !ready && load_waits && !waits {
        return None;
    }
    latest
}

fn ready_spread(from: Day, age: &time::Age, profile: Option<&Profile>, basis: Basis) -> Option<DaySpread> {
    if basis == Basis::Measured {
        return None;
    }
    let span = time::day_span(profile)?;
    let (usual, most) = (span.usual?, span.most?);
    let sown = age.youngest_on?;
    let likely = from.max(sown.plus(usual));
    Some(DaySpread { low: from, likely, high: likely.max(sown.plus(most)) })
}

struct Judged<'a> {
    story: &'a TrayStory,
    profile: Option<&'a Profile>,
    age: &'a time::Age,
    clock: &'a HardeningClock,
    history: &'a [Stretch],
    last_light: Option<&'a light::LastLight>,
}

impl Judged<'_> {
    fn criteria(
        &self,
        around: &Around<'_>,
        holding: Option<&time::Holding>,
        plug: Option<&(Day, crate::nursery::entry::types::Roots, crate::base::EntryId)>,
        standing: Range,
    ) -> Vec<Criterion> {
        let day = around.day;
        let bare = self.story.is_bare();
        let measured = size::sample_that_lasts(self.story, day).is_some();
        // What a person or a treatment holds back is said first.
        let treated = hold::treated(self.story, around.places, around.closed, day);
        // Nobody looks for pests among what was sprayed while its waiting time runs.
        let pest = pest::criterion(self.story, self.profile, (around.places, around.sick, around.kin), day);
        let pest = harmed::criterion(self.story, around.site, day).filter(|_| pest.met() == Some(true)).unwrap_or(pest);
        let pest = pest.expected_on(treated.expected);
        let held = hold::held(self.story, around.places, &around.lots_held, day);
        let mut all = vec![self.living(standing), held, treated, pest];
        all.extend(hold::plant_back(self.story, around.places, day));
        if bare {
            all.extend(hold::good_until(self.story, self.profile, day));
            all.extend(hold::bare_roots(self.story, self.profile));
            // Leaves from the shade burn as well on bare roots; a stump has none.
            let shade_written = matches!(&self.story.origin, Some(Origin::Received { light_share: Some(_), .. }));
            let leafy = !hold::is_stake(self.story, self.profile);
            if leafy && shade_written && !exposure::stands_any_light(self.profile) {
                all.push(exposure::toward_band(self.last_light, self.story.species.as_ref(), self.profile));
            }
        } else {
            all.push(time::days_since_sowing(self.age, self.profile, measured));
            let seedbed = time::in_seedbed(self.story, self.profile, around.site, day);
            let sampled = self.story.samples.last().map(|sample| sample.day);
            let tells_from = time::plug_tells_from(self.story, day);
            let gap = self.no_most_days();
            all.push(time::days_in_container(holding, plug, gap, (seedbed, tells_from), (sampled, day)));
        }
        all.extend(size::criteria(self.story, self.profile, self.age.youngest_days, !bare, day));
        all.extend(grafted::criterion(self.story, self.profile, day));
        if !bare {
            let is_young = time::old_enough_on(self.age, self.profile).is_some_and(|on| day < on);
            let plug = time::plug_criterion(plug, time::roots_rest(self.story, self.profile, day), is_young);
            all.push(time::of_several(plug, self.story, day));
            all.push(hold::flush(self.story, day));
            all.push(hardening::criterion(&self.hardening(day), self.nearest_light()));
            // What goes out soft and stands any light is asked for no light.
            if !exposure::stands_any_light(self.profile) {
                all.push(exposure::toward_band(self.last_light, self.story.species.as_ref(), self.profile));
            }
        }
        let from = hands_from(&all);
        all.into_iter().map(|criterion| criterion.after_wait(from)).collect()
    }

    /// What hardening is judged with.
    fn hardening(&self, day: Day) -> hardening::Asked<'_> {
        let &Judged { story, profile, clock, history, .. } = self;
        let old_enough_on = time::old_enough_on(self.age, profile);
        let rests_until = no_step_until(story, profile, day);
        hardening::Asked { story, profile, clock, history, old_enough_on, rests_until, day }
    }

    /// The light of the species' band that is nearest to the light the tray stands in.
    fn nearest_light(&self) -> Option<f64> {
        let light = self.history.last().and_then(|stretch| stretch.light)?;
        let (least, most) = exposure::light_band(self.profile)?;
        Some(light.clamp(least, most))
    }

    /// The gap of a species whose profile does not say how long its container holds it.
    fn no_most_days(&self) -> Option<Gap> {
        let species = self.story.species.as_ref()?;
        let named = self.profile.is_some_and(|profile| profile.plantable_most_days.is_some());
        (!named).then(|| Gap::NoMostDays(species.clone()))
    }

    /// Whether seed was put in and nobody has counted anything yet: nothing is known to stand, and nothing to be gone.
    fn is_uncounted(&self) -> bool {
        let accounts = &self.story.accounts;
        let untouched = accounts.standing + accounts.lost_in_all() + accounts.culled_in_all() + accounts.moved_out == 0;
        untouched && self.story.counts.is_empty() && matches!(self.story.origin, Some(Origin::Sown))
    }

    fn living(&self, range: Range) -> Criterion {
        let needed = PlantsAtLeast(1);
        let made = self.story.containers.first().map(|spell| spell.entry.clone());
        if self.is_uncounted() {
            return Criterion::unknown(Question::Living, Some(needed), false, Source::default()).resting_on(made);
        }
        let standing = self.story.accounts.standing;
        let entries = self.story.last_whole_count().map(|look| look.entry.clone()).or(made);
        Criterion::found(Question::Living, needed, range, Basis::Counted, standing > 0, Source::default())
            .resting_on(entries)
    }

    fn stage(&self, criteria: &[Criterion], ready: bool, day: Day) -> Stage {
        let story = self.story;
        let due = story.seed_is_due(day);
        if story.accounts.standing == 0 {
            return if due || self.is_uncounted() { Stage::Sown } else { Stage::Spent };
        }
        let unmet = |rule: Rule| criteria.iter().any(|c| c.rule() == rule && c.met() == Some(false));
        if ready {
            return Stage::Ready;
        }
        if unmet(Rule::DaysInContainer) || unmet(Rule::GoodUntil) {
            return Stage::Overdue;
        }
        if due {
            return Stage::Emerging;
        }
        if self.clock.started.is_some_and(|started| self.is_late_enough(started)) {
            return Stage::Hardening;
        }
        let pricked_out = story.moved_how == Some(MovedHow::PrickedOut);
        if pricked_out && story.made_on.is_some_and(|made| day.days_since(made) <= PRICKED_OUT_DAYS) {
            return Stage::PrickedOut;
        }
        Stage::GrowingOn
    }

    /// Steps early in a tray's life belong to raising, not to hardening: a tray is called hardening when its clock
    /// started within twice the length of hardening before the species' least days (ours), or somebody said so.
    fn is_late_enough(&self, started: Day) -> bool {
        let (Some(sown), Some(span)) = (self.age.youngest_on, time::day_span(self.profile)) else { return true };
        self.clock.said || started >= sown.plus(span.least - 2 * hardening::length_days(self.profile))
    }
}
