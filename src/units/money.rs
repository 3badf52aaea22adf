//! Exact amounts in dollars, rounded only once, when a figure is shown.
//!
//! ```
//! use fairfoot::units::Money;
//! use rust_decimal::Decimal;
//!
//! // 318,000 × 120 ÷ 1,877 does not divide evenly.
//! let share = Decimal::from(318_000 * 120) / Decimal::from(1_877);
//! assert_eq!(Money::figured(share).whole_text(), "$20,330");
//! assert_eq!(Money::figured(share).decimal_text(), "20330.314331");
//! ```

use std::fmt;

use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};

use crate::units::decimal::group_thousands;

/// The largest amount that can be typed: far more than any house is worth, and small enough that products cannot
/// overflow.
const LARGEST_TYPED: i64 = 100_000_000_000;

/// An amount of money.
///
/// # Units
///
/// US dollars with decimals, not limited to whole cents; negative only as a difference.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Money(Decimal);

impl Money {
    /// No money.
    pub const ZERO: Money = Money(Decimal::ZERO);

    /// An amount as written in a sides file. `None` unless it is positive, in whole cents, and not too large.
    pub(crate) fn written(dollars: Decimal) -> Option<Money> {
        let dollars = dollars.normalize();
        let in_bounds = dollars > Decimal::ZERO && dollars <= Decimal::from(LARGEST_TYPED);
        (in_bounds && dollars.scale() <= 2).then_some(Money(dollars))
    }

    /// A computed amount, with all its digits.
    #[must_use]
    pub const fn figured(dollars: Decimal) -> Money {
        Money(dollars)
    }

    /// The unrounded amount in dollars.
    #[must_use]
    pub const fn dollars(self) -> Decimal {
        self.0
    }

    /// The amount in whole dollars, halves away from zero. `None` if it does not fit in 64 bits.
    #[must_use]
    pub fn whole_dollars(self) -> Option<i64> {
        self.rounded(0).to_i64()
    }

    /// The amount to the whole dollar: `$20,330`.
    #[must_use]
    pub fn whole_text(self) -> String {
        Money(self.rounded(0)).to_string()
    }

    /// The amount to the cent: `$204.06`.
    #[must_use]
    pub fn cents_text(self) -> String {
        let mut cents = self.rounded(2);
        cents.rescale(2);
        Money(cents).to_string()
    }

    /// The amount with up to six decimals and no trailing zeros, as in JSON: `20330.314331`.
    #[must_use]
    pub fn decimal_text(self) -> String {
        self.rounded(6).normalize().to_string()
    }

    fn rounded(self, decimals: u32) -> Decimal {
        self.0.round_dp_with_strategy(decimals, RoundingStrategy::MidpointAwayFromZero)
    }
}

impl fmt::Display for Money {
    /// `$412,000` or `$412,000.50`, with the minus sign of a negative amount before the `$`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let digits = self.0.abs().to_string();
        let (whole, cents) = digits.split_once('.').unwrap_or((&digits, ""));
        let sign = if self.0.is_sign_negative() && !self.0.is_zero() { "-" } else { "" };
        write!(f, "{sign}${}", group_thousands(whole))?;
        if cents.is_empty() { Ok(()) } else { write!(f, ".{cents:0<2}") }
    }
}
