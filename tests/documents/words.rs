//! One word for each idea: words that must not appear in what people read.

use std::fs;
use std::process::Command;

use super::{root, sketches};

/// A word or phrase, and its replacement. A word matches only as a whole word.
const NOT: &[(&str, &str)] = &[
    ("taken off", "deducted"),
    ("squared off", "filled in, or left off"),
    ("per cent", "percent"),
    ("whole feet could give", "possible range, rounded to the foot"),
    ("whole feet could add", "rounding to the foot could change it by"),
    ("is not big enough", "alone cannot explain it"),
    ("does not give it", "alone cannot explain it"),
    ("misrounded", "rounded against the rule"),
    ("single walls", "if walls were rounded against the rule"),
    ("moved to close", "rounded and adjusted to close"),
    ("by the rule", "rounded"),
    ("not there", "not found on site"),
    (", round it", "perimeter"),
    ("on the word of", "as stated by the owner"),
    ("the writer's word", "as stated by the owner"),
    ("as said here", "as stated above"),
    ("of it is ours", "every wall agrees to the foot"),
    ("reach the tax", "Would it change the tax?"),
    ("less tax", "estimated tax saved"),
    ("by when to act", "Deadlines"),
    ("a sq ft", "$ per sq ft"),
    ("taxed value", "appraised value (for tax)"),
    ("why to look again", "second look"),
    ("est.", "estimated"),
    ("rec.", "from record"),
    ("caused by", "would explain"),
    ("proves", "nothing of the kind"),
    ("fault", "error"),
    ("faults", "errors"),
    ("full outline", "whole outline"),
    ("slip", "misread"),
    ("slips", "misread"),
    ("remark", "comment"),
    ("remarks", "comments"),
    ("look again", "second look"),
    ("reason to look", "second look"),
    ("--ties", "--halves"),
    ("--reach", "--reading"),
    ("the working", "Calculations"),
    ("rounding in another way than", "rounding alone could explain it"),
    ("against the rounding of", "only if walls were rounded against the rule"),
    ("lies inside; the", "fits"),
    ("up to the whole foot", "every wall rounded up"),
    ("obtained the sides", "I measured these walls"),
    ("well above the right one", "far too high"),
    ("apart and not in it", "not included"),
    ("apart, page", "supplement, page"),
    ("estimates are not evidence", "carry little weight"),
    ("so many", "how many there are"),
    ("so far", "how far it is"),
    ("none where", "nothing of the kind"),
    ("violates", "nothing of the kind"),
    ("a roof standing out", "a roof that overhangs by"),
    ("would stand out", "would overhang by"),
    ("is measured outside too", "measured outside"),
    ("taken as outside", "measured outside"),
    ("taken at the whole outline", "counted as large as the whole level below"),
    ("taken at half the outline", "counted as half of the whole level below"),
    ("Nothing common accounts", "No common cause fits"),
    ("left, within what", "the rest, which rounding could make"),
    ("it decides no area", "its area is not counted"),
    ("takes up nearly all of it", "nearly all of that is added to or taken from side 4"),
    ("laid where it fits best", "placed where it fits best"),
    ("is seen of a part", "830 mm of these 860 mm stands free"),
    ("Plain ways from size to value", "Simple ways to put a price on the difference"),
    ("Which way takes up which kind", "Which procedure corrects which kind of difference"),
    ("both cover", "the two overlap by"),
    ("that the walk does not have", "that the measurements do not show"),
    ("without what else it counts", "the record less the porch is"),
    ("total, it says", "counted in the record"),
    ("what the gap is worth in", "what the difference is worth"),
    ("gap: the record", "the record has more by"),
    ("whole nanometers", "with no rounding on the way"),
    ("foot, halves up", "exactly half goes up"),
    ("by the preparer", "as stated by the owner"),
    ("obtained the lengths", "I measured these walls"),
    ("follow from the sides in the file", "Figures are computed from these lengths"),
    ("closure 0.00", "under 0.01 ft"),
    ("rooms below", "ground floor rooms"),
    ("with faults", "with errors"),
    ("whole feet allow", "outside the possible range"),
    ("eave to tell", "no overhang can be computed"),
    ("says of itself", "measured the record's way"),
    ("half step", "the quarter foot, where rounding to half feet turns"),
    ("against the rounding for", "only if walls were rounded against the rule for"),
    ("lie how far", "gaps in percent of the measured area"),
    ("is no name for a file", "is not a file name"),
    ("no map that is read", "not a map that fairfoot reads"),
    ("tell its makers", "please report it"),
    ("worked on at once", "computed at once"),
];

