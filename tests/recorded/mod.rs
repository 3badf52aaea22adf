//! A record's or a plan's own walls compared with ours: which walls match, and what each side adds.
//!
//! Every figure is computed by hand in the comment next to it.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::float_arithmetic,
    clippy::integer_division,
    clippy::cast_precision_loss,
    missing_docs,
    reason = "a test that cannot go on has failed"
)]

mod departures;
mod figures;
mod outlines;
mod shares;
mod trade;

use fairfoot::report::Look;
use fairfoot::{Reconciliation, Settings, Weights};

/// A house reconciled with the default settings.
#[track_caller]
fn reconciled(text: &str) -> Reconciliation {
    let house =
        fairfoot::read("recorded.sides", text).unwrap_or_else(|faults| panic!("{faults}\n{text}"));
    let areas = house.areas(&Settings::default());
    let areas = areas.unwrap_or_else(|faults| panic!("{faults}\n{text}"));
    areas.reconcile(&Weights::default()).unwrap()
}

/// The text report of a house on one long line, so that no phrase is split.
#[track_caller]
fn text_report(text: &str) -> String {
    let look = Look { width: 100, ..Look::default() };
    let report = reconciled(text).report().text(look);
    report.split_whitespace().collect::<Vec<&str>>().join(" ")
}

/// A house with one living space, followed by the given lines.
fn house(sides: &[&str], after: &str) -> String {
    format!(
        "record 1,200 sq ft\nlevel \"Ground floor\"\nliving \"House\"\n{}\n{after}",
        sides.join("\n")
    )
}

/// A `record` outline, of the space `House` unless named otherwise.
fn sketch(name: &str, sides: &[&str]) -> String {
    format!("record outline \"{name}\"\n{}\n", sides.join("\n"))
}
