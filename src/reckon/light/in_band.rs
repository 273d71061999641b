//! What becomes of the light for a species: how many positions suit it now and through the first half year, and in which month
//! the bed leaves its band, or comes into it, and by what.

use super::coming::shade_ends;
use super::months::{LightMonth, light_months};
use crate::base::{Day, SpeciesKey};
use crate::reckon::picture::quantity::ShadeEnd;
use crate::reckon::site::Site;
use crate::reckon::stock::BedStory;
use crate::reckon::tray::exposure::light_band;

/// Months of a young tree's first half year, the month that runs among them. Ours.
pub(crate) const HALF_YEAR_MONTHS: usize = 6;
/// Lets the ends of the band themselves be inside although 1 - 0.3 is not exact in a computer.
const FUZZ: f64 = 1e-9;

/// Where the light of a bed goes.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum TurnTo {
    /// Above the band.
    Bright,
    /// Below it.
    Dark,
    /// Into it.
    Inside,
}

/// The first month whose light is on another side of the band than now.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct Turn {
    /// The day that stands for the month.
    pub on: Day,
    /// Where it goes.
    pub to: TurnTo,
    /// Whether it grows brighter.
    pub brighter: bool,
    /// The end of shade that makes it so, where one falls since the month before.
    pub by: Option<ShadeEnd>,
}

/// The positions of a bed that suit a species.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct InBand {
    /// The share of them now.
    pub now: f64,
    /// Its mean over the first six months, or as many of them as can be reckoned.
    pub half_year: f64,
    /// When the light of the bed turns; none where it stays as it is as far as it can be reckoned.
    pub turn: Option<Turn>,
}

/// The same for so many months of a bed; none where no nurse plant was written, the light cannot be reckoned, or the species
/// stands any light.
pub(crate) fn in_band(
    story: &BedStory,
    site: &Site,
    species: &SpeciesKey,
    (day, months): (Day, usize),
) -> Option<InBand> {
    let band = light_band(site.profile(species).map(|profile| &**profile)).filter(|band| *band != (0.0, 1.0))?;
    let mut months = light_months(story, site, species, (day, months))?;
    // A bound from above tells neither how many positions suit nor when the bed turns.
    let known = months.iter().take_while(|month| month.left_out.is_none()).count();
    months.truncate(known);
    of_months(&months, band, &shade_ends(story, site, day))
}

fn of_months(months: &[LightMonth], band: (f64, f64), ends: &[ShadeEnd]) -> Option<InBand> {
    let inside: Vec<f64> = months.iter().take(HALF_YEAR_MONTHS).filter_map(|month| month.inside).collect();
    let now = *inside.first()?;
    let half_year = inside.iter().sum::<f64>() / inside.len() as f64;
    let first = months.first().map(|month| side(month, band))?;
    let turn = months.windows(2).find(|pair| side(&pair[1], band) != first).map(|pair| {
        let (before, after) = (&pair[0], &pair[1]);
        let brighter = after.light.share > before.light.share;
        let since = |end: &&ShadeEnd| end.about > before.on && end.about <= after.on;
        // Of several ends in one month the one that takes most of the shade.
        let most = ends.iter().filter(since).max_by(|one, two| one.share.total_cmp(&two.share));
        Turn { on: after.on, to: side(after, band), brighter, by: most.filter(|_| brighter).cloned() }
    });
    Some(InBand { now, half_year, turn })
}

fn side(month: &LightMonth, (least, most): (f64, f64)) -> TurnTo {
    match month.light.share {
        share if share > most + FUZZ => TurnTo::Bright,
        share if share < least - FUZZ => TurnTo::Dark,
        _ => TurnTo::Inside,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reckon::light::months::MONTHS_AHEAD;
    use crate::reckon::test_book::{TestBook, day};
    use serde_json::json;

    const ON: &str = "2026-04-10";

    fn of(page: &TestBook) -> Option<InBand> {
        let (story, site) = page.story(ON);
        in_band(&story, &site, &SpeciesKey::new("COA"), (day(ON), MONTHS_AHEAD))
    }

    fn bananas(planted: &str, apart_m: f64, count: u32) -> TestBook {
        let mut page = TestBook::upper_terrace(30.0, 12.0);
        page.nurses(planted, "banana", count, apart_m);
        page
    }

    #[test]
    fn bunches_that_show_turn_a_bed_too_bright_and_are_named() {
        let mut page = bananas("2025-06-01", 3.0, 40);
        let showing = json!({"bed":"Upper terrace","nurse":"banana","alive":40,"bunches_showing":40});
        page.write("2026-04-01", "nurse_counted", showing);
        let told = of(&page).unwrap();
        // Inside 50 to 70 % in April; all stems are cut about 25 June.
        let turn = told.turn.unwrap();
        assert_eq!((turn.to, turn.on, turn.brighter), (TurnTo::Bright, day("2026-07-15"), true));
        assert_eq!(turn.by.unwrap().about, day("2026-06-25"));
        assert!(told.now > told.half_year, "{} {}", told.now, told.half_year);
    }

    #[test]
    fn young_nurse_plants_grow_a_bed_into_the_band_by_nothing_that_ends() {
        let told = of(&bananas("2026-01-10", 3.0, 40)).unwrap();
        let turn = told.turn.unwrap();
        assert_eq!((turn.to, turn.brighter, turn.by), (TurnTo::Inside, false, None));
        assert!(told.now < 0.1 && told.half_year > told.now, "{} {}", told.now, told.half_year);
    }

    #[test]
    fn without_nurse_plants_nothing_is_told() {
        let mut page = TestBook::default();
        let plan = json!([{"species":"coffee","pattern":"square","row_m":3,"in_row_m":3}]);
        page.write(
            "2025-01-05",
            "bed_set",
            json!({"bed":"Upper terrace","field":"F","length_m":30,"width_m":12,"plan":plan}),
        );
        assert_eq!(of(&page), None);
    }
}
