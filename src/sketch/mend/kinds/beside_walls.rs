//! What is said beside the length of a wall: what stands there, what it should have been, a chimney between two walls;
//! and a place or a kind that stands on a line of its own.

use super::super::compass::way_and_back;
use super::super::pieces::Piece;
use super::measure::{length_at, lengths, written};
use super::{Answer, Rule, Typed, first_of, plainly, quoted};
use crate::units::length::Length;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        wall_of_a_part,
        what_it_should_be,
        extent_of_the_front,
        door_before_its_wall,
        chimney_between,
        place_alone,
        kind_and_cover,
        enclosed_and_heated,
    ];
    first_of(rules, typed)
}

/// Whether walls stand beside the line, so that it is one of a walk.
fn is_in_a_walk(typed: &Typed<'_>) -> bool {
    let beside = &typed.attempt.beside;
    super::super::begins_as_wall(&beside.before)
}

/// `N 30' wall of garage not incl`: which wall it is.
fn wall_of_a_part(typed: &Typed<'_>) -> Option<Answer> {
    // `wall of garage 30' not included`
    let of = typed.says(0, &["wall"]) && typed.says(1, &["of", "by", "at"]);
    let own = typed.says(0, &["garage", "porch", "carport", "deck"]) && typed.says(1, &["wall"]);
    let excluded = typed.find(1, &["not", "excluded", "excl"]).is_some();
    let found = lengths(&typed.pieces, 1);
    if let ([(first, one)], true) = (&found[..], (of || own) && excluded && is_in_a_walk(typed)) {
        let said = typed.without(*first, one.end);
        return one.has_unit.then(|| {
            Answer::say(
                "a wall begins with the way that it runs, and which wall it is goes in a note",
                format!(
                    "write that way, `north`, `east`, `south` or `west`, then `{} note {}`; if it is no wall of this walk, put the line after a `#`",
                    one.text,
                    quoted(&said)
                ),
            )
        });
    }
    way_and_back(&typed.lower(0))?;
    let measure = length_at(&typed.pieces, 1)?;
    let names = typed.says(measure.end, &["wall"])
        && typed.says(measure.end + 1, &["of", "at", "by", "behind", "along", "next", "with"]);
    let said = typed.rest(measure.end);
    let more = lengths(&typed.pieces, measure.end + 1).iter().any(|(_, one)| one.has_unit);
    (names && !more && !said.contains(['"', '#'])).then(|| {
        Answer::line(
            format!("{} {} note {}", typed.text(0, 1), measure.text, quoted(said)),
            "which wall it is goes in a note; a thickness comes after `wall`",
        )
    })
}

/// `north 30' should be`, `north 30' should be 32'`, `north should be 30'`: a length that is expected.
fn what_it_should_be(typed: &Typed<'_>) -> Option<Answer> {
    way_and_back(&typed.lower(0))?;
    let way = typed.text(0, 1);
    let should = typed.find(1, &["should", "shd", "ought"])?;
    let be = (should + 1..should + 4).find(|&at| typed.says(at, &["be"]))?;
    let open = |at: usize| typed.piece(at).is_some_and(|mark| mark.is_mark("(,;-–"));
    let close = |at: usize| (at..typed.pieces.len()).all(|at| typed.pieces[at].is_mark(")?!."));
    let after = be + 1;
    let wanted = length_at(&typed.pieces, after).filter(|wanted| close(wanted.end));
    let first = length_at(&typed.pieces, 1);
    let expected = |one: &super::measure::Measure| {
        Answer::Lines(
            vec![
                format!("{way} {} estimated note \"should be\"", one.text),
                format!("{way} {} note \"should be\"", one.text),
            ],
            "is that length expected and not measured, as in the first, or measured, as in the second".to_owned(),
        )
    };
    Some(match (first, wanted) {
        (Some(one), None) if (one.end..should).all(open) && close(after) => expected(&one),
        (Some(one), Some(two)) if (one.end..should).all(open) => {
            let mark = if !two.has_unit && one.text.ends_with('\'') { "'" } else { "" };
            let two = format!("{}{mark}", two.text);
            if two == one.text {
                return Some(expected(&one));
            }
            Answer::Lines(
                vec![
                    format!("{way} {} recorded {two} note \"should be\"", one.text),
                    format!("{way} {two} note \"should be, not {}\"", plainly(&one.text)),
                ],
                format!(
                    "who says that it should be {two}? If the record does, it goes after `recorded`; if the tape does, it is the length"
                ),
            )
        }
        (None, Some(one)) if should == 1 => expected(&one),
        _ => return None,
    })
}

