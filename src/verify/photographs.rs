//! The photographs inside a file of pages. Pages are regenerated with these, never with the files that the
//! photographs once came from.

use std::collections::BTreeMap;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;

use crate::error::Error;
use crate::house::MOST_PICTURES;
use crate::pages::export::svg::PHOTOGRAPH;
use crate::pages::pictures::{self, MARK, Picture, Pictures};
use crate::pages::{PageOptions, Pages, Shown};
use crate::reconcile::Reconciliation;
use crate::verify::Inside;

/// The marks that identify photographs, read from one word of the page; empty unless each is as the program writes
/// it.
pub(super) fn marks(word: Option<&str>) -> Vec<String> {
    let is_mark = |mark: &&str| {
        mark.len() == MARK
            && mark.bytes().all(|byte| byte.is_ascii_digit() || (b'a'..=b'f').contains(&byte))
    };
    let marks: Vec<&str> = word.unwrap_or_default().split(',').take(MOST_PICTURES + 1).collect();
    match marks.len() <= MOST_PICTURES && marks.iter().all(is_mark) {
        true => marks.into_iter().map(str::to_owned).collect(),
        false => Vec::new(),
    }
}

/// The photographs of a page in SVG.
pub(super) fn in_text(bytes: &[u8]) -> Vec<Picture> {
    let begins = memchr::memmem::find_iter(bytes, PHOTOGRAPH).take(MOST_PICTURES);
    let picture = |at: usize| {
        let rest = &bytes[at + PHOTOGRAPH.len()..];
        let text = &rest[..memchr::memchr(b'"', rest)?];
        Picture::plain(&STANDARD.decode(text).ok()?)
    };
    begins.filter_map(picture).collect()
}

/// How many of the photographs that the file names are not inside it.
pub(super) fn elsewhere(inside: &Inside) -> usize {
    let is_here = |mark: &&String| inside.pictures.iter().any(|picture| picture.mark() == *mark);
    inside.photographs.iter().filter(|mark| !is_here(mark)).count()
}

/// The pages regenerated with the photographs inside the file. The place of a photograph that is not inside, such as
/// one on another page of a set, stays empty.
pub(super) fn pages(
    result: &Reconciliation,
    options: PageOptions,
    inside: &Inside,
) -> Result<Pages, Error> {
    let files = pictures::files(result.house());
    if options.private || inside.photographs.len() != files.len() {
        return result.pages(options);
    }
    let of_mark = |mark: &String| inside.pictures.iter().find(|picture| picture.mark() == mark);
    let by_file: BTreeMap<String, Picture> = files
        .into_iter()
        .zip(&inside.photographs)
        .filter_map(|(file, mark)| Some((file.to_owned(), of_mark(mark)?.clone())))
        .collect();
    let shown = Shown { pictures: Pictures::plain(by_file), marks: inside.photographs.clone() };
    Pages::of(result, options, &shown)
}
