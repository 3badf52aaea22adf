//! Products that a stranger can type into a pocket calculator.

use rust_decimal::Decimal;

use crate::units::decimal::{group_thousands, rounded_quotient};
use crate::units::length::Length;

/// A product of two lengths, halved for a triangle: `39.9167 × 56.25`, `12 × 5.5 ÷ 2`.
///
/// The lengths have two decimals in their unit, or as many more as it takes for the product to be the area as printed:
/// to the hundredth, and to the whole.
pub(crate) fn product(lengths: [Length; 2], is_halved: bool, unit: Length) -> String {
    const DECIMALS: std::ops::RangeInclusive<u32> = 2..=6;
    let by = if is_halved { 2 } else { 1 };
    let exact = lengths.map(|length| i128::from(length.nm()));
    let square = i128::from(unit.nm()) * i128::from(unit.nm()) * by;
    let is_right = |typed: [i128; 2], decimals: u32| {
        let scale = 10_i128.pow(decimals);
        [1, 100].into_iter().all(|places| {
            rounded_quotient(places * typed[0] * typed[1], scale * scale * by)
                == rounded_quotient(places * exact[0] * exact[1], square)
        })
    };
    let nearest = |decimals: u32| lengths.map(|length| in_unit(length, unit, decimals));
    // Where the exact product is halfway, lengths rounded down would never reach it.
    let up = |decimals: u32| {
        let scale = 10_i128.pow(decimals);
        exact.map(|length| -(-length * scale).div_euclid(i128::from(unit.nm())))
    };
    let mut tried =
        DECIMALS.flat_map(|decimals| [(nearest(decimals), decimals), (up(decimals), decimals)]);
    let found = tried.find(|&(typed, decimals)| is_right(typed, decimals));
    let (typed, decimals) = found.unwrap_or((nearest(*DECIMALS.end()), *DECIMALS.end()));
    let [one, other] = typed.map(|number| text(number, decimals));
    format!("{one} × {other}{}", if is_halved { " ÷ 2" } else { "" })
}

/// A length in a unit, times a power of ten.
fn in_unit(length: Length, unit: Length, decimals: u32) -> i128 {
    rounded_quotient(i128::from(length.nm()) * 10_i128.pow(decimals), i128::from(unit.nm()))
}

/// A number with that many decimals, without trailing zeros.
fn text(number: i128, decimals: u32) -> String {
    let text = Decimal::from_i128_with_scale(number, decimals).normalize().to_string();
    let (whole, places) = text.split_once('.').unwrap_or((&text, ""));
    let point = if places.is_empty() { "" } else { "." };
    format!("{}{point}{places}", group_thousands(whole))
}

#[cfg(test)]
#[expect(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;

    fn of(one: &str, other: &str) -> String {
        let length = |text: &str| text.parse::<Length>().unwrap();
        product([length(one), length(other)], false, Length::FOOT)
    }

    #[test]
    fn a_product_has_the_decimals_that_it_takes() {
        // 56.25 × 39.92 would be 2,245.50, and so 2,246.
        assert_eq!(of("56' 3\"", "39' 11\""), "56.25 × 39.9167");
        assert_eq!(of("42.6'", "36.4'"), "42.6 × 36.4");
        assert_eq!(of("30'", "40'"), "30 × 40");
        // 32 1/3 × 25 1/2 is 824 1/2, and so 825; with 32.33 it would be 824.
        assert_eq!(of("32' 4\"", "25' 6\""), "32.3334 × 25.5");
    }
}
