//! `fairfoot verify`: checks whether a file of pages is, byte for byte, what the program makes of the sides file
//! inside.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use clap::Args;
use fairfoot::verify::{self, Difference, MOST_PAGE_BYTES, Verification, Why};
use serde::Serialize;

use crate::cli::reconcile::print_json;
use crate::cli::{Outcome, RoundingOptions, Stop, files, pages};

/// The word in JSON for a file whose pages cannot be regenerated.
const CANNOT_BE_REMADE: &str = "cannot-be-remade";

#[derive(Debug, Args)]
pub(crate) struct Options {
    /// Pages in SVG or PDF that fairfoot made; with `--print`, sides files; `-` reads standard input
    #[arg(required = true, value_name = "PAGES")]
    files: Vec<PathBuf>,
    /// Write the true pages of the sides file inside to OUT: `.pdf`, `.svg` or `.png`
    #[arg(long, value_name = "OUT", conflicts_with_all = ["sides", "json", "print"])]
    remake: Option<PathBuf>,
    /// Print the sides file that is inside, and nothing else
    #[arg(long, conflicts_with_all = ["json", "print"])]
    sides: bool,
    /// Print the fingerprint that pages of these sides files have on their foot
    #[arg(long, conflicts_with = "json")]
    print: bool,
    /// Print JSON instead of sentences
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    rounding: RoundingOptions,
}

/// The result for one file in JSON.
#[derive(Debug, Default, Serialize)]
struct FileReport {
    file: String,
    genuine: bool,
    /// A stable word: `genuine`, `other-version`, `line-ends`, `added-after`, `differs`, `cannot-be-remade`.
    why: &'static str,
    /// The answer as a sentence.
    message: String,
    page: Option<usize>,
    pages: Option<usize>,
    version: Option<String>,
    fingerprint: Option<String>,
    sha256: Option<String>,
    differences: Vec<Difference>,
}

pub(crate) fn run(options: &Options) -> Result<Outcome, Stop> {
    if options.print {
        return print(options);
    }
    if let Some(out) = &options.remake {
        pages::check_ending(out)?;
        if options.files.len() > 1 {
            return Err(Stop::Said("`--remake` takes one file of pages at a time".to_owned()));
        }
    }
    let mut outcome = Outcome::Done;
    let mut reports = Vec::new();
    let mut first: Option<(String, Verification)> = None;
    for path in &options.files {
        let bytes = match files::read_bytes(path, MOST_PAGE_BYTES, files::Wanted::Pages) {
            Ok(bytes) => bytes,
            // The other files are still verified.
            Err(Stop::Said(why)) => {
                files::say(&format!("error: {why}"));
                outcome = outcome.max(Outcome::Usage);
                continue;
            }
            Err(stop) => return Err(stop),
        };
        let answer = verify::file(&bytes);
        if !answer.as_ref().is_ok_and(Verification::is_genuine) {
            outcome = outcome.max(Outcome::NotGenuine);
        }
        if !options.json {
            print_answer(options, path, &answer)?;
        }
        match (&first, answer.as_ref().ok().filter(|page| page.is_genuine())) {
            (Some((name, of_set)), Some(page)) if of_another_set(of_set, page) => {
                files::say(&format!(
                    "{}: genuine, but not of one set with `{name}`: the photographs that the two name differ",
                    files::shown(path)
                ));
                outcome = outcome.max(Outcome::NotGenuine);
            }
            (None, Some(page)) => {
                first = Some((files::visible(&path.display().to_string()), page.clone()));
            }
            _ => {}
        }
        if options.json {
            reports.push(report(path.display().to_string(), answer));
        }
    }
    if options.json {
        print_json(&reports)?;
    }
    Ok(outcome)
}

/// Whether two pages are made of the same sides in the same way, and yet name different photographs.
fn of_another_set(one: &Verification, other: &Verification) -> bool {
    let same_house = one.sides() == other.sides()
        && one.pages().fingerprint() == other.pages().fingerprint()
        && one.pages().pages().len() == other.pages().pages().len();
    same_house && one.photographs() != other.photographs()
}

/// Prints the fingerprint of each sides file, as on the foot of its pages.
fn print(options: &Options) -> Result<Outcome, Stop> {
    let settings = options.rounding.settings();
    for path in &options.files {
        let house = files::read_house(path)?;
        let print = fairfoot::pages::fingerprint(house.source().text(), &settings);
        let name = files::visible(house.source().name());
        files::print(&format!("{print}  {name}\n"))?;
    }
    Ok(Outcome::Done)
}

/// Prints the result for one file, or what was asked for instead.
fn print_answer(
    options: &Options,
    path: &Path,
    answer: &Result<Verification, fairfoot::Error>,
) -> Result<(), Stop> {
    let name = files::shown(path);
    let text = match answer {
        Ok(verified) => sentences(&name, verified, options.remake.is_none()),
        // Nothing speaks against a picture, and nothing for it.
        Err(why @ fairfoot::Error::Picture { .. }) => {
            let why = why.to_string();
            let (why, help) = why.split_once("; ").unwrap_or((&why, ""));
            format!("{name}: cannot be checked: {why}\n  {help}\n")
        }
        Err(why) => format!("{name}: {}\n  {why}\n", not_as_made(None)),
    };
    if !options.sides {
        files::print(&files::in_lines(&text))?;
    }
    match (answer, &options.remake) {
        (Ok(verified), _) if options.sides => {
            if !verified.is_genuine() {
                files::say(&format!("{name}: {}", not_as_made(verified.page())));
            }
            files::print(verified.sides())
        }
        (Ok(verified), Some(out)) => pages::write_pages(verified.pages(), out, &[path]).map(|_| ()),
        (Err(why), _) if options.sides => {
            files::say(&format!("error: {name}: {why}"));
            Ok(())
        }
        _ => Ok(()),
    }
}

