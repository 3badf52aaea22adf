//! The report for people: plain words, aligned figures, readable without color.
#![expect(clippy::float_arithmetic, reason = "supports and intervals of explanations are floats")]

use std::cmp::Ordering;

use crate::areas::range::Range;
use crate::areas::{Areas, SpaceAreas, is_in_total};
use crate::diagnostic::words;
use crate::geometry::partition::Cut;
use crate::house::LengthSource;
use crate::reconcile::cause::Cause;
use crate::reconcile::{Explanation, Figure, Line, OutlineReport, Reconciliation};
use crate::report::blocks;
use crate::report::table::Page;
use crate::units::area::Area;
use crate::units::length::{FineStep, Length, Step};
use crate::value::Worth;
use crate::wording::map;
use crate::wording::outlines::whose;
use crate::wording::products::product;
use crate::wording::sentences::{
    CAUTIONS, Sentences, letters, range_text, the, to_hundredths, whole,
};
use crate::wording::size::square_meters;

/// How a report is formatted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Look {
    /// The width in columns.
    pub width: usize,
    /// Whether to use bold type.
    pub styled: bool,
    /// Whether to add every weight and figure behind the results.
    pub why: bool,
}

impl Default for Look {
    fn default() -> Look {
        Look { width: 80, styled: false, why: false }
    }
}

/// The whole report: the statement, the areas, and the difference to each figure step by step.
pub(super) fn reconciliation(
    reconciliation: &Reconciliation,
    worth: Option<&Worth>,
    look: Look,
) -> String {
    let say = Sentences::of(reconciliation.areas());
    let mut writer = Writer { say, page: Page::new(look.width, look.styled), warns: true };
    writer.heads();
    let opening = writer.say.opening(reconciliation);
    blocks::set(&mut writer.page, &opening);
    writer.body(reconciliation, worth, look)
}

/// The report from the areas on, without the warnings.
pub(super) fn after_opening(
    reconciliation: &Reconciliation,
    worth: Option<&Worth>,
    look: Look,
) -> String {
    let say = Sentences::of(reconciliation.areas());
    let writer = Writer { say, page: Page::new(look.width, look.styled), warns: false };
    writer.body(reconciliation, worth, look)
}

/// The areas alone.
pub(super) fn areas(areas: &Areas, look: Look) -> String {
    let say = Sentences::of(areas);
    let mut writer = Writer { say, page: Page::new(look.width, look.styled), warns: true };
    writer.areas();
    for text in writer.say.unusual_settings(None).into_iter().chain(writer.say.unlikely_size()) {
        writer.page.paragraph(&text);
    }
    writer.page.finish()
}

struct Writer<'a> {
    say: Sentences<'a>,
    page: Page,
    /// Whether it contains the warnings.
    warns: bool,
}

/// The cells of a row for a wall that differs.
fn wall_cells(whose: &str, texts: [String; 3]) -> [(&str, String, usize); 3] {
    let [measured, drawn, difference] = texts;
    [("measured", measured, 14), (whose, drawn, 12), ("difference", difference, 14)]
}

