//! A page that another program saved again holds; one whose figure was edited does not.

use fairfoot::verify::{self, Verification};
use lopdf::content::Content;
use quick_xml::events::{BytesEnd, BytesStart, BytesText, Event};
use quick_xml::{Reader, Writer};

use crate::{pages, sketch};

fn verified(page: &str) -> Verification {
    verify::sheet(page.as_bytes()).expect("a page")
}

/// The page as another program may save it: set in, attributes the other way round, every text in a `tspan`,
/// letters as numbers, places as transforms, metadata of its own.
fn saved_again(page: &str) -> String {
    let mut reader = Reader::from_str(page);
    let mut writer = Writer::new(Vec::new());
    let mut in_text = false;
    loop {
        match reader.read_event().unwrap() {
            Event::Eof => break,
            Event::Start(start) if start.name().as_ref() == "text" => {
                in_text = true;
                let mut place = (String::new(), String::new());
                let mut kept = BytesStart::new("text");
                let attributes: Vec<_> = start.attributes().map(Result::unwrap).collect();
                for attribute in attributes.iter().rev() {
                    match attribute.key.as_ref() {
                        "x" => place.0 = attribute.value.to_string(),
                        "y" => place.1 = attribute.value.to_string(),
                        _ => {
                            kept.push_attribute((attribute.key.as_ref(), attribute.value.as_ref()))
                        }
                    }
                }
                kept.push_attribute(("other:role", "line"));
                writer.write_event(Event::Start(kept)).unwrap();
                let mut span = BytesStart::new("tspan");
                span.push_attribute(("x", place.0.as_str()));
                span.push_attribute(("y", place.1.as_str()));
                writer.write_event(Event::Start(span)).unwrap();
            }
            Event::Text(text) if in_text => {
                // Blanks round a text say nothing; letters may be written by number.
                let words = text.trim().replace('1', "\u{1}");
                let words = BytesText::from_escaped(words.replace('\u{1}', "&#49;"));
                writer.write_event(Event::Text(words)).unwrap();
            }
            Event::End(end) if end.name().as_ref() == "text" => {
                in_text = false;
                writer.write_event(Event::End(BytesEnd::new("tspan"))).unwrap();
                writer.write_event(Event::End(end)).unwrap();
            }
            other => writer.write_event(other).unwrap(),
        }
    }
    let text = String::from_utf8(writer.into_inner()).unwrap();
    text.replacen("<svg", "<svg xmlns:other=\"urn:other\"", 1).replacen(
        "<metadata>",
        "<other:view zoom=\"2\"/><metadata><other:made by=\"another\">2</other:made>",
        1,
    )
}

#[test]
fn a_page_saved_again_with_its_text_kept_holds() {
    for name in ["brick-garage", "farmhouse", "lot", "round-bay"] {
        for page in pages(&sketch(name)).svg() {
            let again = saved_again(&page);
            assert_ne!(again, page);
            let verified = verified(&again);
            assert!(verified.holds(), "{name}: {:?}", verified.checks());
            assert!(!verified.is_unchanged());
        }
    }
}

#[test]
fn every_number_that_is_edited_by_hand_is_found_out() {
    let page = pages(&sketch("brick-garage")).svg().remove(0);
    let body = page.find("</style>").unwrap();
    let mut edited = 0;
    for (at, digit) in page.char_indices().filter(|&(at, c)| at > body && c.is_ascii_digit()) {
        // Only digits that are printed: between the start and the end of a text.
        let before = &page[..at];
        let Some(opened) = before.rfind("<text ") else { continue };
        let is_printed = before[opened..].contains('>') && !before[opened..].contains("</text");
        if !is_printed || edited > 400 {
            continue;
        }
        let other = if digit == '7' { "1" } else { "7" };
        let forged = format!("{}{other}{}", &page[..at], &page[at + 1..]);
        let verified = verified(&forged);
        assert!(!verified.holds() && !verified.is_unchanged(), "{:?}", &page[opened..at + 8]);
        edited += 1;
    }
    assert!(edited > 150, "{edited}");
}

