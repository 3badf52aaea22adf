//! Outlines from records and plans compared with the house's, other lines of the record, and lots.

use crate::diagnostic::words;
use crate::house::{Face, ReferenceSource, SideNumber, SideRule};
use crate::reconcile::departures::DepartureKind;
use crate::reconcile::{BridgeStep, Figure, OutlineReport, Reconciliation};
use crate::units::area::{Area, AreaUnit, WrittenArea};
use crate::units::decimal::{group_thousands, rounded_quotient, thousands};
use crate::units::length::{Length, Step};
use crate::wording::sentences::{Reader, Sentences, the, whole};
use crate::wording::size::number_or_size;
use crate::wording::step_lines::{is_left_within, not_explained};
use rust_decimal::Decimal;

/// A wall whose lengths differ between two outlines.
pub(crate) struct WallApart {
    pub(crate) side: String,
    pub(crate) measured: String,
    pub(crate) drawn: String,
    pub(crate) difference: String,
}

impl Sentences<'_> {
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
            // Several sides of ours may lie along one wall of theirs.
            let space = outline.space.as_ref().map(|(space, _)| *space).filter(|&space| {
                self.house.spaces[space].sides[side.ours().index()].typed() == side.ours_typed
            });
            let ours = match space {
                Some(space) => self.wall_here(space, side.ours().index()),
                None => side.ours_typed.clone(),
            };
            WallApart {
                side: format!("side {} ({ours})", side.ours()),
                measured: self.length(side.measured()),
                drawn: self.length(side.drawn()),
                difference: format!("{sign}{}", self.length(difference.abs())),
            }
        };
        outline.matched().iter().filter(beyond).map(comparison).collect()
    }

    /// Whether a wall and the one that it matches are the same number of whole feet.
    pub(super) fn agrees_to_the_foot(&self, side: &crate::reconcile::MatchedSide) -> bool {
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
    pub(crate) fn other_lines(&self, figures: &[Figure]) -> Vec<(String, String)> {
        let house = self.house;
        let is_larger = figures.iter().any(is_larger_record);
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
            // Where nothing is requested, neither is this.
            let ask = match self.reader {
                Reader::Owner => "; ask whether the total includes it",
                Reader::Office if is_larger => "; please state whether the total includes it",
                Reader::Office => "",
            };
            let text = format!(
                "recorded {}, not found on site{ask}",
                number_or_size(missing.recorded.area(), self.is_metric())
            );
            rows.push((missing.name.clone(), text));
        }
        rows
    }

    pub(super) fn lot_line(&self, lot: &crate::house::Lot) -> (String, String) {
        let area = lot.outline().area();
        let measured = format!("{}, {}", self.size(area), self.land_of(lot));
        // In the unit that the record gives: another one would show digits that it does not have.
        let text = match lot.recorded {
            Some(recorded) => format!("recorded {recorded}; its sides give {measured}"),
            None => format!("its sides give {measured}"),
        };
        let text = format!("{text}; {}", lot_closure(lot, self.is_metric()));
        (format!("{} (lot)", lot.name), text)
    }

    /// The area of a lot in acres or hectares, and in the other unit if the record gives that.
    pub(crate) fn land_of(&self, lot: &crate::house::Lot) -> String {
        let area = lot.outline().area();
        let land = self.land(area);
        match (self.is_metric(), lot.recorded.map(WrittenArea::unit)) {
            (true, Some(AreaUnit::Acres)) => {
                format!("{land} ({} acres)", area.in_unit(Area::ACRE, 2))
            }
            (false, Some(AreaUnit::Hectares)) => {
                format!("{land} ({} hectares)", area.in_unit(Area::HECTARE, 2))
            }
            _ => land,
        }
    }

    /// The area of land in acres, or in hectares if the file is metric.
    pub(crate) fn land(&self, area: Area) -> String {
        match self.is_metric() {
            true => format!("{} hectares", area.in_unit(Area::HECTARE, 2)),
            false => format!("{} acres", area.in_unit(Area::ACRE, 2)),
        }
    }

    /// What the office is asked about what the record lists and was not found on site, which stands with the request;
    /// `None` where nothing is asked.
    #[cfg(feature = "pages")]
    pub(crate) fn missing_asked(&self, reconciliation: &Reconciliation) -> Option<String> {
        let named = |missing: &crate::house::Missing| words::the_named(&missing.name);
        let names: Vec<String> = self.house.missing.iter().take(MISSING_MOST).map(named).collect();
        (self.is_missing_asked(reconciliation) && !names.is_empty()).then(|| {
            format!(
                "Please state whether the total includes {}, which the record lists.",
                words::list_or(&names)
            )
        })
    }

    /// Whether what the record lists and was not found on site is asked about with the request.
    fn is_missing_asked(&self, reconciliation: &Reconciliation) -> bool {
        let figure = reconciliation.figures().first();
        self.is_for_the_office()
            && figure.is_some_and(|figure| {
                is_larger_record(figure) && self.asks_for_a_change(reconciliation, figure)
            })
    }

    /// What the record lists that was not found on site, if the record is larger than the measured area.
    pub(crate) fn missing(&self, reconciliation: &Reconciliation) -> Vec<String> {
        let figures = reconciliation.figures();
        let question = match self.is_missing_asked(reconciliation) {
            true => "",
            false => " Please state whether the total includes it.",
        };
        if !figures.iter().any(is_larger_record) {
            return Vec::new();
        }
        // Beside a difference that the steps explain without it, the question would seem to be about the difference.
        let is_apart = |missing: usize| {
            let mut larger = figures.iter().filter(|figure| is_larger_record(figure));
            larger.all(|figure| {
                let mut causes = figure.explanations().reported();
                let is_of = |kind| kind == DepartureKind::MissingCounted { missing };
                let is_cause = causes.any(|one| one.cause.departures().any(is_of));
                let mut lines = figure.lines().iter();
                let is_left =
                    not_explained(figure) != 0 && !lines.any(|line| is_left_within(figure, line));
                !is_cause && !is_left
            })
        };
        let sentence = |(i, missing): (usize, &crate::house::Missing)| {
            let (name, size) =
                (words::the_named(&missing.name), self.size(missing.recorded.area()));
            let instead = figures.first().filter(|_| is_apart(i));
            let instead =
                instead.and_then(|figure| self.with_missing(figure, missing.recorded.area()));
            format!(
                "The record also lists {name}, {size}, which was not found on site{}.{question}",
                instead.unwrap_or_default()
            )
        };
        self.house.missing.iter().enumerate().take(MISSING_MOST).map(sentence).collect()
    }

    /// What the total would be with a space that was not found on site, where the steps have another cause: `; instead of the
    /// possible cause above it would give 1,779 + 80 = 1,859, 18 less than the record`. `None` where it is not as simple.
    fn with_missing(&self, figure: &Figure, missing: Area) -> Option<String> {
        figure.explanations().reported().next()?;
        let is_plain = !self.is_metric()
            && figure.is_record()
            && figure.face() == Face::Outside
            && figure.side_rule() == SideRule::Step(Step::WholeFoot)
            && figure.lines().iter().all(|line| match line.step() {
                BridgeStep::Counting => line.is_supported(),
                step => step != BridgeStep::RecordedSides,
            });
        let (house, missing) = (self.areas.gross().whole_foot(), missing.whole_sq_ft());
        let all = house.whole_sq_ft() + missing;
        let apart = figure.area().whole_sq_ft() - all;
        let compared = match apart {
            0 => format!("as {} says", the(figure)),
            1.. => format!("{} less than {}", thousands(apart), the(figure)),
            _ => format!("{} more than {}", thousands(-apart), the(figure)),
        };
        is_plain.then(|| {
            format!(
                "; instead of the possible cause, it would give {} + {} = {}, {compared}",
                whole(house),
                thousands(missing),
                thousands(all)
            )
        })
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
}

/// Whether a figure is of a record, and larger than the measured area.
/// The most that is told of what the record lists and was not found on site.
const MISSING_MOST: usize = 6;

fn is_larger_record(figure: &Figure) -> bool {
    figure.is_record() && figure.apart_sq_ft() > 0 && !figure.agreement().agrees()
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
pub(super) fn three_digits(number: Decimal) -> String {
    let number = number.to_string();
    let kept = number.len().min(3);
    group_thousands(&format!("{}{}", &number[..kept], "0".repeat(number.len() - kept)))
}

/// Several sides in a row, in words: all of them if few, else the first and the last.
pub(super) fn sides_in_a_row(sides: &[(SideNumber, String)]) -> String {
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
