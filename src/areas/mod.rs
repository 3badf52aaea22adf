//! The area of each space under each rule, and the totals of what is counted, what is deducted, and what is below
//! grade.
//!
//! Areas are exact until they are printed.

pub(crate) mod at_face;
pub(crate) mod closings;
mod other_totals;
pub(crate) mod range;
pub(crate) mod ranges;
pub(crate) mod rule;
pub(crate) mod sides;
pub(crate) mod uncertainty;

pub use other_totals::EquallyNear;
pub use range::Range;
pub use rule::{Rule, Settings};
pub use sides::SideRow;

use std::sync::Arc;

use crate::areas::at_face::{Ruled, Walls};
use crate::areas::ranges::AreaRanges;
use crate::diagnostic::{Diagnostic, Diagnostics, Word, quoted};
use crate::geometry::outline::Outline;
use crate::house::Face;
use crate::house::House;
use crate::house::wall_moves::Assumed;
use crate::units::area::Area;
use crate::units::length::{Length, Step};

/// The areas of a house as measured and under both rules.
#[derive(Clone, Debug)]
pub struct Areas {
    house: House,
    settings: Settings,
    pub(crate) spaces: Vec<SpaceAreas>,
    pub(crate) outside: Arc<Walls>,
    /// Every outline and area at the outside face under the finer rule.
    pub(crate) fine: Arc<Ruled>,
    pub(crate) whole: Arc<Ruled>,
    pub(crate) ranges: Arc<AreaRanges>,
    gross: Total,
    below_grade: Option<Total>,
    pub(crate) warnings: Vec<Diagnostic>,
    is_computed: bool,
}

/// The areas of one space. Unless stated otherwise they are those of its whole outline, with nothing deducted.
#[derive(Clone, Debug)]
pub struct SpaceAreas {
    /// At the face that was measured, closed, with no side rounded.
    pub(crate) as_measured: Area,
    /// Its index in the house's spaces.
    place: usize,
    fine: Arc<Ruled>,
    whole: Arc<Ruled>,
    pub(crate) ranges: Arc<AreaRanges>,
    /// What remains under the finer rule after deducting the spaces inside it that are not part of it.
    pub(crate) net_tenth_foot: Area,
    pub(crate) net_whole_foot: Area,
}

impl SpaceAreas {
    /// Its outline at the outside face, closed, with no side rounded.
    #[must_use]
    pub fn outside(&self) -> &Outline {
        &self.ranges.walls().spaces[self.place].outline
    }

    /// Its outline at the outside face, each wall rounded by the finer rule: to a tenth of a foot, or to the inch if
    /// [`Settings::fine`] says so.
    #[must_use]
    pub fn tenth_foot(&self) -> &Outline {
        &self.fine.outlines[self.place].outline
    }

    /// Its outline at the outside face, each wall rounded to the whole foot.
    #[must_use]
    pub fn whole_foot(&self) -> &Outline {
        &self.whole.outlines[self.place].outline
    }

    /// Its area at the face that was measured, with no side rounded; exact.
    #[must_use]
    pub fn as_measured(&self) -> Area {
        self.as_measured
    }

    /// The range of its area possible under whole-foot rounding, with as few walls as possible rounded against the
    /// rule; `None` where it cannot be computed.
    #[must_use]
    pub fn range(&self) -> Option<Range> {
        self.ranges.usual_of(self.place)
    }

    /// The range of its area possible under whole-foot rounding if any wall may be rounded up or down; `None` where
    /// it cannot be computed.
    #[must_use]
    pub fn widest(&self) -> Option<Range> {
        self.ranges.widest_of(self.place)
    }

    /// The areas in its range, if they are two or three with nothing between them; else none.
    pub(crate) fn few(&self) -> Vec<Area> {
        self.ranges.few_of_space(self.place)
    }

    /// Its area after deductions, each wall rounded by the finer rule: to a tenth of a foot, or to the inch if
    /// [`Settings::fine`] says so.
    #[must_use]
    pub fn net_tenth_foot(&self) -> Area {
        self.net_tenth_foot
    }

    /// Its area after deductions, each wall rounded to the whole foot.
    #[must_use]
    pub fn net_whole_foot(&self) -> Area {
        self.net_whole_foot
    }
}

/// The total area of the counted spaces, either above or below grade.
#[derive(Clone, Debug)]
pub struct Total {
    tenth_foot: Area,
    whole_foot: Area,
    as_measured: Area,
    outside: Area,
    ranges: Arc<AreaRanges>,
    /// Whether it is the total below grade.
    below: bool,
    holds_assumptions: bool,
    holds_stated_thickness: bool,
}

impl Total {
    /// The total at the outside face, each wall rounded by the finer rule: to a tenth of a foot, or to the inch if
    /// [`Settings::fine`] says so. Exact.
    #[must_use]
    pub fn tenth_foot(&self) -> Area {
        self.tenth_foot
    }

