//! A figure in plain blocks: the sentence, the steps, what is possible, and how certain the measured area is.

use crate::areas::is_in_total;
use crate::areas::range::Range;
use crate::diagnostic::words;
use crate::house::{LengthSource, SideRule};
use crate::reconcile::{BridgeStep, Explanation, Figure, Line, Reconciliation};
use crate::units::area::Area;
use crate::units::decimal::thousands;
use crate::units::length::Step;
use crate::wording::accounts::Accounts;
use crate::wording::block::Block;
use crate::wording::rounding::{in_two, one_of_few};
use crate::wording::sentences::{SMALLER_RECORD_ON_A_PAGE, Sentences, capital, the, whole};
use crate::wording::size::{
    number_alone, number_or_size, range_beside, step, step_alone, sum_as_printed, typed_size,
};

impl Sentences<'_> {
    /// The opening: each figure compared with the measured area, and what follows from that alone.
    pub(crate) fn opening(&self, reconciliation: &Reconciliation) -> Vec<Block> {
        let figures = reconciliation.figures();
        let mut blocks: Vec<Block> =
            self.statements(figures).into_iter().map(Block::Statement).collect();
        blocks.extend(self.warned(figures).into_iter().map(Block::Statement));
        let own = figures.iter().filter_map(|figure| self.own_sketch(figure));
        blocks.extend(own.map(Block::Paragraph));
        blocks.extend(self.remarks(reconciliation).into_iter().map(Block::Paragraph));
        blocks
    }

    /// Notes that apply to all figures and come before them: what repeats, what may be missing, which settings are
    /// unusual.
    pub(crate) fn remarks(&self, reconciliation: &Reconciliation) -> Vec<String> {
        let repeated = self.repeated(reconciliation.figures());
        let unusual = self.unusual_settings(Some(reconciliation.weights()));
        let missing = self.missing_walls(reconciliation);
        repeated.into_iter().chain(missing).chain(unusual).collect()
    }

    /// Warnings that must not be missed: that the record is smaller, or that the size is unlikely.
    pub(crate) fn warned(&self, figures: &[Figure]) -> Vec<String> {
        self.caution(figures).into_iter().chain(self.unlikely_size()).collect()
    }

    /// The same warnings for a page that may reach the office: a smaller record in one short sentence.
    pub(crate) fn warned_on_a_page(
        &self,
        figures: &[Figure],
    ) -> (Option<&'static str>, Option<String>) {
        let is_smaller = figures.iter().any(Figure::is_smaller_record);
        (is_smaller.then_some(SMALLER_RECORD_ON_A_PAGE), self.unlikely_size())
    }

    /// The heading of the steps.
    pub(crate) fn steps_title(&self, figure: &Figure) -> String {
        let title = figure.title().map(|title| format!(" ({title})")).unwrap_or_default();
        let from = match self.obtained() {
            LengthSource::Plan => "the plan's lengths",
            LengthSource::Record => "the record's lengths",
            LengthSource::Estimated => "the estimated area",
            LengthSource::Measured | LengthSource::Closing => "the measured area",
        };
        format!("From {from} to {}{title}, step by step", the(figure))
    }

    /// The steps from measured area to figure, one row each; as printed they add up.
    pub(crate) fn steps(&self, figure: &Figure) -> Vec<Block> {
        // The statement compares with them.
        let without = without_counted(figure).map(|names| format!(", without {names}"));
        let without = without.unwrap_or_default();
        let start = format!(
            "{}{without}: {}, outside{}",
            self.start_of_steps(),
            self.settings.fine.spoken(),
            self.shared_walls()
        );
        let mut blocks = vec![Block::row(start, self.total(figure.measured()))];
        blocks.extend(self.taken_the_same_way(figure).map(Block::Note));
        let mut at = figure.measured();
        let more = self.more_rounding(figure);
        for line in self.told_lines(figure) {
            let before = at;
            at = at + self.area_of_step(figure, line);
            let changes = self.changed(before, at);
            blocks.push(Block::row(self.line_name(figure, line), changes));
            blocks.extend(self.could_add(figure, line, before).map(Block::Note));
            blocks.extend(self.adjusted(figure, line).map(Block::Note));
            if let Some(more) = more.filter(|_| line.step() == BridgeStep::Rounding) {
                let nearest = before + line.area();
                let parts = [(before, nearest), (nearest, nearest + more.area())];
                let [rule, other] = parts.map(|(from, to)| self.changed(from, to));
                let foot = self.foot_of(figure);
                blocks.push(Block::Note(format!(
                    "{rule} with each wall to the nearest {foot}, and {other} more with {}",
                    self.other_way(figure)
                )));
            }
            blocks.extend(self.part_worked(line).map(Block::Note));
            blocks.extend(self.level_worked(line).map(Block::Note));
            blocks.extend(self.counted_at(figure, line).map(Block::Note));
            if line.step() == BridgeStep::RecordedSides {
                blocks.extend(self.shares(figure, before, at).into_iter().map(Block::Note));
            }
        }
        blocks.push(Block::total(capital(figure.name()), self.total_of(figure)));
        blocks.extend(self.headline_difference(figure).map(Block::Note));
        blocks
    }

    /// The steps that are told. An office is not told of a face that is assumed where it changes nothing.
    pub(crate) fn told_lines<'b>(&self, figure: &'b Figure) -> impl Iterator<Item = &'b Line> {
        let is_for_the_office = self.is_for_the_office();
        let is_told = move |(line, sq_ft): &(&Line, i64)| {
            *sq_ft != 0 || line.step() != BridgeStep::Face || !is_for_the_office
        };
        let is_with_rounding = |line: &&Line| self.is_told_with_rounding(figure, line);
        let lines = figure.told_lines().filter(is_told).map(|(line, _)| line);
        let lines: Vec<&Line> = lines.filter(|line| !is_with_rounding(line)).collect();
        lines.into_iter()
    }

    /// The difference that the headline gives, where the steps begin at another area than it compares: `the difference,
    /// both with the rec room: 3,094 − 2,669 = 425`.
    fn headline_difference(&self, figure: &Figure) -> Option<String> {
        self.taken_the_same_way(figure)?;
        let (area, same) = (figure.area(), figure.measured_like_figure());
        let worked = |is_metric: bool| {
            let apart = step_alone(same, area, is_metric);
            let [area, same] = [area, same].map(|area| number_alone(area, is_metric));
            format!("{area} \u{2212} {same} = {}", apart.trim_start_matches('+'))
        };
        let worked = match self.is_metric() {
            true => format!("{} sq m ({} sq ft)", worked(true), worked(false)),
            false => format!("{}{}", worked(false), self.unit()),
        };
        let taken = self.taken_as(figure).join(", ");
        let steps = self.counted_otherwise(figure).unwrap_or_default();
        Some(format!("the difference, both {taken}: {worked}{steps}"))
    }

    /// What the figure says that it counts, where the steps have another area of it than the headline: `, with 553 for the
    /// rec room; the steps have 550`.
    fn counted_otherwise(&self, figure: &Figure) -> Option<String> {
        let line = figure.line(BridgeStep::Counting).filter(|line| !line.is_supported())?;
        let fine = (figure.measured_like_figure() - figure.measured()).whole_sq_ft();
        let told = figure.lines().iter().zip(figure.lines_in_sq_ft());
        let (_, step) = told.into_iter().find(|(line, _)| line.step() == BridgeStep::Counting)?;
        (fine != step && !self.is_metric()).then(|| {
            format!(
                ", with {} for {}; the rows have {}",
                self.number(fine),
                words::all_named(line.counted()),
                self.number(step)
            )
        })
    }

    /// What the steps begin with: on a page, where each row may be heard alone, with its noun.
    fn start_of_steps(&self) -> String {
        match self.is_for_the_office() {
            true => format!("{} area", self.area_word()),
            false => self.known().to_owned(),
        }
    }

    /// What a step changes; on a page with its unit, like every area of the steps.
    fn changed(&self, before: Area, after: Area) -> String {
        let changes = step(before, after, self.is_metric());
        if changes.ends_with([')', 't', 'm']) {
            changes
        } else {
            format!("{changes}{}", self.unit())
        }
    }

    /// The unit after a number of the steps that has none of its own: a terminal has one in the heads of its columns.
    fn unit(&self) -> &'static str {
        if self.is_for_the_office() { " sq ft" } else { "" }
    }

    /// An area at either end of the steps: in square feet, or in a metric file in both units.
    fn total(&self, area: Area) -> String {
        match self.is_metric() {
            true => number_or_size(area, true),
            false => format!("{}{}", number_or_size(area, false), self.unit()),
        }
    }

    /// A figure's area at the end of the steps, with the digits that were typed.
    fn total_of(&self, figure: &Figure) -> String {
        match self.is_metric() {
            true => typed_size(figure.typed(), true),
            false => format!("{}{}", whole(figure.area()), self.unit()),
        }
    }

    /// How the area compared in the opening statement follows from the first row of the steps:
    /// `with the rec room, the same way as the record: 2,168 + 553 = 2,721`; `None` if the two are equal or the figure
    /// states no terms of its own.
    pub(crate) fn taken_the_same_way(&self, figure: &Figure) -> Option<String> {
        let terms = self.taken_as(figure);
        let worked = self.same_way_worked(figure)?;
        Some(format!("{}, the same way as {}: {worked}", terms.join(", "), the(figure)))
    }

    /// The same sum alone: `2,168 + 553 = 2,721`.
    fn same_way_worked(&self, figure: &Figure) -> Option<String> {
        let (start, same) =
            (figure.measured().whole_sq_ft(), figure.measured_like_figure().whole_sq_ft());
        let sign = if same < start { "\u{2212}" } else { "+" };
        // What the figure counts stands in the table of areas with its own size.
        let is_counted = self.taken_as(figure).len() == 1
            && figure.line(BridgeStep::Counting).is_some_and(|line| !line.is_supported());
        let sum = |is_metric: bool| {
            let (from, to) = (figure.measured(), figure.measured_like_figure());
            let step = step_alone(from, to, is_metric);
            let step = step.trim_start_matches(['+', '\u{2212}']).to_owned();
            let own = number_alone((to - from).abs(), is_metric);
            let once = if is_counted && own != step { ", rounded once" } else { "" };
            let step = if is_counted { own } else { step };
            let (from, to) = (number_alone(from, is_metric), number_alone(to, is_metric));
            (format!("{from} {sign} {step} = {to}"), once)
        };
        let in_unit = |is_metric: bool, unit: &str| {
            let (sum, once) = sum(is_metric);
            format!("{sum}{unit}{once}")
        };
        (start != same && !self.taken_as(figure).is_empty()).then(|| match self.is_metric() {
            true => format!("{} ({})", in_unit(true, " sq m"), in_unit(false, " sq ft")),
            false => in_unit(false, ""),
        })
    }

    /// A note for the counting step of a figure with whole-foot walls: the area of the counted spaces to the whole
    /// foot, and by the finer rule as on the drawing. `None` if the two are equal.
    fn counted_at(&self, figure: &Figure, line: &Line) -> Option<String> {
        let to_feet = matches!(figure.side_rule(), SideRule::Step(Step::WholeFoot));
        if line.step() != BridgeStep::Counting || !to_feet {
            return None;
        }
        let counts = figure.explanations().reported().next().map(Explanation::counts);
        let spaces: Vec<usize> = match line.is_supported() {
            true => counts?.collect(),
            false => {
                let named = |i: &usize| line.counted().contains(&self.house.spaces[*i].name);
                (0..self.house.spaces.len()).filter(named).collect()
            }
        };
        if spaces.is_empty() {
            return None;
        }
        let areas = spaces.iter().map(|&space| &self.areas.spaces[space]);
        let parts: Vec<Area> = areas.clone().map(|areas| areas.net_tenth_foot).collect();
        let feet: Area = areas.clone().map(|areas| areas.net_whole_foot).sum();
        let fine: Area = parts.iter().copied().sum();
        let worked = self.worked_if_unlike(&parts, fine);
        let adds = line.area().whole_sq_ft();
        (adds == feet.whole_sq_ft() && fine.whole_sq_ft() != feet.whole_sq_ft()).then(|| {
            let [feet, fine] = [feet, fine].map(|area| self.total(area));
            format!("{feet} to the whole foot, {fine} to {}{worked}", self.fine())
        })
    }

    /// Areas with their decimals, in parentheses to follow their sum, where as whole numbers, as they stand on the
    /// drawing, they do not add up to it: ` (223.56 + 223.56)`. Empty if they do.
    fn worked_if_unlike(&self, parts: &[Area], sum: Area) -> String {
        let whole: i64 = parts.iter().map(|part| part.whole_sq_ft()).sum();
        let worked = (whole != sum.whole_sq_ft() && !self.is_metric())
            .then(|| sum_as_printed(parts, sum, false))
            .flatten();
        worked.map_or_else(String::new, |(numbers, _)| format!(" ({})", numbers.join(" + ")))
    }

    /// Whether rounding alone explains the gap, and what else is possible.
    pub(crate) fn possible(&self, figure: &Figure) -> Vec<Block> {
        self.rounding_said(figure).into_iter().chain(self.causes_said(figure)).collect()
    }

    /// Whether rounding alone explains the gap; `None` if there is nothing to say about it.
    pub(crate) fn rounding_said(&self, figure: &Figure) -> Option<Block> {
        Some(self.answer(figure)).filter(|answer| !answer.is_empty()).map(Block::Paragraph)
    }

    /// The other possible causes, and how to find out which applies.
    pub(crate) fn causes_said(&self, figure: &Figure) -> Vec<Block> {
        self.accounts(figure).map(Accounts::blocks).unwrap_or_default()
    }

    /// Who measured, how certain the measured area is, and what was not inspected.
    pub(crate) fn how_sure(&self) -> Vec<Block> {
        self.certainty().into_iter().map(Block::Paragraph).collect()
    }

    /// Who measured, when, with what and how precisely; one line for the Exhibit. Where an area is compared with a figure,
    /// where rounding leads is said with that area.
    pub(crate) fn measured_line(&self, figures: &[Figure]) -> String {
        let who =
            self.house.particulars.measured.as_ref().map(|measured| self.measured_by(measured));
        let close = self.only_from_a_plan().unwrap_or_else(|| match figures.is_empty() {
            true => self.plus_minus(),
            false => self.give_or_take(),
        });
        who.into_iter().chain([close]).collect::<Vec<_>>().join(" ")
    }

    /// Which area is compared with the first figure, and what other rules make of the walls; without a figure, the areas
    /// under both rules. Then what the area is the sum of.
    pub(crate) fn both_ways(&self, figures: &[Figure]) -> String {
        let gross = self.areas.gross();
        let figure = figures.first();
        let areas = match figure {
            Some(figure) => self.compared_with(figure),
            None => {
                let range = self.possible_range();
                format!(
                    "{}: {} with each wall to {}; {} with each wall to the whole foot{}.",
                    self.gross_at(),
                    self.size(gross.tenth_foot()),
                    self.fine(),
                    self.size(gross.whole_foot()),
                    range.map(|range| format!(" ({range})")).unwrap_or_default()
                )
            }
        };
        let sum = self.summed().map(|(sum, _)| format!(" {sum}.")).unwrap_or_default();
        let low = self.low_rule().map(|rule| format!(" {rule}.")).unwrap_or_default();
        let below = self.below_named(figure).unwrap_or_default();
        format!("{areas}{sum}{low}{below}")
    }

    /// Which of the areas is compared with a figure: `Compared with the record: 1,757 sq ft, gross area, outside measure
    /// (interior not seen), each wall to a tenth of a foot, as many appraisers do.` Then what it is by other rules.
    fn compared_with(&self, figure: &Figure) -> String {
        let is_metric = self.is_metric();
        let gross = self.areas.gross();
        let (fine, appraisers) = self.fine_of_appraisers();
        let comma = if fine.ends_with(',') { "" } else { "," };
        let other = self.other_closings_to_fine().map_or_else(String::new, |other| {
            match self.adjusted_to_fine() {
                Some(which) => format!(", with {which} adjusted so that the rounded walls meet; with another wall adjusted instead, it is {other}"),
                None => format!(", with walls adjusted so that they meet; adjusted another way, it is {other}"),
            }
        });
        let gross_at = format!(
            "{}, each wall to {fine}{comma} as {appraisers} do{other}",
            self.gross_at().replacen('G', "g", 1)
        );
        let compared = match self.same_way_worked(figure) {
            None => format!("{}, {gross_at}", self.size(gross.tenth_foot())),
            Some(worked) => {
                let unit = if is_metric { "" } else { " sq ft" };
                let start = number_or_size(figure.measured(), is_metric);
                let terms = self.taken_as(figure).join(", ");
                format!("{worked}{unit}, {terms}. The {start} is {gross_at}")
            }
        };
        let halves = self.half_foot_area(figure).map(|area| ("half foot", area));
        // Nobody has rounded the walls of a metric record to the foot.
        let is_asked = self.is_asked_about_feet(figure);
        let feet = is_asked.then(|| ("whole foot", gross.whole_foot()));
        // Where a sum is compared, its first part alone in whole feet would be one more area to keep apart.
        let feet = feet.filter(|_| self.same_way_worked(figure).is_none());
        let others: Vec<String> = halves
            .into_iter()
            .chain(feet)
            .enumerate()
            .map(|(i, (to, area))| match i {
                0 => format!(" With each wall to the {to} it is {}", self.size(area)),
                _ => format!("; to the {to}, {}", self.size(area)),
            })
            .collect();
        let others = match others.is_empty() {
            true => String::new(),
            false => format!("{}.", others.concat()),
        };
        format!("Compared with {}: {compared}.{others}", the(figure))
    }

    /// What the area above grade is the sum of, with what is drawn on another page named with it, and the levels that are
    /// in it: `House 1,282 + attic rooms 834 (page 2) = 2,116 sq ft`. The numbers add up as printed, whole or if they do
    /// not so with two decimals. `None` for a house of one space.
    fn summed(&self) -> Option<(String, Vec<usize>)> {
        /// With more spaces than this, the levels are added.
        const SPACES_MOST: usize = 4;
        let house = self.house;
        let counted = (0..house.spaces.len()).filter(|&i| is_in_total(house, i, false));
        let counted: Vec<usize> = counted.collect();
        let level = |space: usize| house.spaces[space].level;
        let mut levels: Vec<usize> = counted.iter().map(|&space| level(space)).collect();
        levels.sort_unstable();
        levels.dedup();
        let area = |space: usize| self.areas.spaces[space].net_tenth_foot;
        let parts: Vec<(&str, usize, Area)> = match counted.len() <= SPACES_MOST {
            true => counted
                .iter()
                .map(|&i| (house.spaces[i].name.as_str(), level(i), area(i)))
                .collect(),
            false => levels
                .iter()
                .map(|&on| {
                    let here = counted.iter().filter(|&&space| level(space) == on);
                    let all = here.map(|&space| area(space)).sum();
                    (house.levels[on].name.as_str(), on, all)
                })
                .collect(),
        };
        if parts.len() < 2 {
            return None;
        }
        let total = self.areas.gross().tenth_foot();
        let areas: Vec<Area> = parts.iter().map(|(.., area)| *area).collect();
        let (numbers, sum) = sum_as_printed(&areas, total, self.is_metric())?;
        let terms = parts.iter().zip(numbers).map(|((name, on, _), number)| {
            let page = self.in_brackets(self.pages_of_levels(std::iter::once(*on)));
            format!("{name} {number}{page}")
        });
        Some((format!("{} = {sum}", terms.collect::<Vec<String>>().join(" + ")), levels))
    }

    /// What counts below grade, by its names if they are few, preceded by a space: ` Wholly or partly below grade,
    /// not included: Family room, 564 sq ft (page 2).` Of what the figure says that it counts, that it does so. `None` if nothing does.
    fn below_named(&self, figure: Option<&Figure>) -> Option<String> {
        const FEW: usize = 2;
        let below = self.areas.below_grade()?;
        let house = self.house;
        let spaces = (0..house.spaces.len()).filter(|&i| is_in_total(house, i, true));
        let spaces: Vec<usize> = spaces.collect();
        let names: Vec<&str> = spaces.iter().map(|&i| house.spaces[i].name.as_str()).collect();
        let names = match names.len() <= FEW {
            true => format!("{}, ", words::all_of(&names)),
            false => String::new(),
        };
        let size = self.size(below.tenth_foot());
        let pages = self.in_brackets(self.pages_of(spaces.iter().copied()));
        let counting = figure.and_then(|figure| {
            let line = figure.line(BridgeStep::Counting).filter(|line| !line.is_supported())?;
            let is_counted = |&i: &usize| line.counted().contains(&house.spaces[i].name);
            spaces.iter().all(is_counted).then(|| the(figure))
        });
        Some(match counting {
            Some(figure) => {
                format!(" Wholly or partly below grade, counted by {figure}: {names}{size}{pages}.")
            }
            None => {
                format!(" Wholly or partly below grade, not included: {names}{size}{pages}.")
            }
        })
    }

    /// The levels that are drawn on other pages and not named with their page as a part of the area above grade or below
    /// it, each with its page, preceded by a space: ` Other levels: Attic, page 2.` `None` if there are none.
    #[cfg(feature = "pages")]
    pub(crate) fn other_levels(&self) -> Option<String> {
        let (_, mut told) = self.summed().unwrap_or_default();
        let below = (0..self.house.spaces.len()).filter(|&i| is_in_total(self.house, i, true));
        told.extend(below.map(|space| self.house.spaces[space].level));
        let is_drawn = |level: &usize| self.house.spaces.iter().any(|space| space.level == *level);
        let levels = (0..self.house.levels.len()).filter(is_drawn);
        let levels = levels.filter(|level| !told.contains(level));
        let named = levels.filter_map(|level| {
            let page = self.pages_of_levels(std::iter::once(level))?;
            Some(format!("{}, {page}", self.house.levels[level].name))
        });
        let named: Vec<String> = named.collect();
        let other = if named.len() == 1 { "Other level" } else { "Other levels" };
        (!named.is_empty()).then(|| format!(" {other}: {}.", named.join("; ")))
    }

    /// The figures except the first, each with its area: `the listing, 1,790; the plan, 1,468`. The total of the plan that
    /// the lengths are from is said to differ from them, if it does.
    #[cfg(feature = "pages")]
    pub(crate) fn other_figures(&self, figures: &[Figure]) -> String {
        const MOST: usize = 4;
        let others = figures.get(1..).unwrap_or_default();
        let told = others.iter().take(MOST).map(|figure| {
            let size = self.units_of(figure).typed_first(figure.typed());
            let whose = self.in_parentheses_at_face(figure);
            let is_own = self.obtained() == LengthSource::Plan && figure.word() == "plan";
            match is_own && !figure.agreement().agrees() {
                true => {
                    let apart =
                        self.units_of(figure).apart(figure.area(), figure.measured_like_figure());
                    format!(
                        "the plan's own total, {size}{whose}, which differs from its lengths by {apart}"
                    )
                }
                false => format!("{}, {size}{whose}", the(figure)),
            }
        });
        let mut told: Vec<String> = told.collect();
        told.extend((others.len() > MOST).then(|| format!("and {} more", others.len() - MOST)));
        told.join("; ")
    }

    /// The areas that the walls can give if rounded to the foot: `possible range 1,530 to 1,581`. `None` if there is
    /// only one.
    fn possible_range(&self) -> Option<String> {
        let gross = self.areas.gross();
        let range =
            gross.range().filter(|range| range.low.whole_sq_ft() != range.high.whole_sq_ft())?;
        let range = self.totals_in(None, range);
        Some(match !self.listed_alone(gross.few()).is_empty() {
            true => format!("{range}, {}", self.either_way()),
            // Parentheses inside parentheses are hard to read.
            false => format!(
                "possible range {}, {}",
                range.replace(" (", ", ").replace(')', ""),
                self.either_way()
            ),
        })
    }

    /// The totals above grade that the walls can give if rounded to the foot: their range, each of them if they are few,
    /// or where none lies around a figure, those on both sides of it.
    pub(crate) fn totals_in(&self, figure: Option<&Figure>, range: Range) -> String {
        let gross = self.areas.gross();
        let is_same = |figure: &&Figure| {
            let test = figure.rounding_test();
            test.step() == Step::WholeFoot && test.range() == Some(range)
        };
        let between = figure.filter(is_same).and_then(|figure| figure.rounding_test().between());
        let few = self.listed_alone(gross.few());
        match between {
            _ if !few.is_empty() => one_of_few(&few, self.is_metric()),
            Some(between) => in_two(range, between, self.is_metric()),
            None => range_beside(range, gross.tenth_foot(), self.is_metric()),
        }
    }

    /// The area with each wall to the half foot, if the figure says that this is its rule and states no other terms.
    fn half_foot_area(&self, figure: &Figure) -> Option<Area> {
        let is_half = figure.side_rule() == SideRule::Step(Step::HalfFoot);
        let line = figure.line(BridgeStep::Rounding).filter(|_| is_half)?;
        (self.taken_as(figure).is_empty() && figure.measured() == self.areas.gross().tenth_foot())
            .then(|| figure.measured() + line.area())
    }

    /// What the page asks for of a figure that counts more than is counted here, worked out: `With the rec room, as the
    /// record counts it: 2,115.88 + 553.04 = 2,668.92, rounded 2,669 sq ft.`
    #[cfg(feature = "pages")]
    pub(crate) fn with_counted(&self, figures: &[Figure]) -> Vec<String> {
        let told = |figure: &Figure| {
            let line = figure.line(BridgeStep::Counting).filter(|line| !line.is_supported())?;
            let names = line.counted();
            let spaces = || {
                let spaces = self.house.spaces.iter().enumerate();
                spaces.filter(|(_, space)| names.contains(&space.name)).map(|(i, _)| i)
            };
            let gross = self.areas.gross();
            let worked = |total: Area, areas: Vec<Area>| {
                let parts: Vec<String> = std::iter::once(total)
                    .chain(areas.clone())
                    .map(|area| area.to_hundredths())
                    .collect();
                let sum = total + areas.into_iter().sum();
                let text = format!("{} = {}", parts.join(" + "), sum.to_hundredths());
                (sum, format!("{text}, rounded {} sq ft", thousands(sum.whole_sq_ft())))
            };
            let net = |area: fn(&crate::areas::SpaceAreas) -> Area| {
                spaces().map(|i| area(&self.areas.spaces[i])).collect::<Vec<Area>>()
            };
            let (fine, as_fine) = worked(gross.tenth_foot(), net(|areas| areas.net_tenth_foot));
            let (_, as_feet) = worked(gross.whole_foot(), net(|areas| areas.net_whole_foot));
            let is_asked = fine.whole_sq_ft() == figure.measured_like_figure().whole_sq_ft();
            (is_asked && spaces().next().is_some()).then(|| {
                format!(
                    "With {}, as {} counts {}: {as_fine} with each wall to {}; {as_feet} with each wall to the whole foot.",
                    words::all_named(names),
                    the(figure),
                    if names.len() == 1 { "it" } else { "them" },
                    self.fine()
                )
            })
        };
        figures.iter().filter_map(told).collect()
    }

    /// The range of the total with each wall to the half foot, for the first figure that has this as its rule and states
    /// no other terms. `None` if there is none, or the range is not known.
    #[cfg(feature = "pages")]
    pub(crate) fn half_foot_range(&self, figures: &[Figure]) -> Option<String> {
        let figure = figures.iter().find(|figure| self.half_foot_area(figure).is_some())?;
        let range = figure.rounding_test().range()?;
        let range = range_beside(range, self.half_foot_area(figure)?, self.is_metric());
        Some(format!(
            "Rounded to the half foot, {}, the total can be {range} if the office reads its tape within {}.",
            self.as_understood(figure),
            self.reading_alone()
        ))
    }

    /// The steps of a figure as text for screen readers.
    pub(crate) fn heard(&self, figure: &Figure) -> String {
        let mut at = figure.measured();
        let told = |line: &Line| {
            let before = at;
            at = at + self.area_of_step(figure, line);
            format!("{}, {}", self.line_name(figure, line), self.changed(before, at))
        };
        let steps: Vec<String> = self.told_lines(figure).map(told).collect();
        format!(
            "Step by step: {} {}; {}; {} {}.",
            self.start_of_steps(),
            self.total(figure.measured()),
            steps.join("; "),
            the(figure),
            self.total_of(figure)
        )
    }
}

/// What a figure says that it counts and the measured area does not.
fn without_counted(figure: &Figure) -> Option<String> {
    let counting = figure.line(BridgeStep::Counting).filter(|line| !line.is_supported())?;
    Some(words::all_named(counting.counted()))
}
