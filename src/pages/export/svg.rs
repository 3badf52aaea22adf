//! A page as SVG, the original of what is printed, with the sides file in its metadata.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use std::fmt::Write as _;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use svg::node::element::{self, Element};
use svg::node::{Blob, Text as Content};
use svg::{Document, Node};

use crate::pages::Pages;
use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::page::{Anchor, Fill, Ink, Page, Photograph, Point, Run, Stroke, Text};
use crate::wording::sentences::capital;

/// The XML namespace of the sides file in a page's metadata.
pub(crate) const NAMESPACE: &str = "urn:fairfoot:sides:1";

/// A complete page, with fonts and the sides file inside.
pub(crate) fn written(pages: &Pages, page: &Page, number: usize) -> String {
    let mut document = base(page);
    document.append(metadata(pages, number));
    document.append(element::Style::new(style(page)));
    append(&mut document, page);
    finished(&document)
}

/// A page for rendering only, without fonts and the sides file.
pub(crate) fn plain(page: &Page) -> String {
    let mut document = base(page);
    append(&mut document, page);
    finished(&document)
}

fn finished(document: &Document) -> String {
    format!("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n{document}\n")
}

fn base(page: &Page) -> Document {
    let inches = |points: f64| format!("{}in", figure(points / 72.0));
    // A supplement says so in its number.
    let section =
        page.title.trim_start_matches("Supplement, continued").trim_start_matches("Supplement");
    let number = match section.is_empty() {
        true => capital(&page.number),
        false => format!("{section}, {}", page.number),
    };
    let title = match page.house.is_empty() {
        true => number,
        false => format!("{}: {number}", page.house),
    };
    let mut document = Document::new()
        .set("width", inches(page.width_pt))
        .set("height", inches(page.height_pt))
        .set("viewBox", format!("0 0 {} {}", figure(page.width_pt), figure(page.height_pt)))
        // Not only an image (WAI-ARIA Graphics Module): its texts are to be read too.
        .set("role", "graphics-document document")
        .set("aria-labelledby", "title desc")
        .set("xml:lang", "en");
    document.append(element::Title::new(title).set("id", "title"));
    document
        .append(element::Description::new().set("id", "desc").add(Content::new(&page.description)));
    document
}

/// The sides file, and how the page was made from it.
fn metadata(pages: &Pages, number: usize) -> Element {
    let mut opening = format!(
        "<ff:sides xmlns:ff=\"{NAMESPACE}\" xml:space=\"preserve\" version=\"{}\" page=\"{}\" pages=\"{}\"",
        env!("CARGO_PKG_VERSION"),
        number + 1,
        pages.pages.len()
    );
    for (name, word) in pages.words() {
        let _ = write!(opening, " {name}=\"{}\"", quick_xml::escape::escape(&word));
    }
    // A literal carriage return would be read as a line feed.
    let text = quick_xml::escape::escape(&pages.text).replace('\r', "&#13;");
    let mut metadata = Element::new("metadata");
    metadata.append(Blob::new(format!("{opening}>{text}</ff:sides>")));
    metadata
}

/// The fonts used on a page, limited to common letters if it has no others.
fn style(page: &Page) -> String {
    let mut style = String::new();
    for hand in Typeface::ALL {
        let mut texts = page.texts().filter(|text| text.hand == hand).peekable();
        if texts.peek().is_none() {
            continue;
        }
        let common = |text: &Text| text.words.chars().all(fonts::is_common);
        let font = STANDARD.encode(hand.packed(!texts.all(common)));
        let (family, weight) = hand.family();
        let _ = write!(
            style,
            "@font-face{{font-family:'{family}';font-weight:{weight};src:url(data:font/woff2;base64,{font}) format('woff2');}}"
        );
    }
    style
}

fn append(document: &mut Document, page: &Page) {
    let sheet = element::Rectangle::new()
        .set("width", figure(page.width_pt))
        .set("height", figure(page.height_pt))
        .set("fill", "white");
    document.append(sheet);
    for ink in &page.inks {
        match ink {
            Ink::Text(text) => document.append(letters(text)),
            Ink::Stroke(stroke) => document.append(line(stroke)),
            Ink::Photograph(photograph) => document.append(image(photograph)),
        }
    }
}

fn letters(text: &Text) -> element::Text {
    let (family, weight) = text.hand.family();
    let fallback = if text.hand == Typeface::Even { "monospace" } else { "sans-serif" };
    let mut element = element::Text::new(text.words.as_str())
        .set("x", figure(text.at.x_pt))
        .set("y", figure(text.at.y_pt))
        .set("font-family", format!("'{family}', {fallback}"))
        .set("font-size", figure(text.size_pt));
    if weight != 400 {
        element = element.set("font-weight", weight);
    }
    match text.anchor {
        Anchor::Start => {}
        Anchor::Middle => element = element.set("text-anchor", "middle"),
        Anchor::End => element = element.set("text-anchor", "end"),
    }
    // Dots that lead the eye are not read aloud.
    if text.words.bytes().all(|byte| matches!(byte, b'.' | b' ')) {
        element = element.set("aria-hidden", "true");
    }
    if text.is_hollow {
        element = element.set("fill", "none").set("stroke", "black").set("stroke-width", "0.6");
    }
    if text.turn != 0.0 {
        let turn = format!(
            "rotate({} {} {})",
            figure(text.turn),
            figure(text.at.x_pt),
            figure(text.at.y_pt)
        );
        element = element.set("transform", turn);
    }
    element
}

fn line(stroke: &Stroke) -> element::Path {
    let mut path = String::new();
    for run in &stroke.runs {
        let spot = |spot: Point| format!("{} {}", figure(spot.x_pt), figure(spot.y_pt));
        let _ = match *run {
            Run::Move(to) => write!(path, "M{}", spot(to)),
            Run::Line(to) => write!(path, "L{}", spot(to)),
            Run::Arc { to, radius_pt, is_large, clockwise } => write!(
                path,
                "A{0} {0} 0 {1} {2} {3}",
                figure(radius_pt),
                u8::from(is_large),
                u8::from(clockwise),
                spot(to)
            ),
            Run::Close => write!(path, "Z"),
        };
    }
    let fill = match stroke.fill {
        Fill::None => "none",
        Fill::White => "white",
        Fill::Black => "black",
    };
    let mut element = element::Path::new().set("d", path).set("fill", fill);
    if stroke.width_pt > 0.0 {
        element = element.set("stroke", "black").set("stroke-width", figure(stroke.width_pt));
    }
    if let Some([on, off]) = stroke.dashes {
        element = element.set("stroke-dasharray", format!("{} {}", figure(on), figure(off)));
    }
    element
}

/// The prefix of the bytes of a photograph, which are in base64.
pub(crate) const PHOTOGRAPH: &str = "data:image/jpeg;base64,";

fn image(photograph: &Photograph) -> element::Image {
    element::Image::new()
        .set("x", figure(photograph.at.x_pt))
        .set("y", figure(photograph.at.y_pt))
        .set("width", figure(photograph.width_pt))
        .set("height", figure(photograph.height_pt))
        .set("preserveAspectRatio", "none")
        .set("role", "img")
        .set("aria-label", photograph.told.as_str())
        .set("href", format!("{PHOTOGRAPH}{}", STANDARD.encode(photograph.picture.bytes())))
}

/// A number of points with up to three decimals.
fn figure(points: f64) -> String {
    let text = format!("{points:.3}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}
