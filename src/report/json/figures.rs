//! The published figures in the report for programs: their steps, causes and rounding, and outlines from elsewhere.

use schemars::JsonSchema;
use serde::Serialize;

use super::{MisclosureReport, misclosed, one_place};
use crate::areas::range::Range;
use crate::house::{SideNumber, SideRule};
use crate::reconcile::{BridgeStep, Figure, OutlineReport, Reconciliation};
use crate::units::area::Area;
use crate::units::decimal::six_decimals;
use crate::wording::sentences::Sentences;

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
    /// Whether it fits: whether rounding can explain what is left.
    pub fits: bool,
    /// Its support from 0 to 0.99, over all ways of rounding.
    pub support: String,
    /// The kind of mistake that it is: `typed`, `described` or `measured`; null if there are no departures.
    pub class: Option<&'static str>,
    /// Whether it is reported: it fits, and has enough support beside something else.
    pub told: bool,
    /// How strong it is, if it is reported: `only` (the only common cause that fits), `likeliest`, `nearest` (it gives the very
    /// figure, and a likelier one does not), `also fits`, or `comes near` (it leaves more than is usual); null if it is not
    /// reported.
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

pub(super) fn drawn_report(outline: &OutlineReport) -> DrawnReport {
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

pub(super) fn figure(reconciliation: &Reconciliation, figure: &Figure) -> FigureReport {
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
