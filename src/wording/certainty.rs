//! How certain the measured area is: who measured, how the walls were closed, the interval, checks and low ceilings.

use crate::areas::{EquallyNear, is_in_total};
use crate::diagnostic::words;
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::traverse::Misclosure;
use crate::house::{Checked, Face, Kind, LengthSource, Run, Side, Space};
use crate::reconcile::Figure;
use crate::units::area::Area;
use crate::units::decimal::thousands;
use crate::units::length::{FineStep, Form, Length};
use crate::wording::half_feet::MILLIMETER_NM;
use crate::wording::sentences::{Sentences, the, whole};
use crate::wording::size::{number_alone, off_by, off_by_with_step, square_meters, step_alone};

/// The area before any rounding, in parts of a sentence.
struct Before {
    /// Which area it is: ` above grade`, or nothing.
    above: &'static str,
    /// The area with its ±.
    area: String,
    /// How sure that is.
    how_sure: String,
    /// What it depends on: how near the lengths are.
    within: String,
}

/// How near a length is, and whether the file states it.
type Within = (bool, String);

/// A condition of more letters is shortened on the first page.
const SHORT_WITHIN: usize = 60;

impl Sentences<'_> {
    /// Sentences saying that rounded walls close in several equally near ways with other totals; empty if they do
    /// not.
    pub(crate) fn equally_near(&self) -> Vec<String> {
        let areas = self.areas;
        let rules = [
            (self.fine(), areas.equally_near_tenth_foot(), areas.gross().tenth_foot()),
            ("the whole foot", areas.equally_near_whole_foot(), areas.gross().whole_foot()),
        ];
        let sentence = |(unit, others, used): (&str, EquallyNear, Area)| {
            let opening = format!(
                "Rounded to {unit}, these walls do not come back to their start, so some are adjusted. More than one adjustment is equally near to the measured lengths. The one used here gives {} sq ft",
                whole(used)
            );
            if !others.is_complete() {
                return Some(format!("{opening}; there are too many others to list."));
            }
            match others.totals() {
                [] => None,
                [one] => Some(format!("{opening}; the other gives {}.", thousands(*one))),
                [some @ .., last] if some.len() < 3 => {
                    let some: Vec<String> = some.iter().copied().map(thousands).collect();
                    let some = some.join(", ");
                    Some(format!("{opening}; the others give {some} or {}.", thousands(*last)))
                }
                [low, .., high] => Some(format!(
                    "{opening}; the others give {} to {}.",
                    thousands(*low),
                    thousands(*high)
                )),
            }
        };
        rules.into_iter().filter_map(sentence).collect()
    }

    /// The counted walls that had to leave their own fine rounding so that their outlines close, in words; `None` if there are
    /// none, or more than two.
    pub(super) fn adjusted_to_fine(&self) -> Option<String> {
        const MOST: usize = 2;
        let counted = (0..self.house.spaces.len()).filter(|&i| self.house.spaces[i].counted);
        let moved = counted.flat_map(|space| {
            let rows = self.areas.side_rows(space).into_iter().enumerate();
            rows.filter_map(move |(side, figures)| {
                let alone = self.areas.outside_length(space, side)?;
                let alone = alone.rounded(self.settings.fine.step(), self.settings.halves);
                figures.tenth_foot.filter(|used| *used != alone)?;
                let number = self.house.spaces[space].sides[side].number;
                Some(format!("side {number} ({})", self.wall_outside(space, side)))
            })
        });
        let moved: Vec<String> = moved.collect();
        (1..=MOST).contains(&moved.len()).then(|| words::all_of(&moved))
    }

    /// The totals with each wall rounded finely that other adjustments of walls give, which are equally near to the measured
    /// lengths: `1,414 or 1,420 sq ft`; `None` where there are no others.
    pub(super) fn other_closings_to_fine(&self) -> Option<String> {
        const MOST: usize = 3;
        let mut totals = self.areas.equally_near_tenth_foot().totals().to_vec();
        totals.sort_unstable();
        let told: Vec<String> = totals.iter().copied().map(thousands).collect();
        Some(match told.as_slice() {
            [] => return None,
            [one] => format!("{one} sq ft"),
            few if few.len() <= MOST => format!("{} sq ft", words::list_or(few)),
            [low, .., high] => format!("{low} to {high} sq ft"),
        })
    }

    /// Who measured, how certain the measured area is, and what was not inspected.
    pub(crate) fn certainty(&self) -> Vec<String> {
        let house = self.house;
        let mut sentences = Vec::new();
        if let Some(measured) = &self.house.particulars.measured {
            sentences.push(self.measured_by(measured));
        }
        if !house.spaces.is_empty() && self.only_from_a_plan().is_none() {
            sentences.push(self.plus_minus());
        }
        if self.areas.is_computed() {
            sentences.push("The house has slanted or curved walls: the arithmetic is exact to 0.01 sq ft, the tape is not.".to_owned());
        }
        if house.lots.iter().any(|lot| lot.closed.is_computed()) {
            sentences.push(
                "The arithmetic of the land is exact to 0.01 sq ft; its calls are as typed."
                    .to_owned(),
            );
        }
        sentences.extend(self.only_from_a_plan());
        sentences.extend(self.checks());
        sentences.extend(self.equally_near());
        sentences.extend(self.low_ceilings());
        if self.house.particulars.interior_seen != Some(true) && !house.spaces.is_empty() {
            sentences.push("The interior was not inspected (finish, ceiling heights, access): this is gross area, outside measure, not gross living area.".to_owned());
        }
        sentences
    }

    /// When, by whom and with what the sides were obtained.
    pub(crate) fn measured_by(&self, measured: &crate::house::Measured) -> String {
        let how = match self.obtained() {
            LengthSource::Plan => "Taken from a plan",
            LengthSource::Record => "Taken from the record",
            LengthSource::Estimated => "Estimated",
            LengthSource::Measured | LengthSource::Closing => "Measured",
        };
        let day = measured.date.strftime("%B %-d, %Y");
        let by = measured.by.as_ref().map(|by| format!(" by {by}")).unwrap_or_default();
        let with = measured.with.as_ref().map(|with| format!(" ({with})")).unwrap_or_default();
        format!("{how} on {day}{by}{with}.")
    }

    /// Says that the counted spaces were not measured, if their lengths come from a plan, a record or estimates.
    pub(crate) fn only_from_a_plan(&self) -> Option<String> {
        let sources = self.sources();
        if sources.is_empty() || sources.contains(&LengthSource::Measured) {
            return None;
        }
        let words: Vec<&str> = [
            (LengthSource::Estimated, "estimated"),
            (LengthSource::Plan, "from the plan"),
            (LengthSource::Record, "from the record"),
        ]
        .into_iter()
        .filter_map(|(source, words)| sources.contains(&source).then_some(words))
        .collect();
        let all = self.house.spaces.iter().flat_map(|space| space.sides.iter());
        let no_wall = match all.into_iter().any(|side| side.how() == LengthSource::Measured) {
            true => "No counted wall",
            false => "No wall",
        };
        Some(format!(
            "{no_wall} was measured on site: every length is {}.{}",
            words::one_of(&words),
            self.moved_outward()
        ))
    }

    /// What is added to the lengths of counted spaces that end at another face than the outside one, preceded by a
    /// space; empty if there are none.
    fn moved_outward(&self) -> String {
        let is_at =
            |face: Face| self.house.spaces.iter().any(|space| space.counted && space.face == face);
        [
            (
                Face::Frame,
                " Where lengths end at the frame, the outer layer of the walls is added.",
            ),
            (Face::Inside, " Where lengths end inside, the thickness of the walls is added."),
        ]
        .into_iter()
        .filter_map(|(face, sentence)| is_at(face).then_some(sentence))
        .collect()
    }

    /// The lengths that were taped as checks, each with what the walls give; `None` if there are none.
    pub(super) fn checks(&self) -> Option<String> {
        let spaces = self.house.spaces.iter();
        let told = spaces.flat_map(|space| {
            let several = self.house.spaces.len() > 1;
            let of = if several { format!(" of {}", space.name) } else { String::new() };
            space.checks.iter().map(move |check| {
                let what = match &check.of {
                    Checked::Overall(axis) => {
                        let ends = match axis {
                            Axis::North => "north to south",
                            Axis::East => "east to west",
                        };
                        format!("{ends}{of}, {}", check.taped)
                    }
                    Checked::Corners(from, to) => {
                        format!("corner {from} to corner {to}{of}, {}", check.taped)
                    }
                };
                format!("{what}: the walls give {}", self.length(check.walls))
            })
        });
        let told: Vec<String> = told.collect();
        (!told.is_empty()).then(|| format!("Measured as checks: {}.", told.join("; ")))
    }

    /// The height rule the file followed, if it deducts low ceilings: a sentence without its period.
    pub(super) fn low_rule(&self) -> Option<String> {
        let low = || self.house.spaces.iter().filter(|space| space.kind == Kind::Low);
        low().next()?;
        let mut heights: Vec<Length> = low()
            .filter_map(|space| space.under)
            .map(crate::units::length::WrittenLength::length)
            .collect();
        heights.sort_unstable();
        heights.dedup();
        let heights: Vec<String> = heights.into_iter().map(Length::spoken).collect();
        Some(match heights.as_slice() {
            [] => {
                "Low ceilings are deducted; the height below which they count as low is not stated"
                    .to_owned()
            }
            some => {
                format!("What lies under {}, as stated here, is deducted", words::all_of(some))
            }
        })
    }

    /// The area above grade that is deducted as low without the height below which a ceiling counts as low; `None` if every
    /// height is stated or nothing is deducted.
    pub(super) fn low_without_a_height(&self) -> Option<Area> {
        let house = self.house;
        let is_unstated = |&i: &usize| {
            let space = &house.spaces[i];
            space.kind == Kind::Low
                && space.under.is_none()
                && space.parent.is_some_and(|parent| is_in_total(house, parent, false))
        };
        let low: Vec<usize> = (0..house.spaces.len()).filter(is_unstated).collect();
        let area = low.iter().map(|&i| self.areas.spaces[i].net_tenth_foot).sum();
        (!low.is_empty()).then_some(area)
    }

    /// The height rule, and what else bears on it.
    pub(super) fn low_ceilings(&self) -> Option<String> {
        let rule = self.low_rule()?;
        let low = || self.house.spaces.iter().filter(|space| space.kind == Kind::Low);
        let seen = match self.house.particulars.interior_seen {
            Some(true) => "the interior was seen",
            _ => "the interior was not inspected",
        };
        // The strips end at the inside face, so the wall beyond them stays in the area of their space.
        let is_moved_out = |space: &&Space| {
            space.parent.is_some_and(|parent| self.house.spaces[parent].face != Face::Outside)
        };
        let walls = match low().any(|space| is_moved_out(&space)) {
            true => " Only the floor is deducted: the walls beside it are counted.",
            false => "",
        };
        Some(format!("{rule}; {seen}.{walls}"))
    }

    /// The uncertainty of the measured area, and where rounding its walls leads.
    pub(crate) fn plus_minus(&self) -> String {
        let is_metric = self.is_metric();
        let gross = self.areas.gross();
        let (exact, rounded) = (gross.outside(), gross.tenth_foot());
        let changes = step_alone(exact, rounded, is_metric);
        let (fine, appraisers) = self.fine_of_appraisers();
        let unit = if is_metric { "sq m" } else { "sq ft" };
        // The area of the first sentence on the page, and its ±, follow from the ones here.
        let leads = match changes.strip_prefix('+') {
            _ if changes == "0" => "does not change it".to_owned(),
            Some(more) => {
                format!("adds {more} {unit}, so it is {}", self.plus_minus_with_rounding())
            }
            None => format!(
                "subtracts {} {unit}, so it is {}",
                changes.trim_start_matches('\u{2212}'),
                self.plus_minus_with_rounding()
            ),
        };
        let comma = if fine.ends_with(',') { "" } else { "," };
        format!(
            "{} Rounding each wall to {fine}{comma} as {appraisers} do, {leads}.",
            self.plus_minus_before_rounding()
        )
    }

    /// What each wall of the area compared with the figures is rounded to, and whose rule that is.
    pub(super) fn fine_of_appraisers(&self) -> (&'static str, &'static str) {
        // Who measures in meters does not know how much that is.
        let tenth = match self.form {
            Form::Millimeters => "a tenth of a foot, about 30 mm,",
            _ => "a tenth of a foot, about 3 cm,",
        };
        match (self.is_metric(), self.settings.fine) {
            (true, FineStep::TenthFoot) => (tenth, "many US appraisers"),
            (true, FineStep::Inch) => ("the inch", "many US appraisers"),
            (false, _) => (self.fine(), "many appraisers"),
        }
    }

    /// The uncertainty of the measured area, with the area that it belongs to: the one before any rounding, above grade if
    /// some of the house is below.
    pub(super) fn plus_minus_before_rounding(&self) -> String {
        let Before { above, area, how_sure, within } = self.parts_before_rounding();
        format!("Before any rounding the area{above} is {area}{how_sure}, if {within}.")
    }

    fn parts_before_rounding(&self) -> Before {
        let is_metric = self.is_metric();
        let gross = self.areas.gross();
        let unit = if is_metric { "sq m" } else { "sq ft" };
        let off = off_by(gross.plus_minus_outside(), is_metric);
        let worst = off_by(gross.worst_case_outside(), is_metric);
        let how_sure = match off == worst {
            true => ", even with all errors adding up".to_owned(),
            false => format!(
                ", about 19 times in 20, or ± {worst} {unit} at worst, with all errors adding up"
            ),
        };
        let above = if self.areas.below_grade().is_some() { " above grade" } else { "" };
        let area = format!("{} ± {off} {unit}", number_alone(gross.outside(), is_metric));
        Before { above, area, how_sure, within: self.if_within() }
    }

    /// How far the area that is compared with a figure may be off, in one short sentence; what that is made of stands in the
    /// Calculations: `The measured area is 1,208 sq ft, give or take 4 (about 19 times in 20, if each wall is within 1/2", as
    /// assumed here).` It holds everything that the ± before rounding holds.
    pub(super) fn give_or_take(&self) -> String {
        let is_metric = self.is_metric();
        let gross = self.areas.gross();
        let (exact, rounded) = (gross.outside(), gross.tenth_foot());
        let off = |sq_ft: f64| off_by_with_step(exact, rounded, sq_ft, is_metric);
        let (usual, worst) = (off(gross.plus_minus_outside()), off(gross.worst_case_outside()));
        let (at_most, how_sure) = match usual == worst {
            true => (" at most", ""),
            false => ("", "about 19 times in 20, "),
        };
        let within = self.if_within();
        let within = match within.len() <= SHORT_WITHIN {
            true => within,
            false => self.within_in_short(),
        };
        let above = if self.areas.below_grade().is_some() { " above grade" } else { "" };
        format!(
            "The {} area{above} is {} {}, give or take {usual}{at_most} ({how_sure}if {within}).",
            self.area_word(),
            number_alone(rounded, is_metric),
            if is_metric { "sq m" } else { "sq ft" }
        )
    }

    /// The area with each wall rounded finely, with a ± that holds everything that the ± before rounding holds: that and
    /// the step of rounding together, as printed. `607 ± 3 sq ft`.
    pub(super) fn plus_minus_with_rounding(&self) -> String {
        let is_metric = self.is_metric();
        let gross = self.areas.gross();
        let (exact, rounded) = (gross.outside(), gross.tenth_foot());
        format!(
            "{} ± {} {}",
            number_alone(rounded, is_metric),
            off_by_with_step(exact, rounded, gross.plus_minus_outside(), is_metric),
            if is_metric { "sq m" } else { "sq ft" }
        )
    }

    /// How near the lengths are, each stated by the file or assumed here: `each wall is within 1/2", as stated, and each
    /// wall thickness is within 1/4", as assumed here`.
    fn if_within(&self) -> String {
        let (stated, assumed) = self.within();
        let part = |all: Vec<Within>, whence: &str| {
            let all: Vec<String> = all.into_iter().map(|(_, text)| text).collect();
            (!all.is_empty()).then(|| format!("{}, {whence}", words::all_of(&all)))
        };
        let parts = [part(stated, "as stated"), part(assumed, "as assumed here")];
        parts.into_iter().flatten().collect::<Vec<String>>().join(", and ")
    }

    /// The same where it is long: `the lengths are as near as stated or assumed`.
    fn within_in_short(&self) -> String {
        let (stated, assumed) = self.within();
        let whence = match (stated.is_empty(), assumed.is_empty()) {
            (false, true) => "stated",
            (true, _) => "assumed here",
            _ => "stated or assumed here",
        };
        format!("the lengths are as near as {whence}")
    }

    /// How near each kind of length is: what the file states, and what is assumed.
    fn within(&self) -> (Vec<Within>, Vec<Within>) {
        let tolerance = self.house.particulars.tolerance;
        let [quarter, half, one, two] = match self.is_metric() {
            // In the unit of the file.
            true => {
                [6, 13, 25, 50].map(|mm| self.short_length(Length::from_nm(mm * MILLIMETER_NM)))
            }
            false => ["1/4\"", "1/2\"", "1\"", "2\""].map(str::to_owned),
        };
        let walls = tolerance.map_or(half, |written| written.to_string());
        let mut told = vec![(tolerance.is_some(), format!("each wall is within {walls}"))];
        told.extend(self.own_tolerances());
        let gross = self.areas.gross();
        // How near a thickness is, the file never says.
        if gross.holds_assumptions() {
            told.push((false, format!("each assumed thickness is within {one}")));
        }
        if gross.holds_stated_thickness() {
            let which = if gross.holds_assumptions() { "each other" } else { "each" };
            told.push((false, format!("{which} wall thickness is within {quarter}")));
        }
        if gross.holds_assumptions() && self.areas.assumed().common {
            told.push((false, format!("the thickness of a common wall is within {two}")));
        }
        told.into_iter().partition(|(stated, _)| *stated)
    }

    /// The walls with a tolerance of their own, and whether the file states it: `side 4 of the farmhouse is within 1'`.
    fn own_tolerances(&self) -> Vec<(bool, String)> {
        const MOST: usize = 3;
        let spaces = self.house.spaces.iter();
        let sides = spaces.flat_map(|space| space.sides.iter().map(move |side| (space, side)));
        let said = sides.filter_map(|(space, side)| {
            if !side.words.estimated && side.words.tolerance.is_none() {
                return None;
            }
            let used = space.closed.traverse.sides[side.number.index()].tolerance;
            let within = match side.words.tolerance {
                Some(written) => written.to_string(),
                None => self.length(Length::from_nm(used)),
            };
            let name = words::the_quoted(&space.name);
            let fixed = match is_fixed_by_others(space, side) {
                true => ", which the other walls fix more closely,",
                false => "",
            };
            let text = format!("side {} of {name}{fixed} is within {within}", side.number);
            Some((side.words.tolerance.is_some(), text))
        });
        let said: Vec<(bool, String)> = said.collect();
        if said.len() <= MOST {
            return said;
        }
        let counted = |stated: bool| {
            let count = said.iter().filter(|(is_stated, _)| *is_stated == stated).count();
            let own = match count {
                1 => "1 wall has a tolerance of its own".to_owned(),
                _ => format!("{} have tolerances of their own", words::count(count, "wall")),
            };
            (count > 0).then_some((stated, own))
        };
        [true, false].into_iter().filter_map(counted).collect()
    }

    /// Why the measured area may not be the sum on somebody's notepad; `None` if no wall changes by being rounded.
    pub(crate) fn before_rounding(&self) -> Option<String> {
        let gross = self.areas.gross();
        let exact = self.size(gross.outside());
        let is_shown = match self.is_metric() {
            // In square meters alone: the square feet beside them differ where nobody added up square feet.
            true => square_meters(gross.outside()) != square_meters(gross.tenth_foot()),
            false => exact != self.size(gross.tenth_foot()),
        };
        is_shown.then(|| {
            format!(
                "Before any rounding it is {exact}; here each wall is first rounded to {}.",
                self.fine()
            )
        })
    }

    /// Who says how an office came to a figure, which nobody but the office knows: `as the owner understands the record`.
    pub(crate) fn as_understood(&self, figure: &Figure) -> String {
        let by = self.house.particulars.measured.as_ref().and_then(|measured| measured.by.clone());
        format!("as {} understands {}", by.as_deref().unwrap_or("whoever measured"), the(figure))
    }

    /// Who states the lengths: `as stated by the owner`, or `as stated by whoever measured` if the file does not say
    /// who that was.
    pub(crate) fn as_stated(&self) -> String {
        let by = self.house.particulars.measured.as_ref().and_then(|measured| measured.by.clone());
        format!("as stated by {}", by.as_deref().unwrap_or("whoever measured"))
    }
}