/// US spelling: the beginning of a word, and how it is spelled here.
const SPELLED: &[(&str, &str)] = &[
    ("afterwards", "afterward"),
    ("aluminium", "aluminum"),
    ("amongst", "among"),
    ("analyse", "analyze"),
    ("behaviour", "behavior"),
    ("cancelled", "canceled"),
    ("catalogue", "catalog"),
    ("centimetre", "centimeter"),
    ("centre", "center"),
    ("cheque", "check"),
    ("colour", "color"),
    ("defence", "defense"),
    ("dialogue", "dialog"),
    ("favour", "favor"),
    ("fulfil ", "fulfill"),
    ("grey", "gray"),
    ("half-way", "halfway"),
    ("honour", "honor"),
    ("judgement", "judgment"),
    ("kilometre", "kilometer"),
    ("labelled", "labeled"),
    ("learnt", "learned"),
    ("licence", "license"),
    ("metre", "meter"),
    ("millimetre", "millimeter"),
    ("modelled", "modeled"),
    ("nanometre", "nanometer"),
    ("neighbour", "neighbor"),
    ("organis", "organiz"),
    ("practis", "practic"),
    ("programme ", "program"),
    ("realis", "realiz"),
    ("recognis", "recogniz"),
    ("spelt", "spelled"),
    ("storey", "level"),
    ("summaris", "summariz"),
    ("totalled", "totaled"),
    ("towards", "toward"),
    ("travelled", "traveled"),
    ("whilst", "while"),
];

/// The listed phrases that a text contains, ignoring case and line breaks.
fn found(text: &str) -> Vec<&'static str> {
    let text = text.to_lowercase().split_whitespace().collect::<Vec<_>>().join(" ");
    let is_letter = |character: Option<char>| character.is_some_and(char::is_alphabetic);
    let has = |phrase: &str| {
        text.match_indices(phrase).any(|(at, _)| {
            let ends_open =
                phrase.ends_with('.') || !is_letter(text[at + phrase.len()..].chars().next());
            !is_letter(text[..at].chars().next_back()) && ends_open
        })
    };
    let begins = |word: &str| {
        text.match_indices(word).any(|(at, _)| !is_letter(text[..at].chars().next_back()))
    };
    let phrases = NOT.iter().map(|(phrase, _)| *phrase).filter(|phrase| has(phrase));
    let spelled = SPELLED.iter().map(|(word, _)| *word).filter(|word| begins(word));
    // `6.8 %` is `6.8%`.
    let percent =
        text.as_bytes().windows(3).any(|three| three[0].is_ascii_digit() && three[1..] == *b" %");
    phrases.chain(spelled).chain(percent.then_some(" %")).collect()
}

/// Numbers that a reader would stumble over: over two decimals, or square feet without their comma.
fn numbers_to_mend(text: &str) -> Vec<String> {
    let ends = |character: char| !(character.is_ascii_digit() || matches!(character, '.' | ','));
    let mut found = Vec::new();
    let mut words = text.split_whitespace().peekable();
    while let Some(word) = words.next() {
        for number in word.split(ends) {
            let number = number.trim_matches(['.', ',']);
            let decimals = number.split_once('.').map_or(0, |(_, after)| after.len());
            let is_version = number.matches('.').count() > 1;
            let is_long = number.len() > 3 && number.bytes().all(|byte| byte.is_ascii_digit());
            let is_area = words.peek().is_some_and(|next| next.starts_with("sq"));
            if decimals > 2 && !is_version || is_long && is_area {
                found.push(number.to_owned());
            }
        }
    }
    found
}

fn printed(arguments: &[&str]) -> String {
    let program = env!("CARGO_BIN_EXE_fairfoot");
    let run = Command::new(program).args(arguments).current_dir(root()).output().unwrap();
    String::from_utf8(run.stdout).unwrap()
}

