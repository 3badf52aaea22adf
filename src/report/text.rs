//! The report for a person: plain words, figures that line up, readable without colour.
#![expect(clippy::float_arithmetic, reason = "supports and intervals of explanations are floats")]

use crate::area::Area;
use crate::areas::Areas;
use crate::diagnostic::Word;
use crate::house::range::Range;
use crate::length::{Length, Step};
use crate::numbers::thousands;
use crate::reconcile::{
    BridgeStep, CouldExplain, Explanation, Figure, Line, OutlineReport, Reconciliation, Share,
};
use crate::report::table::Page;
use crate::sketch::statement::SideRule;
use crate::sketch::{Axis, Drawn, Face, Kind};
use crate::{Cut, Settings, Sound, Worth, words};

/// How a report is to look.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Look {
    /// Columns of the screen or the page.
    pub width: usize,
    /// Bold type where it helps.
    pub styled: bool,
    /// Every weight and figure, where a person asks why.
    pub why: bool,
}

impl Default for Look {
    fn default() -> Look {
        Look { width: 80, styled: false, why: false }
    }
}

const CAUTIONS: &str = "Not an appraisal, not a survey, not legal advice; local rules and licensed practice come first. All figures follow from the sides in the file; that does not show that the sides are right.";

/// The main report: the statement, the areas, the difference to each figure step by step.
pub fn reconciliation(sound: &Sound, reconciliation: &Reconciliation, look: Look) -> String {
    let worth = Worth::of(sound, reconciliation, None);
    reconciliation_with(sound, reconciliation, worth.as_ref(), look)
}

/// The same with what the gap is worth already worked out.
pub fn reconciliation_with(
    sound: &Sound,
    reconciliation: &Reconciliation,
    worth: Option<&Worth>,
    look: Look,
) -> String {
    let mut writer = Writer {
        sound,
        areas: reconciliation.areas(),
        settings: *reconciliation.settings(),
        page: Page::new(look.width, look.styled),
    };
    writer.heads();
    writer.statements(reconciliation.figures());
    writer.missing_wall(reconciliation);
    writer.areas();
    for figure in reconciliation.figures() {
        writer.figure(figure);
    }
    for outline in reconciliation.outlines() {
        writer.outline(outline);
    }
    writer.other_lines(reconciliation.figures());
    writer.certainty();
    writer.worth_knowing(reconciliation);
    if look.why {
        writer.why(reconciliation);
    }
    if let Some(worth) = worth {
        crate::report::worth::section(&mut writer.page, worth);
    }
    writer.page.blank();
    writer.page.paragraph(CAUTIONS);
    writer.page.finish()
}

/// The areas alone.
pub fn areas(sound: &Sound, areas: &Areas, settings: &Settings, look: Look) -> String {
    let mut writer =
        Writer { sound, areas, settings: *settings, page: Page::new(look.width, look.styled) };
    writer.areas();
    writer.page.finish()
}

struct Writer<'a> {
    sound: &'a Sound,
    areas: &'a Areas,
    settings: Settings,
    page: Page,
}

fn whole(area: Area) -> String {
    thousands(area.whole_sq_ft())
}

fn signed(number: i64) -> String {
    let plus = if number > 0 { "+" } else { "" };
    format!("{plus}{}", thousands(number))
}

/// A float to the whole number, with its thousands.
fn rounded_float(number: f64) -> String {
    let digits = format!("{number:.0}");
    digits.parse().map_or(digits, thousands)
}

/// From and to what a combination gives, as far as rounding leaves it open.
fn interval(explanation: &Explanation) -> (String, String) {
    let allows = explanation.allows();
    (rounded_float(explanation.sq_ft - allows), rounded_float(explanation.sq_ft + allows))
}

/// `1,530 to 1,581`; one number where both are the same.
fn range_text(range: Option<Range>) -> String {
    match range {
        None => "not stated".to_owned(),
        Some(range) if range.low.whole_sq_ft() == range.high.whole_sq_ft() => whole(range.low),
        Some(range) => format!("{} to {}", whole(range.low), whole(range.high)),
    }
}

