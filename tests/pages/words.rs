//! What is on the pages, in what order, and that it can be found in the files as text.

use fairfoot::{Paper, verify};
use geo::{Distance, Euclidean, Line, Point};

use super::{pages, pages_on, sketch, sketches, words};

/// The words of a page of a PDF without blanks.
fn pdf_words(pdf: &[u8], page: u32) -> String {
    let document = lopdf::Document::load_mem(pdf).unwrap();
    let text = document.extract_text(&[page]).unwrap();
    text.chars().filter(|letter| !letter.is_whitespace()).collect()
}

fn tight(words: &str) -> String {
    words.chars().filter(|letter| !letter.is_whitespace()).collect()
}

#[test]
fn the_pdf_of_the_brick_house_has_its_statement_dimensions_and_totals() {
    let pdf = pages(&sketch("brick-garage")).pdf().unwrap();
    let exhibit = pdf_words(&pdf, 1);
    for found in [
        // By hand: 1,877 less 1,757 is 120; 120 ÷ 1,757 is 6.8%.
        "Record 1,877 sq ft. Measured 1,757 sq ft. The record is 120 sq ft larger (6.8% of the measured area).",
        "34' 1 1/2\"",
        "21' 7 1/2\"",
        "3' 8\"",
        "39' 10 1/2\"",
        "41' 10 1/2\" by closing",
        "22' 7\"",
        "4' 1\"",
        "38' 11\"",
        "21' 1\"",
        "14' 2 1/2\"",
        "7' 3\"",
        "1,757 sq ft",
        "STREET",
    ] {
        assert!(exhibit.contains(&tight(found)), "{found} is not in {exhibit}");
    }
}

#[test]
fn the_calculations_add_up_on_a_pocket_calculator() {
    let all: Vec<String> = pages(&sketch("brick-garage")).pages().iter().flat_map(words).collect();
    // By hand: 39.9 × 3.7 = 147.63; 61.5 × 34.1 = 2,097.15; 22.6 × 4.1 = 92.66; together 2,337.44.
    // Less 22.6 × 21.1 = 476.86 and 14.2 × 7.3 = 103.66: 1,756.92.
    // Whole feet: 40 × 4 + 62 × 34 + 23 × 4 = 2,360, less 23 × 21 = 483 and 14 × 7 = 98: 1,779.
    for found in [
        "39.9 × 3.7",
        "147.63",
        "61.5 × 34.1",
        "2,097.15",
        "22.6 × 4.1",
        "92.66",
        "2,337.44",
        "22.6 × 21.1",
        "476.86",
        "14.2 × 7.3",
        "103.66",
        "1,756.92",
        "40 × 4",
        "62 × 34",
        "23 × 4",
        "2,360",
        "483",
        "98",
        "1,779",
        "1,757 sq ft",
        "1,779 sq ft",
    ] {
        assert!(all.iter().any(|words| words == found), "{found}");
    }
}

#[test]
fn a_bay_is_half_rectangles_and_a_curve_is_its_segment() {
    let all: Vec<String> = pages(&sketch("angled-bay")).pages().iter().flat_map(words).collect();
    // 2.3 × 2.3 ÷ 2 = 2.645 and 2.4 × 2.3 ÷ 2 = 2.76, printed to two decimals.
    for found in ["2.3 × 2.3 ÷ 2", "2.65", "2.4 × 2.3 ÷ 2", "2.76"] {
        assert!(all.iter().any(|words| words == found), "{found}");
    }
    let all: Vec<String> = pages(&sketch("round-bay")).pages().iter().flat_map(words).collect();
    assert!(all.iter().any(|words| words.starts_with("curve: chord")), "{all:?}");
}

#[test]
fn the_pages_are_in_order_and_state_their_number() {
    let pages = pages(&sketch("two-story"));
    let titles: Vec<&str> = pages.pages().iter().map(fairfoot::pages::Page::title).collect();
    assert_eq!(&titles[..2], ["Exhibit", "Calculations"]);
    assert!(titles[2].starts_with("Calculations, continued"), "{titles:?}");
    assert!(titles.last().is_some_and(|title| title.contains("Source")), "{titles:?}");
    let count = titles.len();
    for (i, page) in pages.pages().iter().enumerate() {
        let all = words(page);
        assert!(all.contains(&format!("page {} of {count}", i + 1)));
        assert!(all.iter().any(|words| words == "Not an appraisal, not a survey, not legal advice; local rules and licensed practice come first."));
        assert!(all.iter().any(|words| words.starts_with("Sides file sha256 ")));
        assert!(all.contains(&"315 Sorrel Lane, Juniper County".to_owned()));
    }
}

