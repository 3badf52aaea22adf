//! Lines as people type them: each is read, or answered with its cause and with what to type instead.
//!
//! `tests/faults/typing.txt` has them, one block per line: its context, the line, and the message.
//! `INSTA_UPDATE=always cargo test typing` writes the messages again, for a person to read.

use std::fmt::Write as _;

use fairfoot::{Diagnostic, Source};

/// A file in which a line can be typed: the text before and after it.
pub(super) fn around(place: &str) -> (&'static str, &'static str) {
    const HOUSE: &str = "level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\ncorner \"step\"\nsouth 30'\nwest 40'\n";
    const BOX: &str = "north 10'\neast 10'\nsouth 10'\nwest 10'\n";
    match place {
        "head" => ("", HOUSE),
        "level" => (HOUSE, "living \"Rooms\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n"),
        "space" => (HOUSE, BOX),
        "side" => {
            ("level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\n", "")
        }
        "street" => ("front south\nlevel \"Ground floor\"\nliving \"House\"\nnorth 30'\n", ""),
        "lot" => (
            "level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\nlot \"Lot 4\"\n",
            "bearing N 0° E 100'\n",
        ),
        "last call" => (
            "level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\nlot \"Lot 4\"\nbearing N 0° E 100'\nbearing N 90° E 80'\n",
            "",
        ),
        "end" => (HOUSE, BOX),
        other => panic!("no place is called {other}"),
    }
}

/// The errors of reading a text, without those about its outlines.
pub(super) fn errors(text: &str) -> Vec<Diagnostic> {
    match fairfoot::sketch::parse(Source::new("typed.sides", text)) {
        Ok(_) => Vec::new(),
        Err(output) => output.list().to_vec(),
    }
}

/// The message about a line, and the number of suggested changes, each of which must read without errors.
fn said(place: &str, line: &str) -> (String, usize) {
    let (before, after) = around(place);
    let text = format!("{before}{line}\n{after}");
    let list = errors(&text);
    let mut said = String::new();
    let mut fixes = 0;
    if list.is_empty() {
        let sketch = fairfoot::sketch::parse(Source::new("typed.sides", text.as_str())).unwrap();
        let number = before.lines().count() + 1;
        let tidied = sketch.tidied();
        let read = tidied.lines().nth(number - 1).unwrap_or_default();
        let _ = writeln!(said, "reads: {}", read.trim());
        return (said, 1);
    }
    for error in &list {
        let _ = writeln!(said, "error[{}]: {}", error.word(), error.message());
        for help in error.helps() {
            let _ = writeln!(said, "help: {help}");
        }
        // The diagnostic is on the line itself.
        let above = text[..error.span().start.min(text.len())].matches('\n').count();
        if above != before.lines().count() {
            let _ = writeln!(said, "AT ANOTHER LINE");
        }
    }
    // The near misses of a line are corrected together; if there are several readings, each is tried.
    let readings = list.iter().map(|error| error.fixes().len()).max().unwrap_or(0);
    for reading in 0..readings {
        let mut mended = text.clone();
        for error in list.iter().rev() {
            let fix = error.fixes().get(reading).or(error.fixes().last());
            if let Some(fix) = fix {
                mended.replace_range(fix.span.start..fix.span.end, &fix.text);
            }
        }
        let left = errors(&mended);
        if let Some(error) = left.first() {
            let _ = writeln!(said, "THE CHANGE DOES NOT READ: {}", error.message());
        }
        fixes += 1;
    }
    (said, fixes)
}

#[test]
fn what_people_type_is_read_or_answered_with_what_to_type() {
    let path = super::folder().join("typing.txt");
    let gallery = std::fs::read_to_string(&path).unwrap();
    let (mut lines, mut with_fix) = (0, 0);
    let mut anew = String::new();
    for block in gallery.split("\n\n").filter(|block| !block.trim().is_empty()) {
        if block.starts_with('#') {
            let _ = write!(anew, "{}\n\n", block.trim_end());
            continue;
        }
        let first = block.lines().next().unwrap();
        let (place, line) = first.split_once("> ").expect("a place and a line");
        let line = line.replace("⇥", "\t");
        let (said, fixes) = said(place, &line);
        lines += 1;
        with_fix += usize::from(fixes > 0);
        let _ = write!(anew, "{first}\n{said}\n");
    }
    let anew = format!("{}\n", anew.trim_end());
    if std::env::var("INSTA_UPDATE").is_ok_and(|update| update == "always") {
        std::fs::write(&path, &anew).unwrap();
        println!("{lines} lines, {with_fix} with something to type");
    }
    let unread = anew.split("\n\n").find(|block| block.contains("THE CHANGE DOES NOT READ"));
    assert_eq!(unread, None);
    for (now, before) in anew.split("\n\n").zip(gallery.split("\n\n")) {
        assert_eq!(now, before, "what is said of this line is not what typing.txt has");
    }
    assert_eq!(anew.len(), gallery.len(), "typing.txt has another number of lines");
    assert!(lines >= 500, "{lines}");
    // For the others something is missing that only the writer knows, or another line of the file is to be changed: the
    // area on the record of a garage, or a thickness that goes to the top.
    assert!(with_fix * 100 >= lines * 79, "{with_fix} of {lines} have something to type");
}

