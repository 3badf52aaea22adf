//! The chart of a figure's steps: each step is a bar beside its row that begins where the one before it ends.
#![expect(
    clippy::float_arithmetic,
    reason = "places on a page are in points, and a chart shows areas as lengths"
)]

use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::layout::{Row, Stack};
use crate::pages::page::{Anchor, Fill, Ink, Part, Point, Role, Stroke, Text};
use crate::reconcile::{BridgeStep, Figure};
use crate::units::area::Area;
use crate::wording::sentences::{Sentences, capital, rounded_float};
use crate::wording::size::{step_alone, typed_size};
use crate::wording::step_lines::{Left, is_left_within};

/// How far below the middle of its bar a range is drawn, in points, where the next row is not nearer.
const RANGE_PT: f64 = 7.0;
/// Half the height of a bar, in points.
const HALF_BAR_PT: f64 = 3.5;
/// The letter size of the key, in points.
const KEY_PT: f64 = 7.0;
/// The letter size of the figures of the axis, in points.
const LABEL_PT: f64 = 6.4;
/// How far the figures of the axis stand from its ends, in points.
const LABEL_OFF_PT: f64 = 2.0;
/// The height of a line of the key, in points.
const KEY_LINE_PT: f64 = 8.4;
/// How far above the middle of the first row the key ends, in points.
const ABOVE_PT: f64 = 5.5;
/// The space at both ends of the axis, in points.
const EDGE_PT: f64 = 4.0;

/// Draws each step as a bar that begins where the one before it ends, beside its row in `steps`, whose middles are `rows`. The
/// scale begins near the figures. The rows have no words here: a program that extracts text took them for cells of the
/// steps. The key stands above the bars, the figures of the axis at its ends.
///
/// A metric file has it in square meters. Nothing is drawn where every step would be a sliver, or a row is missing.
pub(crate) fn chart(
    figure: &Figure,
    say: &Sentences<'_>,
    width_pt: f64,
    steps: &mut Stack,
    rows: &[f64],
) -> Stack {
    let is_metric = say.is_metric();
    let in_unit = |area: Area| sizes(area, is_metric);
    let values = Values::of(figure, is_metric);
    let lines: Vec<_> = say.told_lines(figure).collect();
    if rows.len() != lines.len() + 2 || !values.shows_a_step(figure, in_unit) {
        return Stack::new(width_pt);
    }
    let ends = [values.low, values.high].map(rounded_float);
    let edge = |end: &String| fonts::width_pt(Typeface::Plain, LABEL_PT, end) + LABEL_OFF_PT;
    let (left, right) = (edge(&ends[0]).max(EDGE_PT), width_pt - edge(&ends[1]).max(EDGE_PT));
    let x = |size: f64| left + (size - values.low) / (values.high - values.low) * (right - left);
    let (mut inks, mut signs) = (Vec::new(), Vec::new());
    let post = |y_pt: f64, size: f64| {
        let spot = |down: f64| Point::new(x(size), y_pt + down);
        Ink::Stroke(Stroke::line(spot(-5.0), spot(5.0), 2.0))
    };
    inks.push(post(rows[0], values.start));
    let mut reached = figure.measured();
    // Where the line down to the next bar begins.
    let mut down_from = rows[0] + HALF_BAR_PT;
    for (k, line) in lines.into_iter().enumerate() {
        let before = reached;
        reached = reached + say.area_of_step(figure, line);
        let changes = step_alone(before, reached, is_metric);
        if changes == "0" && line.range().is_none() {
            continue;
        }
        let (y_pt, next_pt) = (rows[k + 1], rows[k + 2]);
        let (from, at) = (in_unit(before), in_unit(reached));
        inks.push(connector(x(from), down_from, y_pt));
        down_from = y_pt + HALF_BAR_PT;
        let is_left = is_left_within(figure, line);
        let left = (line.step() == BridgeStep::NotExplained && line.is_otherwise())
            .then(|| say.left(figure, line));
        let step = Bar {
            from: x(from),
            // What is 0 as printed has no bar.
            to: if changes == "0" { x(from) } else { x(at) },
            y_pt,
            is_rest: line.step() == BridgeStep::NotExplained,
            rest: match left {
                _ if is_left => Sign::Left,
                Some(Left::Measuring) => Sign::Again,
                Some(Left::Plain) => Sign::Rest,
                Some(_) => Sign::Left,
                None => Sign::NotExplained,
            },
        };
        if let Some(range) = line.range() {
            let (low, high) = (x(in_unit(before + range.low)), x(in_unit(before + range.high)));
            let below = RANGE_PT.min((next_pt - y_pt) / 2.0);
            let whisker = whisker(low, high, y_pt + below);
            if !whisker.is_empty() {
                down_from = y_pt + below + 2.0;
                signs.push(Sign::Range);
            }
            inks.extend(whisker);
        }
        signs.extend(step.sign());
        inks.extend(step.inks());
    }
    let total_pt = rows[rows.len() - 1];
    inks.push(connector(x(values.end), down_from, total_pt));
    inks.push(post(total_pt, values.end));
    let axis = total_pt + 5.0;
    inks.push(Ink::Stroke(Stroke::line(Point::new(left, axis), Point::new(right, axis), 0.5)));
    for at in [left, right].map(|x_pt| Point::new(x_pt, axis)) {
        inks.push(Ink::Stroke(Stroke::line(at, Point::new(at.x_pt, axis - 2.5), 0.5)));
    }
    // Its figures stand at its ends, where they take no height.
    let base = axis + LABEL_PT / 3.0;
    let [low, high] = ends;
    let low = Text::new(Point::new(left - LABEL_OFF_PT, base), LABEL_PT, low);
    inks.push(Ink::Text(low.anchored(Anchor::End)));
    inks.push(Ink::Text(Text::new(Point::new(right + LABEL_OFF_PT, base), LABEL_PT, high)));
    let words = key(&signs);
    let lines = fonts::wrapped(Typeface::Plain, KEY_PT, &words, width_pt);
    let mut y_pt = KEY_PT;
    let ends_pt = f64::from(u32::try_from(lines.len()).unwrap_or(u32::MAX)) * KEY_LINE_PT;
    // Beside the title if it fits there, else below the steps.
    if ends_pt + ABOVE_PT <= rows[0] {
        for line in lines {
            inks.push(Ink::Text(Text::new(Point::new(0.0, y_pt), KEY_PT, line)));
            y_pt += KEY_LINE_PT;
        }
    } else {
        steps.space(2.0);
        steps.paragraph(KEY_PT, &words);
    }
    let told = format!(
        "The rows before this as bars, from {} to {}.",
        say.size(figure.measured()),
        typed_size(figure.typed(), is_metric)
    );
    let role = Role::Figure(told);
    // As high as the steps, which it stands beside.
    let mut stack = Stack::new(width_pt);
    stack.row(Row { height_pt: steps.height_pt(), inks, role, ..Row::default() });
    stack
}

