//! A page in SVG: its texts, and the sides file in its metadata. No entity is opened, nothing outside is fetched.

use std::collections::HashMap;

use quick_xml::NsReader;
use quick_xml::events::{BytesStart, Event};
use quick_xml::name::ResolveResult;

use crate::error::Error;
use crate::pages::export::svg::{Making, NAMESPACE};
use crate::verify::{Found, Printed, PrintedText, refused};

/// The deepest that elements of a page may lie in each other.
const DEEPEST: usize = 256;
/// The most texts a page may have.
const MOST_TEXTS: usize = 100_000;

/// One open element.
struct Open {
    name: String,
    is_text: bool,
    is_sides: bool,
    is_hidden: bool,
}

/// What has been read so far.
#[derive(Default)]
struct Reading {
    open: Vec<Open>,
    texts: Vec<PrintedText>,
    text: Option<PrintedText>,
    sides: Option<(HashMap<String, String>, String)>,
}

/// Reads a page.
pub(super) fn found(bytes: &[u8]) -> Result<Found, Error> {
    let text = std::str::from_utf8(bytes).map_err(|_| {
        refused("it is neither a PDF nor text in UTF-8; a page ends in `.svg` or `.pdf`")
    })?;
    let mut reader = NsReader::from_str(text.trim_start_matches('\u{feff}'));
    let mut reading = Reading::default();
    loop {
        let (namespace, event) =
            reader.read_resolved_event().map_err(|error| unreadable(&error))?;
        let is_ours =
            matches!(namespace, ResolveResult::Bound(namespace) if namespace.0 == NAMESPACE);
        match event {
            Event::Start(element) => reading.begin(&element, is_ours, false)?,
            Event::Empty(element) => reading.begin(&element, is_ours, true)?,
            Event::End(_) => reading.end(),
            Event::Text(text) => reading.words(&text),
            Event::CData(text) => reading.words(&text),
            Event::GeneralRef(name) => reading.letter(&name)?,
            Event::DocType(_) => {
                return Err(refused("it has a document type, and no page has"));
            }
            Event::PI(_) => {
                return Err(refused("it has an instruction to a program, and no page has"));
            }
            Event::Decl(_) | Event::Comment(_) => {}
            Event::Eof => break,
        }
    }
    if !reading.open.is_empty() {
        return Err(refused("it ends in the middle; a part of the file is missing"));
    }
    reading.finish()
}

fn unreadable(error: &dyn std::fmt::Display) -> Error {
    refused(&format!("it is no SVG that can be read: {error}"))
}

impl Reading {
    fn begin(
        &mut self,
        element: &BytesStart<'_>,
        is_ours: bool,
        is_empty: bool,
    ) -> Result<(), Error> {
        let name = element.local_name().as_ref().to_owned();
        let attributes = attributes(element)?;
        self.refuse(&name, &attributes)?;
        let is_sides = is_ours && name == "sides";
        if is_sides && self.sides.is_some() {
            return Err(refused("it has two sides files inside, and a page has one"));
        }
        let above = self.open.last();
        let is_hidden = above.is_some_and(|open| open.is_hidden) || hides(&attributes);
        let is_text = name == "text";
        if is_text && !is_hidden {
            self.text = Some(PrintedText { words: String::new(), place: place(&attributes) });
        }
        if is_sides {
            self.sides = Some((attributes, String::new()));
        }
        if self.open.len() >= DEEPEST || self.texts.len() >= MOST_TEXTS {
            return Err(refused("it has more in it than any page"));
        }
        self.open.push(Open { name, is_text, is_sides, is_hidden });
        if is_empty {
            self.end();
        }
        Ok(())
    }

