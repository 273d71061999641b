//! The water of the weeks after planting: how likely the ground runs dry for long, up to which day of the rains planting is
//! safe by that, and when the rains began by the gauge.

use super::balance::{EASILY_TAKEN_SHARE, Et0, KC, usual_mm};
use super::texture::Texture;
use crate::base::Day;
use crate::reckon::bed::season::{Spell, running_or_next};
use crate::reckon::site::{Site, weather_from};
use crate::science::water::onset::{Onset, OnsetRule, onset};
use crate::science::water::root_zone::{RootZone, StressOf, WaterDay};

/// Days after planting that are looked at: six weeks.
const AHEAD_DAYS: i32 = 42;
/// So many days without easily taken water in a row are borne. Ours, by the 7 days of Sivakumar 1988.
pub(crate) const STRESS_BORNE_DAYS: i32 = 7;
/// Planting is safe while it goes well so often. Ours: four times in five.
pub(crate) const SAFE_CHANCE: f64 = 0.8;
/// Weathers that are drawn for a day. Ours: the chance is then known to 0.03.
const DRAWN: u32 = 200;
/// Days of the rains are looked at one in so many. Ours.
const EVERY_DAYS: usize = 5;
/// Weather is drawn in blocks of so many days of the gauge that follow each other, so that dry days stay together. Ours.
const BLOCK_DAYS: i32 = 7;
/// Of the gauge those days of a year are drawn that lie no farther from the day. Ours.
const NEAR_DAYS: i32 = 15;
/// With fewer blocks near a day the usual rain of its month is drawn. Ours.
const LEAST_BLOCKS: usize = 20;
/// What a wet day brings where only the usual rain is known, mm. Ours: of 10 mm days usual rain of 150 mm a month is every second.
const WET_DAY_MM: f64 = 10.0;
/// The most days of which that is taken to be wet. Ours.
const MOST_WET: f64 = 0.9;
/// Where the drawing begins: the same book gives the same figure. Ours.
const SEED: u64 = 0x5eed_0017;
/// Days before the described rains from which their beginning is looked for. Ours.
const BEFORE_RAINS_DAYS: i32 = 30;

/// What is drawn from.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum DrawnFrom {
    /// Blocks of the gauge alone.
    Gauge,
    /// The usual rain of the months alone.
    Usual,
    /// Both.
    Both,
}

/// The water of the weeks after planting.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct WaterAhead {
    /// How likely what is planted today has no more than seven days of stress in a row within six weeks.
    pub today: f64,
    /// The last day of the rains on which that is as likely as it has to be; none where it is on no day of them.
    pub last_safe: Option<Day>,
    /// The rains that are looked at; none where none are described: then six weeks from today on.
    pub rains: Option<Spell>,
    /// Days for which easily taken water lasts in ground that is full, without rain.
    pub lasts_days: i32,
    /// What weather was drawn from.
    pub from: DrawnFrom,
    /// When these rains began by the gauge.
    pub began: Option<Day>,
}

/// The water of the weeks after planting in ground of a texture that is full on that day; none where neither the gauge nor the
/// usual rain tells of it.
pub(crate) fn water_ahead(site: &Site, texture: Texture, day: Day) -> Option<WaterAhead> {
    let rains = running_or_next(site, day);
    let mut drawing = Drawing::of(site, texture, day)?;
    let today = drawing.chance(day)?;
    let (first, last) = rains.map_or((day, day.plus(AHEAD_DAYS)), |rains| (rains.from.max(day), rains.until));
    let mut last_safe = None;
    for at in (0..=last.days_since(first)).step_by(EVERY_DAYS) {
        let on = first.plus(at);
        if drawing.chance(on)? >= SAFE_CHANCE {
            last_safe = Some(on);
        }
    }
    let from = match (drawing.used_gauge, drawing.used_usual) {
        (true, false) => DrawnFrom::Gauge,
        (false, _) => DrawnFrom::Usual,
        (true, true) => DrawnFrom::Both,
    };
    let began = rains.filter(|rains| rains.from <= day).and_then(|rains| began(site, rains, day));
    let lasts_days = drawing.lasts_days(day);
    Some(WaterAhead { today, last_safe, rains, lasts_days, from, began })
}

