//! What follows for a figure, in the one sentence that stands beside its headline.

#[cfg(feature = "pages")]
use crate::house::{Face, SideRule};
use crate::reconcile::Figure;
#[cfg(feature = "pages")]
use crate::reconcile::{BridgeStep, CouldExplain};
use crate::wording::sentences::{Sentences, capital};
use crate::wording::step_lines::not_explained;
#[cfg(feature = "pages")]
use crate::{units::area::Area, units::length::Step, wording::sentences::the};

/// What the line below the headline of a page says in full, so that it is not said again below the steps.
#[cfg(feature = "pages")]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Above {
    /// The only cause, with the area that it gives.
    OnlyCause,
    /// The first paragraph of what could explain the figure.
    Opening,
    /// None of it.
    Nothing,
}

impl Sentences<'_> {
    /// What most likely explains a figure; where nothing common does, or rounding alone, that. `None` only where
    /// the headline says already that the two agree.
    pub(crate) fn conclusion(&self, figure: &Figure, is_only: bool) -> Option<String> {
        let of = if is_only { String::new() } else { format!(" ({})", figure.name()) };
        let about = |said: String| match is_only {
            true => said,
            false => format!("{}: {said}", capital(figure.name())),
        };
        if figure.agreement().agrees() {
            return None;
        }
        if let Some(accounts) = self.accounts(figure) {
            let first = accounts.items.into_iter().next();
            return Some(match first {
                Some(first) => format!("Possible{of}: {first}."),
                None => about(accounts.opening),
            });
        }
        let answer = self.answer(figure);
        Some(about(match (answer.is_empty(), not_explained(figure)) {
            (false, _) => answer,
            (true, 0) => "The rows below explain all of it.".to_owned(),
            (true, _) => "No common cause is named for what the rows below leave.".to_owned(),
        }))
    }

    /// The likeliest cause of a difference, in the one line that stands below the headline of a page; where no cause is
    /// told, that. It is the first of the list below the steps. `None` only where the two agree or nothing was measured.
    #[cfg(feature = "pages")]
    pub(crate) fn cause_line(&self, figure: &Figure) -> Option<String> {
        self.told_above(figure).map(|(line, _)| line)
    }

    /// The line of `cause_line`, and what it says in full of that which stands below the steps.
    #[cfg(feature = "pages")]
    pub(super) fn told_above(&self, figure: &Figure) -> Option<(String, Above)> {
        if figure.agreement().agrees() || figure.measured_like_figure().whole_sq_ft() == 0 {
            return None;
        }
        let own_changes = figure
            .lines()
            .iter()
            .zip(figure.lines_in_sq_ft())
            .any(|(line, sq_ft)| line.step() == BridgeStep::RecordedSides && sq_ft != 0);
        let whose = the(figure);
        if let Some((cause, above)) = self.likeliest(figure) {
            let own = match own_changes {
                true => format!(", besides {whose}'s own lengths"),
                false => String::new(),
            };
            return Some((format!("Possible cause{own}: {cause}."), above));
        }
        if let Some(rounding) = self.rounding_as_cause(figure).filter(|_| !own_changes) {
            return Some((format!("Possible cause: {rounding}."), Above::Nothing));
        }
        let rest = not_explained(figure);
        if own_changes && rest == 0 {
            // Only with the rounding that stands before them among the rows, which nobody has confirmed.
            let is_rounded = figure.is_record()
                && !figure.says_rule()
                && figure.line(BridgeStep::Rounding).is_some_and(|line| line.area() != Area::ZERO);
            let if_rounded = match is_rounded {
                true => ", if each wall is rounded to the foot",
                false => "",
            };
            let own = format!("{}'s own lengths explain all of it{if_rounded}.", capital(&whose));
            return Some((own, Above::Nothing));
        }
        let accounts = self.accounts(figure);
        Some(match accounts.filter(|accounts| accounts.items.is_empty()) {
            Some(accounts) if accounts.names_nothing => (self.no_cause(figure), Above::Nothing),
            Some(accounts) => (accounts.opening, Above::Opening),
            None if rest == 0 => ("The rows below explain all of it.".to_owned(), Above::Nothing),
            None => {
                let none = "No common cause is named for what the rows below leave.";
                (none.to_owned(), Above::Nothing)
            }
        })
    }

    /// Says that no cause is named.
    #[cfg(feature = "pages")]
    fn no_cause(&self, figure: &Figure) -> String {
        let none = match figure.explanations().is_any_fitting() {
            true => "No common cause is likely enough to be named",
            false => "No common cause explains the difference",
        };
        // Whether rounding alone could be one stands below the rows.
        format!("{none}.")
    }

    /// Rounding as the cause of a difference that it could explain by itself: `rounding each wall to the whole foot,
    /// which could explain the difference`. `None` where it cannot.
    #[cfg(feature = "pages")]
    fn rounding_as_cause(&self, figure: &Figure) -> Option<String> {
        let test = figure.rounding_test();
        let says_feet = figure.is_record()
            || matches!(figure.side_rule(), SideRule::Step(Step::WholeFoot | Step::HalfFoot));
        let is_possible = says_feet
            && self.is_asked_about_feet(figure)
            && test.could_explain() == Some(CouldExplain::Yes)
            && test.range().is_some();
        let unit = match test.step() {
            Step::WholeFoot => "whole foot",
            Step::HalfFoot => "half foot",
            _ => return None,
        };
        let stated = match figure.says_rule() {
            true => format!(", {}", self.as_understood(figure)),
            false => String::new(),
        };
        let at = match figure.face() {
            Face::Outside => "",
            Face::Frame => " at the frame",
            Face::Inside => " inside",
        };
        if let Some(line) = self.against_the_rule(figure).filter(|_| is_possible) {
            return Some(format!(
                "rounding each wall{at} to the {unit}{stated}, which could explain the difference; it gives the record's total, but not what the record lists for the {line}"
            ));
        }
        is_possible.then(|| match not_explained(figure) {
            0 => format!(
                "rounding each wall{at} to the {unit}{stated}, which {} explain the difference",
                self.would_or_could(figure)
            ),
            _ => format!(
                "rounding each wall{at} to the {unit}{stated}, which could explain the difference with {}",
                self.other_way(figure)
            ),
        })
    }
}
