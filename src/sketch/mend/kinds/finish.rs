//! Rooms that are said not to be finished or heated at the end of their line.

use super::super::pieces::Sort;
use super::{Answer, Typed, is_text};
use crate::sketch::nouns;

/// `living "Sunroom" start north 28' 4" unfinished`, `sunroom "Sunroom" start north 28' 4" not heated`: as a comment
/// alone it would count.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    if let Some(answer) = not_counted(typed) {
        return Some(answer);
    }
    let is_room = typed.says(0, &["living"]) || nouns::kinds(&typed.lower(0)) == ["living"];
    if !is_room || !is_text(typed.piece(1)) {
        return None;
    }
    const FINISH: [&str; 3] = ["finished", "heated", "conditioned"];
    let said = (2..typed.pieces.len()).find_map(|at| {
        let one = typed.says(at, &["unfinished", "unheated", "unconditioned"]);
        let two = typed.says(at, &["not", "no"])
            && (typed.says(at + 1, &FINISH) || typed.says(at + 1, &["heat", "finish"]));
        (one || two).then_some((at, at + 1 + usize::from(two)))
    });
    let (at, end) = said?;
    let before = typed.text(1, at).trim_end_matches([',', ';', '-', '(', ' ']);
    let after = typed.rest(end).trim_start_matches([',', ';', ')', ' ']);
    let is_heat = !typed.text(at, end).to_lowercase().contains("finish");
    // What else is said there may say that it is counted.
    let says_more = typed.pieces[end..]
        .iter()
        .any(|piece| piece.sort == Sort::Word && !piece.is_word(&["recorded", "under", "veneer"]));
    if says_more && !typed.says(end, &["recorded"]) {
        return None;
    }
    let line = format!("{before} {after}");
    if typed.says(0, &["sunroom"]) {
        return Some(Answer::line(
            format!("porch {}", line.trim_end()),
            "a heated sunroom is `living`; one that is not is a `porch`",
        ));
    }
    let unfinished = format!("unfinished {}", line.trim_end());
    // A finished room without heat is not living area under the usual rules, and only the writer knows.
    if is_heat {
        let finished = format!("living {} not counted", line.trim_end());
        return Some(Answer::Lines(
            vec![unfinished, finished],
            "a room without heat does not count: it is `unfinished`, or `living` and `not counted` if it is finished".to_owned(),
        ));
    }
    Some(Answer::line(unfinished, "a room that is not finished is `unfinished`, and not counted"))
}

/// `living "Sunroom" start north 28' 4" non-counted`: as a comment alone it would count.
fn not_counted(typed: &Typed<'_>) -> Option<Answer> {
    let is_space = super::kind_word(&typed.lower(0)).is_some() && is_text(typed.piece(1));
    const WORDS: [&str; 5] =
        ["non-counted", "un-counted", "noncounted", "not-counted", "unincluded"];
    let at = typed.find(2, &WORDS)?;
    is_space.then(|| {
        let line = format!("{} not counted {}", typed.text(0, at), typed.rest(at + 1));
        Answer::line(line.trim_end(), "what does not count is `not counted`")
    })
}
