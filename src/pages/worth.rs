//! The page about what the gap is worth: the same words as in the report, and a small plot of the sales.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "a plot shows sizes and prices as places"
)]

use crate::pages::blocks;
use crate::pages::layout::{Flow, Row};
use crate::pages::page::{Anchor, Fill, Ink, Point, Role, Run, Stroke, Text};
use crate::reconcile::Reconciliation;
use crate::value::{Comparable, Worth};
use crate::wording::Block;
use crate::wording::sentences::Sentences;

/// Fills the pages about what the gap is worth.
pub(crate) fn worth(
    flow: &mut Flow,
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    worth: &Worth,
    has_values: bool,
) {
    // Nobody is told to hand in what may raise the value.
    let hand_in = match flow.pages.len() {
        0 => String::new(),
        _ if worth.is_smaller() => {
            " Ask a licensed professional before any of these pages goes to the office.".to_owned()
        }
        _ if has_values => {
            " Before anything is handed in, make the pages with `--private`.".to_owned()
        }
        1 => " Hand in page 1 without this supplement.".to_owned(),
        count => format!(" Hand in pages 1 to {count} without this supplement."),
    };
    let values = if has_values {
        " As they are, the Source prints the comments, values, rates and sales of the file; `--private` leaves them out, and notes and photographs with them."
    } else {
        ""
    };
    flow.begin(
        "Supplement",
        "What the difference is worth in two plain ways, whether it would change the tax, and the deadlines.",
    );
    let mut stack = flow.stack();
    stack.bold(9.0, &format!("For the owner alone.{hand_in}"));
    stack.paragraph(8.0, &format!("It has its own page numbers.{values}"));
    if let Some(text) = reconciliation.figures().iter().find_map(|one| say.other_answer(one)) {
        stack.bold(8.0, &text);
    }
    if let Some(text) = say.before_signing() {
        stack.paragraph(8.0, &text);
    }
    for text in say.worth_knowing_of_values(reconciliation) {
        stack.paragraph(8.0, &format!("Worth knowing: {text}."));
    }
    let blocks = worth.blocks();
    for (i, part) in blocks.iter().enumerate() {
        blocks::one(&mut stack, part, blocks::USUAL);
        let is_sales = matches!(part, Block::Table { .. });
        if is_sales && let Some(plot) = plot(worth, flow.width_pt()) {
            stack.paragraph(7.2, "Price against size: a full dot is a sale near in size to this house as measured, an open one is not.");
            stack.hold();
            stack.row(plot);
        }
        // The last two items of a list stay together, so that neither is alone at the top of a page.
        let is_item = |i: usize| matches!(blocks.get(i), Some(Block::Item(_)));
        if is_item(i) && is_item(i + 1) && !is_item(i + 2) {
            stack.hold();
        }
        // What follows a heading stays with it.
        if matches!(part, Block::Row { .. }) && matches!(blocks.get(i + 1), Some(Block::Note(_))) {
            stack.hold();
        }
    }
    flow.pour(&stack);
}

/// The range of an axis in values and in points.
struct Axis {
    low: f64,
    high: f64,
    from_pt: f64,
    to_pt: f64,
}

impl Axis {
    /// An axis around these values, extended by a tenth at both ends and on to round numbers.
    fn round(values: impl Iterator<Item = f64>, from_pt: f64, to_pt: f64) -> Axis {
        let (low, high) = values
            .fold((f64::MAX, f64::MIN), |(low, high), value| (low.min(value), high.max(value)));
        let more = ((high - low) / 10.0).max(1.0);
        let (low, high) = (low - more, high + more);
        // The ends are labeled, so they are round numbers.
        const STEPS: [f64; 12] = [1.0, 5.0, 10.0, 50.0, 100.0, 500.0, 1e3, 5e3, 1e4, 5e4, 1e5, 5e5];
        let step = STEPS.into_iter().rev().find(|step| 8.0 * step <= high - low).unwrap_or(1.0);
        let (low, high) = ((low / step).floor() * step, (high / step).ceil() * step);
        Axis { low, high, from_pt, to_pt }
    }

    fn at(&self, value: f64) -> f64 {
        self.from_pt + (value - self.low) / (self.high - self.low) * (self.to_pt - self.from_pt)
    }
}

