//! Measures each step from text to pages: `cargo bench`.
//!
//! A bench uses one house of 12 sides unless it says otherwise; results and the machine are in `DEVELOPERS.md`.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    missing_docs,
    reason = "a bench that cannot go on has failed"
)]

use divan::{Bencher, black_box};
use fairfoot::batch::{Input, BatchOptions, compute};
use fairfoot::{Paper, Settings};
use geo::{Area as _, LineString, Polygon};

/// The allocator of the program.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() {
    divan::main();
}

/// A house of 12 sides, none in whole feet.
const TWELVE: &str = "record 1,877 sq ft\nlevel \"Ground floor\"\nliving \"House\"\nnorth 34' 1\"\neast 11' 7\"\nnorth 3' 8\"\neast 14' 10\"\nsouth 2' 4\"\neast 12' 3\"\nnorth 4' 1\"\neast 9' 2\"\nsouth 21' 7\"\nwest 8' 5\"\nsouth 17' 11\"\nwest 39' 5\"\n";

/// The same with the given number of porches that a figure may have counted. Other departures are possible already:
/// four recesses (after sides 2, 5, 6 and 10) and a jog (side 4).
fn with_porches(count: usize) -> String {
    let mut text = TWELVE.to_owned();
    for i in 0..count {
        let wide = 6 + i;
        text.push_str(&format!(
            "porch \"Porch {i}\" start south {}' east {}'\nnorth {wide}' 3\"\neast 7' {i}\"\nsouth {wide}' 3\"\nwest 7' {i}\"\n",
            40 + 30 * i,
            10 * i + 1
        ));
    }
    text
}

#[divan::bench]
fn reading(bencher: Bencher<'_, '_>) {
    bencher.bench(|| fairfoot::read("house.sides", black_box(TWELVE)).unwrap());
}

/// The same house read, with a misclosure of an inch and a half to adjust.
#[divan::bench]
fn reading_and_closing(bencher: Bencher<'_, '_>) {
    let open = TWELVE.replace("west 39' 5\"", "west 39' 6 1/2\"");
    bencher.bench(|| fairfoot::read("house.sides", black_box(open.as_str())).unwrap());
}

#[divan::bench]
fn both_areas_with_range(bencher: Bencher<'_, '_>) {
    let checked = fairfoot::read("house.sides", TWELVE).unwrap();
    bencher.bench(|| black_box(&checked).areas(&Settings::default()).unwrap().gross().range());
}

#[divan::bench]
fn text_in_both_areas_out(bencher: Bencher<'_, '_>) {
    bencher.bench(|| {
        let checked = fairfoot::read("house.sides", black_box(TWELVE)).unwrap();
        checked.areas(&Settings::default()).unwrap().gross().range()
    });
}

/// For comparison: `geo`, in 64-bit floats, computing one area from corners. It reads, checks and rounds nothing.
#[divan::bench]
fn one_area_by_geo_in_floats(bencher: Bencher<'_, '_>) {
    let checked = fairfoot::read("house.sides", TWELVE).unwrap();
    let corners = checked.spaces()[0].outline().corners();
    let corners: Vec<(f64, f64)> =
        corners.iter().map(|corner| (corner.east.feet(), corner.north.feet())).collect();
    bencher.bench(|| {
        let ring: LineString<f64> = black_box(&corners).iter().copied().collect();
        Polygon::new(ring, Vec::new()).unsigned_area()
    });
}

#[divan::bench]
fn bridge_and_search(bencher: Bencher<'_, '_>) {
    let checked = fairfoot::read("house.sides", TWELVE).unwrap();
    let areas = checked.areas(&Settings::default()).unwrap();
    bencher.bench(|| areas.clone().reconcile(&fairfoot::Weights::default()).unwrap());
}

/// From the text to the causes of its figure, with 12 and with 17 departures in addition to misread walls, faces and
/// roundings.
#[divan::bench(args = [7, 12])]
fn full_search_with_porches(bencher: Bencher<'_, '_>, count: usize) {
    let text = with_porches(count);
    bencher.bench(|| {
        let checked = fairfoot::read("house.sides", black_box(text.as_str())).unwrap();
        let areas = checked.areas(&Settings::default()).unwrap();
        areas.reconcile(&fairfoot::Weights::default()).unwrap()
    });
}

/// All that `batch` does with a line: reads JSON, computes, writes JSON.
#[divan::bench(args = [false, true])]
fn a_line_of_batch(bencher: Bencher<'_, '_>, explain: bool) {
    let line = serde_json::to_vec(&serde_json::json!({"id": "house", "sides": TWELVE})).unwrap();
    let options = BatchOptions { explain, ..BatchOptions::default() };
    bencher.bench(|| {
        let (id, given) = Input::line(black_box(&line));
        serde_json::to_string(&compute(&id, &given, &options)).unwrap()
    });
}

#[divan::bench]
fn pages_to_pdf(bencher: Bencher<'_, '_>) {
    let checked = fairfoot::read("house.sides", TWELVE).unwrap();
    let areas = checked.areas(&Settings::default()).unwrap();
    let reconciliation = areas.reconcile(&fairfoot::Weights::default()).unwrap();
    bencher.bench(|| reconciliation.pages(Paper::Letter).unwrap().pdf().unwrap());
}
