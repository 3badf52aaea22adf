//! `fairfoot reconcile`: the main job.

use std::path::PathBuf;

use clap::Args;
use fairfoot::report::{json, text};
use fairfoot::value::USUAL_BAND;
use fairfoot::value::Worth;
use fairfoot::{Areas, Reconciliation, Weights};

use crate::cli::{Outcome, Printing, Rounding, Stop, files, sheet};

#[derive(Debug, Args)]
pub(crate) struct Options {
    /// The sides file; `-` reads standard input
    #[arg(required_unless_present = "schema")]
    file: Option<PathBuf>,
    /// Print JSON (format 1) instead of the report
    #[arg(long)]
    json: bool,
    /// Print the JSON Schema of what `--json` prints
    #[arg(long, exclusive = true)]
    schema: bool,
    /// Every weight and figure behind the report
    #[arg(long, conflicts_with = "json")]
    why: bool,
    /// A JSON file of how common each departure is, in place of the starting values
    #[arg(long, value_name = "FILE")]
    weights: Option<PathBuf>,
    /// Also write the pages to OUT: `.pdf`, `.svg` or `.png`
    // Pages are made with the starting weights, so that whoever has a page can work it out again.
    #[arg(long, value_name = "OUT", conflicts_with = "weights")]
    sheet: Option<PathBuf>,
    #[command(flatten)]
    sheets: sheet::Sheets,
    /// Count the days left to each deadline from this day, as `2026-05-01`
    #[arg(long, value_name = "DATE", value_parser = day)]
    today: Option<jiff::civil::Date>,
    /// How near in size a comparable should be, in per cent of the house
    #[arg(long, value_name = "PER CENT", default_value_t = USUAL_BAND, value_parser = clap::value_parser!(u8).range(1..=100))]
    band: u8,
    #[command(flatten)]
    rounding: Rounding,
    #[command(flatten)]
    printing: Printing,
}

pub(crate) fn run(options: &Options) -> Result<Outcome, Stop> {
    let Some(file) = options.file.as_ref().filter(|_| !options.schema) else {
        return print_json(&json::schema());
    };
    if let Some(out) = &options.sheet {
        sheet::check_ending(out)?;
    }
    let sound = files::read_sound(file)?;
    let settings = options.rounding.settings();
    let areas = Areas::of(&sound, &settings)?;
    let weights = match &options.weights {
        Some(path) => {
            let text = files::read_source(path)?.text().to_owned();
            Weights::from_json(&text)
                .map_err(|error| Stop::Said(format!("{}: {error}", files::shown(path))))?
        }
        None => Weights::default(),
    };
    let reconciliation = Reconciliation::weighed(&sound, areas, &settings, &weights)?;
    let worth = Worth::within(&sound, &reconciliation, options.today, options.band);
    if let Some(out) = &options.sheet {
        sheet::write(&sound, &reconciliation, options.sheets, out)?;
    }
    if options.json {
        return print_json(&json::report_with(&sound, &reconciliation, worth.as_ref()));
    }
    let look = options.printing.look(options.why);
    files::print(&text::reconciliation_with(&sound, &reconciliation, worth.as_ref(), look))?;
    Ok(Outcome::Done)
}

/// A day of the calendar, year-month-day.
fn day(text: &str) -> Result<jiff::civil::Date, String> {
    let date = if text.len() == 10 { text.parse().ok() } else { None };
    date.ok_or_else(|| "write it as year-month-day: `2026-05-01`".to_owned())
}

/// Prints a value as JSON, indented.
pub(crate) fn print_json(value: &impl serde::Serialize) -> Result<Outcome, Stop> {
    let text = serde_json::to_string_pretty(value)
        .map_err(|error| Stop::Said(format!("the report cannot be written as JSON: {error}")))?;
    files::print(&(text + "\n"))?;
    Ok(Outcome::Done)
}
