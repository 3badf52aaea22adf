//! Pages without what is private.

use crate::diagnostic::{Diagnostics, Source};
use crate::error::Error;
use crate::reconcile::Reconciliation;

/// The house read again from its file without comments, values, rates, sales and notes.
pub(crate) fn without_private(of: &Reconciliation) -> Result<Reconciliation, Error> {
    let source = of.house().source();
    let text = crate::sketch::parse(source.clone()).map_err(mistake)?.tidied_without_private();
    let house = crate::read::read_source(Source::new(source.name(), &text)).map_err(mistake)?;
    let areas = house.areas(of.settings()).map_err(mistake)?;
    areas.reconcile(of.weights()).map_err(mistake)
}

fn mistake(faults: Diagnostics) -> Error {
    let first = faults.list().first().map(|fault| fault.message().to_owned());
    Error::Drawing(format!("the file without what is private: {}", first.unwrap_or_default()))
}
