//! The contents of a page: lines and letters, positioned in points from the top left corner. Nothing here depends on
//! SVG.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use std::ops::Range;

use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::pictures::Picture;

/// A position on a page, in points (1/72 in) from its top left corner; also used as a vector.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Point {
    /// To the right.
    pub x_pt: f64,
    /// Down.
    pub y_pt: f64,
}

impl Point {
    pub(crate) const fn new(x_pt: f64, y_pt: f64) -> Point {
        Point { x_pt, y_pt }
    }

    /// This point moved by `steps` times a vector.
    pub(crate) fn plus(self, vector: Point, steps: f64) -> Point {
        Point::new(self.x_pt + vector.x_pt * steps, self.y_pt + vector.y_pt * steps)
    }

    /// The vector from this point to another.
    pub(crate) fn to(self, other: Point) -> Point {
        Point::new(other.x_pt - self.x_pt, other.y_pt - self.y_pt)
    }

    pub(crate) fn dot(self, other: Point) -> f64 {
        self.x_pt * other.x_pt + self.y_pt * other.y_pt
    }

    pub(crate) fn cross(self, other: Point) -> f64 {
        self.x_pt * other.y_pt - self.y_pt * other.x_pt
    }

    /// Its length as a vector, in points.
    pub(crate) fn length(self) -> f64 {
        libm::hypot(self.x_pt, self.y_pt)
    }

    /// The unit vector in this direction, or zero if this one is zero.
    pub(crate) fn unit(self) -> Point {
        let length = self.length();
        if length > 0.0 { Point::default().plus(self, 1.0 / length) } else { Point::default() }
    }

    /// A quarter turn clockwise: right becomes down.
    pub(crate) fn turned(self) -> Point {
        Point::new(-self.y_pt, self.x_pt)
    }

    pub(crate) fn middle(self, other: Point) -> Point {
        self.plus(self.to(other), 0.5)
    }
}

/// Which end of a text is at its position.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Anchor {
    #[default]
    Start,
    Middle,
    End,
}

/// A line of text on a page.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    pub(crate) at: Point,
    pub(crate) size_pt: f64,
    pub(crate) hand: Typeface,
    pub(crate) anchor: Anchor,
    /// The rotation in degrees, clockwise; -90 reads upward.
    pub(crate) turn: f64,
    pub(crate) words: String,
    /// Whether it is a label in the drawing, which nothing may touch.
    pub(crate) is_label: bool,
    /// Whether its letters are drawn hollow, as DRAFT behind a drawing.
    pub(crate) is_hollow: bool,
}

impl Text {
    pub(crate) fn new(at: Point, size_pt: f64, words: impl Into<String>) -> Text {
        Text {
            at,
            size_pt,
            hand: Typeface::Plain,
            anchor: Anchor::Start,
            turn: 0.0,
            words: words.into(),
            is_label: false,
            is_hollow: false,
        }
    }

    pub(crate) fn in_hand(self, hand: Typeface) -> Text {
        Text { hand, ..self }
    }

    pub(crate) fn anchored(self, anchor: Anchor) -> Text {
        Text { anchor, ..self }
    }

    /// The text.
    #[must_use]
    pub fn words(&self) -> &str {
        &self.words
    }

    /// Whether it is a label in the drawing.
    #[must_use]
    pub fn is_label(&self) -> bool {
        self.is_label
    }

    /// The four corners of the rectangle it covers, clockwise from the top left of its first letter.
    #[must_use]
    pub fn corners(&self) -> [Point; 4] {
        self.corners_if(fonts::width_pt(self.hand, self.size_pt, &self.words))
    }

    /// The corners of the text's rectangle if the text is `width_pt` wide, for callers that try many positions and
    /// measure once.
    pub(crate) fn corners_if(&self, width_pt: f64) -> [Point; 4] {
        let before = match self.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => width_pt / 2.0,
            Anchor::End => width_pt,
        };
        let radians = self.turn.to_radians();
        let along = Point::new(libm::cos(radians), libm::sin(radians));
        let down = along.turned();
        let (top, bottom) = (-0.76 * self.size_pt, 0.24 * self.size_pt);
        let corner = |right: f64, low: f64| self.at.plus(along, right - before).plus(down, low);
        [corner(0.0, top), corner(width_pt, top), corner(width_pt, bottom), corner(0.0, bottom)]
    }
}

/// One step of a path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Run {
    Move(Point),
    Line(Point),
    /// Along a circle, as seen on the page.
    Arc {
        to: Point,
        radius_pt: f64,
        is_large: bool,
        clockwise: bool,
    },
    Close,
}