    /// The total at the outside face, each wall rounded to the whole foot. Exact.
    #[must_use]
    pub fn whole_foot(&self) -> Area {
        self.whole_foot
    }

    /// The total with no side rounded and each space at the face that was measured. Exact.
    #[must_use]
    pub fn as_measured(&self) -> Area {
        self.as_measured
    }

    /// The total at the outside face with no side rounded. Exact; [`Total::plus_minus_outside`] is its uncertainty.
    #[must_use]
    pub fn outside(&self) -> Area {
        self.outside
    }

    /// The range of totals possible under whole-foot rounding, with as few walls as possible rounded against the
    /// rule; `None` where it cannot be computed.
    #[must_use]
    pub fn range(&self) -> Option<Range> {
        self.ranges.usual(self.below)
    }

    /// The range of totals possible under whole-foot rounding if any wall may be rounded up or down; `None` where it
    /// cannot be computed.
    #[must_use]
    pub fn widest(&self) -> Option<Range> {
        self.ranges.widest(self.below)
    }

    /// The totals in the range, if they are two or three with nothing between them; else none.
    pub(crate) fn few(&self) -> Vec<Area> {
        self.ranges.few_totals(self.below)
    }

    /// Whether the total depends on an assumed thickness.
    pub(crate) fn holds_assumptions(&self) -> bool {
        self.holds_assumptions
    }

    /// Whether the total depends on a thickness stated in the file.
    pub(crate) fn holds_stated_thickness(&self) -> bool {
        self.holds_stated_thickness
    }

    /// The uncertainty of [`Total::as_measured`] in square feet, plus or minus, at about 95%.
    #[must_use]
    pub fn plus_minus(&self) -> f64 {
        self.ranges.spread(self.below).measured.plus_minus()
    }

    /// The uncertainty of [`Total::outside`] in square feet, plus or minus, at about 95%, including stated and
    /// assumed thicknesses.
    #[must_use]
    pub fn plus_minus_outside(&self) -> f64 {
        self.ranges.spread(self.below).outside.plus_minus()
    }

    /// The largest possible error of [`Total::as_measured`] in square feet, plus or minus, if every wall were off in
    /// the same direction.
    #[must_use]
    pub fn worst_case(&self) -> f64 {
        self.ranges.spread(self.below).measured.worst
    }

    /// The largest possible error of [`Total::outside`] in square feet, plus or minus, if every wall and thickness
    /// were off in the same direction.
    #[must_use]
    pub fn worst_case_outside(&self) -> f64 {
        self.ranges.spread(self.below).outside.worst
    }
}

impl House {
    /// Computes every area of the house.
    ///
    /// # Errors
    ///
    /// [`SideVanishes`](crate::diagnostic::Word::SideVanishes) or
    /// [`SidesCross`](crate::diagnostic::Word::SidesCross) where the walls are too close together to be moved to
    /// the outside face.
    pub fn areas(&self, settings: &Settings) -> Result<Areas, Diagnostics> {
        Areas::of(self, settings)
    }
}

impl Areas {
    fn of(house: &House, settings: &Settings) -> Result<Areas, Diagnostics> {
        let outside = Arc::new(Walls::of(house, Face::Outside)?);
        let fine = Arc::new(outside.ruled(settings.tenth_foot(), settings.reading));
        let whole = Arc::new(outside.ruled(settings.whole_foot(), settings.reading));
        let ranges = Arc::new(AreaRanges::new(
            house.clone(),
            Arc::clone(&outside),
            Step::WholeFoot,
            settings.reading,
        ));
        let as_measured = |i: usize| house.spaces[i].closed.outline.area();
        let at_outside = |i: usize| outside.spaces[i].outline.area();
        let total = |below: bool| {
            let counted = || (0..house.spaces.len()).filter(move |&i| is_in_total(house, i, below));
            Total {
                tenth_foot: counted().map(|i| net(house, i, &fine.areas)).sum(),
                whole_foot: counted().map(|i| net(house, i, &whole.areas)).sum(),
                as_measured: counted().map(|i| net_of(house, i, as_measured)).sum(),
                outside: counted().map(|i| net_of(house, i, at_outside)).sum(),
                ranges: Arc::clone(&ranges),
                below,
                holds_assumptions: counted().any(|i| outside.spaces[i].needed.holds(true)),
                holds_stated_thickness: counted().any(|i| outside.spaces[i].needed.holds(false)),
            }
        };
        let has_below = (0..house.spaces.len()).any(|i| is_in_total(house, i, true));
        let (gross, below_grade) = (total(false), has_below.then(|| total(true)));
        let warnings = warnings(house, &outside, &whole, &gross);
        let one = |i: usize| SpaceAreas {
            as_measured: as_measured(i),
            place: i,
            fine: Arc::clone(&fine),
            whole: Arc::clone(&whole),
            ranges: Arc::clone(&ranges),
            net_tenth_foot: net(house, i, &fine.areas),
            net_whole_foot: net(house, i, &whole.areas),
        };
        let spaces = (0..house.spaces.len()).map(one).collect();
        let in_gross = |i: usize| {
            let parent = house.spaces[i].parent.filter(|_| house.is_deducted(i));
            is_in_total(house, i, false)
                || parent.is_some_and(|parent| is_in_total(house, parent, false))
        };
        let is_computed = (0..house.spaces.len()).filter(|&i| in_gross(i)).any(|i| {
            let space = &house.spaces[i];
            space.closed.is_computed() || space.face != Face::Outside && space.closed.is_slanted()
        });
        Ok(Areas {
            house: house.clone(),
            settings: *settings,
            spaces,
            outside,
            fine,
            whole,
            ranges,
            gross,
            below_grade,
            warnings,
            is_computed,
        })
    }

