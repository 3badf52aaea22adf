//! What stands beside and below a drawing: the arrow to north, the street, the scale in words and as a bar.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "places on a page are in points"
)]

use crate::pages::drawing::canvas::Canvas;
use crate::pages::drawing::fit::Frame;
use crate::pages::drawing::view::Scale;
use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::page::{Anchor, Fill, Ink, Point, Stroke, Text};
use crate::units::length::Length;
use crate::wording::sentences::{Sentences, rounded_float};

/// Draws an arrow to north in the corner of the frame.
pub(crate) fn north(canvas: &mut Canvas, unit: (f64, f64), right_top: Point, word: &str) {
    // The plan's north points at this bearing, so true north lies as far the other way.
    let (east, north) = (-unit.0, unit.1);
    let turned = canvas.view.turned;
    let million =
        |part: f64| Length::from_nm(crate::geometry::outline::nearest_nm(part * 1e9).nm()).nm();
    let (right, up) = turned.of((million(east), million(north)));
    let way = Point::new(right as f64, -up as f64).unit();
    let middle = Point::new(right_top.x_pt - 16.0, right_top.y_pt + 18.0);
    let (tip, tail) = (middle.plus(way, 13.0), middle.plus(way, -11.0));
    let barb = |side: f64| tip.plus(way, -8.0).plus(way.turned(), side);
    let head = Stroke::filled(&[tip, barb(3.2), barb(-3.2)], Fill::Black);
    // Right below the arrow, however it lies.
    let lowest = tip.y_pt.max(tail.y_pt).max(middle.y_pt + 3.2);
    let letter = Text {
        anchor: Anchor::Middle,
        ..Text::new(Point::new(middle.x_pt, lowest + 10.0), 7.0, word)
    };
    let corner = |x: f64, y: f64| Point::new(right_top.x_pt + x, right_top.y_pt + y);
    let ground = [corner(-40.0, 0.0), corner(0.0, 0.0), corner(0.0, 47.0), corner(-40.0, 47.0)];
    let letter = Text { at: Point::new(right_top.x_pt - 20.0, letter.at.y_pt), ..letter };
    canvas.fixture(ground, vec![Stroke::line(tail, tip, 0.8), head], vec![letter]);
}

/// Draws the street, the scale bar and the scale in words below the drawing.
pub(crate) fn strip(
    inks: &mut Vec<Ink>,
    say: &Sentences<'_>,
    scale: Scale,
    frame: &Frame,
    height_pt: f64,
) {
    let has_street = say.house.particulars.front.is_some();
    scale_strip(inks, has_street, say.is_metric(), scale, frame, height_pt);
}

/// Like [`strip`], for a drawing without a checked house.
pub(crate) fn scale_strip(
    inks: &mut Vec<Ink>,
    has_street: bool,
    is_metric: bool,
    scale: Scale,
    frame: &Frame,
    height_pt: f64,
) {
    let top = frame.left_top.y_pt + height_pt;
    let (left, right) = (frame.left_top.x_pt, frame.left_top.x_pt + frame.width_pt);
    if has_street {
        let middle = (left + right) / 2.0;
        let word = Text {
            anchor: Anchor::Middle,
            ..Text::new(Point::new(middle, top + 8.5), 8.0, "STREET")
        };
        let half = fonts::width_pt(Typeface::Bold, 8.0, "STREET") / 2.0 + 8.0;
        for (from, to) in [(left + 60.0, middle - half), (middle + half, right - 60.0)] {
            let line = Stroke::line(Point::new(from, top + 5.5), Point::new(to, top + 5.5), 0.8);
            inks.push(Ink::Stroke(line.dashed([10.0, 4.0])));
        }
        inks.push(Ink::Text(word.in_hand(Typeface::Bold)));
    }
    let words = format!("Scale {}, printed at full size (100%)", scale_words(scale, is_metric));
    let room_pt = frame.width_pt - fonts::width_pt(Typeface::Plain, 7.5, &words) - 16.0;
    bar(inks, scale, is_metric, Point::new(left, top + 24.0), room_pt);
    let text = Text { anchor: Anchor::End, ..Text::new(Point::new(right, top + 24.0), 7.5, words) };
    inks.push(Ink::Text(text));
}

/// A scale in words, with its ratio if the file is metric.
pub(crate) fn scale_words(scale: Scale, is_metric: bool) -> String {
    let ratio = (12.0 * 72.0 / scale.pt_per_ft).round();
    match is_metric {
        true if scale.is_ratio => scale.words.to_owned(),
        true => format!("{} (1:{})", scale.words, rounded_float(ratio)),
        false => scale.words.to_owned(),
    }
}

/// Draws a scale bar of four parts, in feet or meters; of two parts where there is no room for four.
fn bar(inks: &mut Vec<Ink>, scale: Scale, is_metric: bool, at: Point, room_pt: f64) {
    const PARTS: [u32; 18] = [
        1, 2, 5, 10, 20, 50, 100, 200, 500, 1_000, 2_000, 5_000, 10_000, 20_000, 50_000, 100_000,
        200_000, 500_000,
    ];
    let (unit, pt_per_unit) = match is_metric {
        true => ("m", scale.pt_per_ft / 0.3048),
        false => ("ft", scale.pt_per_ft),
    };
    let fits = |part: &&u32| f64::from(**part) * pt_per_unit >= 24.0;
    let part = PARTS.iter().find(fits).copied().unwrap_or(1);
    let wide = f64::from(part) * pt_per_unit;
    let right = Point::new(1.0, 0.0);
    let parts = if wide * 4.0 > room_pt { 2 } else { 4 };
    for k in 0..parts {
        let from = at.plus(right, wide * f64::from(k));
        let corners = [
            from,
            from.plus(right, wide),
            Point::new(from.x_pt + wide, from.y_pt - 3.5),
            Point::new(from.x_pt, from.y_pt - 3.5),
        ];
        let fill = if k % 2 == 0 { Fill::Black } else { Fill::White };
        let mut stroke = Stroke::filled(&corners, fill);
        stroke.width_pt = 0.5;
        inks.push(Ink::Stroke(stroke));
    }
    for k in 0..=parts {
        let number = crate::units::decimal::thousands(i64::from(part * k));
        let words = if k == parts { format!("{number} {unit}") } else { number };
        let x_pt = at.x_pt + wide * f64::from(k);
        let text = Text {
            anchor: Anchor::Middle,
            ..Text::new(Point::new(x_pt, at.y_pt + 8.0), 6.5, words)
        };
        let text = if k == 0 { Text { anchor: Anchor::Start, ..text } } else { text };
        inks.push(Ink::Text(text));
    }
}
