//! The chart of a figure's steps, with its legend: each step is a bar that begins where the one before it ends.
#![expect(
    clippy::float_arithmetic,
    reason = "places on a page are in points, and a chart shows areas as lengths"
)]

use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::layout::{Row, Stack};
use crate::pages::page::{Anchor, Fill, Ink, Point, Stroke, Text};
use crate::reconcile::{BridgeStep, Figure, Line};
use crate::units::area::Area;
use crate::wording::sentences::{rounded_float, signed, whole};

/// The height of one bar's row, in points.
const BAR_ROW_PT: f64 = 13.0;

/// Draws each step as a bar that begins where the one before it ends. The scale begins near the figures and says
/// where.
pub(crate) fn chart(figure: &Figure, known: &str, width_pt: f64) -> Stack {
    let mut stack = Stack::new(width_pt);
    stack.space(7.0);
    let values = Values::of(figure);
    let (left, right) = (78.0, width_pt - 26.0);
    let x = |sq_ft: f64| left + (sq_ft - values.low) / (values.high - values.low) * (right - left);
    let mut inks = Vec::new();
    let mut y_pt = 6.0;
    let label = |y_pt: f64, words: &str| {
        let words = fonts::shortened(Typeface::Plain, 7.5, &fonts::shown(words), 74.0);
        Ink::Text(Text::new(Point::new(0.0, y_pt + 2.6), 7.5, words))
    };
    let post = |inks: &mut Vec<Ink>, y_pt: f64, sq_ft: f64, words: String| {
        let at = Point::new(x(sq_ft), y_pt);
        inks.push(Ink::Stroke(Stroke::line(
            Point::new(at.x_pt, y_pt - 5.0),
            Point::new(at.x_pt, y_pt + 5.0),
            2.0,
        )));
        inks.push(Ink::Text(beside(at, words, at.x_pt > (left + right) / 2.0)));
    };
    inks.push(label(y_pt, known));
    post(&mut inks, y_pt, values.start, whole(figure.start()));
    let mut at = values.start;
    for (line, rounded) in figure.lines().iter().zip(figure.lines_in_sq_ft()) {
        let from = at;
        at += line.area().sq_ft();
        inks.push(Ink::Stroke(Stroke::line(
            Point::new(x(from), y_pt),
            Point::new(x(from), y_pt + BAR_ROW_PT),
            0.4,
        )));
        y_pt += BAR_ROW_PT;
        let name = if line.is_supported() { "possible" } else { line.step().name() };
        inks.push(label(y_pt, name));
        let step = Bar {
            from: x(from),
            to: x(at),
            y_pt,
            is_rest: line.step() == BridgeStep::NotExplained,
        };
        if let Some(range) = line.range() {
            let (low, high) = (x(from + range.low.sq_ft()), x(from + range.high.sq_ft()));
            inks.extend(whisker(low, high, y_pt + 5.5));
        }
        inks.extend(step.inks());
        let (near, far) = (step.from.min(step.to), step.from.max(step.to));
        let to_left = near > (left + right) / 2.0;
        let end = Point::new(if to_left { near } else { far }, y_pt);
        inks.push(Ink::Text(beside(end, signed(rounded), to_left)));
    }
    inks.push(Ink::Stroke(Stroke::line(
        Point::new(x(at), y_pt),
        Point::new(x(at), y_pt + BAR_ROW_PT),
        0.4,
    )));
    y_pt += BAR_ROW_PT;
    inks.push(label(y_pt, figure.name()));
    post(&mut inks, y_pt, values.end, whole(figure.area()));
    let axis = y_pt + 9.0;
    inks.push(Ink::Stroke(Stroke::line(Point::new(left, axis), Point::new(right, axis), 0.5)));
    for (sq_ft, anchor) in [(values.low, Anchor::Start), (values.high, Anchor::End)] {
        let at = Point::new(x(sq_ft), axis);
        inks.push(Ink::Stroke(Stroke::line(at, Point::new(at.x_pt, axis + 2.5), 0.5)));
        let unit = if anchor == Anchor::End { " sq ft" } else { "" };
        let words = format!("{}{unit}", rounded_float(sq_ft));
        inks.push(Ink::Text(
            Text::new(Point::new(at.x_pt, axis + 9.0), 6.5, words).anchored(anchor),
        ));
    }
    stack.row(Row { height_pt: axis + 11.0, inks, ..Row::default() });
    stack.row(legend(figure, width_pt));
    stack
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

impl Values {
    fn of(figure: &Figure) -> Values {
        let (start, end) = (figure.start().sq_ft(), figure.area().sq_ft());
        let (mut low, mut high, mut at) = (start.min(end), start.max(end), figure.start());
        for line in figure.lines() {
            if let Some(range) = line.range() {
                let reach = |area: Area| (at + area).sq_ft();
                low = low.min(reach(range.low));
                high = high.max(reach(range.high));
            }
            at = at + line.area();
            low = low.min(at.sq_ft());
            high = high.max(at.sq_ft());
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

/// A text beside the end of a bar.
fn beside(at: Point, words: String, to_left: bool) -> Text {
    let (right, anchor) = if to_left { (-4.0, Anchor::End) } else { (4.0, Anchor::Start) };
    Text::new(Point::new(at.x_pt + right, at.y_pt + 2.6), 7.5, words).anchored(anchor)
}

/// One step as a bar.
struct Bar {
    from: f64,
    to: f64,
    y_pt: f64,
    is_rest: bool,
}

impl Bar {
    /// Solid if it adds, open if it subtracts, dotted if it is not explained.
    fn inks(&self) -> Vec<Ink> {
        let (low, high) = (self.from.min(self.to), self.from.max(self.to));
        if high - low < 0.3 {
            return Vec::new();
        }
        let corners = [
            Point::new(low, self.y_pt - 3.5),
            Point::new(high, self.y_pt - 3.5),
            Point::new(high, self.y_pt + 3.5),
            Point::new(low, self.y_pt + 3.5),
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

/// A sign used in the chart.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Sign {
    Adds,
    Subtracts,
    NotExplained,
    Range,
}

impl Sign {
    const fn words(self) -> &'static str {
        match self {
            Sign::Adds => "adds",
            Sign::Subtracts => "subtracts",
            Sign::NotExplained => "not explained",
            Sign::Range => "what rounding could change",
        }
    }

    /// Whether the sign occurs in the chart of these steps.
    fn is_of(self, lines: &[Line]) -> bool {
        let is_rest = |line: &Line| line.step() == BridgeStep::NotExplained;
        lines.iter().any(|line| match self {
            Sign::Adds => !is_rest(line) && line.area() > Area::ZERO,
            Sign::Subtracts => !is_rest(line) && line.area() < Area::ZERO,
            Sign::NotExplained => is_rest(line) && line.area().whole_sq_ft() != 0,
            Sign::Range => line.range().is_some(),
        })
    }

    fn inks(self, x_pt: f64, y_pt: f64) -> Vec<Ink> {
        let bar = |from: f64, to: f64, is_rest: bool| Bar { from, to, y_pt, is_rest }.inks();
        match self {
            Sign::Adds => bar(x_pt, x_pt + 9.0, false),
            Sign::Subtracts => bar(x_pt + 9.0, x_pt, false),
            Sign::NotExplained => bar(x_pt, x_pt + 9.0, true),
            Sign::Range => whisker(x_pt, x_pt + 9.0, y_pt),
        }
    }
}

/// The legend of the signs that occur in the chart.
fn legend(figure: &Figure, width_pt: f64) -> Row {
    const SIZE_PT: f64 = 6.5;
    let mut row = Row { height_pt: 11.0, ..Row::default() };
    let (mut x_pt, mut y_pt) = (0.0, 6.0);
    let signs = [Sign::Adds, Sign::Subtracts, Sign::NotExplained, Sign::Range];
    for sign in signs.into_iter().filter(|sign| sign.is_of(figure.lines())) {
        let wide = 13.0 + fonts::width_pt(Typeface::Plain, SIZE_PT, sign.words());
        if x_pt > 0.0 && x_pt + wide > width_pt {
            (x_pt, y_pt) = (0.0, y_pt + 10.0);
            row.height_pt += 10.0;
        }
        row.inks.extend(sign.inks(x_pt, y_pt));
        let at = Point::new(x_pt + 13.0, y_pt + 2.3);
        row.inks.push(Ink::Text(Text::new(at, SIZE_PT, sign.words())));
        x_pt += wide + 9.0;
    }
    row
}

/// What rounding could add, as a thin line with end marks.
fn whisker(low: f64, high: f64, y_pt: f64) -> Vec<Ink> {
    if high - low < 1.0 {
        return Vec::new();
    }
    let end =
        |x_pt: f64| Stroke::line(Point::new(x_pt, y_pt - 1.5), Point::new(x_pt, y_pt + 1.5), 0.6);
    let line = Stroke::line(Point::new(low, y_pt), Point::new(high, y_pt), 0.6);
    [line, end(low), end(high)].into_iter().map(Ink::Stroke).collect()
}
