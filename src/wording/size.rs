//! How an area is printed: in square feet, or in a metric file in square meters with the square feet after it.

use crate::areas::range::Range;
use crate::diagnostic::words;
use crate::units::area::{Area, AreaUnit, WrittenArea};
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
    format!("{} sq m", tenths_alone(tenths))
}

fn tenths_alone(tenths: i128) -> String {
    let text = Decimal::from_i128_with_scale(tenths, 1).to_string();
    let (whole, tenth) = text.split_once('.').unwrap_or((&text, "0"));
    format!("{}.{tenth}", group_thousands(whole))
}

/// `136.65 sq m`; without the hundredths where whoever rounds them to tenths would get another number than stands beside
/// them.
fn hundredths_of_sq_m(area: Area) -> String {
    let hundredths = rounded_quotient(100 * area.half_nm2(), Area::SQUARE_METER.half_nm2());
    let is_alike = rounded_quotient(hundredths, 10) == tenths_of_sq_m(area);
    let text = area.in_unit(Area::SQUARE_METER, if is_alike { 2 } else { 1 });
    let (whole, decimals) = text.split_once('.').unwrap_or((&text, "00"));
    format!("{}.{decimals} sq m", group_thousands(whole))
}

/// An area before it is rounded: `1,470.85 sq ft`; in a metric file `136.65 sq m (1,470.85 sq ft)`.
pub(crate) fn exact_size(area: Area, is_metric: bool) -> String {
    let feet = format!("{} sq ft", area.to_hundredths());
    if is_metric { format!("{} ({feet})", hundredths_of_sq_m(area)) } else { feet }
}

/// How far an area may be off, given in square feet: `± 4`; in a metric file in square meters, `± 0.1`. It is never 0,
/// since the printed area may itself be off by half of its last digit.
#[expect(clippy::float_arithmetic, reason = "an uncertainty is a float, and only printed")]
pub(crate) fn off_by(sq_ft: f64, is_metric: bool) -> String {
    const SQ_M_PER_SQ_FT: f64 = 0.092_903_04;
    if is_metric {
        return format!("{:.1}", (sq_ft * SQ_M_PER_SQ_FT).max(0.1));
    }
    let digits = format!("{:.0}", sq_ft.max(1.0));
    digits.parse().map_or(digits, thousands)
}

/// How far a rounded area may be off if the one before rounding may be off by `sq_ft`: that and the step between the two,
/// each as it is printed.
pub(crate) fn off_by_with_step(exact: Area, rounded: Area, sq_ft: f64, is_metric: bool) -> String {
    match is_metric {
        true => {
            let off = tenths_of_sq_m(Area::from_float_sq_ft(sq_ft)).max(1);
            tenths_alone((tenths_of_sq_m(rounded) - tenths_of_sq_m(exact)).abs() + off)
        }
        false => {
            let off = Area::from_float_sq_ft(sq_ft.max(1.0)).whole_sq_ft();
            thousands((rounded.whole_sq_ft() - exact.whole_sq_ft()).abs() + off)
        }
    }
}

/// Whether a rounded area lies more than `sq_ft` from the area before rounding, exactly or as the three are printed.
#[expect(clippy::float_arithmetic, reason = "an uncertainty is a float, compared as it is printed")]
pub(crate) fn is_beyond(exact: Area, rounded: Area, sq_ft: f64, is_metric: bool) -> bool {
    const TENTHS_OF_SQ_M_PER_SQ_FT: f64 = 0.929_030_4;
    let apart = (rounded - exact).sq_ft().abs();
    let (printed, most) = match is_metric {
        true => (
            tenths_of_sq_m(rounded) - tenths_of_sq_m(exact),
            (sq_ft * TENTHS_OF_SQ_M_PER_SQ_FT).round(),
        ),
        false => (i128::from(rounded.whole_sq_ft() - exact.whole_sq_ft()), sq_ft.round()),
    };
    let is_printed_beyond =
        i32::try_from(printed.abs()).map_or(true, |printed| f64::from(printed) > most.max(1.0));
    apart > sq_ft || is_printed_beyond
}

/// The difference of two areas as a percentage of one of them, to one decimal and without its sign, all as printed: in
/// a metric file in tenths of a square meter. `None` if there is nothing to compare with.
pub(crate) fn percent_apart(one: Area, other: Area, of: Area, is_metric: bool) -> Option<String> {
    let as_printed = |area: Area| match is_metric {
        true => {
            let tenths = tenths_of_sq_m(area) * Area::SQUARE_METER.half_nm2();
            Area::from_half_nm2(rounded_quotient(tenths, 10))
        }
        false => {
            let sq_ft = i128::from(area.whole_sq_ft());
            Area::from_half_nm2(sq_ft * Area::SQUARE_FOOT.half_nm2())
        }
    };
    let share = (as_printed(one) - as_printed(other)).per_cent_of(as_printed(of))?;
    let share = share.trim_start_matches('-');
    let (whole, tenth) = share.split_once('.').unwrap_or((share, "0"));
    Some(format!("{}.{tenth}%", group_thousands(whole)))
}

