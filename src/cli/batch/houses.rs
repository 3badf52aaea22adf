//! Where the houses come from: files, folders, tables of figures, or a stream of JSON lines.

use std::fs::{self, File};
use std::io::{self, BufRead, BufReader, Read};
use std::path::{Path, PathBuf};

use fairfoot::batch::{Input, MOST_LINE, TableFigure};
use fairfoot::sketch::MOST_BYTES;
use strum::VariantArray as _;

use crate::cli::{Stop, files};

/// One house waiting to be computed.
#[derive(Debug)]
pub(super) enum Waiting {
    /// A sides file to read.
    File(PathBuf),
    /// A line of JSON.
    Line(Vec<u8>),
    /// A row of a table.
    Row(String, Input),
}

/// The houses in order, each with a flag that says that the next one may take long to arrive.
pub(super) type List = Box<dyn Iterator<Item = (Waiting, bool)> + Send>;

/// The houses, and their number if it is known.
pub(super) struct Houses {
    pub(super) list: List,
    pub(super) known: Option<u64>,
}

/// The houses of all paths. Folders are searched, with their files in the order of their names.
pub(super) fn of(paths: &[PathBuf]) -> Result<Houses, Stop> {
    if paths == [PathBuf::from("-")] {
        if io::IsTerminal::is_terminal(&io::stdin()) {
            files::say("reading houses from the keyboard, one line of JSON each; end with Ctrl-D");
        }
        return Ok(Houses { list: Box::new(Lines::new(io::stdin())), known: None });
    }
    let mut list = Vec::new();
    for path in paths {
        add(path, &mut list)?;
    }
    let known = u64::try_from(list.len()).ok();
    Ok(Houses { list: Box::new(list.into_iter().map(|waiting| (waiting, false))), known })
}

fn add(path: &Path, list: &mut Vec<Waiting>) -> Result<(), Stop> {
    let said =
        |error: &io::Error| Stop::Said(format!("{} cannot be read: {error}", files::shown(path)));
    let kind = fs::metadata(path).map_err(|error| said(&error))?;
    if !kind.is_dir() {
        let is_table = path.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("csv"));
        if is_table {
            return table(path, list);
        }
        list.push(Waiting::File(path.to_owned()));
        return Ok(());
    }
    let entries = fs::read_dir(path).map_err(|error| said(&error))?;
    let mut inside: Vec<PathBuf> =
        entries.filter_map(Result::ok).map(|entry| entry.path()).collect();
    inside.sort();
    for path in inside {
        let is_sides = path.extension().is_some_and(|ending| ending == "sides");
        // A link to a folder is not followed, since it may lead back.
        let is_folder = fs::symlink_metadata(&path).is_ok_and(|kind| kind.is_dir());
        if is_folder {
            add(&path, list)?;
        } else if is_sides && is_special(&path) {
            files::say(&format!(
                "{} is a pipe or a device and no file; it is left out",
                files::shown(&path)
            ));
        } else if is_sides {
            list.push(Waiting::File(path));
        }
    }
    Ok(())
}

/// Whether a path is a pipe, a device or the like, which may never end.
fn is_special(path: &Path) -> bool {
    fs::metadata(path).is_ok_and(|kind| !kind.is_file() && !kind.is_dir())
}

/// Adds the rows of a table of figures: `id`, `record`, `listing`, `plan`, and `sides` for a sides file beside it.
fn table(path: &Path, list: &mut Vec<Waiting>) -> Result<(), Stop> {
    let said = |what: String| Stop::Said(format!("{}: {what}", files::shown(path)));
    let mut reader = csv::ReaderBuilder::new()
        .trim(csv::Trim::All)
        .flexible(true)
        .from_path(path)
        .map_err(|error| said(error.to_string()))?;
    let heads = reader.headers().map_err(|error| said(error.to_string()))?.clone();
    let column = |name: &str| heads.iter().position(|head| head.eq_ignore_ascii_case(name));
    let is_read = |head: &str| {
        let mut read =
            TableFigure::VARIANTS.iter().map(|figure| figure.word()).chain(["id", "sides"]);
        read.any(|name| head.eq_ignore_ascii_case(name))
    };
    let again = |(i, head): &(usize, &str)| {
        is_read(head) && heads.iter().take(*i).any(|before| before.eq_ignore_ascii_case(head))
    };
    if let Some((_, head)) = heads.iter().enumerate().find(again) {
        return Err(said(format!("two columns are named `{}`; keep one", files::visible(head))));
    }
    let Some(id) = column("id") else {
        return Err(said(
            "its first line names the columns: `id,record,listing,plan,sides`".to_owned(),
        ));
    };
    let figures: Columns =
        TableFigure::VARIANTS.iter().map(|&figure| (figure, column(figure.word()))).collect();
    for (i, record) in reader.records().enumerate() {
        let number = format!("row {}", i + 2);
        let record = match record {
            Ok(record) if record.iter().any(|cell| cell.contains('\n')) => {
                let why = format!(
                    "a quotation mark that begins in line {} of the table is not closed in that line; close it, or take it out",
                    record.position().map_or(0, csv::Position::line)
                );
                list.push(Waiting::Row(number, Input::Unreadable(why)));
                continue;
            }
            Ok(record) => record,
            Err(error) => {
                list.push(Waiting::Row(number, Input::Unreadable(error.to_string())));
                continue;
            }
        };
        let name = record.get(id).filter(|id| !id.is_empty()).map_or(number, str::to_owned);
        let sides = column("sides").and_then(|at| record.get(at)).filter(|path| !path.is_empty());
        if let Some(sides) = sides {
            let beside = path.parent().unwrap_or(Path::new("")).join(sides);
            list.push(Waiting::Row(name, sides_with(&beside, read_figures(&figures, &record))));
            continue;
        }
        let given = match read_figures(&figures, &record) {
            Ok(figures) if figures.is_empty() => {
                Input::Unreadable("the row has no figure".to_owned())
            }
            Ok(figures) => Input::Figures(figures),
            Err(why) => Input::Unreadable(why),
        };
        list.push(Waiting::Row(name, given));
    }
    Ok(())
}

