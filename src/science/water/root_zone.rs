//! Water in the ground that roots can reach, day by day.
//!
//! Source: Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56, chapter 8, equations 82 to 88. Runoff
//! and water that rises from below are taken as nothing.

use crate::science::wrong_input::{self, WrongInput};

/// Most water a root zone holds, mm: 10 m of the best soil. Ours.
const MOST_HELD_MM: f64 = 3_000.0;
/// Most rain of a day, mm; the most ever measured is 1,825 (World Meteorological Organization, from memory).
pub(crate) const MOST_RAIN_MM: f64 = 2_000.0;
/// Most water given in a day, mm. Ours.
const MOST_GIVEN_MM: f64 = 2_000.0;
/// Most evapotranspiration of a day, mm; oases in the wind reach half of it. Ours.
const MOST_ET0_MM: f64 = 25.0;
/// Highest crop coefficient. Ours: the highest of FAO-56 is about 1.4.
const MOST_KC: f64 = 3.0;
/// Between these the share of easily taken water is kept when it follows demand. FAO-56, table 22.
const P_RANGE: (f64, f64) = (0.1, 0.8);

/// What a root zone holds.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct RootZone {
    taw_mm: f64,
    p_table: f64,
    p_follows_demand: bool,
    stress_of: StressOf,
}

/// From which depletion the stress of a day is taken.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum StressOf {
    /// From the depletion at the end of the day before: the order of the open examples of FAO-56.
    PreviousEnd,
    /// From that depletion less today's rain and watering, as if they came in the morning.
    StartOfDay,
}

/// Water that came and demand of a day.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct WaterDay {
    /// Rain, mm, 0 to 2,000.
    pub(crate) rain_mm: f64,
    /// Watering, mm over the ground the roots hold, 0 to 2,000.
    pub(crate) irrigation_mm: f64,
    /// Reference evapotranspiration, mm, 0 to 25.
    pub(crate) et0_mm: f64,
    /// Crop coefficient, 0 to 3.
    pub(crate) kc: f64,
}

/// How a day went.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct WaterTold {
    /// Share of the water held that is easily taken, on that day.
    pub(crate) p: f64,
    /// Stress coefficient, 1 (none) to 0 (wilted) (equation 84).
    pub(crate) ks: f64,
    /// Water given off, mm (equation 81).
    pub(crate) eta_mm: f64,
    /// Water that drained past the roots, mm (equation 88).
    pub(crate) dp_mm: f64,
    /// Depletion at the end of the day, mm below field capacity, 0 to TAW (equation 85).
    pub(crate) dr_end_mm: f64,
}

/// Total available water, mm: 1,000 (field capacity - wilting point) x root depth (equation 82). Both in m3/m3, 0 to 0.7,
/// the wilting point below; depth in m, above 0, at most 10.
///
/// # Errors
/// Outside of that, or no number.
pub(crate) fn total_available_mm(
    field_capacity: f64,
    wilting_point: f64,
    root_depth_m: f64,
) -> Result<f64, WrongInput> {
    wrong_input::within("fc", field_capacity, 0.0, 0.7)?;
    wrong_input::within("wp", wilting_point, 0.0, field_capacity)?;
    wrong_input::positive("zr_m", root_depth_m)?;
    wrong_input::within("zr_m", root_depth_m, 0.0, 10.0)?;
    Ok(1000.0 * (field_capacity - wilting_point) * root_depth_m)
}

/// p of a day: p of table 22 + 0.04 (5 - ETc), kept in 0.1 to 0.8 (FAO-56, note to table 22).
fn adjusted_p(p_table: f64, etc_mm: f64) -> f64 {
    (p_table + 0.04 * (5.0 - etc_mm)).clamp(P_RANGE.0, P_RANGE.1)
}

impl RootZone {
    /// A root zone that holds `taw_mm` (above 0, at most 3,000), of which the share `p_table` (0 to below 1) is easily
    /// taken; with `p_follows_demand` that share falls on days of high demand.
    ///
    /// # Errors
    /// Outside of that, or no number.
    pub(crate) fn new(
        taw_mm: f64,
        p_table: f64,
        p_follows_demand: bool,
        stress_of: StressOf,
    ) -> Result<RootZone, WrongInput> {
        wrong_input::positive("taw", taw_mm)?;
        wrong_input::within("taw", taw_mm, 0.0, MOST_HELD_MM)?;
        wrong_input::within("p_table", p_table, 0.0, 0.99)?;
        Ok(RootZone { taw_mm, p_table, p_follows_demand, stress_of })
    }

