//! Two simple ways to convert the gap into money: in proportion to the value, and by the price per square foot of
//! comparables.
//!
//! Neither is the value of the house. Both are common practice, and simple enough for a pocket calculator.

use rust_decimal::Decimal;

use crate::units::decimal::thousands;
use crate::units::money::Money;
use crate::value::comparables::UnitPrice;
use crate::value::gap::Gap;

/// A way to convert the gap into money.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// In proportion: the gap's share of the recorded area, times the improvement value.
    Proportion,
    /// By unit price: the gap times the comparables' price per square foot.
    UnitPrice,
}

impl Method {
    /// Its stable key in JSON.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Method::Proportion => "in proportion",
            Method::UnitPrice => "by unit price",
        }
    }
}

/// The amount that one way gives for the gap.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    pub(crate) method: Method,
    pub(crate) amount: Money,
    pub(crate) range: Option<(Money, Money)>,
    pub(crate) working: String,
    pub(crate) range_working: Option<(String, String)>,
}

impl Way {
    /// The ways for which the file has figures; empty if the record is not larger.
    pub(crate) fn all(gap: &Gap, improvement: Option<Money>, unit: Option<&UnitPrice>) -> Vec<Way> {
        if gap.sq_ft() <= 0 {
            return Vec::new();
        }
        let proportion = improvement.and_then(|improvement| Way::in_proportion(improvement, gap));
        let unit_price = unit.map(|unit| Way::by_unit_price(unit, gap));
        proportion.into_iter().chain(unit_price).collect()
    }

    /// Improvement value × gap ÷ recorded area.
    fn in_proportion(improvement: Money, gap: &Gap) -> Option<Way> {
        let times = improvement.amount() * Decimal::from(gap.sq_ft());
        let gives = times.checked_div(Decimal::from(gap.record()))?;
        let (sq_ft, record) = (thousands(gap.sq_ft()), thousands(gap.record()));
        Some(Way {
            method: Method::Proportion,
            amount: improvement.with(gives),
            range: None,
            working: format!("{improvement} × {sq_ft} ÷ {record}"),
            range_working: None,
        })
    }

    /// Unit price × gap: at the median, with the lowest and highest as the range.
    fn by_unit_price(unit: &UnitPrice, gap: &Gap) -> Way {
        let sq_ft = Decimal::from(gap.sq_ft());
        let gives = |price: Money| price.with(price.amount() * sq_ft);
        let [low, median, high] =
            unit.workings().map(|working| format!("{working} × {}", thousands(gap.sq_ft())));
        let has_range = unit.low() < unit.high();
        Way {
            method: Method::UnitPrice,
            amount: gives(unit.median()),
            range: has_range.then(|| (gives(unit.low()), gives(unit.high()))),
            working: median,
            range_working: has_range.then_some((low, high)),
        }
    }

    /// The method that was used.
    #[must_use]
    pub fn method(&self) -> Method {
        self.method
    }

    /// The amount for the gap, not rounded.
    #[must_use]
    pub fn amount(&self) -> Money {
        self.amount
    }

    /// The amounts at the lowest and the highest unit price; `None` if they do not differ.
    #[must_use]
    pub fn range(&self) -> Option<(Money, Money)> {
        self.range
    }

    /// The calculation that gives the amount: `$318,000 × 120 ÷ 1,877`.
    #[must_use]
    pub fn working(&self) -> &str {
        &self.working
    }

    /// The calculations for the range.
    pub(crate) fn range_working(&self) -> Option<&(String, String)> {
        self.range_working.as_ref()
    }
}
