//! The report for programs: the keys of format 1, and their JSON Schema.
//!
//! Exact decimals are strings with up to six decimals and no trailing zeros; whole square feet are numbers.
//! `tenth_foot` and `whole_foot` are at the outside face, `as_measured` is at the face that was measured. What cannot
//! be computed or is not stated in the file is null.

use schemars::JsonSchema;
use serde::Serialize;

use crate::areas::range::Range;
use crate::areas::{Areas, EquallyNear, SideRow, Total};
use crate::diagnostic::{Diagnostic, Severity, Source, sha256};
use crate::house::wall_moves::Assumed;
use crate::house::{SideNumber, SideRule};
use crate::reconcile::{BridgeStep, Figure, OutlineReport, Reconciliation};
use crate::report::map_json;
use crate::report::map_json::MapOutlineReport;
use crate::report::worth_json;
use crate::report::worth_json::WorthReport;
use crate::units::area::Area;
use crate::units::decimal::six_decimals;
use crate::units::length::Length;
use crate::value::Worth;
use crate::wording::sentences::Sentences;

/// The whole report of `reconcile --json`.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Report {
    /// The areas, with their keys at the top level.
    #[serde(flatten)]
    pub areas: AreasReport,
    /// Spaces that the record lists but that were not found on site.
    pub missing: Vec<MissingReport>,
    /// Outlines from a record, a plan or a map.
    pub outlines: Vec<DrawnReport>,
    /// Outlines from maps, mostly roofs, laid over the walls; none of them decides an area. Absent where the file has none.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub map_outlines: Vec<MapOutlineReport>,
    /// The published figures, the record first, the others in file order.
    pub figures: Vec<FigureReport>,
    /// What the gap is worth; absent if the file states no values, dates or sales.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub worth: Option<WorthReport>,
    /// Thicknesses that had to be assumed.
    pub assumed: Vec<AssumedReport>,
    /// Warnings in file order.
    pub warnings: Vec<WarningReport>,
}

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

/// The sides file that was read.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SourceReport {
    /// Its name, as it was given to the program.
    pub file: String,
    /// The SHA-256 of its text, in hexadecimal.
    pub sha256: String,
}

/// How sides are rounded.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SettingsReport {
    /// Where a length exactly halfway between two rounding units goes: `up`, `down` or `even`.
    pub ties: &'static str,
    /// The unit to which the finer rule rounds: `tenth-foot` or `inch`. `tenth_foot` stands for either.
    pub step: &'static str,
    /// How far off an office's tape reading may be, plus or minus, in feet.
    pub reach_ft: String,
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

