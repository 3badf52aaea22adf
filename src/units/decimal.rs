//! Integer arithmetic for printing: decimals, commas between thousands, and parts rounded so that they still add up.
#![expect(clippy::integer_division, reason = "the one rounding of a printed figure lives here")]

/// `value / unit` with up to six decimals, halves away from zero, without trailing zeros.
pub(crate) fn six_decimals(value: i128, unit: i128) -> String {
    const MILLION: u64 = 1_000_000;
    let millionths = millionths(value, unit);
    let sign = if millionths < 0 { "-" } else { "" };
    // Numbers of 64 bits are divided and written several times faster.
    let (mut text, mut rest) = match u64::try_from(millionths.unsigned_abs()) {
        Ok(few) => (format!("{sign}{}", few / MILLION), few % MILLION),
        Err(_) => {
            let (many, million) = (millionths.unsigned_abs(), u128::from(MILLION));
            (format!("{sign}{}", many / million), u64::try_from(many % million).unwrap_or(0))
        }
    };
    let mut decimals = ['0'; 6];
    for decimal in decimals.iter_mut().rev() {
        *decimal = char::from(b'0' + u8::try_from(rest % 10).unwrap_or_default());
        rest /= 10;
    }
    if let Some(last) = decimals.iter().rposition(|decimal| *decimal != '0') {
        text.push('.');
        text.extend(&decimals[..=last]);
    }
    text
}

/// `value / unit` in millionths, halves away from zero.
pub(crate) fn millionths(value: i128, unit: i128) -> i128 {
    let whole = value / unit;
    let rest = value - whole * unit;
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