#[test]
fn the_list_is_looked_for_as_words() {
    assert_eq!(found("Less  TAX, and the perimeter"), ["less tax"]);
    assert_eq!(found("a meter and a parameter; 3 sq ft; forest."), Vec::<&str>::new());
    assert_eq!(found("12' rec. and\n12 per cent"), ["per cent", "rec."]);
}

#[test]
fn spelling_and_percent_are_looked_for_as_well() {
    assert_eq!(found("A neighbour's Colour: 6.8 % of it"), ["colour", "neighbour", " %"]);
    assert_eq!(found("a perimeter, 6.8% of it, greyhounds aside"), ["grey"]);
}

#[test]
fn numbers_that_a_reader_would_stumble_at_are_found() {
    assert_eq!(numbers_to_mend("2337.111111 and 1.234"), ["2337.111111", "1.234"]);
    assert_eq!(numbers_to_mend("1757 sq ft, in 2026, 1,757.25 sq ft"), ["1757"]);
    assert_eq!(numbers_to_mend("fairfoot 0.1.0, 12.5 × 43."), Vec::<String>::new());
}

/// What a command prints on both streams, standard error first, with this as its standard input.
fn said(folder: &std::path::Path, arguments: &[&str], input: &str) -> [String; 2] {
    let mut run = assert_cmd::Command::new(assert_cmd::cargo::cargo_bin!("fairfoot"));
    let run = run.args(arguments).current_dir(folder).write_stdin(input).output().unwrap();
    [run.stderr, run.stdout].map(|bytes| String::from_utf8(bytes).unwrap())
}

/// Every command, as the program lists them.
fn commands() -> Vec<String> {
    let help = printed(&["--help"]);
    let from = help.find("Commands:").expect("commands") + "Commands:".len();
    let lines = help[from..].lines().skip(1).take_while(|line| !line.trim().is_empty());
    let names = lines.filter(|line| line.starts_with("  ") && !line.starts_with("   "));
    names
        .filter_map(|line| line.split_whitespace().next())
        .filter(|name| *name != "help")
        .map(str::to_owned)
        .collect()
}

#[test]
fn no_report_has_a_word_that_must_not_come_back() {
    for path in sketches() {
        let path = path.to_string_lossy().into_owned();
        let ways: [&[&str]; 6] = [
            &["reconcile", "--width=100"],
            &["reconcile", "--today=2026-05-01"],
            &["reconcile", "--why"],
            &["reconcile", "--json", "--today=2026-05-01"],
            &["area"],
            &["batch", "--format=table"],
        ];
        for way in ways {
            let arguments: Vec<&str> = way.iter().copied().chain([path.as_str()]).collect();
            let report = printed(&arguments);
            assert!(!report.is_empty(), "{path}");
            assert_eq!(found(&report), Vec::<&str>::new(), "{arguments:?}");
        }
    }
}

#[test]
fn no_report_has_a_number_to_stumble_at() {
    for path in sketches() {
        let path = path.to_string_lossy().into_owned();
        let report = printed(&["reconcile", "--why", &path]);
        // The names of laws contain numbers.
        let report = report.split("What the difference is worth").next().unwrap();
        assert_eq!(numbers_to_mend(report), Vec::<String>::new(), "{path}");
    }
}

/// Every page that can be made of a house, except for the sides file itself, whose words are its writer's.
fn pages(path: &std::path::Path) -> Vec<fairfoot::pages::Page> {
    let text = fs::read_to_string(path).unwrap();
    let house = fairfoot::read("house.sides", text).unwrap();
    let areas = house.areas(&fairfoot::Settings::default()).unwrap();
    let result = areas.reconcile(&fairfoot::Weights::default()).unwrap();
    let all = fairfoot::pages::Section::ALL;
    let ours = all.iter().copied().filter(|section| *section != fairfoot::pages::Section::Source);
    let only = fairfoot::pages::Sections::of(ours);
    let options = fairfoot::pages::PageOptions { only, ..Default::default() };
    result.pages(options).unwrap().pages().to_vec()
}

