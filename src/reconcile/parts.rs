//! Recesses, jogs, wings and bays: the parts of an outline that a sketch may simplify, or count twice.

use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::Outline;
use crate::geometry::outline::Vector;
use crate::geometry::traverse::{self, Traverse, TraverseSide};
use crate::units::area::Area;
use crate::units::length::Length;

/// A part of an outline that a sketch may fill in or leave off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Part {
    /// The index of the side that it is named by: for a recess and an L, the side that ends at the inward corner; for a
    /// jog or bay, the outermost side.
    pub(crate) side: usize,
    pub(crate) shape: Shape,
    /// How many sides the outline has.
    pub(crate) of: usize,
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
    /// A slanted corner that is squared off.
    CutCorner,
    /// The part of an L that two rectangles measured along its whole walls both cover.
    Overlap,
}

impl Shape {
    /// Whether simplifying it makes the area larger.
    pub(crate) fn fills_in(self) -> bool {
        matches!(self, Shape::Recess | Shape::BoxedBay | Shape::CutCorner | Shape::Overlap)
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
            parts.push(Part { side, shape: Shape::Recess, of: n });
            let is_l = n == 6 && turns.iter().filter(|turn| **turn == Turn::Outward).count() == 5;
            parts.extend(is_l.then_some(Part { side, shape: Shape::Overlap, of: n }));
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
            parts.extend(shape.map(|shape| Part { side, shape, of: n }));
        }
        if is_bay(outline, side) {
            parts.push(Part { side, shape: Shape::Bay, of: n });
            parts.push(Part { side, shape: Shape::BoxedBay, of: n });
        }
        parts.extend(is_cut(outline, side).then_some(Part {
            side,
            shape: Shape::CutCorner,
            of: n,
        }));
    }
    parts
}

/// Two or more parts of one shape of an outline, at most as many as there is room for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Alike {
    sides: [u16; Alike::MOST],
    count: u8,
    of: u16,
    shape: Shape,
}

impl Alike {
    const MOST: usize = 6;

    /// These parts; `None` where they are fewer than two or too many.
    fn of(parts: &[Part]) -> Option<Alike> {
        let first = parts.first().filter(|_| (2..=Alike::MOST).contains(&parts.len()))?;
        let mut sides = [0; Alike::MOST];
        for (place, part) in sides.iter_mut().zip(parts) {
            *place = u16::try_from(part.side).ok()?;
        }
        let (count, of) = (u8::try_from(parts.len()).ok()?, u16::try_from(first.of).ok()?);
        Some(Alike { sides, count, of, shape: first.shape })
    }

    pub(crate) fn parts(self) -> impl Iterator<Item = Part> {
        let sides = self.sides.into_iter().take(usize::from(self.count));
        sides.map(move |side| Part {
            side: usize::from(side),
            shape: self.shape,
            of: usize::from(self.of),
        })
    }
}

/// What a plain sketch of an outline leaves out at once, given its parts: all recesses filled in, all jogs, wings or bays
/// left off, or those that face along one axis.
pub(crate) fn left_out_at_once(all: &[Part], outline: &Outline) -> Vec<Alike> {
    /// A jog that is left off together with those of the other axis has at most this part of the outline: a tenth. The
    /// two arms of a cross are jogs of each other, and only one pair of them is left off.
    const OF_A_JOG: i128 = 10;
    let is_small =
        |part: &Part| OF_A_JOG * part.effect(outline).abs().half_nm2() <= outline.area().half_nm2();
    let mut found: Vec<Alike> = Vec::new();
    for shape in [Shape::Recess, Shape::Jog, Shape::Wing, Shape::Bay] {
        let these: Vec<Part> = all.iter().filter(|part| part.shape == shape).copied().collect();
        if these.len() < 2 {
            continue;
        }
        if shape == Shape::Recess || these.iter().all(is_small) {
            found.extend(Alike::of(&each_once(&these, outline)));
        }
        let axes = if shape == Shape::Recess { &[][..] } else { &Axis::BOTH[..] };
        for axis in axes {
            let faces = |part: &&Part| part.faces(outline).map(Direction::axis) == Some(*axis);
            let along: Vec<Part> = these.iter().filter(faces).copied().collect();
            let alike = Alike::of(&each_once(&along, outline));
            found.extend(alike.filter(|one| !found.contains(one)));
        }
    }
    found
}