#[test]
fn a_mismatch_says_what_is_printed_and_what_follows() {
    let page = pages(&sketch("brick-garage")).svg().remove(0);
    let forged = page.replacen(">\n1,757 sq ft net\n<", ">\n1,657 sq ft net\n<", 1);
    assert_ne!(forged, page);
    let verified = verified(&forged);
    let mismatches = verified.checks()[0].mismatches();
    assert_eq!(mismatches.len(), 1, "{mismatches:?}");
    assert_eq!(mismatches[0].printed, "1,657 sq ft net");
    assert_eq!(mismatches[0].figured, "1,757 sq ft net");
}

#[test]
fn sides_that_are_edited_with_the_page_left_alone_are_found_out() {
    let page = pages(&sketch("brick-garage")).svg().remove(0);
    let forged = page.replacen("east  21&apos; 7 1/2&quot;", "east  21&apos; 8 1/2&quot;", 1);
    assert_ne!(forged, page);
    assert!(!verified(&forged).holds());
}

#[test]
fn texts_that_change_places_are_found_out() {
    let page = pages(&sketch("brick-garage")).svg().remove(0);
    // The first and the last text of the page change their heights.
    let ys: Vec<(usize, usize)> = page
        .match_indices("<text ")
        .map(|(at, _)| {
            let from = at + page[at..].find(" y=\"").unwrap() + 4;
            (from, from + page[from..].find('"').unwrap())
        })
        .collect();
    let (a, b) = (ys[2], ys[ys.len() - 3]);
    let forged =
        [&page[..a.0], &page[b.0..b.1], &page[a.1..b.0], &page[a.0..a.1], &page[b.1..]].concat();
    let verified = verified(&forged);
    assert!(verified.checks()[0].mismatches().iter().all(|mismatch| mismatch.is_moved));
    assert_eq!(verified.checks()[0].mismatches().len(), 2);
}

#[test]
fn a_text_that_is_hidden_or_added_is_found_out() {
    let page = pages(&sketch("cottage")).svg().remove(0);
    let hidden = page.replacen("<text ", "<text display=\"none\" ", 1);
    assert!(!verified(&hidden).holds());
    let styled = page.replacen("<text ", "<text style=\"visibility: hidden\" ", 1);
    assert!(!verified(&styled).holds());
    let added = page.replacen("</svg>", "<text x=\"50\" y=\"50\">Record 500 sq ft</text></svg>", 1);
    let verified = verified(&added);
    assert!(verified.checks()[0].mismatches().iter().any(|m| m.printed.contains("500")));
}

#[test]
fn a_pdf_written_anew_holds_and_one_with_a_figure_edited_does_not() {
    let pdf = pages(&sketch("brick-garage")).pdf().unwrap();
    let mut document = lopdf::Document::load_mem(&pdf).unwrap();
    document.decompress();
    let mut anew = Vec::new();
    document.save_to(&mut anew).unwrap();
    let verified = verify::sheet(&anew).unwrap();
    assert!(verified.holds() && !verified.is_unchanged(), "{:?}", verified.checks());
    // The first two letters of the page change places.
    let page = document.get_pages()[&1];
    let mut content = Content::decode(&document.get_page_content(page)).unwrap();
    let shown: Vec<usize> = content
        .operations
        .iter()
        .enumerate()
        .filter(|(_, operation)| matches!(operation.operator.as_str(), "Tj" | "TJ"))
        .map(|(i, _)| i)
        .collect();
    let (a, b) = (shown[0], shown[1]);
    let kept = content.operations[a].operands.clone();
    content.operations[a].operands = content.operations[b].operands.clone();
    content.operations[b].operands = kept;
    document.change_page_content(page, content.encode().unwrap()).unwrap();
    let mut forged = Vec::new();
    document.save_to(&mut forged).unwrap();
    let verified = verify::sheet(&forged).unwrap();
    assert!(!verified.holds(), "{:?}", verified.checks());
}
