//! Lengths taped as checks: overall past the jogs, and across from corner to corner.

use crate::diagnostic::{Diagnostic, Span, Word, quoted};
use crate::house::Side;
use crate::house::check::Checker;
use crate::house::misclosure::tick;
use crate::house::outline::Vector;
use crate::house::placing::{names_of, no_such_corner};
use crate::house::walk::{Closed, Leg};
use crate::length::Length;
use crate::sketch::statement::CornerRef;
use crate::sketch::{Axis, WalkSketch};
use crate::words;

impl Checker<'_> {
    /// Lengths taped past the jogs, against the sides between.
    pub(super) fn overalls(
        &mut self,
        name: &str,
        sketch: &WalkSketch,
        sides: &[Side],
        closed: &Closed,
    ) {
        let points = closed.outline.points();
        for &(direction, written, span) in &sketch.overalls {
            let along = |point: &(i64, i64)| {
                if direction.axis() == Axis::North { point.1 } else { point.0 }
            };
            let extent = points.iter().map(along).max().unwrap_or(0)
                - points.iter().map(along).min().unwrap_or(0);
            let legs = closed.walk.legs(direction.axis());
            let between: Vec<&Leg> =
                legs.iter().filter(|leg| leg.sign == direction.sign()).collect();
            let allowed = self.sketch.heads.tolerance().nm()
                + between.iter().map(|leg| leg.tolerance).sum::<i64>();
            let off = written.length() - Length::from_nm(extent);
            if off.abs().nm() > allowed {
                let names: Vec<String> = between.iter().map(|leg| tick(&sides[leg.side])).collect();
                self.tell(
                    Diagnostic::new(
                        Word::OverallDiffers,
                        span,
                        format!(
                            "{}: the overall length differs by {} from the sides",
                            quoted(name),
                            off.spoken()
                        ),
                    )
                    .note(format!(
                        "between its ends lie {}: together {}",
                        words::all_of(&names),
                        Length::from_nm(extent).spoken()
                    ))
                    .help("measure these sides and the overall length again"),
                );
            }
        }
    }

    /// Distances taped across, against the outline.
    pub(super) fn ties(&mut self, name: &str, sketch: &WalkSketch, closed: &Closed) {
        let points = closed.outline.points();
        let n = points.len();
        for (from, to, written, span) in &sketch.ties {
            let ends =
                (self.corner_of(sketch, from, n, *span), self.corner_of(sketch, to, n, *span));
            let (Some(from), Some(to)) = ends else {
                continue;
            };
            let (a, b) = (points[from], points[to]);
            let across = Vector { east: b.0 - a.0, north: b.1 - a.1, rise: 0 }.length();
            let apart = from.abs_diff(to).min(n - from.abs_diff(to));
            let sides_between = i64::try_from(apart).unwrap_or(0);
            let allowed = self.sketch.heads.tolerance().nm() * (1 + sides_between);
            let off = written.length() - across;
            if off.abs().nm() > allowed {
                self.tell(
                    Diagnostic::new(
                        Word::TieDiffers,
                        *span,
                        format!("{}: the distance across differs by {} from the outline", quoted(name), off.spoken()),
                    )
                    .note(format!("in the outline the two corners are {} apart; a difference means that a corner is not square, or a side between them is off", across.spoken()))
                    .help(format!("measure the sides between corner {} and corner {} again, and this distance", from + 1, to + 1)),
                );
            }
        }
    }

    /// A corner by number or name, counted from 0.
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
                let named = sketch.corners.iter().find(|corner| corner.name.text == *name);
                named.map(|corner| if corner.after < n { corner.after } else { 0 })
            }
        };
        if found.is_none() {
            let shown = match corner {
                CornerRef::Number(number) => format!("corner {number}"),
                CornerRef::Name(name) => format!("corner {}", quoted(name)),
            };
            self.tell(no_such_corner(
                span,
                &shown,
                &format!("this outline has corners 1 to {n}"),
                &names_of(sketch),
            ));
        }
        found
    }
}
