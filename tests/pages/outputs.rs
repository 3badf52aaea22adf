//! The files: the same bytes for the same sides, and their true size.

use fairfoot::Paper;

use super::{pages, pages_on, sketch};

#[test]
fn the_same_sides_give_the_same_bytes() {
    let text = sketch("farmhouse");
    let (first, second) = (pages(&text), pages(&text));
    assert_eq!(first.svg(), second.svg());
    assert_eq!(first.pdf().unwrap(), second.pdf().unwrap());
    assert_eq!(first.png().unwrap(), second.png().unwrap());
}

#[test]
fn paper_has_its_true_size() {
    // US Letter 8 1/2 × 11 in at 72 points; A4 210 × 297 mm (ISO 216), 25.4 mm an inch.
    for (paper, width, height) in
        [(Paper::Letter, 612.0, 792.0), (Paper::A4, 210.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0)]
    {
        let pages = pages_on(&sketch("cottage"), paper);
        approx::assert_abs_diff_eq!(pages.pages()[0].size_pt().0, width, epsilon = 0.001);
        approx::assert_abs_diff_eq!(pages.pages()[0].size_pt().1, height, epsilon = 0.001);
        let document = lopdf::Document::load_mem(&pages.pdf().unwrap()).unwrap();
        let page = document.get_dictionary(document.get_pages()[&1]).unwrap();
        let sheet = page.get(b"MediaBox").unwrap().as_array().unwrap();
        approx::assert_abs_diff_eq!(f64::from(sheet[2].as_float().unwrap()), width, epsilon = 0.01);
        approx::assert_abs_diff_eq!(
            f64::from(sheet[3].as_float().unwrap()),
            height,
            epsilon = 0.01
        );
    }
}

#[test]
fn a_png_declares_150_dots_per_inch() {
    let pngs = pages(&sketch("cottage")).png().unwrap();
    let decoder = png::Decoder::new(std::io::Cursor::new(&pngs[0]));
    let reader = decoder.read_info().unwrap();
    let info = reader.info();
    // 8.5 × 150 and 11 × 150; 150 ÷ 0.0254 = 5,905.5 a meter.
    assert_eq!((info.width, info.height), (1275, 1650));
    assert_eq!(info.pixel_dims.unwrap().xppu, 5906);
}

/// The dots of a page, row after row from the top: 0 is black, 255 white.
fn dots(png: &[u8]) -> (usize, Vec<u8>) {
    let mut reader = png::Decoder::new(std::io::Cursor::new(png)).read_info().unwrap();
    let mut dots = vec![0; reader.output_buffer_size().unwrap()];
    let frame = reader.next_frame(&mut dots).unwrap();
    assert_eq!(frame.line_size, frame.width as usize, "one byte a dot");
    (frame.line_size, dots)
}

/// A fax or a copier makes each dot black or white: those darker than the middle become black.
#[test]
fn every_text_keeps_its_ink_in_one_bit() {
    let pages = pages(&sketch("brick-garage"));
    let mut looked_at = 0;
    for (page, png) in pages.pages().iter().zip(pages.png().unwrap()) {
        let (width, dots) = dots(&png);
        for text in page.texts() {
            let of = |get: fn(&fairfoot::pages::Point) -> f64| {
                let all = text.corners().map(|corner| get(&corner) / 72.0 * 150.0);
                let low = all.iter().copied().fold(f64::MAX, f64::min);
                low.floor() as usize..all.iter().copied().fold(0.0, f64::max).ceil() as usize
            };
            let (across, down) = (of(|corner| corner.x_pt), of(|corner| corner.y_pt));
            let all = down.flat_map(|y| dots[y * width..][across.clone()].iter().copied());
            let (ink, black) = all.fold((0.0, 0.0), |(ink, black), dot| {
                (ink + f64::from(255 - dot) / 255.0, black + f64::from(u8::from(dot < 128)))
            });
            let kept = black / ink;
            assert!(ink > 2.0 && (0.5..1.5).contains(&kept), "{}: {kept} of {ink}", text.words());
            looked_at += 1;
        }
    }
    assert!(looked_at > 200, "{looked_at}");
}