/// Price against size, with the measured size of the house and the band of near sizes; `None` for fewer than two
/// sales.
fn plot(worth: &Worth, width_pt: f64) -> Option<Row> {
    const HEIGHT_PT: f64 = 112.0;
    let list = worth.comparables().list();
    let measured = worth.gap().map(|gap| gap.measured() as f64)?;
    let price = |sale: &Comparable| sale.sold().whole().map(|whole| whole as f64);
    let sales: Vec<(&Comparable, f64)> =
        list.iter().filter_map(|sale| Some((sale, price(sale)?))).collect();
    if sales.len() < 2 {
        return None;
    }
    let band = measured * f64::from(worth.comparables().band()) / 100.0;
    let sizes = sales.iter().map(|(sale, _)| sale.sq_ft() as f64);
    let x = Axis::round(sizes.chain([measured - band, measured + band]), 70.0, width_pt - 70.0);
    let y = Axis::round(sales.iter().map(|sale| sale.1), HEIGHT_PT - 24.0, 16.0);
    let mut inks = vec![frame(&x, &y)];
    inks.extend(limits(&x, &y, measured, band, worth.comparables().band()));
    for (sale, price) in &sales {
        let at = Point::new(x.at(sale.sq_ft() as f64), y.at(*price));
        inks.push(Ink::Stroke(mark(at, sale.is_near_measured() == Some(true))));
    }
    inks.extend(ends(&x, &y, sales[0].0.sold().currency().sign()));
    let near = sales.iter().filter(|(sale, _)| sale.is_near_measured() == Some(true)).count();
    let told = format!(
        "Prices of {} sales against their sizes. Full dots, near in size to this house as measured: {near}; open dots: {}.",
        sales.len(),
        sales.len() - near
    );
    Some(Row { height_pt: HEIGHT_PT, inks, role: Role::Figure(told), ..Row::default() })
}

fn frame(x: &Axis, y: &Axis) -> Ink {
    let corner = Point::new(x.from_pt, y.from_pt);
    let line = [Point::new(x.from_pt, y.to_pt), corner, Point::new(x.to_pt, y.from_pt)];
    Ink::Stroke(Stroke::along(&line, 0.7))
}

/// The measured size as a line, and the band as dashed lines.
fn limits(x: &Axis, y: &Axis, measured: f64, band: f64, percent: u8) -> Vec<Ink> {
    let upright = |size: f64| {
        Stroke::line(Point::new(x.at(size), y.to_pt), Point::new(x.at(size), y.from_pt), 0.7)
    };
    let dashed = |size: f64| Ink::Stroke(upright(size).dashed([3.0, 2.0]));
    let over = |size: f64, words: String| {
        let text = Text::new(Point::new(x.at(size), y.to_pt - 4.0), 6.8, words);
        Ink::Text(text.anchored(Anchor::Middle))
    };
    let mut inks =
        vec![Ink::Stroke(upright(measured)), dashed(measured - band), dashed(measured + band)];
    // Side by side if there is room for all three.
    if x.at(measured + band) - x.at(measured) >= 64.0 {
        inks.extend([
            over(measured, "this house, measured".to_owned()),
            over(measured - band, format!("{percent}% less")),
            over(measured + band, format!("{percent}% more")),
        ]);
    } else {
        inks.push(over(
            measured,
            format!("this house, measured; dashed: {percent}% less and more"),
        ));
    }
    inks
}

/// The mark of a sale: a filled dot if its size is near, else an open one.
fn mark(at: Point, is_near: bool) -> Stroke {
    let dot = Stroke::dot(at, 2.6);
    if is_near { dot } else { Stroke { fill: Fill::White, width_pt: 0.9, ..dot } }
}

/// The labels at the ends of the axes.
fn ends(x: &Axis, y: &Axis, sign: &str) -> Vec<Ink> {
    let size = |value: f64, anchor: Anchor| {
        let words = format!("{} sq ft", crate::wording::sentences::rounded_float(value));
        Ink::Text(Text::new(Point::new(x.at(value), y.from_pt + 10.0), 6.8, words).anchored(anchor))
    };
    let price = |value: f64| {
        let words = format!("{sign}{}", crate::wording::sentences::rounded_float(value));
        let at = Point::new(x.from_pt - 4.0, y.at(value) + 2.4);
        Ink::Text(Text::new(at, 6.8, words).anchored(Anchor::End))
    };
    let tick = |spot: Point| {
        Ink::Stroke(Stroke::of(
            vec![Run::Move(spot), Run::Line(Point::new(spot.x_pt, spot.y_pt + 2.0))],
            0.5,
        ))
    };
    vec![
        size(x.low, Anchor::Start),
        size(x.high, Anchor::End),
        price(y.low),
        price(y.high),
        tick(Point::new(x.from_pt, y.from_pt)),
        tick(Point::new(x.to_pt, y.from_pt)),
    ]
}
