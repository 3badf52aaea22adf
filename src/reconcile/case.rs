//! The inputs of the search for causes: a house and one figure.

use std::cell::OnceCell;

use strum::EnumCount;

use crate::areas::at_face::{Ruled, Walls};
use crate::areas::ranges::AreaRanges;
use crate::areas::rule::{Rule, Settings};
use crate::geometry::traverse::Shape;
use crate::house::{Face, Thickness};
use crate::reconcile::counting::counted_by;
use crate::reconcile::departures::Listed;
use crate::reconcile::grid::Axes;
use crate::reconcile::recorded::Recorded;
use crate::reconcile::rounding::RoundingTest;
use crate::reconcile::total;
use crate::units::area::{Area, WrittenArea};
use crate::units::length::Length;

/// A house, and a figure to be explained.
pub(crate) struct Case<'a> {
    pub(crate) listed: Listed<'a>,
    pub(crate) figure: Area,
    /// The figure as it was written.
    pub(crate) written: WrittenArea,
    /// The house measured the figure's own way, and whether the figure agrees with that.
    pub(crate) like: Area,
    pub(crate) agrees: bool,
    /// Whether the figure was written in a metric unit, so that nobody rounded its walls to feet.
    pub(crate) is_metric: bool,
    /// Whether rounding could give the figure.
    pub(crate) test: &'a RoundingTest,
    /// The face the figure is assumed to be measured to, and the rule its sides are rounded by.
    pub(crate) face: Face,
    pub(crate) rule: Rule,
    /// The walls at that face: unrounded, rounded by that rule, and rounded by the finer rule.
    pub(crate) walls: &'a Walls,
    pub(crate) ruled: &'a Ruled,
    pub(crate) fine: &'a Ruled,
    /// The figure's own sides, where the file gives them.
    pub(crate) recorded: Option<&'a Recorded>,
    /// How far rounding could change the areas, on whole steps.
    pub(crate) ranges: &'a AreaRanges,
    pub(crate) settings: &'a Settings,
    pub(super) shared: &'a Shared,
}

/// What is worked out once for all figures of a house, when it is first needed.
#[derive(Default)]
pub(crate) struct Shared {
    /// The likely closings of the axes.
    pub(super) axes: Axes,
    /// The walls at each face; `None` where they cannot be moved there.
    at_faces: [OnceCell<Option<Walls>>; Face::COUNT],
}

impl<'a> Case<'a> {
    /// The total above grade with these areas (one per space), including what the figure says it counts.
    pub(super) fn total(&self, areas: &[Area]) -> Area {
        let counting = self.listed.counting;
        let base = total(self.listed.house, areas);
        if counting.is_empty() {
            base
        } else {
            base + counted_by(self.listed.house, counting, areas)
        }
    }

    /// Whether any wall is exactly halfway between two whole feet.
    pub(super) fn has_halves(&self) -> bool {
        let half = |shape: &Shape| match *shape {
            Shape::Straight { length, .. } | Shape::Bearing { length, .. } => is_half_way(length),
            Shape::Diagonal { north, east, .. } => {
                is_half_way(north.abs()) || is_half_way(east.abs())
            }
            Shape::Arc { chord, rise, .. } => is_half_way(chord) || is_half_way(rise.abs()),
        };
        self.walls.spaces.iter().any(|at| at.traverse.sides.iter().any(|side| half(&side.shape)))
    }

    /// The walls at another face; `None` where they cannot be moved there.
    pub(super) fn walls_at(&self, face: Face) -> Option<&'a Walls> {
        let walls = || Walls::of(self.listed.house, face).ok();
        self.shared.at_faces[face as usize].get_or_init(walls).as_ref()
    }

    /// Whether the file says of every wall that it has no veneer.
    fn has_no_veneer(&self) -> bool {
        let house = self.listed.house;
        let mut walled = house.spaces.iter().filter(|space| space.kind.has_walls());
        walled.all(|space| {
            let mut sides = space.sides.iter().map(|side| side.words.veneer);
            sides.all(|veneer| veneer.or(space.veneer).or(house.veneer) == Some(Thickness::None))
        })
    }

    /// Whether the figure is close enough to this house measured at another face that computing that face is
    /// worthwhile: walls move by little more than a foot, and rounding moves them by less.
    #[expect(clippy::float_arithmetic, reason = "a rough bound")]
    pub(super) fn could_be_at(&self, face: Face) -> bool {
        const MOST_FEET: f64 = 1.3;
        const OTHER_WAY_FEET: f64 = 0.25;
        // Without a veneer the frame is the outside.
        let pair = [self.face, face];
        if pair.contains(&Face::Frame) && pair.contains(&Face::Outside) && self.has_no_veneer() {
            return false;
        }
        let run: f64 = self.walls.spaces.iter().map(|at| at.outline.perimeter().feet()).sum();
        let apart = self.figure.sq_ft() - self.total(&self.ruled.areas).sq_ft();
        let grows = match (self.face, face) {
            (Face::Inside, _) | (Face::Frame, Face::Outside) => apart,
            _ => -apart,
        };
        -OTHER_WAY_FEET * run <= grows && grows <= MOST_FEET * run
    }
}

/// Whether a length is exactly halfway between two whole feet.
pub(super) fn is_half_way(nm: i64) -> bool {
    2 * nm.rem_euclid(Length::FOOT.nm()) == Length::FOOT.nm()
}
