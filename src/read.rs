//! From the text of a sides file to a checked house.

use crate::diagnostic::words::list_or;
use crate::diagnostic::{Diagnostic, Diagnostics, Fix, Source, Span, Word, sort};
use crate::house::House;
use crate::house::check::comments::name_walls_in_comments;
#[cfg(feature = "pages")]
use crate::house::check::draft::{self, Draft};
use crate::house::check::{asked, check};
use crate::sketch::{self, Asked};

/// Reads a sides file and checks the house in it. `name` is shown in messages. The warnings of a file without errors
/// are kept by the house, in its `warnings()`.
///
/// # Errors
///
/// All errors and warnings of the file at once, errors first, each in file order.
pub fn read(name: impl Into<String>, text: impl Into<String>) -> Result<House, Diagnostics> {
    read_source(Source::new(name, text))
}

/// Like [`read`], for a text that already has a name.
///
/// # Errors
///
/// Those of [`read`].
pub fn read_source(source: Source) -> Result<House, Diagnostics> {
    let sketch::Reading { sketch, mut faults, more, asked } = sketch::read_without_lines(&source);
    match check(&sketch, &mut faults) {
        Some(mut model) => {
            sort(&mut faults);
            model.source = source;
            model.warnings = faults;
            Ok(House::new(model))
        }
        None => {
            offer_places(&source, &asked, &mut faults);
            name_walls_in_comments(&source, &mut faults);
            Err(Diagnostics::new(source, faults).and_more(more))
        }
    }
}

/// The most lines without a place for which places are computed.
const MOST_ASKED: usize = 8;

/// Offers places for the spaces whose place was told in words. They are computed and tried in the text as it would be
/// with every other line replaced by the first one that is offered for it.
fn offer_places(source: &Source, told: &[Asked], faults: &mut [Diagnostic]) {
    if told.is_empty() {
        return;
    }
    let is_asked = |span: Span| told.iter().any(|one| one.span.start == span.start);
    let mut changes: Vec<(Span, String)> =
        told.iter().map(|one| (one.span, one.line.at(""))).collect();
    let fixes = faults.iter().filter_map(|fault| fault.fixes().first());
    changes.extend(fixes.filter(|fix| !is_asked(fix.span)).map(|fix| (fix.span, fix.text.clone())));
    changes.sort_by_key(|(span, _)| (span.start, span.end));
    let (mut text, mut from) = (String::new(), 0);
    let mut lines: Vec<usize> = Vec::new();
    for (span, with) in changes {
        let Some(kept) = source.text().get(from..span.start) else { continue };
        text.push_str(kept);
        if is_asked(span) {
            lines.push(text.len());
        }
        text.push_str(&with);
        from = span.end;
    }
    text.push_str(source.text().get(from..).unwrap_or_default());
    let mended = Source::new(source.name(), text);
    let sketch = sketch::read_without_lines(&mended).sketch;
    for (one, line) in told.iter().zip(lines).take(MOST_ASKED) {
        let places = asked::places(&sketch, line, &one.line.place, one.line.of.as_deref());
        let fault = faults.iter_mut().find(|fault| {
            (one.span.start..=one.span.end).contains(&fault.span().start)
                && fault.fixes().is_empty()
        });
        let Some(fault) = fault.filter(|_| !places.is_empty()) else { continue };
        let offered: Vec<String> = places.iter().map(|place| one.line.at(place)).collect();
        let shown: Vec<String> = offered.iter().map(|line| format!("`{line}`")).collect();
        let fixes = offered.iter().map(|line| Fix::new(one.span, line.clone())).collect();
        let help = format!("did you mean {}?", list_or(&shown));
        *fault = fault.clone().instead(None, vec![help], fixes);
    }
}

/// The traverses of a text as typed, one draft for each level and lot, for drawing what does not close yet; at least
/// one.
///
/// # Errors
///
/// The errors of the text, if it has no side to draw.
#[cfg(feature = "pages")]
pub(crate) fn drafts(source: &Source) -> Result<Vec<Draft>, Diagnostics> {
    let sketch::Reading { sketch, mut faults, more, .. } = sketch::read(source);
    let drawn = draft::drafts(source, &sketch, &faults);
    if drawn.is_empty() {
        sort(&mut faults);
        return Err(Diagnostics::new(source.clone(), faults).and_more(more));
    }
    Ok(drawn)
}

/// Decodes the bytes of a sides file.
///
/// # Errors
///
/// A diagnostic if the bytes are a known other format, or at the first byte that is not UTF-8.
pub fn decode(name: impl Into<String>, bytes: Vec<u8>) -> Result<Source, Diagnostics> {
    if let Some((what, help)) = other_format(&bytes) {
        let shown = String::from_utf8_lossy(&bytes[..bytes.len().min(40)]).replace('\0', " ");
        let first = shown.lines().next().unwrap_or_default().to_owned();
        let span = Span::new(0, first.chars().next().map_or(0, char::len_utf8));
        let error = Diagnostic::new(Word::NotText, span, what).help(help);
        return Err(Diagnostics::new(Source::new(name, first), vec![error]));
    }
    match String::from_utf8(bytes) {
        Ok(text) => Ok(Source::new(name, text)),
        Err(error) => {
            let at = error.utf8_error().valid_up_to();
            let bytes = error.as_bytes();
            let wide = bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]);
            let text: String = String::from_utf8_lossy(bytes)
                .chars()
                .map(|c| if c == '\0' { ' ' } else { c })
                .collect();
            let help = if bytes.starts_with(b"%PDF") {
                "this is a PDF; if fairfoot made it, `fairfoot verify --sides` and its name print the sides file inside"
            } else if bytes.starts_with(b"\x89PNG") {
                "this is a picture; the sides file is inside the PDF and the SVG of the same pages"
            } else if wide {
                "this looks like UTF-16; save the file as UTF-8"
            } else {
                "save the file as plain text in UTF-8; a word processor's own format does not do"
            };
            let span = Span::new(at, at + '\u{fffd}'.len_utf8());
            let fault = Diagnostic::new(Word::NotText, span, "this is not UTF-8 text").help(help);
            Err(Diagnostics::new(Source::new(name, text), vec![fault]))
        }
    }
}

