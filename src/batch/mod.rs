//! Many houses: their areas and figures as rows, one per figure, and which of them deserve a second look.
//!
//! Nothing here opens files or prints: texts go in, rows come out. A house with errors becomes a row that lists
//! them; it does not stop the others.
//!
//! ```
//! use fairfoot::batch::{Input, BatchOptions, compute};
//!
//! let sides = "record 110 sq ft\nlevel \"G\"\nliving \"Shed\"\nnorth 8'\neast 12'\nsouth 8'\nwest 12'";
//! let house = compute("shed", &Input::Sides(sides.to_owned()), &BatchOptions::default());
//! let row = &house.figures[0];
//! assert_eq!((row.sq_ft, row.gap_sq_ft), (110, Some(14)));
//! assert!(house.second_look);
//! ```

mod json;
mod line;
mod summary;

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use crate::areas::rule::Settings;
use crate::diagnostic::Diagnostics;
use crate::house::FigureKind;
use crate::house::LengthSource;
use crate::house::Side;
use crate::reconcile::{CouldExplain, Figure};
use crate::units::area::{Area, AreaUnit, WrittenArea};
pub use summary::{Summary, histogram};

/// How houses are computed, and which figures deserve a second look.
#[derive(Clone, Copy, Debug)]
pub struct BatchOptions {
    /// How sides are rounded.
    pub settings: Settings,
    /// Figures deserve a second look if they differ by more than this, in percent of the smallest.
    pub over_per_cent: Decimal,
    /// Whether to search for explanations of each gap.
    pub explain: bool,
}

impl Default for BatchOptions {
    fn default() -> BatchOptions {
        BatchOptions {
            settings: Settings::default(),
            over_per_cent: Decimal::from(3),
            explain: true,
        }
    }
}

/// The source of a figure in a table. Its word is the head of its column.
#[derive(Clone, Copy, Debug, PartialEq, Eq, strum::IntoStaticStr, strum::VariantArray)]
#[strum(serialize_all = "lowercase")]
pub enum TableFigure {
    /// The appraisal record.
    Record,
    /// A listing.
    Listing,
    /// A plan.
    Plan,
}

impl TableFigure {
    /// Its word, as in a sides file.
    #[must_use]
    pub fn word(self) -> &'static str {
        self.into()
    }

    fn kind(self) -> FigureKind {
        match self {
            TableFigure::Record => FigureKind::Record,
            TableFigure::Listing => FigureKind::Listing,
            TableFigure::Plan => FigureKind::Plan,
        }
    }
}

/// The input for one house.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Input {
    /// The text of a sides file.
    Sides(String),
    /// The text of a sides file, and figures in whole square feet that replace its own.
    SidesAndFigures(String, Vec<(TableFigure, i64)>),
    /// Published figures in whole square feet, without any measurement.
    Figures(Vec<(TableFigure, i64)>),
    /// Input that cannot be read, with the reason.
    Unreadable(String),
}

/// The most bytes of an input line that are read; no valid sides file makes a longer one.
pub const MOST_LINE: usize = 9_000_000;

impl Input {
    /// Reads a line of JSON, `{"id": "…", "sides": "…"}`. Returns the house's id and its input, which is
    /// [`Input::Unreadable`] if the line has another form.
    ///
    /// ```
    /// use fairfoot::batch::Input;
    ///
    /// let (id, given) = Input::line(br#"{"id": 7, "sides": "level \"G\""}"#);
    /// assert_eq!((id.as_str(), given), ("7", Input::Sides("level \"G\"".to_owned())));
    /// ```
    #[must_use]
    pub fn line(bytes: &[u8]) -> (String, Input) {
        #[derive(Deserialize)]
        struct Line {
            id: serde_json::Value,
            sides: String,
        }
        if bytes.len() > MOST_LINE {
            let why = "the line has more than 9 MB".to_owned();
            return (beginning(bytes), Input::Unreadable(why));
        }
        if let Some((id, sides)) = line::id_and_sides(bytes) {
            return (id, Input::Sides(sides));
        }
        let is_object = bytes.trim_ascii_start().starts_with(b"{");
        let why = match serde_json::from_slice::<Line>(bytes) {
            _ if !is_object => String::new(),
            Ok(Line { id: serde_json::Value::Null, .. }) => ": the id is null".to_owned(),
            Ok(Line { id: serde_json::Value::String(id), sides }) => {
                return (id, Input::Sides(sides));
            }
            Ok(Line { id, sides }) => return (id.to_string(), Input::Sides(sides)),
            Err(error) => format!(": {error}"),
        };
        let why = format!("no house in JSON (`{{\"id\": \"…\", \"sides\": \"…\"}}`){why}");
        (beginning(bytes), Input::Unreadable(why))
    }
}