impl Writer<'_> {
    /// The body: everything after the opening.
    fn body(
        mut self,
        reconciliation: &Reconciliation,
        worth: Option<&Worth>,
        look: Look,
    ) -> String {
        self.areas();
        for figure in reconciliation.figures() {
            self.figure(figure);
        }
        for outline in reconciliation.outlines() {
            self.outline(outline);
        }
        for outline in reconciliation.maps() {
            self.page.heading(&map::map_title(outline));
            blocks::set(&mut self.page, &map::map_said(&self.say, outline));
        }
        self.other_lines(reconciliation.figures());
        self.certainty();
        self.worth_knowing(reconciliation);
        self.request(reconciliation);
        if look.why {
            self.why(reconciliation);
        }
        if let Some(worth) = worth {
            blocks::set(&mut self.page, &worth.blocks());
        }
        self.page.blank();
        self.page.paragraph(CAUTIONS);
        self.page.finish()
    }

    fn heads(&mut self) {
        for line in [self.say.place(), self.say.numbers()] {
            if !line.is_empty() {
                self.page.paragraph(&line);
            }
        }
        self.page.blank();
    }

    fn areas(&mut self) {
        let fine = self.say.fine();
        if self.say.house.spaces.is_empty() {
            return;
        }
        self.page.blank();
        if self.page.is_wide() {
            let head = |a: &str, b: &str, c: &str| {
                [("", a.to_owned(), 17), ("", b.to_owned(), 16), ("", c.to_owned(), 16)]
            };
            self.page.row("", &head("", "", "possible range,"), 0);
            self.page.row("", &head("each wall to", "each wall to", "rounded to"), 0);
            self.page.row("Square feet", &head(fine, "the whole foot", "the foot"), 0);
        } else {
            self.page
                .paragraph("Square feet, with each wall rounded (possible range: to the foot)");
        }
        let house = self.say.house;
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

    /// Adds a space, with the spaces inside it below.
    fn space(&mut self, space: usize, indent: usize) {
        let house = self.say.house;
        let areas = &self.say.areas.spaces[space];
        let name = self.say.space_name(space);
        let (fine, ruled) = (areas.tenth_foot().area(), areas.whole_foot().area());
        let cells = self.cells(fine, ruled, areas.range(), &areas.few());
        self.page.row(&name, &cells, indent);
        let inside: Vec<usize> =
            (0..house.spaces.len()).filter(|&i| house.spaces[i].parent == Some(space)).collect();
        for other in inside {
            self.space(other, indent + 2);
        }
    }

    /// The figures of a line, preceded by their heads on a narrow page only.
    fn cells(
        &self,
        fine: Area,
        ruled: Area,
        range: Option<Range>,
        few: &[Area],
    ) -> [(String, String, usize); 3] {
        let is_one = |range: &Range| range.low.whole_sq_ft() == range.high.whole_sq_ft();
        let only = range.as_ref().is_some_and(is_one) && !self.page.is_wide();
        let range = range_text(range, &self.say.listed_alone(few.to_vec()));
        [
            (format!("to {}", self.say.fine()), whole(fine), 17),
            ("to the whole foot".to_owned(), whole(ruled), 16),
            ("possible range".to_owned(), if only { format!("only {range}") } else { range }, 16),
        ]
    }

    fn totals(&mut self) {
        let house = self.say.house;
        if house.spaces.is_empty() {
            return;
        }
        let name = self.say.gross_name();
        let gross = self.say.areas.gross();
        let cells = self.cells(gross.tenth_foot(), gross.whole_foot(), gross.range(), &gross.few());
        if self.page.is_wide() {
            self.page.rule(49);
        }
        self.page.row(name, &cells, 0);
        if self.say.is_metric() {
            let cells = [
                (format!("to {}", self.say.fine()), square_meters(gross.tenth_foot()), 17),
                ("to the whole foot".to_owned(), square_meters(gross.whole_foot()), 16),
                (String::new(), String::new(), 16),
            ];
            self.page.row("In square meters", &cells, 0);
        }
        if let Some(below) = self.say.areas.below_grade() {
            let cells =
                self.cells(below.tenth_foot(), below.whole_foot(), below.range(), &below.few());
            self.page.row("Below grade, not included", &cells, 0);
        }
        let fine = self.printed_sum(|areas| areas.tenth_foot().area());
        let ruled = self.printed_sum(|areas| areas.whole_foot().area());
        if (fine, ruled) != (gross.tenth_foot().whole_sq_ft(), gross.whole_foot().whole_sq_ft()) {
            self.page.indented("Each line is rounded on its own, the total once.", 0, 0);
        }
    }

    /// The sum of the total above grade as its lines are printed.
    fn printed_sum(&self, area: fn(&SpaceAreas) -> Area) -> i64 {
        let house = self.say.house;
        let printed = |space: usize| area(&self.say.areas.spaces[space]).whole_sq_ft();
        let counted = (0..house.spaces.len()).filter(|&i| is_in_total(house, i, false));
        let net = |i: usize| printed(i) - house.deducted_from(i).map(printed).sum::<i64>();
        counted.map(net).sum()
    }

    fn figure(&mut self, figure: &Figure) {
        self.page.heading(&self.say.steps_title(figure));
        let steps = self.say.steps(figure);
        blocks::set(&mut self.page, &steps);
        self.page.blank();
        let rounding: Vec<_> = self.say.rounding_said(figure).into_iter().collect();
        blocks::set(&mut self.page, &rounding);
        let causes = self.say.causes_said(figure);
        if !causes.is_empty() {
            self.page.blank();
        }
        blocks::set(&mut self.page, &causes);
    }

    /// Adds an outline from a record, a plan or a map, wall by wall.
    fn outline(&mut self, outline: &OutlineReport) {
        self.page.heading(&self.say.outline_title(outline));
        let (first, only) = self.say.outline_notes(outline);
        if let Some(note) = first {
            self.page.indented(note, 2, 4);
        }
        let (apart, whose) = (self.say.walls_apart(outline), whose(outline));
        if self.page.is_wide() && !apart.is_empty() {
            let heads = ["measured", whose, "difference"].map(str::to_owned);
            self.page.row("walls that differ", &wall_cells(whose, heads), 2);
        }
        for wall in apart {
            let cells = wall_cells(whose, [wall.measured, wall.drawn, wall.difference]);
            self.page.row(&wall.side, &cells, 2);
        }
        for note in only {
            self.page.indented(&note, 2, 4);
        }
    }

    /// Adds the other areas on the record besides its total.
    fn other_lines(&mut self, figures: &[Figure]) {
        let rows = self.say.other_lines(figures);
        if rows.is_empty() {
            return;
        }
        self.page.heading(self.say.other_lines_title(figures));
        for (name, text) in rows {
            self.page.ledger(&name, &text, 2);
        }
    }

    /// Adds the uncertainty of the measured area, and what was not inspected.
    fn certainty(&mut self) {
        self.page.blank();
        let blocks = self.say.how_sure();
        blocks::set(&mut self.page, &blocks);
    }

    /// Adds what the pages ask for, so that the reader knows it before they are made.
    fn request(&mut self, reconciliation: &Reconciliation) {
        let Some(figure) = reconciliation.figures().first() else { return };
        self.page.heading("What the pages ask for");
        self.page.indented(&self.say.request(reconciliation, figure), 2, 2);
        for missing in self.say.missing(reconciliation) {
            self.page.indented(&missing, 2, 2);
        }
    }

    fn worth_knowing(&mut self, reconciliation: &Reconciliation) {
        const MOST: usize = 12;
        let mut shown = Vec::new();
        if self.warns {
            shown = self.say.worth_knowing(reconciliation);
        }
        // If the file has values, the list of what to bring includes it.
        if !self.say.house.has_values() {
            shown.extend(self.say.not_photographed(reconciliation));
        }
        if shown.is_empty() {
            return;
        }
        self.page.heading("Worth knowing");
        for text in shown.iter().take(MOST) {
            self.page.indented(text, 2, 4);
        }
        if shown.len() > MOST {
            let more = format!("and {} more: `fairfoot check` shows them all", shown.len() - MOST);
            self.page.indented(&more, 2, 4);
        }
    }

    /// Adds every figure behind the report.
    fn why(&mut self, reconciliation: &Reconciliation) {
        self.page.heading("Every figure behind this");
        for (i, space) in self.say.house.spaces.iter().enumerate() {
            self.why_space(i, space);
        }
        let gross = self.say.areas.gross();
        self.page.blank();
        self.page.ledger(
            &format!("gross, {}", self.say.settings.fine.spoken()),
            &gross.tenth_foot().to_hundredths(),
            2,
        );
        self.page.ledger(
            "gross, each wall to the whole foot",
            &gross.whole_foot().to_hundredths(),
            2,
        );
        self.page.ledger(
            "possible range, rounded to the foot",
            &range_text(gross.range(), &self.say.listed_alone(gross.few())),
            2,
        );
        self.page.ledger(
            "widest range, however each wall is rounded, up or down",
            &range_text(gross.widest(), &[]),
            2,
        );
        self.page.ledger("as measured, no side rounded", &gross.as_measured().to_hundredths(), 2);
        self.page.ledger("± of that, 19 times in 20", &format!("{:.2}", gross.plus_minus()), 2);
        self.page.ledger(
            "an office reads its tape within",
            &format!("{} ft", self.say.settings.reading.decimal_feet()),
            2,
        );
        for figure in reconciliation.figures() {
            self.why_figure(figure);
        }
        self.page.blank();
        self.page.indented("how common each cause is taken to be (our judgment, without a source; `--weights` takes others)", 2, 4);
        for (what, chance) in reconciliation.weights().chances() {
            self.page.ledger(what, &chance_text(chance), 4);
        }
    }

    fn why_space(&mut self, number: usize, space: &crate::house::Space) {
        let areas = &self.say.areas.spaces[number];
        self.page.blank();
        self.page.indented(
            &format!(
                "{}{}, perimeter {}",
                space.name,
                if space.kind.has_walls() {
                    format!(", measured to the {} face", space.face.word())
                } else {
                    String::new()
                },
                self.say.perimeter(space.outline().perimeter())
            ),
            2,
            4,
        );
        let head = |a: &str, b: &str, c: &str| {
            [("", a.to_owned(), 12), ("", b.to_owned(), 12), ("", c.to_owned(), 12)]
        };
        if self.page.is_wide() {
            self.page.row("side", &head(self.say.fine_word(), "whole", "recorded"), 4);
        }
        let sides = self.say.areas.side_rows(number);
        let mut moved = false;
        for (side, figures) in space.sides.iter().zip(sides) {
            let how = if matches!(side.how(), LengthSource::Measured | LengthSource::Closing) {
                String::new()
            } else {
                format!(", {}", side.how().word())
            };
            let mut mark = |length: Option<Length>, step: Step| {
                let Some(length) = length else { return String::new() };
                let alone = self.say.areas.outside_length(number, side.number.index());
                let by_itself = alone.map(|alone| alone.rounded(step, self.say.settings.halves));
                let shared = space.closed.traverse.has_bearings();
                if shared || by_itself.is_none_or(|alone| alone == length) {
                    return to_hundredths(length);
                }
                moved = true;
                format!("*{}", to_hundredths(length))
            };
            let cells = [
                (self.say.fine_word(), mark(figures.tenth_foot, self.say.settings.fine.step()), 12),
                ("whole", mark(figures.whole_foot, Step::WholeFoot), 12),
                (
                    "recorded",
                    side.recorded().map(|length| self.say.length(length)).unwrap_or_default(),
                    12,
                ),
            ];
            self.page.row(&format!("{} {}{how}", side.number, side.typed), &cells, 4);
        }
        if moved {
            self.page.indented("* adjusted from its own rounding so that the outline closes", 4, 6);
        }
        self.page.ledger("area as measured", &areas.as_measured.to_hundredths(), 4);
        self.page.ledger(
            &format!("{}, outside", self.say.settings.fine.spoken()),
            &areas.tenth_foot().area().to_hundredths(),
            4,
        );
        self.page.ledger(
            "each wall to the whole foot, outside",
            &areas.whole_foot().area().to_hundredths(),
            4,
        );
        self.page.ledger(
            "widest range, however each wall is rounded, up or down",
            &range_text(areas.widest(), &[]),
            4,
        );
        let fine = format!("with a calculator, {}", self.say.settings.fine.spoken());
        self.calculator(&fine, areas.tenth_foot());
        self.calculator("with a calculator, each wall to the whole foot", areas.whole_foot());
    }

    /// Adds an outline piece by piece, length times width, with its area as the sum.
    fn calculator(&mut self, what: &str, outline: &crate::geometry::outline::Outline) {
        let Some(cuts) = outline.cuts() else { return };
        self.page.indented(what, 4, 6);
        let areas: Vec<Area> = cuts.iter().map(Cut::area).collect();
        // Products of inches are no whole hundredths: each is printed as a calculator rounds it, and their sum may differ
        // from the total in the last digit.
        let printed = match self.say.settings.fine {
            FineStep::Inch => areas,
            FineStep::TenthFoot => in_hundredths(&areas, outline.area()),
        };
        for (i, (cut, area)) in cuts.iter().zip(printed).enumerate() {
            let text = match *cut {
                Cut::Rectangle { east, north } => product([east, north], false, Length::FOOT),
                Cut::Triangle { east, north, deducted } => {
                    let less = if deducted { "deducted: " } else { "" };
                    format!("{less}{}", product([east, north], true, Length::FOOT))
                }
                Cut::Segment { chord, rise, deducted, .. } => {
                    let less = if deducted { "deducted: " } else { "" };
                    format!(
                        "{less}curve over {}, rising {}",
                        to_hundredths(chord),
                        to_hundredths(rise)
                    )
                }
            };
            let line = format!("{} = {text}", letters(i));
            self.page.ledger(&line, &area.to_hundredths(), 6);
        }
        if cuts.len() > 1 {
            self.page.ledger("total", &outline.area().to_hundredths(), 6);
        }
    }

    /// Adds every explanation with its support.
    fn why_explanations(&mut self, figure: &Figure) {
        let explanations = figure.explanations();
        let (weighed, named) = (self.say.weighed(figure), self.say.named(figure));
        let all =
            if explanations.is_capped() { "; there were more, too many to weigh" } else { "" };
        self.page.indented(&format!("what could explain it: {weighed} combinations weighed, {named}{all}; each with its support, the sq ft it leaves, and how far (σ) it may be off"), 4, 6);
        let shown = |explanation: &&Explanation| {
            explanation.support() >= 0.005 || explanation.is_reported()
        };
        // What a reader cannot tell apart is one line, with the figures of the best supported.
        let mut lines: Vec<(String, f64, &Explanation)> = Vec::new();
        for explanation in explanations.list().iter().filter(shown) {
            let said = self.say.cause_said(figure, explanation);
            match lines.iter_mut().find(|(other, ..)| *other == said) {
                Some((_, support, _)) => *support += explanation.support(),
                None => lines.push((said, explanation.support(), explanation)),
            }
        }
        for (said, support, explanation) in lines {
            let figures = format!(
                "{}; {}; σ {:.1}",
                percent(support),
                signed_tenths(explanation.leaves),
                explanation.sigma
            );
            let fits = match (explanation.is_reported(), explanation.fits()) {
                // What rounding alone could do has its own sentence.
                (_, true) if explanation.cause == Cause::None => "",
                _ if self.say.is_shown(figure, explanation) => " (named above)",
                (true, _) => " (gives the same as one named above)",
                // What fits but is not named says why: a chance match is too likely.
                (false, true) if support > explanations.something_else() => {
                    " (not named: a chance match is too likely)"
                }
                (false, true) => " (no likelier than something else)",
                (false, false) => " (does not fit)",
            };
            self.page.ledger(&format!("{said}{fits}"), &figures, 6);
        }
        let otherwise = percent(explanations.something_else());
        self.page.ledger("something else, or several at once", &otherwise, 6);
    }

    fn why_figure(&mut self, figure: &Figure) {
        self.page.blank();
        let gap = figure.gap();
        let areas: Vec<Area> = figure.lines().iter().map(Line::area).collect();
        let lines = in_hundredths(&areas, gap);
        let head = format!("{}: the difference", the(figure));
        self.page.ledger(&head, &signed_area(gap), 2);
        for (line, area) in figure.lines().iter().zip(lines) {
            self.page.ledger(line.step().name(), &signed_area(area), 4);
        }
        for share in figure.shares() {
            let text = format!(
                "side {} of {}: {} on the record, {} rounded",
                share.side(),
                words::the_named(share.space()),
                share.recorded(),
                share.ruled()
            );
            self.page.ledger(&text, &signed_area(share.area()), 6);
        }
        let test = figure.rounding_test();
        if let Some(typical) = test.typical() {
            let step = test.step().word();
            self.page.ledger(
                &format!("typical size of {step} rounding"),
                &format!("{typical:.1}"),
                4,
            );
        }
        let feet = if test.step() == Step::HalfFoot { "half foot" } else { "foot" };
        let give = format!("possible range, rounded to the {feet}, at its face");
        self.page.ledger(&give, &range_text(test.range(), &self.say.listed_alone(test.few())), 4);
        self.page.ledger(
            "widest range, however each wall is rounded, up or down",
            &range_text(test.widest(), &[]),
            4,
        );
        self.why_explanations(figure);
        let percent = figure.per_cent().unwrap_or_default();
        self.page.indented(
            &format!("yardstick, advisory, not confirmed: the International Association of Assessing Officers (Standard on Mass Appraisal of Real Property) asks that recorded data be within 1 ft of true dimensions, or within 5% of the area; here the area differs by {}%", percent.trim_start_matches('-')),
            4,
            6,
        );
    }
}

