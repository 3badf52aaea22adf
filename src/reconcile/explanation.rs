//! One weighed cause of a gap: the figure it would give, how well it is supported, and how strong it is.
#![expect(clippy::float_arithmetic, reason = "supports and intervals are floats")]

use crate::reconcile::cause::{Cause, CauseClass};
use crate::reconcile::departures::DepartureKind;
use crate::reconcile::settings::RoundingTaken;
use crate::units::area::Area;

/// One cause, weighed over all ways of rounding, since a reader does not distinguish those.
#[derive(Clone, Debug)]
pub struct Explanation {
    pub(crate) cause: Cause,
    /// Its labels as in JSON; empty without a departure.
    pub(crate) labels: Vec<String>,
    /// The way of rounding under which it is best supported; `None` for the figure's own.
    pub(crate) rounding: Option<RoundingTaken>,
    /// The figure it would give with that rounding, in square feet.
    pub(crate) sq_ft: f64,
    /// The figure minus that.
    pub(crate) leaves: f64,
    pub(crate) sigma: f64,
    pub(crate) support: f64,
    /// What the cause adds at the figure's own face and rule.
    pub(crate) effect: Area,
    /// How strong it is, if it is reported.
    pub(crate) strength: Option<Strength>,
}

/// How strong a reported cause is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Strength {
    /// The only common cause that fits.
    Only,
    /// The likeliest of this many that fit.
    LikeliestOf(usize),
    /// It fits as well.
    AlsoFits,
}

impl Strength {
    /// The word used in JSON.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Strength::Only => "only",
            Strength::LikeliestOf(_) => "likeliest",
            Strength::AlsoFits => "also fits",
        }
    }
}

impl Explanation {
    /// Whether what it leaves is no more than rounding can leave: |r| ≤ 3σ + 0.5.
    #[must_use]
    pub fn fits(&self) -> bool {
        self.leaves.abs() <= self.allows()
    }

    /// How much it may leave and still fit, in square feet.
    #[must_use]
    pub fn allows(&self) -> f64 {
        allows(self.sigma)
    }

    /// The figure it would give, in square feet.
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
        self.cause.departures().filter_map(DepartureKind::brings)
    }

    /// The wall it takes to be misread: index of its space and of its side.
    pub(crate) fn misread_wall(&self) -> Option<(usize, usize)> {
        match self.cause {
            Cause::Misread { space, side, .. } => Some((space, side)),
            _ => None,
        }
    }

    /// Its departures, as in JSON; empty for none.
    #[must_use]
    pub fn departures(&self) -> &[String] {
        &self.labels
    }

    /// Its support, from 0 to 1.
    #[must_use]
    pub fn support(&self) -> f64 {
        self.support
    }

    /// How it could be corrected; `None` if there is no departure.
    #[must_use]
    pub fn class(&self) -> Option<CauseClass> {
        self.cause.class()
    }

    /// How strong it is, if it is reported.
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

/// The most that a cause with this standard deviation may leave and still fit, in square feet: almost all offices
/// stay within it.
pub(super) fn allows(sigma: f64) -> f64 {
    3.0 * sigma + 0.5
}