/// `front total 40'` where nothing says on which side the street is.
fn extent_of_the_front(typed: &Typed<'_>) -> Option<Answer> {
    let is_side = typed.says(0, &["front", "back", "rear", "left", "right"]);
    let total = typed.says(1, &["total", "overall", "whole", "altogether"]);
    let measure =
        length_at(&typed.pieces, 2).filter(|measure| measure.end == typed.pieces.len())?;
    let is_open = typed.attempt.beside.front.is_none();
    (is_side && total && is_open && measure.has_unit).then(|| {
        Answer::Lines(
            ["east", "north"].map(|way| format!("overall {way} {}", measure.text)).to_vec(),
            format!(
                "a whole extent is `overall`, its way and its length: does the {} of the house run east and west, as in the first, or north and south",
                typed.lower(0)
            ),
        )
    })
}

/// `patio door here west 40ft`, `porch post west 40'`: what stands at a wall, before it.
fn door_before_its_wall(typed: &Typed<'_>) -> Option<Answer> {
    const PARTS: [&str; 21] = [
        "door", "doors", "post", "posts", "step", "steps", "window", "windows", "light",
        "entrance", "entry", "rail", "railing", "slider", "gate", "roof", "corner", "stairs",
        "faucet", "meter", "column",
    ];
    let kind = typed.says(
        0,
        &["patio", "deck", "porch", "garage", "balcony", "living", "shed", "storage", "carport"],
    );
    let part = (1..3).find(|&at| typed.says(at, &PARTS))?;
    let way = (part + 1..typed.pieces.len()).find(|&at| {
        way_and_back(&typed.lower(at)).is_some() && length_at(&typed.pieces, at + 1).is_some()
    })?;
    let measure = length_at(&typed.pieces, way + 1)?;
    let said = plainly(typed.text(0, way));
    let is_plain = (0..way)
        .all(|at| typed.pieces[at].sort == super::Sort::Word || typed.pieces[at].is_mark(",:;-–"));
    (kind
        && is_plain
        && measure.has_unit
        && measure.end == typed.pieces.len()
        && is_in_a_walk(typed))
    .then(|| {
        Answer::line(
            format!("{} {} note {}", typed.text(way, way + 1), measure.text, quoted(&said)),
            "a side begins with the way that it runs; what stands at it goes in a note",
        )
    })
}

