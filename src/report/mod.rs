//! The report of a house: as text for people, and as JSON for programs.
//!
//! ```
//! use fairfoot::{Settings, Weights};
//! use fairfoot::report::Look;
//!
//! let text = "level \"Ground floor\"\nliving \"Shed\"\nnorth 8'\neast 12'\nsouth 8'\nwest 12'";
//! let house = fairfoot::read("shed.sides", text)?;
//! let result = house.areas(&Settings::default())?.reconcile(&Weights::default())?;
//! assert!(result.report().text(Look::default()).contains("Measured 96 sq ft."));
//! # #[cfg(feature = "json")]
//! assert_eq!(result.report().json().areas.totals.gross.tenth_foot.sq_ft, 96);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod blocks;
#[cfg(feature = "json")]
pub mod json;
mod table;
mod text;

use crate::areas::Areas;
use crate::reconcile::{Figure, Reconciliation};
use crate::value::{AsOf, Worth};
use crate::wording::Block;
use crate::wording::sentences::Sentences;
pub use text::Look;

/// The report of a house and its figures.
#[derive(Clone, Debug)]
pub struct Report<'a> {
    reconciliation: &'a Reconciliation,
    worth: Option<Worth>,
}

impl Reconciliation {
    /// The report, including what the gap is worth if the file states values.
    #[must_use]
    pub fn report(&self) -> Report<'_> {
        self.report_as_of(&AsOf::default())
    }

    /// The report with days left counted from a given day, and with a given size band for comparables.
    #[must_use]
    pub fn report_as_of(&self, as_of: &AsOf) -> Report<'_> {
        Report { reconciliation: self, worth: self.worth(as_of) }
    }
}

impl Report<'_> {
    /// The whole report as text.
    #[must_use]
    pub fn text(&self, look: Look) -> String {
        text::reconciliation(self.reconciliation, self.worth.as_ref(), look)
    }

    /// The caution to be read first if the record is smaller than the house; `None` otherwise. It is also part of the
    /// [`opening`](Report::opening).
    #[must_use]
    pub fn caution(&self) -> Option<String> {
        let say = Sentences::of(self.reconciliation.areas());
        say.caution(self.reconciliation.figures())
    }

    /// The opening: a sentence for each figure, and what follows from the figures alone.
    #[must_use]
    pub fn opening(&self) -> Vec<Block> {
        Sentences::of(self.reconciliation.areas()).opening(self.reconciliation)
    }

    /// The measured area before any rounding, which is what people compute by hand; `None` if rounding changes nothing.
    #[must_use]
    pub fn before_rounding(&self) -> Option<String> {
        Sentences::of(self.reconciliation.areas()).before_rounding()
    }

    /// The sentences of the [`opening`](Report::opening) about walls that may be missing, which name lines of the file.
    #[must_use]
    pub fn missing_walls(&self) -> Vec<String> {
        Sentences::of(self.reconciliation.areas()).missing_walls(self.reconciliation)
    }

    /// For each figure, what most likely could explain its difference, or that nothing common does: a sentence or
    /// two, with the name of the figure if there are several, and whether it is how a level was counted, which says
    /// little while a level may be missing. A figure that agrees with the house has none.
    #[must_use]
    pub fn likely(&self) -> Vec<(String, bool)> {
        let say = Sentences::of(self.reconciliation.areas());
        let figures = self.reconciliation.figures();
        let likely = |figure: &Figure| {
            let first = figure.explanations().reported().next();
            let is_of_a_level = first.is_some_and(|one| one.cause.is_of_a_level());
            Some((say.conclusion(figure, figures.len() == 1)?, is_of_a_level))
        };
        figures.iter().filter_map(likely).collect()
    }

    /// The report as text without its heading, its [`opening`](Report::opening) and its warnings, for a screen that
    /// shows those itself.
    #[must_use]
    pub fn text_after_opening(&self, look: Look) -> String {
        text::after_opening(self.reconciliation, self.worth.as_ref(), look)
    }

    /// The report as data, ready for JSON.
    #[cfg(feature = "json")]
    #[must_use]
    pub fn json(&self) -> json::Report {
        json::report(self.reconciliation, self.worth.as_ref())
    }
}

impl Areas {
    /// The areas alone, as text.
    #[must_use]
    pub fn text(&self, look: Look) -> String {
        text::areas(self, look)
    }

    /// The areas alone, as data for JSON.
    #[cfg(feature = "json")]
    #[must_use]
    pub fn json(&self) -> json::areas::AreasReport {
        json::areas::areas_report(self)
    }
}
