//! Everything that is expected on a day: of each tray, of each species, and what was learned of it here.

use std::collections::BTreeMap;

use super::experience::{Experience, by_handbook, experiences};
use super::sow_again::{SowAgain, reach};
use super::stock::{Pipeline, TrayStock, pipelines, stock};
use super::{ForecastBasis, Remembered, TrayForecast, forecasts_of};
use crate::base::{SpeciesKey, TrayCode};
use crate::reckon::picture::{Picture, Stage, TrayPicture};
use crate::reckon::round::is_asked_about;

/// What is expected.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Outlook {
    /// What leads.
    pub forecast_basis: ForecastBasis,
    /// Of each sowing.
    pub trays: BTreeMap<TrayCode, TrayForecast>,
    /// What sowing again would reach, for each sowing whose species has days to planting out.
    pub again: BTreeMap<TrayCode, SowAgain>,
    /// What is known of each species with a tray here.
    pub experience: BTreeMap<SpeciesKey, Experience>,
    /// What each living tray will come to.
    pub stock: BTreeMap<TrayCode, TrayStock>,
    /// What is coming of each species.
    pub pipelines: Vec<Pipeline>,
}

/// What is expected on a Picture's day.
pub fn outlook(picture: &Picture, forecast_basis: ForecastBasis) -> Outlook {
    let mut outlook = outlook_of_sowings(picture, forecast_basis, |_| true);
    outlook.stock = stock(picture, &outlook.trays, &outlook.experience);
    outlook.pipelines = pipelines(&outlook.stock);
    outlook
}

/// What is expected of one tray.
pub(crate) fn outlook_of_tray(picture: &Picture, forecast_basis: ForecastBasis, tray: &TrayCode) -> Outlook {
    let mut outlook = outlook_of_sowings(picture, forecast_basis, |other| other.code == *tray);
    outlook.stock = stock(picture, &outlook.trays, &outlook.experience);
    outlook.stock.retain(|code, _| code == tray);
    outlook
}

/// What is expected of everything that still lives or is still asked about: what is spent is left out, so that it does not grow
/// with the years.
pub fn outlook_of_living(picture: &Picture, forecast_basis: ForecastBasis) -> Outlook {
    outlook_of_living_remembering(picture, forecast_basis, &mut Remembered::default())
}

/// The same with what is remembered of earlier Pictures.
pub fn outlook_of_living_remembering(
    picture: &Picture,
    forecast_basis: ForecastBasis,
    remembered: &mut Remembered,
) -> Outlook {
    let trays = remembered.forecasts(picture, forecast_basis, |tray| {
        tray.stage != Stage::Spent || is_asked_about(&tray.story, picture.day)
    });
    let mut outlook = outlook_on(picture, forecast_basis, trays);
    outlook.stock = stock(picture, &outlook.trays, &outlook.experience);
    outlook.pipelines = pipelines(&outlook.stock);
    outlook
}

/// The same of the wanted sowings alone, without stock.
pub(crate) fn outlook_of_sowings(
    picture: &Picture,
    forecast_basis: ForecastBasis,
    wanted: impl Fn(&TrayPicture) -> bool,
) -> Outlook {
    outlook_on(picture, forecast_basis, forecasts_of(picture, forecast_basis, wanted))
}

fn outlook_on(picture: &Picture, forecast_basis: ForecastBasis, trays: BTreeMap<TrayCode, TrayForecast>) -> Outlook {
    let experience = experiences(picture, forecast_basis);
    let again = trays.iter().filter_map(|(code, told)| {
        let species = picture.trays.get(code)?.species.as_ref()?;
        let usual_days = experience.get(species)?.days_to_plantable.used?.round() as i32;
        let reach = reach(&picture.site, told.sown_on, usual_days, picture.day);
        let missing = (told.expected - told.in_the_end.likely).max(0.0);
        Some((code.clone(), SowAgain { usual_days, reach, missing }))
    });
    let again = again.collect();
    Outlook { forecast_basis, trays, again, experience, stock: BTreeMap::new(), pipelines: Vec::new() }
}

impl Outlook {
    /// What is known of a species; by the handbook where it has no tray here.
    pub(crate) fn experience_of(&self, species: &SpeciesKey, picture: &Picture) -> Experience {
        let known = self.experience.get(species).cloned();
        known.unwrap_or_else(|| by_handbook(picture.site.profile(species).map(|profile| &**profile)))
    }
}