    /// What it holds, mm.
    pub(crate) fn taw_mm(self) -> f64 {
        self.taw_mm
    }

    /// One day from a depletion of `dr_mm` (0 to TAW) to the next.
    ///
    /// # Errors
    /// A figure outside of its range, or no number.
    pub(crate) fn day(self, dr_mm: f64, day: &WaterDay) -> Result<WaterTold, WrongInput> {
        wrong_input::within("dr0", dr_mm, 0.0, self.taw_mm)?;
        wrong_input::within("rain", day.rain_mm, 0.0, MOST_RAIN_MM)?;
        wrong_input::within("irrigation", day.irrigation_mm, 0.0, MOST_GIVEN_MM)?;
        wrong_input::within("et0", day.et0_mm, 0.0, MOST_ET0_MM)?;
        wrong_input::within("kc", day.kc, 0.0, MOST_KC)?;
        let came = day.rain_mm + day.irrigation_mm;
        let etc = day.kc * day.et0_mm;
        let p = if self.p_follows_demand { adjusted_p(self.p_table, etc) } else { self.p_table };
        let ks = self.stress(
            p,
            match self.stress_of {
                StressOf::PreviousEnd => dr_mm,
                StressOf::StartOfDay => (dr_mm - came).max(0.0),
            },
        );
        // Nothing can be taken that is not there: demand beyond what is held and came stays unmet.
        let eta_mm = (ks * etc).min(self.taw_mm - dr_mm + came);
        let dp_mm = (came - eta_mm - dr_mm).max(0.0);
        let dr_end_mm = (dr_mm - came + eta_mm + dp_mm).clamp(0.0, self.taw_mm);
        Ok(WaterTold { p, ks, eta_mm, dp_mm, dr_end_mm })
    }

    /// Day after day from a first depletion.
    ///
    /// # Errors
    /// The number of the day (from 0) and what is wrong with it.
    pub(crate) fn days(self, dr0_mm: f64, days: &[WaterDay]) -> Result<Vec<WaterTold>, (usize, WrongInput)> {
        let mut dr_mm = dr0_mm;
        let mut told = Vec::with_capacity(days.len());
        for (at, day) in days.iter().enumerate() {
            let one = self.day(dr_mm, day).map_err(|wrong| (at, wrong))?;
            dr_mm = one.dr_end_mm;
            told.push(one);
        }
        Ok(told)
    }

