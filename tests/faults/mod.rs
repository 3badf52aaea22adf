//! Every error and warning: a minimal file for each code word, with its message.
//!
//! All messages are in `tests/faults/messages/`, one file per word.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test that cannot go on has failed"
)]

mod advised;
mod bad_input;
mod closing;
mod described;
mod kept;
mod limits;
mod loosely;
mod not_of_the_walk;
mod obeyed;
mod one_line;
mod pads;
mod places;
mod reworded;
mod second_look;
mod taped;
mod told;
mod told_walls;
mod typing;
mod whole_walk;

use std::path::PathBuf;

use fairfoot::diagnostic::{Word, draw};
use fairfoot::{Diagnostic, Paper, Settings, Source};

/// All diagnostics of a text, in file order.
pub(crate) fn diagnostics_of(name: &str, bytes: Vec<u8>) -> (Source, Vec<Diagnostic>) {
    let worked_out = || {
        let settings = Settings::default();
        let checked = fairfoot::read_source(fairfoot::decode(name, bytes)?)?;
        let areas = checked.areas(&settings)?;
        let reconciliation = areas.reconcile(&fairfoot::Weights::default())?;
        let mut output = reconciliation.warnings().to_vec();
        let pages = reconciliation.pages(Paper::Letter);
        output.extend(pages.map(|pages| pages.warnings().to_vec()).unwrap_or_default());
        Ok((checked.source().clone(), output))
    };
    worked_out().unwrap_or_else(|faults: fairfoot::Diagnostics| {
        (faults.source().clone(), faults.list().to_vec())
    })
}

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/faults")
}

#[test]
fn every_word_has_a_minimal_file_that_causes_it() {
    for word in Word::ALL {
        let name = format!("{word}.sides");
        let bytes = std::fs::read(folder().join(&name))
            .unwrap_or_else(|error| panic!("tests/faults/{name}: {error}"));
        let (source, list) = diagnostics_of(&name, bytes);
        assert!(list.iter().any(|fault| fault.word() == *word), "{name}: {list:?}");
        insta::with_settings!({ snapshot_path => "messages", prepend_module_to_snapshot => false, omit_expression => true }, {
            insta::assert_snapshot!(word.as_str(), draw(&source, &list, false));
        });
    }
}

#[test]
fn every_file_is_of_a_word() {
    for entry in std::fs::read_dir(folder()).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|ending| ending == "sides") {
            let stem = path.file_stem().unwrap().to_string_lossy().into_owned();
            let known = Word::ALL.iter().any(|word| word.as_str() == stem);
            assert!(known, "{stem} is the word of no fault");
        }
    }
}

#[test]
fn every_error_says_what_to_type_or_do_instead() {
    for word in Word::ALL {
        let name = format!("{word}.sides");
        let (_, list) = diagnostics_of(&name, std::fs::read(folder().join(&name)).unwrap());
        let fault = list.iter().find(|fault| fault.word() == *word).unwrap();
        assert!(!fault.is_error() || !fault.helps().is_empty(), "{word} has no help");
    }
}

#[test]
fn messages_begin_in_lower_case_and_have_no_final_period() {
    for word in Word::ALL {
        let name = format!("{word}.sides");
        let (_, list) = diagnostics_of(&name, std::fs::read(folder().join(&name)).unwrap());
        for fault in list {
            let message = fault.message();
            let first = message.chars().next().unwrap();
            assert!(!first.is_uppercase(), "{word}: {message}");
            assert!(!message.ends_with('.'), "{word}: {message}");
        }
    }
}
