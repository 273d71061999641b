//! What is left of the water that young roots reach: the daily balance of FAO-56 for the top of the ground, from the gauge and the
//! temperatures. One for each texture and day, and a short one for a bed whose ground somebody found wet.

use super::texture::{TEXTURES, Texture};
use crate::base::Day;
use crate::nursery::entry::{SeasonSet, Weather};
use crate::reckon::site::Site;
use crate::science::water::evaporation::{DayWeather, Sunlight, Vapour, evaporation};
use crate::science::water::root_zone::{RootZone, StressOf, WaterDay};

/// Depth that young roots reach, cm: that of a bag. Ours, common practice (15 to 25 cm).
pub(crate) const ROOT_DEPTH_CM: f64 = 25.0;
/// Share of the water held that young roots take easily. Ours: FAO-56, table 22, has 0.30 of cacao and 0.40 of coffee for roots that
/// are there; in the first 8 weeks no more.
pub(crate) const EASILY_TAKEN_SHARE: f64 = 0.30;
/// Crop coefficient of weeded ground with small plants: that of young coffee on bare ground (FAO-56, table 12).
pub(crate) const KC: f64 = 0.9;
/// Reference evapotranspiration where no temperature is written, mm a day: of 3 to 5 at about 20 degrees C in the humid tropics (FAO-56,
/// table 2, from memory).
pub(crate) const USUAL_ET0_MM: f64 = 4.0;
/// Days that are looked back. Ours: by then the ground has forgotten how it was.
pub(crate) const BALANCE_DAYS: i32 = 60;
/// Where the gauge was not read for so many days, the season's usual rains are taken instead. Ours.
pub(crate) const NO_GAUGE_DAYS: i32 = 10;
/// Gauge lines in them from which the balance is reckoned without monthly normals.
pub(crate) const LEAST_GAUGE_DAYS: usize = 30;
/// A dry run from so many written days on: a day after it that nobody read is not filled with usual rain. Ours, by the 7 days of
/// Sivakumar 1988.
pub(crate) const DRY_RUN_DAYS: i32 = 7;
/// Rain of a dry day, mm at most. Sivakumar 1988, from memory.
pub(crate) const DRY_DAY_MM: f64 = 1.0;
/// For so many days without a line a dry run is remembered. Ours.
pub(crate) const DRY_RUN_REMEMBERED_DAYS: i32 = 30;

/// Lets 6.7 + 6.7 + 6.6 mm be 20 although a computer adds them inexactly, mm.
pub(super) const FUZZ_MM: f64 = 1e-6;

/// How a day's rain is known.
#[derive(Clone, Copy, PartialEq, Debug)]
enum Rain {
    Read(f64),
    /// Not read: what the month usually brings in a day, where that is written.
    Unread(Option<f64>),
    /// Not read, after a dry run.
    InDrought,
}

#[derive(Clone, Copy, PartialEq, Debug)]
struct OneDay {
    day: Day,
    rain: Rain,
    et0_mm: f64,
}

/// Days without rain, as written.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct DryRun {
    /// Days written as dry, one after the other.
    pub(crate) days: i32,
    /// The last of them.
    pub(crate) last: Day,
}

/// What days that nobody read are taken to have brought.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Unread {
    Nothing,
    /// What the month usually brings; nothing after a dry run.
    Usual,
    /// All that the ground takes; nothing after a dry run.
    MuchOutsideDrought,
    Much,
}

const WAYS: [Unread; 4] = [Unread::Nothing, Unread::Usual, Unread::MuchOutsideDrought, Unread::Much];

