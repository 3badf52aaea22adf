//! The names of the steps from the measured area to a figure, and what each wall adds to them.

use crate::diagnostic::words;
use crate::geometry::compass::Axis;
use crate::house::{Face, SideRule};
use crate::reconcile::agreement::Agreement;
use crate::reconcile::cause::Cause;
use crate::reconcile::settings::RoundingTaken;
use crate::reconcile::{BridgeStep, CouldExplain, Figure, Line, Share};
use crate::units::area::Area;
use crate::units::length::{Length, Step};
use crate::wording::causes;
use crate::wording::sentences::{Reader, Sentences, signed, the};
use crate::wording::size::step_range;

impl Sentences<'_> {
    /// By how much rounding could change the area before a rounding step; `None` for other steps. The changes lead
    /// from the area as printed to the possible areas as printed.
    pub(crate) fn could_add(&self, figure: &Figure, line: &Line, before: Area) -> Option<String> {
        let few = self.listed_alone(figure.rounding_test().few());
        let changes = step_range(before, line.range()?, &few, self.is_metric())?;
        let foot = self.foot_of(figure);
        if !self.is_for_the_office() {
            return Some(format!("rounding to the {foot} could change it by {changes}"));
        }
        let unit = if self.is_metric() { "" } else { " sq ft" };
        // The walls near the half foot are those of the outside.
        let is_outside = foot == "foot" && figure.face() == Face::Outside;
        let why = if is_outside { format!(", {}", self.either_way()) } else { String::new() };
        Some(format!("rounding to the {foot} could change it by {changes}{unit}{why}"))
    }

    /// What the walls of a figure are rounded to: `foot`, or `half foot`.
    pub(super) fn foot_of(&self, figure: &Figure) -> &'static str {
        if figure.rounding_test().step() == Step::HalfFoot { "half foot" } else { "foot" }
    }

    /// The recorded sides that differ, one line each. Sides along the same axis are grouped, since they have to close
    /// together.
    ///
    /// Where what they add is another whole number than their step, which leads from one printed total to the next, it
    /// is given to the hundredth.
    pub(crate) fn shares(&self, figure: &Figure, before: Area, after: Area) -> Vec<String> {
        let groups = self.share_groups(figure);
        let apart: i64 = groups.iter().map(|(_, area, _)| area.whole_sq_ft()).sum();
        let is_whole = apart == after.whole_sq_ft() - before.whole_sq_ft();
        let text = |(text, area, strips): (String, Area, Option<String>)| match is_whole {
            true => {
                let strips = strips.map(|strips| format!("{strips} = ")).unwrap_or_default();
                format!("{text}: {strips}{} sq ft", signed(area.whole_sq_ft()))
            }
            false => {
                let sign = if area < Area::ZERO { '\u{2212}' } else { '+' };
                format!("{text}: {sign}{} sq ft before rounding", area.abs().to_hundredths())
            }
        };
        groups.into_iter().map(text).collect()
    }

    /// The recorded sides that differ in words, with what each group adds, and how that comes about wall by wall.
    fn share_groups(&self, figure: &Figure) -> Vec<(String, Area, Option<String>)> {
        let told = |group: &Vec<&Share>| {
            let (text, area) = self.shared(figure, group)?;
            Some((text, area, self.strips(figure, group)))
        };
        grouped(figure).iter().filter_map(told).collect()
    }

    fn shared(&self, figure: &Figure, group: &[&Share]) -> Option<(String, Area)> {
        let space = group.first()?.space();
        let area: Area = group.iter().map(|share| share.area()).sum();
        let differ: Vec<String> = group
            .iter()
            .filter(|share| share.ruled() != share.recorded())
            .map(|share| self.share(figure, share))
            .collect();
        if differ.is_empty() {
            return None;
        }
        let more = differ.len().saturating_sub(4);
        let mut named = differ[..differ.len() - more].join("; ");
        if more > 0 {
            named = format!("{named}; and {}", words::count(more, "other side"));
        }
        let several = self.house.spaces.len() > 1;
        let pages = self.in_brackets(self.pages_of(group.iter().map(|share| share.place).take(1)));
        let space = if several { format!("{space}{pages}, ") } else { String::new() };
        Some((format!("{space}{named}"), area))
    }

    /// The name of the step for the best supported cause.
    pub(super) fn possible_line(&self, figure: &Figure, line: &Line) -> String {
        let said = line.cause().map(|cause| causes::said(cause, self.listed(figure), figure));
        let pages = line.cause().map(|cause| self.pages_of_cause(cause)).unwrap_or_default();
        format!("possible: {}{pages}", said.unwrap_or_default())
    }

    pub(crate) fn line_name(&self, figure: &Figure, line: &Line) -> String {
        let name = self.name_of_line(figure, line);
        match line.step() {
            BridgeStep::Rounding if self.more_rounding(figure).is_some() => {
                format!("{name}, with {}", self.other_way(figure))
            }
            _ => name,
        }
    }

    fn name_of_line(&self, figure: &Figure, line: &Line) -> String {
        match line.step() {
            BridgeStep::Counting if line.is_supported() => self.possible_line(figure, line),
            BridgeStep::Face => match figure.face() {
                // Nobody has said so of the figure, whoever measured the house.
                Face::Outside => {
                    let whose = format!("outside lengths assumed for {}", the(figure));
                    match self.reader {
                        Reader::Owner => format!("face: {whose} (ask)"),
                        Reader::Office => format!("face: {whose}"),
                    }
                }
                Face::Frame => format!(
                    "face: {} goes by lengths at the frame, without what is outside it",
                    the(figure)
                ),
                Face::Inside => format!("face: {} goes by inside lengths", the(figure)),
            },
            BridgeStep::Rounding if is_rounded_otherwise(figure, line) => {
                let how = line.rounding().map(causes::rounded).unwrap_or_default();
                let how = format!("{how}, as fits the next row best");
                format!("rounding: {}", self.assumed_as(&how))
            }
            BridgeStep::Rounding
                if line.is_otherwise() && (figure.agreement().agrees() || figure.is_read()) =>
            {
                format!("rounding: {}", self.assumed_as(self.settings.fine.spoken()))
            }
            BridgeStep::Rounding if line.is_otherwise() => {
                let step = figure.rounding_test().step().spoken();
                let how = format!("{step}, with another wall adjusted so that they meet");
                format!("rounding: {}", self.assumed_as(&how))
            }
            BridgeStep::Rounding if line.is_unrounded() => {
                format!("rounding: {}", self.assumed_as("walls not rounded"))
            }
            BridgeStep::Rounding => match figure.side_rule() {
                SideRule::Unknown => {
                    format!("rounding: {}; none is assumed", self.assumed_as("not known"))
                }
                SideRule::Step(step) if figure.says_rule() => {
                    format!("rounding: {}, {}", step.spoken(), self.as_understood(figure))
                }
                SideRule::Step(step) if step == self.settings.fine.step() => {
                    format!("rounding: {}", self.assumed_as(step.spoken()))
                }
                SideRule::Step(step) => {
                    let what = step.spoken().trim_start_matches("each wall ");
                    let if_so = format!("if the office rounds each wall {what}");
                    format!("rounding: {}", self.assumed_as(&if_so))
                }
            },
            BridgeStep::RecordedSides => match figure.word() {
                "record" => "recorded sides: the record's own lengths".to_owned(),
                _ => format!("its own sides: {}'s own lengths", the(figure)),
            },
            BridgeStep::Counting => {
                let is_counted = |i: &usize| line.counted().contains(&self.house.spaces[*i].name);
                let spaces = (0..self.house.spaces.len()).filter(is_counted);
                let pages = self.in_brackets(self.pages_of(spaces));
                let names = words::all_named(line.counted());
                format!(
                    "counting: {} counts {names}{pages}, {}",
                    the(figure),
                    self.as_understood(figure)
                )
            }
            BridgeStep::NotExplained if line.is_otherwise() => {
                self.left(figure, line).words().to_owned()
            }
            BridgeStep::NotExplained if is_left_within(figure, line) => {
                let first = figure.explanations().reported().next();
                // The step of rounding stands above it, perhaps with the other sign.
                if first.is_none() {
                    return format!("what is left, possible with {}", self.other_way(figure));
                }
                let what = match first {
                    Some(one) if self.is_taken_finely(figure, one) => "reading a tape",
                    Some(one) if matches!(one.cause, Cause::Rounding(_)) => "closing the outline",
                    _ => "rounding",
                };
                format!("what is left, which {what} could make")
            }
            BridgeStep::NotExplained => match self.left_unless(figure) {
                Some(unless) => format!("not explained, unless {unless}"),
                // Nothing is explained by what is only possible.
                None if not_explained(figure) == 0 && is_possible_told(figure) => {
                    "left, if the possible cause is right".to_owned()
                }
                None => "not explained".to_owned(),
            },
        }
    }

    /// What walls near the half foot add where they are rounded the other way than to the nearest foot, if that and
    /// rounding are all that leads to the figure: the two are told as one step. `None` if they are not.
    pub(crate) fn more_rounding<'b>(&self, figure: &'b Figure) -> Option<&'b Line> {
        let mut told = figure.told_lines();
        let is_rounding_told = told.any(|(line, _)| line.step() == BridgeStep::Rounding);
        let mut lines = figure.lines().iter();
        lines.find(|line| is_rounding_told && self.is_more_rounding(figure, line))
    }

    /// Whether a step is told with the one of rounding, and has no row of its own.
    pub(crate) fn is_told_with_rounding(&self, figure: &Figure, line: &Line) -> bool {
        line.step() == BridgeStep::NotExplained && self.more_rounding(figure).is_some()
    }

    /// What the row of a step adds, with that which has no row of its own.
    pub(crate) fn area_of_step(&self, figure: &Figure, line: &Line) -> Area {
        let more = self.more_rounding(figure).filter(|_| line.step() == BridgeStep::Rounding);
        line.area() + more.map_or(Area::ZERO, Line::area)
    }

    /// Whether what is left is rounding too, and nothing but rounding leads to the figure.
    fn is_more_rounding(&self, figure: &Figure, line: &Line) -> bool {
        let steps = [BridgeStep::Face, BridgeStep::RecordedSides, BridgeStep::Counting];
        line.step() == BridgeStep::NotExplained
            && !line.is_otherwise()
            && is_left_within(figure, line)
            && figure.explanations().reported().next().is_none()
            && figure
                .lines()
                .iter()
                .all(|other| !steps.contains(&other.step()) || other.area() == Area::ZERO)
    }

    /// The walls that rounding to the foot had to move so that the outline closes, as a note to an office on the step of
    /// rounding: `adjusted so that the rounded walls meet: side 3 (east wall, 12' 2"), 13' instead of 12'`.
    pub(super) fn adjusted(&self, figure: &Figure, line: &Line) -> Option<String> {
        const MOST: usize = 2;
        let is_plain = line.step() == BridgeStep::Rounding
            && !line.is_otherwise()
            && line.rounding().is_none()
            && figure.side_rule() == SideRule::Step(Step::WholeFoot)
            && figure.face() == Face::Outside;
        if !is_plain || !self.is_for_the_office() || !self.is_asked_about_feet(figure) {
            return None;
        }
        // The walls that differ from the record's are told with its own lengths.
        let is_told = |space: usize, side: usize| {
            let mut shares = figure.shares().iter();
            shares.any(|share| {
                share.place == space
                    && share.side().index() == side
                    && share.ruled() != share.recorded()
            })
        };
        let mut moved = self.adjusted_to_feet();
        moved.retain(|&((space, side), _)| !is_told(space, side));
        let several = self.house.spaces.iter().filter(|space| space.counted).count() > 1;
        let named = moved.iter().take(MOST).map(|&((space, side), [used, alone])| {
            let here = &self.house.spaces[space];
            let of = match several {
                true => format!(" of {}", words::the_named(&here.name)),
                false => String::new(),
            };
            let (number, wall) = (here.sides[side].number, self.wall_outside(space, side));
            format!("side {number}{of} ({wall}), {used} instead of {alone}")
        });
        let mut named: Vec<String> = named.collect();
        let more = moved.len().saturating_sub(MOST);
        named.extend((more > 0).then(|| words::count(more, "other wall")));
        (!named.is_empty())
            .then(|| format!("adjusted so that the rounded walls meet: {}", words::all_of(&named)))
    }

    /// What is left where the two agree, or measuring again could make it.
    pub(crate) fn left(&self, figure: &Figure, line: &Line) -> Left {
        // Where the steps before it lead.
        let reached = figure.area() - line.area();
        match Agreement::of(figure.typed(), reached) {
            _ if not_explained(figure) == 0 => Left::Plain,
            _ if self.is_rounded_away(figure, line) => Left::Rounding,
            Agreement::AsWritten { decimals: 0 } => Left::WholeMeter,
            Agreement::AsWritten { decimals: 1 } => Left::TenthOfAMeter,
            Agreement::AsWritten { .. } => Left::LastDecimal,
            _ if figure.is_within_tape(self.areas.gross()) => Left::Measuring,
            _ => Left::Plain,
        }
    }

    /// Whether what is left is only what rounding the walls makes: the figure is the area before any rounding.
    pub(crate) fn is_rounded_away(&self, figure: &Figure, line: &Line) -> bool {
        let is_whole = figure.face() == Face::Outside
            && figure.lines().iter().all(|line| line.step() != BridgeStep::Counting);
        is_whole
            && line.is_otherwise()
            && not_explained(figure) != 0
            && self.size(self.areas.gross().outside()) == self.size(figure.area())
    }

    /// A phrase saying what is assumed and has to be asked; for an office, only what is assumed.
    pub(super) fn assumed_as(&self, what: &str) -> String {
        match self.reader {
            Reader::Owner => format!("{what} (ask)"),
            Reader::Office => format!("{what} (assumed)"),
        }
    }

    /// A recorded side in words: `side 4 (north wall, 19' 5"): 21' on the record; 19' rounded`.
    pub(super) fn share(&self, figure: &Figure, share: &Share) -> String {
        let tenths = figure.side_rule() == SideRule::Step(Step::TenthFoot);
        let length = |length: Length| match share.axis() {
            None => length.spoken(),
            Some(_) if tenths => format!("{}'", length.decimal_feet()),
            Some(_) => length.to_string(),
        };
        // Closing may have moved it away from its rounded value.
        let alone = self.areas.outside_length(share.place, share.side().index());
        let is_moved = match (figure.side_rule(), figure.face(), alone) {
            (SideRule::Step(step), Face::Outside, Some(alone)) => {
                share.axis().is_some() && alone.rounded(step, self.settings.halves) != share.ruled()
            }
            _ => false,
        };
        let rounded = match is_moved {
            true => "rounded and adjusted to close",
            false => "rounded",
        };
        // The typed length is at another face.
        let at = match figure.face() {
            Face::Outside => "",
            Face::Frame => " at the frame,",
            Face::Inside => " inside,",
        };
        let on = if figure.has_own_name() { "its own sketch".to_owned() } else { the(figure) };
        format!(
            "side {} ({}): {} on {on}; {}{at} {rounded}",
            share.side(),
            self.wall_here(share.place, share.side().index()),
            share.recorded(),
            length(share.ruled())
        )
    }
}

