//! Bytes that a stranger may send: inputs that the fuzzer kept, and the same with a few bytes changed.
//!
//! `tests/fuzz` has the fuzz targets; they call the laws in this folder.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::integer_division,
    clippy::float_arithmetic,
    clippy::print_stderr,
    reason = "a test that cannot go on has failed, and says at which file"
)]

#[allow(unreachable_pub, reason = "the fuzzer's targets share them")]
mod laws;

use crate::held_out::{twin, walks};
use std::path::Path;

/// The inputs kept for a law, by file name.
fn kept(law: &str) -> Vec<(String, Vec<u8>)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/hostile/kept").join(law);
    let mut all: Vec<(String, Vec<u8>)> = std::fs::read_dir(&folder)
        .unwrap_or_else(|error| panic!("{}: {error}", folder.display()))
        .map(|entry| entry.unwrap().path())
        .map(|path| (path.display().to_string(), std::fs::read(&path).unwrap()))
        .collect();
    all.sort();
    assert!(!all.is_empty(), "nothing was kept for {law}");
    all
}

/// Asserts that the law holds for each kept input and for `changed` variations of it.
fn holds(name: &str, changed: u64) {
    let law = laws::ALL.iter().find(|law| law.0 == name).expect("a law of that name").1;
    for (file, bytes) in kept(name) {
        eprintln!("{file}");
        law(&bytes);
        for seed in 0..changed {
            eprintln!("  with change {seed}");
            law(&neighbor(&bytes, seed));
        }
    }
}

/// The same bytes with a few changed, by a generator that gives the same on every machine.
fn neighbor(bytes: &[u8], seed: u64) -> Vec<u8> {
    let mut state = seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ u64::try_from(bytes.len()).unwrap();
    let mut next = move |most: usize| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963);
        usize::try_from(state >> 33).unwrap() % most.max(1)
    };
    let mut changed = bytes.to_vec();
    for _ in 0..=next(3) {
        let at = next(changed.len() + 1);
        match next(4) {
            0 if at < changed.len() => changed[at] = u8::try_from(next(256)).unwrap(),
            1 if at < changed.len() => drop(changed.remove(at)),
            2 => changed.insert(at, u8::try_from(next(256)).unwrap()),
            _ => changed.truncate(changed.len() - next(changed.len() / 8 + 1)),
        }
    }
    changed
}

macro_rules! laws {
    ($($name:ident $changed:literal;)*) => {$(
        #[test]
        fn $name() {
            holds(stringify!($name), $changed);
        }
    )*};
}

laws! {
    sides 3;
    closing 1;
    lines 3;
    svg 2;
    svg_edited 1;
    pdf 2;
    search 1;
    photographs 2;
    outlines 3;
    walks 2;
}

#[test]
fn every_law_is_tried() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/hostile/kept");
    let mut folders: Vec<String> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    let mut laws: Vec<String> = laws::ALL.iter().map(|law| law.0.to_owned()).collect();
    folders.sort();
    laws.sort();
    assert_eq!(folders, laws);
}