    /// Equation 84.
    fn stress(self, p: f64, dr_mm: f64) -> f64 {
        let easily = p * self.taw_mm;
        if dr_mm <= easily { 1.0 } else { ((self.taw_mm - dr_mm) / (self.taw_mm - easily)).max(0.0) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use serde_json::Value;

    const ET0: &str = include_str!("../../../tests/reference/et0.json");
    const HANDBOOK: &str = include_str!("../../../tests/reference/handbook_examples.tsv");

    fn zone(taw: f64, p: f64) -> RootZone {
        RootZone::new(taw, p, false, StressOf::PreviousEnd).unwrap()
    }

    fn dry(et0_mm: f64) -> WaterDay {
        WaterDay { rain_mm: 0.0, irrigation_mm: 0.0, et0_mm, kc: 1.0 }
    }

    /// Inputs, expected and tolerance of a row of the handbook examples.
    fn row(id: &str) -> (Value, Value, f64) {
        let line =
            HANDBOOK.lines().find(|line| line.starts_with(&format!("{id}\t"))).unwrap_or_else(|| panic!("no row {id}"));
        let cells: Vec<&str> = line.split('\t').collect();
        let json = |text: &str| serde_json::from_str::<Value>(text).unwrap();
        (json(cells[2]), json(cells[3]), cells[4].parse().unwrap())
    }

    fn number(from: &Value, key: &str) -> f64 {
        from[key].as_f64().unwrap_or_else(|| panic!("no {key} in {from}"))
    }

    fn numbers(from: &Value, key: &str) -> Vec<f64> {
        from[key].as_array().unwrap().iter().map(|value| value.as_f64().unwrap_or(f64::NAN)).collect()
    }

    fn near(got: f64, want: f64, within: f64, what: &str) {
        assert!((got - want).abs() <= within, "{what}: {got}, but {want} within {within}");
    }

    fn zone_of(given: &Value) -> RootZone {
        let taw = total_available_mm(number(given, "fc"), number(given, "wp"), number(given, "zr_m")).unwrap();
        zone(taw, number(given, "p"))
    }

    #[test]
    fn example_36_of_fao_56_and_an_open_balance_hold_as_much_and_as_much_easily() {
        for id in ["W01", "W02", "W03", "W04", "W05", "W06", "W07", "W08", "W09", "W10", "W23"] {
            let (given, want, within) = row(id);
            let zone = zone_of(&given);
            near(zone.taw_mm(), number(&want, "taw_mm"), within, id);
            near(zone.p_table * zone.taw_mm(), number(&want, "raw_mm"), within, id);
        }
    }

    #[test]
    fn stress_begins_past_what_is_easily_taken() {
        for id in ["W10", "W25", "W26"] {
            let (given, want, within) = row(id);
            let told = zone_of(&given).day(number(&given, "dr_mm"), &dry(4.0)).unwrap();
            near(told.ks, number(&want, "ks"), within, id);
        }
        let (given, want, within) = row("W11");
        near(adjusted_p(number(&given, "p"), number(&given, "etc_mm")), number(&want, "p_adj"), within, "W11");
        let (given, want, within) = row("W24");
        let below = number(&given, "fc") - number(&given, "theta");
        near(1000.0 * below * number(&given, "zr_m"), number(&want, "dr_mm"), within, "W24");
    }

    #[test]
    fn the_published_days_of_an_open_balance() {
        for id in ["W27", "W28", "W29", "W30"] {
            let (given, want, within) = row(id);
            let zone = zone_of(&given);
            let mut dr = 1000.0 * (number(&given, "fc") - number(&given, "theta_start")) * number(&given, "zr_m");
            let (rain, water) = (numbers(&given, "rain_mm"), numbers(&given, "irrigation_mm"));
            let (etc, ends) = (numbers(&given, "etc_mm"), numbers(&want, "dr_mm"));
            for at in 0..ends.len() {
                // "refill": as much as brings the day to field capacity.
                let water = if water[at].is_nan() { dr + etc[at] } else { water[at] };
                let day = WaterDay { rain_mm: rain[at], irrigation_mm: water, et0_mm: etc[at] / 2.0, kc: 2.0 };
                let told = zone.day(dr, &day).unwrap();
                near(told.dr_end_mm, ends[at], within, &format!("{id} day {at}"));
                if let Some(ks) = want["ks"][at].as_f64() {
                    near(told.ks, ks, within, &format!("{id} ks {at}"));
                }
                dr = told.dr_end_mm;
            }
        }
    }

    #[test]
    fn the_simple_store_of_a_climate_service_is_a_zone_without_stress() {
        let (given, want, within) = row("W31");
        // Store = TAW - depletion; p near 1: it gives all it has until it is empty.
        let taw = number(&given, "taw_mm");
        let zone = zone(taw, 0.99);
        let mut dr = taw - number(&given, "start_mm");
        let stores = numbers(&want, "store_mm");
        let demand = number(&given, "demand_mm_per_day");
        let mut compared = 0;
        for (rain, store) in numbers(&given, "rain_mm").into_iter().zip(stores) {
            // That store lets the day's rain be drunk on the same day; where it runs dry the stress of the last
            // percent of the zone would show.
            let told = zone.day(dr, &WaterDay { rain_mm: rain, irrigation_mm: 0.0, et0_mm: demand, kc: 1.0 }).unwrap();
            if told.ks == 1.0 {
                near(taw - told.dr_end_mm, store, within.max(1e-9), "store");
                compared += 1;
            }
            dr = taw - store;
        }
        assert!(compared >= 20, "only {compared} days were compared");
        let (given, want, _) = row("W32");
        for at in 0..2 {
            let taw = numbers(&given, "taw_mm")[at];
            let day = WaterDay { rain_mm: numbers(&given, "rain_mm")[at], ..dry(numbers(&given, "demand_mm")[at]) };
            let told = self::zone(taw, 0.99).day(taw - numbers(&given, "store_mm")[at], &day).unwrap();
            near(taw - told.dr_end_mm, numbers(&want, "store_mm")[at], 1e-9, "W32 store");
            near(told.dp_mm, numbers(&want, "drainage_mm")[at], 1e-9, "W32 drainage");
        }
    }

    #[test]
    fn three_balances_of_120_days_agree_with_another_script() {
        let all: Value = serde_json::from_str(ET0).unwrap();
        let cases = all["water_balance_120d"].as_array().unwrap();
        assert_eq!(cases.len(), 3);
        for case in cases {
            let stress_of =
                if case["ks_from"] == "previous_end" { StressOf::PreviousEnd } else { StressOf::StartOfDay };
            let follows = case["p_adjusted"].as_bool().unwrap();
            let zone = RootZone::new(number(case, "taw"), number(case, "p_table"), follows, stress_of).unwrap();
            let lists = ["rain", "irrigation", "et0", "kc"].map(|key| numbers(case, key));
            let days: Vec<WaterDay> = (0..lists[0].len())
                .map(|at| WaterDay {
                    rain_mm: lists[0][at],
                    irrigation_mm: lists[1][at],
                    et0_mm: lists[2][at],
                    kc: lists[3][at],
                })
                .collect();
            let told = zone.days(number(case, "dr0"), &days).unwrap();
            assert_eq!(told.len(), 120);
            let want = ["p", "ks", "eta", "dp", "dr_end"].map(|key| numbers(&case["result"], key));
            for (at, day) in told.iter().enumerate() {
                for (list, got) in want.iter().zip([day.p, day.ks, day.eta_mm, day.dp_mm, day.dr_end_mm]) {
                    near(got, list[at], 1e-4, &format!("{} day {at}", case["id"]));
                }
            }
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        #[test]
        fn water_that_came_went_or_is_still_there(
            taw in 5.0..300.0f64,
            p in 0.0..0.9f64,
            follows in any::<bool>(),
            morning in any::<bool>(),
            full in 0.0..1.0f64,
            days in prop::collection::vec((0.0..120.0f64, 0.0..40.0f64, 0.0..12.0f64, 0.0..1.4f64), 1..120),
        ) {
            let stress_of = if morning { StressOf::StartOfDay } else { StressOf::PreviousEnd };
            let zone = RootZone::new(taw, p, follows, stress_of).unwrap();
            let days: Vec<WaterDay> = days
                .into_iter()
                .map(|(rain, water, et0_mm, kc)| WaterDay {
                    // Half of the days are dry.
                    rain_mm: (rain - 60.0).max(0.0),
                    irrigation_mm: (water - 30.0).max(0.0),
                    et0_mm,
                    kc,
                })
                .collect();
            let told = zone.days(full * taw, &days).unwrap();
            let came: f64 = days.iter().map(|day| day.rain_mm + day.irrigation_mm).sum();
            let went: f64 = told.iter().map(|day| day.eta_mm + day.dp_mm).sum();
            let left = told.last().unwrap().dr_end_mm;
            prop_assert!((came - went - (full * taw - left)).abs() < 1e-9, "{came} {went} {left}");
            for day in &told {
                prop_assert!((0.0..=taw).contains(&day.dr_end_mm) && (0.0..=1.0).contains(&day.ks) && day.eta_mm >= 0.0);
            }
        }
    }

    #[test]
    fn nonsense_is_refused_with_its_day() {
        let zone = zone(40.0, 0.3);
        let wet = |rain_mm| WaterDay { rain_mm, ..dry(4.0) };
        for rain in [-3.0, 4_000.0, f64::NAN] {
            let (day, wrong) = zone.days(0.0, &[wet(2.0), wet(rain)]).unwrap_err();
            assert!(day == 1 && wrong.to_string().starts_with("rain"), "{wrong}");
        }
        assert!(zone.days(41.0, &[wet(0.0)]).is_err());
        assert!(RootZone::new(0.0, 0.3, false, StressOf::PreviousEnd).is_err());
        assert!(RootZone::new(40.0, 1.0, false, StressOf::PreviousEnd).is_err());
        assert!(total_available_mm(0.1, 0.2, 1.0).is_err());
    }
}
