//! The surfaces of a level: outlines, hatching, veneer, and the outlines of others laid over them.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::house::{Kind, Thickness};
use crate::pages::drawing::canvas::Block;
use crate::pages::drawing::occupancy::Sort;
use crate::pages::drawing::shapes::{Plan, Shape};
use crate::pages::drawing::view::{OnSite, WallOnPage, hatching, is_inside};
use crate::pages::fonts::Typeface;
use crate::pages::page::{Part, Point, Run, Stroke};
use crate::units::length::{Length, WrittenLength};

impl Plan<'_> {
    /// Draws outlines, hatching and veneer; spaces inside others are drawn over them.
    pub(super) fn spaces(&mut self) {
        let shapes = std::mem::take(&mut self.shapes);
        for shape in &shapes {
            self.hatching(shape, &shapes);
        }
        for shape in &shapes {
            let (width, dashes) = match self.space(shape).kind {
                Kind::Open => (0.7, Some([4.0, 2.5])),
                Kind::Stair | Kind::Low => (0.6, None),
                _ if self.space(shape).counted => (1.7, None),
                kind if kind.has_walls() => (1.2, None),
                _ => (0.8, None),
            };
            self.canvas.outline(&shape.walls, width, dashes, Part::Outline);
            self.canvas.space(shape.figure.clone());
        }
        for shape in &shapes {
            self.veneer(shape, &shapes);
        }
        self.shapes = shapes;
    }

    fn hatching(&mut self, shape: &Shape, shapes: &[Shape]) {
        let house = self.say.house;
        let here = &house.spaces[shape.space];
        let open_to = match here.kind {
            Kind::Open => Some("below"),
            Kind::Court => Some("the sky"),
            _ => None,
        };
        if let Some(open_to) = open_to {
            let strokes = diagonals(&shape.figure);
            self.canvas.hatch(shape.figure.clone(), strokes);
            return self.note(&format!("dashed diagonals: open to {open_to}"));
        }
        let is_below = house.levels[here.level].below_grade;
        if here.kind == Kind::Stair || here.counted && !is_below {
            return;
        }
        if is_below {
            self.note("below grade: not in the total");
        }
        let inside =
            shapes.iter().filter(|other| house.spaces[other.space].parent == Some(shape.space));
        let mut figures: Vec<&[Point]> = vec![&shape.figure];
        figures.extend(inside.map(|other| other.figure.as_slice()));
        let apart = if here.kind.has_walls() { 5.0 } else { 8.0 };
        let lines = hatching(&figures, true, apart);
        let mut runs = Vec::new();
        for (from, to) in lines {
            runs.extend([Run::Move(from), Run::Line(to)]);
        }
        self.canvas.hatch(shape.figure.clone(), vec![Stroke::of(runs, 0.5)]);
        self.note("hatched: not counted here");
    }

    /// Draws a thin band inside walls whose veneer is given.
    fn veneer(&mut self, shape: &Shape, shapes: &[Shape]) {
        let house = self.say.house;
        let here = &house.spaces[shape.space];
        if !here.kind.has_walls() || here.parent.is_some() {
            return;
        }
        let traverse = &self.say.areas.outside.spaces[shape.space].traverse;
        let thickness = |k: usize| -> Length {
            let side = traverse.sides[k].source.map(|source| &here.sides[source]);
            let Some(side) = side.filter(|side| !side.words.common) else { return Length::ZERO };
            match side.words.veneer.or(here.veneer).or(house.veneer) {
                Some(Thickness::Of(written)) => WrittenLength::length(written),
                _ => Length::ZERO,
            }
        };
        let others: Vec<&WallOnPage> = shapes
            .iter()
            .filter(|other| {
                other.space != shape.space && house.spaces[other.space].parent.is_none()
            })
            .flat_map(|other| &other.walls)
            .collect();
        let n = shape.walls.len();
        for (k, wall) in shape.walls.iter().enumerate() {
            let deep = self.canvas.view.points(thickness(k).nm());
            if deep < 1.1 || wall.is_curved() || others.iter().any(|other| shares(wall, other)) {
                continue;
            }
            let inward = Point::default().plus(wall.out, -1.0);
            let along = wall.from.to(wall.to).unit();
            let cut = |other: usize| {
                let turn = along.dot(shape.walls[other].out);
                let band = self.canvas.view.points(thickness(other).nm());
                // Next to a wall at a right angle, the band stops at that wall's band.
                if turn.abs() > 0.9 && !shape.walls[other].is_curved() { band } else { 0.0 }
            };
            let (before, after) = (cut((k + n - 1) % n), cut((k + 1) % n));
            let sign = |other: usize| along.dot(shape.walls[other].out).signum();
            let from = wall.from.plus(along, -before * sign((k + n - 1) % n)).plus(inward, deep);
            let to = wall.to.plus(along, -after * sign((k + 1) % n)).plus(inward, deep);
            self.canvas.line(Stroke::line(from, to, 0.6), Sort::Witness);
            self.note("thin band along a wall: its outer layer (veneer)");
        }
    }

    /// Draws the outlines of the record and plan, dashed, over ours.
    pub(super) fn theirs(&mut self, level: usize) {
        let marks = self.marks;
        for (_, theirs) in marks.theirs.iter().filter(|(on, _)| *on == level) {
            let view = self.canvas.view;
            match &theirs.outline {
                Some(outline) => {
                    let walls = view.walls(outline, theirs.at);
                    self.canvas.outline(&walls, 1.0, Some([6.0, 3.0]), Part::Dashed);
                }
                None => {
                    let spot = |p: &OnSite| view.spot((theirs.at.0 + p.0, theirs.at.1 + p.1));
                    let spots: Vec<Point> = theirs.corners.iter().map(spot).collect();
                    let stroke = Stroke::along(&spots, 1.0).dashed([6.0, 3.0]);
                    self.canvas.line(stroke.of_part(Part::Dashed), Sort::Theirs);
                }
            }
            self.note(&theirs.note());
        }
    }

    /// Draws the roofs of maps, in short dashes over the walls.
    pub(super) fn roofs(&mut self, level: usize) {
        let marks = self.marks;
        for (_, corners, note) in marks.roofs.iter().filter(|(on, ..)| *on == level) {
            let around = corners.iter().chain(corners.first());
            let spots: Vec<Point> = around.map(|&corner| self.canvas.view.spot(corner)).collect();
            let stroke = Stroke::along(&spots, 0.8).dashed([2.0, 2.0]);
            self.canvas.line(stroke.of_part(Part::Dashed), Sort::Theirs);
            self.note(note);
        }
    }

    /// Says of every part of those roofs that lies over no measured wall what it is.
    pub(super) fn roof_parts(&mut self, level: usize) {
        let marks = self.marks;
        for (_, corners) in marks.roof_parts.iter().filter(|(on, _)| *on == level) {
            let spots: Vec<Point> =
                corners.iter().map(|&corner| self.canvas.view.spot(corner)).collect();
            let block = |lines: &[&str]| Block {
                lines: lines
                    .iter()
                    .map(|line| (Typeface::Plain, 6.5, (*line).to_owned()))
                    .collect(),
            };
            let words = "only on the map";
            let choices = [block(&[words]), block(&["only on", "the map"])];
            if self.canvas.block(&spots, &[], &choices).is_some() {
                continue;
            }
            let middle = |low: f64, high: f64| f64::midpoint(low, high);
            let across = |at: fn(&Point) -> f64| {
                let all = || spots.iter().map(at);
                middle(all().fold(f64::MAX, f64::min), all().fold(f64::MIN, f64::max))
            };
            self.canvas.pointer(Point::new(across(|p| p.x_pt), across(|p| p.y_pt)), words);
        }
    }
}

