//! `fairfoot batch`: many houses, one row per figure, in the order they came in.

mod houses;
mod output;
mod workers;

use std::io::{self, IsTerminal};
use std::num::NonZeroUsize;
use std::path::{Path, PathBuf};
use std::sync::atomic::Ordering;

use clap::{Args, ValueEnum};
use fairfoot::batch::{BatchOptions, Summary, histogram};
use rust_decimal::Decimal;
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};

use crate::cli::{Outcome, RoundingOptions, Stop, files, signals};
use output::{Output, Written};

#[derive(Debug, Args)]
pub(crate) struct Options {
    /// Sides files, folders (every `.sides` in them), a `.csv` of figures, or `-` for JSON lines on standard input
    #[arg(required = true, value_name = "PATH")]
    paths: Vec<PathBuf>,
    /// How rows are written; JSON lines for `-`, else a table on a terminal and CSV into a file or a pipe
    #[arg(long, value_enum, value_name = "FORMAT")]
    format: Option<Format>,
    /// Figures that differ by more deserve a second look, in percent of the smaller
    #[arg(long, value_name = "PERCENT", default_value = "3%", value_parser = per_cent, allow_hyphen_values = true)]
    over: Decimal,
    /// Houses computed at once; by default one per core
    #[arg(long, value_name = "N", value_parser = jobs)]
    jobs: Option<NonZeroUsize>,
    /// Skip the search for causes: much faster
    #[arg(long)]
    plain: bool,
    /// Write the rows to a file, whole or not at all
    #[arg(short, long, value_name = "OUT")]
    out: Option<PathBuf>,
    /// At the end, print counts, medians and the largest gaps to standard error
    #[arg(long)]
    summary: bool,
    /// Draw how far the figures lie from the measured areas, as SVG
    #[arg(long, value_name = "FILE.svg")]
    plot: Option<PathBuf>,
    #[command(flatten)]
    rounding: RoundingOptions,
}

/// How rows are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Format {
    /// A line a figure, its head first
    Csv,
    /// A JSON object a line, one a house
    Jsonl,
    /// Columns for a screen
    Table,
}

/// A percentage: `3%`, `3 %` or `3`.
fn per_cent(text: &str) -> Result<Decimal, String> {
    let digits = text.trim().trim_end_matches('%').trim();
    let number: Decimal = digits.parse().map_err(|_| "write a percentage, as `3%`".to_owned())?;
    if number < Decimal::ZERO || number > Decimal::from(1000) {
        return Err("it must be between 0% and 1000%".to_owned());
    }
    Ok(number)
}

/// A number of houses: at least 1.
fn jobs(text: &str) -> Result<NonZeroUsize, String> {
    text.trim().parse().map_err(|_| "write a whole number of at least 1, as `--jobs 2`".to_owned())
}

impl Options {
    fn is_stream(&self) -> bool {
        self.paths.iter().any(|path| path == Path::new("-"))
    }

    fn format(&self) -> Format {
        match self.format {
            Some(format) => format,
            None if self.is_stream() => Format::Jsonl,
            None if self.out.is_none() && io::stdout().is_terminal() => Format::Table,
            None => Format::Csv,
        }
    }
}

