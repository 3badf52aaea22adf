//! Changes that turn the rest of a line into a note, a title or a comment.

use super::super::change::{Attempt, Edit};
use super::super::pieces::{Piece, Sort, join};
use super::names::names_of_any_length;
use crate::diagnostic::Word;

/// Changes that turn what was typed into a note or comment, where nothing else can be read.
pub(in crate::sketch::mend) fn last_resorts(
    line: &str,
    pieces: &[Piece],
    attempt: &Attempt,
) -> Vec<Edit> {
    const COMMENT: &str = "a comment begins with `#`";
    let mut edits = Vec::new();
    if !matches!(attempt.word, Some(Word::Unexpected | Word::StrayCharacter | Word::UnknownWord)) {
        return edits;
    }
    let sentence = || line.trim_start_matches(is_comment_mark).trim_start();
    let words = pieces.iter().filter(|piece| piece.sort == Sort::Word).count();
    let starts_apart = line.starts_with(is_comment_mark);
    let counts = |piece: &Piece| piece.is_number() || piece.sort == Sort::Text;
    let says_nothing = |pieces: &[Piece]| !pieces.iter().any(counts);
    if (!attempt.knows_first && words >= 3 || starts_apart && words >= 1) && says_nothing(pieces) {
        edits.push(Edit::line(
            format!("# {}", sentence()),
            "this line says nothing about the house; a comment begins with `#`",
        ));
    }
    edits.extend(names_of_any_length(line, pieces, attempt));
    let here = pieces.iter().position(|piece| piece.at >= attempt.at.start);
    let Some(here) = here.filter(|here| *here > 0) else {
        edits.extend(junk_before(line, pieces));
        return edits;
    };
    let (kept, rest) = (join(&pieces[..here]), line[pieces[here].at..].trim());
    let may_go = says_nothing(&pieces[here..])
        && !pieces[here..].iter().any(|piece| piece.is_word(&POSITIONS));
    let is_comment = ["//", ";", "--", "/*", "%", "*"].iter().any(|mark| rest.starts_with(mark));
    let comment = format!("{kept}  # {}", rest.trim_start_matches(is_comment_mark).trim_start());
    if is_comment {
        edits.push(Edit::line(comment.clone(), COMMENT));
    }
    let plain = super::super::kinds::plainly(rest);
    let plain = plain.trim_matches(|c: char| !c.is_alphanumeric());
    // `north 28' 4" < paced, fence in way`
    let rough =
        ["paced", "guess", "guessed", "estimate", "estimated", "approx", "eyeballed", "stepped"];
    let unreached = [
        "could not reach",
        "couldn't reach",
        "can't reach",
        "cannot reach",
        "no access",
        "not accessible",
        "inaccessible",
        "couldn't get to",
    ];
    let lower = plain.to_lowercase();
    if attempt.is_side
        && unreached.iter().any(|words| lower.starts_with(words))
        && !plain.contains('"')
    {
        edits.push(Edit::line(
            format!("{kept} estimated note \"{plain}\""),
            "a wall that could not be reached is `estimated`; if its length follows from the other walls, write `by closing` instead",
        ));
        return edits;
    }
    // `north 12 ? bush`: the length is in doubt, and why.
    let is_doubted = rest.trim_start_matches(['(', ' ', '-', '–', ',']).starts_with('?');
    if attempt.is_side && is_doubted && !plain.is_empty() && !plain.contains(['"', '?']) {
        edits.push(Edit::line(
            format!("{kept} estimated note \"{plain}\""),
            "a length that was not measured exactly is `estimated`; if it follows from the other walls, write `by closing` instead of it",
        ));
        return edits;
    }
    let mut said = plain.splitn(2, |c: char| !c.is_alphanumeric());
    let first = said.next().unwrap_or_default().to_lowercase();
    let is_arrow = rest.starts_with(['<', '>', '=', '*', '~', '←', '→', '-']);
    if attempt.is_side && is_arrow && rough.contains(&first.as_str()) {
        let more = said.next().unwrap_or_default().trim_matches(|c: char| !c.is_alphanumeric());
        let note = if more.is_empty() || more.contains('"') {
            String::new()
        } else {
            format!(" note \"{more}\"")
        };
        edits.push(Edit::line(
            format!("{kept} estimated{note}"),
            "a length that was not measured exactly is `estimated`",
        ));
        return edits;
    }
    // `north 10 paces`: the word is the unit of a number without one.
    if attempt.is_side && pieces[here - 1].is_number() && pieces[here].sort == Sort::Word {
        return edits;
    }
    // `two and a half inches` is a length too.
    let units = ["inch", "inches", "feet", "foot", "ft", "yards"];
    if attempt.is_side && pieces[here..].iter().any(|piece| piece.is_word(&units)) {
        return edits;
    }
    let has_text = pieces[here..].iter().any(|piece| piece.sort == Sort::Text);
    if !plain.is_empty() && !has_text && !plain.contains(['"', '“', '”']) {
        if attempt.is_side {
            edits.push(Edit::line(
                format!("{kept} note \"{plain}\""),
                "anything else about a wall goes in a note",
            ));
        }
        edits.push(Edit::line(format!("{kept} \"{plain}\""), "a title needs a `\"` on each side"));
    }
    if may_go && (pieces[here].sort == Sort::Word || pieces[here].is_mark("([")) {
        edits.push(Edit::line(comment, COMMENT));
    }
    edits
}

/// Words that say where something is or whether it counts, which must never end up in a comment or a name.
pub(super) const POSITIONS: [&str; 18] = [
    "inside", "outside", "frame", "within", "in", "at", "by", "next", "beside", "behind", "corner",
    "recorded", "measured", "detached", "below", "grade", "closing", "heated",
];

fn is_comment_mark(c: char) -> bool {
    matches!(c, '/' | ';' | '*' | '%' | '\'' | '-' | '!' | '<' | '=' | '>' | '\\' | ' ' | '~' | '(')
}

/// `2-car garage "Garage"`: removes words before the first word of the format.
fn junk_before(line: &str, pieces: &[Piece]) -> Option<Edit> {
    let begins = [
        "level",
        "living",
        "garage",
        "carport",
        "porch",
        "patio",
        "deck",
        "balcony",
        "storage",
        "outbuilding",
        "unfinished",
    ];
    let first =
        pieces.iter().position(|piece| piece.is_word(&begins)).filter(|first| *first > 0)?;
    let (junk, rest) = line.split_at(pieces[first].at);
    Some(Edit::line(
        format!("{rest}  # {}", junk.trim()),
        "a line begins with its word; anything else goes into a comment",
    ))
}
