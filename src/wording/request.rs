//! The request, in one sentence that a clerk can act on.

use crate::diagnostic::words;
use crate::house::{Face, ReferenceSource, SideRule};
use crate::reconcile::agreement::Agreement;
use crate::reconcile::cause::CauseClass;
use crate::reconcile::departures::DepartureKind;
use crate::reconcile::{BridgeStep, CouldExplain, Figure, Line, Reconciliation, RoofPart};
use crate::units::area::Area;
use crate::units::length::{Length, Step};
use crate::wording::accounts::shown_once;
use crate::wording::map::largest_not_measured;
use crate::wording::sentences::{Sentences, capital, the};
use crate::wording::size::{Units, area_of_sq_ft};
use crate::wording::step_lines::not_explained;

/// How a question about the rule for rounding begins.
/// What is asked first where ceilings of a height that was not stated are deducted.
const HEIGHT_ASKED: &str =
    "Please state the ceiling height below which the total leaves out floor area.";

/// What a publisher is asked for.
enum Asked {
    /// A correction, or what else the figure counts, as a clause without its period: `please correct …`.
    Correction(String),
    /// How each wall was rounded, as sentences.
    Rule(String),
    /// Anything else, or nothing, as sentences.
    Other(String),
}

impl Asked {
    fn sentence(self) -> String {
        match self {
            Asked::Correction(clause) => format!("{}.", capital(&clause)),
            Asked::Rule(text) | Asked::Other(text) => text,
        }
    }
}

