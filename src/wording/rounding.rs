//! Says whether rounding alone can explain a figure; each sentence is made from the comparison it states.

use crate::areas::is_in_total;
use crate::areas::range::Range;
use crate::diagnostic::words;
use crate::house::{Face, SideRule};
use crate::reconcile::cause::Cause;
use crate::reconcile::{Between, BridgeStep, CouldExplain, Figure};
use crate::units::area::Area;
use crate::units::length::Step;
use crate::wording::sentences::{Sentences, agrees, capital, not_explained, the};
use crate::wording::size::{
    agrees_to_the_sq_m, number_or_size, off_by, range_size, size_apart, size_of_sq_ft,
};

impl Sentences<'_> {
    /// The conclusion about rounding, in a sentence; empty if there is nothing to add.
    pub(crate) fn answer(&self, figure: &Figure) -> String {
        let rest = not_explained(figure);
        if figure.area().whole_sq_ft() == figure.measured().whole_sq_ft() {
            return agreement(figure).to_owned();
        }
        if agrees(figure) {
            let steps = figure.lines_in_sq_ft();
            let has_steps = figure
                .lines()
                .iter()
                .zip(steps)
                .any(|(line, sq_ft)| line.step() != BridgeStep::NotExplained && sq_ft != 0);
            let steps = match has_steps && figure.is_record() && !figure.says_rule() {
                true => "; the steps matter only if the office rounds its walls",
                false => "",
            };
            if agrees_to_the_sq_m(figure.typed(), figure.measured()) {
                return format!("They agree to the square meter{steps}.");
            }
            let apart = size_apart(figure.area(), figure.measured(), self.is_metric());
            return format!("They agree within {apart}{steps}.");
        }
        let to_feet = matches!(
            figure.side_rule(),
            SideRule::Step(Step::WholeFoot | Step::HalfFoot) | SideRule::Unknown
        );
        let test = if rest == 0 && !to_feet { None } else { self.rounding_alone(figure) };
        let listed = self.listed_as_much(figure, rest);
        test.into_iter().chain(self.evidence(figure)).chain(listed).collect::<Vec<_>>().join(" ")
    }

    /// A space listed separately on the record, not counted here, whose area equals what is not explained.
    pub(crate) fn listed_as_much(&self, figure: &Figure, rest: i64) -> Option<String> {
        let house = self.house;
        let is_counted = |i: usize| is_in_total(house, i, false);
        let spaces = house.spaces.iter().enumerate().filter(|&(i, _)| !is_counted(i));
        let spaces = spaces.filter_map(|(_, space)| Some((&space.name, space.recorded?)));
        let missing = self.house.missing.iter();
        let missing = missing.map(|missing| (&missing.name, missing.recorded.area()));
        let as_much = |(_, recorded): &(&String, Area)| recorded.whole_sq_ft() == rest;
        let names: Vec<&str> =
            spaces.chain(missing).filter(as_much).map(|(name, _)| name.as_str()).collect();
        (figure.is_record() && rest > 0 && !names.is_empty()).then(|| {
            let ask = if self.is_for_the_office() { "please state" } else { "ask" };
            format!(
                "The record lists {} at {}, which is exactly what is not explained: {ask} whether the total includes it.",
                words::one_of(&names),
                size_of_sq_ft(rest, self.is_metric())
            )
        })
    }

    fn rounding_alone(&self, figure: &Figure) -> Option<String> {
        let test = figure.rounding_test();
        let says_feet = figure.is_record()
            || matches!(figure.side_rule(), SideRule::Step(Step::WholeFoot | Step::HalfFoot));
        let Some(answer) = test.could_explain() else {
            return says_feet.then(|| {
                "How far rounding alone could go cannot be stated for this house.".to_owned()
            });
        };
        if !says_feet {
            return self.if_rounded(figure, answer);
        }
        if let SideRule::Step(step @ (Step::Inch | Step::TenthFoot)) = figure.side_rule() {
            return Some(self.finely_rounded(figure, step));
        }
        let said = self.could_or_not(figure, answer)?;
        // The figure's own lengths are a step of their own, so this is about rounding without them.
        let said = match figure.line(BridgeStep::RecordedSides) {
            Some(_) => format!("Leaving the {}'s own lengths aside, {said}", figure.word()),
            None => capital(&said),
        };
        let typical = test.typical().filter(|_| figure.is_record());
        let typical = typical.filter(|&typical| agrees_with(figure, typical)).map(|typical| {
            let unit = if self.is_metric() { "sq m" } else { "sq ft" };
            format!(
                " Rounding to the {} typically changes a house like this by ± {} {unit}.",
                foot(test.step()),
                off_by(typical, self.is_metric())
            )
        });
        Some(format!("{said}{}", typical.unwrap_or_default()))
    }

    /// Whether rounding could explain the figure, as the end of a sentence.
    fn could_or_not(&self, figure: &Figure, answer: CouldExplain) -> Option<String> {
        let test = figure.rounding_test();
        let (foot, house) = (foot(test.step()), house_at(figure.face()));
        let wanted = self.wanted(figure);
        // Where walls had to be adjusted, another way of closing may give another total.
        let is_one = test.range().is_some_and(|range| range.low == range.high);
        let closed = match is_one && self.is_adjusted_to_feet() {
            true => " and closed as here",
            false => "",
        };
        let rounded = format!("rounded to the {foot}{closed}, {house}");
        let size = |range: Range| range_size(range, self.is_metric());
        let usual = test.range().map(|range| match range.low == range.high {
            true => format!("is {}", size(range)),
            false => format!("can be {}", size(range)),
        });
        let widest = test.widest();
        let widest_size = widest.map_or_else(|| "not stated".to_owned(), size);
        if let Some(between) = test.between() {
            return Some(self.nothing_between(figure, answer, between));
        }
        Some(match (answer, usual) {
            // The same area twice would only be longer.
            (CouldExplain::Yes, Some(usual))
                if not_explained(figure) == 0 && is_one && without(figure).is_none() =>
            {
                format!(
                    "rounding alone would account for it: {rounded} {usual}, as {} says.",
                    the(figure)
                )
            }
            (CouldExplain::Yes, Some(usual)) if not_explained(figure) == 0 => {
                format!(
                    "rounding alone would account for it: {rounded} {usual}, and {wanted} fits."
                )
            }
            (CouldExplain::Yes, Some(usual)) => format!(
                "rounding alone could explain it, if walls near the half {} went the other way: {rounded} {usual}, and {wanted} fits.",
                if test.step() == Step::HalfFoot { "step" } else { "foot" }
            ),
            (CouldExplain::OnlyAgainst, _) if !test.closes() => format!(
                "rounding could account for it: {rounded} does not close, so that a wall has to be moved; with walls rounded either way it can be {widest_size}, and {wanted} fits that."
            ),
            (CouldExplain::OnlyAgainst, usual) => {
                let usual = usual.map(|usual| format!(" {rounded} {usual};")).unwrap_or_default();
                format!(
                    "rounding would account for it only if walls were misrounded:{usual} with walls rounded either way it can be {widest_size}, and {wanted} fits that."
                )
            }
            (CouldExplain::No, usual) => {
                let widest = widest?;
                let (most, limit) = if test.wanted() > widest.high {
                    ("at most", widest.high)
                } else {
                    ("at least", widest.low)
                };
                // A limit that ordinary rounding reaches is stated only once.
                let is_new = test.range().is_some_and(|range| {
                    let edge = if test.wanted() > widest.high { range.high } else { range.low };
                    edge.whole_sq_ft() != limit.whole_sq_ft()
                });
                let usual = usual.filter(|_| is_new).map(|usual| format!("{usual}, and "));
                let usual = usual.unwrap_or_else(|| "is ".to_owned());
                // Rounding every wall one way may move a wall that follows from the others by more than a foot.
                let names_rounding = figure
                    .explanations()
                    .reported()
                    .any(|one| matches!(one.cause, Cause::Rounding(_)));
                let how = match names_rounding {
                    true => "with each wall within a foot of its length",
                    false => "however each wall is rounded, up or down",
                };
                format!(
                    "rounding alone cannot explain it: {rounded} {usual}{most} {} {how}; {wanted_is}.",
                    number_or_size(limit, self.is_metric()),
                    wanted_is = self.is(figure)
                )
            }
            (CouldExplain::Yes, None) => return None,
        })
    }

    /// The sentence on whether rounding can explain a figure that does not say how its walls are rounded:
    /// `If its walls were rounded to the foot, ...`.
    fn if_rounded(&self, figure: &Figure, answer: CouldExplain) -> Option<String> {
        let test = figure.rounding_test();
        let house = house_at(figure.face());
        let widest = test.widest()?;
        let size = |range: Range| range_size(range, self.is_metric());
        let usual = size(test.range().unwrap_or(widest));
        let could_be = format!("If its walls were rounded to the foot, {house} could be");
        let given = format!("{could_be} {usual}");
        let either_way = format!("{} with walls rounded either way", size(widest));
        let wanted = self.wanted(figure);
        let in_two = |range: Range, between: Between| in_two(range, between, self.is_metric());
        Some(match (answer, test.between(), test.range()) {
            (CouldExplain::Yes, Some(between), usual) => {
                let usual = usual.unwrap_or(widest);
                format!("{could_be} {}; {wanted} is neither.", in_two(usual, between))
            }
            (CouldExplain::OnlyAgainst, Some(between), Some(_)) => format!(
                "{given} as a rule, and {} with walls rounded either way; {wanted} is neither.",
                in_two(widest, between)
            ),
            (CouldExplain::Yes, ..) => format!("{given}; {wanted} fits."),
            (CouldExplain::OnlyAgainst, _, Some(_)) => {
                format!("{given}, and {either_way}; {wanted} fits only that.")
            }
            (CouldExplain::OnlyAgainst, ..) => {
                format!("{given} with walls rounded either way; {wanted} fits.")
            }
            (CouldExplain::No, ..) => {
                format!(
                    "{given}; {}, however each wall is rounded, up or down.",
                    self.does_not_fit(figure)
                )
            }
        })
    }

    /// Whether a counted wall had to leave its own rounding to the foot so that its outline closes.
    pub(crate) fn is_adjusted_to_feet(&self) -> bool {
        let counted = (0..self.house.spaces.len()).filter(|&i| self.house.spaces[i].counted);
        counted.into_iter().any(|space| {
            let rows = self.areas.side_rows(space).into_iter().enumerate();
            rows.into_iter().any(|(side, figures)| {
                let alone = self.areas.outside_length(space, side);
                let alone = alone.map(|alone| alone.rounded(Step::WholeFoot, self.settings.halves));
                alone.zip(figures.whole_foot).is_some_and(|(alone, used)| alone != used)
            })
        })
    }

    /// A sentence for a record whose walls are stated more finely than to the foot: how much that rounding changes
    /// this house.
    fn finely_rounded(&self, figure: &Figure, step: Step) -> String {
        let step = if step == Step::Inch { "inch" } else { "tenth of a foot" };
        let unit = if self.is_metric() { "sq m" } else { "sq ft" };
        let size = figure.rounding_test().typical_of_own().map(|typical| {
            let size = off_by(typical, self.is_metric());
            format!("; rounding to it typically changes a house like this by ± {size} {unit}")
        });
        format!(
            "The {}'s walls are stated to the {step}{}.",
            figure.word(),
            size.unwrap_or_default()
        )
    }

    /// The figure as the subject of a comparison: `the record, 1,877,`.
    fn wanted(&self, figure: &Figure) -> String {
        let wanted = number_or_size(figure.rounding_test().wanted(), self.is_metric());
        let less = without(figure).map(|names| format!(" without {names}")).unwrap_or_default();
        match self.is_metric() && less.is_empty() {
            // Both units once more would hide the comparison.
            true => the(figure),
            false => format!("{}{less}, {wanted},", the(figure)),
        }
    }

    /// The figure compared, in words: `the record is 1,877`; `without the rec room the record is 2,592`.
    fn is(&self, figure: &Figure) -> String {
        let wanted = number_or_size(figure.rounding_test().wanted(), self.is_metric());
        let less = without(figure).map(|names| format!("without {names} ")).unwrap_or_default();
        format!("{less}{} is {wanted}", the(figure))
    }

    fn does_not_fit(&self, figure: &Figure) -> String {
        format!("{} does not fit", self.wanted(figure))
    }

    /// Says that no outline gives a figure although some give less and some more.
    fn nothing_between(&self, figure: &Figure, answer: CouldExplain, between: Between) -> String {
        let way = match answer {
            CouldExplain::OnlyAgainst => "no way of rounding these walls",
            _ => "no ordinary rounding of these walls",
        };
        let [below, above] =
            [between.below, between.above].map(|area| number_or_size(area, self.is_metric()));
        format!(
            "rounding alone cannot explain it: {way} to the {} gives a total between {below} and {above}, and {}.",
            foot(figure.rounding_test().step()),
            self.is(figure)
        )
    }
}