/// Where sides end relative to their start, before adjustment.
#[derive(Debug, Serialize, JsonSchema)]
pub struct MisclosureReport {
    /// Feet to the north; negative to the south.
    pub north_ft: String,
    /// Feet to the east; negative to the west.
    pub east_ft: String,
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

/// A space that the record lists but that was not found on site.
#[derive(Debug, Serialize, JsonSchema)]
pub struct MissingReport {
    /// Its name.
    pub name: String,
    /// Its kind, as in the sides file.
    pub kind: &'static str,
    /// Its area on the record, in square feet.
    pub recorded_sq_ft: String,
}

/// An outline from a record, a plan or a map.
#[derive(Debug, Serialize, JsonSchema)]
pub struct DrawnReport {
    /// Where the outline comes from: `record`, `plan` or `map`.
    pub of: &'static str,
    /// Its name.
    pub name: String,
    /// The name of the space that it is compared with; null if there is none.
    pub space: Option<String>,
    /// Its area in square feet; null if it does not close.
    pub sq_ft: Option<String>,
    /// Where its sides end, relative to their start.
    pub misclosure: MisclosureReport,
    /// Whether every wall is matched by a measured wall, one to one.
    pub same_corners: bool,
    /// The walls that are matched by a measured wall.
    pub sides: Vec<DrawnSideReport>,
    /// Stretches where its walls differ from the measured ones.
    pub instead: Vec<InsteadReport>,
}

/// Consecutive measured walls, and the walls that the outline has in their place; either list may be empty.
#[derive(Debug, Serialize, JsonSchema)]
pub struct InsteadReport {
    /// The numbers of the measured sides, from 1.
    pub sides: Vec<usize>,
    /// The numbers of the outline's sides, from 1.
    pub drawn_sides: Vec<usize>,
}

/// A wall of the outline and the measured wall that matches it.
#[derive(Debug, Serialize, JsonSchema)]
pub struct DrawnSideReport {
    /// The number of the measured side, from 1.
    pub side: usize,
    /// The number of the outline's side, from 1.
    pub drawn_side: usize,
    /// The measured length, in feet.
    pub measured_ft: String,
    /// The outline's length, in feet.
    pub drawn_ft: String,
}

/// One published figure.
#[derive(Debug, Serialize, JsonSchema)]
pub struct FigureReport {
    /// Where it comes from: `record`, `listing`, `plan` or `figure`.
    pub kind: &'static str,
    /// Its title, or the name it was given; null if it has neither.
    pub title: Option<String>,
    /// The figure in square feet, with decimals only if it was given with them.
    #[schemars(with = "f64")]
    pub sq_ft: serde_json::Number,
    /// The face that it is assumed to be measured to.
    pub measured_to: &'static str,
    /// How its sides are assumed to be rounded.
    pub sides: &'static str,
    /// The measured area that the steps start from, in square feet.
    pub start: String,
    /// The measured area at the figure's own face and with what it counts, in square feet.
    pub same_way: String,
    /// The figure minus the measured area, in square feet; positive if the figure is larger.
    pub gap: String,
    /// Steps that add up to the gap.
    pub bridge: Vec<BridgeReport>,
    /// The area of its own sides or sketch, in square feet; null unless they cover everything that is counted.
    pub own_sketch_sq_ft: Option<String>,
    /// What each recorded side adds to the step of recorded sides.
    pub recorded_sides: Vec<ShareReport>,
    /// Whether rounding alone could explain the gap.
    pub rounding: RoundingReport,
    /// Explanations of the gap: those that are reported first, then the best supported.
    pub explanations: Vec<ExplanationReport>,
    /// The support for any cause that is not listed, from 0 to 0.99.
    pub something_else: String,
    /// How many combinations of departures were weighed.
    pub weighed: u64,
    /// How many of those combinations fit the figure.
    pub fitting: u64,
    /// What another line of the record shows about its rounding, in a sentence; null if none shows anything.
    pub evidence: Option<String>,
    /// What would settle which of the reported explanations is right, in the words of the report.
    pub settle: Vec<String>,
    /// What to check again in the house's own measurements, in sentences.
    pub questions: Vec<String>,
    /// What to ask the publisher of the figure for, in a sentence.
    pub request: String,
}

/// One combination of departures from the rule.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ExplanationReport {
    /// The labels of the departures; empty if there are none.
    pub departures: Vec<String>,
    /// The figure that would result, in square feet.
    pub sq_ft: String,
    /// The published figure minus that, in square feet.
    pub leaves: String,
    /// Whether it fits: whether rounding can account for what is left.
    pub fits: bool,
    /// Its support from 0 to 0.99, over all ways of rounding.
    pub support: String,
    /// The kind of mistake that it is: `typed`, `described` or `measured`; null if there are no departures.
    pub class: Option<&'static str>,
    /// Whether it is reported: it fits, and has more support than something else.
    pub told: bool,
    /// How strong it is, if it is reported: `only` (the only common cause that fits), `likeliest` or `also fits`;
    /// null if it is not reported.
    pub strength: Option<&'static str>,
}

