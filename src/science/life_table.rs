//! How long until something happens, where for some it has not happened yet: the product-limit estimate.
//!
//! Kaplan & Meier 1958, J. Am. Stat. Assoc. 53:457 (from memory). Constant loss in a time of exposure: deaths over the sum of
//! plant-days (occurrence / exposure rate; from memory).

/// So many at one time: to whom it happened, and who were last seen then without it.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct AtTime {
    /// The time, 0 or more.
    pub time: f64,
    /// To so many it happened.
    pub happened: f64,
    /// So many were last looked at then, and it had not happened.
    pub censored: f64,
}

/// The share still waiting after each time at which something happened, by product limit. Those censored at a time were
/// still there when what happened at that time happened.
pub(crate) fn still_waiting(at: &[AtTime]) -> Vec<(f64, f64)> {
    let mut at: Vec<AtTime> =
        at.iter().copied().filter(|one| one.time.is_finite() && one.happened >= 0.0 && one.censored >= 0.0).collect();
    at.sort_by(|a, b| a.time.total_cmp(&b.time));
    let mut waiting: f64 = at.iter().map(|one| one.happened + one.censored).sum();
    let mut share = 1.0;
    let mut steps = Vec::new();
    for together in at.chunk_by(|a, b| a.time == b.time) {
        let happened: f64 = together.iter().map(|one| one.happened).sum();
        let gone: f64 = together.iter().map(|one| one.happened + one.censored).sum();
        if happened > 0.0 && waiting > 0.0 {
            share *= (1.0 - happened / waiting).max(0.0);
            steps.push((together[0].time, share));
        }
        waiting -= gone;
    }
    steps
}

/// The time by which it happened to half: none where more than half are still waiting at the end.
pub(crate) fn median_time(at: &[AtTime]) -> Option<f64> {
    /// Halves of products of fractions are not met to the last digit.
    const NEARLY: f64 = 1e-9;
    still_waiting(at).into_iter().find(|(_, share)| *share <= 0.5 + NEARLY).map(|(time, _)| time)
}

/// The share to whom it happened by a time; none where nobody was looked at.
pub(crate) fn happened_by(at: &[AtTime], time: f64) -> Option<f64> {
    if !at.iter().any(|one| one.happened + one.censored > 0.0) {
        return None;
    }
    let share = still_waiting(at).into_iter().take_while(|(step, _)| *step <= time).last().map_or(1.0, |(_, s)| s);
    Some(1.0 - share)
}

/// The share that lives through so many days where `deaths` came in so many plant-days, at a constant rate; none without
/// exposure.
pub(crate) fn lives_through(deaths: f64, plant_days: f64, days: f64) -> Option<f64> {
    (plant_days > 0.0 && deaths >= 0.0 && days >= 0.0).then(|| (-deaths / plant_days * days).exp())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn one(time: f64, happened: f64, censored: f64) -> AtTime {
        AtTime { time, happened, censored }
    }

    /// Freireich et al. 1963, remission of 21 patients on 6-MP, the table every textbook works through (from memory): median
    /// 23 weeks, S(6) = 18/21 = 0.857, S(7) = 0.807, S(10) = 0.753, S(13) = 0.690, S(16) = 0.627, S(22) = 0.538, S(23) = 0.448.
    #[test]
    fn the_remission_times_of_the_textbooks() {
        let mut at = vec![one(6.0, 3.0, 1.0), one(10.0, 1.0, 1.0), one(32.0, 0.0, 2.0)];
        at.extend([7.0, 13.0, 16.0, 22.0, 23.0].map(|time| one(time, 1.0, 0.0)));
        at.extend([9.0, 11.0, 17.0, 19.0, 20.0, 25.0, 34.0, 35.0].map(|time| one(time, 0.0, 1.0)));
        let told = still_waiting(&at);
        let known =
            [(6.0, 0.857), (7.0, 0.807), (10.0, 0.753), (13.0, 0.690), (16.0, 0.627), (22.0, 0.538), (23.0, 0.448)];
        assert_eq!(told.len(), known.len());
        for ((time, share), (on, known)) in told.iter().zip(known) {
            assert!(*time == on && (share - known).abs() < 6e-4, "{time}: {share}");
        }
        assert_eq!(median_time(&at), Some(23.0));
        assert!((happened_by(&at, 12.0).unwrap() - (1.0 - 0.753)).abs() < 6e-4);
    }

    #[test]
    fn what_never_happened_has_no_median_and_nobody_no_share() {
        assert_eq!(median_time(&[one(10.0, 1.0, 0.0), one(20.0, 0.0, 3.0)]), None);
        assert_eq!(happened_by(&[], 10.0), None);
        assert_eq!(happened_by(&[one(5.0, 0.0, 2.0)], 10.0), Some(0.0));
        assert_eq!(median_time(&[one(10.0, 1.0, 0.0), one(20.0, 1.0, 0.0)]), Some(10.0));
    }

    #[test]
    fn a_constant_loss_by_plant_days() {
        // 10 dead in 10,000 plant-days: 0.1 % a day, exp(-0.2) in 200 days.
        assert!((lives_through(10.0, 10_000.0, 200.0).unwrap() - 0.8187).abs() < 1e-4);
        assert_eq!(lives_through(0.0, 50.0, 200.0), Some(1.0));
        assert_eq!(lives_through(1.0, 0.0, 200.0), None);
    }
}