/// Whether the other walls along the axis of a side say more about its length than its own tolerance does: all of theirs
/// together are less.
fn is_fixed_by_others(space: &Space, side: &Side) -> bool {
    let Some(axis) = side.direction.map(Direction::axis) else { return false };
    let sides = &space.closed.traverse.sides;
    let tolerance = |of: &Side| sides.get(of.number.index()).map_or(0, |side| side.tolerance);
    let is_beside = |other: &&Side| other.number != side.number;
    let others = space.sides.iter().filter(is_beside);
    // A slanted or curved wall lies along both.
    let others = others.filter(|other| other.direction.is_none_or(|way| way.axis() == axis));
    let others: Vec<i64> = others.map(tolerance).collect();
    others.iter().all(|other| *other > 0) && others.iter().sum::<i64>() < tolerance(side)
}

/// How a walk that misses its start was closed, as the end of a sentence. If nearly all of the misclosure went to one
/// side, it names that side.
pub(crate) fn closed_by(space: &Space) -> String {
    let Some((side, is_all)) = taken_up(space) else {
        return "that is spread over its sides".to_owned();
    };
    let closed = space.closed.outline.vectors()[side.number.index()].chord_length();
    let typed = match &side.run {
        Run::Straight(_, written) | Run::Bearing(_, written) => written.length(),
        _ => closed,
    };
    let how = if closed > typed { "added to" } else { "taken from" };
    let share = if is_all { "all" } else { "nearly all" };
    format!("{share} of that is {how} side {}", side.number)
}