/// One step of the difference between measured area and figure.
#[derive(Debug, Serialize, JsonSchema)]
pub struct BridgeReport {
    /// The stable name of the step.
    pub line: &'static str,
    /// What the step adds, in square feet.
    pub sq_ft: String,
    /// For rounding: the least it could add, in square feet; null if that cannot be computed. Absent for other steps.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub low: Option<Option<String>>,
    /// For rounding: the most it could add, in square feet; null if that cannot be computed. Absent for other steps.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub high: Option<Option<String>>,
    /// For counting: the names of what is counted.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub counted: Vec<String>,
}

/// What one recorded side adds.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ShareReport {
    /// The name of the space.
    pub space: String,
    /// The number of the side, from 1.
    pub side: usize,
    /// Its length rounded by the figure's rule, in feet.
    pub ruled_ft: String,
    /// Its recorded length, in feet.
    pub recorded_ft: String,
    /// What the difference adds to the area, in square feet.
    pub sq_ft: String,
}

/// Whether rounding alone could explain the gap.
#[derive(Debug, Serialize, JsonSchema)]
pub struct RoundingReport {
    /// The typical effect of whole-foot rounding on this house, in square feet; null if any side is given by bearing.
    pub typical: Option<String>,
    /// `yes`, `only against the rounding` or `no`; null if the range cannot be computed.
    pub could_explain: Option<&'static str>,
    /// The nearest possible areas below and above a figure that no whole-foot outline gives. Null if one gives it, if
    /// the figure is outside the range, or if there are too many outlines to try.
    pub between: Option<[String; 2]>,
    /// The lowest area possible under whole-foot rounding, at the figure's face, in square feet; null if it cannot be
    /// computed.
    pub low: Option<String>,
    /// The highest area possible under whole-foot rounding, at the figure's face, in square feet; null if it cannot
    /// be computed.
    pub high: Option<String>,
    /// The lowest area in square feet if any wall may be rounded up or down; null if it cannot be computed.
    pub widest_low: Option<String>,
    /// The highest area in square feet if any wall may be rounded up or down; null if it cannot be computed.
    pub widest_high: Option<String>,
}

/// A thickness that was assumed.
#[derive(Debug, Serialize, JsonSchema)]
pub struct AssumedReport {
    /// What was assumed: `veneer`, `wall` or `common wall`.
    pub what: &'static str,
    /// The thickness that was assumed, as text.
    pub thickness: String,
    /// The uncertainty of that thickness, plus or minus, as text.
    pub plus_minus: &'static str,
}

/// One warning.
#[derive(Debug, Serialize, JsonSchema)]
pub struct WarningReport {
    /// Its stable code word.
    pub word: &'static str,
    /// The line of the file, from 1.
    pub line: usize,
    /// The message.
    pub message: String,
}

/// One error or warning of `check --json`.
#[derive(Debug, Serialize, JsonSchema)]
pub struct FaultReport {
    /// The name of the file.
    pub file: String,
    /// `error`, `warning` or `note`.
    pub severity: &'static str,
    /// Its stable code word.
    pub word: &'static str,
    /// The line of the file, from 1.
    pub line: usize,
    /// The column in characters, from 1.
    pub column: usize,
    /// The message.
    pub message: String,
    /// What to type or do instead, one item per suggestion.
    pub help: Vec<String>,
}

/// The report of a reconciliation.
pub(super) fn report(reconciliation: &Reconciliation, worth: Option<&Worth>) -> Report {
    let house = reconciliation.house();
    let areas = reconciliation.areas();
    Report {
        areas: areas_report(areas),
        missing: house
            .missing
            .iter()
            .map(|missing| MissingReport {
                name: missing.name.clone(),
                kind: missing.kind.word(),
                recorded_sq_ft: missing.recorded.area().sq_ft_text(),
            })
            .collect(),
        outlines: reconciliation.outlines().iter().map(drawn_report).collect(),
        map_outlines: reconciliation
            .maps()
            .iter()
            .map(|map| map_json::map_outline(house, map))
            .collect(),
        figures: reconciliation.figures().iter().map(|one| figure(reconciliation, one)).collect(),
        worth: worth.map(worth_json::worth),
        assumed: assumed(reconciliation.assumed()),
        warnings: reconciliation
            .warnings()
            .iter()
            .map(|warning| warning_report(house.source(), warning))
            .collect(),
    }
}

