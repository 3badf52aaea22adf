//! The printable form: one page for pencil and clipboard, with the rows that are typed later.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::error::Error;
use crate::pages::Paper;
use crate::pages::export;
use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::layout::EDGE_PT;
use crate::pages::page::{Anchor, Page, Point, Role, Stroke, Text};

/// The distance between rows: a quarter inch, enough for writing outdoors in the cold.
const ROW_PT: f64 = 18.0;
/// The rows of the walk on the left, and of the two on the right.
const ROWS: [usize; 3] = [21, 10, 8];
/// The distance between the walks on the left and on the right.
const BETWEEN_PT: f64 = 16.0;
/// The spacing of the grid for a sketch: an eighth of an inch.
const SQUARE_PT: f64 = 9.0;

/// The line width of that grid.
const DOTS: [f64; 2] = [0.75, 1.5];

/// The columns of a row: heading and share of the width.
const COLUMNS: [(&str, f64); 7] = [
    ("side", 0.09),
    ("way", 0.17),
    ("feet", 0.15),
    ("inches", 0.14),
    ("fraction", 0.15),
    ("no reach", 0.14),
    ("about", 0.16),
];

/// A form for measuring a house, as a PDF of one page.
///
/// It has the rows of a sides file: a direction and a length for each wall, a box for a wall that could not be
/// reached (`by closing`) and one for an estimate (`estimated`), and the statements at the head of the file.
///
/// # Errors
///
/// [`Error::Drawing`] if it cannot be made, which is a bug in this program.
pub fn form(paper: Paper) -> Result<Vec<u8>, Error> {
    export::pdf::alone(&[page(paper)], TITLE)
}

const TITLE: &str = "Form to measure a house";

/// The form as a page.
fn page(paper: Paper) -> Page {
    let (width_pt, height_pt) = paper.size_pt();
    let mut page = Page {
        width_pt,
        height_pt,
        title: TITLE.to_owned(),
        description: "A form for pencil and clipboard: the head of a sides file, rows for the walls of three walks, squared ground for a sketch.".to_owned(),
        inks: Vec::new(),
        passages: Vec::new(),
        scale_pt_per_ft: None,
        inset_scales_pt_per_ft: Vec::new(),
        apart: false,
        number: "page 1 of 1".to_owned(),
        house: String::new(),
    };
    let right = width_pt - EDGE_PT;
    page.begin(Role::Heading(1), false);
    let below = head(&mut page, right);
    page.begin(Role::Figure(page.description.clone()), false);
    let half = (right - EDGE_PT - BETWEEN_PT) / 2.0;
    let second = EDGE_PT + half + BETWEEN_PT;
    let left_end = walk(&mut page, Point::new(EDGE_PT, below), half, "Walk 1", ROWS[0]);
    let middle = walk(&mut page, Point::new(second, below), half, "Walk 2", ROWS[1]);
    let right_end = walk(&mut page, Point::new(second, middle + 8.0), half, "Walk 3", ROWS[2]);
    let foot = height_pt - 58.0;
    squares(&mut page, left_end.max(right_end) + 10.0, right, foot - 4.0);
    let next = small(
        &mut page,
        Point::new(EDGE_PT, foot + 8.0),
        "Afterwards: fairfoot new my-house, and type one row a line: north 42' 7 1/2\". \"No reach\" is typed west by closing (one for each direction); \"about\" is estimated after the length.",
    );
    small(
        &mut page,
        Point::new(EDGE_PT, next),
        "Not an appraisal, not a survey, not legal advice; local rules and licensed practice come first. More walks than three: print this page again.",
    );
    page
}

/// A small paragraph across the page; returns where its next line would be.
fn small(page: &mut Page, at: Point, words: &str) -> f64 {
    const SIZE_PT: f64 = 6.8;
    let width = page.width_pt - EDGE_PT - at.x_pt;
    let mut y_pt = at.y_pt;
    for (i, line) in fonts::wrapped(Typeface::Plain, SIZE_PT, words, width).into_iter().enumerate()
    {
        page.begin(Role::Paragraph, i > 0);
        page.write(Text::new(Point::new(at.x_pt, y_pt), SIZE_PT, line));
        y_pt += SIZE_PT * 1.3;
    }
    y_pt
}

/// The entries that are filled in once, with lines to write on; returns where they end.
fn head(page: &mut Page, right: f64) -> f64 {
    let mut y = 46.0;
    page.write(Text::new(Point::new(EDGE_PT, y), 13.0, TITLE).in_hand(Typeface::Bold));
    page.begin(Role::Paragraph, false);
    let how = "Ask the office first for the record card and its sketch.";
    page.write(Text::new(Point::new(right, y), 8.0, how).anchored(Anchor::End));
    let lines: [&[(&str, f64)]; 4] = [
        &[("Property", 0.62), ("Account", 0.38)],
        &[("Measured on", 0.24), ("by", 0.3), ("with", 0.24), ("within", 0.22)],
        &[("Record, sq ft", 0.3), ("listing", 0.22), ("tax year", 0.2), ("garage on record", 0.28)],
        &[
            ("Street side (front)", 0.3),
            ("brick thickness (veneer)", 0.38),
            ("interior seen: yes / no", 0.32),
        ],
    ];
    for fields in lines {
        y += 21.0;
        let mut left = EDGE_PT;
        for (name, share) in fields {
            let end = left + share * (right - EDGE_PT);
            page.write(Text::new(Point::new(left, y), 8.0, *name));
            let from = left + fonts::width_pt(Typeface::Plain, 8.0, name) + 4.0;
            let stays = name.contains('/');
            if !stays {
                page.draw(Stroke::line(
                    Point::new(from, y + 2.0),
                    Point::new(end - 8.0, y + 2.0),
                    0.5,
                ));
            }
            left = end;
        }
    }
    y += 15.0;
    let next = small(
        page,
        Point::new(EDGE_PT, y),
        "Walk round the outer face from any corner until you are back. A row for each wall: the way you go (N, E, S, W on your paper, or back, right, front, left seen from the street), then its length.",
    );
    next + 3.0
}

