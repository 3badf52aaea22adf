//! Walls without a length: out of reach, the same as another one, or only a word about them.

use super::super::compass::{along, by_compass, is_upright, slant, way_and_back};
use super::super::pieces::{Piece, Sort};
use super::faces::{STANDS, runs_upright};
use super::walls::{STREET, WAYS, is_way};
use super::{Answer, Typed, quoted, remark};

const NOT_MEASURED: &str =
    "a wall that was not measured has `by closing`: its length follows from the other walls";

/// `west same as north wall`, `S can't reach, hedge`, `west wall not accessible`, `east fence`.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    // `east # fence` has its word in the comment; `back - can't get # holly` has it before.
    let is_said = typed.pieces.iter().any(|piece| piece.is_word(&OUT_OF_REACH));
    let has_comment = typed.attempt.beside.comment.is_some() && !is_said;
    if !is_way(typed, 0) || typed.pieces.len() < 2 || has_comment {
        return None;
    }
    // `front faces south` says where the street is.
    let street = ["street", "door", "road", "faces", "facing", "face", "of", "house", "yard"];
    let speaks_of_it = |piece: &Piece| {
        piece.is_word(&street) || piece.is_word(&WAYS) || slant(&piece.text).is_some()
    };
    if typed.says(0, &["front"]) && typed.pieces[1..].iter().any(speaks_of_it) {
        return None;
    }
    walked(typed).or_else(|| refers(typed)).or_else(|| without_length(typed))
}

/// Whether a way is one as seen from the street.
fn is_no_compass(way: &str) -> bool {
    STREET.contains(&way)
}

/// `down - can't reach, fence`: up and down as on paper, with north at its top.
pub(super) fn on_paper(typed: &Typed<'_>) -> Option<Answer> {
    typed.attempt.space.as_ref()?;
    let way = match typed.lower(0).as_str() {
        "up" => "north",
        "down" => "south",
        _ => return None,
    };
    let is_plain = |piece: &Piece| !piece.is_number() && piece.sort != Sort::Text;
    let says_so = typed.pieces.iter().skip(1).any(|piece| piece.is_word(&OUT_OF_REACH));
    (says_so && typed.pieces.iter().all(is_plain))
        .then(|| super::answer(&format!("{way} {}", typed.rest(1)), typed.attempt))
        .flatten()
}

/// `rear right not reachable (fence)`, `back left corner - no access`: a wall at two sides of the house, which is the one
/// along the side named first.
pub(super) fn part_of_a_wall(typed: &Typed<'_>) -> Option<Answer> {
    let (first, _) = way_and_back(&typed.lower(0))?;
    let (second, _) = way_and_back(&typed.lower(1))?;
    let front = typed.attempt.beside.front;
    let (side, part) = (by_compass(first, front), by_compass(second, front));
    let is_plain = |piece: &Piece| !piece.is_number() && piece.sort != Sort::Text;
    if typed.attempt.space.is_none()
        || is_upright(side) == is_upright(part)
        || !typed.pieces.iter().all(is_plain)
        || !typed.pieces[2..].iter().any(|piece| piece.is_word(&OUT_OF_REACH))
    {
        return None;
    }
    if is_no_compass(side) {
        return Some(Answer::say(
            format!(
                "`{}` says nothing until the file says which way the street is",
                typed.lower(0)
            ),
            "add `front south`, for instance, at the top of the file, before the first `level`",
        ));
    }
    let note = quoted(&remark(typed.line));
    let lines = along(side).map(|way| format!("{way} by closing note {note}"));
    Some(Answer::Lines(lines.to_vec(), NOT_MEASURED.to_owned()))
}

/// `east wall south not measured (fence)`: with the side on which it stands stands the way that was walked.
fn walked(typed: &Typed<'_>) -> Option<Answer> {
    let line = typed.text(0, typed.pieces.len());
    let way = super::super::stands::walked(line)?;
    let says_so = typed.pieces.iter().any(|piece| piece.is_word(&OUT_OF_REACH));
    let is_plain = |piece: &Piece| !piece.is_number() && piece.sort != Sort::Text;
    if !says_so || !typed.pieces.iter().all(is_plain) {
        return None;
    }
    let remark = remark(line).trim_end_matches(['.', ',', ';', ' ']).to_owned();
    Some(Answer::line(format!("{way} by closing note {}", quoted(&remark)), NOT_MEASURED))
}