/// The side that took up nearly all of the misclosure of a walk; `None` if there was none or no such side.
pub(crate) fn closed_mostly_by(space: &Space) -> Option<&Side> {
    (space.closed.misclosure != Misclosure::default())
        .then(|| taken_up(space))?
        .map(|(side, _)| side)
}

/// The side that took up at least nine tenths of a misclosure, and whether it took up all of it.
fn taken_up(space: &Space) -> Option<(&Side, bool)> {
    let closed = space.closed.outline.vectors().iter().map(|vector| vector.chord_length());
    let moved = space.sides.iter().zip(closed).map(|(side, closed)| match &side.run {
        Run::Straight(_, written) | Run::Bearing(_, written) => {
            (written.length() - closed).abs().nm()
        }
        _ => 0,
    });
    let moved: Vec<i64> = moved.collect();
    let all: i64 = moved.iter().sum();
    let (most, side) = moved.iter().zip(space.sides.iter()).max_by_key(|(moved, _)| **moved)?;
    (10 * *most >= 9 * all).then_some((side, *most == all))
}

/// The walls of a space that are shared with a neighbor: `sides 2 and 4`; `None` if there are none.
pub(crate) fn shared_walls(space: &Space) -> Option<String> {
    let shared = space.sides.iter().filter(|side| side.words.common);
    let numbers: Vec<usize> = shared.map(|side| side.number.get()).collect();
    (!numbers.is_empty()).then(|| words::sides(&numbers))
}
