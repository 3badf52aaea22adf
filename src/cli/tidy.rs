//! `fairfoot tidy`: writes the canonical form of sides files.

use std::path::{Path, PathBuf};

use clap::Args;

use crate::cli::{Outcome, Stop, files};

#[derive(Debug, Args)]
pub(crate) struct Options {
    /// The sides files; `-` reads standard input
    #[arg(required = true)]
    files: Vec<PathBuf>,
    /// Write nothing; name the files that are not tidy and exit with 1
    #[arg(long, conflicts_with = "write")]
    check: bool,
    /// Write each file in place, whole or not at all
    #[arg(long)]
    write: bool,
}

pub(crate) fn run(options: &Options) -> Result<Outcome, Stop> {
    if options.files.len() > 1 && !options.check && !options.write {
        return Err(Stop::Said(
            "to print the tidy form give one file; for several add `--check` or `--write`"
                .to_owned(),
        ));
    }
    let mut outcome = Outcome::Done;
    for file in &options.files {
        match one(options, file) {
            Ok(each) => outcome = outcome.max(each),
            Err(Stop::PipeClosed) => return Err(Stop::PipeClosed),
            Err(stop) => outcome = outcome.max(report(&stop)),
        }
    }
    Ok(outcome)
}

fn one(options: &Options, file: &Path) -> Result<Outcome, Stop> {
    let source = files::read_source(file)?;
    let typed = source.text().to_owned();
    let tidied = fairfoot::sketch::parse(source)?.tidied();
    if options.check {
        if typed == tidied {
            return Ok(Outcome::Done);
        }
        files::print(&format!("{}\n", file.display()))?;
        files::say(&format!(
            "{} is not tidy; add `--write` instead of `--check` to make it so",
            files::shown(file)
        ));
        return Ok(Outcome::Fault);
    }
    if !options.write {
        files::print(&tidied)?;
        return Ok(Outcome::Done);
    }
    if file == Path::new("-") {
        return Err(Stop::Said(
            "standard input cannot be written in place; leave `--write` out".to_owned(),
        ));
    }
    if typed != tidied {
        files::write_whole(file, &tidied)?;
        files::say(&format!("{} is tidy now", files::shown(file)));
    }
    Ok(Outcome::Done)
}

/// Reports the errors of a file that is left unchanged.
fn report(stop: &Stop) -> Outcome {
    match stop {
        Stop::Diagnostics(faults) => {
            files::draw(faults.source(), faults.list());
            files::say(&format!("{}: left as it is", faults.source().name()));
            Outcome::Fault
        }
        other => files::report(other),
    }
}
