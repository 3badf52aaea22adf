//! Walls whose way or form is said in words around them: `went west 40'`, `jog west 3' then north 2'`, `west 8' north 3'
//! diagonal`.

use super::super::begins_as_side;
use super::measure::{length_at, lengths};
use super::walls::{STREET, WAYS};
use super::{Answer, Rule, Typed, first_of, quoted};
use crate::geometry::compass::Axis;
use crate::units::length::Length;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    if let Some(answer) = party_walls(typed) {
        return Some(answer);
    }
    typed.attempt.space.as_ref()?;
    let rules: &[Rule] = &[
        wide_and_deep,
        went,
        several_of_a_jog,
        super::jogs::in_a_wall,
        then_a_jog,
        toward_the_street,
        slanted_last,
        curve_after_its_way,
        thick_common,
        shared_with,
        in_parentheses,
        thick,
        without_brick,
        marks_of_a_fraction,
        named_by_its_side,
    ];
    first_of(rules, typed)
}

/// `party walls east and west 8"`, `wall common 8"`, `party wall north 33'`: what is common is said of each side.
fn party_walls(typed: &Typed<'_>) -> Option<Answer> {
    let party = ["party", "common", "shared"];
    let walls = ["wall", "walls"];
    let begins = typed.says(0, &party) && typed.says(1, &walls);
    let is_turned = typed.says(0, &walls) && typed.says(1, &party);
    // `left wall party 12", right wall party 12"`: thicknesses of walls that are named by their sides.
    let all = lengths(&typed.pieces, 0);
    let names_walls = typed.find(0, &party).is_some()
        && typed.find(0, &walls).is_some()
        && typed
            .find(0, &["left", "right", "side", "both", "east", "west", "north", "south"])
            .is_some_and(|at| at <= 1)
        && !all.is_empty()
        && all.iter().all(|(_, one)| {
            one.is_inches_alone() && one.length < Length::from_nm(2 * Length::FOOT.nm())
        });
    if !begins && !is_turned && !names_walls {
        return None;
    }
    if begins && all.is_empty() && is_own_garage(typed, 2) {
        return Some(Answer::line(format!("# {}", typed.line.trim()), OWN_GARAGE));
    }
    // `party wall north 33' 4"`
    let side = length_at(&typed.pieces, 3).filter(|_| begins && typed.says(2, &WAYS));
    if let Some(side) = side.filter(|side| side.end == typed.pieces.len()) {
        return Some(Answer::line(
            format!("{} {} common", typed.lower(2), side.text),
            "a wall shared with another dwelling has `common` at the end",
        ));
    }
    let thick = all.into_iter().map(|(_, one)| one).find(|one| one.has_unit);
    let after = thick.map_or(String::new(), |one| {
        format!(", and how thick it is after that: `north 33' common wall {}`", one.text)
    });
    Some(Answer::say(
        "a wall shared with another dwelling is said to be so on the line of that wall",
        format!(
            "leave this line out, and put `common` at the end of each side that is shared{after}; a width that was taped clear between them counts to their middle only if its space is `measured to inside`, or if half of each is added to it; where the walls were taped outside, from the middle of one shared wall to that of the other, its thickness changes nothing"
        ),
    ))
}

/// `north 33' party wall 8"`, `north 33' common 8"`, `south 30' party wall 8" CMU`: how thick a common wall is, and what
/// it is of.
fn thick_common(typed: &Typed<'_>) -> Option<Answer> {
    let length = length_at(&typed.pieces, 1).filter(|_| typed.says(0, &WAYS))?;
    let at =
        length.end + usize::from(typed.piece(length.end).is_some_and(|mark| mark.is_mark(",")));
    if !typed.says(at, &["common", "party", "shared"]) {
        return None;
    }
    let at = at + 1 + usize::from(typed.says(at + 1, &["wall"]));
    let thick = length_at(&typed.pieces, at).filter(|one| one.has_unit)?;
    let of =
        ["cmu", "block", "brick", "concrete", "masonry", "stud", "framed", "double", "firewall"];
    let end = thick.end + usize::from(typed.says(thick.end, &["thick"]));
    (end..typed.pieces.len()).all(|at| typed.says(at, &of)).then(|| {
        let said = typed.rest(end);
        let comment = if said.is_empty() { String::new() } else { format!("  # {said}") };
        Answer::line(
            format!("{} common wall {}{comment}", typed.text(0, length.end), thick.text),
            "how thick a common wall is goes after `common wall`",
        )
    })
}