/// These parts of one shape, each once: of a recess with two corners the smaller rectangle. None where the walls of two run
/// into each other, as in a flight of steps.
fn each_once(all: &[Part], outline: &Outline) -> Vec<Part> {
    let apart = |one: &Part, other: &Part| {
        let apart = one.side.abs_diff(other.side);
        apart.min(one.of - apart)
    };
    let is_step = all.iter().any(|one| all.iter().any(|other| apart(one, other) == 2));
    if is_step {
        return Vec::new();
    }
    let is_smaller = |other: &Part, one: &Part| {
        let (its, own) = (other.effect(outline).abs(), one.effect(outline).abs());
        its < own || its == own && other.side < one.side
    };
    let is_kept =
        |one: &&Part| !all.iter().any(|other| apart(one, other) == 1 && is_smaller(other, one));
    all.iter().filter(is_kept).copied().collect()
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

/// Whether a side is a slanted corner between two walls at a right angle.
fn is_cut(outline: &Outline, side: usize) -> bool {
    let (before, here, after) = around(outline.vectors(), side);
    let turn = i128::from(outline.turn());
    let is_slanted = here.east != 0 && here.north != 0;
    is_slanted
        && [before, here, after].iter().all(|vector| vector.rise == 0)
        && is_square(before, after)
        && (before.east == 0 || before.north == 0)
        && crossed(before, here) * turn > 0
        && crossed(here, after) * turn > 0
}

fn around(vectors: &[Vector], side: usize) -> (Vector, Vector, Vector) {
    let n = vectors.len();
    (vectors[(side + n - 1) % n], vectors[side], vectors[(side + 1) % n])
}

impl Part {
    /// Whether two parts of one outline have a wall in common, so that a reader takes them for the same.
    pub(crate) fn is_beside(self, other: Part) -> bool {
        let apart = self.side.abs_diff(other.side);
        apart.min(self.of.saturating_sub(apart)) <= 2
    }

    /// What it adds to the area of the outline; exact where nothing is curved.
    pub(crate) fn effect(self, outline: &Outline) -> Area {
        let vectors = outline.vectors();
        let (before, here, after) = around(vectors, self.side);
        let b = here.chord_length();
        match self.shape {
            Shape::Recess => Area::rectangle(b, after.chord_length()),
            Shape::Jog | Shape::Wing => {
                -Area::rectangle(b, before.chord_length().min(after.chord_length()))
            }
            Shape::Bay if here.rise != 0 => -here.segment().abs(),
            Shape::Bay => -(triangle(before) + triangle(after) + front(before, here)),
            Shape::BoxedBay if here.rise != 0 => {
                let rise = Length::from_nm(here.rise.abs());
                Area::rectangle(b, rise) - here.segment().abs()
            }
            Shape::BoxedBay => triangle(before) + triangle(after),
            Shape::CutCorner => triangle(here),
            Shape::Overlap => {
                let [one, other] = self.walls(outline).map(|side| vectors[side].chord_length());
                Area::rectangle(one, other)
            }
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
        outline.faces(self.side)
    }

    /// The two sides of its rectangle; of a slanted corner, those that meet where it is squared off.
    pub(crate) fn walls(self, outline: &Outline) -> [usize; 2] {
        let n = outline.vectors().len();
        let (before, after) = ((self.side + n - 1) % n, (self.side + 1) % n);
        match self.shape {
            Shape::Overlap => return [before, (self.side + 2) % n],
            Shape::CutCorner => return [before, after],
            _ => {}
        }
        let length = |side: usize| outline.vectors()[side].chord_length();
        let is_before = self.shape != Shape::Recess && length(before) < length(after);
        [self.side, if is_before { before } else { after }]
    }
}

impl Part {
    /// The walls as they run without this part, those that then lie in one line joined; `None` where they cannot be
    /// drawn so. `outline` is the outline of the walls.
    pub(crate) fn simplified(self, walls: &Traverse, outline: &Outline) -> Option<Traverse> {
        let mut sides = walls.sides.clone();
        let n = sides.len();
        match self.shape {
            Shape::Overlap => return None,
            // Walked in the other order, the two walls of its rectangle lie on the other two sides of it.
            Shape::Recess | Shape::Jog | Shape::Wing => {
                let [here, other] = self.walls(outline);
                sides.swap(here, other);
            }
            Shape::CutCorner => {
                let here = sides[self.side];
                let slanted = here.shape.vector();
                let before = sides[(self.side + n - 1) % n].shape.vector();
                let (first, second) = match before.east {
                    0 => (Axis::North, Axis::East),
                    _ => (Axis::East, Axis::North),
                };
                let walls = [first, second].map(|axis| TraverseSide {
                    shape: straight(axis, slanted.along(axis)),
                    ..here
                });
                sides.splice(self.side..=self.side, walls);
            }
            Shape::Bay | Shape::BoxedBay => {
                let [before, after] = [(self.side + n - 1) % n, (self.side + 1) % n];
                let vectors = [before, self.side, after].map(|i| sides[i].shape.vector());
                let one = straight_through(vectors, self.shape == Shape::BoxedBay)?;
                let is_round = vectors[1].rise != 0;
                let here = sides[self.side];
                let one = one.into_iter().map(|shape| TraverseSide { shape, ..here });
                // Starting at the bay, it lies in one piece.
                sides.rotate_left(if is_round { self.side } else { before });
                sides.splice(..if is_round { 1 } else { 3 }, one);
            }
        }
        joined(&mut sides);
        (sides.len() >= 4).then_some(Traverse { sides })
    }
}

/// The walls in place of a bay, in walking order: one wall straight through, or those of a box; `None` if its front
/// does not run along an axis.
fn straight_through(bay: [Vector; 3], is_box: bool) -> Option<Vec<traverse::Shape>> {
    let [before, front, after] = bay;
    let axis = match (front.north, front.east) {
        (0, _) => Axis::East,
        (_, 0) => Axis::North,
        _ => return None,
    };
    let across = if axis == Axis::East { Axis::North } else { Axis::East };
    let (along, [out, back]) = if front.rise == 0 {
        let along = [before, front, after].map(|vector| vector.along(axis));
        (along.iter().sum(), [before, after].map(|vector| vector.along(across)))
    } else {
        // A rise is positive to the right of the walk: south of a walk east, east of a walk north.
        let along = front.along(axis);
        let right = if axis == Axis::East { -along.signum() } else { along.signum() };
        (along, [right * front.rise, -right * front.rise])
    };
    let through = straight(axis, along);
    Some(if is_box {
        vec![straight(across, out), through, straight(across, back)]
    } else {
        vec![through]
    })
}

/// A straight wall along an axis, by its signed length.
fn straight(axis: Axis, signed: i64) -> traverse::Shape {
    traverse::Shape::Straight { direction: Direction::along(axis, signed), length: signed.abs() }
}

/// Joins straight walls that follow each other along one axis. What is left between walls that run out and back is
/// dropped if it is shorter than half a foot, since nobody draws that.
fn joined(sides: &mut Vec<TraverseSide>) {
    let both = |one: &TraverseSide, next: &TraverseSide| match (one.shape, next.shape) {
        (
            traverse::Shape::Straight { direction, length },
            traverse::Shape::Straight { direction: other, length: its },
        ) if direction.axis() == other.axis() => {
            Some((direction.axis(), direction.sign() * length + other.sign() * its))
        }
        _ => None,
    };
    let mut at = 0;
    while at < sides.len() && sides.len() > 1 {
        let next = (at + 1) % sides.len();
        let Some((axis, signed)) = both(&sides[at], &sides[next]) else {
            at += 1;
            continue;
        };
        let direction = Direction::along(axis, signed);
        sides[at].shape = traverse::Shape::Straight { direction, length: signed.abs() };
        let is_dropped = 2 * signed.abs() < Length::FOOT.nm();
        sides.remove(next);
        if is_dropped {
            sides.remove(if next < at { at - 1 } else { at });
        }
        // All pairs before these walls still do not join.
        at = at.saturating_sub(2);
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
    Area::rectangle(here.chord_length(), Length::from_nm(out.abs()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn walls(text: &str) -> Option<(Traverse, Outline)> {
        let text = format!("level \"Ground\"\nliving \"House\"\n{text}");
        let house = crate::read::read("t.sides", text).ok()?;
        let at = house.at_face(0, crate::house::Face::Outside).ok()?;
        Some((at.traverse, at.outline))
    }

    /// The walls of the outline without the first part of this shape, in whole inches: positive north and east.
    fn simplified(text: &str, shape: Shape) -> Vec<i64> {
        let without = |(walls, outline): (Traverse, Outline)| {
            let part = parts(&outline).into_iter().find(|part| part.shape == shape)?;
            part.simplified(&walls, &outline)
        };
        let inches = |side: &TraverseSide| {
            let vector = side.shape.vector();
            (12 * (vector.east + vector.north)).div_euclid(Length::FOOT.nm())
        };
        let without = walls(text).and_then(without);
        without.map_or_else(Vec::new, |one| one.sides.iter().map(inches).collect())
    }

    #[test]
    fn the_walls_on_both_sides_of_a_recess_and_its_back_become_one() {
        let text = "north 29' 4\"\neast 54' 7\"\nsouth 29' 4\"\nwest 21' 3\"\nnorth 8' 5\"\nwest 11' 4\"\nsouth 8' 5\"\nwest 22'";
        assert_eq!(simplified(text, Shape::Recess), [352, 655, -352, -655]);
        // An inch that is left between its sides is not drawn.
        let uneven = text.replacen("south 8' 5\"", "south 8' 4\"", 1).replacen(
            "south 29' 4\"",
            "south 29' 5\"",
            1,
        );
        assert_eq!(simplified(&uneven, Shape::Recess), [352, 655, -353, -655]);
        // Of one side 3 ft longer than the other, 3 ft remain.
        let deeper = "north 30\neast 50\nsouth 33\nwest 20\nnorth 8\nwest 10\nsouth 5\nwest 20";
        assert_eq!(simplified(deeper, Shape::Recess), [360, 600, -396, -360, 36, -240]);
    }

    #[test]
    fn two_rectangles_of_an_l_overlap_in_its_corner() {
        // 40 × 20 along the south and 15 × 32 along the west: 15 × 20 in both.
        let l = "north 32\neast 15\nsouth 12\neast 25\nsouth 20\nwest 40";
        let overlap = |(_, outline): (Traverse, Outline)| {
            let part = parts(&outline).into_iter().find(|part| part.shape == Shape::Overlap)?;
            Some((part.side, part.effect(&outline).whole_sq_ft()))
        };
        assert_eq!(walls(l).and_then(overlap), Some((2, 300)));
        assert_eq!(walls("north 30\neast 40\nsouth 30\nwest 40").and_then(overlap), None);
    }

    #[test]
    fn a_jog_or_wing_leaves_the_wall_that_it_stands_on() {
        let jog = "north 30\neast 10\nnorth 4\neast 12\nsouth 4\neast 20\nsouth 30\nwest 42";
        assert_eq!(simplified(jog, Shape::Jog), [360, 504, -360, -504]);
        let wing = "north 30\neast 20\nnorth 6\neast 15\nsouth 36\nwest 35";
        // The first wing of this L is 30 ft × 20 ft: 36 ft × 15 ft are left.
        assert_eq!(simplified(wing, Shape::Wing), [432, 180, -432, -180]);
    }

    #[test]
    fn a_bay_leaves_the_wall_straight_through_or_a_box() {
        let flat = "north 30\nbay east 10 out 3 flat 6\neast 18\nsouth 30\nwest 28";
        let sorted = |shape: Shape, text: &str| {
            let mut walls = simplified(text, shape);
            walls.sort_unstable();
            walls
        };
        assert_eq!(sorted(Shape::Bay, flat), [-360, -336, 336, 360]);
        // The wall to the corner and the side of the box run on in one line.
        assert_eq!(sorted(Shape::BoxedBay, flat), [-360, -336, -36, 120, 216, 396]);
        let round = "north 30\neast 5\nbay east 10 out 3 round\neast 13\nsouth 30\nwest 28";
        assert_eq!(sorted(Shape::Bay, round), [-360, -336, 336, 360]);
        assert_eq!(sorted(Shape::BoxedBay, round), [-360, -336, -36, 36, 60, 120, 156, 360]);
    }

    #[test]
    fn a_slanted_corner_is_squared_off() {
        // 44 × 30 less half of 6 × 6.
        let cut = "north 30\neast 38\ndiagonal south 6 east 6\nsouth 24\nwest 44";
        assert_eq!(simplified(cut, Shape::CutCorner), [360, 528, -360, -528]);
        let adds = |(_, outline): (Traverse, Outline)| {
            let part = parts(&outline).into_iter().find(|part| part.shape == Shape::CutCorner)?;
            Some((part.side, part.effect(&outline).whole_sq_ft()))
        };
        assert_eq!(walls(cut).and_then(adds), Some((2, 18)));
    }

    /// Where nothing is rounded, both ways give the same area.
    #[test]
    fn an_outline_without_a_part_has_the_area_with_its_effect() {
        let texts = [
            "north 29' 4\"\neast 54' 7\"\nsouth 29' 4\"\nwest 21' 3\"\nnorth 8' 5\"\nwest 11' 4\"\nsouth 8' 5\"\nwest 22'",
            "north 30\neast 50\nsouth 33\nwest 20\nnorth 8\nwest 10\nsouth 5\nwest 20",
            "north 30\neast 10\nnorth 4\neast 12\nsouth 7\neast 20\nsouth 27\nwest 42",
            "north 30\neast 20\nnorth 6\neast 15\nsouth 36\nwest 35",
            "north 30\nbay east 10 out 3 flat 6\neast 18\nsouth 30\nwest 28",
            "west 28\nnorth 30\neast 5\nbay east 10 out 3 round\neast 13\nsouth 30",
            "north 30\neast 28\nsouth 10\nbay south 9 out 2 flat 5\nsouth 11\nwest 28",
            "north 30\neast 38\ndiagonal south 6 east 6\nsouth 24\nwest 44",
        ];
        let mut count = 0;
        for text in texts {
            let Some((walls, outline)) = walls(text) else { continue };
            // What is counted twice has no outline.
            let drawn = parts(&outline).into_iter().filter(|part| part.shape != Shape::Overlap);
            for part in drawn {
                let sides = part.simplified(&walls, &outline).map(|one| one.sides);
                let vectors =
                    sides.map(|sides| sides.iter().map(|side| side.shape.vector()).collect());
                let area = vectors.and_then(Outline::new).map(|outline| outline.area());
                assert_eq!(
                    area,
                    Some(outline.area() + part.effect(&outline)),
                    "{part:?} of {text}"
                );
                count += 1;
            }
        }
        assert!(count >= 15, "{count}");
    }
}