/// `west 18' chimney 5' x 2' then west 17'`: a chimney between two walls takes a piece of the wall, and has no floor.
fn chimney_between(typed: &Typed<'_>) -> Option<Answer> {
    let way = typed.lower(0);
    way_and_back(&way)?;
    let one = length_at(&typed.pieces, 1)?;
    let chimney = typed.find(one.end, &["chimney", "fireplace"])?;
    let second = (chimney + 1..typed.pieces.len())
        .find(|&at| typed.lower(at) == way && length_at(&typed.pieces, at + 1).is_some())?;
    let two = length_at(&typed.pieces, second + 1).filter(|two| two.end == typed.pieces.len())?;
    let small = |at: usize| {
        typed.says(
            at,
            &[
                "then", "and", "a", "the", "with", "at", "brick", "stone", "wide", "deep", "out",
                "x", "by",
            ],
        ) || typed.pieces[at].is_mark(",;:()x×-–+&")
    };
    let sizes = lengths(&typed.pieces[..second], chimney + 1);
    let is_size = |at: usize| sizes.iter().any(|(first, size)| (*first..size.end).contains(&at));
    let plain = (one.end..second).all(|at| at == chimney || small(at) || is_size(at));
    if !plain || sizes.len() > 2 || one.has_unit != two.has_unit {
        return None;
    }
    // What stands out of a wall is wider than deep.
    let wide = sizes.iter().map(|(_, size)| size.length).max();
    let all = |length: Length| format!("`{way} {}`", written(length, &one));
    let how = match wide {
        Some(wide) => format!(
            "write {} if the two lengths stop at the chimney, or {} if one of them goes on behind it",
            all(one.length + wide + two.length),
            all(one.length + two.length)
        ),
        None => format!(
            "write `{way}` and the whole length of the wall, with the width of the chimney if the two lengths, {} and {}, stop at it",
            one.text, two.text
        ),
    };
    Some(Answer::say(
        "a chimney that stands out from a wall has no floor and is not counted: the wall goes on behind it",
        format!("{how}; put anything else after a `#`"),
    ))
}

/// `from corner of garage`, `from House corner 4`, `starts at corner 4` on a line of its own: where a space starts.
fn place_alone(typed: &Typed<'_>) -> Option<Answer> {
    let begins =
        typed.says(0, &["from", "starts", "starting", "begins", "start", "beginning", "within"]);
    let corner = typed.find(1, &["corner", "cor", "cnr"]);
    let only = typed.pieces.len() <= 8
        && lengths(&typed.pieces, 0).iter().all(|(_, one)| !one.has_unit)
        && !typed.line.contains(['#', '$']);
    let known = typed.attempt.beside.spaces.iter();
    let lower = typed.line.to_lowercase();
    let names_a_space = known.clone().any(|name| lower.contains(&name.to_lowercase()));
    let is_place = corner.is_some() || typed.says(0, &["within"]) && names_a_space;
    if !begins || !is_place || !only || typed.is_in_lot() || typed.attempt.space.is_none() {
        return None;
    }
    // The first walk of a level has nothing to start from.
    let beside = &typed.attempt.beside;
    let is_first = typed.attempt.house == typed.attempt.space && !names_a_space;
    if is_first && !super::super::begins_as_wall(&beside.before) {
        return None;
    }
    let number = typed.pieces.iter().rev().find(|piece| piece.is_number() && piece.text.len() <= 2);
    let named =
        known.clone().find(|name| lower.contains(&name.to_lowercase())).map(ToString::to_string);
    let house = named.or_else(|| typed.attempt.house.clone())?;
    let place = match (typed.says(0, &["within"]), number) {
        (true, None) => format!("`within {}`", quoted(&house)),
        (_, Some(number)) => format!("`from {} corner {}`", quoted(&house), number.text),
        (_, None) => format!("`from {} corner` and the number of the corner", quoted(&house)),
    };
    Some(Answer::say(
        "where a space starts stands on the line of that space, after its name",
        format!(
            "take this line out, and at the end of the line that begins the space, as `garage \"Garage\"`, write {place}; corner 1 is where the walk of {} starts",
            quoted(&house).replace('"', "`")
        ),
    ))
}

