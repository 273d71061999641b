//! What the counts of a germination test or a sowing say: how much, how fast, how evenly.
//!
//! Sources: median by Coolbear, Francis & Grierson 1984, Journal of Experimental Botany 35:1609, and by Farooq et al. 2005,
//! Journal of Integrative Plant Biology 47:187; rate index Maguire 1962, Crop Science 2:176; coefficient of velocity
//! Kotowski 1926; mean time, its variance, uncertainty and synchrony Ranal & Santana 2006, Revista Brasileira de Botânica
//! 29:1. All from memory; checked against printed output and against other libraries' data.

use super::wrong_input::{self, WrongInput};

/// The figures of one series of counts. Nothing where a figure is not defined: no seed or only one germinated, no spread.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Germination {
    /// Seeds that germinated, N.
    pub germinated: u64,
    /// 100 N / n, percent.
    pub germ_pct: f64,
    /// Mean time, days: sum n t / N.
    pub mgt: Option<f64>,
    /// Its variance, days²: sum n (t - mean)² / (N - 1).
    pub var_gt: Option<f64>,
    /// Its standard error, days: square root of variance / N.
    pub se_mgt: Option<f64>,
    /// Coefficient of variation, a share: standard deviation / mean.
    pub cv_gt: Option<f64>,
    /// Median time, days, at (N + 1) / 2. Coolbear et al. 1984.
    pub t50_coolbear: Option<f64>,
    /// Median time, days, at N / 2. Farooq et al. 2005.
    pub t50_farooq: Option<f64>,
    /// Mean rate, per day: 1 / mean time.
    pub mgr: Option<f64>,
    /// Coefficient of velocity: 100 N / sum n t.
    pub cvg: Option<f64>,
    /// Rate index in seeds per day: sum n / t. Maguire 1962.
    pub gri_counts: Option<f64>,
    /// Rate index in percent per day.
    pub gri_percent: Option<f64>,
    /// Uncertainty, bit: - sum f log2 f with f = n / N.
    pub uncertainty: Option<f64>,
    /// Synchrony, 0 to 1: pairs that came together over all pairs.
    pub synchrony: Option<f64>,
    /// Coefficient of uniformity, per day²: N / sum n (t - mean)².
    pub cug: Option<f64>,
}

/// The figures of `counts` newly germinated at each of `times` (days since sowing, going up, the ends of the intervals) of
/// `seeds` sown. A day on which nobody looked is left out, not written as 0.
///
/// # Errors
/// No counts, lists that are not equally long, days that do not go up, more germinated than sown, or no number.
pub fn germination(times: &[f64], counts: &[u32], seeds: u32) -> Result<Germination, WrongInput> {
    if times.is_empty() {
        return Err(WrongInput::Missing { input: "times" });
    }
    if times.len() != counts.len() {
        return Err(WrongInput::Uneven { input: "times", other: "counts" });
    }
    wrong_input::in_order("times", times, false)?;
    wrong_input::seeds("seeds", seeds)?;
    let germinated: u64 = counts.iter().map(|&count| u64::from(count)).sum();
    wrong_input::part_of("counts", germinated, "seeds", u64::from(seeds))?;
    Ok(figures(times, counts, germinated, f64::from(seeds)))
}

fn figures(times: &[f64], counts: &[u32], germinated: u64, seeds: f64) -> Germination {
    let pairs = || times.iter().zip(counts).map(|(&t, &n)| (t, f64::from(n))).filter(|(_, n)| *n > 0.0);
    let all = germinated as f64;
    let (any, several) = (germinated > 0, germinated > 1);
    let days: f64 = pairs().map(|(t, n)| n * t).sum();
    let mgt = any.then(|| days / all);
    let squares = mgt.map(|mean| pairs().map(|(t, n)| n * (t - mean).powi(2)).sum::<f64>());
    let var_gt = squares.filter(|_| several).map(|squares| squares / (all - 1.0));
    let deviation = var_gt.map(f64::sqrt);
    let later = days > 0.0;
    // Germinated on the day of sowing: the rate is without end.
    let gri_counts = pairs().all(|(t, _)| t > 0.0).then(|| pairs().map(|(t, n)| n / t).sum::<f64>());
    Germination {
        germinated,
        germ_pct: 100.0 * all / seeds,
        mgt,
        var_gt,
        se_mgt: var_gt.map(|variance| (variance / all).sqrt()),
        cv_gt: deviation.zip(mgt).filter(|_| later).map(|(deviation, mean)| deviation / mean),
        t50_coolbear: any.then(|| reached(times, counts, (all + 1.0) / 2.0)),
        t50_farooq: any.then(|| reached(times, counts, all / 2.0)),
        mgr: (any && later).then(|| all / days),
        cvg: (any && later).then(|| 100.0 * all / days),
        gri_counts,
        gri_percent: gri_counts.map(|index| 100.0 * index / seeds),
        uncertainty: any.then(|| pairs().map(|(_, n)| n / all).map(|f| -f * f.log2()).sum::<f64>().max(0.0)),
        synchrony: several.then(|| pairs().map(|(_, n)| n * (n - 1.0)).sum::<f64>() / (all * (all - 1.0))),
        cug: squares.filter(|squares| *squares > 0.0).map(|squares| all / squares),
    }
}

