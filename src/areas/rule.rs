//! The two rules by which each area is computed, and the settings in which offices differ.

use crate::units::length::{FineStep, Halves, Length, Step};

/// A rule: how every side is rounded before the area is computed. After that only the total is rounded, to the whole
/// square foot.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Rule {
    /// The unit each side is rounded to.
    pub step: Step,
    /// Which way a side exactly halfway between two steps is rounded.
    pub halves: Halves,
}

/// How one calculation rounds: the settings in which offices differ.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Settings {
    /// Which way a side exactly halfway between two steps is rounded.
    pub halves: Halves,
    /// The unit that the finer rule rounds sides to, as an appraiser does.
    pub fine: FineStep,
    /// How far off an office's tape reading may be, plus or minus; by default 0.15 ft (common practice).
    pub reading: Length,
}

impl Default for Settings {
    fn default() -> Settings {
        Settings {
            halves: Halves::Up,
            fine: FineStep::TenthFoot,
            reading: Length::from_nm(45_720_000),
        }
    }
}

impl Settings {
    /// The whole-foot rule: every side to the nearest whole foot, measured outside the veneer.
    ///
    /// Published in county and state manuals, for example Maryland SDAT, *Assessment Procedure
    /// Manual* (each dimension to the nearest foot), and Cabarrus County NC, 2012 schedule of values.
    #[must_use]
    pub fn whole_foot(&self) -> Rule {
        Rule { step: Step::WholeFoot, halves: self.halves }
    }

    /// The finer rule: every side to the nearest tenth of a foot, or to the inch if [`Settings::fine`] says so. Only
    /// the final area is then rounded, to the square foot.
    ///
    /// ANSI Z765-2021 §3: read to the inch or the tenth of a foot, report the whole square foot (read second-hand).
    #[must_use]
    pub fn tenth_foot(&self) -> Rule {
        Rule { step: self.fine.step(), halves: self.halves }
    }

    /// The rule that rounds every side to `step`, with the same halves.
    #[must_use]
    pub fn rule_for_step(&self, step: Step) -> Rule {
        Rule { step, halves: self.halves }
    }

    /// The settings that differ from the default, in words; empty if none does.
    #[must_use]
    pub fn unusual(&self) -> Vec<String> {
        let usual = Settings::default();
        let mut unusual = Vec::new();
        match self.halves {
            Halves::Up => {}
            Halves::Down => unusual.push("a length halfway goes down".to_owned()),
            Halves::Even => unusual.push("a length halfway goes to the even number".to_owned()),
        }
        if self.fine != usual.fine {
            unusual.push("each wall to the inch instead of a tenth of a foot".to_owned());
        }
        if self.reading != usual.reading {
            let (own, usual) = (self.reading.decimal_feet(), usual.reading.decimal_feet());
            unusual.push(format!("an office reads its tape within {own} ft instead of {usual}"));
        }
        unusual
    }

    /// Whether two lengths of a wall differ by more than whole-foot rounding and the reading of the tape can
    /// explain.
    pub(crate) fn is_beyond_rounding(&self, difference: Length) -> bool {
        2 * difference.abs().nm() > Length::FOOT.nm() + 2 * self.reading.nm()
    }
}
