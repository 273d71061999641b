//! The two curves.

/// A form of growth.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum GrowthModel {
    /// Even on both sides of the fastest day.
    Logistic,
    /// Fast first, then long.
    Gompertz,
}

impl GrowthModel {
    /// Both.
    pub const ALL: [GrowthModel; 2] = [GrowthModel::Logistic, GrowthModel::Gompertz];

    /// Share of the final height at `u` = k (t - t0), with its derivative by u.
    pub(super) fn shape(self, u: f64) -> (f64, f64) {
        let e = (-u).exp();
        match self {
            GrowthModel::Logistic => {
                let share = 1.0 / (1.0 + e);
                (share, share * (1.0 - share))
            }
            GrowthModel::Gompertz => {
                let share = (-e).exp();
                // Far below the beginning e has no end and the share is 0.
                (share, if share > 0.0 { share * e } else { 0.0 })
            }
        }
    }

    /// The u at which a share (above 0, below 1) is reached, with its derivative by the share.
    fn back(self, share: f64) -> (f64, f64) {
        match self {
            GrowthModel::Logistic => (-(1.0 / share - 1.0).ln(), 1.0 / (share * (1.0 - share))),
            GrowthModel::Gompertz => (-(-share.ln()).ln(), -1.0 / (share * share.ln())),
        }
    }
}

/// A curve of growth.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct GrowthCurve {
    /// Its form.
    pub model: GrowthModel,
    /// Height it ends at, in the unit of the measurements, above 0.
    pub a: f64,
    /// How fast, per day, above 0.
    pub k: f64,
    /// Day of fastest growth.
    pub t0: f64,
}

impl GrowthCurve {
    /// Height on day `t`.
    pub fn height(self, t: f64) -> f64 {
        self.a * self.model.shape(self.k * (t - self.t0)).0
    }

    /// Day on which `target` (above 0) is reached, with its derivatives by A, k and t0; nothing at or above the end.
    pub(super) fn day_of(self, target: f64) -> Option<(f64, [f64; 3])> {
        let share = target / self.a;
        if !(share > 0.0 && share < 1.0) {
            return None;
        }
        let (u, by_share) = self.model.back(share);
        let day = self.t0 + u / self.k;
        Some((day, [-by_share * share / (self.a * self.k), -u / (self.k * self.k), 1.0]))
    }
}
