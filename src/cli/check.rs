//! `fairfoot check`: errors and warnings only.

use std::path::{Path, PathBuf};

use clap::Args;
use fairfoot::diagnostic::Severity;
use fairfoot::report::json;
use fairfoot::{Diagnostic, Settings, Source, Weights};

use crate::cli::{Outcome, Stop, files, reconcile};

#[derive(Debug, Args)]
pub(crate) struct Options {
    /// The sides files; `-` reads standard input
    #[arg(required = true)]
    files: Vec<PathBuf>,
    /// Print the errors and warnings as JSON
    #[arg(long)]
    json: bool,
}

pub(crate) fn run(options: &Options) -> Result<Outcome, Stop> {
    let mut outcome = Outcome::Done;
    let mut reports = Vec::new();
    for file in &options.files {
        let (source, found) = match look_at(file) {
            Ok(looked) => looked,
            Err(Stop::Diagnostics(faults)) => (faults.source().clone(), faults.list().to_vec()),
            Err(stop) => {
                outcome = outcome.max(files::report(&stop));
                continue;
            }
        };
        if found.iter().any(Diagnostic::is_error) {
            outcome = outcome.max(Outcome::Fault);
        }
        if options.json {
            reports.extend(json::faults(&source, &found));
        } else {
            files::draw(&source, &found);
            let message = format!("{}: {}\n", source.name(), verdict(&found));
            files::print(&files::in_lines(&message))?;
        }
    }
    if options.json {
        reconcile::print_json(&reports)?;
    }
    Ok(outcome)
}

/// All errors and warnings found by reading, checking and computing.
fn look_at(file: &Path) -> Result<(Source, Vec<Diagnostic>), Stop> {
    let house = files::read_house(file)?;
    let reconciliation = house.areas(&Settings::default())?.reconcile(&Weights::default())?;
    Ok((house.source().clone(), reconciliation.warnings().to_vec()))
}

/// The verdict: `no errors`, `no errors, 1 warning` or `2 errors, 1 warning`.
fn verdict(found: &[Diagnostic]) -> String {
    let errors = found.iter().filter(|diagnostic| diagnostic.is_error()).count();
    let count = |number: usize, noun: &str| {
        format!("{number} {noun}{}", if number == 1 { "" } else { "s" })
    };
    let first = if errors == 0 { "no errors".to_owned() } else { count(errors, "error") };
    let is_warning = |one: &&Diagnostic| one.word().severity() == Severity::Warning;
    match found.iter().filter(is_warning).count() {
        0 => first,
        warnings => format!("{first}, {}", count(warnings, "warning")),
    }
}
