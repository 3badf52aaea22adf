//! Whether a file is, byte for byte, what this program makes from the sides file inside it.
//!
//! That is the only question; the answer is yes or no. A page can be changed in more ways than a program can list (a
//! style, a font with exchanged digits, a picture laid over a figure). So a changed page is not relied on at all; the
//! pages are regenerated from the sides inside. The differences are listed as far as possible, but only as help.
//!
//! Photographs are part of the answer: the pages are regenerated with those inside the file, which have to be exactly
//! as the program writes them. A single page of a set has only its own photographs; the others are not needed to
//! regenerate it.
//!
//! ```
//! use fairfoot::{Paper, Settings, Weights, verify};
//!
//! let text = "record 100 sq ft\nlevel \"Ground floor\"\nliving \"Shed\"\nnorth 8'\neast 12'\nsouth 8'\nwest 12'";
//! let house = fairfoot::read("shed.sides", text)?;
//! let result = house.areas(&Settings::default())?.reconcile(&Weights::default())?;
//! let page = result.pages(Paper::Letter)?.svg().remove(0);
//! assert!(verify::file(page.as_bytes())?.is_genuine());
//! let edited = page.replace("Measured 96 sq ft", "Measured 90 sq ft");
//! let answer = verify::file(edited.as_bytes())?;
//! assert!(!answer.is_genuine());
//! assert_eq!(answer.pages().svg()[0], page);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod difference;
mod pdf;
mod photographs;
mod svg;

use crate::diagnostic::Diagnostics;
use crate::diagnostic::{Source, sha256};
use crate::error::Error;
use crate::pages::pictures::Picture;
use crate::pages::{Making, Pages, draft};
use crate::reconcile::Weights;
pub use difference::{Difference, MOST_DIFFERENCES};

/// The most bytes a file to verify may have.
pub const MOST_PAGE_BYTES: usize = 32_000_000;

/// What a file of pages contains inside, besides what it shows.
struct Inside {
    /// The sides file.
    sides: String,
    /// The settings the pages say they were made with; `None` if they cannot be read.
    making: Option<Making>,
    version: String,
    /// The marks that identify the photographs, in the order of their files.
    photographs: Vec<String>,
    /// The photographs that are inside the file.
    pictures: Vec<Picture>,
    /// The page number, from 1; `None` for a PDF, which has all pages.
    page: Option<usize>,
}

/// The answer to whether a file is genuine, with the reason.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Why {
    /// It is byte for byte what the program makes of the sides inside.
    Genuine,
    /// It names another version of the program, which alone can verify it.
    OtherVersion(String),
    /// Only its line ends differ: mail programs change LF to CR LF.
    LineEnds,
    /// It begins with the complete genuine file, followed by this many more bytes.
    Added(usize),
    /// Its contents differ. For a PDF, which has no lines, the list is empty and the count is 0.
    Differs {
        /// The first lines that differ, at most [`MOST_DIFFERENCES`].
        lines: Vec<Difference>,
        /// How many lines differ.
        all: usize,
    },
}

impl Why {
    /// Its stable word, for programs.
    #[must_use]
    pub const fn word(&self) -> &'static str {
        match self {
            Why::Genuine => "genuine",
            Why::OtherVersion(_) => "other-version",
            Why::LineEnds => "line-ends",
            Why::Added(_) => "added-after",
            Why::Differs { .. } => "differs",
        }
    }
}

/// The result for one file, with the genuine pages regenerated from the sides inside.
#[derive(Clone, Debug)]
pub struct Verification {
    why: Why,
    pages: Pages,
    page: Option<usize>,
    version: String,
    marks: Vec<String>,
    elsewhere: usize,
}

impl Verification {
    /// Whether the file is byte for byte what this version of the program makes of the sides inside.
    #[must_use]
    pub fn is_genuine(&self) -> bool {
        self.why == Why::Genuine
    }

    /// The reason for the answer.
    #[must_use]
    pub fn why(&self) -> &Why {
        &self.why
    }

    /// The pages regenerated from the sides inside. These can be relied on, whatever the file shows.
    #[must_use]
    pub fn pages(&self) -> &Pages {
        &self.pages
    }

    /// The page number that the file states, from 1; `None` for a PDF, which has all pages.
    #[must_use]
    pub fn page(&self) -> Option<usize> {
        self.page
    }

    /// The version of the program stated in the file.
    #[must_use]
    pub fn version(&self) -> &str {
        &self.version
    }