    /// What no page has.
    fn refuse(&self, name: &str, attributes: &HashMap<String, String>) -> Result<(), Error> {
        const NEVER: [&str; 6] = ["script", "foreignObject", "iframe", "image", "use", "handler"];
        if NEVER.iter().any(|never| never.eq_ignore_ascii_case(name)) {
            return Err(refused(&format!("it has a `{name}`, and no page has")));
        }
        for (attribute, value) in attributes {
            let local = attribute.rsplit(':').next().unwrap_or(attribute);
            if local.to_lowercase().starts_with("on") {
                return Err(refused(&format!(
                    "it has something that runs (`{attribute}`), and no page has"
                )));
            }
            if local == "href" && !value.starts_with('#') {
                return Err(refused("it refers to something outside, and no page does"));
            }
        }
        Ok(())
    }

    fn end(&mut self) {
        let Some(open) = self.open.pop() else { return };
        if open.is_text
            && let Some(text) = self.text.take()
        {
            self.texts.push(text);
        }
    }

    /// Where words go that come next: into the sides, into a text that is seen, or nowhere.
    fn target(&mut self) -> Option<&mut String> {
        let open = self.open.last()?;
        if open.is_sides {
            return self.sides.as_mut().map(|(_, text)| text);
        }
        let is_told_apart = matches!(open.name.as_str(), "title" | "desc") || open.is_hidden;
        if is_told_apart {
            return None;
        }
        self.text.as_mut().map(|text| &mut text.words)
    }

    fn words(&mut self, words: &str) {
        if let Some(target) = self.target() {
            target.push_str(words);
        }
    }

    /// A letter by its number, or one of the five that XML names.
    fn letter(&mut self, name: &quick_xml::events::BytesRef<'_>) -> Result<(), Error> {
        let by_number = name.resolve_char_ref().map_err(|error| unreadable(&error))?;
        let letter = match (by_number, &**name) {
            (Some(letter), _) => letter,
            (None, "lt") => '<',
            (None, "gt") => '>',
            (None, "amp") => '&',
            (None, "quot") => '"',
            (None, "apos") => '\'',
            _ => return Err(refused("it has an entity of its own, and no page has")),
        };
        let mut bytes = [0; 4];
        self.words(letter.encode_utf8(&mut bytes));
        Ok(())
    }

    fn finish(self) -> Result<Found, Error> {
        let Some((words, sides)) = self.sides else {
            return Err(refused(
                "there is no sides file inside; only pages that fairfoot made, with their metadata kept, can be verified",
            ));
        };
        let word = |name: &str| words.get(name).cloned();
        let number = |name: &str| word(name).and_then(|word| word.parse::<usize>().ok());
        let (Some(making), Some(page), Some(version)) =
            (Making::read(word), number("page"), word("version"))
        else {
            return Err(refused("what it says of how it was made cannot be read"));
        };
        Ok(Found {
            sides,
            making,
            version,
            pages: number("pages"),
            printed: vec![Printed { number: page, texts: self.texts }],
        })
    }
}

fn attributes(element: &BytesStart<'_>) -> Result<HashMap<String, String>, Error> {
    let mut all = HashMap::new();
    for attribute in element.attributes() {
        let attribute = attribute.map_err(|error| unreadable(&error))?;
        let value =
            quick_xml::escape::unescape(&attribute.value).map_err(|error| unreadable(&error))?;
        all.insert(attribute.key.as_ref().to_owned(), value.into_owned());
    }
    Ok(all)
}

/// Where a text stands, if it says so and is not moved by something else.
fn place(attributes: &HashMap<String, String>) -> Option<(f64, f64)> {
    let number = |name: &str| attributes.get(name)?.trim().parse::<f64>().ok();
    Some((number("x")?, number("y")?))
}

/// Whether an element is not to be seen.
fn hides(attributes: &HashMap<String, String>) -> bool {
    let says = |name: &str, value: &str| {
        let plain = attributes.get(name).is_some_and(|said| said.trim() == value);
        let styled = attributes.get("style").is_some_and(|style| {
            style.split(';').any(|part| {
                let mut part = part.splitn(2, ':').map(str::trim);
                part.next() == Some(name) && part.next() == Some(value)
            })
        });
        plain || styled
    };
    says("display", "none")
        || says("visibility", "hidden")
        || says("opacity", "0")
        || says("fill", "none") && attributes.contains_key("x")
}
