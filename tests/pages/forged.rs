//! Edited pages, by kind of change: none is genuine, and the true pages can be regenerated from each.
//!
//! Every kind here shows, says or hides something that the original page does not. None is recognized by its kind: a
//! file that differs in one byte is not what the program makes.

use fairfoot::verify::{self, Verification, Why};
use lopdf::content::{Content, Operation};
use lopdf::{Dictionary, Document, Object, ObjectId, Stream, dictionary};

use super::{pages, sketch};

fn verified(file: &[u8]) -> Verification {
    verify::file(file).unwrap_or_else(|error| panic!("{error}"))
}

/// A small house of three pages.
fn house() -> String {
    sketch("plain-rectangle")
}

fn page() -> String {
    pages(&house()).svg().remove(0)
}

/// The first printed text of a page that has a digit: the start of its element, its text, and the end of the
/// element.
fn a_figure(page: &str) -> (usize, std::ops::Range<usize>, usize) {
    let body = page.find("</style>").expect("fonts");
    let mut at = body;
    loop {
        let begins = at + page[at..].find("<text ").expect("a text");
        let words = begins + page[begins..].find('>').expect("its end") + 1;
        let ends = words + page[words..].find("</text>").expect("its end");
        if page[words..ends].contains(|letter: char| letter.is_ascii_digit()) {
            return (begins, words..ends, ends + "</text>".len());
        }
        at = ends;
    }
}

/// The page with text inserted before the first figure's element, and after it.
fn around(page: &str, before: &str, after: &str) -> String {
    let (begins, _, ends) = a_figure(page);
    [&page[..begins], before, &page[begins..ends], after, &page[ends..]].concat()
}

/// The page with attributes added to the first figure's element.
fn with_attributes(page: &str, attributes: &str) -> String {
    let (begins, ..) = a_figure(page);
    let at = begins + "<text ".len();
    [&page[..at], attributes, " ", &page[at..]].concat()
}

/// The page with text inserted at its end.
fn with_more(page: &str, more: &str) -> String {
    page.replacen("</svg>", &format!("{more}</svg>"), 1)
}

/// The first figure's text with every digit increased by one.
fn other_words(page: &str) -> String {
    let (_, words, _) = a_figure(page);
    page[words].chars().map(another_digit).collect()
}

fn another_digit(letter: char) -> char {
    match letter.to_digit(10) {
        Some(digit) => char::from_digit((digit + 1) % 10, 10).expect("a digit"),
        None => letter,
    }
}

