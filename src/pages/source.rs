//! The sides file, word for word, with line numbers.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::house::House;
use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::layout::{Flow, Row};
use crate::pages::page::{Anchor, Ink, Point, Role, Text};

const SIZE_PT: f64 = 7.6;
const GUTTER_PT: f64 = 30.0;

/// Fills the pages of the source.
///
/// With `begins_page`, it begins a new page instead of continuing on the last one.
pub(crate) fn source(flow: &mut Flow, house: &House, private: bool, begins_page: bool) {
    let kept = if private {
        "The sides file. Comments, values, rates, sales, notes and photographs were left out, of the file inside these pages too."
    } else {
        "The sides file word for word."
    };
    if begins_page {
        flow.begin("Source", kept);
    } else {
        flow.go_on("Source", kept, 90.0);
    }
    let mut stack = flow.stack();
    // That it has values or sales is for the owner to know, on the Supplement; this page may be handed in.
    let caution =
        "Figures are computed from these lengths; that does not show that the lengths are right.";
    stack.paragraph(8.5, &format!("{kept} {caution}"));
    stack.space(6.0);
    let size_pt = SIZE_PT * flow.tight();
    let room = (flow.width_pt() - GUTTER_PT) / size_pt;
    for (i, line) in house.source().text().lines().enumerate() {
        let line = line.trim_start_matches('\u{feff}');
        for (k, piece) in pieces(line, room).into_iter().enumerate() {
            stack.row(row(size_pt, piece, (k == 0).then_some(i + 1)));
        }
    }
    flow.pour(&stack);
}

/// A line, or a piece of it, with its number, keeping its indentation.
fn row(size_pt: f64, piece: &str, number: Option<usize>) -> Row {
    let asked_pt = size_pt;
    let wide = fonts::width_pt(Typeface::Even, size_pt, " ");
    let mut inks = Vec::new();
    if let Some(number) = number {
        let text =
            Text::new(Point::new(GUTTER_PT - 10.0, size_pt), size_pt - 1.1, number.to_string());
        inks.push(Ink::Text(text.anchored(Anchor::End)));
    }
    let shown = fonts::shown(&piece.replace('\t', "    "));
    let words = shown.trim_start_matches(' ');
    let before = f64::from(u32::try_from(shown.len() - words.len()).unwrap_or(0));
    if !words.is_empty() {
        // A run of spaces would be drawn as one, so every second space is a no-break space.
        let words = words.replace("  ", "\u{a0} ");
        let at = Point::new(GUTTER_PT + before * wide, size_pt);
        let hand = fonts::even_if_it_can(&words);
        // Letters of different widths may need more room than monospaced ones, so they get smaller.
        let even = f64::from(u32::try_from(words.chars().count()).unwrap_or(0)) * wide;
        let drawn = fonts::width_pt(hand, size_pt, &words).max(1.0);
        let size_pt = size_pt * (even / drawn).min(1.0);
        inks.push(Ink::Text(Text::new(at, size_pt, words).in_hand(hand)));
    }
    Row {
        height_pt: asked_pt * 1.24,
        inks,
        role: Role::Paragraph,
        continues: number.is_none(),
        ..Row::default()
    }
}

/// A line divided into pieces that fit the page, whose width is given relative to the size of the letters.
fn pieces(line: &str, room: f64) -> Vec<&str> {
    let wide = fonts::width_pt(Typeface::Even, 1.0, "m");
    let (mut pieces, mut from, mut used) = (Vec::new(), 0, 0.0);
    for (at, letter) in line.char_indices() {
        let width = if letter == '\t' { 4.0 * wide } else { wide };
        if used + width > room && at > from {
            pieces.push(&line[from..at]);
            (from, used) = (at, 0.0);
        }
        used += width;
    }
    pieces.push(&line[from..]);
    pieces
}
