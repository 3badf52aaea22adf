//! The side of the house that faces the street.

use super::super::compass::slant;
use super::super::pieces::{Piece, Sort};
use super::measure::length_at;
use super::{Answer, SMALL, Typed};

const WAYS: [&str; 4] = ["north", "east", "south", "west"];

/// `front SSW`: the nearest of the four directions.
pub(super) fn between_two(typed: &Typed<'_>) -> Option<Answer> {
    let word = typed.lower(1);
    let letters = word.as_bytes();
    let [first, second, third] = letters else { return None };
    let fits = typed.says(0, &["front"])
        && typed.pieces.len() == 2
        && word.get(1..).and_then(slant).is_some();
    let near = WAYS.iter().find(|way| way.as_bytes().first() == Some(first))?;
    (fits && (first == second || first == third)).then(|| {
        Answer::line(
            format!("front {near}  # {}", typed.text(1, 2)),
            format!("the street side is one of the four directions, and the nearest is {near}"),
        )
    })
}

/// `front Alder Lane`, `front on Alder Lane`, `front door on Alder Ln` at the top of the file: a street and no wall.
pub(super) fn by_name(typed: &Typed<'_>) -> Option<Answer> {
    let last = typed.pieces.len().checked_sub(1)?;
    let kind = last.checked_sub(usize::from(typed.pieces[last].is_mark(".")))?;
    let words = typed.pieces.iter().all(|piece| piece.sort == Sort::Word || piece.is_mark("."));
    let begins = typed.says(0, &["front", "facing", "fronts", "faces"]);
    let is_above = typed.attempt.space.is_none();
    // `front facing street`, `front to the south street`: no name.
    const NONE: [&str; 14] = [
        "facing", "faces", "the", "to", "toward", "towards", "on", "is", "side", "main", "n", "s",
        "e", "w",
    ];
    let has_way = (1..typed.pieces.len()).any(|at| WAYS.iter().any(|way| typed.says(at, &[way])));
    let named = kind >= 2 && !typed.says(kind - 1, &NONE) && !has_way;
    (begins && is_above && words && named && typed.says(kind, &super::topics::STREETS)).then(|| {
        Answer::say(
            "`front` says on which side of the plan the street is",
            format!(
                "write `front` and `north`, `east`, `south` or `west`, as the street lies from the house; the name of the street can follow, as `# {}`",
                typed.rest(1)
            ),
        )
    })
}

/// `north is the back`, `south is the street`, `the back is north`, `north = back of house`: on which side of the house
/// the street is follows from each.
pub(super) fn by_a_side(typed: &Typed<'_>) -> Option<Answer> {
    const SMALL: [&str; 16] = [
        "is", "the", "of", "house", "home", "side", "our", "my", "at", "to", "on", "faces", "are",
        "points", "facing", "looks",
    ];
    const SIDES: [(&str, usize); 9] = [
        ("street", 0),
        ("road", 0),
        ("front", 0),
        ("back", 2),
        ("rear", 2),
        ("backyard", 2),
        ("behind", 2),
        ("left", 1),
        ("right", 3),
    ];
    let (mut way, mut turn) = (None, None);
    let mut joins = false;
    for (at, piece) in typed.pieces.iter().enumerate() {
        let named = WAYS.iter().position(|word| piece.is_word(&[word]));
        let side = SIDES.iter().find(|(word, _)| piece.is_word(&[word]));
        match (named, side) {
            (Some(named), _) if way.is_none() => way = Some(named),
            (_, Some((_, by))) if turn.is_none() => turn = Some(*by),
            (None, None) if piece.is_word(&SMALL) || piece.is_mark("=:-–.") => {}
            _ => return None,
        }
        joins |= at > 0
            && (piece.is_word(&["is", "faces", "are", "points", "facing", "looks"])
                || piece.is_mark("=:"));
    }
    // `front` and the street in other words are known to another rule; `north side` is no more than a wall.
    let (way, turn) = way.zip(turn)?;
    let is_known =
        turn == 0 && !typed.says(0, &WAYS) && typed.find(0, &["front", "street"]).is_some();
    if !joins || is_known || typed.attempt.beside.comment.is_some() {
        return None;
    }
    // As seen from the street, the left side lies a quarter turn to the right of the street side.
    let front = WAYS.get((way + 4 - turn) % 4)?;
    let cause = "the street side is `front` and one word of the compass";
    let cause = match turn {
        0 => cause.to_owned(),
        _ => format!(
            "{cause}; the others follow from it: {} is on the {} as seen from the street",
            WAYS[way],
            ["front", "left", "back", "right"][turn]
        ),
    };
    Some(Answer::line(format!("front {front}"), cause))
}

