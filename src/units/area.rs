//! Exact areas, rounded only once, when a figure is shown.
//!
//! ```
//! use fairfoot::units::{Area, Length};
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

use crate::units::decimal::{group_thousands, in_millionths, parts, per_cent};
use crate::units::length::Length;

/// An area in halves of a square nanometer, so that the area of a triangle is a whole number too. Negative only as
/// a difference.
///
/// # Units
///
/// 1 sq ft = 92,903,040,000,000,000 nm² exactly, since 1 ft = 0.3048 m.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Area(i128);

impl Area {
    /// Zero.
    pub const ZERO: Area = Area(0);
    /// One square foot, 0.09290304 m² exactly.
    pub const SQUARE_FOOT: Area = Area(2 * 92_903_040_000_000_000);
    /// A millionth of a square foot, the last decimal place printed.
    pub(crate) const MILLIONTH_OF_A_SQUARE_FOOT: Area = Area(185_806_080_000);
    /// A hundredth of a square foot, the last decimal place that people are shown.
    pub(crate) const HUNDREDTH_OF_A_SQUARE_FOOT: Area = Area(1_858_060_800_000_000);
    /// One square meter.
    pub const SQUARE_METER: Area = Area(2 * 1_000_000_000_000_000_000);
    /// One acre, 43,560 sq ft exactly.
    pub const ACRE: Area = Area(43_560 * Area::SQUARE_FOOT.0);
    /// One hectare, 10,000 m².
    pub const HECTARE: Area = Area(10_000 * Area::SQUARE_METER.0);

    /// An area of `half_nm2` halves of a square nanometer.
    #[must_use]
    pub const fn from_half_nm2(half_nm2: i128) -> Area {
        Area(half_nm2)
    }

    /// The area in halves of a square nanometer.
    #[must_use]
    pub const fn half_nm2(self) -> i128 {
        self.0
    }

    /// The area of a rectangle.
    #[must_use]
    pub fn rectangle(width: Length, depth: Length) -> Area {
        // A product of two numbers of 64 bits needs no check.
        Area(2 * (i128::from(width.nm()) * i128::from(depth.nm())))
    }

    /// The area nearest to `sq_ft` square feet, for curved and slanted parts that are computed in floats.
    pub(crate) fn from_float_sq_ft(sq_ft: f64) -> Area {
        Area((sq_ft * Area::SQUARE_FOOT.0 as f64).round() as i128)
    }

    /// The area in square feet as a floating-point number: for statistics, never for a printed figure.
    #[must_use]
    pub fn sq_ft(self) -> f64 {
        float(self.0) / Area::SQUARE_FOOT.0 as f64
    }

    /// The absolute value.
    #[must_use]
    pub const fn abs(self) -> Area {
        Area(self.0.abs())
    }

    /// The area in whole square feet, halves rounded away from zero. This is the only rounding of a final figure.
    ///
    /// Reporting to the whole square foot: ANSI Z765-2021 §3 (read second-hand).
    #[must_use]
    pub const fn whole_sq_ft(self) -> i64 {
        const HALF: u128 = Area::SQUARE_FOOT.0.unsigned_abs() / 2;
        let whole = in_sq_ft(self.0.unsigned_abs() + HALF) as u64;
        let whole = whole.cast_signed();
        if self.0 < 0 { -whole } else { whole }
    }

    /// The area in square feet with up to six decimals, without trailing zeros: `1551.652778`.
    #[must_use]
    pub fn sq_ft_text(self) -> String {
        const UNIT: u128 = Area::SQUARE_FOOT.0.unsigned_abs();
        let size = self.0.unsigned_abs();
        let whole = in_sq_ft(size);
        let millionths = in_sq_ft((size - whole * UNIT) * 1_000_000 + UNIT / 2);
        let millionths = whole * 1_000_000 + millionths;
        in_millionths(self.0 < 0 && millionths > 0, millionths)
    }

    /// The area in square feet for people, with commas and at most two decimals: `1,551.65`.
    ///
    /// ```
    /// use fairfoot::units::{Area, Length};
    ///
    /// let side = Length::from_nm(40 * Length::FOOT.nm() + Length::INCH.nm());
    /// // 40 1/12 squared is 1,606.673611…
    /// assert_eq!(Area::rectangle(side, side).to_hundredths(), "1,606.67");
    /// assert_eq!(Area::rectangle(Length::FOOT, Length::FOOT).to_hundredths(), "1");
    /// ```
    #[must_use]
    pub fn to_hundredths(self) -> String {
        let text = self.in_unit(Area::SQUARE_FOOT, 2);
        let (whole, decimals) = text.split_once('.').unwrap_or((&text, ""));
        let decimals = decimals.trim_end_matches('0');
        let point = if decimals.is_empty() { "" } else { "." };
        format!("{}{point}{decimals}", group_thousands(whole))
    }