/// When rains began, days that nobody read taken as dry.
fn began(site: &Site, rains: Spell, day: Day) -> Option<Day> {
    let first = rains.from.plus(-BEFORE_RAINS_DAYS);
    let rain_on = |on: Day| site.weather.get(&on).and_then(|(_, weather)| weather.rain_mm).map_or(0.0, |rain| rain.0);
    let record: Vec<f64> = (0..=day.days_since(first)).map(|at| rain_on(first.plus(at))).collect();
    match onset(OnsetRule::ClimateService, &record).ok()? {
        Onset::Began(at) => Some(first.plus(i32::try_from(at).ok()?)),
        Onset::NotYetKnown(_) | Onset::None => None,
    }
}

struct Drawing<'a> {
    site: &'a Site,
    zone: RootZone,
    et0: Et0,
    /// Blocks of the gauge: the day of the year of their first, and their rain.
    blocks: Vec<(i32, Vec<f64>)>,
    die: Die,
    used_gauge: bool,
    used_usual: bool,
}

impl<'a> Drawing<'a> {
    fn of(site: &'a Site, texture: Texture, day: Day) -> Option<Drawing<'a>> {
        let zone = RootZone::new(texture.full_mm(), EASILY_TAKEN_SHARE, false, StressOf::StartOfDay).ok()?;
        let rain_on = |on: Day| site.weather.get(&on)?.1.rain_mm.map(|rain| rain.0);
        let first = weather_from(day);
        let blocks = (0..=day.days_since(first) - BLOCK_DAYS).filter_map(|at| {
            let from = first.plus(at);
            let rain = (0..BLOCK_DAYS).map(|within| rain_on(from.plus(within))).collect::<Option<Vec<f64>>>()?;
            Some((of_year(from), rain))
        });
        let blocks = blocks.collect();
        let et0 = Et0::of(site, day);
        Some(Drawing { site, zone, et0, blocks, die: Die(SEED), used_gauge: false, used_usual: false })
    }

    /// How often what is planted on a day in ground that is full has no long stress.
    fn chance(&mut self, day: Day) -> Option<f64> {
        let et0: Vec<f64> = (0..AHEAD_DAYS).map(|at| self.et0.mm(self.site, None, day.plus(at))).collect();
        let near = self.near(day);
        let mut went_well = 0;
        for _ in 0..DRAWN {
            let rain = self.weather(day, &near)?;
            went_well += u32::from(self.longest_stress(&rain, &et0) <= STRESS_BORNE_DAYS);
        }
        Some(f64::from(went_well) / f64::from(DRAWN))
    }

    /// Days without rain until easily taken water is gone in ground that is full.
    fn lasts_days(&self, day: Day) -> i32 {
        let demand_mm = KC * self.et0.mm(self.site, None, day);
        (EASILY_TAKEN_SHARE * self.zone.taw_mm() / demand_mm.max(0.1)).floor() as i32
    }

    /// For each week of the six the blocks of the gauge that lie near it.
    fn near(&self, day: Day) -> Vec<Vec<usize>> {
        let of_week = |from: i32| {
            let of_year = of_year(day.plus(from));
            (0..self.blocks.len()).filter(|at| near(self.blocks[*at].0, of_year)).collect()
        };
        (0..AHEAD_DAYS).step_by(BLOCK_DAYS as usize).map(of_week).collect()
    }

    /// Six weeks of rain; none where nothing tells of it.
    fn weather(&mut self, day: Day, near: &[Vec<usize>]) -> Option<Vec<f64>> {
        let mut rain: Vec<f64> = Vec::new();
        for near in near {
            let on = day.plus(rain.len() as i32);
            if near.len() >= LEAST_BLOCKS {
                let at = near[(self.die.next() * near.len() as f64) as usize % near.len()];
                rain.extend_from_slice(&self.blocks[at].1);
                self.used_gauge = true;
            } else {
                for within in 0..BLOCK_DAYS {
                    let usual = usual_mm(self.site, on.plus(within))?;
                    let wet = (usual / WET_DAY_MM).min(MOST_WET);
                    let falls = self.die.next() < wet;
                    // Of wet days most bring little and few much.
                    let mm = -(1.0 - self.die.next()).ln() * usual / wet.max(f64::MIN_POSITIVE);
                    rain.push(if falls { mm } else { 0.0 });
                }
                self.used_usual = true;
            }
        }
        Some(rain)
    }

    fn longest_stress(&self, rain: &[f64], et0: &[f64]) -> i32 {
        let easily_mm = EASILY_TAKEN_SHARE * self.zone.taw_mm();
        let (mut missing_mm, mut run, mut longest) = (0.0, 0, 0);
        for (rain_mm, et0_mm) in rain.iter().zip(et0) {
            let water = WaterDay { rain_mm: *rain_mm, irrigation_mm: 0.0, et0_mm: *et0_mm, kc: KC };
            missing_mm = self.zone.day(missing_mm, &water).map_or(missing_mm, |told| told.dr_end_mm);
            run = if missing_mm > easily_mm { run + 1 } else { 0 };
            longest = longest.max(run);
        }
        longest
    }
}

/// The day of the year, from 0.
fn of_year(day: Day) -> i32 {
    Day::from_ymd(day.ymd().0, 1, 1).map_or(0, |first| day.days_since(first))
}

/// Whether two days of the year lie near each other, over the turn of the year too.
fn near(one: i32, other: i32) -> bool {
    let apart = (one - other).abs();
    apart.min(365 - apart) <= NEAR_DAYS
}

/// Numbers as if by chance, the same every time (Steele, Lea & Flood 2014, SplitMix64).
struct Die(u64);

impl Die {
    /// From 0 up to 1.
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((mixed ^ (mixed >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reckon::test_book::{TestBook, day};
    use serde_json::{Value, json};

    fn of(season: Value, gauge: &[(&str, f64)], on: &str) -> Option<WaterAhead> {
        let mut page = TestBook::default();
        page.write("2024-01-01", "season_set", season);
        for (when, rain_mm) in gauge {
            page.write(when, "weather", json!({"rain_mm":rain_mm}));
        }
        let (_, site) = page.story(on);
        water_ahead(&site, Texture::Loam, day(on))
    }

    fn rains(rain_mm: [u32; 12]) -> Value {
        json!({"rains":[{"from":"03-01","until":"06-30"}],"rain_mm":rain_mm})
    }

    #[test]
    fn the_last_safe_day_lies_before_the_dry_months_and_earlier_the_sooner_they_come() {
        let long = of(rains([20, 60, 250, 300, 300, 250, 200, 20, 0, 0, 0, 0]), &[], "2026-03-10").unwrap();
        let short = of(rains([20, 60, 250, 300, 200, 20, 0, 0, 0, 0, 0, 0]), &[], "2026-03-10").unwrap();
        assert!(long.today > 0.9 && short.today > 0.9, "{long:?} {short:?}");
        assert!(long.last_safe.unwrap() > short.last_safe.unwrap(), "{long:?} {short:?}");
        assert!(short.last_safe.unwrap() < day("2026-06-01"), "{short:?}");
        assert_eq!(long.from, DrawnFrom::Usual);
        // The same book gives the same figure.
        assert_eq!(of(rains([20, 60, 250, 300, 200, 20, 0, 0, 0, 0, 0, 0]), &[], "2026-03-10"), Some(short));
    }

    #[test]
    fn where_it_hardly_rains_no_day_is_safe_and_where_nothing_is_written_nothing_is_told() {
        let dry = of(rains([5; 12]), &[], "2026-03-10").unwrap();
        assert_eq!((dry.last_safe, dry.today), (None, 0.0));
        assert_eq!(of(json!({"rains":[{"from":"03-01","until":"06-30"}]}), &[], "2026-03-10"), None);
    }

    #[test]
    fn a_gauge_that_was_read_every_day_is_drawn_from_and_tells_when_the_rains_began() {
        // Two years: 12 mm every second day from 6 March on, to the end of June.
        let mut lines: Vec<(String, f64)> = Vec::new();
        for year in [2025, 2026] {
            let first = Day::from_ymd(year, 1, 1).unwrap();
            for at in 0..(if year == 2025 { 365 } else { 120 }) {
                let on = first.plus(at);
                let in_rains = on >= Day::from_ymd(year, 3, 6).unwrap() && on <= Day::from_ymd(year, 6, 30).unwrap();
                lines.push((on.to_string(), if in_rains && at % 2 == 0 { 12.0 } else { 0.0 }));
            }
        }
        let lines: Vec<(&str, f64)> = lines.iter().map(|(on, rain)| (on.as_str(), *rain)).collect();
        let told = of(json!({"rains":[{"from":"03-01","until":"06-30"}]}), &lines, "2026-04-20").unwrap();
        assert_eq!((told.from, told.today), (DrawnFrom::Gauge, 1.0));
        let began = told.began.unwrap();
        assert!(began >= day("2026-03-06") && began <= day("2026-03-08"), "{began}");
        let last = told.last_safe.unwrap();
        assert!(last >= day("2026-05-01") && last < day("2026-06-20"), "{last}");
    }
}