/// `front: faces south`, `facing Elm Street (south)`, `street is on the west`: one word of the compass.
pub(super) fn front(typed: &Typed<'_>) -> Option<Answer> {
    let begins = ["front", "fronts", "facing", "faces", "street", "house", "home", "the"];
    let speaks = (0..typed.pieces.len().min(5))
        .any(|at| typed.says(at, &["front", "facing", "faces", "face", "fronts", "street"]));
    let knows = ["porch", "door", "entry", "yard", "deck", "by", "wall", "wing"];
    if !typed.says(0, &begins)
        || !speaks
        || typed.pieces.len() < 2
        || typed.find(1, &knows).is_some()
    {
        return None;
    }
    let plain = |piece: &Piece| piece.sort == Sort::Word || piece.is_mark(",:;=().-–");
    if length_at(&typed.pieces, 1).is_some() || !typed.pieces.iter().all(plain) {
        return None;
    }
    let is_way = |at: usize| WAYS.iter().any(|way| typed.says(at, &[way, &way[..1]]));
    let is_name = |at: usize| {
        let is_capital = |at: usize| {
            typed.piece(at).is_some_and(|piece| piece.text.starts_with(char::is_uppercase))
        };
        typed.says(
            at + 1,
            &[
                "street", "st", "ave", "avenue", "road", "rd", "drive", "dr", "lane", "ln", "blvd",
                "court", "way",
            ],
        ) && is_capital(at)
            && is_capital(at + 1)
    };
    let ways: Vec<usize> =
        (1..typed.pieces.len()).filter(|&at| is_way(at) && !is_name(at)).collect();
    if typed.says(0, &["faces", "face"])
        && ways.is_empty()
        && typed.find(1, &["street", "road"]).is_none()
        && !typed.pieces.iter().any(|piece| slant(&piece.text).is_some())
    {
        return None;
    }
    let between = typed.pieces.iter().any(|piece| slant(&piece.text).is_some());
    match ways[..] {
        [way] if typed.pieces.len() > 2 || !typed.says(0, &["front"]) => {
            let way_word = WAYS.iter().find(|word| typed.says(way, &[word, &word[..1]]))?;
            let filler = |piece: &Piece| {
                piece.sort != Sort::Word
                    || piece.is_word(&SMALL)
                    || piece.is_word(&[
                        "front",
                        "facing",
                        "faces",
                        "face",
                        "fronts",
                        "street",
                        "side",
                        "house",
                        "home",
                        "toward",
                        "towards",
                        "looks",
                        "due",
                        "way",
                        "direction",
                        "lies",
                        "runs",
                    ])
            };
            // `Elm Street`: what is left is the street's name, or a remark.
            let left = typed
                .pieces
                .iter()
                .enumerate()
                .filter(|(at, piece)| *at != way && piece.sort == Sort::Word);
            let mut said: Vec<&str> = Vec::new();
            for (_, piece) in left {
                if !filler(piece) || !said.is_empty() && piece.is_word(&["street"]) {
                    said.push(&piece.text);
                }
            }
            let comment =
                if said.is_empty() { String::new() } else { format!("  # {}", said.join(" ")) };
            Some(Answer::line(
                format!("front {way_word}{comment}"),
                "the street side is `front` and one word of the compass",
            ))
        }
        [] if between && !typed.says(0, &["front"]) => {
            let (one, two) = typed.pieces.iter().find_map(|piece| slant(&piece.text))?;
            Some(Answer::Lines(
                [one, two].map(|way| format!("front {way}")).into(),
                "the plan has four sides: the one nearer to the street".to_owned(),
            ))
        }
        [] if !between || typed.says(0, &["house", "home", "the"]) => Some(Answer::say(
            "`front` says on which side of the plan the street is",
            "write `front` and `north`, `east`, `south` or `west`, as the street lies from the house; the name of the street can follow after a `#`",
        )),
        _ => None,
    }
}
