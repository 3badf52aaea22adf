//! Integer arithmetic for printing: decimals, commas between thousands, and parts rounded so that they still add up.
#![expect(clippy::integer_division, reason = "the one rounding of a printed figure lives here")]

/// `value / unit` with up to six decimals, halves away from zero, without trailing zeros.
pub(crate) fn six_decimals(value: i128, unit: i128) -> String {
    let millionths = millionths(value, unit);
    in_millionths(millionths < 0, millionths.unsigned_abs())
}

/// A number of millionths with up to six decimals, without trailing zeros.
pub(crate) fn in_millionths(is_negative: bool, millionths: u128) -> String {
    const MILLION: u128 = 1_000_000;
    let mut text = with_sign(is_negative, millionths / MILLION);
    let mut rest = u32::try_from(millionths % MILLION).unwrap_or(0);
    if rest > 0 {
        let mut decimals = [b'0'; 6];
        for decimal in decimals.iter_mut().rev() {
            *decimal = digit(rest % 10);
            rest /= 10;
        }
        text.push('.');
        let count =
            decimals.iter().rposition(|decimal| *decimal != b'0').map_or(0, |last| last + 1);
        text.extend(decimals[..count].iter().map(|decimal| char::from(*decimal)));
    }
    text
}

/// `part` as a percentage of `whole`, with one decimal; `None` if `whole` is not positive.
pub(crate) fn per_cent(part: i128, whole: i128) -> Option<String> {
    let tenths = (whole > 0).then(|| rounded_quotient(part * 1000, whole))?;
    let size = tenths.unsigned_abs();
    let mut text = with_sign(tenths < 0, size / 10);
    text.push('.');
    text.push(char::from(digit(u32::try_from(size % 10).unwrap_or(0))));
    Some(text)
}

/// A whole number. A formatter of numbers that may have any width takes several times as long.
fn with_sign(is_negative: bool, number: u128) -> String {
    let sign = if is_negative { "-" } else { "" };
    let Ok(mut few) = u32::try_from(number) else { return format!("{sign}{number}") };
    let mut digits = [b'0'; 10];
    let mut first = digits.len();
    while first == digits.len() || few > 0 {
        first -= 1;
        digits[first] = digit(few % 10);
        few /= 10;
    }
    let mut text = String::with_capacity(20);
    text.push_str(sign);
    text.extend(digits[first..].iter().map(|digit| char::from(*digit)));
    text
}

/// The digit of a number below 10.
fn digit(number: u32) -> u8 {
    b'0' + u8::try_from(number).unwrap_or(0)
}

/// `value / unit` in millionths, halves away from zero.
pub(crate) fn millionths(value: i128, unit: i128) -> i128 {
    parts(value, unit, 1_000_000)
}

/// `value / unit` in parts of which `per_unit` make a unit, halves away from zero.
pub(crate) fn parts(value: i128, unit: i128, per_unit: i128) -> i128 {
    let whole = value / unit;
    let rest = value - whole * unit;
    whole * per_unit + rounded_quotient(rest * per_unit, unit)
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
