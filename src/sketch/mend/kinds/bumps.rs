//! What stands out of a wall on the line of that wall, and what stands out of a roof.

use super::measure::{length_at, lengths, written};
use super::{Answer, Rule, Typed, first_of, quoted};
use crate::units::length::Length;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[wall_with_a_bump, dormer, chimney];
    first_of(rules, typed)
}

/// `east 50' with 6' x 2' box bay`, `west 45' 3" incl 8' bay 2' deep`: what stands out of a wall divides it.
fn wall_with_a_bump(typed: &Typed<'_>) -> Option<Answer> {
    const BUMPS: [&str; 9] =
        ["bay", "bump", "bumpout", "bump-out", "popout", "pop-out", "jog", "box", "chimney"];
    let way = typed.says(0, &["north", "east", "south", "west"]).then(|| typed.lower(0))?;
    let wall = length_at(&typed.pieces, 1)?;
    let with = typed.says(wall.end, &["with", "w", "incl", "including", "has"]);
    let end = wall.end
        + 1
        + usize::from(typed.piece(wall.end + 1).is_some_and(|mark| mark.is_mark("/")))
        + usize::from(typed.says(wall.end + 1, &["a"]));
    let last = typed.find(end, &BUMPS)?;
    let sizes = lengths(&typed.pieces, end);
    let [(_, one), (_, two), ..] = &sizes[..] else { return None };
    // What stands out of a wall is wider than deep, unless the words say so.
    let is_deep = |end: usize| typed.says(end, &["deep", "out", "d"]);
    let (wide, out) = match (is_deep(one.end), is_deep(two.end)) {
        (true, false) => (two, one),
        (false, true) => (one, two),
        _ if one.length < two.length => (two, one),
        _ => (one, two),
    };
    let rest = wall.length - wide.length;
    let fits = with
        && last >= end
        && rest > Length::ZERO
        && (sizes.len() == 2 || typed.says(last, &["bay"]));
    if !fits {
        return None;
    }
    let out_ways = if matches!(way.as_str(), "north" | "south") {
        "`east` or `west`"
    } else {
        "`north` or `south`"
    };
    let is_centered =
        typed.find(end, &["middle", "center", "centre", "centered", "centred"]).is_some();
    let half = written(Length::from_nm(rest.nm().div_euclid(2)), &wall);
    let parts = match is_centered {
        true => format!("each of the two is {half}"),
        false => format!("the first and the last together are {}", written(rest, &wall)),
    };
    let square = format!(
        "`{way}` and the length up to it; {out_ways}, the way out, `{0}`; `{way} {1}`; the other way back in, `{0}`; and `{way}` and the rest",
        out.text, wide.text
    );
    let cause = "what stands out of a wall is part of the walk, and divides the wall";
    // The sides of a bay are mostly slanted; a box has square corners.
    let is_bay =
        typed.says(last, &["bay"]) && typed.find(end, &["box", "square", "boxed"]).is_none();
    Some(match is_bay {
        true => Answer::say(
            cause,
            format!(
                "write three lines instead of this one: `{way}` and the length up to it; `bay {way} {} out {} flat` and the width of its flat front, or `round` instead; and `{way}` and the rest: {parts}; if its corners are square, it is five: {square}",
                wide.text, out.text
            ),
        ),
        false => {
            Answer::say(cause, format!("write five lines instead of this one: {square}: {parts}"))
        }
    })
}

/// `dormer 6' x 8' on front`, `shed dormer 12' x 6' rear`: a dormer stands in the roof, over the floor below.
fn dormer(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(0, &["dormer", "dormers"]).filter(|at| *at <= 2)?;
    let named = typed.attempt.house.clone().filter(|_| !typed.line.contains('"'))?;
    let is_kind = super::kind_word(&typed.lower(0)).is_some();
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    let size = super::size_in(typed.line)?;
    if is_kind || follows || typed.find(0, &["ceiling", "knee"]).is_some() {
        return None;
    }
    let name = quoted(&super::levels::capitalized(&typed.text(0, at + 1).to_lowercase()));
    let size = size.trim_end_matches([',', ' ']);
    Some(Answer::say(
        "a dormer stands in the roof, over the floor below, and no farther out than the walls of that floor",
        format!(
            "if the walls of `{named}` were taped to the outer walls, its floor is in them: put this line after a `#`; if they were taped to knee walls behind which the dormer reaches, write `living {name}`, then where it starts, `from \"{named}\" corner` and a number or `start` and how far east and north of where the house's first walk begins, and on the lines below it its four sides, two of {}",
            size.replacen(" x ", " and two of ", 1)
        ),
    ))
}

/// `fireplace bump 2' x 6' east wall`, `chimney chase 5 x 2`: a chimney has no floor.
fn chimney(typed: &Typed<'_>) -> Option<Answer> {
    let first = usize::from(typed.says(0, &["gas", "direct-vent", "prefab", "brick", "stone"]));
    let begins = typed.says(first, &["fireplace", "firebox", "hearth", "chimney"])
        && typed.says(
            first + 1,
            &[
                "bump",
                "bumpout",
                "bump-out",
                "chase",
                "projection",
                "box",
                "sticks",
                "popout",
                "pop-out",
            ],
        );
    let size = super::size_in(typed.line);
    // `chimney 8' x 2'`
    let alone = typed.says(first, &["fireplace", "chimney"])
        && size.is_some_and(|size| {
            typed.text(0, first + 1).len() + size.len() + 1 == typed.line.len()
        });
    let is_sized = size.is_some();
    ((begins || alone) && is_sized).then(|| {
        Answer::line(
            format!("# {}", super::plainly(typed.line)),
            "a chimney that stands out from a wall has no floor and is not counted: it needs no line, or a comment, and the wall goes on behind it",
        )
    })
}
