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
        [] if !between || typed.says(0, &["house", "home", "the"]) => Some(Answer::say(
            "`front` says on which side of the plan the street is",
            "write `front` and `north`, `east`, `south` or `west`, as the street lies from the house; the name of the street can follow after a `#`",
        )),
        _ => None,
    }
}
