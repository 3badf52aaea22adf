//! What could explain a figure, what would settle it, and what is said where nothing common does.

use std::collections::HashSet;

use crate::areas::range::Range;
use crate::diagnostic::words;
use crate::house::wall_moves::{self, Assumed};
use crate::house::{Face, Kind, SideRule};
#[cfg(feature = "pages")]
use crate::reconcile::Reconciliation;
use crate::reconcile::cause::Cause;
use crate::reconcile::decision::MOST_REPORTED;
use crate::reconcile::departures::{DepartureKind, LevelTaken, Listed};
use crate::reconcile::ours::Question;
use crate::reconcile::settings::RoundingTaken;
use crate::reconcile::sums::SummedBy;
use crate::reconcile::{BridgeStep, CouldExplain, Explanation, Figure, Line, Strength};
use crate::units::area::Area;
use crate::units::decimal::thousands;
use crate::units::length::Step;
use crate::wording::block::Block;
use crate::wording::causes;
use crate::wording::causes::OpenQuestion;
use crate::wording::compared::{Gives, Unsure};
#[cfg(feature = "pages")]
use crate::wording::conclusion::Above;
use crate::wording::map::WHAT_A_MAP_SHOWS;
use crate::wording::sentences::{Reader, Sentences, capital, rounded_float, the};
use crate::wording::size::size_of_sq_ft;
use crate::wording::step_lines::not_explained;

/// Possible explanations of a figure, in words.
pub(crate) struct Accounts {
    /// The sentence before the items.
    pub(crate) opening: String,
    /// One explanation each, most likely first.
    pub(crate) items: Vec<String>,
    /// The sentence after the items.
    pub(crate) closing: String,
    /// What the office is asked besides the request, which it stands below; empty for the owner.
    pub(crate) asks: String,
    /// The spaces that the opening compares with what is left.
    pub(crate) near: Vec<usize>,
    /// Whether nothing is named at all: the opening says how much is left, and that no cause is told for it.
    pub(crate) names_nothing: bool,
}

impl Accounts {
    /// The paragraphs and items as they stand below one another, without those that are empty.
    pub(super) fn blocks(self) -> Vec<Block> {
        let paragraph =
            |text: String| Some(text).filter(|text| !text.is_empty()).map(Block::Paragraph);
        let items = self.items.into_iter().map(Block::Item);
        paragraph(self.opening).into_iter().chain(items).chain(paragraph(self.closing)).collect()
    }
}