/// `west same as the two east ones`: a number in words is not taken for a length.
pub(super) fn same_as(typed: &Typed<'_>) -> Option<Answer> {
    let says_so = is_way(typed, 0) && typed.says(1, &["same"]) && typed.says(2, &["as"]);
    refers(typed).filter(|_| says_so)
}

/// `right side ?`, `north wall n/a`: where the wall stands, and no more of it.
pub(super) fn stands_only(typed: &Typed<'_>) -> Option<Answer> {
    let is_mark = |piece: &Piece| piece.is_mark("?:-–=,");
    let is_asked = typed.pieces.iter().skip(2).all(is_mark) && typed.line.contains('?');
    let says_none = typed.pieces.len() == 5
        && typed.says(2, &["n"])
        && typed.pieces[3].is_mark("/")
        && typed.says(4, &["a"]);
    if !is_way(typed, 0) || !typed.says(1, &STANDS) || !(is_asked || says_none) {
        return None;
    }
    let ways = ways(typed, true)?;
    let lines = ways.iter().map(|way| format!("{way} by closing")).collect();
    Some(Answer::Lines(lines, NOT_MEASURED.to_owned()))
}

/// `west same as side 1`, `S ditto`, `west = east`: nothing is copied from another wall.
fn refers(typed: &Typed<'_>) -> Option<Answer> {
    let says = ["same", "ditto", "like", "equal", "equals", "see", "matches", "as", "idem"];
    let mut at = 1;
    while typed.piece(at).is_some_and(|mark| mark.is_mark(":,-–.")) {
        at += 1;
    }
    at += usize::from(typed.says(at, &["is", "wall", "side"]));
    let equals = typed.piece(at).is_some_and(|mark| mark.is_mark("="));
    let other = ["side", "wall", "sides", "row", "line"];
    let to_another = equals && (is_way(typed, at + 1) || typed.says(at + 1, &other));
    let numbers = (at + 1..typed.pieces.len()).filter(|&at| typed.pieces[at].is_number());
    let has_length = numbers.clone().any(|at| {
        let named = typed.says(at - 1, &other) || typed.pieces[at - 1].is_mark("#");
        !named
    });
    if has_length || !(typed.says(at, &says) || to_another) {
        return None;
    }
    let way = typed.lower(0);
    Some(Answer::say(
        "a wall has its own length: nothing is copied from another wall",
        format!(
            "type the length again, right after `{way}`; if this wall was not measured, write `{way} by closing`"
        ),
    ))
}

/// What says that a wall was not measured.
const OUT_OF_REACH: [&str; 31] = [
    "tbd",
    "todo",
    "unk",
    "na",
    "can't",
    "cannot",
    "cant",
    "can",
    "couldn't",
    "couldnt",
    "could",
    "not",
    "no",
    "unreachable",
    "inaccessible",
    "blocked",
    "hidden",
    "unable",
    "impossible",
    "locked",
    "unmeasured",
    "unknown",
    "didn't",
    "didnt",
    "won't",
    "obstructed",
    "inaccesible",
    "never",
    "missing",
    "skipped",
    "forgot",
];
/// Words that say no more than that.
const NO_MORE: [&str; 21] = [
    "yet",
    "measured",
    "measure",
    "reach",
    "reached",
    "reachable",
    "accessible",
    "access",
    "taped",
    "tape",
    "known",
    "length",
    "it",
    "be",
    "was",
    "is",
    "get",
    "to",
    "here",
    "this",
    "wall",
];

