//! The command line: one file per command, and one for files and streams.

mod about;
mod area;
mod batch;
mod check;
mod files;
mod new;
mod outline;
mod pages;
mod reconcile;
mod shells;
mod signals;
mod tidy;
mod verify;

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, Parser, Subcommand};
use fairfoot::units::{FineStep, Halves, Length, Step};
use fairfoot::{Diagnostics, Settings};

/// The outcome of a run, which determines the exit code.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Outcome {
    /// Done without errors.
    Done,
    /// The sides file has an error, or a file does not pass the check.
    Fault,
    /// Wrong usage, or files that cannot be read or written.
    Usage,
    /// A file of pages is not what the program makes of the sides file inside it.
    NotGenuine,
}

impl From<Outcome> for ExitCode {
    fn from(outcome: Outcome) -> ExitCode {
        ExitCode::from(match outcome {
            Outcome::Done => 0,
            Outcome::Fault => 1,
            Outcome::Usage => 2,
            Outcome::NotGenuine => 3,
        })
    }
}

/// Why a command stopped early.
#[derive(Debug)]
pub(crate) enum Stop {
    /// The sides file has errors.
    Diagnostics(Diagnostics),
    /// Pictures that the file names cannot be shown.
    Pictures(Diagnostics),
    /// A message that says what to do instead.
    Said(String),
    /// Nobody reads the output anymore.
    PipeClosed,
}

impl From<Diagnostics> for Stop {
    fn from(faults: Diagnostics) -> Stop {
        Stop::Diagnostics(faults)
    }
}

/// Works out how big a house is from its outside walls, two ways, and explains
/// the gap to the record step by step.
#[derive(Debug, Parser)]
#[command(name = "fairfoot", version, about, arg_required_else_help = true, max_term_width = 100)]
#[command(
    after_help = "A sides file is a small text: `fairfoot new my-house` writes one to start from.\n\
    Exit code 0: done. 1: the sides file has an error. 2: usage or files. 3: a page is not genuine."
)]
pub(crate) struct CommandLine {
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Areas both ways, and the gap to each published figure step by step
    Reconcile(reconcile::Options),
    /// Errors and warnings only: does every outline close, does nothing overlap
    Check(check::Options),
    /// The areas alone, per space and in total
    Area(area::Options),
    /// Write the pages (exhibit, calculations, source) as PDF, SVG or PNG
    #[command(alias = "sheet")]
    Pages(pages::Options),
    /// Check that a page is exactly what fairfoot makes from the sides file inside it
    Verify(verify::Options),
    /// Compute many houses: one row per figure, and which need a second look
    Batch(batch::Options),
    /// The canonical form of a sides file, comments kept
    Tidy(tidy::Options),
    /// A building's outline from a map, as a block for the sides file
    Outline(outline::Options),
    /// Write a commented file to start from; never over an existing one
    New(new::Options),
    /// Print the completions for a shell
    Completions(shells::Options),
    /// Print the man page
    Manual,
    /// Version, what the figures are not, and the licenses of all libraries inside
    About(about::Options),
}

/// Options for rounding and for tape readings.
#[derive(Debug, Args)]
pub(crate) struct RoundingOptions {
    /// Where a side exactly halfway between two rounding units goes; offices differ
    #[arg(long, alias = "ties", value_enum, default_value_t = Halves::Up, value_name = "WAY")]
    halves: Halves,
    /// What the finer rule rounds each side to
    #[arg(long, value_enum, default_value_t = FineStep::TenthFoot, value_name = "STEP")]
    step: FineStep,
    /// How well an office reads its tape: walls this near to half a foot may round either way
    #[arg(long, alias = "reach", default_value = "0.15'", value_name = "LENGTH", value_parser = reading, allow_hyphen_values = true)]
    reading: Length,
}

/// Parses a tape reading error of at most half a foot; beyond that, every wall could be rounded up or down.
fn reading(text: &str) -> Result<Length, String> {
    let mut digits = text.chars().filter(char::is_ascii_digit).peekable();
    if digits.peek().is_some() && digits.all(|digit| digit == '0') {
        return Ok(Length::ZERO);
    }
    let length: Length = text.parse().map_err(|error: fairfoot::Error| error.to_string())?;
    if length > Step::HalfFoot.length() {
        return Err("it is at most half a foot: `0.15'` or `2\"`".to_owned());
    }
    Ok(length)
}

impl RoundingOptions {
    pub(crate) fn settings(&self) -> Settings {
        Settings { halves: self.halves, fine: self.step, reading: self.reading }
    }
}

/// How a report is printed.
#[derive(Debug, Args)]
pub(crate) struct Printing {
    /// Columns of the report, from 30 to 100; the terminal's own width if there is one, or 80
    #[arg(long, value_name = "COLUMNS", value_parser = clap::value_parser!(u16).range(30..=100))]
    width: Option<u16>,
}

impl Printing {
    pub(crate) fn look(&self, why: bool) -> fairfoot::report::Look {
        fairfoot::report::Look {
            width: self.width.map_or_else(files::screen_width, usize::from),
            styled: files::stdout_is_styled(),
            why,
        }
    }
}

/// The only argument, if it is a file rather than a command.
fn file_in_place_of_a_command() -> Option<PathBuf> {
    let mut arguments = std::env::args_os().skip(1);
    let only = arguments.next().filter(|_| arguments.next().is_none())?;
    let is_command =
        <CommandLine as clap::CommandFactory>::command().find_subcommand(&only).is_some();
    let file = PathBuf::from(only);
    (!is_command && file.is_file()).then_some(file)
}

/// Runs the typed command.
pub(crate) fn run() -> Outcome {
    if let Some(file) = file_in_place_of_a_command() {
        let name = files::visible(&file.display().to_string());
        files::say(&format!("error: a command comes first: `fairfoot reconcile {name}`"));
        return Outcome::Usage;
    }
    let line = match CommandLine::try_parse() {
        Ok(line) => line,
        Err(error) => {
            // Help and version are not errors, nor is a closed pipe.
            let outcome = if error.use_stderr() { Outcome::Usage } else { Outcome::Done };
            let _ = error.print();
            return outcome;
        }
    };
    let outcome = match line.command {
        Command::Reconcile(options) => reconcile::run(&options),
        Command::Check(options) => check::run(&options),
        Command::Area(options) => area::run(&options),
        Command::Pages(options) => pages::run(&options),
        Command::Verify(options) => verify::run(&options),
        Command::Batch(options) => batch::run(&options),
        Command::Tidy(options) => tidy::run(&options),
        Command::Outline(options) => outline::run(&options),
        Command::New(options) => new::run(&options),
        Command::Completions(options) => shells::completions(&options),
        Command::Manual => shells::manual(),
        Command::About(options) => about::run(&options),
    };
    outcome.unwrap_or_else(|stop| files::report(&stop))
}
