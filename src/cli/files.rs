//! All access to files and standard streams. Errors are reported in full sentences.

use std::fs::File;
use std::io::{self, ErrorKind, IsTerminal, Read, Write};
use std::path::{Path, PathBuf};

use anstream::{AutoStream, ColorChoice};
use fairfoot::pages::MOST_FILE_BYTES;
use fairfoot::sketch::MOST_BYTES;
use fairfoot::{Areas, Diagnostic, Diagnostics, House, Source};

use crate::cli::{Outcome, Stop, signals};

/// Reads the text of a sides file; `-` is standard input.
pub(crate) fn read_source(path: &Path) -> Result<Source, Stop> {
    read_text(path, Wanted::Sides)
}

/// Reads a text, of at most as many bytes as a sides file.
pub(crate) fn read_text(path: &Path, wanted: Wanted) -> Result<Source, Stop> {
    if wanted == Wanted::Sides && path == Path::new("-") && io::stdin().is_terminal() {
        say("reading the sides from the keyboard; end with Ctrl-D on a line of its own");
    }
    let mut bytes = read_bytes(path, MOST_BYTES, wanted)?;
    if bytes.len() > MOST_BYTES {
        // Cut at the end of a character, so that the only error is about the size.
        while bytes.last().is_some_and(|byte| byte & 0xc0 == 0x80) {
            bytes.pop();
        }
    }
    let name = match path == Path::new("-") {
        true => "standard input".to_owned(),
        false => path.display().to_string(),
    };
    Ok(fairfoot::decode(name, bytes)?)
}

/// What is being read, for the message if it does not exist.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Wanted {
    /// A sides file.
    Sides,
    /// A page, as SVG or PDF.
    Pages,
    /// A map.
    Map,
    /// A file of weights.
    Weights,
}

/// The bytes of a file or of standard input; at most one byte more than `most`.
pub(crate) fn read_bytes(path: &Path, most: usize, wanted: Wanted) -> Result<Vec<u8>, Stop> {
    let limit = u64::try_from(most).unwrap_or(u64::MAX).saturating_add(1);
    let mut bytes = Vec::new();
    let read = if path == Path::new("-") {
        io::stdin().lock().take(limit).read_to_end(&mut bytes)
    } else {
        File::open(path).and_then(|file| file.take(limit).read_to_end(&mut bytes))
    };
    read.map_err(|error| Stop::Said(cannot_read(path, &error, wanted)))?;
    Ok(bytes)
}

/// Reads the bytes of a picture, or returns the reason why it cannot. Links, pipes and devices are refused, so that a
/// sides file from someone else cannot pull in files from elsewhere.
pub(crate) fn read_picture(path: &Path) -> Result<Vec<u8>, String> {
    let kind = match std::fs::symlink_metadata(path) {
        Ok(there) => there.file_type(),
        Err(error) if error.kind() == ErrorKind::NotFound => {
            return Err("is not beside the sides file".to_owned());
        }
        Err(error) => return Err(format!("cannot be read: {error}")),
    };
    if !kind.is_file() {
        let what = if kind.is_dir() {
            "a folder"
        } else if kind.is_symlink() {
            "a link to somewhere else"
        } else {
            "no file"
        };
        return Err(format!("is {what}"));
    }
    let limit = u64::try_from(MOST_FILE_BYTES).unwrap_or(u64::MAX).saturating_add(1);
    let mut bytes = Vec::new();
    File::open(path)
        .and_then(|file| file.take(limit).read_to_end(&mut bytes))
        .map_err(|error| format!("cannot be read: {error}"))?;
    Ok(bytes)
}

/// Reads and checks a sides file.
pub(crate) fn read_house(path: &Path) -> Result<House, Stop> {
    Ok(fairfoot::read_source(read_source(path)?)?)
}

fn cannot_read(path: &Path, error: &io::Error, wanted: Wanted) -> String {
    let shown = shown(path);
    match error.kind() {
        ErrorKind::NotFound if wanted == Wanted::Pages => {
            format!("there is no file {shown}; give pages that fairfoot wrote, as PDF or SVG")
        }
        ErrorKind::NotFound if wanted == Wanted::Map => {
            format!(
                "there is no file {shown}; give a map that was saved as GeoJSON, KML, GPX, WKT or OSM XML"
            )
        }
        ErrorKind::NotFound if wanted == Wanted::Weights => {
            format!(
                "there is no file {shown}; give a JSON file of weights, or leave out `--weights`"
            )
        }
        ErrorKind::IsADirectory if wanted == Wanted::Weights => {
            format!("{shown} is a folder; give a JSON file of weights")
        }
        ErrorKind::IsADirectory if wanted == Wanted::Pages => {
            format!("{shown} is a folder; give a page in it, as PDF or SVG")
        }
        ErrorKind::NotFound => match beside(path) {
            Some(near) => format!("there is no file {shown}; did you mean `{}`?", near.display()),
            None => format!(
                "there is no file {shown}; `fairfoot new my-house` writes one to start from"
            ),
        },
        ErrorKind::IsADirectory => format!("{shown} is a folder; give the sides file in it"),
        ErrorKind::PermissionDenied => format!("{shown} may not be read; look at its permissions"),
        _ => format!("{shown} cannot be read: {error}"),
    }
}

