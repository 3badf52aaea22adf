//! Recesses, jogs, wings and bays: the parts of an outline that a sketch may simplify.

use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::Outline;
use crate::geometry::outline::Vector;
use crate::units::area::Area;

/// A part of an outline that a sketch may fill in or leave off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Part {
    /// The index of the side that it is named by: for a recess, the side that ends at the inward corner; for a jog or
    /// bay, the outermost side.
    pub(crate) side: usize,
    pub(crate) shape: Shape,
}

/// The kind of part, and how it is simplified.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Shape {
    /// A recess that is filled in: the rectangle of the two sides at the inward corner.
    Recess,
    /// A jog that is left off: the rectangle of its outermost side and the shorter side next to it.
    Jog,
    /// A wing that is left off: like a jog, but with an inward corner on one side only.
    Wing,
    /// A bay that is left off.
    Bay,
    /// A bay that is drawn as a box.
    BoxedBay,
}

impl Shape {
    /// Whether simplifying it makes the area larger.
    pub(crate) fn fills_in(self) -> bool {
        matches!(self, Shape::Recess | Shape::BoxedBay)
    }
}

#[derive(Clone, Copy, PartialEq)]
enum Turn {
    Outward,
    Inward,
    /// Not a right angle, or at a curved wall.
    Otherwise,
}

/// Every part of an outline that could be filled in or left off.
pub(crate) fn parts(outline: &Outline) -> Vec<Part> {
    let vectors = outline.vectors();
    let turns = turns(outline);
    let n = vectors.len();
    let after = |side: usize, more: usize| turns[(side + more) % n];
    let length = |side: usize| vectors[side % n].chord_length();
    let mut parts = Vec::new();
    for side in 0..n {
        if after(side, 0) == Turn::Inward {
            parts.push(Part { side, shape: Shape::Recess });
        }
        if after(side, n - 1) == Turn::Outward && after(side, 0) == Turn::Outward {
            let (before, next) =
                (after(side, n - 2) == Turn::Inward, after(side, 1) == Turn::Inward);
            let shape = match (before, next) {
                (true, true) => Some(Shape::Jog),
                (true, false) => (length(side + n - 1) < length(side + 1)).then_some(Shape::Wing),
                (false, true) => (length(side + 1) < length(side + n - 1)).then_some(Shape::Wing),
                (false, false) => None,
            };
            parts.extend(shape.map(|shape| Part { side, shape }));
        }
        if is_bay(outline, side) {
            parts.push(Part { side, shape: Shape::Bay });
            parts.push(Part { side, shape: Shape::BoxedBay });
        }
    }
    parts
}

/// How an outline turns at the end of each side.
fn turns(outline: &Outline) -> Vec<Turn> {
    let turn = i128::from(outline.turn());
    let vectors = outline.vectors();
    let n = vectors.len();
    let one = |i: usize| {
        let (a, b) = (vectors[i], vectors[(i + 1) % n]);
        if a.rise != 0 || b.rise != 0 {
            return Turn::Otherwise;
        }
        match (crossed(a, b) * turn).signum() {
            _ if !is_square(a, b) => Turn::Otherwise,
            1 => Turn::Outward,
            _ => Turn::Inward,
        }
    };
    (0..n).map(one).collect()
}

fn crossed(a: Vector, b: Vector) -> i128 {
    let parts = [a.east, a.north, b.east, b.north].map(i128::from);
    parts[0] * parts[3] - parts[1] * parts[2]
}

fn is_square(a: Vector, b: Vector) -> bool {
    let parts = [a.east, a.north, b.east, b.north].map(i128::from);
    parts[0] * parts[2] + parts[1] * parts[3] == 0
}

/// Whether a side is a round bay, or the front of an angled bay with slanted walls on both sides.
fn is_bay(outline: &Outline, side: usize) -> bool {
    let (before, front, after) = around(outline.vectors(), side);
    let turn = i128::from(outline.turn());
    if front.rise != 0 {
        return i128::from(front.rise) * turn > 0;
    }
    let slanted = |v: Vector| v.east != 0 && v.north != 0 && v.rise == 0;
    // It comes back in as far as it goes out, past a front that runs along an axis.
    let along_east = front.north == 0;
    let out_and_in = if along_east { before.north + after.north } else { before.east + after.east };
    slanted(before)
        && slanted(after)
        && !slanted(front)
        && out_and_in == 0
        && crossed(before, front) * turn > 0
        && crossed(front, after) * turn > 0
}

fn around(vectors: &[Vector], side: usize) -> (Vector, Vector, Vector) {
    let n = vectors.len();
    (vectors[(side + n - 1) % n], vectors[side], vectors[(side + 1) % n])
}

impl Part {
    /// What it adds to the area of the outline; exact where nothing is curved.
    pub(crate) fn effect(self, outline: &Outline) -> Area {
        let vectors = outline.vectors();
        let (before, here, after) = around(vectors, self.side);
        let (a, b, c) = (before.chord_length(), here.chord_length(), after.chord_length());
        match self.shape {
            Shape::Recess => Area::rectangle(b, c),
            Shape::Jog => -Area::rectangle(b, a.min(c)),
            Shape::Wing => -Area::rectangle(b, a.min(c)),
            Shape::Bay if here.rise != 0 => -here.segment().abs(),
            Shape::Bay => -(triangle(before) + triangle(after) + front(before, here)),
            Shape::BoxedBay if here.rise != 0 => {
                let rise = crate::units::length::Length::from_nm(here.rise.abs());
                Area::rectangle(b, rise) - here.segment().abs()
            }
            Shape::BoxedBay => triangle(before) + triangle(after),
        }
    }
}

impl Part {
    /// Whether it is the inward corner of an L, and not a recess between two inward corners.
    pub(crate) fn is_corner(self, outline: &Outline) -> bool {
        let turns = turns(outline);
        let n = turns.len();
        let is_inward = |side: usize| turns[side % n] == Turn::Inward;
        self.shape == Shape::Recess && !is_inward(self.side + n - 1) && !is_inward(self.side + 1)
    }

    /// The direction in which the front of a bay faces; `None` if it is slanted.
    pub(crate) fn faces(self, outline: &Outline) -> Option<Direction> {
        let front = outline.vectors()[self.side];
        // To the left of a walk that has the inside on its right.
        let (east, north) = if outline.turn() < 0 {
            (-front.north, front.east)
        } else {
            (front.north, -front.east)
        };
        match (east, north) {
            (0, along) => Some(Direction::along(Axis::North, along.signum())),
            (along, 0) => Some(Direction::along(Axis::East, along.signum())),
            _ => None,
        }
    }

    /// The two sides of its rectangle.
    pub(crate) fn walls(self, outline: &Outline) -> [usize; 2] {
        let n = outline.vectors().len();
        let (before, after) = ((self.side + n - 1) % n, (self.side + 1) % n);
        let length = |side: usize| outline.vectors()[side].chord_length();
        let is_before = self.shape != Shape::Recess && length(before) < length(after);
        [self.side, if is_before { before } else { after }]
    }
}

/// Half of the rectangle around a slanted wall.
fn triangle(slanted: Vector) -> Area {
    // The area unit is half a square nanometer, so half of the rectangle is a whole number.
    Area::from_half_nm2((i128::from(slanted.east) * i128::from(slanted.north)).abs())
}

/// The rectangle behind the front of an angled bay.
fn front(before: Vector, here: Vector) -> Area {
    let out = if here.north == 0 { before.north } else { before.east };
    Area::rectangle(here.chord_length(), crate::units::length::Length::from_nm(out.abs()))
}