impl Sentences<'_> {
    /// What could explain the figure: at most three items, and how to find out. `None` if there is nothing to
    /// explain.
    pub(crate) fn accounts(&self, figure: &Figure) -> Option<Accounts> {
        let explanations = figure.explanations();
        if explanations.weighed() == 0 || figure.agreement().agrees() {
            return None;
        }
        let shown = shown_once(figure);
        if shown.is_empty() {
            return self.nothing_common(figure);
        }
        let (settled, asks) = self.or_asked(figure, self.settling(figure));
        let ours = self.ours(figure);
        // How strong the first is says it already where it is the only one.
        let is_said = shown
            .first()
            .and_then(|one| one.strength())
            .is_some_and(|strength| matches!(strength, Strength::Only | Strength::LikeliestOf(1)));
        let others = if is_said { "" } else { "Other reasons are possible." };
        let order = self.why_in_this_order(&shown);
        let closing = [others, order, &settled, ours.trim_start()];
        let closing = closing.into_iter().filter(|part| !part.is_empty());
        let mut items: Vec<String> = Vec::new();
        for one in shown {
            items.push(self.cause_sentence(figure, one));
        }
        Some(Accounts {
            opening: "Possible:".to_owned(),
            items,
            closing: closing.collect::<Vec<&str>>().join(" "),
            asks,
            near: Vec::new(),
            names_nothing: false,
        })
    }

    /// Why the first of several causes stands first, if it is called the likeliest: what it gives may be the same as the
    /// next. Empty if nothing has to be said.
    fn why_in_this_order(&self, shown: &[&Explanation]) -> &'static str {
        let gives_all = |one: &&Explanation| one.leaves.abs() < 0.5;
        let is_likeliest = shown
            .first()
            .and_then(|one| one.strength())
            .is_some_and(|strength| matches!(strength, Strength::LikeliestOf(2..)));
        match shown {
            [one, next, ..] if !is_likeliest || one.is_as_likely_as(next) => "",
            [one, next] if gives_all(one) && gives_all(next) => {
                "Both give the figure; the first is thought to be more common, which is a judgment."
            }
            [_, _, ..] => {
                "They stand in the order of how common each is thought to be and how near it comes, which is a judgment."
            }
            _ => "",
        }
    }

    /// The spaces that a sentence compares with what no cause explains.
    #[cfg(feature = "pages")]
    pub(crate) fn near_spaces(&self, figure: &Figure) -> Vec<usize> {
        self.accounts(figure).map(|accounts| accounts.near).unwrap_or_default()
    }

    /// What would settle a figure: said below the causes to the owner, or below the request to an office that is asked
    /// about it.
    pub(super) fn or_asked(&self, figure: &Figure, settled: String) -> (String, String) {
        match self.is_for_the_office() && asks_the_office(figure) {
            true => (String::new(), settled),
            false => (settled, String::new()),
        }
    }

    /// What the office is asked about a figure besides the request; `None` if that is nothing.
    #[cfg(feature = "pages")]
    pub(crate) fn asked_besides(
        &self,
        reconciliation: &Reconciliation,
        figure: &Figure,
    ) -> Option<String> {
        let asks = self.accounts(figure).map(|accounts| accounts.asks);
        let asks = asks.filter(|asks| !asks.is_empty());
        let missing = self.missing_asked(reconciliation).map(|missing| match &asks {
            Some(_) => missing.replacen("Please state", "Please also state", 1),
            None => missing,
        });
        let all: Vec<String> = asks.into_iter().chain(missing).collect();
        (!all.is_empty()).then(|| all.join(" "))
    }

    /// The pages on which spaces are drawn, if those are others than this one: `page 2`, `pages 2 and 3`.
    pub(super) fn pages_of(&self, spaces: impl Iterator<Item = usize>) -> Option<String> {
        self.pages_of_levels(spaces.map(|space| self.house.spaces[space].level))
    }

    /// The same for whole levels.
    pub(super) fn pages_of_levels(&self, levels: impl Iterator<Item = usize>) -> Option<String> {
        let here = self.drawn_here?;
        let mut levels: Vec<usize> = levels.filter(|level| !here.contains(level)).collect();
        levels.sort_unstable();
        levels.dedup();
        let pages: Option<Vec<String>> = levels.into_iter().map(page_of_level).collect();
        match pages?.as_slice() {
            [] => None,
            [one] => Some(format!("page {one}")),
            all => Some(format!("pages {}", words::all_of(all))),
        }
    }

    /// The pages on which what a cause is about is drawn, in parentheses: ` (page 2)`. Empty if that is this page.
    pub(super) fn pages_of_cause(&self, cause: Cause) -> String {
        self.in_brackets(self.pages_where(cause))
    }

    /// The pages on which what a cause is about is drawn; `None` if that is this page.
    fn pages_where(&self, cause: Cause) -> Option<String> {
        self.pages_of_levels(self.levels_of_cause(cause).into_iter())
    }

    /// The levels of what a figure differs by, each once: of what its likeliest cause is about, of what it says that it counts,
    /// and of the walls of which it has its own lengths.
    #[cfg(feature = "pages")]
    pub(crate) fn levels_of_the_difference(&self, figure: &Figure) -> Vec<usize> {
        let space = |space: usize| self.house.spaces[space].level;
        let likeliest = figure.explanations().reported().next();
        let mut levels: Vec<usize> =
            likeliest.map(|one| self.levels_of_cause(one.cause)).unwrap_or_default();
        let counting = figure.line(BridgeStep::Counting).filter(|line| !line.is_supported());
        let named = counting.map(Line::counted).unwrap_or_default();
        let spaces = self.house.spaces.iter();
        levels.extend(spaces.filter(|space| named.contains(&space.name)).map(|space| space.level));
        let shares = figure.shares().iter().filter(|share| share.ruled() != share.recorded());
        levels.extend(shares.map(|share| space(share.place)));
        let mut each: Vec<usize> = Vec::new();
        for level in levels {
            if !each.contains(&level) {
                each.push(level);
            }
        }
        each
    }

    fn levels_of_cause(&self, cause: Cause) -> Vec<usize> {
        let space = |space: usize| self.house.spaces[space].level;
        let each = cause.each(self.house).into_iter();
        let departures = each.filter_map(|kind| match kind {
            DepartureKind::Counted { space: of }
            | DepartureKind::CountedAsListed { space: of }
            | DepartureKind::CountedTwice { space: of }
            | DepartureKind::LeftOut { space: of }
            | DepartureKind::NotDeducted { space: of }
            | DepartureKind::Deducted { space: of }
            | DepartureKind::DeductedTwice { space: of }
            | DepartureKind::Part { space: of, .. } => Some(space(of)),
            DepartureKind::Level { level, .. } | DepartureKind::LevelLeftOut { level } => {
                Some(level)
            }
            DepartureKind::MissingCounted { .. }
            | DepartureKind::UnderRoof
            | DepartureKind::Together(_) => None,
        });
        let misread = match cause {
            Cause::Misread(wall) => [Some(wall.space), wall.also].map(|of| of.map(space)),
            _ => [None; 2],
        };
        departures.chain(misread.into_iter().flatten()).collect()
    }

    /// Pages in parentheses, after a space.
    pub(super) fn in_brackets(&self, pages: Option<String>) -> String {
        pages.map(|pages| format!(" ({pages})")).unwrap_or_default()
    }

    /// What would settle which of the reported causes is right, each question once.
    #[cfg(feature = "json")]
    pub(crate) fn settled_by(&self, figure: &Figure) -> Vec<String> {
        causes::for_the_owner(&self.open_questions(figure), &sketch_of(figure))
    }

    pub(super) fn open_questions(&self, figure: &Figure) -> Vec<OpenQuestion> {
        self.open_questions_of(figure, &shown_once(figure))
    }

    /// What would settle which of these causes is right.
    fn open_questions_of(&self, figure: &Figure, shown: &[&Explanation]) -> Vec<OpenQuestion> {
        let listed = self.listed(figure);
        let mut open: Vec<OpenQuestion> = Vec::new();
        let questions = |one: &Explanation| {
            let mut of_one = causes::settled_by(one.cause, listed, figure.is_record());
            if matches!(one.cause, Cause::Departures(..)) && one.is_rounded_one_way() {
                of_one.push(causes::how_walls_are_rounded());
                of_one.extend(self.house.states_walls().then(causes::how_walls_are_measured));
            }
            // What one cause does with two spaces is one question.
            of_one = causes::together(of_one);
            of_one.extend(
                Self::other_walls(figure, one)
                    .flat_map(|other| causes::settled_by(other.cause, listed, figure.is_record())),
            );
            of_one
        };
        for question in shown.iter().flat_map(|one| questions(one)) {
            if !open.contains(&question) {
                open.push(question);
            }
        }
        // Only what different causes do with spaces is one or the other.
        if shown.len() == 1 { causes::together(open) } else { open }
    }

    /// Other walls that were misread if not the wall of this cause: they give the same figure.
    fn other_walls<'b>(
        figure: &'b Figure,
        one: &'b Explanation,
    ) -> impl Iterator<Item = &'b Explanation> {
        let walls =
            |of: &Explanation| of.misread_wall().map(|wall| (wall.space, wall.also, wall.walls()));
        let reported = figure.explanations().reported();
        reported.filter(move |other| {
            walls(one).is_some()
                && walls(other).is_some()
                && walls(other) != walls(one)
                && one.echoes(other)
        })
    }

    /// The open questions in sentences: for the owner what to do, for the office that keeps the record what is
    /// requested.
    pub(super) fn settling(&self, figure: &Figure) -> String {
        self.settling_of(figure, &self.open_questions(figure))
    }

    fn settling_of(&self, figure: &Figure, open: &[OpenQuestion]) -> String {
        if self.is_for_the_office() {
            // The request begins with it.
            let height = causes::below_which_height();
            let is_asked = self.asks_anything(figure) && self.low_without_a_height().is_some();
            // Where it does, what is deducted for that height alone is a part of it.
            let low = self.house.spaces.iter().filter(|here| here.kind == Kind::Low);
            let low: Vec<String> =
                low.filter(|here| here.under.is_none()).map(causes::asked_as_deducted).collect();
            let is_part = |one: &OpenQuestion| match one {
                OpenQuestion::Total { does: "deducts", what } => {
                    what.iter().all(|one| low.contains(one))
                }
                one => *one == height,
            };
            let open = open.iter().filter(|one| !(is_asked && is_part(one)));
            let open: Vec<OpenQuestion> = open.cloned().collect();
            let asked = causes::asked_of_the_office(&open, asks_the_office(figure));
            return self.measured_for_the_first_time(asked);
        }
        let mut steps = causes::for_the_owner(open, &sketch_of(figure));
        steps.extend(self.unseen_wall());
        self.measured_for_the_first_time(format!("To settle it: {}.", steps.join("; ")))
    }

    /// A sentence that asks to measure walls again, without the last word where none was measured yet.
    fn measured_for_the_first_time(&self, text: String) -> String {
        match self.only_from_a_plan() {
            Some(_) => text
                .replace("measure it again", "measure it")
                .replace("measure them again", "measure them"),
            None => text,
        }
    }

    /// What another line of the record says about its rounding, in a sentence.
    pub(crate) fn evidence(&self, figure: &Figure) -> Option<String> {
        let evidence = figure.explanations().evidence()?;
        let said = causes::evidence(evidence, self.listed(figure));
        // A rule that somebody states and a line of the record that does not follow it are not left side by side.
        let against = self.against_the_rule(figure).map(|line| {
            let house = self.areas.gross().whole_foot();
            let is_plain = self.taken_as(figure).is_empty()
                && figure.measured() == self.areas.gross().tenth_foot();
            let house = is_plain.then(|| {
                format!("; in whole feet the house would be {}", self.number(house.whole_sq_ft()))
            });
            let house = house.unwrap_or_default();
            let word = figure.word();
            let stated = self.as_understood(figure);
            match figure.rounding_test().could_explain() {
                Some(CouldExplain::Yes) => {
                    let range = self.areas.gross().range().filter(|_| is_plain);
                    let says = figure.area().whole_sq_ft();
                    let is_within = |range: Range| {
                        (range.low.whole_sq_ft()..=range.high.whole_sq_ft()).contains(&says)
                    };
                    let feet = match range.map(is_within) {
                        Some(false) => ", and not whole feet",
                        Some(true) => ", and whole feet too",
                        None => "",
                    };
                    format!(
                        " The total fits half feet, {stated}{feet}{house}."
                    )
                }
                _ => format!(" So the {word}'s line for the {line} does not fit the half foot, {stated}{house}."),
            }
        });
        Some(format!("{said}{}", against.unwrap_or_default()))
    }

    /// The line of the record that fits whole feet and not the half foot, although its walls are said to be rounded to the
    /// half foot: `garage`.
    pub(super) fn against_the_rule(&self, figure: &Figure) -> Option<String> {
        let evidence = figure.explanations().evidence()?;
        let is_against = evidence.by_half.is_some() && figure.says_rule();
        is_against.then(|| words::quoted_in_text(&self.house.spaces[evidence.space].name))
    }

    /// What to check again in our own measurements, in sentences. Where a cause other than a part of the outline gives
    /// the very figure, no part is asked about.
    pub(crate) fn questions(&self, figure: &Figure) -> Vec<String> {
        let listed = self.listed(figure);
        let is_part = |one: &Explanation| one.cause.departures().any(DepartureKind::is_of_parts);
        let mut reported = figure.explanations().reported();
        let is_settled = reported.next().is_some_and(|one| one.leaves.abs() < 0.5 && !is_part(one));
        let is_open =
            |question: &&Question| !(is_settled && matches!(question, Question::Inside { .. }));
        let questions = figure.explanations().questions.iter().filter(is_open);
        questions.map(|question| causes::asked(*question, listed)).collect()
    }

    /// The questions about our own measurements, preceded by a space; empty if there are none.
    pub(super) fn ours(&self, figure: &Figure) -> String {
        let questions = if self.is_for_the_office() { Vec::new() } else { self.questions(figure) };
        let mut asked: String = questions.iter().map(|question| format!(" {question}")).collect();
        if figure.explanations().is_capped() {
            asked.push_str(" This house has too many parts to weigh them all: some were not.");
        }
        asked
    }

    /// The likeliest of the reported causes with how strong it is and where it is drawn: `covered porch counted (only common
    /// cause that fits)`. If it is the only one and that is short, all that is said of it. `None` if none is reported.
    #[cfg(feature = "pages")]
    pub(super) fn likeliest(&self, figure: &Figure) -> Option<(String, Above)> {
        let one = shown_once(figure).into_iter().next()?;
        let words = self.cause_said_with_walls(figure, one);
        let strength = self.strength_drawn(figure, one);
        Some(match self.only_cause(figure) {
            Some(given) => (format!("{words}{strength}: {given}"), Above::OnlyCause),
            None => (format!("{words}{strength}"), Above::Nothing),
        })
    }

    /// How strong a cause is and where it is drawn, in parentheses with a leading space.
    #[cfg(feature = "pages")]
    fn strength_drawn(&self, figure: &Figure, one: &Explanation) -> String {
        let drawn = self.pages_where(one.cause).map(|pages| format!("drawn on {pages}"));
        let equals = Self::as_likely(figure, one);
        let strength = one.strength().map(|one| strength(one, equals)).unwrap_or_default();
        let strength = strength.trim_start_matches(" (").trim_end_matches(')').to_owned();
        let told = drawn.into_iter().chain(Some(strength).filter(|told| !told.is_empty()));
        let told = told.collect::<Vec<String>>().join("; ");
        if told.is_empty() { told } else { format!(" ({told})") }
    }

    /// What is said of a cause that is the only one, after its name and strength, if all that is short: `gives 1,877, as
    /// the record says`.
    #[cfg(feature = "pages")]
    fn only_cause(&self, figure: &Figure) -> Option<String> {
        /// Two lines at the top of a page.
        const MOST: usize = 165;
        let [one] = &shown_once(figure)[..] else { return None };
        // Where it is drawn does not decide, since a listener is not told.
        let heard = Sentences { drawn_here: None, ..*self }.cause_sentence(figure, one);
        (heard.chars().count() <= MOST).then(|| self.given_by(figure, one))
    }

    /// What stands below the steps of a page whose top has the likeliest cause: what is said there in full is not said
    /// again.
    #[cfg(feature = "pages")]
    pub(crate) fn possible_below(&self, figure: &Figure) -> Vec<Block> {
        let above = self.told_above(figure).map_or(Above::Nothing, |(_, above)| above);
        let accounts = self.accounts(figure).map(|mut accounts| {
            if above != Above::Nothing {
                accounts.opening.clear();
            }
            if above == Above::OnlyCause {
                accounts.items.clear();
            }
            // The line at the top says already that there is none, and the last row how much is left.
            if accounts.names_nothing {
                accounts.opening.clear();
            }
            accounts.blocks()
        });
        self.rounding_said(figure).into_iter().chain(accounts.unwrap_or_default()).collect()
    }

    /// One reported cause: what it is, how strong, the area it gives, and how the figure compares with that.
    pub(super) fn cause_sentence(&self, figure: &Figure, one: &Explanation) -> String {
        let words = capital(&self.cause_said_with_walls(figure, one));
        let strength = self.pages_and_strength(figure, one);
        format!("{words}{strength}: {}", self.given_by(figure, one))
    }

    /// The area that a reported cause gives, and how the figure compares with that: `gives 1,877, as the record says`.
    fn given_by(&self, figure: &Figure, one: &Explanation) -> String {
        let unsure = match (one.cause, one.rounding) {
            (Cause::Rounding(RoundingTaken::AlwaysUp | RoundingTaken::AlwaysDown), _) => {
                Unsure::Closing
            }
            _ if self.is_taken_finely(figure, one) && figure.is_record() => Unsure::OfficeReading,
            _ if self.is_taken_finely(figure, one) => Unsure::Reading,
            _ => Unsure::Rounding,
        };
        if let Some(said) = self.closed_or_rounded(figure, one) {
            return said;
        }
        let gives = Gives::of(one.sq_ft, one.printed, figure.area().whole_sq_ft(), unsure);
        let closed = one.sum.filter(|sum| sum.by == SummedBy::Closing).map(|sum| {
            let house = match one.cause {
                Cause::Face(_) => String::new(),
                _ => format!(" (the house is then {})", self.number(sum.house.whole_sq_ft())),
            };
            format!(", with another wall adjusted so that the rounded walls meet{house}")
        });
        let closed = closed.unwrap_or_default();
        let said = match causes::meant(one.cause, figure) {
            Some(meant) if !gives.is_as_said() => {
                gives.said_of_meant(meant.area().whole_sq_ft(), self.is_metric())
            }
            _ => gives.said(&the(figure), self.is_metric()),
        };
        let doubled = self.doubled(figure, one).or_else(|| self.level_taken(figure, one));
        let doubled = doubled.unwrap_or_default();
        let as_measured = self.counted_as_measured(figure, one).unwrap_or_default();
        let mut others: Vec<String> =
            Self::other_walls(figure, one).map(|other| self.cause_said(figure, other)).collect();
        let own = self.cause_said(figure, one);
        others.retain(|other| *other != own);
        others.dedup();
        let others = match others.is_empty() {
            true => String::new(),
            false => format!("; {} would give the same", words::list_or(&others)),
        };
        format!("{said}{closed}{doubled}{as_measured}{others}")
    }

    /// The pages of a cause and how strong it is, in one pair of parentheses, with a leading space.
    fn pages_and_strength(&self, figure: &Figure, one: &Explanation) -> String {
        let equals = Self::as_likely(figure, one);
        let strength = one.strength().map(|one| strength(one, equals)).unwrap_or_default();
        match (self.pages_of_cause(one.cause), strength.strip_prefix(" (")) {
            (pages, None) => pages,
            (pages, Some(_)) if pages.is_empty() => strength,
            (pages, Some(strong)) => format!("{}; {strong}", pages.trim_end_matches(')')),
        }
    }

    /// How many of the causes named after the likeliest are as likely as it, as printed, and leave as little.
    fn as_likely(figure: &Figure, one: &Explanation) -> usize {
        let shown = shown_once(figure);
        let after = shown.iter().skip_while(|of| of.cause != one.cause).skip(1);
        let is_equal = |of: &&&Explanation| {
            of.strength() == Some(Strength::AlsoFits) && of.is_as_likely_as(one)
        };
        after.take_while(is_equal).count()
    }

    /// What every wall rounded one way can give, depending on how the outline is closed; or what a total rounded to
    /// hundreds can come from, where this house as rounded here is just outside. `None` for all else.
    fn closed_or_rounded(&self, figure: &Figure, one: &Explanation) -> Option<String> {
        let says = figure.area().whole_sq_ft();
        let whole = |sq_ft: f64| Area::from_float_sq_ft(sq_ft).whole_sq_ft();
        match one.cause {
            Cause::Rounding(RoundingTaken::AlwaysUp | RoundingTaken::AlwaysDown) => {
                let (low, high) = (whole(one.band.low), whole(one.band.high));
                let is = format!("{} is {}", the(figure), self.number(says));
                let can_be = match low < high {
                    true => format!("{} to {}", self.number(low), self.number(high)),
                    false => self.number(low),
                };
                if self.is_closed_beyond_a_foot(figure, one) {
                    return Some(format!(
                        "so rounded, these walls do not close; closing them changes some by more than a foot, and can give {can_be}; {is}"
                    ));
                }
                (low < high).then(|| {
                    format!(
                        "the house can then be {can_be}, depending on how its outline is closed; {is}"
                    )
                })
            }
            Cause::Total { how, with: None } => {
                let half = how.rounded_to()? >> 1;
                let house = (Area::from_float_sq_ft(one.sq_ft) - one.effect).whole_sq_ft();
                let (low, high) = (says - half, says + half - 1);
                (!(low..=high).contains(&house)).then(|| {
                    format!(
                        "totals from {} to {} are rounded to {}; this house comes to {}, and rounding its walls another way could bring it there",
                        self.number(low),
                        self.number(high),
                        self.number(says),
                        self.number(house)
                    )
                })
            }
            _ => None,
        }
    }

    /// Whether every wall rounded one way gives the very figure although no walls within a foot of their lengths do, so that
    /// closing the outline has to take some of them further.
    fn is_closed_beyond_a_foot(&self, figure: &Figure, one: &Explanation) -> bool {
        figure.rounding_test().could_explain() == Some(CouldExplain::No) && one.leaves.abs() < 0.5
    }

    /// A note that what a cause counts was taken as measured, where the figure's own lengths of other walls are a step
    /// before it: with the recorded length of a shared wall it would have another size, which is told if it is known.
    pub(super) fn counted_as_measured(&self, figure: &Figure, one: &Explanation) -> Option<String> {
        let is_after_recorded = figure.line(BridgeStep::RecordedSides).is_some();
        let spaces: Vec<usize> = one
            .cause
            .each(self.house)
            .into_iter()
            .filter_map(|kind| match kind {
                DepartureKind::Counted { space } => Some(space),
                _ => None,
            })
            .collect();
        let own = match spaces.as_slice() {
            [space] => self.by_its_own_lengths(figure, *space),
            _ => None,
        };
        let own = own.map(|own| format!(", {own}")).unwrap_or_default();
        let names: Vec<&str> =
            spaces.iter().map(|&space| self.house.spaces[space].name.as_str()).collect();
        // The drawing has the size as measured, which may be another one.
        let how = match figure.side_rule() {
            SideRule::Step(Step::WholeFoot) => "in whole feet",
            SideRule::Step(Step::HalfFoot) => "in half feet",
            _ => "as measured",
        };
        (is_after_recorded && !names.is_empty())
            .then(|| format!(", with {} {how}{own}", words::all_named(&names)))
    }

    /// Whether a cause goes with walls that are not rounded to feet, so that only the reading of a tape is left to
    /// change what it gives.
    pub(super) fn is_taken_finely(&self, figure: &Figure, one: &Explanation) -> bool {
        match one.rounding {
            Some(RoundingTaken::NotRounded) => true,
            Some(_) => false,
            None => !matches!(figure.side_rule(), SideRule::Step(Step::WholeFoot | Step::HalfFoot)),
        }
    }

    /// Whether the walls can only be taken at a face by a thickness that the file does not state.
    pub(super) fn is_assumed_at(&self, face: Face) -> bool {
        !self.assumed_at(face).is_empty()
    }

    /// The thicknesses that are assumed to get to this face, in words: `a veneer of 4 5/8"`.
    fn assumed_at(&self, face: Face) -> Vec<String> {
        let walls = crate::areas::at_face::Walls::of(self.house, face);
        let assumed = walls.map_or_else(|_| Assumed::default(), |walls| walls.assumed());
        [
            (assumed.veneer, "a veneer of", wall_moves::ASSUMED_VENEER, ""),
            (
                assumed.wall_behind_veneer,
                "a wall of",
                wall_moves::ASSUMED_WALL_BEHIND_VENEER,
                " behind the veneer",
            ),
            (assumed.wall, "a wall of", wall_moves::ASSUMED_WALL, ""),
            (assumed.common, "a common wall of", wall_moves::ASSUMED_COMMON, ""),
        ]
        .into_iter()
        .filter(|(is_assumed, ..)| *is_assumed)
        .map(|(_, what, thick, where_it_is)| format!("{what} {thick}{where_it_is}"))
        .collect()
    }

    /// A note where the upper level was taken at the whole outline below, or what is open to below not deducted, and the
    /// figure is exactly twice that outline: `; 1,904 is 2 × 952, twice the whole level below`.
    pub(super) fn doubled(&self, figure: &Figure, one: &Explanation) -> Option<String> {
        let upper = |how: LevelTaken| how == LevelTaken::WholeBelow;
        let all = figure.area().whole_sq_ft();
        let counted = self.house.spaces.iter().filter(|space| space.counted);
        let levels: HashSet<usize> = counted.map(|space| space.level).collect();
        // Whole feet, since only those are exactly twice as much by design.
        let lowest = levels.iter().min().map(|&level| {
            let here = (0..self.house.spaces.len()).filter(|&i| {
                self.house.spaces[i].level == level
                    && crate::areas::is_in_total(self.house, i, false)
            });
            here.map(|i| self.areas.spaces[i].net_whole_foot.whole_sq_ft()).sum::<i64>()
        });
        let is_whole_below = match one.cause {
            Cause::Departures(DepartureKind::Level { how, .. }, None) => upper(how),
            cause if cause.is_not_deducted() => lowest.is_some_and(|lowest| 2 * lowest == all),
            _ => false,
        };
        let is_exact = one.leaves.abs() < 0.5 && all % 2 == 0;
        (is_whole_below && is_exact && levels.len() == 2).then(|| {
            let unit = if self.is_metric() { " sq ft" } else { "" };
            let (twice, once) = (thousands(all), thousands(all >> 1));
            match one.cause {
                cause if cause.is_not_deducted() => {
                    format!("; both levels are then {once}{unit}: 2 × {once} = {twice}{unit}")
                }
                _ => format!("; {twice}{unit} is 2 × {once}{unit}, twice the whole level below"),
            }
        })
    }

    /// A note of the size that a level is taken at, and of its own: `; that is 330 sq ft instead of 236 sq ft for the loft`.
    fn level_taken(&self, figure: &Figure, one: &Explanation) -> Option<String> {
        let Cause::Departures(DepartureKind::Level { level, .. }, None) = one.cause else {
            return None;
        };
        // The step says it.
        let mut lines = figure.lines().iter();
        if lines.any(|line| line.cause() == Some(one.cause) && self.level_worked(line).is_some()) {
            return None;
        }
        let is_fine = self.is_taken_finely(figure, one);
        let spaces = (0..self.house.spaces.len()).filter(|&i| {
            self.house.spaces[i].level == level && crate::areas::is_in_total(self.house, i, false)
        });
        let own = spaces.map(|i| match is_fine {
            true => self.areas.spaces[i].net_tenth_foot,
            false => self.areas.spaces[i].net_whole_foot,
        });
        let own: Area = own.sum();
        let [taken, own] =
            [own + one.effect, own].map(|area| size_of_sq_ft(area.whole_sq_ft(), self.is_metric()));
        let to_feet = if is_fine { "" } else { ", each wall to the whole foot" };
        let name = words::the_quoted(&self.house.levels[level].name);
        Some(format!("; that is {taken} instead of {own} for {name}{to_feet}"))
    }

    /// Says that nothing common explains the rest; `None` if rounding alone does.
    pub(super) fn nothing_common(&self, figure: &Figure) -> Option<Accounts> {
        let rest = not_explained(figure);
        let best = figure.explanations().list().first();
        let is_alone = best.is_some_and(|best| best.cause == Cause::None && best.fits());
        let is_within = figure.lines().iter().any(Line::is_within_rounding);
        let could = figure.rounding_test().could_explain();
        let is_rounded = matches!(could, Some(CouldExplain::Yes | CouldExplain::OnlyAgainst));
        // What is left within the interval printed for the measured area needs no other cause, but is not passed over.
        let is_read = figure.is_read();
        let is_rounding = is_read || is_alone && is_rounded;
        let is_silent =
            rest == 0 || is_rounding || is_within || self.listed_as_much(figure, rest).is_some();
        let figure_word = figure.word();
        if let Some(part) = self.unwalked(figure).filter(|_| !is_silent) {
            return Some(Accounts {
                opening: part,
                items: Vec::new(),
                near: Vec::new(),
                closing: match self.reader {
                    Reader::Owner => format!(
                        "Measure there before anything is asked of the {figure_word}.{}",
                        self.ours(figure)
                    ),
                    // The request says what has to be looked at first.
                    Reader::Office => format!("{WHAT_A_MAP_SHOWS}{}", self.ours(figure)),
                },
                asks: String::new(),
                names_nothing: false,
            });
        }
        if let Some((space, size)) = self.as_large(figure, rest).filter(|_| !is_silent) {
            let name = words::the_quoted(&self.house.spaces[space].name);
            let settled = match (self.reader, figure.is_record()) {
                (Reader::Office, true) if !asks_the_office(figure) => String::new(),
                (Reader::Office, true) => {
                    format!("Please state whether the record's total counts {name}.")
                }
                (Reader::Office, false) => {
                    format!("Whether the {figure_word}'s total counts {name} is not known here.")
                }
                (Reader::Owner, _) => format!(
                    "Ask whether the {figure_word}'s total counts {name}.{}",
                    self.ours(figure)
                ),
            };
            let (closing, asks) = self.or_asked(figure, settled);
            return Some(Accounts {
                opening: format!(
                    "{}{}, {}, is {} as large as the {} that are left.",
                    capital(&name),
                    self.in_brackets(self.pages_of(std::iter::once(space))),
                    size_of_sq_ft(size, self.is_metric()),
                    if size == rest { "just" } else { "about" },
                    self.size_left(figure)
                ),
                items: Vec::new(),
                near: vec![space],
                closing,
                asks,
                names_nothing: false,
            });
        }
        let is_drawn = self.house.drawn.iter().any(|drawn| figure.is_of(drawn.drawn));
        // Nobody takes a small difference for one of two houses.
        let is_far = rest.abs() * OTHER_HOUSE_SHARE >= figure.area().whole_sq_ft();
        let if_far = |words: &str| if is_far { words.to_owned() } else { String::new() };
        let ask = match (self.reader, figure.is_record()) {
            (Reader::Owner, _) if is_drawn => format!(
                "Ask how the {figure_word}'s total was added up{}",
                if_far(", and whether it is of this house")
            ),
            (Reader::Office, true) if is_drawn && asks_the_office(figure) => format!(
                "Please state how the record's total was added up{}",
                if_far(", and whether it is of this house")
            ),
            (Reader::Owner, _) => format!(
                "Ask for the {figure_word}'s own sketch and the lengths on it{}",
                if_far(", and whether it is of this house")
            ),
            (Reader::Office, true) if !asks_the_office(figure) => String::new(),
            (Reader::Office, true) => format!(
                "Please provide the record's own sketch with its lengths{}",
                if_far(", and state whether it is of this house")
            ),
            (Reader::Office, false) => format!(
                "The {figure_word}'s own sketch and the lengths on it would show where the difference lies{}",
                if_far(", and whether they are of this house")
            ),
        };
        if is_read && rest != 0 {
            return Some(Accounts {
                opening: format!(
                    "The {} that are left are within what measuring again could change.",
                    self.size_left(figure)
                ),
                items: Vec::new(),
                near: Vec::new(),
                closing: String::new(),
                asks: String::new(),
                names_nothing: false,
            });
        }
        if is_silent {
            return None;
        }
        if let Some(accounts) = self.wall_between(figure, rest) {
            return Some(accounts);
        }
        if let Some(opening) = self.all_but_little(figure) {
            return Some(Accounts {
                opening,
                items: Vec::new(),
                near: Vec::new(),
                closing: self.ours(figure).trim_start().to_owned(),
                asks: String::new(),
                names_nothing: false,
            });
        }
        if let Some(opening) = self.nearly_unrounded(figure) {
            let settled = self.settling_of(figure, &[causes::how_walls_are_rounded()]);
            let (closing, asks) = self.or_asked(figure, settled);
            return Some(Accounts {
                opening,
                items: Vec::new(),
                near: Vec::new(),
                closing,
                asks,
                names_nothing: false,
            });
        }
        if self.is_next_to_a_total(figure) {
            let settled = self.settling_of(figure, &[causes::how_walls_are_rounded()]);
            let (closing, asks) = self.or_asked(figure, settled);
            return Some(Accounts {
                opening: "That is too near to look for another cause.".to_owned(),
                items: Vec::new(),
                near: Vec::new(),
                closing,
                asks,
                names_nothing: false,
            });
        }
        let nearest = self.nearest(figure, rest);
        let is_nearly_all = nearest.as_ref().is_some_and(|near| near.is_nearly_all());
        let is_small = rest.abs() * SMALL_SHARE < figure.area().whole_sq_ft();
        // A wall's thickness that nobody stated gives almost any small gap.
        let is_assumed =
            |one: &Explanation| matches!(one.cause, Cause::Face(face) if self.is_assumed_at(face));
        let unnamed = figure.explanations().unnamed();
        let unnamed = unnamed.filter(|one| !is_nearly_all && !is_small && !is_assumed(one));
        if let Some(one) = unnamed {
            return Some(self.by_chance(figure, one));
        }
        if let Some(accounts) = nearest.as_ref().and_then(|near| self.nearly(figure, rest, near)) {
            return Some(accounts);
        }
        let half = if nearest.is_none() { self.half_of_a_space(figure, rest) } else { None };
        if half.is_some() {
            return half;
        }
        let opening = match &nearest {
            Some(near) => self.set_beside(figure, rest, near, None),
            // Where the steps lead beyond the figure, nothing is left for a cause to add.
            None if rest < 0 => {
                let left = figure.line(BridgeStep::NotExplained).map_or(Area::ZERO, Line::area);
                let why = match figure.explanations().is_any_fitting() {
                    true => format!("{UNLIKELY} that"),
                    false => "No common cause explains that".to_owned(),
                };
                format!(
                    "The rows come to {}, {} more than {}. {why}.",
                    self.size(figure.area() - left),
                    self.size_left(figure),
                    the(figure)
                )
            }
            None if figure.explanations().is_any_fitting() => {
                format!("{UNLIKELY} the {}.", self.left_over(figure, rest))
            }
            None => format!("No common cause explains the {}.", self.left_over(figure, rest)),
        };
        let twice = self.twice(figure);
        let names_nothing = nearest.is_none() && twice.is_none();
        let opening = match twice {
            Some(twice) => format!("{twice} {opening}"),
            None => opening,
        };
        let settled = match ask.is_empty() {
            true => self.ours(figure).trim_start().to_owned(),
            false => format!("{ask}.{}", self.ours(figure)),
        };
        let (closing, asks) = self.or_asked(figure, settled);
        Some(Accounts {
            opening,
            items: Vec::new(),
            near: nearest.map(|near| near.numbers()).unwrap_or_default(),
            closing,
            asks,
            names_nothing,
        })
    }

    /// A cause that gives the very figure but is not named, since a chance match is too likely, and what would settle it.
    fn by_chance(&self, figure: &Figure, one: &Explanation) -> Accounts {
        let settled = self.settling_of(figure, &self.open_questions_of(figure, &[one]));
        let settled = match self.ours(figure) {
            ours if settled.is_empty() => ours.trim_start().to_owned(),
            ours => format!("{settled}{ours}"),
        };
        let (closing, asks) = self.or_asked(figure, settled);
        Accounts {
            opening: format!(
                "{} would give {}, as {} says, but that could be chance: {}.",
                if one.cause.departures().nth(1).is_some() {
                    "Two things together"
                } else {
                    "One cause"
                },
                self.number(figure.area().whole_sq_ft()),
                the(figure),
                self.cause_said_with_walls(figure, one)
            ),
            items: Vec::new(),
            near: Vec::new(),
            closing,
            asks,
            names_nothing: false,
        }
    }

    /// A sentence on a part that a map shows but that was not measured, with about the area that is left; `None` if
    /// there is none.
    pub(crate) fn unwalked(&self, figure: &Figure) -> Option<String> {
        let part = figure.unwalked()?;
        let left = not_explained(figure);
        let (wide, deep) = (rounded_float(part.size_ft.0), rounded_float(part.size_ft.1));
        let sq_ft = rounded_float(part.sq_ft());
        Some(format!(
            "A map shows a part that was not measured, on the {} side of {}. Without its eaves it is about {wide}' by {deep}': {sq_ft} of the {} sq ft that are not explained.",
            part.side.word(),
            words::the_quoted(&self.house.spaces[part.beside].name),
            thousands(left)
        ))
    }

    /// Whole square feet inside a sentence that has said what they are; in a metric file in both units.
    pub(super) fn number(&self, sq_ft: i64) -> String {
        if self.is_metric() { size_of_sq_ft(sq_ft, true) } else { thousands(sq_ft) }
    }

    /// Warns that a wall that follows from the others hides an error in them.
    pub(super) fn unseen_wall(&self) -> Option<String> {
        let counted = self.house.spaces.iter().filter(|space| space.counted);
        let mut unseen = counted.flat_map(|space| {
            let follows = space.sides.iter().filter(|side| side.follows);
            follows.map(move |side| {
                format!(
                    "measure side {} of {} too, which now follows from the others",
                    side.number,
                    words::the_named(&space.name)
                )
            })
        });
        unseen.next()
    }

    /// How many combinations of causes and roundings were weighed for a figure.
    pub(crate) fn weighed(&self, figure: &Figure) -> String {
        thousands(i64::try_from(figure.explanations().weighed()).unwrap_or(i64::MAX))
    }

    /// Whether a reported cause is in the list of the report, or told beside the one that it gives the same as.
    pub(crate) fn is_shown(&self, figure: &Figure, one: &Explanation) -> bool {
        let shown = shown_once(figure);
        let is_in_words =
            |of: &Explanation| self.cause_said(figure, of) == self.cause_said(figure, one);
        shown.iter().any(|of| is_in_words(of))
            || shown.iter().any(|of| Self::other_walls(figure, of).any(is_in_words))
    }

    /// How many of the causes are named: `none is named`, `one is named`, `3 are named`.
    pub(crate) fn named(&self, figure: &Figure) -> String {
        match shown_once(figure).len() {
            0 => "none is named".to_owned(),
            1 => "one is named".to_owned(),
            count => format!("{count} are named"),
        }
    }

    /// How many causes beside rounding alone fit the figure, and how many of them are named.
    pub(crate) fn fitting(&self, figure: &Figure) -> String {
        let shown = shown_once(figure);
        let fit = shown.iter().find_map(|one| match one.strength() {
            Some(Strength::Only | Strength::ByFar) => Some(1),
            Some(Strength::LikeliestOf(count) | Strength::NearestOf(count)) => Some(count),
            _ => None,
        });
        let fit = fit.unwrap_or(0).max(shown.len());
        let is_near = |one: &&Explanation| one.strength() == Some(Strength::ComesNear);
        let is_not_alone = |one: &&Explanation| one.strength() == Some(Strength::LikeliestOf(1));
        let is_by_far = |one: &&Explanation| one.strength() == Some(Strength::ByFar);
        match (fit, shown.len()) {
            (1, 1) if shown.iter().any(is_near) => {
                "Of causes besides rounding, one comes near, and it is named".to_owned()
            }
            (_, named) if shown.iter().any(is_near) => {
                format!("{named} causes besides rounding that fit or come near are named")
            }
            (0, _) if figure.explanations().is_any_fitting() => {
                "Besides rounding, no common cause is likely enough to be named".to_owned()
            }
            (0, _) => "Besides rounding, no common cause explains the difference".to_owned(),
            (1, _) if shown.iter().any(is_not_alone) => {
                "Besides rounding, one cause fits and is named; others cannot be ruled out"
                    .to_owned()
            }
            (1, _) if shown.iter().any(is_by_far) => {
                "Besides rounding, one cause is by far the likeliest, and it is named".to_owned()
            }
            (1, _) => "Besides rounding, one cause fits, and it is named".to_owned(),
            (2, 2) => "Besides rounding, 2 causes fit, and both are named".to_owned(),
            (fit, named) if fit == named => {
                format!("Besides rounding, {fit} causes fit, and all are named")
            }
            (fit, named) => {
                format!("Besides rounding, {fit} causes fit, and {named} of them are named")
            }
        }
    }

    /// A cause in words, with the way of rounding that supports it best if that is not the figure's own.
    pub(crate) fn cause_said(&self, figure: &Figure, one: &Explanation) -> String {
        let said = causes::said(one.cause, self.listed(figure), figure);
        let is_by_levels = one.sum.is_some_and(|sum| sum.by == SummedBy::Levels);
        let by_levels = if is_by_levels { " and each level rounded by itself" } else { "" };
        match (one.cause, one.rounding) {
            (Cause::Rounding(_), _) | (_, None) => said,
            // Where every wall is a whole number of feet, that changes none.
            (_, Some(RoundingTaken::NotRounded)) if figure.rounding_test().is_on_feet() => {
                format!("{said}{by_levels}")
            }
            (_, Some(rounding)) => format!("{said}, with {}{by_levels}", causes::rounded(rounding)),
        }
    }

    /// The same, and whether the thickness of the walls is assumed.
    fn cause_said_with_walls(&self, figure: &Figure, one: &Explanation) -> String {
        let assumed = match one.cause {
            Cause::Face(face) => self.assumed_at(face),
            _ => Vec::new(),
        };
        let assumed = match assumed.is_empty() {
            true => String::new(),
            false => format!(", if there is {}, as assumed here", words::all_of(&assumed)),
        };
        format!("{}{assumed}", self.cause_said(figure, one))
    }

    /// The house with what the file states about a figure besides its total.
    pub(crate) fn listed<'b>(&'b self, figure: &'b Figure) -> Listed<'b> {
        Listed { house: self.house, counting: figure.counting() }
    }
}

