//! `fairfoot area`: the areas alone.

use std::path::PathBuf;

use clap::Args;
use fairfoot::Areas;
use fairfoot::report::{json, text};

use crate::cli::{Outcome, Printing, Rounding, Stop, files, reconcile};

#[derive(Debug, Args)]
pub(crate) struct Options {
    /// The sides file; `-` reads standard input
    file: PathBuf,
    /// Print JSON (format 1) instead of the table
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    rounding: Rounding,
    #[command(flatten)]
    printing: Printing,
}

pub(crate) fn run(options: &Options) -> Result<Outcome, Stop> {
    let sound = files::read_sound(&options.file)?;
    let settings = options.rounding.settings();
    let areas = Areas::of(&sound, &settings)?;
    if options.json {
        return reconcile::print_json(&json::areas_report(&sound, &areas, &settings));
    }
    files::draw_warnings(&sound, &areas);
    files::print(&text::areas(&sound, &areas, &settings, options.printing.look(false)))?;
    Ok(Outcome::Done)
}