/// What a line on a page represents.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The outline of a space.
    Outline,
    /// The outline of a record or plan.
    Dashed,
    /// A dimension line, from tick to tick.
    Dimension,
    /// A bar of a chart.
    Bar,
    /// Anything else.
    Other,
}

/// Lines drawn with one pen.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Stroke {
    pub(crate) runs: Vec<Run>,
    /// The line width in points; 0 draws no line.
    pub(crate) width_pt: f64,
    pub(crate) dashes: Option<[f64; 2]>,
    pub(crate) fill: Fill,
    pub(crate) part: Part,
}

/// What fills the area inside lines.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Fill {
    #[default]
    None,
    White,
    Black,
}

impl Stroke {
    pub(crate) fn line(from: Point, to: Point, width_pt: f64) -> Stroke {
        Stroke::along(&[from, to], width_pt)
    }

    pub(crate) fn along(spots: &[Point], width_pt: f64) -> Stroke {
        let runs = spots.iter().enumerate();
        let runs = runs.map(|(i, &spot)| if i == 0 { Run::Move(spot) } else { Run::Line(spot) });
        Stroke::of(runs.collect(), width_pt)
    }

    pub(crate) fn of(runs: Vec<Run>, width_pt: f64) -> Stroke {
        Stroke { runs, width_pt, dashes: None, fill: Fill::None, part: Part::Other }
    }

    /// A closed figure filled with a tone, without an outline.
    pub(crate) fn filled(spots: &[Point], fill: Fill) -> Stroke {
        let mut stroke = Stroke::along(spots, 0.0);
        stroke.runs.push(Run::Close);
        Stroke { fill, ..stroke }
    }

    /// A filled dot.
    pub(crate) fn dot(at: Point, radius_pt: f64) -> Stroke {
        let (left, right) =
            (at.plus(Point::new(-1.0, 0.0), radius_pt), at.plus(Point::new(1.0, 0.0), radius_pt));
        let half = |to: Point| Run::Arc { to, radius_pt, is_large: false, clockwise: true };
        let runs = vec![Run::Move(left), half(right), half(left), Run::Close];
        Stroke { fill: Fill::Black, ..Stroke::of(runs, 0.0) }
    }

    /// A black square, `half_pt` points from its middle to each side.
    pub(crate) fn square(at: Point, half_pt: f64) -> Stroke {
        let corner = |x: f64, y: f64| Point::new(at.x_pt + x * half_pt, at.y_pt + y * half_pt);
        let corners = [corner(-1.0, -1.0), corner(1.0, -1.0), corner(1.0, 1.0), corner(-1.0, 1.0)];
        Stroke::filled(&corners, Fill::Black)
    }

    pub(crate) fn dashed(self, dashes: [f64; 2]) -> Stroke {
        Stroke { dashes: Some(dashes), ..self }
    }

    pub(crate) fn of_part(self, part: Part) -> Stroke {
        Stroke { part, ..self }
    }

    /// Its straight lines; a curve is replaced by its chord.
    pub(crate) fn stretches(&self) -> Vec<(Point, Point)> {
        let mut stretches = Vec::new();
        let (mut first, mut last) = (Point::default(), Point::default());
        for run in &self.runs {
            let next = match *run {
                Run::Move(to) => {
                    first = to;
                    last = to;
                    continue;
                }
                Run::Line(to) | Run::Arc { to, .. } => to,
                Run::Close => first,
            };
            // A figure may already end at its start.
            if last.to(next).length() > 1e-9 {
                stretches.push((last, next));
            }
            last = next;
        }
        stretches
    }
}

/// Something drawn on a page.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Ink {
    Text(Text),
    Stroke(Stroke),
    Photograph(Photograph),
}

/// A photograph on a page, upright, positioned by its top left corner.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Photograph {
    pub(crate) at: Point,
    pub(crate) width_pt: f64,
    pub(crate) height_pt: f64,
    pub(crate) picture: Picture,
    /// Its alternative text.
    pub(crate) told: String,
}

/// What a part of a page is, for screen readers.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) enum Role {
    /// Repeated on every page, or only decoration: not read.
    #[default]
    Furniture,
    /// A heading of this level; the address of the house has level 1.
    Heading(u16),
    Paragraph,
    /// The head of a table: how many inks each cell has. Further inks are decoration.
    Head(Vec<usize>),
    /// A row of a table, in the same way.
    Cells(Vec<usize>),
    /// A drawing, with its description in words.
    Figure(String),
}