/// Whether the office is asked anything about a figure: only if it is the record, and not smaller than the house.
pub(super) fn asks_the_office(figure: &Figure) -> bool {
    figure.is_record() && figure.area() >= figure.measured_like_figure()
}

/// What the walls of a figure are compared with: `the record's sketch`, `the figure's own sketch`.
fn sketch_of(figure: &Figure) -> String {
    match figure.is_record() {
        true => causes::RECORDS_SKETCH.to_owned(),
        false => format!("the {}'s own sketch", figure.word()),
    }
}

/// The level's page as it stands in a sentence until the pages are numbered; `None` for a house with more levels than
/// letters.
pub(crate) fn page_of_level(level: usize) -> Option<String> {
    let letter = u8::try_from(level).ok().filter(|level| *level < 26)?;
    Some(format!("{}{PAGE_TO_COME}", char::from(b'a' + letter)))
}

/// Follows what stands for a page number until the pages are numbered. It is an error in a sides file, so no typed text
/// holds it.
pub(crate) const PAGE_TO_COME: char = '\u{1}';

/// What is left is compared with another house only from this share of the figure on: a tenth.
const OTHER_HOUSE_SHARE: i64 = 10;

/// Before what is left where some cause would give the very figure but is not likely enough to be named.
pub(super) const UNLIKELY: &str = "No common cause is likely enough to be named for";

