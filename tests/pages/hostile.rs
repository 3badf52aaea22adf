//! No name breaks a page, and no page breaks the reader.

use fairfoot::verify;

use super::{pages, sketch, words};

fn named(name: &str) -> String {
    format!(
        "property \"{name}\"\naddress \"{name}\"\naccount \"{name}\"\nrecord 900 sq ft \"{name}\"\nlevel \"Ground floor\"\nliving \"{name}\"\nnorth 30' note \"{name}\"\neast 40'\nsouth 30'\nwest 40'\ngarage \"Garage {name}\" start east 40'\nnorth 20' \neast 20'\nsouth 20'\nwest 20'\n# {name}"
    )
}

#[test]
fn no_name_breaks_a_page() {
    let long = "W".repeat(400);
    let words400 = "wide ".repeat(80);
    for name in [
        "<script>alert(1)</script>",
        "a & b &amp; c &#60;",
        "it's ]]> over <![CDATA[",
        "-- --> <!-- <?xml ?>",
        "{{}} %s ${x} \\n \\u0041",
        "👍 family 👩‍👩‍👧 家 \u{5d0}\u{5d1}",
        "ÀÉÎÕÜ ñ ß Ωμέγα Жук ặ",
        "\u{fffd} ½ ′ ″",
        long.as_str(),
        words400.trim(),
    ] {
        // Marks that would end the text are doubled in the file, or left out of it.
        let text = named(name);
        let checked = fairfoot::read("house.sides", text.as_str());
        if checked.is_err() {
            // Characters that the file cannot contain never reach a page.
            assert!(name.chars().any(|c| c == '\\' || c == '\u{200d}' || !c.is_ascii()), "{name}");
            continue;
        }
        let pages = pages(&text);
        for page in pages.pages() {
            assert_eq!(super::drawing::faults(page), Vec::<String>::new(), "{name}");
        }
        for svg in pages.svg() {
            assert!(!svg.contains("<script"), "{name}");
            let verified = verify::file(svg.as_bytes()).unwrap();
            assert!(verified.is_genuine(), "{name}: {:?}", verified.why());
            assert_eq!(verified.sides(), text);
        }
        let verified = verify::file(&pages.pdf().unwrap()).unwrap();
        assert!(verified.is_genuine(), "{name}: {:?}", verified.why());
    }
}

#[test]
fn a_letter_missing_from_the_font_is_replaced_with_a_warning() {
    let pages = pages(&named("The house 👍"));
    let warnings: Vec<&str> = pages.warnings().iter().map(|w| w.message()).collect();
    assert_eq!(
        warnings,
        ["the pages have no letter for `\\u{1f44d}` (\\u{1f44d}); \u{fffd} stands for it"
            .replace("`\\u{1f44d}`", "`👍`")]
    );
    assert!(
        words(&pages.pages()[0]).contains(&"The house \u{fffd} (The house \u{fffd})".to_owned())
    );
}

#[test]
fn line_ends_of_every_kind_travel_unchanged() {
    let text = sketch("cottage").replace('\n', "\r\n");
    let svg = pages(&text).svg().remove(0);
    assert!(!svg.contains('\r'), "a carriage return written as itself would be lost");
    let verified = verify::file(svg.as_bytes()).unwrap();
    assert_eq!(verified.sides(), text);
    assert!(verified.is_genuine());
}

#[test]
fn a_file_without_usable_sides_is_refused_in_a_sentence() {
    let page = pages(&sketch("cottage")).svg().remove(0);
    let cases: Vec<(String, &str)> = vec![
        (String::new(), "there is no sides file inside"),
        ("not a page".to_owned(), "there is no sides file inside"),
        ("<svg/>".to_owned(), "there is no sides file inside"),
        ("<g>".repeat(100_000), "there is no sides file inside"),
        ("<a b='".to_owned(), "it is no SVG that can be read"),
        (page.replace("<ff:sides", "<ff:others"), "there is no sides file inside"),
        (page.replacen("# ", "&own; ", 1), "the sides file inside has an entity of its own"),
        (
            page.replace("living &quot;Cottage&quot;", "living Cottage"),
            "the sides file inside has an error",
        ),
        (page.replace("page=\"1\"", "page=\"9\""), "it says it is page 9, and its sides fill"),
        (page.replace("page=\"1\"", "page=\"0\""), "it says it is page 0, and its sides fill"),
    ];
    for (text, why) in cases {
        match verify::file(text.as_bytes()) {
            Err(error) => assert!(error.to_string().starts_with(why), "{why}: {error}"),
            Ok(verified) => panic!("{why}: {:?}", verified.why()),
        }
    }
    for bytes in [&b"\xff\xfe\x00"[..], b"%PDF-1.7", b"%PDF-1.7\n%%EOF", &[0; 1000]] {
        assert!(verify::file(bytes).is_err());
    }
}

#[test]
fn entities_and_instructions_are_neither_opened_nor_needed() {
    let page = pages(&sketch("cottage")).svg().remove(0);
    let bomb =
        "<!DOCTYPE svg [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;\">]>";
    for forged in [
        page.replacen("<svg", &format!("{bomb}<svg"), 1),
        page.replacen("<title", "<?xml-stylesheet href=\"http://example.com/a.css\"?><title", 1),
        page.replacen("</metadata>", "", 1),
    ] {
        let verified = verify::file(forged.as_bytes()).unwrap();
        assert!(!verified.is_genuine());
        assert_eq!(verified.pages().svg()[0], page);
    }
}

#[test]
fn a_picture_is_an_error_that_says_what_to_do_instead() {
    let png = pages(&sketch("plain-rectangle")).png().unwrap().remove(0);
    let error = verify::file(&png).unwrap_err().to_string();
    assert!(error.starts_with("a PNG has no sides file inside"), "{error}");
    assert!(error.contains("fairfoot verify --print FILE.sides"), "{error}");
}

#[test]
fn a_pdf_cut_or_changed_anywhere_causes_no_crash() {
    let pdf = pages(&sketch("plain-rectangle")).pdf().unwrap();
    let mut refused = 0;
    for k in 1..60 {
        let cut = &pdf[..pdf.len() * k / 60];
        refused += usize::from(verify::file(cut).is_err_and(|error| !error.to_string().is_empty()));
        let mut turned = pdf.clone();
        let at = turned.len() * k / 60;
        turned[at] ^= 0x55;
        if let Ok(verified) = verify::file(&turned) {
            assert!(!verified.is_genuine());
        }
    }
    assert!(refused > 20, "{refused}");
}