/// `34' wide`, `34' wide x 28' 6" deep` in a walk: lengths that do not say which way their walls run.
fn wide_and_deep(typed: &Typed<'_>) -> Option<Answer> {
    const WIDE: [&str; 4] = ["wide", "width", "w", "across"];
    const DEEP: [&str; 3] = ["deep", "depth", "d"];
    let one = length_at(&typed.pieces, 0).filter(|one| one.has_unit)?;
    let is_said =
        |at: usize| typed.says(at, &WIDE) || typed.says(at, &DEEP) || typed.says(at, &["long"]);
    let alone = one.end + 1 == typed.pieces.len();
    let begins_walk = !begins_as_side(&typed.attempt.beside.before);
    if !is_said(one.end) || !alone && !begins_walk {
        return None;
    }
    // `40' W` is a wall that runs west.
    if alone && (typed.says(one.end, &["across"]) || typed.text(one.end, one.end + 1) == "W") {
        return None;
    }
    if alone {
        return Some(Answer::say(
            "a length alone does not say which way its wall runs",
            format!(
                "type all four walls of a rectangle, one on each line, as they are walked: `north`, `east`, `south`, `west`, each with its length; two of them are `{}`",
                one.text
            ),
        ));
    }
    let marks = typed.piece(one.end + 1).is_some_and(|mark| mark.is_mark(",×*/"));
    let second = one.end + 1 + usize::from(marks || typed.says(one.end + 1, &["x", "by", "and"]));
    let two = length_at(&typed.pieces, second).filter(|two| two.has_unit && is_said(two.end))?;
    let first_is_wide = match (typed.says(one.end, &WIDE), typed.says(two.end, &WIDE)) {
        (true, false) => true,
        (false, true) => false,
        _ => typed.says(two.end, &DEEP),
    };
    let (wide, deep) = if first_is_wide { (&one.text, &two.text) } else { (&two.text, &one.text) };
    let along_east = typed.attempt.beside.front.is_none_or(|front| front.axis() == Axis::North);
    let (north, east) = if along_east { (deep, wide) } else { (wide, deep) };
    let cause = match typed.attempt.beside.front {
        Some(_) => "a size is typed as its sides, one on each line: wide is along the street",
        None => {
            "a size is typed as its sides, one on each line: wide is east and west, unless the street is to the east or west"
        }
    };
    (two.end + 1 == typed.pieces.len()).then(|| {
        Answer::line(format!("north {north}\neast {east}\nsouth {north}\nwest {east}"), cause)
    })
}

/// Words before a way that only say that somebody walks.
const WALKING: [&str; 17] = [
    "went", "go", "goes", "going", "walk", "walked", "head", "headed", "heading", "run", "runs",
    "ran", "then", "next", "continue", "proceed", "came",
];

/// `went west 40' 7" to the corner`, `then left 40 ft`: a wall after a word for walking.
fn went(typed: &Typed<'_>) -> Option<Answer> {
    let at = (0..3).take_while(|&at| typed.says(at, &WALKING)).count();
    let at = at + usize::from(at > 0 && typed.says(at, &["due", "straight", "to"]));
    let knows_street = typed.attempt.beside.front.is_some();
    let is_street = typed.says(at, &["left", "right"]) || knows_street && typed.says(at, &STREET);
    let is_way = typed.says(at, &WAYS) || is_street;
    let wall = length_at(&typed.pieces, at + 1).filter(|wall| at > 0 && is_way && wall.has_unit)?;
    let is_only = lengths(&typed.pieces, wall.end).is_empty();
    let cause = match is_street {
        true => {
            "a side begins with the way that it runs: `back`, `right`, `front` or `left`, as seen from the street"
        }
        false => "a side begins with the way that it runs",
    };
    is_only.then(|| Answer::line(typed.rest(at), cause))
}

/// `jog west 3' then north 2'`: two walls or more after a word for what they are together.
fn several_of_a_jog(typed: &Typed<'_>) -> Option<Answer> {
    let words =
        ["jog", "jogs", "step", "steps", "bump", "bumps", "jut", "notch", "offset", "return"];
    let at = 1 + usize::from(typed.says(1, &["out", "in", "back"]));
    let ways = (at..typed.pieces.len())
        .filter(|&at| typed.says(at, &WAYS) && length_at(&typed.pieces, at + 1).is_some())
        .count();
    let begins = typed.says(0, &words) && typed.says(at, &WAYS);
    (begins && ways >= 2).then(|| {
        Answer::line(typed.rest(at), "each wall of a jog is a side: its direction, then its length")
    })
}

