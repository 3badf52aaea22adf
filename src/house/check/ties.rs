//! Lengths that were taped as checks: overall lengths past the jogs, and distances from corner to corner.

use crate::diagnostic::words;
use crate::diagnostic::{Diagnostic, Span, Word, quoted};
use crate::geometry::compass::Axis;
use crate::geometry::outline::Vector;
use crate::geometry::traverse::Closed;
use crate::house::check::Checker;
use crate::house::check::placement::{names_of, no_such_corner};
use crate::house::{Checked, Side, TapedCheck};
use crate::sketch::WalkSketch;
use crate::sketch::statement::CornerRef;
use crate::units::length::Length;

impl Checker<'_> {
    /// Compares overall lengths with the sides they span; returns each with what the outline has.
    pub(super) fn overalls(
        &mut self,
        name: &str,
        sketch: &WalkSketch,
        sides: &[Side],
        closed: &Closed,
    ) -> Vec<TapedCheck> {
        if sketch.overalls.is_empty() {
            return Vec::new();
        }
        let points = closed.outline.points();
        let mut checks = Vec::new();
        for &(direction, written, span) in &sketch.overalls {
            let along = |i: &usize| {
                let point = points[*i];
                let part = if direction.axis() == Axis::North { point.1 } else { point.0 };
                direction.sign() * part
            };
            let corners = 0..points.len();
            let (low, high) = (corners.clone().min_by_key(along), corners.max_by_key(along));
            let (Some(low), Some(high)) = (low, high) else { continue };
            let extent = Length::from_nm(along(&high) - along(&low));
            let of = Checked::Overall(direction.axis());
            checks.push(TapedCheck { of, taped: written, walls: extent });
            let across = |i: &usize| {
                let vector = closed.traverse.sides[*i].shape.vector();
                if direction.axis() == Axis::North { vector.north != 0 } else { vector.east != 0 }
            };
            let mut between = shorter_way(low, high, points.len());
            between.retain(across);
            let allowed = self.allowed(closed, &between);
            let off = written.length() - extent;
            if off.abs().nm() > allowed {
                let names: Vec<String> = between.iter().map(|&i| sides[i].quoted()).collect();
                let message = format!(
                    "{}: the overall length differs by {} from the sides",
                    quoted(name),
                    self.spoken(off)
                );
                self.report(
                    Diagnostic::new(Word::OverallDiffers, span, message)
                        .note(format!(
                            "from end to end the outline has {}; between lie {}",
                            self.spoken(extent),
                            words::all_of(&names)
                        ))
                        .help("measure these sides and the overall length again"),
                );
            }
        }
        checks
    }

    /// How far, in nanometers, a check may differ: its own tolerance plus those of the sides between its ends.
    fn allowed(&self, closed: &Closed, between: &[usize]) -> i64 {
        // A side by closing is as uncertain as all measured sides of its axis together.
        let tolerance = |&i: &usize| {
            let side = &closed.traverse.sides[i];
            let axis = if side.shape.vector().north != 0 { Axis::North } else { Axis::East };
            if side.follows { closed.traverse.allowance(axis) } else { side.tolerance }
        };
        self.sketch.heads.tolerance().nm() + between.iter().map(tolerance).sum::<i64>()
    }

    /// Compares taped distances from corner to corner with the outline; returns each with what the outline has.
    pub(super) fn ties(
        &mut self,
        name: &str,
        sketch: &WalkSketch,
        closed: &Closed,
    ) -> Vec<TapedCheck> {
        if sketch.ties.is_empty() {
            return Vec::new();
        }
        let points = closed.outline.points();
        let mut checks = Vec::new();
        let n = points.len();
        for (from, to, written, span) in &sketch.ties {
            let ends =
                (self.corner_of(sketch, from, n, *span), self.corner_of(sketch, to, n, *span));
            let (Some(from), Some(to)) = ends else {
                continue;
            };
            let (a, b) = (points[from], points[to]);
            let across = Vector { east: b.0 - a.0, north: b.1 - a.1, rise: 0 }.length();
            let of = Checked::Corners(from + 1, to + 1);
            checks.push(TapedCheck { of, taped: *written, walls: across });
            let allowed = self.allowed(closed, &shorter_way(from, to, n));
            let off = written.length() - across;
            if off.abs().nm() > allowed {
                self.report(
                    Diagnostic::new(
                        Word::TieDiffers,
                        *span,
                        format!("{}: the distance across differs by {} from the outline", quoted(name), self.spoken(off)),
                    )
                    .note(format!("in the outline the two corners are {} apart; a difference means that a corner is not square, or a side between them is off", self.spoken(across)))
                    .help(format!("measure the sides between corner {} and corner {} again, and this distance", from + 1, to + 1)),
                );
            }
        }
        checks
    }

    /// The index of a corner given by number or name, from 0; `None` after reporting an error.
    pub(super) fn corner_of(
        &mut self,
        sketch: &WalkSketch,
        corner: &CornerRef,
        n: usize,
        span: Span,
    ) -> Option<usize> {
        let found = match corner {
            CornerRef::Number(number) => (1..=n).contains(number).then(|| number - 1),
            CornerRef::Name(name) => {
                let mut named = sketch.corners.iter().filter(|corner| corner.name.text == *name);
                let first = named.next();
                if let (Some(first), Some(second)) = (first, named.next()) {
                    self.report(
                        Diagnostic::new(
                            Word::NameTwice,
                            second.name.span,
                            format!("two corners of this walk are called {}", quoted(name)),
                        )
                        .also(first.name.span, "the other one")
                        .help("give each a name of its own, since another line refers to it"),
                    );
                }
                first.map(|corner| if corner.after < n { corner.after } else { 0 })
            }
        };
        if found.is_none() {
            let shown = match corner {
                CornerRef::Number(number) => format!("corner {number}"),
                CornerRef::Name(name) => format!("corner {}", quoted(name)),
            };
            self.report(no_such_corner(
                span,
                &shown,
                &format!("this outline has corners 1 to {n}"),
                &names_of(sketch),
            ));
        }
        found
    }
}

/// The sides between two corners, in whichever direction has fewer.
fn shorter_way(from: usize, to: usize, n: usize) -> Vec<usize> {
    let forward = (to + n - from) % n;
    let way = |start: usize, count: usize| (0..count).map(|k| (start + k) % n).collect();
    if forward <= n - forward { way(from, forward) } else { way(to, n - forward) }
}
