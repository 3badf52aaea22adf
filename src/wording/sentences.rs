//! What is said of a house and its figures, in sentences: the terminal and the pages print the same words.
#![expect(clippy::float_arithmetic, reason = "supports and intervals of explanations are floats")]

use crate::areas::range::Range;
use crate::areas::rule::Settings;
use crate::areas::{Areas, is_in_total};
use crate::diagnostic::Word;
use crate::diagnostic::words;
use crate::geometry::compass::Axis;
use crate::house::House;
use crate::house::SideRule;
use crate::house::{Face, Kind, ReferenceSource};
use crate::reconcile::{
    Between, BridgeStep, CouldExplain, Explanation, Figure, Line, OutlineReport, Reconciliation,
    Share,
};
use crate::units::area::{Area, WrittenArea};
use crate::units::decimal::{group_thousands, thousands};
use crate::units::length::{Length, Step};

/// What every report and page ends with.
pub(crate) const CAUTIONS: &str = "Not an appraisal, not a survey, not legal advice; local rules and licensed practice come first. All figures follow from the sides in the file; that does not show that the sides are right.";

/// What would account for a figure, as it is told.
pub(crate) struct Accounts {
    /// Told before the items.
    pub(crate) opening: String,
    /// One each, most likely first.
    pub(crate) items: Vec<String>,
    /// Told after them.
    pub(crate) closing: String,
}

/// A wall that differs between two outlines.
pub(crate) struct WallApart {
    pub(crate) side: String,
    pub(crate) measured: String,
    pub(crate) drawn: String,
    pub(crate) difference: String,
}

/// The house that the sentences are about.
#[derive(Clone, Copy)]
pub(crate) struct Sentences<'a> {
    pub(crate) house: &'a House,
    pub(crate) areas: &'a Areas,
    pub(crate) settings: Settings,
}

impl<'a> Sentences<'a> {
    /// What is said of the house that these are the areas of.
    pub(crate) fn of(areas: &'a Areas) -> Sentences<'a> {
        Sentences { house: areas.house(), areas, settings: *areas.settings() }
    }
}

impl Sentences<'_> {
    /// Where the house is; empty where the file does not say.
    pub(crate) fn place(&self) -> String {
        let heads = &self.house.particulars;
        let place: Vec<&str> =
            [&heads.property, &heads.address].into_iter().flatten().map(String::as_str).collect();
        place.join(", ")
    }

    /// Account, case and tax year; empty where the file has none.
    pub(crate) fn numbers(&self) -> String {
        let heads = &self.house.particulars;
        let mut numbers: Vec<String> = Vec::new();
        numbers.extend(heads.account.as_ref().map(|account| format!("account {account}")));
        numbers.extend(heads.case.as_ref().map(|case| format!("case {case}")));
        numbers.extend(heads.tax_year.map(|year| format!("tax year {year}")));
        numbers.join(", ")
    }

    /// The one sentence of each figure; of the measured area alone where there is no figure.
    pub(crate) fn statements(&self, figures: &[Figure]) -> Vec<String> {
        if figures.is_empty() && !self.house.spaces.is_empty() {
            return vec![format!("Measured {} sq ft.", whole(self.areas.gross().tenth_foot()))];
        }
        figures.iter().map(statement).collect()
    }

    /// Whether a listing has the record's figure, which then says nothing more; none where it has the measured one too.
    pub(crate) fn repeated(&self, figures: &[Figure]) -> Option<String> {
        let of = |word: &str| {
            let figure = figures.iter().find(|figure| figure.word() == word);
            figure.map(|figure| figure.area().whole_sq_ft())
        };
        let measured = figures.first().map(|figure| figure.start().whole_sq_ft());
        crate::reconcile::repeats(of("record"), of("listing"), measured)
            .then(|| "The listing has the record's figure.".to_owned())
    }

    /// A wall that may be left out spoils every figure, so it is told above them.
    pub(crate) fn missing_walls(&self, reconciliation: &Reconciliation) -> Vec<String> {
        let is_missing = |warning: &&crate::diagnostic::Diagnostic| warning.word() == Word::NoTurn;
        let told = |warning: &crate::diagnostic::Diagnostic| {
            let line = self.house.source().line(warning.span().start);
            format!(
                "Line {line}: {}. Is a wall left out between the two? The side by closing would hide it, and the areas below would be wrong.",
                warning.message().replace('`', "\"")
            )
        };
        reconciliation.warnings().iter().filter(is_missing).map(told).collect()
    }

