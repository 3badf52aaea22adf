//! The report for a program: the keys of format 1, and their schema.
//!
//! Exact decimals are texts with up to six places, trailing zeros cut; whole square feet are
//! numbers. `tenth_foot` and `whole_foot` stand at the outside face, `as_measured` at the face that
//! was measured. What cannot be stated is null.

use schemars::JsonSchema;
use serde::Serialize;

use crate::areas::range::Range;
use crate::areas::{Areas, EquallyNear, SideRow, Total};
use crate::diagnostic::{Diagnostic, Source, sha256};
use crate::house::SideRule;
use crate::house::wall_moves::Assumed;
use crate::reconcile::{BridgeStep, Figure, OutlineReport, Reconciliation};
use crate::report::worth_json;
use crate::report::worth_json::WorthReport;
use crate::units::area::Area;
use crate::units::decimal::six_decimals;
use crate::units::length::Length;
use crate::value::Worth;

/// The whole report of `reconcile --json`.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Report {
    /// The areas, under their own keys.
    #[serde(flatten)]
    pub areas: AreasReport,
    /// What the record lists and is not there.
    pub missing: Vec<MissingReport>,
    /// Somebody else's outlines.
    pub outlines: Vec<DrawnReport>,
    /// Each published figure in file order.
    pub figures: Vec<FigureReport>,
    /// What the gap is worth; absent where the file says nothing of values, dates or sales.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub worth: Option<WorthReport>,
    /// What had to be assumed.
    pub assumed: Vec<AssumedReport>,
    /// Warnings in file order.
    pub warnings: Vec<WarningReport>,
}

/// The areas alone, as `area --json` prints them: the same keys without the figures.
#[derive(Debug, Serialize, JsonSchema)]
pub struct AreasReport {
    /// The number of this format; keys are added within it, never renamed.
    pub format: u32,
    /// The property line of the file.
    pub property: Option<String>,
    /// Where it came from.
    pub source: SourceReport,
    /// How sides were rounded.
    pub settings: SettingsReport,
    /// Totals of what is counted.
    pub totals: Totals,
    /// Each space in file order.
    pub spaces: Vec<SpaceReport>,
    /// Each lot in file order.
    pub lots: Vec<LotReport>,
}

/// The file.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SourceReport {
    /// Its name as given.
    pub file: String,
    /// Its fingerprint.
    pub sha256: String,
}

/// How sides were rounded.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SettingsReport {
    /// `up`, `down` or `even`.
    pub ties: &'static str,
    /// What `tenth_foot` rounds each side to: `tenth-foot` or `inch`.
    pub step: &'static str,
    /// How well an office reads its tape, in feet.
    pub reach_ft: String,
}

/// Totals of what is counted.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Totals {
    /// Above grade.
    pub gross: TotalReport,
    /// On levels below grade, wholly or partly; null where nothing is counted there.
    pub below_grade_gross: Option<TotalReport>,
}

/// One total.
#[derive(Debug, Serialize, JsonSchema)]
pub struct TotalReport {
    /// Each side to the whole foot.
    pub whole_foot: WholeFootTotal,
    /// Each side to the tenth of a foot.
    pub tenth_foot: TenthFootTotal,
    /// No side rounded.
    pub as_measured: MeasuredTotal,
}

/// A total with each side to the whole foot.
#[derive(Debug, Serialize, JsonSchema)]
pub struct WholeFootTotal {
    /// In whole square feet.
    pub sq_ft: i64,
    /// Exactly.
    pub exact: String,
    /// The lowest that whole feet could give.
    pub low: Option<i64>,
    /// The highest.
    pub high: Option<i64>,
    /// The lowest with any wall against the rounding.
    pub widest_low: Option<i64>,
    /// The highest with any wall against the rounding.
    pub widest_high: Option<i64>,
    /// Other totals of closings that are equally near to the typed lengths; null where there are too many to list.
    pub equally_near: Option<Vec<i64>>,
}

/// A total with each side to the tenth of a foot.
#[derive(Debug, Serialize, JsonSchema)]
pub struct TenthFootTotal {
    /// In whole square feet.
    pub sq_ft: i64,
    /// Exactly.
    pub exact: String,
    /// About 95 %, with thicknesses stated and assumed, in square feet.
    pub plus_minus: String,
    /// Every wall and every thickness off the same way, in square feet.
    pub worst_case: String,
    /// Other totals of closings that are equally near to the typed lengths; null where there are too many to list.
    pub equally_near: Option<Vec<i64>>,
}