fn without_length(typed: &Typed<'_>) -> Option<Answer> {
    let speaks = |piece: &Piece| piece.sort == Sort::Word || piece.is_mark("()[],;:.-–?!'’");
    let kept = [
        "by",
        "closing",
        "close",
        "closes",
        "recorded",
        "note",
        "photo",
        "common",
        "estimated",
        "from",
        "to",
        "back",
        "true",
        "is",
        "start",
        "beginning",
        "veneer",
        "tolerance",
        "then",
        "and",
        "turn",
        "up",
        "half",
    ];
    let rest = &typed.pieces[1..];
    let cannot = rest.iter().any(|piece| piece.is_word(&OUT_OF_REACH[4..15]))
        && !rest.iter().any(|piece| piece.is_word(&kept[..10]));
    let numbers_in_words =
        rest.iter().any(|piece| crate::sketch::mend::lengths::is_spoken_number(&piece.text));
    if !rest.iter().all(speaks)
        || numbers_in_words
        || rest.iter().any(|piece| piece.is_word(&kept)) && !cannot
        || is_way(typed, 1)
        || !rest.iter().any(|piece| piece.sort == Sort::Word)
    {
        return None;
    }
    let stands = usize::from(typed.says(1, &STANDS));
    let reached = rest.iter().any(|piece| piece.is_word(&OUT_OF_REACH) || piece.is_mark("?"));
    let says_more = |piece: &Piece| {
        piece.sort == Sort::Word && !piece.is_word(&OUT_OF_REACH) && !piece.is_word(&NO_MORE)
    };
    let said = typed.rest(1 + stands).trim_start_matches(['?', ',', ';', ':', '-', '–', ' ']);
    let note = if rest.iter().any(says_more) {
        format!(" note {}", quoted(&remark(said)))
    } else {
        String::new()
    };
    let ways = ways(typed, stands == 1)?;
    if reached {
        let lines = ways.iter().map(|way| format!("{way} by closing{note}")).collect();
        return Some(Answer::Lines(lines, NOT_MEASURED.to_owned()));
    }
    let closing: Vec<String> =
        ways.iter().take(2).map(|way| format!("`{way} by closing{note}`")).collect();
    let closing = closing.join(" or ");
    // Of a wall that is called by its side the word may not be the way.
    let after = match &ways[..] {
        [_] => format!("`{}`", typed.text(0, 1)),
        [..] => format!("the way that you walked, {} or {}", ways[0], ways[1]),
    };
    Some(Answer::say(
        "this wall has no length",
        format!("write its length right after {after}; if it was not measured, write {closing}"),
    ))
}

/// `missing right side`, `can't reach the left wall`: the side comes first, and then that it was not measured.
pub(super) fn said_before(typed: &Typed<'_>) -> Option<Answer> {
    const SEEN: [&str; 4] = ["front", "back", "left", "right"];
    let at = (1..typed.pieces.len()).find(|&at| typed.says(at, &SEEN))?;
    let small = |at: usize| {
        typed.says(at, &OUT_OF_REACH)
            || typed.says(at, &NO_MORE)
            || typed.says(at, &["the", "my", "our", "of"])
    };
    let is_missing = (0..at).any(|at| typed.says(at, &OUT_OF_REACH)) && (0..at).all(small);
    let is_side = typed.says(at + 1, &STANDS) && at + 2 == typed.pieces.len();
    let is_begun = super::super::begins_as_wall(&typed.attempt.beside.before);
    if !is_missing || !is_side || !is_begun {
        return None;
    }
    if typed.attempt.beside.front.is_none() {
        return Some(Answer::say(
            format!(
                "`{}` says nothing until the file says which way the street is",
                typed.lower(at)
            ),
            "add `front south`, for instance, at the top of the file, before the first `level`",
        ));
    }
    Some({
        let said = typed.text(0, at);
        let said = [" the", " my", " our", " of the"]
            .iter()
            .find_map(|small| said.strip_suffix(small))
            .unwrap_or(said);
        Answer::line(format!("{} {}", typed.text(at, at + 2), said.to_lowercase()), NOT_MEASURED)
    })
}