/// `porch covered`, `deck uncovered`: how a space is, after its kind, is a part of its name.
fn kind_and_cover(typed: &Typed<'_>) -> Option<Answer> {
    const LIKE: [&str; 12] = [
        "covered",
        "uncovered",
        "screened",
        "roofed",
        "unroofed",
        "elevated",
        "raised",
        "wooden",
        "concrete",
        "lower",
        "upper",
        "brick",
    ];
    const KINDS: [&str; 5] = ["porch", "deck", "patio", "balcony", "carport"];
    const SIDES: [&str; 5] = ["front", "back", "rear", "side", "entry"];
    const CLOSED: [&str; 4] = ["enclosed", "glassed-in", "glazed", "glassed"];
    let all = &typed.pieces;
    let is_one = |word: &Piece| {
        word.is_word(&KINDS) || word.is_word(&LIKE) || word.is_word(&SIDES) || word.is_word(&CLOSED)
    };
    let one_of = |words: &[&str]| {
        let mut found = all.iter().filter(|piece| piece.is_word(words));
        found.next().filter(|_| found.next().is_none()).map(|piece| piece.text.to_lowercase())
    };
    let kind = one_of(&KINDS)?;
    let (like, closed, side) = (one_of(&LIKE), one_of(&CLOSED), one_of(&SIDES));
    // `enclosed porch` has a rule of its own.
    let is_led = closed.is_some() && all.first().is_some_and(|first| first.is_word(&CLOSED));
    let parts = 1 + [&like, &closed, &side].into_iter().flatten().count();
    let is_like = like.is_some() != closed.is_some();
    if parts != all.len() || !all.iter().all(is_one) || !is_like || is_led {
        return None;
    }
    let words: Vec<String> =
        [like, closed.clone(), side, Some(kind.clone())].into_iter().flatten().collect();
    let name = quoted(&super::levels::capitalized(&words.join(" ")));
    Some(match closed {
        None => Answer::line(
            format!("{kind} {name}"),
            "a space begins with its kind, then its name, with a `\"` on each side",
        ),
        Some(_) => Answer::Lines(
            vec![format!("living {name}"), format!("{kind} {name}")],
            super::indoors::lived_in_or(&kind),
        ),
    })
}

/// `screen porch 12' x 14', glass enclosed, heated`, `porch "Sunroom" glassed in, heated`: whether it is lived in.
fn enclosed_and_heated(typed: &Typed<'_>) -> Option<Answer> {
    let kind = typed.find(0, &["porch", "patio", "breezeway"]).filter(|at| *at <= 2)?;
    let heated = typed.find(kind + 1, &["heated", "conditioned", "insulated", "year-round"])?;
    let denied = typed.says(heated - 1, &["not", "un", "no", "never"]);
    let first = (kind + 1..=heated).rev().take_while(|&at| {
        typed.says(
            at,
            &[
                "heated",
                "conditioned",
                "insulated",
                "year-round",
                "glass",
                "glassed",
                "glassed-in",
                "glazed",
                "enclosed",
                "in",
                "and",
                "with",
                "windows",
                "walls",
                "finished",
                "cooled",
                "now",
            ],
        ) || typed.pieces[at].is_mark(",;(-–&")
    });
    let first = first.last()?;
    let end = (heated + 1..typed.pieces.len()).find(|&at| {
        !typed.says(
            at,
            &["and", "cooled", "finished", "insulated", "all", "year", "glass", "enclosed"],
        ) && !typed.pieces[at].is_mark(",;)&")
    });
    if denied || end.is_some() || typed.line.contains('#') {
        return None;
    }
    let said = plainly(typed.rest(first).trim_start_matches([',', ';', '(', ' ', '-', '–']));
    let named = super::is_text(typed.piece(kind + 1));
    let name = match named {
        true => typed.text(kind + 1, kind + 2).to_owned(),
        false => quoted(&super::levels::capitalized(&typed.text(0, kind + 1).to_lowercase())),
    };
    let rest = typed
        .text(kind + 1 + usize::from(named), first)
        .trim_end_matches([',', ';', ' '])
        .to_owned();
    let line = |kind: &str| {
        let line = format!("{kind} {name} {rest}");
        format!("{}  # {said}", line.trim_end())
    };
    let kind = typed.lower(kind);
    Some(Answer::Lines(vec![line("living"), line(&kind)], super::indoors::lived_in_or(&kind)))
}
