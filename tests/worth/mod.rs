//! What a gap is worth, and the deadlines: every figure computed by hand, every rule with its source.
//!
//! Sections are of the Texas Tax Code. With each is how it is known, as in `src/value/places`: *read* in a copy of the
//! law, *second-hand*, or *from memory*; last checked on 2026-11-25 or 2026-11-26.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test that cannot go on has failed"
)]

mod dates;
mod metric;
mod office;
mod places;
mod sales;
mod size;
mod tax;
mod wording;

use fairfoot::Settings;
use fairfoot::value::{AsOf, Worth};
use fairfoot::value::{Method, Way};
use fairfoot::wording::Block;
use jiff::civil::Date;

/// 30 ft by 40 ft: 1,200 sq ft by either rule.
pub(crate) const HOUSE: &str = "level \"Ground floor\"\n  living \"House\"\n    north 30'\n    east  40'\n    south 30'\n    west  40'\n";

/// The worth computed from `lines` and the house of 1,200 sq ft.
pub(crate) fn worth_of(lines: &str) -> Option<Worth> {
    worth_on(lines, None)
}

pub(crate) fn worth_on(lines: &str, today: Option<Date>) -> Option<Worth> {
    whole(&format!("{lines}\n{HOUSE}"), today)
}

/// The worth computed from a whole file.
pub(crate) fn whole(text: &str, today: Option<Date>) -> Option<Worth> {
    let checked = fairfoot::read("worth.sides", text).unwrap_or_else(|faults| panic!("{faults}"));
    let settings = Settings::default();
    let areas = checked.areas(&settings).unwrap();
    let all = areas.reconcile(&fairfoot::Weights::default()).unwrap();
    all.worth(&AsOf { today, ..AsOf::default() })
}

/// The estimate by one method.
pub(crate) fn way(worth: &Worth, method: Method) -> &Way {
    worth.ways().iter().find(|way| way.method() == method).expect("the way")
}

/// The text of all blocks, one per line.
pub(crate) fn text(worth: &Worth) -> String {
    let part = |reported: Block| match reported {
        Block::Statement(text)
        | Block::Heading(text)
        | Block::Paragraph(text)
        | Block::Note(text)
        | Block::Hint(text)
        | Block::Item(text) => text,
        Block::Row { name, figure } | Block::Total { name, figure } => format!("{name} | {figure}"),
        Block::Numbered { number, text } => format!("{number}. {text}"),
        Block::Footnote { number, text } => format!("[{number}] {text}"),
        Block::Table { heads, rows } => {
            let rows: Vec<String> = rows.iter().map(|row| row.join(" | ")).collect();
            format!("{}\n{}", heads.join(" | "), rows.join("\n"))
        }
    };
    worth.blocks().into_iter().map(part).collect::<Vec<_>>().join("\n")
}
