//! What is inside an SVG page: the sides file in its metadata, and the bytes of its photographs. Nothing else on the
//! page is read, no entity is expanded, and nothing is fetched.

use std::collections::HashMap;

use quick_xml::Reader;
use quick_xml::events::{BytesRef, BytesStart, Event};

use crate::error::Error;
use crate::pages::Making;
use crate::verify::{Inside, photographs, refused};

/// The most attributes of an element that are read.
const MOST_ATTRIBUTES: usize = 64;

/// Reads up to the end of the sides file.
pub(super) fn inside(bytes: &[u8]) -> Result<Inside, Error> {
    let text = std::str::from_utf8(bytes).map_err(|_| {
        refused("it is neither a PDF nor text in UTF-8; pages end in `.pdf` or `.svg`")
    })?;
    let mut reader = Reader::from_str(text.trim_start_matches('\u{feff}'));
    // A page that was changed does not have to be well-formed.
    reader.config_mut().check_end_names = false;
    let mut words: Option<HashMap<String, String>> = None;
    let mut sides = String::new();
    loop {
        let event = reader.read_event().map_err(|error| unreadable(&error))?;
        let open = words.is_some();
        match event {
            Event::Start(element) if !open => words = sides_words(&element)?,
            Event::Text(text) if open => sides.push_str(&text),
            Event::CData(text) if open => sides.push_str(&text),
            Event::GeneralRef(name) if open => sides.push(letter(&name)?),
            Event::End(_) if open => break,
            Event::Eof => break,
            _ => {}
        }
    }
    let Some(words) = words else {
        return Err(refused(
            "there is no sides file inside; only pages that fairfoot made, with their metadata kept, can be verified",
        ));
    };
    let word = |name: &str| words.get(name).cloned();
    Ok(Inside {
        sides,
        making: Making::read(word),
        version: word("version").unwrap_or_default(),
        photographs: photographs::marks(word("photographs").as_deref()),
        pictures: photographs::in_text(bytes),
        page: Some(word("page").and_then(|page| page.parse().ok()).unwrap_or(1)),
    })
}

fn unreadable(error: &dyn std::fmt::Display) -> Error {
    refused(&format!("it is no SVG that can be read: {error}"))
}

/// The attributes of the element with the sides file; `None` for any other element.
fn sides_words(element: &BytesStart<'_>) -> Result<Option<HashMap<String, String>>, Error> {
    if element.local_name().as_ref() != "sides" {
        return Ok(None);
    }
    let mut words = HashMap::new();
    for attribute in element.attributes().with_checks(false).take(MOST_ATTRIBUTES) {
        let attribute = attribute.map_err(|error| unreadable(&error))?;
        let value =
            quick_xml::escape::unescape(&attribute.value).map_err(|error| unreadable(&error))?;
        words.insert(attribute.key.as_ref().to_owned(), value.into_owned());
    }
    Ok(Some(words))
}

/// The character of a numeric reference or of one of the five named entities of XML.
fn letter(name: &BytesRef<'_>) -> Result<char, Error> {
    let by_number = name.resolve_char_ref().map_err(|error| unreadable(&error))?;
    Ok(match (by_number, &**name) {
        (Some(letter), _) => letter,
        (None, "lt") => '<',
        (None, "gt") => '>',
        (None, "amp") => '&',
        (None, "quot") => '"',
        (None, "apos") => '\'',
        _ => return Err(refused("the sides file inside has an entity of its own")),
    })
}