/// How a negative answer begins.
fn not_as_made(page: Option<usize>) -> &'static str {
    match page {
        Some(_) => "not as made: nothing printed on this page can be relied on",
        None => "not as made: nothing printed on these pages can be relied on",
    }
}

/// The result for one file, in sentences.
fn sentences(name: &str, verified: &Verification, offers_to_remake: bool) -> String {
    let (print, pages) = (verified.pages().fingerprint(), verified.pages().pages().len());
    let which = match verified.page() {
        _ if verified.pages().is_draft() => "a draft".to_owned(),
        Some(page) => format!("page {page} of {pages}"),
        None if pages == 1 => "1 page".to_owned(),
        None => format!("{pages} pages"),
    };
    let mut text = String::new();
    let _ = if verified.is_genuine() {
        writeln!(text, "{name}: genuine\n  {}; fingerprint {print}, {which}", reason(verified))
    } else {
        writeln!(text, "{name}: {}\n  {}", not_as_made(verified.page()), reason(verified))
    };
    text.push_str(&differing(verified.why()));
    let unusual = verified.pages().unusual_settings();
    if !unusual.is_empty() {
        let _ = writeln!(text, "  made with settings other than the usual: {}", unusual.join("; "));
    }
    let _ = writeln!(text, "  sides file inside: sha256 {}", verified.sha256());
    if verified.is_genuine() && verified.photographs_elsewhere() > 0 {
        text.push_str(
            "  Photographs on other pages of the set are not in this file: verify all pages of the set together.\n",
        );
    }
    if verified.is_genuine() && verified.pages().is_draft() {
        text.push_str("  It shows a walk as it was typed, and no area.\n");
    } else if verified.is_genuine() {
        text.push_str(
            "  Every figure follows from these sides. That does not show that the sides are right.\n",
        );
    } else if offers_to_remake {
        let _ = writeln!(
            text,
            "  The true pages of the sides file inside have the fingerprint {print}; `--remake true.pdf` writes them."
        );
    }
    text
}

/// The reason for the answer, in a sentence.
fn reason(verified: &Verification) -> String {
    let now = env!("CARGO_PKG_VERSION");
    match verified.why() {
        Why::Genuine => format!("byte for byte what fairfoot {now} makes of the sides file inside"),
        Why::OtherVersion(version) if version.is_empty() => {
            "it does not say which version of fairfoot made it".to_owned()
        }
        Why::OtherVersion(version) => format!(
            "it says that fairfoot {} made it, and only that version can say whether it did; this is {now}",
            files::visible(version)
        ),
        Why::LineEnds => {
            "only its line ends differ: mail changes them in a file that is sent as text; ask for it again, packed in a zip file".to_owned()
        }
        Why::Added(1) => "the true file is whole, and 1 byte was added after its end".to_owned(),
        Why::Added(added) => format!(
            "the true file is whole, and {} bytes were added after its end: another program saved something more into it",
            thousands(*added)
        ),
        Why::Differs { all: 0, .. } => {
            "it is not byte for byte what fairfoot makes of the sides file inside".to_owned()
        }
        Why::Differs { all: 1, .. } => {
            "1 line differs from what fairfoot makes of the sides file inside".to_owned()
        }
        Why::Differs { all, .. } => format!(
            "{} lines differ from what fairfoot makes of the sides file inside",
            thousands(*all)
        ),
        _ => verified.why().word().to_owned(),
    }
}

fn thousands(count: usize) -> String {
    fairfoot::units::thousands(i64::try_from(count).unwrap_or(i64::MAX))
}

/// The lines that differ, as lines of help.
fn differing(why: &Why) -> String {
    let Why::Differs { lines, all } = why else { return String::new() };
    let mut text = String::new();
    for Difference { line, found, made } in lines {
        let or_nothing = |words: &str| match words.trim() {
            "" => "(nothing)".to_owned(),
            words => files::visible(words),
        };
        let _ = writeln!(
            text,
            "  line {line}\n    in this file:     {}\n    fairfoot writes:  {}",
            or_nothing(found),
            or_nothing(made)
        );
    }
    if *all > lines.len() {
        let _ = writeln!(text, "  and {} more", thousands(all - lines.len()));
    }
    text
}

fn report(file: String, answer: Result<Verification, fairfoot::Error>) -> FileReport {
    let verified = match answer {
        Ok(verified) => verified,
        Err(error) => {
            return FileReport {
                file,
                why: CANNOT_BE_REMADE,
                message: error.to_string(),
                ..FileReport::default()
            };
        }
    };
    let differences = match verified.why() {
        Why::Differs { lines, .. } => lines.clone(),
        _ => Vec::new(),
    };
    FileReport {
        file,
        genuine: verified.is_genuine(),
        why: verified.why().word(),
        message: reason(&verified),
        page: verified.page(),
        pages: Some(verified.pages().pages().len()),
        version: Some(verified.version().to_owned()),
        fingerprint: Some(verified.pages().fingerprint()),
        sha256: Some(verified.sha256()),
        differences,
    }
}