/// The file of the same name with `.sides` added, if it exists.
fn beside(path: &Path) -> Option<PathBuf> {
    let mut name = path.as_os_str().to_owned();
    name.push(".sides");
    let near = PathBuf::from(name);
    near.is_file().then_some(near)
}

/// A path in backticks, with hidden characters escaped.
pub(crate) fn shown(path: &Path) -> String {
    format!("`{}`", visible(&path.display().to_string()))
}

/// A text with hidden characters escaped.
pub(crate) fn visible(words: &str) -> String {
    fairfoot::diagnostic::escaped(words)
}

/// Writes all of `text` to standard output.
pub(crate) fn print(text: &str) -> Result<(), Stop> {
    let mut out = io::stdout().lock();
    out.write_all(text.as_bytes()).and_then(|()| out.flush()).map_err(|error| match error.kind() {
        ErrorKind::BrokenPipe => Stop::PipeClosed,
        _ => Stop::Said(format!("the result cannot be written: {error}")),
    })
}

/// Replaces an existing file completely or not at all, through a temporary file beside it and a rename.
pub(crate) fn write_whole(path: &Path, text: &str) -> Result<(), Stop> {
    write_new(path, text.as_bytes())
}

/// Stops if an output would overwrite a file that is read in the same run.
pub(crate) fn refuse_overwriting_inputs(outputs: &[PathBuf], inputs: &[&Path]) -> Result<(), Stop> {
    let clash = outputs.iter().find(|out| inputs.iter().any(|input| is_same_file(out, input)));
    match clash {
        Some(out) => Err(Stop::Said(format!(
            "{} is read in this run and would be lost; give the output another name",
            shown(out)
        ))),
        None => Ok(()),
    }
}

/// Whether two paths lead to the same file, even through links.
fn is_same_file(one: &Path, other: &Path) -> bool {
    let (Ok(a), Ok(b)) = (std::fs::metadata(one), std::fs::metadata(other)) else { return false };
    #[cfg(unix)]
    {
        use std::os::unix::fs::MetadataExt;
        if (a.dev(), a.ino()) == (b.dev(), b.ino()) {
            return a.is_file();
        }
    }
    let same_path =
        one.canonicalize().ok().filter(|path| Some(path) == other.canonicalize().ok().as_ref());
    a.is_file() && b.is_file() && same_path.is_some()
}

/// Writes a set of files under temporary names, and moves them into place only when all are complete.
pub(crate) fn write_set(paths: &[PathBuf], contents: &[Vec<u8>]) -> Result<(), Stop> {
    if let ([path], [bytes]) = (paths, contents) {
        return write_new(path, bytes);
    }
    let mut ready = Vec::with_capacity(paths.len());
    for (path, bytes) in paths.iter().zip(contents) {
        let mut file = opened_beside(path)?;
        file.write_all(bytes).map_err(|error| cannot_write(path, &error))?;
        file.as_file().sync_all().map_err(|error| cannot_write(path, &error))?;
        ready.push((file, path));
    }
    ready.into_iter().try_for_each(|(file, path)| put_in_place(file, path))
}

/// Writes a file, new or replacing another, completely or not at all.
pub(crate) fn write_new(path: &Path, bytes: &[u8]) -> Result<(), Stop> {
    let is_special = std::fs::metadata(path).is_ok_and(|there| !there.is_file() && !there.is_dir());
    if is_special {
        // A pipe or device is written to directly.
        return std::fs::write(path, bytes).map_err(|error| cannot_write(path, &error));
    }
    let mut file = opened_beside(path)?;
    file.write_all(bytes).map_err(|error| cannot_write(path, &error))?;
    put_in_place(file, path)
}

fn cannot_write(path: &Path, error: &io::Error) -> Stop {
    let why = match error.kind() {
        ErrorKind::NotFound => "there is no such folder".to_owned(),
        _ => error.to_string(),
    };
    let stays = if path.is_file() { "; it is as it was" } else { "" };
    Stop::Said(format!("{} cannot be written: {why}{stays}", shown(path)))
}

