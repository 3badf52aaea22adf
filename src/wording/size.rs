//! How an area is printed: in square feet, or in a metric file in square meters with the square feet after it.

use crate::units::area::{Area, WrittenArea};
use crate::units::decimal::{group_thousands, rounded_quotient, thousands};
use rust_decimal::Decimal;

/// An area in tenths of a square meter, halves away from zero.
///
/// Reporting to 0.1 square meter: ANSI Z765 §3, for metric units (read second-hand).
fn tenths_of_sq_m(area: Area) -> i128 {
    rounded_quotient(10 * area.half_nm2(), Area::SQUARE_METER.half_nm2())
}

/// An area in square meters to one decimal: `136.8 sq m`.
pub(crate) fn square_meters(area: Area) -> String {
    tenths_text(tenths_of_sq_m(area))
}

fn tenths_text(tenths: i128) -> String {
    let text = Decimal::from_i128_with_scale(tenths, 1).to_string();
    let (whole, tenth) = text.split_once('.').unwrap_or((&text, "0"));
    format!("{}.{tenth} sq m", group_thousands(whole))
}

fn square_feet(area: Area) -> String {
    format!("{} sq ft", thousands(area.whole_sq_ft()))
}

/// An area for people: `1,473 sq ft`; in a metric file `136.8 sq m (1,473 sq ft)`.
pub(crate) fn size(area: Area, is_metric: bool) -> String {
    if is_metric {
        format!("{} ({})", square_meters(area), square_feet(area))
    } else {
        square_feet(area)
    }
}

/// The area of a figure, with what was typed if that was in another unit: `1,475 sq ft (137 sq m)`; in a metric file
/// `137.0 sq m (1,475 sq ft)`, and what was typed if it was in neither.
pub(crate) fn typed_size(area: WrittenArea, is_metric: bool) -> String {
    use crate::units::area::AreaUnit;
    match (area.unit(), is_metric) {
        (AreaUnit::SquareFeet, _) | (AreaUnit::SquareMeters, true) => size(area.area(), is_metric),
        _ => format!("{} ({area})", size(area.area(), is_metric)),
    }
}

/// The difference between two areas as printed, without its sign.
pub(crate) fn size_apart(one: Area, other: Area, is_metric: bool) -> String {
    let feet = one.whole_sq_ft() - other.whole_sq_ft();
    let feet = format!("{} sq ft", thousands(feet.abs()));
    if !is_metric {
        return feet;
    }
    let tenths = tenths_of_sq_m(one) - tenths_of_sq_m(other);
    format!("{} ({feet})", tenths_text(tenths.abs()))
}

/// An area that is given in whole square feet, printed like any other.
pub(crate) fn size_of_sq_ft(sq_ft: i64, is_metric: bool) -> String {
    size(Area::from_half_nm2(i128::from(sq_ft) * Area::SQUARE_FOOT.half_nm2()), is_metric)
}
