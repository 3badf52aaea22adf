//! Sentences about a house and its figures. The terminal and the pages print the same words.

use std::collections::HashSet;

use crate::areas::range::Range;
use crate::areas::rule::Settings;
use crate::areas::{Areas, EquallyNear, SpaceAreas, is_in_total};
use crate::diagnostic::Word;
use crate::diagnostic::{quoted, words};
use crate::geometry::compass::Axis;
use crate::house::wall_moves::Assumed;
use crate::house::{
    Checked, Face, House, Kind, LengthSource, ReferenceSource, Run, SideNumber, SideRule, Space,
};
use crate::reconcile::cause::Cause;
use crate::reconcile::decision::MOST_REPORTED;
use crate::reconcile::departures::{DepartureKind, LevelTaken, Listed};
use crate::reconcile::ours::Question;
use crate::reconcile::settings::RoundingTaken;
use crate::reconcile::{
    BridgeStep, CouldExplain, Explanation, Figure, Line, OutlineReport, Reconciliation, Share,
    Strength, Weights,
};
use crate::units::area::Area;
use crate::units::decimal::{group_thousands, rounded_quotient, thousands};
use crate::units::length::{FineStep, Form, Length, Step, WrittenLength};
use crate::wording::causes;
use crate::wording::causes::OpenQuestion;
use crate::wording::compared::{Gives, Unsure};
use crate::wording::size::{
    exact_size, number_alone, number_or_size, off_by, percent_apart, size, size_apart,
    size_of_sq_ft, step_alone, step_range, typed_size,
};
use rust_decimal::Decimal;

/// What fairfoot is not; printed on everything.
pub const DISCLAIMER: &str = "Not an appraisal, not a survey, not legal advice; local rules and licensed practice come first.";

/// The end of every report and page.
pub(crate) const CAUTIONS: &str = "Not an appraisal, not a survey, not legal advice; local rules and licensed practice come first. Figures are computed from these lengths; that does not show that the lengths are right.";

/// Printed first on every output if the record is smaller than the house.
pub const SMALLER_RECORD: &str = "Caution: the record is smaller than this house. Handing these pages in may raise the value; ask a licensed professional first.";

/// The same caution on a page that may reach the office: one sentence, not bold.
pub(crate) const SMALLER_RECORD_ON_A_PAGE: &str = "A larger area may raise the value; ask a licensed professional before these pages are handed in.";

/// Possible explanations of a figure, in words.
pub(crate) struct Accounts {
    /// The sentence before the items.
    pub(crate) opening: String,
    /// One explanation each, most likely first.
    pub(crate) items: Vec<String>,
    /// The sentence after the items.
    pub(crate) closing: String,
}

/// A wall whose lengths differ between two outlines.
pub(crate) struct WallApart {
    pub(crate) side: String,
    pub(crate) measured: String,
    pub(crate) drawn: String,
    pub(crate) difference: String,
}

/// The reader of a text. The report is for the person who typed the file, and says what to ask; the pages are for an
/// office, and ask it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Reader {
    Owner,
    #[cfg_attr(not(feature = "pages"), allow(dead_code, reason = "only pages are for an office"))]
    Office,
}

/// The subject of the sentences: a house with its areas.
#[derive(Clone, Copy)]
pub(crate) struct Sentences<'a> {
    pub(crate) house: &'a House,
    pub(crate) areas: &'a Areas,
    pub(crate) settings: Settings,
    /// The form in which most lengths of the file are written.
    pub(crate) form: Form,
    reader: Reader,
}

impl<'a> Sentences<'a> {
    /// Sentences about the house of these areas, addressed to the person who typed its file.
    pub(crate) fn of(areas: &'a Areas) -> Sentences<'a> {
        let house = areas.house();
        Sentences {
            house,
            areas,
            settings: *areas.settings(),
            form: house.usual_form(),
            reader: Reader::Owner,
        }
    }

    /// Sentences about the house of these areas, addressed to the office that gets the pages.
    #[cfg(feature = "pages")]
    pub(crate) fn for_the_office(areas: &'a Areas) -> Sentences<'a> {
        Sentences { reader: Reader::Office, ..Sentences::of(areas) }
    }

    /// Whether the sentences are addressed to the office.
    pub(crate) fn is_for_the_office(&self) -> bool {
        self.reader == Reader::Office
    }
}

impl Sentences<'_> {
    /// The property's location; empty if the file does not state it.
    pub(crate) fn place(&self) -> String {
        self.house.particulars.place()
    }

    /// Account, case and tax year; empty if the file has none of them.
    pub(crate) fn numbers(&self) -> String {
        self.house.particulars.numbers()
    }

    /// The main sentence for each figure, or for the measured area if there is no figure.
    pub(crate) fn statements(&self, figures: &[Figure]) -> Vec<String> {
        if figures.is_empty() && !self.house.spaces.is_empty() {
            let known = capital(self.known());
            return vec![format!("{known} {}.", self.size(self.areas.gross().tenth_foot()))];
        }
        // What is below grade is not in the record's total, or is what the difference is about.
        let below = self.areas.below_grade().filter(|_| self.is_for_the_office());
        let below = below.map(|below| below.tenth_foot());
        let statement = |figure: &Figure| {
            statement(figure, self.obtained(), below, self.own_step(figure), self.is_metric())
        };
        figures.iter().map(statement).collect()
    }

    /// What the house's walls are rounded to for a figure that states a fine step other than the usual one: `each wall
    /// to the inch`.
    pub(crate) fn own_step(&self, figure: &Figure) -> Option<&'static str> {
        match figure.side_rule() {
            SideRule::Step(step @ (Step::Inch | Step::TenthFoot))
                if figure.says_rule() && step != self.settings.fine.step() =>
            {
                Some(step.spoken())
            }
            _ => None,
        }
    }

    /// Says that a listing repeats the record's figure and so adds nothing; `None` if it also equals the measured
    /// area.
    pub(crate) fn repeated(&self, figures: &[Figure]) -> Option<String> {
        crate::reconcile::listing_repeats_record(figures)
            .then(|| "The listing repeats the record's figure.".to_owned())
    }

    /// Warns of walls that may be missing. They affect every figure, so this comes first.
    pub(crate) fn missing_walls(&self, reconciliation: &Reconciliation) -> Vec<String> {
        let is_missing = |warning: &&crate::diagnostic::Diagnostic| warning.word() == Word::NoTurn;
        let sentence = |warning: &crate::diagnostic::Diagnostic| {
            let line = self.house.source().line(warning.span().start);
            format!(
                "Line {line}: {}. Is a wall missing between the two? The side given by closing would hide that, and the areas below would be wrong.",
                warning.message().replace('`', "\"")
            )
        };
        reconciliation.warnings().iter().filter(is_missing).map(sentence).collect()
    }

