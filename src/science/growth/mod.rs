//! How plants grow tall, and when they will be tall enough: logistic and Gompertz curves by least squares.
//!
//! Logistic y = A / (1 + exp(-k (t - t0))); Gompertz y = A exp(-exp(-k (t - t0))): A the height they end at, k how fast, t0
//! the day of fastest growth. Variances s² (J'J)^-1 with s² = RSS / (n - 3); the day of reaching a height by the delta
//! method with Student's t. Sources: Verhulst 1838, Gompertz 1825; fitting: Bates & Watts 1988, Nonlinear Regression
//! Analysis (all from memory).

mod curve;
mod fit;

pub use curve::{GrowthCurve, GrowthModel};
pub use fit::{GrowthFit, Reached, fit_growth};
