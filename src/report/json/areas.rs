//! The areas in the report for programs: totals, spaces, their sides, and lots.

use schemars::JsonSchema;
use serde::Serialize;

use super::{MisclosureReport, SettingsReport, SourceReport, misclosed, one_place};
use crate::areas::range::Range;
use crate::areas::{Areas, EquallyNear, SideRow, Total};
use crate::diagnostic::sha256;
use crate::units::area::Area;
use crate::units::decimal::six_decimals;
use crate::units::length::Length;

/// The areas alone, as `area --json` prints them: the same keys, without the figures.
#[derive(Debug, Serialize, JsonSchema)]
pub struct AreasReport {
    /// The number of this format. Keys may be added to it but are never renamed.
    pub format: u32,
    /// The property, as stated in the file.
    pub property: Option<String>,
    /// The sides file.
    pub source: SourceReport,
    /// The settings the sides were rounded with.
    pub settings: SettingsReport,
    /// Totals of the counted spaces.
    pub totals: Totals,
    /// The spaces in file order.
    pub spaces: Vec<SpaceReport>,
    /// The lots in file order.
    pub lots: Vec<LotReport>,
}

/// The totals of the counted spaces.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Totals {
    /// The total above grade.
    pub gross: TotalReport,
    /// The total on levels wholly or partly below grade; null if nothing is counted there.
    pub below_grade_gross: Option<TotalReport>,
}

/// One total under each rule.
#[derive(Debug, Serialize, JsonSchema)]
pub struct TotalReport {
    /// The total with each side rounded to the whole foot.
    pub whole_foot: WholeFootTotal,
    /// The total with each side rounded by the finer rule.
    pub tenth_foot: TenthFootTotal,
    /// The total with no side rounded.
    pub as_measured: MeasuredTotal,
}

/// A total with each side rounded to the whole foot.
#[derive(Debug, Serialize, JsonSchema)]
pub struct WholeFootTotal {
    /// The total in whole square feet.
    pub sq_ft: i64,
    /// The exact total in square feet.
    pub exact: String,
    /// The lowest total possible under whole-foot rounding, in square feet; null if the range cannot be computed.
    pub low: Option<i64>,
    /// The highest total possible under whole-foot rounding, in square feet; null if the range cannot be computed.
    pub high: Option<i64>,
    /// The lowest total in square feet if any wall may be rounded up or down; null if it cannot be computed.
    pub widest_low: Option<i64>,
    /// The highest total in square feet if any wall may be rounded up or down; null if it cannot be computed.
    pub widest_high: Option<i64>,
    /// Other totals, in whole square feet, from closings as near to the typed lengths as the one shown; null if there
    /// are too many to list.
    pub equally_near: Option<Vec<i64>>,
}

/// A total with each side rounded by the finer rule, to a tenth of a foot or to the inch.
#[derive(Debug, Serialize, JsonSchema)]
pub struct TenthFootTotal {
    /// The total in whole square feet.
    pub sq_ft: i64,
    /// The exact total in square feet.
    pub exact: String,
    /// The uncertainty in square feet, plus or minus, at about 95%, including stated and assumed thicknesses.
    pub plus_minus: String,
    /// The largest possible error in square feet, plus or minus, if every wall and thickness were off in the same
    /// direction.
    pub worst_case: String,
    /// Other totals, in whole square feet, from closings as near to the typed lengths as the one shown; null if there
    /// are too many to list.
    pub equally_near: Option<Vec<i64>>,
}

/// A total with no side rounded.
#[derive(Debug, Serialize, JsonSchema)]
pub struct MeasuredTotal {
    /// The total in whole square feet.
    pub sq_ft: i64,
    /// The exact total in square feet.
    pub exact: String,
    /// The uncertainty in square feet, plus or minus, at about 95%.
    pub plus_minus: String,
    /// The largest possible error in square feet, plus or minus, if every wall were off in the same direction.
    pub worst_case: String,
}

