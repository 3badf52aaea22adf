//! In which order the corners of a right-angled outline lie along each axis.
//!
//! Two walls of such an outline that do not share a corner lie apart along an axis. As long as no corner
//! passes another, they stay apart: an outline whose corners keep their order is clear of itself if the
//! first one was, and has its inside on the same side. Far quicker than looking at every pair of walls.

use crate::house::outline::{Outline, Vector};

/// The corners in the order in which they lie, first along east, then along north.
#[derive(Clone, Debug)]
pub(crate) struct Order {
    axes: [Vec<Corner>; 2],
}

#[derive(Clone, Copy, Debug)]
struct Corner {
    place: usize,
    /// It lies beyond the one before it, not level with it.
    is_beyond: bool,
}

impl Order {
    /// The order of an outline that is clear of itself; none where a wall is slanted or curved.
    pub(crate) fn of(outline: &Outline) -> Option<Order> {
        let is_plain = |v: &Vector| v.rise == 0 && (v.east == 0) != (v.north == 0);
        if !outline.vectors().iter().all(is_plain) {
            return None;
        }
        let points = outline.points();
        let along = |of: fn(&(i64, i64)) -> i64| {
            let mut all: Vec<(i64, usize)> =
                points.iter().enumerate().map(|(place, point)| (of(point), place)).collect();
            all.sort_unstable();
            let mut last = None;
            let corner = |(at, place): (i64, usize)| {
                let is_beyond = last.replace(at) != Some(at);
                Corner { place, is_beyond }
            };
            all.into_iter().map(corner).collect()
        };
        Some(Order { axes: [along(|point| point.0), along(|point| point.1)] })
    }

    /// Whether the corners of a walk along these, which comes back to its start, lie in this order too.
    pub(crate) fn is_kept_by(&self, vectors: &[Vector]) -> bool {
        const FEW: usize = 32;
        let (mut few, mut many) = ([0_i64; FEW], Vec::new());
        let n = vectors.len();
        let places = if n <= FEW {
            &mut few[..n]
        } else {
            many.resize(n, 0);
            &mut many[..]
        };
        let parts: [fn(&Vector) -> i64; 2] = [|v| v.east, |v| v.north];
        self.axes.iter().zip(parts).all(|(corners, part)| {
            let mut at = 0;
            for (place, vector) in places.iter_mut().zip(vectors) {
                *place = at;
                at += part(vector);
            }
            in_order(corners, places)
        })
    }
}

fn in_order(corners: &[Corner], places: &[i64]) -> bool {
    // The furthest of those passed, and of those level with the corner at hand.
    let (mut passed, mut level) = (i64::MIN, i64::MIN);
    corners.iter().all(|corner| {
        let at = places[corner.place];
        if corner.is_beyond {
            passed = level;
        }
        level = level.max(at);
        at > passed
    })
}