/// Of what is left below a hundredth of the figure, no match that could be chance is told.
const SMALL_SHARE: i64 = 100;

/// How strong a cause is, in parentheses, with a leading space; the likeliest with how many others are as likely.
fn strength(strength: Strength, equals: usize) -> String {
    let shown = |count: usize| match count > MOST_REPORTED {
        true => format!("; {MOST_REPORTED} shown"),
        false => String::new(),
    };
    match strength {
        Strength::Only => " (only common cause that fits)".to_owned(),
        Strength::ByFar => " (by far the likeliest)".to_owned(),
        Strength::LikeliestOf(1) => " (fits, but others cannot be ruled out)".to_owned(),
        Strength::LikeliestOf(count) if equals > 0 => {
            let next =
                if equals == 1 { "the next".to_owned() } else { format!("the next {equals}") };
            let fit = if equals + 1 < count { format!("; {count} fit") } else { String::new() };
            format!(" (fits as well as {next}{fit}{})", shown(count))
        }
        Strength::LikeliestOf(count) => format!(" (likeliest of {count} that fit{})", shown(count)),
        Strength::NearestOf(count) => format!(" (nearest of {count} that fit)"),
        Strength::AlsoFits => " (also fits)".to_owned(),
        Strength::ComesNear => " (comes near)".to_owned(),
    }
}

/// The reported causes, without those that mean the same as an earlier one and change the house in the same way.
pub(super) fn shown_once(figure: &Figure) -> Vec<&Explanation> {
    let mut shown: Vec<&Explanation> = Vec::new();
    for one in figure.explanations().reported() {
        let is_shown = |before: &&Explanation| before.echoes(one);
        if !shown.iter().any(is_shown) {
            shown.push(one);
        }
    }
    shown
}