/// One space.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SpaceReport {
    /// Its name.
    pub name: String,
    /// Its kind, as in the sides file.
    pub kind: &'static str,
    /// The name of its level.
    pub level: String,
    /// Whether it is counted in a total.
    pub counted: bool,
    /// Whether it is living space that is not connected to the main living space.
    pub detached: bool,
    /// Whether the file counts it, or leaves it uncounted, against the rule.
    pub claimed: bool,
    /// The name of the space it lies in or is deducted from; null if there is none.
    pub within: Option<String>,
    /// The face that was measured: `outside`, `frame` or `inside`.
    pub face: &'static str,
    /// Its perimeter as measured, in feet.
    pub perimeter_ft: String,
    /// Where its sides end relative to their start, before adjustment.
    pub misclosure: MisclosureReport,
    /// Its sides in walking order.
    pub sides: Vec<SideReport>,
    /// Its area with no side rounded, in square feet.
    pub as_measured: String,
    /// Its area on the record, in square feet; null if the file does not state it.
    pub recorded_sq_ft: Option<String>,
    /// Its area with each side rounded by the finer rule.
    pub tenth_foot: TenthFootSpace,
    /// Its area with each side rounded to the whole foot.
    pub whole_foot: WholeFootSpace,
}

/// The area of a space with each side rounded by the finer rule (to a tenth of a foot, or to the inch), in square
/// feet.
#[derive(Debug, Serialize, JsonSchema)]
pub struct TenthFootSpace {
    /// The whole outline, without deductions.
    pub exact: String,
    /// After deducting the spaces inside it.
    pub net: String,
}

/// The area of a space with each side rounded to the whole foot, in square feet.
#[derive(Debug, Serialize, JsonSchema)]
pub struct WholeFootSpace {
    /// The whole outline, without deductions.
    pub exact: String,
    /// After deducting the spaces inside it.
    pub net: String,
    /// The lowest area possible under whole-foot rounding; null if the range cannot be computed.
    pub low: Option<String>,
    /// The highest area possible under whole-foot rounding; null if the range cannot be computed.
    pub high: Option<String>,
    /// The lowest area if any wall may be rounded up or down; null if it cannot be computed.
    pub widest_low: Option<String>,
    /// The highest area if any wall may be rounded up or down; null if it cannot be computed.
    pub widest_high: Option<String>,
}

/// One side.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SideReport {
    /// The word that begins it: `north`, `east`, `south`, `west`, `diagonal`, `bearing` or `arc`.
    pub direction: &'static str,
    /// What was typed after that word.
    pub typed: String,
    /// Its length at the measured face after closing, in feet.
    pub feet: String,
    /// Its length at the outside face, rounded by the finer rule, in feet; null if nothing of it is left there.
    pub tenth_foot: Option<String>,
    /// Its length at the outside face, rounded to the whole foot, in feet; null if nothing of it is left there.
    pub whole_foot: Option<String>,
    /// Its length on the record, in feet; null if the file does not state it.
    pub recorded: Option<String>,
    /// How its length was obtained: `measured`, `closing`, `estimated`, `plan` or `record`.
    pub how: &'static str,
}

/// One lot.
#[derive(Debug, Serialize, JsonSchema)]
pub struct LotReport {
    /// Its name.
    pub name: String,
    /// Its area in square feet.
    pub sq_ft: String,
    /// Its area in acres.
    pub acres: String,
    /// Its area on the record, in square feet; null if the file does not state it.
    pub recorded_sq_ft: Option<String>,
    /// Where its calls end relative to their start, before adjustment.
    pub misclosure: MisclosureReport,
    /// How well the calls close; null if they close exactly, or if the last one is computed.
    pub closure: Option<ClosureReport>,
}

/// How well the calls of a lot close.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ClosureReport {
    /// The distance between their end and their start, in feet.
    pub distance_ft: String,
    /// The perimeter divided by that distance, rounded down to three digits.
    pub ratio: i64,
}

/// The report of areas alone.
pub(in crate::report) fn areas_report(areas: &Areas) -> AreasReport {
    let (house, settings) = (areas.house(), areas.settings());
    AreasReport {
        format: 1,
        property: house.particulars.property.clone(),
        source: SourceReport {
            file: house.source().name().to_owned(),
            sha256: sha256(house.source().text()),
        },
        settings: SettingsReport {
            ties: match settings.halves {
                crate::units::length::Halves::Up => "up",
                crate::units::length::Halves::Down => "down",
                crate::units::length::Halves::Even => "even",
            },
            step: settings.fine.word(),
            reach_ft: settings.reading.decimal_feet(),
        },
        totals: Totals {
            gross: total(areas.gross(), |whole| {
                if whole {
                    areas.equally_near_whole_foot()
                } else {
                    areas.equally_near_tenth_foot()
                }
            }),
            below_grade_gross: areas
                .below_grade()
                .map(|below| total(below, |_| EquallyNear::default())),
        },
        spaces: (0..house.spaces.len()).map(|i| space(areas, i)).collect(),
        lots: house.lots.iter().map(lot).collect(),
    }
}

