//! The bridge: lines that add up exactly to the gap.

use crate::Sound;
use crate::area::Area;
use crate::areas::net;
use crate::house::range::{Latitude, Range};
use crate::length::Step as SideStep;
use crate::numbers::largest_remainder;
use crate::reconcile::recorded::Recorded;
use crate::reconcile::{Ground, total, total_range};
use crate::rule::Settings;

/// A step of the bridge, in its order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Step {
    /// Another face than the outside.
    Face,
    /// The figure's own rounding of sides.
    Rounding,
    /// The figure's own lengths, where the file has them.
    RecordedSides,
    /// What the figure says it counts.
    Counting,
    /// The rest.
    NotExplained,
}

impl Step {
    /// The name of the line.
    pub const fn name(self) -> &'static str {
        match self {
            Step::Face => "face",
            Step::Rounding => "rounding",
            Step::RecordedSides => "recorded sides",
            Step::Counting => "counting",
            Step::NotExplained => "not explained",
        }
    }
}

/// One line of the bridge.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    step: Step,
    area: Area,
    range: Option<Range>,
    counted: Vec<String>,
}

impl Line {
    /// Which step it is.
    pub fn step(&self) -> Step {
        self.step
    }

    /// What it adds to what was measured.
    pub fn area(&self) -> Area {
        self.area
    }

    /// For rounding: what it could add, from lowest to highest.
    pub fn range(&self) -> Option<Range> {
        self.range
    }

    /// For counting: the names.
    pub fn counted(&self) -> &[String] {
        &self.counted
    }
}

/// The lines of one figure.
pub(super) fn lines(
    sound: &Sound,
    ground: &Ground<'_>,
    recorded: Option<&Recorded>,
    start: Area,
    settings: &Settings,
) -> Vec<Line> {
    let plain = |step: Step, area: Area| Line { step, area, range: None, counted: Vec::new() };
    let at_face = total(sound, &ground.fine.areas);
    let ruled = total(sound, &ground.ruled.areas);
    let mut lines =
        vec![plain(Step::Face, at_face - start), plain(Step::Rounding, ruled - at_face)];
    let step = ground.rule.step;
    if matches!(step, SideStep::WholeFoot | SideStep::HalfFoot) {
        let ranges = ground.walls.ranges(step, Latitude::Reach(settings.reach));
        lines[1].range = total_range(sound, &ranges)
            .map(|range| Range { low: range.low - at_face, high: range.high - at_face });
    }
    if let Some(recorded) = recorded {
        lines.push(plain(Step::RecordedSides, total(sound, &recorded.areas) - ruled));
    }
    if !ground.figure.basis.counting.is_empty() {
        let areas = recorded.map_or(&ground.ruled.areas, |recorded| &recorded.areas);
        let counted = ground.figure.basis.counting.iter().map(|name| name.text.clone()).collect();
        let area = ground
            .figure
            .basis
            .counting
            .iter()
            .map(|name| counted_by(sound, &name.text, areas))
            .sum();
        lines.push(Line { step: Step::Counting, area, range: None, counted });
    }
    let explained: Area = lines.iter().map(Line::area).sum();
    let gap = ground.figure.area.area() - start;
    lines.push(plain(Step::NotExplained, gap - explained));
    lines
}

/// What counting the spaces of a name adds, under the figure's own rule.
fn counted_by(sound: &Sound, name: &str, areas: &[Area]) -> Area {
    let house = sound.house();
    let named = (0..house.spaces.len()).filter(|&i| house.spaces[i].name == name);
    let spaces: Area = named
        .filter(|&i| !crate::areas::is_in_total(house, i, false))
        .map(|i| match house.spaces[i].parent {
            // What lies in a space that is not counted itself is no part of the total to begin with.
            Some(parent) if house.spaces[i].kind.lies_in_another() => {
                let taken =
                    house.is_taken_off(i) && crate::areas::is_in_total(house, parent, false);
                if taken { areas[i] } else { Area::ZERO }
            }
            _ => net(house, i, areas),
        })
        .sum();
    let missing = sound.sketch().missing.iter().filter(|missing| missing.name == name);
    spaces + missing.map(|missing| missing.recorded.area()).sum()
}

/// Areas as millionths of a square foot, and as whole ones, that still add up.
impl super::Figure {
    /// The lines in millionths of a square foot, adding up to the gap in millionths; what rounding leaves goes by largest remainder.
    pub(crate) fn lines_in_millionths(&self) -> Vec<i128> {
        let unit = Area::SQUARE_FOOT.half_nm2();
        let parts: Vec<i128> =
            self.lines.iter().map(|line| line.area().half_nm2() * 1_000_000).collect();
        // The gap as printed: the figure as printed less the measured as printed.
        let millionths = |area: Area| crate::numbers::millionths(area.half_nm2(), unit);
        largest_remainder(&parts, unit, millionths(self.area) - millionths(self.start))
    }

    /// The lines in whole square feet, adding up to the whole figure less the whole measured.
    pub(crate) fn lines_in_sq_ft(&self) -> Vec<i64> {
        let unit = Area::SQUARE_FOOT.half_nm2();
        let parts: Vec<i128> = self.lines.iter().map(|line| line.area().half_nm2()).collect();
        let total = i128::from(self.area.whole_sq_ft() - self.start.whole_sq_ft());
        let whole = largest_remainder(&parts, unit, total);
        whole.into_iter().map(|line| i64::try_from(line).unwrap_or(i64::MAX)).collect()
    }
}
