//! One weighed cause of a gap: the figure it would give, how well it is supported, and how strong it is.
#![expect(clippy::float_arithmetic, reason = "supports and intervals are floats")]

use std::sync::OnceLock;

use crate::house::House;
use crate::reconcile::cause::{Cause, CauseClass, MisreadWall};
use crate::reconcile::departures::DepartureKind;
use crate::reconcile::settings::RoundingTaken;
use crate::reconcile::sums::{Sum, SummedBy};
use crate::units::area::Area;

/// One cause, with its weight summed over all ways of rounding, which a reader cannot distinguish.
#[derive(Clone, Debug)]
pub struct Explanation {
    pub(crate) cause: Cause,
    pub(super) labels: Labels,
    /// The way of rounding under which it is best supported; `None` for the figure's own way.
    pub(crate) rounding: Option<RoundingTaken>,
    /// The figure that it would give under that rounding, in square feet.
    pub(crate) sq_ft: f64,
    /// The published figure minus that, in square feet.
    pub(crate) leaves: f64,
    pub(crate) sigma: f64,
    /// The lowest and the highest figure that it can give, in square feet: what decides whether it fits.
    pub(crate) band: FigureRange,
    /// What it can give by the possible ranges that are printed beside the areas, where it is reported; a single figure
    /// where no such range is printed.
    pub(crate) printed: FigureRange,
    pub(crate) support: f64,
    /// What the cause adds at the figure's own face, under the rounding that supports it best.
    pub(crate) effect: Area,
    /// The area of the house under that rounding, without what the figure says it counts; `None` if it is the figure's own or the cause itself is a way of
    /// rounding.
    pub(crate) ruled: Option<Area>,
    /// What the figure says it counts, under that rounding.
    pub(crate) counting: Area,
    /// The sum that it gives without regard to rounding, if that is near the figure; `sq_ft` is then its total.
    pub(crate) sum: Option<Sum>,
    /// How strong it is; `None` if it is not reported.
    pub(crate) strength: Option<Strength>,
}

/// The labels of a cause in JSON, made when first asked for; empty without a departure.
#[derive(Clone, Debug)]
pub(super) struct Labels {
    house: House,
    words: OnceLock<Vec<String>>,
}

impl Labels {
    pub(super) fn of(house: &House) -> Labels {
        Labels { house: house.clone(), words: OnceLock::new() }
    }
}

/// The figures that a cause can give, in square feet: a single one, or a range if it depends on how walls are
/// rounded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct FigureRange {
    pub(crate) low: f64,
    pub(crate) high: f64,
}

impl FigureRange {
    /// The range from `either_way` below `middle` to `either_way` above it.
    pub(super) fn about(middle: f64, either_way: f64) -> FigureRange {
        FigureRange { low: middle - either_way, high: middle + either_way }
    }

    /// Whether there is more than one figure in it, as printed, and this one among them.
    pub(crate) fn leaves_open(self, figure: Area) -> bool {
        let whole = |sq_ft: f64| Area::from_float_sq_ft(sq_ft).whole_sq_ft();
        let (low, high) = (whole(self.low), whole(self.high));
        low < high && (low..=high).contains(&figure.whole_sq_ft())
    }

    /// The part that both ranges share; if they share none, the end of `self` that is nearest to the other.
    pub(super) fn within(self, limits: FigureRange) -> FigureRange {
        let clamped = |sq_ft: f64| sq_ft.max(limits.low).min(limits.high);
        FigureRange { low: clamped(self.low), high: clamped(self.high) }
    }
}

/// How strong a reported cause is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Strength {
    /// The only common cause that fits.
    Only,
    /// Far likelier than any other, although ordinary rounding leaves room for another.
    ByFar,
    /// The likeliest of this many distinct causes that fit.
    LikeliestOf(usize),
    /// Of this many distinct causes that fit, the one that gives the very figure, although another is likelier.
    NearestOf(usize),
    /// A cause that fits as well as the likeliest.
    AlsoFits,
    /// A cause that leaves more than is usual for what it gives.
    ComesNear,
}

impl Strength {
    /// Its word in JSON.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Strength::Only => "only",
            Strength::ByFar | Strength::LikeliestOf(_) => "likeliest",
            Strength::NearestOf(_) => "nearest",
            Strength::AlsoFits => "also fits",
            Strength::ComesNear => "comes near",
        }
    }
}

