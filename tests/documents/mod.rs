//! The documents show what the program does.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test that cannot go on has failed"
)]

mod words;

use std::fs;
use std::path::{Path, PathBuf};

use assert_cmd::Command;

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn read(path: &str) -> String {
    fs::read_to_string(root().join(path)).unwrap_or_else(|error| panic!("{path}: {error}"))
}

/// The fenced blocks of a document in a language.
fn blocks(text: &str, language: &str) -> Vec<String> {
    let mut blocks = Vec::new();
    let mut open: Option<String> = None;
    let fence = format!("```{language}");
    for line in text.lines() {
        match &mut open {
            None if line.trim_end() == fence => open = Some(String::new()),
            None => {}
            Some(_) if line.starts_with("```") => blocks.extend(open.take()),
            Some(block) => {
                block.push_str(line);
                block.push('\n');
            }
        }
    }
    assert!(open.is_none(), "a fence without its end");
    blocks
}

fn sketches() -> Vec<PathBuf> {
    let all = fs::read_dir(root().join("sketches")).unwrap().map(|entry| entry.unwrap().path());
    let mut all: Vec<PathBuf> =
        all.filter(|path| path.extension().is_some_and(|e| e == "sides")).collect();
    all.sort();
    all
}

#[test]
fn every_sample_of_the_documents_is_a_valid_file() {
    let mut seen = 0;
    for document in ["README.md", "DEVELOPERS.md", "sketches/README.md"] {
        for (i, sample) in blocks(&read(document), "sides").iter().enumerate() {
            let name = format!("{document}, sample {}", i + 1);
            fairfoot::read(&name, sample.clone()).unwrap_or_else(|faults| panic!("{faults}"));
            seen += 1;
        }
    }
    assert!(seen >= 2, "{seen}");
}

#[test]
fn every_sketch_is_valid_and_tidy_and_begins_with_a_comment() {
    assert!(sketches().len() >= 10);
    for path in sketches() {
        let text = fs::read_to_string(&path).unwrap();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        assert!(text.starts_with("# "), "{name} says what it shows");
        let checked =
            fairfoot::read(&name, text.clone()).unwrap_or_else(|faults| panic!("{faults}"));
        assert_eq!(
            fairfoot::sketch::parse(checked.source().clone()).unwrap().tidied(),
            text,
            "{name} is tidy"
        );
        assert!(read("sketches/README.md").contains(&name), "{name} is in the list of sketches");
    }
}

/// Rewritten by `INSTA_UPDATE=always cargo test --test main documents::`.
#[test]
fn the_page_in_readme_is_current() {
    let text = read("sketches/brick-garage.sides");
    let checked = fairfoot::read("brick-garage.sides", text).expect("a sound file");
    let settings = fairfoot::Settings::default();
    let areas = checked.areas(&settings).expect("areas");
    let reconciliation = areas.reconcile(&fairfoot::Weights::default()).expect("figures");
    let pages = reconciliation.pages(fairfoot::Paper::Letter);
    let page = pages.expect("pages").svg().remove(0);
    let path = "sketches/brick-garage.svg";
    assert!(read("README.md").contains(path));
    if std::env::var("INSTA_UPDATE").is_ok_and(|update| update == "always") {
        fs::write(root().join(path), &page).unwrap();
    }
    assert!(read(path) == page, "{path} is an older page; see above how it is made anew");
}

#[test]
fn every_word_of_the_format_is_used_in_a_sketch() {
    let all: String = sketches().iter().map(|path| fs::read_to_string(path).unwrap()).collect();
    for word in [
        "property ",
        "address ",
        "account ",
        "case ",
        "tax year ",
        "measured 2",
        " by \"",
        " with \"",
        "tolerance ",
        "interior seen",
        "interior not seen",
        "units ",
        "faces ",
        "front ",
        "true north ",
        "veneer ",
        "wall ",
        "record ",
        "listing ",
        "plan ",
        "figure \"",
        "measured to outside",
        "measured to frame",
        "measured to inside",
        "sides half-foot",
        "counting ",
        "missing ",
        "level ",
        "below grade",
        " beside",
        "living ",
        "unfinished ",
        "garage ",
        "carport ",
        "porch ",
        "patio ",
        "deck ",
        "balcony ",
        "breezeway ",
        "storage ",
        "outbuilding ",
        "open ",
        "low ",
        "stair ",
        "court ",
        "within ",
        " start ",
        "from corner ",
        " corner ",
        "counted",
        "not counted",
        "recorded ",
        "lot ",
        "record outline ",
        "plan outline ",
        " of \"",
        "by closing",
        "diagonal ",
        "bearing ",
        "arc ",
        " rise ",
        "close\n",
        "overall ",
        "tie corner ",
        "estimated",
        "from plan",
        "from record",
        "common",
        "veneer none",
        "photo ",
        "note ",
        " m",
        "sq m",
        "acres",
        "value market $",
        " assessed $",
        " improvement $",
        " new $",
        " year 2",
        "last year assessed $",
        "tax rate ",
        " per $100",
        " per $1,000",
        "exemption $",
        "homestead since ",
        "notice 2",
        "place texas",
        "comparable \"",
        " sold $",
        " on 2",
    ] {
        assert!(all.contains(word), "no sketch uses `{word}`");
    }
}