    /// Whether a record agrees with its own sketch or its own lengths; none where it has neither.
    pub(crate) fn own_sketch(&self, figure: &Figure) -> Option<String> {
        let own = figure.own_sketch()?;
        let apart = own.whole_sq_ft() - figure.area().whole_sq_ft();
        let drawn = figure.own_sketch_as_drawn().filter(|drawn| *drawn != own);
        let name = capital(&the(figure));
        let is_drawn = |drawn: &crate::house::ReferenceOutline| drawn.drawn.word() == figure.word();
        let (own_sides, give) = if self.house.drawn.iter().any(is_drawn) {
            ("sketch", "its sides come")
        } else {
            ("lengths", "they come")
        };
        Some(match (apart, drawn) {
            (0, None) if figure.takes_nothing_off() => {
                format!("{name}'s own {own_sides} and its total agree, with nothing taken off.")
            }
            (0, _) => format!("{name}'s own {own_sides} and its total agree."),
            (_, Some(drawn)) => format!(
                "{name}'s own {own_sides} and its total do not agree: {give} to {} sq ft, or {} with taken off what is taken off here; its total says {} sq ft.",
                whole(drawn),
                whole(own),
                whole(figure.area())
            ),
            _ => format!(
                "{name}'s own {own_sides} and its total do not agree: {give} to {} sq ft, its total says {} sq ft, {} apart.",
                whole(own),
                whole(figure.area()),
                thousands(apart.abs())
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

    /// What the finer rule rounds to, after "each wall to".
    pub(crate) fn fine(&self) -> &'static str {
        match self.settings.fine {
            Step::Inch => "the inch",
            _ => "a tenth of a foot",
        }
    }

    /// The head of the column of the finer rule.
    pub(crate) fn fine_word(&self) -> &'static str {
        if self.settings.fine == Step::Inch { "inches" } else { "tenths" }
    }

    /// The name of a space with what it is and whether it counts.
    pub(crate) fn space_name(&self, space: usize) -> String {
        let house = self.house;
        let here = &house.spaces[space];
        let mut name = here.name.clone();
        if here.parent.is_some() {
            let less = if house.is_taken_off(space) { "less " } else { "with " };
            name = format!("{less}{name}");
        }
        match self.kind_word(space).as_str() {
            "" => name,
            word => format!("{name} ({word})"),
        }
    }

    /// What whole feet could add to a line of the bridge; none where that is nothing.
    pub(crate) fn could_add(&self, figure: &Figure, line: &Line) -> Option<String> {
        let range = line.range()?;
        let (low, high) = (signed(range.low.whole_sq_ft()), signed(range.high.whole_sq_ft()));
        let what = if figure.enough().step() == Step::HalfFoot { "half" } else { "whole" };
        (low != high).then(|| format!("{what} feet could add {low} to {high}"))
    }

    /// The sides that differ, those that move together told together: what an axis gains it gains as one,
    /// since its sides have to close.
    pub(crate) fn shares(&self, figure: &Figure) -> Vec<String> {
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

    fn shared(&self, figure: &Figure, group: &[&Share]) -> Option<String> {
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
        Some(format!("{space}{named}: {} sq ft", signed(area.whole_sq_ft())))
    }

    /// What would account for the figure: at most three items, and what would settle it; none where nothing has to be accounted for.
    pub(crate) fn accounts(&self, figure: &Figure) -> Option<Accounts> {
        let explanations = figure.explanations();
        let agrees = figure.area().whole_sq_ft() == figure.start().whole_sq_ft();
        let Some(best) = explanations.list().first() else {
            let rest = not_explained(figure);
            let is_silent = agrees
                || rest == 0
                || explanations.weighed() == 0
                || self.listed_as_much(figure, rest).is_some();
            return (!is_silent).then(|| Accounts {
                opening: format!(
                    "Nothing that was weighed would account for what is not explained, {} sq ft.",
                    signed(rest)
                ),
                items: Vec::new(),
                closing: "Other reasons are possible: ask what else the total holds.".to_owned(),
            });
        };
        if agrees || best.fits() && best.departures().is_empty() {
            return None;
        }
        let house = self.house;
        let lines = likely(explanations.list());
        let who = format!("{}, {},", the(figure), whole(figure.area()));
        if lines.is_empty() {
            let (low, high) = interval(best);
            let opening = format!(
                "Nothing that was weighed would account for it. The nearest: {}: {low} to {high}; {who} lies outside.",
                best.words(house)
            );
            let closing = "Other reasons are possible: recorded lengths of the walls, or a look at the record's sketch, would settle more.".to_owned();
            return Some(Accounts { opening, items: Vec::new(), closing });
        }
        let mut settle: Vec<String> = Vec::new();
        for question in lines.iter().flat_map(|explanation| explanation.settled_by(house)) {
            if !settle.contains(&question) {
                settle.push(question);
            }
        }
        // A wall that follows from the others hides an error in them.
        let counted = house.spaces.iter().filter(|space| space.counted);
        let unseen = counted.flat_map(|space| {
            let follows = space.sides.iter().filter(|side| side.follows);
            follows.map(move |side| {
                format!(
                    "measure side {} of {} too, which now follows from the others",
                    side.number, space.name
                )
            })
        });
        settle.extend(unseen.take(1));
        let item = |explanation: &&Explanation| {
            let (low, high) = interval(explanation);
            format!("{}: {low} to {high}; {who} lies inside", explanation.words(house))
        };
        Some(Accounts {
            opening: "What would account for it, most likely first:".to_owned(),
            items: lines.iter().map(item).collect(),
            closing: format!("Other reasons are possible. To settle it: {}.", settle.join("; ")),
        })
    }

    /// Somebody else's outline in a heading.
    pub(crate) fn outline_title(&self, outline: &OutlineReport) -> String {
        let area = match outline.area() {
            Some(area) => format!("{} sq ft", whole(area)),
            None => {
                format!("it ends {} of where it began, so it has no area", misses(outline.misses))
            }
        };
        format!("The {}'s sketch \"{}\": {area}", whose(outline), outline.name())
    }

    /// Its walls that differ from ours by more than rounding.
    pub(crate) fn walls_apart(&self, outline: &OutlineReport) -> Vec<WallApart> {
        let beyond = |side: &&crate::reconcile::MatchedSide| {
            self.settings.is_beyond_rounding(side.measured() - side.drawn())
        };
        let told = |side: &crate::reconcile::MatchedSide| {
            let difference = side.drawn() - side.measured();
            let sign = if difference < Length::ZERO { "-" } else { "+" };
            WallApart {
                side: format!("side {} ({})", side.ours(), side.ours_typed),
                measured: side.measured().spoken(),
                drawn: side.drawn().spoken(),
                difference: format!("{sign}{}", difference.spoken()),
            }
        };
        outline.matched().iter().filter(beyond).map(told).collect()
    }

    /// What else is to be said of it.
    pub(crate) fn outline_notes(
        &self,
        outline: &OutlineReport,
    ) -> (Option<&'static str>, Vec<String>) {
        let first = if outline.space.is_none() {
            Some("it is compared with no single space of this file")
        } else if self.walls_apart(outline).is_empty() && outline.same_corners() {
            Some("wall by wall it is ours to the whole foot")
        } else {
            None
        };
        let told = outline.instead.iter().map(|instead| {
            let (ours, theirs) = (sides_in_a_row(&instead.ours), sides_in_a_row(&instead.theirs));
            match (instead.ours.is_empty(), instead.theirs.is_empty()) {
                (true, _) => format!("only in the sketch: {theirs}"),
                (_, true) => format!("only in this file: {ours}"),
                _ => format!("where this file has {ours}, the sketch has {theirs}"),
            }
        });
        (first, told.collect())
    }

    /// What the record lists besides its total: a name and what is said of it.
    pub(crate) fn other_lines(&self) -> Vec<(String, String)> {
        let house = self.house;
        let mut rows: Vec<(String, String)> = Vec::new();
        for (i, space) in house.spaces.iter().enumerate() {
            if let Some(recorded) = space.recorded {
                let measured = self.areas.spaces[i].net_tenth_foot;
                rows.push((
                    space.name.clone(),
                    format!("recorded {}, measured {}", whole(recorded), whole(measured)),
                ));
            }
        }
        rows.extend(house.lots.iter().map(lot_line));
        for missing in &self.house.missing {
            let text = format!(
                "recorded {}, not there; ask if it is in the total",
                whole(missing.recorded.area())
            );
            rows.push((missing.name.clone(), text));
        }
        rows
    }

    /// What the record lists and is not there, where the record is more than was measured.
    pub(crate) fn missing(&self, figures: &[Figure]) -> Vec<String> {
        let more = |figure: &Figure| {
            figure.word() == "record" && figure.area().whole_sq_ft() > figure.start().whole_sq_ft()
        };
        if !figures.iter().any(more) {
            return Vec::new();
        }
        let told = |missing: &crate::house::Missing| {
            format!(
                "The record also lists {}, {} sq ft, which is not there: ask if it is in the total.",
                missing.name,
                whole(missing.recorded.area())
            )
        };
        self.house.missing.iter().take(6).map(told).collect()
    }

    /// The heading over them.
    pub(crate) fn other_lines_title(&self, figures: &[Figure]) -> &'static str {
        if figures.iter().any(|figure| figure.word() == "record") {
            "The record's other lines, square feet"
        } else {
            "Other lines, square feet"
        }
    }

    /// Who measured, how sure the measured area is, and what was not seen.
    pub(crate) fn certainty(&self) -> Vec<String> {
        let house = self.house;
        let mut told = Vec::new();
        if let Some(measured) = &self.house.particulars.measured {
            let by = measured.by.as_ref().map(|by| format!(" by {by}")).unwrap_or_default();
            let with =
                measured.with.as_ref().map(|with| format!(" with {with}")).unwrap_or_default();
            told.push(format!("Measured {}{by}{with}.", measured.date));
        }
        if !house.spaces.is_empty() {
            told.push(self.plus_minus());
        }
        if self.areas.is_computed() {
            told.push("Slanted or curved walls are in it: computed to 0.01 sq ft.".to_owned());
        }
        if house.lots.iter().any(|lot| lot.closed.is_computed()) {
            told.push("The land is computed to 0.01 sq ft.".to_owned());
        }
        told.extend(self.only_from_a_plan());
        if self.house.particulars.interior_seen != Some(true) && !house.spaces.is_empty() {
            told.push("The interior was not seen (finish, ceiling heights, access): this is gross area, outside measure, not gross living area.".to_owned());
        }
        told
    }

    /// That nobody measured what is counted, where its lengths are a plan's.
    pub(crate) fn only_from_a_plan(&self) -> Option<String> {
        let counted = self.house.spaces.iter().filter(|space| space.counted);
        let mut sides = counted.flat_map(|space| &space.sides).peekable();
        let is_plan = sides.peek().is_some() && sides.all(|side| side.how() == "plan");
        is_plan.then(|| {
            "No wall was measured: every length of what is counted is from a plan.".to_owned()
        })
    }

    /// How sure the measured area is.
    pub(crate) fn plus_minus(&self) -> String {
        let heads = &self.house.particulars;
        let tolerance = heads.tolerance.map_or("1/2\"".to_owned(), |written| written.to_string());
        let said = if heads.tolerance.is_some() { "stated" } else { "assumed" };
        let also = if !self.areas.gross().holds_assumptions() {
            ""
        } else {
            ", and what was assumed within 1\""
        };
        let says_itself =
            |side: &crate::house::Side| side.words.estimated || side.words.tolerance.is_some();
        let spaces = &self.house.spaces;
        let own = if spaces.iter().flat_map(|space| &space.sides).any(says_itself) {
            " (or what is said of it)"
        } else {
            ""
        };
        let plus_minus = self.areas.gross().plus_minus_outside();
        format!(
            "If every wall is within {tolerance}{own}, as {said}{also}: ± {} sq ft (about 95 %).",
            rounded_float(plus_minus)
        )
    }

    /// Warnings that a reader of the report should know, each with its line.
    pub(crate) fn worth_knowing(&self, reconciliation: &Reconciliation) -> Vec<String> {
        let shown = |warning: &&crate::diagnostic::Diagnostic| {
            !matches!(warning.word(), Word::OutlineDoesNotClose | Word::NoTurn)
        };
        let told = |warning: &crate::diagnostic::Diagnostic| {
            let line = self.house.source().line(warning.span().start);
            let unseen = if warning.word() == Word::NoClosureCheck {
                "; an error in one of those goes unseen"
            } else {
                ""
            };
            format!("line {line}: {}{unseen}", warning.message().replace('`', "\""))
        };
        reconciliation.warnings().iter().filter(shown).map(told).collect()
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
            (true, true, _) => "counted, on the writer's word",
            (false, true, _) => "not counted, on the writer's word",
            (false, _, false) if here.parent.is_none() => "not counted",
            _ => "",
        };
        let kind = if same { "" } else { kind };
        let parts: Vec<&str> =
            [kind, counted].into_iter().filter(|part| !part.is_empty()).collect();
        parts.join(", ")
    }

    /// What the steps come to, in a sentence; nothing where there is nothing to add to them.
    pub(crate) fn answer(&self, figure: &Figure) -> String {
        let in_step = figure.lines_in_sq_ft().iter().all(|line| *line == 0);
        let rest = not_explained(figure);
        let to_feet = matches!(
            figure.side_rule(),
            SideRule::Step(Step::WholeFoot | Step::HalfFoot) | SideRule::Unknown
        );
        if figure.area().whole_sq_ft() == figure.start().whole_sq_ft() {
            let assumed = figure.word() == "record" && !figure.says_rule();
            let only_rounding = figure.lines().iter().all(|line| {
                matches!(line.step(), BridgeStep::Rounding | BridgeStep::NotExplained)
                    || line.area().whole_sq_ft() == 0
            });
            let text = match (in_step, assumed && only_rounding) {
                (true, _) => "They agree to the square foot.",
                (_, true) => {
                    "They agree to the square foot; the steps matter only if the office rounds its walls."
                }
                _ => "They agree to the square foot, since the steps cancel.",
            };
            return text.to_owned();
        }
        let enough = if rest == 0 && !to_feet { String::new() } else { self.enough(figure) };
        let listed = self.listed_as_much(figure, rest).unwrap_or_default();
        [enough, listed].into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>().join(" ")
    }

    /// What the record lists by itself, not counted here, with just as much as is not explained.
    fn listed_as_much(&self, figure: &Figure, rest: i64) -> Option<String> {
        let house = self.house;
        let is_counted = |i: usize| is_in_total(house, i, false);
        let spaces = house.spaces.iter().enumerate().filter(|&(i, _)| !is_counted(i));
        let spaces = spaces.filter_map(|(_, space)| Some((&space.name, space.recorded?)));
        let missing = self.house.missing.iter();
        let missing = missing.map(|missing| (&missing.name, missing.recorded.area()));
        let as_much = |(_, recorded): &(&String, Area)| recorded.whole_sq_ft() == rest;
        let names: Vec<&str> =
            spaces.chain(missing).filter(as_much).map(|(name, _)| name.as_str()).collect();
        (figure.word() == "record" && rest > 0 && !names.is_empty()).then(|| {
            format!(
                "The record lists {} with as much as is not explained, {}: ask if that is in the total too.",
                words::one_of(&names),
                thousands(rest)
            )
        })
    }

    pub(crate) fn line_name(&self, figure: &Figure, line: &Line) -> String {
        match line.step() {
            BridgeStep::Counting if line.is_supported() => {
                format!("would account for it: {}", words::all_of(line.counted()))
            }
            BridgeStep::Face => match figure.face() {
                Face::Outside => format!("face: {} is taken outside too", the(figure)),
                Face::Frame => "face: walls taken at the frame, without the veneer".to_owned(),
                Face::Inside => "face: walls taken inside".to_owned(),
            },
            BridgeStep::Rounding => match figure.side_rule() {
                SideRule::Unknown => {
                    format!(
                        "rounding: how {} rounds its walls is not known (ask); none is taken",
                        the(figure)
                    )
                }
                SideRule::Step(step) if step == self.settings.fine => {
                    format!("rounding: {}, as measured", step.spoken())
                }
                SideRule::Step(step) if figure.says_rule() => {
                    format!("rounding: {}, as the file says", step.spoken())
                }
                SideRule::Step(step) if figure.word() == "record" => {
                    let what = step.spoken().trim_start_matches("each wall ");
                    format!("rounding: if the office rounds each wall {what} (ask)")
                }
                SideRule::Step(step) => format!("rounding: {}", step.spoken()),
            },
            BridgeStep::RecordedSides => match figure.word() {
                "record" => "recorded sides: the record's own lengths".to_owned(),
                _ => format!("its own sides: {}'s own lengths", the(figure)),
            },
            BridgeStep::Counting => {
                format!("counting: {} counts {}", the(figure), words::all_of(line.counted()))
            }
            BridgeStep::NotExplained => "not explained".to_owned(),
        }
    }

    /// `side 4 (east 19' 5") is 21' there, 19' by the rule`.
    fn share(&self, figure: &Figure, share: &Share) -> String {
        let tenths = figure.side_rule() == SideRule::Step(Step::TenthFoot);
        let length = |length: Length| match share.axis() {
            None => length.spoken(),
            Some(_) if tenths => format!("{}'", length.decimal_feet()),
            Some(_) => length.to_string(),
        };
        // Closing may have moved it from its own rounding.
        let alone = self.areas.outside_length(share.place, share.side() - 1);
        let is_moved = match (figure.side_rule(), figure.face(), alone) {
            (SideRule::Step(step), Face::Outside, Some(alone)) => {
                share.axis().is_some() && alone.rounded(step, self.settings.halves) != share.ruled()
            }
            _ => false,
        };
        let closed = if is_moved { ", moved to close" } else { "" };
        format!(
            "side {} ({}) is {} there, {} by the rule{closed}",
            share.side(),
            share.typed(),
            share.recorded(),
            length(share.ruled())
        )
    }

    /// Whether rounding is big enough, in a sentence.
    fn enough(&self, figure: &Figure) -> String {
        let enough = figure.enough();
        let less = if enough.wanted() == figure.area() { "" } else { " less what it counts" };
        let who = format!("{}{less}, {},", the(figure), whole(enough.wanted()));
        let house = match figure.face() {
            Face::Outside => "this house",
            Face::Frame => "this house, taken at the frame,",
            Face::Inside => "this house, taken inside,",
        };
        let walls = match enough.step() {
            Step::HalfFoot => "half-foot walls",
            _ => "whole-foot walls",
        };
        let give = format!("{walls} of {house} give");
        let usual = enough.range().map(|range| range_text(Some(range)));
        if figure.word() != "record"
            && !matches!(figure.side_rule(), SideRule::Step(Step::WholeFoot | Step::HalfFoot))
        {
            return self.if_rounded(figure, &who, house);
        }
        let left = not_explained(figure);
        // What rounding to the nearest leaves open, rounding some walls the other way may still give.
        let alone = if left == 0 {
            "Rounding alone would account for it"
        } else {
            "Rounding in another way than in that step would account for it alone"
        };
        let nothing_there = enough.between().map(|between| nothing_between(between, &who));
        let answer = match (enough.could_explain(), usual, enough.widest()) {
            (Some(CouldExplain::Yes), Some(usual), _) if nothing_there.is_some() => format!(
                "Rounding alone does not give it: {give} {usual}{}.",
                nothing_there.unwrap_or_default()
            ),
            (Some(CouldExplain::OnlyAgainst), usual, Some(widest)) if nothing_there.is_some() => {
                format!(
                    "Rounding does not give it, even against the rounding of single walls: {give} {}{} whichever way each goes{}.",
                    usual.map(|usual| format!("{usual} as usual, ")).unwrap_or_default(),
                    range_text(Some(widest)),
                    nothing_there.unwrap_or_default()
                )
            }
            (Some(CouldExplain::Yes), Some(usual), _) if !usual.contains(" to ") => {
                format!("{alone}: {give} just {usual}.")
            }
            (Some(CouldExplain::Yes), Some(usual), _) => {
                format!("{alone}: {give} {usual}, and {who} lies inside.")
            }
            (Some(CouldExplain::OnlyAgainst), usual, Some(widest)) => format!(
                "Rounding would account for it only against the rounding of single walls: {give} {}{} whichever way each goes, and {who} lies inside that.",
                usual.map(|usual| format!("{usual} as usual, ")).unwrap_or_default(),
                range_text(Some(widest)),
            ),
            (Some(CouldExplain::No), usual, Some(widest)) => {
                let (side, limit) = if enough.wanted() > widest.high {
                    ("no more than", widest.high)
                } else {
                    ("no less than", widest.low)
                };
                let limit = whole(limit);
                let usual = usual.filter(|usual| *usual != limit);
                let usual = usual.map(|usual| format!("{usual}, and ")).unwrap_or_default();
                format!(
                    "Rounding is not big enough: {give} {usual}{side} {limit} whichever way each goes; {who} lies outside."
                )
            }
            _ => format!("What {walls} of {house} could give cannot be stated."),
        };
        // The figure's own lengths are steps already: of rounding there is then no more to say than what it could do without them.
        let answer = match (figure.line(BridgeStep::RecordedSides), answer.strip_prefix('R')) {
            (Some(_), Some(rest)) => {
                format!("Leaving the {}'s own lengths aside, r{rest}", figure.word())
            }
            _ => answer,
        };
        match enough.typical() {
            Some(typical) if figure.word() == "record" => {
                let to = if enough.step() == Step::HalfFoot { "half foot" } else { "foot" };
                format!(
                    "{answer} Rounding to the {to} is typically ± {} sq ft here.",
                    rounded_float(typical)
                )
            }
            _ => answer,
        }
    }

    /// The same of a figure that does not say its walls are rounded to feet.
    fn if_rounded(&self, figure: &Figure, who: &str, house: &str) -> String {
        let enough = figure.enough();
        let (Some(answer), Some(widest)) = (enough.could_explain(), enough.widest()) else {
            return String::new();
        };
        let Some(range) = enough.range() else {
            let side = if answer == CouldExplain::No { "outside" } else { "inside" };
            return format!(
                "Were its walls rounded to the whole foot, {house} could be {} whichever way each goes; {who} lies {side}.",
                range_text(Some(widest))
            );
        };
        let usual = range_text(Some(range));
        let given = format!("Were its walls rounded to the whole foot, {house} could be {usual}");
        let nothing_there = enough.between().map(|between| nothing_between(between, who));
        match answer {
            CouldExplain::Yes if nothing_there.is_some() => {
                format!("{given}{}.", nothing_there.unwrap_or_default())
            }
            CouldExplain::OnlyAgainst if nothing_there.is_some() => format!(
                "{given} as usual, {} whichever way each goes{}.",
                range_text(Some(widest)),
                nothing_there.unwrap_or_default()
            ),
            CouldExplain::Yes => format!("{given}; {who} lies inside."),
            CouldExplain::OnlyAgainst => format!(
                "{given} as usual, {} whichever way each goes; {who} lies inside that.",
                range_text(Some(widest))
            ),
            CouldExplain::No => format!("{given}; {who} lies outside, whichever way each goes."),
        }
    }
}

/// What the last step leaves, as it is printed.
fn not_explained(figure: &Figure) -> i64 {
    let lines = figure.lines().iter().zip(figure.lines_in_sq_ft());
    lines.filter(|(line, _)| line.step() == BridgeStep::NotExplained).map(|(_, sq_ft)| sq_ft).sum()
}

/// That no outline gives a figure, though some give less and some more.
fn nothing_between(between: Between, who: &str) -> String {
    let (below, above) = (whole(between.below), whole(between.above));
    format!(", with nothing between {below} and {above}; {who} lies there")
}

/// The explanations worth telling, at most three.
fn likely(list: &[Explanation]) -> Vec<&Explanation> {
    let likely = |explanation: &&Explanation| explanation.fits() && explanation.support() >= 0.03;
    let mut lines: Vec<&Explanation> = Vec::new();
    for explanation in list.iter().filter(likely) {
        // The same with a rounding that changes nothing says nothing new.
        let told = |other: &&Explanation| {
            other.departures == explanation.departures && explanation.slip.is_none()
        };
        if !lines.iter().any(told) && lines.len() < 3 {
            lines.push(explanation);
        }
    }
    lines
}

/// `record` or `plan`.
pub(crate) fn whose(outline: &OutlineReport) -> &'static str {
    match outline.drawn() {
        ReferenceSource::Record => "record",
        ReferenceSource::Plan => "plan",
    }
}

