//! The curve of emergence.

/// A log-logistic curve of emergence.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Curve {
    /// Share of the sown seeds that comes up in the end, 0 to 1.
    pub d: f64,
    /// Steepness, above 0.
    pub b: f64,
    /// Median day of emergence of those that come up, above 0.
    pub t50: f64,
}

impl Curve {
    /// Share of those that come up in the end that is up on `day` since sowing, 0 to 1.
    pub fn up(&self, day: f64) -> f64 {
        if day <= 0.0 { 0.0 } else { logistic(self.b * (day / self.t50).ln()) }
    }

    /// Share of the sown seeds that is up on `day` since sowing, 0 to d.
    pub fn share(&self, day: f64) -> f64 {
        self.d * self.up(day)
    }

    /// Day on which `share` (above 0, below 1) of those that come up is up.
    pub fn day_of(&self, share: f64) -> f64 {
        self.t50 * ((share / (1.0 - share)).ln() / self.b).exp()
    }

    /// Chance that a seed not up on day `now` is up on day `then` (not before `now`).
    pub fn chance_between(&self, now: f64, then: f64) -> f64 {
        let left = 1.0 - self.share(now);
        if left <= 0.0 { 0.0 } else { ((self.share(then) - self.share(now)) / left).clamp(0.0, 1.0) }
    }
}

/// 1 / (1 + exp(-u)), exact at both ends.
pub(super) fn logistic(u: f64) -> f64 {
    if u >= 0.0 {
        1.0 / (1.0 + (-u).exp())
    } else {
        let e = u.exp();
        e / (1.0 + e)
    }
}

/// ln of [`logistic`].
pub(super) fn ln_logistic(u: f64) -> f64 {
    if u >= 0.0 { -(-u).exp().ln_1p() } else { u - u.exp().ln_1p() }
}
