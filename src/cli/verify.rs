//! `fairfoot verify`: does every printed figure follow from the sides file inside the page.

use std::fmt::Write as _;
use std::path::PathBuf;

use clap::Args;
use fairfoot::verify::{self, MOST_SHEET_BYTES, Mismatch, Verification};
use serde::Serialize;

use crate::cli::reconcile::print_json;
use crate::cli::{Outcome, Stop, files};

#[derive(Debug, Args)]
pub(crate) struct Options {
    /// Pages in SVG or PDF that fairfoot made; `-` reads standard input
    #[arg(required = true, value_name = "SHEET")]
    sheets: Vec<PathBuf>,
    /// Print the sides file that is inside, and nothing else
    #[arg(long, conflicts_with = "json")]
    sides: bool,
    /// Print JSON instead of sentences
    #[arg(long)]
    json: bool,
}

/// One file in JSON.
#[derive(Debug, Serialize)]
struct SheetReport {
    file: String,
    holds: bool,
    unchanged: bool,
    version: String,
    sha256: String,
    pages: Vec<verify::PageCheck>,
    error: Option<String>,
}

pub(crate) fn run(options: &Options) -> Result<Outcome, Stop> {
    let mut outcome = Outcome::Done;
    let mut reports = Vec::new();
    for path in &options.sheets {
        let bytes = files::read_bytes(path, MOST_SHEET_BYTES, files::Wanted::Sheet)?;
        let verified = verify::sheet(&bytes);
        let holds = verified.as_ref().is_ok_and(Verification::holds);
        if !holds {
            outcome = outcome.max(Outcome::Fault);
        }
        let name = files::shown(path);
        match (&verified, options.json, options.sides) {
            (_, true, _) => reports.push(report(path.display().to_string(), verified)),
            (Ok(verified), _, true) => files::print(verified.sides())?,
            (Ok(verified), ..) => files::print(&files::in_lines(&told(&name, verified)))?,
            (Err(error), ..) => files::say(&format!("error: {name} cannot be verified: {error}")),
        }
    }
    if options.json {
        print_json(&reports)?;
    }
    Ok(outcome)
}

fn report(file: String, verified: Result<Verification, fairfoot::Error>) -> SheetReport {
    match verified {
        Ok(verified) => SheetReport {
            file,
            holds: verified.holds(),
            unchanged: verified.is_unchanged(),
            version: verified.version().to_owned(),
            sha256: verified.fingerprint(),
            pages: verified.checks().to_vec(),
            error: None,
        },
        Err(error) => SheetReport {
            file,
            holds: false,
            unchanged: false,
            version: String::new(),
            sha256: String::new(),
            pages: Vec::new(),
            error: Some(error.to_string()),
        },
    }
}

/// What came of one file, in sentences.
fn told(name: &str, verified: &Verification) -> String {
    let mut text = String::new();
    for check in verified.checks() {
        let page = format!("page {} of {}", check.number(), verified.pages());
        let title =
            if check.title().is_empty() { String::new() } else { format!(", {}", check.title()) };
        let mismatches = check.mismatches();
        let _ = if mismatches.is_empty() {
            writeln!(
                text,
                "{name}, {page}{title}: every printed text holds ({} texts, {} figures)",
                check.texts(),
                check.figures()
            )
        } else {
            let verb = if mismatches.len() == 1 { "does" } else { "do" };
            writeln!(
                text,
                "{name}, {page}{title}: {} of {} texts {verb} not hold",
                mismatches.len(),
                check.texts()
            )
        };
        text.push_str(&listed(mismatches));
    }
    text.push_str(&closing(verified));
    text
}

/// What does not hold, printed beside figured.
fn listed(mismatches: &[Mismatch]) -> String {
    const MOST: usize = 40;
    let mut text = String::new();
    for mismatch in mismatches.iter().take(MOST) {
        let or_nothing = |words: &str| {
            if words.is_empty() { "(nothing)".to_owned() } else { files::visible(words) }
        };
        let _ = if mismatch.is_moved {
            writeln!(text, "  stands elsewhere than it should: {}", or_nothing(&mismatch.printed))
        } else {
            writeln!(
                text,
                "  printed:             {}\n  follows from sides:  {}",
                or_nothing(&mismatch.printed),
                or_nothing(&mismatch.figured)
            )
        };
    }
    if mismatches.len() > MOST {
        let _ = writeln!(text, "  and {} more", mismatches.len() - MOST);
    }
    text
}

/// How it was made, and what that does not show.
fn closing(verified: &Verification) -> String {
    let now = env!("CARGO_PKG_VERSION");
    let mut text = String::new();
    if verified.is_unchanged() {
        text.push_str(
            "The file is byte for byte what fairfoot makes of the sides inside, its drawing too.\n",
        );
    } else {
        text.push_str("The file was saved again since it was made: its texts are compared, the lines of its drawing are not.\n");
    }
    if verified.version() != now {
        let version = files::visible(verified.version());
        let _ = writeln!(
            text,
            "It was made by fairfoot {version}; this is {now}, which may word things otherwise."
        );
    }
    let _ = writeln!(
        text,
        "Sides file inside: sha256 {}\nAll figures follow from these sides. That does not show that the sides are right.",
        verified.fingerprint()
    );
    text
}