#[test]
fn a_lot_has_a_page_with_its_calls_and_its_acres() {
    let pages = pages(&sketch("lot"));
    let lot = pages.pages().iter().find(|page| page.title() == "Lot").expect("a page");
    let all = words(lot);
    for call in [
        "N 1° 34' E 142.67'",
        "N 84° 45' 10\" E 94.9'",
        "S 5° 13' 50\" E 149.72'",
        "S 88° 52' 30\" W 112.07'",
    ] {
        assert!(all.iter().any(|words| words == call), "{call}");
    }
    // 15,089.91 ÷ 43,560 = 0.34642, by hand; printed to two decimals.
    assert!(all.iter().any(|words| words == "Lot 12: 15,090 sq ft, 0.35 acres"));
}

#[test]
fn the_source_page_has_the_file_word_for_word() {
    for (name, text) in sketches() {
        let pages = pages(&text);
        let source: String = pages
            .pages()
            .iter()
            .filter(|page| page.title().contains("Source"))
            .flat_map(words)
            .collect();
        let source = tight(&source);
        for line in text.lines() {
            assert!(source.contains(&tight(line)), "{name}: {line}");
        }
    }
}

#[test]
fn every_page_has_a_title_and_a_description_for_a_screen_reader() {
    let svgs = pages(&sketch("cottage")).svg();
    // Not `img`: a reader would then leave out the texts.
    assert!(svgs[0].contains("role=\"graphics-document document\""));
    assert!(svgs[0].contains("aria-labelledby=\"title desc\""));
    assert!(svgs[0].contains(
        "<title id=\"title\">33 Mallow Street, rear cottage, Juniper County: Exhibit, page 1 of"
    ));
    let description = svgs[0].split("<desc id=\"desc\">").nth(1).unwrap();
    let first = "33 Mallow Street, rear cottage, Juniper County: Account R-112408. Record 630 square feet. Measured 607 square feet, each wall to a tenth of a foot.";
    assert!(description.trim_start().starts_with(first), "{description}");
    let steps = "Step by step: measured area 607 square feet; rounding: if the office rounds each wall to the whole foot (assumed), with every wall taken up to the next foot, plus 23 square feet; the record 630 square feet.";
    assert!(description.contains(steps), "{description}");
    for svg in svgs {
        assert!(!svg.contains("<script") && !svg.contains("http://www.w3.org/1999/xlink"));
        let outside = svg.replace("http://www.w3.org/2000/svg", "");
        assert!(!outside.contains("http"), "a page refers to nothing outside");
    }
}

/// Text without the signs and units that a voice reads as words.
fn plain(text: &str) -> String {
    let drop =
        ["feet", "foot", "inches", "inch", "square", "sq ft", "plus or minus", "minus", "plus"];
    let text = drop.iter().fold(text.to_owned(), |text, word| text.replace(word, ""));
    text.chars().filter(|letter| letter.is_alphanumeric()).collect()
}

#[test]
fn the_exhibit_is_heard_with_each_wall_each_cause_and_the_request() {
    for (name, text) in sketches() {
        let pages = pages(&text);
        let page = &pages.pages()[0];
        let heard = plain(page.description());
        let seen = words(page).join(" ");
        // Every dimension line outside a wall has its length, and its side its number.
        for side in page.texts().filter(|text| text.is_label()) {
            let Ok(number) = side.words().parse::<usize>() else { continue };
            let side = format!("side {number} ");
            assert!(page.description().contains(&side), "{name}: {side}: {}", page.description());
        }
        for item in seen.split("– ").skip(1) {
            let cause = item.split(": gives").next().unwrap().split(" (").next().unwrap();
            let cause = plain(cause.split(" …").next().unwrap());
            assert!(heard.contains(&cause), "{name}: {cause}: {}", page.description());
        }
        for request in ["Please correct", "Please measure", "Please state", "No change is"] {
            let Some((_, asked)) = seen.split_once(request) else { continue };
            let asked: String =
                asked.chars().take_while(|letter| *letter != '.').take(40).collect();
            let asked = plain(&format!("{request}{asked}"));
            assert!(heard.contains(&asked), "{name}: {asked}: {}", page.description());
        }
        assert!(!page.description().contains(['\u{2212}', '±']), "{}", page.description());
    }
}

