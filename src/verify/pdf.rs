//! What is inside a PDF: the attached sides file, the line that says how the pages were made, and the photographs.
//!
//! The file is not parsed. Its bytes are searched once for the markers that precede them. That finds them in every
//! file this program makes, and in most that another program has saved. A hostile file can hide them or show others;
//! then the file differs from what the program makes of them, and the answer is no.

use std::collections::HashMap;

use crate::error::Error;
use crate::house::MOST_PICTURES;
use crate::pages::Making;
use crate::pages::pictures::Picture;
use crate::sketch::MOST_BYTES;
use crate::verify::{Inside, photographs, refused};

/// How far from its marker an attachment's dictionary may begin or end, in bytes.
const HEAD: usize = 2_000;
/// The most attachments that are tried.
const MOST_TRIED: usize = 16;

/// Finds the attached sides file.
pub(super) fn inside(bytes: &[u8]) -> Result<Inside, Error> {
    let sides = after_each(bytes, b"/EmbeddedFile")
        .filter(|&at| !bytes.get(at).is_some_and(u8::is_ascii_alphanumeric))
        .take(MOST_TRIED)
        .find_map(|at| attached(bytes, at));
    let Some(sides) = sides else {
        return Err(refused(
            "no sides file can be read inside; only PDFs that fairfoot made, with their attachment kept, can be verified",
        ));
    };
    let Described { version, making, photographs } = after_each(bytes, b"/Desc")
        .take(MOST_TRIED)
        .find_map(|at| described(bytes, at))
        .unwrap_or_default();
    let pictures = pictures(bytes);
    Ok(Inside { sides, making, version, photographs, pictures, page: None })
}

/// The position after each occurrence of a marker in the file.
fn after_each<'a>(bytes: &'a [u8], mark: &'a [u8]) -> impl Iterator<Item = usize> + 'a {
    memchr::memmem::find_iter(bytes, mark).map(move |at| at + mark.len())
}

/// The text of the attachment whose dictionary contains the marker that ends at `at`.
fn attached(bytes: &[u8], at: usize) -> Option<String> {
    let (head, content) = stream(bytes, at)?;
    let is_packed = memchr::memmem::find(&head, b"FlateDecode").is_some();
    let text = if is_packed {
        miniz_oxide::inflate::decompress_to_vec_zlib_with_limit(content, MOST_BYTES + 1).ok()?
    } else {
        content[..content.len().min(MOST_BYTES + 1)].to_vec()
    };
    String::from_utf8(text).ok()
}

/// The photographs, each kept as a plain JPEG.
fn pictures(bytes: &[u8]) -> Vec<Picture> {
    let pictures = after_each(bytes, b"/DCTDecode").take(2 * MOST_PICTURES);
    pictures.filter_map(|at| Picture::plain(stream(bytes, at)?.1)).collect()
}

/// The head of the object whose marker ends at `at`, and the contents of its stream.
fn stream(bytes: &[u8], at: usize) -> Option<(Vec<u8>, &[u8])> {
    let before = &bytes[at.saturating_sub(HEAD)..at];
    let begins = memchr::memmem::rfind(before, b"obj")?;
    let after = &bytes[at..];
    let ends = memchr::memmem::find(&after[..after.len().min(HEAD)], b"stream")?;
    let head = [&before[begins..], &after[..ends]].concat();
    let content = &after[ends + b"stream".len()..];
    let content = content.strip_prefix(b"\r").unwrap_or(content);
    let content = content.strip_prefix(b"\n").unwrap_or(content);
    let length = number(&head, b"/Length").filter(|&length| length <= content.len());
    let content = match length {
        Some(length) => &content[..length],
        None => &content[..memchr::memmem::find(content, b"endstream")?],
    };
    Some((head, content))
}

/// The number after a name in a dictionary.
fn number(head: &[u8], name: &[u8]) -> Option<usize> {
    let at = memchr::memmem::find(head, name)? + name.len();
    let digits: String = head[at..]
        .iter()
        .map(|&byte| char::from(byte))
        .skip_while(char::is_ascii_whitespace)
        .take_while(char::is_ascii_digit)
        .take(12)
        .collect();
    digits.parse().ok()
}

/// What the line that describes the attachment says.
#[derive(Default)]
struct Described {
    version: String,
    making: Option<Making>,
    photographs: Vec<String>,
}

/// What the parenthesized line after `at` says.
fn described(bytes: &[u8], at: usize) -> Option<Described> {
    let rest = bytes.get(at..(at + HEAD).min(bytes.len()))?;
    let line = rest.trim_ascii_start().strip_prefix(b"(fairfoot ")?;
    let line = std::str::from_utf8(line.split(|&byte| byte == b')').next()?).ok()?;
    let mut parts = line.split_whitespace();
    let version = parts.next()?.to_owned();
    let words: HashMap<&str, &str> = parts.filter_map(|part| part.split_once('=')).collect();
    let making = Making::read(|name| words.get(name).map(|&word| word.to_owned()));
    let photographs = photographs::marks(words.get("photographs").copied());
    Some(Described { version, making, photographs })
}
