//! `fairfoot area`: the areas only.

use std::path::PathBuf;

use clap::Args;

use crate::cli::{Outcome, Printing, RoundingOptions, Stop, files, reconcile};

#[derive(Debug, Args)]
pub(crate) struct Options {
    /// The sides file; `-` reads standard input
    file: PathBuf,
    /// Print JSON (format 1) instead of the table
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    rounding: RoundingOptions,
    #[command(flatten)]
    printing: Printing,
}

pub(crate) fn run(options: &Options) -> Result<Outcome, Stop> {
    let areas = files::read_house(&options.file)?.areas(&options.rounding.settings())?;
    if options.json {
        return reconcile::print_json(&areas.json());
    }
    files::draw_warnings(&areas);
    files::print(&areas.text(options.printing.look(false)))?;
    Ok(Outcome::Done)
}
