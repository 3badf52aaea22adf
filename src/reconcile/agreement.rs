//! How a figure compares with the house measured the figure's own way: at its face, with what it counts.
//!
//! Every sentence, step, request, batch row and page that says whether two areas agree, or by how much they differ,
//! takes it from here.

use crate::house::House;
use crate::reconcile::Ground;
use crate::reconcile::counting::counted_by;
use crate::reconcile::total;
use crate::units::area::{Area, AreaUnit, WrittenArea};
use crate::units::length::Step;

/// Whether a figure and the area measured its own way agree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Agreement {
    /// To the square foot, as printed.
    ToTheSquareFoot,
    /// As precisely as a figure in square meters is written, with this many decimals.
    AsWritten { decimals: u32 },
    /// Closely enough for anyone, but not to the square foot.
    About,
    /// They differ.
    Apart,
}

impl Agreement {
    /// How a published figure compares with an area measured the same way.
    pub(crate) fn of(written: WrittenArea, area: Area) -> Agreement {
        let figure = written.area();
        if figure.whole_sq_ft() == area.whole_sq_ft() {
            Agreement::ToTheSquareFoot
        } else if is_as_written(written, area) {
            Agreement::AsWritten { decimals: written.decimals() }
        } else if is_about(figure, area) {
            Agreement::About
        } else {
            Agreement::Apart
        }
    }

    /// Whether nothing is left to explain.
    pub(crate) fn agrees(self) -> bool {
        self != Agreement::Apart
    }
}

/// Whether a figure in square meters is this area rounded to the decimals that it is written with: 71 sq m is anything
/// from 70.5 to 71.5 sq m.
fn is_as_written(written: WrittenArea, area: Area) -> bool {
    let Some(unit) = 10_i128.checked_pow(written.decimals()) else { return false };
    let apart = (written.area() - area).abs().half_nm2();
    written.unit() == AreaUnit::SquareMeters && 2 * unit * apart <= Area::SQUARE_METER.half_nm2()
}

/// Whether a figure is within 3 sq ft or 0.3% of an area, whichever is more.
fn is_about(figure: Area, area: Area) -> bool {
    const SQ_FT: i64 = 3;
    const PER_THOUSAND: i64 = 3;
    let (figure, area) = (figure.whole_sq_ft(), area.whole_sq_ft());
    let apart = (figure - area).abs();
    apart <= SQ_FT || 1_000 * apart <= PER_THOUSAND * area
}

/// The house measured as the figure says: at its face and with what it counts, but with walls not rounded to feet.
pub(super) fn measured_like_figure(house: &House, ground: &Ground<'_>) -> Area {
    let areas = match ground.rule.step {
        Step::WholeFoot | Step::HalfFoot => &ground.fine.areas,
        _ => &ground.ruled.areas,
    };
    total(house, areas) + counted_by(house, &ground.figure.counting, areas)
}

#[cfg(test)]
#[expect(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;
    use rust_decimal::Decimal;

    fn of(number: &str, unit: AreaUnit, sq_ft: f64) -> Agreement {
        let number: Decimal = number.parse().unwrap();
        Agreement::of(WrittenArea::new(number, unit).unwrap(), Area::from_float_sq_ft(sq_ft))
    }

    #[test]
    fn a_figure_in_square_meters_is_compared_as_it_is_written() {
        // 71.4849 sq m are 769.457 sq ft, 71.5 are 769.6196, 71.51 are 769.727.
        let meters = AreaUnit::SquareMeters;
        assert_eq!(of("71", meters, 769.457), Agreement::AsWritten { decimals: 0 });
        assert_eq!(of("71", meters, 769.619), Agreement::AsWritten { decimals: 0 });
        assert_eq!(of("71", meters, 769.727), Agreement::Apart);
        assert_eq!(of("71.0", meters, 769.457), Agreement::Apart);
        // 71.0 sq m are 764.238 sq ft; 71.04 are 764.668.
        assert_eq!(of("71.0", meters, 764.668), Agreement::AsWritten { decimals: 1 });
        assert_eq!(of("71.00", meters, 764.668), Agreement::About);
    }

    #[test]
    fn a_figure_in_square_feet_agrees_within_3_sq_ft_or_0_3_percent() {
        let feet = AreaUnit::SquareFeet;
        assert_eq!(of("900", feet, 900.4), Agreement::ToTheSquareFoot);
        assert_eq!(of("900", feet, 903.4), Agreement::About);
        assert_eq!(of("900", feet, 903.5), Agreement::Apart);
        assert_eq!(of("2006", feet, 2_000.0), Agreement::About);
        assert_eq!(of("2007", feet, 2_000.0), Agreement::Apart);
        assert_eq!(of("0", feet, 4.0), Agreement::Apart);
    }
}