fn lot_line(lot: &crate::house::Lot) -> (String, String) {
    let area = lot.outline().area();
    let measured = format!("{} sq ft, {} acres", whole(area), area.in_unit(Area::ACRE, 4));
    let text = match lot.recorded {
        Some(recorded) => format!("recorded {}, its sides give {measured}", as_typed(recorded)),
        None => format!("its sides give {measured}"),
    };
    (format!("{} (lot)", lot.name), text)
}

/// An area as it was typed, and in square feet where that is another unit.
pub(crate) fn as_typed(area: WrittenArea) -> String {
    let typed = area.to_string();
    if typed.ends_with("sq ft") { typed } else { format!("{typed} ({} sq ft)", whole(area.area())) }
}

pub(crate) fn whole(area: Area) -> String {
    thousands(area.whole_sq_ft())
}

pub(crate) fn signed(number: i64) -> String {
    let plus = if number > 0 { "+" } else { "" };
    format!("{plus}{}", thousands(number))
}

/// A float to the whole number, with its thousands.
pub(crate) fn rounded_float(number: f64) -> String {
    let digits = format!("{number:.0}");
    digits.parse().map_or(digits, thousands)
}

/// From and to what a combination gives, as far as rounding leaves it open.
pub(crate) fn interval(explanation: &Explanation) -> (String, String) {
    let allows = explanation.allows();
    (rounded_float(explanation.sq_ft - allows), rounded_float(explanation.sq_ft + allows))
}

