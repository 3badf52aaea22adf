//! Pads on which one line says several things: walls or calls in a row, an address beside what the house is like, the
//! figures of a card in short words. What is offered for it, once typed, keeps all of it. The areas were worked out here by
//! hand.

use fairfoot::{Diagnostic, Settings};

use super::diagnostics_of;

/// A house of 40 by 30 feet, which faces south.
const HOUSE: &str =
    "level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";

fn errors(text: &str) -> Vec<Diagnostic> {
    let (_, list) = diagnostics_of("one_line.sides", text.as_bytes().to_vec());
    list.into_iter().filter(Diagnostic::is_error).collect()
}

/// The first offer for the line that stands between these texts.
fn offered(before: &str, line: &str, after: &str) -> String {
    let list = errors(&format!("{before}{line}\n{after}"));
    let fixes: Vec<_> = list.iter().flat_map(Diagnostic::fixes).collect();
    fixes.first().unwrap_or_else(|| panic!("{line}: {list:?}")).text.clone()
}

/// What is said of it.
fn helps(before: &str, line: &str, after: &str) -> String {
    let list = errors(&format!("{before}{line}\n{after}"));
    list.iter().flat_map(Diagnostic::helps).cloned().collect::<Vec<_>>().join("\n")
}

/// The gross area above grade in whole square feet.
fn gross(text: &str) -> i64 {
    let house =
        fairfoot::read("one_line.sides", text).unwrap_or_else(|all| panic!("{text}\n{all}"));
    house.areas(&Settings::default()).unwrap().gross().as_measured().whole_sq_ft()
}

#[test]
fn walls_in_a_row_are_walls_and_no_call() {
    let before = "veneer none\nlevel \"Ground floor\"\nliving \"House\"\n";
    for line in [
        "N 26-0, E 30-2, S 26-0, W 30-2",
        "N 26-0 E 30-2 S 26-0 W 30-2",
        "N26-0, E30-2, S26-0, W30-2",
        "House: N 26-0, E 30-2, S 26-0, W 30-2",
    ] {
        let text = format!("{before}{}\n", offered(before, line, ""));
        // 26 ft by 30 ft 2 in are 784 1/3 sq ft.
        assert_eq!(gross(&text), 784, "{line}");
    }
    // With the last two walls on a line of their own the first two are no call either.
    let after = "south 26'\nwest 30' 2\"\n";
    let text = format!("{before}{}\n{after}", offered(before, "N 26-0, E 30-2", after));
    assert_eq!(gross(&text), 784);
    let level = offered("veneer none\n", "Ground (outside): N 26-0, E 30-2, S 26-0, W 30-2", "");
    assert_eq!(gross(&format!("veneer none\n{level}\n")), 784);
}

#[test]
fn walls_with_decimal_commas_stay_walls() {
    let heads = "units meters\nveneer none\nlevel \"Ground floor\"\n";
    let line = "House: N 9,15  E 12,40  S 3,85  E 4,60  S 5,30m  W 17,00";
    let text = format!("{heads}{}\n", offered(heads, line, ""));
    // 9.15 m by 12.40 m and 5.30 m by 4.60 m are 137.84 sq m, or 1,483.7 sq ft.
    assert_eq!(gross(&text), 1484);
}

#[test]
fn calls_in_a_row_are_those_of_a_lot() {
    let line = "Lot per deed: N 12°30' E 220.4 ft; S 77°30' E 330 ft; S 12°30' W 220.4 ft; N 77°30' W 330 ft to POB. 1.67 ac";
    let text = format!("{HOUSE}{}\n", offered(HOUSE, line, ""));
    assert!(errors(&text).is_empty(), "{text}");
    assert!(
        text.contains("lot \"Lot per deed\" recorded 1.67 acres\nbearing N 12° 30' E 220.4 ft\n"),
        "{text}"
    );
    assert_eq!(text.matches("bearing ").count(), 4);
    // A chain is 66 ft: 4 are 264 ft and 5 are 330 ft.
    assert_eq!(
        offered(HOUSE, "deed: N 01-30-00 E 4.00 ch; S 88-30-00 E 5.00 ch", ""),
        "lot \"Lot, deed\"\nbearing N 01° 30' 00\" E 264'\nbearing S 88° 30' 00\" E 330'"
    );
    let lot = format!("{HOUSE}lot \"Lot\"\nbearing N 1° E 264'\nbearing S 89° E 330'\n");
    let said = helps(&lot, "N 88-30-00 W 5.00 ch to beginning, containing 2 acres", "");
    assert!(
        said.contains("write `bearing N 88° 30' 00\" W 330'` here, and `recorded 2 acres`"),
        "{said}"
    );
    assert_eq!(offered(HOUSE, "land 3 ac", "N 0 E 400 ft\n"), "lot \"Lot\" recorded 3 acres");
}