/// The report of areas alone.
pub(super) fn areas_report(areas: &Areas) -> AreasReport {
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

/// The JSON Schema of [`Report`].
#[must_use]
pub fn schema() -> serde_json::Value {
    schemars::schema_for!(Report).to_value()
}

/// The errors and warnings of a file, as `check --json` prints them.
pub fn faults(source: &Source, list: &[Diagnostic]) -> Vec<FaultReport> {
    list.iter()
        .map(|fault| FaultReport {
            file: source.name().to_owned(),
            severity: match fault.word().severity() {
                Severity::Error => "error",
                Severity::Warning => "warning",
                Severity::Note => "note",
            },
            word: fault.word().as_str(),
            line: source.line(fault.span().start),
            column: source.column(fault.span().start),
            message: fault.message().to_owned(),
            help: fault.helps().to_vec(),
        })
        .collect()
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

/// A float with at most one decimal.
fn one_place(number: f64) -> String {
    let text = format!("{number:.1}");
    let text = text.strip_suffix(".0").map(str::to_owned).unwrap_or(text);
    if text == "-0" { "0".to_owned() } else { text }
}

fn misclosed(north: Length, east: Length) -> MisclosureReport {
    MisclosureReport { north_ft: north.decimal_feet(), east_ft: east.decimal_feet() }
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

fn drawn_report(outline: &OutlineReport) -> DrawnReport {
    DrawnReport {
        of: outline.drawn.word(),
        name: outline.name.clone(),
        space: outline.space.as_ref().map(|(_, name)| name.clone()),
        sq_ft: outline.area.map(Area::sq_ft_text),
        misclosure: misclosed(outline.misses.0, outline.misses.1),
        same_corners: outline.same_corners,
        sides: outline
            .matched
            .iter()
            .map(|side| DrawnSideReport {
                side: side.ours.get(),
                drawn_side: side.theirs.get(),
                measured_ft: side.measured.decimal_feet(),
                drawn_ft: side.drawn.decimal_feet(),
            })
            .collect(),
        instead: outline
            .instead
            .iter()
            .map(|instead| InsteadReport {
                sides: instead.ours().map(SideNumber::get).collect(),
                drawn_sides: instead.theirs().map(SideNumber::get).collect(),
            })
            .collect(),
    }
}

fn figure(reconciliation: &Reconciliation, figure: &Figure) -> FigureReport {
    let say = Sentences::of(reconciliation.areas());
    let low = |range: Option<Range>| range.map(|range| range.low.sq_ft_text());
    let high = |range: Option<Range>| range.map(|range| range.high.sq_ft_text());
    let test = figure.rounding_test();
    let is_rounding = |line: &crate::reconcile::Line| line.step() == BridgeStep::Rounding;
    // Shares rounded by largest remainder may move by a millionth; a line still stays within its bounds.
    let bound = |area: Area| {
        crate::units::decimal::millionths(area.half_nm2(), Area::SQUARE_FOOT.half_nm2())
    };
    let text = |millionths: i128| six_decimals(millionths, 1_000_000);
    let line = |(line, millionths): (&crate::reconcile::Line, i128)| BridgeReport {
        line: line.step().name(),
        sq_ft: six_decimals(millionths, 1_000_000),
        low: is_rounding(line)
            .then(|| line.range().map(|range| bound(range.low).min(millionths)).map(text)),
        high: is_rounding(line)
            .then(|| line.range().map(|range| bound(range.high).max(millionths)).map(text)),
        counted: line.counted().to_vec(),
    };
    let share = |share: &crate::reconcile::Share| ShareReport {
        space: share.space().to_owned(),
        side: share.side().get(),
        ruled_ft: share.ruled().decimal_feet(),
        recorded_ft: share.recorded().decimal_feet(),
        sq_ft: share.area().sq_ft_text(),
    };
    let own_name = figure.has_own_name().then(|| figure.name().to_owned());
    FigureReport {
        kind: figure.word(),
        title: figure.title().map(str::to_owned).or(own_name),
        sq_ft: number(figure.area()),
        measured_to: figure.face().word(),
        sides: match figure.side_rule() {
            SideRule::Step(step) => step.word(),
            SideRule::Unknown => "unknown",
        },
        start: figure.measured().sq_ft_text(),
        same_way: figure.measured_like_figure().sq_ft_text(),
        gap: figure_gap(figure),
        bridge: figure.lines().iter().zip(figure.lines_in_millionths()).map(line).collect(),
        own_sketch_sq_ft: figure.own_sketch().map(Area::sq_ft_text),
        recorded_sides: figure.shares().iter().map(share).collect(),
        rounding: RoundingReport {
            typical: test.typical().map(one_place),
            could_explain: test.could_explain().map(crate::reconcile::CouldExplain::words),
            between: test
                .between()
                .map(|between| [between.below, between.above].map(Area::sq_ft_text)),
            low: low(test.range()),
            high: high(test.range()),
            widest_low: low(test.widest()),
            widest_high: high(test.widest()),
        },
        explanations: figure.explanations().list().iter().map(explanation).collect(),
        something_else: support(figure.explanations().something_else()),
        weighed: figure.explanations().weighed(),
        fitting: figure.explanations().fitting(),
        evidence: say.evidence(figure),
        settle: say.settled_by(figure),
        questions: say.questions(figure),
        request: say.request(reconciliation, figure),
    }
}

fn explanation(explanation: &crate::reconcile::Explanation) -> ExplanationReport {
    ExplanationReport {
        departures: explanation.departures().to_vec(),
        sq_ft: one_place(explanation.sq_ft),
        leaves: one_place(explanation.leaves),
        fits: explanation.fits(),
        support: support(explanation.support()),
        class: explanation.class().map(crate::reconcile::CauseClass::word),
        told: explanation.is_reported(),
        strength: explanation.strength().map(crate::reconcile::Strength::word),
    }
}

/// A support with two decimals, never more than 0.99.
fn support(support: f64) -> String {
    let text = format!("{:.2}", support.min(0.99));
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// The gap between the figure and the measured area as printed, so that a reader who subtracts gets the same.
fn figure_gap(figure: &Figure) -> String {
    six_decimals(figure.lines_in_millionths().iter().sum(), 1_000_000)
}

/// A figure as a JSON number; whole if it was given without decimals.
fn number(area: Area) -> serde_json::Number {
    let text = area.sq_ft_text();
    text.parse().unwrap_or_else(|_| serde_json::Number::from(area.whole_sq_ft()))
}

fn assumed(assumed: Assumed) -> Vec<AssumedReport> {
    let all = [
        ("veneer", "4 5/8\"", assumed.veneer),
        ("wall", "4 7/16\"", assumed.wall_behind_veneer),
        ("wall", "6\"", assumed.wall),
        ("common wall", "8\"", assumed.common),
    ];
    all.into_iter()
        .filter(|(.., is)| *is)
        .map(|(what, thickness, _)| AssumedReport {
            what,
            thickness: thickness.to_owned(),
            plus_minus: if what == "common wall" { "2\"" } else { "1\"" },
        })
        .collect()
}

fn warning_report(source: &Source, warning: &Diagnostic) -> WarningReport {
    WarningReport {
        word: warning.word().as_str(),
        line: source.line(warning.span().start),
        message: warning.message().to_owned(),
    }
}
