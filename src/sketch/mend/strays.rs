//! A line that reads without some plain words in the middle of it, and the last answer to one that reads only up to a point.

use super::pieces::{Piece, Sort, cut, join};
use super::remarked::{SAYS, plain_remark};
use super::{Attempt, Mend, comment_of, compass, keeps, kinds, lengths, negation};
use crate::diagnostic::Word;
use crate::sketch::parser::{FIRST_WORDS, SIDE_WORDS};

/// The most words that are set aside.
const MOST: usize = 4;

/// Words that belong to a number or a place, so that a line without them says something else.
const BOUND: [&str; 40] = [
    "feet", "foot", "ft", "inches", "inch", "in", "m", "meters", "metres", "meter", "metre", "mm",
    "cm", "yards", "yard", "yd", "paces", "steps", "rods", "chains", "sq", "square", "sf", "sqft",
    "sqm", "acres", "acre", "ac", "ha", "half", "quarter", "third", "each", "both", "same", "all",
    "percent", "degrees", "above", "than",
];

/// Whether a word can become a remark without changing what the rest of the line says.
fn is_plain(piece: &Piece) -> bool {
    let word = piece.text.to_lowercase();
    let is_way = compass::way_and_back(&word).is_some();
    piece.sort == Sort::Word
        && !piece.touches
        && word.chars().count() > 1
        && !is_way
        && !piece.is_word(&SAYS)
        && !piece.is_word(&SIDE_WORDS)
        && !piece.is_word(&BOUND)
        && !piece.is_word(&negation::NO)
        && !FIRST_WORDS.contains(&word.as_str())
        && !lengths::is_spoken_number(&word)
}

/// Nouns that say no more than the kind of a space before them.
const NOUNS: [&str; 9] =
    ["room", "bay", "area", "space", "section", "part", "portion", "building", "structure"];

/// `storage room "Cellar" unheated`: the line without a noun that repeats what the kind says.
pub(super) fn between_kind_and_name(
    line: &str,
    attempt: &mut dyn FnMut(&str) -> Attempt,
) -> Option<Mend> {
    let mut pieces = cut(line);
    kinds::kind_word(&pieces.first()?.text.to_lowercase())?;
    let is_named = pieces.get(2)?.sort == Sort::Text && pieces[1].is_word(&NOUNS);
    // `living room "Den" 14 x 16` is a room inside the walls, if its walls do not follow.
    let is_room = pieces[0].is_word(&["living"]) && pieces[1].is_word(&["room"]);
    let mut is_sized_here =
        || kinds::size_in(line).is_some() && !super::begins_as_side(&attempt(line).beside.after);
    if is_named && is_room && is_sized_here() {
        return None;
    }
    let noun = is_named.then(|| pieces.remove(1))?;
    let rest = join(&pieces);
    let cause = format!("the name comes right after the kind: `{}` says nothing more", noun.text);
    if let Some(reads) = attempt(&rest).reads {
        return Some(Mend { lines: vec![reads], cause, ..Mend::default() });
    }
    let mend = super::known(&rest, attempt, 2).or_else(|| super::search(&rest, attempt))?;
    Some(Mend { cause: if mend.lines.is_empty() { mend.cause } else { cause }, ..mend })
}

/// `record 1,640 sq ft heated "County record"`: the line without the words at which reading stops, which become its
/// comment.
pub(super) fn set_aside(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let mut left = cut(line);
    let mut aside: Vec<String> = Vec::new();
    let is_head =
        left.first().is_some_and(|first| FIRST_WORDS.contains(&first.text.to_lowercase().as_str()));
    if !is_head {
        return None;
    }
    let said = loop {
        let text = join(&left);
        let tried = attempt(&text);
        if let Some(reads) = tried.reads {
            break reads;
        }
        let pieces = cut(&text);
        let at = pieces.iter().position(|piece| piece.at >= tried.at.start).filter(|at| *at > 0)?;
        let stray = pieces.get(at).filter(|piece| is_plain(piece) && aside.len() < MOST)?;
        aside.push(stray.text.clone());
        left = pieces;
        left.remove(at);
    };
    if aside.is_empty() || said.contains('\n') {
        return None;
    }
    let (own, comment) = comment_of(&said);
    let remark = aside.join(" ");
    let remark = comment.map_or_else(|| remark.clone(), |own| format!("{remark}, {}", own.trim()));
    let offered = format!("{}  # {remark}", own.trim_end());
    keeps(line, &offered, false).then(|| Mend {
        lines: vec![offered],
        cause: super::remarked::CAUSE.to_owned(),
        ..Mend::default()
    })
}

/// `west 40' recorded 39 or 40'`: the line with what stands before an `or`, and with what stands after it.
pub(super) fn one_of_two(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let pieces = cut(line);
    let or = pieces.iter().position(|piece| piece.is_word(&["or"])).filter(|or| *or > 1)?;
    let mut without = |first: usize, end: usize| {
        let left = [&pieces[..first], &pieces[end..]].concat();
        attempt(&join(&left)).reads
    };
    let before = (or + 2..=pieces.len()).find_map(|end| without(or, end))?;
    let after = (1..or).rev().find_map(|first| without(first, or + 1))?;
    let is_choice = before != after && kinds::measures(&before) && kinds::measures(&after);
    is_choice.then(|| Mend {
        lines: vec![before, after],
        cause: "a line says one of the two: write the one that you trust".to_owned(),
        ..Mend::default()
    })
}

/// The last answer: how far a line reads, and what is asked about the rest, which may say something that counts.
pub(super) fn stopped(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let pieces = cut(line);
    let (end, said) = (2..pieces.len()).rev().find_map(|end| {
        let said = line.get(..pieces[end].at)?.trim_end();
        attempt(said).reads.map(|_| (end, said))
    })?;
    let rest = line.get(pieces[end].at..)?.trim();
    // Any other error says more of the line than that it stops.
    let tried = attempt(line);
    if tried.word != Some(Word::Unexpected) {
        return None;
    }
    let begins = cut(said);
    let is_side = begins.first().is_some_and(|way| compass::way_and_back(&way.text).is_some());
    let counts = pieces[end..].iter().any(|piece| {
        piece.is_number()
            || piece.sort == Sort::Text
            || lengths::is_spoken_number(&piece.text.to_lowercase())
    });
    if !counts {
        return None;
    }
    let remark = plain_remark(rest);
    let ask = if is_side {
        format!(
            "if `{remark}` belongs to the length, write the whole length in figures, as `28' 4\"`; if it is the record's length of this wall, write it after the word `recorded`"
        )
    } else if kinds::kind_word(&begins.first()?.text.to_lowercase()).is_some() {
        format!(
            "if `{remark}` says where it starts, write `start` and how far east and north of corner 1, or `from corner` and the corner's name; if it is its area on the record, write `recorded` and the area"
        )
    } else {
        let words: Vec<String> =
            tried.wanted.words.iter().take(6).map(|word| format!("`{word}`")).collect();
        let ticked: Vec<&str> = words.iter().map(String::as_str).collect();
        match &ticked[..] {
            [] => format!("if `{remark}` counts, it goes on a line of its own"),
            list => format!(
                "if `{remark}` counts, it goes on a line of its own, or after {}",
                crate::diagnostic::words::one_of(list)
            ),
        }
    };
    Some(Mend {
        cause: format!("`{said}` can be read, and what follows it cannot"),
        help: Some(format!(
            "{ask}; if it is only a remark, put it at the end of the line, after a `#`"
        )),
        ..Mend::default()
    })
}
