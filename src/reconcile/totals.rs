//! Errors in writing down a total: swapped digits, a wrong digit, rounding, doubling, another unit.
//!
//! They affect the whole total, so they are undone first. That leaves only a few totals that could have been meant.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    clippy::integer_division,
    reason = "explanations are weighed in floats; digits are counted"
)]

use crate::reconcile::weights::Weights;
use crate::units::area::{Area, AreaUnit, WrittenArea};
use rust_decimal::Decimal;

/// How a total was written down wrong, or rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, strum::EnumCount)]
pub(crate) enum TotalWritten {
    /// It has two neighboring digits swapped.
    Swapped,
    /// It has one wrong digit.
    OneDigit,
    /// It has a zero too many.
    TenTimes,
    /// Its last digit is missing.
    Tenth,
    /// Rounded to tens.
    RoundedTo10,
    /// Rounded to fifties.
    RoundedTo50,
    /// Rounded to hundreds.
    RoundedTo100,
    /// It is the sum of two dwellings of this size.
    Twice,
    /// It is in square meters.
    SquareMeters,
}

impl TotalWritten {
    /// What the total is rounded to, in square feet; `None` if it is not.
    pub(crate) const fn rounded_to(self) -> Option<i64> {
        match self {
            TotalWritten::RoundedTo10 => Some(10),
            TotalWritten::RoundedTo50 => Some(50),
            TotalWritten::RoundedTo100 => Some(100),
            _ => None,
        }
    }
}

/// A range of totals that could have been meant, `wide` square feet around `middle`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Meant {
    pub(crate) how: TotalWritten,
    pub(crate) middle: f64,
    pub(crate) wide: f64,
    /// The prior probability that such a total is written this way and gives exactly this figure.
    pub(crate) chance: f64,
}

/// A published number as it was written: square feet, or square meters with their decimals.
struct Number {
    /// Its digits without a point.
    mantissa: i64,
    /// The area of one in its last place, and how many of those are one of its unit.
    last_place: Area,
    of_unit: i64,
    is_metric: bool,
}

impl Number {
    /// `None` for a number without digits that could be typed wrong: square feet with decimals, or another unit.
    fn of(written: WrittenArea) -> Option<Number> {
        let is_metric = written.unit() == AreaUnit::SquareMeters;
        let decimals = if is_metric { written.decimals() } else { 0 };
        let of_unit = 10_i64.checked_pow(decimals)?;
        let unit = if is_metric { Area::SQUARE_METER } else { Area::SQUARE_FOOT };
        let last_place = Area::from_half_nm2(unit.half_nm2() / i128::from(of_unit));
        let (half_nm2, one) = (written.area().half_nm2(), last_place.half_nm2());
        let mantissa = i64::try_from(half_nm2 / one).ok().filter(|number| *number >= 10)?;
        (half_nm2 % one == 0).then_some(Number { mantissa, last_place, of_unit, is_metric })
    }

    /// The area of another number with as many decimals.
    fn area(&self, mantissa: i64) -> Area {
        Area::from_half_nm2(i128::from(mantissa) * self.last_place.half_nm2())
    }

    /// The same as it would be written.
    fn written(&self, mantissa: i64) -> Option<WrittenArea> {
        let unit = if self.is_metric { AreaUnit::SquareMeters } else { AreaUnit::SquareFeet };
        WrittenArea::new(Decimal::new(mantissa, self.of_unit.ilog10()), unit)
    }
}