/// Whether the typical size of rounding agrees with the conclusion about it: a gap that rounding could explain is
/// about as large, one that it cannot is larger. Where only some totals within the range are impossible, or the
/// figure has its own lengths, the size would suggest the opposite.
#[expect(clippy::float_arithmetic, reason = "a typical size is a float")]
fn agrees_with(figure: &Figure, typical: f64) -> bool {
    let test = figure.rounding_test();
    if figure.line(BridgeStep::RecordedSides).is_some() || test.between().is_some() {
        return false;
    }
    // What is typical of such a house is not said of one whose own walls cannot change it as much.
    let changes = |area: Area| (area - figure.measured()).sq_ft();
    let can_be = |range: Range| changes(range.low) <= -typical && typical <= changes(range.high);
    if !test.range().is_some_and(can_be) {
        return false;
    }
    let apart = (test.wanted() - figure.measured()).sq_ft().abs();
    match test.could_explain() {
        Some(CouldExplain::Yes) => apart < typical + 0.5,
        Some(CouldExplain::No) => apart > typical,
        _ => false,
    }
}

/// Says that a figure equals the measured area, and what its steps then mean.
fn agreement(figure: &Figure) -> &'static str {
    let has_no_steps = figure.lines_in_sq_ft().iter().all(|line| *line == 0);
    let assumed = figure.is_record() && !figure.says_rule();
    let only_rounding = figure.lines().iter().all(|line| {
        matches!(line.step(), BridgeStep::Rounding | BridgeStep::NotExplained)
            || line.area().whole_sq_ft() == 0
    });
    match (has_no_steps, assumed && only_rounding) {
        (true, _) => "They agree to the square foot.",
        (_, true) => {
            "They agree to the square foot; the steps matter only if the office rounds its walls."
        }
        _ => "They agree to the square foot, since the steps cancel.",
    }
}

fn foot(step: Step) -> &'static str {
    if step == Step::HalfFoot { "half foot" } else { "foot" }
}

fn house_at(face: Face) -> &'static str {
    match face {
        Face::Outside => "this house",
        Face::Frame => "this house, measured at the frame,",
        Face::Inside => "this house, measured inside,",
    }
}

/// A range with nothing between two of its totals: `1,741, or 1,762 to 1,800`.
pub(super) fn in_two(range: Range, between: Between, is_metric: bool) -> String {
    let lower = range_size(Range { low: range.low, high: between.below }, is_metric);
    let upper = range_size(Range { low: between.above, high: range.high }, is_metric);
    format!("{lower}, or {upper}")
}

/// What the figure says it counts beyond the rule, which the comparison leaves out.
fn without(figure: &Figure) -> Option<String> {
    let is_less = figure.rounding_test().wanted() != figure.area();
    let counting = figure.line(BridgeStep::Counting).filter(|line| !line.is_supported());
    counting.filter(|_| is_less).map(|line| words::all_named(line.counted()))
}
