//! Lines that say of a house or a level more than one size can: an ell, a second story, what is open to below. Each is a
//! space or a level of its own; in a comment it would be lost.

use super::described::{by, in_one_unit};
use super::levels::capitalized;
use super::measure::length_at;
use super::whereabouts;
use super::{Answer, Rule, Typed, first_of, kind_word, quoted};

const HOUSES: [&str; 8] =
    ["house", "home", "residence", "dwelling", "cabin", "cottage", "main", "ranch"];
const STORIES: [&str; 6] = ["story", "stories", "storey", "storeys", "floors", "levels"];

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        several_stories,
        with_an_ell,
        with_an_opening,
        garage_in_the_basement,
        sized_start,
        two_spaces,
    ];
    let has_text = typed.pieces.iter().any(|piece| super::is_text(Some(piece)));
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    if follows {
        return two_spaces(typed).filter(|_| !has_text);
    }
    first_of(rules, typed).filter(|_| !has_text).or_else(|| wide_and_deep(typed))
}

/// `open foyer 8 wide 10 deep`, `garage 20' wide, 22' deep`: a size at the end of a line, without its `x`.
fn wide_and_deep(typed: &Typed<'_>) -> Option<Answer> {
    const LABELS: [&str; 5] = ["wide", "deep", "long", "w", "d"];
    let begins =
        super::kind_word(&typed.lower(0)).is_some() || super::loose::kind_at_start(typed).is_some();
    let all = super::measure::lengths(&typed.pieces, 1);
    let [(first, one), (second, two)] = &all[..] else { return None };
    let between = one.end + 1;
    let is_joint = typed.says(between, &["and"])
        || typed.piece(between).is_some_and(|mark| mark.is_mark(",/;"));
    let meets = *second == between + usize::from(is_joint);
    let labels = [one.end, two.end].map(|at| typed.lower(at));
    let fits = labels.iter().all(|label| LABELS.contains(&label.as_str()))
        && labels[0] != labels[1]
        && two.end + 1 == typed.pieces.len();
    (begins && meets && fits && !is_of_a_house(typed, *first)).then(|| {
        let said = typed.text(0, *first);
        Answer::line(
            format!("{said} {} x {}", one.text, two.text),
            "the two lengths of a size have an `x` between them",
        )
    })
}

/// The sizes of a line: where each begins and ends.
pub(super) fn sizes(typed: &Typed<'_>) -> Vec<(usize, usize)> {
    let (mut all, mut at) = (Vec::new(), 0);
    while at < typed.pieces.len() {
        let two = length_at(&typed.pieces, at).and_then(|one| {
            let two = length_at(&typed.pieces, one.end + 1).filter(|_| by(typed, one.end))?;
            Some(two.end)
        });
        match two {
            Some(end) => {
                all.push((at, end));
                at = end;
            }
            None => at += 1,
        }
    }
    all
}

fn is_of_a_house(typed: &Typed<'_>, first_size: usize) -> bool {
    typed.find(0, &HOUSES).is_some_and(|at| at < first_size && at <= 3)
}

/// `house 30 x 24 two stories`, `two story house 30 x 24`.
fn several_stories(typed: &Typed<'_>) -> Option<Answer> {
    let [(first, end)] = sizes(typed)[..] else { return None };
    let at = typed.find(0, &STORIES)?;
    let before = typed.piece(at.checked_sub(1)?)?;
    let before = if before.is_mark("-–") { typed.piece(at.checked_sub(2)?)? } else { before };
    let counts = before.is_word(&["two", "both", "three", "half", "all"])
        || ["2", "3"].contains(&before.text.as_str());
    let is_half = before.is_word(&["half"]) || before.is_number() && typed.line.contains("1/2");
    if !is_of_a_house(typed, first) || !(counts || is_half) || (first..end).contains(&at) {
        return None;
    }
    let size = typed.text(first, end);
    let upper = match is_half {
        true => {
            "of the upper one only what has a ceiling of 5 ft or more counts: below its level write the size of that part, as `5' or more 28 x 16`"
        }
        false => {
            "if the upper one is as large, write `upper floor same as below` after its walls; what is open to below there is a space of its own, as `open \"Foyer\" 10 x 8` with its place"
        }
    };
    Some(Answer::say(
        "each floor is a level of its own, with its own walls: one size is that of one floor",
        format!("write `house {size}` here, for the ground floor; {upper}"),
    ))
}

