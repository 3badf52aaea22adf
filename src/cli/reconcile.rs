//! `fairfoot reconcile`: the main command.

use std::path::PathBuf;

use clap::Args;
use fairfoot::Weights;
use fairfoot::report::json;
use fairfoot::value::{AsOf, USUAL_BAND};

use crate::cli::{Outcome, Printing, RoundingOptions, Stop, files, pages};

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
    /// Show every weight and figure behind the report
    #[arg(long, conflicts_with = "json")]
    why: bool,
    /// A JSON file of how common each departure is, in place of the starting values
    #[arg(long, value_name = "FILE")]
    weights: Option<PathBuf>,
    /// Also write the pages to OUT: `.pdf`, `.svg` or `.png`
    // Pages always use the default weights, so that anyone who has a page can compute it again.
    #[arg(long, alias = "sheet", value_name = "OUT", conflicts_with = "weights")]
    pages: Option<PathBuf>,
    #[command(flatten)]
    page_printing: pages::PagePrinting,
    /// Count the days left to each deadline from this day, as `2026-05-01`
    #[arg(long, value_name = "DATE", value_parser = day)]
    today: Option<jiff::civil::Date>,
    /// How near in size a comparable should be, in percent of the house
    #[arg(long, value_name = "PERCENT", default_value_t = USUAL_BAND, value_parser = band, allow_hyphen_values = true)]
    band: u8,
    #[command(flatten)]
    rounding: RoundingOptions,
    #[command(flatten)]
    printing: Printing,
}

pub(crate) fn run(options: &Options) -> Result<Outcome, Stop> {
    let Some(file) = options.file.as_ref().filter(|_| !options.schema) else {
        return print_json(&json::schema());
    };
    if let Some(out) = &options.pages {
        pages::check_ending(out)?;
    }
    let house = files::read_house(file)?;
    let areas = house.areas(&options.rounding.settings())?;
    let weights = match &options.weights {
        Some(path) => {
            let text = files::read_text(path, files::Wanted::Weights)?.text().to_owned();
            Weights::from_json(&text)
                .map_err(|error| Stop::Said(format!("{}: {error}", files::shown(path))))?
        }
        None => Weights::default(),
    };
    let reconciliation = areas.reconcile(&weights)?;
    if let Some(out) = &options.pages {
        let inputs: Vec<&std::path::Path> = [Some(file), options.weights.as_ref()]
            .into_iter()
            .flatten()
            .map(std::path::PathBuf::as_path)
            .collect();
        pages::write(&reconciliation, &options.page_printing, out, &inputs)?;
    }
    if reconciliation.has_smaller_record() {
        files::say(fairfoot::wording::SMALLER_RECORD);
    }
    let as_of = AsOf { today: options.today, band: options.band };
    let report = reconciliation.report_as_of(&as_of);
    if options.json {
        return print_json(&report.json());
    }
    files::print(&report.text(options.printing.look(options.why)))?;
    Ok(Outcome::Done)
}

/// A whole percentage from 1 to 100, with or without its sign.
fn band(text: &str) -> Result<u8, String> {
    let number: Option<u8> = text.trim().trim_end_matches('%').trim_end().parse().ok();
    number
        .filter(|number| (1..=100).contains(number))
        .ok_or_else(|| "write a whole percentage from 1 to 100, as `--band 15`".to_owned())
}

/// A date as year-month-day.
fn day(text: &str) -> Result<jiff::civil::Date, String> {
    let date = if text.len() == 10 { text.parse().ok() } else { None };
    date.ok_or_else(|| "write it as year-month-day: `2026-05-01`".to_owned())
}

/// Prints a value as indented JSON.
pub(crate) fn print_json(value: &impl serde::Serialize) -> Result<Outcome, Stop> {
    let text = serde_json::to_string_pretty(value)
        .map_err(|error| Stop::Said(format!("the report cannot be written as JSON: {error}")))?;
    files::print(&(text + "\n"))?;
    Ok(Outcome::Done)
}