/// An id for a line that cannot be read: its first characters, regardless of how the stream was split.
fn beginning(bytes: &[u8]) -> String {
    const MOST: usize = 40;
    let some = bytes.get(..4 * MOST).unwrap_or(bytes);
    String::from_utf8_lossy(some).trim().chars().take(MOST).collect()
}

/// The result for one house. Areas are above grade, in whole square feet; they are null if nothing was measured or
/// the file has errors.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Outcome {
    /// The id that it was given.
    pub id: String,
    /// The area with each wall rounded by the finer rule: to a tenth of a foot, or to the inch.
    pub tenth_foot: Option<i64>,
    /// That area exactly: square feet with up to six decimals.
    pub tenth_foot_exact: Option<String>,
    /// The area with each wall rounded to the whole foot.
    pub whole_foot: Option<i64>,
    /// The lowest area possible under whole-foot rounding; null also if the range cannot be computed.
    pub whole_foot_low: Option<i64>,
    /// The highest area possible under whole-foot rounding; null also if the range cannot be computed.
    pub whole_foot_high: Option<i64>,
    /// Its published figures, the record first, the others in file order.
    pub figures: Vec<Row>,
    /// Whether it deserves a second look.
    pub second_look: bool,
    /// The reasons for a second look; empty if it does not deserve one.
    pub reasons: Vec<String>,
    /// The errors in the file, at most five, one line each; empty if there are none.
    pub faults: Vec<String>,
}

/// One published figure.
#[derive(Clone, Debug, Serialize)]
pub struct Row {
    /// `record`, `listing`, `plan`, or its own name.
    pub figure: String,
    /// Its area in whole square feet.
    pub sq_ft: i64,
    /// The area that it is compared with, in whole square feet: measured at the figure's own face, with what it counts;
    /// null if nothing was measured.
    pub same_way: Option<i64>,
    /// The figure minus that, in whole square feet; null if nothing was measured.
    pub gap_sq_ft: Option<i64>,
    /// The gap as a percentage of [`Row::same_way`], to one decimal; negative if the figure is smaller; null if
    /// nothing was measured.
    pub per_cent: Option<String>,
    /// Whether rounding could explain the gap: `yes`, `only against the rounding` or `no`; null if that is not known.
    pub rounding: Option<CouldExplain>,
    /// The best supported explanation of the gap; null if none is reported or none was searched for.
    pub explanation: Option<String>,
    /// Whether that explanation fits, so that rounding can explain what it leaves; null without an explanation.
    pub fits: Option<bool>,
}

const OUTSIDE: &str = "record outside the possible range";
const REPEATS: &str = "listing repeats the record";
const ESTIMATED: &str = "a wall is estimated";

/// Computes one house. Errors in its sides file are listed in the result, in `faults`.
#[must_use]
pub fn compute(id: &str, input: &Input, options: &BatchOptions) -> Outcome {
    let house = match input {
        Input::SidesAndFigures(_, figures) | Input::Figures(figures)
            if figures.iter().any(|&(_, sq_ft)| sq_ft <= 0) =>
        {
            let why = "a figure has to be above 0 sq ft".to_owned();
            Ok(Outcome { faults: vec![why], ..Outcome::default() })
        }
        Input::Sides(text) => measured(id, text, &[], options),
        Input::SidesAndFigures(text, figures) => measured(id, text, figures, options),
        Input::Figures(figures) => Ok(published(figures, options)),
        Input::Unreadable(why) => Ok(Outcome { faults: vec![why.clone()], ..Outcome::default() }),
    };
    let mut house = house
        .unwrap_or_else(|faults| Outcome { faults: error_lines(&faults), ..Outcome::default() });
    house.id = id.to_owned();
    house.second_look = !house.reasons.is_empty();
    house
}