    /// The area in `unit`, with exactly `decimals` decimals and no unit after it.
    #[must_use]
    pub fn in_unit(self, unit: Area, decimals: u32) -> String {
        // Rounded once: by way of millionths 598.1249995 would become 598.13.
        let rounded = parts(self.0, unit.0, 10_i128.pow(decimals));
        Decimal::from_i128_with_scale(rounded, decimals).to_string()
    }

    /// This area as a percentage of `whole`, with one decimal; `None` if `whole` is not positive.
    #[must_use]
    pub fn per_cent_of(self, whole: Area) -> Option<String> {
        per_cent(self.0, whole.0)
    }
}

/// The whole square feet in a number of halves of a square nanometer.
const fn in_sq_ft(half_nm2: u128) -> u128 {
    const UNIT: u128 = Area::SQUARE_FOOT.0.unsigned_abs();
    const TWOS: u32 = UNIT.trailing_zeros();
    // The unit ends in zero bits, so these bits of the dividend do not matter. Without them 64 bits hold over ten million
    // square feet, and a division in 64 bits by a known number is only a multiplication.
    let short = half_nm2 >> TWOS;
    if short <= u64::MAX as u128 {
        (short as u64 / (UNIT >> TWOS) as u64) as u128
    } else {
        half_nm2 / UNIT
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

/// The float nearest to a whole number, without the slow library call for 128 bits: both halves of a number below 2¹⁰⁶ are
/// floats themselves, so that only their sum is rounded.
fn float(number: i128) -> f64 {
    const HALF: u32 = 53;
    const END: i128 = 1 << HALF;
    let (high, low) = (number >> HALF, number & (END - 1));
    if !(-END..END).contains(&high) {
        return number as f64;
    }
    high as i64 as f64 * END as f64 + low as i64 as f64
}

impl Sum for Area {
    fn sum<I: Iterator<Item = Area>>(areas: I) -> Area {
        areas.fold(Area::ZERO, Add::add)
    }
}

/// The unit an area was written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AreaUnit {
    /// `2,031 sq ft`
    SquareFeet,
    /// `188.7 sq m`
    SquareMeters,
    /// `0.25 acres`
    Acres,
    /// `0.1 hectares`
    Hectares,
}

impl AreaUnit {
    /// The area of one unit.
    #[must_use]
    pub const fn area(self) -> Area {
        match self {
            AreaUnit::SquareFeet => Area::SQUARE_FOOT,
            AreaUnit::SquareMeters => Area::SQUARE_METER,
            AreaUnit::Acres => Area::ACRE,
            AreaUnit::Hectares => Area::HECTARE,
        }
    }

    /// The unit's name in the sides file.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            AreaUnit::SquareFeet => "sq ft",
            AreaUnit::SquareMeters => "sq m",
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
    /// `number` of `unit`. `None` if that is too large, or not a whole number of half square nanometers.
    pub(crate) fn new(number: Decimal, unit: AreaUnit) -> Option<WrittenArea> {
        // Square meters keep their zeros: 71.0 sq m says more than 71 sq m.
        let number = if unit == AreaUnit::SquareMeters { number } else { number.normalize() };
        let scale = 10_i128.checked_pow(number.scale())?;
        let product = number.mantissa().checked_mul(unit.area().0)?;
        if scale == 1 {
            return Some(WrittenArea { area: Area(product), number, unit });
        }
        (product % scale == 0).then(|| WrittenArea { area: Area(product / scale), number, unit })
    }

    /// The area itself.
    #[must_use]
    pub const fn area(self) -> Area {
        self.area
    }

    /// The unit it was written in.
    #[must_use]
    pub const fn unit(self) -> AreaUnit {
        self.unit
    }

    /// How many decimals it was written with.
    pub(crate) fn decimals(self) -> u32 {
        self.number.scale()
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

#[cfg(test)]
mod tests {
    use super::*;

    proptest::proptest! {
        #[test]
        fn a_float_is_the_nearest(number: i128, shift in 0..127_u32) {
            let number = number >> shift;
            proptest::prop_assert_eq!(float(number).to_bits(), (number as f64).to_bits());
        }
    }
}
