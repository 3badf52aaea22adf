//! Numbers of a typed line that no suggested line has: the message names them.

use super::Mend;
use super::pieces::{Piece, Sort, cut};

/// The answer with the numbers named that its suggestion leaves out, unless it turns them into others.
pub(super) fn named(line: &str, mut mend: Mend) -> Mend {
    let [offered] = &mend.lines[..] else { return mend };
    // What is added up or said twice is in the line in another form.
    if line.contains(['=', '+']) || mend.cause.contains("twice") {
        return mend;
    }
    let number = |piece: &Piece| {
        let digits = piece.text.replace(',', "");
        digits.parse::<rust_decimal::Decimal>().ok().map(|value| value.normalize())
    };
    let typed = cut(line);
    // A suggestion's texts and comment count too.
    let spread = offered.replace(['"', '#', '\n'], " ");
    let kept: Vec<_> =
        cut(&spread).iter().filter(|piece| piece.is_number()).filter_map(number).collect();
    let spoken = line.replace(['"', '#'], " ");
    let said: Vec<_> =
        cut(&spoken).iter().filter(|piece| piece.is_number()).filter_map(number).collect();
    if kept.iter().any(|value| !said.contains(value)) {
        return mend;
    }
    let is_lost = |at: usize| {
        let piece = &typed[at];
        let joined = |piece: &Piece| piece.is_mark("/=#°") || piece.sort == Sort::Word;
        let before = at.checked_sub(1).and_then(|before| typed.get(before));
        let in_size =
            typed.get(at + 1).is_some_and(|by| by.is_word(&["x", "by"]) || by.is_mark("×*"));
        piece.is_number()
            && !in_size
            && at > 1
            && piece.text.len() > 1
            && !(piece.touches && before.is_some_and(joined))
            && number(piece).is_some_and(|value| !kept.contains(&value))
            && !mend.cause.contains(&piece.text)
    };
    let lost: Vec<String> = (0..typed.len())
        .filter(|&at| is_lost(at))
        .map(|at| format!("`{}`", typed[at].text))
        .collect();
    if !lost.is_empty() && lost.len() < 4 && !mend.cause.contains("left out") {
        let verb = if lost.len() == 1 { "is" } else { "are" };
        mend.cause = format!("{}; {} {verb} left out", mend.cause, lost.join(", "));
    }
    mend
}