/// Areas in hundredths of a square foot, rounded so that they add up to their total as printed.
fn in_hundredths(areas: &[Area], total: Area) -> Vec<Area> {
    use crate::units::decimal::{largest_remainder, rounded_quotient};
    let parts: Vec<i128> = areas.iter().map(|area| area.half_nm2()).collect();
    let total = rounded_quotient(100 * total.half_nm2(), Area::SQUARE_FOOT.half_nm2());
    let shares = largest_remainder(&parts, Area::HUNDREDTH_OF_A_SQUARE_FOOT.half_nm2(), total);
    let area =
        |share: i128| Area::from_half_nm2(share * Area::HUNDREDTH_OF_A_SQUARE_FOOT.half_nm2());
    shares.into_iter().map(area).collect()
}

/// An area with its sign and at most two decimals.
fn signed_area(area: Area) -> String {
    match area.cmp(&Area::ZERO) {
        Ordering::Less => format!("\u{2212}{}", (-area).to_hundredths()),
        Ordering::Equal => "0".to_owned(),
        Ordering::Greater => format!("+{}", area.to_hundredths()),
    }
}

/// A number to one decimal with its sign; zero never gets a minus sign.
fn signed_tenths(number: f64) -> String {
    match format!("{:.1}", number.abs()).as_str() {
        "0.0" => "0".to_owned(),
        digits if number < 0.0 => format!("\u{2212}{digits}"),
        digits => format!("+{digits}"),
    }
}

/// How common a cause is, in percent; small values to one decimal.
fn chance_text(chance: f64) -> String {
    let decimals = usize::from(chance < 0.02);
    format!("{:.decimals$}%", 100.0 * chance)
}

/// A support in whole percent, never more than 99.
fn percent(support: f64) -> String {
    match 100.0 * support {
        small if small < 0.5 => "under 1%".to_owned(),
        percent => format!("{:.0}%", percent.min(99.0)),
    }
}
