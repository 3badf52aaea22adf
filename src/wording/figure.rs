//! A figure in plain blocks: the sentence, the steps, what is possible, and how certain the measured area is.

use crate::house::LengthSource;
use crate::reconcile::{BridgeStep, Figure, Reconciliation};
use crate::wording::block::Block;
use crate::wording::sentences::{Sentences, capital, range_text, signed, the, whole};

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

    /// What is to be known of all figures before any is read: what repeats, what may be missing, what was set otherwise.
    pub(crate) fn remarks(&self, reconciliation: &Reconciliation) -> Vec<String> {
        let repeated = self.repeated(reconciliation.figures());
        let unusual = self.unusual_settings(Some(reconciliation.weights()));
        let missing = self.missing_walls(reconciliation);
        let told = repeated.into_iter().chain(missing).chain(self.equally_near());
        told.chain(unusual).collect()
    }

    /// What must not be missed: that the record is smaller, or that the size is unlikely.
    pub(crate) fn warned(&self, figures: &[Figure]) -> Vec<String> {
        self.caution(figures).into_iter().chain(self.unlikely_size()).collect()
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
        let start = format!("{}: {}, outside", self.known(), self.settings.fine.spoken());
        let mut blocks = vec![Block::row(start, whole(figure.start()))];
        for (line, rounded) in figure.lines().iter().zip(figure.lines_in_sq_ft()) {
            blocks.push(Block::row(self.line_name(figure, line), signed(rounded)));
            blocks.extend(self.could_add(figure, line).map(Block::Note));
            if line.step() == BridgeStep::RecordedSides {
                blocks.extend(self.shares(figure).into_iter().map(Block::Note));
            }
        }
        blocks.push(Block::total(capital(figure.name()), whole(figure.area())));
        blocks
    }

    /// Whether rounding alone explains the gap, and what else is possible.
    pub(crate) fn possible(&self, figure: &Figure) -> Vec<Block> {
        self.rounding_said(figure).into_iter().chain(self.causes_said(figure)).collect()
    }

    /// Whether rounding alone explains it.
    pub(crate) fn rounding_said(&self, figure: &Figure) -> Option<Block> {
        Some(self.answer(figure)).filter(|answer| !answer.is_empty()).map(Block::Paragraph)
    }

    /// What else is possible, and how to find out.
    pub(crate) fn causes_said(&self, figure: &Figure) -> Vec<Block> {
        let mut blocks = Vec::new();
        if let Some(accounts) = self.accounts(figure) {
            blocks.push(Block::paragraph(accounts.opening));
            blocks.extend(accounts.items.into_iter().map(Block::Item));
            blocks.push(Block::paragraph(accounts.closing));
        }
        blocks
    }

    /// Who measured, how certain the measured area is, and what was not inspected.
    pub(crate) fn how_sure(&self) -> Vec<Block> {
        self.certainty().into_iter().map(Block::Paragraph).collect()
    }

    /// Who measured, when, with what and how precisely; one line for the Exhibit.
    pub(crate) fn measured_line(&self) -> String {
        let who =
            self.house.particulars.measured.as_ref().map(|measured| self.measured_by(measured));
        let close = self.only_from_a_plan().unwrap_or_else(|| self.plus_minus());
        who.into_iter().chain([close]).collect::<Vec<_>>().join(" ")
    }

    /// Both areas in one sentence.
    pub(crate) fn both_ways(&self) -> String {
        let gross = self.areas.gross();
        let range = match gross.range() {
            Some(range) if range.low.whole_sq_ft() != range.high.whole_sq_ft() => {
                format!(" (possible range {})", range_text(Some(range)))
            }
            _ => String::new(),
        };
        let below = match self.areas.below_grade() {
            Some(below) => {
                format!(" Below grade, not included: {} sq ft.", whole(below.tenth_foot()))
            }
            None => String::new(),
        };
        format!(
            "{}: {} sq ft with each wall to {}; {} sq ft with each wall to the whole foot{range}.{below}",
            self.gross_name(),
            whole(gross.tenth_foot()),
            self.fine(),
            whole(gross.whole_foot()),
        )
    }

    /// The steps of a figure as text for screen readers.
    pub(crate) fn heard(&self, figure: &Figure) -> String {
        let steps = figure.lines().iter().zip(figure.lines_in_sq_ft());
        let steps: Vec<String> = steps
            .map(|(line, rounded)| format!("{}, {}", self.line_name(figure, line), signed(rounded)))
            .collect();
        format!(
            "Step by step: {} {}; {}; {} {}.",
            self.known(),
            whole(figure.start()),
            steps.join("; "),
            the(figure),
            whole(figure.area())
        )
    }
}