/// `house 30 x 24 plus ell 12 x 10`: two rectangles.
fn with_an_ell(typed: &Typed<'_>) -> Option<Answer> {
    let [(first, end), (second, last)] = sizes(typed)[..] else { return None };
    let joins = typed.find(end, &["plus", "with", "and", "ell", "wing", "addition"]).is_some()
        || (end..second).any(|at| typed.pieces[at].is_mark("+&,"));
    if !is_of_a_house(typed, first) || !joins {
        return None;
    }
    let noun = (end..typed.pieces.len())
        .filter(|at| !(second..last).contains(at))
        .find(|&at| {
            typed.says(at, &["ell", "wing", "addition", "extension", "bump-out", "sunroom"])
                || kind_word(&typed.lower(at)).is_some()
        })
        .map_or_else(|| "addition".to_owned(), |at| typed.lower(at));
    let kind = kind_word(&noun).unwrap_or("living");
    let (size, other) = (typed.text(first, end), typed.text(second, last));
    let name = quoted(&capitalized(&noun));
    Some(Answer::say(
        "a line has one size, and each rectangle is a space of its own, or both are one walk",
        format!(
            "write `house {size}` here and, after its walls, `{kind} {name} {other}` with the side on which it stands, as `{kind} {name} {other} on the back, at the left end`; or walk round both together and type each wall"
        ),
    ))
}

/// The line with a point in each number that has a comma and one or two digits after it.
fn with_points(typed: &Typed<'_>) -> String {
    let mut line = typed.line.to_owned();
    for piece in typed.pieces.iter().filter(|piece| piece.is_number()) {
        let is_decimal = piece
            .text
            .split_once(',')
            .is_some_and(|(_, digits)| digits.len() <= 2 && !digits.contains([',', '.']));
        if is_decimal {
            let end = piece.at + piece.text.len();
            line.replace_range(piece.at..end, &piece.text.replace(',', "."));
        }
    }
    line
}

/// `barn: 15.25 by 9.15, lean-to 15.25 x 3.05 on W side`: each of the two is a space with a line of its own.
fn two_spaces(typed: &Typed<'_>) -> Option<Answer> {
    // `15,2 x 9,1`: decimals with a comma.
    let line = with_points(typed);
    if line != typed.line {
        let again = Typed { line: &line, pieces: super::cut(&line), attempt: typed.attempt };
        return two_spaces(&again);
    }
    let [(first, end), (second, _)] = sizes(typed)[..] else { return None };
    let is_kind = |at: &usize| {
        kind_word(&typed.lower(*at)).is_some()
            || super::kind_meant(&typed.lower(*at)).is_some()
            || typed.says(*at, &["lean-to", "leanto", "woodshed", "henhouse", "coop", "sauna"])
            || typed.says(*at, &["lean"]) && typed.says(at + 1, &["to"])
    };
    let own = (0..first).find(is_kind).filter(|at| *at <= 2)?;
    let other = (end..second).find(is_kind)?;
    // What stands between the sizes and before the second kind joins them, or is the place of the first.
    let cut = (end..other).rev().find(|&at| {
        typed.pieces[at].is_mark(",;+&") || typed.says(at, &["and", "plus", "with", "w"])
    })?;
    let one = typed.text(0, cut).trim_end_matches([',', ';', ' ']);
    let two = typed.text(cut + 1, typed.pieces.len());
    // `16' x 8' open porch, steps 3' x 8'`: steps are of the porch.
    let is_part = ["stair", "open", "low", "court"];
    let kind =
        |at: usize| super::kind_meant(&typed.lower(at)).or_else(|| kind_word(&typed.lower(at)));
    let is_plain = kind(own).is_none_or(|kind| !is_part.contains(&kind) && kind != "living")
        && kind(other).is_none_or(|kind| !is_part.contains(&kind));
    is_plain.then(|| {
        Answer::say(
            "each space has a line of its own, with its size and where it stands",
            format!("write `{one}` on this line and `{two}` on the next one: the answers to them give the lines to type"),
        )
    })
}