/// Water missing to field capacity this morning, mm, by what days that nobody read may have brought.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(super) struct Missing {
    /// What the ground holds when it is full, mm.
    pub(super) full_mm: f64,
    pub(super) with_nothing_mm: f64,
    pub(super) with_usual_mm: f64,
    pub(super) with_much_outside_drought_mm: f64,
    pub(super) with_much_mm: f64,
    /// Water that a day takes, mm.
    pub(super) demand_mm: f64,
    /// Whether ground that was found dry has been wet since, by what was read; true where nobody found it dry.
    pub(super) wetted: bool,
    /// Days that nobody read since the ground was last full.
    pub(super) unread_days: i32,
    /// The first of them.
    pub(super) first_unread: Option<Day>,
}

impl Missing {
    /// What may be missing before young roots suffer, mm.
    pub(super) fn easily_mm(&self) -> f64 {
        EASILY_TAKEN_SHARE * self.full_mm
    }

    /// Whether young roots have enough, also if unread days brought nothing.
    pub(super) fn is_wet(&self) -> bool {
        self.with_nothing_mm <= self.easily_mm() + FUZZ_MM
    }

    /// Whether nothing is left for young roots.
    pub(super) fn is_empty(&self) -> bool {
        self.with_nothing_mm >= self.full_mm
    }

    /// Whether as much is missing here as there, whatever unread days brought.
    pub(super) fn is_as(&self, other: &Missing) -> bool {
        let all = |one: &Missing| {
            [one.with_nothing_mm, one.with_usual_mm, one.with_much_outside_drought_mm, one.with_much_mm]
        };
        all(self).into_iter().zip(all(other)).all(|(here, there)| (here - there).abs() <= FUZZ_MM)
    }
}

/// The water of a day, for every texture.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct Waters {
    days: Vec<OneDay>,
    /// Whether the gauge or the normals tell enough to go by the balance.
    pub(super) tells: bool,
    pub(super) has_usual: bool,
    dry_run: Option<DryRun>,
    by_texture: [Option<Missing>; TEXTURES.len()],
}

impl Waters {
    /// The water of a site on the morning of a day.
    pub(crate) fn of(site: &Site, day: Day) -> Waters {
        let (days, dry_run) = days(site, day);
        let has_usual = site.season.on(day).is_some_and(|season| season.rain_mm.is_some());
        let is_read = |one: &OneDay| matches!(one.rain, Rain::Read(_));
        let lines = days.iter().filter(|one| is_read(one)).count();
        let lately = days.iter().any(|one| is_read(one) && day.days_since(one.day) < NO_GAUGE_DAYS);
        let tells = lately && (has_usual || lines >= LEAST_GAUGE_DAYS);
        // Before the record began nothing is known but what is usual.
        let from = if has_usual { 0 } else { days.iter().position(is_read).unwrap_or(0) };
        let mut waters = Waters { days, tells, has_usual, dry_run, by_texture: [None; TEXTURES.len()] };
        if tells {
            // As dry as can be at first: what is not known does not count as wet.
            let since = &waters.days[from..];
            waters.by_texture = TEXTURES
                .map(|texture| missing(texture, since, &Start { missing_mm: texture.full_mm(), found_dry: false }));
        }
        waters
    }

    /// What is missing in ground of a texture.
    pub(super) fn of_texture(&self, texture: Texture) -> Option<Missing> {
        self.by_texture[texture as usize]
    }

    /// What is missing in ground that was full on a day.
    pub(super) fn since_full(&self, texture: Texture, on: Day) -> Option<Missing> {
        missing(texture, self.from(on)?, &Start { missing_mm: 0.0, found_dry: false })
    }

    /// What is missing in ground that was found dry on a day: nothing was left for young roots then, and what fell after that day
    /// counts. Also whether what was read since has wet it.
    pub(super) fn since_dry(&self, texture: Texture, on: Day) -> Option<Missing> {
        missing(texture, self.from(on)?, &Start { missing_mm: texture.full_mm(), found_dry: true })
    }