/// Each kind of figure with its column, if the table has one.
type Columns = Vec<(TableFigure, Option<usize>)>;

type Figures = Result<Vec<(TableFigure, i64)>, String>;

fn read_figures(columns: &Columns, record: &csv::StringRecord) -> Figures {
    let mut found = Vec::new();
    for (figure, at) in columns {
        let Some(text) = at.and_then(|at| record.get(at)).filter(|text| !text.is_empty()) else {
            continue;
        };
        let digits = text.replace(',', "");
        let digits = digits.trim_end_matches("sq ft").trim();
        match digits.parse::<i64>() {
            Ok(number) if number > 0 && number <= 1_000_000_000 => found.push((*figure, number)),
            _ => return Err(format!("`{text}` is not a {} in whole square feet", figure.word())),
        }
    }
    Ok(found)
}

/// A sides file, with the figures of its row replacing its own.
fn sides_with(path: &Path, figures: Figures) -> Input {
    match (figures, read(path)) {
        (Err(why), _) | (_, Err(why)) => Input::Unreadable(why),
        (Ok(figures), Ok(text)) => Input::SidesAndFigures(text, figures),
    }
}

/// The text of a sides file, or why it cannot be read.
fn read(path: &Path) -> Result<String, String> {
    let limit = u64::try_from(MOST_BYTES).unwrap_or(u64::MAX);
    let mut bytes = Vec::new();
    File::open(path)
        .and_then(|file| file.take(limit + 1).read_to_end(&mut bytes))
        .map_err(|error| format!("{} cannot be read: {error}", files::shown(path)))?;
    if bytes.len() > MOST_BYTES {
        return Err(format!("{} has more than 1 MB", files::shown(path)));
    }
    String::from_utf8(bytes).map_err(|_| format!("{} is not text in UTF-8", files::shown(path)))
}

impl Waiting {
    /// How many bytes of memory it takes while it waits.
    pub(super) fn bytes(&self) -> usize {
        match self {
            Waiting::Line(bytes) => bytes.len(),
            Waiting::Row(_, Input::Sides(text) | Input::SidesAndFigures(text, _)) => text.len(),
            _ => 64,
        }
    }

    /// Its id, and its input.
    pub(super) fn given(self) -> (String, Input) {
        match self {
            Waiting::Row(id, given) => (id, given),
            Waiting::File(path) => {
                let given = read(&path).map_or_else(Input::Unreadable, Input::Sides);
                (path.display().to_string(), given)
            }
            Waiting::Line(bytes) => Input::line(&bytes),
        }
    }
}

/// The lines of a stream, without empty ones. If a line is too long, only its beginning is kept.
struct Lines<R> {
    reader: BufReader<R>,
    is_first: bool,
}

impl<R: Read> Lines<R> {
    fn new(reader: R) -> Lines<R> {
        Lines { reader: BufReader::with_capacity(1 << 18, reader), is_first: true }
    }

    /// Reads to the end of a line that is too long.
    fn skip_rest(&mut self) -> io::Result<()> {
        loop {
            let buffer = self.reader.fill_buf()?;
            if buffer.is_empty() {
                return Ok(());
            }
            let end = buffer.iter().position(|&byte| byte == b'\n');
            let used = end.map_or(buffer.len(), |end| end + 1);
            self.reader.consume(used);
            if end.is_some() {
                return Ok(());
            }
        }
    }
}

impl<R: Read> Iterator for Lines<R> {
    type Item = (Waiting, bool);

    fn next(&mut self) -> Option<(Waiting, bool)> {
        loop {
            let mut line = Vec::new();
            let limit = u64::try_from(MOST_LINE).unwrap_or(u64::MAX) + 1;
            let read = (&mut self.reader).take(limit).read_until(b'\n', &mut line);
            match read {
                Ok(0) => return None,
                Ok(_) => {}
                Err(error) => {
                    let why = format!("standard input cannot be read on: {error}");
                    let row = Waiting::Row("standard input".to_owned(), Input::Unreadable(why));
                    return Some((row, true));
                }
            }
            if line.len() > MOST_LINE && line.last() != Some(&b'\n') && self.skip_rest().is_err() {
                return None;
            }
            // Some programs write a byte-order mark before the first line.
            if std::mem::take(&mut self.is_first) && line.starts_with(b"\xef\xbb\xbf") {
                line.drain(..3);
            }
            if !line.trim_ascii().is_empty() {
                return Some((Waiting::Line(line), self.reader.buffer().is_empty()));
            }
        }
    }
}
