//! The wording: cautions everywhere, no promise, every rule with its source, a list for the house at hand.

use fairfoot::value::Sure;
use fairfoot::wording::Block;

use super::{HOUSE, text, whole, worth_of};

const ALL: &str = "record 1,500 sq ft\nplace texas\ntax year 2026\nnotice 2026-04-17\nhomestead since 2021\n\
    last year assessed $337,000\nvalue market $412,000 assessed $370,000 improvement $318,000\n\
    tax rate 2.14 per $100\nexemption $140,000 \"school\"\n\
    comparable \"A\" 1,250 sq ft sold $250,000 on 2025-08-14";

#[test]
fn the_cautions_always_appear() {
    for lines in [
        ALL,
        "notice 2026-04-17",
        "value market $412,000",
        "record 1,000 sq ft\ntax rate 2 per $100",
    ] {
        let reported = text(&worth_of(lines).unwrap());
        for caution in [
            "Not legal advice and not an appraisal",
            "the local office that keeps the record and a licensed professional",
            "Online price estimates carry little weight (common practice)",
        ] {
            assert!(reported.contains(caution), "{lines}: {reported}");
        }
    }
    let reported = text(&worth_of(ALL).unwrap());
    assert!(reported.contains("None of them is the value, and none is an appraisal"), "{reported}");
    assert!(
        reported.contains("Not legal advice: ask the appraisal office about each date"),
        "{reported}"
    );
}

#[test]
fn nothing_is_promised_and_nobody_is_blamed() {
    let reported = text(&worth_of(ALL).unwrap()).to_lowercase();
    for word in [
        "proves",
        "will win",
        "wins",
        "guarantee",
        "violat",
        "tolerance",
        "will save",
        "you save",
        "caused",
        "you will",
    ] {
        assert!(!reported.contains(word), "{word}: {reported}");
    }
}

#[test]
fn when_a_rule_was_checked_and_where_it_was_read_stand_in_footnotes_alone() {
    for place in ["texas", "california", "ohio", "new-york"] {
        let told = worth_of(&ALL.replace("texas", place)).unwrap().blocks();
        let (footnotes, others): (Vec<Block>, Vec<Block>) =
            told.into_iter().partition(|block| matches!(block, Block::Footnote { .. }));
        assert!(!footnotes.is_empty(), "{place}");
        for block in others {
            let told = format!("{block:?}");
            for words in
                ["last checked", "read in a copy", "second-hand", "from memory", "in force"]
            {
                assert!(!told.contains(words), "{place}, {words}: {told}");
            }
        }
    }
}

/// Sections and their certainty, as known on 2026-11-27.
#[test]
fn every_rule_states_its_section_and_its_certainty() {
    let worth = worth_of(ALL).unwrap();
    let rules: Vec<(&str, Sure)> = worth
        .dates()
        .deadlines()
        .iter()
        .map(|deadline| (deadline.rule().section(), deadline.rule().sure()))
        .collect();
    assert_eq!(
        rules,
        [
            ("41.44(a)(1)", Sure::Read),
            ("41.46", Sure::Read),
            ("41.461, 41.67(d)", Sure::Read),
            ("41.445", Sure::Memory),
            ("41.41(a)(2), 41.43, 42.26(a)(3)", Sure::SecondHand),
            ("41.43(a), (a-1)", Sure::SecondHand),
            ("41.45(b)", Sure::SecondHand),
            ("23.01(a)", Sure::Read),
            ("25.25(b)", Sure::Read),
            ("25.25(d), (d-1), 25.26", Sure::Read),
            ("25.25(c)", Sure::SecondHand),
            ("31.02, 31.04(a), 33.01, 33.07, 1.08", Sure::SecondHand),
            ("23.231", Sure::SecondHand),
            ("23.01(e)", Sure::Read),
            ("42.21(a), 42.01", Sure::Read),
        ]
    );
    assert_eq!(worth.cap().unwrap().rule().section(), "23.23");
    assert_eq!(worth.dates().moving().unwrap().section(), "1.06");
    assert!(worth.dates().moving().unwrap().effective().contains("2026-01-01")); // HB 1392, 2025
    let reported = text(&worth);
    for deadline in worth.dates().deadlines() {
        let rule = deadline.rule();
        // A rule that was not read in the law itself says so in its note, and nowhere else.
        let sure = match rule.sure() {
            Sure::Read => rule.sure().words(),
            _ => "not confirmed: ask the office",
        };
        let known = Some(rule.effective()).filter(|known| *known != "not known");
        let known = known.map(|known| format!("{known}; ")).unwrap_or_default();
        let note = format!("{}: {known}{sure}; last checked on", rule.section());
        assert!(reported.contains(&note), "{note}: {reported}");
        assert!(rule.checked() >= "2026-11-25", "{}", rule.checked());
    }
}

