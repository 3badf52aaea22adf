//! Integer arithmetic for printing: decimals, commas between thousands, and parts rounded so that they still add up.
#![expect(clippy::integer_division, reason = "the one rounding of a printed figure lives here")]

use std::fmt::Display;
use std::ops::{Div, Rem};

/// `value / unit` with up to six decimals, halves away from zero, without trailing zeros.
pub(crate) fn six_decimals(value: i128, unit: i128) -> String {
    let millionths = millionths(value, unit);
    let Ok(few) = u64::try_from(millionths.unsigned_abs()) else {
        return decimals_of(millionths < 0, millionths.unsigned_abs());
    };
    decimals_of(millionths < 0, few)
}

/// A number of millionths as a decimal. Numbers of 64 bits are divided and written several times faster.
fn decimals_of<N>(is_negative: bool, millionths: N) -> String
where
    N: Copy + Display + PartialEq + From<u32> + Div<Output = N> + Rem<Output = N>,
{
    let million = N::from(1_000_000_u32);
    let (whole, rest) = (millionths / million, millionths % million);
    let sign = if is_negative { "-" } else { "" };
    if rest == N::from(0_u32) {
        return format!("{sign}{whole}");
    }
    let mut text = format!("{sign}{whole}.{rest:06}");
    text.truncate(text.trim_end_matches('0').len());
    text
}

/// `value / unit` in millionths, halves away from zero.
pub(crate) fn millionths(value: i128, unit: i128) -> i128 {
    let whole = value / unit;
    let rest = value % unit;
    whole * 1_000_000 + rounded_quotient(rest * 1_000_000, unit)
}

pub(crate) fn rounded_quotient(value: i128, unit: i128) -> i128 {
    value.signum() * ((value.abs() + unit / 2) / unit)
}

/// Rounds `parts` to whole `unit`s that add up to `total`, by the method of largest remainders: every part is
/// rounded down, then the parts with the largest remainders get one more.
///
/// `total` must differ from the exact sum by at most one unit per part; each result is then within one unit of its
/// part.
///
/// # Shape
///
/// `parts` are in the same unit of measure as `unit`; the result counts `unit`s, one entry per part.
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

/// The number with commas, and a minus sign if it is negative: `1,757`.
#[must_use]
pub fn thousands(number: i64) -> String {
    let sign = if number < 0 { "-" } else { "" };
    format!("{sign}{}", group_thousands(&number.unsigned_abs().to_string()))
}

pub(crate) fn group_thousands(digits: &str) -> String {
    let mut text = String::new();
    for (i, digit) in digits.chars().enumerate() {
        if i > 0 && (digits.len() - i).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}