/// `1,530 to 1,581`; one number where both are the same.
pub(crate) fn range_text(range: Option<Range>) -> String {
    match range {
        None => "not stated".to_owned(),
        Some(range) if range.low.whole_sq_ft() == range.high.whole_sq_ft() => whole(range.low),
        Some(range) => format!("{} to {}", whole(range.low), whole(range.high)),
    }
}

/// `Record`, `Listing`, or the figure's own name.
pub(crate) fn capital(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// `the record`, `the listing`; a figure with a name of its own stands in quotes.
pub(crate) fn the(figure: &Figure) -> String {
    match figure.word() {
        "figure" => format!("\"{}\"", figure.name()),
        word => format!("the {word}"),
    }
}

/// A, B … Z, AA, AB …
#[expect(clippy::integer_division, reason = "counting in letters")]
pub(crate) fn letters(number: usize) -> String {
    let last = char::from(b'A' + u8::try_from(number % 26).unwrap_or(0));
    match number / 26 {
        0 => last.to_string(),
        more => format!("{}{last}", letters(more - 1)),
    }
}

/// The one sentence: figure, measured, difference.
pub(crate) fn statement(figure: &Figure) -> String {
    let (figure_whole, measured) = (figure.area().whole_sq_ft(), figure.start().whole_sq_ft());
    let apart = figure_whole - measured;
    let name = match figure.word() {
        "figure" => format!("\"{}\"", figure.name()),
        word => capital(word),
    };
    let also = figure.in_other_unit().map(|typed| format!(" ({typed})")).unwrap_or_default();
    let head = format!(
        "{name} {} sq ft{also}. Measured {} sq ft.",
        thousands(figure_whole),
        thousands(measured)
    );
    let per_cent = figure.per_cent();
    let per_cent = per_cent.as_deref().map(|share| {
        let (whole, tenth) = share.trim_start_matches('-').split_once('.').unwrap_or((share, "0"));
        format!("{}.{tenth}", group_thousands(whole))
    });
    match (apart, per_cent) {
        (0, _) => format!("{head} No difference."),
        (_, Some(per_cent)) => {
            let smaller =
                if apart < 0 { format!("; {} is smaller", the(figure)) } else { String::new() };
            format!(
                "{head} Difference {} sq ft ({per_cent} % of measured{smaller}).",
                thousands(apart.abs())
            )
        }
        _ => format!("{head} Difference {} sq ft.", thousands(apart.abs())),
    }
}

/// Sides that follow each other: each of a few, of many the first and the last.
fn sides_in_a_row(sides: &[(usize, String)]) -> String {
    let named = |(number, typed): &(usize, String)| format!("side {number} ({typed})");
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
