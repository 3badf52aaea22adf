//! Areas: exact, rounded once and only for showing.
//!
//! ```
//! use fairfoot::{Area, Length};
//!
//! let floor = Area::rectangle("28'".parse()?, "42'".parse()?);
//! assert_eq!(floor.whole_sq_ft(), 1176);
//! assert_eq!(floor.sq_ft_text(), "1176");
//! # Ok::<(), fairfoot::Error>(())
//! ```
#![expect(
    clippy::integer_division,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::float_arithmetic,
    reason = "the one rounding of a printed area, and the way to and from floats, live here"
)]

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, Neg, Sub};

use rust_decimal::Decimal;

use crate::length::Length;

/// An area in halves of a square nanometre, so that a triangle is whole too; below zero only as a difference.
///
/// # Units
///
/// 1 sq ft = 92,903,040,000,000,000 nm² exactly, since 1 ft = 0.3048 m.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Area(i128);

impl Area {
    /// Nothing.
    pub const ZERO: Area = Area(0);
    /// One square foot, 0.09290304 m² exactly.
    pub const SQUARE_FOOT: Area = Area(2 * 92_903_040_000_000_000);
    /// One square metre.
    pub const SQUARE_METRE: Area = Area(2 * 1_000_000_000_000_000_000);
    /// One acre, 43,560 sq ft exactly.
    pub const ACRE: Area = Area(43_560 * Area::SQUARE_FOOT.0);
    /// One hectare, 10,000 m².
    pub const HECTARE: Area = Area(10_000 * Area::SQUARE_METRE.0);

    /// An area of so many halves of a square nanometre.
    pub const fn from_half_nm2(half_nm2: i128) -> Area {
        Area(half_nm2)
    }

    /// The area in halves of a square nanometre.
    pub const fn half_nm2(self) -> i128 {
        self.0
    }

    /// The area of a rectangle.
    pub fn rectangle(width: Length, depth: Length) -> Area {
        Area(2 * i128::from(width.nm()) * i128::from(depth.nm()))
    }

    /// The area nearest to so many square feet: for curved and slanted parts that only a float can give.
    pub(crate) fn from_float_sq_ft(sq_ft: f64) -> Area {
        Area((sq_ft * Area::SQUARE_FOOT.0 as f64).round() as i128)
    }

    /// The area in square feet, as near as a float comes: for statistics, never for a printed figure.
    pub fn sq_ft(self) -> f64 {
        self.0 as f64 / Area::SQUARE_FOOT.0 as f64
    }

    /// The area without its sign.
    pub const fn abs(self) -> Area {
        Area(self.0.abs())
    }

    /// The area in whole square feet, halves away from zero: the one rounding of a final figure.
    ///
    /// Reporting to the whole square foot: ANSI Z765-2021 §3 (read second-hand).
    pub const fn whole_sq_ft(self) -> i64 {
        let (unit, sign) = (Area::SQUARE_FOOT.0, self.0.signum());
        (sign * ((2 * self.0.abs() + unit) / (2 * unit))) as i64
    }

    /// The area in square feet with up to six decimals, trailing zeros cut: `1551.652778`.
    pub fn sq_ft_text(self) -> String {
        six_decimals(self.0, Area::SQUARE_FOOT.0)
    }

    /// The area in square feet as a decimal of six places.
    pub fn sq_ft_decimal(self) -> Decimal {
        Decimal::from_i128_with_scale(millionths(self.0, Area::SQUARE_FOOT.0), 6).normalize()
    }

    /// The area in another unit with up to so many decimals, trailing zeros kept.
    pub fn in_unit(self, unit: Area, decimals: u32) -> String {
        let mut value = Decimal::from_i128_with_scale(millionths(self.0, unit.0), 6)
            .round_dp_with_strategy(decimals, rust_decimal::RoundingStrategy::MidpointAwayFromZero);
        value.rescale(decimals);
        value.to_string()
    }

    /// This area as per cent of `whole`, to one decimal; none of nothing.
    pub fn per_cent_of(self, whole: Area) -> Option<String> {
        (whole.0 > 0).then(|| {
            let tenths = rounded_quotient(self.0 * 1000, whole.0);
            Decimal::from_i128_with_scale(tenths, 1).to_string()
        })
    }
}

impl Add for Area {
    type Output = Area;
    fn add(self, other: Area) -> Area {
        Area(self.0 + other.0)
    }
}

impl Sub for Area {
    type Output = Area;
    fn sub(self, other: Area) -> Area {
        Area(self.0 - other.0)
    }
}

