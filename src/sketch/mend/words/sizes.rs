//! Changes to sizes such as `20 x 24`, and to the thickness of walls.

use super::super::change::Edit;
use super::super::pieces::{Piece, Sort, cut, join, replaced};
use super::DIRECTIONS;
use super::comments::POSITIONS;

/// `garage "Garage" 20 x 24`: replaces a size with sides.
pub(super) fn sizes(pieces: &[Piece]) -> Vec<Edit> {
    let is_by = |piece: &Piece| piece.is_word(&["x", "by"]) || piece.is_mark("×*");
    let Some(by) = pieces.iter().position(is_by).filter(|by| *by >= 2) else { return Vec::new() };
    let part = |piece: &Piece| {
        piece.is_number()
            || piece.is_mark("'’′\"”″/½¼¾")
            || piece.is_word(&["ft", "feet", "foot", "in", "m"])
    };
    let before = pieces[..by].iter().rev().take_while(|piece| part(piece)).count();
    // `10 x 7 in front hall`: `in` is not a unit if a word follows it.
    let is_place = |at: usize| {
        pieces[at].is_word(&["in"])
            && pieces.get(at + 1).is_some_and(|next| next.sort == Sort::Word)
    };
    let after = (by + 1..pieces.len()).take_while(|&at| part(&pieces[at]) && !is_place(at)).count();
    let first = by - before;
    if before == 0 || after == 0 || first == 0 {
        return Vec::new();
    }
    let (one, two) = (join(&pieces[first..by]), join(&pieces[by + 1..by + 1 + after]));
    if pieces[0].is_word(&DIRECTIONS) {
        return sides_of(pieces, first, (&one, &two)).into_iter().collect();
    }
    let mut head = pieces[..first].to_vec();
    head.extend_from_slice(&pieces[by + 1 + after..]);
    let head = join(&head);
    // `inside the house` or `at the corner` would be lost in a name.
    if !head.contains('"') && pieces[1..first].iter().any(|piece| piece.is_word(&POSITIONS)) {
        return Vec::new();
    }
    let (one, two) = in_one_unit(&one, &two);
    let named = if head.contains('"') {
        head
    } else {
        let (kind, rest) = head.split_once(' ').unwrap_or((&head, ""));
        let name = if rest.is_empty() { kind } else { rest };
        format!("{kind} \"{name}\"")
    };
    let sides =
        |one: &str, two: &str| format!("{named}\nnorth {one}\neast {two}\nsouth {one}\nwest {two}");
    let cause = "a size is typed as its sides, one on each line";
    let edit =
        |line: String, cause: &str| Edit { converts: true, ..Edit::line(line, cause.to_owned()) };
    // Nothing says which way it lies.
    if one != two {
        let cause = format!("{cause}: which of the two lengths runs north and south?");
        return vec![edit(sides(&one, &two), &cause), edit(sides(&two, &one), &cause)];
    }
    vec![edit(sides(&one, &two), cause)]
}

/// Both lengths of a size; if only one has a unit, the other gets it too. If neither has one, they stay bare: the
/// file says their unit.
fn in_one_unit(one: &str, two: &str) -> (String, String) {
    let (one, two) = (one.trim(), two.trim());
    let unit = |length: &str| {
        length.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.').to_owned()
    };
    let with = |length: &str, other: &str| match (unit(length), unit(other)) {
        (own, _) if !own.is_empty() => length.to_owned(),
        // Feet and inches.
        (_, other) if other.contains(|c: char| c.is_ascii_digit()) => format!("{length}'"),
        (_, other) => format!("{length}{other}"),
    };
    (with(one, two), with(two, one))
}

/// `north 8' x 6'`: replaces a size after a direction, which gives both lengths of a rectangle at once.
fn sides_of(pieces: &[Piece], first: usize, (one, two): (&str, &str)) -> Option<Edit> {
    let way = pieces[0].text.to_lowercase();
    let turned = match way.as_str() {
        "north" | "n" => ["north", "east", "south", "west"],
        "east" | "e" => ["east", "south", "west", "north"],
        "south" | "s" => ["south", "west", "north", "east"],
        "west" | "w" => ["west", "north", "east", "south"],
        _ => return None,
    };
    if first != 1 {
        return None;
    }
    let (one, two) = in_one_unit(one, two);
    let lines: Vec<String> = turned
        .iter()
        .zip([&one, &two, &one, &two])
        .map(|(way, length)| format!("{way} {length}"))
        .collect();
    let cause = "a size is typed as its sides, one on each line";
    Some(Edit { converts: true, ..Edit::line(lines.join("\n"), cause) })
}

/// `veneer brick`, `wall 2x6`: replaces a kind of wall with its thickness.
pub(super) fn walls(pieces: &[Piece]) -> Vec<Edit> {
    let Some(at) = pieces.iter().position(|piece| piece.is_word(&["veneer", "wall"])) else {
        return Vec::new();
    };
    let mut edits = Vec::new();
    let mut offer = |taken: usize, thickness: &str, cause: &str| {
        let by = cut(thickness);
        let mut by = by;
        by.iter_mut().take(1).for_each(|piece| piece.touches = false);
        edits.push(Edit::conversion(replaced(pieces, at + 1, at + 1 + taken, &by), cause));
    };
    let Some(next) = pieces.get(at + 1) else {
        return edits;
    };
    if next.is_number()
        && pieces.get(at + 2).is_none_or(|after| after.sort == Sort::Word && !after.is_word(&["x"]))
    {
        let inches = format!("{}\"", next.text);
        offer(1, &inches, "a wall is not that thick: is the inch mark missing?");
        if ["1", "2", "3"].contains(&next.text.as_str()) {
            let feet = format!("{}'", next.text);
            offer(1, &feet, "a wall is hardly that thick: is the inch mark missing?");
        }
    }
    if next.is_word(&["yes"]) {
        let marks = pieces[at + 2..].iter().take_while(|piece| piece.is_mark(",:;.-–")).count();
        if pieces.len() > at + 2 + marks {
            offer(1 + marks, "", "a veneer is given by its thickness alone");
        }
    } else if pieces[at].is_word(&["veneer"]) {
        let is_masonry = next.is_word(&["brick", "stone", "masonry", "block"]);
        if is_masonry && pieces.get(at + 2).is_some_and(Piece::is_number) {
            offer(1, "", "a veneer is given by its thickness alone");
        } else if is_masonry {
            offer(1, "4 5/8\"", super::super::BRICK_IS);
        } else if next.is_word(&[
            "siding",
            "vinyl",
            "wood",
            "stucco",
            "frame",
            "clapboard",
            "no",
            "without",
        ]) || next.text == "0"
        {
            offer(
                1,
                "none",
                "a veneer is given by its thickness, or as `none` where there is no brick or stone",
            );
        } else if next.is_word(&["half"]) {
            offer(1, "1/2\"", "a thickness is a length with its unit");
        }
    } else if next.text == "2"
        && pieces.get(at + 2).is_some_and(|piece| piece.is_word(&["x"]) || piece.is_mark("×"))
    {
        match pieces.get(at + 3).map(|piece| piece.text.as_str()) {
            Some("4") => offer(
                3,
                "4 7/16\"",
                "a wall is given by its thickness from the inside to the frame: 1/2\" board, 3 1/2\" stud, 7/16\" sheathing",
            ),
            Some("6") => offer(
                3,
                "6 7/16\"",
                "a wall is given by its thickness from the inside to the frame: 1/2\" board, 5 1/2\" stud, 7/16\" sheathing",
            ),
            _ => {}
        }
    }
    edits
}