/// A total with no side rounded.
#[derive(Debug, Serialize, JsonSchema)]
pub struct MeasuredTotal {
    /// In whole square feet.
    pub sq_ft: i64,
    /// Exactly.
    pub exact: String,
    /// About 95 %, in square feet.
    pub plus_minus: String,
    /// Every wall off the same way, in square feet.
    pub worst_case: String,
}

/// One space.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SpaceReport {
    /// Its name.
    pub name: String,
    /// Its kind.
    pub kind: &'static str,
    /// The level it is on.
    pub level: String,
    /// Whether it is counted.
    pub counted: bool,
    /// Whether it is living space that is connected to no other.
    pub detached: bool,
    /// Whether that is the writer's own word and not the rule.
    pub claimed: bool,
    /// The space it is taken off, or lies in.
    pub within: Option<String>,
    /// The face that was measured.
    pub face: &'static str,
    /// Round it, as measured, in feet.
    pub perimeter_ft: String,
    /// Where the walk ended, seen from its start.
    pub misclosure: MisclosureReport,
    /// Its sides.
    pub sides: Vec<SideReport>,
    /// No side rounded, in square feet.
    pub as_measured: String,
    /// What the record gives it.
    pub recorded_sq_ft: Option<String>,
    /// Each side to the tenth of a foot.
    pub tenth_foot: TenthFootSpace,
    /// Each side to the whole foot.
    pub whole_foot: WholeFootSpace,
}

/// A space with each side to the tenth of a foot, in square feet.
#[derive(Debug, Serialize, JsonSchema)]
pub struct TenthFootSpace {
    /// The whole outline, nothing taken off.
    pub exact: String,
    /// What is left when what lies in it is taken off.
    pub net: String,
}

/// A space with each side to the whole foot, in square feet.
#[derive(Debug, Serialize, JsonSchema)]
pub struct WholeFootSpace {
    /// The whole outline, nothing taken off.
    pub exact: String,
    /// What is left when what lies in it is taken off.
    pub net: String,
    /// The lowest that whole feet could give.
    pub low: Option<String>,
    /// The highest.
    pub high: Option<String>,
    /// The lowest with any wall against the rounding.
    pub widest_low: Option<String>,
    /// The highest with any wall against the rounding.
    pub widest_high: Option<String>,
}

/// Where a walk ended, in feet from its start.
#[derive(Debug, Serialize, JsonSchema)]
pub struct MisclosureReport {
    /// North.
    pub north_ft: String,
    /// East.
    pub east_ft: String,
}

/// One side.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SideReport {
    /// `north`, `east`, `south`, `west`, `diagonal`, `bearing` or `arc`.
    pub direction: &'static str,
    /// As it stands in the file after its direction.
    pub typed: String,
    /// Its length, closed, at its own face.
    pub feet: String,
    /// Its length to the tenth of a foot, outside.
    pub tenth_foot: Option<String>,
    /// Its length to the whole foot, outside.
    pub whole_foot: Option<String>,
    /// Its length in the record.
    pub recorded: Option<String>,
    /// `measured`, `closing`, `estimated`, `plan` or `record`.
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
    /// What the record gives it.
    pub recorded_sq_ft: Option<String>,
    /// Where the walk ended before closing.
    pub misclosure: MisclosureReport,
    /// How the calls close; null where they end where they began, or where the last one is computed.
    pub closure: Option<ClosureReport>,
}

/// How the calls of a lot close.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ClosureReport {
    /// From where they end to where they began, in feet.
    pub distance_ft: String,
    /// The length of all calls for each length of that, rounded down to three digits.
    pub ratio: i64,
}

/// What the record lists and is not there.
#[derive(Debug, Serialize, JsonSchema)]
pub struct MissingReport {
    /// Its name.
    pub name: String,
    /// Its kind.
    pub kind: &'static str,
    /// What the record gives it.
    pub recorded_sq_ft: String,
}

/// Somebody else's outline.
#[derive(Debug, Serialize, JsonSchema)]
pub struct DrawnReport {
    /// `record` or `plan`.
    pub of: &'static str,
    /// Its name.
    pub name: String,
    /// The space it is compared with.
    pub space: Option<String>,
    /// Its area; null if it does not close.
    pub sq_ft: Option<String>,
    /// Where it ends.
    pub misclosure: MisclosureReport,
    /// Whether every wall has one of ours beside it.
    pub same_corners: bool,
    /// Walls beside walls of ours.
    pub sides: Vec<DrawnSideReport>,
    /// Where it has other walls than ours.
    pub instead: Vec<InsteadReport>,
}

/// Walls of ours in a row, and those of theirs in their place; either may be none.
#[derive(Debug, Serialize, JsonSchema)]
pub struct InsteadReport {
    /// The numbers of our sides, from 1.
    pub sides: Vec<usize>,
    /// The numbers of theirs.
    pub drawn_sides: Vec<usize>,
}