/// Every kind of change to a page in SVG.
fn forged_svg(page: &str) -> Vec<(&'static str, String)> {
    const WHITE: &str = "<rect x=\"60\" y=\"60\" width=\"400\" height=\"30\" fill=\"white\"/>";
    let (begins, words, ends) = a_figure(page);
    let other = other_words(page);
    let shown = format!("<text x=\"60\" y=\"80\" font-size=\"12\">{other}</text>");
    let font = page.find("base64,").expect("a font") + "base64,".len();
    let font_end = font + page[font..].find(')').expect("its end");
    let swapped: String = page[words.clone()].chars().rev().collect();
    vec![
        ("a digit edited", [&page[..words.start], &other, &page[words.end..]].concat()),
        ("letters turned round", [&page[..words.start], &swapped, &page[words.end..]].concat()),
        ("no fill, a stroke", with_attributes(page, "fill=\"none\" stroke=\"none\"")),
        ("a style that wins over attributes", with_attributes(page, "style=\"font-size:0\"")),
        ("white letters", with_attributes(page, "fill=\"white\"")),
        ("letters of no size", with_attributes(page, "style=\"font-size:0px\"")),
        ("letters that are transparent", with_attributes(page, "fill-opacity=\"0\"")),
        ("letters squeezed", with_attributes(page, "textLength=\"1\" lengthAdjust=\"spacingAndGlyphs\"")),
        ("a scale of nothing", with_attributes(page, "transform=\"scale(0)\"")),
        ("letters moved off the page", with_attributes(page, "dx=\"5000\"")),
        ("the order of letters overridden", with_attributes(page, "direction=\"rtl\" unicode-bidi=\"bidi-override\"")),
        ("marks that turn the order", page.replacen(&page[words.clone()], &format!("\u{202e}{swapped}\u{202c}"), 1)),
        ("a hidden group with a child that shows", around(page, "<g visibility=\"hidden\">", &format!("<g visibility=\"visible\">{shown}</g></g>"))),
        ("a group not displayed", around(page, "<g display=\"none\">", &format!("</g>{shown}"))),
        ("only for another language", around(page, "<switch><g systemLanguage=\"zz\">", &format!("</g>{shown}</switch>"))),
        ("moved into definitions", around(page, "<defs>", &format!("</defs>{shown}"))),
        ("an animation of a value", with_more(page, &format!("{shown}<set attributeName=\"visibility\" to=\"visible\" begin=\"1s\"/>"))),
        ("a fill that is animated", page.replacen("</text>", "<animate attributeName=\"fill\" to=\"white\" dur=\"1s\" fill=\"freeze\"/></text>", 1)),
        ("a rule of style", page.replacen("</style>", "text{fill:white}</style>", 1)),
        ("a rule that writes", page.replacen("</style>", "text::before{content:'9'}</style>", 1)),
        ("a second style sheet", with_more(page, "<style>text{display:none}</style>")),
        ("another font for the digits", page.replacen("@font-face", "@font-face{font-family:'Fairfoot Sans';src:local('x');unicode-range:U+30-39}@font-face", 1)),
        ("a font with other outlines", format!("{}d09GMgABAAAAA{}", &page[..font], &page[font_end..])),
        ("a clip path", around(page, "<clipPath id=\"c\"><path d=\"M0 0\"/></clipPath><g clip-path=\"url(#c)\">", "</g>")),
        ("a mask", around(page, "<mask id=\"m\"/><g mask=\"url(#m)\">", "</g>")),
        ("a filter", around(page, "<filter id=\"f\"><feFlood/></filter><g filter=\"url(#f)\">", "</g>")),
        ("a box laid over it", with_more(page, &format!("{WHITE}{shown}"))),
        ("a line drawn over a digit", with_more(page, "<path d=\"M60 60L80 80\" stroke=\"black\"/>")),
        ("a picture laid over it", with_more(page, "<image href=\"data:image/png;base64,AAAA\" width=\"612\" height=\"792\"/>")),
        ("a picture from outside", with_more(page, "<image href=\"//127.0.0.1/a.png\" width=\"9\" height=\"9\"/>")),
        ("a use of something else", with_more(page, "<symbol id=\"s\"><text>9</text></symbol><use href=\"#s\"/>")),
        ("a page inside the page", with_more(page, &format!("<svg x=\"0\" y=\"0\">{WHITE}{shown}</svg>"))),
        ("letters along a path", with_more(page, "<path id=\"p\" d=\"M60 80H400\"/><text><textPath href=\"#p\">9</textPath></text>")),
        ("a foreign object", with_more(page, "<foreignObject width=\"612\" height=\"792\"><p>9</p></foreignObject>")),
        ("a script", with_more(page, "<script>document.title='9'</script>")),
        ("something that runs", with_attributes(page, "onclick=\"alert(1)\"")),
        ("a style sheet from outside", page.replacen("<svg", "<?xml-stylesheet href=\"a.css\"?><svg", 1)),
        ("another part of the page shown", page.replacen("viewBox=\"0 0 612 792\"", "viewBox=\"0 0 612 400\"", 1)),
        ("what is told to who hears the page", page.replacen("<desc id=\"desc\">", "<desc id=\"desc\">Measured 9 sq ft. ", 1)),
        ("the title", page.replacen("Exhibit, page", "Exhibit B, page", 1)),
        ("a label for who hears the page", with_attributes(page, "aria-label=\"9\"")),
        ("a text left out", [&page[..begins], &page[ends..]].concat()),
        ("the same text said otherwise", [&page[..words.start], "<![CDATA[", page[words.clone()].trim(), "]]>", &page[words.end..]].concat()),
        ("a comment", with_more(page, "<!-- nothing -->")),
        ("a second sides file", with_more(page, "<metadata><f:sides xmlns:f=\"urn:fairfoot:sides:1\" version=\"0.1.0\">x</f:sides></metadata>")),
        ("another number of pages", page.replacen("pages=\"3\"", "pages=\"4\"", 1)),
        ("other settings", page.replacen("halves=\"up\"", "halves=\"down\"", 1)),
        ("settings that are none", page.replacen("halves=\"up\"", "halves=\"sideways\"", 1)),
        ("another page's number", page.replacen("page=\"1\"", "page=\"2\"", 1)),
        ("a space after its end", format!("{page} ")),
        ("a mark before its start", format!("\u{feff}{page}")),
    ]
}

