//! A basement of which a part is finished.

use super::levels::capitalized;
use super::{Answer, Typed, is_text, plainly, quoted, remark};

/// What the depth of a level is.
const WHOLE: &str =
    "a level is `below grade` as a whole, even where only part of it lies below grade";

/// What is finished of a space without finish.
pub(super) fn a_part(name: &str) -> String {
    format!(
        "what is finished of it is a space of its own with its own sides, `living \"Finished\" within \"{name}\"`, below those of the whole, `unfinished \"{name}\"`"
    )
}

/// Whether the line says that a part of something is finished: `half finished`, `1/2 fin`.
pub(super) fn is_said(typed: &Typed<'_>) -> bool {
    const PART: [&str; 16] = [
        "half",
        "partly",
        "partially",
        "part",
        "mostly",
        "some",
        "third",
        "thirds",
        "quarter",
        "halfway",
        "semi",
        "partial",
        "portion",
        "front",
        "back",
        "side",
    ];
    let finished = typed.find(0, &["finished", "fin", "finish"]);
    finished.is_some_and(|finished| {
        (0..finished).any(|at| {
            typed.says(at, &PART)
                || typed.pieces[at].is_mark("½⅓⅔¼¾%")
                || typed.pieces[at].is_mark("/") && at > 0 && typed.pieces[at - 1].is_number()
        })
    })
}

/// `basement walkout, half finished`, `partly finished basement`, `bsmt 1/2 finished, 1/2 storage`: the level, and that
/// its finished part is a space of its own.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    const BASEMENTS: [&str; 5] = ["basement", "bsmt", "bsmnt", "cellar", "basment"];
    let at = typed.find(0, &BASEMENTS).filter(|at| *at <= 4)?;
    let is_plain = !typed.pieces.iter().any(|piece| is_text(Some(piece)) || piece.is_mark("$"));
    let has_size = super::size_in(typed.line).is_some()
        || super::measure::area_from(&typed.pieces, 0).is_some();
    // What stands before is its remark too: `half finished basement`.
    let lead = ["level", "the", "full"];
    let first = (0..at).find(|&at| !typed.says(at, &lead)).unwrap_or(at);
    if !is_said(typed) || !is_plain || has_size || typed.says(0, &["living", "unfinished"]) {
        return None;
    }
    let end = at + 1 + usize::from(typed.says(at + 1, &["level", "floor"]));
    let before = typed.text(first, at);
    let after = remark(typed.rest(end));
    let said: Vec<&str> =
        [before, after.as_str()].into_iter().filter(|said| !said.is_empty()).collect();
    let name = match typed.lower(at).as_str() {
        "cellar" => capitalized(&typed.text(at, end).to_lowercase()),
        _ => "Basement".to_owned(),
    };
    Some(Answer::line(
        format!("level {} below grade  # {}", quoted(&name), plainly(&said.join(", "))),
        format!("{WHOLE}; {}", a_part(&name)),
    ))
}
