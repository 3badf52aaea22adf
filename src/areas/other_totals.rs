//! Other possible totals. Rounded walls often close in several ways that are equally near to the typed lengths.

use crate::areas::at_face::Ruled;
use crate::areas::ranges::totals_of;
use crate::areas::rule::Rule;
use crate::areas::{Areas, range};
use crate::units::area::Area;

/// The most totals that are listed.
const MOST_TOTALS: usize = 5_000;

/// The other totals above grade, in whole square feet, from closings that are as near to the typed lengths as those
/// shown.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct EquallyNear {
    totals: Vec<i64>,
    is_complete: bool,
}

impl EquallyNear {
    /// The totals other than the one shown, in ascending order; empty if there are too many to list.
    #[must_use]
    pub fn totals(&self) -> &[i64] {
        &self.totals
    }

    /// Whether all of them are listed; `false` where there are too many, and then none is.
    #[must_use]
    pub fn is_complete(&self) -> bool {
        self.is_complete
    }
}

impl Areas {
    /// The above-grade totals, in whole square feet, of the whole-foot closings that are as near to the typed lengths
    /// as those shown, without the total shown. If there are too many, the list is empty and
    /// [`EquallyNear::is_complete`] is `false`.
    #[must_use]
    pub fn equally_near_whole_foot(&self) -> EquallyNear {
        self.equally_near(self.settings.whole_foot(), &self.whole, self.gross.whole_foot())
    }

    /// Like [`Areas::equally_near_whole_foot`], but with each wall rounded by the finer rule.
    #[must_use]
    pub fn equally_near_tenth_foot(&self) -> EquallyNear {
        self.equally_near(self.settings.tenth_foot(), &self.fine, self.gross.tenth_foot())
    }

    fn equally_near(&self, rule: Rule, ruled: &Ruled, shown: Area) -> EquallyNear {
        let Some(totals) = self.totals_of_closings(rule, ruled) else {
            return EquallyNear::default();
        };
        let mut totals: Vec<i64> = totals.iter().map(|total| total.whole_sq_ft()).collect();
        totals.sort_unstable();
        totals.dedup();
        totals.retain(|&total| total != shown.whole_sq_ft());
        EquallyNear { totals, is_complete: true }
    }

    /// Every total above grade from the nearest closings of each space; `None` where there are too many.
    fn totals_of_closings(&self, rule: Rule, ruled: &Ruled) -> Option<Vec<Area>> {
        let house = &self.house;
        totals_of(house, false, MOST_TOTALS, &[], |space| {
            let areas = range::equally_near(&self.outside.spaces[space], rule.step, rule.halves)?;
            Some(if areas.is_empty() { vec![ruled.areas[space]] } else { areas })
        })
    }
}
