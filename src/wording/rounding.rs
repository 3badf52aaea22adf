//! Says whether rounding alone can explain a figure; each sentence is made from the comparison it states.

use crate::areas::is_in_total;
use crate::areas::range::Range;
use crate::diagnostic::words;
use crate::geometry::partition::Cut;
use crate::house::{Face, SideRule};
use crate::reconcile::cause::Cause;
use crate::reconcile::settings::RoundingTaken;
use crate::reconcile::{Between, BridgeStep, CouldExplain, Figure};
use crate::units::area::Area;
use crate::units::decimal::thousands;
use crate::units::length::{Length, Step};
use crate::wording::accounts::asks_the_office;
use crate::wording::products::product;
use crate::wording::request::how_closely;
use crate::wording::sentences::{Sentences, capital, the};
use crate::wording::size::{number_or_size, off_by, range_beside, range_size, size_of_sq_ft};
use crate::wording::step_lines::not_explained;

impl Sentences<'_> {
    /// The conclusion about rounding, in a sentence; empty if there is nothing to add.
    pub(crate) fn answer(&self, figure: &Figure) -> String {
        let rest = not_explained(figure);
        if figure.agreement().agrees() {
            return self.agreement(figure);
        }
        if figure.measured_like_figure().whole_sq_ft() == 0 {
            return String::new();
        }
        let to_feet = matches!(
            figure.side_rule(),
            SideRule::Step(Step::WholeFoot | Step::HalfFoot) | SideRule::Unknown
        );
        let test = if rest == 0 && !to_feet { None } else { self.rounding_alone(figure) };
        let listed = self.listed_as_much(figure, rest);
        test.into_iter().chain(self.evidence(figure)).chain(listed).collect::<Vec<_>>().join(" ")
    }

    /// Says that a figure agrees with the house measured the figure's own way, and what its steps then mean.
    fn agreement(&self, figure: &Figure) -> String {
        let how = how_closely(figure, self.units_of(figure));
        let agree = match self.taken_as(figure).is_empty() {
            true => format!("They agree {how}"),
            false => format!("They agree {how}, taken the same way"),
        };
        let changes = |step: BridgeStep| {
            let mut lines = figure.lines().iter().zip(figure.lines_in_sq_ft());
            lines.any(|(line, sq_ft)| line.step() == step && sq_ft != 0)
        };
        let is_assumed = figure.is_record() && !figure.says_rule();
        if is_assumed && changes(BridgeStep::Rounding) {
            return format!(
                "{agree}; the row of rounding matters only if the office rounds its walls."
            );
        }
        match changes(BridgeStep::RecordedSides) {
            true => format!("{agree}, although {}'s own lengths give another area.", the(figure)),
            // The headline says so.
            false => String::new(),
        }
    }

    /// Whether it makes sense to ask about walls rounded to feet: not where the figure is in square meters and does
    /// not say so itself.
    pub(crate) fn is_asked_about_feet(&self, figure: &Figure) -> bool {
        !figure.is_metric() || figure.says_rule()
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
            let ask = match self.is_for_the_office() {
                true if !asks_the_office(figure) => "it is not known",
                true => "please state",
                false => "ask",
            };
            format!(
                "The record lists {} at {}, which is exactly what is not explained: {ask} whether the total includes it.",
                words::one_of(&names),
                size_of_sq_ft(rest, self.is_metric())
            )
        })
    }

    fn rounding_alone(&self, figure: &Figure) -> Option<String> {
        let test = figure.rounding_test();
        if !self.is_asked_about_feet(figure) {
            return None;
        }
        // The figure's own lengths are a step that says it all.
        let is_own = figure.line(BridgeStep::RecordedSides).is_some();
        let is_silent = self.is_for_the_office() && is_own && not_explained(figure) == 0;
        if is_silent && test.could_explain() == Some(CouldExplain::No) {
            // The later page with totals on both sides of it would read as another explanation.
            return test.between().map(|between| {
                format!(
                    "Rounding each wall to the foot, without {}'s own lengths, comes no nearer than {} and {}; {}.",
                    the(figure),
                    number_or_size(between.below, self.is_metric()),
                    number_or_size(between.above, self.is_metric()),
                    self.is(figure)
                )
            });
        }
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
        match figure.side_rule() {
            SideRule::Step(step @ (Step::Inch | Step::TenthFoot)) if figure.says_rule() => {
                return Some(self.finely_rounded(figure, step));
            }
            _ => {}
        }
        if answer == CouldExplain::No && self.all_but_little(figure).is_some() {
            return None;
        }
        let said = self.could_or_not(figure, answer)?;
        // The figure's own lengths are a step of their own, so this is about rounding without them.
        let said = match figure.line(BridgeStep::RecordedSides) {
            Some(_) => format!("Leaving the {}'s own lengths aside, {said}", figure.word()),
            None => capital(&said),
        };
        // A page has the range alone.
        let is_told = figure.is_record() && !self.is_for_the_office();
        let typical = test.typical().filter(|_| is_told);
        let typical = typical.filter(|&typical| agrees_with(figure, typical)).map(|typical| {
            let unit = if self.is_metric() { "sq m" } else { "sq ft" };
            format!(
                " Rounding to the {} typically changes a house like this by ± {} {unit}.",
                foot(test.step()),
                off_by(typical, self.is_metric())
            )
        });
        let products = self.in_whole_feet_worked(figure).unwrap_or_default();
        Some(format!("{said}{products}{}", typical.unwrap_or_default()))
    }

    /// The products of whole feet that give a figure, if they are few: ` In whole feet: 43 × 13 + 40 × 13 = 1,079 sq ft.`
    fn in_whole_feet_worked(&self, figure: &Figure) -> Option<String> {
        const MOST: usize = 3;
        let is_rounding = figure.rounding_test().step() == Step::WholeFoot
            && figure.rounding_test().could_explain() == Some(CouldExplain::Yes);
        if is_rounding && not_explained(figure) != 0 {
            return self.in_other_feet_worked(figure);
        }
        let counted = (0..self.house.spaces.len()).filter(|&i| is_in_total(self.house, i, false));
        let cuts = counted.map(|i| self.areas.spaces[i].whole_foot().cuts());
        let cuts: Vec<Cut> = cuts.collect::<Option<Vec<_>>>()?.into_iter().flatten().collect();
        let is_few = (1..=MOST).contains(&cuts.len())
            && cuts.iter().all(|cut| matches!(cut, Cut::Rectangle { .. }));
        if !is_rounding || !is_few || cuts.iter().map(Cut::area).sum::<Area>() != figure.area() {
            return None;
        }
        let terms = cuts.iter().filter_map(|cut| match *cut {
            Cut::Rectangle { east, north } => {
                Some(product([east.max(north), east.min(north)], false, Length::FOOT))
            }
            Cut::Triangle { .. } | Cut::Segment { .. } => None,
        });
        let terms = terms.collect::<Vec<String>>().join(" + ");
        let total = thousands(figure.area().whole_sq_ft());
        Some(format!(" In whole feet: {terms} = {total} sq ft."))
    }

    /// The same for a house of one rectangle whose walls, each rounded to one of its two next feet as far as the office
    /// may have read it so, give the figure in one way only: ` In whole feet: 30 × 21 = 630 sq ft.`
    fn in_other_feet_worked(&self, figure: &Figure) -> Option<String> {
        let [(_, one), (_, other)] = self.other_feet(figure)?;
        let total = thousands(figure.area().whole_sq_ft());
        let (one, other) = (one.max(other), one.min(other));
        Some(format!(" In whole feet: {one} × {other} = {total} sq ft."))
    }

    /// The two lengths of a house of one rectangle, each with the one of its two next feet, as far as the office may have read
    /// it so, that gives the figure; `None` where that is not one way alone.
    pub(super) fn other_feet(&self, figure: &Figure) -> Option<[(Length, i64); 2]> {
        let mut counted =
            (0..self.house.spaces.len()).filter(|&i| is_in_total(self.house, i, false));
        let space = counted.next().filter(|_| counted.next().is_none())?;
        let is_parent = |other: &crate::house::Space| other.parent == Some(space);
        let is_plain = figure.rounding_test().wanted() == figure.area()
            && figure.face() == Face::Outside
            && self.house.spaces[space].sides.len() == 4
            && !self.house.spaces.iter().any(is_parent);
        let length = |side: usize| self.areas.outside_length(space, side).filter(|_| is_plain);
        let sides = [length(0)?, length(1)?, length(2)?, length(3)?];
        if sides[0] != sides[2] || sides[1] != sides[3] {
            return None;
        }
        let foot = Length::FOOT.nm();
        let most = (foot >> 1) + self.settings.reading.nm();
        let feet = |length: Length| {
            let below = length.nm().div_euclid(foot);
            [below, below + 1].into_iter().filter(move |n| (n * foot - length.nm()).abs() <= most)
        };
        let all = feet(sides[0]).flat_map(|one| feet(sides[1]).map(move |other| (one, other)));
        let wanted = figure.area().whole_sq_ft();
        let mut fitting = all.filter(|(one, other)| one * other == wanted);
        let (one, other) = fitting.next().filter(|_| fitting.next().is_none())?;
        Some([(sides[0], one), (sides[1], other)])
    }

    /// Whether rounding could explain the figure, as the end of a sentence.
    fn could_or_not(&self, figure: &Figure, answer: CouldExplain) -> Option<String> {
        let test = figure.rounding_test();
        let foot = foot(test.step());
        let house = match (figure.face(), without(figure)) {
            (Face::Outside, Some(names)) => format!("this house without {names}"),
            (face, _) => house_at(face).to_owned(),
        };
        let wanted = self.wanted(figure);
        // Where walls had to be adjusted, another way of closing may give another total.
        let is_one = test.range().is_some_and(|range| range.low == range.high);
        let closed = match is_one && self.is_adjusted_to_feet() {
            true => ", with walls adjusted so that they meet",
            false => "",
        };
        let rounded = format!("rounded to the {foot}{closed}, {house}");
        let size = |range: Range| range_size(range, self.is_metric());
        let usual = test.range().map(|range| match (range.low == range.high, test.between()) {
            (true, _) => format!("is {}", size(range)),
            (false, between) => format!("can be {}", self.usual_totals(figure, range, between)),
        });
        let widest = test.widest();
        let widest_size = widest.map_or_else(|| "not stated".to_owned(), size);
        // Another way of rounding that is named as a possible cause is not what this sentence is about.
        let named = figure.explanations().reported().find_map(|one| match one.cause {
            Cause::Rounding(rounding) => Some(rounding),
            _ => None,
        });
        let alone = match named {
            Some(_) => format!("rounding each wall to the nearest {foot}"),
            None => "rounding alone".to_owned(),
        };
        Some(match (answer, usual) {
            // The same area twice would only be longer.
            (CouldExplain::Yes, Some(usual))
                if not_explained(figure) == 0 && is_one && without(figure).is_none() =>
            {
                let near = self.nearest_to_the_half(test.step());
                let near = near.map(|near| format!(" {near}")).unwrap_or_default();
                format!(
                    "rounding alone {} explain it: {rounded} {usual}, as {} says.{near}",
                    self.would_or_could(figure),
                    the(figure)
                )
            }
            (CouldExplain::Yes, Some(usual)) if not_explained(figure) == 0 => {
                let would = self.would_or_could(figure);
                format!("{alone} {would} explain it: {rounded} {usual}, and {wanted} fits.")
            }
            (CouldExplain::Yes, Some(usual)) => format!(
                "{alone} could explain it, with {}: {rounded} {usual}, and {wanted} fits.",
                self.other_way(figure)
            ),
            (CouldExplain::OnlyAgainst, _) if !test.closes() && test.between().is_none() => {
                let here = test.range().map(|range| format!(", which here gives {}", size(range)));
                let here = here.unwrap_or_default();
                format!(
                    "rounding would explain it only if other walls than here were adjusted: rounded to the {foot}, these walls do not meet, so that one has to be adjusted{here}; with walls rounded either way {house} can be {widest_size}, and {wanted} fits that."
                )
            }
            (CouldExplain::OnlyAgainst, usual) => {
                let usual = usual.map(|usual| format!(" {rounded} {usual};")).unwrap_or_default();
                let alone = if named.is_some() { alone.as_str() } else { "rounding" };
                format!(
                    "{alone} would explain it only if walls were rounded against the rule:{usual} with walls rounded up or down against it, it can be {widest_size}, and {wanted} fits that."
                )
            }
            (CouldExplain::No, _) => {
                let by_half = self.by_the_half_foot(figure);
                let alone = match self.nearly_unrounded(figure).or(by_half.clone()) {
                    Some(_) => format!("rounding walls to the {foot}"),
                    None => alone,
                };
                let by_half = by_half.map(|half| format!(" {half}")).unwrap_or_default();
                if let Some(between) = test.between() {
                    let foot = foot.to_owned();
                    let how = match named {
                        Some(_) => format!("with each wall within a {foot} of its length"),
                        None => format!("however each wall is rounded to the {foot}, up or down"),
                    };
                    let nothing = self.nothing_between(figure, (&alone, &how), between);
                    return Some(format!("{nothing}{by_half}"));
                }
                let widest = widest?;
                let (most, limit) = if test.wanted() > widest.high {
                    ("at most", widest.high)
                } else {
                    ("at least", widest.low)
                };
                // Every wall rounded one way may take a wall that follows from the others further than a foot.
                let how = match named {
                    Some(_) => "with each wall within a foot of its length".to_owned(),
                    None => format!("however each wall is rounded to the {foot}, up or down"),
                };
                let [start, limit] =
                    [test.start(), limit].map(|area| number_or_size(area, self.is_metric()));
                let is = match start == limit {
                    true => format!("{how}, {house} is {most} {limit}"),
                    false => format!(
                        "{house} is {start} with each wall to {}; {how}, it is {most} {limit}",
                        self.fine()
                    ),
                };
                format!("{alone} cannot explain it: {is}; {}.{by_half}", self.is(figure))
            }
            (CouldExplain::Yes, None) => return None,
        })
    }

    /// Areas that are few enough to be listed instead of their range: three, or in two units two.
    pub(crate) fn listed_alone(&self, few: Vec<Area>) -> Vec<Area> {
        if self.is_metric() && few.len() > 2 { Vec::new() } else { few }
    }

    /// The areas that the rule gives for the walls of a figure: a range, each of them if they are few, or two ranges with
    /// nothing between them.
    fn usual_totals(&self, figure: &Figure, range: Range, between: Option<Between>) -> String {
        let few = self.listed_alone(figure.rounding_test().few());
        match between {
            _ if !few.is_empty() => one_of_few(&few, self.is_metric()),
            Some(between) => in_two(range, between, self.is_metric()),
            None => range_beside(range, figure.measured_like_figure(), self.is_metric()),
        }
    }

    /// The totals that a house can have however each wall is rounded to the foot, without those between the two that are
    /// nearest to a figure: `1,080 to 1,120, or 1,148`. `None` where the figure is not compared with these totals, or some
    /// rounding gives it.
    #[cfg(feature = "pages")]
    pub(crate) fn widest_around(&self, figure: &Figure, widest: Range) -> Option<String> {
        let test = figure.rounding_test();
        let is_of_these = test.step() == Step::WholeFoot && test.widest() == Some(widest);
        let between = test.between().filter(|_| is_of_these)?;
        Some(in_two(widest, between, self.is_metric()))
    }

    /// The sentence on whether rounding can explain a figure that does not say how its walls are rounded: `If its
    /// walls were rounded to the foot, ...`.
    fn if_rounded(&self, figure: &Figure, answer: CouldExplain) -> Option<String> {
        let test = figure.rounding_test();
        let widest = test.widest()?;
        let range = test.range().unwrap_or(widest);
        let size = |range: Range| range_size(range, self.is_metric());
        let usual = match test.range() {
            Some(range) => self.usual_totals(figure, range, None),
            None => size(range),
        };
        let could_be = match range.low.whole_sq_ft() == range.high.whole_sq_ft() {
            true => "would be",
            false => "could be",
        };
        let house = house_at(figure.face());
        let could_be = format!("If its walls were rounded to the foot, {house} {could_be}");
        let given = format!("{could_be} {usual}");
        let either_way = format!("{} with walls misrounded, up or down", size(widest));
        let wanted = self.wanted(figure);
        let in_two = |range: Range, between: Between| in_two(range, between, self.is_metric());
        Some(match (answer, test.between(), test.range()) {
            (CouldExplain::Yes, ..) => format!("{given}; {wanted} fits."),
            (CouldExplain::OnlyAgainst, Some(between), Some(usual)) => format!(
                "{could_be} {}, and {either_way}; {wanted} fits only that.",
                self.usual_totals(figure, usual, Some(between))
            ),
            (CouldExplain::OnlyAgainst, _, Some(_)) => {
                format!("{given}, and {either_way}; {wanted} fits only that.")
            }
            (CouldExplain::OnlyAgainst, ..) => {
                format!("{given} with walls rounded either way; {wanted} fits.")
            }
            (CouldExplain::No, Some(between), Some(_)) => format!(
                "{given} as a rule, and {} with walls rounded either way; {wanted} is neither.",
                in_two(widest, between)
            ),
            (CouldExplain::No, Some(between), None) => format!(
                "{could_be} {} with walls rounded either way; {wanted} is neither.",
                in_two(widest, between)
            ),
            (CouldExplain::No, None, _) => {
                format!(
                    "{given}; {}, however each wall is rounded, up or down.",
                    self.does_not_fit(figure)
                )
            }
        })
    }

    /// Whether a counted wall had to leave its own rounding to the foot so that its outline closes.
    pub(crate) fn is_adjusted_to_feet(&self) -> bool {
        !self.adjusted_to_feet().is_empty()
    }

    /// The counted walls that had to leave their own rounding to the foot so that their outlines close: the space and the
    /// side, and the length used with the one that the wall would have alone.
    pub(super) fn adjusted_to_feet(&self) -> Vec<((usize, usize), [Length; 2])> {
        let counted = (0..self.house.spaces.len()).filter(|&i| self.house.spaces[i].counted);
        let moved = counted.flat_map(|space| {
            let rows = self.areas.side_rows(space).into_iter().enumerate();
            rows.filter_map(move |(side, figures)| {
                let alone = self.areas.outside_length(space, side)?;
                let alone = alone.rounded(Step::WholeFoot, self.settings.halves);
                let used = figures.whole_foot.filter(|used| *used != alone)?;
                Some(((space, side), [used, alone]))
            })
        });
        moved.collect()
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
        match without(figure) {
            // Both units once more would hide the comparison.
            None if self.is_metric() => the(figure),
            None => format!("{}, {wanted},", the(figure)),
            Some(names) => {
                format!("{} less {names}, {}{wanted},", the(figure), self.less_counted(figure))
            }
        }
    }

    /// The figure compared, in words: `the record is 1,877`; `the record less the rec room is 3,094 − 550 = 2,544`.
    fn is(&self, figure: &Figure) -> String {
        let wanted = number_or_size(figure.rounding_test().wanted(), self.is_metric());
        match without(figure) {
            None => format!("{} is {wanted}", the(figure)),
            Some(names) => {
                format!("{} less {names} is {}{wanted}", the(figure), self.less_counted(figure))
            }
        }
    }

    /// How the figure without what it says it counts is worked out, before it: `3,094 − 550 = `. Empty in two units.
    fn less_counted(&self, figure: &Figure) -> String {
        let (all, left) =
            (figure.area().whole_sq_ft(), figure.rounding_test().wanted().whole_sq_ft());
        match self.is_metric() {
            true => String::new(),
            false => format!("{} \u{2212} {} = ", thousands(all), thousands(all - left)),
        }
    }

    fn does_not_fit(&self, figure: &Figure) -> String {
        format!("{} does not fit", self.wanted(figure))
    }

    /// Says that rounding to the half foot gives the figure, or might, where it is near enough.
    fn by_the_half_foot(&self, figure: &Figure) -> Option<String> {
        let is_it = |one: &&crate::reconcile::explanation::Explanation| {
            one.cause == Cause::Rounding(RoundingTaken::HalfFoot) && one.fits()
        };
        let mut all = figure.explanations().list().iter();
        let one = all.find(is_it).filter(|_| figure.rounding_test().step() == Step::WholeFoot)?;
        if !one.gives_the_figure() {
            return Some("Rounding to the half foot might.".to_owned());
        }
        Some(format!(
            "With each wall to the half foot it would be {}, as {} says.",
            number_or_size(figure.rounding_test().wanted(), self.is_metric()),
            the(figure)
        ))
    }

    /// How many square feet a figure is from the nearest possible total, where one wall closed otherwise makes the
    /// difference.
    fn next_to(&self, figure: &Figure, between: Between) -> Option<i64> {
        const NEXT_TO: i64 = 3;
        let wanted = figure.rounding_test().wanted().whole_sq_ft();
        let apart = [between.below, between.above].map(|one| (one.whole_sq_ft() - wanted).abs());
        let nearest = apart[0].min(apart[1]);
        (nearest <= NEXT_TO && !self.is_metric()).then_some(nearest)
    }

    /// Whether the sentence on rounding says that it comes next to the figure.
    pub(super) fn is_next_to_a_total(&self, figure: &Figure) -> bool {
        let test = figure.rounding_test();
        self.is_asked_about_feet(figure)
            && figure.line(BridgeStep::RecordedSides).is_none()
            && test.could_explain() == Some(CouldExplain::No)
            && test.between().is_some_and(|between| self.next_to(figure, between).is_some())
    }

    /// Says that no outline gives a figure although some give less and some more.
    fn nothing_between(
        &self,
        figure: &Figure,
        (alone, how): (&str, &str),
        between: Between,
    ) -> String {
        let answer = match self.next_to(figure, between) {
            Some(nearest) => format!("comes within {nearest} sq ft of it"),
            None => "cannot explain it".to_owned(),
        };
        format!(
            "{alone} {answer}: {how}, the nearest possible totals are {} and {}; {}.",
            number_or_size(between.below, self.is_metric()),
            number_or_size(between.above, self.is_metric()),
            self.is(figure),
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
    let changes = |area: Area| (area - test.start()).sq_ft();
    let can_be = |range: Range| changes(range.low) <= -typical && typical <= changes(range.high);
    if !test.range().is_some_and(can_be) {
        return false;
    }
    let apart = (test.wanted() - test.start()).sq_ft().abs();
    match test.could_explain() {
        Some(CouldExplain::Yes) => apart < typical + 0.5,
        Some(CouldExplain::No) => apart > typical,
        _ => false,
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

/// Areas with nothing between them: `1,204 or 1,232`.
pub(crate) fn one_of_few(few: &[Area], is_metric: bool) -> String {
    let each = few.iter().map(|&area| number_or_size(area, is_metric));
    words::list_or(&each.collect::<Vec<String>>())
}

/// A range with nothing between two of its totals: `1,741, or 1,762 to 1,800`; the range alone where those are not in it.
pub(super) fn in_two(range: Range, between: Between, is_metric: bool) -> String {
    if between.below < range.low || between.above > range.high {
        return range_size(range, is_metric);
    }
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