#[test]
fn no_changed_svg_is_genuine_and_its_true_page_can_be_made_again() {
    let made = pages(&house());
    let page = made.svg().remove(0);
    assert!(verified(page.as_bytes()).is_genuine());
    let forged = forged_svg(&page);
    assert!(forged.len() >= 50);
    for (kind, forged) in forged {
        assert!(forged != page, "{kind}");
        let answer = verified(forged.as_bytes());
        assert!(!answer.is_genuine(), "{kind}");
        assert_eq!(answer.sides(), made.sides(), "{kind}");
        if !kind.contains("settings") {
            assert!(answer.pages().svg() == made.svg(), "{kind}");
        }
    }
}

/// A PDF parsed, changed and written again.
fn edited(pdf: &[u8], edit: impl FnOnce(&mut Document)) -> Vec<u8> {
    let mut document = Document::load_mem(pdf).unwrap();
    edit(&mut document);
    let mut bytes = Vec::new();
    document.save_to(&mut bytes).unwrap();
    bytes
}

fn first_page(document: &Document) -> ObjectId {
    document.get_pages()[&1]
}

fn page_dictionary(document: &mut Document) -> &mut Dictionary {
    let page = first_page(document);
    document.get_dictionary_mut(page).unwrap()
}

/// Changes what the first page draws.
fn redrawn(document: &mut Document, edit: impl FnOnce(&mut Vec<Operation>)) {
    let page = first_page(document);
    let mut content = Content::decode(&document.get_page_content(page)).unwrap();
    edit(&mut content.operations);
    document.change_page_content(page, content.encode().unwrap()).unwrap();
}

fn operation(operator: &str, operands: Vec<Object>) -> Operation {
    Operation::new(operator, operands)
}

/// The numbers of all objects that have this word as their type.
fn of_type(document: &Document, word: &[u8]) -> Vec<ObjectId> {
    let is_of = |object: &Object| match object {
        Object::Dictionary(dictionary) => dictionary.has_type(word),
        Object::Stream(stream) => stream.dict.has_type(word),
        _ => false,
    };
    document.objects.iter().filter(|(_, object)| is_of(object)).map(|(&id, _)| id).collect()
}

/// The stream that a font names under `key`.
fn font_stream<'a>(document: &'a mut Document, word: &[u8], key: &[u8]) -> &'a mut Stream {
    let font = of_type(document, word)[0];
    let stream = document.get_dictionary(font).unwrap().get(key).unwrap().as_reference().unwrap();
    document.get_object_mut(stream).unwrap().as_stream_mut().unwrap()
}

/// Swaps the first two texts of the page.
fn texts_swapped(operations: &mut [Operation]) {
    let shown: Vec<usize> = operations
        .iter()
        .enumerate()
        .filter(|(_, operation)| matches!(operation.operator.as_str(), "Tj" | "TJ"))
        .map(|(i, _)| i)
        .collect();
    let kept = operations[shown[0]].operands.clone();
    operations[shown[0]].operands = operations[shown[1]].operands.clone();
    operations[shown[1]].operands = kept;
}