/// The errors, at most five, one line each: line number, code word, message.
fn error_lines(faults: &Diagnostics) -> Vec<String> {
    const MOST: usize = 5;
    let errors = faults.list().iter().filter(|fault| fault.is_error());
    let line = |fault: &crate::diagnostic::Diagnostic| {
        let line = faults.source().line(fault.span().start);
        format!("line {line}: {}: {}", fault.word(), fault.message())
    };
    errors.take(MOST).map(line).collect()
}

fn measured(
    id: &str,
    text: &str,
    given: &[(TableFigure, i64)],
    options: &BatchOptions,
) -> Result<Outcome, Diagnostics> {
    let mut house = crate::read::read(id, text)?;
    let mut replaced = Vec::new();
    for &(figure, sq_ft) in given {
        let kind = figure.kind();
        // Figures above 0 always have an area.
        let Some(area) = WrittenArea::new(Decimal::from(sq_ft), AreaUnit::SquareFeet) else {
            continue;
        };
        let own = house.figures.iter().find(|figure| figure.kind == kind);
        if own.is_some_and(|own| own.area.area().whole_sq_ft() != sq_ft) {
            replaced.push(format!("the sides file gives another {}", figure.word()));
        }
        house = house.with_figure(kind, area);
    }
    let areas = house.areas(&options.settings)?;
    let reconciliation = areas.rows(options.explain)?;
    let gross = reconciliation.areas().gross();
    let figures = reconciliation.figures();
    let mut outcome = Outcome {
        tenth_foot: Some(gross.tenth_foot().whole_sq_ft()),
        tenth_foot_exact: Some(gross.tenth_foot().sq_ft_text()),
        whole_foot: Some(gross.whole_foot().whole_sq_ft()),
        whole_foot_low: gross.range().map(|range| range.low.whole_sq_ft()),
        whole_foot_high: gross.range().map(|range| range.high.whole_sq_ft()),
        figures: figures.iter().map(row).collect(),
        ..Outcome::default()
    };
    outcome.reasons.extend(replaced);
    if figures.iter().any(is_outside) {
        outcome.reasons.push(OUTSIDE.to_owned());
    }
    if crate::reconcile::listing_repeats_record(figures) {
        outcome.reasons.push(REPEATS.to_owned());
    }
    if figures_disagree(figures, options.over_per_cent) {
        outcome.reasons.push(disagreement(options));
    }
    let counted = reconciliation.house().spaces().iter().filter(|space| space.is_counted());
    let is_estimated = |side: &Side| side.has_words() && side.how() == LengthSource::Estimated;
    if counted.flat_map(|space| space.sides()).any(is_estimated) {
        outcome.reasons.push(ESTIMATED.to_owned());
    }
    Ok(outcome)
}

/// Whether a record cannot come from any whole-foot rounding of this house's walls.
fn is_outside(figure: &Figure) -> bool {
    figure.is_record()
        && !figure.agreement().agrees()
        && figure.rounding_test().could_explain() == Some(CouldExplain::No)
}

/// Whether the figures and the measured area differ by more than that, like with like: each figure is compared with the
/// area measured its own way, and two figures by how far each is from that.
fn figures_disagree(figures: &[Figure], over_per_cent: Decimal) -> bool {
    let Some(first) = figures.first() else { return false };
    let measured = first.measured().whole_sq_ft();
    let sizes = figures.iter().map(|figure| measured + figure.apart_sq_ft());
    let with_itself = figures.iter().any(|figure| {
        let like = figure.measured_like_figure().whole_sq_ft();
        disagree([figure.area().whole_sq_ft(), like].into_iter(), over_per_cent)
    });
    with_itself || disagree(sizes.chain([measured]), over_per_cent)
}

