//! What an answer would say a second time, or below the first level, is told together with the answer.

use super::typing::errors;

const WALLS: &str = "living \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";

/// The helps of the only error of a file with these lines above its walls, and how many changes it offers.
fn helps(head: &str) -> (Vec<String>, usize) {
    let list = errors(&format!("{head}{WALLS}"));
    let [error] = &list[..] else { panic!("{list:?}") };
    (error.helps().to_vec(), error.fixes().len())
}

const LEVEL: &str = "level \"Ground floor\"\n";

#[test]
fn what_another_line_says_in_the_same_words_can_only_be_a_remark() {
    for head in ["veneer none\nno veneer\n", "no veneer\nveneer none\n"] {
        let (helps, fixes) = helps(&format!("{head}{LEVEL}"));
        assert_eq!(helps, ["did you mean `# no veneer`?"]);
        assert_eq!(fixes, 1);
    }
}

#[test]
fn what_another_line_says_otherwise_is_asked_about() {
    let (helps, fixes) = helps(&format!("veneer none\nfront south\nall brick\n{LEVEL}"));
    assert_eq!(
        helps,
        [
            "did you mean `veneer 4 5/8\"`?",
            "line 1 says `veneer none`: if that is right, put a `#` before this line; if this one is right, take line 1 out",
        ]
    );
    assert_eq!(fixes, 1);
}

#[test]
fn what_belongs_to_the_top_of_the_file_is_sent_there() {
    let (helps, fixes) = helps(&format!("veneer none\n{LEVEL}all brick\n"));
    assert_eq!(
        helps[0],
        "if it holds for the whole file, write `veneer 4 5/8\"` on line 1 in place of `veneer none`, and take this line out"
    );
    assert_eq!(fixes, 0);
}

#[test]
fn one_misspelled_word_keeps_its_correction() {
    let text = format!("measurd 2026-05-16\nmeasured 2026-05-16\n{LEVEL}{WALLS}");
    let list = errors(&text);
    assert_eq!(list[0].fixes()[0].text, "measured");
    assert!(list[0].helps().iter().all(|help| !help.contains('#')), "{list:?}");
}
