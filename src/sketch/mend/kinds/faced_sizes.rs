//! Walls that are thick and have no brick, and a size that was taped inside, on a line of its own.

use super::super::pieces::Piece;
use super::measure::length_at;
use super::{Answer, Rule, Typed, first_of};
use crate::units::length::Length;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[walls_without_brick, size_taped_inside];
    first_of(rules, typed)
}

/// `exterior walls 6 in, no brick`: two statements.
fn walls_without_brick(typed: &Typed<'_>) -> Option<Answer> {
    const LONGEST: Length = Length::from_nm(18 * Length::INCH.nm());
    const BARE: [&str; 6] = ["brick", "stone", "veneer", "masonry", "bricks", "siding"];
    let first = usize::from(typed.says(0, &["exterior", "ext", "outside", "outer", "all"]));
    let at = first + 1 + usize::from(typed.says(first + 1, &["are", "is", "about", "thickness"]));
    let thick = length_at(&typed.pieces, at)
        .filter(|thick| thick.is_inches_alone() && thick.length <= LONGEST)?;
    let none = typed.find(thick.end, &["no", "without"])?;
    let only = (thick.end..typed.pieces.len()).all(|at| {
        at == none
            || typed.says(at, &BARE)
            || typed.says(at, &["thick", "or", "and", "any"])
            || typed.piece(at).is_some_and(|mark| mark.is_mark(",;."))
    });
    let is_bare = typed.says(none + 1, &BARE[..5]);
    (typed.says(first, &["wall", "walls"]) && only && is_bare && typed.attempt.space.is_none()).then(|| {
        Answer::line(
            format!("veneer none\nwall {}", thick.text.trim_end_matches('.')),
            "how thick the walls are is `wall`, and a house without brick or stone has `veneer none`",
        )
    })
}

/// `inside 29-2 by 34-8`, `taped inside, 29' x 34'` below the line of a space.
fn size_taped_inside(typed: &Typed<'_>) -> Option<Answer> {
    let first = usize::from(typed.says(0, &["taped", "measured"]));
    if !typed.says(first, &["inside", "interior"])
        || !super::super::begins_as_named_space(&typed.attempt.beside.before)
    {
        return None;
    }
    let at = first
        + 1
        + typed.pieces.get(first + 1..)?.iter().take_while(|mark| mark.is_mark(",:-–")).count();
    let size = typed.rest(at);
    let is_size = super::size_in(size).is_some_and(|one| one.trim() == size.trim());
    let dashed =
        size.split(" by ").chain(size.split(" x ")).filter(|part| part.contains('-')).count() > 0;
    let only = typed.pieces.get(at..)?.iter().all(|piece: &Piece| {
        piece.is_number() || piece.is_word(&["x", "by", "ft", "in"]) || piece.is_mark("-'\"×’”")
    });
    let begins = typed.piece(at).is_some_and(Piece::is_number);
    let before = typed.attempt.beside.before.split('#').next().unwrap_or_default().trim_end();
    (begins && only && (is_size || dashed)).then(|| {
        Answer::say(
            "the face to which a space was measured stands on its own line, and its size is typed as its four sides",
            format!(
                "write the line above as `{before} measured to inside`, and instead of this line its four sides, one on each line, as `north`, `east`, `south` and `west` with the lengths {size}"
            ),
        )
    })
}
