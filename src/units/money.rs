//! Money: dollars, exact; rounded once and only for showing.
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

/// The largest sum that can be typed: far beyond any house, so that products cannot overflow.
const LARGEST_TYPED: i64 = 100_000_000_000;

/// A sum of money.
///
/// # Units
///
/// US dollars, decimals being cents and finer; below zero only as a difference.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Money(Decimal);

impl Money {
    /// Nothing.
    pub const ZERO: Money = Money(Decimal::ZERO);

    /// A sum as somebody wrote it: over 0, whole cents; none if it is not that, or too large.
    pub(crate) fn written(dollars: Decimal) -> Option<Money> {
        let dollars = dollars.normalize();
        let in_bounds = dollars > Decimal::ZERO && dollars <= Decimal::from(LARGEST_TYPED);
        (in_bounds && dollars.scale() <= 2).then_some(Money(dollars))
    }

    /// A sum that was worked out, with all its digits.
    pub const fn figured(dollars: Decimal) -> Money {
        Money(dollars)
    }

    /// The sum in dollars, not rounded.
    pub const fn dollars(self) -> Decimal {
        self.0
    }

    /// The sum in whole dollars, halves away from zero: the one rounding of a printed figure. None beyond what 64 bits hold.
    pub fn whole_dollars(self) -> Option<i64> {
        self.rounded(0).to_i64()
    }

    /// `$20,330`: to the whole dollar.
    pub fn whole_text(self) -> String {
        Money(self.rounded(0)).to_string()
    }

    /// `$204.06`: to the cent, as unit prices are given.
    pub fn cents_text(self) -> String {
        let mut cents = self.rounded(2);
        cents.rescale(2);
        Money(cents).to_string()
    }

    /// `20330.314331`: up to six decimals, trailing zeros cut, as in JSON.
    pub fn decimal_text(self) -> String {
        self.rounded(6).normalize().to_string()
    }

    fn rounded(self, decimals: u32) -> Decimal {
        self.0.round_dp_with_strategy(decimals, RoundingStrategy::MidpointAwayFromZero)
    }
}

impl fmt::Display for Money {
    /// `$412,000`, `$412,000.50`, with a minus before the mark for what is below zero.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let digits = self.0.abs().to_string();
        let (whole, cents) = digits.split_once('.').unwrap_or((&digits, ""));
        let sign = if self.0.is_sign_negative() && !self.0.is_zero() { "-" } else { "" };
        write!(f, "{sign}${}", group_thousands(whole))?;
        if cents.is_empty() { Ok(()) } else { write!(f, ".{cents:0<2}") }
    }
}