/// `second floor 30 x 24 with 10 x 8 open to below`: what is open is a space of its own.
fn with_an_opening(typed: &Typed<'_>) -> Option<Answer> {
    let [(first, end), (second, last)] = sizes(typed)[..] else { return None };
    let opening = ["open", "void", "foyer", "vaulted", "cathedral", "less", "minus", "opening"];
    let is_open = typed.find(end, &opening).is_some();
    if !super::names_a_level(typed.line)
        || !is_open
        || typed.find(0, &opening).is_some_and(|at| at < end)
    {
        return None;
    }
    let level = typed.text(0, first).trim_end_matches([':', ',', '-', ' ']);
    let (size, other) = (typed.text(first, end), typed.text(second, last));
    Some(Answer::say(
        "what is open to below is deducted, and is a space of its own: in a comment it would be lost",
        format!(
            "write `{level} {size}` here and, after its walls, `open \"Foyer\" {other}` with its place, as `open \"Foyer\" {other} at the front, 6' from the left end`"
        ),
    ))
}

/// `garage in basement 20x22`: a garage on a level below the ground.
fn garage_in_the_basement(typed: &Typed<'_>) -> Option<Answer> {
    let [(first, end)] = sizes(typed)[..] else { return None };
    let at = typed.find(1, &["basement", "cellar"])?;
    let is_in = typed.says(at - 1, &["in", "the"]) && typed.says(0, &["garage"]);
    let only = (1..typed.pieces.len()).all(|i| {
        i == at
            || (first..end).contains(&i)
            || typed.says(i, &["in", "the", "a", "at", "is"])
            || typed.pieces[i].is_mark(",;()")
    });
    let size = typed.text(first, end);
    let basement = typed.attempt.beside.spaces.iter().find(|space| {
        let name = space.to_lowercase();
        name.contains("basement") || name.contains("cellar")
    });
    if !is_in || !only {
        return None;
    }
    Some(match basement {
        Some(basement) => Answer::say(
            "a garage in the basement stands on the level of the basement",
            format!(
                "put this line after the walls below {}, as `garage {size}` with its place there",
                quoted(basement)
            ),
        ),
        None => Answer::line(
            format!("basement garage {size}"),
            "a garage in the basement stands on a level below the ground",
        ),
    })
}

/// `garage 20 x 20 east 10' north 3'`: a place as a sides file has it, and a size.
fn sized_start(typed: &Typed<'_>) -> Option<Answer> {
    let [(first, end)] = sizes(typed)[..] else { return None };
    let kind = kind_word(&typed.lower(0)).filter(|kind| *kind != "living" && first == 1)?;
    let comma = |at: usize| usize::from(typed.piece(at).is_some_and(|mark| mark.is_mark(",")));
    let at = end + comma(end);
    let at = at + usize::from(typed.says(at, &["start", "starts"]));
    let ((one, by_one), at) = whereabouts::offset(typed, at)?;
    let at = at + usize::from(whereabouts::joins(typed, at));
    let ((two, by_two), at) = whereabouts::offset(typed, at)?;
    if at != typed.pieces.len() || one.axis() == two.axis() {
        return None;
    }
    let size = length_at(&typed.pieces, first)?;
    let other = length_at(&typed.pieces, size.end + 1)?;
    let (a, b) = in_one_unit(&size, &other);
    let name = quoted(&capitalized(&typed.lower(0)));
    let place = format!("start {} {} {} {}", one.word(), by_one.text, two.word(), by_two.text);
    let line = |north: &str, east: &str| {
        format!("{kind} {name} {place}\nnorth {north}\neast {east}\nsouth {north}\nwest {east}")
    };
    let mut lines = vec![line(&a, &b), line(&b, &a)];
    lines.dedup();
    Some(Answer::Lines(
        lines,
        "a place counted from where the first walk of the house begins is `start`, and a size is typed as its sides: which of the two lengths runs north and south?".to_owned(),
    ))
}