    /// What was missing on a day at the feet of plants that got so much water on a day before, mm; all that the ground holds where
    /// nobody wrote how much.
    pub(super) fn at_feet(&self, texture: Texture, on: Day, given_mm: Option<f64>, until: Day) -> Option<Missing> {
        let missing_mm = given_mm.map_or(0.0, |mm| (texture.full_mm() - mm).max(0.0));
        let days = self.from(on)?;
        let until = days.iter().position(|one| one.day > until).unwrap_or(days.len());
        missing(texture, &days[..until], &Start { missing_mm, found_dry: false })
    }

    /// The days from one on.
    fn from(&self, on: Day) -> Option<&[OneDay]> {
        let from = self.days.iter().position(|one| one.day >= on)?;
        Some(&self.days[from..])
    }

    /// The dry run that goes on, or after which nobody read the gauge.
    pub(crate) fn dry_run(&self) -> Option<DryRun> {
        self.dry_run
    }
}

/// How ground stood on the first day of a balance.
struct Start {
    /// What was missing in it, mm.
    missing_mm: f64,
    /// A finger found it dry on that day. The rain of the day itself, which the finger felt, does not count, and what nobody read
    /// brings nothing, until what was read has wet it.
    found_dry: bool,
}

fn missing(texture: Texture, days: &[OneDay], start: &Start) -> Option<Missing> {
    let zone = RootZone::new(texture.full_mm(), EASILY_TAKEN_SHARE, false, StressOf::StartOfDay).ok()?;
    let (first, last) = (days.first()?.day, days.last()?);
    let mut missing_mm = [start.missing_mm; WAYS.len()];
    let mut wetted = !start.found_dry;
    let (mut unread_days, mut first_unread) = (0, None);
    for one in days {
        let is_read = matches!(one.rain, Rain::Read(_));
        let brings_nothing = start.found_dry && one.day == first || !wetted && !is_read;
        for (missing_mm, way) in missing_mm.iter_mut().zip(WAYS) {
            let rain_mm = if brings_nothing { 0.0 } else { one.rain.mm(way, zone.taw_mm()) };
            let water = WaterDay { rain_mm, irrigation_mm: 0.0, et0_mm: one.et0_mm, kc: KC };
            *missing_mm = if one.day == last.day {
                // The day itself has only begun.
                (*missing_mm - rain_mm).max(0.0)
            } else {
                zone.day(*missing_mm, &water).map_or(*missing_mm, |told| told.dr_end_mm)
            };
        }
        wetted |= missing_mm[0] <= EASILY_TAKEN_SHARE * zone.taw_mm();
        if !is_read {
            unread_days += 1;
            first_unread.get_or_insert(one.day);
        } else if missing_mm[0] <= one.et0_mm * KC {
            (unread_days, first_unread) = (0, None);
        }
    }
    let [with_nothing_mm, with_usual_mm, with_much_outside_drought_mm, with_much_mm] = missing_mm;
    Some(Missing {
        full_mm: zone.taw_mm(),
        with_nothing_mm,
        with_usual_mm,
        with_much_outside_drought_mm,
        with_much_mm,
        demand_mm: last.et0_mm * KC,
        wetted,
        unread_days,
        first_unread,
    })
}

impl Rain {
    fn mm(self, way: Unread, much_mm: f64) -> f64 {
        match (self, way) {
            (Rain::Read(mm), _) => mm,
            (_, Unread::Nothing) | (Rain::InDrought, Unread::Usual | Unread::MuchOutsideDrought) => 0.0,
            (Rain::Unread(usual), Unread::Usual) => usual.unwrap_or(0.0),
            (Rain::Unread(_), Unread::MuchOutsideDrought | Unread::Much) | (Rain::InDrought, Unread::Much) => much_mm,
        }
    }
}

