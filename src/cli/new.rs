//! `fairfoot new`: writes a file to start from.

use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};

use clap::Args;
use fairfoot::Paper;

use crate::cli::{Outcome, Stop, files, signals};

/// The starter: a plain house that works at once, with every line explained.
const STARTER: &str = include_str!("starter.sides");

#[derive(Debug, Args)]
pub(crate) struct Options {
    /// The name of the file; `.sides` is added if it has no ending; `-` prints it
    name: PathBuf,
    /// Write a form for pencil and clipboard instead: one page to print, as PDF, with the rows that are typed afterward
    #[arg(long)]
    printable: bool,
    /// The paper of the form
    #[arg(long, value_enum, default_value_t = Paper::Letter, value_name = "PAPER", requires = "printable")]
    paper: Paper,
}

pub(crate) fn run(options: &Options) -> Result<Outcome, Stop> {
    if options.name == Path::new("-") {
        if options.printable {
            return Err(Stop::Said(
                "give the form a name, as `fairfoot new form --printable`".to_owned(),
            ));
        }
        files::print(STARTER)?;
        return Ok(Outcome::Done);
    }
    let typed = options.name.as_os_str().to_string_lossy();
    if typed.trim_end_matches('.').is_empty()
        || typed.ends_with(['/', '\\'])
        || typed.ends_with("/.")
        || typed.ends_with("..")
    {
        return Err(Stop::Said(format!(
            "{} is not a file name; type one, as `fairfoot new my-house`",
            files::shown(&options.name)
        )));
    }
    let mut path = options.name.clone();
    let ending = path.extension().unwrap_or_default().to_string_lossy().into_owned();
    if ending.is_empty() || ending.contains(' ') {
        let name = path.as_os_str().to_string_lossy().trim_end_matches('.').to_owned();
        path = PathBuf::from(name + if options.printable { ".pdf" } else { ".sides" });
    }
    if options.printable {
        return form(options, &path);
    }
    create(&path, STARTER.as_bytes())?;
    let shown = path.display().to_string();
    files::print(&format!("{shown}\n"))?;
    let plain = |c: char| c.is_alphanumeric() || matches!(c, '.' | '-' | '_' | '/');
    let typed = if shown.chars().all(plain) { shown } else { format!("\"{shown}\"") };
    files::say(&format!(
        "now type the sides of your house into it, then: fairfoot reconcile {typed}"
    ));
    Ok(Outcome::Done)
}

/// Writes the printable form.
fn form(options: &Options, path: &Path) -> Result<Outcome, Stop> {
    if path.extension().is_none_or(|ending| !ending.eq_ignore_ascii_case("pdf")) {
        return Err(Stop::Said(format!(
            "{} does not end in `.pdf`; the form is a PDF",
            files::shown(path)
        )));
    }
    let form =
        fairfoot::pages::form(options.paper).map_err(|error| Stop::Said(error.to_string()))?;
    create(path, &form)?;
    files::print(&format!("{}\n", path.display()))?;
    files::say("print it at full size (100%)");
    Ok(Outcome::Done)
}

/// Writes a whole file or none, and never overwrites an existing one.
fn create(path: &Path, bytes: &[u8]) -> Result<(), Stop> {
    let cannot = |error: &std::io::Error| {
        let shown = files::shown(path);
        Stop::Said(match error.kind() {
            ErrorKind::AlreadyExists => {
                format!("{shown} exists already and stays as it is; choose another name")
            }
            ErrorKind::NotFound => {
                format!("there is no folder for {shown}; make it first, or choose another name")
            }
            _ => format!("{shown} cannot be written: {error}"),
        })
    };
    let folder =
        path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut file = signals::unfinished(|| files::like_any_new_file().tempfile_in(folder))
        .map_err(|error| cannot(&error))?;
    let temporary = file.path().to_owned();
    file.write_all(bytes).map_err(|error| cannot(&error))?;
    let put = file.persist_noclobber(path).map_err(|error| cannot(&error.error));
    signals::finished(&temporary);
    put.map(|_| ())
}