/// The line from a bar down to the next.
fn connector(x_pt: f64, from_pt: f64, next_pt: f64) -> Ink {
    let [from, to] = [from_pt, next_pt - HALF_BAR_PT].map(|y_pt| Point::new(x_pt, y_pt));
    Ink::Stroke(Stroke::line(from, to, 0.4))
}

/// An area in square feet, or in square meters.
fn sizes(area: Area, is_metric: bool) -> f64 {
    const SQ_M_PER_SQ_FT: f64 = 0.092_903_04;
    if is_metric { area.sq_ft() * SQ_M_PER_SQ_FT } else { area.sq_ft() }
}

/// The smallest range of a chart, as a share of the measured area.
const LEAST_SHARE: f64 = 0.04;

/// The range of a chart, extended to round numbers, and where its steps begin and end.
struct Values {
    low: f64,
    high: f64,
    start: f64,
    end: f64,
}

/// A chart has a step of at least this share of the longer of the areas at its ends.
const LEAST_STEP_SHARE: f64 = 0.01;

impl Values {
    /// Whether any step is long enough to be seen beside the areas at both ends.
    fn shows_a_step(&self, figure: &Figure, in_unit: impl Fn(Area) -> f64) -> bool {
        let least = LEAST_STEP_SHARE * self.start.max(self.end);
        figure.lines().iter().any(|line| in_unit(line.area()).abs() >= least)
    }

    fn of(figure: &Figure, is_metric: bool) -> Values {
        let in_unit = |area: Area| sizes(area, is_metric);
        let (start, end) = (in_unit(figure.measured()), in_unit(figure.area()));
        let (mut low, mut high, mut at) = (start.min(end), start.max(end), figure.measured());
        for line in figure.lines() {
            if let Some(range) = line.range() {
                let reach = |area: Area| in_unit(at + area);
                low = low.min(reach(range.low));
                high = high.max(reach(range.high));
            }
            at = at + line.area();
            low = low.min(in_unit(at));
            high = high.max(in_unit(at));
        }
        // Wide enough that a gap of a few square feet looks as small as it is.
        let short = (LEAST_SHARE * start - (high - low)).max(0.0) / 2.0;
        (low, high) = ((low - short).max(0.0), high + short);
        let step = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 5000.0, 1e5, 1e7]
            .into_iter()
            .find(|step| (high - low) / step <= 6.0)
            .unwrap_or(1e9);
        Values {
            low: (low / step - 0.2).floor() * step,
            high: (high / step + 0.2).ceil() * step,
            start,
            end,
        }
    }
}

