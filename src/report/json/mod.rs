//! The report for programs: the keys of format 1, and their JSON Schema.
//!
//! Exact decimals are strings with up to six decimals and no trailing zeros; whole square feet are numbers.
//! `tenth_foot` and `whole_foot` are at the outside face, `as_measured` is at the face that was measured. What cannot
//! be computed or is not stated in the file is null.

pub mod areas;
pub mod figures;
pub mod map;
pub mod worth;

use schemars::JsonSchema;
use serde::Serialize;

use crate::diagnostic::{Diagnostic, Severity, Source};
use crate::house::wall_moves;
use crate::house::wall_moves::Assumed;
use crate::reconcile::Reconciliation;
use crate::units::length::Length;
use crate::value::Worth;
use areas::{AreasReport, areas_report};
use figures::{DrawnReport, FigureReport, MissingReport, drawn_report, figure};
use map::MapOutlineReport;
use worth::WorthReport;

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

/// Where sides end relative to their start, before adjustment.
#[derive(Debug, Serialize, JsonSchema)]
pub struct MisclosureReport {
    /// Feet to the north; negative to the south.
    pub north_ft: String,
    /// Feet to the east; negative to the west.
    pub east_ft: String,
}

/// A thickness that was assumed.
#[derive(Debug, Serialize, JsonSchema)]
pub struct AssumedReport {
    /// What was assumed: `veneer`, `wall` or `common wall`.
    pub what: &'static str,
    /// The thickness that was assumed, as text.
    pub thickness: String,
    /// The uncertainty of that thickness, plus or minus, as text.
    pub plus_minus: String,
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
pub(in crate::report) fn report(reconciliation: &Reconciliation, worth: Option<&Worth>) -> Report {
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
            .map(|map| map::map_outline(house, map))
            .collect(),
        figures: reconciliation.figures().iter().map(|one| figure(reconciliation, one)).collect(),
        worth: worth.map(worth::worth),
        assumed: assumed(reconciliation.assumed()),
        warnings: reconciliation
            .warnings()
            .iter()
            .map(|warning| warning_report(house.source(), warning))
            .collect(),
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

/// A float with at most one decimal.
fn one_place(number: f64) -> String {
    let text = format!("{number:.1}");
    let text = text.strip_suffix(".0").map(str::to_owned).unwrap_or(text);
    if text == "-0" { "0".to_owned() } else { text }
}

fn misclosed(north: Length, east: Length) -> MisclosureReport {
    MisclosureReport { north_ft: north.decimal_feet(), east_ft: east.decimal_feet() }
}

fn assumed(assumed: Assumed) -> Vec<AssumedReport> {
    let all = [
        ("veneer", wall_moves::ASSUMED_VENEER, assumed.veneer),
        ("wall", wall_moves::ASSUMED_WALL_BEHIND_VENEER, assumed.wall_behind_veneer),
        ("wall", wall_moves::ASSUMED_WALL, assumed.wall),
        ("common wall", wall_moves::ASSUMED_COMMON, assumed.common),
    ];
    all.into_iter()
        .filter(|(.., is)| *is)
        .map(|(what, thickness, _)| AssumedReport {
            what,
            thickness: thickness.to_string(),
            plus_minus: match what {
                "common wall" => wall_moves::ASSUMED_COMMON_WITHIN.to_string(),
                _ => wall_moves::ASSUMED_WITHIN.to_string(),
            },
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