/// Every total that could have been meant by a published number. Its digits are those of the unit it was written in.
pub(crate) fn meant(written: WrittenArea, weights: &Weights) -> Vec<Meant> {
    let mut list = Vec::with_capacity(48);
    let sq_ft = written.area().sq_ft();
    let mut push = |how: TotalWritten, middle: f64, wide: f64, chance: f64| {
        list.push(Meant { how, middle, wide, chance });
    };
    // The sum of two dwellings that were measured separately may be odd.
    push(TotalWritten::Twice, sq_ft / 2.0, 1.0, weights.total_twice / 2.0);
    if written.unit() != AreaUnit::SquareMeters {
        let per_meter = Area::SQUARE_METER.sq_ft();
        let chance = weights.total_square_meters;
        push(TotalWritten::SquareMeters, sq_ft * per_meter, per_meter, chance);
    }
    let Some(number) = Number::of(written) else { return list };
    let one = number.last_place.sq_ft();
    let wide = one.max(1.0);
    let digits = digits(number.mantissa);
    let swaps: Vec<i64> = swapped(number.mantissa, &digits).collect();
    for other in &swaps {
        let chance = weights.total_swapped / swaps.len() as f64;
        push(TotalWritten::Swapped, number.area(*other).sq_ft(), wide, chance);
    }
    for (other, share) in one_digit_other(number.mantissa, &digits) {
        let chance = share * weights.total_one_digit;
        push(TotalWritten::OneDigit, number.area(other).sq_ft(), wide, chance);
    }
    // A lost decimal point makes ten times as much of any number of square meters.
    if number.mantissa % 10 == 0 || number.is_metric {
        push(TotalWritten::TenTimes, sq_ft / 10.0, wide, weights.total_ten_times);
    }
    push(TotalWritten::Tenth, sq_ft * 10.0 + 4.5 * one, 10.0 * one, weights.total_tenth);
    for (how, chance) in [
        (TotalWritten::RoundedTo10, weights.total_rounded_10),
        (TotalWritten::RoundedTo50, weights.total_rounded_50),
        (TotalWritten::RoundedTo100, weights.total_rounded_100),
    ] {
        let to = how.rounded_to().unwrap_or(1) * number.of_unit;
        if number.mantissa % to == 0 {
            push(how, sq_ft, number.area(to).sq_ft(), chance);
        }
    }
    list
}

/// The total nearest to an area that could have been meant by a figure with digits typed differently; `None` if the
/// figure was not written that way.
pub(crate) fn nearest_meant(
    how: TotalWritten,
    written: WrittenArea,
    near_sq_ft: f64,
) -> Option<WrittenArea> {
    let number = Number::of(written)?;
    let digits = digits(number.mantissa);
    let all: Vec<i64> = match how {
        TotalWritten::Swapped => swapped(number.mantissa, &digits).collect(),
        TotalWritten::OneDigit => {
            one_digit_other(number.mantissa, &digits).into_iter().map(|(other, _)| other).collect()
        }
        _ => return None,
    };
    let nearest = all.into_iter().min_by(|a, b| {
        let off = |meant: &i64| (number.area(*meant).sq_ft() - near_sq_ft).abs();
        off(a).total_cmp(&off(b))
    })?;
    number.written(nearest)
}

/// The digits of a positive number, last first.
fn digits(number: i64) -> Vec<i64> {
    let mut left = number;
    let mut digits = Vec::with_capacity(8);
    while left > 0 {
        digits.push(left % 10);
        left /= 10;
    }
    digits
}

/// The number with two neighboring digits swapped, without a leading zero.
fn swapped(number: i64, digits: &[i64]) -> impl Iterator<Item = i64> {
    let last = digits.len().saturating_sub(2);
    let mut place = 1;
    let pairs = digits.windows(2).enumerate().filter_map(move |(i, pair)| {
        let (low, high) = (pair[0], pair[1]);
        let other = number + (low - high) * 9 * place;
        place *= 10;
        (low != high && !(i == last && low == 0)).then_some(other)
    });
    pairs.collect::<Vec<i64>>().into_iter()
}

/// Of the gaps that one wrong digit makes, the share that anyone asks about if it is the last digit, and if it is the
/// next to last; the other places share the rest. Judgment.
const OF_THE_LAST_PLACES: [f64; 2] = [0.1, 0.2];

/// The number with one digit changed, without a leading zero, each with its share.
fn one_digit_other(number: i64, digits: &[i64]) -> Vec<(i64, f64)> {
    let mut list = Vec::with_capacity(9 * digits.len());
    let mut place = 1;
    let of_the_others = 1.0 - OF_THE_LAST_PLACES.iter().sum::<f64>();
    let others = digits.len().saturating_sub(OF_THE_LAST_PLACES.len()).max(1) as f64;
    for (i, digit) in digits.iter().enumerate() {
        let first = i64::from(i + 1 == digits.len());
        let share = OF_THE_LAST_PLACES.get(i).copied().unwrap_or(of_the_others / others) / 9.0;
        let other = (first..10).filter(|other| other != digit);
        list.extend(other.map(|other| (number + (other - digit) * place, share)));
        place *= 10;
    }
    list
}