fn total(total: &Total, equally_near: impl Fn(bool) -> EquallyNear) -> TotalReport {
    let near = |whole: bool| {
        let others = equally_near(whole);
        others.is_complete().then(|| others.totals().to_vec())
    };
    let low = |range: Option<Range>| range.map(|range| range.low.whole_sq_ft());
    let high = |range: Option<Range>| range.map(|range| range.high.whole_sq_ft());
    TotalReport {
        whole_foot: WholeFootTotal {
            sq_ft: total.whole_foot().whole_sq_ft(),
            exact: total.whole_foot().sq_ft_text(),
            low: low(total.range()),
            high: high(total.range()),
            widest_low: low(total.widest()),
            widest_high: high(total.widest()),
            equally_near: near(true),
        },
        tenth_foot: TenthFootTotal {
            sq_ft: total.tenth_foot().whole_sq_ft(),
            exact: total.tenth_foot().sq_ft_text(),
            plus_minus: one_place(total.plus_minus_outside()),
            worst_case: one_place(total.worst_case_outside()),
            equally_near: near(false),
        },
        as_measured: MeasuredTotal {
            sq_ft: total.as_measured().whole_sq_ft(),
            exact: total.as_measured().sq_ft_text(),
            plus_minus: one_place(total.plus_minus()),
            worst_case: one_place(total.worst_case()),
        },
    }
}

fn space(areas: &Areas, number: usize) -> SpaceReport {
    let house = areas.house();
    let (here, its) = (&house.spaces[number], &areas.spaces[number]);
    let low = |range: Option<Range>| range.map(|range| range.low.sq_ft_text());
    let high = |range: Option<Range>| range.map(|range| range.high.sq_ft_text());
    let misclosure = here.closed.misclosure;
    SpaceReport {
        name: here.name.clone(),
        kind: here.kind.word(),
        level: house.levels[here.level].name.clone(),
        counted: here.counted,
        detached: here.detached,
        claimed: here.claimed,
        within: here.parent.map(|parent| house.spaces[parent].name.clone()),
        face: here.face.word(),
        perimeter_ft: here.closed.outline.perimeter().decimal_feet(),
        misclosure: misclosed(Length::from_nm(misclosure.north), Length::from_nm(misclosure.east)),
        sides: areas.side_rows(number).into_iter().map(side).collect(),
        as_measured: its.as_measured.sq_ft_text(),
        recorded_sq_ft: here.recorded.map(Area::sq_ft_text),
        tenth_foot: TenthFootSpace {
            exact: its.tenth_foot().area().sq_ft_text(),
            net: its.net_tenth_foot.sq_ft_text(),
        },
        whole_foot: WholeFootSpace {
            exact: its.whole_foot().area().sq_ft_text(),
            net: its.net_whole_foot.sq_ft_text(),
            low: low(its.range()),
            high: high(its.range()),
            widest_low: low(its.widest()),
            widest_high: high(its.widest()),
        },
    }
}

fn side(row: SideRow) -> SideReport {
    let feet = |length: Option<Length>| length.map(Length::decimal_feet);
    SideReport {
        direction: row.direction,
        typed: row.typed,
        feet: row.measured.decimal_feet(),
        tenth_foot: feet(row.tenth_foot),
        whole_foot: feet(row.whole_foot),
        recorded: feet(row.recorded),
        how: row.how.word(),
    }
}

fn lot(lot: &crate::house::Lot) -> LotReport {
    let area = lot.outline().area();
    let (north, east) = lot.misclosure();
    LotReport {
        name: lot.name.clone(),
        sq_ft: area.sq_ft_text(),
        acres: six_decimals(area.half_nm2(), Area::ACRE.half_nm2()),
        recorded_sq_ft: lot.recorded().map(Area::sq_ft_text),
        misclosure: misclosed(north, east),
        closure: lot
            .closure()
            .map(|(distance, ratio)| ClosureReport { distance_ft: distance.decimal_feet(), ratio }),
    }
}