/// The recorded sides of a figure, those along one axis of a space together.
fn grouped(figure: &Figure) -> Vec<Vec<&Share>> {
    type Group<'a> = ((usize, Option<Axis>), Vec<&'a Share>);
    let mut groups: Vec<Group<'_>> = Vec::new();
    for share in figure.shares() {
        let key = (share.place, share.axis());
        match groups.iter_mut().find(|(other, _)| *other == key) {
            Some((_, group)) => group.push(share),
            None => groups.push((key, vec![share])),
        }
    }
    groups.into_iter().map(|(_, group)| group).collect()
}

/// What may make the rest of a difference that needs no cause.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Left {
    /// Rounding the walls: the figure is the area before any rounding.
    Rounding,
    /// Writing the figure in whole square meters.
    WholeMeter,
    /// Writing it with one decimal.
    TenthOfAMeter,
    /// Writing it with more decimals.
    LastDecimal,
    /// The tape: it could be off by as much.
    Measuring,
    /// Nothing that could be named.
    Plain,
}

impl Left {
    /// The name of the step.
    pub(crate) const fn words(self) -> &'static str {
        match self {
            Left::Rounding => "what is left, which rounding makes",
            Left::WholeMeter => "what is left, within rounding to the whole square meter",
            Left::TenthOfAMeter => "what is left, within rounding to a tenth of a square meter",
            Left::LastDecimal => "what is left, within rounding to the last decimal",
            Left::Measuring => "what is left, small enough for measuring again to change it",
            Left::Plain => "what is left",
        }
    }
}

