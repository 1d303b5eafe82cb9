//! Samples, distributions, statistics, expressions, zeros, least squares, constrained descent, money over time; does not know
//! axles, models, studies or files.
//!
//! Numbers have no units here: what they measure is the caller's to know. Everything is the same on every machine, and on any
//! number of threads.
//!
//! ```text
//! Sampler --point(i)--> shares of the unit cube --Distribution::quantile--> values
//! values --Sampled, Histogram, variance_indices--> estimates with their intervals
//! residuals --least_squares--> LeastSquares --Precision::of--> what they determine
//! goal and limits --Smooth::descend--> Descent
//! function and start --nearest_zero--> zero
//! readings and hypotheses --Readings, JointNormal, posterior, mutual_information--> shares of the hypotheses, and what a reading would tell
//! cash flows --net_present_value, payback_time--> what they are worth, and when they have paid back
//! ```
//!
//! # Example
//! The mean of a sum of two values that scatter, from a sample of Sobol's sequence:
//! ```
//! use axlebow_numerics::*;
//! let length = Distribution::Uniform { from: 1.0, to: 3.0 };
//! let open = [f64::NEG_INFINITY, f64::INFINITY];
//! let offset = Distribution::Normal { mean: 0.5, deviation: 0.1, range: open };
//! let sum = Expression::read("length + offset", &["length".to_owned(), "offset".to_owned()])?;
//! let sampler = Sampler::new(Spread::Sobol, (1024, 2), (1, 0));
//! let value = |place| {
//!     let share = sampler.point(place);
//!     sum.value(&[length.quantile(share[0]), offset.quantile(share[1])])
//! };
//! let values = (0..1024).map(value).collect();
//! let mean = Sampled { replicates: vec![values], confidence: 0.95 }.mean();
//! assert!((mean.value - 2.5).abs() < 1e-3);
//! # Ok::<(), ExpressionError>(())
//! ```

mod descent;
mod distribution;
mod estimated;
mod expression;
mod front;
mod histogram;
mod indices;
mod joint_normal;
mod least_squares;
mod money;
mod percentile;
mod posterior;
mod precision;
mod reliability;
mod sample;
mod shapley;
mod spacing;
mod straightened;
mod zero;

pub use descent::{Beside, Descent, Smooth, SmoothValues};
pub use distribution::Distribution;
pub use estimated::{Estimated, Sampled};
pub use expression::{Expression, ExpressionError, ExpressionFault, is_name, plain_name};
pub use front::nondominated;
pub use histogram::Histogram;
pub use indices::{Index, variance_indices};
pub use joint_normal::{JointNormal, chi_squared_tail};
pub use least_squares::{LeastSquares, Residuals, derivatives, least_squares};
pub use money::{
    CashFlow, annuity_factor, balances, discount_factor, equal_years, net_present_value, payback_time,
};
pub use percentile::{order_interval, percentile};
pub use posterior::{entropy, log_sum_exp, mutual_information, posterior};
pub use precision::{Precision, UNFELT};
pub use reliability::{ReliabilityBin, reliability};
pub use sample::{MOST_DIMENSIONS, Sampler, Spread, resampled};
pub use shapley::shapley;
pub use spacing::{Spacing, thinned, thinned_places};
pub use straightened::{Readings, Straightened};
pub use zero::nearest_zero;
