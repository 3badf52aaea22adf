//! The chart of a figure's steps, with its legend: each step is a bar that begins where the one before it ends.
#![expect(
    clippy::float_arithmetic,
    reason = "places on a page are in points, and a chart shows areas as lengths"
)]

use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::layout::{Row, Stack};
use crate::pages::page::{Fill, Ink, Point, Role, Stroke, Text};
use crate::reconcile::{BridgeStep, Figure, Line};
use crate::units::area::Area;
use crate::wording::sentences::{Sentences, capital, rounded_float};
use crate::wording::size::{number_alone, step_alone, typed_number_alone, typed_size};
use crate::wording::step_lines::{Left, is_left_within};

/// The height of one bar's row, in points: near enough for a program that extracts text to keep the labels together.
const BAR_ROW_PT: f64 = 11.0;
/// The height that a range takes below its bar, in points.
const UNDER_PT: f64 = 4.0;
/// How far below the middle of its bar a range is drawn, in points.
const RANGE_PT: f64 = 7.0;
/// Half the height of a bar, in points.
const HALF_BAR_PT: f64 = 3.5;
/// The width for a step's name and number, in points.
const LABEL_PT: f64 = 96.0;
/// The letter size of labels, in points.
const SIZE_PT: f64 = 7.5;

/// Draws each step as a bar that begins where the one before it ends. The scale begins near the figures and is labeled
/// where it begins.
///
/// A metric file has it in square meters. Nothing is drawn where every step would be a sliver.
pub(crate) fn chart(figure: &Figure, say: &Sentences<'_>, width_pt: f64) -> Stack {
    let is_metric = say.is_metric();
    let in_unit = |area: Area| sizes(area, is_metric);
    let mut stack = Stack::new(width_pt);
    stack.space(7.0);
    let values = Values::of(figure, is_metric);
    if !values.shows_a_step(figure, in_unit) {
        return Stack::new(width_pt);
    }
    let (left, right) = (LABEL_PT, width_pt - 4.0);
    let x = |size: f64| left + (size - values.low) / (values.high - values.low) * (right - left);
    let (mut inks, mut signs) = (Vec::new(), Vec::new());
    let mut y_pt = 6.0;
    // A name and its number are one text, so that anyone who hears or copies the page gets them together.
    let label = |y_pt: f64, words: &str, number: &str| {
        let number = format!(" {number}");
        let room = LABEL_PT - 4.0 - fonts::width_pt(Typeface::Plain, SIZE_PT, &number);
        let words = fonts::shortened(Typeface::Plain, SIZE_PT, &fonts::shown(words), room);
        Ink::Text(Text::new(Point::new(0.0, y_pt + 2.6), SIZE_PT, format!("{words}{number}")))
    };
    let post = |inks: &mut Vec<Ink>, y_pt: f64, size: f64| {
        let spot = |down: f64| Point::new(x(size), y_pt + down);
        inks.push(Ink::Stroke(Stroke::line(spot(-5.0), spot(5.0), 2.0)));
    };
    // Whoever hears the page learns first what the bars repeat, and in which unit.
    let unit = if is_metric { "sq m" } else { "sq ft" };
    let same = format!("The same steps in {unit}:");
    inks.push(Ink::Text(Text::new(Point::new(0.0, y_pt + 2.6), SIZE_PT, same)));
    y_pt += BAR_ROW_PT;
    inks.push(label(y_pt, say.known(), &number_alone(figure.measured(), is_metric)));
    post(&mut inks, y_pt, values.start);
    let mut reached = figure.measured();
    // A range has room of its own below its bar.
    let mut under = 0.0;
    let is_drawn = |line: &Line, rounded: i64| rounded != 0 || line.range().is_some();
    for (line, rounded) in figure.lines().iter().zip(figure.lines_in_sq_ft()) {
        // Its area is in the bar of rounding.
        if say.is_told_with_rounding(figure, line) {
            continue;
        }
        let before = reached;
        reached = reached + say.area_of_step(figure, line);
        if !is_drawn(line, rounded) {
            continue;
        }
        let changes = step_alone(before, reached, is_metric);
        let (from, at) = (in_unit(before), in_unit(reached));
        inks.push(connector(x(from), y_pt, BAR_ROW_PT + under, under > 0.0));
        y_pt += BAR_ROW_PT + under;
        under = 0.0;
        let is_left = is_left_within(figure, line);
        let left = (line.step() == BridgeStep::NotExplained && line.is_otherwise())
            .then(|| say.left(figure, line));
        let name = match line.step() {
            _ if line.is_supported() => "possible",
            // Only a record has recorded sides.
            BridgeStep::RecordedSides if !figure.is_record() => "its own sides",
            BridgeStep::NotExplained if is_left || left.is_some() => "what is left",
            step => step.name(),
        };
        inks.push(label(y_pt, name, &changes));
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
            let whisker = whisker(low, high, y_pt + RANGE_PT);
            under = if whisker.is_empty() { 0.0 } else { UNDER_PT };
            signs.extend((!whisker.is_empty()).then_some(Sign::Range));
            inks.extend(whisker);
        }
        signs.extend(step.sign());
        inks.extend(step.inks());
    }
    let at = in_unit(reached);
    inks.push(connector(x(at), y_pt, BAR_ROW_PT + under, under > 0.0));
    y_pt += BAR_ROW_PT + under;
    inks.push(label(y_pt, figure.name(), &typed_number_alone(figure.typed(), is_metric)));
    post(&mut inks, y_pt, values.end);
    let axis = y_pt + 6.0;
    inks.push(Ink::Stroke(Stroke::line(Point::new(left, axis), Point::new(right, axis), 0.5)));
    for at in [left, right].map(|x_pt| Point::new(x_pt, axis)) {
        inks.push(Ink::Stroke(Stroke::line(at, Point::new(at.x_pt, axis - 2.5), 0.5)));
    }
    let [low, high] = [values.low, values.high].map(rounded_float);
    let scale = format!("Axis from {low} to {high} {unit}.");
    let words = key(&scale, &signs);
    for line in fonts::wrapped(Typeface::Plain, SIZE_PT, &words, width_pt) {
        y_pt += BAR_ROW_PT;
        inks.push(Ink::Text(Text::new(Point::new(0.0, y_pt + 2.6), SIZE_PT, line)));
    }
    let told = format!(
        "The steps as bars, from {} to {}.",
        say.size(figure.measured()),
        typed_size(figure.typed(), is_metric)
    );
    let role = Role::Figure(told);
    stack.row(Row { height_pt: y_pt + 6.0, inks, role, ..Row::default() });
    stack
}

/// The line from a bar down to the next, which begins below a range under it.
fn connector(x_pt: f64, y_pt: f64, down_pt: f64, is_under_a_range: bool) -> Ink {
    let from = if is_under_a_range { RANGE_PT + 2.0 } else { HALF_BAR_PT };
    let [from, to] = [from, down_pt - HALF_BAR_PT].map(|down| Point::new(x_pt, y_pt + down));
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
        let mut inks = vec![Ink::Stroke(bar)];
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
            Sign::Again => "what is left, which measuring again could make",
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

/// The key of a chart: its axis, and the signs that are drawn in it. It stands in line with the names of the steps and in
/// letters of their size, so that a program that extracts text takes all of it for one block, and not for cells of the
/// steps beside it.
fn key(scale: &str, drawn: &[Sign]) -> String {
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
    std::iter::once(scale.to_owned()).chain(told).collect::<Vec<String>>().join(" ")
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