/// `jog 6' 2" toward the street`: the street says which way.
fn toward_the_street(typed: &Typed<'_>) -> Option<Answer> {
    let front = typed.attempt.beside.front?;
    let words = ["jog", "jogs", "step", "steps", "go", "goes", "bump", "jut", "juts"];
    let at = usize::from(typed.says(0, &words));
    let at = at + usize::from(at > 0 && typed.says(at, &["out", "in", "back"]));
    let length = length_at(&typed.pieces, at).filter(|one| at > 0 && one.has_unit)?;
    let goes = typed.says(length.end, &["toward", "towards", "to", "away"]);
    let away = typed.says(length.end, &["away"]);
    let end = (length.end..typed.pieces.len())
        .find(|&at| !typed.says(at, &["toward", "towards", "to", "away", "from", "the"]))?;
    let is_street = goes && typed.says(end, &["street", "road"]) && end + 1 == typed.pieces.len();
    let way = if away { front.opposite() } else { front };
    is_street.then(|| {
        Answer::line(
            format!("{} {}", way.word(), length.text),
            "each wall of a jog is a side: its direction, then its length",
        )
    })
}

/// `west 8' north 3' diagonal`: what the wall is comes first.
fn slanted_last(typed: &Typed<'_>) -> Option<Answer> {
    let across = |at: usize| typed.says(at, &["east", "west", "e", "w"]);
    let first = length_at(&typed.pieces, 1).filter(|_| typed.says(0, &WAYS))?;
    let second =
        length_at(&typed.pieces, first.end + 1).filter(|_| typed.says(first.end, &WAYS))?;
    let slanted = ["diagonal", "diagonally", "diag", "slanted", "angled", "slant", "angle"];
    let mut end = second.end;
    end += usize::from(typed.piece(end).is_some_and(|mark| mark.is_mark(",;:-–(")));
    if across(0) == across(first.end) || !typed.says(end, &slanted) {
        return None;
    }
    end += 1 + usize::from(typed.says(end + 1, &["wall", "side"]));
    end += usize::from(typed.piece(end).is_some_and(|mark| mark.is_mark(")")));
    (end == typed.pieces.len()).then(|| {
        Answer::line(
            format!("diagonal {}", typed.text(0, second.end)),
            "a slanted wall begins with `diagonal`, then how far it runs each way",
        )
    })
}

/// `west curved 40' rise 3' outward`: what the wall is comes before its way.
fn curve_after_its_way(typed: &Typed<'_>) -> Option<Answer> {
    let is_curve =
        typed.says(0, &WAYS) && typed.says(1, &["curved", "curve", "arc", "bowed", "curving"]);
    let chord = length_at(&typed.pieces, 2).filter(|_| is_curve)?;
    let says_how = ["rise", "rises", "radius", "bulge", "bulges", "out", "outward", "deep"];
    typed.find(chord.end, &says_how)?;
    Some(Answer::line(
        format!("arc {} {}", typed.text(0, 1), typed.rest(2)),
        "a curved wall begins with `arc`, then the way and the length of its chord",
    ))
}

/// What a wall between a house and its garage is.
const OWN_GARAGE: &str = "a wall between the house and its own garage is typed as any other: `common` is only a wall shared with another dwelling";

/// Whether the words from this piece on say that a wall is shared with the house's own garage, or with the house.
fn is_own_garage(typed: &Typed<'_>, from: usize) -> bool {
    const OWN: [&str; 7] = ["garage", "house", "porch", "carport", "breezeway", "shop", "workshop"];
    const OTHERS: [&str; 9] = [
        "neighbor",
        "neighbors",
        "neighbour",
        "neighbours",
        "neighbor's",
        "unit",
        "next",
        "door",
        "their",
    ];
    typed.find(from, &OWN).is_some() && typed.find(from, &OTHERS).is_none()
}