/// `couldn't get the north wall`, `hedge, north wall not taped`, `F-G n/a north (hedge)` in a walk: as a comment alone the
/// wall would be missing.
pub(super) fn named_later(typed: &Typed<'_>) -> Option<Answer> {
    const COMPASS: [&str; 4] = ["north", "east", "south", "west"];
    if typed.attempt.space.is_none() || is_way(typed, 0) || typed.attempt.beside.comment.is_some() {
        return None;
    }
    let named = |at: usize| -> Option<&'static str> {
        let (way, _) = way_and_back(&typed.piece(at)?.text)?;
        let is_word = typed.says(at, &COMPASS);
        // `no access W side`
        let is_letter =
            matches!(&*typed.piece(at)?.text, "N" | "E" | "S" | "W") && typed.says(at + 1, &STANDS);
        (is_word || is_letter).then_some(way)
    };
    let mut ways = (0..typed.pieces.len()).filter(|&at| named(at).is_some());
    let at = ways.next().filter(|_| ways.next().is_none())?;
    let says_not = |at: usize| {
        typed.says(at, &OUT_OF_REACH)
            || typed.says(at, &["n"])
                && typed.piece(at + 1).is_some_and(|slash| slash.is_mark("/"))
                && typed.says(at + 2, &["a"])
    };
    let out = (0..typed.pieces.len()).any(says_not);
    let counts = typed
        .pieces
        .iter()
        .any(|piece| piece.is_number() || piece.sort == Sort::Text || piece.is_mark("$%"));
    let others = ["street", "front", "photo", "door", "interior", "inside", "record", "lot"];
    let is_other = typed.pieces.iter().any(|piece| piece.is_word(&others))
        || super::kind_word(&typed.lower(0)).is_some();
    if !out || counts || is_other || typed.pieces.len() > 12 {
        return None;
    }
    let way = named(at)?;
    let lines = match typed.says(at + 1, &STANDS) {
        true => along(way).to_vec(),
        false => vec![way],
    };
    let lines = lines.iter().map(|way| format!("{way} by closing  # {}", typed.line)).collect();
    Some(Answer::Lines(lines, NOT_MEASURED.to_owned()))
}

/// Whether a line begins with a way of the compass.
fn begins_by_compass(line: &str) -> bool {
    let first = line.split_whitespace().next().unwrap_or_default();
    way_and_back(first).is_some_and(|(way, _)| !STREET.contains(&way))
}

/// The ways in which the wall can run: the typed one, or along the side of the house on which it stands.
fn ways(typed: &Typed<'_>, stands: bool) -> Option<Vec<&'static str>> {
    let (way, _) = way_and_back(&typed.lower(0))?;
    // Whether the other walls that are named so are meant as ways is asked when the walk is whole.
    let seen = ["front", "back", "left", "right"].into_iter().find(|word| typed.says(0, &[word]));
    let by_word = seen.filter(|_| !stands && typed.attempt.beside.front.is_some());
    let way = by_compass(way, typed.attempt.beside.front);
    if let Some(word) = by_word {
        // Between `north 28'` and `south 28'` the back is where the wall stands.
        let beside = &typed.attempt.beside;
        let is_between =
            [&beside.before, &beside.after].into_iter().all(|line| begins_by_compass(line));
        let is_across = runs_upright(typed).is_some_and(|upright| upright != is_upright(way));
        return Some(match is_between && is_across {
            true => along(way).to_vec(),
            false => vec![word],
        });
    }
    if !stands {
        return Some(vec![way]);
    }
    // In a walk as seen from the street a compass word would turn this one wall alone.
    let beside = &typed.attempt.beside;
    let by_street = |line: &str| {
        let first = line.split_whitespace().next().unwrap_or_default();
        way_and_back(first).is_some_and(|(way, _)| STREET.contains(&way))
    };
    let seen = seen.filter(|_| by_street(&beside.before) || by_street(&beside.after));
    let [one, two] = along(way);
    Some(match runs_upright(typed) {
        Some(upright) if upright == is_upright(way) => vec![seen.unwrap_or(way)],
        Some(_) => vec![one, two],
        None => vec![one, two, way],
    })
}