#[test]
fn every_page_of_every_sketch_is_genuine_on_both_papers() {
    for (name, text) in sketches() {
        for paper in [Paper::Letter, Paper::A4] {
            let pages = pages_on(&text, paper);
            for svg in pages.svg() {
                let verified = verify::file(svg.as_bytes()).unwrap();
                assert!(verified.is_genuine(), "{name}: {:?}", verified.why());
                assert_eq!(verified.sides(), text);
            }
            let verified = verify::file(&pages.pdf().unwrap()).unwrap();
            assert!(verified.is_genuine(), "{name}: {:?}", verified.why());
            assert_eq!(verified.sides(), text);
        }
    }
}

#[test]
fn the_record_outline_is_dashed_and_the_walls_that_differ_are_marked() {
    let pages = pages(&sketch("record-sketch"));
    let page = &pages.pages()[0];
    assert_eq!(page.lines(fairfoot::pages::Part::Dashed).len(), 6, "the record's six walls");
    let all = words(page);
    assert!(all.contains(&"14' 1\" [16']".to_owned()), "{all:?}");
    assert!(all.contains(&"40' 3\" [42']".to_owned()), "{all:?}");
    // 26' 2" rounds to 26': no bracket.
    assert!(all.contains(&"26' 2\"".to_owned()), "{all:?}");
}

#[test]
fn true_north_is_drawn_only_where_it_is_known() {
    let has_arrow =
        |name: &str| words(&pages(&sketch(name)).pages()[0]).contains(&"true north".to_owned());
    assert!(has_arrow("farmhouse"));
    assert!(!has_arrow("brick-garage"));
}

#[test]
fn the_worth_pages_come_last_with_their_own_numbers() {
    let pages = pages(&sketch("notice"));
    let titles: Vec<&str> = pages.pages().iter().map(fairfoot::pages::Page::title).collect();
    let supplement = titles.iter().position(|title| title.starts_with("Supplement"));
    assert_eq!(supplement, Some(3), "{titles:?}");
    assert!(titles[3..].iter().all(|title| title.starts_with("Supplement")), "{titles:?}");
    // Without it, the set is three pages of three.
    let numbers: Vec<String> = pages
        .pages()
        .iter()
        .flat_map(|page| {
            words(page).into_iter().filter(|words| {
                words.contains("page ") && words.contains(" of ") && words.len() < 30
            })
        })
        .collect();
    assert_eq!(
        numbers,
        [
            "page 1 of 3",
            "page 2 of 3",
            "page 3 of 3",
            "supplement, page 1 of 3",
            "supplement, page 2 of 3",
            "supplement, page 3 of 3"
        ]
    );
    let page = &pages.pages()[3];
    let all = words(page);
    // 318,000 × 238 ÷ 2,022 = 37,430.27, by hand.
    assert!(all.contains(&"in proportion: $318,000 × 238 ÷ 2,022".to_owned()), "{all:?}");
    assert!(all.contains(&"$37,430".to_owned()));
    let all: Vec<String> = pages.pages().iter().flat_map(words).collect();
    assert!(all.iter().any(|words| words.starts_with(
        "Not legal advice and not an appraisal: check every line with the local office"
    )));
    // A file without values has no such page, and nothing there counts days from a clock.
    let plain = super::pages(&sketch("cottage"));
    assert!(plain.pages().iter().all(|page| !page.title().contains("Supplement")));
    assert!(!all.iter().any(|words| words.contains("days left")));
}

#[test]
fn dimensions_come_in_walking_order_for_screen_readers() {
    let pages = pages(&sketch("brick-garage"));
    let all = words(&pages.pages()[0]);
    let place = |words: &str| {
        let at = all.iter().position(|other| other == words);
        at.unwrap_or_else(|| panic!("{words} in {all:?}"))
    };
    let walls = [
        "34' 1 1/2\"",
        "21' 7 1/2\"",
        "3' 8\"",
        "39' 10 1/2\"",
        "41' 10 1/2\" by closing",
        "22' 7\"",
        "4' 1\"",
        "38' 11\"",
    ];
    let places = walls.map(place);
    assert!(places.is_sorted(), "{places:?} in {all:?}");
}