/// `Record`, `Listing`, or the figure's own name.
fn capital(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// `the record`, `the listing`; a figure with a name of its own stands in quotes.
fn the(figure: &Figure) -> String {
    match figure.word() {
        "figure" => format!("\"{}\"", figure.name()),
        word => format!("the {word}"),
    }
}

impl Writer<'_> {
    fn heads(&mut self) {
        let heads = &self.sound.sketch().heads;
        let place: Vec<&str> =
            [&heads.property, &heads.address].into_iter().flatten().map(String::as_str).collect();
        if !place.is_empty() {
            self.page.paragraph(&place.join(", "));
        }
        let mut numbers: Vec<String> = Vec::new();
        numbers.extend(heads.account.as_ref().map(|account| format!("account {account}")));
        numbers.extend(heads.case.as_ref().map(|case| format!("case {case}")));
        numbers.extend(heads.tax_year.map(|year| format!("tax year {year}")));
        if !numbers.is_empty() {
            self.page.paragraph(&numbers.join(", "));
        }
        self.page.blank();
    }

    fn statements(&mut self, figures: &[Figure]) {
        let measured = self.areas.gross().tenth_foot();
        if figures.is_empty() && !self.sound.house().spaces.is_empty() {
            let text = format!("Measured {} sq ft.", whole(measured));
            self.page.bold(&text);
        }
        for figure in figures {
            let text = statement(figure);
            self.page.bold(&text);
        }
        for figure in figures {
            self.own_sketch(figure);
        }
    }

    /// A wall that may be left out spoils every figure below, so it is told above them.
    fn missing_wall(&mut self, reconciliation: &Reconciliation) {
        for warning in
            reconciliation.warnings().iter().filter(|warning| warning.word() == Word::NoTurn)
        {
            let line = self.sound.source().line(warning.span().start);
            let text = format!(
                "Line {line}: {}. Is a wall left out between the two? The side by closing would hide it, and the areas below would be wrong.",
                warning.message().replace('`', "\"")
            );
            self.page.paragraph(&text);
        }
    }

    /// A record that disagrees with its own sketch is told first of all.
    fn own_sketch(&mut self, figure: &Figure) {
        let Some(own) = figure.own_sketch() else { return };
        let apart = own.whole_sq_ft() - figure.area().whole_sq_ft();
        let name = capital(&the(figure));
        let is_drawn = |drawn: &crate::house::DrawnOutline| drawn.drawn.word() == figure.word();
        let (own_sides, give) = if self.sound.house().drawn.iter().any(is_drawn) {
            ("sketch", "its sides come")
        } else {
            ("lengths", "they come")
        };
        let text = match apart {
            0 => format!("{name}'s own {own_sides} and its total agree."),
            _ => format!(
                "{name}'s own {own_sides} and its total do not agree: {give} to {} sq ft, its total says {} sq ft, {} apart.",
                whole(own),
                whole(figure.area()),
                thousands(apart.abs())
            ),
        };
        self.page.paragraph(&text);
    }

    fn areas(&mut self) {
        let fine = match self.settings.fine {
            Step::Inch => "the inch",
            _ => "a tenth of a foot",
        };
        if self.sound.house().spaces.is_empty() {
            return;
        }
        self.page.blank();
        if self.page.is_wide() {
            let head = |a: &str, b: &str, c: &str| {
                [("", a.to_owned(), 17), ("", b.to_owned(), 16), ("", c.to_owned(), 16)]
            };
            self.page.row("", &head("each wall to", "each wall to", "whole feet"), 0);
            self.page.row("Square feet", &head(fine, "the whole foot", "could give"), 0);
        } else {
            self.page.paragraph("Square feet, each wall to");
        }
        let house = self.sound.house();
        let several = house.levels.len() > 1 || house.levels.iter().any(|level| level.below_grade);
        for (number, level) in house.levels.iter().enumerate() {
            let on_level: Vec<usize> =
                (0..house.spaces.len()).filter(|&i| house.spaces[i].level == number).collect();
            if several && !on_level.is_empty() {
                let below = if level.below_grade { ", below grade" } else { "" };
                self.page.indented(&format!("{}{below}", level.name), 0, 4);
            }
            for &space in on_level.iter().filter(|&&i| house.spaces[i].parent.is_none()) {
                self.space(space, if several { 2 } else { 0 });
            }
        }
        self.totals();
    }

    /// A space, and under it what is taken off it.
    fn space(&mut self, space: usize, indent: usize) {
        let house = self.sound.house();
        let (here, areas) = (&house.spaces[space], &self.areas.spaces[space]);
        let mut name = here.name.clone();
        if here.parent.is_some() {
            let less = if house.is_taken_off(space) { "less " } else { "with " };
            name = format!("{less}{name}");
        }
        let word = self.kind_word(space);
        if !word.is_empty() {
            name = format!("{name} ({word})");
        }
        let cells =
            self.cells(areas.tenth_foot.area(), areas.whole_foot.outline.area(), areas.range);
        self.page.row(&name, &cells, indent);
        let inside: Vec<usize> =
            (0..house.spaces.len()).filter(|&i| house.spaces[i].parent == Some(space)).collect();
        for other in inside {
            self.space(other, indent + 2);
        }
    }

    fn kind_word(&self, space: usize) -> String {
        let here = &self.sound.house().spaces[space];
        let kind = match here.kind {
            Kind::Living if here.counted => "",
            Kind::Open => "open to below",
            Kind::Low => "low ceiling",
            Kind::Stair
                if here.parent.is_some_and(|parent| self.sound.house().spaces[parent].counted) =>
            {
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

    fn cells(
        &self,
        fine: Area,
        ruled: Area,
        range: Option<Range>,
    ) -> [(&'static str, String, usize); 3] {
        let fine_head = match self.settings.fine {
            Step::Inch => "the inch",
            _ => "a tenth of a foot",
        };
        [
            (fine_head, whole(fine), 17),
            ("the whole foot", whole(ruled), 16),
            ("whole feet could give", range_text(range), 16),
        ]
    }

    fn totals(&mut self) {
        let house = self.sound.house();
        if house.spaces.is_empty() {
            return;
        }
        let seen = self.sound.sketch().heads.interior_seen == Some(true);
        let name = if seen { "Gross living area, outside" } else { "Gross area, outside measure" };
        let gross = self.areas.gross();
        let cells = self.cells(gross.tenth_foot(), gross.whole_foot(), gross.range());
        if self.page.is_wide() {
            self.page.rule(49);
        }
        self.page.row(name, &cells, 0);
        if let Some(below) = self.areas.below_grade() {
            let cells = self.cells(below.tenth_foot(), below.whole_foot(), below.range());
            self.page.row("Below grade, apart", &cells, 0);
        }
    }

    fn figure(&mut self, figure: &Figure) {
        let title = figure.title().map(|title| format!(" ({title})")).unwrap_or_default();
        self.page.heading(&format!("From measured to {}{title}, step by step", the(figure)));
        let start = format!("measured: {}, outside", self.settings.fine.spoken());
        let whole_lines = figure.lines_in_sq_ft();
        self.page.ledger(&start, &whole(figure.start()), 2);
        for (line, rounded) in figure.lines().iter().zip(&whole_lines) {
            let name = self.line_name(figure, line);
            self.page.ledger(&name, &signed(*rounded), 2);
            if let Some(range) = line.range() {
                let (low, high) =
                    (signed(range.low.whole_sq_ft()), signed(range.high.whole_sq_ft()));
                if low != high {
                    let what =
                        if figure.enough().step() == Step::HalfFoot { "half" } else { "whole" };
                    self.page.indented(&format!("{what} feet could add {low} to {high}"), 6, 6);
                }
            }
            if line.step() == BridgeStep::RecordedSides {
                self.shares(figure);
            }
        }
        self.page.rule(8);
        self.page.ledger(&capital(figure.name()), &whole(figure.area()), 2);
        self.page.blank();
        let text = self.answer(figure);
        if !text.is_empty() {
            self.page.paragraph(&text);
        }
        self.explanations(figure);
    }

    /// What would account for the figure: at most three lines, most likely first, and what would settle it.
    fn explanations(&mut self, figure: &Figure) {
        let explanations = figure.explanations();
        let Some(best) = explanations.list().first() else { return };
        let agrees = figure.area().whole_sq_ft() == figure.start().whole_sq_ft();
        if agrees || best.fits() && best.departures().is_empty() {
            return;
        }
        let house = self.sound.house();
        let likely =
            |explanation: &&Explanation| explanation.fits() && explanation.support() >= 0.03;
        let mut lines: Vec<&Explanation> = Vec::new();
        for explanation in explanations.list().iter().filter(likely) {
            // The same with a rounding that changes nothing says nothing new.
            let told = |other: &&Explanation| {
                other.departures == explanation.departures && explanation.slip.is_none()
            };
            if !lines.iter().any(told) && lines.len() < 3 {
                lines.push(explanation);
            }
        }
        self.page.blank();
        let who = format!("{}, {},", the(figure), whole(figure.area()));
        if lines.is_empty() {
            let (low, high) = interval(best);
            let text = format!(
                "Nothing that was weighed would account for it. The nearest: {}: {low} to {high}; {who} lies outside.",
                best.words(house)
            );
            self.page.paragraph(&text);
            self.page.paragraph("Other reasons are possible: recorded lengths of the walls, or a look at the record's sketch, would settle more.");
            return;
        }
        self.page.paragraph("What would account for it, most likely first:");
        let mut settle: Vec<String> = Vec::new();
        for explanation in lines {
            let (low, high) = interval(explanation);
            let text =
                format!("- {}: {low} to {high}; {who} lies inside", explanation.words(house));
            self.page.indented(&text, 2, 4);
            for question in explanation.settled_by(house) {
                if !settle.contains(&question) {
                    settle.push(question);
                }
            }
        }
        self.page.paragraph(&format!(
            "Other reasons are possible. To settle it: {}.",
            settle.join("; ")
        ));
    }

    /// What the steps come to, in a sentence; nothing where there is nothing to add to them.
    fn answer(&self, figure: &Figure) -> String {
        let in_step = figure.lines_in_sq_ft().iter().all(|line| *line == 0);
        let rest =
            figure.line(BridgeStep::NotExplained).map_or(0, |line| line.area().whole_sq_ft());
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
        if rest == 0 && !to_feet { String::new() } else { self.enough(figure) }
    }

    fn line_name(&self, figure: &Figure, line: &Line) -> String {
        match line.step() {
            BridgeStep::Counting if line.is_supported() => {
                format!("would account for it: {}", words::all_of(line.counted()))
            }
            BridgeStep::Face => match (figure.face(), figure.says_face()) {
                (Face::Outside, _) => format!("face: {} is taken outside too", the(figure)),
                (Face::Frame, _) => "face: walls taken at the frame, without the veneer".to_owned(),
                (Face::Inside, _) => "face: walls taken inside".to_owned(),
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

    /// The sides that differ, those that move together told together: what an axis gains it gains as one,
    /// since its sides have to close.
    fn shares(&mut self, figure: &Figure) {
        let several = self.sound.house().spaces.len() > 1;
        type Group<'a> = ((usize, Option<Axis>), Vec<&'a Share>);
        let mut groups: Vec<Group<'_>> = Vec::new();
        for share in figure.shares() {
            let key = (share.place, share.axis());
            match groups.iter_mut().find(|(other, _)| *other == key) {
                Some((_, group)) => group.push(share),
                None => groups.push((key, vec![share])),
            }
        }
        for (_, group) in groups {
            let Some(space) = group.first().map(|share| share.space()) else { continue };
            let area: Area = group.iter().map(|share| share.area()).sum();
            let differ: Vec<String> = group
                .iter()
                .filter(|share| share.ruled() != share.recorded())
                .map(|share| self.share(figure, share))
                .collect();
            if differ.is_empty() {
                continue;
            }
            let more = differ.len().saturating_sub(4);
            let mut named = differ[..differ.len() - more].join("; ");
            if more > 0 {
                named = format!("{named}; and {}", words::count(more, "other side"));
            }
            let space = if several { format!("{space}, ") } else { String::new() };
            let text = format!("{space}{named}: {} sq ft", signed(area.whole_sq_ft()));
            self.page.indented(&text, 6, 8);
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
        format!(
            "side {} ({}) is {} there, {} by the rule",
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
        let answer = match (enough.could_explain(), usual, enough.widest()) {
            (Some(CouldExplain::Yes), Some(usual), _) if !usual.contains(" to ") => {
                format!("Rounding alone would account for it: {give} just {usual}.")
            }
            (Some(CouldExplain::Yes), Some(usual), _) => format!(
                "Rounding alone would account for it: {give} {usual}, and {who} lies inside."
            ),
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
        match answer {
            CouldExplain::Yes => format!("{given}; {who} lies inside."),
            CouldExplain::OnlyAgainst => format!(
                "{given} as usual, {} whichever way each goes; {who} lies inside that.",
                range_text(Some(widest))
            ),
            CouldExplain::No => format!("{given}; {who} lies outside, whichever way each goes."),
        }
    }

    /// Somebody else's outline, wall by wall.
    fn outline(&mut self, outline: &OutlineReport) {
        let whose = match outline.drawn() {
            Drawn::Record => "record",
            Drawn::Plan => "plan",
        };
        let area = match outline.area() {
            Some(area) => format!("{} sq ft", whole(area)),
            None => {
                format!("it ends {} of where it began, so it has no area", misses(outline.misses))
            }
        };
        self.page.heading(&format!("The {whose}'s sketch \"{}\": {area}", outline.name()));
        let apart: Vec<_> = outline
            .matched()
            .iter()
            .filter(|side| self.settings.is_beyond_rounding(side.measured() - side.drawn()))
            .collect();
        if outline.space.is_none() {
            self.page.indented("it is compared with no single space of this file", 2, 4);
        } else if apart.is_empty() && outline.same_corners() {
            self.page.indented("wall by wall it is ours to the whole foot", 2, 4);
        }
        if !apart.is_empty() {
            let head = |a: &str, b: &str, c: &str| {
                [("", a.to_owned(), 14), ("", b.to_owned(), 12), ("", c.to_owned(), 14)]
            };
            if self.page.is_wide() {
                self.page.row("walls that differ", &head("measured", whose, "difference"), 2);
            }
            for side in apart {
                let difference = side.drawn() - side.measured();
                let sign = if difference < Length::ZERO { "-" } else { "+" };
                let cells = [
                    ("measured", side.measured().spoken(), 14),
                    (whose, side.drawn().spoken(), 12),
                    ("difference", format!("{sign}{}", difference.spoken()), 14),
                ];
                self.page.row(&format!("side {} ({})", side.ours(), side.ours_typed), &cells, 2);
            }
        }
        for (what, sides) in [
            ("only in this file", &outline.only_ours),
            ("only in the sketch", &outline.only_theirs),
        ] {
            if !sides.is_empty() && outline.space.is_some() {
                let names: Vec<String> = sides
                    .iter()
                    .map(|(number, typed)| format!("side {number} ({typed})"))
                    .collect();
                self.page.indented(&format!("{what}: {}", words::all_of(&names)), 2, 4);
            }
        }
    }

    /// What the record lists besides its total.
    fn other_lines(&mut self, figures: &[Figure]) {
        let house = self.sound.house();
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
        for lot in &house.lots {
            let area = lot.outline().area();
            let measured = format!("{} sq ft, {} acres", whole(area), area.in_unit(Area::ACRE, 4));
            let text = match lot.recorded {
                Some(recorded) => {
                    format!("recorded {}, its sides give {measured}", whole(recorded))
                }
                None => format!("its sides give {measured}"),
            };
            rows.push((format!("{} (lot)", lot.name), text));
        }
        for missing in &self.sound.sketch().missing {
            rows.push((
                missing.name.text.clone(),
                format!(
                    "recorded {}, not there; ask if it is in the total",
                    whole(missing.recorded.area())
                ),
            ));
        }
        if rows.is_empty() {
            return;
        }
        let with_record = figures.iter().any(|figure| figure.word() == "record");
        self.page.heading(if with_record {
            "The record's other lines, square feet"
        } else {
            "Other lines, square feet"
        });
        for (name, text) in rows {
            self.page.ledger(&name, &text, 2);
        }
    }

    /// How sure the measured area is, and what was not seen.
    fn certainty(&mut self) {
        let heads = &self.sound.sketch().heads;
        let house = self.sound.house();
        self.page.blank();
        if let Some(measured) = &heads.measured {
            let by = measured.by.as_ref().map(|by| format!(" by {by}")).unwrap_or_default();
            let with =
                measured.with.as_ref().map(|with| format!(" with {with}")).unwrap_or_default();
            self.page.paragraph(&format!("Measured {}{by}{with}.", measured.date));
        }
        if !house.spaces.is_empty() {
            let tolerance =
                heads.tolerance.map_or("1/2\"".to_owned(), |written| written.to_string());
            let said = if heads.tolerance.is_some() { "stated" } else { "assumed" };
            let also = if !self.areas.gross().holds_assumptions() {
                ""
            } else {
                ", and what was assumed within 1\""
            };
            let says_itself =
                |side: &crate::Side| side.words.estimated || side.words.tolerance.is_some();
            let own = if house.spaces.iter().flat_map(|space| &space.sides).any(says_itself) {
                " (or what is said of it)"
            } else {
                ""
            };
            let plus_minus = self.areas.gross().plus_minus_outside();
            self.page.paragraph(&format!(
                "If every wall is within {tolerance}{own}, as {said}{also}: ± {} sq ft.",
                rounded_float(plus_minus)
            ));
        }
        if self.areas.is_computed() || house.lots.iter().any(|lot| lot.closed.is_computed()) {
            self.page.paragraph("Slanted or curved walls are in it: computed to 0.01 sq ft.");
        }
        if heads.interior_seen != Some(true) && !house.spaces.is_empty() {
            self.page.paragraph("The interior was not seen (finish, ceiling heights, access): this is gross area, outside measure, not gross living area.");
        }
    }

    fn worth_knowing(&mut self, reconciliation: &Reconciliation) {
        let shown: Vec<_> = reconciliation
            .warnings()
            .iter()
            .filter(|warning| !matches!(warning.word(), Word::OutlineDoesNotClose | Word::NoTurn))
            .collect();
        if shown.is_empty() {
            return;
        }
        self.page.heading("Worth knowing");
        for warning in shown.iter().take(12) {
            let line = self.sound.source().line(warning.span().start);
            let text = format!("line {line}: {}", warning.message().replace('`', "\""));
            self.page.indented(&text, 2, 4);
        }
        if shown.len() > 12 {
            self.page.indented(
                &format!("and {} more: `fairfoot check` shows them all", shown.len() - 12),
                2,
                4,
            );
        }
    }

    /// Every figure behind the report.
    fn why(&mut self, reconciliation: &Reconciliation) {
        self.page.heading("Why: every figure behind this");
        for (i, space) in self.sound.house().spaces.iter().enumerate() {
            self.why_space(i, space);
        }
        let gross = self.areas.gross();
        self.page.blank();
        self.page.ledger(
            "gross, each wall to a tenth of a foot",
            &gross.tenth_foot().sq_ft_text(),
            2,
        );
        self.page.ledger("gross, each wall to the whole foot", &gross.whole_foot().sq_ft_text(), 2);
        self.page.ledger("whole feet could give", &range_text(gross.range()), 2);
        self.page.ledger(
            "at the very most, whichever way each wall goes",
            &range_text(gross.widest()),
            2,
        );
        self.page.ledger("as measured, no side rounded", &gross.as_measured().sq_ft_text(), 2);
        self.page.ledger("± of that, about 95 %", &format!("{:.2}", gross.plus_minus()), 2);
        self.page.ledger(
            "an office reads its tape within",
            &format!("{} ft", self.settings.reach.decimal_feet()),
            2,
        );
        for figure in reconciliation.figures() {
            self.why_figure(figure);
        }
        self.page.blank();
        self.page.indented("how common each departure was taken to be (our judgement, no source; `--weights` takes others)", 2, 4);
        for (what, chance) in reconciliation.weights().chances() {
            self.page.ledger(what, &format!("{:.0} %", 100.0 * chance), 4);
        }
    }

    fn why_space(&mut self, number: usize, space: &crate::Space) {
        let areas = &self.areas.spaces[number];
        self.page.blank();
        self.page.indented(
            &format!(
                "{}, measured to the {} face, {} round",
                space.name,
                space.face.word(),
                space.outline().perimeter().spoken()
            ),
            2,
            4,
        );
        let head = |a: &str, b: &str, c: &str| {
            [("", a.to_owned(), 12), ("", b.to_owned(), 12), ("", c.to_owned(), 12)]
        };
        if self.page.is_wide() {
            self.page.row("side", &head(self.fine_word(), "whole", "recorded"), 4);
        }
        let sides = crate::report::json::side_figures(self.sound.house(), self.areas, number);
        let mut moved = false;
        for (side, figures) in space.sides.iter().zip(sides) {
            let how = if matches!(side.how(), "measured" | "closing") {
                String::new()
            } else {
                format!(", {}", side.how())
            };
            let mut mark = |length: Option<String>, step: Step| {
                let length = length.unwrap_or_default();
                let alone = self.areas.outside_length(number, side.number - 1);
                let by_itself = alone.map(|alone| alone.rounded(step, self.settings.ties));
                let shared = space.closed.walk.has_bearings();
                if shared || by_itself.is_none_or(|alone| alone.decimal_feet() == length) {
                    return length;
                }
                moved = true;
                format!("*{length}")
            };
            let cells = [
                (self.fine_word(), mark(figures.tenth_foot, self.settings.fine), 12),
                ("whole", mark(figures.whole_foot, Step::WholeFoot), 12),
                ("recorded", side.recorded().map(Length::decimal_feet).unwrap_or_default(), 12),
            ];
            self.page.row(&format!("{} {}{how}", side.number, side.typed), &cells, 4);
        }
        if moved {
            self.page.indented(
                "* moved a step from its own rounding, so that the walk closes",
                4,
                6,
            );
        }
        self.page.ledger("area as measured", &areas.as_measured.sq_ft_text(), 4);
        self.page.ledger(
            "each wall to a tenth of a foot, outside",
            &areas.tenth_foot.area().sq_ft_text(),
            4,
        );
        self.page.ledger(
            "each wall to the whole foot, outside",
            &areas.whole_foot.outline.area().sq_ft_text(),
            4,
        );
        self.page.ledger("at the very most", &range_text(areas.widest), 4);
        let fine = format!("with a calculator, {}", self.settings.fine.spoken());
        self.calculator(&fine, &areas.tenth_foot);
        self.calculator(
            "with a calculator, each wall to the whole foot",
            &areas.whole_foot.outline,
        );
    }

    /// An outline piece by piece, length times width, down to its area.
    fn calculator(&mut self, what: &str, outline: &crate::Outline) {
        let Some(cuts) = outline.cuts() else { return };
        self.page.indented(what, 4, 6);
        for (i, cut) in cuts.iter().enumerate() {
            let text = match *cut {
                Cut::Rectangle { east, north } => {
                    format!("{} × {}", east.decimal_feet(), north.decimal_feet())
                }
                Cut::Triangle { east, north, taken_off } => {
                    let less = if taken_off { "less " } else { "" };
                    format!("{less}{} × {} ÷ 2", east.decimal_feet(), north.decimal_feet())
                }
                Cut::Segment { chord, rise, taken_off, .. } => {
                    let less = if taken_off { "less " } else { "" };
                    format!(
                        "{less}curve over {}, rising {}",
                        chord.decimal_feet(),
                        rise.decimal_feet()
                    )
                }
            };
            let line = format!("{} = {text}", letters(i));
            self.page.ledger(&line, &cut.area().sq_ft_text(), 6);
        }
        if cuts.len() > 1 {
            self.page.ledger("together", &outline.area().sq_ft_text(), 6);
        }
    }

    /// The whole list with its supports.
    fn why_explanations(&mut self, figure: &Figure) {
        let explanations = figure.explanations();
        let weighed = thousands(i64::try_from(explanations.weighed()).unwrap_or(i64::MAX));
        self.page.indented(&format!("what would account for it, of {weighed} combinations weighed (support; what it leaves; σ)"), 4, 6);
        let shown = |explanation: &&Explanation| explanation.support() >= 0.005;
        for explanation in explanations.list().iter().filter(shown) {
            let labels = explanation.departures();
            let name =
                if labels.is_empty() { "no departure".to_owned() } else { labels.join("; ") };
            let fits = if explanation.fits() { "" } else { ", does not fit" };
            let figures = format!(
                "{}; {:+.1}; {:.1}",
                per_cent(explanation.support()),
                explanation.leaves,
                explanation.sigma
            );
            self.page.ledger(&format!("{name}{fits}"), &figures, 6);
        }
        self.page.ledger("something else", &per_cent(explanations.something_else()), 6);
    }

    /// The head of the column of the finer rule.
    fn fine_word(&self) -> &'static str {
        if self.settings.fine == Step::Inch { "inches" } else { "tenths" }
    }

    fn why_figure(&mut self, figure: &Figure) {
        self.page.blank();
        self.page.ledger(
            &format!("{}: the difference exactly", the(figure)),
            &figure.gap().sq_ft_text(),
            2,
        );
        for (line, millionths) in figure.lines().iter().zip(figure.lines_in_millionths()) {
            self.page.ledger(
                line.step().name(),
                &crate::numbers::six_decimals(millionths, 1_000_000),
                4,
            );
        }
        for share in figure.shares() {
            let text = format!(
                "side {} of {}: {} recorded, {} by the rule",
                share.side(),
                share.space(),
                share.recorded(),
                share.ruled()
            );
            self.page.ledger(&text, &share.area().sq_ft_text(), 6);
        }
        let enough = figure.enough();
        if let Some(typical) = enough.typical() {
            let step = enough.step().word();
            self.page.ledger(
                &format!("typical size of {step} rounding"),
                &format!("{typical:.1}"),
                4,
            );
        }
        let feet = if enough.step() == Step::HalfFoot { "half" } else { "whole" };
        let give = format!("{feet} feet could give, at its face");
        self.page.ledger(&give, &range_text(enough.range()), 4);
        self.page.ledger("at the very most", &range_text(enough.widest()), 4);
        self.why_explanations(figure);
        let per_cent = figure.gap().per_cent_of(figure.start()).unwrap_or_default();
        self.page.indented(
            &format!("yardstick, advisory, from memory: the International Association of Assessing Officers (Standard on Mass Appraisal of Real Property) asks of recorded data to be within 1 ft of true dimensions, or within 5 % of the area; here the area differs by {} %", per_cent.trim_start_matches('-')),
            4,
            6,
        );
    }
}

/// A, B … Z, AA, AB …
#[expect(clippy::integer_division, reason = "counting in letters")]
fn letters(number: usize) -> String {
    let last = char::from(b'A' + u8::try_from(number % 26).unwrap_or(0));
    match number / 26 {
        0 => last.to_string(),
        more => format!("{}{last}", letters(more - 1)),
    }
}

/// A support in whole per cent, never over 99.
fn per_cent(support: f64) -> String {
    format!("{:.0} %", (100.0 * support).min(99.0))
}

/// The one sentence: figure, measured, difference.
fn statement(figure: &Figure) -> String {
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
    let per_cent = figure.gap().abs().per_cent_of(figure.start());
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

fn misses(misses: (Length, Length)) -> String {
    use crate::sketch::{Axis, Direction};
    let parts: Vec<String> = [(Axis::North, misses.0), (Axis::East, misses.1)]
        .into_iter()
        .filter(|(_, miss)| *miss != Length::ZERO)
        .map(|(axis, miss)| {
            format!("{} {}", miss.spoken(), Direction::along(axis, miss.nm()).word())
        })
        .collect();
    words::all_of(&parts)
}
