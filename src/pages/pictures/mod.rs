//! Photographs on pages: read from the bytes of JPEG and PNG files, scaled down and written again.
//!
//! A page never contains the file itself. The picture is turned upright, scaled down to what paper needs and
//! written as a plain JPEG, so nothing that a camera adds (position, time, a second picture) remains. No file is
//! opened here: the caller provides the bytes.

mod jpeg;
mod prepared;

use std::collections::BTreeMap;
use std::fmt;
use std::sync::Arc;

use sha2::{Digest, Sha256};

use crate::diagnostic::{Diagnostic, Diagnostics, Word, quoted};
use crate::house::House;
pub use prepared::{MOST_FILE_BYTES, MOST_MEGAPIXELS};

/// A picture as it is on a page: a plain JPEG without metadata.
#[derive(Clone, PartialEq, Eq)]
pub(crate) struct Picture {
    bytes: Arc<[u8]>,
    width_px: u32,
    height_px: u32,
    sha256: String,
}

impl fmt::Debug for Picture {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Picture({} by {}, {})", self.width_px, self.height_px, self.mark())
    }
}

impl Picture {
    /// Reads a JPEG or PNG file and scales it down.
    ///
    /// # Errors
    ///
    /// What is wrong with the file, and what to do.
    pub(crate) fn read(file: &[u8]) -> Result<Picture, Refusal> {
        let bytes = prepared::prepared(file)?;
        Picture::plain(&bytes).ok_or_else(prepared::damaged)
    }

    /// A picture that this program prepared before, unchanged; `None` for any other bytes.
    pub(crate) fn plain(bytes: &[u8]) -> Option<Picture> {
        let (width_px, height_px) = jpeg::plain_size(bytes)?;
        let fits = |px: u32| (1..=prepared::MOST_EDGE_PX).contains(&px);
        let is_small = bytes.len() <= prepared::MOST_BYTES && fits(width_px) && fits(height_px);
        is_small.then(|| {
            let sha256 = Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect();
            Picture { bytes: bytes.into(), width_px, height_px, sha256 }
        })
    }

    pub(crate) fn bytes(&self) -> &[u8] {
        &self.bytes
    }

    /// Its pixels; `None` if it cannot be decoded.
    pub(crate) fn dots(&self) -> Option<image::RgbImage> {
        prepared::dots(&self.bytes)
    }

    /// Its width and height, in pixels.
    pub(crate) fn size_px(&self) -> (u32, u32) {
        (self.width_px, self.height_px)
    }

    /// The SHA-256 of its bytes, in hexadecimal.
    pub(crate) fn sha256(&self) -> &str {
        &self.sha256
    }

    /// The first 16 digits of its SHA-256, which identify the picture on the pages.
    pub(crate) fn mark(&self) -> &str {
        &self.sha256[..MARK]
    }
}

/// The number of digits of its SHA-256 that distinguish a picture from others on the same pages.
pub(crate) const MARK: usize = 16;

/// Why a file cannot be used as a picture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Refusal {
    /// The reason, to follow the name of the file: `is cut off`.
    pub(crate) why: String,
    /// What to do.
    pub(crate) help: &'static str,
}

impl Refusal {
    fn of(why: impl Into<String>, help: &'static str) -> Refusal {
        Refusal { why: why.into(), help }
    }
}

/// The pictures of a house as pages show them, by file name.
#[derive(Clone, Debug, Default)]
pub struct Pictures {
    by_file: BTreeMap<String, Picture>,
}

impl Pictures {
    /// Reads every picture that a file names, one after the other, so that only one is in memory at full size.
    /// `bytes_of` returns the bytes of a file beside the sides file, or why it cannot: `is not there`.
    ///
    /// ```
    /// use fairfoot::pages::Pictures;
    ///
    /// let text = "level \"Ground floor\"\nliving \"Shed\"\nnorth 8' photo \"1: door\" file \"door.jpg\"\neast 12'\nsouth 8'\nwest 12'";
    /// let house = fairfoot::read("shed.sides", text)?;
    /// let errors = Pictures::read(&house, |_| Err("is not there".to_owned())).unwrap_err();
    /// assert!(errors.to_string().contains("`door.jpg` is not there"));
    /// let errors = Pictures::read(&house, |_| Ok(b"GIF89a".to_vec())).unwrap_err();
    /// assert!(errors.to_string().contains("`door.jpg` is a GIF picture"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    ///
    /// An error for each line whose picture cannot be read or is too large, all at once.
    pub fn read(
        house: &House,
        mut bytes_of: impl FnMut(&str) -> Result<Vec<u8>, String>,
    ) -> Result<Pictures, Diagnostics> {
        let mut read: BTreeMap<&str, Result<Picture, Refusal>> = BTreeMap::new();
        let mut errors = Vec::new();
        for wanted in house.pictures() {
            let file = wanted.file();
            let picture = read.entry(file).or_insert_with(|| {
                let bytes = bytes_of(file).map_err(|why| Refusal::of(why, NOT_THERE))?;
                Picture::read(&bytes)
            });
            if let Err(Refusal { why, help }) = picture {
                let message = format!("the picture {} {why}", quoted(file));
                errors.push(Diagnostic::new(Word::BadPicture, wanted.span, message).help(*help));
            }
        }
        if !errors.is_empty() {
            return Err(Diagnostics::new(house.source().clone(), errors));
        }
        let by_file =
            read.into_iter().filter_map(|(file, picture)| Some((file.to_owned(), picture.ok()?)));
        Ok(Pictures { by_file: by_file.collect() })
    }

    /// Pictures that were prepared before, by file name.
    pub(crate) fn plain(by_file: BTreeMap<String, Picture>) -> Pictures {
        Pictures { by_file }
    }

    pub(crate) fn of_file(&self, file: &str) -> Option<&Picture> {
        self.by_file.get(file)
    }

    /// Whether there is no picture.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.by_file.is_empty()
    }

    /// The SHA-256, in hexadecimal, of the prepared picture that was made from a file.
    pub fn sha256(&self, file: &str) -> Option<&str> {
        self.of_file(file).map(Picture::sha256)
    }
}

/// The picture files that a house names, each once, in the order in which pages show them.
pub(crate) fn files(house: &House) -> Vec<&str> {
    let mut files: Vec<&str> = Vec::new();
    for picture in house.pictures() {
        if !files.contains(&picture.file()) {
            files.push(picture.file());
        }
    }
    files
}

const NOT_THERE: &str = "put it beside the sides file under that name, or take `file` and the name after it out of the line";
