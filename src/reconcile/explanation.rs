//! One cause of a gap as it is weighed and told: what it would make of the figure, how well it is supported, how strong it is.
#![expect(clippy::float_arithmetic, reason = "supports and intervals are floats")]

use crate::reconcile::cause::{Cause, CauseClass};
use crate::reconcile::departures::DepartureKind;
use crate::reconcile::settings::RoundingTaken;
use crate::units::area::Area;

/// One cause, under whatever rounding: what a person would tell apart.
#[derive(Clone, Debug)]
pub struct Explanation {
    pub(crate) cause: Cause,
    /// As in JSON; none for no departure.
    pub(crate) labels: Vec<String>,
    /// The rounding under which it does best; none for the figure's own.
    pub(crate) rounding: Option<RoundingTaken>,
    /// What the figure would be, with the rounding under which it does best.
    pub(crate) sq_ft: f64,
    /// The figure less that.
    pub(crate) leaves: f64,
    pub(crate) sigma: f64,
    pub(crate) support: f64,
    /// What the cause adds at the figure's own face and rule.
    pub(crate) effect: Area,
    /// Whether it is told, and how strong it is; none where it is not.
    pub(crate) strength: Option<Strength>,
}

/// How strong a told cause is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Strength {
    /// The only common cause that fits.
    Only,
    /// The likeliest of so many that fit.
    LikeliestOf(usize),
    /// Fits also.
    AlsoFits,
}

impl Strength {
    /// As in JSON.
    pub const fn word(self) -> &'static str {
        match self {
            Strength::Only => "only",
            Strength::LikeliestOf(_) => "likeliest",
            Strength::AlsoFits => "also fits",
        }
    }
}

impl Explanation {
    /// Whether what it leaves is no more than rounding leaves: |r| ≤ 2σ + 0.5.
    pub fn fits(&self) -> bool {
        self.leaves.abs() <= self.allows()
    }

    /// How much a cause may leave and still fit, in square feet.
    pub fn allows(&self) -> f64 {
        2.0 * self.sigma + 0.5
    }

    /// What the figure would be, in square feet.
    pub fn sq_ft(&self) -> f64 {
        self.sq_ft
    }

    /// The figure less that.
    pub fn leaves(&self) -> f64 {
        self.leaves
    }

    /// The spaces that it counts although they are not, by their places.
    pub(crate) fn counts(&self) -> impl Iterator<Item = usize> {
        self.cause.departures().filter_map(DepartureKind::brings)
    }

    /// The wall that it says was misread: its space and its side, by their places.
    pub(crate) fn misread_wall(&self) -> Option<(usize, usize)> {
        match self.cause {
            Cause::Misread { space, side, .. } => Some((space, side)),
            _ => None,
        }
    }

    /// Its departures, as in JSON; none for no departure.
    pub fn departures(&self) -> &[String] {
        &self.labels
    }

    /// Its support, from 0 to 1.
    pub fn support(&self) -> f64 {
        self.support
    }

    /// How it could be corrected; none where nothing was done otherwise.
    pub fn class(&self) -> Option<CauseClass> {
        self.cause.class()
    }

    /// How strong it is, where it is told.
    pub fn strength(&self) -> Option<Strength> {
        self.strength
    }

    /// Whether it is told.
    pub fn is_told(&self) -> bool {
        self.strength.is_some()
    }
}