/// The number of an area alone, in the unit of [`step_alone`].
pub(crate) fn number_alone(area: Area, is_metric: bool) -> String {
    match is_metric {
        true => tenths_alone(tenths_of_sq_m(area)),
        false => thousands(area.whole_sq_ft()),
    }
}

/// Areas and their total as numbers that add up as printed, the total with its unit: whole square feet, or in a metric
/// file tenths of a square meter; where those do not add up, hundredths. `None` if those do not either.
pub(crate) fn sum_as_printed(
    areas: &[Area],
    total: Area,
    is_metric: bool,
) -> Option<(Vec<String>, String)> {
    let (unit, word, coarse) = match is_metric {
        true => (Area::SQUARE_METER, "sq m", 1),
        false => (Area::SQUARE_FOOT, "sq ft", 0),
    };
    let number = |area: Area, decimals: u32| {
        rounded_quotient(area.half_nm2() * 10_i128.pow(decimals), unit.half_nm2())
    };
    let text = |number: i128, decimals: u32| {
        let text = Decimal::from_i128_with_scale(number, decimals).to_string();
        let (whole, point) = text.split_at(text.find('.').unwrap_or(text.len()));
        format!("{}{point}", group_thousands(whole))
    };
    let decimals = [coarse, 2].into_iter().find(|&decimals| {
        areas.iter().map(|area| number(*area, decimals)).sum::<i128>() == number(total, decimals)
    })?;
    let numbers = areas.iter().map(|area| text(number(*area, decimals), decimals)).collect();
    let rounded = text(number(total, coarse), coarse);
    let sum = match decimals == coarse {
        true => format!("{rounded} {word}"),
        false => format!("{}, rounded {rounded} {word}", text(number(total, decimals), decimals)),
    };
    Some((numbers, sum))
}

/// A step from one area to another with its sign: `+22`; in a metric file in square meters, `+2.2`.
pub(crate) fn step_alone(from: Area, to: Area, is_metric: bool) -> String {
    let (size, number) = match is_metric {
        true => {
            let tenths = tenths_of_sq_m(to) - tenths_of_sq_m(from);
            (tenths, tenths_alone(tenths.abs()))
        }
        false => {
            let feet = to.whole_sq_ft() - from.whole_sq_ft();
            (i128::from(feet), thousands(feet.abs()))
        }
    };
    match size {
        0 => "0".to_owned(),
        1.. => format!("+{number}"),
        _ => format!("\u{2212}{number}"),
    }
}

/// A step in the list of steps: `+22`; in a metric file `+2.2 sq m (+23 sq ft)`.
pub(crate) fn step(from: Area, to: Area, is_metric: bool) -> String {
    let feet = step_alone(from, to, false);
    if !is_metric {
        return feet;
    }
    if feet == "0" && step_alone(from, to, true) == "0" {
        return "0 sq m".to_owned();
    }
    format!("{} sq m ({feet} sq ft)", step_alone(from, to, true))
}

/// What is left of a step without a space of this size, as the three are printed, without its sign and whether it is
/// negative: the step of 35.2 sq m less 29.3 sq m is 5.9 sq m.
pub(crate) fn step_less(from: Area, to: Area, size: Area, is_metric: bool) -> String {
    let feet = (to.whole_sq_ft() - from.whole_sq_ft()).abs() - size.whole_sq_ft().abs();
    if !is_metric {
        return thousands(feet.abs());
    }
    let tenths = (tenths_of_sq_m(to) - tenths_of_sq_m(from)).abs() - tenths_of_sq_m(size).abs();
    format!("{} ({} sq ft)", tenths_text(tenths.abs()), thousands(feet.abs()))
}

/// From where to where a step may lead, as the changes it makes to an area as printed: `−16 to +43`; in a metric file
/// `−1.5 to +4.0 sq m (−16 to +43 sq ft)`; if the areas that it may lead to are `few`, each by itself, with "or". `None`
/// if both ends are the same.
pub(crate) fn step_range(
    from: Area,
    range: Range,
    few: &[Area],
    is_metric: bool,
) -> Option<String> {
    let ends = |is_metric: bool| {
        [range.low, range.high].map(|change| step_alone(from, from + change, is_metric))
    };
    let changes = |is_metric: bool| {
        let [low, high] = ends(is_metric);
        let each = few.iter().map(|&area| step_alone(from, area, is_metric));
        let mut each: Vec<String> = each.collect();
        each.dedup();
        (low != high).then(|| match each.len() {
            0 | 1 => format!("{low} to {high}"),
            _ => words::list_or(&each),
        })
    };
    let feet = changes(false)?;
    // A change that shows in square meters alone would look like none in square feet.
    let is_unlike =
        ends(true).iter().zip(ends(false)).any(|(sq_m, sq_ft)| (sq_m == "0") != (sq_ft == "0"));
    Some(match changes(true).filter(|_| is_metric) {
        Some(meters) if is_unlike => format!("{meters} sq m"),
        Some(meters) => format!("{meters} sq m ({feet} sq ft)"),
        None if is_metric => format!("{feet} sq ft"),
        None => feet,
    })
}

