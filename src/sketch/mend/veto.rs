//! Lines that read and yet must not be suggested, since they would take what was typed for something else.

use super::comment_of;
use super::pieces::{Piece, Sort, cut};

/// Words that no name of a space or a level has in it: they say where it is, or who said something of it.
const NO_NAME: [&str; 27] = [
    "to",
    "start",
    "detached",
    "freistehend",
    "freestanding",
    "separate",
    "torn",
    "called",
    "named",
    "starts",
    "starting",
    "begins",
    "corner",
    "inside",
    "measured",
    "recorded",
    "county",
    "cnty",
    "assessor",
    "same",
    "says",
    "of",
    "taped",
    "where",
    "n",
    "e",
    "w",
];
/// Words that must stay outside the comment of a space.
const NO_COMMENT: [&str; 12] = [
    "count", "counts", "counted", "dont", "include", "included", "exclude", "excluded", "start",
    "starts", "starting", "where",
];

/// Whether a suggested line takes a size, a length, a place or a remark of the typed line for a name, or leaves out of
/// the line what counts.
pub(super) fn is_doubtful(typed: &str, offered: &str) -> bool {
    offered.lines().filter(|line| !line.starts_with('#')).any(|line| {
        let (said, comment) = comment_of(line);
        let pieces = cut(said);
        // A remark that was typed in parentheses was meant as one.
        let new = comment.filter(|comment| {
            !typed.contains('#') && !typed.contains(&format!("({}", comment.trim()))
        });
        text_is_doubtful(typed, &pieces)
            || new.is_some_and(|comment| comment_is_doubtful(comment, &pieces))
            || counts_by_mistake(typed, &pieces)
    })
}

/// Whether the suggestion makes a comment of a line that opens a space or a level, or says what the walls are.
pub(super) fn hides(typed: &str, offered: &str) -> bool {
    let pieces = cut(typed);
    let word = |at: usize| pieces.get(at).map_or(String::new(), |piece| piece.text.to_lowercase());
    let says_much = ["no", "all", "alles", "todo", "tout", "everything"];
    let counts_rooms = pieces.iter().any(Piece::is_number) && word(0).ends_with('s');
    let opens = crate::sketch::phrases::opens_space(&word(0), &word(1)) && !counts_rooms
        || super::kinds::kind_word(&word(0)).is_some()
        || says_much.contains(&word(0).as_str());
    offered.starts_with("# ") && opens
}

fn is_named(pieces: &[Piece]) -> bool {
    pieces.first().is_some_and(|first| {
        let word = first.text.to_lowercase();
        super::kinds::kind_word(&word).is_some()
            || matches!(word.as_str(), "level" | "lot" | "corner")
    })
}

fn plain(text: &str) -> &str {
    text.trim_matches(['"', '“', '”'])
}

fn text_is_doubtful(typed: &str, pieces: &[Piece]) -> bool {
    let is_new = |piece: &&Piece| {
        piece.sort == Sort::Text && !typed.contains(&format!(" \"{}", plain(&piece.text)))
    };
    let texts = pieces.iter().enumerate().filter(|(_, piece)| is_new(piece));
    let mut texts = texts.map(|(at, piece)| (at, plain(&piece.text)));
    texts.any(|(at, text)| {
        let is_name = at == 1 && is_named(pieces);
        let is_note = at > 0 && pieces[at - 1].is_word(&["note"]);
        let letters = text.chars().filter(|c| c.is_alphabetic()).count();
        let roughly = ["approx", "ca", "about", "circa", "says", "around", "approximately"];
        let stands_at = ["at", "near", "behind", "on", "by", "off", "beside"];
        let is_place = stands_at.iter().any(|word| typed.contains(&format!(" {word} {text}")));
        !text.contains(char::is_alphanumeric)
            || cut(text).iter().all(|piece| piece.is_word(&roughly) || piece.sort == Sort::Mark)
            || is_name && is_place
            || text.starts_with("of ")
            || is_name && typed.contains(&format!("({text}"))
            || is_note && letters < 2
            || is_name && text != "to below" && is_no_name(text)
            || (is_name || is_note && !typed.contains("note")) && takes_a_mark(typed, text)
    })
}

/// `24x22`, `called`, `0.35`: no name.
fn is_no_name(text: &str) -> bool {
    let pieces = cut(text);
    let is_number = |at: usize| pieces.get(at).is_some_and(Piece::is_number);
    let is_size = (1..pieces.len()).any(|at| {
        is_number(at - 1)
            && is_number(at + 1)
            && (pieces[at].is_word(&["x", "by"]) || pieces[at].is_mark("×*"))
    });
    let is_decimal = pieces.len() == 1 && is_number(0) && text.contains(['.', ',']);
    let is_figure =
        pieces.iter().any(|piece| piece.is_number() && piece.text.contains(',') && text.len() > 4);
    is_size || is_decimal || is_figure || pieces.iter().any(|piece| piece.is_word(&NO_NAME))
}

/// Whether a number of the text has the mark of feet or inches in the typed line.
fn takes_a_mark(typed: &str, text: &str) -> bool {
    cut(text).iter().filter(|piece| piece.is_number()).any(|number| {
        typed.match_indices(number.text.as_str()).any(|(at, found)| {
            let after = typed[at + found.len()..].chars().next();
            let before = typed[..at].chars().next_back();
            !before.is_some_and(|c| c.is_ascii_digit() || c == '.')
                && after.is_some_and(|c| "'\"’”′″".contains(c))
        })
    })
}

fn comment_is_doubtful(comment: &str, pieces: &[Piece]) -> bool {
    let is_empty = !comment.contains(char::is_alphanumeric);
    // Where it stands, of a space that has no place.
    let places = ["start", "from", "within", "detached"];
    let stands = [
        "ne",
        "nw",
        "se",
        "sw",
        "north",
        "south",
        "east",
        "west",
        "behind",
        "beside",
        "next",
        "shares",
        "corner",
        "adjoining",
    ];
    let is_placed = pieces.iter().any(|piece| piece.is_word(&places));
    let is_space = is_named(pieces) && !pieces[0].is_word(&["level", "lot", "corner"]);
    let loses_place =
        is_space && !is_placed && cut(comment).iter().any(|piece| piece.is_word(&stands));
    is_empty
        || loses_place
        || is_named(pieces)
            && !pieces[0].is_word(&["corner"])
            && cut(comment).iter().any(|piece| piece.is_word(&NO_COMMENT))
}

/// `counted` made of `county` or of nothing.
fn counts_by_mistake(typed: &str, pieces: &[Piece]) -> bool {
    let says = ["count", "counts", "counted", "counting", "include", "included", "includes"];
    let out = ["excluded", "exclude", "excluding", "uncounted", "incl", "included", "not", "no"];
    is_named(pieces)
        && pieces.iter().any(|piece| piece.is_word(&["counted"]))
        && !pieces.iter().any(|piece| piece.is_word(&["not"]))
        && !cut(typed).iter().any(|piece| piece.is_word(&says) || piece.is_word(&out))
}