#[test]
fn an_address_beside_what_the_house_is_like_is_kept() {
    for (line, text) in [
        (
            "2 story stucco. 40 Quarry St. Juniper Co.",
            "address \"40 Quarry St., Juniper Co.\"  # 2 story stucco",
        ),
        (
            "31 Harbor Steps, Juniper Co. 2 story",
            "address \"31 Harbor Steps, Juniper Co.\"  # 2 story",
        ),
        (
            "\"19 Weir Lane\", two sty, Juniper County",
            "address \"19 Weir Lane, Juniper County\"  # two sty",
        ),
        (
            "Brick ranch - 9 Alder Ln, Juniper County",
            "address \"9 Alder Ln, Juniper County\"  # Brick ranch",
        ),
        (
            "Farm, Alder Rd 2210, Juniper County. metres!",
            "units meters\nproperty \"Farm, Alder Rd 2210, Juniper County\"",
        ),
        (
            "Old farmhouse, Alder End, county of Juniper - all in m",
            "units meters\nproperty \"Alder End, county of Juniper\"  # Old farmhouse",
        ),
    ] {
        assert_eq!(offered("", line, HOUSE), text, "{line}");
    }
}

#[test]
fn a_garage_in_the_walk_is_asked_for_and_no_comment() {
    for line in ["1 sty brk, att gar incl in walk", "1 sty brk veneer, gar in walk"] {
        let said = helps("", line, HOUSE);
        assert!(said.contains("write `veneer 4 5/8\"`"), "{line}: {said}");
        assert!(
            said.contains("`garage 20 x 22 inside the walk, in the southeast corner`"),
            "{line}: {said}"
        );
    }
}

#[test]
fn a_card_in_short_words_is_the_record() {
    for line in ["card says 1,644 total", "card: 1,644", "assessor card 1,644 total"] {
        assert_eq!(offered("", line, HOUSE), "record 1,644 sq ft", "{line}");
    }
    for line in [
        "county: 1,079 liv / 440 gar",
        "assessor card: living 1,079, gar 440",
        "county has 1,079 sf + 440 gar",
    ] {
        let said = helps("", line, HOUSE);
        assert!(said.contains("`record 1,079 sq ft`"), "{line}: {said}");
        assert!(said.contains("`recorded 440 sq ft`"), "{line}: {said}");
    }
}

#[test]
fn a_hand_is_east_or_west_on_paper_and_else_is_asked_about() {
    let before = "veneer none\nlevel \"Ground floor\"\nliving \"House\"\nup 30'\n";
    assert_eq!(offered(before, "rt 40'", "dn 30'\nlt 40'\n"), "north 30'");
    let text = format!("{before}rt 40'\ndn 30'\nlt 40'\n");
    let fixes: Vec<String> = errors(&text)
        .iter()
        .flat_map(|one| one.fixes().first().cloned())
        .map(|fix| fix.text)
        .collect();
    assert_eq!(fixes, ["north 30'", "east 40'", "south 30'", "west 40'"]);
    let walk = "level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\n";
    assert_eq!(offered(walk, "R 30", ""), "south 30");
    let first = "level \"Ground floor\"\nliving \"House\"\n";
    let said = helps(first, "R 30", "");
    assert!(said.contains("write `east 30`") && said.contains("write `right 30` here"), "{said}");
    // Before the house has a line the walls beside it tell.
    let said: Vec<String> = errors("up 28'4\nrt 40'2\ndn 28'4\nlt ? shrubs\n")
        .iter()
        .filter_map(|one| one.fixes().first().map(|fix| fix.text.clone()))
        .collect();
    assert_eq!(
        said,
        ["north 28' 4\"", "east 40' 2\"", "south 28' 4\"", "west by closing note \"shrubs\""]
    );
    let street = format!("front south\n{walk}");
    assert_eq!(offered(&street, "fwd 30", ""), "front 30");
}

#[test]
fn a_doubt_and_a_wall_out_of_reach_are_kept() {
    let before = "level \"Ground floor\"\nliving \"House\"\nnorth 30'\n";
    assert_eq!(offered(before, "E 12 ? bush", ""), "E 12 estimated note \"bush\"");
    assert_eq!(offered(before, "east - can't get # holly", ""), "east by closing");
    let list = errors(&format!("{before}E 31'14\"\n"));
    let lines: Vec<&str> = list.iter().flat_map(Diagnostic::fixes).map(|fix| &*fix.text).collect();
    assert_eq!(lines, ["E 32' 2\"", "E 31' 4\"", "E 31' 1\""]);
}

#[test]
fn a_level_by_its_first_word_and_a_window_above_the_floor() {
    let text = format!(
        "veneer none\n{HOUSE}{}\n",
        offered(HOUSE, "upper: taped inside 29' x 17', walls 6\"", "")
    );
    assert!(
        text.contains("level \"Upper floor\"\nliving \"Upper rooms\" measured to inside\n"),
        "{text}"
    );
    let said = helps(HOUSE, "second, taped inside, walls 5 in", "");
    assert!(said.contains("write `level \"second floor\"` here"), "{said}");
    let line = "bay window on upstairs, doesn't reach floor";
    assert_eq!(offered(HOUSE, line, ""), format!("# {line}"));
    let said = helps(HOUSE, "barn: 15.25 by 9.15, lean-to 15.25 x 3.05 on W side", "");
    let commas = helps(HOUSE, "Barn: 15,2 x 9,1 ; lean-to 3 x 9,1 east side", "");
    assert!(commas.contains("`lean-to 3 x 9.1 east side`"), "{commas}");
    assert!(
        said.contains("`barn: 15.25 by 9.15`") && said.contains("`lean-to 15.25 x 3.05 on W side`"),
        "{said}"
    );
}