/// Whether a row names a possible cause.
fn is_possible_told(figure: &Figure) -> bool {
    let mut lines = figure.lines().iter();
    lines.any(|line| line.step() == BridgeStep::Counting && line.is_supported())
}

/// Whether the step of rounding is another one than the figure's own, as goes with its likeliest cause. Walls in whole feet
/// are the same with and without rounding.
fn is_rounded_otherwise(figure: &Figure, line: &Line) -> bool {
    let is_fine = line.rounding() == Some(RoundingTaken::NotRounded);
    line.rounding().is_some() && !(is_fine && figure.rounding_test().is_on_feet())
}

/// The area that the last step leaves unexplained, as printed.
pub(crate) fn not_explained(figure: &Figure) -> i64 {
    let lines = figure.lines().iter().zip(figure.lines_in_sq_ft());
    lines.filter(|(line, _)| line.step() == BridgeStep::NotExplained).map(|(_, sq_ft)| sq_ft).sum()
}

/// Whether a step is what is left within what rounding could change: something is left as printed, and rounding could
/// give the figure, or a cause leaves it open.
pub(crate) fn is_left_within(figure: &Figure, line: &Line) -> bool {
    let test = figure.rounding_test();
    let is_named = figure.explanations().reported().next().is_some();
    let could = test.could_explain() == Some(CouldExplain::Yes);
    line.is_within_rounding() && not_explained(figure) != 0 && (is_named || could)
}

/// Where a length goes to the one or the other rounded length.
pub(super) fn half_of(step: Step) -> &'static str {
    if step == Step::HalfFoot { "the quarter foot" } else { "the half foot" }
}
