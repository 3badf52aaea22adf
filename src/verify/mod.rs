//! A page read back: the sides file inside it is worked out again, and every text printed on the page
//! is held against what follows from those sides.
//!
//! What is compared is the text, and for SVG where it stands. Lines of the drawing are not, unless
//! the file is byte for byte what this program makes of its sides; the answer says which.
//!
//! ```
//! use fairfoot::{Paper, Settings, Weights, verify};
//!
//! let text = "record 100 sq ft\nlevel \"Ground floor\"\nliving \"Shed\"\nnorth 8'\neast 12'\nsouth 8'\nwest 12'";
//! let house = fairfoot::read("shed.sides", text)?;
//! let result = house.areas(&Settings::default())?.reconcile(&Weights::default())?;
//! let page = result.pages(Paper::Letter)?.svg().remove(0);
//! assert!(verify::sheet(page.as_bytes())?.holds());
//! let edited = page.replace("Measured 96 sq ft", "Measured 90 sq ft");
//! assert!(!verify::sheet(edited.as_bytes())?.holds());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod compare;
mod pdf;
mod svg;

use crate::error::Error;
use crate::house::House;
use crate::pages::Pages;
use crate::pages::export::svg::Making;
use crate::reconcile::Weights;
use crate::report::json::fingerprint;
pub use compare::{Mismatch, PageCheck};

/// The most bytes a page to be verified may have.
pub const MOST_SHEET_BYTES: usize = 64_000_000;

/// A page, or several, as they were found in a file.
struct Found {
    /// The sides file inside.
    sides: String,
    making: Making,
    version: String,
    /// How many pages there are said to be.
    pages: Option<usize>,
    printed: Vec<Printed>,
}

/// What is printed on one page.
struct Printed {
    /// Its number from 1.
    number: usize,
    texts: Vec<PrintedText>,
}

/// A text as it was found, and where it stands if that is said.
#[derive(Clone, Debug, Default, PartialEq)]
struct PrintedText {
    words: String,
    place: Option<(f64, f64)>,
}

/// What came of verifying a file.
#[derive(Clone, Debug)]
pub struct Verification {
    checks: Vec<PageCheck>,
    pages: usize,
    is_unchanged: bool,
    version: String,
    sides: String,
}

impl Verification {
    /// Whether every printed text follows from the sides.
    pub fn holds(&self) -> bool {
        !self.checks.is_empty() && self.checks.iter().all(|check| check.mismatches().is_empty())
    }

    /// Each page of the file.
    pub fn checks(&self) -> &[PageCheck] {
        &self.checks
    }

    /// How many pages the house has.
    pub fn pages(&self) -> usize {
        self.pages
    }

    /// Whether the file is byte for byte what this program makes of its sides.
    pub fn is_unchanged(&self) -> bool {
        self.is_unchanged
    }

    /// The version of the program that made it.
    pub fn version(&self) -> &str {
        &self.version
    }

    /// The sides file that was inside.
    pub fn sides(&self) -> &str {
        &self.sides
    }

    /// Its SHA-256, in hexadecimal.
    pub fn fingerprint(&self) -> String {
        fingerprint(&self.sides)
    }
}

/// Verifies a page in SVG or all pages in a PDF.
///
/// # Errors
///
/// [`Error::Sheet`] where the file is neither, has no sides file inside, or holds what a page never has: a
/// document type, a script, a reference to something outside.
pub fn sheet(bytes: &[u8]) -> Result<Verification, Error> {
    if bytes.len() > MOST_SHEET_BYTES {
        return Err(refused("it has more than 64 MB, and no page has"));
    }
    let is_pdf = bytes.starts_with(b"%PDF-");
    let found = if is_pdf { pdf::found(bytes)? } else { svg::found(bytes)? };
    let (house, pages) = figured(&found)?;
    if let Some(said) = found.pages.filter(|&said| said != pages.pages().len()) {
        return Err(refused(&format!(
            "it says it is of {said} pages, and its sides fill {}",
            pages.pages().len()
        )));
    }
    let again = if is_pdf { pages.pdf()? } else { one_page(&pages, &found) };
    let is_unchanged = again == bytes;
    let checks = found.printed.iter().map(|printed| compare::check(&pages, printed)).collect();
    Ok(Verification {
        checks,
        pages: pages.pages().len(),
        is_unchanged,
        version: found.version,
        sides: house.source().text().to_owned(),
    })
}

/// The pages worked out again from the sides inside.
fn figured(found: &Found) -> Result<(House, Pages), Error> {
    let wrong =
        |what: String| Error::Sheet(format!("the sides file inside cannot be worked out: {what}"));
    let house = crate::read::read("the sides file inside", found.sides.as_str())
        .map_err(|faults| wrong(first_fault(&faults)))?;
    let settings = found.making.settings;
    let reconciliation = house
        .areas(&settings)
        .and_then(|areas| areas.reconcile(&Weights::default()))
        .map_err(|faults| wrong(first_fault(&faults)))?;
    let pages = reconciliation.pages(found.making.paper)?;
    Ok((house, pages))
}

fn first_fault(faults: &crate::diagnostic::Diagnostics) -> String {
    let first = faults.list().iter().find(|fault| fault.is_error());
    first.map(|fault| fault.message().to_owned()).unwrap_or_default()
}

/// The page of this number as it would be written now.
fn one_page(pages: &Pages, found: &Found) -> Vec<u8> {
    let number = found.printed.first().map_or(0, |printed| printed.number);
    let page = number.checked_sub(1).and_then(|i| pages.pages().get(i).map(|page| (i, page)));
    page.map(|(i, page)| crate::pages::export::svg::written(pages, page, i).into_bytes())
        .unwrap_or_default()
}

fn refused(why: &str) -> Error {
    Error::Sheet(why.to_owned())
}