/// Opens a temporary file beside the one to be written; if that is a link, beside its target.
pub(crate) fn opened_beside(path: &Path) -> Result<tempfile::NamedTempFile, Stop> {
    if path.is_dir() {
        return Err(Stop::Said(format!("{} is a folder; give a file in it", shown(path))));
    }
    let target = path.canonicalize().unwrap_or_else(|_| path.to_owned());
    let permissions = std::fs::metadata(&target).ok().map(|there| there.permissions());
    if permissions.as_ref().is_some_and(std::fs::Permissions::readonly) {
        return Err(Stop::Said(format!("{} may not be written; it is as it was", shown(path))));
    }
    let folder = target.parent().filter(|folder| !folder.as_os_str().is_empty());
    let folder = folder.unwrap_or(Path::new("."));
    let file = signals::unfinished(|| like_any_new_file().tempfile_in(folder))
        .map_err(|error| cannot_write(path, &error))?;
    if let Some(permissions) = permissions {
        file.as_file().set_permissions(permissions).map_err(|error| cannot_write(path, &error))?;
    }
    Ok(file)
}

/// Moves a finished temporary file into place.
pub(crate) fn put_in_place(file: tempfile::NamedTempFile, path: &Path) -> Result<(), Stop> {
    let target = path.canonicalize().unwrap_or_else(|_| path.to_owned());
    file.as_file().sync_all().map_err(|error| cannot_write(path, &error))?;
    let temporary = file.path().to_owned();
    let put = file.persist(&target).map_err(|error| cannot_write(path, &error.error));
    signals::finished(&temporary);
    put.map(|_| ())
}

/// A temporary file with the permissions of an ordinary new file.
pub(crate) fn like_any_new_file() -> tempfile::Builder<'static, 'static> {
    let mut builder = tempfile::Builder::new();
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        builder.permissions(std::fs::Permissions::from_mode(0o666));
    }
    builder
}

/// Prints a message to standard error.
pub(crate) fn say(text: &str) {
    let mut err = AutoStream::auto(io::stderr());
    let _ = writeln!(err, "{text}");
}

/// Draws errors and warnings on standard error.
pub(crate) fn draw(source: &Source, diagnostics: &[Diagnostic]) {
    let styled = AutoStream::choice(&io::stderr()) != ColorChoice::Never;
    let columns = width_of(io::stderr().is_terminal());
    let drawn = fairfoot::diagnostic::draw_within(source, diagnostics, styled, columns);
    let _ = io::stderr().lock().write_all(drawn.as_bytes());
}

/// Draws the warnings of a house and its areas on standard error.
pub(crate) fn draw_warnings(areas: &Areas) {
    let mut warnings = areas.house().warnings().to_vec();
    warnings.extend_from_slice(areas.warnings());
    draw(areas.house().source(), &warnings);
}

/// Reports why a command stopped, and returns the outcome for the exit code.
pub(crate) fn report(stop: &Stop) -> Outcome {
    match stop {
        Stop::PipeClosed => Outcome::Done,
        Stop::Said(text) => {
            say(&format!("error: {text}"));
            Outcome::Usage
        }
        Stop::Diagnostics(faults) => {
            draw(faults.source(), faults.list());
            say(&format!(
                "{}: {}; no areas were worked out",
                faults.source().name(),
                errors_of(faults)
            ));
            Outcome::Fault
        }
        Stop::Pictures(faults) => {
            draw(faults.source(), faults.list());
            say(&format!(
                "{}: {}; no pages were written",
                faults.source().name(),
                errors_of(faults)
            ));
            Outcome::Fault
        }
    }
}

/// The number of errors in words: `2 errors`.
fn errors_of(faults: &Diagnostics) -> String {
    let kept = faults.list().iter().filter(|error| error.is_error()).count();
    let errors = kept + faults.more();
    format!("{errors} {}", if errors == 1 { "error" } else { "errors" })
}

/// Text for people: wrapped on a terminal, else unchanged.
pub(crate) fn in_lines(text: &str) -> String {
    if !io::stdout().is_terminal() {
        return text.to_owned();
    }
    let filled = |line: &str| textwrap::fill(line, screen_width()) + "\n";
    text.lines().map(filled).collect()
}

/// The width in columns of the terminal on standard output, or 80 if it is not one.
pub(crate) fn screen_width() -> usize {
    width_of(io::stdout().is_terminal())
}

fn width_of(is_terminal: bool) -> usize {
    if !is_terminal {
        return 80;
    }
    terminal_size::terminal_size().map_or(80, |(width, _)| usize::from(width.0))
}

/// Whether standard output is a terminal that supports bold type.
pub(crate) fn stdout_is_styled() -> bool {
    AutoStream::choice(&io::stdout()) != ColorChoice::Never
}