#[test]
fn a_day_that_is_not_certain_is_never_a_figure() {
    let worth = worth_of(ALL).unwrap();
    let reported = worth.blocks();
    for deadline in worth.dates().deadlines().iter().filter(|deadline| !deadline.is_certain()) {
        let name = format!("{} ({})", deadline.rule().name(), deadline.rule().section());
        let row = Block::Row { name, figure: "ask the appraisal office".to_owned() };
        assert!(reported.contains(&row), "{row:?}");
    }
}

#[test]
fn every_row_of_a_table_has_a_cell_under_each_head() {
    let with_record = format!(
        "{ALL}\ncomparable \"B\" 1,300 sq ft recorded 1,350 sq ft sold $270,000 on 2025-09-01"
    );
    for lines in [ALL, &with_record] {
        let reported = worth_of(lines).unwrap().blocks();
        let tables = reported.iter().filter_map(|reported| match reported {
            Block::Table { heads, rows } => Some((heads, rows)),
            _ => None,
        });
        for (heads, rows) in tables {
            assert!(rows.iter().all(|row| row.len() == heads.len()), "{heads:?} {rows:?}");
        }
    }
}

#[test]
fn what_to_bring_is_of_the_house_at_hand() {
    // Side 1 is 40' on the record, 30' by the tape; side 2 rounds to what the record has.
    let house = HOUSE
        .replace("north 30'", "north 30' recorded 40' photo \"7: west\"")
        .replace("east  40'", "east 40' 2\" recorded 40'")
        .replace("south 30'", "south 30' recorded 40'")
        .replace("west  40'", "west 40' 2\"");
    let head = "record 1,600 sq ft\nvalue improvement $200,000\nmeasured 2026-03-07 by \"the owner\" with \"tape\"\ninterior not seen\n";
    let worth = whole(&format!("{head}{house}"), None).unwrap();
    let list = worth.checklist().join("\n");
    assert!(
        list.contains(
            "side 1 of the house with the tape on it (\"7: west\"): 30' measured, 40' on the record"
        ),
        "{list}"
    );
    assert!(list.contains("side 3 of the house"), "{list}");
    assert!(!list.contains("side 2") && !list.contains("side 4"), "{list}");
    assert!(list.contains("the owner, who measured on March 7, 2026 (tape)"), "{list}");
    assert!(list.contains("saw the inside"), "{list}");
    assert!(list.contains("estimates for repairs"), "{list}");
    assert!(!list.contains("comparable"), "{list}");
}

#[test]
fn a_space_that_the_record_would_have_to_count_is_on_the_list() {
    let garage = "  garage \"Garage\" start east 40'\n    north 20'\n    east 20'\n    south 20'\n    west 20'\n";
    let lines = "value improvement $170,000\nrecord 1,600 sq ft\n";
    let worth = whole(&format!("{lines}{HOUSE}{garage}"), None).unwrap();
    assert!(
        worth.checklist().iter().any(|item| item.starts_with("photos of the garage")),
        "{:?}",
        worth.checklist()
    );
}