/// Whether a wall lies along another for part of its length.
fn shares(a: &WallOnPage, b: &WallOnPage) -> bool {
    let along = a.from.to(a.to).unit();
    let off = |spot: Point| a.from.to(spot).cross(along).abs();
    let at = |spot: Point| a.from.to(spot).dot(along);
    let (low, high) = (at(b.from).min(at(b.to)), at(b.from).max(at(b.to)));
    off(b.from) < 4.0 && off(b.to) < 4.0 && low < a.length_pt() - 2.0 && high > 2.0
}

/// The diagonals of a figure's bounding box, clipped to the figure, dashed.
fn diagonals(figure: &[Point]) -> Vec<Stroke> {
    let low = figure.iter().fold(Point::new(f64::MAX, f64::MAX), |low, spot| {
        Point::new(low.x_pt.min(spot.x_pt), low.y_pt.min(spot.y_pt))
    });
    let high = figure.iter().fold(Point::new(f64::MIN, f64::MIN), |high, spot| {
        Point::new(high.x_pt.max(spot.x_pt), high.y_pt.max(spot.y_pt))
    });
    let ends = [(low, high), (Point::new(low.x_pt, high.y_pt), Point::new(high.x_pt, low.y_pt))];
    let inside = |(from, to): (Point, Point)| {
        const PIECES: u32 = 60;
        let spot = |k: u32| from.plus(from.to(to), f64::from(k) / f64::from(PIECES));
        let mut runs: Vec<Stroke> = Vec::new();
        let mut open: Option<Point> = None;
        for k in 0..=PIECES {
            let within =
                is_inside(figure, spot(k).plus(from.to(to), 1e-7)) || k == 0 || k == PIECES;
            match (within, open) {
                (true, None) => open = Some(spot(k)),
                (false, Some(start)) => {
                    runs.push(Stroke::line(start, spot(k - 1), 0.5).dashed([4.0, 3.0]));
                    open = None;
                }
                _ => {}
            }
        }
        if let Some(start) = open {
            runs.push(Stroke::line(start, to, 0.5).dashed([4.0, 3.0]));
        }
        runs
    };
    ends.into_iter().flat_map(inside).collect()
}