/// The day on which the running total reaches `level`, on a straight line between counts, from nothing on day 0.
fn reached(times: &[f64], counts: &[u32], level: f64) -> f64 {
    let (mut day, mut total) = (0.0, 0.0);
    for (&t, &n) in times.iter().zip(counts) {
        let next = total + f64::from(n);
        if next >= level {
            return day + (level - total) * (t - day) / (next - total);
        }
        (day, total) = (t, next);
    }
    day
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn small_enough_for_paper() {
        // 2 on day 4 and 2 on day 8, of 8 seeds.
        let told = germination(&[2.0, 4.0, 8.0], &[0, 2, 2], 8).unwrap();
        assert_eq!((told.germinated, told.germ_pct), (4, 50.0));
        assert_eq!(told.mgt, Some(6.0));
        assert_eq!(told.t50_farooq, Some(4.0));
        // (4 + 1) / 2 = 2.5: from day 4, half a seed of two in four days.
        assert_eq!(told.t50_coolbear, Some(5.0));
        assert_eq!(told.gri_counts, Some(0.75));
        assert_eq!(told.uncertainty, Some(1.0));
        assert!((told.synchrony.unwrap() - 1.0 / 3.0).abs() < 1e-15);
        assert!((told.var_gt.unwrap() - 16.0 / 3.0).abs() < 1e-12);
    }

    #[test]
    fn what_is_not_defined_is_nothing() {
        let none = germination(&[7.0, 14.0], &[0, 0], 50).unwrap();
        assert_eq!((none.germ_pct, none.mgt, none.t50_farooq, none.uncertainty), (0.0, None, None, None));
        assert_eq!(none.gri_counts, Some(0.0));
        let one = germination(&[3.0, 6.0], &[0, 1], 25).unwrap();
        assert_eq!((one.mgt, one.var_gt, one.synchrony, one.cug), (Some(6.0), None, None, None));
        let at_once = germination(&[0.0, 1.0], &[3, 0], 3).unwrap();
        assert_eq!((at_once.mgt, at_once.mgr, at_once.gri_counts, at_once.cv_gt), (Some(0.0), None, None, None));
    }

    #[test]
    fn nonsense_is_refused() {
        assert_eq!(germination(&[], &[], 10), Err(WrongInput::Missing { input: "times" }));
        assert_eq!(germination(&[1.0], &[1, 2], 10), Err(WrongInput::Uneven { input: "times", other: "counts" }));
        assert_eq!(germination(&[2.0, 1.0], &[1, 2], 10), Err(WrongInput::OutOfOrder { input: "times" }));
        assert_eq!(germination(&[1.0, 1.0], &[1, 2], 10), Err(WrongInput::OutOfOrder { input: "times" }));
        let more = WrongInput::MoreThan { input: "counts", part: 12, other: "seeds", whole: 10 };
        assert_eq!(germination(&[1.0, 2.0], &[5, 7], 10), Err(more));
        assert!(germination(&[f64::NAN], &[1], 10).is_err());
        assert!(germination(&[-1.0], &[1], 10).is_err());
        assert!(germination(&[1.0], &[0], 0).is_err());
        assert!(germination(&[1.0], &[0], 1_000_000_000).is_err());
        assert!(germination(&[1.0, 2.0], &[u32::MAX, u32::MAX], 10).is_err());
    }
}
