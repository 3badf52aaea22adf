//! Houses that were sold: which of them are close in size, and their price per square foot.

use jiff::civil::Date;
use rust_decimal::Decimal;

use crate::house::Sale;
use crate::units::area::WrittenArea;
use crate::units::decimal::thousands;
use crate::units::money::Money;
use crate::value::gap::Gap;

/// The usual band for how near in size a comparable should be, in percent of the house's size (common practice).
pub const USUAL_BAND: u8 = 10;

/// The comparables in the file, in file order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Comparables {
    pub(crate) band: u8,
    pub(crate) list: Vec<Comparable>,
    pub(crate) unit_price: Option<UnitPrice>,
}

/// A house that was sold, compared with this one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Comparable {
    pub(crate) name: String,
    pub(crate) sq_ft: i64,
    pub(crate) recorded: Option<i64>,
    pub(crate) sold: Money,
    pub(crate) on: Date,
    pub(crate) unit_price: Money,
    pub(crate) near_record: Option<bool>,
    pub(crate) near_measured: Option<bool>,
}

/// Lowest, median and highest unit price, in money per square foot.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnitPrice {
    pub(crate) low: Priced,
    pub(crate) median: Priced,
    pub(crate) high: Priced,
    pub(crate) count: usize,
    pub(crate) is_of_near_ones: bool,
}

/// A unit price with the calculation that gives it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Priced {
    price: Money,
    working: String,
}

impl Comparables {
    pub(crate) fn of(sales: &[Sale], gap: Option<&Gap>, measured: i64, band: u8) -> Comparables {
        let list: Vec<Comparable> =
            sales.iter().filter_map(|sale| Comparable::of(sale, gap, measured, band)).collect();
        let unit_price = UnitPrice::of(&list);
        Comparables { band, list, unit_price }
    }

    /// How near in size a comparable has to be to count as near, in percent of the house's size.
    #[must_use]
    pub fn band(&self) -> u8 {
        self.band
    }

    /// The comparables, in file order.
    #[must_use]
    pub fn list(&self) -> &[Comparable] {
        &self.list
    }

    /// The unit price of the comparables near the measured size, or of all if none is near; `None` if there are none.
    #[must_use]
    pub fn unit_price(&self) -> Option<&UnitPrice> {
        self.unit_price.as_ref()
    }
}

impl Comparable {
    fn of(sale: &Sale, gap: Option<&Gap>, measured: i64, band: u8) -> Option<Comparable> {
        let whole = |area: WrittenArea| area.area().whole_sq_ft();
        let sq_ft = whole(sale.size);
        let recorded = sale.recorded.map(whole);
        let near = |size: i64, house: i64| (house > 0).then(|| is_near(size, house, band));
        Some(Comparable {
            name: sale.name.text.clone(),
            sq_ft,
            recorded,
            sold: sale.sold,
            on: sale.on,
            unit_price: sale.sold.with(sale.sold.amount().checked_div(Decimal::from(sq_ft))?),
            near_record: gap.and_then(|gap| near(recorded.unwrap_or(sq_ft), gap.record())),
            near_measured: near(sq_ft, measured),
        })
    }

    /// Its name as typed.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its size in whole square feet.
    #[must_use]
    pub fn sq_ft(&self) -> i64 {
        self.sq_ft
    }

    /// Its size on the record in whole square feet; `None` if the file has none.
    #[must_use]
    pub fn recorded_sq_ft(&self) -> Option<i64> {
        self.recorded
    }

    /// The price it was sold for.
    #[must_use]
    pub fn sold(&self) -> Money {
        self.sold
    }

    /// The day of the sale.
    #[must_use]
    pub fn on(&self) -> Date {
        self.on
    }

    /// Its price divided by its size, in money per square foot; the price includes the land.
    #[must_use]
    pub fn unit_price(&self) -> Money {
        self.unit_price
    }

    /// Whether its recorded size (or if there is none, its size) is near the house's recorded size; `None` without a
    /// record of the house.
    #[must_use]
    pub fn is_near_record(&self) -> Option<bool> {
        self.near_record
    }

    /// Whether its size is near the house's measured size; `None` if nothing was measured.
    #[must_use]
    pub fn is_near_measured(&self) -> Option<bool> {
        self.near_measured
    }
}

/// Whether a size is within `band` percent of the house's size, limits included.
fn is_near(size: i64, house: i64, band: u8) -> bool {
    let (apart, house) = (i128::from(size - house).abs(), i128::from(house));
    apart * 100 <= house * i128::from(band)
}

impl UnitPrice {
    fn of(list: &[Comparable]) -> Option<UnitPrice> {
        let near: Vec<&Comparable> =
            list.iter().filter(|one| one.near_measured == Some(true)).collect();
        let is_of_near_ones = !near.is_empty();
        let mut sorted = if is_of_near_ones { near } else { list.iter().collect() };
        sorted.sort_by_key(|one| one.unit_price);
        let (low, high) = (sorted.first()?.priced(), sorted.last()?.priced());
        let count = sorted.len();
        Some(UnitPrice { low, median: median(&sorted)?, high, count, is_of_near_ones })
    }

    /// The lowest price, in money per square foot.
    #[must_use]
    pub fn low(&self) -> Money {
        self.low.price
    }

    /// The median, in money per square foot.
    #[must_use]
    pub fn median(&self) -> Money {
        self.median.price
    }

    /// The highest price, in money per square foot.
    #[must_use]
    pub fn high(&self) -> Money {
        self.high.price
    }

    /// The calculations that give the lowest, the median and the highest price: `$398,000 ÷ 1,925`.
    pub(crate) fn workings(&self) -> [&str; 3] {
        [&self.low, &self.median, &self.high].map(|priced| priced.working.as_str())
    }

    /// The number of comparables used.
    #[must_use]
    pub fn count(&self) -> usize {
        self.count
    }

    /// Whether only those near the measured size were used.
    #[must_use]
    pub fn is_of_near_ones(&self) -> bool {
        self.is_of_near_ones
    }
}

impl Comparable {
    fn priced(&self) -> Priced {
        let working = format!("{} ÷ {}", self.sold, thousands(self.sq_ft));
        Priced { price: self.unit_price, working }
    }
}

/// The middle of a sorted list, or the mean of the two in the middle.
fn median(sorted: &[&Comparable]) -> Option<Priced> {
    let upper = sorted.get(sorted.len() >> 1)?.priced();
    let lower = sorted.get(sorted.len().checked_sub(1)? >> 1)?.priced();
    if sorted.len() & 1 == 1 {
        return Some(upper);
    }
    let sum = lower.price.amount() + upper.price.amount();
    let price = upper.price.with(sum.checked_div(Decimal::TWO)?);
    Some(Priced { price, working: format!("({} + {}) ÷ 2", lower.working, upper.working) })
}