    /// The marks that identify the photographs of the whole set, as the file states them. Pages of one set state the
    /// same marks; a page cannot show that those of photographs on other pages are true.
    #[must_use]
    pub fn photographs(&self) -> &[String] {
        &self.marks
    }

    /// How many of these photographs are not inside the file, since they are on other pages of the set. Nothing is
    /// known about them until those pages are verified.
    #[must_use]
    pub fn photographs_elsewhere(&self) -> usize {
        self.elsewhere
    }

    /// The sides file inside.
    #[must_use]
    pub fn sides(&self) -> &str {
        self.pages.sides()
    }

    /// The SHA-256 of the sides file inside, in hexadecimal.
    #[must_use]
    pub fn sha256(&self) -> String {
        sha256(self.sides())
    }
}

/// Verifies one page in SVG, or all pages in a PDF.
///
/// # Errors
///
/// [`Error::Picture`] if the file is a picture, [`Error::NotVerified`] if it is neither SVG nor PDF, or has no sides file
/// inside, and [`Error::SidesInside`] if that sides file has an error: the pages cannot be regenerated. Such a file is not genuine
/// either.
pub fn file(bytes: &[u8]) -> Result<Verification, Error> {
    if bytes.len() > MOST_PAGE_BYTES {
        return Err(refused("it has more than 32 MB, and no page has"));
    }
    let undone = difference::with_plain_line_ends(bytes);
    let inside = inside(undone.as_deref().unwrap_or(bytes))?;
    let pages = made_anew(&inside)?;
    let again = match inside.page {
        None => pages.pdf()?,
        Some(page) => pages.svg_of(page).map(String::into_bytes).ok_or_else(|| {
            refused(&format!(
                "it says it is page {page}, and its sides fill {}",
                crate::diagnostic::words::count(pages.pages().len(), "page")
            ))
        })?,
    };
    let why = why(bytes, &again, &inside);
    let elsewhere = photographs::elsewhere(&inside);
    let Inside { photographs, page, version, .. } = inside;
    Ok(Verification { why, pages, page, version, marks: photographs, elsewhere })
}

/// Extracts what is inside; the first bytes show the kind of file.
fn inside(bytes: &[u8]) -> Result<Inside, Error> {
    const PICTURES: [(&[u8], &str); 4] = [
        (b"\x89PNG", "a PNG"),
        (b"\xff\xd8\xff", "a JPEG"),
        (b"GIF8", "a GIF"),
        (b"BM", "a picture"),
    ];
    if let Some((_, kind)) = PICTURES.into_iter().find(|(first, _)| bytes.starts_with(first)) {
        return Err(Error::Picture { kind });
    }
    if bytes.starts_with(b"%PDF-") { pdf::inside(bytes) } else { svg::inside(bytes) }
}

/// Compares the file with the regenerated one.
fn why(bytes: &[u8], again: &[u8], inside: &Inside) -> Why {
    if bytes == again {
        return Why::Genuine;
    }
    if inside.version != env!("CARGO_PKG_VERSION") {
        return Why::OtherVersion(inside.version.clone());
    }
    if difference::differ_in_line_ends_alone(bytes, again) {
        return Why::LineEnds;
    }
    if let Some(added) = bytes.strip_prefix(again) {
        return Why::Added(added.len());
    }
    let (lines, all) = match inside.page {
        Some(_) => difference::lines(bytes, again),
        None => (Vec::new(), 0),
    };
    Why::Differs { lines, all }
}

/// Regenerates the pages from the sides inside, with the default settings if the stated ones cannot be read.
fn made_anew(inside: &Inside) -> Result<Pages, Error> {
    let wrong = |error: String| Error::SidesInside { sides: inside.sides.clone(), error };
    let making = inside.making.unwrap_or_default();
    if making.draft {
        let source = Source::new("the sides file inside", inside.sides.as_str());
        return draft(source, making.options).map_err(|errors| wrong(first_error(&errors)));
    }
    let house = crate::read::read("the sides file inside", inside.sides.as_str())
        .map_err(|errors| wrong(first_error(&errors)))?;
    let areas = house.areas(&making.settings).map_err(|errors| wrong(first_error(&errors)))?;
    let result =
        areas.reconcile(&Weights::default()).map_err(|errors| wrong(first_error(&errors)))?;
    photographs::pages(&result, making.options, inside)
}

fn first_error(errors: &Diagnostics) -> String {
    let first = errors.list().iter().find(|fault| fault.is_error());
    first.map(|fault| fault.message().to_owned()).unwrap_or_default()
}

fn refused(why: &str) -> Error {
    Error::NotVerified(why.to_owned())
}