/// A range of areas: `1,530 to 1,581`, or one number if both ends are printed alike; in a metric file
/// `142.1 to 146.9 sq m (1,530 to 1,581 sq ft)`.
pub(crate) fn range_size(range: Range, is_metric: bool) -> String {
    let ends = |is_metric: bool| {
        let [low, high] = [range.low, range.high].map(|area| number_alone(area, is_metric));
        if low == high { low } else { format!("{low} to {high}") }
    };
    match is_metric {
        true => format!("{} sq m ({} sq ft)", ends(true), ends(false)),
        false => ends(false),
    }
}

/// A range beside an area that is printed in the same paragraph. In a metric file its square feet are called near ones if
/// one of its ends has as many of them as that area and other square meters, which would look like a contradiction.
pub(crate) fn range_beside(range: Range, area: Area, is_metric: bool) -> String {
    let is_unlike = [range.low, range.high].into_iter().any(|end| {
        end.whole_sq_ft() == area.whole_sq_ft() && tenths_of_sq_m(end) != tenths_of_sq_m(area)
    });
    let both = range_size(range, is_metric);
    match is_metric && is_unlike {
        true => both.replacen(" (", " (about ", 1),
        false => both,
    }
}

/// An area inside a sentence that has said what it is about: `1,757`; in a metric file in both units.
pub(crate) fn number_or_size(area: Area, is_metric: bool) -> String {
    if is_metric { size(area, true) } else { number_alone(area, false) }
}

/// The units that an area is printed in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Units {
    /// Square feet alone.
    Feet,
    /// Square feet, with square meters after them: a metric file beside a figure in square feet.
    FeetFirst,
    /// Square meters, with square feet after them.
    MetersFirst,
}

impl Units {
    /// For a figure: its own unit comes first.
    pub(crate) fn beside(figure: WrittenArea, is_metric: bool) -> Units {
        match (is_metric, figure.unit()) {
            (false, _) => Units::Feet,
            (true, AreaUnit::SquareFeet) => Units::FeetFirst,
            (true, _) => Units::MetersFirst,
        }
    }

    /// Whether square meters come first.
    pub(crate) fn are_meters(self) -> bool {
        self == Units::MetersFirst
    }

    /// An area in the first unit, and in the second if there is one.
    pub(crate) fn both(self, area: Area) -> (String, Option<String>) {
        match self {
            Units::Feet => (square_feet(area), None),
            Units::FeetFirst => (square_feet(area), Some(square_meters(area))),
            Units::MetersFirst => (square_meters(area), Some(square_feet(area))),
        }
    }

    /// An area with the second unit in parentheses: `990 sq ft (92.0 sq m)`.
    pub(crate) fn size(self, area: Area) -> String {
        match self.both(area) {
            (first, None) => first,
            (first, Some(second)) => format!("{first} ({second})"),
        }
    }

    /// The area of a figure, with what was typed if that was in neither unit.
    pub(crate) fn typed_size(self, area: WrittenArea) -> String {
        match self {
            Units::FeetFirst => self.size(area.area()),
            _ => typed_size(area, self.are_meters()),
        }
    }

    /// The area of a figure in the first unit alone, square meters with the digits that were typed.
    pub(crate) fn typed_first(self, area: WrittenArea) -> String {
        match self {
            Units::MetersFirst => format!("{} sq m", typed_number_alone(area, true)),
            _ => square_feet(area.area()),
        }
    }

    /// The difference between two areas as printed, without its sign.
    pub(crate) fn apart(self, one: Area, other: Area) -> String {
        let both = size_apart(one, other, self != Units::Feet);
        match (self, both.split_once(" (")) {
            (Units::FeetFirst, Some((meters, feet))) => {
                format!("{} ({meters})", feet.trim_end_matches(')'))
            }
            _ => both,
        }
    }
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
/// `137 sq m (1,475 sq ft)`, with the digits that were typed, and what was typed if it was in neither.
pub(crate) fn typed_size(area: WrittenArea, is_metric: bool) -> String {
    match (area.unit(), is_metric) {
        (AreaUnit::SquareFeet, _) => size(area.area(), is_metric),
        (AreaUnit::SquareMeters, true) => format!("{area} ({})", square_feet(area.area())),
        _ => format!("{} ({area})", size(area.area(), is_metric)),
    }
}

/// The number of a figure alone, in the unit of [`step_alone`]; square meters with the digits that were typed.
pub(crate) fn typed_number_alone(area: WrittenArea, is_metric: bool) -> String {
    match (area.unit(), is_metric) {
        (AreaUnit::SquareMeters, true) => area.to_string().trim_end_matches(" sq m").to_owned(),
        _ => number_alone(area.area(), is_metric),
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
    size(area_of_sq_ft(sq_ft), is_metric)
}

/// An area that is given in whole square feet.
pub(crate) fn area_of_sq_ft(sq_ft: i64) -> Area {
    Area::from_half_nm2(i128::from(sq_ft) * Area::SQUARE_FOOT.half_nm2())
}