#[cfg(test)]
#[expect(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;

    fn written(number: &str, unit: AreaUnit) -> WrittenArea {
        let number: Decimal = number.parse().unwrap();
        WrittenArea::new(number, unit).unwrap()
    }

    fn whole(number: i64) -> WrittenArea {
        written(&number.to_string(), AreaUnit::SquareFeet)
    }

    fn meant_by(how: TotalWritten, figure: WrittenArea) -> Vec<f64> {
        let mut list: Vec<f64> = meant(figure, &Weights::default())
            .into_iter()
            .filter(|meant| meant.how == how)
            .map(|meant| meant.middle)
            .collect();
        list.sort_by(f64::total_cmp);
        list
    }

    fn of(how: TotalWritten, number: i64) -> Vec<f64> {
        meant_by(how, whole(number))
    }

    #[test]
    fn the_total_meant_is_the_one_nearest_to_the_house() {
        let near = |how, figure, house| {
            nearest_meant(how, whole(figure), house).map(|meant| meant.to_string())
        };
        // 1,710 written as 1,170, 1,148 as 1,140.
        assert_eq!(near(TotalWritten::Swapped, 1_170, 1_732.0).as_deref(), Some("1,710 sq ft"));
        assert_eq!(near(TotalWritten::OneDigit, 1_140, 1_148.0).as_deref(), Some("1,148 sq ft"));
        assert_eq!(near(TotalWritten::Twice, 3_600, 1_800.0), None);
        assert_eq!(near(TotalWritten::OneDigit, 9, 1_800.0), None);
    }

    #[test]
    fn digits_of_square_meters_are_those_that_were_written() {
        let meters = |number: &str| written(number, AreaUnit::SquareMeters);
        let sq_m = |list: Vec<f64>| -> Vec<f64> {
            list.into_iter().map(|sq_ft| (sq_ft * 9.290_304).round() / 100.0).collect()
        };
        // 136.8 sq m with two digits swapped: 316.8, 163.8 or 138.6; without its point, 1,368.
        let swaps = meant_by(TotalWritten::Swapped, meters("136.8"));
        assert_eq!(sq_m(swaps), [138.6, 163.8, 316.8]);
        assert_eq!(sq_m(meant_by(TotalWritten::TenTimes, meters("1368"))), [136.8]);
        assert_eq!(sq_m(meant_by(TotalWritten::RoundedTo10, meters("140.0"))), [140.0]);
        assert!(meant_by(TotalWritten::RoundedTo10, meters("136.0")).is_empty());
        // They are not square meters taken for square feet.
        assert!(meant_by(TotalWritten::SquareMeters, meters("136.8")).is_empty());
        let near = nearest_meant(TotalWritten::Swapped, meters("163.8"), 1_470.0);
        assert_eq!(near.map(|meant| meant.to_string()).as_deref(), Some("136.8 sq m"));
    }

    #[test]
    fn totals_that_could_have_been_meant() {
        // 2,685 on a record whose parts add up to 2,285: one digit.
        assert!(of(TotalWritten::OneDigit, 2_685).contains(&2_285.0));
        assert_eq!(of(TotalWritten::OneDigit, 2_685).len(), 8 + 9 + 9 + 9);
        assert_eq!(of(TotalWritten::Swapped, 2_685), [2_658.0, 2_865.0, 6_285.0]);
        // A 0 does not come first, and equal digits are not swapped.
        assert_eq!(of(TotalWritten::Swapped, 2_044), [2_404.0]);
        // A warehouse of 201,250 sq ft listed at 20,125 (Handy Hardware Wholesale v. Harris CAD, 985 S.W.2d 618).
        let tenth = meant(whole(20_125), &Weights::default());
        let tenth = tenth.iter().find(|meant| meant.how == TotalWritten::Tenth);
        assert!(tenth.is_some_and(|meant| (meant.middle - 201_250.0).abs() <= meant.wide / 2.0));
        assert_eq!(of(TotalWritten::TenTimes, 17_560), [1_756.0]);
        assert!(of(TotalWritten::TenTimes, 17_565).is_empty());
        assert_eq!(of(TotalWritten::RoundedTo50, 1_850), [1_850.0]);
        assert!(of(TotalWritten::RoundedTo100, 1_850).is_empty());
        assert_eq!(of(TotalWritten::Twice, 3_001), [1_500.5]);
        // 163 m² are 1,754.5 sq ft.
        assert!((of(TotalWritten::SquareMeters, 163)[0] - 1_754.5).abs() < 0.1);
    }
}