/// The days looked back to, the day itself last, and the dry run at their end.
fn days(site: &Site, day: Day) -> (Vec<OneDay>, Option<DryRun>) {
    let et0 = Et0::of(site, day);
    let mut dry = DryRun { days: 0, last: day };
    let of_day = |on: Day| {
        let weather = site.weather.get(&on).map(|(_, weather)| weather);
        let rain = match weather.and_then(|weather| weather.rain_mm) {
            Some(rain) => {
                dry = DryRun { days: if rain.0 > DRY_DAY_MM { 0 } else { dry.days + 1 }, last: on };
                Rain::Read(rain.0)
            }
            None if is_remembered(dry, on) => Rain::InDrought,
            None => {
                dry.days = 0;
                Rain::Unread(usual_mm(site, on))
            }
        };
        OneDay { day: on, rain, et0_mm: et0.mm(site, weather, on) }
    };
    let days = (0..=BALANCE_DAYS).rev().map(|back| day.plus(-back)).map(of_day).collect();
    (days, Some(dry).filter(|dry| is_remembered(*dry, day)))
}

fn is_remembered(dry: DryRun, day: Day) -> bool {
    dry.days >= DRY_RUN_DAYS && day.days_since(dry.last) <= DRY_RUN_REMEMBERED_DAYS
}

/// What a month usually brings in a day, mm.
pub(super) fn usual_mm(site: &Site, day: Day) -> Option<f64> {
    let (year, month, _) = day.ymd();
    let first = Day::from_ymd(year, month, 1)?;
    let next = Day::from_ymd(year + i32::from(month == 12), month % 12 + 1, 1)?;
    let of_month = site.season.on(day)?.rain_mm.as_ref()?.get(month as usize - 1)?;
    Some(of_month.0 / f64::from(next.days_since(first)))
}

/// Reference evapotranspiration of a place.
pub(super) struct Et0 {
    place: Option<(f64, Option<f64>)>,
    /// Of a day without temperatures: by the mean of those written lately.
    otherwise_mm: f64,
}

impl Et0 {
    pub(super) fn of(site: &Site, day: Day) -> Et0 {
        let place =
            site.nursery.on(day).map(|nursery| (nursery.latitude_deg.0, nursery.altitude_m.map(|altitude| altitude.0)));
        let mut et0 = Et0 { place, otherwise_mm: USUAL_ET0_MM };
        let lines = site.weather.range(day.plus(-BALANCE_DAYS)..=day);
        let written: Vec<f64> =
            lines.filter_map(|(on, (_, weather))| et0.hargreaves(*on, written_c(weather)?)).collect();
        if !written.is_empty() {
            et0.otherwise_mm = written.iter().sum::<f64>() / written.len() as f64;
        }
        et0
    }

    /// By the temperatures written of the day, else by those usual in its month, else as on the days that have them.
    pub(super) fn mm(&self, site: &Site, weather: Option<&Weather>, day: Day) -> f64 {
        let written = weather.and_then(written_c);
        let temperatures_c = written.or_else(|| usual_c(site.season.on(day)?, day));
        temperatures_c.and_then(|both| self.hargreaves(day, both)).unwrap_or(self.otherwise_mm)
    }

    fn hargreaves(&self, day: Day, (tmin_c, tmax_c): (f64, f64)) -> Option<f64> {
        let (lat_deg, elev_m) = self.place?;
        let doy = u32::try_from(day.days_since(Day::from_ymd(day.ymd().0, 1, 1)?) + 1).ok()?;
        let weather = DayWeather {
            lat_deg,
            elev_m,
            doy,
            tmax_c,
            tmin_c,
            vapour: Vapour::Unknown,
            wind_m_s: None,
            light: Sunlight::Unknown,
            soil_heat_mj: 0.0,
        };
        Some(evaporation(&weather).ok()?.hargreaves_mm)
    }
}

/// The coldest and the warmest of a day, where both are written.
fn written_c(weather: &Weather) -> Option<(f64, f64)> {
    Some((weather.tmin_c?.0, weather.tmax_c?.0))
}

fn usual_c(season: &SeasonSet, day: Day) -> Option<(f64, f64)> {
    let month = day.ymd().1 as usize - 1;
    Some((season.tmin_c.as_ref()?.get(month)?.0, season.tmax_c.as_ref()?.get(month)?.0))
}