#[test]
fn a_file_of_a_thousand_walls_has_its_pages() {
    let mut text = String::from("level \"Ground floor\"\nliving \"Comb\"\nnorth 40'\n");
    for i in 0..249 {
        let way = if i % 2 == 0 { ("north", "south") } else { ("south", "north") };
        text.push_str(&format!("east 3'\n{} 2'\neast 2'\n{} 2'\n", way.0, way.1));
    }
    text.push_str("south 40'\nwest by closing\n");
    let pages = pages(&text);
    assert!(pages.pages().len() > 8);
    for page in pages.pages() {
        assert_eq!(super::drawing::faults(page), Vec::<String>::new());
    }
}

#[test]
fn a_file_without_a_house_has_pages_too() {
    let text =
        "property \"1 Test Lane\"\nlot \"Lot 1\"\nnorth 100'\neast 50'\nsouth 100'\nwest 50'";
    let pages = pages(text);
    let titles: Vec<&str> = pages.pages().iter().map(fairfoot::pages::Page::title).collect();
    assert_eq!(titles, ["Exhibit", "Lot", "Calculations; Source"]);
}

/// A tag of a PDF: its name, what it says beside its content, and what it says in place of that.
type Tag = (String, Option<String>, Option<String>);

/// The tags of a PDF.
pub(super) fn tags(pdf: &[u8]) -> Vec<Tag> {
    let document = lopdf::Document::load_mem(pdf).unwrap();
    let of = |object: &lopdf::Object| {
        let element = object.as_dict().ok()?;
        let is_tag = element.get(b"Type").ok()?.as_name().ok()? == b"StructElem";
        let name = element.get(b"S").ok().filter(|_| is_tag)?.as_name().ok()?;
        let text = |key: &[u8]| lopdf::decode_text_string(element.get(key).ok()?).ok();
        let name = String::from_utf8_lossy(name).into_owned();
        Some((name, text(b"Alt"), text(b"ActualText")))
    };
    document.objects.values().filter_map(of).collect()
}

#[test]
fn a_pdf_says_what_is_a_heading_a_table_and_a_drawing() {
    let pages = pages(&sketch("brick-garage"));
    let pdf = pages.pdf().unwrap();
    let tags = tags(&pdf);
    let count = |name: &str| tags.iter().filter(|(tag, ..)| tag == name).count();
    // The address; Exhibit, Calculations, Other figures and Source.
    assert_eq!((count("H1"), count("H2")), (1, 4));
    // The sides, the pieces of the house, the plain rectangles and the totals.
    assert_eq!(count("Table"), 4);
    // 3 columns of totals, 5 of the rectangles, 8 of the sides (two without a name) and 5 of the pieces, each once.
    assert_eq!(count("TH"), 3 + 5 + 8 + 5);
    let told: Vec<&String> = tags
        .iter()
        .filter(|(tag, ..)| tag == "Figure")
        .map(|(_, told, _)| told.as_ref().expect("a drawing is told of"))
        .collect();
    assert!(told.iter().any(|told| told.contains("34 feet 1 1/2 inches")), "{told:?}");
    let document = lopdf::Document::load_mem(&pdf).unwrap();
    let catalog = document.catalog().unwrap();
    assert_eq!(catalog.get(b"Lang").unwrap().as_str().unwrap(), b"en-US");
    let marked = catalog.get(b"MarkInfo").unwrap().as_dict().unwrap();
    assert!(marked.get(b"Marked").unwrap().as_bool().unwrap());
}

/// Many voices leave the marks of feet and inches out, by which `40' 7"` is heard as 40 7.
#[test]
fn lengths_in_running_text_have_their_spoken_form() {
    let pdf = pages(&sketch("notice")).pdf().unwrap();
    let spoken: Vec<String> = tags(&pdf).into_iter().filter_map(|(.., spoken)| spoken).collect();
    let request =
        spoken.iter().find(|text| text.starts_with("To the office that keeps the record"));
    let request = request.expect("the request is spoken");
    let walls = "Please measure side 1 (west wall, 40 feet 7 inches) and side 3 (east wall, 12 feet 2 inches) of the house again; if";
    assert!(request.contains(walls), "{request}");
    // The Source is read sign by sign.
    assert!(!spoken.iter().any(|text| text.starts_with("north 40 feet")), "{spoken:?}");
}
