//! The dimensions and the numbers of the walls of a level.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "places on a page are in points"
)]

use crate::house::{ReferenceSource, Run};
use crate::pages::drawing::canvas::{Dimension, Mark};
use crate::pages::drawing::shapes::{Plan, Shape};
use crate::pages::drawing::side_words::side_words;
use crate::pages::drawing::view::{WallOnPage, is_inside};
use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::page::Point;
use crate::units::length::Length;

impl Plan<'_> {
    /// Places the dimension of every wall once.
    pub(super) fn walls(&mut self) {
        let mut all: Vec<(String, Dimension)> = Vec::new();
        let mut skipped: Vec<(WallOnPage, WallOnPage)> = Vec::new();
        let shapes = std::mem::take(&mut self.shapes);
        for shape in &shapes {
            let traverse = &self.say.areas.outside.spaces[shape.space].traverse;
            for (k, wall) in shape.walls.iter().enumerate() {
                let Some(source) = traverse.sides[k].source else { continue };
                let twice = |(_, other): &&(String, Dimension)| is_same(wall, &other.wall);
                if wall.length_pt() < 0.05 || all.iter().any(|other| twice(&other)) {
                    continue;
                }
                if self.is_dimensioned_across(shape, k, &shapes, &all) {
                    skipped.push((shape.walls[(k + 2) % 4], *wall));
                    continue;
                }
                let is_cut =
                    traverse.sides.iter().filter(|side| side.source == Some(source)).count() > 1;
                // Between two spaces a part of a wall is not seen, and the wall behind it has its own length.
                if is_cut && !lies_out(wall, &shapes) {
                    continue;
                }
                let name = format!("side {} of {}", source + 1, self.space(shape).name);
                let mut dimension = self.dimension(shape, k, source, wall);
                let seen = self.seen(shape, wall, &shapes).filter(|_| is_cut);
                if let Some((seen, length, beyond)) = seen {
                    let whole = std::mem::replace(&mut dimension.words, self.say.length(length));
                    dimension.wall = seen;
                    self.note(&format!(
                        "side {} of {}: {} of it stands free beyond {}; with what the wall there covers, {whole}",
                        source + 1,
                        fonts::shown(&self.space(shape).name),
                        dimension.words,
                        fonts::shown(&self.say.house.spaces[beyond].name)
                    ));
                }
                all.push((name, dimension));
            }
        }
        self.shapes = shapes;
        for (across, wall) in skipped {
            let known = all.iter_mut().find(|(_, other)| is_same(&across, &other.wall));
            if let Some((_, known)) = known {
                known.or_else.get_or_insert(wall);
            }
        }
        let names = all
            .iter()
            .map(|(name, dimension)| (dimension.wall.from, dimension.wall.to, fonts::shown(name)));
        let names: Vec<(Point, Point, String)> = names.collect();
        let rest =
            self.canvas.dimensions(all.into_iter().map(|(_, dimension)| dimension).collect());
        for dimension in rest {
            let ends = (dimension.wall.from, dimension.wall.to);
            let name = names.iter().find(|(from, to, _)| (*from, *to) == ends);
            let name = name.map(|(.., name)| name.as_str()).unwrap_or("side");
            self.left_out.push(format!("{name}: {}", dimension.words));
        }
    }

    /// The part of a wall that no other space covers, with its length, and the space that covers an end of it; `None` for a
    /// wall that is seen whole.
    fn seen(
        &self,
        shape: &Shape,
        wall: &WallOnPage,
        shapes: &[Shape],
    ) -> Option<(WallOnPage, Length, usize)> {
        const NEAR_PT: f64 = 0.01;
        let way = wall.from.to(wall.to);
        let long = wall.length_pt();
        let along = way.unit();
        let (mut first, mut last) = (0.0, long);
        let mut beyond = None;
        let is_other = |other: &&Shape| {
            other.space != shape.space && self.space(other).parent != Some(shape.space)
        };
        for other in shapes.iter().filter(is_other) {
            let space = other.space;
            let across = other.walls.iter().filter(|other| {
                other.from.to(other.to).unit().dot(along).abs() < 1e-6 && {
                    let (from, to) = (wall.from.to(other.from), wall.from.to(other.to));
                    let (from, to) = (from.dot(wall.out), to.dot(wall.out));
                    from.min(to) < -NEAR_PT && from.max(to) > -NEAR_PT
                }
            });
            for other in across {
                let at = wall.from.to(other.from).dot(along);
                // The other space lies on the inner side of its wall.
                match other.out.dot(along) < 0.0 {
                    true if at > 0.5 * long && at < last - NEAR_PT => last = at,
                    false if at < 0.5 * long && at > first + NEAR_PT => first = at,
                    _ => continue,
                }
                beyond = Some(space);
            }
        }
        let beyond = beyond?;
        let seen = WallOnPage {
            from: wall.from.plus(along, first),
            to: wall.from.plus(along, last),
            ..*wall
        };
        let feet = (last - first) / self.canvas.view.scale.pt_per_ft;
        const MILLIMETER: i64 = 1_000_000;
        let length = crate::geometry::outline::nearest_nm(feet * Length::FOOT.nm() as f64);
        Some((seen, length.rounded_to(MILLIMETER), beyond))
    }

    /// Whether a wall of a plain rectangle needs no dimension because the opposite wall has the same one. That is
    /// the case if the opposite wall is free and this one has a neighbor, or if the space is not a main one and the
    /// opposite wall already has its dimension.
    fn is_dimensioned_across(
        &self,
        shape: &Shape,
        k: usize,
        shapes: &[Shape],
        all: &[(String, Dimension)],
    ) -> bool {
        let here = self.space(shape);
        let across = shape.walls.get((k + 2) % 4);
        let Some(across) = across.filter(|_| shape.walls.len() == 4) else { return false };
        let wall = &shape.walls[k];
        let (way, back) = (wall.from.to(wall.to).unit(), across.from.to(across.to).unit());
        let is_alike =
            (wall.length_pt() - across.length_pt()).abs() < 0.02 && way.cross(back).abs() < 1e-6;
        let is_marked = self.marks.recorded.iter().any(|other| other.space == shape.space);
        if !is_alike || is_marked {
            return false;
        }
        let lies_out = |wall: &WallOnPage| lies_out(wall, shapes);
        let is_main = here.counted && here.parent.is_none();
        let is_dimensioned = !is_main && all.iter().any(|(_, other)| is_same(across, &other.wall));
        is_dimensioned || lies_out(across) && !lies_out(wall)
    }

    /// Keeps the middle of every wall clear that will be marked as differing from the record, or as one to ask about.
    pub(super) fn keep_clear_of_marks(&mut self) {
        let shapes = std::mem::take(&mut self.shapes);
        for shape in &shapes {
            let sides = &self.say.areas.outside.spaces[shape.space].traverse.sides;
            for (wall, side) in shape.walls.iter().zip(sides) {
                let is_marked = side.source.is_some_and(|side| {
                    let recorded = self.marks.recorded(shape.space, side);
                    recorded.is_some_and(|recorded| recorded.differs)
                        || self.marks.misread.contains(&(shape.space, side))
                });
                if is_marked {
                    self.canvas.keep_clear_of_a_mark(wall);
                }
            }
        }
        self.shapes = shapes;
    }

    /// Places the numbers of sides at their walls. Spaces that are not counted or inside others get none unless a sentence names one of their
    /// walls, because their numbers could be taken for those of the outer space. The number of a wall that is named is
    /// never left out: without room at the wall, it stands at the end of a line.
    pub(super) fn numbers(&mut self, which: Numbered) {
        let shapes = std::mem::take(&mut self.shapes);
        let house = self.say.house;
        let mut is_numbered = false;
        // The walls of what is not counted go into no area: they have a number where a sentence is about the space.
        let marks = self.marks;
        let level = shapes.first().map(|shape| house.spaces[shape.space].level);
        let is_alone =
            !house.spaces.iter().any(|space| space.counted && Some(space.level) == level);
        let is_told_of = |shape: &Shape| {
            let here = &house.spaces[shape.space];
            let is_marked = [&marks.counted, &marks.would_count, &marks.near]
                .iter()
                .any(|spaces| spaces.contains(&shape.space));
            let has_own = here.sides.iter().any(|side| side.recorded().is_some());
            here.parent.is_none()
                && (here.counted || here.kind.has_walls() && (is_marked || has_own || is_alone))
        };
        for shape in &shapes {
            let others = shapes.iter().filter(|other| {
                other.space != shape.space && house.spaces[other.space].parent.is_none()
            });
            let inner =
                shapes.iter().filter(|other| house.spaces[other.space].parent == Some(shape.space));
            let inner: Vec<&[Point]> = inner.map(|other| other.figure.as_slice()).collect();
            let mut others: Vec<&[Point]> = others.map(|other| other.figure.as_slice()).collect();
            others.push(&shape.figure);
            let traverse = &self.say.areas.outside.spaces[shape.space].traverse;
            for number in 0..house.spaces[shape.space].sides.len() {
                let is_named = self.marks.named.contains(&(shape.space, number));
                let is_wanted = match which {
                    Numbered::Named => is_named,
                    Numbered::Others => !is_named && is_told_of(shape),
                };
                if !is_wanted {
                    continue;
                }
                let pieces = shape.walls.iter().zip(&traverse.sides);
                let of_side = pieces.filter(|(_, side)| side.source == Some(number));
                let longest =
                    of_side.max_by(|(a, _), (b, _)| a.length_pt().total_cmp(&b.length_pt()));
                let Some((wall, _)) = longest else { continue };
                let is_placed =
                    self.canvas.number(wall, &shape.figure, &others, &inner, number + 1)
                        || is_named
                            && (self.canvas.number_led(wall, number + 1)
                                || self.canvas.pointer(wall.middle(), &(number + 1).to_string()));
                is_numbered |= is_placed;
                if is_named && !is_placed {
                    let name = fonts::shown(&house.spaces[shape.space].name);
                    self.left_out.push(format!("the number of side {} of {name}", number + 1));
                }
            }
        }
        self.shapes = shapes;
        if is_numbered {
            self.note("small number at a wall: the number of that side in the Calculations");
        }
    }

    fn dimension(
        &mut self,
        shape: &Shape,
        k: usize,
        source: usize,
        wall: &WallOnPage,
    ) -> Dimension {
        let vector = self.say.areas.spaces[shape.space].outside().vectors()[k];
        let mut words = side_words(self.say, shape.space, source, vector);
        match &self.space(shape).sides[source].run {
            Run::ByClosing(_) | Run::Close => {
                self.note("by closing: this length follows from the other walls");
            }
            Run::Arc(..) => self.note(
                "chord and rise of a curved wall: from end to end, and how far it stands out from that line",
            ),
            Run::Diagonal(..) => {
                self.note("one length by another: how far a slanted wall goes in each direction");
            }
            _ => {}
        }
        let recorded = self.marks.recorded(shape.space, source);
        if let Some(recorded) = recorded {
            words = format!("{words} [{}]", self.say.length(recorded.length));
            let has_plan =
                self.say.house.drawn.iter().any(|drawn| drawn.drawn == ReferenceSource::Plan);
            let whose = if has_plan { "the record or the plan" } else { "the record" };
            self.note(&format!("in brackets [ ]: the length on {whose}, where it is not the one used here to the foot"));
            if let Some(used) = recorded.used {
                self.note(&format!(
                    "side {} of {}: {} is used here to the foot, so that the rounded walls meet",
                    source + 1,
                    fonts::shown(&self.space(shape).name),
                    self.say.length(used)
                ));
            }
        }
        let differs = recorded.is_some_and(|recorded| recorded.differs);
        let misread = self.marks.misread.contains(&(shape.space, source));
        if differs {
            self.note(
                "● and bold: this wall differs from the record by more than rounding explains",
            );
        }
        if misread && !differs {
            self.note("open circle: another length of this wall could explain the figure");
        }
        let hand = if differs { Typeface::Bold } else { Typeface::Plain };
        let mark = match (differs, misread) {
            (true, _) => Some(Mark::Differs),
            (_, true) => Some(Mark::Ask),
            _ => None,
        };
        Dimension { wall: *wall, or_else: None, words, hand, mark }
    }
}

/// Which numbers of walls are placed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Numbered {
    /// Those that a sentence names.
    Named,
    /// All others.
    Others,
}

/// Whether no space lies before a wall.
fn lies_out(wall: &WallOnPage, shapes: &[Shape]) -> bool {
    let spot = wall.middle().plus(wall.out, 6.0);
    !shapes.iter().any(|other| is_inside(&other.figure, spot))
}

/// Whether two walls coincide, in either direction.
fn is_same(a: &WallOnPage, b: &WallOnPage) -> bool {
    const NEAR_PT: f64 = 0.4;
    // Most walls are far apart, which a comparison without a square root shows.
    let near = |one: Point, other: Point| {
        let way = one.to(other);
        way.x_pt.abs() < NEAR_PT && way.y_pt.abs() < NEAR_PT && way.length() < NEAR_PT
    };
    near(a.from, b.from) && near(a.to, b.to) || near(a.from, b.to) && near(a.to, b.from)
}