pub(crate) fn run(options: &Options) -> Result<Outcome, Stop> {
    if options.is_stream() && options.paths.len() > 1 {
        return Err(Stop::Said("`-` stands alone: a stream has its houses in it".to_owned()));
    }
    let batch_options = BatchOptions {
        settings: options.rounding.settings(),
        over_per_cent: options.over,
        explain: !options.plain,
    };
    refuse_outputs(options)?;
    let stop = signals::ask_first();
    let houses = houses::of(&options.paths)?;
    let format = options.format();
    let jobs = options.jobs.or_else(|| std::thread::available_parallelism().ok());
    let jobs = jobs.map_or(1, NonZeroUsize::get);
    let mut output = Output::new(options.out.as_deref(), format)?;
    let mut summary = (options.summary || options.plot.is_some()).then(Summary::default);
    let bar = progress(houses.known);
    let mut faulty = false;
    let mut chunks = workers::started(houses.list, batch_options, format, jobs, summary.is_some());
    while let Some(chunk) = chunks.next() {
        faulty |= chunk.faulty;
        bar.inc(chunk.count);
        if output.write(&chunk.bytes)? == Written::NobodyReads {
            return Ok(Outcome::Done);
        }
        if let Some(summary) = &mut summary {
            chunk.houses.iter().for_each(|house| summary.add(house));
        }
        if stop.load(Ordering::Relaxed) {
            bar.abandon();
            files::say("stopped; every row that is written is whole");
            return Ok(Outcome::Usage);
        }
    }
    bar.finish_and_clear();
    output.finish()?;
    print_summary(options, summary)?;
    Ok(if faulty { Outcome::Fault } else { Outcome::Done })
}

/// Stops if an output would overwrite an input, or any sides file or table that someone typed.
fn refuse_outputs(options: &Options) -> Result<(), Stop> {
    let outputs: Vec<PathBuf> = options.out.iter().chain(&options.plot).cloned().collect();
    let inputs: Vec<&Path> = options.paths.iter().map(PathBuf::as_path).collect();
    files::refuse_overwriting_inputs(&outputs, &inputs)?;
    let ends_in = |path: &Path, endings: &[&str]| {
        let ending = path.extension().map(|ending| ending.to_string_lossy().to_lowercase());
        ending.is_some_and(|ending| endings.contains(&ending.as_str()))
    };
    let refused = options.out.iter().find(|out| ends_in(out, &["sides", "svg", "pdf", "png"]));
    let refused = refused.or(options.plot.iter().find(|plot| ends_in(plot, &["sides", "csv"])));
    match refused {
        Some(path) => Err(Stop::Said(format!(
            "{} has the ending of another kind of file; rows go to a `.csv`, a `.jsonl` or a `.txt`, the plot to an `.svg`",
            files::shown(path)
        ))),
        None if options.out.is_some() && options.out == options.plot => {
            Err(Stop::Said("the rows and the plot cannot go to one file".to_owned()))
        }
        None => Ok(()),
    }
}

/// Prints and plots the summary.
fn print_summary(options: &Options, summary: Option<Summary>) -> Result<(), Stop> {
    let Some(mut summary) = summary else { return Ok(()) };
    if let Some(plot) = &options.plot {
        files::write_new(plot, histogram(summary.per_cents()).as_bytes())?;
    }
    if options.summary {
        files::say(summary.text().trim_end());
    }
    Ok(())
}

/// A progress bar with rate and time left, shown only on a terminal.
fn progress(known: Option<u64>) -> indicatif::ProgressBar {
    let bar = match known {
        _ if !io::stderr().is_terminal() => indicatif::ProgressBar::hidden(),
        Some(known) if known < 50 => indicatif::ProgressBar::hidden(),
        Some(known) => indicatif::ProgressBar::new(known),
        None => indicatif::ProgressBar::no_length(),
    };
    let template = match known {
        Some(_) => "{wide_bar} {human_pos} of {human_len} houses, {rate} a second, {eta} left",
        None => "{human_pos} houses, {rate} a second",
    };
    match indicatif::ProgressStyle::with_template(template) {
        Ok(style) => bar.with_style(style.with_key("rate", rate)),
        Err(_) => bar,
    }
}

/// The rate in whole houses per second.
fn rate(state: &indicatif::ProgressState, into: &mut dyn std::fmt::Write) {
    let decimals = Decimal::from_f64(state.per_sec()).unwrap_or_default();
    let whole = decimals.round().to_i64().unwrap_or_default();
    let _ = into.write_str(&fairfoot::units::thousands(whole));
}