/// `west 40' party wall with no. 90`, `west 40' (shared wall)`, `west 40' attached to neighbor`: a common wall, and whose
/// the other side is in a note.
fn shared_with(typed: &Typed<'_>) -> Option<Answer> {
    let length = length_at(&typed.pieces, 1).filter(|_| typed.says(0, &WAYS))?;
    let marks = |at: usize| {
        (at..typed.pieces.len()).take_while(|&at| typed.pieces[at].is_mark(",;:-–(")).count()
    };
    let mut at = length.end + marks(length.end);
    let neighbor =
        ["neighbor", "neighbors", "neighbour", "neighbours", "neighbor's", "unit", "next"];
    let says_common = typed.says(at, &["common", "shared", "party"]);
    let is_attached = typed.says(at, &["attached", "joined", "joins", "adjoins", "adjoining"])
        && typed.find(at + 1, &neighbor).is_some_and(|said| said <= at + 3);
    if !says_common && !is_attached {
        return None;
    }
    at += usize::from(says_common);
    at += usize::from(typed.says(at, &["wall"]));
    at += marks(at);
    let rest = typed.rest(at).trim_end_matches([')', '.', ',']);
    let says_more = ["common", "recorded", "veneer", "wall", "tolerance", "note", "photo"];
    let is_note = lengths(&typed.pieces, at).iter().all(|(_, one)| !one.has_unit)
        && typed.find(at, &says_more).is_none()
        && !rest.contains('"');
    let wall = format!("{} common", typed.text(0, length.end));
    if !is_attached && is_note && is_own_garage(typed, at) {
        let said = typed.rest(length.end).trim_matches([',', '(', ')', ' ', '.']);
        return Some(Answer::line(
            format!("{} note {}", typed.text(0, length.end), quoted(said)),
            OWN_GARAGE,
        ));
    }
    match rest.is_empty() {
        _ if !is_note => None,
        true if length.end + 1 == typed.pieces.len() => None,
        true => Some(Answer::line(wall, "a wall shared with another dwelling is `common`")),
        false => Some(Answer::line(
            format!("{wall} note {}", quoted(rest)),
            "a wall shared with another dwelling is `common`; anything else about it goes in a note",
        )),
    }
}

/// `west 40' (from the plat)`, `west 40' (estimate, dog)`: what the words between parentheses say counts.
fn in_parentheses(typed: &Typed<'_>) -> Option<Answer> {
    let length = length_at(&typed.pieces, 1).filter(|_| typed.says(0, &WAYS))?;
    let last = typed.pieces.len().checked_sub(1)?;
    let is_inside = typed.piece(length.end)?.is_mark("(") && typed.piece(last)?.is_mark(")");
    let first = length.end + 1;
    let is_plan = typed.says(first, &["from", "per"])
        && typed
            .find(first, &["plan", "plans", "plat", "survey", "drawing", "blueprint"])
            .is_some();
    let is_rough =
        typed.says(first, &["estimate", "estimated", "est", "guess", "guessed", "roughly"]);
    if !is_inside || typed.text(first, last).contains('(') {
        return None;
    }
    let rest = |at: usize| {
        let rest = typed.text(at, last).trim_matches([',', ' ', ')']);
        if rest.is_empty() { String::new() } else { format!(" note {}", quoted(rest)) }
    };
    let wall = typed.text(0, length.end);
    if is_rough {
        let after = first
            + 1
            + usize::from(typed.piece(first + 1).is_some_and(|mark| mark.is_mark(",;:-–")));
        return Some(Answer::line(
            format!("{wall} estimated{}", rest(after)),
            "a length that was not measured exactly is `estimated`",
        ));
    }
    is_plan.then(|| {
        Answer::Lines(
            vec![format!("{wall} from plan"), format!("{wall}{}", rest(first))],
            "a length that was read from a plan or a plat is `from plan`; one that was measured as well has a note".to_owned(),
        )
    })
}

/// `west 45' stone 6" thick`, `west 45', brick is 5" here`: how thick brick or stone is.
fn thick(typed: &Typed<'_>) -> Option<Answer> {
    let length = length_at(&typed.pieces, 1).filter(|_| typed.says(0, &WAYS))?;
    let at =
        length.end + usize::from(typed.piece(length.end).is_some_and(|mark| mark.is_mark(",;(")));
    let at = at + usize::from(typed.says(at, &["with"]));
    let is_masonry = typed.says(at, &["stone", "brick", "rock"]);
    let mut at = at + 1;
    while typed.says(at, &["veneer", "is", "wall", "here", "thickness"]) {
        at += 1;
    }
    let by = length_at(&typed.pieces, at).filter(|by| is_masonry && by.has_unit)?;
    let mut end = by.end;
    while typed.says(end, &["thick", "here", "on", "this", "side", "wall"]) {
        end += 1;
    }
    let end = end + usize::from(typed.piece(end).is_some_and(|mark| mark.is_mark(")")));
    (end == typed.pieces.len()).then(|| {
        Answer::line(
            format!("{} veneer {}", typed.text(0, length.end), by.text),
            "how thick the brick or stone of one wall is goes after `veneer`",
        )
    })
}

