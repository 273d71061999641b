//! What was reckoned for an earlier Picture and still holds: the curve of a sowing nobody looked at since, the forecast of a
//! tray of which nothing it rests on has changed.

use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::sync::Arc;

use super::learned::{EarlierSowing, earlier_sowing};
use super::{ForecastBasis, SpeciesDays, TrayForecast, forecast_tray, species_days};
use crate::base::cores::on_every_core;
use crate::base::{Day, LotCode, SpeciesKey, TrayCode};
use crate::nursery::species::Profile;
use crate::reckon::picture::{Picture, TrayPicture};
use crate::reckon::stock::{LotStory, TrayStory};

/// Remembers what was reckoned, so that a Picture in which little changed is reckoned quickly. The answers are the same
/// with an empty memory.
#[derive(Default)]
pub struct Remembered {
    sowings: HashMap<TrayCode, SowingKnown>,
    learned: BTreeMap<SpeciesKey, Arc<Vec<EarlierSowing>>>,
    forecasts: HashMap<TrayCode, ForecastKnown>,
}

/// The curve of a sowing, and what it was reckoned from.
struct SowingKnown {
    story: Arc<TrayStory>,
    days: SpeciesDays,
    sowing: Option<EarlierSowing>,
}

/// The forecast of a tray, and what it was reckoned from.
struct ForecastKnown {
    from: ReckonedFrom,
    forecast: Option<TrayForecast>,
}

/// What a forecast rests on.
struct ReckonedFrom {
    story: Arc<TrayStory>,
    profile: Arc<Profile>,
    day: Day,
    /// Every sowing of the species that is learned from, its own among them.
    learned: Arc<Vec<EarlierSowing>>,
    lots: Vec<Option<Arc<LotStory>>>,
}

impl ReckonedFrom {
    fn is(&self, other: &ReckonedFrom) -> bool {
        let same_lot = |(own, its): (&Option<Arc<LotStory>>, &Option<Arc<LotStory>>)| match (own, its) {
            (Some(own), Some(its)) => Arc::ptr_eq(own, its),
            (None, None) => true,
            (Some(_), None) | (None, Some(_)) => false,
        };
        Arc::ptr_eq(&self.story, &other.story)
            && Arc::ptr_eq(&self.profile, &other.profile)
            && self.day == other.day
            && Arc::ptr_eq(&self.learned, &other.learned)
            && self.lots.len() == other.lots.len()
            && self.lots.iter().zip(&other.lots).all(same_lot)
    }

    fn forecast(&self, code: &TrayCode) -> Option<TrayForecast> {
        let earlier: Vec<EarlierSowing> = self.learned.iter().filter(|sowing| sowing.tray != *code).cloned().collect();
        let lots = || self.story.sowings.iter().filter_map(|sowing| sowing.lot.as_ref()).zip(&self.lots);
        let lot_of = |lot: &LotCode| lots().find(|(code, _)| *code == lot).and_then(|(_, story)| story.as_deref());
        forecast_tray(&self.story, &self.profile, &earlier, lot_of, self.day).ok()
    }
}

impl Remembered {
    /// The forecasts of the trays that are wanted.
    pub(super) fn forecasts(
        &mut self,
        picture: &Picture,
        forecast_basis: ForecastBasis,
        wanted: impl Fn(&TrayPicture) -> bool,
    ) -> BTreeMap<TrayCode, TrayForecast> {
        let wanted: Vec<&Arc<TrayPicture>> = picture.trays.values().filter(|tray| wanted(tray)).collect();
        let species: BTreeSet<&SpeciesKey> = wanted.iter().filter_map(|tray| tray.species.as_ref()).collect();
        let stories = picture.stories().filter(|story| {
            forecast_basis == ForecastBasis::OwnRecords && story.species.iter().any(|key| species.contains(key))
        });
        self.learn(stories.collect(), picture);
        let none = Arc::default();
        let rests_on = wanted.into_iter().filter_map(|tray| {
            let key = tray.species.as_ref()?;
            let lots = tray.story.sowings.iter().filter_map(|sowing| sowing.lot.as_ref());
            let from = ReckonedFrom {
                story: tray.story.clone(),
                profile: picture.site.profile(key)?.clone(),
                day: picture.day,
                learned: self.learned.get(key).unwrap_or(&none).clone(),
                lots: lots.map(|lot| picture.lots.get(lot).cloned()).collect(),
            };
            Some((tray.code.clone(), from))
        });
        let (mut known, mut anew) = (HashMap::new(), Vec::new());
        for (code, from) in rests_on.collect::<Vec<_>>() {
            match self.forecasts.remove(&code).filter(|known| known.from.is(&from)) {
                Some(same) => drop(known.insert(code, same)),
                None => anew.push((code, from)),
            }
        }
        let reckoned = on_every_core(&anew, |(code, from)| from.forecast(code));
        let reckoned = anew.into_iter().zip(reckoned);
        known.extend(reckoned.map(|((code, from), forecast)| (code, ForecastKnown { from, forecast })));
        self.forecasts = known;
        let told = self.forecasts.iter();
        told.filter_map(|(code, known)| Some((code.clone(), known.forecast.clone()?))).collect()
    }

    /// What the stories say of their species.
    fn learn(&mut self, stories: Vec<&Arc<TrayStory>>, picture: &Picture) {
        let days_of = |story: &TrayStory| species_days(picture.site.profile(story.species.as_ref()?)?);
        let told = stories.into_iter().filter_map(|story| Some((story, days_of(story)?)));
        let (mut known, mut anew, mut order) = (HashMap::new(), Vec::new(), Vec::new());
        for (story, days) in told {
            order.push(story);
            let same = |known: &SowingKnown| Arc::ptr_eq(&known.story, story) && known.days == days;
            match self.sowings.remove(&story.code).filter(same) {
                Some(same) => drop(known.insert(story.code.clone(), same)),
                None => anew.push((story, days)),
            }
        }
        let fitted = on_every_core(&anew, |(story, days)| earlier_sowing(story, *days));
        for ((story, days), sowing) in anew.into_iter().zip(fitted) {
            known.insert(story.code.clone(), SowingKnown { story: story.clone(), days, sowing });
        }
        let mut learned: BTreeMap<SpeciesKey, Vec<EarlierSowing>> = BTreeMap::new();
        for story in order {
            let sowing = known.get(&story.code).and_then(|known| known.sowing.clone());
            if let (Some(key), Some(sowing)) = (&story.species, sowing) {
                learned.entry(key.clone()).or_default().push(sowing);
            }
        }
        self.sowings = known;
        // The same list stays the same, so that what rests on it is known to hold.
        let before = std::mem::take(&mut self.learned);
        let shared = learned.into_iter().map(|(key, list)| {
            let same = before.get(&key).filter(|before| ***before == list).cloned();
            (key, same.unwrap_or_else(|| Arc::new(list)))
        });
        self.learned = shared.collect();
    }
}
