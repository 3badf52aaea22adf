//! All pages in a PDF: their texts, and the sides file attached. Nothing in it is run or fetched, and what
//! it unpacks to has a limit.

use lopdf::{DecompressError, Dictionary, Document, LoadOptions, Object, Stream};

use crate::error::Error;
use crate::pages::export::pdf::ATTACHED;
use crate::pages::export::svg::Making;
use crate::verify::{Found, Printed, PrintedText, refused};

/// The most bytes that one stream may unpack to.
const MOST_UNPACKED: usize = 32_000_000;

/// Reads a PDF.
pub(super) fn found(bytes: &[u8]) -> Result<Found, Error> {
    let options =
        LoadOptions { max_decompressed_size: Some(MOST_UNPACKED), ..LoadOptions::default() };
    let document = Document::load_mem_with_options(bytes, options)
        .map_err(|error| refused(&format!("it is no PDF that can be read: {error}")))?;
    unpacks_within_limits(&document)?;
    let (sides, described) = attached(&document).ok_or_else(|| {
        refused("there is no sides file attached; only PDFs that fairfoot made, with their attachment kept, can be verified")
    })?;
    let mut words = described.split_whitespace().filter_map(|word| word.split_once('='));
    let mut known = std::collections::HashMap::new();
    known.extend(words.by_ref());
    let word = |name: &str| known.get(name).map(|word| (*word).to_owned());
    let version = described.split_whitespace().nth(1).unwrap_or_default().to_owned();
    let Some(making) = Making::read(word) else {
        return Err(refused("what it says of how it was made cannot be read"));
    };
    let numbers: Vec<u32> = document.get_pages().into_keys().collect();
    let mut printed = Vec::new();
    for (i, &number) in numbers.iter().enumerate() {
        let text = document.extract_text(&[number]).map_err(|error| {
            refused(&format!("the text of page {number} cannot be read: {error}"))
        })?;
        let words = text.replace('\r', "");
        printed.push(Printed { number: i + 1, texts: vec![PrintedText { words, place: None }] });
    }
    Ok(Found { sides, making, version, pages: Some(numbers.len()), printed })
}

/// Refuses a file whose streams unpack to more than any page has.
fn unpacks_within_limits(document: &Document) -> Result<(), Error> {
    const MOST_TOGETHER: usize = 256_000_000;
    let mut together = 0_usize;
    for stream in document.objects.values().filter_map(|object| object.as_stream().ok()) {
        match stream.decompressed_content_with_limit(MOST_UNPACKED) {
            Ok(bytes) => together = together.saturating_add(bytes.len()),
            Err(lopdf::Error::Decompress(DecompressError::MemoryLimitExceeded { .. })) => {
                together = usize::MAX;
            }
            // What is packed in a way that no page of ours is packed in is not read either.
            Err(_) => {}
        }
        if together > MOST_TOGETHER {
            return Err(refused("it unpacks to more than any page has"));
        }
    }
    Ok(())
}

/// The sides file that is attached, and what is said of how the pages were made.
fn attached(document: &Document) -> Option<(String, String)> {
    let catalog = document.catalog().ok()?;
    let names = dictionary(document, catalog.get(b"Names").ok()?)?;
    let files = dictionary(document, names.get(b"EmbeddedFiles").ok()?)?;
    let list = leaves(document, files, 0)?;
    let mut specifications = list.iter().filter_map(|object| dictionary(document, object));
    let ours = specifications.find(|specification| {
        let name = specification.get(b"UF").or_else(|_| specification.get(b"F"));
        name.is_ok_and(|name| text(document, name).as_deref() == Some(ATTACHED))
    })?;
    let described = text(document, ours.get(b"Desc").ok()?)?;
    let embedded = dictionary(document, ours.get(b"EF").ok()?)?;
    let stream = stream(document, embedded.get(b"F").ok()?)?;
    let bytes = stream
        .decompressed_content_with_limit(MOST_UNPACKED)
        .unwrap_or_else(|_| stream.content.clone());
    Some((String::from_utf8(bytes).ok()?, described))
}

/// The objects at the ends of a tree of names.
fn leaves(document: &Document, node: &Dictionary, depth: usize) -> Option<Vec<Object>> {
    const DEEPEST: usize = 16;
    if depth > DEEPEST {
        return None;
    }
    let mut all = Vec::new();
    if let Ok(names) = node.get(b"Names").and_then(|names| resolved(document, names).as_array()) {
        all.extend(names.iter().skip(1).step_by(2).cloned());
    }
    if let Ok(kids) = node.get(b"Kids").and_then(|kids| resolved(document, kids).as_array()) {
        for kid in kids.iter().take(1_000) {
            all.extend(leaves(document, dictionary(document, kid)?, depth + 1)?);
        }
    }
    Some(all)
}

fn resolved<'a>(document: &'a Document, object: &'a Object) -> &'a Object {
    document.dereference(object).map_or(object, |(_, object)| object)
}

fn dictionary<'a>(document: &'a Document, object: &'a Object) -> Option<&'a Dictionary> {
    resolved(document, object).as_dict().ok()
}

fn stream<'a>(document: &'a Document, object: &'a Object) -> Option<&'a Stream> {
    resolved(document, object).as_stream().ok()
}

/// A text of a PDF: its own eight-bit letters, or UTF-16 where it says so.
fn text(document: &Document, object: &Object) -> Option<String> {
    lopdf::decode_text_string(resolved(document, object)).ok()
}