#[test]
fn every_side_has_its_number_next_to_its_own_wall() {
    for (name, sides) in [("angled-bay", 8), ("brick-garage", 8), ("townhouse", 4), ("metric", 6)] {
        let pages = pages(&sketch(name));
        let page = &pages.pages()[0];
        let walls = page.lines(fairfoot::pages::Part::Outline);
        for side in 1..=sides {
            let numbers =
                page.texts().filter(|text| text.is_label() && text.words() == side.to_string());
            let numbers: Vec<&fairfoot::pages::Text> = numbers.collect();
            let [number] = numbers[..] else { panic!("{name}: {} of {side}", numbers.len()) };
            let [a, _, c, _] = number.corners();
            let at = Point::new((a.x_pt + c.x_pt) / 2.0, (a.y_pt + c.y_pt) / 2.0);
            let apart = |&(from, to): &(fairfoot::pages::Point, fairfoot::pages::Point)| {
                let wall = Line::new((from.x_pt, from.y_pt), (to.x_pt, to.y_pt));
                Euclidean.distance(&at, &wall)
            };
            // The outline of the first space comes first, wall after wall.
            let own = apart(&walls[side - 1]);
            let nearest = walls[..sides].iter().map(apart).fold(f64::MAX, f64::min);
            assert!(own < 16.0 && own <= nearest, "{name}: {side} stands {own} pt from its wall");
        }
    }
}

#[test]
fn an_inside_plan_is_drawn_over_the_inside_walls() {
    // Two common walls move out by half their 8", the other walls by all of it: 8/12 of a foot.
    let pages = pages(&sketch("townhouse"));
    let page = &pages.pages()[0];
    let reach = |part| {
        let ends = page.lines(part).into_iter().flat_map(|(from, to)| [from, to]);
        ends.fold((f64::MAX, f64::MAX, f64::MIN, f64::MIN), |(left, top, right, low), at| {
            (left.min(at.x_pt), top.min(at.y_pt), right.max(at.x_pt), low.max(at.y_pt))
        })
    };
    let (ours, theirs) =
        (reach(fairfoot::pages::Part::Outline), reach(fairfoot::pages::Part::Dashed));
    // The plan is 1/2" or so off, in tenths of a foot: 0.5 pt.
    let is = |found: f64, wanted: f64| (found - wanted).abs() < 0.5;
    let deep = 8.0 / 12.0 * page.scale_pt_per_ft().unwrap();
    assert!(is(theirs.1 - ours.1, deep) && is(ours.3 - theirs.3, deep), "{ours:?} {theirs:?}");
    assert!(
        is(theirs.0 - ours.0, deep / 2.0) && is(ours.2 - theirs.2, deep / 2.0),
        "{ours:?} {theirs:?}"
    );
}

#[test]
fn lengths_at_another_face_are_lettered_as_they_were_typed() {
    // 30 mm of boards outside the drawing's frame, none where the two parts meet: 13,050 + 2 × 30, 3,780 + 30. The
    // drawing itself has 13,050 and 3,780.
    let pages = pages(&sketch("modular"));
    let all = words(&pages.pages()[0]);
    for length in ["13,110 mm (plan 13,050)", "3,810 mm (plan 3,780)", "12,280 mm (plan 12,220)"] {
        assert!(all.contains(&length.to_owned()), "{length} in {all:?}");
    }
    assert!(!all.iter().any(|words| words.ends_with("from plan")), "{all:?}");
}

#[test]
fn a_sketch_is_drawn_beside_our_walls_at_the_face_it_is_measured_to() {
    let pages = pages(&sketch("townhouse"));
    let has = |page: &&fairfoot::pages::Page| page.title().contains("Side by side");
    let all: Vec<String> = pages.pages().iter().filter(has).flat_map(words).collect();
    // The plan and the tape are both inside: 17.8' and 32.4' as typed, next to 17' 9" and 32' 5".
    for length in ["17.8'", "32.4'", "17' 9\"", "32' 5\""] {
        assert!(all.contains(&length.to_owned()), "{length} in {all:?}");
    }
    assert!(!all.contains(&"32' 4 13/16\"".to_owned()), "{all:?}");
    // 17.8 × 32.4 = 576.72, by hand.
    assert!(all.iter().any(|words| words.starts_with("As measured, inside: 577 sq ft")), "{all:?}");
}

