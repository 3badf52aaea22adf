//! Exact amounts of money, rounded only once, when a figure is shown.
//!
//! ```
//! use fairfoot::units::{Currency, Money};
//! use rust_decimal::Decimal;
//!
//! // 318,000 × 120 ÷ 1,877 does not divide evenly.
//! let share = Decimal::from(318_000 * 120) / Decimal::from(1_877);
//! let share = Money::new(share, Currency::Dollar);
//! assert_eq!(share.whole_text(), "$20,330");
//! assert_eq!(share.decimal_text(), "20330.314331");
//! ```

use std::fmt;

use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};

use crate::units::decimal::group_thousands;

/// The largest amount that can be typed: far more than any house is worth, and small enough that products cannot
/// overflow.
const LARGEST_TYPED: i64 = 100_000_000_000;

/// The currency sign before an amount. Amounts are printed with the sign they were typed with, never converted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Currency {
    /// No sign was typed.
    #[default]
    None,
    /// `$`
    Dollar,
    /// `€`
    Euro,
    /// `£`
    Pound,
}

impl Currency {
    /// The sign, or nothing.
    #[must_use]
    pub const fn sign(self) -> &'static str {
        match self {
            Currency::None => "",
            Currency::Dollar => "$",
            Currency::Euro => "€",
            Currency::Pound => "£",
        }
    }
}

/// An amount of money.
///
/// # Units
///
/// Whole units of the currency with decimals, not limited to whole cents; negative only as a difference.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Money {
    amount: Decimal,
    currency: Currency,
}

impl Money {
    /// An amount as written in a sides file. `None` unless it is positive, in whole cents, and not too large.
    pub(crate) fn written(amount: Decimal, currency: Currency) -> Option<Money> {
        let amount = amount.normalize();
        let in_bounds = amount > Decimal::ZERO && amount <= Decimal::from(LARGEST_TYPED);
        (in_bounds && amount.scale() <= 2).then_some(Money { amount, currency })
    }

    /// A computed amount, with all its digits.
    #[must_use]
    pub const fn new(amount: Decimal, currency: Currency) -> Money {
        Money { amount, currency }
    }

    /// Another amount in the same currency, with all its digits.
    #[must_use]
    pub const fn with(self, amount: Decimal) -> Money {
        Money { amount, currency: self.currency }
    }

    /// The unrounded amount.
    #[must_use]
    pub const fn amount(self) -> Decimal {
        self.amount
    }

    pub(crate) const fn currency_mut(&mut self) -> &mut Currency {
        &mut self.currency
    }

    /// The currency in which it was typed.
    #[must_use]
    pub const fn currency(self) -> Currency {
        self.currency
    }

    /// The amount to the whole unit, halves away from zero. `None` if it does not fit in 64 bits.
    #[must_use]
    pub fn whole(self) -> Option<i64> {
        self.rounded(0).to_i64()
    }

    /// The amount to the whole dollar, euro or pound: `$20,330`.
    #[must_use]
    pub fn whole_text(self) -> String {
        self.with(self.rounded(0)).to_string()
    }

    /// The amount to the cent: `$204.06`.
    #[must_use]
    pub fn cents_text(self) -> String {
        let mut cents = self.rounded(2);
        cents.rescale(2);
        self.with(cents).to_string()
    }

    /// The amount with up to six decimals and no trailing zeros, as in JSON: `20330.314331`.
    #[must_use]
    pub fn decimal_text(self) -> String {
        self.rounded(6).normalize().to_string()
    }

    fn rounded(self, decimals: u32) -> Decimal {
        self.amount.round_dp_with_strategy(decimals, RoundingStrategy::MidpointAwayFromZero)
    }
}

impl fmt::Display for Money {
    /// `$412,000` or `$412,000.50`, with the minus sign of a negative amount before the sign of the currency.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let digits = self.amount.abs().to_string();
        let (whole, cents) = digits.split_once('.').unwrap_or((&digits, ""));
        let minus = if self.amount.is_sign_negative() && !self.amount.is_zero() { "-" } else { "" };
        write!(f, "{minus}{}{}", self.currency.sign(), group_thousands(whole))?;
        if cents.is_empty() { Ok(()) } else { write!(f, ".{cents:0<2}") }
    }
}