/// A wall of theirs beside one of ours.
#[derive(Debug, Serialize, JsonSchema)]
pub struct DrawnSideReport {
    /// The number of our side, from 1.
    pub side: usize,
    /// The number of theirs.
    pub drawn_side: usize,
    /// Ours, in feet.
    pub measured_ft: String,
    /// Theirs, in feet.
    pub drawn_ft: String,
}

/// One published figure.
#[derive(Debug, Serialize, JsonSchema)]
pub struct FigureReport {
    /// `record`, `listing`, `plan` or `figure`.
    pub kind: &'static str,
    /// Its title, or its own name.
    pub title: Option<String>,
    /// The figure; a number with decimals only where it was given with them.
    #[schemars(with = "f64")]
    pub sq_ft: serde_json::Number,
    /// The face it is taken at.
    pub measured_to: &'static str,
    /// How its sides are taken to be rounded.
    pub sides: &'static str,
    /// What was measured.
    pub start: String,
    /// The house taken as the figure says it was: its face, what it counts.
    pub same_way: String,
    /// The figure less what was measured.
    pub gap: String,
    /// Lines that add up to the gap.
    pub bridge: Vec<BridgeReport>,
    /// What its own sides or sketch come to.
    pub own_sketch_sq_ft: Option<String>,
    /// What each recorded side has in the line of recorded sides.
    pub recorded_sides: Vec<ShareReport>,
    /// Whether rounding is big enough.
    pub rounding: RoundingReport,
    /// What would account for it, best supported first.
    pub explanations: Vec<ExplanationReport>,
    /// The support of something that is none of them, from 0 to 0.99.
    pub something_else: String,
    /// How many combinations were weighed.
    pub weighed: u64,
}

/// One combination of departures.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ExplanationReport {
    /// What was done otherwise; empty for nothing.
    pub departures: Vec<String>,
    /// What the figure would be.
    pub sq_ft: String,
    /// The figure less that.
    pub leaves: String,
    /// Whether that is no more than rounding leaves.
    pub fits: bool,
    /// Its support, from 0 to 0.99, whatever the rounding.
    pub support: String,
    /// How it could be corrected: `typed`, `described` or `measured`; null for nothing done otherwise.
    pub class: Option<&'static str>,
    /// Whether it is told: it fits, and its support is more than something else's.
    pub told: bool,
    /// How strong it is where it is told: `only` common cause that fits, `likeliest`, `also fits`.
    pub strength: Option<&'static str>,
}

/// One line of a bridge.
#[derive(Debug, Serialize, JsonSchema)]
pub struct BridgeReport {
    /// Its name.
    pub line: &'static str,
    /// What it adds.
    pub sq_ft: String,
    /// For rounding: the least it could add; null where that cannot be stated.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub low: Option<Option<String>>,
    /// For rounding: the most; null where that cannot be stated.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub high: Option<Option<String>>,
    /// For counting: what is counted.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub counted: Vec<String>,
}

/// What one recorded side adds.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ShareReport {
    /// The space.
    pub space: String,
    /// The number of the side, from 1.
    pub side: usize,
    /// Its length by the rule, in feet.
    pub ruled_ft: String,
    /// Its recorded length, in feet.
    pub recorded_ft: String,
    /// What the difference adds, in square feet.
    pub sq_ft: String,
}

/// Whether rounding is big enough.
#[derive(Debug, Serialize, JsonSchema)]
pub struct RoundingReport {
    /// The typical size of whole-foot rounding on this house, in square feet.
    pub typical: Option<String>,
    /// `yes`, `only against the rounding` or `no`; null where the range cannot be stated.
    pub could_explain: Option<&'static str>,
    /// Where no whole-foot outline gives the figure, the nearest areas below and above that some do; null where one
    /// gives it, where it lies outside, or where there are too many outlines to go through.
    pub between: Option<[String; 2]>,
    /// The lowest that whole feet could give, at the figure's face.
    pub low: Option<String>,
    /// The highest.
    pub high: Option<String>,
    /// The lowest with any wall against the rounding.
    pub widest_low: Option<String>,
    /// The highest with any wall against the rounding.
    pub widest_high: Option<String>,
}

/// A thickness that was assumed.
#[derive(Debug, Serialize, JsonSchema)]
pub struct AssumedReport {
    /// `veneer`, `wall` or `common wall`.
    pub what: &'static str,
    /// How thick.
    pub thickness: String,
    /// Either way.
    pub plus_minus: &'static str,
}