#[test]
fn the_steps_reach_the_area_that_the_statement_compares() {
    let pages = pages(&sketch("townhouse"));
    let all: Vec<String> = pages.pages().iter().flat_map(words).collect();
    // Outside 18.4 × 33.8 × 2 = 1,243.84; inside 17.8 × 32.4 × 2 = 1,153.44; the plan has 1,182, which is 29 more.
    assert!(
        all.iter().any(|words| words.starts_with("Plan 1,182 sq ft, taken inside.")),
        "{all:?}"
    );
    for step in [
        "\u{2212}91 sq ft",
        "+29 sq ft",
        "measured inside, the same way as the plan: 1,244 \u{2212} 91 = 1,153",
    ] {
        assert!(all.contains(&step.to_owned()), "{step} in {all:?}");
    }
}

#[test]
fn a_roof_without_measured_walls_is_told_on_the_first_page_and_no_correction_is_asked_for() {
    let pages = pages(&sketch("map-outline"));
    let first = words(&pages.pages()[0]).join(" ");
    // The map's bump is about 17' by 12'; less eaves of 1.5 ft on its two free sides 14', by 12'.
    assert!(
        first.contains("A map shows a part that was not measured, on the north side of the house")
    );
    assert!(
        first.contains("Without its eaves it is about 14' by 12': 168 of the 171 sq ft"),
        "{first}"
    );
    assert_eq!(first.matches("A map shows").count(), 1, "{first}");
    let until = "No change is requested until what stands on the north side of the house, where a map shows a roof, is measured; this page is for the owner until then. Meanwhile the office may be asked to send the record's own sketch with its lengths.";
    assert!(first.contains(until), "{first}");
    assert!(!first.contains("Please correct"), "{first}");
}

#[test]
fn the_chart_has_no_row_and_no_sign_for_a_step_of_nothing() {
    let pages = pages(&sketch("townhouse"));
    let all = words(&pages.pages()[0]);
    // 1,244 − 20 = 1,224: one bar that subtracts.
    assert_eq!(pages.pages()[0].lines(fairfoot::pages::Part::Bar).len(), 4, "{all:?}");
    let all = all.join(" ");
    assert!(all.contains("Open: subtracts."), "{all}");
    assert!(!all.contains("Solid: adds."), "{all}");
}

/// All words of the pages of the cottage in a place, without blanks.
fn in_place(place: &str) -> String {
    let text = sketch("cottage").replacen("level ", &format!("{place}\nlevel "), 1);
    pages(&text).pages().iter().map(|page| tight(&words(page).join(" "))).collect()
}

#[test]
fn a_declaration_is_worded_as_the_law_of_the_place_has_it() {
    // Florida Statutes 2023, 92.525(2), read.
    let florida = in_place("place florida");
    assert!(florida.contains(&tight(
        "Under penalties of perjury, I declare that I have read the foregoing document and that the facts stated in it are true."
    )));
    assert!(florida.contains(&tight("Florida Statutes 92.525(2) has the wording below")));
    // Code of Virginia 8.01-4.3, read.
    assert!(in_place("place virginia").contains(&tight(
        "I declare under penalty of perjury that the foregoing is true and correct."
    )));
    // Texas Civil Practice and Remedies Code 132.001(d): (a) to (c) read, (d) second-hand.
    let texas = in_place("place texas");
    let advice =
        tight("was not read in the law: check the section, and ask the office, before signing");
    let (handed_in, supplement) =
        texas.split_once(&tight("For the owner alone")).expect("a supplement");
    assert!(
        handed_in.contains(&tight("accepted instead of an oath: wording based on")),
        "{handed_in}"
    );
    assert!(!handed_in.contains(&tight("before signing")), "{handed_in}");
    assert!(supplement.contains(&advice), "{supplement}");
    for without in ["", "place none", "place ohio"] {
        assert!(!in_place(without).contains("perjury"), "{without}");
    }
}
