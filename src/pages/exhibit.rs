//! The Exhibit: the one sentence, the drawing of the main level, the difference step by step and what would account for it.
#![expect(
    clippy::float_arithmetic,
    reason = "places on a page are in points, and a chart shows areas as lengths"
)]

use crate::pages::drawing::marks::Marks;
use crate::pages::drawing::plan;
use crate::pages::drawing::plan::Frame;
use crate::pages::fonts::Typeface;
use crate::pages::layout::{EDGE_PT, Flow, Row, Stack};
use crate::pages::page::{Anchor, Fill, Ink, Point, Run, Stroke, Text};
use crate::reconcile::{BridgeStep, Figure, Reconciliation};
use crate::units::area::Area;
use crate::wording::sentences::{CAUTIONS, Sentences, capital, range_text, signed, the, whole};

/// Width of the steps beside their chart, in points.
const STEPS_PT: f64 = 318.0;

/// Fills the Exhibit; a main level that is crowded there has a page of its own after it.
pub(crate) fn exhibit(
    flow: &mut Flow,
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    marks: &Marks,
    level: Option<usize>,
) {
    let figures = reconciliation.figures();
    let statements = say.statements(figures);
    let steps = figures.iter().map(steps_in_words);
    flow.begin("Exhibit", &statements.iter().cloned().chain(steps).collect::<Vec<_>>().join(" "));
    let mut top = Stack::new(flow.width_pt());
    for (i, statement) in statements.iter().enumerate() {
        top.bold(if i == 0 { 15.0 } else { 10.0 }, statement);
        top.space(2.0);
    }
    for text in say.missing_walls(reconciliation) {
        top.paragraph(9.0, &text);
    }
    let own = figures.iter().filter_map(|figure| say.own_sketch(figure));
    for own in own.chain(say.repeated(figures)) {
        top.paragraph(9.0, &own);
    }
    if level.is_some() {
        top.paragraph(9.0, &both_ways(say));
    }
    flow.pour(&top);
    flow.down(4.0);
    let mut last = Stack::new(flow.width_pt());
    last.space(4.0);
    for missing in say.missing(figures) {
        last.paragraph(8.0, &missing);
    }
    last.paragraph(8.0, CAUTIONS);
    let first = figures.first().map(|figure| Block::of(flow, say, figure));
    let mut crowded = None;
    if let Some(level) = level {
        let with_last = if figures.len() < 2 { last.height_pt() } else { 0.0 };
        let below = first.as_ref().map_or(0.0, Block::height_pt) + with_last;
        crowded = drawing(flow, say, marks, level, below);
    }
    if let Some(told) = first {
        told.pour(flow);
    }
    for figure in figures.iter().skip(1) {
        flow.down(4.0);
        Block::of(flow, say, figure).pour(flow);
    }
    flow.pour(&last);
    if let (Some(level), Some(crowded)) = (level, crowded) {
        larger(flow, say, marks, level, crowded);
    }
}

/// The steps from measured to a figure, for who cannot see them drawn.
fn steps_in_words(figure: &Figure) -> String {
    let steps = figure.lines().iter().zip(figure.lines_in_sq_ft());
    let steps: Vec<String> = steps
        .map(|(line, rounded)| format!("{} {}", line.step().name(), signed(rounded)))
        .collect();
    format!(
        "Step by step: measured {}, {}, the {} {}.",
        whole(figure.start()),
        steps.join(", "),
        figure.name(),
        whole(figure.area())
    )
}

/// What a drawing is short of: labels that found no room, and its scale.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Crowded {
    left_out: usize,
    pt_per_ft: f64,
}

/// The main level on a page of its own, if that letters more of it or shows it larger.
fn larger(flow: &mut Flow, say: &Sentences<'_>, marks: &Marks, level: usize, crowded: Crowded) {
    let height = flow.whole_page_pt();
    let (drawing, _) = fitting(say, marks, level, 0.0, flow.width_pt(), height);
    let is_better =
        drawing.scale.pt_per_ft > crowded.pt_per_ft || drawing.left_out < crowded.left_out;
    if is_better {
        flow.begin(&say.house.levels[level].name, "The main level as large as a page");
        draw_level(flow, say, marks, level, flow.room_pt());
    }
}

