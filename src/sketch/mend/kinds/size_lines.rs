//! The size of a space on lines of their own below it: `21' 4" wide`, and on the next line `22' 8" deep`.

use super::measure::length_at;
use super::{Answer, Typed, cut, kind_word, levels};

const LABELS: [&str; 7] = ["wide", "deep", "long", "w", "d", "width", "depth"];

/// Whether a line is one length and the word for which one of a size it is, and the length with that word.
fn one_of_a_size(line: &str) -> Option<(String, String)> {
    let pieces = cut(line);
    let is_label = |at: usize| pieces.get(at).is_some_and(|label| label.is_word(&LABELS));
    // `width 21' 4"`
    let first = usize::from(is_label(0));
    let first =
        first + usize::from(first > 0 && pieces.get(1).is_some_and(|mark| mark.is_mark(":=")));
    let one = length_at(&pieces, first)?;
    let label = if first > 0 { 0 } else { one.end };
    let end = if first > 0 { one.end } else { one.end + 1 };
    let word = match pieces.get(label)?.text.to_lowercase().as_str() {
        "w" | "wide" | "width" => "wide",
        "long" => "long",
        _ => "deep",
    };
    (is_label(label) && end == pieces.len()).then(|| (one.text, word.to_owned()))
}

/// The size that the two lines below the line of a space give: `21' 4" wide x 22' 8" deep`.
pub(super) fn below(typed: &Typed<'_>) -> Option<String> {
    let [one, two, ..] = &typed.attempt.beside.following[..] else { return None };
    let ((one, which), (two, other)) = (one_of_a_size(one)?, one_of_a_size(two)?);
    (which != other).then(|| format!("{one} {which} x {two} {other}"))
}

/// One of these lines: its length belongs to the line of the space.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let own = one_of_a_size(typed.line)?;
    let beside = &typed.attempt.beside;
    let is_space = |line: &str| {
        let first = line.split([' ', ':']).next().unwrap_or_default().to_lowercase();
        kind_word(&first).is_some() && !super::super::begins_as_side(line)
    };
    let (one, two) = match (one_of_a_size(&beside.before), one_of_a_size(&beside.after)) {
        (Some(before), _) => (before, own),
        (None, Some(after)) if is_space(&beside.before) => (own, after),
        _ => return None,
    };
    let space = typed.attempt.space.as_deref().filter(|_| one.1 != two.1)?;
    Some(Answer::say(
        "a size stands on the line of its space, or is typed as its four sides",
        format!(
            "take this line out; if the answer to the line of `{}` has no walls for it, write `{} {} x {} {}` at the end of that line",
            levels::capitalized(space),
            one.0,
            one.1,
            two.0,
            two.1
        ),
    ))
}