    /// The unrounded length of a side at the outside face; `None` if it is slanted or in several pieces.
    pub(crate) fn outside_length(&self, space: usize, side: usize) -> Option<Length> {
        let traverse = &self.outside.spaces[space].traverse;
        let mut pieces = traverse.sides.iter().filter(|piece| piece.source == Some(side));
        let only = pieces.next().filter(|_| pieces.next().is_none())?;
        let vector = only.shape.vector();
        (vector.east == 0 || vector.north == 0).then(|| vector.chord_length())
    }

    /// The house.
    #[must_use]
    pub fn house(&self) -> &House {
        &self.house
    }

    /// The settings the areas were computed with.
    #[must_use]
    pub fn settings(&self) -> &Settings {
        &self.settings
    }

    /// Whether part of the total above grade was computed in floats, because of a curved or slanted wall.
    pub(crate) fn is_computed(&self) -> bool {
        self.is_computed
    }

    /// The areas of each space, in the same order as the house's spaces.
    #[must_use]
    pub fn spaces(&self) -> &[SpaceAreas] {
        &self.spaces
    }

    /// The gross area above grade, measured outside.
    #[must_use]
    pub fn gross(&self) -> &Total {
        &self.gross
    }

    /// The total of what is counted on levels wholly or partly below grade; `None` if nothing is.
    #[must_use]
    pub fn below_grade(&self) -> Option<&Total> {
        self.below_grade.as_ref()
    }

    /// Warnings that came up while the areas were computed.
    #[must_use]
    pub fn warnings(&self) -> &[Diagnostic] {
        &self.warnings
    }

    /// Which thicknesses were assumed to move the walls to the outside face.
    pub(crate) fn assumed(&self) -> Assumed {
        self.outside.assumed()
    }
}

fn warnings(house: &House, outside: &Walls, whole: &Ruled, gross: &Total) -> Vec<Diagnostic> {
    let mut warnings = outside.assumption_warnings(house);
    for (space, rounded) in house.spaces.iter().zip(&whole.outlines) {
        if rounded.crosses {
            let message = format!(
                "{}: with whole-foot walls the outline crosses or touches itself",
                quoted(&space.name)
            );
            warnings.push(Diagnostic::new(Word::RoundedSidesCross, space.span, message).note(
                "two of its walls are so near each other that whole feet cannot keep them apart",
            ));
        }
    }
    let counts = (0..house.spaces.len()).any(|i| is_in_total(house, i, false));
    if !counts && !house.spaces.is_empty() && gross.tenth_foot == Area::ZERO {
        let span = house.spaces.first().map(|space| space.span).unwrap_or_default();
        let below = (0..house.spaces.len()).any(|i| is_in_total(house, i, true));
        if below {
            let message =
                "no space above grade is counted; living area below grade is totalled apart";
            warnings.push(Diagnostic::new(Word::NothingCounted, span, message));
            return warnings;
        }
        warnings.push(
            Diagnostic::new(Word::NothingCounted, span, "no space of this file is counted")
                .help("living space is `living \"House\"`; `counted` after another space counts it on your own word"),
        );
    }
    warnings
}

/// Whether a space is counted in the total above grade, or in the one below if `below`.
pub(crate) fn is_in_total(house: &House, space: usize, below: bool) -> bool {
    house.spaces[space].counted && house.is_below_grade(space) == below
}

/// The area of a space after its deductions; `areas` has one area per space.
pub(crate) fn net(house: &House, space: usize, areas: &[Area]) -> Area {
    net_of(house, space, |space| areas[space])
}

/// The same, with the area of each space from a function.
#[inline]
pub(crate) fn net_of(house: &House, space: usize, area: impl Fn(usize) -> Area) -> Area {
    area(space) - house.deducted_from(space).map(area).sum::<Area>()
}