/// Both areas in a sentence.
fn both_ways(say: &Sentences<'_>) -> String {
    let gross = say.areas.gross();
    let range = match gross.range() {
        Some(_) => format!("; whole feet could give {}", range_text(gross.range())),
        None => String::new(),
    };
    let below = match say.areas.below_grade() {
        Some(below) => {
            format!(" Below grade, apart and not in it: {} sq ft.", whole(below.tenth_foot()))
        }
        None => String::new(),
    };
    format!(
        "{}: {} sq ft, each wall to {}; {} sq ft, each wall to the whole foot{range}.{below} {}",
        say.gross_name(),
        whole(gross.tenth_foot()),
        say.fine(),
        whole(gross.whole_foot()),
        say.only_from_a_plan().unwrap_or_else(|| say.plus_minus())
    )
}

/// The drawing of a level, as large as what must stand below it leaves room for, with its notes.
fn drawing(
    flow: &mut Flow,
    say: &Sentences<'_>,
    marks: &Marks,
    level: usize,
    below_pt: f64,
) -> Option<Crowded> {
    const LEAST_PT: f64 = 230.0;
    let room = flow.room_pt();
    let height_pt = if room - below_pt >= LEAST_PT {
        room - below_pt
    } else {
        (room - 40.0).clamp(120.0, 440.0)
    };
    draw_level(flow, say, marks, level, height_pt)
}

/// A level in so much height, with its notes under it; what it is short of, if it is.
pub(crate) fn draw_level(
    flow: &mut Flow,
    say: &Sentences<'_>,
    marks: &Marks,
    level: usize,
    height_pt: f64,
) -> Option<Crowded> {
    let house = say.house;
    let mut left = height_pt;
    if house.levels.len() > 1 && flow.section() != house.levels[level].name {
        let mut name = Stack::new(flow.width_pt());
        let below = if house.levels[level].below_grade { ", below grade" } else { "" };
        name.bold(9.0, &format!("{}{below}", house.levels[level].name));
        left -= name.height_pt();
        flow.pour(&name);
    }
    let (drawing, notes) = fitting(say, marks, level, flow.y_pt(), flow.width_pt(), left);
    let (left_out, pt_per_ft) = (drawing.left_out, drawing.scale.pt_per_ft);
    flow.put(drawing.inks, Some(drawing.scale.pt_per_ft));
    flow.down(drawing.height_pt);
    flow.pour(&notes);
    (left_out > 0 || pt_per_ft < 4.5).then_some(Crowded { left_out, pt_per_ft })
}

/// A level drawn so that its notes fit below it.
fn fitting(
    say: &Sentences<'_>,
    marks: &Marks,
    level: usize,
    top_pt: f64,
    width_pt: f64,
    height_pt: f64,
) -> (plan::Drawing, Stack) {
    let left_top = Point::new(EDGE_PT, top_pt);
    let draw = |height_pt: f64| {
        let drawing = plan::level(say, marks, level, Frame { left_top, width_pt, height_pt });
        let notes = notes_under(width_pt, &drawing.notes);
        (drawing, notes)
    };
    let (drawing, notes) = draw(height_pt);
    let fits = drawing.height_pt + notes.height_pt() <= height_pt;
    if fits { (drawing, notes) } else { draw(height_pt - notes.height_pt()) }
}

/// What the marks of a drawing mean.
fn notes_under(width_pt: f64, told: &[String]) -> Stack {
    let mut notes = Stack::new(width_pt);
    notes.space(4.0);
    if !told.is_empty() {
        notes.paragraph(7.0, &format!("On the drawing: {}.", told.join("; ")));
    }
    notes.space(2.0);
    notes
}

/// A figure's steps, their chart, and what would account for it.
struct Block {
    steps: Stack,
    chart: Stack,
    rest: Stack,
}

impl Block {
    fn of(flow: &Flow, say: &Sentences<'_>, figure: &Figure) -> Block {
        Block {
            steps: steps(say, figure),
            chart: chart(figure, flow.width_pt() - STEPS_PT - 24.0),
            rest: rest(say, figure, flow.width_pt()),
        }
    }

    fn height_pt(&self) -> f64 {
        self.steps.height_pt().max(self.chart.height_pt()) + self.rest.height_pt()
    }

    fn pour(&self, flow: &mut Flow) {
        let height = self.steps.height_pt().max(self.chart.height_pt());
        flow.need(height.min(300.0));
        flow.beside(&self.steps, &self.chart, STEPS_PT + 24.0);
        flow.pour(&self.rest);
    }
}