    /// Whether a record agrees with its own sketch or lengths; `None` if it has neither.
    pub(crate) fn own_sketch(&self, figure: &Figure) -> Option<String> {
        let own = figure.own_sketch()?;
        let apart = own.whole_sq_ft() - figure.area().whole_sq_ft();
        let drawn = figure.own_sketch_as_drawn().filter(|drawn| *drawn != own);
        let name = capital(&the(figure));
        let is_drawn = |drawn: &crate::house::ReferenceOutline| figure.is_of(drawn.drawn);
        let (own_sides, give) = if self.house.drawn.iter().any(is_drawn) {
            ("sketch", "its sides come")
        } else {
            ("lengths", "they come")
        };
        Some(match (apart, drawn) {
            (0, None) if figure.takes_nothing_off() => {
                format!("{name}'s own {own_sides} and its total agree, with nothing deducted.")
            }
            (0, _) => format!("{name}'s own {own_sides} and its total agree."),
            (_, Some(drawn)) => format!(
                "{name}'s own {own_sides} and its total do not agree: {give} to {}, or {} less what is deducted here; its total is {}.",
                self.size(drawn),
                number_or_size(own, self.is_metric()),
                self.size(figure.area())
            ),
            _ => format!(
                "{name}'s own {own_sides} and its total do not agree: {give} to {} and its total is {}, a difference of {}.",
                self.size(own),
                self.size(figure.area()),
                size_apart(own, figure.area(), self.is_metric()).trim_end_matches(" sq ft")
            ),
        })
    }

