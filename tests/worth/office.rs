//! The page of questions for the office.

use fairfoot::pages::{PageOptions, Section, Sections};
use fairfoot::{Settings, Weights};

/// The text of the request page of a house of 1,200 sq ft.
fn request(lines: &str) -> String {
    let text = format!("{lines}\n{}", super::HOUSE);
    let house = fairfoot::read("office.sides", &text).unwrap_or_else(|faults| panic!("{faults}"));
    let areas = house.areas(&Settings::default()).unwrap();
    let all = areas.reconcile(&Weights::default()).unwrap();
    let options = PageOptions { only: Sections::of([Section::Request]), ..PageOptions::default() };
    let pages = all.pages(options).unwrap();
    let texts = pages.pages().iter().flat_map(|page| page.texts());
    texts.map(|text| text.words()).collect::<Vec<_>>().join(" ")
}

#[test]
fn questions_name_the_section_of_the_place() {
    let reported = request("record 1,500 sq ft\nplace texas\ntax year 2026");
    assert!(reported.contains("1,500 sq ft"), "the total");
    assert!(reported.contains("41.461"), "the evidence");
    assert!(reported.contains("25.25(c)"), "past years");
    let place = "record 1,500 sq ft\nplace none\ntax year 2026";
    for word in ["41.461", "25.25", "Texas Tax"] {
        let reported = request(place);
        assert!(!reported.contains(word), "{word}");
    }
}

#[test]
fn questions_claim_nothing() {
    let reported = request("record 1,500 sq ft\nplace texas\ntax year 2026").to_lowercase();
    for word in ["wrong", "must", "caused by", "violat", "refund", "demand"] {
        assert!(!reported.contains(word), "{word}");
    }
}

/// Each way once, under one question; the law is named, and what was not read asks the office to confirm it.
#[test]
fn the_ways_stand_under_one_question() {
    let reported = request("record 1,500 sq ft\nplace texas\ntax year 2026");
    assert_eq!(reported.matches("Until which day").count(), 1, "{reported}");
    for words in [
        "Sections are of the Texas Tax Code",
        "protest (41.44(a)(1))",
        "talk this over with you first, and when? (41.445; please confirm)",
        "motion for past years (25.25(c); please confirm)",
    ] {
        assert!(reported.contains(words), "{words}: {reported}");
    }
    assert!(!reported.contains("ask the office"), "{reported}");
}