/// Every kind of change to a PDF.
fn forged_pdf(pdf: &[u8]) -> Vec<(&'static str, Vec<u8>)> {
    let mut all: Vec<(&'static str, Vec<u8>)> = Vec::new();
    let mut kind =
        |name: &'static str, edit: &dyn Fn(&mut Document)| all.push((name, edited(pdf, edit)));
    kind("saved again and nothing else", &|_| {});
    kind("texts that change places", &|document| redrawn(document, |all| texts_swapped(all)));
    kind("letters that do not show", &|document| {
        redrawn(document, |all| all.insert(0, operation("Tr", vec![3.into()])));
    });
    kind("white letters", &|document| {
        redrawn(document, |all| all.insert(0, operation("rg", vec![1.into(), 1.into(), 1.into()])));
    });
    kind("a clip that leaves nothing", &|document| {
        redrawn(document, |all| {
            let zero = || vec![0.into(), 0.into(), 0.into(), 0.into()];
            all.splice(
                0..0,
                [operation("re", zero()), operation("W", vec![]), operation("n", vec![])],
            );
        });
    });
    kind("a scale of nearly nothing", &|document| {
        redrawn(document, |all| {
            let numbers = [0.001, 0.0, 0.0, 0.001, 0.0, 0.0].map(Object::from).to_vec();
            all.insert(0, operation("cm", numbers));
        });
    });
    kind("a box laid over the page", &|document| {
        redrawn(document, |all| {
            let numbers = [0, 0, 600, 700].map(Object::from).to_vec();
            all.extend([
                operation("g", vec![1.into()]),
                operation("re", numbers),
                operation("f", vec![]),
            ]);
        });
    });
    kind("nothing drawn", &|document| redrawn(document, Vec::clear));
    kind("a form laid over the page", &|document| {
        let form = dictionary! { "Type" => "XObject", "Subtype" => "Form", "BBox" => vec![0.into(), 0.into(), 600.into(), 700.into()] };
        let form = document.add_object(Stream::new(form, b"1 g 0 0 600 700 re f".to_vec()));
        let page = first_page(document);
        document.add_xobject(page, "Over", form).unwrap();
        redrawn(document, |all| all.push(operation("Do", vec!["Over".into()])));
    });
    kind("a part that may be switched off", &|document| {
        redrawn(document, |all| {
            all.insert(0, operation("BDC", vec!["OC".into(), "Off".into()]));
            all.push(operation("EMC", vec![]));
        });
    });
    kind("letters that read as others", &|document| {
        let stream = font_stream(document, b"Font", b"ToUnicode");
        stream.decompress().ok();
        stream.set_plain_content(b"1 beginbfchar <0001> <0039> endbfchar".to_vec());
    });
    kind("a font with other outlines", &|document| {
        let stream = font_stream(document, b"FontDescriptor", b"FontFile2");
        stream.decompress().ok();
        let content = stream.content.iter().map(|byte| byte.rotate_left(1)).collect();
        stream.set_plain_content(content);
    });
    kind("letters of other widths", &|document| {
        let descriptor = of_type(document, b"FontDescriptor")[0];
        document.get_dictionary_mut(descriptor).unwrap().set("Ascent", 1);
    });
    kind("a note over the page", &|document| {
        let note = dictionary! { "Type" => "Annot", "Subtype" => "FreeText", "Rect" => vec![60.into(), 60.into(), 300.into(), 90.into()], "Contents" => Object::string_literal("1,999 sq ft") };
        let note = document.add_object(note);
        page_dictionary(document).set("Annots", vec![note.into()]);
    });
    kind("a stamp with a picture of its own", &|document| {
        let look = document.add_object(Stream::new(
            dictionary! { "Subtype" => "Form" },
            b"1 g 0 0 99 99 re f".to_vec(),
        ));
        let stamp = dictionary! { "Subtype" => "Stamp", "AP" => dictionary! { "N" => look } };
        let stamp = document.add_object(stamp);
        page_dictionary(document).set("Annots", vec![stamp.into()]);
    });
    kind("a part of the page cropped", &|document| {
        page_dictionary(document).set("CropBox", vec![0.into(), 0.into(), 612.into(), 400.into()]);
    });
    kind("the page turned", &|document| page_dictionary(document).set("Rotate", 180));
    kind("a unit of its own", &|document| page_dictionary(document).set("UserUnit", 2.0));
    kind("a page less", &|document| document.delete_pages(&[2]));
    kind("the first page twice", &|document| {
        let (page, root) = (
            first_page(document),
            document.catalog().unwrap().get(b"Pages").unwrap().as_reference().unwrap(),
        );
        let kids = document
            .get_dictionary_mut(root)
            .unwrap()
            .get_mut(b"Kids")
            .unwrap()
            .as_array_mut()
            .unwrap();
        kids.insert(0, page.into());
    });
    kind("pages in another order", &|document| {
        let root = document.catalog().unwrap().get(b"Pages").unwrap().as_reference().unwrap();
        document
            .get_dictionary_mut(root)
            .unwrap()
            .get_mut(b"Kids")
            .unwrap()
            .as_array_mut()
            .unwrap()
            .reverse();
    });
    kind("an action when it is opened", &|document| {
        let action =
            dictionary! { "S" => "JavaScript", "JS" => Object::string_literal("app.alert(1)") };
        document.catalog_mut().unwrap().set("OpenAction", action);
    });
    kind("a form to fill in", &|document| {
        document.catalog_mut().unwrap().set("AcroForm", dictionary! { "NeedAppearances" => true });
    });
    kind("another title", &|document| {
        let info = document.trailer.get(b"Info").unwrap().as_reference().unwrap();
        document
            .get_dictionary_mut(info)
            .unwrap()
            .set("Title", Object::string_literal("Record 9 sq ft"));
    });
    kind("a second attachment of the same name", &|document| {
        let file = document.add_object(Stream::new(
            dictionary! { "Type" => "EmbeddedFile" },
            b"level \"X\"".to_vec(),
        ));
        let place = dictionary! { "Type" => "Filespec", "UF" => Object::string_literal("house.sides"), "EF" => dictionary! { "F" => file } };
        let place = document.add_object(place);
        document.catalog_mut().unwrap().set("AF", vec![place.into()]);
    });
    kind("streams packed by another program", &Document::compress);
    all.push(("a line after its end", [pdf, b"\n"].concat()));
    all.push((
        "another file after its end",
        [pdf, b"1 0 obj<<>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n"].concat(),
    ));
    all.push(("another version in its head", [b"%PDF-1.4", &pdf[8..]].concat()));
    all
}

#[test]
fn no_changed_pdf_is_genuine_and_its_true_pages_can_be_made_again() {
    let made = pages(&house());
    let pdf = made.pdf().unwrap();
    assert!(verified(&pdf).is_genuine());
    let forged = forged_pdf(&pdf);
    assert!(forged.len() >= 28);
    for (kind, forged) in forged {
        assert!(forged != pdf, "{kind}");
        let answer = verified(&forged);
        assert!(!answer.is_genuine(), "{kind}");
        assert_eq!(answer.sides(), made.sides(), "{kind}");
        assert!(answer.pages().svg() == made.svg(), "{kind}");
    }
}

/// Pseudorandom positions in a file, the same on every run (xorshift, Marsaglia 2003).
fn places(below: usize, count: usize) -> impl Iterator<Item = (usize, u8)> {
    let mut state = 0x9e37_79b9_7f4a_7c15_u64;
    std::iter::repeat_with(move || {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        let place = usize::try_from(state >> 16).unwrap() % below;
        (place, 1 << (state % 8))
    })
    .take(count)
}

/// Flips one bit at each of several positions; none of the files is genuine.
fn one_bit_turned(file: &[u8], all: u32) {
    let count = usize::try_from(crate::cases(all)).expect("a small number");
    for (place, bit) in places(file.len(), count) {
        let mut forged = file.to_vec();
        forged[place] ^= bit;
        if let Ok(answer) = verify::file(&forged) {
            assert!(!answer.is_genuine(), "byte {place}, bit {bit}");
        }
    }
}

#[test]
fn an_svg_with_one_bit_flipped_is_not_genuine() {
    one_bit_turned(page().as_bytes(), 500);
}

#[test]
fn a_pdf_with_one_bit_flipped_is_not_genuine() {
    one_bit_turned(&pages(&house()).pdf().unwrap(), 500);
}

#[test]
fn edited_sides_make_pages_that_differ_from_the_file() {
    let page = page();
    let forged = page.replacen("north 27&apos; 8&quot;", "north 27&apos; 9&quot;", 1).replacen(
        "south 27&apos; 8&quot;",
        "south 27&apos; 9&quot;",
        1,
    );
    assert!(forged != page);
    let answer = verified(forged.as_bytes());
    assert!(!answer.is_genuine());
    assert_ne!(answer.pages().fingerprint(), verified(page.as_bytes()).pages().fingerprint());
}

#[test]
fn differences_are_reported_line_by_line() {
    let page = pages(&sketch("brick-garage")).svg().remove(0);
    let forged = page.replacen(">\n1,757 sq ft net\n<", ">\n1,657 sq ft net\n<", 1);
    assert!(forged != page);
    let answer = verified(forged.as_bytes());
    let Why::Differs { lines, all } = answer.why() else { panic!("{:?}", answer.why()) };
    assert_eq!((lines.len(), *all), (1, 1));
    assert_eq!(lines[0].found, "1,657 sq ft net");
    assert_eq!(lines[0].made, "1,757 sq ft net");
}

#[test]
fn line_ends_changed_by_mail_are_recognized() {
    let made = pages(&house());
    let to_crlf = |bytes: &[u8]| {
        let mut turned = Vec::new();
        for (i, &byte) in bytes.iter().enumerate() {
            if byte == b'\n' && (i == 0 || bytes[i - 1] != b'\r') {
                turned.push(b'\r');
            }
            turned.push(byte);
        }
        turned
    };
    for file in made.svg().into_iter().map(String::into_bytes).chain([made.pdf().unwrap()]) {
        let answer = verified(&to_crlf(&file));
        assert!(!answer.is_genuine());
        assert_eq!(answer.why(), &Why::LineEnds);
        assert!(answer.pages().svg() == made.svg());
    }
    // Line ends and a figure: not just that.
    let (_, words, _) = a_figure(&page());
    let mut page = page();
    let other = other_words(&page);
    page.replace_range(words, &other);
    let answer = verified(&to_crlf(page.as_bytes()));
    assert!(matches!(answer.why(), Why::Differs { .. }), "{:?}", answer.why());
}

#[test]
fn a_page_of_another_version_is_reported_as_such() {
    let made = pages(&house());
    let page = page().replacen("version=\"0.1.0\"", "version=\"9.9.9\"", 1);
    let answer = verified(page.as_bytes());
    assert_eq!(answer.why(), &Why::OtherVersion("9.9.9".to_owned()));
    let mut pdf = made.pdf().unwrap();
    let at = pdf.windows(14).position(|bytes| bytes == b"fairfoot 0.1.0").unwrap();
    pdf[at + 9] = b'7';
    let answer = verified(&pdf);
    assert_eq!(answer.why(), &Why::OtherVersion("7.1.0".to_owned()));
    assert!(answer.pages().svg() == made.svg());
}

#[test]
fn bytes_after_the_end_are_counted() {
    let pdf = pages(&house()).pdf().unwrap();
    let answer = verified(&[&pdf[..], b"%signed\n"].concat());
    assert_eq!(answer.why(), &Why::Added(8));
}

#[test]
fn pages_made_with_other_settings_and_paper_are_genuine_too() {
    use fairfoot::units::{FineStep, Halves, Length, Step};
    use fairfoot::{Paper, Settings, Weights};
    let text = house();
    let read = fairfoot::read("house.sides", text.as_str()).unwrap();
    let mut prints = std::collections::BTreeSet::new();
    for halves in [Halves::Up, Halves::Down, Halves::Even] {
        for (fine, paper) in [(FineStep::TenthFoot, Paper::Letter), (FineStep::Inch, Paper::A4)] {
            for reading in
                [Length::from_nm(0), Settings::default().reading, Step::HalfFoot.length()]
            {
                let settings = Settings { halves, fine, reading };
                let areas = read.areas(&settings).unwrap();
                let made = areas.reconcile(&Weights::default()).unwrap().pages(paper).unwrap();
                for page in made.svg() {
                    assert!(verified(page.as_bytes()).is_genuine(), "{settings:?}");
                }
                assert!(verified(&made.pdf().unwrap()).is_genuine(), "{settings:?}");
                let shown =
                    made.pages()[0].texts().any(|text| text.words().contains(&made.fingerprint()));
                assert!(shown, "it stands on the foot");
                prints.insert(made.fingerprint());
            }
        }
    }
    assert_eq!(prints.len(), 18, "each set of settings has its own");
}