impl Sentences<'_> {
    /// The request to the publisher of a figure, after whom it is for, with the figure that another way of rounding gives in
    /// a sentence of its own.
    pub(crate) fn request(&self, reconciliation: &Reconciliation, figure: &Figure) -> String {
        let asked = self.asked(reconciliation, figure);
        if !self.asks_for_a_change(reconciliation, figure) {
            return asked.sentence();
        }
        // A clerk who hears two figures in one sentence may write down the second. Where the rule for rounding is asked about,
        // one is enough.
        let is_of_the_rule = matches!(asked, Asked::Rule(_));
        let feet = self.in_whole_feet(figure).filter(|_| !is_of_the_rule).unwrap_or_default();
        // Nobody can correct a total to one that depends on a height which was not stated.
        let asked = match (self.low_of_unknown_height(figure), asked) {
            (None, asked) => asked.sentence(),
            (Some(low), Asked::Correction(correction)) => format!(
                "{HEIGHT_ASKED} If floor under ceilings as low as the ones deducted here, {low}, is left out of such a total, {correction}."
            ),
            (Some(low), asked) => {
                format!("{HEIGHT_ASKED} {low} are deducted here. {}", asked.sentence())
            }
        };
        match figure.is_record() {
            true => format!("To the office that keeps {}: {asked}{feet}", the(figure)),
            false => format!("To whoever published {}: {asked}{feet}", the(figure)),
        }
    }

    /// The area deducted here for ceilings that are low, where this file does not state how low.
    fn low_of_unknown_height(&self, figure: &Figure) -> Option<String> {
        let low = self.low_without_a_height()?;
        Some(self.units_of(figure).size(low))
    }

    /// What is asked, in one sentence.
    ///
    /// If the figure is too large, the request is to correct it or to state what else it counts; but if the record's
    /// own lengths give its total, only to measure those that differ, and if rounding alone would explain it,
    /// only to state the rule for rounding. If the figure is smaller, nothing is requested.
    fn asked(&self, reconciliation: &Reconciliation, figure: &Figure) -> Asked {
        let other = |text: &str| Asked::Other(text.to_owned());
        let apart = figure.apart_sq_ft();
        match figure.agreement() {
            Agreement::ToTheSquareFoot => {
                return other("No change is requested: the two agree.");
            }
            Agreement::Apart => {}
            // How closely they agree stands in the headline.
            _ => return other("No change is requested: the two agree."),
        }
        if figure.measured_like_figure().whole_sq_ft() == 0 {
            return other("No change is requested: nothing that counts was measured.");
        }
        if apart < 0 {
            // By how much it is smaller stands in the headline.
            let purpose = match figure.is_record() && self.is_for_the_office() {
                true => " This page is for the owner, to show how the two compare.",
                false => "",
            };
            return other(&format!("No change is requested.{purpose}"));
        }
        let units = self.units_of(figure);
        let (area, second) = units.both(figure.measured_like_figure());
        let parts: Vec<String> = second.into_iter().chain(self.taken_as(figure)).collect();
        let terms =
            if parts.is_empty() { String::new() } else { format!(" ({})", parts.join("; ")) };
        let walls = self.walls_to_measure(reconciliation, figure, self.is_for_the_office());
        let is_rounding = figure.rounding_test().could_explain() == Some(CouldExplain::Yes)
            && self.is_asked_about_feet(figure);
        if let Some(part) = self.part_not_measured_yet(reconciliation, figure) {
            return other(&format!(
                "No change is requested until what stands on the {} side of {}, where a map shows a roof, is measured; this page is for the owner until then. Meanwhile the office may be asked to send {}'s own sketch with its lengths.",
                part.side().word(),
                words::the_quoted(&self.house.spaces[part.beside()].name),
                the(figure)
            ));
        }
        if self.only_from_a_plan().is_some() {
            let ask = match &walls {
                Some(walls) => format!("to measure {walls}"),
                None if is_rounding => format!("to {}", self.state_whether_rounded(figure)),
                None => format!("to state {}", self.or_state(figure)),
            };
            return other(&format!(
                "No change is requested until the house is measured; this page is for the owner until then. Meanwhile the office may be asked {ask}."
            ));
        }
        let adds_up =
            figure.own_sketch().is_some_and(|own| own.whole_sq_ft() == figure.area().whole_sq_ft());
        if let Some(walls) = walls.as_ref().filter(|_| adds_up) {
            return other(&format!(
                "Please measure {walls} again; if they are as measured here, please correct {} to {area}{terms}.",
                the(figure)
            ));
        }
        if is_rounding && walls.is_none() {
            return Asked::Rule(self.about_the_rule(figure, &area, &terms));
        }
        let below = self.below_apart(figure);
        let ask = format!(
            "please correct {} to {area}{terms}{below}, or state {}",
            the(figure),
            self.or_state(figure)
        );
        match walls {
            // First the walls, then what follows from them: the figure asked for takes off the other cause too.
            Some(walls) => other(&format!(
                "Please measure {walls} again; if they are as measured here{}, {ask}.",
                self.besides_the_walls(figure)
            )),
            None if is_small(figure) => other(&format!(
                "If a difference as small as {} in {} is worth a change, {ask}.",
                units.apart(figure.area(), figure.measured_like_figure()),
                units.typed_first(figure.typed()),
            )),
            None => Asked::Correction(ask),
        }
    }

    /// What has to be so besides the lengths of some walls for the figure asked for, preceded by a space: ` and the total
    /// should not count the covered porch`. Empty where the walls alone lead to it.
    fn besides_the_walls(&self, figure: &Figure) -> String {
        let likeliest = shown_once(figure).into_iter().next();
        let kinds = likeliest.map(|one| one.cause.each(self.house)).unwrap_or_default();
        let named = |space: usize| words::the_named(&self.house.spaces[space].name);
        let not_counted: Option<Vec<String>> = kinds
            .iter()
            .map(|kind| match *kind {
                DepartureKind::Counted { space } | DepartureKind::CountedAsListed { space } => {
                    Some(named(space))
                }
                DepartureKind::MissingCounted { missing } => {
                    Some(words::the_named(&self.house.missing[missing].name))
                }
                _ => None,
            })
            .collect();
        match not_counted {
            Some(names) if !names.is_empty() => {
                format!(" and the total should not count {}", words::list_or(&names))
            }
            _ if likeliest.is_some() || not_explained(figure) != 0 => {
                " and the rest is as drawn here".to_owned()
            }
            _ => String::new(),
        }
    }

    /// Whether the publisher of a figure is asked for anything, as [`Sentences::request`] puts it.
    pub(crate) fn asks_anything(&self, figure: &Figure) -> bool {
        !figure.agreement().agrees()
            && figure.measured_like_figure().whole_sq_ft() != 0
            && figure.apart_sq_ft() >= 0
    }

    /// Whether a change of a figure is requested, which is then for the office: not before what a map shows is measured, or
    /// by the lengths of a plan alone.
    pub(crate) fn asks_for_a_change(
        &self,
        reconciliation: &Reconciliation,
        figure: &Figure,
    ) -> bool {
        self.asks_anything(figure)
            && self.only_from_a_plan().is_none()
            && self.part_not_measured_yet(reconciliation, figure).is_none()
    }

    /// The part that a map shows and nobody measured, which comes before any request about the record.
    fn part_not_measured_yet<'b>(
        &self,
        reconciliation: &'b Reconciliation,
        figure: &Figure,
    ) -> Option<&'b RoofPart> {
        let part = largest_not_measured(reconciliation).into_iter().next();
        let is_asked =
            figure.is_record() && self.walls_to_measure(reconciliation, figure, false).is_none();
        part.filter(|_| is_asked)
    }

    /// The total that a record whose walls may be rounded to the foot would have if they are as measured, with what it
    /// says it counts, as a sentence with a leading space: ` With each wall rounded to the foot, that is 1,752 or 1,800 sq ft.`;
    /// `…, that is 1,148 sq ft, more than the record.` `None` where that is no other number, or is the record itself.
    pub(super) fn in_whole_feet(&self, figure: &Figure) -> Option<String> {
        let is_plain = figure.is_record()
            && figure.side_rule() == SideRule::Step(Step::WholeFoot)
            && figure.face() == Face::Outside;
        let steps = figure.lines().iter().filter(|line| match line.step() {
            BridgeStep::Rounding => true,
            BridgeStep::Counting => !line.is_supported(),
            _ => false,
        });
        let own = figure.measured() + steps.map(Line::area).sum::<Area>();
        let is_rounded_otherwise = figure
            .line(BridgeStep::Rounding)
            .is_some_and(|line| line.rounding().is_some() || line.is_otherwise());
        // The step of rounding is then another one.
        let own = if is_rounded_otherwise {
            let like = figure.measured_like_figure() == self.areas.gross().tenth_foot();
            like.then(|| self.areas.gross().whole_foot())?
        } else {
            own
        };
        let is_other = own.whole_sq_ft() != figure.measured_like_figure().whole_sq_ft()
            && own.whole_sq_ft() != figure.area().whole_sq_ft();
        if !is_plain || !is_other {
            return None;
        }
        let size = |sq_ft: i64| self.units_of(figure).both(area_of_sq_ft(sq_ft)).0;
        // Adjustments of other walls that are as near to the measured lengths give other totals.
        let own = own.whole_sq_ft();
        let is_gross = own == self.areas.gross().whole_foot().whole_sq_ft();
        let others = is_gross.then(|| self.areas.equally_near_whole_foot());
        let is_open = others.as_ref().is_some_and(|others| !others.is_complete());
        let mut totals = others.map(|others| others.totals().to_vec()).unwrap_or_default();
        totals.push(own);
        totals.sort_unstable();
        let more = match totals.iter().all(|total| *total > figure.area().whole_sq_ft()) {
            true => format!(", more than {}", the(figure)),
            false => String::new(),
        };
        let number = |sq_ft: &i64| {
            let one = size(*sq_ft);
            let unit = one.find(' ').unwrap_or(one.len());
            one[..unit].to_owned()
        };
        let told = match totals.as_slice() {
            [only] if is_open => {
                format!("{}, or another total that is as near", size(*only))
            }
            [low, .., high] if totals.len() > 3 => format!("{} to {}", number(low), size(*high)),
            [few @ .., last] => {
                let few = few.iter().map(number).chain([size(*last)]);
                words::list_or(&few.collect::<Vec<String>>())
            }
            [] => return None,
        };
        Some(format!(" With each wall rounded to the foot, that is {told}{more}."))
    }

    /// What becomes of an area below grade where the area above it is asked for: ` above grade, with the 564 sq ft below
    /// grade listed separately`. Empty if there is none, or if the figure says that it counts some of it.
    fn below_apart(&self, figure: &Figure) -> String {
        let below = self.areas.below_grade().filter(|_| {
            figure.is_record() && figure.measured_like_figure() == self.areas.gross().tenth_foot()
        });
        below.map_or_else(String::new, |below| {
            let size = self.units_of(figure).size(below.tenth_foot());
            format!(" above grade, with the {size} below grade listed separately")
        })
    }

    /// What the figure says about itself, in parentheses to follow an area: ` (with the porch)`.
    pub(super) fn in_parentheses(&self, figure: &Figure) -> String {
        let terms = self.taken_as(figure);
        if terms.is_empty() { String::new() } else { format!(" ({})", terms.join(", ")) }
    }

    /// What the figure says it counts, at which face it is and how finely its walls are rounded, as phrases: `with the
    /// porch`, `measured inside`.
    pub(super) fn taken_as(&self, figure: &Figure) -> Vec<String> {
        let counting = figure.line(BridgeStep::Counting).filter(|line| !line.is_supported());
        let with = counting.map(|line| format!("with {}", words::all_named(line.counted())));
        let face = match figure.face() {
            Face::Outside => None,
            Face::Frame => Some("at the frame".to_owned()),
            Face::Inside => Some("measured inside".to_owned()),
        };
        with.into_iter().chain(face).chain(self.own_step(figure).map(str::to_owned)).collect()
    }

    /// What the figure is taken as, in parentheses after another area, with what its face leaves out: ` (at the frame,
    /// without what is outside it)`.
    #[cfg(feature = "pages")]
    pub(super) fn in_parentheses_at_face(&self, figure: &Figure) -> String {
        let told = self.in_parentheses(figure);
        match figure.face() {
            Face::Frame => told.replace("at the frame", "at the frame, without what is outside it"),
            Face::Outside | Face::Inside => told,
        }
    }

    /// Asks about the rule for rounding, and for a correction where that allows one.
    fn about_the_rule(&self, figure: &Figure, area: &str, taken: &str) -> String {
        format!(
            "Please {}. If walls may be recorded to {}, please correct {} to {area}{taken}.",
            self.state_whether_rounded(figure),
            self.fine(),
            the(figure)
        )
    }

    /// What is asked of a publisher about how each wall was rounded, as a verb and what follows it.
    fn state_whether_rounded(&self, figure: &Figure) -> String {
        let unit = match figure.rounding_test().step() {
            Step::HalfFoot => "half foot",
            _ => "whole foot",
        };
        // Another line of the record that speaks against the rule is part of the question. Whether rounding would account
        // for the difference stands just above.
        let what = match (self.against_the_rule(figure), figure.says_rule()) {
            (Some(_), _) => format!("the {unit} or to the whole foot"),
            (None, true) => format!("the {unit}, {}", self.as_understood(figure)),
            (None, false) => format!("the {unit}"),
        };
        format!("state whether each wall was rounded to {what}")
    }

    /// What is to be stated if a figure stays: what else it includes where a space is the likeliest cause, or how it came
    /// about where that is a length, rounding, the typing of the total, or a level that is not taken from its own walls,
    /// or no cause is named.
    fn or_state(&self, figure: &Figure) -> String {
        let total = self.units_of(figure).typed_first(figure.typed());
        let likeliest = shown_once(figure).into_iter().next();
        let is_level = likeliest.is_some_and(|one| {
            one.cause.departures().any(|kind| matches!(kind, DepartureKind::Level { .. }))
        });
        match likeliest.and_then(|one| one.cause.class()) {
            // Below the steps there is nothing else that it could include.
            _ if is_level || not_explained(figure) < 0 => {
                format!("how its {total} was arrived at")
            }
            Some(CauseClass::Described) => format!("what else its {total} includes"),
            None | Some(CauseClass::Measured | CauseClass::Typed) => {
                format!("how its {total} was arrived at")
            }
        }
    }

    /// The first four walls whose recorded length, given after the side or on the record's sketch, differs by more
    /// than rounding can explain: by their numbers, or also by where they stand and their lengths.
    pub(super) fn walls_to_measure(
        &self,
        reconciliation: &Reconciliation,
        figure: &Figure,
        are_described: bool,
    ) -> Option<String> {
        if !figure.is_record() {
            return None;
        }
        let walls = self.differing_walls(reconciliation).into_iter().map(|(at, sides)| {
            let space = &self.house.spaces[at];
            let number = |side: usize| space.sides[side].number.get();
            let named = match are_described {
                // Who hears it has no drawing with numbers.
                true => {
                    let wall = |side: usize| {
                        format!("side {} ({})", number(side), self.wall_here(at, side))
                    };
                    words::all_of(&sides.into_iter().map(wall).collect::<Vec<String>>())
                }
                false => words::sides(&sides.into_iter().map(number).collect::<Vec<usize>>()),
            };
            match self.house.spaces.len() {
                1 => named,
                _ => {
                    let pages = self.pages_of_levels(std::iter::once(space.level));
                    let pages = self.in_brackets(pages);
                    format!("{named} of {}{pages}", words::the_named(&space.name))
                }
            }
        });
        let names: Vec<String> = walls.collect();
        (!names.is_empty()).then(|| words::all_of(&names))
    }

    /// The first four walls that differ from the record by more than rounding can explain, by the indexes of their
    /// spaces and sides.
    pub(crate) fn differing_walls(
        &self,
        reconciliation: &Reconciliation,
    ) -> Vec<(usize, Vec<usize>)> {
        const MOST: usize = 4;
        let mut left = MOST;
        let mut walls: Vec<(usize, Vec<usize>)> = Vec::new();
        for (space, here) in self.house.spaces.iter().enumerate() {
            let differs = |&side: &usize| self.differs_from_record(reconciliation, space, side);
            let sides: Vec<usize> = (0..here.sides.len()).filter(differs).take(left).collect();
            left -= sides.len();
            if !sides.is_empty() {
                walls.push((space, sides));
            }
        }
        walls
    }

    fn differs_from_record(
        &self,
        reconciliation: &Reconciliation,
        space: usize,
        side: usize,
    ) -> bool {
        let Some(measured) = self.areas.outside_length(space, side) else { return false };
        let recorded = self.recorded_length(reconciliation, space, side);
        recorded.is_some_and(|recorded| self.settings.is_beyond_rounding(recorded - measured))
    }

    /// The recorded length of a side, given after the side or on the record's sketch; `None` if neither gives it.
    pub(crate) fn recorded_length(
        &self,
        reconciliation: &Reconciliation,
        space: usize,
        side: usize,
    ) -> Option<Length> {
        let here = &self.house.spaces[space];
        let on_sketch = || {
            let mut sketches = reconciliation.outlines().iter().filter(|outline| {
                outline.drawn() == ReferenceSource::Record && outline.is_of_space(space)
            });
            let mut walls = sketches.next()?.matched().iter();
            walls.find(|wall| wall.ours() == here.sides[side].number()).map(|wall| wall.drawn())
        };
        here.sides[side].recorded().or_else(on_sketch)
    }
}

/// Whether a difference is at most a hundredth of the figure, so that whether to change it is left to the reader.
fn is_small(figure: &Figure) -> bool {
    const SHARE: i64 = 100;
    figure.apart_sq_ft().saturating_abs().saturating_mul(SHARE) <= figure.area().whole_sq_ft()
}

/// How closely two areas agree, after "the two agree": `within 2 sq ft`; `to the square meter`.
pub(super) fn how_closely(figure: &Figure, units: Units) -> String {
    match figure.agreement() {
        Agreement::ToTheSquareFoot => "to the square foot".to_owned(),
        Agreement::AsWritten { decimals: 0 } => "to the square meter".to_owned(),
        Agreement::AsWritten { decimals: 1 } => "to the tenth of a square meter".to_owned(),
        Agreement::AsWritten { .. } => "to its last decimal".to_owned(),
        Agreement::About | Agreement::Apart => {
            let apart = units.apart(figure.area(), figure.measured_like_figure());
            format!("within {apart}")
        }
    }
}
