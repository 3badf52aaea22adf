//! The pages: to scale, without overlaps, the same on every run, and verified unchanged.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::integer_division,
    reason = "a test that cannot go on has failed; places are checked by plain arithmetic"
)]

mod agreement;
mod draft;
mod drawing;
mod exhibit;
mod forged;
mod hostile;
mod houses;
mod outputs;

mod scale;
mod told;
mod words;

use fairfoot::{Pages, Paper, Reconciliation, Settings};

/// Every sketch that ships with the program: its name and its text.
pub(crate) fn sketches() -> Vec<(String, String)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/sketches");
    let mut all: Vec<(String, String)> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "sides"))
        .map(|path| {
            let name = path.file_stem().unwrap().to_string_lossy().into_owned();
            (name, std::fs::read_to_string(path).unwrap())
        })
        .collect();
    all.sort();
    all
}

pub(crate) fn sketch(name: &str) -> String {
    sketches().into_iter().find(|(other, _)| other == name).expect("the sketch").1
}

pub(crate) fn worked_out(text: &str) -> Reconciliation {
    let checked = fairfoot::read("house.sides", text).expect("a sound file");
    let settings = Settings::default();
    let areas = checked.areas(&settings).expect("areas");
    areas.reconcile(&fairfoot::Weights::default()).expect("a reconciliation")
}

pub(crate) fn pages_on(text: &str, paper: Paper) -> Pages {
    worked_out(text).pages(paper).expect("pages")
}

pub(crate) fn pages(text: &str) -> Pages {
    pages_on(text, Paper::Letter)
}

/// All words of a page, text after text.
pub(crate) fn words(page: &fairfoot::pages::Page) -> Vec<String> {
    page.texts().map(|text| text.words().to_owned()).collect()
}