/// One walk: its name and its rows; returns where it ends.
fn walk(page: &mut Page, at: Point, width: f64, name: &str, rows: usize) -> f64 {
    let mut y = at.y_pt + 8.0;
    let lines: [&[(&str, f64)]; 2] = [
        &[("name", 0.4), ("kind", 0.32), ("level", 0.28)],
        &[("starts at corner", 0.46), ("or inside walk", 0.54)],
    ];
    page.write(Text::new(Point::new(at.x_pt, y), 9.0, name).in_hand(Typeface::Bold));
    let indent = fonts::width_pt(Typeface::Bold, 9.0, name) + 6.0;
    for (i, fields) in lines.iter().enumerate() {
        let mut left = at.x_pt + indent;
        for (name, share) in *fields {
            let end = left + share * (width - indent);
            page.write(Text::new(Point::new(left, y), 7.5, *name));
            let from = left + fonts::width_pt(Typeface::Plain, 7.5, name) + 3.0;
            page.draw(Stroke::line(Point::new(from, y + 2.0), Point::new(end - 4.0, y + 2.0), 0.5));
            left = end;
        }
        y += if i == 0 { 17.0 } else { 6.0 };
    }
    y += 9.0;
    let mut left = at.x_pt;
    let top = y + 3.0;
    let bottom = top + ROW_PT * count(rows);
    for (head, share) in COLUMNS {
        let end = left + share * width;
        let middle = Point::new((left + end) / 2.0, y);
        page.write(Text::new(middle, 6.8, head).anchored(Anchor::Middle));
        page.draw(Stroke::line(Point::new(left, top), Point::new(left, bottom), 0.5));
        if matches!(head, "no reach" | "about") {
            boxes(page, (left + end) / 2.0, top, rows);
        }
        left = end;
    }
    page.draw(Stroke::line(Point::new(left, top), Point::new(left, bottom), 0.5));
    for row in 0..=rows {
        let y = top + ROW_PT * count(row);
        let width_pt = if row == 0 || row == rows { 0.9 } else { 0.4 };
        page.draw(Stroke::line(Point::new(at.x_pt, y), Point::new(left, y), width_pt));
        if row < rows {
            let number = Point::new(at.x_pt + COLUMNS[0].1 * width / 2.0, y + ROW_PT * 0.68);
            let text = Text::new(number, 7.5, (row + 1).to_string());
            page.write(text.anchored(Anchor::Middle));
        }
    }
    bottom
}

/// Draws a small box to check off in each row.
fn boxes(page: &mut Page, middle: f64, top: f64, rows: usize) {
    for row in 0..rows {
        let at = Point::new(middle, top + ROW_PT * (count(row) + 0.5));
        let square = Stroke::square(at, 4.0);
        page.draw(Stroke { fill: crate::pages::page::Fill::None, width_pt: 0.6, ..square });
    }
}

/// A grid for a sketch.
fn squares(page: &mut Page, top: f64, right: f64, bottom: f64) {
    let words = "Sketch: the street at the bottom; number the corners as you walk.";
    page.write(Text::new(Point::new(EDGE_PT, top + 6.0), 7.5, words));
    let top = top + 11.0;
    let last = top + ((bottom - top) / SQUARE_PT).floor() * SQUARE_PT;
    let mut x = EDGE_PT;
    while x <= right + 0.1 {
        page.draw(Stroke::line(Point::new(x, top), Point::new(x, last), 0.3).dashed(DOTS));
        x += SQUARE_PT;
    }
    let mut y = top;
    while y <= last + 0.1 {
        let end = Point::new(x - SQUARE_PT, y);
        page.draw(Stroke::line(Point::new(EDGE_PT, y), end, 0.3).dashed(DOTS));
        y += SQUARE_PT;
    }
}

fn count(rows: usize) -> f64 {
    f64::from(u32::try_from(rows).unwrap_or(0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_form_fits_its_paper_and_has_room_for_a_sketch() {
        for paper in [Paper::Letter, Paper::A4] {
            let page = page(paper);
            let (width, height) = paper.size_pt();
            for text in page.texts() {
                for corner in text.corners() {
                    assert!(
                        corner.x_pt >= EDGE_PT - 6.0 && corner.x_pt <= width - EDGE_PT + 6.0,
                        "{}",
                        text.words()
                    );
                    assert!(
                        corner.y_pt >= 20.0 && corner.y_pt <= height - 20.0,
                        "{}",
                        text.words()
                    );
                }
            }
            let lines = page.lines(crate::pages::page::Part::Other);
            let squared = lines.iter().filter(|(from, to)| {
                from.x_pt == to.x_pt && to.y_pt - from.y_pt > 60.0 && to.y_pt > height - 80.0
            });
            assert!(squared.count() > 50);
        }
    }
}