/// Recognizes a file in another format: what it is, and what to do with it. `None` for any other file.
fn other_format(bytes: &[u8]) -> Option<(&'static str, &'static str)> {
    const PLAIN: &str = "open it in the program that wrote it, choose Save As, and save it as plain text (.txt), in UTF-8";
    const PICTURE: &str =
        "type what it shows into a sides file; `fairfoot new my-house` writes one to start from";
    let begins = |with: &[u8]| bytes.starts_with(with);
    let low: Vec<u8> = bytes.iter().take(64).map(u8::to_ascii_lowercase).collect();
    let low = low.trim_ascii_start();
    Some(if begins(b"{\\rtf") {
        ("this is a rich text file (RTF), not plain text", PLAIN)
    } else if begins(b"PK\x03\x04") {
        (
            "this is a document of a word processor or a spreadsheet (DOCX, ODT, XLSX), not plain text",
            PLAIN,
        )
    } else if begins(b"\xd0\xcf\x11\xe0") {
        (
            "this is a document of a word processor or a spreadsheet (DOC, XLS), not plain text",
            PLAIN,
        )
    } else if begins(b"\xff\xd8\xff") || bytes.get(4..8) == Some(b"ftyp") {
        ("this is a photograph, not plain text", PICTURE)
    } else if low.starts_with(b"<!doctype html") || low.starts_with(b"<html") {
        (
            "this is a web page (HTML), not plain text",
            "copy the text of the page into a new file and save that as plain text",
        )
    } else {
        return None;
    })
}

#[cfg(all(test, feature = "pages"))]
#[expect(clippy::float_arithmetic, reason = "a screen shows feet")]
mod tests {
    use std::error::Error;
    use std::fs;
    use std::path::Path;

    use super::*;
    use crate::geometry::compass::Direction;
    use crate::sketch::rows::{How, rows};

    /// Feet to the right and toward the street, from nanometers east and north.
    #[expect(clippy::cast_precision_loss, reason = "a screen shows feet")]
    fn seen((east, north): (i64, i64), front: Direction) -> [f64; 2] {
        let (east, north) = (east as f64 / 304_800_000.0, north as f64 / 304_800_000.0);
        match front {
            Direction::South => [east, -north],
            Direction::North => [-east, north],
            Direction::East => [north, east],
            Direction::West => [-north, -east],
        }
    }

    /// Checks that each row ends at a corner of the draft, give or take what closing moves: an inch, or a foot with
    /// an estimated wall. Returns how many rows were checked.
    fn lie_as_drawn(name: &str, text: &str) -> Result<usize, Box<dyn Error>> {
        let drafts = drafts(&Source::new(name, text))?;
        let front = drafts[0].particulars.front.unwrap_or(Direction::South);
        let walks = rows(text).walks;
        let mut checked = 0;
        let all = drafts.iter().flat_map(|draft| {
            let level = draft.level.clone().unwrap_or_default();
            draft.walks.iter().map(move |walk| (level.clone(), walk))
        });
        for (level, drawn) in all {
            let walk = walks.iter().find(|walk| walk.name == drawn.name && walk.level == level);
            let walk = walk.ok_or_else(|| format!("{name}: no rows of {}", drawn.name))?;
            let corners: Vec<[f64; 2]> =
                drawn.corners().into_iter().map(|corner| seen(corner, front)).collect();
            let is_about = walk.rows.iter().any(|row| row.how == How::About);
            let most = if is_about { 1.0 } else { 1.0 / 12.0 };
            for piece in walk.rows.iter().flat_map(|row| &row.pieces) {
                let is_there = |corner: &[f64; 2]| {
                    let (x, y) = (corner[0] - piece.to[0], corner[1] - piece.to[1]);
                    x.hypot(y) <= most
                };
                assert!(corners.iter().any(is_there), "{name}: {} {piece:?}", walk.name);
                checked += 1;
            }
        }
        Ok(checked)
    }

    #[test]
    fn rows_lie_where_a_draft_draws_them() -> Result<(), Box<dyn Error>> {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("sketches");
        let mut checked = 0;
        for entry in fs::read_dir(folder)? {
            let path = entry?.path();
            if path.extension().is_some_and(|ending| ending == "sides") {
                checked += lie_as_drawn(&path.display().to_string(), &fs::read_to_string(&path)?)?;
            }
        }
        assert!(checked > 150, "{checked}");
        let open = "level \"G\"\nliving \"H\"\nnorth 28'\neast 17'\nbay east 8' out 2' flat 4'\neast 17'\nsouth 27'\nwest 40'\n";
        assert_eq!(lie_as_drawn("open", open)?, 8);
        // Corner 6 is where the wall after the bay begins, since the bay stands for three sides.
        let porch = "level \"G\"\nliving \"H\"\nnorth 28'\neast 17'\nbay east 8' out 2' flat 4'\neast 17'\nsouth 28'\nwest 42'\nporch \"P\" from \"H\" corner 6\nnorth 5'\neast 6'\nsouth 5'\nwest 6'\n";
        assert_eq!(lie_as_drawn("porch", porch)?, 12);
        Ok(())
    }
}