/// `east 28' 7" then jog south 6' 2"`: two walls on a line.
fn then_a_jog(typed: &Typed<'_>) -> Option<Answer> {
    let length = length_at(&typed.pieces, 1).filter(|one| typed.says(0, &WAYS) && one.has_unit)?;
    let marks = usize::from(typed.piece(length.end).is_some_and(|mark| mark.is_mark(",;")));
    let at = length.end + marks;
    let words = ["then", "and", "jog", "jogs", "step", "steps", "turn", "turns"];
    let next = (at..typed.pieces.len()).find(|&at| !typed.says(at, &words))?;
    let says_jog = (at..next).any(|at| typed.says(at, &words[2..]));
    let other = length_at(&typed.pieces, next + 1)
        .filter(|one| one.has_unit && says_jog && typed.says(next, &WAYS))?;
    (other.end == typed.pieces.len()).then(|| {
        Answer::line(
            format!("{}\n{}", typed.text(0, length.end), typed.rest(next)),
            "each side goes on its own line",
        )
    })
}

/// `east 42' 7 1/2" no brick on this side`: a wall without a veneer.
fn without_brick(typed: &Typed<'_>) -> Option<Answer> {
    let length = length_at(&typed.pieces, 1).filter(|_| typed.says(0, &WAYS))?;
    let at = length.end
        + usize::from(typed.piece(length.end).is_some_and(|mark| mark.is_mark(",;:-–(")));
    let masonry = ["brick", "bricks", "stone", "stones", "veneer", "masonry"];
    let says_no = typed.says(at, &["no", "not", "without"]) && typed.says(at + 1, &masonry);
    let rest = ["on", "this", "that", "the", "side", "wall", "here", "one", "at", "all"];
    let only = (at + 2..typed.pieces.len())
        .all(|at| typed.says(at, &rest) || typed.pieces[at].is_mark(").,"));
    (says_no && only).then(|| {
        Answer::line(
            format!("{} veneer none", typed.text(0, length.end)),
            "a wall without brick or stone has `veneer none`",
        )
    })
}

/// `east 42'7'1/2"`, `east 42' 7 1/2'`, `east 42" 7 1/2'`: feet, inches and a fraction whose marks are exchanged.
fn marks_of_a_fraction(typed: &Typed<'_>) -> Option<Answer> {
    let number = |at: usize| {
        let piece = typed.piece(at).filter(|piece| piece.is_number())?;
        piece.text.parse::<u32>().ok()
    };
    let is_mark = |at: usize| typed.piece(at).is_some_and(|mark| mark.is_mark("'’′\"”″"));
    let is_foot = |at: usize| typed.piece(at).is_some_and(|mark| mark.is_mark("'’′"));
    let (feet, inches) = (number(1)?, number(3)?);
    let middle = usize::from(is_foot(4));
    let first = 4 + middle;
    let (top, bottom) = (number(first)?, number(first + 2)?);
    let is_fraction = typed.piece(first + 1).is_some_and(|slash| slash.is_mark("/"))
        && top > 0
        && top < bottom
        && [2, 4, 8, 16, 32].contains(&bottom);
    let last = first + 3;
    let end = last + usize::from(is_mark(last));
    let is_right = is_foot(2) && middle == 0 && !is_foot(last);
    let fits = typed.says(0, &WAYS)
        && is_mark(2)
        && inches < 12
        && is_fraction
        && !is_right
        && end == typed.pieces.len();
    fits.then(|| {
        Answer::line(
            format!("{} {feet}' {inches} {top}/{bottom}\"", typed.lower(0)),
            "feet have one mark, inches with their fraction two",
        )
    })
}

/// `west wall, north 30'`, `east party wall, going south 38' 2"`: where the wall stands, and then which way it was walked.
fn named_by_its_side(typed: &Typed<'_>) -> Option<Answer> {
    let party = usize::from(typed.says(1, &["party", "common", "shared"]));
    let is_named = typed.says(0, &WAYS) && typed.says(1 + party, &["wall", "side"]);
    let mut at = 2 + party;
    at += usize::from(typed.piece(at).is_some_and(|mark| mark.is_mark(",;:-–")));
    at += usize::from(typed.says(at, &["going", "goes", "runs", "running", "walked", "walking"]));
    let length = length_at(&typed.pieces, at + 1).filter(|one| is_named && one.has_unit)?;
    let across = |at: usize| typed.says(at, &["east", "west", "e", "w"]);
    let is_across = typed.says(at, &WAYS) && across(0) != across(at);
    let common = if party > 0 { " common" } else { "" };
    (is_across && length.end == typed.pieces.len()).then(|| {
        Answer::line(
            format!(
                "{} {}{common} note {}",
                typed.lower(at),
                length.text,
                quoted(typed.text(0, 2 + party))
            ),
            "a side begins with the way that it runs; where the wall stands goes in a note",
        )
    })
}