#[test]
fn no_beginning_or_end_of_a_line_stops_the_program() {
    let gallery = std::fs::read_to_string(super::folder().join("typing.txt")).unwrap();
    let lines = gallery.split("\n\n").filter_map(|block| block.lines().next()?.split_once("> "));
    let mut short: std::collections::BTreeSet<(String, String)> = std::collections::BTreeSet::new();
    for (place, line) in lines {
        let words: Vec<&str> = line.split_whitespace().collect();
        for count in 1..words.len().min(4) {
            short.insert((place.to_owned(), words[..count].join(" ")));
            short.insert((place.to_owned(), words[words.len() - count..].join(" ")));
        }
    }
    for place in ["head", "level", "space", "side", "lot", "end"] {
        let marks = ".,;:()[]-–/\\+*=~'\"½¼°#&%$@!?<>|_^`".chars().map(String::from);
        let words = ["within inch", "half inch", "to inch", "1/", "/2", "x x", "by", "of of", "-."];
        short.extend(marks.chain(words.map(str::to_owned)).map(|text| (place.to_owned(), text)));
    }
    // A letter that is longer in lower case, so that bytes of the two cannot be counted against each other.
    let lines = gallery.split("\n\n").filter_map(|block| block.lines().next()?.split_once("> "));
    for (place, line) in lines.step_by(5) {
        short.insert((place.to_owned(), format!("{line} {}", "İ".repeat(20))));
    }
    assert!(short.len() > 5_000, "{}", short.len());
    for (place, text) in short {
        let (before, after) = around(&place);
        errors(&format!("{before}{text}\n{after}"));
    }
}

#[test]
fn where_only_the_writer_knows_what_is_meant_no_line_is_offered() {
    for (place, line) in [
        ("side", "west 7' 21\""),
        ("side", "west 12*6"),
        ("side", "west 12x6"),
        ("side", "west 12 ft 6\" by 6' 3\""),
        ("side", "east 42-7-4"),
        ("side", "west zero"),
        ("side", "east four four seven"),
        ("space", "deck back of house"),
        ("space", "deck front of House"),
        ("space", "deck behind house"),
        ("space", "deck on the left, 10 ft by 13' 9\""),
        ("space", "porch at front door 8 x 5"),
        ("space", "garage att. Garage 552 on record, from House corner 5"),
        ("space", "garage 484"),
        ("space", "garage 484 right side"),
        ("space", "att garage from SE corner, record 552"),
        ("space", "garage \"Garage\" shares wall with house"),
        ("space", "garage \"Garage\" next to house"),
        ("space", "start at inside corner"),
        ("head", "record 1215 sqft, listing 99 m"),
        ("head", "measured April 2026"),
        ("head", "county has garage 470"),
        ("space", "deck \"Deck\" back of house"),
        ("space", "garage north of house 20' away"),
        ("space", "less garage 20 x 22"),
        ("space", "living \"Addition\" 1998"),
        ("space", "bedroom 1"),
        ("space", "garage \"Garage\" start 10' east of house"),
        ("side", "same as south"),
        ("side", "north 14' 2\" + same"),
        ("side", "north 28' 4\" from photo"),
        ("level", "level 2 measured inside"),
        ("head", "living area 1,900"),
        ("lot", "bearing S 88° 52' 30\" W back to POB"),
    ] {
        let (said, fixes) = said(place, line);
        assert!(fixes == 0 && !said.contains("did you mean"), "{line}: {said}");
        assert!(said.contains("help: "), "{line}: {said}");
    }
}

#[test]
fn a_size_is_offered_as_sides_only_where_none_follow() {
    let mended = |after: &str| {
        let text = format!("{}deck 10' x 12'\n{after}", around("space").0);
        let list = errors(&text);
        let fix = list.iter().flat_map(Diagnostic::fixes).next().unwrap();
        let mut mended = text.clone();
        mended.replace_range(fix.span.start..fix.span.end, &fix.text);
        assert_eq!(errors(&mended).len(), 0, "{mended}");
        mended
    };
    let walls = |text: &str| text.lines().filter(|line| line.starts_with("north")).count();
    // The house has one wall that runs north.
    assert_eq!(walls(&mended("")), 2);
    assert_eq!(walls(&mended(around("space").1)), 2);
}

#[test]
fn no_number_said_in_words_is_answered_with_by_closing() {
    for line in
        ["east forty-two and some", "east twelve point five and a bit", "east two times ten"]
    {
        let (said, _) = said("side", line);
        assert!(!said.contains("by closing`"), "{line}: {said}");
    }
}

#[test]
fn a_size_after_the_first_way_of_a_walk_is_offered_as_one_wall() {
    let text = "level \"Ground floor\"\nliving \"House\"\nnorth 30' x 40'\neast 40'\nsouth 30'\nwest 40'\n";
    let list = errors(text);
    let fix = list.iter().flat_map(Diagnostic::fixes).next().unwrap();
    let mut mended = text.to_owned();
    mended.replace_range(fix.span.start..fix.span.end, &fix.text);
    assert_eq!(errors(&mended).len(), 0, "{mended}");
    assert_eq!(mended.lines().filter(|line| line.starts_with("north")).count(), 1, "{mended}");
    assert_eq!(mended.lines().count(), text.lines().count(), "{mended}");
}
