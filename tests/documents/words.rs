//! One word for each idea: words that must not appear in what people read.

use std::fs;
use std::process::Command;

use super::{root, sketches};

/// A word or phrase, and its replacement. A word matches only as a whole word.
const NOT: &[(&str, &str)] = &[
    ("taken off", "deducted"),
    ("squared off", "filled in, or left off"),
    ("per cent", "percent"),
    ("storey", "level"),
    ("storeys", "levels"),
    ("metre", "meter"),
    ("metres", "meters"),
    ("centimetres", "centimeters"),
    ("millimetres", "millimeters"),
    ("nanometres", "nanometers"),
    ("neighbour", "neighbor"),
    ("neighbours", "neighbors"),
    ("judgement", "judgment"),
    ("towards", "toward"),
    ("totalled", "totaled"),
    ("licence", "license"),
    ("colour", "color"),
    ("whole feet could give", "possible range, rounded to the foot"),
    ("whole feet could add", "rounding to the foot could change it by"),
    ("is not big enough", "alone cannot explain it"),
    ("does not give it", "alone cannot explain it"),
    ("single walls", "if walls were misrounded"),
    ("moved to close", "rounded and adjusted to close"),
    ("by the rule", "rounded"),
    ("not there", "not found on site"),
    ("round it", "perimeter"),
    ("on the word of", "as stated by the preparer"),
    ("the writer's word", "as stated by the preparer"),
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
    ("caused by", "would account for"),
    ("proves", "nothing of the kind"),
    ("violates", "nothing of the kind"),
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
    NOT.iter().map(|(phrase, _)| *phrase).filter(|phrase| has(phrase)).collect()
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
fn no_report_has_a_banned_word() {
    for path in sketches() {
        let path = path.to_string_lossy().into_owned();
        for arguments in
            [["reconcile", "--width=100", &path], ["reconcile", "--today=2026-05-01", &path]]
        {
            let report = printed(&arguments);
            assert!(!report.is_empty(), "{path}");
            assert_eq!(found(&report), Vec::<&str>::new(), "{path}");
        }
    }
}

#[test]
fn no_page_has_a_banned_word() {
    for path in sketches() {
        let text = fs::read_to_string(&path).unwrap();
        let house = fairfoot::read("house.sides", text).unwrap();
        let areas = house.areas(&fairfoot::Settings::default()).unwrap();
        let result = areas.reconcile(&fairfoot::Weights::default()).unwrap();
        // Texts quoted from the file are exempt.
        let all = fairfoot::pages::Section::ALL;
        let ours =
            all.iter().copied().filter(|section| *section != fairfoot::pages::Section::Source);
        let only = fairfoot::pages::Sections::of(ours);
        let options = fairfoot::pages::PageOptions { only, ..Default::default() };
        for page in result.pages(options).unwrap().pages() {
            let words: Vec<&str> = page.texts().map(fairfoot::pages::Text::words).collect();
            let text = words.join(" ");
            assert_eq!(found(&text), Vec::<&str>::new(), "{}: {}", path.display(), page.title());
        }
    }
}

#[test]
fn no_help_has_a_banned_word() {
    for command in ["reconcile", "check", "area", "pages", "verify", "tidy", "batch", "new"] {
        let help = printed(&[command, "--help"]);
        assert!(help.contains("Usage"), "{command}");
        assert_eq!(found(&help), Vec::<&str>::new(), "{command}");
    }
    assert_eq!(found(&printed(&["--help"])), Vec::<&str>::new());
    assert_eq!(found(&printed(&["manual"])), Vec::<&str>::new());
}

#[test]
fn readme_has_no_banned_word() {
    assert_eq!(found(&super::read("README.md")), Vec::<&str>::new());
}
