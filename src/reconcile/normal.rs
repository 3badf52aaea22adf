//! How likely a figure is if totals are normally distributed about a mean.
//!
//! # Units
//!
//! Square feet; likelihoods are per whole square foot, as figures are published.
#![expect(clippy::float_arithmetic, reason = "likelihoods are floats")]

/// 1/√(2π): the maximum density of the standard normal distribution.
const TOP: f64 = std::f64::consts::FRAC_2_SQRT_PI * std::f64::consts::FRAC_1_SQRT_2 / 2.0;
/// The variance of rounding a total to the whole square foot: it is uniform over one square foot.
pub(super) const OF_TOTAL: f64 = 1.0 / 12.0;

/// A normal distribution with mean 0.
#[derive(Clone, Copy, Debug)]
pub(super) struct Normal {
    sigma: f64,
}

impl Normal {
    /// The distribution with this variance in square feet squared, plus that of rounding the total.
    pub(super) fn of(variance: f64) -> Normal {
        Normal { sigma: (variance + OF_TOTAL).sqrt() }
    }

    /// The likelihood of a figure that is `off` square feet from the mean.
    pub(super) fn at(self, off: f64) -> f64 {
        let z = off / self.sigma;
        if z.abs() > FARTHEST { 0.0 } else { TOP / self.sigma * libm::exp(-0.5 * z * z) }
    }

    /// The probability of being between `low` and `high` square feet off.
    pub(super) fn within(self, low: f64, high: f64) -> f64 {
        let below = |x: f64| 0.5 * libm::erfc(-x / (self.sigma * std::f64::consts::SQRT_2));
        below(high) - below(low)
    }

    /// The highest likelihood of any figure.
    pub(super) fn most(self) -> f64 {
        TOP / self.sigma
    }
}

/// The distance from the mean, in standard deviations, beyond which a figure counts as impossible.
const FARTHEST: f64 = 6.0;

/// The distance from the mean in square feet beyond which every likelihood is 0, slightly rounded up.
pub(super) fn reach(variance: f64) -> f64 {
    FARTHEST * (variance + OF_TOTAL).sqrt() * (1.0 + 1e-9)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_beyond_the_reach_is_likely() {
        for variance in [0.0, 1.0, 30.0, 4_000.0] {
            let (normal, reach) = (Normal::of(variance), reach(variance));
            assert!(normal.at(reach) <= 0.0 && normal.at(-reach) <= 0.0);
            assert!(normal.at(reach * (1.0 - 1e-8)) > 0.0);
        }
    }

    #[test]
    fn likelihoods_of_all_whole_figures_add_up_to_one() {
        for variance in [1.0, 30.0, 400.0] {
            let normal = Normal::of(variance);
            let one_by_one: f64 = (-400..=400).map(|off| normal.at(f64::from(off))).sum();
            assert!((one_by_one - 1.0).abs() < 1e-3, "{variance}: {one_by_one}");
            let tens = (-40..=40).map(|i| f64::from(10 * i));
            let by_tens: f64 = tens.map(|off| normal.within(off - 5.0, off + 5.0)).sum();
            assert!((by_tens - 1.0).abs() < 1e-3, "{variance}: {by_tens}");
        }
    }
}
