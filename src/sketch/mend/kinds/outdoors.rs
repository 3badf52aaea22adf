//! What is outside a house and has no line, and lines across it.

use super::measure::{area_from, length_at, lengths};
use super::{Answer, Rule, Typed, first_of, is_text, quoted, two_sizes, whereabouts};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[steps, across, upstairs, in_tiers];
    first_of(rules, typed)
}

/// `front steps 4 x 5`, `steps 4 x 6 on the front`: steps outside a house have no line.
fn steps(typed: &Typed<'_>) -> Option<Answer> {
    let outside = [
        "front", "rear", "back", "side", "entry", "outside", "exterior", "outdoor", "concrete",
        "porch", "deck",
    ];
    let says = typed.says(0, &outside) && typed.says(1, &["steps", "stairs", "stair", "staircase"]);
    let stand = typed.says(0, &["steps", "step"])
        && typed.find(1, &outside).is_some()
        && typed.find(1, &["inside", "hall", "up", "basement"]).is_none()
        && super::size_in(typed.line).is_some();
    // `wheelchair ramp 4x20 front`
    let ramp =
        typed.find(0, &["ramp", "walkway", "sidewalk", "stepping"]).is_some_and(|at| at <= 1)
            && !crate::sketch::nouns::is_known(&typed.lower(0))
            && !super::super::begins_as_side(&typed.attempt.beside.after)
            && super::size_in(typed.line).is_some();
    let is_named = typed.pieces.iter().any(|piece| is_text(Some(piece)));
    ((says || stand || ramp) && !is_named && area_from(&typed.pieces, 0).is_none()).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            match ramp {
                true => "a ramp or a walk outside a house is no part of its area, and has no line; a comment begins with `#`",
                false => "steps outside a house are no part of its area, and have no line; a comment begins with `#`",
            },
        )
    })
}

/// `diagonal from SW corner to NE corner 54' 3"`: a line measured across the house checks the walk.
fn across(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["diagonal", "diag", "diagonals", "tie", "cross", "check"]);
    let corners = (1..typed.pieces.len())
        .filter(|&at| whereabouts::compass_corner(typed, at).is_some())
        .count();
    let joined = typed.find(1, &["to"]).is_some();
    let found = lengths(&typed.pieces, 1);
    let [(_, one)] = &found[..] else { return None };
    let numbered =
        typed.find(1, &["corner"]).is_some_and(|at| length_at(&typed.pieces, at + 1).is_some());
    (begins && corners >= 2 && joined && one.has_unit && !numbered).then(|| {
        Answer::say(
            "a line measured from corner to corner is a `tie`, and corners have numbers",
            format!(
                "write `tie corner 1 to corner 3 {}` with the numbers of its two corners: where wall 1 begins is corner 1, where wall 2 begins corner 2",
                one.text
            ),
        )
    })
}

/// `balcony upstairs front`, `deck upper off master`: what stands on the level above.
fn upstairs(typed: &Typed<'_>) -> Option<Answer> {
    const UP: [&str; 3] = ["upstairs", "upper", "second"];
    const FLOOR: [&str; 4] = ["floor", "level", "story", "storey"];
    let kind = typed.find(0, &["balcony", "deck", "porch"]).filter(|at| *at <= 2);
    let beside = &typed.attempt.beside;
    let kind = kind?;
    if beside.has_level_above || typed.attempt.house.is_none() {
        return None;
    }
    let up = typed.find(kind + 1, &UP)?;
    // `under the upper deck`, `below the second floor`: on this one.
    let is_under = typed.find(1, &["under", "below", "beneath", "from", "to"]).is_some();
    let mut first = up;
    while first > 1 && typed.says(first - 1, &["on", "the", "at", "of"]) {
        first -= 1;
    }
    let is_named = typed.says(up + 1, &FLOOR);
    if is_under || typed.says(up, &["second"]) && !is_named || typed.line.contains('#') {
        return None;
    }
    let plain = typed.without(first, up + 1 + usize::from(is_named));
    let plain = plain.trim_end_matches([',', ' ']);
    let with_walls = match super::super::begins_as_side(&beside.after) {
        true => " and its walls",
        false => "",
    };
    let is_upper = |name: &str| {
        let words = ["upper", "second", "2nd", "upstairs", "top"];
        name.split(' ').any(|word| words.iter().any(|one| word.eq_ignore_ascii_case(one)))
    };
    let level = beside.spaces.iter().find(|name| is_upper(name));
    Some(Answer::say(
        "what stands upstairs belongs to the level that is above this one, and its place is counted from the walls there",
        match level {
            Some(level) => format!(
                "put `{plain}`{with_walls} below the last walls of {} and take this line out",
                quoted(level)
            ),
            None => format!(
                "type that level after all that stands on this one, as `level \"Upper floor\"` with its rooms, as `living \"Rooms\"`, and their walls; put `{plain}`{with_walls} below those, and take this line out"
            ),
        },
    ))
}

/// `deck 2 levels, 12x12 and 8x10`: each is a space of its own.
fn in_tiers(typed: &Typed<'_>) -> Option<Answer> {
    let tiers = ["levels", "level", "tiers", "tier", "tiered", "parts", "sections", "pieces"];
    let kind = super::kind_word(&typed.lower(0))
        .filter(|kind| matches!(*kind, "deck" | "patio" | "porch"))?;
    let sizes = two_sizes::sizes(typed);
    let [(first, end), (second, last)] = sizes[..] else { return None };
    let is_told = typed.find(1, &tiers).is_some_and(|at| !(first..end).contains(&at));
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    let is_named = is_text(typed.piece(1));
    if !is_told || follows || typed.line.contains('#') {
        return None;
    }
    let name = match is_named {
        true => typed.text(1, 2).trim_matches('"').to_owned(),
        false => super::levels::capitalized(kind),
    };
    let [one, two] = [(first, end), (second, last)]
        .map(|(from, to)| typed.text(from, to).trim_matches([',', ' ']).to_owned());
    let place = match typed.attempt.is_metric {
        true => "on the south side, 2 m from the west end",
        false => "on the south side, 6' from the west end",
    };
    Some(Answer::say(
        format!("a line has one size, and each part of a {kind} is a space of its own"),
        format!(
            "write `{kind} \"{name} 1\" {one}` on this line and `{kind} \"{name} 2\" {two}` on the next one, and after each where it stands, as `{place}`"
        ),
    ))
}
