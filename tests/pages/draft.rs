//! Drafts: a walk that does not close is drawn to scale, and the page shows no area.

use fairfoot::pages::{Page, Part, draft};
use fairfoot::{Paper, Source, verify};

use super::drawing::faults;
use super::{sketches, words};

fn page(text: &str) -> Page {
    let pages = draft(Source::new("walk.sides", text), Paper::Letter).expect("a side to draw");
    assert_eq!(pages.pages().len(), 1);
    pages.pages()[0].clone()
}

/// All text of a page, visible or read aloud.
fn all_words(page: &Page) -> String {
    format!("{} {}", page.title(), words(page).join(" "))
}

const OPEN: &str = "level \"Ground\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 25'\nwest 36'\n";

#[test]
fn the_gap_is_dashed_to_scale_with_its_length() {
    // It ends 3' north and 4' east of its start: 5' apart (3, 4, 5).
    let page = page(OPEN);
    let dashed = page.lines(Part::Dashed);
    assert_eq!(dashed.len(), 1);
    let (from, to) = dashed[0];
    let length = (from.x_pt - to.x_pt).hypot(from.y_pt - to.y_pt);
    let feet = length / page.scale_pt_per_ft().expect("a drawing");
    assert!((feet - 5.0).abs() < 1e-6, "{feet}");
    let said = all_words(&page);
    assert!(
        said.contains("House: the walk ends 3' north and 4' east of where it began."),
        "{said}"
    );
    assert!(said.contains("gap 5'"), "{said}");
    assert!(words(&page).iter().any(|word| word == "DRAFT"));
    // Each wall at its length as typed.
    for wall in ["28'", "40'", "25'", "36'"] {
        assert!(words(&page).iter().any(|word| word == wall), "{wall}");
    }
}

#[test]
fn walls_with_a_common_error_are_named_first() {
    // 24 for 42: then 18' are missing west.
    let text = "level \"Ground\"\nliving \"House\"\nnorth 28'\neast 42'\nsouth 28'\nwest 24'\n";
    let said = all_words(&page(text));
    assert!(said.contains("side 4 (west 24'), perhaps digits swapped"), "{said}");
    assert!(said.contains("Black square"), "{said}");
}

#[test]
fn a_walk_that_comes_back_is_drawn_without_a_gap() {
    let text = OPEN.replace("25'", "28'").replace("36'", "40'");
    let page = page(&text);
    assert_eq!(page.lines(Part::Dashed), []);
    assert!(all_words(&page).contains("Every walk comes back to where it began."));
}

#[test]
fn lines_that_cannot_be_read_are_left_out_and_reported() {
    let text =
        "hello there\nlevel \"Ground\"\nliving \"House\"\nnorth 28'\neast ??\nsouth 27'\nwest\n";
    let said = all_words(&page(text));
    for expected in [
        "House: side 2 cannot be read and is not drawn.",
        "House: side 4 has no length and is not drawn.",
        "Line 1 of the sides file cannot be read",
    ] {
        assert!(said.contains(expected), "{expected}: {said}");
    }
    let nothing = draft(Source::new("empty.sides", "level \"Ground\"\n"), Paper::Letter);
    assert!(nothing.is_err());
}

/// A side that cannot be read keeps its number, as a row of a form does, and so does every side after it.
#[test]
fn sides_keep_their_numbers_beside_one_that_cannot_be_read() {
    let text = "level \"Ground\"\nliving \"House\"\neast 10'\nbay east 10' out 2' flat 4'\nnorth ??\nwest 20'\nsouth 27'\n";
    let rows: Vec<usize> =
        fairfoot::sketch::rows::rows(text).walks[0].rows.iter().map(|row| row.number).collect();
    assert_eq!(rows, [1, 2, 5, 6, 7]);
    let page = page(text);
    let said = all_words(&page);
    assert!(said.contains("House: side 5 cannot be read"), "{said}");
    assert!(said.contains("side 7 (south 27')"), "{said}");
    let drawn = words(&page);
    let is_drawn = |number: &str| drawn.iter().any(|word| *word == number);
    assert!(is_drawn("4") && !is_drawn("5") && is_drawn("6") && is_drawn("7"), "{said}");
}

