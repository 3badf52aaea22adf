//! What follows for a figure, in the one sentence that stands beside its headline.

use crate::reconcile::Figure;
use crate::wording::sentences::{Sentences, capital};
use crate::wording::step_lines::not_explained;

impl Sentences<'_> {
    /// What most likely accounts for a figure; where nothing common does, or rounding alone, that. `None` only where
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
            (true, 0) => "The steps below account for all of it.".to_owned(),
            (true, _) => "What the steps below leave is not explained.".to_owned(),
        }))
    }
}