/// A bar shorter than this is drawn as long as this, in points.
const LEAST_BAR_PT: f64 = 1.8;
/// A bar shorter than this stands for a step that is 0 as printed, in points.
const NOTHING_PT: f64 = 1e-6;

/// One step as a bar.
struct Bar {
    from: f64,
    to: f64,
    y_pt: f64,
    is_rest: bool,
    /// What it stands for if it is the rest.
    rest: Sign,
}

impl Bar {
    /// The symbol of a bar in the legend; `None` if its step changes nothing.
    fn sign(&self) -> Option<Sign> {
        let sign = match (self.is_rest, self.to > self.from) {
            (true, _) => self.rest,
            (_, true) => Sign::Adds,
            _ => Sign::Subtracts,
        };
        self.is_drawn().then_some(sign)
    }

    fn is_drawn(&self) -> bool {
        (self.to - self.from).abs() >= NOTHING_PT
    }

    /// Solid if it adds, open if it subtracts, dotted if it is not explained.
    fn inks(&self) -> Vec<Ink> {
        if !self.is_drawn() {
            return Vec::new();
        }
        let (low, high) = (self.from.min(self.to), self.from.max(self.to));
        // A step of a few square feet stays visible.
        let more = (LEAST_BAR_PT - (high - low)).max(0.0) / 2.0;
        let (low, high) = (low - more, high + more);
        let corners = [
            Point::new(low, self.y_pt - HALF_BAR_PT),
            Point::new(high, self.y_pt - HALF_BAR_PT),
            Point::new(high, self.y_pt + HALF_BAR_PT),
            Point::new(low, self.y_pt + HALF_BAR_PT),
        ];
        let fill = if self.to > self.from && !self.is_rest { Fill::Black } else { Fill::White };
        let mut bar = Stroke::filled(&corners, fill);
        bar.width_pt = 0.7;
        let mut inks = vec![Ink::Stroke(bar.of_part(Part::Bar))];
        if self.is_rest {
            inks.extend(dots(low, high, self.y_pt));
        }
        inks
    }
}

/// Two rows of dots between the ends of a bar.
fn dots(low: f64, high: f64, y_pt: f64) -> Vec<Ink> {
    const APART_PT: f64 = 3.4;
    const MOST: u32 = 200;
    let mut inks = Vec::new();
    for k in 0..MOST {
        let x_pt = low + 1.7 + APART_PT * f64::from(k);
        if x_pt > high - 0.8 {
            break;
        }
        for down in [-1.7, 1.7] {
            inks.push(Ink::Stroke(Stroke::dot(Point::new(x_pt, y_pt + down), 0.7)));
        }
    }
    inks
}

/// A symbol in the chart's legend.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Sign {
    Adds,
    Subtracts,
    NotExplained,
    Left,
    Again,
    Rest,
    Range,
}

impl Sign {
    const fn words(self) -> &'static str {
        match self {
            Sign::Adds => "adds",
            Sign::Subtracts => "subtracts",
            Sign::NotExplained => "not explained",
            Sign::Left => "what is left, within rounding",
            Sign::Again => "what is left, small enough for measuring again to change it",
            Sign::Rest => "what is left",
            Sign::Range => "what rounding could change",
        }
    }

    /// What it looks like.
    const fn shape(self) -> &'static str {
        match self {
            Sign::Adds => "solid",
            Sign::Subtracts => "open",
            Sign::NotExplained | Sign::Left | Sign::Again | Sign::Rest => "dotted",
            Sign::Range => "thin line",
        }
    }
}

/// The key of a chart: the signs that are drawn in it.
fn key(drawn: &[Sign]) -> String {
    let signs = [
        Sign::Adds,
        Sign::Subtracts,
        Sign::NotExplained,
        Sign::Left,
        Sign::Again,
        Sign::Rest,
        Sign::Range,
    ];
    let drawn = signs.into_iter().filter(|sign| drawn.contains(sign));
    let told = drawn.map(|sign| format!("{}: {}.", capital(sign.shape()), sign.words()));
    told.collect::<Vec<String>>().join(" ")
}

/// A thin horizontal line with end marks from `low` to `high`, in points on the page: the range that rounding could
/// change. Nothing if it is shorter than 1 pt.
fn whisker(low: f64, high: f64, y_pt: f64) -> Vec<Ink> {
    if high - low < 1.0 {
        return Vec::new();
    }
    let end =
        |x_pt: f64| Stroke::line(Point::new(x_pt, y_pt - 1.5), Point::new(x_pt, y_pt + 1.5), 0.6);
    let line = Stroke::line(Point::new(low, y_pt), Point::new(high, y_pt), 0.6);
    [line, end(low), end(high)].into_iter().map(Ink::Stroke).collect()
}
