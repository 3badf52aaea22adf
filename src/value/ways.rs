//! Two plain ways from size to value: in proportion, and by what a square foot of others fetched.
//!
//! Neither is the value. Both are common practice, and simple on purpose: a pocket calculator follows them.

use rust_decimal::Decimal;

use crate::units::decimal::thousands;
use crate::units::money::Money;
use crate::value::comparables::UnitPrice;
use crate::value::gap::Gap;

/// Which way it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// The gap's share of the recorded area, of the improvement value.
    Proportion,
    /// The gap at the comparables' unit price.
    UnitPrice,
}

impl Method {
    /// A word for it that does not change, as in JSON.
    pub const fn key(self) -> &'static str {
        match self {
            Method::Proportion => "in proportion",
            Method::UnitPrice => "by unit price",
        }
    }
}

/// What one way gives for the gap.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    pub(crate) method: Method,
    pub(crate) gives: Money,
    pub(crate) range: Option<(Money, Money)>,
    pub(crate) working: String,
    pub(crate) range_working: Option<(String, String)>,
}

impl Way {
    /// The ways that the file has the figures for; none where the record is not larger.
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
        let times = improvement.dollars() * Decimal::from(gap.sq_ft());
        let gives = times.checked_div(Decimal::from(gap.record()))?;
        let (sq_ft, record) = (thousands(gap.sq_ft()), thousands(gap.record()));
        Some(Way {
            method: Method::Proportion,
            gives: Money::figured(gives),
            range: None,
            working: format!("{improvement} × {sq_ft} ÷ {record}"),
            range_working: None,
        })
    }

    /// Unit price × gap: the median, with the lowest and the highest beside it.
    fn by_unit_price(unit: &UnitPrice, gap: &Gap) -> Way {
        let sq_ft = Decimal::from(gap.sq_ft());
        let gives = |price: Money| Money::figured(price.dollars() * sq_ft);
        let [low, median, high] =
            unit.workings().map(|working| format!("{working} × {}", thousands(gap.sq_ft())));
        let has_range = unit.low() < unit.high();
        Way {
            method: Method::UnitPrice,
            gives: gives(unit.median()),
            range: has_range.then(|| (gives(unit.low()), gives(unit.high()))),
            working: median,
            range_working: has_range.then_some((low, high)),
        }
    }

    /// Which way.
    pub fn method(&self) -> Method {
        self.method
    }

    /// What it gives for the gap, not rounded.
    pub fn gives(&self) -> Money {
        self.gives
    }

    /// The same at the lowest and at the highest unit price, where they differ.
    pub fn range(&self) -> Option<(Money, Money)> {
        self.range
    }

    /// The sum as a pocket calculator takes it: `$318,000 × 120 ÷ 1,877`.
    pub fn working(&self) -> &str {
        &self.working
    }

    /// The sums of the range.
    pub(crate) fn range_working(&self) -> Option<&(String, String)> {
        self.range_working.as_ref()
    }
}