#[test]
fn no_page_has_a_word_or_a_number_that_must_not_come_back_seen_or_heard() {
    for path in sketches() {
        let all = pages(&path);
        assert!(all.iter().any(|page| page.title().contains("Request")), "{}", path.display());
        for page in all {
            let words: Vec<&str> = page.texts().map(fairfoot::pages::Text::words).collect();
            let text = format!("{} {} {}", page.title(), page.description(), words.join(" "));
            let is_for_an_office = !page.title().contains("Supplement");
            let coaching = [
                "(ask)",
                "To settle it",
                "Ask for ",
                "; ask whether",
                "; ask how",
                "the file ",
                "read second-hand",
            ];
            let coached =
                coaching.iter().filter(|words| is_for_an_office && text.contains(**words));
            let none: Vec<&&str> = Vec::new();
            assert_eq!(coached.collect::<Vec<_>>(), none, "{}: {}", path.display(), page.title());
            assert_eq!(found(&text), Vec::<&str>::new(), "{}: {}", path.display(), page.title());
            let has_law = ["Supplement", "Request"].iter().any(|law| page.title().contains(law));
            if !has_law {
                // A section of the law, over the declaration of the Calculations.
                let numbers = numbers_to_mend(&text.replace("Remedies Code 132.001", ""));
                assert_eq!(numbers, Vec::<String>::new(), "{}: {}", path.display(), page.title());
            }
        }
    }
}

/// Checks what a command says on both streams. What it says on standard error must hold this; a command that is
/// mistyped here would say something else.
fn checked(folder: &std::path::Path, arguments: &[&str], input: &str, holds: &str) {
    let streams = said(folder, arguments, input);
    assert!(streams[0].contains(holds), "{arguments:?}: {}", streams[0]);
    for text in streams {
        assert_eq!(found(&text), Vec::<&str>::new(), "{arguments:?}: {text}");
    }
}

#[test]
fn nothing_said_of_a_new_file_has_a_word_that_must_not_come_back() {
    let folder = tempfile::tempdir().unwrap();
    for (arguments, holds) in [
        (["new", "house"].as_slice(), "now type the sides"),
        (&["new", "house"], "house.sides"),
        (&["new", "form", "--printable"], "print it at full size"),
        (&["new", "form", "--printable"], "form.pdf"),
        (&["new", "form.txt", "--printable"], ".pdf"),
        (&["new", "-", "--printable"], "error"),
        (&["new", "sub/."], "error"),
        (&["new", "nowhere/house"], "nowhere"),
    ] {
        checked(folder.path(), arguments, "", holds);
    }
    let starter = fs::read_to_string(folder.path().join("house.sides")).unwrap();
    assert_eq!(found(&starter), Vec::<&str>::new());
}

#[test]
fn no_help_has_a_word_that_must_not_come_back() {
    let commands = commands();
    assert!(commands.len() >= 10 && commands.contains(&"reconcile".to_owned()), "{commands:?}");
    for command in &commands {
        let help = printed(&[command, "--help"]);
        assert!(help.contains("Usage"), "{command}");
        assert_eq!(found(&help), Vec::<&str>::new(), "{command}");
    }
    assert_eq!(found(&printed(&["--help"])), Vec::<&str>::new());
    assert_eq!(found(&printed(&["manual"])), Vec::<&str>::new());
    assert_eq!(found(&printed(&["reconcile", "--schema"])), Vec::<&str>::new());
}

#[test]
fn no_message_has_a_word_that_must_not_come_back() {
    let folder = root().join("tests/faults/messages");
    let mut count = 0;
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let text = fs::read_to_string(&path).unwrap().replace("tests/faults/", "");
        assert_eq!(found(&text), Vec::<&str>::new(), "{}", path.display());
        count += 1;
    }
    assert!(count > 40, "{count}");
}

#[test]
fn no_document_has_a_word_that_must_not_come_back() {
    assert_eq!(found(&super::read("README.md")), Vec::<&str>::new());
    // The grammar lists every spelling that is read, British ones too.
    let reference = super::read("sketches/README.md");
    let (words, grammar) = reference.split_once("\n## Grammar").expect("a grammar");
    assert!(grammar.contains("metres"));
    let other_spellings = "## If you wrote it another way";
    let (before, after) = words.split_once(other_spellings).expect("other spellings");
    let after = after.find("\n## ").map_or("", |at| &after[at..]);
    assert_eq!(found(before), Vec::<&str>::new());
    assert_eq!(found(after), Vec::<&str>::new());
    for path in sketches() {
        let text = fs::read_to_string(&path).unwrap();
        assert_eq!(found(&text), Vec::<&str>::new(), "{}", path.display());
    }
}
