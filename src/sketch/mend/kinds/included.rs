//! A garage that is said to be included, or to lie inside the walk of the house: it is deducted there, and does not count
//! besides.

use super::assembled::recorded_at;
use super::described::{by, in_one_unit};
use super::measure::{Measure, length_at};
use super::whereabouts::{compass_corner, direction};
use super::{Answer, Typed, is_text};

/// `garage (22x24) is included`, `garage inside the walk 22 x 24`: in which corner it lies is missing.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    // `attached garage (inside the above) 22 x 24`
    let first = usize::from(typed.says(0, &["attached"]));
    let has_name = is_text(typed.piece(first + 1));
    let kind = typed.lower(first);
    if first == 0
        && ["porch", "deck", "patio", "balcony", "breezeway", "sunroom"].contains(&kind.as_str())
    {
        return porch(typed, &kind);
    }
    if !["garage", "carport", "storage"].contains(&kind.as_str()) {
        return None;
    }
    let house = typed.attempt.house.clone()?;
    let name = match has_name {
        true => typed.name(first + 1, first + 2),
        false => super::levels::capitalized(&kind),
    };
    let mut at = first + 1 + usize::from(has_name);
    let (mut size, mut says_in, mut includes, mut corner) = (None, false, false, None);
    let mut recorded = String::new();
    while let Some(piece) = typed.piece(at) {
        if let Some((area, end)) = recorded_at(typed, at).filter(|_| recorded.is_empty()) {
            recorded = format!(" recorded {area}");
            at = end;
            continue;
        }
        if let Some(one) = length_at(&typed.pieces, at) {
            let (two, end) = two_lengths(typed, &one)?;
            if size.replace(two).is_some() {
                return None;
            }
            at = end;
            continue;
        }
        if let Some((_, end)) = compass_corner(typed, at).filter(|_| corner.is_none()) {
            corner = Some(typed.text(at, end).to_owned());
            at = end + usize::from(typed.says(end, &["corner"]));
            continue;
        }
        if direction(typed, at).is_some() {
            return None;
        }
        if typed.says(at, &["included", "incl", "includes"]) {
            includes = true;
        } else if typed.says(at, &["inside", "in", "within", "part", "into"]) {
            says_in = true;
        } else {
            let small = [
                "is",
                "attached",
                "the",
                "of",
                "walk",
                "walls",
                "outline",
                "footprint",
                "house",
                "that",
                "my",
                "our",
                "this",
                "these",
                "above",
                "all",
                "already",
                "also",
                "both",
                "dims",
                "was",
                "walked",
                "deep",
                "wide",
                "it",
                "same",
                "roof",
                "measurements",
                "size",
                "to",
                "be",
                "built-in",
                "at",
                "from",
                "a",
                "size",
                "dimensions",
                "numbers",
            ];
            if !typed.says(at, &small) && !piece.is_mark(",;:()-–.=") {
                return None;
            }
        }
        at += 1;
    }
    const WALK: [&str; 12] = [
        "walk",
        "walls",
        "outline",
        "footprint",
        "house",
        "roof",
        "above",
        "this",
        "these",
        "measurements",
        "dimensions",
        "numbers",
    ];
    let is_walk = typed.find(1, &WALK).is_some();
    // `right front corner, inside`
    let ends_inside = typed.pieces.len().checked_sub(1).is_some_and(|last| {
        typed.says(last, &["inside", "within"]) && (size.is_some() && corner.is_some())
    });
    if !(includes || says_in && is_walk || ends_inside)
        || typed.find(1, &["not", "counted", "counts", "within"]).is_some() && has_name
    {
        return None;
    }
    if let Some(corner) = corner {
        let (one, two) = size.filter(|_| includes || ends_inside)?;
        return Some(Answer::line(
            format!(
                "{kind} \"{name}\" {one} x {two} inside the walk, in the {corner} corner{recorded}"
            ),
            "what lies inside the walk of another space is `within` that space, and is deducted from it",
        ));
    }
    let sized = match &size {
        Some((one, two)) => format!(" {one} x {two}"),
        None if typed.attempt.is_metric => " 6 m x 7 m".to_owned(),
        None => " 22' x 24'".to_owned(),
    };
    if super::super::begins_as_side(&typed.attempt.beside.after) {
        let comment = size.map_or(String::new(), |(one, two)| format!("  # {one} x {two}"));
        return (!has_name).then(|| {
            Answer::line(
                format!("{kind} \"{name}\" within \"{house}\"{recorded}{comment}"),
                format!("what lies under the same roof, in the walk of `{house}`, is `within \"{house}\"`; where it starts comes after that"),
            )
        });
    }
    Some(Answer::say(
        format!(
            "a {kind} that lies inside the walk of the house is deducted from it; one that stands beside the walk is not in it: which is it, and where"
        ),
        format!(
            "if you walked round the house and the {kind} together, say in which corner it lies, as `{kind}{sized} inside the walk, in the southeast corner{recorded}`; if the walk leaves it out, on which side it stands: `{kind}{sized} on the east side{recorded}`"
        ),
    ))
}

/// The two lengths of a size, each with its word for which of them it is, and the index after them: `20 x 22`,
/// `22' 2" wide, 20' deep`.
fn two_lengths(typed: &Typed<'_>, one: &Measure) -> Option<((String, String), usize)> {
    let which = |at: usize| {
        let word = typed.lower(at);
        match word.as_str() {
            "wide" | "w" | "width" => Some("wide"),
            "deep" | "d" | "depth" => Some("deep"),
            _ => None,
        }
    };
    let first = which(one.end);
    let mut at = one.end + usize::from(first.is_some());
    let between = by(typed, at)
        || first.is_some()
            && (typed.says(at, &["and"]) || typed.piece(at).is_some_and(|mark| mark.is_mark(",/")));
    at += usize::from(between);
    if !between && first.is_none() {
        return None;
    }
    let two = length_at(&typed.pieces, at)?;
    let second = which(two.end);
    let end = two.end + usize::from(second.is_some());
    let (one, two) = in_one_unit(one, &two);
    let with = |length: String, which: Option<&str>| match which {
        Some(which) => format!("{length} {which}"),
        None => length,
    };
    Some(((with(one, first), with(two, second)), end))
}

/// `porch "Porch" 8x10 included`: included in the walk, in the record's figure, or in the living area.
fn porch(typed: &Typed<'_>, kind: &str) -> Option<Answer> {
    let named = is_text(typed.piece(1));
    let at = typed.find(1, &["included", "incl"])?;
    let is_last = at + 1 == typed.pieces.len();
    let others = (1 + usize::from(named)..at).all(|at| {
        typed.pieces[at].is_number() || by(typed, at) || typed.pieces[at].is_mark("(),;'\"’")
    });
    let house = typed.attempt.house.clone()?;
    let name = match named {
        true => typed.name(1, 2),
        false => super::levels::capitalized(kind),
    };
    let kind = if kind == "sunroom" { "porch" } else { kind };
    (is_last && others).then(|| {
        Answer::say(
            format!("what the {kind} is included in is not said: in the walk above, in a figure of the record, or in what counts"),
            format!(
                "write the line without `included`; if the walk of `{house}` goes round it, with `within \"{house}\"` after `{kind} \"{name}\"`; if the record's area has it in it, with `counting \"{name}\"` at the end of the line of the record; `counted` at the end of its own line counts it as living area, on your own word"
            ),
        )
    })
}