/// Consecutive inks with one role: from its first ink to the first ink of the next passage.
#[derive(Clone, Debug)]
pub(crate) struct Passage {
    pub(crate) from: usize,
    pub(crate) role: Role,
    /// Whether it continues the passage before it, as the second line of a paragraph does.
    pub(crate) continues: bool,
}

/// A page: its size, its title, and its contents in reading order.
#[derive(Clone, Debug)]
pub struct Page {
    pub(crate) width_pt: f64,
    pub(crate) height_pt: f64,
    pub(crate) title: String,
    pub(crate) description: String,
    pub(crate) inks: Vec<Ink>,
    /// What the inks are; those before the first passage are furniture.
    pub(crate) passages: Vec<Passage>,
    /// The scale of its drawing, in points per foot.
    pub(crate) scale_pt_per_ft: Option<f64>,
    /// The scales of its insets, in points per foot.
    pub(crate) inset_scales_pt_per_ft: Vec<f64>,
    /// Whether it is numbered separately because it does not have to be handed on with the others.
    pub(crate) apart: bool,
    /// Its number in words: `page 1 of 4`.
    pub(crate) number: String,
    /// The house it is about: its address; empty if the file gives none.
    pub(crate) house: String,
}

impl Page {
    /// Its title.
    #[must_use]
    pub fn title(&self) -> &str {
        &self.title
    }

    /// Everything on the page as text, for screen readers.
    #[must_use]
    pub fn description(&self) -> &str {
        &self.description
    }

    /// Its width and height, in points.
    #[must_use]
    pub fn size_pt(&self) -> (f64, f64) {
        (self.width_pt, self.height_pt)
    }

    /// The scale of its drawing in points per foot; `None` without a drawing.
    #[must_use]
    pub fn scale_pt_per_ft(&self) -> Option<f64> {
        self.scale_pt_per_ft
    }

    /// The scales of its insets in points per foot.
    #[must_use]
    pub fn inset_scales_pt_per_ft(&self) -> &[f64] {
        &self.inset_scales_pt_per_ft
    }

    /// Its lines of text in reading order.
    pub fn texts(&self) -> impl Iterator<Item = &Text> {
        self.inks.iter().filter_map(|ink| match ink {
            Ink::Text(text) => Some(text),
            Ink::Stroke(_) | Ink::Photograph(_) => None,
        })
    }

    /// Its straight lines that represent a part, from end to end.
    #[must_use]
    pub fn lines(&self, part: Part) -> Vec<(Point, Point)> {
        let strokes = self.inks.iter().filter_map(|ink| match ink {
            Ink::Stroke(stroke) if stroke.part == part => Some(stroke.stretches()),
            _ => None,
        });
        strokes.flatten().collect()
    }

    /// Whether it has a photograph.
    pub(crate) fn has_photographs(&self) -> bool {
        self.inks.iter().any(|ink| matches!(ink, Ink::Photograph(_)))
    }

    /// Gives this role to what is drawn from here on.
    pub(crate) fn begin(&mut self, role: Role, continues: bool) {
        self.passages.push(Passage { from: self.inks.len(), role, continues });
    }

    /// The passages with their inks.
    pub(crate) fn passages(&self) -> impl Iterator<Item = (&Passage, &[Ink])> {
        let ends = self.passages.iter().skip(1).map(|next| next.from);
        let ends = ends.chain(std::iter::once(self.inks.len()));
        self.passages.iter().zip(ends).map(|(passage, to)| (passage, &self.inks[passage.from..to]))
    }

    /// The number of passages so far.
    pub(crate) fn passage_count(&self) -> usize {
        self.passages.len()
    }

    /// Puts the passages from `from` on in this order, each range counted from the first of all. Where they are drawn does
    /// not change.
    pub(crate) fn read_in(&mut self, from: usize, order: &[Range<usize>]) {
        let all: Vec<(Passage, Vec<Ink>)> =
            self.passages().map(|(passage, inks)| (passage.clone(), inks.to_vec())).collect();
        let Some(first) = self.passages.get(from).map(|passage| passage.from) else { return };
        self.inks.truncate(first);
        self.passages.truncate(from);
        for (passage, inks) in order.iter().flat_map(|range| &all[range.clone()]) {
            self.begin(passage.role.clone(), passage.continues);
            self.inks.extend_from_slice(inks);
        }
    }

    pub(crate) fn write(&mut self, text: Text) {
        if !text.words.trim().is_empty() {
            self.inks.push(Ink::Text(text));
        }
    }

    pub(crate) fn draw(&mut self, stroke: Stroke) {
        self.inks.push(Ink::Stroke(stroke));
    }
}