#[test]
fn the_reference_names_every_error_and_warning() {
    let reference = read("sketches/README.md");
    for word in fairfoot::diagnostic::Word::ALL {
        assert!(
            reference.contains(&format!("`{word}`")),
            "{word} is missing in sketches/README.md"
        );
    }
}

/// A `$ command` line of a document with the output shown below it.
fn screens(document: &str) -> Vec<(String, String)> {
    let screen = |block: String| {
        let (command, output) = block.split_once('\n').expect("a command and its output");
        (command.trim_start_matches("$ ").to_owned(), output.to_owned())
    };
    blocks(&read(document), "console").into_iter().map(screen).collect()
}

#[test]
fn every_screen_of_readme_is_what_the_program_prints() {
    let screens = screens("README.md");
    assert!(screens.len() >= 2);
    let folder = copied();
    for (command, shown) in screens {
        let printed = run(folder.path(), &command);
        assert_eq!(printed.trim_end(), shown.trim_end(), "$ {command}");
    }
}

/// A folder with the sketches, in which commands may write files.
fn copied() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    fs::create_dir(folder.path().join("sketches")).unwrap();
    for path in sketches() {
        let name = path.file_name().unwrap();
        fs::copy(&path, folder.path().join("sketches").join(name)).unwrap();
    }
    fs::create_dir(folder.path().join("sketches/maps")).unwrap();
    for entry in fs::read_dir("sketches/maps").unwrap() {
        let path = entry.unwrap().path();
        fs::copy(&path, folder.path().join("sketches/maps").join(path.file_name().unwrap()))
            .unwrap();
    }
    folder
}

/// What a command line prints; `grep -v "WORDS" FILE | fairfoot …` leaves one line of a file out.
fn run(folder: &Path, command: &str) -> String {
    let (stdin, command) = match command.strip_prefix("grep -v \"") {
        None => (String::new(), command),
        Some(rest) => {
            let (without, rest) = rest.split_once("\" ").expect("the words to leave out");
            let (file, command) = rest.split_once(" | ").expect("a pipe");
            let left_out = read(file).lines().filter(|line| line.contains(without)).count();
            assert_eq!(left_out, 1, "{command} leaves one line out");
            let kept = read(file)
                .lines()
                .filter(|line| !line.contains(without))
                .collect::<Vec<_>>()
                .join("\n");
            (kept + "\n", command)
        }
    };
    let words: Vec<&str> = command.split_whitespace().collect();
    assert_eq!(words[0], "fairfoot");
    let output = Command::new(assert_cmd::cargo::cargo_bin!("fairfoot"))
        .current_dir(folder)
        .args(&words[1..])
        .write_stdin(stdin)
        .output()
        .unwrap();
    String::from_utf8(output.stdout).unwrap() + &String::from_utf8(output.stderr).unwrap()
}

#[test]
fn readme_runs_the_demo_and_the_tests_with_nothing_before_them() {
    let readme = read("README.md");
    let first = blocks(&readme, "sh").into_iter().next().expect("the two commands");
    assert_eq!(first, "cargo run -- reconcile sketches/brick-garage.sides\ncargo test\n");
    let before = readme.split("```").next().unwrap();
    let paragraphs = before.split("\n\n").filter(|p| !p.trim().is_empty() && !p.starts_with('#'));
    assert_eq!(paragraphs.count(), 1, "one paragraph stands before the two commands");
}

#[test]
fn no_document_refers_to_a_folder_outside_the_project() {
    for document in ["README.md", "DEVELOPERS.md", "sketches/README.md"] {
        for line in read(document).lines() {
            assert!(!line.contains("](../..") && !line.contains("](/"), "{document}: {line}");
            for target in line.split("](").skip(1).filter_map(|rest| rest.split(')').next()) {
                if !target.starts_with('#') {
                    let beside =
                        root().join(document).parent().unwrap_or(Path::new(".")).join(target);
                    assert!(beside.exists(), "{document} links to {target}");
                }
            }
        }
    }
}

/// The file that `new` writes is valid, and so is every commented sample in it once used.
#[test]
fn the_starter_is_valid_with_and_without_its_samples() {
    let starter = read("src/cli/starter.sides");
    // A prose comment has one space after its `#`; a sample has none, or two and more.
    let in_use = |line: &str| {
        let sample = line.strip_prefix('#').filter(|rest| {
            let is_prose = rest.starts_with(' ') && !rest.starts_with("  ") || rest.is_empty();
            let is_list = rest.trim_start().starts_with(|c: char| c.is_ascii_digit())
                || rest.starts_with("      ");
            !is_prose && !is_list
        });
        sample.unwrap_or(line).to_owned()
    };
    let all: Vec<String> = starter.lines().map(in_use).collect();
    for text in [starter.clone(), all.join("\n")] {
        let house =
            fairfoot::read("starter.sides", text).unwrap_or_else(|reported| panic!("{reported}"));
        let warnings = fairfoot::diagnostic::draw(house.source(), house.warnings(), false);
        assert!(house.warnings().is_empty(), "{warnings}");
    }
    for word in ["\nfront ", "\ntax year ", " within ", " estimated", "\nlisting "] {
        assert!(all.join("\n").contains(word), "{word}");
    }
}