    /// The name of the total above grade.
    pub(crate) fn gross_name(&self) -> &'static str {
        match self.house.particulars.interior_seen {
            Some(true) => "Gross living area, outside",
            _ => "Gross area, outside measure",
        }
    }

    /// A length in the file's most frequent unit, rounded for people.
    pub(crate) fn length(&self, length: Length) -> String {
        const CENTIMETER: i64 = 10_000_000;
        let near = match self.form {
            Form::Meters => length.rounded_to(CENTIMETER),
            _ => length,
        };
        WrittenLength::new(if near == Length::ZERO { length } else { near }, self.form).spoken()
    }

    /// An area before it is rounded, in square meters first if the file is metric.
    pub(crate) fn exact_size(&self, area: Area) -> String {
        exact_size(area, self.is_metric())
    }

    /// An area, in square meters first if the file is metric.
    pub(crate) fn size(&self, area: Area) -> String {
        size(area, self.is_metric())
    }

    pub(crate) fn is_metric(&self) -> bool {
        matches!(self.form, Form::Meters | Form::Centimeters | Form::Millimeters)
    }

    /// The settings that are not the default and may change a conclusion; `None` if there are none.
    pub(crate) fn unusual_settings(&self, weights: Option<&Weights>) -> Option<String> {
        let mut unusual = self.settings.unusual();
        if weights.is_some_and(|weights| *weights != Weights::default()) {
            unusual.push("causes weighed by a file of its own (`--weights`)".to_owned());
        }
        (!unusual.is_empty())
            .then(|| format!("Settings other than the usual: {}.", unusual.join("; ")))
    }

    /// A warning about an unlikely size, shown wherever the house's figures are.
    pub(crate) fn unlikely_size(&self) -> Option<String> {
        let warnings = self.house.warnings().iter();
        let mut sizes = warnings.filter(|warning| warning.word() == Word::UnlikelySize);
        sizes.next().map(|warning| {
            format!("Check the lengths and their units: {}.", warning.message().replace('`', "\""))
        })
    }

    /// The caution to print first if the record is smaller than the house.
    pub(crate) fn caution(&self, figures: &[Figure]) -> Option<String> {
        figures.iter().any(Figure::is_smaller_record).then(|| SMALLER_RECORD.to_owned())
    }

    /// `measured`, or if no counted wall was, its source: `from plan`.
    pub(crate) fn known(&self) -> &'static str {
        known(self.obtained())
    }

    /// The source as it reads before the word area: `the measured area`, `the plan's area`.
    pub(crate) fn area_word(&self) -> &'static str {
        match self.obtained() {
            LengthSource::Plan => "plan's",
            LengthSource::Record => "typed",
            LengthSource::Estimated => "estimated",
            LengthSource::Measured | LengthSource::Closing => "measured",
        }
    }

    /// How the counted area was obtained: measured if any of its lengths was.
    pub(crate) fn obtained(&self) -> LengthSource {
        let sources = self.sources();
        let surest = [LengthSource::Measured, LengthSource::Plan, LengthSource::Record];
        let found = surest.into_iter().find(|source| sources.contains(source));
        found.unwrap_or(match sources.is_empty() {
            true => LengthSource::Measured,
            false => LengthSource::Estimated,
        })
    }

    /// How the lengths of counted spaces were obtained, except for those that follow from others.
    fn sources(&self) -> HashSet<LengthSource> {
        let counted = self.house.spaces.iter().filter(|space| space.counted);
        let sides = counted.flat_map(|space| &space.sides);
        sides.map(crate::house::Side::how).filter(|how| *how != LengthSource::Closing).collect()
    }

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

    /// What the finer rule rounds to, as it reads after "each wall to".
    pub(crate) fn fine(&self) -> &'static str {
        match self.settings.fine {
            FineStep::Inch => "the inch",
            FineStep::TenthFoot => "a tenth of a foot",
        }
    }

    /// The column head of the finer rule.
    pub(crate) fn fine_word(&self) -> &'static str {
        if self.settings.fine == FineStep::Inch { "inches" } else { "tenths" }
    }

    /// The name of a space, with its kind and whether it counts: `Foyer (open to below, deducted)`.
    pub(crate) fn space_name(&self, space: usize) -> String {
        let name = &self.house.spaces[space].name;
        let kind = self.kind_word(space);
        let deducted = if self.house.is_deducted(space) { "deducted" } else { "" };
        let parts: Vec<&str> =
            [kind.as_str(), deducted].into_iter().filter(|part| !part.is_empty()).collect();
        if parts.is_empty() { name.clone() } else { format!("{name} ({})", parts.join(", ")) }
    }

    /// By how much rounding could change the area before a rounding step; `None` for other steps. The changes lead
    /// from the area as printed to the possible areas as printed.
    pub(crate) fn could_add(&self, figure: &Figure, line: &Line, before: Area) -> Option<String> {
        let changes = step_range(before, line.range()?, self.is_metric())?;
        let foot =
            if figure.rounding_test().step() == Step::HalfFoot { "half foot" } else { "foot" };
        Some(format!("rounding to the {foot} could change it by {changes}"))
    }

    /// The recorded sides that differ, one line each. Sides along the same axis are grouped, since they have to close
    /// together.
    pub(crate) fn shares(&self, figure: &Figure) -> Vec<String> {
        self.share_groups(figure).into_iter().map(|(text, _)| text).collect()
    }

    /// Says why what the recorded sides add by themselves is printed as another whole number than their step, which
    /// leads from one printed total to the next; `None` if it is the same number.
    pub(crate) fn shares_before_rounding(
        &self,
        figure: &Figure,
        before: Area,
        after: Area,
    ) -> Option<String> {
        let groups = self.share_groups(figure);
        let apart: i64 = groups.iter().map(|(_, area)| area.whole_sq_ft()).sum();
        let step = after.whole_sq_ft() - before.whole_sq_ft();
        (!groups.is_empty() && apart != step).then(|| {
            format!(
                "before rounding, from {} to {} sq ft; each total is rounded by itself",
                before.to_hundredths(),
                after.to_hundredths()
            )
        })
    }

    /// The recorded sides that differ in words, with what each group adds.
    fn share_groups(&self, figure: &Figure) -> Vec<(String, Area)> {
        type Group<'a> = ((usize, Option<Axis>), Vec<&'a Share>);
        let mut groups: Vec<Group<'_>> = Vec::new();
        for share in figure.shares() {
            let key = (share.place, share.axis());
            match groups.iter_mut().find(|(other, _)| *other == key) {
                Some((_, group)) => group.push(share),
                None => groups.push((key, vec![share])),
            }
        }
        groups.iter().filter_map(|(_, group)| self.shared(figure, group)).collect()
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
        let space = if several { format!("{space}, ") } else { String::new() };
        Some((format!("{space}{named}: {} sq ft", signed(area.whole_sq_ft())), area))
    }

    /// What could account for the figure: at most three items, and how to find out. `None` if there is nothing to
    /// account for.
    pub(crate) fn accounts(&self, figure: &Figure) -> Option<Accounts> {
        let explanations = figure.explanations();
        if explanations.weighed() == 0 || figure.agreement().agrees() {
            return None;
        }
        let shown = shown_once(figure);
        if shown.is_empty() {
            return self.nothing_common(figure);
        }
        let settled = self.settling(figure);
        let ours = self.ours(figure);
        let mut items: Vec<String> = Vec::new();
        for one in shown {
            items.push(self.cause_sentence(figure, one));
        }
        Some(Accounts {
            opening: "Possible:".to_owned(),
            items,
            closing: format!("Other reasons are possible. {settled}{ours}"),
        })
    }

    /// What would settle which of the reported causes is right, each question once.
    #[cfg(feature = "json")]
    pub(crate) fn settled_by(&self, figure: &Figure) -> Vec<String> {
        causes::for_the_owner(&self.open_questions(figure))
    }

    fn open_questions(&self, figure: &Figure) -> Vec<OpenQuestion> {
        let listed = self.listed(figure);
        let mut open: Vec<OpenQuestion> = Vec::new();
        let shown = shown_once(figure);
        for question in
            shown.iter().flat_map(|one| causes::settled_by(one.cause, listed, figure.is_record()))
        {
            if !open.contains(&question) {
                open.push(question);
            }
        }
        open
    }

    /// The open questions in sentences: for the owner what to do, for the office that keeps the record what is
    /// requested.
    fn settling(&self, figure: &Figure) -> String {
        let open = self.open_questions(figure);
        if self.is_for_the_office() {
            return causes::asked_of_the_office(&open, figure.is_record());
        }
        let mut steps = causes::for_the_owner(&open);
        steps.extend(self.unseen_wall());
        format!("To settle it: {}.", steps.join("; "))
    }

    /// What another line of the record says about its rounding, in a sentence.
    pub(crate) fn evidence(&self, figure: &Figure) -> Option<String> {
        let evidence = figure.explanations().evidence()?;
        Some(causes::evidence(evidence, self.listed(figure)))
    }

    /// What to check again in our own measurements, in sentences. Where a cause other than a part of the outline gives
    /// the very figure, no part is asked about.
    pub(crate) fn questions(&self, figure: &Figure) -> Vec<String> {
        let listed = self.listed(figure);
        let is_part = |one: &Explanation| {
            one.cause.departures().any(|kind| matches!(kind, DepartureKind::Part { .. }))
        };
        let mut reported = figure.explanations().reported();
        let is_settled = reported.next().is_some_and(|one| one.leaves.abs() < 0.5 && !is_part(one));
        let is_open =
            |question: &&Question| !(is_settled && matches!(question, Question::Inside { .. }));
        let questions = figure.explanations().questions.iter().filter(is_open);
        questions.map(|question| causes::asked(*question, listed)).collect()
    }

    /// The questions about our own measurements, preceded by a space; empty if there are none.
    fn ours(&self, figure: &Figure) -> String {
        let questions = if self.is_for_the_office() { Vec::new() } else { self.questions(figure) };
        let mut asked: String = questions.iter().map(|question| format!(" {question}")).collect();
        if figure.explanations().is_capped() {
            asked.push_str(" This house has too many parts to weigh them all: some were not.");
        }
        asked
    }

    /// One reported cause: what it is, how strong, the area it gives, and how the figure compares with that.
    fn cause_sentence(&self, figure: &Figure, one: &Explanation) -> String {
        let assumed = match one.cause {
            Cause::Face(face) => self.is_assumed_at(face),
            _ => false,
        };
        let assumed = if assumed { ", a thickness of the walls assumed" } else { "" };
        let words = format!("{}{assumed}", capital(&self.cause_said(figure, one)));
        let strength = one.strength().map(strength).unwrap_or_default();
        let unsure = match (one.cause, one.rounding) {
            (Cause::Rounding(RoundingTaken::AlwaysUp | RoundingTaken::AlwaysDown), _) => {
                Unsure::Closing
            }
            _ if self.is_taken_finely(figure, one) => Unsure::Reading,
            _ => Unsure::Rounding,
        };
        let gives = Gives::of(one.sq_ft, one.band, figure.area().whole_sq_ft(), unsure);
        let said = match causes::meant(one.cause, figure) {
            Some(meant) if !gives.is_as_said() => gives.said_of_meant(meant, self.is_metric()),
            _ => gives.said(&the(figure), self.is_metric()),
        };
        let doubled = self.doubled(figure, one).unwrap_or_default();
        let as_measured = self.counted_as_measured(figure, one).unwrap_or_default();
        format!("{words}{strength}: {said}{doubled}{as_measured}")
    }

    /// A note that what a cause counts was taken as measured, where the figure's own lengths of other walls are a step
    /// before it: with the recorded length of a shared wall it would have another size.
    fn counted_as_measured(&self, figure: &Figure, one: &Explanation) -> Option<String> {
        let is_after_recorded = figure.line(BridgeStep::RecordedSides).is_some();
        let names: Vec<&str> = one
            .cause
            .departures()
            .filter_map(|kind| match kind {
                DepartureKind::Counted { space } => Some(self.house.spaces[space].name.as_str()),
                _ => None,
            })
            .collect();
        (is_after_recorded && !names.is_empty())
            .then(|| format!(", with {} as measured", words::all_named(&names)))
    }

    /// Whether a cause goes with walls that are not rounded to feet, so that only the reading of a tape is left to
    /// change what it gives.
    fn is_taken_finely(&self, figure: &Figure, one: &Explanation) -> bool {
        match one.rounding {
            Some(RoundingTaken::NotRounded) => true,
            Some(_) => false,
            None => !matches!(figure.side_rule(), SideRule::Step(Step::WholeFoot | Step::HalfFoot)),
        }
    }

    /// Whether the walls can only be taken at a face by a thickness that the file does not state.
    fn is_assumed_at(&self, face: Face) -> bool {
        crate::areas::at_face::Walls::of(self.house, face)
            .is_ok_and(|walls| walls.assumed() != Assumed::default())
    }

    /// A note where the upper level was taken at the whole outline below, and the figure is exactly twice that outline:
    /// `; 1,904 = 2 × 952, the outline of the level below twice`.
    fn doubled(&self, figure: &Figure, one: &Explanation) -> Option<String> {
        let upper = |how: LevelTaken| how == LevelTaken::WholeBelow;
        let is_whole_below = matches!(
            one.cause,
            Cause::Departures(DepartureKind::Level { how, .. }, None) if upper(how)
        );
        let counted = self.house.spaces.iter().filter(|space| space.counted);
        let levels: HashSet<usize> = counted.map(|space| space.level).collect();
        let all = figure.area().whole_sq_ft();
        let is_exact = one.leaves.abs() < 0.5 && all % 2 == 0;
        (is_whole_below && is_exact && levels.len() == 2).then(|| {
            let unit = if self.is_metric() { " sq ft" } else { "" };
            let (twice, once) = (thousands(all), thousands(all >> 1));
            format!("; {twice}{unit} = 2 × {once}{unit}, the outline of the level below twice")
        })
    }

    /// Says that nothing common accounts for the rest; `None` if rounding alone does.
    fn nothing_common(&self, figure: &Figure) -> Option<Accounts> {
        let rest = not_explained(figure);
        let best = figure.explanations().list().first();
        let is_alone = best.is_some_and(|best| best.cause == Cause::None && best.fits());
        let is_within = figure.lines().iter().any(Line::is_within_rounding);
        let could = figure.rounding_test().could_explain();
        let is_rounded = matches!(could, Some(CouldExplain::Yes | CouldExplain::OnlyAgainst));
        // What is left within the interval printed for the measured area needs no other cause, but is not passed over.
        let gross = self.areas.gross();
        let apart = (figure.area() - figure.measured_like_figure()).abs().sq_ft();
        let is_read = !is_rounded && apart <= gross.worst_case_outside();
        let is_rounding = is_alone && (is_rounded || is_read);
        let is_silent =
            rest == 0 || is_rounding || is_within || self.listed_as_much(figure, rest).is_some();
        let figure_word = figure.word();
        if let Some(part) = self.unwalked(figure).filter(|_| !is_silent) {
            return Some(Accounts {
                opening: format!("{part} Nothing else common accounts for what is left."),
                items: Vec::new(),
                closing: match self.reader {
                    Reader::Owner => format!(
                        "Measure there before anything is asked of the {figure_word}.{}",
                        self.ours(figure)
                    ),
                    // The request says what has to be looked at first.
                    Reader::Office => self.ours(figure).trim_start().to_owned(),
                },
            });
        }
        let nearest =
            self.nearest(figure, rest).map(|nearest| format!("{nearest} ")).unwrap_or_default();
        let is_drawn = self.house.drawn.iter().any(|drawn| figure.is_of(drawn.drawn));
        let ask = match (self.reader, figure.is_record()) {
            (Reader::Owner, _) if is_drawn => format!(
                "Ask how the {figure_word}'s total was added up, and whether it is of this house"
            ),
            (Reader::Office, true)
                if is_drawn && figure.area() >= figure.measured_like_figure() =>
            {
                "Please state how the record's total was added up, and whether it is of this house".to_owned()
            }
            (Reader::Owner, _) => format!(
                "Ask for the {figure_word}'s own sketch and the lengths on it, and whether it is of this house"
            ),
            // Where the record is smaller, nothing is requested.
            (Reader::Office, true) if figure.area() < figure.measured_like_figure() => String::new(),
            (Reader::Office, true) => "Please provide the record's own sketch with its lengths, and state whether it is of this house".to_owned(),
            (Reader::Office, false) => format!(
                "The {figure_word}'s own sketch and the lengths on it would show where the difference lies, and whether they are of this house"
            ),
        };
        if is_alone && is_read && !is_within && rest != 0 {
            return Some(Accounts {
                opening: format!(
                    "The {} that are left are within what measuring again could change.",
                    size_of_sq_ft(rest.abs(), self.is_metric())
                ),
                items: Vec::new(),
                closing: String::new(),
            });
        }
        (!is_silent).then(|| Accounts {
            opening: format!(
                "{nearest}Nothing common accounts for the {} that are left.",
                size_of_sq_ft(rest.abs(), self.is_metric())
            ),
            items: Vec::new(),
            closing: match ask.is_empty() {
                true => self.ours(figure).trim_start().to_owned(),
                false => format!("{ask}.{}", self.ours(figure)),
            },
        })
    }

    /// A sentence on a part that a map shows but that was not measured, with about the area that is left; `None` if
    /// there is none.
    pub(crate) fn unwalked(&self, figure: &Figure) -> Option<String> {
        let part = figure.unwalked()?;
        let left = not_explained(figure);
        let (wide, deep) = (rounded_float(part.size_ft.0), rounded_float(part.size_ft.1));
        let sq_ft = rounded_float(part.sq_ft());
        Some(format!(
            "A map shows a part that these measurements do not, on the {} side, at \"{}\": less its eaves about {wide}' by {deep}', {sq_ft} sq ft of the {} that are left.",
            part.side.word(),
            self.house.spaces[part.beside].name,
            thousands(left)
        ))
    }

    /// The space that comes nearest to what is left, and what would remain:
    /// `The garage would be 462 of it; 188 would remain.` `None` where more than half its size would remain, or more
    /// than a fourth would be too much.
    fn nearest(&self, figure: &Figure, rest: i64) -> Option<String> {
        let house = self.house;
        let in_feet = figure.side_rule() == SideRule::Step(Step::WholeFoot);
        let area = |space: &SpaceAreas| match in_feet {
            true => space.whole_foot().area(),
            false => space.tenth_foot().area(),
        };
        let areas: Vec<Area> = self.areas.spaces.iter().map(area).collect();
        let size = |i: usize| crate::areas::net(house, i, &areas).whole_sq_ft();
        let in_total = |i: usize| is_in_total(house, i, false);
        let would = |&i: &usize| {
            let space = &house.spaces[i];
            match space.kind {
                Kind::Stair => rest < 0,
                Kind::Open | Kind::Low => rest > 0 && space.parent.is_some_and(in_total),
                _ => in_total(i) != (rest > 0),
            }
        };
        let left = |i: usize| rest.abs() - size(i);
        let counted = (0..house.spaces.len()).filter(|&i| in_total(i)).count();
        let spaces = (0..house.spaces.len()).filter(would);
        // The whole house is not what is missing.
        let spaces = spaces.filter(|&i| !in_total(i) || counted > 1);
        let nearest = spaces.min_by_key(|&i| left(i).abs())?;
        let (size, left) = (size(nearest), left(nearest));
        let is_near = if left < 0 { -4 * left <= size } else { 2 * left <= size };
        (size > 0 && left.abs() < rest.abs() && is_near).then(|| {
            let name = capital(&words::the_quoted(&house.spaces[nearest].name));
            if left < 0 {
                format!(
                    "{name} would be {} of it, {} too much.",
                    self.number(size),
                    self.number(-left)
                )
            } else {
                format!(
                    "{name} would be {} of it; {} would remain.",
                    self.number(size),
                    self.number(left)
                )
            }
        })
    }

    /// Whole square feet inside a sentence that has said what they are; in a metric file in both units.
    fn number(&self, sq_ft: i64) -> String {
        if self.is_metric() { size_of_sq_ft(sq_ft, true) } else { thousands(sq_ft) }
    }

    /// Warns that a wall that follows from the others hides an error in them.
    fn unseen_wall(&self) -> Option<String> {
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
            Some(Strength::Only) => Some(1),
            Some(Strength::LikeliestOf(count)) => Some(count),
            _ => None,
        });
        let fit = fit.unwrap_or(0).max(shown.len());
        match (fit, shown.len()) {
            (0, _) => "none fits well enough to be named".to_owned(),
            (1, _) => "one fits, and it is named".to_owned(),
            (2, 2) => "2 fit, and both are named".to_owned(),
            (fit, named) if fit == named => format!("{fit} fit, and all are named"),
            (fit, named) => format!("{fit} fit, and {named} of them are named"),
        }
    }

    /// A cause in words, with the way of rounding that supports it best if that is not the figure's own.
    pub(crate) fn cause_said(&self, figure: &Figure, one: &Explanation) -> String {
        let said = causes::said(one.cause, self.listed(figure), figure);
        match (one.cause, one.rounding) {
            (Cause::Rounding(_), _) | (_, None) => said,
            (_, Some(rounding)) => format!("{said}, with {}", causes::rounded(rounding)),
        }
    }

    /// The house with what the file states about a figure besides its total.
    pub(crate) fn listed<'b>(&'b self, figure: &'b Figure) -> Listed<'b> {
        Listed { house: self.house, counting: figure.counting() }
    }

    /// The heading for an outline from a record, a plan or a map.
    pub(crate) fn outline_title(&self, outline: &OutlineReport) -> String {
        let area = match outline.area() {
            Some(area) => format!("{} sq ft", whole(area)),
            None => {
                format!(
                    "its sides end {} of where they began, so it has no area",
                    misses(outline.misses)
                )
            }
        };
        format!("The {}'s sketch \"{}\": {area}", whose(outline), outline.name())
    }

    /// The walls of an outline that differ from the measured ones by more than rounding can explain.
    pub(crate) fn walls_apart(&self, outline: &OutlineReport) -> Vec<WallApart> {
        let beyond = |side: &&crate::reconcile::MatchedSide| {
            self.settings.is_beyond_rounding(side.measured() - side.drawn())
        };
        let comparison = |side: &crate::reconcile::MatchedSide| {
            let difference = side.drawn() - side.measured();
            let sign = if difference < Length::ZERO { "\u{2212}" } else { "+" };
            WallApart {
                side: format!("side {} ({})", side.ours(), side.ours_typed),
                measured: self.length(side.measured()),
                drawn: self.length(side.drawn()),
                difference: format!("{sign}{}", self.length(difference.abs())),
            }
        };
        outline.matched().iter().filter(beyond).map(comparison).collect()
    }

    /// Whether a wall and the one that it matches are the same number of whole feet.
    fn agrees_to_the_foot(&self, side: &crate::reconcile::MatchedSide) -> bool {
        let feet = |length: Length| length.rounded(Step::WholeFoot, self.settings.halves);
        feet(side.measured()) == feet(side.drawn())
    }

    /// Further remarks about a reference outline.
    pub(crate) fn outline_notes(
        &self,
        outline: &OutlineReport,
    ) -> (Option<&'static str>, Vec<String>) {
        let first = if outline.space.is_none() {
            Some("no single space of this file matches it")
        } else if self.walls_apart(outline).is_empty() && outline.same_corners() {
            Some(match outline.matched().iter().all(|side| self.agrees_to_the_foot(side)) {
                true => "every wall agrees to the foot",
                false => "no wall differs by more than rounding could make",
            })
        } else {
            None
        };
        let sentences = outline.instead.iter().map(|instead| {
            let (ours, theirs) = (sides_in_a_row(&instead.ours), sides_in_a_row(&instead.theirs));
            match (instead.ours.is_empty(), instead.theirs.is_empty()) {
                (true, _) => format!("only on the sketch: {theirs}"),
                (_, true) => format!("only in this file: {ours}"),
                _ => format!("this file has {ours}; the sketch has {theirs} instead"),
            }
        });
        (first, sentences.collect())
    }

    /// Other lines of the record besides its total: a name and a note each.
    pub(crate) fn other_lines(&self) -> Vec<(String, String)> {
        let house = self.house;
        let mut rows: Vec<(String, String)> = Vec::new();
        for (i, space) in house.spaces.iter().enumerate() {
            if let Some(recorded) = space.recorded {
                let measured = self.areas.spaces[i].net_tenth_foot;
                let number = |area| number_or_size(area, self.is_metric());
                let text = format!("recorded {}, measured {}", number(recorded), number(measured));
                rows.push((space.name.clone(), text));
            }
        }
        rows.extend(house.lots.iter().map(|lot| self.lot_line(lot)));
        for missing in &self.house.missing {
            let ask = match self.reader {
                Reader::Owner => "ask",
                Reader::Office => "please state",
            };
            let text = format!(
                "recorded {}, not found on site; {ask} whether the total includes it",
                number_or_size(missing.recorded.area(), self.is_metric())
            );
            rows.push((missing.name.clone(), text));
        }
        rows
    }

    fn lot_line(&self, lot: &crate::house::Lot) -> (String, String) {
        let area = lot.outline().area();
        let measured = format!("{}, {}", self.size(area), self.land(area));
        // In the unit that the record gives: another one would show digits that it does not have.
        let text = match lot.recorded {
            Some(recorded) => format!("recorded {recorded}; its sides give {measured}"),
            None => format!("its sides give {measured}"),
        };
        let text = format!("{text}; {}", lot_closure(lot, self.is_metric()));
        (format!("{} (lot)", lot.name), text)
    }

    /// The area of land in acres, or in hectares if the file is metric.
    pub(crate) fn land(&self, area: Area) -> String {
        match self.is_metric() {
            true => format!("{} hectares", area.in_unit(Area::HECTARE, 2)),
            false => format!("{} acres", area.in_unit(Area::ACRE, 2)),
        }
    }

    /// What the record lists that was not found on site, if the record is larger than the measured area.
    pub(crate) fn missing(&self, figures: &[Figure]) -> Vec<String> {
        let more = |figure: &Figure| {
            figure.is_record() && figure.apart_sq_ft() > 0 && !figure.agreement().agrees()
        };
        if !figures.iter().any(more) {
            return Vec::new();
        }
        let sentence = |missing: &crate::house::Missing| {
            format!(
                "The record also lists {}, {}, which was not found on site: please state whether the total includes it.",
                words::the_named(&missing.name),
                self.size(missing.recorded.area())
            )
        };
        self.house.missing.iter().take(6).map(sentence).collect()
    }

    /// The heading of the record's other lines.
    pub(crate) fn other_lines_title(&self, figures: &[Figure]) -> &'static str {
        match (figures.iter().any(|figure| figure.is_record()), self.is_metric()) {
            (true, false) => "The record's other lines, square feet",
            (true, true) => "The record's other lines",
            (false, false) => "Other lines, square feet",
            (false, true) => "Other lines",
        }
    }

    /// Who measured, how certain the measured area is, and what was not inspected.
    pub(crate) fn certainty(&self) -> Vec<String> {
        let house = self.house;
        let mut sentences = Vec::new();
        if let Some(measured) = &self.house.particulars.measured {
            sentences.push(self.measured_by(measured));
        }
        if !house.spaces.is_empty() {
            sentences.push(self.plus_minus());
        }
        if self.areas.is_computed() {
            sentences.push("It has slanted or curved walls: computed to 0.01 sq ft.".to_owned());
        }
        if house.lots.iter().any(|lot| lot.closed.is_computed()) {
            sentences.push("The area of the land is computed to 0.01 sq ft.".to_owned());
        }
        sentences.extend(self.only_from_a_plan());
        sentences.extend(self.checks());
        sentences.extend(self.equally_near());
        sentences.extend(self.low_ceilings());
        if self.house.particulars.interior_seen != Some(true) && !house.spaces.is_empty() {
            sentences.push("The interior was not seen (finish, ceiling heights, access): this is gross area, outside measure, not gross living area.".to_owned());
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
            (LengthSource::Plan, "from a plan"),
            (LengthSource::Record, "from the record"),
        ]
        .into_iter()
        .filter_map(|(source, words)| sources.contains(&source).then_some(words))
        .collect();
        Some(format!("No counted wall was measured: every length is {}.", words::one_of(&words)))
    }

    /// The lengths that were taped as checks, each with what the walls give; `None` if there are none.
    fn checks(&self) -> Option<String> {
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
        (!told.is_empty()).then(|| format!("Taped as checks: {}.", told.join("; ")))
    }

    /// The height rule the file followed, if it deducts low ceilings.
    fn low_ceilings(&self) -> Option<String> {
        let low = || self.house.spaces.iter().filter(|space| space.kind == Kind::Low);
        low().next()?;
        let mut heights: Vec<Length> = low()
            .filter_map(|space| space.under)
            .map(crate::units::length::WrittenLength::length)
            .collect();
        heights.sort_unstable();
        heights.dedup();
        let heights: Vec<String> = heights.into_iter().map(Length::spoken).collect();
        let rule = match heights.as_slice() {
            [] => {
                "Low ceilings are deducted; the height below which they count as low is not stated"
                    .to_owned()
            }
            some => {
                format!("What lies under {}, as stated here, is deducted", words::all_of(some))
            }
        };
        let seen = match self.house.particulars.interior_seen {
            Some(true) => "the interior was seen",
            _ => "the interior was not seen",
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

    /// The uncertainty of the measured area, with the area that it belongs to: the one before any rounding.
    pub(crate) fn plus_minus(&self) -> String {
        let heads = &self.house.particulars;
        let [quarter, half, one, two] = match self.is_metric() {
            true => ["6 mm", "13 mm", "25 mm", "50 mm"],
            false => ["1/4\"", "1/2\"", "1\"", "2\""],
        };
        let tolerance =
            heads.tolerance.map_or_else(|| half.to_owned(), |written| written.to_string());
        let gross = self.areas.gross();
        let common = match self.areas.assumed().common {
            true => format!(" (a common wall's within {two})"),
            false => String::new(),
        };
        // How near a thickness is, the file never says.
        let also = match (gross.holds_stated_thickness(), gross.holds_assumptions()) {
            (false, false) => String::new(),
            (true, false) => format!("and every stated thickness within {quarter}"),
            (false, true) => format!("and every assumed thickness within {one}{common}"),
            (true, true) => format!(
                "every stated thickness within {quarter} and every assumed one within {one}{common}"
            ),
        };
        let comma = if also.starts_with("and") { "" } else { "," };
        let also = match (also.is_empty(), heads.tolerance.is_some()) {
            (true, true) => ", as stated".to_owned(),
            (true, false) => ", as assumed".to_owned(),
            (false, true) => format!(", as stated, {also}, as assumed"),
            (false, false) => format!("{comma} {also}, as assumed"),
        };
        let says_itself =
            |side: &crate::house::Side| side.words.estimated || side.words.tolerance.is_some();
        let spaces = &self.house.spaces;
        let own = if spaces.iter().flat_map(|space| &space.sides).any(says_itself) {
            " (or within its own tolerance)"
        } else {
            ""
        };
        let is_metric = self.is_metric();
        let unit = if is_metric { "sq m" } else { "sq ft" };
        let (exact, rounded) = (gross.outside(), gross.tenth_foot());
        let number = |area: Area| number_alone(area, is_metric);
        let changes = step_alone(exact, rounded, is_metric);
        // The area of the first sentence on the page follows from the one here.
        let rounding = match changes.strip_prefix('+') {
            _ if changes == "0" => {
                format!("Rounding each wall to {} leaves it at {}.", self.fine(), number(rounded))
            }
            Some(more) => format!(
                "Rounding each wall to {} adds {more} to that: {}.",
                self.fine(),
                number(rounded)
            ),
            None => format!(
                "Rounding each wall to {} takes {} off that: {}.",
                self.fine(),
                changes.trim_start_matches('\u{2212}'),
                number(rounded)
            ),
        };
        format!(
            "If every wall is within {tolerance}{own}{also}, the area before any rounding is {} ± {} {unit} (about 95%); at worst, with every wall off the same way, ± {}. {rounding}",
            number(exact),
            off_by(gross.plus_minus_outside(), is_metric),
            off_by(gross.worst_case_outside(), is_metric),
        )
    }

    /// Warnings that a reader of the report should know, each with its line.
    pub(crate) fn worth_knowing(&self, reconciliation: &Reconciliation) -> Vec<String> {
        // How well a lot closes stands beside its area, in the terms of surveyors.
        let is_of_lot = |warning: &crate::diagnostic::Diagnostic| {
            let mut lots = self.house.lots.iter();
            lots.any(|lot| warning.message().starts_with(&quoted(&lot.name)))
        };
        let shown = |warning: &&crate::diagnostic::Diagnostic| match warning.word() {
            Word::OutlineDoesNotClose | Word::NoTurn => false,
            Word::MisclosureSpread => !is_of_lot(warning),
            _ => true,
        };
        let sentence = |warning: &crate::diagnostic::Diagnostic| {
            let message = warning.message().replace('`', "\"");
            let at = self.place_of(warning, &message);
            let unseen = if warning.word() == Word::NoClosureCheck {
                "; an error in one of those would go unseen"
            } else {
                ""
            };
            format!("{at}{message}{unseen}")
        };
        reconciliation.warnings().iter().filter(shown).map(sentence).collect()
    }

    /// The place of a warning, printed before its message: nothing if the message begins with the name of a space,
    /// else the side of a space, else the line of the sides file.
    fn place_of(&self, warning: &crate::diagnostic::Diagnostic, message: &str) -> String {
        let names = |space: &Space| message.starts_with(&format!("\"{}\"", space.name));
        if self.house.spaces.iter().any(names) {
            return String::new();
        }
        let start = warning.span().start;
        let is_here = |span: crate::diagnostic::Span| span.start <= start && start < span.end;
        let sides = self
            .house
            .spaces
            .iter()
            .flat_map(|space| space.sides.iter().map(move |side| (space, side)));
        let mut here = sides.filter(|(_, side)| is_here(side.span));
        match here.next() {
            Some((space, side)) => format!("{}, side {}: ", space.name, side.number),
            None => format!("line {} of the sides file: ", self.house.source().line(start)),
        }
    }

    /// Who states the lengths: `as stated by the owner`, or `as stated by whoever measured` if the file does not say
    /// who that was.
    pub(crate) fn as_stated(&self) -> String {
        let by = self.house.particulars.measured.as_ref().and_then(|measured| measured.by.clone());
        format!("as stated by {}", by.as_deref().unwrap_or("whoever measured"))
    }

    /// A perimeter, rounded to the inch or the centimeter, since a sum of many tape readings is no more precise.
    pub(crate) fn perimeter(&self, perimeter: Length) -> String {
        let step = if self.is_metric() { Length::from_nm(10_000_000) } else { Length::INCH };
        self.length(perimeter.rounded_to(step.nm()))
    }

    pub(crate) fn kind_word(&self, space: usize) -> String {
        let here = &self.house.spaces[space];
        let kind = match here.kind {
            Kind::Living if here.counted => "",
            Kind::Open => "open to below",
            Kind::Low => "low ceiling",
            Kind::Stair if here.parent.is_some_and(|parent| self.house.spaces[parent].counted) => {
                "stair, counted here"
            }
            kind => kind.word(),
        };
        let same = here.name.to_lowercase().contains(kind);
        let counted = match (here.counted, here.claimed, here.kind.lies_in_another()) {
            _ if here.detached && here.counted => format!("detached, counted {}", self.as_stated()),
            _ if here.detached => "detached, not counted".to_owned(),
            (true, true, _) => format!("counted, {}", self.as_stated()),
            (false, true, _) => format!("not counted, {}", self.as_stated()),
            (false, _, false) if here.parent.is_none() => "not counted".to_owned(),
            _ => String::new(),
        };
        let kind = if same { "" } else { kind };
        let parts: Vec<&str> =
            [kind, &counted].into_iter().filter(|part| !part.is_empty()).collect();
        parts.join(", ")
    }

    /// The name of the step for the best supported cause.
    fn possible_line(&self, figure: &Figure, line: &Line) -> String {
        let said = line.cause().map(|cause| causes::said(cause, self.listed(figure), figure));
        format!("possible: {}", said.unwrap_or_default())
    }

    pub(crate) fn line_name(&self, figure: &Figure, line: &Line) -> String {
        match line.step() {
            BridgeStep::Counting if line.is_supported() => self.possible_line(figure, line),
            BridgeStep::Face => match figure.face() {
                Face::Outside => format!("face: {}", self.assumed_as("taken as outside")),
                Face::Frame => "face: measured to the frame, without what is outside it".to_owned(),
                Face::Inside => "face: measured inside".to_owned(),
            },
            BridgeStep::Rounding if line.rounding().is_some() => {
                let how = line.rounding().map(causes::rounded).unwrap_or_default();
                format!("rounding: {how}, with which the next fits best (ask)")
            }
            BridgeStep::Rounding if figure.is_metric() && !figure.says_rule() => {
                format!("rounding: {}", self.assumed_as("walls taken as not rounded"))
            }
            BridgeStep::Rounding => match figure.side_rule() {
                SideRule::Unknown => {
                    format!("rounding: {}; none is assumed", self.assumed_as("not known"))
                }
                SideRule::Step(step) if figure.says_rule() => {
                    format!("rounding: {}, as stated here", step.spoken())
                }
                SideRule::Step(step) if step == self.settings.fine.step() => {
                    format!("rounding: {}", self.assumed_as(&format!("taken as {}", step.spoken())))
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
                format!("counting: {} counts {}", the(figure), words::all_named(line.counted()))
            }
            BridgeStep::NotExplained if is_left_within(figure, line) => {
                let first = figure.explanations().reported().next();
                let what = match first.map(|one| (one.cause, one.rounding)) {
                    Some((_, Some(RoundingTaken::NotRounded))) => "reading a tape",
                    Some((Cause::Rounding(_), _)) => "closing the outline",
                    _ => "rounding",
                };
                format!("left, within what {what} could change")
            }
            BridgeStep::NotExplained => "not explained".to_owned(),
        }
    }

    /// A phrase saying what is assumed and has to be asked; for an office, only what is assumed.
    fn assumed_as(&self, what: &str) -> String {
        match self.reader {
            Reader::Owner => format!("{what} (ask)"),
            Reader::Office => format!("{what} (assumed)"),
        }
    }

    /// A recorded side in words: `side 4 (east 19' 5"): 21' on the record; 19' rounded`.
    fn share(&self, figure: &Figure, share: &Share) -> String {
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
            true => "rounded and adjusted, since the rounded walls must close",
            false => "rounded",
        };
        let on = if figure.has_own_name() { "its own sketch".to_owned() } else { the(figure) };
        format!(
            "side {} ({}): {} on {on}; {} {rounded}",
            share.side(),
            share.typed(),
            share.recorded(),
            length(share.ruled())
        )
    }
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

/// How strong a cause is, in parentheses, with a leading space.
fn strength(strength: Strength) -> String {
    match strength {
        Strength::Only => " (only common cause that fits)".to_owned(),
        Strength::LikeliestOf(1) => " (fits)".to_owned(),
        Strength::LikeliestOf(count) if count > MOST_REPORTED => {
            format!(" (likeliest of {count} that fit; {MOST_REPORTED} shown)")
        }
        Strength::LikeliestOf(count) => format!(" (likeliest of {count} that fit)"),
        Strength::AlsoFits => " (also fits)".to_owned(),
    }
}

/// The source of an outline: `record`, `plan` or `map`.
pub(crate) fn whose(outline: &OutlineReport) -> &'static str {
    match outline.drawn() {
        ReferenceSource::Record => "record",
        ReferenceSource::Plan => "plan",
        ReferenceSource::Map => "map",
    }
}

/// How well the calls of a lot close, in surveyors' terms: a distance and a ratio, which follows from the two lengths as
/// printed.
pub(crate) fn lot_closure(lot: &crate::house::Lot, is_metric: bool) -> String {
    match lot.closure() {
        Some((distance, _)) => {
            let (unit, word) = match is_metric {
                true => (Length::from_nm(1_000_000_000), "m"),
                false => (Length::FOOT, "ft"),
            };
            let hundredths = |length: Length| {
                let parts = i128::from(length.nm()) * 100;
                Decimal::from_i128_with_scale(rounded_quotient(parts, i128::from(unit.nm())), 2)
            };
            let hundredth = Decimal::new(1, 2);
            let (distance, around) = (hundredths(distance), hundredths(lot.outline().perimeter()));
            let (under, better) = match distance < hundredth {
                true => ("under ", "better than "),
                false => ("", ""),
            };
            let distance = distance.max(hundredth);
            let ratio = three_digits((around / distance).trunc());
            let (whole, parts) = (around.trunc().to_string(), around.to_string());
            let parts = parts.trim_start_matches(whole.as_str());
            format!(
                "its calls end {under}{distance} {word} from where they began, in {}{parts} {word} ({better}1 : {ratio})",
                group_thousands(&whole),
            )
        }
        None if lot.last_is_computed() => {
            "the last call is computed, so the calls cannot be checked by it".to_owned()
        }
        None => "the calls close exactly".to_owned(),
    }
}

/// A whole number rounded down to three digits: `131,000`.
fn three_digits(number: Decimal) -> String {
    let number = number.to_string();
    let kept = number.len().min(3);
    group_thousands(&format!("{}{}", &number[..kept], "0".repeat(number.len() - kept)))
}

pub(crate) fn whole(area: Area) -> String {
    thousands(area.whole_sq_ft())
}

pub(crate) fn signed(number: i64) -> String {
    match number {
        0 => "0".to_owned(),
        1.. => format!("+{}", thousands(number)),
        _ => format!("\u{2212}{}", thousands(number.saturating_abs())),
    }
}

/// A float rounded to a whole number, with commas.
pub(crate) fn rounded_float(number: f64) -> String {
    let digits = format!("{number:.0}");
    digits.parse().map_or(digits, thousands)
}

/// A difference of lengths with its sign, in the file's most frequent unit.
pub(crate) fn signed_length(say: &Sentences<'_>, length: Length) -> String {
    match length.nm() {
        0 => "0".to_owned(),
        1.. => format!("+{}", say.length(length)),
        _ => format!("\u{2212}{}", say.length(length.abs())),
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

/// A length in feet for people: commas, at most two decimals, no trailing zeros.
pub(crate) fn to_hundredths(length: Length) -> String {
    let hundredths = rounded_quotient(i128::from(length.nm()) * 100, i128::from(Length::FOOT.nm()));
    let text = Decimal::from_i128_with_scale(hundredths, 2).normalize().to_string();
    let (whole, decimals) = text.split_once('.').unwrap_or((&text, ""));
    let point = if decimals.is_empty() { "" } else { "." };
    format!("{}{point}{decimals}", group_thousands(whole))
}

/// Areas of one column in square feet: two decimals each, or none where all are whole.
pub(crate) fn in_a_column(areas: &[Area]) -> Vec<String> {
    let hundredths =
        |area: Area| rounded_quotient(100 * area.half_nm2(), Area::SQUARE_FOOT.half_nm2());
    let decimals = if areas.iter().all(|area| hundredths(*area) % 100 == 0) { 0 } else { 2 };
    let text = |area: &Area| {
        let sign = if hundredths(*area) < 0 { "\u{2212}" } else { "" };
        let digits = area.in_unit(Area::SQUARE_FOOT, decimals);
        let digits = digits.trim_start_matches('-');
        let (whole, point) = digits.split_at(digits.find('.').unwrap_or(digits.len()));
        format!("{sign}{}{point}", group_thousands(whole))
    };
    areas.iter().map(text).collect()
}

/// `1,530 to 1,581`, or one number if both ends are the same.
pub(crate) fn range_text(range: Option<Range>) -> String {
    match range {
        None => "not stated".to_owned(),
        Some(range) if range.low.whole_sq_ft() == range.high.whole_sq_ft() => whole(range.low),
        Some(range) => format!("{} to {}", whole(range.low), whole(range.high)),
    }
}

/// A sentence on how a walk that misses its start was closed. If nearly all of the misclosure went to one side, it
/// names that side.
pub(crate) fn closed_by(space: &Space) -> String {
    let closed = space.closed.outline.vectors().iter().map(|vector| vector.chord_length());
    let moved = space.sides.iter().zip(closed).map(|(side, closed)| match &side.run {
        Run::Straight(_, written) | Run::Bearing(_, written) => {
            (written.length() - closed).abs().nm()
        }
        _ => 0,
    });
    let moved: Vec<i64> = moved.collect();
    let all: i64 = moved.iter().sum();
    let most = moved.iter().zip(&space.sides).max_by_key(|(moved, _)| **moved);
    match most {
        Some((most, side)) if *most == all => format!("side {} takes up all of it", side.number),
        Some((most, side)) if 10 * *most >= 9 * all => {
            format!("side {} takes up nearly all of it", side.number)
        }
        _ => "that is spread over its sides".to_owned(),
    }
}

/// The walls of a space that are shared with a neighbor: `sides 2 and 4`; `None` if there are none.
pub(crate) fn shared_walls(space: &Space) -> Option<String> {
    let shared = space.sides.iter().filter(|side| side.words.common);
    let numbers: Vec<usize> = shared.map(|side| side.number.get()).collect();
    (!numbers.is_empty()).then(|| words::sides(&numbers))
}

/// The name with a capital first letter: `Record`, `Listing`.
pub(crate) fn capital(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// `the record` or `the listing`; a figure's own name is quoted.
pub(crate) fn the(figure: &Figure) -> String {
    match figure.word() {
        "figure" => format!("\"{}\"", figure.name()),
        word => format!("the {word}"),
    }
}

/// The letters for a number: A, B, … Z, AA, AB, …
#[expect(clippy::integer_division, reason = "counting in letters")]
pub(crate) fn letters(number: usize) -> String {
    let last = char::from(b'A' + u8::try_from(number % 26).unwrap_or(0));
    match number / 26 {
        0 => last.to_string(),
        more => format!("{}{last}", letters(more - 1)),
    }
}

fn known(obtained: LengthSource) -> &'static str {
    match obtained {
        LengthSource::Plan => "from plan",
        LengthSource::Record => "from record",
        LengthSource::Estimated => "estimated",
        LengthSource::Measured | LengthSource::Closing => "measured",
    }
}

/// The main sentence: the figure, the area measured the same way, and the difference. For a record that says nothing
/// else, an area below grade stands beside that above it.
fn statement(
    figure: &Figure,
    obtained: LengthSource,
    below: Option<Area>,
    finely: Option<&str>,
    is_metric: bool,
) -> String {
    let apart = figure.area().whole_sq_ft() - figure.measured_like_figure().whole_sq_ft();
    let name = match figure.has_own_name() {
        true => capital(figure.name()),
        false => capital(figure.word()),
    };
    let known = known(obtained);
    // The figure's own face and counting, which are applied to the house too.
    let counting = figure.line(BridgeStep::Counting).filter(|line| !line.is_supported());
    let counting = counting
        .map(|line| format!(", with {}", words::all_named(line.counted())))
        .unwrap_or_default();
    let face = match figure.face() {
        Face::Outside => "",
        Face::Frame => ", taken at the frame",
        Face::Inside => ", taken inside",
    };
    let at = match figure.face() {
        Face::Outside => "",
        Face::Frame => " at the frame",
        Face::Inside => " inside",
    };
    let with = counting.trim_start_matches(',');
    let finely = finely.map(|step| format!(" {step}")).unwrap_or_default();
    let colon = if with.is_empty() && at.is_empty() && finely.is_empty() { "" } else { ":" };
    let is_plain = figure.is_record() && with.is_empty() && at.is_empty();
    let below = below
        .filter(|_| is_plain)
        .map(|below| format!(" above grade, {} below it", size(below, is_metric)))
        .unwrap_or_default();
    let head = format!(
        "{name} {}{face}{counting}. {}{at}{with}{finely}{colon} {}{below}.",
        typed_size(figure.typed(), is_metric),
        capital(known),
        size(figure.measured_like_figure(), is_metric)
    );
    // An office starts from its own figure, an owner from the tape.
    let like_figure = figure.measured_like_figure();
    let share_of = |of: Area| percent_apart(figure.area(), like_figure, of, is_metric);
    let (share, of_figure) = (share_of(like_figure), share_of(figure.area()));
    let of = match obtained {
        LengthSource::Measured => known.to_owned(),
        _ => format!("the area {known}"),
    };
    let difference = size_apart(figure.area(), figure.measured_like_figure(), is_metric);
    match (apart, share) {
        (0, _) if is_metric => format!("{head} No difference to the square foot."),
        (0, _) => format!("{head} No difference."),
        (_, Some(share)) => {
            let smaller =
                if apart < 0 { format!("; {} is smaller", the(figure)) } else { String::new() };
            let of_figure = of_figure
                .map(|of_figure| format!(", {of_figure} of {}", the(figure)))
                .unwrap_or_default();
            match is_metric {
                true => {
                    format!("{head} Difference {difference}: {share} of {of}{of_figure}{smaller}.")
                }
                false => {
                    format!("{head} Difference {difference} ({share} of {of}{of_figure}{smaller}).")
                }
            }
        }
        _ => format!("{head} Difference {difference}."),
    }
}

/// Several sides in a row, in words: all of them if few, else the first and the last.
fn sides_in_a_row(sides: &[(SideNumber, String)]) -> String {
    let named = |(number, typed): &(SideNumber, String)| format!("side {number} ({typed})");
    match sides {
        [first, .., last] if sides.len() > 4 => format!("{} to {}", named(first), named(last)),
        _ => words::all_of(&sides.iter().map(named).collect::<Vec<String>>()),
    }
}

pub(crate) fn misses(misses: (Length, Length)) -> String {
    use crate::geometry::compass::{Axis, Direction};
    let parts: Vec<String> = [(Axis::North, misses.0), (Axis::East, misses.1)]
        .into_iter()
        .filter(|(_, miss)| *miss != Length::ZERO)
        .map(|(axis, miss)| {
            format!("{} {}", miss.spoken(), Direction::along(axis, miss.nm()).word())
        })
        .collect();
    words::all_of(&parts)
}
