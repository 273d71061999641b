//! Days, plants, decimals and shares as they are written in each language.

use super::Wording;
use crate::base::{Day, Range};
use crate::reckon::tray::size::whole_plants;

impl Wording {
    /// A day with its year: "14 Mar 2026".
    pub fn day(&self, day: Day) -> String {
        let (year, month, date) = day.ymd();
        self.day_full(date, self.month_short(month), year)
    }

    /// A day without its year: "14 Mar".
    pub(crate) fn short_day(&self, day: Day) -> String {
        let (_, month, date) = day.ymd();
        self.day_in_year(date, self.month_short(month))
    }

    /// A number with exactly so many decimals, a point before them: so it is written in Central America too.
    pub(crate) fn decimal(&self, value: f64, places: usize) -> String {
        let written = format!("{value:.places$}");
        let below_nothing = written.starts_with('-') && written.bytes().any(|byte| (b'1'..=b'9').contains(&byte));
        if below_nothing { written } else { written.trim_start_matches('-').to_string() }
    }

    /// A number with at most so many decimals, no noughts at its end.
    pub fn number(&self, value: f64, most_places: usize) -> String {
        let written = self.decimal(value, most_places);
        if most_places == 0 {
            return written;
        }
        written.trim_end_matches('0').trim_end_matches('.').to_string()
    }

    /// A share of 0 to 1 as percent: "30 %"; below 1 % with one decimal.
    pub fn percent(&self, share: f64) -> String {
        let percent = share * 100.0;
        let places = usize::from(percent > 0.0 && percent < 1.0) + usize::from(percent > 0.0 && percent < 0.1);
        self.percent_of(self.number(percent, places))
    }

    /// A number with as many decimals as tell it from every limit beside it that it does not equal: 1.62 beside 1.6, but 2.0.
    pub(crate) fn decimal_beside(&self, value: f64, limits: &[f64], least_places: usize) -> String {
        self.decimal(value, places_beside(value, limits, least_places))
    }

    /// How many times as bright: two decimals at most, for light is read in whole percent.
    pub(crate) fn times_beside(&self, times: f64, limits: &[f64]) -> String {
        self.decimal(times, places_beside(times, limits, 1).min(2))
    }

    /// The same without noughts at its end.
    pub(crate) fn number_beside(&self, value: f64, limits: &[f64], least_places: usize) -> String {
        self.number(value, places_beside(value, limits, least_places))
    }

    /// A share as percent, told from the shares beside it: "50.3 %" beside 50 %.
    pub(crate) fn percent_beside(&self, share: f64, limits: &[f64]) -> String {
        let least_places = usize::from(share > 0.0 && share < 0.01);
        let limits: Vec<f64> = limits.iter().map(|limit| limit * 100.0).collect();
        self.percent_of(self.number_beside(share * 100.0, &limits, least_places))
    }

    /// Whether a percentage below one was meant as a share: "0.7 %: is that 70 %?"
    pub(crate) fn share_asked_words(&self, share: f64) -> String {
        self.share_asked(self.number(share, 4), self.number(share * 100.0, 2))
    }

    /// A number of plants that nobody counted, as people say it: "one or two", "a few", "5 to 15"; never above the most there can be.
    pub fn rough_number(&self, plants: f64, most: Option<f64>) -> String {
        // Of fewer than one nothing is known of what there is.
        let most = most.map(f64::floor).filter(|most| *most >= 1.0).unwrap_or(f64::INFINITY);
        match plants {
            FEW.. => {
                let [low, high] = ROUGHLY.map(|part| roundly(plants * part));
                let high = high.min(most);
                if low < high {
                    self.rough_between(self.number(low, 0), self.number(high, 0))
                } else {
                    self.rough_up_to(self.number(high, 0))
                }
            }
            ONE_OR_TWO.. if most > ONE_OR_TWO => self.rough_few(),
            _ if most < ONE_OR_TWO => self.number(most, 0),
            _ => self.rough_one(),
        }
    }

    /// Plants as a range: one number where it is exact, else low, high and likely.
    pub(crate) fn plants_range(&self, range: Range) -> String {
        // Half a plant goes nowhere: as many are said to be likely as are offered to a bed.
        let likely = whole_plants(range.likely);
        if range.high - range.low < 0.5 {
            return self.plants(likely);
        }
        let (low, high) = (range.low.floor(), range.high.ceil());
        self.plants_between(self.number(low, 0), self.number(f64::from(likely), 0), self.number(high, 0))
    }
}

/// To two figures, as far as what is reckoned from a few seeds or plants is known.
pub(crate) fn rounded(value: f64) -> f64 {
    if value.abs() < f64::MIN_POSITIVE {
        return 0.0;
    }
    let step = 10f64.powf(value.abs().log10().floor() - 1.0);
    (value / step).round() * step
}

/// A number to prepare: the next one of two figures, below a hundred of the fives, below twenty as it is.
pub(crate) fn rounded_up(count: u32) -> u32 {
    let step = match count {
        0..20 => 1,
        20..100 => 5,
        _ => 10u32.pow(count.ilog10() - 1),
    };
    count.div_ceil(step).saturating_mul(step)
}

/// Days that are only reckoned: to the day below two weeks, to five below two months, then to ten.
pub(crate) fn rounded_days(days: f64) -> f64 {
    match days {
        ..14.0 => days.round(),
        ..60.0 => (days / 5.0).round() * 5.0,
        ..1000.0 => (days / 10.0).round() * 10.0,
        _ => rounded(days),
    }
}

/// A number that is only reckoned may be as much as this part of it, or that. Ours.
const ROUGHLY: [f64; 2] = [0.5, 1.5];
/// Above "one or two" it is "a few". Ours.
const ONE_OR_TWO: f64 = 2.0;
/// From here on it is "from ... to". Ours.
const FEW: f64 = 4.0;

/// To 1 below 10, to 5 below 50, to 10 below 100, to 50 below 500, and so on.
fn roundly(value: f64) -> f64 {
    let ten = 10f64.powf(value.max(1.0).log10().floor());
    let step = if value < 10.0 {
        1.0
    } else if value < 5.0 * ten {
        ten / 2.0
    } else {
        ten
    };
    (value / step).round() * step
}

/// Decimals with which a value is told from each of the limits that it does not equal, at most four more than needed else.
fn places_beside(value: f64, limits: &[f64], least_places: usize) -> usize {
    /// Nearer than this a value is the limit: 0.48 / 0.3 is 1.6.
    const SAME: f64 = 1e-9;
    let told = |places: &usize| {
        let written = format!("{value:.0$}", *places);
        limits.iter().all(|limit| (value - limit).abs() <= SAME || written != format!("{limit:.0$}", *places))
    };
    (least_places..=least_places + 4).find(told).unwrap_or(least_places)
}
