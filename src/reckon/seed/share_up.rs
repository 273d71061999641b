//! The usual share of what comes up that is up by a day.

/// The odds of 95 % against the rest, at the species' last day. Ours.
const LATE_ODDS: f64 = 19.0;
/// Steepness where the profile's last day does not lie behind its half day. Ours.
const STEEP_OTHERWISE: f64 = 8.0;

/// Share of all that will come up that is up so many days after sowing: half at `half`, 95 % at `late`, on a
/// log-logistic curve (ours).
pub(crate) fn share_up(days: f64, half: f64, late: f64) -> f64 {
    if days <= 0.0 || half <= 0.0 {
        return 0.0;
    }
    let steep = if late > half { LATE_ODDS.ln() / (late / half).ln() } else { STEEP_OTHERWISE };
    1.0 / (1.0 + (days / half).powf(-steep))
}