/// One warning.
#[derive(Debug, Serialize, JsonSchema)]
pub struct WarningReport {
    /// Its stable word.
    pub word: &'static str,
    /// The line of the file, from 1.
    pub line: usize,
    /// In a sentence.
    pub message: String,
}

/// One fault or warning of `check --json`.
#[derive(Debug, Serialize, JsonSchema)]
pub struct FaultReport {
    /// The file.
    pub file: String,
    /// `error` or `warning`.
    pub severity: &'static str,
    /// Its stable word.
    pub word: &'static str,
    /// The line of the file, from 1.
    pub line: usize,
    /// The column in characters, from 1.
    pub column: usize,
    /// In a sentence.
    pub message: String,
    /// What to type or do instead.
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
        outlines: reconciliation.outlines().iter().map(drawn).collect(),
        figures: reconciliation.figures().iter().map(figure).collect(),
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
pub fn schema() -> serde_json::Value {
    schemars::schema_for!(Report).to_value()
}

/// The faults of a file, as `check --json` prints them.
pub fn faults(source: &Source, list: &[Diagnostic]) -> Vec<FaultReport> {
    list.iter()
        .map(|fault| FaultReport {
            file: source.name().to_owned(),
            severity: if fault.is_error() { "error" } else { "warning" },
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

/// A float to one decimal, a trailing zero cut.
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
        how: row.how,
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

fn drawn(outline: &OutlineReport) -> DrawnReport {
    DrawnReport {
        of: outline.drawn.word(),
        name: outline.name.clone(),
        space: outline.space.clone(),
        sq_ft: outline.area.map(Area::sq_ft_text),
        misclosure: misclosed(outline.misses.0, outline.misses.1),
        same_corners: outline.same_corners,
        sides: outline
            .matched
            .iter()
            .map(|side| DrawnSideReport {
                side: side.ours,
                drawn_side: side.theirs,
                measured_ft: side.measured.decimal_feet(),
                drawn_ft: side.drawn.decimal_feet(),
            })
            .collect(),
        instead: outline
            .instead
            .iter()
            .map(|instead| InsteadReport {
                sides: instead.ours().collect(),
                drawn_sides: instead.theirs().collect(),
            })
            .collect(),
    }
}

fn figure(figure: &Figure) -> FigureReport {
    let low = |range: Option<Range>| range.map(|range| range.low.sq_ft_text());
    let high = |range: Option<Range>| range.map(|range| range.high.sq_ft_text());
    let enough = figure.enough();
    let is_rounding = |line: &crate::reconcile::Line| line.step() == BridgeStep::Rounding;
    // A line that largest remainder moved by a millionth stays within its own bounds.
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
        side: share.side(),
        ruled_ft: share.ruled().decimal_feet(),
        recorded_ft: share.recorded().decimal_feet(),
        sq_ft: share.area().sq_ft_text(),
    };
    let own_name = (figure.word() == "figure").then(|| figure.name().to_owned());
    FigureReport {
        kind: figure.word(),
        title: figure.title().map(str::to_owned).or(own_name),
        sq_ft: number(figure.area()),
        measured_to: figure.face().word(),
        sides: match figure.side_rule() {
            SideRule::Step(step) => step.word(),
            SideRule::Unknown => "unknown",
        },
        start: figure.start().sq_ft_text(),
        same_way: figure.same_way().sq_ft_text(),
        gap: figure_gap(figure),
        bridge: figure.lines().iter().zip(figure.lines_in_millionths()).map(line).collect(),
        own_sketch_sq_ft: figure.own_sketch().map(Area::sq_ft_text),
        recorded_sides: figure.shares().iter().map(share).collect(),
        rounding: RoundingReport {
            typical: enough.typical().map(one_place),
            could_explain: enough.could_explain().map(crate::reconcile::CouldExplain::words),
            between: enough
                .between()
                .map(|between| [between.below, between.above].map(Area::sq_ft_text)),
            low: low(enough.range()),
            high: high(enough.range()),
            widest_low: low(enough.widest()),
            widest_high: high(enough.widest()),
        },
        explanations: figure.explanations().list().iter().map(explanation).collect(),
        something_else: support(figure.explanations().something_else()),
        weighed: figure.explanations().weighed(),
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
        told: explanation.is_told(),
        strength: explanation.strength().map(crate::reconcile::Strength::word),
    }
}

/// A support in hundredths, never over 0.99.
fn support(support: f64) -> String {
    let text = format!("{:.2}", support.min(0.99));
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// The gap as the figure printed less the measured printed, so that a reader who subtracts gets it.
fn figure_gap(figure: &Figure) -> String {
    six_decimals(figure.lines_in_millionths().iter().sum(), 1_000_000)
}

/// A figure as a JSON number: whole where it was given so.
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