impl Neg for Area {
    type Output = Area;
    fn neg(self) -> Area {
        Area(-self.0)
    }
}

impl Sum for Area {
    fn sum<I: Iterator<Item = Area>>(areas: I) -> Area {
        areas.fold(Area::ZERO, Add::add)
    }
}

/// What an area was written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AreaUnit {
    /// `2,031 sq ft`
    SquareFeet,
    /// `188.7 sq m`
    SquareMetres,
    /// `0.25 acres`
    Acres,
    /// `0.1 hectares`
    Hectares,
}

impl AreaUnit {
    /// One of it.
    pub const fn area(self) -> Area {
        match self {
            AreaUnit::SquareFeet => Area::SQUARE_FOOT,
            AreaUnit::SquareMetres => Area::SQUARE_METRE,
            AreaUnit::Acres => Area::ACRE,
            AreaUnit::Hectares => Area::HECTARE,
        }
    }

    /// Its word in the sides file.
    pub const fn word(self) -> &'static str {
        match self {
            AreaUnit::SquareFeet => "sq ft",
            AreaUnit::SquareMetres => "sq m",
            AreaUnit::Acres => "acres",
            AreaUnit::Hectares => "hectares",
        }
    }
}

/// An area with the number and unit it was written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WrittenArea {
    area: Area,
    number: Decimal,
    unit: AreaUnit,
}

impl WrittenArea {
    /// `number` of `unit`; none if that is not a whole number of half square nanometres, or too large.
    pub(crate) fn new(number: Decimal, unit: AreaUnit) -> Option<WrittenArea> {
        let number = number.normalize();
        let scale = 10_i128.checked_pow(number.scale())?;
        let product = number.mantissa().checked_mul(unit.area().0)?;
        (product % scale == 0).then(|| WrittenArea { area: Area(product / scale), number, unit })
    }

    /// The area itself.
    pub const fn area(self) -> Area {
        self.area
    }
}

impl fmt::Display for WrittenArea {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let digits = self.number.to_string();
        let (whole, decimals) = digits.split_once('.').unwrap_or((&digits, ""));
        let point = if decimals.is_empty() { "" } else { "." };
        let unit = match (self.unit, self.number == Decimal::ONE) {
            (AreaUnit::Acres, true) => "acre",
            (AreaUnit::Hectares, true) => "hectare",
            (unit, _) => unit.word(),
        };
        write!(f, "{}{point}{decimals} {unit}", group_thousands(whole))
    }
}

/// `1,757`; with a minus for what is below zero.
pub fn thousands(number: i64) -> String {
    let sign = if number < 0 { "-" } else { "" };
    format!("{sign}{}", group_thousands(&number.unsigned_abs().to_string()))
}

fn group_thousands(digits: &str) -> String {
    let mut text = String::new();
    for (i, digit) in digits.chars().enumerate() {
        if i > 0 && (digits.len() - i).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}

/// `value / unit` with up to six decimals, trailing zeros cut, halves away from zero.
pub(crate) fn six_decimals(value: i128, unit: i128) -> String {
    Decimal::from_i128_with_scale(millionths(value, unit), 6).normalize().to_string()
}

/// `value / unit` in millionths, halves away from zero.
pub(crate) fn millionths(value: i128, unit: i128) -> i128 {
    let whole = value / unit;
    let rest = value % unit;
    whole * 1_000_000 + rounded_quotient(rest * 1_000_000, unit)
}

fn rounded_quotient(value: i128, unit: i128) -> i128 {
    value.signum() * ((value.abs() + unit / 2) / unit)
}

/// Whole numbers nearest to `parts` that add up to `total`: the floors, and one more for the largest remainders.
///
/// `total` must lie within one for each part of the exact sum; each result is then within 1 of its part.
///
/// # Shape
///
/// `parts` and `unit` share a unit; the result is in `unit`s, as many as there are parts.
pub(crate) fn largest_remainder(parts: &[i128], unit: i128, total: i128) -> Vec<i128> {
    let mut shares: Vec<i128> = parts.iter().map(|part| part.div_euclid(unit)).collect();
    let mut missing = total - shares.iter().sum::<i128>();
    let mut order: Vec<usize> = (0..parts.len()).collect();
    order.sort_by_key(|&i| (-parts[i].rem_euclid(unit), i));
    for &i in order.iter().cycle().take(2 * parts.len()) {
        if missing <= 0 {
            break;
        }
        shares[i] += 1;
        missing -= 1;
    }
    shares
}