impl Explanation {
    /// Whether it can give the figure: the figure is no further off than 3σ + 0.5 sq ft, and not beyond what rounding
    /// walls up or down allows.
    #[must_use]
    pub fn fits(&self) -> bool {
        let figure = self.sq_ft + self.leaves;
        self.band.low - 0.5 <= figure && figure <= self.band.high + 0.5
    }

    /// Whether it leaves nothing as printed, or no more than the range beside it or half a standard deviation allows.
    pub(super) fn leaves_little(&self) -> bool {
        let figure = Area::from_float_sq_ft(self.sq_ft + self.leaves);
        self.leaves.abs() <= (0.5 * self.sigma).max(0.5)
            || self.sum.is_some_and(|sum| sum.by != SummedBy::Closing)
            || self.printed.leaves_open(figure)
    }

    /// Whether it is something that was done, other than in rounding, and leaves nothing as printed.
    pub(crate) fn gives_the_figure(&self) -> bool {
        // A typing error on top of something else is not one common cause.
        let is_one = !matches!(self.cause, Cause::None | Cause::Rounding(_))
            && !matches!(self.cause, Cause::Total { with: Some(_), .. });
        is_one && self.fits() && self.leaves.abs() < 0.5
    }

    /// Whether both mean the same to a reader, for this house.
    pub(crate) fn echoes(&self, other: &Explanation) -> bool {
        const ALIKE_SQ_FT: f64 = 0.5;
        const ABOUT_ALIKE_SQ_FT: f64 = 5.0;
        let apart = (self.sq_ft - other.sq_ft).abs();
        let near =
            if self.cause.lies_in_a_recess(other.cause) { ABOUT_ALIKE_SQ_FT } else { ALIKE_SQ_FT };
        apart < near && self.cause.says_the_same(other.cause)
    }

    /// Whether both have the same support, as printed, and leave as much.
    pub(crate) fn is_as_likely_as(&self, other: &Explanation) -> bool {
        let per_cent = |one: &Explanation| libm::round(100.0 * one.support);
        per_cent(self).total_cmp(&per_cent(other)).is_eq()
            && (self.leaves - other.leaves).abs() < 0.5
    }

    /// Whether it is best supported with every wall rounded up, every wall down, or to the half foot.
    pub(crate) fn is_rounded_one_way(&self) -> bool {
        use RoundingTaken::{AlwaysDown, AlwaysUp, HalfFoot};
        matches!(self.rounding, Some(AlwaysUp | AlwaysDown | HalfFoot))
    }

    /// How far off the figure may be for the cause still to fit, in square feet.
    #[must_use]
    pub fn allows(&self) -> f64 {
        allows(self.sigma)
    }

    /// The figure that it would give, in square feet.
    #[must_use]
    pub fn sq_ft(&self) -> f64 {
        self.sq_ft
    }

    /// The published figure minus that, in square feet.
    #[must_use]
    pub fn leaves(&self) -> f64 {
        self.leaves
    }

    /// The uncounted spaces that it counts, by index.
    pub(crate) fn counts(&self) -> impl Iterator<Item = usize> {
        self.cause.each(&self.labels.house).into_iter().filter_map(DepartureKind::brings)
    }

    /// The wall it assumes was misread; `None` if it assumes none.
    pub(crate) fn misread_wall(&self) -> Option<MisreadWall> {
        match self.cause {
            Cause::Misread(wall) => Some(wall),
            _ => None,
        }
    }

    /// The labels of its departures in JSON; empty if there are none.
    #[must_use]
    pub fn departures(&self) -> &[String] {
        self.labels.words.get_or_init(|| self.cause.labels(&self.labels.house))
    }

    /// Its support, from 0 to 1.
    #[must_use]
    pub fn support(&self) -> f64 {
        self.support
    }

    /// The kind of mistake that it is; `None` if there is no departure.
    #[must_use]
    pub fn class(&self) -> Option<CauseClass> {
        self.cause.class()
    }

    /// How strong it is; `None` if it is not reported.
    #[must_use]
    pub fn strength(&self) -> Option<Strength> {
        self.strength
    }

    /// Whether it is reported.
    #[must_use]
    pub fn is_reported(&self) -> bool {
        self.strength.is_some()
    }
}

/// How far off a figure may be, in square feet, for a cause with this standard deviation still to fit: almost all
/// offices stay within it.
pub(super) fn allows(sigma: f64) -> f64 {
    3.0 * sigma + 0.5
}