/// The result for published figures without any measurement.
fn published(figures: &[(TableFigure, i64)], options: &BatchOptions) -> Outcome {
    let row = |&(figure, sq_ft): &(TableFigure, i64)| Row {
        figure: figure.word().to_owned(),
        sq_ft,
        same_way: None,
        gap_sq_ft: None,
        per_cent: None,
        rounding: None,
        explanation: None,
        fits: None,
    };
    let mut house = Outcome { figures: figures.iter().map(row).collect(), ..Outcome::default() };
    let of = |wanted| figures.iter().find(|figure| figure.0 == wanted).map(|figure| figure.1);
    if crate::reconcile::repeats(of(TableFigure::Record), of(TableFigure::Listing), None) {
        house.reasons.push(REPEATS.to_owned());
    }
    if disagree(figures.iter().map(|figure| figure.1), options.over_per_cent) {
        house.reasons.push(disagreement(options));
    }
    house
}

fn disagreement(options: &BatchOptions) -> String {
    format!("figures disagree by over {}%", options.over_per_cent.normalize())
}

/// Whether the largest exceeds the smallest by more than `over_per_cent` percent of the smallest.
fn disagree(sizes: impl Iterator<Item = i64> + Clone, over_per_cent: Decimal) -> bool {
    let (Some(low), Some(high)) = (sizes.clone().min(), sizes.max()) else { return false };
    // Both sides times the same power of ten as whole numbers, which is quicker than decimals.
    let per_cent = || {
        let times = 10_i64.checked_pow(over_per_cent.scale())?.checked_mul(100)?;
        let allowed = i64::try_from(over_per_cent.mantissa()).ok()?.checked_mul(low)?;
        Some(times.checked_mul(high - low)? > allowed)
    };
    per_cent().unwrap_or_else(|| {
        Decimal::from(high - low) * Decimal::ONE_HUNDRED > over_per_cent * Decimal::from(low)
    })
}

fn row(figure: &Figure) -> Row {
    let best = figure.explanations().reported().next();
    let is_measured = figure.measured_like_figure() != Area::ZERO;
    Row {
        figure: figure.name().to_owned(),
        sq_ft: figure.area().whole_sq_ft(),
        same_way: is_measured.then(|| figure.measured_like_figure().whole_sq_ft()),
        gap_sq_ft: is_measured.then(|| figure.apart_sq_ft()),
        per_cent: figure.per_cent(),
        rounding: figure.rounding_test().could_explain(),
        explanation: best.map(|best| best.departures().join("; ")),
        fits: best.map(crate::reconcile::Explanation::fits),
    }
}

/// The column heads of [`cells`], for tables and CSV.
pub const HEADS: [&str; 16] = [
    "id",
    "figure",
    "sq_ft",
    "tenth_foot",
    "whole_foot",
    "whole_foot_low",
    "whole_foot_high",
    "gap_sq_ft",
    "per_cent",
    "rounding",
    "explanation",
    "fits",
    "second_look",
    "why",
    "errors",
    "same_way",
];

/// A house as rows of cells, one row per figure; a single row if it has no figure.
#[must_use]
pub fn cells(house: &Outcome) -> Vec<Vec<String>> {
    let number = |number: Option<i64>| number.map(|number| number.to_string()).unwrap_or_default();
    let yes = |yes: bool| if yes { "yes" } else { "no" }.to_owned();
    let one = |row: Option<&Row>| {
        let text = |get: fn(&Row) -> String| row.map(get).unwrap_or_default();
        vec![
            house.id.clone(),
            text(|row| row.figure.clone()),
            text(|row| row.sq_ft.to_string()),
            number(house.tenth_foot),
            number(house.whole_foot),
            number(house.whole_foot_low),
            number(house.whole_foot_high),
            number(row.and_then(|row| row.gap_sq_ft)),
            text(|row| row.per_cent.clone().unwrap_or_default()),
            text(|row| row.rounding.map(CouldExplain::words).unwrap_or_default().to_owned()),
            text(|row| row.explanation.clone().unwrap_or_default()),
            row.and_then(|row| row.fits).map(yes).unwrap_or_default(),
            yes(house.second_look),
            house.reasons.join("; "),
            house.faults.join("; "),
            number(row.and_then(|row| row.same_way)),
        ]
    };
    if house.figures.is_empty() {
        return vec![one(None)];
    }
    house.figures.iter().map(|row| one(Some(row))).collect()
}
