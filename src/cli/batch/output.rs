//! Writes rows: to standard output as they come, or to a file that appears once it is complete.

use std::borrow::Cow;
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};

use fairfoot::batch::{HEADS, Outcome, cells};
use tempfile::NamedTempFile;

use crate::cli::batch::Format;
use crate::cli::{Stop, files};

/// Whether anyone still reads the output.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Written {
    Whole,
    NobodyReads,
}

/// Where rows are written.
pub(super) struct Output {
    file: Option<(NamedTempFile, PathBuf)>,
    head: Vec<u8>,
}

impl Output {
    /// Opens the output before any work is done.
    pub(super) fn new(out: Option<&Path>, format: Format) -> Result<Output, Stop> {
        let file = out.map(files::opened_beside).transpose()?;
        let file = file.zip(out.map(Path::to_owned));
        let mut head = Vec::new();
        match format {
            Format::Csv => csv_line(&mut head, &HEADS.map(str::to_owned)),
            Format::Table => {
                let mut heads = HEADS.map(|head| head.replace('_', " "));
                // The last column has the errors of the file, or the reasons for a second look.
                heads[14] = "second look".to_owned();
                heads[8] = "percent".to_owned();
                table_line(&mut head, &heads);
            }
            Format::Jsonl => {}
        }
        Ok(Output { file, head })
    }

    /// Writes complete rows.
    pub(super) fn write(&mut self, bytes: &[u8]) -> Result<Written, Stop> {
        let head = std::mem::take(&mut self.head);
        let all = if head.is_empty() { bytes.to_vec() } else { [&head, bytes].concat() };
        let written = match &mut self.file {
            Some((file, _)) => file.write_all(&all),
            None => {
                let mut out = io::stdout().lock();
                out.write_all(&all).and_then(|()| out.flush())
            }
        };
        match written {
            Ok(()) => Ok(Written::Whole),
            Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(Written::NobodyReads),
            Err(error) => Err(Stop::Said(format!("the rows cannot be written: {error}"))),
        }
    }

    /// Moves the finished file into place.
    pub(super) fn finish(mut self) -> Result<(), Stop> {
        if !self.head.is_empty() {
            self.write(&[])?;
        }
        match self.file {
            Some((file, path)) => files::put_in_place(file, &path),
            None => Ok(()),
        }
    }
}

/// Appends the rows of one house.
pub(super) fn append(bytes: &mut Vec<u8>, house: &Outcome, format: Format) {
    match format {
        Format::Jsonl => {
            house.append_json(bytes);
            bytes.push(b'\n');
        }
        Format::Csv => cells(house).iter().for_each(|row| csv_line(bytes, row)),
        Format::Table => {
            for (i, mut row) in cells(house).into_iter().enumerate() {
                // The reasons are about the house, so they are in its first row only.
                if i > 0 {
                    row.truncate(13);
                }
                table_line(bytes, &row);
            }
        }
    }
}

fn csv_line(bytes: &mut Vec<u8>, row: &[String]) {
    let mut writer = csv::WriterBuilder::new().from_writer(bytes);
    // Writing to memory does not fail.
    let _ = writer.write_record(row.iter().map(|cell| for_spreadsheets(cell).into_owned()));
    let _ = writer.flush();
}

/// A cell that no spreadsheet reads as a formula: text that begins like one gets an apostrophe, which marks it as
/// text. Numbers stay numbers.
fn for_spreadsheets(cell: &str) -> Cow<'_, str> {
    const FORMULAS: [char; 11] = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];
    let is_number = cell.parse::<rust_decimal::Decimal>().is_ok();
    if cell.starts_with(FORMULAS) && !is_number {
        Cow::Owned(format!("'{cell}"))
    } else {
        Cow::Borrowed(cell)
    }
}

/// The columns of the table: id, figure, its value, measured, gap, percent, rounding, second look.
fn table_line(bytes: &mut Vec<u8>, row: &[String]) {
    let cell = |i: usize| row.get(i).map(|cell| files::visible(cell)).unwrap_or_default();
    let short = |i: usize, width: usize| -> String { cell(i).chars().take(width).collect() };
    let why = if cell(14).is_empty() { cell(13) } else { cell(14) };
    let line = format!(
        "{:<26} {:<8} {:>9} {:>10} {:>9} {:>8} {:<10} {}",
        short(0, 26),
        short(1, 8),
        cell(2),
        short(3, 10),
        short(7, 9),
        short(8, 8),
        short(9, 10),
        why
    );
    bytes.extend_from_slice(line.trim_end().as_bytes());
    bytes.push(b'\n');
}