/// The lines from measured to the figure.
fn steps(say: &Sentences<'_>, figure: &Figure) -> Stack {
    let mut stack = Stack::new(STEPS_PT);
    let title = figure.title().map(|title| format!(" ({title})")).unwrap_or_default();
    stack.heading(&format!("From measured to {}{title}, step by step", the(figure)));
    let start = format!("measured: {}, outside", say.settings.fine.spoken());
    stack.ledger(8.2, &start, &whole(figure.start()), Typeface::Plain);
    for (line, rounded) in figure.lines().iter().zip(figure.lines_in_sq_ft()) {
        stack.ledger(8.2, &say.line_name(figure, line), &signed(rounded), Typeface::Plain);
        if let Some(text) = say.could_add(figure, line) {
            stack.item(7.5, &text, 14.0);
        }
        if line.step() == BridgeStep::RecordedSides {
            for share in say.shares(figure) {
                stack.item(7.5, &share, 14.0);
            }
        }
    }
    stack.rule(STEPS_PT - 50.0);
    stack.ledger(8.2, &capital(figure.name()), &whole(figure.area()), Typeface::Bold);
    stack
}

/// Whether rounding is enough, and what would account for the figure.
fn rest(say: &Sentences<'_>, figure: &Figure, width_pt: f64) -> Stack {
    let mut stack = Stack::new(width_pt);
    let answer = say.answer(figure);
    if !answer.is_empty() {
        stack.space(4.0);
        stack.paragraph(8.0, &answer);
    }
    if let Some(accounts) = say.accounts(figure) {
        stack.space(3.0);
        stack.paragraph(8.0, &accounts.opening);
        for item in &accounts.items {
            stack.item(8.0, &format!("– {item}"), 6.0);
        }
        stack.paragraph(8.0, &accounts.closing);
    }
    stack
}

/// Height of one bar's row, in points.
const BAR_ROW_PT: f64 = 15.0;

/// Each step as a bar from where the one before it ended. The scale begins near the figures and says so.
fn chart(figure: &Figure, width_pt: f64) -> Stack {
    let mut stack = Stack::new(width_pt);
    stack.space(7.0);
    let values = Values::of(figure);
    let (left, right) = (78.0, width_pt - 26.0);
    let x = |sq_ft: f64| left + (sq_ft - values.low) / (values.high - values.low) * (right - left);
    let mut inks = Vec::new();
    let mut y_pt = 6.0;
    let label =
        |y_pt: f64, words: &str| Ink::Text(Text::new(Point::new(0.0, y_pt + 2.6), 7.5, words));
    let post = |inks: &mut Vec<Ink>, y_pt: f64, sq_ft: f64, words: String| {
        let at = Point::new(x(sq_ft), y_pt);
        inks.push(Ink::Stroke(Stroke::line(
            Point::new(at.x_pt, y_pt - 5.0),
            Point::new(at.x_pt, y_pt + 5.0),
            2.0,
        )));
        inks.push(Ink::Text(beside(at, words, at.x_pt > (left + right) / 2.0)));
    };
    inks.push(label(y_pt, "measured"));
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
        let name = if line.is_supported() { "would account" } else { line.step().name() };
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
        let words = format!("{}{unit}", crate::wording::sentences::rounded_float(sq_ft));
        inks.push(Ink::Text(
            Text::new(Point::new(at.x_pt, axis + 9.0), 6.5, words).anchored(anchor),
        ));
    }
    stack.row(Row { height_pt: axis + 12.0, inks, ..Row::default() });
    stack
}

/// The least that a chart shows, as a share of what was measured.
const LEAST_SHARE: f64 = 0.04;

/// From the lowest to the highest that a chart shows, on round figures, and where its steps begin and end.
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
        // So wide that a gap of a few square feet looks as small as it is.
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
    /// Solid where it adds, open where it takes off, striped where nothing explains it.
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
            let mut runs = Vec::new();
            for (from, to) in crate::pages::drawing::view::hatching(&[&corners], true, 2.2) {
                runs.extend([Run::Move(from), Run::Line(to)]);
            }
            inks.push(Ink::Stroke(Stroke::of(runs, 0.5)));
        }
        inks
    }
}

/// What rounding could have added, as a thin line with ends.
fn whisker(low: f64, high: f64, y_pt: f64) -> Vec<Ink> {
    if high - low < 1.0 {
        return Vec::new();
    }
    let end =
        |x_pt: f64| Stroke::line(Point::new(x_pt, y_pt - 1.5), Point::new(x_pt, y_pt + 1.5), 0.6);
    let line = Stroke::line(Point::new(low, y_pt), Point::new(high, y_pt), 0.6);
    [line, end(low), end(high)].into_iter().map(Ink::Stroke).collect()
}