#[test]
fn every_level_is_drawn_those_with_a_gap_first() {
    let pages = |text: &str| {
        let pages = draft(Source::new("walk.sides", text), Paper::Letter).expect("a side to draw");
        pages.pages().iter().map(all_words).collect::<Vec<String>>()
    };
    let text = "level \"Ground\"\nliving \"House\"\nnorth 20'\neast 30'\nsouth 20'\nwest 30'\nlevel \"Upper\"\nliving \"Beds\"\nnorth 20'\neast 30'\nsouth 20'\nwest 25'\n";
    let said = pages(text);
    assert_eq!(said.len(), 2);
    assert!(said[0].contains("Beds: the walk ends 5' east of where it began."), "{said:?}");
    assert!(said[1].contains("Every walk drawn here comes back"), "{said:?}");
    assert!(said[1].contains("Another page has a walk that does not come back"), "{said:?}");
    let both = text.replacen("west 30'", "west 29'", 1);
    let said = pages(&both);
    assert!(said[0].contains("House: the walk ends 1' east"), "{said:?}");
    assert!(said[1].contains("Beds: the walk ends 5' east"), "{said:?}");
    let none = text.replacen("west 25'", "west 30'", 1);
    let said = pages(&none);
    assert!(said.iter().all(|page| page.contains("Every walk comes back")), "{said:?}");
}

#[test]
fn two_walls_by_closing_of_one_direction_are_both_named() {
    let text = "level \"G\"\nliving \"House\"\nnorth 30'\neast 20'\nsouth by closing\neast 10'\nsouth by closing\nwest 30'\n";
    let said = all_words(&page(text));
    assert!(!said.contains("comes back"), "{said}");
    assert!(
        said.contains(
            "side 3 (south by closing) and side 5 (south by closing) share one direction"
        ),
        "{said}"
    );
}

#[test]
fn a_draft_of_a_lot_speaks_of_calls_and_the_deed() {
    let text = "lot \"Lot\"\nbearing N 4° 30' E 82'\nbearing S 85° 30' E 64'\nbearing S 4° 30' W 28'\nbearing N 85° 30' W 64'\n";
    let said = all_words(&page(text));
    assert!(said.contains("compare this call with the deed first"), "{said}");
    assert!(!said.contains("measure") && !said.contains("Measure"), "{said}");
}

#[test]
fn a_metric_draft_goes_on_a4() {
    let paper = |text: &str| Paper::usual_for_draft(&Source::new("walk.sides", text));
    let metric = "level \"G\"\nliving \"House\"\nnorth 8 m\neast 9 m\nsouth 8 m\n";
    assert_eq!(paper(metric), Paper::A4);
    assert_eq!(paper(OPEN), Paper::Letter);
}

#[test]
fn a_draft_is_verified_like_any_page() {
    let pages = draft(Source::new("walk.sides", OPEN), Paper::A4).expect("a side to draw");
    for file in [pages.svg()[0].clone().into_bytes(), pages.pdf().expect("a PDF")] {
        let answer = verify::file(&file).expect("the sides inside");
        assert!(answer.is_genuine(), "{:?}", answer.why());
        assert_eq!(answer.sides(), OPEN);
    }
    let moved = pages.svg()[0].replace("ends 3' north", "ends 2' north");
    assert!(!verify::file(moved.as_bytes()).expect("the sides inside").is_genuine());
}

#[test]
fn no_draft_shows_an_area_and_nothing_overlaps_on_it() {
    for (name, text) in sketches() {
        let lines: Vec<&str> = text.lines().collect();
        let is_side = |line: &str| {
            ["north ", "east ", "south ", "west "]
                .iter()
                .any(|way| line.trim_start().starts_with(way))
        };
        let sides: Vec<usize> = (0..lines.len()).filter(|&i| is_side(lines[i])).collect();
        // Each sketch whole, and with one side left out: every fifth of them.
        let cuts = std::iter::once(None).chain(sides.iter().step_by(5).copied().map(Some));
        for cut in cuts {
            let kept = lines.iter().enumerate().filter(|(i, _)| Some(*i) != cut);
            let text: String = kept.map(|(_, line)| format!("{line}\n")).collect();
            let Ok(pages) = draft(Source::new(name.clone(), text), Paper::Letter) else { continue };
            for page in pages.pages() {
                let said = all_words(page);
                for word in ["sq ft", "acre", "square feet", "sq m"] {
                    assert!(!said.contains(word), "{name} without line {cut:?}: {word}: {said}");
                }
                let faults = faults(page).into_iter();
                let drawn: Vec<_> = faults.filter(|fault| !fault.contains("\"DRAFT\"")).collect();
                assert_eq!(drawn, Vec::<String>::new(), "{name} {cut:?}");
            }
        }
    }
}
