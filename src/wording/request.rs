//! The request, in one sentence that a clerk can act on.

use crate::diagnostic::words;
use crate::house::ReferenceSource;
use crate::reconcile::{CouldExplain, Figure, Reconciliation};
use crate::units::length::Length;
use crate::wording::sentences::{Sentences, the, whole};

impl Sentences<'_> {
    /// The request to the publisher of a figure.
    ///
    /// If the figure is larger, it asks to correct it or to state what else it counts; if rounding alone would
    /// account for it, it asks only how the walls were measured. If the figure is smaller, nothing is requested.
    pub(crate) fn request(&self, reconciliation: &Reconciliation, figure: &Figure) -> String {
        let (says, measured) = (figure.area().whole_sq_ft(), figure.start().whole_sq_ft());
        if says == measured {
            return "Nothing is asked for: the two agree.".to_owned();
        }
        if says < measured {
            return format!(
                "Nothing is asked for: {} is smaller than the house as measured. Ask a licensed professional before handing in these pages.",
                the(figure)
            );
        }
        let area = whole(figure.start());
        let walls = self.walls_to_measure(reconciliation, figure);
        let is_rounding = figure.rounding_test().could_explain() == Some(CouldExplain::Yes)
            && figure.rounding_test().between().is_none();
        let first = if is_rounding && walls.is_none() {
            format!(
                "Please tell how each wall was measured and rounded: measured to {}, the area is {area} sq ft",
                self.fine()
            )
        } else {
            let total = whole(figure.area());
            format!(
                "Please correct the {}'s area to {area} sq ft, or tell what else its {total} sq ft include",
                self.named(figure)
            )
        };
        let walls = walls.map(|walls| format!("; please measure {walls} again"));
        format!("{first}{}.", walls.unwrap_or_default())
    }

    /// The name of a figure without an article.
    fn named(&self, figure: &Figure) -> String {
        match figure.word() {
            "figure" => format!("\"{}\"", figure.name()),
            word => word.to_owned(),
        }
    }

    /// The first four walls whose recorded length differs by more than rounding, after the side or on the record's
    /// sketch.
    pub(super) fn walls_to_measure(
        &self,
        reconciliation: &Reconciliation,
        figure: &Figure,
    ) -> Option<String> {
        const MOST: usize = 4;
        if !figure.is_record() {
            return None;
        }
        let several = self.house.spaces.len() > 1;
        let mut names: Vec<String> = Vec::new();
        for (i, space) in self.house.spaces.iter().enumerate() {
            for (k, side) in space.sides.iter().enumerate() {
                if self.differs_from_record(reconciliation, i, k) {
                    names.push(match several {
                        true => format!("side {} of {}", side.number, space.name),
                        false => format!("side {}", side.number),
                    });
                }
            }
        }
        names.truncate(MOST);
        (!names.is_empty()).then(|| words::all_of(&names))
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

    /// The recorded length of a side, given after the side or on the record's sketch.
    pub(crate) fn recorded_length(
        &self,
        reconciliation: &Reconciliation,
        space: usize,
        side: usize,
    ) -> Option<Length> {
        let here = &self.house.spaces[space];
        let on_sketch = || {
            let mut sketches = reconciliation.outlines().iter().filter(|outline| {
                outline.drawn() == ReferenceSource::Record
                    && outline.space.as_ref() == Some(&here.name)
            });
            let mut walls = sketches.next()?.matched().iter();
            walls.find(|wall| wall.ours() == here.sides[side].number()).map(|wall| wall.drawn())
        };
        here.sides[side].recorded().or_else(on_sketch)
    }
}
